/* SPDX-License-Identifier: MIT */
/* The tables of fields against themselves, and the checker against the tables. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

static int is_asked(tside_kind kind)
{
    return kind <= TSIDE_KIND_SIDE;
}

/* --- each row by itself --- */

static void row_is_sound(tside_kind kind, const tside_field *rows, int count, int i)
{
    const tside_field *row = rows + i;
    ck_assert_msg(row->name && *row->name && row->meaning && *row->meaning && row->unit, "kind %d row %d", (int)kind, i);
    if (row->type == TSIDE_NUMBER || row->type == TSIDE_COUNT)
        ck_assert_msg(row->low <= row->high, "%s: bounds", row->name);
    if (is_asked(kind) && (row->type == TSIDE_NUMBER || row->type == TSIDE_COUNT)) {
        ck_assert_msg(row->low < row->high, "%s: bounds", row->name);
        if (row->required)
            ck_assert_msg(row->low > 0 || (row->low == 0 && row->low_open), "%s: 0 is in bounds", row->name);
        else if (!row->optional) {
            ck_assert_msg(row->usual >= row->low && row->usual <= row->high && !(row->low_open && row->usual == row->low), "%s: usual value", row->name);
            ck_assert_msg(row->basis && *row->basis, "%s: a usual value without a basis", row->name);
        }
        ck_assert(row->usual_low <= row->usual_high && row->tolerance >= 0);
    }
    if (row->type == TSIDE_CHOICE) {
        ck_assert(row->choice_count > 1 && row->usual >= 0 && row->usual < row->choice_count);
        for (int a = 0; a < row->choice_count; a++)
            for (int b = 0; b < a; b++)
                ck_assert_str_ne(row->choices[a], row->choices[b]);
    }
    if (row->applies_to) {
        int found = 0;
        for (int k = 0; k < count; k++)
            found |= !strcmp(rows[k].name, row->applies_to) && rows[k].offset == row->applies_offset && (rows[k].type == TSIDE_CHOICE || rows[k].type == TSIDE_COUNT);
        ck_assert_msg(found && row->applies_mask, "%s applies to no choice beside it", row->name);
    }
    if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
        int nested;
        ck_assert_msg(tside_fields(row->kind, &nested) && nested > 0, "%s: no table", row->name);
    }
    if (row->type == TSIDE_LIST)
        ck_assert(row->capacity > 0 && row->capacity < 100 && row->stride > 0);
}

START_TEST(every_kind_has_a_sound_table)
{
    int count;
    for (int kind = 0; kind < TSIDE_KIND_COUNT; kind++) {
        const tside_field *rows = tside_fields((tside_kind)kind, &count);
        ck_assert_msg(rows && count > 0, "kind %d has no table", kind);
        for (int i = 0; i < count; i++)
            row_is_sound((tside_kind)kind, rows, count, i);
    }
    ck_assert(!tside_fields(TSIDE_KIND_COUNT, &count) && count == 0);
    ck_assert(!tside_fields((tside_kind)-1, &count) && count == 0);
}
END_TEST

/* --- the checker, by walking a whole side --- */

/* A side in which everything required is given and every list is full, so that each row can be tried. */
static void give_required(tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        if (row[i].type == TSIDE_NUMBER && row[i].required)
            *(double *)(void *)(structure + row[i].offset) = fmin(fmax(1, row[i].low), row[i].high) * (row[i].high <= 1 ? 0.5 : 1);
        if (row[i].type == TSIDE_GROUP)
            give_required(row[i].kind, structure + row[i].offset);
        if (row[i].type == TSIDE_LIST) {
            *(int *)(void *)(structure + row[i].count_offset) = row[i].capacity;
            for (int k = 0; k < row[i].capacity; k++)
                give_required(row[i].kind, structure + row[i].offset + (size_t)k * row[i].stride);
        }
    }
}

typedef struct walker {
    tside_side side;
    char path[TSIDE_PATH_SIZE];
    int tried;
} walker;

static void refused_at(walker *w, double value, tside_relation relation, const char *what)
{
    tside_fault fault;
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, &fault) == TSIDE_OUT_OF_BOUNDS, "%s: %s is not refused", w->path, what);
    ck_assert_str_eq(fault.field, w->path);
    ck_assert_msg(fault.relation == relation, "%s, %s: relation %d, not %d", w->path, what, (int)fault.relation, (int)relation);
    if (relation != TSIDE_NOT_FINITE)
        ck_assert(fault.value == value);
    w->tried++;
}

static void try_number(walker *w, const tside_field *row, char *structure)
{
    double *number = (double *)(void *)(structure + row->offset), kept = *number;
    int *given = row->optional ? (int *)(void *)(structure + row->given_offset) : NULL;
    if (given) {
        *number = NAN; /* not given, not looked at */
        ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, NULL) == TSIDE_OK, "%s is looked at though not given", w->path);
        *given = 1;
    }
    *number = NAN;
    refused_at(w, 0, TSIDE_NOT_FINITE, "NaN");
    *number = HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, "infinity");
    *number = -HUGE_VAL;
    refused_at(w, 0, TSIDE_NOT_FINITE, "minus infinity");
    *number = row->low_open ? row->low : nextafter(row->low, -HUGE_VAL);
    refused_at(w, *number, row->low_open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, "below");
    *number = row->high_open ? row->high : nextafter(row->high, HUGE_VAL);
    refused_at(w, *number, row->high_open ? TSIDE_NOT_BELOW : TSIDE_ABOVE, "above");
    *number = row->low_open ? nextafter(row->low, HUGE_VAL) : row->low;
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, NULL) == TSIDE_OK, "%s: its lower bound is refused", w->path);
    *number = row->high_open ? nextafter(row->high, -HUGE_VAL) : row->high;
    ck_assert_msg(tside_check(TSIDE_KIND_SIDE, &w->side, NULL) == TSIDE_OK, "%s: its upper bound is refused", w->path);
    *number = kept;
    if (given)
        *given = 0;
}

static void try_whole(walker *w, const tside_field *row, char *structure)
{
    int *number = (int *)(void *)(structure + row->offset), kept = *number, choice = row->type == TSIDE_CHOICE;
    *number = choice ? -1 : (int)row->low - 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_BELOW, "below");
    *number = choice ? row->choice_count : (int)row->high + 1;
    refused_at(w, *number, choice ? TSIDE_NOT_ONE_OF : TSIDE_ABOVE, "above");
    *number = kept;
}

static void walk(walker *w, tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(w->path);
    for (int i = 0; i < count; i++) {
        tside_place place;
        tside_fault fault;
        char *member = structure + row[i].offset;
        if (!tside_field_applies(row + i, structure))
            continue;
        snprintf(w->path + mark, sizeof w->path - mark, "%s%s", mark ? "." : "", row[i].name);
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, w->path, &place, &fault));
        ck_assert_msg((char *)&w->side + place.offset == member, "%s is found elsewhere", w->path);
        if (row[i].type == TSIDE_NUMBER)
            try_number(w, row + i, structure);
        else if (row[i].type == TSIDE_GROUP)
            walk(w, row[i].kind, member);
        else if (row[i].type == TSIDE_LIST) {
            int *number = (int *)(void *)(structure + row[i].count_offset);
            *number = row[i].capacity + 1;
            refused_at(w, *number, TSIDE_ABOVE, "too many");
            *number = -1;
            refused_at(w, *number, TSIDE_BELOW, "a negative count");
            *number = row[i].capacity;
            for (int k = 0; k < row[i].capacity; k += row[i].capacity - 1) {
                size_t at = strlen(w->path);
                snprintf(w->path + at, sizeof w->path - at, "[%d]", k);
                walk(w, row[i].kind, member + (size_t)k * row[i].stride);
                w->path[at] = '\0';
            }
        } else
            try_whole(w, row + i, structure);
        w->path[mark] = '\0';
    }
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
    ck_assert_int_gt(w.tried, 500);
    ck_assert(tside_check(TSIDE_KIND_COUNT, &w.side, &fault) == TSIDE_NOT_FOUND);
}
END_TEST

START_TEST(rows_that_do_not_apply_are_not_looked_at)
{
    tside_drive drive;
    tside_fault fault;
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    drive.rated_torque = 10;
    drive.stall_torque_given = 1;
    drive.stall_torque = -1;
    ck_assert(tside_check(TSIDE_KIND_DRIVE, &drive, &fault) == TSIDE_OUT_OF_BOUNDS);
    drive.kind = TSIDE_HAND;
    ANSWERS(tside_check(TSIDE_KIND_DRIVE, &drive, &fault));
}
END_TEST

START_TEST(usual_values_follow_choices)
{
    tside_side side;
    tside_usual(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 8, 0, "motor, kg", 0);             /* common practice, no published source */
    NEAR(side.drive.safety_factor, 1.5, 0, "motor", 0);      /* the same */
    NEAR(side.friction, 0.15, 0, "film alone", 0);           /* the same */
    NEAR(side.drive_end.rise, 12 * 0.0254, 0, "rise", 0);    /* the same */
    side.drive.kind = TSIDE_HAND;
    side.ropes = TSIDE_ROPES;
    side.length = 12;
    tside_usual_by_choice(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 3, 0, "hand, kg", 0);
    NEAR(side.drive.safety_factor, 1.25, 0, "hand", 0);
    NEAR(side.drive.collar_offset, 3 * 0.0254, 0, "hand, m", 0);
    NEAR(side.friction, 0.25, 0, "with ropes", 0);
    NEAR(side.length, 12, 0, "kept", 0);
}
END_TEST

START_TEST(paths_that_lead_nowhere_are_refused)
{
    static const char *const bad[] = {"", ".", "lenght", "length.", "length.x", "frame..tube", "frame.tube.", "bars[16]", "bars[-1]", "bars[]", "bars[1", "bars[1]x",
                                      "drive_end.keep_outs[8].left", "[0]", "frame[0]", "bars[99999].play"};
    tside_place place;
    tside_fault fault;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        memset(&place, 0xa5, sizeof place);
        ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, bad[i], &place, &fault) == TSIDE_NOT_FOUND, "\"%s\"", bad[i]);
        ck_assert(((unsigned char *)&place)[0] == 0xa5);
    }
    ck_assert(tside_field_find(TSIDE_KIND_COUNT, "length", &place, NULL) == TSIDE_NOT_FOUND);
}
END_TEST

Suite *fields_suite(void);

Suite *fields_suite(void)
{
    Suite *suite = suite_create("fields");
    TCase *tcase = tcase_create("fields");
    tcase_add_test(tcase, every_kind_has_a_sound_table);
    tcase_add_test(tcase, every_bound_is_kept_and_named);
    tcase_add_test(tcase, rows_that_do_not_apply_are_not_looked_at);
    tcase_add_test(tcase, usual_values_follow_choices);
    tcase_add_test(tcase, paths_that_lead_nowhere_are_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
