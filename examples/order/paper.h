/* SPDX-License-Identifier: MIT */
/* What the order and the customer's copy of it print alike. */
#ifndef ORDER_PAPER_H
#define ORDER_PAPER_H

#include "answer.h"
#include "units.h"

void print_title(text *out, const char *title);

/* "PRICE IN EUR" */
void print_price_title(text *out, const quote *q);

/* A side's letters, and what it is; and all of an order. */
void print_side(text *out, const planned *side);
void print_sides(text *out, const order *o, pen *p);

/* What must be mended before anything is bought. */
void print_stops(text *out, const order *o, pen *p);

/* "round tube 1.315 in x 0.083 in x 24 ft 0 in, steel 50 ksi" */
void add_article(text *t, const article *a, int us);

/* How much of what; more: "" or what follows its name. */
void print_bought(text *out, const char *much, const article *a, const char *more, pen *p);

/* How much of a line of materials: "2 coils" where the list sells by these. */
void add_sold(text *t, const quote_line *line, pen *p);

void print_sum(text *out, const char *name, cents amount);
void print_cautions(text *out, const char *const *cautions, size_t count);

#endif
