/* SPDX-License-Identifier: MIT */
/*
 * Lift: the torque that raises the bar, what the drive must give, and how bar and splices twist
 * under it.
 */
#ifndef TUNNELSIDE_LIFT_H
#define TUNNELSIDE_LIFT_H

#include <tunnelside/guide.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tside_load {
    double length;        /* m, of the curtain on the bar */
    double bar_mass;      /* kg/m */
    double clip_mass;     /* kg/m */
    double areal_mass;    /* kg/m2, curtain */
    double wet;           /* kg/m2, water on it */
    double end_mass;      /* kg, drive, free end's collar, and the bar beyond the curtain's edges */
    double friction;      /* 1, fraction of the lift */
    double rope_pressure; /* N/m, ropes pressing on the roll, per metre of bar */
    double rope_friction; /* 1, their coefficient of friction */
} tside_load;

/* Torque at one place of the travel. */
typedef struct tside_torque {
    double turns;     /* turn, of the bar since shut */
    double lift;      /* N m, without drag: the gain in potential energy per radian */
    double drag;      /* N m */
    double up;        /* N m, at the bar: lift + drag */
    double drive;     /* N m, what the drive must give, with the guide's push on the bar's end */
    double down;      /* N m, holds the bar back on the way down: lift - drag; below 0 it does
                       * not come down by itself */
    double per_metre; /* N, lift + drag of bar and curtain alone, per metre of bar */
} tside_torque;

/*
 * The torque with the bar at some turns since shut.
 *
 * T_lift = (w L + Wd)(r Nx + (te/2pi) k Ny + swing Ny) + g (sigma + wet) L Ny (k r^2 + swing s/2),
 * with k the wraps gained per turn of the bar and swing = s (1 - k) on a free chord: its integral
 * over the bar's angle is the gain in potential energy. T_drive = (T + (Wg x_cg + Wd e) phi')/(1 -
 * phi').
 * travel: made by tside_travel_make.
 * load: every field checked.
 * hang: optional, made by tside_hang_make, the drive's guide; NULL makes drive equal to up.
 * turns: turn, within the travel, of the bar.
 * torque: receives the torque there.
 * TSIDE_OUT_OF_BOUNDS: a field, or turns.
 * TSIDE_OUT_OF_REACH: the guide turns as fast as the bar (phi' >= 1), so that no torque drives it.
 * Accuracy: to 1e-16 of all that hangs, as a weight W, times L as tside_hang_make has it; with a
 * guide the drive's to 1e-16 W L (R/d)^2/(1 - phi'), W with the guide and what rides on it.
 * Source: derivation, virtual work.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_lift_at(const tside_travel *travel,
                                                     const tside_load *load, const tside_hang *hang,
                                                     double turns, tside_torque *torque,
                                                     tside_fault *fault);

/*
 * The torque at the place where the drive must give most, over the closed travel; and at the place
 * where least holds the bar back on the way down, where no guide pushes.
 * travel: made by tside_travel_make.
 * load: every field checked.
 * hang: optional, made by tside_hang_make, the drive's guide; NULL makes drive equal to up.
 * worst: receives the torque where the drive must give most.
 * least_down: optional, receives the torque where least holds the bar back; NULL leaves it out.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_OUT_OF_REACH: as tside_lift_at.
 * Accuracy: the greatest drive and the least down as tside_lift_at, R/d and phi' the greatest of all;
 * the place, where torque hardly changes, to about half a double's digits, and the rest as
 * tside_lift_at there.
 * Source: derivation, virtual work.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_lift_worst(const tside_travel *travel,
                                                        const tside_load *load,
                                                        const tside_hang *hang, tside_torque *worst,
                                                        tside_torque *least_down,
                                                        tside_fault *fault);

/*
 * The gain in potential energy from shut to some turns: curtain (hanging and rolled), bar, drive
 * and, with a guide, that and the drive's lean about its own axis. Of a guide in line it equals the
 * integral of the torque at the drive, without drag, over the drive's own angle.
 * travel: made by tside_travel_make.
 * load: every field checked.
 * hang: optional, made by tside_hang_make, the drive's guide; NULL leaves it out.
 * turns: turn, within the travel, of the bar.
 * work: receives J.
 * TSIDE_OUT_OF_BOUNDS: a field, or turns.
 * TSIDE_OUT_OF_REACH: as tside_lift_at.
 * Accuracy: to 1e-16 W L, with a guide times R/d, as tside_lift_at has them.
 * Source: derivation, potential energy.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_lift_work(const tside_travel *travel,
                                                       const tside_load *load,
                                                       const tside_hang *hang, double turns,
                                                       double *work, tside_fault *fault);

/*
 * The longest side that a torque lifts: the least over the travel of (T (1 - phi') - (Wg x_cg + Wd
 * e) phi' - b)/q, q the lift and drag per metre, b the drive's own.
 * travel: made by tside_travel_make.
 * load: every field checked; its length is not used.
 * hang: optional, made by tside_hang_make, the drive's guide; NULL leaves it out.
 * available: N m, above 0, rated torque over safety factor.
 * length: receives m, of curtain.
 * TSIDE_OUT_OF_BOUNDS: a field, or available; or nothing weighs on a metre of bar, so that no
 * length is too long.
 * TSIDE_OUT_OF_REACH: the torque does not even lift the drive; or as tside_lift_at.
 * Accuracy: to what the drive's torque may be off by tside_lift_worst, with 1e-16 L (R/d)^2/d of
 * available, and length times what per_metre may, over the least per_metre.
 * Source: derivation, virtual work.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_lift_longest(const tside_travel *travel,
                                                          const tside_load *load,
                                                          const tside_hang *hang, double available,
                                                          double *length, tside_fault *fault);

/*
 * Twist of the bar from end to end, m L^2/(2 G J), with a torque that grows evenly from the free
 * end.
 * per_metre: N, from 0.
 * length: m, from 0.
 * shear_modulus: Pa, above 0.
 * torsion: m4, above 0.
 * twist: receives rad.
 * TSIDE_OUT_OF_BOUNDS: an argument.
 * TSIDE_NOT_MODELLED: a twist that is no finite number.
 * Accuracy: of the formula to 1e-15, relative.
 * Source: derivation, elastic torsion of a straight bar, mechanics of materials.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bar_twist(double per_metre, double length,
                                                       double shear_modulus, double torsion,
                                                       double *twist, tside_fault *fault);

/*
 * The force with which the guide pushes the bar's end inboard, and pulls its eye outboard, at
 * some turns: F = (T_drive + Wg x_cg + Wd e)/d, normal to the guide.
 * travel: made by tside_travel_make.
 * load: optional, every field checked; NULL for the free end, whose collar hands on no torque.
 * hang: made by tside_hang_make, the guide at that end.
 * turns: turn, within the travel, of the bar.
 * force: receives N, negative where the guide pulls.
 * uplift: receives N, how much the eye is lifted beyond the guide's weight, else 0.
 * TSIDE_OUT_OF_BOUNDS: a field, or turns.
 * TSIDE_OUT_OF_REACH: as tside_lift_at.
 * TSIDE_NOT_MODELLED: a hang of another travel, whose eye the bar comes nearer to than the guide's
 * line keeps off it.
 * Accuracy: to ten times what the drive's torque may be off by tside_lift_at, over d.
 * Source: derivation, statics of the guide.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_side_force(const tside_travel *travel,
                                                        const tside_load *load,
                                                        const tside_hang *hang, double turns,
                                                        double *force, double *uplift,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
