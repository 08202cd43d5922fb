/* SPDX-License-Identifier: MIT */
/* Whether an answer is numbers all through. */
#ifndef TUNNELSIDE_FINITE_H
#define TUNNELSIDE_FINITE_H

#include <math.h>
#include <stddef.h>

#include <tunnelside/field.h>

/* The name of the first member that applies, is given, and is no number; NULL where there is none. */
static inline const char *not_finite(tside_kind kind, const char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const char *member = structure + row[i].offset, *within = NULL;
        if (!tside_field_applies(row + i, structure) ||
            (row[i].optional && !*(const int *)(const void *)(structure + row[i].given_offset)))
            continue;
        if (row[i].type == TSIDE_NUMBER && !isfinite(*(const double *)(const void *)member))
            return row[i].name;
        if (row[i].type == TSIDE_GROUP)
            within = not_finite(row[i].kind, member);
        for (int k = 0;
             !within && row[i].type == TSIDE_LIST && k < *(const int *)(const void *)(structure + row[i].count_offset);
             k++)
            within = not_finite(row[i].kind, member + (size_t)k * row[i].stride);
        if (within)
            return within;
    }
    return NULL;
}

#endif
