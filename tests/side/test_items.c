/* SPDX-License-Identifier: MIT */
/* What a take-off lists and what it leaves out: stubs, washers, what is not there; and what it refuses. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "sides.h"
#include "takeoffs.h"

Suite *items_suite(void);

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
    tside_side side = stocked();
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
    /* and a side, invented, that is shorter than any piece has the shortest */
    side.length = shortest() / 2;
    side.bar.splices = 0;
    t = take(&side, &fittings);
    ck_assert_int_eq(line_of(&t, TSIDE_ITEM_CHANNEL)->count, 1);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)->length, shortest(), 0, "shortest", 0);
}
END_TEST

/*
 * Flaps too, and bars that are butted, not swaged: whatever their lengths, no piece is too short for the cut plan, and
 * all is covered.
 */
START_TEST(no_stub_of_anything)
{
    for (int n = 0; n < 300; n++) {
        tside_side side = stocked();
        tside_fittings fittings = usual();
        taken t;
        side.length = 32 + 0.0001 * n;
        side.bar.swage = side.bar.past_free = side.bar.past_drive = side.curtain.past = side.drive.half_length =
            side.drive.clearance = 0;
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
 * A grip of 4.04 in needs with one washer 4.504 in, so a bolt of 5 in, threaded for 2 x 5/16 + 1/4 = 7/8 in (ASME
 * B18.5): its shank reaches 4.125 in, and washers of at least 0.051 in (ASME B18.21.1, from memory) must fill 0.085 in:
 * two.
 */
START_TEST(washers_where_the_thread_would_not_reach)
{
    tside_side side = stocked();
    tside_fittings fittings = usual();
    taken t;
    fittings.member_depth = 4.04 * INCH - 0.0508 - 2 * fittings.patch_thickness;
    t = take(&side, &fittings);
    NEAR(line_of(&t, TSIDE_ITEM_MEMBER_BOLT)->length, 5 * INCH, 1e-12, "bolt", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BOW_BOLT)->length, 4.5 * INCH, 1e-12, "the other", 0);
    ck_assert(line_of(&t, TSIDE_ITEM_BOLT_WASHER)->count == 3 && line_of(&t, TSIDE_ITEM_BOLT_NUT)->count == 2);
    /*
     * three asked: at the bow 3.911 + 3 x 0.080 + 0.384 in is beyond 4-1/2 in too, and 0.214 in must be filled: five;
     * at the member, 4.020 in, three fill it
     */
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

/* The bolt that a grip asks for, apart from the list: with more washers where the thread would not reach. */
static tside_bolt_plan bolt_for(const tside_fittings *f, double grip, int *washers)
{
    tside_bolt bolt;
    tside_bolt_plan plan;
    tside_fault fault;
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    bolt.size = f->bolt_size;
    bolt.washer = f->washer;
    bolt.grip = grip;
    for (bolt.washers = f->washers; tside_bolt_choose(&bolt, &plan, &fault) != TSIDE_OK; bolt.washers++)
        ck_assert(fault.status == TSIDE_CONTRADICTS);
    *washers = bolt.washers;
    return plan;
}

static void is_for_grip(const taken *t, tside_item_code code, const tside_bolt_plan *bolt, int number)
{
    const tside_item *line = line_of(t, code);
    NEAR(line->length, bolt->length, 1e-12, "length", number);
    NEAR(line->size, bolt->diameter, 1e-12, "size", number);
}

/* Of whatever tube, bow, member and bolt: what is listed is what tside_bolt_choose chooses for the grip. */
START_TEST(bolts_are_those_for_their_grips)
{
    dice d = {20261128};
    for (int n = 0; n < 300; n++) {
        tside_side side = stocked();
        tside_fittings fittings = usual();
        tside_bolt_plan bow, member;
        taken t;
        int washers[2], metric = dice_below(&d, 2);
        tside_extender *tubes[] = {&side.drive_end.extender, &side.free_end.extender};
        double B = dice_between(&d, 0.045, 0.065);
        tside_usual_in(TSIDE_KIND_FITTINGS, (tside_hardware)metric, &fittings);
        fittings.bolt_size = (tside_bolt_size)((metric ? TSIDE_BOLT_M6 : TSIDE_BOLT_1_4) + dice_below(&d, 4));
        fittings.washer = (tside_washer)dice_below(&d, 2);
        fittings.washers = dice_below(&d, 3);
        fittings.member_depth = dice_between(&d, 0.02, 0.09);
        fittings.patch_thickness = dice_between(&d, 0, 0.001);
        side.frame.tube.diameter = dice_between(&d, 0.035, 0.06);
        for (int i = 0; i < 2; i++) {
            tubes[i]->tube.side = B;
            tubes[i]->bolt_hole = tubes[i]->eye_hole = 0.018;
        }
        bow = bolt_for(&fittings, B + fittings.patch_thickness + side.frame.tube.diameter, washers);
        member = bolt_for(&fittings, B + 2 * fittings.patch_thickness + fittings.member_depth, washers + 1);
        t = take(&side, &fittings);
        is_for_grip(&t, TSIDE_ITEM_BOW_BOLT, &bow, n);
        is_for_grip(&t, TSIDE_ITEM_MEMBER_BOLT, &member, n);
        ck_assert_int_eq(count_of(&t, TSIDE_ITEM_BOLT_WASHER), 2 * (washers[0] + washers[1]));
    }
}
END_TEST

/* What a side does not have is not on the list. */
START_TEST(what_is_not_there)
{
    tside_side side = stocked();
    tside_fittings fittings = usual();
    taken t = take(&side, &fittings);
    ck_assert(!line_of(&t, TSIDE_ITEM_ROPE) && !line_of(&t, TSIDE_ITEM_HOOK) && !line_of(&t, TSIDE_ITEM_CORD));
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_EXTENDER), 2);
    side.free_end.extender.stock_given = 0;
    t = take(&side, &fittings);
    for (int i = 0; i < t.count; i++)
        ck_assert_msg(t.item[i].stock_given || t.item[i].stock == 0, "%s is cut from a stock that nobody gave",
                      tside_item_text((int)t.item[i].code));
    side.free_end.hung = TSIDE_ON_HIP;
    side.stops.gap = 0.15;
    t = take(&side, &fittings);
    ck_assert_int_eq(count_of(&t, TSIDE_ITEM_EXTENDER), 1);
    ck_assert(count_of(&t, TSIDE_ITEM_EYE) == 2 && count_of(&t, TSIDE_ITEM_GUIDE) == 2 &&
              count_of(&t, TSIDE_ITEM_PATCH) == 4);
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
        case TSIDE_ITEM_FLAP:
        case TSIDE_ITEM_SPLICE_SCREW:
        case TSIDE_ITEM_CHAIN:
        case TSIDE_ITEM_CHAIN_LINK:
        case TSIDE_ITEM_EXTENDER:
        case TSIDE_ITEM_BOW_BOLT:
        case TSIDE_ITEM_MEMBER_BOLT:
        case TSIDE_ITEM_BOLT_NUT:
        case TSIDE_ITEM_BOLT_WASHER:
        case TSIDE_ITEM_PATCH:
        case TSIDE_ITEM_CORD: ck_abort_msg("there is a %s", tside_item_text((int)t.item[i].code));
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

/* What is over its stock by what counts as none is as long as that. */
START_TEST(no_piece_is_longer_than_its_stock)
{
    for (int i = 0; i < 40; i++)
        for (int pieces = 2; pieces < 150; pieces += 7) {
            tside_side side = stocked();
            tside_fittings fittings = usual();
            taken t;
            fittings.channel_stock = 1.8 + i * 0.0123456789012;
            side.length = pieces * fittings.channel_stock + 1e-9;
            t = take(&side, &fittings);
            for (int k = 0; k < t.count; k++)
                if (t.item[k].by == TSIDE_BY_CUT && t.item[k].stock_given)
                    ck_assert_msg(t.item[k].length <= t.item[k].stock, "%s of %.17g from %.17g",
                                  tside_item_text((int)t.item[k].code), t.item[k].length, t.item[k].stock);
        }
}
END_TEST

/* A list that holds just what there is does; one shorter is told how many there are, and stays as it was. */
START_TEST(a_list_just_long_enough_is)
{
    tside_side side = stocked();
    const tside_plan plan = planned(&side);
    const tside_fittings fittings = usual();
    tside_item whole[TSIDE_ITEMS], part[TSIDE_ITEMS], before[TSIDE_ITEMS];
    tside_fault fault;
    int count, needed = -1;
    ANSWERS(tside_takeoff(&side, &plan, &fittings, whole, TSIDE_ITEMS, &count, &fault));
    memset(part, 0xa5, sizeof part);
    memcpy(before, part, sizeof part);
    ck_assert_int_eq(tside_takeoff(&side, &plan, &fittings, part, count - 1, &needed, &fault), TSIDE_TOO_SMALL);
    ck_assert(needed == count && !memcmp(part, before, sizeof part));
    ANSWERS(tside_takeoff(&side, &plan, &fittings, part, count, &needed, &fault));
    ck_assert(needed == count && !memcmp(part, whole, (size_t)count * sizeof *part) &&
              !memcmp(part + count, before + count, (size_t)(TSIDE_ITEMS - count) * sizeof *part));
}
END_TEST

START_TEST(takeoff_refused)
{
    tside_side side = stocked();
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
    ck_assert_int_eq(tside_takeoff(&side, &plan, &fittings, out.item, TSIDE_ITEMS, &out.count, NULL),
                     TSIDE_CONTRADICTS);
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
        REFUSES(tside_takeoff(&side, &plan, &fittings, out.item, needed - 1, &out.count, &fault), out.item,
                TSIDE_TOO_SMALL, "capacity", TSIDE_BELOW);
        ck_assert_int_eq(out.count, needed);
        ANSWERS(tside_takeoff(&side, &plan, &fittings, out.item, needed, &out.count, &fault));
    }
#undef TAKEOFF
}
END_TEST

Suite *items_suite(void)
{
    Suite *suite = suite_create("items");
    TCase *tcase = tcase_create("items");
    tcase_add_test(tcase, washers_where_the_thread_would_not_reach);
    tcase_add_test(tcase, bolts_are_those_for_their_grips);
    tcase_add_test(tcase, no_stub_of_channel);
    tcase_add_test(tcase, no_stub_of_anything);
    tcase_add_test(tcase, what_is_not_there);
    tcase_add_test(tcase, no_piece_is_longer_than_its_stock);
    tcase_add_test(tcase, a_list_just_long_enough_is);
    tcase_add_test(tcase, takeoff_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
