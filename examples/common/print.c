/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "print.h"

enum { INDENT = 2, STEP_INDENT = 6, REMARK_INDENT = 4, GAP = 2 };

/* --- tables: as wide as their cells --- */

/* Rows with as many cells, and their titles, form a table: from its part, or its titles, to the next. */
typedef struct table {
    int count;
    size_t widths[PAPER_CELLS];
} table;

static int begins_table(const paper_line *at)
{
    return at->kind == LINE_PAGE || at->kind == LINE_PART || at->kind == LINE_COLUMNS;
}

static int is_in_table(const paper_line *at, int count)
{
    return (at->kind == LINE_ROW || at->kind == LINE_COLUMNS || at->kind == LINE_UNITS) && at->count == count;
}

static void measure(table *t, const paper_line *at)
{
    for (int k = 0; is_in_table(at, t->count) && k < t->count; k++)
        if (columns(at->cells[k]) > t->widths[k])
            t->widths[k] = columns(at->cells[k]);
}

static table table_of(const paper *p, size_t i)
{
    table t = {.count = p->lines[i].count};
    size_t from = i, to = i + 1;
    while (from > 0 && !begins_table(p->lines + from))
        from--;
    while (to < p->count && !begins_table(p->lines + to))
        to++;
    for (; from < to; from++)
        measure(&t, p->lines + from);
    return t;
}

/* Rows stand under the step that they belong to. */
static size_t indent_of(const paper *p, size_t i)
{
    for (; i > 0 && !begins_table(p->lines + i); i--)
        if (p->lines[i].kind == LINE_STEP)
            return STEP_INDENT;
    return INDENT;
}

static void add_blanks(text *t, size_t count)
{
    text_add(t, "%*s", (int)count, "");
}

static size_t length_without_blanks(const text *t)
{
    size_t length = t->length;
    while (length > 0 && t->data[length - 1] == ' ')
        length--;
    return length;
}

/* Figures stand at the right of their column, words at its left; the last cell is broken where it is too long. */
static void add_row(text *out, const paper *p, size_t i)
{
    const paper_line *row = p->lines + i;
    const table t = table_of(p, i);
    text before = {NULL, 0, 0};
    add_blanks(&before, indent_of(p, i));
    for (int k = 0; k < row->count; k++) {
        const size_t blanks = t.widths[k] - columns(row->cells[k]);
        const int right = row->figures >> k & 1u, last = k == row->count - 1;
        if (k)
            add_blanks(&before, GAP);
        if (right)
            add_blanks(&before, blanks);
        if (!last)
            text_add(&before, "%s", row->cells[k]);
        if (!last && !right)
            add_blanks(&before, blanks);
    }
    if (*row->cells[row->count - 1])
        text_wrap_at(out, SHEET_WIDTH, text_of(&before), row->cells[row->count - 1]);
    else
        text_add(out, "%.*s\n", (int)length_without_blanks(&before), text_of(&before));
    text_free(&before);
}

/* --- lines --- */

static void add_step(text *out, const paper_line *step)
{
    char label[16];
    snprintf(label, sizeof label, " %2d. ", step->number);
    text_wrap_at(out, SHEET_WIDTH, label, step->cells[0]);
}

static void add_fact(text *out, const paper_line *fact)
{
    char label[16];
    snprintf(label, sizeof label, "%-5s  ", fact->cells[0]);
    text_wrap_at(out, SHEET_WIDTH, label, fact->cells[1]);
}

/* Under its row. */
static void add_remark(text *out, const paper *p, size_t i)
{
    text label = {NULL, 0, 0};
    add_blanks(&label, indent_of(p, i) + REMARK_INDENT);
    text_wrap_at(out, SHEET_WIDTH, text_of(&label), p->lines[i].cells[0]);
    text_free(&label);
}

static void add_line_of(text *out, const paper *p, size_t i)
{
    const paper_line *at = p->lines + i;
    switch (at->kind) {
    case LINE_PAGE: break;    /* it is the page's head */
    case LINE_DRAWING: break; /* letters of one width draw nothing */
    case LINE_PART: text_add(out, "\n%s\n", at->cells[0]); break;
    case LINE_FACT: add_fact(out, at); break;
    case LINE_WORDS: text_wrap_at(out, SHEET_WIDTH, "  ", at->cells[0]); break;
    case LINE_POINT: text_wrap_at(out, SHEET_WIDTH, "  - ", at->cells[0]); break;
    case LINE_STEP: add_step(out, at); break;
    case LINE_CAUTION:
        text_wrap_at(out, SHEET_WIDTH, indent_of(p, i) == INDENT ? "  ! " : "     ! ", at->cells[0]);
        break;
    case LINE_REMARK: add_remark(out, p, i); break;
    case LINE_COLUMNS:
    case LINE_UNITS:
    case LINE_ROW: add_row(out, p, i); break;
    }
}

/* --- pages --- */

typedef struct pages {
    text *bodies;
    const paper_line **heads;
    size_t count, room, heads_room;
    size_t used; /* lines of the last */
} pages;

static void begin_page(pages *all, const paper_line *head)
{
    all->bodies = grown(all->bodies, all->count, &all->room, sizeof *all->bodies);
    all->heads = grown(all->heads, all->count, &all->heads_room, sizeof *all->heads);
    all->bodies[all->count] = (text){NULL, 0, 0};
    all->heads[all->count++] = head;
    all->used = 1; /* the head's own */
}

static size_t lines_of(const char *words)
{
    size_t count = 0;
    for (const char *at = words; *at; at++)
        count += *at == '\n';
    return count;
}

/* What would mean nothing at the foot of a page goes with what follows it. */
static int keeps_next(const paper *p, size_t i)
{
    const line_kind kind = p->lines[i].kind;
    line_kind next;
    if (i + 1 == p->count)
        return 0;
    next = p->lines[i + 1].kind;
    return kind == LINE_PART || kind == LINE_COLUMNS || kind == LINE_UNITS || next == LINE_CAUTION ||
           next == LINE_REMARK || (kind == LINE_STEP && next == LINE_ROW);
}

static size_t lines_needed(const paper *p, size_t i)
{
    size_t needed = 0;
    for (int more = 1; more; i++) {
        text block = {NULL, 0, 0};
        add_line_of(&block, p, i);
        needed += lines_of(text_of(&block));
        text_free(&block);
        more = keeps_next(p, i);
    }
    return needed;
}

static void add_to_page(pages *all, const paper *p, size_t i)
{
    text block = {NULL, 0, 0};
    const char *words;
    if (all->used + lines_needed(p, i) > SHEET_LINES)
        begin_page(all, all->heads[all->count - 1]);
    add_line_of(&block, p, i);
    words = text_of(&block);
    words += all->used == 1 && *words == '\n'; /* no empty line on top */
    all->used += lines_of(words);
    text_add(all->bodies + all->count - 1, "%s", words);
    text_free(&block);
}

static void add_head(text *out, const paper_line *head, size_t number, size_t of)
{
    char place[40];
    text title = {NULL, 0, 0};
    snprintf(place, sizeof place, "  page %zu of %zu", number, of);
    text_add(&title, "%s  ", head->cells[0]);
    text_add_within(&title, head->cells[1], SHEET_WIDTH - columns(text_of(&title)) - strlen(place));
    text_add(out, "%s", text_of(&title));
    add_blanks(out, SHEET_WIDTH - columns(text_of(&title)) - strlen(place));
    text_add(out, "%s\n", place);
    text_free(&title);
}

static void print_paper(text *out, const paper *p)
{
    pages all = {NULL, NULL, 0, 0, 0, 0};
    for (size_t i = 0; i < p->count; i++)
        if (p->lines[i].kind == LINE_PAGE)
            begin_page(&all, p->lines + i);
        else
            add_to_page(&all, p, i);
    for (size_t k = 0; k < all.count; k++) {
        text_add(out, "%s", out->length ? "\f" : "");
        add_head(out, all.heads[k], k + 1, all.count);
        text_add(out, "%s", text_of(all.bodies + k));
        text_free(all.bodies + k);
    }
    free(all.bodies);
    free(all.heads);
}

void print_papers(text *out, const papers *sheets)
{
    for (size_t i = 0; i < sheets->count; i++)
        print_paper(out, sheets->list + i);
}

void print_strip(text *out, const paper *p)
{
    for (size_t i = 0; i < p->count; i++)
        if (p->lines[i].kind == LINE_PAGE)
            text_add(out, "%s  %s\n", p->lines[i].cells[0], p->lines[i].cells[1]);
        else
            add_line_of(out, p, i);
}
