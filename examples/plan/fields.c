/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "fields.h"
#include "names.h"
#include "read.h"
#include "writer.h"

/* --- each field explained --- */

static const char *unit_after(const tside_field *row)
{
    return strcmp(row->unit, "1") ? row->unit : "";
}

/*
 * "0.1 m (common practice, no published source)" needs a readable number: six digits, no unit where it is a plain one.
 */
static void add_value(text *t, double value, const tside_field *row)
{
    text_add(t, "%.6g%s%s", value, *unit_after(row) ? " " : "", unit_after(row));
}

/* "above 0, to 20" or "from 0" or nothing */
static void add_bounds(text *t, const tside_field *row)
{
    const char *before = "";
    if (isfinite(row->low)) {
        text_add(t, "%s %.6g", row->low_open ? "above" : "from", row->low);
        before = ", ";
    }
    if (isfinite(row->high))
        text_add(t, "%s%s %.6g", before, row->high_open ? "below" : "to", row->high);
}

static void add_number(text *t, const tside_field *row)
{
    text_add(t, " [%s]: ", strcmp(row->unit, "1") ? row->unit : row->type == TSIDE_COUNT ? "count" : "number");
    add_bounds(t, row);
    if (row->required) {
        text_add(t, "; REQUIRED");
    } else if (row->optional) {
        text_add(t, "; may be absent");
    } else {
        text_add(t, "; usual ");
        add_value(t, row->usual, row);
        text_add(t, " (%s)", row->basis);
    }
    if (row->usual_low < row->usual_high) {
        text_add(t, "; ordinary from %.6g to ", row->usual_low);
        add_value(t, row->usual_high, row);
    }
    if (row->tolerance > 0) {
        text_add(t, "; measured to within ");
        add_value(t, row->tolerance, row);
    }
}

static void add_choices(text *t, const tside_field *row)
{
    text_add(t, ": ");
    for (int k = 0; k < row->choice_count; k++)
        text_add(t, "%s%s", k ? ", " : "one of ", row->choices[k]);
    text_add(t, "; usual %s", choice_text(row, (int)row->usual));
}

static void explain_table(text *out, tside_kind kind, text *path);

static void explain(text *out, tside_kind kind, const tside_field *row, text *path)
{
    text words = {NULL, 0, 0};
    text_add(&words, "%s", text_of(path));
    switch (row->type) {
    case TSIDE_NUMBER:
    case TSIDE_COUNT: add_number(&words, row); break;
    case TSIDE_CHOICE: add_choices(&words, row); break;
    case TSIDE_GROUP: text_add(&words, ": a group"); break;
    case TSIDE_LIST: text_add(&words, ": a list of up to %d", row->capacity); break;
    }
    if (row->applies_to) {
        text_add(&words, "; ");
        add_condition(&words, kind, row);
    }
    text_wrap(out, "", text_of(&words));
    text_wrap(out, "    ", row->meaning);
    text_free(&words);
    if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST)
        explain_table(out, row->kind, path);
}

static void explain_table(text *out, tside_kind kind, text *path)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const size_t mark = path->length;
        text_add(path, "%s%s%s", mark ? "." : "", row[i].name, row[i].type == TSIDE_LIST ? "[]" : "");
        explain(out, kind, row + i, path);
        text_cut(path, mark);
    }
}

void print_fields(text *out)
{
    text path = {NULL, 0, 0};
    text_wrap(out, "",
              "A JSON number is in the unit in brackets; a text brings its own unit, such as \"5 ft 3 1/2 in\" or \"38 "
              "mm\"; diameter and"
              " wall of a tube may also be a trade name, such as \"fence 1-3/8 in\", \"nps 1-1/4\" or \"bwg 14\".");
    text_wrap(
        out, "",
        "Beside these a side may have the texts name, note, drive_at: which end has the drive, and mark: one or two "
        "letters that begin the marks of its pieces; and an object tolerances,"
        " such as {\"curtain.hip\": \"1/2 in\"}, where a measurement may be off by other than it is measured to "
        "within.");
    text_add(out, "\n");
    explain_table(out, TSIDE_KIND_SIDE, &path);
    text_add(out, "\n");
    text_wrap(out, "", "And an object fittings: what an order must know beside the side, for tunnelside-order.");
    text_add(out, "\n");
    text_add(&path, "%s", FITTINGS);
    explain_table(out, TSIDE_KIND_FITTINGS, &path);
    text_free(&path);
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
    if (row->type == TSIDE_GROUP)
        blank_table(out, row->kind, CONST_MEMBER(structure, row->offset, char), depth);
    else
        text_add(out, "%s", row->type == TSIDE_LIST ? "[]" : "\"\"");
}

/* Two rows that share a name are one key. */
static int is_first_of_name(const tside_field *row, int i)
{
    for (int k = 0; k < i; k++)
        if (!strcmp(row[k].name, row[i].name))
            return 0;
    return 1;
}

/* What is needed first, then the rest. */
static void blank_table(text *out, tside_kind kind, const void *structure, int depth)
{
    int count, first = 1;
    const tside_field *row = tside_fields(kind, &count);
    text_add(out, "{");
    if (!depth) {
        for (int i = 0; side_texts[i]; i++)
            text_add(out, "%s\n  \"%s\": \"\"", i ? "," : "", side_texts[i]);
        first = 0;
    }
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

void print_blank(text *out)
{
    tside_side usual;
    tside_usual(TSIDE_KIND_SIDE, &usual);
    blank_table(out, TSIDE_KIND_SIDE, &usual, 0);
    text_add(out, "\n");
}
