/* SPDX-License-Identifier: MIT */
/* What every paper says of a side and its ends, and whence it measures there. */
#ifndef COMMON_ENDS_H
#define COMMON_ENDS_H

#include "job.h"

const char *end_name(int end); /* "drive's end", "free end" */
int on_extender(const planned *side, int end);
int stands(const planned *side, int end);         /* a guide fixed at its foot */
tside_hand hand_at(const planned *side, int end); /* as seen from outside that end's own wall */
const char *hand_name(tside_hand hand);
/* Adds "right, seen from outside this wall; the bar then opens anticlockwise". */
void add_hand(text *words, const planned *side, int end);
/* What the file calls the side. */
const char *side_name(const planned *side);
/*
 * The face of the end bow at hip height, outboard of the tunnel's centreline: the datum for what is measured outboard.
 */
double face_at_hip(const planned *side);
/* The hip above the ground at an end. */
double hip_above_ground(const planned *side, int end);
/* The line of the take-off with this code, at this place; NULL where there is none. */
const tside_item *item_of(const planned *side, tside_item_code code, tside_item_at at);
tside_item_at place_of_end(int end);
int end_of_place(tside_item_at at);

#endif
