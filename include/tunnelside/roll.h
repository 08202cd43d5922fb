/* SPDX-License-Identifier: MIT */
/* The roll: curtain wound on the bar. */
#ifndef TUNNELSIDE_ROLL_H
#define TUNNELSIDE_ROLL_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tside_roll {
    double core;      /* m, diameter as the curtain meets it, clips included */
    double thickness; /* m, bare curtain */
    double packing;   /* 1, factor on the thickness: trapped air above 1, squeezed quilts below */
} tside_roll;

/*
 * The curtain on the bar after n wraps from the bare core, l = pi n (D0 + te n) with te = packing x
 * thickness.
 * roll: every field checked.
 * wraps: turn, from 0 to 1000.
 * length: receives m, of curtain.
 * TSIDE_OUT_OF_BOUNDS: a field of the roll, or wraps.
 * Accuracy: of the formula to 1e-15, relative; against a true Archimedean spiral the relative
 * difference stays below (te/(pi D0))^2.
 * Source: derivation, te l = pi (D^2 - D0^2)/4 conserves area.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_roll_taken_up(const tside_roll *roll, double wraps,
                                                           double *length, tside_fault *fault);

/*
 * The wraps on the bar for a length of curtain: the exact inverse of tside_roll_taken_up, n =
 * (2l/pi)/(D0 + sqrt(D0^2 + 4 te l/pi)), without cancellation and valid at zero thickness.
 * roll: every field checked.
 * taken_up: m, from 0 to 10000.
 * wraps: receives turn: wraps from the bare core.
 * TSIDE_OUT_OF_BOUNDS: a field of the roll, or taken_up.
 * TSIDE_NOT_MODELLED: on a core so near 0 that the wraps are no finite number.
 * Accuracy: to 1e-15, relative, of a core not below 1e-150 m; the square of a less one vanishes.
 * Source: derivation from tside_roll_taken_up.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_roll_wraps(const tside_roll *roll, double taken_up,
                                                        double *wraps, tside_fault *fault);

/*
 * The roll's diameter after n wraps, D = D0 + 2 te n.
 * roll: every field checked.
 * wraps: turn, from 0 to 1000.
 * diameter: receives m.
 * TSIDE_OUT_OF_BOUNDS: a field of the roll, or wraps.
 * Accuracy: to 5e-16, relative.
 * Source: derivation, each wrap adds its thickness on both sides.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_roll_diameter(const tside_roll *roll, double wraps,
                                                           double *diameter, tside_fault *fault);

/*
 * The effective thickness that counted turns imply: the field inverse, te = (l/pi - turns
 * D0)/(turns (2 n0 + turns)).
 * core: m, above 0 and up to 1, as in tside_roll.
 * wraps_before: turn, from 0 to 1000, on the bar when counting began.
 * turns: turn, from 0.001 to 1000, counted.
 * taken_up: m, above 0 and up to 10000, measured meanwhile.
 * thickness: receives m, packing x thickness.
 * TSIDE_OUT_OF_BOUNDS: an argument.
 * TSIDE_CONTRADICTS: less was taken up than the bare core takes, so no thickness fits; the fault's
 * bound is the least take-up that fits.
 * Accuracy: to 5e-16 of taken_up/(pi turns (2 wraps_before + turns)), from which the bare core is
 * taken off.
 * Source: derivation from tside_roll_taken_up.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_roll_thickness(double core, double wraps_before,
                                                            double turns, double taken_up,
                                                            double *thickness, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
