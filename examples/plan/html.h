/* SPDX-License-Identifier: MIT */
/* Sheets as one HTML file that fetches nothing: for a screen of any width, and for a printer, on A4 or Letter. */
#ifndef PLAN_HTML_H
#define PLAN_HTML_H

#include "paper.h"

/* Nothing where there is no sheet. */
void print_html(text *out, const papers *sheets);

#endif
