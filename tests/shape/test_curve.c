/* SPDX-License-Identifier: MIT */
/*
 * Travel along every kind of bow: hull and free chord against what a fine polyline gives; its laws; and sides that
 * nobody builds.
 */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "curves.h"
#include "hull.h"
#include "shape/bow.h"
#include "shape/spot.h"

Suite *curve_suite(void);

/* --- refusals --- */

/* The refusals that the headers name and that a side thrown here may meet, each with its header's words. */
static struct {
    const char *field, *words;
    int count;
} refusals[] = {
    {"curtain.hip", "hip above the bow's top", 0},
    {"frame.shoulder_radius", "a shoulder beginning below the foot", 0},
    {"stops.shut_height", "shut so high that the roll's top would pass the rail", 0},
    {"stops.gap", "open below shut", 0},
};
enum { REFUSALS = sizeof refusals / sizeof *refusals };

static void count_refusal(int number, const tside_fault *fault)
{
    for (int i = 0; i < REFUSALS; i++)
        if (!strcmp(fault->field, refusals[i].field)) {
            refusals[i].count++;
            return;
        }
    ck_abort_msg("side %d is refused for %s: %s", number, fault->field, fault->reason);
}

START_TEST(random_sides_are_refused_only_as_the_headers_say)
{
    int made[KINDS] = {0}, all = 0, tips = 0, hung = 0, boards = 0, on_chord = 0;
    for (int n = 0; n < SIDES; n++) {
        curved c;
        tside_fault fault;
        if (curved_side(n, &c, &fault) != TSIDE_OK) {
            count_refusal(n, &fault);
            continue;
        }
        made[c.kind]++;
        all++;
        tips += c.tips;
        hung += c.hung;
        boards += c.bow.board_given;
        on_chord += c.line.piece->slope > 0 && c.travel.hanging < (c.line.count > 1 ? c.line.piece[1].from : HUGE_VAL);
    }
    printf(
        "%d sides of %d made, %d with a baseboard, %d tip over it, %d hang by a chord from the first, %d guides hang\n",
        all, SIDES, boards, tips, on_chord, hung);
    for (int i = 0; i < REFUSALS; i++)
        printf("refused for %s, %s: %d\n", refusals[i].field, refusals[i].words, refusals[i].count);
    for (int k = 0; k < KINDS; k++)
        ck_assert_int_gt(made[k], SIDES / KINDS * 9 / 10);
    ck_assert_int_gt(hung, SIDES / 2);
    ck_assert_int_gt(tips, SIDES / 50);
    ck_assert_int_gt(on_chord, SIDES / 10);
}
END_TEST

/* --- the hull --- */

static double hull_slope(const hull *h, int i)
{
    return atan2(h->corner.x[i + 1] - h->corner.x[i], h->corner.y[i] - h->corner.y[i + 1]);
}

/*
 * Whether a slope lies between those of the chain a little above and below a distance; a step of the polyline turns by
 * less than 1e-3.
 */
static int faces(const hull *h, double distance, double slope)
{
    double x, y, little = 1e-5, above = hull_slope(h, hull_at(h, fmax(0, distance - little), &x, &y)),
                 below = hull_slope(h, hull_at(h, distance + little, &x, &y));
    return slope <= above + 4e-3 && slope >= below - 4e-3;
}

FOR_CURVED(line_is_the_hull)
{
    const outside *o = outside_of(c);
    const hull *h = hull_of(o);
    for (double down = 0; down < 2.6; down += 0.0093) {
        double x, y, normal, hx, hy, off;
        tside_fault fault;
        ANSWERS(tside_line_at(&c->line, down, &x, &y, &normal, &fault));
        hull_at(h, down, &hx, &hy);
        off = hypot(x - hx, y - hy);
        NEAR(off, 0, o->grain, "distance of line and hull", c->number);
        if (!faces(h, down, normal))
            ck_abort_msg("side %d: the line faces %g at %g", c->number, normal, down);
        note(c, off);
    }
}

/* --- where the bar is --- */

/* How far a roll of radius r about (x, y) keeps off face and baseboard; below 0 where it reaches in. */
static double clearance(const outside *o, double x, double y, double r)
{
    const polyline *f = &o->face;
    double nearest = HUGE_VAL;
    int start = part_at(f, y);
    if (o->board) {
        double dx = x - o->board_x, dy = fmax(0, y - o->board_y); /* its outer face goes on down */
        nearest = hypot(dx, dy);
    }
    for (int way = -1; way <= 1; way += 2)
        for (int i = way < 0 ? start : start + 1; i >= 0 && i + 1 < f->count; i += way) {
            double dx = f->x[i + 1] - f->x[i], dy = f->y[i + 1] - f->y[i],
                   u = ((x - f->x[i]) * dx + (y - f->y[i]) * dy) / (dx * dx + dy * dy);
            u = fmin(fmax(u, 0), 1);
            nearest = fmin(nearest, hypot(x - f->x[i] - u * dx, y - f->y[i] - u * dy));
            if ((way < 0 ? y - f->y[i] : f->y[i + 1] - y) > nearest)
                break;
        }
    return nearest - r;
}

static double chord_clearance(const outside *o, double s, double r, double slope)
{
    return clearance(o, o->fixing_x + s * sin(slope) + r * cos(slope), o->fixing_y - s * cos(slope) + r * sin(slope),
                     r);
}

/*
 * The slope to which a roll on a free chord falls back: from the line's first slope, where nothing holds it, towards
 * plumb until it touches, or to plumb. The axis moves on a circle about the fixing, never by more than the roll's
 * clearance, so that nothing is passed over.
 */
static double falls_back(const outside *o, double first, double s, double r)
{
    double slope = first, far = hypot(s, r), clear;
    for (int i = 0; i < 100000 && slope > 0 && (clear = chord_clearance(o, s, r, slope)) > 1e-10; i++)
        slope -= clear / far;
    return fmax(slope, 0);
}

/* How squarely the roll meets what stops it: the clearance it loses for each metre its axis moves. */
static double squareness(const outside *o, double s, double r, double slope)
{
    const double little = 1e-5;
    return (chord_clearance(o, s, r, slope + little) - chord_clearance(o, s, r, slope)) / (little * hypot(s, r));
}

/* What is wound on is missing from what hangs; and bar angle is wraps and the curtain's change of heading. */
static void check_winding(const curved *c, const tside_position *shut, const tside_position *p)
{
    double te = c->roll.packing * c->roll.thickness;
    double wound = PI * p->wraps * (c->roll.core + te * p->wraps) -
                   PI * shut->wraps * (c->roll.core + te * shut->wraps);
    NEAR(p->taken_up, wound, 1e-12, "taken up", c->number);
    NEAR(p->hanging, shut->hanging - wound, 1e-12, "hanging", c->number);
    NEAR(p->diameter, c->roll.core + 2 * te * p->wraps, 1e-15, "diameter", c->number);
    NEAR(p->underside, p->y - p->diameter / 2, 1e-12, "underside", c->number);
    NEAR(p->opening, fmax(0, p->underside - c->curtain.sill), 1e-12, "opening", c->number);
    NEAR(p->turns, p->wraps - shut->wraps + (p->slope - shut->slope) / (2 * PI), 1e-11, "turns", c->number);
}

/* On the line below the free chord: outboard of the hull by the radius, square to it. */
static void check_on_line(const curved *c, const outside *o, const hull *h, const tside_position *p)
{
    double x, y, r = p->diameter / 2;
    hull_at(h, p->hanging, &x, &y);
    NEAR(hypot(p->x - x - r * cos(p->slope), p->y - y - r * sin(p->slope)), 0, o->grain, "axis off the line",
         c->number);
    if (!faces(h, p->hanging, p->slope))
        ck_abort_msg("side %d: curtain's slope %g", c->number, p->slope);
}

/* Tipped over the baseboard, it hangs inboard of its edge: by what holds it there, or plumb. */
static void check_tipped(const curved *c, const outside *o, const tside_position *p)
{
    double clear = clearance(o, p->x, p->y, p->diameter / 2);
    NEAR(hypot(p->x - o->fixing_x, p->y - o->fixing_y), hypot(p->hanging, p->diameter / 2), o->grain,
         "axis from the fixing", c->number);
    if (!(clear > -o->grain && (p->slope == 0 || clear < o->grain)))
        ck_abort_msg("side %d: %g off face and board, at a slope of %g", c->number, clear, p->slope);
}

static void check_on_chord(const curved *c, const outside *o, const hull *h, const tside_position *p)
{
    double s = p->hanging, r = p->diameter / 2, first = hull_slope(h, 0), slope = falls_back(o, first, s, r),
           square = slope > 0 ? squareness(o, s, r, slope) : 1;
    double off = hypot(p->x - o->fixing_x - s * sin(slope) - r * cos(slope),
                       p->y - o->fixing_y + s * cos(slope) - r * sin(slope));
    NEAR(off, 0, o->grain / fmin(1, fmax(square, 1e-4)), "axis on the free chord", c->number);
    NEAR(p->slope, slope, o->grain / fmax(square, 1e-4) / hypot(s, r), "chord's slope", c->number);
    if (square > 0.1)
        note(c, off);
}

FOR_CURVED(bar_is_where_a_roll_comes_to_rest)
{
    enum { PLACES = 400 };
    const outside *o = outside_of(c);
    const hull *h = hull_of(o);
    double chord = c->line.count > 1 ? c->line.piece[1].from : HUGE_VAL;
    tside_position shut, p;
    tside_fault fault;
    ANSWERS(tside_travel_at(&c->travel, 0, &shut, &fault));
    NEAR(shut.underside, c->stops.shut_by == TSIDE_SHUT_HEIGHT ? c->stops.shut_height : c->curtain.sill - c->stops.seal,
         1e-10, "shut", c->number);
    NEAR(shut.wraps, c->stops.wraps_shut, 1e-12, "wraps", c->number);
    for (int k = 0; k <= PLACES; k++) {
        ANSWERS(tside_travel_at(&c->travel, c->open * k / PLACES, &p, &fault));
        check_winding(c, &shut, &p);
        if (p.hanging > chord - 1e-9) /* also at a corner where the chord ends */
            check_on_line(c, o, h, &p);
        else if (tipped_at(c, p.wraps) == BEFORE_TIPPING)
            check_on_chord(c, o, h, &p);
        else if (tipped_at(c, p.wraps) == HANGS_AGAIN)
            check_tipped(c, o, &p);
    }
    if (c->stops.open_by == TSIDE_OPEN_HEIGHT)
        NEAR(p.underside, c->stops.open_height, 1e-10, "open", c->number);
    else
        NEAR(p.y + p.diameter / 2, c->curtain.hip - c->curtain.rail_depth - c->stops.gap, 1e-10, "open", c->number);
}

/* --- one after the other, and back --- */

FOR_CURVED(axis_never_jumps)
{
    for (int i = 0; i + 1 < c->travel.stretches; i++) {
        tside_i_spot before, after;
        tside_i_travel_spot(&c->travel, i, c->travel.stretch[i + 1].from, &before);
        tside_i_travel_spot(&c->travel, i + 1, c->travel.stretch[i + 1].from, &after);
        NEAR(hypot(before.x - after.x, before.y - after.y), 0, 1e-8, "jump of the axis", c->number);
        NEAR(before.s, after.s, 1e-10, "jump of what hangs", c->number);
        note(c, hypot(before.x - after.x, before.y - after.y));
    }
}

/* Over a baseboard the roll drops as it tips, so that its height tells no place. */
FOR_CURVED(turns_and_heights_invert)
{
    for (int k = 0; k <= 7; k++) {
        double turns = c->open * k / 7;
        tside_position at, back;
        tside_fault fault;
        ANSWERS(tside_travel_at(&c->travel, turns, &at, &fault));
        NEAR(at.turns, turns, 1e-10, "turns of the place", c->number);
        if (c->tips)
            continue;
        ANSWERS(tside_travel_to_height(&c->travel, at.underside, &back, &fault));
        NEAR(back.underside, at.underside, 1e-10, "height", c->number);
        NEAR(back.turns, turns, 1e-8, "turns of the height", c->number);
        note(c, fabs(back.turns - turns));
    }
}

/* --- laws --- */

static void scale_lengths(curved *c, double k)
{
    tside_frame *f = &c->frame;
    double *lengths[] = {&f->tube.diameter,      &f->tube.wall,          &f->width,        &f->leg_height,
                         &f->peak_height,        &f->shoulder_radius,    &f->foot_x,       &f->foot_height,
                         &f->between_x,          &f->between_height,     &f->peak_x,       &f->board_top,
                         &f->board_stand,        &c->curtain.hip,        &c->curtain.sill, &c->curtain.standoff,
                         &c->curtain.rail_depth, &c->curtain.thickness,  &c->stops.seal,   &c->stops.shut_height,
                         &c->stops.gap,          &c->stops.open_height,  &c->roll.core,    &c->roll.thickness,
                         &c->hang.eye_x,         &c->hang.eye_y,         &c->hang.offset,  &c->hang.length,
                         &c->hang.chain,         &c->hang.carried_offset};
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
        *lengths[i] *= k;
}

/*
 * Twice the cross-section: the same turns. A curtain of the same mass per area then weighs twice per metre; with bar,
 * drive and guide twice as heavy, torque and work are fourfold.
 */
FOR_CURVED(lengths_scale)
{
    curved twice = *c;
    tside_fault fault;
    scale_lengths(&twice, 2);
    twice.load.bar_mass *= 2, twice.load.clip_mass *= 2, twice.load.end_mass *= 2, twice.load.rope_pressure *= 2;
    twice.hang.weight *= 2, twice.hang.carried *= 2;
    ANSWERS(tside_bow_make(&twice.frame, &twice.bow, &fault));
    ANSWERS(tside_line_make(&twice.bow, &twice.curtain, &twice.line, &fault));
    ANSWERS(tside_travel_make(&twice.line, &twice.curtain, &twice.roll, &twice.stops, &twice.travel, &fault));
    NEAR(tside_i_travel_turns(&twice.travel, twice.travel.end), c->open, 1e-8, "turns", c->number);
    for (int k = 0; k <= 3; k++) {
        double turns = (c->open - 1e-7) * k / 3, one, other;
        tside_position p, q;
        tside_torque t, u;
        ANSWERS(tside_travel_at(&c->travel, turns, &p, &fault));
        ANSWERS(tside_travel_at(&twice.travel, turns, &q, &fault));
        if (tipped_at(c, p.wraps) == LIES_SLACK)
            continue;
        NEAR(q.x, 2 * p.x, 1e-8, "axis", c->number);
        NEAR(q.y, 2 * p.y, 1e-8, "axis", c->number);
        NEAR(q.wraps, p.wraps, 1e-8, "wraps", c->number);
        if (!c->hung || guide_runs_away(c))
            continue;
        ANSWERS(tside_lift_at(&c->travel, &c->load, &c->hang, turns, &t, &fault));
        ANSWERS(tside_lift_at(&twice.travel, &twice.load, &twice.hang, turns, &u, &fault));
        NEAR(u.drive, 4 * t.drive, 1e-6 * fabs(u.drive), "torque", c->number);
        ANSWERS(tside_lift_work(&c->travel, &c->load, &c->hang, turns, &one, &fault));
        ANSWERS(tside_lift_work(&twice.travel, &twice.load, &twice.hang, turns, &other, &fault));
        NEAR(other, 4 * one, 1e-7 * fabs(other) + 1e-6, "work", c->number);
    }
}

/* A left-hand side is the right-hand one's mirror: no number changes. */
START_TEST(hands_are_mirrors)
{
    int planned = 0;
    for (int n = 0; n < SIDES; n += 41) {
        curved c;
        tside_side side;
        tside_plan right, left;
        tside_fault fault;
        if (curved_side(n, &c, NULL) != TSIDE_OK)
            continue;
        side = whole_side(&c);
        if (tside_plan_side(&side, &right, &fault) != TSIDE_OK)
            continue;
        side.hand = TSIDE_LEFT;
        ANSWERS(tside_plan_side(&side, &left, &fault));
        NEAR(left.drive_turns, right.drive_turns, 0, "turns", n);
        NEAR(left.open.x, right.open.x, 0, "axis", n);
        NEAR(left.worst.drive, right.worst.drive, 0, "torque", n);
        NEAR(left.drive_end.sweep.kick_out, right.drive_end.sweep.kick_out, 0, "kick", n);
        NEAR(left.drive_end.side_force, right.drive_end.side_force, 0, "side force", n);
        planned++;
    }
    ck_assert_int_gt(planned, 5);
}
END_TEST

/* --- anything at all --- */

static int all_finite(const double *v, int count)
{
    for (int i = 0; i < count; i++)
        if (!isfinite(v[i]))
            return 0;
    return 1;
}

/* Each is refused, or everything that comes of it is a number. */
/* A curtain fixed on a round face leaves along it: its slope has all digits, not the half that a distance off by
 * rounding leaves to a square root. */
FOR_CURVED(a_curtain_on_a_round_face_leaves_along_it)
{
    static int flush;
    double arc, top, slope;
    tside_bow_point at;
    if (c->curtain.standoff > 0 || c->line.piece[0].slope == 0)
        return;
    ck_assert(tside_i_path_at_height(&c->bow.face, c->curtain.hip, &arc, &top));
    at = tside_i_path_at(&c->bow.face, arc);
    slope = at.heading - PI / 2;
    if (at.curvature <= 0 || c->line.piece[0].length > 1e-3)
        return;
    NEAR(c->line.piece[0].slope, slope, 1e-12, "slope", c->number);
    flush++;
    ck_assert(c->number < 900 || flush > 20);
}

/* Where what holds the curtain changes, it changes once: rounding cuts no stretch of no length. */
FOR_CURVED(each_stretch_has_a_length)
{
    const tside_travel *travel = &c->travel;
    for (int i = 1; i < travel->stretches; i++)
        ck_assert_msg(travel->stretch[i].from - travel->stretch[i - 1].from > 1e-9,
                      "side %d: stretch %d of %d begins at %.17g, and the next at %.17g", c->number, i,
                      travel->stretches, travel->stretch[i - 1].from, travel->stretch[i].from);
}

START_TEST(wild_sides_give_numbers_or_refusals)
{
    int made = 0;
    for (int n = 0; n < 20 * SIDES; n++) {
        curved c;
        tside_position p;
        tside_torque t;
        tside_fault fault;
        if (curved_wild(n, &c, NULL) != TSIDE_OK)
            continue;
        made++;
        for (int k = 0; k <= 5; k++) {
            ANSWERS(tside_travel_at(&c.travel, c.open * k / 5, &p, &fault));
            ANSWERS(tside_lift_at(&c.travel, &c.load, NULL, c.open * k / 5, &t, &fault));
            if (!all_finite((const double *)(const void *)&p, sizeof p / sizeof(double)) ||
                !all_finite((const double *)(const void *)&t, sizeof t / sizeof(double)))
                ck_abort_msg("wild side %d", n);
            NEAR(p.turns, c.open * k / 5, 1e-9, "turns", n);
        }
    }
    printf("%d wild sides of %d made\n", made, 20 * SIDES);
    ck_assert_int_gt(made, SIDES);
}
END_TEST

Suite *curve_suite(void)
{
    Suite *suite = suite_create("curve");
    TCase *tcase = tcase_create("curve");
    tcase_add_test(tcase, random_sides_are_refused_only_as_the_headers_say);
    tcase_add_test(tcase, line_is_the_hull);
    tcase_add_test(tcase, bar_is_where_a_roll_comes_to_rest);
    tcase_add_test(tcase, axis_never_jumps);
    tcase_add_test(tcase, turns_and_heights_invert);
    tcase_add_test(tcase, lengths_scale);
    tcase_add_test(tcase, hands_are_mirrors);
    tcase_add_test(tcase, wild_sides_give_numbers_or_refusals);
    tcase_add_test(tcase, each_stretch_has_a_length);
    tcase_add_test(tcase, a_curtain_on_a_round_face_leaves_along_it);
    suite_add_tcase(suite, tcase);
    return suite;
}
