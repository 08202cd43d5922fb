/* SPDX-License-Identifier: MIT */
/*
 * A tube's section by its measures, round, or square with round corners. Source: plane geometry; EN 10219-2 for
 * corners.
 */
#include "parts/tube.h"

#include "base/field.h"

/*
 * A length of a tube that must be given; nothing thinner than the low bound is made, and above it no product of lengths
 * underflows.
 */
#define TUBE_LENGTH(S, member, least, most, text) \
    ROW(S, member, TSIDE_NUMBER, "m", text), FROM(least), TO(most), .required = 1, .basis = ""

/* clang-format off */
static const tside_field round_rows[] = {
    {TUBE_LENGTH(tside_round, diameter, 1e-3, 1, "true diameter over the outside")},
    {TUBE_LENGTH(tside_round, wall, 1e-5, 0.1, "wall")},
};
/* clang-format on */
TABLE(tside_i_round_table, round_rows);

static const char *const corners[] = {[TSIDE_CORNER_STANDARD] = "standard", [TSIDE_CORNER_GIVEN] = "given"};

/* clang-format off */
static const tside_field square_rows[] = {
    {TUBE_LENGTH(tside_square, side, 1e-3, 1, "side over the outside")},
    {TUBE_LENGTH(tside_square, wall, 1e-5, 0.1, "wall")},
    {CHOICE(tside_square, corner, corners, TSIDE_CORNER_STANDARD, "corner radii by EN 10219-2, or given")},
    {NUMBER(tside_square, outer_radius, "m", FROM(0), TO(0.5), 0, OURS, "outer corner radius"),
     APPLIES(tside_square, corner, ONLY(TSIDE_CORNER_GIVEN))},
    {NUMBER(tside_square, inner_radius, "m", FROM(0), TO(0.5), 0, OURS, "inner corner radius"),
     APPLIES(tside_square, corner, ONLY(TSIDE_CORNER_GIVEN))},
};
/* clang-format on */
TABLE(tside_i_square_table, square_rows);

/* clang-format off */
static const tside_field section_rows[] = {
    {RESULT(tside_section, area, "m2", "area of the metal")},
    {RESULT(tside_section, inertia, "m4", "second moment of area, I")},
    {RESULT(tside_section, section_modulus, "m3", "elastic section modulus, S")},
    {RESULT(tside_section, plastic_modulus, "m3", "plastic section modulus, Z")},
    {RESULT(tside_section, gyration, "m", "radius of gyration")},
    {RESULT(tside_section, torsion, "m4", "torsion constant, J")},
    {RESULT(tside_section, torsion_modulus, "m3", "torsion modulus, C: shear from torque is T/C")},
    {RESULT(tside_section, mass, "kg/m", "mass per metre")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_section_table, section_rows, tside_section);

static tside_status check_density(double density, tside_fault *fault)
{
    if (!isfinite(density))
        return tside_i_bound(fault, "density", "kg/m3", 0, TSIDE_NOT_FINITE, 0);
    if (density <= 0)
        return tside_i_bound(fault, "density", "kg/m3", density, TSIDE_NOT_ABOVE, 0);
    return TSIDE_OK;
}

static tside_status contradicts(tside_fault *fault, const char *field, const char *other, const char *reason,
                                double value, tside_relation relation, double bound)
{
    return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, field, other, reason, "m", value, relation, bound, 0);
}

/* Differences such as D^2 - d^2 = 4 w (D - w) stand factored: for a thin wall they would cancel. */
tside_status tside_i_round_section(const tside_round *tube, double density, tside_section *section, tside_fault *fault)
{
    double D = tube->diameter, w = tube->wall, d = D - 2 * w, A = TSIDE_PI * w * (D - w);
    if (2 * w >= D)
        return contradicts(fault, "tube.wall", "tube.diameter", "twice the wall must stay below the diameter", w,
                           TSIDE_NOT_BELOW, D / 2);
    section->area = A;
    section->inertia = A * (D * D + d * d) / 16;
    section->section_modulus = 2 * section->inertia / D;
    section->plastic_modulus = 2 * w * (D * D + D * d + d * d) / 6;
    section->gyration = sqrt(D * D + d * d) / 4;
    section->torsion = 2 * section->inertia;
    section->torsion_modulus = section->torsion / (D / 2);
    section->mass = density * A;
    return TSIDE_OK;
}

tside_status tside_round_section(const tside_round *tube, double density, tside_section *section, tside_fault *fault)
{
    tside_section made;
    TRY(tside_i_check(&tside_i_round_table, "tube", tube, fault));
    TRY(check_density(density, fault));
    TRY(tside_i_round_section(tube, density, &made, fault));
    return ANSWER(&tside_i_section_table, made, section, fault);
}

/* Outer corner radius in walls, the inner being one less: EN 10219-2, for the calculation of section properties. */
static double standard_radius(double wall)
{
    return wall <= 6e-3 ? 2 : wall <= 10e-3 ? 2.5 : 3;
}

/* The greatest wall whose standard outer radius is at most half the side. */
static double greatest_wall(double side)
{
    double light = fmin(side / 4, 6e-3), middle = fmin(side / 5, 10e-3), heavy = side / 6;
    return heavy > 10e-3 ? heavy : middle > 6e-3 ? middle : light;
}

static tside_status check_standard_corner(const tside_square *tube, tside_fault *fault)
{
    double greatest = greatest_wall(tube->side);
    if (tube->wall > greatest + SLACK)
        return contradicts(fault, "tube.wall", "tube.side", "twice the standard corner radius must not pass the side",
                           tube->wall, TSIDE_ABOVE, greatest);
    return TSIDE_OK;
}

static tside_status check_given_corner(const tside_square *tube, tside_fault *fault)
{
    double B = tube->side, T = tube->wall, Ro = tube->outer_radius, Ri = tube->inner_radius;
    double through = Ri +
                     (2 + sqrt(2)) * T; /* along the diagonal, sqrt 2 T - (sqrt 2 - 1)(Ro - Ri) is left of the wall */
    if (Ro > B / 2 + SLACK)
        return contradicts(fault, "tube.outer_radius", "tube.side", "twice the outer radius must not pass the side", Ro,
                           TSIDE_ABOVE, B / 2);
    if (Ro >= through)
        return contradicts(fault, "tube.outer_radius", "tube.inner_radius",
                           "the outer corner would cut through the inner one", Ro, TSIDE_NOT_BELOW, through);
    if (Ri > Ro + SLACK)
        return contradicts(fault, "tube.inner_radius", "tube.outer_radius", "the inner radius must not pass the outer",
                           Ri, TSIDE_ABOVE, Ro);
    if (Ri > B / 2 - T + SLACK)
        return contradicts(fault, "tube.inner_radius", "tube.wall",
                           "twice the inner radius must not pass the clear width", Ri, TSIDE_ABOVE, B / 2 - T);
    return TSIDE_OK;
}

static tside_status check_square(const tside_square *tube, tside_fault *fault)
{
    if (2 * tube->wall >= tube->side)
        return contradicts(fault, "tube.wall", "tube.side", "twice the wall must stay below the side", tube->wall,
                           TSIDE_NOT_BELOW, tube->side / 2);
    return tube->corner == TSIDE_CORNER_GIVEN ? check_given_corner(tube, fault) : check_standard_corner(tube, fault);
}

/*
 * What lies between a square corner and its round of radius r: area a r^2, its centroid c r from both sides, inertia
 * about it i r^4 (annex B).
 */
#define CORNER_AREA (1 - TSIDE_PI / 4)
#define CORNER_CENTROID ((10 - 3 * TSIDE_PI) / (12 - 3 * TSIDE_PI))
#define CORNER_INERTIA (1.0 / 3 - TSIDE_PI / 16 - 1 / (3 * (12 - 3 * TSIDE_PI)))

/*
 * EN 10219-2, annex B, with H = B. Its Ag, hg, Igg of the outer corner and Axi, hxi, Ixixi of the inner come here as
 * their differences, factored: of a thin wall with a wide corner all leading digits would cancel.
 */
static void bending(double B, double T, double Ro, double Ri, tside_section *section)
{
    double b = B - 2 * T;
    double hg = B / 2 - CORNER_CENTROID * Ro, hxi = b / 2 - CORNER_CENTROID * Ri, Axi = CORNER_AREA * Ri * Ri;
    double less_h = T - CORNER_CENTROID * (Ro - Ri);                              /* hg - hxi */
    double less_A = CORNER_AREA * (Ro - Ri) * (Ro + Ri);                          /* Ag - Axi */
    double less_Ah = less_A * hg + Axi * less_h;                                  /* Ag hg - Axi hxi */
    double less_Ahh = less_A * hg * hg + Axi * less_h * (hg + hxi);               /* Ag hg^2 - Axi hxi^2 */
    double less_I = CORNER_INERTIA * (Ro - Ri) * (Ro + Ri) * (Ro * Ro + Ri * Ri); /* Igg - Ixixi */

    section->area = 4 * T * (B - T) - 4 * less_A;
    section->inertia = 2 * T * (B + b) * (B * B + b * b) / 12 - 4 * (less_I + less_Ahh);
    section->section_modulus = 2 * section->inertia / B;
    section->plastic_modulus = 2 * T * (B * B + B * b + b * b) / 4 - 4 * less_Ah;
    section->gyration = sqrt(section->inertia / section->area);
}

/* EN 10219-2, annex B, with H = B. */
static void torsion(double B, double T, double Ro, double Ri, tside_section *section)
{
    double Rc = (Ro + Ri) / 2;
    double h = 2 * ((B - T) + (B - T)) - 2 * Rc * (4 - TSIDE_PI);
    double Ah = (B - T) * (B - T) - Rc * Rc * (4 - TSIDE_PI);
    double K = 2 * Ah * T / h;
    section->torsion = T * T * T * h / 3 + 2 * K * Ah;
    section->torsion_modulus = section->torsion / (T + K / T);
}

void tside_i_square_radii(const tside_square *tube, double *outer, double *inner)
{
    int given = tube->corner == TSIDE_CORNER_GIVEN;
    *outer = given ? tube->outer_radius : standard_radius(tube->wall) * tube->wall;
    *inner = given ? tube->inner_radius : *outer - tube->wall;
}

tside_status tside_i_square_section(const tside_square *tube, double density, tside_section *section,
                                    tside_fault *fault)
{
    double B = tube->side, T = tube->wall, Ro, Ri;
    TRY(check_square(tube, fault));
    tside_i_square_radii(tube, &Ro, &Ri);
    bending(B, T, Ro, Ri, section);
    torsion(B, T, Ro, Ri, section);
    section->mass = density * section->area;
    return TSIDE_OK;
}

tside_status tside_square_section(const tside_square *tube, double density, tside_section *section, tside_fault *fault)
{
    tside_section made;
    TRY(tside_i_check(&tside_i_square_table, "tube", tube, fault));
    TRY(check_density(density, fault));
    TRY(tside_i_square_section(tube, density, &made, fault));
    return ANSWER(&tside_i_section_table, made, section, fault);
}
