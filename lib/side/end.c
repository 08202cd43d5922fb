/* SPDX-License-Identifier: MIT */
/* One end wall of a plan: guide, forces at the eye, extender; and what hanging it on the hip would come to. */
#include "side/end.h"

#include "base/fault.h"
#include "shape/peak.h"
#include "statics/extender.h"
#include "statics/push.h"

void tside_i_hip_instead(const tside_i_setup *setup, tside_which_end which, tside_end_plan *plan)
{
    tside_i_hung hip;
    tside_torque worst;
    plan->hip_kick_out_given = tside_i_hang_end(setup, which, TSIDE_I_HIP, 0, &hip, NULL) == TSIDE_OK;
    if (plan->hip_kick_out_given) {
        plan->hip_kick_out = hip.sweep.kick_out;
        plan->hip_lean_greatest = fmax(hip.sweep.lean_greatest, -hip.sweep.lean_least);
        if (which == TSIDE_DRIVE_END && tside_lift_worst(&setup->travel, &setup->load, &hip.hang, &worst, NULL) == TSIDE_OK) {
            plan->hip_torque_given = 1;
            plan->hip_torque = worst.drive;
        }
    }
}

/* Forces at the eye and the extender's clearance, in one search along the travel. lifting: NULL at the free end. */
static tside_status plan_forces(const tside_i_setup *setup, const tside_end *end, const tside_i_lifting *lifting, const tside_i_hung *hung, double stall, tside_end_plan *plan,
                                tside_fault *fault)
{
    const tside_travel *travel = &setup->travel;
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
    tside_i_travel_seek(travel, sought, count);
    tside_i_travel_spot(travel, sought[0].greatest.stretch, sought[0].greatest.place, &where);
    plan->uplift = fmax(sought[1].greatest.value, 0);
    plan->side_force = sought[0].greatest.value;
    plan->side_force_turns = tside_i_travel_angle(travel, &where) / (2 * TSIDE_PI);
    plan->side_force_stall = sought[stalled].greatest.value;
    return plan->layout_given ? tside_i_layout_clear(&end->extender, sought[intrusion].greatest.value, &plan->layout, fault) : TSIDE_OK;
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
        TRY(tside_i_within(fault, tside_i_end_name(which), tside_i_layout_place(&end->extender, &setup->bow, setup->side->curtain.hip, hung->eye_x, hung->eye_y, &plan->layout, fault)));
    return tside_i_within(fault, tside_i_end_name(which), plan_forces(setup, end, lifting, hung, stall, plan, fault));
}

