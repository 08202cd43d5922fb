/* SPDX-License-Identifier: MIT */
#include "parts/cable.h"

#include "base/field.h"

static const char *const wires[] = {"none", "awg", "area"};
static const char *const strands[] = {"stranded", "solid"};

#define LAID (ONLY(TSIDE_AWG) | ONLY(TSIDE_AREA))

static const tside_field rows[] = {
    {CHOICE(tside_cable, wire, wires, TSIDE_NO_CABLE, "the cable from supply to drive, and how its size is told")},
    {CHOICE(tside_cable, strands, strands, TSIDE_STRANDED, "stranded or solid conductors"), APPLIES(tside_cable, wire, LAID)},
    {COUNT(tside_cable, gauge, -3, 40, 14, OURS, "wire gauge; 0, -1, -2, -3 are 1/0 to 4/0"), APPLIES(tside_cable, wire, ONLY(TSIDE_AWG))},
    {REQUIRED_FROM(tside_cable, area, "m2", 1e-8, 1e-3, "copper of one conductor"), APPLIES(tside_cable, wire, ONLY(TSIDE_AREA))},
    {REQUIRED_FROM(tside_cable, length, "m", 0.01, 10000, "one way, from supply to drive when shut"), MEASURED(0.5), APPLIES(tside_cable, wire, LAID)},
    {NUMBER(tside_cable, follow, "1", FROM(0), TO(10), 1.5, PRACTICE, "times the opening, that flexible cord adds to follow the drive"), APPLIES(tside_cable, wire, LAID)},
    {NUMBER(tside_cable, temperature, "degC", FROM(-60), TO(200), 50, OURS, "of the copper"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, drop_limit, "1", ABOVE(0), UNDER(1), "share of the supply's voltage that may be lost"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, ampacity, "A", ABOVE(0), TO(1e4), "current that the cable may carry, by local code and its maker"), APPLIES(tside_cable, wire, LAID)},
    {OPTIONAL(tside_cable, fuse, "A", ABOVE(0), TO(1e4), "rating of the fuse at the supply")},
};
TABLE(tside_i_cable_table, rows);

#define RHO 1.7241e-8 /* ohm m, annealed copper at 20 C */
#define ALPHA 0.00393 /* per K, at 20 C */
#define LAY 1.02      /* strands are laid in a helix, and so are longer than their cable */

enum { LARGEST_GAUGE = -3, SMALLEST_GAUGE = 40 };

static double gauge_diameter(int gauge)
{
    return 0.127e-3 * pow(92, (36 - gauge) / 39.0);
}

tside_status tside_gauge_diameter(int gauge, double *diameter, tside_fault *fault)
{
    if (gauge < LARGEST_GAUGE)
        return tside_i_bound(fault, "gauge", "1", gauge, TSIDE_BELOW, LARGEST_GAUGE);
    if (gauge > SMALLEST_GAUGE)
        return tside_i_bound(fault, "gauge", "1", gauge, TSIDE_ABOVE, SMALLEST_GAUGE);
    *diameter = gauge_diameter(gauge);
    return TSIDE_OK;
}

double tside_i_cable_resistance(const tside_cable *cable, double length)
{
    double d, area = cable->area;
    if (cable->wire == TSIDE_NO_CABLE)
        return 0;
    if (cable->wire == TSIDE_AWG) {
        d = gauge_diameter(cable->gauge);
        area = TSIDE_PI / 4 * d * d;
    }
    return 2 * length * RHO * (1 + ALPHA * (cable->temperature - 20)) * (cable->strands == TSIDE_STRANDED ? LAY : 1) / area;
}

tside_status tside_cable_resistance(const tside_cable *cable, double *resistance, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_cable_table, "cable", cable, fault));
    *resistance = tside_i_cable_resistance(cable, cable->length);
    return TSIDE_OK;
}

double tside_i_cable_drop(double resistance, double voltage, double current, tside_loading loading)
{
    if (loading == TSIDE_STARTING)
        current = voltage * current / (voltage + resistance * current);
    return resistance * current;
}

/* Trade sizes, smallest first. */
static const signed char gauges[] = {20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
static const double areas[] = {0.5e-6, 0.75e-6, 1e-6, 1.5e-6, 2.5e-6, 4e-6, 6e-6, 10e-6, 16e-6, 25e-6, 35e-6, 50e-6, 70e-6, 95e-6, 120e-6};

int tside_i_cable_size(tside_cable *cable, int i)
{
    int count = (int)(cable->wire == TSIDE_AWG ? sizeof gauges / sizeof *gauges : sizeof areas / sizeof *areas);
    if (i >= count)
        return 0;
    if (cable->wire == TSIDE_AWG)
        cable->gauge = gauges[i];
    else
        cable->area = areas[i];
    return 1;
}

tside_status tside_cable_smallest(const tside_cable *cable, double voltage, double current, tside_loading loading, double drop, tside_cable *smallest, tside_fault *fault)
{
    tside_cable tried = *cable;
    double lost = 0;
    if (cable->wire == TSIDE_NO_CABLE)
        return tside_i_bound(fault, "cable.wire", "1", cable->wire, TSIDE_NOT_ONE_OF, TSIDE_AREA);
    tried.gauge = gauges[0];
    tried.area = areas[0];
    TRY(tside_i_check(&tside_i_cable_table, "cable", &tried, fault));
    TRY(tside_i_argument(fault, "voltage", "V", voltage, 0, 1));
    TRY(tside_i_argument(fault, "current", "A", current, 0, 0));
    TRY(tside_i_argument(fault, "drop", "V", drop, 0, 1));
    if (loading != TSIDE_RUNNING && loading != TSIDE_STARTING)
        return tside_i_bound(fault, "loading", "1", loading, TSIDE_NOT_ONE_OF, TSIDE_STARTING);
    for (int i = 0; tside_i_cable_size(&tried, i); i++) {
        lost = tside_i_cable_drop(tside_i_cable_resistance(&tried, tried.length), voltage, current, loading);
        if (lost <= drop) {
            *smallest = tried;
            return TSIDE_OK;
        }
    }
    REFUSE(fault, TSIDE_OUT_OF_REACH, "cable.length", "drop", "not even the largest size keeps the drop", "V", lost, TSIDE_ABOVE, drop, 0);
}
