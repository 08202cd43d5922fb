/* SPDX-License-Identifier: MIT */
/* The order, for whoever buys and cuts. */
#include <string.h>

#include "answer.h"
#include "units.h"

/* An offcut shorter than this is no longer worth a line: this program's choice. */
#define SHORTEST_OFFCUT 0.05

/* "round tube 1.315 in x 0.083 in x 24 ft 0 in, steel 344.738 MPa" */
static void add_article(text *t, const article *a, int us)
{
    text sizes = {NULL, 0, 0}, grade = {NULL, 0, 0};
    add_sizes(&sizes, a, us);
    text_add(t, "%s%s%s", a->what->name, sizes.length ? " " : "", text_of(&sizes));
    if (a->has_material)
        text_add(t, ", %s", grade_text(a, us, &grade));
    text_free(&sizes);
    text_free(&grade);
}

static void print_title(text *out, const char *title)
{
    text_add(out, "\n%s\n", title);
}

/* Nobody should buy what will not hold. */
static void print_stops(text *out, const planned *side)
{
    char sentences[TSIDE_FINDINGS][STOP_SIZE];
    const int count = stops_of(side, sentences);
    for (int i = 0; i < count; i++)
        text_say(out, "STOP   ", "%s: %s. Mend it before you buy; tunnelside-plan says more.",
                 *side->wanted.name ? side->wanted.name : side->file, sentences[i]);
}

static void print_sides(text *out, const order *o)
{
    text_say(out, "ORDER  ", "for %d side%s", o->sides, o->sides == 1 ? "" : "s");
    for (size_t i = 0; i < o->all->count; i++) {
        const request *wanted = &o->all->sides[i]->wanted;
        if (is_planned(o->all->sides[i]))
            text_say(out, "       ", "%s%s%s (%s)", wanted->job ? wanted->job : "",
                     wanted->job && *wanted->job ? ": " : "", *wanted->name ? wanted->name : "without a name",
                     o->all->sides[i]->file);
    }
    for (size_t i = 0; i < o->all->count; i++)
        if (is_planned(o->all->sides[i]))
            print_stops(out, o->all->sides[i]);
    if (o->refused)
        text_say(out, "INCOMPLETE  ", "%d side%s refused, and not in this order.", o->refused,
                 o->refused == 1 ? " is" : "s are");
}

static void print_buying(text *out, const order *o, pen *p)
{
    print_title(out, "BUY");
    for (int i = 0; i < o->article_count; i++) {
        const article *a = o->articles + i;
        text words = {NULL, 0, 0}, label = {NULL, 0, 0};
        add_article(&words, a, p->us);
        text_add(&label, "  %12s  ", a->count ? plain(p, a->count, 0) : tape(p, a->metres));
        text_wrap(out, text_of(&label), text_of(&words));
        text_free(&words);
        text_free(&label);
    }
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
    if (plan->fewest)
        text_say(out, "    ", "%s bought: proven least, and in the fewest sticks.", tape(p, plan->stock));
    else if (plan->proven)
        text_say(out, "    ", "%s bought: proven least.", tape(p, plan->stock));
    else
        text_say(out, "    ", "%s bought: not proven least; no plan takes less than %s, so at most %s might be saved.",
                 tape(p, plan->stock), tape(p, plan->lower_bound), tape(p, plan->stock - plan->lower_bound));
}

static void print_cutting(text *out, const cutting *c, pen *p)
{
    text words = {NULL, 0, 0};
    add_article(&words, &c->material, p->us);
    text_wrap(out, "  ", text_of(&words));
    for (int i = 0; i < c->stick_count; i++) {
        const tside_stick *stick = c->sticks + i;
        text label = {NULL, 0, 0};
        text_add(&label, "    %3d of %-14s  ", stick->count, tape(p, c->stock.lengths[stick->stock].length));
        text_cut(&words, 0);
        add_pattern(&words, c, i, p);
        text_add(&words, "; left %s", stick->offcut > 0 ? tape(p, stick->offcut) : "nothing");
        text_wrap(out, text_of(&label), text_of(&words));
        text_free(&label);
    }
    text_free(&words);
    print_bound(out, c, p);
}

static void print_cuttings(text *out, const order *o, pen *p)
{
    print_title(out, "CUT, STICK BY STICK");
    if (o->cutting_count)
        text_say(out, "  ", "Each cut loses %s, each tube %s before its first piece.", fine(p, o->cuttings->stock.kerf),
                 fine(p, o->cuttings->stock.trim));
    for (int i = 0; i < o->cutting_count; i++)
        print_cutting(out, o->cuttings + i, p);
}

static void print_item(text *out, const tside_item *item, pen *p)
{
    static const char *const hands[] = {"-", "right", "left"}, *const places[] = {"-", "drive", "free"};
    const char *size = item->shape != TSIDE_NO_TUBE ? cross_section(p, item->size, item->wall)
                       : item->by == TSIDE_BY_SHEET ? tape(p, item->width)
                       : item->size > 0             ? bore(p, item->size)
                                                    : "-";
    text_add(out, "%3d %-28s %-16s %-5s %-5s %s\n", item->count, tside_item_text((int)item->code), size,
             places[item->at], hands[item->hand], item->length > 0 ? tape(p, item->length) : "-");
}

static void print_pieces(text *out, const order *o, pen *p)
{
    print_title(out, "PIECES, SIDE BY SIDE");
    text_say(out, "  ",
             "Hand: seen from outside the wall it is bolted to, a right-hand extender rises to the right; its holes "
             "are on the sheet of tunnelside-plan.");
    for (size_t i = 0; i < o->all->count; i++) {
        const planned *side = o->all->sides[i];
        if (!is_planned(side))
            continue;
        text_wrap(out, "  ", *side->wanted.name ? side->wanted.name : side->file);
        text_add(out, "%3s %-28s %-16s %-5s %-5s %s\n", "No", "Piece", "Size, width", "End", "Hand", "Length");
        for (int k = 0; k < side->item_count; k++)
            print_item(out, side->items + k, p);
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
                 tape(p, c->plan.offcut), tape(p, c->plan.lost));
        text_wrap(out, "  ", text_of(&words));
        text_free(&words);
    }
}

static void print_sum(text *out, const char *name, cents amount)
{
    text words = {NULL, 0, 0};
    print_money(&words, amount);
    text_add(out, "  %-62s %13s\n", name, text_of(&words));
    text_free(&words);
}

static void print_priced(text *out, const quote_line *line, int us)
{
    text words = {NULL, 0, 0};
    if (line->bought)
        add_article(&words, line->bought, us);
    else
        text_add(&words, "%s", line->row->name);
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
        text_add(&words, " %s%s", line->row->unit == EACH ? "" : "per ", unit_name(line->row->unit));
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
    text title = {NULL, 0, 0};
    text_add(&title, "PRICE%s%s", *q->currency ? " IN " : "", q->currency);
    print_title(out, text_of(&title));
    text_free(&title);
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
    print_sides(out, a->order);
    print_buying(out, a->order, &p);
    print_cuttings(out, a->order, &p);
    print_pieces(out, a->order, &p);
    print_left_over(out, a->order, &p);
    if (a->price)
        print_price(out, a->price, us);
    if (*a->no_price)
        text_say(out, "\nNO PRICE  ", "%s.", a->no_price);
    print_title(out, "CAUTIONS");
    for (size_t i = 0; i < sizeof cautions / sizeof *cautions; i++)
        text_wrap(out, "  ! ", cautions[i]);
}
