/* SPDX-License-Identifier: MIT */
/* What may be bought, as the cells of a list tell it: a name, a size, a grade. */
#ifndef ORDER_DESCRIPTION_H
#define ORDER_DESCRIPTION_H

#include "order.h"

typedef struct description {
    const thing *what;
    double measures[MEASURES];
    int measure_count;    /* given, from the first on; the others are whatever they are */
    char *grade;          /* "" for any */
    double yield;         /* Pa, where the grade is such a quantity; else 0 */
    int of_unknown_grade; /* 1: the grade is a metal, and only where its grade is unknown */
} description;

/* Each reads cells and returns 1, or 0 with what is wrong with them added to why. */
int description_read(description *made, const char *name, const char *size, const char *grade, text *why);

/* "6 ft x 100 ft": lengths with " x " between them, as many as there are; each above 0. */
int lengths_read(const char *words, double *lengths, int count, text *why);

void description_free(description *made);

int description_same(const description *one, const description *other);
int description_fits(const description *row, const article *bought);

#endif
