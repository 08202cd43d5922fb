/* SPDX-License-Identifier: MIT */
/* A loose curtain in wind: one that no rope holds against the house. */
#ifndef TUNNELSIDE_LOOSE_H
#define TUNNELSIDE_LOOSE_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

/* A curtain that hangs from its rail with the bar at its foot, all by the metre along the house. */
typedef struct tside_loose {
    double hanging; /* m, from rail to roll */
    double roll;    /* m, diameter */
    double weight;  /* N/m, of bar, clips and wraps, and half the hanging film's */
    double lean;    /* rad, of the straight line from rail to roll, as it lies in a calm, foot
                     * outboard */
    double seal;    /* m, overlap below the sill, in a calm */
} tside_loose;

/* The net pressures, outward, at which it gives way. */
typedef struct tside_loosening {
    double leaves;  /* Pa, the bar leaves the wall */
    double unseals; /* Pa, the roll rises above the sill */
    double flies;   /* Pa, the curtain stands out level at its rail: no number beyond is of use */
} tside_loosening;

/* How it stands in a wind. While the wall bears the bar all of it is 0. */
typedef struct tside_blown {
    int off;           /* 1 where the bar has left the wall */
    double stand_out;  /* m, the roll from where it lay, outboard */
    double raise;      /* m, the roll from where it hung */
    double tension;    /* N/m, of the film */
    double rail_angle; /* rad, of the film at its rail, from plumb */
} tside_blown;

/*
 * The pressures at which a loose curtain leaves the wall, loses its seal, and flies. Static: a
 * curtain that flaps gives way sooner and pulls more.
 *
 * With hanging length s, roll D, weight w, pressure p: tension T = hypot(w, p D), at the bar it
 * hangs at b = atan(p D/w), at the rail at t = b + s p/T. It leaves the wall where (b + t)/2 is its
 * lean, plumb in any wind, and flies where t = 90 deg.
 * loose: every field checked.
 * loosening: receives them.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * Limits: a seal that is not lost before it flies is lost where it flies, and none before the bar
 * leaves the wall.
 * Accuracy: of the formulas to 4e-15 (1 + D/s), relative, where the seal is lost besides to where
 * the raise is off by 4e-15 s; against film whose weight lies along it and is at most that of bar,
 * clips and wraps, stand-out is -3 to +9 % off, near flight the lower, raise 0 to +31 %.
 * Source: derivation, equilibrium of film without weight; that the roll takes p D, level, and half
 * the film's weight hangs at the bar, is this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_loose_limits(const tside_loose *loose,
                                                          tside_loosening *loosening,
                                                          tside_fault *fault);

/*
 * Where a loose curtain stands in a wind, and what its film pulls with.
 *
 * As for tside_loose_limits, R = T/p: out = R (cos b - cos t), drop = R (sin t - sin b), stand-out =
 * out - s sin(lean), at least 0, raise = s cos(lean) - drop.
 * loose: every field checked.
 * pressure: Pa, from 0, net, outward.
 * blown: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field, or pressure.
 * TSIDE_OUT_OF_REACH: it flies; the fault has the greatest pressure at which it does not.
 * Accuracy: of the formulas tension and rail_angle to 4e-15, relative, stand_out and raise to
 * 4e-15 s; else as tside_loose_limits.
 * Source: derivation, equilibrium of film without weight.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_loose_blown(const tside_loose *loose, double pressure,
                                                         tside_blown *blown, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
