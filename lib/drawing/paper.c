/* SPDX-License-Identifier: MIT */
/*
 * Paper in cells: a box and a line take every cell that they touch. So what finds only free cells meets nothing. A cell
 * is a millimetre, or more where the drawing is larger than so many of them. For texts, which are all as high, a cell
 * is taken too where one of those above it is, so many that no text covers fewer rows: one or two rows tell then of a
 * text what else each of its own would. Source: derivation, plane geometry.
 */
#include "drawing/paper.h"

#include <string.h>

/* m on paper */
#define CELL 1e-3     /* the least */
#define STRAY 0.25e-3 /* of a chord from its arc */

#define ASIDE 0.618 /* of a cell, twice how far the middle is from the edge of one */

enum {
    COLUMNS = TSIDE_I_PAPER_COLUMNS,
    ROWS = TSIDE_I_PAPER_ROWS,
    BITS = TSIDE_I_PAPER_BITS,
    WORDS = TSIDE_I_PAPER_WORDS
};

/*
 * Where the first cell begins, and how many there are to a metre: one or more are left on either side. Whole
 * millimetres from the middle or from an end are not on the edge of a cell, where the last digit would tell which one
 * they are in.
 */
static void divide(double from, double to, double around, int cells, double least, double *begins, double *to_metre)
{
    const double size = fmax((to - from + 2 * around) / (cells - 2), least);
    *begins = (from + to - (cells + ASIDE) * size) / 2;
    *to_metre = 1 / size;
}

void tside_i_paper_begin(tside_i_paper *paper, const tside_i_sketch *sketch, double around)
{
    const double scale = sketch->picture.scale;
    memset(paper->cells, 0, sizeof paper->cells);
    paper->covered = 1;
    divide(sketch->left, sketch->right, around, COLUMNS, CELL * scale, &paper->left, &paper->across);
    divide(sketch->bottom, sketch->top, around, ROWS, CELL * scale, &paper->bottom, &paper->up);
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

/* Whether any row between two of a word, none more than so many above the one before it, has some cells. */
static int is_free(const tside_i_paper *p, const area *a)
{
    const unsigned last = a->top - a->bottom < p->covered ? a->bottom : a->top - p->covered + 1;
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++) {
        const uint64_t cells = cells_of(a, word);
        for (unsigned row = a->bottom; row < last; row += p->covered)
            if (p->cells[row * WORDS + word] & cells)
                return 0;
        if (p->cells[last * WORDS + word] & cells)
            return 0;
    }
    return 1;
}

static unsigned lowest(unsigned covered, unsigned row)
{
    return row < covered ? 0 : row - covered + 1;
}

static void take(tside_i_paper *p, const area *a)
{
    const unsigned bottom = lowest(p->covered, a->bottom);
    for (unsigned word = a->left / BITS; word <= a->right / BITS; word++) {
        const uint64_t cells = cells_of(a, word);
        for (unsigned row = bottom; row <= a->top; row++)
            p->cells[row * WORDS + word] |= cells;
    }
}

/* The cells of an upright piece; 0 where it is not on the paper. */
static int find_area(double left, double bottom, double right, double top, area *a)
{
    if (!(left >= 0 && right < COLUMNS && bottom >= 0 && top < ROWS))
        return 0;
    *a = (area){(unsigned)(int)left, (unsigned)(int)right, (unsigned)(int)bottom, (unsigned)(int)top};
    return 1;
}

/* Only where strokes are, and as far below them. */
void tside_i_paper_for_texts(tside_i_paper *p, const tside_i_sketch *sketch, double high)
{
    const unsigned covered = (unsigned)(high * p->up) + 1;
    area drawn;
    if (!find_area((sketch->left - p->left) * p->across - 1, (sketch->bottom - p->bottom) * p->up - 1,
                   (sketch->right - p->left) * p->across + 1, (sketch->top - p->bottom) * p->up + 1, &drawn))
        return;
    if (drawn.top >= ROWS - covered)
        drawn.top = ROWS - covered - 1; /* what is as near the edge as that has no text above it */
    for (unsigned more; p->covered < covered; p->covered += more) {
        more = covered - p->covered < p->covered ? covered - p->covered : p->covered;
        for (unsigned row = lowest(covered, drawn.bottom); row <= drawn.top; row++)
            for (unsigned word = drawn.left / BITS; word <= drawn.right / BITS; word++)
                p->cells[row * WORDS + word] |= p->cells[(row + more) * WORDS + word];
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

int tside_i_paper_cells(double cells)
{
    return (int)ceil(fmin(cells, FAR_OFF));
}

/* Whether a place is beyond the last that there is, or the first, and goes on away from it. */
static int is_leaving(int from, int step, int last)
{
    return (from < 0 && step <= 0) || (from / PARTS > last && step >= 0);
}

/* Whether some cells of a row, by the first of them, are free. */
static int are_free(const tside_i_paper *p, unsigned row, unsigned column, int count)
{
    for (; count > 0; count -= BITS, column += BITS) {
        const uint64_t *word = p->cells + row * WORDS + column / BITS,
                       cells = word[0] >> column % BITS | word[1] << 1 << (BITS - 1 - column % BITS);
        if (cells << (count < BITS ? BITS - count : 0))
            return 0;
    }
    return 1;
}

int tside_i_paper_steps_to_room(const tside_i_paper *p, tside_i_mover *m, int most)
{
    const unsigned last_column = (unsigned)(COLUMNS - m->wide), last_row = (unsigned)(ROWS - m->high);
    int steps, left = m->left, bottom = m->bottom;
    if (m->wide > COLUMNS || m->high > ROWS)
        return most;
    for (steps = 0; steps < most; steps++, left += m->step_x, bottom += m->step_y) {
        const unsigned column = (unsigned)left / PARTS,
                       row = (unsigned)bottom / PARTS; /* left of all and below: many */
        if (column <= last_column && row <= last_row) {
            if (are_free(p, row, column, m->wide))
                break;
        } else if (is_leaving(left, m->step_x, COLUMNS - m->wide) || is_leaving(bottom, m->step_y, ROWS - m->high)) {
            steps = most;
            break;
        }
    }
    m->left = left;
    m->bottom = bottom;
    return steps;
}

void tside_i_paper_middle(const tside_i_paper *p, const tside_i_mover *m, double *x, double *y)
{
    *x = p->left + (m->left / PARTS + m->wide / 2.) / p->across;
    *y = p->bottom + (m->bottom / PARTS + m->high / 2.) / p->up;
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

/* Row by row what of it is there, or in one of the rows that are covered above; in cells, from its lower end on. */
static void take_slanted(tside_i_paper *p, double x, double y, double x_end, double y_end)
{
    const double slope = (x_end - x) / (y_end - y);
    const int top = (int)y_end;
    for (int row = (int)lowest(p->covered, (unsigned)(int)y); row <= top; row++) {
        const double above = row + (int)p->covered, a = row > y ? x + (row - y) * slope : x,
                     b = above < y_end ? x + (above - y) * slope : x_end;
        const area cells = {.left = (unsigned)(int)(a < b ? a : b), .right = (unsigned)(int)(a < b ? b : a)};
        for (unsigned word = cells.left / BITS; word <= cells.right / BITS; word++)
            p->cells[(unsigned)row * WORDS + word] |= cells_of(&cells, word);
    }
}

void tside_i_paper_take_line(tside_i_paper *paper, const tside_i_line *l)
{
    const double x = (l->x - paper->left) * paper->across, y = (l->y - paper->bottom) * paper->up,
                 x_end = (l->x_end - paper->left) * paper->across, y_end = (l->y_end - paper->bottom) * paper->up;
    if (x == x_end || y == y_end)
        take_straight(paper, x, y, x_end, y_end);
    else if (is_on_paper(x, y) && is_on_paper(x_end, y_end) && y < y_end)
        take_slanted(paper, x, y, x_end, y_end);
    else if (is_on_paper(x, y) && is_on_paper(x_end, y_end))
        take_slanted(paper, x_end, y_end, x, y);
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
