/* SPDX-License-Identifier: MIT */
/* Branch and bound over how often each listed pattern is taken. */
#ifndef TUNNELSIDE_BRANCH_H
#define TUNNELSIDE_BRANCH_H

#include "cutting/corner.h"

/* Where the search stands: what the relaxation says there. */
typedef struct tside_i_node {
    int64_t fixed;         /* cost of the sticks already taken */
    tside_i_prices prices; /* of the relaxation's rows, */
    int64_t least;         /* and how far a column may fall short of its own, not above 0; */
    int64_t more;          /* what it costs at least to make the basis whole, */
    double spare;          /* and what is left of the cut then: these three in units of the prices */
    double *x;             /* how often the relaxation takes the basis' columns */
} tside_i_node;

/* How the search came there, level by level. */
typedef struct tside_i_trail {
    int depth, deepest;
    int *bases;          /* the basis that each level began from, of which the first is kept for the next search, */
    int *column, *value; /* its column, and how often it is taken; */
    int *whole, *low,
        *high; /* how often at most by the relaxation; the nearest below and above that were not tried, or -1 */
} tside_i_trail;

/* Sticks that a plan may take. */
typedef struct tside_i_offer {
    int sticks[TSIDE_STOCK_LENGTHS]; /* of each stock */
    int64_t least;                   /* cost of a plan of these */
} tside_i_offer;

typedef struct tside_i_tree {
    tside_i_relaxation *relaxation; /* and its pool */
    tside_i_fill *fill;             /* makes plans, and knows the cut */
    tside_i_corner corner;
    tside_i_node node;
    tside_i_trail path;
    int64_t fine; /* units of whole-numbered prices in a unit of cost */
} tside_i_tree;

void tside_i_tree_parts(tside_i_arena *from, tside_i_tree *tree, int types);

/* Makes ready for searches of the pool as it is; each then begins where the relaxation of the one before did. */
void tside_i_tree_begin(tside_i_tree *tree);

/*
 * Looks for the cheapest plan of the pool's patterns, and of the sticks on offer, that costs no more than the cut.
 * Returns whether nothing was left out.
 */
int tside_i_branch(tside_i_tree *tree, const tside_i_offer *offer);

#endif
