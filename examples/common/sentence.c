/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "names.h"
#include "sentence.h"

/* To three digits, and to as many more as it takes not to look like the other. */
static const char *apart(pen *p, double value, double other, const char *unit)
{
    int more = 0;
    while (more < 6 && value != other && !strcmp(finer(p, value, unit, more), finer(p, other, unit, more)))
        more++;
    return finer(p, value, unit, more);
}

/*
 * A value and the bound that it breaks: lengths as the tape has them, each rounded away from the other, so that a limit
 * that is kept as printed is kept.
 */
static const char *away_from(pen *p, double value, double other, const char *unit)
{
    if (strcmp(unit, "m"))
        return apart(p, value, other, unit);
    return value > other ? tape_at_least(p, value) : tape_at_most(p, value);
}

/* What a place in a sentence, such as {value}, stands for; NULL for what is no place. */
static const char *filling(pen *p, const tside_finding *finding, const char *place, size_t length)
{
    const char *unit = tside_finding_unit((int)finding->code);
    if (!strncmp(place, "{value}", length))
        return away_from(p, finding->value, finding->bound, unit);
    if (!strncmp(place, "{bound}", length))
        return away_from(p, finding->bound, finding->value, unit);
    return strncmp(place, "{end}", length) ? NULL : end_group((int)finding->end);
}

void add_filled(text *out, pen *p, const tside_finding *finding, const char *words)
{
    for (const char *open; (open = strchr(words, '{')) != NULL;) {
        const size_t length = strcspn(open, "}") + 1;
        const char *there = filling(p, finding, open, length);
        text_add_bytes(out, words, (size_t)(open - words));
        text_add(out, "%s", there ? there : "");
        words = open + length;
    }
    text_add(out, "%s", words);
}

void add_sentence(text *words, pen *p, const tside_finding *finding)
{
    add_filled(words, p, finding, tside_finding_sentence((int)finding->code));
}

/* "; at least 6 1/8 in"; a bound of a field that is itself refused: "; above 0 lb" */
static void add_bound(text *words, pen *p, const tside_fault *fault)
{
    const int is_open = fault->status == TSIDE_OUT_OF_BOUNDS;
    switch (fault->relation) {
    case TSIDE_BELOW: text_add(words, "; at least %s", at_least(p, fault->bound, fault->unit)); break;
    case TSIDE_NOT_ABOVE:
        text_add(words, "; %s %s", is_open ? "above" : "at least", at_least(p, fault->bound, fault->unit));
        break;
    case TSIDE_ABOVE: text_add(words, "; at most %s", at_most(p, fault->bound, fault->unit)); break;
    case TSIDE_NOT_BELOW:
        text_add(words, "; %s %s", is_open ? "below" : "at most", at_most(p, fault->bound, fault->unit));
        break;
    default: break;
    }
}

/* The value is rounded away from the bound that it breaks. */
static void add_numbers(text *words, pen *p, const tside_fault *fault)
{
    const int is_less = fault->relation == TSIDE_BELOW || fault->relation == TSIDE_NOT_ABOVE,
              is_more = fault->relation == TSIDE_ABOVE || fault->relation == TSIDE_NOT_BELOW;
    if (!fault->unit || !has_us_unit(fault->unit) || (!is_less && !is_more && fault->relation != TSIDE_NONE_FITS))
        return;
    text_add(words, " [%s",
             is_less   ? at_most(p, fault->value, fault->unit)
             : is_more ? at_least(p, fault->value, fault->unit)
                       : quantity(p, fault->value, fault->unit));
    add_bound(words, p, fault);
    if (fault->remedy_given)
        text_add(words, "; %s at least %s", fault->other, at_least(p, fault->remedy, fault->unit));
    text_add(words, "]");
}

void add_refusal(text *words, pen *p, const tside_fault *fault)
{
    char sentence[512];
    tside_fault_text(fault, sentence, sizeof sentence);
    text_add(words, "%s", sentence);
    if (p->us)
        add_numbers(words, p, fault);
}
