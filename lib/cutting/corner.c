/* SPDX-License-Identifier: MIT */
/*
 * What it costs at least to make a basis whole. Whole numbers of the basis' columns, B, meet the demands exactly if and
 * only if what other columns (and surplus) leave of these lies in B's lattice. Modulo the lattice there are only as
 * many vectors as |det B|: a finite group, in which the cheapest choice of other columns is a shortest path, a column's
 * length being its reduced cost. That some of the basis' columns may then be taken fewer than no times is left aside:
 * Gomory (1969), Linear Algebra and its Applications 2, 451-558 (citation from memory). A determinant that rounding had
 * falsified would only make the group smaller, and the bound weaker.
 */
#include <math.h>
#include <string.h>

#include "cutting/corner.h"

enum { ORDER = 4096 }; /* of a group that is searched, at most */

void tside_i_corner_parts(tside_i_arena *from, tside_i_corner *c, int types)
{
    const size_t rows = (size_t)tside_i_relaxation_most_rows(types);
    PART(from, 2 * rows * rows, &c->matrix);
    PART(from, ORDER, &c->cost);
    PART(from, ORDER, &c->last);
    PART(from, ORDER, &c->done);
    PART(from, ORDER, &c->column_cost);
    PART(from, ORDER, &c->column);
    PART(from, ORDER, &c->listed);
}

static const int64_t never = INT64_MAX / 4;

/* Takes a multiple of one line of a matrix from another, modulo the order. */
static void subtract(tside_i_effort *effort, int *to, const int *from, int times, int count, int step, int order)
{
    if (!times)
        return;
    tside_i_effort_spend(effort, 5 * count);
    for (int k = 0; k < count * step; k += step)
        to[k] = (int)(((int64_t)to[k] + (int64_t)(order - times) * from[k]) % order);
}

static void swap(int *a, int *b, int count, int step)
{
    for (int k = 0; k < count * step; k += step) {
        const int entry = a[k];
        a[k] = b[k];
        b[k] = entry;
    }
}

/* The place of the least entry above 0 in what is left of a matrix, or -1. */
static int least_entry(const int *matrix, int m, int at)
{
    const int wide = 2 * m;
    int place = -1;
    for (int i = at; i < m; i++)
        for (int k = i * wide + at; k < i * wide + m; k++)
            if (matrix[k] && (place < 0 || matrix[k] < matrix[place]))
                place = k;
    return place;
}

/*
 * By steps of Euclid's on rows and columns the first line of what is left of the matrix becomes 0 beside its diagonal,
 * in rows and columns; modulo the order. 0 if no more effort may be spent.
 */
static int clear_lines(tside_i_effort *effort, int *matrix, int m, int at, int order)
{
    const int wide = 2 * m;
    while (tside_i_effort_spend(effort, (int64_t)(m - at) * (m - at))) {
        const int place = least_entry(matrix, m, at), row = place / wide, column = place % wide;
        int *corner = matrix + at * wide + at, again = 0;
        if (place < 0)
            return 1;
        if (row != at)
            swap(matrix + row * wide, matrix + at * wide, wide, 1);
        if (column != at)
            swap(matrix + column, matrix + at, m, wide);
        for (int i = at + 1; i < m; i++) {
            subtract(effort, matrix + i * wide, matrix + at * wide, matrix[i * wide + at] / *corner, wide, 1, order);
            again |= matrix[i * wide + at];
        }
        for (int k = at + 1; k < m; k++) {
            subtract(effort, matrix + k, matrix + at, matrix[at * wide + k] / *corner, m, wide, order);
            again |= matrix[at * wide + k];
        }
        if (!again)
            return 1;
    }
    return 0;
}

/* The basis, modulo the order, and behind it the unit's matrix. */
static void lay_out(const tside_i_relaxation *r, tside_i_corner *c, int order)
{
    const int m = r->rows, wide = 2 * m;
    memset(c->matrix, 0, (size_t)(m * wide) * sizeof *c->matrix);
    for (int i = 0; i < m; i++) {
        const int j = r->basis[i];
        c->matrix[i * wide + m + i] = 1 % order;
        if (j < 0)
            c->matrix[(-1 - j) * wide + i] = order - 1;
        else
            for (int e = r->pool.start[j]; e < r->pool.start[j + 1]; e++)
                c->matrix[r->pool.entry[e].type * wide + i] = (r->pool.entry[e].count % order + order) % order;
    }
}

/* Makes the group of the relaxation's basis. 0 if it is too large, or no more effort may be spent. */
static int make_group(const tside_i_relaxation *r, tside_i_corner *c)
{
    const int m = r->rows;
    int order;
    if (!(r->determinant < ORDER))
        return 0;
    order = (int)fmax(1, r->determinant + 0.5);
    lay_out(r, c, order);
    c->order = 1;
    c->digits = 0;
    for (int i = 0; i < m; i++) {
        int factor;
        if (!clear_lines(r->effort, c->matrix, m, i, order))
            return 0;
        factor = (int)tside_i_common(order, c->matrix[i * 2 * m + i]);
        if (factor == 1)
            continue;
        if (c->order > order / factor) /* the determinant was none: rounding has eaten it up */
            return 0;
        c->factor[c->digits] = factor;
        c->row[c->digits++] = i;
        c->order *= factor;
    }
    return 1;
}

static int plus(const tside_i_corner *c, int a, int b)
{
    int sum = 0, place = 1;
    for (int k = 0; k < c->digits; k++) {
        const int factor = c->factor[k];
        int digit = a % factor + b % factor;
        if (digit >= factor)
            digit -= factor;
        sum += digit * place;
        place *= factor;
        a /= factor;
        b /= factor;
    }
    return sum;
}

static int minus(const tside_i_corner *c, int a, int b)
{
    int difference = 0, place = 1;
    for (int k = 0; k < c->digits; k++) {
        const int factor = c->factor[k], digit = a % factor - b % factor;
        difference += (digit < 0 ? digit + factor : digit) * place;
        place *= factor;
        a /= factor;
        b /= factor;
    }
    return difference;
}

/* The element of a column: of a pattern, of a surplus, or, from the number of columns on, of the demands. */
static int element_of(const tside_i_relaxation *r, const tside_i_corner *c, int column)
{
    int element = 0, place = 1;
    for (int k = 0; k < c->digits; k++) {
        const int *digit = c->matrix + c->row[k] * 2 * r->rows + r->rows;
        int64_t sum = 0;
        if (column < 0)
            sum = -digit[-1 - column];
        else if (column < r->pool.columns)
            for (int e = r->pool.start[column]; e < r->pool.start[column + 1]; e++)
                sum += (int64_t)digit[r->pool.entry[e].type] * r->pool.entry[e].count;
        else
            for (int i = 0; i < r->rows; i++)
                sum += digit[i] * (int64_t)r->demand[i];
        sum %= c->factor[k];
        element += (int)(sum < 0 ? sum + c->factor[k] : sum) * place;
        place *= c->factor[k];
    }
    return element;
}

/* Lists the cheapest column of each element. */
static void list_elements(const tside_i_relaxation *r, const tside_i_prices *prices, tside_i_corner *c, int64_t room)
{
    for (int g = 0; g < c->order; g++)
        c->column_cost[g] = c->cost[g] = never;
    c->count = 0;
    for (int j = -r->rows; j < r->pool.columns; j++) {
        const int64_t cost = j < 0 ? prices->of[-1 - j] : tside_i_reduced_cost(r, prices, j);
        int element;
        if (cost > room || (j >= 0 && r->pool.banned[j]))
            continue;
        element = element_of(r, c, j);
        if (!element || cost >= c->column_cost[element])
            continue;
        if (c->column_cost[element] == never)
            c->listed[c->count++] = element;
        c->column_cost[element] = cost > 0 ? cost : 0;
        c->column[element] = j;
    }
}

/* The element that is nearest to 0 and not done yet; one is not. */
static int nearest(const tside_i_corner *c)
{
    int at = -1;
    for (int g = 0; g < c->order; g++)
        if (!c->done[g] && (at < 0 || c->cost[g] < c->cost[at]))
            at = g;
    return at;
}

/*
 * Dijkstra's way from 0 to the target, if it costs no more than the room. Returns its cost, or more than any; 0 if no
 * more effort may be spent.
 */
static int64_t shortest(tside_i_effort *effort, tside_i_corner *c, int64_t room)
{
    memset(c->done, 0, (size_t)c->order * sizeof *c->done);
    c->cost[0] = 0;
    for (int at = 0; c->cost[at] <= room; at = nearest(c)) { /* the target is not done, or the way has ended */
        const int64_t cost = c->cost[at];
        if (at == c->target)
            return cost;
        if (!tside_i_effort_spend(effort, c->order + (int64_t)c->count * (2 + 4 * c->digits)))
            return 0;
        for (int k = 0; k < c->count; k++) {
            const int step = c->listed[k], to = plus(c, at, step);
            if (!c->done[to] && cost + c->column_cost[step] < c->cost[to]) {
                c->cost[to] = cost + c->column_cost[step];
                c->last[to] = step;
            }
        }
        c->done[at] = 1;
    }
    return never;
}

/* Goes back along the way, and takes its columns. */
static void take_way(tside_i_relaxation *r, tside_i_corner *c)
{
    for (int at = c->target; at; at = minus(c, at, c->last[at])) {
        const int j = c->column[c->last[at]];
        if (j >= 0) {
            if (c->extras == TSIDE_I_EXTRAS)
                return;
            c->extra[c->extras++] = j;
        }
        tside_i_relaxation_take(r, j);
    }
}

int64_t tside_i_corner_cost(tside_i_corner *c, tside_i_relaxation *r, const tside_i_prices *prices, double spare)
{
    const double great = 1e17; /* so much may be added up */
    const int64_t room = (int64_t)fmin(spare, great) + 1;
    int64_t cost;
    c->extras = 0;
    if (!make_group(r, c))
        return 0;
    c->target = element_of(r, c, r->pool.columns);
    list_elements(r, prices, c, room);
    cost = shortest(r->effort, c, room);
    if (cost != never && !tside_i_effort_is_spent(r->effort))
        take_way(r, c);
    return cost;
}
