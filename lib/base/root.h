/* SPDX-License-Identifier: MIT */
/* Plain roots. */
#ifndef TUNNELSIDE_I_ROOT
#define TUNNELSIDE_I_ROOT

/* The root in [low, high] of a rising function; the end nearer to it where there is none. */
typedef double tside_i_function(double x, const void *context);
double tside_i_rising_root(tside_i_function *function, const void *context, double low, double high);

#endif
