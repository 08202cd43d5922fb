/* SPDX-License-Identifier: MIT */
/* Field tables: writing them, and checking structures against them. */
#ifndef TUNNELSIDE_I_FIELD
#define TUNNELSIDE_I_FIELD

#include <string.h>

#include <tunnelside/field.h>

#include "base/doubles.h"
#include "base/fault.h"
#include "base/units.h"

/*
 * Every structure that has a table. Its table stands in its topic's file; the side's floor has the directory of them
 * all.
 */
#define TSIDE_I_KINDS(KIND) TSIDE_ASKED_LIST(KIND) TSIDE_ANSWERED_LIST(KIND)

#define KIND(upper, lower) TSIDE_I_##lower = TSIDE_KIND_##upper,
enum { TSIDE_I_KINDS(KIND) };
#undef KIND

/* A table of fields. */
struct tside_table {
    const tside_field *rows;
    int count;
    int asked;    /* 1: the first row is a choice, and while that is its first value no other row applies */
    size_t whole; /* size of an answer that its rows, and what says that they are given, fill without a gap, and that is
                     made with 0 in what is not given: it is copied as it is; 0: row by row */
};

/* Rows from the first to here may apply to a structure. */
static inline const tside_field *tside_i_rows_end(const tside_table *table, const void *structure)
{
    const char *choice = (const char *)structure + table->rows->offset;
    return table->rows + (table->asked && *(const int *)(const void *)choice == 0 ? 1 : table->count);
}

#define KIND(upper, lower) extern const tside_table tside_i_##lower##_table;
TSIDE_I_KINDS(KIND)
#undef KIND

enum { TSIDE_I_HARDWARE = TSIDE_HARDWARE_METRIC + 1 };
extern const char *const tside_i_hardware[TSIDE_I_HARDWARE];

/* What the public functions of these names do for a kind, for its table. */
void tside_i_usual(const tside_table *table, void *structure);
void tside_i_usual_by_choice(const tside_table *table, void *structure);
void tside_i_usual_in(const tside_table *table, tside_hardware hardware, void *structure);
tside_status tside_i_check_table(const tside_table *table, const void *structure, tside_fault *fault);
tside_status tside_i_find_field(const tside_table *table, const char *path, tside_place *place, tside_fault *fault);

/* Checks a structure against its table and names it in the fault: "roll" makes "roll.core". */
tside_status tside_i_check(const tside_table *table, const char *name, const void *structure, tside_fault *fault);

/*
 * The last check of every answer: each of a result's numbers, by its table, is finite, or the answer is refused by the
 * name of the first that is not.
 */
tside_status tside_i_finite(const tside_table *table, const void *result, tside_fault *fault);

/* Copies what a structure has by its table, and nothing else of it. */
void tside_i_copy(const tside_table *table, const void *from, void *to);

/*
 * Hands a result over, with 0 in what it does not have and where the compiler leaves room between members: equal
 * answers have equal bytes.
 */
static inline void tside_i_hand_over(const tside_table *table, const void *made, void *result, size_t size)
{
    memset(result, 0, size);
    tside_i_copy(table, made, result);
}

/* Both; the result is named as the function's argument is: "layout.bow_distance". */
tside_status tside_i_answer(const tside_table *table, const char *name, const void *made, void *result, size_t size,
                            tside_fault *fault);
#define ANSWER(table, made, result, fault) tside_i_answer(table, #result, &(made), result, sizeof(made), fault)

/* The same of a list's elements: all are checked before one is handed over. */
tside_status tside_i_answer_list(const tside_table *table, const char *name, const void *made, void *list, int count,
                                 size_t size, tside_fault *fault);
#define ANSWER_LIST(table, made, list, count, fault) \
    tside_i_answer_list(table, #list, made, list, count, sizeof *(list), fault)

/* For an answer that is a number alone. */
tside_status tside_i_answer_number(const char *name, double made, double *number, tside_fault *fault);
#define ANSWER_NUMBER(made, number, fault) tside_i_answer_number(#number, made, number, fault)

/* For a text, which the caller wants in a buffer of this size. needed: optional. */
tside_status tside_i_answer_text(const char *made, char *buffer, size_t size, size_t *needed, tside_fault *fault);

/*
 * Before a public function answers: a refusal's bound that its field may not have is no help, and becomes
 * TSIDE_NONE_FITS. name: the argument that the fault's path begins with, as in tside_i_check, or NULL where it begins
 * in the structure.
 */
tside_status tside_i_settle(const tside_table *table, const char *name, tside_status status, tside_fault *fault);

/*
 * A number or a count inside its bounds and on none of them, or a choice that there is: the common case, and the fast
 * one. A value not a number is not inside.
 */
static inline int tside_i_well_inside(const tside_field *row, const void *structure)
{
    const char *member = (const char *)structure + row->offset;
    if (row->type == TSIDE_NUMBER) {
        double value = *(const double *)(const void *)member;
        return value > row->low && value < row->high;
    }
    if (row->type == TSIDE_CHOICE)
        return (unsigned)*(const int *)(const void *)member < (unsigned)row->choice_count;
    if (row->type == TSIDE_COUNT) {
        int value = *(const int *)(const void *)member;
        return value > row->low && value < row->high;
    }
    return 0;
}

/* tside_field_applies, without a call for the many rows that hang on no choice. */
static inline int tside_i_applies(const tside_field *row, const void *structure)
{
    return !row->applies_to || tside_field_applies(row, structure);
}

/* --- writing field tables: a row is { MACRO(...), APPLIES(...)?, UNUSUAL_OUTSIDE(...)? } --- */

#define PRACTICE "common practice, no published source"
#define OURS "this library's choice, no published source"

#define ROW(S, member, kind_of_row, unit_text, text) \
    .name = #member, .type = kind_of_row, .unit = unit_text, .meaning = text, .offset = offsetof(S, member)
#define FROM(bound) .low = bound
#define ABOVE(bound) .low = bound, .low_open = 1
#define TO(bound) .high = bound
#define UNDER(bound) .high = bound, .high_open = 1

/* A number that must be given: 0 is out of its bounds. */
#define REQUIRED(S, member, unit, high_part, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), ABOVE(0), high_part, .required = 1, .basis = ""
/* The same where something is divided by it: it is not as near 0 as one likes. */
#define REQUIRED_FROM(S, member, unit, least, most, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), FROM(least), TO(most), .required = 1, .basis = ""
/* A number with a usual value. */
#define NUMBER(S, member, unit, low_part, high_part, usual_value, why, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), low_part, high_part, .usual = usual_value, .basis = why
/* A number that may be absent; S has an int "member_given" that says it is there. */
#define OPTIONAL(S, member, unit, low_part, high_part, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), low_part, high_part, .optional = 1, .basis = "", \
                                                                   .given_offset = offsetof(S, member##_given)
#define COUNT(S, member, least, most, usual_value, why, text) \
    ROW(S, member, TSIDE_COUNT, "1", text), FROM(least), TO(most), .usual = usual_value, .basis = why
#define CHOICE(S, member, names, usual_value, text) \
    ROW(S, member, TSIDE_CHOICE, "1", text), .choices = names, .choice_count = (int)(sizeof names / sizeof *names), \
                                             .usual = usual_value, .basis = ""
#define GROUP(S, member, of, text) \
    ROW(S, member, TSIDE_GROUP, "1", text), .kind = (tside_kind)TSIDE_I_##of, .nested = &tside_i_##of##_table, \
                                            .basis = ""
#define LIST(S, member, count_member, of, element, most, text) \
    ROW(S, member, TSIDE_LIST, "1", text), .kind = (tside_kind)TSIDE_I_##of, .nested = &tside_i_##of##_table, \
                                           .stride = sizeof(element), .capacity = most, \
                                           .count_offset = offsetof(S, count_member), .basis = ""
/* The choice of hardware, on which what is usual may hang: WITH_INCH and WITH_METRIC. */
#define HARDWARE(S) \
    CHOICE(S, hardware, tside_i_hardware, TSIDE_HARDWARE_INCH, \
           "system of bolts, holes and stock lengths, which says what of them is usual")
#define WITH_INCH(S) APPLIES(S, hardware, ONLY(TSIDE_HARDWARE_INCH))
#define WITH_METRIC(S) APPLIES(S, hardware, ONLY(TSIDE_HARDWARE_METRIC))
/* A number among the results. */
#define RESULT(S, member, unit, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), FROM(-HUGE_VAL), TO(HUGE_VAL), .basis = ""
#define RESULT_OPTIONAL(S, member, unit, text) \
    ROW(S, member, TSIDE_NUMBER, unit, text), FROM(-HUGE_VAL), TO(HUGE_VAL), \
        .optional = 1, .basis = "", .given_offset = offsetof(S, member##_given)
#define RESULT_COUNT(S, member, text) ROW(S, member, TSIDE_COUNT, "1", text), FROM(-HUGE_VAL), TO(HUGE_VAL), .basis = ""
/* Only while the choice has one of the values in mask. */
#define APPLIES(S, choice, mask) .applies_to = #choice, .applies_offset = offsetof(S, choice), .applies_mask = mask
#define ONLY(value) (1u << (value))
/* By how much a tape or a scale may be off. */
#define MEASURED(off_by) .tolerance = off_by
/* Film's thickness: text may be in mil too. */
#define IN_MIL .film = 1
/* Outside these legal, but unusual: a finding. */
#define UNUSUAL_OUTSIDE(lo, hi) .usual_low = lo, .usual_high = hi

#define ROWS(those) .rows = those, .count = (int)(sizeof those / sizeof *those)
#define TABLE(name, those) const tside_table name = {ROWS(those)}
/* Of what is asked by its first choice, and of an answer S that is copied as it is; tests/base/test_tables.c tells. */
#define TABLE_ASKED(name, those) const tside_table name = {ROWS(those), .asked = 1}
#define TABLE_WHOLE(name, those, S) const tside_table name = {ROWS(those), .whole = sizeof(S)}

#endif
