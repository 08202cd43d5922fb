/* SPDX-License-Identifier: MIT */
/* Air asked of a side. */
#ifndef TUNNELSIDE_AIRS_H
#define TUNNELSIDE_AIRS_H

#include <tunnelside/plan.h>

/* Asks for the air of the plain side, whose other side opens alike, on a hot day without wind; invented. */
static inline void breathe(tside_side *side)
{
    tside_air *air = &side->air;
    air->sides = TSIDE_AIR_ALIKE;
    air->warmth = TSIDE_AIR_IN_THE_SUN;
    air->sun = 900;
    air->transmission = 0.8;
    air->floor_area = 250;
    air->cover_area = 500;
    air->cover_loss = 6;
    air->volume = 700;
}

#endif
