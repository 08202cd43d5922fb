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
    TSIDE_FOOT_FIXED  /* refused: not modelled */
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
    double misfit;         /* m, how much farther out along the house it rides than the eye stands; 0: in line */
} tside_hang;

/* What the guide's foot does over the whole travel. Leans are from plumb, positive with the foot outboard. */
typedef struct tside_sweep {
    double lean_shut, lean_open;       /* rad */
    double lean_least, lean_greatest;  /* rad */
    double length;                     /* m, eye to foot */
    double cut_length;                 /* m, of the pipe: length less chain */
    double foot_x, foot_lowest;        /* m, foot when shut; its lowest height */
    double kick_out, kick_in;          /* m, how far the foot swings outboard and inboard of where it hangs when shut */
    double walkway;                    /* m, the farthest outboard that the foot comes */
    double kick_out_error, kick_in_error, walkway_error; /* m, each at its own worse placing error of the eye */
    double clear;                      /* m, eye above what rides on the guide, less the clearance asked */
} tside_sweep;

/*
 * Hangs a guide on its eye: its length is from eye to collar when shut, plus the margin below the collar.
 * collar: what rides on it, each value finite, offset and mass from 0. eye_x, eye_y: m.
 * TSIDE_OUT_OF_BOUNDS: a field. TSIDE_NOT_MODELLED: a fixed foot. TSIDE_OUT_OF_REACH: the eye does not clear what rides on the guide
 * (the fault has the eye's height and the least that fits). TSIDE_CONTRADICTS: the chain is not shorter than the distance from eye to collar when open,
 * or the foot would meet the ground (the fault has the gap and the greatest margin that fits). Source: derivation, plane geometry.
 */
TSIDE_API tside_status tside_hang_make(const tside_travel *travel, const tside_guide *guide, const tside_collar *collar, double eye_x, double eye_y, tside_hang *hang,
                                       tside_fault *fault);

/*
 * How the guide leans with the bar at some turns since shut, and how far the drive has turned against its own housing, which leans with the guide:
 * phi = atan2(xa - xe, ye - ya) + asin(o/R).
 * turns: of the bar, within the travel; lean: rad; drive_turns: revolutions. TSIDE_OUT_OF_BOUNDS: turns beyond the travel.
 */
TSIDE_API tside_status tside_guide_lean(const tside_travel *travel, const tside_hang *hang, double turns, double *lean, double *drive_turns, tside_fault *fault);

/* What the guide does over the whole travel. Bounds and errors as tside_hang_make, which it repeats with the eye misplaced either way. */
TSIDE_API tside_status tside_guide_sweep(const tside_travel *travel, const tside_guide *guide, const tside_collar *collar, double eye_x, double eye_y,
                                         tside_sweep *sweep, tside_fault *fault);

/*
 * Where the eye should be at a given height: outboard so that the greatest lean over the travel is smallest; outboard and inboard leans are then equal.
 * eye_y: m, above everything that passes below it; collar_offset: m, from 0; eye_x: receives metres.
 * TSIDE_OUT_OF_REACH: an eye not above the bar's highest place by more than the offset. Source: derivation, equal-ripple condition.
 */
TSIDE_API tside_status tside_eye_best(const tside_travel *travel, double eye_y, double collar_offset, double *eye_x, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
