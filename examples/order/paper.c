/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "mark.h"
#include "paper.h"
#include "sentence.h"

void add_article(text *t, const article *a, int us)
{
    text sizes = {NULL, 0, 0}, grade = {NULL, 0, 0};
    add_sizes(&sizes, a, us);
    text_add(t, "%s%s%s", a->what->name, sizes.length ? " " : "", text_of(&sizes));
    if (a->has_material)
        text_add(t, ", %s", grade_text(a, us, &grade));
    text_free(&sizes);
    text_free(&grade);
}

void print_title(text *out, const char *title)
{
    text_add(out, "\n%s\n", title);
}

void print_price_title(text *out, const quote *q)
{
    text title = {NULL, 0, 0};
    text_add(&title, "PRICE%s%s", *q->currency ? " IN " : "", q->currency);
    print_title(out, text_of(&title));
    text_free(&title);
}

/* Nobody should buy what will not hold. */
static void print_stops_of(text *out, const planned *side, pen *p)
{
    for (int i = 0; i < side->plan.finding_count; i++) {
        const tside_finding *finding = side->plan.findings + i;
        text words = {NULL, 0, 0};
        if (!tside_finding_stops((int)finding->code))
            continue;
        add_sentence(&words, p, finding);
        text_say(out, "STOP   ", "%s: %s. Mend it before you buy; tunnelside-plan says more.",
                 *side->wanted.name ? side->wanted.name : side->file, text_of(&words));
        text_free(&words);
    }
}

void print_stops(text *out, const order *o, pen *p)
{
    for (size_t i = 0; i < o->all->count; i++)
        if (is_planned(o->all->sides[i]))
            print_stops_of(out, o->all->sides[i], p);
}

static const char *name_of(const planned *side)
{
    return *side->wanted.name ? side->wanted.name : "without a name";
}

void print_side(text *out, const planned *side)
{
    const request *wanted = &side->wanted;
    char mark[TSIDE_MARK_SIZE];
    text label = {NULL, 0, 0};
    text_add(&label, "  %-5s", side_mark(side, mark));
    text_say(out, text_of(&label), "%s%s%s (%s)", wanted->job ? wanted->job : "",
             wanted->job && *wanted->job ? ": " : "", name_of(side), side->file);
    text_free(&label);
}

void print_sides(text *out, const order *o, pen *p)
{
    text_say(out, "ORDER  ", "for %d side%s", o->sides, o->sides == 1 ? "" : "s");
    for (size_t i = 0; i < o->all->count; i++) {
        if (is_planned(o->all->sides[i]))
            print_side(out, o->all->sides[i]);
    }
    print_stops(out, o, p);
    if (o->refused)
        text_say(out, "INCOMPLETE  ", "%d side%s refused, and not in this order.", o->refused,
                 o->refused == 1 ? " is" : "s are");
}

void print_bought(text *out, const char *much, const article *a, const char *more, pen *p)
{
    text words = {NULL, 0, 0}, label = {NULL, 0, 0};
    add_article(&words, a, p->us);
    text_add(&words, "%s", more);
    text_add(&label, "  %12s  ", much);
    text_wrap(out, text_of(&label), text_of(&words));
    text_free(&words);
    text_free(&label);
}

void add_sold(text *t, const quote_line *line, pen *p)
{
    const article *a = line->bought;
    if (is_of_size(line->row->unit)) {
        print_quantity(t, line->quantity);
        text_add(t, " %s%s", unit_name(line->row->unit),
                 is_sold_whole(line->row->unit) && line->quantity != 100 ? "s" : "");
    } else {
        text_add(t, "%s", a->count ? plain(p, a->count, 0) : tape(p, a->metres));
    }
}

void print_sum(text *out, const char *name, cents amount)
{
    text words = {NULL, 0, 0};
    print_money(&words, amount);
    text_add(out, "  %-62s %13s\n", name, text_of(&words));
    text_free(&words);
}

void print_cautions(text *out, const char *const *cautions, size_t count)
{
    print_title(out, "CAUTIONS");
    for (size_t i = 0; i < count; i++)
        text_wrap(out, "  ! ", cautions[i]);
}
