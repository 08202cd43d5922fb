/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "drawn.h"
#include "memory.h"
#include "sheet.h"

/* --- sizes, in mm --- */

#define MARGIN 8.0
#define LEADING 1.35 /* from foot to foot of lines, over their letters' size */
#define GAP 2.0
#define LIGHT 0.9 /* of the width of bold letters */

static const struct {
    double width, height;
} papers[] = {
    [PAPER_A4] = {210, 297},        /* ISO 216 */
    [PAPER_LETTER] = {215.9, 279.4} /* 8 1/2 by 11 in: ANSI/ASME Y14.1, size A, from memory */
};

static box paper_of(paper_size paper, int lies)
{
    const double width = papers[paper].width, height = papers[paper].height;
    return lies ? (box){0, 0, height, width} : (box){0, 0, width, height};
}

static box within_margins(const box *paper)
{
    return (box){MARGIN, MARGIN, paper->width - 2 * MARGIN, paper->height - 2 * MARGIN};
}

/* --- words --- */

/* What the box has after so much from its top is used. */
static void take(box *room, double height)
{
    room->y += height;
    room->height -= height;
}

static void add_line(text *svg, box *room, double size, int bold, const char *words)
{
    const point foot = {room->x, room->y + size};
    if (bold)
        svg_bold(svg, foot, size, FROM_LEFT, words);
    else
        svg_words(svg, foot, size, FROM_LEFT, words);
    take(room, LEADING * size);
}

/* No more of a line than so many columns. */
static void add_cut_line(text *svg, box *room, double size, int bold, size_t most, const char *words)
{
    text cut = {NULL, 0, 0};
    text_add_within(&cut, words, most);
    add_line(svg, room, size, bold, text_of(&cut));
    text_free(&cut);
}

void sheet_words(text *svg, box *room, double size, const char *words)
{
    const size_t most = svg_columns(words, room->width / LIGHT, size);
    text wrapped = {NULL, 0, 0};
    text_wrap_at(&wrapped, most, "", words);
    for (char *line = wrapped.data, *end; *line; line = end + 1) {
        end = strchr(line, '\n');
        *end = '\0';
        add_cut_line(svg, room, size, 0, most, line);
    }
    text_free(&wrapped);
}

/* --- what every sheet carries --- */

static void add_titles(text *svg, box *room, const heading *told)
{
    const double title = room->width - svg_width("  page 99 of 99", LETTERS);
    svg_open(svg, "head");
    add_cut_line(svg, room, HEADING, 1, svg_columns(told->title, title, HEADING), told->title);
    add_cut_line(svg, room, LETTERS, 1, svg_columns(told->of, room->width, LETTERS), told->of);
    svg_shut(svg);
}

static void add_lines(text *svg, box *room, const heading *told)
{
    for (size_t i = 0; i < sizeof told->lines / sizeof *told->lines; i++)
        if (told->lines[i] && *told->lines[i])
            sheet_words(svg, room, PRINT, told->lines[i]);
    take(room, GAP);
}

/* A bar with a stroke across at each of its parts, and its length beside it. */
static void add_bar(text *svg, point from, double length, int parts, const char *words)
{
    static const double high = 1.5;
    svg_open(svg, "bar");
    svg_line(svg, from, (point){from.x + length, from.y}, NARROW, DASHES_NONE);
    for (int i = 0; i <= parts; i++) {
        const double x = from.x + length * i / parts, half = i % parts ? high / 2 : high;
        svg_line(svg, (point){x, from.y - half}, (point){x, from.y + half}, NARROW, DASHES_NONE);
    }
    svg_words(svg, (point){from.x + length + GAP, from.y + LETTERS / 3}, LETTERS, FROM_LEFT, words);
    svg_shut(svg);
}

#define BARS 15.0 /* high, both, with what is beside them */
#define COLUMN 58.0

static void add_bars(text *svg, const box *at, const heading *told)
{
    const double beside = at->x + 101.6 + 26;
    add_bar(svg, (point){at->x, at->y + 3.5}, 100, 10, "100 mm");
    add_bar(svg, (point){at->x, at->y + 10}, 4 * 25.4, 8, "4 in");
    if (told->scale)
        svg_bold(svg, (point){beside, at->y + 5}, HEADING, FROM_LEFT, told->scale);
    svg_words(svg, (point){beside, at->y + 11}, LETTERS, FROM_LEFT, "Check the bars.");
}

/* An exclamation mark before each, so that it is seen to be one. */
static void add_cautions(text *svg, box *room, const heading *told)
{
    const double mark = svg_width("! ", PRINT);
    box at = {room->x + mark, room->y, room->width - mark, room->height};
    for (int i = 0; i < told->caution_count; i++) {
        svg_bold(svg, (point){room->x, at.y + PRINT}, PRINT, FROM_LEFT, "!");
        sheet_words(svg, &at, PRINT, caution_text(told->cautions[i]));
    }
    take(room, at.y - room->y + GAP);
}

/* From the box's foot. */
static box take_foot(box *room, double height)
{
    room->height -= height;
    return (box){room->x, room->y + room->height, room->width, height};
}

static box take_column(box *room, double width)
{
    room->width -= width;
    return (box){room->x + room->width, room->y, width, room->height};
}

static double high_of_cautions(const heading *told, double width)
{
    text nowhere = {NULL, 0, 0};
    box at = {0, 0, width, 0};
    add_cautions(&nowhere, &at, told);
    text_free(&nowhere);
    return at.y;
}

/* Upright, words stand above the room and cautions below it; where the sheet lies, both in a column on its right. */
static box put_heading(text *svg, paper_size paper, int lies, const heading *told, box *beside)
{
    const box whole = paper_of(paper, lies);
    box room = within_margins(&whole), bars;
    *beside = (box){0, 0, 0, 0};
    add_titles(svg, &room, told);
    bars = take_foot(&room, BARS);
    svg_open(svg, "foot");
    add_bars(svg, &bars, told);
    if (lies) {
        *beside = take_column(&room, COLUMN);
        room.width -= GAP;
        add_lines(svg, beside, told);
        add_cautions(svg, beside, told);
    } else {
        box foot;
        add_lines(svg, &room, told);
        foot = take_foot(&room,
                         fmax(high_of_cautions(told, room.width - (told->beside > 0 ? COLUMN : 0)), told->beside));
        if (told->beside > 0)
            *beside = take_column(&foot, COLUMN);
        add_cautions(svg, &foot, told);
    }
    svg_shut(svg);
    return room;
}

double sheet_width(paper_size paper, int lies)
{
    const box whole = paper_of(paper, lies);
    return within_margins(&whole).width;
}

box sheet_room(paper_size paper, int lies, const heading *told)
{
    text nowhere = {NULL, 0, 0};
    box beside;
    const box room = put_heading(&nowhere, paper, lies, told, &beside);
    text_free(&nowhere);
    return room;
}

/* --- sheets --- */

sheet *sheets_add(sheets *made, paper_size paper, int lies, const heading *told)
{
    const box whole = paper_of(paper, lies);
    sheet *one;
    made->all = grown(made->all, made->count, &made->room, sizeof *made->all);
    one = made->all + made->count++;
    *one = (sheet){.width = whole.width, .height = whole.height, .title = copy_of(told->title)};
    one->room = put_heading(&one->body, paper, lies, told, &one->beside);
    return one;
}

void sheets_free(sheets *made)
{
    for (size_t i = 0; i < made->count; i++) {
        text_free(&made->all[i].body);
        free(made->all[i].title);
    }
    free(made->all);
}

/* Its own millimetres are those of a page of 96 dots an inch. */
void sheet_drawing(text *svg, point at, const tside_drawing *drawing, const char *title)
{
    text_add(svg, "<g transform=\"translate(%.3f %.3f) scale(%.9f)\">\n", at.x, at.y, 25.4 / 96);
    add_svg(svg, drawing, title);
    text_add(svg, "</g>\n");
}

void sheet_document(text *out, const sheets *made, size_t place)
{
    const sheet *one = made->all + place;
    char words[60];
    snprintf(words, sizeof words, "page %zu of %zu", place + 1, made->count);
    text_add(out,
             "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%gmm\" height=\"%gmm\" viewBox=\"0 0 %g %g\">\n<title>",
             one->width, one->height, one->width, one->height);
    text_add_markup(out, one->title, strlen(one->title));
    text_add(out, "</title>\n<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>\n");
    text_add_bytes(out, text_of(&one->body), one->body.length);
    svg_words(out, (point){one->width - MARGIN, MARGIN + HEADING}, LETTERS, FROM_RIGHT, words);
    text_add(out, "</svg>\n");
}
