/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "fields.h"
#include "names.h"
#include "questions.h"
#include "read.h"
#include "units.h"
#include "writer.h"

/* --- each field explained --- */

typedef struct explaining {
    text *out;
    text path;
    int us; /* 1: in feet, inches and pounds; 0: in SI, as a JSON number is */
    pen pen;
} explaining;

/* A length in feet and inches where it is one of a tape's, else in decimals of an inch. */
static const char *length_in_us(pen *p, double metres)
{
    const double sixteenths = metres / 0.0254 * 16;
    return fabs(sixteenths - round(sixteenths)) > 1e-6 && fabs(metres) < 0.1 ? fine(p, metres) : tape(p, metres);
}

/*
 * "0.1 m (common practice, no published source)" needs a readable number: six digits, no unit where it is a plain one.
 */
static void add_value(explaining *e, text *t, double value, const tside_field *row)
{
    const char *unit = strcmp(row->unit, "1") ? row->unit : "";
    if (!e->us || !*unit)
        text_add(t, "%.6g%s%s", value, *unit ? " " : "", unit);
    else if (is_hole(row))
        text_add(t, "%s", trade_size(&e->pen, value));
    else
        text_add(t, "%s", strcmp(unit, "m") ? quantity(&e->pen, value, unit) : length_in_us(&e->pen, value));
}

/* In feet and inches, one that falls between two sixteenths is told as the nearer inside: way is 1 of a low bound. */
static void add_bound(explaining *e, text *t, double bound, int way, const tside_field *row)
{
    const double half = 0.0254 / 32 * (1 - 1e-6); /* of a sixteenth: what is one itself stays */
    if (!e->us)
        text_add(t, "%.6g", bound);
    else if (!strcmp(row->unit, "m") && fabs(bound) >= 0.1)
        text_add(t, "%s", tape(&e->pen, bound + way * half));
    else
        add_value(e, t, bound, row);
}

/* "above 0, to 20" or "from 0" or nothing. */
static void add_bounds(explaining *e, text *t, const tside_field *row)
{
    const char *before = "";
    if (isfinite(row->low)) {
        text_add(t, "%s ", row->low_open ? "above" : "from");
        add_bound(e, t, row->low, 1, row);
        before = ", ";
    }
    if (isfinite(row->high)) {
        text_add(t, "%s%s ", before, row->high_open ? "below" : "to");
        add_bound(e, t, row->high, -1, row);
    }
}

/* The unit in which a row's numbers are told. */
static const char *unit_in(const explaining *e, const tside_field *row)
{
    if (!strcmp(row->unit, "1"))
        return row->type == TSIDE_COUNT ? "count" : "number";
    return e->us ? unit_shown(&e->pen, row->unit) : row->unit;
}

static void add_number(explaining *e, text *t, const tside_field *row)
{
    text_add(t, " [%s]: ", unit_in(e, row));
    add_bounds(e, t, row);
    if (row->required) {
        text_add(t, "; REQUIRED");
    } else if (row->optional) {
        text_add(t, "; may be absent");
    } else {
        text_add(t, "; usual ");
        add_value(e, t, row->usual, row);
        text_add(t, " (%s)", row->basis);
    }
    if (row->usual_low < row->usual_high) {
        text_add(t, "; ordinary from ");
        add_value(e, t, row->usual_low, row);
        text_add(t, " to ");
        add_value(e, t, row->usual_high, row);
    }
    if (row->tolerance > 0) {
        text_add(t, "; measured to within ");
        add_value(e, t, row->tolerance, row);
    }
}

/* Its letter in the forms, and how closely it should be measured. */
static void add_question(explaining *e, text *t)
{
    const question *asked = question_of(text_of(&e->path));
    char letter[4];
    if (!asked)
        return;
    text_add(t, "; question %s", question_letter(asked, letter));
    if (asked->sixteenths)
        text_add(t, ", to be measured to %s", tape(&e->pen, asked->sixteenths * 0.0254 / 16));
}

static void add_choices(text *t, const tside_field *row)
{
    text_add(t, ": ");
    for (int k = 0; k < row->choice_count; k++)
        text_add(t, "%s%s", k ? ", " : "one of ", row->choices[k]);
    text_add(t, "; usual %s", choice_text(row, (int)row->usual));
}

static void explain_table(explaining *e, tside_kind kind);

static void explain(explaining *e, tside_kind kind, const tside_field *row)
{
    text words = {NULL, 0, 0};
    text_add(&words, "%s", text_of(&e->path));
    switch (row->type) {
    case TSIDE_NUMBER:
    case TSIDE_COUNT: add_number(e, &words, row); break;
    case TSIDE_CHOICE: add_choices(&words, row); break;
    case TSIDE_GROUP: text_add(&words, ": a group"); break;
    case TSIDE_LIST: text_add(&words, ": a list of up to %d", row->capacity); break;
    }
    add_question(e, &words);
    if (row->applies_to) {
        text_add(&words, "; ");
        add_condition(&words, kind, row);
    }
    text_wrap(e->out, "", text_of(&words));
    text_wrap(e->out, "    ", row->meaning);
    text_free(&words);
    if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
        text_add(&e->path, "%s", row->type == TSIDE_LIST ? "[]" : "");
        explain_table(e, row->kind);
    }
}

static void explain_table(explaining *e, tside_kind kind)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const size_t mark = e->path.length;
        text_add(&e->path, "%s%s", mark ? "." : "", row[i].name);
        explain(e, kind, row + i);
        text_cut(&e->path, mark);
    }
}

void print_fields(text *out, int us)
{
    explaining e = {.out = out, .us = us, .pen = {.us = us}};
    text_say(out, "",
             "A JSON number is in %s; a text brings its own unit, such as \"5 ft 3 1/2 in\" or \"38 mm\"; diameter and"
             " wall of a tube may also be a trade name, such as \"fence 1-3/8 in\", \"nps 1-1/4\" or \"bwg 14\".",
             us ? "SI, whatever unit stands in brackets here" : "the unit in brackets");
    text_wrap(
        out, "",
        "Beside these a side may have the texts name, note, drive_at: which end has the drive, and mark: one or two "
        "letters that begin the marks of its pieces; its drive a name and a note; each keep-out a name; and an object "
        "tolerances,"
        " such as {\"curtain.hip\": \"1/2 in\"}, where a measurement may be off by other than it is measured to "
        "within. Questions are those of --blank, lettered as one walks: from the drive's end along the side to "
        "the free end.");
    text_add(out, "\n");
    explain_table(&e, TSIDE_KIND_SIDE);
    text_add(out, "\n");
    text_wrap(out, "", "And an object fittings: what an order must know beside the side, for tunnelside-order.");
    text_add(out, "\n");
    text_add(&e.path, "%s", FITTINGS);
    explain_table(&e, TSIDE_KIND_FITTINGS);
    text_free(&e.path);
}

/* --- a file to fill in --- */

/* Whether the row is a required field, or holds one, as the usual choices stand. */
static int is_needed(const tside_field *row, const void *structure)
{
    int count;
    const tside_field *inner;
    const char *inside = CONST_MEMBER(structure, row->offset, char);
    if (!tside_field_applies(row, structure) || row->type == TSIDE_LIST)
        return 0;
    if (row->type != TSIDE_GROUP)
        return row->required;
    inner = tside_fields(row->kind, &count);
    for (int i = 0; i < count; i++)
        if (is_needed(inner + i, inside))
            return 1;
    return 0;
}

static void blank_table(text *out, tside_kind kind, const void *structure, int depth);

static void blank_row(text *out, const tside_field *row, const void *structure, int depth, int first)
{
    text_add(out, "%s\n%*s\"%s\": ", first ? "" : ",", 2 * depth, "", row->name);
    if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
        text_add(out, "%s", row->type == TSIDE_LIST ? "[" : "");
        blank_table(out, row->kind, CONST_MEMBER(structure, row->offset, char), depth);
        text_add(out, "%s", row->type == TSIDE_LIST ? "]" : "");
    } else {
        text_add(out, "\"\"");
    }
}

/* Two rows that share a name are one key. */
static int is_first_of_name(const tside_field *row, int i)
{
    for (int k = 0; k < i; k++)
        if (!strcmp(row[k].name, row[i].name))
            return 0;
    return 1;
}

/* The texts with which what is filled in begins; returns 1 where there are none. */
static int blank_texts(text *out, tside_kind kind, int depth)
{
    const char *const *name = texts_beside(kind);
    for (int i = 0; name[i]; i++)
        text_add(out, "%s\n%*s\"%s\": \"\"", i ? "," : "", 2 * depth + 2, "", name[i]);
    return !*name;
}

/* Its texts, then what is needed, then the rest; one element of a list. */
static void blank_table(text *out, tside_kind kind, const void *structure, int depth)
{
    int count, first;
    const tside_field *row = tside_fields(kind, &count);
    text_add(out, "{");
    first = blank_texts(out, kind, depth);
    for (int needed = 1; needed >= 0; needed--)
        for (int i = 0; i < count; i++)
            if (is_needed(row + i, structure) == needed && is_first_of_name(row, i)) {
                blank_row(out, row + i, structure, depth + 1, first);
                first = 0;
            }
    if (!depth) {
        tside_fittings usual;
        tside_usual(TSIDE_KIND_FITTINGS, &usual);
        text_add(out, ",\n  \"%s\": ", FITTINGS);
        blank_table(out, TSIDE_KIND_FITTINGS, &usual, 1);
    }
    text_add(out, "\n%*s}", 2 * depth, "");
}

/* --- the same, short: what is required and likely, in the order of the walk --- */

/* Whether a path lies in a group, which is named with its closing point, or "" for the whole side. */
static int is_inside(const char *path, const char *group)
{
    return !strncmp(path, group, strlen(group));
}

/* How many bytes of a path, which lies in the group, name the group's member. */
static size_t member_length(const char *path, const char *group)
{
    return strcspn(path + strlen(group), ".");
}

/* Whether an earlier question of the group has its member already. */
static int is_asked_before(int i, const char *group)
{
    const char *path = question_at(i)->path;
    const size_t length = strlen(group) + member_length(path, group) + 1;
    for (int k = 0; k < i; k++)
        if (question_at(k)->is_usual && !strncmp(question_at(k)->path, path, length))
            return 1;
    return 0;
}

/* Whether all that is asked of a group are its own members: it then stands on one line. */
static int is_flat(const char *group)
{
    const question *one;
    for (int i = 0; (one = question_at(i)) != NULL; i++)
        if (one->is_usual && is_inside(one->path, group) && strchr(one->path + strlen(group), '.'))
            return 0;
    return 1;
}

static void ask_group(text *out, const char *group, int depth);

static void ask_member(text *out, const char *path, const char *group, int depth)
{
    const size_t length = member_length(path, group), whole = strlen(group) + length;
    tside_place place;
    text inner = {NULL, 0, 0};
    text_add(out, "\"%.*s\": ", (int)length, path + strlen(group));
    if (path[whole]) {
        text_add_bytes(&inner, path, whole + 1);
        ask_group(out, text_of(&inner), depth);
    } else {
        text_add(out, "%s",
                 tside_field_find(TSIDE_KIND_SIDE, path, &place, NULL) == TSIDE_OK && place.field->type == TSIDE_LIST
                     ? "[]"
                     : "\"\"");
    }
    text_free(&inner);
}

static void ask_group(text *out, const char *group, int depth)
{
    const int flat = depth > 1 && is_flat(group);
    const question *one;
    int first = depth > 0;
    text_add(out, "{");
    if (!depth)
        blank_texts(out, TSIDE_KIND_SIDE, 0);
    for (int i = 0; (one = question_at(i)) != NULL; i++) {
        if (!one->is_usual || !is_inside(one->path, group) || is_asked_before(i, group))
            continue;
        text_add(out, "%s", first ? "" : flat ? ", " : ",");
        if (!flat)
            text_add(out, "\n%*s", 2 * depth + 2, "");
        ask_member(out, one->path, group, depth + 1);
        first = 0;
    }
    if (!flat)
        text_add(out, "\n%*s", 2 * depth, "");
    text_add(out, "}");
}

void print_blank(text *out)
{
    ask_group(out, "", 0);
    text_add(out, "\n");
}

void print_whole_blank(text *out)
{
    tside_side usual;
    tside_usual(TSIDE_KIND_SIDE, &usual);
    blank_table(out, TSIDE_KIND_SIDE, &usual, 0);
    text_add(out, "\n");
}
