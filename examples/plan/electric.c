/* SPDX-License-Identifier: MIT */
/* How the motor runs, what its cable loses, and what a crank asks. */
#include <stdio.h>

#include "sheet.h"

/* Seconds up to two minutes, then minutes. */
static const char *duration(pen *p, double seconds)
{
    return seconds < 120 ? quantity(p, seconds, "s") : quantity(p, seconds / 60, "min");
}

static void put_run(sheet *s)
{
    const tside_run *run = &s->side->plan.run;
    const tside_drive *drive = &s->side->wanted.side.drive;
    pen *p = &s->pen;
    put_part(&s->paper, "MOTOR");
    if (run->stalls)
        put_words(&s->paper,
                  "It stalls on its way up, %s turns of the bar from shut: the worst torque is %s, and on its supply "
                  "and cable it gives no more than %s.",
                  plain(p, run->stall_turns, 1), quantity(p, s->side->plan.worst.drive, "N m"),
                  quantity(p, run->stall_torque, "N m"));
    if (run->time_up_given)
        put_row(&s->paper, "Up, from shut to open", duration(p, run->time_up));
    put_row(&s->paper, "Down, at no-load speed", duration(p, run->time_down));
    if (drive->rated_run_given && run->time_up_given)
        put_words(&s->paper, "It may run for %s at a time, of which the way up is %s %%.",
                  duration(p, drive->rated_run), plain(p, 100 * run->time_up / drive->rated_run, 0));
    else if (drive->rated_run_given)
        put_row(&s->paper, "It may run at a time", duration(p, drive->rated_run));
    put_quantity(s, "It stalls, on its supply and cable, at", run->stall_torque, "N m");
    if (run->torque_rms_given && !drive->rated_torque_given)
        put_quantity(s, "Root mean square of its torque over that", run->torque_rms, "N m");
    else if (run->torque_rms_given)
        put_words(&s->paper, "Root mean square of its torque over the time up: %s, of %s rated.",
                  quantity(p, run->torque_rms, "N m"), quantity(p, drive->rated_torque, "N m"));
    if (run->current_peak_given) {
        put_quantity(s, run->stalls ? "Current where it stalls" : "Greatest running current", run->current_peak, "A");
        put_quantity(s, "Current at the first moment", run->current_start, "A");
    }
    if (run->energy_given)
        put_quantity(s, "Energy from the supply, up", run->energy / 3600, "Wh");
    if (drive->holds == TSIDE_HOLDS_UNKNOWN)
        put_words(&s->paper,
                  "The file does not say whether the drive holds the bar where it stops. Be sure that it does, by a "
                  "self-locking gear or a brake.");
}

/* --- the cable --- */

static const char *wire_size(pen *p, const tside_cable *cable, char *buffer, size_t size)
{
    if (cable->wire == TSIDE_AREA)
        snprintf(buffer, size, "%s mm2",
                 plain(p, cable->area * 1e6,
                       cable->area < 9.5e-7   ? 2
                       : cable->area < 9.5e-6 ? 1
                                              : 0));
    else if (cable->gauge <= 0)
        snprintf(buffer, size, "AWG %d/0", 1 - cable->gauge);
    else
        snprintf(buffer, size, "AWG %d", cable->gauge);
    return buffer;
}

static void put_drop(sheet *s, const char *label, double drop)
{
    pen *p = &s->pen;
    char value[64];
    snprintf(value, sizeof value, "%s, %s %% of the supply's", quantity(p, drop, "V"),
             plain(p, 100 * drop / s->side->wanted.side.drive.supply_voltage, 1));
    put_row(&s->paper, label, value);
}

/* The smallest trade size that would keep the drop's limit, over the same length. */
static void put_smallest(sheet *s, const char *label, double current, tside_loading loading)
{
    const tside_side *side = &s->side->wanted.side;
    tside_cable cable = side->cable, smallest;
    char size[32];
    cable.length = s->side->plan.run.cable_length;
    if (tside_cable_smallest(&cable, side->drive.supply_voltage, current, loading,
                             cable.drop_limit * side->drive.supply_voltage, &smallest, NULL) == TSIDE_OK)
        put_row(&s->paper, label, wire_size(&s->pen, &smallest, size, sizeof size));
    else
        put_row(&s->paper, label, "none of the trade's sizes");
}

/* Under the cable, or under the motor where there is none. */
static void put_fuse(sheet *s)
{
    if (s->side->wanted.side.cable.fuse_given)
        put_quantity(s, "Fuse at the supply", s->side->wanted.side.cable.fuse, "A");
}

static void put_cable(sheet *s)
{
    const tside_side *side = &s->side->wanted.side;
    const tside_cable *cable = &side->cable;
    const tside_run *run = &s->side->plan.run;
    pen *p = &s->pen;
    char size[32];
    put_part(&s->paper, "CABLE");
    put_words(&s->paper,
              "%s, %s, %s from supply to drive, of which %s follows the drive as it climbs; at %s degC it has %s there "
              "and back.",
              wire_size(p, cable, size, sizeof size),
              cable->strands == TSIDE_SOLID      ? "solid"
              : cable->strands == TSIDE_STRANDED ? "stranded"
                                                 : "flexible",
              roughly(p, run->cable_length), roughly(p, run->cable_length - cable->length),
              plain(p, cable->temperature, 0), quantity(p, run->resistance, "ohm"));
    put_drop(s, "It loses, at the greatest running current", run->drop_peak);
    put_drop(s, "It loses at the first moment", run->drop_start);
    if (cable->drop_limit_given) {
        put_drop(s, "It may lose", cable->drop_limit * side->drive.supply_voltage);
        put_smallest(s, "Smallest size that keeps that, running", run->current_peak, TSIDE_RUNNING);
        put_smallest(s, "Smallest size that keeps that, starting",
                     side->drive.stall_current * side->drive.supply_voltage / side->drive.rated_voltage,
                     TSIDE_STARTING);
        put_words(
            &s->paper,
            "Those keep the drop and no more: any cable must also carry what its fuse lets through, by local code.");
    }
    if (cable->ampacity_given)
        put_quantity(s, "It may carry, as the file says", cable->ampacity, "A");
}

/* Nothing that was told is passed over in silence. */
static void put_unused(sheet *s)
{
    put_part(&s->paper, "CABLE");
    put_words(&s->paper, "%s",
              s->side->wanted.side.drive.kind == TSIDE_HAND
                  ? "The drive is turned by hand: what its cable loses is not worked out."
                  : "What the cable loses is not worked out: that needs the drive's stall torque and no-load speed.");
}

/* --- the crank --- */

static const char *effort_rule(int rule)
{
    switch (rule) {
    case TSIDE_MIL_STD_1472: return "MIL-STD-1472, a crank's light load, from memory";
    case TSIDE_EN_13561: return "EN 13561, cranks, class 1, from memory";
    default: return "given in the file";
    }
}

static void put_crank(sheet *s)
{
    const tside_cranking *cranking = &s->side->plan.cranking;
    const tside_crank *crank = &s->side->wanted.side.crank;
    pen *p = &s->pen;
    put_part(&s->paper, "CRANK");
    put_words(&s->paper, "At the worst torque its handle asks %s, %s %% of %s (%s).",
              quantity(p, cranking->effort, "N"), plain(p, 100 * cranking->utilisation, 0),
              quantity(p, cranking->limit, "N"), effort_rule((int)crank->rule));
    put_quantity(s, "Turns of the crank from shut to open", cranking->turns, "turn");
    put_words(&s->paper, "That takes %s at %s.", duration(p, cranking->time), quantity(p, crank->rate, "rad/s"));
}

void put_electric(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    if (plan->run_given)
        put_run(s);
    if (plan->run_given && s->side->wanted.side.cable.wire != TSIDE_NO_CABLE)
        put_cable(s);
    if (!plan->run_given && s->side->wanted.side.cable.wire != TSIDE_NO_CABLE)
        put_unused(s);
    if (plan->run_given)
        put_fuse(s);
    if (plan->cranking_given)
        put_crank(s);
}
