/* SPDX-License-Identifier: MIT */
/*
 * The free chord: curtain hanging straight from its fixing to a roll that nothing holds but what it bears on. The axis
 * is then where a circle of the roll's radius, touching face or baseboard from outside, meets the circle of radius
 * sqrt(s^2 + r^2) about the fixing: plane geometry. Source: derivation.
 */
#include "shape/chord.h"

/* The chord's normal leads to the roll: the axis from fixing, chord and radius. */
static void place_by_chord(const tside_line *line, tside_i_spot *spot)
{
    spot->x = line->x + spot->s * spot->ny + spot->r * spot->nx;
    spot->y = line->y - spot->s * spot->nx + spot->r * spot->ny;
}

void tside_i_chord_plumb(const tside_line *line, tside_i_spot *spot)
{
    spot->nx = spot->share = 1;
    spot->ny = spot->swing = 0;
    place_by_chord(line, spot);
}

/*
 * A straight piece that the fixing stands a gap h off: the chord makes an angle c with it such that s sin c + r (1 -
 * cos c) = h, a quadratic in tan(c/2), solved without cancellation. Gives the chord's normal; 0 where the roll does not
 * reach the piece.
 */
static int chord_on_straight(const tside_line *line, const tside_obstacle *wall, tside_i_spot *spot)
{
    double h = (line->x - wall->x) * wall->nx + (line->y - wall->y) * wall->ny, r = spot->r, s = spot->s,
           square = s * s + h * (2 * r - h), below, half, sc, cc;
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

/*
 * A round one: the axis is where a circle about its centre meets the circle of radius sqrt(s^2 + r^2) about the fixing,
 * on the lower side.
 */
static int chord_on_round(const tside_line *line, const tside_obstacle *bulge, tside_i_spot *spot)
{
    double r = spot->r, s = spot->s, far = s * s + r * r,
           R = bulge->radius < 0 ? -bulge->radius - r : bulge->radius + r;
    double cx = bulge->x - line->x, cy = bulge->y - line->y, square = cx * cx + cy * cy, per, along, across, dx, dy;
    per = 1 / square;
    along = (far + square - R * R) * per / 2;
    across = far * per - along * along;
    if (!(across >= 0) || far == 0) /* no number where the fixing is the centre */
        return 0;
    across = bulge->radius < 0 ? -sqrt(across) : sqrt(across);
    dx = along * cx - across * cy;
    dy = along * cy + across * cx;
    per = 1 / far;
    spot->nx = (r * dx - s * dy) * per;
    spot->ny = (s * dx + r * dy) * per;
    return 1;
}

/*
 * The outboard normal where a roll of radius r with its axis at (x, y) bears: of a round one, the radius to the axis
 * over its length.
 */
static void bearing_normal(const tside_obstacle *on, double r, double x, double y, double *qx, double *qy)
{
    double per = 1 / (on->radius + r); /* of a hollow one below 0, as its normals lead to the centre */
    *qx = on->straight ? on->nx : (x - on->x) * per;
    *qy = on->straight ? on->ny : (y - on->y) * per;
}

/* The chord that a roll has which bears on an obstacle, or on its continuation; 0 where it does not reach it. */
int tside_i_chord_on(const tside_line *line, const tside_obstacle *on, tside_i_spot *spot)
{
    if (!(on->straight ? chord_on_straight(line, on, spot) : chord_on_round(line, on, spot)))
        return 0;
    place_by_chord(line, spot);
    return 1;
}

/* How the constraint of bearing turns the chord. */
void tside_i_chord_swing(const tside_obstacle *on, double growth, tside_i_spot *spot)
{
    double r = spot->r, s = spot->s, qx, qy, cosine, sine;
    bearing_normal(on, r, spot->x, spot->y, &qx, &qy);
    cosine = qx * spot->nx + qy * spot->ny;
    sine = spot->nx * qy - spot->ny * qx;
    /*
     * derivation: the distance from obstacle to axis grows as the radius does; differentiated by the wraps wound on,
     * then by the bar's angle
     */
    spot->share = sine != 0 ? (s * cosine + r * sine) / (s * cosine + growth * (1 - cosine)) : 1;
    spot->swing = s * (1 - spot->share);
}

/* Whether the roll touches the obstacle between its ends, and not its continuation. */
static int touches(const tside_obstacle *on, const tside_i_spot *spot)
{
    double along, qx, qy;
    if (on->straight) {
        along = (spot->y - on->y) * on->nx - (spot->x - on->x) * on->ny;
        return along <= on->high; /* a straight piece goes on down below the foot, and so does a board's face */
    }
    bearing_normal(on, spot->r, spot->x, spot->y, &qx, &qy);
    if (on->radius < 0) /* hollow: normals turn the other way on the way up */
        return on->nx * qy - on->ny * qx <= 0 && on->low * qy - on->high * qx >= 0;
    return on->nx * qy - on->ny * qx >= 0 && on->low * qy - on->high * qx <= 0;
}

/*
 * What the chord needs to clear all obstacles: the one that pushes it farthest from plumb, or NULL where it hangs
 * plumb. Sets the chord's normal alone.
 */
const tside_obstacle *tside_i_chord_holder(const tside_line *line, tside_i_spot *spot)
{
    const double farther =
        1e-14; /* of a sine: where two obstacles hold alike, the first does, and rounding makes no change of it */
    double nx = 1, ny = 0;
    const tside_obstacle *holder = NULL;
    for (const tside_obstacle *on = line->obstacle; on < line->obstacle + line->obstacle_count; on++)
        if (tside_i_chord_on(line, on, spot) && spot->nx > 0 && spot->ny > ny + farther && touches(on, spot)) {
            nx = spot->nx;
            ny = spot->ny;
            holder = on;
        }
    spot->nx = nx;
    spot->ny = ny;
    return holder;
}

/* Hangs the chord as the obstacles make it; growth: te/2 pi. */
void tside_i_chord_settle(const tside_line *line, double growth, tside_i_spot *spot)
{
    const tside_obstacle *holder = tside_i_chord_holder(line, spot);
    if (!holder) {
        tside_i_chord_plumb(line, spot);
        return;
    }
    place_by_chord(line, spot);
    tside_i_chord_swing(holder, growth, spot);
}
