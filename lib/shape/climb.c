/* SPDX-License-Identifier: MIT */
/*
 * How the travel is cut into smooth stretches: where the bar is when shut, then up the pieces of the line, and along
 * the chord from one thing that holds it to the next. Source: derivation.
 */
#include "shape/climb.h"

#include "base/root.h"

/* --- where shut is --- */

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
    tside_i_chord_settle(aim->line, 0, &spot);
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

/*
 * Curtain from fixing to roll and the slope there, with the underside of a roll of radius r that hangs on the chord at
 * a height. A plumb chord has nothing to bear on.
 */
static void shut_on_chord(const tside_line *line, double r, double underside, double *s, double *slope)
{
    const tside_line_piece *piece = line->piece;
    const hanging aim = {line, r, underside};
    tside_i_spot spot = {.r = r};
    /*
     * with one piece alone the curtain is no longer than from the fixing to the ground, along its slope, and the roll
     * round
     */
    const double whole = line->count > 1 ? piece[1].from : 0,
                 longest = line->count > 1 ? whole : (line->y - underside + 2 * r) / piece->cosine;
    *slope = 0;
    if (piece->slope == 0)
        *s = fmax(line->y - r - underside, 0);
    else {
        spot.s = *s = fmax(whole - tside_i_rising_root(chord_above, &aim, whole - longest, whole), 0);
        tside_i_chord_settle(line, 0, &spot);
        *slope = tside_i_chord_slope(&spot);
    }
}

/*
 * Curtain from fixing to roll, the slope there, and the piece of the line, with the underside of a roll of radius r at
 * a height.
 */
int tside_i_climb_shut(const tside_line *line, double r, double underside, double *s, double *slope)
{
    const tside_line_piece *piece = line->piece;
    double first_end = line->count > 1 ? piece->y - piece->length * piece->cosine + r * piece->sine - r : -HUGE_VAL,
           radius, sine;
    int k = 1;
    if (underside >= first_end) {
        shut_on_chord(line, r, underside, s, slope);
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
    *slope = fmin(fmax(asin(fmax(fmin(sine, 1), -1)), piece->slope - piece->turn), piece->slope);
    *s = piece->from + radius * (piece->slope - *slope);
    return k;
}

/* --- stretch by stretch --- */

void tside_i_climb_add(tside_travel *travel, double from, double lead, double slope, tside_held held, int index)
{
    if (travel->stretches < TSIDE_STRETCHES)
        travel->stretch[travel->stretches++] = (tside_stretch){from, lead, slope, held, index};
}

/* Wraps on the bar when a length of curtain hangs. */
double tside_i_climb_wraps(const tside_travel *travel, double s)
{
    double l = travel->hanging + tside_i_roll_length(&travel->roll, travel->wraps_shut) - s;
    return tside_i_roll_wraps(&travel->roll, l > 0 ? l : 0);
}

/*
 * Up the pieces of the line below the chord. Returns the progress at the chord's lower end, and its lead over the
 * wraps.
 */
double tside_i_climb_line(tside_travel *travel, int k, double *lead)
{
    double progress = travel->wraps_shut, slope = travel->slope;
    *lead = 0;
    for (; k > 0; k--) {
        const tside_line_piece *piece = travel->line.piece + k;
        double to = piece->length == 0 ? progress + (piece->slope - slope) / (2 * TSIDE_PI)
                                       : tside_i_climb_wraps(travel, piece->from) + *lead;
        if (to > progress) {
            tside_i_climb_add(travel, progress, *lead, slope, TSIDE_HELD_LINE, k);
            if (piece->length == 0)
                *lead += to - progress;
            progress = to;
        }
        slope = piece->slope;
    }
    return progress;
}

/*
 * Wraps, relative: so near each other two places are one. A change of hold is found so well, and what holds after it is
 * asked so far beyond, lest rounding answer for before it.
 */
static const double one_place = 1e-12;

/* The baseboard's edge, or NULL where there is no board. */
static const tside_obstacle *edge_of(const tside_travel *travel)
{
    return travel->line.board >= 0 ? travel->line.obstacle + travel->line.board : NULL;
}

/* What holds the chord, or NULL where it hangs plumb. */
static const tside_obstacle *holder_at(const tside_travel *travel, double wraps)
{
    tside_i_spot spot;
    tside_i_spot_roll(travel, wraps, &spot);
    return tside_i_chord_holder(&travel->line, &spot);
}

/*
 * Wraps at which a roll that has tipped over the baseboard's edge hangs again: while the drive holds the bar, its
 * curtain's heading falls back and is wound on; and then it must hang clear of the edge.
 */
static double hangs_again(const tside_travel *travel, double from, double slope, double most)
{
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double low = from, high = most, middle;
    while ((middle = (low + high) / 2) > low && middle < high) {
        double dx, dy;
        tside_i_spot spot;
        tside_i_spot_roll(travel, middle, &spot);
        tside_i_chord_settle(&travel->line, 0, &spot);
        dx = edge->x - spot.x;
        dy = spot.y - edge->y;
        if (2 * TSIDE_PI * (middle - from) + tside_i_chord_slope(&spot) < slope ||
            dy < (dx < spot.r ? sqrt(spot.r * spot.r - dx * dx) : 0))
            low = middle;
        else
            high = middle;
    }
    return high;
}

/*
 * Wraps at which a roll on a free chord comes nearest to the baseboard's edge, by Newton's steps: it may rest on it for
 * so little that no other place shows it. The axis moves by v = -r t + N swing for r share of curtain wound on.
 */
static double nearest_to_edge(const tside_travel *travel)
{
    const tside_obstacle *edge = travel->line.obstacle + travel->line.board;
    double s = hypot(edge->x - travel->line.x, edge->y - travel->line.y);
    for (int i = 0; i < 5; i++) {
        tside_i_spot spot;
        double vx, vy;
        tside_i_spot_roll(travel, tside_i_climb_wraps(travel, s), &spot);
        if (tside_i_chord_holder(&travel->line, &spot) == edge)
            break;
        tside_i_chord_settle(&travel->line, 0, &spot);
        vx = spot.nx * spot.swing - spot.r * spot.ny;
        vy = spot.ny * spot.swing + spot.r * spot.nx;
        s = fmax(s - spot.r * spot.share * ((edge->x - spot.x) * vx + (edge->y - spot.y) * vy) / (vx * vx + vy * vy),
                 0);
    }
    return tside_i_climb_wraps(travel, s);
}

/*
 * Where what holds the chord changes between two places that differ in it, by halving; the stretch that begins there,
 * or two where the roll tips.
 */
static double change_hold(tside_travel *travel, double low, double high, const tside_obstacle *holder, double most,
                          double lead)
{
    const double over = 1e-6; /* of the radius: a roll that hangs plumb at the edge touches it from outboard to within
                                 rounding, and does not tip */
    while (high - low > one_place * (1 + high)) {
        double middle = low + (high - low) / 2;
        if (holder_at(travel, middle) == holder)
            low = middle;
        else
            high = middle;
    }
    if (holder && holder == edge_of(travel)) {
        tside_i_spot spot;
        tside_i_spot_roll(travel, low, &spot);
        tside_i_chord_on(&travel->line, holder, &spot);
        if (spot.x < holder->x + over * spot.r) { /* over the edge before its curtain hung plumb */
            tside_i_climb_add(travel, high + lead, lead, tside_i_chord_slope(&spot), TSIDE_HELD_TIPPED, 0);
            high = hangs_again(travel, high, tside_i_chord_slope(&spot), most);
        }
    }
    return high;
}

static void add_chord(tside_travel *travel, double from, double lead, const tside_obstacle *holder)
{
    if (holder)
        tside_i_climb_add(travel, from, lead, 0, TSIDE_HELD_BEARING, (int)(holder - travel->line.obstacle));
    else
        tside_i_climb_add(travel, from, lead, 0, TSIDE_HELD_FREE, 0);
}

/*
 * The chord's stretches: what the roll bears on changes from place to place. Each change is found by halving between
 * two places that differ; places are close enough, with one by the baseboard's edge, that nothing a roll can rest on
 * fits between them unseen.
 */
void tside_i_climb_chord(tside_travel *travel, double from, double most, double lead)
{
    enum { PLACES = 16 };
    double at = from, step = (most - from) / PLACES, edge = most;
    const tside_obstacle *holder = NULL;
    if (travel->line.piece->slope != 0) /* not plumb from the first: then there is nothing to bear on */
        holder = holder_at(travel, at);
    add_chord(travel, at + lead, lead, holder);
    if (travel->line.piece->slope == 0)
        return;
    if (edge_of(travel))
        edge = nearest_to_edge(travel);
    for (int i = 1; i <= PLACES;) {
        double to = i == PLACES ? most : from + i * step;
        if (at < edge && edge < to)
            to = edge;
        else
            i++;
        while (at < to && holder_at(travel, to) != holder) {
            double change = change_hold(travel, at, to, holder, most, lead);
            at = change + one_place * (1 + change);
            holder = holder_at(travel, at);
            add_chord(travel, change + lead, lead, holder);
        }
        at = to > at ? to : at;
    }
}

/*
 * Whether a roll may tip over the baseboard's edge while its chord is free: the edge stands r or more outboard of the
 * fixing, and a roll that lies atop of it has no more curtain to the fixing, s^2 = dx^2 + (h - r)^2 - r^2, than where
 * the chord begins. Near to it counts as may.
 */
int tside_i_climb_may_tip(const tside_travel *travel, double from, double most)
{
    const double near =
        0.01; /* relative: the roll grows on the way, and a chord settled for nothing costs time alone */
    const tside_line *line = &travel->line;
    tside_i_spot begin, end;
    double dx, h;
    if (line->board < 0)
        return 0;
    dx = line->obstacle[line->board].x - line->x;
    h = line->y - line->obstacle[line->board].y;
    tside_i_spot_roll(travel, from, &begin);
    tside_i_spot_roll(travel, most, &end);
    return dx > (1 - near) * begin.r && dx * dx + h * h - 2 * h * end.r < (1 + near) * begin.s * begin.s;
}
