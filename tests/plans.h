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
