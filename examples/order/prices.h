/* SPDX-License-Identifier: MIT */
/*
 * A price list: rows of materials, labour, markups and taxes.
 *
 *     kind,what,size,grade,unit,price,mass
 *     material,round tube,1.315 in x 0.083 in x 24 ft,,each,41.20,
 */
#ifndef ORDER_PRICES_H
#define ORDER_PRICES_H

#include "cells.h"
#include "description.h"
#include "money.h"

/* The last four have no price: what they say is their name. */
typedef enum price_kind {
    MATERIAL,
    LABOUR,
    MARKUP,
    TAX,
    CURRENCY,
    WHOSE, /* name and place of who quotes, a line each */
    VALIDITY,
    TERMS,
    PRICE_KINDS
} price_kind;

/* What a price is for; of markups and taxes, what the share is of. */
typedef enum price_unit {
    EACH,
    HUNDRED_OF,
    PACK, /* of so many: sold whole, as coils and rolls are */
    METRE,
    FOOT,
    COIL,       /* of a length */
    METRE_WIDE, /* running, off a roll of a width */
    FOOT_WIDE,
    ROLL, /* of a width and a length */
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
    char *name;       /* what, as the list says */
    description what; /* of a material */
    price_unit unit;
    int pack;             /* in one pack */
    double length, width; /* m, of a coil or roll; 0 where the unit has none */
    cents amount;
    millionths share;
    double mass; /* kg, of one unit; 0 where the list does not say */
} price_row;

typedef struct prices {
    cell_list list;
    price_row *rows;
    int count;
    size_t room;
} prices;

/* Reads a list; every fault is said on standard error with its line. Returns 0 where there was any. */
int prices_read(prices *made, const char *file);
void prices_free(prices *made);

/* Whether a row prices an article. */
int price_fits(const price_row *row, const article *bought);

/* Whether both are of a length, or of an area, and one price is the other converted, to the cent. */
int prices_agree(const price_row *one, const price_row *other);

/* Whether a unit is sold whole: pack, coil, roll. */
int is_sold_whole(price_unit unit);

/* Whether a sheet is cut off a roll of the row's width. */
int is_off_a_roll(price_unit unit);

/* Whether a unit is of something: those that are sold whole, and those off a roll. */
int is_of_size(price_unit unit);

extern const char *const kind_names[PRICE_KINDS];

/* "coil", and "coil of 250 ft 0 in". */
const char *unit_name(price_unit unit);
void add_unit(text *t, const price_row *row, int us);

#endif
