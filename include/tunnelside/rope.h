/* SPDX-License-Identifier: MIT */
/* Ropes over the curtain: what they bear in wind, and how the roll passes under them. */
#ifndef TUNNELSIDE_ROPE_H
#define TUNNELSIDE_ROPE_H

#include <tunnelside/span.h>
#include <tunnelside/travel.h>

#ifdef __cplusplus
extern "C" {
#endif

/* How a rope, or the film between ropes, gives under load; lengths by its span, whatever that is. */
typedef struct tside_give {
    tside_span_by by;
    int slack_given, stiffness_given, pretension_given;
    double sag;       /* 1, in mid span, over the span, with TSIDE_BY_SAG */
    double slack;     /* 1, by which it is longer than its span before it stretches */
    double stiffness; /* N, force that would stretch it to twice its length; of film by the metre of
                        * its width */
    double pretension; /* N, before the load came; of film by the metre of its width */
} tside_give;

typedef enum tside_rope_run {
    TSIDE_ROPES_STRAIGHT, /* from each upper hook to the lower one below it */
    TSIDE_ROPE_ZIGZAG     /* one rope, to and fro between rows of hooks half a pitch apart */
} tside_rope_run;

/* Ropes over a side, from a row of upper hooks to a row of lower ones. */
typedef struct tside_rope {
    tside_rope_run run;
    double upper_x, upper_y; /* m, upper hooks, from the tunnel's centreline and above grade */
    double lower_x, lower_y; /* m, lower hooks, the anchors, likewise */
    double pitch;            /* m, at most, from hook to hook of a row */
    tside_give line;         /* the rope */
    tside_give film;         /* the film from rope to rope */
    double ends;             /* m, of rope for tying, at each of its ends */
    int rope_limit_given, hook_limit_given, anchor_limit_given, film_limit_given;
    double rope_limit;   /* N, allowable tension, with its knots and its age */
    double hook_limit;   /* N, allowable pull on an upper hook */
    double anchor_limit; /* N, allowable pull on an anchor */
    double film_limit;   /* N/m, allowable tension of the film */
} tside_rope;

/*
 * What ropes bear under pressure. Forces are on hook and anchor, outboard and up; where a zigzag's
 * row ends, one leg pulls, and along the house too.
 */
typedef struct tside_roped {
    int ropes;                    /* how many there are */
    int upper_hooks, lower_hooks; /* how many there are */
    double pitch;                 /* m, from hook to hook of a row */
    double leg;                   /* m, from hook to hook along a rope */
    double slant;                 /* rad, of a leg from plumb, seen square to the side */
    double lean;                  /* rad, of the hooks' line from plumb, foot outboard positive */
    double load;                  /* N/m, on a leg, square to it */
    double tension;               /* N, of the rope */
    double sag;                   /* m, of the rope */
    double film_tension;          /* N/m */
    double film_sag;              /* m, from rope to rope */
    double billow;                /* m, of rope and film */
    double hook_out, hook_up;     /* N, on an upper hook */
    double anchor_out, anchor_up; /* N, on an anchor */
    double pull;                  /* N, on either, whatever its direction */
    double end_along;             /* N, along the house, where a zigzag's row ends */
    double edge_pull;             /* N/m, by the metre of height, of the film on its fixed ends */
    double slack;                 /* 1, by which a leg is longer than its span before it stretches;
                                   * below 0 where it is pulled */
    double rope_length;           /* m, of all ropes, with what ties them */
    int rope_utilisation_given, hook_utilisation_given, anchor_utilisation_given,
        film_utilisation_given;
    double rope_utilisation;   /* 1, tension over its limit */
    double hook_utilisation;   /* 1, pull over its limit */
    double anchor_utilisation; /* 1, pull over its limit */
    double film_utilisation;   /* 1, tension over its limit */
} tside_roped;

/* A rope over the roll. */
typedef struct tside_rope_over {
    double turns;    /* turn, of the bar since shut */
    double path;     /* m, from hook to hook over the roll, in the cross-section */
    double wrap;     /* rad, of the rope about the roll */
    double slack;    /* 1, by which a leg must be longer than its span to pass over the roll */
    int stopped;     /* 1 where a rope that does not stretch is too short, and stops the roll */
    double tension;  /* N, of the rope; 0 where it is slack, or stopped */
    double pressure; /* N/m, of the ropes on the roll, by the metre of bar */
} tside_rope_over;

/*
 * What ropes and hooks bear under a pressure that presses the curtain outboard, the film as though
 * it had no bar, and ropes as though film held nothing. All is static: a curtain that flaps pulls
 * more. Ropes hold against outward pressure alone. A free edge of film holds nothing: the last rope
 * stands within half a pitch of it.
 *
 * With bays N = length/pitch, rounded up, a = length/N, h and d the hooks' line's length and lean:
 * straight ropes bear w = p a by their metre, a zigzag's legs, slanted by g, w = (p a/2) cos g; film
 * spans a. Each leg is a line under pressure, with tension T and half angle b. A hook bears n = w
 * leg/2 of each of its legs square to the hooks' plane and T cos b cos g along it: out = n cos d + A
 * sin d, up = n sin d - A cos d above, and with A turned below.
 * rope: every field checked, the upper hooks above the lower ones.
 * length: m, above 0, of the side along the house, to 1000 km.
 * pressure: Pa, above 0, net and outboard.
 * roped: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field, length, or pressure.
 * TSIDE_CONTRADICTS: upper hooks not above the lower ones; of rope or film neither slack nor
 * stiffness, or a pretension without stiffness or with slack.
 * TSIDE_OUT_OF_REACH: rope or film would belly by more than half its span.
 * Accuracy: to 4e-15, relative; what hook and anchor bear, and along the house, to 4e-15 of the
 * tension of their legs, edge_pull of the film's; slack and lean to 4e-15.
 * Source: derivation, equilibrium; what carries what is this library's choice, above a net of least
 * energy but for 0.2 %.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_rope_bears(const tside_rope *rope, double length,
                                                        double pressure, tside_roped *roped,
                                                        tside_fault *fault);

/*
 * A rope over the roll after some turns: its path, the slack that it needs, and what it presses
 * with. The path is the shortest from hook to hook outboard of the roll: two tangents and an arc,
 * or straight where the roll stays behind it. A rope that stretches has tension K (leg over the
 * roll/its length - 1), and the ropes press with 2 T (path/leg over the roll) sin(wrap/2) each.
 * rope: every field checked, the upper hooks above the lower ones.
 * length: m, above 0, of the side along the house, to 1000 km.
 * travel: made by tside_travel_make.
 * turns: turn, within the travel, of the bar.
 * over: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field, length, or turns beyond the travel.
 * TSIDE_CONTRADICTS: upper hooks not above the lower ones.
 * TSIDE_OUT_OF_REACH: a hook lies within the roll, or the bar's axis is not between the hooks.
 * Accuracy: the path to 1e-15 of the length of which tside_travel_at's are a share and the hooks'
 * distance from where things are measured from; wrap to that over the roll's radius and over each
 * tangent's length; slack to it over a leg, and 4e-16; the tension to as much of the stiffness; the
 * pressure to what tension and wrap make of that.
 * Source: derivation, plane geometry.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_rope_over_at(const tside_rope *rope, double length,
                                                          const tside_travel *travel, double turns,
                                                          tside_rope_over *over,
                                                          tside_fault *fault);

/*
 * The same where along the travel the path is longest, and where the ropes press hardest.
 * rope: every field checked, the upper hooks above the lower ones.
 * length: m, above 0, of the side along the house, to 1000 km.
 * travel: made by tside_travel_make.
 * longest: receives it where the rope needs most slack.
 * hardest: receives it where the ropes press hardest on the roll.
 * TSIDE_OUT_OF_BOUNDS: a field, or length.
 * TSIDE_CONTRADICTS: upper hooks not above the lower ones.
 * TSIDE_OUT_OF_REACH: somewhere along the travel, as tside_rope_over_at.
 * Accuracy: the greatest path and pressure as tside_rope_over_at; their places, where they hardly
 * change, to about half a double's digits, and the rest as tside_rope_over_at there.
 * Source: as tside_rope_over_at.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_rope_over_worst(const tside_rope *rope, double length,
                                                             const tside_travel *travel,
                                                             tside_rope_over *longest,
                                                             tside_rope_over *hardest,
                                                             tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
