/* SPDX-License-Identifier: MIT */
/* The curtain: where it is fixed, what it weighs, and the line along which it hangs. */
#ifndef TUNNELSIDE_CURTAIN_H
#define TUNNELSIDE_CURTAIN_H

#include <tunnelside/bow.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_roll_lies {
    TSIDE_OUTBOARD, /* the roll lies outboard of its hanging curtain */
    TSIDE_INBOARD   /* refused: not modelled */
} tside_roll_lies;

typedef struct tside_curtain {
    double hip;        /* m, height of the curtain's fixing at the hip rail */
    double sill;       /* m, height down to which the wall opens */
    double standoff;   /* m, level, from the bow's outer face to the fixing (rail and channel) */
    double rail_depth; /* m, how far the rail reaches below the fixing */
    double thickness;  /* m, bare */
    double packing;    /* 1, trapped air above 1, squeezed quilts below */
    double areal_mass; /* kg/m2 */
    double wet;        /* kg/m2, water film */
    double past;       /* m, curtain past the end bow, each end */
    tside_roll_lies roll_lies;
} tside_curtain;

/* Made by tside_line_make; do not edit. */
typedef struct tside_line {
    double x, y;  /* m, the fixing */
    double slope; /* rad, of the line from plumb, outboard going down */
    double gap;   /* m, square to the wall, from its face to the fixing; 0 where the line touches no wall */
} tside_line;

/*
 * Makes the line along which the curtain hangs: from the fixing, level outboard of the bow's face at hip height by the standoff,
 * along the wall where it leans outboard going down, else plumb.
 * TSIDE_OUT_OF_REACH: hip above the bow's top. TSIDE_NOT_MODELLED: a roll inboard of its curtain; a face that is not straight below the hip.
 * TSIDE_CONTRADICTS: sill not below the hip. Source: derivation, convex hull of fixing and face.
 */
TSIDE_API tside_status tside_line_make(const tside_bow *bow, const tside_curtain *curtain, tside_line *line, tside_fault *fault);

/*
 * Where the line is at a distance down from the fixing, and which way it faces.
 * distance: m, from 0; x, y: m; normal: rad, of its outboard normal from level. A roll of radius r that bears on the
 * wall below a standoff pulls the curtain a little inboard of this line: see tside_travel_at.
 */
TSIDE_API tside_status tside_line_at(const tside_line *line, double distance, double *x, double *y, double *normal, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
