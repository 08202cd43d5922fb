/* SPDX-License-Identifier: MIT */
/* Cut plans: by hand, every refusal, published problems, and whatever every plan must be. */
#include <check.h>
#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "cuts.h"

/* An order from its numbers; lengths end with 0. */
static cut_order an_order(double kerf, double trim, const double *stock, const double *cuts, const int *counts)
{
    cut_order order;
    tside_usual(TSIDE_KIND_STOCK, &order.stock);
    strcpy(order.name, "by hand");
    order.optimum = 0;
    order.stock.kerf = kerf;
    order.stock.trim = trim;
    for (order.stock.length_count = 0; stock[order.stock.length_count] > 0; order.stock.length_count++)
        order.stock.lengths[order.stock.length_count].length = stock[order.stock.length_count];
    for (order.cut_count = 0; cuts[order.cut_count] > 0; order.cut_count++)
        order.cuts[order.cut_count] = (tside_cut){cuts[order.cut_count], counts[order.cut_count]};
    return order;
}
#define LIST(...) ((const double[]){__VA_ARGS__, 0})
#define COUNTS(...) ((const int[]){__VA_ARGS__})

static cut_answer sound(const cut_order *order, int node_limit)
{
    cut_answer answer = cut_order_plan(order, node_limit);
    const char *wrong;
    if (answer.status != TSIDE_OK)
        check_answered(__FILE__, __LINE__, &answer.fault);
    wrong = cut_answer_wrong(order, &answer);
    if (wrong)
        ck_abort_msg("%s: %s", order->name, wrong);
    return answer;
}

/* Must be the best, proven, with so many sticks of so much stock. */
static cut_answer best_is(const cut_order *order, int sticks, double stock)
{
    cut_answer answer = sound(order, TSIDE_STOCK_NODES);
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
    order = an_order(0.003, 0.01, LIST(5), LIST(2), COUNTS(5));
    answer = best_is(&order, 3, 15);
    ck_assert_int_eq(answer.count, 2);
    ck_assert(answer.sticks[0].count == 2 && answer.sticks[0].pieces == 2 && answer.sticks[1].count == 1 &&
              answer.sticks[1].pieces == 1);
    NEAR(answer.sticks[0].used, 4.003, 1e-12, "used", 0);
    NEAR(answer.sticks[0].offcut, 5 - 0.01 - 4.003 - 0.003, 1e-12, "offcut", 0);
    NEAR(answer.plan.lost, 3 * 0.01 + 5 * 0.003, 1e-12, "lost", 0);
    /* 3 + 3 in 6, 4 + 2 in 6: largest first would leave nothing; 2 + 2 + 2 would waste a fours' place */
    order = an_order(0, 0, LIST(6), LIST(2, 4, 3), COUNTS(2, 2, 2));
    best_is(&order, 3, 18);
    /* largest first puts 0.51 alone: 0.51, 0.27 + 0.26 + 0.23 + 0.23 fill nothing; the best fills sticks of 1 wholly */
    order = an_order(0, 0, LIST(1), LIST(0.51, 0.27, 0.26, 0.23), COUNTS(6, 6, 6, 12));
    best_is(&order, 9, 9); /* 6 x 0.51 + 0.26 + 0.23, 3 x 0.27 + 0.27 + 0.23 + 0.23 */
    /* two lengths of stock: 7 m goes whole into 7, 3 + 3 into 6 */
    order = an_order(0, 0, LIST(6, 7), LIST(7, 3), COUNTS(1, 2));
    best_is(&order, 2, 13);
    /* as much stock either way, 6 x 2 or 4 x 3: fewer sticks win */
    order = an_order(0, 0, LIST(2, 3), LIST(1), COUNTS(12));
    best_is(&order, 4, 12);
    /* stock in any order, given twice; the caller's number comes back */
    order = an_order(0, 0, LIST(7, 3, 3), LIST(2.9), COUNTS(1));
    answer = best_is(&order, 1, 3);
    ck_assert_int_eq(answer.sticks[0].stock, 1);
}
END_TEST

START_TEST(equal_lengths_stay_apart)
{
    /* the same length asked for three times, once for nothing */
    cut_order order = an_order(0, 0, LIST(6), LIST(2, 1, 2, 2, 1), COUNTS(2, 0, 3, 4, 6));
    cut_answer answer = best_is(&order, 4, 24);
    ck_assert_int_eq(answer.plan.pieces, 15);
}
END_TEST

START_TEST(nothing_asked_is_nothing_cut)
{
    cut_order order = an_order(0.003, 0, LIST(6), LIST(2, 3), COUNTS(0, 0));
    cut_answer answer = best_is(&order, 0, 0);
    ck_assert_int_eq(answer.count, 0);
    order.cut_count = 0;
    best_is(&order, 0, 0);
    /* what is not asked for may be too long */
    order = an_order(0.003, 0, LIST(6), LIST(7, 3), COUNTS(0, 1));
    best_is(&order, 1, 6);
}
END_TEST

/* --- the limit of what fits --- */

static int sticks_for(double kerf, double trim, double stock, double length, int count)
{
    cut_order order = an_order(kerf, trim, LIST(stock), LIST(length), COUNTS(count));
    return sound(&order, TSIDE_STOCK_NODES).plan.sticks;
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

/* --- refusals --- */

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
    const cut_order good = an_order(0.003, 0.01, LIST(6, 6.5), LIST(2, 3), COUNTS(2, 2));
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
    cut_order order = an_order(0.003, 0.01, LIST(6, 6.5), LIST(2, 6.491, 3), COUNTS(2, 1, 1));
    tried t;
    char text[256];
    refused_as(&order, TSIDE_CONTRADICTS, "cuts[1].length", TSIDE_ABOVE, 6.491, 6.49, 1);
    t = refused(&order, 3, 0, tside_stock_work(3), 4);
    NEAR(t.fault.gap, -0.001, 1e-12, "gap", 0);
    tside_fault_text(&t.fault, text, sizeof text);
    ck_assert_str_eq(text, "cuts[1].length: 6.491 m contradicts stock: longer than any stick less its trim; the "
                           "greatest that fits is 6.49 m, 0.001 m is missing");
    order.cuts[1].length = 6.49;
    sound(&order, 0);
    order.stock.trim = 6;
    refused_as(&order, TSIDE_CONTRADICTS, "stock.lengths[0].length", TSIDE_NOT_ABOVE, 6, 6, 0);
}
END_TEST

START_TEST(the_index_may_be_large)
{
    static cut_order order;
    cut_answer answer;
    order = an_order(0, 0, LIST(6), LIST(2), COUNTS(1));
    order.cut_count = TSIDE_STOCK_CUTS;
    for (int i = 1; i < TSIDE_STOCK_CUTS; i++)
        order.cuts[i] = (tside_cut){0.5 + 0.0005 * i, 1};
    order.cuts[123].length = 6.01;
    answer = cut_order_plan(&order, 0);
    ck_assert_int_eq(answer.status, TSIDE_CONTRADICTS);
    ck_assert_str_eq(answer.fault.field, "cuts[123].length");
    ck_assert_int_eq(answer.fault.index, 123);
    order.cuts[123].length = 1;
    sound(&order, 0); /* as many lengths as are allowed */
}
END_TEST

START_TEST(arguments_and_buffers_are_checked)
{
    const cut_order order = an_order(
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
    t = refused(&order, 3, 100, size, 1);
    ck_assert(t.status == TSIDE_TOO_SMALL && !strcmp(t.fault.field, "capacity") && t.fault.bound >= 3 &&
              t.fault.value == 1);
    ck_assert(tside_stock_work(-1) == 0 && tside_stock_work(TSIDE_STOCK_CUTS + 1) == 0);
    ck_assert(tside_stock_work(0) > 0 && tside_stock_work(10) < 2 << 20);
    for (int i = 0; i < TSIDE_STOCK_CUTS; i++)
        ck_assert(tside_stock_work(i) <= tside_stock_work(i + 1));
}
END_TEST

/* The buffer is not overrun, nor does what it held before matter. */
START_TEST(the_work_buffer_is_kept_to)
{
    cut_order order = an_order(0.003, 0.01, LIST(6, 6.5, 7.3), LIST(2.11, 3.07, 0.77, 1.9, 0.51, 1.3),
                               COUNTS(7, 9, 12, 8, 11, 3));
    const size_t size = tside_stock_work(order.cut_count);
    unsigned char *work = malloc(size + 64);
    tside_cut_plan plan[2];
    tside_stick sticks[64];
    int taken[64 * 6], count;
    for (int k = 0; k < 2; k++) {
        memset(plan + k, 0, sizeof *plan);
        memset(work, k ? 0xff : 0, size);
        memset(work + size, 0x5a, 64);
        ck_assert_int_eq(tside_stock_plan(&order.stock, order.cuts, order.cut_count, 2000, work, size, sticks, taken,
                                          64, &count, plan + k, NULL),
                         TSIDE_OK);
        for (int i = 0; i < 64; i++)
            ck_assert_int_eq(work[size + (size_t)i], 0x5a);
    }
    ck_assert(!memcmp(plan, plan + 1, sizeof *plan));
    free(work);
}
END_TEST

/* --- published problems: see tests/data/binpack/README.md for their sources --- */

START_TEST(published_problems_are_proven)
{
    static cut_order orders[PROBLEMS];
    ck_assert_int_eq(cut_orders_published(orders), PROBLEMS);
    for (int i = 0; i < PROBLEMS; i++) {
        cut_answer answer = sound(orders + i, TSIDE_STOCK_NODES);
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
        const cut_answer answer = sound(&order, TSIDE_STOCK_NODES);
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
        const cut_answer answer = sound(&order, TSIDE_STOCK_NODES);
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
            const cut_answer answer = sound(&order, limits[k]);
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
        const tside_cut_plan plan = sound(&order, 2000).plan;
        tside_cut_plan other;
        more.cuts[dice_below(&d, more.cut_count)].count++;
        other = sound(&more, 2000).plan;
        ck_assert_msg(!plan.proven || other.stock >= plan.stock - 1e-9, "order %d: a piece more takes less", i);
        more = order;
        more.stock.kerf += 0.004;
        other = sound(&more, 2000).plan;
        ck_assert_msg(!plan.proven || other.stock >= plan.stock - 1e-9, "order %d: a wider kerf takes less", i);
        more = order;
        more.stock.lengths[more.stock.length_count++].length = 6.3;
        other = sound(&more, 2000).plan;
        ck_assert_msg(!other.proven || other.stock <= plan.stock + 1e-9, "order %d: a choice more takes more", i);
        more = order;
        for (int j = 0; j < more.cut_count; j++)
            more.cuts[j].count *= 2;
        other = sound(&more, 2000).plan;
        ck_assert_msg(!other.proven || other.stock <= 2 * plan.stock + 1e-9,
                      "order %d: twice the order takes more than twice", i);
        for (int j = 0; j < order.cut_count / 2; j++) { /* the order of cuts is nothing */
            const tside_cut cut = order.cuts[j];
            order.cuts[j] = order.cuts[order.cut_count - 1 - j];
            order.cuts[order.cut_count - 1 - j] = cut;
        }
        other = sound(&order, 2000).plan;
        ck_assert_msg(other.stock == plan.stock && other.sticks == plan.sticks && other.proven == plan.proven,
                      "order %d: the order of cuts matters", i);
    }
}
END_TEST

Suite *stock_suite(void);

/* --- one stick in hand --- */

/* How many pieces of each cut the fullest way takes, as a number of digits. */
static int filled(double kerf, double trim, double length, const double *lengths, const int *counts, tside_stick *stick)
{
    const cut_order order = an_order(kerf, trim, LIST(6), lengths, counts);
    tside_cut given[8];
    int digits = 0;
    tside_fault fault;
    ANSWERS(tside_stock_fill(&order.stock, length, order.cuts, order.cut_count, given, stick, &fault));
    for (int i = 0; i < order.cut_count; i++) {
        ck_assert(given[i].length == order.cuts[i].length);
        digits = 10 * digits + given[i].count;
    }
    return digits;
}

START_TEST(a_stick_in_hand_by_hand)
{
    tside_stick stick;
    /* 4 first would leave 1; 3 + 2 leaves nothing */
    ck_assert_int_eq(filled(0, 0, 5, LIST(4, 3, 2), COUNTS(1, 1, 1), &stick), 11);
    ck_assert(stick.pieces == 2 && stick.count == 1 && stick.offcut == 0);
    NEAR(stick.used, 5, 1e-12, "used", 0);
    /* no more than are asked for; of as full ways the one with the longest piece */
    ck_assert_int_eq(filled(0, 0, 4, LIST(1, 2, 3), COUNTS(9, 9, 1), &stick), 101);
    ck_assert_int_eq(filled(0, 0, 4, LIST(1.5, 1.5), COUNTS(1, 5), &stick), 11);
    NEAR(stick.offcut, 1, 1e-12, "left", 0);
    /* 2 x 2 m, a kerf of 3 mm between them and once more behind, 10 mm of trim */
    ck_assert_int_eq(filled(0.003, 0.01, 4.5, LIST(2), COUNTS(5), &stick), 2);
    NEAR(stick.used, 4.003, 1e-12, "used", 0);
    NEAR(stick.offcut, 4.5 - 0.01 - 4.003 - 0.003, 1e-12, "left", 0);
    ck_assert_int_eq(filled(0.003, 0.01, 4.013, LIST(2), COUNTS(5), &stick), 2);
    ck_assert_int_eq(filled(0.003, 0.01, 4.0129, LIST(2), COUNTS(5), &stick), 1);
    /* nothing fits, nothing is asked for, nothing but trim */
    ck_assert_int_eq(filled(0, 0, 1.9, LIST(2, 3), COUNTS(1, 1), &stick), 0);
    ck_assert(stick.pieces == 0 && stick.used == 0 && stick.offcut == 1.9);
    ck_assert_int_eq(filled(0, 0, 5, LIST(2), COUNTS(0), &stick), 0);
    ck_assert_int_eq(filled(0, 1, 0.5, LIST(0.2), COUNTS(1), &stick), 0);
}
END_TEST

/* The fullest of all ways, by trying each. */
static double least_left(const tside_cut *cuts, int count, double room)
{
    double least = room;
    if (!count)
        return room;
    for (int k = 0; k <= cuts->count && k * cuts->length <= room + 1e-9; k++)
        least = fmin(least, least_left(cuts + 1, count - 1, room - k * cuts->length));
    return least;
}

/* Two pieces that together are as long as the stick: in doubles 0.1 + 0.2 > 0.3, and 0.3 - 0.2 < 0.1. */
START_TEST(a_stick_in_hand_is_just_filled)
{
    for (int i = 1; i < 30; i++)
        for (int j = i + 1; j < 40; j++) {
            tside_stick stick;
            ck_assert_int_eq(filled(0, 0, (i + j) / 10.0, LIST(i / 10.0, j / 10.0), COUNTS(1, 1), &stick), 11);
            ck_assert(stick.pieces == 2 && stick.offcut == 0);
        }
}
END_TEST

START_TEST(a_stick_in_hand_is_cut_the_fullest_way)
{
    dice d = {17};
    for (int n = 0; n < 300; n++) {
        cut_order order = cut_order_invented(&d, 1, 4);
        const double length = dice_between(&d, 1, 6);
        double used = 0;
        tside_cut given[16];
        int pieces = 0;
        tside_stick stick;
        tside_fault fault;
        order.stock.kerf = order.stock.trim = 0;
        order.cut_count = order.cut_count < 6 ? order.cut_count : 6;
        ANSWERS(tside_stock_fill(&order.stock, length, order.cuts, order.cut_count, given, &stick, &fault));
        for (int i = 0; i < order.cut_count; i++) {
            ck_assert(given[i].count >= 0 && given[i].count <= order.cuts[i].count);
            used += given[i].count * given[i].length;
            pieces += given[i].count;
        }
        ck_assert_int_eq(pieces, stick.pieces);
        NEAR(used, stick.used, 1e-9, "used", n);
        NEAR(length - used, least_left(order.cuts, order.cut_count, length), 2e-9, "left", n);
    }
}
END_TEST

/* Many lengths, none of which fill the stick: it ends, with a way that fits. */
START_TEST(a_stick_in_hand_takes_no_forever)
{
    static tside_cut cuts[TSIDE_STOCK_CUTS];
    static tside_cut given[TSIDE_STOCK_CUTS];
    tside_stock stock;
    tside_stick stick;
    tside_fault fault;
    tside_usual(TSIDE_KIND_STOCK, &stock);
    for (int i = 0; i < TSIDE_STOCK_CUTS; i++)
        cuts[i] = (tside_cut){0.0101 + 0.00007 * i, 3};
    ANSWERS(tside_stock_fill(&stock, 299.9999, cuts, TSIDE_STOCK_CUTS, given, &stick, &fault));
    ck_assert(stick.used <= 299.9999 + 1e-9 && stick.used > 60);
    for (int i = 0; i < 30; i++)
        cuts[i] = (tside_cut){2 + 0.02 * i, 9};
    ANSWERS(tside_stock_fill(&stock, 99.991, cuts, 30, given, &stick, &fault));
    ck_assert(stick.used <= 99.991 + 1e-9 && stick.used > 97);
}
END_TEST

START_TEST(a_stick_in_hand_is_refused)
{
    cut_order order = an_order(0, 0, LIST(6), LIST(2, 3), COUNTS(1, 1));
    tside_cut given[2] = {{7, 7}, {7, 7}};
    tside_stick stick = {.count = 7};
    tside_fault fault;
#define FILL(length, count) tside_stock_fill(&order.stock, length, order.cuts, count, given, &stick, &fault)
    REFUSES(FILL(0.009, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_BELOW);
    REFUSES(FILL(301, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_ABOVE);
    REFUSES(FILL(NAN, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_FINITE);
    REFUSES(FILL(5, -1), stick, TSIDE_OUT_OF_BOUNDS, "cut_count", TSIDE_BELOW);
    REFUSES(FILL(5, TSIDE_STOCK_CUTS + 1), stick, TSIDE_OUT_OF_BOUNDS, "cut_count", TSIDE_ABOVE);
    order.cuts[1].length = 0;
    REFUSES(FILL(5, 2), stick, TSIDE_OUT_OF_BOUNDS, "cuts[1].length", TSIDE_BELOW);
    ck_assert_int_eq(fault.index, 1);
    order.stock.kerf = -1;
    REFUSES(FILL(5, 2), stick, TSIDE_OUT_OF_BOUNDS, "stock.kerf", TSIDE_BELOW);
    ck_assert(given[0].count == 7 && given[1].count == 7);
#undef FILL
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
    tcase_add_test(tcase, fields_out_of_bounds_are_refused);
    tcase_add_test(tcase, contradictions_are_refused);
    tcase_add_test(tcase, the_index_may_be_large);
    tcase_add_test(tcase, arguments_and_buffers_are_checked);
    tcase_add_test(tcase, the_work_buffer_is_kept_to);
    tcase_add_test(tcase, published_problems_are_proven);
    tcase_add_test(tcase, every_order_of_ten_lengths_is_proven);
    tcase_add_test(tcase, orders_from_several_stocks_are_proven);
    tcase_add_test(tcase, plans_are_sound_whatever_the_limit);
    tcase_add_test(tcase, more_takes_more);
    tcase_add_test(tcase, a_stick_in_hand_by_hand);
    tcase_add_test(tcase, a_stick_in_hand_is_just_filled);
    tcase_add_test(tcase, a_stick_in_hand_is_cut_the_fullest_way);
    tcase_add_test(tcase, a_stick_in_hand_takes_no_forever);
    tcase_add_test(tcase, a_stick_in_hand_is_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
