/* SPDX-License-Identifier: MIT */
/*
 * A curtain that nothing holds but its rail, in wind: film without weight, an arc, with what hangs at its foot. Source:
 * derivation, equilibrium of the film, and of bar and roll.
 */
#include "statics/loose.h"

#include "base/field.h"
#include "base/root.h"

/* clang-format off */
static const tside_field loose_rows[] = {
    {REQUIRED_FROM(tside_loose, hanging, "m", 0.01, 100, "curtain from rail to roll")},
    {REQUIRED(tside_loose, roll, "m", TO(5), "diameter of the roll")},
    {REQUIRED_FROM(tside_loose, weight, "N/m", 0.01, 1e5, "weight of bar, clips and wraps, and half the hanging film's, by the metre")},
    {NUMBER(tside_loose, lean, "rad", FROM(0), UNDER(45 * DEG), 0, OURS, "lean of the straight line from rail to roll in a calm, foot outboard")},
    {NUMBER(tside_loose, seal, "m", FROM(0), TO(10), 0.05, PRACTICE, "overlap below the sill in a calm")},
};
/* clang-format on */
TABLE(tside_i_loose_table, loose_rows);

/* clang-format off */
static const tside_field loosening_rows[] = {
    {RESULT(tside_loosening, leaves, "Pa", "net pressure at which the bar leaves the wall")},
    {RESULT(tside_loosening, unseals, "Pa", "net pressure at which the roll rises above the sill")},
    {RESULT(tside_loosening, flies, "Pa", "net pressure at which the curtain flies: level at its rail")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_loosening_table, loosening_rows, tside_loosening);

/* clang-format off */
static const tside_field blown_rows[] = {
    {RESULT_COUNT(tside_blown, off, "1 where the bar has left the wall; all else is 0 while it has not")},
    {RESULT(tside_blown, stand_out, "m", "how far the roll stands off where it lay, outboard")},
    {RESULT(tside_blown, raise, "m", "how far the roll is raised")},
    {RESULT(tside_blown, tension, "N/m", "tension of the film, by the metre along the house")},
    {RESULT(tside_blown, rail_angle, "rad", "angle of the film at its rail, from plumb")},
};
/* clang-format on */
TABLE(tside_i_blown_table, blown_rows);

/* The arc: its tension and its angles from plumb, at the bar and at the rail. */
typedef struct arc {
    double tension, bar, rail;
} arc;

static arc arc_at(const tside_loose *c, double pressure)
{
    double level = pressure * c->roll, tension = hypot(c->weight, level), bar = atan(level / c->weight);
    return (arc){tension, bar, bar + c->hanging * pressure / tension};
}

/*
 * out and drop are the arc's chord, s sin(h)/h with h half its angle, leaning by the mean of its ends: as R (cos b -
 * cos t) and R (sin t - sin b) they have no digit left in a light wind.
 */
static tside_blown stands(const tside_loose *c, double pressure)
{
    arc a = arc_at(c, pressure);
    double h = (a.rail - a.bar) / 2, chord = h > 0 ? c->hanging * sin(h) / h : c->hanging, lean = (a.rail + a.bar) / 2;
    return (tside_blown){1, fmax(chord * sin(lean) - c->hanging * sin(c->lean), 0),
                         c->hanging * cos(c->lean) - chord * cos(lean), a.tension, a.rail};
}

static double above_lean(double pressure, const void *context)
{
    const tside_loose *c = context;
    arc a = arc_at(c, pressure);
    return (a.bar + a.rail) / 2 - c->lean;
}

static double above_seal(double pressure, const void *context)
{
    const tside_loose *c = context;
    return stands(c, pressure).raise - c->seal;
}

static double above_level(double pressure, const void *context)
{
    return arc_at(context, pressure).rail - TSIDE_PI / 2;
}

tside_loosening tside_i_loose_limits(const tside_loose *c)
{
    tside_loosening l;
    /* Of a bare hem t = p s/w; with a roll it is more. */
    l.flies = tside_i_rising_root(above_level, c, 0, TSIDE_PI / 2 * c->weight / c->hanging);
    l.leaves = tside_i_rising_root(above_lean, c, 0, l.flies);
    l.unseals = tside_i_rising_root(above_seal, c, l.leaves, l.flies);
    return l;
}

tside_blown tside_i_loose_blown(const tside_loose *c, double pressure)
{
    if (pressure > 0 && above_lean(pressure, c) >= 0)
        return stands(c, pressure);
    return (tside_blown){0};
}

tside_status tside_loose_limits(const tside_loose *loose, tside_loosening *loosening, tside_fault *fault)
{
    tside_loosening made;
    TRY(tside_i_check(&tside_i_loose_table, "loose", loose, fault));
    made = tside_i_loose_limits(loose);
    return ANSWER(&tside_i_loosening_table, made, loosening, fault);
}

tside_status tside_loose_blown(const tside_loose *loose, double pressure, tside_blown *blown, tside_fault *fault)
{
    tside_blown made;
    double flies;
    TRY(tside_i_check(&tside_i_loose_table, "loose", loose, fault));
    TRY(tside_i_argument(fault, "pressure", "Pa", pressure, 0, 0));
    flies = tside_i_loose_limits(loose).flies;
    if (pressure > flies * (1 + SLACK))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "pressure", "loose.weight", "the curtain flies", "Pa", pressure, TSIDE_ABOVE,
               flies, 0);
    made = tside_i_loose_blown(loose, pressure);
    return ANSWER(&tside_i_blown_table, made, blown, fault);
}
