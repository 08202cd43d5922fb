/* SPDX-License-Identifier: MIT */
/*
 * To teach the rows a function: give its arguments and outputs a place, write the call, and add one row to the table of
 * functions.
 */
#include "calls.h"

#include <string.h>

#include <tunnelside/air.h>
#include <tunnelside/along.h>
#include <tunnelside/bay.h>
#include <tunnelside/bolt.h>
#include <tunnelside/cable.h>
#include <tunnelside/crank.h>
#include <tunnelside/drive.h>
#include <tunnelside/length.h>
#include <tunnelside/lift.h>
#include <tunnelside/loose.h>
#include <tunnelside/pitch.h>
#include <tunnelside/pressure.h>
#include <tunnelside/roll.h>
#include <tunnelside/rope.h>
#include <tunnelside/span.h>
#include <tunnelside/tube.h>

static tside_round round_tube;
static tside_square square_tube;
static tside_section section;
static tside_material material;
static tside_metal_values metal;
static tside_roll roll;
static tside_cable cable;
static tside_crank crank;
static tside_cranking cranking;
static tside_wind wind;
static tside_pressure pressure;
static tside_span span;
static tside_belly belly;
static tside_loose loose;
static tside_bay bay;
static tside_bay_load bay_load;
static tside_loosening loosening;
static tside_blown blown;
static double pascals;
static double net, speed;
static double per_metre, along, shear_modulus, torsion, twist;
static tside_air air;
static tside_airing airing;
static tside_rope rope;
static tside_roped roped;
static double opening, pitch;
static tside_pitch_rule rule;
static tside_along stands;
static tside_stand stand;
static tside_drive drive;
static tside_cable smallest;
static int loading;
static double voltage, current, drop, running;
static double ohms, torque, drive_turns;
static tside_bolt bolt;
static tside_bolt_plan bolt_plan;
static tside_bolt_part bolt_part;
static tside_bearing bearing;
static double density, diameter, wall, value, core, wraps, wraps_before, turns, taken_up, length, thickness;
static char text[VALUE_SIZE], unit[VALUE_SIZE];

static tside_status round_section(tside_fault *fault)
{
    return tside_round_section(&round_tube, density, &section, fault);
}

static tside_status square_section(tside_fault *fault)
{
    return tside_square_section(&square_tube, density, &section, fault);
}

static tside_status material_values(tside_fault *fault)
{
    return tside_material_values(&material, &metal, fault);
}

static tside_status tube_size(tside_fault *fault)
{
    return tside_tube_size(text, &diameter, fault);
}

static tside_status tube_wall(tside_fault *fault)
{
    return tside_tube_wall(text, &wall, fault);
}

static tside_status quantity_read(tside_fault *fault)
{
    return tside_quantity_read(text, unit, &value, fault);
}

static tside_status bolt_choose(tside_fault *fault)
{
    return tside_bolt_choose(&bolt, &bolt_plan, fault);
}

static tside_status bolt_bearing(tside_fault *fault)
{
    return tside_bolt_bearing(&bolt, &bolt_part, &bearing, fault);
}

static tside_status cable_resistance(tside_fault *fault)
{
    return tside_cable_resistance(&cable, &ohms, fault);
}

static tside_status cable_smallest(tside_fault *fault)
{
    return tside_cable_smallest(&cable, voltage, current, (tside_loading)loading, drop, &smallest, fault);
}

static tside_status along_stand(tside_fault *fault)
{
    return tside_along_stand(&stands, &stand, fault);
}

static tside_status drive_stall(tside_fault *fault)
{
    return tside_drive_stall(&drive, running, &torque, fault);
}

static tside_status crank_effort(tside_fault *fault)
{
    return tside_crank_effort(&crank, torque, drive_turns, &cranking, fault);
}

static tside_status wind_pressure(tside_fault *fault)
{
    return tside_wind_pressure(&wind, &pressure, fault);
}

static tside_status wind_speed(tside_fault *fault)
{
    return tside_wind_speed(&wind, net, &speed, fault);
}

static tside_status air_through(tside_fault *fault)
{
    return tside_air_through(&air, length, opening, &airing, fault);
}

static tside_status span_belly(tside_fault *fault)
{
    return tside_span_belly(&span, &belly, fault);
}

static tside_status loose_limits(tside_fault *fault)
{
    return tside_loose_limits(&loose, &loosening, fault);
}

static tside_status loose_blown(tside_fault *fault)
{
    return tside_loose_blown(&loose, pascals, &blown, fault);
}

static tside_status bay_bears(tside_fault *fault)
{
    return tside_bay_bears(&bay, &bay_load, fault);
}

static tside_status pitch_most(tside_fault *fault)
{
    return tside_pitch_most(&rope, &bay, &pitch, &rule, fault);
}

static tside_status rope_bears(tside_fault *fault)
{
    return tside_rope_bears(&rope, length, net, &roped, fault);
}

static tside_status roll_taken_up(tside_fault *fault)
{
    return tside_roll_taken_up(&roll, wraps, &length, fault);
}

static tside_status roll_wraps(tside_fault *fault)
{
    return tside_roll_wraps(&roll, taken_up, &wraps, fault);
}

static tside_status roll_diameter(tside_fault *fault)
{
    return tside_roll_diameter(&roll, wraps, &diameter, fault);
}

static tside_status roll_thickness(tside_fault *fault)
{
    return tside_roll_thickness(core, wraps_before, turns, taken_up, &thickness, fault);
}

static tside_status bar_twist(tside_fault *fault)
{
    return tside_bar_twist(per_metre, along, shear_modulus, torsion, &twist, fault);
}

const function functions[] = {
    {"tside_round_section",
     round_section,
     {STRUCTURE("tube", TSIDE_KIND_ROUND, round_tube), NUMBER("density", "kg/m3", density)},
     {STRUCTURE("section", TSIDE_KIND_SECTION, section)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_square_section",
     square_section,
     {STRUCTURE("tube", TSIDE_KIND_SQUARE, square_tube), NUMBER("density", "kg/m3", density)},
     {STRUCTURE("section", TSIDE_KIND_SECTION, section)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_material_values",
     material_values,
     {STRUCTURE("material", TSIDE_KIND_MATERIAL, material)},
     {NUMBER("values.modulus", "Pa", metal.modulus), NUMBER("values.shear_modulus", "Pa", metal.shear_modulus),
      NUMBER("values.density", "kg/m3", metal.density), WHOLE("values.yield_known", metal.yield_known),
      NUMBER("values.yield", "Pa", metal.yield), NUMBER("values.safety", "1", metal.safety),
      NUMBER("values.expansion", "1/K", metal.expansion)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_tube_size",
     tube_size,
     {WORDS("text", text)},
     {NUMBER("diameter", "m", diameter)},
     FAILS(TSIDE_NOT_FOUND) | FAILS(TSIDE_UNREADABLE) | FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_tube_wall", tube_wall, {WORDS("text", text)}, {NUMBER("wall", "m", wall)}, FAILS(TSIDE_NOT_FOUND)},
    {"tside_quantity_read",
     quantity_read,
     {WORDS("text", text), WORDS("unit", unit)},
     {NUMBER("value", unit, value)},
     FAILS(TSIDE_UNREADABLE) | FAILS(TSIDE_NOT_FOUND)},
    {"tside_roll_taken_up",
     roll_taken_up,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("wraps", "turn", wraps)},
     {NUMBER("length", "m", length)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_roll_wraps",
     roll_wraps,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("taken_up", "m", taken_up)},
     {NUMBER("wraps", "turn", wraps)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_NOT_MODELLED)},
    {"tside_roll_diameter",
     roll_diameter,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("wraps", "turn", wraps)},
     {NUMBER("diameter", "m", diameter)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_roll_thickness",
     roll_thickness,
     {NUMBER("core", "m", core), NUMBER("wraps_before", "turn", wraps_before), NUMBER("turns", "turn", turns),
      NUMBER("taken_up", "m", taken_up)},
     {NUMBER("thickness", "m", thickness)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_bar_twist",
     bar_twist,
     {NUMBER("per_metre", "N", per_metre), NUMBER("length", "m", along), NUMBER("shear_modulus", "Pa", shear_modulus),
      NUMBER("torsion", "m4", torsion)},
     {NUMBER("twist", "rad", twist)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_NOT_MODELLED)},
    {"tside_cable_resistance",
     cable_resistance,
     {STRUCTURE("cable", TSIDE_KIND_CABLE, cable)},
     {NUMBER("resistance", "ohm", ohms)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_cable_smallest",
     cable_smallest,
     {STRUCTURE("cable", TSIDE_KIND_CABLE, cable), NUMBER("voltage", "V", voltage), NUMBER("current", "A", current),
      WHOLE("loading", loading), NUMBER("drop", "V", drop)},
     {STRUCTURE("smallest", TSIDE_KIND_CABLE, smallest)},
     0},
    {"tside_along_stand",
     along_stand,
     {STRUCTURE("along", TSIDE_KIND_ALONG, stands)},
     {STRUCTURE("stand", TSIDE_KIND_STAND, stand)},
     0},
    {"tside_drive_stall",
     drive_stall,
     {STRUCTURE("drive", TSIDE_KIND_DRIVE, drive), NUMBER("running", "N m", running)},
     {NUMBER("torque", "N m", torque)},
     0},
    {"tside_crank_effort",
     crank_effort,
     {STRUCTURE("crank", TSIDE_KIND_CRANK, crank), NUMBER("torque", "N m", torque),
      NUMBER("drive_turns", "turn", drive_turns)},
     {STRUCTURE("cranking", TSIDE_KIND_CRANKING, cranking)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_wind_pressure",
     wind_pressure,
     {STRUCTURE("wind", TSIDE_KIND_WIND, wind)},
     {STRUCTURE("pressure", TSIDE_KIND_PRESSURE, pressure)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_wind_speed",
     wind_speed,
     {STRUCTURE("wind", TSIDE_KIND_WIND, wind), NUMBER("net", "Pa", net)},
     {NUMBER("speed", "m/s", speed)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_air_through",
     air_through,
     {STRUCTURE("air", TSIDE_KIND_AIR, air), NUMBER("length", "m", length), NUMBER("opening", "m", opening)},
     {STRUCTURE("airing", TSIDE_KIND_AIRING, airing)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_span_belly",
     span_belly,
     {STRUCTURE("span", TSIDE_KIND_SPAN, span)},
     {STRUCTURE("belly", TSIDE_KIND_BELLY, belly)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_loose_limits",
     loose_limits,
     {STRUCTURE("loose", TSIDE_KIND_LOOSE, loose)},
     {STRUCTURE("loosening", TSIDE_KIND_LOOSENING, loosening)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_loose_blown",
     loose_blown,
     {STRUCTURE("loose", TSIDE_KIND_LOOSE, loose), NUMBER("pressure", "Pa", pascals)},
     {STRUCTURE("blown", TSIDE_KIND_BLOWN, blown)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_bay_bears",
     bay_bears,
     {STRUCTURE("bay", TSIDE_KIND_BAY, bay)},
     {STRUCTURE("load", TSIDE_KIND_BAY_LOAD, bay_load)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_pitch_most",
     pitch_most,
     {STRUCTURE("rope", TSIDE_KIND_ROPE, rope), STRUCTURE("bay", TSIDE_KIND_BAY, bay)},
     {NUMBER("pitch", "m", pitch), WHOLE("rule", rule)},
     0},
    {"tside_rope_bears",
     rope_bears,
     {STRUCTURE("rope", TSIDE_KIND_ROPE, rope), NUMBER("length", "m", length), NUMBER("pressure", "Pa", net)},
     {STRUCTURE("roped", TSIDE_KIND_ROPED, roped)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_bolt_choose",
     bolt_choose,
     {STRUCTURE("bolt", TSIDE_KIND_BOLT, bolt)},
     {STRUCTURE("plan", TSIDE_KIND_BOLT_PLAN, bolt_plan)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_bolt_bearing",
     bolt_bearing,
     {STRUCTURE("bolt", TSIDE_KIND_BOLT, bolt), STRUCTURE("part", TSIDE_KIND_BOLT_PART, bolt_part)},
     {STRUCTURE("bearing", TSIDE_KIND_BEARING, bearing)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
};
const int function_count = sizeof functions / sizeof *functions;

const function *find_function(const char *name)
{
    for (int i = 0; i < function_count; i++)
        if (!strcmp(functions[i].name, name))
            return functions + i;
    for (int i = 0; i < side_function_count; i++)
        if (!strcmp(side_functions[i].name, name))
            return side_functions + i;
    return NULL;
}
