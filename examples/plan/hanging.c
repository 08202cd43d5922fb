/* SPDX-License-Identifier: MIT */
/* In which order a side is hung, and how its limits are set. */
#include <stdio.h>

#include "sheet.h"

typedef struct steps {
    sheet *s;
    int number;
} steps;

/* As printf: the next step. */
static void step(steps *all, const char *format, ...) LIKE_PRINTF(2, 3);

static void step(steps *all, const char *format, ...)
{
    text words = {NULL, 0, 0};
    char label[16];
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    snprintf(label, sizeof label, " %2d. ", ++all->number);
    text_wrap(all->s->out, label, text_of(&words));
    text_free(&words);
}

static void set_extenders(steps *all)
{
    const planned *side = all->s->side;
    if (on_extender(side, TSIDE_DRIVE_END) || on_extender(side, TSIDE_FREE_END))
        step(all, "Mark eye, bow hole and member hole on each end wall that has an extender, by the set-out. Check the "
                  "diagonal from eye to member"
                  " hole before any hole is drilled. Bolt the extender to bow and member both; two bolts at the least, "
                  "always.");
}

static void hang_curtain(steps *all)
{
    const tside_side *asked = &all->s->side->wanted.side;
    pen *p = &all->s->pen;
    step(all,
         "Fix the curtain's top edge along the hip rail, %s above grade, with %s of curtain past the end bow at each "
         "end.",
         tape(p, asked->curtain.hip), tape(p, asked->curtain.past));
    step(all,
         "Clip its bottom edge to the roll bar, %s of bar beyond the curtain's edge at the free end. The roll must lie "
         "outboard of its hanging"
         " curtain. Wind %s of curtain onto it by hand: shut, the roll's underside then stands %s above grade, level "
         "from end to end.",
         tape(p, all->s->side->plan.bar_beyond_free), quantity(p, asked->stops.wraps_shut, "turn"),
         tape(p, all->s->side->plan.shut.underside));
}

static const char *with_capital(int end)
{
    return end == TSIDE_DRIVE_END ? "Drive's end" : "Free end";
}

static const char *rider(int end)
{
    return end == TSIDE_DRIVE_END ? "drive" : "bar";
}

static void hang_guide(steps *all, int end)
{
    const planned *side = all->s->side;
    const tside_guide *guide = &end_asked(side, end)->guide;
    const tside_end_plan *plan = end_answered(side, end);
    pen *p = &all->s->pen;
    step(all,
         "%s: slide the guide pipe through the %s's collar and hang it from its eye by %s of chain. Shut, %s of pipe "
         "must show below the"
         " collar; over the whole travel its foot comes no nearer to grade than %s.",
         with_capital(end), rider(end), tape(p, guide->chain), tape(p, guide->margin),
         tape(p, plan->sweep.foot_lowest - plan->ground));
}

static void stand_guide(steps *all, int end)
{
    const planned *side = all->s->side;
    const tside_fixed *fixed = &end_answered(side, end)->fixed;
    pen *p = &all->s->pen;
    step(all,
         "%s: slide the guide pipe through the %s's collar, hold its top %s above grade and set its foot %s into the "
         "ground, %s outboard of the bow's face"
         " at hip height. Set the collar's arm so that it gives as much one way as the other: up to %s.",
         with_capital(end), rider(end), tape(p, fixed->top_y - fixed->ground),
         tape(p, end_asked(side, end)->footing.depth), tape(p, fixed->foot_x - face_at_hip(side)),
         tape(p, fixed->misfit));
}

static void hang_guides(steps *all)
{
    const planned *side = all->s->side;
    const tside_side *asked = &side->wanted.side;
    pen *p = &all->s->pen;
    step(all,
         "Put the drive on the bar, its centre %s from the curtain's edge, with %d screws in its coupling; power off "
         "and locked out, or the"
         " crank tied.",
         tape(p, side->plan.bar_beyond_drive), asked->bar.screws);
    for (int end = 0; end < ENDS; end++)
        if (end_answered(side, end)->fixed_given)
            stand_guide(all, end);
        else
            hang_guide(all, end);
}

static void set_limits(steps *all)
{
    const planned *side = all->s->side;
    const tside_side *asked = &side->wanted.side;
    const tside_plan *plan = &side->plan;
    const int hand = asked->drive.kind == TSIDE_HAND;
    pen *p = &all->s->pen;
    step(all,
         "Two people, one watching each end. %s up in short steps and stop with the roll's underside %s above grade: "
         "that is open, %s turns of"
         " the drive from shut (%s to %s are likely). Set the upper %s there. Never above %s: there the roll meets the "
         "rail.",
         hand ? "Crank" : "Run", tape(p, plan->open.underside), plain(p, plan->drive_turns, 1),
         plain(p, plan->drive_turns_least, 1), plain(p, plan->drive_turns_most, 1), hand ? "stop" : "limit",
         tape(p, plan->highest));
    step(all,
         "%s down and set the lower %s where the underside stands %s above grade, with %s of curtain still on the bar. "
         "Run past that, the bar"
         " winds on backwards.",
         hand ? "Crank" : "Run", hand ? "stop" : "limit", tape(p, plan->shut.underside),
         quantity(p, asked->stops.wraps_shut, "turn"));
    step(all, "Run the whole travel twice, counting turns and watching both feet. If turns or heights fall outside "
              "what this sheet says, stop and"
              " find out why before anybody relies on the limits.");
}

void print_hanging(sheet *s)
{
    steps all = {s, 0};
    print_title(s, "HANG IT, AND SET THE LIMITS");
    text_wrap(s->out, "  ", "Read the cautions first.");
    set_extenders(&all);
    hang_curtain(&all);
    hang_guides(&all);
    set_limits(&all);
}
