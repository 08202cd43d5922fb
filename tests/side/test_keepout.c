/* SPDX-License-Identifier: MIT */
/* Keep-outs, against distances found apart. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "side/keepout.h"

Suite *keepout_suite(void);

static double to_rectangle(const tside_keep_out *out, double x, double y)
{
    return hypot(fmax(fmax(out->inner - x, x - out->outer), 0), fmax(fmax(out->bottom - y, y - out->top), 0));
}

/* The distance from a convex figure has one valley along a straight line: thirds are cut off until nothing is left. */
static double nearest_on_segment(const tside_keep_out *out, double x1, double y1, double x2, double y2)
{
    double low = 0, high = 1;
    for (int i = 0; i < 120; i++) {
        double a = low + (high - low) / 3, b = high - (high - low) / 3;
        if (to_rectangle(out, x1 + a * (x2 - x1), y1 + a * (y2 - y1)) <
            to_rectangle(out, x1 + b * (x2 - x1), y1 + b * (y2 - y1)))
            high = b;
        else
            low = a;
    }
    return to_rectangle(out, x1 + low * (x2 - x1), y1 + low * (y2 - y1));
}

static tside_keep_out any_rectangle(dice *d, double x, double y, double reach)
{
    double inner = x + dice_between(d, -reach, reach), bottom = y + dice_between(d, -reach, reach);
    return (tside_keep_out){inner, inner + dice_between(d, 0.01, 0.5), bottom, bottom + dice_between(d, 0.01, 0.5)};
}

FOR_SIDES(rectangle_to_segment, 500)
{
    dice d = {300u + (unsigned)number};
    tside_keep_out out = any_rectangle(&d, 0, 0, 1);
    double x1 = dice_between(&d, -1, 1), y1 = dice_between(&d, -1, 1), x2 = dice_between(&d, -1, 1),
           y2 = dice_between(&d, -1, 1);
    if (number % 5 == 0)
        x2 = x1;
    if (number % 7 == 0)
        y2 = y1;
    NEAR(tside_i_rectangle_to_segment(&out, x1, y1, x2, y2), nearest_on_segment(&out, x1, y1, x2, y2), 1e-7,
         "rectangle to segment", number);
}

FOR_SIDES(rectangle_to_sweep, 100)
{
    enum { LOOKS = 2000 };
    dice d = {400u + (unsigned)number};
    tside_keep_out out = any_rectangle(&d, 0, -0.5, 1);
    double length = dice_between(&d, 0.2, 1.5), least = dice_between(&d, -1, 0.6),
           greatest = least + dice_between(&d, 0, 0.8), nearest = HUGE_VAL, got;
    for (int i = 0; i <= LOOKS; i++) {
        double lean = least + (greatest - least) * i / LOOKS;
        nearest = fmin(nearest, nearest_on_segment(&out, 0, 0, length * sin(lean), -length * cos(lean)));
    }
    got = tside_i_rectangle_to_sweep(&out, 0, 0, length, least, greatest);
    NEAR(got, nearest, length * (greatest - least) / LOOKS, "rectangle to sweep", number);
    ck_assert(got <= nearest + 1e-9);
}

/* From the tube's top end, a length of cut tube down its slope. */
static double nearest_on_tube(const tside_keep_out *out, const tside_layout *tube)
{
    double dx = tube->member_x - tube->eye_x, dy = tube->bow_height - tube->eye_y, run = tube->bow_x - tube->eye_x,
           slope = hypot(run, dy), top_x, top_y;
    ck_assert(dx < 0 && slope > 0);
    top_x = tube->eye_x - run / slope * tube->eye_from_top;
    top_y = tube->eye_y - dy / slope * tube->eye_from_top;
    return nearest_on_segment(out, top_x, top_y, top_x + run / slope * tube->cut_length,
                              top_y + dy / slope * tube->cut_length);
}

FOR_SIDES(keep_out_of_the_tube, 300)
{
    dice d = {500u + (unsigned)number};
    tside_side side = plain();
    tside_plan plan = planned(&side);
    const tside_layout *tube = &plan.drive_end.layout;
    double along = dice_between(&d, -0.1, 1.1), nearest, needed = side.drive_end.extender.tube.side / 2;
    tside_keep_out out = any_rectangle(&d, tube->eye_x + along * (tube->member_x - tube->eye_x),
                                       tube->eye_y + along * (tube->bow_height - tube->eye_y), 0.3);
    const tside_finding *found;
    side.drive_end.keep_out_count = 2;
    side.drive_end.keep_outs[0] = (tside_keep_out){0.1, 0.2, 0, 1};
    side.drive_end.keep_outs[1] = out;
    plan = planned(&side);
    nearest = nearest_on_tube(&out, tube);
    found = finding_of(&plan, TSIDE_FINDING_KEEP_OUT_TUBE);
    ck_assert_int_eq(plan.drive_end.keep_off_count, 2);
    ck_assert(plan.drive_end.keep_offs[1].tube_given);
    NEAR(plan.drive_end.keep_offs[1].tube, nearest - needed, 1e-7, "clear of the tube", number);
    if (fabs(nearest - needed) > 1e-7)
        ck_assert_msg(!found == (nearest > needed), "side %d: %g m off, %g needed", number, nearest, needed);
    if (found) {
        NEAR(found->value, nearest, 1e-7, "off the tube", number);
        ck_assert(found->bound == needed && found->index == 1 && found->end == TSIDE_DRIVE_END);
    }
}

/* The guide, wherever within its placing error its eye is, at every lean that it takes there. */
static double nearest_on_guide(const tside_side *side, const tside_plan *plan, const tside_keep_out *out)
{
    const double error = side->free_end.guide.placing_error;
    tside_travel travel;
    tside_fault fault;
    double nearest = HUGE_VAL;
    travel = travel_of(side);
    for (int way = -20; way <= 20; way++) {
        double x = plan->free_end.eye_x + error * way / 20, y = plan->free_end.eye_y;
        for (int i = 0; i <= 40; i++) {
            tside_position at;
            double R, lean, length = plan->free_end.sweep.length;
            ANSWERS(tside_travel_at(&travel, plan->bar_turns * i / 40, &at, &fault));
            R = hypot(at.x - x, y - at.y);
            lean = atan2(at.x - x, y - at.y) + asin(side->collar.offset / R);
            nearest = fmin(nearest, nearest_on_segment(out, x, y, x + length * sin(lean), y - length * cos(lean)));
        }
    }
    return nearest;
}

FOR_SIDES(keep_out_of_the_guide, 60)
{
    dice d = {600u + (unsigned)number};
    tside_side side = plain();
    tside_plan plan;
    tside_keep_out out;
    const tside_finding *found;
    double nearest, needed = side.free_end.guide.tube.diameter / 2;
    side.free_end.guide.placing_error = number % 2 ? 0.02 : 0.1;
    plan = planned(&side);
    out = any_rectangle(&d, plan.free_end.eye_x, plan.free_end.eye_y - plan.free_end.sweep.length / 2, 0.5);
    if (number % 3 == 0)
        out.outer = out.inner + 0.001; /* so thin that it fits between two places of the guide */
    side.free_end.keep_out_count = 1;
    side.free_end.keep_outs[0] = out;
    plan = planned(&side);
    nearest = nearest_on_guide(&side, &plan, &out);
    found = finding_of(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE);
    ck_assert_int_eq(plan.drive_end.keep_off_count, 0);
    ck_assert_int_eq(plan.free_end.keep_off_count, 1);
    ck_assert_msg(fabs(plan.free_end.keep_offs[0].guide - (nearest - needed)) < needed / 2,
                  "side %d: clears by %g, and is %g m off", number, plan.free_end.keep_offs[0].guide, nearest);
    if (fabs(nearest - needed) > 1e-3)
        ck_assert_msg(!found == (nearest > needed), "side %d: %g m off, %g needed", number, nearest, needed);
    if (found) {
        ck_assert(found->bound == needed && found->index == 0 && found->end == TSIDE_FREE_END && found->value >= 0);
        ck_assert_msg(fabs(found->value - nearest) < needed / 2, "side %d: %g, not %g m off", number, found->value,
                      nearest);
    }
}

/* A rod between eye and misplaced eye, close below their height, where the guide hardly swings. */
START_TEST(nothing_slips_between_placings)
{
    for (int i = 1; i < 20; i++) {
        tside_side side = plain();
        tside_plan plan;
        double x;
        side.drive_end.guide.placing_error = 0.2;
        plan = planned(&side);
        x = plan.drive_end.eye_x + 0.01 * i;
        side.drive_end.keep_out_count = 1;
        side.drive_end.keep_outs[0] = (tside_keep_out){x, x + 0.001, plan.drive_end.eye_y - 0.03,
                                                       plan.drive_end.eye_y - 0.02};
        plan = planned(&side);
        ck_assert_msg(finds(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE), "a rod %d cm from the eye", i);
    }
}
END_TEST

START_TEST(keep_outs_are_measured)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    double x = plan.drive_end.eye_x, needed = side.drive_end.guide.tube.diameter / 2,
           foot = plan.drive_end.sweep.length;
    /* a path below the hanging foot: nearer than half the pipe, and just not */
    for (int hits = 0; hits <= 1; hits++) {
        side.drive_end.keep_out_count = 1;
        side.drive_end.keep_outs[0] = (tside_keep_out){x - 1, x + 1, 0,
                                                       plan.drive_end.eye_y - foot - needed + (hits ? 1e-6 : -1e-6)};
        plan = planned(&side);
        ck_assert_int_eq(finds(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE), hits);
    }
}
END_TEST

/* The straight pipe that stands, with its foot wherever its placing error takes it. */
static double nearest_on_standing(const tside_fixed *fixed, double error, const tside_keep_out *out)
{
    double nearest = HUGE_VAL;
    for (int i = -200; i <= 200; i++)
        nearest = fmin(nearest, nearest_on_segment(out, fixed->top_x, fixed->top_y, fixed->foot_x + error * i / 200,
                                                   fixed->ground));
    return nearest;
}

/* out: above the ground at the drive's end, whose guide stands. */
static void check_standing(tside_side *side, tside_keep_out out, int number)
{
    tside_plan plan;
    side->drive_end.keep_out_count = 1;
    side->drive_end.keep_outs[0] = out;
    plan = planned(side);
    out.bottom += plan.drive_end.ground;
    out.top += plan.drive_end.ground;
    NEAR(plan.drive_end.keep_offs[0].guide,
         nearest_on_standing(&plan.drive_end.fixed, side->drive_end.guide.placing_error, &out) -
             side->drive_end.guide.tube.diameter / 2,
         1e-3, "clear of the standing guide", number);
}

FOR_SIDES(keep_out_of_the_standing_guide, 60)
{
    dice d = {700u + (unsigned)number};
    tside_side side = plain();
    tside_plan plan;
    if (number % 2) { /* the ground is not the side's, nor is the keep-out's height */
        side.drive_end.hip_height_given = 1;
        side.drive_end.hip_height = side.curtain.hip - 0.2;
        side.drive_end.extender.member_height -= 0.2;
    }
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    plan = planned(&side);
    ck_assert(plan.drive_end.fixed_given);
    check_standing(
        &side,
        any_rectangle(&d, plan.drive_end.fixed.foot_x, (plan.drive_end.fixed.top_y + plan.drive_end.ground) / 2, 0.5),
        number);
}

/* Low, and just beyond the foot as far out as it may stand. */
START_TEST(a_foot_that_stands_farther_out_keeps_clear_too)
{
    tside_side side = plain();
    const double error = 0.2, foot = 5.2;
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    side.drive_end.guide.placing_error = error;
    side.drive_end.footing.fixed_by = TSIDE_FIXED_BOTH;
    side.drive_end.footing.foot_x = foot;
    check_standing(&side, (tside_keep_out){foot + error + 0.1, foot + 1, 0, 0.001}, 0);
}
END_TEST

/* On the hip there is no tube to clear. */
START_TEST(an_end_on_the_hip_clears_by_its_guide_alone)
{
    tside_side side = plain();
    tside_plan plan;
    on_hip(&side);
    side.drive_end.keep_out_count = 1;
    side.drive_end.keep_outs[0] = (tside_keep_out){0.1, 0.2, 0, 1};
    plan = planned(&side);
    ck_assert_int_eq(plan.drive_end.keep_off_count, 1);
    ck_assert(!plan.drive_end.keep_offs[0].tube_given && plan.drive_end.keep_offs[0].tube == 0);
    ck_assert(plan.drive_end.keep_offs[0].guide > 0);
}
END_TEST

/* Touching is clear: what is found begins below 0, and what is found is how near it is. */
START_TEST(what_touches_is_not_found)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    const tside_finding *found;
    double needed = side.drive_end.guide.tube.diameter / 2, x = plan.drive_end.eye_x,
           foot = plan.drive_end.eye_y - plan.drive_end.sweep.length - plan.drive_end.ground, low = foot / 2,
           high = foot;
    side.drive_end.keep_out_count = 1;
    /* a path below the foot, raised by halves until it touches to the last bit, or passes from clear to not */
    for (int i = 0; i < 100; i++) {
        double top = low + (high - low) / 2;
        side.drive_end.keep_outs[0] = (tside_keep_out){x - 1, x + 1, -1, top};
        plan = planned(&side);
        found = finding_of(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE);
        ck_assert(!found == (plan.drive_end.keep_offs[0].guide >= 0));
        if (found)
            NEAR(found->value, plan.drive_end.keep_offs[0].guide + needed, 1e-15, "how near", i);
        if (plan.drive_end.keep_offs[0].guide >= 0)
            low = top;
        else
            high = top;
    }
    NEAR(low, foot - needed, 1e-9, "where it touches", 0);
}
END_TEST

Suite *keepout_suite(void)
{
    Suite *suite = suite_create("keepout");
    TCase *tcase = tcase_create("keepout");
    tcase_add_test(tcase, rectangle_to_segment);
    tcase_add_test(tcase, rectangle_to_sweep);
    tcase_add_test(tcase, keep_out_of_the_tube);
    tcase_add_test(tcase, keep_out_of_the_guide);
    tcase_add_test(tcase, nothing_slips_between_placings);
    tcase_add_test(tcase, keep_outs_are_measured);
    tcase_add_test(tcase, keep_out_of_the_standing_guide);
    tcase_add_test(tcase, a_foot_that_stands_farther_out_keeps_clear_too);
    tcase_add_test(tcase, an_end_on_the_hip_clears_by_its_guide_alone);
    tcase_add_test(tcase, what_touches_is_not_found);
    suite_add_tcase(suite, tcase);
    return suite;
}
