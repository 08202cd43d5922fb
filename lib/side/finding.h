/* SPDX-License-Identifier: MIT */
/* What is unwise in a plan. */
#ifndef TUNNELSIDE_I_FINDING
#define TUNNELSIDE_I_FINDING

#include "side/ready.h"

/* Lists what is unwise in a finished plan. */
void tside_i_find(const tside_i_setup *setup, const tside_i_hung *drive, const tside_i_hung *free, tside_plan *plan);

#endif
