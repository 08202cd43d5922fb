/* SPDX-License-Identifier: MIT */
/* PDF and PNG, drawn from the sheets' SVG by librsvg on cairo: built only where these are there. */
#ifndef DRAW_PICTURE_H
#define DRAW_PICTURE_H

#include "sheet.h"

/* Each adds a file, and returns 1; or 0 having said why not. */
int picture_pdf(text *out, const sheets *made);
int picture_png(text *out, const sheets *made, size_t place, double dpi);

#endif
