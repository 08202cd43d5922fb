/* SPDX-License-Identifier: MIT */
/* The rows of tests/data, and the runner itself: what must fail does. rows.h says what a row is. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "calls.h"

Suite *data_suite(void);

static rows all, made;

static void read_all(void)
{
    const char *folder = getenv("TSIDE_TEST_DATA");
    char below[1024];
#ifdef TSIDE_TEST_DATA
    if (!folder)
        folder = TSIDE_TEST_DATA;
#endif
    all = rows_read(folder ? folder : ".");
    snprintf(below, sizeof below, "%s/accuracy", folder ? folder : ".");
    made = rows_read(below);
}

static void must_hold(const row *r)
{
    tside_status status;
    why w;
    if (!run_row(r, &status, &w))
        ck_abort_msg("%s: %s: %s", r->place, r->function, w.text);
}

START_TEST(every_row)
{
    must_hold(all.row + _i);
}
END_TEST

/* Calls of what other functions made; Python's and JavaScript's rows are the others alone. */
START_TEST(every_row_of_what_is_made)
{
    must_hold(made.row + _i);
}
END_TEST

START_TEST(files_are_in_order)
{
    ck_assert_msg(!*all.wrong, "%s", all.wrong);
    ck_assert_int_gt(all.count, 0);
    ck_assert_msg(!*made.wrong, "%s", made.wrong);
    ck_assert_int_gt(made.count, 0);
}
END_TEST

/* Each function answers in some row, and fails in each way that its header documents in another. */
START_TEST(every_function_and_failure_has_a_row)
{
    const function *f = functions + _i;
    unsigned seen = 0;
    for (int i = 0; i < all.count; i++) {
        tside_status status;
        why w;
        if (!strcmp(all.row[i].function, f->name) && run_row(all.row + i, &status, &w))
            seen |= FAILS(status);
    }
    ck_assert_msg(seen & FAILS(TSIDE_OK), "%s has no row in which it answers", f->name);
    for (int status = TSIDE_OK + 1; status <= TSIDE_NOT_FOUND; status++)
        ck_assert_msg(
            !(seen & FAILS(status)) == !(f->statuses & FAILS(status)), "%s: %s: %s", f->name, tside_status_text(status),
            f->statuses & FAILS(status) ? "no row provokes it" : "a row provokes it, but it is not documented");
}
END_TEST

/* --- the runner itself: what must fail does --- */

START_TEST(only_the_near_is_near)
{
    ck_assert(!differs(1, 1, 0));
    ck_assert(!differs(1, 1.25, 0.25));
    ck_assert(!differs(1.25, 1, 0.25));
    ck_assert(differs(1, 1.25, 0.2499));
    ck_assert(differs(1.25, 1, 0.2499));
    ck_assert(differs(NAN, 1, 1e300));
    ck_assert(differs(1, NAN, 1e300));
    ck_assert(differs(NAN, NAN, 1e300));
    ck_assert(differs(1, 1, NAN));
    ck_assert(differs(HUGE_VAL, 1, 1e300));
    ck_assert(differs(1, 1, -1));
}
END_TEST

#define BAR "tube.diameter=1.315 in;tube.wall=0.133 in;density=7850"

static const struct {
    const char *line, *complaint; /* no complaint: the row is good */
} samples[] = {
    {"tside_round_section," BAR ",section.area,0.4939,in2,0.00005,pi w (D - w) by hand", NULL},
    {"tside_round_section,\"" BAR "\",section.area,3.1862e-4,,rel 0.001,by hand", NULL},
    {"tside_round_section," BAR ",section.area,318.6,mm2,0.05,by hand", NULL},
    {"tside_tube_size,text=2 in,status,not found: text,,,\"quotes \"\" and, commas\"", NULL},
    {"tside_tube_size,text=nps 1,diameter,1-5/16,in,0.0026,near enough", NULL},
    {"tside_material_values,material.grade=S235,values.yield_known,1,,,by hand", NULL},

    {"tside_round_section," BAR ",section.area,0.4941,in2,0.00005,wrong by more than its tolerance",
     "section.area: got"},
    {"tside_round_section," BAR ",section.area,0.4937,in2,0.00005,wrong by more than its tolerance",
     "section.area: got"},
    {"tside_round_section," BAR ",section.area,nan,,1,nothing is near to it", "section.area: got"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,,no tolerance", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,-1,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,nan,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,inf,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in3,1,another quantity", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.mass,1.68,in,1,another quantity", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.area,about 1,in2,1,no number", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.volume,1,,1,no such result", "no such result"},
    {"tside_round_section," BAR ",area,1,,1,no such result", "no such result"},
    {"tside_round_section," BAR ",section,1,,1,not a value", "no such result"},
    {"tside_round_section," BAR ",status,contradicts: tube.wall,,,it does not", "status: got"},
    {"tside_round_section," BAR ",fault.other,,,,it does not fail", "did not fail"},
    {"tside_round_section," BAR ";density=1,section.area,1,,1,twice", "argument named twice"},
    {"tside_round_section," BAR ";length=1,section.area,1,,1,no such argument", "no such argument"},
    {"tside_round_section," BAR ";tube.length=1,section.area,1,,1,no such field", "no such field"},
    {"tside_round_section," BAR ";tube=1,section.area,1,,1,not a field", "no such field"},
    {"tside_round_section," BAR ";,section.area,1,,1,loose end", "not a list"},
    {"tside_round_section," BAR ";x,section.area,1,,1,no value", "not a list"},
    {"tside_round_section,tube.diameter=1.315 in;tube.wall=0.133 in,section.area,1,,1,no density",
     "argument not named"},
    {"tside_round_section,tube.diameter=1.315 kg;tube.wall=1;density=1,section.area,1,,1,no length",
     "not a value for this field"},
    {"tside_round_section,tube.diameter=1;tube.wall=1;density=heavy,section.area,1,,1,no density",
     "not a value for this argument"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,section.area,1,,1,fails", "failed"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,status,contradicts: tube.side,,,another field",
     "status: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,status,out of bounds: tube.wall,,,another status",
     "status: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.bound,0.04,m,0.001,another bound",
     "fault.bound: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.other,tube.side,,,another field",
     "fault.other: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.mood,,,,none", "no such result"},
    {"tside_material_values,material.metal=wood,values.density,1,,1,no such choice", "not a value for this field"},
    {"tside_material_values,material.grade=S235,values.yield_known,0,,,wrong", "values.yield_known: got"},
    {"tside_material_values,material.grade=S235,values.yield_known,yes,,,wrong", "not a whole number"},
    {"tside_tea_time,,status,ok,,,no such function", "no such function"},
    {"tside_tube_size,text=2 in,status,not found: text,,,", "no source"},
    {"tside_tube_size,text=2 in,status,not found: text,,,  ", "no source"},
    {"tside_tube_size,text=2 in,status,not found: text,,", "columns"},
    {"tside_tube_size,text=2 in,status,not found: text,,,a,b", "columns"},
    {"tside_tube_size,\"text=2 in,status,not found: text,,,a", "quotes"},
    {"tside_tube_size,\"text=2 in\"x,status,not found: text,,,a", "quotes"},
    {"tside_tube_size,text=2\",status,not found: text,,,a", "quotes"},
};

START_TEST(bad_rows_fail)
{
    char line[VALUE_SIZE];
    row r = {0};
    why w = {"", 0, 0};
    tside_status status;
    int good;
    strcpy(line, samples[_i].line);
    good = row_split(line, &r, w.text, sizeof w.text) && run_row(&r, &status, &w);
    if (samples[_i].complaint)
        ck_assert_msg(!good && strstr(w.text, samples[_i].complaint), "%s: %s", samples[_i].line,
                      good ? "passed" : w.text);
    else
        ck_assert_msg(good, "%s: %s", samples[_i].line, w.text);
}
END_TEST

Suite *data_suite(void)
{
    Suite *suite = suite_create("data");
    TCase *runner = tcase_create("runner"), *data = tcase_create("rows");
    read_all();
    tcase_add_test(runner, only_the_near_is_near);
    tcase_add_loop_test(runner, bad_rows_fail, 0, (int)(sizeof samples / sizeof *samples));
    suite_add_tcase(suite, runner);
    tcase_add_test(data, files_are_in_order);
    tcase_add_loop_test(data, every_row, 0, all.count);
    tcase_add_loop_test(data, every_row_of_what_is_made, 0, made.count);
    tcase_add_loop_test(data, every_function_and_failure_has_a_row, 0, function_count);
    suite_add_tcase(suite, data);
    return suite;
}
