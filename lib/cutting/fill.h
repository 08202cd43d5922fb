/* SPDX-License-Identifier: MIT */
/* Plans: of patterns given, and of sticks filled greedily. */
#ifndef TUNNELSIDE_FILL_H
#define TUNNELSIDE_FILL_H

#include "cutting/pattern.h"

/* Sticks that together give every piece, in rows of sticks cut alike. */
typedef struct tside_i_sticks {
    int rows;
    int64_t cost;
    int *stock, *times;
    int *start; /* of each row's entries, and the end of the last */
    tside_i_entry *entry;
} tside_i_sticks;

/* The best plan so far, the one in hand, and what is still to be cut for that. */
typedef struct tside_i_fill {
    const tside_i_problem *problem;
    tside_i_effort *effort;
    tside_i_sticks best, trial;
    int most_rows, most_entries; /* of a plan */
    int64_t cut;                 /* only plans that cost no more are kept */
    int *rest, *most, *count,
        *found; /* one per type: pieces still asked for; those that a walk may take; its pattern; the best */
} tside_i_fill;

void tside_i_fill_parts(tside_i_arena *from, tside_i_fill *fill, int types);

/* Costs of the problem have changed: the best plan's is worked out anew. */
void tside_i_fill_recost(tside_i_fill *fill);

/* Begins a plan. */
void tside_i_fill_begin(tside_i_fill *fill);

/*
 * Takes so many sticks of a pattern into it, without what is over, from the shortest stock that holds the rest. A plan
 * that has no row left for them costs more than any.
 */
void tside_i_fill_append(tside_i_fill *fill, const int *pattern, int times);

/*
 * Fills sticks greedily for what is still asked for, until the plan costs more than so much. Returns whether that gave
 * every piece.
 */
int tside_i_fill_rest(tside_i_fill *fill, int64_t cost);

/* A finished plan that costs no more than the cut becomes the best, and only cheaper ones are sought from then on. */
void tside_i_fill_keep(tside_i_fill *fill);

/* Fills what is still asked for, and keeps the plan if it is the best. */
void tside_i_fill_finish(tside_i_fill *fill);

/* Takes rows back, all but the first. */
void tside_i_fill_take_back(tside_i_fill *fill, int rows);

/* A row's pattern. */
void tside_i_sticks_pattern(const tside_i_sticks *plan, int row, int types, int *pattern);

#endif
