/* SPDX-License-Identifier: MIT */
/* Pieces of SVG, in millimetres from a sheet's upper left corner. */
#ifndef DRAW_SVG_H
#define DRAW_SVG_H

#include "text.h"

/*
 * mm: of lines as ISO 128-2 has them, wide twice narrow; and of letters: capitals of 3.5 mm on drawings, 10 points
 * where much is to be read.
 */
#define WIDE 0.5
#define NARROW 0.25
#define LETTERS 4.8
#define PRINT 3.6
#define HEADING 6.0

typedef enum line_dashes { DASHES_NONE, DASHES_CHAIN } line_dashes;
typedef enum words_from { FROM_LEFT, FROM_MIDDLE, FROM_RIGHT } words_from;

typedef struct point {
    double x, y; /* mm */
} point;

typedef struct box {
    double x, y, width, height; /* mm, its upper left corner and size */
} box;

/* Opens an element of this class, which tells readers of the file what it shows, and ends it. */
void svg_open(text *svg, const char *shows);
void svg_shut(text *svg);

void svg_line(text *svg, point from, point to, double wide, line_dashes dashes);
void svg_box(text *svg, const box *at, double wide);
void svg_circle(text *svg, point centre, double radius, double wide);
/* The same, white within. */
void svg_disc(text *svg, point centre, double radius, double wide);
/* Words on one line that stands on a point; a name with markup in it stays a name. */
void svg_words(text *svg, point foot, double size, words_from from, const char *words);
void svg_bold(text *svg, point foot, double size, words_from from, const char *words);

/* The same line of large bold words and small plain ones after them. */
void svg_large(text *svg, point foot, double size, const char *large, const char *small);

/* mm, what words take at most in any usual typeface. */
double svg_width(const char *words, double size);
/* How many columns of these words fit, on the average of their letters. */
size_t svg_columns(const char *words, double width, double size);

#endif
