/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cells.h"
#include "document.h"
#include "memory.h"
#include "message.h"

void cells_complain(cell_list *list, int line, const char *format, ...)
{
    text words = {NULL, 0, 0};
    va_list arguments;
    if (list->bad++ >= MOST_COMPLAINTS)
        return;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    say("%s:%d: %s", list->file, line, text_of(&words));
    text_free(&words);
}

const char *after_whole(const char *words, int most, int *number)
{
    const size_t digits = strspn(words, "0123456789");
    const int most_digits = snprintf(NULL, 0, "%d", most);
    const int value = digits && digits <= (size_t)most_digits ? atoi(words) : 0;
    if (value < 1 || value > most)
        return NULL;
    *number = value;
    return words + digits;
}

int read_whole_number(const char *what, const char *words, int most, int *number, text *why)
{
    const char *after = after_whole(words, most, number);
    if (after && !*after)
        return 1;
    text_add(why, "%s \"%s\": wanted a whole number from 1 to %d", what, words, most);
    return 0;
}

static char *trimmed(const text *words)
{
    char *copy = printable(text_of(words)), *from = copy + strspn(copy, " ");
    size_t length = strlen(from);
    while (length && from[length - 1] == ' ')
        length--;
    memmove(copy, from, length);
    copy[length] = '\0';
    return copy;
}

/*
 * Reads one cell, and steps over what ends it; returns the comma, or '\n' at a row's end. open: receives 1 where a
 * quote is not closed.
 */
static char read_cell(const char **at, int *line, text *cell, int *open)
{
    int quoted = 0;
    text_cut(cell, 0);
    for (; **at; ++*at) {
        const char c = **at;
        *line += c == '\n';
        if (c == '"' && quoted && (*at)[1] == '"')
            text_add_bytes(cell, ++*at, 1);
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == ',' || c == '\n')) {
            ++*at;
            return c;
        } else if (c != '\r' || quoted)
            text_add_bytes(cell, *at, 1);
    }
    *open = quoted;
    return '\n';
}

/* most: cells that a row may have, filled ones. */
static int read_row(cell_list *list, const char **at, int *line, int most, cell_row *made)
{
    text cell = {NULL, 0, 0};
    char end = ',';
    int open = 0, extra = 0;
    *made = (cell_row){.line = *line};
    for (int i = 0; end == ','; i++) {
        char *words;
        end = read_cell(at, line, &cell, &open);
        words = trimmed(&cell);
        if (i < most) {
            made->cells[i] = words;
            made->count = i + 1;
            continue;
        }
        extra |= *words != '\0';
        free(words);
    }
    text_free(&cell);
    for (int i = made->count; i < MOST_CELLS; i++)
        made->cells[i] = copy_of("");
    if (open)
        cells_complain(list, made->line, "a quote is not closed");
    else if (extra && *made->cells[0] != '#')
        cells_complain(list, made->line, "more than %d cells: a cell with a comma in it needs quotes", most);
    return !open && (!extra || *made->cells[0] == '#');
}

static int is_passed_over(const cell_row *r)
{
    int filled = 0;
    for (int i = 0; i < MOST_CELLS; i++)
        filled |= *r->cells[i] != '\0';
    return !filled || *r->cells[0] == '#';
}

static void free_row(cell_row *r)
{
    for (int i = 0; i < MOST_CELLS; i++)
        free(r->cells[i]);
}

static int cells_of(const char *header)
{
    int count = 1;
    for (; *header; header++)
        count += *header == ',';
    return count;
}

/* How many cells the rows have, by their header; 0 where it is none. */
static int read_header(cell_list *list, const cell_row *r, const cell_form *form)
{
    text words = {NULL, 0, 0};
    int given = cells_of(form->header);
    while (given > form->least && !*r->cells[given - 1])
        given--;
    for (int i = 0; i < given; i++)
        text_add(&words, "%s%s", i ? "," : "", r->cells[i]);
    if (strncmp(form->header, text_of(&words), words.length) ||
        (form->header[words.length] && form->header[words.length] != ','))
        given = 0;
    text_free(&words);
    if (!given)
        cells_complain(list, r->line, "no %s: wanted the header %s", form->name, form->header);
    return given;
}

static void read_rows(cell_list *list, const char *at, const cell_form *form, void *context)
{
    int line = 1, columns = 0;
    while (*at && (columns || !list->bad)) {
        cell_row r;
        const int good = read_row(list, &at, &line, columns ? columns : cells_of(form->header), &r);
        if (good && !is_passed_over(&r)) {
            if (!columns)
                columns = read_header(list, &r, form);
            else if (list->rows++ < MOST_ROWS)
                form->use(context, &r);
            else {
                cells_complain(list, r.line, "more rows than a list may have, %d", MOST_ROWS);
                at = "";
            }
        }
        free_row(&r);
    }
    if (!columns && !list->bad)
        cells_complain(list, 1, "no %s: wanted the header %s", form->name, form->header);
}

int cells_read(cell_list *list, const char *file, const cell_form *form, void *context)
{
    text content = {NULL, 0, 0};
    const char *why;
    *list = (cell_list){.file = file};
    why = read_whole(file, &content);
    if (!why && strlen(text_of(&content)) != content.length)
        why = "not a text";
    if (why) {
        say("%s: %s", file, why);
        list->bad++;
    } else {
        read_rows(list, after_mark(&content), form, context);
    }
    if (list->bad > MOST_COMPLAINTS)
        say("%s: and %d more", file, list->bad - MOST_COMPLAINTS);
    text_free(&content);
    return !list->bad;
}
