/* SPDX-License-Identifier: MIT */
/*
 * Ropes over a side: what they, the film and the bar bear between them in the wind asked, how far apart they may stand,
 * and in which wind the drive still moves the bar under them.
 */
#include "side/roping.h"

#include "base/field.h"
#include "side/blowing.h"
#include "side/hooks.h"
#include "statics/bay.h"
#include "statics/pitch.h"
#include "statics/pressure.h"
#include "statics/span.h"

/* The bar from the last upper hook, at the end bow, to the curtain's edge; a bay of any pitch, shut. */
static tside_bay bay_of(const tside_i_setup *setup, double pressure)
{
    const tside_i_spot *shut = &setup->track.shut;
    const tside_load *load = &setup->load;
    return (tside_bay){
        .pressure = pressure,
        .overhang = setup->side->curtain.past,
        .hanging = shut->s,
        .roll = 2 * shut->r,
        .tube = setup->bar->tube,
        .material = setup->bar->material,
        .foot = TSIDE_BAR_RISES,
        .weight = TSIDE_GRAVITY * (load->bar_mass + load->clip_mass + load->areal_mass * (shut->length + shut->s)),
        .screw_spacing = setup->side->curtain.screw_spacing,
    };
}

/* What bar, rail and screws bear, and how far apart ropes may stand. The bar rises: nothing but its weight holds it. */
static void plan_bay(const tside_i_setup *setup, const tside_rope *rope, double pressure, tside_rope_plan *plan)
{
    tside_bay bay = bay_of(setup, pressure);
    plan->pitch_keeps = tside_i_pitch_most(rope, &bay, &plan->pitch_most, &plan->rule);
    bay.pitch = plan->bears.pitch;
    if (rope->run == TSIDE_ROPE_ZIGZAG)
        bay.overhang += bay.pitch / 2; /* the last anchor stands so far in, and the shut bar is near it */
    plan->bay_given = 1;
    tside_i_bay_bears(&bay, &plan->bay, NULL); /* the bar is well, and nothing holds the film's foot */
}

/* The film on the bows, if the wind asked pressed inward. */
static tside_status plan_inward(const tside_roping *roping, double pressure, tside_rope_plan *plan, tside_fault *fault)
{
    tside_belly belly;
    plan->film_inward_given = roping->bow_spacing_given;
    if (!roping->bow_spacing_given)
        return TSIDE_OK;
    TRY(tside_i_give_belly(&roping->film, "film", "bow_spacing", roping->bow_spacing, pressure, &belly, fault));
    plan->film_inward = belly.tension;
    return TSIDE_OK;
}

static void plan_moving(const tside_i_setup *setup, const tside_hang *hang, tside_rope_plan *plan)
{
    const tside_drive *drive = setup->drive;
    const tside_i_lifting lifting = tside_i_lifting_of(setup, hang);
    plan->stays_put_given = drive->rated_torque_given && setup->load.rope_friction > 0;
    if (plan->stays_put_given)
        plan->stays_put = fmax(tside_i_lift_through_wind(&lifting, drive->rated_torque), 0);
    plan->stays_put_speed_given = plan->stays_put_given && tside_i_wind_has_speed(setup->side->wind.rule);
}

/* In the wind asked; its height, where a code asks for one, is planned. */
static tside_status plan_in_wind(const tside_i_setup *setup, const tside_rope *rope, const tside_blowing *blowing,
                                 tside_rope_plan *plan, tside_fault *fault)
{
    double net = blowing->pressure.net;
    plan_bay(setup, rope, net, plan);
    TRY(tside_i_within(fault, "rope", plan_inward(&setup->side->rope, net, plan, fault)));
    if (plan->stays_put_speed_given)
        plan->stays_put_speed = tside_i_speed_of(&setup->side->wind, &blowing->pressure, plan->stays_put);
    return TSIDE_OK;
}

/* A zigzag's last leg is half way from the end bow to its anchor at mid height. */
static double edge_of(const tside_i_setup *setup, const tside_i_strung *strung)
{
    return setup->side->curtain.past + (strung->zigzag ? strung->pitch / 4 : 0);
}

tside_status tside_i_plan_ropes(const tside_i_setup *setup, const tside_hang *hang, tside_plan *plan,
                                tside_fault *fault)
{
    tside_rope_plan *ropes = &plan->rope;
    tside_rope rope;
    tside_i_strung strung;
    plan->rope_given = tside_i_is_strung(setup->side);
    if (!plan->rope_given)
        return TSIDE_OK;
    tside_i_hook(setup->side, &setup->track, &rope, &strung, &ropes->longest, &ropes->hardest,
                 NULL); /* it did when made ready */
    ropes->hook_x = rope.upper_x;
    ropes->hook_y = rope.upper_y;
    ropes->anchor_x = rope.lower_x;
    ropes->anchor_y = rope.lower_y;
    ropes->edge = edge_of(setup, &strung);
    TRY(tside_i_within(fault, "rope",
                       tside_i_rope_bears(&rope, &strung, plan->blowing.pressure.net, &ropes->bears, fault)));
    plan_moving(setup, hang, ropes);
    return plan->wind_given ? plan_in_wind(setup, &rope, &plan->blowing, ropes, fault) : TSIDE_OK;
}
