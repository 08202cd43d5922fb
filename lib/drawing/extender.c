/* SPDX-License-Identifier: MIT */
/*
 * An end's extender as a piece, drilled: its face away from the wall, its top end to the left, so that both hands look
 * alike. All measures run from the top end.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

/* A hole with its centre line across the tube, its place from the top end, and its width. */
static void draw_hole(const tside_i_wall *w, double from_top, double diameter, tside_tells place, tside_tells width)
{
    const double half = w->end->extender.tube.side / 2, past = 2e-3 * w->sketch->picture.scale;
    tside_i_circle(w->sketch, tside_i_pen_of(TSIDE_PART_HOLE, TSIDE_LINE_WIDE), from_top, 0, diameter / 2);
    tside_i_segment(w->sketch, tside_i_pen_of(TSIDE_PART_HOLE, TSIDE_LINE_CHAIN), from_top, -half - past, from_top,
                    half + past);
    tside_i_dimension(w->sketch, place, TSIDE_DIMENSION_RUNNING, TSIDE_I_BELOW, from_top, 0, -half, from_top, -half);
    tside_i_dimension(w->sketch, width, TSIDE_DIMENSION_DIAMETER, TSIDE_I_ABOVE, diameter, from_top, diameter / 2,
                      from_top, -diameter / 2);
}

/* The insides of its walls, where they are not one line with its outline. */
static void draw_walls(const tside_i_wall *w)
{
    const tside_square *tube = &w->end->extender.tube;
    const double inner = tube->side / 2 - tube->wall, length = w->plan->layout.cut_length;
    const tside_i_pen hidden = tside_i_pen_of(TSIDE_PART_EXTENDER, TSIDE_LINE_DASHED);
    if (tube->wall < 1e-3 * w->sketch->picture.scale)
        return;
    tside_i_segment(w->sketch, hidden, 0, inner, length, inner);
    tside_i_segment(w->sketch, hidden, 0, -inner, length, -inner);
}

/* Where the piece's mark goes: on the face that is seen, at the top end, between the first two holes if there is room.
 */
static void draw_mark(const tside_i_wall *w)
{
    const tside_extender *extender = &w->end->extender;
    const tside_layout *layout = &w->plan->layout;
    const double side = extender->tube.side, from = layout->eye_from_top + extender->eye_hole / 2 + 0.25 * side,
                 to = fmin(from + 1.5 * side, layout->bow_from_top - extender->bolt_hole / 2 - 0.25 * side);
    if (to > from)
        tside_i_rectangle(w->sketch, tside_i_pen_of(TSIDE_PART_FACE, TSIDE_LINE_NARROW), from, 0.1 * side, to,
                          0.4 * side);
    tside_i_note(w->sketch, TSIDE_PART_FACE, TSIDE_SHOWN_ALWAYS, 0, fmax(from, to), 0.4 * side);
}

void tside_i_draw_extender(tside_i_sketch *sketch)
{
    const tside_i_wall w = tside_i_wall_of(sketch, sketch->picture.end);
    const tside_extender *extender = &w.end->extender;
    const tside_layout *layout = &w.plan->layout;
    const double half = extender->tube.side / 2, past = 3e-3 * sketch->picture.scale;
    const int rises_right = tside_i_outboard_is_right(w.side, sketch->picture.end);
    tside_i_rectangle(sketch, tside_i_pen_of(TSIDE_PART_EXTENDER, TSIDE_LINE_WIDE), 0, -half, layout->cut_length, half);
    draw_walls(&w);
    tside_i_segment(sketch, tside_i_pen_of(TSIDE_PART_EXTENDER, TSIDE_LINE_CHAIN), -past, 0, layout->cut_length + past,
                    0);
    draw_hole(&w, layout->eye_from_top, extender->eye_hole, TSIDE_TELLS_EYE_FROM_TOP, TSIDE_TELLS_EYE_HOLE);
    draw_hole(&w, layout->bow_from_top, extender->bolt_hole, TSIDE_TELLS_BOW_FROM_TOP, TSIDE_TELLS_BOW_HOLE);
    draw_hole(&w, layout->member_from_top, extender->bolt_hole, TSIDE_TELLS_MEMBER_FROM_TOP, TSIDE_TELLS_MEMBER_HOLE);
    tside_i_dimension(sketch, TSIDE_TELLS_CUT_LENGTH, TSIDE_DIMENSION_RUNNING, TSIDE_I_BELOW, layout->cut_length, 0,
                      -half, layout->cut_length, -half);
    tside_i_note(sketch, rises_right ? TSIDE_PART_TOP_RIGHT : TSIDE_PART_TOP_LEFT, TSIDE_SHOWN_ALWAYS, 0, 0, half / 2);
    draw_mark(&w);
}
