/* SPDX-License-Identifier: MIT */
/* Places along the house by adding up what stands there, and the skew guide as a line in space. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside/along.h>
#include <tunnelside/field.h>

#include "sides.h"
#include "statics/push.h"

Suite *along_suite(void);

#define IN 0.0254

static tside_along usual_along(void)
{
    tside_along a;
    tside_usual(TSIDE_KIND_ALONG, &a);
    a.bow = 2.375 * IN;
    a.tube = 2 * IN;
    return a;
}

static tside_stand stand_of(const tside_along *a)
{
    tside_stand stand;
    tside_fault fault;
    ANSWERS(tside_along_stand(a, &stand, &fault));
    return stand;
}

/* --- places --- */

START_TEST(usual_values_stand_in_line)
{
    tside_along a = usual_along();
    tside_stand s = stand_of(&a);
    NEAR(s.eye, (1.1875 + 2 + 4) * IN, 1e-15, "eye", 0);
    ck_assert(s.line == s.eye && s.misfit == 0);
    NEAR(s.run_on, (7.1875 - 2) * IN, 1e-15, "run on", 0);
    NEAR(s.clear, (5.1875 - 3.5) * IN, 1e-15, "clear", 0);
    ck_assert(s.past_most_given && s.covers);
    NEAR(s.past_most, (7.1875 - 3.5) * IN, 1e-15, "greatest past", 0);
    ck_assert_int_eq(s.beside, 0); /* the drive's inner end stands just its clearance outside the tube: 4 - 3 = 1 in */
    a.stand_off -= 0.01 * IN;
    ck_assert_int_eq(stand_of(&a).beside, 1);
    a = usual_along();
    a.spacer = 0.5 * IN;
    NEAR(stand_of(&a).eye, s.eye + 0.5 * IN, 1e-15, "spacer", 0);
    a = usual_along();
    a.along = 1 * IN; /* the guide's line beyond the drive's centre: the drive stands nearer, and beside the tube */
    NEAR(stand_of(&a).run_on, s.run_on - 1 * IN, 1e-15, "along", 0);
    ck_assert(stand_of(&a).beside && stand_of(&a).misfit == 0);
    a = usual_along();
    a.past = 1 * IN;
    ck_assert_int_eq(stand_of(&a).covers, 0);
    a.past = a.bow / 2;
    ck_assert_int_eq(stand_of(&a).covers, 1);
    for (int hundredth = 100; hundredth < 300; hundredth++) { /* told in inches, and half of it in millimetres */
        a.bow = hundredth / 100.0 * IN;
        a.past = hundredth * 127 / 1e6;
        ck_assert_msg(stand_of(&a).covers, "a bow of %g in, and %g mm past it", a.bow / IN, 1000 * a.past);
    }
}
END_TEST

/* A drive 18 in outside the end bow on an eye at 4 in. */
START_TEST(given_the_bar_misses_the_eye)
{
    tside_along a = usual_along();
    tside_stand s;
    a.alignment = TSIDE_RUN_ON_GIVEN;
    a.bow = 2 * IN;
    a.stand_off = 1 * IN;
    a.past = a.run_on = 9 * IN;
    s = stand_of(&a);
    NEAR(s.misfit, 14 * IN, 1e-15, "misfit", 0);
    NEAR(s.line, 18 * IN, 1e-15, "line", 0);
    NEAR(s.clear, 5.5 * IN, 1e-15, "clear", 0);
    NEAR(s.past_most, 0.5 * IN, 1e-15, "greatest past", 0);
    ck_assert_int_eq(s.beside, 0);
    a.along = -2 * IN;
    NEAR(stand_of(&a).misfit, 12 * IN, 1e-15, "along", 0);
}
END_TEST

START_TEST(an_eye_on_the_hip_follows_the_curtain_or_is_given)
{
    tside_along a = usual_along();
    tside_stand s;
    a.hung = TSIDE_ON_HIP;
    a.past = 9 * IN;
    a.tube = 0; /* there is none */
    a.along = 0.25 * IN;
    s = stand_of(&a);
    NEAR(s.eye, (9 + 3 + 0.5 + 0.25) * IN, 1e-15, "eye", 0);
    NEAR(s.run_on, 3.5 * IN, 1e-15, "run on", 0);
    ck_assert(s.misfit == 0 && !s.past_most_given && !s.beside);
    a.eye_past_given = 1;
    a.eye_past = 18 * IN;
    s = stand_of(&a);
    NEAR(s.run_on, (18 - 9 - 0.25) * IN, 1e-15, "run on", 0);
    ck_assert(s.misfit == 0 && s.past_most_given);
    NEAR(s.past_most, (18 - 3.5 - 0.25) * IN, 1e-15, "greatest past", 0);
}
END_TEST

/* What a refusal names as its remedy is taken, to the bound and no farther. */
START_TEST(a_drive_over_the_curtain_is_refused_with_what_mends_it)
{
    for (int i = 0; i < 200; i++) {
        dice d = {(uint64_t)i + 1};
        tside_along a = usual_along(), mended;
        tside_stand s;
        tside_fault fault;
        char text[300];
        a.hung = i & 1 ? TSIDE_ON_HIP : TSIDE_ON_EXTENDER;
        a.eye_past_given = 1;
        a.eye_past = dice_between(&d, 0.05, 0.4);
        a.stand_off = dice_between(&d, 0, 0.2);
        a.spacer = dice_between(&d, 0, 0.05);
        a.along = dice_between(&d, -0.05, 0.05);
        a.past = 0.5;
        REFUSES(tside_along_stand(&a, &s, &fault), s, TSIDE_OUT_OF_REACH, "along.past", TSIDE_ABOVE);
        ck_assert_str_eq(fault.other, i & 1 ? "along.eye_past" : "along.stand_off");
        ck_assert(fault.remedy_given && tside_fault_text(&fault, text, sizeof text) < sizeof text);
        ck_assert(strstr(text, i & 1 ? "or along.eye_past of at least " : "or along.stand_off of at least "));
        mended = a;
        if (i & 1)
            mended.eye_past = fault.remedy;
        else
            mended.stand_off = fault.remedy;
        NEAR(stand_of(&mended).clear, 0, 1e-12, "mended by its remedy", i);
        if (fault.bound >= 0) {
            mended = a;
            mended.past = fault.bound;
            NEAR(stand_of(&mended).clear, 0, 1e-12, "mended by its bound", i);
            mended.past += 1e-6;
            ck_assert(tside_along_stand(&mended, &s, NULL) == TSIDE_OUT_OF_REACH);
        }
        a.alignment = TSIDE_RUN_ON_GIVEN;
        a.run_on = dice_between(&d, 0, 3.49 * IN);
        REFUSES(tside_along_stand(&a, &s, &fault), s, TSIDE_OUT_OF_REACH, "along.run_on", TSIDE_BELOW);
        ck_assert_int_eq(fault.remedy_given, 0);
        a.run_on = fault.bound;
        NEAR(stand_of(&a).clear, 0, 1e-15, "mended by its bound", i);
    }
}
END_TEST

START_TEST(every_field_is_checked)
{
    tside_along a = usual_along();
    tside_stand s;
    tside_fault fault;
    a.half_length = -1;
    REFUSES(tside_along_stand(&a, &s, &fault), s, TSIDE_OUT_OF_BOUNDS, "along.half_length", TSIDE_BELOW);
    a = usual_along();
    a.tube = 0;
    REFUSES(tside_along_stand(&a, &s, &fault), s, TSIDE_OUT_OF_BOUNDS, "along.tube", TSIDE_NOT_ABOVE);
    a = usual_along();
    a.past = NAN;
    REFUSES(tside_along_stand(&a, &s, &fault), s, TSIDE_OUT_OF_BOUNDS, "along.past", TSIDE_NOT_FINITE);
}
END_TEST

/* --- the guide --- */

/* The guide as a line in space, from its eye through the collar, which lies the misfit farther out. */
typedef struct line {
    double length, foot; /* m, eye to collar; foot along the house, for a guide of length 1 */
} line;

/* Of the side's guide, which rides so far off its eye. */
static tside_skew skew_of(const side *s, double misfit)
{
    tside_hang hang;
    tside_skew k;
    tside_fault fault;
    ANSWERS(tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, misfit, &hang, NULL, &fault));
    ANSWERS(tside_guide_skew(&s->travel, &hang, &k, &fault));
    return k;
}

static line guide_line(const side *s, const place *p, double misfit)
{
    double lean = side_lean(s, p, 0), x = p->x + s->collar.offset * cos(lean) - s->eye_x,
           y = p->y + s->collar.offset * sin(lean) - s->eye_y;
    line l = {sqrt(x * x + y * y + misfit * misfit), 0};
    l.foot = misfit / l.length;
    return l;
}

FOR_SIDES(guide_leans_and_sweeps_as_a_line_in_space, 100)
{
    enum { SAMPLES = 400 };
    side s = side_random(number);
    dice d = {(uint64_t)number + 7};
    double misfit = dice_between(&d, -0.5, 0.5), least = HUGE_VAL, greatest = -HUGE_VAL, steepest = 0;
    place shut = side_place(&s, s.shut), open = side_place(&s, s.open);
    line first = guide_line(&s, &shut, misfit), last = guide_line(&s, &open, misfit);
    tside_skew k = skew_of(&s, misfit);
    NEAR(k.reach_shut, first.length, 1e-10, "reach shut", number);
    NEAR(k.reach_open, last.length, 1e-10, "reach open", number);
    NEAR(sin(k.lean_shut), first.foot, 1e-10, "lean shut", number);
    NEAR(sin(k.lean_open), last.foot, 1e-10, "lean open", number);
    NEAR(k.length, first.length + s.guide.margin, 1e-10, "length", number);
    NEAR(k.foot_shut, k.length * first.foot, 1e-10, "foot when shut", number);
    for (int i = 0; i < side_parts(&s); i++) {
        double from, to;
        int how = side_part(&s, i, &from, &to);
        for (int n = 0; n <= SAMPLES; n++) {
            place p = side_place_as(&s, how, from + (to - from) * n / SAMPLES);
            line l = guide_line(&s, &p, misfit);
            least = fmin(least, l.foot);
            greatest = fmax(greatest, l.foot);
            steepest = fmax(steepest, fabs(l.foot));
        }
    }
    NEAR(sin(k.lean_greatest), steepest, 1e-7, "greatest lean", number);
    NEAR(k.sweep, k.length * (greatest - least), 1e-6, "sweep", number);
}

FOR_SIDES(in_line_nothing_leans_along, 60)
{
    side s = side_random(number);
    tside_skew k = skew_of(&s, 0), out = skew_of(&s, 0.2), in = skew_of(&s, -0.2);
    tside_sweep sweep;
    tside_fault fault;
    ANSWERS(tside_hang_make(&s.travel, &s.guide, &s.collar, s.eye_x, s.eye_y, 0, &s.hang, &sweep, &fault));
    ck_assert(k.length == sweep.length && k.lean_shut == 0 && k.lean_open == 0 && k.lean_greatest == 0 &&
              k.foot_shut == 0 && k.sweep == 0);
    ck_assert(in.lean_shut == -out.lean_shut && in.lean_open == -out.lean_open && in.foot_shut == -out.foot_shut &&
              in.sweep == out.sweep && in.length == out.length);
    ck_assert(in.lean_greatest == out.lean_greatest);
}

START_TEST(a_drive_far_outside_its_eye_leans_its_guide_far)
{
    side s = side_plain();
    const double m = 14 * IN;
    const tside_skew in_line = skew_of(&s, 0), k = skew_of(&s, m);
    NEAR(tan(k.lean_shut), m / in_line.reach_shut, 1e-14, "lean shut", 0);
    NEAR(tan(k.lean_open), m / in_line.reach_open, 1e-14, "lean open", 0);
    ck_assert(k.lean_greatest >= k.lean_open && k.lean_open > k.lean_shut && k.sweep > 0.2);
}
END_TEST

/*
 * The hung guide cut free in space: about its eye, along the house, the couple of its drive and the weights are in
 * balance with the collar's push; at the collar that push bends it over the whole distance to the eye.
 */
FOR_SIDES(skew_guide_is_in_balance_in_space, 60)
{
    side s = side_random(number);
    dice d = {(uint64_t)number + 19};
    tside_hang hang = s.hang;
    place shut = side_place(&s, s.shut), open = side_place(&s, s.open);
    const place *at[] = {&shut, &open};
    double torque = dice_between(&d, 0, 300);
    tside_i_pushing pushing = {NULL, &hang, torque};
    hang.misfit = dice_between(&d, -0.6, 0.6);
    for (int i = 0; i < 2; i++) {
        double lean = side_lean(&s, at[i], 0), nx = cos(lean), ny = sin(lean), force, bending;
        double collar[] = {at[i]->x + s.collar.offset * nx - s.eye_x, at[i]->y + s.collar.offset * ny - s.eye_y,
                           hang.misfit};
        double reach = sqrt(collar[0] * collar[0] + collar[1] * collar[1] + collar[2] * collar[2]),
               centre = (hang.chain + hang.length) / 2 / reach;
        tside_i_spot spot;
        tside_i_travel_spot(&s.travel, i ? s.travel.stretches - 1 : 0, i ? s.travel.end : s.travel.wraps_shut, &spot);
        force = tside_i_push_at(&spot, &pushing);
        bending = tside_i_guide_bending_at(&spot, &pushing);
        /*
         * about the eye, along the house: the collar pushes the guide outboard, its own weight and the drive's turn it,
         * and the drive's couple
         */
        NEAR(collar[0] * force * ny - collar[1] * force * nx,
             torque + centre * collar[0] * hang.weight + hang.carried * hang.carried_offset, 1e-8 * (1 + torque),
             "moments", number);
        NEAR(bending, force * reach, 1e-9 * (1 + fabs(bending)), "bending", number);
    }
    hang.misfit = 0;
    {
        double force, uplift, same, raised;
        tside_fault fault;
        ANSWERS(tside_side_force(&s.travel, &s.load, &hang, 0, &force, &uplift, &fault));
        ANSWERS(tside_side_force(&s.travel, &s.load, &s.hang, 0, &same, &raised, &fault));
        ck_assert(force == same && uplift == raised);
    }
}

/*
 * The bar's end as a cantilever from the curtain's edge: drive's weight down, guide's push inboard, square to the
 * guide.
 */
FOR_SIDES(bars_end_is_bent_both_ways, 60)
{
    side s = side_random(number);
    dice d = {(uint64_t)number + 23};
    tside_i_bar_end end = {{NULL, &s.hang, dice_between(&d, 0, 300)},
                           dice_between(&d, 0, 100),
                           dice_between(&d, 0, 0.4),
                           dice_between(&d, 0, 0.5)};
    place open = side_place(&s, s.open);
    double lean = side_lean(&s, &open, 0), force, level, plumb, forces[TSIDE_I_VALUES];
    tside_i_spot spot;
    tside_i_travel_spot(&s.travel, s.travel.stretches - 1, s.travel.end, &spot);
    force = tside_i_push_at(&spot, &end.pushing);
    level = -force * cos(lean) * end.arm;
    plumb = -end.weight * end.run_on - force * sin(lean) * end.arm;
    tside_i_end_forces_at(&spot, &end, forces);
    NEAR(forces[TSIDE_I_BAR_END], sqrt(level * level + plumb * plumb), 1e-8 * (1 + fabs(force)), "bending", number);
    ck_assert(forces[TSIDE_I_PUSH] == force);
    NEAR(forces[TSIDE_I_UPLIFT], force * sin(lean) - s.hang.weight, 1e-8 * (1 + fabs(force)), "uplift", number);
    end.pushing.torque = 0;
    end.arm = 0;
    tside_i_end_forces_at(&spot, &end, forces);
    NEAR(forces[TSIDE_I_BAR_END], end.weight * end.run_on, 1e-12 * (1 + end.weight), "the weight alone", number);
}

/* In line, and out of it. */
START_TEST(a_guide_of_another_travel_gives_no_number_that_is_none)
{
    side s = side_plain();
    tside_skew k;
    double lean, turns, force;
    tside_fault fault;
    const place open = side_place(&s, s.open);
    s.hang.eye_x = open.x;
    s.hang.eye_y = open.y + s.hang.offset / 2;
    for (int i = 0; i < 2; i++) {
        s.hang.misfit = 0.1 * i;
        REFUSES(tside_guide_skew(&s.travel, &s.hang, &k, &fault), k, TSIDE_NOT_MODELLED, "skew.reach_open",
                TSIDE_NOT_FINITE);
        lean = -7;
        REFUSES(tside_guide_lean(&s.travel, &s.hang, open.turns, &lean, &turns, &fault), turns, TSIDE_NOT_MODELLED,
                "drive_turns", TSIDE_NOT_FINITE);
        REFUSES(tside_side_force(&s.travel, NULL, &s.hang, open.turns, &force, &lean, &fault), force,
                TSIDE_NOT_MODELLED, "force", TSIDE_NOT_FINITE);
        ck_assert(lean == -7);
    }
}
END_TEST

Suite *along_suite(void)
{
    Suite *suite = suite_create("along");
    TCase *tcase = tcase_create("along");
    tcase_add_test(tcase, usual_values_stand_in_line);
    tcase_add_test(tcase, given_the_bar_misses_the_eye);
    tcase_add_test(tcase, an_eye_on_the_hip_follows_the_curtain_or_is_given);
    tcase_add_test(tcase, a_drive_over_the_curtain_is_refused_with_what_mends_it);
    tcase_add_test(tcase, every_field_is_checked);
    tcase_add_test(tcase, guide_leans_and_sweeps_as_a_line_in_space);
    tcase_add_test(tcase, in_line_nothing_leans_along);
    tcase_add_test(tcase, a_drive_far_outside_its_eye_leans_its_guide_far);
    tcase_add_test(tcase, skew_guide_is_in_balance_in_space);
    tcase_add_test(tcase, bars_end_is_bent_both_ways);
    tcase_add_test(tcase, a_guide_of_another_travel_gives_no_number_that_is_none);
    suite_add_tcase(suite, tcase);
    return suite;
}
