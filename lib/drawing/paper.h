/* SPDX-License-Identifier: MIT */
/* What of the paper is taken, by cells of a millimetre. */
#ifndef TUNNELSIDE_I_PAPER
#define TUNNELSIDE_I_PAPER

#include <stdint.h>

#include "drawing/sketch.h"

enum { TSIDE_I_PAPER_COLUMNS = 320, TSIDE_I_PAPER_ROWS = 224, TSIDE_I_PAPER_BITS = 64 };

typedef struct tside_i_paper {
    double left, bottom; /* m */
    double across, up;   /* 1/m, cells to a metre of what is drawn */
    double places;       /* 1/m, by how many places to a metre a line is followed */
    double stray;        /* m, by how much a chord may leave its arc */
    uint64_t cells[TSIDE_I_PAPER_COLUMNS / TSIDE_I_PAPER_BITS][TSIDE_I_PAPER_ROWS];
} tside_i_paper;

/* A straight line. */
typedef struct tside_i_line {
    double x, y, x_end, y_end; /* m */
} tside_i_line;

/* A rectangle at an angle: where a text is, with its room. */
typedef struct tside_i_box {
    double x, y; /* m, its middle */
    double cosine, sine;
    double half_width, half_height; /* m */
    double wide, high;              /* m, half of what is about it upright */
} tside_i_box;

tside_i_box tside_i_box_of(double x, double y, double cosine, double sine, double half_width, double half_height);

/* Blank, with what is drawn in its middle and so much round it at least. */
void tside_i_paper_begin(tside_i_paper *paper, const tside_i_sketch *sketch, double around);

/* Whether nothing that is taken is met; off the paper nothing is free. */
int tside_i_paper_has_room(const tside_i_paper *paper, const tside_i_box *box);
/* So many cells in parts of one, to the nearest; what lies farther off than anything on paper is put no farther. */
enum { TSIDE_I_PAPER_PARTS = 1 << 12 };
int tside_i_paper_parts(double cells);

/* A level box that goes on by equal steps, all in parts of a cell. */
typedef struct tside_i_mover {
    int left, bottom, wide, high, step_x, step_y;
} tside_i_mover;

/* How many steps it is at least until it meets nothing: 0 where it meets nothing here. */
int tside_i_paper_steps_to_room(const tside_i_paper *paper, const tside_i_mover *mover);

/* Takes what is covered, if it is on the paper. */
void tside_i_paper_take_box(tside_i_paper *paper, const tside_i_box *box);
void tside_i_paper_take_line(tside_i_paper *paper, const tside_i_line *line);
void tside_i_paper_take_stroke(tside_i_paper *paper, const tside_stroke *stroke);

#endif
