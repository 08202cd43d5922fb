/* SPDX-License-Identifier: MIT */
/* A small simplex method over patterns, with the whole inverse of its basis. What it answers is never taken as proof: cutting.c checks its prices in whole numbers. */
#include <string.h>

#include "cutting/cutting.h"

enum { ANEW = 50 }; /* pivots until the inverse is made anew */

static const double tiny = 1e-9;

int tside_i_pool_add(tside_i_relaxation *r, int stock, const int *count)
{
    tside_i_pool *pool = &r->pool;
    int end = pool->start[pool->columns];
    if (pool->columns == COLUMNS)
        return 0;
    for (int i = 0; i < r->cutting->types; i++) {
        if (!count[i])
            continue;
        if (end == COLUMNS * ENTRIES)
            return 0;
        pool->entry[end].type = (short)i;
        pool->entry[end++].count = (short)count[i];
    }
    if (r->rows > r->cutting->types) {
        if (end == COLUMNS * ENTRIES)
            return 0;
        pool->entry[end].type = (short)(r->cutting->types + stock);
        pool->entry[end++].count = -1;
    }
    pool->stock[pool->columns] = (unsigned char)stock;
    pool->banned[pool->columns] = 0;
    pool->start[++pool->columns] = end;
    return 1;
}

void tside_i_pool_pattern(const tside_i_relaxation *r, int column, int *pattern)
{
    const tside_i_pool *pool = &r->pool;
    memset(pattern, 0, (size_t)r->cutting->types * sizeof *pattern);
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        if (pool->entry[e].count > 0)
            pattern[pool->entry[e].type] = pool->entry[e].count;
}

static double cost_of(const tside_i_relaxation *r, int column)
{
    return column < 0 ? 0 : r->share[r->pool.stock[column]];
}

/* As many numbers as there are rows, times a column. */
static double times_column(const tside_i_relaxation *r, const double *row, int column)
{
    double sum = 0;
    if (column < 0)
        return -row[-1 - column];
    for (int e = r->pool.start[column]; e < r->pool.start[column + 1]; e++)
        sum += row[r->pool.entry[e].type] * r->pool.entry[e].count;
    return sum;
}

static double *row_of(const tside_i_relaxation *r, int row)
{
    return r->inverse + (size_t)row * (size_t)r->rows;
}

static void make_alpha(tside_i_relaxation *r, int column)
{
    for (int i = 0; i < r->rows; i++)
        r->alpha[i] = times_column(r, row_of(r, i), column);
}

/* The column whose alpha was made takes the place of the row's. */
static void pivot(tside_i_relaxation *r, int row, int column)
{
    const int m = r->rows;
    double *by = row_of(r, row);
    const double p = r->alpha[row];
    tside_i_effort_spend(r->effort, m);
    for (int k = 0; k < m; k++)
        by[k] /= p;
    r->x[row] /= p;
    for (int i = 0; i < m; i++) {
        const double a = r->alpha[i];
        double *to = row_of(r, i);
        if (i == row || a == 0)
            continue;
        for (int k = 0; k < m; k++)
            to[k] -= a * by[k];
        tside_i_effort_spend(r->effort, m / 2); /* two at a time */
        r->x[i] -= a * r->x[row];
    }
    r->basis[row] = column;
    r->determinant *= fabs(p);
    r->pivots++;
}

static void make_x(tside_i_relaxation *r)
{
    for (int i = 0; i < r->rows; i++) {
        const double *row = row_of(r, i);
        r->x[i] = 0;
        for (int k = 0; k < r->rows; k++)
            r->x[i] += row[k] * r->demand[k];
    }
}

/* From the basis of all surplus, columns are brought in one by one, each where it is largest. */
void tside_i_relaxation_set(tside_i_relaxation *r, const int *basis)
{
    const int m = r->rows;
    int *list = r->basis + m; /* a copy: basis may be r's own */
    memcpy(list, basis, (size_t)m * sizeof *list);
    r->determinant = 1;
    memset(r->inverse, 0, (size_t)m * (size_t)m * sizeof *r->inverse);
    for (int i = 0; i < m; i++) {
        row_of(r, i)[i] = -1;
        r->basis[i] = -1 - i;
        r->x[i] = 0;
    }
    for (int i = 0; i < m; i++) /* a surplus that stays is kept from leaving */
        if (list[i] < 0)
            r->x[-1 - list[i]] = 1;
    for (int i = 0; i < m; i++) {
        int row = -1;
        if (list[i] < 0)
            continue;
        make_alpha(r, list[i]);
        for (int k = 0; k < m; k++)
            if (r->basis[k] < 0 && r->x[k] == 0 && (row < 0 || fabs(r->alpha[k]) > fabs(r->alpha[row])))
                row = k;
        if (row >= 0 && fabs(r->alpha[row]) > tiny) {
            double *x = r->x;
            r->x = r->price; /* not x: it marks rows */
            pivot(r, row, list[i]);
            r->x = x;
        }
    }
    r->pivots = 0;
    make_x(r);
}

void tside_i_relaxation_price(tside_i_relaxation *r)
{
    const int m = r->rows;
    memset(r->price, 0, (size_t)m * sizeof *r->price);
    for (int i = 0; i < m; i++) {
        const double cost = cost_of(r, r->basis[i]), *row = row_of(r, i);
        if (cost > 0)
            for (int k = 0; k < m; k++)
                r->price[k] += cost * row[k];
    }
}

static void refresh(tside_i_relaxation *r)
{
    if (r->pivots >= ANEW)
        tside_i_relaxation_set(r, r->basis);
}

int tside_i_relaxation_enter(tside_i_relaxation *r, int column)
{
    int row = -1;
    refresh(r);
    make_alpha(r, column);
    for (int i = 0; i < r->rows; i++) {
        double difference;
        if (r->alpha[i] <= tiny)
            continue;
        difference = row < 0 ? -1 : r->x[i] * r->alpha[row] - r->x[row] * r->alpha[i];
        if (difference < 0 || (difference == 0 && r->alpha[i] > r->alpha[row]))
            row = i;
    }
    if (row < 0)
        return 0;
    pivot(r, row, column);
    return 1;
}

void tside_i_relaxation_take(tside_i_relaxation *r, int column)
{
    make_alpha(r, column);
    for (int i = 0; i < r->rows; i++)
        r->x[i] -= r->alpha[i];
}

/* How far a row is from what it must be: not below 0, and 0 where its column is banned. */
static double amiss(const tside_i_relaxation *r, int row)
{
    return r->basis[row] >= 0 && r->pool.banned[r->basis[row]] ? fabs(r->x[row]) : -r->x[row];
}

/* The column that may come in for a row with the least change of prices. Returns it, or the number of columns if there is none. */
static int incoming(const tside_i_relaxation *r, int row)
{
    const tside_i_pool *pool = &r->pool;
    const double sign = r->x[row] < 0 ? -1 : 1, *by = row_of(r, row);
    double least = 0, greatest = 0;
    int best = pool->columns;
    for (int j = -r->rows; j < pool->columns; j++) {
        double alpha, reduced;
        if (j >= 0 && pool->banned[j])
            continue;
        alpha = sign * times_column(r, by, j);
        if (alpha <= tiny)
            continue;
        reduced = cost_of(r, j) - times_column(r, r->price, j);
        if (reduced < 0)
            reduced = 0;
        if (best == pool->columns || reduced * greatest < least * alpha || (reduced * greatest <= least * alpha && alpha > greatest)) {
            best = j;
            least = reduced;
            greatest = alpha;
        }
    }
    return best;
}

int tside_i_relaxation_solve(tside_i_relaxation *r)
{
    const int m = r->rows;
    make_x(r);
    for (int left = 20 * m + 200; left > 0; left--) {
        int row = 0, column;
        if (!tside_i_effort_spend(r->effort, r->pool.start[r->pool.columns] + r->pool.columns + (int64_t)m * m))
            return -1;
        refresh(r);
        tside_i_relaxation_price(r);
        for (int i = 1; i < m; i++)
            if (amiss(r, i) > amiss(r, row))
                row = i;
        if (amiss(r, row) <= tiny)
            return 1;
        column = incoming(r, row);
        if (column == r->pool.columns) { /* along the row prices rise without end */
            const double by = r->enough / r->x[row];
            for (int k = 0; k < m; k++)
                r->price[k] += by * row_of(r, row)[k];
            return 0;
        }
        make_alpha(r, column);
        pivot(r, row, column);
    }
    return -1;
}
