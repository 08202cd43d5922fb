/* SPDX-License-Identifier: MIT */
/* How far apart ropes may stand. */
#ifndef TUNNELSIDE_PITCH_H
#define TUNNELSIDE_PITCH_H

#include <tunnelside/bay.h>
#include <tunnelside/rope.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What keeps ropes from standing farther apart. */
typedef enum tside_pitch_rule {
    TSIDE_PITCH_BY_ROPE,   /* the rope's tension */
    TSIDE_PITCH_BY_HOOK,   /* the pull on an upper hook */
    TSIDE_PITCH_BY_ANCHOR, /* the pull on an anchor */
    TSIDE_PITCH_BY_FILM,   /* the film's tension */
    TSIDE_PITCH_BY_BAR,    /* the bar's bending */
    TSIDE_PITCH_BY_NOTHING /* no limit that is given is passed up to 6 m */
} tside_pitch_rule;

/*
 * The greatest pitch of ropes at which rope, hooks, anchors, film and bar keep to their limits,
 * and which of them rules. A limit that is not given, and a bar of unknown grade, rule nothing; so
 * it is no more than the limits given.
 * rope: every field checked, the upper hooks above the lower ones; its own pitch counts for
 * nothing.
 * bay: every field checked; its own pitch counts for nothing, its pressure presses on all, and its
 * overhang is beyond the last upper hook: a zigzag's last anchor stands half a pitch farther in.
 * pitch: receives m, up to 6.
 * rule: receives what rules.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: as tside_rope_bears and tside_bay_bears.
 * TSIDE_OUT_OF_REACH: as tside_bay_bears; or a limit is passed even with ropes 0.05 m apart.
 * Accuracy: to 1e-12 m.
 * Source: as tside_rope_bears and tside_bay_bears, whose shares rise with the pitch; the 6 m are
 * this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_pitch_most(const tside_rope *rope,
                                                        const tside_bay *bay, double *pitch,
                                                        tside_pitch_rule *rule, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
