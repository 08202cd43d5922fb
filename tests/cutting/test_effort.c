/* SPDX-License-Identifier: MIT */
/* How long a cut plan may take: it can be broken off, soon, and what it has then is a plan. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <tunnelside.h>

#include "cuts.h"
#include "cutting/stock.h"

/* A caller who has enough at some question; and the longest that he was not asked for. */
typedef struct caller {
    int asked, enough;
    clock_t last;
    double longest; /* s of the processor's time */
} caller;

static int asks(void *context)
{
    caller *c = context;
    const clock_t time = clock();
    c->longest = fmax(c->longest, (double)(time - c->last) / CLOCKS_PER_SEC);
    c->last = time;
    return ++c->asked != c->enough;
}

/* Pieces of so many different lengths, evenly spread in millimetres. */
static cut_order many_lengths(int lengths, int shortest, int step, int most, int stocks)
{
    static const double sold[] = {6, 6.5, 7.3};
    dice d = {20};
    cut_order order;
    tside_usual(TSIDE_KIND_STOCK, &order.stock);
    strcpy(order.name, "many lengths");
    order.optimum = 0;
    order.stock.length_count = stocks;
    for (int k = 0; k < stocks; k++)
        order.stock.lengths[k].length = sold[k];
    order.cut_count = lengths;
    for (int i = 0; i < lengths; i++)
        order.cuts[i] = (tside_cut){(shortest + i * step) / 1000.0, 1 + dice_below(&d, most)};
    return order;
}

static cut_answer planned_for(caller *c, const cut_order *order, int node_limit)
{
    enum { CAPACITY = 4000 };
    static tside_stick sticks[CAPACITY];
    static int taken[CAPACITY * TSIDE_STOCK_CUTS];
    const size_t size = tside_stock_work(order->cut_count);
    void *work = malloc(size);
    cut_answer answer = {.sticks = sticks, .taken = taken};
    c->last = clock();
    answer.status = tside_i_stock_plan(&order->stock, order->cuts, order->cut_count, node_limit, asks, c, work, size, sticks, taken, CAPACITY, &answer.count,
                                       &answer.plan, &answer.fault);
    c->longest = fmax(c->longest, (double)(clock() - c->last) / CLOCKS_PER_SEC);
    free(work);
    if (cut_answer_wrong(order, &answer))
        ck_abort_msg("%s, broken off at question %d: %s", order->name, c->enough, cut_answer_wrong(order, &answer));
    return answer;
}

static void is_broken_off(const cut_order *order)
{
    static const int after[] = {1, 2, 5, 20, 100, 300};
    for (int i = 0; i < 6; i++) {
        caller c = {.enough = after[i]};
        planned_for(&c, order, TSIDE_STOCK_NODES);
        ck_assert_msg(c.asked <= c.enough, "asked again once he had enough");
        ck_assert_msg(c.longest < 0.05, "%d lengths: not asked for %g s", order->cut_count, c.longest);
    }
}

START_TEST(a_search_is_broken_off)
{
    const cut_order few = many_lengths(20, 1000, 95, 3, 3), more = many_lengths(60, 1000, 31, 3, 3), most = many_lengths(250, 1000, 8, 3, 3);
    is_broken_off(&few);
    is_broken_off(&more);
    is_broken_off(&most);
}
END_TEST

Suite *effort_suite(void);

Suite *effort_suite(void)
{
    Suite *suite = suite_create("effort");
    TCase *tcase = tcase_create("effort");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, a_search_is_broken_off);
    suite_add_tcase(suite, tcase);
    return suite;
}
