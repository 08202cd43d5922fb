/* SPDX-License-Identifier: MIT */
/*
 * A price list: CSV with a header, rows of materials, labour, markups and taxes. Blank rows, and those that begin with
 * "#", are passed over. kind,what,size,grade,unit,price material,round tube,1.315 in x 0.083 in x 24 ft,,each,41.20
 */
#ifndef ORDER_PRICES_H
#define ORDER_PRICES_H

#include "money.h"
#include "order.h"

typedef enum price_kind { MATERIAL, LABOUR, MARKUP, TAX, CURRENCY, PRICE_KINDS } price_kind;

/* What a price is for; of markups and taxes, what the share is of. */
typedef enum price_unit {
    EACH,
    HUNDRED_OF,
    METRE,
    FOOT,
    SQUARE_METRE,
    SQUARE_FOOT,
    ORDER_ONCE,
    SIDE,
    CUT,
    OF_MATERIALS,
    OF_LABOUR,
    OF_ALL,
    PRICE_UNITS
} price_unit;

typedef struct price_row {
    int line;
    price_kind kind;
    char *name;        /* what, as the list says */
    const thing *what; /* a material's */
    double measures[MEASURES];
    int measure_count;    /* given, from the first on; the others are whatever they are */
    char *grade;          /* "" for any */
    double yield;         /* Pa, where the grade is such a quantity; else 0 */
    int of_unknown_grade; /* 1: the grade is a metal, and only where its grade is unknown */
    price_unit unit;
    cents amount;
    millionths share;
} price_row;

typedef struct prices {
    const char *file;
    price_row *rows;
    int count;
    size_t room;
    int bad; /* faults said so far */
} prices;

/* Reads a list; every fault is said on standard error with its line. Returns 0 where there was any. */
int prices_read(prices *list, const char *file);
void prices_free(prices *list);

/* Says "PROGRAM: FILE:LINE: what", and counts it. */
void prices_complain(prices *list, int line, const char *format, ...) LIKE_PRINTF(3, 4);

/* Whether a row prices an article. */
int price_fits(const price_row *row, const article *bought);

extern const char *const kind_names[PRICE_KINDS];
const char *unit_name(price_unit unit);

#endif
