/* SPDX-License-Identifier: MIT */
/*
 * How a supplier's quoting program links the library: two sides planned, their pieces taken off, one tube cut from stock, priced with the
 * program's own prices. Sides and prices are invented. cc quote_from_c.c $(pkg-config --cflags --libs tunnelside)
 */
#include <stdio.h>
#include <stdlib.h>
#include <tunnelside.h>

enum { SIDES = 2, MOST_CUTS = SIDES * TSIDE_ITEMS, MOST_STICKS = 100 };

/* Prices are the caller's: whole cents, and each line rounded to the nearest cent, half a cent up. */
static const long long cents_a_stick = 4490, cents_a_clip = 65, cents_a_side = 32000;
enum { TAX_IN_TENTHS_OF_PERCENT = 195 };

static int refuse(const tside_fault *fault)
{
    char sentence[256];
    tside_fault_text(fault, sentence, sizeof sentence);
    fprintf(stderr, "%s\n", sentence);
    return EXIT_FAILURE;
}

/* A side 30 m long, wound by a motor; every value not set here is a usual one. */
static void ask(tside_side *side, tside_hand hand, double sill)
{
    tside_usual(TSIDE_KIND_SIDE, side);
    side->hand = hand;
    side->length = 30;
    side->frame.width = 8;
    side->frame.leg_height = 1.8;
    side->frame.peak_height = 3.8;
    side->frame.tube = (tside_round){.diameter = 0.0483, .wall = 0.0026};
    side->curtain.hip = 1.7;
    side->curtain.sill = sill;
    side->bar.tube = (tside_round){.diameter = 0.0337, .wall = 0.0026};
    side->bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side->bar.stock = 6.4;
    side->drive.rated_torque = 50;
    side->drive_end.guide.tube = side->free_end.guide.tube = side->bar.tube;
    side->drive_end.extender.tube = (tside_square){.side = 0.05, .wall = 0.003};
    side->drive_end.extender.member_height = 1.1;
    side->drive_end.extender.member_outer = 3.9;
    side->drive_end.extender.stock = 3;
    side->free_end.extender = side->drive_end.extender;
}

/* Alike lengths are one entry, so that alike sticks stand together in the plan. */
static int add_cut(tside_cut *cuts, int cut_count, const tside_item *item)
{
    int i = 0;
    while (i < cut_count && (cuts[i].length < item->length || cuts[i].length > item->length))
        i++;
    cuts[i] = (tside_cut){item->length, item->count + (i < cut_count ? cuts[i].count : 0)};
    return i < cut_count ? cut_count : cut_count + 1;
}

static void print_money(const char *what, int count, long long cents)
{
    printf("%4d  %-28s %6lld.%02lld\n", count, what, cents / 100, cents % 100);
}

int main(void)
{
    static const struct { tside_hand hand; double sill; } asked[SIDES] = {{TSIDE_RIGHT, 0.4}, {TSIDE_LEFT, 0.55}};
    static tside_cut cuts[MOST_CUTS];
    static tside_stick sticks[MOST_STICKS];
    static int taken[MOST_STICKS * MOST_CUTS];
    tside_fittings fittings;
    tside_stock stock;
    tside_fault fault;
    tside_cut_plan plan;
    int cut_count = 0, clips = 0, count, status = EXIT_FAILURE;

    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    fittings.guide_stock = 6.4;
    for (int i = 0; i < SIDES; i++) {
        tside_side side;
        tside_plan planned;
        tside_item items[TSIDE_ITEMS];
        ask(&side, asked[i].hand, asked[i].sill);
        if (tside_plan_side(&side, &planned, &fault) != TSIDE_OK ||
            tside_takeoff(&side, &planned, &fittings, items, TSIDE_ITEMS, &count, &fault) != TSIDE_OK)
            return refuse(&fault);
        printf("side %d: %.2f turns, %.1f N m\n", i + 1, planned.drive_turns, planned.worst.drive);
        for (int k = 0; k < count; k++) {
            if (items[k].code == TSIDE_ITEM_CLIP)
                clips += items[k].count;
            if (items[k].shape == TSIDE_ROUND_TUBE) /* bar and guides are of one tube */
                cut_count = add_cut(cuts, cut_count, items + k);
        }
    }

    tside_usual(TSIDE_KIND_STOCK, &stock);
    stock.length_count = 1;
    stock.lengths[0].length = 6.4;
    const size_t size = tside_stock_work(cut_count);
    void *work = malloc(size);
    if (!work)
        fprintf(stderr, "out of memory\n");
    else if (tside_stock_plan(&stock, cuts, cut_count, TSIDE_STOCK_NODES, work, size, sticks, taken, MOST_STICKS, &count, &plan, &fault) != TSIDE_OK)
        refuse(&fault);
    else {
        const long long tube = plan.sticks * cents_a_stick, clip = clips * cents_a_clip, fitting = SIDES * cents_a_side;
        const long long net = tube + clip + fitting, tax = (net * TAX_IN_TENTHS_OF_PERCENT + 500) / 1000;
        for (int i = 0; i < count; i++)
            printf("%4d of 6.4 m, pieces in each: %d, left: %.3f m\n", sticks[i].count, sticks[i].pieces, sticks[i].offcut);
        printf("%s least: %.1f m, no plan below %.1f m\n", plan.proven ? "proven" : "not proven", plan.stock, plan.lower_bound);
        print_money("tube, sticks of 6.4 m", plan.sticks, tube);
        print_money("clips", clips, clip);
        print_money("fitting, sides", SIDES, fitting);
        print_money("tax, 19.5 %", 1, tax);
        print_money("total", 1, net + tax);
        status = EXIT_SUCCESS;
    }
    free(work);
    return status;
}
