/* SPDX-License-Identifier: MIT */
/*
 * Bar and rail between two ropes. Source: derivation, half of what presses on the film goes to either edge; standard
 * beam tables.
 */
#include "statics/bay.h"

#include "base/field.h"
#include "parts/material.h"
#include "parts/tube.h"
#include "statics/span.h"

static const char *const feet[] = {"rises", "held_down"};

/* clang-format off */
static const tside_field bay_rows[] = {
    {REQUIRED_FROM(tside_bay, pressure, "Pa", 1e-3, 1e5, "net pressure, outward")},
    {REQUIRED_FROM(tside_bay, pitch, "m", 0.01, 100, "from rope to rope")},
    {NUMBER(tside_bay, overhang, "m", FROM(0), TO(100), 0, OURS, "bar beyond the last rope")},
    {REQUIRED_FROM(tside_bay, hanging, "m", 0.01, 100, "curtain from rail to roll")},
    {REQUIRED(tside_bay, roll, "m", TO(5), "diameter of the roll")},
    {GROUP(tside_bay, tube, round, "the bar's tube")},
    {GROUP(tside_bay, material, material, "the bar's metal")},
    {CHOICE(tside_bay, foot, feet, TSIDE_BAR_RISES, "whether the bar can rise as the curtain bellies, or is held down")},
    {REQUIRED_FROM(tside_bay, weight, "N/m", 0.01, 1e5, "weight of all that hangs from the rail, by the metre"), APPLIES(tside_bay, foot, ONLY(TSIDE_BAR_RISES))},
    {REQUIRED_FROM(tside_bay, film_stiffness, "N/m", 1, 1e12, "the film's modulus times its thickness"), APPLIES(tside_bay, foot, ONLY(TSIDE_BAR_HELD_DOWN))},
    {REQUIRED_FROM(tside_bay, screw_spacing, "m", 0.001, 10, "from screw to screw along the rail")},
};
/* clang-format on */
TABLE(tside_i_bay_table, bay_rows);

/* clang-format off */
static const tside_field bay_load_rows[] = {
    {RESULT(tside_bay_load, bar, "N/m", "load on the bar, outward")},
    {RESULT(tside_bay_load, moment, "N m", "greatest moment in the bar")},
    {RESULT(tside_bay_load, stress, "Pa", "stress of that")},
    {RESULT(tside_bay_load, deflection, "m", "how far the bar gives in mid bay")},
    {RESULT(tside_bay_load, rail_square, "N/m", "load on the rail, outward")},
    {RESULT(tside_bay_load, rail_along, "N/m", "load on the rail, down the film")},
    {RESULT(tside_bay_load, screw, "N", "load on each of the rail's screws")},
    {RESULT_OPTIONAL(tside_bay_load, limit, "Pa", "the bar's yield over its safety factor")},
    {RESULT_OPTIONAL(tside_bay_load, utilisation, "1", "the bar's stress over that")},
};
/* clang-format on */
TABLE(tside_i_bay_load_table, bay_load_rows);

/* What the film pulls at the rail, down along its chord. */
static tside_status along_rail(const tside_bay *bay, double *along, tside_fault *fault)
{
    tside_span film = {.chord = bay->hanging,
                       .load = bay->pressure,
                       .by = TSIDE_BY_STRETCH,
                       .stiffness_given = 1,
                       .stiffness = bay->film_stiffness};
    tside_belly belly;
    tside_fault why;
    *along = bay->weight;
    if (bay->foot == TSIDE_BAR_RISES)
        return TSIDE_OK;
    if (tside_i_span_belly(&film, &belly, &why) != TSIDE_OK)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "pressure", "film_stiffness",
               "held down, the film would belly by more than half its height", "Pa", bay->pressure, TSIDE_ABOVE,
               why.bound, 0);
    *along = belly.along;
    return TSIDE_OK;
}

tside_status tside_i_bay_bears(const tside_bay *bay, tside_bay_load *load, tside_fault *fault)
{
    tside_metal_values metal;
    tside_section bar;
    double p = bay->pressure, s = bay->hanging, a = bay->pitch, c = bay->overhang, w = p * (s / 2 + bay->roll);
    TRY(tside_i_material_values(&bay->material, &metal, fault));
    TRY(tside_i_round_section(&bay->tube, metal.density, &bar, fault));
    TRY(along_rail(bay, &load->rail_along, fault));
    load->bar = w;
    load->moment = fmax(w * a * a / 8, w * c * c / 2);
    load->stress = load->moment / bar.section_modulus;
    load->deflection = 5 * w * a * a * a * a / (384 * metal.modulus * bar.inertia);
    load->rail_square = p * s / 2;
    load->screw = bay->screw_spacing * hypot(load->rail_square, load->rail_along);
    load->limit_given = load->utilisation_given = metal.yield_known;
    load->limit = metal.yield_known ? metal.yield / metal.safety : 0;
    load->utilisation = metal.yield_known ? load->stress / load->limit : 0;
    return TSIDE_OK;
}

tside_status tside_bay_bears(const tside_bay *bay, tside_bay_load *load, tside_fault *fault)
{
    tside_bay_load made;
    tside_status status;
    TRY(tside_i_check(&tside_i_bay_table, "bay", bay, fault));
    status = tside_i_within(fault, "bay", tside_i_bay_bears(bay, &made, fault));
    TRY(tside_i_settle(&tside_i_bay_table, "bay", status, fault));
    return ANSWER(&tside_i_bay_load_table, made, load, fault);
}
