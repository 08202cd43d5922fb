/* SPDX-License-Identifier: MIT */
/* Tubes as the library's own files see them. */
#ifndef TUNNELSIDE_I_TUBE
#define TUNNELSIDE_I_TUBE

#include <tunnelside/tube.h>

/* Sections of tubes that passed their tables' checks, of a density above 0: only what contradicts itself is refused. */
tside_status tside_i_round_section(const tside_round *tube, double density, tside_section *section, tside_fault *fault);
tside_status tside_i_square_section(const tside_square *tube, double density, tside_section *section,
                                    tside_fault *fault);

/* Corner radii of a square tube, standard or given. */
void tside_i_square_radii(const tside_square *tube, double *outer, double *inner);

#endif
