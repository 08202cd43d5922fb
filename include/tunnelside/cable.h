/* SPDX-License-Identifier: MIT */
/*
 * The cable from supply to drive: resistance, drop, and the smallest that keeps a drop. Direct
 * current, copper.
 */
#ifndef TUNNELSIDE_CABLE_H
#define TUNNELSIDE_CABLE_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_wire {
    TSIDE_NO_CABLE, /* none counted: the drive sits at its supply */
    TSIDE_AWG,      /* American wire gauge */
    TSIDE_AREA      /* by cross-section, such as 2.5 mm2 */
} tside_wire;

typedef enum tside_strands {
    TSIDE_STRANDED, /* by area: class 2 of IEC 60228 */
    TSIDE_SOLID,    /* class 1 */
    TSIDE_FLEXIBLE  /* fine strands, such as cord that follows the drive: class 5 */
} tside_strands;

typedef struct tside_cable {
    tside_wire wire;
    tside_strands strands;
    int gauge;          /* AWG: 14 is 14, and 0, -1, -2, -3 are 1/0 to 4/0 */
    double area;        /* m2, nominal, of one conductor */
    double length;      /* m, one way, from supply to drive when shut */
    double follow;      /* 1, times the opening, that flexible cord adds to follow the drive */
    double temperature; /* degC, of the copper */
    int drop_limit_given, ampacity_given, fuse_given;
    double drop_limit; /* 1, share of the supply's voltage that may be lost */
    double ampacity;   /* A, that the cable may carry, by local code and its maker */
    double fuse;       /* A */
} tside_cable;

/* What the current is when the cable takes its share of the voltage. */
typedef enum tside_loading {
    TSIDE_RUNNING, /* the load asks for its torque, and so for its current, whatever the voltage */
    TSIDE_STARTING /* a standing motor is a resistance: the cable's own makes its current less */
} tside_loading;

/*
 * The resistance of a cable, there and back, at its temperature t: that at 20 C times 1 + 0.00393
 * (t - 20).
 *
 * By gauge at 20 C: 2 l rho/A, of a diameter of 0.127 mm x 92^((36 - n)/39) (ASTM B258), rho = 1/58
 * ohm mm2/m, stranded or flexible 2 % more. By area, of the sizes that tside_cable_smallest tries:
 * the greatest resistance that IEC 60228 allows plain copper of its class, which a sold cable may
 * have (4 to 16 % above 2 l rho/A). Of any other area the copper is taken to be what its name says,
 * as by gauge. What its drive's travel adds is left out; a drive following its cord adds follow
 * times the opening to the length.
 * cable: every field checked.
 * resistance: receives ohm, 0 for no cable.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * Accuracy: of the formula to 2e-15, relative.
 * Source: IEC 60228, tables 1 to 3, those of 0.5, 0.75, 16 and above 25 mm2 from memory; IEC 60028,
 * from memory, for resistivity and temperature; the 2 % as NEC chapter 9, table 8.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_cable_resistance(const tside_cable *cable,
                                                              double *resistance,
                                                              tside_fault *fault);

/*
 * The smallest trade size that keeps a drop: even gauges from 20, then 3, 1, 1/0 to 4/0 between; or
 * 0.5 to 120 mm2.
 * cable: every field checked but gauge and area, which are not used; its wire says in which series
 * to look.
 * voltage: V, above 0, of the supply.
 * current: A, from 0, running, or starting without any cable.
 * loading: one of tside_loading, which of the two.
 * drop: V, above 0, that may be lost.
 * smallest: receives the cable with the size found.
 * TSIDE_OUT_OF_BOUNDS: a field or argument; cable.wire where there is none.
 * TSIDE_OUT_OF_REACH: not even the largest keeps it: value and bound are the length of the cable
 * and the greatest that is kept, in m; TSIDE_NONE_FITS where none that the field allows is.
 * Accuracy: exact, a size of the list: the first whose drop is at most that allowed, or above it
 * by no more than 1e-9 of it.
 * Source: the sizes: NEC chapter 9, table 8 (20 AWG, which it lacks, is common practice), and IEC
 * 60228, both lists from memory; the drop: derivation, Ohm's law.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_cable_smallest(const tside_cable *cable,
                                                            double voltage, double current,
                                                            tside_loading loading, double drop,
                                                            tside_cable *smallest,
                                                            tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
