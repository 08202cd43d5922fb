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
    cells_complain(&list->list, line, "the amount is above what makes sense, 10000000000.00");
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

/* Whether a unit is one of the order's own system. */
static int is_own(price_unit unit, int us)
{
    return (unit == FOOT || unit == SQUARE_FOOT) == us;
}

/*
 * The row that fits, of two that are each other's price converted the one in the order's own units; NULL where there is
 * none, or where two do, which is said.
 */
static const price_row *price_of(prices *list, const article *bought, int us, int *missing)
{
    const price_row *only = NULL;
    for (int i = 0; i < list->count; i++) {
        const price_row *row = list->rows + i;
        if (!price_fits(row, bought))
            continue;
        if (only && !prices_agree(only, row)) {
            text words = {NULL, 0, 0};
            add_sizes(&words, bought, 0);
            cells_complain(&list->list, row->line, "ambiguous: %s %s is priced in line %d too", bought->what->name,
                           text_of(&words), only->line);
            text_free(&words);
            return NULL;
        }
        if (!only || is_own(row->unit, us))
            only = row;
    }
    *missing = !only;
    return only;
}

/* The articles that the rolls of a row are for, which share them; else the one. */
static int members_of(const order *o, const price_row *const *rows, int article_place, const article **members)
{
    const price_row *row = rows[article_place];
    int count = 0;
    if (!is_off_a_roll(row->unit)) {
        members[0] = o->articles + article_place;
        return 1;
    }
    for (int i = 0; i < o->article_count; i++)
        if (rows[i] == row)
            members[count++] = o->articles + i;
    return count;
}

/* One line for an article, or for all that share the rolls of its row: with the first of them. */
static void price_material(quote *q, const order *o, prices *list, const price_row *const *rows, int article_place)
{
    const price_row *row = rows[article_place];
    const article **members = take_memory((size_t)o->article_count * sizeof *members);
    const int count = members_of(o, rows, article_place, members);
    text why = {NULL, 0, 0};
    sold s;
    if (members[0] != o->articles + article_place)
        ; /* on the line of the first */
    else if (!sell(row, members, count, &s, &why))
        cells_complain(&list->list, row->line, "%s", text_of(&why));
    else if (add_amount(q, list, row, members[0], s.quantity, &q->materials))
        q->lines[q->count - 1].left = s.left;
    text_free(&why);
    free(members);
}

static void price_materials(quote *q, const order *o, prices *list, int us)
{
    const price_row **rows = take_memory((size_t)o->article_count * sizeof *rows);
    text wanted = {NULL, 0, 0};
    for (int i = 0; i < o->article_count; i++) {
        int missing = 0;
        rows[i] = price_of(list, o->articles + i, us, &missing);
        if (missing)
            add_missing(&wanted, o->articles + i, us);
        list->list.bad += missing;
    }
    for (int i = 0; i < o->article_count; i++)
        if (rows[i])
            price_material(q, o, list, rows, i);
    if (wanted.length) {
        say("%s: prices are missing; rows to add, each with its price (unit and size may be others that fit):",
            list->list.file);
        fputs(text_of(&wanted) + 1, stderr); /* without the line end before the first */
    }
    text_free(&wanted);
    free(rows);
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
    if (list->list.bad)
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
    return !list->list.bad;
}

/* --- the customer's copy --- */

const char customers_rounding[] = "Each line is rounded to the cent, so that the lines add up. A tax is taken on the "
                                  "sum that it names, never on another tax.";

/*
 * The lines of a kind are raised to what they come to together with the markups: up to each line the sum is its share
 * of the whole, to the nearest cent, halves up, and a line is what that adds.
 */
static void raise_lines(quote *q, price_kind kind, cents cost, cents price)
{
    cents before = 0, raised = 0;
    for (int i = 0; i < q->count && cost > 0; i++) {
        quote_line *line = q->lines + i;
        cents sum;
        if (line->row->kind != kind)
            continue;
        before += line->amount;
        sum = share_of(price, before, cost);
        line->amount = sum - raised;
        raised = sum;
    }
}

void quote_for_customer(quote *q)
{
    int kept = 0;
    raise_lines(q, MATERIAL, q->materials, q->marked_up_materials);
    raise_lines(q, LABOUR, q->labour, q->marked_up_labour);
    for (int i = 0; i < q->count; i++)
        if (q->lines[i].row->kind != MARKUP)
            q->lines[kept++] = q->lines[i];
    q->count = kept;
    q->materials = q->marked_up_materials;
    q->labour = q->marked_up_labour;
}

void quote_free(quote *made)
{
    free(made->lines);
}

article sold_on(const quote_line *line)
{
    article film = *line->bought;
    if (is_off_a_roll(line->row->unit))
        film.measures[1] = film.measures[2] = 0;
    return film;
}

/* --- mass --- */

double line_mass(const quote_line *line)
{
    const price_row *row = line->row;
    const article *bought = line->bought;
    const double quantity = (double)line->quantity / 100; /* hundredths */
    if (row->mass > 0)
        return row->mass * quantity / (row->unit == HUNDRED_OF ? 100 : 1);
    switch (row->unit) {
    case METRE_WIDE: return bought->measures[0] * row->width * quantity;
    case FOOT_WIDE: return bought->measures[0] * row->width * quantity * 0.3048;
    case ROLL: return bought->measures[0] * row->width * row->length * quantity;
    case PACK: return bought->mass / bought->count * row->pack * quantity;
    case COIL: return bought->mass / bought->metres * row->length * quantity;
    default: return bought->mass;
    }
}

/* Adds a name that is not among those before it. */
static void add_name(text *names, const char *name)
{
    const char *at = text_of(names);
    const size_t length = strlen(name);
    for (; (at = strstr(at, name)) != NULL; at++)
        if ((at == names->data || at[-1] == ' ') && (!at[length] || at[length] == ','))
            return;
    text_add(names, "%s%s", names->length ? ", " : "", name);
}

double mass_bought(const order *o, const quote *q, text *unknown)
{
    double sum = 0;
    const int count = q ? q->count : o->article_count;
    for (int i = 0; i < count; i++) {
        const article *bought = q ? q->lines[i].bought : o->articles + i;
        double mass;
        if (!bought)
            continue;
        mass = q ? line_mass(q->lines + i) : bought->mass;
        if (mass > 0)
            sum += mass;
        else
            add_name(unknown, bought->what->name);
    }
    return sum;
}
