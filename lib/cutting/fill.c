/* SPDX-License-Identifier: MIT */
/*
 * Plans of patterns given and of sticks filled greedily: each stick takes the longest piece still asked for and then
 * what fills it best, as far as a short walk finds that.
 */
#include <string.h>

#include "cutting/fill.h"

enum {
    FILL_STEPS = 3000, /* of the walk for one stick */
    ROWS = 20,
    ROWS_MORE = 64, /* of a plan: per type, for each row at least halves what is asked of one; and beside these */
};

static const int64_t beyond_all = INT64_MAX / 2; /* more than any plan costs that is kept */

static int lesser(int a, int b)
{
    return a < b ? a : b;
}

static void plan_parts(tside_i_arena *from, tside_i_sticks *plan, int rows, int entries)
{
    PART(from, rows, &plan->stock);
    PART(from, rows, &plan->times);
    PART(from, rows + 1, &plan->start);
    PART(from, entries, &plan->entry);
}

/* A row has an entry a type, and each entry gives a piece at least. */
void tside_i_fill_parts(tside_i_arena *from, tside_i_fill *fill, int types)
{
    fill->most_rows = lesser(ROWS * types + ROWS_MORE, TSIDE_STOCK_PIECES);
    fill->most_entries = types < TSIDE_STOCK_PIECES / fill->most_rows ? types * fill->most_rows : TSIDE_STOCK_PIECES;
    plan_parts(from, &fill->best, fill->most_rows, fill->most_entries);
    plan_parts(from, &fill->trial, fill->most_rows, fill->most_entries);
    PART(from, types, &fill->rest);
    PART(from, types, &fill->most);
    PART(from, types, &fill->count);
    PART(from, types, &fill->found);
}

void tside_i_sticks_pattern(const tside_i_sticks *plan, int row, int types, int *pattern)
{
    memset(pattern, 0, (size_t)types * sizeof *pattern);
    for (int e = plan->start[row]; e < plan->start[row + 1]; e++)
        pattern[plan->entry[e].type] = plan->entry[e].count;
}

static void empty(tside_i_sticks *plan)
{
    plan->rows = plan->start[0] = 0;
    plan->cost = 0;
}

void tside_i_fill_recost(tside_i_fill *fill)
{
    tside_i_sticks *plan = &fill->best;
    plan->cost = 0;
    for (int i = 0; i < plan->rows; i++)
        plan->cost += plan->times[i] * fill->problem->cost[plan->stock[i]];
}

void tside_i_fill_begin(tside_i_fill *fill)
{
    empty(&fill->trial);
    memcpy(fill->rest, fill->problem->demand, (size_t)fill->problem->types * sizeof *fill->rest);
}

/*
 * Takes sticks of a pattern, as many alike as what is asked for allows, times at most. Returns how many; 0 if nothing
 * of it is asked for.
 */
static int append_alike(tside_i_fill *fill, const int *pattern, int times)
{
    const tside_i_problem *problem = fill->problem;
    tside_i_sticks *plan = &fill->trial;
    const int begin = plan->start[plan->rows];
    int end = begin, alike = times, stock = 0;
    int64_t size = 0;
    for (int i = 0; i < problem->types; i++) {
        const int count = lesser(pattern[i], fill->rest[i]);
        if (!count)
            continue;
        plan->entry[end++] = (tside_i_entry){(short)i, (short)count};
        size += count * problem->size[i];
        alike = lesser(alike, fill->rest[i] / count);
    }
    if (end == begin)
        return 0;
    while (problem->room[stock] < size)
        stock++;
    for (int e = begin; e < end; e++)
        fill->rest[plan->entry[e].type] -= alike * plan->entry[e].count;
    plan->stock[plan->rows] = stock;
    plan->times[plan->rows++] = alike;
    plan->start[plan->rows] = end;
    plan->cost += alike * problem->cost[stock];
    return alike;
}

void tside_i_fill_append(tside_i_fill *fill, const int *pattern, int times)
{
    while (times > 0) {
        int alike;
        if (fill->trial.rows == fill->most_rows) {
            fill->trial.cost = beyond_all;
            return;
        }
        tside_i_effort_spend(fill->effort, 2 * fill->problem->types);
        alike = append_alike(fill, pattern, times);
        times = alike ? times - alike : 0;
    }
}

/*
 * The fullest pattern with the largest piece of the rest, of the stock that costs least for what it holds; found
 * receives it.
 */
static void fill_stick(tside_i_fill *fill, int first)
{
    const tside_i_problem *problem = fill->problem;
    const size_t m = (size_t)problem->types;
    int64_t best_size = 0, best_cost = 1;
    for (int k = 0; k < problem->stocks; k++) {
        const int64_t cost = problem->cost[k], room = problem->room[k] - problem->size[first];
        tside_i_walk walk = {.problem = problem,
                             .effort = fill->effort,
                             .value = problem->size,
                             .most = fill->most,
                             .count = fill->count,
                             .left = room,
                             .floor = -1,
                             .steps = FILL_STEPS};
        if (room < 0)
            continue;
        memcpy(fill->most, fill->rest, m * sizeof *fill->most);
        fill->most[first]--;
        while (walk.floor < room && tside_i_walk_next(&walk)) {
            const int64_t size = walk.sum + problem->size[first];
            walk.floor = walk.sum;
            if ((double)size * (double)best_cost > (double)best_size * (double)cost) {
                best_size = size;
                best_cost = cost;
                memcpy(fill->found, fill->count, m * sizeof *fill->found);
                fill->found[first]++;
            }
        }
    }
}

/* How often the pattern found may be cut before something of it is no longer asked for. */
static int times_found(const tside_i_fill *fill, int first)
{
    int times = fill->rest[first];
    for (int k = first; k < fill->problem->types; k++)
        if (fill->found[k])
            times = lesser(times, fill->rest[k] / fill->found[k]);
    return times;
}

int tside_i_fill_rest(tside_i_fill *fill, int64_t cost)
{
    for (int i = 0; i < fill->problem->types;) {
        if (!fill->rest[i]) {
            i++;
            continue;
        }
        if (fill->trial.cost > cost)
            return 0;
        fill_stick(fill, i);
        tside_i_fill_append(fill, fill->found, times_found(fill, i));
    }
    return 1;
}

void tside_i_fill_keep(tside_i_fill *fill)
{
    const tside_i_sticks *from = &fill->trial;
    tside_i_sticks *to = &fill->best;
    const size_t rows = (size_t)from->rows, entries = (size_t)from->start[rows];
    if (from->cost > fill->cut)
        return;
    to->rows = from->rows;
    to->cost = from->cost;
    memcpy(to->stock, from->stock, rows * sizeof *to->stock);
    memcpy(to->times, from->times, rows * sizeof *to->times);
    memcpy(to->start, from->start, (rows + 1) * sizeof *to->start);
    memcpy(to->entry, from->entry, entries * sizeof *to->entry);
    fill->cut = to->cost - 1;
}

void tside_i_fill_finish(tside_i_fill *fill)
{
    if (tside_i_fill_rest(fill, fill->cut))
        tside_i_fill_keep(fill);
}

void tside_i_fill_take_back(tside_i_fill *fill, int rows)
{
    tside_i_sticks *plan = &fill->trial;
    while (plan->rows > rows) {
        const int row = --plan->rows;
        plan->cost -= plan->times[row] * fill->problem->cost[plan->stock[row]];
        for (int e = plan->start[row]; e < plan->start[row + 1]; e++)
            fill->rest[plan->entry[e].type] += plan->times[row] * plan->entry[e].count;
    }
}
