/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "message.h"
#include "quote.h"

const char rounding[] = "Quantities are rounded to the nearest hundredth of their unit, then each line to the nearest "
                        "cent, halves up; sums are of rounded lines."
                        " A markup is taken on the sum of its materials or labour, a tax on that sum with its markups, "
                        "never on another tax.";

static double quantity_of(const article *bought, price_unit unit)
{
    switch (unit) {
    case METRE: return bought->metres;
    case FOOT: return bought->metres / 0.3048;
    case SQUARE_METRE: return bought->square_metres;
    case SQUARE_FOOT: return bought->square_metres / (0.3048 * 0.3048);
    default: return bought->count;
    }
}

static double labour_of(const order *o, price_unit unit)
{
    switch (unit) {
    case SIDE: return o->sides;
    case METRE: return o->side_length;
    case FOOT: return o->side_length / 0.3048;
    case CUT: return order_cuts(o);
    default: return 1;
    }
}

static int too_much(prices *list, int line)
{
    prices_complain(list, line, "the amount is above what makes sense, 10000000000.00");
    return 0;
}

static quote_line *add_line(quote *q, const price_row *row, const article *bought)
{
    q->lines[q->count] = (quote_line){.row = row, .bought = bought};
    return q->lines + q->count++;
}

static int add_amount(quote *q, prices *list, const price_row *row, const article *bought, double quantity, cents *sum)
{
    quote_line *line = add_line(q, row, bought);
    const int good = to_hundredths(quantity, &line->quantity) &&
                     multiply_price(row->amount, line->quantity, row->unit == HUNDRED_OF ? 100 : 1, &line->amount) &&
                     add_money(sum, line->amount);
    return good || too_much(list, row->line);
}

/*
 * A row as it would stand in the list, with a price to put in, unless it is among the rows already; of film by its
 * area, whatever its width and length.
 */
static void add_missing(text *rows, const article *bought, int us)
{
    const int sheet = bought->square_metres > 0;
    const char *unit = sheet ? us ? "ft2" : "m2" : bought->count ? "each" : us ? "ft" : "m";
    text row = {NULL, 0, 0}, sizes = {NULL, 0, 0}, grade = {NULL, 0, 0};
    if (sheet) {
        article film = *bought;
        film.measures[1] = 0;
        add_sizes(&sizes, &film, us);
    } else {
        add_whole_size(&sizes, bought, us);
    }
    grade_text(bought, us, &grade);
    if (bought->has_material && bought->material.grade == TSIDE_GRADE_UNKNOWN)
        text_add(&grade, " " NO_MEASURE);
    text_add(&row, "\nmaterial,%s,%s,%s,%s,\n", bought->what->name, text_of(&sizes), text_of(&grade), unit);
    if (!strstr(text_of(rows), text_of(&row)))
        text_add(rows, "%s", text_of(&row) + (rows->length > 0));
    text_free(&row);
    text_free(&sizes);
    text_free(&grade);
}

/* The only row that fits; NULL where there is none, or where two do, which is said. */
static const price_row *price_of(prices *list, const article *bought, int *missing)
{
    const price_row *only = NULL;
    for (int i = 0; i < list->count; i++) {
        const price_row *row = list->rows + i;
        if (!price_fits(row, bought))
            continue;
        if (only) {
            text words = {NULL, 0, 0};
            add_sizes(&words, bought, 0);
            prices_complain(list, row->line, "ambiguous: %s %s is priced in line %d too", bought->what->name,
                            text_of(&words), only->line);
            text_free(&words);
            return NULL;
        }
        only = row;
    }
    *missing = !only;
    if (only && !(quantity_of(bought, only->unit) > 0)) {
        prices_complain(list, only->line, "%s is not bought by %s here: by %s", bought->what->name,
                        unit_name(only->unit), bought->count ? "each" : "m or ft");
        return NULL;
    }
    return only;
}

static void price_materials(quote *q, const order *o, prices *list, int us)
{
    text rows = {NULL, 0, 0};
    for (int i = 0; i < o->article_count; i++) {
        const article *bought = o->articles + i;
        int missing = 0;
        const price_row *row = price_of(list, bought, &missing);
        if (row)
            add_amount(q, list, row, bought, quantity_of(bought, row->unit), &q->materials);
        if (missing)
            add_missing(&rows, bought, us);
        list->bad += missing;
    }
    if (rows.length) {
        say("%s: prices are missing; rows to add, each with its price (unit and size may be others that fit):",
            list->file);
        fputs(text_of(&rows) + 1, stderr); /* without the line end before the first */
    }
    text_free(&rows);
}

static void price_labour(quote *q, const order *o, prices *list)
{
    for (int i = 0; i < list->count; i++)
        if (list->rows[i].kind == LABOUR)
            add_amount(q, list, list->rows + i, NULL, labour_of(o, list->rows[i].unit), &q->labour);
}

/* Adds the shares of one kind that are of one base, and their sum to another. */
static void add_shares(quote *q, prices *list, price_kind kind, price_unit of, cents base, cents *sum)
{
    for (int i = 0; i < list->count; i++) {
        const price_row *row = list->rows + i;
        quote_line *line;
        if (row->kind != kind || row->unit != of)
            continue;
        line = add_line(q, row, NULL);
        line->base = base;
        if (!take_share(base, row->share, &line->amount) || !add_money(sum, line->amount))
            too_much(list, row->line);
    }
}

int quote_make(quote *made, const order *o, prices *list, int us)
{
    *made = (quote){.currency = ""};
    made->lines = take_memory((size_t)(o->article_count + list->count) * sizeof *made->lines);
    for (int i = 0; i < list->count; i++)
        if (list->rows[i].kind == CURRENCY)
            made->currency = list->rows[i].name;
    price_materials(made, o, list, us);
    price_labour(made, o, list);
    if (list->bad)
        return 0;
    made->marked_up_materials = made->materials;
    made->marked_up_labour = made->labour;
    add_shares(made, list, MARKUP, OF_MATERIALS, made->materials, &made->marked_up_materials);
    add_shares(made, list, MARKUP, OF_LABOUR, made->labour, &made->marked_up_labour);
    made->net = made->marked_up_materials;
    if (!add_money(&made->net, made->marked_up_labour))
        return too_much(list, 1);
    add_shares(made, list, TAX, OF_MATERIALS, made->marked_up_materials, &made->tax);
    add_shares(made, list, TAX, OF_LABOUR, made->marked_up_labour, &made->tax);
    add_shares(made, list, TAX, OF_ALL, made->net, &made->tax);
    made->total = made->net;
    if (!add_money(&made->total, made->tax))
        return too_much(list, 1);
    return !list->bad;
}

void quote_free(quote *made)
{
    free(made->lines);
}
