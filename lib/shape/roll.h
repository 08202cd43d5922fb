/* SPDX-License-Identifier: MIT */
/* The roll's formulas: area is conserved, te l = pi (D^2 - D0^2)/4. */
#ifndef TUNNELSIDE_I_ROLL
#define TUNNELSIDE_I_ROLL

#include <math.h>

#include <tunnelside/roll.h>

#include "base/units.h"

#define TSIDE_I_LONGEST 1e4 /* m, of curtain: what is counted along it is an int */

static inline double tside_i_roll_te(const tside_roll *roll)
{
    return roll->packing * roll->thickness;
}

static inline double tside_i_roll_length(const tside_roll *roll, double wraps)
{
    return TSIDE_PI * wraps * (roll->core + tside_i_roll_te(roll) * wraps);
}

/* The exact inverse of the length, without cancellation and valid at zero thickness. */
static inline double tside_i_roll_wraps(const tside_roll *roll, double l)
{
    double q = l / TSIDE_PI;
    return 2 * q / (roll->core + sqrt(roll->core * roll->core + 4 * tside_i_roll_te(roll) * q));
}

static inline double tside_i_roll_diameter(const tside_roll *roll, double wraps)
{
    return roll->core + 2 * tside_i_roll_te(roll) * wraps;
}

/* te/2 pi: by how much the radius grows with each radian wound on. */
static inline double tside_i_roll_growth(const tside_roll *roll)
{
    return tside_i_roll_te(roll) / (2 * TSIDE_PI);
}

#endif
