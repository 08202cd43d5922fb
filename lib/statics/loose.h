/* SPDX-License-Identifier: MIT */
/* A loose curtain, as the library's own files see it. */
#ifndef TUNNELSIDE_I_LOOSE
#define TUNNELSIDE_I_LOOSE

#include <tunnelside/loose.h>

/* tside_loose_limits of one that passed its check. */
tside_loosening tside_i_loose_limits(const tside_loose *loose);
/* tside_loose_blown of one that passed its check; pressure: Pa, from 0 to where it flies. */
tside_blown tside_i_loose_blown(const tside_loose *loose, double pressure);

#endif
