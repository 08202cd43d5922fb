/* SPDX-License-Identifier: MIT */
/* Tubes, beside the printed tables of tests/data: integrals, limits, scaling and published torsion examples. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/tube.h>

#include "rows.h"

#define PI 3.14159265358979323846
#define KSI (4448.2216152605 / (0.0254 * 0.0254)) /* Pa */
#define IN 0.0254
#define KIP_IN (4448.2216152605 * IN) /* N m */
#define STEEL 7850.0

Suite *tube_suite(void);

#define NEAR(got, want, tolerance) \
    ck_assert_msg(!differs(got, want, tolerance), "%s: got %.17g, want %.17g within %.3g", #got, got, want, tolerance)
#define NEAR_RELATIVE(got, want, part) NEAR(got, want, (part)*fabs(want))

static tside_section round_tube(double diameter, double wall)
{
    tside_round tube = {diameter, wall};
    tside_section section;
    ck_assert_int_eq(tside_round_section(&tube, STEEL, &section, NULL), TSIDE_OK);
    return section;
}

static tside_section square_tube(double side, double wall)
{
    tside_square tube = {side, wall, TSIDE_CORNER_STANDARD, 0, 0};
    tside_section section;
    ck_assert_int_eq(tside_square_section(&tube, STEEL, &section, NULL), TSIDE_OK);
    return section;
}

static tside_section cornered_tube(double side, double wall, double outer_radius, double inner_radius)
{
    tside_square tube = {side, wall, TSIDE_CORNER_GIVEN, outer_radius, inner_radius};
    tside_section section;
    ck_assert_int_eq(tside_square_section(&tube, STEEL, &section, NULL), TSIDE_OK);
    return section;
}

/* --- integrals over the true shape --- */

/*
 * The integral of |y|^power over a square with rounded corners, by Simpson's rule along y; a radius of half the side
 * makes it a disc.
 */
static double moment(double half, double radius, int power)
{
    enum { PANELS = 2000 };
    double flat = half - radius, sum = 0;
    for (int i = 0; i <= PANELS; i++) {
        double t = PI / 2 * i / PANELS, weight = i == 0 || i == PANELS ? 1 : i % 2 ? 4 : 2;
        double y = flat + radius * sin(t), x = flat + radius * cos(t);
        sum += weight * pow(y, power) * x * radius * cos(t);
    }
    sum *= PI / 2 / PANELS / 3;
    return 4 * (sum + half * pow(flat, power + 1) / (power + 1));
}

/* Both integrals round at the last digits of the whole shape, which is more than the wall's. */
static void check_by_integral(const tside_section *section, double side, double wall, double outer_radius,
                              double inner_radius)
{
    const double got[] = {section->area, section->plastic_modulus, section->inertia};
    for (int power = 0; power < 3; power++) {
        double outer = moment(side / 2, outer_radius, power), inner = moment(side / 2 - wall, inner_radius, power);
        NEAR(got[power], outer - inner, 1e-13 * outer);
    }
    NEAR_RELATIVE(section->section_modulus, section->inertia / (side / 2), 1e-15);
    NEAR_RELATIVE(section->gyration, sqrt(section->inertia / section->area), 1e-14);
    NEAR_RELATIVE(section->mass, section->area * STEEL, 1e-15);
}

START_TEST(round_is_the_integral_of_its_shape)
{
    const double size[][2] = {{0.0334, 0.00338}, {0.0483, 0.0025}, {1, 1e-5}, {0.001, 1e-5}, {0.06, 0.0299}, {1, 0.1}};
    const double *tube = size[_i], half = tube[0] / 2;
    tside_section section = round_tube(tube[0], tube[1]);
    check_by_integral(&section, tube[0], tube[1], half, half - tube[1]);
    NEAR_RELATIVE(section.torsion, 2 * section.inertia, 1e-15); /* polar: x and y alike */
    NEAR_RELATIVE(section.torsion_modulus, section.torsion / half, 1e-15);
}
END_TEST

START_TEST(square_is_the_integral_of_its_shape)
{
    const double size[][2] = {{0.05, 0.003}, {0.05, 0.006}, {0.1, 0.008}, {0.1, 0.01},
                              {0.2, 0.0125}, {1, 1e-5},     {0.02, 0.005}};
    const double radius[] = {2, 2, 2.5, 2.5, 3, 2, 2}; /* in walls: EN 10219-2 */
    double side = size[_i][0], wall = size[_i][1], outer_radius = radius[_i] * wall;
    tside_section section = square_tube(side, wall);
    check_by_integral(&section, side, wall, outer_radius, outer_radius - wall);
}
END_TEST

START_TEST(given_corners_are_the_integral_of_their_shape)
{
    const double size[][4] = {{0.05, 0.003, 0, 0},        {0.05, 0.003, 0.003, 0},     {0.05, 0.003, 0.01, 0},
                              {0.05, 0.003, 0.01, 0.01},  {0.05, 0.003, 0.025, 0.022}, {0.05, 0.003, 0.02, 0.018},
                              {0.05, 0.02, 0.025, 0.005}, {1, 1e-5, 0.5, 0.49999}};
    const double *tube = size[_i];
    tside_section section = cornered_tube(tube[0], tube[1], tube[2], tube[3]);
    check_by_integral(&section, tube[0], tube[1], tube[2], tube[3]);
}
END_TEST

/* --- limits: derivations on the middle line of the wall, in which nothing cancels --- */

START_TEST(round_keeps_its_digits_however_thin)
{
    for (double w = 0.1; w >= 1e-5; w /= 3) {
        double r = (1 - w) / 2, A = 2 * PI * r * w;
        tside_section section = round_tube(1, w);
        NEAR_RELATIVE(section.area, A, 1e-14);
        NEAR_RELATIVE(section.inertia, A * (r * r + w * w / 4) / 2, 1e-14);
        NEAR_RELATIVE(section.plastic_modulus, 4 * r * r * w + w * w * w / 3, 1e-14);
        NEAR_RELATIVE(section.gyration, sqrt((r * r + w * w / 4) / 2), 1e-14);
        NEAR_RELATIVE(section.torsion_modulus, 2 * PI * r * r * w,
                      1.01 * w / (2 * r)); /* Bredt's, by the middle radius */
        NEAR_RELATIVE(section.torsion, 2 * PI * r * r * r * w, 1.01 * w * w / (4 * r * r));
    }
}
END_TEST

START_TEST(sharp_square_keeps_its_digits_however_thin)
{
    for (double T = 0.1; T >= 1e-5; T /= 3) {
        double m = 1 - T, Ah = m * m;
        tside_section section = cornered_tube(1, T, 0, 0);
        NEAR_RELATIVE(section.area, 4 * m * T, 1e-14);
        NEAR_RELATIVE(section.inertia, 2 * m * T * (m * m + T * T) / 3, 1e-14);
        NEAR_RELATIVE(section.plastic_modulus, (3 * m * m * T + T * T * T) / 2, 1e-14);
        NEAR_RELATIVE(section.torsion, m * m * m * T, 1.4 * T * T / Ah); /* Bredt's 4 Ah^2 T/h */
        NEAR_RELATIVE(section.torsion_modulus, 2 * Ah * T, 2.02 * T / m);
    }
}
END_TEST

/*
 * A square tube whose corners meet is a round one. Annex B's torsion is then T^3 h/3 on Bredt's, where the exact one is
 * T^3 h/4.
 */
START_TEST(wholly_rounded_square_is_round)
{
    for (double T = 1.0 / 16; T >= 1e-5; T /= 2) { /* halves, so that 0.5 - T is exact */
        double m = 1 - T;
        tside_section square = cornered_tube(1, T, 0.5, 0.5 - T), round = round_tube(1, T);
        NEAR_RELATIVE(square.area, round.area, 4e-15);
        NEAR_RELATIVE(square.inertia, round.inertia, 4e-15);
        NEAR_RELATIVE(square.section_modulus, round.section_modulus, 4e-15);
        NEAR_RELATIVE(square.plastic_modulus, round.plastic_modulus, 4e-15);
        NEAR_RELATIVE(square.gyration, round.gyration, 4e-15);
        NEAR_RELATIVE(square.torsion, round.torsion + PI * m * T * T * T / 12, 4e-15);
        NEAR_RELATIVE(square.torsion_modulus, 2 * square.torsion / (m + 2 * T), 4e-15);
    }
}
END_TEST

/*
 * A shrinking corner goes over into a sharp one: it takes off (4 - pi)(Ro^2 - Ri^2), and moments below those of (4 -
 * pi) Ro^2 at the side.
 */
START_TEST(corners_shrink_continuously)
{
    tside_section sharp = cornered_tube(0.05, 0.003, 0, 0);
    for (double Ro = 0.006; Ro > 1e-9; Ro /= 4) {
        double Ri = Ro / 2, off = (4 - PI) * (Ro * Ro - Ri * Ri), most = (4 - PI) * Ro * Ro;
        tside_section section = cornered_tube(0.05, 0.003, Ro, Ri);
        NEAR(section.area, sharp.area - off, 1e-15 * sharp.area);
        ck_assert_double_le(section.inertia, sharp.inertia);
        ck_assert_double_le(section.plastic_modulus, sharp.plastic_modulus);
        NEAR(section.inertia, sharp.inertia, most * 0.025 * 0.025 + 1e-15 * sharp.inertia);
        NEAR(section.plastic_modulus, sharp.plastic_modulus, most * 0.025 + 1e-15 * sharp.plastic_modulus);
        NEAR_RELATIVE(section.torsion, sharp.torsion, 4 * Ro / 0.047);
        NEAR_RELATIVE(section.torsion_modulus, sharp.torsion_modulus, 4 * Ro / 0.047);
    }
}
END_TEST

static void same_section(const tside_section *got, const tside_section *want)
{
    NEAR_RELATIVE(got->area, want->area, 1e-14);
    NEAR_RELATIVE(got->inertia, want->inertia, 1e-14);
    NEAR_RELATIVE(got->torsion, want->torsion, 1e-14);
    NEAR_RELATIVE(got->torsion_modulus, want->torsion_modulus, 1e-14);
}

/* EN 10219-2: radii for the calculation are 2.0T and 1.0T to 6 mm, 2.5T and 1.5T to 10 mm, 3.0T and 2.0T above. */
START_TEST(standard_corners)
{
    const double wall[] = {0.002, 0.006, 0.0060001, 0.008, 0.010, 0.0100001, 0.016},
                 outer[] = {2, 2, 2.5, 2.5, 2.5, 3, 3};
    double T = wall[_i];
    tside_section standard = square_tube(0.15, T), given = cornered_tube(0.15, T, outer[_i] * T, (outer[_i] - 1) * T);
    same_section(&standard, &given);
}
END_TEST

/* --- laws --- */

static void check_scaled(const tside_section *one, const tside_section *scaled, double k)
{
    double part = 2e-14;
    NEAR_RELATIVE(scaled->area, one->area * k * k, part);
    NEAR_RELATIVE(scaled->inertia, one->inertia * pow(k, 4), part);
    NEAR_RELATIVE(scaled->section_modulus, one->section_modulus * pow(k, 3), part);
    NEAR_RELATIVE(scaled->plastic_modulus, one->plastic_modulus * pow(k, 3), part);
    NEAR_RELATIVE(scaled->gyration, one->gyration * k, part);
    NEAR_RELATIVE(scaled->torsion, one->torsion * pow(k, 4), part);
    NEAR_RELATIVE(scaled->torsion_modulus, one->torsion_modulus * pow(k, 3), part);
    NEAR_RELATIVE(scaled->mass, one->mass * k * k, part);
}

START_TEST(lengths_scale)
{
    const double factor[] = {0.5, 1.7, 2, 10.1};
    double k = factor[_i];
    tside_section round = round_tube(0.0334, 0.0034), round_scaled = round_tube(0.0334 * k, 0.0034 * k);
    tside_section square = cornered_tube(0.05, 0.003, 0.007, 0.005),
                  square_scaled = cornered_tube(0.05 * k, 0.003 * k, 0.007 * k, 0.005 * k);
    check_scaled(&round, &round_scaled, k);
    check_scaled(&square, &square_scaled, k);
}
END_TEST

START_TEST(more_wall_is_more_of_everything)
{
    tside_section round = round_tube(0.1, 0.0005), square = square_tube(0.1, 0.0005);
    for (double wall = 0.001; wall < 0.006; wall += 0.0005) {
        tside_section rounder = round_tube(0.1, wall), squarer = square_tube(0.1, wall);
        ck_assert_double_gt(rounder.area, round.area);
        ck_assert_double_gt(rounder.inertia, round.inertia);
        ck_assert_double_gt(rounder.plastic_modulus, round.plastic_modulus);
        ck_assert_double_gt(rounder.torsion_modulus, round.torsion_modulus);
        ck_assert_double_lt(rounder.gyration, round.gyration);
        ck_assert_double_gt(squarer.area, square.area);
        ck_assert_double_gt(squarer.inertia, square.inertia);
        ck_assert_double_gt(squarer.plastic_modulus, square.plastic_modulus);
        ck_assert_double_gt(squarer.torsion_modulus, square.torsion_modulus);
        ck_assert_double_lt(squarer.gyration, square.gyration);
        ck_assert_double_lt(
            squarer.torsion,
            2 * squarer.inertia); /* Saint-Venant: no torsion constant passes the polar moment of area */
        round = rounder;
        square = squarer;
    }
}
END_TEST

/* --- published torsion examples --- */

/*
 * AISC Design Examples v13.0, Ex. H.5b: HSS5.000x0.250, design wall 0.233 in, A500 B, Fy 42 ksi: C 7.95 in3, Fcr 25.2
 * ksi; torque 200 kip in nominal, 180 by factored design, 120 by allowable stress.
 */
START_TEST(aisc_round_in_torsion)
{
    const tside_material grade = {TSIDE_STEEL, TSIDE_A500_B_ROUND, 0};
    tside_metal_values steel;
    tside_section section = round_tube(5 * IN, 0.233 * IN);
    double nominal;
    ck_assert_int_eq(tside_material_values(&grade, &steel, NULL), TSIDE_OK);
    nominal = 0.6 * steel.yield * section.torsion_modulus;
    NEAR(section.torsion_modulus / (IN * IN * IN), 7.95, 0.005);
    NEAR(0.6 * steel.yield / KSI, 25.2, 0.05);
    NEAR(nominal / KIP_IN, 200.0, 0.5);
    NEAR(0.9 * nominal / KIP_IN, 180.0, 0.5);
    NEAR(nominal / steel.safety / KIP_IN, 120.0, 0.5);
}
END_TEST

/*
 * AISC Steel Construction Manual, Table 1-12 (Shapes Database v15-v16): HSS2X2X3/16, design wall 0.174 in, J 1.09 in4,
 * C 1.14 in3. Both are Bredt's alone: J = 4 Ah^2 T/h and C = 2 Ah T. Annex B's J holds T^3 h/3 more, and its C is that
 * J over T + K/T where Bredt's is over K/T = 2 Ah/h.
 */
START_TEST(aisc_square_in_torsion)
{
    double T = 0.174 * IN, Rc = 1.5 * T, h = 4 * (2 * IN - T) - 2 * Rc * (4 - PI);
    tside_section section = square_tube(2 * IN, T);
    double bredt = section.torsion - T * T * T * h / 3, lever = section.torsion / section.torsion_modulus - T;
    NEAR(bredt / pow(IN, 4), 1.09, 0.005);
    NEAR(bredt / lever / pow(IN, 3), 1.14, 0.005);
}
END_TEST

/*
 * Beer & Johnston, Mechanics of Materials, from memory: hollow shaft 40/60 mm, 120 MPa: J 1.021e-6 m4, 4.08 kN m; 1.5 m
 * of it, G 77 GPa, twisted by 2 deg, which it rounds to 34.9e-3 rad: 1.829 kN m.
 */
START_TEST(textbook_shaft)
{
    tside_section section = round_tube(0.060, 0.010);
    NEAR(120e6 * section.torsion_modulus / 1e3, 4.08, 0.005);
    NEAR(section.torsion / 1e-6, 1.021, 0.0005);
    NEAR(77e9 * section.torsion * 34.9e-3 / 1.5 / 1e3, 1.829, 0.0005);
}
END_TEST

Suite *tube_suite(void)
{
    Suite *suite = suite_create("tube");
    TCase *shape = tcase_create("shape"), *torsion = tcase_create("torsion");
    tcase_add_loop_test(shape, round_is_the_integral_of_its_shape, 0, 6);
    tcase_add_loop_test(shape, square_is_the_integral_of_its_shape, 0, 7);
    tcase_add_loop_test(shape, given_corners_are_the_integral_of_their_shape, 0, 8);
    tcase_add_test(shape, round_keeps_its_digits_however_thin);
    tcase_add_test(shape, sharp_square_keeps_its_digits_however_thin);
    tcase_add_test(shape, wholly_rounded_square_is_round);
    tcase_add_test(shape, corners_shrink_continuously);
    tcase_add_loop_test(shape, standard_corners, 0, 7);
    tcase_add_loop_test(shape, lengths_scale, 0, 4);
    tcase_add_test(shape, more_wall_is_more_of_everything);
    suite_add_tcase(suite, shape);
    tcase_add_test(torsion, aisc_round_in_torsion);
    tcase_add_test(torsion, aisc_square_in_torsion);
    tcase_add_test(torsion, textbook_shaft);
    suite_add_tcase(suite, torsion);
    return suite;
}
