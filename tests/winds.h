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

/* Strings ropes over the side. */
static inline void string_ropes(tside_side *side, tside_ropes run)
{
    side->ropes = run;
    tside_usual(TSIDE_KIND_ROPING, &side->rope);
}

#endif
