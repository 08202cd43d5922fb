/* SPDX-License-Identifier: MIT */
/* The hand crank: what a person must give, and for how long. */
#ifndef TUNNELSIDE_CRANK_H
#define TUNNELSIDE_CRANK_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_crank_fitted { TSIDE_NO_CRANK, TSIDE_CRANK } tside_crank_fitted;

/* How hard a handle may be to turn. */
typedef enum tside_effort_rule {
    TSIDE_MIL_STD_1472, /* 22 N: a crank's light load, below 100 turns a minute: MIL-STD-1472,
                         * from memory */
    TSIDE_EN_13561,     /* 30 N: crank of an awning, class 1: EN 13561, from memory */
    TSIDE_EFFORT_GIVEN  /* the caller's own */
} tside_effort_rule;

typedef struct tside_crank {
    tside_crank_fitted fitted;
    double ratio;      /* 1, turns of the crank for one of the bar */
    double efficiency; /* 1, of its gears */
    double arm;        /* m, axis to handle */
    double rate;       /* rad/s, at which it is turned */
    tside_effort_rule rule;
    double effort_limit; /* N, at the handle, with TSIDE_EFFORT_GIVEN */
} tside_crank;

typedef struct tside_cranking {
    double effort;      /* N, at the handle, at the worst torque */
    double limit;       /* N */
    double utilisation; /* 1, effort over limit */
    double turns;       /* turn, of the crank from shut to open */
    double time;        /* s, at its rate */
} tside_cranking;

/*
 * What a hand crank asks: effort = T/(ratio efficiency arm), against a limit of the force at its
 * handle; crank turns = drive turns x ratio. A person tires: where the light load is exceeded, or a
 * run takes minutes, a drive is worth its price.
 * crank: every field checked, and fitted.
 * torque: N m, from 0, at the drive.
 * drive_turns: turn, from 0, of the drive from shut to open.
 * cranking: receives the answer.
 * TSIDE_OUT_OF_BOUNDS: a field or argument, or no crank.
 * Accuracy: to 1e-15, relative.
 * Source: derivation, power in and out; the limits by their standards, each from memory: check them
 * before relying on them.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_crank_effort(const tside_crank *crank, double torque,
                                                          double drive_turns,
                                                          tside_cranking *cranking,
                                                          tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
