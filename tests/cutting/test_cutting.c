/* SPDX-License-Identifier: MIT */
/* Small cut plans against an exact solver: GLPK, over patterns that the test lists itself. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "cuts.h"

/* Returns whether the solver proved its answer within its time; then both must agree. */
static int agrees(const cut_order *order, int nodes, int milliseconds, int number)
{
    const cut_answer answer = cut_order_plan(order, nodes);
    double stock;
    int sticks;
    if (cut_answer_wrong(order, &answer))
        ck_abort_msg("order %d: %s", number, cut_answer_wrong(order, &answer));
    if (!cut_order_exact(order, milliseconds, &stock, &sticks))
        return 0;
    if (!(answer.plan.lower_bound <= stock + 1e-9))
        ck_abort_msg("order %d: the bound is %g, and %g is enough", number, answer.plan.lower_bound, stock);
    if (!answer.plan.proven || !answer.plan.fewest || !(fabs(answer.plan.stock - stock) < 1e-6) ||
        answer.plan.sticks != sticks)
        ck_abort_msg("order %d: %g m, %d sticks, proven %d, fewest %d; by the exact solver %g m, %d sticks", number,
                     answer.plan.stock, answer.plan.sticks, answer.plan.proven, answer.plan.fewest, stock, sticks);
    return 1;
}

static void most_agree(dice d, int orders, int stocks, int lengths, int most)
{
    int proven = 0;
    for (int i = 0; i < orders; i++) {
        cut_order order = cut_order_invented(&d, stocks, most);
        if (order.cut_count > lengths)
            order.cut_count = lengths;
        proven += agrees(&order, TSIDE_STOCK_NODES, 50, i);
    }
    ck_assert_msg(proven >= orders / 2, "the exact solver proved %d of %d", proven, orders);
}

START_TEST(an_exact_solver_agrees_on_two_stock_lengths)
{
    most_agree((dice){1}, 200, 2, 4, 4);
}
END_TEST

START_TEST(an_exact_solver_agrees_on_one_stock_length)
{
    most_agree((dice){2}, 100, 1, 10, 20);
}
END_TEST

START_TEST(an_exact_solver_agrees_on_five_stock_lengths)
{
    most_agree((dice){3}, 60, 5, 4, 3);
}
END_TEST

START_TEST(an_exact_solver_agrees_on_many_pieces)
{
    most_agree((dice){4}, 100, 3, 6, 15);
}
END_TEST

/*
 * Orders, found by chance, whose search goes where others seldom go: a better plan is found before all that costs less
 * is ruled out; another number of times costs less than the one ruled out, or not enough more to rule out those beyond
 * it; the path goes as deep as there is room for. And one whose plan of long sticks, cut up into the shortest, would be
 * more sticks than there may be pieces.
 */
START_TEST(an_exact_solver_agrees_where_few_orders_go)
{
    const cut_order many = cut_order_of(0, 0, LIST(3.98, 0.67, 0.79), LIST(0.79, 3.22, 1.87, 0.97, 1.75, 3.29, 3.6),
                                        COUNTS(1683, 1, 6, 466, 4, 1930, 23274));
    cut_answer answer;
    double stock;
    int sticks;
    const cut_order orders[] = {
        cut_order_of(0.003, 0, LIST(8.975, 5.294, 3.599), LIST(2.224, 3.294, 4.425), COUNTS(2850, 2, 1712)),
        cut_order_of(0.003, 0, LIST(11.13, 7.289), LIST(1.385, 3.955, 2.316, 4.825, 7.524), COUNTS(5, 5, 9, 2724, 19)),
        cut_order_of(0, 0, LIST(7.003, 2.727, 1.753, 0.963), LIST(2.962, 3.072, 1.512), COUNTS(1345, 7, 6)),
        cut_order_of(0, 0, LIST(10.65, 7.95, 6.99), LIST(9.4, 1.58, 0.9, 2.34, 4, 5.47, 4.26, 1.59, 2.47, 2.94),
                     COUNTS(11, 2, 3, 31, 4, 116, 3, 2408, 7, 2)),
    };
    for (int i = 0; i < (int)(sizeof orders / sizeof *orders); i++)
        ck_assert_msg(agrees(orders + i, 20000, 2000, i), "the exact solver did not prove order %d", i);
    answer = cut_order_sound(&many, TSIDE_STOCK_NODES);
    ck_assert(answer.plan.proven && cut_order_exact(&many, 2000, &stock, &sticks));
    NEAR(answer.plan.stock, stock, 1e-6, "stock", 0);
    ck_assert_double_gt(stock / 0.67, TSIDE_STOCK_PIECES);
}
END_TEST

/*
 * However little is searched, the bound is no more than a plan of the exact solver's takes, and no plan takes less than
 * shares of sticks do; with more effort the bound is no lower, until it is the plan. An order, found by chance, of
 * which choices of sticks are left open that one could be spared of.
 */
START_TEST(what_little_effort_proves_is_true)
{
    static const int nodes[] = {0, 500, 2000, 5000, 20000, 50000};
    const cut_order order = cut_order_of(
        0, 0, LIST(10.529, 3.833, 1.426),
        LIST(5.211, 3.005, 3.468, 4.576, 3.127, 3.096, 3.284, 1.361, 5.015, 2.809, 7.726, 4.629),
        COUNTS(5, 873, 28, 2942, 25, 19, 2, 6, 16, 12, 29, 20));
    double enough, shares, bound = 0;
    int sticks;
    cut_order_exact(&order, 1000, &enough, &sticks); /* it finds a plan, and need not prove it the best */
    ck_assert(cut_order_relaxed(&order, &shares));
    for (int i = 0; i < (int)(sizeof nodes / sizeof *nodes); i++) {
        const cut_answer answer = cut_order_sound(&order, nodes[i]);
        ck_assert(answer.plan.lower_bound >= bound && answer.plan.lower_bound <= enough + 1e-9);
        ck_assert(answer.plan.stock >= shares - 1e-6);
        bound = answer.plan.lower_bound;
        if (answer.plan.proven)
            NEAR(answer.plan.stock, enough, 1e-6, "stock", nodes[i]);
    }
    NEAR(bound, enough, 1e-6, "proven in the end", 0);
}
END_TEST

/*
 * Soon, without a search, the bound is no less than shares of sticks cost, and no more than whole ones do; of one stock
 * length it is whole sticks, and of several, all of whole feet, it may be the next foot below.
 */
static void is_bounded(const cut_order *order, int number)
{
    const tside_cut_plan plan = cut_order_sound(order, 0).plan;
    const double first = order->stock.lengths[0].length;
    double relaxed, stock;
    int sticks;
    if (!cut_order_relaxed(order, &relaxed))
        return;
    ck_assert_int_eq(plan.nodes, 0);
    relaxed = order->stock.length_count == 1 ? ceil(relaxed / first - 1e-7) * first
                                             : floor(relaxed / 0.3048 + 1e-7) * 0.3048;
    ck_assert_msg(plan.lower_bound >= relaxed - 1e-6, "order %d: a bound of %g m, and shares of sticks cost %g m",
                  number, plan.lower_bound, relaxed);
    if (cut_order_exact(order, 20, &stock, &sticks))
        ck_assert_msg(plan.lower_bound <= stock + 1e-9, "order %d: a bound of %g m, and %g m are enough", number,
                      plan.lower_bound, stock);
}

START_TEST(a_bound_is_what_shares_of_sticks_cost)
{
    dice d = {5};
    for (int i = 0; i < 120; i++) {
        cut_order order = cut_order_invented(&d, 1 + i % 4, 5 + 3 * (i % 6));
        if (order.cut_count > 6)
            order.cut_count = 6;
        is_bounded(&order, i);
    }
}
END_TEST

/* Of sticks so short that all of them together are no metre long. */
START_TEST(a_bound_of_less_than_a_metre_is_true)
{
    dice d = {6};
    int open = 0;
    for (int i = 0; i < 300; i++) {
        cut_order order = cut_order_invented(&d, 4, 2);
        tside_cut_plan plan;
        double stock;
        int sticks;
        order.stock.kerf = order.stock.trim = 0;
        order.cut_count = order.cut_count < 5 ? order.cut_count : 5;
        for (int k = 0; k < order.stock.length_count; k++)
            order.stock.lengths[k].length /= 25;
        for (int j = 0; j < order.cut_count; j++)
            order.cuts[j].length = fmax(order.cuts[j].length / 25, 0.01);
        plan = cut_order_sound(&order, 0).plan;
        if (plan.stock > 1 || !cut_order_exact(&order, 20, &stock, &sticks))
            continue;
        open += !plan.proven;
        ck_assert_msg(plan.lower_bound <= stock + 1e-9, "order %d: a bound of %g m, and %g m are enough", i,
                      plan.lower_bound, stock);
    }
    ck_assert_int_gt(open, 0);
}
END_TEST

Suite *cutting_suite(void);

Suite *cutting_suite(void)
{
    Suite *suite = suite_create("cutting");
    TCase *tcase = tcase_create("cutting");
    tcase_add_test(tcase, an_exact_solver_agrees_on_two_stock_lengths);
    tcase_add_test(tcase, an_exact_solver_agrees_on_one_stock_length);
    tcase_add_test(tcase, an_exact_solver_agrees_on_five_stock_lengths);
    tcase_add_test(tcase, an_exact_solver_agrees_on_many_pieces);
    tcase_add_test(tcase, an_exact_solver_agrees_where_few_orders_go);
    tcase_add_test(tcase, what_little_effort_proves_is_true);
    tcase_add_test(tcase, a_bound_is_what_shares_of_sticks_cost);
    tcase_add_test(tcase, a_bound_of_less_than_a_metre_is_true);
    suite_add_tcase(suite, tcase);
    return suite;
}
