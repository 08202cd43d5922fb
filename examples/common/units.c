/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>
#include <tunnelside.h>

#include "units.h"

static char *take_slot(pen *p)
{
    p->next = (p->next + 1) % SLOTS;
    return p->slot[p->next];
}

static const char *length(pen *p, double metres, tside_style style, int part)
{
    char *slot = take_slot(p);
    if (tside_length_write(metres, style, part, slot, SLOT_SIZE, NULL, NULL) != TSIDE_OK)
        snprintf(slot, SLOT_SIZE, "%g m", metres);
    return slot;
}

const char *tape(pen *p, double metres)
{
    if (p->us)
        return length(p, metres, TSIDE_FEET_AND_INCHES, 16);
    return fabs(metres) < 20 ? length(p, metres, TSIDE_MILLIMETRES, 0) : length(p, metres, TSIDE_METRES, 3);
}

double tape_division(int us)
{
    return us ? 0.0254 / 16 : 1e-3;
}

/* To the next of a tape's divisions: half of one on, less what rounding may have put there. */
static double half_a_division(const pen *p)
{
    return tape_division(p->us) * (0.5 - 1e-6);
}

const char *tape_at_least(pen *p, double metres)
{
    return tape(p, metres + half_a_division(p));
}

const char *tape_at_most(pen *p, double metres)
{
    return tape(p, metres - half_a_division(p));
}

const char *plain(pen *p, double value, int decimals)
{
    char *slot = take_slot(p);
    snprintf(slot, SLOT_SIZE, "%.*f", decimals, value);
    if (*slot == '-' && !slot[strspn(slot, "-0.")])
        memmove(slot, slot + 1, strlen(slot));
    return slot;
}

static const char *with_unit(pen *p, const char *number, const char *unit)
{
    char *slot = take_slot(p);
    snprintf(slot, SLOT_SIZE, "%s %s", number, unit);
    return slot;
}

/* Without the zeros that end a fraction. */
static const char *shortened(pen *p, double value, int decimals)
{
    char *slot = take_slot(p), *end;
    snprintf(slot, SLOT_SIZE, "%s", plain(p, value, decimals));
    if (strchr(slot, '.')) {
        for (end = slot + strlen(slot); end[-1] == '0';)
            *--end = '\0';
        if (end[-1] == '.')
            end[-1] = '\0';
    }
    return slot;
}

const char *fine(pen *p, double metres)
{
    return p->us ? with_unit(p, shortened(p, metres / 0.0254, 3), "in")
                 : with_unit(p, shortened(p, metres * 1000, 2), "mm");
}

const char *cross_section(pen *p, double size, double wall)
{
    char *slot = take_slot(p);
    const double unit = p->us ? 0.0254 : 0.001;
    const int decimals = p->us ? 3 : 2;
    snprintf(slot, SLOT_SIZE, "%s x %s %s", shortened(p, size / unit, decimals), shortened(p, wall / unit, decimals),
             p->us ? "in" : "mm");
    return slot;
}

static const char *without_unit(pen *p, const char *with_unit)
{
    char *slot = take_slot(p);
    const size_t digits = strcspn(with_unit, "im") - 1;
    memmove(slot, with_unit, digits);
    slot[digits] = '\0';
    return slot;
}

const char *tape_number(pen *p, double metres)
{
    return without_unit(p, p->us ? length(p, metres, TSIDE_INCHES, 16) : length(p, metres, TSIDE_MILLIMETRES, 0));
}

const char *closely(pen *p, double metres)
{
    return p->us ? length(p, metres, TSIDE_INCHES, 32) : with_unit(p, shortened(p, metres * 1000, 1), "mm");
}

/*
 * Whether a size is so many whole parts of its system; 0.3438 in is 11/32 in. No 64th of an inch is so near a
 * half of a millimetre, but at every 2 1/2 in, where they are one.
 */
static int is_whole(double metres, double part)
{
    return metres > part / 2 && fabs(metres - part * round(metres / part)) < 1.5e-6;
}

const char *trade_size(pen *p, double metres)
{
    if (is_whole(metres, 0.0254 / 64))
        return length(p, metres, TSIDE_INCHES, 64);
    return is_whole(metres, 0.0005) ? with_unit(p, shortened(p, metres * 1000, 1), "mm") : fine(p, metres);
}

static int is_metric_thread(double diameter)
{
    return !is_whole(diameter, 0.0254 / 64) && is_whole(diameter, 0.001);
}

const char *bolt_length(pen *p, double diameter, double metres)
{
    return is_metric_thread(diameter) ? shortened(p, metres * 1000, 1) : trade_size(p, metres);
}

const char *bolt_name(pen *p, double diameter, const char *kind, double metres)
{
    const int metric = is_metric_thread(diameter), has_length = metres > 0;
    const char *size = metric ? plain(p, diameter * 1000, 0) : trade_size(p, diameter), *space = *kind ? " " : "",
               *end = has_length ? bolt_length(p, diameter, metres) : "";
    char *slot = take_slot(p);
    if (metric)
        snprintf(slot, SLOT_SIZE, "M%s%s%s%s%s", size, has_length ? " x " : "", end, space, kind);
    else
        snprintf(slot, SLOT_SIZE, "%s%s%s%s%s", size, space, kind, has_length ? ", " : "", end);
    return slot;
}

const char *roughly(pen *p, double metres)
{
    return p->us ? length(p, metres, TSIDE_FEET_AND_INCHES, 1) : length(p, metres, TSIDE_METRES, 2);
}

/* Not a unit of SI: a pressure as small as wind's, in so small a unit; stresses are told in larger ones. */
#define LIGHT "Pa of wind"
#define LIGHT_MOST 10e3 /* Pa */

/* How the sheet shows each SI unit: by what to divide, and what the quotient is called. */
static const struct shown {
    const char *unit;
    double si_size;
    const char *si_name;
    double us_size; /* exact: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, g = 9.80665 m/s2 */
    const char *us_name;
} shown[] = {
    {"1", 1, "", 1, ""},
    {"turn", 1, "turns", 1, "turns"},
    {"rad", 3.14159265358979323846 / 180, "deg", 3.14159265358979323846 / 180, "deg"},
    {"rad/s", 3.14159265358979323846 / 30, "rpm", 3.14159265358979323846 / 30, "rpm"},
    {"N", 1, "N", 0.45359237 * 9.80665, "lbf"},
    {"N m", 1, "N m", 0.45359237 * 9.80665 * 0.3048, "lbf ft"},
    {"N/m", 1, "N/m", 0.45359237 * 9.80665 / 0.3048, "lbf/ft"},
    {"Pa", 1e6, "MPa", 0.45359237 * 9.80665 / (0.0254 * 0.0254) * 1000, "ksi"},
    {LIGHT, 1, "Pa", 0.45359237 * 9.80665 / (0.3048 * 0.3048), "psf"},
    {"J", 1, "J", 0.45359237 * 9.80665 * 0.3048, "ft lbf"},
    {"kg", 1, "kg", 0.45359237, "lb"},
    {"kg/m", 1, "kg/m", 0.45359237 / 0.3048, "lb/ft"},
    {"m2", 1, "m2", 0.3048 * 0.3048, "ft2"},
    {"m3", 1, "m3", 0.3048 * 0.3048 * 0.3048, "ft3"},
    {"kg/m3", 1, "kg/m3", 0.45359237 / (0.3048 * 0.3048 * 0.3048), "lb/ft3"},
    {"m3/s", 1, "m3/s", 0.3048 * 0.3048 * 0.3048 / 60, "ft3/min"},
    {"m/s", 1, "m/s", 0.44704, "mph"},
    {"/s", 1.0 / 3600, "/h", 1.0 / 3600, "/h"},
    {"kg/m2", 1, "kg/m2", 0.45359237 / 16 / (0.9144 * 0.9144), "oz/yd2"},
};

static int decimals_for(double value)
{
    const double size = fabs(value);
    return size >= 99.95 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
}

/* NULL where a unit is shown as it is. */
static const struct shown *row_of(const char *unit)
{
    for (size_t i = 0; i < sizeof shown / sizeof *shown; i++)
        if (!strcmp(unit, shown[i].unit))
            return shown + i;
    return NULL;
}

const char *unit_shown(const pen *p, const char *unit)
{
    const struct shown *row = row_of(unit);
    if (!strcmp(unit, "m"))
        return p->us ? "ft and in" : "mm";
    if (!row)
        return unit;
    return p->us ? row->us_name : row->si_name;
}

int has_us_unit(const char *unit)
{
    const struct shown *row = row_of(unit);
    return !strcmp(unit, "m") || (row && row->us_size != 1);
}

static const char *of_size(const char *unit, double value)
{
    return !strcmp(unit, "Pa") && value != 0 && fabs(value) < LIGHT_MOST ? LIGHT : unit;
}

/* How many of the unit that is shown a value is. */
static double number_shown(const pen *p, double value, const char *unit)
{
    const struct shown *row = row_of(unit);
    return row ? value / (p->us ? row->us_size : row->si_size) : value;
}

static const char *with_shown(pen *p, double number, int decimals, const char *unit)
{
    const char *name = unit_shown(p, unit), *digits = shortened(p, number, decimals);
    if (!strcmp(digits, "1") && !strcmp(name, "turns"))
        return "1 turn";
    return *name ? with_unit(p, digits, name) : digits;
}

const char *finer(pen *p, double value, const char *si, int more)
{
    const char *unit = of_size(si, value);
    const double number = number_shown(p, value, unit);
    return strcmp(unit, "m") ? with_shown(p, number, decimals_for(number) + more, unit) : tape(p, value);
}

/* To so many decimals: up where way is 1, down where it is -1, less what rounding may have put there. */
static double to_decimals(double number, int decimals, int way)
{
    const double parts = pow(10, decimals);
    return way * ceil(way * number * parts - 1e-6) / parts;
}

/* A length that is small on a tape goes to fine(). */
static const char *rounded(pen *p, double value, const char *si, int way)
{
    const char *unit = of_size(si, value);
    const double number = number_shown(p, value, unit), fine_part = p->us ? 0.0254 : 0.001;
    const int decimals = decimals_for(number);
    if (strcmp(unit, "m"))
        return with_shown(p, to_decimals(number, decimals, way), decimals, unit);
    if (fabs(value) < 8 * tape_division(p->us))
        return fine(p, fine_part * to_decimals(value / fine_part, p->us ? 3 : 2, way));
    return way > 0 ? tape_at_least(p, value) : tape_at_most(p, value);
}

const char *at_least(pen *p, double value, const char *unit)
{
    return rounded(p, value, unit, 1);
}

const char *at_most(pen *p, double value, const char *unit)
{
    return rounded(p, value, unit, -1);
}

const char *quantity(pen *p, double value, const char *unit)
{
    return finer(p, value, unit, 0);
}

const char *measure_unit(int measure)
{
    switch (measure) {
    case TSIDE_STRESS: return "Pa";
    case TSIDE_FORCE: return "N";
    case TSIDE_DEFLECTION: return "m";
    default: return "1";
    }
}
