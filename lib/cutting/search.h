/* SPDX-License-Identifier: MIT */
/* The search for the cheapest sticks. */
#ifndef TUNNELSIDE_SEARCH_H
#define TUNNELSIDE_SEARCH_H

#include "cutting/branch.h"
#include "cutting/dive.h"

typedef struct tside_i_search {
    tside_i_problem problem; /* costs of it are settled by the search */
    tside_i_problem coarse;  /* the same, of few enough types for the relaxation */
    tside_i_effort effort;
    tside_i_relaxation relaxation;
    tside_i_pricing pricing;
    tside_i_fill fill; /* best: the answer */
    tside_i_dive dive;
    tside_i_tree tree;
    int64_t bound; /* least cost that is not ruled out */
    int nodes;     /* what the search came to, beside the first plan and bound */
} tside_i_search;

void tside_i_search_parts(tside_i_arena *from, tside_i_search *search, int cut_count);

/* Finds the best plan, and bound, for the problem, within so many nodes; go_on: asked now and then, or NULL. */
void tside_i_search_run(tside_i_search *search, int node_limit, int (*go_on)(void *context), void *context);

#endif
