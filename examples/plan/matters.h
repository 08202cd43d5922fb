/* SPDX-License-Identifier: MIT */
/* What matters: how far each measured input, off by its tolerance, moves what is cut, and what the side does. */
#ifndef PLAN_MATTERS_H
#define PLAN_MATTERS_H

#include "job.h"

enum { ANSWERS = 9, LESS = 0, MORE = 1, WAYS = 2 };

/* An answer that inputs may move: its path in the plan. */
typedef struct answer {
    const char *title, *path, *unit;
} answer;

extern const answer answers[ANSWERS];

/* An input that is measured, and the most by which it moves each answer, off either way. */
typedef struct measured {
    char path[TSIDE_PATH_SIZE];
    const tside_field *row;
    size_t offset; /* in the side */
    double value, tolerance;
    int assumed; /* 1 where the file does not give it */
    double moves[ANSWERS];
    tside_fault refused[WAYS]; /* why the side is refused with it off that way; TSIDE_OK where it is not */
} measured;

typedef struct matters {
    measured *inputs;
    size_t count, room;
    int asked[ANSWERS];     /* 1 where the side has this answer: no extender, no cut length of it */
    double values[ANSWERS]; /* as planned */
} matters;

/* One side, which is planned. */
void matters_find(matters *m, const planned *side);
void matters_free(matters *m);

/* Puts the inputs in order, those first that move this answer most; returns how many move it by more than rounding. */
size_t matters_order(matters *m, int which);

/*
 * The root of the sum of the squares of all moves of an answer: what to expect of inputs that are off independently of
 * each other.
 */
double matters_together(const matters *m, int which);

/* On paper. */
void print_matters(text *out, const planned *side, int us);

#endif
