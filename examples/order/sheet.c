/* SPDX-License-Identifier: MIT */
/* The order, for whoever buys and cuts. */
#include <string.h>

#include "paper.h"
#include "drilling.h"
#include "hand.h"
#include "mark.h"

/* An offcut shorter than this is no longer worth a line: this program's choice. */
#define SHORTEST_OFFCUT 0.05

/* By the list's packs, coils and rolls where it sells by these, with what is left of them. */
static void print_sold(text *out, const quote_line *line, pen *p)
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
    print_bought(out, text_of(&much), &a, text_of(&more), p);
    text_free(&much);
    text_free(&more);
}

static void print_buying(text *out, const answer *a, pen *p)
{
    const order *o = a->order;
    print_title(out, "BUY");
    for (int i = 0; a->price && i < a->price->count; i++)
        if (a->price->lines[i].bought)
            print_sold(out, a->price->lines + i, p);
    for (int i = 0; !a->price && i < o->article_count; i++)
        print_bought(out, o->articles[i].count ? plain(p, o->articles[i].count, 0) : tape(p, o->articles[i].metres),
                     o->articles + i, "", p);
}

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

static void print_bound(text *out, const cutting *c, pen *p)
{
    const tside_cut_plan *plan = &c->plan;
    const char *rest = c->in_hand ? " for what the stock in hand leaves to cut" : "";
    if (!plan->sticks)
        text_say(out, "    ", "Nothing is bought: the stock in hand gives all.");
    else if (plan->fewest)
        text_say(out, "    ", "%s bought: proven least%s, and in the fewest sticks.", tape(p, plan->stock), rest);
    else if (plan->proven)
        text_say(out, "    ", "%s bought: proven least%s.", tape(p, plan->stock), rest);
    else
        text_say(out, "    ",
                 "%s bought: not proven least; no plan%s takes less than %s, so at most %s might be saved.",
                 tape(p, plan->stock), rest, tape(p, plan->lower_bound), tape(p, plan->stock - plan->lower_bound));
}

/* Which pieces sticks that are cut alike give, stick by stick. */
static void print_marks(text *out, const cutting *c, int stick)
{
    text words = {NULL, 0, 0};
    int count = 0;
    for (int nth = 0; nth < c->sticks[stick].count; nth++) {
        text_add(&words, "%s", nth ? "; " : "");
        count += add_stick_marks(&words, c, stick, nth, " + ");
    }
    if (count)
        text_say(out, "                           ", "mark %s", text_of(&words));
    text_free(&words);
}

static void print_cutting(text *out, const cutting *c, pen *p)
{
    text words = {NULL, 0, 0};
    add_article(&words, &c->material, p->us);
    text_wrap(out, "  ", text_of(&words));
    for (int i = 0; i < c->stick_count; i++) {
        const tside_stick *stick = c->sticks + i;
        text label = {NULL, 0, 0};
        text_add(&label, "    %3d of %-14s  ", stick->count, tape(p, stick_length(c, i)));
        text_cut(&words, 0);
        add_pattern(&words, c, i, p);
        text_add(&words, "; left %s%s", stick->offcut > 0 ? tape(p, stick->offcut) : "nothing",
                 i < c->in_hand ? "; in hand" : "");
        text_wrap(out, text_of(&label), text_of(&words));
        text_free(&label);
        print_marks(out, c, i);
    }
    text_free(&words);
    print_bound(out, c, p);
}

static void print_cuttings(text *out, const order *o, pen *p)
{
    print_title(out, "CUT, STICK BY STICK");
    if (o->cutting_count)
        text_say(out, "  ",
                 "Each cut loses %s, each tube %s before its first piece. Marks of one stick are joined by +, the next "
                 "stick's follow a semicolon. Mark each piece as soon as it is cut.",
                 fine(p, o->cuttings->stock.kerf), fine(p, o->cuttings->stock.trim));
    for (int i = 0; i < o->cutting_count; i++)
        print_cutting(out, o->cuttings + i, p);
}

/* "extender 2 x 0.12 in, 6 ft 3 in, right hand, drive's end; drill at ..." */
static void add_piece(text *t, const planned *side, const tside_item *item, pen *p)
{
    static const char *const hands[] = {"", ", right hand", ", left hand"}, *const places[] = {"", ", drive's end",
                                                                                               ", free end"};
    const int is_bolt = item->code == TSIDE_ITEM_BOW_BOLT || item->code == TSIDE_ITEM_MEMBER_BOLT;
    text_add(t, "%s", tside_item_text((int)item->code));
    if (item->shape != TSIDE_NO_TUBE)
        text_add(t, " %s", cross_section(p, item->size, item->wall));
    else if (item->by == TSIDE_BY_SHEET)
        text_add(t, " %s wide", tape(p, item->width));
    else if (item->size > 0)
        text_add(t, " %s", bolt_name(p, item->size, "", is_bolt ? item->length : 0));
    if (item->length > 0 && !is_bolt)
        text_add(t, ", %s", tape(p, item->length));
    text_add(t, "%s%s", hands[item->hand], places[item->at]);
    if (item->mass_given)
        text_add(t, ", %s%s", quantity(p, item->mass, "kg"), item->count > 1 ? " each" : "");
    if (item->code == TSIDE_ITEM_EXTENDER) {
        text_add(t, "; ");
        add_drilling(t, p, side, end_of_place(item->at));
    }
}

static void print_item(text *out, const planned *side, const tside_item *item, pen *p)
{
    text label = {NULL, 0, 0}, marks = {NULL, 0, 0}, words = {NULL, 0, 0};
    add_marks(&marks, side, item);
    add_piece(&words, side, item, p);
    text_add(&label, "  %4d %-14s ", item->count, text_of(&marks));
    text_wrap(out, text_of(&label), text_of(&words));
    text_free(&label);
    text_free(&marks);
    text_free(&words);
}

static void print_pieces(text *out, const order *o, pen *p)
{
    print_title(out, "PIECES, SIDE BY SIDE");
    text_say(
        out, "  ",
        "Mark an extender at its top end, on the face away from the wall. Hand: seen from outside the wall it is "
        "bolted to, a right-hand extender rises to the right. Measure each hole from the top end, and drill square "
        "through both walls.");
    for (size_t i = 0; i < o->all->count; i++) {
        const planned *side = o->all->sides[i];
        if (!is_planned(side))
            continue;
        print_side(out, side);
        text_add(out, "  %4s %-14s %s\n", "No", "Mark", "Piece, length each");
        for (int k = 0; k < side->item_count; k++)
            print_item(out, side, side->items + k, p);
    }
}

static void print_left_over(text *out, const order *o, pen *p)
{
    print_title(out, "LEFT OVER");
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
        text_add(&words, "%s; in all %s left, and %s lost in cuts and ends", *before ? "" : "nothing worth keeping",
                 tape(p, offcuts_of(c)), tape(p, lost_of(c)));
        text_wrap(out, "  ", text_of(&words));
        text_free(&words);
    }
}

/* What of the stock in hand stays as it is. */
static void print_unused(text *out, const hand *in_hand, pen *p)
{
    for (int i = 0; i < in_hand->count; i++) {
        const hand_row *row = in_hand->rows + i;
        if (row->used < row->count)
            text_say(out, "  ", "in hand, not used: %d of %s %s", row->count - row->used, row->what.what->name,
                     tape(p, row->length));
    }
}

static void print_mass(text *out, const answer *a, pen *p)
{
    text unknown = {NULL, 0, 0};
    const double mass = mass_bought(a->order, a->price, &unknown);
    print_title(out, "MASS, FOR FREIGHT");
    text_say(out, "  ", "%s%s of what is bought.%s%s%s", unknown.length ? "At least " : "", quantity(p, mass, "kg"),
             unknown.length ? " Not in it, for want of a mass: " : "", text_of(&unknown), unknown.length ? "." : "");
    text_free(&unknown);
}

static void print_priced(text *out, const quote_line *line, int us)
{
    text words = {NULL, 0, 0};
    if (line->bought) {
        const article a = sold_on(line);
        add_article(&words, &a, us);
    } else {
        text_add(&words, "%s", line->row->name);
    }
    text_wrap(out, "  ", text_of(&words));
    text_cut(&words, 0);
    text_add(&words, "    ");
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
    print_sum(out, text_of(&words), line->amount);
    text_free(&words);
}

static void print_lines(text *out, const quote *q, price_kind kind, int us)
{
    for (int i = 0; i < q->count; i++)
        if (q->lines[i].row->kind == kind)
            print_priced(out, q->lines + i, us);
}

static void print_price(text *out, const quote *q, int us)
{
    print_price_title(out, q);
    print_lines(out, q, MATERIAL, us);
    print_sum(out, "MATERIALS", q->materials);
    print_lines(out, q, LABOUR, us);
    print_sum(out, "LABOUR", q->labour);
    print_lines(out, q, MARKUP, us);
    print_sum(out, "NET", q->net);
    print_lines(out, q, TAX, us);
    print_sum(out, "TOTAL", q->total);
    text_wrap(out, "  ", rounding);
}

void print_text(text *out, const answer *a, int us)
{
    static const char *const cautions[] = {
        "Measure on the site before you buy; sizes that the files do not give are usual values: tunnelside-plan lists "
        "them.",
        "Check every length before the first cut: mark, measure again, then cut. Wear eye and hand protection; deburr "
        "tube that film touches.",
        "Bolts for their grip and screws by the maker's rating; hollow tube is crushed by a bolt that is tightened as "
        "in solid metal.",
        "This order is for choosing parts, not a certificate. Local codes, makers' ratings and instructions, and "
        "licensed practice come first.",
    };
    pen p = {.us = us};
    print_sides(out, a->order, &p);
    print_buying(out, a, &p);
    print_cuttings(out, a->order, &p);
    print_pieces(out, a->order, &p);
    print_left_over(out, a->order, &p);
    print_unused(out, a->in_hand, &p);
    print_mass(out, a, &p);
    if (a->price)
        print_price(out, a->price, us);
    if (*a->no_price)
        text_say(out, "\nNO PRICE  ", "%s.", a->no_price);
    print_cautions(out, cautions, sizeof cautions / sizeof *cautions);
}
