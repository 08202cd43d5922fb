/* SPDX-License-Identifier: MIT */
/*
 * Paper in cells: a box takes every cell that it touches, and a line those of places along it, no farther apart than
 * the room that is about every text. So what finds only free cells meets nothing. A cell is a millimetre, or more where
 * the drawing is larger than so many of them. Source: derivation, plane geometry.
 */
#include "drawing/paper.h"

#include <string.h>

/* m on paper */
#define CELL 1e-3     /* the least */
#define APART 1e-3    /* from place to place: half of it is less than the room about letters */
#define STRAY 0.25e-3 /* of a chord from its arc */

enum { COLUMNS = TSIDE_I_PAPER_COLUMNS, ROWS = TSIDE_I_PAPER_ROWS, BITS = TSIDE_I_PAPER_BITS, PLACES_TO_CELL = 32 };

/* Where the first cell begins, and how many there are to a metre. */
static void divide(double from, double to, double around, int cells, double least, double *begins, double *to_metre)
{
    const double size = fmax((to - from + 2 * around) / cells, least);
    *begins = (from + to - cells * size) / 2;
    *to_metre = 1 / size;
}

void tside_i_paper_begin(tside_i_paper *paper, const tside_i_sketch *sketch, double around)
{
    const double scale = sketch->drawing->picture.scale;
    memset(paper->cells, 0, sizeof paper->cells);
    divide(sketch->left, sketch->right, around, COLUMNS, CELL * scale, &paper->left, &paper->across);
    divide(sketch->bottom, sketch->top, around, ROWS, CELL * scale, &paper->bottom, &paper->up);
    /* at most so many to a cell, so that a drawing much larger than any sheet is still made soon */
    paper->places = fmin(1 / (APART * scale), PLACES_TO_CELL * fmax(paper->across, paper->up));
    paper->stray = STRAY * scale;
}

/* --- boxes --- */

tside_i_box tside_i_box_of(double x, double y, double cosine, double sine, double half_width, double half_height)
{
    return (tside_i_box){.x = x,
                         .y = y,
                         .cosine = cosine,
                         .sine = sine,
                         .half_width = half_width,
                         .half_height = half_height,
                         .wide = half_width * fabs(cosine) + half_height * fabs(sine),
                         .high = half_width * fabs(sine) + half_height * fabs(cosine)};
}

/* Cells from one column to another and from one row to another, ends counted. */
typedef struct area {
    unsigned left, right, bottom, top;
} area;

/* The cells of a word of each row. */
static uint64_t cells_of(const area *a, unsigned word)
{
    const uint64_t from = word == a->left / BITS ? ~UINT64_C(0) << a->left % BITS : ~UINT64_C(0),
                   to = word == a->right / BITS ? ~UINT64_C(0) >> (BITS - 1 - a->right % BITS) : ~UINT64_C(0);
    return from & to;
}

static int is_free(const tside_i_paper *p, const area *a)
{
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++) {
        const uint64_t cells = cells_of(a, word);
        for (unsigned row = a->bottom; row <= a->top; row++)
            if (p->cells[row][word] & cells)
                return 0;
    }
    return 1;
}

static void take(tside_i_paper *p, const area *a)
{
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++)
        for (unsigned row = a->bottom; row <= a->top; row++)
            p->cells[row][word] |= cells_of(a, word);
}

/* A box in upright pieces: one where it is level or plumb, else so many that they go little beyond it. */
typedef struct pieces {
    double x, y, step_x, step_y, half_wide, half_high; /* in cells */
    int count;
} pieces;

static pieces pieces_of(const tside_i_paper *p, const tside_i_box *b)
{
    const double cosine = fabs(b->cosine), sine = fabs(b->sine);
    const int count = cosine < 1e-3 || sine < 1e-3 ? 1 : (int)ceil(1.5 * b->half_width / b->half_height);
    const double half = b->half_width / count, back = b->half_width - half;
    return (pieces){.x = (b->x - back * b->cosine - p->left) * p->across,
                    .y = (b->y - back * b->sine - p->bottom) * p->up,
                    .step_x = 2 * half * b->cosine * p->across,
                    .step_y = 2 * half * b->sine * p->up,
                    .half_wide = (half * cosine + b->half_height * sine) * p->across,
                    .half_high = (half * sine + b->half_height * cosine) * p->up,
                    .count = count};
}

/* One of the pieces; 0 where it is not on the paper. */
static int find_area(const pieces *all, int i, area *a)
{
    const double x = all->x + i * all->step_x, y = all->y + i * all->step_y, left = x - all->half_wide,
                 right = x + all->half_wide, bottom = y - all->half_high, top = y + all->half_high;
    if (!(left >= 0 && right < COLUMNS && bottom >= 0 && top < ROWS))
        return 0;
    *a = (area){(unsigned)(int)left, (unsigned)(int)right, (unsigned)(int)bottom, (unsigned)(int)top};
    return 1;
}

static int has_room(const tside_i_paper *p, const pieces *all)
{
    area a;
    for (int i = 0; i < all->count; i++)
        if (!find_area(all, i, &a) || !is_free(p, &a))
            return 0;
    return 1;
}

int tside_i_paper_has_room(const tside_i_paper *paper, const tside_i_box *box)
{
    const pieces all = pieces_of(paper, box);
    return has_room(paper, &all);
}

int tside_i_paper_next_room(const tside_i_paper *paper, const tside_i_box *box, double step_x, double step_y,
                            int places)
{
    pieces all = pieces_of(paper, box);
    int i;
    for (i = 0; i < places && !has_room(paper, &all); i++) {
        all.x += step_x * paper->across;
        all.y += step_y * paper->up;
    }
    return i;
}

void tside_i_paper_take_box(tside_i_paper *paper, const tside_i_box *box)
{
    const pieces all = pieces_of(paper, box);
    area a;
    for (int i = 0; i < all.count; i++)
        if (find_area(&all, i, &a))
            take(paper, &a);
}

/* --- lines --- */

/* Places along a line, in cells: the first, and from one to the next. */
typedef struct course {
    double x, y, step_x, step_y;
    int count; /* 0: it is not on the paper */
} course;

static int is_on_paper(double x, double y)
{
    return x >= 0 && x < COLUMNS - 1 && y >= 0 && y < ROWS - 1; /* a cell within, whatever rounding makes of the last */
}

static course course_of(const tside_i_paper *p, const tside_i_line *l)
{
    const double dx = l->x_end - l->x, dy = l->y_end - l->y;
    course c = {(l->x - p->left) * p->across, (l->y - p->bottom) * p->up, dx * p->across, dy * p->up, 0};
    int steps;
    if (!is_on_paper(c.x, c.y) || !is_on_paper(c.x + c.step_x, c.y + c.step_y))
        return c;
    steps = 1 + (int)(fmax(fabs(dx), fabs(dy)) * p->places);
    c.step_x /= steps;
    c.step_y /= steps;
    c.count = steps + 1;
    return c;
}

void tside_i_paper_take_line(tside_i_paper *paper, const tside_i_line *line)
{
    const course c = course_of(paper, line);
    if (line->x == line->x_end || line->y == line->y_end) { /* all the same, and sooner */
        const tside_i_box box = tside_i_box_of((line->x + line->x_end) / 2, (line->y + line->y_end) / 2, 1, 0,
                                               fabs(line->x_end - line->x) / 2, fabs(line->y_end - line->y) / 2);
        tside_i_paper_take_box(paper, &box);
        return;
    }
    for (int i = 0; i < c.count; i++) {
        const int column = (int)(c.x + i * c.step_x), row = (int)(c.y + i * c.step_y);
        paper->cells[row][column / BITS] |= UINT64_C(1) << column % BITS;
    }
}

/* By chords that stray from it by less than the room about a text. */
static void take_arc(tside_i_paper *p, const tside_stroke *arc)
{
    const double turn = sqrt(fmin(8 * p->stray / arc->radius, 1));
    const int chords = (int)ceil(fmin(arc->sweep / turn, 1000));
    tside_i_line chord = {.x_end = arc->x + arc->radius * cos(arc->from),
                          .y_end = arc->y + arc->radius * sin(arc->from)};
    for (int i = 1; i <= chords; i++) {
        const double to = arc->from + arc->sweep * i / chords;
        chord = (tside_i_line){chord.x_end, chord.y_end, arc->x + arc->radius * cos(to),
                               arc->y + arc->radius * sin(to)};
        tside_i_paper_take_line(p, &chord);
    }
}

void tside_i_paper_take_stroke(tside_i_paper *paper, const tside_stroke *stroke)
{
    const tside_i_line line = {stroke->x, stroke->y, stroke->x_end, stroke->y_end};
    if (stroke->arc)
        take_arc(paper, stroke);
    else
        tside_i_paper_take_line(paper, &line);
}
