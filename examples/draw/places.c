/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "memory.h"
#include "places.h"
#include "questions.h"

#define MM 1000.0 /* of a metre */

/* --- a side like many, invented: its pictures show no site --- */

static void invent_end(tside_end *end, tside_hung hung)
{
    end->hung = hung;
    end->guide.tube = (tside_round){.diameter = 0.042, .wall = 0.003};
    end->extender.tube = (tside_square){.side = 0.05, .wall = 0.003};
    end->extender.member_height = 1.1;
    end->extender.member_outer = 3.9;
}

void invent_side(tside_side *made, const tside_side *choices)
{
    tside_usual(TSIDE_KIND_SIDE, made);
    made->length = 30;
    made->frame.shape = choices->frame.shape;
    made->frame.width = 8;
    made->frame.leg_height = 1.8;
    made->frame.peak_height = 3.8;
    made->frame.foot_x = 4;
    made->frame.between_x = 3.5;
    made->frame.between_height = 2;
    made->frame.tube = (tside_round){.diameter = 0.06, .wall = 0.003};
    made->frame.board = TSIDE_BOARD_OUTSIDE;
    made->frame.board_top = 0.25;
    made->frame.board_stand = 0.04;
    made->curtain.hip = 1.7;
    made->curtain.sill = 0.4;
    made->curtain.rail_depth = 0.04;
    made->bar.tube = (tside_round){.diameter = 0.034, .wall = 0.003};
    if (choices->drive_end.hung == TSIDE_ON_HIP)
        made->stops.gap = 0.4; /* what rides on the guide must clear an eye at the hip */
    invent_end(&made->drive_end, choices->drive_end.hung);
    invent_end(&made->free_end, choices->free_end.hung);
}

/* --- a picture, and letters on it --- */

/* A picture on the sheet: its own places are m outboard and up. */
typedef struct picture {
    text *svg;
    const tside_side *side;
    tside_plan plan;
    tside_drawing *drawing;
    double x, y; /* mm, its upper left corner on the sheet */
    place_is_asked *is_asked;
    const void *context;
} picture;

static point on_sheet(const picture *p, double x, double y)
{
    const tside_drawing *d = p->drawing;
    const double size = MM / d->picture.scale;
    return (point){p->x + ((d->outboard < 0 ? -x : x) - d->left) * size, p->y + (d->top - y) * size};
}

/* Strokes alone, and no frame about a part of them; the drawing ends where they do. */
void strip_words(tside_drawing *d)
{
    int kept = 0;
    d->left = d->bottom = HUGE_VAL;
    d->right = d->top = -HUGE_VAL;
    for (int i = 0; i < d->stroke_count; i++) {
        const tside_stroke *s = d->strokes + i;
        const double angle[2] = {s->from, s->from + s->sweep};
        if (s->part == TSIDE_PART_BOW && s->line == TSIDE_LINE_NARROW)
            continue;
        for (int end = 0; end < 2; end++) {
            const double x = s->arc ? s->x + s->radius * cos(angle[end])
                             : end  ? s->x_end
                                    : s->x,
                         y = s->arc ? s->y + s->radius * sin(angle[end])
                             : end  ? s->y_end
                                    : s->y;
            d->left = fmin(d->left, x);
            d->right = fmax(d->right, x);
            d->bottom = fmin(d->bottom, y);
            d->top = fmax(d->top, y);
        }
        d->strokes[kept++] = *s;
    }
    d->stroke_count = kept;
    d->dimension_count = d->note_count = 0;
}

static void draw(picture *p, tside_view view, tside_which_end end, double scale)
{
    const tside_picture asked = {.view = view, .end = end, .tape = TSIDE_TAPE_METRIC, .scale = scale};
    tside_fault fault;
    must(tside_plan_side(p->side, &p->plan, &fault), &fault);
    must(tside_draw(p->side, &p->plan, &asked, p->drawing, &fault), &fault);
    strip_words(p->drawing);
    sheet_drawing(p->svg, (point){p->x, p->y}, p->drawing, "");
}

#define RADIUS 3.4 /* mm, of the circle about a letter */

static void put_letter(const picture *p, point at, const char *path)
{
    const question *asked = question_of(path);
    char letter[4];
    svg_disc(p->svg, at, RADIUS, NARROW);
    svg_bold(p->svg, (point){at.x, at.y + PRINT / 3}, PRINT, FROM_MIDDLE, asked ? question_letter(asked, letter) : "");
}

static void put_arrow(const picture *p, point tip, double ux, double uy)
{
    svg_line(p->svg, tip, (point){tip.x - 2.5 * ux - 0.8 * uy, tip.y - 2.5 * uy + 0.8 * ux}, NARROW, DASHES_NONE);
    svg_line(p->svg, tip, (point){tip.x - 2.5 * ux + 0.8 * uy, tip.y - 2.5 * uy - 0.8 * ux}, NARROW, DASHES_NONE);
}

/* The tape from one place to another, its line moved by so much to the right and down on the sheet. */
static void put_tape(const picture *p, const char *path, point from, point to, double right, double down)
{
    const point a = {from.x + right, from.y + down}, b = {to.x + right, to.y + down};
    const double length = hypot(b.x - a.x, b.y - a.y), ux = (b.x - a.x) / length, uy = (b.y - a.y) / length;
    const int is_short = length < 2 * RADIUS + 6;
    const point letter = is_short ? (point){b.x + (RADIUS + 3) * ux, b.y + (RADIUS + 3) * uy}
                                  : (point){(a.x + b.x) / 2, (a.y + b.y) / 2};
    if (!p->is_asked(p->context, path))
        return;
    svg_open(p->svg, "place");
    svg_line(p->svg, from, a, NARROW, DASHES_NONE);
    svg_line(p->svg, to, b, NARROW, DASHES_NONE);
    svg_line(p->svg, a, is_short ? letter : b, NARROW, DASHES_NONE);
    put_arrow(p, a, -ux, -uy);
    put_arrow(p, b, ux, uy);
    put_letter(p, letter, path);
    svg_shut(p->svg);
}

/* Up from one height to another at a place outboard; the tape's line so far outboard of it on the sheet, in mm. */
static void put_plumb(const picture *p, const char *path, double x, double low, double high, double outboard)
{
    put_tape(p, path, on_sheet(p, x, low), on_sheet(p, x, high), p->drawing->outboard < 0 ? -outboard : outboard, 0);
}

/* Outboard from one place to another at a height; the tape's line so far below it on the sheet, in mm. */
static void put_level(const picture *p, const char *path, double inner, double outer, double y, double below)
{
    put_tape(p, path, on_sheet(p, inner, y), on_sheet(p, outer, y), 0, below);
}

static void put_pointed(const picture *p, const char *path, point to, point letter)
{
    if (!p->is_asked(p->context, path))
        return;
    svg_open(p->svg, "place");
    svg_line(p->svg, letter, to, NARROW, DASHES_NONE);
    put_letter(p, letter, path);
    svg_shut(p->svg);
}

/* --- which places each picture has --- */

static void letter_leg_and_peak(const picture *p)
{
    const tside_frame *frame = &p->side->frame;
    const double half = frame->width / 2;
    put_level(p, "frame.width", -half, half, 0, 8);
    put_plumb(p, "frame.leg_height", -half, 0, frame->leg_height, -8);
    put_plumb(p, "frame.peak_height", 0, 0, frame->peak_height, 0);
    put_pointed(p, "frame.shoulder_radius", on_sheet(p, -half, frame->leg_height),
                on_sheet(p, -half - 0.7, frame->leg_height + 0.9));
}

static void letter_three_points(const picture *p)
{
    const tside_frame *frame = &p->side->frame;
    put_level(p, "frame.foot_x", 0, frame->foot_x, frame->foot_height, 8);
    put_pointed(p, "frame.foot_height", on_sheet(p, frame->foot_x, frame->foot_height),
                on_sheet(p, frame->foot_x + 0.8, frame->foot_height - 0.9));
    put_level(p, "frame.between_x", 0, frame->between_x, frame->between_height, 0);
    put_plumb(p, "frame.between_height", frame->between_x, 0, frame->between_height, 12);
    put_plumb(p, "frame.peak_height", 0, 0, frame->peak_height, -10);
    put_pointed(p, "frame.peak_x", on_sheet(p, frame->peak_x, frame->peak_height),
                on_sheet(p, frame->peak_x + 0.9, frame->peak_height + 0.4));
}

static const char *of_end(tside_which_end end, const char *drive, const char *free)
{
    return end == TSIDE_FREE_END ? free : drive;
}

/* What is asked of curtain, rail, board and stops: too small for a tape's line, but for the board. */
static void letter_curtain(const picture *p)
{
    tside_bow bow;
    tside_fault fault;
    const tside_side *side = p->side;
    const tside_curtain *curtain = &side->curtain;
    const double fixing = p->plan.fixing_x, face = fixing - curtain->standoff, beside = fixing + 0.45,
                 rail = curtain->hip - curtain->rail_depth, shut = p->plan.shut.underside,
                 open = p->plan.open.y + p->plan.open.diameter / 2;
    put_plumb(p, "curtain.sill", fixing, 0, curtain->sill, 26);
    must(tside_bow_make(&side->frame, &bow, &fault), &fault);
    put_plumb(p, "frame.board_top", bow.board_x, 0, bow.board_y, -14);
    put_pointed(p, "frame.board_stand", on_sheet(p, bow.board_x - side->frame.board_stand / 2, bow.board_y),
                on_sheet(p, bow.board_x - 0.35, bow.board_y + 0.38));
    put_pointed(p, "curtain.standoff", on_sheet(p, face + curtain->standoff / 2, curtain->hip),
                on_sheet(p, beside, curtain->hip - 0.1));
    put_pointed(p, "curtain.rail_depth", on_sheet(p, fixing, (curtain->hip + rail) / 2),
                on_sheet(p, beside, curtain->hip - 0.32));
    put_pointed(p, "stops.gap", on_sheet(p, p->plan.open.x, (rail + open) / 2),
                on_sheet(p, beside, curtain->hip - 0.54));
    put_pointed(p, "stops.seal", on_sheet(p, p->plan.shut.x, (curtain->sill + shut) / 2),
                on_sheet(p, beside, curtain->sill + 0.2));
    put_pointed(p, "stops.shut_height", on_sheet(p, p->plan.shut.x, shut), on_sheet(p, beside, 0.13));
    put_plumb(p, "stops.open_height", p->plan.open.x, 0, p->plan.open.underside, 42);
}

static void letter_end(const picture *p, tside_which_end end)
{
    const int at_drive = end == TSIDE_DRIVE_END;
    const tside_side *side = p->side;
    const tside_end_plan *plan = at_drive ? &p->plan.drive_end : &p->plan.free_end;
    const tside_end *asked = at_drive ? &side->drive_end : &side->free_end;
    const double hip = side->curtain.hip, fixing = p->plan.fixing_x, face = fixing - side->curtain.standoff,
                 collar = at_drive ? side->drive.collar_offset : side->collar.offset, axis = p->plan.shut.x;
    put_plumb(p, of_end(end, "curtain.hip", "free_end.hip_height"), fixing, 0, hip, 34);
    put_level(p, of_end(end, "drive.collar_offset", "collar.offset"), axis, axis + collar, p->plan.shut.y, 26);
    if (at_drive)
        letter_curtain(p);
    if (asked->hung != TSIDE_ON_EXTENDER)
        return;
    put_plumb(p, of_end(end, "drive_end.rise", "free_end.rise"), plan->eye_x, hip, plan->eye_y, 17);
    put_level(p, of_end(end, "drive_end.eye_outboard", "free_end.eye_outboard"), face, plan->eye_x, plan->eye_y, -10);
    put_plumb(p, of_end(end, "drive_end.extender.member_height", "free_end.extender.member_height"),
              plan->layout.member_x, 0, asked->extender.member_height, -8);
    put_pointed(p, of_end(end, "drive_end.extender.member_outer", "free_end.extender.member_outer"),
                on_sheet(p, asked->extender.member_outer, asked->extender.member_height),
                on_sheet(p, asked->extender.member_outer - 0.2, asked->extender.member_height - 0.25));
    put_pointed(p, of_end(end, "drive_end.extender.member_inner", "free_end.extender.member_inner"),
                on_sheet(p, asked->extender.member_inner, asked->extender.member_height),
                on_sheet(p, asked->extender.member_inner - 0.1, asked->extender.member_height + 0.3));
}

/* --- the pictures, in rows --- */

static void put_title(const picture *p, double above, const char *words)
{
    svg_bold(p->svg, (point){p->x, p->y - above}, PRINT, FROM_LEFT, words);
}

static void put_bow(picture *p, const tside_side *choices, tside_bow_shape shape)
{
    tside_side made, as = *choices;
    as.frame.shape = shape;
    invent_side(&made, &as);
    p->side = &made;
    draw(p, TSIDE_VIEW_WHOLE_WALL, TSIDE_DRIVE_END, 130);
    put_title(p, 13, shape == TSIDE_LEG_AND_PEAK ? "The bow by leg and peak" : "The bow by three points");
    if (shape == TSIDE_LEG_AND_PEAK)
        letter_leg_and_peak(p);
    else
        letter_three_points(p);
}

static void put_end(picture *p, const tside_side *choices, tside_which_end end)
{
    const double inner = choices->frame.shape == TSIDE_LEG_AND_PEAK ? 3.5 : 3; /* seen, and beyond the hole */
    tside_side made;
    invent_side(&made, choices);
    made.drive_end.extender.member_inner = made.free_end.extender.member_inner = inner;
    p->side = &made;
    draw(p, TSIDE_VIEW_END_WALL, end, 25);
    put_title(p, 13, of_end(end, "The drive's end, from outside", "The free end, from outside"));
    letter_end(p, end);
}

/* A short one: there is little room for it. */
static void put_along(picture *p, const tside_side *choices)
{
    tside_side made;
    invent_side(&made, choices);
    made.length = 5;
    p->side = &made;
    draw(p, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 200);
    put_title(p, 3, "Along the side");
    put_level(p, "length", 0, made.length, 0, 7);
}

void add_places(text *svg, const box *room, const tside_side *choices, int both_bows, place_is_asked *is_asked,
                const void *context)
{
    picture p = {.svg = svg, .is_asked = is_asked, .context = context};
    p.drawing = take_memory(sizeof *p.drawing);
    for (int shape = TSIDE_LEG_AND_PEAK; shape <= TSIDE_THREE_POINTS; shape++)
        if (both_bows || choices->frame.shape == (tside_bow_shape)shape) {
            p.x = room->x + 12 + (both_bows ? shape * 94 : 0);
            p.y = room->y + 18;
            put_bow(&p, choices, (tside_bow_shape)shape);
        }
    for (int end = TSIDE_DRIVE_END; end <= TSIDE_FREE_END; end++) {
        p.x = room->x + 8 + (end == TSIDE_DRIVE_END ? 0 : 106);
        p.y = room->y + 79;
        put_end(&p, choices, (tside_which_end)end);
    }
    p.x = room->x + room->width - 36;
    p.y = room->y + 77;
    put_along(&p, choices);
    svg_words(svg, (point){room->x, room->y + room->height - 2}, PRINT, FROM_LEFT,
              "Pictures of an invented side, not to scale: each letter stands where the tape goes.");
    free(p.drawing);
}
