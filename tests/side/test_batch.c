/* SPDX-License-Identifier: MIT */
/* Many sides at once, against one after the other. */
#include <limits.h>
#include <check.h>
#include <math.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *batch_suite(void);

enum { ROWS = 7 };

START_TEST(batch_is_the_loop_bit_for_bit)
{
    tside_side base = plain(), one;
    tside_fault fault;
    struct {
        double length, other;
    } rows[ROWS];
    double hips[ROWS], hand = TSIDE_LEFT, turns[ROWS], cut[ROWS], swing[ROWS], codes[ROWS];
    int statuses[ROWS];
    unsigned long long findings[ROWS];
    tside_input in[4];
    tside_output out[4];
    for (int i = 0; i < ROWS; i++) {
        rows[i].length = 20 + 5 * i;
        hips[i] = i == 3 ? NAN : 1.6 + 0.02 * i;
        turns[i] = cut[i] = swing[i] = codes[i] = -7;
    }
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "length", &in[0].place, &fault));
    in[0].data = &rows[0].length, in[0].stride = sizeof rows[0];
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "curtain.hip", &in[1].place, &fault));
    in[1].data = hips, in[1].stride = sizeof *hips;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "hand", &in[2].place, &fault));
    in[2].data = &hand, in[2].stride = 0;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "drive.limit_turns", &in[3].place, &fault));
    in[3].data = &rows[0].length, in[3].stride = 0; /* an optional number: laying it over gives it */
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_turns", &out[0].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_end.layout.cut_length", &out[1].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_end.hip_kick_out", &out[2].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "findings[0].code", &out[3].place, &fault));
    for (int k = 0; k < 4; k++)
        out[k].data = k == 0 ? turns : k == 1 ? cut : k == 2 ? swing : codes, out[k].stride = sizeof(double);
    ck_assert(tside_plan_sides(&base, ROWS, in, 4, out, 4, statuses, findings, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_int_eq(fault.index, 3);
    ck_assert_str_eq(fault.field, "curtain.hip");
    for (int i = 0; i < ROWS; i++) {
        tside_plan plan;
        unsigned long long bits = 0;
        one = base;
        one.length = rows[i].length;
        one.curtain.hip = hips[i];
        one.hand = TSIDE_LEFT;
        one.drive.limit_turns_given = 1;
        one.drive.limit_turns = rows[0].length;
        ck_assert_int_eq(statuses[i], (int)tside_plan_side(&one, &plan, NULL));
        if (i == 3) {
            ck_assert(turns[i] == -7 && cut[i] == -7 && findings[i] == 0);
            continue;
        }
        for (int k = 0; k < plan.finding_count; k++)
            bits |= 1ull << plan.findings[k].code;
        ck_assert(turns[i] == plan.drive_turns && cut[i] == plan.drive_end.layout.cut_length && findings[i] == bits &&
                  codes[i] == (double)plan.findings[0].code);
        ck_assert(swing[i] == (plan.drive_end.hip_kick_out_given ? plan.drive_end.hip_kick_out : -7));
    }
    hand = 0.5;
    ck_assert(tside_plan_sides(&base, 1, in + 2, 1, out, 1, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "hand");
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "frame", &in[1].place, &fault));
    statuses[0] = -9;
    ck_assert(tside_plan_sides(&base, 1, in, 2, out, 1, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS &&
              fault.index == 1 && statuses[0] == -9);
    ck_assert_str_eq(fault.field, "inputs");
    out[2].place = in[1].place;
    ck_assert(tside_plan_sides(&base, 1, in, 1, out, 4, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS &&
              fault.index == 2 && statuses[0] == -9);
    ck_assert_str_eq(fault.field, "outputs");
    ck_assert(tside_plan_sides(&base, -1, NULL, 0, NULL, 0, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS);
    ANSWERS(tside_plan_sides(&base, 0, NULL, 0, NULL, 0, NULL, NULL, &fault));
}
END_TEST

/* Columns backwards, and every row of one column's outputs into one place: the last row's stays. */
START_TEST(batch_walks_any_stride)
{
    tside_side base = plain(), one;
    tside_fault fault;
    tside_plan plan;
    double lengths[ROWS], turns[ROWS], last = -7;
    int statuses[ROWS];
    tside_input in;
    tside_output out[2];
    for (int i = 0; i < ROWS; i++)
        lengths[i] = 12 + 3 * i;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "length", &in.place, &fault));
    in.data = lengths + ROWS - 1, in.stride = -(ptrdiff_t)sizeof *lengths;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "worst.drive", &out[0].place, &fault));
    out[0].data = turns + ROWS - 1, out[0].stride = -(ptrdiff_t)sizeof *turns;
    out[1].place = out[0].place, out[1].data = &last, out[1].stride = 0;
    ANSWERS(tside_plan_sides(&base, ROWS, &in, 1, out, 2, statuses, NULL, &fault));
    for (int i = 0; i < ROWS; i++) {
        one = base;
        one.length = lengths[i];
        ck_assert(tside_plan_side(&one, &plan, &fault) == TSIDE_OK && turns[i] == plan.worst.drive &&
                  statuses[i] == TSIDE_OK);
    }
    ck_assert(last == turns[0]);
    ck_assert(!memcmp(&base, &one, offsetof(tside_side, length))); /* the base is only read */
}
END_TEST

/* What no column needs is not made: it refuses no row, and changes no number of those that are asked for. */
START_TEST(batch_makes_what_is_asked_for)
{
    static const struct {
        const char *path, *spoilt; /* an output, and what of the side refuses only those that need more */
        double value;
    } asked[] = {
        {"drive_turns", "drive_end.extender.spacing", 9},
        {"splices", "drive_end.extender.spacing", 9},
        {"seal", "free_end.guide.chain", 1.9},
        {"worst.drive", "free_end.guide.chain", 1.9},
        {"opening_far", "drive_end.extender.spacing", 9},
        {"stall_torque", "drive_end.extender.spacing", 9},
    };
    static const char *const needing[] = {"drive_end.sweep.kick_out", "free_end.side_force", "lines[0].demand",
                                          "findings[0].code", "drive_end.layout.angle"};
    for (size_t k = 0; k < sizeof asked / sizeof *asked; k++) {
        tside_side base = plain();
        tside_plan whole;
        tside_fault fault;
        tside_place spoilt;
        tside_output out = {.stride = 0};
        double got = -7, want;
        int status;
        unsigned long long findings;
        ANSWERS(tside_plan_side(&base, &whole, &fault));
        ANSWERS(tside_field_find(TSIDE_KIND_PLAN, asked[k].path, &out.place, &fault));
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, asked[k].spoilt, &spoilt, &fault));
        *(double *)(void *)((char *)&base + spoilt.offset) = asked[k].value;
        out.data = &got;
        want = out.place.field->type == TSIDE_NUMBER
                   ? *(const double *)(const void *)((const char *)&whole + out.place.offset)
                   : *(const int *)(const void *)((const char *)&whole + out.place.offset);
        ck_assert(tside_plan_side(&base, &whole, NULL) != TSIDE_OK);
        ANSWERS(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, NULL, &fault));
        ck_assert(status == TSIDE_OK && got == want);
        ck_assert(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, &findings, NULL) != TSIDE_OK);
        ck_assert(tside_plan_sides(&base, 1, NULL, 0, NULL, 0, &status, NULL, NULL) != TSIDE_OK);
        for (size_t n = 0; n < sizeof needing / sizeof *needing; n++) {
            ANSWERS(tside_field_find(TSIDE_KIND_PLAN, needing[n], &out.place, &fault));
            ck_assert_msg(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, NULL, NULL) != TSIDE_OK, "%s",
                          needing[n]);
        }
    }
}
END_TEST

/* Every number of a plan, asked for alone, is what the whole plan has. */
static void ask_each(const tside_side *side, const tside_plan *whole, tside_kind kind, const char *above, int *asked)
{
    int count;
    const tside_field *rows = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        char path[TSIDE_PATH_SIZE];
        tside_output out = {.stride = 0};
        double got = NAN, want;
        int status;
        snprintf(path, sizeof path, "%s%s%s%s", above, *above ? "." : "", rows[i].name,
                 rows[i].type == TSIDE_LIST ? "[1]" : "");
        if (rows[i].type == TSIDE_GROUP || rows[i].type == TSIDE_LIST) {
            ask_each(side, whole, rows[i].kind, path, asked);
            continue;
        }
        ck_assert_int_eq(tside_field_find(TSIDE_KIND_PLAN, path, &out.place, NULL), TSIDE_OK);
        out.data = &got;
        ck_assert_int_eq(tside_plan_sides(side, 1, NULL, 0, &out, 1, &status, NULL, NULL), TSIDE_OK);
        want = rows[i].type == TSIDE_NUMBER ? *(const double *)(const void *)((const char *)whole + out.place.offset)
                                            : *(const int *)(const void *)((const char *)whole + out.place.offset);
        ck_assert_msg(isnan(got) || got == want, "%s", path);
        ck_assert_msg(!isnan(got) || rows[i].optional, "%s", path);
        (*asked)++;
    }
}

START_TEST(each_number_alone_is_the_whole_plans)
{
    tside_side side = plain();
    tside_plan whole;
    tside_fault fault;
    int asked = 0;
    for (int i = 0; i < 2; i++)
        side.drive_end.keep_outs[i] = side.free_end.keep_outs[i] = (tside_keep_out){6, 7, 1 + i, 2 + i};
    side.drive_end.keep_out_count = side.free_end.keep_out_count = 2;
    ANSWERS(tside_plan_side(&side, &whole, &fault));
    ask_each(&side, &whole, TSIDE_KIND_PLAN, "", &asked);
    ck_assert_int_gt(asked, 150);
}
END_TEST

/* A column of a choice that its row does not use may hold anything; one that is used, a whole number alone. */
START_TEST(unused_choices_of_columns_are_not_looked_at)
{
    enum { CHOSEN = 4 };
    static const char *const columns[] = {"crank.rule", "drive_end.placed", "free_end.extender.slant"};
    const double values[CHOSEN] = {1, 77, NAN, 0.5};
    tside_side base = plain();
    tside_fault fault;
    int statuses[CHOSEN];
    base.crank.fitted = TSIDE_NO_CRANK;
    on_hip(&base);
    for (size_t k = 0; k < sizeof columns / sizeof *columns; k++) {
        tside_input in = {.data = values, .stride = sizeof *values};
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, columns[k], &in.place, &fault));
        ANSWERS(tside_plan_sides(&base, CHOSEN, &in, 1, NULL, 0, statuses, NULL, &fault));
    }
    for (size_t k = 0; k < sizeof columns / sizeof *columns; k++) {
        tside_input in = {.data = values + 3, .stride = sizeof *values};
        char sentence[512];
        base = plain();
        base.crank.fitted = TSIDE_CRANK;
        base.crank.ratio = 6;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, columns[k], &in.place, &fault));
        ck_assert_int_eq(tside_plan_sides(&base, 1, &in, 1, NULL, 0, statuses, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
        ck_assert_str_eq(fault.field, columns[k]);
        tside_fault_text(&fault, sentence, sizeof sentence);
        ck_assert_msg(strstr(sentence, "a count or a choice must be a whole number"), "%s", sentence);
    }
}
END_TEST

/* A whole number that no int holds is refused by the bound that it is beyond. */
START_TEST(counts_beyond_an_int_are_beyond_their_bound)
{
    static const double values[] = {2e9, -2e9, 1e300, -1e300};
    tside_side base = plain();
    tside_input in = {.stride = sizeof *values};
    base.bar.joints = TSIDE_JOINTS_GIVEN;
    for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
        tside_fault fault;
        int status;
        in.data = values + i;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "bar.splices", &in.place, &fault));
        ck_assert_int_eq(tside_plan_sides(&base, 1, &in, 1, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
        ck_assert_str_eq(fault.field, "bar.splices");
        ck_assert_double_eq(fault.value, values[i]);
        ck_assert_int_eq(fault.relation, values[i] > 0 ? TSIDE_ABOVE : TSIDE_BELOW);
        ck_assert_double_eq(fault.bound, values[i] > 0 ? in.place.field->high : in.place.field->low);
    }
}
END_TEST

/* A choice or a count is refused by what its own column says: the last one over it; the base's own by its value. */
START_TEST(refused_choices_are_told_by_their_columns)
{
    const double fraction = 0.5, none = NAN, whole = 1;
    tside_side base = plain();
    tside_fault fault;
    int status;
    tside_input in[2] = {{.data = &fraction}, {.data = &none}};
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "bar.splices", &in[0].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "bar.splices", &in[1].place, &fault));
    base.bar.joints = TSIDE_JOINTS_GIVEN;
    ck_assert_int_eq(tside_plan_sides(&base, 1, in, 2, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert(!strcmp(fault.field, "bar.splices") && fault.relation == TSIDE_NOT_FINITE && fault.value == 0);
    in[1].data = &whole;
    ANSWERS(tside_plan_sides(&base, 1, in, 2, NULL, 0, &status, NULL, &fault));
    in[1].data = &fraction;
    ck_assert_int_eq(tside_plan_sides(&base, 1, in, 2, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert(fault.relation == TSIDE_NO_RELATION && strstr(fault.reason, "whole number"));
    base.bar.splices = INT_MIN;
    ck_assert_int_eq(tside_plan_sides(&base, 1, NULL, 0, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert(!strcmp(fault.field, "bar.splices") && fault.relation == TSIDE_BELOW && fault.value == INT_MIN);
}
END_TEST

/* What an int cannot hold, and what is no more than its bound; with a fault and without. */
START_TEST(refused_counts_are_told_by_their_columns)
{
    static const double values[] = {1e10, -1e10, 1e300, 1000, -1};
    tside_side base = plain();
    tside_fault fault;
    int status;
    tside_input in = {.stride = 0};
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "bar.splices", &in.place, &fault));
    base.bar.joints = TSIDE_JOINTS_GIVEN;
    for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
        in.data = values + i;
        ck_assert_int_eq(tside_plan_sides(&base, 1, &in, 1, NULL, 0, &status, NULL, NULL), TSIDE_OUT_OF_BOUNDS);
        ck_assert_int_eq(tside_plan_sides(&base, 1, &in, 1, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
        ck_assert_str_eq(fault.field, "bar.splices");
        if (fabs(values[i]) <= 1000)
            ck_assert(fault.relation == (values[i] > 0 ? TSIDE_ABOVE : TSIDE_BELOW) && fault.value == values[i]);
    }
}
END_TEST

/* A place that was never found is no column. */
START_TEST(a_column_without_a_field_is_refused)
{
    const double value = 1;
    const tside_side base = plain();
    tside_fault fault;
    double got = -7;
    int status = -9;
    tside_input in[2] = {{.data = &value}, {.data = &value}};
    const tside_output out = {.data = &got};
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "length", &in[0].place, &fault));
    ck_assert_int_eq(tside_plan_sides(&base, 1, in, 2, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert(!strcmp(fault.field, "inputs") && fault.index == 1);
    ck_assert_int_eq(tside_plan_sides(&base, 1, in, 1, &out, 1, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert(!strcmp(fault.field, "outputs") && fault.index == 0);
    ck_assert_int_eq(tside_plan_sides(&base, 1, in, 1, &out, 1, &status, NULL, NULL), TSIDE_OUT_OF_BOUNDS);
    ck_assert(got == -7 && status == -9);
}
END_TEST

/* One row in the middle is bad: its status is the answer, and its number the fault's index. */
START_TEST(batch_answers_with_its_first_bad_row)
{
    const struct {
        const char *path;
        double value;
        tside_status status;
    } bad[] = {
        {"curtain.sill", 19, TSIDE_CONTRADICTS},
        {"curtain.hip", 19, TSIDE_OUT_OF_REACH},
        {"drive.place", TSIDE_MID_BAR, TSIDE_NOT_MODELLED},
    };
    tside_side base = plain();
    tside_fault fault;
    for (size_t k = 0; k < sizeof bad / sizeof *bad; k++) {
        double values[3];
        int statuses[3];
        tside_input in;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, bad[k].path, &in.place, &fault));
        values[0] = values[2] = in.place.field->type == TSIDE_NUMBER
                                    ? *(const double *)(const void *)((const char *)&base + in.place.offset)
                                    : 0;
        values[1] = bad[k].value;
        in.data = values, in.stride = sizeof *values;
        ck_assert(tside_plan_sides(&base, 3, &in, 1, NULL, 0, statuses, NULL, &fault) == bad[k].status);
        heard_held();
        ck_assert(fault.index == 1 && fault.status == bad[k].status && !strcmp(fault.field, bad[k].path));
        ck_assert(statuses[0] == TSIDE_OK && statuses[1] == (int)bad[k].status && statuses[2] == TSIDE_OK);
    }
}
END_TEST

/* Of two bad rows, whichever way each is bad, the first answers; both have their statuses, and good rows their plans.
 */
START_TEST(of_two_bad_rows_the_first_answers)
{
    static const struct {
        double hip;
        tside_status status;
    } bad[] = {{19, TSIDE_OUT_OF_REACH}, {-1, TSIDE_OUT_OF_BOUNDS}};
    const tside_side base = plain();
    tside_side one = base;
    const tside_plan plan = planned(&one);
    for (int way = 0; way < 2; way++) {
        const double hips[] = {base.curtain.hip, bad[way].hip, base.curtain.hip, bad[!way].hip};
        double turns[4] = {-1, -1, -1, -1};
        int statuses[4];
        tside_input in = {.data = hips, .stride = sizeof *hips};
        tside_output out = {.data = turns, .stride = sizeof *turns};
        tside_fault fault;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "curtain.hip", &in.place, &fault));
        ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_turns", &out.place, &fault));
        ck_assert_int_eq(tside_plan_sides(&base, 4, &in, 1, &out, 1, statuses, NULL, &fault), bad[way].status);
        ck_assert(fault.index == 1 && fault.status == bad[way].status && !strcmp(fault.field, "curtain.hip"));
        ck_assert(statuses[0] == TSIDE_OK && statuses[1] == (int)bad[way].status && statuses[2] == TSIDE_OK &&
                  statuses[3] == (int)bad[!way].status);
        ck_assert(turns[0] == plan.drive_turns && turns[2] == plan.drive_turns);
    }
}
END_TEST

Suite *batch_suite(void)
{
    Suite *suite = suite_create("batch");
    TCase *tcase = tcase_create("batch");
    tcase_add_test(tcase, batch_is_the_loop_bit_for_bit);
    tcase_add_test(tcase, batch_walks_any_stride);
    tcase_add_test(tcase, batch_makes_what_is_asked_for);
    tcase_add_test(tcase, each_number_alone_is_the_whole_plans);
    tcase_add_test(tcase, unused_choices_of_columns_are_not_looked_at);
    tcase_add_test(tcase, counts_beyond_an_int_are_beyond_their_bound);
    tcase_add_test(tcase, refused_choices_are_told_by_their_columns);
    tcase_add_test(tcase, refused_counts_are_told_by_their_columns);
    tcase_add_test(tcase, a_column_without_a_field_is_refused);
    tcase_add_test(tcase, batch_answers_with_its_first_bad_row);
    tcase_add_test(tcase, of_two_bad_rows_the_first_answers);
    suite_add_tcase(suite, tcase);
    return suite;
}
