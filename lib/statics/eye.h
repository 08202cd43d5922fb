/* SPDX-License-Identifier: MIT */
/* What a force at the eye does, for the files above. */
#ifndef TUNNELSIDE_I_EYE
#define TUNNELSIDE_I_EYE

#include <math.h>
#include <tunnelside/strength.h>

/*
 * Normal and shear stress as one, to hold against the yield over its safety factor: u with sigma/(u) + (tau/(0.6 u))^2
 * = 1, which is AISC 360-16, H3-6, with all loads scaled alike.
 */
static inline double tside_i_one_stress(double sigma, double tau)
{
    return sigma / 2 + sqrt(sigma * sigma / 4 + tau / 0.6 * tau / 0.6);
}

/* The eye bolt's metal, refused by its own name. */
tside_status tside_i_eye_metal(const tside_extender *extender, tside_metal_values *values, tside_fault *fault);

/* tside_extender_bears without its checks of what it is given; the load is touched on failure too. */
tside_status tside_i_extender_bears(const tside_extender *extender, const tside_layout *layout, double force,
                                    double weight, tside_extender_load *load, tside_fault *fault);

/* What the formulas take of a layout: the bolts stand below the eye, the bow's above the member's. */
tside_status tside_i_check_arms(const tside_layout *layout, tside_fault *fault);

#endif
