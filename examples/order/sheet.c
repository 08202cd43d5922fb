/* SPDX-License-Identifier: MIT */
/* The order, for whoever buys and cuts. */
#include <string.h>

#include "drilling.h"
#include "hand.h"
#include "mark.h"
#include "words.h"

/* An offcut shorter than this is no longer worth a line: this program's choice. */
#define SHORTEST_OFFCUT 0.05

/* --- whose it is --- */

static const char *name_of(const planned *side)
{
    return *side->wanted.name ? side->wanted.name : "without a name";
}

/* "job: side (file)", and before it the side's letters; what a page holds has no file. */
static void put_side_of(paper *out, const planned *side)
{
    const request *wanted = &side->wanted;
    char mark[TSIDE_MARK_SIZE];
    text words = {NULL, 0, 0};
    text_add(&words, "%s%s%s", wanted->job ? wanted->job : "", wanted->job && *wanted->job ? ": " : "", name_of(side));
    if (*side->file)
        text_add(&words, " (%s)", side->file);
    put_value(out, side_mark(side, mark), text_of(&words));
    text_free(&words);
}

static void put_head(paper *out, const order *o, pen *p)
{
    text whose = {NULL, 0, 0};
    text_add(&whose, "for %d side%s", o->sides, o->sides == 1 ? "" : "s");
    put_page(out, "ORDER", text_of(&whose));
    text_free(&whose);
    for (size_t i = 0; i < o->all->count; i++)
        if (is_ordered(o->all->sides[i]))
            put_side_of(out, o->all->sides[i]);
    put_stops_of_order(out, o, p);
    if (o->refused)
        put_fact(out, "INCOMPLETE", "%d side%s refused, and not in this order.", o->refused,
                 o->refused == 1 ? " is" : "s are");
}

/* --- what to buy --- */

/* How much of what; more: "" or what follows its name. */
static void put_bought(paper *out, const char *much, const article *a, const char *more, pen *p)
{
    text words = {NULL, 0, 0};
    add_article(&words, a, p->us);
    text_add(&words, "%s", more);
    put_count(out, much, text_of(&words));
    text_free(&words);
}

/* By the list's packs, coils and rolls where it sells by these, with what is left of them. */
static void put_sold(paper *out, const quote_line *line, pen *p)
{
    const article a = sold_on(line);
    const int whole = is_sold_whole(line->row->unit);
    text much = {NULL, 0, 0}, more = {NULL, 0, 0};
    add_sold(&much, line, p);
    if (is_of_size(line->row->unit)) {
        text_add(&more, ", ");
        add_unit(&more, line->row, p->us);
    }
    if (whole)
        text_add(&more, "; left %s",
                 line->left <= 0           ? "nothing"
                 : line->row->unit == PACK ? plain(p, line->left, 0)
                                           : tape(p, line->left));
    put_bought(out, text_of(&much), &a, text_of(&more), p);
    text_free(&much);
    text_free(&more);
}

static void put_buying(paper *out, const answer *a, pen *p)
{
    const order *o = a->order;
    put_part(out, "BUY");
    for (int i = 0; a->price && i < a->price->count; i++)
        if (a->price->lines[i].bought)
            put_sold(out, a->price->lines + i, p);
    for (int i = 0; !a->price && i < o->article_count; i++)
        put_bought(out, o->articles[i].count ? plain(p, o->articles[i].count, 0) : tape(p, o->articles[i].metres),
                   o->articles + i, "", p);
}

/* --- how to cut it --- */

/* Cuts that print alike, such as guide pipes a hair apart, are one. */
static int prints_as(const cutting *c, int one, int other, pen *p)
{
    return c->codes[one] == c->codes[other] && !strcmp(tape(p, c->cuts[one].length), tape(p, c->cuts[other].length));
}

/* "2 x guide pipe 4 ft 11 13/16 in + 1 x roll bar ..." */
static void add_pattern(text *t, const cutting *c, int stick, pen *p)
{
    const int *taken = c->taken + stick * c->cut_count;
    const char *before = "";
    for (int k = 0; k < c->cut_count; k++) {
        int count = 0, said = 0;
        for (int i = 0; i < c->cut_count; i++)
            if (taken[i] && prints_as(c, i, k, p)) {
                count += taken[i];
                said |= i < k;
            }
        if (taken[k] && !said) {
            text_add(t, "%s%d x %s %s", before, count, tside_item_text(c->codes[k]), tape(p, c->cuts[k].length));
            before = " + ";
        }
    }
}

static void put_bound(paper *out, const cutting *c, pen *p)
{
    const tside_cut_plan *plan = &c->plan;
    const char *rest = c->in_hand ? " for what the stock in hand leaves to cut" : "";
    if (!plan->sticks)
        put_remark(out, "Nothing is bought: the stock in hand gives all.");
    else if (plan->fewest)
        put_remark(out, "%s bought: proven least%s, and in the fewest sticks.", tape(p, plan->stock), rest);
    else if (plan->proven)
        put_remark(out, "%s bought: proven least%s.", tape(p, plan->stock), rest);
    else
        put_remark(out, "%s bought: not proven least; no plan%s takes less than %s, so at most %s might be saved.",
                   tape(p, plan->stock), rest, tape(p, plan->lower_bound), tape(p, plan->stock - plan->lower_bound));
}

/* Which pieces sticks that are cut alike give, stick by stick. */
static void put_stick_marks(paper *out, const cutting *c, int stick)
{
    text words = {NULL, 0, 0};
    int count = 0;
    for (int nth = 0; nth < c->sticks[stick].count; nth++) {
        text_add(&words, "%s", nth ? "; " : "");
        count += add_stick_marks(&words, c, stick, nth, " + ");
    }
    if (count)
        put_remark(out, "mark %s", text_of(&words));
    text_free(&words);
}

static void put_cutting(paper *out, const cutting *c, pen *p)
{
    text words = {NULL, 0, 0}, sticks = {NULL, 0, 0};
    add_article(&words, &c->material, p->us);
    put_step(out, "%s", text_of(&words));
    for (int i = 0; i < c->stick_count; i++) {
        const tside_stick *stick = c->sticks + i;
        text_cut(&sticks, 0);
        text_add(&sticks, "%d of %s", stick->count, tape(p, stick_length(c, i)));
        text_cut(&words, 0);
        add_pattern(&words, c, i, p);
        text_add(&words, "; left %s%s", stick->offcut > 0 ? tape(p, stick->offcut) : "nothing",
                 i < c->in_hand ? "; in hand" : "");
        put_value(out, text_of(&sticks), text_of(&words));
        put_stick_marks(out, c, i);
    }
    text_free(&sticks);
    text_free(&words);
    put_bound(out, c, p);
}

static void put_cuttings(paper *out, const order *o, pen *p)
{
    put_part(out, "CUT, STICK BY STICK");
    if (o->cutting_count)
        put_words(out,
                  "Each cut loses %s, each tube %s before its first piece. Marks of one stick are joined by +, the "
                  "next stick's follow a semicolon. Mark each piece as soon as it is cut.",
                  fine(p, o->cuttings->stock.kerf), fine(p, o->cuttings->stock.trim));
    for (int i = 0; i < o->cutting_count; i++)
        put_cutting(out, o->cuttings + i, p);
}

/* --- the pieces --- */

/* "extender 2 x 0.12 in, 6 ft 3 in, right hand, drive's end; drill at ..." */
static void add_piece(text *t, const planned *side, const tside_item *item, pen *p)
{
    static const char *const hands[] = {"", ", right hand", ", left hand"}, *const places[] = {"", ", drive's end",
                                                                                               ", free end"};
    add_what(t, p, item);
    text_add(t, "%s%s", hands[item->hand], places[item->at]);
    if (item->mass_given)
        text_add(t, ", %s%s", quantity(p, item->mass, "kg"), item->count > 1 ? " each" : "");
    if (item->code == TSIDE_ITEM_EXTENDER) {
        text_add(t, "; ");
        add_drilling(t, p, side, end_of_place(item->at));
    }
}

static void put_item(paper *out, const planned *side, const tside_item *item, pen *p)
{
    text marks = {NULL, 0, 0}, words = {NULL, 0, 0};
    const char *cells[3];
    add_marks(&marks, side, item);
    add_piece(&words, side, item, p);
    cells[0] = plain(p, item->count, 0);
    cells[1] = text_of(&marks);
    cells[2] = text_of(&words);
    put_cells(out, 3, cells);
    text_free(&marks);
    text_free(&words);
}

static void put_pieces_of(paper *out, const planned *side, pen *p)
{
    static const char *const titles[] = {"No", "Mark", "Piece, length each"};
    put_side_of(out, side);
    put_columns(out, NULL, 1, 2, 3, titles);
    for (int k = 0; k < side->item_count; k++)
        put_item(out, side, side->items + k, p);
}

static void put_pieces(paper *out, const order *o, pen *p)
{
    put_part(out, "PIECES, SIDE BY SIDE");
    put_words(out, "Mark an extender at its top end, on the face away from the wall. Hand: seen from outside the wall "
                   "it is bolted to, a right-hand extender rises to the right. Measure each hole from the top end, and "
                   "drill square through both walls.");
    for (size_t i = 0; i < o->all->count; i++)
        if (is_ordered(o->all->sides[i]))
            put_pieces_of(out, o->all->sides[i], p);
}

/* --- what is left --- */

static void put_left_over(paper *out, const order *o, pen *p)
{
    put_part(out, "LEFT OVER");
    for (int i = 0; i < o->cutting_count; i++) {
        const cutting *c = o->cuttings + i;
        const char *before = "";
        text words = {NULL, 0, 0};
        add_article(&words, &c->material, p->us);
        text_add(&words, ": ");
        for (int k = 0; k < c->stick_count; k++)
            if (c->sticks[k].offcut >= SHORTEST_OFFCUT) {
                text_add(&words, "%s%d of %s", before, c->sticks[k].count, tape(p, c->sticks[k].offcut));
                before = ", ";
            }
        put_words(out, "%s%s; in all %s left, and %s lost in cuts and ends", text_of(&words),
                  *before ? "" : "nothing worth keeping", tape(p, offcuts_of(c)), tape(p, lost_of(c)));
        text_free(&words);
    }
}

/* What of the stock in hand stays as it is. */
static void put_unused(paper *out, const hand *in_hand, pen *p)
{
    for (int i = 0; i < in_hand->count; i++) {
        const hand_row *row = in_hand->rows + i;
        if (row->used < row->count)
            put_words(out, "in hand, not used: %d of %s %s", row->count - row->used, row->what.what->name,
                      tape(p, row->length));
    }
}

static void put_mass(paper *out, const answer *a, pen *p)
{
    text unknown = {NULL, 0, 0};
    const double mass = mass_bought(a->order, a->price, &unknown);
    put_part(out, "MASS, FOR FREIGHT");
    put_words(out, "%s%s of what is bought.%s%s%s", unknown.length ? "At least " : "", quantity(p, mass, "kg"),
              unknown.length ? " Not in it, for want of a mass: " : "", text_of(&unknown), unknown.length ? "." : "");
    text_free(&unknown);
}

/* --- its price --- */

static void put_amount(paper *out, const char *label, cents amount)
{
    text money = {NULL, 0, 0};
    print_money(&money, amount);
    put_sum(out, label, text_of(&money));
    text_free(&money);
}

static void put_priced(paper *out, const quote_line *line, int us)
{
    text words = {NULL, 0, 0};
    if (line->bought) {
        const article a = sold_on(line);
        add_article(&words, &a, us);
    } else {
        text_add(&words, "%s", line->row->name);
    }
    put_words(out, "%s", text_of(&words));
    text_cut(&words, 0);
    text_add(&words, "  ");
    if (line->row->kind == MARKUP || line->row->kind == TAX) {
        print_share(&words, line->row->share);
        text_add(&words, " of %s, ", unit_name(line->row->unit));
        print_money(&words, line->base);
    } else {
        print_quantity(&words, line->quantity);
        text_add(&words, " at ");
        print_money(&words, line->row->amount);
        text_add(&words, " %s", line->row->unit == EACH ? "" : "per ");
        add_unit(&words, line->row, us);
    }
    put_amount(out, text_of(&words), line->amount);
    text_free(&words);
}

static void put_lines(paper *out, const quote *q, price_kind kind, int us)
{
    for (int i = 0; i < q->count; i++)
        if (q->lines[i].row->kind == kind)
            put_priced(out, q->lines + i, us);
}

static void put_price(paper *out, const quote *q, int us)
{
    text title = {NULL, 0, 0};
    add_price_title(&title, q);
    put_part(out, text_of(&title));
    text_free(&title);
    put_lines(out, q, MATERIAL, us);
    put_amount(out, "MATERIALS", q->materials);
    put_lines(out, q, LABOUR, us);
    put_amount(out, "LABOUR", q->labour);
    put_lines(out, q, MARKUP, us);
    put_amount(out, "NET", q->net);
    put_lines(out, q, TAX, us);
    put_amount(out, "TOTAL", q->total);
    put_words(out, "%s", rounding);
}

static void put_cautions(paper *out)
{
    put_part(out, "CAUTIONS");
    put_caution(out, "Measure on the site before you buy; sizes that the files do not give are usual values: "
                     "tunnelside-plan lists them.");
    put_caution(out, "Check every length before the first cut: mark, measure again, then cut. Wear eye and hand "
                     "protection; deburr tube that film touches.");
    put_caution(out, "Bolts for their grip and screws by the maker's rating; hollow tube is crushed by a bolt that is "
                     "tightened as in solid metal.");
    put_caution(out, "This order is for choosing parts, not a certificate. Local codes, makers' ratings and "
                     "instructions, and licensed practice come first.");
}

paper order_sheet(const answer *a, int us)
{
    pen p = {.us = us};
    paper made = {.lines = NULL};
    put_head(&made, a->order, &p);
    put_buying(&made, a, &p);
    put_cuttings(&made, a->order, &p);
    put_pieces(&made, a->order, &p);
    put_left_over(&made, a->order, &p);
    put_unused(&made, a->in_hand, &p);
    put_mass(&made, a, &p);
    if (a->price)
        put_price(&made, a->price, us);
    if (*a->no_price) {
        put_part(&made, "NO PRICE");
        put_words(&made, "%s.", a->no_price);
    }
    put_cautions(&made);
    return made;
}
