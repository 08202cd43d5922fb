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

enum { PARTS = 8 };

typedef struct function {
    const char *name;
    tside_status (*call)(tside_fault *fault);
    part asked[PARTS], answered[PARTS];
    unsigned statuses; /* the failures that its header documents, each of which must have a row */
} function;

#define FAILS(status) (1u << (status))

extern const function functions[];
extern const int function_count;
/* NULL where there is none of that name. */
const function *find_function(const char *name);

typedef struct why {
    char text[1024];
} why;

/* Returns 1, or 0 with why the row fails. */
int run_row(const row *r, tside_status *status, why *w);

#endif
