/* SPDX-License-Identifier: MIT */
/* A bar's joints. */
#ifndef TUNNELSIDE_I_JOINTS
#define TUNNELSIDE_I_JOINTS

#include <tunnelside/plan.h>

/* A bar from stock: whole sticks, of which the last, and the last but one, may be cut. */
typedef struct tside_i_made {
    int sticks;
    double before, last; /* m, the last two, as cut */
} tside_i_made;

/* Makes a bar from its stock. curtain: m, its length. */
tside_status tside_i_bar_make(const tside_bar *bar, double curtain, tside_i_made *made, tside_fault *fault);
/* How many joints a bar has, and where the nearest begins, from the curtain's edge at the drive; 0 without any. curtain: m, its length. */
tside_status tside_i_bar_joints(const tside_bar *bar, double curtain, int *splices, double *near, tside_fault *fault);

#endif
