/* SPDX-License-Identifier: MIT */
/*
 * Stock in hand, such as lengths left from before: CSV with a header.
 *
 *     what,size,grade,count
 *     round tube,fence 1-3/8 in x bwg 14 x 9 ft 9 in,,2
 */
#ifndef ORDER_HAND_H
#define ORDER_HAND_H

#include "cells.h"
#include "description.h"

typedef struct hand_row {
    description what;
    double length; /* m, of a stick */
    int count, used;
} hand_row;

typedef struct hand {
    cell_list list;
    hand_row *rows; /* the shortest sticks first */
    int count;
    size_t room;
} hand;

/* Reads a list; every fault is said on standard error with its line. Returns 0 where there was any. */
int hand_read(hand *made, const char *file);
void hand_free(hand *made);

/* Whether a row's sticks are of a material, which has no length. */
int hand_fits(const hand_row *row, const article *material);

#endif
