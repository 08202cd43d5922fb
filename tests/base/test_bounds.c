/* SPDX-License-Identifier: MIT */
/* The checker against the tables, by walking a whole side. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "fields.h"

Suite *bounds_suite(void);

/* A side in which everything required is given and every list is full, so that each row can be tried. */
static void give_required(tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        if (row[i].type == TSIDE_NUMBER && row[i].required)
            *number_in(structure, row[i].offset) = fmin(fmax(1, row[i].low), row[i].high) *
                                                   (row[i].high <= 1 ? 0.5 : 1);
        if (row[i].type == TSIDE_GROUP)
            give_required(row[i].kind, structure + row[i].offset);
        if (row[i].type == TSIDE_LIST) {
            *whole_in(structure, row[i].count_offset) = row[i].capacity;
            for (int k = 0; k < row[i].capacity; k++)
                give_required(row[i].kind, structure + row[i].offset + (size_t)k * row[i].stride);
        }
    }
}

typedef struct walker {
    tside_side side;
    char path[TSIDE_PATH_SIZE];
    const tside_field *row;
    int numbers; /* tried at every bound */
} walker;

static void refused_at(walker *w, double value, tside_relation relation, double bound, const char *what)
{
    tside_fault fault;
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, &fault) == TSIDE_OUT_OF_BOUNDS, "%s: %s is not refused",
                  w->path, what);
    ck_assert_int_eq((int)fault.status, TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, w->path);
    ck_assert_str_eq(fault.unit, w->row->unit);
    ck_assert_msg(fault.relation == relation, "%s, %s: relation %d, not %d", w->path, what, (int)fault.relation,
                  (int)relation);
    ck_assert_msg(fault.value == value && fault.bound == bound, "%s, %s: %.17g against %.17g, not %.17g against %.17g",
                  w->path, what, fault.value, fault.bound, value, bound);
}

static void accepted(const walker *w, const char *what)
{
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, NULL) == TSIDE_OK, "%s: %s", w->path, what);
}

static void try_number(walker *w, const tside_field *row, char *structure)
{
    double *number = number_in(structure, row->offset), kept = *number;
    int *given = row->optional ? whole_in(structure, row->given_offset) : NULL;
    if (given) {
        *number = NAN;
        accepted(w, "is looked at though not given");
        *given = 1;
    }
    *number = NAN;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "NaN");
    *number = HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "infinity");
    *number = -HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, 0, "minus infinity");
    *number = row->low_open ? row->low : nextafter(row->low, -HUGE_VAL);
    refused_at(w, *number, row->low_open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, row->low, "below");
    *number = row->high_open ? row->high : nextafter(row->high, HUGE_VAL);
    refused_at(w, *number, row->high_open ? TSIDE_NOT_BELOW : TSIDE_ABOVE, row->high, "above");
    *number = row->low_open ? nextafter(row->low, HUGE_VAL) : row->low;
    accepted(w, "the least that its bounds allow is refused");
    *number = row->high_open ? nextafter(row->high, -HUGE_VAL) : row->high;
    accepted(w, "the greatest that its bounds allow is refused");
    *number = kept;
    if (given)
        *given = 0;
    w->numbers++;
}

static void try_whole(walker *w, const tside_field *row, char *structure)
{
    int *number = whole_in(structure, row->offset), kept = *number, choice = row->type == TSIDE_CHOICE,
        least = choice ? 0 : (int)row->low, most = choice ? row->choice_count - 1 : (int)row->high;
    *number = least - 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_BELOW, choice ? most : least, "below");
    *number = most + 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_ABOVE, most, "above");
    for (*number = least; *number <= most; ++*number)
        accepted(w, "a whole number within its bounds is refused");
    *number = kept;
}

static void walk(walker *w, tside_kind kind, char *structure);

static void try_list(walker *w, const tside_field *row, char *structure)
{
    int *number = whole_in(structure, row->count_offset);
    *number = row->capacity + 1;
    refused_at(w, *number, TSIDE_ABOVE, row->capacity, "too many");
    *number = -1;
    refused_at(w, *number, TSIDE_BELOW, 0, "a negative count");
    *number = row->capacity;
    for (int k = 0; k < row->capacity; k += row->capacity - 1) { /* the first and the last */
        size_t at = strlen(w->path);
        snprintf(w->path + at, sizeof w->path - at, "[%d]", k);
        walk(w, row->kind, structure + row->offset + (size_t)k * row->stride);
        w->path[at] = '\0';
    }
}

/* Changes choices until a row applies, that on which its own choice hangs first. */
static void let_apply(const tside_field *row, char *structure)
{
    const tside_field *choice = row;
    if (!row->applies_to)
        return;
    while (choice->offset != row->applies_offset)
        choice--;
    let_apply(choice, structure);
    for (int value = 0; !tside_field_applies(row, structure); value++)
        *whole_in(structure, row->applies_offset) = value;
}

/* Tries every row; where choices leave one unused, they are changed meanwhile. */
static void walk(walker *w, tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(w->path);
    for (int i = 0; i < count; i++) {
        char kept[sizeof(tside_side)];
        memcpy(kept, structure, structures[kind].size);
        let_apply(row + i, structure);
        snprintf(w->path + mark, sizeof w->path - mark, "%s%s", mark ? "." : "", row[i].name);
        w->row = row + i;
        if (row[i].type == TSIDE_NUMBER)
            try_number(w, row + i, structure);
        else if (row[i].type == TSIDE_GROUP)
            walk(w, row[i].kind, structure + row[i].offset);
        else if (row[i].type == TSIDE_LIST)
            try_list(w, row + i, structure);
        else
            try_whole(w, row + i, structure);
        w->path[mark] = '\0';
        memcpy(structure, kept, structures[kind].size);
    }
}

/* How many rows of numbers there are, with the first and the last element of each list. */
static int numbers_in(tside_kind kind)
{
    int count, numbers = 0;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++)
        numbers += row[i].type == TSIDE_NUMBER  ? 1
                   : row[i].type == TSIDE_GROUP ? numbers_in(row[i].kind)
                   : row[i].type == TSIDE_LIST  ? 2 * numbers_in(row[i].kind)
                                                : 0;
    return numbers;
}

START_TEST(every_bound_is_kept_and_named)
{
    static walker w;
    tside_fault fault;
    memset(&w, 0, sizeof w);
    tside_usual(TSIDE_KIND_SIDE, &w.side);
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS); /* what is required is missing */
    ck_assert_str_eq(fault.field, "length");
    give_required(TSIDE_KIND_SIDE, (char *)&w.side);
    ANSWERS(tside_check(TSIDE_KIND_SIDE, &w.side, &fault));
    walk(&w, TSIDE_KIND_SIDE, (char *)&w.side);
    ck_assert_int_eq(w.numbers, numbers_in(TSIDE_KIND_SIDE));
    ck_assert_int_gt(w.numbers, 150);
    ANSWERS(tside_check(TSIDE_KIND_SIDE, &w.side, &fault));
    ck_assert(tside_check(TSIDE_KIND_COUNT, &w.side, &fault) == TSIDE_NOT_FOUND);
    ck_assert(tside_check((tside_kind)-1, &w.side, &fault) == TSIDE_NOT_FOUND);
}
END_TEST

START_TEST(the_first_fault_in_field_order_is_named)
{
    static walker w;
    tside_fault fault;
    tside_usual(TSIDE_KIND_SIDE, &w.side);
    give_required(TSIDE_KIND_SIDE, (char *)&w.side);
    w.side.bars[3].play = -1;
    w.side.free_end.guide.margin = NAN;
    w.side.drive_end.keep_outs[5].top = 100;
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drive_end.keep_outs[5].top");
    ck_assert_int_eq(fault.index, 5);
    w.side.drive_end.keep_out_count = 5; /* beyond the count nothing is looked at */
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "free_end.guide.margin");
    w.side.free_end.guide.margin = 0;
    ck_assert(tside_check(TSIDE_KIND_SIDE, &w.side, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "bars[3].play");
    ck_assert_int_eq(fault.index, 3);
}
END_TEST

START_TEST(rows_that_do_not_apply_are_not_looked_at)
{
    tside_drive drive;
    tside_fault fault;
    tside_place place;
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    drive.rated_torque_given = 1;
    drive.rated_torque = 10;
    drive.stall_torque_given = 1;
    drive.stall_torque = -1;
    ck_assert(tside_check(TSIDE_KIND_DRIVE, &drive, &fault) == TSIDE_OUT_OF_BOUNDS);
    drive.kind = TSIDE_HAND;
    ANSWERS(tside_check(TSIDE_KIND_DRIVE, &drive, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_DRIVE, "stall_torque", &place, &fault));
    ck_assert(!tside_field_applies(place.field, &drive));
    drive.kind = TSIDE_MOTOR;
    ck_assert(tside_field_applies(place.field, &drive));
    for (int kind = -40; kind <= 70; kind++) { /* no choice at all: nothing that depends on it applies */
        drive.kind = (tside_drive_kind)kind;
        ck_assert_int_eq(tside_field_applies(place.field, &drive), kind == TSIDE_MOTOR);
    }
}
END_TEST

/* What hangs on a choice that does not apply does not apply either, whatever that choice is. */
START_TEST(an_unused_choice_leaves_its_fields_unused)
{
    static tside_side side;
    tside_fault fault;
    tside_usual(TSIDE_KIND_SIDE, &side);
    give_required(TSIDE_KIND_SIDE, (char *)&side);
    side.crank.fitted = TSIDE_NO_CRANK;
    side.drive_end.hung = TSIDE_ON_HIP;
    for (int choice = -2; choice <= 4; choice++) {
        side.crank.rule = (tside_effort_rule)choice;
        side.drive_end.placed = (tside_eye_placed)choice;
        side.drive_end.extender.slant = (tside_slant)choice;
        side.crank.effort_limit = side.drive_end.eye_outboard = side.drive_end.extender.angle = 0;
        ANSWERS(tside_check(TSIDE_KIND_SIDE, &side, &fault));
    }
    side.crank.rule = TSIDE_EFFORT_GIVEN;
    side.crank.fitted = TSIDE_CRANK;
    side.crank.ratio = 1;
    ck_assert_int_eq(tside_check(TSIDE_KIND_SIDE, &side, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "crank.effort_limit");
    side.crank.fitted = TSIDE_NO_CRANK;
    side.drive_end.placed = TSIDE_EYE_GIVEN;
    side.drive_end.hung = TSIDE_ON_EXTENDER;
    ck_assert_int_eq(tside_check(TSIDE_KIND_SIDE, &side, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drive_end.eye_outboard");
}
END_TEST

Suite *bounds_suite(void)
{
    Suite *suite = suite_create("bounds");
    TCase *tcase = tcase_create("bounds");
    tcase_add_test(tcase, every_bound_is_kept_and_named);
    tcase_add_test(tcase, the_first_fault_in_field_order_is_named);
    tcase_add_test(tcase, rows_that_do_not_apply_are_not_looked_at);
    tcase_add_test(tcase, an_unused_choice_leaves_its_fields_unused);
    suite_add_tcase(suite, tcase);
    return suite;
}
