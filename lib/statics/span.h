/* SPDX-License-Identifier: MIT */
/* A line under pressure, as the library's own files see it. */
#ifndef TUNNELSIDE_I_SPAN
#define TUNNELSIDE_I_SPAN

#include <tunnelside/span.h>

/* tside_span_belly of a span that passed its table's check; its faults' fields begin in the span. */
tside_status tside_i_span_belly(const tside_span *span, tside_belly *belly, tside_fault *fault);

#endif
