/* SPDX-License-Identifier: MIT */
/* The two questions that the program answers: what each turn takes up, and what thickness counted turns imply. */
#ifndef TURNS_H
#define TURNS_H

#include <tunnelside.h>

#include "command.h"

/* The options that bring a quantity. */
typedef enum option_of { CORE, DROP, THICKNESS, PACKING, WRAPS, COUNTED, OVER, QUANTITIES } option_of;

typedef struct question {
    const char *words[QUANTITIES]; /* as given; NULL where not given */
    double value[QUANTITIES];      /* SI; the usual value where there is one and nothing is given */
    int us;                        /* 1: inches in the text */
    format format;
} question;

/* An option's long name. */
const char *name_of(option_of which);

/* The row of the library's tables that an option fills in; NULL where none does. */
const tside_field *field_of(option_of which);

/* Says on standard error what is wrong with an option's value; us: in feet and inches too. */
void complain(const question *asked, option_of which, const tside_fault *fault, int us);

/* Each prints its whole answer and returns 1; or says what is at fault, prints nothing, and returns 0. */
int answer_turns(const question *asked);
int answer_thickness(const question *asked);

#endif
