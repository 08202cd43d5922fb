/* SPDX-License-Identifier: MIT */
/* A roll on a free chord, and what it bears on. */
#ifndef TUNNELSIDE_I_CHORD
#define TUNNELSIDE_I_CHORD

#include <math.h>

#include "shape/curtain.h"

/* Where the bar is and how it moves, in the terms of the formulas. */
typedef struct tside_i_spot {
    double wraps;  /* n */
    double r;      /* roll's radius */
    double s;      /* curtain from fixing to roll */
    double length; /* l, curtain on the bar */
    double x, y;   /* axis */
    double nx, ny; /* N, the curtain's outboard normal */
    double share;  /* lambda: wraps gained per turn of the bar */
    double swing;  /* s (1 - lambda) where nothing holds the chord, else 0 */
    double vx, vy; /* the axis's velocity per radian of bar angle */
    int on_line;   /* 1: the curtain lies along the line; 0: it hangs by a straight chord */
    int slack;     /* 1: the roll has tipped over an edge, and nothing lifts it */
} tside_i_spot;

/* The chord that a roll has which bears on an obstacle, or on its continuation; 0 where it does not reach it. */
int tside_i_chord_on(const tside_line *line, const tside_obstacle *on, tside_i_spot *spot);
/*
 * What the chord needs to clear all obstacles: the one that pushes it farthest from plumb, or NULL where it hangs
 * plumb. Sets the chord's normal alone.
 */
const tside_obstacle *tside_i_chord_holder(const tside_line *line, tside_i_spot *spot);
/* How the constraint of bearing turns the chord. growth: te/2 pi. */
void tside_i_chord_swing(const tside_obstacle *on, double growth, tside_i_spot *spot);
void tside_i_chord_plumb(const tside_line *line, tside_i_spot *spot);
/* Hangs the chord as the obstacles make it. */
void tside_i_chord_settle(const tside_line *line, double growth, tside_i_spot *spot);

/* The hanging curtain from plumb. */
static inline double tside_i_chord_slope(const tside_i_spot *spot)
{
    return spot->ny != 0 ? atan2(spot->ny, spot->nx) : 0;
}

#endif
