/* SPDX-License-Identifier: MIT */
/* Making strength lines, for the files above. */
#ifndef TUNNELSIDE_STRENGTH_INTERNAL_H
#define TUNNELSIDE_STRENGTH_INTERNAL_H

#include <tunnelside/strength.h>

#include "base/field.h"
#include "statics/eye.h"

/* A stress against a share of the yield over the metal's safety factor: 1 in bending, 0.6 in shear. */
void tside_i_stress_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, double stress,
                         const tside_metal_values *metal, double share_of_yield);
void tside_i_force_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, double force,
                        int limit_given, double limit);
/* A number without a limit. */
void tside_i_plain_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, tside_measure measure,
                        double demand);
/* The lines of an extender by what it bears; returns how many, up to TSIDE_EXTENDER_LINES. */
int tside_i_extender_lines(const tside_extender *extender, const tside_i_extender_loads *loads, tside_which_end end,
                           tside_strength_line *lines);
/* Makes a line stalled going up that of the greater demand, beside the same jammed coming down, and says which. */
void tside_i_worse(tside_strength_line *up, const tside_strength_line *down);

#endif
