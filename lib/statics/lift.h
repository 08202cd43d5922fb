/* SPDX-License-Identifier: MIT */
/* Lift as the library's own files see it. */
#ifndef TUNNELSIDE_LIFT_INTERNAL_H
#define TUNNELSIDE_LIFT_INTERNAL_H

#include <tunnelside/lift.h>

#include "statics/guide.h"
#include "statics/rope.h"

/* Twist, end to end, of a bar that takes up its torque evenly along its length. */
static inline double tside_i_bar_twist(double per_metre, double length, double shear_modulus, double torsion)
{
    return per_metre * length * length / (2 * shear_modulus * torsion);
}

/* What every torque along one travel needs. ropes, beside what the load has of them, and hang may be NULL. */
typedef struct tside_i_lifting {
    const tside_i_track *track;
    const tside_load *load;
    const tside_i_strung *ropes;
    const tside_hang *hang;
    double available; /* N m, for the longest side */
} tside_i_lifting;

/* Checks load and hang, and that the guide turns slower than the bar. hang may be NULL. */
tside_status tside_i_lift_check(const tside_i_track *track, const tside_load *load, const tside_hang *hang,
                                tside_fault *fault);
/* The torque at a spot; its turns are left 0. */
tside_torque tside_i_torque(const tside_i_lifting *lifting, const tside_i_spot *spot);
/* The same where its guide is known to lean so. */
tside_torque tside_i_torque_leaning(const tside_i_lifting *lifting, const tside_i_spot *spot, const tside_i_lean *lean);
/* Potential energy at a spot, from a height that does not change. */
double tside_i_energy(const tside_travel *travel, const tside_load *load, const tside_hang *hang,
                      const tside_i_spot *spot);
/*
 * The worst torque at the drive; unless least_down is NULL the torque where least brings the bar down; and unless
 * longest, which is then with least_down, is NULL the longest curtain that the available torque lifts, not above 0
 * where it lifts none. Returns the greatest rate at which the guide turns with the bar, 0 without one: not below 1 no
 * torque drives it, and what was found means nothing.
 */
double tside_i_lift_extremes(const tside_i_lifting *lifting, tside_torque *worst, tside_torque *least_down,
                             double *longest);

/*
 * The greatest pressure, outboard, in which a torque at the drive still turns the bar all along the travel under ropes
 * that the curtain is pressed against; below 0 where it does not even without wind. With friction of ropes.
 */
double tside_i_lift_through_wind(const tside_i_lifting *lifting, double torque);

#endif
