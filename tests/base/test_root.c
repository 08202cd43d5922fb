/* SPDX-License-Identifier: MIT */
/* Roots: of a cubic, against the closed form; at an end where there is none between; and of what is no number. */
#include <check.h>
#include <math.h>

#include "base/root.h"

Suite *root_suite(void);

static int asked;

/* Its root is the cube root of what it is given. */
static double cube_over(double x, const void *context)
{
    asked++;
    return x * x * x - *(const double *)context;
}

START_TEST(a_cubic_has_its_cube_root)
{
    for (double third = 1e-3; third < 10; third *= 1.37) {
        const double cube = third * third * third;
        ck_assert_double_eq_tol(tside_i_rising_root(cube_over, &cube, 0, 10), third, 1e-14 * third);
    }
}
END_TEST

START_TEST(an_end_is_nearest_where_there_is_none)
{
    const double cube = 8;
    ck_assert(tside_i_rising_root(cube_over, &cube, 3, 5) == 3);
    ck_assert(tside_i_rising_root(cube_over, &cube, -1, 1) == 1);
}
END_TEST

/* No number but at the ends. */
static double nothing(double x, const void *context)
{
    const double end = *(const double *)context;
    asked++;
    return x == 0 ? -1 : x == end ? 1 : NAN;
}

/* From nought on, where halving alone would take a thousand steps. */
START_TEST(what_is_no_number_ends_between_its_ends)
{
    const double end = 1;
    double place;
    asked = 0;
    place = tside_i_rising_root(nothing, &end, 0, end);
    ck_assert(place > 0 && place < end);
    ck_assert_int_eq(asked, 202); /* its two ends, and 200 between */
}
END_TEST

Suite *root_suite(void)
{
    Suite *suite = suite_create("root");
    TCase *tcase = tcase_create("root");
    tcase_add_test(tcase, a_cubic_has_its_cube_root);
    tcase_add_test(tcase, an_end_is_nearest_where_there_is_none);
    tcase_add_test(tcase, what_is_no_number_ends_between_its_ends);
    suite_add_tcase(suite, tcase);
    return suite;
}
