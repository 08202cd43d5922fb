/* SPDX-License-Identifier: MIT */
/*
 * What has its place keeps it: strokes and lines on the paper, texts there and by their boxes, so that a line may cross
 * lines and no text. Source: derivation, plane geometry.
 */
#include "drawing/room.h"

/* m on paper, about all strokes, where texts may stand */
#define AROUND 60e-3

int tside_i_is_led(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_ANGLE || d->kind == TSIDE_DIMENSION_RADIUS ||
           d->kind == TSIDE_DIMENSION_DIAMETER || d->kind == TSIDE_DIMENSION_PLACE;
}

int tside_i_is_outside_all(const tside_dimension *d)
{
    return d->kind == TSIDE_DIMENSION_PLUMB || d->kind == TSIDE_DIMENSION_LEVEL || d->kind == TSIDE_DIMENSION_RUNNING;
}

/* --- keeping --- */

static void take_place(tside_i_room *room, double x, double y)
{
    const tside_i_line point = {x, y, x, y};
    tside_i_paper_take_line(&room->paper, &point);
}

/* Figures have no strokes in the way of their texts. */
static void take_drawn(tside_i_room *room)
{
    const tside_drawing *drawing = room->drawing;
    for (int i = 0; i < drawing->stroke_count && !tside_i_is_of_figures(drawing->picture.view); i++)
        tside_i_paper_take_stroke(&room->paper, drawing->strokes + i);
    tside_i_paper_for_texts(&room->paper, room->sketch, (TSIDE_I_ASCENT + TSIDE_I_DESCENT) * room->scale);
    for (int i = 0; i < drawing->note_count; i++)
        take_place(room, drawing->notes[i].x, drawing->notes[i].y);
    for (int i = 0; i < drawing->dimension_count; i++)
        if (tside_i_is_led(drawing->dimensions + i))
            take_place(room, drawing->dimensions[i].x, drawing->dimensions[i].y);
}

void tside_i_room_begin(tside_i_room *room, const tside_i_sketch *sketch)
{
    tside_drawing *drawing = sketch->drawing;
    room->sketch = sketch;
    room->drawing = drawing;
    room->scale = drawing->picture.scale;
    room->text_count = room->leader_count = room->way_count = 0;
    for (int i = 0; i < drawing->dimension_count; i++)
        room->pending[i] = tside_i_is_outside_all(drawing->dimensions + i);
    tside_i_paper_begin(&room->paper, sketch, AROUND * room->scale);
    take_drawn(room);
}

static double lesser(double a, double b)
{
    return a < b ? a : b;
}

static double greater(double a, double b)
{
    return a > b ? a : b;
}

static tside_i_frame extent_of(const tside_i_line *l)
{
    return (tside_i_frame){lesser(l->x, l->x_end), lesser(l->y, l->y_end), greater(l->x, l->x_end),
                           greater(l->y, l->y_end)};
}

static void take_in(tside_drawing *d, const tside_i_frame *extent)
{
    d->left = lesser(d->left, extent->left);
    d->bottom = lesser(d->bottom, extent->bottom);
    d->right = greater(d->right, extent->right);
    d->top = greater(d->top, extent->top);
}

void tside_i_room_keep_text(tside_i_room *room, const tside_i_box *b)
{
    const tside_i_frame extent = {b->x - b->wide, b->y - b->high, b->x + b->wide, b->y + b->high};
    room->texts[room->text_count] = *b;
    room->extents[room->text_count++] = extent;
    tside_i_paper_take_box(&room->paper, b);
    take_in(room->drawing, &extent);
}

void tside_i_room_keep_line(tside_i_room *room, const tside_i_line *l)
{
    const tside_i_frame extent = extent_of(l);
    tside_i_paper_take_line(&room->paper, l);
    take_in(room->drawing, &extent);
}

void tside_i_room_keep_leader(tside_i_room *room, const tside_i_line *l)
{
    room->leaders[room->leader_count++] = *l;
    tside_i_room_keep_line(room, l);
}

tside_i_box tside_i_text_box(const tside_i_room *room, double x, double y, double cosine, double sine, double width)
{
    const double s = room->scale, up = (TSIDE_I_ASCENT - TSIDE_I_DESCENT) / 2 * s;
    return tside_i_box_of(x - up * sine, y + up * cosine, cosine, sine, width / 2 + TSIDE_I_BESIDE * s,
                          (TSIDE_I_ASCENT + TSIDE_I_DESCENT) / 2 * s);
}

/* --- what a line crosses --- */

/* Narrows what of a line, from 0 to 1, is within half a width of nought; from, to: where it begins and ends. */
static int is_cut(double from, double to, double half, double *first, double *last)
{
    const double step = to - from;
    if (step == 0)
        return fabs(from) < half;
    *first = greater(*first, ((step > 0 ? -half : half) - from) / step);
    *last = lesser(*last, ((step > 0 ? half : -half) - from) / step);
    return *first < *last;
}

static int crosses(const tside_i_line *l, const tside_i_box *b)
{
    const double dx = l->x - b->x, dy = l->y - b->y, ex = l->x_end - b->x, ey = l->y_end - b->y;
    double first = 0, last = 1;
    return is_cut(dx * b->cosine + dy * b->sine, ex * b->cosine + ey * b->sine, b->half_width, &first, &last) &&
           is_cut(dy * b->cosine - dx * b->sine, ey * b->cosine - ex * b->sine, b->half_height, &first, &last);
}

static int are_apart(const tside_i_frame *a, const tside_i_frame *b)
{
    return (a->bottom >= b->top) | (a->top <= b->bottom) | (a->left >= b->right) | (a->right <= b->left);
}

int tside_i_crosses_text(const tside_i_room *room, const tside_i_line *l)
{
    const tside_i_frame extent = extent_of(l);
    for (int i = 0; i < room->text_count; i++)
        if (!are_apart(&extent, room->extents + i) && crosses(l, room->texts + i))
            return 1;
    return 0;
}

/* Which side of a line a point is on. */
static double side_of(const tside_i_line *l, double x, double y)
{
    return (l->x_end - l->x) * (y - l->y) - (l->y_end - l->y) * (x - l->x);
}

static int cross(const tside_i_line *a, const tside_i_line *b)
{
    return side_of(a, b->x, b->y) * side_of(a, b->x_end, b->y_end) < 0 &&
           side_of(b, a->x, a->y) * side_of(b, a->x_end, a->y_end) < 0;
}

int tside_i_crosses_leader(const tside_i_room *room, const tside_i_line *l)
{
    for (int i = 0; i < room->leader_count; i++)
        if (cross(room->leaders + i, l))
            return 1;
    return 0;
}
