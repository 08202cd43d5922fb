/* SPDX-License-Identifier: MIT */
/* What to bring to an end: the card's list of tools. */
#include "sheet.h"

/* The bow's bolt, without the tape: it tells the tools, which any grip of that size shares. */
static int choose_bolt(const planned *side, int end, tside_bolt_plan *chosen)
{
    const tside_fittings *fittings = &side->wanted.fittings;
    const tside_bolt bolt = {.size = fittings->bolt_size,
                             .grip = end_asked(side, end)->extender.tube.side + side->wanted.side.frame.tube.diameter,
                             .washer = fittings->washer,
                             .washers = fittings->washers,
                             .clearance = TSIDE_NORMAL,
                             .grade = TSIDE_BOLT_GRADE_UNKNOWN,
                             .planes = 1};
    tside_bolt more = bolt;
    tside_fault fault;
    tside_status status = tside_bolt_choose(&bolt, chosen, &fault);
    if (status == TSIDE_CONTRADICTS) { /* the bound is how many washers mend the thread */
        more.washers = (int)fault.bound;
        status = tside_bolt_choose(&more, chosen, &fault);
    }
    return status == TSIDE_OK;
}

static void add_bolt_tools(text *words, sheet *s, int end)
{
    const tside_extender *extender = &end_asked(s->side, end)->extender;
    pen *p = &s->pen;
    tside_bolt_plan bolt;
    text_add(words, ", centre punch, drills of %s for bolts and %s for the %s", trade_size(p, extender->bolt_hole),
             trade_size(p, extender->eye_hole), stands(s->side, end) ? "guide's bracket" : "eye bolt");
    if (choose_bolt(s->side, end, &bolt))
        text_add(words, ", file for the bolts' square necks (%s, in the extender's outer face), socket of %s",
                 trade_size(p, bolt.square_hole), trade_size(p, bolt.wrench));
    if (!stands(s->side, end))
        text_add(words, ", wrenches for the eye's nuts");
    if (s->side->wanted.fittings.patches)
        text_add(
            words,
            "; %d patches of tape for the wall's film: under the extender at each bolt, inside at the member, a spare",
            s->side->wanted.fittings.patches);
}

void put_tools(sheet *s, int end)
{
    text words = {NULL, 0, 0};
    text_add(&words, "Tape, level, plumb line, marker, ladder, saw");
    if (on_extender(s->side, end))
        add_bolt_tools(&words, s, end);
    if (stands(s->side, end))
        text_add(&words, "; for the guide's foot what digs or drives, and sets, %s of pipe (common practice)",
                 tape(&s->pen, end_asked(s->side, end)->footing.depth));
    put_part(&s->paper, "BRING");
    put_words(&s->paper, "%s.", text_of(&words));
    text_free(&words);
}
