/* SPDX-License-Identifier: MIT */
/* The functions that rows of tests/data may call, and what a row comes to. */
#ifndef TUNNELSIDE_CALLS_H
#define TUNNELSIDE_CALLS_H

#include <stddef.h>

#include <tunnelside/field.h>

#include "rows.h"

typedef enum part_type { STRUCTURE, NUMBER, WHOLE, WORDS } part_type;

/* An argument or an output, and where it is kept. */
typedef struct part {
    const char *name;
    part_type type;
    tside_kind kind;  /* structure */
    const char *unit; /* number */
    void *at;
    size_t size;
} part;

#define STRUCTURE(name, kind, place) \
    { \
        name, STRUCTURE, kind, "", &place, sizeof place \
    }
#define NUMBER(name, unit, place) \
    { \
        name, NUMBER, TSIDE_KIND_COUNT, unit, &place, sizeof place \
    }
#define WHOLE(name, place) \
    { \
        name, WHOLE, TSIDE_KIND_COUNT, "", &place, sizeof place \
    }
#define WORDS(name, place) \
    { \
        name, WORDS, TSIDE_KIND_COUNT, "", place, sizeof place \
    }

enum { PARTS = 12 };

typedef struct function {
    const char *name;
    tside_status (*call)(tside_fault *fault);
    part asked[PARTS], answered[PARTS];
    unsigned statuses; /* the failures that its header documents, each of which must have a row */
} function;

#define FAILS(status) (1u << (status))

extern const function functions[];
extern const int function_count;
/* Those whose failures the suites provoke, not rows. */
extern const function side_functions[];
extern const int side_function_count;
/* NULL where there is none of that name. */
const function *find_function(const char *name);

typedef struct why {
    char text[1024];
    double off, allowed; /* of a row that holds, where it is of a number: how far it is off, and may be */
} why;

/* Returns 1, or 0 with why the row fails. */
int run_row(const row *r, tside_status *status, why *w);

#endif
