/* SPDX-License-Identifier: MIT */
/* What the order and the customer's copy of it say alike. */
#ifndef ORDER_WORDS_H
#define ORDER_WORDS_H

#include "answer.h"
#include "paper.h"
#include "units.h"

/* "PRICE IN EUR" */
void add_price_title(text *t, const quote *q);

/* What must be mended before anything is bought. */
void put_stops_of_order(paper *out, const order *o, pen *p);

/* "round tube 1.315 in x 0.083 in x 24 ft 0 in, steel 50 ksi" */
void add_article(text *t, const article *a, int us);

/* How much of a line of materials: "2 coils" where the list sells by these. */
void add_sold(text *t, const quote_line *line, pen *p);

#endif
