/* SPDX-License-Identifier: MIT */
/* Drawings of planned sides on paper: at the largest scale for which there is room, and as SVG. */
#ifndef COMMON_DRAWN_H
#define COMMON_DRAWN_H

#include <tunnelside/drawing.h>

#include "job.h"
#include "text.h"

/* Whether a view is of one end. */
int is_of_end(tside_view view);
/* What is written over a view: "CORNER, from above: drive's end"; of the side as a whole no end follows. */
void add_view_title(text *out, tside_view view, int end);

enum { SCALES = 10 };
extern const double scales[SCALES]; /* 1, how many times smaller on paper */

/* mm on paper. */
double drawn_width(const tside_drawing *drawing);
double drawn_height(const tside_drawing *drawing);

typedef struct extent {
    double width, height; /* mm */
} extent;

/*
 * Draws what the picture asks for, at its scale, which is one of those, or where that is 0 at the largest at which one
 * of the rooms holds it. held_by: receives which, the first if several do, or -1 where none does; it is then drawn as
 * small as that.
 */
tside_status draw_within(tside_drawing *drawing, const planned *side, const tside_picture *picture, const extent *rooms,
                         int count, int *held_by, tside_fault *fault);

void add_svg(text *out, const tside_drawing *drawing, const char *title);

#endif
