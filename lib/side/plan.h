/* SPDX-License-Identifier: MIT */
/* Planning, as searches and batch share it. */
#ifndef TUNNELSIDE_I_PLAN
#define TUNNELSIDE_I_PLAN

#include "side/ready.h"

/* Plans a side, which must have passed its check, with a bar; the plan is touched on failure too. */
tside_status tside_i_plan(const tside_side *side, const tside_bar *bar, tside_plan *plan, tside_fault *fault);

#endif
