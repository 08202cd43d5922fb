/* SPDX-License-Identifier: MIT */
/* What a side can be planned without: a drive without ratings, an extender without stock. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *unknown_suite(void);

START_TEST(without_a_rating_the_torque_to_look_for_is_the_design_torque)
{
    tside_side side = plain();
    tside_plan rated = planned(&side), plan;
    side.drive.rated_torque_given = 0;
    side.drive.rated_torque = NAN; /* not looked at */
    plan = planned(&side);
    ck_assert(rated.drive_utilisation_given && !plan.drive_utilisation_given);
    ck_assert(plan.drive_utilisation == 0 && plan.longest_side == 0);
    NEAR(plan.design_torque, rated.design_torque, 0, "design torque", 0);
    NEAR(plan.design_torque, plan.worst.drive * side.drive.safety_factor, 1e-12, "worst times factor", 0);
    NEAR(plan.stall_torque, rated.stall_torque, 0, "a stall torque that is given", 0);
    NEAR(plan.drive_end.layout.cut_length, rated.drive_end.layout.cut_length, 0, "extender", 0);
    ck_assert(!finds(&plan, TSIDE_FINDING_DRIVE_WEAK));
    /* a drive rated for just that does, and one rated for less does not */
    side.drive.rated_torque_given = 1;
    side.drive.rated_torque = plan.design_torque;
    plan = planned(&side);
    ck_assert(!finds(&plan, TSIDE_FINDING_DRIVE_WEAK));
    side.drive.rated_torque *= 1 - 1e-9;
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_DRIVE_WEAK));
}
END_TEST

/* As a drive that is rated for just what it needs: so is any that will be bought at the least. */
START_TEST(without_any_rating_it_stalls_as_one_that_is_just_enough)
{
    tside_side side = plain();
    tside_plan plan, just;
    side.drive.kind = TSIDE_MOTOR;
    side.drive.rated_torque_given = side.drive.stall_torque_given = 0;
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_STALL_GUESSED));
    NEAR(plan.stall_torque, 2.5 * plan.worst.drive * side.drive.safety_factor, 1e-12 * plan.stall_torque, "stall", 0);
    side.drive.rated_torque_given = 1;
    side.drive.rated_torque = plan.design_torque;
    just = planned(&side);
    NEAR(just.stall_torque, plan.stall_torque, 1e-12 * plan.stall_torque, "stall", 1);
    NEAR(just.drive_end.side_force_stall, plan.drive_end.side_force_stall, 1e-9, "side force", 0);
    ck_assert(just.line_count == plan.line_count);
    side.drive.kind = TSIDE_HAND; /* by hand the rating never counted */
    just = planned(&side);
    side.drive.rated_torque_given = 0;
    plan = planned(&side);
    NEAR(just.stall_torque, plan.stall_torque, 0, "by hand", 0);
}
END_TEST

START_TEST(without_stock_the_extender_takes_what_it_needs)
{
    tside_side side = plain();
    tside_plan held = planned(&side), plan;
    tside_fault fault;
    double least;
    side.drive_end.extender.stock = held.drive_end.layout.cut_length * 0.95;
    ck_assert(tside_plan_side(&side, &held, &fault) != TSIDE_OK || held.drive_end.layout.binding == TSIDE_BINDS_STOCK);
    side.drive_end.extender.stock_given = 0;
    side.drive_end.extender.stock = NAN;
    plan = planned(&side);
    ck_assert(plan.drive_end.layout.binding != TSIDE_BINDS_STOCK);
    least = plan.drive_end.layout.cut_length;
    side.drive_end.extender.stock_given = 1;
    side.drive_end.extender.stock = least;
    held = planned(&side);
    NEAR(held.drive_end.layout.cut_length, least, 1e-9, "stock of just that", 0);
}
END_TEST

START_TEST(columns_leave_out_what_is_not_known)
{
    tside_side side = plain();
    tside_input in = {{NULL, 0}, NULL, 0};
    const double torque = 60;
    double got[2] = {-1, -1};
    tside_output out[2] = {{{NULL, 0}, got, 0}, {{NULL, 0}, got + 1, 0}};
    tside_fault fault;
    int status;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_utilisation", &out[0].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "longest_side", &out[1].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "drive.rated_torque", &in.place, &fault));
    side.drive.rated_torque_given = 0;
    ANSWERS(tside_plan_sides(&side, 1, NULL, 0, out, 2, &status, NULL, &fault));
    ck_assert(got[0] == -1 && got[1] == -1);
    in.data = &torque; /* a column gives it */
    ANSWERS(tside_plan_sides(&side, 1, &in, 1, out, 2, &status, NULL, &fault));
    ck_assert(got[0] > 0 && got[1] > 0);
}
END_TEST

Suite *unknown_suite(void)
{
    Suite *suite = suite_create("unknown");
    TCase *tcase = tcase_create("unknown");
    tcase_add_test(tcase, without_a_rating_the_torque_to_look_for_is_the_design_torque);
    tcase_add_test(tcase, without_any_rating_it_stalls_as_one_that_is_just_enough);
    tcase_add_test(tcase, without_stock_the_extender_takes_what_it_needs);
    tcase_add_test(tcase, columns_leave_out_what_is_not_known);
    suite_add_tcase(suite, tcase);
    return suite;
}
