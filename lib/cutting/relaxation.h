/* SPDX-License-Identifier: MIT */
/* The linear relaxation: least cost of sticks, any real number of each pattern. */
#ifndef TUNNELSIDE_RELAXATION_H
#define TUNNELSIDE_RELAXATION_H

#include "cutting/pattern.h"

enum {
    TSIDE_I_COLUMNS = 8192 /* patterns to choose from */
};

/* Patterns to choose from. */
typedef struct tside_i_pool {
    int columns, settled; /* of these the first stay */
    int *start;           /* of each column's entries, and the end of the last */
    tside_i_entry *entry;
    unsigned char *stock, *banned, *out; /* out: of no plan that is sought, whatever is decided yet */
} tside_i_pool;

/*
 * A basis and its inverse. A row is a type, of which at least its demand is to be met, or, if there are more rows than
 * types, a stock, of which no more than some sticks are to be had: it has demand -sticks and an entry of -1 in each of
 * its columns. A column below 0 is the surplus of row -1 - column. Costs are shares of the dearest stick's.
 */
typedef struct tside_i_relaxation {
    const tside_i_problem *problem;
    tside_i_effort *effort;
    int rows;
    tside_i_pool pool;
    int *basis;    /* each row's column */
    int *wanted;   /* a basis that is being made */
    int *kept;     /* rows that keep their surplus */
    int *filled;   /* places of a row of the inverse that are not 0 */
    double enough; /* more than any cost that is of interest */
    double *inverse, *x, *price, *alpha, *demand;
    double determinant; /* of the basis, without its sign */
    int pivots;
} tside_i_relaxation;

void tside_i_relaxation_parts(tside_i_arena *from, tside_i_relaxation *r, int types);

/* Rows of a relaxation with one for each stock too, at most. */
int tside_i_relaxation_most_rows(int types);

/* Empties the pool and settles which rows there are. */
void tside_i_relaxation_begin(tside_i_relaxation *r, int rows);

/* Adds a pattern to the pool; 0 if it is full. */
int tside_i_pool_add(tside_i_relaxation *r, int stock, const int *count);

/*
 * Adds a pattern to the pool, from which columns that are not of the basis may have to go: what is left has room for
 * one more, unless what stays of a dive's takes all of it, and then that does without.
 */
void tside_i_pool_take(tside_i_relaxation *r, int stock, const int *count);

/* Whether it may well take many more. */
int tside_i_pool_has_room(const tside_i_relaxation *r);

/* A column's pattern. */
void tside_i_pool_pattern(const tside_i_relaxation *r, int column, int *pattern);

/* Forgets all columns but those of the basis and those that stay. */
void tside_i_pool_shrink(tside_i_relaxation *r);

/* What a column costs, and what it is worth at the prices, as a share of the dearest stick's cost. */
double tside_i_relaxation_cost(const tside_i_relaxation *r, int column);
double tside_i_relaxation_worth(const tside_i_relaxation *r, int column);

/* Asks for what the problem does, and bans columns that give more of a type than that. */
void tside_i_relaxation_ask(tside_i_relaxation *r);

/* Makes the inverse anew for the columns of a basis. */
void tside_i_relaxation_set(tside_i_relaxation *r, const int *basis);

/* Prices of the rows by the basis. */
void tside_i_relaxation_price(tside_i_relaxation *r);

/*
 * Brings a column in at its price, from a basis that meets all demands, whose prices are made and then kept up. 0 if it
 * cannot.
 */
int tside_i_relaxation_enter(tside_i_relaxation *r, int column);

/* Takes a column once more: x is what is left of the basis. */
void tside_i_relaxation_take(tside_i_relaxation *r, int column);

/*
 * Solves for the demands as they stand, from a basis whose prices are sound, over the columns not banned. 0 where
 * nothing meets the demands, with prices that prove it; or if it does not end, or no more effort may be spent.
 */
int tside_i_relaxation_solve(tside_i_relaxation *r);

#endif
