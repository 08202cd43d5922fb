/* SPDX-License-Identifier: MIT */
/*
 * The curtain's line: how it lies from its fixing down, tight over what bulges outboard, which is a convex hull of
 * rounds. Source: derivation, plane geometry.
 */
#include "shape/curtain.h"

#include <string.h>

#include "base/arc.h"
#include "base/field.h"
#include "shape/bow.h"

static const char *const lies[] = {"outboard", "inboard"};

/* clang-format off */
static const tside_field rows[] = {
    {REQUIRED(tside_curtain, hip, "m", TO(20), "height of the curtain's fixing at the hip rail, above grade"), MEASURED(0.25 * IN)},
    {REQUIRED(tside_curtain, sill, "m", TO(20), "height down to which the wall opens, above grade"), MEASURED(0.25 * IN)},
    {NUMBER(tside_curtain, standoff, "m", FROM(0), TO(1), 1.25 * IN, PRACTICE, "level distance from the bow's outer face to the fixing"), MEASURED(0.125 * IN), UNUSUAL_OUTSIDE(0.75 * IN, 2 * IN)},
    {NUMBER(tside_curtain, rail_depth, "m", FROM(0), TO(1), 0, OURS, "how far the rail reaches below the fixing"), MEASURED(0.125 * IN)},
    {NUMBER(tside_curtain, screw_spacing, "m", FROM(0.05), TO(10), 24 * IN, OURS, "the most between screws of the rail")},
    {NUMBER(tside_curtain, thickness, "m", FROM(0), TO(0.2), 0.15e-3, PRACTICE, "thickness of the bare curtain"), IN_MIL, MEASURED(0.02e-3)},
    {NUMBER(tside_curtain, packing, "1", ABOVE(0), TO(5), 1.15, PRACTICE, "packing factor of the roll: trapped air above 1, squeezed quilts below"), MEASURED(0.1),
     UNUSUAL_OUTSIDE(0.6, 1.3)},
    {NUMBER(tside_curtain, areal_mass, "kg/m2", FROM(0), TO(20), 0.14, PRACTICE, "mass of the curtain per area"), MEASURED(0.02)},
    {NUMBER(tside_curtain, wet, "kg/m2", FROM(0), TO(5), 0.035, PRACTICE, "water on the wet curtain per area"), MEASURED(0.035), UNUSUAL_OUTSIDE(0, 0.1)},
    {NUMBER(tside_curtain, past, "m", FROM(0), TO(3), 2 * IN, OURS, "curtain past the plane of the end bow's centreline, at each end"), MEASURED(0.5 * IN), UNUSUAL_OUTSIDE(1 * IN, 12 * IN)},
    {CHOICE(tside_curtain, roll_lies, lies, TSIDE_OUTBOARD, "the side of the hanging curtain on which the roll lies")},
};
/* clang-format on */
TABLE(tside_i_curtain_table, rows);

/* --- the hull --- */

/* What the hull wraps: arcs that bulge outboard, and points as arcs of no radius, each over a range of slopes. */
typedef struct bulge {
    double x, y, radius;
    double low, high; /* rad, slopes of its tangents at its lower and upper end */
    int used, chain;  /* chain: its place on the face from the foot up, or -1 */
} bulge;

enum { BULGES = 1 + TSIDE_BOW_PIECES + 1 };

/* The face's first piece, or below its foot the face itself, up to so far along it. */
static void add_straight(tside_line *line, const tside_piece *piece, double high)
{
    line->obstacle[line->obstacle_count++] = (tside_obstacle){.straight = 1,
                                                              .x = piece->x,
                                                              .y = piece->y,
                                                              .nx = piece->sine,
                                                              .ny = -piece->cosine,
                                                              .low = -HUGE_VAL,
                                                              .high = high};
}

static void add_round(tside_line *line, double x, double y, double radius, double lower, double upper)
{
    line->obstacle[line->obstacle_count++] = (tside_obstacle){
        .x = x, .y = y, .radius = radius, .nx = cos(lower), .ny = sin(lower), .low = cos(upper), .high = sin(upper)};
}

/* One piece of the face: what the hull wraps of it below the hip, and what a roll may bear on. */
static void add_face_piece(tside_line *line, const tside_piece *piece, int i, double hip_arc, bulge *bulges, int *count)
{
    double k = piece->curvature, upper = fmin(piece->length, hip_arc - piece->from),
           slope = piece->heading - TSIDE_PI / 2;
    double cx = k != 0 ? piece->x - piece->sine / k : 0, cy = k != 0 ? piece->y + piece->cosine / k : 0;
    if (k == 0)
        add_straight(line, piece, piece->length);
    else
        add_round(line, cx, cy, 1 / k, slope, slope + k * piece->length);
    if (upper <= 0)
        return;
    if (k > 0) /* a hollow one is within the hull: it goes on below its foot flatter than any chord down to that */
        bulges[(*count)++] = (bulge){cx, cy, 1 / k, slope, slope + k * upper, 0, i};
    if (i == 0 && k != 0) /* below the foot the face goes on straight */
        add_straight(line, piece, 0);
}

#define NEVER (-HUGE_VAL)              /* a slope below all others */
static const double same_slope = 1e-9; /* rad: bulges that touch end and begin at slopes whose last digits differ, and
                                          the hull would pass one over */
static const double on_arc = 1e-14;    /* of the distance squared: a point that ends an arc lies off it by rounding, and
                                          inside it there is no tangent */
static const double no_length = 1e-12; /* m: what rounding leaves between bulges that touch is no piece of the line */

/*
 * The slope at which the hull leaves one round for another below it; NEVER where it does not. Derivation: equal
 * support, D.N = difference of radii.
 */
static double leaves_at(const bulge *from, const bulge *to)
{
    double dx = from->x - to->x, dy = from->y - to->y, more = to->radius - from->radius,
           square = dx * dx + dy * dy - more * more, slope;
    /* bulges of one chain touch, and share their tangent exactly */
    if (from->chain > 0 && to->chain >= 0 && to->chain < from->chain)
        return from->low;
    if (square < on_arc * (dx * dx + dy * dy))
        square = 0;
    slope = atan2(dy, dx);
    if (slope < -TSIDE_PI / 2) /* the later round stands outboard of this one's centre: the angle goes on from pi */
        slope += 2 * TSIDE_PI;
    slope -= atan2(sqrt(square), more);
    if (slope < to->low - same_slope || slope > to->high + same_slope)
        return NEVER;
    return slope;
}

/* There is room: a bow has two bulges at most, and the line goes round these, and a board's corner, once or twice. */
static void add_line_piece(tside_line *line, double x, double y, double slope, double length, double turn)
{
    const tside_line_piece *last = line->piece + line->count - 1;
    double from = line->count ? last->from + last->length : 0;
    line->piece[line->count++] = (tside_line_piece){from, length, turn, x, y, slope, sin(slope), cos(slope)};
}

/*
 * Wraps the bulges from the fixing down: each time to the round that is met at the steepest slope outboard, until the
 * line stands plumb, or along the ground's own lean.
 */
static void wrap(tside_line *line, bulge *bulges, int count, double last_slope)
{
    bulge *at = bulges;
    double slope = TSIDE_PI / 2;
    at->used = 1;
    for (;;) {
        bulge *next = NULL;
        double best = last_slope, s, c, x, y;
        for (int i = 0; i < count; i++) {
            double leaves = bulges[i].used ? NEVER : leaves_at(at, bulges + i);
            if (leaves > best && leaves <= slope + same_slope) {
                best = leaves;
                next = bulges + i;
            }
        }
        best = fmin(best, slope);
        /*
         * round the present one from the slope it was met at to the slope it is left at; the fixing itself is no corner
         * to turn about
         */
        if (at != bulges && slope - best > 0)
            add_line_piece(line, at->x + at->radius * cos(slope), at->y + at->radius * sin(slope), slope,
                           at->radius * (slope - best), slope - best);
        s = sin(best);
        c = cos(best);
        x = at->x + at->radius * c;
        y = at->y + at->radius * s;
        if (!next) {
            add_line_piece(line, x, y, best, HUGE_VAL, 0);
            return;
        }
        /* a first piece of no length still stands for the free chord */
        {
            double length = (next->x + next->radius * c - x) * s - (next->y + next->radius * s - y) * c;
            if (length > no_length || at == bulges)
                add_line_piece(line, x, y, best, fmax(length, 0), 0);
        }
        next->used = 1;
        if (next->chain < 0 && at->chain >= 0) { /* a corner between two parts of one arc: its lower part may follow */
            at->used = 0;
            at->high = best;
        }
        at = next;
        slope = best;
    }
}

tside_status tside_i_line_make(const tside_bow *bow, const tside_curtain *curtain, const char *top_name,
                               const char *board_name, tside_line *line, tside_fault *fault)
{
    bulge bulges[BULGES];
    int count = 1;
    double arc, top, lean = bow->face.piece[0].heading - TSIDE_PI / 2;
    line->count = line->obstacle_count = 0;
    line->board = -1;
    if (curtain->roll_lies == TSIDE_INBOARD)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "curtain.roll_lies", "",
                              "a roll inboard of its curtain is not modelled");
    if (!(curtain->sill < curtain->hip))
        REFUSE(fault, TSIDE_CONTRADICTS, "curtain.sill", "curtain.hip", "the sill must lie below the hip", "m",
               curtain->sill, TSIDE_NOT_BELOW, curtain->hip, 0);
    if (!tside_i_path_at_height(&bow->face, curtain->hip, &arc, &top))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "curtain.hip", top_name,
                                    "the hip lies above the bow's top", "m", curtain->hip, TSIDE_ABOVE, top, 0);
    if (bow->board_given && !(bow->board_y < curtain->hip))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "curtain.hip", board_name,
                                    "the baseboard must end below the hip", "m", curtain->hip, TSIDE_NOT_ABOVE,
                                    bow->board_y, 0);
    line->x = tside_i_path_at(&bow->face, arc).x + curtain->standoff;
    line->y = curtain->hip;
    bulges[0] = (bulge){line->x, line->y, 0, -TSIDE_PI, TSIDE_PI, 0, -1};
    for (int i = 0; i < bow->face.count; i++)
        add_face_piece(line, bow->face.piece + i, i, arc, bulges, &count);
    if (bow->board_given) {
        line->obstacle[line->obstacle_count++] = (tside_obstacle){
            .straight = 1, .x = bow->board_x, .y = bow->board_y, .nx = 1, .low = -HUGE_VAL}; /* its outer face */
        line->board = line->obstacle_count;
        add_round(line, bow->board_x, bow->board_y, 0, 0, TSIDE_PI / 2);
        bulges[count++] = (bulge){bow->board_x, bow->board_y, 0, -TSIDE_PI, TSIDE_PI, 0, -1};
    }
    wrap(line, bulges, count, lean > 0 ? lean : 0);
    return TSIDE_OK;
}

tside_status tside_line_make(const tside_bow *bow, const tside_curtain *curtain, tside_line *line, tside_fault *fault)
{
    tside_line made;
    memset(&made, 0, sizeof made); /* what a line does not have is 0: equal walls give equal bytes */
    TRY(tside_i_check(&tside_i_curtain_table, "curtain", curtain, fault));
    TRY(tside_i_settle(&tside_i_curtain_table, "curtain", tside_i_line_make(bow, curtain, "bow", "bow", &made, fault),
                       fault));
    memcpy(line, &made, sizeof made);
    return TSIDE_OK;
}

int tside_i_line_piece(const tside_line *line, double distance)
{
    int i = line->count - 1;
    while (i > 0 && distance < line->piece[i].from)
        i--;
    return i;
}

tside_i_line_point tside_i_line_at(const tside_line_piece *piece, double distance)
{
    tside_i_line_point p = {piece->x, piece->y, piece->cosine, piece->sine};
    if (piece->turn == 0) {
        p.x += distance * piece->sine;
        p.y -= distance * piece->cosine;
    } else if (piece->length > 0) { /* about the centre, from one normal to the other */
        double radius = piece->length / piece->turn, slope = piece->slope - distance / radius;
        p.nx = cos(slope);
        p.ny = sin(slope);
        p.x += radius * (p.nx - piece->cosine);
        p.y += radius * (p.ny - piece->sine);
    }
    return p;
}

/*
 * Of a curtain along the line, the first moment of its depth below the fixing: the integral of depth over distance,
 * piece by piece.
 */
double tside_i_line_moment(const tside_line *line, double distance)
{
    double moment = 0;
    for (int i = 0; i < line->count && line->piece[i].from < distance; i++) {
        const tside_line_piece *piece = line->piece + i;
        double u = fmin(piece->length, distance - piece->from), depth = line->y - piece->y;
        if (piece->turn == 0)
            moment += u * (depth + u / 2 * piece->cosine);
        else if (piece->length > 0) {
            double radius = piece->length / piece->turn, turn = u / radius, half = sin(turn / 2);
            moment += u * depth +
                      radius * radius * (tside_i_arc_less_chord(turn) * piece->sine + 2 * half * half * piece->cosine);
        }
    }
    return moment;
}

tside_status tside_line_at(const tside_line *line, double distance, double *x, double *y, double *normal,
                           tside_fault *fault)
{
    tside_i_line_point point;
    const tside_line_piece *piece;
    TRY(tside_i_argument(fault, "distance", "m", distance, 0, 0));
    piece = line->piece + tside_i_line_piece(line, distance);
    point = tside_i_line_at(piece, distance - piece->from);
    *x = point.x;
    *y = point.y;
    *normal = atan2(point.ny, point.nx);
    return TSIDE_OK;
}
