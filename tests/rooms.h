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

static inline void rule(tside_i_sketch *sketch, const tside_i_line *lines, int count)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_sketch_crop(sketch, -1000, -1000, 1000, 1000);
    for (int i = 0; i < count; i++)
        tside_i_segment(sketch, pen, lines[i].x, lines[i].y, lines[i].x_end, lines[i].y_end);
}

/* What an open room is about. */
static const tside_i_line *ruled_lines;
static int ruled_count;

static inline void rule_again(tside_i_sketch *sketch)
{
    rule(sketch, ruled_lines, ruled_count);
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
    sketch_view(r, rule_again, scale);
    tside_i_room_begin(&r->room, &r->sketch);
}

/* Lines in an array of their own. */
#define OPEN_ROOM(r, lines, scale) open_room(r, lines, sizeof(lines) / sizeof *(lines), scale)

static inline int is_cell_taken(const tside_i_paper *p, int column, int row)
{
    const int at = row * TSIDE_I_PAPER_WORDS + column / TSIDE_I_PAPER_BITS;
    return (int)(p->cells[at] >> column % TSIDE_I_PAPER_BITS & 1);
}

static inline int is_taken(const tside_i_paper *p, double x, double y)
{
    return is_cell_taken(p, (int)floor((x - p->left) * p->across), (int)floor((y - p->bottom) * p->up));
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
