/* SPDX-License-Identifier: MIT */
/* What of the paper is taken, by cells of a millimetre. */
#ifndef TUNNELSIDE_I_PAPER
#define TUNNELSIDE_I_PAPER

#include <stdint.h>

#include "drawing/sketch.h"

enum {
    TSIDE_I_PAPER_COLUMNS = 320,
    TSIDE_I_PAPER_ROWS = 224,
    TSIDE_I_PAPER_BITS = 64,
    TSIDE_I_PAPER_WORDS = TSIDE_I_PAPER_COLUMNS / TSIDE_I_PAPER_BITS
};

typedef struct tside_i_paper {
    double left, bottom; /* m */
    double across, up;   /* 1/m, cells to a metre of what is drawn */
    double stray;        /* m, by how much a chord may leave its arc */
    unsigned covered; /* rows, of each box that is looked for room for: a cell is taken where one of so many is, from it
                         upwards */
    uint64_t cells[TSIDE_I_PAPER_ROWS * TSIDE_I_PAPER_WORDS + 1]; /* row by row; and one that is never taken */
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

/* Once its strokes are taken: from here on for texts so high, m, or what is higher. */
void tside_i_paper_for_texts(tside_i_paper *paper, const tside_i_sketch *sketch, double high);

/* Whether nothing that is taken is met; off the paper nothing is free. */
int tside_i_paper_has_room(const tside_i_paper *paper, const tside_i_box *box);
/* So many cells in parts of one, to the nearest; what lies farther off than anything on paper is put no farther. */
enum { TSIDE_I_PAPER_PARTS = 1 << 12 };
int tside_i_paper_parts(double cells);
/* The whole cells that have room for so many. */
int tside_i_paper_cells(double cells);

/* Whole cells for a text, that go on by equal steps; where they are and a step in parts of a cell. */
typedef struct tside_i_mover {
    int wide, high; /* cells */
    int left, bottom, step_x, step_y;
} tside_i_mover;

/* How many steps until it meets nothing, to where it goes; most: where it meets something after each that are fewer. */
int tside_i_paper_steps_to_room(const tside_i_paper *paper, tside_i_mover *mover, int most);
/* The middle of its cells. */
void tside_i_paper_middle(const tside_i_paper *paper, const tside_i_mover *mover, double *x, double *y);

/* Takes what is covered, if it is on the paper. */
void tside_i_paper_take_box(tside_i_paper *paper, const tside_i_box *box);
void tside_i_paper_take_line(tside_i_paper *paper, const tside_i_line *line);
void tside_i_paper_take_stroke(tside_i_paper *paper, const tside_stroke *stroke);

#endif
