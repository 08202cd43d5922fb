/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "shape/geometry.h"

static const char *const shut_ways[] = {"seal", "height"};
static const char *const open_ways[] = {"gap", "height"};

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

/* --- where the bar is in one stretch --- */

/* Stands for the obstacle in the one stretch of a chord of which nobody has asked yet what holds it where. */
#define UNSETTLED (-1)

/* The chord's normal leads to the roll: the axis from fixing, chord and radius. */
static void place_by_chord(const tside_line *line, tside_i_spot *spot)
{
    spot->x = line->x + spot->s * spot->ny + spot->r * spot->nx;
    spot->y = line->y - spot->s * spot->nx + spot->r * spot->ny;
}

static void hang_plumb(const tside_line *line, tside_i_spot *spot)
{
    spot->nx = spot->share = 1;
    spot->ny = spot->swing = 0;
    place_by_chord(line, spot);
}

/*
 * A straight piece that the fixing stands a gap h off: the chord makes an angle c with it such that s sin c + r (1 - cos c) = h, a quadratic in tan(c/2),
 * solved without cancellation. Gives the chord's normal; 0 where the roll does not reach the piece.
 */
static int chord_on_straight(const tside_line *line, const tside_obstacle *wall, tside_i_spot *spot)
{
    double h = (line->x - wall->x) * wall->nx + (line->y - wall->y) * wall->ny, r = spot->r, s = spot->s, square = s * s + h * (2 * r - h), below, half, sc, cc;
    if (square < 0)
        return 0;
    below = s + sqrt(square);
    half = below > 0 ? h / below : 0;
    cc = (1 - half * half) / (1 + half * half);
    sc = 2 * half / (1 + half * half);
    spot->nx = wall->nx * cc + wall->ny * sc;
    spot->ny = wall->ny * cc - wall->nx * sc;
    return 1;
}

/* A round one: the axis is where a circle about its centre meets the circle of radius sqrt(s^2 + r^2) about the fixing, on the lower side. */
static int chord_on_round(const tside_line *line, const tside_obstacle *bulge, tside_i_spot *spot)
{
    double r = spot->r, s = spot->s, far = s * s + r * r, R = bulge->radius < 0 ? -bulge->radius - r : bulge->radius + r;
    double cx = bulge->x - line->x, cy = bulge->y - line->y, square = cx * cx + cy * cy, per, along, across, dx, dy;
    if (far == 0 || square == 0)
        return 0;
    per = 1 / square;
    along = (far + square - R * R) * per / 2;
    across = far * per - along * along;
    if (across < 0)
        return 0;
    across = bulge->radius < 0 ? -sqrt(across) : sqrt(across);
    dx = along * cx - across * cy;
    dy = along * cy + across * cx;
    per = 1 / far;
    spot->nx = (r * dx - s * dy) * per;
    spot->ny = (s * dx + r * dy) * per;
    return 1;
}

/* The outboard normal where a roll of radius r with its axis at (x, y) bears: of a round one, the radius to the axis over its length. */
static void bearing_normal(const tside_obstacle *on, double r, double x, double y, double *qx, double *qy)
{
    double per = 1 / (on->radius + r); /* of a hollow one below 0, as its normals lead to the centre */
    *qx = on->straight ? on->nx : (x - on->x) * per;
    *qy = on->straight ? on->ny : (y - on->y) * per;
}

/* The chord that a roll has which bears on an obstacle, or on its continuation; 0 where it does not reach it. */
static int chord_on(const tside_line *line, const tside_obstacle *on, tside_i_spot *spot)
{
    if (!(on->straight ? chord_on_straight(line, on, spot) : chord_on_round(line, on, spot)))
        return 0;
    place_by_chord(line, spot);
    return 1;
}

/* How the constraint of bearing turns the chord. */
static void swing_chord(const tside_obstacle *on, double growth, tside_i_spot *spot)
{
    double r = spot->r, s = spot->s, qx, qy, cosine, sine;
    bearing_normal(on, r, spot->x, spot->y, &qx, &qy);
    cosine = qx * spot->nx + qy * spot->ny;
    sine = spot->nx * qy - spot->ny * qx;
    /* derivation: the distance from obstacle to axis grows as the radius does; differentiated by the wraps wound on, then by the bar's angle */
    spot->share = sine != 0 ? (s * cosine + r * sine) / (s * cosine + growth * (1 - cosine)) : 1;
    spot->swing = s * (1 - spot->share);
}

/* Whether the roll touches the obstacle between its ends, and not its continuation. */
static int touches(const tside_obstacle *on, const tside_i_spot *spot)
{
    const double hair = 1e-12;
    double along, qx, qy;
    if (on->straight) {
        along = (spot->y - on->y) * on->nx - (spot->x - on->x) * on->ny;
        return along >= on->low - hair && along <= on->high + hair;
    }
    bearing_normal(on, spot->r, spot->x, spot->y, &qx, &qy);
    if (on->radius < 0) /* hollow: normals turn the other way on the way up */
        return on->nx * qy - on->ny * qx <= hair && on->low * qy - on->high * qx >= -hair;
    return on->nx * qy - on->ny * qx >= -hair && on->low * qy - on->high * qx <= hair;
}

/* What the chord needs to clear all obstacles: the one that pushes it farthest from plumb, or -1 where it hangs plumb. Sets the chord's normal alone. */
static int chord_holder(const tside_line *line, tside_i_spot *spot)
{
    double nx = 1, ny = 0;
    int held = -1;
    for (int i = 0; i < line->obstacle_count; i++)
        if (chord_on(line, line->obstacle + i, spot) && spot->nx > 0 && spot->ny > ny + 1e-14 && touches(line->obstacle + i, spot)) {
            nx = spot->nx;
            ny = spot->ny;
            held = i;
        }
    spot->nx = nx;
    spot->ny = ny;
    return held;
}

/* Hangs the chord as the obstacles make it; growth: te/2 pi. */
static void settle_chord(const tside_line *line, double growth, tside_i_spot *spot)
{
    int held = chord_holder(line, spot);
    if (held < 0) {
        hang_plumb(line, spot);
        return;
    }
    place_by_chord(line, spot);
    swing_chord(line->obstacle + held, growth, spot);
}

/* On a piece of the line: a roll of radius r on a piece of curvature k takes up 1/(1 + k r) of a wrap each turn, and at a corner none. */
static void lie_on_line(const tside_line_piece *piece, double corner_slope, tside_i_spot *spot)
{
    tside_i_line_point at = tside_i_line_at(piece, spot->s - piece->from);
    spot->share = 1;
    if (piece->turn != 0) {
        spot->share = piece->length / (piece->length + piece->turn * spot->r);
        if (piece->length == 0) {
            at.nx = cos(corner_slope);
            at.ny = sin(corner_slope);
        }
    }
    spot->nx = at.nx;
    spot->ny = at.ny;
    spot->x = at.x + spot->r * at.nx;
    spot->y = at.y + spot->r * at.ny;
    spot->swing = 0;
    spot->on_line = 1;
}

static double slope_of(const tside_i_spot *spot)
{
    return spot->ny != 0 ? atan2(spot->ny, spot->nx) : 0;
}

static void measure_roll(const tside_travel *travel, double wraps, tside_i_spot *spot)
{
    double te = tside_i_roll_te(&travel->roll);
    spot->wraps = wraps;
    spot->r = travel->roll.core / 2 + te * wraps;
    spot->length = tside_i_roll_length(&travel->roll, wraps);
    spot->s = travel->hanging + tside_i_roll_length(&travel->roll, travel->wraps_shut) - spot->length;
    if (spot->s < 0) /* only by rounding, with the roll's axis at the fixing */
        spot->s = 0;
    spot->on_line = 0;
    spot->slack = 0;
}

/*
 * Between tipping and hanging again nothing lifts the roll and its place is no function of the bar's angle: it is taken to roll over evenly, from over the edge to where it
 * hangs, at no torque. Its curtain, slack, is taken to fall back evenly too, so that the bar never turns back.
 */
static void tip_over(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot)
{
    const tside_stretch *here = travel->stretch + stretch;
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double to = tside_i_stretch_end(travel, stretch), share = to > here->from ? (progress - here->from) / (to - here->from) : 1, slope;
    tside_i_spot hung;
    measure_roll(travel, to - here->lead, &hung);
    settle_chord(&travel->line, 0, &hung);
    slope = here->slope + share * (slope_of(&hung) - here->slope);
    spot->x = edge->x + share * (hung.x - edge->x);
    spot->y = edge->y + spot->r + share * (hung.y - edge->y - spot->r);
    spot->nx = cos(slope);
    spot->ny = sin(slope);
    spot->share = spot->slack = 1;
    spot->swing = spot->vx = spot->vy = 0;
}

void tside_i_travel_spot(const tside_travel *travel, int stretch, double progress, tside_i_spot *spot)
{
    const tside_stretch *here = travel->stretch + stretch;
    const tside_line_piece *piece = here->held == TSIDE_HELD_LINE ? travel->line.piece + here->index : NULL;
    double growth = tside_i_roll_te(&travel->roll) / (2 * TSIDE_PI), out;
    int corner = piece && piece->length == 0;
    measure_roll(travel, corner ? here->from - here->lead : progress - here->lead, spot);
    switch (here->held) {
    case TSIDE_HELD_LINE:
        if (corner)
            spot->s = piece->from;
        lie_on_line(piece, here->slope + 2 * TSIDE_PI * (progress - here->from), spot);
        break;
    case TSIDE_HELD_BEARING:
        if (here->index == UNSETTLED)
            settle_chord(&travel->line, growth, spot);
        else if (chord_on(&travel->line, travel->line.obstacle + here->index, spot))
            swing_chord(travel->line.obstacle + here->index, growth, spot);
        else
            hang_plumb(&travel->line, spot); /* by rounding, at the stretch's very end */
        break;
    case TSIDE_HELD_FREE:
        hang_plumb(&travel->line, spot);
        break;
    case TSIDE_HELD_TIPPED:
        tip_over(travel, stretch, progress, spot);
        return;
    }
    /* v = -r t + N (growth share + swing) per radian of bar angle, with t = (ny, -nx) */
    out = growth * spot->share + spot->swing;
    spot->vx = -spot->r * spot->ny + spot->nx * out;
    spot->vy = spot->r * spot->nx + spot->ny * out;
}

double tside_i_travel_angle(const tside_travel *travel, const tside_i_spot *spot)
{
    return 2 * TSIDE_PI * (spot->wraps - travel->wraps_shut) + slope_of(spot) - travel->slope;
}

int tside_i_travel_stretch(const tside_travel *travel, double progress)
{
    int i = 0;
    while (i + 1 < travel->stretches && progress > travel->stretch[i + 1].from)
        i++;
    return i;
}

void tside_i_travel_at(const tside_travel *travel, double progress, tside_i_spot *spot)
{
    tside_i_travel_spot(travel, tside_i_travel_stretch(travel, progress), progress, spot);
}

double tside_i_travel_turns(const tside_travel *travel, double progress)
{
    tside_i_spot spot;
    tside_i_travel_at(travel, progress, &spot);
    return tside_i_travel_angle(travel, &spot) / (2 * TSIDE_PI);
}

void tside_i_travel_position(const tside_travel *travel, const tside_i_spot *spot, tside_position *position)
{
    double underside = spot->y - spot->r;
    position->wraps = spot->wraps;
    position->turns = tside_i_travel_angle(travel, spot) / (2 * TSIDE_PI);
    position->taken_up = spot->length - tside_i_roll_length(&travel->roll, travel->wraps_shut);
    position->diameter = 2 * spot->r;
    position->hanging = spot->s;
    position->x = spot->x;
    position->y = spot->y;
    position->underside = underside;
    position->opening = underside > travel->sill ? underside - travel->sill : 0;
    position->slope = slope_of(spot);
}

/* --- making: where shut is --- */

typedef struct hanging {
    const tside_line *line;
    double r, underside;
} hanging;

/* How far the roll's underside lies above a height, by the curtain gathered from a chord's full length. */
static double chord_above(double gathered, const void *context)
{
    const hanging *aim = context;
    tside_i_spot spot = {.r = aim->r, .s = aim->line->piece[1].from - gathered};
    if (aim->line->count == 1)
        spot.s = -gathered;
    settle_chord(aim->line, 0, &spot);
    return spot.y - spot.r - aim->underside;
}

/* The underside of a roll at the lower end of a piece. */
static double underside_below(const tside_line_piece *piece, double r)
{
    tside_i_line_point end = tside_i_line_at(piece, piece->length);
    if (piece->length == 0)
        return piece->y + r * sin(piece->slope - piece->turn) - r;
    return end.y + r * end.ny - r;
}

/* Curtain from fixing to roll, the slope there, and the piece of the line, with the underside of a roll of radius r at a height. */
static int hang_at(const tside_line *line, double r, double underside, double *s, double *slope)
{
    const tside_line_piece *piece = line->piece;
    hanging aim = {line, r, underside};
    double first_end = line->count > 1 ? piece->y - piece->length * piece->cosine + r * piece->sine - r : -HUGE_VAL, radius, sine;
    int k = 1;
    if (underside >= first_end) {
        tside_i_spot spot = {.r = r};
        /* with one piece alone the curtain is no longer than from the fixing to the ground, along its slope, and the roll round */
        double longest = line->count > 1 ? piece[1].from : (line->y - underside + 2 * r) / piece->cosine;
        if (piece->slope == 0)
            *s = line->y - r - underside;
        else
            *s = (line->count > 1 ? piece[1].from : 0) - tside_i_rising_root(chord_above, &aim, line->count > 1 ? 0 : -longest, line->count > 1 ? longest : 0);
        *s = fmax(*s, 0);
        spot.s = *s;
        settle_chord(line, 0, &spot);
        *slope = slope_of(&spot);
        return 0;
    }
    while (k + 1 < line->count && underside < underside_below(line->piece + k, r))
        k++;
    piece = line->piece + k;
    if (piece->turn == 0) {
        *s = piece->from + (piece->y + r * piece->sine - r - underside) / piece->cosine;
        *slope = piece->slope;
        return k;
    }
    radius = piece->length / piece->turn;
    sine = (underside + r - piece->y + radius * piece->sine) / (radius + r);
    *slope = fmin(fmax(asin(sine < -1 ? -1 : sine > 1 ? 1 : sine), piece->slope - piece->turn), piece->slope);
    *s = piece->from + radius * (piece->slope - *slope);
    return k;
}

/* --- making: stretch by stretch --- */

static void add_stretch(tside_travel *travel, double from, double lead, double slope, tside_held held, int index)
{
    if (travel->stretches < TSIDE_STRETCHES)
        travel->stretch[travel->stretches++] = (tside_stretch){from, lead, slope, held, index};
}

/* Wraps on the bar when a length of curtain hangs. */
static double wraps_at(const tside_travel *travel, double s)
{
    double l = travel->hanging + tside_i_roll_length(&travel->roll, travel->wraps_shut) - s;
    return tside_i_roll_wraps(&travel->roll, l > 0 ? l : 0);
}

/* Up the pieces of the line below the chord. Returns the progress at the chord's lower end, and its lead over the wraps. */
static double climb_line(tside_travel *travel, int k, double *lead)
{
    double progress = travel->wraps_shut, slope = travel->slope;
    *lead = 0;
    for (; k > 0; k--) {
        const tside_line_piece *piece = travel->line.piece + k;
        double to = piece->length == 0 ? progress + (piece->slope - slope) / (2 * TSIDE_PI) : wraps_at(travel, piece->from) + *lead;
        if (to > progress) {
            add_stretch(travel, progress, *lead, slope, TSIDE_HELD_LINE, k);
            if (piece->length == 0)
                *lead += to - progress;
            progress = to;
        }
        slope = piece->slope;
    }
    return progress;
}

static int chord_held(const tside_travel *travel, double wraps)
{
    tside_i_spot spot;
    measure_roll(travel, wraps, &spot);
    return chord_holder(&travel->line, &spot);
}

/*
 * Wraps at which a roll that has tipped over the baseboard's edge hangs again: while the drive holds the bar, its curtain's heading falls back and is wound on; and then it
 * must hang clear of the edge.
 */
static double hangs_again(const tside_travel *travel, double from, double slope, double most)
{
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double low = from, high = most;
    for (int i = 0; i < 100 && high - low > 1e-13 * (1 + high); i++) {
        double middle = (low + high) / 2, dx, dy;
        tside_i_spot spot;
        measure_roll(travel, middle, &spot);
        settle_chord(&travel->line, 0, &spot);
        dx = edge->x - spot.x;
        dy = spot.y - edge->y;
        if (2 * TSIDE_PI * (middle - from) + slope_of(&spot) < slope || dy < (dx < spot.r ? sqrt(spot.r * spot.r - dx * dx) : 0))
            low = middle;
        else
            high = middle;
    }
    return high;
}

/*
 * Wraps at which a roll on a free chord comes nearest to the baseboard's edge, by Newton's steps: it may rest on it for so little that no other place shows it.
 * The axis moves by v = -r t + N swing for r share of curtain wound on.
 */
static double nearest_to_edge(const tside_travel *travel)
{
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double s = hypot(edge->x - travel->line.x, edge->y - travel->line.y);
    for (int i = 0; i < 5; i++) {
        tside_i_spot spot;
        double vx, vy;
        measure_roll(travel, wraps_at(travel, s), &spot);
        if (chord_holder(&travel->line, &spot) == travel->line.board)
            break;
        settle_chord(&travel->line, 0, &spot);
        vx = spot.nx * spot.swing - spot.r * spot.ny;
        vy = spot.ny * spot.swing + spot.r * spot.nx;
        s = fmax(s - spot.r * spot.share * ((edge->x - spot.x) * vx + (edge->y - spot.y) * vy) / (vx * vx + vy * vy), 0);
    }
    return wraps_at(travel, s);
}

/* Where what holds the chord changes between two places that differ in it, by halving; the stretch that begins there, or two where the roll tips. */
static double change_hold(tside_travel *travel, double low, double high, int held, double most, double lead)
{
    while (high - low > 1e-12 * (1 + high)) {
        double middle = low + (high - low) / 2;
        if (middle <= low || middle >= high)
            break;
        if (chord_held(travel, middle) == held)
            low = middle;
        else
            high = middle;
    }
    if (held >= 0 && held == travel->line.board) {
        tside_i_spot spot;
        measure_roll(travel, low, &spot);
        if (chord_on(&travel->line, travel->line.obstacle + held, &spot) && spot.ny > 0 && spot.x < travel->line.obstacle[held].x + 1e-6 * spot.r) { /* over the edge before its curtain hung plumb */
            add_stretch(travel, high + lead, lead, slope_of(&spot), TSIDE_HELD_TIPPED, 0);
            high = hangs_again(travel, high, slope_of(&spot), most);
        }
    }
    return high;
}

/*
 * The chord's stretches: what the roll bears on changes from place to place. Each change is found by halving between two places that differ; places are close enough, with
 * one by the baseboard's edge, that nothing a roll can rest on fits between them unseen.
 */
static void climb_chord(tside_travel *travel, double from, double most, double lead)
{
    enum { PLACES = 16 };
    double at = from, step = (most - from) / PLACES, edge = most;
    int held = travel->line.piece->slope == 0 ? -1 : chord_held(travel, at + 1e-9 * step); /* plumb from the first: nothing to bear on */
    add_stretch(travel, at + lead, lead, 0, held < 0 ? TSIDE_HELD_FREE : TSIDE_HELD_BEARING, held < 0 ? 0 : held);
    if (travel->line.piece->slope == 0)
        return;
    if (travel->line.board >= 0)
        edge = nearest_to_edge(travel);
    for (int i = 1; i <= PLACES;) {
        double to = i == PLACES ? most : from + i * step;
        if (at < edge && edge < to)
            to = edge;
        else
            i++;
        while (at < to && chord_held(travel, to) != held) {
            double change = change_hold(travel, at, to, held, most, lead);
            at = change + 1e-12 * (1 + change);
            held = chord_held(travel, at);
            add_stretch(travel, change + lead, lead, 0, held < 0 ? TSIDE_HELD_FREE : TSIDE_HELD_BEARING, held < 0 ? 0 : held);
        }
        at = to > at ? to : at;
    }
}

/*
 * Whether a roll may tip over the baseboard's edge while its chord is free: the edge stands r or more outboard of the fixing, and a roll that lies atop of it has no more
 * curtain to the fixing, s^2 = dx^2 + (h - r)^2 - r^2, than where the chord begins. Near to it counts as may.
 */
static int may_tip(const tside_travel *travel, double from, double most)
{
    const tside_line *line = &travel->line;
    tside_i_spot begin, end;
    double dx, h;
    if (line->board < 0)
        return 0;
    dx = line->obstacle[line->board].x - line->x;
    h = line->y - line->obstacle[line->board].y;
    measure_roll(travel, from, &begin);
    measure_roll(travel, most, &end);
    return dx > 0.99 * begin.r && dx * dx + h * h - 2 * h * end.r < 1.01 * begin.s * begin.s;
}

static void cut_stretches(tside_travel *travel, double end)
{
    travel->end = end;
    while (travel->stretches > 1 && travel->stretch[travel->stretches - 1].from >= end)
        travel->stretches--;
}

typedef struct target {
    const tside_travel *travel;
    double value;
} target;

static double top_above(double progress, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    tside_i_travel_at(aim->travel, progress, &spot);
    return spot.y + spot.r - aim->value;
}

static double underside_above(double progress, const void *context)
{
    const target *aim = context;
    tside_i_spot spot;
    tside_i_travel_at(aim->travel, progress, &spot);
    return spot.y - spot.r - aim->value;
}

static tside_status find_shut(const tside_stops *stops, const tside_curtain *curtain, double r, tside_travel *travel, double *shut, tside_fault *fault)
{
    int seal = stops->shut_by == TSIDE_SHUT_SEAL;
    *shut = seal ? curtain->sill - stops->seal : stops->shut_height;
    if (*shut < 0)
        REFUSE(fault, TSIDE_CONTRADICTS, "stops.seal", "curtain.sill", "the roll would lie in the ground", "m", stops->seal, TSIDE_ABOVE, curtain->sill, 0);
    if (*shut + 2 * r > travel->rail + SLACK) {
        double most = seal ? curtain->sill - (travel->rail - 2 * r) : travel->rail - 2 * r;
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, seal ? "stops.seal" : "stops.shut_height", "curtain.hip", "shut, the roll's top would pass the rail", "m",
                                    seal ? stops->seal : *shut, seal ? TSIDE_BELOW : TSIDE_ABOVE, most, 0);
    }
    return TSIDE_OK;
}

static tside_status find_open(const tside_stops *stops, double shut, const tside_travel *travel, double most, double *open, tside_fault *fault)
{
    const char *shut_name = stops->shut_by == TSIDE_SHUT_SEAL ? "stops.seal" : "stops.shut_height";
    double low = travel->wraps_shut;
    if (stops->open_by == TSIDE_OPEN_GAP) {
        target top = {travel, travel->rail - stops->gap};
        double room = fmax(0, stops->gap - top_above(low, &top));
        if (stops->gap > room + SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.gap", shut_name, "open would lie below shut", "m", stops->gap, TSIDE_ABOVE, room, 0);
        *open = tside_i_rising_root(top_above, &top, low, most);
    } else {
        target underside = {travel, stops->open_height};
        if (stops->open_height < shut - SLACK)
            return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "stops.open_height", shut_name, "open would lie below shut", "m", stops->open_height, TSIDE_BELOW, shut, 0);
        if (stops->open_height > travel->highest + SLACK)
            REFUSE(fault, TSIDE_CONTRADICTS, "stops.open_height", "curtain.hip", "open, the roll's top would pass the rail", "m", stops->open_height,
                                        TSIDE_ABOVE, travel->highest, 0);
        *open = tside_i_rising_root(underside_above, &underside, low, most);
    }
    return TSIDE_OK;
}

tside_status tside_i_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll, const tside_stops *stops, int ends_only,
                                 tside_travel *travel, tside_fault *fault)
{
    tside_i_spot spot;
    target rail = {travel, line->y - curtain->rail_depth};
    double shut, open = stops->wraps_shut, most, lead, progress, r = roll->core / 2 + tside_i_roll_te(roll) * stops->wraps_shut;
    int k, line_stretches, unsettled;
    travel->roll = *roll;
    if (line != &travel->line)
        travel->line = *line;
    travel->sill = curtain->sill;
    travel->rail = rail.value;
    travel->wraps_shut = stops->wraps_shut;
    travel->stretches = 0;
    TRY(find_shut(stops, curtain, r, travel, &shut, fault));
    k = hang_at(line, r, shut, &travel->hanging, &travel->slope);
    progress = climb_line(travel, k, &lead);
    line_stretches = travel->stretches;
    most = fmax(wraps_at(travel, r), stops->wraps_shut); /* with no more than its radius hanging, the roll's top is at the fixing or above */
    unsettled = line->piece->slope != 0 && !may_tip(travel, progress - lead, most); /* open is found first, so that the chord is settled no farther */
    if (most + lead > progress + 1e-12 || line_stretches == 0) {
        if (unsettled)
            add_stretch(travel, progress, lead, 0, TSIDE_HELD_BEARING, UNSETTLED);
        else
            climb_chord(travel, progress - lead, most, lead);
    }
    travel->end = most + lead;
    tside_i_travel_at(travel, tside_i_rising_root(top_above, &rail, stops->wraps_shut, travel->end), &spot);
    travel->highest = spot.y - spot.r;
    TRY(find_open(stops, shut, travel, travel->end, &open, fault));
    if (unsettled && !ends_only && travel->stretches > line_stretches) {
        travel->stretches = line_stretches;
        climb_chord(travel, progress - lead, fmax(open, progress) - lead, lead);
    }
    cut_stretches(travel, open);
    if (!isfinite(travel->hanging + travel->slope + travel->end + travel->highest))
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "stops", "", "the travel is not one of finite numbers");
    return TSIDE_OK;
}

tside_status tside_travel_make(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll, const tside_stops *stops, tside_travel *travel,
                               tside_fault *fault)
{
    tside_travel made;
    memset(&made, 0, sizeof made); /* what a travel does not have is 0: equal sides give equal bytes */
    TRY(tside_i_check(TSIDE_KIND_CURTAIN, "curtain", curtain, fault));
    TRY(tside_i_check(TSIDE_KIND_ROLL, "roll", roll, fault));
    TRY(tside_i_check(TSIDE_KIND_STOPS, "stops", stops, fault));
    TRY(tside_i_settle(TSIDE_KIND_STOPS, "stops", tside_i_travel_make(line, curtain, roll, stops, 0, &made, fault), fault));
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
    if (travel->line.count == 1 && travel->line.piece->slope == 0) /* plumb: the curtain's heading never changes */
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
    return ANSWER(TSIDE_KIND_POSITION, made, position, fault);
}

tside_status tside_travel_to_height(const tside_travel *travel, double underside, tside_position *position, tside_fault *fault)
{
    target aim = {travel, underside};
    tside_position shut, open, made;
    answer(travel, travel->wraps_shut, &shut);
    answer(travel, travel->end, &open);
    if (!isfinite(underside))
        return tside_i_bound(fault, "underside", "m", 0, TSIDE_NOT_FINITE, 0);
    if (underside < shut.underside - SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_BELOW, shut.underside);
    if (underside > open.underside + SLACK)
        return tside_i_bound(fault, "underside", "m", underside, TSIDE_ABOVE, open.underside);
    answer(travel, tside_i_rising_root(underside_above, &aim, travel->wraps_shut, travel->end), &made);
    return ANSWER(TSIDE_KIND_POSITION, made, position, fault);
}
