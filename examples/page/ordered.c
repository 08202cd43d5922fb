/* SPDX-License-Identifier: MIT */
/* The order of the sides that were planned last, in tunnelside-order's words: what to buy and how to cut it. */
#include "answer.h"
#include "core.h"
#include "html.h"

SHOWN const char *ordered(int units);

static text made; /* the answer, until the next one */

static void print_order(const order *o, units wanted)
{
    const hand none = {.count = 0};
    const answer a = {.order = o, .no_price = "", .in_hand = &none};
    papers sheets = {NULL, 0, 0};
    papers_add(&sheets, order_sheet(&a, order_in_us(wanted, o->all)));
    print_html(&made, ORDER_CALLED, &sheets);
    papers_free(&sheets);
}

/*
 * As HTML; nothing where no side can be ordered, or, which is then said, no way is found to cut what is bought. Prices
 * are of lists that a page has no room to show.
 */
const char *ordered(int wanted)
{
    hand none = {.count = 0};
    tside_stock usual;
    order o;
    tside_usual(TSIDE_KIND_STOCK, &usual);
    text_cut(said(), 0);
    text_free(&made);
    if (order_make(&o, work_planned(), &usual, &none) && o.sides)
        print_order(&o, (units)wanted);
    order_free(&o);
    return text_of(&made);
}
