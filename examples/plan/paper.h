/* SPDX-License-Identifier: MIT */
/*
 * The sheet before it is text: its lines in order, each of a kind. Topics put the words; columns, wrapping and pages
 * are a writer's.
 */
#ifndef PLAN_PAPER_H
#define PLAN_PAPER_H

#include "text.h"

enum { MOST_CELLS = 8 };

typedef enum line_kind {
    LINE_PAGE,    /* a page begins: its title, and whose it is */
    LINE_PART,    /* heading of what follows */
    LINE_FACT,    /* a word, and what there is to it */
    LINE_WORDS,   /* a paragraph */
    LINE_POINT,   /* one of several */
    LINE_STEP,    /* one of several, numbered in the order of the work */
    LINE_CAUTION, /* of the step, or of the part */
    LINE_REMARK,  /* of the row */
    LINE_COLUMNS, /* titles of the rows below */
    LINE_ROW      /* cells under such titles; without them, a label and its value */
} line_kind;

typedef struct line {
    line_kind kind;
    int number;       /* of a step, from 1 */
    unsigned figures; /* bit k: what stands in column k is figures, not words */
    int count;
    char *cells[MOST_CELLS];
} line;

typedef struct paper {
    line *lines;
    size_t count, room;
    int steps;        /* in this part */
    unsigned figures; /* of the columns in use */
} paper;

/* All as printf, but where there is no format. */
void put_page(paper *p, const char *title, const char *whose);
void put_part(paper *p, const char *title);
void put_fact(paper *p, const char *word, const char *format, ...) LIKE_PRINTF(3, 4);
void put_words(paper *p, const char *format, ...) LIKE_PRINTF(2, 3);
void put_point(paper *p, const char *format, ...) LIKE_PRINTF(2, 3);
void put_step(paper *p, const char *format, ...) LIKE_PRINTF(2, 3);
void put_caution(paper *p, const char *words);
void put_remark(paper *p, const char *format, ...) LIKE_PRINTF(2, 3);
/* figures: bit k set where column k holds figures. */
void put_columns(paper *p, unsigned figures, int count, const char *const *titles);
void put_cells(paper *p, int count, const char *const *cells);
/* A label and its value. */
void put_row(paper *p, const char *label, const char *value);

void paper_free(paper *p);

#endif
