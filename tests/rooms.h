/* SPDX-License-Identifier: MIT */
/* Rooms for texts, about lines that a test draws. */
#ifndef TUNNELSIDE_ROOMS_H
#define TUNNELSIDE_ROOMS_H

#include <check.h>
#include <math.h>
#include <string.h>

#include "drawing/room.h"

#include "expect.h"

typedef struct ruled {
    tside_i_sketch sketch;
    tside_drawing drawing;
    tside_i_room room;
} ruled;

/* What is drawn: lines from one place to another, m. */
static const tside_i_line *ruled_lines;
static int ruled_count;

static inline void rule(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_sketch_crop(sketch, -1000, -1000, 1000, 1000);
    for (int i = 0; i < ruled_count; i++)
        tside_i_segment(sketch, pen, ruled_lines[i].x, ruled_lines[i].y, ruled_lines[i].x_end, ruled_lines[i].y_end);
}

/* Strokes of a view, and a drawing that is as large as they are. */
static inline void sketch_view(ruled *r, tside_i_view *view, double scale)
{
    const tside_picture picture = {.view = TSIDE_VIEW_CORNER, .scale = scale};
    tside_fault fault;
    memset(r, 0, sizeof *r);
    memset(&r->room, 0x5a, sizeof r->room); /* nothing in it is nought by itself */
    tside_i_sketch_begin(NULL, NULL, &picture, NULL, NULL, &r->drawing, &r->sketch);
    ANSWERS(tside_i_sketch_draw(&r->sketch, view, 1, &fault));
    r->drawing.left = r->sketch.left;
    r->drawing.bottom = r->sketch.bottom;
    r->drawing.right = r->sketch.right;
    r->drawing.top = r->sketch.top;
}

static inline void open_room(ruled *r, const tside_i_line *lines, int count, double scale)
{
    ruled_lines = lines;
    ruled_count = count;
    sketch_view(r, rule, scale);
    tside_i_room_begin(&r->room, &r->sketch);
}

/* Lines in an array of their own. */
#define OPEN_ROOM(r, lines, scale) open_room(r, lines, sizeof(lines) / sizeof *(lines), scale)

static inline int is_taken(const tside_i_paper *p, double x, double y)
{
    const int column = (int)floor((x - p->left) * p->across), row = (int)floor((y - p->bottom) * p->up);
    return (int)(p->cells[row * TSIDE_I_PAPER_WORDS + column / TSIDE_I_PAPER_BITS] >> column % TSIDE_I_PAPER_BITS & 1);
}

/* Whether a box that lies level has a place inside it. */
static inline int holds(const tside_i_box *b, double x, double y)
{
    const double dx = x - b->x, dy = y - b->y;
    return fabs(dx * b->cosine + dy * b->sine) < b->half_width - 1e-6 &&
           fabs(dy * b->cosine - dx * b->sine) < b->half_height - 1e-6;
}

/* By so many places along it. */
static inline int goes_through(const tside_i_line *l, const tside_i_box *b)
{
    enum { PLACES = 2000 };
    for (int i = 0; i <= PLACES; i++)
        if (holds(b, l->x + (l->x_end - l->x) * i / PLACES, l->y + (l->y_end - l->y) * i / PLACES))
            return 1;
    return 0;
}

#endif
