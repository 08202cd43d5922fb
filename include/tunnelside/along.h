/* SPDX-License-Identifier: MIT */
/*
 * Places along the house: how far outside the end bow curtain, drive and guide stand, and how the
 * guide leans and sweeps that way.
 */
#ifndef TUNNELSIDE_ALONG_H
#define TUNNELSIDE_ALONG_H

#include <tunnelside/guide.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_hung { TSIDE_ON_EXTENDER, TSIDE_ON_HIP } tside_hung;

/* How far the bar runs on past the curtain's edge. */
typedef enum tside_alignment {
    TSIDE_IN_LINE,     /* so far that the drive stands in line with the guide's eye */
    TSIDE_RUN_ON_GIVEN /* as given; the guide leans along the house by what that misses */
} tside_alignment;

/*
 * What stands along the house at one end, of a drive, or of the free end's collar. Places are from
 * the plane of the end bow's centreline, outward.
 */
typedef struct tside_along {
    tside_hung hung;
    double bow;           /* m, the end bow's diameter */
    double spacer;        /* m, solid, between bow and extender */
    double tube;          /* m, side of the extender's square tube */
    double stand_off;     /* m, from the tube's outer face to the guide's line */
    double bar_clearance; /* m, least distance between tube and what passes it */
    int eye_past_given;
    double eye_past; /* m, the eye on the hip rail, past the plane of the end bow's
                           * centreline */
    double past;     /* m, curtain past that plane */
    tside_alignment alignment;
    double run_on;      /* m, bar from the curtain's edge to the drive's centre, or to the
                           * collar's line */
    double along;       /* m, the guide's line beyond the drive's centre */
    double half_length; /* m, of the drive or collar, along the bar */
    double clearance;   /* m, least distance between it and the curtain's edge, */
} tside_along;

/* Where it all stands. */
typedef struct tside_stand {
    double eye;    /* m, the guide's line at its eye */
    double line;   /* m, the guide's line at the drive or collar */
    double misfit; /* m, line less eye: how much farther out the drive stands */
    double run_on; /* m, bar from the curtain's edge to the drive's centre */
    double clear;  /* m, between curtain's edge and drive, beyond the clearance asked */
    int past_most_given;
    double past_most; /* m, greatest curtain past the end bow with which the drive stands in
                       * line; no bound where the eye on the hip follows it */
    int covers;       /* 1 where the curtain covers the end bow */
    int beside;       /* 1 where drive or collar passes beside the extender's tube, within its
                      * clearance */
} tside_stand;

/*
 * Where curtain, drive and guide stand along the house.
 *
 * On an extender the eye is at bow/2 + spacer + tube + stand_off; on the hip at eye_past, or, that
 * not given, where a drive hard by the curtain's edge is in line, past + half_length + clearance +
 * along. The guide's line at the drive is at past + run_on + along; in line run_on follows from
 * that.
 * along: every field checked.
 * stand: receives the places.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_OUT_OF_REACH: the drive would stand over the curtain's edge. In line the fault has past and
 * the greatest that fits, and as its remedy the least stand_off or eye_past that would do as well;
 * with run_on given, that and the least that fits.
 * Accuracy: to 4e-15 m.
 * Source: derivation, plane geometry; that the eye on the hip follows the curtain is this library's
 * choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_along_stand(const tside_along *along,
                                                         tside_stand *stand, tside_fault *fault);

/*
 * How a guide leans and sweeps along the house when its collar rides off its eye's plane by a
 * misfit: with d from eye to collar in the cross-section, D = hypot(d, misfit) along the guide.
 */
typedef struct tside_skew {
    double reach_shut, reach_open; /* m, D */
    double lean_shut, lean_open;   /* rad, along the house from the cross-section,
                                     * atan(misfit/d) */
    double lean_greatest;          /* rad, either way, over the travel */
    double length;                 /* m, eye to foot */
    double foot_shut;              /* m, foot beyond the eye along the house when shut */
    double sweep;                  /* m, how far the foot sweeps along the house over the travel */
} tside_skew;

/*
 * A guide's lean and its foot's sweep along the house, over the whole travel, as its misfit makes
 * them.
 * travel: made by tside_travel_make.
 * hang: made by tside_hang_make, of this travel.
 * skew: receives them.
 * TSIDE_NOT_MODELLED: a hang of another travel, whose eye the bar comes nearer to than the guide's
 * line keeps off it.
 * Limits: with no misfit D is d and all angles and places along are 0, to the last bit.
 * Accuracy: as tside_hang_make.
 * Source: derivation, geometry in space.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_guide_skew(const tside_travel *travel,
                                                        const tside_hang *hang, tside_skew *skew,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
