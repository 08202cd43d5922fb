/* SPDX-License-Identifier: MIT */
/* Metals: stiffness, density, and the yield of named grades. */
#ifndef TUNNELSIDE_MATERIAL_H
#define TUNNELSIDE_MATERIAL_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_metal { TSIDE_STEEL, TSIDE_ALUMINIUM_6061, TSIDE_ALUMINIUM_6063 } tside_metal;

/* Minimum yield by the named standard's grade. */
typedef enum tside_grade {
    TSIDE_GRADE_UNKNOWN, /* no yield known: a utilisation becomes "needs a yield of at least" */
    TSIDE_GRADE_GIVEN,   /* the caller's own yield */
    TSIDE_A53_B,         /* ASTM A53 grade B */
    TSIDE_A500_B_ROUND,  /* ASTM A500 grade B, round */
    TSIDE_A500_B_SHAPED, /* ASTM A500 grade B, square and rectangular */
    TSIDE_A500_C_ROUND,
    TSIDE_A500_C_SHAPED,
    TSIDE_S235,    /* EN 10219-1 S235JRH, wall to 16 mm */
    TSIDE_S355,    /* EN 10219-1 S355J2H, wall to 16 mm */
    TSIDE_6061_T6, /* extruded */
    TSIDE_6063_T5,
    TSIDE_6063_T6
} tside_grade;

typedef struct tside_material {
    tside_metal metal;
    tside_grade grade;
    double yield; /* Pa, with TSIDE_GRADE_GIVEN only */
} tside_material;

typedef struct tside_metal_values {
    double modulus;       /* Pa, Young's */
    double shear_modulus; /* Pa */
    double density;       /* kg/m3 */
    int yield_known;
    double yield;     /* Pa, where known; else 0 */
    double safety;    /* 1, yield is divided by this in bending and in shear: 1.67 steel
                       * (AISC 360 F and H3), 1.65 aluminium */
    double expansion; /* 1/K, of length by warmth */
} tside_metal_values;

/*
 * Stiffness, density, yield, safety factor and expansion of a material. A mill's certificate or a newer
 * edition may promise more.
 * material: every field checked; the grade is of its metal, and with TSIDE_GRADE_GIVEN the yield
 * above 0, to 2 GPa.
 * values: receives them.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a grade of another metal.
 * Accuracy: a given yield exact, all else to 3e-16, relative, of the printed values.
 * Sources: steel E 29000 ksi, G 11200 ksi: AISC 360; density 7850 kg/m3: EN 10219-2; yields of A53
 * and A500: those standards, of S235 and S355: EN 10219-1, from memory; aluminium from memory of
 * the Aluminum Design Manual; expansion 12e-6 of steel, EN 1993-1-1, and 23e-6 of aluminium, EN
 * 1999-1-1, both from memory.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_material_values(const tside_material *material,
                                                             tside_metal_values *values,
                                                             tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
