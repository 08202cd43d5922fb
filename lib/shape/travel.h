/* SPDX-License-Identifier: MIT */
/* The travel as the library's own files see it. */
#ifndef TUNNELSIDE_I_TRAVEL
#define TUNNELSIDE_I_TRAVEL

#include "shape/spot.h"

/*
 * tside_travel_make without checking its structures against their tables; the travel is touched on failure too.
 * ends_only: nobody asks but where the bar is when shut and open, so that it need not be found out where what holds the
 * chord changes.
 */
tside_status tside_i_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll,
                                 const tside_stops *stops, int ends_only, tside_travel *travel, tside_fault *fault);

/* Progress after some turns of the bar since shut. */
double tside_i_travel_progress(const tside_travel *travel, double turns);
/* Progress where the underside has risen so far, m above grade; where it is so from the first, or never, an end's. */
double tside_i_travel_rise(const tside_travel *travel, double underside);
/* The spot after some turns, refused beyond the travel. */
tside_status tside_i_travel_find(const tside_travel *travel, double turns, tside_i_spot *spot, tside_fault *fault);

#endif
