/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "json.h"
#include "matters.h"
#include "names.h"
#include "units.h"
#include "walk.h"

void add_json_number(text *out, double value)
{
    char digits[40];
    for (int precision = 15; precision <= 17; precision++) {
        snprintf(digits, sizeof digits, "%.*g", precision, value);
        if (strtod(digits, NULL) == value)
            break;
    }
    text_add(out, "%s", digits);
}

void add_json_string(text *out, const char *words)
{
    json_t *string = json_string(words);
    char *quoted;
    if (!string) {
        char *copy = copy_of(words);
        for (char *c = copy; *c; c++)
            if ((unsigned char)*c >= 0x80)
                *c = '?';
        string = json_string(copy);
        free(copy);
    }
    quoted = json_dumps(string, JSON_ENCODE_ANY);
    text_add(out, "%s", quoted ? quoted : "\"\"");
    free(quoted);
    json_decref(string);
}

/* --- a writer: members of objects and lists, one a line --- */

typedef struct writer {
    text *out;
    int depth, empty; /* empty: nothing in the innermost object or list yet */
} writer;

/* Begins a member; key is NULL in a list. */
static void begin(writer *w, const char *key)
{
    text_add(w->out, "%s\n%*s", w->empty ? "" : ",", 2 * w->depth, "");
    if (key)
        text_add(w->out, "\"%s\": ", key);
    w->empty = 0;
}

static void open(writer *w, const char *key, char bracket)
{
    begin(w, key);
    text_add(w->out, "%c", bracket);
    w->depth++;
    w->empty = 1;
}

static void shut(writer *w, char bracket)
{
    w->depth--;
    if (!w->empty)
        text_add(w->out, "\n%*s", 2 * w->depth, "");
    text_add(w->out, "%c", bracket);
    w->empty = 0;
}

static void put_string(writer *w, const char *key, const char *words)
{
    begin(w, key);
    add_json_string(w->out, words ? words : "");
}

static void put_number(writer *w, const char *key, double value, const char *unit)
{
    begin(w, key);
    text_add(w->out, "{\"value\": ");
    add_json_number(w->out, value);
    text_add(w->out, ", \"unit\": \"%s\"}", unit);
}

static void put_whole(writer *w, const char *key, int value)
{
    begin(w, key);
    text_add(w->out, "%d", value);
}

/* --- structures, by their tables --- */

static void put_structure(writer *w, tside_kind kind, const void *structure);

/* Units that a table leaves open, because they hang on another field. */
static const char *unit_of(tside_kind kind, const tside_field *row, const void *structure)
{
    if (*row->unit)
        return row->unit;
    if (kind == TSIDE_KIND_FINDING)
        return finding_unit((int)((const tside_finding *)structure)->code);
    if (kind == TSIDE_KIND_STRENGTH_LINE)
        return measure_unit((int)((const tside_strength_line *)structure)->measure);
    return "1";
}

/* What is said of an element beside its fields. */
static void put_remarks(writer *w, tside_kind kind, const void *structure)
{
    char sentence[256];
    if (kind == TSIDE_KIND_FINDING) {
        const tside_finding *finding = structure;
        begin(w, "stops");
        text_add(w->out, "%s", tside_finding_stops((int)finding->code) ? "true" : "false");
        tside_finding_text(finding, sentence, sizeof sentence);
        put_string(w, "sentence", sentence);
    }
    if (kind == TSIDE_KIND_STRENGTH_LINE)
        put_string(w, "text", tside_strength_text((int)((const tside_strength_line *)structure)->code));
}

static void put_list(writer *w, const tside_field *row, const void *structure)
{
    const int count = *CONST_MEMBER(structure, row->count_offset, int);
    open(w, row->name, '[');
    for (int i = 0; i < count; i++) {
        const void *element = CONST_MEMBER(structure, row->offset + (size_t)i * row->stride, char);
        open(w, NULL, '{');
        put_structure(w, row->kind, element);
        put_remarks(w, row->kind, element);
        shut(w, '}');
    }
    shut(w, ']');
}

static void put_row(writer *w, tside_kind kind, const tside_field *row, const void *structure)
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
        open(w, row->name, '{');
        put_structure(w, row->kind, member);
        shut(w, '}');
        break;
    case TSIDE_LIST: put_list(w, row, structure); break;
    }
}

static void put_structure(writer *w, tside_kind kind, const void *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++)
        if (tside_field_applies(row + i, structure))
            put_row(w, kind, row + i, structure);
}

/* --- sides --- */

typedef struct assumptions {
    writer *w;
    const planned *side;
} assumptions;

static void put_assumed(void *context, const char *path, const tside_field *row, const void *member)
{
    const assumptions *a = context;
    const size_t offset = (size_t)((const char *)member - (const char *)&a->side->wanted.side);
    if (!row->optional && !row->required && !a->side->wanted.given[offset])
        put_string(a->w, NULL, path);
}

static void put_found(writer *w, const char *key, const found *search, const char *unit)
{
    if (!search->asked)
        return;
    if (search->status != TSIDE_OK) {
        open(w, key, '{');
        put_string(w, "refused", search->why);
        shut(w, '}');
    } else if (unit) {
        put_number(w, key, search->value, unit);
    } else {
        put_whole(w, key, (int)search->value);
    }
}

static void put_answer(writer *w, matters *m, int which)
{
    const char *unit = answers[which].unit;
    const size_t count = matters_order(m, which);
    open(w, NULL, '{');
    put_string(w, "answer", answers[which].path);
    put_number(w, "value", m->values[which], unit);
    open(w, "inputs", '[');
    for (size_t i = 0; i < count; i++) {
        const measured *one = m->inputs + i;
        open(w, NULL, '{');
        put_string(w, "input", one->path);
        put_number(w, "tolerance", one->tolerance, one->row->unit);
        put_number(w, "moves", one->moves[which], unit);
        shut(w, '}');
    }
    shut(w, ']');
    put_number(w, "together_if_independent", matters_together(m, which), unit);
    shut(w, '}');
}

/* off_by has the sign of the way in which the side is refused. */
static void put_refused_when_off(writer *w, const measured *one, int way)
{
    open(w, NULL, '{');
    put_string(w, "input", one->path);
    put_number(w, "off_by", way == MORE ? one->tolerance : -one->tolerance, one->row->unit);
    put_string(w, "refused", one->refused[way]);
    shut(w, '}');
}

static void put_matters(writer *w, const planned *side)
{
    matters m;
    matters_find(&m, side);
    open(w, "refused_when_off", '[');
    for (size_t i = 0; i < m.count; i++)
        for (int way = 0; way < WAYS; way++)
            if (*m.inputs[i].refused[way])
                put_refused_when_off(w, m.inputs + i, way);
    shut(w, ']');
    open(w, "what_matters", '[');
    for (int k = 0; k < ANSWERS; k++)
        if (m.asked[k])
            put_answer(w, &m, k);
    shut(w, ']');
    matters_free(&m);
}

static void put_planned(writer *w, const planned *side)
{
    assumptions a = {w, side};
    open(w, "asked", '{');
    put_structure(w, TSIDE_KIND_SIDE, &side->wanted.side);
    shut(w, '}');
    open(w, "assumed", '[');
    walk(TSIDE_KIND_SIDE, &side->wanted.side, put_assumed, &a);
    shut(w, ']');
    open(w, "plan", '{');
    put_structure(w, TSIDE_KIND_PLAN, &side->plan);
    shut(w, '}');
    open(w, "searches", '{');
    put_found(w, "drive_end_least_rise", &side->least_rise[TSIDE_DRIVE_END], "m");
    put_found(w, "free_end_least_rise", &side->least_rise[TSIDE_FREE_END], "m");
    put_found(w, "smallest_bar", &side->smallest_bar, NULL);
    shut(w, '}');
    open(w, "turns", '[');
    for (int i = 0; i < side->turn_count; i++) {
        open(w, NULL, '{');
        put_structure(w, TSIDE_KIND_TURN, side->turns + i);
        shut(w, '}');
    }
    shut(w, ']');
}

static void put_refused(writer *w, const text *refusals)
{
    open(w, "refused", '[');
    for (const char *line = text_of(refusals), *end; *line; line = end + 1) {
        text one = {NULL, 0, 0};
        end = strchr(line, '\n');
        text_add_bytes(&one, line, (size_t)(end - line));
        put_string(w, NULL, text_of(&one));
        text_free(&one);
    }
    shut(w, ']');
}

void print_json(text *out, const work *all, int with_matters)
{
    writer w = {out, 1, 1};
    text_add(out, "{");
    put_string(&w, "program", "tunnelside-plan");
    put_string(&w, "version", tside_version());
    open(&w, "sides", '[');
    for (size_t i = 0; i < all->count; i++) {
        const planned *side = all->sides[i];
        open(&w, NULL, '{');
        put_string(&w, "file", side->file);
        put_string(&w, "within", side->wanted.within);
        put_string(&w, "job", side->wanted.job);
        put_string(&w, "name", side->wanted.name);
        put_string(&w, "note", side->wanted.note);
        put_string(&w, "drive_at", side->wanted.drive_at);
        if (is_planned(side))
            put_planned(&w, side);
        else
            put_refused(&w, &side->refusals);
        if (with_matters && is_planned(side))
            put_matters(&w, side);
        shut(&w, '}');
    }
    shut(&w, ']');
    text_add(out, "\n}\n");
}
