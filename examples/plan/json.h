/* SPDX-License-Identifier: MIT */
/* The machine's form of the answers: JSON, always SI, each number beside its unit. */
#ifndef PLAN_JSON_H
#define PLAN_JSON_H

#include "job.h"

/* All sides, planned and refused, in order; with_matters: 1 adds what matters of each. */
void print_json(text *out, const work *all, int with_matters);

/* A text as a JSON string, with quotes; bytes that are no UTF-8 become "?". */
void add_json_string(text *out, const char *words);

/* The shortest number that reads back as the same double. */
void add_json_number(text *out, double value);

#endif
