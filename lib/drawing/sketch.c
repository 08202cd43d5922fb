/* SPDX-License-Identifier: MIT */
/*
 * Strokes: put down as they stand outboard and up, kept as they are seen, and cut off where the view is cropped;
 * counted before they are kept where they may be too many, so that nothing is handed over of a drawing that is refused.
 * Source: derivation, plane geometry.
 */
#include "drawing/sketch.h"

#include "base/fault.h"
#include "shape/bow.h"

/* m; what is shorter is of no length but for rounding, and whether a stroke is there must not hang on that. */
#define NO_LENGTH 1e-9

void tside_i_sketch_begin(const tside_i_setup *setup, const tside_plan *plan, const tside_picture *picture,
                          const tside_i_hung *drive, const tside_i_spot *asked, tside_drawing *drawing,
                          tside_i_sketch *sketch)
{
    *sketch = (tside_i_sketch){
        .setup = setup, .plan = plan, .picture = *picture, .drive = drive, .asked = asked, .drawing = drawing};
}

/* Refused where it is more than a drawing holds, of which then no more is kept than that. */
static tside_status put_down(tside_i_sketch *sketch, tside_i_view *view, int keeps, tside_fault *fault)
{
    sketch->keeps = keeps;
    sketch->strokes = sketch->dimensions = sketch->notes = 0;
    sketch->left = sketch->bottom = HUGE_VAL;
    sketch->right = sketch->top = -HUGE_VAL;
    sketch->outboard = 1;
    tside_i_sketch_crop(sketch, -HUGE_VAL, -HUGE_VAL, HUGE_VAL, HUGE_VAL);
    view(sketch);
    if (sketch->strokes > TSIDE_STROKES)
        REFUSE(fault, TSIDE_NOT_MODELLED, "drawing.strokes", "", "more lines than a drawing holds", "1",
               sketch->strokes, TSIDE_ABOVE, TSIDE_STROKES, 0);
    if (sketch->dimensions > TSIDE_DIMENSIONS)
        REFUSE(fault, TSIDE_NOT_MODELLED, "drawing.dimensions", "", "more measures than a drawing holds", "1",
               sketch->dimensions, TSIDE_ABOVE, TSIDE_DIMENSIONS, 0);
    if (sketch->notes > TSIDE_NOTES)
        REFUSE(fault, TSIDE_NOT_MODELLED, "drawing.notes", "", "more words than a drawing holds", "1", sketch->notes,
               TSIDE_ABOVE, TSIDE_NOTES, 0);
    return TSIDE_OK;
}

tside_status tside_i_sketch_draw(tside_i_sketch *sketch, tside_i_view *view, int may_be_many, tside_fault *fault)
{
    tside_drawing *drawing = sketch->drawing;
    if (may_be_many)
        TRY(put_down(sketch, view, 0, fault));
    TRY(put_down(sketch, view, 1, fault));
    drawing->picture = sketch->picture;
    drawing->outboard = sketch->hand;
    drawing->stroke_count = sketch->strokes;
    drawing->dimension_count = sketch->dimensions;
    drawing->note_count = sketch->notes;
    return TSIDE_OK;
}

void tside_i_sketch_from_outside(tside_i_sketch *sketch, tside_which_end which)
{
    sketch->hand = tside_i_outboard_is_right(sketch->setup->side, which) ? 1 : -1;
    sketch->outboard = sketch->hand;
}

void tside_i_sketch_crop(tside_i_sketch *sketch, double inner, double bottom, double outer, double top)
{
    const double a = sketch->outboard * inner, b = sketch->outboard * outer;
    sketch->crop = (tside_i_frame){fmin(a, b), bottom, fmax(a, b), top};
}

/* --- putting down --- */

static void spread(tside_i_sketch *sketch, double x, double y)
{
    if (x < sketch->left)
        sketch->left = x;
    if (x > sketch->right)
        sketch->right = x;
    if (y < sketch->bottom)
        sketch->bottom = y;
    if (y > sketch->top)
        sketch->top = y;
}

/* What a drawing holds of a kind is kept, if it is not to be counted alone. */
static int keeps(const tside_i_sketch *sketch, int at, int held)
{
    return sketch->keeps && at < held;
}

static void keep(tside_i_sketch *sketch, const tside_i_pen *pen, const tside_stroke *stroke)
{
    const int at = sketch->strokes++;
    tside_stroke *kept = sketch->drawing->strokes + at;
    if (!keeps(sketch, at, TSIDE_STROKES))
        return;
    *kept = *stroke;
    kept->part = pen->part;
    kept->shown = pen->shown;
    kept->line = pen->line;
    kept->index = pen->index;
}

static int is_within(const tside_i_frame *crop, double x, double y)
{
    return x >= crop->left && x <= crop->right && y >= crop->bottom && y <= crop->top;
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
    if (fabs(u_end - u) < NO_LENGTH && fabs(y_end - y) < NO_LENGTH)
        return;
    if (!is_within(crop, u, y) || !is_within(crop, u_end, y_end)) {
        trim(crop->left - u, crop->left - u_end, &from, &to);
        trim(u - crop->right, u_end - crop->right, &from, &to);
        trim(crop->bottom - y, crop->bottom - y_end, &from, &to);
        trim(y - crop->top, y_end - crop->top, &from, &to);
        if (from >= to)
            return;
    }
    stroke = (tside_stroke){.x = from > 0 ? u + from * (u_end - u) : u,
                            .y = from > 0 ? y + from * (y_end - y) : y,
                            .x_end = to < 1 ? u + to * (u_end - u) : u_end,
                            .y_end = to < 1 ? y + to * (y_end - y) : y_end};
    keep(sketch, &pen, &stroke);
    spread(sketch, stroke.x, stroke.y);
    spread(sketch, stroke.x_end, stroke.y_end);
}

static void spread_on_circle(tside_i_sketch *sketch, const tside_stroke *arc, double angle)
{
    spread(sketch, arc->x + arc->radius * cos(angle), arc->y + arc->radius * sin(angle));
}

static void spread_arc(tside_i_sketch *sketch, const tside_stroke *arc)
{
    const double to = arc->from + arc->sweep;
    if (arc->sweep >= 2 * TSIDE_PI) {
        spread(sketch, arc->x - arc->radius, arc->y - arc->radius);
        spread(sketch, arc->x + arc->radius, arc->y + arc->radius);
        return;
    }
    spread_on_circle(sketch, arc, arc->from);
    spread_on_circle(sketch, arc, to);
    for (int quarter = (int)ceil(arc->from / (TSIDE_PI / 2)); quarter * (TSIDE_PI / 2) < to; quarter++)
        spread_on_circle(sketch, arc, quarter * (TSIDE_PI / 2));
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
    keep(sketch, pen, &stroke);
    spread_arc(sketch, &stroke);
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
        const double right = out * sin(a.heading), down = out * cos(a.heading);
        tside_i_segment(sketch, pen, a.x + right, a.y - down, b.x + right, b.y - down);
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
    const int at = sketch->dimensions++;
    if (!keeps(sketch, at, TSIDE_DIMENSIONS))
        return;
    sketch->beside[at] = beside;
    sketch->drawing->dimensions[at] = (tside_dimension){.tells = tells,
                                                        .kind = kind,
                                                        .value = value,
                                                        .x = sketch->outboard * x,
                                                        .y = y,
                                                        .x_end = sketch->outboard * x_end,
                                                        .y_end = y_end};
}

void tside_i_pitch(tside_i_sketch *sketch, tside_tells tells, double pitch, int times, double x, double y)
{
    const int at = sketch->dimensions;
    tside_i_dimension(sketch, tells, TSIDE_DIMENSION_PLACE, TSIDE_I_ABOVE, pitch, x, y, x + pitch, y);
    if (keeps(sketch, at, TSIDE_DIMENSIONS))
        sketch->drawing->dimensions[at].times = times;
}

void tside_i_figure(tside_i_sketch *sketch, tside_i_beside beside, tside_note figure)
{
    const int at = sketch->notes++;
    if (!keeps(sketch, at, TSIDE_NOTES))
        return;
    sketch->figure_beside[at] = beside;
    sketch->drawing->notes[at] = figure;
}

void tside_i_note(tside_i_sketch *sketch, tside_part part, tside_shown shown, int index, double x, double y)
{
    const tside_note note = {.part = part, .shown = shown, .index = index, .x = sketch->outboard * x, .y = y};
    if (is_within(&sketch->crop, note.x, note.y))
        tside_i_figure(sketch, TSIDE_I_OUTBOARD, note);
}
