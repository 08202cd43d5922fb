/* SPDX-License-Identifier: MIT */
/* The card's drawings: an end wall on a page of its own, and the whole wall in small where that leaves room below. */
#include <stdlib.h>

#include "drawn.h"
#include "memory.h"
#include "sentence.h"
#include "sheet.h"

/* Both A4 and Letter have so much for a drawing within the margins, less its words: upright, and turned. */
static const extent pages[] = {{181, 245}, {250, 175}};
enum { LIES = 1, PAGES };

/* mm */
static const double words_height = 12, small_width = 90, small_height = 40, small_least = 20;

typedef struct view {
    sheet *s;
    tside_picture picture;
    tside_drawing *drawing;
    text why; /* it is not drawn */
} view;

/* In one of the rooms: which, or -1. */
static int draw(view *v, tside_view which, const extent *rooms, int count)
{
    tside_fault fault;
    int held_by;
    v->picture.view = which;
    if (draw_within(v->drawing, v->s->side, &v->picture, rooms, count, &held_by, &fault) != TSIDE_OK) {
        add_refusal(&v->why, &v->s->pen, &fault);
        return -1;
    }
    if (held_by < 0)
        text_add(&v->why, "at 1:%g it takes %.0f mm by %.0f mm", v->drawing->picture.scale, drawn_width(v->drawing),
                 drawn_height(v->drawing));
    return held_by;
}

static void put_view(const view *v, int drawn, const char *name, int lies)
{
    text caption = {NULL, 0, 0}, svg = {NULL, 0, 0};
    text_add(&caption, "%s at the %s, seen from outside", name, end_name((int)v->picture.end));
    if (drawn) {
        add_svg(&svg, v->drawing, text_of(&caption));
        text_add(&caption, "; 1:%g printed at 100 %%", v->drawing->picture.scale);
    } else
        text_add(&caption, ": not drawn, %s", text_of(&v->why));
    put_drawing(&v->s->paper, text_of(&caption), text_of(&svg), lies);
    text_free(&caption);
    text_free(&svg);
}

/* Below the greater drawing, if there is room. */
static void put_small(view *v, int page)
{
    const double left = pages[page].height - drawn_height(v->drawing) - words_height;
    const extent below = {small_width, left < small_height ? left : small_height};
    if (left >= small_least && draw(v, TSIDE_VIEW_WHOLE_WALL, &below, 1) >= 0)
        put_view(v, 1, "Whole wall", page == LIES);
}

void put_drawings(sheet *s, int end)
{
    view v = {.s = s,
              .picture = {.end = (tside_which_end)end, .tape = s->pen.us ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC},
              .drawing = take_memory(sizeof *v.drawing)};
    const int page = draw(&v, TSIDE_VIEW_END_WALL, pages, PAGES);
    put_view(&v, page >= 0, "End wall", page == LIES);
    if (page >= 0)
        put_small(&v, page);
    text_free(&v.why);
    free(v.drawing);
}
