/* SPDX-License-Identifier: MIT */
/* Sheets as plain text, for a printer that has nothing but letters of one width. */
#ifndef COMMON_PRINT_H
#define COMMON_PRINT_H

#include "paper.h"

enum { SHEET_WIDTH = 78, SHEET_LINES = 60 };

/*
 * Adds the pages, a form feed before each but the first of the text: none has more than SHEET_LINES lines; what is
 * longer goes on, under the same title, on the next.
 */
void print_papers(text *out, const papers *sheets);

/* Adds one as a strip: its head, and all lines below it, without pages. */
void print_strip(text *out, const paper *p);

#endif
