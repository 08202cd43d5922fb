/* SPDX-License-Identifier: MIT */
/*
 * A view told stroke by stroke, apart from what draws it: each line told is cut at the view's edges here, by another
 * way than there, and must be among the strokes, once; so must each dimension, between its points, and each note but a
 * few, for which there may be no room. What is drawn and was not told fails too.
 */
#ifndef TUNNELSIDE_PORTRAITS_H
#define TUNNELSIDE_PORTRAITS_H

#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

typedef struct portrait {
    const tside_drawing *drawing;
    const char *what;
    int number;
    double outboard;                 /* 1, or -1 where outboard is to the left as seen */
    double left, bottom, right, top; /* m, the view's edges as seen */
    double paper;                    /* m, a metre on paper */
    int index;                       /* which keep-out or joint is being told */
    int left_out, may_lack;          /* notes told that found no room; so many may */
    char stroke[TSIDE_STROKES], note[TSIDE_NOTES], dimension[TSIDE_DIMENSIONS]; /* 1: told */
} portrait;

/* m: of sums of a dozen lengths of up to 100 m */
#define SAME 1e-11

static inline void portrait_begin(portrait *p, const tside_drawing *drawing, const char *what, int number,
                                  double outboard)
{
    memset(p, 0, sizeof *p);
    p->drawing = drawing;
    p->what = what;
    p->number = number;
    p->outboard = outboard;
    p->left = p->bottom = -HUGE_VAL;
    p->right = p->top = HUGE_VAL;
    p->paper = drawing->picture.scale;
    p->may_lack = 1;
}

/* The view's edges, outboard and up. */
static inline void is_framed(portrait *p, double inner, double bottom, double outer, double top)
{
    p->left = p->outboard > 0 ? inner : -outer;
    p->right = p->outboard > 0 ? outer : -inner;
    p->bottom = bottom;
    p->top = top;
}

/* Liang and Barsky: what of a line is within a pair of edges. */
static inline void cut_between(double at, double step, double low, double high, double *from, double *to)
{
    if (step > 0 || step < 0) {
        const double a = (low - at) / step, b = (high - at) / step;
        *from = fmax(*from, fmin(a, b));
        *to = fmin(*to, fmax(a, b));
    } else if (at < low || at > high)
        *to = -HUGE_VAL;
}

static inline int is_at(double x, double y, double other_x, double other_y)
{
    return hypot(x - other_x, y - other_y) < SAME;
}

/* Whether a stroke goes from one place to another, or back. */
static inline int joins(const tside_stroke *s, double x, double y, double x_end, double y_end)
{
    return (is_at(s->x, s->y, x, y) && is_at(s->x_end, s->y_end, x_end, y_end)) ||
           (is_at(s->x, s->y, x_end, y_end) && is_at(s->x_end, s->y_end, x, y));
}

static inline void has_line(portrait *p, tside_part part, tside_shown shown, tside_line_type line, double x, double y,
                            double x_end, double y_end)
{
    const double u = p->outboard * x, du = p->outboard * x_end - u, dy = y_end - y;
    double from = 0, to = 1;
    cut_between(u, du, p->left, p->right, &from, &to);
    cut_between(y, dy, p->bottom, p->top, &from, &to);
    if (from >= to || (to - from) * hypot(du, dy) < SAME)
        return; /* a place is no line */
    for (int i = 0; i < p->drawing->stroke_count; i++) {
        const tside_stroke *s = p->drawing->strokes + i;
        if (p->stroke[i] || s->arc || s->part != part || s->shown != shown || s->line != line || s->index != p->index ||
            !joins(s, u + from * du, y + from * dy, u + to * du, y + to * dy))
            continue;
        p->stroke[i] = 1;
        return;
    }
    ck_abort_msg("%s %d: no line of part %d, shown %d, type %d, from %g, %g to %g, %g", p->what, p->number, (int)part,
                 (int)shown, (int)line, u, y, u + du, y_end);
}

static inline void has_box(portrait *p, tside_part part, tside_shown shown, tside_line_type line, double x, double y,
                           double x_end, double y_end)
{
    has_line(p, part, shown, line, x, y, x_end, y);
    has_line(p, part, shown, line, x_end, y, x_end, y_end);
    has_line(p, part, shown, line, x_end, y_end, x, y_end);
    has_line(p, part, shown, line, x, y_end, x, y);
}

/* A tube from one place so far on at an angle from plumb, down and outboard. */
static inline void has_tube(portrait *p, tside_part part, tside_shown shown, tside_line_type line, double x, double y,
                            double length, double angle, double width)
{
    const double across_x = cos(angle) * width / 2, across_y = sin(angle) * width / 2, x_end = x + length * sin(angle),
                 y_end = y - length * cos(angle);
    has_line(p, part, shown, line, x - across_x, y - across_y, x_end - across_x, y_end - across_y);
    has_line(p, part, shown, line, x_end - across_x, y_end - across_y, x_end + across_x, y_end + across_y);
    has_line(p, part, shown, line, x_end + across_x, y_end + across_y, x + across_x, y + across_y);
    has_line(p, part, shown, line, x + across_x, y + across_y, x - across_x, y - across_y);
}

/* Whole, with no edge across it. */
static inline void has_whole_circle(portrait *p, tside_part part, tside_shown shown, tside_line_type line, double x,
                                    double y, double radius)
{
    for (int i = 0; i < p->drawing->stroke_count; i++) {
        const tside_stroke *s = p->drawing->strokes + i;
        if (p->stroke[i] || !s->arc || s->part != part || s->shown != shown || s->line != line ||
            !is_at(s->x, s->y, p->outboard * x, y) || !(fabs(s->radius - radius) < SAME) ||
            !(fabs(s->sweep - 2 * PI) < SAME))
            continue;
        p->stroke[i] = 1;
        return;
    }
    ck_abort_msg("%s %d: no circle of part %d, shown %d, at %g, %g, radius %g", p->what, p->number, (int)part,
                 (int)shown, x, y, radius);
}

/* Level ground, and strokes that mark it, half as far across and down as from one to the next. */
static inline void has_ground(portrait *p, double left, double right, double ground)
{
    const double step = 5e-3 * p->paper;
    const int marks = 1 + (int)floor((right - left) / step - 0.5 + 1e-9);
    has_line(p, TSIDE_PART_GROUND, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, p->outboard * left, ground, p->outboard * right,
             ground);
    for (int i = 0; i < marks; i++)
        has_line(p, TSIDE_PART_GROUND, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_NARROW, p->outboard * (left + i * step),
                 ground - step / 2, p->outboard * (left + i * step + step / 2), ground);
}

static inline void has_note(portrait *p, tside_part part, tside_shown shown, double x, double y)
{
    const double u = p->outboard * x;
    if (u < p->left || u > p->right || y < p->bottom || y > p->top)
        return;
    for (int i = 0; i < p->drawing->note_count; i++) {
        const tside_note *n = p->drawing->notes + i;
        if (p->note[i] || n->part != part || n->shown != shown || n->index != p->index || !is_at(n->x, n->y, u, y))
            continue;
        p->note[i] = 1;
        return;
    }

    p->left_out++;
}

static inline void has_dimension(portrait *p, tside_tells tells, tside_dimension_kind kind, double x, double y,
                                 double x_end, double y_end)
{
    for (int i = 0; i < p->drawing->dimension_count; i++) {
        const tside_dimension *d = p->drawing->dimensions + i;
        if (p->dimension[i] || d->tells != tells || d->kind != kind || !is_at(d->x, d->y, p->outboard * x, y) ||
            !is_at(d->x_end, d->y_end, p->outboard * x_end, y_end))
            continue;
        p->dimension[i] = 1;
        return;
    }
    ck_abort_msg("%s %d: measure %d is not of kind %d from %g, %g to %g, %g", p->what, p->number, (int)tells, (int)kind,
                 p->outboard * x, y, p->outboard * x_end, y_end);
}

/* All that is drawn was told, but for parts that are tested elsewhere, and names found room. */
static inline void has_no_more(const portrait *p, tside_part elsewhere, tside_part elsewhere_too)
{
    const tside_drawing *d = p->drawing;
    for (int i = 0; i < d->stroke_count; i++) {
        const tside_stroke *s = d->strokes + i;
        if (s->part != elsewhere && s->part != elsewhere_too)
            ck_assert_msg(p->stroke[i], "%s %d: a stroke of part %d, shown %d, type %d, at %g, %g to %g, %g", p->what,
                          p->number, (int)s->part, (int)s->shown, (int)s->line, s->x, s->y, s->x_end, s->y_end);
    }
    ck_assert_msg(p->left_out <= p->may_lack, "%s %d: %d names are missing", p->what, p->number, p->left_out);
    for (int i = 0; i < d->note_count; i++)
        ck_assert_msg(p->note[i], "%s %d: a note of part %d at %g, %g", p->what, p->number, (int)d->notes[i].part,
                      d->notes[i].x, d->notes[i].y);
    for (int i = 0; i < d->dimension_count; i++)
        ck_assert_msg(p->dimension[i], "%s %d: measure %d", p->what, p->number, (int)d->dimensions[i].tells);
}

#endif
