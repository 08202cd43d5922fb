/* SPDX-License-Identifier: MIT */
/* Strength, line by line, and what would do instead. */
#include <stdio.h>

#include "sheet.h"

/* Such as "12.3 MPa of 144 MPa: 0.09", "45 MPa, needs a yield of 75 MPa", "1200 N, no limit given". */
static void write_result(sheet *s, const tside_strength_line *line, char *words, size_t size)
{
    const char *unit = measure_unit((int)line->measure);
    pen *p = &s->pen;
    const char *demand = line->measure == TSIDE_DEFLECTION ? fine(p, line->demand) : quantity(p, line->demand, unit);
    if (line->measure == TSIDE_SHARE)
        snprintf(words, size, "%s %%", plain(p, 100 * line->demand, 1));
    else if (line->utilisation_given)
        snprintf(words, size, "%s of %s: %s", demand, quantity(p, line->limit, unit), plain(p, line->utilisation, 2));
    else if (line->yield_needed_given)
        snprintf(words, size, "%s, needs a yield of at least %s", demand, quantity(p, line->yield_needed, unit));
    else
        snprintf(words, size, "%s%s", demand, line->measure == TSIDE_FORCE ? ", no limit given" : "");
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

/* What and result on one line where both fit, else one under the other. */
static void print_line(sheet *s, const tside_strength_line *line)
{
    const char *what = tside_strength_text((int)line->code), *rules = rules_text(line->rules);
    char result[160];
    size_t left, right;
    write_result(s, line, result, sizeof result);
    left = 8 + columns(what) + columns(rules);
    right = columns(result);
    text_add(s->out, "  %-4s  %s%s", verdict_text(line->verdict), what, rules);
    if (left + 2 + right <= PAGE_WIDTH)
        text_add(s->out, "%*s%s\n", (int)(PAGE_WIDTH - left - right), "", result);
    else
        text_add(s->out, "\n%*s%s\n", (int)(PAGE_WIDTH - right), "", result);
}

static int is_of_bar(const tside_strength_line *line)
{
    return line->code <= TSIDE_SPLICE_SCREW_STALL;
}

void print_strength(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const char *group = "";
    print_title(s, "STRENGTH");
    text_wrap(s->out, "  ",
              "For choosing parts, not a certificate. At stall, not running, unless it says so. \"look\": above 0.8 of "
              "the limit, or"
              " no limit known: look, and decide. Stalled going up (up) or jammed"
              " coming down (down), whichever asks more.");
    for (int i = 0; i < plan->line_count; i++) {
        const tside_strength_line *line = plan->lines + i;
        const char *now = is_of_bar(line) ? "bar and splices" : end_name((int)line->end);
        if (now != group)
            text_add(s->out, "  %s\n", now);
        group = now;
        print_line(s, line);
    }
}

static void print_least_rise(sheet *s, int end)
{
    const found *search = &s->side->least_rise[end];
    const tside_limits *limits = &s->side->wanted.side.limits;
    const int limited = limits->kick_out_given || limits->side_force_given;
    if (!search->asked || !on_extender(s->side, end))
        return;
    if (search->status == TSIDE_OK)
        text_say(s->out, "  ", "Least rise of the eye above the hip, %s: %s%s.", end_name(end),
                 tape_at_least(&s->pen, search->value),
                 limited ? ", which clears what rides on the guide and keeps to the limits"
                         : ", which just clears what rides on the guide; no limit of kick or side force is given");
    else
        text_say(s->out, "  ", "Least rise of the eye above the hip, %s: none. %s.", end_name(end), search->why);
}

void print_searches(sheet *s)
{
    const found *bar = &s->side->smallest_bar;
    const tside_side *asked = &s->side->wanted.side;
    pen *p = &s->pen;
    if (!bar->asked && !on_extender(s->side, TSIDE_DRIVE_END) && !on_extender(s->side, TSIDE_FREE_END))
        return;
    print_title(s, "WHAT WOULD DO");
    for (int end = 0; end < ENDS; end++)
        print_least_rise(s, end);
    if (bar->asked && bar->status == TSIDE_OK)
        text_say(s->out, "  ", "Lightest bar of the list that keeps to the limits: number %d, %s x %s.",
                 (int)bar->value + 1, fine(p, asked->bars[(int)bar->value].tube.diameter),
                 fine(p, asked->bars[(int)bar->value].tube.wall));
    else if (bar->asked)
        text_say(s->out, "  ", "Lightest bar of the list: none. %s.", bar->why);
}
