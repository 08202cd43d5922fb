/* SPDX-License-Identifier: MIT */
#include "drilling.h"
#include "mark.h"
#include "message.h"
#include "names.h"
#include "strip.h"
#include "template.h"
#include "whose.h"

#define MM 1000.0 /* of a metre */
#define APART 7.0 /* mm, between strips */
#define ARM 4.0   /* mm, of a cross beyond its hole's edge */
#define EDGE 2.5  /* mm, that words keep off a strip's ends */

/* Narrower or wider tubes than these have no room for letters, or none on the sheet: m. */
static const double face_least = 0.010, face_most = 0.125, bow_least = 0.016;

typedef struct template
{
    sheets *made;
    const planned *side;
    int end;
    paper_size paper;
    const heading *told;
    pen pen;
    sheet *on;
    box room;
}
template;

static void begin_sheet(template *t, int lies)
{
    t->on = sheets_add(t->made, t->paper, lies, t->told);
    t->room = t->on->room;
}

/* Where a strip goes: below the last one, on a new sheet where that one is full, and on one that lies if it is long. */
static box place_strip(template *t, double length, double width)
{
    box at;
    if (!t->on || t->room.height < width || t->room.width < length)
        begin_sheet(t, length > sheet_width(t->paper, 0));
    at = (box){t->room.x, t->room.y, length, width};
    t->room.y += width + APART;
    t->room.height -= width + APART;
    return at;
}

static void add_hole(text *svg, point middle, double diameter)
{
    const double arm = diameter / 2 + ARM;
    svg_circle(svg, middle, diameter / 2, NARROW);
    svg_line(svg, (point){middle.x - arm, middle.y}, (point){middle.x + arm, middle.y}, NARROW, DASHES_NONE);
    svg_line(svg, (point){middle.x, middle.y - arm}, (point){middle.x, middle.y + arm}, NARROW, DASHES_NONE);
}

/* --- on the extender --- */

static double lesser(double a, double b)
{
    return a < b ? a : b;
}

/* Between the middle line and an edge, so far above its lower one that letters of this size stand in the middle. */
static double foot_between(double top, double high, double size)
{
    static const double capitals = 0.72; /* of the size */
    return top + (high + capitals * size) / 2;
}

/* An arrow to the tube's top end, which is the strip's own where it ends there. */
static void add_arrow(text *svg, const box *at, const face_strip *strip)
{
    const double way = strip->top_at_right ? 1 : -1, tip = (strip->top_at_right ? at->x + at->width : at->x) - way,
                 high = at->y + at->height / 4;
    svg_line(svg, (point){tip - way * 12, high}, (point){tip, high}, WIDE, DASHES_NONE);
    for (int side = -1; side <= 1; side += 2)
        svg_line(svg, (point){tip, high}, (point){tip - way * 3, high + side}, WIDE, DASHES_NONE);
    svg_words(svg, (point){tip - way, foot_between(at->y + at->height / 2, at->height / 2, PRINT)}, PRINT,
              strip->top_at_right ? FROM_RIGHT : FROM_LEFT, strip->at_top ? "top end" : "to top");
}

/* Where a strip has most room for words: its part on one side of the hole. */
static box room_for_words(const box *at, const face_strip *strip)
{
    const double clear = MM * (strip->diameter / 2) + ARM + EDGE, arrow = svg_width("top end", PRINT) + 2 * EDGE,
                 ahead = MM * strip->ahead - clear - arrow, behind = at->width - MM * strip->ahead - clear - EDGE,
                 width = ahead > behind ? ahead : behind;
    const int on_right = strip->top_at_right == (ahead > behind);
    const double left = at->x + MM * strip->hole.x + clear, right = at->x + MM * strip->hole.x - clear;
    return (box){on_right ? left : right - width, at->y, width, at->height};
}

static void add_strip_words(template *t, const box *at, const face_strip *strip, const hole *h, strip_face face)
{
    static const char from[] = "from top end";
    text *svg = &t->on->body, words = {NULL, 0, 0};
    char mark[TSIDE_MARK_SIZE];
    const box room = room_for_words(at, strip);
    const double half = at->height / 2;
    double large;
    text_add(&words, "%s %s", tape_number(&t->pen, h->from_top), t->pen.us ? "in" : "mm");
    large = lesser(lesser(10, half - 2), (room.width - svg_width(from, PRINT)) / svg_width(text_of(&words), 1));
    if (large < PRINT)
        large = PRINT;
    svg_large(svg, (point){room.x, foot_between(at->y, half, large)}, large, text_of(&words), from);
    text_cut(&words, 0);
    text_add(&words, "%s %s: drill %s, %s", piece_mark(t->side, TSIDE_ITEM_EXTENDER, place_of_end(t->end), 1, mark),
             h->name, trade_size(&t->pen, h->diameter), face == FACE_OUTER ? "outer face" : "wall face");
    svg_words(svg, (point){room.x, foot_between(at->y + half, half, PRINT)}, PRINT, FROM_LEFT, text_of(&words));
    text_free(&words);
}

static void add_face_strip(template *t, const hole *h, strip_face face)
{
    const tside_layout *layout = &end_answered(t->side, t->end)->layout;
    const face_strip strip = strip_of_face(end_asked(t->side, t->end)->extender.tube.side, h->from_top,
                                           layout->cut_length - h->from_top, h->diameter, face);
    const box at = place_strip(t, MM * strip.length, MM * strip.width);
    const point middle = {at.x + MM * strip.hole.x, at.y + MM * strip.hole.y};
    text *svg = &t->on->body;
    svg_open(svg, face == FACE_OUTER ? "strip outer" : "strip wall");
    svg_box(svg, &at, NARROW);
    svg_line(svg, (point){at.x, middle.y}, (point){at.x + at.width, middle.y}, NARROW, DASHES_CHAIN);
    add_hole(svg, middle, MM * strip.diameter);
    add_arrow(svg, &at, &strip);
    add_strip_words(t, &at, &strip, h, face);
    svg_shut(svg);
}

/* --- on the bow --- */

/* What a bow's strip says, in lines between its crosses, above and below its middle line. */
typedef struct bow_words {
    text above, below;
    double width, high; /* mm, of the lines, and of the more of them */
} bow_words;

static double high_of(const char *words, double width)
{
    text nowhere = {NULL, 0, 0};
    box at = {0, 0, width, 0};
    sheet_words(&nowhere, &at, PRINT, words);
    text_free(&nowhere);
    return at.y;
}

static bow_words words_of_bow(template *t, double length, double diameter)
{
    bow_words words = {.width = length / 2 - 2 * EDGE};
    char mark[TSIDE_MARK_SIZE];
    double above, below;
    text_add(&words.above, "Bow, %s of %s: %s", end_name(t->end), side_mark(t->side, mark),
             trade_size(&t->pen, diameter));
    text_add(&words.below, "Its ends meet, or discard it.");
    above = high_of(text_of(&words.above), words.width);
    below = high_of(text_of(&words.below), words.width);
    words.high = (above > below ? above : below) + 2;
    return words;
}

static void add_bow_cross(text *svg, const box *at, point middle, double diameter, const char *name, words_from from)
{
    svg_line(svg, (point){middle.x, at->y}, (point){middle.x, at->y + at->height}, NARROW, DASHES_NONE);
    add_hole(svg, middle, diameter);
    svg_bold(svg, (point){middle.x + (from == FROM_LEFT ? EDGE : -EDGE), at->y + 1 + PRINT}, PRINT, from, name);
}

static void add_bow_strip(template *t)
{
    const double tube = t->side->wanted.side.frame.tube.diameter,
                 diameter = end_asked(t->side, t->end)->extender.bolt_hole, arms = MM * diameter / 2 + ARM;
    bow_words words = words_of_bow(t, MM * strip_of_bow(tube, 0, diameter).length, diameter);
    const bow_strip strip = strip_of_bow(tube, 2 * (words.high + arms) / MM, diameter);
    const box at = place_strip(t, MM * strip.length, 2 * (words.high + arms));
    const double middle = at.y + at.height / 2, x = at.x + MM * strip.holes[0].x + EDGE;
    box above = {x, at.y + 1, words.width, words.high}, below = {x, middle + arms, words.width, words.high};
    text *svg = &t->on->body;
    svg_open(svg, "strip bow");
    svg_box(svg, &at, NARROW);
    for (int i = 0; i < BOW_CROSSES; i++)
        add_bow_cross(svg, &at, (point){at.x + MM * strip.holes[i].x, at.y + MM * strip.holes[i].y}, MM * diameter,
                      i ? "out" : "in", i ? FROM_LEFT : FROM_RIGHT);
    svg_line(svg, (point){at.x, middle}, (point){at.x + at.width, middle}, NARROW, DASHES_CHAIN);
    sheet_words(svg, &above, PRINT, text_of(&words.above));
    sheet_words(svg, &below, PRINT, text_of(&words.below));
    svg_shut(svg);
    text_free(&words.above);
    text_free(&words.below);
}

/* --- all of them --- */

static void add_end(template *t)
{
    static const caution cautions[] = {CAUTION_DRILLING, CAUTION_CERTIFICATE};
    hole holes[EXTENDER_HOLES];
    text title = {NULL, 0, 0}, of = {NULL, 0, 0}, notes = {NULL, 0, 0};
    text_add(&title, "TEMPLATE, %s", end_name(t->end));
    add_whose(&of, t->side);
    add_notes(&notes, t->side);
    t->told = &(heading){
        .title = text_of(&title),
        .of = text_of(&of),
        .lines = {"Print at 100 %, not fitted to the sheet; discard it if a bar below is off by 0.5 mm.",
                  "Cut each strip out on its line, and join none. Tape its hole's place from the tube's top end; lay "
                  "it flat on its face there, its long edges flush with the tube's sides, never bent round a corner; "
                  "punch the middle. Each face has a strip of its own.",
                  "The bow's strip goes once round the tube, square to it: \"in\" on the hole's mark outside, and the "
                  "drill comes out at \"out\".",
                  text_of(&notes)},
        .scale = "1:1",
        .cautions = cautions,
        .caution_count = sizeof cautions / sizeof *cautions};
    t->on = NULL;
    extender_holes(t->side, t->end, holes);
    for (int i = 0; i < EXTENDER_HOLES; i++)
        for (int face = FACE_OUTER; face <= FACE_WALL; face++)
            add_face_strip(t, holes + i, (strip_face)face);
    add_bow_strip(t);
    text_free(&title);
    text_free(&of);
    text_free(&notes);
}

static int refuse(const planned *side, const char *path, pen *p, double value, const char *bound_words, double bound)
{
    say("%s: %s: %s: the template has room for %s %s", side->file, path, fine(p, value), bound_words, fine(p, bound));
    return 0;
}

/* Whether an end's tubes have room for the strips, and the sheet for them. */
static int fits(const template *t)
{
    pen p = {.us = t->pen.us};
    const double bow = t->side->wanted.side.frame.tube.diameter, face = end_asked(t->side, t->end)->extender.tube.side,
                 bow_most = sheet_width(t->paper, 1) / MM / 3.14159265358979323846;
    text path = {NULL, 0, 0};
    int good = 1;
    text_add(&path, "%s.extender.tube.side", end_group(t->end));
    if (face < face_least)
        good = refuse(t->side, text_of(&path), &p, face, "no less than", face_least);
    else if (face > face_most)
        good = refuse(t->side, text_of(&path), &p, face, "no more than", face_most);
    else if (bow < bow_least)
        good = refuse(t->side, "frame.tube.diameter", &p, bow, "no less than", bow_least);
    else if (bow > bow_most)
        good = refuse(t->side, "frame.tube.diameter", &p, bow, "no more than", bow_most);
    text_free(&path);
    return good;
}

int add_template(sheets *made, const planned *side, int end_first, int end_last, paper_size paper, int us)
{
    int any = 0;
    for (int end = end_first; end <= end_last; end++) {
        template t = {.made = made, .side = side, .end = end, .paper = paper, .pen = {.us = us}};
        if (!on_extender(side, end))
            continue;
        if (!fits(&t))
            return 0;
        any = 1;
        add_end(&t);
    }
    if (!any)
        say("%s: no extender, and so no template", side->file);
    return any;
}
