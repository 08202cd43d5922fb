/* SPDX-License-Identifier: MIT */
/* What a force at the eye does: two functions that say the same say it alike, and what they cannot take is refused by name. The Python tests hold both against beams in space. */
#include <check.h>
#include <math.h>
#include <string.h>
#include <tunnelside/strength.h>

#include "expect.h"

Suite *eye_suite(void);

static tside_extender plain_extender(void)
{
    tside_extender extender;
    tside_usual(TSIDE_KIND_EXTENDER, &extender);
    extender.tube = (tside_square){0.05, 0.003, TSIDE_CORNER_STANDARD, 0, 0};
    extender.material = (tside_material){TSIDE_STEEL, TSIDE_A500_B_SHAPED, 0};
    extender.member_height = 1;
    extender.member_outer = 5;
    extender.stock = 6;
    return extender;
}

/* A tube as measured on site: no more of a layout is read. */
static tside_layout measured(double angle, double bow, double member)
{
    tside_layout layout;
    memset(&layout, 0xa5, sizeof layout);
    layout.angle = angle;
    layout.bow_distance = bow;
    layout.member_distance = member;
    return layout;
}

START_TEST(both_say_the_same)
{
    tside_extender extender = plain_extender();
    tside_fault fault;
    dice d = {7};
    for (int number = 0; number < 200; number++) {
        double bow = dice_between(&d, 0.05, 1), force = dice_between(&d, 0, 2000), weight = number % 2 ? dice_between(&d, 0, 300) : 0;
        tside_layout layout = measured(dice_between(&d, 0.1, 1.3), bow, bow + dice_between(&d, 0.1, 1));
        tside_strength_line lines[TSIDE_EXTENDER_LINES];
        tside_extender_load load;
        ANSWERS(tside_extender_strength(&extender, &layout, force, weight, TSIDE_DRIVE_END, lines, &fault));
        ANSWERS(tside_extender_bears(&extender, &layout, force, weight, &load, &fault));
        NEAR(load.bending_in, lines[0].demand, 1e-12 * load.bending_in, "bending", number);
        NEAR(load.tip, lines[1].demand, 1e-12 * load.tip, "tip", number);
        NEAR(load.bow_shear, lines[2].demand, 1e-12 * load.bow_shear, "bow bolt", number);
        NEAR(load.member_shear, lines[3].demand, 1e-12 * load.member_shear, "member bolt", number);
        if (weight == 0) /* the line's eye bolt bends by the level force alone */
            NEAR(load.eye_bolt, lines[4].demand, 1e-12 * load.eye_bolt, "eye bolt", number);
        ck_assert(load.combined >= load.bending_in);
    }
}
END_TEST

/* Both functions refuse it. */
static void refused(const tside_extender *extender, const tside_layout *layout, double force, double weight, tside_status status, const char *field, tside_relation relation)
{
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    tside_extender_load load;
    tside_fault fault;
    REFUSES(tside_extender_strength(extender, layout, force, weight, TSIDE_DRIVE_END, lines, &fault), lines, status, field, relation);
    REFUSES(tside_extender_bears(extender, layout, force, weight, &load, &fault), load, status, field, relation);
}

START_TEST(a_layout_made_by_hand_is_checked)
{
    const tside_extender extender = plain_extender();
    const struct {
        double angle, bow, member;
        const char *field;
        tside_relation relation;
    } cases[] = {
        {NAN, 0.3, 0.8, "layout.angle", TSIDE_NOT_FINITE},
        {-1.6, 0.3, 0.8, "layout.angle", TSIDE_BELOW},
        {1.6, 0.3, 0.8, "layout.angle", TSIDE_ABOVE},
        {0.7, 0, 0.8, "layout.bow_distance", TSIDE_NOT_ABOVE}, /* as a layout with nothing in it */
        {0.7, -0.3, 0.8, "layout.bow_distance", TSIDE_NOT_ABOVE},
        {0.7, HUGE_VAL, 0.8, "layout.bow_distance", TSIDE_NOT_FINITE},
        {0.7, 0.3, 0.3, "layout.member_distance", TSIDE_NOT_ABOVE}, /* a force over no distance */
        {0.7, 0.3, 0, "layout.member_distance", TSIDE_NOT_ABOVE},
        {0.7, 0.3, NAN, "layout.member_distance", TSIDE_NOT_FINITE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        tside_layout layout = measured(cases[i].angle, cases[i].bow, cases[i].member);
        refused(&extender, &layout, 1000, 50, TSIDE_OUT_OF_BOUNDS, cases[i].field, cases[i].relation);
        refused(&extender, &layout, 0, 0, TSIDE_OUT_OF_BOUNDS, cases[i].field, cases[i].relation);
    }
}
END_TEST

START_TEST(what_cannot_be_loaded_is_refused)
{
    const tside_layout layout = measured(0.7, 0.3, 0.8);
    tside_extender extender = plain_extender();
    tside_extender_load load;
    tside_fault fault;
    refused(&extender, &layout, NAN, 50, TSIDE_OUT_OF_BOUNDS, "force", TSIDE_NOT_FINITE);
    refused(&extender, &layout, 100, -1, TSIDE_OUT_OF_BOUNDS, "weight", TSIDE_BELOW);
    ANSWERS(tside_extender_bears(&extender, &layout, -100, 0, &load, &fault)); /* jammed coming down */
    extender.eye_material = (tside_material){TSIDE_STEEL, TSIDE_6061_T6, 0};
    refused(&extender, &layout, 100, 50, TSIDE_CONTRADICTS, "extender.eye_material.grade", TSIDE_NO_RELATION);
    extender = plain_extender();
    extender.bolt_hole = 0.043; /* the flat outside is 50 - 2 x 6 = 38 mm with the standard's corners */
    REFUSES(tside_extender_bears(&extender, &layout, 100, 50, &load, &fault), load, TSIDE_CONTRADICTS, "extender.bolt_hole", TSIDE_NOT_BELOW);
    extender.bolt_hole = 0;
    refused(&extender, &layout, 100, 50, TSIDE_OUT_OF_BOUNDS, "extender.bolt_hole", TSIDE_NOT_ABOVE);
}
END_TEST

Suite *eye_suite(void)
{
    Suite *suite = suite_create("eye");
    TCase *tcase = tcase_create("eye");
    tcase_add_test(tcase, both_say_the_same);
    tcase_add_test(tcase, a_layout_made_by_hand_is_checked);
    tcase_add_test(tcase, what_cannot_be_loaded_is_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
