/* SPDX-License-Identifier: MIT */
/*
 * The roll's take-up against the arc length of a true spiral, integrated by the GNU Scientific Library, and the laws
 * that hold between its functions.
 */
#include <check.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <math.h>
#include <string.h>

#include "sides.h"

Suite *spiral_suite(void);

/* --- the spiral --- */

/*
 * The middle of a curtain wound on a core D0 rises by its thickness te a turn. Wrap k, a ring between radii D0/2 + te
 * (k - 1) and D0/2 + te k, has its middle at D0/2 + te (k - 1/2) on average, which the Archimedean spiral rho = D0/2 +
 * te theta/(2 pi) has too: it starts on the core, half a thickness inside the first wrap's middle, for the curtain's
 * edge is wound over within its first turn.
 */
typedef struct spiral {
    double start, pitch; /* m, and m per radian */
} spiral;

static double arc_element(double theta, void *context)
{
    const spiral *s = context;
    return hypot(s->start + s->pitch * theta, s->pitch);
}

static double arc_length(double start, double thickness, double wraps)
{
    spiral s = {start, thickness / (2 * PI)};
    gsl_function f = {arc_element, &s};
    gsl_integration_workspace *room = gsl_integration_workspace_alloc(1000);
    double length = NAN, error;
    gsl_set_error_handler_off();
    ck_assert_int_eq(
        gsl_integration_qag(&f, 0, 2 * PI * wraps, 0, 1e-13, 1000, GSL_INTEG_GAUSS61, room, &length, &error),
        GSL_SUCCESS);
    gsl_integration_workspace_free(room);
    return length;
}

static const double thin[] = {1e-4, 2e-4, 5e-4, 1e-3, 2e-3, 5e-3, 1e-2, 2e-2, 5e-2, 0.1, 0.2, 0.3}; /* te/D0 */
static const double wraps[] = {0.5, 0.75, 1, 1.5, 2, 3, 4.25, 5, 7, 10, 12.5, 15, 20};
enum { THIN = sizeof thin / sizeof *thin, WRAPS = sizeof wraps / sizeof *wraps };

static tside_roll roll_of(double core, double thickness, double packing)
{
    tside_roll roll = {core, thickness, packing};
    return roll;
}

static double taken_up(const tside_roll *roll, double n)
{
    double length;
    tside_fault fault;
    ANSWERS(tside_roll_taken_up(roll, n, &length, &fault));
    return length;
}

/*
 * derivation: sqrt(rho^2 + b^2) - rho, with b = te/(2 pi), lies below b^2/(2 rho) <= rho (te/(pi D0))^2/2, so that the
 * spiral is the longer one, by less than half of (te/(pi D0))^2. Of the core inwards or outwards by half a thickness
 * nothing of the kind is true.
 */
START_TEST(take_up_is_a_true_spirals)
{
    for (int i = 0; i < THIN; i++)
        for (int k = 0; k < WRAPS; k++) {
            double core = 0.02 + 0.01 * ((i + k) % 5), te = thin[i] * core, bound = pow(te / (PI * core), 2);
            tside_roll roll = roll_of(core, te / 1.25, 1.25);
            double l = taken_up(&roll, wraps[k]), excess = arc_length(core / 2, te, wraps[k]) / l - 1;
            ck_assert_msg(excess > -2e-13 && excess < bound, "te/D0 %g, %g wraps: %g, not from 0 to %g", thin[i],
                          wraps[k], excess, bound);
            /* to the next order, b^2/(2 rho) integrated is (b/2) log(rho1/rho0): the rest is below b^4/(8 rho^3) */
            NEAR(excess * l, te / (4 * PI) * log1p(2 * thin[i] * wraps[k]), l * (2e-13 + bound * bound),
                 "spiral less rings", i);
            ck_assert(fabs(arc_length((core + te) / 2, te, wraps[k]) / l - 1) > bound);
            ck_assert(fabs(arc_length((core - te) / 2, te, wraps[k]) / l - 1) > bound);
        }
}
END_TEST

/* --- laws --- */

START_TEST(wraps_invert_take_up)
{
    static const double counts[] = {0, 1e-9, 1e-3, 0.1, 0.5, 1, 2.75, 10, 40, 1000};
    tside_fault fault;
    for (int i = -1; i < THIN; i++)
        for (int k = 0; k < 10; k++) {
            tside_roll roll = roll_of(0.048, i < 0 ? 0 : thin[i] * 0.048, 1);
            double back, l = taken_up(&roll, counts[k]);
            if (l > 10000)
                continue;
            ANSWERS(tside_roll_wraps(&roll, l, &back, &fault));
            NEAR(back, counts[k], 1e-14 * counts[k], "wraps of the take-up", i);
        }
}
END_TEST

START_TEST(area_is_conserved)
{
    tside_fault fault;
    for (int i = 0; i < THIN; i++)
        for (int k = 0; k < WRAPS; k++) {
            double core = 0.05, te = thin[i] * core, D;
            tside_roll roll = roll_of(core, te, 1);
            ANSWERS(tside_roll_diameter(&roll, wraps[k], &D, &fault));
            NEAR(PI * (D * D - core * core) / 4, te * taken_up(&roll, wraps[k]), 1e-14 * PI * D * D,
                 "area of the rings", i);
        }
}
END_TEST

START_TEST(without_thickness_it_is_the_cores_girth)
{
    tside_roll roll = roll_of(0.0603, 0, 1.15);
    double n, D;
    tside_fault fault;
    ANSWERS(tside_roll_wraps(&roll, 1, &n, &fault));
    ANSWERS(tside_roll_diameter(&roll, 7, &D, &fault));
    NEAR(taken_up(&roll, 7), 7 * PI * 0.0603, 1e-15, "take-up", 0);
    NEAR(n, 1 / (PI * 0.0603), 1e-14, "wraps", 0);
    NEAR(D, 0.0603, 0, "diameter", 0);
}
END_TEST

/*
 * Turns counted over a measured take-up give the thickness back, wherever counting begins. The rounding of the take-up
 * is magnified by D0/(te (2 n0 + turns)).
 */
START_TEST(counted_turns_give_thickness)
{
    static const double before[] = {0, 0.75, 1, 3.5};
    tside_fault fault;
    for (int i = 0; i < THIN; i++)
        for (int b = 0; b < 4; b++)
            for (int k = 0; k < WRAPS; k++) {
                double core = 0.05, te = thin[i] * core, found;
                tside_roll roll = roll_of(core, te / 0.8, 0.8);
                double l = taken_up(&roll, before[b] + wraps[k]) - taken_up(&roll, before[b]);
                ANSWERS(tside_roll_thickness(core, before[b], wraps[k], l, &found, &fault));
                NEAR(found, te, 1e-15 * (core + te) * (1 + (before[b] + wraps[k]) / wraps[k]) * 4, "thickness", i);
            }
}
END_TEST

START_TEST(no_thickness_fits_less_than_the_core_takes)
{
    double thickness;
    tside_fault fault;
    REFUSES(tside_roll_thickness(0.05, 1, 10, 1.5, &thickness, &fault), thickness, TSIDE_CONTRADICTS, "taken_up",
            TSIDE_BELOW);
    NEAR(fault.bound, 10 * PI * 0.05, 1e-15, "bound", 0);
    ANSWERS(tside_roll_thickness(0.05, 1, 10, fault.bound, &thickness, &fault));
    NEAR(thickness, 0, 1e-17, "thickness at the bound", 0);
}
END_TEST

/* So few turns that their square is 0 would give a thickness without end. */
START_TEST(hardly_a_turn_tells_no_thickness)
{
    double thickness;
    tside_fault fault;
    REFUSES(tside_roll_thickness(0.03, 0, 1e-200, 1, &thickness, &fault), thickness, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_BELOW);
    ANSWERS(tside_roll_thickness(1e-300, 0, 0.001, 10000, &thickness, &fault));
    ck_assert(isfinite(thickness));
}
END_TEST

Suite *spiral_suite(void)
{
    Suite *suite = suite_create("spiral");
    TCase *tcase = tcase_create("spiral");
    tcase_add_test(tcase, take_up_is_a_true_spirals);
    tcase_add_test(tcase, wraps_invert_take_up);
    tcase_add_test(tcase, area_is_conserved);
    tcase_add_test(tcase, without_thickness_it_is_the_cores_girth);
    tcase_add_test(tcase, counted_turns_give_thickness);
    tcase_add_test(tcase, no_thickness_fits_less_than_the_core_takes);
    tcase_add_test(tcase, hardly_a_turn_tells_no_thickness);
    suite_add_tcase(suite, tcase);
    return suite;
}
