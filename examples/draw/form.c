/* SPDX-License-Identifier: MIT */
#include <ctype.h>
#include <string.h>

#include "form.h"
#include "names.h"
#include "places.h"
#include "questions.h"
#include "read.h"
#include "units.h"

/* --- what is settled, and so what is asked --- */

static int settle(tside_side *side, const char *path, const char *value, text *why)
{
    tside_place place;
    const tside_field *row;
    if (tside_field_find(TSIDE_KIND_SIDE, path, &place, NULL) != TSIDE_OK)
        return 0;
    row = place.field;
    for (int i = 0; i < row->choice_count; i++)
        if (!strcmp(row->choices[i], value)) {
            *MEMBER(side, place.offset, int) = i;
            return 1;
        }
    for (int i = 0; i < row->choice_count; i++)
        text_add(why, "%s%s", i ? " or " : "", row->choices[i]);
    return 0;
}

int settle_bow(settled *known, const char *value, text *why)
{
    return known->bow = settle(&known->side, "frame.shape", value, why);
}

int settle_drive(settled *known, const char *value, text *why)
{
    return known->drive = settle(&known->side, "drive.kind", value, why);
}

int settle_hung(settled *known, const char *value, text *why)
{
    return known->hung = settle(&known->side, "drive_end.hung", value, why) &&
                         settle(&known->side, "free_end.hung", value, why);
}

/* Whether a choice, by its place in the side, is settled. */
static int is_settled(const settled *known, size_t offset)
{
    return (known->bow && offset == offsetof(tside_side, frame.shape)) ||
           (known->drive && offset == offsetof(tside_side, drive.kind)) ||
           (known->hung &&
            (offset == offsetof(tside_side, drive_end.hung) || offset == offsetof(tside_side, free_end.hung)));
}

/* The parts of a question's path, from the outermost group to the field itself. */
enum { MOST_PARTS = 6 };
typedef struct parts {
    int count;
    tside_place place[MOST_PARTS]; /* of each */
    tside_kind kind[MOST_PARTS];   /* of the structure that it is in */
    size_t within[MOST_PARTS];     /* where that begins in the side */
} parts;

static parts parts_of(const char *path)
{
    parts found = {.count = 0};
    text part = {NULL, 0, 0};
    for (size_t end = 0; found.count < MOST_PARTS && (!end || path[end - 1]);) {
        const int i = found.count++;
        end += strcspn(path + end, ".") + 1;
        text_cut(&part, 0);
        text_add_bytes(&part, path, end - 1);
        if (tside_field_find(TSIDE_KIND_SIDE, text_of(&part), &found.place[i], NULL) != TSIDE_OK)
            break;
        found.kind[i] = i ? found.place[i - 1].field->kind : TSIDE_KIND_SIDE;
        found.within[i] = i ? found.place[i - 1].offset : 0;
    }
    text_free(&part);
    return found;
}

/* Whether some side that is settled so far would be asked this. */
static int is_asked(const settled *known, const parts *of)
{
    for (int i = 0; i < of->count; i++) {
        const tside_field *row = of->place[i].field;
        if (row->applies_to && is_settled(known, of->within[i] + row->applies_offset) &&
            !tside_field_applies(row, CONST_MEMBER(&known->side, of->within[i], char)))
            return 0;
    }
    return !is_settled(known, of->place[of->count - 1].offset);
}

/* --- its words: the tables', as a line of the form --- */

/* A name of the tables, such as "three_points", as people say it. */
static void add_plainly(text *t, const char *name)
{
    for (; *name; name++)
        text_add_bytes(t, *name == '_' ? " " : name, 1);
}

/* The meaning up to where it goes into details. */
static void add_meaning(text *t, const char *meaning)
{
    text_add_bytes(t, meaning, strcspn(meaning, ";"));
}

static void add_choices(text *t, const tside_field *row)
{
    enum { MOST = 5 }; /* more are a list of their own */
    for (int i = 0; row->choice_count <= MOST && i < row->choice_count; i++) {
        text_add(t, "%s", i ? " / " : ": ");
        add_plainly(t, row->choices[i]);
    }
}

/* ", if shape is three points" for what hangs on a choice that is not settled. */
static void add_condition_of(text *t, const settled *known, const parts *of, int i)
{
    const tside_field *row = of->place[i].field, *choice;
    const char *before = " is ";
    if (!row->applies_to || is_settled(known, of->within[i] + row->applies_offset))
        return;
    choice = row_named(of->kind[i], row->applies_to, NULL);
    text_add(t, ", if ");
    add_plainly(t, choice->name);
    for (int k = 0; k < choice->choice_count; k++)
        if (row->applies_mask >> k & 1u) {
            text_add(t, "%s", before);
            add_plainly(t, choice->choices[k]);
            before = " or ";
        }
}

/* Its groups, the two outermost, as a heading over those that share them: "the end wall with the drive: the guide". */
enum { IN_HEADING = 2 };
static void add_section(text *t, const settled *known, const parts *of)
{
    if (of->count == 1)
        text_add(t, "the side");
    for (int i = 0; i < of->count - 1 && i < IN_HEADING; i++) {
        text_add(t, "%s", i ? ": " : "");
        add_meaning(t, of->place[i].field->meaning);
        add_condition_of(t, known, of, i);
    }
}

static void add_question(text *t, const settled *known, const parts *of)
{
    const int last = of->count - 1;
    for (int i = IN_HEADING; i < last; i++) {
        add_meaning(t, of->place[i].field->meaning);
        text_add(t, ": ");
    }
    add_meaning(t, of->place[last].field->meaning);
    if (of->place[last].field->type == TSIDE_CHOICE)
        add_choices(t, of->place[last].field);
    add_condition_of(t, known, of, last);
}

#define SMALL 0.01 /* m: what is below it is told finer than a tape tells */

/* What stands for an answer that is left out. */
static void add_if_blank(text *t, pen *p, const tside_field *row)
{
    if (row->type == TSIDE_LIST || row->optional) {
        text_add(t, "not needed");
    } else if (row->type == TSIDE_CHOICE) {
        text_add(t, "else ");
        add_plainly(t, choice_text(row, (int)row->usual));
    } else if (row->required)
        text_add(t, "NEEDED");
    else
        text_add(t, "else %s",
                 !strcmp(row->unit, "m") && row->usual < SMALL ? fine(p, row->usual)
                                                               : quantity(p, row->usual, row->unit));
}

/* --- the rows --- */

#define ROW 7.4 /* mm, of one line of words */
#define LETTER_WIDTH 9.0
#define BOX_WIDTH 36.0
#define CLOSELY_WIDTH 15.0
#define BLANK_WIDTH 28.0

typedef struct form {
    sheets *made;
    const settled *known;
    paper_size paper;
    pen pen;
    sheet *on;
    box room;
    text section; /* that the last row stands in */
} form;

static void take(form *f, double height)
{
    f->room.y += height;
    f->room.height -= height;
}

static double words_width(const form *f)
{
    return f->room.width - LETTER_WIDTH - BOX_WIDTH - CLOSELY_WIDTH - BLANK_WIDTH;
}

static void put_cell(form *f, double from, double width, const char *words)
{
    box at = {f->room.x + from, f->room.y + 1, width, 0};
    sheet_words(&f->on->body, &at, PRINT, words);
}

static void put_titles(form *f)
{
    const double closely = LETTER_WIDTH + words_width(f) + BOX_WIDTH;
    put_cell(f, closely, CLOSELY_WIDTH, "within");
    put_cell(f, closely + CLOSELY_WIDTH, BLANK_WIDTH, "if left blank");
    take(f, ROW);
}

static void begin_sheet(form *f, int titles)
{
    static const caution cautions[] = {CAUTION_LADDER, CAUTION_WIND, CAUTION_POWER};
    static const heading told = {
        .title = "FORM, to carry to the site",
        .of = "Whose: ____________________  Date: ________",
        .lines = {"One box each, in the order of one walk: from the drive's end along the side to the free end. Write "
                  "lengths as the tape shows them, with their unit; leave out what is not known, but for what is "
                  "NEEDED."},
        .cautions = cautions,
        .caution_count = sizeof cautions / sizeof *cautions,
    };
    f->on = sheets_add(f->made, f->paper, 0, &told);
    f->room = f->on->room;
    if (titles)
        put_titles(f);
}

static double high_within(const char *words, double width)
{
    text nowhere = {NULL, 0, 0};
    box at = {0, 0, width, 0};
    sheet_words(&nowhere, &at, PRINT, words);
    text_free(&nowhere);
    return at.y + 2.5;
}

/* What a row says. */
typedef struct row {
    const question *asked;
    int required;
    double high; /* mm */
    text words, if_blank;
} row;

static row row_of(form *f, const question *asked, const parts *of)
{
    const tside_field *field = of->place[of->count - 1].field;
    row made = {.asked = asked, .required = field->required, .high = ROW};
    double words, if_blank;
    add_question(&made.words, f->known, of);
    add_if_blank(&made.if_blank, &f->pen, field);
    words = high_within(text_of(&made.words), words_width(f));
    if_blank = high_within(text_of(&made.if_blank), BLANK_WIDTH);
    if (made.high < words)
        made.high = words;
    if (made.high < if_blank)
        made.high = if_blank;
    return made;
}

static void put_section(form *f, const text *section)
{
    text line = {NULL, 0, 0};
    text_cut(&f->section, 0);
    text_add(&f->section, "%s", text_of(section));
    text_add_within(&line, text_of(section), svg_columns(text_of(section), f->room.width, PRINT));
    *line.data = (char)toupper((unsigned char)*line.data);
    svg_bold(&f->on->body, (point){f->room.x, f->room.y + ROW - 2}, PRINT, FROM_LEFT, text_of(&line));
    take(f, ROW);
    text_free(&line);
}

static void put_row(form *f, const row *put)
{
    const double box_at = LETTER_WIDTH + words_width(f);
    const box answer = {f->room.x + box_at, f->room.y + 0.5, BOX_WIDTH - 2, put->high - 1};
    char letter[4];
    svg_open(&f->on->body, "question");
    svg_bold(&f->on->body, (point){f->room.x, f->room.y + 1 + PRINT}, PRINT, FROM_LEFT,
             question_letter(put->asked, letter));
    put_cell(f, LETTER_WIDTH, words_width(f), text_of(&put->words));
    svg_box(&f->on->body, &answer, put->required ? WIDE : NARROW);
    if (put->asked->sixteenths)
        put_cell(f, box_at + BOX_WIDTH, CLOSELY_WIDTH, tape(&f->pen, put->asked->sixteenths * 0.0254 / 16));
    put_cell(f, box_at + BOX_WIDTH + CLOSELY_WIDTH, BLANK_WIDTH, text_of(&put->if_blank));
    svg_shut(&f->on->body);
    take(f, put->high);
}

static void put_question(form *f, const question *asked, const parts *of)
{
    row put = row_of(f, asked, of);
    text section = {NULL, 0, 0};
    int begins;
    add_section(&section, f->known, of);
    begins = strcmp(text_of(&section), text_of(&f->section));
    if (f->room.height < put.high + (begins ? ROW : 0)) {
        begin_sheet(f, 1);
        begins = 1;
    }
    if (begins)
        put_section(f, &section);
    put_row(f, &put);
    text_free(&section);
    text_free(&put.words);
    text_free(&put.if_blank);
}

static int is_path_asked(const void *known, const char *path)
{
    const parts of = parts_of(path);
    return is_asked(known, &of);
}

void add_form(sheets *made, const settled *known, paper_size paper, int us)
{
    form f = {.made = made, .known = known, .paper = paper, .pen = {.us = us}};
    const question *asked;
    begin_sheet(&f, 0);
    add_places(&f.on->body, &f.room, &known->side, !known->bow, is_path_asked, known);
    begin_sheet(&f, 1);
    for (int i = 0; (asked = question_at(i)) != NULL; i++) {
        const parts of = parts_of(asked->path);
        if (is_asked(known, &of))
            put_question(&f, asked, &of);
    }
    text_free(&f.section);
}
