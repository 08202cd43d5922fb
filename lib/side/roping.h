/* SPDX-License-Identifier: MIT */
/* Ropes over a side, as the plan asks them. */
#ifndef TUNNELSIDE_I_ROPING
#define TUNNELSIDE_I_ROPING

#include "side/ready.h"

/* Ropes over a side where it is known how they run, in the wind asked, which is planned. hang: NULL: nothing turns. */
tside_status tside_i_plan_ropes(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan,
                                tside_fault *fault);

#endif
