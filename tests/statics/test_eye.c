/* SPDX-License-Identifier: MIT */
/*
 * What a force at the eye does: two functions that say the same say it alike, and what they cannot take is refused by
 * name. The Python tests hold both against beams in space.
 */
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
    extender.stock_given = 1;
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

/* --- stresses at the bow bolt: the section cut into strips, the loads into pieces --- */

/* Half the breadth of a square with rounded corners, so far from its middle. */
static double half_breadth(double side, double radius, double from_middle)
{
    const double into_corner = fabs(from_middle) - (side / 2 - radius);
    if (fabs(from_middle) > side / 2)
        return 0;
    return into_corner <= 0 ? side / 2 : side / 2 - radius + sqrt(fmax(radius * radius - into_corner * into_corner, 0));
}

/* The tube's second moment with a hole in each of its farthest walls; a tube of the standard's corners, 2T and T. */
static double second_moment_of_strips(const tside_extender *extender)
{
    enum { STRIPS = 20000 };
    const double B = extender->tube.side, T = extender->tube.wall, clear = B - 2 * T;
    const double from[] = {0, clear / 2}, to[] = {clear / 2, B / 2};
    double sum = 0;
    for (int k = 0; k < 2; k++)
        for (int i = 0; i < STRIPS; i++) {
            const double y = from[k] + (to[k] - from[k]) * (i + 0.5) / STRIPS;
            const double metal = 2 * half_breadth(B, 2 * T, y) - 2 * half_breadth(clear, T, y),
                         hole = k == 1 ? extender->bolt_hole : 0;
            sum += 2 * (metal - hole) * y * y * (to[k] - from[k]) / STRIPS;
        }
    return sum;
}

/* The metal left at the bow bolt, by the same strips: a hole in each of two walls. */
static double area_of_strips(const tside_extender *extender)
{
    enum { STRIPS = 20000 };
    const double B = extender->tube.side, T = extender->tube.wall, clear = B - 2 * T;
    double sum = -2 * extender->bolt_hole * T;
    for (int i = 0; i < STRIPS; i++) {
        const double y = (i + 0.5) / STRIPS / 2;
        sum += 4 * (half_breadth(B, 2 * T, B * y) * B - half_breadth(clear, T, clear * y) * clear) / STRIPS / 2;
    }
    return sum;
}

/*
 * The greatest shear of a thin closed tube twisted by T, T/(2 Ah t) and what the wall's own stiffness adds, by the
 * middle line's length h and the area Ah within it: EN 10219-2, annex B.
 */
static double twisting(const tside_extender *extender, double torque)
{
    const double t = extender->tube.wall, side = extender->tube.side - t, radius = 1.5 * t;
    const double h = 4 * (side - 2 * radius) + 2 * PI * radius, Ah = side * side - (4 - PI) * radius * radius;
    const double closed = 4 * Ah * Ah * t / h, open = h * t * t * t / 3, rate = torque / (closed + open);
    return rate * (2 * Ah / h + t);
}

/* Of pushes that stand on the tube above the bow bolt, and of the eye's. */
static double moment_of_pieces(const tside_extender *extender, double above_bolt, double eye, double tube)
{
    enum { PIECES = 1000 };
    const double length = extender->end_distance + above_bolt;
    double moment = eye * above_bolt;
    for (int i = 0; i < PIECES; i++)
        moment += tube * length / PIECES * (length * (i + 0.5) / PIECES);
    return moment;
}

START_TEST(a_force_at_the_eye_and_wind_stress_the_tube)
{
    dice d = {31};
    tside_fault fault;
    for (int number = 0; number < 50; number++) {
        tside_extender extender = plain_extender();
        const double angle = dice_between(&d, 0.1, 1.3), bow = dice_between(&d, 0.1, 1),
                     force = dice_between(&d, -2000, 2000), weight = dice_between(&d, 0, 300),
                     wind_eye = dice_between(&d, 0, 200), wind_tube = dice_between(&d, 0, 50);
        /* the force in parts along unit vectors: up the tube, and square to it, outboard and down */
        const double along = force * sin(angle) + -weight * cos(angle),
                     across = force * cos(angle) + -weight * -sin(angle);
        tside_layout layout = measured(angle, bow, bow + dice_between(&d, 0.1, 1));
        tside_extender_load load;
        double modulus, want;
        extender.tube.side = dice_between(&d, 0.04, 0.08);
        extender.tube.wall = dice_between(&d, 0.001, 0.004);
        extender.spacer = dice_between(&d, 0, 0.02);
        extender.eye_stand_off = dice_between(&d, 0.02, 0.15);
        modulus = second_moment_of_strips(&extender) / (extender.tube.side / 2);
        /* the guide's line stands off the bow's face by tube, spacer and stand-off */
        want = fabs(along) * (extender.eye_stand_off + extender.tube.side + extender.spacer) / modulus;
        ANSWERS(tside_extender_bears(&extender, &layout, force, weight, wind_eye, wind_tube, &load, &fault));
        NEAR(load.across, across, 1e-9, "across", number);
        NEAR(load.along, along, 1e-9, "along", number);
        NEAR(load.bending_out, want, 3e-7 * want, "bending out of the plane", number);
        want = fabs(along) / area_of_strips(&extender);
        NEAR(load.axial, want, 3e-7 * want, "axial", number);
        want = twisting(&extender, fabs(across) * (extender.tube.side / 2 + extender.eye_stand_off));
        NEAR(load.twist, want, 1e-12 * want, "twist", number);
        want = fabs(across) / (2 * extender.tube.wall * (extender.tube.side - 4 * extender.tube.wall)); /* ri = T */
        NEAR(load.shear, want, 1e-12 * want, "shear in the two webs", number);
        NEAR(load.bending_wind, moment_of_pieces(&extender, bow, wind_eye, wind_tube) / modulus,
             3e-7 * load.bending_wind, "bending by wind", number);
    }
}
END_TEST

/* About a bolt so far below the eye: wind on the eye, and on the tube piece by piece, above the bolt and below it. */
static double wind_about_bolt(const tside_extender *extender, double bolt, double member, double eye, double tube)
{
    enum { PIECES = 1000 };
    const double top = -extender->end_distance, foot = member + extender->tail, piece = (foot - top) / PIECES;
    double moment = eye * bolt;
    for (int i = 0; i < PIECES; i++)
        moment += tube * piece * (bolt - (top + (i + 0.5) * piece));
    return fabs(moment);
}

/*
 * What two bolts hold, by balance about the other: the push across the tube and the couple of what stands off the bow;
 * and wind, from either end of the house. About its own axis the tube tips over the edge of the flat on the bow.
 */
START_TEST(bolts_hold_the_tube_in_balance)
{
    dice d = {32};
    tside_fault fault;
    for (int number = 0; number < 50; number++) {
        tside_extender extender = plain_extender();
        const double bow = dice_between(&d, 0.1, 1), apart = dice_between(&d, 0.1, 1),
                     wind_eye = dice_between(&d, 0, 200), wind_tube = dice_between(&d, 0, 50);
        const tside_layout layout = measured(dice_between(&d, 0.1, 1.3), bow, bow + apart);
        double flat, off, bow_wind, member_wind;
        tside_extender_load load;
        extender.tail = dice_between(&d, 0.02, 0.3);
        extender.end_distance = dice_between(&d, 0.02, 0.3);
        extender.spacer = dice_between(&d, 0, 0.02);
        extender.eye_stand_off = dice_between(&d, 0.02, 0.15);
        ANSWERS(tside_extender_bears(&extender, &layout, dice_between(&d, -2000, 2000), dice_between(&d, 0, 300),
                                     wind_eye, wind_tube, &load, &fault));
        flat = extender.tube.side / 2 - 2 * extender.tube.wall; /* half of it */
        off = extender.eye_stand_off + extender.tube.side + extender.spacer;
        bow_wind = wind_about_bolt(&extender, bow + apart, bow + apart, wind_eye, wind_tube) / apart;
        member_wind = wind_about_bolt(&extender, bow, bow + apart, wind_eye, wind_tube) / apart;
        NEAR(load.bow_shear, hypot(load.across * (bow + apart) / apart, load.along), 1e-9, "bow bolt's shear", number);
        NEAR(load.member_shear, hypot(load.across * bow / apart, load.along), 1e-9, "member bolt's shear", number);
        NEAR(load.bow_pull, (fabs(load.across) / flat + fmax(-load.along, 0) / apart) * off + bow_wind, 1e-8,
             "bow bolt's pull", number);
        NEAR(load.member_pull, fmax(load.along, 0) * off / apart + member_wind, 1e-8, "member bolt's pull", number);
    }
}
END_TEST

static void is_worse(const tside_strength_line *line, tside_strength_code code, double up, double down, int number)
{
    ck_assert_int_eq((int)line->code, (int)code);
    ck_assert_int_eq((int)line->end, TSIDE_FREE_END);
    NEAR(line->demand, fmax(up, down), 1e-12 * fmax(up, down), "demand", number);
    ck_assert_int_eq((int)line->rules, down > up ? TSIDE_RULES_DOWN : TSIDE_RULES_UP);
}

/* Each line is the worse of both forces; no force between them asks more. */
START_TEST(lines_take_the_worse_force)
{
    tside_extender extender = plain_extender();
    tside_fault fault;
    dice d = {7};
    int ruled[3] = {0, 0, 0};
    extender.bolt_limit_given = extender.pull_limit_given = 1;
    extender.bolt_limit = 4000;
    extender.pull_limit = 7000;
    for (int number = 0; number < 200; number++) {
        double bow = dice_between(&d, 0.05, 1), outboard = number % 7 ? dice_between(&d, 0, 2000) : 0,
               inboard = number % 5 ? dice_between(&d, 0, 2000) : 0;
        double weight = dice_between(&d, 0, 300);
        tside_layout layout = measured(dice_between(&d, 0.1, 1.3), bow, bow + dice_between(&d, 0.1, 1));
        tside_strength_line line[TSIDE_EXTENDER_LINES];
        tside_extender_load up, down, between;
        int count;
        ANSWERS(tside_extender_strength(&extender, &layout, outboard, inboard, weight, 0, 0, TSIDE_FREE_END, line,
                                        TSIDE_EXTENDER_LINES, &count, &fault));
        ck_assert_int_eq(count, 9);
        ANSWERS(tside_extender_bears(&extender, &layout, outboard, weight, 0, 0, &up, &fault));
        ANSWERS(tside_extender_bears(&extender, &layout, -inboard, weight, 0, 0, &down, &fault));
        is_worse(line, TSIDE_EXTENDER_BENDING, up.combined, down.combined, number);
        is_worse(line + 1, TSIDE_EXTENDER_TIP, fabs(up.tip), fabs(down.tip), number);
        is_worse(line + 2, TSIDE_BOW_BOLT, up.bow_shear, down.bow_shear, number);
        is_worse(line + 3, TSIDE_MEMBER_BOLT, up.member_shear, down.member_shear, number);
        is_worse(line + 4, TSIDE_BOW_BOLT_PULL, up.bow_pull, down.bow_pull, number);
        is_worse(line + 5, TSIDE_MEMBER_BOLT_PULL, up.member_pull, down.member_pull, number);
        is_worse(line + 6, TSIDE_BOW_BOLT_BOTH, hypot(up.bow_shear / 4000, up.bow_pull / 7000),
                 hypot(down.bow_shear / 4000, down.bow_pull / 7000), number);
        is_worse(line + 7, TSIDE_MEMBER_BOLT_BOTH, hypot(up.member_shear / 4000, up.member_pull / 7000),
                 hypot(down.member_shear / 4000, down.member_pull / 7000), number);
        is_worse(line + 8, TSIDE_EYE_BOLT_BENDING, up.eye_bolt, down.eye_bolt, number);
        for (int i = 1; i < 10; i++) {
            ANSWERS(tside_extender_bears(&extender, &layout, outboard - (outboard + inboard) * i / 10, weight, 0, 0,
                                         &between, &fault));
            ck_assert(between.combined <= line[0].demand * (1 + 1e-12) &&
                      fabs(between.tip) <= line[1].demand * (1 + 1e-12));
            ck_assert(between.bow_shear <= line[2].demand * (1 + 1e-12) &&
                      between.member_shear <= line[3].demand * (1 + 1e-12));
            ck_assert(between.bow_pull <= line[4].demand * (1 + 1e-12) &&
                      between.member_pull <= line[5].demand * (1 + 1e-12) &&
                      between.eye_bolt <= line[8].demand * (1 + 1e-12));
        }
        ruled[line[0].rules]++;
        ck_assert(line[6].measure == TSIDE_SHARE && line[6].limit == 1 &&
                  line[6].verdict == (line[6].demand > 1     ? TSIDE_VERDICT_NO
                                      : line[6].demand > 0.8 ? TSIDE_VERDICT_LOOK
                                                             : TSIDE_VERDICT_OK));
    }
    ck_assert(ruled[TSIDE_RULES_UP] > 40 && ruled[TSIDE_RULES_DOWN] > 40);
}
END_TEST

/* Both functions refuse it. */
static void refused(const tside_extender *extender, const tside_layout *layout, double force, double weight,
                    tside_status status, const char *field, tside_relation relation)
{
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    tside_extender_load load;
    tside_fault fault;
    int count;
    REFUSES(tside_extender_strength(extender, layout, force, 0, weight, 0, 0, TSIDE_DRIVE_END, lines,
                                    TSIDE_EXTENDER_LINES, &count, &fault),
            lines, status, field, relation);
    REFUSES(tside_extender_bears(extender, layout, force, weight, 0, 0, &load, &fault), load, status, field, relation);
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
    for (int level = -1; level <= 1; level += 2) { /* a tube may lie level */
        const tside_layout layout = measured(level * PI / 2, 0.3, 0.8);
        tside_extender_load load;
        tside_fault fault;
        ANSWERS(tside_extender_bears(&extender, &layout, 1000, 50, 0, 0, &load, &fault));
    }
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
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    int count;
    tside_fault fault;
    REFUSES(tside_extender_bears(&extender, &layout, NAN, 50, 0, 0, &load, &fault), load, TSIDE_OUT_OF_BOUNDS, "force",
            TSIDE_NOT_FINITE);
    refused(&extender, &layout, 100, -1, TSIDE_OUT_OF_BOUNDS, "weight", TSIDE_BELOW);
    REFUSES(tside_extender_bears(&extender, &layout, 1, 50, -1, 0, &load, &fault), load, TSIDE_OUT_OF_BOUNDS,
            "wind_eye", TSIDE_BELOW);
    REFUSES(tside_extender_bears(&extender, &layout, 1, 50, 0, NAN, &load, &fault), load, TSIDE_OUT_OF_BOUNDS,
            "wind_tube", TSIDE_NOT_FINITE);
    REFUSES(tside_extender_strength(&extender, &layout, 1, 1, 50, -1, 0, TSIDE_DRIVE_END, lines, TSIDE_EXTENDER_LINES,
                                    &count, &fault),
            lines, TSIDE_OUT_OF_BOUNDS, "wind_eye", TSIDE_BELOW);
    ANSWERS(tside_extender_bears(&extender, &layout, -100, 0, 0, 0, &load, &fault)); /* jammed coming down */
    extender.eye_material = (tside_material){TSIDE_STEEL, TSIDE_6061_T6, 0};
    refused(&extender, &layout, 100, 50, TSIDE_CONTRADICTS, "extender.eye_material.grade", TSIDE_NO_RELATION);
    ck_assert_int_eq(tside_extender_bears(&extender, &layout, 100, 50, 0, 0, &load, NULL), TSIDE_CONTRADICTS);
    extender = plain_extender();
    extender.tube.wall = 0.03;
    refused(&extender, &layout, 100, 50, TSIDE_CONTRADICTS, "extender.tube.wall", TSIDE_NOT_BELOW);
    extender = plain_extender();
    extender.bolt_hole = 0.043; /* the flat outside is 50 - 2 x 6 = 38 mm with the standard's corners */
    refused(&extender, &layout, 100, 50, TSIDE_CONTRADICTS, "extender.bolt_hole", TSIDE_NOT_BELOW);
    extender.bolt_hole = 0;
    refused(&extender, &layout, 100, 50, TSIDE_OUT_OF_BOUNDS, "extender.bolt_hole", TSIDE_NOT_ABOVE);
}
END_TEST

/* How far out a bolt of known metal may bear what pulls on it; what pulls not at all, or an unknown metal, has none. */
START_TEST(an_eye_bolt_that_bears_nothing_has_no_bound)
{
    const tside_layout layout = measured(0.7, 0.3, 0.8);
    tside_extender extender = plain_extender();
    tside_extender_load load;
    tside_metal_values metal;
    tside_fault fault;
    extender.eye_material = (tside_material){TSIDE_STEEL, TSIDE_A500_B_SHAPED, 0};
    ANSWERS(tside_material_values(&extender.eye_material, &metal, &fault));
    for (int pulls = 0; pulls <= 1; pulls++) {
        ANSWERS(tside_extender_bears(&extender, &layout, pulls, 0, 0, 0, &load, &fault));
        ck_assert_int_eq(load.stand_off_most_given, pulls);
    }
    NEAR(32 * load.stand_off_most / (PI * pow(extender.eye_root, 3)) * metal.safety / metal.yield, 1, 1e-12, "M/S", 0);
    extender.eye_material.grade = TSIDE_GRADE_UNKNOWN;
    ANSWERS(tside_extender_bears(&extender, &layout, 1, 0, 0, 0, &load, &fault));
    ck_assert(!load.stand_off_most_given && load.stand_off_most == 0);
}
END_TEST

/* A tube rounded wholly inside has no flat, whatever the last digits of its measures leave of one. */
START_TEST(a_tube_round_inside_has_no_flat)
{
    const tside_layout layout = measured(0.7, 0.3, 0.8);
    tside_extender extender = plain_extender();
    for (int side = 30; side <= 60; side++)
        for (int wall = 20; wall <= 50; wall++) {
            double clear = 10 * side - 2 * wall; /* tenths of a millimetre */
            extender.tube = (tside_square){side / 1e3, wall / 1e4, TSIDE_CORNER_GIVEN, clear / 2e4, clear / 2e4};
            extender.bolt_hole = extender.eye_hole = 0.001;
            refused(&extender, &layout, 100, 50, TSIDE_CONTRADICTS, "extender.tube.inner_radius", TSIDE_NO_RELATION);
        }
}
END_TEST

Suite *eye_suite(void)
{
    Suite *suite = suite_create("eye");
    TCase *tcase = tcase_create("eye");
    tcase_add_test(tcase, a_force_at_the_eye_and_wind_stress_the_tube);
    tcase_add_test(tcase, bolts_hold_the_tube_in_balance);
    tcase_add_test(tcase, lines_take_the_worse_force);
    tcase_add_test(tcase, a_layout_made_by_hand_is_checked);
    tcase_add_test(tcase, what_cannot_be_loaded_is_refused);
    tcase_add_test(tcase, an_eye_bolt_that_bears_nothing_has_no_bound);
    tcase_add_test(tcase, a_tube_round_inside_has_no_flat);
    suite_add_tcase(suite, tcase);
    return suite;
}
