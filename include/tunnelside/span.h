/* SPDX-License-Identifier: MIT */
/* Any line under pressure: film by the metre of its width, a rope, film where a rail holds it. */
#ifndef TUNNELSIDE_SPAN_H
#define TUNNELSIDE_SPAN_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What is known of how far a line bellies. */
typedef enum tside_span_by {
    TSIDE_BY_SAG,    /* its sag */
    TSIDE_BY_STRETCH /* its slack and how it stretches */
} tside_span_by;

/* A line that spans from one hold to the next; of film all by the metre of its width. */
typedef struct tside_span {
    double chord; /* m, from hold to hold */
    double load;  /* N/m, square to the line */
    tside_span_by by;
    double sag; /* m, in mid span, with TSIDE_BY_SAG */
    int slack_given;
    double slack; /* 1, by which it is longer than the chord before it stretches */
    int stiffness_given;
    double stiffness; /* N, force that would stretch it to twice its length */
    int pretension_given;
    double pretension; /* N, before the load came */
} tside_span;

/* What it comes to. */
typedef struct tside_belly {
    double half_angle; /* rad, from the chord to the line at either hold */
    double radius;     /* m */
    double tension;    /* N, one along the line */
    double sag;        /* m */
    double length;     /* m, along the line, stretched */
    double square;     /* N, of either hold, square to the chord */
    double along;      /* N, of either hold, along the chord */
} tside_belly;

/*
 * How far a line bellies under pressure, and what it pulls with. Pressure stays square to the line,
 * so tension is one along it and its shape an arc.
 *
 * With chord c, load q, half angle b: radius R = c/(2 sin b), tension T = q R, sag (c/2) tan(b/2),
 * length 2 R b; each hold bears q c/2 square to the chord and T cos b along it. By a sag f, b = 2
 * atan(2 f/c). By slack e and stiffness K, b/sin b = (1 + e)(1 + q c/(2 K sin b)); without
 * stiffness it does not stretch. With a pretension P, 1 + e = 1/(1 + P/K).
 *
 * Film's stiffness is its modulus times its thickness, of a rope a maker's load over its stretch
 * there. Warmth is slack: the film's expansion less the frame's, times the rise; of polyethylene
 * about 2e-4 a kelvin.
 * span: every field checked.
 * belly: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a sag above half the chord; neither slack nor stiffness; a pretension without
 * stiffness, or with slack.
 * TSIDE_OUT_OF_REACH: it would belly by more than half its chord; the fault has the greatest slack,
 * or load, that it may have.
 * Limits: taut, T goes to (q^2 c^2 K/24)^(1/3). A rope of fixed load, as handbooks have it, pulls
 * at its ends 1 % more than this at a sag of c/20, 4 % at c/10.
 * Accuracy: to 2e-15, relative, its half angle sought to the last digits; along to 2e-15 of the
 * tension.
 * Source: derivation, equilibrium of an arc; its taut limit is the long membrane of an aircraft
 * structural design manual, 1977, through a public copy.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_span_belly(const tside_span *span, tside_belly *belly,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
