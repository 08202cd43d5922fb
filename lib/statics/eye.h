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

/* What a force outboard and one inboard put into an extender, and of what metal its tube and its eye bolt are. */
typedef struct tside_i_extender_loads {
    tside_metal_values tube, eye;
    tside_extender_load up, down; /* stalled going up; jammed coming down */
} tside_i_extender_loads;

/* Wind along the house on what an extender carries: N at its eye, and N/m along its tube. */
typedef struct tside_i_end_wind {
    double eye, tube;
} tside_i_end_wind;

/* tside_extender_bears of both forces, N from 0, without its checks of what it is given. */
tside_status tside_i_extender_bears(const tside_extender *extender, const tside_layout *layout, double outboard,
                                    double inboard, double weight, const tside_i_end_wind *wind,
                                    tside_i_extender_loads *loads, tside_fault *fault);
/* What both public functions take of a wind. */
tside_status tside_i_check_end_wind(const tside_i_end_wind *wind, tside_fault *fault);

/* What the formulas take of a layout: the bolts stand below the eye, the bow's above the member's. */
tside_status tside_i_check_arms(const tside_layout *layout, tside_fault *fault);

#endif
