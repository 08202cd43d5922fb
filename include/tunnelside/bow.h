/* SPDX-License-Identifier: MIT */
/*
 * The bow: the bent tube of the frame, its centreline and its outer face. x outboard from the
 * tunnel's centreline, y up from grade.
 */
#ifndef TUNNELSIDE_BOW_H
#define TUNNELSIDE_BOW_H

#include <tunnelside/tube.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_bow_shape {
    TSIDE_LEG_AND_PEAK, /* a plumb leg, then an arc to the peak: half circle, pointed, or flat
                         * arch */
    TSIDE_THREE_POINTS  /* an arc through three measured points; collinear points give a straight
                         * bow */
} tside_bow_shape;

typedef enum tside_measured {
    TSIDE_OUTSIDE,   /* width over the outside, heights and points on the outer face, as a tape
                      * meets them */
    TSIDE_CENTRELINE /* on the tube's centreline */
} tside_measured;

typedef enum tside_board {
    TSIDE_NO_BOARD,
    TSIDE_BOARD_OUTSIDE /* a baseboard on the bows' outside, plumb, from grade up */
} tside_board;

typedef struct tside_frame {
    tside_bow_shape shape;
    tside_measured measured;
    tside_round tube;
    tside_material material;
    double width;       /* m, leg and peak: of the whole tunnel */
    double leg_height;  /* m, leg and peak: where the plumb leg ends */
    double peak_height; /* m */
    int shoulder_radius_given;
    double shoulder_radius;           /* m, of the centreline: bend between leg and flat arch */
    double foot_x, foot_height;       /* m, three points */
    double between_x, between_height; /* m, three points */
    double peak_x;                    /* m, three points */
    tside_board board;
    double board_top;   /* m, with a board: its upper edge, above grade */
    double board_stand; /* m, with a board: its outer face at that edge, level outboard of the
                         * bow's outer face there */
} tside_frame;

typedef struct tside_piece {
    double from;         /* m, arc length at its lower end */
    double length;       /* m */
    double curvature;    /* 1/m, positive where it turns inboard on the way up */
    double x, y;         /* m, its lower end */
    double heading;      /* rad, there, counter-clockwise from outboard level */
    double cosine, sine; /* 1, of that heading */
} tside_piece;

enum { TSIDE_BOW_PIECES = 6 };

/* A chain of straight and circular pieces from the foot up; below its foot it goes on straight. */
typedef struct tside_path {
    int count;
    tside_piece piece[TSIDE_BOW_PIECES];
    double length; /* m, developed */
} tside_path;

/* Made by tside_bow_make; do not edit. */
typedef struct tside_bow {
    tside_path centre; /* the tube's centreline */
    tside_path face;   /* its outer face, with a round of half the diameter about an inboard kink */
    double diameter;   /* m */
    int board_given;
    double board_x, board_y; /* m, the baseboard's upper outer corner */
} tside_bow;

typedef struct tside_bow_point {
    double x, y;      /* m */
    double heading;   /* rad */
    double curvature; /* 1/m */
} tside_bow_point;

/*
 * Makes the bow of a frame.
 *
 * Leg and peak, with half width a, leg height h and rise f = peak - h of the centreline: f >= a
 * gives an arc tangent to the leg, R = (f^2+a^2)/(2a), a half circle at f = a and pointed above; f
 * < a gives a flat arch, R = (a^2+f^2)/(2f), which meets the leg in a kink, or in a bend of the
 * shoulder radius. Three points: heights strictly rising.
 * frame: every field checked.
 * bow: receives the bow.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: peak not above leg, half the width not above the tube, heights not rising, an
 * arc through three points that does not rise from its foot or bends by half a circle or more, a
 * shoulder on a bow that needs none, not below half the width (and so not below the arc's radius),
 * or beginning below the foot; a bend tighter than the tube; a baseboard above the bow.
 * TSIDE_NOT_MODELLED: an arch so flat that its radius is no finite number.
 * Accuracy: as tside_bow_at tells of it.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bow_make(const tside_frame *frame, tside_bow *bow,
                                                      tside_fault *fault);

/*
 * Where the centreline is at an arc length from the foot.
 * bow: made by tside_bow_make.
 * arc: m, up to the bow's length; below 0 on the straight line that goes on below the foot.
 * point: receives the place.
 * TSIDE_OUT_OF_BOUNDS: above the length, or not finite.
 * Accuracy: places to 1e-15 of the bow's length and its foot's distance from the tunnel's
 * centreline at grade; heading to 4e-15, curvature to that of itself and of 1 over the length.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bow_at(const tside_bow *bow, double arc,
                                                    tside_bow_point *point, tside_fault *fault);

/*
 * The first arc length at which the centreline reaches a height.
 * bow: made by tside_bow_make.
 * height: m, up to the bow's top, above grade.
 * arc: receives m, below 0 on the straight line below the foot.
 * TSIDE_OUT_OF_BOUNDS: a height that is not finite.
 * TSIDE_OUT_OF_REACH: above the bow's top; the fault's bound is the top.
 * TSIDE_NOT_MODELLED: so far below the foot that the arc length is no finite number.
 * Accuracy: to where the height is off by 2e-15 of the length and distance that tside_bow_at
 * names.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bow_at_height(const tside_bow *bow, double height,
                                                           double *arc, tside_fault *fault);

/*
 * How far outboard the bow's outer face stands at a height.
 * bow: made by tside_bow_make.
 * height: m, up to the face's top, above grade.
 * x: receives m, from the tunnel's centreline.
 * TSIDE_OUT_OF_BOUNDS: a height that is not finite.
 * TSIDE_OUT_OF_REACH: above the face's top; the fault's bound is the top.
 * TSIDE_NOT_MODELLED: so far below the foot that the place is no finite number.
 * Accuracy: as tside_bow_at_height.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bow_face(const tside_bow *bow, double height,
                                                      double *x, tside_fault *fault);

/*
 * Where a half line from (x, y) first crosses the centreline.
 * bow: made by tside_bow_make.
 * x, y: m, any, where it begins.
 * angle: rad, any, its heading, counter-clockwise from outboard level.
 * distance: receives m, from (x, y), above 0.
 * arc: receives m, the crossing's arc length, may be below 0.
 * TSIDE_OUT_OF_BOUNDS: x, y or angle is not finite.
 * TSIDE_OUT_OF_REACH: it never does.
 * TSIDE_NOT_MODELLED: so far below the foot that the arc length is no finite number.
 * Accuracy: as places of tside_bow_at, and to 1e-15 of the distance, both over the sine between
 * line and bow; below a sine of 1e-2 a crossing that only grazes it may be missed.
 * Source: derivation, plane geometry of circles.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bow_crossing(const tside_bow *bow, double x, double y,
                                                          double angle, double *distance,
                                                          double *arc, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
