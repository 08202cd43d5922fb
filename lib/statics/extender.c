/* SPDX-License-Identifier: MIT */
#include "statics/extender.h"

#include "base/field.h"
#include "base/root.h"
#include "shape/bow.h"
#include "shape/peak.h"
#include "statics/strength.h"

static const char *const slants[] = {"best", "angle", "crossing"};
static const char *const bindings[] = {"nothing", "bow", "member", "spacing", "stock", "ends", "angle"};

static const tside_field rows[] = {
    {GROUP(tside_extender, tube, square, "the square tube")},
    {GROUP(tside_extender, material, material, "its metal")},
    {CHOICE(tside_extender, slant, slants, TSIDE_SLANT_BEST, "how its angle is chosen")},
    {REQUIRED(tside_extender, angle, "rad", UNDER(TSIDE_PI / 2), "its angle from plumb"), MEASURED(1 * DEG), APPLIES(tside_extender, slant, ONLY(TSIDE_SLANT_ANGLE))},
    {REQUIRED(tside_extender, crossing, "m", TO(20), "height at which it crosses the bow's centreline"), MEASURED(0.25 * IN), APPLIES(tside_extender, slant, ONLY(TSIDE_SLANT_CROSSING))},
    {REQUIRED(tside_extender, member_height, "m", TO(20), "height of the end wall's member, to its centreline"), MEASURED(0.25 * IN)},
    {NUMBER(tside_extender, member_inner, "m", FROM(-30), TO(30), 0, OURS, "the member's inner end, outboard of the tunnel's centreline")},
    {REQUIRED(tside_extender, member_outer, "m", TO(30), "the member's outer end, outboard of the tunnel's centreline"), MEASURED(0.25 * IN)},
    {NUMBER(tside_extender, end_distance, "m", ABOVE(0), TO(1), 1 * IN, PRACTICE, "eye's hole from the tube's top end")},
    {NUMBER(tside_extender, tail, "m", FROM(0), TO(2), 2 * IN, PRACTICE, "tube below the member's bolt"), UNUSUAL_OUTSIDE(1 * IN, 3 * IN)},
    {NUMBER(tside_extender, spacing, "m", ABOVE(0), TO(10), 12 * IN, PRACTICE, "least distance between the two bolts"), UNUSUAL_OUTSIDE(10 * IN, 16 * IN)},
    {REQUIRED(tside_extender, stock, "m", TO(20), "longest tube to be had")},
    {NUMBER(tside_extender, bolt_hole, "m", ABOVE(0), TO(0.1), 11.0 / 32 * IN, "ASME B18.2.8-1999, Table 1a, normal fit for 5/16 in", "diameter of the bolts' holes")},
    {NUMBER(tside_extender, eye_hole, "m", ABOVE(0), TO(0.1), 0.375 * IN, PRACTICE, "diameter of the eye's hole")},
    {NUMBER(tside_extender, bar_clearance, "m", FROM(0), TO(1), 1 * IN, OURS, "least distance between tube and roll")},
    {NUMBER(tside_extender, spacer, "m", FROM(0), TO(1), 0, OURS, "solid spacer between the bow and the tube")},
    {NUMBER(tside_extender, eye_stand_off, "m", FROM(0), TO(1), 1.5 * IN, OURS, "guide's line from the tube's face, along the eye bolt")},
    {NUMBER(tside_extender, eye_root, "m", FROM(1e-3), TO(0.1), 0.2938 * IN, "from memory: 3/8-16 UNC minor diameter, ASME B1.1", "root diameter of the eye bolt's thread")},
    {GROUP(tside_extender, eye_material, material, "the eye bolt's metal")},
    {OPTIONAL(tside_extender, bolt_limit, "N", FROM(1), TO(1e7), "allowable shear on one bolt")},
    {OPTIONAL(tside_extender, pull_limit, "N", FROM(1), TO(1e7), "allowable pull on one bolt")},
};
TABLE(tside_i_extender_table, rows);

static const tside_field layout_rows[] = {
    {RESULT(tside_layout, angle, "rad", "angle from plumb")},
    {RESULT(tside_layout, run, "1", "level run for a rise of one")},
    {RESULT(tside_layout, eye_x, "m", "eye, outboard of the tunnel's centreline")},
    {RESULT(tside_layout, eye_y, "m", "eye, above grade")},
    {RESULT(tside_layout, bow_distance, "m", "eye to bow bolt along the tube")},
    {RESULT(tside_layout, member_distance, "m", "eye to member bolt along the tube, the check diagonal")},
    {RESULT(tside_layout, cut_length, "m", "tube as cut")},
    {RESULT(tside_layout, eye_from_top, "m", "eye's hole from the tube's top end")},
    {RESULT(tside_layout, bow_from_top, "m", "bow bolt's hole from the tube's top end")},
    {RESULT(tside_layout, member_from_top, "m", "member bolt's hole from the tube's top end")},
    {RESULT(tside_layout, overhang, "m", "eye to the bow's outer face along the tube")},
    {RESULT(tside_layout, eye_above_hip, "m", "eye above the curtain's fixing")},
    {RESULT(tside_layout, eye_outboard, "m", "eye outboard of the end bow's outer face at hip height, level")},
    {RESULT(tside_layout, bow_x, "m", "hole in the bow, outboard of the tunnel's centreline")},
    {RESULT(tside_layout, bow_height, "m", "hole in the bow, above grade")},
    {RESULT(tside_layout, bow_along, "m", "hole in the bow, along its centreline up from hip height")},
    {RESULT(tside_layout, member_x, "m", "hole in the member, outboard of the tunnel's centreline")},
    {RESULT(tside_layout, member_from_outer, "m", "hole in the member, from its outer end")},
    {RESULT(tside_layout, clear, "m", "least distance between tube and roll, beyond the clearance asked")},
    {CHOICE(tside_layout, binding, bindings, 0, "what keeps the angle from being better")},
};
TABLE(tside_i_layout_table, layout_rows);

#define STEEPEST 1e-3           /* rad from plumb: a tube any steeper runs beside the bow */
#define FLATTEST (75 * DEG)

typedef struct problem {
    const tside_extender *extender;
    const tside_bow *bow;
    double eye_x, eye_y, drop; /* drop: eye to member */
} problem;

static int cross_bow(const problem *p, double angle, double *bow_distance, double *arc)
{
    return tside_i_path_crossing(&p->bow->centre, p->eye_x, p->eye_y, -sin(angle), -cos(angle), bow_distance, arc);
}

/* Distance between the bolts; far below 0 where the tube misses the bow. */
static double between_bolts(const problem *p, double angle)
{
    double sB, arc;
    return cross_bow(p, angle, &sB, &arc) ? p->drop / cos(angle) - sB : -1e9;
}

/* sB^2 sG, to which the tip's deflection is proportional. */
static double flexibility(const problem *p, double angle)
{
    double sB, arc;
    return cross_bow(p, angle, &sB, &arc) ? sB * sB * p->drop / cos(angle) : HUGE_VAL;
}

static double spare_spacing(double angle, const void *context)
{
    const problem *p = context;
    return between_bolts(p, angle) - p->extender->spacing;
}

/* The steepest and flattest angle that longest stock and member's ends allow. */
static double flattest_for_stock(const problem *p)
{
    double most = p->extender->stock - p->extender->end_distance - p->extender->tail;
    return most >= p->drop ? acos(p->drop / most) : -1;
}

static tside_status none_fits(const problem *p, double widest, double widest_angle, double steepest, double flat_stock, double steep_ends, double flat_ends,
                              tside_fault *fault)
{
    const tside_extender *e = p->extender;
    if (widest < -1e8)
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "extender.angle", "frame", "no tube from the eye reaches the bow");
    if (widest <= 0)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.member_height", "", "the member lies above wherever the tube crosses the bow", "m", e->member_height,
                                    TSIDE_NOT_BELOW, e->member_height + widest * cos(widest_angle), 0);
    if (widest < e->spacing)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.spacing", "extender.member_height", "at no angle are the bolts so far apart", "m", e->spacing, TSIDE_ABOVE,
                                    widest, 0);
    if (flat_stock < steepest - SLACK)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.stock", "extender.spacing", "the tube would be longer than the longest stock", "m", e->stock, TSIDE_BELOW,
                                    e->end_distance + p->drop / cos(steepest) + e->tail, 0);
    if (steep_ends > fmin(flat_stock, FLATTEST) + SLACK) /* even the flattest tube meets the member's height outboard of its outer end */
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.member_outer", "extender.stock", "the tube would meet the member's height beyond its outer end", "m",
                                    e->member_outer, TSIDE_BELOW, p->eye_x - p->drop * tan(fmin(flat_stock, FLATTEST)), 0);
    REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.member_inner", "extender.spacing", "the tube would meet the member's height beyond its inner end", "m",
                                e->member_inner, TSIDE_ABOVE, p->eye_x - p->drop * tan(fmax(steepest, flat_ends)), 0);
}

/* Golden section on a stretch with one valley; the valley's place is good to the square root of the precision, its depth to all of it. */
static double stiffest(const problem *p, double low, double high)
{
    const double golden = 0.38196601125010515;
    double a = low + golden * (high - low), b = high - golden * (high - low), fa = flexibility(p, a), fb = flexibility(p, b);
    while (high - low > 1e-9) {
        if (fa <= fb) {
            high = b;
            b = a, fb = fa;
            a = low + golden * (high - low), fa = flexibility(p, a);
        } else {
            low = a;
            a = b, fa = fb;
            b = high - golden * (high - low), fb = flexibility(p, b);
        }
    }
    return (low + high) / 2;
}

/*
 * The bolts part as the tube lies flatter, so spacing gives the steepest angle; stock and the member's ends give the flattest, and the ends another steepest.
 * Between them the valley of the flexibility, or the bound on its side, is the best.
 */
static tside_status best_angle(const problem *p, double *angle, tside_binding *binding, tside_fault *fault)
{
    enum { LOOKS = 24 };
    const tside_extender *e = p->extender;
    double steep_ends = atan2(p->eye_x - e->member_outer, p->drop), flat_ends = atan2(p->eye_x - e->member_inner, p->drop), flat_stock = flattest_for_stock(p);
    double low = fmax(STEEPEST, steep_ends), high = fmin(fmin(FLATTEST, flat_stock), flat_ends), widest = -HUGE_VAL, widest_angle = STEEPEST, steepest = STEEPEST, best, best_value;
    for (int i = 0; i <= LOOKS; i++) {
        double look = STEEPEST + (FLATTEST - STEEPEST) * i / LOOKS, apart = between_bolts(p, look);
        if (apart > widest)
            widest = apart, widest_angle = look;
    }
    if (widest >= e->spacing)
        steepest = tside_i_rising_root(spare_spacing, p, STEEPEST, widest_angle);
    low = fmax(low, steepest);
    if (widest < e->spacing || low > high + SLACK)
        return none_fits(p, widest, widest_angle, steepest, flat_stock, steep_ends, flat_ends, fault);
    high = fmax(low, high);
    best = low;
    best_value = flexibility(p, best);
    for (int i = 1; i <= LOOKS; i++) {
        double look = low + (high - low) * i / LOOKS, value = flexibility(p, look);
        if (value < best_value)
            best = look, best_value = value;
    }
    *binding = TSIDE_BINDS_NOTHING;
    if (high > low) {
        double step = (high - low) / LOOKS, valley = stiffest(p, fmax(low, best - step), fmin(high, best + step));
        best = valley - low < 1e-8 ? low : high - valley < 1e-8 ? high : valley;
    }
    if (best == low)
        *binding = low == steepest ? (steepest == STEEPEST ? TSIDE_BINDS_BOW : TSIDE_BINDS_SPACING) : TSIDE_BINDS_ENDS;
    else if (best == high)
        *binding = high == flat_stock ? TSIDE_BINDS_STOCK : high == flat_ends ? TSIDE_BINDS_ENDS : TSIDE_BINDS_ANGLE;
    *angle = best;
    return TSIDE_OK;
}

static tside_status given_angle(const problem *p, double angle, const char *field, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    double apart = between_bolts(p, angle), cut = e->end_distance + p->drop / cos(angle) + e->tail, x = p->eye_x - p->drop * tan(angle);
    if (apart < -1e8)
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, field, "frame", "the tube misses the bow");
    if (apart <= 0)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.member_height", field, "the member lies above the crossing", "m", e->member_height, TSIDE_NOT_BELOW,
                                    e->member_height + apart * cos(angle), 0);
    if (apart < e->spacing)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.spacing", field, "the bolts are not so far apart", "m", e->spacing, TSIDE_ABOVE, apart, 0);
    if (cut > e->stock)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.stock", field, "the tube is longer than the longest stock", "m", e->stock, TSIDE_BELOW, cut, 0);
    if (x > e->member_outer)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.member_outer", field, "the tube meets the member's height beyond its outer end", "m", e->member_outer,
                                    TSIDE_BELOW, x, 0);
    if (x < e->member_inner)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.member_inner", field, "the tube meets the member's height beyond its inner end", "m", e->member_inner,
                                    TSIDE_ABOVE, x, 0);
    return TSIDE_OK;
}

static tside_status choose_angle(const problem *p, double *angle, tside_binding *binding, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    double arc, top;
    tside_bow_point point;
    *binding = TSIDE_BINDS_NOTHING;
    switch (e->slant) {
    case TSIDE_SLANT_BEST:
        return best_angle(p, angle, binding, fault);
    case TSIDE_SLANT_ANGLE:
        *angle = e->angle;
        return given_angle(p, *angle, "extender.angle", fault);
    case TSIDE_SLANT_CROSSING:
        break;
    }
    if (!tside_i_path_at_height(&p->bow->centre, e->crossing, &arc, &top))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.crossing", "frame", "the crossing lies above the bow's top", "m", e->crossing, TSIDE_ABOVE, top, 0);
    point = tside_i_path_at(&p->bow->centre, arc);
    if (!(point.y < p->eye_y))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.crossing", "eye_y", "the crossing must lie below the eye", "m", e->crossing, TSIDE_NOT_BELOW, p->eye_y, 0);
    if (!(point.x < p->eye_x))
        REFUSE(fault, TSIDE_OUT_OF_REACH, "eye_x", "extender.crossing", "the crossing must lie inboard of the eye", "m", p->eye_x, TSIDE_NOT_ABOVE, point.x, 0);
    *angle = atan2(p->eye_x - point.x, p->eye_y - point.y);
    return given_angle(p, *angle, "extender.crossing", fault);
}

static tside_status check_input(const tside_extender *e, double eye_x, double eye_y, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_extender_table, "extender", e, fault));
    if (!isfinite(eye_x) || !isfinite(eye_y))
        return tside_i_bound(fault, isfinite(eye_x) ? "eye_y" : "eye_x", "m", 0, TSIDE_NOT_FINITE, 0);
    if (!(e->member_height < eye_y))
        REFUSE(fault, TSIDE_CONTRADICTS, "extender.member_height", "eye_y", "the member must lie below the eye", "m", e->member_height, TSIDE_NOT_BELOW, eye_y, 0);
    if (!(e->member_inner < e->member_outer))
        REFUSE(fault, TSIDE_CONTRADICTS, "extender.member_inner", "extender.member_outer", "the member's inner end must lie inboard of its outer end", "m",
                                    e->member_inner, TSIDE_NOT_BELOW, e->member_outer, 0);
    if (!(e->end_distance > e->eye_hole / 2))
        REFUSE(fault, TSIDE_CONTRADICTS, "extender.end_distance", "extender.eye_hole", "the eye's hole would break out of the tube's end", "m", e->end_distance,
                                    TSIDE_NOT_ABOVE, e->eye_hole / 2, 0);
    if (!(fmax(e->bolt_hole, e->eye_hole) < e->tube.side - 2 * e->tube.wall))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, e->bolt_hole > e->eye_hole ? "extender.bolt_hole" : "extender.eye_hole", "extender.tube.side",
                                    "the hole leaves no face of the tube", "m", fmax(e->bolt_hole, e->eye_hole), TSIDE_NOT_BELOW, e->tube.side - 2 * e->tube.wall, 0);
    return TSIDE_OK;
}

double tside_i_intrusion(const tside_i_spot *spot, const void *context)
{
    const tside_layout *tube = context;
    double dx = tube->bow_x - tube->eye_x, dy = tube->bow_height - tube->eye_y, px = spot->x - tube->eye_x, py = spot->y - tube->eye_y;
    double u = (px * dx + py * dy) / (dx * dx + dy * dy);
    u = u < 0 ? 0 : u > 1 ? 1 : u;
    px -= u * dx;
    py -= u * dy;
    return spot->r - sqrt(px * px + py * py);
}

tside_status tside_i_layout_place(const tside_extender *extender, const tside_bow *bow, double hip, double eye_x, double eye_y, tside_layout *layout, tside_fault *fault)
{
    problem p = {extender, bow, eye_x, eye_y, eye_y - extender->member_height};
    tside_bow_point hole;
    double angle = extender->angle, sB, sG, arc, hip_arc, face, ignored, hip_face;
    TRY(check_input(extender, eye_x, eye_y, fault));
    TRY(tside_bow_at_height(bow, hip, &hip_arc, fault));
    TRY(tside_bow_face(bow, hip, &hip_face, fault));
    TRY(choose_angle(&p, &angle, &layout->binding, fault));
    cross_bow(&p, angle, &sB, &arc);
    sG = p.drop / cos(angle);
    hole = tside_i_path_at(&bow->centre, arc);
    if (!tside_i_path_crossing(&bow->face, eye_x, eye_y, -sin(angle), -cos(angle), &face, &ignored))
        face = sB;
    layout->angle = angle;
    layout->run = tan(angle);
    layout->eye_x = eye_x;
    layout->eye_y = eye_y;
    layout->bow_distance = sB;
    layout->member_distance = sG;
    layout->cut_length = extender->end_distance + sG + extender->tail;
    layout->eye_from_top = extender->end_distance;
    layout->bow_from_top = extender->end_distance + sB;
    layout->member_from_top = extender->end_distance + sG;
    layout->overhang = face;
    layout->eye_above_hip = eye_y - hip;
    layout->eye_outboard = eye_x - hip_face;
    layout->bow_x = hole.x;
    layout->bow_height = hole.y;
    layout->bow_along = arc - hip_arc;
    layout->member_x = eye_x - p.drop * tan(angle);
    layout->member_from_outer = extender->member_outer - layout->member_x;
    return TSIDE_OK;
}

tside_status tside_i_layout_clear(const tside_extender *extender, double intrusion, tside_layout *layout, tside_fault *fault)
{
    layout->clear = -intrusion - (extender->tube.side / 2 + extender->bar_clearance);
    if (layout->clear < -SLACK)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.bar_clearance", "stops", "the roll would come too near the tube", "m", extender->bar_clearance, TSIDE_ABOVE,
                                    extender->bar_clearance + layout->clear, layout->clear);
    return TSIDE_OK;
}

tside_status tside_extender_layout(const tside_extender *extender, const tside_bow *bow, double hip, double eye_x, double eye_y, const tside_travel *travel,
                                   tside_layout *layout, tside_fault *fault)
{
    tside_layout made;
    tside_i_spot where;
    TRY(tside_i_layout_place(extender, bow, hip, eye_x, eye_y, &made, fault));
    TRY(tside_i_layout_clear(extender, tside_i_travel_greatest(travel, tside_i_intrusion, &made, &where), &made, fault));
    *layout = made;
    return TSIDE_OK;
}
