/* SPDX-License-Identifier: MIT */
/* A side made ready, as plan, searches and batch share it. */
#ifndef TUNNELSIDE_PLAN_INTERNAL_H
#define TUNNELSIDE_PLAN_INTERNAL_H

#include <tunnelside/plan.h>

#include "statics/lift.h"

/* One end wall, hung. */
typedef struct tside_i_hung {
    tside_hang hang;
    tside_sweep sweep;
    double eye_x, eye_y;
} tside_i_hung;

/* What every answer about a side starts from. */
typedef struct tside_i_setup {
    const tside_side *side;
    const tside_bar *bar; /* the side's own, or one tried in its place */
    tside_travel travel;
    tside_load load;
    tside_metal_values bar_metal;
    tside_section bar_section;
} tside_i_setup;

/* Where a guide hangs: as its end says, on the hip rail, or on an eye placed best at some rise. */
typedef enum tside_i_place { TSIDE_I_OWN_EYE, TSIDE_I_HIP, TSIDE_I_BEST_EYE } tside_i_place;

/* Bow, line, travel and load of a side, which must have passed its check, with a bar. */
tside_status tside_i_set_up(const tside_side *side, const tside_bar *bar, tside_i_setup *setup, tside_fault *fault);
/* Hangs an end's guide. rise: for TSIDE_I_BEST_EYE. */
tside_status tside_i_hang_end(const tside_i_setup *setup, tside_which_end which, tside_i_place place, double rise, tside_i_hung *hung, tside_fault *fault);
/* Plans a side, which must have passed its check, with a bar; the plan is touched on failure too. */
tside_status tside_i_plan(const tside_side *side, const tside_bar *bar, tside_plan *plan, tside_fault *fault);
/* m: the shortest piece that a saw is asked to cut; no cut plan takes less. This library's choice. */
#define TSIDE_I_SHORTEST_CUT 0.01

/* A bar from stock: whole sticks, of which the last, and the last but one, may be cut. */
typedef struct tside_i_made {
    int sticks;
    double before, last; /* m, the last two, as cut */
} tside_i_made;

/* Makes a bar from its stock. curtain: m, its length. */
tside_status tside_i_bar_make(const tside_bar *bar, double curtain, tside_i_made *made, tside_fault *fault);
/* How many joints a bar has, and where the nearest begins, from the curtain's edge at the drive; 0 without any. curtain: m, its length. */
tside_status tside_i_bar_joints(const tside_bar *bar, double curtain, int *splices, double *near, tside_fault *fault);
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
