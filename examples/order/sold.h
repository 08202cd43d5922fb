/* SPDX-License-Identifier: MIT */
/* How much of what a list sells serves what is needed: packs, coils and rolls whole, and what is left of them. */
#ifndef ORDER_SOLD_H
#define ORDER_SOLD_H

#include "prices.h"

typedef struct sold {
    double quantity; /* of the row's unit */
    double left;     /* pieces of packs, m of coils and rolls; 0 where nothing is sold whole */
} sold;

/* articles: what the row prices; more than one only of sheets off a roll. Returns 0 with why none serves. */
int sell(const price_row *row, const article *const *articles, int count, sold *made, text *why);

#endif
