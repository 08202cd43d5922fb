/* SPDX-License-Identifier: MIT */
/*
 * Bar and rail between ropes: the bar against a stiffness solution of beams over several spans, any of them loaded, and
 * the rail against the line under pressure. Points worked by hand are the rows of tests/data/bay.csv.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "linear.h"

Suite *bay_suite(void);

enum { BAYS = 500, SPANS = 6 };

static tside_bay any_bay(int number)
{
    dice d = {(uint64_t)number + 1};
    tside_bay b;
    tside_usual(TSIDE_KIND_BAY, &b);
    b.pressure = dice_between(&d, 50, 1000);
    b.pitch = dice_between(&d, 0.3, 4);
    b.overhang = dice_between(&d, 0, 1);
    b.hanging = dice_between(&d, 0.5, 3);
    b.roll = dice_between(&d, 0.02, 0.15);
    b.tube.diameter = dice_between(&d, 0.02, 0.06);
    b.tube.wall = b.tube.diameter * dice_between(&d, 0.03, 0.2);
    b.foot = (tside_bar_foot)dice_below(&d, 2);
    b.weight = dice_between(&d, 5, 80);
    b.film_stiffness = dice_between(&d, 1e4, 1e5);
    b.screw_spacing = dice_between(&d, 0.1, 0.6);
    return b;
}

static tside_bay_load load_of(const tside_bay *b)
{
    tside_bay_load load;
    tside_fault fault;
    ANSWERS(tside_bay_bears(b, &load, &fault));
    return load;
}

/*
 * A beam over equal spans of 1, EI = 1, those loaded by 1 that a bit stands for: turns at its supports by stiffness,
 * 4 and 2 EI/l, ends fixed by w l^2/12. Returns the greatest moment anywhere, as a fraction of w l^2.
 */
static double greatest_moment(int spans, unsigned loaded)
{
    double a[(SPANS + 1) * (SPANS + 2)] = {0}, most = 0;
    const int n = spans + 1, width = n + 1;
    for (int i = 0; i < spans; i++) {
        double fixed = (loaded >> i & 1u) / 12.0;
        a[i * width + i] += 4;
        a[i * width + i + 1] += 2;
        a[(i + 1) * width + i + 1] += 4;
        a[(i + 1) * width + i] += 2;
        a[i * width + n] -= fixed;
        a[(i + 1) * width + n] += fixed;
    }
    solve(a, n);
    for (int i = 0; i < spans; i++) {
        double w = loaded >> i & 1u, left = 4 * a[i * width + n] + 2 * a[(i + 1) * width + n] + w / 12;
        double right = 2 * a[i * width + n] + 4 * a[(i + 1) * width + n] - w / 12; /* both turning the beam's ends */
        double shear = (left + right) + w / 2, at = w > 0 ? fmin(fmax(shear / w, 0), 1) : 0;
        double field = -left + shear * at - w * at * at / 2;
        most = fmax(most, fmax(fabs(field), fmax(fabs(left), fabs(right))));
    }
    return most;
}

/* "Civil Engineering Formulas", table 2.1: all of one to four equal spans loaded alike. */
START_TEST(the_stiffness_solution_has_the_published_moments)
{
    static const double published[] = {1 / 8.0, 1 / 8.0, 1 / 10.0, 3 / 28.0};
    for (int spans = 1; spans <= 4; spans++)
        NEAR(greatest_moment(spans, (1u << spans) - 1), published[spans - 1], 1e-12, "moment", spans);
}
END_TEST

START_TEST(simple_spans_are_above_every_pattern_of_loaded_spans)
{
    tside_bay b = any_bay(0);
    tside_bay_load load;
    b.overhang = 0;
    load = load_of(&b);
    for (int spans = 1; spans <= SPANS; spans++)
        for (unsigned loaded = 1; loaded < 1u << spans; loaded++)
            ck_assert_msg(load.moment / (load.bar * b.pitch * b.pitch) >= greatest_moment(spans, loaded) - 1e-12,
                          "%d spans, loaded %u: %g", spans, loaded, greatest_moment(spans, loaded));
}
END_TEST

/* By virtual work: the sag of a simple span is the integral of its moment times that of one newton in its middle. */
START_TEST(a_bar_sags_by_the_work_of_its_moments)
{
    enum { PIECES = 2000 };
    const double E = 29000 * 6894757.293168361; /* Pa, of 29000 ksi, AISC 360-16 */
    for (int number = 0; number < BAYS / 5; number++) {
        tside_bay b = any_bay(number);
        tside_bay_load load;
        tside_fault fault;
        tside_section bar;
        double sag = 0;
        ANSWERS(tside_round_section(&b.tube, 7850, &bar, &fault));
        load = load_of(&b);
        for (int i = 0; i < PIECES; i++) {
            double at = b.pitch * (i + 0.5) / PIECES;
            sag += load.bar * at * (b.pitch - at) / 2 * (fmin(at, b.pitch - at) / 2) * b.pitch / PIECES;
        }
        sag /= E * bar.inertia;
        NEAR(load.deflection, sag, 1e-6 * sag, "sag", number);
    }
}
END_TEST

START_TEST(bar_and_rail_bear_all_that_presses_on_film_and_roll)
{
    for (int number = 0; number < BAYS; number++) {
        tside_bay b = any_bay(number);
        tside_bay_load load = load_of(&b);
        double all = b.pressure * (b.hanging + b.roll), own = b.pressure * b.roll / 2;
        /* half the roll is the bar's besides its half of the film: what presses on the roll is the bar's alone */
        NEAR(load.bar + load.rail_square, all, 1e-12 * all, "load", number);
        ck_assert(load.bar > load.rail_square + own);
    }
}
END_TEST

START_TEST(the_rail_bears_the_films_pull_where_the_bar_is_held)
{
    for (int number = 0; number < BAYS; number++) {
        tside_bay b = any_bay(number);
        tside_span film;
        tside_belly belly;
        tside_fault fault;
        tside_bay_load load;
        b.foot = TSIDE_BAR_HELD_DOWN;
        load = load_of(&b);
        tside_usual(TSIDE_KIND_SPAN, &film);
        film.chord = b.hanging;
        film.load = b.pressure;
        film.stiffness_given = 1;
        film.stiffness = b.film_stiffness;
        ANSWERS(tside_span_belly(&film, &belly, &fault));
        NEAR(load.rail_along, belly.along, 1e-12 * belly.along, "along", number);
        NEAR(load.screw, b.screw_spacing * belly.tension, 1e-12 * load.screw, "screw", number);
        b.foot = TSIDE_BAR_RISES;
        ck_assert_double_eq(load_of(&b).rail_along, b.weight);
    }
}
END_TEST

START_TEST(a_longer_overhang_than_half_a_bay_rules)
{
    tside_bay b = any_bay(1);
    double within;
    b.overhang = 0.499 * b.pitch;
    within = load_of(&b).moment;
    b.overhang = 0.501 * b.pitch;
    ck_assert_double_gt(load_of(&b).moment, within);
    b.overhang = 0;
    NEAR(load_of(&b).moment, within, 1e-12 * within, "moment without one", 1);
}
END_TEST

Suite *bay_suite(void)
{
    Suite *suite = suite_create("bay");
    TCase *tcase = tcase_create("bay");
    tcase_add_test(tcase, the_stiffness_solution_has_the_published_moments);
    tcase_add_test(tcase, simple_spans_are_above_every_pattern_of_loaded_spans);
    tcase_add_test(tcase, a_bar_sags_by_the_work_of_its_moments);
    tcase_add_test(tcase, bar_and_rail_bear_all_that_presses_on_film_and_roll);
    tcase_add_test(tcase, the_rail_bears_the_films_pull_where_the_bar_is_held);
    tcase_add_test(tcase, a_longer_overhang_than_half_a_bay_rules);
    suite_add_tcase(suite, tcase);
    return suite;
}
