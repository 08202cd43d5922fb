/* SPDX-License-Identifier: MIT */
/*
 * Curtain, roll and bar where they are at some spot of the travel: along the line's straight pieces and arcs, or by a
 * straight chord, to where the curtain meets the roll. Source: derivation, plane geometry.
 */
#include "drawing/views.h"

#include "shape/curtain.h"

/* A piece of the line so far down; it turns clockwise, about a centre inboard of it. */
static void draw_piece(tside_i_sketch *sketch, tside_i_pen pen, const tside_line_piece *piece, double length)
{
    const tside_i_line_point end = tside_i_line_at(piece, length);
    double radius;
    if (piece->turn == 0) {
        tside_i_segment(sketch, pen, piece->x, piece->y, end.x, end.y);
        return;
    }
    radius = piece->length / piece->turn;
    tside_i_arc(sketch, pen, piece->x - radius * piece->cosine, piece->y - radius * piece->sine, radius,
                piece->slope - length / radius, length / radius);
}

void tside_i_draw_roll_at(tside_i_sketch *sketch, const tside_i_spot *spot, tside_i_pen pen)
{
    const tside_travel *travel = &sketch->setup->travel;
    const tside_line *line = &travel->line;
    const double meets_x = spot->x - spot->r * spot->nx, meets_y = spot->y - spot->r * spot->ny;
    pen.part = TSIDE_PART_CURTAIN;
    if (!spot->on_line)
        tside_i_segment(sketch, pen, line->x, line->y, meets_x, meets_y);
    for (int i = 0; spot->on_line && i < line->count && line->piece[i].from < spot->s; i++)
        if (line->piece[i].length > 0)
            draw_piece(sketch, pen, line->piece + i, fmin(spot->s - line->piece[i].from, line->piece[i].length));
    pen.part = TSIDE_PART_ROLL;
    tside_i_circle(sketch, pen, spot->x, spot->y, spot->r);
    pen.part = TSIDE_PART_BAR;
    tside_i_circle(sketch, pen, spot->x, spot->y, sketch->setup->bar->tube.diameter / 2);
}
