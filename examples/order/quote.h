/* SPDX-License-Identifier: MIT */
/* What an order costs by a price list: lines, and their sums. */
#ifndef ORDER_QUOTE_H
#define ORDER_QUOTE_H

#include "prices.h"

typedef struct quote_line {
    const price_row *row;
    const article *bought; /* of materials; else NULL */
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

#endif
