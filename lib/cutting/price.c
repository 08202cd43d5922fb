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
    NEAR = 8,            /* patterns are looked for first in this share of what they may be worth above their stick */
    NARROWEST = 96       /* quarters less: of what a plan may cost, in units of the prices, nothing is left */
};

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

/*
 * Prices by size alone, of which no stick's room is worth more than the stick: sound before anything is known. What
 * doubles add to prices that together are worth 2^40 is less than one, and their sum a whole number.
 */
static void price_by_size(const tside_i_problem *problem, tside_i_prices *prices)
{
    const int k = tside_i_problem_cheapest(problem);
    const double unit = (double)problem->cost[k] * (double)prices->fine / (double)problem->room[k];
    for (int i = 0; i < problem->types; i++)
        prices->of[i] = (int64_t)((double)problem->size[i] * unit);
}

/* What all pieces cost at least at sound prices. */
static int64_t proven_by(const tside_i_problem *problem, const tside_i_prices *prices)
{
    return (sum_of(problem, prices) + prices->fine - 1) / prices->fine;
}

/*
 * Keeps the prices tried, shrunk to fit, unless they prove less than those kept: the later tell good patterns better
 * from bad ones. Here too doubles add less than one to what a pattern is worth.
 */
static void keep_better(tside_i_pricing *pricing, double fit)
{
    const tside_i_problem *problem = pricing->relaxation->problem;
    tside_i_prices *tried = &pricing->tried, *sound = &pricing->sound;
    const tside_i_prices kept = *sound;
    if (fit < 1)
        for (int i = 0; i < problem->types; i++)
            tried->of[i] = (int64_t)((double)tried->of[i] * fit);
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
    }
    tside_i_relaxation_ask(r);
    tside_i_relaxation_set(r, r->basis);
    tside_i_relaxation_price(r);
}

/* Brings in those of the columns from first on that undercut the prices. Returns whether one did. */
static int enter_columns(tside_i_relaxation *r, int first)
{
    const double undercut =
        1e-10; /* relative: columns that cost what they are worth come in and out again, and nothing ends */
    int entered = 0;
    for (int j = first; j < r->pool.columns; j++)
        if (!r->pool.banned[j] && tside_i_relaxation_worth(r, j) > tside_i_relaxation_cost(r, j) * (1 + undercut))
            entered |= tside_i_relaxation_enter(r, j);
    return entered;
}

/* Brings in the rows of a plan that undercut the prices. */
static void enter_plan(tside_i_pricing *pricing, const tside_i_sticks *plan)
{
    tside_i_relaxation *r = pricing->relaxation;
    for (int i = 0; i < plan->rows && !tside_i_effort_is_spent(r->effort); i++) {
        tside_i_sticks_pattern(plan, i, r->problem->types, pricing->count);
        tside_i_pool_take(r, plan->stock[i], pricing->count);
        enter_columns(r, r->pool.columns - 1);
    }
}

/*
 * Adds patterns of a stock that the prices tried make worth more than it, each by more than the one before. Those that
 * come near the most that the table allows are looked for first: they help most. steps: of a walk. Returns what a
 * pattern is worth at most.
 */
static int64_t price_stock(tside_i_pricing *pricing, int k, int64_t steps)
{
    tside_i_relaxation *r = pricing->relaxation;
    const tside_i_problem *problem = r->problem;
    const int64_t cost = problem->cost[k] * pricing->tried.fine;
    const int64_t most = tside_i_table_worth(problem, pricing->table, problem->room[k]);
    const int first = r->pool.columns;
    int64_t worth = most, floor = most;
    for (int64_t below = (most - cost) / NEAR + 1; floor > cost && r->pool.columns == first; below *= 2) {
        tside_i_walk walk;
        floor = most - below > cost ? most - below : cost;
        walk = (tside_i_walk){.problem = problem,
                              .effort = r->effort,
                              .value = pricing->tried.of,
                              .table = pricing->table,
                              .most = problem->demand,
                              .count = pricing->count,
                              .left = problem->room[k],
                              .floor = floor,
                              .steps = steps};
        while (tside_i_walk_next(&walk)) {
            walk.floor = walk.sum;
            tside_i_pool_add(r, k, pricing->count); /* while it has room: worth is what all of them are, in it or not */
        }
        if (!walk.broken_off)
            worth = walk.floor;
    }
    return worth;
}

/* The same for every stock. Returns what prices must shrink by to be sound, at most 1. */
static double price_patterns(tside_i_pricing *pricing, int64_t steps)
{
    const tside_i_problem *problem = pricing->relaxation->problem;
    double fit = 1;
    for (int k = 0; k < problem->stocks; k++)
        fit = fmin(fit, (double)(problem->cost[k] * pricing->tried.fine) / (double)price_stock(pricing, k, steps));
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

/*
 * The prices to try: the relaxation's; drawn: most of the way from these to the sound ones. Those swing less from one
 * basis to the next, and so fewer columns do: Wentges (1997), International Transactions in Operational Research 4,
 * 151-162 (citation from memory).
 */
static void try_prices(tside_i_pricing *pricing, int drawn)
{
    tside_i_prices *tried = &pricing->tried;
    const tside_i_prices *sound = &pricing->sound;
    tside_i_round_prices(pricing->relaxation, pricing->fine, tried);
    if (drawn && tried->fine == sound->fine)
        for (int i = 0; i < pricing->relaxation->problem->types; i++)
            tried->of[i] = (tried->of[i] + 4 * sound->of[i]) / 5;
}

/* Prices the patterns, and brings in those that undercut the prices. 0 if there are none. */
static int generate(tside_i_pricing *pricing, int drawn)
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
    try_prices(pricing, drawn);
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

/* Whether the bound may still rise to another total of stock: not beyond what the relaxation costs. */
static int may_rise(const tside_i_pricing *pricing)
{
    const tside_i_relaxation *r = pricing->relaxation;
    const int64_t level = r->problem->level;
    double cost = 0;
    for (int i = 0; i < r->rows; i++)
        cost += r->price[i] * r->demand[i];
    return proven_by(r->problem, &pricing->sound) / level <
           (int64_t)ceil(cost * (double)tside_i_dearest(r->problem)) / level;
}

int64_t tside_i_price_all(tside_i_pricing *pricing, int first)
{
    tside_i_relaxation *r = pricing->relaxation;
    tside_i_relaxation_price(r);
    enter_columns(r, first);
    while (may_rise(pricing) && !tside_i_effort_is_spent(r->effort) && (generate(pricing, 1) || generate(pricing, 0)))
        ;
    return proven_by(r->problem, &pricing->sound);
}

int64_t tside_i_find_prices(tside_i_pricing *pricing, const tside_i_sticks *plan)
{
    tside_i_relaxation *r = pricing->relaxation;
    pricing->fine = pricing->sound.fine = tside_i_fine(plan->cost);
    price_by_size(r->problem, &pricing->sound);
    begin(pricing);
    enter_plan(pricing, plan);
    return tside_i_price_all(pricing, r->pool.columns);
}

/* --- patterns to choose from --- */

typedef enum listed { ALL, SOME, TOO_MANY } listed;

/* Lists the full patterns of every stock that fall short of it by no more than so much, as many as steps find. */
static listed list_short_by(tside_i_pricing *pricing, int64_t short_by, int most)
{
    tside_i_relaxation *r = pricing->relaxation;
    const tside_i_problem *problem = r->problem;
    const tside_i_prices *sound = &pricing->sound;
    listed found = ALL;
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
                             .steps = LIST_STEPS};
        while (tside_i_walk_next(&walk))
            if ((!k || problem->room[k] - walk.left > problem->room[k - 1]) && tside_i_walk_is_full(&walk) &&
                (r->pool.columns == most || !tside_i_pool_add(r, k, pricing->count)))
                return TOO_MANY;
        if (walk.broken_off)
            found = SOME;
    }
    return found;
}

/* A quarter less, so many times. */
static int64_t narrowed(int64_t short_by, int times)
{
    while (times-- > 0)
        short_by -= short_by / 4 + 1;
    return short_by > 0 ? short_by : 0;
}

int tside_i_list_patterns(tside_i_pricing *pricing, int64_t cost, int most)
{
    tside_i_relaxation *r = pricing->relaxation;
    const int64_t room = cost * pricing->sound.fine - sum_of(r->problem, &pricing->sound);
    int too_many = 0, few = NARROWEST;
    listed found;
    tside_i_table(r->problem, r->effort, pricing->sound.of, pricing->table);
    found = list_short_by(pricing, room, most);
    if (found != TOO_MANY)
        return found == ALL;
    while (few - too_many > 1) {
        const int middle = (few + too_many) / 2;
        if (list_short_by(pricing, narrowed(room, middle), most) == TOO_MANY)
            too_many = middle;
        else
            few = middle;
    }
    list_short_by(pricing, narrowed(room, few), most);
    return 0;
}
