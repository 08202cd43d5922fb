/* SPDX-License-Identifier: MIT */
/*
 * The roll: a spiral of even pitch taken as a radius that grows evenly with the wraps; length, wraps and diameter by
 * each other. Source: derivation.
 */
#include "shape/roll.h"

#include "base/field.h"

/* clang-format off */
static const tside_field rows[] = {
    {REQUIRED(tside_roll, core, "m", TO(1), "core diameter as the curtain meets it, clips included")},
    {NUMBER(tside_roll, thickness, "m", FROM(0), TO(0.2), 0.15e-3, PRACTICE, "thickness of the bare curtain"), IN_MIL},
    {NUMBER(tside_roll, packing, "1", ABOVE(0), TO(5), 1.15, PRACTICE, "packing factor: trapped air above 1, squeezed quilts below")},
};
/* clang-format on */
TABLE(tside_i_roll_table, rows);

/* The same as the table's check where all is well, without a loop: a wrap costs less than looking its bounds up. */
static int plain(const tside_roll *roll)
{
    return tside_i_well_inside(rows, roll) && tside_i_well_inside(rows + 1, roll) &&
           tside_i_well_inside(rows + 2, roll);
}

static tside_status check(const tside_roll *roll, const char *name, const char *unit, double value, double low,
                          double high, tside_fault *fault)
{
    if (!plain(roll))
        TRY(tside_i_check(&tside_i_roll_table, "roll", roll, fault));
    if (!isfinite(value))
        return tside_i_bound(fault, name, unit, 0, TSIDE_NOT_FINITE, 0);
    if (value < low)
        return tside_i_bound(fault, name, unit, value, TSIDE_BELOW, low);
    if (value > high)
        return tside_i_bound(fault, name, unit, value, TSIDE_ABOVE, high);
    return TSIDE_OK;
}

tside_status tside_roll_taken_up(const tside_roll *roll, double wraps, double *length, tside_fault *fault)
{
    TRY(check(roll, "wraps", "turn", wraps, 0, 1000, fault));
    return ANSWER_NUMBER(tside_i_roll_length(roll, wraps), length, fault);
}

tside_status tside_roll_wraps(const tside_roll *roll, double taken_up, double *wraps, tside_fault *fault)
{
    TRY(check(roll, "taken_up", "m", taken_up, 0, TSIDE_I_LONGEST, fault));
    return ANSWER_NUMBER(tside_i_roll_wraps(roll, taken_up), wraps, fault);
}

tside_status tside_roll_diameter(const tside_roll *roll, double wraps, double *diameter, tside_fault *fault)
{
    TRY(check(roll, "wraps", "turn", wraps, 0, 1000, fault));
    return ANSWER_NUMBER(roll->core + 2 * tside_i_roll_te(roll) * wraps, diameter, fault);
}

tside_status tside_roll_thickness(double core, double wraps_before, double turns, double taken_up, double *thickness,
                                  tside_fault *fault)
{
    const struct {
        const char *name, *unit;
        double value, low, high;
        int open;
    } argument[] = {{"core", "m", core, 0, 1, 1},
                    {"wraps_before", "turn", wraps_before, 0, 1000, 0},
                    {"turns", "turn", turns, 0.001, 1000, 0},
                    {"taken_up", "m", taken_up, 0, TSIDE_I_LONGEST, 1}};
    double bare = TSIDE_PI * turns * core;
    for (int i = 0; i < 4; i++) {
        if (!isfinite(argument[i].value))
            return tside_i_bound(fault, argument[i].name, argument[i].unit, 0, TSIDE_NOT_FINITE, 0);
        if (argument[i].value < argument[i].low || (argument[i].open && argument[i].value == 0))
            return tside_i_bound(fault, argument[i].name, argument[i].unit, argument[i].value,
                                 argument[i].open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, argument[i].low);
        if (argument[i].value > argument[i].high)
            return tside_i_bound(fault, argument[i].name, argument[i].unit, argument[i].value, TSIDE_ABOVE,
                                 argument[i].high);
    }
    if (taken_up < bare * (1 - SLACK)) /* the bound itself comes back with other last digits */
        REFUSE(fault, TSIDE_CONTRADICTS, "taken_up", "core", "so many turns of the bare core take up more", "m",
               taken_up, TSIDE_BELOW, bare, 0);
    return ANSWER_NUMBER(fmax(taken_up / TSIDE_PI - turns * core, 0) / (turns * (2 * wraps_before + turns)), thickness,
                         fault);
}
