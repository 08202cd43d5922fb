/* SPDX-License-Identifier: MIT */
/* Places along a travel, which the library must give. */
#ifndef TUNNELSIDE_TRAVELS_H
#define TUNNELSIDE_TRAVELS_H

#include <check.h>

#include "sides.h"

enum { SIDES = 300, STEPS = 12 };

static inline tside_position at(const side *s, double turns)
{
    tside_position p;
    tside_fault fault;
    ANSWERS(tside_travel_at(&s->travel, turns, &p, &fault));
    return p;
}

static inline double turns_at_open(const side *s)
{
    return side_place(s, s->open).turns;
}

#endif
