/* SPDX-License-Identifier: MIT */
/* The customer's copy: what is offered, and for how much, by a quotation that has become his. */
#include "print.h"
#include "words.h"

/* Rows of the list under one label; under: as wide, of blanks. */
static void print_rows(text *out, const letter *l, price_kind kind, const char *label, const char *under)
{
    const char *words;
    for (int i = 0; (words = letter_row(l, kind, i)) != NULL; i++)
        text_wrap(out, i ? under : label, words);
}

static void print_head(text *out, const answer *a, pen *p)
{
    const letter *l = a->letter;
    paper stops = {.lines = NULL};
    text_say(out, "QUOTATION  ", "%s", l->number);
    text_say(out, "DATE       ", "%s, valid until %s", l->date, l->valid_until);
    print_rows(out, l, WHOSE, "FROM       ", "           ");
    for (size_t i = 0; i < a->order->all->count; i++) {
        const request *wanted = &a->order->all->sides[i]->wanted;
        text_say(out, i ? "           " : "FOR        ", "%s%s%s", wanted->job ? wanted->job : "",
                 wanted->job && *wanted->job ? ": " : "", *wanted->name ? wanted->name : "a side without a name");
    }
    put_stops_of_order(&stops, a->order, p);
    print_strip(out, &stops);
    paper_free(&stops);
}

/* What comes to an amount, which stands at the end of the line. */
static void print_sum(text *out, const char *name, cents amount)
{
    text words = {NULL, 0, 0};
    print_money(&words, amount);
    text_add(out, "  %-62s %13s\n", name, text_of(&words));
    text_free(&words);
}

enum { AMOUNTS_FROM = 64 }; /* column */

/* What is offered, and at the end of its last line for how much. */
static void print_offer(text *out, const char *much, const char *what, cents amount)
{
    text label = {NULL, 0, 0}, money = {NULL, 0, 0}, words = {NULL, 0, 0};
    text_add(&label, "  %15s  ", much);
    text_add(&words, "%s%s", text_of(&label), what);
    print_money(&money, amount);
    if (columns(text_of(&words)) < AMOUNTS_FROM) {
        text_add(out, "%s%*s%13s\n", text_of(&words), (int)(AMOUNTS_FROM - columns(text_of(&words))), "",
                 text_of(&money));
    } else {
        text_wrap(out, text_of(&label), what);
        print_sum(out, "", amount);
    }
    text_free(&label);
    text_free(&money);
    text_free(&words);
}

static void print_goods(text *out, const quote_line *line, pen *p)
{
    const article a = sold_on(line);
    text much = {NULL, 0, 0}, what = {NULL, 0, 0};
    add_sold(&much, line, p);
    add_article(&what, &a, p->us);
    if (is_of_size(line->row->unit)) {
        text_add(&what, ", ");
        add_unit(&what, line->row, p->us);
    }
    print_offer(out, text_of(&much), text_of(&what), line->amount);
    text_free(&much);
    text_free(&what);
}

static void print_work(text *out, const quote_line *line)
{
    const int by_length = line->row->unit == METRE || line->row->unit == FOOT;
    text much = {NULL, 0, 0};
    if (line->row->unit != ORDER_ONCE) {
        print_quantity(&much, line->quantity);
        text_add(&much, " %s%s", unit_name(line->row->unit), by_length || line->quantity == 100 ? "" : "s");
    }
    print_offer(out, text_of(&much), line->row->name, line->amount);
    text_free(&much);
}

static void print_tax(text *out, const quote_line *line)
{
    text words = {NULL, 0, 0};
    text_wrap(out, "  ", line->row->name);
    text_add(&words, "    ");
    print_share(&words, line->row->share);
    text_add(&words, " of ");
    print_money(&words, line->base);
    print_sum(out, text_of(&words), line->amount);
    text_free(&words);
}

static void print_kind(text *out, const quote *q, price_kind kind, pen *p)
{
    for (int i = 0; i < q->count; i++) {
        const quote_line *line = q->lines + i;
        if (line->row->kind != kind)
            continue;
        if (kind == MATERIAL) {
            print_goods(out, line, p);
        } else if (kind == LABOUR) {
            print_work(out, line);
        } else {
            print_tax(out, line);
        }
    }
}

void print_customers_text(text *out, const answer *a, int us)
{
    static const char *const cautions[] = {
        "Hands and sleeves clear of roll and rail while a side runs; not in wind, not frozen.",
        "This quotation is for parts and work as listed, not a certificate. Local codes, makers' ratings and "
        "instructions, and licensed practice come first.",
    };
    pen p = {.us = us};
    const quote *q = a->price;
    print_head(out, a, &p);
    text_add(out, "\n");
    add_price_title(out, q);
    text_add(out, "\n");
    print_kind(out, q, MATERIAL, &p);
    print_sum(out, "MATERIALS", q->materials);
    print_kind(out, q, LABOUR, &p);
    print_sum(out, "LABOUR", q->labour);
    print_sum(out, "NET", q->net);
    print_kind(out, q, TAX, &p);
    print_sum(out, "TOTAL", q->total);
    text_wrap(out, "  ", customers_rounding);
    text_add(out, "\nTERMS\n");
    print_rows(out, a->letter, TERMS, "  ", "  ");
    text_add(out, "\nCAUTIONS\n");
    for (size_t i = 0; i < sizeof cautions / sizeof *cautions; i++)
        text_wrap(out, "  ! ", cautions[i]);
}
