/* SPDX-License-Identifier: MIT */
/* What a plan refuses is named by its full path from the side. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *paths_suite(void);

/* The eye of the drive's end at a rise: where it just clears the drive, the roll passes near the tube. */
static const tside_side *plain_at_rise(tside_side *side, double rise)
{
    *side = plain();
    side->drive_end.rise = rise;
    return side;
}

#define PLAN_REFUSES(status, path, relation) \
    do { \
        tside_plan plan; \
        REFUSES(tside_plan_side(&side, &plan, &fault), plan, status, path, relation); \
    } while (0)

START_TEST(every_part_of_a_plan_may_refuse_it)
{
    tside_side side = plain();
    tside_fault fault;
    side.length = 0;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_ABOVE);
    side = plain();
    side.bar_count = TSIDE_BARS + 1;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "bars", TSIDE_ABOVE);
    side = plain();
    side.hand = (tside_hand)2;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "hand", TSIDE_NOT_ONE_OF);
    side = plain();
    side.frame.peak_height = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "frame.peak_height", TSIDE_NOT_ABOVE);
    side = plain();
    side.curtain.sill = side.curtain.hip;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "curtain.sill", TSIDE_NOT_BELOW);
    side = plain();
    side.curtain.hip = 5;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "curtain.hip", TSIDE_ABOVE);
    side = plain();
    side.stops.seal = 0.31;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "stops.seal", TSIDE_ABOVE);
    side = plain();
    side.bar.tube.wall = side.bar.tube.diameter / 2;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.tube.wall", TSIDE_NOT_BELOW);
    side = plain();
    side.free_end.guide.material.grade = TSIDE_6063_T5;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.guide.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive_end.extender.spacing = 2;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.extender.spacing", TSIDE_ABOVE);
    ck_assert(fault.gap == 0);
    side = plain();
    side.drive_end.extender.stock = 0.5;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.extender.stock", TSIDE_BELOW);
    side.drive_end.extender.stock = fault.bound;
    NEAR(planned(&side).drive_end.layout.cut_length, fault.bound, 1e-12, "the least stock that serves", 0);
    side = plain();
    side.free_end.extender.eye_material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.extender.eye_material.grade", TSIDE_NO_RELATION);
    /* a hung eye, and one whose height is not its own to choose */
    side = plain();
    side.drive_end.hung = TSIDE_ON_HIP;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.hung", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.unit, "1");
    ck_assert_str_eq(fault.other, "drive_end.guide.eye_clearance");
    side.drive_end.hung = TSIDE_ON_EXTENDER;
    side.drive_end.placed = TSIDE_EYE_GIVEN;
    side.drive_end.eye_outboard = 0;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "drive_end.eye_outboard", TSIDE_NOT_ABOVE);
}
END_TEST

START_TEST(refusals_name_the_whole_path)
{
    tside_side side = plain();
    const tside_plan shut = planned(&side);
    tside_fault fault;
    double margin;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.open_height = 0.1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "stops.open_height", TSIDE_BELOW);
    side = plain();
    side.drive_end.rise = 0.01;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "drive_end.guide.eye_clearance");
    ck_assert(fault.gap < 0);
    ck_assert_msg(tside_plan_side(plain_at_rise(&side, fault.bound), &(tside_plan){0}, &fault) != TSIDE_OUT_OF_REACH ||
                      strcmp(fault.field, "drive_end.rise"),
                  "the least rise that the fault named is refused");
    side = plain();
    side.free_end.extender.member_height = 2.5;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.extender.member_height", TSIDE_NOT_BELOW);
    side = plain();
    side.drive_end.guide.margin = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.guide.margin", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "drive_end.guide.ground_clearance");
    margin = fault.bound;
    NEAR(fault.gap, side.drive_end.guide.ground_clearance - (1 - margin), 1e-4,
         "the foot, nearly plumb, comes so near to grade", 0);
    side.drive_end.guide.margin = margin;
    NEAR(planned(&side).drive_end.sweep.foot_lowest, side.drive_end.guide.ground_clearance, 1e-9,
         "the greatest margin that fits", 0);
    side = plain();
    side.free_end.guide.chain = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.guide.chain", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "stops");
    side = plain();
    side.drive_end.extender.tube.wall = NAN;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "drive_end.extender.tube.wall", TSIDE_NOT_FINITE);
    side = plain();
    side.curtain.areal_mass = -1;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "curtain.areal_mass", TSIDE_BELOW);
    side = plain();
    side.curtain.roll_lies = TSIDE_INBOARD;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "curtain.roll_lies", TSIDE_NO_RELATION);
    side = plain();
    side.free_end.guide.foot = TSIDE_FOOT_FIXED;
    side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
    side.bar.past_free = 0.3;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.past_free", TSIDE_ABOVE);
    NEAR(fault.bound, run_on(&side, &side.free_end, 0), 1e-12, "in line", 0);
    side.bar.past_free = fault.bound;
    planned(&side);
    side = plain();
    side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
    side.bar.past_free = 0.5 * (side.collar.half_length + side.collar.clearance);
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "bar.past_free", TSIDE_BELOW);
    NEAR(fault.bound, side.collar.half_length + side.collar.clearance, 1e-12, "room for the collar", 0);
    side = plain();
    side.free_end.guide.foot = TSIDE_FOOT_FIXED;
    side.free_end.hip_height_given = 1;
    side.free_end.hip_height = 1; /* of a bar whose axis hangs lower than that, shut */
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.hip_height", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, side.curtain.hip - shut.shut.y, 1e-12, "hip above the shut axis", 0);
    side.free_end.hip_height = fault.bound + 0.05;
    planned(&side);
    side = plain();
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    side.drive_end.guide.tube.wall = 0.02;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.guide.tube.wall", TSIDE_NOT_BELOW);
    side.drive_end.guide.tube.wall = 0.002;
    side.drive_end.guide.material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.guide.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive.place = TSIDE_BOTH_ENDS;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    side.drive.place = TSIDE_MID_BAR;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    side = plain();
    side.drive_end.keep_out_count = 2;
    side.drive_end.keep_outs[0] = (tside_keep_out){5, 6, 1, 2};
    side.drive_end.keep_outs[1] = (tside_keep_out){6, 5, 1, 2};
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].inner", TSIDE_NOT_BELOW);
    ck_assert_int_eq(fault.index, 1);
    side.drive_end.keep_outs[1].inner = side.drive_end.keep_outs[1].outer;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].inner", TSIDE_NOT_BELOW);
    side.drive_end.keep_outs[1] = (tside_keep_out){5, 6, 2, 2};
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].bottom", TSIDE_NOT_BELOW);
    side = plain();
    side.bar.material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive.rated_voltage_given = 1;
    side.drive.rated_voltage = 24;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive.rated_voltage", TSIDE_NO_RELATION);
}
END_TEST

/* An eye too low is refused with the least rise that serves: it plans, and a millimetre less does not. */
START_TEST(the_least_rise_that_is_named_plans)
{
    tside_side side = plain();
    tside_fault fault;
    side.drive.height += 0.05; /* its least eye then stands so high that the tube clears the roll */
    side.drive_end.extender.bar_clearance = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    side.drive_end.rise = 0.01;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    NEAR(fault.gap, 0.01 - fault.bound, 1e-12, "by how much it misses", 0);
    side.drive_end.rise = fault.bound;
    NEAR(planned(&side).drive_end.sweep.clear, 0, 1e-12, "it just clears", 0);
    side.drive_end.rise = fault.bound - 0.001;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
}
END_TEST

Suite *paths_suite(void)
{
    Suite *suite = suite_create("paths");
    TCase *tcase = tcase_create("paths");
    tcase_add_test(tcase, every_part_of_a_plan_may_refuse_it);
    tcase_add_test(tcase, refusals_name_the_whole_path);
    tcase_add_test(tcase, the_least_rise_that_is_named_plans);
    suite_add_tcase(suite, tcase);
    return suite;
}
