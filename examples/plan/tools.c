/* SPDX-License-Identifier: MIT */
/* What to bring: to an end, the card's list of tools; to hang the side, the annex's, with all that carries no mark. */
#include "mark.h"
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
    if (end_asked(s->side, end)->guide.chain > 0 && !stands(s->side, end))
        text_add(&words, "; a drill for the chain's link, through the guide pipe's top");
    if (stands(s->side, end))
        text_add(&words,
                 "; the bracket of the guide's top, which is its maker's; for the guide's foot what digs or drives, "
                 "and sets, %s of pipe (common practice)",
                 tape(&s->pen, end_asked(s->side, end)->footing.depth));
    put_part(&s->paper, "BRING");
    put_words(&s->paper, "%s.", text_of(&words));
    text_free(&words);
}

/* --- to hang the side --- */

static int is_unmarked_like(const tside_item *one, const tside_item *other)
{
    return !one->first_number && one->code == other->code && one->size == other->size && one->length == other->length;
}

/* How many of such a piece the whole side has; 0 where it was counted with an earlier one, of the other end. */
static int count_alike(const planned *side, int at)
{
    int count = 0;
    for (int i = 0; i < side->item_count; i++)
        if (is_unmarked_like(side->items + i, side->items + at)) {
            if (i < at)
                return 0;
            count += side->items[i].count;
        }
    return count;
}

void put_hanging_tools(sheet *s)
{
    const char *before = "";
    text words = {NULL, 0, 0};
    put_part(&s->paper, "BRING TO HANG IT");
    put_words(&s->paper,
              "Tape, level, marker, ladders or platforms, ties that bear the bar, a knife for the curtain, "
              "snips or saw for the channel, a driver for the screws, pliers%s; and beside all that is marked:",
              s->side->wanted.side.drive.kind == TSIDE_HAND ? "" : ", what wires a motor");
    for (int i = 0; i < s->side->item_count; i++) {
        const int count = s->side->items[i].first_number ? 0 : count_alike(s->side, i);
        if (!count)
            continue;
        text_add(&words, "%s", before); /* "10 x channel, 6 ft 6 3/4 in" */
        if (s->side->items[i].by != TSIDE_BY_LENGTH)
            text_add(&words, "%d x ", count);
        add_what(&words, &s->pen, s->side->items + i);
        before = "; ";
    }
    put_words(&s->paper, "%s.", s->side->item_count ? text_of(&words) : "what is not told, for want of a take-off");
    text_free(&words);
}
