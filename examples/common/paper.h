/* SPDX-License-Identifier: MIT */
/*
 * The sheet before it is text or HTML: its lines in order, each of a kind. Topics put the words; columns, wrapping and
 * pages are a writer's.
 */
#ifndef COMMON_PAPER_H
#define COMMON_PAPER_H

#include "text.h"

enum { PAPER_CELLS = 8 };

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
    LINE_UNITS,   /* below such titles, in which units their figures are */
    LINE_DRAWING, /* its caption, and its SVG: for HTML alone */
    LINE_ROW      /* cells under such titles; without them, a label and its value */
} line_kind;

typedef struct paper_line {
    line_kind kind;
    int number;       /* of a step, from 1 */
    unsigned figures; /* bit k: what stands in column k is figures, not words */
    int names;        /* the column that says what a row is of */
    const char *of;   /* of titles: of what part of the heading's matter their rows are; NULL: of all */
    int lies;         /* of a drawing: 1 where its page is turned, for more width than height */
    int count;
    char *cells[PAPER_CELLS];
} paper_line;

typedef struct paper {
    paper_line *lines;
    size_t count, room;
    int steps;        /* in this part */
    unsigned figures; /* of the columns in use */
    int names;
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
/* The members of the line; of: a text that stays, or NULL. */
void put_columns(paper *p, const char *of, unsigned figures, int names, int count, const char *const *titles);
void put_units(paper *p, int count, const char *const *units);
void put_cells(paper *p, int count, const char *const *cells);
/* svg: "" where there is none, and the caption says why. */
void put_drawing(paper *p, const char *caption, const char *svg, int lies);
/* A label and its value, without titles. */
void put_row(paper *p, const char *label, const char *value);
/* The same, the value first: labels of many words stand better behind. */
void put_value(paper *p, const char *value, const char *label);
/* The same, the values figures. */
void put_count(paper *p, const char *count, const char *label);
/* A label and its sum, which stands under those above it. */
void put_sum(paper *p, const char *label, const char *sum);

void paper_free(paper *p);

/* Those of several sides, in order. */
typedef struct papers {
    paper *list;
    size_t count, room;
} papers;

void papers_add(papers *all, paper made); /* which is then theirs */
void papers_free(papers *all);

#endif
