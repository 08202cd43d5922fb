/* SPDX-License-Identifier: MIT */
/* How far apart ropes may stand, as the library's own files see it. */
#ifndef TUNNELSIDE_I_PITCH
#define TUNNELSIDE_I_PITCH

#include <tunnelside/pitch.h>

/*
 * tside_pitch_most of a rope and a bay that are known to be well at some pitch. Returns 0 where a limit is passed
 * however near to each other the ropes are, and then pitch and rule are left as they were.
 */
int tside_i_pitch_most(const tside_rope *rope, const tside_bay *bay, double *pitch, tside_pitch_rule *rule);

#endif
