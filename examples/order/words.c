/* SPDX-License-Identifier: MIT */
#include "sentence.h"
#include "words.h"

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

void add_price_title(text *t, const quote *q)
{
    text_add(t, "PRICE%s%s", *q->currency ? " IN " : "", q->currency);
}

/* Nobody should buy what will not hold. */
static void put_stops_of_side(paper *out, const planned *side, pen *p)
{
    for (int i = 0; i < side->plan.finding_count; i++) {
        const tside_finding *finding = side->plan.findings + i;
        text words = {NULL, 0, 0};
        if (!tside_finding_stops((int)finding->code))
            continue;
        add_sentence(&words, p, finding);
        put_fact(out, "STOP", "%s: %s. Mend it before you buy; tunnelside-plan says more.",
                 *side->wanted.name ? side->wanted.name : side->file, text_of(&words));
        text_free(&words);
    }
}

void put_stops_of_order(paper *out, const order *o, pen *p)
{
    for (size_t i = 0; i < o->all->count; i++)
        if (is_ordered(o->all->sides[i]))
            put_stops_of_side(out, o->all->sides[i], p);
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
