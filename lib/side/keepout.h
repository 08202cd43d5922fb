/* SPDX-License-Identifier: MIT */
/* Distances from keep-outs to what must miss them. */
#ifndef TUNNELSIDE_KEEPOUT_H
#define TUNNELSIDE_KEEPOUT_H

#include <tunnelside/plan.h>

/* Least distance from a rectangle to a straight line between two points; 0 where they meet. */
double tside_i_rectangle_to_segment(const tside_keep_out *out, double x1, double y1, double x2, double y2);
/*
 * Least distance from a rectangle to what a pipe of some length, hung at (x, y), sweeps between two leans from plumb,
 * both within 90 degrees.
 */
double tside_i_rectangle_to_sweep(const tside_keep_out *out, double x, double y, double length, double least,
                                  double greatest);

#endif
