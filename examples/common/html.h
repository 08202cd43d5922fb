/* SPDX-License-Identifier: MIT */
/* Sheets as one HTML file that fetches nothing: for a screen of any width, and for a printer, on A4 or Letter. */
#ifndef COMMON_HTML_H
#define COMMON_HTML_H

#include "paper.h"

/* called: what such a sheet is, as "Job sheet". Nothing where there is no sheet. */
void print_html(text *out, const char *called, const papers *sheets);

#endif
