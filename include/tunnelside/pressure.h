/* SPDX-License-Identifier: MIT */
/* Wind as a pressure on the curtain, by a named rule, and the speed that makes a pressure. */
#ifndef TUNNELSIDE_PRESSURE_H
#define TUNNELSIDE_PRESSURE_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What turns a wind into its velocity pressure q. */
typedef enum tside_wind_rule {
    TSIDE_NO_WIND,
    TSIDE_PRESSURE_GIVEN, /* the caller's own q */
    TSIDE_PLAIN,          /* q = rho V^2/2, V the gust at the side itself */
    TSIDE_ASCE_7_16,      /* V a gust of 3 s, 33 ft above open country */
    TSIDE_ASCE_7_22,      /* the same V, with that edition's profile of heights */
    TSIDE_EN_1991_1_4     /* V a mean over 10 min, 10 m above open country: the edition of 2005 */
} tside_wind_rule;

/* The ground around, as ASCE 7 has it. */
typedef enum tside_exposure {
    TSIDE_EXPOSURE_B, /* towns, woods */
    TSIDE_EXPOSURE_C, /* open country */
    TSIDE_EXPOSURE_D  /* open water, mud flats */
} tside_exposure;

/* The ground around, as EN 1991-1-4 has it. */
typedef enum tside_category {
    TSIDE_CATEGORY_0,    /* the sea, its open coast */
    TSIDE_CATEGORY_I,    /* lakes, flat and bare ground */
    TSIDE_CATEGORY_II,   /* low growth, obstacles far apart */
    TSIDE_CATEGORY_III,  /* villages, suburbs, lasting woods */
    TSIDE_CATEGORY_IV,   /* towns */
    TSIDE_CATEGORY_GIVEN /* roughness and least height as a national annex has them */
} tside_category;

typedef struct tside_wind {
    tside_wind_rule rule;
    double coefficient;       /* 1, net, inside less outside: outward positive; for wind pressing
                               * inward ask again, with that one's size */
    double load_factor;       /* 1, on the pressure */
    double round_force;       /* 1, force coefficient of round pipe, wind square to it */
    double square_force;      /* 1, force coefficient of square tube and of the drive */
    double drive_face;        /* m2, of the drive, that wind along the house meets */
    double speed;             /* m/s, as the rule has it */
    double velocity_pressure; /* Pa, with TSIDE_PRESSURE_GIVEN */
    double density;           /* kg/m3, of the air */
    int height_given;
    double height; /* m, above ground, of the house's top */
    tside_exposure exposure;
    double directionality; /* 1, Kd */
    double topography;     /* 1, Kzt */
    double elevation;      /* 1, Ke */
    int exposure_least_given;
    double exposure_least; /* 1, least Kz */
    tside_category category;
    double roughness;    /* m, z0, with TSIDE_CATEGORY_GIVEN */
    double height_least; /* m, zmin, with TSIDE_CATEGORY_GIVEN */
    int terrain_given;
    double terrain;    /* 1, kr */
    double direction;  /* 1, c_dir */
    double season;     /* 1, c_season */
    double orography;  /* 1, co */
    double turbulence; /* 1, kI */
} tside_wind;

/* What a wind comes to. */
typedef struct tside_pressure {
    double velocity; /* Pa, q */
    double counted;  /* Pa, q with the load factor and, by ASCE 7-22, Kd: what a coefficient
                      * multiplies */
    double net;      /* Pa, on the curtain */
    int exposure_given;
    double exposure; /* 1, Kz, by ASCE 7 */
    int mean_speed_given;
    double mean_speed; /* m/s, vm at the height, by EN 1991-1-4 */
    int intensity_given;
    double intensity; /* 1, Iv, of turbulence there, by EN 1991-1-4 */
} tside_pressure;

/*
 * The pressure of a wind on the curtain: net = q x coefficient x load factor, and by ASCE 7-22 x Kd.
 * For choosing parts, not a design: the code's own procedure, combinations, coefficients and corner
 * zones come first, and a curtain that flaps pulls more than this.
 *
 * By the plain rule q = rho V^2/2. By ASCE 7 q = 0.613 Kz Kzt Kd Ke V^2 (7-22 without Kd), Kz = 2.01 (7-22:
 * 2.41) (max(z, 15 ft)/zg)^(2/a). EN 1991-1-4: vm = kr ln(z'/z0) co vb, z' = max(z, zmin), vb =
 * c_dir c_season V, kr = 0.19 (z0/0.05 m)^0.07, Iv = kI/(co ln(z'/z0)), q = (1 + 7 Iv) rho vm^2/2.
 *
 * The house's top is on the safe side of ASCE's mean roof height. Against the allowables of this
 * library ASCE takes a load factor of 0.6 on its strength-level V (2.4.1, from 7-10 on), EN 1990
 * takes 1.5 against yield.
 * wind: every field checked, its rule not TSIDE_NO_WIND, its height given where the rule is a
 * code's.
 * pressure: receives it.
 * TSIDE_OUT_OF_BOUNDS: a field, no wind, or no height.
 * TSIDE_CONTRADICTS: a roughness not below the height that it counts at.
 * Limits: from 0 to 200 m above ground.
 * Accuracy: to 2e-15, relative; by EN 1991-1-4 to that times 1 + 1/ln(z'/z0).
 * Sources: ASCE/SEI 7-16 and 7-22, 26.10, tables 26.10-1 and 26.11-1; EN 1991-1-4:2005, 4.3 to 4.5
 * and table 4.1; all through public copies; q from the kinetic energy of air.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_wind_pressure(const tside_wind *wind,
                                                           tside_pressure *pressure,
                                                           tside_fault *fault);

/*
 * The speed, as a wind's rule has it, that makes a net pressure: the inverse of
 * tside_wind_pressure, load factor and all.
 * wind: every field checked but speed, which is not read; of a rule that has a speed.
 * net: Pa, from 0, on the curtain.
 * speed: receives m/s.
 * TSIDE_OUT_OF_BOUNDS: a field, net, a rule without a speed, or no height.
 * TSIDE_CONTRADICTS: a roughness not below the height that it counts at.
 * Accuracy: as tside_wind_pressure.
 * Source: derivation, pressure is as the square of speed by each rule.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_wind_speed(const tside_wind *wind, double net,
                                                        double *speed, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
