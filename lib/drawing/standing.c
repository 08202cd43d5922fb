/* SPDX-License-Identifier: MIT */
/* An end's bow, board, rail and ground, as the views from outside its wall show them. */
#include "drawing/standing.h"

#include "shape/bow.h"

tside_i_wall tside_i_wall_of(tside_i_sketch *sketch, tside_which_end which)
{
    const tside_i_setup *setup = sketch->setup;
    tside_i_wall w = {.sketch = sketch, .side = setup->side, .end = tside_i_end(setup->side, which)};
    w.plan = which == TSIDE_DRIVE_END ? &sketch->plan->drive_end : &sketch->plan->free_end;
    w.collar = tside_i_end_collar(setup, which);
    w.face = setup->hip.face;
    w.ground = tside_i_end_ground(setup->side, which);
    w.rider = which == TSIDE_DRIVE_END ? TSIDE_PART_DRIVE : TSIDE_PART_COLLAR;
    w.centre = w.plan->stand.line - w.collar.along;
    if (w.end->hung == TSIDE_ON_EXTENDER) {
        w.inner = setup->bow.diameter / 2 + w.end->extender.spacer;
        w.outer = w.inner + w.end->extender.tube.side;
    }
    return w;
}

tside_i_pen tside_i_pen_of(tside_part part, tside_line_type line)
{
    return (tside_i_pen){part, TSIDE_SHOWN_ALWAYS, line, 0};
}

/*
 * Not so many, where ground is drawn large, that others find no room: along the house there are two grounds, two lines
 * for each joint, fewer than fifty-six others, and six at least for ropes.
 */
enum { MARKS = (TSIDE_STROKES - 2 * TSIDE_JOINTS_DRAWN - 56 - 6) / 2 };

void tside_i_draw_ground(tside_i_sketch *sketch, double left, double right, double ground)
{
    const double step = fmax(5e-3 * sketch->picture.scale, (right - left) / MARKS);
    tside_i_segment(sketch, tside_i_pen_of(TSIDE_PART_GROUND, TSIDE_LINE_WIDE), sketch->outboard * left, ground,
                    sketch->outboard * right, ground);
    for (double x = left; x + step / 2 <= right; x += step)
        tside_i_segment(sketch, tside_i_pen_of(TSIDE_PART_GROUND, TSIDE_LINE_NARROW), sketch->outboard * x,
                        ground - step / 2, sketch->outboard * (x + step / 2), ground);
}

void tside_i_draw_bow(const tside_i_wall *w)
{
    const tside_bow *bow = &w->sketch->setup->bow;
    const double half = bow->diameter / 2, below = w->ground - bow->centre.piece[0].y - bow->diameter;
    const tside_i_pen outline = tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_WIDE);
    tside_i_path_strokes(w->sketch, outline, &bow->face, below, bow->face.length, 0);
    tside_i_path_strokes(w->sketch, outline, &bow->centre, below, bow->centre.length, -half);
    tside_i_path_strokes(w->sketch, tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_CHAIN), &bow->centre, below,
                         bow->centre.length, 0);
}

void tside_i_draw_board(const tside_i_wall *w)
{
    const tside_bow *bow = &w->sketch->setup->bow;
    const tside_i_pen pen = tside_i_pen_of(TSIDE_PART_BOARD, TSIDE_LINE_WIDE);
    double face = bow->board_x;
    if (!bow->board_given)
        return;
    if (tside_bow_face(bow, bow->board_y, &face, NULL) == TSIDE_OK)
        tside_i_segment(w->sketch, pen, face, bow->board_y, bow->board_x, bow->board_y);
    tside_i_segment(w->sketch, pen, bow->board_x, bow->board_y, bow->board_x, w->ground);
    tside_i_note(w->sketch, TSIDE_PART_BOARD, TSIDE_SHOWN_ALWAYS, 0, bow->board_x,
                 (bow->board_y + fmax(w->ground, w->sketch->crop.bottom)) / 2);
}

void tside_i_draw_rail(const tside_i_wall *w)
{
    const tside_line *line = &w->sketch->setup->travel.line;
    const tside_i_pen rail = tside_i_pen_of(TSIDE_PART_RAIL, TSIDE_LINE_WIDE);
    tside_i_segment(w->sketch, rail, w->face, line->y, line->x, line->y);
    tside_i_segment(w->sketch, rail, line->x, line->y, line->x, line->y - w->side->curtain.rail_depth);
    tside_i_note(w->sketch, TSIDE_PART_HIP, TSIDE_SHOWN_ALWAYS, 0, line->x, line->y);
}
