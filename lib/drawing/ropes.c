/* SPDX-License-Identifier: MIT */
/*
 * Ropes: one seen along the house, over the roll; and all of them seen square to the side. Where they would stand
 * too close on paper, or are more than a drawing holds lines for, those nearest to both ends stand for all, and a chain
 * line goes on for the rows of hooks and anchors between, as repeated features may be shown (ISO 128-3, from memory).
 * Source: derivation, plane geometry.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

#include "statics/rope.h"

/* --- at an end wall --- */

/* A tangent from a hook to the outboard side of a circle; turn: 1 from above, -1 from below. */
static void draw_tangent(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, const tside_i_spot *roll,
                         int turn, double *touches)
{
    const double dx = roll->x - x, dy = roll->y - y, away = hypot(dx, dy), sine = roll->r / away,
                 cosine = sqrt(1 - sine * sine), length = away * cosine,
                 x_end = x + length * (dx * cosine - turn * dy * sine) / away,
                 y_end = y + length * (dy * cosine + turn * dx * sine) / away;
    tside_i_segment(sketch, pen, x, y, x_end, y_end);
    *touches = atan2(y_end - roll->y, x_end - roll->x);
}

/* The roll does not stand out beyond the straight line between the hooks; on: receives where that is beside the roll.
 */
static int is_straight(const tside_rope_plan *rope, const tside_i_spot *roll, double on[2])
{
    const double dx = rope->anchor_x - rope->hook_x, dy = rope->anchor_y - rope->hook_y, h = hypot(dx, dy),
                 x = roll->x - rope->hook_x, y = roll->y - rope->hook_y, along = (x * dx + y * dy) / h;
    double wrap;
    tside_i_rope_path(h, along, (y * dx - x * dy) / h, roll->r, &wrap);
    on[0] = rope->hook_x + along * dx / h;
    on[1] = rope->hook_y + along * dy / h;
    return wrap == 0;
}

void tside_i_draw_rope_over(tside_i_sketch *sketch, const tside_i_spot *roll, tside_shown shown, double on[2])
{
    const tside_i_pen pen = {TSIDE_PART_ROPE, shown, TSIDE_LINE_NARROW, 0};
    const tside_rope_plan *rope = &sketch->plan->rope;
    double upper, lower;
    if (is_straight(rope, roll, on)) {
        tside_i_segment(sketch, pen, rope->hook_x, rope->hook_y, rope->anchor_x, rope->anchor_y);
        return;
    }
    draw_tangent(sketch, pen, rope->hook_x, rope->hook_y, roll, 1, &upper);
    draw_tangent(sketch, pen, rope->anchor_x, rope->anchor_y, roll, -1, &lower);
    tside_i_arc(sketch, pen, roll->x, roll->y, roll->r, lower, upper - lower);
    on[0] = roll->x + roll->r * cos((lower + upper) / 2);
    on[1] = roll->y + roll->r * sin((lower + upper) / 2);
}

/* --- along the house --- */

/* m on paper: nearer than so, lines beside each other run together (ISO 128-2: 0,7 mm at least, from memory) */
#define CLOSE 1e-3

enum {
    FEW = 8, /* so many at each end stand for those that would run together */
    GAP_LINES = 2
};

/* Legs from hook to anchor, from the drive's end on; those in the gap are not drawn. */
typedef struct row {
    tside_i_sketch *sketch;
    const tside_rope_plan *rope;
    int zigzag, bays, legs;
    int gap_from, gap_to;
} row;

/* m along the house; a zigzag's hooks and anchors each hold two legs. */
static double hook_of(const row *r, int leg)
{
    return r->rope->bears.pitch * (r->zigzag ? (leg + 1) / 2 : leg);
}

static double anchor_of(const row *r, int leg)
{
    return r->rope->bears.pitch * (r->zigzag ? leg / 2 + 0.5 : leg);
}

/* How many are drawn from each end on. */
static int each_end_of(const row *r)
{
    const double apart = (anchor_of(r, 2) - anchor_of(r, 0)) / 2;
    const int left = TSIDE_STROKES - r->sketch->strokes - GAP_LINES;
    const int most = apart < CLOSE * r->sketch->picture.scale && left > 2 * FEW ? 2 * FEW : left;
    return r->legs <= most ? r->legs : most / 2;
}

static row row_of(tside_i_sketch *sketch)
{
    const tside_rope_plan *rope = &sketch->plan->rope;
    row r = {.sketch = sketch, .rope = rope, .zigzag = sketch->setup->side->ropes == TSIDE_ZIGZAG_ROPE};
    int each_end;
    r.bays = rope->bears.upper_hooks - 1;
    r.legs = r.zigzag ? 2 * r.bays : r.bays + 1;
    each_end = each_end_of(&r);
    r.gap_from = each_end;
    r.gap_to = each_end < r.legs ? r.legs - each_end : r.legs;
    return r;
}

/* The leg that is drawn so far along the house, from 0 to 1, or nearest before that. */
static int leg_at(const row *r, double part)
{
    const int leg = (int)(part * (r->legs - 1));
    return leg >= r->gap_from && leg < r->gap_to ? r->gap_from - 1 : leg;
}

static void draw_legs(const row *r, int from, int to)
{
    const tside_i_pen pen = {TSIDE_PART_ROPE, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_NARROW, 0};
    for (int i = from; i < to; i++)
        tside_i_segment(r->sketch, pen, hook_of(r, i), r->rope->hook_y, anchor_of(r, i), r->rope->anchor_y);
}

static void draw_gap(const row *r)
{
    const tside_i_pen pen = {TSIDE_PART_ROPE, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_CHAIN, 0};
    const int from = r->gap_from - 1, to = r->gap_to;
    tside_i_segment(r->sketch, pen, hook_of(r, from), r->rope->hook_y, hook_of(r, to), r->rope->hook_y);
    tside_i_segment(r->sketch, pen, anchor_of(r, from), r->rope->anchor_y, anchor_of(r, to), r->rope->anchor_y);
}

/* Told at a hook in the middle, with room for it on both sides: the nearest bay is as long as any. */
static void tell_pitch(const row *r)
{
    const int leg = leg_at(r, 0.5);
    tside_i_pitch(r->sketch, TSIDE_TELLS_ROPE_PITCH, r->rope->bears.pitch, r->bays, hook_of(r, leg), r->rope->hook_y);
}

void tside_i_draw_ropes(tside_i_sketch *sketch)
{
    row r;
    if (!sketch->plan->rope_given)
        return;
    r = row_of(sketch);
    draw_legs(&r, 0, r.gap_from);
    draw_legs(&r, r.gap_to, r.legs);
    if (r.gap_from < r.gap_to)
        draw_gap(&r);
    tell_pitch(&r);
}
