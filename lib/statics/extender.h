/* SPDX-License-Identifier: MIT */
/*
 * The extender as the library's own files see it: laid out without its travel first, so that the search for its
 * clearance can be shared.
 */
#ifndef TUNNELSIDE_EXTENDER_INTERNAL_H
#define TUNNELSIDE_EXTENDER_INTERNAL_H

#include <tunnelside/extender.h>

#include "base/fault.h"
#include "shape/peak.h"

/* Where on the bow the curtain's fixing is. */
typedef struct tside_i_hip {
    double height, arc, face; /* m: above grade; along the bow's centreline; its outer face */
} tside_i_hip;

/* name: what the height is called where it is refused. */
tside_status tside_i_hip_find(const tside_bow *bow, double height, const char *name, tside_i_hip *hip,
                              tside_fault *fault);
/* A roll that passes a tube, and with it what stands beside the tube, so high above the bar's axis. */
typedef struct tside_i_passing {
    const tside_layout *layout;
    double height; /* m, 0 where nothing but the roll does */
} tside_i_passing;

/*
 * Of a tside_i_passing: the greater of the two less the distance from the bar's axis to the tube's centreline; above
 * minus half the tube they meet.
 */
void tside_i_intrusion(const tside_i_spot *spot, const void *passing, double *value);
/*
 * All of a layout but its clearance, of an extender that passed its check. beside: how high above the bar's axis stands
 * what passes beside the tube, 0 where nothing but the roll does. The layout is touched on failure too.
 */
tside_status tside_i_layout_place(const tside_extender *extender, const tside_bow *bow, const tside_i_hip *hip,
                                  double eye_x, double eye_y, const tside_i_track *track, double beside,
                                  const tside_i_names *names, tside_layout *layout, tside_fault *fault);
/* The layout's clearance, from the greatest intrusion. */
tside_status tside_i_layout_clear(const tside_extender *extender, double intrusion, const tside_i_names *names,
                                  tside_layout *layout, tside_fault *fault);

#endif
