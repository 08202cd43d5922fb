/* SPDX-License-Identifier: MIT */
/* Sheets of paper, and what every one of them carries: whose it is, its place among them, cautions, bars to check the
 * print by. */
#ifndef DRAW_SHEET_H
#define DRAW_SHEET_H

#include <tunnelside.h>

#include "caution.h"
#include "svg.h"

typedef enum paper_size { PAPER_BY_UNITS, PAPER_A4, PAPER_LETTER } paper_size;

/* What a sheet says of itself. */
typedef struct heading {
    const char *title, *of;  /* what it shows, and whose it is */
    const char *lines[4];    /* more of it; those that are NULL or empty are left out */
    const char *scale;       /* as a ratio, or NULL */
    const caution *cautions; /* those that belong to it */
    int caution_count;
    double beside; /* mm, how high is to be what stands beside the cautions; 0: nothing does */
} heading;

typedef struct sheet {
    double width, height; /* mm */
    text body;            /* what is on it, as SVG */
    char *title;
    box room;   /* what its heading leaves */
    box beside; /* what is left beside the cautions, or where it lies of the column beside the room */
} sheet;

typedef struct sheets {
    sheet *all;
    size_t count, room;
} sheets;

/* The room that a sheet with this heading has. lies: 1 where its longer edge is level. */
box sheet_room(paper_size paper, int lies, const heading *told);

/* mm, between the margins of a sheet, from left to right. */
double sheet_width(paper_size paper, int lies);

/* One more sheet with its heading; what is added to its body stands until the next one. */
sheet *sheets_add(sheets *made, paper_size paper, int lies, const heading *told);
void sheets_free(sheets *made);

/* Adds words, broken into lines as wide as the box, from its top down; the box is then what they leave. */
void sheet_words(text *svg, box *room, double size, const char *words);

/* Adds a drawing of the library's, its upper left corner at a place. */
void sheet_drawing(text *svg, point at, const tside_drawing *drawing, const char *title);

/* Adds one sheet, from 0, as a document of its own. */
void sheet_document(text *out, const sheets *made, size_t place);

#endif
