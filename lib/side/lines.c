/* SPDX-License-Identifier: MIT */
/* Which lines of strength a side has. */
#include "side/lines.h"

#include "parts/material.h"
#include "parts/tube.h"
#include "statics/strength.h"

/* Where the next line goes: a plan has room for as many as there can be. */
static tside_strength_line *next_line(tside_plan *plan)
{
    return plan->lines + plan->line_count++;
}

/* Bending stalled going up or jammed coming down. */
static void add_either_way(tside_strength_code code, tside_which_end end, double up, double down, double modulus,
                           const tside_metal_values *metal, tside_plan *plan)
{
    tside_strength_line *line = next_line(plan), jammed;
    tside_i_stress_line(line, code, end, up / modulus, metal, 1);
    tside_i_stress_line(&jammed, code, end, down / modulus, metal, 1);
    tside_i_worse(line, &jammed);
}

/* Bar and rail between ropes, in the wind asked. */
static void add_rope_lines(const tside_i_setup *setup, tside_plan *plan)
{
    const tside_bay_load *bay = &plan->rope.bay;
    const tside_roping *rope = &setup->side->rope;
    tside_i_stress_line(next_line(plan), TSIDE_BAR_WIND, TSIDE_DRIVE_END, bay->stress, &setup->bar_metal, 1);
    tside_i_force_line(next_line(plan), TSIDE_RAIL_SCREW, TSIDE_DRIVE_END, bay->screw, rope->screw_limit_given,
                       rope->screw_limit);
}

void tside_i_bar_lines(const tside_i_setup *setup, const tside_i_bending *bending, tside_plan *plan)
{
    const tside_bar *bar = setup->bar;
    const tside_metal_values *metal = &setup->bar_metal;
    const tside_section *section = &setup->bar_section;
    double arm = bar->screws * bar->tube.diameter / 2, beyond = fmax(setup->load.length - plan->splice_near, 0);
    tside_i_stress_line(next_line(plan), TSIDE_BAR_SHEAR, TSIDE_DRIVE_END, plan->worst.drive / section->torsion_modulus,
                        metal, 0.6);
    tside_i_stress_line(next_line(plan), TSIDE_BAR_SHEAR_STALL, TSIDE_DRIVE_END,
                        plan->stall_torque / section->torsion_modulus, metal, 0.6);
    tside_i_stress_line(next_line(plan), TSIDE_BAR_BENDING, TSIDE_DRIVE_END, bending->bar / section->section_modulus,
                        metal, 1);
    add_either_way(TSIDE_BAR_BENDING_STALL, TSIDE_DRIVE_END, bending->bar_up, bending->bar_down,
                   section->section_modulus, metal, plan);
    tside_i_force_line(next_line(plan), TSIDE_COUPLING_SCREW, TSIDE_DRIVE_END, plan->stall_torque / arm,
                       bar->screw_limit_given, bar->screw_limit);
    if (plan->splices > 0) {
        tside_i_force_line(next_line(plan), TSIDE_SPLICE_SCREW, TSIDE_DRIVE_END, plan->worst.per_metre * beyond / arm,
                           bar->screw_limit_given, bar->screw_limit);
        tside_i_force_line(next_line(plan), TSIDE_SPLICE_SCREW_STALL, TSIDE_DRIVE_END, plan->stall_torque / arm,
                           bar->screw_limit_given, bar->screw_limit);
    }
    if (plan->rope.bay_given)
        add_rope_lines(setup, plan);
}

/* The bow bolt's hole lies at the neutral axis of bending in the end wall's plane. */
static tside_status add_net_section(const tside_i_setup *setup, tside_which_end which, double hole, tside_plan *plan,
                                    tside_fault *fault)
{
    const tside_round *tube = &setup->side->frame.tube;
    tside_section section;
    double I;
    TRY(tside_i_within(fault, "frame", tside_i_round_section(tube, 1, &section, fault)));
    I = section.inertia;
    tside_i_plain_line(next_line(plan), TSIDE_BOW_NET_SECTION, which, TSIDE_SHARE,
                       (I - 2 * tube->wall * hole * hole * hole / 12) / I);
    return TSIDE_OK;
}

static tside_status guide_section(const tside_guide *guide, tside_metal_values *metal, tside_section *section,
                                  tside_fault *fault)
{
    TRY(tside_i_within(fault, "guide", tside_i_material_values(&guide->material, metal, fault)));
    return tside_i_within(fault, "guide", tside_i_round_section(&guide->tube, metal->density, section, fault));
}

tside_status tside_i_end_lines(const tside_i_setup *setup, tside_which_end which, const tside_i_end_loads *loads,
                               const tside_end_plan *end_plan, tside_plan *plan, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    const tside_i_bending *bending = &loads->bending;
    tside_metal_values metal;
    tside_section section;
    TRY(tside_i_within(fault, tside_i_end_name(which), guide_section(&end->guide, &metal, &section, fault)));
    add_either_way(TSIDE_GUIDE_BENDING, which, bending->guide_up, bending->guide_down, section.section_modulus, &metal,
                   plan);
    if (end->hung == TSIDE_ON_HIP) {
        tside_strength_line *line = next_line(plan), jammed;
        tside_i_plain_line(line, TSIDE_RAIL_PULL, which, TSIDE_FORCE, fmax(end_plan->side_force_stall, 0));
        tside_i_plain_line(&jammed, TSIDE_RAIL_PULL, which, TSIDE_FORCE, end_plan->side_force_jam);
        tside_i_worse(line, &jammed);
        return TSIDE_OK;
    }
    plan->line_count += tside_i_extender_lines(&end->extender, &loads->extender, which, plan->lines + plan->line_count);
    return add_net_section(setup, which, end->extender.bolt_hole, plan, fault);
}
