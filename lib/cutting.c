/* SPDX-License-Identifier: MIT */
/*
 * The search for the cheapest sticks. First a greedy plan; then the linear relaxation over all patterns, whose whole-numbered prices prove a
 * bound; then, for a cost between bound and plan, all patterns that a plan of that cost can hold (the room between the cost and the prices' sum
 * limits how much a pattern may fall short of its stick's price), and branch and bound over how often each is taken.
 */
#include <string.h>

#include "cutting.h"

#include "compact.h"

enum { FILL_STEPS = 3000, PRICE_STEPS = 200000, LIST_STEPS = 300000, STEPS_IN_NODE = 2000 };

static int types_of(const tside_i_search *s)
{
    return s->cutting.types;
}

static int64_t dearest(const tside_i_search *s)
{
    return s->cutting.cost[s->cutting.stocks - 1];
}

static tside_i_walk walk_of(const tside_i_search *s, const int64_t *value, const int *most, int64_t room, int64_t floor, int64_t steps)
{
    const tside_i_cutting *cutting = &s->cutting;
    const int64_t widest = cutting->room[cutting->stocks - 1];
    tside_i_walk walk = {cutting->types, cutting->size, value, most, value == cutting->size ? NULL : s->table, widest < GRID ? (int)widest : GRID, widest,
                         room, 0, floor, steps, -1, s->count};
    return walk;
}

/* --- plans --- */

/* Takes so many sticks of a pattern into the plan, without what is over, from the shortest stock that holds the rest. 0 if the plan is full. */
static int append(tside_i_search *s, const int *pattern, int times)
{
    const int m = types_of(s);
    tside_i_sticks *plan = &s->trial;
    while (times > 0) {
        int alike = times, stock = 0;
        int64_t size = 0;
        short *row = plan->pattern + (size_t)plan->rows * (size_t)m;
        if (plan->rows == ROWS * m + ROWS_MORE)
            return 0;
        for (int i = 0; i < m; i++) {
            row[i] = (short)(pattern[i] < s->rest[i] ? pattern[i] : s->rest[i]);
            size += row[i] * s->cutting.size[i];
            if (row[i] && s->rest[i] / row[i] < alike)
                alike = s->rest[i] / row[i];
        }
        if (!size)
            return 1;
        while (s->cutting.room[stock] < size)
            stock++;
        for (int i = 0; i < m; i++)
            s->rest[i] -= alike * row[i];
        plan->stock[plan->rows] = stock;
        plan->times[plan->rows++] = alike;
        plan->cost += alike * s->cutting.cost[stock];
        times -= alike;
    }
    return 1;
}

static void begin_plan(tside_i_search *s)
{
    s->trial.rows = 0;
    s->trial.cost = 0;
    memcpy(s->rest, s->cutting.demand, (size_t)types_of(s) * sizeof *s->rest);
}

/* The fullest pattern with the largest piece of the rest, of the stock that costs least for what it holds; found receives it. */
static void fill_stick(tside_i_search *s, int first)
{
    const int m = types_of(s);
    int64_t best_size = 0, best_cost = 1;
    for (int k = 0; k < s->cutting.stocks; k++) {
        const int64_t room = s->cutting.room[k] - s->cutting.size[first];
        tside_i_walk walk;
        int64_t size;
        if (room < 0)
            continue;
        memcpy(s->most, s->rest, (size_t)m * sizeof *s->most);
        s->most[first]--;
        walk = walk_of(s, s->cutting.size, s->most, room, -1, FILL_STEPS);
        while (walk.floor < room && tside_i_walk_next(&walk)) {
            walk.floor = walk.sum;
            size = walk.sum + s->cutting.size[first];
            if ((double)size * (double)best_cost > (double)best_size * (double)s->cutting.cost[k]) {
                best_size = size;
                best_cost = s->cutting.cost[k];
                memcpy(s->found, s->count, (size_t)m * sizeof *s->found);
                s->found[first]++;
            }
        }
    }
}

/* Makes a plan of what has been taken so far and of greedily filled sticks for the rest; keeps it if it is good enough. */
static void finish_plan(tside_i_search *s)
{
    tside_i_sticks kept = s->best;
    for (int i = 0; i < types_of(s);) {
        int times = s->rest[i];
        if (!times) {
            i++;
            continue;
        }
        if (s->trial.cost > s->cut)
            return;
        fill_stick(s, i);
        for (int k = i; k < types_of(s); k++)
            if (s->found[k] && s->rest[k] / s->found[k] < times)
                times = s->rest[k] / s->found[k];
        if (!append(s, s->found, times))
            return;
    }
    if (s->trial.cost > s->cut)
        return;
    s->best = s->trial;
    s->trial = kept;
    s->cut = s->best.cost - 1;
}

/* --- the bound --- */

static void column_pattern(const tside_i_search *s, int column, int *pattern)
{
    const tside_i_pool *pool = &s->relaxation.pool;
    memset(pattern, 0, (size_t)types_of(s) * sizeof *pattern);
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        if (pool->entry[e].count > 0)
            pattern[pool->entry[e].type] = pool->entry[e].count;
}

/*
 * The relaxation's prices in whole numbers, never above the real ones. Returns how many units of price are in a unit of cost: s->fine, or less where prices are so high
 * that sums of them would not fit in 64 bits.
 */
static int64_t round_prices(const tside_i_search *s, int64_t *whole)
{
    const double great = (double)((int64_t)1 << 47);
    const tside_i_relaxation *r = &s->relaxation;
    int64_t fine = s->fine;
    double highest = 0;
    for (int i = 0; i < r->rows; i++)
        if (r->price[i] > highest)
            highest = r->price[i];
    highest *= (double)dearest(s);
    while (fine > 1 && highest * (double)fine > great)
        fine /= 2;
    for (int i = 0; i < r->rows; i++) {
        const double price = r->price[i] * (double)dearest(s) * (double)fine;
        whole[i] = price > 0 ? (int64_t)floor(price < great ? price : great) : 0;
    }
    return fine;
}

/* One stick of each type alone for a start, of the stock that costs least for each. */
static void start_relaxation(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    const int m = types_of(s);
    r->rows = m;
    for (int k = 0; k < s->cutting.stocks; k++)
        r->share[k] = (double)s->cutting.cost[k] / (double)dearest(s);
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
        for (int i = 0; i < types_of(s); i++)
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
    tside_i_table(cutting, s->price, s->table, cutting->room[cutting->stocks - 1] < GRID ? (int)cutting->room[cutting->stocks - 1] : GRID);
    for (int k = 0; k < cutting->stocks; k++) {
        const double cost = (double)cutting->cost[k] * (double)s->fine;
        tside_i_walk walk = walk_of(s, s->price, cutting->demand, cutting->room[k], cutting->cost[k] * s->fine, PRICE_STEPS);
        const int64_t most = s->table[walk.grid == walk.scale ? walk.left : walk.left * walk.grid / walk.scale];
        double worth = (double)tside_i_walk_best(&walk, s->most);
        if (worth / cost > worst) {
            worst = worth / cost;
            stock = k;
            memcpy(s->found, s->most, (size_t)types_of(s) * sizeof *s->found);
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
    for (int i = 0; i < types_of(s); i++)
        sum += s->price[i] * s->cutting.demand[i];
    return sum;
}

static void raise_bound(tside_i_search *s, int64_t bound)
{
    if (bound > s->bound)
        s->bound = bound;
}

/*
 * Columns are generated until none undercuts the prices: Gilmore and Gomory. Then the prices, shrunk until no pattern at all is worth more than its
 * stick, make every plan cost at least their sum: Farley (1990), Operations Research 38, 922-923.
 */
static void find_bound(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    const int m = types_of(s);
    double fit = 1;
    start_relaxation(s);
    for (int left = 50 * m + 500; left > 0; left--) {
        int column = r->pool.columns;
        tside_i_relaxation_price(r);
        for (int i = 0; i < m; i++)
            if (r->price[i] < -1e-9)
                column = -1 - i;
        round_prices(s, s->price);
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
    round_prices(s, s->price);
    price_patterns(s, &fit);
    if (fit < 1)
        for (int i = 0; i < m; i++)
            s->price[i] = (int64_t)((double)s->price[i] * (fit * (1 - 1e-14)));
    raise_bound(s, (sum_of_prices(s) + s->fine - 1) / s->fine);
}

/* --- the search --- */

/*
 * Puts every full pattern into the pool that falls short of its stick by no more than the room that the cut leaves; where these are too many, those
 * that fall short least. Returns whether it could put in all.
 */
static int list_patterns(tside_i_search *s)
{
    const tside_i_cutting *cutting = &s->cutting;
    const int64_t room = s->cut * s->fine - sum_of_prices(s);
    tside_i_relaxation *r = &s->relaxation;
    r->rows = cutting->types + (cutting->stocks > 1 ? cutting->stocks : 0);
    tside_i_table(cutting, s->price, s->table, cutting->room[cutting->stocks - 1] < GRID ? (int)cutting->room[cutting->stocks - 1] : GRID);
    for (int64_t short_by = room;; short_by -= short_by / 4 + 1) {
        int all = 1;
        r->pool.columns = r->pool.start[0] = 0;
        for (int k = 0; k < cutting->stocks && all; k++) {
            tside_i_walk walk = walk_of(s, s->price, cutting->demand, cutting->room[k], cutting->cost[k] * s->fine - short_by - 1, LIST_STEPS);
            while (all && tside_i_walk_next(&walk))
                if ((!k || cutting->room[k] - walk.left > cutting->room[k - 1]) && tside_i_walk_is_full(&walk))
                    all = tside_i_pool_add(r, k, s->count);
            all = all && walk.steps >= 0;
            s->nodes += (int)((LIST_STEPS - walk.steps) / STEPS_IN_NODE);
        }
        if (all || short_by <= 0 || s->nodes >= s->limit)
            return all && short_by == room;
    }
}

/* What a column costs less what it is worth at the prices where the search stands. */
static int64_t reduced_cost(const tside_i_search *s, int column)
{
    const tside_i_pool *pool = &s->relaxation.pool;
    int64_t reduced = s->cutting.cost[pool->stock[column]] * s->node_fine;
    for (int e = pool->start[column]; e < pool->start[column + 1]; e++)
        reduced -= pool->entry[e].count * s->node_price[pool->entry[e].type];
    return reduced;
}

/* Whether the relaxation's prices prove that nothing below this node costs no more than the cut. fixed: cost of the sticks already taken. */
static int is_ruled_out(tside_i_search *s, int64_t fixed)
{
    const tside_i_relaxation *r = &s->relaxation;
    const tside_i_cutting *cutting = &s->cutting;
    double sum = 0;
    if (fixed > s->cut)
        return 1;
    s->node_fine = round_prices(s, s->node_price);
    s->least = 0;
    for (int j = 0; j < r->pool.columns; j++) {
        const int64_t reduced = r->pool.banned[j] ? 0 : reduced_cost(s, j);
        if (reduced < s->least)
            s->least = reduced;
    }
    for (int i = 0; i < r->rows; i++) {
        const double part = (double)s->node_price[i] * r->demand[i];
        sum += part - 1e-12 * fabs(part);
    }
    sum += (double)s->least * (double)((s->cut - fixed) / cutting->cost[0]);
    return sum > (double)(s->cut - fixed) * (double)s->node_fine * (1 + 1e-15);
}

/* Sets what is left to be met with the columns taken so far, and returns what these cost. */
static int64_t take_columns(tside_i_search *s)
{
    tside_i_relaxation *r = &s->relaxation;
    int64_t cost = 0;
    memset(r->pool.banned, 0, (size_t)r->pool.columns);
    for (int i = 0; i < r->rows; i++)
        r->demand[i] = i < types_of(s) ? s->cutting.demand[i] : -s->to_be_had[i - types_of(s)];
    for (int d = 0; d < s->depth; d++) {
        const int j = s->column[d];
        r->pool.banned[j] = 1;
        cost += s->value[d] * s->cutting.cost[r->pool.stock[j]];
        for (int e = r->pool.start[j]; e < r->pool.start[j + 1]; e++)
            r->demand[r->pool.entry[e].type] -= (double)(s->value[d] * r->pool.entry[e].count);
    }
    return cost;
}

/* A plan of the columns taken, of the whole sticks of the relaxation, and of filled sticks. */
static void round_down(tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    int full = 1;
    begin_plan(s);
    for (int d = 0; d < s->depth && full; d++) {
        column_pattern(s, s->column[d], s->found);
        full = append(s, s->found, s->value[d]);
    }
    for (int i = 0; i < r->rows && full; i++)
        if (r->basis[i] >= 0 && !r->pool.banned[r->basis[i]]) {
            column_pattern(s, r->basis[i], s->found);
            full = append(s, s->found, (int)(r->x[i] + 1e-6));
        }
    if (full)
        finish_plan(s);
}

/* The column taken most often of those not taken a whole number of times: its row, or -1. */
static int fraction(const tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    int row = -1;
    for (int i = 0; i < r->rows; i++)
        if (r->basis[i] >= 0 && !r->pool.banned[r->basis[i]] && fabs(r->x[i] - floor(r->x[i] + 0.5)) > 1e-6 && (row < 0 || r->x[i] > r->x[row]))
            row = i;
    return row;
}

/* Goes a level down: the column of a row will be taken a whole number of times, of which the nearest comes first. */
static void go_down(tside_i_search *s, int row)
{
    const tside_i_relaxation *r = &s->relaxation;
    const size_t m = (size_t)r->rows;
    const int d = s->depth++;
    memcpy(s->bases + (size_t)d * m, r->basis, m * sizeof *r->basis);
    s->column[d] = r->basis[row];
    s->whole[d] = s->low[d] = (int)r->x[row];
    s->high[d] = s->low[d] + 1;
    s->value[d] = r->x[row] - s->low[d] < 0.5 && s->low[d] > 0 ? s->low[d]-- : s->high[d]++;
}

/*
 * Where a number of times is ruled out, the same prices mostly rule out those further the same way: with each time less, the bound loses the column's
 * reduced cost (and there is money for a few more sticks, which may fall short of it); with each time more it gains it.
 */
static void close_side(tside_i_search *s, int64_t fixed)
{
    const int d = s->depth - 1;
    int64_t reduced;
    if (d < 0)
        return;
    reduced = fixed > s->cut ? 0 : reduced_cost(s, s->column[d]);
    if (s->value[d] > s->whole[d]) {
        if (reduced >= 0)
            s->high[d] = -1;
    } else {
        const double lost = (double)s->least * (double)(dearest(s) / s->cutting.cost[0] + 1);
        if (fixed <= s->cut && (double)reduced * (1 - 1e-12) <= lost)
            s->low[d] = -1;
    }
}

/* Goes on to the next number of times that was not tried, up the levels if need be; 0 if there is none. */
static int go_on(tside_i_search *s)
{
    for (; s->depth; s->depth--) {
        const int d = s->depth - 1, low = s->low[d], high = s->high[d];
        if (low >= 0 && (high < 0 || s->whole[d] - low < high - s->whole[d])) {
            s->value[d] = s->low[d]--;
            return 1;
        }
        if (high >= 0) {
            s->value[d] = s->high[d]++;
            return 1;
        }
    }
    return 0;
}

/* A node of a large problem counts for several of a small one: pivots take longer. */
static int weight_of(const tside_i_search *s)
{
    const tside_i_relaxation *r = &s->relaxation;
    const int64_t weight = (int64_t)r->rows * ((int64_t)r->rows * r->rows + r->pool.start[r->pool.columns]) / 32768;
    return 1 + (int)weight;
}

/* Solves the relaxation where the search stands. Returns the row to go down by; -1 where nothing is to be found below; -2 where that is not certain. */
static int look(tside_i_search *s, const int *basis)
{
    tside_i_relaxation *r = &s->relaxation;
    const int64_t fixed = take_columns(s);
    int solved, row;
    s->nodes += weight_of(s);
    r->enough = (double)(s->cut - fixed) / (double)dearest(s) + 2;
    tside_i_relaxation_set(r, basis);
    solved = tside_i_relaxation_solve(r);
    if (solved == 1 && !is_ruled_out(s, fixed))
        round_down(s);
    if (is_ruled_out(s, fixed)) {
        close_side(s, fixed);
        return -1;
    }
    row = solved == 1 && s->depth < LEVELS * types_of(s) + LEVELS_MORE ? fraction(s) : -1;
    return row < 0 ? -2 : row;
}

/* Branch and bound over the pool. Returns whether nothing was left out. */
static int branch(tside_i_search *s, int limit)
{
    tside_i_relaxation *r = &s->relaxation;
    int whole = 1;
    s->depth = 0;
    for (int i = 0; i < r->rows; i++)
        r->basis[i] = -1 - i;
    for (const int *basis = r->basis; s->cut >= s->bound;) {
        int row;
        if (s->nodes >= limit)
            return 0;
        row = look(s, basis);
        whole = whole && row != -2;
        if (row >= 0)
            go_down(s, row);
        else if (!go_on(s))
            return whole;
        basis = s->bases + (size_t)(s->depth - 1) * (size_t)r->rows;
    }
    return 1;
}

static int64_t length_of(const tside_i_search *s, int stock)
{
    return s->cutting.cost[stock] / s->level;
}

/* Whether the sticks to be had, or some of them, may make a plan that is sought: costs are known but for which of them are left out. */
static int may_do(const tside_i_search *s)
{
    int64_t cost = 0;
    double room = 0;
    for (int k = 0; k < s->cutting.stocks; k++) {
        cost += s->to_be_had[k] * s->cutting.cost[k];
        room += (double)s->to_be_had[k] * (double)s->cutting.room[k];
    }
    return room > s->material * (1 - 1e-12) && (cost <= s->cut || cost - s->cutting.cost[0] >= s->bound);
}

/*
 * Branches for every choice of sticks whose length together is not above a total, and to which not one more could be added. Returns whether nothing
 * was left out.
 */
static int branch_by_sticks(tside_i_search *s, int64_t total, int limit)
{
    const int last = s->cutting.stocks - 1;
    int whole = 1, tried = 0, k;
    memset(s->to_be_had, 0, sizeof s->to_be_had);
    do {
        int64_t left = total;
        s->nodes += ++tried % 32 == 0; /* to see that a choice will not do takes far less than a node */
        if (s->nodes >= limit)
            return 0;
        for (k = last; k > 0; k--)
            left -= s->to_be_had[k] * length_of(s, k);
        s->to_be_had[0] = (int)(left / length_of(s, 0));
        if (may_do(s) && s->cut >= s->bound)
            whole = branch(s, limit) && whole;
        for (k = 1; k <= last; k++) { /* the next choice */
            if (left >= length_of(s, k)) {
                s->to_be_had[k]++;
                break;
            }
            left += s->to_be_had[k] * length_of(s, k);
            s->to_be_had[k] = 0;
        }
    } while (k <= last);
    return whole;
}

/* As many sticks are to be had as the cut pays for. */
static void have_all(tside_i_search *s)
{
    for (int k = 0; k < s->cutting.stocks; k++)
        s->to_be_had[k] = (int)(s->cut / s->cutting.cost[k]);
}

/* Looks for the cheapest plan that costs no more than the cut. Returns whether nothing was left out. */
static int explore(tside_i_search *s, int limit)
{
    const int64_t total = s->cut / s->level;
    const int all = list_patterns(s);
    have_all(s);
    if (s->cutting.stocks == 1)
        return branch(s, limit) && all;
    if (branch(s, s->nodes + (limit - s->nodes) / 64) || branch_by_sticks(s, total, s->nodes + (limit - s->nodes) / 2))
        return all;
    have_all(s);
    return branch(s, limit) && all;
}

/*
 * First the plan is improved as far as that is easy; then, from the bound up, cost after cost is ruled out until a plan is found there. Where there are
 * many costs between, a share of them is ruled out at once.
 */
static void refute_or_improve(tside_i_search *s)
{
    int64_t share = 8;
    s->cut = s->best.cost - 1;
    if (s->limit && s->cut / s->level > s->bound / s->level) {
        list_patterns(s);
        have_all(s);
        if (s->cut >= s->bound)
            branch(s, s->nodes + s->limit / 128);
    }
    while (s->bound < s->best.cost && s->nodes < s->limit) {
        const int64_t last = s->best.cost - 1, lowest = s->bound / s->level, total = lowest + (last / s->level - lowest) / share,
                      cut = share > 1 && total < last / s->level ? total * s->level + s->level - 1 : last;
        s->cut = cut;
        if (explore(s, cut == last ? s->limit : s->nodes + (s->limit - s->nodes + 1) / 2))
            raise_bound(s, s->best.cost <= cut ? s->best.cost : cut + 1);
        else if (cut == last)
            return;
        else if (s->best.cost > cut)
            share = share > 1 ? share / 2 : 1;
    }
}

/*
 * Costs have been lengths; now a stick more counts too, but less than any length: of plans that take as much stock the one with the fewest sticks is
 * cheapest. Where numbers would grow too large for that, it is not sought.
 */
static void count_sticks(tside_i_search *s)
{
    tside_i_cutting *cutting = &s->cutting;
    const int64_t most = s->best.cost / cutting->cost[0] + 2, great = (int64_t)1 << 40;
    s->level = cutting->stocks > 1 && s->best.cost <= great / most ? most : 1;
    if (s->level > 1) {
        for (int k = 0; k < cutting->stocks; k++)
            cutting->cost[k] = cutting->cost[k] * s->level + 1;
        s->best.cost = 0;
        for (int i = 0; i < s->best.rows; i++)
            s->best.cost += s->best.times[i] * cutting->cost[s->best.stock[i]];
    }
    s->material = 0;
    for (int i = 0; i < cutting->types; i++)
        s->material += (double)cutting->demand[i] * (double)cutting->size[i];
    s->fine = great / s->best.cost > 1 ? great / s->best.cost : 1;
}

void tside_i_search_run(tside_i_search *s)
{
    s->relaxation.cutting = &s->cutting;
    s->bound = 0;
    s->nodes = 0;
    s->cut = INT64_MAX / 4;
    begin_plan(s);
    finish_plan(s);
    count_sticks(s);
    find_bound(s);
    refute_or_improve(s);
}
