/* SPDX-License-Identifier: MIT */
/* What is left of an arc as it becomes straight. */
#ifndef TUNNELSIDE_I_ARC
#define TUNNELSIDE_I_ARC

#include <math.h>

/* b - sin b, b from 0; the difference of a taut line's has no digit left, its series has all. */
static inline double tside_i_arc_less_chord(double b)
{
    const double x = b * b;
    if (b > 0.5)
        return b - sin(b);
    return b * x / 6 * (1 - x / 20 * (1 - x / 42 * (1 - x / 72 * (1 - x / 110 * (1 - x / 156)))));
}

#endif
