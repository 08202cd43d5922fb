/* SPDX-License-Identifier: MIT */
/* Ropes as the library's own files see them. */
#ifndef TUNNELSIDE_I_ROPE
#define TUNNELSIDE_I_ROPE

#include <tunnelside/rope.h>

#include "shape/peak.h"

/* Where ropes run: bays along the side; the hooks' line, its length and lean; one leg, its length and slant. */
typedef struct tside_i_strung {
    int zigzag, bays;
    double upper_x, upper_y, pitch, h, lean, leg, slant;
    double unstretched; /* m, of a leg before it stretches */
    double stiffness;   /* N; 0 where the rope does not stretch, or nobody knows */
} tside_i_strung;

/* What a caller calls the places of the hooks, for faults. */
typedef struct tside_i_hook_names {
    const char *upper_x, *upper_y, *lower_x, *lower_y;
} tside_i_hook_names;

/* Of a rope that passed its table's check; its faults' fields begin in the rope. */
tside_status tside_i_rope_check(const tside_rope *rope, tside_fault *fault);

/* Of a rope that passed that. */
void tside_i_rope_string(const tside_rope *rope, double length, tside_i_strung *strung);

/* tside_rope_bears of ropes that are strung. pressure: Pa, or 0: only where and how many they are, the rest is 0. */
tside_status tside_i_rope_bears(const tside_rope *rope, const tside_i_strung *strung, double pressure,
                                tside_roped *roped, tside_fault *fault);

/* tside_rope_over_worst of ropes that are strung. */
tside_status tside_i_rope_over_worst(const tside_i_strung *strung, const tside_i_track *track,
                                     const tside_i_hook_names *names, tside_rope_over *longest,
                                     tside_rope_over *hardest, tside_fault *fault);

/* What the ropes press on the roll with at a spot, N by the metre of bar. */
double tside_i_rope_presses(const tside_i_strung *strung, const tside_i_spot *spot);

/*
 * A rope's leg, or film from one hold to the next, under its load by the metre; name: of what gives, other: of what
 * sets its span, for faults.
 */
tside_status tside_i_give_belly(const tside_give *line, const char *name, const char *other, double span, double load,
                                tside_belly *belly, tside_fault *fault);

/* By how much of its span a line is longer before it stretches; below 0 where it is pulled. */
double tside_i_give_slack(const tside_give *line);

/*
 * The shortest path outboard of a roll of radius r whose axis stands so far along the hooks' line of length h from the
 * upper hook, and so far outboard of it: its length; wrap: receives rad about the roll.
 */
double tside_i_rope_path(double h, double along, double outboard, double r, double *wrap);

#endif
