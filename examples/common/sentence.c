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
