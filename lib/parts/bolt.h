/* SPDX-License-Identifier: MIT */
/* What other tables share of bolts. */
#ifndef TUNNELSIDE_I_BOLT
#define TUNNELSIDE_I_BOLT

#include <tunnelside/bolt.h>

/* Names of choices that more than one table has. */
enum { TSIDE_I_BOLT_SIZES = 9, TSIDE_I_WASHERS = 2 };
extern const char *const tside_i_bolt_sizes[TSIDE_I_BOLT_SIZES], *const tside_i_washers[TSIDE_I_WASHERS];

#endif
