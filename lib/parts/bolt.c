/* SPDX-License-Identifier: MIT */
/*
 * Bolts: the stock length and thread for a grip, holes, washers, what a bolt and what it bears on may carry. Sources
 * stand beside each table and formula.
 */
#include "parts/bolt.h"

#include "base/field.h"

#define OMEGA 2 /* on the shear of a bolt, and on bearing on steel: AISC 360-16, J3, from memory */

enum { MOST_WASHERS = 10 };

const char *const tside_i_bolt_sizes[TSIDE_I_BOLT_SIZES] = {"1/4", "5/16", "3/8", "7/16", "1/2",
                                                            "M6",  "M8",   "M10", "M12"};
static const char *const clearance_names[] = {"close", "normal", "loose"};
const char *const tside_i_washers[TSIDE_I_WASHERS] = {"narrow", "wide"};
static const char *const grade_names[] = {"unknown", "given",     "A307_A",    "J429_2",    "J429_5",
                                          "J429_8",  "class_4_8", "class_8_8", "class_10_9"};

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_bolt, size, tside_i_bolt_sizes, TSIDE_BOLT_5_16, "nominal diameter")},
    {REQUIRED_FROM(tside_bolt, grip, "m", 0.001, 0.4, "between head and nut, without washers")},
    {CHOICE(tside_bolt, washer, tside_i_washers, TSIDE_WASHER_NARROW, "kind of washer under the nut")},
    {COUNT(tside_bolt, washers, 0, MOST_WASHERS, 1, PRACTICE, "flat washers under the nut")},
    {CHOICE(tside_bolt, clearance, clearance_names, TSIDE_NORMAL, "how much wider than the bolt its hole is")},
    {CHOICE(tside_bolt, grade, grade_names, TSIDE_BOLT_GRADE_UNKNOWN, "the bolt's grade, which sets its least tensile strength; unknown: a utilisation becomes the strength it needs")},
    {REQUIRED_FROM(tside_bolt, shear_limit, "N", 1, 1e7, "allowable shear in one plane, by its maker"), APPLIES(tside_bolt, grade, ONLY(TSIDE_BOLT_GRADE_GIVEN))},
    {COUNT(tside_bolt, planes, 1, 2, 1, OURS, "planes in which it is sheared")},
    {OPTIONAL(tside_bolt, force, "N", FROM(0), TO(1e7), "across the bolt")},
};
/* clang-format on */
TABLE(tside_i_bolt_table, rows);

/* clang-format off */
static const tside_field plan_rows[] = {
    {RESULT(tside_bolt_plan, diameter, "m", "nominal diameter")},
    {RESULT(tside_bolt_plan, pitch, "m", "from thread to thread")},
    {RESULT(tside_bolt_plan, length, "m", "to buy, from under the head")},
    {RESULT(tside_bolt_plan, thread, "m", "of it threaded, at least")},
    {RESULT(tside_bolt_plan, unthreaded, "m", "of it not threaded, from under the head, at most")},
    {RESULT(tside_bolt_plan, beyond, "m", "what stands out of the nut, at least")},
    {RESULT(tside_bolt_plan, hole, "m", "diameter of the round hole")},
    {RESULT(tside_bolt_plan, square_hole, "m", "side of the square hole for the neck")},
    {RESULT(tside_bolt_plan, neck, "m", "side of the square neck, at most")},
    {RESULT(tside_bolt_plan, neck_depth, "m", "depth of the square neck under the head, at most")},
    {RESULT(tside_bolt_plan, nut_height, "m", "height of the nut, at most")},
    {RESULT(tside_bolt_plan, wrench, "m", "across the nut's flats")},
    {RESULT(tside_bolt_plan, washer_hole, "m", "washer's inner diameter")},
    {RESULT(tside_bolt_plan, washer_outer, "m", "washer's outer diameter")},
    {RESULT(tside_bolt_plan, edge, "m", "hole's centre to any edge or end, at least")},
    {RESULT(tside_bolt_plan, stress_area, "m2", "stress area of the thread")},
    {RESULT_OPTIONAL(tside_bolt_plan, shear_limit, "N", "allowable on the bolt, in all its planes")},
    {RESULT_OPTIONAL(tside_bolt_plan, utilisation, "1", "force over what is allowable")},
    {RESULT_OPTIONAL(tside_bolt_plan, strength_needed, "Pa", "tensile strength that is needed at least, where none is known")},
};
/* clang-format on */
TABLE(tside_i_bolt_plan_table, plan_rows);

/* clang-format off */
static const tside_field part_rows[] = {
    {REQUIRED_FROM(tside_bolt_part, wall, "m", 1e-5, 0.1, "wall thickness")},
    {COUNT(tside_bolt_part, walls, 1, 2, 1, OURS, "walls that share the force")},
    {GROUP(tside_bolt_part, material, material, "its material")},
    {OPTIONAL(tside_bolt_part, edge, "m", ABOVE(0), TO(100), "hole's centre to the part's end, where the force acts towards it")},
};
/* clang-format on */
TABLE(tside_i_bolt_part_table, part_rows);

/* clang-format off */
static const tside_field bearing_rows[] = {
    {RESULT_OPTIONAL(tside_bearing, limit, "N", "allowable force on the part")},
    {RESULT_OPTIONAL(tside_bearing, utilisation, "1", "force over what is allowable")},
    {RESULT_OPTIONAL(tside_bearing, yield_needed, "Pa", "yield that is needed at least, where none is known")},
};
/* clang-format on */
TABLE(tside_i_bearing_table, bearing_rows);

/* --- sizes --- */

typedef struct washer {
    double hole, outer, thinnest, thickest;
} washer;

/*
 * One size, in its series' unit; the nut's height, the neck and the thickest washer are the greatest, the thinnest
 * washer the least of their tolerance.
 */
typedef struct size {
    double unit; /* m */
    double diameter, pitch, neck, neck_depth, nut_height, wrench;
    double holes[3];
    washer washers[2];
} size;

/*
 * Inch: thread ASME B1.1, coarse, from memory. Neck: ASME B18.5, table 2 (5/16 and 3/8; the others from memory). Nut:
 * ASME B18.2.2 (3/8; the others from memory). Holes: ASME B18.2.8-1999, table 1a (normal to 3/8, loose to 5/16; the
 * others from memory). Washers: ASME B18.21.1, type A (narrow 5/16; wide 3/8; the others from memory). Metric, all from
 * memory: ISO 261, 8677, 4032, 273, 7089 and 7093-1.
 */
static const size sizes[] = {
    [TSIDE_BOLT_1_4] = {IN,
                        0.25,
                        1.0 / 20,
                        0.260,
                        0.156,
                        0.226,
                        7.0 / 16,
                        {17.0 / 64, 9.0 / 32, 19.0 / 64},
                        {{0.281, 0.625, 0.051, 0.080}, {0.312, 0.734, 0.051, 0.080}}},
    [TSIDE_BOLT_5_16] = {IN,
                         0.3125,
                         1.0 / 18,
                         0.324,
                         0.187,
                         0.273,
                         1.0 / 2,
                         {21.0 / 64, 11.0 / 32, 23.0 / 64},
                         {{0.344, 0.688, 0.051, 0.080}, {0.375, 0.875, 0.064, 0.104}}},
    [TSIDE_BOLT_3_8] = {IN,
                        0.375,
                        1.0 / 16,
                        0.388,
                        0.219,
                        0.337,
                        9.0 / 16,
                        {25.0 / 64, 13.0 / 32, 27.0 / 64},
                        {{0.406, 0.812, 0.051, 0.080}, {0.438, 1.000, 0.064, 0.104}}},
    [TSIDE_BOLT_7_16] = {IN,
                         0.4375,
                         1.0 / 14,
                         0.452,
                         0.250,
                         0.385,
                         11.0 / 16,
                         {29.0 / 64, 15.0 / 32, 31.0 / 64},
                         {{0.469, 0.922, 0.051, 0.080}, {0.500, 1.250, 0.064, 0.104}}},
    [TSIDE_BOLT_1_2] = {IN,
                        0.5,
                        1.0 / 13,
                        0.515,
                        0.281,
                        0.448,
                        3.0 / 4,
                        {17.0 / 32, 9.0 / 16, 39.0 / 64},
                        {{0.531, 1.062, 0.074, 0.121}, {0.562, 1.375, 0.086, 0.132}}},
    [TSIDE_BOLT_M6] = {MM, 6, 1, 6.48, 4.6, 5.2, 10, {6.4, 6.6, 7}, {{6.4, 12, 1.4, 1.8}, {6.4, 18, 1.4, 1.8}}},
    [TSIDE_BOLT_M8] = {MM, 8, 1.25, 8.58, 5.6, 6.8, 13, {8.4, 9, 10}, {{8.4, 16, 1.4, 1.8}, {8.4, 24, 1.8, 2.2}}},
    [TSIDE_BOLT_M10] = {MM, 10, 1.5, 10.58, 6.6, 8.4, 16, {10.5, 11, 12}, {{10.5, 20, 1.8, 2.2}, {10.5, 30, 2.3, 2.7}}},
    [TSIDE_BOLT_M12] = {MM, 12, 1.75, 12.7, 8.75, 10.8, 18, {13, 13.5, 14.5}, {{13, 24, 2.3, 2.7}, {13, 37, 2.7, 3.3}}},
};

static int is_metric(tside_bolt_size which)
{
    return which >= TSIDE_BOLT_M6;
}

/*
 * Stock lengths go up by steps, each so far: the inch ones are common practice, no published source; the metric ones
 * ISO 888, from memory.
 */
typedef struct steps {
    double first;
    struct {
        double step, to;
    } part[3];
} steps;

static const steps inch_lengths = {0.75, {{0.25, 3}, {0.5, 6}, {1, 12}}},
                   metric_lengths = {20, {{5, 70}, {10, 160}, {20, 200}}};

static const double rounding =
    1e-9; /* relative, or in the series' unit: 3/4 in told in metres is not refused for its last digits */

/*
 * In the series' unit, the least stock length from a need; 0 if none is long enough. What a length lacks by rounding
 * alone it does not lack.
 */
static double stock_length(const steps *s, double need)
{
    double length = s->first;
    int i = 0;
    while (length < need - rounding) {
        while (i < 3 && length >= s->part[i].to)
            i++;
        if (i == 3)
            return 0;
        length += s->part[i].step;
    }
    return length;
}

static double longest(tside_bolt_size which)
{
    return is_metric(which) ? metric_lengths.part[2].to : inch_lengths.part[2].to;
}

/* Thread of a long enough bolt: ASME B18.5; ISO 8677, from memory. In the series' unit. */
static double full_thread(tside_bolt_size which, double length)
{
    double d = sizes[which].diameter;
    return is_metric(which) ? 2 * d + (length <= 125 ? 6 : 12) : 2 * d + (length <= 6 ? 0.25 : 0.5);
}

/*
 * At most: a thread of usual length, but three pitches from the neck where the bolt is too short for it. In the series'
 * unit.
 */
static double unthreaded(tside_bolt_size which, double length)
{
    const size *s = sizes + which;
    return fmax(length - full_thread(which, length), s->neck_depth + 3 * s->pitch);
}

/* --- length --- */

static double needed(const tside_bolt *bolt, int washers)
{
    const size *s = sizes + bolt->size;
    return bolt->grip / s->unit + washers * s->washers[bolt->washer].thickest + s->nut_height + 2 * s->pitch;
}

/* In the series' unit; 0 where no bolt is long enough. */
static double length_with(const tside_bolt *bolt, int washers)
{
    return stock_length(is_metric(bolt->size) ? &metric_lengths : &inch_lengths, needed(bolt, washers));
}

/* Whether the nut tightens before it meets the shank, on the thinnest washers. */
static int tightens(const tside_bolt *bolt, int washers, double length)
{
    const size *s = sizes + bolt->size;
    return unthreaded(bolt->size, length) < bolt->grip / s->unit + washers * s->washers[bolt->washer].thinnest;
}

static tside_status choose_length(const tside_bolt *bolt, double *length, tside_fault *fault)
{
    const size *s = sizes + bolt->size;
    int washers = bolt->washers;
    double found = length_with(bolt, washers);
    *length = found;
    if (found == 0)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "bolt.grip", "", "no stock bolt is long enough", "m", bolt->grip, TSIDE_ABOVE,
               (longest(bolt->size) - needed(bolt, washers)) * s->unit + bolt->grip, 0);
    while (found > 0 && !tightens(bolt, washers, found)) {
        washers++;
        found = washers <= MOST_WASHERS ? length_with(bolt, washers) : 0;
    }
    if (found == 0)
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "bolt.grip", "",
                              "the nut would meet the unthreaded shank, and no washers mend it");
    if (washers > bolt->washers)
        REFUSE(fault, TSIDE_CONTRADICTS, "bolt.washers", "bolt.grip",
               "the nut would meet the unthreaded shank before it is tight", "1", bolt->washers, TSIDE_BELOW, washers,
               0);
    return TSIDE_OK;
}

/* --- strength --- */

/* Least tensile strengths, all from memory of the named standard. */
static const struct {
    int metric;
    double strength; /* Pa */
} grades[] = {
    [TSIDE_A307_A] = {0, 60 * KSI},       [TSIDE_J429_2] = {0, 74 * KSI},     [TSIDE_J429_5] = {0, 120 * KSI},
    [TSIDE_J429_8] = {0, 150 * KSI},      [TSIDE_CLASS_4_8] = {1, 420 * MPA}, [TSIDE_CLASS_8_8] = {1, 800 * MPA},
    [TSIDE_CLASS_10_9] = {1, 1040 * MPA},
};

static double tensile_strength(const tside_bolt *bolt, double length)
{
    if (bolt->grade == TSIDE_J429_2 && length > 6)
        return 60 * KSI;
    return grades[bolt->grade].strength;
}

/* The thread's stress area: ASME B1.1 (0.9743 pitches) and ISO 898-1 (0.9382), from memory. In m2. */
static double stress_area(tside_bolt_size which)
{
    const size *s = sizes + which;
    double d = (s->diameter - (is_metric(which) ? 0.9382 : 0.9743) * s->pitch) * s->unit;
    return TSIDE_PI / 4 * d * d;
}

static void answer_strength(const tside_bolt *bolt, double length, tside_bolt_plan *plan)
{
    double area = bolt->planes * plan->stress_area;
    plan->shear_limit_given = bolt->grade != TSIDE_BOLT_GRADE_UNKNOWN;
    if (bolt->grade == TSIDE_BOLT_GRADE_GIVEN)
        plan->shear_limit = bolt->planes * bolt->shear_limit;
    else if (plan->shear_limit_given)
        plan->shear_limit = 0.563 * tensile_strength(bolt, length) * area / OMEGA;
    if (!bolt->force_given)
        return;
    plan->utilisation_given = plan->shear_limit_given;
    plan->strength_needed_given = !plan->shear_limit_given;
    if (plan->shear_limit_given)
        plan->utilisation = bolt->force / plan->shear_limit;
    else
        plan->strength_needed = bolt->force * OMEGA / (0.563 * area);
}

/* The round hole filed square, or as wide as the neck where that is wider. */
static double square_hole(const size *s, tside_clearance clearance)
{
    return fmax(s->holes[clearance], s->neck) * s->unit;
}

static tside_status check_bolt(const tside_bolt *bolt, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_bolt_table, "bolt", bolt, fault));
    if (bolt->grade > TSIDE_BOLT_GRADE_GIVEN && grades[bolt->grade].metric != is_metric(bolt->size))
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "bolt.grade", "bolt.size",
                              "inch bolts have the grades of inch standards, metric bolts the metric classes");
    return TSIDE_OK;
}

static double least_edge(tside_bolt_size which)
{
    return 1.5 * sizes[which].diameter * sizes[which].unit;
}

tside_status tside_bolt_choose(const tside_bolt *bolt, tside_bolt_plan *plan, tside_fault *fault)
{
    const size *s;
    const washer *w;
    double length;
    tside_bolt_plan made;
    TRY(check_bolt(bolt, fault));
    TRY(tside_i_settle(&tside_i_bolt_table, "bolt", choose_length(bolt, &length, fault), fault));
    s = sizes + bolt->size;
    w = s->washers + bolt->washer;
    made = (tside_bolt_plan){
        .diameter = s->diameter * s->unit,
        .pitch = s->pitch * s->unit,
        .length = length * s->unit,
        .thread = (length - unthreaded(bolt->size, length)) * s->unit,
        .unthreaded = unthreaded(bolt->size, length) * s->unit,
        .beyond = (length - needed(bolt, bolt->washers) + 2 * s->pitch) * s->unit,
        .hole = s->holes[bolt->clearance] * s->unit,
        .square_hole = square_hole(s, bolt->clearance),
        .neck = s->neck * s->unit,
        .neck_depth = s->neck_depth * s->unit,
        .nut_height = s->nut_height * s->unit,
        .wrench = s->wrench * s->unit,
        .washer_hole = w->hole * s->unit,
        .washer_outer = w->outer * s->unit,
        .edge = least_edge(bolt->size),
        .stress_area = stress_area(bolt->size),
    };
    answer_strength(bolt, length, &made);
    return ANSWER(&tside_i_bolt_plan_table, made, plan, fault);
}

/* --- bearing --- */

/* Allowable force on a part for each pascal of its yield, in m2. */
static double bearing_area(const tside_bolt *bolt, const tside_bolt_part *part)
{
    const size *s = sizes + bolt->size;
    double d = s->diameter * s->unit, each;
    if (part->material.metal == TSIDE_STEEL) {
        each = 1.8 * d;
        if (part->edge_given)
            each = fmin(each, 1.2 * (part->edge - square_hole(s, bolt->clearance) / 2));
        return part->walls * part->wall * each / OMEGA;
    }
    each = 2 * d;
    if (part->edge_given)
        each = fmin(each, part->edge);
    return part->walls * part->wall * each / 1.95;
}

tside_status tside_bolt_bearing(const tside_bolt *bolt, const tside_bolt_part *part, tside_bearing *bearing,
                                tside_fault *fault)
{
    tside_metal_values metal;
    double area;
    tside_bearing made;
    TRY(check_bolt(bolt, fault));
    TRY(tside_i_check(&tside_i_bolt_part_table, "part", part, fault));
    TRY(tside_i_within(fault, "part", tside_material_values(&part->material, &metal, fault)));
    if (part->edge_given && part->edge < least_edge(bolt->size) * (1 - rounding))
        REFUSE(fault, TSIDE_CONTRADICTS, "part.edge", "bolt.size", "the hole is too near the part's end for this bolt",
               "m", part->edge, TSIDE_BELOW, least_edge(bolt->size), 0);
    area = bearing_area(bolt, part);
    made = (tside_bearing){.limit_given = metal.yield_known, .limit = metal.yield * area};
    made.utilisation_given = bolt->force_given && metal.yield_known;
    made.yield_needed_given = bolt->force_given && !metal.yield_known;
    if (made.utilisation_given)
        made.utilisation = bolt->force / made.limit;
    if (made.yield_needed_given)
        made.yield_needed = bolt->force / area;
    return ANSWER(&tside_i_bearing_table, made, bearing, fault);
}
