/* SPDX-License-Identifier: MIT */
/* Single refusals, and what they name. */
#include <check.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "refused.h"
#include "sides.h"

Suite *named_suite(void);

/* What a side says of the eye's height and place is what tells them. */
START_TEST(the_eye_is_refused_as_it_was_told)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.drive_end.rise = 0.02;
    side.stops.gap = 0;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    NEAR(fault.value, 0.02, 1e-12, "rise", 0);
    side.drive_end.rise = 0.5;
    side.drive_end.guide.eye_clearance = 0;
    side.drive.height = 0;
    side.drive.collar_offset = 1;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "drive.collar_offset");
    side.drive_end.hung = TSIDE_ON_HIP;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.hung", TSIDE_NO_RELATION);
    bench_side(&side);
    side.free_end.rise = 5;
    side.free_end.extender.member_height = 8;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "free_end.extender.member_height",
            TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "free_end.rise");
    bench_side(&side);
    side.free_end.placed = TSIDE_EYE_GIVEN;
    side.free_end.eye_outboard = 1e-3;
    side.free_end.extender.slant = TSIDE_SLANT_CROSSING;
    side.free_end.extender.crossing = 1.2;
    side.frame.leg_height = 1;
    side.frame.peak_height = 2.5;
    side.curtain.hip = 1.6;
    side.drive_end.hung = TSIDE_ON_HIP;
    side.stops.gap = 0.15;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "free_end.eye_outboard", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "free_end.extender.crossing");
    NEAR(fault.value, 1e-3, 1e-9, "eye outboard", 0);
}
END_TEST

START_TEST(tubes_are_named_whole)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.frame.tube.wall = 0.03;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "frame.tube.wall", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "frame.tube.diameter");
    bench_side(&side);
    side.bar.tube = (tside_round){1, 0.05}; /* more than a load's bar may weigh, which is the load's own affair */
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_HIP;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
}
END_TEST

START_TEST(open_below_shut_names_what_sets_shut)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.stops.gap = 5;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "stops.gap", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "stops.seal");
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.shut_height = 0.2;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "stops.gap", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "stops.shut_height");
}
END_TEST

START_TEST(a_thickness_takes_its_own_bound)
{
    tside_fault fault;
    double thickness, up, down;
    REFUSES(tside_roll_thickness(0.0334, 1, 7.3, 0.5, &thickness, &fault), thickness, TSIDE_CONTRADICTS, "taken_up",
            TSIDE_BELOW);
    up = fault.bound * (1 + 1e-12);
    down = fault.bound * (1 - 1e-12); /* as it comes back from other units */
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, fault.bound, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, down, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, up, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
}
END_TEST

/* The greatest margin with which a guide's foot clears the ground, from its refusal. */
static double greatest_margin(tside_side side, double rise)
{
    tside_fault fault;
    side.drive_end.rise = rise;
    side.drive_end.guide.margin = 5;
    ck_assert_int_eq(turns_of(&side, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "drive_end.guide.margin");
    return fault.bound;
}

/*
 * The least rise keeps the foot off the ground too: a guide that leans reaches lower, and a higher eye lets it lean
 * less.
 */
START_TEST(the_least_rise_keeps_the_foot_off_the_ground)
{
    tside_side side;
    tside_fault fault;
    double rise, least, low, high;
    bench_leaning_side(&side);
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &least, &fault));
    low = greatest_margin(side, least);
    high = greatest_margin(side, 5);
    ck_assert(low < high);
    side.drive_end.guide.margin = (low + high) / 2;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    ck_assert(rise > least);
    side.drive_end.rise = rise;
    ANSWERS(turns_of(&side, &fault));
    side.drive_end.rise = rise - 1e-5;
    ck_assert_int_eq(turns_of(&side, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "drive_end.guide.margin");
    side.drive_end.guide.margin = high + 1e-3;
    REFUSES(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault), rise, TSIDE_CONTRADICTS, "drive_end.guide.margin",
            TSIDE_ABOVE);
}
END_TEST

Suite *named_suite(void)
{
    Suite *suite = suite_create("named");
    TCase *tcase = tcase_create("named");
    tcase_add_test(tcase, the_eye_is_refused_as_it_was_told);
    tcase_add_test(tcase, tubes_are_named_whole);
    tcase_add_test(tcase, open_below_shut_names_what_sets_shut);
    tcase_add_test(tcase, a_thickness_takes_its_own_bound);
    tcase_add_test(tcase, the_least_rise_keeps_the_foot_off_the_ground);
    suite_add_tcase(suite, tcase);
    return suite;
}
