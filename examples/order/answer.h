/* SPDX-License-Identifier: MIT */
/* An order, and its price where one was asked for, in each of the forms in which it is printed. */
#ifndef ORDER_ANSWER_H
#define ORDER_ANSWER_H

#include "hand.h"
#include "letter.h"
#include "paper.h"
#include "quote.h"

/*
 * price: NULL where none is asked for, or none can be given. no_price: why none is given; "" where none was asked for.
 * letter: NULL unless the answer is for the customer, and its price his.
 */
typedef struct answer {
    const order *order;
    const quote *price;
    const char *no_price;
    const letter *letter;
    const hand *in_hand;
} answer;

/* What such a sheet is called, and the sheet: text and HTML are made of it. */
#define ORDER_CALLED "Order"
paper order_sheet(const answer *a, int us);

void print_customers_text(text *out, const answer *a, int us);
void print_json(text *out, const answer *a);
void print_table(text *out, const answer *a);

#endif
