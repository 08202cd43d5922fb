/* SPDX-License-Identifier: MIT */
/* What pieces are worth: by that a bound is proven, and the patterns are found that a good plan can hold. */
#ifndef TUNNELSIDE_PRICE_H
#define TUNNELSIDE_PRICE_H

#include "cutting/fill.h"
#include "cutting/relaxation.h"

/* Whole-numbered prices of a relaxation's rows: fine of their units are a unit of cost. */
typedef struct tside_i_prices {
    int64_t *of;
    int64_t fine;
} tside_i_prices;

/* Prices at which no pattern is worth more than its stick, the best of those seen; and those that are being tried. */
typedef struct tside_i_pricing {
    tside_i_relaxation *relaxation;
    tside_i_prices sound, tried;
    int64_t fine;   /* units that prices have, where they are not too high for that, in a unit of cost */
    int64_t *table; /* of the one or the other */
    int *count;     /* a walk's pattern */
} tside_i_pricing;

void tside_i_pricing_parts(tside_i_arena *from, tside_i_pricing *pricing, int types);

/* The units that whole-numbered prices have in a unit of cost, where all that is asked for costs so much. */
int64_t tside_i_fine(int64_t cost);

/*
 * Rounds the relaxation's prices down, to fine units or, where they are so high that sums would not fit in 64 bits,
 * coarser ones.
 */
void tside_i_round_prices(const tside_i_relaxation *r, int64_t fine, tside_i_prices *prices);

/* What a column costs less what it is worth. */
int64_t tside_i_reduced_cost(const tside_i_relaxation *r, const tside_i_prices *prices, int column);

/*
 * Solves the relaxation over all patterns, from the rows of plan, as far as effort allows, and keeps the best sound
 * prices that it comes by. Returns what all pieces cost at least at these.
 */
int64_t tside_i_find_prices(tside_i_pricing *pricing, const tside_i_sticks *plan);

/*
 * Generates patterns for the relaxation, and solves it over them, from columns that meet its demands, until none helps
 * or no more effort may be spent. Keeps the best sound prices. Returns what all that is asked for costs at least at
 * these. first: of the columns that may help.
 */
int64_t tside_i_price_all(tside_i_pricing *pricing, int first);

/*
 * Puts every full pattern into the pool that falls short of its stick by no more than the room that a cost leaves above
 * the prices' sum; where these are too many, or more than most, those that fall short least. Returns whether it could
 * put in all.
 */
int tside_i_list_patterns(tside_i_pricing *pricing, int64_t cost, int most);

#endif
