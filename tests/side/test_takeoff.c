/* SPDX-License-Identifier: MIT */
/* The take-off against counts by hand, and its laws. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "takeoffs.h"
#include "winds.h"

Suite *takeoff_suite(void);

/* --- a side's take-off, counted by hand --- */

/*
 * The stocked side, right hand, both ends on extenders; its wall is plumb. With ropes, and 12 m of cord one way.
 *
 * Shut: underside 0.3 - 4 in = 0.1984 m. The roll, one wrap of 1.15 x 0.15 mm on 33.4 + 2 mm, is 35.4 + 2 x 0.1725
 * = 35.745 mm thick; from the fixing at 1.7 m hang 1.7 - 0.1984 - 0.0178725 = 1.4837275 m; on the bar are pi (0.0354 +
 * 0.0001725) = 0.1117543 m. Curtain: 4 in + 1.4837275 + 0.1117543 + 4 in = 1.7986818 by 29.26 + 2 x 9 in = 29.7172 m.
 * Flaps: 4 in + 1.7 - 0.1984 + 4 in = 1.7048 m, 20 in wide, one at each end. Bar: 30.0474 m, five sticks, the
 * last 30.0474 - 4 x 6.2984 = 4.8538 m. Screws: four joints of two screws on each side, 16; two in the coupling.
 * Clips: 29.7172/0.6096 = 48.75: 49 spaces, 50 clips.
 * Each end: guide, 2.5 in of chain and two links, eye bolt standing 4 in off the 50.8 mm tube and through it, 0.1524 m,
 * with two nuts and washers, extender, which at the free end has the other hand; bow bolt through tube, patch and
 * bow, 50.8 + 0.25 + 48.3 = 99.35 mm, 3.911 in; member bolt through tube, two patches and member, 50.8 + 0.5 + 50.8 =
 * 102.1 mm, 4.020 in. A 5/16 in bolt needs beside it a washer of at most 0.080 in (ASME B18.21.1), a nut of at most
 * 0.273 in (ASME B18.2.2) and two threads of 1/18 in (ASME B1.1), 0.464 in, from memory: 4.375 and 4.484 in, so both
 * are bought 4-1/2 in long. A nut and a washer to each; four patches. Channel: 29.26 m are 14 lengths of 2 m and 1.26
 * m; each flap 1.7048 m; wire 29.26 + 2 x 1.7048 = 32.6696 m; screws 29.26/0.6096 = 47.999: 49, and 1.7048/0.6096
 * = 2.8: 4 at each flap, 57 in all. Rope: 29.26/1.2192 = 23.999: 24 pitches of 1.2191667 m, 1.4 m high: 48 legs of
 * hypot(0.6095833, 1.4) = 1.5269551 m, and 1 m: 74.2938442 m; 25 hooks above, 24 below. Cord: 12 m + 1.5 x the opening,
 * which is what the plan says: from 0.3 m up to where the roll's top stops below the rail.
 */
START_TEST(a_side_by_hand)
{
    tside_side side = stocked();
    tside_fittings fittings = usual();
    const double guide = planned(&side).drive_end.sweep.cut_length,
                 guide_free = planned(&side).free_end.sweep.cut_length;
    const double extender = planned(&side).drive_end.layout.cut_length,
                 extender_free = planned(&side).free_end.layout.cut_length, opening = planned(&side).opening;
    enum { SIDE = TSIDE_AT_SIDE, DRIVE = TSIDE_AT_DRIVE_END, FREE = TSIDE_AT_FREE_END };
    const double B = 0.3125 * INCH, E = 0.625 * INCH;
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
        {TSIDE_ITEM_EYE, DRIVE, 0, TSIDE_BY_COUNT, 1, 0.1524, 0, E},
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
        {TSIDE_ITEM_EYE, FREE, 0, TSIDE_BY_COUNT, 1, 0.1524, 0, E},
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
        if ((int)got->code != (int)want[i].code || (int)got->at != want[i].at || (int)got->hand != want[i].hand ||
            (int)got->by != want[i].by || got->count != want[i].count)
            ck_abort_msg("line %d: %s, at %d, hand %d, by %d, count %d", i, tside_item_text((int)got->code),
                         (int)got->at, (int)got->hand, (int)got->by, got->count);
        NEAR(got->length, want[i].length, 5e-8, tside_item_text((int)got->code), i);
        NEAR(got->width, want[i].width, 5e-8, tside_item_text((int)got->code), i);
        NEAR(got->size, want[i].size, 1e-12, tside_item_text((int)got->code), i);
        ck_assert((got->shape != TSIDE_NO_TUBE) ==
                  (got->code == TSIDE_ITEM_BAR || got->code == TSIDE_ITEM_GUIDE || got->code == TSIDE_ITEM_EXTENDER));
    }
    /* pieces of tube say which, and from what they are cut */
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->material.grade == TSIDE_A53_B &&
              line_of(&t, TSIDE_ITEM_BAR)->shape == TSIDE_ROUND_TUBE);
    ck_assert(line_of(&t, TSIDE_ITEM_EXTENDER)->material.grade == TSIDE_A500_B_SHAPED &&
              line_of(&t, TSIDE_ITEM_EXTENDER)->shape == TSIDE_SQUARE_TUBE);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)->wall, 0.0025, 0, "wall of the bar", 0);
    NEAR(line_of(&t, TSIDE_ITEM_GUIDE)->wall, 0.00165, 0, "wall of the guide", 0);
    NEAR(line_of(&t, TSIDE_ITEM_EXTENDER)->wall, 0.003, 0, "wall of the extender", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)->stock, 6.4, 0, "stock of the bar", 0);
    NEAR(line_of(&t, TSIDE_ITEM_GUIDE)->stock, 21 * 12 * INCH, 1e-12, "stock of guides", 0);
    NEAR(line_of(&t, TSIDE_ITEM_EXTENDER)->stock, 6, 0, "stock of extenders", 0);
    NEAR(line_of(&t, TSIDE_ITEM_CHANNEL)->stock, 2, 0, "stock of channel", 0);
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->stock_given && line_of(&t, TSIDE_ITEM_GUIDE)->stock_given &&
              !line_of(&t, TSIDE_ITEM_CURTAIN)->stock_given);
}
END_TEST

/*
 * By hand, steel 7850 kg/m3: bar 33.4 x 2.5 mm, pi (33.4 - 2.5) 2.5 = 242.688 mm2, 1.905101 kg/m, 30.0474 m and four
 * swages of 4 in are 30.4538 m; guides 33.4 x 1.65 mm, pi 31.75 x 1.65 = 164.580 mm2, 1.291954 kg/m. Square 50.8 x 3
 * mm, corners 6 and 3 mm outside and inside by EN 10219-2: 4 x 3 x 47.8 - (4 - pi)(36 - 9) = 550.4230 mm2, 4.320821
 * kg/m. Sheets by their area; the clips together are what the side says of a metre, along the curtain.
 */
START_TEST(masses_by_hand)
{
    tside_side side = stocked();
    const tside_fittings fittings = usual();
    const taken t = take(&side, &fittings);
    double bar = 0, clips = 0;
    for (int i = 0; i < t.count; i++) {
        const tside_item *got = t.item + i;
        ck_assert(got->mass_given ? got->mass > 0 : got->mass == 0);
        bar += got->code == TSIDE_ITEM_BAR ? got->count * got->mass : 0;
        clips += got->code == TSIDE_ITEM_CLIP ? got->count * got->mass : 0;
        if (got->code == TSIDE_ITEM_GUIDE)
            NEAR(got->mass / got->length, 1.291954, 5e-6, "guide", i);
        if (got->code == TSIDE_ITEM_EXTENDER)
            NEAR(got->mass / got->length, 4.320821, 5e-6, "extender", i);
        if (got->by == TSIDE_BY_SHEET)
            NEAR(got->mass, side.curtain.areal_mass * got->width * got->length, 1e-12, "sheet", i);
    }
    NEAR(bar, 1.905101 * 30.4538, 5e-5, "bar", 0);
    NEAR(clips, side.bar.clip_mass * 29.7172, 1e-9, "clips", 0);
    ck_assert(line_of(&t, TSIDE_ITEM_DRIVE)->mass == side.drive.mass &&
              line_of(&t, TSIDE_ITEM_COLLAR)->mass == side.collar.mass);
    ck_assert(!line_of(&t, TSIDE_ITEM_CHAIN)->mass_given && !line_of(&t, TSIDE_ITEM_CHANNEL)->mass_given);
    side.collar.mass = side.curtain.areal_mass = 0;
    ck_assert(!line_of((const taken[]){take(&side, &fittings)}, TSIDE_ITEM_COLLAR)->mass_given);
}
END_TEST

/* The opposite side is the mirror: the same pieces, the extenders of the other hand. */
START_TEST(mirrored)
{
    tside_side side = stocked();
    tside_fittings fittings = usual();
    taken right = take(&side, &fittings), left;
    int handed = 0;
    side.hand = TSIDE_LEFT;
    left = take(&side, &fittings);
    ck_assert_int_eq(left.count, right.count);
    for (int i = 0; i < left.count; i++) {
        tside_item_hand was = right.item[i].hand;
        ck_assert(left.item[i].hand == (was == TSIDE_UNHANDED       ? was
                                        : was == TSIDE_RIGHT_HANDED ? TSIDE_LEFT_HANDED
                                                                    : TSIDE_RIGHT_HANDED));
        handed += was != TSIDE_UNHANDED;
        left.item[i].hand = was;
        ck_assert_mem_eq(left.item + i, right.item + i, sizeof right.item[i]);
    }
    ck_assert_int_eq(handed, 2);
}
END_TEST

/* Where it is known how ropes run, the plan counts them, and anchors have a line of their own. */
START_TEST(ropes_are_those_of_the_plan)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = stocked();
        tside_fittings fittings = usual();
        tside_plan plan;
        taken t;
        string_ropes(&side, run ? TSIDE_ZIGZAG_ROPE : TSIDE_STRAIGHT_ROPES);
        side.rope.pitch = side.length / 20;
        t = take(&side, &fittings);
        plan = planned(&side);
        ck_assert(count_of(&t, TSIDE_ITEM_HOOK) == 21 && count_of(&t, TSIDE_ITEM_ANCHOR) == (run ? 20 : 21));
        NEAR(length_of(&t, TSIDE_ITEM_ROPE), plan.rope.bears.rope_length, 0, "rope", run);
        fittings.rope_every = 2;
        ck_assert_int_eq(count_of(&t, TSIDE_ITEM_HOOK), 21);
    }
}
END_TEST

/* Twice as long a side: what is counted by length doubles, what belongs to its ends stays. */
START_TEST(twice_the_side)
{
    tside_side side = stocked();
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

/*
 * Sums: sticks less swages are the bar; channel is as long as side and flaps; what the curtain must cover, it covers.
 */
START_TEST(sums)
{
    dice d = {5};
    for (int n = 0; n < 60; n++) {
        tside_side side = stocked();
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
            if (!t.item[i].stock_given)
                ck_assert(t.item[i].stock == 0);
            else if (t.item[i].length > t.item[i].stock + 1e-9)
                ck_abort_msg("%d: %s of %g from %g", n, tside_item_text((int)t.item[i].code), t.item[i].length,
                             t.item[i].stock);
    }
}
END_TEST

/* Whole lengths stand on one line, the last with them where it is whole; a bar whose last two are cut has three. */
START_TEST(pieces_alike_stand_together)
{
    tside_side side = stocked();
    tside_fittings fittings = usual();
    taken t;
    int lines = 0;
    side.length = 4 * 6.4 - 3 * 0.1016 - 3 * 0.2286 -
                  0.1016; /* past the bows 2 x 9 in, to the drive 9 in, at the free end 4 in: four whole sticks */
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
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)[0].count == 3 && line_of(&t, TSIDE_ITEM_BAR)[1].count == 1 &&
              line_of(&t, TSIDE_ITEM_BAR)[2].count == 1);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[0].length, 6.4, 0, "whole", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[1].length, 6.4 - (0.2032 - 0.1516), 1e-9, "last but one", 0);
    NEAR(line_of(&t, TSIDE_ITEM_BAR)[2].length, 0.2032, 1e-9, "last", 0);
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
    NEAR(f.eye_size, 5 * INCH / 8, 1e-12, "eye bolt, this library's choice", 0);
    ck_assert(f.end_flaps == 2 && f.patches == 4);
    ck_assert(f.bolt_size == TSIDE_BOLT_5_16);
    NEAR(f.member_depth, 2 * INCH, 1e-12, "member", 0);
}
END_TEST

/* A plan is of the side that it was made of: a tube that is all wall, put in after, weighs nothing that is known. */
START_TEST(a_tube_that_contradicts_itself_has_no_mass)
{
    tside_side side = stocked();
    const tside_plan plan = planned(&side);
    const tside_fittings fittings = usual();
    taken t;
    tside_fault fault;
    ANSWERS(tside_takeoff(&side, &plan, &fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->mass > 0);
    side.bar.tube.wall = 0.6 * side.bar.tube.diameter;
    ANSWERS(tside_takeoff(&side, &plan, &fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->mass == 0);
    side = stocked();
    side.bar.material.grade = TSIDE_6061_T6; /* of a steel bar */
    ANSWERS(tside_takeoff(&side, &plan, &fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    ck_assert(line_of(&t, TSIDE_ITEM_BAR)->mass == 0 && !line_of(&t, TSIDE_ITEM_BAR)->mass_given);
    ck_assert(line_of(&t, TSIDE_ITEM_EXTENDER)->mass > 0);
    side = stocked();
    side.drive_end.extender.tube.wall = 0.6 * side.drive_end.extender.tube.side;
    ANSWERS(tside_takeoff(&side, &plan, &fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    ck_assert(line_of(&t, TSIDE_ITEM_EXTENDER)->mass == 0 && line_of(&t, TSIDE_ITEM_BAR)->mass > 0);
}
END_TEST

Suite *takeoff_suite(void)
{
    Suite *suite = suite_create("takeoff");
    TCase *tcase = tcase_create("takeoff");
    tcase_add_test(tcase, a_side_by_hand);
    tcase_add_test(tcase, masses_by_hand);
    tcase_add_test(tcase, mirrored);
    tcase_add_test(tcase, ropes_are_those_of_the_plan);
    tcase_add_test(tcase, twice_the_side);
    tcase_add_test(tcase, sums);
    tcase_add_test(tcase, pieces_alike_stand_together);
    tcase_add_test(tcase, texts_are_total);
    tcase_add_test(tcase, usual_values_are_practice);
    tcase_add_test(tcase, a_tube_that_contradicts_itself_has_no_mass);
    suite_add_tcase(suite, tcase);
    return suite;
}
