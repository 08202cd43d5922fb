/* SPDX-License-Identifier: MIT */
/* Wind, as a plan has it. */
#ifndef TUNNELSIDE_I_BLOWING
#define TUNNELSIDE_I_BLOWING

#include "side/ready.h"

/* What a plan says of wind on the side shut, where it is asked; its travel must have been planned. */
tside_status tside_i_plan_wind(const tside_i_setup *setup, tside_plan *plan, tside_fault *fault);

/* The speed that makes a net pressure: by each rule that has a speed pressure is as its square. */
double tside_i_speed_of(const tside_wind *wind, const tside_pressure *asked, double net);

#endif
