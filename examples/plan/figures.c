/* SPDX-License-Identifier: MIT */
/* Turns, guides, torque and lags. */
#include "sheet.h"

static void put_turns_and_range(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_stops *stops = &s->side->wanted.side.stops;
    pen *p = &s->pen;
    put_words(
        &s->paper,
        "Shut to open: %s turns of the drive against its own housing; %s to %s over the spread of core (+-%s %%), "
        "packing (+-%s)"
        " and thickness (+-%s %%).",
        plain(p, plan->drive_turns, 2), plain(p, plan->drive_turns_least, 2), plain(p, plan->drive_turns_most, 2),
        quantity(p, 100 * stops->core_spread, "1"), quantity(p, stops->packing_spread, "1"),
        quantity(p, 100 * stops->thickness_spread, "1"));
}

/* A guide on its foot does not kick wherever its top is held. */
static const char *kick_on_hip(pen *p, const tside_end_plan *end)
{
    return end->fixed_given ? NULL : end->hip_kick_out_given ? tape(p, end->hip_kick_out) : "would not clear";
}

static void put_guides_at_ends(sheet *s)
{
    const tside_end_plan *drive = &s->side->plan.drive_end, *free = &s->side->plan.free_end;
    const tside_sweep *a = &drive->sweep, *b = &free->sweep;
    pen *p = &s->pen;
    put_part(&s->paper, "GUIDES");
    put_ends_titles(s);
    put_ends(s, "Lean when shut, foot outboard positive", quantity(p, a->lean_shut, "rad"),
             quantity(p, b->lean_shut, "rad"));
    put_ends(s, "Lean when open", quantity(p, a->lean_open, "rad"), quantity(p, b->lean_open, "rad"));
    put_ends(s, "Foot kicks out, from where it hangs shut", tape(p, a->kick_out), tape(p, b->kick_out));
    put_ends(s, "  with the eye misplaced the worse way", tape(p, a->kick_out_error), tape(p, b->kick_out_error));
    put_ends(s, "Foot kicks in", tape(p, a->kick_in), tape(p, b->kick_in));
    put_ends(s, "  with the eye misplaced the worse way", tape(p, a->kick_in_error), tape(p, b->kick_in_error));
    if (on_extender(s->side, TSIDE_DRIVE_END) || on_extender(s->side, TSIDE_FREE_END)) {
        put_ends(s, "Kick out if it hung on the hip instead", kick_on_hip(p, drive), kick_on_hip(p, free));
        put_ends(s, "  and its greatest lean",
                 drive->hip_kick_out_given ? quantity(p, drive->hip_lean_greatest, "rad") : NULL,
                 free->hip_kick_out_given ? quantity(p, free->hip_lean_greatest, "rad") : NULL);
    }
    put_ends(s, "Side force on the eye, running", quantity(p, drive->side_force, "N"),
             quantity(p, free->side_force, "N"));
    put_ends(s, "  stalled", quantity(p, drive->side_force_stall, "N"), quantity(p, free->side_force_stall, "N"));
    if (drive->fixed_given || free->fixed_given) {
        put_ends(s, "  if the guide hung instead, stalled",
                 drive->hung_force_given ? quantity(p, drive->hung_force_stall, "N") : NULL,
                 free->hung_force_given ? quantity(p, free->hung_force_stall, "N") : NULL);
        put_ends(s, "Guide on its foot misses the bar by, at most",
                 drive->fixed_given ? tape(p, drive->fixed.misfit) : NULL,
                 free->fixed_given ? tape(p, free->fixed.misfit) : NULL);
    }
    put_ends(s, "Eye lifted beyond the guide's weight", quantity(p, drive->uplift, "N"),
             quantity(p, free->uplift, "N"));
}

void put_travel(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    pen *p = &s->pen;
    put_part(&s->paper, "TURNS AND OPENING");
    put_turns_and_range(s);
    put_row(&s->paper, "Clear opening at the drive's end", tape(p, plan->opening));
    put_row(&s->paper, "Clear opening at the free end, less lags", tape(p, plan->opening_far));
    put_row(&s->paper, "Overlap below the sill when shut", tape(p, plan->seal));
    put_row(&s->paper, "Roll's diameter, shut", fine(p, plan->shut.diameter));
    put_row(&s->paper, "Roll's diameter, open", fine(p, plan->open.diameter));
    put_guides_at_ends(s);
}

/* What the drive may give stalled, and on what that rests where its maker does not say. */
static void put_stall(sheet *s)
{
    const tside_drive *drive = &s->side->wanted.side.drive;
    put_quantity(s, "Stalled, the drive may give", s->side->plan.stall_torque, "N m");
    if (drive->kind == TSIDE_MOTOR && !drive->stall_torque_given)
        put_words(&s->paper, "That is taken as 2.5 times %s; no published source: ask the maker.",
                  drive->rated_torque_given ? "what it is rated for" : "what it must at least be rated for");
}

void put_torque(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_drive *drive = &s->side->wanted.side.drive;
    pen *p = &s->pen;
    put_part(&s->paper, "TORQUE");
    put_words(&s->paper,
              "Worst at the drive: %s, with the roll's underside %s above grade, %s turns of the bar from shut.",
              quantity(p, plan->worst.drive, "N m"), tape(p, plan->worst_underside), plain(p, plan->worst.turns, 1));
    if (plan->drive_utilisation_given)
        put_words(&s->paper, "Design torque: %s (worst times %s); the drive is rated for %s, of which that is %s %%.",
                  quantity(p, plan->design_torque, "N m"), quantity(p, drive->safety_factor, "1"),
                  quantity(p, drive->rated_torque, "N m"), plain(p, 100 * plan->drive_utilisation, 0));
    else
        put_words(&s->paper,
                  "The drive's rating is not given: look for a rated torque of at least %s (worst times %s), and give "
                  "it as drive.rated_torque, with the drive's mass.",
                  quantity(p, plan->design_torque, "N m"), quantity(p, drive->safety_factor, "1"));
    put_stall(s);
    if (on_extender(s->side, TSIDE_DRIVE_END) && !stands(s->side, TSIDE_DRIVE_END))
        put_row(&s->paper, "Worst if its guide hung on the hip",
                plan->drive_end.hip_torque_given ? quantity(p, plan->drive_end.hip_torque, "N m") : "would not clear");
    put_quantity(s, "Least that brings the bar down by itself", plan->least_down.down, "N m");
    put_quantity(s, "Work from shut to open, without friction", plan->work, "J");
    put_row(&s->paper, "Longest side that this drive lifts",
            !plan->drive_utilisation_given ? "needs its rated torque"
            : plan->longest_side > 0       ? roughly(p, plan->longest_side)
                                           : "none: not even its own weight");
    put_part(&s->paper, "LAGS OF THE FREE END, BY CAUSE");
    put_row(&s->paper, "Elastic: the bar's twist", fine(p, plan->lag_elastic));
    put_row(&s->paper, "Play of the splices", fine(p, plan->lag_play));
    put_row(&s->paper, "Unequal roll, when open", fine(p, plan->lag_unequal));
    put_row(&s->paper, "Hip or sill out of level", fine(p, plan->lag_level));
    put_quantity(s, "Twist of the bar, end to end", plan->twist, "rad");
}
