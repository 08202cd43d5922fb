/* SPDX-License-Identifier: MIT */
/* Where the bar is, by its progress along a travel. */
#ifndef TUNNELSIDE_I_SPOT
#define TUNNELSIDE_I_SPOT

#include <tunnelside/travel.h>

#include "shape/chord.h"
#include "shape/roll.h"

/* Roll and curtain at some wraps, before anything says where they are. */
void tside_i_spot_roll(const tside_travel *travel, double wraps, tside_i_spot *spot);
void tside_i_travel_spot(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot);
void tside_i_travel_at(const tside_travel *travel, double progress, tside_i_spot *spot);
/* Bar angle since shut, in radians: wraps wound on plus the curtain's change of heading. */
double tside_i_travel_angle(const tside_travel *travel, const tside_i_spot *spot);
/* Progress where a stretch ends. */
static inline double tside_i_stretch_end(const tside_travel *travel, int stretch)
{
    return stretch + 1 < travel->stretches ? travel->stretch[stretch + 1].from : travel->end;
}
/* The stretch that holds a progress. */
int tside_i_travel_stretch(const tside_travel *travel, double progress);
double tside_i_travel_turns(const tside_travel *travel, double progress);
void tside_i_travel_position(const tside_travel *travel, const tside_i_spot *spot, tside_position *position);

#endif
