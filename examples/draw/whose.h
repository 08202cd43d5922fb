/* SPDX-License-Identifier: MIT */
/* Whose a sheet is. */
#ifndef DRAW_WHOSE_H
#define DRAW_WHOSE_H

#include "ends.h"

/* Adds "Side A: House 30 ft wide, east side". */
void add_whose(text *words, const planned *side);

/* Adds the notes of job and side, as much as two lines hold; nothing where there are none. */
void add_notes(text *words, const planned *side);

#endif
