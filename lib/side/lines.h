/* SPDX-License-Identifier: MIT */
/* Lines of strength. */
#ifndef TUNNELSIDE_I_LINES
#define TUNNELSIDE_I_LINES

#include "side/ready.h"
#include "statics/eye.h"

/*
 * The greatest bending at an end, in N m: of the guide at its collar, and of the bar at the curtain's edge; up: stalled
 * going up, down: jammed coming down.
 */
typedef struct tside_i_bending {
    double guide_up, guide_down;
    double bar, bar_up, bar_down; /* bar: running */
} tside_i_bending;

/* What is known of an end for its lines; extender: where it has one. */
typedef struct tside_i_end_loads {
    tside_i_bending bending;
    tside_i_extender_loads extender;
} tside_i_end_loads;

/* Lines of the bar and its screws, from what of the plan is there. */
void tside_i_bar_lines(const tside_i_setup *setup, const tside_i_bending *bending, tside_plan *plan);
/* Lines of an end's guide, extender and bow. */
tside_status tside_i_end_lines(const tside_i_setup *setup, tside_which_end which, const tside_i_end_loads *loads,
                               const tside_end_plan *end_plan, tside_plan *plan, tside_fault *fault);

#endif
