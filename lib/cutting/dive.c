/* SPDX-License-Identifier: MIT */
/*
 * A plan by rounding. The relaxation takes shares of sticks; those it takes for the most part become whole ones, and
 * for what is left it is solved again over patterns that the rest alone allows: columns are generated for it as they
 * were for all. At every step the rest is filled greedily too, so that there always is a plan; the sticks of it are
 * columns, so that the relaxation always has an answer. Common practice with column generation, a diving heuristic.
 */
#include <math.h>
#include <string.h>

#include "cutting/dive.h"

enum { SETTLED = 3000 }; /* columns that each dive begins with, at most, but for those of the basis */

enum { ROUNDS = 3 }; /* what is left of the effort is shared out among so many: later ones are smaller */

static const double nearly = 1e-3; /* demands are uneven by up to so much: what is taken a whole number of times */

void tside_i_dive_parts(tside_i_arena *from, tside_i_dive *d, int types)
{
    PART(from, types, &d->demand);
    PART(from, types, &d->price);
    PART(from, types, &d->basis);
}

void tside_i_dive_begin(tside_i_dive *d, const tside_i_pricing *known)
{
    tside_i_relaxation *r = known->relaxation;
    d->known = known;
    if (r->pool.columns > SETTLED)
        tside_i_pool_shrink(r);
    r->pool.settled = r->pool.columns;
    memcpy(d->basis, r->basis, (size_t)r->rows * sizeof *d->basis);
}

/* The whole problem is left, and its prices are sound for any part of it. */
static void go_back(tside_i_dive *d)
{
    tside_i_relaxation *r = d->known->relaxation;
    d->rest = *r->problem;
    d->rest.demand = d->demand;
    d->pricing = *d->known;
    d->pricing.sound.of = d->price;
    memcpy(d->price, d->known->sound.of, (size_t)d->rest.types * sizeof *d->price);
    r->pool.columns = r->pool.settled;
    tside_i_relaxation_set(r, d->basis);
    tside_i_fill_begin(d->fill);
}

/* Solves the relaxation for the rest; 0 if that proves that no better plan is to be had so, or no effort is left. */
static int solve_rest(tside_i_dive *d)
{
    tside_i_relaxation *r = d->pricing.relaxation;
    int64_t limit, least;
    memcpy(d->demand, d->fill->rest, (size_t)d->rest.types * sizeof *d->demand);
    tside_i_relaxation_ask(r);
    if (!tside_i_relaxation_solve(r))
        return 0;
    limit = tside_i_effort_narrow(r->effort, tside_i_effort_left(r->effort) / ROUNDS);
    least = tside_i_price_all(&d->pricing, 0);
    r->effort->limit = limit;
    return d->fill->trial.cost + least <= d->fill->cut && !tside_i_effort_is_spent(r->effort);
}

/* How often the relaxation takes the column of a row. */
static double taken(const tside_i_relaxation *r, int row)
{
    const int column = r->basis[row];
    return column < 0 || r->pool.banned[column] ? 0 : fmin(r->x[row], TSIDE_STOCK_PIECES) + nearly;
}

static double share_of(const tside_i_relaxation *r, int row)
{
    return taken(r, row) - (int)taken(r, row);
}

/* Takes sticks of a row's column, as many of these as the rest holds. */
static void take_column(tside_i_dive *d, int row, int times)
{
    const tside_i_relaxation *r = d->pricing.relaxation;
    int *pattern = d->fill->found;
    tside_i_pool_pattern(r, r->basis[row], pattern);
    for (int i = 0; i < d->rest.types; i++)
        if (pattern[i] && d->fill->rest[i] / pattern[i] < times)
            times = d->fill->rest[i] / pattern[i];
    tside_i_fill_append(d->fill, pattern, times);
}

/* What counts as most of a stick, from 0.5 to 1: for each row of each dive another share. */
static double most_of(int number, int row)
{
    const double golden = 0.6180339887498949; /* whose multiples lie evenly between whole numbers */
    const double place = (number * 37 + row) * golden;
    return 0.5 + 0.5 * (place - floor(place));
}

/* Takes what the relaxation takes; if that is nothing, the stick of which it takes most. 0 if it takes none. */
static int take_columns(tside_i_dive *d, int number)
{
    const tside_i_relaxation *r = d->pricing.relaxation;
    int best = 0, any = 0;
    for (int i = 0; i < r->rows; i++) {
        const int times = (int)taken(r, i) + (share_of(r, i) >= most_of(number, i));
        if (times)
            take_column(d, i, times);
        any |= times;
        if (share_of(r, i) > share_of(r, best))
            best = i;
    }
    if (any || taken(r, best) <= nearly)
        return any;
    take_column(d, best, 1);
    return 1;
}

/* Fills the rest greedily for once, and keeps the sticks of that as columns. Returns whether to go on. */
static int complete(tside_i_dive *d)
{
    tside_i_relaxation *r = d->pricing.relaxation;
    tside_i_fill *fill = d->fill;
    const int rows = fill->trial.rows;
    int left = 0;
    tside_i_fill_rest(fill, INT64_MAX / 4);
    tside_i_fill_keep(fill);
    for (int i = rows; i < fill->trial.rows; i++) {
        tside_i_sticks_pattern(&fill->trial, i, d->rest.types, fill->found);
        tside_i_pool_take(r, fill->trial.stock[i], fill->found);
        left = 1;
    }
    tside_i_fill_take_back(fill, rows);
    return left && fill->trial.cost <= fill->cut;
}

void tside_i_dive_run(tside_i_dive *d, int number)
{
    tside_i_relaxation *r = d->known->relaxation;
    const tside_i_problem *problem = r->problem;
    go_back(d);
    r->problem = &d->rest;
    while (solve_rest(d) && take_columns(d, number) && complete(d))
        ;
    r->problem = problem;
}
