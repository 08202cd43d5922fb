/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "paper.h"

static paper_line *add_line(paper *p, line_kind kind, int count, const char *const *cells)
{
    paper_line *added;
    p->lines = grown(p->lines, p->count, &p->room, sizeof *p->lines);
    added = p->lines + p->count++;
    *added = (paper_line){.kind = kind, .count = count};
    for (int i = 0; i < count; i++)
        added->cells[i] = copy_of(cells[i] ? cells[i] : "-");
    return added;
}

static paper_line *add_formatted(paper *p, line_kind kind, const char *format, va_list arguments)
{
    text words = {NULL, 0, 0};
    const char *cell;
    paper_line *added;
    text_add_list(&words, format, arguments);
    cell = text_of(&words);
    added = add_line(p, kind, 1, &cell);
    text_free(&words);
    return added;
}

void put_page(paper *p, const char *title, const char *whose)
{
    const char *const cells[] = {title, whose};
    add_line(p, LINE_PAGE, 2, cells);
}

void put_part(paper *p, const char *title)
{
    add_line(p, LINE_PART, 1, &title);
    p->steps = 0;
    p->figures = 0;
    p->names = 0;
}

void put_fact(paper *p, const char *word, const char *format, ...)
{
    text words = {NULL, 0, 0};
    const char *cells[2];
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    cells[0] = word;
    cells[1] = text_of(&words);
    add_line(p, LINE_FACT, 2, cells);
    text_free(&words);
}

void put_words(paper *p, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add_formatted(p, LINE_WORDS, format, arguments);
    va_end(arguments);
}

void put_point(paper *p, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add_formatted(p, LINE_POINT, format, arguments);
    va_end(arguments);
}

void put_step(paper *p, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add_formatted(p, LINE_STEP, format, arguments)->number = ++p->steps;
    va_end(arguments);
}

void put_caution(paper *p, const char *words)
{
    add_line(p, LINE_CAUTION, 1, &words);
}

void put_remark(paper *p, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add_formatted(p, LINE_REMARK, format, arguments);
    va_end(arguments);
}

/* Cells under the titles in use. */
static paper_line *add_cells(paper *p, line_kind kind, int count, const char *const *cells)
{
    paper_line *added = add_line(p, kind, count, cells);
    added->figures = p->figures;
    added->names = p->names;
    return added;
}

void put_columns(paper *p, const char *of, unsigned figures, int names, int count, const char *const *titles)
{
    p->figures = figures;
    p->names = names;
    add_cells(p, LINE_COLUMNS, count, titles)->of = of;
}

void put_units(paper *p, int count, const char *const *units)
{
    add_cells(p, LINE_UNITS, count, units);
}

void put_cells(paper *p, int count, const char *const *cells)
{
    add_cells(p, LINE_ROW, count, cells);
}

void put_drawing(paper *p, const char *caption, const char *svg, int lies)
{
    const char *const cells[] = {caption, svg};
    add_line(p, LINE_DRAWING, 2, cells)->lies = lies;
}

static void put_pair(paper *p, const char *first, const char *second, unsigned figures, int names)
{
    const char *const cells[] = {first, second};
    p->figures = figures;
    p->names = names;
    put_cells(p, 2, cells);
}

void put_row(paper *p, const char *label, const char *value)
{
    put_pair(p, label, value, 0, 0);
}

void put_value(paper *p, const char *value, const char *label)
{
    put_pair(p, value, label, 0, 1);
}

void put_count(paper *p, const char *count, const char *label)
{
    put_pair(p, count, label, 1, 1);
}

void put_sum(paper *p, const char *label, const char *sum)
{
    put_pair(p, label, sum, 2, 0);
}

void paper_free(paper *p)
{
    for (size_t i = 0; i < p->count; i++)
        for (int k = 0; k < p->lines[i].count; k++)
            free(p->lines[i].cells[k]);
    free(p->lines);
    *p = (paper){.lines = NULL};
}

/* --- several, one after the other --- */

void papers_add(papers *all, paper made)
{
    all->list = grown(all->list, all->count, &all->room, sizeof *all->list);
    all->list[all->count++] = made;
}

void papers_free(papers *all)
{
    for (size_t i = 0; i < all->count; i++)
        paper_free(all->list + i);
    free(all->list);
    *all = (papers){NULL, 0, 0};
}
