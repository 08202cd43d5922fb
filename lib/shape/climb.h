/* SPDX-License-Identifier: MIT */
/* How a travel is cut into stretches. */
#ifndef TUNNELSIDE_I_CLIMB
#define TUNNELSIDE_I_CLIMB

#include "shape/spot.h"

/*
 * Curtain from fixing to roll, the slope there, and the piece of the line, with the underside of a roll of radius r at
 * a height.
 */
int tside_i_climb_shut(const tside_line *line, double r, double underside, double *s, double *slope);
/* Adds a stretch, as long as there is room. */
void tside_i_climb_add(tside_travel *travel, double from, double lead, double slope, tside_held held, int index);
/* Wraps on the bar when a length of curtain hangs. */
double tside_i_climb_wraps(const tside_travel *travel, double s);
/*
 * Up the pieces of the line below the chord, from the k-th. Returns the progress at the chord's lower end, and its lead
 * over the wraps.
 */
double tside_i_climb_line(tside_travel *travel, int k, double *lead);
/* The chord's stretches, from some wraps to the most. */
void tside_i_climb_chord(tside_travel *travel, double from, double most, double lead);
/* Whether a roll may tip over the baseboard's edge while its chord is free. */
int tside_i_climb_may_tip(const tside_travel *travel, double from, double most);

#endif
