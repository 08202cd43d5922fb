/* SPDX-License-Identifier: MIT */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cuts.h"

#define FOLDER TSIDE_TEST_DATA "/binpack/"

/* Items of one problem; equal ones are one cut. */
static int read_items(FILE *file, int capacity, int items, cut_order *order)
{
    tside_usual(TSIDE_KIND_STOCK, &order->stock);
    order->stock.kerf = 0;
    order->stock.length_count = 1;
    order->stock.lengths[0].length = capacity / 100.0;
    order->cut_count = 0;
    for (int i = 0; i < items; i++) {
        int size, k = 0;
        if (fscanf(file, "%d", &size) != 1)
            return 0;
        while (k < order->cut_count && order->cuts[k].length != size / 100.0)
            k++;
        if (k == order->cut_count) {
            if (k == TSIDE_STOCK_CUTS)
                return 0;
            order->cuts[k] = (tside_cut){size / 100.0, 0};
            order->cut_count++;
        }
        order->cuts[k].count++;
    }
    return 1;
}

/*
 * Better than the best known at publication: I. P. Gent (1998), Heuristic solution of open bin packing problems, J. of
 * Heuristics 3, 299-304 (citation from memory).
 */
static int better_known(const char *name)
{
    static const char *const names[] = {"u120_08", "u120_19", "u250_07", "u250_12"};
    for (int i = 0; i < 4; i++)
        if (!strcmp(name, names[i]))
            return 1;
    return 0;
}

int cut_orders_published(cut_order orders[PROBLEMS])
{
    static const struct {
        const char *name;
        int optimum;
    } single[] = {{"t60_00", 20}, {"N1C1W1_A", 25}, {"N1C1W1_B", 31}};
    int count = 0;
    for (int i = 0; i < 3; i++) {
        char path[4096];
        int items, capacity;
        FILE *file;
        snprintf(path, sizeof path, FOLDER "%s.txt", single[i].name);
        file = fopen(path, "r");
        if (!file)
            return count;
        snprintf(orders[count].name, sizeof orders->name, "%s", single[i].name);
        orders[count].optimum = single[i].optimum;
        count += fscanf(file, "%d %d", &items, &capacity) == 2 && read_items(file, capacity, items, orders + count);
        fclose(file);
    }
    for (int i = 1; i <= 2; i++) {
        FILE *file = fopen(i == 1 ? FOLDER "orlib_binpack1.txt" : FOLDER "orlib_binpack2.txt", "r");
        int problems, items, capacity;
        if (!file || fscanf(file, "%d", &problems) != 1)
            return count;
        for (int p = 0; p < problems && count < PROBLEMS; p++) {
            cut_order *order = orders + count;
            if (fscanf(file, "%31s %d %d %d", order->name, &capacity, &items, &order->optimum) != 4 ||
                !read_items(file, capacity, items, order))
                break;
            order->optimum -= better_known(order->name);
            count++;
        }
        fclose(file);
    }
    return count;
}

static cut_order invented(dice *d, int stocks, int most, int full)
{
    static const double feet[] = {20, 24, 21, 16, 10};
    const int inches = dice_below(d, 2);
    cut_order order;
    tside_usual(TSIDE_KIND_STOCK, &order.stock);
    snprintf(order.name, sizeof order.name, "invented");
    order.optimum = 0;
    order.stock.kerf = dice_below(d, 3) ? 0.003 : 0;
    order.stock.trim = dice_below(d, 2) ? 0.01 : 0;
    order.stock.length_count = full ? stocks : 1 + dice_below(d, stocks);
    for (int k = 0; k < order.stock.length_count; k++)
        order.stock.lengths[k].length = feet[k] * 0.3048;
    order.cut_count = full ? 10 : 1 + dice_below(d, 10);
    for (int i = 0; i < order.cut_count; i++) {
        const double length = dice_between(d, 0.2, 6.08);
        order.cuts[i].length = inches ? floor(length / 0.0254 * 16) * 0.0254 / 16 : floor(length * 1000) / 1000;
        order.cuts[i].count = 1 + dice_below(d, most);
    }
    return order;
}

cut_order cut_order_invented(dice *d, int stocks, int most)
{
    return invented(d, stocks, most, 0);
}

cut_order cut_order_full(dice *d, int stocks, int most)
{
    return invented(d, stocks, most, 1);
}

cut_order cut_order_spread(dice d, int lengths, int stocks, int most, int least, int below)
{
    static const double sold[] = {6, 6.5, 7.3};
    cut_order order;
    tside_usual(TSIDE_KIND_STOCK, &order.stock);
    snprintf(order.name, sizeof order.name, "%d lengths", lengths);
    order.optimum = 0;
    order.stock.kerf = 0.003;
    order.stock.length_count = stocks;
    for (int k = 0; k < stocks; k++)
        order.stock.lengths[k].length = sold[k];
    order.cut_count = lengths;
    for (int i = 0; i < lengths; i++) {
        order.cuts[i].length = (least + dice_below(&d, below - least)) / 1000.0;
        order.cuts[i].count = 1 + dice_below(&d, most);
    }
    return order;
}

cut_order cut_order_of(double kerf, double trim, const double *stock, const double *cuts, const int *counts)
{
    cut_order order;
    tside_usual(TSIDE_KIND_STOCK, &order.stock);
    strcpy(order.name, "by hand");
    order.optimum = 0;
    order.stock.kerf = kerf;
    order.stock.trim = trim;
    for (order.stock.length_count = 0; stock[order.stock.length_count] > 0; order.stock.length_count++)
        order.stock.lengths[order.stock.length_count].length = stock[order.stock.length_count];
    for (order.cut_count = 0; cuts[order.cut_count] > 0; order.cut_count++)
        order.cuts[order.cut_count] = (tside_cut){cuts[order.cut_count], counts[order.cut_count]};
    return order;
}

cut_answer cut_order_sound(const cut_order *order, int node_limit)
{
    cut_answer answer = cut_order_plan(order, node_limit);
    const char *wrong;
    if (answer.status != TSIDE_OK)
        check_answered(__FILE__, __LINE__, &answer.fault);
    wrong = cut_answer_wrong(order, &answer);
    if (wrong)
        ck_abort_msg("%s: %s", order->name, wrong);
    return answer;
}
