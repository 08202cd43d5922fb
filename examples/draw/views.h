/* SPDX-License-Identifier: MIT */
/* Views of a planned side, each on a sheet of its own at the largest scale that fits; and the card for its drive. */
#ifndef DRAW_VIEWS_H
#define DRAW_VIEWS_H

#include "ends.h"
#include "sheet.h"

/* What is wanted of the views. */
typedef struct wanted {
    int view;                /* as view_named() tells; -1: all that a side has */
    int end_first, end_last; /* of the views of one end */
    double scale;            /* how many times smaller; 0: the largest that fits */
    int turns_given;
    double turns; /* of the drive since shut */
    paper_size paper;
    int us;
} wanted;

/* A sheet by its name, such as "end_wall", or -1, with the names there are added to why. */
int view_named(const char *name, text *why);
/* A scale by its name, such as "1:10", or 0, with those there are added to why. */
double scale_named(const char *name, text *why);

/* Adds their sheets; returns 1, or 0 having said what cannot be drawn. */
int add_views(sheets *made, const planned *side, const wanted *what);

#endif
