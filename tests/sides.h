/* SPDX-License-Identifier: MIT */
/*
 * Sides to test with, seeded and random or plain, and a model of how their bar travels that is written apart from the
 * library: it shares no code and no closed form with it, so that either can convict the other.
 */
#ifndef TUNNELSIDE_SIDES_H
#define TUNNELSIDE_SIDES_H

#include <tunnelside/extender.h>
#include <tunnelside/lift.h>

#include "expect.h"

/* --- sides --- */

/*
 * How the wall stands. A corner is where, on the way up, the roll leaves the wall and its curtain hangs plumb from
 * there on.
 */
typedef enum wall {
    PLUMB_WALL,
    INWARD_WALL,  /* leans inboard going down: the curtain hangs plumb all the same */
    TIGHT_WALL,   /* leans outboard, without a standoff */
    LEANING_WALL, /* leans outboard, with a standoff */
    CORNER_WALL,  /* so little that the corner lies amid the travel */
    WALLS
} wall;

typedef enum eye { BEST_EYE, OFFSET_EYE, HIP_EYE, EYES } eye;

typedef struct side {
    int number;
    wall wall;
    eye eye;
    /* asked */
    tside_frame frame;
    tside_curtain curtain;
    tside_roll roll;
    tside_stops stops;
    tside_guide guide;
    tside_collar collar;
    tside_load load;
    double eye_x, eye_y;
    /* made by the library */
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_hang hang;
    /* found apart from it */
    double slope;              /* rad, of the wall from plumb; 0 where it leans inboard going down */
    double fixing_x, fixing_y; /* m */
    double gap;                /* m, fixing to wall's face, square to it */
    double hanging;            /* m, curtain from fixing to roll when shut */
    double shut, corner, open; /* turn, wraps on the bar; where there is no corner it is at shut, or at open */
    double slope_shut;         /* rad, of the curtain from plumb when shut */
} side;

/* A plain plumb side, 2 m to the hip, with usual values, its guide on an eye placed best. */
side side_plain(void);
/* A random side; its number decides everything: number % WALLS is its wall, number / WALLS % EYES its eye. */
side side_random(int number);
/* Everything that follows from what is asked; the test fails if the library refuses. */
void side_make(side *s);
/* The library's travel alone. */
tside_status side_travel(side *s, tside_fault *fault);
/* The same side with all lengths multiplied, not yet made. Forces and masses stay. */
side side_scaled(const side *s, double factor);
/* The same side moved: outboard, and up, not yet made. */
side side_moved(const side *s, double outboard, double up);

/* --- the model apart --- */

/* Where the bar is. */
typedef struct place {
    double wraps, radius, chord; /* chord: m, curtain from fixing to roll */
    double slope;                /* rad, of the chord from plumb */
    double x, y;                 /* m, axis */
    double turns;                /* turn, of the bar since shut */
} place;

enum { HANGS, BEARS };

/* The roll bearing on the wall, or hanging plumb, also a little beyond where it really does. */
place side_place_as(const side *s, int how, double wraps);
/* As it really is. */
place side_place(const side *s, double wraps);
/* Smooth parts of the travel, in order: how many, and the wraps between which the k-th lies. */
int side_parts(const side *s);
int side_part(const side *s, int k, double *from, double *to);
/* The wraps after some turns. */
double side_wraps(const side *s, double turns);
/*
 * phi = atan2(xa - xe, ye - ya) + asin(o/R): the lean of the guide on the side's eye, with that moved outboard by some
 * metres.
 */
double side_lean(const side *s, const place *p, double moved);

/*
 * Potential energy, from many small pieces: hanging curtain, bar with what is wound on it, what is fixed to its end.
 * With the guide: its pipe too, and what rides on it leans about the bar by its offset, which is taken as constant.
 */
double side_energy(const side *s, const place *p, int guide);
/*
 * Torque that lifts, dE/d(bar angle), and what the drive must give, by differences of the model alone. how: HANGS or
 * BEARS.
 */
double side_lift(const side *s, int how, double wraps);
double side_lean_rate(const side *s, int how, double wraps);
double side_drive(const side *s, int how, double wraps);

/* --- checking --- */

#endif
