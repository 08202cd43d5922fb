/* SPDX-License-Identifier: MIT */
/*
 * What an opened side lets through, how warm it gets within, and how much of the opening would do. Sources: ASHRAE
 * Handbook of Fundamentals, natural ventilation, for two openings across the wind; Warren and Parkins 1984 for one
 * opening; derivation, orifices in series, for a roof vent; that the greatest of the flows counts is this library's
 * choice.
 */
#include "statics/air.h"

#include "base/field.h"
#include "base/root.h"

#define ABSOLUTE_ZERO (-273.15) /* degC */
#define ONE_SIDE_WIND 0.025     /* Warren and Parkins 1984: flow over area and the wind 10 m up */
#define DISCHARGE 0.61          /* of a sharp-edged opening: Warren and Parkins 1984 */

static const char *const by_sides[] = {"unasked", "one", "alike", "other"};
static const char *const warmths[] = {"given", "sun"};
static const char *const vents[] = {"none", "vent"};
static const char *const drives[] = {"wind", "warmth"};

#define TWO (ONLY(TSIDE_AIR_ALIKE) | ONLY(TSIDE_AIR_OTHER))
#define ASKED APPLIES(tside_air, sides, ONLY(TSIDE_AIR_ONE) | TWO)
#define BY_TWO APPLIES(tside_air, sides, TWO)
#define BY_OTHER APPLIES(tside_air, sides, ONLY(TSIDE_AIR_OTHER))
#define IN_THE_SUN APPLIES(tside_air, warmth, ONLY(TSIDE_AIR_IN_THE_SUN))
#define WITH_VENT APPLIES(tside_air, roof_vent, ONLY(TSIDE_ROOF_VENT))

#define ASHRAE \
    "ASHRAE Handbook of Fundamentals, natural ventilation: 0.5 to 0.6 with the wind square to the openings, 0.25 to " \
    "0.35 diagonal; the least of the first"

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_air, sides, by_sides, TSIDE_AIR_UNASKED, "by which sides air comes and goes: this one, both opened alike, or the other with an opening of its own; or air is not asked")},
    {REQUIRED(tside_air, other_opening, "m", TO(10), "opening of the other side"), BY_OTHER},
    {REQUIRED(tside_air, other_length, "m", TO(500), "its length along the house"), BY_OTHER},
    {NUMBER(tside_air, blocked, "1", FROM(0), UNDER(1), 0, OURS, "share of the openings that is blocked by what stands in them"), ASKED, UNUSUAL_OUTSIDE(0, 0.6)},
    {NUMBER(tside_air, wind, "m/s", FROM(0), TO(60), 0, OURS, "mean wind, no gust: at the openings, or 10 m up where one side is open"), ASKED, UNUSUAL_OUTSIDE(0, 10)},
    {NUMBER(tside_air, effectiveness, "1", FROM(0), TO(1), 0.5, ASHRAE, "effectiveness of openings across the wind"), BY_TWO, UNUSUAL_OUTSIDE(0.25, 0.6)},
    {CHOICE(tside_air, warmth, warmths, TSIDE_AIR_WARMER, "how much warmer it is within: as given, or as the sun makes it"), ASKED},
    {NUMBER(tside_air, warmer, "K", FROM(0), TO(60), 0, OURS, "warmer within than without"), APPLIES(tside_air, warmth, ONLY(TSIDE_AIR_WARMER))},
    {NUMBER(tside_air, outside, "degC", FROM(-60), TO(60), 25, OURS, "temperature without"), ASKED},
    {REQUIRED_FROM(tside_air, sun, "W/m2", 1, 1500, "sun on level ground"), IN_THE_SUN},
    {REQUIRED_FROM(tside_air, transmission, "1", 0.01, 1, "share of it that comes through the film"), IN_THE_SUN},
    {NUMBER(tside_air, evaporation, "1", FROM(0), UNDER(1), 0, OURS, "share of that which evaporates water, from leaves and wet soil"), IN_THE_SUN},
    {REQUIRED_FROM(tside_air, cover_area, "m2", 1, 1e6, "film of roof, ends and sides"), IN_THE_SUN},
    {REQUIRED_FROM(tside_air, cover_loss, "W/(m2 K)", 0.1, 100, "heat that goes through the film"), IN_THE_SUN},
    {REQUIRED_FROM(tside_air, floor_area, "m2", 1, 1e6, "floor of the house"), ASKED},
    {REQUIRED_FROM(tside_air, volume, "m3", 1, 1e7, "air of the house"), ASKED},
    {NUMBER(tside_air, density, "kg/m3", FROM(0.5), TO(2), 1.2, "dry air at 20 C and sea level, from memory", "density of air"), IN_THE_SUN},
    {NUMBER(tside_air, heat, "J/(kg K)", FROM(500), TO(2000), 1006, "dry air near 20 C, from memory", "heat that air takes up, at one pressure"), IN_THE_SUN},
    {CHOICE(tside_air, roof_vent, vents, TSIDE_NO_ROOF_VENT, "whether there is a roof vent"), ASKED},
    {REQUIRED(tside_air, vent_area, "m2", TO(1e5), "its clear opening"), WITH_VENT},
    {REQUIRED(tside_air, vent_rise, "m", TO(20), "its middle over the middle of the sides' openings"), WITH_VENT},
    {OPTIONAL(tside_air, changes_asked, "/s", ABOVE(0), TO(1), "changes of the whole air that are asked"), ASKED},
    {OPTIONAL(tside_air, rise_asked, "K", ABOVE(0), TO(60), "greatest rise within over without that is asked"), IN_THE_SUN},
    {NUMBER(tside_air, bar_warming, "K", FROM(0), TO(100), 40, OURS, "warming of the bar from the day it was hung to the hottest"), ASKED},
};
/* clang-format on */
TABLE_ASKED(tside_i_air_table, rows);

/* clang-format off */
static const tside_field airing_rows[] = {
    {RESULT(tside_airing, area, "m2", "clear area of this side's opening")},
    {RESULT(tside_airing, other_area, "m2", "clear area of the other side's opening")},
    {RESULT(tside_airing, floor_share, "1", "both over the floor")},
    {RESULT(tside_airing, vent_share, "1", "roof vent over the floor; 0 without one")},
    {RESULT(tside_airing, flow_wind, "m3/s", "flow by wind alone")},
    {RESULT(tside_airing, flow_warmth, "m3/s", "flow by warmth alone, through the sides")},
    {RESULT(tside_airing, flow_vent, "m3/s", "flow by warmth alone, from the sides to the roof vent")},
    {RESULT(tside_airing, flow, "m3/s", "the greatest of these flows")},
    {CHOICE(tside_airing, by, drives, TSIDE_BY_WIND, "what drives that flow")},
    {RESULT(tside_airing, changes, "/s", "changes of the whole air")},
    {RESULT(tside_airing, rise, "K", "warmer within than without")},
    {RESULT_OPTIONAL(tside_airing, for_changes, "m", "least opening that gives the changes asked, where this one does")},
    {RESULT_OPTIONAL(tside_airing, for_rise, "m", "least opening that keeps the rise to that asked, where this one does")},
};
/* clang-format on */
TABLE(tside_i_airing_table, airing_rows);

/* --- areas --- */

typedef struct opened {
    double area, height;             /* m2, m, of this side */
    double other_area, other_height; /* m2, m, of the other */
} opened;

static opened open_to(const tside_air *air, double length, double opening)
{
    const double clear = 1 - air->blocked;
    opened sides = {clear * length * opening, opening, 0, 0};
    if (air->sides == TSIDE_AIR_ALIKE) {
        sides.other_area = sides.area;
        sides.other_height = opening;
    } else if (air->sides == TSIDE_AIR_OTHER) {
        sides.other_area = clear * air->other_length * air->other_opening;
        sides.other_height = air->other_opening;
    }
    return sides;
}

/* What two openings in series let through as one would of this area. */
static double in_series(double one, double other)
{
    return one > 0 && other > 0 ? one * other / hypot(one, other) : 0;
}

/* --- flows, m3/s --- */

/* Across the house, or in and out of the larger opening where the other is all but shut. */
static double by_wind(const tside_air *air, const opened *sides)
{
    double across = air->effectiveness * sqrt(2) * in_series(sides->area, sides->other_area) * air->wind;
    double one_side = ONE_SIDE_WIND * fmax(sides->area, sides->other_area) * air->wind;
    return fmax(across, one_side);
}

/* Kelvin, of an air so much warmer than that without. */
static double kelvin(const tside_air *air, double warmer)
{
    return air->outside - ABSOLUTE_ZERO + warmer;
}

/* In at the lower half of an opening, out at the upper. */
static double by_warmth_of_one(const tside_air *air, double area, double height, double rise)
{
    return DISCHARGE / 3 * area * sqrt(TSIDE_GRAVITY * height * rise / kelvin(air, rise / 2));
}

static double by_warmth(const tside_air *air, const opened *sides, double rise)
{
    return by_warmth_of_one(air, sides->area, sides->height, rise) +
           by_warmth_of_one(air, sides->other_area, sides->other_height, rise);
}

static double by_vent(const tside_air *air, const opened *sides, double rise)
{
    if (air->roof_vent == TSIDE_NO_ROOF_VENT)
        return 0;
    return DISCHARGE * in_series(sides->area + sides->other_area, air->vent_area) *
           sqrt(2 * TSIDE_GRAVITY * air->vent_rise * rise / kelvin(air, rise));
}

static double greatest_flow(const tside_air *air, const opened *sides, double rise)
{
    return fmax(by_wind(air, sides), fmax(by_warmth(air, sides, rise), by_vent(air, sides, rise)));
}

/* --- warmth --- */

/* W, what the sun leaves to the air. */
static double gained(const tside_air *air)
{
    return air->sun * air->transmission * (1 - air->evaporation) * air->floor_area;
}

/* W/K, what a flow and the film carry off. */
static double carried_off(const tside_air *air, double flow)
{
    return air->density * air->heat * flow + air->cover_loss * air->cover_area;
}

typedef struct balance {
    const tside_air *air;
    const opened *sides;
} balance;

/* What is carried off at a rise, the flow being what it is at that rise, beyond what is gained: it rises with it. */
static double carried_off_beyond(double rise, const void *context)
{
    const balance *b = context;
    return carried_off(b->air, greatest_flow(b->air, b->sides, rise)) * rise - gained(b->air);
}

static double rise_of(const tside_air *air, const opened *sides)
{
    const balance b = {air, sides};
    if (air->warmth == TSIDE_AIR_WARMER)
        return air->warmer;
    return tside_i_rising_root(carried_off_beyond, &b, 0, gained(air) / carried_off(air, 0));
}

/* --- how much of an opening would do --- */

typedef struct wanted {
    const tside_air *air;
    double length, flow, rise;
} wanted;

static double flow_beyond(double opening, const void *context)
{
    const wanted *w = context;
    const opened sides = open_to(w->air, w->length, opening);
    return greatest_flow(w->air, &sides, w->rise) - w->flow;
}

/* The least opening that lets a flow through at a rise; returns whether the most there is does. */
static int least_opening(const wanted *w, double most, double *opening)
{
    const int enough = flow_beyond(most, w) >= -SLACK * w->flow;
    *opening = enough ? tside_i_rising_root(flow_beyond, w, 0, most) : 0;
    return enough;
}

/* A flow keeps the house at the rise that it makes itself. */
static void least_for_changes(const tside_air *air, double length, double most, tside_airing *made)
{
    const double flow = air->changes_asked * air->volume;
    const double rise = air->warmth == TSIDE_AIR_WARMER ? air->warmer : gained(air) / carried_off(air, flow);
    const wanted w = {air, length, flow, rise};
    made->for_changes_given = least_opening(&w, most, &made->for_changes);
}

static void least_for_rise(const tside_air *air, double length, double most, tside_airing *made)
{
    const double by_air = gained(air) / air->rise_asked - carried_off(air, 0);
    const wanted w = {air, length, fmax(by_air, 0) / (air->density * air->heat), air->rise_asked};
    made->for_rise_given = least_opening(&w, most, &made->for_rise);
}

/* --- answers --- */

tside_airing tside_i_air_through(const tside_air *air, double length, double opening)
{
    const opened sides = open_to(air, length, opening);
    const double rise = rise_of(air, &sides);
    tside_airing made = {
        .area = sides.area,
        .other_area = sides.other_area,
        .floor_share = (sides.area + sides.other_area) / air->floor_area,
        .vent_share = air->roof_vent == TSIDE_ROOF_VENT ? air->vent_area / air->floor_area : 0,
        .flow_wind = by_wind(air, &sides),
        .flow_warmth = by_warmth(air, &sides, rise),
        .flow_vent = by_vent(air, &sides, rise),
        .flow = greatest_flow(air, &sides, rise),
        .rise = rise,
    };
    made.by = made.flow_wind < made.flow ? TSIDE_BY_WARMTH : TSIDE_BY_WIND;
    made.changes = made.flow / air->volume;
    if (air->changes_asked_given)
        least_for_changes(air, length, opening, &made);
    if (air->warmth == TSIDE_AIR_IN_THE_SUN && air->rise_asked_given)
        least_for_rise(air, length, opening, &made);
    return made;
}

tside_status tside_air_through(const tside_air *air, double length, double opening, tside_airing *airing,
                               tside_fault *fault)
{
    tside_airing made;
    TRY(tside_i_check(&tside_i_air_table, "air", air, fault));
    if (air->sides == TSIDE_AIR_UNASKED)
        return tside_i_bound(fault, "air.sides", "1", air->sides, TSIDE_NOT_ONE_OF, TSIDE_AIR_ONE);
    TRY(tside_i_argument(fault, "length", "m", length, 0, 0));
    TRY(tside_i_argument(fault, "opening", "m", opening, 0, 0));
    made = tside_i_air_through(air, length, opening);
    return ANSWER(&tside_i_airing_table, made, airing, fault);
}
