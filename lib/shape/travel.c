/* SPDX-License-Identifier: MIT */
/* The travel from shut to open: where its ends are, and where the bar is by turns or by height. Source: derivation. */
#include "shape/travel.h"

#include <string.h>

#include "base/field.h"
#include "base/root.h"
#include "shape/climb.h"

static const char *const shut_ways[] = {"seal", "height"};
static const char *const open_ways[] = {"gap", "height"};

/* clang-format off */
static const tside_field stops_rows[] = {
    {NUMBER(tside_stops, wraps_shut, "turn", FROM(0), TO(50), 1, PRACTICE, "wraps of curtain on the bar when shut"), MEASURED(0.25), UNUSUAL_OUTSIDE(0.75, 2)},
    {CHOICE(tside_stops, shut_by, shut_ways, TSIDE_SHUT_SEAL, "how the shut position is given")},
    {NUMBER(tside_stops, seal, "m", FROM(0), TO(5), 4 * IN, PRACTICE, "overlap of the roll's underside below the sill when shut"), MEASURED(0.25 * IN), APPLIES(tside_stops, shut_by, ONLY(TSIDE_SHUT_SEAL)),
     UNUSUAL_OUTSIDE(2 * IN, 8 * IN)},
    {REQUIRED(tside_stops, shut_height, "m", TO(20), "height of the roll's underside when shut, above grade"), MEASURED(0.25 * IN), APPLIES(tside_stops, shut_by, ONLY(TSIDE_SHUT_HEIGHT))},
    {CHOICE(tside_stops, open_by, open_ways, TSIDE_OPEN_GAP, "how the open position is given")},
    {NUMBER(tside_stops, gap, "m", FROM(0), TO(20), 3 * IN, PRACTICE, "gap from the roll's top to the rail when open"), MEASURED(0.25 * IN), APPLIES(tside_stops, open_by, ONLY(TSIDE_OPEN_GAP)),
     UNUSUAL_OUTSIDE(2 * IN, 6 * IN)},
    {REQUIRED(tside_stops, open_height, "m", TO(20), "height of the roll's underside when open, above grade"), MEASURED(0.25 * IN), APPLIES(tside_stops, open_by, ONLY(TSIDE_OPEN_HEIGHT))},
    {NUMBER(tside_stops, core_spread, "1", FROM(0), UNDER(1), 0.025, OURS, "relative spread of the core diameter, plus or minus")},
    {NUMBER(tside_stops, packing_spread, "1", FROM(0), UNDER(1), 0.1, OURS, "spread of the packing factor, plus or minus")},
    {NUMBER(tside_stops, thickness_spread, "1", FROM(0), UNDER(1), 0.1, OURS, "relative spread of the curtain's thickness, plus or minus")},
};
/* clang-format on */
TABLE(tside_i_stops_table, stops_rows);

/* clang-format off */
static const tside_field position_rows[] = {
    {RESULT(tside_position, wraps, "turn", "wraps on the bar")},
    {RESULT(tside_position, turns, "turn", "turns of the bar since shut")},
    {RESULT(tside_position, taken_up, "m", "curtain taken up since shut")},
    {RESULT(tside_position, diameter, "m", "diameter of the roll")},
    {RESULT(tside_position, hanging, "m", "curtain from fixing to roll")},
    {RESULT(tside_position, x, "m", "the bar's axis, outboard of the tunnel's centreline")},
    {RESULT(tside_position, y, "m", "the bar's axis, above grade")},
    {RESULT(tside_position, underside, "m", "underside of the roll, above grade")},
    {RESULT(tside_position, opening, "m", "clear opening above the sill")},
    {RESULT(tside_position, slope, "rad", "hanging curtain from plumb, outboard going down")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_position_table, position_rows, tside_position);

static void cut_stretches(tside_travel *travel, double end)
{
    travel->end = end;
    while (travel->stretches > 1 && travel->stretch[travel->stretches - 1].from >= end)
        travel->stretches--;
}

/* Which edge of the roll is asked for: so many radii above its axis. */
enum { UNDERSIDE = -1, TOP = 1 };

typedef struct target {
    const tside_travel *travel;
    int edge;
    double height;
} target;

static double edge_above(double progress, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    tside_i_travel_at(aim->travel, progress, &spot);
    return spot.y + aim->edge * spot.r - aim->height;
}

/* Whether the curtain hangs plumb all the way, so that its heading never changes. */
static int is_plumb(const tside_travel *travel)
{
    return travel->line.count == 1 && travel->line.piece->slope == 0;
}

/*
 * Progress, up to most, at which the roll's edge is at a height. On a plumb curtain that edge is at y - s + edge r, and
 * s = S - pi n (D0 + te n), r = D0/2 + te n: a quadratic in the wraps n, solved without cancellation. Of a roll whose
 * underside falls as it winds, each wrap being thicker than the core is around, the root is sought.
 */
static double edge_at(const target *aim, double most)
{
    const tside_travel *travel = aim->travel;
    const tside_roll *roll = &travel->roll;
    const double te = tside_i_roll_te(roll), b = TSIDE_PI * roll->core + aim->edge * te,
                 S = travel->hanging + tside_i_roll_length(roll, travel->wraps_shut),
                 c = aim->height - (travel->line.y - S) - aim->edge * roll->core / 2;
    if (!is_plumb(travel) || !(b > 0))
        return tside_i_rising_root(edge_above, aim, travel->wraps_shut, most);
    return fmin(fmax(2 * c / (b + sqrt(b * b + 4 * TSIDE_PI * te * c)), travel->wraps_shut), most);
}

static tside_status find_shut(const tside_stops *stops, const tside_curtain *curtain, double r, tside_travel *travel,
                              double *shut, tside_fault *fault)
{
    int seal = stops->shut_by == TSIDE_SHUT_SEAL;
    *shut = seal ? curtain->sill - stops->seal : stops->shut_height;
    if (*shut < -SLACK)
        REFUSE(fault, TSIDE_CONTRADICTS, "stops.seal", "curtain.sill", "the roll would lie in the ground", "m",
               stops->seal, TSIDE_ABOVE, curtain->sill, 0);
    if (*shut + 2 * r > travel->rail + SLACK) {
        double most = seal ? curtain->sill - (travel->rail - 2 * r) : travel->rail - 2 * r;
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, seal ? "stops.seal" : "stops.shut_height", "curtain.hip",
                                    "shut, the roll's top would pass the rail", "m", seal ? stops->seal : *shut,
                                    seal ? TSIDE_BELOW : TSIDE_ABOVE, most, 0);
    }
    return TSIDE_OK;
}

static tside_status find_open(const tside_stops *stops, double shut, const tside_travel *travel, double most,
                              double *open, tside_fault *fault)
{
    const char *shut_name = stops->shut_by == TSIDE_SHUT_SEAL ? "stops.seal" : "stops.shut_height";
    const target gap = {travel, TOP, travel->rail - stops->gap}, height = {travel, UNDERSIDE, stops->open_height};
    if (stops->open_by == TSIDE_OPEN_GAP) {
        double room = fmax(0, stops->gap - edge_above(travel->wraps_shut, &gap));
        if (stops->gap > room + SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.gap", shut_name, "open would lie below shut",
                                        "m", stops->gap, TSIDE_ABOVE, room, 0);
        *open = edge_at(&gap, most);
    } else {
        if (stops->open_height < shut - SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.open_height", shut_name,
                                        "open would lie below shut", "m", stops->open_height, TSIDE_BELOW, shut, 0);
        if (stops->open_height > travel->highest + SLACK)
            REFUSE(fault, TSIDE_CONTRADICTS, "stops.open_height", "curtain.hip",
                   "open, the roll's top would pass the rail", "m", stops->open_height, TSIDE_ABOVE, travel->highest,
                   0);
        *open = stops->open_height > shut ? edge_at(&height, most) : travel->wraps_shut;
    }
    return TSIDE_OK;
}

tside_status tside_i_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll,
                                 const tside_stops *stops, int ends_only, tside_travel *travel, tside_fault *fault)
{
    tside_i_spot spot;
    const target rail = {travel, TOP, line->y - curtain->rail_depth};
    double shut, open = stops->wraps_shut, most, lead, progress, r = tside_i_roll_diameter(roll, stops->wraps_shut) / 2;
    int k, line_stretches, unsettled;
    travel->roll = *roll;
    if (line != &travel->line)
        travel->line = *line;
    travel->sill = curtain->sill;
    travel->rail = rail.height;
    travel->wraps_shut = stops->wraps_shut;
    travel->stretches = 0;
    TRY(find_shut(stops, curtain, r, travel, &shut, fault));
    k = tside_i_climb_shut(line, r, shut, &travel->hanging, &travel->slope);
    if (!(travel->hanging <= TSIDE_I_LONGEST)) /* down a wall that is all but level */
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "stops", "", "more than 10 km of curtain would hang");
    progress = tside_i_climb_line(travel, k, &lead);
    line_stretches = travel->stretches;
    most = fmax(tside_i_climb_wraps(travel, r),
                stops->wraps_shut); /* with no more than its radius hanging, the roll's top is at the fixing or above */
    unsettled = line->piece->slope != 0 &&
                !tside_i_climb_may_tip(travel, progress - lead,
                                       most); /* open is found first, so that the chord is settled no farther */
    if (most + lead > progress || line_stretches == 0) {
        if (unsettled)
            tside_i_climb_add(travel, progress, lead, 0, TSIDE_HELD_UNSETTLED, 0);
        else
            tside_i_climb_chord(travel, progress - lead, most, lead);
    }
    travel->end = most + lead;
    travel->highest = 0;
    if (!ends_only || stops->open_by == TSIDE_OPEN_HEIGHT) {
        tside_i_travel_at(travel, edge_at(&rail, travel->end), &spot);
        travel->highest = spot.y - spot.r;
    }
    TRY(find_open(stops, shut, travel, travel->end, &open, fault));
    if (unsettled && !ends_only && travel->stretches > line_stretches) {
        travel->stretches = line_stretches;
        tside_i_climb_chord(travel, progress - lead, fmax(open, progress) - lead, lead);
    }
    cut_stretches(travel, open);
    if (!isfinite(travel->slope + travel->end + travel->highest))
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "stops", "", "the travel is not one of finite numbers");
    return TSIDE_OK;
}

tside_status tside_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll,
                               const tside_stops *stops, tside_travel *travel, tside_fault *fault)
{
    tside_travel made;
    memset(&made, 0, sizeof made); /* what a travel does not have is 0: equal sides give equal bytes */
    TRY(tside_i_check(&tside_i_curtain_table, "curtain", curtain, fault));
    TRY(tside_i_check(&tside_i_roll_table, "roll", roll, fault));
    TRY(tside_i_check(&tside_i_stops_table, "stops", stops, fault));
    TRY(tside_i_settle(&tside_i_stops_table, "stops", tside_i_travel_make(line, curtain, roll, stops, 0, &made, fault),
                       fault));
    memcpy(travel, &made, sizeof made);
    return TSIDE_OK;
}

/* --- asking --- */

typedef struct turned {
    const tside_travel *travel;
    double turns;
} turned;

static double turns_above(double progress, const void *context)
{
    const turned *aim = context;
    return tside_i_travel_turns(aim->travel, progress) - aim->turns;
}

double tside_i_travel_progress(const tside_travel *travel, double turns)
{
    turned aim = {travel, turns};
    if (is_plumb(travel))
        return fmin(travel->wraps_shut + turns, travel->end);
    return tside_i_rising_root(turns_above, &aim, travel->wraps_shut, travel->end);
}

static void answer(const tside_travel *travel, double progress, tside_position *position)
{
    tside_i_spot spot;
    tside_i_travel_at(travel, progress, &spot);
    tside_i_travel_position(travel, &spot, position);
}

tside_status tside_travel_at(const tside_travel *travel, double turns, tside_position *position, tside_fault *fault)
{
    double open = tside_i_travel_turns(travel, travel->end);
    tside_position made;
    if (!isfinite(turns))
        return tside_i_bound(fault, "turns", "turn", 0, TSIDE_NOT_FINITE, 0);
    if (turns < -SLACK)
        return tside_i_bound(fault, "turns", "turn", turns, TSIDE_BELOW, 0);
    if (turns > open + SLACK)
        return tside_i_bound(fault, "turns", "turn", turns, TSIDE_ABOVE, open);
    answer(travel, tside_i_travel_progress(travel, turns), &made);
    return ANSWER(&tside_i_position_table, made, position, fault);
}

tside_status tside_i_travel_find(const tside_travel *travel, double turns, tside_i_spot *spot, tside_fault *fault)
{
    tside_position position;
    TRY(tside_travel_at(travel, turns, &position, fault));
    tside_i_travel_at(travel, tside_i_travel_progress(travel, turns), spot);
    return TSIDE_OK;
}

double tside_i_travel_rise(const tside_travel *travel, double underside)
{
    const target aim = {travel, UNDERSIDE, underside};
    return tside_i_rising_root(edge_above, &aim, travel->wraps_shut, travel->end);
}

tside_status tside_travel_to_height(const tside_travel *travel, double underside, tside_position *position,
                                    tside_fault *fault)
{
    tside_position shut, open, made;
    answer(travel, travel->wraps_shut, &shut);
    answer(travel, travel->end, &open);
    if (!isfinite(underside))
        return tside_i_bound(fault, "underside", "m", 0, TSIDE_NOT_FINITE, 0);
    if (underside < shut.underside - SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_BELOW, shut.underside);
    if (underside > open.underside + SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_ABOVE, open.underside);
    answer(travel, tside_i_travel_rise(travel, underside), &made);
    return ANSWER(&tside_i_position_table, made, position, fault);
}
