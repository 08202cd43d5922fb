/* SPDX-License-Identifier: MIT */
/* A plan by rounding the relaxation, and solving it again for the rest. */
#ifndef TUNNELSIDE_DIVE_H
#define TUNNELSIDE_DIVE_H

#include "cutting/price.h"

typedef struct tside_i_dive {
    tside_i_fill *fill;
    const tside_i_pricing *known; /* of the whole */
    tside_i_problem rest;         /* what is still to be cut */
    tside_i_pricing pricing;      /* of that */
    int *demand;                  /* the rest's, */
    int64_t *price;               /* and its prices */
    int *basis;                   /* of the relaxation of the whole */
} tside_i_dive;

void tside_i_dive_parts(tside_i_arena *from, tside_i_dive *dive, int types);

/* Begins from a relaxation that was solved, and whose prices were found. */
void tside_i_dive_begin(tside_i_dive *dive, const tside_i_pricing *known);

/*
 * Makes a plan: what the relaxation takes is taken, and where it takes most of a stick, a whole one; then the
 * relaxation is solved for the rest, until nothing is left. number: of the dive; what is most of a stick differs from
 * one to another.
 */
void tside_i_dive_run(tside_i_dive *dive, int number);

#endif
