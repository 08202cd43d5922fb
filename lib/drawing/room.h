/* SPDX-License-Identifier: MIT */
/* What of a drawing has its place already, and what a text or a line that seeks one would meet. */
#ifndef TUNNELSIDE_I_ROOM
#define TUNNELSIDE_I_ROOM

#include "drawing/paper.h"

/* m on paper */
#define TSIDE_I_DESCENT 1.2e-3 /* of letters and slashes, below a text's foot */
#define TSIDE_I_ASCENT 4.2e-3  /* above it */
#define TSIDE_I_BESIDE 0.8e-3  /* about a text, left and right of it */

/*
 * A leader's way from its point: to its text's nearest place and from one that is tried to the next, in parts of a
 * cell, and how many halves of the text are left of its end and below it.
 */
typedef struct tside_i_way {
    short near_x, near_y, step_x, step_y; /* fewer than eight cells */
    signed char halves_left, halves_below;
} tside_i_way;

enum { TSIDE_I_WAYS = 58 };

typedef struct tside_i_room {
    const tside_i_sketch *sketch;
    tside_drawing *drawing; /* its extent grows with what is kept */
    double scale;
    int pending[TSIDE_DIMENSIONS]; /* 1: outside all, and still without its line */
    int text_count;
    tside_i_box texts[TSIDE_DIMENSIONS + TSIDE_NOTES];
    tside_i_frame extents[TSIDE_DIMENSIONS + TSIDE_NOTES]; /* of them, upright */
    int leader_count;
    tside_i_line leaders[TSIDE_DIMENSIONS + TSIDE_NOTES];
    int way_count;
    tside_i_way ways[TSIDE_I_WAYS]; /* in the order in which they are tried */
    tside_i_paper paper;
} tside_i_room;

/* Dimensions whose lines stand outside all that is drawn, and those that have none, whose texts have leaders. */
int tside_i_is_outside_all(const tside_dimension *dimension);
int tside_i_is_led(const tside_dimension *dimension);

/* With the strokes, and the places from which leaders are still to begin. */
void tside_i_room_begin(tside_i_room *room, const tside_i_sketch *sketch);
void tside_i_room_keep_text(tside_i_room *room, const tside_i_box *box);
void tside_i_room_keep_line(tside_i_room *room, const tside_i_line *line);
void tside_i_room_keep_leader(tside_i_room *room, const tside_i_line *line);

/* The box of a text by the middle of its foot. */
tside_i_box tside_i_text_box(const tside_i_room *room, double x, double y, double cosine, double sine, double width);

int tside_i_crosses_text(const tside_i_room *room, const tside_i_line *line);
int tside_i_crosses_leader(const tside_i_room *room, const tside_i_line *line);

#endif
