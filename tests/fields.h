/* SPDX-License-Identifier: MIT */
/* Each kind's structure, and what is in one. */
#ifndef TUNNELSIDE_FIELDS_H
#define TUNNELSIDE_FIELDS_H

#include <check.h>

#include <tunnelside.h>

/* Each kind's structure. */
static const struct {
    const char *name;
    size_t size;
} structures[] = {
#define STRUCTURE(kind, name) [TSIDE_KIND_##kind] = {"tside_" #name, sizeof(tside_##name)},
    TSIDE_ASKED_LIST(STRUCTURE) TSIDE_ANSWERED_LIST(STRUCTURE)
#undef STRUCTURE
};
enum { STRUCTURES = sizeof structures / sizeof *structures };

static inline double *number_in(void *structure, size_t offset)
{
    return (double *)(void *)((char *)structure + offset);
}

static inline int *whole_in(void *structure, size_t offset)
{
    return (int *)(void *)((char *)structure + offset);
}

#endif
