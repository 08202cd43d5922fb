/* SPDX-License-Identifier: MIT */
#include <stdlib.h>

#include "command.h"
#include "drawn.h"
#include "ends.h"
#include "memory.h"

#define MM 1000.0 /* of a metre */

static const struct {
    const char *title;
    int of_end;
} views[] = {
    [TSIDE_VIEW_END_WALL] = {"END WALL, from outside", 1},
    [TSIDE_VIEW_WHOLE_WALL] = {"WHOLE WALL, from outside", 1},
    [TSIDE_VIEW_CORNER] = {"CORNER, from above", 1},
    [TSIDE_VIEW_EXTENDER] = {"EXTENDER", 1},
    [TSIDE_VIEW_ALONG] = {"ALONG THE HOUSE, from outside", 0},
    [TSIDE_VIEW_ROLL_SHUT] = {"ROLL, shut", 0},
    [TSIDE_VIEW_ROLL_OPEN] = {"ROLL, open", 0},
    [TSIDE_VIEW_TURNS] = {"OPENING, TORQUE, LEAN", 0},
    [TSIDE_VIEW_OPENING] = {"OPENING", 0},
};

int is_of_end(tside_view view)
{
    return views[view].of_end;
}

void add_view_title(text *out, tside_view view, int end)
{
    text_add(out, "%s", views[view].title);
    if (views[view].of_end)
        text_add(out, ": %s", end_name(end));
}

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
static int room_for(const tside_drawing *drawing, const extent *rooms, int count)
{
    for (int i = 0; i < count; i++)
        if (drawn_width(drawing) <= rooms[i].width && drawn_height(drawing) <= rooms[i].height)
            return i;
    return -1;
}

tside_status draw_within(tside_drawing *drawing, const planned *side, const tside_picture *picture, const extent *rooms,
                         int count, int *held_by, tside_fault *fault)
{
    tside_picture asked = *picture;
    *held_by = -1;
    for (int i = 0; i < SCALES && *held_by < 0; i++) {
        tside_status status;
        asked.scale = scales[i];
        if (picture->scale > 0 && scales[i] != picture->scale)
            continue;
        status = tside_draw(&side->wanted.side, &side->plan, &asked, drawing, fault);
        if (status != TSIDE_OK)
            return status;
        *held_by = room_for(drawing, rooms, count);
    }
    return TSIDE_OK;
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
