/* SPDX-License-Identifier: MIT */
/* Wind asked of a side. */
#ifndef TUNNELSIDE_WINDS_H
#define TUNNELSIDE_WINDS_H

#include <tunnelside/plan.h>

/* Asks for a gust on the side; invented. speed: m/s. */
static inline void blow(tside_side *side, double speed)
{
    side->wind.rule = TSIDE_PLAIN;
    side->wind.coefficient = 1.28;
    side->wind.speed = speed;
}

#endif
