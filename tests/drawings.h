/* SPDX-License-Identifier: MIT */
/* Sides that are drawn, and what of a drawing is asked. */
#ifndef TUNNELSIDE_DRAWINGS_H
#define TUNNELSIDE_DRAWINGS_H

#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

static inline void draw(const tside_side *side, const tside_plan *plan, tside_view view, tside_which_end end,
                        double scale, tside_drawing *drawing)
{
    const tside_picture picture = {.view = view, .end = end, .tape = TSIDE_TAPE_INCH, .scale = scale};
    tside_fault fault;
    ANSWERS(tside_draw(side, plan, &picture, drawing, &fault));
    ck_assert_int_le(drawing->stroke_count, TSIDE_STROKES);
    ck_assert_int_gt(drawing->stroke_count, 5);
}

static inline double turned(const tside_side *side, tside_which_end end)
{
    return (side->hand == TSIDE_RIGHT) == (end == TSIDE_DRIVE_END) ? 1 : -1;
}

/* How far the nearest end of a part's straight strokes is from a place, as seen. */
static inline double nearest(const tside_drawing *drawing, tside_part part, double x, double y)
{
    double least = HUGE_VAL;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part == part && !stroke->arc)
            least = fmin(least, fmin(hypot(stroke->x - x, stroke->y - y), hypot(stroke->x_end - x, stroke->y_end - y)));
    }
    return least;
}

static inline void has_corner(const tside_drawing *drawing, tside_part part, double x, double y, const char *what)
{
    NEAR(nearest(drawing, part, x, y), 0, 1e-12, what, 0);
}

static inline void has_circle(const tside_drawing *drawing, tside_part part, double x, double y, double radius,
                              const char *what)
{
    double least = HUGE_VAL;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part == part && stroke->arc)
            least = fmin(least, fabs(stroke->x - x) + fabs(stroke->y - y) + fabs(stroke->radius - radius));
    }
    NEAR(least, 0, 1e-12, what, 0);
}

static inline const tside_dimension *told(const tside_drawing *drawing, tside_tells tells)
{
    for (int i = 0; i < drawing->dimension_count; i++)
        if (drawing->dimensions[i].tells == tells)
            return drawing->dimensions + i;
    return NULL;
}

/* A measure is the plan's own number, to the last bit, and where it has a line that is as long. */
static inline void tells(const tside_drawing *drawing, tside_tells what, double value)
{
    const tside_dimension *d = told(drawing, what);
    ck_assert_msg(d != NULL, "measure %d is not told", what);
    ck_assert_msg(memcmp(&d->value, &value, sizeof value) == 0, "measure %d: %.17g, and it is %.17g", what, d->value,
                  value);
    if (what == TSIDE_TELLS_ROPE_PITCH)
        NEAR(fabs(d->x_end - d->x), value, 1e-12, "along the house", (int)what);
    else if (d->kind == TSIDE_DIMENSION_PLUMB || d->kind == TSIDE_DIMENSION_PLACE)
        NEAR(fabs(d->y_end - d->y), fabs(value), 1e-12, "up the page", (int)what);
    else if (d->kind == TSIDE_DIMENSION_DIAMETER)
        NEAR(hypot(d->x_end - d->x, d->y_end - d->y), value, 1e-12, "across a circle", (int)what);
    else
        NEAR(fabs(d->x_end - d->x), fabs(value), 1e-12, "across the page", (int)what);
}

/* Sides of every shape, either hand. */
enum { SIDES = 6 };

static inline tside_side side_of(int number)
{
    tside_side side;
    bench_any_side(&side, number);
    side.hand = number / 3 ? TSIDE_LEFT : TSIDE_RIGHT;
    side.drive.along = number / 3 ? -0.02 : 0;
    side.drive_end.extender.spacer = number / 3 ? 0.01 : 0;
    return side;
}

static inline const tside_end_plan *planned_end(const tside_plan *plan, int end)
{
    return end == TSIDE_DRIVE_END ? &plan->drive_end : &plan->free_end;
}

static inline const tside_end *asked_end(const tside_side *side, int end)
{
    return end == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
}

#endif
