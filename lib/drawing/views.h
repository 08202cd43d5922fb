/* SPDX-License-Identifier: MIT */
/* The views, each in its own file: strokes, dimensions and notes of one on a sketch that has just begun. */
#ifndef TUNNELSIDE_I_VIEWS
#define TUNNELSIDE_I_VIEWS

#include "drawing/sketch.h"

/* Curtain, roll and bar at a spot, with a pen of which the part does not matter. */
void tside_i_draw_roll_at(tside_i_sketch *sketch, const tside_i_spot *spot, tside_i_pen pen);

/*
 * Where it is planned how ropes run: one as an end shows it, over the roll at a spot, of which on receives a place
 * there; and all of them along the house, as many as that view, of which they are the last strokes, has left room for.
 */
void tside_i_draw_rope_over(tside_i_sketch *sketch, const tside_i_spot *roll, tside_shown shown, double on[2]);
void tside_i_draw_ropes(tside_i_sketch *sketch);

tside_i_view tside_i_draw_wall, tside_i_draw_whole_wall, tside_i_draw_corner, tside_i_draw_extender, tside_i_draw_along,
    tside_i_draw_roll, tside_i_draw_turns;

/* The view that is asked, on a sketch that begins here; how the side is set up ends with it. */
tside_status tside_i_sketch_view(const tside_side *side, const tside_plan *plan, const tside_picture *picture,
                                 tside_drawing *drawing, tside_i_sketch *sketch, tside_fault *fault);

#endif
