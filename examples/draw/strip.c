/* SPDX-License-Identifier: MIT */
/* The middle of a face lies half its side from either edge; once round a tube is pi d, and half round it pi d/2. */
#include "strip.h"

static double lesser(double a, double b)
{
    return a < b ? a : b;
}

face_strip strip_of_face(double side, double from_top, double beyond, double diameter, strip_face face)
{
    const double behind = lesser(beyond, STRIP_BEHIND), ahead = lesser(from_top, STRIP_LENGTH - behind);
    const int mirrored = face == FACE_WALL;
    return (face_strip){
        .length = ahead + behind,
        .width = side,
        .hole = {mirrored ? behind : ahead, side / 2},
        .diameter = diameter,
        .ahead = ahead,
        .at_top = ahead >= from_top,
        .top_at_right = mirrored,
    };
}

bow_strip strip_of_bow(double tube, double width, double diameter)
{
    const double round = 3.14159265358979323846 * tube;
    return (bow_strip){
        .length = round,
        .holes = {{round / 4, width / 2}, {round / 4 + round / 2, width / 2}},
        .diameter = diameter,
    };
}
