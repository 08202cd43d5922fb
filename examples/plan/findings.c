/* SPDX-License-Identifier: MIT */
/* What was found: what stops the work stands on the card, what is to be known in the annex. */
#include <string.h>

#include "names.h"
#include "sentence.h"
#include "sheet.h"
#include "walk.h"

/* Which of several is meant: "guide pipe bending at the collar, free end: " */
static void add_subject(text *words, const planned *side, const tside_finding *finding)
{
    if (is_of_keep_out(finding->code)) {
        text_add(words, "%s, ", end_name((int)finding->end));
        add_keep_out(words, side, (int)finding->end, finding->index);
        text_add(words, ": ");
        return;
    }
    switch (finding->code) {
    case TSIDE_FINDING_STRENGTH:
        text_add(words, "%s, %s: ", tside_strength_text((int)side->plan.lines[finding->index].code),
                 end_name((int)finding->end));
        break;
    case TSIDE_FINDING_KICK:
    case TSIDE_FINDING_SIDE_FORCE:
    case TSIDE_FINDING_CHAIN_SWING:
    case TSIDE_FINDING_THROWN:
    case TSIDE_FINDING_UPLIFT:
    case TSIDE_FINDING_LEAN_ALONG:
    case TSIDE_FINDING_BINDS:
    case TSIDE_FINDING_BOW_HOLE:
    case TSIDE_FINDING_MISFIT: text_add(words, "%s: ", end_name((int)finding->end)); break;
    default: break;
    }
}

static const char *what_mends(const planned *side, const tside_finding *finding)
{
    if (finding->code == TSIDE_FINDING_STALL_GUESSED && side->wanted.side.drive.kind == TSIDE_HAND)
        return ""; /* a hand stalls nothing */
    return finding->code == TSIDE_FINDING_STRENGTH ? tside_strength_mends((int)side->plan.lines[finding->index].code)
                                                   : tside_finding_mends((int)finding->code);
}

/* Each of the inputs that are outside their usual range. */
static void put_unusual(void *context, const char *path, const tside_field *row, const void *member)
{
    sheet *s = context;
    double value;
    if (row->type == TSIDE_CHOICE || !(row->usual_low < row->usual_high))
        return;
    value = number_of(row, member);
    if (value < row->usual_low || value > row->usual_high)
        put_remark(&s->paper, "%s %s; usual are %s to %s", path, quantity(&s->pen, value, row->unit),
                   quantity(&s->pen, row->usual_low, row->unit), quantity(&s->pen, row->usual_high, row->unit));
}

/* Which eye does, where a search found one; else the fields that do. */
static void add_what_mends(text *words, sheet *s, const tside_finding *finding)
{
    const size_t before = words->length;
    const char *mends = what_mends(s->side, finding);
    if (is_mended_by_eye(finding->code))
        add_mend(words, &s->pen, s->side, (int)finding->end);
    if (words->length > before || !*mends)
        return;
    text_add(words, ". What mends it: ");
    add_filled(words, &s->pen, finding, mends);
}

static void put_finding(sheet *s, const tside_finding *finding)
{
    text words = {NULL, 0, 0};
    add_subject(&words, s->side, finding);
    add_sentence(&words, &s->pen, finding);
    add_what_mends(&words, s, finding);
    put_point(&s->paper, "%s", text_of(&words));
    text_free(&words);
    if (finding->code == TSIDE_FINDING_UNUSUAL)
        walk(TSIDE_KIND_SIDE, &s->side->wanted.side, put_unusual, s);
}

/* --- where they are said --- */

/* Those that stop the work, or those to know, under a heading, if there are any. Returns how many. */
static int put_those(sheet *s, int stop, const char *heading)
{
    const tside_plan *plan = &s->side->plan;
    int count = 0;
    for (int i = 0; i < plan->finding_count; i++) {
        if (tside_finding_stops((int)plan->findings[i].code) != stop)
            continue;
        if (!count++)
            put_part(&s->paper, heading);
        put_finding(s, plan->findings + i);
    }
    return count;
}

void put_stops(sheet *s)
{
    if (!put_those(s, 1, "STOPS THE WORK UNTIL IT IS MENDED"))
        put_fact(&s->paper, "STOPS", "nothing stops the work");
}

void put_whether_it_stops(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    for (int i = 0; i < plan->finding_count; i++)
        if (tside_finding_stops((int)plan->findings[i].code)) {
            put_fact(&s->paper, "STOPS", "see the first page: the work stops until that is mended");
            return;
        }
}

void put_known(sheet *s)
{
    put_those(s, 0, "TO KNOW");
}

void put_found_here(sheet *s, tside_finding_code code, int end)
{
    const tside_plan *plan = &s->side->plan;
    for (int i = 0; i < plan->finding_count; i++) {
        text words = {NULL, 0, 0};
        if (plan->findings[i].code != code || (int)plan->findings[i].end != end)
            continue;
        add_sentence(&words, &s->pen, plan->findings + i);
        put_caution(&s->paper, text_of(&words));
        text_free(&words);
    }
}
