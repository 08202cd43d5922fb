/* SPDX-License-Identifier: MIT */
/* Air as the library's own files see it. */
#ifndef TUNNELSIDE_I_AIR
#define TUNNELSIDE_I_AIR

#include <tunnelside/air.h>

/* tside_air_through of air that is asked and passed its check; length, opening: m, from 0. */
tside_airing tside_i_air_through(const tside_air *air, double length, double opening);

#endif
