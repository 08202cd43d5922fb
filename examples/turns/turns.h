/* SPDX-License-Identifier: MIT */
/* The two questions that the program answers. */
#ifndef TURNS_H
#define TURNS_H

#include <tunnelside.h>

/* What was given. */
enum { CORE = 1, DROP = 2, THICKNESS = 4, PACKING = 8, WRAPS = 16, COUNTED = 32, OVER = 64 };

typedef struct question {
    unsigned given;
    tside_roll roll;
    double drop, wraps, counted, over;
    int us;
    char format; /* 'c' for csv, 'j' for json, else text */
} question;

/* Each prints its answer and returns 1; or says what is at fault, prints nothing, and returns 0. */
int answer_turns(const question *q);
int answer_thickness(const question *q);

#endif
