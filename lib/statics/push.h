/* SPDX-License-Identifier: MIT */
/* What the guide does to bar and eye. */
#ifndef TUNNELSIDE_I_PUSH
#define TUNNELSIDE_I_PUSH

#include "statics/lift.h"

/* F, for a torque at the drive. */
double tside_i_push(const tside_hang *hang, const tside_i_lean *lean, double torque);

/* The upward share of the eye's pull. */
static inline double tside_i_raise(const tside_i_lean *lean, double push)
{
    return push * lean->sine;
}

/* That beyond the guide's weight, or 0. */
double tside_i_uplift(const tside_hang *hang, const tside_i_lean *lean, double push);

/* A torque that is the drive's own (by lifting), or a constant one (lifting NULL), on a guide. */
typedef struct tside_i_pushing {
    const tside_i_lifting *lifting;
    const tside_hang *hang;
    double torque;
} tside_i_pushing;

/*
 * Quantities along the travel, of a tside_i_pushing: F outboard, the same inboard, and the eye's lift beyond the
 * guide's weight, with its sign.
 */
double tside_i_push_at(const tside_i_spot *spot, const void *pushing);
double tside_i_pull_at(const tside_i_spot *spot, const void *pushing);
double tside_i_uplift_at(const tside_i_spot *spot, const void *pushing);

/* Of a tside_i_pushing: the guide's bending at the collar, F D, with its sign. */
double tside_i_guide_bending_at(const tside_i_spot *spot, const void *pushing);

/*
 * Its greatest by a torque of this size either way: up and down, each from 0 the way that it pushes the guide. sweep:
 * of the guide on the hang.
 */
void tside_i_guide_bending(const tside_i_track *track, const tside_hang *hang, const tside_sweep *sweep, double torque,
                           double *up, double *down);

/*
 * The bar's end beyond the curtain's edge: its drive's weight at run_on, the guide's F where its line is, both from
 * that edge.
 */
typedef struct tside_i_bar_end {
    tside_i_pushing pushing;
    double weight;      /* N */
    double run_on, arm; /* m */
} tside_i_bar_end;

/*
 * A quantity along the travel, of a tside_i_bar_end: the bar's bending at the curtain's edge, in both planes; reversed
 * each turn.
 */
double tside_i_bar_end_at(const tside_i_spot *spot, const void *bar_end);

/* The greatest side force, and where. */
double tside_i_greatest_push(const tside_i_track *track, const tside_i_lifting *lifting, const tside_hang *hang,
                             double torque, tside_i_spot *where);

/* A running drive's couple swings pipe and chain apart: how far inboard the foot moves so at open. */
double tside_i_chain_swing(const tside_i_lifting *lifting, const tside_hang *hang);

#endif
