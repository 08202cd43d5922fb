/* SPDX-License-Identifier: MIT */
#include "geometry.h"

static const char *const shut_ways[] = {"seal", "height"};
static const char *const open_ways[] = {"gap", "height"};

static const tside_field stops_rows[] = {
    {NUMBER(tside_stops, wraps_shut, "turn", FROM(0), TO(50), 1, PRACTICE, "wraps of curtain on the bar when shut"), UNUSUAL_OUTSIDE(0.75, 2)},
    {CHOICE(tside_stops, shut_by, shut_ways, TSIDE_SHUT_SEAL, "how the shut position is given")},
    {NUMBER(tside_stops, seal, "m", FROM(0), TO(5), 4 * IN, PRACTICE, "overlap of the roll's underside below the sill when shut"), APPLIES(tside_stops, shut_by, ONLY(TSIDE_SHUT_SEAL)),
     UNUSUAL_OUTSIDE(2 * IN, 8 * IN)},
    {REQUIRED(tside_stops, shut_height, "m", TO(20), "height of the roll's underside when shut, above grade"), APPLIES(tside_stops, shut_by, ONLY(TSIDE_SHUT_HEIGHT))},
    {CHOICE(tside_stops, open_by, open_ways, TSIDE_OPEN_GAP, "how the open position is given")},
    {NUMBER(tside_stops, gap, "m", FROM(0), TO(20), 3 * IN, PRACTICE, "gap from the roll's top to the rail when open"), APPLIES(tside_stops, open_by, ONLY(TSIDE_OPEN_GAP)),
     UNUSUAL_OUTSIDE(2 * IN, 6 * IN)},
    {REQUIRED(tside_stops, open_height, "m", TO(20), "height of the roll's underside when open, above grade"), APPLIES(tside_stops, open_by, ONLY(TSIDE_OPEN_HEIGHT))},
    {NUMBER(tside_stops, core_spread, "1", FROM(0), UNDER(1), 0.025, OURS, "relative spread of the core diameter, plus or minus")},
    {NUMBER(tside_stops, packing_spread, "1", FROM(0), UNDER(1), 0.1, OURS, "spread of the packing factor, plus or minus")},
    {NUMBER(tside_stops, thickness_spread, "1", FROM(0), UNDER(1), 0.1, OURS, "relative spread of the curtain's thickness, plus or minus")},
};
TABLE(tside_i_stops_table, stops_rows);

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
TABLE(tside_i_position_table, position_rows);

/*
 * The chord from the fixing to a roll that bears on a straight wall. The wall leans by b, the fixing stands a gap h off it, and the chord
 * makes an angle c with the wall such that s sin c + r (1 - cos c) = h: a quadratic in tan(c/2), solved without cancellation.
 */
static void bear_on_wall(const tside_line *line, double growth, tside_i_spot *spot)
{
    double h = line->gap, r = spot->r, s = spot->s, square = s * s + h * (2 * r - h), half, sc, cc, sb = sin(line->slope), cb = cos(line->slope);
    double below = s + sqrt(square > 0 ? square : 0);
    half = h > 0 && below > 0 ? h / below : 0;
    cc = (1 - half * half) / (1 + half * half);
    sc = 2 * half / (1 + half * half);
    spot->nx = cb * cc + sb * sc;
    spot->ny = sb * cc - cb * sc;
    spot->x = line->x + s * spot->ny + r * spot->nx;
    spot->y = line->y - s * spot->nx + r * spot->ny;
    /* derivation: the constraint differentiated by the wraps wound on, then by the bar's angle */
    spot->share = h > 0 ? (s * cc + r * sc) / (s * cc + growth * (1 - cc)) : 1;
    spot->swing = s * (1 - spot->share);
}

static void hang_free(const tside_line *line, tside_i_spot *spot)
{
    spot->nx = 1;
    spot->ny = 0;
    spot->x = line->x + spot->r;
    spot->y = line->y - spot->s;
    spot->share = 1;
    spot->swing = 0;
}

/* Whether the plumb chord clears the wall, as a gap: above 0 it does. */
static double clear_of_wall(const tside_line *line, double s, double r)
{
    return line->slope > 0 ? line->gap - s * sin(line->slope) - r * (1 - cos(line->slope)) : 1;
}

static void place_spot(const tside_travel *travel, int free, double wraps, tside_i_spot *spot)
{
    double te = tside_i_roll_te(&travel->roll), growth = te / (2 * TSIDE_PI), out;
    spot->wraps = wraps;
    spot->r = travel->roll.core / 2 + te * wraps;
    spot->length = tside_i_roll_length(&travel->roll, wraps);
    spot->s = travel->hanging + tside_i_roll_length(&travel->roll, travel->wraps[0]) - spot->length;
    if (spot->s < 0) /* only by rounding, with the roll's axis at the fixing */
        spot->s = 0;
    if (free)
        hang_free(&travel->line, spot);
    else
        bear_on_wall(&travel->line, growth, spot);
    /* v = -r t + N (growth share + swing) per radian of bar angle, with t = (ny, -nx) */
    out = growth * spot->share + spot->swing;
    spot->vx = -spot->r * spot->ny + spot->nx * out;
    spot->vy = spot->r * spot->nx + spot->ny * out;
}

void tside_i_travel_spot(const tside_travel *travel, int stretch, double wraps, tside_i_spot *spot)
{
    place_spot(travel, travel->free[stretch], wraps, spot);
}

static double slope_of(const tside_i_spot *spot)
{
    return atan2(spot->ny, spot->nx);
}

double tside_i_travel_angle(const tside_travel *travel, const tside_i_spot *spot)
{
    return 2 * TSIDE_PI * (spot->wraps - travel->wraps[0]) + (spot->ny != 0 || travel->slope != 0 ? slope_of(spot) - travel->slope : 0);
}

int tside_i_travel_stretch(const tside_travel *travel, double wraps)
{
    int i = 0;
    while (i + 1 < travel->stretches && wraps > travel->wraps[i + 1])
        i++;
    return i;
}

double tside_i_travel_turns(const tside_travel *travel, double wraps)
{
    tside_i_spot spot;
    tside_i_travel_spot(travel, tside_i_travel_stretch(travel, wraps), wraps, &spot);
    return tside_i_travel_angle(travel, &spot) / (2 * TSIDE_PI);
}

void tside_i_travel_position(const tside_travel *travel, const tside_i_spot *spot, tside_position *position)
{
    double underside = spot->y - spot->r;
    position->wraps = spot->wraps;
    position->turns = tside_i_travel_angle(travel, spot) / (2 * TSIDE_PI);
    position->taken_up = spot->length - tside_i_roll_length(&travel->roll, travel->wraps[0]);
    position->diameter = 2 * spot->r;
    position->hanging = spot->s;
    position->x = spot->x;
    position->y = spot->y;
    position->underside = underside;
    position->opening = underside > travel->sill ? underside - travel->sill : 0;
    position->slope = slope_of(spot);
}

/* --- making --- */

typedef struct target {
    const tside_travel *travel;
    double value;
} target;

static void any_spot(const tside_travel *travel, double wraps, tside_i_spot *spot)
{
    place_spot(travel, 0, wraps, spot);
    if (clear_of_wall(&travel->line, spot->s, spot->r) >= 0)
        place_spot(travel, 1, wraps, spot);
}

static double top_above(double wraps, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    any_spot(aim->travel, wraps, &spot);
    return spot.y + spot.r - aim->value;
}

static double underside_above(double wraps, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    any_spot(aim->travel, wraps, &spot);
    return spot.y - spot.r - aim->value;
}

static double wall_clearance(double wraps, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    place_spot(aim->travel, 1, wraps, &spot);
    return clear_of_wall(&aim->travel->line, spot.s, spot.r);
}

/* Curtain from fixing to roll with the roll's underside at a height: bearing on the wall if it reaches it, else plumb. */
static double hanging_at(const tside_line *line, double r, double underside)
{
    double plumb = line->y - r - underside, along, square;
    if (line->slope == 0 || clear_of_wall(line, plumb, r) >= 0)
        return plumb;
    along = (line->y + sin(line->slope) * (r - line->gap) - r - underside) / cos(line->slope);
    square = along * along - line->gap * (2 * r - line->gap);
    return square > 0 ? sqrt(square) : 0;
}

static void set_stretches(tside_travel *travel, double open)
{
    target aim = {travel, 0};
    double shut = travel->wraps[0], corner = tside_i_rising_root(wall_clearance, &aim, shut, open);
    int free_shut = wall_clearance(shut, &aim) >= 0, free_open = wall_clearance(open, &aim) >= 0;
    travel->stretches = 1;
    travel->free[0] = free_shut;
    travel->wraps[1] = open;
    if (!free_shut && free_open && corner > shut && corner < open) {
        travel->stretches = 2;
        travel->wraps[1] = corner;
        travel->free[1] = 1;
        travel->wraps[2] = open;
    }
}

static tside_status find_shut(const tside_stops *stops, const tside_curtain *curtain, double r, tside_travel *travel, double *shut, tside_fault *fault)
{
    int seal = stops->shut_by == TSIDE_SHUT_SEAL;
    *shut = seal ? curtain->sill - stops->seal : stops->shut_height;
    if (*shut < 0)
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.seal", "curtain.sill", "the roll would lie in the ground", "m", stops->seal, TSIDE_ABOVE, curtain->sill, 0);
    if (*shut + 2 * r > travel->rail + SLACK) {
        double most = seal ? curtain->sill - (travel->rail - 2 * r) : travel->rail - 2 * r;
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, seal ? "stops.seal" : "stops.shut_height", "curtain.hip", "shut, the roll's top would pass the rail", "m",
                                    seal ? stops->seal : *shut, seal ? TSIDE_BELOW : TSIDE_ABOVE, most, 0);
    }
    return TSIDE_OK;
}

static tside_status find_open(const tside_stops *stops, double shut, const tside_travel *travel, double most, double *open, tside_fault *fault)
{
    double low = travel->wraps[0];
    if (stops->open_by == TSIDE_OPEN_GAP) {
        target top = {travel, travel->rail - stops->gap};
        double room = fmax(0, stops->gap - top_above(low, &top));
        if (stops->gap > room + SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.gap", "stops.shut_height", "open would lie below shut", "m", stops->gap, TSIDE_ABOVE, room, 0);
        *open = tside_i_rising_root(top_above, &top, low, most);
    } else {
        target underside = {travel, stops->open_height};
        if (stops->open_height < shut - SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.open_height", "stops.shut_height", "open would lie below shut", "m", stops->open_height, TSIDE_BELOW, shut,
                                        0);
        if (stops->open_height > travel->highest + SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.open_height", "curtain.hip", "open, the roll's top would pass the rail", "m", stops->open_height,
                                        TSIDE_ABOVE, travel->highest, 0);
        *open = tside_i_rising_root(underside_above, &underside, low, most);
    }
    return TSIDE_OK;
}

tside_status tside_i_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll, const tside_stops *stops, tside_travel *travel,
                                 tside_fault *fault)
{
    tside_travel made = {.roll = *roll, .line = *line, .sill = curtain->sill, .rail = line->y - curtain->rail_depth};
    tside_i_spot spot;
    target rail = {&made, made.rail};
    double shut, open = stops->wraps_shut, most, r = roll->core / 2 + tside_i_roll_te(roll) * stops->wraps_shut;
    made.wraps[0] = stops->wraps_shut;
    TRY(find_shut(stops, curtain, r, &made, &shut, fault));
    made.hanging = hanging_at(line, r, shut);
    most = tside_i_roll_wraps(roll, tside_i_roll_length(roll, stops->wraps_shut) + made.hanging);
    any_spot(&made, made.wraps[0], &spot);
    made.slope = slope_of(&spot);
    any_spot(&made, tside_i_rising_root(top_above, &rail, made.wraps[0], most), &spot);
    made.highest = spot.y - spot.r;
    TRY(find_open(stops, shut, &made, most, &open, fault));
    set_stretches(&made, open);
    *travel = made;
    return TSIDE_OK;
}

tside_status tside_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll, const tside_stops *stops, tside_travel *travel,
                               tside_fault *fault)
{
    TRY(tside_i_check(TSIDE_KIND_CURTAIN, "curtain", curtain, fault));
    TRY(tside_i_check(TSIDE_KIND_ROLL, "roll", roll, fault));
    TRY(tside_i_check(TSIDE_KIND_STOPS, "stops", stops, fault));
    return tside_i_travel_make(line, curtain, roll, stops, travel, fault);
}

/* --- asking --- */

typedef struct turned {
    const tside_travel *travel;
    double turns;
} turned;

static double turns_above(double wraps, const void *context)
{
    const turned *aim = context;
    return tside_i_travel_turns(aim->travel, wraps) - aim->turns;
}

double tside_i_travel_wraps(const tside_travel *travel, double turns)
{
    turned aim = {travel, turns};
    double shut = travel->wraps[0], open = travel->wraps[travel->stretches];
    if (travel->slope == 0 && travel->stretches == 1) /* plumb: the curtain's heading never changes */
        return fmin(shut + turns, open);
    return tside_i_rising_root(turns_above, &aim, shut, open);
}

static void answer(const tside_travel *travel, double wraps, tside_position *position)
{
    tside_i_spot spot;
    tside_i_travel_spot(travel, tside_i_travel_stretch(travel, wraps), wraps, &spot);
    tside_i_travel_position(travel, &spot, position);
}

tside_status tside_travel_at(const tside_travel *travel, double turns, tside_position *position, tside_fault *fault)
{
    double open = tside_i_travel_turns(travel, travel->wraps[travel->stretches]);
    if (!isfinite(turns))
        return tside_i_bound(fault, "turns", "turn", 0, TSIDE_NOT_FINITE, 0);
    if (turns < 0)
        return tside_i_bound(fault, "turns", "turn", turns, TSIDE_BELOW, 0);
    if (turns > open + SLACK)
        return tside_i_bound(fault, "turns", "turn", turns, TSIDE_ABOVE, open);
    answer(travel, tside_i_travel_wraps(travel, turns), position);
    return TSIDE_OK;
}

tside_status tside_travel_to_height(const tside_travel *travel, double underside, tside_position *position, tside_fault *fault)
{
    target aim = {travel, underside};
    tside_position shut, open;
    answer(travel, travel->wraps[0], &shut);
    answer(travel, travel->wraps[travel->stretches], &open);
    if (!isfinite(underside))
        return tside_i_bound(fault, "underside", "m", 0, TSIDE_NOT_FINITE, 0);
    if (underside < shut.underside - SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_BELOW, shut.underside);
    if (underside > open.underside + SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_ABOVE, open.underside);
    answer(travel, tside_i_rising_root(underside_above, &aim, travel->wraps[0], travel->wraps[travel->stretches]), position);
    return TSIDE_OK;
}
