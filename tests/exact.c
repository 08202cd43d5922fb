/* SPDX-License-Identifier: MIT */
/*
 * An exact solver for small cut plans: GLPK over every full pattern, the patterns listed here, in metres, with the
 * fitting rule as it is worded.
 */
#include <glpk.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cuts.h"

enum { PATTERNS = 4000, TYPES = 16 };

typedef struct listing {
    const cut_order *order;
    int count, stock[PATTERNS], pattern[PATTERNS][TYPES], now[TYPES];
} listing;

static int fits(const listing *list, int stock)
{
    double sum = 0;
    int pieces = 0;
    for (int j = 0; j < list->order->cut_count; j++) {
        sum += list->now[j] * list->order->cuts[j].length;
        pieces += list->now[j];
    }
    return sum + (pieces - 1) * list->order->stock.kerf <=
           list->order->stock.lengths[stock].length - list->order->stock.trim + 1e-9;
}

static int is_full(listing *list, int stock)
{
    int full = 1;
    for (int j = 0; j < list->order->cut_count && full; j++)
        if (list->now[j] < list->order->cuts[j].count) {
            list->now[j]++;
            full = !fits(list, stock);
            list->now[j]--;
        }
    return full;
}

/* Returns 0 if there are too many. */
static int list_from(listing *list, int stock, int j)
{
    if (j == list->order->cut_count) {
        if (!is_full(list, stock))
            return 1;
        if (list->count == PATTERNS)
            return 0;
        list->stock[list->count] = stock;
        memcpy(list->pattern[list->count++], list->now, sizeof list->now);
        return 1;
    }
    for (list->now[j] = 0; list->now[j] <= list->order->cuts[j].count && fits(list, stock); list->now[j]++)
        if (!list_from(list, stock, j + 1))
            return 0;
    list->now[j] = 0;
    return 1;
}

int cut_order_exact(const cut_order *order, int milliseconds, double *stock, int *sticks)
{
    static listing list;
    static int row[PATTERNS * TYPES + 1], column[PATTERNS * TYPES + 1];
    static double value[PATTERNS * TYPES + 1];
    int entries = 0, proven;
    glp_prob *problem;
    glp_iocp how;
    memset(&list, 0, sizeof list);
    list.order = order;
    if (order->cut_count > TYPES)
        return 0;
    for (int k = 0; k < order->stock.length_count; k++)
        if (!list_from(&list, k, 0))
            return 0;
    glp_term_out(GLP_OFF);
    problem = glp_create_prob();
    glp_add_rows(problem, order->cut_count);
    glp_add_cols(problem, list.count);
    for (int j = 0; j < order->cut_count; j++)
        glp_set_row_bnds(problem, j + 1, GLP_LO, order->cuts[j].count, 0);
    for (int p = 0; p < list.count; p++) {
        glp_set_col_kind(problem, p + 1, GLP_IV);
        glp_set_col_bnds(problem, p + 1, GLP_LO, 0, 0);
        /*
         * stock in millimetres, and two tenths for each stick: of equal stock the fewest sticks; less is beneath the
         * solver's tolerance
         */
        glp_set_obj_coef(problem, p + 1, 1000 * order->stock.lengths[list.stock[p]].length + 0.2);
        for (int j = 0; j < order->cut_count; j++)
            if (list.pattern[p][j]) {
                row[++entries] = j + 1;
                column[entries] = p + 1;
                value[entries] = list.pattern[p][j];
            }
    }
    glp_load_matrix(problem, entries, row, column, value);
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.tm_lim = milliseconds;
    proven = !glp_intopt(problem, &how) && glp_mip_status(problem) == GLP_OPT;
    *stock = 0;
    *sticks = 0;
    for (int p = 0; p < list.count; p++) {
        const int times = (int)floor(glp_mip_col_val(problem, p + 1) + 0.5);
        *sticks += times;
        *stock += times * order->stock.lengths[list.stock[p]].length;
    }
    glp_delete_prob(problem);
    return proven;
}
