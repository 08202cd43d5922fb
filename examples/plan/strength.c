/* SPDX-License-Identifier: MIT */
/* Strength, line by line, and what would do instead. */
#include <stdio.h>

#include "sentence.h"
#include "sheet.h"

static const char *amount(sheet *s, const tside_strength_line *held, double value)
{
    if (held->measure == TSIDE_SHARE)
        return quantity(&s->pen, 100 * value, "1");
    return held->measure == TSIDE_DEFLECTION ? fine(&s->pen, value)
                                             : quantity(&s->pen, value, measure_unit((int)held->measure));
}

static const char *verdict_text(tside_verdict verdict)
{
    return verdict == TSIDE_VERDICT_OK ? "ok" : verdict == TSIDE_VERDICT_LOOK ? "look" : "NO";
}

/* Which of both ways asks more, where the drive can stall either way. */
static const char *rules_text(tside_rules rules)
{
    return rules == TSIDE_RULES_UP ? " (up)" : rules == TSIDE_RULES_DOWN ? " (down)" : "";
}

static int is_of_bar(const tside_strength_line *held)
{
    return held->code <= TSIDE_SPLICE_SCREW_STALL || held->code == TSIDE_BAR_WIND || held->code == TSIDE_RAIL_SCREW;
}

static const char *part_of(const tside_strength_line *held)
{
    return is_of_bar(held) ? "bar and splices" : end_name((int)held->end);
}

/* --- the lines that have a limit --- */

static void put_line(sheet *s, const tside_strength_line *held)
{
    text what = {NULL, 0, 0};
    text_add(&what, "%s%s", tside_strength_text((int)held->code), rules_text(held->rules));
    {
        const char *const cells[] = {verdict_text(held->verdict), plain(&s->pen, held->utilisation, 2),
                                     amount(s, held, held->demand), amount(s, held, held->limit), text_of(&what)};
        put_cells(&s->paper, 5, cells);
    }
    text_free(&what);
}

/* With a title for each part of the side that has any. */
static void put_lines(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const char *part = "";
    for (int i = 0; i < plan->line_count; i++) {
        const tside_strength_line *held = plan->lines + i;
        if (!held->utilisation_given)
            continue;
        if (part_of(held) != part) {
            const char *const titles[] = {"", "share", "asked", "limit", part_of(held)};
            put_columns(&s->paper, part_of(held), 2 | 4 | 8, 4, 5, titles);
        }
        part = part_of(held);
        put_line(s, held);
    }
}

/* --- the others, by what they need --- */

typedef enum needs { NEEDS_NOTHING, NEEDS_YIELD, NEEDS_LIMIT, HAS_NO_LIMIT } needs;

static needs needs_of(const tside_strength_line *held)
{
    if (held->utilisation_given)
        return NEEDS_NOTHING;
    if (held->yield_needed_given)
        return NEEDS_YIELD;
    return *tside_strength_mends((int)held->code) ? NEEDS_LIMIT : HAS_NO_LIMIT;
}

/* Such as "pull on the bow bolt 388 lbf at the drive's end". */
static void add_needing(text *words, sheet *s, const tside_strength_line *held, double value)
{
    text_add(words, "%s%s %s%s", words->length ? "; " : "", tside_strength_text((int)held->code),
             amount(s, held, value), held->measure == TSIDE_SHARE ? " %" : "");
    if (!is_of_bar(held))
        text_add(words, " at the %s", end_name((int)held->end));
}

/* All of one need in one paragraph. */
static void put_needing(sheet *s, needs wanted, const char *lead)
{
    const tside_plan *plan = &s->side->plan;
    text words = {NULL, 0, 0};
    for (int i = 0; i < plan->line_count; i++) {
        const tside_strength_line *held = plan->lines + i;
        if (needs_of(held) == wanted && held->demand > 0)
            add_needing(&words, s, held, wanted == NEEDS_YIELD ? held->yield_needed : held->demand);
    }
    if (words.length)
        put_words(&s->paper, "%s %s.", lead, text_of(&words));
    text_free(&words);
}

void put_strength(sheet *s)
{
    put_part(&s->paper, "STRENGTH");
    put_words(&s->paper,
              "For choosing parts, not a certificate: local codes, makers' ratings and licensed practice come first. "
              "At stall, not running, unless it says so: going up (up) or jammed "
              "coming down (down), whichever asks more. Share is of the limit; \"look\" is above 0.8 of it.");
    put_lines(s);
    put_needing(s, NEEDS_YIELD, "Needs a grade whose yield is at least:");
    put_needing(s, NEEDS_LIMIT, "Needs a maker's limit of at least:");
    put_needing(s, HAS_NO_LIMIT, "Has no limit, look and decide:");
}

/* What was sought and not found, and why. */
static void put_none(sheet *s, const char *what, const char *of, const tside_fault *why)
{
    text words = {NULL, 0, 0};
    add_refusal(&words, &s->pen, why);
    put_words(&s->paper, "%s%s: none. %s.", what, of, text_of(&words));
    text_free(&words);
}

static void put_least_rise(sheet *s, int end)
{
    const found *search = &s->side->least_rise[end];
    const tside_limits *limits = &s->side->wanted.side.limits;
    const int limited = limits->kick_out_given || limits->side_force_given;
    if (!search->asked || !on_extender(s->side, end))
        return;
    if (search->status == TSIDE_OK)
        put_words(&s->paper, "Least rise of the eye above the hip, %s: %s%s.", end_name(end),
                  tape_at_least(&s->pen, search->value),
                  limited ? ", which clears what rides on the guide and keeps to the limits"
                          : ", which just clears what rides on the guide; no limit of kick or side force is given");
    else
        put_none(s, "Least rise of the eye above the hip, ", end_name(end), &search->why);
}

void put_searches(sheet *s)
{
    const found *bar = &s->side->smallest_bar;
    const tside_side *asked = &s->side->wanted.side;
    pen *p = &s->pen;
    if (!bar->asked && !on_extender(s->side, TSIDE_DRIVE_END) && !on_extender(s->side, TSIDE_FREE_END))
        return;
    put_part(&s->paper, "WHAT WOULD DO");
    for (int end = 0; end < ENDS; end++)
        put_least_rise(s, end);
    if (bar->asked && bar->status == TSIDE_OK)
        put_words(&s->paper, "Lightest bar of the list that keeps to the limits: number %d, %s x %s.",
                  (int)bar->value + 1, fine(p, asked->bars[(int)bar->value].tube.diameter),
                  fine(p, asked->bars[(int)bar->value].tube.wall));
    else if (bar->asked)
        put_none(s, "Lightest bar of the list", "", &bar->why);
}
