/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "feet.h"
#include "memory.h"
#include "message.h"
#include "names.h"
#include "read.h"
#include "sentence.h"
#include "tolerances.h"
#include "units.h"
#include "value.h"

#define WANTED_TEXT "wanted a text"

typedef struct reader {
    document *doc;
    complaints *refusals;
    request *wanted;
    text path; /* of what is being read, within the side */
} reader;

/* Goes down to a member; text_cut(&r->path, mark) comes back. */
static size_t enter(reader *r, const char *name)
{
    const size_t mark = r->path.length;
    text_add(&r->path, "%s%s", mark ? "." : "", name);
    return mark;
}

static void refuse(reader *r, const char *why)
{
    complain(r->doc, r->refusals, r->wanted->within, text_of(&r->path), "%s", why);
}

static size_t offset_in_side(const request *wanted, const void *member)
{
    return (size_t)((const char *)member - (const char *)&wanted->side);
}

/* What the fittings have been given is not told: no sheet says what was assumed of them. */
static void mark_given(reader *r, const void *member)
{
    const size_t offset = offset_in_side(r->wanted, member);
    if (offset < sizeof r->wanted->given)
        r->wanted->given[offset] = 1;
}

int file_gives(const request *wanted, const void *member)
{
    return wanted->given[offset_in_side(wanted, member)];
}

int is_blank(const json_t *value)
{
    const char *key;
    json_t *member;
    if (json_is_string(value))
        return !*json_string_value(value);
    json_object_foreach((json_t *)value, key, member) if (!is_blank(member)) return 0;
    for (size_t i = 0; i < json_array_size(value); i++)
        if (!is_blank(json_array_get(value, i)))
            return 0;
    return !value || json_is_object(value) || json_is_array(value);
}

static void *element(const tside_field *row, void *structure, size_t i)
{
    return MEMBER(structure, row->offset + i * row->stride, char);
}

/*
 * Choices first: which fields apply, and some usual values, and choices, hang on them. What is no such choice is
 * refused in the second round.
 */
static void read_choices(tside_kind kind, void *structure, const json_t *object)
{
    text ignored = {NULL, 0, 0};
    int count, choice;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const json_t *value = json_object_get(object, row[i].name);
        if (row[i].type == TSIDE_CHOICE && !is_blank(value) && read_choice(row + i, value, &choice, &ignored))
            *MEMBER(structure, row[i].offset, int) = choice;
        if (row[i].type == TSIDE_GROUP && json_is_object(value))
            read_choices(row[i].kind, MEMBER(structure, row[i].offset, char), value);
        if (row[i].type == TSIDE_LIST)
            for (size_t k = 0; k < json_array_size(value) && k < (size_t)row[i].capacity; k++) {
                read_choices(row[i].kind, element(row + i, structure, k), json_array_get(value, k));
                tside_usual_by_choice(row[i].kind, element(row + i, structure, k));
            }
    }
    text_free(&ignored);
}

static void read_group(reader *r, tside_kind kind, void *structure, const json_t *object);

static void read_list(reader *r, const tside_field *row, void *structure, const json_t *list)
{
    const size_t size = json_array_size(list);
    if (size > (size_t)row->capacity) {
        complain(r->doc, r->refusals, r->wanted->within, text_of(&r->path), "%zu are too many: the most is %d", size,
                 row->capacity);
        return;
    }
    if (is_blank(list))
        return;
    if (!json_is_array(list)) {
        refuse(r, "wanted a list");
        return;
    }
    *MEMBER(structure, row->count_offset, int) = (int)size;
    for (size_t i = 0; i < size; i++) {
        const size_t mark = r->path.length;
        const json_t *value = json_array_get(list, i);
        text_add(&r->path, "[%zu]", i);
        if (json_is_object(value))
            read_group(r, row->kind, element(row, structure, i), value);
        else
            refuse(r, "wanted an object");
        text_cut(&r->path, mark);
    }
}

static void read_leaf(reader *r, tside_kind kind, const tside_field *row, void *structure, const json_t *value)
{
    text why = {NULL, 0, 0};
    void *member = MEMBER(structure, row->offset, char);
    int good = row->type == TSIDE_NUMBER  ? read_number(kind, row, value, r->wanted->among_feet, member, &why)
               : row->type == TSIDE_COUNT ? read_count(value, member, &why)
                                          : read_choice(row, value, member, &why);
    if (!good)
        refuse(r, text_of(&why));
    else if (row->optional)
        *MEMBER(structure, row->given_offset, int) = 1;
    mark_given(r, member);
    text_free(&why);
}

/* In the units that the file speaks. */
static void refuse_missing(reader *r, const tside_field *row)
{
    const pen us = {.us = 1};
    const char *unit = r->wanted->among_feet ? unit_shown(&us, row->unit) : row->unit;
    const int is_number = !strcmp(row->unit, "1");
    complain(r->doc, r->refusals, r->wanted->within, text_of(&r->path), "missing: %s%s%s%s", row->meaning,
             is_number ? "" : " (", is_number ? "" : unit, is_number ? "" : ")");
}

static void refuse_unused(reader *r, tside_kind kind, const tside_field *row, const void *structure)
{
    text why = {NULL, 0, 0};
    const tside_field *choice = row_named(kind, row->applies_to, NULL);
    add_condition(&why, kind, row);
    text_add(&why, "; it is %s", choice_text(choice, *CONST_MEMBER(structure, choice->offset, int)));
    refuse(r, text_of(&why));
    text_free(&why);
}

/* Objects of a group that is not there are NULL: what it lacks is then said of each of its fields. */
static void read_row(reader *r, tside_kind kind, const tside_field *row, void *structure, const json_t *value)
{
    const size_t mark = enter(r, row->name);
    if (!tside_field_applies(row, structure)) {
        if (!is_blank(value))
            refuse_unused(r, kind, row, structure);
    } else if (row->type == TSIDE_GROUP) {
        if (is_blank(value) || json_is_object(value))
            read_group(r, row->kind, MEMBER(structure, row->offset, char), value);
        else
            refuse(r, "wanted an object");
    } else if (row->type == TSIDE_LIST) {
        read_list(r, row, structure, value);
    } else if (!is_blank(value)) {
        read_leaf(r, kind, row, structure, value);
    } else if (row->required) {
        refuse_missing(r, row);
    }
    text_cut(&r->path, mark);
}

static int is_text_beside(tside_kind kind, const char *key)
{
    for (const char *const *name = texts_beside(kind); *name; name++)
        if (!strcmp(*name, key))
            return 1;
    return 0;
}

/* An object that a side may have beside the library's fields. */
static int is_object_beside(tside_kind kind, const char *key)
{
    return kind == TSIDE_KIND_SIDE && (!strcmp(key, TOLERANCES) || !strcmp(key, FITTINGS));
}

/* What an object has beside the library's fields: texts, which are kept elsewhere, and what nothing reads. */
static void check_beside(reader *r, tside_kind kind, const char *key, const json_t *value)
{
    const int is_text = is_text_beside(kind, key);
    text why = {NULL, 0, 0};
    size_t mark;
    if ((is_text && json_is_string(value)) || row_named(kind, key, NULL) || is_object_beside(kind, key) ||
        is_one_too_many(r->doc, r->refusals))
        return;
    mark = enter(r, key);
    if (is_text)
        text_add(&why, "%s", WANTED_TEXT);
    else
        add_meant(&why, kind, key, 1);
    refuse(r, text_of(&why));
    text_cut(&r->path, mark);
    text_free(&why);
}

static void read_group(reader *r, tside_kind kind, void *structure, const json_t *object)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const char *key;
    json_t *value;
    json_object_foreach((json_t *)object, key, value) check_beside(r, kind, key, value);
    for (int i = 0; i < count; i++)
        if (row_named(kind, row[i].name, structure) == row + i)
            read_row(r, kind, row + i, structure, json_object_get(object, row[i].name));
}

/* A text of what was parsed; "" where there is none. */
static char *text_in(const json_t *object, const char *key)
{
    const json_t *value = json_object_get(object, key);
    return printable(json_is_string(value) ? json_string_value(value) : "");
}

char *read_text(document *doc, const json_t *object, const char *key, complaints *refusals)
{
    const json_t *value = json_object_get(object, key);
    if (value && !json_is_string(value))
        complain(doc, refusals, "", key, "%s", WANTED_TEXT);
    return text_in(object, key);
}

/* Of both ends' keep-outs, as many as there may be. */
static void read_keep_out_names(const json_t *side, request *wanted)
{
    for (int end = 0; end < 2; end++) {
        const json_t *list = json_object_get(json_object_get(side, end_group(end)), "keep_outs");
        for (size_t i = 0; i < json_array_size(list) && i < TSIDE_KEEP_OUTS; i++)
            wanted->keep_outs[end][i] = text_in(json_array_get(list, i), "name");
    }
}

/* The place that the letters of a mark stand for; 0 where there are none. */
static int read_place(document *doc, const json_t *object, const char *within, complaints *refusals)
{
    char *letters = text_in(object, MARK);
    tside_fault fault;
    int place = 0;
    if (*letters && tside_mark_place(letters, &place, &fault) != TSIDE_OK)
        complain(doc, refusals, within, MARK, "\"%s\": %s", letters, fault.reason);
    free(letters);
    return place;
}

/* What is usual, with the hardware of the file's system. */
static void fill_usual(const request *wanted, tside_kind kind, void *structure)
{
    tside_usual(kind, structure);
    tside_usual_in(kind, wanted->in_feet ? TSIDE_HARDWARE_INCH : TSIDE_HARDWARE_METRIC, structure);
}

/* What the take-off must know beside the side, in an object of its own. */
static void read_fittings(reader *r, const json_t *object)
{
    const json_t *value = json_object_get(object, FITTINGS);
    const size_t mark = enter(r, FITTINGS);
    fill_usual(r->wanted, TSIDE_KIND_FITTINGS, &r->wanted->fittings);
    if (json_is_object(value)) {
        read_choices(TSIDE_KIND_FITTINGS, &r->wanted->fittings, value);
        tside_usual_by_choice(TSIDE_KIND_FITTINGS, &r->wanted->fittings);
        read_group(r, TSIDE_KIND_FITTINGS, &r->wanted->fittings, value);
    } else if (!is_blank(value)) {
        refuse(r, "wanted an object");
    }
    text_cut(&r->path, mark);
}

static int hip_is_in_feet(const json_t *side)
{
    const char *hip = json_string_value(json_object_get(json_object_get(side, "curtain"), "hip"));
    return hip && is_in_feet(hip);
}

/* Whether any text in it is so. */
static int speaks(const json_t *value, int (*is_so)(const char *words))
{
    const char *key;
    json_t *member;
    if (json_is_string(value))
        return is_so(json_string_value(value));
    json_object_foreach((json_t *)value, key, member) if (speaks(member, is_so)) return 1;
    for (size_t i = 0; i < json_array_size(value); i++)
        if (speaks(json_array_get(value, i), is_so))
            return 1;
    return 0;
}

int speaks_feet(const json_t *value)
{
    return speaks(value, is_in_feet);
}

int speaks_pounds(const json_t *value)
{
    return speaks(value, is_in_pounds);
}

void read_side(document *doc, const json_t *object, request *wanted, complaints *refusals)
{
    reader r = {doc, refusals, wanted, {NULL, 0, 0}};
    if (!json_is_object(object)) {
        complain(doc, refusals, wanted->within, "", "wanted an object that describes a side");
        return;
    }
    wanted->name = text_in(object, "name");
    wanted->note = text_in(object, "note");
    wanted->drive_at = text_in(object, "drive_at");
    read_keep_out_names(object, wanted);
    wanted->place = read_place(doc, object, wanted->within, refusals);
    wanted->in_feet = hip_is_in_feet(object);
    wanted->among_feet = speaks_feet(
        json_is_array(doc->root) ? object : doc->root); /* the sides of a list are of different houses */
    fill_usual(wanted, TSIDE_KIND_SIDE, &wanted->side);
    read_choices(TSIDE_KIND_SIDE, &wanted->side, object);
    tside_usual_by_choice(TSIDE_KIND_SIDE, &wanted->side);
    read_group(&r, TSIDE_KIND_SIDE, &wanted->side, object);
    read_fittings(&r, object);
    read_tolerances(doc, object, wanted, refusals);
    text_free(&r.path);
}

char *read_drive(document *doc, const json_t *object, const char *within, tside_drive *drive, complaints *refusals)
{
    request *wanted = take_memory(sizeof *wanted); /* a side of which only the drive is read */
    reader r = {doc, refusals, wanted, {NULL, 0, 0}};
    memset(wanted, 0, sizeof *wanted);
    snprintf(wanted->within, sizeof wanted->within, "%s", within);
    wanted->among_feet = speaks_feet(doc->root) || speaks_pounds(doc->root);
    tside_usual(TSIDE_KIND_DRIVE, drive);
    if (json_is_object(object)) {
        read_choices(TSIDE_KIND_DRIVE, drive, object);
        tside_usual_by_choice(TSIDE_KIND_DRIVE, drive);
        read_group(&r, TSIDE_KIND_DRIVE, drive, object);
    } else {
        complain(doc, refusals, within, "", "wanted an object that describes a drive");
    }
    text_free(&r.path);
    free(wanted);
    return text_in(object, "name");
}

void refuse_by_library(document *doc, complaints *refusals, const char *within, tside_fault *fault, int us,
                       const char *more)
{
    char field[TSIDE_PATH_SIZE];
    text words = {NULL, 0, 0};
    pen p = {.us = us};
    memcpy(field, fault->field, sizeof field);
    fault->field[0] = '\0';
    add_refusal(&words, &p, fault);
    text_add(&words, "%s", more);
    complain(doc, refusals, within, field, "%s", text_of(&words));
    text_free(&words);
}

void request_free(request *wanted)
{
    free(wanted->job);
    free(wanted->job_note);
    free(wanted->name);
    free(wanted->note);
    free(wanted->drive_at);
    for (int i = 0; i < TSIDE_KEEP_OUTS; i++) {
        free(wanted->keep_outs[TSIDE_DRIVE_END][i]);
        free(wanted->keep_outs[TSIDE_FREE_END][i]);
    }
    free(wanted->shares);
    free(wanted->stated);
}
