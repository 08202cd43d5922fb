/* SPDX-License-Identifier: MIT */
/* Turns of the drive. */
#ifndef TUNNELSIDE_I_TURNS
#define TUNNELSIDE_I_TURNS

#include "side/ready.h"

/* Turns of the drive against its housing since shut. */
double tside_i_drive_turns(const tside_travel *travel, const tside_hang *hang, double progress);
/* Progress after so many of them, which are within the travel. */
double tside_i_drive_progress(const tside_travel *travel, const tside_hang *hang, double turns);
/* What the turn table tells of a spot; what is taken up in its turn is left 0. hung: at the drive's end. */
tside_turn tside_i_turn_at(const tside_i_setup *setup, const tside_i_hung *hung, const tside_i_spot *spot, double turn);
/*
 * Those from shut to open with core, packing and thickness at one end of their spread: 1 the greatest, -1 the smallest.
 */
double tside_i_drive_turns_with(const tside_i_setup *setup, const tside_hang *hang, double factor);

#endif
