/* SPDX-License-Identifier: MIT */
/*
 * Opening, torque and lean over the drive's turns, one panel above the other on paper, or the opening alone: each value
 * as the turn table has it. The travel is followed stretch by stretch, so that where a value jumps both sides of the
 * jump are drawn.
 */
#include "drawing/views.h"

#include "base/field.h"
#include "side/turns.h"

/* m on paper */
#define WIDE 140e-3
#define HIGH 40e-3
#define APART 16e-3 /* from panel to panel */
#define TICK 1.5e-3
#define NAME 26e-3 /* middle of a panel's name, of which the longest then begins right of the axis */

/*
 * Of a step: where an axis may end though a value is beyond. An opening of 400 mm, or 40 in, is so many steps but for
 * rounding; it is more than step_of lets pass, so that no axis has more than its parts.
 */
#define ON_STEP 1e-8

enum { SHORT_LINES = 80, AXIS_PARTS = 5, TURN_PARTS = 8, CURVES = 3, MARKS = SHORT_LINES + 2 * TSIDE_STRETCHES };

static const tside_i_pen axis = {TSIDE_PART_AXIS, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_NARROW, 0};

/* What a panel shows: of which part, in which unit, and how large one of that is in SI. */
typedef struct panel {
    tside_part part;
    tside_figure_unit unit;
    double one;
    double least;          /* in the unit, how much its axis shows at least */
    double from, to, step; /* in the unit, of its axis */
    double foot;           /* m on paper, its lower edge */
} panel;

/* The curves, point by point. */
typedef struct figures {
    tside_i_sketch *sketch;
    double shut; /* rad, the drive's angle when shut */
    int count;
    double turns[MARKS];
    double values[CURVES][MARKS]; /* in SI */
    int panel_count;
    panel panels[CURVES]; /* from the uppermost */
} figures;

/* --- what is drawn --- */

static double angle_at(const tside_i_sketch *sketch, const tside_i_spot *spot)
{
    return tside_i_drive_angle(&sketch->setup->travel, tside_i_hang_of(sketch->drive), spot);
}

static double turns_at(const figures *f, const tside_i_spot *spot)
{
    return (angle_at(f->sketch, spot) - f->shut) / (2 * TSIDE_PI);
}

static void keep_point(figures *f, const tside_i_spot *spot)
{
    const tside_turn turn = tside_i_turn_at(f->sketch->setup, f->sketch->drive, spot, turns_at(f, spot));
    f->turns[f->count] = turn.turn;
    f->values[0][f->count] = turn.opening;
    f->values[1][f->count] = turn.torque;
    f->values[2][f->count] = turn.lean;
    f->count++;
}

/* Each stretch by as many short lines as is its share of the travel, and one at least. */
static void follow(figures *f)
{
    const tside_travel *travel = &f->sketch->setup->travel;
    const double whole = travel->end - travel->wraps_shut;
    for (int i = 0; i < travel->stretches; i++) {
        const double from = travel->stretch[i].from, to = tside_i_stretch_end(travel, i);
        const int lines = 1 + (whole > 0 ? (int)(SHORT_LINES * (to - from) / whole) : 0);
        for (int k = 0; k <= lines; k++) {
            tside_i_spot spot;
            tside_i_travel_spot(travel, i, k < lines ? from + (to - from) * k / lines : to, &spot);
            keep_point(f, &spot);
        }
    }
}

/* --- axes --- */

/* A step of 1, 2 or 5 in the last place by which a range has no more parts than are wanted, but for rounding. */
static double step_of(double range, int parts)
{
    const double least = range / parts, power = pow(10, floor(log10(least)));
    const double times = least / power;
    return power * (times <= 1 + SLACK ? 1 : times <= 2 + SLACK ? 2 : times <= 5 + SLACK ? 5 : 10);
}

/* An axis that begins and ends on a step, and holds nought. */
static void scale_axis(panel *p, const double *values, int count, int parts)
{
    double least = 0, most = 0;
    for (int i = 0; i < count; i++) {
        least = fmin(least, values[i] / p->one);
        most = fmax(most, values[i] / p->one);
    }
    most = fmax(most, least + p->least); /* what is as good as nothing looks so */
    p->step = step_of(most - least, parts - 1);
    p->from = p->step * floor(least / p->step + ON_STEP);
    p->to = p->step * ceil(most / p->step - ON_STEP);
}

static double up(const panel *p, double value)
{
    return p->foot + HIGH * (value - p->from) / (p->to - p->from);
}

static void put_figure(const figures *f, tside_i_beside beside, const panel *p, double value, double x, double y)
{
    tside_i_figure(f->sketch, beside,
                   (tside_note){.part = p->part, .unit = p->unit, .numbered = 1, .value = value, .x = x, .y = y});
}

static void put_name(const figures *f, tside_part part, tside_figure_unit unit, double x, double y)
{
    tside_i_figure(f->sketch, TSIDE_I_ABOVE, (tside_note){.part = part, .unit = unit, .x = x, .y = y});
}

/* --- a panel --- */

static void draw_curve(const figures *f, const panel *p, const double *values, double wide)
{
    const tside_i_pen pen = {p->part, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    for (int i = 1; i < f->count; i++)
        tside_i_segment(f->sketch, pen, wide * f->turns[i - 1], up(p, values[i - 1] / p->one), wide * f->turns[i],
                        up(p, values[i] / p->one));
}

/* Ticks and numbers up an axis, and a line at nought where that is not its foot. */
static void draw_upright(const figures *f, const panel *p)
{
    const int steps = (int)lround((p->to - p->from) / p->step);
    tside_i_segment(f->sketch, axis, 0, p->foot, 0, p->foot + HIGH);
    tside_i_segment(f->sketch, axis, 0, up(p, 0), WIDE, up(p, 0));
    for (int i = 0; i <= steps; i++) {
        const double y = p->foot + HIGH * i / steps;
        tside_i_segment(f->sketch, axis, -TICK, y, 0, y);
        put_figure(f, TSIDE_I_INBOARD, p, p->step * ((int)lround(p->from / p->step) + i), 0, y);
    }
}

/* Ticks along a panel's foot, with their numbers below the lowest. */
static void draw_level(const figures *f, const panel *p, const panel *turns, int numbered)
{
    if (p->from < 0)
        tside_i_segment(f->sketch, axis, 0, p->foot, WIDE, p->foot);
    for (int i = 0; i * turns->step <= turns->to; i++) {
        const double x = WIDE * i * turns->step / turns->to;
        tside_i_segment(f->sketch, axis, x, p->foot, x, p->foot - TICK);
        if (numbered)
            put_figure(f, TSIDE_I_BELOW, turns, i * turns->step, x, p->foot);
    }
}

static void draw_asked(const figures *f, double wide)
{
    const tside_i_pen pen = {TSIDE_PART_AXIS, TSIDE_SHOWN_AT_TURNS, TSIDE_LINE_CHAIN, 0};
    const double x = wide * (f->sketch->asked ? turns_at(f, f->sketch->asked) : 0);
    if (f->sketch->asked)
        for (int i = 0; i < f->panel_count; i++)
            tside_i_segment(f->sketch, pen, x, f->panels[i].foot, x, f->panels[i].foot + HIGH);
}

static void draw_panels(figures *f)
{
    panel turns = {.part = TSIDE_PART_AXIS, .unit = TSIDE_FIGURE_TURN, .one = 1, .least = 1};
    double wide;
    scale_axis(&turns, f->turns, f->count, TURN_PARTS);
    wide = WIDE / turns.to;
    for (int i = 0; i < f->panel_count; i++) {
        panel *p = f->panels + i;
        p->foot = (f->panel_count - 1 - i) * (HIGH + APART);
        scale_axis(p, f->values[i], f->count, AXIS_PARTS);
        draw_upright(f, p);
        draw_level(f, p, &turns, i == f->panel_count - 1);
        draw_curve(f, p, f->values[i], wide);
        put_name(f, p->part, p->unit, NAME, p->foot + HIGH);
    }
    tside_i_figure(f->sketch, TSIDE_I_BELOW,
                   (tside_note){.part = TSIDE_PART_AXIS, .unit = TSIDE_FIGURE_TURN, .x = WIDE / 2, .y = -7e-3});
    draw_asked(f, wide);
}

void tside_i_draw_turns(tside_i_sketch *sketch)
{
    const int inch = sketch->picture.tape == TSIDE_TAPE_INCH;
    figures f = {.sketch = sketch,
                 .shut = angle_at(sketch, &sketch->setup->track.shut),
                 .panel_count = sketch->picture.view == TSIDE_VIEW_OPENING ? 1 : CURVES,
                 .panels = {{.part = TSIDE_PART_OPENING,
                             .unit = inch ? TSIDE_FIGURE_INCH : TSIDE_FIGURE_MILLIMETRE,
                             .one = inch ? IN : MM,
                             .least = inch ? 1 : 20},
                            {.part = TSIDE_PART_TORQUE,
                             .unit = inch ? TSIDE_FIGURE_POUND_FOOT : TSIDE_FIGURE_NEWTON_METRE,
                             .one = inch ? LBF * FT : 1,
                             .least = 1},
                            {.part = TSIDE_PART_LEAN, .unit = TSIDE_FIGURE_DEGREE, .one = DEG, .least = 1}}};
    sketch->picture.scale = 1;
    follow(&f);
    draw_panels(&f);
}
