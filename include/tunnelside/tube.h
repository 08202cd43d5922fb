/* SPDX-License-Identifier: MIT */
/* Tubes: section properties, and true sizes of trade names. */
#ifndef TUNNELSIDE_TUBE_H
#define TUNNELSIDE_TUBE_H

#include <tunnelside/material.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tside_round {
    double diameter; /* m, true, over the outside */
    double wall;     /* m */
} tside_round;

typedef enum tside_corner {
    TSIDE_CORNER_STANDARD, /* radii by EN 10219-2: 2T and T to 6 mm, 2.5T and 1.5T to 10 mm, 3T
                            * and 2T above */
    TSIDE_CORNER_GIVEN
} tside_corner;

typedef struct tside_square {
    double side; /* m, over the outside */
    double wall; /* m */
    tside_corner corner;
    double outer_radius; /* m, with TSIDE_CORNER_GIVEN */
    double inner_radius; /* m, with TSIDE_CORNER_GIVEN */
} tside_square;

typedef struct tside_section {
    double area;            /* m2 */
    double inertia;         /* m4, I */
    double section_modulus; /* m3, S, elastic */
    double plastic_modulus; /* m3, Z */
    double gyration;        /* m, radius of gyration */
    double torsion;         /* m4, J */
    double torsion_modulus; /* m3, C: shear from torque is T/C */
    double mass;            /* kg/m */
} tside_section;

/*
 * Section properties of a round tube: A, I, S = 2I/D, Z = (D^3-d^3)/6, J = 2I, C = J/(D/2).
 * tube: every field checked; diameter from 1 mm to 1 m, wall from 0.01 mm and below half the
 * diameter.
 * density: kg/m3, above 0.
 * section: receives the properties.
 * TSIDE_OUT_OF_BOUNDS: diameter, wall or density.
 * TSIDE_CONTRADICTS: twice the wall is not below the diameter.
 * Accuracy: to 2e-15, relative, however thin the wall.
 * Source: mechanics of materials; the tables of EN 10219-2 and EN 10210-2 follow to the printed
 * digit.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_round_section(const tside_round *tube, double density,
                                                           tside_section *section,
                                                           tside_fault *fault);

/*
 * Section properties of a square tube with rounded corners, J = T^3 h/3 + 2 K Ah, C = J/(T + K/T).
 *
 * The standard corner is EN 10219-2's; AISC's tables take 2T and T at every wall, which is the same
 * to 6 mm: above, give those radii. AISC's tables use a design wall of 0.93 T and Bredt's J = 4
 * Ah^2 T/h and C = 2 Ah T alone: for those pass that wall, and expect J above theirs by T^3 h/3,
 * and C below theirs, some T to half the side.
 * tube: every field checked; side from 1 mm to 1 m, wall from 0.01 mm and below half the side,
 * twice the outer radius at most the side; both radii 0 make a sharp tube.
 * density: kg/m3, above 0.
 * section: receives the properties.
 * TSIDE_OUT_OF_BOUNDS: a field of the tube, or the density.
 * TSIDE_CONTRADICTS: twice the wall is not below the side; twice the outer radius is above it; the
 * inner radius is above the outer, or above half the clear width; the corners leave no wall along
 * the diagonal.
 * Accuracy: to 2e-15, relative, to those formulas.
 * Source: EN 10219-2, annex B.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_square_section(const tside_square *tube,
                                                            double density, tside_section *section,
                                                            tside_fault *fault);

/*
 * One true size of one trade name. "family name", with a blank between, is a text that
 * tside_tube_size or tside_tube_wall reads.
 */
typedef struct tside_trade {
    const char *family; /* "nps", "fence"; for walls "sch 40 nps", "sch 80 nps", "f1043 ic
                         * fence", "bwg", "sheet" */
    const char *name;   /* "1-1/4" of pipe, "1-3/8 in" of fence tube, or the gauge's number */
    double value;       /* m */
} tside_trade;

/*
 * The true outside diameter of a trade name within a family: "nps 1", "fence 1-3/8 in", "tube 1-3/8
 * in". Blanks, case and the unit "in" may vary; "1 3/8" and "1-3/8" are one name. The name of
 * "tube" is its true diameter, with its unit: "tube 38 mm".
 * text: family, then name.
 * diameter: receives m.
 * TSIDE_OUT_OF_BOUNDS: after "tube", not from 1 mm to 1 m.
 * TSIDE_UNREADABLE: after "tube", not a length; fault.index tells where.
 * TSIDE_NOT_FOUND: a name without a family (fault.other then lists the families that have it, each
 * with its true size), an unknown family (fault.other lists the families) or a name the family has
 * not (fault.other lists its names).
 * Accuracy: to 5e-16, relative, of the inches of its table; after "tube" correctly rounded.
 * Sources: NPS: ASME B36.10M; fence sizes: chain-link practice, from memory; tube: the name is the
 * true diameter.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_tube_size(const char *text, double *diameter,
                                                       tside_fault *fault);

/*
 * The wall of a trade name within a series: "sch 40 nps 1-1/4", "f1043 ic fence 1-5/8 in", "bwg 14"
 * (tubing gauge), "sheet 14" (sheet gauge).
 * text: series, then name.
 * wall: receives m.
 * TSIDE_NOT_FOUND: as for tside_tube_size; a bare gauge is refused with the series that have it.
 * Accuracy: to 5e-16, relative, of the inches of its table.
 * Sources: schedules: ASME B36.10M; F1043 IC: fence tube of ASTM F1043, group IC, from memory; BWG:
 * Birmingham (Stubs) gauge; sheet: Manufacturers' Standard Gauge, from memory.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_tube_wall(const char *text, double *wall,
                                                       tside_fault *fault);

/*
 * Every trade size known to tside_tube_size or tside_tube_wall, but for "tube", whose names are
 * numbers; a family's names stand together.
 * of_walls: any, 0 for sizes, else walls.
 * count: receives how many.
 * Returns the first.
 * Accuracy: as tside_tube_size and tside_tube_wall, whose numbers they are.
 * Sources: as tside_tube_size and tside_tube_wall.
 */
TSIDE_API const tside_trade *tside_trades(int of_walls, int *count);

#ifdef __cplusplus
}
#endif
#endif
