/* SPDX-License-Identifier: MIT */
/*
 * Strength: what the drive's stall puts into bar, guide, eye, extender and bolts. For choosing
 * parts, not a certificate.
 */
#ifndef TUNNELSIDE_STRENGTH_H
#define TUNNELSIDE_STRENGTH_H

#include <tunnelside/extender.h>
#include <tunnelside/lift.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What is checked. */
typedef enum tside_strength_code {
    TSIDE_BAR_SHEAR,          /* bar next to the drive, worst running torque */
    TSIDE_BAR_SHEAR_STALL,    /* the same at stall */
    TSIDE_BAR_BENDING,        /* the drive's weight and the guide on the bar beyond the curtain's
                               * edge, running, reversed each turn */
    TSIDE_BAR_BENDING_STALL,  /* the same at stall */
    TSIDE_COUPLING_SCREW,     /* screws from drive to bar, at stall */
    TSIDE_SPLICE_SCREW,       /* screws of the splice nearest to the drive, worst running torque */
    TSIDE_SPLICE_SCREW_STALL, /* the same at stall */
    TSIDE_GUIDE_BENDING,      /* guide at the collar */
    TSIDE_EYE_BOLT_BENDING,   /* eye bolt at its root */
    TSIDE_EXTENDER_BENDING,   /* extender's net section at the bow bolt, bending both ways, twist
                               * and shear as one stress */
    TSIDE_EXTENDER_TIP,       /* deflection of the eye, without a limit */
    TSIDE_BOW_BOLT,           /* shear */
    TSIDE_MEMBER_BOLT,
    TSIDE_BOW_BOLT_PULL, /* along its axis */
    TSIDE_MEMBER_BOLT_PULL,
    TSIDE_BOW_BOLT_BOTH, /* shear and pull at once, each as a share of its limit */
    TSIDE_MEMBER_BOLT_BOTH,
    TSIDE_BOW_NET_SECTION, /* share of the bow's section modulus that the hole leaves, without
                               * a limit */
    TSIDE_RAIL_PULL,       /* pull on the hip rail where there is no extender, without a limit */
    TSIDE_BAR_WIND,        /* bar between ropes, shut, in the wind asked */
    TSIDE_RAIL_SCREW, /* pull on each screw of the hip rail in that wind, ropes over the curtain */
    TSIDE_STRENGTH_CODES
} tside_strength_code;

typedef enum tside_which_end { TSIDE_DRIVE_END, TSIDE_FREE_END } tside_which_end;

typedef enum tside_measure {
    TSIDE_STRESS,
    TSIDE_FORCE,
    TSIDE_DEFLECTION,
    TSIDE_SHARE
} tside_measure;

typedef enum tside_verdict {
    TSIDE_VERDICT_OK,
    TSIDE_VERDICT_LOOK, /* above 0.8 of the limit, or no limit known: look, and decide */
    TSIDE_VERDICT_NO    /* above the limit */
} tside_verdict;

/* At which of the two a demand is greatest, where it is asked at both. */
typedef enum tside_rules {
    TSIDE_RULES_NONE, /* asked at one alone */
    TSIDE_RULES_UP,   /* stalled going up, the guide pushing its eye outboard */
    TSIDE_RULES_DOWN  /* jammed coming down, pulling it inboard */
} tside_rules;

typedef struct tside_strength_line {
    tside_strength_code code;
    tside_which_end end;
    tside_measure measure;
    tside_verdict verdict;
    tside_rules rules;
    int limit_given, utilisation_given, yield_needed_given;
    double demand;       /* in the unit of its measure: Pa, N, m or 1 */
    double limit;        /* in the same unit */
    double utilisation;  /* 1, demand over limit */
    double yield_needed; /* Pa, where no yield is known */
} tside_strength_line;

/*
 * What a force at the eye puts into an extender. Across and along are in the end wall's plane;
 * bending out of it comes of the eye standing off the tube.
 */
typedef struct tside_extender_load {
    double across, along;           /* N, P square to the tube, outboard and down positive; X along
                                  * it, up positive */
    double bending_in;              /* Pa, at the bow bolt, in the end wall's plane */
    double bending_out;             /* Pa, out of it, just below the bow bolt */
    double bending_wind;            /* Pa, out of it, of wind along the house */
    double axial;                   /* Pa, on the net section */
    double twist;                   /* Pa, shear of the torque between eye and bow bolt */
    double shear;                   /* Pa, of P in the two walls */
    double combined;                /* Pa, all of these as one stress, to hold against the yield
                                  * over its safety factor */
    double bow_shear, member_shear; /* N, on each bolt across its axis */
    double bow_pull, member_pull;   /* N, on each bolt along its axis, from 0 */
    double tip;                     /* m, the eye's movement across the tube, in the end wall's
                                  * plane, signed as across */
    double eye_bolt;                /* Pa, bending at the eye bolt's root */
    int stand_off_most_given; /* 1 where the eye bolt's yield is known, and there is a force */
    double stand_off_most;    /* m, greatest stand-off that the eye bolt bears under this
                                  * force, at its yield over 1.67 (steel) or 1.65 */
} tside_extender_load;

enum { TSIDE_EXTENDER_LINES = 9 }; /* no extender has more */

/*
 * What is checked, in words, such as "extender bending at the bow bolt".
 * code: any, a tside_strength_code.
 * Returns a constant string; "" for a code that does not exist.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_strength_text(int code);

/*
 * What would mend an overstressed part, in terms of the side's fields, such as "more bar.screws".
 * code: any, a tside_strength_code.
 * Returns a constant string, in which "{end}" stands for drive_end or free_end; "" for what has no
 * limit and for a code that does not exist.
 * Source: this library's choice of words.
 */
TSIDE_API const char *tside_strength_mends(int code);

/*
 * What a force at the eye puts into an extender, in space.
 *
 * With a from plumb, sB and sG from eye to bolts, e = side/2 + stand-off from the tube's axis to
 * the guide's line, ef = stand-off + side + spacer from the bow's face, where the bolts take their
 * shear, P = F cos a + W sin a and X = F sin a - W cos a. Bending is |P| sB (side/2)/I_in + |X| ef
 * (side/2)/I_out + |X|/(A - 2 dh T) + Mw (side/2)/I_out, the bow bolt's holes being in the faces
 * that look along the house; wind that way, V at the eye and v along the tube, makes Mw = V sB + v
 * (end + sB)^2/2. Shear is |P| e/C + |P|/(2 h T), h the flat inside; both as one, combined =
 * sigma/2 + sqrt(sigma^2/4 + (tau/0.6)^2). The bolts' shear is hypot(P sG/(sG-sB), X) and hypot(P
 * sB/(sG-sB), X), X whole on each. Their pull is where the tube tips about the edge of its flat, b
 * = side/2 - ro, on the bow, whose bolt takes it all, |P| ef/b, and where X acts above or below the
 * bolts, |X| ef/(sG-sB) on the one that it lifts, the member's while X pulls the tube up, else the
 * bow's; to each comes its reaction to the wind, which blows from either end. The tip moves by P
 * sB^2 sG/(3 E I); the eye bolt bends by hypot(F, W) stand-off/(pi dr^3/32). Not computed are the
 * crushing of tube and bow under the bolts' pull, the bow's own twist, slack of the holes, the
 * section at the eye's hole.
 * extender: every field checked.
 * layout: every field checked that is read: angle, from -pi/2 to pi/2, bow_distance, above 0,
 * member_distance, above that; tside_extender_layout makes all.
 * force: N, any, level, outboard positive (the guide's, going up), inboard negative (jammed coming
 * down).
 * weight: N, from 0, what hangs on the eye.
 * wind_eye: N, from 0, what wind along the house pushes the eye with; 0 without wind.
 * wind_tube: N/m, from 0, what it pushes along the tube with; 0 without wind.
 * load: receives what it bears.
 * TSIDE_OUT_OF_BOUNDS: a field, the layout's too, force, weight or wind.
 * TSIDE_CONTRADICTS: a bolt's hole as wide as the tube's flat, a tube without a flat inside or one
 * that tside_square_section refuses, or a grade of another metal.
 * Accuracy: across and along to 3e-15 of hypot(F, W); what they do to 3e-15 of what it would be with
 * P and X each as great as that, and all terms of the wind's moments added, times sG/(sG-sB) of the
 * bolts, or side/(2 b) of their pull if that is more, and side/h of shear and combined;
 * stand_off_most to 3e-15, relative.
 * Source: derivation, statics; AISC 360-16, equation H3-6, elastic, with all loads scaled alike,
 * and section G4 for h; that twist is never dropped, that stresses are summed by magnitude, that
 * the bow's bolt takes all the tipping, and that the eye takes all the wind on guide and drive are
 * this library's choices, on the safe side. Where shear is all, AISC's 0.6 Fy is 4 % above von
 * Mises' 0.577.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_extender_bears(
    const tside_extender *extender, const tside_layout *layout, double force, double weight,
    double wind_eye, double wind_tube, tside_extender_load *load, tside_fault *fault);

/*
 * The strength of an extender under the greatest forces at its eye either way, each line at the
 * worse of the two.
 *
 * What a force does is as tside_extender_bears says: the combined stress against Fy/1.67 (steel) or
 * Fty/1.65 (aluminium), each bolt's shear and pull against their limits, and where both are known
 * the hypotenuse of the two shares, at most 1. All of these are greatest at one of the two forces,
 * for none bends down between them.
 * extender: every field checked.
 * layout: every field checked that is read: angle, from -pi/2 to pi/2, bow_distance, above 0,
 * member_distance, above that; tside_extender_layout makes all.
 * outboard: N, from 0, the greatest push on the eye, stalled going up.
 * inboard: N, from 0, the greatest pull, jammed coming down.
 * weight: N, from 0, what hangs on the eye.
 * wind_eye: N, from 0, what wind along the house pushes the eye with; 0 without wind.
 * wind_tube: N/m, from 0, what it pushes along the tube with; 0 without wind.
 * end: any, which end, for the lines' label.
 * lines: receives bending, tip, shear on bow and member bolt, their pull, shear and pull of both at
 * once where both limits are known, eye bolt.
 * capacity: any, how many there is room for; TSIDE_EXTENDER_LINES always serve.
 * count: receives the lines written, or needed.
 * TSIDE_OUT_OF_BOUNDS: a field, the layout's too, a force, weight or wind.
 * TSIDE_CONTRADICTS: as tside_extender_bears.
 * TSIDE_TOO_SMALL: more lines than capacity: only count is written.
 * Accuracy: demands as tside_extender_bears, of both at once to the sum of what the shares may be
 * off; utilisation and yield_needed to 3e-15, relative, besides.
 * Source: derivation, statics; AISC 360-16, chapter H, for steel's factor; aluminium's, and the
 * ellipse of AISC 360-16, commentary J3.7, from memory.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_extender_strength(
    const tside_extender *extender, const tside_layout *layout, double outboard, double inboard,
    double weight, double wind_eye, double wind_tube, tside_which_end end,
    tside_strength_line *lines, int capacity, int *count, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
