/* SPDX-License-Identifier: MIT */
/*
 * A picture for each question: the side as it is answered so far, what is still to answer invented, and the part that
 * is asked about drawn thick. Questions of where a tape goes have their letters besides, in asked.c.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "core.h"
#include "drawn.h"
#include "memory.h"
#include "places.h"
#include "questions.h"

SHOWN const char *lit(int side, const char *path);

enum { THICK_SEGMENTS = 16 }; /* of an arc */
#define THICK 1.6             /* mm */
#define MM 1000.0             /* of a metre */

/* How many times smaller, so that a narrow line is still one on a phone's screen. */
static const double scale_of[] = {
    [TSIDE_VIEW_END_WALL] = 50,  [TSIDE_VIEW_WHOLE_WALL] = 200, [TSIDE_VIEW_ALONG] = 500,
    [TSIDE_VIEW_ROLL_SHUT] = 10, [TSIDE_VIEW_ROLL_OPEN] = 10,
};

static text made; /* the answer, until the next one */

/* --- which part a question is about, and where that is seen: the first that its path begins with --- */

static const struct {
    const char *begins;
    tside_part part, instead; /* of a side that has no such part */
    tside_view view;
} about[] = {
    {"name", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_ALONG},
    {"drive_at", TSIDE_PART_DRIVE, TSIDE_PART_DRIVE, TSIDE_VIEW_ALONG},
    {"hand", TSIDE_PART_DRIVE, TSIDE_PART_DRIVE, TSIDE_VIEW_ALONG},
    {"length", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_ALONG},
    {"ropes", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_ALONG},
    {"rope_pressure", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_ALONG},
    {"frame.board", TSIDE_PART_BOARD, TSIDE_PART_BOW, TSIDE_VIEW_END_WALL},
    {"frame.", TSIDE_PART_BOW, TSIDE_PART_BOW, TSIDE_VIEW_WHOLE_WALL},
    {"curtain.rail_depth", TSIDE_PART_RAIL, TSIDE_PART_RAIL, TSIDE_VIEW_END_WALL},
    {"curtain.sill", TSIDE_PART_SILL, TSIDE_PART_CURTAIN, TSIDE_VIEW_END_WALL},
    {"curtain.", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_END_WALL},
    {"stops.open", TSIDE_PART_ROLL, TSIDE_PART_ROLL, TSIDE_VIEW_ROLL_OPEN},
    {"stops.gap", TSIDE_PART_ROLL, TSIDE_PART_ROLL, TSIDE_VIEW_ROLL_OPEN},
    {"stops.", TSIDE_PART_ROLL, TSIDE_PART_ROLL, TSIDE_VIEW_ROLL_SHUT},
    {"bar.splice", TSIDE_PART_JOINT, TSIDE_PART_ROLL, TSIDE_VIEW_ALONG},
    {"bar.screw", TSIDE_PART_JOINT, TSIDE_PART_ROLL, TSIDE_VIEW_ALONG},
    {"bar.", TSIDE_PART_BAR, TSIDE_PART_BAR, TSIDE_VIEW_ROLL_SHUT},
    {"drive.", TSIDE_PART_DRIVE, TSIDE_PART_DRIVE, TSIDE_VIEW_END_WALL},
    {"crank.", TSIDE_PART_DRIVE, TSIDE_PART_DRIVE, TSIDE_VIEW_END_WALL},
    {"cable.", TSIDE_PART_DRIVE, TSIDE_PART_DRIVE, TSIDE_VIEW_ALONG},
    {"collar.", TSIDE_PART_COLLAR, TSIDE_PART_COLLAR, TSIDE_VIEW_END_WALL},
    {"limits.kick_out", TSIDE_PART_REACH, TSIDE_PART_REACH, TSIDE_VIEW_END_WALL},
    {"limits.", TSIDE_PART_ROLL, TSIDE_PART_ROLL, TSIDE_VIEW_ALONG},
    /* of an end */
    {"guide.", TSIDE_PART_GUIDE, TSIDE_PART_GUIDE, TSIDE_VIEW_END_WALL},
    {"extender.member", TSIDE_PART_MEMBER, TSIDE_PART_MEMBER, TSIDE_VIEW_END_WALL},
    {"extender.eye", TSIDE_PART_EYE, TSIDE_PART_EYE, TSIDE_VIEW_END_WALL},
    {"extender.bolt", TSIDE_PART_HOLE, TSIDE_PART_HOLE, TSIDE_VIEW_END_WALL},
    {"extender.", TSIDE_PART_EXTENDER, TSIDE_PART_EXTENDER, TSIDE_VIEW_END_WALL},
    {"keep_outs", TSIDE_PART_KEEP_OUT, TSIDE_PART_MEMBER, TSIDE_VIEW_END_WALL},
    {"hip_height", TSIDE_PART_CURTAIN, TSIDE_PART_CURTAIN, TSIDE_VIEW_END_WALL},
    {"", TSIDE_PART_EYE, TSIDE_PART_EYE, TSIDE_VIEW_END_WALL},
};

static int begins_with(const char *path, const char *begins)
{
    return !strncmp(path, begins, strlen(begins));
}

/* What follows an end's name; else the path. */
static const char *within_end(const char *path)
{
    return begins_with(path, "drive_end.") || begins_with(path, "free_end.") ? strchr(path, '.') + 1 : path;
}

static int about_which(const char *path)
{
    int i = 0;
    while (!begins_with(within_end(path), about[i].begins))
        i++;
    return i;
}

/* --- the side as it stands --- */

/* What a side cannot do without and has no answer is as that of the invented one. */
static void take_invented(request *wanted, const tside_side *invented)
{
    const question *one;
    for (int i = 0; (one = question_at(i)) != NULL; i++) {
        tside_place place;
        if (tside_field_find(TSIDE_KIND_SIDE, one->path, &place, NULL) == TSIDE_OK && place.field->required &&
            place.field->type == TSIDE_NUMBER && !wanted->given[place.offset])
            *MEMBER(&wanted->side, place.offset, double) = *CONST_MEMBER(invented, place.offset, double);
    }
}

/* Of a side that is not planned: its answers and what is missing; where these are no side yet, the invented one. */
static planned *grown_side(const request *asked)
{
    planned *side = take_memory(sizeof *side);
    tside_side invented;
    tside_fault fault;
    invent_side(&invented, &asked->side);
    side->wanted = *asked;
    take_invented(&side->wanted, &invented);
    if (tside_plan_side(&side->wanted.side, &side->plan, &fault) == TSIDE_OK)
        return side;
    tside_usual(TSIDE_KIND_SIDE, &side->wanted.side);
    invent_side(&invented, &side->wanted.side);
    side->wanted.side = invented;
    must(tside_plan_side(&side->wanted.side, &side->plan, &fault), &fault);
    return side;
}

/* --- its picture --- */

static point on_picture(const tside_drawing *d, double x, double y)
{
    const double size = MM / d->picture.scale;
    return (point){(x - d->left) * size, (d->top - y) * size};
}

static point on_stroke(const tside_drawing *d, const tside_stroke *s, double share)
{
    const double angle = s->from + share * s->sweep;
    return s->arc ? on_picture(d, s->x + s->radius * cos(angle), s->y + s->radius * sin(angle))
                  : on_picture(d, s->x + share * (s->x_end - s->x), s->y + share * (s->y_end - s->y));
}

/* Returns whether there is such a part. */
static int thicken(const tside_drawing *d, tside_part part)
{
    int found = 0;
    for (int i = 0; i < d->stroke_count; i++) {
        const tside_stroke *s = d->strokes + i;
        const int segments = s->arc ? THICK_SEGMENTS : 1;
        found |= s->part == part;
        for (int k = 0; s->part == part && k < segments; k++)
            svg_line(&made, on_stroke(d, s, (double)k / segments), on_stroke(d, s, (double)(k + 1) / segments), THICK,
                     DASHES_NONE);
    }
    return found;
}

static void draw_lit(const planned *side, const char *path)
{
    const int which = about_which(path);
    const tside_which_end end = begins_with(path, "free_end.") || begins_with(path, "collar.") ? TSIDE_FREE_END
                                                                                               : TSIDE_DRIVE_END;
    const tside_picture asked = {
        .view = about[which].view, .end = end, .tape = TSIDE_TAPE_METRIC, .scale = scale_of[about[which].view]};
    tside_drawing *drawing = take_memory(sizeof *drawing);
    text title = {NULL, 0, 0};
    tside_fault fault;
    if (tside_draw(&side->wanted.side, &side->plan, &asked, drawing, &fault) == TSIDE_OK) {
        strip_words(drawing);
        text_add(&made, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-2 -2 %g %g\">", drawn_width(drawing) + 4,
                 drawn_height(drawing) + 4);
        add_view_title(&title, asked.view, end);
        sheet_drawing(&made, (point){0, 0}, drawing, text_of(&title));
        svg_open(&made, "part");
        if (!thicken(drawing, about[which].part))
            thicken(drawing, about[which].instead);
        svg_shut(&made);
        text_add(&made, "</svg>");
    }
    text_free(&title);
    free(drawing);
}

/* As SVG; nothing where the side is one that no picture has room for. */
const char *lit(int side, const char *path)
{
    const planned *of = side_planned(side);
    const work *all = work_planned();
    planned *grown = NULL;
    text_free(&made);
    if (!of && side >= 0 && (size_t)side < all->count)
        of = grown = grown_side(&all->sides[side]->wanted);
    if (of)
        draw_lit(of, path);
    free(grown);
    return text_of(&made);
}
