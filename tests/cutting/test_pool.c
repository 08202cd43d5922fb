/* SPDX-License-Identifier: MIT */
/*
 * What stands behind a cut plan, at its limits, which orders seldom reach: a pool of patterns that is full, a basis
 * that is none, a plan without a row left, a determinant that is not the basis's.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "cutting/search.h"

Suite *pool_suite(void);

enum { MOST = 100 };

/* Sticks of one length, of cost 4, and pieces of some types, of size 1. */
typedef struct bench {
    tside_i_search search;
    tside_i_relaxation *relaxation;
    char *memory;
    int pattern[MOST];
} bench;

static void lay_out(bench *b, int types)
{
    tside_i_search *s = &b->search;
    tside_i_arena arena = {0};
    memset(b, 0, sizeof *b);
    tside_i_search_parts(&arena, s, types);
    arena = (tside_i_arena){.base = b->memory = calloc(1, arena.used)};
    ck_assert_ptr_nonnull(b->memory);
    tside_i_search_parts(&arena, s, types);
    s->problem.types = types;
    s->problem.stocks = 1;
    s->problem.room[0] = s->problem.cost[0] = 4;
    s->problem.level = 1;
    s->effort = (tside_i_effort){.limit = 1 << 30};
    s->relaxation.problem = s->fill.problem = &s->problem;
    s->relaxation.effort = s->fill.effort = &s->effort;
    for (int i = 0; i < types; i++) {
        s->problem.size[i] = 1;
        s->problem.demand[i] = 2 + i;
    }
    b->relaxation = &s->relaxation;
    tside_i_relaxation_begin(b->relaxation, types);
}

/* Adds the pattern of so many of a type alone. */
static int add(bench *b, int type, int count)
{
    memset(b->pattern, 0, sizeof b->pattern);
    b->pattern[type] = count;
    return tside_i_pool_add(b->relaxation, 0, b->pattern);
}

static void has(const bench *b, int column, int type, int count)
{
    int pattern[MOST];
    tside_i_pool_pattern(b->relaxation, column, pattern);
    for (int i = 0; i < b->search.problem.types; i++)
        ck_assert_int_eq(pattern[i], i == type ? count : 0);
}

/* What stays and what is in the basis is kept, in order, and the new one comes last. */
START_TEST(a_full_pool_gives_up_what_is_not_needed)
{
    static bench b;
    lay_out(&b, 2);
    for (int j = 0; j < TSIDE_I_COLUMNS; j++)
        ck_assert(add(&b, j % 2, 1 + j % 4));
    ck_assert(!add(&b, 0, 1));
    ck_assert_int_eq(b.relaxation->pool.columns, TSIDE_I_COLUMNS);
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, (const int[]){4, 6001});
    ck_assert(b.relaxation->basis[0] == 4 && b.relaxation->basis[1] == 6001);
    b.relaxation->pool.settled = 3;
    memset(b.pattern, 0, sizeof b.pattern);
    b.pattern[0] = 9;
    tside_i_pool_take(b.relaxation, 0, b.pattern);
    ck_assert_int_eq(b.relaxation->pool.columns, 6);
    has(&b, 0, 0, 1);
    has(&b, 1, 1, 2);
    has(&b, 2, 0, 3);
    has(&b, 3, 0, 1);
    has(&b, 4, 1, 2);
    has(&b, 5, 0, 9);
    ck_assert(b.relaxation->basis[0] == 3 && b.relaxation->basis[1] == 4);
    free(b.memory);
}
END_TEST

/* Patterns of a hundred types each take up the room of ten ordinary ones. */
START_TEST(a_pool_is_full_of_pieces_too)
{
    static bench b;
    int columns = 0;
    lay_out(&b, MOST);
    for (int i = 0; i < MOST; i++)
        b.pattern[i] = 1;
    while (tside_i_pool_add(b.relaxation, 0, b.pattern))
        columns++;
    ck_assert(columns > TSIDE_I_COLUMNS / 11 && columns <= TSIDE_I_COLUMNS / 10);
    ck_assert(!tside_i_pool_has_room(b.relaxation));
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, b.relaxation->basis);
    b.relaxation->pool.settled = columns; /* all stay: there is room for none */
    tside_i_pool_take(b.relaxation, 0, b.pattern);
    ck_assert_int_eq(b.relaxation->pool.columns, columns);
    b.relaxation->pool.settled = 0;
    tside_i_pool_take(b.relaxation, 0, b.pattern);
    ck_assert_int_eq(b.relaxation->pool.columns, 1 + (b.relaxation->basis[0] >= 0));
    free(b.memory);
}
END_TEST

/* A column twice spans one row: the other keeps its surplus. */
START_TEST(a_basis_with_a_column_twice_is_made_one)
{
    static bench b;
    lay_out(&b, 2);
    ck_assert(add(&b, 0, 4) && add(&b, 1, 4));
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, (const int[]){0, 0});
    ck_assert(b.relaxation->basis[0] == 0 && b.relaxation->basis[1] == -2);
    ck_assert(b.relaxation->x[0] > 0.5 - 1e-6 && b.relaxation->x[0] < 0.5 + 1e-6); /* 2 asked for, 4 a stick */
    ck_assert(b.relaxation->determinant == 4);
    free(b.memory);
}
END_TEST

/* Where a column that came in first would be the place that another comes in for most, both are there in the end. */
START_TEST(a_column_that_is_in_stays_in)
{
    static bench b;
    double first, second;
    lay_out(&b, 2);
    b.pattern[0] = b.pattern[1] = 1;
    ck_assert(tside_i_pool_add(b.relaxation, 0, b.pattern));
    b.pattern[0] = 3;
    ck_assert(tside_i_pool_add(b.relaxation, 0, b.pattern));
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, (const int[]){0, 1});
    ck_assert_int_eq(b.relaxation->basis[0] + b.relaxation->basis[1], 1);
    first = b.relaxation->x[b.relaxation->basis[1] == 0];
    second = b.relaxation->x[b.relaxation->basis[1] == 1];
    ck_assert(first > 3.5 - 1e-6 && first < 3.5 + 1e-6); /* x + 3 y = 2 and x + y = 3, as many as are asked for */
    ck_assert(second > -0.5 - 1e-6 && second < -0.5 + 1e-6);
    free(b.memory);
}
END_TEST

/* A pattern is full where no type that may still be taken fits; what is behind the last type is none. */
START_TEST(a_pattern_is_full_where_nothing_more_fits)
{
    enum { TYPES = 3, BEHIND = 3 };
    int64_t size[TYPES + BEHIND] = {7, 4, 2};
    const int most[TYPES + BEHIND] = {2, 1, 2, 9, 9, 9};
    tside_i_problem problem = {.types = TYPES, .size = size};
    int full = 0, tried = 0;
    for (int a = 0; a <= 2; a++)
        for (int b = 0; b <= 1; b++)
            for (int c = 0; c <= 2; c++)
                for (int left = 0; left < 10; left++) {
                    int count[TYPES + BEHIND] = {a, b, c}, fits = 0;
                    const tside_i_walk walk = {.problem = &problem, .most = most, .count = count, .left = left};
                    for (int j = 0; j < TYPES; j++)
                        fits = fits || (size[j] <= left && count[j] < most[j]);
                    ck_assert_int_eq(tside_i_walk_is_full(&walk), !fits);
                    full += !fits;
                    tried++;
                }
    ck_assert(full > 20 && full < tried - 20);
}
END_TEST

/* One that gives nothing cannot come in, at whatever price. */
START_TEST(a_column_of_nothing_cannot_come_in)
{
    static bench b;
    double price[2];
    lay_out(&b, 2);
    ck_assert(add(&b, 0, 4) && add(&b, 1, 4) && add(&b, 0, 0));
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, (const int[]){0, 1});
    tside_i_relaxation_price(b.relaxation);
    memcpy(price, b.relaxation->price, sizeof price);
    ck_assert_int_eq(tside_i_relaxation_enter(b.relaxation, 2), 0);
    ck_assert(b.relaxation->basis[0] == 0 && b.relaxation->basis[1] == 1);
    ck_assert(!memcmp(price, b.relaxation->price, sizeof price));
    free(b.memory);
}
END_TEST

/*
 * Two and three pieces asked for, four in a stick: to fill whole sticks two of the one and one of the other are too
 * many, and each is worth 1. A determinant that is too small makes no group, and costs nothing.
 */
START_TEST(a_group_is_no_larger_than_its_determinant)
{
    static bench b;
    int64_t worth[] = {1, 1};
    const tside_i_prices prices = {.of = worth, .fine = 1};
    tside_i_corner *corner = &b.search.tree.corner;
    lay_out(&b, 2);
    ck_assert(add(&b, 0, 4) && add(&b, 1, 4));
    tside_i_relaxation_ask(b.relaxation);
    tside_i_relaxation_set(b.relaxation, (const int[]){0, 1});
    ck_assert(b.relaxation->determinant == 16);
    ck_assert_int_eq((int)tside_i_corner_cost(corner, b.relaxation, &prices, 100), 3);
    ck_assert_int_eq(corner->order, 16);
    b.relaxation->determinant = 4;
    ck_assert_int_eq((int)tside_i_corner_cost(corner, b.relaxation, &prices, 100), 0);
    ck_assert_int_eq(corner->extras, 0);
    b.relaxation->determinant = 1e-3;
    ck_assert_int_eq((int)tside_i_corner_cost(corner, b.relaxation, &prices, 100), 0);
    free(b.memory);
}
END_TEST

/* It is none, and what was kept before stays. */
START_TEST(a_plan_without_a_row_left_costs_more_than_any)
{
    static bench b;
    tside_i_fill *fill = &b.search.fill;
    lay_out(&b, 2);
    fill->cut = 1000;
    tside_i_fill_begin(fill);
    tside_i_fill_finish(fill);
    ck_assert_int_eq((int)fill->best.cost, 8); /* five pieces, four in a stick */
    fill->cut = 1000;
    fill->most_rows = 1;
    tside_i_fill_begin(fill);
    tside_i_fill_append(fill, (const int[]){1, 0}, 1);
    ck_assert_int_eq((int)fill->trial.cost, 4);
    tside_i_fill_append(fill, (const int[]){1, 0}, 1);
    ck_assert(fill->trial.cost > fill->cut && fill->trial.rows == 1);
    tside_i_fill_finish(fill);
    ck_assert_int_eq((int)fill->best.cost, 8);
    ck_assert_int_eq((int)fill->cut, 1000);
    free(b.memory);
}
END_TEST

/* Prices are as fine as 2^40 allows, and whole where a plan costs more. */
START_TEST(prices_of_a_dear_plan_are_whole)
{
    ck_assert(tside_i_fine(1) == (int64_t)1 << 40 && tside_i_fine(1000) == ((int64_t)1 << 40) / 1000);
    ck_assert(tside_i_fine(((int64_t)1 << 40) - 1) == 1 && tside_i_fine((int64_t)1 << 40) == 1);
    ck_assert(tside_i_fine((int64_t)1 << 55) == 1);
}
END_TEST

Suite *pool_suite(void)
{
    Suite *suite = suite_create("pool");
    TCase *tcase = tcase_create("pool");
    tcase_add_test(tcase, a_full_pool_gives_up_what_is_not_needed);
    tcase_add_test(tcase, a_pool_is_full_of_pieces_too);
    tcase_add_test(tcase, a_basis_with_a_column_twice_is_made_one);
    tcase_add_test(tcase, a_column_that_is_in_stays_in);
    tcase_add_test(tcase, a_pattern_is_full_where_nothing_more_fits);
    tcase_add_test(tcase, a_column_of_nothing_cannot_come_in);
    tcase_add_test(tcase, a_group_is_no_larger_than_its_determinant);
    tcase_add_test(tcase, a_plan_without_a_row_left_costs_more_than_any);
    tcase_add_test(tcase, prices_of_a_dear_plan_are_whole);
    suite_add_tcase(suite, tcase);
    return suite;
}
