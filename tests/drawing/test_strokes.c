/* SPDX-License-Identifier: MIT */
/* A corner from above, a side along the house, and a piece: all that is drawn, stroke by stroke. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "portraits.h"
#include "scenes.h"

Suite *strokes_suite(void);

#define ALWAYS TSIDE_SHOWN_ALWAYS
#define WIDE TSIDE_LINE_WIDE
#define CHAIN TSIDE_LINE_CHAIN
#define DASHED TSIDE_LINE_DASHED

/* What stands and rides at an end, outward from the plane of its bow. */
typedef struct end_parts {
    tside_collar collar;
    tside_part rider;
    double inner, outer; /* m, of the extender's faces; 0 without one */
    double centre;       /* m, of drive or collar */
    double past, end;    /* m, the curtain's edge, and the bar's */
    double bow;          /* m, half the bow's diameter */
    tside_shown shown;   /* how roll and rider are shown from above */
} end_parts;

static end_parts parts_of(const scene *s)
{
    const int drive = s->which == TSIDE_DRIVE_END;
    end_parts e = {.collar = drive ? tside_drive_collar(&s->side.drive) : s->side.collar,
                   .rider = drive ? TSIDE_PART_DRIVE : TSIDE_PART_COLLAR,
                   .past = s->side.curtain.past,
                   .bow = s->side.frame.tube.diameter / 2,
                   .shown = TSIDE_SHOWN_OPEN};
    e.centre = s->end_plan->stand.line - e.collar.along;
    e.end = e.past + (drive ? s->plan.bar_beyond_drive : s->plan.bar_beyond_free);
    if (s->end->hung == TSIDE_ON_EXTENDER) {
        e.inner = e.bow + s->end->extender.spacer;
        e.outer = e.inner + s->end->extender.tube.side;
    }
    return e;
}

/* --- a corner from above: up the page is inward --- */

/* How far out along the house a line is, dashed where the extender lies over it. */
static void has_line_under(portrait *p, const end_parts *e, tside_part part, tside_shown shown, double x, double z,
                           double x_end, double z_end)
{
    if (z == z_end) {
        has_line(p, part, shown, z > e->inner && z < e->outer ? DASHED : WIDE, x, -z, x_end, -z);
        return;
    }
    for (int piece = 0; piece < 3; piece++) { /* before it, below it, beyond it */
        const double edges[] = {-HUGE_VAL, e->inner, e->outer, HUGE_VAL}, from = fmax(z, edges[piece]),
                     to = fmin(z_end, edges[piece + 1]);
        if (from < to)
            has_line(p, part, shown, piece == 1 ? DASHED : WIDE, x, -from, x_end, -to);
    }
}

static void has_box_under(portrait *p, const end_parts *e, tside_part part, tside_shown shown, double x, double z,
                          double x_end, double z_end)
{
    has_line_under(p, e, part, shown, x, z, x, z_end);
    has_line_under(p, e, part, shown, x_end, z, x_end, z_end);
    has_line_under(p, e, part, shown, x, z, x_end, z);
    has_line_under(p, e, part, shown, x, z_end, x_end, z_end);
}

static double bow_at_hip(const scene *s)
{
    tside_bow_point at;
    tside_fault fault;
    double arc;
    ANSWERS(tside_bow_at_height(&s->bow, s->side.curtain.hip, &arc, &fault));
    ANSWERS(tside_bow_at(&s->bow, arc, &at, &fault));
    return at.x;
}

/* 8 mm about what is shown, twice that inward. */
static void frame_corner(const scene *s, portrait *p, const end_parts *e, double bow_x, double rider_half)
{
    const double about = 8e-3 * p->paper, x = s->plan.open.x;
    double inner = fmin(bow_x, x - e->collar.offset) - 3 * e->bow;
    if (s->end->hung == TSIDE_ON_EXTENDER)
        inner = fmin(inner, s->end_plan->layout.bow_x - s->end->extender.tube.side);
    is_framed(p, inner - about, -fmax(fmax(e->centre + e->collar.half_length, e->end), s->end_plan->stand.eye) - about,
              fmax(fmax(x + rider_half, s->end_plan->eye_x), s->face) + s->end->guide.tube.diameter + about,
              fmax(2 * e->bow, -e->past) + 2 * about);
}

static void check_extender_above(const scene *s, portrait *p, const end_parts *e)
{
    const tside_layout *l = &s->end_plan->layout;
    const tside_extender *extender = &s->end->extender;
    const double half = extender->tube.side / 2, across = half * cos(l->angle),
                 outermost = l->eye_x + l->eye_from_top * sin(l->angle) + across,
                 innermost = outermost - l->cut_length * sin(l->angle) - 2 * across, eye = s->end_plan->stand.eye;
    has_box(p, TSIDE_PART_EXTENDER, ALWAYS, WIDE, innermost, -e->inner, outermost, -e->outer);
    has_note(p, TSIDE_PART_EXTENDER, ALWAYS, l->bow_x - across, -(e->inner + half));
    if (extender->spacer > 0) {
        has_box(p, TSIDE_PART_SPACER, ALWAYS, WIDE, l->bow_x - across, -e->bow, l->bow_x + across, -e->inner);
        has_note(p, TSIDE_PART_SPACER, ALWAYS, l->bow_x - across, -(e->bow + extender->spacer / 2));
    }
    has_line(p, TSIDE_PART_HOLE, ALWAYS, CHAIN, l->bow_x, e->bow + 2e-3 * p->paper, l->bow_x,
             -e->outer - 2e-3 * p->paper);
    has_box(p, TSIDE_PART_EYE_BOLT, ALWAYS, WIDE, l->eye_x - extender->eye_root / 2, -e->outer,
            l->eye_x + extender->eye_root / 2, -eye);
    has_note(p, TSIDE_PART_EYE_BOLT, ALWAYS, l->eye_x, -(e->outer + eye) / 2);
    has_dimension(p, TSIDE_TELLS_EYE_OFF_TUBE, TSIDE_DIMENSION_PLUMB, l->eye_x, -e->outer, l->eye_x, -eye);
}

static void check_bar_above(const scene *s, portrait *p, const end_parts *e)
{
    const double x = s->plan.open.x, r = s->plan.open.diameter / 2, half = s->side.bar.tube.diameter / 2,
                 rider_half = fmax(r, e->collar.offset), length = e->collar.half_length,
                 hidden = fmin(e->centre - length, e->end), beyond = fmin(e->centre + length, e->end);
    has_box_under(p, e, TSIDE_PART_ROLL, e->shown, x - r, -2 * p->top, x + r, e->past);
    has_note(p, TSIDE_PART_ROLL, e->shown, x + r, p->top - 6e-3 * p->paper);
    has_note(p, TSIDE_PART_CURTAIN_EDGE, ALWAYS, x + r, -e->past);
    if (e->past < hidden)
        has_box_under(p, e, TSIDE_PART_BAR, ALWAYS, x - half, e->past, x + half, hidden);
    else
        ck_abort_msg("no bare bar at end %d", (int)s->which);
    has_box(p, TSIDE_PART_BAR, ALWAYS, DASHED, x - half, -hidden, x + half, -beyond);
    if (e->end > beyond)
        has_box(p, TSIDE_PART_BAR, ALWAYS, WIDE, x - half, -beyond, x + half, -e->end);
    has_note(p, TSIDE_PART_BAR, ALWAYS, x + half, -(e->past + hidden) / 2);
    has_box(p, e->rider, e->shown, WIDE, x - rider_half, -(e->centre - length), x + rider_half, -(e->centre + length));
    has_note(p, e->rider, e->shown, x - rider_half, -(e->centre + length / 2));
}

static void check_guide_above(const scene *s, portrait *p, const end_parts *e)
{
    const double x = s->end_plan->eye_x, y = -s->end_plan->stand.eye, radius = s->end->guide.tube.diameter / 2,
                 past = radius + 2e-3 * p->paper;
    has_whole_circle(p, TSIDE_PART_GUIDE, ALWAYS, WIDE, x, y, radius);
    has_line(p, TSIDE_PART_GUIDE, ALWAYS, CHAIN, x, y, s->plan.open.x + e->collar.offset, -s->end_plan->stand.line);
    has_line(p, TSIDE_PART_GUIDE, ALWAYS, CHAIN, x - past, y, x + past, y);
    has_line(p, TSIDE_PART_GUIDE, ALWAYS, CHAIN, x, y - past, x, y + past);
    has_note(p, TSIDE_PART_GUIDE, ALWAYS, x + 0.7 * radius, y - 0.7 * radius);
}

/* With roll and rider where the plan says that they are when the side is open. */
static void check_corner(const scene *s, const tside_picture *picture, tside_shown shown, int number)
{
    static scene corner;
    static portrait p;
    end_parts e = parts_of(s);
    const double bow_x = bow_at_hip(s), x = s->plan.open.x, edge = x + s->plan.open.diameter / 2,
                 bow_face = bow_x + e.bow, eye = s->end_plan->stand.eye;
    e.shown = shown;
    corner = *s;
    draw_as(&corner, picture);
    portrait_begin(&p, &corner.drawing, "corner", number, s->outboard);
    p.may_lack = 0;
    frame_corner(s, &p, &e, bow_x, fmax(s->plan.open.diameter / 2, e.collar.offset));
    has_whole_circle(&p, TSIDE_PART_BOW, ALWAYS, WIDE, bow_x, 0, e.bow);
    for (int side = -1; side <= 1; side += 2)
        has_line(&p, TSIDE_PART_BOW, ALWAYS, WIDE, bow_x - 100, side * e.bow, bow_x, side * e.bow);
    has_line(&p, TSIDE_PART_BOW, ALWAYS, CHAIN, bow_x - 100, 0, bow_face + 4e-3 * p.paper, 0);
    has_note(&p, TSIDE_PART_BOW, ALWAYS, bow_x - 2 * e.bow, e.bow);
    has_line(&p, TSIDE_PART_RAIL, ALWAYS, WIDE, s->plan.fixing_x, p.top, s->plan.fixing_x,
             s->end->hung == TSIDE_ON_HIP ? -eye : -e.past);
    has_note(&p, TSIDE_PART_RAIL, ALWAYS, s->plan.fixing_x, p.top - 3e-3 * p.paper);
    if (s->end->hung == TSIDE_ON_EXTENDER)
        check_extender_above(s, &p, &e);
    check_bar_above(s, &p, &e);
    check_guide_above(s, &p, &e);
    has_dimension(&p, TSIDE_TELLS_CURTAIN_PAST, TSIDE_DIMENSION_PLUMB, bow_face, 0, edge, -e.past);
    has_dimension(&p, TSIDE_TELLS_RUN_ON, TSIDE_DIMENSION_PLUMB, edge, -e.past, x, -e.past - s->end_plan->stand.run_on);
    has_dimension(&p, TSIDE_TELLS_EYE_OFF_BOW, TSIDE_DIMENSION_PLUMB, bow_face, 0, s->end_plan->eye_x, -eye);
    if (s->which == TSIDE_FREE_END)
        has_dimension(&p, TSIDE_TELLS_BEYOND_FREE, TSIDE_DIMENSION_PLUMB, edge, -e.past, x, -e.end);
    has_no_more(&p, TSIDE_PART_CODES, TSIDE_PART_CODES);
}

FOR_WALLS(a_corner_is_seen_from_above)
{
    static scene moved;
    tside_turn rows[64];
    tside_fault fault;
    int count;
    tside_picture picture = picture_of(s, 5);
    picture.view = TSIDE_VIEW_CORNER;
    check_corner(s, &picture, TSIDE_SHOWN_OPEN, number);
    ANSWERS(tside_plan_turns(&s->side, rows, 64, &count, &fault));
    picture.turns_given = 1;
    for (int i = 0; i < count; i += 4) { /* at a row of the turn table */
        moved = *s;
        moved.plan.open.x = rows[i].x;
        moved.plan.open.diameter = rows[i].diameter;
        picture.turns = rows[i].turn;
        check_corner(&moved, &picture, TSIDE_SHOWN_AT_TURNS, number);
    }
}

/* --- along the house: from the drive's end bow --- */

/* m along the house of what is so far outside an end's plane. */
static double along(const scene *s, double z)
{
    return s->which == TSIDE_DRIVE_END ? -z : s->side.length + z;
}

static void check_standing_along(const scene *s, portrait *p, const end_parts *e)
{
    const double ground = s->end_plan->ground, top = s->side.curtain.hip + 10e-3 * p->paper,
                 inner = p->outboard * along(s, -12e-3 * p->paper),
                 outer = p->outboard *
                         along(s, fmax(s->end_plan->stand.eye, e->centre + e->collar.half_length) + 4e-3 * p->paper);
    has_ground(p, fmin(inner, outer), fmax(inner, outer), ground);
    for (int side = -1; side <= 1; side++)
        has_line(p, TSIDE_PART_BOW, ALWAYS, side ? WIDE : CHAIN, along(s, side * e->bow), ground,
                 along(s, side * e->bow), top);
    has_note(p, TSIDE_PART_BOW, ALWAYS, along(s, -e->bow), top);
}

static void check_extender_along(const scene *s, portrait *p, const end_parts *e)
{
    const tside_layout *l = &s->end_plan->layout;
    const double across = s->end->extender.tube.side / 2 * sin(l->angle), y = s->end_plan->eye_y,
                 top = y + l->eye_from_top * cos(l->angle), foot = top - l->cut_length * cos(l->angle);
    has_box(p, TSIDE_PART_EXTENDER, ALWAYS, WIDE, along(s, e->inner), foot - across, along(s, e->outer), top + across);
    has_line(p, TSIDE_PART_EYE_BOLT, ALWAYS, WIDE, along(s, e->outer), y, along(s, s->end_plan->stand.eye), y);
    has_note(p, TSIDE_PART_EXTENDER, ALWAYS, along(s, (e->inner + e->outer) / 2), top);
}

/* As long as it is when seen square to the side, leaning along the house where it does. */
static void check_guide_along(const scene *s, portrait *p)
{
    const tside_end_plan *plan = s->end_plan;
    const tside_guide *guide = &s->end->guide;
    const int stands = guide->foot == TSIDE_FOOT_FIXED;
    const double lean = plan->sweep.lean_shut, skew = plan->skew_given ? plan->skew.lean_shut : 0,
                 length = plan->skew_given ? plan->skew.length : plan->sweep.length, y = plan->eye_y,
                 z = plan->stand.eye, from = stands ? 0 : guide->chain,
                 to = length + (stands ? s->end->footing.depth / cos(lean) : 0), out = sin(skew),
                 down = cos(skew) * cos(lean), seen = hypot(out, down);
    const double outward = along(s, 1) - along(s, 0);
    has_line(p, TSIDE_PART_GUIDE, ALWAYS, WIDE, along(s, z), y, along(s, z + from * out), y - from * down);
    has_tube(p, TSIDE_PART_GUIDE, ALWAYS, WIDE, along(s, z + from * out), y - from * down, (to - from) * seen,
             outward * atan2(out, down), guide->tube.diameter);
    has_note(p, TSIDE_PART_GUIDE, ALWAYS, along(s, z + length / 2 * out + guide->tube.diameter / 2),
             y - length / 2 * down);
}

static void check_rider_along(const scene *s, portrait *p, const end_parts *e)
{
    const double r = s->plan.shut.diameter / 2, y = s->plan.shut.y, length = e->collar.half_length,
                 below = fmin(e->collar.height, fmax(r, e->collar.offset));
    has_box(p, e->rider, ALWAYS, WIDE, along(s, e->centre - length), y - below, along(s, e->centre + length),
            y + e->collar.height);
    has_note(p, e->rider, ALWAYS, along(s, e->centre + length), y);
}

static void check_along(const scene *s, portrait *p)
{
    const double past = s->side.curtain.past, from = -past, to = s->side.length + past, y = s->plan.shut.y,
                 r = s->plan.shut.diameter / 2, half = s->side.bar.tube.diameter / 2, hip = s->side.curtain.hip,
                 begins = from - s->plan.bar_beyond_drive, ends = to + s->plan.bar_beyond_free, sill = s->travel.sill,
                 joint = from + s->plan.splice_near, stroke = r + 2e-3 * p->paper;
    has_box(p, TSIDE_PART_CURTAIN, ALWAYS, WIDE, from, y, to, hip);
    has_box(p, TSIDE_PART_ROLL, ALWAYS, WIDE, from, y - r, to, y + r);
    has_line(p, TSIDE_PART_SILL, ALWAYS, DASHED, 0, sill, s->side.length, sill);
    has_note(p, TSIDE_PART_CURTAIN, ALWAYS, from + 0.3 * (to - from), (y + hip) / 2);
    has_note(p, TSIDE_PART_HIP, ALWAYS, from + 0.7 * (to - from), hip);
    has_note(p, TSIDE_PART_SILL, ALWAYS, from + 0.45 * (to - from), sill);
    has_box(p, TSIDE_PART_BAR, ALWAYS, WIDE, begins, y - half, from, y + half);
    has_box(p, TSIDE_PART_BAR, ALWAYS, WIDE, to, y - half, ends, y + half);
    has_note(p, TSIDE_PART_BAR, ALWAYS, to, y - half);
    has_line(p, TSIDE_PART_JOINT, ALWAYS, WIDE, joint, y - stroke, joint, y + stroke);
    if (s->side.bar.swage >= 1e-3 * p->paper)
        has_line(p, TSIDE_PART_JOINT, ALWAYS, WIDE, joint + s->side.bar.swage, y - stroke, joint + s->side.bar.swage,
                 y + stroke);
    has_note(p, TSIDE_PART_JOINT, ALWAYS, joint, y + stroke);
    has_dimension(p, TSIDE_TELLS_SIDE_LENGTH, TSIDE_DIMENSION_LEVEL, 0, y, s->side.length, y);
    has_dimension(p, TSIDE_TELLS_CURTAIN_LENGTH, TSIDE_DIMENSION_LEVEL, from, y, to, y);
    has_dimension(p, TSIDE_TELLS_BAR_LENGTH, TSIDE_DIMENSION_LEVEL, begins, y, ends, y);
    has_dimension(p, TSIDE_TELLS_BEYOND_DRIVE, TSIDE_DIMENSION_LEVEL, begins, y, from, y);
    has_dimension(p, TSIDE_TELLS_BEYOND_FREE, TSIDE_DIMENSION_LEVEL, to, y, ends, y);
    has_dimension(p, TSIDE_TELLS_JOINT_PLACE, TSIDE_DIMENSION_LEVEL, from, y, joint, y);
}

/* Where a joint is one line on paper, and where it is two. */
START_TEST(a_side_is_seen_along_the_house)
{
    static scene s;
    static portrait p;
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_side side = side_of(each / 2);
        tside_picture picture;
        make_scene(&s, &side, TSIDE_DRIVE_END);
        picture = picture_of(&s, each % 2 ? 20 : 200);
        if (each % 3 == 0)
            picture.scale = s.side.bar.swage / 1e-3; /* two, but just */
        picture.view = TSIDE_VIEW_ALONG;
        draw_as(&s, &picture);
        portrait_begin(&p, &s.drawing, "along", each, side.hand == TSIDE_RIGHT ? 1 : -1);
        p.may_lack = 0;
        for (int end = 0; end < 2; end++) {
            end_parts e;
            s.which = (tside_which_end)end;
            s.end = end == TSIDE_DRIVE_END ? &s.side.drive_end : &s.side.free_end;
            s.end_plan = end == TSIDE_DRIVE_END ? &s.plan.drive_end : &s.plan.free_end;
            e = parts_of(&s);
            check_standing_along(&s, &p, &e);
            if (s.end->hung == TSIDE_ON_EXTENDER)
                check_extender_along(&s, &p, &e);
            check_guide_along(&s, &p);
            check_rider_along(&s, &p, &e);
        }
        check_along(&s, &p);
        has_no_more(&p, TSIDE_PART_CODES, TSIDE_PART_CODES);
    }
}
END_TEST

/* --- an extender as a piece: along the page from its top end --- */

static void has_hole(portrait *p, const tside_extender *extender, double from_top, double diameter, tside_tells place,
                     tside_tells width)
{
    const double half = extender->tube.side / 2, past = half + 2e-3 * p->paper;
    has_whole_circle(p, TSIDE_PART_HOLE, ALWAYS, WIDE, from_top, 0, diameter / 2);
    has_line(p, TSIDE_PART_HOLE, ALWAYS, CHAIN, from_top, -past, from_top, past);
    has_dimension(p, place, TSIDE_DIMENSION_RUNNING, 0, -half, from_top, -half);
    has_dimension(p, width, TSIDE_DIMENSION_DIAMETER, from_top, diameter / 2, from_top, -diameter / 2);
}

/* Beside the eye's hole a quarter of the tube's width off, up to as much before the bow's. */
static void has_mark(portrait *p, const tside_extender *extender, const tside_layout *l)
{
    const double side = extender->tube.side, from = l->eye_from_top + extender->eye_hole / 2 + side / 4,
                 to = fmin(from + 1.5 * side, l->bow_from_top - extender->bolt_hole / 2 - side / 4);
    if (to > from)
        has_box(p, TSIDE_PART_FACE, ALWAYS, TSIDE_LINE_NARROW, from, side / 10, to, 0.4 * side);
    has_note(p, TSIDE_PART_FACE, ALWAYS, fmax(from, to), 0.4 * side);
}

FOR_WALLS(an_extender_is_seen_as_it_is_worked)
{
    static scene piece;
    static portrait p;
    const tside_extender *extender = &s->end->extender;
    tside_layout *l = &(s->which == TSIDE_DRIVE_END ? &piece.plan.drive_end : &piece.plan.free_end)->layout;
    const double half = extender->tube.side / 2, inner = half - extender->tube.wall,
                 length = s->end_plan->layout.cut_length;
    tside_picture picture = picture_of(s, number % 4 < 2 ? 1 : 10);
    if (s->end->hung != TSIDE_ON_EXTENDER)
        return;
    piece = *s;
    if (number % 3 > 0) /* a bow's hole that leaves less room for the mark, or none */
        l->bow_from_top = l->eye_from_top + (number % 3 == 1 ? 1.8 : 0.8) * extender->tube.side;
    picture.view = TSIDE_VIEW_EXTENDER;
    draw_as(&piece, &picture);
    portrait_begin(&p, &piece.drawing, "extender", number, 1);
    p.may_lack = 0;
    has_box(&p, TSIDE_PART_EXTENDER, ALWAYS, WIDE, 0, -half, length, half);
    for (int side = -1; side <= 1 && extender->tube.wall >= 1e-3 * p.paper; side += 2)
        has_line(&p, TSIDE_PART_EXTENDER, ALWAYS, DASHED, 0, side * inner, length, side * inner);
    has_line(&p, TSIDE_PART_EXTENDER, ALWAYS, CHAIN, -3e-3 * p.paper, 0, length + 3e-3 * p.paper, 0);
    has_hole(&p, extender, l->eye_from_top, extender->eye_hole, TSIDE_TELLS_EYE_FROM_TOP, TSIDE_TELLS_EYE_HOLE);
    has_hole(&p, extender, l->bow_from_top, extender->bolt_hole, TSIDE_TELLS_BOW_FROM_TOP, TSIDE_TELLS_BOW_HOLE);
    has_hole(&p, extender, l->member_from_top, extender->bolt_hole, TSIDE_TELLS_MEMBER_FROM_TOP,
             TSIDE_TELLS_MEMBER_HOLE);
    has_dimension(&p, TSIDE_TELLS_CUT_LENGTH, TSIDE_DIMENSION_RUNNING, 0, -half, length, -half);
    has_note(&p, s->outboard > 0 ? TSIDE_PART_TOP_RIGHT : TSIDE_PART_TOP_LEFT, ALWAYS, 0, half / 2);
    has_mark(&p, extender, l);
    has_no_more(&p, TSIDE_PART_CODES, TSIDE_PART_CODES);
}

Suite *strokes_suite(void)
{
    Suite *suite = suite_create("strokes");
    TCase *tests = tcase_create("strokes");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, a_corner_is_seen_from_above);
    tcase_add_test(tests, a_side_is_seen_along_the_house);
    tcase_add_test(tests, an_extender_is_seen_as_it_is_worked);
    suite_add_tcase(suite, tests);
    return suite;
}
