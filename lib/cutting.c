/* SPDX-License-Identifier: MIT */
/*
 * The search for the cheapest sticks. First a greedy plan; then the linear relaxation over all patterns, whose whole-numbered prices prove a
 * bound; then, for a cost between bound and plan, all patterns that a plan of that cost can hold (the room between the cost and the prices' sum
 * limits how much a pattern may fall short of its stick's price), and branch and bound over how often each is taken.
 */
#include <string.h>
#include <string.h>

#include "cutting.h"

#include "compact.h"

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
            whole = tside_i_branch(s, limit) && whole;
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
    const int all = tside_i_list_patterns(s);
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
    int64_t share = 8;
    s->cut = s->best.cost - 1;
    if (s->limit && s->cut / s->level > s->bound / s->level) {
        tside_i_list_patterns(s);
        have_all(s);
        if (s->cut >= s->bound)
            tside_i_branch(s, s->nodes + s->limit / 128);
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
