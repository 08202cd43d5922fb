/* SPDX-License-Identifier: MIT */
/* The crank as the library's own files see it. */
#ifndef TUNNELSIDE_I_CRANK
#define TUNNELSIDE_I_CRANK

#include <tunnelside/crank.h>

/* tside_crank_effort of one that is fitted and passed its check; torque: N m, from 0; drive_turns: from 0. */
tside_cranking tside_i_crank_effort(const tside_crank *crank, double torque, double drive_turns);

#endif
