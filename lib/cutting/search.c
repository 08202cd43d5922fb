/* SPDX-License-Identifier: MIT */
/*
 * The search for the cheapest sticks. First a greedy plan; then the linear relaxation over all patterns, whose
 * whole-numbered prices prove a bound; then plans by rounding it, and solving it again for the rest; then, for a cost
 * between bound and plan, all patterns that a plan of that cost can hold (the room between the cost and the prices' sum
 * limits how much a pattern may fall short of its stick's price), and branch and bound over how often each is taken,
 * first with the sticks that make up that cost, choice after choice, then with any; and all that again from the plan
 * found, where bound and plan still differ.
 */
#include "cutting/search.h"

enum {
    MOST_TYPES = 250, /* that the relaxation takes apart; more are bounded together with their like, and cut as they are
                         filled */
    FEW = 1000,       /* patterns that are enough for a good plan */
    STEPS_IN_NODE = 10000, /* some microseconds, as promised */
    FIRST_FILL = 100000000,
    DIVES = 30,       /* plans by rounding: where few lengths make them cheap, more find nothing more */
    FIRST = 200000000 /* steps for the first plan, and for the bound too, which no limit takes away */
};

static int few_types(int types)
{
    return types < MOST_TYPES ? types : MOST_TYPES;
}

void tside_i_search_parts(tside_i_arena *from, tside_i_search *s, int cut_count)
{
    const int types = few_types(cut_count);
    tside_i_problem_parts(from, &s->problem, cut_count);
    tside_i_problem_parts(from, &s->coarse, types);
    tside_i_relaxation_parts(from, &s->relaxation, types);
    tside_i_pricing_parts(from, &s->pricing, types);
    tside_i_fill_parts(from, &s->fill, cut_count);
    tside_i_dive_parts(from, &s->dive, types);
    tside_i_tree_parts(from, &s->tree, types);
}

static void raise_bound(tside_i_search *s, int64_t bound)
{
    if (bound > s->bound)
        s->bound = bound;
}

/* --- effort --- */

/* Branches with a share of the effort that is left. */
static int branch_within(tside_i_search *s, const tside_i_offer *offer, int64_t share)
{
    const int64_t limit = tside_i_effort_narrow(&s->effort, tside_i_effort_left(&s->effort) / share);
    const int certain = tside_i_branch(&s->tree, offer);
    s->effort.limit = limit;
    return certain;
}

/* --- choices of sticks --- */

static int64_t length_of(const tside_i_problem *problem, int stock)
{
    return problem->cost[stock] / problem->level;
}

/*
 * Whether the sticks on offer, or some of them, may make a plan that is sought. If no stick can be spared, no plan of
 * them costs less than all.
 */
static int may_do(const tside_i_search *s, tside_i_offer *offer)
{
    const double rounding = 1e-12; /* sticks that the pieces just fill may do, as 11.1 m fill two lengths of them */
    const tside_i_problem *problem = &s->problem;
    int64_t cost = 0;
    double room = 0;
    for (int k = 0; k < problem->stocks; k++) {
        cost += offer->sticks[k] * problem->cost[k];
        room += (double)offer->sticks[k] * (double)problem->room[k];
    }
    offer->least = cost - problem->cost[0] < s->bound ? cost : s->bound;
    return room > tside_i_problem_material(problem) * (1 - rounding) && cost >= s->bound && offer->least <= s->fill.cut;
}

/* How many sticks of a stock a total allows; no plan takes more of them than there are pieces. */
static int most_sticks(const tside_i_problem *problem, int stock, int64_t total)
{
    const int64_t most = total / length_of(problem, stock);
    return (int)(most < TSIDE_STOCK_PIECES ? most : TSIDE_STOCK_PIECES);
}

/*
 * Whether a plan that is sought may have so many sticks of stock k and of those longer, and beside them only shorter
 * ones. left: what is left of a total.
 */
static int may_go_on(const tside_i_search *s, const tside_i_offer *offer, int k, int64_t left, int64_t total)
{
    const tside_i_problem *problem = &s->problem;
    double cost = (double)(s->bound / problem->level - total + left) * (double)problem->cost[k - 1] /
                  (double)length_of(problem, k - 1);
    for (int i = k; i < problem->stocks; i++)
        cost += (double)offer->sticks[i] * (double)problem->cost[i];
    return cost < (double)s->fill.cut + 0.5;
}

/*
 * Goes on to the next choice: one stick less of a stock, of those shorter what the rest allows. Returns that stock; or
 * how many there are.
 */
static int next_choice(const tside_i_search *s, tside_i_offer *offer, int64_t *left, int64_t total)
{
    const tside_i_problem *problem = &s->problem;
    int k;
    *left += offer->sticks[0] * length_of(problem, 0);
    for (k = 1; k < problem->stocks; k++) {
        if (offer->sticks[k]) {
            offer->sticks[k]--;
            *left += length_of(problem, k);
            if (may_go_on(s, offer, k, *left, total))
                break;
        }
        *left += offer->sticks[k] * length_of(problem, k);
    }
    return k;
}

/*
 * Branches for every choice of sticks whose length together is not above a total, and to which not one more could be
 * added, those with the most long sticks first. Returns whether nothing was left out.
 */
static int branch_by_sticks(tside_i_search *s, int64_t total)
{
    const tside_i_problem *problem = &s->problem;
    tside_i_offer offer;
    int certain = 1, k = problem->stocks;
    int64_t left = total;
    do {
        while (k-- > 0) {
            offer.sticks[k] = most_sticks(problem, k, left);
            left -= offer.sticks[k] * length_of(problem, k);
        }
        if (!tside_i_effort_spend(&s->effort, 20 * problem->stocks + 2 * problem->types))
            return 0;
        if (may_do(s, &offer))
            certain &= tside_i_branch(&s->tree, &offer);
        k = next_choice(s, &offer, &left, total);
    } while (k < problem->stocks);
    return certain;
}

/* As many sticks as the cut pays for. */
static tside_i_offer all_sticks(const tside_i_search *s)
{
    const tside_i_problem *problem = &s->problem;
    tside_i_offer offer;
    for (int k = 0; k < problem->stocks; k++)
        offer.sticks[k] = most_sticks(problem, k, s->fill.cut / problem->level);
    offer.least = s->bound;
    return offer;
}

/* --- the search --- */

/* Looks for the cheapest plan that costs no more than the cut. Returns whether nothing was left out. */
static int explore(tside_i_search *s)
{
    const int64_t total = s->fill.cut / s->problem.level;
    const int all = tside_i_list_patterns(&s->pricing, s->fill.cut, TSIDE_I_COLUMNS);
    tside_i_offer offer = all_sticks(s);
    int64_t limit;
    int certain;
    tside_i_tree_begin(&s->tree);
    if (s->problem.stocks == 1)
        return tside_i_branch(&s->tree, &offer) & all;
    if (branch_within(s, &offer, 64))
        return all;
    limit = tside_i_effort_narrow(&s->effort, tside_i_effort_left(&s->effort) / 2);
    certain = branch_by_sticks(s, total);
    s->effort.limit = limit;
    if (certain)
        return all;
    offer = all_sticks(s);
    return tside_i_branch(&s->tree, &offer) & all;
}

/* Whether less stock than the best plan takes is not ruled out. The cut is set to seek that. */
static int may_save(tside_i_search *s)
{
    s->fill.cut = s->fill.best.cost - 1;
    return s->fill.cut / s->problem.level > s->bound / s->problem.level;
}

/* Plans by rounding, many of them, once the prices are as good as effort allows. */
static void dive(tside_i_search *s)
{
    const int64_t limit = tside_i_effort_narrow(&s->effort, tside_i_effort_left(&s->effort) / 4);
    raise_bound(s, tside_i_price_all(&s->pricing, s->relaxation.pool.columns));
    s->effort.limit = limit;
    tside_i_effort_narrow(&s->effort, tside_i_effort_left(&s->effort) / 2);
    tside_i_dive_begin(&s->dive, &s->pricing);
    s->fill.cut = s->fill.best.cost - 1;
    for (int i = 0; i < DIVES && s->bound < s->fill.best.cost && !tside_i_effort_is_spent(&s->effort); i++)
        tside_i_dive_run(&s->dive, i);
    s->effort.limit = limit;
}

/*
 * The plan is improved as far as that is easy: with the patterns that found the prices, then with some that fall short
 * of them least.
 */
static void improve(tside_i_search *s)
{
    tside_i_offer offer;
    if (!may_save(s))
        return;
    offer = all_sticks(s);
    tside_i_tree_begin(&s->tree);
    branch_within(s, &offer, 8); /* a larger share leaves too little to prove small orders with */
    if (!may_save(s))
        return;
    tside_i_list_patterns(&s->pricing, s->fill.cut, FEW);
    tside_i_tree_begin(&s->tree);
    offer = all_sticks(s);
    branch_within(s, &offer, 32);
}

/* The total of stock to be ruled out next: a share of those from the bound up to a last, the first at least. */
static int64_t next_total(const tside_i_search *s, int64_t last, int64_t share)
{
    const int64_t lowest = s->bound / s->problem.level;
    return share > 1 ? lowest + (last - lowest) / share : last;
}

/* Half the parts, after a total that was not settled, or fewer: as many parts as give another total. */
static int64_t fewer_parts(const tside_i_search *s, int64_t last, int64_t share)
{
    const int64_t total = next_total(s, last, share);
    while (share > 1 && next_total(s, last, share) == total)
        share /= 2;
    return share;
}

/*
 * From the bound up, cost after cost is ruled out until a plan is found there. Where there are many costs between, a
 * share of them is ruled out at once.
 */
static void refute(tside_i_search *s)
{
    const int64_t level = s->problem.level;
    int64_t share = 64;
    while (s->bound < s->fill.best.cost && !tside_i_effort_is_spent(&s->effort)) {
        const int64_t last = s->fill.best.cost - 1, total = next_total(s, last / level, share);
        const int64_t cut = total < last / level ? total * level + level - 1 : last;
        const int64_t limit = tside_i_effort_narrow(&s->effort, cut == last ? tside_i_effort_left(&s->effort)
                                                                            : tside_i_effort_left(&s->effort) / 2);
        int certain;
        s->fill.cut = cut;
        certain = explore(s);
        s->effort.limit = limit;
        if (certain)
            raise_bound(s, s->fill.best.cost <= cut ? s->fill.best.cost : cut + 1);
        else if (cut == last)
            return;
        else if (s->fill.best.cost > cut)
            share = fewer_parts(s, last / level, share);
    }
}

/* The first plan, and costs that count its sticks. */
static void fill_all(tside_i_search *s)
{
    const int64_t limit = tside_i_effort_narrow(&s->effort, FIRST_FILL);
    s->fill.cut = INT64_MAX / 4;
    tside_i_fill_begin(&s->fill);
    tside_i_fill_finish(&s->fill);
    s->effort.limit = limit;
    tside_i_problem_count_sticks(&s->problem, s->fill.best.cost);
    tside_i_fill_recost(&s->fill);
}

/*
 * What pieces cost at least: by their room, and by prices. More types than the relaxation takes are priced together
 * with their like.
 */
static void find_bound(tside_i_search *s, int64_t steps)
{
    const tside_i_sticks none = {.cost = s->fill.best.cost};
    const int64_t limit = tside_i_effort_narrow(&s->effort, steps);
    raise_bound(s, tside_i_problem_least(&s->problem));
    tside_i_problem_coarsen(&s->problem, MOST_TYPES, &s->coarse);
    if (s->bound < s->fill.best.cost)
        raise_bound(s, tside_i_find_prices(&s->pricing, s->coarse.types < s->problem.types ? &none : &s->fill.best));
    s->effort.limit = limit;
}

/*
 * Plan and bound brought together, twice: what the first time leaves open is often closed the second, from prices that
 * the better plan's own sticks lead to. Plans by rounding come first and take what they need; the rest of the first
 * time ends before half the effort is spent, as orders that take all of it are settled by the second.
 */
static void search_twice(tside_i_search *s)
{
    const int64_t half = s->effort.steps + tside_i_effort_left(&s->effort) / 32 * 15;
    int64_t limit;
    dive(s);
    limit = tside_i_effort_narrow(&s->effort, half - s->effort.steps);
    improve(s);
    refute(s);
    s->effort.limit = limit;
    if (s->bound >= s->fill.best.cost || tside_i_effort_is_spent(&s->effort))
        return;
    raise_bound(s, tside_i_find_prices(&s->pricing, &s->fill.best));
    dive(s);
    improve(s);
    refute(s);
}

/* Hands each room what it works on. */
static void connect(tside_i_search *s)
{
    s->relaxation.problem = &s->coarse;
    s->relaxation.effort = &s->effort;
    s->pricing.relaxation = &s->relaxation;
    s->fill.problem = &s->problem;
    s->fill.effort = &s->effort;
    s->dive.fill = &s->fill;
    s->tree.relaxation = &s->relaxation;
    s->tree.fill = &s->fill;
}

void tside_i_search_run(tside_i_search *s, int node_limit, int (*go_on)(void *context), void *context)
{
    const int64_t allowed = (int64_t)node_limit * STEPS_IN_NODE;
    int64_t begun;
    s->effort = (tside_i_effort){.limit = FIRST + allowed, .go_on = go_on, .context = context};
    s->bound = 0;
    s->nodes = 0;
    s->fill.best.rows = s->fill.best.start[0] = 0;
    s->fill.best.cost = 0;
    connect(s);
    if (!s->problem.types)
        return;
    fill_all(s);
    s->tree.fine = tside_i_fine(s->fill.best.cost);
    find_bound(s, FIRST - s->effort.steps + allowed / 3);
    begun = s->effort.steps < FIRST ? s->effort.steps : FIRST;
    s->effort.limit = begun + allowed;
    if (s->coarse.types == s->problem.types && node_limit && s->bound < s->fill.best.cost)
        search_twice(s);
    s->nodes = (int)((s->effort.steps - begun) / STEPS_IN_NODE);
}
