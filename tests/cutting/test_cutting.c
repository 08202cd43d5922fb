/* SPDX-License-Identifier: MIT */
/* Small cut plans against an exact solver: GLPK, over patterns that the test lists itself. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "cuts.h"

/* Returns whether the solver proved its answer within its time; then both must agree. */
static int agrees(dice *d, int stocks, int lengths, int most, int number)
{
    cut_order order = cut_order_invented(d, stocks, most);
    cut_answer answer;
    double stock;
    int sticks;
    if (order.cut_count > lengths)
        order.cut_count = lengths;
    answer = cut_order_plan(&order, TSIDE_STOCK_NODES);
    if (cut_answer_wrong(&order, &answer))
        ck_abort_msg("order %d: %s", number, cut_answer_wrong(&order, &answer));
    if (!cut_order_exact(&order, 50, &stock, &sticks))
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
    for (int i = 0; i < orders; i++)
        proven += agrees(&d, stocks, lengths, most, i);
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
    tcase_add_test(tcase, a_bound_is_what_shares_of_sticks_cost);
    tcase_add_test(tcase, a_bound_of_less_than_a_metre_is_true);
    suite_add_tcase(suite, tcase);
    return suite;
}
