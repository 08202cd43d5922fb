/* SPDX-License-Identifier: MIT */
/*
 * Paper in cells: a box takes every cell that it touches, and a line those of places along it, no farther apart than
 * the room that is about every text. So what finds only free cells meets nothing. A cell is a millimetre, or more where
 * the drawing is larger than so many of them. Source: derivation, plane geometry.
 */
#include "drawing/paper.h"

#include <limits.h>
#include <string.h>

/* m on paper */
#define CELL 1e-3     /* the least */
#define APART 1e-3    /* from place to place: half of it is less than the room about letters */
#define STRAY 0.25e-3 /* of a chord from its arc */

enum {
    COLUMNS = TSIDE_I_PAPER_COLUMNS,
    ROWS = TSIDE_I_PAPER_ROWS,
    BITS = TSIDE_I_PAPER_BITS,
    WORDS = COLUMNS / BITS,
    PLACES_TO_CELL = 32
};

/* Where the first cell begins, and how many there are to a metre. */
static void divide(double from, double to, double around, int cells, double least, double *begins, double *to_metre)
{
    const double size = fmax((to - from + 2 * around) / cells, least);
    *begins = (from + to - cells * size) / 2;
    *to_metre = 1 / size;
}

void tside_i_paper_begin(tside_i_paper *paper, const tside_i_sketch *sketch, double around)
{
    const double scale = sketch->picture.scale;
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
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++) {
        const uint64_t cells = cells_of(a, word);
        for (unsigned row = a->bottom; row <= a->top; row++)
            p->cells[row][word] |= cells;
    }
}

/* A box in upright pieces: one where it is level or plumb, else so many that they go little beyond it. */
typedef struct pieces {
    double x, y, step_x, step_y, half_wide, half_high; /* in cells */
    int count;
} pieces;

static pieces pieces_of(const tside_i_paper *p, const tside_i_box *b)
{
    const double cosine = fabs(b->cosine), sine = fabs(b->sine);
    const int count = cosine == 0 || sine == 0 ? 1 : (int)ceil(1.5 * b->half_width / b->half_height);
    const double half = b->half_width / count, back = b->half_width - half;
    return (pieces){.x = (b->x - back * b->cosine - p->left) * p->across,
                    .y = (b->y - back * b->sine - p->bottom) * p->up,
                    .step_x = 2 * half * b->cosine * p->across,
                    .step_y = 2 * half * b->sine * p->up,
                    .half_wide = (half * cosine + b->half_height * sine) * p->across,
                    .half_high = (half * sine + b->half_height * cosine) * p->up,
                    .count = count};
}

/* The cells of an upright piece; 0 where it is not on the paper. */
static int find_area(double left, double bottom, double right, double top, area *a)
{
    if (!(left >= 0 && right < COLUMNS && bottom >= 0 && top < ROWS))
        return 0;
    *a = (area){(unsigned)(int)left, (unsigned)(int)right, (unsigned)(int)bottom, (unsigned)(int)top};
    return 1;
}

static int find_piece(const pieces *all, int i, area *a)
{
    const double x = all->x + i * all->step_x, y = all->y + i * all->step_y;
    return find_area(x - all->half_wide, y - all->half_high, x + all->half_wide, y + all->half_high, a);
}

static int has_room(const tside_i_paper *p, const pieces *all)
{
    area a;
    for (int i = 0; i < all->count; i++)
        if (!find_piece(all, i, &a) || !is_free(p, &a))
            return 0;
    return 1;
}

int tside_i_paper_has_room(const tside_i_paper *paper, const tside_i_box *box)
{
    const pieces all = pieces_of(paper, box);
    return has_room(paper, &all);
}

/* --- a box on its way --- */

enum { PARTS = TSIDE_I_PAPER_PARTS, FAR_OFF = 1 << 12 };

static int parts_of(double cells)
{
    return (int)(PARTS * fmin(fmax(cells, -FAR_OFF), FAR_OFF));
}

int tside_i_paper_across(const tside_i_paper *paper, double x)
{
    return parts_of((x - paper->left) * paper->across);
}

int tside_i_paper_up(const tside_i_paper *paper, double y)
{
    return parts_of((y - paper->bottom) * paper->up);
}

static unsigned highest(uint64_t cells)
{
    unsigned at = 0;
    for (unsigned half = BITS / 2; half; half /= 2)
        if (cells >> half) {
            cells >>= half;
            at += half;
        }
    return at;
}

/* How many steps until what is between two places is past a cell. */
static int steps_past(int from, int to, int step, unsigned cell)
{
    return step > 0   ? ((int)(cell + 1) * PARTS - from + step - 1) / step
           : step < 0 ? (to - (int)cell * PARTS) / -step + 1
                      : INT_MAX;
}

/* How many steps until a box is past some cells of a row: over it, or beside them. */
static int steps_past_row(const tside_i_mover *m, unsigned row, unsigned word, uint64_t taken)
{
    const int over = steps_past(m->bottom, m->bottom + m->high, m->step_y, row);
    int beside;
    if (over == 1)
        return 1;
    beside = steps_past(m->left, m->left + m->wide, m->step_x,
                        word * BITS + highest(m->step_x > 0 ? taken : taken & (~taken + 1)));
    return over < beside ? over : beside;
}

/*
 * How many steps it is at least until it meets nothing: 0 where it meets nothing here, 1 off the paper. Rows are looked
 * at from the one that it is past last.
 */
static int steps_to_room(const tside_i_paper *p, const tside_i_mover *m)
{
    const int right = m->left + m->wide, top = m->bottom + m->high, up = m->step_y > 0;
    area a;
    if (m->left < 0 || right >= COLUMNS * PARTS || m->bottom < 0 || top >= ROWS * PARTS)
        return 1;
    a = (area){(unsigned)m->left / PARTS, (unsigned)right / PARTS, (unsigned)m->bottom / PARTS, (unsigned)top / PARTS};
    for (unsigned word = a.left / BITS; word <= a.right / BITS; word++) {
        const uint64_t cells = cells_of(&a, word), *row = p->cells[up ? a.top : a.bottom] + word;
        for (unsigned i = 0; i <= a.top - a.bottom; i++, row += up ? -WORDS : WORDS)
            if (*row & cells)
                return steps_past_row(m, up ? a.top - i : a.bottom + i, word, *row & cells);
    }
    return 0;
}

int tside_i_paper_next_room(const tside_i_paper *paper, const tside_i_mover *mover, int places)
{
    tside_i_mover m = *mover;
    int place = 0, steps;
    while (place < places && (steps = steps_to_room(paper, &m)) > 0) {
        m.left += steps * m.step_x;
        m.bottom += steps * m.step_y;
        place += steps;
    }
    return place;
}

void tside_i_paper_take_box(tside_i_paper *paper, const tside_i_box *box)
{
    const pieces all = pieces_of(paper, box);
    area a;
    for (int i = 0; i < all.count; i++)
        if (find_piece(&all, i, &a))
            take(paper, &a);
}

/* --- lines --- */

static int is_on_paper(double x, double y)
{
    return x >= 0 && x < COLUMNS - 1 && y >= 0 && y < ROWS - 1; /* a cell within, whatever rounding makes of the last */
}

/* Level or plumb, in cells. */
static void take_straight(tside_i_paper *p, double x, double y, double x_end, double y_end)
{
    area a;
    if (find_area(fmin(x, x_end), fmin(y, y_end), fmax(x, x_end), fmax(y, y_end), &a))
        take(p, &a);
}

/* By so many places along it, in cells. */
static void take_slanted(tside_i_paper *p, double x, double y, double x_end, double y_end, int steps)
{
    const double step_x = (x_end - x) / steps, step_y = (y_end - y) / steps;
    for (int i = 0; i <= steps; i++) {
        const unsigned column = (unsigned)(int)(x + i * step_x), row = (unsigned)(int)(y + i * step_y);
        p->cells[row][column / BITS] |= UINT64_C(1) << column % BITS;
    }
}

void tside_i_paper_take_line(tside_i_paper *paper, const tside_i_line *l)
{
    const double x = (l->x - paper->left) * paper->across, y = (l->y - paper->bottom) * paper->up,
                 x_end = (l->x_end - paper->left) * paper->across, y_end = (l->y_end - paper->bottom) * paper->up;
    if (x == x_end || y == y_end)
        take_straight(paper, x, y, x_end, y_end);
    else if (is_on_paper(x, y) && is_on_paper(x_end, y_end))
        take_slanted(paper, x, y, x_end, y_end,
                     1 + (int)(fmax(fabs(l->x_end - l->x), fabs(l->y_end - l->y)) * paper->places));
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
