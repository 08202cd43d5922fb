/* SPDX-License-Identifier: MIT */
/*
 * Prices of pieces: by them a bound is proven, and the patterns are found that a good plan can hold.
 *
 * Columns are generated until none undercuts the prices: Gilmore and Gomory (1961), Operations Research 9, 849-859.
 * Then, and on the way there, prices shrunk until no pattern at all is worth more than its stick make every plan cost
 * at least their sum: Farley (1990), Operations Research 38, 922-923.
 */
#include <math.h>
#include <string.h>

#include "cutting/price.h"

enum {
    QUICK_STEPS = 2000,
    PRICE_STEPS = 200000,
    LIST_STEPS = 300000, /* of walks: for columns, and where they found none; for the list of one stock */
    NOISE = 64 /* units that prices of a stick's pieces, rounded down, lose together: what falls short by less is as
                  good as any */
};

static const double uneven = 1e-7; /* so much more of each type is asked for than of the one before: with equal demands
                                      bases come round again and again */
static const double shrink = 1 - 1e-14; /* a product of doubles, rounded up, would make prices unsound that just fit */

void tside_i_pricing_parts(tside_i_arena *from, tside_i_pricing *pricing, int types)
{
    PART(from, types, &pricing->sound.of);
    PART(from, types, &pricing->tried.of);
    PART(from, tside_i_table_size(types), &pricing->table);
    PART(from, types, &pricing->count);
}

/* --- whole-numbered prices --- */

int64_t tside_i_fine(int64_t cost)
{
    const int64_t great = (int64_t)1 << 40;
    return cost < great ? great / cost : 1;
}

void tside_i_round_prices(const tside_i_relaxation *r, int64_t fine, tside_i_prices *prices)
{
    const double great = (double)((int64_t)1 << 47), unit = (double)tside_i_dearest(r->problem);
    double highest = 0;
    for (int i = 0; i < r->rows; i++)
        highest = fmax(highest, r->price[i] * unit);
    while (fine > 1 && highest * (double)fine > great)
        fine /= 2;
    for (int i = 0; i < r->rows; i++) {
        const double price = r->price[i] * unit * (double)fine;
        prices->of[i] = price > 0 ? (int64_t)floor(fmin(price, great)) : 0;
    }
    prices->fine = fine;
}

int64_t tside_i_reduced_cost(const tside_i_relaxation *r, const tside_i_prices *prices, int column)
{
    const tside_i_pool *pool = &r->pool;
    int64_t reduced = r->problem->cost[pool->stock[column]] * prices->fine;
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        reduced -= pool->entry[e].count * prices->of[pool->entry[e].type];
    return reduced;
}

static int64_t sum_of(const tside_i_problem *problem, const tside_i_prices *prices)
{
    int64_t sum = 0;
    for (int i = 0; i < problem->types; i++)
        sum += prices->of[i] * problem->demand[i];
    return sum;
}

/* Prices by size alone, of which no stick's room is worth more than the stick: sound before anything is known. */
static void price_by_size(const tside_i_problem *problem, tside_i_prices *prices)
{
    const int k = tside_i_problem_cheapest(problem);
    const double unit = (double)problem->cost[k] * (double)prices->fine / (double)problem->room[k];
    for (int i = 0; i < problem->types; i++)
        prices->of[i] = (int64_t)((double)problem->size[i] * unit * shrink);
}

/* What all pieces cost at least at sound prices. */
static int64_t proven_by(const tside_i_problem *problem, const tside_i_prices *prices)
{
    return (sum_of(problem, prices) + prices->fine - 1) / prices->fine;
}

/*
 * Keeps the prices tried, shrunk to fit, unless they prove less than those kept: the later tell good patterns better
 * from bad ones.
 */
static void keep_better(tside_i_pricing *pricing, double fit)
{
    const tside_i_problem *problem = pricing->relaxation->problem;
    tside_i_prices *tried = &pricing->tried, *sound = &pricing->sound;
    const tside_i_prices kept = *sound;
    if (fit < 1)
        for (int i = 0; i < problem->types; i++)
            tried->of[i] = (int64_t)((double)tried->of[i] * (fit * shrink));
    if (proven_by(problem, tried) < proven_by(problem, sound))
        return;
    *sound = *tried;
    *tried = kept;
}

/* --- columns --- */

/*
 * The stock that costs least for pieces of one type alone; count: receives how many it holds, no more than are asked
 * for.
 */
static int stock_for(const tside_i_problem *problem, int type, int *count)
{
    int stock = -1;
    for (int k = 0; k < problem->stocks; k++) {
        const int64_t room = problem->room[k] / problem->size[type];
        const int fits = room < problem->demand[type] ? (int)room : problem->demand[type];
        if (fits &&
            (stock < 0 || (double)fits * (double)problem->cost[stock] > (double)*count * (double)problem->cost[k])) {
            stock = k;
            *count = fits;
        }
    }
    return stock;
}

/* Sticks of each type alone for a start. */
static void begin(tside_i_pricing *pricing)
{
    tside_i_relaxation *r = pricing->relaxation;
    const tside_i_problem *problem = r->problem;
    const int m = problem->types;
    tside_i_relaxation_begin(r, m);
    memset(pricing->count, 0, (size_t)m * sizeof *pricing->count);
    for (int i = 0; i < m; i++) {
        const int stock = stock_for(problem, i, pricing->count + i);
        tside_i_pool_add(r, stock, pricing->count);
        pricing->count[i] = 0;
        r->basis[i] = i;
        r->demand[i] = problem->demand[i] * (1 + uneven * (i + 1));
    }
    tside_i_relaxation_set(r, r->basis);
    tside_i_relaxation_price(r);
}

/* Adds a pattern, for which columns that are not in the basis may have to go. 0 if there is no room even so. */
static int add_pattern(tside_i_relaxation *r, int stock, const int *count)
{
    if (tside_i_pool_add(r, stock, count))
        return 1;
    tside_i_pool_shrink(r);
    return tside_i_pool_add(r, stock, count);
}

/* Brings in those of the columns from first on that undercut the prices. Returns whether one did. */
static int enter_columns(tside_i_relaxation *r, int first)
{
    const double undercut =
        1e-10; /* relative: columns that cost what they are worth come in and out again, and nothing ends */
    int entered = 0;
    for (int j = first; j < r->pool.columns; j++)
        if (tside_i_relaxation_worth(r, j) > tside_i_relaxation_cost(r, j) * (1 + undercut))
            entered |= tside_i_relaxation_enter(r, j);
    return entered;
}

/* Brings in the rows of a plan that undercut the prices. */
static void enter_plan(tside_i_pricing *pricing, const tside_i_sticks *plan)
{
    tside_i_relaxation *r = pricing->relaxation;
    for (int i = 0; i < plan->rows && !tside_i_effort_is_spent(r->effort); i++) {
        tside_i_sticks_pattern(plan, i, r->problem->types, pricing->count);
        if (!add_pattern(r, plan->stock[i], pricing->count))
            return;
        enter_columns(r, r->pool.columns - 1);
    }
}

/*
 * Adds patterns by which the prices tried undercut their stock, each by more than the one before. steps: of a walk.
 * Returns what prices must shrink by to be sound, at most 1.
 */
static double price_patterns(tside_i_pricing *pricing, int64_t steps)
{
    tside_i_relaxation *r = pricing->relaxation;
    const tside_i_problem *problem = r->problem;
    const tside_i_prices *tried = &pricing->tried;
    double fit = 1;
    for (int k = 0; k < problem->stocks; k++) {
        const int64_t cost = problem->cost[k] * tried->fine;
        tside_i_walk walk = {.problem = problem,
                             .effort = r->effort,
                             .value = tried->of,
                             .table = pricing->table,
                             .most = problem->demand,
                             .count = pricing->count,
                             .left = problem->room[k],
                             .floor = cost,
                             .steps = steps,
                             .at = -1};
        int64_t worth;
        while (tside_i_walk_next(&walk)) {
            walk.floor = walk.sum;
            if (!tside_i_pool_add(r, k, pricing->count))
                break;
        }
        worth = walk.steps < 0 ? tside_i_table_worth(problem, pricing->table, problem->room[k]) : walk.floor;
        fit = fmin(fit, (double)cost / (double)worth);
    }
    return fit;
}

/* The row of the price furthest below nothing, whose surplus is worth bringing in, or -1. */
static int negative_price(const tside_i_relaxation *r)
{
    const double below = 1e-9; /* a price that rounding leaves below nothing is nothing */
    int row = -1;
    for (int i = 0; i < r->rows; i++)
        if (r->price[i] < (row < 0 ? -below : r->price[row]))
            row = i;
    return row;
}

/* Prices the patterns, and brings in those that undercut the prices. 0 if there are none. */
static int generate(tside_i_pricing *pricing, int64_t fine)
{
    tside_i_relaxation *r = pricing->relaxation;
    int row, first;
    tside_i_relaxation_price(r);
    row = negative_price(r);
    if (row >= 0)
        return tside_i_relaxation_enter(r, -1 - row);
    if (!tside_i_pool_has_room(r))
        tside_i_pool_shrink(r);
    first = r->pool.columns;
    tside_i_round_prices(r, fine, &pricing->tried);
    tside_i_table(r->problem, r->effort, pricing->tried.of, pricing->table);
    for (int64_t steps = QUICK_STEPS;; steps = PRICE_STEPS) {
        const double fit = price_patterns(pricing, steps);
        const int found = r->pool.columns > first;
        if (!found && steps < PRICE_STEPS)
            continue;
        keep_better(pricing, fit);
        return found && enter_columns(r, first);
    }
}

int64_t tside_i_find_prices(tside_i_pricing *pricing, const tside_i_sticks *plan)
{
    tside_i_relaxation *r = pricing->relaxation;
    const int64_t fine = tside_i_fine(plan->cost);
    pricing->sound.fine = fine;
    price_by_size(r->problem, &pricing->sound);
    begin(pricing);
    enter_plan(pricing, plan);
    while (!tside_i_effort_is_spent(r->effort) && generate(pricing, fine))
        ;
    return proven_by(r->problem, &pricing->sound);
}

/* --- patterns to choose from --- */

/*
 * Lists the full patterns of every stock that fall short of it by no more than so much. Returns whether that could be
 * done.
 */
static int list_short_by(tside_i_pricing *pricing, int64_t short_by, int most)
{
    tside_i_relaxation *r = pricing->relaxation;
    const tside_i_problem *problem = r->problem;
    const tside_i_prices *sound = &pricing->sound;
    tside_i_relaxation_begin(r, problem->types + (problem->stocks > 1 ? problem->stocks : 0));
    for (int k = 0; k < problem->stocks; k++) {
        tside_i_walk walk = {.problem = problem,
                             .effort = r->effort,
                             .value = sound->of,
                             .table = pricing->table,
                             .most = problem->demand,
                             .count = pricing->count,
                             .left = problem->room[k],
                             .floor = problem->cost[k] * sound->fine - short_by - 1,
                             .steps = LIST_STEPS,
                             .at = -1};
        while (tside_i_walk_next(&walk))
            if ((!k || problem->room[k] - walk.left > problem->room[k - 1]) && tside_i_walk_is_full(&walk) &&
                (r->pool.columns == most || !tside_i_pool_add(r, k, pricing->count)))
                return 0;
        if (walk.steps < 0)
            return 0;
    }
    return 1;
}

int tside_i_list_patterns(tside_i_pricing *pricing, int64_t cost, int most)
{
    tside_i_relaxation *r = pricing->relaxation;
    const int64_t room = cost * pricing->sound.fine - sum_of(r->problem, &pricing->sound);
    tside_i_table(r->problem, r->effort, pricing->sound.of, pricing->table);
    for (int64_t short_by = room;; short_by -= short_by / 4 + 1) {
        const int all = list_short_by(pricing, short_by, most);
        if (all || short_by <= NOISE || tside_i_effort_is_spent(r->effort))
            return all && short_by == room;
    }
}
