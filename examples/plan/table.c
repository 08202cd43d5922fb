/* SPDX-License-Identifier: MIT */
/*
 * CSV by RFC 4180, but for its line ends, which are plain. The columns are the same for every side: file, job, name,
 * mark, with which the marks of its pieces begin; status; then each number, count and choice of the input and of the
 * plan by its path, with its unit in brackets; a side's lists are left out, but for its worst strength line and its
 * findings; then what became of each drive of a list; then why it was refused. What a side does not have is empty.
 */
#include <string.h>

#include "mark.h"
#include "names.h"
#include "table.h"
#include "writer.h"

/* Rows that share a member, each for its own choices, are one column. */
static int is_later_of_two(const tside_field *rows, int i)
{
    for (int k = 0; k < i; k++)
        if (rows[k].offset == rows[i].offset)
            return 1;
    return 0;
}

static int has_value(const tside_field *rows, int count, int i, const char *structure)
{
    int applies = 0;
    for (int k = 0; structure && k < count; k++)
        applies |= rows[k].offset == rows[i].offset && tside_field_applies(rows + k, structure);
    return applies && !(rows[i].optional && !*CONST_MEMBER(structure, rows[i].given_offset, int));
}

static void add_value(text *out, const tside_field *row, const char *structure)
{
    const void *member = structure + row->offset;
    text_add(out, ",");
    if (row->type == TSIDE_NUMBER)
        add_json_number(out, *(const double *)member);
    else if (row->type == TSIDE_COUNT)
        text_add(out, "%d", *(const int *)member);
    else
        text_add(out, "%s", choice_text(row, *(const int *)member));
}

static void add_title(text *out, const char *path, const tside_field *row)
{
    text title = {NULL, 0, 0};
    text_add(&title, "%s%s", path, row->name);
    if (row->type == TSIDE_NUMBER && strcmp(row->unit, "1"))
        text_add(&title, " [%s]", row->unit);
    add_cell(out, text_of(&title), 0);
    text_free(&title);
}

/* The titles, where titles is 1; else the values of a structure, or nothings where it is NULL. */
static void add_columns(text *out, text *path, tside_kind kind, const char *structure, int titles)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const int there = has_value(row, count, i, structure);
        if (row[i].type == TSIDE_LIST || is_later_of_two(row, i))
            continue;
        if (row[i].type == TSIDE_GROUP) {
            const size_t mark = path->length;
            text_add(path, "%s.", row[i].name);
            add_columns(out, path, row[i].kind, there ? structure + row[i].offset : NULL, titles);
            text_cut(path, mark);
        } else if (titles)
            add_title(out, text_of(path), row + i);
        else if (there)
            add_value(out, row + i, structure);
        else
            text_add(out, ",");
    }
}

static void add_all(text *out, const planned *side, int titles)
{
    text path = {NULL, 0, 0};
    text_add(&path, "side.");
    add_columns(out, &path, TSIDE_KIND_SIDE, side && side->is_read ? (const char *)&side->wanted.side : NULL, titles);
    text_cut(&path, 0);
    text_add(&path, "plan.");
    add_columns(out, &path, TSIDE_KIND_PLAN, side && is_planned(side) ? (const char *)&side->plan : NULL, titles);
    text_free(&path);
}

static void add_worst_line(text *out, const tside_plan *plan)
{
    const tside_strength_line *worst = NULL;
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].utilisation_given && (!worst || plan->lines[i].utilisation > worst->utilisation))
            worst = plan->lines + i;
    text_add(out, ",");
    if (worst)
        add_json_number(out, worst->utilisation);
    text_add(out, ",%s,%s",
             worst ? choice_text(row_named(TSIDE_KIND_STRENGTH_LINE, "code", NULL), (int)worst->code) : "",
             worst ? choice_text(row_named(TSIDE_KIND_STRENGTH_LINE, "end", NULL), (int)worst->end) : "");
}

static void add_findings(text *out, const tside_plan *plan)
{
    const tside_field *code = row_named(TSIDE_KIND_FINDING, "code", NULL);
    text_add(out, ",");
    for (int i = 0; i < plan->finding_count; i++)
        text_add(out, "%s%s", i ? " " : "", choice_text(code, (int)plan->findings[i].code));
}

/* "Small: drive_weak; Middle: chosen; Large: larger", where a list of drives is asked for. */
static void add_choices(text *out, const planned *side)
{
    const tside_field *fit = row_named(TSIDE_KIND_DRIVE_CHOICE, "fit", NULL),
                      *finding = row_named(TSIDE_KIND_DRIVE_CHOICE, "finding", NULL);
    text cell = {NULL, 0, 0};
    for (int i = 0; side->choices && i < side->drives->count; i++) {
        const tside_drive_choice *choice = &side->choices[i].choice;
        text_add(&cell, "%s%s: %s", i ? "; " : "", side->drives->name[i],
                 choice->fit == TSIDE_DRIVE_FAILS ? choice_text(finding, (int)choice->finding)
                                                  : choice_text(fit, (int)choice->fit));
    }
    add_cell(out, text_of(&cell), 0);
    text_free(&cell);
}

static void add_side(text *out, const planned *side)
{
    char mark[TSIDE_MARK_SIZE];
    add_cell(out, side->file, 1);
    add_cell(out, side->wanted.job ? side->wanted.job : "", 0);
    add_cell(out, side->wanted.name ? side->wanted.name : "", 0);
    add_cell(out, side_mark(side, mark), 0);
    add_cell(out, is_planned(side) ? "planned" : "refused", 0);
    add_all(out, side, 0);
    if (is_planned(side)) {
        add_worst_line(out, &side->plan);
        add_findings(out, &side->plan);
    } else {
        text_add(out, ",,,,");
    }
    add_choices(out, side);
    add_refusals(out, &side->refusals.lines);
    text_add(out, "\n");
}

void print_table(text *out, const work *all)
{
    text_add(out, "file,job,name,mark,status");
    add_all(out, NULL, 1);
    text_add(out, ",worst_utilisation,worst_line,worst_line_end,findings,drives,refusals\n");
    for (size_t i = 0; i < all->count; i++)
        add_side(out, all->sides[i]);
}
