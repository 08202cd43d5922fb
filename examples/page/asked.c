/* SPDX-License-Identifier: MIT */
/* What a page asks, in the words and the order of the form, and the form's pictures. */
#include "core.h"
#include "places.h"
#include "questions.h"
#include "template.h"
#include "writer.h"

SHOWN const char *questions_asked(void);
SHOWN const char *pictures(void);
SHOWN const char *template_of(int side, int letter_paper);

static text asked; /* the answer, until the next one */

static void put_choices(writer *w, const tside_field *row)
{
    open_bracket(w, "choices", '[');
    for (int i = 0; i < row->choice_count; i++)
        put_string(w, NULL, row->choices[i]);
    shut_bracket(w, ']');
}

static void put_field(writer *w, const tside_field *row)
{
    static const char *const types[] = {"number", "count", "choice", "group", "list"};
    put_string(w, "meaning", row->meaning);
    put_string(w, "type", types[row->type]);
    put_string(w, "unit", row->unit);
    put_flag(w, "required", row->required);
    put_choices(w, row);
}

/* Of a list what each of its elements has, beside a name. */
static void put_elements(writer *w, const tside_field *list)
{
    int count = 0;
    const tside_field *row = list->type == TSIDE_LIST ? tside_fields(list->kind, &count) : NULL;
    open_bracket(w, "elements", '[');
    for (int i = 0; i < count; i++) {
        open_bracket(w, NULL, '{');
        put_string(w, "path", row[i].name);
        put_field(w, row + i);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_question(writer *w, const question *one)
{
    char letter[4];
    tside_place place;
    if (tside_field_find(TSIDE_KIND_SIDE, one->path, &place, NULL) != TSIDE_OK)
        return; /* there is none: a test of the form holds that each question is a field */
    open_bracket(w, NULL, '{');
    put_string(w, "path", one->path);
    put_string(w, "letter", question_letter(one, letter));
    put_whole(w, "sixteenths", one->sixteenths);
    put_field(w, place.field);
    put_elements(w, place.field);
    shut_bracket(w, '}');
}

/* Every question in the order of the walk. */
const char *questions_asked(void)
{
    const question *one;
    writer w;
    text_free(&asked);
    w = open_document(&asked, 1);
    open_bracket(&w, "questions", '[');
    for (int i = 0; (one = question_at(i)) != NULL; i++)
        put_question(&w, one);
    shut_bracket(&w, ']');
    shut_document(&w);
    return text_of(&asked);
}

static int is_always_asked(const void *context, const char *path)
{
    (void)context;
    (void)path;
    return 1;
}

/* Pictures of where the tape goes, each place with its question's letter. */
const char *pictures(void)
{
    const box all = {0, 0, 210, 190};
    tside_side usual;
    tside_usual(TSIDE_KIND_SIDE, &usual);
    text_free(&asked);
    text_add(&asked, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"%g %g %g %g\">", all.x, all.y, all.width,
             all.height);
    add_places(&asked, &all, &usual, 1, is_always_asked, NULL);
    text_add(&asked, "</svg>");
    return text_of(&asked);
}

/* --- the template --- */

/* Its sheets at full size, one document of SVG after the other; none where the side has none. */
const char *template_of(int side, int letter_paper)
{
    const planned *of = side_planned(side);
    sheets made = {NULL, 0, 0};
    text_free(&asked);
    if (of)
        add_template(&made, of, TSIDE_DRIVE_END, TSIDE_FREE_END, letter_paper ? PAPER_LETTER : PAPER_A4,
                     of->wanted.in_feet);
    for (size_t i = 0; i < made.count; i++)
        sheet_document(&asked, &made, i);
    sheets_free(&made);
    return text_of(&asked);
}
