/* SPDX-License-Identifier: MIT */
/* How long a search may go on. */
#ifndef TUNNELSIDE_EFFORT_H
#define TUNNELSIDE_EFFORT_H

#include <stdint.h>

/*
 * Work is counted in steps, each about a nanosecond's: one cell of a table or of an inverse, one entry of a pattern, a
 * few for a type that a walk visits. So the same search ends at the same place on every machine.
 */
typedef struct tside_i_effort {
    int64_t steps, limit;        /* done; and those that may be */
    int64_t next;                /* when the caller is asked again */
    int stopped;                 /* he had enough */
    int (*go_on)(void *context); /* or NULL */
    void *context;
} tside_i_effort;

/* Lets no more than so much more effort be spent, nor more than before. Returns what the limit was. */
int64_t tside_i_effort_narrow(tside_i_effort *effort, int64_t steps);

/* Steps that may still be done. */
int64_t tside_i_effort_left(const tside_i_effort *effort);

/* Asks the caller whether to go on. */
void tside_i_effort_ask(tside_i_effort *effort);

static inline int tside_i_effort_is_spent(const tside_i_effort *effort)
{
    return effort->stopped || effort->steps >= effort->limit;
}

/* Counts steps, and asks now and then. Returns whether there may be more. */
static inline int tside_i_effort_spend(tside_i_effort *effort, int64_t steps)
{
    effort->steps += steps;
    if (effort->steps >= effort->next)
        tside_i_effort_ask(effort);
    return !tside_i_effort_is_spent(effort);
}

#endif
