/* SPDX-License-Identifier: MIT */
/*
 * A loose curtain in wind against the film's own differential equation, its limits, and what holds at any pressure.
 * Points worked by hand are the rows of tests/data/loose.csv.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

Suite *loose_suite(void);

enum { CURTAINS = 2000, STEPS = 400 };

static tside_loose any_loose(int number)
{
    dice d = {(uint64_t)number + 1};
    tside_loose c;
    tside_usual(TSIDE_KIND_LOOSE, &c);
    c.hanging = dice_between(&d, 0.3, 4);
    c.roll = dice_between(&d, 0.02, 0.2);
    c.weight = dice_between(&d, 5, 80);
    c.lean = dice_below(&d, 2) ? dice_between(&d, 0, 0.7) : 0;
    c.seal = dice_between(&d, 0, 0.3);
    return c;
}

static tside_loosening limits_of(const tside_loose *c)
{
    tside_loosening l;
    tside_fault fault;
    ANSWERS(tside_loose_limits(c, &l, &fault));
    return l;
}

static tside_blown blown_at(const tside_loose *c, double pressure)
{
    tside_blown b;
    tside_fault fault;
    ANSWERS(tside_loose_blown(c, pressure, &b, &fault));
    return b;
}

/* --- the film's own equation, its weight along it --- */

/*
 * Up along the film from the bar, at an angle a from plumb: dT/ds = film cos a, T da/ds = p - film sin a; at the bar T
 * sin a is the pressure on the roll, T cos a the weight of what hangs there. By the method of Runge and Kutta.
 */
typedef struct film {
    double tension, angle, out, drop;
} film;

static film rate(film at, double pressure, double weight)
{
    return (film){weight * cos(at.angle), (pressure - weight * sin(at.angle)) / at.tension, sin(at.angle),
                  cos(at.angle)};
}

static film stepped(film at, film by, double step)
{
    return (film){at.tension + step * by.tension, at.angle + step * by.angle, at.out + step * by.out,
                  at.drop + step * by.drop};
}

/* weight: N/m2, of the film; hung: N/m, of the bar and what is on it. */
static film film_of(const tside_loose *c, double pressure, double weight, double hung)
{
    film at = {hypot(hung, pressure * c->roll), atan(pressure * c->roll / hung), 0, 0};
    double h = c->hanging / STEPS;
    for (int i = 0; i < STEPS; i++) {
        film k1 = rate(at, pressure, weight), k2 = rate(stepped(at, k1, h / 2), pressure, weight);
        film k3 = rate(stepped(at, k2, h / 2), pressure, weight), k4 = rate(stepped(at, k3, h), pressure, weight);
        at = stepped(stepped(stepped(stepped(at, k1, h / 6), k2, h / 3), k3, h / 3), k4, h / 6);
    }
    return at;
}

START_TEST(film_without_weight_hangs_as_its_equation_says)
{
    for (int number = 0; number < CURTAINS; number++) {
        tside_loose c = any_loose(number);
        tside_loosening l = limits_of(&c);
        for (int k = 1; k < 5; k++) {
            double pressure = l.leaves + (l.flies - l.leaves) * k / 4;
            tside_blown b = blown_at(&c, pressure);
            film at = film_of(&c, pressure, 0, c.weight);
            ck_assert_int_eq(b.off, 1);
            NEAR(b.stand_out, fmax(at.out - c.hanging * sin(c.lean), 0), 1e-9, "stand-out", number);
            NEAR(b.raise, c.hanging * cos(c.lean) - at.drop, 1e-9, "raise", number);
            NEAR(b.tension, at.tension, 1e-9 * at.tension, "tension", number);
            NEAR(b.rail_angle, at.angle, 1e-9, "angle", number);
        }
    }
}
END_TEST

/* What the header says of film that is no heavier than bar, clips and wraps. */
START_TEST(half_the_films_weight_at_the_bar_stands_for_all_of_it_along_it)
{
    double low_out = 0, high_out = 0, low_raise = 1, high_raise = 0;
    for (int number = 0; number < CURTAINS; number++) {
        tside_loose c = any_loose(number);
        dice d = {(uint64_t)number + 77};
        double whole = c.weight * dice_between(&d, 0, 2 / 3.0), flies; /* N/m, all of the film's weight */
        c.lean = 0;
        flies = limits_of(&c).flies;
        for (int k = 1; k < 10; k++) {
            tside_blown b = blown_at(&c, flies * k / 10);
            film at = film_of(&c, flies * k / 10, whole / c.hanging, c.weight - whole / 2);
            double out = b.stand_out / at.out - 1, raise = b.raise / (c.hanging - at.drop) - 1;
            low_out = fmin(low_out, out);
            high_out = fmax(high_out, out);
            low_raise = fmin(low_raise, raise);
            high_raise = fmax(high_raise, raise);
        }
    }
    ck_assert_msg(low_out > -0.03 && high_out < 0.09, "stand-out from %g to %g", low_out, high_out);
    ck_assert_msg(low_raise > -1e-9 && high_raise < 0.31, "raise from %g to %g", low_raise, high_raise);
}
END_TEST

/* --- limits --- */

/* The wall's push on the bar is square to it; it ends where film and weight alone hold the bar on the wall's line. */
START_TEST(it_leaves_the_wall_where_the_walls_push_ends)
{
    for (int number = 0; number < CURTAINS; number++) {
        tside_loose c = any_loose(number);
        tside_loosening l = limits_of(&c);
        film at = film_of(&c, l.leaves, 0, c.weight);
        NEAR(atan2(at.out, at.drop), c.lean, 1e-9, "lean", number);
        if (c.lean == 0)
            ck_assert_double_eq(l.leaves, 0);
        else
            ck_assert_int_eq(blown_at(&c, l.leaves * (1 - 1e-9)).off, 0);
        at = film_of(&c, l.flies, 0, c.weight);
        NEAR(at.angle, PI / 2, 1e-9, "angle where it flies", number);
    }
}
END_TEST

START_TEST(its_seal_goes_between_wall_and_flight)
{
    for (int number = 0; number < CURTAINS; number++) {
        tside_loose c = any_loose(number);
        tside_loosening l = limits_of(&c);
        double at_wall = l.leaves > 0 ? blown_at(&c, l.leaves * (1 + 1e-12)).raise : 0, at_flight;
        at_flight = blown_at(&c, l.flies).raise;
        ck_assert(l.leaves <= l.unseals && l.unseals <= l.flies);
        if (c.seal > at_wall && c.seal < at_flight)
            NEAR(blown_at(&c, l.unseals).raise, c.seal, 1e-9, "raise where the seal goes", number);
        else
            NEAR(l.unseals, c.seal <= at_wall ? l.leaves : l.flies, 1e-9 * l.flies, "seal", number);
    }
}
END_TEST

START_TEST(a_stronger_wind_raises_more_and_a_heavier_bar_less)
{
    for (int number = 0; number < CURTAINS; number++) {
        tside_loose c = any_loose(number), heavy = c;
        tside_loosening l = limits_of(&c), of_heavy;
        tside_blown before = {0};
        for (int k = 0; k <= 20; k++) {
            tside_blown b = blown_at(&c, l.flies * k / 20);
            ck_assert_msg(b.stand_out >= before.stand_out && b.raise >= before.raise && b.off >= before.off,
                          "curtain %d at %d/20", number, k);
            before = b;
        }
        heavy.weight *= 1.5;
        of_heavy = limits_of(&heavy);
        NEAR(of_heavy.flies, 1.5 * l.flies, 1e-9 * l.flies, "pressure in proportion to weight", number);
        NEAR(of_heavy.leaves, 1.5 * l.leaves, 1e-9 * l.flies, "pressure in proportion to weight", number);
        NEAR(of_heavy.unseals, 1.5 * l.unseals, 1e-9 * l.flies, "pressure in proportion to weight", number);
    }
}
END_TEST

/* derivation: a bare hem's b is 0, and t = p s/w. */
START_TEST(a_bare_hem_leaves_at_its_lean_and_flies_at_a_right_angle)
{
    tside_loose c;
    tside_loosening l;
    tside_usual(TSIDE_KIND_LOOSE, &c);
    c.hanging = 1.5;
    c.weight = 30;
    c.roll = 1e-12;
    for (c.lean = 0; c.lean < 0.78; c.lean += 0.1) {
        l = limits_of(&c);
        NEAR(l.leaves, 2 * c.lean * 30 / 1.5, 1e-9, "leaves", 0);
        NEAR(l.flies, PI / 2 * 30 / 1.5, 1e-9, "flies", 0);
    }
}
END_TEST

START_TEST(beyond_flight_there_is_no_answer)
{
    tside_loose c = any_loose(3);
    tside_loosening l = limits_of(&c);
    tside_blown b;
    tside_fault fault;
    REFUSES(tside_loose_blown(&c, l.flies * 1.001, &b, &fault), b, TSIDE_OUT_OF_REACH, "pressure", TSIDE_ABOVE);
    ck_assert_double_eq(fault.bound, l.flies);
    NEAR(blown_at(&c, fault.bound).rail_angle, PI / 2, 1e-12, "angle where it flies", 3);
}
END_TEST

Suite *loose_suite(void)
{
    Suite *suite = suite_create("loose");
    TCase *tcase = tcase_create("loose");
    tcase_add_test(tcase, film_without_weight_hangs_as_its_equation_says);
    tcase_add_test(tcase, half_the_films_weight_at_the_bar_stands_for_all_of_it_along_it);
    tcase_add_test(tcase, it_leaves_the_wall_where_the_walls_push_ends);
    tcase_add_test(tcase, its_seal_goes_between_wall_and_flight);
    tcase_add_test(tcase, a_stronger_wind_raises_more_and_a_heavier_bar_less);
    tcase_add_test(tcase, a_bare_hem_leaves_at_its_lean_and_flies_at_a_right_angle);
    tcase_add_test(tcase, beyond_flight_there_is_no_answer);
    suite_add_tcase(suite, tcase);
    return suite;
}
