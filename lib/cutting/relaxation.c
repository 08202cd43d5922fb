/* SPDX-License-Identifier: MIT */
/*
 * A small simplex method over patterns, with the whole inverse of its basis. Its prices are doubles and prove nothing
 * as they are: price.c rounds them to whole numbers, and proves by those.
 */
#include <math.h>
#include <string.h>

#include "cutting/relaxation.h"

enum {
    ENTRIES = 10, /* of a column, on average */
    ANEW = 200    /* pivots until the inverse is made anew */
};

static const double tiny =
    1e-9; /* what rounding leaves of nothing in the inverse: a pivot on it would make numbers of no meaning */

int tside_i_relaxation_most_rows(int types)
{
    return types + TSIDE_STOCK_LENGTHS;
}

void tside_i_relaxation_parts(tside_i_arena *from, tside_i_relaxation *r, int types)
{
    const size_t rows = (size_t)tside_i_relaxation_most_rows(types);
    PART(from, TSIDE_I_COLUMNS + 1, &r->pool.start);
    PART(from, TSIDE_I_COLUMNS * ENTRIES, &r->pool.entry);
    PART(from, TSIDE_I_COLUMNS, &r->pool.stock);
    PART(from, TSIDE_I_COLUMNS, &r->pool.banned);
    PART(from, TSIDE_I_COLUMNS, &r->pool.out);
    PART(from, rows, &r->basis);
    PART(from, rows, &r->wanted);
    PART(from, rows, &r->kept);
    PART(from, rows, &r->filled);
    PART(from, rows * rows, &r->inverse);
    PART(from, rows, &r->x);
    PART(from, rows, &r->price);
    PART(from, rows, &r->alpha);
    PART(from, rows, &r->demand);
}

static const double uneven = 1e-7; /* so much more of each type is asked for than of the one before: with equal demands
                                      bases come round again and again */

/* --- the pool --- */

void tside_i_relaxation_begin(tside_i_relaxation *r, int rows)
{
    r->rows = rows;
    r->pool.columns = r->pool.settled = r->pool.start[0] = 0;
}

int tside_i_pool_add(tside_i_relaxation *r, int stock, const int *count)
{
    tside_i_pool *pool = &r->pool;
    const int types = r->problem->types;
    int end = pool->start[pool->columns];
    if (pool->columns == TSIDE_I_COLUMNS || end + types >= TSIDE_I_COLUMNS * ENTRIES)
        return 0;
    for (int i = 0; i < types; i++)
        if (count[i])
            pool->entry[end++] = (tside_i_entry){(short)i, (short)count[i]};
    if (r->rows > types)
        pool->entry[end++] = (tside_i_entry){(short)(types + stock), -1};
    pool->stock[pool->columns] = (unsigned char)stock;
    pool->banned[pool->columns] = pool->out[pool->columns] = 0;
    pool->start[++pool->columns] = end;
    tside_i_effort_spend(r->effort, types);
    return 1;
}

void tside_i_pool_take(tside_i_relaxation *r, int stock, const int *count)
{
    if (!tside_i_pool_add(r, stock, count)) {
        tside_i_pool_shrink(r);
        tside_i_pool_add(r, stock, count);
    }
}

int tside_i_pool_has_room(const tside_i_relaxation *r)
{
    const tside_i_pool *pool = &r->pool;
    return pool->columns < TSIDE_I_COLUMNS / 2 && pool->start[pool->columns] < TSIDE_I_COLUMNS * ENTRIES / 2;
}

void tside_i_pool_pattern(const tside_i_relaxation *r, int column, int *pattern)
{
    const tside_i_pool *pool = &r->pool;
    memset(pattern, 0, (size_t)r->problem->types * sizeof *pattern);
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        if (pool->entry[e].count > 0)
            pattern[pool->entry[e].type] = pool->entry[e].count;
}

void tside_i_pool_shrink(tside_i_relaxation *r)
{
    tside_i_pool *pool = &r->pool;
    int kept = 0, end = 0;
    for (int j = 0; j < pool->columns; j++) {
        const int from = pool->start[j], to = pool->start[j + 1];
        int row = 0;
        while (row < r->rows && r->basis[row] != j)
            row++;
        if (row == r->rows && j >= pool->settled)
            continue;
        if (row < r->rows)
            r->basis[row] = kept;
        memmove(pool->entry + end, pool->entry + from, (size_t)(to - from) * sizeof *pool->entry);
        pool->stock[kept] = pool->stock[j];
        pool->banned[kept] = pool->banned[j];
        pool->out[kept] = pool->out[j];
        pool->start[kept++] = end;
        end += to - from;
    }
    pool->columns = kept;
    pool->start[kept] = end;
}

/* --- columns --- */

double tside_i_relaxation_cost(const tside_i_relaxation *r, int column)
{
    const tside_i_problem *problem = r->problem;
    return column < 0 ? 0 : (double)problem->cost[r->pool.stock[column]] / (double)tside_i_dearest(problem);
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

double tside_i_relaxation_worth(const tside_i_relaxation *r, int column)
{
    return times_column(r, r->price, column);
}

static int gives_too_much(const tside_i_relaxation *r, int column)
{
    const tside_i_pool *pool = &r->pool;
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        if (pool->entry[e].count > r->problem->demand[pool->entry[e].type])
            return 1;
    return 0;
}

void tside_i_relaxation_ask(tside_i_relaxation *r)
{
    const tside_i_problem *problem = r->problem;
    for (int i = 0; i < problem->types; i++)
        r->demand[i] = problem->demand[i] * (1 + uneven * (i + 1));
    for (int j = 0; j < r->pool.columns; j++)
        r->pool.banned[j] = (unsigned char)gives_too_much(r, j);
    tside_i_effort_spend(r->effort, r->pool.start[r->pool.columns]);
}

/* --- the basis --- */

static double *row_of(const tside_i_relaxation *r, int row)
{
    return r->inverse + (size_t)row * (size_t)r->rows;
}

static void make_alpha(tside_i_relaxation *r, int column)
{
    for (int i = 0; i < r->rows; i++)
        r->alpha[i] = times_column(r, row_of(r, i), column);
}

/* Divides a row of the inverse, and lists what of it is not 0, mostly a third. Returns how many that are. */
static int divide(const tside_i_relaxation *r, double *row, double by)
{
    int count = 0;
    for (int k = 0; k < r->rows; k++) {
        if (row[k] == 0)
            continue;
        row[k] /= by;
        r->filled[count++] = k;
    }
    return count;
}

/* The column whose alpha was made takes the place of the row's. */
static void pivot(tside_i_relaxation *r, int row, int column)
{
    const int m = r->rows;
    double *by = row_of(r, row);
    const double p = r->alpha[row];
    const int filled = divide(r, by, p);
    int64_t steps = 3 * m;
    r->x[row] /= p;
    for (int i = 0; i < m; i++) {
        const double a = r->alpha[i];
        double *to = row_of(r, i);
        if (i == row || a == 0)
            continue;
        for (int k = 0; k < filled; k++)
            to[r->filled[k]] -= a * by[r->filled[k]];
        steps += filled + filled / 4;
        r->x[i] -= a * r->x[row];
    }
    r->basis[row] = column;
    r->determinant *= fabs(p);
    r->pivots++;
    tside_i_effort_spend(r->effort, steps);
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

/*
 * The row that a column comes in for most safely: of those with a surplus that must go the one where it is largest, or
 * -1.
 */
static int row_for(const tside_i_relaxation *r)
{
    int row = -1;
    double most = tiny;
    for (int k = 0; k < r->rows; k++)
        if (r->basis[k] < 0 && !r->kept[k] && fabs(r->alpha[k]) > most) {
            row = k;
            most = fabs(r->alpha[k]);
        }
    return row;
}

/* From the basis of all surplus, columns are brought in one by one, each where it is largest. */
void tside_i_relaxation_set(tside_i_relaxation *r, const int *basis)
{
    const int m = r->rows;
    memcpy(r->wanted, basis, (size_t)m * sizeof *basis); /* basis may be r's own */
    r->determinant = 1;
    memset(r->inverse, 0, (size_t)m * (size_t)m * sizeof *r->inverse);
    for (int i = 0; i < m; i++) {
        row_of(r, i)[i] = -1;
        r->basis[i] = -1 - i;
        r->kept[i] = 0;
        r->x[i] = 0;
    }
    for (int i = 0; i < m; i++)
        if (r->wanted[i] < 0)
            r->kept[-1 - r->wanted[i]] = 1;
    for (int i = 0; i < m; i++) {
        int row;
        if (r->wanted[i] < 0)
            continue;
        make_alpha(r, r->wanted[i]);
        row = row_for(r);
        if (row >= 0)
            pivot(r, row, r->wanted[i]);
    }
    r->pivots = 0;
    make_x(r);
}

void tside_i_relaxation_price(tside_i_relaxation *r)
{
    const int m = r->rows;
    memset(r->price, 0, (size_t)m * sizeof *r->price);
    for (int i = 0; i < m; i++) {
        const double cost = tside_i_relaxation_cost(r, r->basis[i]), *row = row_of(r, i);
        if (cost > 0)
            for (int k = 0; k < m; k++)
                r->price[k] += cost * row[k];
    }
    tside_i_effort_spend(r->effort, (int64_t)m * m / 2);
}

static void refresh(tside_i_relaxation *r)
{
    if (r->pivots >= ANEW)
        tside_i_relaxation_set(r, r->basis);
}

int tside_i_relaxation_enter(tside_i_relaxation *r, int column)
{
    const double reduced = tside_i_relaxation_cost(r, column) - tside_i_relaxation_worth(r, column);
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
    for (int k = 0; k < r->rows; k++) /* now the column is worth what it costs */
        r->price[k] += reduced * row_of(r, row)[k];
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

/*
 * The column that may come in for a row with the least change of prices. Returns it, or the number of columns if there
 * is none.
 */
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
        reduced = tside_i_relaxation_cost(r, j) - tside_i_relaxation_worth(r, j);
        if (reduced < 0)
            reduced = 0;
        if (best == pool->columns || reduced * greatest < least * alpha ||
            (reduced * greatest <= least * alpha && alpha > greatest)) {
            best = j;
            least = reduced;
            greatest = alpha;
        }
    }
    return best;
}

/* Along a row nothing holds prices back: they rise until they prove that nothing is to be found. */
static void raise_prices(tside_i_relaxation *r, int row)
{
    const double by = r->enough / r->x[row];
    for (int k = 0; k < r->rows; k++)
        r->price[k] += by * row_of(r, row)[k];
}

/* Steps to look at all columns but those of no plan that is sought. */
static int64_t to_look(const tside_i_pool *pool)
{
    int64_t steps = pool->columns;
    for (int j = 0; j < pool->columns; j++)
        if (!pool->out[j])
            steps += pool->start[j + 1] - pool->start[j];
    return steps;
}

int tside_i_relaxation_solve(tside_i_relaxation *r)
{
    const int m = r->rows;
    const int64_t steps = to_look(&r->pool);
    make_x(r);
    for (int left = 20 * m + 200; left > 0 && tside_i_effort_spend(r->effort, steps); left--) {
        int row = 0, column;
        refresh(r);
        tside_i_relaxation_price(r);
        for (int i = 1; i < m; i++)
            if (amiss(r, i) > amiss(r, row))
                row = i;
        if (amiss(r, row) <= tiny)
            return 1;
        column = incoming(r, row);
        if (column == r->pool.columns) {
            raise_prices(r, row);
            return 0;
        }
        make_alpha(r, column);
        pivot(r, row, column);
    }
    return 0;
}
