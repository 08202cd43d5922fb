/* SPDX-License-Identifier: MIT */
/*
 * The guide fixed at its foot: a rigid line held at its top and in the ground, along which the
 * drive's collar slides.
 */
#ifndef TUNNELSIDE_FIXED_H
#define TUNNELSIDE_FIXED_H

#include <tunnelside/lift.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What of a fixed guide is given. */
typedef enum tside_fixed_by {
    TSIDE_FIXED_BEST, /* nothing: it stands where the collar's arm must give least */
    TSIDE_FIXED_TOP,  /* its top: the foot stands where the arm must give least */
    TSIDE_FIXED_BOTH  /* top and foot */
} tside_fixed_by;

/* How a guide's foot stands in the ground. */
typedef struct tside_footing {
    tside_fixed_by fixed_by;
    double foot_x;       /* m, foot at the ground, outboard of the tunnel's centreline */
    double depth;        /* m, pipe in the ground */
    double misfit_limit; /* m, that the collar's arm may give either way */
} tside_footing;

/*
 * A guide fixed at its foot. Misfits are from the collar's offset, square to the guide: positive
 * where it stands too far outboard of the bar.
 */
typedef struct tside_fixed {
    double lean;                          /* rad, from plumb, foot outboard positive */
    double top_x, top_y;                  /* m */
    double foot_x, ground;                /* m, where the pipe enters the ground */
    double length;                        /* m, from top to ground */
    double cut_length;                    /* m, of the pipe */
    double misfit_least, misfit_greatest; /* m, over the travel */
    double misfit;                        /* m, the greater of the two, either way */
    double misfit_error;                  /* m, the same at the worse placing error of the foot;
                                           * the arm is set when the drive is hung */
    double clear;                         /* m, top above what rides on the guide, less the
                                           * clearance asked */
    double offset;                        /* m, guide's line outboard of the bar's axis */
    double carried;                       /* N, of what rides on it */
    double carried_offset;                /* m, its centre of mass outboard of the bar's axis */
} tside_fixed;

/*
 * Stands a guide on its foot.
 *
 * The best line runs amid the narrowest strip that holds the axis's path, up to 45 degrees from
 * plumb; from a given top the foot stands so that the arm gives as much one way as the other.
 * travel: made by tside_travel_make.
 * guide: every field checked; its clearance and placing error (of the foot, level) are asked.
 * footing: every field checked.
 * collar: every field checked, what rides on it.
 * eye_x: m, from 0, the top; unused for the best line.
 * eye_y: m, from 0, the top.
 * ground: m, any, height of the ground there.
 * fixed: receives the guide.
 * TSIDE_OUT_OF_BOUNDS: a field or argument.
 * TSIDE_OUT_OF_REACH: the top does not clear what rides on the guide (the fault has its height and
 * the least that fits); from that top no guide within 75 degrees of plumb follows the bar.
 * TSIDE_CONTRADICTS: the collar would come to the ground (the fault has the ground's height and the
 * greatest that fits).
 * Accuracy: misfits to 1e-14 L, L the length of which tside_travel_at's are a share and the height
 * of the top above ground; the lean to that over the way from shut to open (the best), else over the
 * top's height above the bar; lengths and misfit_error to what that moves the foot by besides.
 * Source: derivation; a narrowest strip touches the path's convex hull along an edge.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_fixed_make(const tside_travel *travel,
                                                        const tside_guide *guide,
                                                        const tside_footing *footing,
                                                        const tside_collar *collar, double eye_x,
                                                        double eye_y, double ground,
                                                        tside_fixed *fixed, tside_fault *fault);

/* What a fixed guide carries. */
typedef struct tside_fixed_load {
    double couple;   /* N m, the greatest that the drive hands the guide */
    double reaction; /* N, of it at top and foot, square to the guide and opposed */
    double moment;   /* N m, the pipe's greatest bending, just above or below the collar */
} tside_fixed_load;

/*
 * The couple that a fixed guide takes from its drive, T + Wd e, over the travel, and what that
 * does.
 *
 * At top and foot it is couple/length, bending couple max(h, length - h)/length, h from top to
 * collar. The foot counts as pinned at the ground; what the soil bears is not checked. The drive
 * gives what the bar takes, since such a guide does not turn.
 * travel: made by tside_travel_make.
 * load: optional, every field checked; the torque is what lifts it, or without it torque, constant.
 * fixed: made by tside_fixed_make.
 * torque: N m, from 0, such as at stall.
 * forces: receives what it carries.
 * TSIDE_OUT_OF_BOUNDS: a field, or torque.
 * Accuracy: by a load to 1e-16 of all that hangs and what rides on the guide, as a weight, times L
 * of tside_fixed_make, by a torque alone to 1e-15, relative; the reaction to that over the length.
 * Source: derivation, statics.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_fixed_force(const tside_travel *travel,
                                                         const tside_load *load,
                                                         const tside_fixed *fixed, double torque,
                                                         tside_fixed_load *forces,
                                                         tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
