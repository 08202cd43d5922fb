/* SPDX-License-Identifier: MIT */
/* What a cut plan refuses, and how it keeps to its buffers. */
#include <check.h>
#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "cuts.h"

Suite *stock_refused_suite(void);

typedef struct tried {
    tside_status status;
    tside_fault fault;
} tried;

/* Refused, and nothing written. */
static tried refused(const cut_order *order, int cut_count, int node_limit, size_t work_size, int capacity)
{
    static unsigned char work[4 << 20];
    struct {
        tside_stick sticks[4];
        int taken[4 * 8], count;
        tside_cut_plan plan;
    } out, before;
    tried t;
    memset(&out, 0xa5, sizeof out);
    memset(&before, 0xa5, sizeof before);
    memset(&t, 0, sizeof t);
    ck_assert(tside_stock_work(cut_count < 0 || cut_count > 8 ? 8 : cut_count) <= sizeof work);
    t.status = tside_stock_plan(&order->stock, order->cuts, cut_count, node_limit, work, work_size, out.sticks,
                                out.taken, capacity, &out.count, &out.plan, &t.fault);
    ck_assert_int_ne(t.status, TSIDE_OK);
    ck_assert_int_eq(t.fault.status, t.status);
    ck_assert_int_eq(tside_stock_plan(&order->stock, order->cuts, cut_count, node_limit, work, work_size, out.sticks,
                                      out.taken, capacity, &out.count, &out.plan, NULL),
                     t.status);
    if (t.status == TSIDE_TOO_SMALL && !strcmp(t.fault.field, "capacity"))
        before.count = out.count;
    ck_assert_msg(!memcmp(&out, &before, sizeof out), "%s: an output was written", t.fault.field);
    return t;
}

static void refused_as(const cut_order *order, tside_status status, const char *field, tside_relation relation,
                       double value, double bound, int index)
{
    tried t = refused(order, order->cut_count, 100, tside_stock_work(order->cut_count), 4);
    ck_assert_int_eq(t.status, status);
    heard_held();
    ck_assert_str_eq(t.fault.field, field);
    ck_assert_int_eq(t.fault.relation, relation);
    ck_assert_int_eq(t.fault.index, index);
    NEAR(t.fault.value, value, 1e-12, field, 0);
    NEAR(t.fault.bound, bound, 1e-12, field, 1);
}

/* Of so long a list that refused()'s buffer is too small: what is out of bounds is refused before any work. */
static void far_refused(const cut_order *order, const char *field)
{
    tside_fault fault;
    tside_cut_plan plan;
    int count;
    REFUSES(tside_stock_plan(&order->stock, order->cuts, order->cut_count, 0, NULL, 0, NULL, NULL, 0, &count, &plan,
                             &fault),
            plan, TSIDE_OUT_OF_BOUNDS, field, TSIDE_BELOW);
}

START_TEST(fields_out_of_bounds_are_refused)
{
    const cut_order good = cut_order_of(0.003, 0.01, LIST(6, 6.5), LIST(2, 3), COUNTS(2, 2));
    cut_order order = good;
    order.stock.kerf = -0.001;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.kerf", TSIDE_BELOW, -0.001, 0, -1);
    order.stock.kerf = NAN;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.kerf", TSIDE_NOT_FINITE, 0, 0, -1);
    order = good;
    order.stock.trim = -1;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.trim", TSIDE_BELOW, -1, 0, -1);
    order = good;
    order.stock.lengths[1].length = 0;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.lengths[1].length", TSIDE_BELOW, 0, 0.01, 1);
    order = good;
    order.stock.length_count = 0;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.lengths", TSIDE_BELOW, 0, 1, -1);
    order.stock.length_count = TSIDE_STOCK_LENGTHS + 1;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "stock.lengths", TSIDE_ABOVE, TSIDE_STOCK_LENGTHS + 1, TSIDE_STOCK_LENGTHS,
               -1);
    order = good;
    order.cuts[1].length = 0;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[1].length", TSIDE_BELOW, 0, 0.01, 1);
    order.cuts[1].length = -3;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[1].length", TSIDE_BELOW, -3, 0.01, 1);
    order.cuts[1].length = HUGE_VAL;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[1].length", TSIDE_NOT_FINITE, 0, 0, 1);
    order = good;
    order.cuts[0].count = -1;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[0].count", TSIDE_BELOW, -1, 0, 0);
    order.cuts[0].count = INT_MAX;
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[0].count", TSIDE_ABOVE, INT_MAX, TSIDE_STOCK_PIECES, 0);
    order.cuts[0].count = TSIDE_STOCK_PIECES - 1; /* with two of the other */
    refused_as(&order, TSIDE_OUT_OF_BOUNDS, "cuts[1].count", TSIDE_ABOVE, 2, 1, 1);
    for (order.cut_count = 0; order.cut_count < TSIDE_STOCK_CUTS; order.cut_count++)
        order.cuts[order.cut_count] = (tside_cut){2, 1};
    order.cuts[TSIDE_STOCK_CUTS - 1].length = 0;
    far_refused(&order, "cuts[4999].length");
    order.cuts[1000].count = -1;
    far_refused(&order, "cuts[1000].count");
}
END_TEST

START_TEST(contradictions_are_refused)
{
    cut_order order = cut_order_of(0.003, 0.01, LIST(6, 6.5), LIST(2, 6.491, 3), COUNTS(2, 1, 1));
    tried t;
    char text[256];
    refused_as(&order, TSIDE_CONTRADICTS, "cuts[1].length", TSIDE_ABOVE, 6.491, 6.49, 1);
    t = refused(&order, 3, 0, tside_stock_work(3), 4);
    NEAR(t.fault.gap, -0.001, 1e-12, "gap", 0);
    tside_fault_text(&t.fault, text, sizeof text);
    ck_assert_str_eq(text, "cuts[1].length: 6.491 m contradicts stock: longer than any stick less its trim; the "
                           "greatest that fits is 6.49 m, 0.001 m is missing");
    order.cuts[1].length = 6.49;
    cut_order_sound(&order, 0);
    order.stock.trim = 6;
    refused_as(&order, TSIDE_CONTRADICTS, "stock.lengths[0].length", TSIDE_NOT_ABOVE, 6, 6, 0);
    /* the longest stick is the longest whatever its place */
    order = cut_order_of(0, 0.2, LIST(6.5, 6.4), LIST(6.3), COUNTS(1));
    cut_order_sound(&order, 0);
}
END_TEST

START_TEST(the_index_may_be_large)
{
    static cut_order order;
    cut_answer answer;
    order = cut_order_of(0, 0, LIST(6), LIST(2), COUNTS(1));
    order.cut_count = TSIDE_STOCK_CUTS;
    for (int i = 1; i < TSIDE_STOCK_CUTS; i++)
        order.cuts[i] = (tside_cut){0.5 + 0.0005 * i, 1};
    order.cuts[123].length = 6.01;
    answer = cut_order_plan(&order, 0);
    ck_assert_int_eq(answer.status, TSIDE_CONTRADICTS);
    ck_assert_str_eq(answer.fault.field, "cuts[123].length");
    ck_assert_int_eq(answer.fault.index, 123);
    order.cuts[123].length = 1;
    cut_order_sound(&order, 0); /* as many lengths as are allowed */
}
END_TEST

START_TEST(arguments_and_buffers_are_checked)
{
    const cut_order order = cut_order_of(
        0, 0, LIST(6), LIST(2, 3, 5),
        COUNTS(4, 5, 5)); /* 5 alone, 3 + 3, 3 + 2, 2 + 2 + 2 and so on: more than one kind of stick */
    const size_t size = tside_stock_work(3);
    tried t = refused(&order, -1, 0, size, 4);
    ck_assert(t.status == TSIDE_OUT_OF_BOUNDS && !strcmp(t.fault.field, "cut_count") &&
              t.fault.relation == TSIDE_BELOW);
    t = refused(&order, TSIDE_STOCK_CUTS + 1, 0, size, 4);
    ck_assert(t.status == TSIDE_OUT_OF_BOUNDS && !strcmp(t.fault.field, "cut_count") &&
              t.fault.relation == TSIDE_ABOVE && t.fault.bound == TSIDE_STOCK_CUTS);
    t = refused(&order, 3, -1, size, 4);
    ck_assert(t.status == TSIDE_OUT_OF_BOUNDS && !strcmp(t.fault.field, "node_limit"));
    t = refused(&order, 3, 0, size, -1);
    ck_assert(t.status == TSIDE_OUT_OF_BOUNDS && !strcmp(t.fault.field, "capacity"));
    t = refused(&order, 3, 0, size - 1, 4);
    ck_assert(t.status == TSIDE_TOO_SMALL && !strcmp(t.fault.field, "work_size") && t.fault.bound == (double)size);
    heard_held();
    t = refused(&order, 3, 100, size, 1);
    ck_assert(t.status == TSIDE_TOO_SMALL && !strcmp(t.fault.field, "capacity") && t.fault.bound >= 3 &&
              t.fault.value == 1);
    ck_assert(tside_stock_work(-1) == 0 && tside_stock_work(TSIDE_STOCK_CUTS + 1) == 0);
    ck_assert(tside_stock_work(0) > 0 && tside_stock_work(10) < 2 << 20);
    for (int i = 0; i < TSIDE_STOCK_CUTS; i++)
        ck_assert(tside_stock_work(i) <= tside_stock_work(i + 1));
}
END_TEST

/* The buffer is not overrun, and whatever it held before, the plan is the same. */
START_TEST(the_work_buffer_is_kept_to)
{
    static const int held[] = {0, 1, 0x5a, 0xff};
    enum { TRIES = sizeof held / sizeof *held };
    cut_order order = cut_order_of(0.003, 0.01, LIST(6, 6.5, 7.3), LIST(2.11, 3.07, 0.77, 1.9, 0.51, 1.3),
                                   COUNTS(7, 9, 12, 8, 11, 3));
    const size_t size = tside_stock_work(order.cut_count);
    unsigned char *work = malloc(size + 64);
    tside_cut_plan plan[TRIES];
    tside_stick sticks[64];
    int taken[64 * 6], count;
    for (int k = 0; k < TRIES; k++) {
        memset(plan + k, 0, sizeof *plan);
        memset(work, held[k], size);
        memset(work + size, 0x5a, 64);
        ck_assert_int_eq(tside_stock_plan(&order.stock, order.cuts, order.cut_count, 2000, work, size, sticks, taken,
                                          64, &count, plan + k, NULL),
                         TSIDE_OK);
        for (int i = 0; i < 64; i++)
            ck_assert_int_eq(work[size + (size_t)i], 0x5a);
        ck_assert(!memcmp(plan, plan + k, sizeof *plan));
    }
    free(work);
}
END_TEST

Suite *stock_refused_suite(void)
{
    Suite *suite = suite_create("stock_refused");
    TCase *tcase = tcase_create("stock_refused");
    tcase_add_test(tcase, fields_out_of_bounds_are_refused);
    tcase_add_test(tcase, contradictions_are_refused);
    tcase_add_test(tcase, the_index_may_be_large);
    tcase_add_test(tcase, arguments_and_buffers_are_checked);
    tcase_add_test(tcase, the_work_buffer_is_kept_to);
    suite_add_tcase(suite, tcase);
    return suite;
}
