/* SPDX-License-Identifier: MIT */
/* Ropes as the library's own files see them. */
#ifndef TUNNELSIDE_I_ROPE
#define TUNNELSIDE_I_ROPE

#include <tunnelside/rope.h>

#include "shape/peak.h"

/* tside_rope_bears of a rope that passed its table's check; its faults' fields begin in the rope. pressure: Pa, above
 * 0. */
tside_status tside_i_rope_bears(const tside_rope *rope, double length, double pressure, tside_roped *roped,
                                tside_fault *fault);

/* tside_rope_over_worst of a rope that passed its table's check; its faults' fields begin in the rope. */
tside_status tside_i_rope_over_worst(const tside_rope *rope, double length, const tside_i_track *track,
                                     tside_rope_over *longest, tside_rope_over *hardest, tside_fault *fault);

/*
 * The shortest path outboard of a roll of radius r whose axis stands so far along the hooks' line of length h from the
 * upper hook, and so far outboard of it: its length; wrap: receives rad about the roll.
 */
double tside_i_rope_path(double h, double along, double outboard, double r, double *wrap);

#endif
