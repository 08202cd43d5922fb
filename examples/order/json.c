/* SPDX-License-Identifier: MIT */
/* The order for programs: JSON, always SI, each number beside its unit, money in whole cents. */
#include <stdio.h>

#include "answer.h"
#include "drilling.h"
#include "mark.h"
#include "names.h"
#include "writer.h"

static void put_money(writer *w, const char *key, cents amount)
{
    begin_member(w, key);
    text_add(w->out, "{\"value\": %lld, \"unit\": \"cent\"}", amount);
}

static void put_stops(writer *w, const planned *side)
{
    char sentences[TSIDE_FINDINGS][STOP_SIZE];
    const int count = stops_of(side, sentences);
    open_bracket(w, "stops", '[');
    for (int i = 0; i < count; i++)
        put_string(w, NULL, sentences[i]);
    shut_bracket(w, ']');
}

/* One for each piece of a line; of what is counted alone there are none. */
static void put_marks(writer *w, const planned *side, const tside_item *item)
{
    char mark[TSIDE_MARK_SIZE];
    open_bracket(w, "marks", '[');
    for (int i = 0; i < item->count && *item_mark(side, item, i, mark); i++)
        put_string(w, NULL, mark);
    shut_bracket(w, ']');
}

/* Where an extender is drilled. */
static void put_holes(writer *w, const planned *side, const tside_item *item)
{
    hole holes[EXTENDER_HOLES];
    if (item->code != TSIDE_ITEM_EXTENDER)
        return;
    extender_holes(side, end_of_place(item->at), holes);
    open_bracket(w, "holes", '[');
    for (int i = 0; i < EXTENDER_HOLES; i++) {
        open_bracket(w, NULL, '{');
        put_string(w, "of", holes[i].name);
        put_number(w, "from_top", holes[i].from_top, "m");
        put_number(w, "diameter", holes[i].diameter, "m");
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_pieces(writer *w, const planned *side)
{
    open_bracket(w, "pieces", '[');
    for (int k = 0; k < side->item_count; k++) {
        open_bracket(w, NULL, '{');
        put_structure(w, TSIDE_KIND_ITEM, side->items + k);
        put_string(w, "text", tside_item_text((int)side->items[k].code));
        put_marks(w, side, side->items + k);
        put_holes(w, side, side->items + k);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_sides(writer *w, const work *all, int with_pieces)
{
    open_bracket(w, "sides", '[');
    for (size_t i = 0; i < all->count; i++) {
        const planned *side = all->sides[i];
        open_bracket(w, NULL, '{');
        put_place(w, side);
        if (is_ordered(side)) {
            put_stops(w, side);
            if (with_pieces)
                put_pieces(w, side);
        } else {
            put_refused(w, &side->refusals.lines);
        }
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_article(writer *w, const article *a)
{
    put_string(w, "what", a->what->name);
    for (int i = 0; i < MEASURES && a->what->measures[i]; i++)
        if (a->measures[i] > 0) {
            char key[32];
            snprintf(key, sizeof key, "%s", a->what->measures[i]);
            for (char *c = key; *c; c++)
                *c = *c == ' ' ? '_' : *c;
            put_number(w, key, a->measures[i], a->what->units[i]);
        }
    if (a->has_material) {
        open_bracket(w, "material", '{');
        put_structure(w, TSIDE_KIND_MATERIAL, &a->material);
        shut_bracket(w, '}');
    }
}

/* An article, and what the list sells it in. */
static void put_sold(writer *w, const quote_line *line)
{
    const price_row *row = line->row;
    const article a = sold_on(line);
    put_article(w, &a);
    if (!is_of_size(row->unit))
        return;
    open_bracket(w, "sold_in", '{');
    put_string(w, "unit", unit_name(row->unit));
    if (row->pack)
        put_whole(w, "count", row->pack);
    if (row->width > 0)
        put_number(w, "width", row->width, "m");
    if (row->length > 0)
        put_number(w, "length", row->length, "m");
    shut_bracket(w, '}');
    if (row->unit == PACK)
        put_whole(w, "left", (int)line->left);
    else if (is_sold_whole(row->unit))
        put_number(w, "left", line->left, "m");
}

static void put_need(writer *w, const article *a)
{
    if (a->count)
        put_whole(w, "count", a->count);
    if (a->metres > 0)
        put_number(w, "total_length", a->metres, "m");
    if (a->square_metres > 0)
        put_number(w, "total_area", a->square_metres, "m2");
}

static void put_quantity(writer *w, const quote_line *line)
{
    begin_member(w, "quantity");
    text_add(w->out, "{\"value\": ");
    print_quantity(w->out, line->quantity);
    text_add(w->out, ", \"unit\": \"%s\"}", unit_name(line->row->unit));
}

/* The mass of what is bought, where it is known. */
static void put_known(writer *w, double mass)
{
    if (mass > 0)
        put_number(w, "mass", mass, "kg");
}

static void put_mass(writer *w, const answer *a)
{
    text unknown = {NULL, 0, 0};
    put_number(w, "known_mass", mass_bought(a->order, a->price, &unknown), "kg");
    put_string(w, "without_mass", text_of(&unknown));
    text_free(&unknown);
}

/* By a price list in its packs, coils and rolls, else as much as is needed. */
static void put_buying(writer *w, const answer *a)
{
    open_bracket(w, "buy", '[');
    for (int i = 0; a->price && i < a->price->count; i++) {
        const quote_line *line = a->price->lines + i;
        if (!line->bought)
            continue;
        open_bracket(w, NULL, '{');
        put_sold(w, line);
        put_known(w, line_mass(line));
        if (is_of_size(line->row->unit))
            put_quantity(w, line);
        else
            put_need(w, line->bought);
        shut_bracket(w, '}');
    }
    for (int i = 0; !a->price && i < a->order->article_count; i++) {
        open_bracket(w, NULL, '{');
        put_article(w, a->order->articles + i);
        put_need(w, a->order->articles + i);
        put_known(w, a->order->articles[i].mass);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

/* A list for each of the sticks that are cut alike. */
static void put_stick_marks(writer *w, const cutting *c, int stick)
{
    open_bracket(w, "marks", '[');
    for (int nth = 0; nth < c->sticks[stick].count; nth++) {
        text marks = {NULL, 0, 0};
        if (add_stick_marks(&marks, c, stick, nth, "\", \"")) {
            begin_member(w, NULL);
            text_add(w->out, "[\"%s\"]", text_of(&marks));
        } else {
            begin_member(w, NULL);
            text_add(w->out, "[]");
        }
        text_free(&marks);
    }
    shut_bracket(w, ']');
}

static void put_stick(writer *w, const cutting *c, int i)
{
    open_bracket(w, NULL, '{');
    put_structure(w, TSIDE_KIND_STICK, c->sticks + i);
    put_number(w, "length", stick_length(c, i), "m");
    put_flag(w, "in_hand", i < c->in_hand);
    open_bracket(w, "cuts", '[');
    for (int k = 0; k < c->cut_count; k++)
        if (c->taken[i * c->cut_count + k]) {
            open_bracket(w, NULL, '{');
            put_string(w, "code", choice_text(row_named(TSIDE_KIND_ITEM, "code", NULL), c->codes[k]));
            put_string(w, "text", tside_item_text(c->codes[k]));
            put_whole(w, "count", c->taken[i * c->cut_count + k]);
            put_number(w, "length", c->cuts[k].length, "m");
            shut_bracket(w, '}');
        }
    shut_bracket(w, ']');
    put_stick_marks(w, c, i);
    shut_bracket(w, '}');
}

static void put_cuttings(writer *w, const order *o)
{
    open_bracket(w, "cut_plans", '[');
    for (int i = 0; i < o->cutting_count; i++) {
        const cutting *c = o->cuttings + i;
        open_bracket(w, NULL, '{');
        put_article(w, &c->material);
        open_bracket(w, "stock", '{');
        put_structure(w, TSIDE_KIND_STOCK, &c->stock);
        shut_bracket(w, '}');
        open_bracket(w, "plan", '{');
        put_structure(w, TSIDE_KIND_CUT_PLAN, &c->plan);
        shut_bracket(w, '}');
        open_bracket(w, "sticks", '[');
        for (int k = 0; k < c->stick_count; k++)
            put_stick(w, c, k);
        shut_bracket(w, ']');
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

/* Of the customer's copy without what tells cost: the price of a unit, and where that stands. */
static void put_line(writer *w, const quote_line *line, int for_customer)
{
    const int is_share = line->row->kind == MARKUP || line->row->kind == TAX;
    open_bracket(w, NULL, '{');
    put_string(w, "kind", kind_names[line->row->kind]);
    if (line->bought)
        put_sold(w, line);
    else
        put_string(w, "what", line->row->name);
    if (!for_customer)
        put_whole(w, "list_line", line->row->line);
    if (is_share) {
        begin_member(w, "share");
        text_add(w->out, "{\"value\": %lld, \"unit\": \"millionth\"}", line->row->share);
        put_string(w, "of", unit_name(line->row->unit));
        put_money(w, "base", line->base);
    } else {
        put_quantity(w, line);
        if (!for_customer)
            put_money(w, "price", line->row->amount);
    }
    put_money(w, "amount", line->amount);
    shut_bracket(w, '}');
}

static void put_price(writer *w, const quote *q, int for_customer)
{
    open_bracket(w, "price", '{');
    put_string(w, "currency", q->currency);
    put_string(w, "rounding", for_customer ? customers_rounding : rounding);
    open_bracket(w, "lines", '[');
    for (int i = 0; i < q->count; i++)
        put_line(w, q->lines + i, for_customer);
    shut_bracket(w, ']');
    put_money(w, "materials", q->materials);
    put_money(w, "labour", q->labour);
    put_money(w, "net", q->net);
    put_money(w, "tax", q->tax);
    put_money(w, "total", q->total);
    shut_bracket(w, '}');
}

static void put_rows(writer *w, const char *key, const letter *l, price_kind kind)
{
    const char *words;
    open_bracket(w, key, '[');
    for (int i = 0; (words = letter_row(l, kind, i)) != NULL; i++)
        put_string(w, NULL, words);
    shut_bracket(w, ']');
}

static void put_letter(writer *w, const letter *l)
{
    open_bracket(w, "quotation", '{');
    put_string(w, "number", l->number);
    put_string(w, "date", l->date);
    put_string(w, "valid_until", l->valid_until);
    put_rows(w, "whose", l, WHOSE);
    put_rows(w, "terms", l, TERMS);
    shut_bracket(w, '}');
}

void print_json(text *out, const answer *a)
{
    writer w = open_document(out, !a->order->refused);
    if (a->letter)
        put_letter(&w, a->letter);
    put_sides(&w, a->order->all, !a->letter);
    if (!a->letter) {
        put_buying(&w, a);
        put_mass(&w, a);
        put_cuttings(&w, a->order);
    }
    if (a->price)
        put_price(&w, a->price, a->letter != NULL);
    if (*a->no_price)
        put_string(&w, "no_price", a->no_price);
    shut_document(&w);
}
