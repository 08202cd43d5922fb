/* SPDX-License-Identifier: MIT */
/* The bar's sticks and joints. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "takeoffs.h"

Suite *sticks_suite(void);

/* --- the bar's sticks --- */

static tside_bar bar_of(double past_drive, double past_free, double stock, double swage, double near)
{
    tside_side side = stocked();
    side.bar.past_drive = past_drive;
    side.bar.past_free = past_free;
    side.bar.stock = stock;
    side.bar.swage = swage;
    side.bar.splice_near = near;
    return side.bar;
}

enum { MOST_STICKS = 40 };

/*
 * By hand: 0.3 m to the drive, 15 m of curtain, 0.2 m at the free end make 15.5 m. Three sticks of 6 m less 2 x 0.1 m
 * make 17.8 m, two 11.9 m: so three, the last of 15.5 - 2 x 5.9 = 3.7 m; joints begin 5.9 and 11.8 m from the drive's
 * centre.
 */
START_TEST(sticks_by_hand)
{
    tside_bar bar = bar_of(0.3, 0.2, 6, 0.1, 0.6);
    tside_bar_stick stick[MOST_STICKS];
    tside_fault fault;
    static const double length[] = {6, 6, 3.7}, from[] = {0, 5.9, 11.8}, to[] = {6, 11.9, 15.5};
    int count;
    ANSWERS(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 3);
    for (int i = 0; i < count; i++) {
        NEAR(stick[i].length, length[i], 1e-12, "length", i);
        NEAR(stick[i].from, from[i], 1e-12, "from", i);
        NEAR(stick[i].to, to[i], 1e-12, "to", i);
    }
}
END_TEST

/*
 * The bar just fits whole sticks, or is a hair longer than they let pass; one stick; a rest too short to stand by
 * itself.
 */
START_TEST(sticks_at_their_limits)
{
    tside_bar bar = bar_of(0.3, 0.2, 6, 0.1, 0.6);
    tside_bar_stick stick[MOST_STICKS];
    tside_fault fault;
    int count;
    ANSWERS(tside_bar_sticks(&bar, 5.5, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count,
                             &fault)); /* 6 m, one stick */
    ck_assert_int_eq(count, 1);
    NEAR(stick[0].length, 6, 1e-12, "one stick", 0);
    ANSWERS(tside_bar_sticks(&bar, 17.8 - 0.5, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count,
                             &fault)); /* three whole sticks */
    ck_assert_int_eq(count, 3);
    for (int i = 0; i < 3; i++)
        NEAR(stick[i].length, 6, 1e-12, "whole", i);
    /*
     * 1e-6 m more: a fourth stick, of which the least is a swage and what stands out at the free end, 0.3 m; it is
     * taken from the third
     */
    ANSWERS(
        tside_bar_sticks(&bar, 17.8 - 0.5 + 1e-6, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 4);
    NEAR(stick[3].length, 0.3, 1e-12, "last", 0);
    NEAR(stick[2].to, 17.8 + 1e-6 - 0.2, 1e-9, "the last joint ends with the curtain", 0);
    NEAR(stick[1].length, 6, 0, "whole", 1);
    /* two sticks, and the last would be a stub: the first is cut */
    ANSWERS(tside_bar_sticks(&bar, 5.6, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 2);
    NEAR(stick[0].length, 5.9, 1e-12, "first", 0);
    NEAR(stick[1].length, 0.3, 1e-12, "last", 0);
    bar.stock = 100;
    ANSWERS(tside_bar_sticks(&bar, 1000, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 11);
    /* no curtain, no swage */
    bar = bar_of(0, 0, 1, 0, 0);
    ANSWERS(tside_bar_sticks(&bar, 3, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 3);
    ANSWERS(tside_bar_sticks(&bar, 0, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
    ck_assert(count == 1 && stick[0].length == 0);
}
END_TEST

/* A bar of whole sticks needs no stick more because a sum of decimal lengths is off by its last digits. */
START_TEST(whole_sticks_are_enough)
{
    for (int sticks = 1; sticks <= 3; sticks++)
        for (int i = 1; i < 60; i++) {
            const int swage = i % 7 + 1, past_drive = i, past_free = i % 11 + 1; /* all in centimetres */
            const int curtain = 600 * sticks - (sticks - 1) * swage - past_drive - past_free;
            const tside_bar bar = bar_of(past_drive / 100.0, past_free / 100.0, 6, swage / 100.0, 0.3);
            tside_bar_stick stick[MOST_STICKS];
            tside_fault fault;
            int count;
            ANSWERS(tside_bar_sticks(&bar, curtain / 100.0, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count,
                                     &fault));
            ck_assert_int_eq(count, sticks);
        }
}
END_TEST

/* Nor is one that is just a stick refused for a joint that it has not: there would be no place for it. */
START_TEST(one_whole_stick_has_no_joint)
{
    for (int past_drive = 200; past_drive < 290; past_drive++) { /* in centimetres */
        const int past_free = past_drive % 7, curtain = 300 - past_drive - past_free;
        const tside_bar bar = bar_of(past_drive / 100.0, past_free / 100.0, 3, 0.1, 0.9);
        tside_bar_stick stick[MOST_STICKS];
        tside_fault fault;
        int count;
        ANSWERS(
            tside_bar_sticks(&bar, curtain / 100.0, bar.past_drive, bar.past_free, stick, MOST_STICKS, &count, &fault));
        ck_assert_int_eq(count, 1);
    }
}
END_TEST

/* A bar over its stock by just what counts as none, give or take last digits, is one stick or more, none of them
 * longer. */
START_TEST(no_stick_is_longer_than_its_stock_by_digits)
{
    dice d = {12};
    int one = 0;
    for (int n = 0; n < 6000; n++) {
        const double stock = dice_between(&d, 2.5, 9), swage = dice_below(&d, 500) / 1000.0;
        double whole = stock + 1e-9;
        const tside_bar bar = bar_of(0, 0, stock, swage, 0);
        tside_bar_stick stick[MOST_STICKS];
        tside_fault fault;
        int count;
        for (int digits = dice_below(&d, 4); digits > 0; digits--)
            whole = nextafter(whole, HUGE_VAL);
        ANSWERS(tside_bar_sticks(&bar, whole, 0, 0, stick, MOST_STICKS, &count, &fault));
        for (int i = 0; i < count; i++)
            ck_assert_msg(stick[i].length <= (count > 1 ? stock : stock + 1e-9), "%.17g of %.17g", stick[i].length,
                          stock);
        one += count == 1;
    }
    ck_assert(one > 1000 && one < 5000);
}
END_TEST

/* Whatever the bar: it is made, none too long, its joints where they may be, and fewer sticks would not do. */
START_TEST(sticks_make_the_bar)
{
    dice d = {11};
    int joined = 0, refused = 0, shifted = 0;
    for (int n = 0; n < 20000; n++) {
        double w = dice_between(&d, 0, 0.3), near = dice_between(&d, 0, 2), past_drive = dice_between(&d, 0, 0.6),
               past_free = dice_between(&d, 0, 0.6);
        double S = dice_between(&d, 1, 8), curtain = dice_between(&d, 0, 25), B = past_drive + curtain + past_free,
               made = 0;
        tside_bar bar = bar_of(past_drive, past_free, S, w, near);
        tside_bar_stick stick[200];
        tside_fault fault;
        int count;
        if (tside_bar_sticks(&bar, curtain, bar.past_drive, bar.past_free, stick, 200, &count, &fault) != TSIDE_OK) {
            if (fault.status != TSIDE_CONTRADICTS || strcmp(fault.field, "bar.stock") || !(B > S) || !(S < fault.bound))
                ck_abort_msg("%d: refused for %s", n, fault.field);
            bar.stock = fault.bound; /* what it says does */
            ANSWERS(tside_bar_sticks(&bar, curtain, bar.past_drive, bar.past_free, stick, 200, &count, &fault));
            refused++;
            continue;
        }
        for (int i = 0; i < count; i++) {
            made += stick[i].length;
            if (!(stick[i].length <= S + 1e-9) || !(stick[i].length > 0) ||
                fabs(stick[i].to - stick[i].from - stick[i].length) > 1e-12)
                ck_abort_msg("%d: stick %d of %g", n, i, stick[i].length);
            if (i && (fabs(stick[i - 1].to - stick[i].from - w) > 1e-9 || stick[i].from < past_drive + near - 1e-9 ||
                      stick[i - 1].to > B - past_free + 1e-9))
                ck_abort_msg("%d: joint %d from %g to %g", n, i, stick[i].from, stick[i - 1].to);
            if (i > 1 && stick[i].from < stick[i - 2].to - 1e-9)
                ck_abort_msg("%d: three sticks overlap", n);
            shifted += i == count - 2 && stick[i].length < S;
        }
        if (fabs(made - (count - 1) * w - B) > 1e-9 || fabs(stick[count - 1].to - B) > 1e-9)
            ck_abort_msg("%d: the sticks make %g, not %g", n, made - (count - 1) * w, B);
        if (count > 1 && (count - 1) * S - (count - 2) * w >= B)
            ck_abort_msg("%d: %d sticks, and one fewer would do", n, count);
        joined += count > 1;
    }
    ck_assert_msg(joined > 5000 && refused > 500 && shifted > 100, "%d joined, %d refused, %d shifted", joined, refused,
                  shifted);
}
END_TEST

START_TEST(sticks_refused)
{
    tside_bar bar = bar_of(0.3, 0.2, 6, 0.1, 0.6);
    struct {
        tside_bar_stick stick[3];
        int count;
    } out;
    tside_fault fault;
    /* the first joint must begin 0.3 + 0.6 m from the drive's centre, and take 0.1 m, and leave 0.2 m: 1.2 m */
    bar.stock = 1.1;
    REFUSES(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_CONTRADICTS, "bar.stock", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "bar.splice_near");
    NEAR(fault.bound, 1.2, 1e-12, "shortest stock", 0);
    ANSWERS(tside_bar_sticks(&bar, 0.6, bar.past_drive, bar.past_free, out.stick, 3, &out.count,
                             &fault)); /* 1.1 m: one stick has no joint to keep */
    bar.stock = 0;
    REFUSES(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_OUT_OF_BOUNDS, "bar.stock", TSIDE_BELOW);
    bar.stock = 6;
    bar.swage = NAN;
    REFUSES(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_OUT_OF_BOUNDS, "bar.swage", TSIDE_NOT_FINITE);
    bar.swage = 0.1;
    REFUSES(tside_bar_sticks(&bar, -1, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_BELOW);
    REFUSES(tside_bar_sticks(&bar, 1001, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_ABOVE);
    REFUSES(tside_bar_sticks(&bar, NAN, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_NOT_FINITE);
    REFUSES(tside_bar_sticks(&bar, 15, -0.3, 0.2, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS,
            "beyond_drive", TSIDE_BELOW);
    REFUSES(tside_bar_sticks(&bar, 15, 0.3, NAN, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS,
            "beyond_free", TSIDE_NOT_FINITE);
    REFUSES(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 2, &out.count, &fault), out.stick,
            TSIDE_TOO_SMALL, "capacity", TSIDE_BELOW);
    ck_assert_int_eq(out.count, 3);
    ANSWERS(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault));
    bar.joints = TSIDE_JOINTS_GIVEN;
    bar.splices = 1;
    REFUSES(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault), out,
            TSIDE_CONTRADICTS, "bar.splices", TSIDE_ABOVE);
    bar.splices = 0;
    ANSWERS(tside_bar_sticks(&bar, 15, bar.past_drive, bar.past_free, out.stick, 3, &out.count, &fault));
    ck_assert_int_eq(out.count, 1);
    NEAR(out.stick[0].length, 15.5, 1e-12, "whole", 0);
}
END_TEST

/* --- joints in the plan --- */

/* NULL where there is none. */
static const tside_strength_line *splice_line(const tside_plan *plan, tside_strength_code code)
{
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].code == code)
            return plan->lines + i;
    return NULL;
}

/*
 * By hand: 29.26 + 2 x 0.2286 of curtain + 0.2286 + 0.1016 = 30.0474 m; four sticks of 6.4 m less 3 x 0.1016
 * are 25.2952 m, five suffice; so four joints, the nearest beginning 6.4 - 0.1016 - 0.2286 = 6.0698 m from the
 * curtain's edge. The same joints, given, make the same plan.
 */
START_TEST(joints_feed_the_plan)
{
    tside_side side = stocked(), as_given = side;
    tside_plan plan = planned(&side), same;
    tside_fault fault;
    const tside_strength_line *line = splice_line(&plan, TSIDE_SPLICE_SCREW);
    int index;
    ck_assert_int_eq(plan.splices, 4);
    NEAR(plan.splice_near, 6.0698, 1e-12, "nearest joint", 0);
    ck_assert(line != NULL && splice_line(&plan, TSIDE_SPLICE_SCREW_STALL) != NULL);
    NEAR(line->demand, plan.worst.per_metre * (29.7172 - 6.0698) / (side.bar.screws * side.bar.tube.diameter / 2), 1e-9,
         "screw", 0);
    as_given.bar.joints = TSIDE_JOINTS_GIVEN;
    as_given.bar.splices = 1;
    same = planned(&as_given);
    ck_assert(same.splices == 1 && same.splice_near == as_given.bar.splice_near);
    as_given.bar.splices = 4;
    as_given.bar.splice_near = plan.splice_near;
    same = planned(&as_given);
    ck_assert_mem_eq(&same, &plan, sizeof plan);
    ck_assert(plan.lag_play > 0);
    /* more joints, more play; one stick, none */
    side.bar.stock = 3.2;
    same = planned(&side);
    ck_assert_int_gt(same.splices, plan.splices);
    NEAR(same.lag_play / plan.lag_play, same.splices / 4.0, 1e-12, "play by joints", 0);
    side.bar.stock = 40;
    same = planned(&side);
    ck_assert(same.splices == 0 && same.splice_near == 0 && same.lag_play == 0 &&
              !splice_line(&same, TSIDE_SPLICE_SCREW));
    /* refused in the plan, and in a list of bars */
    side.bar.stock = 1.01;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "bar.stock", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "bar.splice_near");
    side.bars[0] = side.bar;
    side.bar_count = 1;
    side.bar.stock = 6.4;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_CONTRADICTS, "bars[0].stock", TSIDE_BELOW);
    side.bar.stock = 0;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_BOUNDS, "bar.stock", TSIDE_BELOW);
}
END_TEST

Suite *sticks_suite(void)
{
    Suite *suite = suite_create("sticks");
    TCase *tcase = tcase_create("sticks");
    tcase_add_test(tcase, sticks_by_hand);
    tcase_add_test(tcase, sticks_at_their_limits);
    tcase_add_test(tcase, whole_sticks_are_enough);
    tcase_add_test(tcase, one_whole_stick_has_no_joint);
    tcase_add_test(tcase, no_stick_is_longer_than_its_stock_by_digits);
    tcase_add_test(tcase, sticks_make_the_bar);
    tcase_add_test(tcase, sticks_refused);
    tcase_add_test(tcase, joints_feed_the_plan);
    suite_add_tcase(suite, tcase);
    return suite;
}
