/* SPDX-License-Identifier: MIT */
/* Which lines of strength a side has. */
#include "side/lines.h"

#include "parts/material.h"
#include "parts/tube.h"
#include "statics/strength.h"

static void add_line(tside_plan *plan, tside_strength_line line)
{
    if (plan->line_count < TSIDE_STRENGTH_LINES)
        plan->lines[plan->line_count++] = line;
}

void tside_i_bar_lines(const tside_i_setup *setup, tside_plan *plan)
{
    const tside_bar *bar = setup->bar;
    const tside_metal_values *metal = &setup->bar_metal;
    double arm = bar->screws * bar->tube.diameter / 2, beyond = fmax(setup->load.length - plan->splice_near, 0);
    add_line(plan, tside_i_stress_line(TSIDE_BAR_SHEAR, TSIDE_DRIVE_END, plan->worst.drive / setup->bar_section.torsion_modulus, metal, 0.6));
    add_line(plan, tside_i_stress_line(TSIDE_BAR_SHEAR_STALL, TSIDE_DRIVE_END, plan->stall_torque / setup->bar_section.torsion_modulus, metal, 0.6));
    add_line(plan, tside_i_stress_line(TSIDE_BAR_BENDING, TSIDE_DRIVE_END,
                                       TSIDE_GRAVITY * setup->side->drive.mass * bar->past_drive / setup->bar_section.section_modulus, metal, 1));
    add_line(plan, tside_i_force_line(TSIDE_COUPLING_SCREW, TSIDE_DRIVE_END, plan->stall_torque / arm, bar->screw_limit_given, bar->screw_limit));
    if (plan->splices > 0) {
        add_line(plan, tside_i_force_line(TSIDE_SPLICE_SCREW, TSIDE_DRIVE_END, plan->worst.per_metre * beyond / arm, bar->screw_limit_given, bar->screw_limit));
        add_line(plan, tside_i_force_line(TSIDE_SPLICE_SCREW_STALL, TSIDE_DRIVE_END, plan->stall_torque / arm, bar->screw_limit_given, bar->screw_limit));
    }
}

tside_status tside_i_end_lines(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, double stall, const tside_end_plan *end_plan,
                                    tside_plan *plan, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    tside_metal_values metal;
    tside_section section;
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    const tside_frame *frame = &setup->side->frame;
    double hole, I;
    /* the moment at the collar, F d = T + Wg x_cg + Wd e: outboard greatest at stall where the guide leans most so, inboard at rest where it leans least */
    tside_i_lean least = {.sine = sin(hung->sweep.lean_least)}, most = {.sine = sin(hung->sweep.lean_greatest)};
    double moment = fmax(stall + tside_i_hang_moment(&hung->hang, &most), -tside_i_hang_moment(&hung->hang, &least));
    TRY(tside_i_material_values(&end->guide.material, &metal, fault));
    TRY(tside_i_round_section(&end->guide.tube, metal.density, &section, fault));
    add_line(plan, tside_i_stress_line(TSIDE_GUIDE_BENDING, which, moment / section.section_modulus, &metal, 1));
    if (end->hung == TSIDE_ON_HIP) {
        add_line(plan, tside_i_plain_line(TSIDE_RAIL_PULL, which, TSIDE_FORCE, end_plan->side_force_stall));
        return TSIDE_OK;
    }
    TRY(tside_i_within(fault, tside_i_end_name(which),
                       tside_i_extender_strength(&end->extender, &end_plan->layout, fmax(end_plan->side_force_stall, 0), hung->hang.weight, which, lines, fault)));
    for (int i = 0; i < TSIDE_EXTENDER_LINES; i++)
        add_line(plan, lines[i]);
    /* the hole's two walls lie at the neutral axis of bending in the end wall's plane */
    hole = end->extender.bolt_hole;
    TRY(tside_i_within(fault, "frame", tside_i_round_section(&frame->tube, 1, &section, fault)));
    I = section.inertia;
    add_line(plan, tside_i_plain_line(TSIDE_BOW_NET_SECTION, which, TSIDE_SHARE, (I - 2 * frame->tube.wall * hole * hole * hole / 12) / I));
    return TSIDE_OK;
}

