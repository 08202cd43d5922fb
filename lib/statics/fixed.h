/* SPDX-License-Identifier: MIT */
/* The fixed guide as the library's own files see it. */
#ifndef TUNNELSIDE_I_FIXED
#define TUNNELSIDE_I_FIXED

#include <tunnelside/fixed.h>

#include "base/fault.h"
#include "shape/peak.h"
#include "statics/lift.h"

/*
 * tside_fixed_make of structures that have passed their checks, on a ground below the bar's axis when shut; its top in
 * the words of names.
 */
tside_status tside_i_fixed_make(const tside_i_track *track, const tside_guide *guide, const tside_footing *footing,
                                const tside_collar *collar, double top_x, double top_y, double ground,
                                const tside_i_names *names, tside_fixed *fixed, tside_fault *fault);
/* What a fixed guide carries; lifting: NULL: a constant torque. */
tside_fixed_load tside_i_fixed_force(const tside_i_track *track, const tside_i_lifting *lifting,
                                     const tside_fixed *fixed, double torque);

#endif
