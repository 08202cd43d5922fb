/* SPDX-License-Identifier: MIT */
/*
 * The search for the cheapest sticks. First a greedy plan; then the linear relaxation over all patterns, whose whole-numbered prices prove a
 * bound; then, for a cost between bound and plan, all patterns that a plan of that cost can hold (the room between the cost and the prices' sum
 * limits how much a pattern may fall short of its stick's price), and branch and bound over how often each is taken, first with the sticks that make up
 * that cost, choice after choice, then with any.
 */
#include <string.h>
#include <string.h>

#include "cutting/cutting.h"

enum { FEW = 1000 }; /* patterns that are enough for a good plan */

static int64_t length_of(const tside_i_search *s, int stock)
{
    return s->cutting.cost[stock] / s->level;
}

/* Whether the sticks to be had, or some of them, may make a plan that is sought. If no stick can be spared, no plan of them costs less than all. */
static int may_do(tside_i_search *s)
{
    int64_t cost = 0;
    double room = 0;
    for (int k = 0; k < s->cutting.stocks; k++) {
        cost += s->to_be_had[k] * s->cutting.cost[k];
        room += (double)s->to_be_had[k] * (double)s->cutting.room[k];
    }
    s->least_cost = cost - s->cutting.cost[0] < s->bound ? cost : s->bound;
    return room > s->material * (1 - 1e-12) && cost >= s->bound && s->least_cost <= s->cut;
}

/* How many sticks of a stock a total allows; no plan takes more of them than there are pieces. */
static int most_sticks(const tside_i_search *s, int stock, int64_t total)
{
    const int64_t most = total / length_of(s, stock);
    return (int)(most < TSIDE_STOCK_PIECES ? most : TSIDE_STOCK_PIECES);
}

/* Whether a plan that is sought may have so many sticks of stock k and of those longer, and beside them only shorter ones. left: what is left of a total. */
static int may_go_on(const tside_i_search *s, int k, int64_t left, int64_t total)
{
    double cost = (double)(s->bound / s->level - total + left) * (double)s->cutting.cost[k - 1] / (double)length_of(s, k - 1);
    for (int i = k; i < s->cutting.stocks; i++)
        cost += (double)s->to_be_had[i] * (double)s->cutting.cost[i];
    return cost < (double)s->cut + 0.5;
}

/*
 * Branches for every choice of sticks whose length together is not above a total, and to which not one more could be added, those with the most long sticks
 * first. Returns whether nothing was left out.
 */
static int branch_by_sticks(tside_i_search *s, int64_t total, int limit)
{
    int whole = 1, tried = 0, k = s->cutting.stocks;
    int64_t left = total;
    do {
        while (k-- > 0) {
            s->to_be_had[k] = most_sticks(s, k, left);
            left -= s->to_be_had[k] * length_of(s, k);
        }
        s->nodes += ++tried % 32 == 0; /* to see that a choice will not do takes far less than a node */
        if (s->nodes >= limit)
            return 0;
        if (may_do(s))
            whole = tside_i_branch(s, limit) && whole;
        left += s->to_be_had[0] * length_of(s, 0);
        for (k = 1; k < s->cutting.stocks; k++) { /* the next choice */
            if (s->to_be_had[k]) {
                s->to_be_had[k]--;
                left += length_of(s, k);
                if (may_go_on(s, k, left, total))
                    break;
            }
            left += s->to_be_had[k] * length_of(s, k);
        }
    } while (k < s->cutting.stocks);
    return whole;
}

/* As many sticks are to be had as the cut pays for. */
static void have_all(tside_i_search *s)
{
    for (int k = 0; k < s->cutting.stocks; k++)
        s->to_be_had[k] = most_sticks(s, k, s->cut / s->level);
    s->least_cost = s->bound;
}

/* Looks for the cheapest plan that costs no more than the cut. Returns whether nothing was left out. */
static int explore(tside_i_search *s, int limit)
{
    const int64_t total = s->cut / s->level;
    const int all = tside_i_list_patterns(s, COLUMNS);
    have_all(s);
    if (s->cutting.stocks == 1)
        return tside_i_branch(s, limit) && all;
    if (tside_i_branch(s, s->nodes + (limit - s->nodes) / 64) || branch_by_sticks(s, total, s->nodes + (limit - s->nodes) / 2))
        return all;
    have_all(s);
    return tside_i_branch(s, limit) && all;
}

/*
 * First the plan is improved as far as that is easy; then, from the bound up, cost after cost is ruled out until a plan is found there. Where there are
 * many costs between, a share of them is ruled out at once.
 */
static void refute_or_improve(tside_i_search *s)
{
    int64_t share = 64;
    s->cut = s->best.cost - 1;
    if (s->limit && s->cut / s->level > s->bound / s->level) {
        tside_i_list_patterns(s, FEW);
        have_all(s);
        if (s->cut >= s->bound)
            tside_i_branch(s, s->nodes + s->limit / 32);
    }
    while (s->bound < s->best.cost && s->nodes < s->limit) {
        const int64_t last = s->best.cost - 1, lowest = s->bound / s->level, total = lowest + (last / s->level - lowest) / share,
                      cut = share > 1 && total < last / s->level ? total * s->level + s->level - 1 : last;
        s->cut = cut;
        if (explore(s, cut == last ? s->limit : s->nodes + (s->limit - s->nodes + 1) / 2))
            tside_i_raise_bound(s, s->best.cost <= cut ? s->best.cost : cut + 1);
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
    tside_i_plan_begin(s);
    tside_i_plan_finish(s);
    count_sticks(s);
    tside_i_find_bound(s);
    refute_or_improve(s);
}
