/* SPDX-License-Identifier: MIT */
/* One end wall of a plan: guide, forces at the eye, extender; and what hanging it on the hip would come to. */
#include "side/end.h"

#include "base/fault.h"
#include "statics/extender.h"
#include "statics/push.h"

void tside_i_hip_instead(const tside_i_setup *setup, tside_which_end which, tside_end_plan *plan)
{
    tside_i_hung hip;
    tside_i_lifting lifting = {&setup->track, &setup->load, &hip.hang, 0};
    tside_torque worst;
    plan->hip_kick_out_given = tside_i_hang_end(setup, which, TSIDE_I_HIP, 0, &hip, NULL) == TSIDE_OK;
    if (plan->hip_kick_out_given) {
        plan->hip_kick_out = hip.sweep.kick_out;
        plan->hip_lean_greatest = fmax(hip.sweep.lean_greatest, -hip.sweep.lean_least);
        if (which == TSIDE_DRIVE_END && tside_i_lift_extremes(&lifting, &worst, NULL, NULL) < 1 && isfinite(worst.drive)) {
            plan->hip_torque_given = 1;
            plan->hip_torque = worst.drive;
        }
    }
}

static tside_status lay_out(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, tside_layout *layout, tside_fault *fault)
{
    const tside_i_names names = tside_i_end_names(setup, which, TSIDE_I_OWN_EYE);
    tside_i_hip hip;
    TRY(tside_i_hip_find(&setup->bow, setup->side->curtain.hip, "curtain.hip", &hip, fault));
    return tside_i_within(fault, tside_i_end_name(which),
                          tside_i_layout_place(&tside_i_end(setup->side, which)->extender, &setup->bow, &hip, hung->eye_x, hung->eye_y, &names, layout, fault));
}

/* Forces at the eye and the extender's clearance. lifting: NULL at the free end. */
static tside_status plan_forces(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting, const tside_i_hung *hung, double stall, tside_end_plan *plan,
                                tside_fault *fault)
{
    const tside_i_names names = tside_i_end_names(setup, which, TSIDE_I_OWN_EYE);
    tside_i_pushing running = {lifting, &hung->hang, 0}, halted = {NULL, &hung->hang, stall};
    tside_i_sought sought[4] = {{.quantity = tside_i_push_at, .context = &running}, {.quantity = tside_i_uplift_at, .context = &running}};
    tside_i_spot where;
    int count = 2, stalled = 0, intrusion = 0;
    if (lifting) { /* without a drive nothing stalls */
        stalled = count;
        sought[count++] = (tside_i_sought){.quantity = tside_i_push_at, .context = &halted};
    }
    if (plan->layout_given) {
        intrusion = count;
        sought[count++] = (tside_i_sought){.quantity = tside_i_intrusion, .context = &plan->layout};
    }
    tside_i_track_seek(&setup->track, sought, count);
    where = tside_i_peak_spot(&setup->track, &sought[0].greatest);
    plan->uplift = fmax(sought[1].greatest.value, 0);
    plan->side_force = sought[0].greatest.value;
    plan->side_force_turns = tside_i_travel_angle(&setup->travel, &where) / (2 * TSIDE_PI);
    plan->side_force_stall = sought[stalled].greatest.value;
    if (!plan->layout_given)
        return TSIDE_OK;
    return tside_i_within(fault, tside_i_end_name(which),
                          tside_i_layout_clear(&tside_i_end(setup->side, which)->extender, sought[intrusion].greatest.value, &names, &plan->layout, fault));
}

tside_status tside_i_plan_end(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting, const tside_i_hung *hung, double stall, tside_end_plan *plan,
                             tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    plan->eye_x = hung->eye_x;
    plan->eye_y = hung->eye_y;
    plan->sweep = hung->sweep;
    plan->chain_swing = lifting && hung->hang.chain > 0 ? tside_i_chain_swing(lifting, &hung->hang) : 0;
    plan->layout_given = end->hung == TSIDE_ON_EXTENDER;
    if (plan->layout_given)
        TRY(lay_out(setup, which, hung, &plan->layout, fault));
    return plan_forces(setup, which, lifting, hung, stall, plan, fault);
}

