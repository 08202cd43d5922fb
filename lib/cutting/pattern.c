/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "cutting/cutting.h"

static int64_t lesser(int64_t a, int64_t b)
{
    return a < b ? a : b;
}

static int cell(int64_t left, int grid, int64_t scale)
{
    return (int)(scale == grid ? left : left * grid / scale);
}

int tside_i_grid(const tside_i_cutting *cutting)
{
    return (int)lesser(cutting->room[cutting->stocks - 1], GRID);
}

/* Sizes are rounded down to cells, so that whatever fits the room fits the cells; bundles of 1, 2, 4 ... pieces make up every number of them. */
void tside_i_table(const tside_i_cutting *cutting, tside_i_effort *effort, const int64_t *value, int64_t *table, int grid)
{
    const int64_t scale = cutting->room[cutting->stocks - 1];
    const size_t width = (size_t)grid + 1;
    int64_t *row = table + (size_t)cutting->types * width;
    memset(row, 0, width * sizeof *row);
    for (int j = cutting->types - 1; j >= 0; j--) {
        int64_t rest = lesser(cutting->demand[j], scale / cutting->size[j]);
        memcpy(row - width, row, width * sizeof *row);
        row -= width;
        for (int64_t bundle = 1; rest > 0; rest -= bundle, bundle *= 2) {
            const int64_t pieces = lesser(bundle, rest), gain = pieces * value[j];
            const int wide = cell(pieces * cutting->size[j], grid, scale);
            tside_i_effort_spend(effort, grid - wide);
            for (int g = grid; g >= wide; g--)
                if (row[g - wide] + gain > row[g])
                    row[g] = row[g - wide] + gain;
        }
    }
}

static int64_t still(const tside_i_walk *walk, int j)
{
    return walk->table ? walk->table[(size_t)j * ((size_t)walk->grid + 1) + (size_t)cell(walk->left, walk->grid, walk->scale)] : walk->left;
}

static void take(tside_i_walk *walk, int j, int64_t pieces)
{
    walk->count[j] += (int)pieces;
    walk->left -= pieces * walk->size[j];
    walk->sum += pieces * walk->value[j];
}

int tside_i_walk_next(tside_i_walk *walk)
{
    const int64_t least = walk->size[walk->types - 1];
    int j = walk->at;
    int back = j >= 0; /* not the first */
    if (!back)
        j = 0;
    for (;;) {
        if (back) { /* one piece less of the last type taken */
            const int from = j;
            while (--j >= 0 && !walk->count[j])
                ;
            if (j < 0 || --walk->steps < 0)
                return 0;
            if (!tside_i_effort_spend(walk->effort, 4 + 4 * (from - j))) { /* down there, and up again */
                walk->steps = -1;
                return 0;
            }
            take(walk, j++, -1);
        }
        back = 1;
        while (j < walk->types && walk->left >= least && walk->sum + still(walk, j) > walk->floor) {
            walk->count[j] = 0;
            if (walk->left >= walk->size[j])
                take(walk, j, lesser(walk->most[j], walk->left / walk->size[j]));
            j++;
        }
        if (walk->sum > walk->floor && (j == walk->types || walk->left < least)) {
            for (int i = j; i < walk->types; i++)
                walk->count[i] = 0;
            walk->at = j;
            return 1;
        }
    }
}

int tside_i_walk_is_full(const tside_i_walk *walk)
{
    for (int j = walk->types - 1; j >= 0 && walk->size[j] <= walk->left; j--)
        if (walk->count[j] < walk->most[j])
            return 0;
    return 1;
}

int64_t tside_i_walk_best(tside_i_walk *walk, int *best)
{
    while (tside_i_walk_next(walk)) {
        memcpy(best, walk->count, (size_t)walk->types * sizeof *best);
        walk->floor = walk->sum;
    }
    return walk->floor;
}
