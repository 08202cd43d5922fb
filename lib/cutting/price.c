/* SPDX-License-Identifier: MIT */
/* Prices of pieces: by them a bound is proven, and the patterns are found that a good plan can hold. */
#include <string.h>

#include "cutting/cutting.h"

enum { PRICE_STEPS = 200000, LIST_STEPS = 300000, STEPS_IN_NODE = 2000 };

tside_i_walk tside_i_walk_of(const tside_i_search *s, const int64_t *value, const int *most, int64_t room, int64_t floor, int64_t steps)
{
    const tside_i_cutting *cutting = &s->cutting;
    tside_i_walk walk = {cutting->types, cutting->size, value, most, value == cutting->size ? NULL : s->table, tside_i_grid(cutting),
                         cutting->room[cutting->stocks - 1], room, 0, floor, steps, -1, s->count};
    return walk;
}

int64_t tside_i_round_prices(const tside_i_search *s, int64_t *whole)
{
    const double great = (double)((int64_t)1 << 47);
    const tside_i_relaxation *r = &s->relaxation;
    int64_t fine = s->fine;
    double highest = 0;
    for (int i = 0; i < r->rows; i++)
        if (r->price[i] > highest)
            highest = r->price[i];
    highest *= (double)tside_i_dearest(s);
    while (fine > 1 && highest * (double)fine > great)
        fine /= 2;
    for (int i = 0; i < r->rows; i++) {
        const double price = r->price[i] * (double)tside_i_dearest(s) * (double)fine;
        whole[i] = price > 0 ? (int64_t)floor(price < great ? price : great) : 0;
    }
    return fine;
}

/* One stick of each type alone for a start, of the stock that costs least for each. */
static void start_relaxation(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    const int m = tside_i_types(s);
    r->rows = m;
    for (int k = 0; k < s->cutting.stocks; k++)
        r->share[k] = (double)s->cutting.cost[k] / (double)tside_i_dearest(s);
    r->pool.columns = r->pool.start[0] = 0;
    memset(s->count, 0, (size_t)m * sizeof *s->count);
    for (int i = 0; i < m; i++) {
        int stock = -1;
        int64_t best = 0;
        for (int k = 0; k < s->cutting.stocks; k++) {
            int64_t fits = s->cutting.room[k] / s->cutting.size[i];
            if (fits > s->cutting.demand[i])
                fits = s->cutting.demand[i];
            if (fits && (stock < 0 || (double)fits * (double)s->cutting.cost[stock] > (double)best * (double)s->cutting.cost[k])) {
                stock = k;
                best = fits;
            }
        }
        s->count[i] = (int)best;
        tside_i_pool_add(r, stock, s->count);
        s->count[i] = 0;
        s->bases[i] = i;
        r->demand[i] = s->cutting.demand[i];
    }
    tside_i_relaxation_set(r, s->bases);
}

/* Forgets all columns but those of the basis. */
static void shrink_pool(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    tside_i_pool *pool = &r->pool;
    int kept = 0, end = 0;
    for (int j = 0; j < pool->columns; j++) {
        int from = pool->start[j], to = pool->start[j + 1], used = 0;
        for (int i = 0; i < tside_i_types(s); i++)
            if (r->basis[i] == j) {
                r->basis[i] = kept;
                used = 1;
                break;
            }
        if (!used)
            continue;
        memmove(pool->entry + end, pool->entry + from, (size_t)(to - from) * sizeof *pool->entry);
        pool->stock[kept] = pool->stock[j];
        pool->start[kept++] = end;
        end += to - from;
    }
    pool->columns = kept;
    pool->start[kept] = end;
}

/* The pattern that the whole-numbered prices most undercut: found, and its stock, or -1. fit: receives what prices must shrink by to be sound, at most 1. */
static int price_patterns(tside_i_search *s, double *fit)
{
    const tside_i_cutting *cutting = &s->cutting;
    int stock = -1;
    double worst = 1 + 1e-10;
    *fit = 1;
    tside_i_table(cutting, s->price, s->table, tside_i_grid(cutting));
    for (int k = 0; k < cutting->stocks; k++) {
        const double cost = (double)cutting->cost[k] * (double)s->fine;
        tside_i_walk walk = tside_i_walk_of(s, s->price, cutting->demand, cutting->room[k], cutting->cost[k] * s->fine, PRICE_STEPS);
        const int64_t most = s->table[walk.grid == walk.scale ? walk.left : walk.left * walk.grid / walk.scale];
        double worth = (double)tside_i_walk_best(&walk, s->most);
        if (worth / cost > worst) {
            worst = worth / cost;
            stock = k;
            memcpy(s->found, s->most, (size_t)tside_i_types(s) * sizeof *s->found);
        }
        if (walk.steps < 0)
            worth = (double)most;
        if (cost / worth < *fit)
            *fit = cost / worth;
    }
    return stock;
}

static int64_t sum_of_prices(const tside_i_search *s)
{
    int64_t sum = 0;
    for (int i = 0; i < tside_i_types(s); i++)
        sum += s->price[i] * s->cutting.demand[i];
    return sum;
}

void tside_i_raise_bound(tside_i_search *s, int64_t bound)
{
    if (bound > s->bound)
        s->bound = bound;
}

/*
 * Columns are generated until none undercuts the prices: Gilmore and Gomory. Then the prices, shrunk until no pattern at all is worth more than its
 * stick, make every plan cost at least their sum: Farley (1990), Operations Research 38, 922-923.
 */
void tside_i_find_bound(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    const int m = tside_i_types(s);
    double fit = 1;
    start_relaxation(s);
    for (int left = 50 * m + 500; left > 0; left--) {
        int column = r->pool.columns;
        tside_i_relaxation_price(r);
        for (int i = 0; i < m; i++)
            if (r->price[i] < -1e-9)
                column = -1 - i;
        tside_i_round_prices(s, s->price);
        if (column >= 0) {
            int stock = price_patterns(s, &fit);
            if (stock < 0)
                break;
            if (!tside_i_pool_add(r, stock, s->found)) {
                shrink_pool(s);
                column = r->pool.columns;
                if (!tside_i_pool_add(r, stock, s->found))
                    break;
            }
        }
        if (!tside_i_relaxation_enter(r, column))
            break;
    }
    tside_i_round_prices(s, s->price);
    price_patterns(s, &fit);
    if (fit < 1)
        for (int i = 0; i < m; i++)
            s->price[i] = (int64_t)((double)s->price[i] * (fit * (1 - 1e-14)));
    tside_i_raise_bound(s, (sum_of_prices(s) + s->fine - 1) / s->fine);
}

int tside_i_list_patterns(tside_i_search *s, int most)
{
    const tside_i_cutting *cutting = &s->cutting;
    const int64_t room = s->cut * s->fine - sum_of_prices(s);
    tside_i_relaxation *r = &s->relaxation;
    r->rows = cutting->types + (cutting->stocks > 1 ? cutting->stocks : 0);
    tside_i_table(cutting, s->price, s->table, tside_i_grid(cutting));
    for (int64_t short_by = room;; short_by -= short_by / 4 + 1) {
        int all = 1;
        r->pool.columns = r->pool.start[0] = 0;
        for (int k = 0; k < cutting->stocks && all; k++) {
            tside_i_walk walk = tside_i_walk_of(s, s->price, cutting->demand, cutting->room[k], cutting->cost[k] * s->fine - short_by - 1, LIST_STEPS);
            while (all && tside_i_walk_next(&walk))
                if ((!k || cutting->room[k] - walk.left > cutting->room[k - 1]) && tside_i_walk_is_full(&walk))
                    all = r->pool.columns < most && tside_i_pool_add(r, k, s->count);
            all = all && walk.steps >= 0;
            s->nodes += (int)((LIST_STEPS - walk.steps) / STEPS_IN_NODE);
        }
        if (all || short_by <= 0 || s->nodes >= s->limit)
            return all && short_by == room;
    }
}
