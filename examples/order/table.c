/* SPDX-License-Identifier: MIT */
/*
 * CSV by RFC 4180, but for its line ends, which are plain: one row a line, always SI. Parts, in order: of each side
 * stop and piece, or refused, buy, stick (cut alike) and its cuts, and of a price its lines and sums. What a row does
 * not have is empty.
 */
#include <string.h>

#include "answer.h"
#include "drilling.h"
#include "mark.h"
#include "names.h"
#include "writer.h"

static const char header[] =
    "part,file,side,mark,what,at,hand,grade,count,length [m],width [m],size [m],wall [m],total "
    "length [m],total area [m2],offcut [m],"
    "quantity,unit,price [cent],base [cent],share [millionth],amount [cent],list line,"
    "eye_from_top [m],bow_from_top [m],member_from_top [m],note\n";

/* One row; what is 0 or NULL stays empty. */
typedef struct cells {
    const char *part, *file, *side, *mark, *what, *at, *hand, *grade, *unit, *note;
    const text *refusals; /* in place of the note */
    int count, list_line;
    double length, width, size, wall, metres, square_metres, offcut, holes[EXTENDER_HOLES];
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
               .wall = item->wall};
    for (int i = 0; i < item->count && *item_mark(side, item, i, mark); i++)
        text_add(&marks, "%s%s", i ? " " : "", mark);
    c.mark = text_of(&marks);
    if (item->code == TSIDE_ITEM_EXTENDER) {
        extender_holes(side, item->at == TSIDE_AT_FREE_END ? TSIDE_FREE_END : TSIDE_DRIVE_END, holes);
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

static void add_article(text *out, cells *c, const article *a)
{
    text grade = {NULL, 0, 0}, note = {NULL, 0, 0};
    set_article(c, a, &grade, &note);
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
        a.measures[a.has_material ? 2 : 0] = cut->stock.lengths[stick->stock].length;
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
                    &a);
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

static void add_priced(text *out, const quote_line *line)
{
    const int is_share = line->row->kind == MARKUP || line->row->kind == TAX;
    cells c = {.part = kind_names[line->row->kind],
               .what = line->row->name,
               .unit = unit_name(line->row->unit),
               .list_line = line->row->line,
               .quantity = line->quantity,
               .has_quantity = !is_share,
               .price = line->row->amount,
               .has_price = !is_share,
               .base = line->base,
               .share = line->row->share,
               .has_base = is_share,
               .amount = line->amount,
               .has_amount = 1};
    if (line->bought)
        add_article(out, &c, line->bought);
    else
        add_row(out, &c);
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

static void add_side(text *out, const planned *side)
{
    if (is_planned(side)) {
        add_stops(out, side);
        for (int k = 0; k < side->item_count; k++)
            add_piece(out, side, side->items + k);
    } else {
        add_row(out, &(cells){.part = "refused",
                              .file = side->file,
                              .side = side->wanted.name,
                              .refusals = &side->refusals.lines});
    }
}

void print_table(text *out, const answer *a)
{
    const order *o = a->order;
    const quote *q = a->price;
    text_add(out, "%s", header);
    for (size_t i = 0; i < o->all->count; i++)
        add_side(out, o->all->sides[i]);
    for (int i = 0; i < o->article_count; i++)
        add_article(out,
                    &(cells){.part = "buy",
                             .count = o->articles[i].count,
                             .metres = o->articles[i].metres,
                             .square_metres = o->articles[i].square_metres},
                    o->articles + i);
    for (int i = 0; i < o->cutting_count; i++)
        add_sticks(out, o->cuttings + i);
    for (int i = 0; q && i < q->count; i++)
        add_priced(out, q->lines + i);
    if (q) {
        add_sum(out, "materials", q->materials);
        add_sum(out, "labour", q->labour);
        add_sum(out, "net", q->net);
        add_sum(out, "tax", q->tax);
        add_sum(out, "total", q->total);
    }
    if (*a->no_price)
        add_row(out, &(cells){.part = "no price", .note = a->no_price});
}
