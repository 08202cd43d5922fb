/* SPDX-License-Identifier: MIT */
/*
 * Paper in cells: a box takes every cell that it touches, and a line those of places along it, no farther apart than
 * the room that is about every text. So what finds only free cells meets nothing. A cell is a millimetre, or more where
 * the drawing is larger than so many of them. Source: derivation, plane geometry.
 */
#include "drawing/paper.h"

#include <float.h>
#include <limits.h>
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
            if (p->cells[word][row] & cells)
                return 0;
    }
    return 1;
}

static void take(tside_i_paper *p, const area *a)
{
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++) {
        const uint64_t cells = cells_of(a, word);
        for (unsigned row = a->bottom; row <= a->top; row++)
            p->cells[word][row] |= cells;
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

int tside_i_paper_parts(double cells)
{
    return (int)floor(PARTS * fmin(fmax(cells, -FAR_OFF), FAR_OFF) + 0.5);
}

/*
 * The last of some cells, by the exponent of their double; the cell before it is left out, so that the double is not
 * rounded up.
 */
static int last_of(uint64_t cells)
{
    const double value = (double)(cells & ~(cells >> 1));
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    return (int)(bits >> (DBL_MANT_DIG - 1)) - (DBL_MAX_EXP - 1);
}

/* How many steps until what is between two places is past a cell. */
static int steps_past(int from, int to, int step, int cell)
{
    return step > 0   ? ((cell + 1) * PARTS - from + step - 1) / step
           : step < 0 ? (to - cell * PARTS) / -step + 1
                      : INT_MAX;
}

/* How many steps until a box is past some cells of a row: over it, or beside them. */
static int steps_past_row(const tside_i_mover *m, int row, int word, uint64_t met)
{
    const int over = steps_past(m->bottom, m->bottom + m->high, m->step_y, row);
    int beside;
    if (over == 1)
        return 1;
    beside = steps_past(m->left, m->left + m->wide, m->step_x,
                        word * BITS + last_of(m->step_x > 0 ? met : met & (~met + 1)));
    return over < beside ? over : beside;
}

/* Whether what lies between two places is beyond an end of the paper, and goes on away from it. */
static int is_leaving(int from, int to, int step, int end)
{
    return (from < 0 && step <= 0) || (to >= end && step >= 0);
}

/* The same of a box that is not on the paper; INT_MAX where it leaves it. */
static int steps_onto_paper(const tside_i_mover *m)
{
    return is_leaving(m->left, m->left + m->wide, m->step_x, COLUMNS * PARTS) ||
                   is_leaving(m->bottom, m->bottom + m->high, m->step_y, ROWS * PARTS)
               ? INT_MAX
               : 1;
}

/* Rows are looked at from the one that it is past last. */
int tside_i_paper_steps_to_room(const tside_i_paper *p, const tside_i_mover *m)
{
    const int right = m->left + m->wide, top = m->bottom + m->high, up = m->step_y > 0;
    area a;
    if (m->left < 0 || right >= COLUMNS * PARTS || m->bottom < 0 || top >= ROWS * PARTS)
        return steps_onto_paper(m);
    a = (area){(unsigned)m->left / PARTS, (unsigned)right / PARTS, (unsigned)m->bottom / PARTS, (unsigned)top / PARTS};
    for (unsigned word = a.left / BITS; word <= a.right / BITS; word++) {
        const uint64_t cells = cells_of(&a, word), *row = p->cells[word] + (up ? a.top : a.bottom);
        for (unsigned i = 0; i <= a.top - a.bottom; i++, row += up ? -1 : 1)
            if (*row & cells)
                return steps_past_row(m, (int)(up ? a.top - i : a.bottom + i), (int)word, *row & cells);
    }
    return 0;
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
    const int right = x_end > x, up = y_end > y;
    area a;
    if (find_area(right ? x : x_end, up ? y : y_end, right ? x_end : x, up ? y_end : y, &a))
        take(p, &a);
}

/* By so many places along it, in cells. */
static void take_slanted(tside_i_paper *p, double x, double y, double x_end, double y_end, int steps)
{
    const double step_x = (x_end - x) / steps, step_y = (y_end - y) / steps;
    for (int i = 0; i <= steps; i++) {
        const unsigned column = (unsigned)(int)(x + i * step_x), row = (unsigned)(int)(y + i * step_y);
        p->cells[column / BITS][row] |= UINT64_C(1) << column % BITS;
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

/* By chords that stray from it by less than the room about a text, each the one before it turned by as much. */
static void take_arc(tside_i_paper *p, const tside_stroke *arc)
{
    const double turn = sqrt(fmin(8 * p->stray / arc->radius, 1));
    const int chords = (int)ceil(fmin(arc->sweep / turn, 1000));
    const double cosine = cos(arc->sweep / chords), sine = sin(arc->sweep / chords);
    double out = arc->radius * cos(arc->from), up = arc->radius * sin(arc->from);
    for (int i = 0; i < chords; i++) {
        const double next_out = out * cosine - up * sine, next_up = up * cosine + out * sine;
        const tside_i_line chord = {arc->x + out, arc->y + up, arc->x + next_out, arc->y + next_up};
        tside_i_paper_take_line(p, &chord);
        out = next_out;
        up = next_up;
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
