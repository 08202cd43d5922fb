/* SPDX-License-Identifier: MIT */
/* How the motor runs, what its cable loses, and what a crank asks. */
#include <stdio.h>

#include "sheet.h"

static void print_quantity(sheet *s, const char *label, double value, const char *unit)
{
    print_row(s, label, quantity(&s->pen, value, unit));
}

/* Seconds up to two minutes, then minutes. */
static const char *duration(pen *p, double seconds)
{
    return seconds < 120 ? quantity(p, seconds, "s") : quantity(p, seconds / 60, "min");
}

static void print_run(sheet *s)
{
    const tside_run *run = &s->side->plan.run;
    const tside_drive *drive = &s->side->wanted.side.drive;
    pen *p = &s->pen;
    print_title(s, "MOTOR");
    if (run->stalls)
        text_say(s->out, "  ",
                 "It stalls on its way up, %s turns of the bar from shut: the worst torque is %s, and on its supply "
                 "and cable it gives no more than %s.",
                 plain(p, run->stall_turns, 1), quantity(p, s->side->plan.worst.drive, "N m"),
                 quantity(p, run->stall_torque, "N m"));
    if (run->time_up_given)
        print_row(s, "Up, from shut to open", duration(p, run->time_up));
    print_row(s, "Down, at no-load speed", duration(p, run->time_down));
    if (drive->rated_run_given && run->time_up_given)
        text_say(s->out, "  ", "It may run for %s at a time, of which the way up is %s %%.",
                 duration(p, drive->rated_run), plain(p, 100 * run->time_up / drive->rated_run, 0));
    else if (drive->rated_run_given)
        print_row(s, "It may run at a time", duration(p, drive->rated_run));
    print_quantity(s, "It stalls, on its supply and cable, at", run->stall_torque, "N m");
    if (run->torque_rms_given)
        text_say(s->out, "  ", "Root mean square of its torque over the time up: %s, of %s rated.",
                 quantity(p, run->torque_rms, "N m"), quantity(p, drive->rated_torque, "N m"));
    if (run->current_peak_given) {
        print_quantity(s, run->stalls ? "Current where it stalls" : "Greatest running current", run->current_peak, "A");
        print_quantity(s, "Current at the first moment", run->current_start, "A");
    }
    if (run->energy_given)
        print_quantity(s, "Energy from the supply, up", run->energy / 3600, "Wh");
    if (drive->holds == TSIDE_HOLDS_UNKNOWN)
        text_wrap(s->out, "  ",
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

static void print_drop(sheet *s, const char *label, double drop)
{
    pen *p = &s->pen;
    char value[64];
    snprintf(value, sizeof value, "%s, %s %% of the supply's", quantity(p, drop, "V"),
             plain(p, 100 * drop / s->side->wanted.side.drive.supply_voltage, 1));
    print_row(s, label, value);
}

/* The smallest trade size that would keep the drop's limit, over the same length. */
static void print_smallest(sheet *s, const char *label, double current, tside_loading loading)
{
    const tside_side *side = &s->side->wanted.side;
    tside_cable cable = side->cable, smallest;
    char size[32];
    cable.length = s->side->plan.run.cable_length;
    if (tside_cable_smallest(&cable, side->drive.supply_voltage, current, loading,
                             cable.drop_limit * side->drive.supply_voltage, &smallest, NULL) == TSIDE_OK)
        print_row(s, label, wire_size(&s->pen, &smallest, size, sizeof size));
    else
        print_row(s, label, "none of the trade's sizes");
}

/* Under the cable, or under the motor where there is none. */
static void print_fuse(sheet *s)
{
    if (s->side->wanted.side.cable.fuse_given)
        print_quantity(s, "Fuse at the supply", s->side->wanted.side.cable.fuse, "A");
}

static void print_cable(sheet *s)
{
    const tside_side *side = &s->side->wanted.side;
    const tside_cable *cable = &side->cable;
    const tside_run *run = &s->side->plan.run;
    pen *p = &s->pen;
    char size[32];
    print_title(s, "CABLE");
    text_say(s->out, "  ",
             "%s, %s, %s from supply to drive, of which %s follows the drive as it climbs; at %s degC it has %s there "
             "and back.",
             wire_size(p, cable, size, sizeof size),
             cable->strands == TSIDE_SOLID      ? "solid"
             : cable->strands == TSIDE_STRANDED ? "stranded"
                                                : "flexible",
             roughly(p, run->cable_length), roughly(p, run->cable_length - cable->length),
             plain(p, cable->temperature, 0), quantity(p, run->resistance, "ohm"));
    print_drop(s, "It loses, at the greatest running current", run->drop_peak);
    print_drop(s, "It loses at the first moment", run->drop_start);
    if (cable->drop_limit_given) {
        print_drop(s, "It may lose", cable->drop_limit * side->drive.supply_voltage);
        print_smallest(s, "Smallest size that keeps that, running", run->current_peak, TSIDE_RUNNING);
        print_smallest(s, "Smallest size that keeps that, starting",
                       side->drive.stall_current * side->drive.supply_voltage / side->drive.rated_voltage,
                       TSIDE_STARTING);
        text_wrap(
            s->out, "  ",
            "Those keep the drop and no more: any cable must also carry what its fuse lets through, by local code.");
    }
    if (cable->ampacity_given)
        print_quantity(s, "It may carry, as the file says", cable->ampacity, "A");
}

/* Nothing that was told is passed over in silence. */
static void print_unused(sheet *s)
{
    print_title(s, "CABLE");
    text_wrap(s->out, "  ",
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

static void print_crank(sheet *s)
{
    const tside_cranking *cranking = &s->side->plan.cranking;
    const tside_crank *crank = &s->side->wanted.side.crank;
    pen *p = &s->pen;
    print_title(s, "CRANK");
    text_say(s->out, "  ", "At the worst torque its handle asks %s, %s %% of %s (%s).",
             quantity(p, cranking->effort, "N"), plain(p, 100 * cranking->utilisation, 0),
             quantity(p, cranking->limit, "N"), effort_rule((int)crank->rule));
    print_quantity(s, "Turns of the crank from shut to open", cranking->turns, "turn");
    text_say(s->out, "  ", "That takes %s at %s.", duration(p, cranking->time), quantity(p, crank->rate, "rad/s"));
}

void print_electric(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    if (plan->run_given)
        print_run(s);
    if (plan->run_given && s->side->wanted.side.cable.wire != TSIDE_NO_CABLE)
        print_cable(s);
    if (!plan->run_given && s->side->wanted.side.cable.wire != TSIDE_NO_CABLE)
        print_unused(s);
    if (plan->run_given)
        print_fuse(s);
    if (plan->cranking_given)
        print_crank(s);
}
