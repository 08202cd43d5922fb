/* SPDX-License-Identifier: MIT */
/* Paths: each is found, and what leads nowhere is refused. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "base/field.h"
#include "expect.h"
#include "heard.h"

Suite *field_paths_suite(void);

typedef struct pathfinder {
    tside_kind kind; /* where paths start */
    char path[4 * TSIDE_PATH_SIZE];
    int found;
} pathfinder;

static void is_found(pathfinder *p, const tside_field *row, size_t offset)
{
    tside_place place;
    tside_fault fault;
    ck_assert_msg(strlen(p->path) < TSIDE_PATH_SIZE, "%s is too long for a fault", p->path);
    ANSWERS(tside_field_find(p->kind, p->path, &place, &fault));
    ck_assert_msg(place.offset == offset && !strcmp(place.field->name, row->name), "%s is found elsewhere", p->path);
    p->found++;
}

static void follow(pathfinder *p, tside_kind kind, size_t base)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(p->path);
    for (int i = 0; i < count; i++) {
        const size_t offset = base + row[i].offset;
        snprintf(p->path + mark, sizeof p->path - mark, "%s%s", mark ? "." : "", row[i].name);
        is_found(p, row + i, offset);
        if (row[i].type == TSIDE_GROUP)
            follow(p, row[i].kind, offset);
        for (int k = 0; row[i].type == TSIDE_LIST && k < row[i].capacity; k++) {
            const size_t at = strlen(p->path);
            snprintf(p->path + at, sizeof p->path - at, "[%d]", k);
            is_found(p, row + i, offset + (size_t)k * row[i].stride);
            follow(p, row[i].kind, offset + (size_t)k * row[i].stride);
            p->path[at] = '\0';
        }
        p->path[mark] = '\0';
    }
}

START_TEST(every_path_is_found)
{
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        pathfinder p = {.kind = (tside_kind)k};
        int count;
        tside_fields(p.kind, &count);
        follow(&p, p.kind, 0);
        ck_assert_int_ge(p.found, count);
    }
}
END_TEST

START_TEST(paths_that_lead_nowhere_are_refused)
{
    static const char *const bad[] = {"",
                                      ".",
                                      "lenght",
                                      "length.",
                                      "length.x",
                                      "length.metal",
                                      "hand.yield",
                                      "frame..tube",
                                      "frame.tube.",
                                      "bars[16]",
                                      "bars[-1]",
                                      "bars[]",
                                      "bars[1",
                                      "bars[1]x",
                                      "bars[1][1]",
                                      "drive_end.keep_outs[8].inner",
                                      "[0]",
                                      "frame[0]",
                                      "bars[99999].play",
                                      "bars[00001].play",
                                      "bars[99999999999999999999].play",
                                      " length",
                                      "LENGTH"};
    char endless[3 * TSIDE_PATH_SIZE];
    tside_place place;
    tside_fault fault;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        memset(&place, 0xa5, sizeof place);
        ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, bad[i], &place, &fault) == TSIDE_NOT_FOUND, "\"%s\"", bad[i]);
        ck_assert_str_eq(fault.field, bad[i]);
        for (size_t k = 0; k < sizeof place; k++)
            ck_assert(((unsigned char *)&place)[k] == 0xa5);
    }
    memset(endless, 'x', sizeof endless);
    endless[sizeof endless - 1] = '\0';
    ck_assert(tside_field_find(TSIDE_KIND_SIDE, endless, &place, &fault) == TSIDE_NOT_FOUND);
    ck_assert(strlen(fault.field) < TSIDE_PATH_SIZE);
    ck_assert(tside_field_find(TSIDE_KIND_COUNT, "length", &place, NULL) == TSIDE_NOT_FOUND);
}
END_TEST

/* Of groups in groups, longer than a path may be: cut, down to its outermost group, and to what of that there is room
 * for. */
START_TEST(a_path_is_cut_where_it_ends)
{
    char group[TSIDE_PATH_SIZE + 1];
    tside_fault fault;
    memset(group, 'g', sizeof group);
    group[TSIDE_PATH_SIZE - 4] = '\0';
    ck_assert(tside_i_bound(&fault, "tube", "m", -1, TSIDE_BELOW, 0) == TSIDE_OUT_OF_BOUNDS);
    ck_assert(tside_i_within(&fault, group, fault.status) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_uint_eq(strlen(fault.field), TSIDE_PATH_SIZE - 1);
    ck_assert_str_eq(fault.field + TSIDE_PATH_SIZE - 4, ".tu");
    group[TSIDE_PATH_SIZE - 4] = 'g';
    group[TSIDE_PATH_SIZE] = '\0';
    ck_assert(tside_i_within(&fault, group, fault.status) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_uint_eq(strlen(fault.field), TSIDE_PATH_SIZE - 1);
    ck_assert_uint_eq(strspn(fault.field, "g"), TSIDE_PATH_SIZE - 1);
}
END_TEST

/* Where one of them is no number, none is handed over. */
START_TEST(a_list_with_what_is_no_number_is_no_answer)
{
    tside_strength_line made[3] = {{.demand = 1}, {.demand = NAN}, {.demand = INFINITY}}, lines[3];
    tside_fault fault;
    REFUSES(ANSWER_LIST(&tside_i_strength_line_table, made, lines, 3, &fault), lines, TSIDE_NOT_MODELLED,
            "lines[1].demand", TSIDE_NOT_FINITE);
    ANSWERS(ANSWER_LIST(&tside_i_strength_line_table, made, lines, 1, &fault));
    ck_assert(lines->demand == 1);
}
END_TEST

/* A bound that the field's own bounds leave no room for is none; the spread of a core is from 0 to below 1. */
START_TEST(a_bound_that_no_value_meets)
{
    static const struct {
        const char *field, *name;
        tside_relation relation;
        double bound;
        int none;
    } rows[] = {
        {"stops.core_spread", "stops", TSIDE_BELOW, 1, 1},
        {"stops.core_spread", "stops", TSIDE_BELOW, 0.999, 0},
        {"stops.core_spread", "stops", TSIDE_NOT_ABOVE, 1, 1},
        {"stops.core_spread", "stops", TSIDE_NOT_ABOVE, 0.999, 0},
        {"stops.core_spread", "stops", TSIDE_ABOVE, -0.001, 1},
        {"stops.core_spread", "stops", TSIDE_ABOVE, 0, 0},
        {"stops.core_spread", "stops", TSIDE_NOT_BELOW, 0, 1},
        {"stops.core_spread", "stops", TSIDE_NOT_BELOW, 0.001, 0},
        {"core_spread", NULL, TSIDE_BELOW, 1, 1},
        {"stops.core_spread", "stop", TSIDE_BELOW, 1, 0}, /* of another argument, whose name only begins so */
        {"stops.core_spread", "bow", TSIDE_BELOW, 1, 0},
        {"stops.no_such", "stops", TSIDE_BELOW, 1, 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        tside_fault fault;
        tside_status status = tside_i_refuse_value(&fault, TSIDE_CONTRADICTS, rows[i].field, "other", "why", "1", 0.5,
                                                   rows[i].relation, rows[i].bound, 0);
        ck_assert(tside_i_settle(&tside_i_stops_table, rows[i].name, status, &fault) == status);
        ck_assert_msg(fault.relation == (rows[i].none ? TSIDE_NONE_FITS : rows[i].relation), "row %d", (int)i);
        ck_assert_msg(fault.bound == (rows[i].none ? 0 : rows[i].bound), "row %d", (int)i);
    }
}
END_TEST

Suite *field_paths_suite(void)
{
    Suite *suite = suite_create("field_paths");
    TCase *tcase = tcase_create("field_paths");
    tcase_add_test(tcase, every_path_is_found);
    tcase_add_test(tcase, paths_that_lead_nowhere_are_refused);
    tcase_add_test(tcase, a_path_is_cut_where_it_ends);
    tcase_add_test(tcase, a_list_with_what_is_no_number_is_no_answer);
    tcase_add_test(tcase, a_bound_that_no_value_meets);
    suite_add_tcase(suite, tcase);
    return suite;
}
