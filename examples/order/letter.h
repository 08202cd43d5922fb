/* SPDX-License-Identifier: MIT */
/* What a customer's copy begins and ends with: whose it is, its number and dates, and terms. */
#ifndef ORDER_LETTER_H
#define ORDER_LETTER_H

#include "prices.h"

typedef struct letter {
    const char *number, *date; /* as they were asked for; the date is one, as ISO 8601 writes it */
    char valid_until[16];
    const prices *list; /* its rows tell whose it is, and the terms */
} letter;

/* Whether words are a date, such as "2026-11-28". */
int is_date(const char *words);

/* Reads what of a letter stands in the list; returns 0 having said what is missing. */
int letter_write(letter *made, const char *number, const char *date, prices *list);

/* The nth row of a kind, from 0; NULL where there are no more. */
const char *letter_row(const letter *l, price_kind kind, int nth);

#endif
