/* SPDX-License-Identifier: MIT */
/* Pictures of where the tape goes for each question of the form, by its letter, on a side that is invented. */
#ifndef DRAW_PLACES_H
#define DRAW_PLACES_H

#include <tunnelside.h>

#include "sheet.h"

/* Whether a question, by its path, is on the form. */
typedef int place_is_asked(const void *context, const char *path);

/* The pictures in a box of a sheet, as the side's choices stand. both_bows: 1 where the bow's shape is open. */
void add_places(text *svg, const box *room, const tside_side *choices, int both_bows, place_is_asked *is_asked,
                const void *context);

/* An invented side with such choices. */
void invent_side(tside_side *made, const tside_side *choices);

/* Leaves strokes alone in a drawing, which then ends where they do. */
void strip_words(tside_drawing *d);

#endif
