/* SPDX-License-Identifier: MIT */
/* The bar's sticks and joints, and the take-off against counts by hand. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "expect.h"

#define INCH 0.0254 /* m, exact: yard and pound agreement of 1959 */

static tside_plan planned(const tside_side *side)
{
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(side, &plan, &fault));
    return plan;
}

/* Its bar is made from stock, 6.4 m with 4 in lost in each joint. */
static tside_side plain(void)
{
    tside_side side;
    bench_side(&side);
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.stock = 6.4;
    return side;
}

static tside_fittings usual(void)
{
    tside_fittings fittings;
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    return fittings;
}

typedef struct taken {
    int count;
    tside_item item[TSIDE_ITEMS];
} taken;

static taken take(const tside_side *side, const tside_fittings *fittings)
{
    taken t;
    tside_plan plan = planned(side);
    tside_fault fault;
    ANSWERS(tside_takeoff(side, &plan, fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    return t;
}

/* The first line of a code, at either end; NULL where there is none. */
static const tside_item *line_of(const taken *t, tside_item_code code)
{
    for (int i = 0; i < t->count; i++)
        if (t->item[i].code == code)
            return t->item + i;
    return NULL;
}

static int count_of(const taken *t, tside_item_code code)
{
    int count = 0;
    for (int i = 0; i < t->count; i++)
        count += t->item[i].code == code ? t->item[i].count : 0;
    return count;
}

/* m, of all pieces of a code together */
static double length_of(const taken *t, tside_item_code code)
{
    double length = 0;
    for (int i = 0; i < t->count; i++)
        length += t->item[i].code == code ? t->item[i].count * t->item[i].length : 0;
    return length;
}

/* --- the bar's sticks --- */

static tside_bar bar_of(double past_drive, double past_free, double stock, double swage, double near)
{
    tside_side side = plain();
    side.bar.past_drive = past_drive;
    side.bar.past_free = past_free;
    side.bar.stock = stock;
    side.bar.swage = swage;
    side.bar.splice_near = near;
    return side.bar;
}

enum { MOST_STICKS = 40 };

/*
 * By hand: 0.3 m to the drive, 15 m of curtain, 0.2 m at the free end make 15.5 m. Three sticks of 6 m less 2 x 0.1 m make 17.8 m, two 11.9 m: so three, the last of
 * 15.5 - 2 x 5.9 = 3.7 m; joints begin 5.9 and 11.8 m from the drive's centre.
 */
START_TEST(sticks_by_hand)
{
    tside_bar bar = bar_of(0.3, 0.2, 6, 0.1, 0.6);
    tside_bar_stick stick[MOST_STICKS];
    tside_fault fault;
    static const double length[] = {6, 6, 3.7}, from[] = {0, 5.9, 11.8}, to[] = {6, 11.9, 15.5};
    int count;
    ANSWERS(tside_bar_sticks(&bar, 15, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 3);
    for (int i = 0; i < count; i++) {
        NEAR(stick[i].length, length[i], 1e-12, "length", i);
        NEAR(stick[i].from, from[i], 1e-12, "from", i);
        NEAR(stick[i].to, to[i], 1e-12, "to", i);
    }
}
END_TEST

/* The bar just fits whole sticks, or is a hair longer than they let pass; one stick; a rest too short to stand by itself. */
START_TEST(sticks_at_their_limits)
{
    tside_bar bar = bar_of(0.3, 0.2, 6, 0.1, 0.6);
    tside_bar_stick stick[MOST_STICKS];
    tside_fault fault;
    int count;
    ANSWERS(tside_bar_sticks(&bar, 5.5, stick, MOST_STICKS, &count, &fault)); /* 6 m, one stick */
    ck_assert_int_eq(count, 1);
    NEAR(stick[0].length, 6, 1e-12, "one stick", 0);
    ANSWERS(tside_bar_sticks(&bar, 17.8 - 0.5, stick, MOST_STICKS, &count, &fault)); /* three whole sticks */
    ck_assert_int_eq(count, 3);
    for (int i = 0; i < 3; i++)
        NEAR(stick[i].length, 6, 1e-12, "whole", i);
    /* 1e-6 m more: a fourth stick, of which the least is a swage and what stands out at the free end, 0.3 m; it is taken from the third */
    ANSWERS(tside_bar_sticks(&bar, 17.8 - 0.5 + 1e-6, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 4);
    NEAR(stick[3].length, 0.3, 1e-12, "last", 0);
    NEAR(stick[2].to, 17.8 + 1e-6 - 0.2, 1e-9, "the last joint ends with the curtain", 0);
    NEAR(stick[1].length, 6, 0, "whole", 1);
    /* two sticks, and the last would be a stub: the first is cut */
    ANSWERS(tside_bar_sticks(&bar, 5.6, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 2);
    NEAR(stick[0].length, 5.9, 1e-12, "first", 0);
    NEAR(stick[1].length, 0.3, 1e-12, "last", 0);
    bar.stock = 100;
    ANSWERS(tside_bar_sticks(&bar, 1000, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 11);
    /* no curtain, no swage */
    bar = bar_of(0, 0, 1, 0, 0);
    ANSWERS(tside_bar_sticks(&bar, 3, stick, MOST_STICKS, &count, &fault));
    ck_assert_int_eq(count, 3);
    ANSWERS(tside_bar_sticks(&bar, 0, stick, MOST_STICKS, &count, &fault));
    ck_assert(count == 1 && stick[0].length == 0);
}
END_TEST

/* Whatever the bar: it is made, none too long, its joints where they may be, and fewer sticks would not do. */
START_TEST(sticks_make_the_bar)
{
    dice d = {11};
    int joined = 0, refused = 0, shifted = 0;
    for (int n = 0; n < 20000; n++) {
        double w = dice_between(&d, 0, 0.3), near = dice_between(&d, 0, 2), past_drive = dice_between(&d, 0, 0.6), past_free = dice_between(&d, 0, 0.6);
        double S = dice_between(&d, 1, 8), curtain = dice_between(&d, 0, 25), B = past_drive + curtain + past_free, made = 0;
        tside_bar bar = bar_of(past_drive, past_free, S, w, near);
        tside_bar_stick stick[200];
        tside_fault fault;
        int count;
        if (tside_bar_sticks(&bar, curtain, stick, 200, &count, &fault) != TSIDE_OK) {
            if (fault.status != TSIDE_CONTRADICTS || strcmp(fault.field, "bar.stock") || !(B > S) || !(S < fault.bound))
                ck_abort_msg("%d: refused for %s", n, fault.field);
            bar.stock = fault.bound; /* what it says does */
            ANSWERS(tside_bar_sticks(&bar, curtain, stick, 200, &count, &fault));
            refused++;
            continue;
        }
        for (int i = 0; i < count; i++) {
            made += stick[i].length;
            if (!(stick[i].length <= S + 1e-9) || !(stick[i].length > 0) || fabs(stick[i].to - stick[i].from - stick[i].length) > 1e-12)
                ck_abort_msg("%d: stick %d of %g", n, i, stick[i].length);
            if (i && (fabs(stick[i - 1].to - stick[i].from - w) > 1e-9 || stick[i].from < past_drive + near - 1e-9 || stick[i - 1].to > B - past_free + 1e-9))
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
    ck_assert_msg(joined > 5000 && refused > 500 && shifted > 100, "%d joined, %d refused, %d shifted", joined, refused, shifted);
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
    REFUSES(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault), out, TSIDE_CONTRADICTS, "bar.stock", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "bar.splice_near");
    NEAR(fault.bound, 1.2, 1e-12, "shortest stock", 0);
    ANSWERS(tside_bar_sticks(&bar, 0.6, out.stick, 3, &out.count, &fault)); /* 1.1 m: one stick has no joint to keep */
    bar.stock = 0;
    REFUSES(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS, "bar.stock", TSIDE_BELOW);
    bar.stock = 6;
    bar.swage = NAN;
    REFUSES(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS, "bar.swage", TSIDE_NOT_FINITE);
    bar.swage = 0.1;
    REFUSES(tside_bar_sticks(&bar, -1, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_BELOW);
    REFUSES(tside_bar_sticks(&bar, 1001, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_ABOVE);
    REFUSES(tside_bar_sticks(&bar, NAN, out.stick, 3, &out.count, &fault), out, TSIDE_OUT_OF_BOUNDS, "curtain", TSIDE_NOT_FINITE);
    REFUSES(tside_bar_sticks(&bar, 15, out.stick, 2, &out.count, &fault), out.stick, TSIDE_TOO_SMALL, "capacity", TSIDE_BELOW);
    ck_assert_int_eq(out.count, 3);
    ANSWERS(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault));
    bar.joints = TSIDE_JOINTS_GIVEN;
    bar.splices = 1;
    REFUSES(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault), out, TSIDE_CONTRADICTS, "bar.splices", TSIDE_ABOVE);
    bar.splices = 0;
    ANSWERS(tside_bar_sticks(&bar, 15, out.stick, 3, &out.count, &fault));
    ck_assert_int_eq(out.count, 1);
    NEAR(out.stick[0].length, 15.5, 1e-12, "whole", 0);
}
END_TEST

/* --- joints in the plan --- */

static const tside_strength_line *strength_of(const tside_plan *plan, tside_strength_code code)
{
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].code == code)
            return plan->lines + i;
    return NULL;
}

/*
 * By hand: 29.26 + 2 x 0.2286 of curtain + 0.2286 + 0.1016 = 30.0474 m; four sticks of 6.4 m less 3 x 0.1016 are 25.2952 m, five suffice; so four joints, the
 * nearest beginning 6.4 - 0.1016 - 0.2286 = 6.0698 m from the curtain's edge. The same joints, given, make the same plan.
 */
START_TEST(joints_feed_the_plan)
{
    tside_side side = plain(), as_given = side;
    tside_plan plan = planned(&side), same;
    tside_fault fault;
    const tside_strength_line *line = strength_of(&plan, TSIDE_SPLICE_SCREW);
    int index;
    ck_assert_int_eq(plan.splices, 4);
    NEAR(plan.splice_near, 6.0698, 1e-12, "nearest joint", 0);
    ck_assert(line != NULL && strength_of(&plan, TSIDE_SPLICE_SCREW_STALL) != NULL);
    NEAR(line->demand, plan.worst.per_metre * (29.7172 - 6.0698) / (side.bar.screws * side.bar.tube.diameter / 2), 1e-9, "screw", 0);
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
    ck_assert(same.splices == 0 && same.splice_near == 0 && same.lag_play == 0 && !strength_of(&same, TSIDE_SPLICE_SCREW));
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

/* --- a side's take-off, counted by hand --- */

/*
 * The plain side, right hand, both ends on extenders; its wall is plumb. With ropes, and 12 m of cord one way.
 *
 * Shut: underside 0.3 - 4 in = 0.1984 m. The roll, one wrap of 1.15 x 0.15 mm on 33.4 + 2 mm, is 35.4 + 2 x 0.1725 = 35.745 mm thick; from the fixing at 1.7 m hang
 * 1.7 - 0.1984 - 0.0178725 = 1.4837275 m; on the bar are pi (0.0354 + 0.0001725) = 0.1117543 m. Curtain: 4 in + 1.4837275 + 0.1117543 + 4 in = 1.7986818 by
 * 29.26 + 2 x 9 in = 29.7172 m. Flaps: 4 in + 1.7 - 0.1984 + 4 in = 1.7048 m, 20 in wide, one at each end.
 * Bar: 30.0474 m, five sticks, the last 30.0474 - 4 x 6.2984 = 4.8538 m. Screws: four joints of two screws on each side, 16; two in the coupling.
 * Clips: 29.7172/0.6096 = 48.75: 49 spaces, 50 clips.
 * Each end: guide, 2.5 in of chain and two links, eye bolt through the 50.8 mm tube with two nuts and washers, extender, which at the free end has the other hand; bow
 * bolt through tube, patch and bow, 50.8 + 0.25 + 48.3 = 99.35 mm, 3.911 in; member bolt through tube, two patches and member, 50.8 + 0.5 + 50.8 = 102.1 mm, 4.020 in. A
 * 5/16 in bolt needs beside it a washer of at most 0.080 in (ASME B18.21.1), a nut of at most 0.273 in (ASME B18.2.2) and two threads of 1/18 in (ASME B1.1), 0.464 in,
 * from memory: 4.375 and 4.484 in, so both are bought 4-1/2 in long. A nut and a washer to each; four patches.
 * Channel: 29.26 m are 14 lengths of 2 m and 1.26 m; each flap 1.7048 m; wire 29.26 + 2 x 1.7048 = 32.6696 m; screws 29.26/0.6096 = 47.999: 49, and
 * 1.7048/0.6096 = 2.8: 4 at each flap, 57 in all.
 * Rope: 29.26/1.2192 = 23.999: 24 pitches of 1.2191667 m, 1.4 m high: 48 legs of hypot(0.6095833, 1.4) = 1.5269551 m, and 1 m: 74.2938442 m; 25 hooks above, 24 below.
 * Cord: 12 m + 1.5 x the opening, which is what the plan says: from 0.3 m up to where the roll's top stops below the rail.
 */
START_TEST(a_side_by_hand)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    const double guide = planned(&side).drive_end.sweep.cut_length, guide_free = planned(&side).free_end.sweep.cut_length;
    const double extender = planned(&side).drive_end.layout.cut_length, extender_free = planned(&side).free_end.layout.cut_length, opening = planned(&side).opening;
    enum { SIDE = TSIDE_AT_SIDE, DRIVE = TSIDE_AT_DRIVE_END, FREE = TSIDE_AT_FREE_END };
    const double B = 0.3125 * INCH, E = 0.375 * INCH;
    const struct {
        tside_item_code code;
        int at, hand, by, count;
        double length, width, size;
    } want[] = {
        {TSIDE_ITEM_CURTAIN, SIDE, 0, TSIDE_BY_SHEET, 1, 29.7172, 1.7986818, 0},
        {TSIDE_ITEM_FLAP, SIDE, 0, TSIDE_BY_SHEET, 2, 1.7048, 20 * INCH, 0},
        {TSIDE_ITEM_BAR, SIDE, 0, TSIDE_BY_CUT, 4, 6.4, 0, 0.0334},
        {TSIDE_ITEM_BAR, SIDE, 0, TSIDE_BY_CUT, 1, 4.8538, 0, 0.0334},
        {TSIDE_ITEM_SPLICE_SCREW, SIDE, 0, TSIDE_BY_COUNT, 16, 0, 0, 0},
        {TSIDE_ITEM_COUPLING_SCREW, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, 0},
        {TSIDE_ITEM_CLIP, SIDE, 0, TSIDE_BY_COUNT, 50, 0, 0, 0},
        {TSIDE_ITEM_DRIVE, DRIVE, 0, TSIDE_BY_COUNT, 1, 0, 0, 0},
        {TSIDE_ITEM_COLLAR, FREE, 0, TSIDE_BY_COUNT, 1, 0, 0, 0},
        {TSIDE_ITEM_GUIDE, DRIVE, 0, TSIDE_BY_CUT, 1, guide, 0, 0.0334},
        {TSIDE_ITEM_CHAIN, DRIVE, 0, TSIDE_BY_LENGTH, 1, 0.0635, 0, 0},
        {TSIDE_ITEM_CHAIN_LINK, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, 0},
        {TSIDE_ITEM_EYE, DRIVE, 0, TSIDE_BY_COUNT, 1, 0.0508, 0, E},
        {TSIDE_ITEM_EYE_NUT, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, E},
        {TSIDE_ITEM_EYE_WASHER, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, E},
        {TSIDE_ITEM_EXTENDER, DRIVE, TSIDE_RIGHT_HANDED, TSIDE_BY_CUT, 1, extender, 0, 0.0508},
        {TSIDE_ITEM_BOW_BOLT, DRIVE, 0, TSIDE_BY_COUNT, 1, 4.5 * INCH, 0, B},
        {TSIDE_ITEM_MEMBER_BOLT, DRIVE, 0, TSIDE_BY_COUNT, 1, 4.5 * INCH, 0, B},
        {TSIDE_ITEM_BOLT_NUT, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, B},
        {TSIDE_ITEM_BOLT_WASHER, DRIVE, 0, TSIDE_BY_COUNT, 2, 0, 0, B},
        {TSIDE_ITEM_PATCH, DRIVE, 0, TSIDE_BY_COUNT, 4, 0, 0, 0},
        {TSIDE_ITEM_GUIDE, FREE, 0, TSIDE_BY_CUT, 1, guide_free, 0, 0.0334},
        {TSIDE_ITEM_CHAIN, FREE, 0, TSIDE_BY_LENGTH, 1, 0.0635, 0, 0},
        {TSIDE_ITEM_CHAIN_LINK, FREE, 0, TSIDE_BY_COUNT, 2, 0, 0, 0},
        {TSIDE_ITEM_EYE, FREE, 0, TSIDE_BY_COUNT, 1, 0.0508, 0, E},
        {TSIDE_ITEM_EYE_NUT, FREE, 0, TSIDE_BY_COUNT, 2, 0, 0, E},
        {TSIDE_ITEM_EYE_WASHER, FREE, 0, TSIDE_BY_COUNT, 2, 0, 0, E},
        {TSIDE_ITEM_EXTENDER, FREE, TSIDE_LEFT_HANDED, TSIDE_BY_CUT, 1, extender_free, 0, 0.0508},
        {TSIDE_ITEM_BOW_BOLT, FREE, 0, TSIDE_BY_COUNT, 1, 4.5 * INCH, 0, B},
        {TSIDE_ITEM_MEMBER_BOLT, FREE, 0, TSIDE_BY_COUNT, 1, 4.5 * INCH, 0, B},
        {TSIDE_ITEM_BOLT_NUT, FREE, 0, TSIDE_BY_COUNT, 2, 0, 0, B},
        {TSIDE_ITEM_BOLT_WASHER, FREE, 0, TSIDE_BY_COUNT, 2, 0, 0, B},
        {TSIDE_ITEM_PATCH, FREE, 0, TSIDE_BY_COUNT, 4, 0, 0, 0},
        {TSIDE_ITEM_CHANNEL, SIDE, 0, TSIDE_BY_CUT, 14, 2, 0, 0},
        {TSIDE_ITEM_CHANNEL, SIDE, 0, TSIDE_BY_CUT, 1, 1.26, 0, 0},
        {TSIDE_ITEM_CHANNEL, SIDE, 0, TSIDE_BY_CUT, 2, 1.7048, 0, 0},
        {TSIDE_ITEM_WIRE, SIDE, 0, TSIDE_BY_LENGTH, 1, 32.6696, 0, 0},
        {TSIDE_ITEM_CHANNEL_SCREW, SIDE, 0, TSIDE_BY_COUNT, 57, 0, 0, 0},
        {TSIDE_ITEM_ROPE, SIDE, 0, TSIDE_BY_LENGTH, 1, 74.2938442, 0, 0},
        {TSIDE_ITEM_HOOK, SIDE, 0, TSIDE_BY_COUNT, 49, 0, 0, 0},
        {TSIDE_ITEM_CORD, DRIVE, 0, TSIDE_BY_LENGTH, 1, 12 + 1.5 * opening, 0, 0},
    };
    taken t;
    side.ropes = TSIDE_ROPES;
    fittings.cord_given = 1;
    fittings.cord = 12;
    t = take(&side, &fittings);
    ck_assert_int_eq(t.count, (int)(sizeof want / sizeof *want));
    for (int i = 0; i < t.count; i++) {
        const tside_item *got = t.item + i;
        if ((int)got->code != (int)want[i].code || (int)got->at != want[i].at || (int)got->hand != want[i].hand || (int)got->by != want[i].by || got->count != want[i].count)
            ck_abort_msg("line %d: %s, at %d, hand %d, by %d, count %d", i, tside_item_text((int)got->code), (int)got->at, (int)got->hand, (int)got->by, got->count);
        NEAR(got->length, want[i].length, 5e-8, tside_item_text((int)got->code), i);
        NEAR(got->width, want[i].width, 5e-8, tside_item_text((int)got->code), i);
        NEAR(got->size, want[i].size, 1e-12, tside_item_text((int)got->code), i);
        ck_assert((got->shape != TSIDE_NO_TUBE) == (got->code == TSIDE_ITEM_BAR || got->code == TSIDE_ITEM_GUIDE || got->code == TSIDE_ITEM_EXTENDER));
    }
    /* pieces of tube say which, and from what they are cut */
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->material.grade == TSIDE_A53_B && line_of(&t, TSIDE_ITEM_BAR)->shape == TSIDE_ROUND_TUBE);
    ck_assert(line_of(&t, TSIDE_ITEM_EXTENDER)->material.grade == TSIDE_A500_B_SHAPED && line_of(&t, TSIDE_ITEM_EXTENDER)->shape == TSIDE_SQUARE_TUBE);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)->wall, 0.0025, 0, "wall of the bar", 0);
    NEAR(line_of(&t, TSIDE_ITEM_GUIDE)->wall, 0.00165, 0, "wall of the guide", 0);
    NEAR(line_of(&t, TSIDE_ITEM_EXTENDER)->wall, 0.003, 0, "wall of the extender", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)->stock, 6.4, 0, "stock of the bar", 0);
    NEAR(line_of(&t, TSIDE_ITEM_GUIDE)->stock, 21 * 12 * INCH, 1e-12, "stock of guides", 0);
    NEAR(line_of(&t, TSIDE_ITEM_EXTENDER)->stock, 6, 0, "stock of extenders", 0);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)->stock, 2, 0, "stock of channel", 0);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->stock_given && line_of(&t, TSIDE_ITEM_GUIDE)->stock_given && !line_of(&t, TSIDE_ITEM_CURTAIN)->stock_given);
}
END_TEST

/* The opposite side is the mirror: the same pieces, the extenders of the other hand. */
START_TEST(mirrored)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken right = take(&side, &fittings), left;
    int handed = 0;
    side.hand = TSIDE_LEFT;
    left = take(&side, &fittings);
    ck_assert_int_eq(left.count, right.count);
    for (int i = 0; i < left.count; i++) {
        tside_item_hand was = right.item[i].hand;
        ck_assert(left.item[i].hand == (was == TSIDE_UNHANDED ? was : was == TSIDE_RIGHT_HANDED ? TSIDE_LEFT_HANDED : TSIDE_RIGHT_HANDED));
        handed += was != TSIDE_UNHANDED;
        left.item[i].hand = was;
        ck_assert_mem_eq(left.item + i, right.item + i, sizeof right.item[i]);
    }
    ck_assert_int_eq(handed, 2);
}
END_TEST

/* Twice as long a side: what is counted by length doubles, what belongs to its ends stays. */
START_TEST(twice_the_side)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken once, twice;
    side.ropes = TSIDE_ROPES;
    side.length = 24.384; /* 80 ft: 20 spaces of 4 ft, and of clips with no curtain past the bows 40 of 2 ft */
    side.curtain.past = 0;
    fittings.end_flaps = 0;
    fittings.channel_stock = 24.384;
    once = take(&side, &fittings);
    side.length *= 2;
    twice = take(&side, &fittings);
    ck_assert(count_of(&once, TSIDE_ITEM_CLIP) == 41 && count_of(&twice, TSIDE_ITEM_CLIP) == 81);
    ck_assert(count_of(&once, TSIDE_ITEM_HOOK) == 41 && count_of(&twice, TSIDE_ITEM_HOOK) == 81);
    ck_assert(count_of(&once, TSIDE_ITEM_CHANNEL_SCREW) == 41 && count_of(&twice, TSIDE_ITEM_CHANNEL_SCREW) == 81);
    ck_assert(count_of(&once, TSIDE_ITEM_CHANNEL) == 1 && count_of(&twice, TSIDE_ITEM_CHANNEL) == 2);
    NEAR(length_of(&twice, TSIDE_ITEM_ROPE) - 1, 2 * (length_of(&once, TSIDE_ITEM_ROPE) - 1), 1e-9, "rope", 0);
    NEAR(length_of(&twice, TSIDE_ITEM_WIRE), 2 * length_of(&once, TSIDE_ITEM_WIRE), 1e-9, "wire", 0);
    NEAR(length_of(&twice, TSIDE_ITEM_CURTAIN), 2 * length_of(&once, TSIDE_ITEM_CURTAIN), 1e-9, "curtain", 0);
    NEAR(line_of(&twice, TSIDE_ITEM_CURTAIN)->width, line_of(&once, TSIDE_ITEM_CURTAIN)->width, 1e-12, "its width", 0);
    NEAR(length_of(&twice, TSIDE_ITEM_GUIDE), length_of(&once, TSIDE_ITEM_GUIDE), 1e-9, "guides", 0);
    /* every second bow: half the hooks of a row */
    fittings.rope_every = 2;
    twice = take(&side, &fittings);
    ck_assert_int_eq(count_of(&twice, TSIDE_ITEM_HOOK), 41);
}
END_TEST

/* Sums: sticks less swages are the bar; channel is as long as side and flaps; what the curtain must cover, it covers. */
START_TEST(sums)
{
    dice d = {5};
    for (int n = 0; n < 60; n++) {
        tside_side side = plain();
        tside_fittings fittings = usual();
        tside_plan plan;
        taken t;
        side.length = dice_between(&d, 5, 60);
        side.curtain.past = dice_between(&d, 0, 0.4);
        side.bar.stock = dice_between(&d, 2, 8);
        side.stops.wraps_shut = dice_between(&d, 0, 3);
        fittings.channel_stock = dice_between(&d, 0.5, 4);
        fittings.clip_spacing = dice_between(&d, 0.3, 1);
        fittings.end_flaps = dice_below(&d, 3);
        plan = planned(&side);
        t = take(&side, &fittings);
        NEAR(length_of(&t, TSIDE_ITEM_BAR) - plan.splices * side.bar.swage, plan.bar_length, 1e-9, "bar", n);
        ck_assert_int_eq(count_of(&t, TSIDE_ITEM_BAR), plan.splices + 1);
        NEAR(length_of(&t, TSIDE_ITEM_CHANNEL), side.length + length_of(&t, TSIDE_ITEM_FLAP), 1e-9, "channel", n);
        NEAR(length_of(&t, TSIDE_ITEM_CHANNEL), length_of(&t, TSIDE_ITEM_WIRE), 1e-9, "wire", n);
        NEAR(line_of(&t, TSIDE_ITEM_CURTAIN)->width - fittings.rail_allowance - fittings.hem - plan.shut.hanging,
             PI * side.stops.wraps_shut * (0.0354 + 1.15 * 0.00015 * side.stops.wraps_shut), 1e-9, "wraps", n);
        ck_assert((count_of(&t, TSIDE_ITEM_CLIP) - 1) * fittings.clip_spacing >= plan.curtain_length - 1e-9);
        ck_assert((count_of(&t, TSIDE_ITEM_CLIP) - 2) * fittings.clip_spacing < plan.curtain_length);
        for (int i = 0; i < t.count; i++)
            if (t.item[i].stock_given && t.item[i].length > t.item[i].stock + 1e-9)
                ck_abort_msg("%d: %s of %g from %g", n, tside_item_text((int)t.item[i].code), t.item[i].length, t.item[i].stock);
    }
}
END_TEST

/* Whole lengths stand on one line, the last with them where it is whole; a bar whose last two are cut has three. */
START_TEST(pieces_alike_stand_together)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken t;
    int lines = 0;
    side.length = 4 * 6.4 - 3 * 0.1016 - 3 * 0.2286 - 0.1016; /* past the bows 2 x 9 in, to the drive 9 in, at the free end 4 in: four whole sticks */
    fittings.channel_stock = side.length / 5;
    fittings.end_flaps = 0;
    t = take(&side, &fittings);
    for (int i = 0; i < t.count; i++)
        lines += t.item[i].code == TSIDE_ITEM_BAR || t.item[i].code == TSIDE_ITEM_CHANNEL;
    ck_assert_int_eq(lines, 2);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->count == 4 && line_of(&t, TSIDE_ITEM_CHANNEL)->count == 5);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)->length, 6.4, 1e-9, "whole", 0);
    side.length += 0.05; /* a fifth, 4 in past its joint, 2 in of which the fourth gives up */
    t = take(&side, &fittings);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)[0].count == 3 && line_of(&t, TSIDE_ITEM_BAR)[1].count == 1 && line_of(&t, TSIDE_ITEM_BAR)[2].count == 1);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[0].length, 6.4, 0, "whole", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[1].length, 6.4 - (0.2032 - 0.1516), 1e-9, "last but one", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[2].length, 0.2032, 1e-9, "last", 0);
}
END_TEST

/* The least that a cut plan takes as a piece. */
static double shortest(void)
{
    tside_place place;
    tside_fault fault;
    ANSWERS(tside_field_find(TSIDE_KIND_CUT, "length", &place, &fault));
    return place.field->low;
}

/* 105 ft are 32.004 m: 16 lengths of 2 m and 4 mm. The last of them and the rest are two pieces of 1.002 m. */
START_TEST(no_stub_of_channel)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken t;
    side.length = 105 * 12 * INCH;
    fittings.end_flaps = 0;
    t = take(&side, &fittings);
    ck_assert(line_of(&t, TSIDE_ITEM_CHANNEL)[0].count == 15 && line_of(&t, TSIDE_ITEM_CHANNEL)[1].count == 2);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)[0].length, 2, 0, "whole", 0);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)[1].length, 1.002, 1e-9, "halves", 0);
    /* a rest that can be cut stays one, and 1e-6 m less does not */
    side.length = 32 + shortest() + 1e-6;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)[1].length, shortest(), 2e-6, "rest", 0);
    side.length = 32 + shortest() - 1e-6;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)[1].length, 1 + shortest() / 2, 2e-6, "halves", 1);
}
END_TEST

/* Flaps too, and bars that are butted, not swaged: whatever their lengths, no piece is too short for the cut plan, and all is covered. */
START_TEST(no_stub_of_anything)
{
    for (int n = 0; n < 300; n++) {
        tside_side side = plain();
        tside_fittings fittings = usual();
        taken t;
        side.length = 32 + 0.0001 * n;
        side.bar.swage = side.bar.past_free = side.bar.past_drive = side.curtain.past = 0;
        side.bar.stock = 2;
        t = take(&side, &fittings);
        fittings.channel_stock = line_of(&t, TSIDE_ITEM_FLAP)->length - 0.0001 * n - 1e-5;
        t = take(&side, &fittings);
        NEAR(length_of(&t, TSIDE_ITEM_CHANNEL), side.length + length_of(&t, TSIDE_ITEM_FLAP), 1e-9, "channel", n);
        NEAR(length_of(&t, TSIDE_ITEM_BAR), side.length, 1e-9, "bar", n);
        for (int i = 0; i < t.count; i++)
            if (t.item[i].by == TSIDE_BY_CUT && t.item[i].length < shortest())
                ck_abort_msg("%d: %s of %g", n, tside_item_text((int)t.item[i].code), t.item[i].length);
    }
}
END_TEST

/*
 * A grip of 4.04 in needs with one washer 4.504 in, so a bolt of 5 in, threaded for 2 x 5/16 + 1/4 = 7/8 in (ASME B18.5): its shank reaches 4.125 in, and washers of at
 * least 0.051 in (ASME B18.21.1, from memory) must fill 0.085 in: two.
 */
START_TEST(washers_where_the_thread_would_not_reach)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken t;
    fittings.member_depth = 4.04 * INCH - 0.0508 - 2 * fittings.patch_thickness;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_MEMBER_BOLT)->length, 5 * INCH, 1e-12, "bolt", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BOW_BOLT)->length, 4.5 * INCH, 1e-12, "the other", 0);
    ck_assert(line_of(&t, TSIDE_ITEM_BOLT_WASHER)->count == 3 && line_of(&t, TSIDE_ITEM_BOLT_NUT)->count == 2);
    /* three asked: at the bow 3.911 + 3 x 0.080 + 0.384 in is beyond 4-1/2 in too, and 0.214 in must be filled: five; at the member, 4.020 in, three fill it */
    fittings = usual();
    fittings.washers = 3;
    t = take(&side, &fittings);
    ck_assert_int_eq(line_of(&t, TSIDE_ITEM_BOLT_WASHER)->count, 8);
    /* patches of 5 mm: one at the bow, 104.1 mm or 4.098 in, two at the member, 111.6 mm or 4.394 in; 5 in for both */
    fittings = usual();
    fittings.patch_thickness = 5e-3;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_BOW_BOLT)->length, 5 * INCH, 1e-12, "over a patch", 0);
    NEAR(line_of(&t, TSIDE_ITEM_MEMBER_BOLT)->length, 5 * INCH, 1e-12, "over two", 0);
    /* metric ones in the hole of 11/32 in, 8.7 mm: M8 */
    fittings = usual();
    fittings.bolt_size = TSIDE_BOLT_M8;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_BOLT_NUT)->size, 8e-3, 1e-12, "nut", 0);
}
END_TEST

/* What a side does not have is not on the list. */
START_TEST(what_is_not_there)
{
    tside_side side = plain();
    tside_fittings fittings = usual();
    taken t = take(&side, &fittings);
    ck_assert(!line_of(&t, TSIDE_ITEM_ROPE) && !line_of(&t, TSIDE_ITEM_HOOK) && !line_of(&t, TSIDE_ITEM_CORD));
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_EXTENDER), 2);
    side.free_end.hung = TSIDE_ON_HIP;
    side.stops.gap = 0.15;
    t = take(&side, &fittings);
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_EXTENDER), 1);
    ck_assert(count_of(&t, TSIDE_ITEM_EYE) == 2 && count_of(&t, TSIDE_ITEM_GUIDE) == 2 && count_of(&t, TSIDE_ITEM_PATCH) == 4);
    side.drive_end.hung = TSIDE_ON_HIP;
    side.drive_end.guide.chain = side.free_end.guide.chain = 0;
    side.drive.kind = TSIDE_HAND;
    side.bar.stock = 40;
    fittings.cord_given = 1;
    fittings.cord = 10;
    fittings.end_flaps = fittings.patches = fittings.washers = 0;
    t = take(&side, &fittings);
    for (int i = 0; i < t.count; i++)
        switch (t.item[i].code) {
        case TSIDE_ITEM_FLAP: case TSIDE_ITEM_SPLICE_SCREW: case TSIDE_ITEM_CHAIN: case TSIDE_ITEM_CHAIN_LINK: case TSIDE_ITEM_EXTENDER: case TSIDE_ITEM_BOW_BOLT:
        case TSIDE_ITEM_MEMBER_BOLT: case TSIDE_ITEM_BOLT_NUT: case TSIDE_ITEM_BOLT_WASHER: case TSIDE_ITEM_PATCH: case TSIDE_ITEM_CORD:
            ck_abort_msg("there is a %s", tside_item_text((int)t.item[i].code));
        default: break;
        }
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_BAR), 1);
    NEAR(length_of(&t, TSIDE_ITEM_BAR), 30.0474, 1e-9, "one stick", 0);
    ck_assert(count_of(&t, TSIDE_ITEM_EYE) == 2 && line_of(&t, TSIDE_ITEM_EYE)->length == 0);
    /* joints as given: the whole bar and what they lose, by length; without any, one piece */
    side.bar.joints = TSIDE_JOINTS_GIVEN;
    side.bar.splices = 3;
    t = take(&side, &fittings);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->by == TSIDE_BY_LENGTH && !line_of(&t, TSIDE_ITEM_BAR)->stock_given);
    NEAR(length_of(&t, TSIDE_ITEM_BAR), 30.0474 + 3 * 0.1016, 1e-9, "with its swages", 0);
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_SPLICE_SCREW), 12);
    side.bar.splices = 0;
    t = take(&side, &fittings);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->by == TSIDE_BY_CUT && count_of(&t, TSIDE_ITEM_BAR) == 1);
}
END_TEST

START_TEST(takeoff_refused)
{
    tside_side side = plain();
    const tside_side good = side;
    tside_fittings fittings = usual();
    const tside_plan plan = planned(&side);
    struct {
        tside_item item[TSIDE_ITEMS];
        int count;
    } out;
    tside_fault fault;
#define TAKEOFF tside_takeoff(&side, &plan, &fittings, out.item, TSIDE_ITEMS, &out.count, &fault)
    fittings.clip_spacing = 0;
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_BOUNDS, "fittings.clip_spacing", TSIDE_BELOW);
    fittings = usual();
    fittings.cord_given = 1;
    fittings.cord = NAN;
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_BOUNDS, "fittings.cord", TSIDE_NOT_FINITE);
    fittings = usual();
    side.length = -1;
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_ABOVE);
    side = good;
    side.bar.stock = 1.01;
    REFUSES(TAKEOFF, out, TSIDE_CONTRADICTS, "bar.stock", TSIDE_BELOW);
    side = good;
    side.free_end.extender.eye_hole = 0.009;
    REFUSES(TAKEOFF, out, TSIDE_CONTRADICTS, "free_end.extender.eye_hole", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "fittings.eye_size");
    side = good;
    fittings.bolt_size = TSIDE_BOLT_3_8;
    REFUSES(TAKEOFF, out, TSIDE_CONTRADICTS, "drive_end.extender.bolt_hole", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "fittings.bolt_size");
    fittings = usual();
    fittings.member_depth = 0.34;
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_REACH, "fittings.member_depth", TSIDE_NO_RELATION);
    fittings.member_depth = 0.5; /* longer than any grip */
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_REACH, "fittings.member_depth", TSIDE_NO_RELATION);
    fittings = usual();
    side.frame.tube.diameter = 0.3;
    REFUSES(TAKEOFF, out, TSIDE_OUT_OF_REACH, "drive_end.extender.tube.side", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "fittings.bolt_size");
    side = good;
    fittings.guide_stock = 1;
    REFUSES(TAKEOFF, out, TSIDE_CONTRADICTS, "fittings.guide_stock", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "drive_end.guide");
    NEAR(fault.bound, plan.drive_end.sweep.cut_length, 1e-12, "guide", 0);
    fittings = usual();
    side.ropes = TSIDE_ROPES;
    fittings.hook_drop = -1.5;
    REFUSES(TAKEOFF, out, TSIDE_CONTRADICTS, "fittings.hook_drop", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, -1.4, 1e-12, "hooks at the hip", 0);
    fittings.hook_drop = -1.3; /* rows 0.1 m apart */
    ANSWERS(TAKEOFF);
    fittings = usual();
    ANSWERS(TAKEOFF);
    {
        int needed = out.count;
        REFUSES(tside_takeoff(&side, &plan, &fittings, out.item, needed - 1, &out.count, &fault), out.item, TSIDE_TOO_SMALL, "capacity", TSIDE_BELOW);
        ck_assert_int_eq(out.count, needed);
        ANSWERS(tside_takeoff(&side, &plan, &fittings, out.item, needed, &out.count, &fault));
    }
#undef TAKEOFF
}
END_TEST

/* --- texts, usual values --- */

START_TEST(texts_are_total)
{
    for (int code = 0; code < TSIDE_ITEM_CODES; code++) {
        ck_assert_msg(*tside_item_text(code), "%d", code);
        for (int other = 0; other < code; other++)
            ck_assert_str_ne(tside_item_text(code), tside_item_text(other));
    }
    ck_assert_str_eq(tside_item_text(-1), "");
    ck_assert_str_eq(tside_item_text(TSIDE_ITEM_CODES), "");
}
END_TEST

/* Common practice, no published source: what installers use where nothing else is said. */
START_TEST(usual_values_are_practice)
{
    tside_fittings f = usual();
    tside_bar bar;
    tside_usual(TSIDE_KIND_BAR, &bar);
    NEAR(bar.swage, 4 * INCH, 1e-12, "length lost in a swaged joint", 0);
    NEAR(bar.splice_near, 0.6, 1e-12, "no joint within this of the drive", 0);
    NEAR(f.flap_width, 20 * INCH, 1e-12, "end flap", 0);
    NEAR(f.clip_spacing, 24 * INCH, 1e-12, "clips", 0);
    NEAR(f.bow_spacing * f.rope_every, 48 * INCH, 1e-12, "rope spacing", 0);
    NEAR(f.eye_size, 3 * INCH / 8, 1e-12, "eye bolt's hole", 0);
    ck_assert(f.end_flaps == 2 && f.patches == 4);
    ck_assert(f.bolt_size == TSIDE_BOLT_5_16);
    NEAR(f.member_depth, 2 * INCH, 1e-12, "member", 0);
}
END_TEST

Suite *takeoff_suite(void);

Suite *takeoff_suite(void)
{
    Suite *suite = suite_create("takeoff");
    TCase *sticks = tcase_create("sticks"), *items = tcase_create("items");
    tcase_add_test(sticks, sticks_by_hand);
    tcase_add_test(sticks, sticks_at_their_limits);
    tcase_add_test(sticks, sticks_make_the_bar);
    tcase_add_test(sticks, sticks_refused);
    tcase_add_test(sticks, joints_feed_the_plan);
    suite_add_tcase(suite, sticks);
    tcase_add_test(items, a_side_by_hand);
    tcase_add_test(items, mirrored);
    tcase_add_test(items, twice_the_side);
    tcase_add_test(items, sums);
    tcase_add_test(items, washers_where_the_thread_would_not_reach);
    tcase_add_test(items, pieces_alike_stand_together);
    tcase_add_test(items, no_stub_of_channel);
    tcase_add_test(items, no_stub_of_anything);
    tcase_add_test(items, what_is_not_there);
    tcase_add_test(items, takeoff_refused);
    tcase_add_test(items, texts_are_total);
    tcase_add_test(items, usual_values_are_practice);
    suite_add_tcase(suite, items);
    return suite;
}
