/* SPDX-License-Identifier: MIT */
/*
 * A drawing as SVG: millimetres on paper, down from its upper left. Source: Scalable Vector Graphics (SVG) 1.1 (Second
 * Edition), W3C; line widths and dashes ISO 128-2.
 */
#include <math.h>
#include <string.h>

#include <tunnelside/drawing.h>

#include "base/field.h"
#include "base/number.h"
#include "drawing/tables.h"
#include "drawing/words.h"

/* mm: a digit of what is written. An arc whose ends are written alike would be none at all: it is put down a circle. */
#define DIGIT 1e-3

/* A text at a time of which the drawing is put down. */
typedef struct page {
    const tside_drawing *drawing;
    tside_i_text *out;
    double size; /* mm on paper for a metre */
} page;

/* A place to 1e-3 mm, without zeros at its end. */
static void put_number(tside_i_text *out, double value)
{
    uint64_t thousandths = (uint64_t)llround(fabs(value) * 1000);
    int decimals = 3;
    while (decimals > 0 && thousandths % 10 == 0) {
        thousandths /= 10;
        decimals--;
    }
    if (value < 0 && thousandths > 0)
        tside_i_put_character(out, '-');
    tside_i_put_decimal(out, thousandths, decimals);
}

static void put_attribute(tside_i_text *out, const char *name, double value)
{
    tside_i_put_character(out, ' ');
    tside_i_put(out, name);
    tside_i_put(out, "=\"");
    put_number(out, value);
    tside_i_put_character(out, '"');
}

static double across(const page *p, double x)
{
    return (x - p->drawing->left) * p->size;
}

static double down(const page *p, double y)
{
    return (p->drawing->top - y) * p->size;
}

/*
 * How many bytes a character of UTF-8 has, 0 where there is none that XML allows: a stray or missing byte, a longer
 * form than needed, half a pair of UTF-16, U+FFFE and U+FFFF, beyond U+10FFFF. Source: Unicode, table 3-7, and XML 1.0,
 * Char.
 */
static int bytes_of(const unsigned char *at)
{
    const unsigned char first = at[0];
    const int more = first < 0x80 ? 0 : first >= 0xc2 && first < 0xe0 ? 1 : first >= 0xe0 && first < 0xf0 ? 2 : 3;
    const unsigned char low = first == 0xe0   ? 0xa0
                              : first == 0xf0 ? 0x90
                                              : 0x80,
                        high = first == 0xed   ? 0x9f
                               : first == 0xf4 ? 0x8f
                                               : 0xbf;
    if ((first >= 0x80 && first < 0xc2) || first > 0xf4 || (more && (at[1] < low || at[1] > high)))
        return 0;
    for (int i = 2; i <= more; i++)
        if (at[i] < 0x80 || at[i] > 0xbf)
            return 0;
    return first == 0xef && at[1] == 0xbf && at[2] >= 0xbe ? 0 : more + 1;
}

static const char *entity_of(char character)
{
    switch (character) {
    case '&': return "&amp;";
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '"': return "&quot;";
    default: return NULL;
    }
}

/* Text in which nothing is markup: control characters are blanks, and what is no character is shown as such. */
static void put_escaped(tside_i_text *out, const char *words)
{
    while (*words) {
        const char *entity = entity_of(*words);
        int bytes = bytes_of((const unsigned char *)words);
        if (entity)
            tside_i_put(out, entity);
        else if (!bytes)
            tside_i_put(out, "\xef\xbf\xbd"); /* U+FFFD */
        else if ((unsigned char)*words < ' ' || *words == 0x7f)
            tside_i_put_character(out, ' ');
        else
            for (int i = 0; i < bytes; i++)
                tside_i_put_character(out, words[i]);
        words += bytes ? bytes : 1;
    }
}

/* --- strokes --- */

/* 0.5 and 0.25 mm, one of the pairs of widths; dashes of 12 and gaps of 3 widths, long ones of 24 and dots. */
static const char lines_begin[] = "<g fill=\"none\" stroke=\"#000\" stroke-width=\".25\">\n";
static const char *const line_attributes[] = {
    [TSIDE_LINE_WIDE] = " stroke-width=\".5\"",
    [TSIDE_LINE_NARROW] = "",
    [TSIDE_LINE_DASHED] = " stroke-dasharray=\"3 .75\"",
    [TSIDE_LINE_CHAIN] = " stroke-dasharray=\"6 .75 .125 .75\"",
};
static const char texts_begin[] = "<g font-family=\"DejaVu Sans Mono, Liberation Mono, monospace\" font-size=\"4.8\" "
                                  "text-anchor=\"middle\" fill=\"#000\" stroke=\"none\">\n";

static void put_line(const page *p, tside_line_type type, double x, double y, double x_end, double y_end)
{
    tside_i_put(p->out, "<line");
    tside_i_put(p->out, line_attributes[type]);
    put_attribute(p->out, "x1", across(p, x));
    put_attribute(p->out, "y1", down(p, y));
    put_attribute(p->out, "x2", across(p, x_end));
    put_attribute(p->out, "y2", down(p, y_end));
    tside_i_put(p->out, "/>\n");
}

static void put_pair(const page *p, double x, double y)
{
    put_number(p->out, across(p, x));
    tside_i_put_character(p->out, ' ');
    put_number(p->out, down(p, y));
}

static void put_arc(const page *p, const tside_stroke *arc)
{
    const double to = arc->from + arc->sweep;
    if ((2 * TSIDE_PI - arc->sweep) * arc->radius * p->size < DIGIT) {
        tside_i_put(p->out, "<circle");
        tside_i_put(p->out, line_attributes[arc->line]);
        put_attribute(p->out, "cx", across(p, arc->x));
        put_attribute(p->out, "cy", down(p, arc->y));
        put_attribute(p->out, "r", arc->radius * p->size);
        tside_i_put(p->out, "/>\n");
        return;
    }
    tside_i_put(p->out, "<path");
    tside_i_put(p->out, line_attributes[arc->line]);
    tside_i_put(p->out, " d=\"M");
    put_pair(p, arc->x + arc->radius * cos(arc->from), arc->y + arc->radius * sin(arc->from));
    tside_i_put_character(p->out, 'A');
    put_number(p->out, arc->radius * p->size);
    tside_i_put_character(p->out, ' ');
    put_number(p->out, arc->radius * p->size);
    tside_i_put(p->out, arc->sweep > TSIDE_PI ? " 0 1 0 " : " 0 0 0 ");
    put_pair(p, arc->x + arc->radius * cos(to), arc->y + arc->radius * sin(to));
    tside_i_put(p->out, "\"/>\n");
}

static void put_stroke(const page *p, const tside_stroke *stroke)
{
    if (stroke->arc)
        put_arc(p, stroke);
    else
        put_line(p, stroke->line, stroke->x, stroke->y, stroke->x_end, stroke->y_end);
}

/* --- dimensions and notes --- */

/* An arrowhead of 3 mm, its point at (x, y), pointing along a direction. */
static void put_arrow(const page *p, double x, double y, double ux, double uy)
{
    const double long_side = 3 / p->size, half = 0.5 / p->size;
    tside_i_put(p->out, "<path fill=\"#000\" stroke=\"none\" d=\"M");
    put_pair(p, x, y);
    tside_i_put_character(p->out, 'L');
    put_pair(p, x - long_side * ux - half * uy, y - long_side * uy + half * ux);
    tside_i_put_character(p->out, 'L');
    put_pair(p, x - long_side * ux + half * uy, y - long_side * uy - half * ux);
    tside_i_put(p->out, "z\"/>\n");
}

static void put_text(const page *p, double x, double y, double angle, double width, const char *words)
{
    tside_i_put(p->out, "<text");
    put_attribute(p->out, "x", across(p, x));
    put_attribute(p->out, "y", down(p, y));
    put_attribute(p->out, "textLength", width * p->size);
    tside_i_put(p->out, " lengthAdjust=\"spacingAndGlyphs\"");
    if (angle != 0) {
        tside_i_put(p->out, " transform=\"rotate(");
        put_number(p->out, -angle * 180 / TSIDE_PI);
        tside_i_put_character(p->out, ' ');
        put_pair(p, x, y);
        tside_i_put(p->out, ")\"");
    }
    tside_i_put_character(p->out, '>');
    put_escaped(p->out, words);
    tside_i_put(p->out, "</text>\n");
}

/* Where on a dimension's line the line that leads from a point meets it. */
static void put_leading(const page *p, const tside_dimension *d, double x, double y, double *foot_x, double *foot_y)
{
    const double length = hypot(d->to_x - d->from_x, d->to_y - d->from_y), ux = (d->to_x - d->from_x) / length,
                 uy = (d->to_y - d->from_y) / length, along = (x - d->from_x) * ux + (y - d->from_y) * uy;
    double away;
    *foot_x = d->from_x + along * ux;
    *foot_y = d->from_y + along * uy;
    away = hypot(*foot_x - x, *foot_y - y);
    if (away * p->size > 1)
        put_line(p, TSIDE_LINE_NARROW, x + (*foot_x - x) / (away * p->size), y + (*foot_y - y) / (away * p->size),
                 *foot_x + (*foot_x - x) * 1.5 / (away * p->size), *foot_y + (*foot_y - y) * 1.5 / (away * p->size));
}

static void put_dimension_line(const page *p, const tside_dimension *d)
{
    double x, y, x_end, y_end, length;
    put_line(p, TSIDE_LINE_NARROW, d->from_x, d->from_y, d->to_x, d->to_y);
    put_leading(p, d, d->x, d->y, &x, &y);
    put_leading(p, d, d->x_end, d->y_end, &x_end, &y_end);
    length = hypot(x_end - x, y_end - y);
    if (!(length > 0))
        return;
    length = d->arrows_outside ? -length : length;
    put_arrow(p, x, y, (x - x_end) / length, (y - y_end) / length);
    put_arrow(p, x_end, y_end, (x_end - x) / length, (y_end - y) / length);
}

static void put_dimension_strokes(const page *p, const tside_dimension *d)
{
    if (d->from_x != d->to_x || d->from_y != d->to_y)
        put_dimension_line(p, d);
    if (d->leader)
        put_line(p, TSIDE_LINE_NARROW, (d->from_x + d->to_x) / 2, (d->from_y + d->to_y) / 2, d->leader_x, d->leader_y);
}

static void put_leader(const page *p, const tside_note *note)
{
    if (note->x != note->to_x || note->y != note->to_y)
        put_line(p, TSIDE_LINE_NARROW, note->x, note->y, note->to_x, note->to_y);
}

static tside_status put_dimension_text(const page *p, const tside_dimension *d, tside_fault *fault)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    TRY(tside_i_dimension_words(d, p->drawing->picture.tape, &text, fault));
    put_text(p, d->text_x, d->text_y, d->text_angle, d->text_width, words);
    return TSIDE_OK;
}

static void put_note_text(const page *p, const tside_note *note)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    tside_i_note_words(note, &text);
    put_text(p, note->text_x, note->text_y, 0, note->text_width, words);
}

/* --- for who does not see it --- */

static const char *const views[TSIDE_VIEW_OPENING + 1] = {
    [TSIDE_VIEW_END_WALL] = "An end wall from outside, cropped to what is set out",
    [TSIDE_VIEW_WHOLE_WALL] = "The whole end wall from outside",
    [TSIDE_VIEW_CORNER] = "A corner from above, its wall's outside at the foot",
    [TSIDE_VIEW_EXTENDER] = "An extender as a piece, its face away from the wall, top end left",
    [TSIDE_VIEW_ALONG] = "The side along the house, from outside, shut",
    [TSIDE_VIEW_ROLL_SHUT] = "The roll, shut, from outside the drive's end",
    [TSIDE_VIEW_ROLL_OPEN] = "The roll, open, from outside the drive's end",
    [TSIDE_VIEW_TURNS] = "Opening, torque and lean over the drive's turns",
    [TSIDE_VIEW_OPENING] = "Opening over the drive's turns",
};

/* The name with blanks, and what the drawing has beside the line; the eye sees which way that goes. */
static tside_status describe_dimension(const page *p, const tside_dimension *d, tside_fault *fault)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    TRY(tside_i_dimension_words(d, p->drawing->picture.tape, &text, fault));
    for (const char *c = tside_i_tells[d->tells]; *c; c++)
        tside_i_put_character(p->out, *c == '_' ? ' ' : *c);
    tside_i_put(p->out, ": ");
    put_escaped(p->out, words);
    tside_i_put(p->out, d->value >= 0 ? "" : d->kind == TSIDE_DIMENSION_LEVEL ? ", inboard" : ", downward");
    return TSIDE_OK;
}

static void describe_note(const page *p, const tside_note *note)
{
    char words[TSIDE_I_WORDS];
    tside_i_text text = tside_i_empty(words, sizeof words);
    tside_i_note_words(note, &text);
    put_escaped(p->out, words);
}

static tside_status put_description(const page *p, tside_fault *fault)
{
    const tside_drawing *drawing = p->drawing;
    tside_i_put(p->out, "<desc>");
    tside_i_put(p->out, views[drawing->picture.view]);
    tside_i_put(p->out, drawing->outboard > 0   ? "; outboard is to the right"
                        : drawing->outboard < 0 ? "; outboard is to the left"
                                                : "");
    for (int i = 0; i < drawing->dimension_count; i++) {
        tside_i_put(p->out, i ? "; " : ". Dimensions: ");
        TRY(tside_i_within(fault, "drawing.dimensions",
                           tside_i_within_element(fault, i, describe_dimension(p, drawing->dimensions + i, fault))));
    }
    for (int i = 0; i < drawing->note_count; i++) {
        tside_i_put(p->out, i ? "; " : ". Named: ");
        describe_note(p, drawing->notes + i);
    }
    tside_i_put(p->out, ".</desc>\n");
    return TSIDE_OK;
}

/* --- all of it --- */

static tside_status put_head(const page *p, const char *title, tside_fault *fault)
{
    const tside_drawing *drawing = p->drawing;
    const double width = (drawing->right - drawing->left) * p->size,
                 height = (drawing->top - drawing->bottom) * p->size;
    tside_i_put(p->out, "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" width=\"");
    put_number(p->out, width);
    tside_i_put(p->out, "mm\" height=\"");
    put_number(p->out, height);
    tside_i_put(p->out, "mm\" viewBox=\"0 0 ");
    put_number(p->out, width);
    tside_i_put_character(p->out, ' ');
    put_number(p->out, height);
    tside_i_put(p->out, "\">\n<title>");
    put_escaped(p->out, title);
    tside_i_put(p->out, "</title>\n");
    return put_description(p, fault);
}

static void put_lines(const page *p)
{
    const tside_drawing *drawing = p->drawing;
    tside_i_put(p->out, lines_begin);
    for (int i = 0; i < drawing->stroke_count; i++)
        put_stroke(p, drawing->strokes + i);
    for (int i = 0; i < drawing->dimension_count; i++)
        put_dimension_strokes(p, drawing->dimensions + i);
    for (int i = 0; i < drawing->note_count; i++)
        put_leader(p, drawing->notes + i);
    tside_i_put(p->out, "</g>\n");
}

static tside_status put_texts(const page *p, tside_fault *fault)
{
    const tside_drawing *drawing = p->drawing;
    tside_i_put(p->out, texts_begin);
    for (int i = 0; i < drawing->dimension_count; i++)
        TRY(tside_i_within(fault, "drawing.dimensions",
                           tside_i_within_element(fault, i, put_dimension_text(p, drawing->dimensions + i, fault))));
    for (int i = 0; i < drawing->note_count; i++)
        put_note_text(p, drawing->notes + i);
    tside_i_put(p->out, "</g>\n");
    return TSIDE_OK;
}

/* No style sheet: within a page its rules would be the page's too. */
static tside_status put_drawing(const page *p, const char *title, tside_fault *fault)
{
    TRY(put_head(p, title, fault));
    put_lines(p);
    TRY(put_texts(p, fault));
    tside_i_put(p->out, "</svg>\n");
    return TSIDE_OK;
}

tside_status tside_drawing_svg(const tside_drawing *drawing, const char *title, char *buffer, size_t size,
                               size_t *needed, tside_fault *fault)
{
    tside_i_text text = tside_i_empty(NULL, 0);
    const page p = {.drawing = drawing, .out = &text, .size = 1000 / drawing->picture.scale};
    TRY(tside_i_check(&tside_i_drawing_table, "drawing", drawing, fault));
    TRY(put_drawing(&p, title, fault));
    if (needed)
        *needed = text.length;
    if (size <= text.length)
        REFUSE(fault, TSIDE_TOO_SMALL, "size", "", "", "1", (double)size, TSIDE_NOT_ABOVE, (double)text.length, 0);
    text = tside_i_empty(buffer, size);
    return put_drawing(&p, title, fault);
}
