/* SPDX-License-Identifier: MIT */
/* Where the bar is and how it moves, at some progress along a travel. Source: derivation. */
#include "shape/spot.h"

/*
 * On a piece of the line: a roll of radius r on a piece of curvature k takes up 1/(1 + k r) of a wrap each turn, and at
 * a corner none.
 */
static void lie_on_line(const tside_line_piece *piece, double corner_slope, tside_i_spot *spot)
{
    tside_i_line_point at = tside_i_line_at(piece, spot->s - piece->from);
    spot->share = 1;
    if (piece->turn != 0) {
        spot->share = piece->length / (piece->length + piece->turn * spot->r);
        if (piece->length == 0) {
            at.nx = cos(corner_slope);
            at.ny = sin(corner_slope);
        }
    }
    spot->nx = at.nx;
    spot->ny = at.ny;
    spot->x = at.x + spot->r * at.nx;
    spot->y = at.y + spot->r * at.ny;
    spot->swing = 0;
    spot->on_line = 1;
}

void tside_i_spot_roll(const tside_travel *travel, double wraps, tside_i_spot *spot)
{
    spot->wraps = wraps;
    spot->r = tside_i_roll_diameter(&travel->roll, wraps) / 2;
    spot->length = tside_i_roll_length(&travel->roll, wraps);
    spot->s = travel->hanging + tside_i_roll_length(&travel->roll, travel->wraps_shut) - spot->length;
    if (spot->s < 0) /* only by rounding, with the roll's axis at the fixing */
        spot->s = 0;
    spot->on_line = 0;
    spot->slack = 0;
}

/*
 * Between tipping and hanging again nothing lifts the roll and its place is no function of the bar's angle: it is taken
 * to roll over evenly, from over the edge to where it hangs, at no torque. Its curtain, slack, is taken to fall back
 * evenly too, so that the bar never turns back.
 */
static void tip_over(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot)
{
    const tside_stretch *here = travel->stretch + stretch;
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double to = tside_i_stretch_end(travel, stretch),
           share = to > here->from ? (progress - here->from) / (to - here->from) : 1, slope;
    tside_i_spot hung;
    tside_i_spot_roll(travel, to - here->lead, &hung);
    tside_i_chord_settle(&travel->line, 0, &hung);
    slope = here->slope + share * (tside_i_chord_slope(&hung) - here->slope);
    spot->x = edge->x + share * (hung.x - edge->x);
    spot->y = edge->y + spot->r + share * (hung.y - edge->y - spot->r);
    spot->nx = cos(slope);
    spot->ny = sin(slope);
    spot->share = spot->slack = 1;
    spot->swing = spot->vx = spot->vy = 0;
}

void tside_i_travel_spot(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot)
{
    const tside_stretch *here = travel->stretch + stretch;
    const tside_line_piece *piece = here->held == TSIDE_HELD_LINE ? travel->line.piece + here->index : NULL;
    double growth = tside_i_roll_growth(&travel->roll), out;
    int corner = piece && piece->length == 0;
    tside_i_spot_roll(travel, corner ? here->from - here->lead : progress - here->lead, spot);
    switch (here->held) {
    case TSIDE_HELD_LINE:
        if (corner)
            spot->s = piece->from;
        lie_on_line(piece, here->slope + 2 * TSIDE_PI * (progress - here->from), spot);
        break;
    case TSIDE_HELD_BEARING:
        if (tside_i_chord_on(&travel->line, travel->line.obstacle + here->index, spot))
            tside_i_chord_swing(travel->line.obstacle + here->index, growth, spot);
        else
            tside_i_chord_plumb(&travel->line, spot); /* by rounding, at the stretch's very end */
        break;
    case TSIDE_HELD_FREE: tside_i_chord_plumb(&travel->line, spot); break;
    case TSIDE_HELD_UNSETTLED: tside_i_chord_settle(&travel->line, growth, spot); break;
    case TSIDE_HELD_TIPPED: tip_over(travel, stretch, progress, spot); return;
    }
    /* v = -r t + N (growth share + swing) per radian of bar angle, with t = (ny, -nx) */
    out = growth * spot->share + spot->swing;
    spot->vx = -spot->r * spot->ny + spot->nx * out;
    spot->vy = spot->r * spot->nx + spot->ny * out;
}

double tside_i_travel_angle(const tside_travel *travel, const tside_i_spot *spot)
{
    return 2 * TSIDE_PI * (spot->wraps - travel->wraps_shut) + tside_i_chord_slope(spot) - travel->slope;
}

int tside_i_travel_stretch(const tside_travel *travel, double progress)
{
    int i = 0;
    while (i + 1 < travel->stretches && progress > travel->stretch[i + 1].from)
        i++;
    return i;
}

void tside_i_travel_at(const tside_travel *travel, double progress, tside_i_spot *spot)
{
    tside_i_travel_spot(travel, tside_i_travel_stretch(travel, progress), progress, spot);
}

double tside_i_travel_turns(const tside_travel *travel, double progress)
{
    tside_i_spot spot;
    tside_i_travel_at(travel, progress, &spot);
    return tside_i_travel_angle(travel, &spot) / (2 * TSIDE_PI);
}

void tside_i_travel_position(const tside_travel *travel, const tside_i_spot *spot, tside_position *position)
{
    double underside = spot->y - spot->r;
    position->wraps = spot->wraps;
    position->turns = tside_i_travel_angle(travel, spot) / (2 * TSIDE_PI);
    position->taken_up = spot->length - tside_i_roll_length(&travel->roll, travel->wraps_shut);
    position->diameter = 2 * spot->r;
    position->hanging = spot->s;
    position->x = spot->x;
    position->y = spot->y;
    position->underside = underside;
    position->opening = underside > travel->sill ? underside - travel->sill : 0;
    position->slope = tside_i_chord_slope(spot);
}
