/* SPDX-License-Identifier: MIT */
/* Plane geometry and travel as the library's own files see them: unchecked, fast. */
#ifndef TUNNELSIDE_GEOMETRY_H
#define TUNNELSIDE_GEOMETRY_H

#include <tunnelside/travel.h>

#include "base/internal.h"

/* A length or a number of turns that a caller got from the library and hands back is not refused for its last digits. */
#define SLACK 1e-9

/* tside_bow_make without checking the frame against its table; the bow is touched on failure too. */
tside_status tside_i_bow_make(const tside_frame *frame, tside_bow *bow, tside_fault *fault);

/* --- paths: chains of straight and circular pieces --- */

/* The point at an arc length of one piece, u from its lower end; the first piece goes on straight below 0. */
tside_bow_point tside_i_piece_at(const tside_piece *piece, double u);
tside_bow_point tside_i_path_at(const tside_path *path, double arc);
/* First arc length at a height; 0 if the path never reaches it, with its top in *top. */
int tside_i_path_at_height(const tside_path *path, double height, double *arc, double *top);
/* First crossing of the half line from (x, y) in direction (cosine, sine); 0 if there is none. */
int tside_i_path_crossing(const tside_path *path, double x, double y, double cosine, double sine, double *distance, double *arc);

/* --- the line --- */

typedef struct tside_i_line_point {
    double x, y, nx, ny; /* place and outboard normal */
} tside_i_line_point;

/* tside_line_make without checking the curtain against its table; the line is touched on failure too. */
tside_status tside_i_line_make(const tside_bow *bow, const tside_curtain *curtain, const char *top, const char *board, tside_line *line, tside_fault *fault);
/* The piece that holds a distance down the line; at a corner the piece below it. */
int tside_i_line_piece(const tside_line *line, double distance);
tside_i_line_point tside_i_line_at(const tside_line_piece *piece, double distance);
double tside_i_line_moment(const tside_line *line, double distance);

/* --- the roll --- */

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

/* --- the travel --- */

/*
 * tside_travel_make without checking its structures against their tables; the travel is touched on failure too. ends_only: nobody asks but where the bar is when shut
 * and open, so that it need not be found out where what holds the chord changes.
 */
tside_status tside_i_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll, const tside_stops *stops, int ends_only,
                                 tside_travel *travel, tside_fault *fault);

/* Where the bar is and how it moves, in the terms of the formulas. */
typedef struct tside_i_spot {
    double wraps;   /* n */
    double r;       /* roll's radius */
    double s;       /* curtain from fixing to roll */
    double length;  /* l, curtain on the bar */
    double x, y;    /* axis */
    double nx, ny;  /* N, the curtain's outboard normal */
    double share;   /* lambda: wraps gained per turn of the bar */
    double swing;   /* s (1 - lambda) where nothing holds the chord, else 0 */
    double vx, vy;  /* the axis's velocity per radian of bar angle */
    int on_line;    /* 1: the curtain lies along the line; 0: it hangs by a straight chord */
    int slack;      /* 1: the roll has tipped over an edge, and nothing lifts it */
} tside_i_spot;

void tside_i_travel_spot(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot);
void tside_i_travel_at(const tside_travel *travel, double progress, tside_i_spot *spot);
/* Bar angle since shut, in radians: wraps wound on plus the curtain's change of heading. */
double tside_i_travel_angle(const tside_travel *travel, const tside_i_spot *spot);
/* Progress where a stretch ends. */
static inline double tside_i_stretch_end(const tside_travel *travel, int stretch)
{
    return stretch + 1 < travel->stretches ? travel->stretch[stretch + 1].from : travel->end;
}
/* The stretch that holds a progress. */
int tside_i_travel_stretch(const tside_travel *travel, double progress);
/* Progress after some turns of the bar since shut, and turns from progress. */
double tside_i_travel_progress(const tside_travel *travel, double turns);
double tside_i_travel_turns(const tside_travel *travel, double progress);
void tside_i_travel_position(const tside_travel *travel, const tside_i_spot *spot, tside_position *position);

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

/* The root in [low, high] of a rising function; the end nearer to it where there is none. */
typedef double tside_i_function(double x, const void *context);
double tside_i_rising_root(tside_i_function *function, const void *context, double low, double high);

#endif
