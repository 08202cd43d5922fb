/* SPDX-License-Identifier: MIT */
/* What it costs to make the relaxation whole: the group of its basis. */
#ifndef TUNNELSIDE_CORNER_H
#define TUNNELSIDE_CORNER_H

#include "cutting/price.h"

enum {
    TSIDE_I_EXTRAS = 64, /* columns that make a basis whole */
    TSIDE_I_DIGITS = 16  /* of a vector of the group: each is of 2 at least, and all together of its elements */
};

/* The group: vectors by their digits, each modulo its own factor. */
typedef struct tside_i_corner {
    int order, target;
    int *
        matrix; /* rows of the basis and behind each the unit's, brought to a diagonal basis: then the rows of digits */
    int64_t *cost;        /* of the cheapest choice known that leads to an element, */
    int *last;            /* and the element of its last column; */
    char *done;           /* 1: no cheaper one is to be found */
    int64_t *column_cost; /* of the cheapest column of an element */
    int *column;          /* that one; below 0: surplus */
    int *listed;          /* elements that have one */
    int count;
    int digits, factor[TSIDE_I_DIGITS], row[TSIDE_I_DIGITS];
    int extras, extra[TSIDE_I_EXTRAS]; /* columns of the cheapest choice */
} tside_i_corner;

void tside_i_corner_parts(tside_i_arena *from, tside_i_corner *c, int types);

/*
 * What it costs at least, in units of prices, to make the relaxation's basis whole, if that is no more than is spare;
 * else more. Takes the columns that do it: into extra, and off the relaxation's x. 0 too where that would take long to
 * find out.
 */
int64_t tside_i_corner_cost(tside_i_corner *c, tside_i_relaxation *r, const tside_i_prices *prices, double spare);

#endif
