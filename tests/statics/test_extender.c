/* SPDX-License-Identifier: MIT */
/* The extender against plane geometry done over again in the tests, its clearance against dense sampling. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "extenders.h"
#include "sides.h"

Suite *extender_suite(void);

/* --- plane geometry --- */

FOR_SIDES(a_given_angle_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout;
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = (42 + number % 40) * DEGREES; /* beyond 75 degrees too, which binds the search alone */
    layout = layout_of(&f);
    NEAR(layout.angle, f.e.angle, 0, "angle", number);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    check_geometry(&f, &layout, number);
}

FOR_SIDES(a_given_crossing_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout;
    double rate;
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = f.s.curtain.hip + 0.2 - 0.002 * (number % 50);
    f.e.member_height = f.e.crossing - 0.4;
    layout = layout_of(&f);
    NEAR(layout.bow_height, f.e.crossing, 1e-12, "crossing", number);
    NEAR(layout.bow_x, bow_x(&f.s, f.e.crossing, &rate), 1e-12, "crossing", number);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    check_geometry(&f, &layout, number);
}

FOR_SIDES(the_best_angle_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout = layout_of(&f);
    check_geometry(&f, &layout, number);
}

/* As long a tube as it takes is one of the longest stock; what stock there is it is not asked. */
FOR_SIDES(without_stock_the_best_angle_is_that_of_the_longest, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout longest, any;
    f.e.stock_given = 1;
    f.e.stock = 20;
    longest = layout_of(&f);
    f.e.stock_given = 0;
    f.e.stock = NAN;
    any = layout_of(&f);
    NEAR(any.angle, longest.angle, 0, "angle", number);
    NEAR(any.cut_length, longest.cut_length, 0, "cut length", number);
    ck_assert(any.binding == longest.binding && any.binding != TSIDE_BINDS_STOCK);
}

/* --- clearance --- */

/*
 * Least distance from the axis to the tube, by samples, less what must lie between. rough: what may hide between
 * samples.
 */
static double sampled_clear(const fitted *f, const tside_layout *l, double *rough)
{
    double least = HUGE_VAL, dx = l->bow_x - l->eye_x, dy = l->bow_height - l->eye_y, length = hypot(dx, dy);
    *rough = 0;
    for (int k = 0; k < side_parts(&f->s); k++) {
        double from, to, last = 0, before = 0;
        int how = side_part(&f->s, k, &from, &to);
        for (int i = 0; i <= SAMPLES; i++) {
            place p = side_place_as(&f->s, how, from + (to - from) * i / SAMPLES);
            double along = ((p.x - l->eye_x) * dx + (p.y - l->eye_y) * dy) / length,
                   off = fabs((p.x - l->eye_x) * dy - (p.y - l->eye_y) * dx) / length, clear;
            if (along < 0 || along > length)
                off = fmin(hypot(p.x - l->eye_x, p.y - l->eye_y), hypot(p.x - l->bow_x, p.y - l->bow_height));
            clear = off - p.radius - f->e.tube.side / 2 - f->e.bar_clearance;
            least = fmin(least, clear);
            if (i > 1)
                *rough = fmax(*rough, fabs(clear - 2 * last + before));
            before = last;
            last = clear;
        }
    }
    return least;
}

FOR_SIDES(roll_keeps_off_the_tube, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout = layout_of(&f), again;
    tside_fault fault;
    double rough, sampled = sampled_clear(&f, &layout, &rough), first = layout.clear;
    ck_assert_msg(first <= sampled + 1e-11 && first >= sampled - rough - 1e-11, "side %d: clear %.12g, sampled %.12g",
                  number, first, sampled);
    f.e.slant = TSIDE_SLANT_ANGLE; /* it would else look for one that the roll passes */
    f.e.angle = layout.angle;
    f.e.bar_clearance = first + 0.01;
    REFUSES(lay_out(&f, &again, &fault), again, TSIDE_OUT_OF_REACH, "extender.bar_clearance", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "travel");
    NEAR(fault.bound, first, 1e-12, "clearance that fits", number);
    NEAR(fault.gap, -0.01, 1e-12, "missing", number);
    f.e.bar_clearance = fault.bound;
    NEAR(layout_of(&f).clear, 0, 1e-12, "clear at the bound", number);
}

/* --- laws --- */

FOR_SIDES(lengths_scale_and_angles_do_not, 60)
{
    fitted f = random_fitted(number), g;
    tside_layout p = layout_of(&f), q;
    g.s = side_scaled(&f.s, 2);
    g.s.eye = OFFSET_EYE;
    side_make(&g.s);
    g.e = f.e;
    g.e.tube.side *= 2;
    g.e.tube.wall *= 2;
    g.e.member_height *= 2;
    g.e.end_distance *= 2;
    g.e.tail *= 2;
    g.e.spacing *= 2;
    q = layout_of(&g);
    ck_assert_int_eq((int)q.binding, (int)p.binding);
    NEAR(q.angle, p.angle, 1e-6, "angle", number); /* twice the square root of the precision */
    NEAR(q.bow_distance * q.bow_distance * q.member_distance, 8 * p.bow_distance * p.bow_distance * p.member_distance,
         1e-10, "flexibility", number);
    NEAR(q.cut_length, 2 * p.cut_length, 1e-5, "cut length", number);
    NEAR(q.eye_outboard, 2 * p.eye_outboard, 1e-10, "eye outboard", number);
    NEAR(q.clear, 2 * p.clear, 1e-5, "clear", number);
}

/* --- refusals --- */

/* A given angle breaks the bounds in their order; mended in turn by each fault's own bound, it ends laid out. */
static void mend_in_turn(fitted f, const char *field)
{
    static const int order[] = {KEEPS_MEMBER, KEEPS_SPACING, KEEPS_STOCK, KEEPS_OUTER, KEEPS_INNER};
    static const tside_relation relations[] = {TSIDE_NOT_BELOW, TSIDE_ABOVE, TSIDE_BELOW, TSIDE_BELOW, TSIDE_ABOVE};
    tside_layout layout;
    tside_fault fault;
    for (int i = 0; i < 5; i++) {
        double drop = f.s.eye_y - f.e.member_height, sB, sG, want;
        REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, names[order[i]], relations[i]);
        ck_assert_str_eq(fault.other, field);
        sB = reach_bow(&f.s, 50 * DEGREES);
        sG = drop / cos(50 * DEGREES);
        want = i == 0   ? f.s.eye_y - sB * cos(50 * DEGREES)
               : i == 1 ? sG - sB
               : i == 2 ? f.e.end_distance + sG + f.e.tail
                        : f.s.eye_x - drop * tan(50 * DEGREES);
        NEAR(fault.bound, want, 1e-11, "bound", i);
        set_bound(&f.e, order[i], fault.bound - (i == 0 ? 0.1 : 0)); /* the bolts must part somewhat */
        if (order[i] == KEEPS_OUTER)
            f.e.member_inner = f.e.member_outer - 1e-3, f.e.member_outer += 1,
            f.e.member_inner += 0.5; /* now too far outboard */
    }
    ANSWERS(lay_out(&f, &layout, &fault));
    NEAR(layout.member_x, f.e.member_inner, 1e-12, "at the member's inner end", 0);
}

START_TEST(a_given_slant_is_held_to_the_bounds_in_order)
{
    fitted f;
    tside_layout layout;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = 50 * DEGREES;
    layout = layout_of(&f);
    f.e.member_height = layout.bow_height + 0.01;
    f.e.spacing = 5;
    f.e.stock = 0.1;
    f.e.member_outer = 2;
    f.e.member_inner = 1;
    mend_in_turn(f, "extender.angle");
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = layout.bow_height;
    mend_in_turn(f, "extender.crossing");
}
END_TEST

START_TEST(out_of_reach_of_the_bow_is_refused)
{
    fitted f;
    tside_layout layout;
    tside_fault fault;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.s.eye_x = 4; /* inboard of the leg */
    f.e.member_outer = 4.4;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.slant", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "bow");
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = 0.5;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.angle", TSIDE_NO_RELATION);
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "eye_x", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "extender.crossing");
    NEAR(fault.bound, 4.5 - f.s.frame.tube.diameter / 2, 1e-12, "leg", 0);
    f.s = side_plain();
    f.e.crossing = f.s.eye_y;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.crossing", TSIDE_NOT_BELOW);
    NEAR(fault.bound, f.s.eye_y, 0, "eye", 0);
    f.e.crossing = 4.6;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.crossing", TSIDE_ABOVE);
    NEAR(fault.bound, f.s.frame.peak_height - f.s.frame.tube.diameter / 2, 1e-12, "top of the centreline", 0);
    f.e = roomy(&f.s);
    REFUSES(tside_extender_layout(&f.e, &f.s.bow, 7, f.s.eye_x, f.s.eye_y, &f.s.travel, &layout, &fault), layout,
            TSIDE_OUT_OF_REACH, "hip", TSIDE_ABOVE);
    /* of a bow that leans out 4 in 5 the face ends lower than the centreline, by 0.8 of half the tube */
    f.s.frame.shape = TSIDE_THREE_POINTS;
    f.s.frame.measured = TSIDE_CENTRELINE;
    f.s.frame.foot_x = 1, f.s.frame.between_x = 3, f.s.frame.peak_x = 5;
    f.s.frame.foot_height = 0, f.s.frame.between_height = 1.5, f.s.frame.peak_height = 3;
    ANSWERS(tside_bow_make(&f.s.frame, &f.s.bow, &fault));
    REFUSES(tside_extender_layout(&f.e, &f.s.bow, 3 - 0.2 * f.s.frame.tube.diameter, f.s.eye_x, f.s.eye_y, &f.s.travel,
                                  &layout, &fault),
            layout, TSIDE_OUT_OF_REACH, "hip", TSIDE_ABOVE);
    NEAR(fault.bound, 3 - 0.8 * f.s.frame.tube.diameter / 2, 1e-12, "top of the face", 0);
}
END_TEST

/* The member's greatest height is the crossing's; where that lies in the ground none fits, and the fault says so. */
static void check_highest_member(fitted f, double crossing, int number)
{
    tside_layout layout;
    tside_fault fault;
    if (crossing > 0) {
        REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.member_height", TSIDE_NOT_BELOW);
        NEAR(fault.bound, crossing, 1e-10, "greatest height", number);
    } else {
        REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.member_height", TSIDE_NONE_FITS);
        ck_assert(fault.bound == 0);
    }
}

START_TEST(no_member_fits_below_the_ground)
{
    int above = 0;
    double rate;
    fitted f;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.e.member_height = f.s.eye_y - 1e-3;
    f.e.slant = TSIDE_SLANT_ANGLE;
    for (int i = 1; i <= 40; i++) { /* the steeper, the lower down it meets the bow */
        double crossing;
        f.e.angle = i * DEGREES;
        crossing = f.s.eye_y - (f.s.eye_x - bow_x(&f.s, 0, &rate)) / tan(f.e.angle);
        above += crossing > 0;
        check_highest_member(f, crossing, i);
    }
    ck_assert(above > 0 && above < 40);
    f.e.slant = TSIDE_SLANT_BEST; /* an eye low down and far out: the flattest tube meets the bow highest */
    f.e.member_height = 0.299;
    f.s.eye_y = 0.3;
    for (int i = 1; i <= 20; i++) {
        f.s.eye_x = bow_x(&f.s, 0, &rate) + 0.1 * i;
        check_highest_member(f, f.s.eye_y - 0.1 * i / tan(75 * DEGREES), i);
    }
}
END_TEST

/* The eye over the arc above the leg: the crossing lies on the arc. */
START_TEST(a_crossing_above_the_leg_is_found)
{
    static const double peaks[] = {3.2, 6.2, 8}; /* flat, half circle or so, pointed */
    for (int i = 0; i < 3; i++) {
        fitted f;
        tside_layout layout;
        f.s = side_plain();
        f.s.frame.leg_height = 2.05;
        f.s.frame.peak_height = peaks[i];
        f.s.eye_y = 2.5;
        side_make(&f.s);
        f.e = roomy(&f.s);
        f.e.slant = TSIDE_SLANT_ANGLE;
        f.e.angle = 65 * DEGREES;
        layout = layout_of(&f);
        ck_assert(layout.bow_height > 2.1);
        check_geometry(&f, &layout, i);
    }
}
END_TEST

START_TEST(contradictions_and_bounds_are_named)
{
    fitted f;
    tside_layout layout;
    tside_fault fault;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.e.stock = 0;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "extender.stock", TSIDE_NOT_ABOVE);
    f.e = roomy(&f.s);
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = PI / 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "extender.angle", TSIDE_NOT_BELOW);
    f.e = roomy(&f.s);
    f.e.member_height = f.s.eye_y;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.member_height", TSIDE_NOT_BELOW);
    NEAR(fault.bound, f.s.eye_y, 0, "eye", 0);
    f.e = roomy(&f.s);
    f.e.member_inner = f.e.member_outer = 3;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.member_inner", TSIDE_NOT_BELOW);
    NEAR(fault.bound, 3, 0, "outer end", 0);
    f.e = roomy(&f.s);
    f.e.end_distance = f.e.eye_hole / 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.end_distance", TSIDE_NOT_ABOVE);
    f.e.end_distance = fault.bound + 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.e.bolt_hole = f.e.tube.side - 2 * f.e.tube.wall;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.bolt_hole", TSIDE_NOT_BELOW);
    f.e.bolt_hole = fault.bound - 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.e.end_distance = 0.1;
    f.e.eye_hole = f.e.tube.side;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.eye_hole", TSIDE_NOT_BELOW);
    f.e.eye_hole = fault.bound - 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.s.eye_x = NAN;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "eye_x", TSIDE_NOT_FINITE);
    f.s = side_plain();
    f.s.eye_y = HUGE_VAL;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_NOT_FINITE);
    f.s = side_plain();
    REFUSES(tside_extender_layout(&f.e, &f.s.bow, NAN, f.s.eye_x, f.s.eye_y, &f.s.travel, &layout, &fault), layout,
            TSIDE_OUT_OF_BOUNDS, "hip", TSIDE_NOT_FINITE);
}
END_TEST

Suite *extender_suite(void)
{
    Suite *suite = suite_create("extender");
    TCase *tcase = tcase_create("extender");
    tcase_add_test(tcase, a_given_angle_is_laid_out);
    tcase_add_test(tcase, a_given_crossing_is_laid_out);
    tcase_add_test(tcase, the_best_angle_is_laid_out);
    tcase_add_test(tcase, without_stock_the_best_angle_is_that_of_the_longest);
    tcase_add_test(tcase, roll_keeps_off_the_tube);
    tcase_add_test(tcase, lengths_scale_and_angles_do_not);
    tcase_add_test(tcase, a_given_slant_is_held_to_the_bounds_in_order);
    tcase_add_test(tcase, out_of_reach_of_the_bow_is_refused);
    tcase_add_test(tcase, no_member_fits_below_the_ground);
    tcase_add_test(tcase, a_crossing_above_the_leg_is_found);
    tcase_add_test(tcase, contradictions_and_bounds_are_named);
    suite_add_tcase(suite, tcase);
    return suite;
}
