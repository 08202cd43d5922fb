/* SPDX-License-Identifier: MIT */
/*
 * A supplier's quotation, as its own program makes it: two sides of an invented house are planned, taken off, cut from
 * stock, and multiplied by the supplier's prices, invented too. Money is in whole cents. Each length is rounded up to a
 * millimetre, each area to a thousandth of a square metre, each line to the nearest cent, halves up; the total is the
 * sum of rounded lines. For choosing parts, not a certificate.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <tunnelside.h>

enum { MOST_LINES = 2 * TSIDE_ITEMS, MOST_STICKS = 200 };

/* Cents for a piece, a metre (of stock, for what is cut), or a square metre; 0 where there is no price. */
static const long long prices[TSIDE_ITEM_CODES] = {
    [TSIDE_ITEM_CURTAIN] = 185,     [TSIDE_ITEM_FLAP] = 185,          [TSIDE_ITEM_BAR] = 540,
    [TSIDE_ITEM_SPLICE_SCREW] = 12, [TSIDE_ITEM_COUPLING_SCREW] = 12, [TSIDE_ITEM_CLIP] = 95,
    [TSIDE_ITEM_DRIVE] = 21500,     [TSIDE_ITEM_COLLAR] = 1450,       [TSIDE_ITEM_GUIDE] = 540,
    [TSIDE_ITEM_CHAIN] = 620,       [TSIDE_ITEM_CHAIN_LINK] = 140,    [TSIDE_ITEM_EYE] = 385,
    [TSIDE_ITEM_EYE_NUT] = 18,      [TSIDE_ITEM_EYE_WASHER] = 9,      [TSIDE_ITEM_EXTENDER] = 1180,
    [TSIDE_ITEM_BOW_BOLT] = 165,    [TSIDE_ITEM_MEMBER_BOLT] = 165,   [TSIDE_ITEM_BOLT_NUT] = 14,
    [TSIDE_ITEM_BOLT_WASHER] = 7,   [TSIDE_ITEM_PATCH] = 30,          [TSIDE_ITEM_CHANNEL] = 260,
    [TSIDE_ITEM_WIRE] = 70,         [TSIDE_ITEM_CHANNEL_SCREW] = 6,
};

static void need(tside_status status, const tside_fault *fault)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(fault, sentence, sizeof sentence);
    fprintf(stderr, "quote: %s\n", sentence);
    exit(1);
}

static void measure(tside_side *side, tside_hand hand)
{
    tside_usual(TSIDE_KIND_SIDE, side);
    side->hand = hand;
    side->length = 30;
    side->frame.width = 8;
    side->frame.leg_height = 1.8;
    side->frame.peak_height = 3.8;
    side->frame.tube = (tside_round){.diameter = 0.0483, .wall = 0.0026};
    side->curtain.hip = 1.7;
    side->curtain.sill = hand == TSIDE_RIGHT ? 0.4 : 0.5;
    side->bar.tube = (tside_round){.diameter = 0.0337, .wall = 0.0026};
    side->bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side->bar.stock = 6.4;
    side->drive.rated_torque_given = 1;
    side->drive.rated_torque = 50;
    side->drive_end.guide.tube = side->free_end.guide.tube = side->bar.tube;
    side->drive_end.extender.tube = (tside_square){.side = 0.05, .wall = 0.003};
    side->drive_end.extender.member_height = 1.1;
    side->drive_end.extender.member_outer = 3.9;
    side->drive_end.extender.stock_given = 1;
    side->drive_end.extender.stock = 3;
    side->free_end.extender = side->drive_end.extender;
}

/*
 * Plans the cuts of all that is cut from the same stock, and takes it off the list; returns the stock to buy, in
 * metres.
 */
static double cut_alike(tside_item *list, int count, tside_item like)
{
    static tside_stick sticks[MOST_STICKS];
    static int taken[MOST_STICKS * MOST_LINES]; /* how each stick is cut: a shop would print it */
    tside_stock stock;
    tside_cut cuts[MOST_LINES];
    tside_cut_plan plan;
    tside_fault fault;
    int kinds = 0, patterns;
    void *work;
    tside_usual(TSIDE_KIND_STOCK, &stock);
    stock.length_count = 1;
    stock.lengths[0].length = like.stock;
    for (tside_item *item = list; item < list + count; item++)
        if (item->by == TSIDE_BY_CUT && item->shape == like.shape && item->size == like.size &&
            item->wall == like.wall && item->stock == like.stock) {
            cuts[kinds++] = (tside_cut){item->length, item->count};
            item->count = 0;
        }
    work = malloc(tside_stock_work(kinds));
    if (!work)
        exit((perror("quote"), 1));
    need(tside_stock_plan(&stock, cuts, kinds, TSIDE_STOCK_NODES, work, tside_stock_work(kinds), sticks, taken,
                          MOST_STICKS, &patterns, &plan, &fault),
         &fault);
    free(work);
    printf("%-30s %3d pieces from %3d sticks of %.3f m\n", tside_item_text((int)like.code), plan.pieces, plan.sticks,
           like.stock);
    return plan.stock;
}

int main(void)
{
    tside_item list[MOST_LINES];
    long long sums[TSIDE_ITEM_CODES] = {0}, total = 0; /* thousandths of a piece, metre or square metre; cents */
    int count = 0, more;
    for (int hand = TSIDE_RIGHT; hand <= TSIDE_LEFT; hand++, count += more) {
        tside_side side;
        tside_plan plan;
        tside_fittings fittings;
        tside_fault fault;
        measure(&side, (tside_hand)hand);
        tside_usual(TSIDE_KIND_FITTINGS, &fittings);
        need(tside_plan_side(&side, &plan, &fault), &fault);
        need(tside_takeoff(&side, &plan, &fittings, list + count, TSIDE_ITEMS, &more, &fault), &fault);
    }
    for (const tside_item *item = list; item < list + count; item++) {
        const int cut = item->by == TSIDE_BY_CUT,
                  times = cut ? item->count > 0 : item->count; /* what has been cut with others is bought */
        const double size = item->by == TSIDE_BY_COUNT   ? 1
                            : item->by == TSIDE_BY_SHEET ? item->width * item->length
                                                         : item->length;
        const double each = cut && times ? cut_alike(list, count, *item) : size;
        sums[item->code] += times *
                            llround(ceil(each * 1000 -
                                         1e-6)); /* a whole number but for its last binary digits is not rounded up */
    }
    for (int code = 0; code < TSIDE_ITEM_CODES; code++) {
        const long long amount = (sums[code] * prices[code] + 500) / 1000;
        if (sums[code] && !prices[code])
            return fprintf(stderr, "quote: no price: %s\n", tside_item_text(code)), 1;
        if (sums[code])
            printf("%-30s %6lld.%03lld x %4lld.%02lld = %6lld.%02lld\n", tside_item_text(code), sums[code] / 1000,
                   sums[code] % 1000, prices[code] / 100, prices[code] % 100, amount / 100, amount % 100);
        total += amount;
    }
    printf("%-54s %5lld.%02lld\n", "total", total / 100, total % 100);
    if (ferror(stdout) || fclose(stdout))
        return perror("quote: standard output"), 1;
    return 0;
}
