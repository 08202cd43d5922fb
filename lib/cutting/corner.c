/* SPDX-License-Identifier: MIT */
/*
 * What it costs at least to make a basis whole. Whole numbers of the basis' columns, B, meet the demands exactly if and only if what other columns (and
 * surplus) leave of these lies in B's lattice. Modulo the lattice there are only as many vectors as |det B|: a finite group, in which the cheapest choice of
 * other columns is a shortest path, a column's length being its reduced cost. That some of the basis' columns may then be taken fewer than no times is
 * left aside: Gomory (1969), Linear Algebra and its Applications 2, 451-558 (citation from memory). A determinant that rounding had falsified would
 * only make the group smaller, and the bound weaker.
 */
#include <string.h>

#include "cutting/cutting.h"

/* The group: vectors by their digits, each modulo its own factor. */
typedef struct corner {
    int order, target;
    int *matrix;        /* rows of B and behind each the unit's, brought to a diagonal B: then the rows of digits */
    int64_t *cost;      /* of the cheapest choice known that leads to an element, */
    int *last;          /* and the element of its last column */
    int64_t *column_cost; /* of the cheapest column of an element */
    int *column;        /* that one; below 0: surplus */
    int *listed;        /* elements that have one */
    int count;
    int digits, factor[16], row[16];
} corner;

static const int64_t never = INT64_MAX / 4;

/* Takes a multiple of one line of a matrix from another, modulo the order. */
static void subtract(int *to, const int *from, int times, int count, int step, int order)
{
    for (int k = 0; k < count * step; k += step)
        to[k] = (int)(((int64_t)to[k] + (int64_t)(order - times) * from[k]) % order);
}

/* By steps of Euclid's on rows and columns the first line of what is left of the matrix becomes 0 beside its diagonal, in rows and columns; modulo the order. */
static void clear_lines(int *matrix, int m, int at, int order)
{
    const int wide = 2 * m;
    for (;;) {
        int row = -1, column = -1, least = order, again = 0;
        for (int i = at; i < m; i++) /* the least entry comes to the corner */
            for (int k = at; k < m; k++)
                if (matrix[i * wide + k] && matrix[i * wide + k] < least) {
                    least = matrix[i * wide + k];
                    row = i;
                    column = k;
                }
        if (row < 0)
            return;
        for (int k = 0; k < wide && row != at; k++) {
            const int entry = matrix[row * wide + k];
            matrix[row * wide + k] = matrix[at * wide + k];
            matrix[at * wide + k] = entry;
        }
        for (int i = 0; i < m && column != at; i++) {
            const int entry = matrix[i * wide + column];
            matrix[i * wide + column] = matrix[i * wide + at];
            matrix[i * wide + at] = entry;
        }
        for (int i = at + 1; i < m; i++) {
            subtract(matrix + i * wide, matrix + at * wide, matrix[i * wide + at] / least, wide, 1, order);
            again |= matrix[i * wide + at];
        }
        for (int k = at + 1; k < m; k++) {
            subtract(matrix + k, matrix + at, matrix[at * wide + k] / least, m, wide, order);
            again |= matrix[at * wide + k];
        }
        if (!again)
            return;
    }
}

/* Makes the group of the relaxation's basis in the buffer of the table. 0 if it is too large. */
static int make_group(const tside_i_search *s, corner *c)
{
    const tside_i_relaxation *r = &s->relaxation;
    const int m = r->rows, wide = 2 * m;
    const size_t cells = ((size_t)tside_i_types(s) + 1) * (GRID + 1), used = (size_t)(m * m);
    int order;
    if (!(r->determinant < ORDER) || used + (size_t)r->determinant * 4 + 8 > cells)
        return 0;
    order = (int)(r->determinant + 0.5);
    if (order < 1)
        return 0;
    c->matrix = (int *)s->table;
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
    c->order = 1;
    c->digits = 0;
    for (int i = 0; i < m; i++) {
        int factor;
        clear_lines(c->matrix, m, i, order);
        factor = (int)tside_i_common(order, c->matrix[i * wide + i]);
        if (factor == 1)
            continue;
        if (c->digits == 16 || c->order > order / factor)
            return 0;
        c->factor[c->digits] = factor;
        c->row[c->digits++] = i;
        c->order *= factor;
    }
    c->cost = s->table + used;
    c->column_cost = c->cost + c->order;
    c->last = (int *)(c->column_cost + c->order);
    c->column = c->last + c->order;
    c->listed = c->column + c->order;
    return 1;
}

static int plus(const corner *c, int a, int b)
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

/* The element of a column: of a pattern, of a surplus, or, from the number of columns on, of the demands. */
static int element_of(const tside_i_relaxation *r, const corner *c, int column)
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
static void list_elements(const tside_i_search *s, corner *c, int64_t room)
{
    const tside_i_relaxation *r = &s->relaxation;
    for (int g = 0; g < c->order; g++)
        c->column_cost[g] = c->cost[g] = never;
    c->count = 0;
    for (int j = -r->rows; j < r->pool.columns; j++) {
        const int64_t cost = j < 0 ? s->node_price[-1 - j] : tside_i_reduced_cost(s, j);
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

/* Dijkstra's way from 0 to the target, if it costs no more than the room. */
static int64_t shortest(corner *c, int64_t room)
{
    int at = 0;
    c->cost[0] = 0;
    while (c->cost[at] <= room) {
        const int64_t cost = c->cost[at];
        if (at == c->target)
            return cost;
        for (int k = 0; k < c->count; k++) {
            const int step = c->listed[k], to = plus(c, at, step);
            if (c->cost[to] >= 0 && cost + c->column_cost[step] < c->cost[to]) {
                c->cost[to] = cost + c->column_cost[step];
                c->last[to] = step;
            }
        }
        c->cost[at] = -1; /* done */
        at = 0;
        for (int g = 0; g < c->order; g++)
            if (c->cost[g] >= 0 && (c->cost[at] < 0 || c->cost[g] < c->cost[at]))
                at = g;
        if (c->cost[at] < 0)
            break;
    }
    return never;
}

int64_t tside_i_corner(tside_i_search *s)
{
    const double great = 1e17; /* so much may be added up */
    const int64_t room = s->spare < great ? (int64_t)s->spare + 1 : 0;
    tside_i_relaxation *r = &s->relaxation;
    corner c;
    int64_t cost;
    s->extras = 0;
    if (!room || !make_group(s, &c))
        return 0;
    c.target = element_of(r, &c, r->pool.columns);
    list_elements(s, &c, room);
    cost = shortest(&c, room);
    s->nodes += (int)((int64_t)c.order * (c.order + 8 * c.count) / 65536);
    if (cost == never)
        return cost;
    for (int at = c.target; at;) {
        const int step = c.last[at], j = c.column[step];
        if (j >= 0) {
            if (s->extras == EXTRAS)
                return cost;
            s->extra[s->extras++] = j;
        }
        tside_i_relaxation_take(r, j);
        for (int k = 0, place = 1, rest = step, had = at; k < c.digits; k++) { /* at - step */
            const int factor = c.factor[k], digit = had % factor - rest % factor;
            at += ((digit < 0 ? digit + factor : digit) - had % factor) * place;
            place *= factor;
            had /= factor;
            rest /= factor;
        }
    }
    return cost;
}
