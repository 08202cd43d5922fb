/* SPDX-License-Identifier: MIT */
/*
 * CSV by RFC 4180, but for its line ends, which are plain: one row a line, always SI. Parts, in order: of the
 * customer's copy quotation; of each side stop and piece, or refused; but for the customer buy, mass, stick (cut alike)
 * and its cuts; of a price its lines and sums, or why there is no price. What a row does not have is empty.
 */
#include <string.h>

#include "answer.h"
#include "drilling.h"
#include "mark.h"
#include "names.h"
#include "writer.h"

static const char header[] =
    "part,file,side,mark,what,at,hand,grade,count,length [m],width [m],size [m],wall [m],total "
    "length [m],total area [m2],mass [kg],offcut [m],"
    "quantity,unit,price [cent],base [cent],share [millionth],amount [cent],list line,"
    "eye_from_top [m],bow_from_top [m],member_from_top [m],note\n";

/* One row; what is 0 or NULL stays empty. */
typedef struct cells {
    const char *part, *file, *side, *mark, *what, *at, *hand, *grade, *unit, *note;
    const text *refusals; /* in place of the note */
    int count, list_line;
    double length, width, size, wall, metres, square_metres, mass, offcut, holes[EXTENDER_HOLES];
    int has_offcut, has_quantity, has_price, has_base, has_amount;
    hundredths quantity;
    cents price, base, amount;
    millionths share;
} cells;

static void add_words(text *out, const char *words)
{
    add_cell(out, words ? words : "", 0);
}

static void add_number(text *out, double value, int given)
{
    text_add(out, ",");
    if (given)
        add_json_number(out, value);
}

static void add_whole(text *out, long long value, int given)
{
    text_add(out, ",");
    if (given)
        text_add(out, "%lld", value);
}

static void add_row(text *out, const cells *c)
{
    add_cell(out, c->part, 1);
    add_words(out, c->file);
    add_words(out, c->side);
    add_words(out, c->mark);
    add_words(out, c->what);
    add_words(out, c->at);
    add_words(out, c->hand);
    add_words(out, c->grade);
    add_whole(out, c->count, c->count > 0);
    add_number(out, c->length, c->length > 0);
    add_number(out, c->width, c->width > 0);
    add_number(out, c->size, c->size > 0);
    add_number(out, c->wall, c->wall > 0);
    add_number(out, c->metres, c->metres > 0);
    add_number(out, c->square_metres, c->square_metres > 0);
    add_number(out, c->mass, c->mass > 0);
    add_number(out, c->offcut, c->has_offcut);
    text_add(out, ",");
    if (c->has_quantity)
        print_quantity(out, c->quantity);
    add_words(out, c->unit);
    add_whole(out, c->price, c->has_price);
    add_whole(out, c->base, c->has_base);
    add_whole(out, c->share, c->has_base);
    add_whole(out, c->amount, c->has_amount);
    add_whole(out, c->list_line, c->list_line > 0);
    for (int i = 0; i < EXTENDER_HOLES; i++)
        add_number(out, c->holes[i], c->holes[i] > 0);
    if (c->refusals)
        add_refusals(out, c->refusals);
    else
        add_words(out, c->note);
    text_add(out, "\n");
}

static void add_piece(text *out, const planned *side, const tside_item *item)
{
    char mark[TSIDE_MARK_SIZE];
    text marks = {NULL, 0, 0};
    hole holes[EXTENDER_HOLES];
    cells c = {.part = "piece",
               .file = side->file,
               .side = side->wanted.name,
               .what = tside_item_text((int)item->code),
               .at = choice_text(row_named(TSIDE_KIND_ITEM, "at", NULL), (int)item->at),
               .hand = choice_text(row_named(TSIDE_KIND_ITEM, "hand", NULL), (int)item->hand),
               .count = item->count,
               .length = item->length,
               .width = item->width,
               .size = item->size,
               .wall = item->wall,
               .mass = item->mass};
    for (int i = 0; i < item->count && *item_mark(side, item, i, mark); i++)
        text_add(&marks, "%s%s", i ? " " : "", mark);
    c.mark = text_of(&marks);
    if (item->code == TSIDE_ITEM_EXTENDER) {
        extender_holes(side, end_of_place(item->at), holes);
        for (int i = 0; i < EXTENDER_HOLES; i++)
            c.holes[i] = holes[i].from_top;
    }
    add_row(out, &c);
    text_free(&marks);
}

/* An article's measures into the columns that they are of; what has none, such as a torque, into the note. */
static void set_article(cells *c, const article *a, text *grade, text *note)
{
    double *const columns[] = {&c->size, &c->wall, &c->length, &c->width};
    static const char *const names[] = {"size", "wall", "length", "width"};
    c->what = a->what->name;
    c->grade = grade_text(a, 0, grade);
    for (int i = 0; i < MEASURES && a->what->measures[i]; i++) {
        int placed = 0;
        for (int k = 0; k < 4; k++)
            if (!strcmp(a->what->measures[i], names[k])) {
                *columns[k] = a->measures[i];
                placed = 1;
            }
        if (!placed && a->measures[i] > 0) {
            text_add(note, "%s%s ", note->length ? ", " : "", a->what->measures[i]);
            add_json_number(note, a->measures[i]);
            text_add(note, " %s", a->what->units[i]);
        }
    }
    c->note = text_of(note);
}

static void add_article(text *out, cells *c, const article *a, const char *more)
{
    text grade = {NULL, 0, 0}, note = {NULL, 0, 0};
    set_article(c, a, &grade, &note);
    text_add(&note, "%s", more);
    c->note = text_of(&note);
    add_row(out, c);
    text_free(&grade);
    text_free(&note);
}

static void add_sticks(text *out, const cutting *cut)
{
    for (int i = 0; i < cut->stick_count; i++) {
        const tside_stick *stick = cut->sticks + i;
        article a = cut->material;
        text marks = {NULL, 0, 0};
        int marked = 0;
        a.measures[stick_place(a.what)] = stick_length(cut, i);
        for (int nth = 0; nth < stick->count; nth++) {
            text_add(&marks, "%s", nth ? "; " : "");
            marked += add_stick_marks(&marks, cut, i, nth, " ");
        }
        add_article(out,
                    &(cells){.part = "stick",
                             .mark = marked ? text_of(&marks) : "",
                             .count = stick->count,
                             .offcut = stick->offcut,
                             .has_offcut = 1},
                    &a, i < cut->in_hand ? "in hand" : "");
        text_free(&marks);
        for (int k = 0; k < cut->cut_count; k++)
            if (cut->taken[i * cut->cut_count + k])
                add_row(out, &(cells){.part = "cut",
                                      .what = tside_item_text(cut->codes[k]),
                                      .count = cut->taken[i * cut->cut_count + k],
                                      .length = cut->cuts[k].length,
                                      .note = "from each such stick"});
    }
}

static void set_need(cells *c, const article *a)
{
    c->count = a->count;
    c->metres = a->metres;
    c->square_metres = a->square_metres;
}

/* An article; of what is sold in packs, coils or rolls the note tells of which, and what is left. */
static void add_sold(text *out, cells *c, const quote_line *line)
{
    const price_row *row = line->row;
    const article a = sold_on(line);
    text grade = {NULL, 0, 0}, note = {NULL, 0, 0};
    set_article(c, &a, &grade, &note);
    if (is_of_size(row->unit)) {
        text_add(&note, "%s", note.length ? ", " : "");
        add_unit(&note, row, 0);
        c->offcut = line->left;
        c->has_offcut = is_sold_whole(row->unit) && row->unit != PACK;
    }
    if (row->unit == PACK)
        text_add(&note, ", left %.0f", line->left);
    c->note = text_of(&note);
    add_row(out, c);
    text_free(&grade);
    text_free(&note);
}

/* Of the customer's copy without what tells cost: the price of a unit, and where that stands. */
static void add_priced(text *out, const quote_line *line, int for_customer)
{
    const int is_share = line->row->kind == MARKUP || line->row->kind == TAX;
    cells c = {.part = kind_names[line->row->kind],
               .what = line->row->name,
               .unit = unit_name(line->row->unit),
               .list_line = for_customer ? 0 : line->row->line,
               .quantity = line->quantity,
               .has_quantity = !is_share,
               .price = line->row->amount,
               .has_price = !is_share && !for_customer,
               .base = line->base,
               .share = line->row->share,
               .has_base = is_share,
               .amount = line->amount,
               .has_amount = 1};
    if (line->bought)
        add_sold(out, &c, line);
    else
        add_row(out, &c);
}

/* By a price list in its packs, coils and rolls, else as much as is needed. */
static void add_bought(text *out, const quote_line *line)
{
    cells c = {.part = "buy", .mass = line_mass(line)};
    if (is_of_size(line->row->unit)) {
        c.unit = unit_name(line->row->unit);
        c.quantity = line->quantity;
        c.has_quantity = 1;
    } else {
        set_need(&c, line->bought);
    }
    add_sold(out, &c, line);
}

static void add_sum(text *out, const char *what, cents amount)
{
    add_row(out, &(cells){.part = "sum", .what = what, .amount = amount, .has_amount = 1});
}

static void add_stops(text *out, const planned *side)
{
    char sentences[TSIDE_FINDINGS][STOP_SIZE];
    const int count = stops_of(side, sentences);
    for (int i = 0; i < count; i++)
        add_row(out, &(cells){.part = "stop", .file = side->file, .side = side->wanted.name, .note = sentences[i]});
}

static void add_side(text *out, const planned *side, int with_pieces)
{
    if (is_ordered(side)) {
        add_stops(out, side);
        for (int k = 0; with_pieces && k < side->item_count; k++)
            add_piece(out, side, side->items + k);
    } else {
        add_row(out, &(cells){.part = "refused",
                              .file = side->file,
                              .side = side->wanted.name,
                              .refusals = &side->refusals.lines});
    }
}

/* Of all that is bought; the note names what is not in it. */
static void add_mass(text *out, const answer *a)
{
    text unknown = {NULL, 0, 0};
    cells c = {.part = "mass", .mass = mass_bought(a->order, a->price, &unknown)};
    c.note = text_of(&unknown);
    add_row(out, &c);
    text_free(&unknown);
}

static void add_sums(text *out, const quote *q)
{
    add_sum(out, "materials", q->materials);
    add_sum(out, "labour", q->labour);
    add_sum(out, "net", q->net);
    add_sum(out, "tax", q->tax);
    add_sum(out, "total", q->total);
}

static void add_said(text *out, const char *what, const char *words)
{
    add_row(out, &(cells){.part = "quotation", .what = what, .note = words});
}

static void add_letter(text *out, const letter *l)
{
    const char *words;
    add_said(out, "number", l->number);
    add_said(out, "date", l->date);
    add_said(out, "valid until", l->valid_until);
    for (int i = 0; (words = letter_row(l, WHOSE, i)) != NULL; i++)
        add_said(out, "whose", words);
    for (int i = 0; (words = letter_row(l, TERMS, i)) != NULL; i++)
        add_said(out, "terms", words);
}

/* What whoever buys and cuts must know, and the customer need not. */
static void add_order(text *out, const answer *a)
{
    const order *o = a->order;
    const quote *q = a->price;
    for (int i = 0; q && i < q->count; i++)
        if (q->lines[i].bought)
            add_bought(out, q->lines + i);
    for (int i = 0; !q && i < o->article_count; i++) {
        cells c = {.part = "buy", .mass = o->articles[i].mass};
        set_need(&c, o->articles + i);
        add_article(out, &c, o->articles + i, "");
    }
    add_mass(out, a);
    for (int i = 0; i < o->cutting_count; i++)
        add_sticks(out, o->cuttings + i);
}

void print_table(text *out, const answer *a)
{
    const quote *q = a->price;
    text_add(out, "%s", header);
    if (a->letter)
        add_letter(out, a->letter);
    for (size_t i = 0; i < a->order->all->count; i++)
        add_side(out, a->order->all->sides[i], !a->letter);
    if (!a->letter)
        add_order(out, a);
    for (int i = 0; q && i < q->count; i++)
        add_priced(out, q->lines + i, a->letter != NULL);
    if (q)
        add_sums(out, q);
    if (*a->no_price)
        add_row(out, &(cells){.part = "no price", .note = a->no_price});
}
