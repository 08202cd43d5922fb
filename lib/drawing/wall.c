/* SPDX-License-Identifier: MIT */
/*
 * An end wall from outside itself: what is set out, with the dimensions of the set-out; and the whole bow, to show
 * which part of it that is.
 */
#include "drawing/standing.h"
#include "drawing/views.h"

#include "shape/bow.h"
#include "shape/travel.h"

/* As it was taped, where it was. */
static double hip_above_ground(const tside_i_wall *w)
{
    return w->end->hip_height_given ? w->end->hip_height : w->side->curtain.hip;
}

/* --- what stands --- */

static void draw_keep_outs(const tside_i_wall *w)
{
    tside_i_pen pen = tside_i_pen_of(TSIDE_PART_KEEP_OUT, TSIDE_LINE_WIDE);
    for (int i = 0; i < w->end->keep_out_count; i++) {
        const tside_keep_out out = tside_i_keep_out_in_place(w->sketch->setup, w->sketch->picture.end, i);
        pen.index = i;
        tside_i_rectangle(w->sketch, pen, out.inner, out.bottom, out.outer, out.top);
        tside_i_note(w->sketch, TSIDE_PART_KEEP_OUT, TSIDE_SHOWN_ALWAYS, i, (out.inner + out.outer) / 2, out.top);
    }
}

/* The member's centreline, on which its hole is. */
static void draw_member(const tside_i_wall *w)
{
    const tside_extender *extender = &w->end->extender;
    const double height = extender->member_height + w->ground;
    const tside_i_told level = tside_i_end_level(w->sketch->setup, w->sketch->picture.end);
    const double outer = tside_i_of_told(&level, extender->member_outer), tick = 1.5e-3 * w->sketch->picture.scale;
    tside_i_segment(w->sketch, tside_i_pen_of(TSIDE_PART_MEMBER, TSIDE_LINE_WIDE),
                    tside_i_of_told(&level, extender->member_inner), height, outer, height);
    tside_i_segment(w->sketch, tside_i_pen_of(TSIDE_PART_MEMBER, TSIDE_LINE_WIDE), outer, height - tick, outer,
                    height + tick);
    tside_i_note(w->sketch, TSIDE_PART_MEMBER, TSIDE_SHOWN_ALWAYS, 0,
                 fmax(outer - 0.6 * w->plan->layout.member_from_outer,
                      w->sketch->outboard > 0 ? w->sketch->crop.left : -w->sketch->crop.right),
                 height);
}

static void draw_extender(const tside_i_wall *w)
{
    const tside_extender *extender = &w->end->extender;
    const tside_layout *layout = &w->plan->layout;
    const double sine = sin(layout->angle), cosine = cos(layout->angle),
                 top_x = layout->eye_x + layout->eye_from_top * sine,
                 top_y = layout->eye_y + layout->eye_from_top * cosine,
                 named = layout->bow_distance + 0.35 * (layout->member_distance - layout->bow_distance);
    const tside_i_pen hole = tside_i_pen_of(TSIDE_PART_HOLE, TSIDE_LINE_WIDE);
    tside_i_tube(w->sketch, tside_i_pen_of(TSIDE_PART_EXTENDER, TSIDE_LINE_WIDE), top_x, top_y,
                 top_x - layout->cut_length * sine, top_y - layout->cut_length * cosine, extender->tube.side);
    tside_i_circle(w->sketch, hole, layout->bow_x, layout->bow_height, extender->bolt_hole / 2);
    tside_i_circle(w->sketch, hole, layout->member_x, extender->member_height + w->ground, extender->bolt_hole / 2);
    tside_i_circle(w->sketch, tside_i_pen_of(TSIDE_PART_EYE, TSIDE_LINE_WIDE), layout->eye_x, layout->eye_y,
                   extender->eye_hole / 2);
    tside_i_note(w->sketch, TSIDE_PART_EXTENDER, TSIDE_SHOWN_ALWAYS, 0, layout->eye_x - named * sine,
                 layout->eye_y - named * cosine);
    tside_i_note(w->sketch, TSIDE_PART_EYE, TSIDE_SHOWN_ALWAYS, 0, layout->eye_x, layout->eye_y);
}

/* --- what moves --- */

/* Drive or collar, as far as it is told: its top, and where the guide passes it. */
static void draw_rider(const tside_i_wall *w, const tside_i_spot *spot, tside_i_pen pen)
{
    const double high = w->collar.height, half = tside_i_rider_half(w, spot);
    pen.part = w->rider;
    tside_i_rectangle(w->sketch, pen, spot->x - half, spot->y - fmin(high, half), spot->x + half, spot->y + high);
}

/* The pipe from its chain to its foot, or into the ground. */
static void draw_guide(const tside_i_wall *w, double lean, tside_i_pen pen)
{
    const double sine = sin(lean), cosine = cos(lean), from = tside_i_stands(w) ? 0 : w->end->guide.chain,
                 to = w->plan->sweep.length + (tside_i_stands(w) ? w->end->footing.depth / cosine : 0);
    pen.part = TSIDE_PART_GUIDE;
    tside_i_segment(w->sketch, pen, w->plan->eye_x, w->plan->eye_y, w->plan->eye_x + from * sine,
                    w->plan->eye_y - from * cosine);
    tside_i_tube(w->sketch, pen, w->plan->eye_x + from * sine, w->plan->eye_y - from * cosine,
                 w->plan->eye_x + to * sine, w->plan->eye_y - to * cosine, w->end->guide.tube.diameter);
}

static void name_guide(const tside_i_wall *w, double lean, tside_shown shown)
{
    const double down = (tside_i_stands(w) ? 0.3 : 0.93) * w->plan->sweep.length;
    tside_i_note(w->sketch, TSIDE_PART_GUIDE, shown, 0, w->plan->eye_x + down * sin(lean),
                 w->plan->eye_y - down * cos(lean));
}

/* A state of roll and drive, and its name at the roll's lower side. */
static void draw_state(const tside_i_wall *w, const tside_i_spot *spot, tside_shown shown, tside_line_type line)
{
    const tside_i_pen pen = {.shown = shown, .line = line};
    tside_i_draw_roll_at(w->sketch, spot, pen);
    draw_rider(w, spot, pen);
    tside_i_note(w->sketch, TSIDE_PART_ROLL, shown, 0, spot->x + spot->r * 0.6, spot->y - spot->r * 0.8);
}

/* Less than a millimetre apart on paper. */
static int is_one(const tside_i_wall *w, double apart)
{
    return apart < 1e-3 * w->sketch->picture.scale;
}

static void draw_guides(const tside_i_wall *w)
{
    const tside_sweep *sweep = &w->plan->sweep;
    const double apart = sweep->length * fabs(sweep->lean_open - sweep->lean_shut);
    const tside_shown first = tside_i_stands(w)  ? TSIDE_SHOWN_ALWAYS
                              : is_one(w, apart) ? TSIDE_SHOWN_SHUT_AND_OPEN
                                                 : TSIDE_SHOWN_SHUT;
    draw_guide(w, sweep->lean_shut, (tside_i_pen){.shown = first, .line = TSIDE_LINE_WIDE});
    name_guide(w, sweep->lean_shut, first);
    if (first == TSIDE_SHOWN_SHUT) {
        draw_guide(w, sweep->lean_open, (tside_i_pen){.shown = TSIDE_SHOWN_OPEN, .line = TSIDE_LINE_NARROW});
        name_guide(w, sweep->lean_open, TSIDE_SHOWN_OPEN);
    }
}

static void draw_asked(const tside_i_wall *w)
{
    const tside_i_pen pen = {.shown = TSIDE_SHOWN_AT_TURNS, .line = TSIDE_LINE_NARROW};
    const tside_end_plan *plan = w->plan;
    tside_i_lean lean;
    if (!w->sketch->asked)
        return;
    draw_state(w, w->sketch->asked, TSIDE_SHOWN_AT_TURNS, TSIDE_LINE_NARROW);
    if (tside_i_stands(w))
        return;
    lean = tside_i_lean_at(plan->eye_x, plan->eye_y, w->collar.offset, w->sketch->asked);
    draw_guide(w, tside_i_lean_angle(&lean), pen);
}

/* Shut, when it holds the curtain; its name is at the anchor, away from the roll's. */
static void draw_rope(const tside_i_wall *w, const tside_i_spot *shut)
{
    const tside_rope_plan *rope = &w->sketch->plan->rope;
    double on[2];
    if (!w->sketch->plan->rope_given)
        return;
    tside_i_draw_rope_over(w->sketch, shut, TSIDE_SHOWN_SHUT, on);
    tside_i_note(w->sketch, TSIDE_PART_ROPE, TSIDE_SHOWN_SHUT, 0, rope->anchor_x, rope->anchor_y);
}

static void draw_states(const tside_i_wall *w)
{
    const tside_travel *travel = &w->sketch->setup->travel;
    tside_i_spot shut, open;
    int one;
    tside_i_travel_at(travel, travel->wraps_shut, &shut);
    tside_i_travel_at(travel, travel->end, &open);
    one = is_one(w, hypot(open.x - shut.x, open.y - shut.y));
    draw_state(w, &shut, one ? TSIDE_SHOWN_SHUT_AND_OPEN : TSIDE_SHOWN_SHUT, TSIDE_LINE_WIDE);
    if (!one)
        draw_state(w, &open, TSIDE_SHOWN_OPEN, TSIDE_LINE_NARROW);
    draw_guides(w);
    draw_rope(w, &shut);
    draw_asked(w);
}

/* How far out a hanging guide's foot comes. */
static void draw_reach(const tside_i_wall *w)
{
    const double x = w->plan->sweep.walkway_error, high = w->plan->sweep.foot_lowest;
    tside_i_segment(w->sketch, tside_i_pen_of(TSIDE_PART_REACH, TSIDE_LINE_CHAIN), x, w->ground, x,
                    fmax(high, w->ground) + 0.15 * (w->plan->eye_y - w->ground));
    tside_i_note(w->sketch, TSIDE_PART_REACH, TSIDE_SHOWN_ALWAYS, 0, x,
                 fmax(high, w->ground) + 0.1 * (w->plan->eye_y - w->ground));
}

/* --- what is set out --- */

static void tell_extender(const tside_i_wall *w)
{
    const tside_layout *l = &w->plan->layout;
    const tside_extender *extender = &w->end->extender;
    const double hip = w->side->curtain.hip, member = extender->member_height + w->ground;
    const tside_bow_point at_hip = tside_i_path_at(&w->sketch->setup->bow.centre, w->sketch->setup->hip.arc);
    tside_i_sketch *s = w->sketch;
    tside_i_dimension(s, TSIDE_TELLS_BOW_HOLE_HEIGHT, TSIDE_DIMENSION_PLUMB, TSIDE_I_INBOARD, l->bow_height - hip,
                      w->face, hip, l->bow_x, l->bow_height);
    tside_i_dimension(s, TSIDE_TELLS_MEMBER_HOLE_HEIGHT, TSIDE_DIMENSION_PLUMB, TSIDE_I_INBOARD,
                      extender->member_height - hip_above_ground(w), w->face, hip, l->member_x, member);
    tside_i_dimension(s, TSIDE_TELLS_EYE_HEIGHT, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD, l->eye_above_hip, w->face,
                      hip, l->eye_x, l->eye_y);
    tside_i_dimension(s, TSIDE_TELLS_EYE_LEVEL, TSIDE_DIMENSION_LEVEL, TSIDE_I_ABOVE, l->eye_outboard, w->face, hip,
                      l->eye_x, l->eye_y);
    tside_i_dimension(s, TSIDE_TELLS_MEMBER_HOLE_LEVEL, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, l->member_from_outer,
                      l->member_x, member, l->member_x + l->member_from_outer, member);
    tside_i_dimension(s, TSIDE_TELLS_HOLE_TO_HOLE, TSIDE_DIMENSION_ALONG, TSIDE_I_INBOARD,
                      l->member_distance - l->bow_distance, l->bow_x, l->bow_height, l->member_x, member);
    tside_i_dimension(s, TSIDE_TELLS_EYE_TO_MEMBER, TSIDE_DIMENSION_ALONG, TSIDE_I_INBOARD, l->member_distance,
                      l->eye_x, l->eye_y, l->member_x, member);
    tside_i_dimension(s, TSIDE_TELLS_BOW_HOLE_ALONG, TSIDE_DIMENSION_ARC, TSIDE_I_INBOARD, l->bow_along, at_hip.x, hip,
                      l->bow_x, l->bow_height);
    tside_i_dimension(s, TSIDE_TELLS_RUN, TSIDE_DIMENSION_ANGLE, TSIDE_I_INBOARD, l->run, (l->bow_x + l->member_x) / 2,
                      (l->bow_height + member) / 2, l->member_x, member);
}

/* Top and foot of a guide that stands; on an extender its eye's hole holds the top. */
static void tell_standing(const tside_i_wall *w)
{
    const tside_fixed *fixed = &w->plan->fixed;
    const double hip = w->side->curtain.hip, depth = w->end->footing.depth;
    if (w->end->hung == TSIDE_ON_HIP) {
        tside_i_dimension(w->sketch, TSIDE_TELLS_TOP_HEIGHT, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD,
                          fixed->top_y - hip, w->face, hip, fixed->top_x, fixed->top_y);
        tside_i_dimension(w->sketch, TSIDE_TELLS_TOP_LEVEL, TSIDE_DIMENSION_LEVEL, TSIDE_I_ABOVE,
                          fixed->top_x - w->face, w->face, hip, fixed->top_x, fixed->top_y);
    }
    tside_i_dimension(w->sketch, TSIDE_TELLS_FOOT_LEVEL, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, fixed->foot_x - w->face,
                      w->face, hip, fixed->foot_x, w->ground);
    tside_i_dimension(w->sketch, TSIDE_TELLS_FOOT_DEPTH, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD, depth, fixed->foot_x,
                      w->ground, fixed->foot_x + depth * tan(fixed->lean), w->ground - depth);
}

static void tell(const tside_i_wall *w)
{
    const double hip = w->side->curtain.hip;
    tside_i_dimension(w->sketch, TSIDE_TELLS_HIP_ABOVE_GROUND, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD,
                      hip_above_ground(w), w->face, w->ground, w->face, hip);
    if (w->end->hung == TSIDE_ON_EXTENDER)
        tell_extender(w);
    if (tside_i_stands(w)) {
        tell_standing(w); /* its foot stays where it is */
        return;
    }
    tside_i_dimension(w->sketch, TSIDE_TELLS_REACH, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW,
                      w->plan->sweep.walkway_error - w->face, w->face, hip, w->plan->sweep.walkway_error, w->ground);
}

/* --- the views --- */

typedef struct extent {
    double inner, bottom, outer, top;
} extent;

static void widen(extent *e, double x, double y, double about)
{
    e->inner = fmin(e->inner, x - about);
    e->outer = fmax(e->outer, x + about);
    e->bottom = fmin(e->bottom, y - about);
    e->top = fmax(e->top, y + about);
}

/* Eye, holes, bar's travel, ground and foot's reach, with some of what is around them. */
static void crop(const tside_i_wall *w)
{
    const tside_layout *layout = &w->plan->layout;
    const tside_travel *travel = &w->sketch->setup->travel;
    const double around = 6e-3 * w->sketch->picture.scale;
    extent e = {w->face, w->ground, w->plan->sweep.walkway_error, w->plan->eye_y};
    tside_i_spot shut, open;
    tside_i_travel_at(travel, travel->wraps_shut, &shut);
    tside_i_travel_at(travel, travel->end, &open);
    widen(&e, shut.x, shut.y, fmax(shut.r, w->collar.height));
    widen(&e, open.x, open.y, fmax(open.r, w->collar.height));
    widen(&e, travel->line.x, travel->line.y, 0);
    widen(&e, w->plan->eye_x + w->plan->sweep.length * sin(w->plan->sweep.lean_least), w->ground, 0);
    if (tside_i_stands(w))
        widen(&e, w->plan->fixed.foot_x, w->ground - w->end->footing.depth, w->end->guide.tube.diameter);
    if (w->end->hung == TSIDE_ON_EXTENDER) {
        const double top = layout->eye_from_top + w->end->extender.tube.side,
                     tail = layout->cut_length - layout->eye_from_top + w->end->extender.tube.side;
        widen(&e, layout->eye_x + top * sin(layout->angle), layout->eye_y + top * cos(layout->angle), 0);
        widen(&e, layout->eye_x - tail * sin(layout->angle), layout->eye_y - tail * cos(layout->angle), 0);
        widen(&e, layout->member_x + layout->member_from_outer, layout->eye_y, 0);
    }
    widen(&e, w->face - w->sketch->setup->bow.diameter, w->ground, 0);
    tside_i_sketch_crop(w->sketch, e.inner - around, e.bottom - around, e.outer + around, e.top + around);
}

static void draw_standing_parts(const tside_i_wall *w)
{
    tside_i_draw_ground(w->sketch, w->sketch->crop.left, w->sketch->crop.right, w->ground);
    tside_i_draw_bow(w);
    tside_i_draw_board(w);
    tside_i_draw_rail(w);
    draw_keep_outs(w);
    if (w->end->hung == TSIDE_ON_EXTENDER) {
        draw_member(w);
        draw_extender(w);
    }
}

void tside_i_draw_wall(tside_i_sketch *sketch)
{
    tside_i_wall w;
    tside_i_sketch_from_outside(sketch, sketch->picture.end);
    w = tside_i_wall_of(sketch, sketch->picture.end);
    crop(&w);
    draw_standing_parts(&w);
    draw_states(&w);
    if (!tside_i_stands(&w))
        draw_reach(&w);
    tell(&w);
}

/* The bow on both sides of the centreline, and a frame about what the end wall's own view shows. */
void tside_i_draw_whole_wall(tside_i_sketch *sketch)
{
    const tside_i_pen frame = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_NARROW, 0};
    tside_i_frame shown;
    tside_i_wall w;
    tside_i_sketch_from_outside(sketch, sketch->picture.end);
    w = tside_i_wall_of(sketch, sketch->picture.end);
    crop(&w);
    shown = sketch->crop;
    tside_i_sketch_crop(sketch, -HUGE_VAL, -HUGE_VAL, HUGE_VAL, HUGE_VAL);
    for (int side = 0; side < 2; side++) {
        tside_i_draw_bow(&w);
        sketch->outboard = -sketch->outboard;
    }
    tside_i_rectangle(sketch, frame, sketch->outboard * shown.left, shown.bottom, sketch->outboard * shown.right,
                      shown.top);
    tside_i_segment(sketch, tside_i_pen_of(TSIDE_PART_GROUND, TSIDE_LINE_WIDE), sketch->outboard * sketch->left,
                    w.ground, sketch->outboard * sketch->right, w.ground);
}
