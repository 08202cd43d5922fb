/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "memory.h"
#include "names.h"
#include "tolerances.h"
#include "value.h"
#include "walk.h"

/* The number of a side that has this path, among those that apply. */
typedef struct wanted_path {
    const char *path;
    const tside_field *row;
    const char *member;
} wanted_path;

static void match(void *context, const char *path, const tside_field *row, const void *member)
{
    wanted_path *w = context;
    if (!strcmp(path, w->path)) {
        w->row = row;
        w->member = member;
    }
}

/* Goes down the path to the name that no table has. */
static void add_unknown(text *why, const char *path)
{
    tside_kind kind = TSIDE_KIND_SIDE;
    for (;;) {
        const size_t length = strcspn(path, ".[");
        text name = {NULL, 0, 0};
        const tside_field *row;
        text_add_bytes(&name, path, length);
        row = row_named(kind, text_of(&name), NULL);
        if (!row || (row->type != TSIDE_GROUP && row->type != TSIDE_LIST)) {
            add_meant(why, kind, row ? path : text_of(&name), 0);
            text_free(&name);
            return;
        }
        text_free(&name);
        kind = row->kind;
        path += strcspn(path, ".");
        path += *path == '.';
    }
}

/* Why no number of the side that is in use has this path. */
static void add_why_not(text *why, const char *path)
{
    tside_place place;
    if (tside_field_find(TSIDE_KIND_SIDE, path, &place, NULL) != TSIDE_OK)
        add_unknown(why, path);
    else if (place.field->type == TSIDE_GROUP || place.field->type == TSIDE_LIST)
        text_add(why, "holds fields of its own: wanted the path of one number, such as \"curtain.hip\"");
    else if (place.field->type != TSIDE_NUMBER)
        text_add(why, "is counted or chosen, not measured");
    else if (strchr(path, '['))
        text_add(why, "moves nothing that is asked: what lists hold is not measured");
    else
        text_add(why, "not in use, as the choices of this side stand");
}

static int find_number(const request *wanted, const char *path, wanted_path *found, text *why)
{
    *found = (wanted_path){path, NULL, NULL};
    if (!strchr(path, '['))
        walk(TSIDE_KIND_SIDE, &wanted->side, match, found);
    if (!found->row || found->row->type != TSIDE_NUMBER) {
        add_why_not(why, path);
        return 0;
    }
    if (found->row->optional && !*CONST_MEMBER(found->member - found->row->offset, found->row->given_offset, int)) {
        text_add(why, "the side does not give it");
        return 0;
    }
    return 1;
}

static void keep(request *wanted, const wanted_path *found, double value)
{
    wanted->stated = grown(wanted->stated, wanted->stated_count, &wanted->stated_room, sizeof *wanted->stated);
    wanted->stated[wanted->stated_count++] = (stated){(size_t)(found->member - (const char *)&wanted->side), value};
}

/* A tolerance is no trade size: it is read as any quantity of its unit. */
static void read_one(document *doc, const char *path, const json_t *value, request *wanted, complaints *refusals)
{
    wanted_path found;
    double number = 0;
    text why = {NULL, 0, 0}, full = {NULL, 0, 0};
    if (find_number(wanted, path, &found, &why) &&
        read_number(TSIDE_KIND_SIDE, found.row, value, wanted->among_feet, &number, &why)) {
        if (isfinite(number) && number >= 0)
            keep(wanted, &found, number);
        else
            text_add(&why, "%g%s%s; a tolerance is 0 or above, and is off either way", number,
                     strcmp(found.row->unit, "1") ? " " : "", strcmp(found.row->unit, "1") ? found.row->unit : "");
    }
    text_add(&full, "%s.%s", TOLERANCES, path);
    if (why.length)
        complain(doc, refusals, wanted->within, text_of(&full), "%s", text_of(&why));
    text_free(&why);
    text_free(&full);
}

enum { MOST_TOLERANCES = 1000 };

void read_tolerances(document *doc, const json_t *object, request *wanted, complaints *refusals)
{
    json_t *all = json_object_get(object, TOLERANCES), *value;
    const char *path;
    if (is_blank(all))
        return;
    if (json_object_size(all) > MOST_TOLERANCES) {
        complain(doc, refusals, wanted->within, TOLERANCES, "%zu are more than a side has numbers",
                 json_object_size(all));
        return;
    }
    if (!json_is_object(all))
        complain(doc, refusals, wanted->within, TOLERANCES,
                 "wanted an object of paths and tolerances, such as {\"curtain.hip\": \"1/2 in\"}");
    json_object_foreach(all, path, value) if (!is_blank(value)) read_one(doc, path, value, wanted, refusals);
}

double tolerance_of(const request *wanted, const tside_field *row, const void *member)
{
    const size_t offset = (size_t)((const char *)member - (const char *)&wanted->side);
    for (size_t i = 0; i < wanted->stated_count; i++)
        if (wanted->stated[i].offset == offset)
            return wanted->stated[i].tolerance;
    return row->tolerance;
}
