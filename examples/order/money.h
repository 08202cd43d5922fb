/* SPDX-License-Identifier: MIT */
/*
 * Money in whole cents, quantities in whole hundredths of their unit, shares in whole millionths. What is multiplied is
 * rounded to the nearest cent, half a cent up, once for each line of a quotation; sums are of rounded lines, so that a
 * column adds up as printed.
 */
#ifndef ORDER_MONEY_H
#define ORDER_MONEY_H

#include "text.h"

typedef long long cents;
typedef long long hundredths; /* of a piece, metre, foot, hour ... */
typedef long long millionths;

/* No line and no sum is greater: 10 thousand millions. */
#define MOST_MONEY 1000000000000LL

/*
 * Each reads the whole of a text of digits with at most one point, and returns 1, or 0 with what is wrong added to why.
 * Money has two decimals or none; a share is in percent, with at most four, "12.5" or "12.5%".
 */
int read_money(const char *words, cents *amount, text *why);
int read_share(const char *words, millionths *share, text *why);

/* A quantity to the nearest hundredth, half of one up; returns 0 where it is below 0, no number, or too great. */
int to_hundredths(double quantity, hundredths *rounded);

/* Each returns 0 where the result is above MOST_MONEY. per: how many units the price is of, such as 100. */
int multiply_price(cents price, hundredths quantity, int per, cents *amount);
int take_share(cents base, millionths share, cents *amount);
int add_money(cents *sum, cents amount);

/* whole * part / all to the nearest cent, half a cent up; part at most all, and all above 0. */
cents share_of(cents whole, cents part, cents all);

/* "1234.05"; a quantity "12.5" without the zeros that end it; a share "12.5 %". */
void print_money(text *out, cents amount);
void print_quantity(text *out, hundredths quantity);
void print_share(text *out, millionths share);

#endif
