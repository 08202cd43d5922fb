/* SPDX-License-Identifier: MIT */
/* Travel: where the bar is, from shut to open. */
#ifndef TUNNELSIDE_TRAVEL_H
#define TUNNELSIDE_TRAVEL_H

#include <tunnelside/curtain.h>
#include <tunnelside/roll.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_shut_by {
    TSIDE_SHUT_SEAL,  /* the roll's underside hangs below the sill by the seal overlap */
    TSIDE_SHUT_HEIGHT /* its underside hangs at a height above grade */
} tside_shut_by;

typedef enum tside_open_by {
    TSIDE_OPEN_GAP,   /* the roll's top stops below the rail by a gap */
    TSIDE_OPEN_HEIGHT /* its underside stops at a height above grade */
} tside_open_by;

typedef struct tside_stops {
    double wraps_shut; /* turn, curtain already on the bar when shut */
    tside_shut_by shut_by;
    double seal;        /* m */
    double shut_height; /* m */
    tside_open_by open_by;
    double gap;              /* m */
    double open_height;      /* m */
    double core_spread;      /* 1, relative, +- */
    double packing_spread;   /* 1, +- on the packing factor */
    double thickness_spread; /* 1, relative, +- */
} tside_stops;

/* What holds the hanging curtain while the bar is in a stretch of its travel. */
typedef enum tside_held {
    TSIDE_HELD_LINE,    /* the line's piece with this index */
    TSIDE_HELD_BEARING, /* nothing holds the chord; the roll bears on the obstacle with this
                         * index */
    TSIDE_HELD_FREE,    /* the chord hangs plumb and the roll touches nothing */
    TSIDE_HELD_TIPPED,  /* the roll has tipped over the baseboard's edge and its curtain is slack */
    TSIDE_HELD_UNSETTLED /* it has not been asked what holds the chord where: a travel of which
                          * its ends alone are wanted; no function gives a caller one */
} tside_held;

/*
 * A smooth stretch of the travel, by progress: the wraps wound on, and at a corner of the line the
 * turns without take-up.
 */
typedef struct tside_stretch {
    double from;  /* turn, progress at its beginning */
    double lead;  /* turn, progress less wraps there */
    double slope; /* rad, of the curtain there; used at corners and where the roll tips */
    tside_held held;
    int index;
} tside_stretch;

enum { TSIDE_STRETCHES = 16 };

/* Made by tside_travel_make; do not edit. Progress runs from shut to open. */
typedef struct tside_travel {
    tside_roll roll;
    double sill;       /* m */
    double rail;       /* m, height of the rail's lowest part */
    double wraps_shut; /* turn */
    double hanging;    /* m, curtain from fixing to roll when shut */
    double slope;      /* rad, of that curtain at the roll from plumb, when shut */
    double end;        /* turn, progress when open */
    double highest;    /* m, underside at which the roll's top would meet the rail */
    int stretches;
    tside_stretch stretch[TSIDE_STRETCHES];
    tside_line line;
} tside_travel;

/* Where the bar is. */
typedef struct tside_position {
    double wraps;     /* turn, on the bar */
    double turns;     /* turn, of the bar since shut */
    double taken_up;  /* m, since shut */
    double diameter;  /* m, of the roll */
    double hanging;   /* m, curtain from fixing to roll */
    double x, y;      /* m, the bar's axis */
    double underside; /* m, of the roll, above grade */
    double opening;   /* m, clear of the sill */
    double slope;     /* rad, of the hanging curtain from plumb, outboard going down */
} tside_position;

/*
 * Makes the travel of a roll along its line, from shut to open. Open equal to shut is nil travel,
 * not an error.
 * line: made by tside_line_make.
 * curtain: every field checked, asked for its sill and rail.
 * roll, stops: every field checked.
 * travel: receives the travel.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: seal deeper than the sill is high; open below shut; shut or open so high that
 * the roll's top would pass the rail (the fault's bound is the greatest that fits).
 * TSIDE_NOT_MODELLED: on a core so near 0 that the turns are no finite number; down a wall so level that
 * more than 10 km of curtain would hang.
 * Accuracy: as tside_travel_at tells of it. Where what holds a free chord changes is found to 1e-12 of
 * the wraps: what other functions find to be greatest along the travel, and is so there, may be off by
 * what the bar moves in that besides.
 * Source: derivation, plane geometry and conserved length of curtain.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_travel_make(const tside_line *line,
                                                         const tside_curtain *curtain,
                                                         const tside_roll *roll,
                                                         const tside_stops *stops,
                                                         tside_travel *travel, tside_fault *fault);

/*
 * Where the bar is after some turns since shut.
 * travel: made by tside_travel_make.
 * turns: turn, from 0 to those at open.
 * position: receives the place.
 * TSIDE_OUT_OF_BOUNDS: beyond the travel; the bound is its end.
 * Accuracy: lengths to 1e-15 of the sum that tside_line_at names and of the curtain, hanging and
 * wound; wraps, turns and slope to that over the radius of the roll.
 * Source: derivation, as tside_travel_make.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_travel_at(const tside_travel *travel, double turns,
                                                       tside_position *position,
                                                       tside_fault *fault);

/*
 * Where the bar is when the roll's underside is at a height.
 * travel: made by tside_travel_make.
 * underside: m, from that when shut to that when open, above grade.
 * position: receives the place.
 * TSIDE_OUT_OF_BOUNDS: beyond the travel; the bound is its end.
 * Accuracy: as tside_travel_at.
 * Source: derivation, as tside_travel_make.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_travel_to_height(const tside_travel *travel,
                                                              double underside,
                                                              tside_position *position,
                                                              tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
