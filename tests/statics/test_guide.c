/* SPDX-License-Identifier: MIT */
/*
 * The guide against plane geometry done over again in the tests, and its sweep against dense sampling on random sides.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include "sides.h"

Suite *guide_suite(void);

enum { SIDES = 300, SAMPLES = 2000, STEPS = 12 };

static tside_sweep sweep_of(const side *s)
{
    tside_hang hang;
    tside_sweep sweep;
    tside_fault fault;
    ANSWERS(tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, 0, &hang, &sweep, &fault));
    return sweep;
}

/* --- the lean at one place --- */

FOR_SIDES(lean_follows_its_formula, SIDES)
{
    side s = side_random(number);
    place shut = side_place(&s, s.shut);
    double open = side_place(&s, s.open).turns;
    for (int i = 0; i <= STEPS; i++) {
        double turns = open * i / STEPS, lean, drive;
        place p = side_place(&s, side_wraps(&s, turns));
        tside_fault fault;
        ANSWERS(tside_guide_lean(&s.travel, &s.hang, turns, &lean, &drive, &fault));
        NEAR(lean, side_lean(&s, &p, 0), 1e-10, "lean", number);
        NEAR(drive, turns - (side_lean(&s, &p, 0) - side_lean(&s, &shut, 0)) / (2 * PI), 1e-10, "drive's turns",
             number);
    }
}

/*
 * The line from eye to foot passes the axis outboard, at the collar's offset; shut, the foot is the margin below the
 * collar.
 */
FOR_SIDES(guide_passes_the_bar_at_its_offset, SIDES)
{
    side s = side_random(number);
    double open = side_place(&s, s.open).turns;
    for (int i = 0; i <= STEPS; i++) {
        double turns = open * i / STEPS, lean, drive, gx, gy, across, along;
        tside_position p;
        tside_fault fault;
        ANSWERS(tside_guide_lean(&s.travel, &s.hang, turns, &lean, &drive, &fault));
        ANSWERS(tside_travel_at(&s.travel, turns, &p, &fault));
        gx = s.hang.length * sin(lean); /* eye to foot */
        gy = -s.hang.length * cos(lean);
        across = (gx * (p.y - s.eye_y) - gy * (p.x - s.eye_x)) /
                 hypot(gx, gy); /* axis to the left of the way down: outboard */
        along = (gx * (p.x - s.eye_x) + gy * (p.y - s.eye_y)) / hypot(gx, gy);
        NEAR(-across, s.collar.offset, 1e-12, "line outboard of the axis", number);
        ck_assert(along > s.guide.chain);
        if (i == 0)
            NEAR(s.hang.length, along + s.guide.margin, 1e-12, "length", number);
    }
}

START_TEST(right_under_the_eye_it_hangs_plumb)
{
    side s = side_plain();
    double lean, drive;
    tside_fault fault;
    s.eye = OFFSET_EYE;
    s.eye_x = side_place(&s, s.shut).x + s.collar.offset;
    side_make(&s);
    ANSWERS(tside_guide_lean(&s.travel, &s.hang, 0, &lean, &drive, &fault));
    NEAR(lean, 0, 1e-15, "lean", 0);
    NEAR(drive, 0, 1e-15, "drive's turns", 0);
    s.eye_x -= 0.05; /* an eye inboard leans the foot outboard */
    side_make(&s);
    ANSWERS(tside_guide_lean(&s.travel, &s.hang, 0, &lean, &drive, &fault));
    ck_assert(lean > 0.02);
}
END_TEST

START_TEST(lean_is_asked_within_the_travel)
{
    side s = side_plain();
    double lean, drive;
    tside_fault fault;
    REFUSES(tside_guide_lean(&s.travel, &s.hang, -0.1, &lean, &drive, &fault), lean, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_BELOW);
    REFUSES(tside_guide_lean(&s.travel, &s.hang, 1000, &lean, &drive, &fault), drive, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_ABOVE);
}
END_TEST

/* --- the sweep --- */

/*
 * What dense sampling finds. rough: how much may hide between samples, the greatest second difference, of which a peak
 * can hide an eighth.
 */
typedef struct swing {
    double least, greatest, shut, rough;
} swing;

static swing sample(const side *s, double moved, int samples)
{
    place first = side_place(s, s->shut);
    swing found = {HUGE_VAL, -HUGE_VAL, side_lean(s, &first, moved), 0};
    for (int k = 0; k < side_parts(s); k++) {
        double from, to, last = 0, before = 0;
        int how = side_part(s, k, &from, &to);
        for (int i = 0; i <= samples; i++) {
            place p = side_place_as(s, how, from + (to - from) * i / samples);
            double lean = side_lean(s, &p, moved);
            found.least = fmin(found.least, lean);
            found.greatest = fmax(found.greatest, lean);
            if (i > 1)
                found.rough = fmax(found.rough, fabs(lean - 2 * last + before));
            before = last;
            last = lean;
        }
    }
    return found;
}

/* At least what was sampled, and at most what may hide between. */
static void at_least(double got, double sampled, double hidden, const char *what, int number)
{
    ck_assert_msg(got >= sampled - 1e-12, "%s of side %d: %.15g, sampled %.15g", what, number, got, sampled);
    ck_assert_msg(got <= sampled + hidden + 1e-12, "%s of side %d: %.15g, sampled %.15g, at most %.3g more", what,
                  number, got, sampled, hidden);
}

FOR_SIDES(sweep_is_what_dense_sampling_finds, SIDES)
{
    side s = side_random(number);
    tside_sweep sweep = sweep_of(&s);
    swing w = sample(&s, 0, SAMPLES);
    place shut = side_place(&s, s.shut), open = side_place(&s, s.open);
    double reach = sqrt(pow(hypot(shut.x - s.eye_x, shut.y - s.eye_y), 2) - s.collar.offset * s.collar.offset),
           G = reach + s.guide.margin, hidden = G * w.rough, foot;
    NEAR(sweep.lean_shut, w.shut, 1e-11, "lean when shut", number);
    NEAR(sweep.lean_open, side_lean(&s, &open, 0), 1e-10, "lean when open", number);
    at_least(sweep.lean_greatest, w.greatest, w.rough, "greatest lean", number);
    at_least(-sweep.lean_least, -w.least, w.rough, "least lean", number);
    NEAR(sweep.length, G, 1e-11, "length", number);
    NEAR(sweep.cut_length, G - s.guide.chain, 1e-11, "cut length", number);
    foot = s.eye_x + G * sin(w.shut);
    NEAR(sweep.foot_x, foot, 1e-11, "foot when shut", number);
    at_least(sweep.walkway, s.eye_x + G * sin(w.greatest), hidden, "walkway line", number);
    at_least(sweep.kick_out, s.eye_x + G * sin(w.greatest) - foot, hidden, "kick out", number);
    at_least(sweep.kick_in, foot - (s.eye_x + G * sin(w.least)), hidden, "kick in", number);
    at_least(-sweep.foot_lowest,
             G * (w.least <= 0 && w.greatest >= 0 ? 1 : cos(fmin(fabs(w.least), fabs(w.greatest)))) - s.eye_y, hidden,
             "lowest foot", number);
    NEAR(sweep.clear, s.eye_y - open.y - s.collar.height - s.guide.eye_clearance, 1e-11, "clear", number);
}

/*
 * Of a misplaced eye each of the three at its own worse, the guide keeping its cut length; never better than with the
 * eye in place.
 */
FOR_SIDES(placing_error_is_at_its_worse, SIDES)
{
    side s = side_random(number);
    tside_sweep sweep = sweep_of(&s);
    double out = 0, in = 0, walkway = -HUGE_VAL, hidden = 0, G = sweep.length;
    for (int i = -1; i <= 1; i++) {
        double moved = i * s.guide.placing_error, foot;
        swing w = sample(&s, moved, SAMPLES);
        foot = G * sin(w.shut);
        out = fmax(out, G * sin(w.greatest) - foot);
        in = fmax(in, foot - G * sin(w.least));
        walkway = fmax(walkway, s.eye_x + moved + G * sin(w.greatest));
        hidden = fmax(hidden, G * w.rough);
    }
    at_least(sweep.kick_out_error, out, hidden, "kick out, misplaced", number);
    at_least(sweep.kick_in_error, in, hidden, "kick in, misplaced", number);
    at_least(sweep.walkway_error, walkway, hidden, "walkway line, misplaced", number);
}

/* Steel of 7850 kg/m3 by EN 10219-2. */
FOR_SIDES(guide_weighs_its_cut_length, 30)
{
    side s = side_random(number);
    double D = s.guide.tube.diameter, d = D - 2 * s.guide.tube.wall;
    NEAR(s.hang.weight, 7850 * PI / 4 * (D * D - d * d) * (s.hang.length - s.guide.chain) * GRAVITY,
         1e-12 * s.hang.weight, "weight", number);
    NEAR(s.hang.carried, s.collar.mass * GRAVITY, 1e-13 * s.hang.carried, "carried", number);
    NEAR(s.hang.carried_offset, s.collar.mass_offset, 0, "carried offset", number);
    NEAR(s.hang.offset, s.collar.offset, 0, "offset", number);
    NEAR(s.hang.chain, s.guide.chain, 0, "chain", number);
    NEAR(s.hang.eye_x, s.eye_x, 0, "eye", number);
    NEAR(s.hang.eye_y, s.eye_y, 0, "eye", number);
    NEAR(s.hang.length, sweep_of(&s).length, 0, "length", number);
}

/* --- the best eye --- */

static double greatest_either_way(side *s, double x)
{
    swing w;
    s->eye_x = x;
    w = sample(s, 0, 400);
    return fmax(w.greatest, -w.least);
}

static double golden_section(side *s, double low, double high)
{
    const double golden = (3 - sqrt(5)) / 2;
    double a = low + golden * (high - low), b = high - golden * (high - low), fa = greatest_either_way(s, a),
           fb = greatest_either_way(s, b);
    while (high - low > 1e-9) {
        if (fa < fb) {
            high = b;
            b = a, fb = fa;
            a = low + golden * (high - low), fa = greatest_either_way(s, a);
        } else {
            low = a;
            a = b, fa = fb;
            b = high - golden * (high - low), fb = greatest_either_way(s, b);
        }
    }
    return (low + high) / 2;
}

FOR_SIDES(best_eye_leans_alike_both_ways_and_least, 150)
{
    side s = side_random(number), t;
    tside_sweep sweep;
    swing w;
    double x, other, slack;
    tside_fault fault;
    s.eye = BEST_EYE;
    s.eye_y = s.curtain.hip + 0.15 + 0.002 * number;
    side_make(&s);
    x = s.eye_x;
    sweep = sweep_of(&s);
    /* the search stops at 1e-13 of the eye's place, and a lean moves by 1/d for each metre of it */
    NEAR(sweep.lean_greatest + sweep.lean_least, 0, 1e-11, "greatest and least lean", number);
    t = s;
    w = sample(&s, 0, 400);
    slack = w.rough + 1e-9;
    other = golden_section(&t, x - 0.3, x + 0.3);
    ck_assert(greatest_either_way(&t, x) <= greatest_either_way(&t, other) + slack);
    NEAR(x, other, (slack + 1e-8) * (s.eye_y + 0.1), "eye by golden section", number);
    ANSWERS(tside_eye_best(&s.travel, s.eye_y, s.collar.offset, &other, &fault));
    NEAR(other, x, 0, "the same eye again", number);
}

/* So near above the bar a guide swings almost flat when the eye is off by its own height. */
FOR_SIDES(an_eye_just_above_the_bar_is_placed_as_well, 90)
{
    side s = side_random(number);
    double height = pow(10, -1 - number % 6);
    swing w;
    tside_fault fault;
    side_make(&s);
    s.eye_y = side_place(&s, s.open).y + s.collar.offset + height;
    ANSWERS(tside_eye_best(&s.travel, s.eye_y, s.collar.offset, &s.eye_x, &fault));
    w = sample(&s, 0, 2000);
    NEAR((w.greatest + w.least) * height, 0, w.rough * height + 1e-12, "greatest and least lean, by the eye's height",
         number);
}

START_TEST(best_eye_is_refused_below_the_bar)
{
    side s = side_plain();
    double x, highest = side_place(&s, s.open).y;
    tside_fault fault;
    REFUSES(tside_eye_best(&s.travel, highest + 0.05, 0.1, &x, &fault), x, TSIDE_OUT_OF_REACH, "eye_y",
            TSIDE_NOT_ABOVE);
    NEAR(fault.bound, highest + 0.1, 1e-12, "bound", 0);
    REFUSES(tside_eye_best(&s.travel, fault.bound - 1e-9, 0.1, &x, &fault), x, TSIDE_OUT_OF_REACH, "eye_y",
            TSIDE_NOT_ABOVE);
    ANSWERS(tside_eye_best(&s.travel, fault.bound + 1e-6, 0.1, &x, &fault));
    ck_assert(isfinite(x));
    REFUSES(tside_eye_best(&s.travel, 0.5, 0, &x, &fault), x, TSIDE_OUT_OF_REACH, "eye_y", TSIDE_NOT_ABOVE);
    REFUSES(tside_eye_best(&s.travel, NAN, 0.1, &x, &fault), x, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_NOT_FINITE);
    REFUSES(tside_eye_best(&s.travel, -1, 0.1, &x, &fault), x, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_BELOW);
    REFUSES(tside_eye_best(&s.travel, 2.5, -0.1, &x, &fault), x, TSIDE_OUT_OF_BOUNDS, "collar_offset", TSIDE_BELOW);
    REFUSES(tside_eye_best(&s.travel, 2.5, HUGE_VAL, &x, &fault), x, TSIDE_OUT_OF_BOUNDS, "collar_offset",
            TSIDE_NOT_FINITE);
}
END_TEST

/* --- laws --- */

FOR_SIDES(lengths_scale_and_leans_do_not, 100)
{
    side s = side_random(number), t = side_scaled(&s, 2);
    tside_sweep p = sweep_of(&s), q;
    side_make(&t);
    q = sweep_of(&t);
    NEAR(q.lean_shut, p.lean_shut, 1e-10, "lean when shut", number);
    NEAR(q.lean_open, p.lean_open, 1e-10, "lean when open", number);
    NEAR(q.lean_least, p.lean_least, 1e-10, "least lean", number);
    NEAR(q.lean_greatest, p.lean_greatest, 1e-10, "greatest lean", number);
    NEAR(q.length, 2 * p.length, 1e-10, "length", number);
    NEAR(q.cut_length, 2 * p.cut_length, 1e-10, "cut length", number);
    NEAR(q.kick_out, 2 * p.kick_out, 1e-10, "kick out", number);
    NEAR(q.kick_in_error, 2 * p.kick_in_error, 1e-10, "kick in", number);
    NEAR(q.walkway_error, 2 * p.walkway_error, 1e-10, "walkway line", number);
    NEAR(q.foot_lowest, 2 * p.foot_lowest, 1e-10, "lowest foot", number);
}

FOR_SIDES(a_moved_guide_moves_alike, 100)
{
    side s = side_random(number), t = side_moved(&s, 1.25, 0.5);
    tside_sweep p = sweep_of(&s), q;
    side_make(&t);
    q = sweep_of(&t);
    NEAR(q.lean_least, p.lean_least, 1e-9, "least lean", number);
    NEAR(q.lean_greatest, p.lean_greatest, 1e-9, "greatest lean", number);
    NEAR(q.foot_x, p.foot_x + 1.25, 1e-9, "foot", number);
    NEAR(q.walkway, p.walkway + 1.25, 1e-9, "walkway line", number);
    NEAR(q.foot_lowest, p.foot_lowest + 0.5, 1e-9, "lowest foot", number);
    NEAR(q.kick_out_error, p.kick_out_error, 1e-9, "kick out", number);
}

/* --- refusals --- */

static tside_status hang(const side *s, tside_hang *made, tside_fault *fault)
{
    return tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, 0, made, NULL, fault);
}

static tside_status sweep(const side *s, tside_sweep *made, tside_fault *fault)
{
    tside_hang hung;
    return tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, 0, &hung, made, fault);
}

/* It refuses alike with a sweep and without. */
#define BOTH_REFUSE(s, status, field, relation) \
    do { \
        REFUSES(sweep(&(s), &swept, &fault), swept, status, field, relation); \
        REFUSES(hang(&(s), &hung, &fault), hung, status, field, relation); \
    } while (0)

FOR_SIDES(foot_keeps_off_the_ground, 100)
{
    side s = side_random(number);
    tside_hang hung;
    tside_sweep swept = sweep_of(&s);
    tside_fault fault;
    swing w = sample(&s, 0, SAMPLES);
    double most = fmin(fmax(w.least, 0), w.greatest), reach = swept.length - s.guide.margin;
    s.guide.ground_clearance = 0.03;
    s.guide.margin = 0.9;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.margin", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "guide.ground_clearance");
    NEAR(fault.bound, (s.eye_y - 0.03) / cos(most) - reach, s.eye_y * w.rough + 1e-11, "margin", number);
    NEAR(fault.gap, s.eye_y - (reach + 0.9) * cos(most), s.eye_y * w.rough + 1e-11, "foot above ground", number);
    s.guide.margin = fault.bound;
    NEAR(sweep_of(&s).foot_lowest, 0.03, 1e-10, "lowest foot with that margin", number);
    s.guide.margin = fault.bound + 1e-8;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.margin", TSIDE_ABOVE);
}

FOR_SIDES(chain_ends_above_the_collar, 100)
{
    side s = side_random(number);
    place open = side_place(&s, s.open);
    tside_hang hung;
    tside_sweep swept;
    tside_fault fault;
    s.guide.chain = 1.9;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.chain", TSIDE_NOT_BELOW);
    NEAR(fault.bound, sqrt(pow(hypot(open.x - s.eye_x, open.y - s.eye_y), 2) - s.collar.offset * s.collar.offset), 1e-9,
         "eye to collar", number);
    s.guide.chain = fault.bound;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.chain", TSIDE_NOT_BELOW);
    s.guide.chain = fault.bound - 1e-9;
    ANSWERS(hang(&s, &hung, &fault));
}

FOR_SIDES(eye_clears_what_rides_below, 100)
{
    side s = side_random(number);
    double highest = side_place(&s, s.open).y;
    tside_hang hung;
    tside_sweep swept;
    tside_fault fault;
    s.collar.height = 0.2;
    s.guide.eye_clearance = 0.05;
    s.guide.chain = 0;
    s.eye_y = highest + 0.2;
    BOTH_REFUSE(s, TSIDE_OUT_OF_REACH, "eye_y", TSIDE_BELOW);
    NEAR(fault.bound, highest + 0.25, 1e-11, "eye's height", number);
    NEAR(fault.gap, -0.05, 1e-11, "missing", number);
    s.eye_y = fault.bound;
    NEAR(sweep_of(&s).clear, 0, 1e-12, "clear", number);
    s.collar.offset = 0.4;
    BOTH_REFUSE(s, TSIDE_OUT_OF_REACH, "eye_y", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "collar.offset");
    NEAR(fault.bound, highest + 0.4, 1e-11, "eye's height", number);
    s.eye_y = fault.bound + 1e-6;
    s.guide.margin = 0;
    ANSWERS(hang(&s, &hung, &fault));
}

START_TEST(what_cannot_hang_is_refused_by_name)
{
    side s = side_plain();
    tside_hang hung;
    tside_sweep swept;
    tside_fault fault;
    s.guide.foot = TSIDE_FOOT_FIXED;
    BOTH_REFUSE(s, TSIDE_NOT_MODELLED, "guide.foot", TSIDE_NO_RELATION);
    s = side_plain();
    s.guide.margin = -0.01;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "guide.margin", TSIDE_BELOW);
    s = side_plain();
    s.guide.tube.wall = s.guide.tube.diameter / 2;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.tube.wall", TSIDE_NOT_BELOW);
    s = side_plain();
    s.guide.material.grade = TSIDE_6061_T6;
    BOTH_REFUSE(s, TSIDE_CONTRADICTS, "guide.material.grade", TSIDE_NO_RELATION);
    s = side_plain();
    s.collar.offset = -0.01;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "collar.offset", TSIDE_BELOW);
    s = side_plain();
    s.collar.mass = NAN;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "collar.mass", TSIDE_NOT_FINITE);
    s = side_plain();
    s.eye_x = NAN;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "eye_x", TSIDE_NOT_FINITE);
    s = side_plain();
    s.eye_x = -0.1;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "eye_x", TSIDE_BELOW);
    s = side_plain();
    s.eye_y = HUGE_VAL;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_NOT_FINITE);
    s.eye_y = -0.1;
    BOTH_REFUSE(s, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_BELOW);
}
END_TEST

static tside_status hang_out(const side *s, double misfit, tside_hang *made, tside_fault *fault)
{
    return tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, misfit, made, NULL, fault);
}

/* Either way out of line is as good; what is no length is refused. */
START_TEST(a_misfit_is_any_length)
{
    side s = side_plain();
    tside_hang out, in;
    tside_fault fault;
    ANSWERS(hang_out(&s, 0.2, &out, &fault));
    ANSWERS(hang_out(&s, -0.2, &in, &fault));
    ck_assert(out.misfit == 0.2 && in.misfit == -0.2 && in.length == out.length && in.weight == out.weight);
    REFUSES(hang_out(&s, NAN, &out, &fault), out, TSIDE_OUT_OF_BOUNDS, "misfit", TSIDE_NOT_FINITE);
    REFUSES(hang_out(&s, 1e16, &out, &fault), out, TSIDE_OUT_OF_BOUNDS, "misfit", TSIDE_ABOVE);
    REFUSES(hang_out(&s, -1e16, &out, &fault), out, TSIDE_OUT_OF_BOUNDS, "misfit", TSIDE_BELOW);
    ck_assert(fault.value == -1e16 && fault.bound < 0 && !strcmp(fault.unit, "m"));
}
END_TEST

Suite *guide_suite(void)
{
    Suite *suite = suite_create("guide");
    TCase *tcase = tcase_create("guide");
    tcase_add_test(tcase, lean_follows_its_formula);
    tcase_add_test(tcase, guide_passes_the_bar_at_its_offset);
    tcase_add_test(tcase, right_under_the_eye_it_hangs_plumb);
    tcase_add_test(tcase, lean_is_asked_within_the_travel);
    tcase_add_test(tcase, sweep_is_what_dense_sampling_finds);
    tcase_add_test(tcase, placing_error_is_at_its_worse);
    tcase_add_test(tcase, guide_weighs_its_cut_length);
    tcase_add_test(tcase, best_eye_leans_alike_both_ways_and_least);
    tcase_add_test(tcase, an_eye_just_above_the_bar_is_placed_as_well);
    tcase_add_test(tcase, best_eye_is_refused_below_the_bar);
    tcase_add_test(tcase, lengths_scale_and_leans_do_not);
    tcase_add_test(tcase, a_moved_guide_moves_alike);
    tcase_add_test(tcase, foot_keeps_off_the_ground);
    tcase_add_test(tcase, chain_ends_above_the_collar);
    tcase_add_test(tcase, eye_clears_what_rides_below);
    tcase_add_test(tcase, what_cannot_hang_is_refused_by_name);
    tcase_add_test(tcase, a_misfit_is_any_length);
    suite_add_tcase(suite, tcase);
    return suite;
}
