/* SPDX-License-Identifier: MIT */
/*
 * What fits into a stick, and what it may be worth at most: a knapsack, searched depth first with a bound from a
 * coarser one.
 */
#include <string.h>

#include "cutting/pattern.h"

enum { GRID = 512 }; /* cells of the table, at most */

static int64_t lesser(int64_t a, int64_t b)
{
    return a < b ? a : b;
}

/* As many cells as the largest room has units, or GRID. */
static int64_t grid_of(const tside_i_problem *problem)
{
    return lesser(problem->room[problem->stocks - 1], GRID);
}

static size_t cell(const tside_i_problem *problem, int64_t left)
{
    const int64_t scale = problem->room[problem->stocks - 1], grid = grid_of(problem);
    return (size_t)(scale == grid ? left : left * grid / scale);
}

size_t tside_i_table_size(int types)
{
    return ((size_t)types + 1) * (GRID + 1);
}

/*
 * Sizes are rounded down to cells, so that whatever fits the room fits the cells; bundles of 1, 2, 4 ... pieces make up
 * every number of them.
 */
void tside_i_table(const tside_i_problem *problem, tside_i_effort *effort, const int64_t *value, int64_t *table)
{
    const int grid = (int)grid_of(problem);
    const size_t width = (size_t)grid + 1;
    int64_t *row = table + (size_t)problem->types * width;
    memset(row, 0, width * sizeof *row);
    for (int j = problem->types - 1; j >= 0; j--) {
        int64_t rest = lesser(problem->demand[j], problem->room[problem->stocks - 1] / problem->size[j]);
        memcpy(row - width, row, width * sizeof *row);
        row -= width;
        for (int64_t bundle = 1; rest > 0; rest -= bundle, bundle *= 2) {
            const int64_t pieces = lesser(bundle, rest), gain = pieces * value[j];
            const int wide = (int)cell(problem, pieces * problem->size[j]);
            for (int g = grid; g >= wide; g--)
                if (row[g - wide] + gain > row[g])
                    row[g] = row[g - wide] + gain;
            tside_i_effort_spend(effort, grid - wide);
        }
    }
}

int64_t tside_i_table_worth(const tside_i_problem *problem, const int64_t *table, int64_t room)
{
    return table[cell(problem, room)];
}

static int64_t still(const tside_i_walk *walk, int j)
{
    const size_t width = (size_t)grid_of(walk->problem) + 1;
    return walk->table ? walk->table[(size_t)j * width + cell(walk->problem, walk->left)] : walk->left;
}

static void take(tside_i_walk *walk, int j, int64_t pieces)
{
    walk->count[j] += (int)pieces;
    walk->left -= pieces * walk->problem->size[j];
    walk->sum += pieces * walk->value[j];
}

/*
 * Takes as many as fit of each type from j on, while that may come to more than the floor. Returns the type where it
 * ended.
 */
static int go_forward(tside_i_walk *walk, int j)
{
    const tside_i_problem *problem = walk->problem;
    const int64_t least = problem->size[problem->types - 1];
    for (; j < problem->types && walk->left >= least && walk->sum + still(walk, j) > walk->floor; j++) {
        walk->count[j] = 0;
        if (walk->left >= problem->size[j])
            take(walk, j, lesser(walk->most[j], walk->left / problem->size[j]));
    }
    return j;
}

/* Takes one piece less of the last type taken before j. Returns the type after it, or 0 if there is none. */
static int go_back(tside_i_walk *walk, int j)
{
    const int from = j;
    while (--j >= 0 && !walk->count[j])
        ;
    if (j < 0)
        return 0;
    walk->broken_off = walk->steps-- <= 0 ||
                       !tside_i_effort_spend(walk->effort, 4 + 4 * (from - j)); /* down there, and up again */
    if (walk->broken_off)
        return 0;
    take(walk, j, -1);
    return j + 1;
}

int tside_i_walk_next(tside_i_walk *walk)
{
    const int types = walk->problem->types;
    int j = 0;
    if (walk->begun && !(j = go_back(walk, walk->at)))
        return 0;
    walk->begun = 1;
    for (;;) {
        j = go_forward(walk, j);
        if (walk->sum > walk->floor) { /* nothing more fits, or it would have gone on */
            memset(walk->count + j, 0, (size_t)(types - j) * sizeof *walk->count);
            walk->at = j;
            return 1;
        }
        if (!(j = go_back(walk, j)))
            return 0;
    }
}

int tside_i_walk_is_full(const tside_i_walk *walk)
{
    const tside_i_problem *problem = walk->problem;
    for (int j = problem->types - 1; j >= 0 && problem->size[j] <= walk->left; j--)
        if (walk->count[j] < walk->most[j])
            return 0;
    return 1;
}
