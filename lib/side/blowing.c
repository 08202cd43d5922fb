/* SPDX-License-Identifier: MIT */
/*
 * Wind on a side that is shut and that no rope holds: at which pressures and speeds it gives way, and how it stands in
 * the wind asked.
 */
#include "side/blowing.h"

#include "base/field.h"
#include "shape/bow.h"
#include "statics/loose.h"
#include "statics/pressure.h"

#define STEEPEST (45 * DEG) /* of a loose curtain's lean */

/* The wind asked with the height that counts: the house's top, unless it is given. */
static tside_wind at_its_height(const tside_i_setup *setup)
{
    const double beyond = 1e9; /* m, above any bow */
    tside_wind wind = setup->side->wind;
    double ignored;
    if (!wind.height_given) {
        wind.height_given = 1;
        tside_i_path_at_height(&setup->bow.face, beyond, &ignored, &wind.height);
    }
    return wind;
}

/* The curtain shut, its lean that of the chord from fixing to roll. Water on it is left out: it would hold it down. */
static tside_loose hung(const tside_i_setup *setup, const tside_plan *plan)
{
    const tside_i_spot *shut = &setup->track.shut;
    const tside_line *line = &setup->travel.line;
    const tside_load *load = &setup->load;
    double out = shut->x - shut->r * shut->nx - line->x, drop = line->y - (shut->y - shut->r * shut->ny);
    return (tside_loose){
        .hanging = shut->s,
        .roll = 2 * shut->r,
        .weight = TSIDE_GRAVITY * (load->bar_mass + load->clip_mass + load->areal_mass * (shut->length + shut->s / 2)),
        .lean = fmax(atan2(out, drop), 0),
        .seal = fmax(plan->seal, 0),
    };
}

double tside_i_speed_of(const tside_wind *wind, const tside_pressure *asked, double net)
{
    return wind->speed * sqrt(net / asked->net);
}

static void speeds(const tside_wind *wind, tside_blowing *blowing)
{
    const tside_pressure *asked = &blowing->pressure;
    blowing->leaves_speed_given = tside_i_wind_has_speed(wind->rule);
    if (!blowing->leaves_speed_given)
        return;
    blowing->leaves_speed = tside_i_speed_of(wind, asked, blowing->gives_way.leaves);
    blowing->unseals_speed = tside_i_speed_of(wind, asked, blowing->gives_way.unseals);
    blowing->flies_speed = tside_i_speed_of(wind, asked, blowing->gives_way.flies);
}

tside_status tside_i_plan_wind(const tside_i_setup *setup, tside_plan *plan, tside_fault *fault)
{
    tside_blowing *blowing = &plan->blowing;
    tside_wind wind;
    tside_loose curtain;
    plan->wind_given = setup->side->wind.rule != TSIDE_NO_WIND;
    if (!plan->wind_given)
        return TSIDE_OK;
    wind = at_its_height(setup);
    TRY(tside_i_within(fault, "wind", tside_i_wind_check(&wind, fault)));
    curtain = hung(setup, plan);
    if (curtain.lean >= STEEPEST)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "curtain.hip", "wind.rule",
                              "how wind lifts a curtain that leans by 45 deg or more is not modelled");
    blowing->pressure = tside_i_wind_pressure(&wind);
    blowing->height = wind.height;
    blowing->hanging = curtain.hanging;
    blowing->weight = curtain.weight;
    blowing->lean = curtain.lean;
    blowing->gives_way = tside_i_loose_limits(&curtain);
    speeds(&wind, blowing);
    blowing->needs_ropes = blowing->pressure.net > blowing->gives_way.unseals;
    blowing->stands_given = blowing->pressure.net <= blowing->gives_way.flies;
    if (blowing->stands_given)
        blowing->stands = tside_i_loose_blown(&curtain, blowing->pressure.net);
    return TSIDE_OK;
}
