/* SPDX-License-Identifier: MIT */
/*
 * An end's corner from above, when open: how far outside the end bow curtain, drive and guide stand. That wall's
 * outside is at the foot of the page, and outboard on the same hand as in the end wall's view. The end bow is shown by
 * its section at hip height.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

#include "shape/bow.h"
#include "shape/travel.h"

/* Places along the house are z, outward; up the page is inward. */
typedef struct corner {
    tside_i_wall w;
    tside_i_spot spot; /* where the bar is */
    tside_shown shown; /* in which state */
    double past;       /* z of the curtain's edge */
    double end;        /* z of the bar's end */
    double top;        /* m, how far outboard its top end is */
    double bow_x;      /* m, the end bow's centreline at hip height */
    double paper;      /* m, a metre on paper */
} corner;

static corner corner_of(tside_i_sketch *sketch)
{
    const tside_which_end which = sketch->picture.end;
    const tside_i_setup *setup = sketch->setup;
    corner c = {.w = tside_i_wall_of(sketch, which), .shown = TSIDE_SHOWN_OPEN};
    const double run_on = which == TSIDE_DRIVE_END ? sketch->plan->bar_beyond_drive : sketch->plan->bar_beyond_free;
    c.past = c.w.side->curtain.past;
    c.end = c.past + run_on;
    if (c.w.end->hung == TSIDE_ON_EXTENDER)
        c.top = c.w.plan->layout.eye_x + c.w.plan->layout.eye_from_top * sin(c.w.plan->layout.angle) +
                c.w.end->extender.tube.side / 2 * cos(c.w.plan->layout.angle);
    c.bow_x = tside_i_path_at(&setup->bow.centre, setup->hip.arc).x;
    c.paper = sketch->picture.scale;
    tside_i_travel_at(&setup->travel, setup->travel.end, &c.spot);
    if (sketch->asked) {
        c.spot = *sketch->asked;
        c.shown = TSIDE_SHOWN_AT_TURNS;
    }
    return c;
}

/* From the bow bolt, or the bow, to outside the drive; from inside the end bow to what stands farthest out. */
static void crop(const corner *c)
{
    const double round = 8e-3 * c->paper, d = c->w.sketch->setup->bow.diameter;
    double inner = fmin(c->bow_x, c->spot.x - c->w.collar.offset) - 1.5 * d,
           outer = fmax(fmax(c->spot.x + tside_i_rider_half(&c->w, &c->spot), c->w.plan->eye_x), c->w.face) +
                   c->w.end->guide.tube.diameter;
    if (c->w.outer > 0)
        inner = fmin(inner, c->w.plan->layout.bow_x - c->w.end->extender.tube.side);
    tside_i_sketch_crop(c->w.sketch, inner - round,
                        -fmax(fmax(c->w.centre + c->w.collar.half_length, c->end), c->w.plan->stand.eye) - round,
                        outer + round, fmax(d, -c->past) + 2 * round);
}

/* Seen from above: a rectangle from one place outboard to another, and from one along the house to another. */
static void draw_box(const corner *c, tside_part part, tside_line_type line, double x, double z, double x_end,
                     double z_end)
{
    tside_i_pen pen = tside_i_pen_of(part, line);
    if (part == c->w.rider)
        pen.shown = c->shown;
    tside_i_rectangle(c->w.sketch, pen, x, -z, x_end, -z_end);
}

/* The same of what lies under the extender: dashed where that hides it. */
static void draw_under(const corner *c, tside_part part, double x, double z, double x_end, double z_end)
{
    const tside_i_pen seen = {part, part == TSIDE_PART_ROLL ? c->shown : TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0},
                      hidden = {seen.part, seen.shown, TSIDE_LINE_DASHED, 0};
    const double from = fmin(fmax(z, c->w.inner), z_end), to = fmin(fmax(z, c->w.outer), z_end), sides[] = {x, x_end},
                 ends[] = {z, z_end};
    for (int i = 0; i < 2; i++) {
        const int covered = ends[i] > c->w.inner && ends[i] < c->w.outer;
        tside_i_segment(c->w.sketch, seen, sides[i], -z, sides[i], -from);
        tside_i_segment(c->w.sketch, hidden, sides[i], -from, sides[i], -to);
        tside_i_segment(c->w.sketch, seen, sides[i], -to, sides[i], -z_end);
        tside_i_segment(c->w.sketch, covered ? hidden : seen, x, -ends[i], x_end, -ends[i]);
    }
}

static void name(const corner *c, tside_part part, tside_shown shown, double x, double z)
{
    tside_i_note(c->w.sketch, part, shown, 0, x, -z);
}

/* Its section at hip height, its plane, and the tube that goes on inboard of there. */
static void draw_bow(const corner *c)
{
    const double half = c->w.sketch->setup->bow.diameter / 2, past = 4e-3 * c->paper,
                 inner = c->bow_x - 1e3 * half; /* cropped */
    const tside_i_pen outline = tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_WIDE);
    tside_i_circle(c->w.sketch, outline, c->bow_x, 0, half);
    tside_i_segment(c->w.sketch, outline, inner, half, c->bow_x, half);
    tside_i_segment(c->w.sketch, outline, inner, -half, c->bow_x, -half);
    tside_i_segment(c->w.sketch, tside_i_pen_of(TSIDE_PART_BOW, TSIDE_LINE_CHAIN), inner, 0, c->bow_x + half + past, 0);
    name(c, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, c->bow_x - 2 * half, -half);
}

/* The tube from above, with the bolt that holds it to the bow, and what is between the two. */
static void draw_extender(const corner *c)
{
    const tside_extender *extender = &c->w.end->extender;
    const tside_layout *l = &c->w.plan->layout;
    const double half = extender->tube.side / 2 * cos(l->angle);
    draw_box(c, TSIDE_PART_EXTENDER, TSIDE_LINE_WIDE, c->top - l->cut_length * sin(l->angle) - 2 * half, c->w.inner,
             c->top, c->w.outer);
    name(c, TSIDE_PART_EXTENDER, TSIDE_SHOWN_ALWAYS, l->bow_x - half, (c->w.inner + c->w.outer) / 2);
    if (extender->spacer > 0) {
        draw_box(c, TSIDE_PART_SPACER, TSIDE_LINE_WIDE, l->bow_x - half, c->w.inner - extender->spacer, l->bow_x + half,
                 c->w.inner);
        name(c, TSIDE_PART_SPACER, TSIDE_SHOWN_ALWAYS, l->bow_x - half, c->w.inner - extender->spacer / 2);
    }
    tside_i_segment(c->w.sketch, tside_i_pen_of(TSIDE_PART_HOLE, TSIDE_LINE_CHAIN), l->bow_x,
                    c->w.sketch->setup->bow.diameter / 2 + 2e-3 * c->paper, l->bow_x, -c->w.outer - 2e-3 * c->paper);
    draw_box(c, TSIDE_PART_EYE_BOLT, TSIDE_LINE_WIDE, l->eye_x - extender->eye_root / 2, c->w.outer,
             l->eye_x + extender->eye_root / 2, c->w.plan->stand.eye);
    name(c, TSIDE_PART_EYE_BOLT, TSIDE_SHOWN_ALWAYS, l->eye_x, (c->w.outer + c->w.plan->stand.eye) / 2);
}

/* The rail's outer edge; to the eye where that hangs from it. */
static void draw_rail(const corner *c)
{
    const double x = c->w.sketch->setup->travel.line.x,
                 to = c->w.end->hung == TSIDE_ON_HIP ? c->w.plan->stand.eye : c->past;
    tside_i_segment(c->w.sketch, tside_i_pen_of(TSIDE_PART_RAIL, TSIDE_LINE_WIDE), x, c->w.sketch->crop.top, x, -to);
    name(c, TSIDE_PART_RAIL, TSIDE_SHOWN_ALWAYS, x, -c->w.sketch->crop.top + 3e-3 * c->paper);
}

/* Roll to the curtain's edge, bar beyond it, and dashed within what rides on the guide. */
static void draw_bar(const corner *c)
{
    const double r = c->spot.r, half = c->w.sketch->setup->bar->tube.diameter / 2,
                 hidden = fmin(c->w.centre - c->w.collar.half_length, c->end),
                 beyond = fmin(c->w.centre + c->w.collar.half_length, c->end);
    draw_under(c, TSIDE_PART_ROLL, c->spot.x - r, -2 * c->w.sketch->crop.top, c->spot.x + r, c->past);
    name(c, TSIDE_PART_ROLL, c->shown, c->spot.x + r, -c->w.sketch->crop.top + 6e-3 * c->paper);
    name(c, TSIDE_PART_CURTAIN_EDGE, TSIDE_SHOWN_ALWAYS, c->spot.x + r, c->past);
    draw_under(c, TSIDE_PART_BAR, c->spot.x - half, c->past, c->spot.x + half, hidden);
    draw_box(c, TSIDE_PART_BAR, TSIDE_LINE_DASHED, c->spot.x - half, hidden, c->spot.x + half, beyond);
    if (c->end > beyond)
        draw_box(c, TSIDE_PART_BAR, TSIDE_LINE_WIDE, c->spot.x - half, beyond, c->spot.x + half, c->end);
    name(c, TSIDE_PART_BAR, TSIDE_SHOWN_ALWAYS, c->spot.x + half, (c->past + hidden) / 2);
}

/* Drive or collar, as far as it is told: its length, and where the guide passes it. */
static void draw_rider(const corner *c)
{
    const double half = tside_i_rider_half(&c->w, &c->spot), z = c->w.collar.half_length;
    draw_box(c, c->w.rider, TSIDE_LINE_WIDE, c->spot.x - half, c->w.centre - z, c->spot.x + half, c->w.centre + z);
    name(c, c->w.rider, c->shown, c->spot.x - half, c->w.centre + z / 2);
}

/* The guide's pipe at its eye, its centre lines, and its line to where it passes what rides on it. */
static void draw_guide(const corner *c)
{
    const double radius = c->w.end->guide.tube.diameter / 2, past = radius + 2e-3 * c->paper, x = c->w.plan->eye_x,
                 z = c->w.plan->stand.eye;
    const tside_i_pen centre = tside_i_pen_of(TSIDE_PART_GUIDE, TSIDE_LINE_CHAIN);
    tside_i_circle(c->w.sketch, tside_i_pen_of(TSIDE_PART_GUIDE, TSIDE_LINE_WIDE), x, -z, radius);
    tside_i_segment(c->w.sketch, centre, x, -z, c->spot.x + c->w.collar.offset, -c->w.plan->stand.line);
    tside_i_segment(c->w.sketch, centre, x - past, -z, x + past, -z);
    tside_i_segment(c->w.sketch, centre, x, -z - past, x, -z + past);
    name(c, TSIDE_PART_GUIDE, TSIDE_SHOWN_ALWAYS, x + radius * 0.7, z + radius * 0.7);
}

static void measure(const corner *c, tside_tells tells, tside_i_beside beside, double value, double x, double z,
                    double x_end, double z_end)
{
    tside_i_dimension(c->w.sketch, tells, TSIDE_DIMENSION_PLUMB, beside, value, x, -z, x_end, -z_end);
}

/* All from the end bow's plane or the curtain's edge. */
static void tell(const corner *c)
{
    const tside_plan *plan = c->w.sketch->plan;
    const tside_stand *stand = &c->w.plan->stand;
    const double face = c->bow_x + c->w.sketch->setup->bow.diameter / 2, edge = c->spot.x + c->spot.r;
    measure(c, TSIDE_TELLS_CURTAIN_PAST, TSIDE_I_OUTBOARD, c->past, face, 0, edge, c->past);
    measure(c, TSIDE_TELLS_RUN_ON, TSIDE_I_OUTBOARD, stand->run_on, edge, c->past, c->spot.x, c->past + stand->run_on);
    measure(c, TSIDE_TELLS_EYE_OFF_BOW, TSIDE_I_INBOARD, stand->eye, face, 0, c->w.plan->eye_x, stand->eye);
    if (c->w.end->hung == TSIDE_ON_EXTENDER)
        measure(c, TSIDE_TELLS_EYE_OFF_TUBE, TSIDE_I_INBOARD, c->w.end->extender.eye_stand_off, c->w.plan->eye_x,
                c->w.outer, c->w.plan->eye_x, stand->eye);
    if (c->w.sketch->picture.end == TSIDE_FREE_END)
        measure(c, TSIDE_TELLS_BEYOND_FREE, TSIDE_I_OUTBOARD, plan->bar_beyond_free, edge, c->past, c->spot.x, c->end);
}

void tside_i_draw_corner(tside_i_sketch *sketch)
{
    corner c;
    tside_i_sketch_from_outside(sketch, sketch->picture.end);
    c = corner_of(sketch);
    crop(&c);
    draw_bow(&c);
    draw_rail(&c);
    if (c.w.end->hung == TSIDE_ON_EXTENDER)
        draw_extender(&c);
    draw_bar(&c);
    draw_rider(&c);
    draw_guide(&c);
    tell(&c);
}
