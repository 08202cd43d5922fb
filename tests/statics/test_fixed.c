/* SPDX-License-Identifier: MIT */
/*
 * The guide on a fixed foot: its best line against the width of a convex hull, its misfit against sampled distances,
 * what it carries against a beam cut free.
 */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/field.h>
#include <tunnelside/fixed.h>

#include "sides.h"

Suite *fixed_suite(void);

enum { SIDES = 60, SAMPLES = 300, POINTS = 2 * (SAMPLES + 1) };

static tside_footing usual_footing(tside_fixed_by by)
{
    tside_footing footing;
    tside_usual(TSIDE_KIND_FOOTING, &footing);
    footing.fixed_by = by;
    return footing;
}

static tside_fixed fixed_of(const side *s, const tside_footing *footing, double eye_x, double ground)
{
    tside_fixed fixed;
    tside_fault fault;
    ANSWERS(tside_fixed_make(&s->travel, &s->guide, footing, &s->collar, eye_x, s->eye_y, ground, &fixed, &fault));
    return fixed;
}

/* --- the path and its hull, apart from the library --- */

typedef struct point {
    double x, y;
} point;

static int path_of(const side *s, point *path)
{
    int count = 0;
    for (int k = 0; k < side_parts(s); k++) {
        double from, to;
        int how = side_part(s, k, &from, &to);
        for (int i = 0; i <= SAMPLES; i++) {
            place p = side_place_as(s, how, from + (to - from) * i / SAMPLES);
            ck_assert(count < POINTS);
            path[count++] = (point){p.x, p.y};
        }
    }
    return count;
}

static int by_height(const void *left, const void *right)
{
    const point *a = left, *b = right;
    return a->y < b->y ? -1 : a->y > b->y ? 1 : a->x < b->x ? -1 : a->x > b->x;
}

static double turning(point a, point b, point c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/* Andrew's monotone chain, from memory. */
static int hull_of(point *points, int count, point *hull)
{
    int n = 0, lower;
    qsort(points, (size_t)count, sizeof *points, by_height);
    for (int i = 0; i < count; i++) {
        while (n >= 2 && turning(hull[n - 2], hull[n - 1], points[i]) <= 0)
            n--;
        hull[n++] = points[i];
    }
    lower = n + 1;
    for (int i = count - 2; i >= 0; i--) {
        while (n >= lower && turning(hull[n - 2], hull[n - 1], points[i]) <= 0)
            n--;
        hull[n++] = points[i];
    }
    return n - 1;
}

/*
 * The least over the hull's edges of how far its farthest point lies from that edge: the width of the narrowest strip.
 */
static double hull_width(const side *s)
{
    static point path[POINTS], hull[2 * POINTS];
    int count = hull_of(path, path_of(s, path), hull);
    double width = HUGE_VAL;
    for (int i = 0; i < count; i++) {
        point a = hull[i], b = hull[(i + 1) % count];
        double far = 0;
        for (int k = 0; k < count; k++)
            far = fmax(far, fabs(turning(a, b, hull[k])) / hypot(b.x - a.x, b.y - a.y));
        width = fmin(width, far);
    }
    return width;
}

/* How far a line through top and foot stands outboard of a place of the axis, beyond the collar's offset. */
static double misfit_at(const side *s, const tside_fixed *f, int how, double wraps)
{
    place p = side_place_as(s, how, wraps);
    point top = {f->top_x, f->top_y}, foot = {f->foot_x, f->ground};
    /* the way down has outboard on its left */
    return -turning(top, foot, (point){p.x, p.y}) / hypot(top.x - foot.x, top.y - foot.y) - s->collar.offset;
}

/* The greatest near a sample, or the least, way being -1: of three places the best stays amid ever closer ones. */
static double refined(const side *s, const tside_fixed *f, int how, double at, double step, double from, double to,
                      int way)
{
    double best = way * misfit_at(s, f, how, at);
    for (; step > 1e-9 * (1 + to - from); step *= 0.5)
        for (int side_of = -1; side_of <= 1; side_of += 2) {
            double beside = fmin(fmax(at + side_of * step, from), to), there = way * misfit_at(s, f, how, beside);
            if (there > best) {
                best = there;
                at = beside;
            }
        }
    return way * best;
}

/* Sampled, and refined about the samples that are least and greatest in each part of the travel. */
static void sampled_misfits(const side *s, const tside_fixed *f, double *least, double *greatest)
{
    *least = HUGE_VAL;
    *greatest = -HUGE_VAL;
    for (int k = 0; k < side_parts(s); k++) {
        double from, to, step, low_at, high_at;
        int how = side_part(s, k, &from, &to);
        step = (to - from) / SAMPLES;
        low_at = high_at = from;
        for (int i = 1; i <= SAMPLES; i++) {
            double misfit = misfit_at(s, f, how, from + i * step);
            if (misfit < misfit_at(s, f, how, low_at))
                low_at = from + i * step;
            if (misfit > misfit_at(s, f, how, high_at))
                high_at = from + i * step;
        }
        *least = fmin(*least, refined(s, f, how, low_at, step, from, to, -1));
        *greatest = fmax(*greatest, refined(s, f, how, high_at, step, from, to, 1));
    }
}

/* What the header promises of a misfit. */
#define MISFIT 1e-11

/* --- the line --- */

/* A smooth path bulges between samples by at most its curvature's share: a 300th of the travel apart, some 5e-7 m. */
#define HIDDEN 2e-6

FOR_SIDES(best_line_halves_the_hulls_width, SIDES)
{
    side s = side_random(number);
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f = fixed_of(&s, &footing, 0, 0.05);
    double width = hull_width(&s), least, greatest;
    NEAR(f.misfit_greatest - f.misfit_least, width, HIDDEN, "width", number);
    NEAR(f.misfit_greatest, -f.misfit_least, 1e-12, "amid", number);
    NEAR(f.misfit, width / 2, HIDDEN, "misfit", number);
    sampled_misfits(&s, &f, &least, &greatest);
    NEAR(f.misfit_least, least, MISFIT, "least", number);
    NEAR(f.misfit_greatest, greatest, MISFIT, "greatest", number);
    NEAR(f.misfit, fmax(-least, greatest), MISFIT, "the greater", number);
}

FOR_SIDES(no_other_line_is_better, SIDES)
{
    side s = side_random(number);
    dice d = {(uint64_t)number + 3};
    tside_footing best = usual_footing(TSIDE_FIXED_BEST), from_top = usual_footing(TSIDE_FIXED_TOP),
                  both = usual_footing(TSIDE_FIXED_BOTH);
    tside_fixed f = fixed_of(&s, &best, 0, 0), again = fixed_of(&s, &from_top, f.top_x, 0);
    NEAR(again.lean, f.lean, 1e-9, "from the best top the best foot", number);
    NEAR(again.misfit, f.misfit, 1e-11, "misfit", number);
    for (int i = 0; i < 20; i++) {
        double moved = dice_between(&d, -0.3, 0.3);
        tside_fixed other = fixed_of(&s, &from_top, f.top_x + moved, 0), given;
        NEAR(other.misfit_greatest, -other.misfit_least, 1e-10, "as much one way as the other", number);
        ck_assert(other.misfit >= f.misfit - 1e-12);
        both.foot_x = other.foot_x;
        given = fixed_of(&s, &both, other.top_x, 0);
        NEAR(given.lean, other.lean, 1e-12, "the same line given", number);
        NEAR(given.misfit, other.misfit, 1e-11, "the same misfit", number);
        both.foot_x = other.foot_x + dice_between(&d, -0.2, 0.2);
        ck_assert(fixed_of(&s, &both, other.top_x, 0).misfit >= other.misfit - 1e-12);
    }
}

FOR_SIDES(misfit_and_lengths_follow_from_top_and_foot, SIDES)
{
    side s = side_random(number);
    dice d = {(uint64_t)number + 11};
    tside_footing footing = usual_footing(TSIDE_FIXED_BOTH);
    double ground = dice_between(&d, -0.2, 0.1), top_x = s.fixing_x + dice_between(&d, -0.1, 0.5), least, greatest,
           worse = 0;
    tside_fixed f;
    footing.foot_x = s.fixing_x + dice_between(&d, -0.1, 0.8);
    f = fixed_of(&s, &footing, top_x, ground);
    sampled_misfits(&s, &f, &least, &greatest);
    NEAR(f.misfit_least, least, MISFIT, "least", number);
    NEAR(f.misfit_greatest, greatest, MISFIT, "greatest", number);
    NEAR(f.misfit, fmax(-least, greatest), MISFIT, "misfit", number);
    NEAR(f.ground, ground, 0, "ground", number);
    NEAR(f.offset, s.collar.offset, 0, "offset", number);
    NEAR(f.length, hypot(footing.foot_x - top_x, s.eye_y - ground), 1e-12, "length", number);
    NEAR(f.cut_length, f.length + 24 * 0.0254, 1e-12, "cut length", number);
    NEAR(tan(f.lean), (footing.foot_x - top_x) / (s.eye_y - ground), 1e-12, "lean", number);
    for (int way = -1; way <= 1; way += 2) {
        tside_fixed moved = f;
        moved.foot_x += way * s.guide.placing_error;
        sampled_misfits(&s, &moved, &least, &greatest);
        worse = fmax(worse, fmax(-least, greatest));
    }
    NEAR(f.misfit_error, worse, MISFIT, "with the foot misplaced", number);
}

/* The top above the highest place of what rides on the guide, less what is to stay clear. */
FOR_SIDES(the_top_is_clear_of_what_rides, SIDES)
{
    side s = side_random(number);
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f = fixed_of(&s, &footing, 0, 0);
    double highest = -HUGE_VAL;
    for (int k = 0; k < side_parts(&s); k++) {
        double from, to;
        int how = side_part(&s, k, &from, &to);
        for (int i = 0; i <= SAMPLES; i++)
            highest = fmax(highest, side_place_as(&s, how, from + (to - from) * i / SAMPLES).y);
    }
    NEAR(f.clear, s.eye_y - highest - s.collar.height - s.guide.eye_clearance, 1e-11, "clear", number);
}

START_TEST(a_bar_that_stays_has_a_plumb_guide_that_fits)
{
    side s = side_plain();
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f;
    tside_position at;
    tside_fault fault;
    ANSWERS(tside_travel_at(&s.travel, 0, &at, &fault));
    s.stops.open_by = TSIDE_OPEN_HEIGHT;
    s.stops.open_height = at.underside;
    side_make(&s);
    f = fixed_of(&s, &footing, 0, 0);
    ck_assert(f.lean == 0);
    NEAR(f.misfit, 0, 1e-12, "misfit", 0);
    NEAR(f.top_x, at.x + s.collar.offset, 1e-12, "top", 0);
}
END_TEST

/* --- what it carries --- */

/*
 * The pipe as a beam on two pins with a couple at the collar, cut free at many places: what lies above a cut is in
 * balance.
 */
static double bending(double couple, double length, double from_top)
{
    double reaction = couple / length, most = 0;
    for (int i = 0; i <= 1000; i++) {
        double cut = length * i / 1000;
        most = fmax(most, fabs(reaction * cut - (cut > from_top ? couple : 0)));
    }
    most = fmax(most, fabs(reaction * from_top));
    return fmax(most, fabs(reaction * from_top - couple));
}

FOR_SIDES(couple_is_held_at_top_and_foot, SIDES)
{
    side s = side_random(number);
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f = fixed_of(&s, &footing, 0, 0);
    tside_fixed_load running, stalled;
    tside_fault fault;
    double couple = 0, moment = 0, moment_stalled = 0, e = s.collar.mass * GRAVITY * s.collar.mass_offset,
           open = side_place(&s, s.open).turns;
    ANSWERS(tside_fixed_force(&s.travel, &s.load, &f, 0, &running, &fault));
    ANSWERS(tside_fixed_force(&s.travel, NULL, &f, 200, &stalled, &fault));
    for (int i = 0; i <= 200; i++) {
        tside_torque torque;
        tside_position p;
        double from_top;
        ANSWERS(tside_lift_at(&s.travel, &s.load, NULL, open * i / 200, &torque, &fault));
        ANSWERS(tside_travel_at(&s.travel, open * i / 200, &p, &fault));
        from_top = sqrt(
            pow(p.x - f.top_x, 2) + pow(p.y - f.top_y, 2) -
            pow(turning((point){f.top_x, f.top_y}, (point){f.foot_x, f.ground}, (point){p.x, p.y}) / f.length, 2));
        couple = fmax(couple, fabs(torque.up + e));
        moment = fmax(moment, bending(torque.up + e, f.length, from_top));
        moment_stalled = fmax(moment_stalled, bending(200 + e, f.length, from_top));
    }
    /* sampled between whole turns, so never above, and at most a little below */
    ck_assert(running.couple >= couple - 1e-9 && running.couple <= couple * 1.002);
    ck_assert(running.moment >= moment - 1e-9 && running.moment <= moment * 1.01);
    NEAR(running.reaction, running.couple / f.length, 1e-12 * running.reaction, "reaction", number);
    NEAR(stalled.couple, 200 + e, 1e-9, "couple at stall", number);
    NEAR(stalled.reaction * f.length, 200 + e, 1e-9, "moments about the foot", number);
    ck_assert(stalled.moment >= moment_stalled - 1e-9 && stalled.moment <= moment_stalled * 1.01);
}

/* Of a constant couple the pipe bends most where the collar is farthest from the middle: at an end of the travel. */
FOR_SIDES(a_constant_couple_bends_most_at_an_end, SIDES)
{
    side s = side_random(number);
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f = fixed_of(&s, &footing, 0, 0);
    tside_fixed_load stalled;
    tside_fault fault;
    double open = side_place(&s, s.open).turns, couple = 200 + s.collar.mass * GRAVITY * s.collar.mass_offset, most = 0;
    ANSWERS(tside_fixed_force(&s.travel, NULL, &f, 200, &stalled, &fault));
    for (int at = 0; at <= 1; at++) {
        tside_position p;
        double down;
        ANSWERS(tside_travel_at(&s.travel, open * at, &p, &fault));
        down = (p.x - f.top_x) * sin(f.lean) - (p.y - f.top_y) * cos(f.lean);
        most = fmax(most, couple * fmax(down, f.length - down) / f.length);
    }
    NEAR(stalled.moment, most, 1e-9 * most, "moment", number);
}

/* Its foot cuts the side force to about the share that the hung guide's reach has of the whole pipe. */
START_TEST(a_foot_cuts_the_side_force)
{
    side s = side_plain();
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f = fixed_of(&s, &footing, 0, 0);
    tside_fixed_load stalled;
    tside_fault fault;
    place open = side_place(&s, s.open);
    double reach = sqrt(pow(open.x - s.eye_x, 2) + pow(open.y - s.eye_y, 2) - pow(s.collar.offset, 2)),
           hung = (200 + s.collar.mass * GRAVITY * s.collar.mass_offset) / reach;
    ANSWERS(tside_fixed_force(&s.travel, NULL, &f, 200, &stalled, &fault));
    NEAR(stalled.reaction / hung, reach / f.length, 1e-9, "share", 0);
    ck_assert(stalled.reaction < hung / 3);
}
END_TEST

/* --- refusals --- */

START_TEST(what_cannot_stand_is_refused_by_name)
{
    side s = side_plain();
    tside_footing footing = usual_footing(TSIDE_FIXED_BEST);
    tside_fixed f;
    tside_fixed_load forces;
    tside_fault fault;
    place shut = side_place(&s, s.shut);
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, 1, 0, &f, &fault), f, TSIDE_OUT_OF_REACH,
            "eye_y", TSIDE_BELOW);
    ANSWERS(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, fault.bound, 0, &f, &fault));
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, s.eye_y, 1.9, &f, &fault), f,
            TSIDE_CONTRADICTS, "ground", TSIDE_NOT_BELOW);
    NEAR(fault.bound, shut.y, 1e-12, "highest ground", 0);
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, s.eye_y, NAN, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "ground", TSIDE_NOT_FINITE);
    footing.fixed_by = TSIDE_FIXED_TOP;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 20, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_REACH, "eye_x", TSIDE_NO_RELATION);
    footing.fixed_by = TSIDE_FIXED_BOTH;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 3, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "footing.foot_x", TSIDE_NOT_ABOVE);
    /*
     * From the centreline, as low as the drive lets it be: at 75 degrees such a line passes 4.4 m outboard some 1.2 m
     * lower, and the middle of the bar's travel lies not so far below.
     */
    footing.fixed_by = TSIDE_FIXED_TOP;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, 1, 0, &f, &fault), f, TSIDE_OUT_OF_REACH,
            "eye_y", TSIDE_BELOW);
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 0, fault.bound, 0, &f, &fault), f,
            TSIDE_OUT_OF_REACH, "eye_x", TSIDE_NO_RELATION);
    footing = usual_footing(TSIDE_FIXED_BEST);
    footing.depth = -1;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 3, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "footing.depth", TSIDE_BELOW);
    footing.depth = 0;
    f = fixed_of(&s, &footing, 0, 0);
    ck_assert(f.cut_length == f.length);
    REFUSES(tside_fixed_force(&s.travel, NULL, &f, -1, &forces, &fault), forces, TSIDE_OUT_OF_BOUNDS, "torque",
            TSIDE_BELOW);
    s.guide.margin = -1;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 3, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "guide.margin", TSIDE_BELOW);
    s = side_plain();
    s.collar.height = NAN;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, 3, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "collar.height", TSIDE_NOT_FINITE);
    s = side_plain();
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, -1, -1, 0, &f, &fault), f, TSIDE_OUT_OF_BOUNDS,
            "eye_y", TSIDE_BELOW); /* of a best line the top's place outboard is not read */
    footing.fixed_by = TSIDE_FIXED_TOP;
    REFUSES(tside_fixed_make(&s.travel, &s.guide, &footing, &s.collar, -1, s.eye_y, 0, &f, &fault), f,
            TSIDE_OUT_OF_BOUNDS, "eye_x", TSIDE_BELOW);
    s.load.friction = -1;
    REFUSES(tside_fixed_force(&s.travel, &s.load, &f, 0, &forces, &fault), forces, TSIDE_OUT_OF_BOUNDS, "load.friction",
            TSIDE_BELOW);
}
END_TEST

Suite *fixed_suite(void)
{
    Suite *suite = suite_create("fixed");
    TCase *tcase = tcase_create("fixed");
    tcase_add_test(tcase, best_line_halves_the_hulls_width);
    tcase_add_test(tcase, no_other_line_is_better);
    tcase_add_test(tcase, misfit_and_lengths_follow_from_top_and_foot);
    tcase_add_test(tcase, the_top_is_clear_of_what_rides);
    tcase_add_test(tcase, a_bar_that_stays_has_a_plumb_guide_that_fits);
    tcase_add_test(tcase, couple_is_held_at_top_and_foot);
    tcase_add_test(tcase, a_constant_couple_bends_most_at_an_end);
    tcase_add_test(tcase, a_foot_cuts_the_side_force);
    tcase_add_test(tcase, what_cannot_stand_is_refused_by_name);
    suite_add_tcase(suite, tcase);
    return suite;
}
