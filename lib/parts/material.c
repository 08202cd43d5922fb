/* SPDX-License-Identifier: MIT */
/*
 * What a metal and its grade give: stiffness, density, yield, the safety that goes with it, and how it grows. Sources
 * stand beside each value.
 */
#include "parts/material.h"

#include <string.h>

#include "base/field.h"

static const char *const metal_names[] = {
    [TSIDE_STEEL] = "steel",
    [TSIDE_ALUMINIUM_6061] = "aluminium_6061",
    [TSIDE_ALUMINIUM_6063] = "aluminium_6063",
};

static const char *const grade_names[] = {
    [TSIDE_GRADE_UNKNOWN] = "unknown",
    [TSIDE_GRADE_GIVEN] = "given",
    [TSIDE_A53_B] = "A53_B",
    [TSIDE_A500_B_ROUND] = "A500_B_round",
    [TSIDE_A500_B_SHAPED] = "A500_B_shaped",
    [TSIDE_A500_C_ROUND] = "A500_C_round",
    [TSIDE_A500_C_SHAPED] = "A500_C_shaped",
    [TSIDE_S235] = "S235",
    [TSIDE_S355] = "S355",
    [TSIDE_6061_T6] = "6061_T6",
    [TSIDE_6063_T5] = "6063_T5",
    [TSIDE_6063_T6] = "6063_T6",
};

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_material, metal, metal_names, TSIDE_STEEL, "the metal, which sets stiffness and density")},
    {CHOICE(tside_material, grade, grade_names, TSIDE_GRADE_UNKNOWN,
             "the grade, which sets the least yield; unknown: utilisations become the yield they need")},
    {REQUIRED_FROM(tside_material, yield, "Pa", 1e6, 2e9, "yield of a grade given by its maker"), APPLIES(tside_material, grade, ONLY(TSIDE_GRADE_GIVEN))},
};
/* clang-format on */
TABLE(tside_i_material_table, rows);

/*
 * Steel: E 29000 ksi and G 11200 ksi as AISC 360 prints them; 7850 kg/m3 as the tables of EN 10219-2 use.
 * Aluminium: E 10100 ksi, G 3800 ksi and 2700 kg/m3 from memory of the Aluminum Design Manual.
 * Safety on yield: 1.67 by AISC 360, chapters F and H3; 1.65 from memory of the Aluminum Design Manual.
 * Expansion: EN 1993-1-1, 3.2.6, and EN 1999-1-1, 3.2.5, from memory.
 */
static const struct {
    double modulus, shear_modulus, density, safety, expansion;
} metals[] = {
    [TSIDE_STEEL] = {29000 * KSI, 11200 * KSI, 7850, 1.67, 12e-6},
    [TSIDE_ALUMINIUM_6061] = {10100 * KSI, 3800 * KSI, 2700, 1.65, 23e-6},
    [TSIDE_ALUMINIUM_6063] = {10100 * KSI, 3800 * KSI, 2700, 1.65, 23e-6},
};

/*
 * Least yields. A53 B, A500 B shaped and A500 C: as Materials for Civil and Construction Engineers, table 3.2, prints
 * them from the standards. A500 B round: 42 ksi, as AISC Design Examples v13.0, example H.5b, takes it. S235 and S355
 * of EN 10219-1, wall to 16 mm, from memory. Aluminium, extruded: 35, 16 and 25 ksi, from memory of the Aluminum Design
 * Manual.
 */
static const struct {
    tside_metal metal;
    double yield;
} grades[] = {
    [TSIDE_GRADE_UNKNOWN] = {TSIDE_STEEL, 0},
    [TSIDE_GRADE_GIVEN] = {TSIDE_STEEL, 0},
    [TSIDE_A53_B] = {TSIDE_STEEL, 35 * KSI},
    [TSIDE_A500_B_ROUND] = {TSIDE_STEEL, 42 * KSI},
    [TSIDE_A500_B_SHAPED] = {TSIDE_STEEL, 46 * KSI},
    [TSIDE_A500_C_ROUND] = {TSIDE_STEEL, 46 * KSI},
    [TSIDE_A500_C_SHAPED] = {TSIDE_STEEL, 50 * KSI},
    [TSIDE_S235] = {TSIDE_STEEL, 235 * MPA},
    [TSIDE_S355] = {TSIDE_STEEL, 355 * MPA},
    [TSIDE_6061_T6] = {TSIDE_ALUMINIUM_6061, 35 * KSI},
    [TSIDE_6063_T5] = {TSIDE_ALUMINIUM_6063, 16 * KSI},
    [TSIDE_6063_T6] = {TSIDE_ALUMINIUM_6063, 25 * KSI},
};

tside_status tside_i_material_values(const tside_material *material, tside_metal_values *values, tside_fault *fault)
{
    tside_metal metal = material->metal;
    tside_grade grade = material->grade;
    int named = grade != TSIDE_GRADE_UNKNOWN && grade != TSIDE_GRADE_GIVEN;
    if (named && grades[grade].metal != metal)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "material.grade", "material.metal",
                              "the grade is of another metal");

    memset(values, 0, sizeof *values); /* room that the compiler leaves between members too */
    values->modulus = metals[metal].modulus;
    values->shear_modulus = metals[metal].shear_modulus;
    values->density = metals[metal].density;
    values->yield_known = grade != TSIDE_GRADE_UNKNOWN;
    values->yield = grade == TSIDE_GRADE_GIVEN ? material->yield : grades[grade].yield;
    values->safety = metals[metal].safety;
    values->expansion = metals[metal].expansion;
    return TSIDE_OK;
}

tside_status tside_material_values(const tside_material *material, tside_metal_values *values, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_material_table, "material", material, fault));
    return tside_i_material_values(material, values, fault);
}
