/* SPDX-License-Identifier: MIT */
/* What an order costs by a price list: lines, and their sums. */
#ifndef ORDER_QUOTE_H
#define ORDER_QUOTE_H

#include "sold.h"

typedef struct quote_line {
    const price_row *row;
    const article *bought; /* of materials, of sheets off a roll the first; else NULL */
    double left;           /* pieces of packs, m of coils and rolls, that are sold whole */
    hundredths quantity;   /* of row->unit, of materials and labour */
    cents base;            /* of markups and taxes: what the share is of */
    cents amount;
} quote_line;

typedef struct quote {
    const char *currency; /* "" where the list names none */
    quote_line *lines;
    int count;
    /* sums of rounded lines, materials and labour each with their own markups in "marked_up" */
    cents materials, labour, marked_up_materials, marked_up_labour, net, tax, total;
} quote;

/* How it was rounded, for whoever checks it. */
extern const char rounding[];

/*
 * Prices an order. What has no price is said all at once, as rows to fill in, and so is what has more than one; returns
 * 0 then, or where an amount is too great.
 */
int quote_make(quote *made, const order *o, prices *list, int us);
void quote_free(quote *made);

/*
 * Makes the customer's of a quotation: its lines of materials and labour become prices with their share of the markups
 * in them, and the markups go; sums are as they were, and nothing left in it tells cost or markup.
 */
void quote_for_customer(quote *q);
extern const char customers_rounding[];

/* kg, of what a line of materials sells, as the list says or else as the sides do; 0 where it is not known. */
double line_mass(const quote_line *line);

/*
 * kg, of all that is bought, by a quotation or, where that is NULL, by the order alone. unknown: receives the names of
 * what has no mass.
 */
double mass_bought(const order *o, const quote *q, text *unknown);

/* What a line of materials sells: of sheets off a roll the film, without the width and length of one of them. */
article sold_on(const quote_line *line);

#endif
