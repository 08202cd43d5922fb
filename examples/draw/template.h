/* SPDX-License-Identifier: MIT */
/* The full-size template: strips to find the middle of each hole by, on the tube itself. */
#ifndef DRAW_TEMPLATE_H
#define DRAW_TEMPLATE_H

#include "ends.h"
#include "sheet.h"

/*
 * Adds sheets with the strips of a planned side's ends that have an extender; returns 1, or 0 having said why there are
 * none.
 */
int add_template(sheets *made, const planned *side, int end_first, int end_last, paper_size paper, int us);

#endif
