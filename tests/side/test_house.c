/* SPDX-License-Identifier: MIT */
/* An end of a plan as the house has it: out of line along it, on ground of its own, on a foot that is held. */
#include <check.h>
#include <float.h>
#include <math.h>
#include <stddef.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *house_suite(void);

/*
 * A guide that leans along the house, in space: from its eye, through the collar's line, so far out as the drive stands
 * beyond the eye. Its foot is sought at many places of the travel, from positions alone.
 */
START_TEST(a_misfit_is_in_space)
{
    enum { LOOKS = 4000 };
    tside_side side;
    tside_plan plan, in_line;
    const tside_end_plan *end = &plan.drive_end;
    tside_travel travel;
    tside_fault fault;
    double out = -HUGE_VAL, in = HUGE_VAL, low = HUGE_VAL, near = HUGE_VAL, far = -HUGE_VAL, lean = 0, shut_x = 0,
           before = 0, step = 0, m = 0.1;
    bench_leaning_side(&side);
    in_line = planned(&side);
    side.drive_end.alignment = TSIDE_RUN_ON_GIVEN;
    side.bar.past_drive = in_line.drive_end.stand.run_on + m;
    plan = planned(&side);
    NEAR(end->stand.misfit, m, 1e-12, "misfit", 0);
    travel = travel_of(&side);
    for (int i = 0; i <= LOOKS; i++) {
        tside_position at;
        double px, py, R, d, phi, D, foot_x, along;
        ANSWERS(tside_travel_at(&travel, plan.bar_turns * i / LOOKS, &at, &fault));
        px = at.x - end->eye_x, py = end->eye_y - at.y, R = hypot(px, py);
        d = sqrt(R * R - side.drive.collar_offset * side.drive.collar_offset);
        phi = atan2(px, py) + asin(side.drive.collar_offset / R);
        D = sqrt(d * d + m * m);
        if (i == 0)
            NEAR(end->sweep.length, D + side.drive_end.guide.margin, 1e-9, "length", 0);
        foot_x = end->eye_x + end->sweep.length * d / D * sin(phi);
        along = end->sweep.length * m / D;
        if (i == 0)
            shut_x = before = foot_x;
        step = fmax(step, fabs(foot_x - before)); /* no more than this is missed between two places */
        before = foot_x;
        out = fmax(out, foot_x), in = fmin(in, foot_x),
        low = fmin(low, end->eye_y - end->sweep.length * d / D * cos(phi));
        near = fmin(near, along), far = fmax(far, along), lean = fmax(lean, atan2(m, d));
    }
    NEAR(end->sweep.foot_x, shut_x, 1e-9, "foot", 0);
    ck_assert(step < 1e-3 && end->sweep.walkway >= out - 1e-12);
    NEAR(end->sweep.walkway, out, step, "walkway", 0);
    NEAR(end->sweep.kick_out, out - shut_x, step, "kicks out", 0);
    NEAR(end->sweep.kick_in, shut_x - in, step, "kicks in", 0);
    NEAR(end->sweep.foot_lowest, low, step, "lowest", 0);
    NEAR(end->skew.sweep, far - near, step, "sweeps", 0);
    NEAR(end->skew.lean_greatest, lean, 1e-7, "leans", 0);
    ck_assert(fabs(end->sweep.kick_out + end->sweep.kick_in -
                   end->sweep.length * (sin(end->sweep.lean_greatest) - sin(end->sweep.lean_least))) >
              1e-3); /* the cross-section alone */
}
END_TEST

/* The places along the house of a side's drive and eye, asked by themselves. */
static tside_stand stand_of(const tside_side *side)
{
    const tside_end *end = &side->drive_end;
    const tside_collar collar = tside_drive_collar(&side->drive);
    const tside_along along = {.hung = end->hung,
                               .bow = side->frame.tube.diameter,
                               .spacer = end->extender.spacer,
                               .tube = end->extender.tube.side,
                               .stand_off = end->extender.eye_stand_off,
                               .bar_clearance = end->extender.bar_clearance,
                               .past = side->curtain.past,
                               .alignment = end->alignment,
                               .run_on = side->bar.past_drive,
                               .along = collar.along,
                               .half_length = collar.half_length,
                               .clearance = collar.clearance};
    tside_stand stand;
    tside_fault fault;
    ANSWERS(tside_along_stand(&along, &stand, &fault));
    return stand;
}

/* All of two structures of doubles alone, to the last bit. */
static void alike(const double *a, const double *b, size_t size, double out)
{
    for (size_t i = 0; i < size / sizeof *a; i++)
        ck_assert_msg(a[i] == b[i], "at %.17g m: number %d is %.17g, and %.17g", out, (int)i, a[i], b[i]);
}

/* The functions in a row give what the plan gives, also for a drive out of its eye's line, farther out or in. */
START_TEST(chain_of_functions_has_the_plans_misfit)
{
    static const double past_drive[] = {6 * 0.0254, 0.3, 0.6};
    int out = 0, in = 0;
    for (size_t i = 0; i < sizeof past_drive / sizeof *past_drive; i++) {
        tside_side side;
        const tside_end *end = &side.drive_end;
        tside_plan plan;
        tside_travel travel;
        tside_stand stand;
        tside_hang hang, in_line;
        tside_sweep sweep, level;
        tside_skew skew;
        tside_fault fault;
        bench_leaning_side(&side);
        const tside_collar collar = tside_drive_collar(&side.drive);
        side.curtain.past = 0.01;
        side.drive_end.extender.bar_clearance = 0.01; /* farther in, it passes beside the tube */
        side.drive_end.alignment = TSIDE_RUN_ON_GIVEN;
        side.bar.past_drive = past_drive[i];
        plan = planned(&side);
        travel = travel_of(&side);
        stand = stand_of(&side);
        alike(&stand.eye, &plan.drive_end.stand.eye, offsetof(tside_stand, past_most_given), past_drive[i]);
        out += stand.misfit > 0.01;
        in += stand.misfit < -0.01;
        ANSWERS(tside_hang_make(&travel, &end->guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, stand.misfit,
                                &hang, &sweep, &fault));
        ANSWERS(tside_guide_skew(&travel, &hang, &skew, &fault));
        ck_assert(hang.misfit == stand.misfit);
        alike(&sweep.lean_shut, &plan.drive_end.sweep.lean_shut, sizeof sweep, past_drive[i]);
        alike(&skew.reach_shut, &plan.drive_end.skew.reach_shut, sizeof skew, past_drive[i]);
        ANSWERS(tside_hang_make(&travel, &end->guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, 0, &in_line,
                                &level, &fault));
        ck_assert(level.cut_length < sweep.cut_length - 1e-5);
    }
    ck_assert(out && in);
}
END_TEST

/*
 * Ground that lies lower at the free end, with all that is taped from it as much higher, is the same side; and its
 * guide's foot may come as much lower.
 */
START_TEST(ground_at_an_end_is_taped)
{
    tside_side side = plain(), lower = side;
    tside_plan level = planned(&side), plan;
    tside_fault fault;
    const double drop = 0.2;
    lower.free_end.hip_height_given = 1;
    lower.free_end.hip_height = side.curtain.hip + drop;
    lower.free_end.extender.member_height += drop;
    plan = planned(&lower);
    NEAR(plan.free_end.ground, -drop, 1e-12, "ground", 0);
    NEAR(plan.free_end.layout.angle, level.free_end.layout.angle, 1e-12, "angle", 0);
    NEAR(plan.free_end.layout.cut_length, level.free_end.layout.cut_length, 1e-9, "extender", 0);
    side.free_end.guide.margin = lower.free_end.guide.margin = side.free_end.guide.margin +
                                                               level.free_end.sweep.foot_lowest -
                                                               side.free_end.guide.ground_clearance + 0.05;
    ck_assert_int_eq(tside_plan_side(&side, &level, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "free_end.guide.margin");
    plan = planned(&lower);
    lower.free_end.extender.slant = TSIDE_SLANT_CROSSING;
    lower.free_end.extender.crossing = 5;
    ck_assert_int_eq(tside_plan_side(&lower, &plan, &fault), TSIDE_OUT_OF_REACH);
    ck_assert_str_eq(fault.field, "free_end.extender.crossing");
    NEAR(fault.value, 5, 1e-12, "as taped", 0);
}
END_TEST

/*
 * A guide on its foot, in the plan: as its function has it, the drive turning as the bar, the couple shared over its
 * length.
 */
START_TEST(a_guide_may_stand_on_its_foot)
{
    tside_side side = plain();
    tside_plan hung = planned(&side), plan;
    double couple;
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    plan = planned(&side);
    ck_assert(plan.drive_end.fixed_given && !plan.drive_end.skew_given && plan.free_end.skew_given);
    NEAR(plan.drive_turns, plan.bar_turns, 1e-12, "turns", 0);
    NEAR(plan.worst.drive, plan.worst.up, 0, "torque", 0);
    couple = plan.stall_torque + GRAVITY * side.drive.mass * side.drive.mass_offset;
    NEAR(plan.drive_end.side_force_stall, couple / plan.drive_end.fixed.length, 1e-9 * couple, "reaction", 0);
    NEAR(plan.drive_end.fixed.cut_length, plan.drive_end.fixed.length + side.drive_end.footing.depth, 1e-12, "cut", 0);
    NEAR(plan.drive_end.hung_force_stall, hung.drive_end.side_force_stall, 1e-9, "beside a hung one's", 0);
    ck_assert(plan.drive_end.side_force_stall < hung.drive_end.side_force_stall / 3 && plan.drive_end.uplift == 0 &&
              plan.drive_end.chain_swing == 0);
    ck_assert(plan.drive_end.sweep.kick_out == 0 && plan.drive_end.sweep.walkway == plan.drive_end.fixed.foot_x);
}
END_TEST

/* Above an end's own ground, as its member is told. */
START_TEST(a_crossing_is_told_above_its_ends_ground)
{
    tside_side side = plain();
    tside_plan plan;
    tside_bow bow;
    tside_fault fault;
    double arc, top;
    ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
    ck_assert_int_ne(tside_bow_at_height(&bow, 99, &arc, &fault), TSIDE_OK);
    top = fault.bound;
    side.free_end.hip_height_given = 1;
    side.free_end.hip_height = side.curtain.hip + 0.3;
    side.free_end.extender.slant = TSIDE_SLANT_CROSSING;
    side.free_end.extender.crossing = top + 0.301;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "free_end.extender.crossing", TSIDE_ABOVE);
    NEAR(fault.bound, top + 0.3, 1e-9, "top of the bow above the end's ground", 0);
    side.free_end.extender.member_height = 9;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "free_end.extender.member_height",
            TSIDE_NOT_BELOW);
    NEAR(fault.bound, side.curtain.hip + side.free_end.rise + 0.3, 1e-9, "the eye above the end's ground", 0);
}
END_TEST

/* The free end's lean along the house, with the bar so far past the bow; and whether it is told, and whether it binds.
 */
static double lean_past(tside_side *side, double past, int *told, int *binds)
{
    tside_plan plan;
    side->bar.past_free = past;
    plan = planned(side);
    *told = *binds = 0;
    for (int i = 0; i < plan.finding_count; i++)
        if (plan.findings[i].end == TSIDE_FREE_END) {
            *told += plan.findings[i].code == TSIDE_FINDING_LEAN_ALONG;
            *binds += plan.findings[i].code == TSIDE_FINDING_BINDS;
        }
    return plan.free_end.skew.lean_greatest;
}

/*
 * From one finding to the other at ten degrees, this library's choice: up to there, and there, the lean is told; beyond
 * it binds. Places are looked at to the last digit, at some of which it is just as much.
 */
START_TEST(a_lean_is_told_or_binds)
{
    const double most = 10 * (PI / 180);
    for (int n = 0; n < 24; n++) {
        tside_side side = plain();
        double low = 0.15, high = 0.4;
        int told, binds;
        side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
        side.curtain.hip += 1e-4 * n;
        ck_assert(lean_past(&side, low, &told, &binds) < most && lean_past(&side, high, &told, &binds) > most);
        for (int halving = 0; halving < 60; halving++) {
            const double middle = low + (high - low) / 2;
            if (lean_past(&side, middle, &told, &binds) < most)
                low = middle;
            else
                high = middle;
        }
        for (int digit = -8; digit <= 8; digit++) {
            const double lean = lean_past(&side, low + digit * DBL_EPSILON / 8, &told, &binds);
            ck_assert_msg(told == (lean <= most) && binds == (lean > most), "a lean of %.17g: told %d, binds %d", lean,
                          told, binds);
        }
    }
}
END_TEST

Suite *house_suite(void)
{
    Suite *suite = suite_create("house");
    TCase *tcase = tcase_create("house");
    tcase_add_test(tcase, a_misfit_is_in_space);
    tcase_add_test(tcase, chain_of_functions_has_the_plans_misfit);
    tcase_add_test(tcase, ground_at_an_end_is_taped);
    tcase_add_test(tcase, a_guide_may_stand_on_its_foot);
    tcase_add_test(tcase, a_crossing_is_told_above_its_ends_ground);
    tcase_add_test(tcase, a_lean_is_told_or_binds);
    suite_add_tcase(suite, tcase);
    return suite;
}
