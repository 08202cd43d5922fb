/* SPDX-License-Identifier: MIT */
/*
 * Cables: the resistance of a gauge or an area, warm, and the smallest that keeps to a drop. Sources stand beside each
 * table and formula.
 */
#include "parts/cable.h"

#include "base/field.h"

static const char *const wires[] = {"none", "awg", "area"};
static const char *const strand_names[] = {"stranded", "solid", "flexible"};

#define LAID (ONLY(TSIDE_AWG) | ONLY(TSIDE_AREA))

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_cable, wire, wires, TSIDE_NO_CABLE, "the cable from supply to drive, and how its size is told")},
    {CHOICE(tside_cable, strands, strand_names, TSIDE_FLEXIBLE, "stranded, solid or flexible conductors"), APPLIES(tside_cable, wire, LAID)},
    {COUNT(tside_cable, gauge, -3, 40, 14, OURS, "wire gauge; 0, -1, -2, -3 are 1/0 to 4/0"), APPLIES(tside_cable, wire, ONLY(TSIDE_AWG))},
    {REQUIRED_FROM(tside_cable, area, "m2", 1e-8, 1e-3, "copper of one conductor"), APPLIES(tside_cable, wire, ONLY(TSIDE_AREA))},
    {REQUIRED_FROM(tside_cable, length, "m", 0.01, 10000, "one way, from supply to drive when shut"), MEASURED(0.5), APPLIES(tside_cable, wire, LAID)},
    {NUMBER(tside_cable, follow, "1", FROM(0), TO(10), 1.5, PRACTICE, "times the opening, that flexible cord adds to follow the drive"), APPLIES(tside_cable, wire, LAID)},
    {NUMBER(tside_cable, temperature, "degC", FROM(-60), TO(200), 50, OURS, "of the copper"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, drop_limit, "1", ABOVE(0), UNDER(1), "share of the supply's voltage that may be lost"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, ampacity, "A", ABOVE(0), TO(1e4), "current that the cable may carry, by local code and its maker"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, fuse, "A", ABOVE(0), TO(1e4), "rating of the fuse at the supply")},
};
/* clang-format on */
TABLE(tside_i_cable_table, rows);

#define RHO (1e-6 / 58)  /* ohm m, annealed copper at 20 C */
#define ALPHA 0.00393    /* per K, at 20 C */
#define HANDED_BACK 1e-9 /* relative: a greatest length that was refused by comes back with other last digits */
#define LAY 1.02         /* strands are laid in a helix, and so are longer than their cable */

/* Source: ASTM B258. */
double tside_i_gauge_diameter(int gauge)
{
    return 0.127e-3 * pow(92, (36 - gauge) / 39.0);
}

/*
 * Plain copper by its nominal area, with the greatest resistance at 20 C that a sold conductor may have: IEC 60228,
 * tables 1 and 2 (the same here), and 3.
 */
static const struct {
    double area, solid, flexible; /* m2; ohm/m: classes 1 and 2; class 5 */
} sizes[] = {
    {0.5e-6, 36.0e-3, 39.0e-3},  {0.75e-6, 24.5e-3, 26.0e-3}, {1e-6, 18.1e-3, 19.5e-3},     {1.5e-6, 12.1e-3, 13.3e-3},
    {2.5e-6, 7.41e-3, 7.98e-3},  {4e-6, 4.61e-3, 4.95e-3},    {6e-6, 3.08e-3, 3.30e-3},     {10e-6, 1.83e-3, 1.91e-3},
    {16e-6, 1.15e-3, 1.21e-3},   {25e-6, 0.727e-3, 0.780e-3}, {35e-6, 0.524e-3, 0.554e-3},  {50e-6, 0.387e-3, 0.386e-3},
    {70e-6, 0.268e-3, 0.272e-3}, {95e-6, 0.193e-3, 0.206e-3}, {120e-6, 0.153e-3, 0.161e-3},
};
enum { SIZES = sizeof sizes / sizeof *sizes };

#define SAME_AREA 1e-6 /* relative: 2.5 mm2 and 2.5e-6 m2 differ in their last digits */

static double per_metre_of_copper(double area, tside_strands strands)
{
    return RHO * (strands == TSIDE_SOLID ? 1 : LAY) / area;
}

static double per_metre_of_area(double area, tside_strands strands)
{
    for (int i = 0; i < SIZES; i++)
        if (fabs(area - sizes[i].area) <= SAME_AREA * sizes[i].area)
            return strands == TSIDE_FLEXIBLE ? sizes[i].flexible : sizes[i].solid;
    return per_metre_of_copper(area, strands);
}

double tside_i_cable_resistance(const tside_cable *cable, double length)
{
    double d, per_metre; /* of one conductor, at 20 C */
    if (cable->wire == TSIDE_NO_CABLE)
        return 0;
    if (cable->wire == TSIDE_AWG) {
        d = tside_i_gauge_diameter(cable->gauge);
        per_metre = per_metre_of_copper(TSIDE_PI / 4 * d * d, cable->strands);
    } else
        per_metre = per_metre_of_area(cable->area, cable->strands);
    return 2 * length * per_metre * (1 + ALPHA * (cable->temperature - 20));
}

tside_status tside_cable_resistance(const tside_cable *cable, double *resistance, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_cable_table, "cable", cable, fault));
    return ANSWER_NUMBER(tside_i_cable_resistance(cable, cable->length), resistance, fault);
}

double tside_i_cable_drop(double resistance, double voltage, double current, tside_loading loading)
{
    if (loading == TSIDE_STARTING)
        current = voltage * current / (voltage + resistance * current);
    return resistance * current;
}

/* Trade sizes, smallest first, as those by area are. */
static const signed char gauges[] = {20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};

int tside_i_cable_size(tside_cable *cable, int i)
{
    int count = cable->wire == TSIDE_AWG ? (int)sizeof gauges : (int)SIZES;
    if (i >= count)
        return 0;
    if (cable->wire == TSIDE_AWG)
        cable->gauge = gauges[i];
    else
        cable->area = sizes[i].area;
    return 1;
}

tside_status tside_cable_smallest(const tside_cable *cable, double voltage, double current, tside_loading loading,
                                  double drop, tside_cable *smallest, tside_fault *fault)
{
    tside_cable tried = *cable;
    double resistance = 0, most;
    if (cable->wire == TSIDE_NO_CABLE)
        return tside_i_bound(fault, "cable.wire", "1", cable->wire, TSIDE_NOT_ONE_OF, TSIDE_AREA);
    tried.gauge = gauges[0];
    tried.area = sizes[0].area;
    TRY(tside_i_check(&tside_i_cable_table, "cable", &tried, fault));
    TRY(tside_i_argument(fault, "voltage", "V", voltage, 0, 1));
    TRY(tside_i_argument(fault, "current", "A", current, 0, 0));
    TRY(tside_i_argument(fault, "drop", "V", drop, 0, 1));
    if (loading != TSIDE_RUNNING && loading != TSIDE_STARTING)
        return tside_i_bound(fault, "loading", "1", loading, TSIDE_NOT_ONE_OF, TSIDE_STARTING);
    for (int i = 0; tside_i_cable_size(&tried, i); i++) {
        resistance = tside_i_cable_resistance(&tried, tried.length);
        if (tside_i_cable_drop(resistance, voltage, current, loading) <= drop * (1 + HANDED_BACK)) {
            *smallest = tried;
            return TSIDE_OK;
        }
    }
    most = drop / current *
           (loading == TSIDE_STARTING ? voltage / (voltage - drop) : 1); /* ohm, that loses just so much */
    tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "cable.length", "drop", "not even the largest size keeps the drop",
                         "m", tried.length, TSIDE_ABOVE, tried.length * most / resistance, 0);
    return tside_i_settle(&tside_i_cable_table, "cable", TSIDE_OUT_OF_REACH, fault);
}
