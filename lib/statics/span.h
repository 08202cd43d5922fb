/* SPDX-License-Identifier: MIT */
/* A line under pressure, as the library's own files see it. */
#ifndef TUNNELSIDE_I_SPAN
#define TUNNELSIDE_I_SPAN

#include <tunnelside/span.h>

#include "base/field.h"

/* Rows of a structure that says how far a line bellies: what is known of it; and, by its stretch, how it gives. */
extern const char *const tside_i_known_by[2];
#define KNOWN_BY(S, usual) \
    CHOICE(S, by, tside_i_known_by, usual, "what is known of how far it bellies: its sag, or its slack and stretch")
#define BY_SAG(S) APPLIES(S, by, ONLY(TSIDE_BY_SAG))
#define BY_STRETCH(S) APPLIES(S, by, ONLY(TSIDE_BY_STRETCH))
/* clang-format off */
#define GIVE_ROWS(S, most_slack) \
    {OPTIONAL(S, slack, "1", FROM(0), TO(most_slack), "by how much of its span it is longer before it stretches"), BY_STRETCH(S)}, \
    {OPTIONAL(S, stiffness, "N", FROM(1), TO(1e12), "force over stretch: of a rope a maker's load over its stretch there, of film its modulus times thickness, by the metre of its width"), BY_STRETCH(S)}, \
    {OPTIONAL(S, pretension, "N", FROM(0), TO(1e9), "tension before the load came; of film by the metre of its width"), BY_STRETCH(S)}
/* clang-format on */

/* tside_span_belly of a span that passed its table's check; its faults' fields begin in the span. */
tside_status tside_i_span_belly(const tside_span *span, tside_belly *belly, tside_fault *fault);

#endif
