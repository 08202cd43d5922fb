/* SPDX-License-Identifier: MIT */
/* A side made ready: bow, line, travel and load, and each end's guide hung. */
#include "side/ready.h"

#include "base/field.h"
#include "parts/drive.h"
#include "parts/material.h"
#include "parts/tube.h"
#include "shape/bow.h"
#include "shape/curtain.h"
#include "statics/along.h"
#include "statics/fixed.h"

const tside_end *tside_i_end(const tside_side *side, tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
}

tside_collar tside_i_end_collar(const tside_i_setup *setup, tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? tside_drive_collar(setup->drive) : setup->side->collar;
}

const char *tside_i_end_name(tside_which_end which)
{
    return which == TSIDE_DRIVE_END ? "drive_end" : "free_end";
}

double tside_i_end_ground(const tside_side *side, tside_which_end which)
{
    const tside_end *end = tside_i_end(side, which);
    return end->hip_height_given ? side->curtain.hip - end->hip_height : 0;
}

tside_i_told tside_i_end_level(const tside_i_setup *setup, tside_which_end which)
{
    int inboard = tside_i_end(setup->side, which)->level_from == TSIDE_FROM_BOW_FACE;
    return (tside_i_told){.from = inboard ? setup->hip.face : 0, .inboard = inboard};
}

tside_keep_out tside_i_keep_out_in_place(const tside_i_setup *setup, tside_which_end which, int i)
{
    const tside_keep_out *out = tside_i_end(setup->side, which)->keep_outs + i;
    const tside_i_told level = tside_i_end_level(setup, which);
    const double ground = tside_i_end_ground(setup->side, which);
    return (tside_keep_out){tside_i_of_told(&level, out->inner), tside_i_of_told(&level, out->outer),
                            ground + out->bottom, ground + out->top};
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
    if (drive->place != TSIDE_ONE_END)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "drive.place", "",
                              drive->place == TSIDE_BOTH_ENDS ? "a drive at both ends is not modelled"
                                                              : "a drive in mid-bar is not modelled");
    return tside_i_drive_voltages(drive, fault);
}

static tside_status check_keep_out(const tside_keep_out *out, tside_i_told level, tside_fault *fault)
{
    double inner = tside_i_of_told(&level, out->inner), outer = tside_i_of_told(&level, out->outer);
    TRY(tside_i_told_given(fault, &level, "outer", out->outer));
    level.field = "inner";
    if (!(inner < outer))
        return tside_i_refuse_told(fault, TSIDE_CONTRADICTS, &level, "outer", "inner must lie inboard of outer", inner,
                                   TSIDE_NOT_BELOW, outer, 0);
    if (!(out->bottom < out->top))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "bottom", "top", "bottom must lie below top", "m",
                                    out->bottom, TSIDE_NOT_BELOW, out->top, 0);
    return TSIDE_OK;
}

static tside_status check_keep_outs(const tside_i_setup *setup, tside_which_end which, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    for (int i = 0; i < end->keep_out_count; i++) {
        tside_status status = check_keep_out(end->keep_outs + i, tside_i_end_level(setup, which), fault);
        if (status != TSIDE_OK)
            return tside_i_within(fault, tside_i_end_name(which),
                                  tside_i_within(fault, "keep_outs", tside_i_within_element(fault, i, status)));
    }
    return TSIDE_OK;
}

/* --- along the house --- */

static tside_along side_along(const tside_i_setup *setup, tside_which_end which)
{
    const tside_side *side = setup->side;
    const tside_end *end = tside_i_end(side, which);
    const tside_extender *extender = &end->extender;
    tside_collar collar = tside_i_end_collar(setup, which);
    return (tside_along){
        .hung = end->hung,
        .bow = side->frame.tube.diameter,
        .spacer = extender->spacer,
        .tube = extender->tube.side,
        .stand_off = extender->eye_stand_off,
        .bar_clearance = extender->bar_clearance,
        .eye_past_given = end->eye_past_given,
        .eye_past = end->eye_past,
        .past = side->curtain.past,
        .alignment = end->alignment,
        .run_on = which == TSIDE_DRIVE_END ? setup->bar->past_drive : setup->bar->past_free,
        .along = collar.along,
        .half_length = collar.half_length,
        .clearance = collar.clearance,
    };
}

/* A guide that stands on its foot does not lean along the house. */
static tside_status check_standing(const tside_end *end, const tside_along *along, const tside_stand *stand,
                                   const tside_i_along_names *names, tside_fault *fault)
{
    if (end->guide.foot != TSIDE_FOOT_FIXED || fabs(stand->misfit) <= SLACK)
        return TSIDE_OK;
    return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, names->run_on, names->past,
                                "a guide fixed at its foot does not lean along the house: the bar must run on to it",
                                "m", along->run_on, stand->misfit > 0 ? TSIDE_ABOVE : TSIDE_BELOW,
                                along->run_on - stand->misfit, 0);
}

static tside_status stand_end(tside_i_setup *setup, tside_which_end which, tside_fault *fault)
{
    /* In line the curtain is refused, else what the bar runs on, beside the side's own curtain. */
    static const tside_i_along_names in_line[] = {
        {.past = "curtain.past", .stand_off = "drive_end.extender.eye_stand_off", .eye_past = "drive_end.eye_past"},
        {.past = "curtain.past", .stand_off = "free_end.extender.eye_stand_off", .eye_past = "free_end.eye_past"},
    };
    static const tside_i_along_names given[] = {
        {.past = "/curtain.past", .run_on = "past_drive"},
        {.past = "/curtain.past", .run_on = "past_free"},
    };
    tside_along along = side_along(setup, which);
    tside_stand *stand = setup->stand + which;
    tside_i_along_stand(&along, stand);
    if (along.alignment == TSIDE_IN_LINE)
        return tside_i_along_refuse(&along, stand, in_line + which, fault);
    TRY(tside_i_within_bar(setup, fault, tside_i_along_refuse(&along, stand, given + which, fault)));
    return tside_i_within_bar(setup, fault,
                              check_standing(tside_i_end(setup->side, which), &along, stand, given + which, fault));
}

static tside_i_bar_lengths bar_lengths(const tside_i_setup *setup)
{
    const tside_side *side = setup->side;
    return (tside_i_bar_lengths){setup->stand[TSIDE_DRIVE_END].run_on, side->length + 2 * side->curtain.past,
                                 setup->stand[TSIDE_FREE_END].run_on + side->collar.half_length +
                                     side->collar.clearance};
}

static tside_load side_load(const tside_i_setup *setup)
{
    const tside_side *side = setup->side;
    const tside_i_bar_lengths *lengths = &setup->bar_lengths;
    int ropes = side->ropes != TSIDE_NO_ROPES;
    return (tside_load){
        .length = lengths->curtain,
        .bar_mass = setup->bar_section.mass,
        .clip_mass = setup->bar->clip_mass,
        .areal_mass = side->curtain.areal_mass,
        .wet = side->curtain.wet,
        .end_mass = setup->drive->mass + side->collar.mass +
                    setup->bar_section.mass * (lengths->beyond_drive + lengths->beyond_free),
        .friction = side->friction,
        .rope_pressure = ropes ? side->rope_pressure : 0,
        .rope_friction = ropes ? side->rope_friction : 0,
    };
}

tside_status tside_i_make_travel(const tside_i_setup *setup, double factor, const tside_stops *stops,
                                 tside_travel *travel, tside_fault *fault)
{
    const tside_curtain *curtain = &setup->side->curtain;
    tside_roll roll = {(setup->bar->tube.diameter + setup->bar->core_over) * (1 + factor * stops->core_spread),
                       curtain->thickness * (1 + factor * stops->thickness_spread),
                       fmax(curtain->packing + factor * stops->packing_spread, 0)};
    /* of a spread only the ends are asked */
    return tside_i_travel_make(&setup->travel.line, curtain, &roll, stops, factor != 0, travel, fault);
}

static tside_status string_ropes(const tside_side *side, tside_i_setup *setup, tside_fault *fault)
{
    tside_rope rope;
    tside_rope_over longest, hardest;
    setup->ropes = (tside_i_strung){0};
    if (!tside_i_is_strung(side))
        return TSIDE_OK;
    return tside_i_hook(side, &setup->track, &rope, &setup->ropes, &longest, &hardest, fault);
}

tside_status tside_i_set_up(const tside_side *side, const tside_bar *bar, const tside_drive *drive,
                            tside_i_setup *setup, tside_fault *fault)
{
    setup->side = side;
    setup->bar = bar;
    setup->drive = drive;
    TRY(check_drive(drive, fault));
    TRY(tside_i_bow_make(&side->frame, &setup->bow, fault));
    TRY(tside_i_line_make(&setup->bow, &side->curtain, "frame.peak_height", "frame.board_top", &setup->travel.line,
                          fault));
    TRY(tside_i_hip_find(&setup->bow, side->curtain.hip, "curtain.hip", &setup->hip, fault));
    TRY(check_keep_outs(setup, TSIDE_DRIVE_END, fault));
    TRY(check_keep_outs(setup, TSIDE_FREE_END, fault));
    TRY(tside_i_within_bar(setup, fault, tside_i_material_values(&bar->material, &setup->bar_metal, fault)));
    TRY(tside_i_within_bar(setup, fault,
                           tside_i_round_section(&bar->tube, setup->bar_metal.density, &setup->bar_section, fault)));
    TRY(tside_i_make_travel(setup, 0, &side->stops, &setup->travel, fault));
    tside_i_track_make(&setup->travel, &setup->track);
    TRY(stand_end(setup, TSIDE_DRIVE_END, fault));
    TRY(stand_end(setup, TSIDE_FREE_END, fault));
    setup->bar_lengths = bar_lengths(setup);
    setup->load = side_load(setup);
    return string_ropes(side, setup, fault);
}

tside_i_names tside_i_end_names(const tside_i_setup *setup, tside_which_end which, tside_i_place place)
{
    const tside_end *end = tside_i_end(setup->side, which);
    int best = place == TSIDE_I_BEST_EYE || end->placed == TSIDE_EYE_BEST;
    return (tside_i_names){
        .eye_x = {.field = best ? "placed" : "eye_outboard",
                  .from = setup->travel.line.x - setup->side->curtain.standoff,
                  .chosen = best},
        .eye_y = {.field = place == TSIDE_I_HIP ? "hung" : "rise",
                  .from = setup->side->curtain.hip,
                  .chosen = place == TSIDE_I_HIP},
        .offset = which == TSIDE_DRIVE_END ? "/drive.collar_offset" : "/collar.offset",
        .bow = "/frame",
        .travel = "/stops",
        .ground = tside_i_end_ground(setup->side, which),
        .level = tside_i_end_level(setup, which),
    };
}

static tside_status place_eye(const tside_i_setup *setup, const tside_end *end, tside_i_place place, double rise,
                              const tside_collar *collar, const tside_i_names *names, tside_i_hung *hung,
                              tside_fault *fault)
{
    double ignored;
    hung->eye_x = setup->travel.line.x;
    hung->eye_y = setup->travel.line.y;
    if (place == TSIDE_I_HIP)
        return TSIDE_OK;
    hung->eye_y = setup->side->curtain.hip + (place == TSIDE_I_BEST_EYE ? rise : end->rise);
    if (place == TSIDE_I_BEST_EYE || end->placed == TSIDE_EYE_BEST) {
        TRY(tside_i_eye_clears(&setup->track, &end->guide, collar, hung->eye_y, names, &ignored, fault));
        return tside_i_eye_best(&setup->track, hung->eye_y, collar->offset, &hung->eye_x, fault);
    }
    hung->eye_x = setup->travel.line.x - setup->side->curtain.standoff + end->eye_outboard;
    return TSIDE_OK;
}

/* A standing guide in the words of a hanging one: all leans are one, and its foot stays. */
static tside_sweep sweep_of(const tside_fixed *fixed)
{
    return (tside_sweep){.lean_shut = fixed->lean,
                         .lean_open = fixed->lean,
                         .lean_least = fixed->lean,
                         .lean_greatest = fixed->lean,
                         .length = fixed->length,
                         .cut_length = fixed->cut_length,
                         .foot_x = fixed->foot_x,
                         .foot_lowest = fixed->ground,
                         .walkway = fixed->foot_x,
                         .walkway_error = fixed->foot_x,
                         .clear = fixed->clear};
}

static tside_status stand_guide(const tside_i_setup *setup, tside_which_end which, const tside_collar *collar,
                                const tside_i_names *names, tside_i_hung *hung, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    double ground = names->ground, lowest = setup->track.shut.y, hip = setup->side->curtain.hip;
    if (!(ground < lowest))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "hip_height", names->travel,
                                    "the collar would come to the ground", "m", hip - ground, TSIDE_NOT_ABOVE,
                                    hip - lowest, 0);
    TRY(tside_i_fixed_make(&setup->track, &end->guide, &end->footing, collar, hung->eye_x, hung->eye_y, ground, names,
                           hung->fixed, fault));
    hung->eye_x = hung->fixed->top_x;
    *hung->sweep = sweep_of(hung->fixed);
    hung->hang = (tside_hang){.eye_x = hung->eye_x, .eye_y = hung->eye_y};
    return TSIDE_OK;
}

/* Hung on the hip instead of its extender it is only compared: no error is asked, and the rail would run on. */
static tside_status hang_guide(const tside_i_setup *setup, tside_which_end which, tside_i_place place,
                               const tside_collar *collar, const tside_i_names *names, tside_i_hung *hung,
                               tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    int instead = place == TSIDE_I_HIP && end->hung != TSIDE_ON_HIP;
    tside_i_hanging at = {hung->eye_x, hung->eye_y, instead ? 0 : end->guide.placing_error,
                          instead ? 0 : setup->stand[which].misfit, names->ground};
    return tside_i_hang_and_sweep(&setup->track, &end->guide, collar, &at, names, &hung->hang, hung->sweep, fault);
}

/* Where an end's own eye is. */
static tside_i_place own_place(const tside_end *end)
{
    return end->hung == TSIDE_ON_HIP ? TSIDE_I_HIP : TSIDE_I_OWN_EYE;
}

static tside_status hang_or_stand(const tside_i_setup *setup, tside_which_end which, tside_i_place place, double rise,
                                  tside_i_hung *hung, tside_fault *fault)
{
    const tside_end *end = tside_i_end(setup->side, which);
    const tside_collar collar = tside_i_end_collar(setup, which);
    const tside_i_names names = tside_i_end_names(setup, which, place);
    TRY(place_eye(setup, end, place, rise, &collar, &names, hung, fault));
    hung->stands = end->guide.foot == TSIDE_FOOT_FIXED;
    if (hung->stands)
        return stand_guide(setup, which, &collar, &names, hung, fault);
    return hang_guide(setup, which, place, &collar, &names, hung, fault);
}

tside_status tside_i_hang_end(const tside_i_setup *setup, tside_which_end which, tside_i_place place, double rise,
                              tside_i_hung *hung, tside_fault *fault)
{
    if (place == TSIDE_I_OWN_EYE)
        place = own_place(tside_i_end(setup->side, which));
    return tside_i_within(fault, tside_i_end_name(which), hang_or_stand(setup, which, place, rise, hung, fault));
}

tside_status tside_i_hang_instead(const tside_i_setup *setup, tside_which_end which, tside_i_hung *hung)
{
    const tside_end *end = tside_i_end(setup->side, which);
    const tside_i_place place = own_place(end);
    const tside_collar collar = tside_i_end_collar(setup, which);
    const tside_i_names names = tside_i_end_names(setup, which, place);
    hung->stands = 0;
    place_eye(setup, end, place, 0, &collar, &names, hung, NULL); /* as it was placed for the guide that stands */
    return hang_guide(setup, which, place, &collar, &names, hung, NULL);
}
