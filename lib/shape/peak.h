/* SPDX-License-Identifier: MIT */
/* Greatest and least values along a travel. */
#ifndef TUNNELSIDE_I_PEAK
#define TUNNELSIDE_I_PEAK

#include "shape/spot.h"

/* A quantity that varies along the travel, read at a spot. */
typedef double tside_i_quantity(const tside_i_spot *spot, const void *context);

/* A greatest or least value, and where: the stretch, and the progress in it. A least value is kept with its sign changed. */
typedef struct tside_i_peak {
    double value, place;
    int stretch;
} tside_i_peak;

/* One quantity of which the greatest value is sought, and the least too if asked. */
typedef struct tside_i_sought {
    tside_i_quantity *quantity;
    const void *context;
    int least_too;
    tside_i_peak greatest, least;
} tside_i_sought;

enum { TSIDE_I_SOUGHT = 4 }; /* at most in one search */

/* Extreme values over the closed travel, both one-sided values counted where stretches meet: several quantities for the price of little more than one. */
void tside_i_travel_seek(const tside_travel *travel, tside_i_sought *sought, int count);

/* The greatest value alone, and where it is. */
double tside_i_travel_greatest(const tside_travel *travel, tside_i_quantity *quantity, const void *context, tside_i_spot *where);

#endif
