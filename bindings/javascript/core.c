/* SPDX-License-Identifier: MIT */
/* What JavaScript must know of C's memory: where structures have their fields, and where these tables stand. */
#include <math.h>
#include <stddef.h>
#include <tunnelside.h>

typedef struct c_structure {
    const char *name; /* in C: tside_roll */
    size_t size;
    const tside_field *rows; /* where the library has no table */
    int count;
} c_structure;

#include "structures.h" /* structures[], layouts[] */

#define SHOWN __attribute__((visibility("default")))

SHOWN const c_structure *structures_of_c(void);
SHOWN int structure_count(void);
SHOWN const unsigned *layouts_of_c(void);

const c_structure *structures_of_c(void)
{
    return structures;
}

int structure_count(void)
{
    return KINDS;
}

/* Of each structure that has no table in JavaScript its size and its members' offsets, in the headers' order. */
const unsigned *layouts_of_c(void)
{
    return layouts;
}
