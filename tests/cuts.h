/* SPDX-License-Identifier: MIT */
/*
 * Orders of cuts for the tests and figures of cut plans, and a checker of plans that shares nothing with what makes
 * them.
 */
#ifndef TUNNELSIDE_CUTS_H
#define TUNNELSIDE_CUTS_H

#include <tunnelside/stock.h>

#include "expect.h"

typedef struct cut_order {
    char name[32];
    int optimum; /* least number of sticks where it is published, else 0 */
    tside_stock stock;
    int cut_count;
    tside_cut cuts[TSIDE_STOCK_CUTS];
} cut_order;

/* A plan with its sticks: buffers of its own, used again by the next call. */
typedef struct cut_answer {
    tside_status status;
    tside_fault fault;
    tside_cut_plan plan;
    int count;
    const tside_stick *sticks;
    const int *taken;
} cut_answer;

enum { PROBLEMS = 43 };

/*
 * The published problems: t60_00, N1C1W1_A, N1C1W1_B, then 20 of u120 and 20 of u250; a unit is 10 mm, there is no kerf
 * and no trim. Returns how many were read.
 */
int cut_orders_published(cut_order orders[PROBLEMS]);

/*
 * An invented order: up to ten lengths, up to `most` pieces of each, sticks of one to `stocks` lengths in feet; every
 * second in sixteenths of an inch, others in millimetres.
 */
cut_order cut_order_invented(dice *d, int stocks, int most);

/* The same, but of exactly ten lengths, and of all the stocks, five at most. */
cut_order cut_order_full(dice *d, int stocks, int most);

/*
 * An invented order of many lengths: each in whole millimetres, from `least` on and below `below`, up to `most` pieces
 * of it, sticks of one to three lengths, 3 mm of kerf.
 */
cut_order cut_order_spread(dice d, int lengths, int stocks, int most, int least, int below);

/* An order from its numbers; lengths end with 0. */
cut_order cut_order_of(double kerf, double trim, const double *stock, const double *cuts, const int *counts);
#define LIST(...) ((const double[]){__VA_ARGS__, 0})
#define COUNTS(...) ((const int[]){__VA_ARGS__})

cut_answer cut_order_plan(const cut_order *order, int node_limit);

/* NULL if the sticks give every piece, each fits, and the sums are right; else what is wrong. */
const char *cut_answer_wrong(const cut_order *order, const cut_answer *answer);

/* An order's plan, of which nothing is wrong. */
cut_answer cut_order_sound(const cut_order *order, int node_limit);

/*
 * Stock in whole sticks, and their number, by an exact solver over all full patterns. Returns 1; 0 if it found no proof
 * within its time, or there are too many patterns.
 */
int cut_order_exact(const cut_order *order, int milliseconds, double *stock, int *sticks);

/* The least stock were shares of sticks to be had: by the same solver over the same patterns. Returns 1; 0 as above. */
int cut_order_relaxed(const cut_order *order, double *stock);

#endif
