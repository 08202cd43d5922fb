/* SPDX-License-Identifier: MIT */
/* What is searched for: the least rise of an eye, the smallest bar, each against trying. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *search_suite(void);

/* What a guide on an eye at some rise, placed best, does: by the functions that know no plan. */
typedef struct risen {
    int hangs;
    double kick, force;
} risen;

static risen at_rise(const tside_side *side, tside_which_end which, double rise)
{
    const tside_end *end = which == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
    const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side->drive) : side->collar;
    tside_travel travel;
    tside_position open;
    tside_hang hang;
    tside_sweep sweep;
    tside_load load;
    tside_fault fault;
    tside_status status;
    risen made = {0, 0, 0};
    double eye_x, turns = planned(side).bar_turns;
    travel = travel_of(side);
    ANSWERS(tside_travel_at(&travel, turns, &open, &fault));
    if (tside_eye_best(&travel, side->curtain.hip + rise, collar.offset, &eye_x, &fault) != TSIDE_OK)
        return made;
    status = tside_hang_make(&travel, &end->guide, &collar, eye_x, side->curtain.hip + rise, 0, &hang, &sweep, &fault);
    if (status != TSIDE_OK)
        return made;
    made.hangs = 1;
    made.kick = sweep.kick_out_error;
    load = load_of(side);
    for (int i = 0; i <= 64; i++) {
        double force, uplift;
        ANSWERS(tside_side_force(&travel, which == TSIDE_DRIVE_END ? &load : NULL, &hang, turns * i / 64, &force,
                                 &uplift, &fault));
        made.force = fmax(made.force, force);
    }
    return made;
}

enum { HAIR = 1 }; /* micrometre: the search is good to a tenth of it */

START_TEST(least_rise_clears_the_drive)
{
    tside_side side = plain();
    tside_fault fault;
    double rise, lower;
    side.collar.height = 0.15; /* so that the free end's eye must stand above the fixing too */
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        ANSWERS(tside_eye_least(&side, (tside_which_end)which, &rise, &fault));
        ck_assert(at_rise(&side, (tside_which_end)which, rise).hangs);
        ck_assert(!at_rise(&side, (tside_which_end)which, rise - 1e-6 * HAIR).hangs);
    }
    /* with the drive's own height it rises and falls */
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    side.drive.height -= 0.01;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &lower, &fault));
    NEAR(rise - lower, 0.01, 1e-9, "a lower drive", 0);
}
END_TEST

START_TEST(least_rise_keeps_to_limits)
{
    tside_side side = plain();
    tside_fault fault;
    double clears[2], rise, limit;
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++)
        ANSWERS(tside_eye_least(&side, (tside_which_end)which, clears + which, &fault));
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        tside_which_end end = (tside_which_end)which;
        side = plain();
        side.limits.kick_out = limit = at_rise(&side, end, clears[which] + 0.2).kick;
        side.limits.kick_out_given = 1;
        ANSWERS(tside_eye_least(&side, end, &rise, &fault));
        NEAR(rise, clears[which] + 0.2, 1e-6 * HAIR, "kick rules", which);
        ck_assert(at_rise(&side, end, rise).kick <= limit);
        ck_assert(at_rise(&side, end, rise - 1e-6 * HAIR).kick > limit);
        side.limits.side_force = limit = at_rise(&side, end, clears[which] + 0.3).force;
        side.limits.side_force_given = 1;
        ANSWERS(tside_eye_least(&side, end, &rise, &fault));
        NEAR(rise, clears[which] + 0.3, 1e-5, "force rules", which);
        ck_assert(at_rise(&side, end, rise).force <= limit * (1 + 1e-12));
        ck_assert(at_rise(&side, end, rise - 1e-5).force > limit);
    }
    side.limits.side_force = 1e-3;
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_OUT_OF_REACH, "free_end.rise",
            TSIDE_NONE_FITS);
    ck_assert(fault.value == 5 && !strcmp(fault.unit, "m") && !strcmp(fault.other, "limits"));
}
END_TEST

START_TEST(least_rise_just_serves)
{
    tside_side side = plain();
    tside_fault fault;
    tside_plan plan;
    double rise, free;
    side.limits.kick_out_given = 1;
    side.limits.kick_out = 0.1;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    ANSWERS(tside_eye_least(&side, TSIDE_FREE_END, &free, &fault));
    side.drive_end.rise = rise;
    side.drive_end.extender.bar_clearance = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    plan = planned(&side);
    ck_assert(plan.drive_end.sweep.kick_out_error <= 0.1 + 1e-9);
    side.drive_end.rise = rise - 0.001;
    plan = planned(&side);
    ck_assert(plan.drive_end.sweep.kick_out_error > 0.1);
    side.limits.kick_out = 0;
    ck_assert(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault) == TSIDE_OUT_OF_REACH);
    ck_assert_str_eq(fault.field, "drive_end.rise");
    ck_assert(tside_eye_least(&side, (tside_which_end)2, &rise, &fault) == TSIDE_OUT_OF_BOUNDS);
}
END_TEST

/* Of a guide that stands, whose top takes what its drive turns: the longer it is, the less. */
START_TEST(least_rise_of_a_standing_guide_keeps_its_top_to_the_limit)
{
    tside_side side = plain();
    tside_fault fault;
    tside_plan plan;
    double clears, rise;
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    side.drive_end.extender.bar_clearance = 0;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &clears, &fault));
    side.drive_end.rise = clears + 0.3;
    plan = planned(&side);
    side.limits.side_force_given = 1;
    side.limits.side_force = plan.drive_end.side_force;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    NEAR(rise, clears + 0.3, 1e-6 * HAIR, "rise", 0);
    side.drive_end.rise = rise - 1e-4;
    plan = planned(&side);
    ck_assert(plan.drive_end.side_force > side.limits.side_force && finds(&plan, TSIDE_FINDING_SIDE_FORCE));
}
END_TEST

START_TEST(smallest_bar_is_the_lightest_that_serves)
{
    static const double walls[] = {0.003, 0.0012, 0.002, 0.004};
    tside_side side = plain();
    tside_fault fault;
    double least = 0;
    int index, nearest = -1;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bars", TSIDE_NOT_ABOVE);
    NEAR(fault.value, 0, 0, "no bars", 0);
    side.bar_count = 4;
    for (int i = 0; i < 4; i++) {
        side.bars[i] = side.bar;
        side.bars[i].tube.wall = walls[i];
    }
    side.limits.twist_given = 1;
    side.limits.twist = 100;
    side.drive.stall_torque = 60;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.bars[3] = side.bars[1]; /* of two that are as light, the first */
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.bars[3].tube.wall = walls[3];
    /* a twist that the third bar just keeps to: the second, thinner, does not */
    side.bar = side.bars[2];
    side.limits.twist = planned(&side).twist * (1 + 1e-9);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 2);
    side.limits.twist = 1e-4;
    ck_assert(tside_bar_smallest(&side, &index, &fault) == TSIDE_OUT_OF_REACH);
    for (int i = 0; i < 4; i++) {
        double twist;
        side.bar = side.bars[i];
        twist = planned(&side).twist;
        if (!i || twist < least) {
            least = twist;
            nearest = i;
        }
    }
    ck_assert_int_eq(fault.index, nearest);
    side.bars[0] = side.bars[nearest]; /* of two that come as near, the first is named */
    ck_assert(tside_bar_smallest(&side, &index, &fault) == TSIDE_OUT_OF_REACH);
    ck_assert_int_eq(fault.index, 0);
}
END_TEST

START_TEST(smallest_bar_keeps_to_lag_and_shear)
{
    tside_side side = plain(), with_thick = plain();
    tside_fault fault;
    tside_plan thin, thick;
    int index = -1;
    side.drive_end.guide.tube.wall = side.free_end.guide.tube.wall = 0.0005; /* overstressed: no bar's concern */
    side.bar_count = 2;
    side.bars[0] = side.bars[1] = side.bar;
    side.bars[1].tube.wall = 0.0012;
    with_thick.bar = side.bars[0];
    thick = planned(&with_thick);
    with_thick.bar = side.bars[1];
    thin = planned(&with_thick);
    ck_assert(thin.lag_elastic > thick.lag_elastic);
    /* without limits only shear counts, and the stall torque passes the thin bar's */
    side.drive.stall_torque = 60;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.limits.lag_given = 1;
    side.limits.lag = thin.lag_elastic;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.limits.lag = nextafter(thin.lag_elastic, 0);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 0);
    side.limits.lag_given = 0;
    side.drive.stall_torque = 60 / strength_of(&thin, TSIDE_BAR_SHEAR_STALL, TSIDE_DRIVE_END)->utilisation *
                              thin.stall_torque / 60 * (1 - 1e-9);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.drive.stall_torque *= 1 + 2e-9;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 0);
}
END_TEST

/* Where no bar's yield is known shear refuses none, though the drive would wring it; lag does. */
START_TEST(a_bar_of_unknown_grade_is_judged_by_lag_alone)
{
    tside_side side = plain();
    tside_fault fault;
    int index = -1;
    side.bar_count = 2;
    side.bars[0] = side.bars[1] = side.bar;
    side.bars[1].tube.wall = 0.0012;
    side.drive.stall_torque = 5000;
    ck_assert_int_eq(tside_bar_smallest(&side, &index, NULL), TSIDE_OUT_OF_REACH);
    ck_assert_int_eq(index, -1);
    side.bars[0].material.grade = side.bars[1].material.grade = TSIDE_GRADE_UNKNOWN;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.limits.lag_given = 1;
    side.limits.lag = 1e-6;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_REACH, "bars", TSIDE_NO_RELATION);
}
END_TEST

START_TEST(smallest_bar_names_the_bar_at_fault)
{
    tside_side side = plain();
    tside_fault fault;
    int index;
    side.bar_count = 3;
    side.bars[0] = side.bars[1] = side.bars[2] = side.bar;
    side.bars[2].play = -1;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bars[2].play", TSIDE_BELOW);
    side.bars[2] = side.bar;
    side.bars[1].material.grade = TSIDE_6061_T6;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_CONTRADICTS, "bars[1].material.grade",
            TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "bars[1].material.metal");
    ck_assert_int_eq(fault.index, 1);
    side.bars[1] = side.bar;
    side.bars[2].tube.diameter = 0.9; /* so thick that the roll meets the extender */
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_REACH, "drive_end.extender.bar_clearance",
            TSIDE_NONE_FITS);
    ck_assert_int_eq(fault.index, 2);
    ck_assert(tside_bar_smallest(&side, &index, NULL) == TSIDE_OUT_OF_REACH);
}
END_TEST

Suite *search_suite(void)
{
    Suite *suite = suite_create("search");
    TCase *tcase = tcase_create("search");
    tcase_add_test(tcase, least_rise_clears_the_drive);
    tcase_add_test(tcase, least_rise_keeps_to_limits);
    tcase_add_test(tcase, least_rise_just_serves);
    tcase_add_test(tcase, least_rise_of_a_standing_guide_keeps_its_top_to_the_limit);
    tcase_add_test(tcase, smallest_bar_is_the_lightest_that_serves);
    tcase_add_test(tcase, smallest_bar_keeps_to_lag_and_shear);
    tcase_add_test(tcase, a_bar_of_unknown_grade_is_judged_by_lag_alone);
    tcase_add_test(tcase, smallest_bar_names_the_bar_at_fault);
    suite_add_tcase(suite, tcase);
    return suite;
}
