/* SPDX-License-Identifier: MIT */
/* Field tables: what every public structure holds, its units, bounds, usual values and meaning. */
#ifndef TUNNELSIDE_FIELD_H
#define TUNNELSIDE_FIELD_H

#include <tunnelside/fault.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The structures that have a table, one a line: of tside_material the kind is TSIDE_KIND_MATERIAL.
 */
/* clang-format off */
/* asked: inputs, checked by every function that takes them */
#define TSIDE_ASKED_LIST(KIND) \
    KIND(MATERIAL, material) \
    KIND(ROUND, round) \
    KIND(SQUARE, square) \
    KIND(FRAME, frame) \
    KIND(CURTAIN, curtain) \
    KIND(ROLL, roll) \
    KIND(STOPS, stops) \
    KIND(DRIVE, drive) \
    KIND(GUIDE, guide) \
    KIND(EXTENDER, extender) \
    KIND(LOAD, load) \
    KIND(BAR, bar) \
    KIND(END, end) \
    KIND(COLLAR, collar) \
    KIND(LIMITS, limits) \
    KIND(KEEP_OUT, keep_out) \
    KIND(BOLT, bolt) \
    KIND(BOLT_PART, bolt_part) \
    KIND(FITTINGS, fittings) \
    KIND(STOCK_LENGTH, stock_length) \
    KIND(STOCK, stock) \
    KIND(CUT, cut) \
    KIND(CABLE, cable) \
    KIND(CRANK, crank) \
    KIND(ALONG, along) \
    KIND(FOOTING, footing) \
    KIND(WIND, wind) \
    KIND(AIR, air) \
    KIND(GIVE, give) \
    KIND(ROPE, rope) \
    KIND(ROPING, roping) \
    KIND(SPAN, span) \
    KIND(LOOSE, loose) \
    KIND(BAY, bay) \
    KIND(SIDE, side) \
    KIND(PICTURE, picture)
/* answered: results */
#define TSIDE_ANSWERED_LIST(KIND) \
    KIND(SECTION, section) \
    KIND(POSITION, position) \
    KIND(SWEEP, sweep) \
    KIND(STAND, stand) \
    KIND(SKEW, skew) \
    KIND(FIXED, fixed) \
    KIND(FIXED_LOAD, fixed_load) \
    KIND(PRESSURE, pressure) \
    KIND(BELLY, belly) \
    KIND(LOOSENING, loosening) \
    KIND(BLOWN, blown) \
    KIND(BAY_LOAD, bay_load) \
    KIND(LAYOUT, layout) \
    KIND(TORQUE, torque) \
    KIND(EXTENDER_LOAD, extender_load) \
    KIND(STRENGTH_LINE, strength_line) \
    KIND(FINDING, finding) \
    KIND(TURN, turn) \
    KIND(BAR_STICK, bar_stick) \
    KIND(ITEM, item) \
    KIND(RUN, run) \
    KIND(CRANKING, cranking) \
    KIND(AIRING, airing) \
    KIND(ROPED, roped) \
    KIND(ROPE_OVER, rope_over) \
    KIND(DRIVE_CHOICE, drive_choice) \
    KIND(KEEP_OFF, keep_off) \
    KIND(END_PLAN, end_plan) \
    KIND(BLOWING, blowing) \
    KIND(ROPE_PLAN, rope_plan) \
    KIND(PLAN, plan) \
    KIND(BOLT_PLAN, bolt_plan) \
    KIND(BEARING, bearing) \
    KIND(STICK, stick) \
    KIND(CUT_PLAN, cut_plan) \
    KIND(STROKE, stroke) \
    KIND(DIMENSION, dimension) \
    KIND(NOTE, note) \
    KIND(DRAWING, drawing)
/* clang-format on */

#define TSIDE_KIND_NAME(code, name) TSIDE_KIND_##code,

/* What a structure is. */
typedef enum tside_kind {
    TSIDE_ASKED_LIST(TSIDE_KIND_NAME) TSIDE_ANSWERED_LIST(TSIDE_KIND_NAME) TSIDE_KIND_COUNT
} tside_kind;

typedef enum tside_type {
    TSIDE_NUMBER, /* a double */
    TSIDE_COUNT,  /* an int */
    TSIDE_CHOICE, /* an enumeration: an int from 0 to choice_count - 1 */
    TSIDE_GROUP,  /* a nested structure */
    TSIDE_LIST    /* an array of structures, with a count beside it */
} tside_type;

/*
 * Which system bolts, their holes and stock lengths are bought in; what is usual follows from it.
 */
typedef enum tside_hardware { TSIDE_HARDWARE_INCH, TSIDE_HARDWARE_METRIC } tside_hardware;

/* A whole table, of which the library alone knows the inside. */
typedef struct tside_table tside_table;

/* One row of a table. Every string is constant and never NULL but for applies_to. */
typedef struct tside_field {
    const char *name; /* the member's name */
    tside_type type;
    const char *unit;    /* SI unit: "m", "kg/m2", "rad" ...; "1" for a plain number, "turn" for
                          * revolutions */
    const char *meaning; /* what it is, in one line */
    size_t offset;       /* of the member in its structure */

    /* number and count */
    double low, high;        /* in the unit above, bounds; infinite where there is none */
    int low_open, high_open; /* 1 where the bound itself is out of bounds */
    int required;            /* 1: has no usual value and must be given */
    int optional;            /* 1: may be absent; given_offset then locates the int that says it
                              * is given */
    double usual;            /* in that unit, the value when not given, where neither required
                              * nor optional */
    double usual_low, usual_high; /* in that unit, outside these it is legal but unusual; equal
                                   * where not stated */
    const char *basis;            /* what the usual value rests on; "" where there is none */
    double tolerance;             /* in that unit, how far off a careful measurement may be, either
                              * way (this library's choice); 0 where nothing is measured */
    size_t given_offset;
    int film; /* 1: film's thickness, of which text may be in mil too */

    /* choice */
    const char *const *choices; /* their names, in order */
    int choice_count;

    /* group and list */
    tside_kind kind;           /* of the nested structure or element */
    const tside_table *nested; /* its table, as the library itself finds it */
    size_t stride;             /* list: bytes from one element to the next */
    int capacity;              /* list: greatest count */
    size_t count_offset;       /* list: offset of the int that holds the count */

    /* applies only while a choice above it has one of some values, and applies itself */
    const char *applies_to; /* that choice's name, or NULL: always */
    size_t applies_offset;  /* of that choice in the structure */
    unsigned applies_mask;  /* bit k set: applies while the choice is k */
} tside_field;

/*
 * The table of a structure, in the order in which it is checked, read and printed.
 * kind: any, which structure.
 * count: receives the number of rows.
 * Returns the first row, or NULL with a count of 0 for a kind that does not exist.
 * Source: each row's basis.
 */
TSIDE_API const tside_field *tside_fields(tside_kind kind, int *count);

/*
 * Fills a structure with its usual values: choices with the usual choice, optional numbers as not
 * given, lists as empty, required numbers with 0, which is out of their bounds, so that forgetting
 * one is refused; a required level place may be 0 only where it is measured from the bow's face.
 * Hardware is usually inch hardware.
 * kind: any, the structure's; one that does not exist changes nothing.
 * structure: receives the values.
 * Source: each row's basis, mostly common practice, no published source.
 */
TSIDE_API void tside_usual(tside_kind kind, void *structure);

/*
 * Fills again those usual values that depend on a choice, after that choice has been set and before
 * all else is: a hand drive's usual mass is not a gearmotor's, and metric hardware's usual bolt is
 * M8.
 * kind: any, the structure's; one that does not exist changes nothing.
 * structure: its choices are read, and it receives the values.
 * Source: each row's basis, mostly common practice, no published source.
 */
TSIDE_API void tside_usual_by_choice(tside_kind kind, void *structure);

/*
 * Chooses the hardware of a structure and of all that is nested in it, and fills again those usual
 * values that depend on a choice, as tside_usual_by_choice does.
 * kind: any, the structure's; one that does not exist changes nothing.
 * hardware: of whatever in the structure has that choice.
 * structure: its other choices are read, and it receives choice and values.
 * Source: each row's basis, mostly common practice, no published source.
 */
TSIDE_API void tside_usual_in(tside_kind kind, tside_hardware hardware, void *structure);

/*
 * Checks a structure against its table: finite, in bounds, choices that exist, counts that fit.
 * Nested structures are checked too, rows that a choice leaves unused are not.
 * kind: any, the structure's.
 * structure: every field checked.
 * TSIDE_OUT_OF_BOUNDS: the first row, in order, that breaks its bounds.
 * TSIDE_NOT_FOUND: no such kind.
 * Source: each row's basis; bounds without one are this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_check(tside_kind kind, const void *structure,
                                                   tside_fault *fault);

/* Where a path leads inside a structure. */
typedef struct tside_place {
    const tside_field *field; /* its row */
    size_t offset;            /* from the start of the outermost structure */
} tside_place;

/*
 * Follows a path such as "drive_end.guide.margin" or "keep_outs[2].inner" from a structure's table.
 * kind: any, where the path starts.
 * path: names of members with points between them, an index in brackets after a list's.
 * place: receives row and offset.
 * TSIDE_NOT_FOUND: no such kind or name, or an index not below the list's capacity.
 * Source: this library's choice of a path's form.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_field_find(tside_kind kind, const char *path,
                                                        tside_place *place, tside_fault *fault);

/*
 * Whether a row applies to a structure as its choices stand; no row hangs on a choice that does not
 * apply itself.
 * field: not checked, a row where the structure's table has it, not a copy.
 * structure: the structure whose choice is read.
 * Returns 1 if it applies, else 0.
 * Source: the row itself.
 */
TSIDE_API int tside_field_applies(const tside_field *field, const void *structure);

#ifdef __cplusplus
}
#endif
#endif
