/* SPDX-License-Identifier: MIT */
#include "json.h"
#include "matters.h"
#include "walk.h"
#include "writer.h"

typedef struct assumptions {
    writer *w;
    const planned *side;
} assumptions;

static void put_assumed(void *context, const char *path, const tside_field *row, const void *member)
{
    const assumptions *a = context;
    if (!row->optional && !row->required && !file_gives(&a->side->wanted, member))
        put_string(a->w, NULL, path);
}

/* Why something is refused, in SI as all else. */
static void put_fault(writer *w, const tside_fault *why)
{
    char sentence[512];
    tside_fault_text(why, sentence, sizeof sentence);
    put_string(w, "refused", sentence);
}

static void put_found(writer *w, const char *key, const found *search, const char *unit)
{
    if (!search->asked)
        return;
    if (search->status != TSIDE_OK) {
        open_bracket(w, key, '{');
        put_fault(w, &search->why);
        shut_bracket(w, '}');
    } else if (unit) {
        put_number(w, key, search->value, unit);
    } else {
        put_whole(w, key, (int)search->value);
    }
}

/* What became of each drive of the list. */
static void put_choices(writer *w, const planned *side)
{
    open_bracket(w, "drives", '[');
    for (int i = 0; i < side->drives->count; i++) {
        open_bracket(w, NULL, '{');
        put_string(w, "name", side->drives->name[i]);
        put_structure(w, TSIDE_KIND_DRIVE_CHOICE, &side->choices[i].choice);
        if (side->choices[i].choice.fit == TSIDE_DRIVE_REFUSED)
            put_fault(w, &side->choices[i].why);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

static void put_answer(writer *w, matters *m, int which)
{
    const char *unit = answers[which].unit;
    const size_t count = matters_order(m, which);
    open_bracket(w, NULL, '{');
    put_string(w, "answer", answers[which].path);
    put_number(w, "value", m->values[which], unit);
    open_bracket(w, "inputs", '[');
    for (size_t i = 0; i < count; i++) {
        const measured *one = m->inputs + i;
        open_bracket(w, NULL, '{');
        put_string(w, "input", one->path);
        put_number(w, "tolerance", one->tolerance, one->row->unit);
        put_number(w, "moves", one->moves[which], unit);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
    put_number(w, "together_if_independent", matters_together(m, which), unit);
    shut_bracket(w, '}');
}

/* off_by has the sign of the way in which the side is refused. */
static void put_refused_when_off(writer *w, const measured *one, int way)
{
    open_bracket(w, NULL, '{');
    put_string(w, "input", one->path);
    put_number(w, "off_by", way == MORE ? one->tolerance : -one->tolerance, one->row->unit);
    put_fault(w, &one->refused[way]);
    shut_bracket(w, '}');
}

static void put_matters(writer *w, const planned *side)
{
    matters m;
    matters_find(&m, side);
    open_bracket(w, "refused_when_off", '[');
    for (size_t i = 0; i < m.count; i++)
        for (int way = 0; way < WAYS; way++)
            if (m.inputs[i].refused[way].status != TSIDE_OK)
                put_refused_when_off(w, m.inputs + i, way);
    shut_bracket(w, ']');
    open_bracket(w, "what_matters", '[');
    for (int k = 0; k < ANSWERS; k++)
        if (m.asked[k])
            put_answer(w, &m, k);
    shut_bracket(w, ']');
    matters_free(&m);
}

static void put_planned(writer *w, const planned *side)
{
    assumptions a = {w, side};
    open_bracket(w, "asked", '{');
    put_structure(w, TSIDE_KIND_SIDE, &side->wanted.side);
    shut_bracket(w, '}');
    open_bracket(w, "assumed", '[');
    walk(TSIDE_KIND_SIDE, &side->wanted.side, put_assumed, &a);
    shut_bracket(w, ']');
    open_bracket(w, "plan", '{');
    put_plan(w, side);
    shut_bracket(w, '}');
    open_bracket(w, "searches", '{');
    put_found(w, "drive_end_least_rise", &side->least_rise[TSIDE_DRIVE_END], "m");
    put_found(w, "free_end_least_rise", &side->least_rise[TSIDE_FREE_END], "m");
    put_found(w, "smallest_bar", &side->smallest_bar, NULL);
    put_found(w, "smallest_drive", &side->smallest_drive, NULL);
    shut_bracket(w, '}');
    if (side->choices)
        put_choices(w, side);
    open_bracket(w, "turns", '[');
    for (int i = 0; i < side->turn_count; i++) {
        open_bracket(w, NULL, '{');
        put_structure(w, TSIDE_KIND_TURN, side->turns + i);
        shut_bracket(w, '}');
    }
    shut_bracket(w, ']');
}

void print_json(text *out, const work *all, int with_matters)
{
    writer w = open_document(out, !all->bad);
    open_bracket(&w, "sides", '[');
    for (size_t i = 0; i < all->count; i++) {
        const planned *side = all->sides[i];
        open_bracket(&w, NULL, '{');
        put_place(&w, side);
        if (is_planned(side))
            put_planned(&w, side);
        else
            put_refused(&w, &side->refusals.lines);
        if (with_matters && is_planned(side))
            put_matters(&w, side);
        shut_bracket(&w, '}');
    }
    shut_bracket(&w, ']');
    shut_document(&w);
}
