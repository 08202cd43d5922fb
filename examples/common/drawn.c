/* SPDX-License-Identifier: MIT */
#include <stdlib.h>

#include "command.h"
#include "drawn.h"
#include "memory.h"
#include "sentence.h"

#define MM 1000.0 /* of a metre */

/* ISO 5455, from memory. */
const double scales[SCALES] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

double drawn_width(const tside_drawing *drawing)
{
    return MM * (drawing->right - drawing->left) / drawing->picture.scale;
}

double drawn_height(const tside_drawing *drawing)
{
    return MM * (drawing->top - drawing->bottom) / drawing->picture.scale;
}

/* The first that holds it, or -1. */
static int room_for(const tside_drawing *drawing, const room *rooms, int count)
{
    for (int i = 0; i < count; i++)
        if (drawn_width(drawing) <= rooms[i].width && drawn_height(drawing) <= rooms[i].height)
            return i;
    return -1;
}

int draw_within(tside_drawing *drawing, const planned *side, const tside_picture *picture, const room *rooms, int count,
                pen *p, text *why)
{
    tside_picture asked = *picture;
    tside_fault fault;
    int held_by = -1;
    for (int i = 0; i < SCALES && held_by < 0; i++) {
        asked.scale = scales[i];
        if (tside_draw(&side->wanted.side, &side->plan, &asked, drawing, &fault) != TSIDE_OK) {
            add_refusal(why, p, &fault);
            return -1;
        }
        held_by = room_for(drawing, rooms, count);
    }
    if (held_by < 0)
        text_add(why, "at 1:%g it takes %.0f mm by %.0f mm", scales[SCALES - 1], drawn_width(drawing),
                 drawn_height(drawing));
    return held_by;
}

void add_svg(text *out, const tside_drawing *drawing, const char *title)
{
    size_t length = 0;
    tside_fault fault;
    char *svg;
    if (tside_drawing_svg(drawing, title, NULL, 0, &length, &fault) != TSIDE_TOO_SMALL) /* it then told how long */
        length = 0;
    svg = take_memory(length + 1);
    must(tside_drawing_svg(drawing, title, svg, length + 1, &length, &fault), &fault);
    text_add_bytes(out, svg, length);
    free(svg);
}
