/* SPDX-License-Identifier: MIT */
/* What is to be cut, in whole numbers. */
#ifndef TUNNELSIDE_PROBLEM_H
#define TUNNELSIDE_PROBLEM_H

#include <stdint.h>

#include <tunnelside/stock.h>

#include "cutting/arena.h"

/*
 * Sticks of a few rooms and costs, both rising from one to the next, and pieces of some types, each with its size,
 * falling, and how many are asked for. A piece's size has one kerf in it, and so has a stick's room.
 */
typedef struct tside_i_problem {
    int types, stocks;
    int64_t *size;
    int *demand;
    int64_t room[TSIDE_STOCK_LENGTHS], cost[TSIDE_STOCK_LENGTHS];
    int64_t level;                  /* cost from one total of stock to the next */
    double measure;                 /* m, of stock that a level of cost stands for, */
    double slack;                   /* m, and how far a stick's cost may be from its length */
    int *type;                      /* of each of the caller's cuts, or -1 where none is asked for */
    int which[TSIDE_STOCK_LENGTHS]; /* the caller's number of each stock */
} tside_i_problem;

/* Finds room for as many types as there are cuts. */
void tside_i_problem_parts(tside_i_arena *from, tside_i_problem *problem, int cut_count);

/* Makes the whole numbers. Costs are lengths over their common measure, and a level is 1. */
void tside_i_problem_make(tside_i_problem *problem, const tside_stock *stock, const tside_cut *cuts, int cut_count);

/* Whether a stick, less its trim, holds a piece of that length: over by no more than FITS it does. */
int tside_i_problem_fits(const tside_stock *stock, double stick, double length);

/*
 * Costs have been lengths; now a stick more counts too, but less than any length: of plans that take as much stock the
 * one with the fewest sticks is cheapest. cost: of a plan; where numbers would grow too large it stays as it is.
 */
void tside_i_problem_count_sticks(tside_i_problem *problem, int64_t cost);

/* The room that all pieces need. */
double tside_i_problem_material(const tside_i_problem *problem);

/* The stock of which a unit of room costs least. */
int tside_i_problem_cheapest(const tside_i_problem *problem);

/* What all pieces cost at least, were there no offcuts: never too much. */
int64_t tside_i_problem_least(const tside_i_problem *problem);

/* Fewer types, most at the most, each as small as the smallest of those it stands for: it never costs more. */
void tside_i_problem_coarsen(const tside_i_problem *problem, int most, tside_i_problem *coarse);

static inline int64_t tside_i_dearest(const tside_i_problem *problem)
{
    return problem->cost[problem->stocks - 1];
}

/* The greatest common divisor; of 0 and a number, that number. */
static inline int64_t tside_i_common(int64_t a, int64_t b)
{
    while (b) {
        const int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

#endif
