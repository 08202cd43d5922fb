/* SPDX-License-Identifier: MIT */
/*
 * The roll when shut or open against board, sill, rail and the bow's face, as at the drive's end wall, with what is
 * round it on paper and no more: a measure from a place that lies farther away is told at the roll.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

#include "shape/travel.h"

/* A state of the roll, by its name in the plan. */
typedef struct state {
    tside_i_wall w;
    tside_i_spot spot;
    const tside_position *at;
    tside_shown shown;
    double sill;
} state;

static state state_of(tside_i_sketch *sketch)
{
    const int open = sketch->picture.view == TSIDE_VIEW_ROLL_OPEN;
    const tside_travel *travel = &sketch->setup->travel;
    state s = {.w = tside_i_wall_of(sketch, TSIDE_DRIVE_END), .sill = travel->sill};
    s.at = open ? &sketch->plan->open : &sketch->plan->shut;
    s.shown = open ? TSIDE_SHOWN_OPEN : TSIDE_SHOWN_SHUT;
    tside_i_travel_at(travel, open ? travel->end : travel->wraps_shut, &s.spot);
    return s;
}

/* A height that is shown, being no farther than 80 mm on paper from the roll; of one that is not the roll's own. */
static double shown_height(const state *s, double height)
{
    return fabs(height - s->spot.y) < s->spot.r + 80e-3 * s->w.sketch->picture.scale ? height : s->spot.y;
}

/*
 * From the bow's inner side to as far outside the roll; up and down to hip, sill, ground and a rope's end, where they
 * are shown.
 */
static void crop(const state *s)
{
    const double round = 8e-3 * s->w.sketch->picture.scale, r = s->spot.r,
                 inner = s->spot.x - 2 * r - s->w.sketch->setup->bow.diameter - s->w.side->curtain.standoff;
    const tside_plan *plan = s->w.sketch->plan;
    const double rope = s->shown == TSIDE_SHOWN_OPEN ? plan->rope.hook_y : plan->rope.anchor_y,
                 heights[] = {s->w.side->curtain.hip, s->sill, s->w.ground, plan->rope_given ? rope : s->spot.y};
    double bottom = s->spot.y - r, top = s->spot.y + r;
    for (int i = 0; i < 4; i++) {
        bottom = fmin(bottom, shown_height(s, heights[i]));
        top = fmax(top, shown_height(s, heights[i]));
    }
    tside_i_sketch_crop(s->w.sketch, inner - round, bottom - round, s->spot.x + r + round, top + round);
}

static int is_seen(const state *s, double height)
{
    return height >= s->w.sketch->crop.bottom && height <= s->w.sketch->crop.top;
}

/* The sill's height, a short stroke outboard of the bow's face there; what the sill is made of is not known. */
static void draw_sill(const state *s)
{
    const double half = s->spot.r + 4e-3 * s->w.sketch->picture.scale;
    tside_i_segment(s->w.sketch, tside_i_pen_of(TSIDE_PART_SILL, TSIDE_LINE_CHAIN), s->spot.x - half, s->sill,
                    s->spot.x + half, s->sill);
    tside_i_note(s->w.sketch, TSIDE_PART_SILL, TSIDE_SHOWN_ALWAYS, 0, s->spot.x + half * 0.9, s->sill);
}

/* A height between the roll's underside and a place: with its line where both are seen, else in words at the roll. */
static void tell_height(const state *s, tside_tells tells, double value, double height)
{
    const double under = s->at->y - s->at->diameter / 2;
    tside_i_dimension(s->w.sketch, tells, is_seen(s, height) ? TSIDE_DIMENSION_PLUMB : TSIDE_DIMENSION_PLACE,
                      TSIDE_I_OUTBOARD, value, s->at->x, under, s->at->x, height);
}

/* How far a rope's end is above hip or ground; where it is level with that, in words alone. */
static void tell_rope_end(const state *s, tside_tells tells, double x, double y, double from)
{
    if (is_seen(s, y))
        tside_i_dimension(s->w.sketch, tells,
                          is_seen(s, from) && y != from ? TSIDE_DIMENSION_PLUMB : TSIDE_DIMENSION_PLACE,
                          TSIDE_I_INBOARD, y - from, x, y, x, from);
}

/* Over the roll, with what is told of its end that is nearer. */
static void draw_rope(const state *s)
{
    const tside_rope_plan *rope = &s->w.sketch->plan->rope;
    double on[2];
    if (!s->w.sketch->plan->rope_given)
        return;
    tside_i_draw_rope_over(s->w.sketch, &s->spot, s->shown, on);
    tside_i_note(s->w.sketch, TSIDE_PART_ROPE, s->shown, 0, on[0], on[1]);
    if (s->shown == TSIDE_SHOWN_OPEN)
        tell_rope_end(s, TSIDE_TELLS_HOOK_HEIGHT, rope->hook_x, rope->hook_y, s->w.side->curtain.hip);
    else
        tell_rope_end(s, TSIDE_TELLS_ANCHOR_HEIGHT, rope->anchor_x, rope->anchor_y, s->w.ground);
}

static void tell(const state *s)
{
    const tside_plan *plan = s->w.sketch->plan;
    const double hip = s->w.side->curtain.hip, slant = sqrt(0.5) * s->at->diameter / 2;
    tell_height(s, s->shown == TSIDE_SHOWN_OPEN ? TSIDE_TELLS_OPEN_BELOW_HIP : TSIDE_TELLS_SHUT_BELOW_HIP,
                hip - s->at->underside, hip);
    tell_height(s, s->shown == TSIDE_SHOWN_OPEN ? TSIDE_TELLS_OPEN_ABOVE_GROUND : TSIDE_TELLS_SHUT_ABOVE_GROUND,
                s->at->underside - s->w.ground, s->w.ground);
    tell_height(s, s->shown == TSIDE_SHOWN_OPEN ? TSIDE_TELLS_OPENING : TSIDE_TELLS_SEAL,
                s->shown == TSIDE_SHOWN_OPEN ? plan->opening : plan->seal, s->sill);
    tside_i_dimension(s->w.sketch, s->shown == TSIDE_SHOWN_OPEN ? TSIDE_TELLS_OPEN_DIAMETER : TSIDE_TELLS_SHUT_DIAMETER,
                      TSIDE_DIMENSION_DIAMETER, TSIDE_I_OUTBOARD, s->at->diameter, s->at->x + slant, s->at->y + slant,
                      s->at->x - slant, s->at->y - slant);
}

void tside_i_draw_roll(tside_i_sketch *sketch)
{
    state s;
    tside_i_pen pen = tside_i_pen_of(TSIDE_PART_ROLL, TSIDE_LINE_WIDE);
    tside_i_sketch_from_outside(sketch, TSIDE_DRIVE_END);
    s = state_of(sketch);
    crop(&s);
    tside_i_draw_bow(&s.w);
    tside_i_draw_board(&s.w);
    tside_i_draw_rail(&s.w);
    draw_sill(&s);
    if (is_seen(&s, s.w.ground))
        tside_i_draw_ground(sketch, sketch->crop.left, sketch->crop.right, s.w.ground);
    pen.shown = s.shown;
    tside_i_draw_roll_at(sketch, &s.spot, pen);
    draw_rope(&s);
    tside_i_note(sketch, TSIDE_PART_ROLL, s.shown, 0, s.spot.x - 0.6 * s.spot.r, s.spot.y + 0.8 * s.spot.r);
    tside_i_note(sketch, TSIDE_PART_BAR, TSIDE_SHOWN_ALWAYS, 0, s.spot.x, s.spot.y);
    tell(&s);
}
