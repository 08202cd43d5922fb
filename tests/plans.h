/* SPDX-License-Identifier: MIT */
/* The plain side, changed a little, and what its plan holds. */
#ifndef TUNNELSIDE_PLANS_H
#define TUNNELSIDE_PLANS_H

#include <check.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "expect.h"

static inline tside_plan planned(const tside_side *side)
{
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(side, &plan, &fault));
    return plan;
}

static inline tside_side plain(void)
{
    tside_side side;
    bench_side(&side);
    return side;
}

/* kg/m */
static inline double bar_mass(const tside_bar *bar)
{
    tside_metal_values metal;
    tside_section section;
    tside_fault fault;
    ANSWERS(tside_material_values(&bar->material, &metal, &fault));
    ANSWERS(tside_round_section(&bar->tube, metal.density, &section, &fault));
    return section.mass;
}

/* Where its guide's line is in line with an extender's eye, from the curtain's edge. */
static inline double run_on(const tside_side *side, const tside_end *end, double along)
{
    return side->frame.tube.diameter / 2 + end->extender.spacer + end->extender.tube.side +
           end->extender.eye_stand_off - side->curtain.past - along;
}

/*
 * The bar beyond the curtain's edges, from the drive's centre to the stop outside the free end's collar, in line with
 * extenders.
 */
static inline double overhangs(const tside_side *side)
{
    return run_on(side, &side->drive_end, side->drive.along) + run_on(side, &side->free_end, side->collar.along) +
           side->collar.half_length + side->collar.clearance;
}

/* What the plan lifts, made apart from it. */
static inline tside_load load_of(const tside_side *side)
{
    tside_load load;
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = side->length + 2 * side->curtain.past;
    load.bar_mass = bar_mass(&side->bar);
    load.clip_mass = side->bar.clip_mass;
    load.areal_mass = side->curtain.areal_mass;
    load.wet = side->curtain.wet;
    load.friction = side->friction;
    load.end_mass = side->drive.mass + side->collar.mass + load.bar_mass * overhangs(side);
    return load;
}

static inline tside_travel travel_of(const tside_side *side)
{
    tside_roll roll = {side->bar.tube.diameter + side->bar.core_over, side->curtain.thickness, side->curtain.packing};
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_fault fault;
    ANSWERS(tside_bow_make(&side->frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side->curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side->curtain, &roll, &side->stops, &travel, &fault));
    return travel;
}

/* A motor's figures. */
static inline void give_motor(tside_drive *drive)
{
    drive->rated_voltage_given = drive->supply_voltage_given = drive->no_load_speed_given =
        drive->no_load_current_given = drive->stall_current_given = 1;
    drive->rated_voltage = drive->supply_voltage = 24;
    drive->no_load_speed = 0.4;
    drive->no_load_current = 0.5;
    drive->stall_current = 12;
}

static inline void on_hip(tside_side *side)
{
    side->drive_end.hung = side->free_end.hung = TSIDE_ON_HIP;
    side->stops.gap = 0.15;
}

static inline const tside_finding *finding_of(const tside_plan *plan, tside_finding_code code)
{
    for (int i = 0; i < plan->finding_count; i++)
        if (plan->findings[i].code == code)
            return plan->findings + i;
    return NULL;
}

static inline int finds(const tside_plan *plan, tside_finding_code code)
{
    return finding_of(plan, code) != NULL;
}

static inline const tside_strength_line *strength_of(const tside_plan *plan, tside_strength_code code,
                                                     tside_which_end end)
{
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].code == code && plan->lines[i].end == end)
            return plan->lines + i;
    ck_abort_msg("no line for %s at end %d", tside_strength_text((int)code), (int)end);
    return NULL;
}

#endif
