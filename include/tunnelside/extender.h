/* SPDX-License-Identifier: MIT */
/*
 * The extender: a square tube bolted across the end wall, to bow and member, that carries the
 * guide's eye out over the bar's path.
 */
#ifndef TUNNELSIDE_EXTENDER_H
#define TUNNELSIDE_EXTENDER_H

#include <tunnelside/travel.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_slant {
    TSIDE_SLANT_BEST,    /* the angle that makes its tip stiffest within the bounds */
    TSIDE_SLANT_ANGLE,   /* a given angle */
    TSIDE_SLANT_CROSSING /* a given height at which it crosses the bow */
} tside_slant;

typedef struct tside_extender {
    tside_square tube;
    tside_material material;
    tside_hardware hardware; /* of bolts and eye bolt */
    tside_slant slant;
    double angle;         /* rad, from plumb */
    double crossing;      /* m, height at which it crosses the bow's centreline */
    double member_height; /* m, centreline of the end wall's member */
    double member_inner;  /* m, the member's inner end, outboard of the tunnel's centreline */
    double member_outer;  /* m, its outer end, above 0; in a side, both as level_from says */
    double end_distance;  /* m, eye's hole from the top end */
    double tail;          /* m, tube below the member's bolt */
    double spacing;       /* m, least distance between the two bolts */
    int stock_given;
    double stock;         /* m, longest tube to be had */
    double bolt_hole;     /* m, diameter */
    double eye_hole;      /* m, diameter */
    double bar_clearance; /* m, least distance between tube and roll */
    double spacer;        /* m, solid, between the bow and the tube */
    double eye_stand_off; /* m, guide's line from the tube's face, along the eye bolt */
    double eye_root;      /* m, root diameter of the eye bolt's thread */
    tside_material eye_material;
    int bolt_limit_given;
    double bolt_limit; /* N, allowable shear on one bolt */
    int pull_limit_given;
    double pull_limit; /* N, allowable pull on one bolt */
} tside_extender;

/* What keeps the chosen angle from being better, or that nothing does. */
typedef enum tside_binding {
    TSIDE_BINDS_NOTHING, /* the stiffest angle of all, or the angle was given */
    TSIDE_BINDS_BOW,     /* beyond it the tube misses the bow */
    TSIDE_BINDS_MEMBER,  /* the member would lie above the crossing */
    TSIDE_BINDS_SPACING,
    TSIDE_BINDS_STOCK,
    TSIDE_BINDS_ENDS,  /* the member's ends */
    TSIDE_BINDS_ANGLE, /* 75 degrees from plumb */
    TSIDE_BINDS_KINK   /* the bow's hole keeps off a kink or a bend's end of it */
} tside_binding;

/*
 * Where the extender sits, and how it is cut and drilled. Holes are measured from the top end,
 * never chained.
 */
typedef struct tside_layout {
    double angle;           /* rad, from plumb */
    double run;             /* 1, level run for a rise of 1: times 12 for inches per foot */
    double eye_x, eye_y;    /* m */
    double bow_distance;    /* m, eye to bow bolt along the tube */
    double member_distance; /* m, eye to member bolt along the tube: the check diagonal */
    double cut_length;      /* m */
    double eye_from_top, bow_from_top, member_from_top; /* m, hole centres from the tube's top
                                                         * end */
    double overhang;          /* m, eye to the bow's outer face along the tube */
    double eye_above_hip;     /* m */
    double eye_outboard;      /* m, level, from the end bow's outer face at hip height */
    double bow_x, bow_height; /* m, hole in the bow */
    double bow_along;         /* m, along the bow's centreline from hip height up to the hole */
    double member_x;          /* m, hole in the member */
    double member_from_outer; /* m, hole from the member's outer end */
    double clear;             /* m, least distance between tube and roll over the travel, less the
                               * clearance asked */
    tside_binding binding;
} tside_layout;

/*
 * Lays out the extender for an eye.
 *
 * The best angle makes bow_distance^2 x member_distance, to which the tip's deflection is
 * proportional, smallest, subject to: it reaches the bow; the member below the crossing; least
 * spacing; longest stock; the crossing within the member's ends; 75 degrees. If its hole in the
 * bow would come within two of its tube's diameters of a kink, a bend's end or a pointed top, the
 * best that keeps off them is taken, if there is one and the roll passes it: below such a place
 * unless above it the tip is twice as stiff. A given angle or crossing is held to the bounds
 * before 75 degrees.
 * extender: every field checked.
 * bow: made by tside_bow_make, of the end wall.
 * hip: m, up to the bow's top, height of the curtain's fixing.
 * eye_x: m, any, the eye, outboard of the tunnel's centreline.
 * eye_y: m, above the member.
 * travel: made by tside_travel_make, for the clearance from tube to roll.
 * layout: receives where it sits, and how it is cut and drilled.
 * TSIDE_OUT_OF_BOUNDS: a field, or a place that is not finite.
 * TSIDE_CONTRADICTS: member not below the eye; end distance shorter than the eye's hole needs;
 * member's ends in the wrong order; holes that leave no tube.
 * TSIDE_OUT_OF_REACH: no angle fits: the fault names the first bound that no angle meets together
 * with those before it; or the roll would meet the tube; or the hip is above the bow's top.
 * Accuracy: at a given angle to 4e-15 of the sum that tside_travel_at names and of bow_distance, over
 * the sine between tube and bow; at a given crossing the angle to that over the drop to the member,
 * and lengths to what it moves; the best angle where no bound makes it to 1e-7 rad
 * (bow_distance^2 x member_distance is the least to 1e-13), else to 1e-11 rad.
 * Source: derivation; overhanging beam, deflection P a^2 (L + a)/(3 E I), standard beam tables.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_extender_layout(
    const tside_extender *extender, const tside_bow *bow, double hip, double eye_x, double eye_y,
    const tside_travel *travel, tside_layout *layout, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
