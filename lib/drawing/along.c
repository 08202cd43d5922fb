/* SPDX-License-Identifier: MIT */
/*
 * The side along the house, from outside, shut: end bows, curtain, bar with its joints, and at both ends what stands
 * and rides there. Of a bar whose joints are given only the nearest is known. Between the ends no ground is known, and
 * none is drawn.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

#include "shape/travel.h"

/* An end as it stands along the house: its plane, and which way outward is. */
typedef struct house_end {
    tside_i_wall w;
    double plane;   /* m, of its bow's centreline, from the drive's end bow */
    double outward; /* 1 towards the free end, -1 towards the drive's */
} house_end;

typedef struct house {
    tside_i_sketch *sketch;
    house_end ends[2];
    tside_i_spot spot;
    double hip, past;
} house;

static house_end end_of(tside_i_sketch *sketch, tside_which_end which)
{
    const int at_drive = which == TSIDE_DRIVE_END;
    house_end e = {.w = tside_i_wall_of(sketch, which),
                   .plane = at_drive ? 0 : sketch->setup->side->length,
                   .outward = at_drive ? -1 : 1};
    return e;
}

/* Where something so far outside an end's plane is along the house. */
static double at(const house_end *e, double z)
{
    return e->plane + e->outward * z;
}

/* --- an end --- */

static void draw_box(const house_end *e, tside_part part, double z, double y, double z_end, double y_end)
{
    tside_i_rectangle(e->w.sketch, tside_i_pen_of(part, TSIDE_LINE_WIDE), at(e, z), y, at(e, z_end), y_end);
}

static void draw_ground(const house_end *e)
{
    const double a = e->w.sketch->outboard * at(e, -12e-3 * e->w.sketch->picture.scale),
                 b = e->w.sketch->outboard * at(e, fmax(e->w.plan->stand.eye, e->w.centre + e->w.collar.half_length) +
                                                       4e-3 * e->w.sketch->picture.scale);
    tside_i_draw_ground(e->w.sketch, fmin(a, b), fmax(a, b), e->w.ground);
}

/* Edge on. */
static void draw_extender(const house_end *e)
{
    const tside_layout *l = &e->w.plan->layout;
    const tside_extender *extender = &e->w.end->extender;
    const double inner = e->w.inner, outer = e->w.outer, half = extender->tube.side / 2 * sin(l->angle),
                 top = l->eye_y + l->eye_from_top * cos(l->angle);
    draw_box(e, TSIDE_PART_EXTENDER, inner, top - l->cut_length * cos(l->angle) - half, outer, top + half);
    tside_i_segment(e->w.sketch, tside_i_pen_of(TSIDE_PART_EYE_BOLT, TSIDE_LINE_WIDE), at(e, outer), e->w.plan->eye_y,
                    at(e, e->w.plan->stand.eye), e->w.plan->eye_y);
    tside_i_note(e->w.sketch, TSIDE_PART_EXTENDER, TSIDE_SHOWN_ALWAYS, 0, at(e, (inner + outer) / 2), top);
}

/* The guide from its eye, as it leans along the house. */
static void draw_guide(const house_end *e)
{
    const tside_end_plan *plan = e->w.plan;
    const double y = plan->eye_y, z = plan->stand.eye, lean = plan->sweep.lean_shut,
                 length = plan->skew_given ? plan->skew.length : plan->sweep.length,
                 along = plan->skew_given ? plan->skew.lean_shut : 0, down = cos(along) * cos(lean),
                 chain = tside_i_stands(&e->w) ? 0 : e->w.end->guide.chain,
                 to = length + (tside_i_stands(&e->w) ? e->w.end->footing.depth / cos(lean) : 0);
    const tside_i_pen pen = tside_i_pen_of(TSIDE_PART_GUIDE, TSIDE_LINE_WIDE);
    tside_i_segment(e->w.sketch, pen, at(e, z), y, at(e, z + chain * sin(along)), y - chain * down);
    tside_i_tube(e->w.sketch, pen, at(e, z + chain * sin(along)), y - chain * down, at(e, z + to * sin(along)),
                 y - to * down, e->w.end->guide.tube.diameter);
    tside_i_note(e->w.sketch, TSIDE_PART_GUIDE, TSIDE_SHOWN_ALWAYS, 0,
                 at(e, z + length / 2 * sin(along) + e->w.end->guide.tube.diameter / 2), y - length / 2 * down);
}

static void draw_end(const house *h, const house_end *e)
{
    const double half = h->sketch->setup->bow.diameter / 2, top = h->hip + 10e-3 * h->sketch->picture.scale;
    const tside_i_pen bow = tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_WIDE);
    draw_ground(e);
    tside_i_segment(h->sketch, bow, at(e, -half), e->w.ground, at(e, -half), top);
    tside_i_segment(h->sketch, bow, at(e, half), e->w.ground, at(e, half), top);
    tside_i_segment(h->sketch, tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_CHAIN), at(e, 0), e->w.ground, at(e, 0), top);
    tside_i_note(h->sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, 0, at(e, -half), top);
    if (e->w.end->hung == TSIDE_ON_EXTENDER)
        draw_extender(e);
    draw_guide(e);
    draw_box(e, e->w.rider, e->w.centre - e->w.collar.half_length,
             h->spot.y - fmin(e->w.collar.height, tside_i_rider_half(&e->w, &h->spot)),
             e->w.centre + e->w.collar.half_length, h->spot.y + e->w.collar.height);
    tside_i_note(h->sketch, e->w.rider, TSIDE_SHOWN_ALWAYS, 0, at(e, e->w.centre + e->w.collar.half_length), h->spot.y);
}

/* --- along the side --- */

static double curtain_edge(const house *h, int end)
{
    return at(h->ends + end, h->past);
}

static void draw_curtain(const house *h)
{
    const double from = curtain_edge(h, TSIDE_DRIVE_END), to = curtain_edge(h, TSIDE_FREE_END);
    tside_i_rectangle(h->sketch, tside_i_pen_of(TSIDE_PART_CURTAIN, TSIDE_LINE_WIDE), from, h->spot.y, to, h->hip);
    tside_i_rectangle(h->sketch, tside_i_pen_of(TSIDE_PART_ROLL, TSIDE_LINE_WIDE), from, h->spot.y - h->spot.r, to,
                      h->spot.y + h->spot.r);
    tside_i_segment(h->sketch, tside_i_pen_of(TSIDE_PART_SILL, TSIDE_LINE_DASHED), h->ends[0].plane,
                    h->sketch->setup->travel.sill, h->ends[1].plane, h->sketch->setup->travel.sill);
    tside_i_note(h->sketch, TSIDE_PART_CURTAIN, TSIDE_SHOWN_ALWAYS, 0, from + 0.3 * (to - from),
                 (h->spot.y + h->hip) / 2);
    tside_i_note(h->sketch, TSIDE_PART_HIP, TSIDE_SHOWN_ALWAYS, 0, from + 0.7 * (to - from), h->hip);
    tside_i_note(h->sketch, TSIDE_PART_SILL, TSIDE_SHOWN_ALWAYS, 0, from + 0.45 * (to - from),
                 h->sketch->setup->travel.sill);
}

static double bar_begins(const house *h)
{
    return curtain_edge(h, TSIDE_DRIVE_END) - h->sketch->plan->bar_beyond_drive;
}

static void draw_bar(const house *h)
{
    const double half = h->sketch->setup->bar->tube.diameter / 2, free = curtain_edge(h, TSIDE_FREE_END);
    const tside_i_pen pen = tside_i_pen_of(TSIDE_PART_BAR, TSIDE_LINE_WIDE);
    tside_i_rectangle(h->sketch, pen, bar_begins(h), h->spot.y - half, curtain_edge(h, TSIDE_DRIVE_END),
                      h->spot.y + half);
    tside_i_rectangle(h->sketch, pen, free, h->spot.y - half, free + h->sketch->plan->bar_beyond_free,
                      h->spot.y + half);
    tside_i_note(h->sketch, TSIDE_PART_BAR, TSIDE_SHOWN_ALWAYS, 0, free, h->spot.y - half);
}

/* A joint from where the farther stick begins to where the nearer one ends; where that is one line on paper, one. */
static void draw_joint(const house *h, int index, double from, double overlap)
{
    const double past = h->spot.r + 2e-3 * h->sketch->picture.scale;
    tside_i_pen pen = tside_i_pen_of(TSIDE_PART_JOINT, TSIDE_LINE_WIDE);
    pen.index = index;
    tside_i_segment(h->sketch, pen, from, h->spot.y - past, from, h->spot.y + past);
    if (overlap >= 1e-3 * h->sketch->picture.scale)
        tside_i_segment(h->sketch, pen, from + overlap, h->spot.y - past, from + overlap, h->spot.y + past);
}

/* Where stick after stick of whole lengths begins; the last but one may be cut. */
static void draw_joints(const house *h)
{
    const tside_bar *bar = h->sketch->setup->bar;
    const double near = curtain_edge(h, TSIDE_DRIVE_END) + h->sketch->plan->splice_near;
    tside_i_made made;
    if (h->sketch->plan->splices < 1)
        return;
    tside_i_note(h->sketch, TSIDE_PART_JOINT, TSIDE_SHOWN_ALWAYS, 0, near,
                 h->spot.y + h->spot.r + 2e-3 * h->sketch->picture.scale);
    if (bar->joints == TSIDE_JOINTS_GIVEN ||
        tside_i_bar_make(bar, &h->sketch->setup->bar_lengths, &made, NULL) != TSIDE_OK) {
        draw_joint(h, 0, near, bar->swage);
        return;
    }
    for (int i = 0; i < made.sticks - 1; i++) {
        const double length = i == made.sticks - 2 ? made.before : bar->stock;
        draw_joint(h, i, bar_begins(h) + i * (bar->stock - bar->swage) + length - bar->swage, bar->swage);
    }
}

static void measure(const house *h, tside_tells tells, tside_i_beside beside, double value, double from, double to)
{
    tside_i_dimension(h->sketch, tells, TSIDE_DIMENSION_LEVEL, beside, value, from, h->spot.y, to, h->spot.y);
}

static void tell(const house *h)
{
    const tside_plan *plan = h->sketch->plan;
    const double from = curtain_edge(h, TSIDE_DRIVE_END), to = curtain_edge(h, TSIDE_FREE_END), begins = bar_begins(h);
    measure(h, TSIDE_TELLS_SIDE_LENGTH, TSIDE_I_BELOW, h->sketch->setup->side->length, h->ends[0].plane,
            h->ends[1].plane);
    measure(h, TSIDE_TELLS_CURTAIN_LENGTH, TSIDE_I_BELOW, plan->curtain_length, from, to);
    measure(h, TSIDE_TELLS_BAR_LENGTH, TSIDE_I_BELOW, plan->bar_length, begins, begins + plan->bar_length);
    measure(h, TSIDE_TELLS_BEYOND_DRIVE, TSIDE_I_BELOW, plan->bar_beyond_drive, begins, from);
    measure(h, TSIDE_TELLS_BEYOND_FREE, TSIDE_I_BELOW, plan->bar_beyond_free, to, to + plan->bar_beyond_free);
    if (plan->splices > 0)
        measure(h, TSIDE_TELLS_JOINT_PLACE, TSIDE_I_ABOVE, plan->splice_near, from, from + plan->splice_near);
}

/* From outside, the drive's end of a right-hand side is on the left. */
void tside_i_draw_along(tside_i_sketch *sketch)
{
    const tside_travel *travel = &sketch->setup->travel;
    house h = {.sketch = sketch, .hip = sketch->setup->side->curtain.hip, .past = sketch->setup->side->curtain.past};
    sketch->outboard = sketch->setup->side->hand == TSIDE_RIGHT ? 1 : -1;
    for (int i = 0; i < 2; i++)
        h.ends[i] = end_of(sketch, (tside_which_end)i);
    tside_i_travel_at(travel, travel->wraps_shut, &h.spot);
    for (int i = 0; i < 2; i++)
        draw_end(&h, h.ends + i);
    draw_curtain(&h);
    draw_bar(&h);
    draw_joints(&h);
    tell(&h);
    tside_i_draw_ropes(sketch);
}
