/* SPDX-License-Identifier: MIT */
/* A side made ready, as plan, searches and batch share it. */
#ifndef TUNNELSIDE_I_READY
#define TUNNELSIDE_I_READY

#include <tunnelside/plan.h>

#include "side/hooks.h"
#include "side/joints.h"
#include "statics/extender.h"
#include "statics/lift.h"

/*
 * One end wall with its guide, which hangs from an eye, or stands on its foot and then has no hang. What it does over
 * the travel, and how it stands, goes where its maker has room for it: in the plan, or beside.
 */
typedef struct tside_i_hung {
    tside_sweep *sweep;
    tside_fixed *fixed;
    tside_hang hang;
    double eye_x, eye_y;
    int stands;
} tside_i_hung;

/* What turns with the lean of a hanging guide; NULL: nothing does. */
static inline const tside_hang *tside_i_hang_of(const tside_i_hung *hung)
{
    return hung->stands ? NULL : &hung->hang;
}

/* What every answer about a side starts from. */
typedef struct tside_i_setup {
    const tside_side *side;
    const tside_bar *bar;     /* the side's own, or one tried in its place */
    const tside_drive *drive; /* the same */
    tside_bow bow;
    tside_i_hip hip;
    tside_travel travel;
    tside_i_track track;
    tside_load load;
    tside_i_strung ropes; /* without bays where nobody knows how they run */
    tside_metal_values bar_metal;
    tside_section bar_section;
    tside_stand stand[2]; /* by end */
    tside_i_bar_lengths bar_lengths;
} tside_i_setup;

/* The ropes, where they stretch and so press on the roll; NULL: they do not. */
static inline const tside_i_strung *tside_i_stretching(const tside_i_setup *setup)
{
    return setup->ropes.stiffness > 0 ? &setup->ropes : NULL;
}

/* What turns the bar of a side, with a guide or, NULL, without. */
static inline tside_i_lifting tside_i_lifting_of(const tside_i_setup *setup, const tside_hang *hang)
{
    return (tside_i_lifting){&setup->track, &setup->load, tside_i_stretching(setup), hang, 0};
}

/* Where a guide hangs: as its end says, on the hip rail, or on an eye placed best at some rise. */
typedef enum tside_i_place { TSIDE_I_OWN_EYE, TSIDE_I_HIP, TSIDE_I_BEST_EYE } tside_i_place;

/* Bow, line, travel and load of a side, which must have passed its check, with a bar and a drive. */
tside_status tside_i_set_up(const tside_side *side, const tside_bar *bar, const tside_drive *drive,
                            tside_i_setup *setup, tside_fault *fault);
/* Hangs an end's guide, or stands it on its foot, in the room given. rise: for TSIDE_I_BEST_EYE. */
tside_status tside_i_hang_end(const tside_i_setup *setup, tside_which_end which, tside_i_place place, double rise,
                              tside_i_hung *hung, tside_fault *fault);
/*
 * The travel with core, packing and thickness all at one end of their spread, as the factor (-1 or 1) says, or (0) as
 * they are given.
 */
tside_status tside_i_make_travel(const tside_i_setup *setup, double factor, const tside_stops *stops,
                                 tside_travel *travel, tside_fault *fault);

/* The same with the guide's foot hanging, though its end says that it is fixed. */
tside_status tside_i_hang_instead(const tside_i_setup *setup, tside_which_end which, tside_i_hung *hung);

const tside_end *tside_i_end(const tside_side *side, tside_which_end which);
/* What rides on an end's guide. */
tside_collar tside_i_end_collar(const tside_i_setup *setup, tside_which_end which);
const char *tside_i_end_name(tside_which_end which);
/* How an end tells its level places; the field is still to be named. */
tside_i_told tside_i_end_level(const tside_i_setup *setup, tside_which_end which);
/* Height of the ground at an end. */
double tside_i_end_ground(const tside_side *side, tside_which_end which);
/* An end's i-th keep-out in the datum of the whole side: outboard of the centreline, and above where heights begin. */
tside_keep_out tside_i_keep_out_in_place(const tside_i_setup *setup, tside_which_end which, int i);
/* Whether outboard is to the right, seen from outside an end's wall: from outside the free end the side is mirrored. */
static inline int tside_i_outboard_is_right(const tside_side *side, tside_which_end which)
{
    return (side->hand == TSIDE_RIGHT) == (which == TSIDE_DRIVE_END);
}
/*
 * Puts the bar's own path before a fault of it: the side's, or that of the list's element that is tried in its place.
 */
tside_status tside_i_within_bar(const tside_i_setup *setup, tside_fault *fault, tside_status status);

/* What sets a guide's eye, and what rides on the guide, in the side's own words. */
tside_i_names tside_i_end_names(const tside_i_setup *setup, tside_which_end which, tside_i_place place);

#endif
