/* SPDX-License-Identifier: MIT */
/* The best angle of an extender, against a scan of all angles. */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "extenders.h"
#include "sides.h"

Suite *slant_suite(void);

/* Its leg ends so high that the hole of the stiffest tube is far below. */
static fitted high_leg(void)
{
    fitted f;
    f.s = side_plain();
    f.s.frame.leg_height += 0.3;
    f.s.frame.peak_height += 0.3;
    side_make(&f.s);
    f.e = roomy(&f.s);
    return f;
}

/*
 * derivation: from an eye at a level distance c from a plumb leg, sB = c/sin a and sG = drop/cos a, so that sB^2 sG is
 * least where sin^2 a cos a is greatest: 2 sin a cos^2 a = sin^3 a, tan a = sqrt(2), where sin^2 a cos a = 2/(3
 * sqrt(3)).
 */
START_TEST(on_a_plumb_leg_it_is_the_arctangent_of_root_two)
{
    fitted f;
    tside_layout layout;
    double c, drop;
    f = high_leg();
    layout = layout_of(&f);
    c = f.s.eye_x - (4.5 - f.s.frame.tube.diameter / 2);
    drop = f.s.eye_y - f.e.member_height;
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    ck_assert(layout.bow_height < f.s.frame.leg_height);
    NEAR(layout.angle, atan(sqrt(2)), 1e-7, "angle", 0); /* the valley is flat to the square root of the precision */
    NEAR(layout.bow_distance * layout.bow_distance * layout.member_distance, c * c * drop * 1.5 * sqrt(3), 1e-13,
         "flexibility", 0);
}
END_TEST

static int first_broken(const fitted *f, double angle, double slack, double *flexibility)
{
    double sB = reach_bow(&f->s, angle), drop = f->s.eye_y - f->e.member_height, sG = drop / cos(angle),
           x = f->s.eye_x - drop * tan(angle);
    *flexibility = sB * sB * sG;
    return sB > 1000                                                 ? KEEPS_BOW
           : sG - sB <= 0                                            ? KEEPS_MEMBER
           : sG - sB < f->e.spacing - slack                          ? KEEPS_SPACING
           : f->e.end_distance + sG + f->e.tail > f->e.stock + slack ? KEEPS_STOCK
           : x > f->e.member_outer + slack                           ? KEEPS_OUTER
           : x < f->e.member_inner - slack                           ? KEEPS_INNER
                                                                     : KEEPS;
}

/* How high the tube meets the bow. */
static double hole_of(const fitted *f, double angle)
{
    return f->s.eye_y - reach_bow(&f->s, angle) * cos(angle);
}

/* Whether the hole in the bow keeps off where that bends otherwise. */
static int keeps_off(const fitted *f, double angle, double slack)
{
    return from_bend(&f->s, hole_of(f, angle)) >= hole_keeps_off(&f->s) - slack;
}

/* Of the angles that keep to all bounds the stiffest tube. */
typedef struct stiff {
    double flexibility, angle;
} stiff;

typedef struct scan {
    stiff all;    /* of all of them */
    stiff off[2]; /* of those whose hole keeps off the bow's bends, below the leg's top and above it */
    int fit;      /* how many angles keep to all bounds */
    int named;    /* the first bound that no angle keeps to together with those before it; KEEPS if there is none */
} scan;

static void stiffer(stiff *best, double flexibility, double angle)
{
    if (flexibility < best->flexibility)
        *best = (stiff){flexibility, angle};
}

static scan scan_angles(const fitted *f)
{
    int broken[KEEPS + 1] = {0}, keep;
    scan found = {{HUGE_VAL, 0}, {{HUGE_VAL, 0}, {HUGE_VAL, 0}}, 0, 0};
    for (int i = 0; i <= ANGLES; i++) {
        double angle = (0.1 + 74.9 * i / ANGLES) * DEGREES, flexibility;
        int first = first_broken(f, angle, 0, &flexibility);
        broken[first]++;
        if (first == KEEPS)
            stiffer(&found.all, flexibility, angle);
        if (first == KEEPS && keeps_off(f, angle, 0))
            stiffer(found.off + (f->s.frame.shape == TSIDE_LEG_AND_PEAK && hole_of(f, angle) > f->s.frame.leg_height),
                    flexibility, angle);
    }
    keep = ANGLES + 1;
    while (found.named < KEEPS && (keep -= broken[found.named]) > 0)
        found.named++;
    found.fit = broken[KEEPS];
    return found;
}

/* Whether the roll would meet the tube at an angle. */
static int roll_meets(fitted f, double angle)
{
    tside_layout layout;
    tside_fault fault;
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = angle;
    return lay_out(&f, &layout, &fault) != TSIDE_OK && !strcmp(fault.field, "extender.bar_clearance");
}

static int stands(const fitted *f, const stiff *best)
{
    return best->flexibility < HUGE_VAL && !roll_meets(*f, best->angle);
}

/*
 * The stiffest, unless its hole comes near a bend of the bow: then the one that keeps off, above the leg's top only if
 * it is twice as stiff there, or if the roll would meet the one below; where the roll lets neither pass, the stiffest.
 */
static stiff scanned_best(const fitted *f, const scan *found)
{
    const stiff *off = found->off, *first = off + (2 * off[1].flexibility < off[0].flexibility),
                *second = off + (off[1].flexibility < off[0].flexibility);
    if (keeps_off(f, found->all.angle, 0))
        return found->all;
    return stands(f, first) ? *first : stands(f, second) ? *second : found->all;
}

/*
 * The best of a side with random bounds is as good as the scan's, keeps to the bounds, and stands against the one that
 * it says binds.
 */
static void check_best(const fitted *f, const tside_layout *l, const scan *found, int number)
{
    double sG = l->member_distance, apart = sG - l->bow_distance, value, other;
    stiff best;
    ck_assert_msg(first_broken(f, l->angle, 1e-9, &value) == KEEPS, "side %d breaks %s", number,
                  names[first_broken(f, l->angle, 1e-9, &other)]);
    best = scanned_best(f, found);
    ck_assert_msg(value <= best.flexibility * (1 + 1e-9), "side %d: the scan found %.12g at %.12g, stiffer than %.12g",
                  number, best.flexibility, best.angle, value);
    ck_assert_msg(keeps_off(f, l->angle, 1e-9) == keeps_off(f, best.angle, 1e-9),
                  "side %d: does the hole keep off the bow's bends at %.12g?", number, best.angle);
    switch (l->binding) {
    case TSIDE_BINDS_NOTHING:
        ck_assert(first_broken(f, l->angle - 1e-3, 0, &other) == KEEPS && other > value);
        ck_assert(first_broken(f, l->angle + 1e-3, 0, &other) == KEEPS && other > value);
        break;
    case TSIDE_BINDS_SPACING: NEAR(apart, f->e.spacing, 1e-9, "bolts apart", number); break;
    case TSIDE_BINDS_STOCK: NEAR(l->cut_length, f->e.stock, 1e-9, "cut length", number); break;
    case TSIDE_BINDS_ENDS:
        NEAR(fmin(fabs(l->member_x - f->e.member_outer), fabs(l->member_x - f->e.member_inner)), 0, 1e-9,
             "crossing at the member's end", number);
        break;
    case TSIDE_BINDS_ANGLE: NEAR(l->angle, 75 * DEGREES, 1e-9, "angle", number); break;
    case TSIDE_BINDS_BOW: NEAR(l->bow_height, f->s.frame.peak_height, 1e-9, "crossing at the bow's top", number); break;
    case TSIDE_BINDS_KINK: ck_assert(keeps_off(f, l->angle, 1e-9) && found->all.flexibility < value); break;
    case TSIDE_BINDS_MEMBER: ck_abort_msg("side %d: it cannot bind, as the spacing does before", number);
    }
}

/*
 * A straight wall, most often leaning out, that ends so little above the hip that the eye looks over its top: a flat
 * tube misses the bow.
 */
FOR_SIDES(best_angle_never_looks_over_the_bow, 900)
{
    static int laid_out, refused, bow_binds, kink_binds;
    fitted f;
    tside_layout layout;
    tside_fault fault;
    dice d = {(uint64_t)number + 2000};
    tside_frame *frame = &f.s.frame;
    scan found;
    double share;
    f.s = side_random(number);
    if (frame->shape != TSIDE_THREE_POINTS)
        return;
    f.s.eye = BEST_EYE;
    f.s.eye_y = f.s.curtain.hip + dice_between(&d, 0.35, 0.5);
    frame->measured = TSIDE_CENTRELINE;
    share = (f.s.curtain.hip + dice_between(&d, 0.06, 0.3) - frame->foot_height) /
            (frame->peak_height - frame->foot_height);
    frame->peak_x = frame->foot_x + share * (frame->peak_x - frame->foot_x);
    frame->peak_height = frame->foot_height + share * (frame->peak_height - frame->foot_height);
    frame->between_x = (frame->foot_x + frame->peak_x) / 2;
    frame->between_height = (frame->foot_height + frame->peak_height) / 2;
    side_make(&f.s);
    f.e = roomy(&f.s);
    f.e.spacing = dice_between(&d, 0.05, 0.5);
    f.e.member_height = f.s.eye_y - dice_between(&d, 0.3, 1.2);
    f.e.member_outer = f.s.eye_x - dice_between(&d, -0.2, 1.2);
    found = scan_angles(&f);
    if (lay_out(&f, &layout, &fault) == TSIDE_OK) {
        check_geometry(&f, &layout, number);
        check_best(&f, &layout, &found, number);
        laid_out++;
        bow_binds += layout.binding == TSIDE_BINDS_BOW;
        kink_binds += layout.binding == TSIDE_BINDS_KINK;
    } else if (strcmp(fault.field, "extender.bar_clearance")) {
        ck_assert_msg(found.fit == 0, "side %d: refused for %s, and %d angles fit", number, fault.field, found.fit);
        refused++;
    }
    if (number >= 895) {
        ck_assert_int_gt(laid_out, 50);
        ck_assert_int_gt(refused, 50);
        ck_assert_int_gt(bow_binds, 10);
        ck_assert_int_gt(kink_binds, 10);
    }
}

static int was_named(const tside_fault *fault)
{
    for (int k = 0; k < KEEPS; k++)
        if (!strcmp(fault->field, names[k]))
            return k;
    return -1;
}

FOR_SIDES(best_angle_is_what_a_scan_of_all_finds, 400)
{
    static int binding[8], refused[KEEPS];
    fitted f = random_fitted(number);
    tside_layout layout;
    tside_fault fault;
    dice d = {(uint64_t)number + 1000};
    scan found;
    double bound;
    f.e.spacing = dice_between(&d, 0.1, 0.9);
    f.e.stock = dice_between(&d, 0.6, 2.5);
    f.e.member_outer = f.s.eye_x - dice_between(&d, -0.5, 2);
    f.e.member_inner = f.e.member_outer - dice_between(&d, 0.1, 2);
    f.e.member_height = f.s.eye_y - dice_between(&d, 0.05, 1.5);
    found = scan_angles(&f);
    memset(&layout, 0xa5, sizeof layout);
    if (lay_out(&f, &layout, &fault) == TSIDE_OK) {
        check_best(&f, &layout, &found, number);
        binding[layout.binding]++;
    } else if (!strcmp(fault.field, "extender.bar_clearance")) {
        ck_assert_int_gt(found.fit, 0);
    } else {
        int k = was_named(&fault);
        ck_assert_int_eq((int)fault.status, TSIDE_OUT_OF_REACH);
        ck_assert_msg(found.fit == 0, "side %d: refused for %s, and %d angles fit", number, fault.field, found.fit);
        ck_assert_msg(k == found.named, "side %d: %s named, not %s", number, fault.field, names[found.named]);
        ck_assert(k >= KEEPS_MEMBER);
        refused[k]++;
        /*
         * a little short of its bound it is refused again; with the bound in place a later one may be broken, but not
         * this one
         */
        bound = fault.bound;
        set_bound(&f.e, k, bound + (k == KEEPS_STOCK || k == KEEPS_OUTER ? -1e-6 : 1e-6));
        ck_assert(lay_out(&f, &layout, &fault) == TSIDE_OUT_OF_REACH && was_named(&fault) == k);
        set_bound(&f.e, k, bound + (k == KEEPS_MEMBER ? -1e-9 : 0));
        if (lay_out(&f, &layout, &fault) != TSIDE_OK)
            ck_assert_msg(was_named(&fault) > k || was_named(&fault) < 0, "side %d: %s refused again at its own bound",
                          number, fault.field);
    }
    if (number == 399) {
        for (int k = KEEPS_MEMBER; k < KEEPS; k++)
            ck_assert_msg(refused[k] > 0, "nothing was refused for %s", names[k]);
        ck_assert_int_gt(binding[TSIDE_BINDS_NOTHING], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_SPACING], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_STOCK], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_ENDS], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_KINK], 4);
    }
}

/* Only beside a bow that overhangs by half a right angle or so is a tube flatter than 75 degrees stiffest. */
START_TEST(no_search_goes_beyond_75_degrees)
{
    fitted f;
    tside_layout layout;
    scan found;
    f.s = side_plain();
    f.s.frame.shape = TSIDE_THREE_POINTS;
    f.s.frame.peak_height = 3;
    f.s.frame.peak_x = 5;
    f.s.frame.foot_x = 1;
    f.s.frame.between_x = 3;
    f.s.frame.between_height = 1.5;
    f.s.eye = OFFSET_EYE;
    f.s.eye_x = 4.3;
    side_make(&f.s);
    f.e = roomy(&f.s);
    found = scan_angles(&f);
    layout = layout_of(&f);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_ANGLE);
    check_best(&f, &layout, &found, 0);
    check_geometry(&f, &layout, 0);
}
END_TEST

/* Nor is one found for a member that ends farther inboard, stock or no stock; the outer end must come so far out. */
START_TEST(a_member_too_far_inboard_is_refused)
{
    fitted f = high_leg();
    tside_layout layout;
    tside_fault fault;
    f.e.stock_given = 0;
    f.e.member_inner = 0;
    f.e.member_height = f.s.eye_y - 0.5;
    f.e.member_outer = f.s.eye_x - 0.5 * tan(75 * DEGREES) - 0.01;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.member_outer", TSIDE_BELOW);
    NEAR(fault.bound, f.e.member_outer + 0.01, 1e-9, "where the flattest tube meets it", 0);
    ck_assert_str_eq(fault.other, "");
    f.e.member_outer = fault.bound;
    layout = layout_of(&f);
    NEAR(layout.angle, 75 * DEGREES, 1e-7, "flattest", 0);
}
END_TEST

/* Bounds put a little inside the best angle of all bind, each by its own name. */
START_TEST(each_bound_binds_by_its_name)
{
    fitted f;
    tside_layout free, bound;
    f = high_leg();
    free = layout_of(&f);
    f.e.spacing = free.member_distance - free.bow_distance + 0.02;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_SPACING);
    NEAR(bound.member_distance - bound.bow_distance, f.e.spacing, 1e-12, "bolts apart", 0);
    ck_assert(bound.angle > free.angle);
    f.e = roomy(&f.s);
    f.e.stock = free.cut_length - 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_STOCK);
    NEAR(bound.cut_length, f.e.stock, 1e-12, "cut length", 0);
    f.e = roomy(&f.s);
    f.e.member_outer = free.member_x - 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_ENDS);
    NEAR(bound.member_x, f.e.member_outer, 1e-12, "member's hole", 0);
    f.e = roomy(&f.s);
    f.e.member_inner = free.member_x + 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_ENDS);
    NEAR(bound.member_x, f.e.member_inner, 1e-12, "member's hole", 0);
}
END_TEST

/* A leg that ends so far above or below the hole that would be best on a long one. */
static fitted kinked(double above, double diameter)
{
    fitted f = high_leg();
    f.s.frame.leg_height = layout_of(&f).bow_height + above;
    f.s.frame.peak_height = f.s.frame.leg_height + 2.2;
    f.s.frame.tube.diameter = diameter;
    side_make(&f.s);
    return f;
}

/*
 * A hole that would lie in the leg's top or near it keeps off by just two diameters: below it, though somewhat stiffer
 * above, or above it where the roll is in the way of the tube below, or the member ends too far inboard for it.
 */
START_TEST(its_hole_keeps_off_the_kink)
{
    int below = 0, though_softer = 0, roll = 0, outer = 0;
    for (int i = -20; i <= 20; i++) {
        fitted f = kinked(0.02 * i, i % 2 ? 0.06 : 0.12);
        fitted bound;
        tside_layout off = layout_of(&f), stock;
        scan found = scan_angles(&f);
        check_best(&f, &off, &found, i);
        if (off.binding != TSIDE_BINDS_KINK)
            continue;
        NEAR(from_bend(&f.s, off.bow_height), hole_keeps_off(&f.s), 1e-9, "hole to kink", i);
        if (off.bow_height > f.s.frame.leg_height) {
            roll += roll_meets(f, found.off[0].angle);
            continue;
        }
        below++;
        bound = f;
        bound.e.stock = off.cut_length; /* no farther up the bow than it keeps off: no kink moves it there */
        stock = layout_of(&bound);
        ck_assert_int_eq((int)stock.binding, TSIDE_BINDS_STOCK);
        NEAR(stock.angle, off.angle, 1e-9, "by stock", i);
        though_softer += found.off[1].flexibility < found.off[0].flexibility;
        f.e.member_outer = off.member_x - 1e-3;
        off = layout_of(&f);
        outer += off.binding == TSIDE_BINDS_KINK && off.bow_height > f.s.frame.leg_height;
    }
    ck_assert_msg(below > 4 && though_softer > 1 && roll > 1 && outer > 2,
                  "%d below, %d of them softer, above %d for the roll and %d for the member", below, though_softer,
                  roll, outer);
}
END_TEST

/* A tube that keeps off the kink and leaves the roll just its clearance is not given up for a last digit. */
START_TEST(a_clearance_just_kept_is_kept)
{
    for (int i = -60; i <= 60; i++) {
        fitted f = kinked(0.0015 * i, 0.06);
        tside_layout off = layout_of(&f);
        ck_assert_int_eq((int)off.binding, TSIDE_BINDS_KINK);
        f.e.bar_clearance += off.clear;
        off = layout_of(&f);
        NEAR(off.clear, 0, 1e-12, "clear", i);
        ck_assert_int_eq((int)off.binding, TSIDE_BINDS_KINK);
    }
}
END_TEST

/*
 * Where the roll would meet the tube that keeps off the kink, the stiffest stands; where it meets that too, the
 * refusal's bound is the greatest clearance that one of the two leaves.
 */
START_TEST(rather_a_hole_in_the_kink_than_a_tube_in_the_rolls_way)
{
    int yields = 0;
    for (int i = -3; i <= 3; i++) {
        double most;
        fitted f = kinked(0.03 * i, 0.06);
        tside_layout off = layout_of(&f), stiffest;
        tside_fault fault;
        ck_assert_int_eq((int)off.binding, TSIDE_BINDS_KINK);
        f.e.bar_clearance = off.clear + 1e-6;
        if (lay_out(&f, &stiffest, &fault) == TSIDE_OK) {
            ck_assert(stiffest.binding == TSIDE_BINDS_NOTHING &&
                      from_bend(&f.s, stiffest.bow_height) < hole_keeps_off(&f.s));
            f.e.bar_clearance += stiffest.clear + 1e-6;
            yields++;
        }
        most = f.e.bar_clearance - 1e-6;
        REFUSES(lay_out(&f, &stiffest, &fault), stiffest, TSIDE_OUT_OF_REACH, "extender.bar_clearance", TSIDE_ABOVE);
        NEAR(fault.bound, most, 1e-12, "greatest clearance", i);
        f.e.bar_clearance = fault.bound;
        NEAR(layout_of(&f).clear, 0, 1e-12, "clear at the bound", i);
    }
    ck_assert_int_gt(yields, 2);
}
END_TEST

Suite *slant_suite(void)
{
    Suite *suite = suite_create("slant");
    TCase *tcase = tcase_create("slant");
    tcase_add_test(tcase, on_a_plumb_leg_it_is_the_arctangent_of_root_two);
    tcase_add_test(tcase, best_angle_is_what_a_scan_of_all_finds);
    tcase_add_test(tcase, best_angle_never_looks_over_the_bow);
    tcase_add_test(tcase, no_search_goes_beyond_75_degrees);
    tcase_add_test(tcase, a_member_too_far_inboard_is_refused);
    tcase_add_test(tcase, each_bound_binds_by_its_name);
    tcase_add_test(tcase, its_hole_keeps_off_the_kink);
    tcase_add_test(tcase, a_clearance_just_kept_is_kept);
    tcase_add_test(tcase, rather_a_hole_in_the_kink_than_a_tube_in_the_rolls_way);
    suite_add_tcase(suite, tcase);
    return suite;
}
