/* SPDX-License-Identifier: MIT */
/* Cutting stock in whole numbers: patterns, the linear relaxation over them, and the search. stock.c makes the numbers and hands out the buffers. */
#ifndef TUNNELSIDE_CUTTING_H
#define TUNNELSIDE_CUTTING_H

#include <stdint.h>

#include <tunnelside/stock.h>

#include "base/field.h"

enum {
    GRID = 1024,       /* cells of the table that bounds what still fits */
    COLUMNS = 8192,    /* patterns that the search chooses from */
    ENTRIES = 10,      /* of one of them, on average */
    ORDER = 4096,      /* of a group that is searched */
    EXTRAS = 64        /* columns that make a basis whole */
};

/*
 * The problem: sticks of a few rooms and costs, both rising from one to the next, and pieces of a few types, each with its size, falling, and
 * how many are asked for. A piece's size has one kerf in it, and so has a stick's room.
 */
typedef struct tside_i_cutting {
    int types, stocks;
    int64_t *size;
    int *demand;
    int64_t room[TSIDE_STOCK_LENGTHS], cost[TSIDE_STOCK_LENGTHS];
} tside_i_cutting;

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

/* --- pattern.c: what may be cut from one stick --- */

/*
 * A walk over what fits into a room, in lexicographic order, of which it stops at each pattern worth more than a floor. The floor may be raised
 * on the way: so one finds the best.
 */
typedef struct tside_i_walk {
    int types;
    const int64_t *size, *value;
    const int *most;      /* of each type in one stick */
    const int64_t *table; /* tside_i_table's, or NULL where values are sizes */
    int grid;
    int64_t scale;        /* the room that the grid divides */
    int64_t left, sum, floor;
    int64_t steps;        /* how many are left; below 0: the walk was broken off */
    int at;
    int *count;           /* the pattern */
} tside_i_walk;

/* The most that types from j on are worth in a room, for every j and every cell of a grid over the largest room: never too little. */
void tside_i_table(const tside_i_cutting *cutting, const int64_t *value, int64_t *table, int grid);
/* As many cells as the largest room has units, or GRID. */
int tside_i_grid(const tside_i_cutting *cutting);
/* Goes to the next pattern; 0 if there is none. */
int tside_i_walk_next(tside_i_walk *walk);
/* Whether no further piece fits the walk's pattern. */
int tside_i_walk_is_full(const tside_i_walk *walk);
/* Goes through the whole walk; best receives the pattern worth most. Returns its worth, or floor if none is worth more. */
int64_t tside_i_walk_best(tside_i_walk *walk, int *best);

/* --- relaxation.c: the linear relaxation: least cost of sticks, any real number of each pattern --- */

typedef struct tside_i_entry {
    short type, count;
} tside_i_entry;

/* Patterns to choose from. */
typedef struct tside_i_pool {
    int columns;
    int *start; /* of each column's entries, and the end of the last */
    tside_i_entry *entry;
    unsigned char *stock, *banned;
} tside_i_pool;

/*
 * A basis and its inverse. A row is a type, of which at least its demand is to be met, or, if there are more rows than types, a stock, of which no more
 * than some sticks are to be had: it has demand -sticks and an entry of -1 in each of its columns. A column below 0 is the surplus of row -1 - column.
 * Costs are shares of the dearest stick's.
 */
typedef struct tside_i_relaxation {
    const tside_i_cutting *cutting;
    int rows;
    tside_i_pool pool;
    int *basis;    /* twice as long as there are rows */
    double enough; /* more than any cost that is of interest */
    double share[TSIDE_STOCK_LENGTHS]; /* costs of the stocks */
    double *inverse, *x, *price, *alpha, *demand;
    double determinant; /* of the basis, without its sign */
    int pivots;
} tside_i_relaxation;

/* A column's pattern. */
void tside_i_pool_pattern(const tside_i_relaxation *r, int column, int *pattern);
/* Adds a pattern to the pool; 0 if it is full. */
int tside_i_pool_add(tside_i_relaxation *r, int stock, const int *count);
/* Makes the inverse anew for the columns of a basis. */
void tside_i_relaxation_set(tside_i_relaxation *r, const int *basis);
/* Prices of the types by the basis. */
void tside_i_relaxation_price(tside_i_relaxation *r);
/* Brings a column in at its price, from a basis that meets all demands. 0 if it cannot. */
int tside_i_relaxation_enter(tside_i_relaxation *r, int column);
/* Takes a column once more: x is what is left of the basis. */
void tside_i_relaxation_take(tside_i_relaxation *r, int column);
/*
 * Solves for the demands as they stand, from a basis whose prices are sound, over the columns not banned. Returns 1; 0 where nothing meets
 * the demands, with prices that prove it; -1 if it does not end.
 */
int tside_i_relaxation_solve(tside_i_relaxation *r);

/* --- what the search works on --- */

/* Sticks that together give every piece. */
typedef struct tside_i_sticks {
    int rows;
    int64_t cost;
    int *stock, *times;
    short *pattern; /* types to a row */
} tside_i_sticks;

typedef struct tside_i_search {
    tside_i_cutting cutting;
    tside_i_relaxation relaxation;
    int64_t *table, *price;           /* whole-numbered prices of the types, at which no pattern is worth more than its stick, and their table */
    int64_t *node_price;              /* prices of the relaxation's rows where the search stands, */
    int64_t node_fine, least;         /* their units in a unit of cost, and how far a column may fall short of its own, not above 0; */
    int64_t more;                     /* what it costs at least there to make the basis whole, */
    double spare;                     /* and what is left of the cut then: both in those units */
    double *x;                        /* how often the relaxation takes the basis' columns there, */
    int extras, extra[EXTRAS];        /* and columns that make it whole */
    int64_t fine;                     /* price units in a unit of cost */
    int64_t bound;                    /* least cost that is not ruled out */
    int64_t level;                    /* cost from one total of stock to the next */
    int64_t cut;                      /* only what costs no more is sought, */
    int to_be_had[TSIDE_STOCK_LENGTHS]; /* and takes no more sticks of each stock: */
    int64_t least_cost;               /* of a plan of these; */
    double material;                  /* of which this much room is needed */
    tside_i_sticks best, trial;
    int *rest, *most, *count, *found; /* one per type */
    int depth, *bases;                /* of each level: the basis it began from, */
    int *column, *value;              /* its column, and how often it is taken; */
    int *whole, *low, *high;          /* how often at most by the relaxation; the nearest below and above that were not tried, or -1 */
    int nodes, limit;
} tside_i_search;

enum {
    ROWS = 20, ROWS_MORE = 64,    /* of a plan: per type, and beside these */
    LEVELS = 2, LEVELS_MORE = 100 /* of the search: the same */
};

static inline int tside_i_types(const tside_i_search *search)
{
    return search->cutting.types;
}

static inline int64_t tside_i_dearest(const tside_i_search *search)
{
    return search->cutting.cost[search->cutting.stocks - 1];
}

/* --- fill.c: plans --- */

/* Begins a plan in trial. */
void tside_i_plan_begin(tside_i_search *search);
/* Takes so many sticks of a pattern into it, without what is over, from the shortest stock that holds the rest. 0 if it has no row left. */
int tside_i_plan_append(tside_i_search *search, const int *pattern, int times);
/* Fills sticks greedily for what is still asked for. If the plan costs no more than the cut it becomes the best, and only cheaper ones are sought from then on. */
void tside_i_plan_finish(tside_i_search *search);

/* --- price.c: what pieces are worth --- */

/* A walk over the patterns of a room, by sizes or by prices whose table has been made; the pattern is count. */
tside_i_walk tside_i_walk_of(const tside_i_search *search, const int64_t *value, const int *most, int64_t room, int64_t floor, int64_t steps);
/*
 * The relaxation's prices in whole numbers, never above the real ones. Returns how many units of price are in a unit of cost: fine, or less where prices
 * are so high that sums of them would not fit in 64 bits.
 */
int64_t tside_i_round_prices(const tside_i_search *search, int64_t *whole);
/* Solves the relaxation over all patterns, keeps its prices, and raises the bound to what they prove. */
void tside_i_find_bound(tside_i_search *search);
void tside_i_raise_bound(tside_i_search *search, int64_t bound);
/*
 * Puts every full pattern into the pool that falls short of its stick by no more than the room that the cut leaves; where these are too many, or more than
 * most, those that fall short least. Returns whether it could put in all.
 */
int tside_i_list_patterns(tside_i_search *search, int most);

/* --- corner.c --- */

/*
 * What it costs at least, in units of the node's prices, to make the relaxation's basis whole, if that is no more than is spare; else more. Takes the columns
 * that do it: into extra, and off the relaxation's x. 0 too where that would take long to find out.
 */
int64_t tside_i_corner(tside_i_search *search);

/* --- branch.c --- */

/* What a column costs less what it is worth at the prices where the search stands. */
int64_t tside_i_reduced_cost(const tside_i_search *search, int column);

/* Looks for the cheapest plan of the pool's patterns that costs no more than the cut. Returns whether nothing was left out. */
int tside_i_branch(tside_i_search *search, int limit);

/* --- cutting.c: the search --- */

/* Fills best, and bound. */
void tside_i_search_run(tside_i_search *search);

#endif
