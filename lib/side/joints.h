/* SPDX-License-Identifier: MIT */
/* A bar's joints. */
#ifndef TUNNELSIDE_I_JOINTS
#define TUNNELSIDE_I_JOINTS

#include <tunnelside/plan.h>

/* m: the shortest piece that a saw is asked to cut; no cut plan takes less. This library's choice. */
#define TSIDE_I_SHORTEST_CUT 0.01

/* A bar from stock: whole sticks, of which the last, and the last but one, may be cut. */
typedef struct tside_i_made {
    int sticks;
    double before, last; /* m, the last two, as cut */
} tside_i_made;

/* What a bar is as long as, in m: from drive to its other end. */
typedef struct tside_i_bar_lengths {
    double beyond_drive, curtain, beyond_free;
} tside_i_bar_lengths;

static inline double tside_i_bar_length(const tside_i_bar_lengths *l)
{
    return l->beyond_drive + l->curtain + l->beyond_free;
}

/* Makes a bar from its stock. A fault's path begins in the bar, here and below. */
tside_status tside_i_bar_make(const tside_bar *bar, const tside_i_bar_lengths *lengths, tside_i_made *made,
                              tside_fault *fault);
/* How many joints a bar has, and where the nearest begins, from the curtain's edge at the drive; 0 without any. */
tside_status tside_i_bar_joints(const tside_bar *bar, const tside_i_bar_lengths *lengths, int *splices, double *near,
                                tside_fault *fault);

#endif
