/* SPDX-License-Identifier: MIT */
/* Air, as a plan has it. */
#ifndef TUNNELSIDE_I_AIRING
#define TUNNELSIDE_I_AIRING

#include "side/ready.h"

/* What a plan says of air, where it is asked; its travel must have been planned. hang: at the drive's end, or NULL. */
void tside_i_plan_air(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan);

#endif
