/* SPDX-License-Identifier: MIT */
/* What is asked for in metres becomes whole numbers. */
#include <math.h>

#include "cutting/problem.h"

#include "base/units.h"

static const double nanometre = 1e-9;   /* m, in which costs are counted: inches in 64ths and millimetres are whole */
static const double unit = 1e-9 / 1024; /* m, of sizes and rooms: 300 m have digits to a twentieth of it */

static int64_t whole(double metres, double of)
{
    return (int64_t)floor(metres / of + 0.5);
}

/* Of a stick, without the kerf that is in a piece's size. */
static int64_t room_of(const tside_stock *stock, double stick)
{
    return whole(stick, unit) - whole(stock->trim, unit) + whole(FITS, unit);
}

int tside_i_problem_fits(const tside_stock *stock, double stick, double length)
{
    return whole(length, unit) <= room_of(stock, stick);
}

void tside_i_problem_parts(tside_i_arena *from, tside_i_problem *problem, int cut_count)
{
    PART(from, cut_count, &problem->size);
    PART(from, cut_count, &problem->demand);
    PART(from, cut_count, &problem->type);
}

/* Where a size stands among the types, the longest first, or would stand. */
static int place_of(const tside_i_problem *problem, int64_t size)
{
    int low = 0, high = problem->types;
    while (low < high) {
        const int middle = (low + high) / 2;
        if (problem->size[middle] > size)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* Types of pieces, the longest first, equal lengths together. */
static void make_types(tside_i_problem *problem, const tside_stock *stock, const tside_cut *cuts, int cut_count)
{
    const int64_t kerf = whole(stock->kerf, unit);
    problem->types = 0;
    for (int i = 0; i < cut_count; i++) {
        const int64_t size = whole(cuts[i].length, unit) + kerf;
        const int at = place_of(problem, size);
        if (!cuts[i].count)
            continue;
        if (at == problem->types || problem->size[at] != size) {
            for (int k = problem->types++; k > at; k--) {
                problem->size[k] = problem->size[k - 1];
                problem->demand[k] = problem->demand[k - 1];
            }
            problem->size[at] = size;
            problem->demand[at] = 0;
        }
        problem->demand[at] += cuts[i].count;
    }
    for (int i = 0; i < cut_count; i++)
        problem->type[i] = cuts[i].count ? place_of(problem, whole(cuts[i].length, unit) + kerf) : -1;
}

/* Stocks, the shortest first; of those that hold the same only the shortest, and none that holds no piece. */
static void make_stocks(tside_i_problem *problem, const tside_stock *stock)
{
    int order[TSIDE_STOCK_LENGTHS];
    int64_t part = 0;
    for (int k = 0; k < stock->length_count; k++) {
        int at = k;
        for (; at > 0 && stock->lengths[order[at - 1]].length > stock->lengths[k].length; at--)
            order[at] = order[at - 1];
        order[at] = k;
    }
    for (int j = 0; j < problem->types; j++)
        part = tside_i_common(part, problem->size[j]);
    for (int k = 0; k < stock->length_count; k++) {
        const double length = stock->lengths[order[k]].length;
        const int64_t room = (room_of(stock, length) + whole(stock->kerf, unit)) / part;
        const int last = problem->stocks - 1;
        if (room < problem->size[problem->types - 1] / part || (last >= 0 && room == problem->room[last]))
            continue;
        problem->which[problem->stocks] = order[k];
        problem->room[problem->stocks] = room;
        problem->cost[problem->stocks] = whole(length, nanometre);
        problem->slack = fmax(problem->slack, fabs((double)problem->cost[problem->stocks++] * nanometre - length));
    }
    for (int j = 0; j < problem->types; j++)
        problem->size[j] /= part;
}

/* Costs become lengths over their common measure, which is returned, in nanometres. */
static int64_t share_costs(tside_i_problem *problem)
{
    int64_t measure = 0;
    for (int k = 0; k < problem->stocks; k++)
        measure = tside_i_common(problem->cost[k], measure);
    for (int k = 0; k < problem->stocks; k++)
        problem->cost[k] /= measure;
    return measure;
}

void tside_i_problem_make(tside_i_problem *problem, const tside_stock *stock, const tside_cut *cuts, int cut_count)
{
    problem->stocks = 0;
    problem->level = 1;
    problem->measure = 0;
    problem->slack = 0;
    make_types(problem, stock, cuts, cut_count);
    if (!problem->types)
        return;
    make_stocks(problem, stock);
    problem->measure = (double)share_costs(problem) * nanometre;
}

void tside_i_problem_count_sticks(tside_i_problem *problem, int64_t cost)
{
    const int64_t most = cost / problem->cost[0] + 2, great = (int64_t)1 << 40;
    if (problem->stocks == 1 || cost > great / most)
        return;
    problem->level = most;
    for (int k = 0; k < problem->stocks; k++)
        problem->cost[k] = problem->cost[k] * most + 1;
}

double tside_i_problem_material(const tside_i_problem *problem)
{
    double sum = 0;
    for (int i = 0; i < problem->types; i++)
        sum += (double)problem->demand[i] * (double)problem->size[i];
    return sum;
}

int tside_i_problem_cheapest(const tside_i_problem *problem)
{
    int best = 0;
    for (int k = 1; k < problem->stocks; k++)
        if ((double)problem->cost[k] * (double)problem->room[best] <
            (double)problem->cost[best] * (double)problem->room[k])
            best = k;
    return best;
}

/* Of a sum of as many products as there may be types, and of a share of it: 11.1 m in sticks of 1.3 m and 2.3 m would
 * cost more than they do. */
static const double rounding = 2e-12;

/* What all pieces cost at least in sticks of one stock, of which a share may be bought. */
static int64_t least_of(const tside_i_problem *problem, int stock, int64_t cost)
{
    return (int64_t)ceil(tside_i_problem_material(problem) / (double)problem->room[stock] * (double)cost *
                         (1 - rounding));
}

/* Length is bought by whole measures and sticks one by one: each is least by itself. */
int64_t tside_i_problem_least(const tside_i_problem *problem)
{
    int64_t length = INT64_MAX;
    for (int k = 0; k < problem->stocks; k++) {
        const int64_t of_one = least_of(problem, k, problem->cost[k] / problem->level);
        if (of_one < length)
            length = of_one;
    }
    return problem->level > 1 ? length * problem->level + least_of(problem, problem->stocks - 1, 1) : length;
}

void tside_i_problem_coarsen(const tside_i_problem *problem, int most, tside_i_problem *coarse)
{
    int64_t *size = coarse->size;
    int *demand = coarse->demand;
    *coarse = *problem;
    coarse->size = size;
    coarse->demand = demand;
    coarse->types = problem->types < most ? problem->types : most;
    for (int j = 0; j < coarse->types; j++)
        demand[j] = 0;
    for (int i = 0; i < problem->types; i++) {
        const int j = (int)((int64_t)i * coarse->types / problem->types);
        size[j] = problem->size[i];
        demand[j] += problem->demand[i];
    }
}
