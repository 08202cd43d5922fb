/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "drawn.h"
#include "mark.h"
#include "memory.h"
#include "message.h"
#include "table.h"
#include "units.h"
#include "views.h"
#include "whose.h"

#define APART 4.0                                              /* mm, between what is on a sheet */
static const double thumbnail_width = 56, thumbnail_high = 26; /* mm, with the words below it */

/* --- the sheets there are --- */

/* In the order of the work: those of an end, then those of the side. */
static const struct kind {
    const char *name;
    int view;  /* a tside_view; -1: the card for the drive */
    int usual; /* 1: one of those that a side has without being asked for it */
    int count;
    caution cautions[4];
} kinds[] = {
    {"end_wall", TSIDE_VIEW_END_WALL, 1, 3, {CAUTION_DRILLING, CAUTION_LADDER, CAUTION_BURIED}},
    {"whole_wall", TSIDE_VIEW_WHOLE_WALL, 0, 1, {CAUTION_CERTIFICATE}},
    {"corner", TSIDE_VIEW_CORNER, 1, 1, {CAUTION_LADDER}},
    {"extender", TSIDE_VIEW_EXTENDER, 1, 1, {CAUTION_CERTIFICATE}},
    {"along", TSIDE_VIEW_ALONG, 1, 2, {CAUTION_LADDER, CAUTION_HANDS}},
    {"roll_shut", TSIDE_VIEW_ROLL_SHUT, 1, 1, {CAUTION_HANDS}},
    {"roll_open", TSIDE_VIEW_ROLL_OPEN, 1, 1, {CAUTION_HANDS}},
    {"turns", TSIDE_VIEW_TURNS, 1, 1, {CAUTION_CERTIFICATE}},
    {"drive_card", -1, 1, 4, {CAUTION_HANDS, CAUTION_POWER, CAUTION_TWO_PEOPLE, CAUTION_CERTIFICATE}},
};
enum { KINDS = sizeof kinds / sizeof *kinds };

int view_named(const char *name, text *why)
{
    for (int i = 0; i < KINDS; i++)
        if (!strcmp(name, kinds[i].name))
            return i;
    for (int i = 0; i < KINDS; i++)
        text_add(why, "%s%s", i ? ", " : "", kinds[i].name);
    return -1;
}

static const char *scale_name(double scale, char *words, size_t size)
{
    snprintf(words, size, "1:%g", scale);
    return words;
}

double scale_named(const char *name, text *why)
{
    char words[16];
    for (int i = 0; i < SCALES; i++)
        if (!strcmp(name, scale_name(scales[i], words, sizeof words)))
            return scales[i];
    for (int i = 0; i < SCALES; i++)
        text_add(why, "%s%s", i ? ", " : "", scale_name(scales[i], words, sizeof words));
    return 0;
}

/* --- what each sheet says --- */

/* The words of a sheet, and the heading that points to them. */
typedef struct told {
    text title, of, hand, notes, mark;
    char scale[16];
    heading heading;
} told;

static void add_title(text *out, const struct kind *kind, int end)
{
    if (kind->view < 0)
        text_add(out, "CARD FOR THE DRIVE");
    else
        add_view_title(out, (tside_view)kind->view, end);
}

static void tell(told *words, const planned *side, const struct kind *kind, const tside_picture *picture)
{
    const int end = (int)picture->end;
    *words = (told){.scale = ""};
    add_title(&words->title, kind, end);
    add_whose(&words->of, side);
    text_add(&words->hand, "Hand: ");
    add_hand(&words->hand, side, end);
    add_notes(&words->notes, side);
    words->heading.title = text_of(&words->title);
    words->heading.of = text_of(&words->of);
    words->heading.lines[0] = text_of(&words->hand);
    words->heading.lines[1] = text_of(&words->notes);
    if (kind->view == TSIDE_VIEW_EXTENDER && on_extender(side, end)) {
        char mark[TSIDE_MARK_SIZE];
        text_add(&words->mark, "Mark it %s.", piece_mark(side, TSIDE_ITEM_EXTENDER, place_of_end(end), 1, mark));
        words->heading.lines[2] = text_of(&words->mark);
    }
    words->heading.cautions = kind->cautions;
    words->heading.caution_count = kind->count;
    if (kind->view == TSIDE_VIEW_END_WALL)
        words->heading.beside = thumbnail_high;
    if (kind->view >= 0)
        words->heading.scale = scale_name(picture->scale, words->scale, sizeof words->scale);
}

static void untell(told *words)
{
    text_free(&words->title);
    text_free(&words->of);
    text_free(&words->hand);
    text_free(&words->notes);
    text_free(&words->mark);
}

/* --- drawings --- */

typedef struct drawn {
    const planned *side;
    const wanted *what;
    const struct kind *kind;
    tside_drawing *drawing; /* the last */
    tside_picture picture;
} drawn;

/* What is wrong with the picture is wrong with the option that asked for it. */
static int refuse(const drawn *d, const tside_fault *fault)
{
    static const char of_picture[] = "picture.";
    const size_t length = sizeof of_picture - 1;
    tside_fault asked = *fault;
    char sentence[512];
    if (!strncmp(fault->field, of_picture, length))
        snprintf(asked.field, sizeof asked.field, "--%s", fault->field + length);
    tside_fault_text(&asked, sentence, sizeof sentence);
    say("%s: %s", d->side->file, sentence);
    return 0;
}

/* Into the middle of a box, at its top. */
static void put_drawing(text *svg, const drawn *d, const box *in)
{
    sheet_drawing(svg, (point){in->x + (in->width - drawn_width(d->drawing)) / 2, in->y}, d->drawing,
                  side_name(d->side));
}

/* What is left for the drawing itself on a sheet that stands, or lies. */
static extent room_for(const drawn *d, int lies)
{
    told words;
    box left;
    tell(&words, d->side, d->kind, &d->picture);
    left = sheet_room(d->what->paper, lies, &words.heading);
    untell(&words);
    return (extent){left.width, left.height};
}

/* Draws at the largest scale that fits, or that which is asked, upright if possible. Returns 1, or 0 having said why.
 */
static int draw_to_fit(drawn *d, int *lies)
{
    const extent rooms[] = {room_for(d, 0), room_for(d, 1)};
    const double asked = d->what->scale;
    tside_fault fault;
    d->picture.scale = asked;
    if (draw_within(d->drawing, d->side, &d->picture, rooms, 2, lies, &fault) != TSIDE_OK)
        return refuse(d, &fault);
    d->picture.scale = d->drawing->picture.scale;
    if (*lies >= 0)
        return 1;
    if (asked > 0)
        say("%s: --scale: at 1:%g it takes %.0f mm by %.0f mm, more than the sheet has", d->side->file, asked,
            drawn_width(d->drawing), drawn_height(d->drawing));
    else {
        text title = {NULL, 0, 0};
        add_title(&title, d->kind, (int)d->picture.end);
        say("%s: %s: too long for the sheet at 1:%g", d->side->file, text_of(&title), scales[SCALES - 1]);
        text_free(&title);
    }
    return 0;
}

/* The whole wall in small, to show where the cropped one is. */
static int put_thumbnail(sheet *on, drawn *d)
{
    const box *in = &on->beside;
    const extent small = {thumbnail_width, thumbnail_high - LETTERS - APART};
    box at = {in->x, in->y + in->height - thumbnail_high, 0, 0};
    char words[40];
    tside_fault fault;
    int ignored;
    d->picture.view = TSIDE_VIEW_WHOLE_WALL;
    d->picture.scale = 0;
    if (draw_within(d->drawing, d->side, &d->picture, &small, 1, &ignored, &fault) != TSIDE_OK)
        return refuse(d, &fault);
    at.width = drawn_width(d->drawing);
    put_drawing(&on->body, d, &at);
    snprintf(words, sizeof words, "The whole wall, 1:%g", d->drawing->picture.scale);
    svg_words(&on->body, (point){at.x, at.y + drawn_height(d->drawing) + LETTERS}, PRINT, FROM_LEFT, words);
    return 1;
}

static int add_drawing(sheets *made, drawn *d)
{
    told words;
    sheet *on;
    int lies = 0;
    if (!draw_to_fit(d, &lies))
        return 0;
    tell(&words, d->side, d->kind, &d->picture);
    on = sheets_add(made, d->what->paper, lies, &words.heading);
    untell(&words);
    put_drawing(&on->body, d, &on->room);
    return d->picture.view != TSIDE_VIEW_END_WALL || put_thumbnail(on, d);
}

/* Opening against turns, as a table and its graph. */
static int add_card(sheets *made, drawn *d)
{
    told words;
    tside_fault fault;
    d->picture.view = TSIDE_VIEW_OPENING;
    d->picture.scale = 1;
    if (tside_draw(&d->side->wanted.side, &d->side->plan, &d->picture, d->drawing, &fault) != TSIDE_OK)
        return refuse(d, &fault);
    tell(&words, d->side, d->kind, &d->picture);
    sheets_add(made, d->what->paper, 0, &words.heading);
    add_turn_table(made, d->what->paper, &words.heading, d->side, d->what->us, d->drawing);
    untell(&words);
    return 1;
}

static int add_sheet(sheets *made, drawn *d, int end)
{
    d->picture = (tside_picture){.view = (tside_view)d->kind->view,
                                 .end = (tside_which_end)end,
                                 .tape = d->what->us ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC,
                                 .turns_given = d->what->turns_given,
                                 .turns = d->what->turns};
    return d->kind->view < 0 ? add_card(made, d) : add_drawing(made, d);
}

/* --- those that are wanted --- */

static int is_wanted(const wanted *what, int kind)
{
    return what->view < 0 ? kinds[kind].usual : what->view == kind;
}

static int is_kind_of_end(const struct kind *kind)
{
    return kind->view >= 0 && is_of_end((tside_view)kind->view);
}

/* Of all that a side has, an extender may be none; asked for by name it is refused. */
static int is_there(const drawn *d, int end)
{
    return d->what->view >= 0 || d->kind->view != TSIDE_VIEW_EXTENDER || on_extender(d->side, end);
}

int add_views(sheets *made, const planned *side, const wanted *what)
{
    drawn d = {.side = side, .what = what, .drawing = take_memory(sizeof *d.drawing)};
    int good = 1;
    for (int end = what->end_first; end <= what->end_last; end++)
        for (d.kind = kinds; good && d.kind < kinds + KINDS; d.kind++)
            if (is_kind_of_end(d.kind) && is_wanted(what, (int)(d.kind - kinds)) && is_there(&d, end))
                good = add_sheet(made, &d, end);
    for (d.kind = kinds; good && d.kind < kinds + KINDS; d.kind++)
        if (!is_kind_of_end(d.kind) && is_wanted(what, (int)(d.kind - kinds)))
            good = add_sheet(made, &d, TSIDE_DRIVE_END);
    free(d.drawing);
    return good;
}
