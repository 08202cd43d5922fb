/* SPDX-License-Identifier: MIT */
/* The form: a page to carry to the site before anything is known, every question with a box for its answer. */
#ifndef DRAW_FORM_H
#define DRAW_FORM_H

#include <tunnelside.h>

#include "sheet.h"

/* The choices that may be settled beforehand: whether each is, in a side that holds it. */
typedef struct settled {
    int bow, drive, hung;
    tside_side side;
} settled;

/* Settles one by what its option was given; returns 1, or 0 where that names no choice, which are then added to why. */
int settle_bow(settled *known, const char *value, text *why);
int settle_drive(settled *known, const char *value, text *why);
int settle_hung(settled *known, const char *value, text *why);

void add_form(sheets *made, const settled *known, paper_size paper, int us);

#endif
