/* SPDX-License-Identifier: MIT */
/* The guide: a pipe hung from an eye beside the end wall, along which the drive's collar slides. */
#ifndef TUNNELSIDE_GUIDE_H
#define TUNNELSIDE_GUIDE_H

#include <tunnelside/drive.h>
#include <tunnelside/travel.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_foot {
    TSIDE_FOOT_HANGS, /* the foot swings freely */
    TSIDE_FOOT_FIXED  /* it stands in the ground: a rigid line */
} tside_foot;

typedef struct tside_guide {
    tside_round tube;
    tside_material material;
    double chain;            /* m, links between eye and pipe */
    double margin;           /* m, guide below the collar when shut */
    double ground_clearance; /* m, least height of the foot above grade */
    double eye_clearance;    /* m, least height of the eye above what rides on the guide */
    double placing_error;    /* m, of the eye, level, either way */
    tside_foot foot;
} tside_guide;

/* Made by tside_hang_make: a guide on its eye. Do not edit. */
typedef struct tside_hang {
    double eye_x, eye_y;   /* m */
    double offset;         /* m, guide's line outboard of the bar's axis */
    double length;         /* m, from eye to foot, along the guide */
    double chain;          /* m */
    double weight;         /* N, of the pipe */
    double carried;        /* N, of what rides on it */
    double carried_offset; /* m, its centre of mass outboard of the bar's axis */
    double misfit;         /* m, how much farther out along the house it rides than the eye
                            * stands; 0: in line */
} tside_hang;

/*
 * What the guide's foot does over the whole travel. Leans are from plumb, positive with the foot
 * outboard.
 */
typedef struct tside_sweep {
    double lean_shut, lean_open;      /* rad */
    double lean_least, lean_greatest; /* rad */
    double length;                    /* m, eye to foot */
    double cut_length;                /* m, of the pipe: length less chain */
    double foot_x, foot_lowest;       /* m, foot when shut; its lowest height */
    double kick_out, kick_in;         /* m, how far the foot swings outboard and inboard of
                                        * where it hangs when shut */
    double walkway;                   /* m, the farthest outboard that the foot comes */
    double kick_out_error, kick_in_error, walkway_error; /* m, each at its own worse placing
                                                          * error of the eye */
    double clear; /* m, eye above what rides on the guide, less the
                                        * clearance asked */
} tside_sweep;

/*
 * Hangs a guide on its eye: its length is from eye to collar when shut, plus the margin below the
 * collar. Tells also what it does over the whole travel, with the eye misplaced either way too.
 * travel: made by tside_travel_make.
 * guide: every field checked.
 * collar: every field checked, what rides on it.
 * eye_x, eye_y: m, from 0, the eye.
 * misfit: m, any, how much farther out along the house the collar rides than the eye stands, as
 * tside_along_stand tells; 0: in line.
 * hang: receives the guide on its eye.
 * sweep: optional, receives what its foot does; NULL leaves it out.
 * TSIDE_OUT_OF_BOUNDS: a field, the eye's place, or misfit.
 * TSIDE_CONTRADICTS: the chain is not shorter than the distance from eye to collar when open, or
 * the foot would meet the ground (the fault has the gap and the greatest margin that fits); a wall
 * not below half the pipe's diameter, or a grade of another metal.
 * TSIDE_OUT_OF_REACH: the eye does not clear what rides on the guide (the fault has the eye's
 * height and the least that fits).
 * TSIDE_NOT_MODELLED: a fixed foot: tside_fixed_make has it.
 * Accuracy: with L the length of which tside_travel_at's are a share, and the eye's height, R and d
 * from eye to axis and to collar where d is least: lengths to 1e-15 L R/d, leans to that over d,
 * what the foot does to 1 + length/d times that.
 * Source: derivation, plane geometry.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_hang_make(
    const tside_travel *travel, const tside_guide *guide, const tside_collar *collar, double eye_x,
    double eye_y, double misfit, tside_hang *hang, tside_sweep *sweep, tside_fault *fault);

/*
 * How the guide leans with the bar at some turns since shut, and how far the drive has turned
 * against its own housing, which leans with the guide: phi = atan2(xa - xe, ye - ya) + asin(o/R).
 * travel: made by tside_travel_make.
 * hang: made by tside_hang_make.
 * turns: turn, within the travel, of the bar.
 * lean: receives rad, from plumb, positive with the foot outboard.
 * drive_turns: receives turn: the drive's since shut.
 * TSIDE_OUT_OF_BOUNDS: turns beyond the travel.
 * TSIDE_NOT_MODELLED: a hang of another travel, whose eye the bar comes nearer to than the guide's
 * line keeps off it.
 * Accuracy: to 4e-15 of the length of which tside_travel_at's are a share, with the eye's height,
 * over the radius of the bar.
 * Source: derivation, plane geometry.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_guide_lean(const tside_travel *travel,
                                                        const tside_hang *hang, double turns,
                                                        double *lean, double *drive_turns,
                                                        tside_fault *fault);

/*
 * Where the eye should be at a given height: outboard so that the greatest lean over the travel is
 * smallest; outboard and inboard leans are then equal.
 * travel: made by tside_travel_make.
 * eye_y: m, from 0, above everything that passes below it.
 * collar_offset: m, from 0.
 * eye_x: receives m, from the tunnel's centreline.
 * TSIDE_OUT_OF_BOUNDS: eye_y or collar_offset.
 * TSIDE_OUT_OF_REACH: an eye not above the bar's highest place by more than the offset.
 * Accuracy: to 1e-15 L R/d, as tside_hang_make has them of the eye found.
 * Source: derivation, equal-ripple condition.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_eye_best(const tside_travel *travel, double eye_y,
                                                      double collar_offset, double *eye_x,
                                                      tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
