/* SPDX-License-Identifier: MIT */
/* Branch and bound over how often each listed pattern is taken. Nothing is ruled out but by whole-numbered prices. */
#include <string.h>

#include "cutting/cutting.h"

int64_t tside_i_reduced_cost(const tside_i_search *s, int column)
{
    const tside_i_pool *pool = &s->relaxation.pool;
    int64_t reduced = s->cutting.cost[pool->stock[column]] * s->node_fine;
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        reduced -= pool->entry[e].count * s->node_price[pool->entry[e].type];
    return reduced;
}

/* Whether the relaxation's prices prove that nothing below this node costs no more than the cut. fixed: cost of the sticks already taken. */
static int is_ruled_out(tside_i_search *s, int64_t fixed)
{
    const tside_i_relaxation *r = &s->relaxation;
    const tside_i_cutting *cutting = &s->cutting;
    double sum = 0;
    if (fixed > s->cut)
        return 1;
    s->node_fine = tside_i_round_prices(s, s->node_price);
    s->least = 0;
    for (int j = 0; j < r->pool.columns; j++) {
        const int64_t reduced = r->pool.banned[j] ? 0 : tside_i_reduced_cost(s, j);
        if (reduced < s->least)
            s->least = reduced;
    }
    for (int i = 0; i < r->rows; i++) {
        const double part = (double)s->node_price[i] * r->demand[i];
        sum += part - 1e-12 * fabs(part);
    }
    sum += (double)s->least * (double)((s->cut - fixed) / cutting->cost[0]) + (double)s->more;
    s->spare = (double)(s->cut - fixed) * (double)s->node_fine * (1 + 1e-15) - sum;
    return s->spare < 0;
}

/* Sets what is left to be met with the columns taken so far, and returns what these cost. */
static int64_t take_columns(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    int64_t cost = 0;
    memset(r->pool.banned, 0, (size_t)r->pool.columns);
    for (int i = 0; i < r->rows; i++)
        r->demand[i] = i < tside_i_types(s) ? s->cutting.demand[i] : -s->to_be_had[i - tside_i_types(s)];
    for (int d = 0; d < s->depth; d++) {
        const int j = s->column[d];
        r->pool.banned[j] = 1;
        cost += s->value[d] * s->cutting.cost[r->pool.stock[j]];
        for (int e = r->pool.start[j]; e < r->pool.start[j + 1]; e++)
            r->demand[r->pool.entry[e].type] -= (double)(s->value[d] * r->pool.entry[e].count);
    }
    return cost;
}

/* A plan of the columns taken, of the whole sticks of the relaxation, and of filled sticks. */
static void round_down(tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    int full = 1;
    tside_i_plan_begin(s);
    for (int d = 0; d < s->depth && full; d++) {
        tside_i_pool_pattern(r, s->column[d], s->found);
        full = tside_i_plan_append(s, s->found, s->value[d]);
    }
    for (int k = 0; k < s->extras && full; k++) {
        tside_i_pool_pattern(r, s->extra[k], s->found);
        full = tside_i_plan_append(s, s->found, 1);
    }
    for (int i = 0; i < r->rows && full; i++)
        if (r->basis[i] >= 0 && !r->pool.banned[r->basis[i]] && r->x[i] > 0.5 && r->x[i] < TSIDE_STOCK_PIECES) {
            tside_i_pool_pattern(r, r->basis[i], s->found);
            full = tside_i_plan_append(s, s->found, (int)(r->x[i] + 1e-6));
        }
    if (full)
        tside_i_plan_finish(s);
}

/*
 * Of the columns not taken a whole number of times by the relaxation: the one that, once the basis is made whole, is taken furthest below no times, or else
 * the one taken most often: its row, or -1.
 */
static int fraction(const tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    int row = -1;
    for (int i = 0; i < r->rows; i++) {
        if (r->basis[i] < 0 || r->pool.banned[r->basis[i]] || fabs(s->x[i] - floor(s->x[i] + 0.5)) <= 1e-6)
            continue;
        if (row < 0 || r->x[i] < fmin(r->x[row], -0.5) || (r->x[row] >= -0.5 && s->x[i] > s->x[row]))
            row = i;
    }
    return row;
}

/* Goes a level down: the column of a row will be taken a whole number of times, of which the nearest comes first. */
static void go_down(tside_i_search *s, int row)
{
    const tside_i_relaxation *r = &s->relaxation;
    const size_t m = (size_t)r->rows;
    const int d = s->depth++;
    memcpy(s->bases + (size_t)d * m, r->basis, m * sizeof *r->basis);
    s->column[d] = r->basis[row];
    s->whole[d] = s->low[d] = (int)s->x[row];
    s->high[d] = s->low[d] + 1;
    s->value[d] = s->x[row] - s->low[d] < 0.5 && s->low[d] > 0 ? s->low[d]-- : s->high[d]++;
}

/*
 * Where a number of times is ruled out, the same prices mostly rule out those further the same way: with each time less, the bound loses the column's
 * reduced cost (and there is money for a few more sticks, which may fall short of it); with each time more it gains it.
 */
static void close_side(tside_i_search *s, int64_t fixed)
{
    const int d = s->depth - 1;
    int64_t reduced;
    if (d < 0)
        return;
    reduced = fixed > s->cut ? 0 : tside_i_reduced_cost(s, s->column[d]);
    if (s->value[d] > s->whole[d]) {
        if (reduced >= 0)
            s->high[d] = -1;
    } else {
        const double lost = (double)s->least * (double)(tside_i_dearest(s) / s->cutting.cost[0] + 1);
        if (fixed <= s->cut && (double)reduced * (1 - 1e-12) <= lost)
            s->low[d] = -1;
    }
}

/* Goes on to the next number of times that was not tried, up the levels if need be; 0 if there is none. */
static int go_on(tside_i_search *s)
{
    for (; s->depth; s->depth--) {
        const int d = s->depth - 1, low = s->low[d], high = s->high[d];
        if (low >= 0 && (high < 0 || s->whole[d] - low < high - s->whole[d])) {
            s->value[d] = s->low[d]--;
            return 1;
        }
        if (high >= 0) {
            s->value[d] = s->high[d]++;
            return 1;
        }
    }
    return 0;
}

/* A node of a large problem counts for several of a small one: pivots take longer. */
static int weight_of(const tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    const int64_t weight = (int64_t)r->rows * ((int64_t)r->rows * r->rows + r->pool.start[r->pool.columns]) / 8192;
    return 1 + (int)weight;
}

/* Solves the relaxation where the search stands. Returns the row to go down by; -1 where nothing is to be found below; -2 where that is not certain. */
static int look(tside_i_search *s, const int *basis)
{
    tside_i_relaxation *r = &s->relaxation;
    const int64_t fixed = take_columns(s);
    int solved, row = -1;
    s->nodes += weight_of(s);
    r->enough = (double)(s->cut - fixed) / (double)tside_i_dearest(s) + 2;
    tside_i_relaxation_set(r, basis);
    solved = tside_i_relaxation_solve(r);
    s->more = 0;
    if (!is_ruled_out(s, fixed) && solved == 1) {
        memcpy(s->x, r->x, (size_t)r->rows * sizeof *s->x);
        s->more = tside_i_corner(s);
        if (s->depth < LEVELS * tside_i_types(s) + LEVELS_MORE)
            row = fraction(s);
        if (!is_ruled_out(s, fixed))
            round_down(s);
    }
    if (is_ruled_out(s, fixed)) {
        s->more = 0; /* it is another where a column is taken another number of times */
        if (is_ruled_out(s, fixed))
            close_side(s, fixed);
        return -1;
    }
    return row < 0 ? -2 : row;
}

/* Branch and bound over the pool. Returns whether nothing was left out. */
int tside_i_branch(tside_i_search *s, int limit)
{
    tside_i_relaxation *r = &s->relaxation;
    int whole = 1;
    s->depth = 0;
    for (int i = 0; i < r->rows; i++)
        r->basis[i] = -1 - i;
    for (const int *basis = r->basis; s->cut >= s->least_cost;) {
        int row;
        if (s->nodes >= limit)
            return 0;
        row = look(s, basis);
        whole = whole && row != -2;
        if (row >= 0)
            go_down(s, row);
        else if (!go_on(s))
            return whole;
        basis = s->bases + (size_t)(s->depth - 1) * (size_t)r->rows;
    }
    return 1;
}
