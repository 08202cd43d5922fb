/* SPDX-License-Identifier: MIT */
/* A side's air, open as far as it goes; how far to turn the drive for what is asked; and how its bar grows. */
#include "side/airing.h"

#include "side/turns.h"
#include "statics/air.h"

/* Turns of the drive from shut to an opening, which is within the travel; a side that may stay shut takes none. */
static double turns_to(const tside_i_setup *setup, const tside_hang *hang, double opening)
{
    const tside_travel *travel = &setup->travel;
    if (opening == 0)
        return 0;
    return tside_i_drive_turns(travel, hang, tside_i_travel_rise(travel, travel->sill + opening));
}

void tside_i_plan_air(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan)
{
    const tside_air *air = &setup->side->air;
    plan->air_given = air->sides != TSIDE_AIR_UNASKED;
    if (!plan->air_given)
        return;
    plan->airing = tside_i_air_through(air, setup->side->length, plan->opening);
    plan->turns_for_changes_given = plan->airing.for_changes_given;
    if (plan->turns_for_changes_given)
        plan->turns_for_changes = turns_to(setup, hang, plan->airing.for_changes);
    plan->turns_for_rise_given = plan->airing.for_rise_given;
    if (plan->turns_for_rise_given)
        plan->turns_for_rise = turns_to(setup, hang, plan->airing.for_rise);
    plan->bar_growth = setup->bar_metal.expansion * plan->bar_length * air->bar_warming;
}
