/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "names.h"

const char *const *texts_beside(tside_kind kind)
{
    static const char *const side[] = {"name", "note", "drive_at", MARK, NULL}, *const drive[] = {"name", "note", NULL},
                             *const keep_out[] = {"name", NULL}, *const none[] = {NULL};
    return kind == TSIDE_KIND_SIDE       ? side
           : kind == TSIDE_KIND_DRIVE    ? drive
           : kind == TSIDE_KIND_KEEP_OUT ? keep_out
                                         : none;
}

const tside_field *row_named(tside_kind kind, const char *name, const void *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count), *first = NULL;
    for (int i = 0; i < count; i++)
        if (!strcmp(row[i].name, name)) {
            if (!structure || tside_field_applies(row + i, structure))
                return row + i;
            if (!first)
                first = row + i;
        }
    return first;
}

double number_of(const tside_field *row, const void *member)
{
    return row->type == TSIDE_COUNT ? *(const int *)member : *(const double *)member;
}

enum { LONGEST_NAME = 40 };

/*
 * Letters to put in, take out or change, to make one name of another (Levenshtein 1966). Both are at most LONGEST_NAME
 * long.
 */
static size_t distance(const char *from, const char *to)
{
    size_t row[LONGEST_NAME + 1], size = strlen(to);
    for (size_t j = 0; j <= size; j++)
        row[j] = j;
    for (size_t i = 1; from[i - 1]; i++) {
        size_t corner = row[0];
        row[0] = i;
        for (size_t j = 1; j <= size; j++) {
            size_t best = corner + (from[i - 1] != to[j - 1]);
            corner = row[j];
            if (row[j] + 1 < best)
                best = row[j] + 1;
            if (row[j - 1] + 1 < best)
                best = row[j - 1] + 1;
            row[j] = best;
        }
    }
    return row[size];
}

typedef void name_visit(void *context, const char *name);

/* The names that may stand in a structure's object, each once. */
static void each_name(tside_kind kind, int beside, name_visit *visit, void *context)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++)
        if (row_named(kind, row[i].name, NULL) == row + i)
            visit(context, row[i].name);
    for (int i = 0; beside && texts_beside(kind)[i]; i++)
        visit(context, texts_beside(kind)[i]);
    if (beside && kind == TSIDE_KIND_SIDE) {
        visit(context, TOLERANCES);
        visit(context, FITTINGS);
    }
}

typedef struct nearest {
    const char *name, *best;
    size_t distance;
} nearest;

static void try_name(void *context, const char *candidate)
{
    nearest *n = context;
    const size_t d = strlen(candidate) > LONGEST_NAME ? (size_t)-1 : distance(n->name, candidate);
    if (d < n->distance) {
        n->best = candidate;
        n->distance = d;
    }
}

static void list_name(void *context, const char *name)
{
    text *list = context;
    text_add(list, "%s%s", list->length ? ", " : "", name);
}

/* The nearest name; all of them, where none is nearer than an empty one would be. */
static void add_nearest(text *t, tside_kind kind, const char *name, int beside)
{
    nearest found = {.name = name, .distance = strlen(name)};
    text all = {NULL, 0, 0};
    each_name(kind, beside, try_name, &found);
    each_name(kind, beside, list_name, &all);
    if (found.best)
        text_add(t, "; the nearest name here is \"%s\"", found.best);
    else
        text_add(t, "; it has %s", text_of(&all));
    text_free(&all);
}

/* Looks for a field of exactly this name inside the groups and lists of a table; path receives where it is. */
static int find_inside(tside_kind kind, const char *name, text *path)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const size_t mark = path->length;
        if (row[i].type != TSIDE_GROUP && row[i].type != TSIDE_LIST)
            continue;
        text_add(path, "%s%s.", row[i].name, row[i].type == TSIDE_LIST ? "[0]" : "");
        if (row_named(row[i].kind, name, NULL)) {
            text_add(path, "%s", name);
            return 1;
        }
        if (find_inside(row[i].kind, name, path))
            return 1;
        text_cut(path, mark);
    }
    return 0;
}

void add_meant(text *t, tside_kind kind, const char *name, int beside)
{
    text inside = {NULL, 0, 0};
    text_add(t, "no such field");
    if (strlen(name) > LONGEST_NAME)
        return;
    if (beside && kind == TSIDE_KIND_SIDE && row_named(TSIDE_KIND_FITTINGS, name, NULL))
        text_add(t, "; did you mean \"%s.%s\"?", FITTINGS, name);
    else if (find_inside(kind, name, &inside))
        text_add(t, "; did you mean \"%s\"?", text_of(&inside));
    else
        add_nearest(t, kind, name, beside);
    text_free(&inside);
}

const char *end_group(int end)
{
    return end == TSIDE_FREE_END ? "free_end" : "drive_end";
}

int is_hole(const tside_field *row)
{
    return strstr(row->name, "_hole") != NULL;
}

const char *choice_text(const tside_field *row, int value)
{
    return value >= 0 && value < row->choice_count ? row->choices[value] : "";
}

void add_condition(text *t, tside_kind kind, const tside_field *row)
{
    const tside_field *choice = row_named(kind, row->applies_to, NULL);
    const char *before = "";
    text_add(t, "used only while %s is ", choice->name);
    for (int k = 0; k < choice->choice_count; k++)
        if (row->applies_mask >> k & 1u) {
            text_add(t, "%s%s", before, choice->choices[k]);
            before = " or ";
        }
}
