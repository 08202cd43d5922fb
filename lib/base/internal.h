/* SPDX-License-Identifier: MIT */
/* What the library's files share and no caller sees: refusing, and writing field tables. */
#ifndef TUNNELSIDE_INTERNAL_H
#define TUNNELSIDE_INTERNAL_H

#include <math.h>
#include <tunnelside/field.h>

#include "base/doubles.h"

#define TSIDE_PI 3.14159265358979323846
#define TSIDE_GRAVITY 9.80665 /* m/s2, standard: ISO 80000-3 */

/* --- refusing: each fills the fault, if there is one, and returns the status --- */

tside_status tside_i_bound(tside_fault *fault, const char *field, const char *unit, double value, tside_relation relation, double bound);
tside_status tside_i_refuse(tside_fault *fault, tside_status status, const char *field, const char *other, const char *reason);
tside_status tside_i_refuse_value(tside_fault *fault, tside_status status, const char *field, const char *other, const char *reason,
                                  const char *unit, double value, tside_relation relation, double bound, double gap);

/* What of a refusal is constant: told once, in a table of the file's, so that the code that refuses is small. */
typedef struct tside_i_refusal {
    tside_status status;
    tside_relation relation;
    const char *field, *other, *reason, *unit;
} tside_i_refusal;

tside_status tside_i_refuse_by(tside_fault *fault, const tside_i_refusal *refusal, double value, double bound, double gap);

/* Refuses and returns; all but value, bound and gap are constants. */
#define REFUSE(fault, status, field, other, reason, unit, value, relation, bound, gap) \
    do { \
        static const tside_i_refusal refusal = {status, relation, field, other, reason, unit}; \
        return tside_i_refuse_by(fault, &refusal, value, bound, gap); \
    } while (0)

/* No argument in SI units is as large, and products of a few such do not overflow. */
#define TSIDE_MOST 1e15

/* Refuses an argument that is not finite, below low (not above, where open), or above TSIDE_MOST. */
tside_status tside_i_argument(tside_fault *fault, const char *name, const char *unit, double value, double low, int open);

/*
 * Puts a path before the fault's field: "guide.margin" within "drive_end" is "drive_end.guide.margin"; and before the other field, unless
 * that is one of the side's own, such as "stops".
 */
tside_status tside_i_within(tside_fault *fault, const char *group, tside_status status);

/* The same for the i-th element of a list, below 1000, which it also notes as the fault's index. */
tside_status tside_i_within_element(tside_fault *fault, int i, tside_status status);

/* Checks a structure against its table and names it in the fault: "roll" makes "roll.core". */
tside_status tside_i_check(tside_kind kind, const char *name, const void *structure, tside_fault *fault);

/* A number inside its bounds and on none of them: the common case, and the fast one. A value not a number is not inside. */
static inline int tside_i_well_inside(const tside_field *row, const void *structure)
{
    double value;
    if (row->type != TSIDE_NUMBER)
        return 0;
    value = *(const double *)(const void *)((const char *)structure + row->offset);
    return value > row->low && value < row->high;
}

/* Copies as much of a text as fits, with its closing zero; the destination has TSIDE_PATH_SIZE characters. */
void tside_i_path(char *to, const char *text);

/* Returns from the calling function unless the status is TSIDE_OK. */
#define TRY(call) \
    do { \
        tside_status try_status = (call); \
        if (try_status != TSIDE_OK) \
            return try_status; \
    } while (0)

/* --- writing field tables: a row is { MACRO(...), APPLIES(...)?, UNUSUAL_OUTSIDE(...)? } --- */

#define PRACTICE "common practice, no published source"
#define OURS "this library's choice, no published source"

#define ROW(S, member, kind_of_row, unit_text, text) .name = #member, .type = kind_of_row, .unit = unit_text, .meaning = text, .offset = offsetof(S, member)
#define FROM(bound) .low = bound
#define ABOVE(bound) .low = bound, .low_open = 1
#define TO(bound) .high = bound
#define UNDER(bound) .high = bound, .high_open = 1

/* A number that must be given: 0 is out of its bounds. */
#define REQUIRED(S, member, unit, high_part, text) ROW(S, member, TSIDE_NUMBER, unit, text), ABOVE(0), high_part, .required = 1, .basis = ""
/* The same where something is divided by it: it is not as near 0 as one likes. */
#define REQUIRED_FROM(S, member, unit, least, most, text) ROW(S, member, TSIDE_NUMBER, unit, text), FROM(least), TO(most), .required = 1, .basis = ""
/* A number with a usual value. */
#define NUMBER(S, member, unit, low_part, high_part, usual_value, why, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), low_part, high_part, .usual = usual_value, .basis = why
/* A number that may be absent; S has an int "member_given" that says it is there. */
#define OPTIONAL(S, member, unit, low_part, high_part, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), low_part, high_part, .optional = 1, .basis = "", .given_offset = offsetof(S, member##_given)
#define COUNT(S, member, least, most, usual_value, why, text) \
    ROW(S, member, TSIDE_COUNT, "1", text), FROM(least), TO(most), .usual = usual_value, .basis = why
#define CHOICE(S, member, names, usual_value, text) \
    ROW(S, member, TSIDE_CHOICE, "1", text), .choices = names, .choice_count = (int)(sizeof names / sizeof *names), .usual = usual_value, .basis = ""
#define GROUP(S, member, nested, text) ROW(S, member, TSIDE_GROUP, "1", text), .kind = nested, .basis = ""
#define LIST(S, member, count_member, nested, element, most, text) \
    ROW(S, member, TSIDE_LIST, "1", text), .kind = nested, .stride = sizeof(element), .capacity = most, .count_offset = offsetof(S, count_member), .basis = ""
/* A number among the results. */
#define RESULT(S, member, unit, text) ROW(S, member, TSIDE_NUMBER, unit, text), FROM(-HUGE_VAL), TO(HUGE_VAL), .basis = ""
#define RESULT_OPTIONAL(S, member, unit, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), FROM(-HUGE_VAL), TO(HUGE_VAL), .optional = 1, .basis = "", .given_offset = offsetof(S, member##_given)
#define RESULT_COUNT(S, member, text) ROW(S, member, TSIDE_COUNT, "1", text), FROM(-HUGE_VAL), TO(HUGE_VAL), .basis = ""
/* Only while the choice has one of the values in mask. */
#define APPLIES(S, choice, mask) .applies_to = #choice, .applies_offset = offsetof(S, choice), .applies_mask = mask
#define ONLY(value) (1u << (value))
/* Outside these legal, but unusual: a finding. */
#define MEASURED(off_by) .tolerance = off_by
#define UNUSUAL_OUTSIDE(lo, hi) .usual_low = lo, .usual_high = hi

#define IN 0.0254 /* m */
#define FT 0.3048 /* m */
#define DEG (TSIDE_PI / 180)
#define KSI (4448.2216152605 / (0.0254 * 0.0254)) /* Pa: a kip is 4448.2216152605 N, by the pound of 1959 and standard gravity */
#define MPA 1e6 /* Pa */

/* Names of choices that more than one table has, in bolt.c. */
enum { TSIDE_I_BOLT_SIZES = 9, TSIDE_I_WASHERS = 2 };
extern const char *const tside_i_bolt_sizes[TSIDE_I_BOLT_SIZES], *const tside_i_washers[TSIDE_I_WASHERS];

/* The tables, each defined in its topic's file. */
typedef struct tside_table {
    const tside_field *rows;
    int count;
} tside_table;
#define TABLE(name, rows) const tside_table name = {rows, (int)(sizeof rows / sizeof *rows)}

extern const tside_table tside_i_material_table;
extern const tside_table tside_i_round_table;
extern const tside_table tside_i_square_table;
extern const tside_table tside_i_frame_table;
extern const tside_table tside_i_curtain_table;
extern const tside_table tside_i_roll_table;
extern const tside_table tside_i_stops_table;
extern const tside_table tside_i_drive_table;
extern const tside_table tside_i_guide_table;
extern const tside_table tside_i_extender_table;
extern const tside_table tside_i_load_table;
extern const tside_table tside_i_bar_table;
extern const tside_table tside_i_end_table;
extern const tside_table tside_i_collar_table;
extern const tside_table tside_i_limits_table;
extern const tside_table tside_i_keep_out_table;
extern const tside_table tside_i_side_table;
extern const tside_table tside_i_section_table;
extern const tside_table tside_i_position_table;
extern const tside_table tside_i_sweep_table;
extern const tside_table tside_i_layout_table;
extern const tside_table tside_i_torque_table;
extern const tside_table tside_i_strength_line_table;
extern const tside_table tside_i_finding_table;
extern const tside_table tside_i_turn_table;
extern const tside_table tside_i_end_plan_table;
extern const tside_table tside_i_plan_table;
extern const tside_table tside_i_bolt_table;
extern const tside_table tside_i_bolt_part_table;
extern const tside_table tside_i_bolt_plan_table;
extern const tside_table tside_i_bearing_table;
extern const tside_table tside_i_bar_stick_table;
extern const tside_table tside_i_fittings_table;
extern const tside_table tside_i_cable_table;
extern const tside_table tside_i_crank_table;
extern const tside_table tside_i_run_table;
extern const tside_table tside_i_cranking_table;
extern const tside_table tside_i_drive_choice_table;
extern const tside_table tside_i_item_table;
extern const tside_table tside_i_stock_length_table;
extern const tside_table tside_i_stock_table;
extern const tside_table tside_i_cut_table;
extern const tside_table tside_i_stick_table;
extern const tside_table tside_i_cut_plan_table;

#endif
