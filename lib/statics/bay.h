/* SPDX-License-Identifier: MIT */
/* A bay between two ropes, as the library's own files see it. */
#ifndef TUNNELSIDE_I_BAY
#define TUNNELSIDE_I_BAY

#include <tunnelside/bay.h>

/* tside_bay_bears of a bay that passed its table's check; its faults' fields begin in the bay. */
tside_status tside_i_bay_bears(const tside_bay *bay, tside_bay_load *load, tside_fault *fault);

#endif
