/* SPDX-License-Identifier: MIT */
/* Lines of strength. */
#ifndef TUNNELSIDE_I_LINES
#define TUNNELSIDE_I_LINES

#include "side/ready.h"

/* Lines of the bar and its screws, from what of the plan is there. */
void tside_i_bar_lines(const tside_i_setup *setup, tside_plan *plan);
/* Lines of an end's guide, extender and bow. stall: N m, of the drive at that end. */
tside_status tside_i_end_lines(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, double stall, const tside_end_plan *end_plan,
                               tside_plan *plan, tside_fault *fault);

#endif
