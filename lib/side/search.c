/* SPDX-License-Identifier: MIT */
/* Searches over whole plans: how low the eye may be, the smallest drive and the lightest bar that serve. */
#include "side/plan.h"

#include "base/field.h"
#include "parts/material.h"
#include "parts/tube.h"
#include "statics/fixed.h"
#include "statics/push.h"

#define HIGHEST_RISE 5.0

/* The greatest running side force, of a guide that hangs or stands. */
static double running_force(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung)
{
    const tside_i_lifting lifting = tside_i_lifting_of(setup, &hung->hang);
    tside_i_spot where;
    if (!hung->stands)
        return tside_i_greatest_push(&setup->track, which == TSIDE_DRIVE_END ? &lifting : NULL, &hung->hang, 0, &where);
    return tside_i_fixed_force(&setup->track, which == TSIDE_DRIVE_END ? &lifting : NULL, hung->fixed, 0).reaction;
}

/* Whether an eye at this rise keeps kick out and side force within the side's limits; a refusal counts as no. */
static int rise_serves(const tside_i_setup *setup, tside_which_end which, double rise, tside_fault *fault,
                       tside_status *status)
{
    const tside_limits *limits = &setup->side->limits;
    tside_sweep sweep;
    tside_fixed fixed;
    tside_i_hung hung = {.sweep = &sweep, .fixed = &fixed};
    *status = tside_i_hang_end(setup, which, TSIDE_I_BEST_EYE, rise, &hung, fault);
    if (*status != TSIDE_OK)
        return 0;
    if (limits->kick_out_given && !(sweep.kick_out_error <= limits->kick_out))
        return 0;
    return !limits->side_force_given || running_force(setup, which, &hung) <= limits->side_force;
}

tside_status tside_eye_least(const tside_side *side, tside_which_end end, double *rise, tside_fault *fault)
{
    tside_i_setup setup;
    tside_collar collar;
    tside_status status;
    const tside_end *at;
    const double found = 1e-7; /* m, as the header promises */
    double low, high = HIGHEST_RISE;
    if (end != TSIDE_DRIVE_END && end != TSIDE_FREE_END)
        return tside_i_bound(fault, "end", "1", end, TSIDE_NOT_ONE_OF, TSIDE_FREE_END);
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_settle(&tside_i_side_table, NULL, tside_i_set_up(side, &side->bar, &side->drive, &setup, fault),
                       fault));
    at = tside_i_end(side, end);
    collar = tside_i_end_collar(&setup, end);
    /* kick falls as the eye rises: from the height that just clears, upward */
    low = setup.track.open.y + fmax(collar.offset, collar.height + at->guide.eye_clearance) - side->curtain.hip;
    low = fmax(low, 0) + SLACK; /* at the height itself the drive would just touch the eye */
    if (!rise_serves(&setup, end, high, fault, &status)) {
        if (status != TSIDE_OK)
            return tside_i_settle(&tside_i_side_table, NULL, status, fault);
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH,
                                    end == TSIDE_DRIVE_END ? "drive_end.rise" : "free_end.rise", "limits",
                                    "not even the highest eye keeps to the limits", "m", high, TSIDE_NONE_FITS, 0, 0);
    }
    if (rise_serves(&setup, end, low, NULL, &status))
        high = low;
    while (high - low > found) {
        double middle = (low + high) / 2;
        if (rise_serves(&setup, end, middle, NULL, &status))
            high = middle;
        else
            low = middle;
    }
    *rise = high;
    return TSIDE_OK;
}

/* --- drives --- */

/* What keeps a drive from serving, the gravest first. */
static const tside_finding_code failures[] = {TSIDE_FINDING_DRIVE_WEAK,  TSIDE_FINDING_STALLS,
                                              TSIDE_FINDING_LIMIT_TURNS, TSIDE_FINDING_LONG_RUN,
                                              TSIDE_FINDING_OVERLOAD,    TSIDE_FINDING_TURNS_BACK};

static tside_drive_choice judge(const tside_plan *plan)
{
    for (size_t k = 0; k < sizeof failures / sizeof *failures; k++)
        for (int i = 0; i < plan->finding_count; i++)
            if (plan->findings[i].code == failures[k])
                return (tside_drive_choice){TSIDE_DRIVE_FAILS, failures[k], plan->findings[i].value,
                                            plan->findings[i].bound, TSIDE_OK};
    return (tside_drive_choice){.fit = TSIDE_DRIVE_LARGER};
}

static int is_smaller(const tside_drive *one, const tside_drive *other)
{
    return one->rated_torque < other->rated_torque ||
           (one->rated_torque == other->rated_torque && one->mass < other->mass);
}

/* Every field of a side's but its own drive's. */
static tside_status check_without_drive(const tside_side *side, tside_fault *fault)
{
    const tside_table *all = &tside_i_side_table;
    int drive = 0;
    while (all->rows[drive].nested != &tside_i_drive_table)
        drive++;
    TRY(tside_i_check_table(&(tside_table){.rows = all->rows, .count = drive}, side, fault));
    return tside_i_check_table(&(tside_table){.rows = all->rows + drive + 1, .count = all->count - drive - 1}, side,
                               fault);
}

tside_status tside_drive_smallest(const tside_side *side, const tside_drive *drives, int count, int *index,
                                  tside_drive_choice *choices, tside_fault *fault)
{
    tside_plan plan;
    int best = -1;
    TRY(tside_i_whole(fault, "count", count, 1, 1000));
    TRY(check_without_drive(side, fault));
    for (int i = 0; i < count; i++) {
        tside_status status = tside_i_check_table(&tside_i_drive_table, drives + i, NULL);
        tside_drive_choice choice;
        if (status == TSIDE_OK && !drives[i].rated_torque_given)
            status = TSIDE_OUT_OF_BOUNDS; /* it is the one that is compared */
        if (status == TSIDE_OK)
            status = tside_i_plan(side, &side->bar, drives + i, TSIDE_I_FINDINGS, &plan, NULL);
        choice = status == TSIDE_OK ? judge(&plan)
                                    : (tside_drive_choice){.fit = TSIDE_DRIVE_REFUSED, .status = (int)status};
        tside_i_hand_over(&tside_i_drive_choice_table, &choice, choices + i, sizeof *choices);
        if (choices[i].fit == TSIDE_DRIVE_LARGER && (best < 0 || is_smaller(drives + i, drives + best)))
            best = i;
    }
    if (best < 0)
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "drives", "", "no drive of the list serves");
    for (int i = 0; i < count; i++)
        if (choices[i].fit == TSIDE_DRIVE_LARGER) {
            choices[i].value = drives[i].rated_torque;
            choices[i].bound = drives[best].rated_torque;
        }
    choices[best].fit = TSIDE_DRIVE_CHOSEN;
    *index = best;
    return TSIDE_OK;
}

/* --- bars --- */

/* By how much a planned side exceeds its limits, as the worst ratio; at most 1 serves. */
static double excess(const tside_side *side, const tside_plan *plan)
{
    double worst = 0;
    if (side->limits.twist_given)
        worst = fmax(worst, plan->twist / side->limits.twist);
    if (side->limits.lag_given)
        worst = fmax(worst, plan->lag_elastic / side->limits.lag);
    for (int i = 0; i < plan->line_count; i++)
        if ((plan->lines[i].code == TSIDE_BAR_SHEAR || plan->lines[i].code == TSIDE_BAR_SHEAR_STALL) &&
            plan->lines[i].utilisation_given)
            worst = fmax(worst, plan->lines[i].utilisation);
    return worst;
}

tside_status tside_bar_smallest(const tside_side *side, int *index, tside_fault *fault)
{
    tside_plan plan;
    double lightest = HUGE_VAL, nearest = HUGE_VAL;
    int found = -1, near = -1;
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    if (side->bar_count == 0)
        return tside_i_bound(fault, "bars", "1", 0, TSIDE_NOT_ABOVE, 0);
    for (int i = 0; i < side->bar_count; i++) {
        tside_metal_values metal;
        tside_section section;
        double over;
        tside_status status;
        status = tside_i_plan(side, side->bars + i, &side->drive, TSIDE_I_LINES, &plan, fault);
        if (status == TSIDE_OK)
            status = tside_i_material_values(&side->bars[i].material, &metal, fault);
        if (status == TSIDE_OK)
            status = tside_i_round_section(&side->bars[i].tube, metal.density, &section, fault);
        if (status != TSIDE_OK) {
            if (fault)
                fault->index = i;
            return status;
        }
        over = excess(side, &plan);
        if (over < nearest)
            nearest = over, near = i;
        if (over <= 1 && section.mass < lightest)
            lightest = section.mass, found = i;
    }
    if (found < 0) {
        tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "bars", "limits", "no bar of the list keeps to the limits", "1",
                             nearest, TSIDE_NO_RELATION, 0, 0);
        if (fault)
            fault->index = near;
        return TSIDE_OUT_OF_REACH;
    }
    *index = found;
    return TSIDE_OK;
}
