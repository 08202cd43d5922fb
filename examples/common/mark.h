/* SPDX-License-Identifier: MIT */
/* Marks of a planned side and of its pieces, and what these are, as they stand on every paper. */
#ifndef COMMON_MARK_H
#define COMMON_MARK_H

#include "job.h"

/* Each writes a mark and returns it; "" where there is none. */
const char *side_mark(const planned *side, char mark[TSIDE_MARK_SIZE]);
const char *piece_mark(const planned *side, tside_item_code code, tside_item_at at, int number,
                       char mark[TSIDE_MARK_SIZE]);

/* The same for a piece of a line of the take-off, from 0. */
const char *item_mark(const planned *side, const tside_item *item, int piece, char mark[TSIDE_MARK_SIZE]);

/* Adds the marks of all pieces of a line: "AB5", "AB1 to AB4", or nothing. */
void add_marks(text *out, const planned *side, const tside_item *item);

/* Adds what a line's pieces are, each: "extender 2 x 0.12 in, 6 ft 3 in", "bow bolt 3/8 x 4 in", "channel, 6 ft". */
void add_what(text *out, pen *p, const tside_item *item);

#endif
