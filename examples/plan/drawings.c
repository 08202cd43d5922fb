/* SPDX-License-Identifier: MIT */
/*
 * The sheet's drawings: an end wall on a page of its own, with the whole wall in small where that leaves room below,
 * and two to a page the views that need less.
 */
#include <stdlib.h>

#include "drawn.h"
#include "memory.h"
#include "sentence.h"
#include "sheet.h"

/* Both A4 and Letter have so much for a drawing within the margins, less its words: upright, and turned. */
static const extent pages[] = {{181, 245}, {250, 175}};
enum { LIES = 1, PAGES };
static const extent half_page = {181, 112};

/* mm */
static const double words_height = 12, small_width = 90, small_height = 40, small_least = 20;

typedef struct view {
    sheet *s;
    tside_picture picture;
    tside_drawing *drawing;
} view;

static view view_of(sheet *s, int end)
{
    return (view){.s = s,
                  .picture = {.end = (tside_which_end)end, .tape = s->pen.us ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC},
                  .drawing = take_memory(sizeof(tside_drawing))};
}

/* What is drawn, and at which scale; figures, which are not of a size, have none. */
static void put_drawn(const view *v, text *caption, int lies)
{
    text svg = {NULL, 0, 0};
    add_svg(&svg, v->drawing, text_of(caption));
    if (v->picture.view != TSIDE_VIEW_TURNS)
        text_add(caption, "; 1:%g printed at 100 %%", v->drawing->picture.scale);
    put_drawing(&v->s->paper, text_of(caption), text_of(&svg), lies);
    text_free(&svg);
}

/* In one of the rooms: which, or -1 having said why not. */
static int put_view(view *v, tside_view which, const extent *rooms, int count)
{
    text caption = {NULL, 0, 0};
    tside_fault fault;
    int held_by = -1;
    v->picture.view = which;
    add_view_title(&caption, which, (int)v->picture.end);
    if (draw_within(v->drawing, v->s->side, &v->picture, rooms, count, &held_by, &fault) != TSIDE_OK) {
        text_add(&caption, ": not drawn, ");
        add_refusal(&caption, &v->s->pen, &fault);
    } else if (held_by < 0)
        text_add(&caption, ": not drawn, at 1:%g it takes %.0f mm by %.0f mm", v->drawing->picture.scale,
                 drawn_width(v->drawing), drawn_height(v->drawing));
    if (held_by < 0)
        put_drawing(&v->s->paper, text_of(&caption), "", 0);
    else
        put_drawn(v, &caption, rooms == pages && held_by == LIES);
    text_free(&caption);
    return held_by;
}

/* Below the greater drawing, if there is room. */
static void put_small(view *v, int page)
{
    const double left = pages[page].height - drawn_height(v->drawing) - words_height;
    const extent below = {small_width, left < small_height ? left : small_height};
    if (left >= small_least)
        put_view(v, TSIDE_VIEW_WHOLE_WALL, &below, 1);
}

void put_end_drawings(sheet *s, int end)
{
    view v = view_of(s, end);
    const int page = put_view(&v, TSIDE_VIEW_END_WALL, pages, PAGES);
    if (page >= 0)
        put_small(&v, page);
    put_view(&v, TSIDE_VIEW_CORNER, &half_page, 1);
    if (on_extender(s->side, end))
        put_view(&v, TSIDE_VIEW_EXTENDER, &half_page, 1);
    free(v.drawing);
}

void put_side_drawings(sheet *s)
{
    view v = view_of(s, TSIDE_DRIVE_END);
    put_view(&v, TSIDE_VIEW_ALONG, pages, PAGES);
    put_view(&v, TSIDE_VIEW_ROLL_SHUT, &half_page, 1);
    put_view(&v, TSIDE_VIEW_ROLL_OPEN, &half_page, 1);
    free(v.drawing);
}

void put_figures(sheet *s)
{
    view v = view_of(s, TSIDE_DRIVE_END);
    put_view(&v, TSIDE_VIEW_TURNS, pages, 1);
    free(v.drawing);
}
