/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "side/plan.h"

#include "statics/run.h"
#include "statics/extender.h"
#include "statics/strength.h"

const tside_end *tside_i_end(const tside_side *side, tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
}

tside_collar tside_i_end_collar(const tside_side *side, tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? tside_drive_collar(&side->drive) : side->collar;
}

const char *tside_i_end_name(tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? "drive_end" : "free_end";
}

tside_status tside_i_within_bar(const tside_i_setup *setup, tside_fault *fault, tside_status status)
{
    if (setup->bar == &setup->side->bar)
        return tside_i_within(fault, "bar", status);
    return tside_i_within(fault, "bars", tside_i_within_element(fault, (int)(setup->bar - setup->side->bars), status));
}

/* --- making ready --- */

static tside_status check_drive(const tside_drive *drive, tside_fault *fault)
{
    double ignored;
    if (drive->place != TSIDE_ONE_END)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "drive.place", "",
                              drive->place == TSIDE_BOTH_ENDS ? "a drive at both ends is not modelled" : "a drive in mid-bar is not modelled");
    return tside_drive_stall(drive, 0, &ignored, fault);
}

static tside_status check_keep_outs(const tside_end *end, const char *name, tside_fault *fault)
{
    for (int i = 0; i < end->keep_out_count; i++) {
        const tside_keep_out *out = end->keep_outs + i;
        tside_status status = TSIDE_OK;
        if (!(out->left < out->right))
            status = tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "left", "right", "left must lie inboard of right", "m", out->left, TSIDE_NOT_BELOW, out->right, 0);
        else if (!(out->bottom < out->top))
            status = tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "bottom", "top", "bottom must lie below top", "m", out->bottom, TSIDE_NOT_BELOW, out->top, 0);
        if (status != TSIDE_OK)
            return tside_i_within(fault, name, tside_i_within(fault, "keep_outs", tside_i_within_element(fault, i, status)));
    }
    return TSIDE_OK;
}

static tside_load side_load(const tside_side *side, const tside_bar *bar, const tside_section *section)
{
    int ropes = side->ropes == TSIDE_ROPES;
    return (tside_load){
        .length = side->length + 2 * side->curtain.past,
        .bar_mass = section->mass,
        .clip_mass = bar->clip_mass,
        .areal_mass = side->curtain.areal_mass,
        .wet = side->curtain.wet,
        .end_mass = side->drive.mass + side->collar.mass + section->mass * (bar->past_drive + bar->past_free),
        .friction = side->friction,
        .rope_pressure = ropes ? side->rope_pressure : 0,
        .rope_friction = ropes ? side->rope_friction : 0,
    };
}

/* Makes the travel with core, packing and thickness all at one end of their spread, as the factor says, or (0) as they are given. Of a spread only the ends are asked. */
static tside_status make_travel(tside_i_setup *setup, double factor, const tside_stops *stops, tside_fault *fault)
{
    const tside_curtain *curtain = &setup->side->curtain;
    tside_roll roll = {(setup->bar->tube.diameter + setup->bar->core_over) * (1 + factor * stops->core_spread), curtain->thickness * (1 + factor * stops->thickness_spread),
                       fmax(curtain->packing + factor * stops->packing_spread, 0)};
    return tside_i_travel_make(&setup->travel.line, curtain, &roll, stops, factor != 0, &setup->travel, fault);
}

tside_status tside_i_set_up(const tside_side *side, const tside_bar *bar, tside_i_setup *setup, tside_fault *fault)
{
    tside_bow bow;
    setup->side = side;
    setup->bar = bar;
    TRY(check_drive(&side->drive, fault));
    TRY(check_keep_outs(&side->drive_end, "drive_end", fault));
    TRY(check_keep_outs(&side->free_end, "free_end", fault));
    TRY(tside_i_bow_make(&side->frame, &bow, fault));
    TRY(tside_i_line_make(&bow, &side->curtain, "frame.peak_height", "frame.board_top", &setup->travel.line, fault));
    TRY(tside_i_within_bar(setup, fault, tside_material_values(&bar->material, &setup->bar_metal, fault)));
    TRY(tside_i_within_bar(setup, fault, tside_round_section(&bar->tube, setup->bar_metal.density, &setup->bar_section, fault)));
    TRY(make_travel(setup, 0, &side->stops, fault));
    setup->load = side_load(side, bar, &setup->bar_section);
    return TSIDE_OK;
}

/* What sets a guide's eye, and what rides on the guide, in the side's own words. */
static tside_i_names end_names(const tside_i_setup *setup, tside_which_end which, tside_i_place place)
{
    const tside_end *end = tside_i_end(setup->side, which);
    int best = place == TSIDE_I_BEST_EYE || end->placed == TSIDE_EYE_BEST;
    return (tside_i_names){
        .eye_x = {best ? "placed" : "eye_outboard", setup->travel.line.x - setup->side->curtain.standoff, best},
        .eye_y = {place == TSIDE_I_HIP ? "hung" : "rise", setup->side->curtain.hip, place == TSIDE_I_HIP},
        .offset = which == TSIDE_DRIVE_END ? "drive.collar_offset" : "collar.offset",
        .bow = "frame",
        .travel = "stops",
    };
}

static tside_status place_eye(const tside_i_setup *setup, const tside_end *end, tside_i_place place, double rise, const tside_collar *collar, const tside_i_names *names,
                              tside_i_hung *hung, tside_fault *fault)
{
    double ignored;
    hung->eye_x = setup->travel.line.x;
    hung->eye_y = setup->travel.line.y;
    if (place == TSIDE_I_HIP)
        return TSIDE_OK;
    hung->eye_y = setup->side->curtain.hip + (place == TSIDE_I_BEST_EYE ? rise : end->rise);
    if (place == TSIDE_I_BEST_EYE || end->placed == TSIDE_EYE_BEST) {
        TRY(tside_i_eye_clears(&setup->travel, &end->guide, collar, hung->eye_y, names, &ignored, fault));
        return tside_eye_best(&setup->travel, hung->eye_y, collar->offset, &hung->eye_x, fault);
    }
    hung->eye_x = setup->travel.line.x - setup->side->curtain.standoff + end->eye_outboard;
    return TSIDE_OK;
}

tside_status tside_i_hang_end(const tside_i_setup *setup, tside_which_end which, tside_i_place place, double rise, tside_i_hung *hung, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    tside_collar collar = tside_i_end_collar(setup->side, which);
    tside_i_names names;
    tside_status status;
    int instead = place == TSIDE_I_HIP && end->hung != TSIDE_ON_HIP; /* only to compare: no error is asked */
    if (place == TSIDE_I_OWN_EYE && end->hung == TSIDE_ON_HIP)
        place = TSIDE_I_HIP;
    names = end_names(setup, which, place);
    status = place_eye(setup, end, place, rise, &collar, &names, hung, fault);
    if (status == TSIDE_OK)
        status = tside_i_hang_and_sweep(&setup->travel, &end->guide, &collar, hung->eye_x, hung->eye_y, instead ? 0 : end->guide.placing_error, &names, &hung->hang, &hung->sweep,
                                        fault);
    return tside_i_within(fault, tside_i_end_name(which), status);
}

/* --- forces at the eye --- */

typedef struct pushing {
    const tside_i_lifting *lifting;
    const tside_hang *hang;
    double torque;
} pushing;

static double push_at(const tside_i_spot *spot, const void *context)
{
    const pushing *p = context;
    tside_i_lean lean = tside_i_lean_at(p->hang->eye_x, p->hang->eye_y, p->hang->offset, spot);
    return tside_i_push(p->hang, &lean, p->lifting ? tside_i_torque(p->lifting, spot).drive : p->torque);
}

static double uplift_at(const tside_i_spot *spot, const void *context)
{
    const pushing *p = context;
    tside_i_lean lean = tside_i_lean_at(p->hang->eye_x, p->hang->eye_y, p->hang->offset, spot);
    return push_at(spot, context) * lean.sine - p->hang->weight;
}

double tside_i_greatest_push(const tside_travel *travel, const tside_i_lifting *lifting, const tside_hang *hang, double torque, tside_i_spot *where)
{
    pushing p = {lifting, hang, torque};
    return tside_i_travel_greatest(travel, push_at, &p, where);
}

/* What the drive has turned against its housing, which turns with the guide, but for a constant. */
static double drive_angle(const tside_travel *travel, const tside_hang *hang, int stretch, double progress)
{
    tside_i_spot spot;
    tside_i_lean lean;
    tside_i_travel_spot(travel, stretch, progress, &spot);
    lean = tside_i_lean_at(hang->eye_x, hang->eye_y, hang->offset, &spot);
    return tside_i_travel_angle(travel, &spot) - tside_i_lean_angle(&lean);
}

double tside_i_drive_turns(const tside_travel *travel, const tside_hang *hang, double progress)
{
    double now = drive_angle(travel, hang, tside_i_travel_stretch(travel, progress), progress);
    return (now - drive_angle(travel, hang, 0, travel->wraps_shut)) / (2 * TSIDE_PI);
}

/* A running drive's couple swings pipe and chain apart; the foot moves inboard by about c sin(eta - phi)(G - d)/d. */
static double chain_swing(const tside_i_lifting *lifting, const tside_hang *hang)
{
    const tside_travel *travel = lifting->travel;
    tside_i_spot open;
    tside_i_lean lean;
    double F, eta, phi;
    tside_i_travel_spot(travel, travel->stretches - 1, travel->end, &open);
    lean = tside_i_lean_at(hang->eye_x, hang->eye_y, hang->offset, &open);
    F = tside_i_push(hang, &lean, tside_i_torque(lifting, &open).drive);
    phi = tside_i_lean_angle(&lean);
    eta = atan2(F * lean.cosine, hang->weight - F * lean.sine);
    return hang->chain * sin(eta - phi) * (hang->length - lean.reach) / lean.reach;
}

/* --- one end --- */

static void hip_instead(const tside_i_setup *setup, tside_which_end which, tside_end_plan *plan)
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

/* The bow is made once more: to keep it beside the travel would take too much stack. */
static tside_status lay_out(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, tside_layout *layout, tside_fault *fault)
{
    const tside_i_names names = end_names(setup, which, TSIDE_I_OWN_EYE);
    tside_bow bow;
    tside_i_hip hip;
    TRY(tside_i_bow_make(&setup->side->frame, &bow, fault));
    TRY(tside_i_hip_find(&bow, setup->side->curtain.hip, "curtain.hip", &hip, fault));
    return tside_i_within(fault, tside_i_end_name(which),
                          tside_i_layout_place(&tside_i_end(setup->side, which)->extender, &bow, &hip, hung->eye_x, hung->eye_y, &names, layout, fault));
}

/* Forces at the eye and the extender's clearance, in one search along the travel. lifting: NULL at the free end. */
static tside_status plan_forces(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting, const tside_i_hung *hung, double stall, tside_end_plan *plan,
                                tside_fault *fault)
{
    const tside_travel *travel = &setup->travel;
    const tside_i_names names = end_names(setup, which, TSIDE_I_OWN_EYE);
    pushing running = {lifting, &hung->hang, 0}, stalled = {NULL, &hung->hang, stall};
    tside_i_sought sought[] = {{.quantity = uplift_at, .context = &running},
                               {.quantity = push_at, .context = &running},
                               {.quantity = push_at, .context = &stalled},
                               {.quantity = tside_i_intrusion, .context = &plan->layout}};
    tside_i_spot where;
    tside_i_travel_seek(travel, sought, plan->layout_given ? 4 : 3);
    tside_i_travel_spot(travel, sought[1].greatest.stretch, sought[1].greatest.place, &where);
    plan->uplift = fmax(sought[0].greatest.value, 0);
    plan->side_force = sought[1].greatest.value;
    plan->side_force_turns = tside_i_travel_angle(travel, &where) / (2 * TSIDE_PI);
    plan->side_force_stall = sought[2].greatest.value;
    if (!plan->layout_given)
        return TSIDE_OK;
    return tside_i_within(fault, tside_i_end_name(which),
                          tside_i_layout_clear(&tside_i_end(setup->side, which)->extender, sought[3].greatest.value, &names, &plan->layout, fault));
}

static tside_status plan_end(const tside_i_setup *setup, tside_which_end which, const tside_i_lifting *lifting, const tside_i_hung *hung, double stall, tside_end_plan *plan,
                             tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    plan->eye_x = hung->eye_x;
    plan->eye_y = hung->eye_y;
    plan->sweep = hung->sweep;
    plan->chain_swing = lifting && hung->hang.chain > 0 ? chain_swing(lifting, &hung->hang) : 0;
    plan->layout_given = end->hung == TSIDE_ON_EXTENDER;
    if (plan->layout_given)
        TRY(lay_out(setup, which, hung, &plan->layout, fault));
    return plan_forces(setup, which, lifting, hung, stall, plan, fault);
}

/* --- strength --- */

static void add_line(tside_plan *plan, tside_strength_line line)
{
    if (plan->line_count < TSIDE_STRENGTH_LINES)
        plan->lines[plan->line_count++] = line;
}

static void bar_lines(const tside_i_setup *setup, tside_plan *plan)
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

static tside_status end_lines(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung, double stall, const tside_end_plan *end_plan,
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
    TRY(tside_material_values(&end->guide.material, &metal, fault));
    TRY(tside_round_section(&end->guide.tube, metal.density, &section, fault));
    add_line(plan, tside_i_stress_line(TSIDE_GUIDE_BENDING, which, moment / section.section_modulus, &metal, 1));
    if (end->hung == TSIDE_ON_HIP) {
        add_line(plan, tside_i_plain_line(TSIDE_RAIL_PULL, which, TSIDE_FORCE, end_plan->side_force_stall));
        return TSIDE_OK;
    }
    TRY(tside_i_within(fault, tside_i_end_name(which),
                       tside_extender_strength(&end->extender, &end_plan->layout, fmax(end_plan->side_force_stall, 0), hung->hang.weight, which, lines, fault)));
    for (int i = 0; i < TSIDE_EXTENDER_LINES; i++)
        add_line(plan, lines[i]);
    /* the hole's two walls lie at the neutral axis of bending in the end wall's plane */
    hole = end->extender.bolt_hole;
    TRY(tside_i_within(fault, "frame", tside_round_section(&frame->tube, 1, &section, fault)));
    I = section.inertia;
    add_line(plan, tside_i_plain_line(TSIDE_BOW_NET_SECTION, which, TSIDE_SHARE, (I - 2 * frame->tube.wall * hole * hole * hole / 12) / I));
    return TSIDE_OK;
}

/* --- turns --- */

/*
 * The travel made so takes its place: a second one beside it would take too much stack. A roll too thick to open as high as asked goes to the rail; one that is too near the rail
 * when shut, or nearer than the gap, stays where it is.
 */
static double turns_with(tside_i_setup *setup, const tside_hang *hang, double factor)
{
    tside_stops to_rail = setup->side->stops;
    to_rail.open_by = TSIDE_OPEN_GAP;
    to_rail.gap = 0;
    if (make_travel(setup, factor, &setup->side->stops, NULL) != TSIDE_OK &&
        (setup->side->stops.open_by == TSIDE_OPEN_GAP || make_travel(setup, factor, &to_rail, NULL) != TSIDE_OK))
        return 0;
    return tside_i_drive_turns(&setup->travel, hang, setup->travel.end);
}

/* What a travel holds before its line, which the spread leaves as it is, is kept meanwhile. */
static void plan_range(tside_i_setup *setup, const tside_hang *hang, tside_plan *plan)
{
    unsigned char kept[offsetof(tside_travel, line)];
    memcpy(kept, &setup->travel, sizeof kept);
    plan->drive_turns_least = turns_with(setup, hang, 1);
    plan->drive_turns_most = turns_with(setup, hang, -1);
    memcpy(&setup->travel, kept, sizeof kept);
}

static void plan_travel(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan)
{
    const tside_travel *travel = &setup->travel;
    tside_i_spot spot;
    plan->curtain_length = setup->load.length;
    plan->bar_length = setup->load.length + setup->bar->past_drive + setup->bar->past_free;
    plan->fixing_x = setup->travel.line.x;
    tside_i_travel_spot(travel, 0, travel->wraps_shut, &spot);
    tside_i_travel_position(travel, &spot, &plan->shut);
    tside_i_travel_spot(travel, travel->stretches - 1, travel->end, &spot);
    tside_i_travel_position(travel, &spot, &plan->open);
    plan->bar_turns = plan->open.turns;
    plan->drive_turns = tside_i_drive_turns(travel, hang, travel->end);
    plan->highest = travel->highest;
    plan->opening = plan->open.opening;
    plan->seal = travel->sill - plan->shut.underside;
}

/* --- torque, twist, lags --- */

static double elastic_lag(const tside_i_setup *setup, double per_metre, double r, double nx, double *twist)
{
    double L = setup->load.length;
    *twist = per_metre * L * L / (2 * setup->bar_metal.shear_modulus * setup->bar_section.torsion);
    return r * *twist * nx;
}

/* What differs between shut and open: the energy, and the opening at the far end. */
static void plan_open(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan)
{
    const tside_travel *travel = lifting->travel;
    tside_i_spot open, shut;
    double lag, ignored;
    tside_i_travel_spot(travel, 0, travel->wraps_shut, &shut);
    tside_i_travel_spot(travel, travel->stretches - 1, travel->end, &open);
    plan->work = tside_i_energy(travel, lifting->load, lifting->hang, &open) - tside_i_energy(travel, lifting->load, lifting->hang, &shut);
    lag = elastic_lag(setup, tside_i_torque(lifting, &open).per_metre, open.r, open.nx, &ignored) + open.r * plan->splices * setup->bar->play * open.nx;
    plan->opening_far = plan->opening - lag - plan->lag_unequal - plan->lag_level;
}

/* lifting: with what the drive has available, its rated torque over its safety factor. */
static tside_status plan_torque(const tside_i_setup *setup, const tside_i_lifting *lifting, tside_plan *plan, tside_fault *fault)
{
    const tside_side *side = setup->side;
    tside_i_spot spot;
    tside_position at;
    double nx;
    tside_i_travel_at(lifting->travel, tside_i_travel_progress(lifting->travel, plan->worst.turns), &spot);
    tside_i_travel_position(lifting->travel, &spot, &at);
    plan->worst_underside = at.underside;
    plan->design_torque = plan->worst.drive * side->drive.safety_factor;
    plan->drive_utilisation = plan->design_torque / side->drive.rated_torque;
    TRY(tside_drive_stall(&side->drive, fmax(plan->worst.drive, 0), &plan->stall_torque, fault));
    nx = cos(at.slope);
    plan->lag_elastic = elastic_lag(setup, plan->worst.per_metre, at.diameter / 2, nx, &plan->twist);
    plan->lag_play = at.diameter / 2 * plan->splices * setup->bar->play * nx;
    plan->lag_unequal = plan->open.taken_up * side->diameter_difference;
    plan->lag_level = side->out_of_level;
    plan_open(setup, lifting, plan);
    return TSIDE_OK;
}

/* --- motor and crank --- */

static tside_status plan_run(const tside_side *side, const tside_i_lifting *lifting, tside_plan *plan, tside_fault *fault)
{
    plan->run_given = tside_i_drive_runs(&side->drive);
    plan->cranking_given = side->crank.fitted == TSIDE_CRANK;
    if (plan->run_given)
        TRY(tside_i_drive_run(lifting, &side->drive, &side->cable, &plan->worst, &plan->run, fault));
    if (plan->cranking_given)
        TRY(tside_crank_effort(&side->crank, fmax(plan->worst.drive, 0), fmax(plan->drive_turns, 0), &plan->cranking, fault));
    return TSIDE_OK;
}

/* A guide that turns as fast as the bar is mended by its eye's place. */
static tside_status check_rate(const tside_i_setup *setup, double rate, tside_fault *fault)
{
    const tside_i_names names = end_names(setup, TSIDE_DRIVE_END, setup->side->drive_end.hung == TSIDE_ON_HIP ? TSIDE_I_HIP : TSIDE_I_OWN_EYE);
    if (rate < 1)
        return TSIDE_OK;
    return tside_i_within(fault, "drive_end", tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names.eye_y.field, names.offset,
                                                             "the guide would turn as fast as the bar, so that no torque drives it"));
}

static tside_status make_plan(const tside_side *side, const tside_bar *bar, tside_plan *plan, tside_fault *fault)
{
    tside_i_setup setup;
    tside_i_hung drive, free;
    tside_i_lifting lifting = {&setup.travel, &setup.load, &drive.hang, side->drive.rated_torque / side->drive.safety_factor};
    double longest;
    memset(plan, 0, sizeof *plan); /* what a side does not have is 0, and padding too: equal sides give equal bytes */
    TRY(tside_i_set_up(side, bar, &setup, fault));
    TRY(tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &drive, fault));
    TRY(tside_i_hang_end(&setup, TSIDE_FREE_END, TSIDE_I_OWN_EYE, 0, &free, fault));
    plan_range(&setup, &drive.hang, plan);
    plan_travel(&setup, &drive.hang, plan);
    TRY(tside_i_within_bar(&setup, fault, tside_i_bar_joints(bar, plan->curtain_length, &plan->splices, &plan->splice_near, fault)));
    TRY(check_rate(&setup, tside_i_lift_extremes(&lifting, &plan->worst, &plan->least_down, &longest), fault));
    if (setup.load.bar_mass + setup.load.clip_mass > 0)
        plan->longest_side = fmax(longest - 2 * side->curtain.past, 0);
    TRY(plan_torque(&setup, &lifting, plan, fault));
    TRY(plan_run(side, &lifting, plan, fault));
    TRY(plan_end(&setup, TSIDE_DRIVE_END, &lifting, &drive, plan->stall_torque, &plan->drive_end, fault));
    TRY(plan_end(&setup, TSIDE_FREE_END, NULL, &free, 0, &plan->free_end, fault));
    hip_instead(&setup, TSIDE_DRIVE_END, &plan->drive_end);
    hip_instead(&setup, TSIDE_FREE_END, &plan->free_end);
    bar_lines(&setup, plan);
    TRY(end_lines(&setup, TSIDE_DRIVE_END, &drive, plan->stall_torque, &plan->drive_end, plan, fault));
    TRY(end_lines(&setup, TSIDE_FREE_END, &free, 0, &plan->free_end, plan, fault));
    tside_i_find(&setup, &drive, &free, plan);
    return tside_i_within(fault, "plan", tside_i_finite(TSIDE_KIND_PLAN, plan, fault));
}

tside_status tside_i_plan(const tside_side *side, const tside_bar *bar, tside_plan *plan, tside_fault *fault)
{
    return tside_i_settle(TSIDE_KIND_SIDE, NULL, make_plan(side, bar, plan, fault), fault);
}

tside_status tside_plan_side(const tside_side *side, tside_plan *plan, tside_fault *fault)
{
    tside_plan made;
    TRY(tside_check(TSIDE_KIND_SIDE, side, fault));
    TRY(tside_i_plan(side, &side->bar, &made, fault));
    tside_i_hand_over(TSIDE_KIND_PLAN, &made, plan, sizeof made);
    return TSIDE_OK;
}

/* --- the turn table --- */

typedef struct driven {
    const tside_travel *travel;
    const tside_hang *hang;
    double turns;
} driven;

static double drive_turns_above(double progress, const void *context)
{
    const driven *aim = context;
    return tside_i_drive_turns(aim->travel, aim->hang, progress) - aim->turns;
}

#define MOST_TURNS 1e9 /* so many rows an int still counts */

/* Row i of a table that ends after so many turns; what is taken up in it is left to whoever knows the row before. */
static tside_turn turn_row(const tside_i_setup *setup, const tside_hang *hang, int i, double total)
{
    const tside_travel *travel = &setup->travel;
    tside_i_lifting lifting = {travel, &setup->load, hang, 0};
    driven aim = {travel, hang, i};
    int last = i >= total - 1e-9;
    tside_i_spot spot;
    tside_position at;
    tside_i_lean lean;
    tside_i_travel_at(travel, last ? travel->end : tside_i_rising_root(drive_turns_above, &aim, travel->wraps_shut, travel->end), &spot);
    tside_i_travel_position(travel, &spot, &at);
    lean = tside_i_lean_at(hang->eye_x, hang->eye_y, hang->offset, &spot);
    return (tside_turn){last ? total : i, 0, at.taken_up, at.diameter, at.x, at.y, at.underside, at.opening, tside_i_torque(&lifting, &spot).drive, tside_i_lean_angle(&lean)};
}

tside_status tside_plan_turns(const tside_side *side, tside_turn *rows, int capacity, int *count, tside_fault *fault)
{
    tside_i_setup setup;
    tside_i_hung drive;
    double total;
    int needed;
    TRY(tside_check(TSIDE_KIND_SIDE, side, fault));
    TRY(tside_i_settle(TSIDE_KIND_SIDE, NULL, tside_i_set_up(side, &side->bar, &setup, fault), fault));
    TRY(tside_i_settle(TSIDE_KIND_SIDE, NULL, tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &drive, fault), fault));
    TRY(tside_i_answer_number("rows", tside_i_drive_turns(&setup.travel, &drive.hang, setup.travel.end), &total, fault));
    if (total > MOST_TURNS)
        REFUSE(fault, TSIDE_NOT_MODELLED, "bar.tube.diameter", "", "the bar is so thin that no table holds its turns", "m", side->bar.tube.diameter, TSIDE_NO_RELATION, 0, 0);
    needed = 1 + (total > 1e-9 ? (int)ceil(total - 1e-9) : 0);
    if (needed > capacity) {
        *count = needed;
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the turn table has more rows", "1", capacity, TSIDE_BELOW, needed, 0);
    }
    for (int i = 0; i < needed; i++) {
        tside_turn row = turn_row(&setup, &drive.hang, i, total);
        TRY(tside_i_within(fault, "rows", tside_i_finite(TSIDE_KIND_TURN, &row, fault)));
    }
    for (int i = 0; i < needed; i++) {
        rows[i] = turn_row(&setup, &drive.hang, i, total);
        rows[i].taken_up = rows[i].total - (i > 0 ? rows[i - 1].total : 0);
    }
    *count = needed;
    return TSIDE_OK;
}
