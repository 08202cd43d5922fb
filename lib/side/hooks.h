/* SPDX-License-Identifier: MIT */
/* Ropes as a side hangs them. */
#ifndef TUNNELSIDE_I_HOOKS
#define TUNNELSIDE_I_HOOKS

#include <tunnelside/plan.h>

#include "statics/rope.h"

/* Whether it is known how a side's ropes run. */
static inline int tside_i_is_strung(const tside_side *side)
{
    return side->ropes == TSIDE_STRAIGHT_ROPES || side->ropes == TSIDE_ZIGZAG_ROPE;
}

/* Hooks and strings the ropes of a side where they are known to run; faults in the side's words. */
tside_status tside_i_hook(const tside_side *side, const tside_i_track *track, tside_rope *rope, tside_i_strung *strung,
                          tside_rope_over *longest, tside_rope_over *hardest, tside_fault *fault);

#endif
