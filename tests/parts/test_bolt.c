/* SPDX-License-Identifier: MIT */
/*
 * Bolts of every size over every grip: the nut holds, tightens, and no shorter stock bolt would do. Points with sources
 * are in data/bolt.csv.
 */
#include <check.h>
#include <math.h>

#include <tunnelside/bolt.h>

#include "expect.h"

Suite *bolt_suite(void);

#define QUARTER_PI 0.78539816339744831

enum { SIZES = TSIDE_BOLT_M12 + 1, GRIPS = 3000 };

static tside_bolt usual(tside_bolt_size size, double grip)
{
    tside_bolt bolt;
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    bolt.size = size;
    bolt.grip = grip;
    return bolt;
}

/*
 * derivation: head, grip, washers, nut and two threads stand on the bolt one after another; washers are between 1 and
 * 3.5 mm thick.
 */
START_TEST(every_grip_is_held)
{
    double before = 0;
    for (int i = 1; i <= GRIPS; i++) {
        tside_bolt bolt = usual((tside_bolt_size)_i, i * 1e-4);
        tside_bolt_plan plan;
        tside_fault fault;
        tside_status status;
        double washers;
        if (bolt.grip < 0.001)
            continue;
        status = tside_bolt_choose(&bolt, &plan, &fault);
        if (status == TSIDE_CONTRADICTS) {
            double asked = fault.bound;
            bolt.washers = (int)asked;
            status = tside_bolt_choose(&bolt, &plan, &fault);
            if (status != TSIDE_OK || asked < 2)
                ck_abort_msg("size %d, grip %g: %g washers do not mend it", _i, bolt.grip, asked);
            bolt.washers--;
            if (tside_bolt_choose(&bolt, &plan, NULL) == TSIDE_OK)
                ck_abort_msg("size %d, grip %g: %d washers would have done", _i, bolt.grip, bolt.washers);
            continue;
        }
        if (status == TSIDE_OUT_OF_REACH) {
            if (fault.bound >= bolt.grip)
                ck_abort_msg("size %d, grip %g: refused though %g is in reach", _i, bolt.grip, fault.bound);
            bolt.grip = fault.bound;
            if (tside_bolt_choose(&bolt, &plan, NULL) == TSIDE_OUT_OF_REACH)
                ck_abort_msg("size %d: the greatest grip %g is refused", _i, bolt.grip);
            continue;
        }
        if (status != TSIDE_OK)
            ck_abort_msg("size %d, grip %g: %s", _i, bolt.grip, tside_status_text((int)status));
        washers = plan.length - plan.beyond - plan.nut_height - bolt.grip;
        if (!(washers > 0.001 && washers < 0.0035))
            ck_abort_msg("size %d, grip %g: washer of %g", _i, bolt.grip, washers);
        if (!(plan.beyond >= 2 * plan.pitch - 1e-9))
            ck_abort_msg("size %d, grip %g: %g beyond the nut", _i, bolt.grip, plan.beyond);
        if (!(plan.unthreaded < bolt.grip + washers) || !(plan.thread > plan.nut_height) ||
            fabs(plan.thread + plan.unthreaded - plan.length) > 1e-12)
            ck_abort_msg("size %d, grip %g: does not tighten", _i, bolt.grip);
        if (!(plan.unthreaded >= plan.neck_depth))
            ck_abort_msg("size %d, grip %g: thread on the neck", _i, bolt.grip);
        if (plan.length < before)
            ck_abort_msg("size %d, grip %g: shorter than for a lesser grip", _i, bolt.grip);
        before = plan.length;
    }
    ck_assert(before > 0.19);
}
END_TEST

/* By hand: a 1/4 in bolt of 8 in has 1 in of thread, and a nut on a grip of 7 in meets its shank just as it is tight.
 */
START_TEST(a_nut_that_just_meets_the_shank_is_not_tight)
{
    tside_bolt bolt = usual(TSIDE_BOLT_1_4, 7 * 0.0254);
    tside_bolt_plan plan;
    tside_fault fault;
    bolt.washers = 0;
    REFUSES(tside_bolt_choose(&bolt, &plan, &fault), plan, TSIDE_CONTRADICTS, "bolt.washers", TSIDE_BELOW);
    bolt.grip += 1e-9;
    ANSWERS(tside_bolt_choose(&bolt, &plan, &fault));
    NEAR(plan.length, 8 * 0.0254, 1e-12, "length", 0);
}
END_TEST

/*
 * Every stock length is found, and no other. Inch: common practice, no published source; metric: ISO 888, from memory.
 */
START_TEST(lengths_are_those_of_the_stock)
{
    static const double inch[] = {0.75, 1,   1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3,  3.5,
                                  4,    4.5, 5,    5.5, 6,    7, 8,    9,   10,   11, 12};
    static const double metric[] = {20, 25, 30,  35,  40,  45,  50,  55,  60,  65,  70,
                                    80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200};
    enum { LENGTHS = sizeof inch / sizeof *inch };
    for (int metre = 0; metre <= 1; metre++) {
        const double *stock = metre ? metric : inch;
        double unit = metre ? 0.001 : 0.0254;
        int seen[LENGTHS] = {0};
        for (int i = 10; i < 3000; i++) {
            tside_bolt bolt = usual(metre ? TSIDE_BOLT_M6 : TSIDE_BOLT_1_4, i * 1e-4);
            tside_bolt_plan plan;
            int at = 0;
            if (tside_bolt_choose(&bolt, &plan, NULL) != TSIDE_OK)
                continue;
            while (at < LENGTHS && fabs(plan.length - stock[at] * unit) > 1e-9)
                at++;
            if (at == LENGTHS)
                ck_abort_msg("grip %g: no stock length of %g", bolt.grip, plan.length);
            if (at > 0 && stock[at - 1] * unit >= plan.length - plan.beyond + 2 * plan.pitch)
                ck_abort_msg("grip %g: %g would do", bolt.grip, stock[at - 1] * unit);
            seen[at] = 1;
        }
        for (int i = 0; i < LENGTHS; i++)
            if (!seen[i])
                ck_abort_msg("no grip has %g", stock[i]);
    }
}
END_TEST

/*
 * Thickest washers, by what they take of the bolt: ASME B18.21.1 type A (narrow 5/16; the others from memory), ISO 7089
 * and 7093-1, from memory.
 */
START_TEST(washers_take_their_thickness)
{
    static const double thick[SIZES][2] = {{0.080, 0.080}, {0.080, 0.104}, {0.080, 0.104},
                                           {0.080, 0.104}, {0.121, 0.132}, {1.8, 1.8},
                                           {1.8, 2.2},     {2.2, 2.7},     {2.7, 3.3}};
    for (int i = 0; i < SIZES; i++)
        for (int kind = 0; kind < 2; kind++) {
            tside_bolt bolt = usual((tside_bolt_size)i, 0.074);
            tside_bolt_plan plan;
            tside_fault fault;
            bolt.washer = (tside_washer)kind;
            if (tside_bolt_choose(&bolt, &plan, &fault) == TSIDE_CONTRADICTS)
                bolt.washers = (int)fault.bound;
            ANSWERS(tside_bolt_choose(&bolt, &plan, &fault));
            ck_assert_double_eq_tol((plan.length - plan.beyond - plan.nut_height - bolt.grip) / bolt.washers,
                                    thick[i][kind] * (i < TSIDE_BOLT_M6 ? 0.0254 : 0.001), 1e-9);
        }
}
END_TEST

START_TEST(sizes_are_in_order)
{
    for (int i = 0; i < SIZES; i++) {
        tside_bolt bolt = usual((tside_bolt_size)i, 0.074);
        tside_bolt_plan plan;
        double d, hole = 0;
        tside_fault fault;
        for (int clearance = 0; clearance < 3; clearance++) {
            bolt.clearance = (tside_clearance)clearance;
            ANSWERS(tside_bolt_choose(&bolt, &plan, &fault));
            ck_assert(plan.hole > plan.diameter && plan.hole > hole);
            hole = plan.hole;
        }
        d = plan.diameter;
        ck_assert(plan.neck >= d && plan.neck < 1.1 * d && plan.square_hole >= plan.neck &&
                  plan.square_hole >= plan.hole);
        ck_assert(plan.wrench > 1.4 * d && plan.wrench < 1.8 * d && plan.nut_height < d && plan.pitch < 0.21 * d);
        ck_assert(plan.washer_hole > d && plan.washer_outer > plan.wrench * 0.95);
        ck_assert(plan.stress_area > 0.6 * QUARTER_PI * d * d && plan.stress_area < QUARTER_PI * d * d);
        ck_assert_double_eq_tol(plan.edge, 1.5 * d, 1e-15);
    }
}
END_TEST

/*
 * Where a nut on a short grip just meets the shank, its washer is as thick as it is at least: ASME B18.21.1 type A,
 * ISO 7089 and 7093-1, from memory.
 */
START_TEST(nuts_stand_on_the_thinnest_washers)
{
    static const double thin[SIZES][2] = {{0.051, 0.051}, {0.051, 0.064}, {0.051, 0.064},
                                          {0.051, 0.064}, {0.074, 0.086}, {1.4, 1.4},
                                          {1.4, 1.8},     {1.8, 2.3},     {2.3, 2.7}};
    for (int i = 0; i < SIZES; i++)
        for (int kind = 0; kind < 2; kind++) {
            tside_bolt bolt = usual((tside_bolt_size)i, 0.001);
            tside_bolt_plan plan;
            double low = 0.001, high = 0.02;
            tside_fault fault;
            bolt.washer = (tside_washer)kind;
            REFUSES(tside_bolt_choose(&bolt, &plan, &fault), plan, TSIDE_CONTRADICTS, "bolt.washers", TSIDE_BELOW);
            while (high - low > 1e-10) {
                bolt.grip = (low + high) / 2;
                *(tside_bolt_choose(&bolt, &plan, NULL) == TSIDE_OK ? &high : &low) = bolt.grip;
            }
            bolt.grip = high;
            ANSWERS(tside_bolt_choose(&bolt, &plan, &fault));
            NEAR(plan.unthreaded - high, thin[i][kind] * (i < TSIDE_BOLT_M6 ? 0.0254 : 0.001), 1e-9, "thinnest washer",
                 i);
        }
}
END_TEST

/* derivation: utilisation is in proportion to the force, and two planes carry twice as much. */
START_TEST(strength_is_in_proportion)
{
    for (int grade = TSIDE_A307_A; grade <= TSIDE_CLASS_10_9; grade++) {
        tside_bolt bolt = usual(grade >= TSIDE_CLASS_4_8 ? TSIDE_BOLT_M8 : TSIDE_BOLT_5_16, 0.08);
        tside_bolt_plan one, two;
        tside_fault fault;
        bolt.grade = (tside_bolt_grade)grade;
        bolt.force_given = 1;
        bolt.force = 500;
        ANSWERS(tside_bolt_choose(&bolt, &one, &fault));
        ck_assert_double_eq_tol(one.utilisation, 500 / one.shear_limit, 1e-15);
        bolt.force = 1000;
        bolt.planes = 2;
        ANSWERS(tside_bolt_choose(&bolt, &two, &fault));
        ck_assert_double_eq_tol(two.utilisation, one.utilisation, 1e-15);
        ck_assert_double_eq_tol(two.shear_limit, 2 * one.shear_limit, 1e-9);
        bolt.grade = TSIDE_BOLT_GRADE_UNKNOWN;
        ANSWERS(tside_bolt_choose(&bolt, &two, &fault));
        ck_assert(!two.utilisation_given && two.strength_needed_given && two.strength_needed > 0);
    }
}
END_TEST

/* SAE J429, from memory: grade 2 is only as strong as grade 1 above 6 in. */
START_TEST(long_grade_2_is_weaker)
{
    tside_bolt bolt = usual(TSIDE_BOLT_3_8, 5.3 * 0.0254);
    tside_bolt_plan six, longer;
    tside_fault fault;
    bolt.grade = TSIDE_J429_2;
    ANSWERS(tside_bolt_choose(&bolt, &six, &fault));
    bolt.grip = 6.2 * 0.0254;
    ANSWERS(tside_bolt_choose(&bolt, &longer, &fault));
    ck_assert_double_eq_tol(six.length, 6 * 0.0254, 1e-12);
    ck_assert_double_eq_tol(longer.shear_limit / six.shear_limit, 60.0 / 74, 1e-12);
}
END_TEST

/* derivation: far from the end the end does not count; the nearer the less it bears. */
START_TEST(bearing_falls_towards_the_end)
{
    for (int metal = TSIDE_STEEL; metal <= TSIDE_ALUMINIUM_6061; metal++) {
        tside_bolt bolt = usual(TSIDE_BOLT_3_8, 0.08);
        tside_bolt_part part;
        tside_bearing far, near;
        tside_fault fault;
        double before = 0;
        tside_usual(TSIDE_KIND_BOLT_PART, &part);
        part.wall = 0.003;
        part.material.metal = (tside_metal)metal;
        part.material.grade = metal == TSIDE_STEEL ? TSIDE_A500_B_SHAPED : TSIDE_6061_T6;
        ANSWERS(tside_bolt_bearing(&bolt, &part, &far, &fault));
        part.edge_given = 1;
        for (int i = 15; i <= 60; i++) {
            part.edge = i * 0.1 * 0.375 * 0.0254;
            ANSWERS(tside_bolt_bearing(&bolt, &part, &near, &fault));
            ck_assert(near.limit >= before && near.limit <= far.limit);
            before = near.limit;
        }
        ck_assert_double_eq_tol(before, far.limit, 1e-9);
    }
}
END_TEST

Suite *bolt_suite(void)
{
    Suite *suite = suite_create("bolt");
    TCase *tcase = tcase_create("bolt");
    tcase_add_loop_test(tcase, every_grip_is_held, 0, SIZES);
    tcase_add_test(tcase, a_nut_that_just_meets_the_shank_is_not_tight);
    tcase_add_test(tcase, lengths_are_those_of_the_stock);
    tcase_add_test(tcase, washers_take_their_thickness);
    tcase_add_test(tcase, sizes_are_in_order);
    tcase_add_test(tcase, strength_is_in_proportion);
    tcase_add_test(tcase, long_grade_2_is_weaker);
    tcase_add_test(tcase, bearing_falls_towards_the_end);
    tcase_add_test(tcase, nuts_stand_on_the_thinnest_washers);
    suite_add_tcase(suite, tcase);
    return suite;
}
