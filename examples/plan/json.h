/* SPDX-License-Identifier: MIT */
/* The machine's form of the answers: JSON, always SI, each number beside its unit. */
#ifndef PLAN_JSON_H
#define PLAN_JSON_H

#include "job.h"

/* All sides, planned and refused, in order; with_matters: 1 adds what matters of each. */
void print_json(text *out, const work *all, int with_matters);

#endif
