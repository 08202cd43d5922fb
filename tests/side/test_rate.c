/* SPDX-License-Identifier: MIT */
/* A guide that turns as fast as its bar, whose drive then drives nothing: its lean by differences of the bar's places.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *rate_suite(void);

/* The plain side, with nothing in the way of a collar that comes close below its eye. */
static tside_side close_side(void)
{
    tside_side side = plain();
    side.curtain.rail_depth = 0;
    side.drive.height = side.drive.collar_offset = 0;
    side.drive_end.guide.eye_clearance = side.drive_end.guide.placing_error = side.drive_end.guide.chain = 0;
    side.drive_end.extender.bar_clearance = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    return side;
}

/* phi = atan2(xa - xe, ye - ya) + asin(o/R) */
static double lean_of(const tside_side *side, const tside_travel *travel, double eye_x, double eye_y, double turns)
{
    tside_position bar;
    tside_fault fault;
    double dx, dy;
    ANSWERS(tside_travel_at(travel, turns, &bar, &fault));
    dx = bar.x - eye_x;
    dy = eye_y - bar.y;
    return atan2(dx, dy) + asin(side->drive.collar_offset / hypot(dx, dy));
}

/* An eye right above the open bar, by little more than the guide's line keeps off the bar. */
START_TEST(no_torque_drives_a_guide_that_turns_as_fast)
{
    int refused = 0, planned_so = 0;
    for (int i = 0; i <= 40; i++) {
        const double step = 1e-7;
        tside_side side = close_side();
        const tside_travel travel = travel_of(&side);
        tside_plan plan = planned(&side);
        tside_fault fault;
        double eye_x = plan.open.x, rate;
        side.drive_end.placed = TSIDE_EYE_GIVEN;
        side.drive_end.rise = 0.1;
        side.drive_end.eye_outboard = eye_x - (travel.line.x - side.curtain.standoff);
        side.drive.collar_offset = (side.curtain.hip + 0.1 - plan.open.y) * (1 - pow(10, -1 - 0.1 * i));
        rate = (lean_of(&side, &travel, eye_x, side.curtain.hip + 0.1, plan.bar_turns) -
                lean_of(&side, &travel, eye_x, side.curtain.hip + 0.1, plan.bar_turns - step)) /
               (2 * PI * step);
        if (fabs(rate - 1) < 0.01)
            continue;
        if (rate < 1) {
            plan = planned(&side);
            ck_assert(isfinite(plan.worst.drive));
            planned_so++;
            continue;
        }
        REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_NO_RELATION);
        ck_assert_str_eq(fault.other, "drive.collar_offset");
        refused++;
    }
    ck_assert_msg(refused > 5 && planned_so > 5, "%d refused, %d planned", refused, planned_so);
}
END_TEST

/*
 * derivation: on a plumb curtain the axis stands r outboard of the fixing and rises r a radian; as the guide's line
 * comes to keep off it by just the height that the fixing is above it, phi' comes to 1. To the last digits there is a
 * torque beyond all measure, or none.
 */
START_TEST(hung_on_the_hip_a_drive_may_turn_nothing)
{
    int none = 0, some = 0;
    for (int i = 0; i < 20; i++) {
        tside_side side = close_side();
        tside_plan plan;
        side.stops.gap = 0.06 + 1e-4 * i;
        side.drive_end.rise = 0.4;
        plan = planned(&side);
        side.drive.collar_offset = side.curtain.hip - plan.open.y;
        for (int digit = 0; digit < 8; digit++) {
            side.drive.collar_offset = nextafter(side.drive.collar_offset, 0);
            plan = planned(&side);
            ck_assert(plan.drive_end.hip_kick_out_given);
            ck_assert(!plan.drive_end.hip_torque_given || plan.drive_end.hip_torque > 1e6 * plan.worst.drive);
            some += plan.drive_end.hip_torque_given;
            none += !plan.drive_end.hip_torque_given;
        }
        side.drive.collar_offset *= 1 - 1e-3;
        plan = planned(&side);
        ck_assert(plan.drive_end.hip_torque_given);
    }
    ck_assert_msg(none > 5 && some > 5, "%d without a torque, %d with one", none, some);
}
END_TEST

Suite *rate_suite(void)
{
    Suite *suite = suite_create("rate");
    TCase *tcase = tcase_create("rate");
    tcase_add_test(tcase, no_torque_drives_a_guide_that_turns_as_fast);
    tcase_add_test(tcase, hung_on_the_hip_a_drive_may_turn_nothing);
    suite_add_tcase(suite, tcase);
    return suite;
}
