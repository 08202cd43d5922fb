/* SPDX-License-Identifier: MIT */
/* The extender as the library's own files see it: laid out without its travel first, so that the search for its clearance can be shared. */
#ifndef TUNNELSIDE_EXTENDER_INTERNAL_H
#define TUNNELSIDE_EXTENDER_INTERNAL_H

#include <tunnelside/extender.h>

#include "shape/spot.h"

/* All of a layout but its clearance. The layout is touched on failure too. */
tside_status tside_i_layout_place(const tside_extender *extender, const tside_bow *bow, double hip, double eye_x, double eye_y, tside_layout *layout, tside_fault *fault);
/* Of a layout: roll's radius less the distance from the bar's axis to the tube's centreline; above minus half the tube the roll meets the tube. */
double tside_i_intrusion(const tside_i_spot *spot, const void *layout);
/* The layout's clearance, from the greatest intrusion. */
tside_status tside_i_layout_clear(const tside_extender *extender, double intrusion, tside_layout *layout, tside_fault *fault);

#endif
