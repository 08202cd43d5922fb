/* SPDX-License-Identifier: MIT */
/* Sheets as files: SVG as it is; PDF and PNG through libraries that draw it, where the program was built with them. */
#ifndef DRAW_INK_H
#define DRAW_INK_H

#include "sheet.h"

typedef enum ink { INK_PDF, INK_SVG, INK_PNG, INKS } ink;

/* By its name, such as "pdf"; INKS where it is none. */
ink ink_named(const char *name);
const char *ink_name(ink which);
/* Whether this program writes it. */
int ink_is_there(ink which);
/* Whether one file holds all sheets. */
int ink_holds_all(ink which);

/* Adds a file: of all sheets, or of one, from 0; dpi: of PNG. Returns 1, or 0 having said why not. */
int ink_sheets(text *out, ink which, const sheets *made, size_t place, double dpi);

#endif
