/* SPDX-License-Identifier: MIT */
#include "read.h"
#include "walk.h"

typedef struct walker {
    walk_leaf *leaf;
    void *context;
    text path;
} walker;

static void walk_table(walker *w, tside_kind kind, const void *structure);

static void walk_row(walker *w, const tside_field *row, const void *structure)
{
    if (row->type == TSIDE_GROUP) {
        walk_table(w, row->kind, CONST_MEMBER(structure, row->offset, char));
    } else if (row->type == TSIDE_LIST) {
        const int count = *CONST_MEMBER(structure, row->count_offset, int);
        for (int i = 0; i < count; i++) {
            const size_t mark = w->path.length;
            text_add(&w->path, "[%d]", i);
            walk_table(w, row->kind, CONST_MEMBER(structure, row->offset + (size_t)i * row->stride, char));
            text_cut(&w->path, mark);
        }
    } else {
        w->leaf(w->context, text_of(&w->path), row, CONST_MEMBER(structure, row->offset, char));
    }
}

static void walk_table(walker *w, tside_kind kind, const void *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const size_t mark = w->path.length;
        if (!tside_field_applies(row + i, structure))
            continue;
        text_add(&w->path, "%s%s", mark ? "." : "", row[i].name);
        walk_row(w, row + i, structure);
        text_cut(&w->path, mark);
    }
}

void walk(tside_kind kind, const void *structure, walk_leaf *leaf, void *context)
{
    walker w = {leaf, context, {NULL, 0, 0}};
    walk_table(&w, kind, structure);
    text_free(&w.path);
}
