/* SPDX-License-Identifier: MIT */
/* A side made ready: bow, line, travel and load, and each end's guide hung. */
#include "side/ready.h"

#include "base/field.h"
#include "parts/drive.h"
#include "parts/material.h"
#include "parts/tube.h"
#include "shape/bow.h"
#include "shape/curtain.h"

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
    return tside_i_drive_stall(drive, 0, &ignored, fault);
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

tside_status tside_i_make_travel(const tside_i_setup *setup, double factor, const tside_stops *stops, tside_travel *travel, tside_fault *fault)
{
    const tside_curtain *curtain = &setup->side->curtain;
    tside_roll roll = {(setup->bar->tube.diameter + setup->bar->core_over) * (1 + factor * stops->core_spread), curtain->thickness * (1 + factor * stops->thickness_spread),
                       fmax(curtain->packing + factor * stops->packing_spread, 0)};
    /* of a spread only the ends are asked */
    return tside_i_travel_make(&setup->travel.line, curtain, &roll, stops, factor != 0, travel, fault);
}

tside_status tside_i_set_up(const tside_side *side, const tside_bar *bar, tside_i_setup *setup, tside_fault *fault)
{
    setup->side = side;
    setup->bar = bar;
    TRY(check_drive(&side->drive, fault));
    TRY(check_keep_outs(&side->drive_end, "drive_end", fault));
    TRY(check_keep_outs(&side->free_end, "free_end", fault));
    TRY(tside_i_bow_make(&side->frame, &setup->bow, fault));
    TRY(tside_i_line_make(&setup->bow, &side->curtain, "frame.peak_height", "frame.board_top", &setup->travel.line, fault));
    TRY(tside_i_within_bar(setup, fault, tside_i_material_values(&bar->material, &setup->bar_metal, fault)));
    TRY(tside_i_within_bar(setup, fault, tside_i_round_section(&bar->tube, setup->bar_metal.density, &setup->bar_section, fault)));
    TRY(tside_i_make_travel(setup, 0, &side->stops, &setup->travel, fault));
    tside_i_track_make(&setup->travel, &setup->track);
    setup->load = side_load(side, bar, &setup->bar_section);
    return TSIDE_OK;
}

tside_i_names tside_i_end_names(const tside_i_setup *setup, tside_which_end which, tside_i_place place)
{
    const tside_end *end = tside_i_end(setup->side, which);
    int best = place == TSIDE_I_BEST_EYE || end->placed == TSIDE_EYE_BEST;
    return (tside_i_names){
        .eye_x = {best ? "placed" : "eye_outboard", setup->travel.line.x - setup->side->curtain.standoff, best},
        .eye_y = {place == TSIDE_I_HIP ? "hung" : "rise", setup->side->curtain.hip, place == TSIDE_I_HIP},
        .offset = which == TSIDE_DRIVE_END ? "/drive.collar_offset" : "/collar.offset",
        .bow = "/frame",
        .travel = "/stops",
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
        TRY(tside_i_eye_clears(&setup->track, &end->guide, collar, hung->eye_y, names, &ignored, fault));
        return tside_i_eye_best(&setup->track, hung->eye_y, collar->offset, &hung->eye_x, fault);
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
    names = tside_i_end_names(setup, which, place);
    status = place_eye(setup, end, place, rise, &collar, &names, hung, fault);
    if (status == TSIDE_OK)
        status = tside_i_hang_and_sweep(&setup->track, &end->guide, &collar, hung->eye_x, hung->eye_y, instead ? 0 : end->guide.placing_error, &names, &hung->hang, &hung->sweep,
                                        fault);
    return tside_i_within(fault, tside_i_end_name(which), status);
}

