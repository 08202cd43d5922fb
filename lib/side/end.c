/* SPDX-License-Identifier: MIT */
/* One end wall of a plan: guide, forces at the eye, extender, keep-outs; and what it would come to hung on the hip. */
#include "side/end.h"

#include <tunnelside/strength.h>

#include "base/field.h"
#include "shape/peak.h"
#include "side/keepout.h"
#include "statics/along.h"
#include "statics/extender.h"
#include "statics/eye.h"
#include "statics/fixed.h"
#include "statics/push.h"

void tside_i_hip_instead(const tside_i_setup *setup, tside_which_end which, tside_end_plan *plan)
{
    tside_sweep sweep;
    tside_fixed fixed;
    tside_i_hung hip = {.sweep = &sweep, .fixed = &fixed};
    tside_i_lifting lifting = tside_i_lifting_of(setup, &hip.hang);
    tside_torque worst;
    plan->hip_kick_out_given = tside_i_hang_end(setup, which, TSIDE_I_HIP, 0, &hip, NULL) == TSIDE_OK && !hip.stands;
    if (plan->hip_kick_out_given) {
        plan->hip_kick_out = sweep.kick_out;
        plan->hip_lean_greatest = fmax(sweep.lean_greatest, -sweep.lean_least);
        if (which == TSIDE_DRIVE_END && tside_i_lift_extremes(&lifting, &worst, NULL, NULL) < 1) {
            plan->hip_torque_given = 1;
            plan->hip_torque = worst.drive;
        }
    }
}

/* How high above the bar's axis stands what passes beside the tube. */
static double beside(const tside_i_setup *setup, tside_which_end which)
{
    return setup->stand[which].beside ? tside_i_end_collar(setup, which).height : 0;
}

static tside_status lay_out(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung,
                            tside_layout *layout, tside_fault *fault)
{
    const tside_i_names names = tside_i_end_names(setup, which, TSIDE_I_OWN_EYE);
    return tside_i_within(fault, tside_i_end_name(which),
                          tside_i_layout_place(&tside_i_end(setup->side, which)->extender, &setup->bow, &setup->hip,
                                               hung->eye_x, hung->eye_y, &setup->track, beside(setup, which), &names,
                                               layout, fault));
}

static tside_i_bar_end bar_end(const tside_i_setup *setup, tside_which_end which, const tside_i_pushing *pushing)
{
    const tside_stand *stand = setup->stand + which;
    return (tside_i_bar_end){*pushing, tside_i_end_collar(setup, which).mass * TSIDE_GRAVITY, stand->run_on,
                             stand->eye - setup->side->curtain.past};
}

/* What a constant torque does at a hanging guide's eye, and to the bar's end. inboard: it jams coming down. */
static void halt(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, double torque,
                 int inboard, double *push, double *bar_bending)
{
    const tside_i_pushing pushing = {NULL, &hung->hang, torque};
    const tside_i_bar_end bar = bar_end(setup, which, &pushing);
    tside_i_sought sought[] = {[TSIDE_I_PUSH] = {.least_too = inboard}, [TSIDE_I_BAR_END] = {0}};
    tside_i_track_seek(&setup->track, tside_i_end_forces_at, &bar, sought, TSIDE_I_BAR_END + 1);
    *push = inboard ? fmax(sought[TSIDE_I_PUSH].least.value, 0) : sought[TSIDE_I_PUSH].greatest.value;
    *bar_bending = sought[TSIDE_I_BAR_END].greatest.value;
}

/*
 * Forces at a hanging guide's eye, and what bends guide and bar. lifting: NULL at the free end, where nothing stalls:
 * it is there as it is running.
 */
static void hanging_forces(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                           const tside_i_hung *hung, double stall, tside_end_plan *plan, tside_i_bending *bending)
{
    const tside_i_pushing running = {lifting, &hung->hang, 0};
    const tside_i_bar_end bar = bar_end(setup, which, &running);
    tside_i_sought sought[] = {
        [TSIDE_I_PUSH] = {.least_too = !lifting}, [TSIDE_I_BAR_END] = {0}, [TSIDE_I_UPLIFT] = {.over_nought = 1}};
    const tside_i_sought *push = sought + TSIDE_I_PUSH;
    tside_i_spot where;
    tside_i_track_seek(&setup->track, tside_i_end_forces_at, &bar, sought, TSIDE_I_END_FORCES);
    plan->uplift = sought[TSIDE_I_UPLIFT].greatest.value;
    plan->side_force = push->greatest.value;
    plan->side_force_turns = tside_i_travel_angle(&setup->travel,
                                                  tside_i_peak_spot(&setup->track, &push->greatest, &where)) /
                             (2 * TSIDE_PI);
    bending->bar = sought[TSIDE_I_BAR_END].greatest.value;
    if (lifting) {
        halt(setup, which, hung, stall, 0, &plan->side_force_stall, &bending->bar_up);
        halt(setup, which, hung, -stall, 1, &plan->side_force_jam, &bending->bar_down);
    } else {
        plan->side_force_stall = plan->side_force;
        plan->side_force_jam = fmax(push->least.value, 0); /* the least with its sign turned */
        bending->bar_up = bending->bar_down = bending->bar;
    }
    tside_i_guide_bending(&setup->track, &hung->hang, hung->sweep, stall, &bending->guide_up, &bending->guide_down);
}

/* What it would come to if a guide fixed at its foot hung from where its top is told to be. */
static void hung_instead(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                         double stall, tside_end_plan *plan)
{
    tside_sweep ignored;
    tside_i_hung hung = {.sweep = &ignored};
    tside_i_lifting lifted = tside_i_lifting_of(setup, &hung.hang);
    tside_i_spot where;
    plan->hung_force_given = tside_i_hang_instead(setup, which, &hung) == TSIDE_OK;
    if (!plan->hung_force_given)
        return;
    plan->hung_force = tside_i_greatest_push(&setup->track, lifting ? &lifted : NULL, &hung.hang, 0, &where);
    plan->hung_force_stall = tside_i_greatest_push(&setup->track, NULL, &hung.hang, stall, &where);
}

/* A guide that stands takes the drive's couple at top and foot, and leaves the bar's end its weight. */
static void standing_forces(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                            const tside_i_hung *hung, double stall, tside_end_plan *plan, tside_i_bending *bending)
{
    const tside_collar collar = tside_i_end_collar(setup, which);
    const tside_fixed *fixed = hung->fixed;
    tside_torque worst = {0};
    double hangs = collar.mass * TSIDE_GRAVITY * plan->stand.run_on;
    plan->fixed_given = 1;
    plan->fixed_running = tside_i_fixed_force(&setup->track, lifting, fixed, 0);
    plan->fixed_stalled = tside_i_fixed_force(&setup->track, NULL, fixed, stall);
    if (lifting)
        tside_i_lift_extremes(lifting, &worst, NULL, NULL);
    plan->side_force = plan->fixed_running.reaction;
    plan->side_force_turns = worst.turns;
    plan->side_force_stall = plan->fixed_stalled.reaction;
    plan->side_force_jam = fmax(stall - fixed->carried * fixed->carried_offset, 0) / fixed->length;
    *bending = (tside_i_bending){plan->fixed_stalled.moment, 0, hangs, hangs, hangs};
}

/* How far out the eye bolt lets the guide stand, at the worse of both forces, and the curtain with it. */
static void find_stand_off(const tside_extender *extender, const tside_i_extender_loads *loads, tside_end_plan *plan)
{
    plan->stand_off_most_given = loads->up.stand_off_most_given; /* as of the other: it has a weight too */
    if (plan->stand_off_most_given) {
        plan->stand_off_most = fmin(loads->up.stand_off_most, loads->down.stand_off_most);
        plan->past_bolt_most = plan->stand.past_most + plan->stand_off_most - extender->eye_stand_off;
    }
}

/*
 * Wind along the house meets guide, drive and tube; what guide and drive take of it is reckoned at the eye, this
 * library's choice, on the safe side of what bar and foot hold.
 */
static void blow_along(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung,
                       const tside_pressure *pressure, tside_end_plan *plan)
{
    const tside_end *end = tside_i_end(setup->side, which);
    const tside_wind *wind = &setup->side->wind;
    double guide = hung->stands ? hung->fixed->length : hung->sweep->length;
    double face = which == TSIDE_DRIVE_END ? wind->drive_face : 0;
    plan->wind_eye = pressure->counted *
                     (wind->round_force * end->guide.tube.diameter * guide + wind->square_force * face);
    if (plan->layout_given)
        plan->wind_tube = pressure->counted * wind->square_force * end->extender.tube.side;
}

/* The roll passes the tube, and the tube bears the guide. */
static tside_status plan_tube(const tside_i_setup *setup, tside_which_end which, double weight, tside_end_plan *plan,
                              tside_i_extender_loads *loads, tside_fault *fault)
{
    const tside_i_names names = tside_i_end_names(setup, which, TSIDE_I_OWN_EYE);
    const tside_extender *extender = &tside_i_end(setup->side, which)->extender;
    const tside_i_end_wind wind = {plan->wind_eye, plan->wind_tube};
    const tside_i_passing passing = {&plan->layout, beside(setup, which)};
    tside_i_spot where;
    double intrusion = tside_i_track_greatest(&setup->track, tside_i_intrusion, &passing, &where);
    TRY(tside_i_layout_clear(extender, intrusion, &names, &plan->layout, fault));
    TRY(tside_i_extender_bears(extender, &plan->layout, fmax(plan->side_force_stall, 0), plan->side_force_jam, weight,
                               &wind, loads, fault));
    find_stand_off(extender, loads, plan);
    return TSIDE_OK;
}

tside_status tside_i_plan_end(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting,
                              const tside_i_hung *hung, double stall, const tside_pressure *wind, tside_end_plan *plan,
                              tside_i_end_loads *loads, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    plan->eye_x = hung->eye_x;
    plan->eye_y = hung->eye_y;
    plan->ground = tside_i_end_ground(setup->side, which);
    plan->stand = setup->stand[which];
    plan->layout_given = end->hung == TSIDE_ON_EXTENDER;
    if (plan->layout_given)
        TRY(lay_out(setup, which, hung, &plan->layout, fault));
    blow_along(setup, which, hung, wind, plan);
    if (hung->stands) {
        standing_forces(setup, which, lifting, hung, stall, plan, &loads->bending);
        hung_instead(setup, which, lifting, stall, plan);
    } else {
        plan->chain_swing = lifting && hung->hang.chain > 0 ? tside_i_chain_swing(lifting, &hung->hang) : 0;
        hanging_forces(setup, which, lifting, hung, stall, plan, &loads->bending);
        plan->skew_given = 1;
        plan->skew = tside_i_skew(&setup->track, &hung->hang);
    }
    if (!plan->layout_given)
        return TSIDE_OK;
    return tside_i_within(fault, tside_i_end_name(which),
                          plan_tube(setup, which, hung->hang.weight, plan, &loads->extender, fault));
}

/* --- keep-outs --- */

/*
 * How near the guide comes to a rectangle as it swings, with its eye anywhere within the placing error: at places so
 * near to each other that nothing slips between.
 */
static double guide_distance(const tside_i_setup *setup, const tside_i_hung *hung, const tside_guide *guide,
                             const tside_keep_out *out)
{
    double nearest = tside_i_rectangle_to_sweep(out, hung->eye_x, hung->eye_y, hung->sweep->length,
                                                hung->sweep->lean_least, hung->sweep->lean_greatest);
    int places = (int)fmin(ceil(4 * guide->placing_error / guide->tube.diameter), 100);
    for (int place = -places; place <= places; place++) {
        double x, least, greatest;
        if (place == 0)
            continue;
        x = hung->eye_x + guide->placing_error * place / places;
        tside_i_lean_range(&setup->track, x, hung->eye_y, hung->hang.offset, &least, &greatest);
        nearest = fmin(nearest, tside_i_rectangle_to_sweep(out, x, hung->eye_y, hung->sweep->length, least, greatest));
    }
    return nearest;
}

/* The same of a guide that stands, with its foot anywhere within the placing error. */
static double standing_distance(const tside_fixed *fixed, double error, const tside_keep_out *out)
{
    double out_by = fixed->foot_x - fixed->top_x, high = fixed->top_y - fixed->ground;
    return tside_i_rectangle_to_sweep(out, fixed->top_x, fixed->top_y, hypot(fabs(out_by) + error, high),
                                      atan2(out_by - error, high), atan2(out_by + error, high));
}

/* From its top end, above the eye, to its tail, below the member's bolt. */
static double tube_distance(const tside_extender *extender, const tside_end_plan *plan, const tside_keep_out *out)
{
    const tside_layout *tube = &plan->layout;
    return tside_i_rectangle_to_segment(out, tube->eye_x + sin(tube->angle) * extender->end_distance,
                                        tube->eye_y + cos(tube->angle) * extender->end_distance,
                                        tube->member_x - sin(tube->angle) * extender->tail,
                                        plan->ground + extender->member_height - cos(tube->angle) * extender->tail);
}

void tside_i_clear_keep_outs(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung,
                             tside_end_plan *plan)
{
    const tside_end *end = tside_i_end(setup->side, which);
    const tside_guide *guide = &end->guide;
    plan->keep_off_count = end->keep_out_count;
    for (int i = 0; i < end->keep_out_count; i++) {
        const tside_keep_out out = tside_i_keep_out_in_place(setup, which, i);
        tside_keep_off *clear = plan->keep_offs + i;
        clear->guide = (hung->stands ? standing_distance(hung->fixed, guide->placing_error, &out)
                                     : guide_distance(setup, hung, guide, &out)) -
                       guide->tube.diameter / 2;
        clear->tube_given = plan->layout_given;
        if (plan->layout_given)
            clear->tube = tube_distance(&end->extender, plan, &out) - end->extender.tube.side / 2;
    }
}
