/* SPDX-License-Identifier: MIT */
/* Tubes as the library's own files see them. */
#ifndef TUNNELSIDE_I_TUBE
#define TUNNELSIDE_I_TUBE

#include <tunnelside/tube.h>

/* Corner radii of a square tube, standard or given. */
void tside_i_square_radii(const tside_square *tube, double *outer, double *inner);

#endif
