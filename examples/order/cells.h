/* SPDX-License-Identifier: MIT */
/*
 * Lists as CSV, by RFC 4180: a header, rows of cells; a cell in quotes may hold commas, line ends, and quotes twice.
 * Blank rows, and those that begin with "#", are passed over.
 */
#ifndef ORDER_CELLS_H
#define ORDER_CELLS_H

#include "text.h"

enum { MOST_CELLS = 7, MOST_ROWS = 10000 };

typedef struct cell_row {
    char *cells[MOST_CELLS]; /* without blanks around them; "" where the row is shorter */
    int line, count;
} cell_row;

/* A list while it is read. */
typedef struct cell_list {
    const char *file;
    int rows; /* after the header */
    int bad;  /* faults said so far */
} cell_list;

/* What a list must be like. */
typedef struct cell_form {
    const char *name, *header; /* such as "price list"; its cells' names with commas between */
    int least;                 /* how many of these it must have, from the first on */
    void (*use)(void *context, const cell_row *row);
} cell_form;

/*
 * Reads a list and has its rows used, one by one; every fault is said on standard error with its line. Returns 0 where
 * there was any.
 */
int cells_read(cell_list *list, const char *file, const cell_form *form, void *context);

/*
 * Reads a whole number from 1 to most, in no more digits than that has, that words begin with; returns what follows it,
 * NULL where there is none.
 */
const char *after_whole(const char *words, int most, int *number);

/* The same where nothing follows it; returns 1, or 0 with what is wrong added to why, which begins with what it is. */
int read_whole_number(const char *what, const char *words, int most, int *number, text *why);

/* Says "PROGRAM: FILE:LINE: what", and counts it. */
void cells_complain(cell_list *list, int line, const char *format, ...) LIKE_PRINTF(3, 4);

#endif
