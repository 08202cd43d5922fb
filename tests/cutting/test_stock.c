/* SPDX-License-Identifier: MIT */
/* Cut plans: by hand, the limit of what fits, published problems, and whatever every plan must be. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "cuts.h"

Suite *stock_suite(void);

/* Must be the best, proven, with so many sticks of so much stock. */
static cut_answer best_is(const cut_order *order, int sticks, double stock)
{
    cut_answer answer = cut_order_sound(order, TSIDE_STOCK_NODES);
    ck_assert_int_eq(answer.plan.sticks, sticks);
    NEAR(answer.plan.stock, stock, 1e-9, "stock", sticks);
    ck_assert(answer.plan.proven && answer.plan.fewest);
    return answer;
}

/* --- by hand --- */

START_TEST(plans_by_hand)
{
    cut_order order;
    cut_answer answer;
    /* five of 2 m: two to a stick of 5 m; 0.003 m of kerf between them, and once more behind the second */
    order = cut_order_of(0.003, 0.01, LIST(5), LIST(2), COUNTS(5));
    answer = best_is(&order, 3, 15);
    ck_assert_int_eq(answer.count, 2);
    ck_assert(answer.sticks[0].count == 2 && answer.sticks[0].pieces == 2 && answer.sticks[1].count == 1 &&
              answer.sticks[1].pieces == 1);
    NEAR(answer.sticks[0].used, 4.003, 1e-12, "used", 0);
    NEAR(answer.sticks[0].offcut, 5 - 0.01 - 4.003 - 0.003, 1e-12, "offcut", 0);
    NEAR(answer.plan.lost, 3 * 0.01 + 5 * 0.003, 1e-12, "lost", 0);
    /* 3 + 3 in 6, 4 + 2 in 6: largest first would leave nothing; 2 + 2 + 2 would waste a fours' place */
    order = cut_order_of(0, 0, LIST(6), LIST(2, 4, 3), COUNTS(2, 2, 2));
    best_is(&order, 3, 18);
    /* largest first puts 0.51 alone: 0.51, 0.27 + 0.26 + 0.23 + 0.23 fill nothing; the best fills sticks of 1 wholly */
    order = cut_order_of(0, 0, LIST(1), LIST(0.51, 0.27, 0.26, 0.23), COUNTS(6, 6, 6, 12));
    best_is(&order, 9, 9); /* 6 x 0.51 + 0.26 + 0.23, 3 x 0.27 + 0.27 + 0.23 + 0.23 */
    /* two lengths of stock: 7 m goes whole into 7, 3 + 3 into 6 */
    order = cut_order_of(0, 0, LIST(6, 7), LIST(7, 3), COUNTS(1, 2));
    best_is(&order, 2, 13);
    /* as much stock either way, 6 x 2 or 4 x 3: fewer sticks win */
    order = cut_order_of(0, 0, LIST(2, 3), LIST(1), COUNTS(12));
    best_is(&order, 4, 12);
    /* stock in any order, given twice; the caller's number comes back */
    order = cut_order_of(0, 0, LIST(7, 3, 3), LIST(2.9), COUNTS(1));
    answer = best_is(&order, 1, 3);
    ck_assert_int_eq(answer.sticks[0].stock, 1);
}
END_TEST

START_TEST(equal_lengths_stay_apart)
{
    /* the same length asked for three times, once for nothing */
    cut_order order = cut_order_of(0, 0, LIST(6), LIST(2, 1, 2, 2, 1), COUNTS(2, 0, 3, 4, 6));
    cut_answer answer = best_is(&order, 4, 24);
    ck_assert_int_eq(answer.plan.pieces, 15);
}
END_TEST

START_TEST(nothing_asked_is_nothing_cut)
{
    cut_order order = cut_order_of(0.003, 0, LIST(6), LIST(2, 3), COUNTS(0, 0));
    cut_answer answer = best_is(&order, 0, 0);
    ck_assert_int_eq(answer.count, 0);
    order.cut_count = 0;
    best_is(&order, 0, 0);
    /* what is not asked for may be too long */
    order = cut_order_of(0.003, 0, LIST(6), LIST(7, 3), COUNTS(0, 1));
    best_is(&order, 1, 6);
}
END_TEST

/* --- the limit of what fits --- */

static int sticks_for(double kerf, double trim, double stock, double length, int count)
{
    cut_order order = cut_order_of(kerf, trim, LIST(stock), LIST(length), COUNTS(count));
    return cut_order_sound(&order, TSIDE_STOCK_NODES).plan.sticks;
}

START_TEST(what_just_fits_fits)
{
    ck_assert_int_eq(sticks_for(0, 0, 6, 2, 3), 1);
    ck_assert_int_eq(sticks_for(0, 0, 6, 6, 1), 1);
    ck_assert_int_eq(sticks_for(0.003, 0, 6, 1.998, 3), 1); /* 3 x 1.998 + 2 x 0.003 = 6 */
    ck_assert_int_eq(sticks_for(0.003, 0.01, 6.01, 1.998, 3), 1);
    ck_assert_int_eq(sticks_for(0, 0, 6, 3 + 0.5e-9, 2), 1); /* over by 1e-9 */
    ck_assert_int_eq(sticks_for(0, 0, 6, 3 + 0.505e-9, 2), 2);
    ck_assert_int_eq(sticks_for(0, 0, 6, 2 + 1e-9, 3), 3 - 1); /* over by 3e-9: two to a stick */
    ck_assert_int_eq(sticks_for(0, 0, 6, 6 + 1e-9, 1), 1);
    ck_assert_int_eq(sticks_for(0.003, 0, 6, 1.998001, 3), 2);
    ck_assert_int_eq(sticks_for(0, 0, 0.3, 0.1, 3), 1);                         /* in doubles 0.1 + 0.1 + 0.1 > 0.3 */
    ck_assert_int_eq(sticks_for(0, 0, 24 * 0.3048, 7.5 * 0.0254 / 16, 614), 1); /* 614 x 7.5/16 in = 287.8 in of 288 */
    ck_assert_int_eq(sticks_for(0, 0, 24 * 0.3048, 7.5 * 0.0254 / 16, 615), 2);
    ck_assert_int_eq(sticks_for(0, 0, 6.1 / 3, 6.1 / 9, 3), 1); /* no whole number of any unit */
    ck_assert_int_eq(sticks_for(0.1 / 3, 0.1 / 7, 6.1 / 3 + 0.1 / 7, 6.1 / 9 - 0.2 / 9, 3), 1);
}
END_TEST

/* --- published problems: see tests/data/binpack/README.md for their sources --- */

START_TEST(published_problems_are_proven)
{
    static cut_order orders[PROBLEMS];
    ck_assert_int_eq(cut_orders_published(orders), PROBLEMS);
    for (int i = 0; i < PROBLEMS; i++) {
        cut_answer answer = cut_order_sound(orders + i, TSIDE_STOCK_NODES);
        if (!answer.plan.proven || answer.plan.sticks != orders[i].optimum)
            ck_abort_msg("%s: %d sticks, proven %d, and the optimum is %d", orders[i].name, answer.plan.sticks,
                         answer.plan.proven, orders[i].optimum);
    }
}
END_TEST

/* --- what every plan must be --- */

/* The bound of volume, and of pieces that cannot share a stick. */
static double plain_bound(const cut_order *order)
{
    double best = HUGE_VAL, sum = 0;
    for (int k = 0; k < order->stock.length_count; k++) /* stock per room */
        best = fmin(best, order->stock.lengths[k].length /
                              (order->stock.lengths[k].length - order->stock.trim + order->stock.kerf));
    for (int j = 0; j < order->cut_count; j++)
        sum += order->cuts[j].count * (order->cuts[j].length + order->stock.kerf);
    return sum * best;
}

START_TEST(every_order_of_ten_lengths_is_proven)
{
    dice d = {10};
    for (int i = 0; i < 400; i++) {
        const cut_order order = cut_order_invented(&d, 1, i % 2 ? 100 : 12);
        const cut_answer answer = cut_order_sound(&order, TSIDE_STOCK_NODES);
        if (!answer.plan.proven || !answer.plan.fewest)
            ck_abort_msg("order %d: %g m and a bound of %g m", i, answer.plan.stock, answer.plan.lower_bound);
        if (!(answer.plan.stock > plain_bound(&order) - 1e-6))
            ck_abort_msg("order %d: more than a stick holds", i);
    }
}
END_TEST

static void full_orders_are_proven(dice d, int orders, int stocks, int most)
{
    for (int i = 0; i < orders; i++) {
        const cut_order order = cut_order_full(&d, stocks, most);
        const cut_answer answer = cut_order_sound(&order, TSIDE_STOCK_NODES);
        if (!answer.plan.proven || !answer.plan.fewest)
            ck_abort_msg("%d stocks, order %d: %g m and a bound of %g m, fewest %d", stocks, i, answer.plan.stock,
                         answer.plan.lower_bound, answer.plan.fewest);
    }
}

START_TEST(orders_from_several_stocks_are_proven)
{
    full_orders_are_proven((dice){13}, 60, 2, 100);
    full_orders_are_proven((dice){14}, 60, 3, 100);
    full_orders_are_proven((dice){15}, 60, 5, 20);
}
END_TEST

START_TEST(plans_are_sound_whatever_the_limit)
{
    static const int limits[] = {0, 1, 30, 1000};
    dice d = {11};
    for (int i = 0; i < 60; i++) {
        const cut_order order = cut_order_invented(&d, 5, 15);
        double least = HUGE_VAL, highest = 0;
        for (int k = 0; k < 4; k++) {
            const cut_answer answer = cut_order_sound(&order, limits[k]);
            least = fmin(least, answer.plan.stock);
            highest = fmax(highest, answer.plan.lower_bound);
            if (!(highest <= least + 1e-9) || !(answer.plan.stock > plain_bound(&order) - 1e-6))
                ck_abort_msg("order %d: a bound of %g m, and %g m are enough", i, highest, least);
            if (answer.plan.nodes > limits[k])
                ck_abort_msg("order %d: %d nodes and a limit of %d", i, answer.plan.nodes, limits[k]);
        }
    }
}
END_TEST

/*
 * Of proven plans: a piece more never takes less stock, nor does more kerf; another length of stock never takes more;
 * twice the order at most twice.
 */
START_TEST(more_takes_more)
{
    dice d = {12};
    for (int i = 0; i < 60; i++) {
        cut_order order = cut_order_invented(&d, 2, 8), more = order;
        const tside_cut_plan plan = cut_order_sound(&order, 2000).plan;
        tside_cut_plan other;
        more.cuts[dice_below(&d, more.cut_count)].count++;
        other = cut_order_sound(&more, 2000).plan;
        ck_assert_msg(!plan.proven || other.stock >= plan.stock - 1e-9, "order %d: a piece more takes less", i);
        more = order;
        more.stock.kerf += 0.004;
        other = cut_order_sound(&more, 2000).plan;
        ck_assert_msg(!plan.proven || other.stock >= plan.stock - 1e-9, "order %d: a wider kerf takes less", i);
        more = order;
        more.stock.lengths[more.stock.length_count++].length = 6.3;
        other = cut_order_sound(&more, 2000).plan;
        ck_assert_msg(!other.proven || other.stock <= plan.stock + 1e-9, "order %d: a choice more takes more", i);
        more = order;
        for (int j = 0; j < more.cut_count; j++)
            more.cuts[j].count *= 2;
        other = cut_order_sound(&more, 2000).plan;
        ck_assert_msg(!other.proven || other.stock <= 2 * plan.stock + 1e-9,
                      "order %d: twice the order takes more than twice", i);
        for (int j = 0; j < order.cut_count / 2; j++) { /* the order of cuts is nothing */
            const tside_cut cut = order.cuts[j];
            order.cuts[j] = order.cuts[order.cut_count - 1 - j];
            order.cuts[order.cut_count - 1 - j] = cut;
        }
        other = cut_order_sound(&order, 2000).plan;
        ck_assert_msg(other.stock == plan.stock && other.sticks == plan.sticks && other.proven == plan.proven,
                      "order %d: the order of cuts matters", i);
    }
}
END_TEST

/*
 * A longer search gives no dearer plan. Orders, found by chance, of which plans with as little stock and more sticks
 * come up after the best; the first is proven soon.
 */
START_TEST(a_longer_search_keeps_the_best)
{
    const cut_order orders[] = {
        cut_order_of(0, 0, LIST(4, 6, 10), LIST(3.07, 1.01, 2.88, 2.21, 1.48, 2.75, 1.12, 2.3, 0.61, 0.41),
                     COUNTS(8, 9, 8, 10, 5, 4, 4, 1, 4, 1)),
        cut_order_of(0, 0, LIST(4, 6, 12), LIST(2.06, 1.63, 3.79, 2.88, 3.33, 0.59, 2.47, 1.06, 3.65, 2.57, 0.76, 0.85),
                     COUNTS(4, 4, 5, 3, 7, 1, 9, 2, 12, 7, 11, 4)),
    };
    for (int i = 0; i < 2; i++) {
        const tside_cut_plan first = cut_order_sound(orders + i, 0).plan,
                             later = cut_order_sound(orders + i, 1000).plan;
        ck_assert(later.stock <= first.stock + 1e-9);
        ck_assert_msg(later.stock < first.stock - 1e-9 || later.sticks <= first.sticks, "order %d: %d sticks, then %d",
                      i, first.sticks, later.sticks);
        ck_assert(later.nodes > 0 && later.fewest);
    }
}
END_TEST

Suite *stock_suite(void)
{
    Suite *suite = suite_create("stock");
    TCase *tcase = tcase_create("stock");
    tcase_add_test(tcase, plans_by_hand);
    tcase_add_test(tcase, equal_lengths_stay_apart);
    tcase_add_test(tcase, nothing_asked_is_nothing_cut);
    tcase_add_test(tcase, what_just_fits_fits);
    tcase_add_test(tcase, published_problems_are_proven);
    tcase_add_test(tcase, every_order_of_ten_lengths_is_proven);
    tcase_add_test(tcase, orders_from_several_stocks_are_proven);
    tcase_add_test(tcase, plans_are_sound_whatever_the_limit);
    tcase_add_test(tcase, more_takes_more);
    tcase_add_test(tcase, a_longer_search_keeps_the_best);
    suite_add_tcase(suite, tcase);
    return suite;
}
