/* SPDX-License-Identifier: MIT */
/* What may be cut from one stick. */
#ifndef TUNNELSIDE_PATTERN_H
#define TUNNELSIDE_PATTERN_H

#include "cutting/effort.h"
#include "cutting/problem.h"

/* So many pieces of a type: patterns are kept as lists of these. */
typedef struct tside_i_entry {
    short type, count;
} tside_i_entry;

/*
 * A walk over what fits into a room, in lexicographic order, of which it stops at each pattern worth more than a floor.
 * The floor may be raised on the way: so one finds the best.
 */
typedef struct tside_i_walk {
    const tside_i_problem *problem;
    tside_i_effort *effort;
    const int64_t *value;
    const int64_t *table; /* tside_i_table's, or NULL where values are sizes */
    const int *most;      /* of each type in one stick */
    int *count;           /* the pattern */
    int64_t left, sum, floor;
    int64_t steps;  /* pieces that may still be taken back */
    int at;         /* how far the types have been gone through */
    int begun;      /* 1 from the first pattern on */
    int broken_off; /* 1: there may be more patterns, but no steps or no effort for them */
} tside_i_walk;

/* How many numbers a table has. */
size_t tside_i_table_size(int types);

/*
 * The most that types from j on are worth in a room, for every j and every cell of a grid over the largest room: never
 * too little.
 */
void tside_i_table(const tside_i_problem *problem, tside_i_effort *effort, const int64_t *value, int64_t *table);

/* The most that all types together are worth in a room, by the table. */
int64_t tside_i_table_worth(const tside_i_problem *problem, const int64_t *table, int64_t room);

/* Goes to the next pattern; 0 if there is none, or no more effort may be spent. The first takes none. */
int tside_i_walk_next(tside_i_walk *walk);

/* Whether no further piece fits the walk's pattern. */
int tside_i_walk_is_full(const tside_i_walk *walk);

#endif
