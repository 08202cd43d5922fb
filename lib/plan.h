/* SPDX-License-Identifier: MIT */
/* A side made ready, as plan, searches and batch share it. */
#ifndef TUNNELSIDE_PLAN_INTERNAL_H
#define TUNNELSIDE_PLAN_INTERNAL_H

#include <tunnelside/plan.h>

#include "lift.h"

/* One end wall, hung. */
typedef struct tside_i_hung {
    tside_hang hang;
    tside_sweep sweep;
    double eye_x, eye_y;
} tside_i_hung;

/* What every answer about a side starts from. */
typedef struct tside_i_setup {
    const tside_side *side;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_load load;
    tside_metal_values bar_metal;
    tside_section bar_section;
} tside_i_setup;

/* Bow, line, travel and load of a side. The side must have passed its check. */
tside_status tside_i_set_up(const tside_side *side, tside_i_setup *setup, tside_fault *fault);
/* Hangs an end's guide on its own eye, or (on_hip) on the hip rail. */
tside_status tside_i_hang_end(const tside_i_setup *setup, tside_which_end which, int on_hip, double rise, tside_i_hung *hung, tside_fault *fault);
/* The greatest side force of a torque that is the drive's own (by lifting), or a constant one (lifting NULL), and where. */
double tside_i_greatest_push(const tside_travel *travel, const tside_i_lifting *lifting, const tside_hang *hang, double torque, tside_i_spot *where);
/* Turns of the drive against its housing since shut. */
double tside_i_drive_turns(const tside_travel *travel, const tside_hang *hang, double progress);

const tside_end *tside_i_end(const tside_side *side, tside_which_end which);
tside_collar tside_i_end_collar(const tside_side *side, tside_which_end which);
const char *tside_i_end_name(tside_which_end which);

/* Lists what is unwise in a finished plan. */
void tside_i_find(const tside_i_setup *setup, const tside_i_hung *drive, const tside_i_hung *free, tside_plan *plan);

#endif
