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
    double hip;           /* m, height of the curtain's fixing at the hip rail */
    double sill;          /* m, height down to which the wall opens */
    double standoff;      /* m, level, from the bow's outer face to the fixing (rail and channel) */
    double rail_depth;    /* m, how far the rail reaches below the fixing */
    double screw_spacing; /* m, the most between screws of the rail */
    double thickness;     /* m, bare */
    double packing;       /* 1, trapped air above 1, squeezed quilts below */
    double areal_mass;    /* kg/m2 */
    double wet;           /* kg/m2, water film */
    double past;          /* m, curtain past the plane of the end bow's centreline, each end */
    tside_roll_lies roll_lies;
} tside_curtain;

/*
 * A straight or circular piece of the line, going down; or a corner, where it turns without going
 * on.
 */
typedef struct tside_line_piece {
    double from;         /* m, down the line from the fixing */
    double length;       /* m; infinite for the last, 0 for a corner */
    double turn;         /* rad, by how much its slope falls over it */
    double x, y;         /* m, its upper end */
    double slope;        /* rad, there, from plumb, outboard going down */
    double sine, cosine; /* 1, of that slope */
} tside_line_piece;

/* Something on which a roll may bear: a straight piece, an arc or a corner of face or baseboard. */
typedef struct tside_obstacle {
    int straight;
    double x, y;      /* m, a point of the straight piece; the centre of an arc; the corner */
    double nx, ny;    /* 1, outboard normal: of a straight piece, or at a round one's lower end */
    double low, high; /* m, a straight piece's extent along (-ny, nx) from the point; else the
                       * normal at the upper end */
    double radius;    /* m, of an arc; below 0 where it is hollow; 0 for a corner */
} tside_obstacle;

enum { TSIDE_LINE_PIECES = 16, TSIDE_OBSTACLES = 8 };

/* Made by tside_line_make; do not edit. */
typedef struct tside_line {
    double x, y; /* m, the fixing */
    int count;
    tside_line_piece piece[TSIDE_LINE_PIECES]; /* the first is the free chord */
    int obstacle_count;
    tside_obstacle obstacle[TSIDE_OBSTACLES];
    int board; /* which obstacle is the baseboard's corner, or -1 */
} tside_line;

/*
 * Makes the line along which the curtain hangs: the outboard boundary of the convex hull of fixing,
 * the bow's outer face below it and the baseboard's upper corner, continued plumb from its
 * outermost point, or along a wall that leans outboard to the ground. The fixing lies level
 * outboard of the face at hip height by the standoff.
 * bow: made by tside_bow_make.
 * curtain: every field checked.
 * line: receives the line.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: sill not below the hip; baseboard not below the hip.
 * TSIDE_OUT_OF_REACH: hip above the bow's top.
 * TSIDE_NOT_MODELLED: a roll inboard of its curtain.
 * Accuracy: as tside_line_at tells of it.
 * Source: derivation, convex hull of circles and points.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_line_make(const tside_bow *bow,
                                                       const tside_curtain *curtain,
                                                       tside_line *line, tside_fault *fault);

/*
 * Where the line is at a distance down from the fixing, and which way it faces.
 * line: made by tside_line_make.
 * distance: m, from 0.
 * x, y: receive m, the place.
 * normal: receives rad, of its outboard normal from level.
 * TSIDE_OUT_OF_BOUNDS: the distance.
 * Limits: on its first piece, down to where it first meets face or board, nothing holds the curtain
 * against a roll, which pulls it inboard of this line: see tside_travel_at.
 * Accuracy: places to 1e-15 of the sum of the bow's length, its foot's distance from where things
 * are measured from and the radius of its widest bend; the normal to that, by the metre.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_line_at(const tside_line *line, double distance,
                                                     double *x, double *y, double *normal,
                                                     tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
