/* SPDX-License-Identifier: MIT */
/* The turn table on the card for the drive: how far the wall is open at each turn. */
#ifndef DRAW_TABLE_H
#define DRAW_TABLE_H

#include "ends.h"
#include "sheet.h"

/* In what room the last sheet has above its graph, then on more with the same heading. */
void add_turn_table(sheets *made, paper_size paper, const heading *told, const planned *side, int us,
                    const tside_drawing *graph);

#endif
