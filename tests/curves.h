/* SPDX-License-Identifier: MIT */
/*
 * Sides with every kind of bow, seeded and random, and their frame's outline as a fine polyline, found from its
 * measures by code that shares nothing with the library.
 */
#ifndef TUNNELSIDE_CURVES_H
#define TUNNELSIDE_CURVES_H

#include <check.h>
#include <tunnelside.h>

#include "expect.h"

/* --- sides --- */

enum { SIDES = 1000 };

typedef enum kind { HALF_CIRCLE, POINTED, FLAT_KINK, FLAT_SHOULDER, ARC_OUT, ARC_HOLLOW, STRAIGHT, KINDS } kind;

/* Its number decides everything; number % KINDS is its kind. */
typedef struct curved {
    int number;
    kind kind;
    /* asked */
    tside_frame frame;
    tside_curtain curtain;
    tside_stops stops;
    tside_roll roll;
    tside_load load;
    tside_guide guide;
    tside_collar collar;
    double eye_out, eye_rise; /* m, of the eye from the fixing */
    /* made by the library */
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_hang hang;
    double open; /* turn, of the bar since shut */
    int hung;    /* the guide hangs: the eye clears it, and its foot the ground */
    int tips;    /* the roll tips over the baseboard */
} curved;

/* Throws and makes a side; the status is OK, or the library's refusal. */
tside_status curved_side(int number, curved *c, tside_fault *fault);
/* The same with measures that nobody builds. */
tside_status curved_wild(int number, curved *c, tside_fault *fault);
/*
 * A plumb leg of 2.5 m with a curtain 30 mm off it, and a board whose edge, 1.4 m below the hip, stands that far
 * outboard of the fixing; a bar of 50 mm, a curtain of no thickness. Not yet made.
 */
curved curved_boarded(double outboard_of_fixing);
/* Everything that follows from what is asked. */
tside_status curved_make(curved *c, tside_fault *fault);

tside_frame plain_frame(double width, double leg, double peak);
tside_frame points_frame(double foot_x, double between_x, double between_height, double peak_x, double peak_height);

/* The sides that can be made, in one test: FOR_CURVED(name) { ... } gets each of the thousand. */
#define FOR_CURVED(name) FOR_MORE_CURVED(name, SIDES)
#define FOR_MORE_CURVED(name, sides) \
    static void name##_of(curved *c); \
    START_TEST(name) \
    { \
        begin_noting(); \
        for (int each = 0; each < (sides); each++) { \
            curved thrown; \
            if (curved_side(each, &thrown, NULL) == TSIDE_OK) \
                name##_of(&thrown); \
        } \
        tell_worst(#name); \
    } \
    END_TEST \
    static void name##_of(curved *c)

/* Keeps the greatest disagreement within a test; what was noted is told at its end. */
void begin_noting(void);
void note(const curved *c, double off);
int tell_worst(const char *test);

/* --- polylines --- */

enum { POINTS = 12000 };
extern const double sagitta; /* m, of a polyline's steps, at most */
extern const double deep;    /* m, how far below its foot a bow is followed, straight on */

typedef struct polyline {
    int count;
    double x[POINTS], y[POINTS];
} polyline;

void add_point(polyline *p, double x, double y);
/* The frame moved outboard of its centreline, from far below the foot up to a height, as far as the bow reaches. */
void trace(const tside_frame *f, double outboard, double top, polyline *p);
/*
 * The first part of a polyline, which rises, that reaches a height; how far outboard it is there; and how far off that
 * may be.
 */
int part_at(const polyline *p, double y);
double polyline_x(const polyline *p, double y);
double grain(const polyline *p, double y);

/* What a curtain hangs and a roll bears on: the face, the fixing, and the baseboard's edge. */
typedef struct outside {
    polyline face;
    double fixing_x, fixing_y;
    int board;
    double board_x, board_y;
    double grain; /* m, how far off these may be */
} outside;

/* Kept until the next is asked for. */
const outside *outside_of(const curved *c);

#endif
