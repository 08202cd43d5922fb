/* SPDX-License-Identifier: MIT */
/* A drawing while it is made: strokes, and the dimensions and notes that are still to get their places. */
#ifndef TUNNELSIDE_I_SKETCH
#define TUNNELSIDE_I_SKETCH

#include <tunnelside/drawing.h>

#include "side/ready.h"

typedef struct tside_i_frame {
    double left, bottom, right, top; /* m, as seen */
} tside_i_frame;

/* On which side of what it measures a dimension stands, if there is room. */
typedef enum tside_i_beside { TSIDE_I_OUTBOARD, TSIDE_I_INBOARD, TSIDE_I_ABOVE, TSIDE_I_BELOW } tside_i_beside;

/* What the views draw from, and on. */
typedef struct tside_i_sketch {
    const tside_i_setup *setup;
    const tside_plan *plan;
    tside_picture picture; /* what is asked; of figures at their own scale */
    tside_drawing *drawing;
    int keeps;                       /* 1: the drawing receives what is put down; 0: it is only counted */
    int strokes, dimensions, notes;  /* so many were put down */
    int hand;                        /* the drawing's outboard */
    double outboard;                 /* 1, or -1 where outboard is to the left as seen */
    double left, bottom, right, top; /* m, of the strokes alone, as seen */
    tside_i_frame crop;              /* strokes end there */
    const tside_i_hung *drive;       /* the drive's guide, for turns of the drive; NULL where none are asked for */
    const tside_i_spot *asked;       /* where the bar is at the turns asked; NULL: none are */
    tside_i_beside beside[TSIDE_DIMENSIONS];
    tside_i_beside figure_beside[TSIDE_NOTES]; /* of notes with a unit: from where it is the text stands */
} tside_i_sketch;

/* A view of figures over the drive's turns, which is of no scale. */
static inline int tside_i_is_of_figures(tside_view view)
{
    return view == TSIDE_VIEW_TURNS || view == TSIDE_VIEW_OPENING;
}

/* With what a stroke is put down. */
typedef struct tside_i_pen {
    tside_part part;
    tside_shown shown;
    tside_line_type line;
    int index;
} tside_i_pen;

/* A view's strokes, dimensions and notes, put down on a sketch. */
typedef void tside_i_view(tside_i_sketch *sketch);

/* drive, asked: NULL where nothing asks for them. */
void tside_i_sketch_begin(const tside_i_setup *setup, const tside_plan *plan, const tside_picture *picture,
                          const tside_i_hung *drive, const tside_i_spot *asked, tside_drawing *drawing,
                          tside_i_sketch *sketch);
/*
 * A drawing that does not hold all of a view is refused. may_be_many: 1 where that can be; the view is then drawn
 * twice, first to count, so that such a drawing stays as it was.
 */
tside_status tside_i_sketch_draw(tside_i_sketch *sketch, tside_i_view *view, int may_be_many, tside_fault *fault);
/* An end is seen from outside its wall: the free end's outboard is on the other hand. Before all strokes. */
void tside_i_sketch_from_outside(tside_i_sketch *sketch, tside_which_end which);
/* What is beyond these, m outboard and up, is not drawn. */
void tside_i_sketch_crop(tside_i_sketch *sketch, double inner, double bottom, double outer, double top);

/* --- strokes; places are m outboard and up, and are kept as they are seen; what is of no length leaves no stroke ---
 */

void tside_i_segment(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end);
/* from: rad, counter-clockwise from outboard level; sweep: rad, up to a whole turn. */
void tside_i_arc(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double radius, double from, double sweep);
void tside_i_circle(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double radius);
/* Level and plumb. */
void tside_i_rectangle(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end);
/* The outline of a tube by the two ends of its axis. */
void tside_i_tube(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end,
                  double width);
/* A path from one arc length to another, so far outward from it. */
void tside_i_path_strokes(tside_i_sketch *sketch, tside_i_pen pen, const tside_path *path, double from, double to,
                          double out);

/* --- dimensions and notes, whose places follow when all strokes are there --- */

void tside_i_dimension(tside_i_sketch *sketch, tside_tells tells, tside_dimension_kind kind, tside_i_beside beside,
                       double value, double x, double y, double x_end, double y_end);
/* A pitch that is there so many times, told at a place. */
void tside_i_pitch(tside_i_sketch *sketch, tside_tells tells, double pitch, int times, double x, double y);
void tside_i_note(tside_i_sketch *sketch, tside_part part, tside_shown shown, int index, double x, double y);
/* A name of an axis, or a number on it, hard by a place and without a leader. */
void tside_i_figure(tside_i_sketch *sketch, tside_i_beside beside, tside_note figure);

#endif
