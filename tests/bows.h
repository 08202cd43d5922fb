/* SPDX-License-Identifier: MIT */
/* Bows and their points, which the library must give. */
#ifndef TUNNELSIDE_BOWS_H
#define TUNNELSIDE_BOWS_H

#include <check.h>

#include "curves.h"

static inline tside_bow bow_of(const tside_frame *frame)
{
    tside_bow bow;
    tside_fault fault;
    ANSWERS(tside_bow_make(frame, &bow, &fault));
    return bow;
}

static inline tside_bow_point bow_at(const tside_bow *bow, double arc)
{
    tside_bow_point p;
    tside_fault fault;
    ANSWERS(tside_bow_at(bow, arc, &p, &fault));
    return p;
}

#endif
