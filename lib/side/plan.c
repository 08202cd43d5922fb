/* SPDX-License-Identifier: MIT */
/* The plan of a side: a table of contents. */
#include "side/plan.h"

#include <string.h>

#include "base/field.h"
#include "parts/crank.h"
#include "parts/drive.h"
#include "side/airing.h"
#include "side/blowing.h"
#include "side/end.h"
#include "side/finding.h"
#include "side/joints.h"
#include "side/lines.h"
#include "side/roping.h"
#include "side/turns.h"
#include "statics/run.h"

static void plan_travel(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan)
{
    const tside_travel *travel = &setup->travel;
    plan->curtain_length = setup->load.length;
    plan->bar_length = tside_i_bar_length(&setup->bar_lengths);
    plan->bar_beyond_drive = setup->bar_lengths.beyond_drive;
    plan->bar_beyond_free = setup->bar_lengths.beyond_free;
    plan->fixing_x = setup->travel.line.x;
    tside_i_travel_position(travel, &setup->track.shut, &plan->shut);
    tside_i_travel_position(travel, &setup->track.open, &plan->open);
    plan->bar_turns = plan->open.turns;
    plan->drive_turns = (tside_i_drive_angle(travel, hang, &setup->track.open) -
                         tside_i_drive_angle(travel, hang, &setup->track.shut)) /
                        (2 * TSIDE_PI);
    plan->drive_turns_least = tside_i_drive_turns_with(setup, hang, 1);
    plan->drive_turns_most = tside_i_drive_turns_with(setup, hang, -1);
    plan->highest = travel->highest;
    plan->opening = plan->open.opening;
    plan->seal = travel->sill - plan->shut.underside;
}

/* --- torque, twist, lags --- */

static double elastic_lag(const tside_i_setup *setup, double per_metre, double r, double nx, double *twist)
{
    *twist = tside_i_bar_twist(per_metre, setup->load.length, setup->bar_metal.shear_modulus,
                               setup->bar_section.torsion);
    return r * *twist * nx;
}

/* What differs between shut and open: the energy, and the opening at the far end. */
static void plan_open(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan)
{
    const tside_travel *travel = &setup->travel;
    const tside_i_spot *open = &setup->track.open, *shut = &setup->track.shut;
    double lag, ignored;
    plan->work = tside_i_energy(travel, lifting->load, lifting->hang, open) -
                 tside_i_energy(travel, lifting->load, lifting->hang, shut);
    lag = elastic_lag(setup, tside_i_torque(lifting, open).per_metre, open->r, open->nx, &ignored) +
          open->r * plan->splices * setup->bar->play * open->nx;
    plan->opening_far = plan->opening - lag - plan->lag_unequal - plan->lag_level;
}

/* lifting: with what the drive has available, its rated torque over its safety factor. */
static void plan_torque(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan)
{
    const tside_side *side = setup->side;
    tside_i_spot spot;
    tside_position at;
    double nx;
    tside_i_travel_at(&setup->travel, tside_i_travel_progress(&setup->travel, plan->worst.turns), &spot);
    tside_i_travel_position(&setup->travel, &spot, &at);
    plan->worst_underside = at.underside;
    plan->design_torque = plan->worst.drive * setup->drive->safety_factor;
    plan->drive_utilisation_given = setup->drive->rated_torque_given;
    if (plan->drive_utilisation_given)
        plan->drive_utilisation = plan->design_torque / setup->drive->rated_torque;
    plan->stall_torque = tside_i_drive_stall(setup->drive, fmax(plan->worst.drive, 0));
    nx = cos(at.slope);
    plan->lag_elastic = elastic_lag(setup, plan->worst.per_metre, at.diameter / 2, nx, &plan->twist);
    plan->lag_play = at.diameter / 2 * plan->splices * setup->bar->play * nx;
    plan->lag_unequal = plan->open.taken_up * side->diameter_difference;
    plan->lag_level = side->out_of_level;
    plan_open(setup, lifting, plan);
}

/* --- motor and crank --- */

static tside_status plan_run(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan,
                             tside_fault *fault)
{
    const tside_side *side = setup->side;
    plan->run_given = tside_i_drive_runs(setup->drive);
    plan->cranking_given = side->crank.fitted == TSIDE_CRANK;
    if (plan->run_given)
        TRY(tside_i_drive_run(lifting, setup->drive, &side->cable, &plan->worst, &plan->run, fault));
    if (plan->cranking_given)
        plan->cranking = tside_i_crank_effort(&side->crank, fmax(plan->worst.drive, 0), fmax(plan->drive_turns, 0));
    return TSIDE_OK;
}

/* A guide that turns as fast as the bar is mended by its eye's place. */
static tside_status check_rate(const tside_i_setup *setup, double rate, tside_fault *fault)
{
    const tside_i_names names = tside_i_end_names(
        setup, TSIDE_DRIVE_END, setup->side->drive_end.hung == TSIDE_ON_HIP ? TSIDE_I_HIP : TSIDE_I_OWN_EYE);
    if (rate < 1)
        return TSIDE_OK;
    return tside_i_within(fault, "drive_end",
                          tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names.eye_y.field, names.offset,
                                         "the guide would turn as fast as the bar, so that no torque drives it"));
}

static tside_status plan_lift(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan,
                              tside_fault *fault)
{
    double longest;
    TRY(check_rate(setup, tside_i_lift_extremes(lifting, &plan->worst, &plan->least_down, &longest), fault));
    if (setup->drive->rated_torque_given)
        plan->longest_side = fmax(longest - 2 * setup->side->curtain.past, 0);
    plan_torque(setup, lifting, plan);
    return TSIDE_OK;
}

static int has(unsigned parts, tside_i_part part)
{
    return (parts & part) == part;
}

/* What a drive may give with its safety factor; 0 where it is not known, and nothing is then asked of it. */
static double available(const tside_drive *drive)
{
    return drive->rated_torque_given ? drive->rated_torque / drive->safety_factor : 0;
}

/* An end and its lines of strength; with the drive's the bar's, which that end bends. */
static tside_status plan_end(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                             const tside_i_hung *hung, unsigned parts, tside_plan *plan, tside_fault *fault)
{
    int drive = which == TSIDE_DRIVE_END;
    tside_end_plan *end = drive ? &plan->drive_end : &plan->free_end;
    tside_i_end_loads loads;
    TRY(tside_i_plan_end(setup, which, drive ? lifting : NULL, hung, drive ? plan->stall_torque : 0,
                         &plan->blowing.pressure, end, &loads, fault));
    tside_i_hip_instead(setup, which, end);
    if (has(parts, TSIDE_I_KEEP_OFFS))
        tside_i_clear_keep_outs(setup, which, hung, end);
    if (!has(parts, TSIDE_I_LINES))
        return TSIDE_OK;
    if (drive)
        tside_i_bar_lines(setup, &loads.bending, plan);
    return tside_i_end_lines(setup, which, &loads, end, plan, fault);
}

static tside_status make_plan(const tside_side *side, const tside_bar *bar, const tside_drive *drive, unsigned parts,
                              tside_plan *plan, tside_fault *fault)
{
    tside_i_setup setup;
    tside_i_hung driven = {.sweep = &plan->drive_end.sweep, .fixed = &plan->drive_end.fixed};
    tside_i_hung free = {.sweep = &plan->free_end.sweep, .fixed = &plan->free_end.fixed};
    tside_i_lifting lifting;
    memset(plan, 0, sizeof *plan); /* what a side does not have is 0, and padding too: equal sides give equal bytes */
    TRY(tside_i_set_up(side, bar, drive, &setup, fault));
    TRY(tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &driven, fault));
    if (has(parts, TSIDE_I_ENDS))
        TRY(tside_i_hang_end(&setup, TSIDE_FREE_END, TSIDE_I_OWN_EYE, 0, &free, fault));
    lifting = tside_i_lifting_of(&setup, tside_i_hang_of(&driven));
    lifting.available = available(drive);
    plan_travel(&setup, lifting.hang, plan);
    TRY(tside_i_within_bar(&setup, fault,
                           tside_i_bar_joints(bar, &setup.bar_lengths, &plan->splices, &plan->splice_near, fault)));
    if (has(parts, TSIDE_I_AIR))
        tside_i_plan_air(&setup, lifting.hang, plan);
    if (has(parts, TSIDE_I_WIND))
        TRY(tside_i_plan_wind(&setup, plan, fault));
    if (has(parts, TSIDE_I_ROPES))
        TRY(tside_i_plan_ropes(&setup, lifting.hang, plan, fault));
    if (has(parts, TSIDE_I_TORQUE))
        TRY(plan_lift(&setup, &lifting, plan, fault));
    if (has(parts, TSIDE_I_RUN))
        TRY(plan_run(&setup, &lifting, plan, fault));
    if (has(parts, TSIDE_I_ENDS)) {
        TRY(plan_end(&setup, TSIDE_DRIVE_END, &lifting, &driven, parts, plan, fault));
        TRY(plan_end(&setup, TSIDE_FREE_END, &lifting, &free, parts, plan, fault));
    }
    if (has(parts, TSIDE_I_FINDINGS))
        tside_i_find(&setup, &driven, &free, plan);
    return tside_i_within(fault, "plan", tside_i_finite(&tside_i_plan_table, plan, fault));
}

tside_status tside_i_plan(const tside_side *side, const tside_bar *bar, const tside_drive *drive, unsigned parts,
                          tside_plan *plan, tside_fault *fault)
{
    return tside_i_settle(&tside_i_side_table, NULL, make_plan(side, bar, drive, parts, plan, fault), fault);
}

tside_status tside_plan_side(const tside_side *side, tside_plan *plan, tside_fault *fault)
{
    tside_plan made;
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_plan(side, &side->bar, &side->drive, TSIDE_I_FINDINGS, &made, fault));
    tside_i_hand_over(&tside_i_plan_table, &made, plan, sizeof made);
    return TSIDE_OK;
}
