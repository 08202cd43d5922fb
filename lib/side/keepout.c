/* SPDX-License-Identifier: MIT */
/*
 * Keep-outs: how near an end's tube and its sweeping guide come to a rectangle that must stay free. Source: derivation,
 * plane geometry.
 */
#include "side/keepout.h"

#include "base/field.h"

/* clang-format off */
static const tside_field rows[] = {
    {NUMBER(tside_keep_out, inner, "m", FROM(-60), TO(60), 0, OURS, "inboard edge, outboard of the tunnel's centreline, or as its end's level_from says")},
    {REQUIRED_FROM(tside_keep_out, outer, "m", -60, 60, "outboard edge, outboard of the tunnel's centreline, or as its end's level_from says")},
    {NUMBER(tside_keep_out, bottom, "m", FROM(-5), TO(60), 0, OURS, "lower edge, above grade")},
    {REQUIRED(tside_keep_out, top, "m", TO(60), "upper edge, above grade")},
};
/* clang-format on */
TABLE(tside_i_keep_out_table, rows);

static double clamp(double value, double low, double high)
{
    return value < low ? low : value > high ? high : value;
}

/*
 * The rectangle is convex and so is the line: the distance along the line has one valley, and its ends and the corners'
 * feet decide.
 */
static double to_point(const tside_keep_out *out, double x, double y)
{
    return hypot(x - clamp(x, out->inner, out->outer), y - clamp(y, out->bottom, out->top));
}

static double point_to_segment(double px, double py, double x1, double y1, double x2, double y2)
{
    double dx = x2 - x1, dy = y2 - y1, square = dx * dx + dy * dy,
           u = square > 0 ? clamp(((px - x1) * dx + (py - y1) * dy) / square, 0, 1) : 0;
    return hypot(px - x1 - u * dx, py - y1 - u * dy);
}

/* Whether the segment passes through the rectangle: clip it against the four edges. */
static int passes_through(const tside_keep_out *out, double x1, double y1, double x2, double y2)
{
    double from = 0, to = 1, p[4], q[4];
    p[0] = x1 - x2, q[0] = x1 - out->inner;
    p[1] = x2 - x1, q[1] = out->outer - x1;
    p[2] = y1 - y2, q[2] = y1 - out->bottom;
    p[3] = y2 - y1, q[3] = out->top - y1;
    for (int i = 0; i < 4; i++) {
        if (p[i] == 0 && q[i] < 0)
            return 0;
        if (p[i] < 0)
            from = fmax(from, q[i] / p[i]);
        if (p[i] > 0)
            to = fmin(to, q[i] / p[i]);
    }
    return from <= to;
}

double tside_i_rectangle_to_segment(const tside_keep_out *out, double x1, double y1, double x2, double y2)
{
    double least = fmin(to_point(out, x1, y1), to_point(out, x2, y2));
    if (passes_through(out, x1, y1, x2, y2))
        return 0;
    least = fmin(least, point_to_segment(out->inner, out->bottom, x1, y1, x2, y2));
    least = fmin(least, point_to_segment(out->inner, out->top, x1, y1, x2, y2));
    least = fmin(least, point_to_segment(out->outer, out->bottom, x1, y1, x2, y2));
    return fmin(least, point_to_segment(out->outer, out->top, x1, y1, x2, y2));
}

/*
 * The sweep is a sector: its two straight edges, and its arc where the rectangle's point nearest to the eye lies
 * between the leans.
 */
double tside_i_rectangle_to_sweep(const tside_keep_out *out, double x, double y, double length, double least,
                                  double greatest)
{
    double dx = clamp(x, out->inner, out->outer) - x, dy = clamp(y, out->bottom, out->top) - y, away = hypot(dx, dy),
           lean = atan2(dx, -dy);
    double edges = fmin(
        tside_i_rectangle_to_segment(out, x, y, x + length * sin(least), y - length * cos(least)),
        tside_i_rectangle_to_segment(out, x, y, x + length * sin(greatest), y - length * cos(greatest)));
    if (away == 0)
        return 0;
    if (lean >= least && lean <= greatest)
        return fmin(edges, away > length ? away - length : 0);
    return edges;
}
