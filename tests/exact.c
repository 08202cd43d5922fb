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

static listing list;

/*
 * A plan of any number of each pattern, by GLPK; NULL if there are too many patterns. of_stick: what a stick costs
 * beside its length in mm.
 */
static glp_prob *stated(const cut_order *order, int whole, double of_stick)
{
    static int row[PATTERNS * TYPES + 1], column[PATTERNS * TYPES + 1];
    static double value[PATTERNS * TYPES + 1];
    int entries = 0;
    glp_prob *problem;
    memset(&list, 0, sizeof list);
    list.order = order;
    if (order->cut_count > TYPES)
        return NULL;
    for (int k = 0; k < order->stock.length_count; k++)
        if (!list_from(&list, k, 0))
            return NULL;
    glp_term_out(GLP_OFF);
    problem = glp_create_prob();
    glp_add_rows(problem, order->cut_count);
    glp_add_cols(problem, list.count);
    for (int j = 0; j < order->cut_count; j++)
        glp_set_row_bnds(problem, j + 1, GLP_LO, order->cuts[j].count, 0);
    for (int p = 0; p < list.count; p++) {
        glp_set_col_kind(problem, p + 1, whole ? GLP_IV : GLP_CV);
        glp_set_col_bnds(problem, p + 1, GLP_LO, 0, 0);
        glp_set_obj_coef(problem, p + 1, 1000 * order->stock.lengths[list.stock[p]].length + of_stick);
        for (int j = 0; j < order->cut_count; j++)
            if (list.pattern[p][j]) {
                row[++entries] = j + 1;
                column[entries] = p + 1;
                value[entries] = list.pattern[p][j];
            }
    }
    glp_load_matrix(problem, entries, row, column, value);
    return problem;
}

/* Two tenths of a millimetre for each stick: of equal stock the fewest; less is beneath the solver's tolerance. */
int cut_order_exact(const cut_order *order, int milliseconds, double *stock, int *sticks)
{
    int proven;
    glp_iocp how;
    glp_prob *problem = stated(order, 1, 0.2);
    if (!problem)
        return 0;
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

int cut_order_relaxed(const cut_order *order, double *stock)
{
    int solved;
    glp_smcp how;
    glp_prob *problem = stated(order, 0, 0);
    if (!problem)
        return 0;
    glp_init_smcp(&how);
    solved = !glp_simplex(problem, &how) && glp_get_status(problem) == GLP_OPT;
    *stock = glp_get_obj_val(problem) / 1000;
    glp_delete_prob(problem);
    return solved;
}
