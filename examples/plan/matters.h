/* SPDX-License-Identifier: MIT */
/* How much each measured input, off by its tolerance, moves what is cut, and what the side does. */
#ifndef PLAN_MATTERS_H
#define PLAN_MATTERS_H

#include "job.h"

void print_matters(text *out, const planned *side, int us);

#endif
