/* SPDX-License-Identifier: MIT */
/* Greatest and least values along a travel. */
#ifndef TUNNELSIDE_I_PEAK
#define TUNNELSIDE_I_PEAK

#include "shape/spot.h"

/*
 * A travel with the spots from which every search along it sets out, sampled once, however many are made: numbered
 * stretch by stretch from the upper end. Few sides have more spots than are kept, which is how much stack is spent on
 * them; those beyond are made anew by each search.
 */
enum { TSIDE_I_STEPS = 6, TSIDE_I_KEPT = 24 };
typedef struct tside_i_track {
    const tside_travel *travel;
    tside_i_spot shut, open, beside_shut, beside_open;            /* beside: just inward */
    unsigned char first[TSIDE_STRETCHES], steps[TSIDE_STRETCHES]; /* a stretch's first sample, how many follow it */
    tside_i_spot spot[TSIDE_I_KEPT];
} tside_i_track;

/* The travel must outlive the track. */
void tside_i_track_make(const tside_travel *travel, tside_i_track *track);

/*
 * Quantities that vary along the travel, read at a spot: as many as are sought at once, of which one may be followed by
 * its slope.
 */
enum { TSIDE_I_VALUES = 4 };
typedef void tside_i_quantities(const tside_i_spot *spot, const void *context, double value[TSIDE_I_VALUES]);

/*
 * A greatest or least value, and where: the stretch, the progress in it, and the sample if it is one, else NULL. A
 * least value is kept with its sign changed.
 */
typedef struct tside_i_peak {
    double value, place;
    int stretch;
    const tside_i_spot *sample;
} tside_i_peak;

/*
 * One quantity of which the greatest value is sought, and the least too if asked. over_nought: a greatest value below 0
 * is not asked for, and comes as 0. sloped: the value after its own is how it changes with the bar's angle, times
 * whatever is above 0; where it is 0 nobody knows.
 */
typedef struct tside_i_sought {
    int least_too, over_nought, sloped;
    tside_i_peak greatest, least;
} tside_i_sought;

/* Extreme values of the first quantities over the closed travel, both one-sided values counted where stretches meet. */
void tside_i_track_seek(const tside_i_track *track, tside_i_quantities *quantities, const void *context,
                        tside_i_sought *sought, int count);

/* The spot of a greatest or least value: a sample, or made in the room given. */
const tside_i_spot *tside_i_peak_spot(const tside_i_track *track, const tside_i_peak *peak, tside_i_spot *room);

/* The greatest value of the first quantity alone, and where it is. */
double tside_i_track_greatest(const tside_i_track *track, tside_i_quantities *quantities, const void *context,
                              tside_i_spot *where);

#endif
