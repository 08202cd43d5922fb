/* SPDX-License-Identifier: MIT */
/*
 * The extender: a tube from the guide's eye past the bow to a member of the end wall; where it crosses them, and the
 * angle at which it is stiffest. Source: derivation, plane geometry and the overhanging beam.
 */
#include "statics/extender.h"

#include "base/field.h"
#include "base/root.h"
#include "parts/tube.h"
#include "shape/bow.h"
#include "statics/strength.h"

static const char *const slants[] = {"best", "angle", "crossing"};
#define INCH WITH_INCH(tside_extender)
#define METRIC WITH_METRIC(tside_extender)

static const char *const bindings[] = {"nothing", "bow", "member", "spacing", "stock", "ends", "angle", "kink"};

/* clang-format off */
static const tside_field rows[] = {
    {GROUP(tside_extender, tube, square, "the square tube")},
    {GROUP(tside_extender, material, material, "its metal")},
    {HARDWARE(tside_extender)},
    {CHOICE(tside_extender, slant, slants, TSIDE_SLANT_BEST, "how its angle is chosen")},
    {REQUIRED(tside_extender, angle, "rad", UNDER(TSIDE_PI / 2), "its angle from plumb"), MEASURED(1 * DEG), APPLIES(tside_extender, slant, ONLY(TSIDE_SLANT_ANGLE))},
    {REQUIRED(tside_extender, crossing, "m", TO(20), "height at which it crosses the bow's centreline"), MEASURED(0.25 * IN), APPLIES(tside_extender, slant, ONLY(TSIDE_SLANT_CROSSING))},
    {REQUIRED(tside_extender, member_height, "m", TO(20), "height of the end wall's member, to its centreline"), MEASURED(0.25 * IN)},
    {NUMBER(tside_extender, member_inner, "m", FROM(-30), TO(30), 0, OURS, "the member's inner end, outboard of the tunnel's centreline; of a side's end, as level_from says")},
    {REQUIRED_FROM(tside_extender, member_outer, "m", -30, 30, "the member's outer end, outboard of the tunnel's centreline; of a side's end, as level_from says"), MEASURED(0.25 * IN)},
    {NUMBER(tside_extender, end_distance, "m", ABOVE(0), TO(1), 1 * IN, PRACTICE, "eye's hole from the tube's top end")},
    {NUMBER(tside_extender, tail, "m", FROM(0), TO(2), 2 * IN, PRACTICE, "tube below the member's bolt"), UNUSUAL_OUTSIDE(1 * IN, 3 * IN)},
    {NUMBER(tside_extender, spacing, "m", ABOVE(0), TO(10), 12 * IN, PRACTICE, "least distance between the two bolts"), UNUSUAL_OUTSIDE(10 * IN, 16 * IN)},
    {OPTIONAL(tside_extender, stock, "m", ABOVE(0), TO(20), "longest tube to be had")},
    {NUMBER(tside_extender, bolt_hole, "m", ABOVE(0), TO(0.1), 11.0 / 32 * IN, "ASME B18.2.8-1999, Table 1a, normal fit for 5/16 in", "diameter of the bolts' holes"), INCH},
    {NUMBER(tside_extender, bolt_hole, "m", ABOVE(0), TO(0.1), 9 * MM, "from memory: ISO 273, medium fit for M8", "diameter of the bolts' holes"), METRIC},
    {NUMBER(tside_extender, eye_hole, "m", ABOVE(0), TO(0.1), 0.625 * IN, PRACTICE, "diameter of the eye's hole"), INCH},
    {NUMBER(tside_extender, eye_hole, "m", ABOVE(0), TO(0.1), 17.5 * MM, "from memory: ISO 273, medium fit for M16", "diameter of the eye's hole"), METRIC},
    {NUMBER(tside_extender, bar_clearance, "m", FROM(0), TO(1), 1 * IN, OURS, "least distance between tube and roll")},
    {NUMBER(tside_extender, spacer, "m", FROM(0), TO(1), 0, OURS, "solid spacer between the bow and the tube")},
    {NUMBER(tside_extender, eye_stand_off, "m", FROM(0), TO(1), 4 * IN, OURS, "guide's line from the tube's outer face, along the eye bolt"), MEASURED(0.25 * IN)},
    {NUMBER(tside_extender, eye_root, "m", FROM(1e-3), TO(0.1), 0.5135 * IN, "from memory: 5/8-11 UNC minor diameter, ASME B1.1", "root diameter of the eye bolt's thread"), INCH},
    {NUMBER(tside_extender, eye_root, "m", FROM(1e-3), TO(0.1), 13.546 * MM, "from memory: M16 with coarse pitch, d - 1.22687 P, the root of ISO 898-1's stress area", "root diameter of the eye bolt's thread"), METRIC},
    {GROUP(tside_extender, eye_material, material, "the eye bolt's metal")},
    {OPTIONAL(tside_extender, bolt_limit, "N", FROM(1), TO(1e7), "allowable shear on one bolt")},
    {OPTIONAL(tside_extender, pull_limit, "N", FROM(1), TO(1e7), "allowable pull on one bolt")},
};
/* clang-format on */
TABLE(tside_i_extender_table, rows);

/* clang-format off */
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
/* clang-format on */
TABLE(tside_i_layout_table, layout_rows);

#define STEEPEST 1e-3 /* rad from plumb: a tube any steeper runs beside the bow */
#define FLATTEST (75 * DEG)

typedef struct problem {
    const tside_extender *extender;
    const tside_bow *bow;
    double eye_x, eye_y, drop; /* drop: eye to member */
    double inner, outer;       /* the member's ends, outboard of the centreline */
    const tside_i_names *names;
    double much; /* 0, or how much stiffer above a bend the tube must be for its hole to keep off above, not below */
} problem;

/* Refuses where an end of the member is, as it was told. value, bound: m, outboard of the centreline. */
static tside_status refuse_end(const tside_i_names *names, tside_status status, const char *field, const char *other,
                               const char *reason, double value, tside_relation relation, double bound,
                               tside_fault *fault)
{
    tside_i_told told = names->level;
    told.field = field;
    return tside_i_refuse_told(fault, status, &told, other, reason, value, relation, bound, 0);
}

static int cross_bow(const problem *p, double angle, double *bow_distance, double *arc)
{
    return tside_i_path_crossing(&p->bow->centre, p->eye_x, p->eye_y, -sin(angle), -cos(angle), bow_distance, arc);
}

/* Distance between the bolts; below all numbers where the tube misses the bow. */
static double between_bolts(const problem *p, double angle)
{
    double sB, arc;
    cross_bow(p, angle, &sB, &arc);
    return p->drop / cos(angle) - sB;
}

/* The angle, between one at which the tube meets the bow and one at which it misses it, from which on it misses. */
static double edge_of_bow(const problem *p, double meets, double misses)
{
    const double last = 1e-12; /* rad: halving stops short of the last digits, at which no middle lies between */
    double sB, arc;
    while (fabs(misses - meets) > last) {
        double middle = (meets + misses) / 2;
        if (cross_bow(p, middle, &sB, &arc))
            meets = middle;
        else
            misses = middle;
    }
    return meets;
}

enum { LOOKS = 24 };

static double look(int i)
{
    return STEEPEST + (FLATTEST - STEEPEST) * i / LOOKS;
}

/*
 * The steepest and flattest angle at which the tube meets the bow; 0 where no look finds one. Seen from the eye the bow
 * is one unbroken curve: between the two the tube meets it throughout. An eye above the bow's top looks over it at flat
 * angles, and one on a bow that leans in past it at steep ones.
 */
static int reach_bow(const problem *p, double *steepest, double *flattest)
{
    double sB, arc;
    int first = 0, last = LOOKS;
    while (first <= LOOKS && !cross_bow(p, look(first), &sB, &arc))
        first++;
    while (last > first && !cross_bow(p, look(last), &sB, &arc))
        last--;
    if (first > LOOKS)
        return 0;
    *steepest = first > 0 ? edge_of_bow(p, look(first), look(first - 1)) : STEEPEST;
    *flattest = last < LOOKS ? edge_of_bow(p, look(last), look(last + 1)) : FLATTEST;
    return 1;
}

/* sB^2 sG, to which the tip's deflection is proportional. */
static double flexibility(const problem *p, double angle)
{
    double sB, arc;
    cross_bow(p, angle, &sB, &arc);
    return sB * sB * p->drop / cos(angle);
}

static double spare_spacing(double angle, const void *context)
{
    const problem *p = context;
    return between_bolts(p, angle) - p->extender->spacing;
}

/* The flattest angle that the longest stock allows, where it is known; 0 where it is too short for a plumb tube. */
static double flattest_for_stock(const problem *p)
{
    const tside_extender *e = p->extender;
    double most = e->stock - e->end_distance - e->tail;
    if (!e->stock_given)
        return TSIDE_PI / 2;
    return most >= p->drop ? acos(p->drop / most) : 0;
}

/* flattest: at which the tube meets the bow. */
static tside_status none_fits(const problem *p, double widest, double widest_angle, double steepest, double flattest,
                              double flat_stock, double steep_ends, double flat_ends, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    if (widest <= 0)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.member_height", "",
               "the member lies above wherever the tube crosses the bow", "m", e->member_height, TSIDE_NOT_BELOW,
               e->member_height + widest * cos(widest_angle), 0);
    if (widest < e->spacing)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.spacing", "extender.member_height",
               "at no angle are the bolts so far apart", "m", e->spacing, TSIDE_ABOVE, widest, 0);
    if (flat_stock < steepest - SLACK)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "extender.stock", "extender.spacing",
               "the tube would be longer than the longest stock", "m", e->stock, TSIDE_BELOW,
               e->end_distance + p->drop / cos(steepest) + e->tail, 0);
    if (steep_ends > fmin(flat_stock, flattest)) /* even the flattest tube meets its height outboard of its outer end */
        return refuse_end(p->names, TSIDE_OUT_OF_REACH, "extender.member_outer", e->stock_given ? "extender.stock" : "",
                          "the tube would meet the member's height beyond its outer end", p->outer, TSIDE_BELOW,
                          p->eye_x - p->drop * tan(fmin(flat_stock, flattest)), fault);
    return refuse_end(p->names, TSIDE_OUT_OF_REACH, "extender.member_inner", "extender.spacing",
                      "the tube would meet the member's height beyond its inner end", p->inner, TSIDE_ABOVE,
                      p->eye_x - p->drop * tan(fmax(steepest, flat_ends)), fault);
}

/*
 * Golden section on a stretch with one valley; the valley's place is good to the square root of the precision, its
 * depth to all of it.
 */
static double stiffest(const problem *p, double low, double high)
{
    const double golden = 0.38196601125010515; /* (3 - sqrt(5))/2 */
    const double root =
        1e-9; /* rad: below the root of a double's precision, where values no longer tell which side is lower */
    double a = low + golden * (high - low), b = high - golden * (high - low), fa = flexibility(p, a),
           fb = flexibility(p, b);
    while (high - low > root) {
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

/* The stiffest of all angles between two; how many valleys there are, the looks tell. */
static double stiffest_between(const problem *p, double low, double high)
{
    const double at_bound =
        1e-8; /* rad: the golden section comes near to a bound, but never to it, and what binds would go unnamed */
    double step = (high - low) / LOOKS, best = low, least = flexibility(p, low), valley;
    for (int i = 1; i <= LOOKS; i++) {
        double at = low + (high - low) * i / LOOKS, value = flexibility(p, at);
        if (value < least)
            best = at, least = value;
    }
    if (!(high > low))
        return best;
    valley = stiffest(p, fmax(low, best - step), fmin(high, best + step));
    return valley - low < at_bound ? low : high - valley < at_bound ? high : valley;
}

/* Whether the hole comes so near to a bend of the bow that it is a finding. */
static int nears_bend(const problem *p, double angle)
{
    double sB, arc;
    return cross_bow(p, angle, &sB, &arc) &&
           tside_i_path_from_bend(&p->bow->centre, arc) < tside_i_bow_keep_off(p->bow) - SLACK;
}

typedef struct aim {
    const problem *problem;
    double arc; /* m, along the bow's centreline */
} aim;

/* How far up the bow beyond an aim the tube meets it: the flatter, the farther. */
static double beyond_aim(double angle, const void *context)
{
    const aim *at = context;
    double sB, arc = at->problem->bow->centre.length;
    cross_bow(at->problem, angle, &sB, &arc);
    return arc - at->arc;
}

/* Narrows angles to those at which the tube meets the bow between two arc lengths; 0 if none does. */
static int meets_between(const problem *p, double first, double last, double *low, double *high)
{
    const aim lowest = {p, first}, highest = {p, last};
    if (first > last || beyond_aim(*high, &lowest) < 0 || beyond_aim(*low, &highest) > 0)
        return 0;
    *low = tside_i_rising_root(beyond_aim, &lowest, *low, *high);
    *high = tside_i_rising_root(beyond_aim, &highest, *low, *high);
    return 1;
}

/*
 * The best of those angles whose hole keeps off each bend of the bow; 0 if there are none. Below a bend the hole lies
 * where a tape finds it and the tube is shorter, so that one above it must be much stiffer; below and above a kink they
 * are often about as stiff, and the last digit of a measure would choose.
 */
static int best_off_bends(const problem *p, double low, double high, double *best)
{
    const tside_path *centre = &p->bow->centre;
    const double keep = tside_i_bow_keep_off(p->bow);
    double first = -HUGE_VAL, least = HUGE_VAL;
    for (int i = 1; i <= centre->count; i++) {
        double bend = tside_i_path_bend(centre, i), flattest = high, steepest = low;
        if (meets_between(p, first, bend - keep, &steepest, &flattest)) {
            double angle = stiffest_between(p, steepest, flattest), value = flexibility(p, angle);
            if (least == HUGE_VAL || p->much * value < least)
                *best = angle, least = value;
        }
        first = bend + keep;
    }
    return least < HUGE_VAL;
}

/* Where a tube at an angle meets bow and member. */
typedef struct meeting {
    double angle;
    double bow, member; /* distances from the eye */
    double arc;         /* of the bow */
} meeting;

/* A bound that the library found itself is not refused for its last digits. */
static tside_status given_angle(const problem *p, double angle, const char *field, meeting *met, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    double apart, cut, x = p->eye_x - p->drop * tan(angle);
    if (!cross_bow(p, angle, &met->bow, &met->arc))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, field, p->names->bow, "the tube misses the bow");
    met->angle = angle;
    met->member = p->drop / cos(angle);
    apart = met->member - met->bow;
    cut = e->end_distance + met->member + e->tail;
    if (!(apart > 0))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.member_height", field,
                                    "the member lies above the crossing", "m", e->member_height, TSIDE_NOT_BELOW,
                                    e->member_height + apart * cos(angle), 0);
    if (apart < e->spacing - SLACK)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.spacing", field,
                                    "the bolts are not so far apart", "m", e->spacing, TSIDE_ABOVE, apart, 0);
    if (e->stock_given && cut > e->stock + SLACK)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.stock", field,
                                    "the tube is longer than the longest stock", "m", e->stock, TSIDE_BELOW, cut, 0);
    if (x > p->outer + SLACK)
        return refuse_end(p->names, TSIDE_OUT_OF_REACH, "extender.member_outer", field,
                          "the tube meets the member's height beyond its outer end", p->outer, TSIDE_BELOW, x, fault);
    if (x < p->inner - SLACK)
        return refuse_end(p->names, TSIDE_OUT_OF_REACH, "extender.member_inner", field,
                          "the tube meets the member's height beyond its inner end", p->inner, TSIDE_ABOVE, x, fault);
    return TSIDE_OK;
}

/*
 * The bolts part as the tube lies flatter, so spacing gives the steepest angle; stock and the member's ends give the
 * flattest, and the ends another steepest; none of them beyond where the tube meets the bow. Between them the valley of
 * the flexibility, or the bound on its side, is the best.
 */
static tside_status best_angle(const problem *p, meeting *met, tside_binding *binding, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    double steep_ends = atan2(p->eye_x - p->outer, p->drop), flat_ends = atan2(p->eye_x - p->inner, p->drop),
           flat_stock = flattest_for_stock(p);
    double low, high, steep_bow, flat_bow, steepest, widest = -HUGE_VAL, widest_angle = 0, best;
    if (!reach_bow(p, &steep_bow, &flat_bow))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "extender.slant", p->names->bow,
                              "no tube from the eye reaches the bow");
    for (int i = 0; i <= LOOKS; i++) {
        double at = steep_bow + (flat_bow - steep_bow) * i / LOOKS, apart = between_bolts(p, at);
        if (apart > widest)
            widest = apart, widest_angle = at;
    }
    steepest = widest >= e->spacing ? tside_i_rising_root(spare_spacing, p, steep_bow, widest_angle) : steep_bow;
    low = fmax(steepest, steep_ends);
    high = fmin(fmin(flat_bow, flat_stock), flat_ends);
    if (widest < e->spacing || low > high + SLACK)
        return none_fits(p, widest, widest_angle, steepest, flat_bow, flat_stock, steep_ends, flat_ends, fault);
    low = fmin(low, flat_bow);
    high = fmax(low, high);
    best = stiffest_between(p, low, high);
    *binding = TSIDE_BINDS_NOTHING;
    if (best == low)
        *binding = low == steepest ? (steepest == steep_bow ? TSIDE_BINDS_BOW : TSIDE_BINDS_SPACING) : TSIDE_BINDS_ENDS;
    else if (best == high)
        *binding = high == flat_stock  ? TSIDE_BINDS_STOCK
                   : high == flat_ends ? TSIDE_BINDS_ENDS
                   : high < FLATTEST   ? TSIDE_BINDS_BOW
                                       : TSIDE_BINDS_ANGLE;
    if (p->much > 0 && nears_bend(p, best) && best_off_bends(p, low, high, &best))
        *binding = TSIDE_BINDS_KINK;
    return given_angle(p, best, "extender.slant", met, fault);
}

static tside_status choose_angle(const problem *p, meeting *met, tside_binding *binding, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    double arc, top;
    tside_bow_point point;
    *binding = TSIDE_BINDS_NOTHING;
    switch (e->slant) {
    case TSIDE_SLANT_BEST: return best_angle(p, met, binding, fault);
    case TSIDE_SLANT_ANGLE: return given_angle(p, e->angle, "extender.angle", met, fault);
    case TSIDE_SLANT_CROSSING: break;
    }
    if (!tside_i_path_at_height(&p->bow->centre, p->names->ground + e->crossing, &arc, &top))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.crossing", p->names->bow,
                                    "the crossing lies above the bow's top", "m", e->crossing, TSIDE_ABOVE,
                                    top - p->names->ground, 0);
    point = tside_i_path_at(&p->bow->centre, arc);
    if (!(point.y < p->eye_y))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.crossing", p->names->eye_y.field,
                                    "the crossing must lie below the eye", "m", e->crossing, TSIDE_NOT_BELOW,
                                    p->eye_y - p->names->ground, 0);
    if (!(point.x < p->eye_x))
        return tside_i_refuse_told(fault, TSIDE_OUT_OF_REACH, &p->names->eye_x, "extender.crossing",
                                   "the crossing must lie inboard of the eye", p->eye_x, TSIDE_NOT_ABOVE, point.x, 0);
    return given_angle(p, atan2(p->eye_x - point.x, p->eye_y - point.y), "extender.crossing", met, fault);
}

/* Of an extender that passed its table's check: what contradicts itself or the eye. */
static tside_status check_input(const problem *p, tside_fault *fault)
{
    const tside_extender *e = p->extender;
    const tside_i_names *names = p->names;
    double eye_x = p->eye_x, eye_y = p->eye_y;
    tside_section section;
    TRY(tside_i_told_given(fault, &names->level, "extender.member_outer", e->member_outer));
    TRY(tside_i_within(fault, "extender", tside_i_square_section(&e->tube, 1, &section, fault)));
    if (!isfinite(eye_x) || !isfinite(eye_y))
        return tside_i_bound(fault, isfinite(eye_x) ? names->eye_y.field : names->eye_x.field, "m", 0, TSIDE_NOT_FINITE,
                             0);
    if (!(e->member_height < eye_y - names->ground))
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "extender.member_height", names->eye_y.field,
                                    "the member must lie below the eye", "m", e->member_height, TSIDE_NOT_BELOW,
                                    eye_y - names->ground, 0);
    if (!(p->inner < p->outer))
        return refuse_end(names, TSIDE_CONTRADICTS, "extender.member_inner", "extender.member_outer",
                          "the member's inner end must lie inboard of its outer end", p->inner, TSIDE_NOT_BELOW,
                          p->outer, fault);
    if (!(e->end_distance > e->eye_hole / 2))
        REFUSE(fault, TSIDE_CONTRADICTS, "extender.end_distance", "extender.eye_hole",
               "the eye's hole would break out of the tube's end", "m", e->end_distance, TSIDE_NOT_ABOVE,
               e->eye_hole / 2, 0);
    if (!(fmax(e->bolt_hole, e->eye_hole) < e->tube.side - 2 * e->tube.wall))
        return tside_i_refuse_value(
            fault, TSIDE_CONTRADICTS, e->bolt_hole > e->eye_hole ? "extender.bolt_hole" : "extender.eye_hole",
            "extender.tube.side", "the hole leaves no face of the tube", "m", fmax(e->bolt_hole, e->eye_hole),
            TSIDE_NOT_BELOW, e->tube.side - 2 * e->tube.wall, 0);
    return TSIDE_OK;
}

void tside_i_intrusion(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_i_passing *passing = context;
    const tside_layout *tube = passing->layout;
    double dx = tube->bow_x - tube->eye_x, dy = tube->bow_height - tube->eye_y, px = spot->x - tube->eye_x,
           py = spot->y - tube->eye_y;
    double u = (px * dx + py * dy) / (dx * dx + dy * dy);
    u = u < 0 ? 0 : u > 1 ? 1 : u;
    px -= u * dx;
    py -= u * dy;
    value[0] = fmax(spot->r, passing->height) - sqrt(px * px + py * py);
}

tside_status tside_i_hip_find(const tside_bow *bow, double height, const char *name, tside_i_hip *hip,
                              tside_fault *fault)
{
    double face_arc, top;
    if (!isfinite(height))
        return tside_i_bound(fault, name, "m", 0, TSIDE_NOT_FINITE, 0);
    if (!tside_i_path_at_height(&bow->centre, height, &hip->arc, &top) ||
        !tside_i_path_at_height(&bow->face, height, &face_arc, &top))
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, name, "", "above the bow's top", "m", height,
                                    TSIDE_ABOVE, top, 0);
    hip->height = height;
    hip->face = tside_i_path_at(&bow->face, face_arc).x;
    return TSIDE_OK;
}

static tside_status place(const problem *p, const tside_i_hip *hip, tside_layout *layout, tside_fault *fault)
{
    const tside_extender *extender = p->extender;
    tside_bow_point hole;
    meeting met;
    double face, ignored;
    TRY(choose_angle(p, &met, &layout->binding, fault));
    hole = tside_i_path_at(&p->bow->centre, met.arc);
    if (!tside_i_path_crossing(&p->bow->face, p->eye_x, p->eye_y, -sin(met.angle), -cos(met.angle), &face, &ignored))
        face = met.bow;
    layout->angle = met.angle;
    layout->run = tan(met.angle);
    layout->eye_x = p->eye_x;
    layout->eye_y = p->eye_y;
    layout->bow_distance = met.bow;
    layout->member_distance = met.member;
    layout->cut_length = extender->end_distance + met.member + extender->tail;
    layout->eye_from_top = extender->end_distance;
    layout->bow_from_top = extender->end_distance + met.bow;
    layout->member_from_top = extender->end_distance + met.member;
    layout->overhang = face;
    layout->eye_above_hip = p->eye_y - hip->height;
    layout->eye_outboard = p->eye_x - hip->face;
    layout->bow_x = hole.x;
    layout->bow_height = hole.y;
    layout->bow_along = met.arc - hip->arc;
    layout->member_x = p->eye_x - p->drop * tan(met.angle);
    layout->member_from_outer = p->outer - layout->member_x;
    return TSIDE_OK;
}

/* How far the roll stays clear of the tube, beyond the clearance asked, from its greatest intrusion. */
static double clear_of(const tside_extender *extender, double intrusion)
{
    return -intrusion - (extender->tube.side / 2 + extender->bar_clearance);
}

/* The same, of a whole travel. */
static double clear_on(const tside_i_track *track, const tside_extender *extender, const tside_layout *layout,
                       double beside)
{
    const tside_i_passing passing = {layout, beside};
    tside_i_spot where;
    return clear_of(extender, tside_i_track_greatest(track, tside_i_intrusion, &passing, &where));
}

tside_status tside_i_layout_place(const tside_extender *extender, const tside_bow *bow, const tside_i_hip *hip,
                                  double eye_x, double eye_y, const tside_i_track *track, double beside,
                                  const tside_i_names *names, tside_layout *layout, tside_fault *fault)
{
    problem p = {extender,
                 bow,
                 eye_x,
                 eye_y,
                 eye_y - names->ground - extender->member_height,
                 tside_i_of_told(&names->level, extender->member_inner),
                 tside_i_of_told(&names->level, extender->member_outer),
                 names,
                 0};
    static const double much[] = {2, 1, 0}; /* this library's choice; a hole near a kink can be borne, a tube in the
                                               roll's way cannot */
    double clear, most = -HUGE_VAL;
    tside_layout tried;
    TRY(check_input(&p, fault));
    for (size_t i = 0; i < sizeof much / sizeof *much && most < -SLACK; i++) {
        p.much = much[i];
        TRY(place(&p, hip, &tried, fault));
        clear = i || tried.binding == TSIDE_BINDS_KINK ? clear_on(track, extender, &tried, beside) : HUGE_VAL;
        if (clear > most)
            *layout = tried, most = clear;
    }
    return TSIDE_OK;
}

tside_status tside_i_layout_clear(const tside_extender *extender, double intrusion, const tside_i_names *names,
                                  tside_layout *layout, tside_fault *fault)
{
    layout->clear = clear_of(extender, intrusion);
    if (layout->clear < -SLACK)
        return tside_i_refuse_value(fault, TSIDE_OUT_OF_REACH, "extender.bar_clearance", names->travel,
                                    "the roll would come too near the tube", "m", extender->bar_clearance, TSIDE_ABOVE,
                                    extender->bar_clearance + layout->clear, layout->clear);
    return TSIDE_OK;
}

tside_status tside_extender_layout(const tside_extender *extender, const tside_bow *bow, double hip, double eye_x,
                                   double eye_y, const tside_travel *travel, tside_layout *layout, tside_fault *fault)
{
    static const tside_i_names names = {
        .eye_x = {.field = "eye_x"}, .eye_y = {.field = "eye_y"}, .bow = "bow", .travel = "travel"};
    tside_layout made;
    tside_i_passing roll = {&made, 0};
    tside_i_hip fixing;
    tside_i_track track;
    tside_i_spot where;
    tside_status status;
    TRY(tside_i_hip_find(bow, hip, "hip", &fixing, fault));
    TRY(tside_i_check(&tside_i_extender_table, "extender", extender, fault));
    tside_i_track_make(travel, &track);
    status = tside_i_layout_place(extender, bow, &fixing, eye_x, eye_y, &track, 0, &names, &made, fault);
    if (status == TSIDE_OK)
        status = tside_i_layout_clear(extender, tside_i_track_greatest(&track, tside_i_intrusion, &roll, &where),
                                      &names, &made, fault);
    TRY(tside_i_settle(&tside_i_extender_table, "extender", status, fault));
    return ANSWER(&tside_i_layout_table, made, layout, fault);
}
