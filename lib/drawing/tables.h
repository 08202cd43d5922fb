/* SPDX-License-Identifier: MIT */
/* Names that the tables of drawings have, for who writes them too. */
#ifndef TUNNELSIDE_I_TABLES
#define TUNNELSIDE_I_TABLES

#include <tunnelside/drawing.h>

/* Of measures, in the order of their codes. */
extern const char *const tside_i_tells[TSIDE_TELLS_COUNT];

#endif
