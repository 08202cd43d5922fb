/* SPDX-License-Identifier: MIT */
/* One row a side, for spreadsheets and scripts: CSV, always SI. */
#ifndef PLAN_TABLE_H
#define PLAN_TABLE_H

#include "job.h"

/* A header, and a row for each side, planned or refused, in order. */
void print_table(text *out, const work *all);

#endif
