/* SPDX-License-Identifier: MIT */
/* Where an extender is drilled. */
#ifndef COMMON_DRILLING_H
#define COMMON_DRILLING_H

#include "ends.h"
#include "units.h"

enum { EXTENDER_HOLES = 3 };

/* A hole through both walls of the tube. */
typedef struct hole {
    const char *name; /* of what goes through it */
    double from_top;  /* m, its centre from the tube's top end */
    double diameter;  /* m */
} hole;

/* The holes of the extender at an end that has one, from its top end on. */
void extender_holes(const planned *side, int end, hole holes[EXTENDER_HOLES]);

/* Adds "drill at 1, 25 1/2, 60 3/8 in from the top end: eye 11/16 in, bow 11/32 in, member 11/32 in". */
void add_drilling(text *t, pen *p, const planned *side, int end);

#endif
