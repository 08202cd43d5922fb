/* SPDX-License-Identifier: MIT */
/* What a whole side is refused for is of use: random sides, changed until they are refused; and columns. */
#include <check.h>
#include <math.h>
#include <stdio.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "refused.h"
#include "sides.h"

Suite *refusals_suite(void);

/* --- whole sides --- */

FOR_SIDES(a_side_is_refused_by_its_fields, SIDES)
{
    dice d;
    tside_side side = random_side(number, &d), again = side;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}};
    tside_plan plan;
    int refused = 0;
    TRIES(tside_plan_side(&side, &plan, &fault), list, number, refused);
    side = again;
    if (number % 4 == 0)
        TRIES(turns_of(&side, &fault), list, number, refused);
}

FOR_SIDES(a_search_is_refused_by_the_sides_fields, SIDES / 4)
{
    dice d;
    tside_side side = random_side(number, &d), again;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}};
    double rise;
    int index, refused = 0;
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_EXTENDER; /* a rise is asked for */
    again = side;
    TRIES(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault), list, number, refused);
    side = again;
    TRIES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), list, number, refused);
    side = again;
    TRIES(tside_bar_smallest(&side, &index, &fault), list, number, refused);
}

static tside_status take_off(const tside_side *side, const tside_fittings *fittings, tside_fault *fault)
{
    tside_plan plan;
    tside_item items[TSIDE_ITEMS];
    int count;
    tside_status status = tside_plan_side(side, &plan, fault);
    return status == TSIDE_OK ? tside_takeoff(side, &plan, fittings, items, TSIDE_ITEMS, &count, fault) : status;
}

FOR_SIDES(a_take_off_is_refused_by_fields_of_side_and_fittings, SIDES / 2)
{
    dice d;
    tside_side side = random_side(number, &d);
    tside_fittings fittings;
    tside_plan plan;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}, {"fittings", TSIDE_KIND_FITTINGS, &fittings}};
    int refused = 0;
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    change_some(TSIDE_KIND_FITTINGS, &fittings, &d);
    if (tside_plan_side(&side, &plan, NULL) == TSIDE_OK)
        TRIES(take_off(&side, &fittings, &fault), list, number, refused);
}

/* --- columns --- */

/* Returns whether it is refused; what does not apply to the base side is not looked at. */
static int try_column(const tside_side *base, const char *path)
{
    double half = 0.5;
    tside_input input = {.data = &half, .stride = sizeof half};
    tside_fault fault;
    int status;
    ck_assert_int_eq(tside_field_find(TSIDE_KIND_SIDE, path, &input.place, NULL), TSIDE_OK);
    if (tside_plan_sides(base, 1, &input, 1, NULL, 0, &status, NULL, &fault) == TSIDE_OK)
        return 0;
    ck_assert_int_eq(status, TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, path);
    half = NAN;
    ck_assert_int_eq(tside_plan_sides(base, 1, &input, 1, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, path);
    ck_assert_int_eq(fault.relation, TSIDE_NOT_FINITE);
    return 1;
}

/* Every count and choice below a path, and of lists the last element. */
static int try_columns(const tside_side *base, tside_kind kind, const char *above)
{
    int count, refused = 0;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++, row++) {
        char path[2 * TSIDE_PATH_SIZE];
        int length = snprintf(path, sizeof path, "%s%s", above, row->name);
        if (row->type == TSIDE_LIST)
            length += snprintf(path + length, sizeof path - (size_t)length, "[%d]", row->capacity - 1);
        if (row->type == TSIDE_COUNT || row->type == TSIDE_CHOICE)
            refused += try_column(base, path);
        if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
            snprintf(path + length, sizeof path - (size_t)length, ".");
            refused += try_columns(base, row->kind, path);
        }
    }
    return refused;
}

START_TEST(a_column_that_is_not_whole_is_named_whole)
{
    tside_side base;
    bench_side(&base);
    /* every list full: what its elements hold applies */
    base.bar_count = TSIDE_BARS;
    for (int i = 0; i < TSIDE_BARS; i++)
        base.bars[i] = base.bar;
    ck_assert_int_ge(try_columns(&base, TSIDE_KIND_SIDE, ""), 40);
}
END_TEST

Suite *refusals_suite(void)
{
    Suite *suite = suite_create("refusals");
    TCase *tcase = tcase_create("refusals");
    tcase_add_test(tcase, a_side_is_refused_by_its_fields);
    tcase_add_test(tcase, a_search_is_refused_by_the_sides_fields);
    tcase_add_test(tcase, a_column_that_is_not_whole_is_named_whole);
    tcase_add_test(tcase, a_take_off_is_refused_by_fields_of_side_and_fittings);
    suite_add_tcase(suite, tcase);
    return suite;
}
