/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "mark.h"
#include "names.h"
#include "read.h"
#include "units.h"
#include "writer.h"

/* --- structures, by their tables --- */

/* Units that a table leaves open, because they hang on another field. */
static const char *unit_of(tside_kind kind, const tside_field *row, const void *structure)
{
    if (*row->unit)
        return row->unit;
    if (kind == TSIDE_KIND_FINDING)
        return tside_finding_unit((int)((const tside_finding *)structure)->code);
    if (kind == TSIDE_KIND_STRENGTH_LINE)
        return measure_unit((int)((const tside_strength_line *)structure)->measure);
    if (kind == TSIDE_KIND_DRIVE_CHOICE && ((const tside_drive_choice *)structure)->fit == TSIDE_DRIVE_FAILS)
        return tside_finding_unit((int)((const tside_drive_choice *)structure)->finding);
    return kind == TSIDE_KIND_DRIVE_CHOICE ? "N m" : "1"; /* a larger drive's rated torque */
}

/* What the file calls a keep-out of an end, as the sheet does. */
static void put_keep_out(writer *w, const char *key, const planned *side, int end, int index)
{
    text words = {NULL, 0, 0};
    add_keep_out(&words, side, end, index);
    put_string(w, key, text_of(&words));
    text_free(&words);
}

static void put_finding_remarks(writer *w, const planned *side, const tside_finding *finding)
{
    char sentence[256];
    put_flag(w, "stops", tside_finding_stops((int)finding->code));
    tside_finding_text(finding, sentence, sizeof sentence);
    put_string(w, "sentence", sentence);
    if (is_of_keep_out(finding->code))
        put_keep_out(w, "keep_out", side, (int)finding->end, finding->index);
}

/* What is said of element i of a structure's list beside its fields. */
static void put_remarks(writer *w, const planned *side, tside_kind kind, const void *structure, const void *element,
                        int i)
{
    if (kind == TSIDE_KIND_FINDING)
        put_finding_remarks(w, side, element);
    if (kind == TSIDE_KIND_STRENGTH_LINE)
        put_string(w, "text", tside_strength_text((int)((const tside_strength_line *)element)->code));
    if (kind == TSIDE_KIND_KEEP_OFF)
        put_keep_out(w, "name", side, structure == (const void *)&side->plan.free_end, i);
}

static void put_table(writer *w, const planned *side, tside_kind kind, const void *structure);

static void put_list(writer *w, const planned *side, const tside_field *row, const void *structure)
{
    const int count = *CONST_MEMBER(structure, row->count_offset, int);
    open_bracket(w, row->name, '[');
    for (int i = 0; i < count; i++) {
        const void *element = CONST_MEMBER(structure, row->offset + (size_t)i * row->stride, char);
        open_bracket(w, NULL, '{');
        put_table(w, side, row->kind, element);
        put_remarks(w, side, row->kind, structure, element, i);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_row(writer *w, const planned *side, tside_kind kind, const tside_field *row, const void *structure)
{
    const void *member = CONST_MEMBER(structure, row->offset, char);
    switch (row->type) {
    case TSIDE_NUMBER:
        if (!row->optional || *CONST_MEMBER(structure, row->given_offset, int))
            put_number(w, row->name, *(const double *)member, unit_of(kind, row, structure));
        break;
    case TSIDE_COUNT: put_whole(w, row->name, *(const int *)member); break;
    case TSIDE_CHOICE: put_string(w, row->name, choice_text(row, *(const int *)member)); break;
    case TSIDE_GROUP:
        open_bracket(w, row->name, '{');
        put_table(w, side, row->kind, member);
        shut_bracket(w, '}');
        break;
    case TSIDE_LIST: put_list(w, side, row, structure); break;
    }
}

static void put_table(writer *w, const planned *side, tside_kind kind, const void *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++)
        if (tside_field_applies(row + i, structure))
            put_row(w, side, kind, row + i, structure);
}

void put_structure(writer *w, tside_kind kind, const void *structure)
{
    put_table(w, NULL, kind, structure);
}

void put_plan(writer *w, const planned *side)
{
    put_table(w, side, TSIDE_KIND_PLAN, &side->plan);
}

void put_refused(writer *w, const text *refusals)
{
    open_bracket(w, "refused", '[');
    for (const char *line = text_of(refusals), *end; *line; line = end + 1) {
        text one = {NULL, 0, 0};
        end = strchr(line, '\n');
        text_add_bytes(&one, line, (size_t)(end - line));
        put_string(w, NULL, text_of(&one));
        text_free(&one);
    }
    shut_bracket(w, ']');
}

void add_cell(text *out, const char *words, int first)
{
    const char *const mark = *words && strchr("=+-@", *words) && words[1] ? "'" : "";
    text_add(out, "%s", first ? "" : ",");
    if (!strpbrk(words, ",\"\r\n")) {
        text_add(out, "%s%s", mark, words);
        return;
    }
    text_add(out, "\"%s", mark);
    for (const char *quote; (quote = strchr(words, '"')) != NULL; words = quote + 1) {
        text_add_bytes(out, words, (size_t)(quote - words));
        text_add(out, "\"\"");
    }
    text_add(out, "%s\"", words);
}

void add_refusals(text *out, const text *refusals)
{
    text one = {NULL, 0, 0};
    for (const char *line = text_of(refusals), *end; *line; line = end + 1) {
        end = strchr(line, '\n');
        text_add_bytes(&one, line, (size_t)(end - line));
        text_add(&one, "%s", end[1] ? "; " : "");
    }
    add_cell(out, text_of(&one), 0);
    text_free(&one);
}

void put_place(writer *w, const planned *side)
{
    char mark[TSIDE_MARK_SIZE];
    put_string(w, "file", side->file);
    put_string(w, "within", side->wanted.within);
    put_string(w, "job", side->wanted.job);
    put_string(w, "name", side->wanted.name);
    put_string(w, "note", side->wanted.note);
    put_string(w, "drive_at", side->wanted.drive_at);
    put_string(w, MARK, side_mark(side, mark));
}
