/* SPDX-License-Identifier: MIT */
/*
 * Cut plans in figures: what was found and proven, in how long, and how long an exact solver takes for the same. Fails
 * where an answer is wrong.
 */
#define _POSIX_C_SOURCE 200809L
#include <math.h>
#include <stdio.h>

#include "bench_clock.h"
#include "cuts.h"

enum { PATIENCE = 1000 }; /* ms, of the exact solver with one order */

typedef struct tally {
    int orders, proven, fewest, wrong, solved;
    double time, longest, exact_time;
} tally;

static cut_answer run(const cut_order *order, tally *sum, double *seconds)
{
    const double start = now();
    const cut_answer answer = cut_order_plan(order, TSIDE_STOCK_NODES);
    const char *wrong;
    *seconds = now() - start;
    wrong = cut_answer_wrong(order, &answer);
    if (wrong || (order->optimum && answer.plan.proven && answer.plan.sticks != order->optimum)) {
        fprintf(stderr, "bench: %s: %s\n", order->name, wrong ? wrong : "not the published optimum");
        sum->wrong++;
    }
    sum->orders++;
    sum->proven += answer.plan.proven;
    sum->fewest += answer.plan.fewest;
    sum->time += *seconds;
    sum->longest = fmax(sum->longest, *seconds);
    return answer;
}

static int published(void)
{
    static cut_order orders[PROBLEMS];
    tally sum = {0};
    const int count = cut_orders_published(orders);
    printf("%-10s %8s %8s %8s %8s %8s %10s %10s\n", "problem", "lengths", "optimum", "sticks", "bound", "nodes", "ms",
           "solver ms");
    for (int i = 0; i < count; i++) {
        double seconds, stock, start;
        int sticks;
        const cut_answer answer = run(orders + i, &sum, &seconds);
        printf("%-10s %8d %8d %8d %8.0f %8d %10.1f ", orders[i].name, orders[i].cut_count, orders[i].optimum,
               answer.plan.sticks, answer.plan.lower_bound / orders[i].stock.lengths[0].length, answer.plan.nodes,
               1e3 * seconds);
        start = now();
        if (cut_order_exact(orders + i, PATIENCE, &stock, &sticks))
            printf("%10.1f\n", 1e3 * (now() - start));
        else
            printf("%10s\n", "-");
    }
    printf("%d of %d proven, the slowest in %.1f ms; -: too many patterns to list for the exact solver\n\n", sum.proven,
           sum.orders, 1e3 * sum.longest);
    return sum.wrong + (count != PROBLEMS);
}

/* full: exactly ten lengths, and all the stocks. */
static int invented(const char *what, int orders, int stocks, int most, int seed, int full)
{
    tally sum = {0};
    dice d = {(uint64_t)seed};
    for (int i = 0; i < orders; i++) {
        const cut_order order = full ? cut_order_full(&d, stocks, most) : cut_order_invented(&d, stocks, most);
        double seconds, stock, start;
        int sticks;
        const cut_answer answer = run(&order, &sum, &seconds);
        start = now();
        if (i < 20 && cut_order_exact(&order, PATIENCE, &stock, &sticks)) {
            sum.solved++;
            if (answer.plan.lower_bound > stock + 1e-6 || (answer.plan.proven && answer.plan.stock > stock + 1e-6)) {
                fprintf(stderr, "bench: order %d: %g m, and the exact solver has %g m\n", i, answer.plan.stock, stock);
                sum.wrong++;
            }
        }
        if (i < 20)
            sum.exact_time += now() - start;
    }
    printf("%-58s %5d proven %5d (fewest sticks too: %d) %9.1f ms in all, %8.2f ms the slowest; exact solver, first "
           "20: %d solved, %.0f ms\n",
           what, orders, sum.proven, sum.fewest, 1e3 * sum.time, 1e3 * sum.longest, sum.solved, 1e3 * sum.exact_time);
    return sum.wrong;
}

int main(void)
{
    int wrong = published();
    wrong += invented("side orders, up to 10 lengths, 12 of each, one stock", 100, 1, 12, 1, 0);
    wrong += invented("the same, up to 100 of each", 1000, 1, 100, 2, 0);
    wrong += invented("up to 2 stocks, 12 of each", 100, 2, 12, 3, 0);
    wrong += invented("up to 2 stocks, 100 of each", 100, 2, 100, 4, 0);
    wrong += invented("up to 3 stocks, 12 of each", 100, 3, 12, 5, 0);
    wrong += invented("up to 5 stocks, 12 of each", 100, 5, 12, 6, 0);
    wrong += invented("10 lengths, 3 stocks, 100 of each", 200, 3, 100, 7, 1);
    wrong += invented("10 lengths, 5 stocks, 20 of each", 200, 5, 20, 8, 1);
    wrong += invented("10 lengths, 5 stocks, 100 of each", 200, 5, 100, 9, 1);
    return wrong > 0;
}
