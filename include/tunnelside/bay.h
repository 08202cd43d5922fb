/* SPDX-License-Identifier: MIT */
/* From one rope to the next: what wind asks of bar, rail and screws where ropes hold the curtain. */
#ifndef TUNNELSIDE_BAY_H
#define TUNNELSIDE_BAY_H

#include <tunnelside/material.h>
#include <tunnelside/tube.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Whether the bar, shut, can rise as the curtain bellies. */
typedef enum tside_bar_foot { TSIDE_BAR_RISES, TSIDE_BAR_HELD_DOWN } tside_bar_foot;

/* A bay between two ropes, the curtain shut. */
typedef struct tside_bay {
    double pressure;         /* Pa, net, outward */
    double pitch;            /* m, from rope to rope */
    double overhang;         /* m, bar beyond the last rope */
    double hanging;          /* m, curtain from rail to roll */
    double roll;             /* m, its diameter */
    tside_round tube;        /* the bar */
    tside_material material; /* of the bar */
    tside_bar_foot foot;
    double weight;         /* N/m, of all that hangs from the rail, with TSIDE_BAR_RISES */
    double film_stiffness; /* N/m, modulus times thickness, with TSIDE_BAR_HELD_DOWN */
    double screw_spacing;  /* m, of the rail's screws */
} tside_bay;

/* What it asks. */
typedef struct tside_bay_load {
    double bar;         /* N/m, on the bar, outward */
    double moment;      /* N m, in the bar, the greater of a bay's and the overhang's */
    double stress;      /* Pa, of that */
    double deflection;  /* m, of the bar in mid bay */
    double rail_square; /* N/m, on the rail, outward */
    double rail_along;  /* N/m, on the rail, down the film */
    double screw;       /* N, on each of the rail's screws */
    int limit_given;
    double limit; /* Pa, yield over its safety factor */
    int utilisation_given;
    double utilisation; /* 1, stress over that */
} tside_bay_load;

/*
 * What wind asks of bar, rail and the rail's screws between two ropes, the curtain shut. For
 * choosing parts, not a design.
 *
 * Film hands half its pressure to the rail and half to the bar, whatever ropes do: bar p (s/2 + D),
 * rail p s/2 square to it. The bar spans simply from rope to rope, w a^2/8 and 5 w a^4/(384 E I),
 * and stands out beyond the last, w c^2/2. Along the film the rail bears what hangs from it, or,
 * the bar held down, the film's pull, T cos b of tside_span_belly with the chord s.
 * bay: every field checked.
 * load: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a grade of another metal, or a bar that tside_round_section refuses.
 * TSIDE_OUT_OF_REACH: held down, the film would belly by more than half its height.
 * Limits: shut; inward wind presses the film on the bows, which span it.
 * Accuracy: to 4e-15, relative; held down, rail_along to 4e-15 of the film's tension.
 * Source: derivation, that of tside_span_belly; standard beam tables. That neither ropes nor film
 * across the bay relieve the bar, and that its joints give, so that each bay spans by itself, is
 * this library's choice, on the safe side: it is above every pattern of up to six loaded spans of a
 * bar without joints.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_bay_bears(const tside_bay *bay, tside_bay_load *load,
                                                       tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
