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

/* A torque that is the drive's own (by lifting, with the same hang), or a constant one (lifting NULL), on a guide. */
typedef struct tside_i_pushing {
    const tside_i_lifting *lifting;
    const tside_hang *hang;
    double torque;
} tside_i_pushing;

/* Of a tside_i_pushing at a spot: F outboard, and the guide's bending at the collar, F D; both with their signs. */
double tside_i_push_at(const tside_i_spot *spot, const tside_i_pushing *pushing);
double tside_i_guide_bending_at(const tside_i_spot *spot, const tside_i_pushing *pushing);

/*
 * The greatest bending by a torque of this size either way: up and down, each from 0 the way that it pushes the guide.
 * sweep: of the guide on the hang.
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
 * Quantities along the travel, of a tside_i_bar_end: F outboard; the bar's bending at the curtain's edge, in both
 * planes, reversed each turn; and the eye's lift beyond the guide's weight, with its sign.
 */
enum { TSIDE_I_PUSH, TSIDE_I_BAR_END, TSIDE_I_UPLIFT, TSIDE_I_END_FORCES };
void tside_i_end_forces_at(const tside_i_spot *spot, const void *bar_end, double *value);

/* The greatest side force, and where. */
double tside_i_greatest_push(const tside_i_track *track, const tside_i_lifting *lifting, const tside_hang *hang,
                             double torque, tside_i_spot *where);

/* A running drive's couple swings pipe and chain apart: how far inboard the foot moves so at open. */
double tside_i_chain_swing(const tside_i_lifting *lifting, const tside_hang *hang);

#endif
