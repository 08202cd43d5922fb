/* SPDX-License-Identifier: MIT */
/* Branch and bound over how often each listed pattern is taken. Nothing is ruled out but by whole-numbered prices. */
#include <math.h>
#include <string.h>

#include "cutting/branch.h"

enum { LEVELS = 2, LEVELS_MORE = 100 }; /* of the search: per type, and beside these */

/* Of a product of doubles, and of their sum: costs above 2^53, of sticks of no common measure, would rule a node out.
 */
static const double rounding = 1e-12;
/* What the relaxation takes so nearly a whole number of times is whole: its inverse is no more exact, and nodes would
 * be searched without end for what is whole already. */
static const double whole_enough = 1e-6;

void tside_i_tree_parts(tside_i_arena *from, tside_i_tree *tree, int types)
{
    const size_t rows = (size_t)tside_i_relaxation_most_rows(types);
    tside_i_trail *path = &tree->path;
    path->deepest = LEVELS * types + LEVELS_MORE;
    tside_i_corner_parts(from, &tree->corner, types);
    PART(from, rows, &tree->node.prices.of);
    PART(from, rows, &tree->node.x);
    PART(from, (size_t)path->deepest * rows, &path->bases);
    PART(from, path->deepest, &path->column);
    PART(from, path->deepest, &path->value);
    PART(from, path->deepest, &path->whole);
    PART(from, path->deepest, &path->low);
    PART(from, path->deepest, &path->high);
}

/* --- the node --- */

/* The prices of the relaxation in whole numbers, and how far a column falls short of its own by them. */
static void price_node(tside_i_tree *t)
{
    const tside_i_relaxation *r = t->relaxation;
    tside_i_node *node = &t->node;
    tside_i_round_prices(r, t->fine, &node->prices);
    node->least = 0;
    for (int j = 0; j < r->pool.columns; j++) {
        const int64_t reduced = r->pool.banned[j] ? 0 : tside_i_reduced_cost(r, &node->prices, j);
        if (reduced < node->least)
            node->least = reduced;
    }
    tside_i_effort_spend(r->effort, r->pool.start[r->pool.columns]);
}

/* Whether the prices prove that nothing below this node costs no more than the cut. */
static int is_ruled_out(tside_i_tree *t)
{
    const tside_i_relaxation *r = t->relaxation;
    tside_i_node *node = &t->node;
    const int64_t left = t->fill->cut - node->fixed;
    double sum = 0;
    if (left < 0)
        return 1;
    for (int i = 0; i < r->rows; i++) {
        const double part = (double)node->prices.of[i] * r->demand[i];
        sum += part - rounding * fabs(part);
    }
    sum += (double)node->least * (double)(left / r->problem->cost[0]) + (double)node->more;
    node->spare = (double)left * (double)node->prices.fine - sum;
    return node->spare < 0;
}

/* Sets what is left to be met with the columns taken so far, and what these cost. */
static void take_columns(tside_i_tree *t, const tside_i_offer *offer)
{
    const tside_i_trail *path = &t->path;
    tside_i_relaxation *r = t->relaxation;
    const tside_i_problem *problem = r->problem;
    t->node.fixed = 0;
    memcpy(r->pool.banned, r->pool.out, (size_t)r->pool.columns);
    for (int i = 0; i < r->rows; i++)
        r->demand[i] = i < problem->types ? problem->demand[i] : -offer->sticks[i - problem->types];
    for (int d = 0; d < path->depth; d++) {
        const int j = path->column[d];
        r->pool.banned[j] = 1;
        t->node.fixed += path->value[d] * problem->cost[r->pool.stock[j]];
        for (int e = r->pool.start[j]; e < r->pool.start[j + 1]; e++)
            r->demand[r->pool.entry[e].type] -= (double)(path->value[d] * r->pool.entry[e].count);
    }
}

/*
 * At the root: a plan with a column that falls short of its price by more than is left of the cut costs more than that,
 * as long as the cut does not rise.
 */
static void leave_out(tside_i_tree *t)
{
    tside_i_relaxation *r = t->relaxation;
    const tside_i_node *node = &t->node;
    for (int j = 0; j < r->pool.columns; j++)
        r->pool.out[j] = (double)tside_i_reduced_cost(r, &node->prices, j) > node->spare;
    tside_i_effort_spend(r->effort, r->pool.start[r->pool.columns]);
}

/* --- plans --- */

/* Takes sticks of a column into the plan. */
static void append_column(tside_i_tree *t, int column, int times)
{
    tside_i_pool_pattern(t->relaxation, column, t->fill->found);
    tside_i_fill_append(t->fill, t->fill->found, times);
}

/* A plan of the columns taken, of the whole sticks of the relaxation, and of filled sticks. */
static void round_down(tside_i_tree *t)
{
    const tside_i_relaxation *r = t->relaxation;
    const tside_i_trail *path = &t->path;
    tside_i_fill_begin(t->fill);
    for (int d = 0; d < path->depth; d++)
        append_column(t, path->column[d], path->value[d]);
    for (int k = 0; k < t->corner.extras; k++)
        append_column(t, t->corner.extra[k], 1);
    for (int i = 0; i < r->rows; i++)
        if (r->basis[i] >= 0 && !r->pool.banned[r->basis[i]] && r->x[i] > 0.5)
            append_column(t, r->basis[i], (int)fmin(r->x[i] + whole_enough, TSIDE_STOCK_PIECES));
    tside_i_fill_finish(t->fill);
}

/* --- the path --- */

/*
 * Of the columns not taken a whole number of times by the relaxation: the one that, once the basis is made whole, is
 * taken furthest below no times, or else the one taken most often: its row. 0 if there is none.
 */
static int fraction(const tside_i_tree *t, int *row)
{
    const tside_i_relaxation *r = t->relaxation;
    const double *x = t->node.x;
    int found = 0;
    for (int i = 0; i < r->rows; i++) {
        if (r->basis[i] < 0 || fabs(x[i] - floor(x[i] + 0.5)) <= whole_enough)
            continue; /* as what is banned is, of which none is taken */
        if (!found || r->x[i] < fmin(r->x[*row], -0.5) || (r->x[*row] >= -0.5 && x[i] > x[*row]))
            *row = i;
        found = 1;
    }
    return found;
}

/* The basis from which a level begins. */
static int *basis_of(const tside_i_tree *t, int level)
{
    return t->path.bases + (size_t)level * (size_t)t->relaxation->rows;
}

static void keep_basis(tside_i_tree *t)
{
    const tside_i_relaxation *r = t->relaxation;
    memcpy(basis_of(t, t->path.depth), r->basis, (size_t)r->rows * sizeof *r->basis);
}

/* Goes a level down: the column of a row will be taken a whole number of times, of which the nearest comes first. */
static void go_down(tside_i_tree *t, int row)
{
    const tside_i_relaxation *r = t->relaxation;
    const double x = t->node.x[row];
    tside_i_trail *path = &t->path;
    const int d = path->depth++;
    path->column[d] = r->basis[row];
    path->whole[d] = path->low[d] = (int)x;
    path->high[d] = path->low[d] + 1;
    path->value[d] = x - path->low[d] < 0.5 && path->low[d] > 0 ? path->low[d]-- : path->high[d]++;
}

/*
 * Where a number of times is ruled out, the same prices mostly rule out those further the same way: with each time
 * less, the bound loses the column's reduced cost (and there is money for a few more sticks, which may fall short of
 * it); with each time more it gains it.
 */
static void close_side(tside_i_tree *t)
{
    const tside_i_problem *problem = t->relaxation->problem;
    const int affordable = t->node.fixed <= t->fill->cut;
    tside_i_trail *path = &t->path;
    const int d = path->depth - 1;
    int64_t reduced;
    if (d < 0)
        return;
    reduced = affordable ? tside_i_reduced_cost(t->relaxation, &t->node.prices, path->column[d]) : 0;
    if (path->value[d] > path->whole[d]) {
        if (reduced >= 0)
            path->high[d] = -1;
    } else {
        const int64_t more = tside_i_dearest(problem) / problem->cost[0] + 1;
        if (affordable && reduced <= 0 && -reduced / more >= -t->node.least)
            path->low[d] = -1;
    }
}

/* Goes on to the next number of times that was not tried, up the levels if need be; 0 if there is none. */
static int go_on(tside_i_trail *path)
{
    for (; path->depth; path->depth--) {
        const int d = path->depth - 1, low = path->low[d], high = path->high[d];
        if (low >= 0 && (high < 0 || path->whole[d] - low < high - path->whole[d])) {
            path->value[d] = path->low[d]--;
            return 1;
        }
        if (high >= 0) {
            path->value[d] = path->high[d]++;
            return 1;
        }
    }
    return 0;
}

/* --- the search --- */

/* What a look at a node tells of what lies below it. */
typedef enum below {
    MORE,     /* there is a row to go down by */
    NOTHING,  /* nothing is to be found */
    UNCERTAIN /* nothing was found, and there may be something */
} below;

/*
 * Solves the relaxation where the search stands, from a basis, or, where that is NULL, from the one it has. row:
 * receives the one to go down by, if there is more.
 */
static below look(tside_i_tree *t, const tside_i_offer *offer, const int *basis, int *row)
{
    tside_i_relaxation *r = t->relaxation;
    tside_i_node *node = &t->node;
    int solved;
    below found = UNCERTAIN;
    take_columns(t, offer);
    r->enough = (double)(t->fill->cut - node->fixed) / (double)tside_i_dearest(r->problem) + 2;
    if (basis)
        tside_i_relaxation_set(r, basis);
    solved = tside_i_relaxation_solve(r);
    price_node(t);
    node->more = 0;
    if (!is_ruled_out(t) && solved) {
        if (!t->path.depth)
            leave_out(t);
        memcpy(node->x, r->x, (size_t)r->rows * sizeof *node->x);
        node->more = tside_i_corner_cost(&t->corner, r, &node->prices, node->spare);
        if (t->path.depth < t->path.deepest && fraction(t, row))
            found = MORE;
        if (!is_ruled_out(t))
            round_down(t);
    }
    if (is_ruled_out(t)) {
        node->more = 0; /* it is another where a column is taken another number of times */
        if (is_ruled_out(t))
            close_side(t);
        return NOTHING;
    }
    return found;
}

void tside_i_tree_begin(tside_i_tree *t)
{
    int *basis = basis_of(t, 0);
    for (int i = 0; i < t->relaxation->rows; i++)
        basis[i] = -1 - i;
}

int tside_i_branch(tside_i_tree *t, const tside_i_offer *offer)
{
    tside_i_trail *path = &t->path;
    int certain = 1;
    path->depth = 0;
    memset(t->relaxation->pool.out, 0, (size_t)t->relaxation->pool.columns);
    for (const int *basis = basis_of(t, 0); t->fill->cut >= offer->least;) {
        int row;
        below found;
        if (tside_i_effort_is_spent(t->relaxation->effort))
            return 0;
        found = look(t, offer, basis, &row);
        certain &= found != UNCERTAIN;
        if (found == MORE || !path->depth)
            keep_basis(t);
        if (found == MORE)
            go_down(t, row);
        else if (!go_on(path))
            return certain;
        basis = found == MORE ? NULL : basis_of(t, path->depth - 1);
    }
    return 1;
}
