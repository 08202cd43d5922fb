/* SPDX-License-Identifier: MIT */
#include "geometry.h"

static const char *const lies[] = {"outboard", "inboard"};

static const tside_field rows[] = {
    {REQUIRED(tside_curtain, hip, "m", TO(20), "height of the curtain's fixing at the hip rail, above grade")},
    {REQUIRED(tside_curtain, sill, "m", TO(20), "height down to which the wall opens, above grade")},
    {NUMBER(tside_curtain, standoff, "m", FROM(0), TO(1), 1.25 * IN, PRACTICE, "level distance from the bow's outer face to the fixing"), UNUSUAL_OUTSIDE(0.75 * IN, 2 * IN)},
    {NUMBER(tside_curtain, rail_depth, "m", FROM(0), TO(1), 0, OURS, "how far the rail reaches below the fixing")},
    {NUMBER(tside_curtain, thickness, "m", FROM(0), TO(0.2), 0.15e-3, PRACTICE, "thickness of the bare curtain")},
    {NUMBER(tside_curtain, packing, "1", ABOVE(0), TO(5), 1.15, PRACTICE, "packing factor of the roll: trapped air above 1, squeezed quilts below"),
     UNUSUAL_OUTSIDE(0.6, 1.3)},
    {NUMBER(tside_curtain, areal_mass, "kg/m2", FROM(0), TO(20), 0.14, PRACTICE, "mass of the curtain per area")},
    {NUMBER(tside_curtain, wet, "kg/m2", FROM(0), TO(5), 0.035, PRACTICE, "water on the wet curtain per area"), UNUSUAL_OUTSIDE(0, 0.1)},
    {NUMBER(tside_curtain, past, "m", FROM(0), TO(3), 9 * IN, PRACTICE, "curtain past the end bow, at each end"), UNUSUAL_OUTSIDE(6 * IN, 12 * IN)},
    {CHOICE(tside_curtain, roll_lies, lies, TSIDE_OUTBOARD, "the side of the hanging curtain on which the roll lies")},
};
TABLE(tside_i_curtain_table, rows);

/* On a straight face below the hip the hull of fixing and face is one straight line: along the wall, or plumb where the wall does not lean out. */
tside_status tside_line_make(const tside_bow *bow, const tside_curtain *curtain, tside_line *line, tside_fault *fault)
{
    const tside_piece *leg = bow->face.piece;
    double arc, top, lean;
    TRY(tside_i_check(TSIDE_KIND_CURTAIN, "curtain", curtain, fault));
    if (curtain->roll_lies == TSIDE_INBOARD)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "curtain.roll_lies", "", "a roll inboard of its curtain is not modelled");
    if (!(curtain->sill < curtain->hip))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "curtain.sill", "curtain.hip", "the sill must lie below the hip", "m", curtain->sill, TSIDE_NOT_BELOW,
                                    curtain->hip, 0);
    if (!tside_i_path_at_height(&bow->face, curtain->hip, &arc, &top))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "curtain.hip", "frame.peak_height", "the hip lies above the bow's top", "m", curtain->hip, TSIDE_ABOVE, top, 0);
    if (leg->curvature != 0 || arc > leg->length * (1 + 1e-12))
        return tside_i_refuse_value(fault, TSIDE_NOT_MODELLED, "curtain.hip", "frame", "a side whose bow is not straight below the hip is not modelled in this version", "m",
                                    curtain->hip, TSIDE_ABOVE, leg->curvature != 0 ? leg->y : leg->y + leg->length * sin(leg->heading), 0);
    lean = leg->heading - TSIDE_PI / 2;
    line->x = tside_i_path_at(&bow->face, arc).x + curtain->standoff;
    line->y = curtain->hip;
    line->slope = lean > 0 ? lean : 0;
    line->gap = lean > 0 ? curtain->standoff * cos(lean) : 0;
    return TSIDE_OK;
}

tside_status tside_line_at(const tside_line *line, double distance, double *x, double *y, double *normal, tside_fault *fault)
{
    if (!isfinite(distance))
        return tside_i_bound(fault, "distance", "m", 0, TSIDE_NOT_FINITE, 0);
    if (distance < 0)
        return tside_i_bound(fault, "distance", "m", distance, TSIDE_BELOW, 0);
    *x = line->x + distance * sin(line->slope);
    *y = line->y - distance * cos(line->slope);
    *normal = line->slope;
    return TSIDE_OK;
}
