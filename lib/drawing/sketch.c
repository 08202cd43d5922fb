/* SPDX-License-Identifier: MIT */
/*
 * Strokes: put down as they stand outboard and up, kept as they are seen, and cut off where the view is cropped.
 * Source: derivation, plane geometry.
 */
#include "drawing/sketch.h"

#include "shape/bow.h"

void tside_i_sketch_begin(const tside_i_setup *setup, const tside_plan *plan, const tside_picture *picture,
                          const tside_i_hung *drive, const tside_i_spot *asked, tside_drawing *drawing,
                          tside_i_sketch *sketch)
{
    *sketch = (tside_i_sketch){.setup = setup,
                               .plan = plan,
                               .drive = drive,
                               .asked = asked,
                               .drawing = drawing,
                               .outboard = 1,
                               .left = HUGE_VAL,
                               .bottom = HUGE_VAL,
                               .right = -HUGE_VAL,
                               .top = -HUGE_VAL};
    tside_i_sketch_crop(sketch, -HUGE_VAL, -HUGE_VAL, HUGE_VAL, HUGE_VAL);
    drawing->picture = *picture;
    drawing->outboard = 0;
    drawing->stroke_count = drawing->dimension_count = drawing->note_count = 0;
}

void tside_i_sketch_from_outside(tside_i_sketch *sketch, tside_which_end which)
{
    sketch->drawing->outboard = tside_i_outboard_is_right(sketch->setup->side, which) ? 1 : -1;
    sketch->outboard = sketch->drawing->outboard;
}

void tside_i_sketch_crop(tside_i_sketch *sketch, double inner, double bottom, double outer, double top)
{
    const double a = sketch->outboard * inner, b = sketch->outboard * outer;
    sketch->crop = (tside_i_frame){fmin(a, b), bottom, fmax(a, b), top};
}

/* --- putting down --- */

static void spread(tside_i_sketch *sketch, double x, double y)
{
    sketch->left = fmin(sketch->left, x);
    sketch->right = fmax(sketch->right, x);
    sketch->bottom = fmin(sketch->bottom, y);
    sketch->top = fmax(sketch->top, y);
}

static void put(tside_i_sketch *sketch, const tside_i_pen *pen, tside_stroke stroke)
{
    tside_drawing *drawing = sketch->drawing;
    if (drawing->stroke_count == TSIDE_STROKES) {
        sketch->overflows = 1;
        return;
    }
    stroke.part = pen->part;
    stroke.shown = pen->shown;
    stroke.line = pen->line;
    stroke.index = pen->index;
    drawing->strokes[drawing->stroke_count++] = stroke;
}

/* Moves the ends of what goes from 0 to 1 to where it is on the right side of an edge; away: how far it is beyond. */
static void trim(double away, double away_end, double *from, double *to)
{
    if (away > 0 && away_end > 0)
        *to = -1;
    else if (away > 0)
        *from = fmax(*from, away / (away - away_end));
    else if (away_end > 0)
        *to = fmin(*to, away / (away - away_end));
}

void tside_i_segment(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end)
{
    const tside_i_frame *crop = &sketch->crop;
    const double u = sketch->outboard * x, u_end = sketch->outboard * x_end;
    double from = 0, to = 1;
    tside_stroke stroke;
    trim(crop->left - u, crop->left - u_end, &from, &to);
    trim(u - crop->right, u_end - crop->right, &from, &to);
    trim(crop->bottom - y, crop->bottom - y_end, &from, &to);
    trim(y - crop->top, y_end - crop->top, &from, &to);
    if (from >= to)
        return;
    stroke = (tside_stroke){.x = from > 0 ? u + from * (u_end - u) : u,
                            .y = from > 0 ? y + from * (y_end - y) : y,
                            .x_end = to < 1 ? u + to * (u_end - u) : u_end,
                            .y_end = to < 1 ? y + to * (y_end - y) : y_end};
    put(sketch, &pen, stroke);
    spread(sketch, stroke.x, stroke.y);
    spread(sketch, stroke.x_end, stroke.y_end);
}

static int is_within(const tside_i_frame *crop, double x, double y)
{
    return x >= crop->left && x <= crop->right && y >= crop->bottom && y <= crop->top;
}

/* A piece of an arc, as seen, that no edge cuts. */
static void put_piece(tside_i_sketch *sketch, const tside_i_pen *pen, const tside_stroke *arc, double from, double to)
{
    const double middle = (from + to) / 2;
    tside_stroke stroke = *arc;
    if (!(from < to) ||
        !is_within(&sketch->crop, arc->x + arc->radius * cos(middle), arc->y + arc->radius * sin(middle)))
        return;
    stroke.from = from;
    stroke.sweep = to - from;
    put(sketch, pen, stroke);
    spread(sketch, arc->x + arc->radius * cos(from), arc->y + arc->radius * sin(from));
    spread(sketch, arc->x + arc->radius * cos(to), arc->y + arc->radius * sin(to));
    for (int quarter = (int)ceil(from / (TSIDE_PI / 2)); quarter * (TSIDE_PI / 2) < to; quarter++)
        spread(sketch, arc->x + arc->radius * cos(quarter * (TSIDE_PI / 2)),
               arc->y + arc->radius * sin(quarter * (TSIDE_PI / 2)));
}

enum { CUTS = 8 }; /* a circle meets four edges twice each */

typedef struct cuts {
    double from, to; /* rad, of the arc */
    double at[CUTS + 1];
    int count;
} cuts;

/* Keeps an angle at which a circle meets an edge, if the arc comes there, in their order. */
static void keep_cut(cuts *c, double angle)
{
    int i;
    double at = angle + 2 * TSIDE_PI * ceil((c->from - angle) / (2 * TSIDE_PI));
    if (!(at > c->from) || !(at < c->to))
        return;
    for (i = c->count++; i > 0 && c->at[i - 1] > at; i--)
        c->at[i] = c->at[i - 1];
    c->at[i] = at;
}

/* Where a circle meets an edge that lies so many radii from its centre, at an angle from level. */
static void cut_at_edge(cuts *c, double away, double heading)
{
    if (!(fabs(away) < 1))
        return;
    keep_cut(c, heading + acos(away));
    keep_cut(c, heading - acos(away));
}

void tside_i_arc(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double radius, double from, double sweep)
{
    const tside_i_frame *crop = &sketch->crop;
    const tside_stroke arc = {.arc = 1, .x = sketch->outboard * x, .y = y, .radius = radius};
    const double first = sketch->outboard > 0 ? from : TSIDE_PI - from - sweep;
    cuts c = {.from = first, .to = first + sweep};
    cut_at_edge(&c, (crop->left - arc.x) / radius, 0);
    cut_at_edge(&c, (crop->right - arc.x) / radius, 0);
    cut_at_edge(&c, (crop->bottom - y) / radius, TSIDE_PI / 2);
    cut_at_edge(&c, (crop->top - y) / radius, TSIDE_PI / 2);
    c.at[c.count] = c.to;
    for (int i = 0; i <= c.count; i++)
        put_piece(sketch, &pen, &arc, i ? c.at[i - 1] : c.from, c.at[i]);
}

void tside_i_circle(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double radius)
{
    tside_i_arc(sketch, pen, x, y, radius, 0, 2 * TSIDE_PI);
}

void tside_i_rectangle(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end)
{
    tside_i_segment(sketch, pen, x, y, x_end, y);
    tside_i_segment(sketch, pen, x_end, y, x_end, y_end);
    tside_i_segment(sketch, pen, x_end, y_end, x, y_end);
    tside_i_segment(sketch, pen, x, y_end, x, y);
}

void tside_i_tube(tside_i_sketch *sketch, tside_i_pen pen, double x, double y, double x_end, double y_end, double width)
{
    const double length = hypot(x_end - x, y_end - y), nx = (y_end - y) / length * width / 2,
                 ny = -(x_end - x) / length * width / 2;
    if (!(length > 0))
        return;
    tside_i_segment(sketch, pen, x + nx, y + ny, x_end + nx, y_end + ny);
    tside_i_segment(sketch, pen, x_end + nx, y_end + ny, x_end - nx, y_end - ny);
    tside_i_segment(sketch, pen, x_end - nx, y_end - ny, x - nx, y - ny);
    tside_i_segment(sketch, pen, x - nx, y - ny, x + nx, y + ny);
}

/* A piece of a path, u from its lower end on, so far outward from it. */
static void put_path_piece(tside_i_sketch *sketch, tside_i_pen pen, const tside_piece *piece, double u, double u_end,
                           double out)
{
    const tside_bow_point a = tside_i_piece_at(piece, u), b = tside_i_piece_at(piece, u_end);
    double radius, x, y;
    if (piece->curvature == 0) {
        tside_i_segment(sketch, pen, a.x + out * sin(a.heading), a.y - out * cos(a.heading), b.x + out * sin(b.heading),
                        b.y - out * cos(b.heading));
        return;
    }
    radius = 1 / piece->curvature;
    x = a.x - radius * sin(a.heading);
    y = a.y + radius * cos(a.heading);
    if (radius > 0)
        tside_i_arc(sketch, pen, x, y, radius + out, a.heading - TSIDE_PI / 2, b.heading - a.heading);
    else
        tside_i_arc(sketch, pen, x, y, -radius - out, b.heading + TSIDE_PI / 2, a.heading - b.heading);
}

void tside_i_path_strokes(tside_i_sketch *sketch, tside_i_pen pen, const tside_path *path, double from, double to,
                          double out)
{
    tside_piece below = path->piece[0]; /* below its foot it goes on straight */
    below.curvature = 0;
    if (from < 0)
        put_path_piece(sketch, pen, &below, from, fmin(to, 0), out);
    for (int i = 0; i < path->count; i++) {
        const tside_piece *piece = path->piece + i;
        const double u = fmax(from - piece->from, 0), u_end = fmin(to - piece->from, piece->length);
        if (u < u_end)
            put_path_piece(sketch, pen, piece, u, u_end, out);
    }
}

/* --- what is told of them --- */

void tside_i_dimension(tside_i_sketch *sketch, tside_tells tells, tside_dimension_kind kind, tside_i_beside beside,
                       double value, double x, double y, double x_end, double y_end)
{
    tside_drawing *drawing = sketch->drawing;
    if (drawing->dimension_count == TSIDE_DIMENSIONS) {
        sketch->overflows = 1;
        return;
    }
    sketch->beside[drawing->dimension_count] = beside;
    drawing->dimensions[drawing->dimension_count++] = (tside_dimension){.tells = tells,
                                                                        .kind = kind,
                                                                        .value = value,
                                                                        .x = sketch->outboard * x,
                                                                        .y = y,
                                                                        .x_end = sketch->outboard * x_end,
                                                                        .y_end = y_end};
}

void tside_i_note(tside_i_sketch *sketch, tside_part part, tside_shown shown, int index, double x, double y)
{
    tside_drawing *drawing = sketch->drawing;
    if (!is_within(&sketch->crop, sketch->outboard * x, y))
        return;
    if (drawing->note_count == TSIDE_NOTES) {
        sketch->overflows = 1;
        return;
    }
    drawing->notes[drawing->note_count++] = (tside_note){
        .part = part, .shown = shown, .index = index, .x = sketch->outboard * x, .y = y};
}

void tside_i_figure(tside_i_sketch *sketch, tside_i_beside beside, tside_note figure)
{
    tside_drawing *drawing = sketch->drawing;
    if (drawing->note_count == TSIDE_NOTES) {
        sketch->overflows = 1;
        return;
    }
    sketch->figure_beside[drawing->note_count] = beside;
    drawing->notes[drawing->note_count++] = figure;
}
