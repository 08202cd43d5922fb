/* SPDX-License-Identifier: MIT */
/* Planning, as searches and batch share it. */
#ifndef TUNNELSIDE_I_PLAN
#define TUNNELSIDE_I_PLAN

#include "side/ready.h"

/* Parts of a plan beside its travel, each with those it rests on. */
typedef enum tside_i_part {
    TSIDE_I_TRAVEL = 0,
    TSIDE_I_TORQUE = 1,
    TSIDE_I_RUN = 2 | TSIDE_I_TORQUE,
    TSIDE_I_WIND = 64,
    TSIDE_I_ENDS = 4 | TSIDE_I_TORQUE | TSIDE_I_WIND, /* wind along the house pushes at their eyes */
    TSIDE_I_ROPES = 256 | TSIDE_I_WIND,
    TSIDE_I_LINES = 8 | TSIDE_I_ENDS | TSIDE_I_ROPES,
    TSIDE_I_KEEP_OFFS = 16 | TSIDE_I_ENDS,
    TSIDE_I_AIR = 32,
    TSIDE_I_FINDINGS = 128 | TSIDE_I_RUN | TSIDE_I_LINES | TSIDE_I_KEEP_OFFS | TSIDE_I_AIR /* all */
} tside_i_part;

/*
 * Plans a side, which must have passed its check, with a bar and a drive, its own or others that are tried: these
 * parts, the others stay 0. The plan is touched on failure too.
 */
tside_status tside_i_plan(const tside_side *side, const tside_bar *bar, const tside_drive *drive, unsigned parts,
                          tside_plan *plan, tside_fault *fault);

#endif
