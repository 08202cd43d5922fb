/* SPDX-License-Identifier: MIT */
/* In which order a side is hung, and how its limits are set. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "command.h"
#include "sheet.h"

static int is_by_hand(const sheet *s)
{
    return s->side->wanted.side.drive.kind == TSIDE_HAND;
}

/* A height from the hip first, then from the ground, at each end where it differs. */
static void write_height(sheet *s, double height, char *words, size_t size)
{
    const tside_plan *plan = &s->side->plan;
    const double hip = s->side->wanted.side.curtain.hip;
    pen *p = &s->pen;
    if (plan->drive_end.ground == plan->free_end.ground)
        snprintf(words, size, "%s below the hip, %s above the ground", tape(p, hip - height),
                 tape(p, height - plan->drive_end.ground));
    else
        snprintf(words, size, "%s below the hip, above the ground %s at the drive's end and %s at the free end",
                 tape(p, hip - height), tape(p, height - plan->drive_end.ground),
                 tape(p, height - plan->free_end.ground));
}

/* --- the curtain --- */

static void fix_curtain(sheet *s)
{
    const tside_side *asked = &s->side->wanted.side;
    const tside_fittings *fittings = &s->side->wanted.fittings;
    pen *p = &s->pen;
    put_step(&s->paper,
             "Screw the channel along the hip rail on the fixing line. Lock the curtain's top edge in it with wire, "
             "from the "
             "middle outward: %s of it above the line, %s past the end bow's middle at each end.",
             tape(p, fittings->rail_allowance), tape(p, asked->curtain.past));
    put_caution_of(s, CAUTION_LADDER);
    if (fittings->end_flaps)
        put_step(&s->paper, "Fix the %s in channel and wire up the end wall, for the shut curtain to lie on.",
                 fittings->end_flaps == 1 ? "end flap" : "two end flaps");
}

/* --- the bar --- */

/* kg, of the tube with what its joints overlap. */
static double mass_of_bar(const planned *side)
{
    const tside_bar *bar = &side->wanted.side.bar;
    tside_metal_values metal;
    tside_section section;
    tside_fault fault;
    must(tside_material_values(&bar->material, &metal, &fault), &fault);
    must(tside_round_section(&bar->tube, metal.density, &section, &fault), &fault);
    return section.mass * (side->plan.bar_length + side->plan.splices * bar->swage);
}

/* One each so many metres, and never under two: common practice, no published source. */
static int hands_for(const planned *side, double each)
{
    return (int)fmax(2, ceil(side->plan.bar_length / each - 1e-9));
}

static void lift_bar(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_bar *bar = &s->side->wanted.side.bar;
    pen *p = &s->pen;
    char shut[160];
    write_height(s, plan->shut.underside, shut, sizeof shut);
    if (plan->splices)
        put_step(&s->paper,
                 "Join the bar's sticks on the ground in their order from the drive, %s into each other, %d screws "
                 "each side of "
                 "every joint.",
                 tape(p, bar->swage), bar->screws);
    put_step(
        &s->paper,
        "Lift the bar, %s, with %d people or more, one each %s (common practice), outboard of the curtain; tie it to "
        "the rail, level, some %s below. It stays tied until both guides are on.",
        quantity(p, mass_of_bar(s->side), "kg"), hands_for(s->side, p->us ? 20 * 0.3048 : 6), p->us ? "20 ft" : "6 m",
        roughly(p, s->side->wanted.side.curtain.hip - plan->shut.underside));
    put_step(
        &s->paper,
        "Let the curtain hang straight, without a slanting fold, its edges %s from the drive's centre and %s from the "
        "bar's other end. Clip it on from the middle outward, every %s or less.",
        tape(p, plan->bar_beyond_drive), tape(p, plan->bar_beyond_free),
        tape(p, s->side->wanted.fittings.clip_spacing));
    put_step(&s->paper,
             "Wind %s of curtain on by hand, the way that opens: %s seen from outside the drive's end wall, the roll "
             "outboard "
             "of its curtain. Its underside is then %s, level.",
             quantity(p, s->side->wanted.side.stops.wraps_shut, "turn"),
             s->side->wanted.side.hand == TSIDE_RIGHT ? "anticlockwise" : "clockwise", shut);
    put_caution_of(s, CAUTION_HANDS);
}

/* --- drive and guides --- */

/* What is done with a guide once it is through its collar. */
static void write_guide(sheet *s, int end, char *words, size_t size)
{
    const tside_guide *guide = &end_asked(s->side, end)->guide;
    const tside_end_plan *plan = end_answered(s->side, end);
    pen *p = &s->pen;
    if (stands(s->side, end))
        snprintf(words, size,
                 "hold its top and set its foot by the set-out, plumb along the house; set the collar's arm to give as "
                 "much one way as the other over the travel, %s or more",
                 tape_at_least(p, plan->fixed.misfit));
    else
        snprintf(
            words, size,
            "hang it from its eye by %s of chain. Shut, %s of it shows below the collar; its foot stays %s or more "
            "above the ground",
            tape(p, guide->chain), tape(p, guide->margin), tape_at_most(p, plan->sweep.foot_lowest - plan->ground));
}

/* Both in one step, where they are put up alike. */
static void put_guides(sheet *s)
{
    char drive[280], free_end[280];
    write_guide(s, TSIDE_DRIVE_END, drive, sizeof drive);
    write_guide(s, TSIDE_FREE_END, free_end, sizeof free_end);
    if (!strcmp(drive, free_end)) {
        put_step(&s->paper, "Both ends: put the guide pipe through its collar, the drive's or the bar's, and %s.",
                 drive);
        return;
    }
    put_step(&s->paper, "Drive's end: put the guide pipe through the drive's collar, and %s.", drive);
    put_step(&s->paper, "Free end: put the guide pipe through the bar's collar, and %s.", free_end);
}

static void put_drive_and_guides(sheet *s)
{
    put_step(&s->paper, "Put the drive on the bar, with %d screws in its coupling, and the collar on its other end.",
             s->side->wanted.side.bar.screws);
    put_caution_of(s, CAUTION_POWER);
    put_guides(s);
    put_step(&s->paper, "Only now take the ties off the bar.");
    put_caution_of(s, CAUTION_WOUND);
}

/* --- turning --- */

static void try_it(sheet *s)
{
    if (is_by_hand(s)) {
        put_step(
            &s->paper,
            "Crank slowly until the bar has turned a little: the roll must rise. If it sinks, crank the other way.");
        return;
    }
    put_step(&s->paper, "Wire the drive.");
    put_caution_of(s, CAUTION_WIRING);
    put_caution_of(s, CAUTION_CORD);
    put_step(&s->paper,
             "Try the sense of turning with a touch: \"up\" must raise the roll. If not: supply off, wires changed as "
             "the motor's maker says.");
}

static void set_limits(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const char *run = is_by_hand(s) ? "Crank" : "Run", *limit = is_by_hand(s) ? "stop" : "limit";
    pen *p = &s->pen;
    char open[160], shut[160];
    write_height(s, plan->open.underside, open, sizeof open);
    write_height(s, plan->shut.underside, shut, sizeof shut);
    put_step(&s->paper,
             "%s up in short steps to an underside %s: that is open, %s turns of the drive from shut (%s to %s "
             "are likely). Set the upper %s there. Never nearer to the hip than %s: there the roll meets the rail.",
             run, open, plain(p, plan->drive_turns, 1), plain(p, plan->drive_turns_least, 1),
             plain(p, plan->drive_turns_most, 1), limit,
             tape_at_least(p, s->side->wanted.side.curtain.hip - plan->highest));
    put_caution_of(s, CAUTION_TWO_PEOPLE);
    put_caution_of(s, CAUTION_WIND);
    put_step(&s->paper,
             "%s down and set the lower %s at an underside %s, with %s of curtain still on the bar: past that it "
             "winds on backwards.",
             run, limit, shut, quantity(p, s->side->wanted.side.stops.wraps_shut, "turn"));
    put_step(&s->paper,
             "%s the whole travel twice, counting turns, watching both feet. If turns or heights are not these, stop "
             "and find out why.",
             run);
}

static int is_zigzag(const sheet *s)
{
    return s->side->wanted.side.ropes == TSIDE_ZIGZAG_ROPE;
}

/* Where hooks are, by the curtain's fixing. */
static void write_hooks(sheet *s, char *words, size_t size)
{
    const double above = s->side->plan.rope.hook_y - s->side->wanted.side.curtain.hip;
    const double out = s->side->plan.rope.hook_x - s->side->plan.fixing_x;
    pen *p = &s->pen;
    if (fabs(above) < 0.5e-3 && fabs(out) < 0.5e-3)
        snprintf(words, size, "on the fixing line");
    else
        snprintf(words, size, "%s %s and %s %s of the fixing line", tape(p, fabs(above)), above < 0 ? "below" : "above",
                 tape(p, fabs(out)), out < 0 ? "inboard" : "outboard");
}

/* Where anchors are, by the hip, the ground, and a plumb line. */
static void write_anchors(sheet *s, char *words, size_t size)
{
    const double out = s->side->plan.rope.anchor_x - s->side->plan.fixing_x;
    char height[160];
    write_height(s, s->side->plan.rope.anchor_y, height, sizeof height);
    if (fabs(out) < 0.5e-3)
        snprintf(words, size, "%s, plumb below that line", height);
    else
        snprintf(words, size, "%s, %s %s of plumb below that line", height, tape(&s->pen, fabs(out)),
                 out > 0 ? "outboard" : "inboard");
}

/* Last: they lie on the shut curtain, and the roll must pass under them. */
static void string_ropes(sheet *s)
{
    const tside_roped *ropes = &s->side->plan.rope.bears;
    const double from_hook_to_anchor = ropes->leg * (1 + ropes->slack);
    pen *p = &s->pen;
    char hooks[160], anchors[240];
    write_hooks(s, hooks, sizeof hooks);
    write_anchors(s, anchors, sizeof anchors);
    put_step(&s->paper, "Set %d hooks %s, %s apart from end bow to end bow, and %d anchors %s, %s.", ropes->upper_hooks,
             hooks, tape_at_most(p, ropes->pitch), ropes->lower_hooks,
             is_zigzag(s) ? "half way between" : "one below each", anchors);
    put_step(&s->paper,
             "Shut, %s over the curtain, %s from hook to anchor, %s more than taut; run the travel once more.",
             is_zigzag(s) ? "string one rope to and fro" : "tie a rope from each hook",
             tape_at_least(p, from_hook_to_anchor), tape(p, from_hook_to_anchor - ropes->leg));
}

/* The same where it is only known that ropes press. */
static void string_rope(sheet *s)
{
    const tside_item *rope = item_of(s->side, TSIDE_ITEM_ROPE, TSIDE_AT_SIDE),
                     *hooks = item_of(s->side, TSIDE_ITEM_HOOK, TSIDE_AT_SIDE);
    if (s->side->plan.rope_given)
        string_ropes(s);
    else if (rope && hooks)
        put_step(&s->paper, "Shut, string the rope over the curtain, %s of it zigzag between %d hooks at hip and sill.",
                 tape(&s->pen, rope->length), hooks->count);
}

void put_hanging(sheet *s)
{
    put_part(&s->paper, "HANG IT, AND SET THE LIMITS");
    fix_curtain(s);
    lift_bar(s);
    put_drive_and_guides(s);
    try_it(s);
    set_limits(s);
    string_rope(s);
}
