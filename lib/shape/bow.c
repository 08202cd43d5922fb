/* SPDX-License-Identifier: MIT */
/*
 * The bow: its centreline and its outer face as arcs and straights, by measures that a tape takes; where it is at a
 * height, and where a line crosses it. Source: plane geometry.
 */
#include "shape/bow.h"

#include <float.h>
#include <string.h>

#include "base/field.h"

static const char *const shapes[] = {"leg_and_peak", "three_points"};
static const char *const measures[] = {"outside", "centreline"};

static const char *const boards[] = {"none", "outside"};
#define BOARD ONLY(TSIDE_BOARD_OUTSIDE)
#define LEG ONLY(TSIDE_LEG_AND_PEAK)
#define POINTS ONLY(TSIDE_THREE_POINTS)

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_frame, shape, shapes, TSIDE_LEG_AND_PEAK, "how the bow is described")},
    {CHOICE(tside_frame, measured, measures, TSIDE_OUTSIDE, "measured over the tube's outside, or on its centreline")},
    {GROUP(tside_frame, tube, round, "the bow's tube")},
    {GROUP(tside_frame, material, material, "the bow's metal")},
    {REQUIRED(tside_frame, width, "m", TO(60), "width of the whole tunnel"), MEASURED(0.5 * IN), APPLIES(tside_frame, shape, LEG)},
    {NUMBER(tside_frame, leg_height, "m", FROM(0), TO(20), 0, OURS, "height at which the plumb leg ends"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, LEG)},
    {REQUIRED(tside_frame, peak_height, "m", TO(30), "height of the bow's peak, or of the third point"), MEASURED(0.5 * IN)},
    {OPTIONAL(tside_frame, shoulder_radius, "m", ABOVE(0), TO(30), "radius of the bend between leg and flat arch, on its centreline"), MEASURED(1 * IN), APPLIES(tside_frame, shape, LEG)},
    {REQUIRED(tside_frame, foot_x, "m", TO(30), "first point, outboard of the tunnel's centreline"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, POINTS)},
    {NUMBER(tside_frame, foot_height, "m", FROM(-5), TO(20), 0, OURS, "first point, above grade"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, POINTS)},
    {REQUIRED(tside_frame, between_x, "m", TO(30), "second point, outboard of the tunnel's centreline"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, POINTS)},
    {REQUIRED(tside_frame, between_height, "m", TO(30), "second point, above grade"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, POINTS)},
    {NUMBER(tside_frame, peak_x, "m", FROM(0), TO(30), 0, OURS, "third point, outboard of the tunnel's centreline"), MEASURED(0.25 * IN), APPLIES(tside_frame, shape, POINTS)},
    {CHOICE(tside_frame, board, boards, TSIDE_NO_BOARD, "baseboard outside the bows")},
    {NUMBER(tside_frame, board_top, "m", ABOVE(0), TO(10), 10 * IN, PRACTICE, "upper edge of the baseboard, above grade"), MEASURED(0.25 * IN), APPLIES(tside_frame, board, BOARD),
     UNUSUAL_OUTSIDE(6 * IN, 18 * IN)},
    {NUMBER(tside_frame, board_stand, "m", FROM(0), TO(3), 1.5 * IN, PRACTICE, "outer face of the baseboard at that edge, level outboard of the bow's outer face"), MEASURED(0.125 * IN),
     APPLIES(tside_frame, board, BOARD)},
};
/* clang-format on */
TABLE(tside_i_frame_table, rows);

/* sin(x)/x, which the chord of an arc needs as its curvature goes to zero. */
static double sinc(double x)
{
    const double small = 1e-4; /* x^4/120, which the series leaves out, is then below a double's digits; the quotient
                                  has no value at 0 */
    return fabs(x) < small ? 1 - x * x / 6 : sin(x) / x;
}

tside_bow_point tside_i_piece_at(const tside_piece *piece, double u)
{
    double half = u < 0 ? 0 : piece->curvature * u / 2, chord = u * sinc(half);
    tside_bow_point point;
    point.x = piece->x + chord * cos(piece->heading + half);
    point.y = piece->y + chord * sin(piece->heading + half);
    point.heading = piece->heading + 2 * half;
    point.curvature = u < 0 ? 0 : piece->curvature;
    return point;
}

static const tside_piece *piece_of(const tside_path *path, double arc)
{
    int i = path->count - 1;
    while (i > 0 && arc < path->piece[i].from)
        i--;
    return path->piece + i;
}

tside_bow_point tside_i_path_at(const tside_path *path, double arc)
{
    const tside_piece *piece = piece_of(path, arc);
    return tside_i_piece_at(piece, arc - piece->from);
}

double tside_i_path_bend(const tside_path *centre, int i)
{
    const double smooth = 1e-9; /* rad: a round top is level to rounding */
    if (i < centre->count)
        return centre->piece[i].from;
    return fabs(tside_i_path_at(centre, centre->length).heading - TSIDE_PI) > smooth ? centre->length : HUGE_VAL;
}

double tside_i_path_from_bend(const tside_path *centre, double arc)
{
    double nearest = HUGE_VAL;
    for (int i = 1; i <= centre->count; i++)
        nearest = fmin(nearest, fabs(arc - tside_i_path_bend(centre, i)));
    return nearest;
}

/* Two diameters: this library's choice. */
double tside_i_bow_keep_off(const tside_bow *bow)
{
    return 2 * bow->diameter;
}

/* Adds a piece at the path's end, turned by a kink from the heading there. */
static void add_piece(tside_path *path, double length, double curvature, double kink)
{
    tside_piece *piece = path->piece + path->count;
    const tside_piece *last = piece - 1;
    tside_bow_point end = tside_i_piece_at(last, last->length); /* its place along the path has fewer digits */
    double heading = end.heading + kink;
    *piece = (tside_piece){path->length, length, curvature, end.x, end.y, heading, cos(heading), sin(heading)};
    path->length += length;
    path->count++;
}

static void begin_path(tside_path *path, double x, double y, double heading, double length, double curvature)
{
    path->count = 1;
    path->length = length;
    path->piece[0] = (tside_piece){0, length, curvature, x, y, heading, cos(heading), sin(heading)};
}

/* A path moved square to itself, outboard; an outboard kink becomes a round of that radius. */
static void offset_path(const tside_path *path, double outboard, tside_path *moved)
{
    const double smooth = 1e-12; /* rad: where pieces meet smoothly headings differ by rounding, and the line would turn
                                    about a round of no length */
    for (int i = 0; i < path->count; i++) {
        const tside_piece *piece = path->piece + i;
        double kink = i ? piece->heading - tside_i_path_at(path, piece->from - DBL_EPSILON * path->length).heading : 0;
        double stretch = 1 + piece->curvature * outboard;
        if (i && kink > smooth)
            add_piece(moved, kink * outboard, 1 / outboard, 0);
        if (i)
            add_piece(moved, piece->length * stretch, piece->curvature / stretch, 0);
        else
            begin_path(moved, piece->x + outboard * piece->sine, piece->y - outboard * piece->cosine, piece->heading,
                       piece->length * stretch, piece->curvature / stretch);
    }
}

/*
 * Height gained along an arc inverts in closed form, but loses digits as curvature goes to zero: two Newton steps give
 * them back.
 */
static double piece_height_inverse(const tside_piece *piece, double rise)
{
    const double level = 1e-6; /* sine of the heading: at an arc's top a step divides by nothing */
    double s = piece->sine, c = piece->cosine - piece->curvature * rise, u;
    if (piece->curvature == 0)
        return rise / s;
    c = c > 1 ? 1 : c < -1 ? -1 : c;
    u = (acos(c) - piece->heading) / piece->curvature;
    for (int i = 0; i < 2; i++) {
        tside_bow_point at = tside_i_piece_at(piece, u);
        if (fabs(sin(at.heading)) > level)
            u -= (at.y - piece->y - rise) / sin(at.heading);
    }
    return u;
}

/*
 * The highest point of a piece and how far along it that is: an arc's where its heading is level, back towards the
 * tunnel, or of a hollow one away from it.
 */
static double piece_top(const tside_piece *piece, double *y)
{
    double k = piece->curvature, u = piece->length;
    if (k != 0) {
        u = fmin(u, ((k > 0 ? TSIDE_PI : 0) - piece->heading) / k); /* no piece begins level */
    }
    *y = tside_i_piece_at(piece, u).y;
    return u;
}

int tside_i_path_at_height(const tside_path *path, double height, double *arc, double *top)
{
    for (int i = 0; i < path->count; i++) {
        const tside_piece *piece = path->piece + i;
        double longest = piece_top(piece, top);
        if (height <=
            *top + (i == path->count - 1 ? SLACK : 0)) { /* the top itself comes back with other last digits */
            double u = height < piece->y ? (height - piece->y) / piece->sine
                                         : piece_height_inverse(piece, height - piece->y);
            *arc = piece->from + (u > longest ? longest : u);
            return 1;
        }
    }
    return 0;
}

/* Whether a crossing lies ahead, and nearer than the nearest so far. */
static int is_nearer(double t, double distance)
{
    return t > 0 && t < distance;
}

static const double hair = 1e-12; /* of a piece, or a sine: a line through the joint of two pieces would cross neither,
                                     by the last digits of both */

/* The first piece, straight, or where an arc begins straight on below it. */
static int cross_straight(const tside_piece *piece, double x, double y, double c, double s, double *distance,
                          double *arc)
{
    double px = piece->cosine, py = piece->sine, det = c * py - s * px, dx = piece->x - x, dy = piece->y - y, u, t;
    if (fabs(det) < hair) /* along each other */
        return 0;
    t = (dx * py - dy * px) / det;
    u = (dx * s - dy * c) / det;
    if (u > (piece->curvature == 0 ? piece->length * (1 + hair) : 0))
        return 0;
    if (!is_nearer(t, *distance))
        return 0;
    *distance = t;
    *arc = piece->from + u;
    return 1;
}

/*
 * An arc through (0, 0) along its first heading holds the points q with k/2 q.q = q.n, n square to it: of a nearly
 * straight one the centre would have no digits left.
 */
static int cross_arc(const tside_piece *piece, double x, double y, double c, double s, double *distance, double *arc)
{
    double k = piece->curvature, dx = x - piece->x, dy = y - piece->y, square, far, root[2];
    double half = k / 2 * (dx * c + dy * s) - (s * piece->cosine - c * piece->sine) / 2,
           rest = k / 2 * (dx * dx + dy * dy) - (dy * piece->cosine - dx * piece->sine);
    int found = 0;
    square = half * half - k / 2 * rest; /* k/2 t^2 + 2 half t + rest = 0 */
    if (square < 0)
        return 0;
    far = half < 0 ? sqrt(square) - half : -sqrt(square) - half;
    root[0] = far / (k / 2);
    root[1] = rest / far;
    for (int i = 0; i < 2; i++) {
        double qx = dx + root[i] * c, qy = dy + root[i] * s, on, off, turn, u;
        if (!is_nearer(root[i], *distance))
            continue;
        on = qx * piece->cosine + qy * piece->sine;
        off = qy * piece->cosine - qx * piece->sine;
        /* half the turn there is turn, its sine off/|q|: an arc is its chord times their quotient */
        turn = atan2(on < 0 ? -off : off, fabs(on));
        u = off != 0 ? (on * on + off * off) * (turn / off) : on;
        if (u >= -hair * piece->length && u <= piece->length * (1 + hair)) {
            *distance = root[i];
            *arc = piece->from + u;
            found = 1;
        }
    }
    return found;
}

int tside_i_path_crossing(const tside_path *path, double x, double y, double cosine, double sine, double *distance,
                          double *arc)
{
    int found;
    *distance = HUGE_VAL;
    found = cross_straight(path->piece, x, y, cosine, sine, distance, arc);
    for (int i = 0; i < path->count; i++)
        if (path->piece[i].curvature != 0)
            found |= cross_arc(path->piece + i, x, y, cosine, sine, distance, arc);
    return found;
}

static tside_status make_flat_arch(const tside_frame *frame, double a, double h, double f, tside_path *centre,
                                   tside_fault *fault)
{
    double R = (a * a + f * f) / (2 * f), kink = atan2(R - f, a);
    if (frame->shoulder_radius_given) {
        double rho = frame->shoulder_radius, drop, begins, chi;
        if (!(rho < a)) /* a is below R; a wider bend leaves nothing of the arch above it */
            REFUSE(fault, TSIDE_CONTRADICTS, "frame.shoulder_radius", "frame.width",
                   "the shoulder's bend must be tighter than half the width", "m", rho, TSIDE_NOT_BELOW, a, 0);
        drop = (R - rho) * (R - rho) - (a - rho) * (a - rho);
        begins = h + f - R + sqrt(drop > 0 ? drop : 0);
        if (begins < 0)
            REFUSE(fault, TSIDE_CONTRADICTS, "frame.shoulder_radius", "frame.leg_height",
                   "the shoulder would begin below the foot", "m", rho, TSIDE_NO_RELATION, 0, begins);
        chi = atan2(begins - (h + f - R), a - rho);
        begin_path(centre, a, 0, TSIDE_PI / 2, begins, 0);
        add_piece(centre, rho * chi, 1 / rho, 0);
        add_piece(centre, R * (TSIDE_PI / 2 - chi), 1 / R, 0);
    } else if (h > 0) {
        begin_path(centre, a, 0, TSIDE_PI / 2, h, 0);
        add_piece(centre, R * (TSIDE_PI / 2 - kink), 1 / R, kink);
    } else
        begin_path(centre, a, 0, TSIDE_PI / 2 + kink, R * (TSIDE_PI / 2 - kink), 1 / R);
    return TSIDE_OK;
}

static tside_status make_leg_and_peak(const tside_frame *frame, tside_path *centre, tside_fault *fault)
{
    double d = frame->measured == TSIDE_OUTSIDE ? frame->tube.diameter : 0;
    double a = (frame->width - d) / 2, h = frame->leg_height, f = frame->peak_height - d / 2 - h, R;
    if (!(a > frame->tube.diameter))
        REFUSE(fault, TSIDE_CONTRADICTS, "frame.width", "frame.tube.diameter", "half the width must exceed the tube",
               "m", frame->width, TSIDE_NOT_ABOVE, 2 * frame->tube.diameter + d, 0);
    if (!(f > 0))
        REFUSE(fault, TSIDE_CONTRADICTS, "frame.peak_height", "frame.leg_height", "the peak must stand above the leg",
               "m", frame->peak_height, TSIDE_NOT_ABOVE, h + d / 2, 0);
    if (f < a)
        return make_flat_arch(frame, a, h, f, centre, fault);
    if (frame->shoulder_radius_given)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "frame.shoulder_radius", "frame.peak_height",
                              "a bow that rises as much as half its width needs no shoulder");
    R = (f * f + a * a) / (2 * a);
    if (h > 0) {
        begin_path(centre, a, 0, TSIDE_PI / 2, h, 0);
        add_piece(centre, R * atan2(f, R - a), 1 / R, 0);
    } else
        begin_path(centre, a, 0, TSIDE_PI / 2, R * atan2(f, R - a), 1 / R);
    return TSIDE_OK;
}

/*
 * The arc's tangent leaves the chord by half its turn, which is the turn at the middle point between the two part
 * chords.
 */
static tside_status make_three_points(const tside_frame *frame, tside_path *centre, tside_fault *fault)
{
    const double straight = 1e-9; /* rad: points in line, to the digits of any tape, would make an arc of millions of
                                     kilometres, whose centre has no digits left */
    double ux = frame->between_x - frame->foot_x, uy = frame->between_height - frame->foot_height;
    double vx = frame->peak_x - frame->between_x, vy = frame->peak_height - frame->between_height;
    double chord = hypot(ux + vx, uy + vy), half = atan2(ux * vy - uy * vx, ux * vx + uy * vy), heading;
    if (!(uy > 0))
        REFUSE(fault, TSIDE_CONTRADICTS, "frame.between_height", "frame.foot_height",
               "heights must rise from foot to peak", "m", frame->between_height, TSIDE_NOT_ABOVE, frame->foot_height,
               0);
    if (!(vy > 0))
        REFUSE(fault, TSIDE_CONTRADICTS, "frame.peak_height", "frame.between_height",
               "heights must rise from foot to peak", "m", frame->peak_height, TSIDE_NOT_ABOVE, frame->between_height,
               0);
    if (fabs(half) < straight)
        half = 0;
    heading = atan2(uy + vy, ux + vx) - half;
    if (!(sin(heading) > 0) || !(fabs(half) < TSIDE_PI / 2))
        return tside_i_refuse(
            fault, TSIDE_CONTRADICTS, "frame.between_x", "frame.foot_x",
            "the arc through the points must rise from its foot, and bend by less than half a circle");
    begin_path(centre, frame->foot_x, frame->foot_height, heading, chord / sinc(half), 2 * sin(half) / chord);
    return TSIDE_OK;
}

/* The face is made from the centreline: it is finite only if that is. */
static int finite_path(const tside_path *path)
{
    double sum = path->length;
    for (int i = 0; i < path->count; i++)
        sum += path->piece[i].from + path->piece[i].length + path->piece[i].curvature + path->piece[i].x +
               path->piece[i].y + path->piece[i].heading;
    return isfinite(sum);
}

static tside_status make_board(const tside_frame *frame, tside_bow *bow, tside_fault *fault)
{
    double arc, top;
    bow->board_given = frame->board == TSIDE_BOARD_OUTSIDE;
    bow->board_x = bow->board_y = 0;
    if (!bow->board_given)
        return TSIDE_OK;
    if (!tside_i_path_at_height(&bow->face, frame->board_top, &arc, &top))
        REFUSE(fault, TSIDE_CONTRADICTS, "frame.board_top", "frame.peak_height", "the baseboard stands above the bow",
               "m", frame->board_top, TSIDE_ABOVE, top, 0);
    bow->board_x = tside_i_path_at(&bow->face, arc).x + frame->board_stand;
    bow->board_y = frame->board_top;
    return TSIDE_OK;
}

tside_status tside_i_bow_make(const tside_frame *frame, tside_bow *bow, tside_fault *fault)
{
    double half;
    bow->diameter = frame->tube.diameter;
    half = bow->diameter / 2;
    if (frame->shape == TSIDE_LEG_AND_PEAK)
        TRY(make_leg_and_peak(frame, &bow->centre, fault));
    else
        TRY(make_three_points(frame, &bow->centre, fault));
    if (frame->shape == TSIDE_THREE_POINTS && frame->measured == TSIDE_OUTSIDE) {
        tside_path face = bow->centre;
        if (!(1 - face.piece[0].curvature * half > 0.5))
            REFUSE(fault, TSIDE_CONTRADICTS, "frame.between_x", "frame.tube.diameter",
                   "the bend is tighter than the tube", "m", frame->between_x, TSIDE_NO_RELATION, 0, 0);
        offset_path(&face, -half, &bow->centre);
    }
    for (int i = 0; i < bow->centre.count; i++)
        if (fabs(bow->centre.piece[i].curvature) * bow->diameter > 1)
            return tside_i_refuse(fault, TSIDE_CONTRADICTS,
                                  frame->shape == TSIDE_LEG_AND_PEAK ? "frame.shoulder_radius" : "frame.between_x",
                                  "frame.tube.diameter", "the bend is tighter than the tube");
    offset_path(&bow->centre, half, &bow->face);
    if (!finite_path(&bow->face))
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "frame", "", "the bow is not one of finite numbers");
    return make_board(frame, bow, fault);
}

tside_status tside_bow_make(const tside_frame *frame, tside_bow *bow, tside_fault *fault)
{
    tside_bow made;
    memset(&made, 0, sizeof made); /* what a bow does not have is 0: equal frames give equal bytes */
    TRY(tside_i_check(&tside_i_frame_table, "frame", frame, fault));
    TRY(tside_i_settle(&tside_i_frame_table, "frame", tside_i_bow_make(frame, &made, fault), fault));
    memcpy(bow, &made, sizeof made);
    return TSIDE_OK;
}

tside_status tside_bow_at(const tside_bow *bow, double arc, tside_bow_point *point, tside_fault *fault)
{
    if (!isfinite(arc))
        return tside_i_bound(fault, "arc", "m", 0, TSIDE_NOT_FINITE, 0);
    if (arc > bow->centre.length)
        return tside_i_bound(fault, "arc", "m", arc, TSIDE_ABOVE, bow->centre.length);
    *point = tside_i_path_at(&bow->centre, arc);
    return TSIDE_OK;
}

static tside_status at_height(const tside_path *path, double height, double *arc, tside_fault *fault)
{
    double top;
    if (!isfinite(height))
        return tside_i_bound(fault, "height", "m", 0, TSIDE_NOT_FINITE, 0);
    if (!tside_i_path_at_height(path, height, arc, &top))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "height", "", "above the bow's top", "m", height, TSIDE_ABOVE, top, 0);
    return TSIDE_OK;
}

tside_status tside_bow_at_height(const tside_bow *bow, double height, double *arc, tside_fault *fault)
{
    double at;
    TRY(at_height(&bow->centre, height, &at, fault));
    return ANSWER_NUMBER(at, arc, fault);
}

tside_status tside_bow_face(const tside_bow *bow, double height, double *x, tside_fault *fault)
{
    double arc;
    TRY(at_height(&bow->face, height, &arc, fault));
    return ANSWER_NUMBER(tside_i_path_at(&bow->face, arc).x, x, fault);
}

tside_status tside_bow_crossing(const tside_bow *bow, double x, double y, double angle, double *distance, double *arc,
                                tside_fault *fault)
{
    double near, at;
    if (!isfinite(x) || !isfinite(y) || !isfinite(angle))
        return tside_i_bound(fault, !isfinite(x) ? "x" : !isfinite(y) ? "y" : "angle", "m", 0, TSIDE_NOT_FINITE, 0);
    if (!tside_i_path_crossing(&bow->centre, x, y, cos(angle), sin(angle), &near, &at))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "angle", "", "the line never meets the bow");
    TRY(ANSWER_NUMBER(at, arc, fault));
    *distance = near; /* less than any number that is not finite */
    return TSIDE_OK;
}
