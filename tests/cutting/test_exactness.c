/* SPDX-License-Identifier: MIT */
/* What digits may not do to a cut plan: rule out what just fits, claim what is not so, search for what is found. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "cuts.h"
#include "cutting/search.h"

Suite *exactness_suite(void);

enum { SEVERAL = 9 };

/* Sticks are cut up wholly: no plan takes less stock than the pieces' length, and one takes no more. */
static void is_cut_up(const cut_order *order)
{
    const cut_answer answer = cut_order_sound(order, TSIDE_STOCK_NODES);
    double length = 0;
    for (int i = 0; i < order->cut_count; i++)
        length += order->cuts[i].count * order->cuts[i].length;
    NEAR(answer.plan.stock, length, 1e-9, order->name, order->cut_count);
    NEAR(answer.plan.offcut, 0, 1e-9, order->name, order->cut_count);
    ck_assert(answer.plan.proven && answer.plan.fewest);
}

/*
 * In doubles 108 / 13 * 13 > 108, and so are 108 / 23 * 23 and the like: a bound above what just is enough. And sticks
 * that the pieces just fill would be passed over: either way more stock would be "proven" to be the least.
 */
START_TEST(what_just_is_enough_is_found)
{
    cut_order order = cut_order_of(0, 0, LIST(1.3, 2.3), LIST(0.7, 0.2, 0.1, 0.3, 0.6, 0.4, 0.5),
                                   COUNTS(2, 7, 12, 10, 2, 4, 2));
    is_cut_up(&order);
    order = cut_order_of(0, 0, LIST(1.3, 2.3), LIST(0.3, 0.2, 0.1, 0.4, 0.6, 0.5, 0.8), COUNTS(9, 5, 15, 6, 1, 2, 2));
    is_cut_up(&order);
    order = cut_order_of(0, 0, LIST(0.7, 2.7), LIST(0.4, 0.2, 0.1, 0.3, 0.6, 0.5, 1.1), COUNTS(6, 9, 18, 8, 1, 3, 1));
    is_cut_up(&order);
}
END_TEST

/* Proven within a third of the nodes; were what is whole to its last digits not whole, three times as many are too few.
 */
START_TEST(what_is_whole_is_not_searched)
{
    const cut_order taken = cut_order_of(
                        0, 0.01, LIST(6, 7.3152, 7.3),
                        LIST(3.302, 3.956446875, 3.79491875, 3.186509375, 0.734615625, 2.473325, 2.10740625),
                        COUNTS(3, 3, 3, 2, 3, 3, 3)),
                    left = cut_order_of(0, 0, LIST(6.096, 6.5, 6.4008, 5),
                                        LIST(0.7112, 2.5, 0.9144, 0.8001, 0.928571428571), COUNTS(1, 11, 9, 7, 1));
    ck_assert(cut_order_sound(&taken, 300).plan.fewest);
    ck_assert(cut_order_sound(&left, 300).plan.fewest);
}
END_TEST

/* What a filled stick leaves is nothing, though 1.1 + 2.2 < 3.3000000000000003. */
START_TEST(a_full_stick_leaves_nothing)
{
    for (int i = 1; i < 30; i++)
        for (int j = i + 1; j < 40; j++) {
            const cut_order order = cut_order_of(0, 0, LIST((i + j) / 10.0), LIST(i / 10.0, j / 10.0), COUNTS(1, 1));
            const cut_answer answer = cut_order_sound(&order, 0);
            ck_assert(answer.count == 1 && answer.sticks[0].offcut == 0);
        }
}
END_TEST

/* A search for plans that cost no more than the cut: of types of which one piece a stick is a pattern. */
static void *laid_out(tside_i_search *s, int types, const int *size, const int *demand, int64_t room, int64_t cost)
{
    tside_i_arena arena = {0};
    memset(s, 0, sizeof *s);
    tside_i_search_parts(&arena, s, types);
    arena = (tside_i_arena){.base = malloc(arena.used)};
    tside_i_search_parts(&arena, s, types);
    s->problem.types = types;
    s->problem.stocks = 1;
    s->problem.room[0] = room;
    s->problem.cost[0] = cost;
    s->problem.level = 1;
    s->effort = (tside_i_effort){.limit = 1 << 30};
    s->relaxation.problem = s->fill.problem = &s->problem;
    s->relaxation.effort = s->fill.effort = &s->effort;
    s->tree.relaxation = &s->relaxation;
    s->tree.fill = &s->fill;
    tside_i_relaxation_begin(&s->relaxation, types);
    for (int i = 0; i < types; i++) {
        int pattern[SEVERAL] = {0};
        pattern[i] = 1;
        s->problem.size[i] = size[i];
        s->problem.demand[i] = demand[i];
        ck_assert(tside_i_pool_add(&s->relaxation, 0, pattern));
    }
    return arena.base;
}

/*
 * A piece that is over by just what counts as none, give or take some last digits, is refused or cut, whatever the
 * digits of stick and trim: once the check was by metres and the search by their whole parts, and went on for ever.
 */
START_TEST(what_is_over_by_just_what_counts_as_none_ends)
{
    dice d = {71};
    cut_order order = cut_order_of(0, 0.42600000000377691, LIST(6.5139260136518047), LIST(6.0879260146480281),
                                   COUNTS(1));
    int made = 0;
    for (int n = 0; n < 4000; n++) {
        cut_answer answer;
        if (n) {
            order.stock.trim = dice_between(&d, 0, 0.5);
            order.stock.lengths[0].length = dice_between(&d, 1, 12);
            order.cuts[0].length = order.stock.lengths[0].length - order.stock.trim + 1e-9 +
                                   dice_between(&d, -1e-12, 1e-12);
        }
        answer = cut_order_plan(&order, 0);
        if (answer.status == TSIDE_OK)
            ck_assert_int_eq(answer.plan.sticks, 1);
        else
            ck_assert(answer.status == TSIDE_CONTRADICTS && !strcmp(answer.fault.field, "cuts[0].length"));
        made += answer.status == TSIDE_OK;
    }
    ck_assert(made > 1000 && made < 3000);
}
END_TEST

/*
 * Sticks whose lengths have no common measure but the nanometre: 58455 sticks of just under 300 m, one piece in each,
 * cost 1.75e16, and a double has whole numbers to 9e15. The three parts of that, each rounded up, come to 2 more than
 * their sum does.
 */
START_TEST(a_plan_that_costs_all_that_it_may_is_kept)
{
    enum { TYPES = 3 };
    static const int size[TYPES] = {9, 8, 7}, demand[TYPES] = {18358, 13863, 26234};
    const int64_t stick = 299999999999;
    tside_i_search s;
    tside_i_offer offer;
    void *memory = laid_out(&s, TYPES, size, demand, 10, stick);
    s.tree.fine = 1;
    s.fill.cut = (demand[0] + demand[1] + demand[2]) * stick;
    offer.least = s.fill.cut;
    tside_i_tree_begin(&s.tree);
    tside_i_branch(&s.tree, &offer);
    ck_assert_int_eq(s.fill.best.rows, TYPES);
    ck_assert(s.fill.best.cost == offer.least);
    free(memory);
}
END_TEST

/*
 * Six sticks of 122 are enough, by the patterns marked, one of each: 47 + 40 + 35, 41 + 41 + 40, 44 + 42 + 33,
 * 43 + 43 + 35, 44 + 42 + 35 and 43 + 41 + 38. An order found by chance, in which what it costs to make a basis whole
 * is another once a pattern is taken, and would rule out these.
 */
START_TEST(a_plan_of_what_the_pool_holds_is_not_ruled_out)
{
    enum { TYPES = 9, STICKS = 6, PATTERNS = 10 };
    static const int size[TYPES] = {47, 44, 43, 42, 41, 40, 38, 35, 33}, demand[TYPES] = {1, 2, 3, 2, 3, 2, 1, 3, 1},
                     patterns[PATTERNS][TYPES] = {
                         {0, 0, 0, 2, 0, 0, 0, 1, 0}, {0, 0, 0, 0, 2, 0, 0, 0, 1},
                         {0, 0, 0, 2, 0, 0, 1, 0, 0}, {1, 0, 0, 0, 0, 1, 0, 1, 0}, /* of the plan */
                         {0, 0, 0, 0, 2, 1, 0, 0, 0},                              /* too */
                         {0, 1, 0, 1, 0, 0, 0, 0, 1},                              /* too */
                         {0, 0, 2, 0, 0, 0, 0, 1, 0},                              /* too */
                         {0, 1, 0, 1, 0, 0, 0, 1, 0},                              /* too */
                         {0, 0, 1, 0, 1, 0, 1, 0, 0},                              /* too */
                         {0, 1, 1, 0, 0, 0, 0, 1, 0},
                     };
    const tside_i_offer offer = {.sticks = {STICKS}, .least = 1};
    tside_i_search s;
    void *memory = laid_out(&s, TYPES, size, demand, 122, 1);
    for (int k = 0; k < PATTERNS; k++)
        ck_assert(tside_i_pool_add(&s.relaxation, 0, patterns[k]));
    s.tree.fine = ((int64_t)1 << 40) / (STICKS + 1);
    s.fill.cut = STICKS;
    tside_i_tree_begin(&s.tree);
    ck_assert(tside_i_branch(&s.tree, &offer));
    ck_assert(s.fill.best.rows > 0 && s.fill.best.cost == STICKS);
    free(memory);
}
END_TEST

/*
 * One length, which leaves only patterns to choose from. Of ten pieces of 58 and more no two but two of 58 share a
 * stick of 120: in seven sticks there would be three such pairs, and 58, 71, 64 and 64 alone, beside which there is
 * room for 62, 49, 56 and 56. Of 27, 27, 27, 36, 36 and 40 none holds two but 27 and 27: one piece is over. Seven is
 * what the lengths alone, and the relaxation, leave open.
 */
START_TEST(what_is_left_open_is_ruled_out_pattern_by_pattern)
{
    const cut_order order = cut_order_of(0, 0, LIST(1.2), LIST(0.71, 0.64, 0.58, 0.4, 0.36, 0.27),
                                         COUNTS(1, 2, 7, 1, 2, 3));
    const cut_answer answer = cut_order_sound(&order, TSIDE_STOCK_NODES);
    ck_assert_int_eq(answer.plan.sticks, 8);
    ck_assert(answer.plan.proven && answer.plan.fewest && answer.plan.nodes > 0);
    NEAR(answer.plan.lower_bound, 8 * 1.2, 1e-9, "bound", 0);
}
END_TEST

/*
 * Lengths with no common measure but the nanometre: sticks beside so long numbers are not counted, and of plans with as
 * little stock nothing is said of how many sticks they have. Each piece wants a stick of its own.
 */
START_TEST(sticks_are_not_counted_beside_the_longest_numbers)
{
    const cut_order order = cut_order_of(0, 0, LIST(6.000000001, 7.3), LIST(5.9, 7.2), COUNTS(400, 300)),
                    shared = cut_order_of(0, 0, LIST(6, 7.3), LIST(5.9, 7.2), COUNTS(400, 300));
    const cut_answer answer = cut_order_sound(&order, TSIDE_STOCK_NODES);
    ck_assert(answer.plan.proven && !answer.plan.fewest);
    ck_assert_int_eq(answer.plan.sticks, 700);
    NEAR(answer.plan.lower_bound, 400 * 6.000000001 + 300 * 7.3, 1e-5, "bound", 0);
    ck_assert(cut_order_sound(&shared, TSIDE_STOCK_NODES).plan.fewest);
}
END_TEST

/*
 * Two lengths with no common measure but the nanometre, and pieces that fill neither: a stick of length L holds L +
 * 1e-9 at most, so that pieces of 1011.8 m together need that much times L / (L + 1e-9), of which L is the shorter. A
 * bound that gives up more than the last digits of the sum lies below.
 */
START_TEST(a_bound_gives_up_no_more_than_digits)
{
    const double shorter = 6.000000001;
    const cut_order order = cut_order_of(0, 0, LIST(shorter, 7.300000003), LIST(0.010118043847), COUNTS(100000));
    const cut_answer answer = cut_order_sound(&order, 0);
    const double need = order.cuts[0].count * order.cuts[0].length * shorter / (shorter + 1e-9);
    ck_assert_msg(answer.plan.lower_bound >= need - 1e-9, "a bound %g m short", need - answer.plan.lower_bound);
}
END_TEST

Suite *exactness_suite(void)
{
    Suite *suite = suite_create("exactness");
    TCase *tcase = tcase_create("exactness");
    tcase_add_test(tcase, what_just_is_enough_is_found);
    tcase_add_test(tcase, what_is_whole_is_not_searched);
    tcase_add_test(tcase, a_full_stick_leaves_nothing);
    tcase_add_test(tcase, what_is_over_by_just_what_counts_as_none_ends);
    tcase_add_test(tcase, what_is_left_open_is_ruled_out_pattern_by_pattern);
    tcase_add_test(tcase, sticks_are_not_counted_beside_the_longest_numbers);
    tcase_add_test(tcase, a_bound_gives_up_no_more_than_digits);
    tcase_add_test(tcase, a_plan_that_costs_all_that_it_may_is_kept);
    tcase_add_test(tcase, a_plan_of_what_the_pool_holds_is_not_ruled_out);
    suite_add_tcase(suite, tcase);
    return suite;
}
