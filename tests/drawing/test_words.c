/* SPDX-License-Identifier: MIT */
/* What is written of every measure: its words by hand, its length as tside_length_write has it, and what is refused. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "heard.h"

Suite *words_suite(void);

/* What stands before and behind a length; behind where it is told at a place and less than nought. */
static const struct {
    tside_tells tells;
    const char *before, *ahead, *behind;
} measures[] = {
    {TSIDE_TELLS_HIP_ABOVE_GROUND, "", "", ""},
    {TSIDE_TELLS_BOW_HOLE_ALONG, "along bow ", "", ""},
    {TSIDE_TELLS_SIDE_LENGTH, "side ", "", ""},
    {TSIDE_TELLS_CURTAIN_LENGTH, "curtain ", "", ""},
    {TSIDE_TELLS_BAR_LENGTH, "bar ", "", ""},
    {TSIDE_TELLS_BEYOND_DRIVE, "bar beyond ", "", ""},
    {TSIDE_TELLS_BEYOND_FREE, "bar beyond ", "", ""},
    {TSIDE_TELLS_JOINT_PLACE, "joint ", "", ""},
    {TSIDE_TELLS_HOOK_HEIGHT, "hook ", " above the hip", " below the hip"},
    {TSIDE_TELLS_ANCHOR_HEIGHT, "anchor ", " above the ground", " below the ground"},
    {TSIDE_TELLS_SEAL, "seal ", "", ""},
    {TSIDE_TELLS_OPENING, "opening ", "", ""},
    {TSIDE_TELLS_SHUT_DIAMETER, "diameter ", "", ""},
    {TSIDE_TELLS_OPEN_DIAMETER, "diameter ", "", ""},
    {TSIDE_TELLS_SHUT_BELOW_HIP, "", " below the hip", " above the hip"},
    {TSIDE_TELLS_OPEN_BELOW_HIP, "", " below the hip", " above the hip"},
    {TSIDE_TELLS_SHUT_ABOVE_GROUND, "", " above the ground", " below the ground"},
    {TSIDE_TELLS_OPEN_ABOVE_GROUND, "", " above the ground", " below the ground"},
};

START_TEST(a_measure_is_its_words_about_its_length)
{
    static const double values[] = {0.5, -0.5, 2.4384, -0.0015875};
    tside_fault fault;
    for (size_t i = 0; i < sizeof measures / sizeof *measures; i++)
        for (size_t k = 0; k < sizeof values / sizeof *values; k++)
            for (int way = 0; way < 4; way++) {
                const tside_tape tape = way % 2 ? TSIDE_TAPE_METRIC : TSIDE_TAPE_INCH;
                const tside_dimension d = {.tells = measures[i].tells,
                                           .kind = way < 2 ? TSIDE_DIMENSION_PLACE : TSIDE_DIMENSION_PLUMB,
                                           .value = values[k]};
                char length[40], want[120], words[120];
                ANSWERS(tside_length_write(fabs(values[k]), way % 2 ? TSIDE_MILLIMETRES : TSIDE_FEET_AND_INCHES,
                                           way % 2 ? 0 : 16, length, sizeof length, NULL, &fault));
                snprintf(want, sizeof want, "%s%s%s", measures[i].before, length,
                         way > 1         ? ""
                         : values[k] < 0 ? measures[i].behind
                                         : measures[i].ahead);
                ANSWERS(tside_dimension_text(&d, tape, words, sizeof words, NULL, &fault));
                ck_assert_str_eq(words, want);
            }
}
END_TEST

/* A drill's size to 1/64 in, and to a tenth of a millimetre only where that is not a whole one. */
START_TEST(a_hole_is_told_as_drills_are_sold)
{
    static const struct {
        double value;
        const char *inch, *metric;
    } holes[] = {
        {0.011, "7/16 in", "11 mm"},        {0.01096, "7/16 in", "11 mm"},  {0.01094, "7/16 in", "10.9 mm"},
        {0.0106, "27/64 in", "10.6 mm"},    {0.01004, "25/64 in", "10 mm"}, {0.01006, "25/64 in", "10.1 mm"},
        {0.0254 / 64, "1/64 in", "0.4 mm"}, {0.0254, "1 in", "25.4 mm"},
    };
    static const tside_tells told[] = {TSIDE_TELLS_EYE_HOLE, TSIDE_TELLS_BOW_HOLE, TSIDE_TELLS_MEMBER_HOLE};
    static const char *const before[] = {"eye bolt, hole ", "bow, hole ", "member, hole "};
    tside_fault fault;
    for (size_t i = 0; i < sizeof holes / sizeof *holes; i++)
        for (int k = 0; k < 3; k++)
            for (int tape = 0; tape < 2; tape++) {
                const tside_dimension d = {.tells = told[k], .kind = TSIDE_DIMENSION_DIAMETER, .value = holes[i].value};
                char want[80], words[80];
                snprintf(want, sizeof want, "%s%s", before[k], tape ? holes[i].metric : holes[i].inch);
                ANSWERS(tside_dimension_text(&d, (tside_tape)tape, words, sizeof words, NULL, &fault));
                ck_assert_str_eq(words, want);
            }
}
END_TEST

/* Run on a foot, or on 300 mm, of rise. */
START_TEST(a_slope_is_told_by_its_run)
{
    const tside_dimension d = {.tells = TSIDE_TELLS_RUN, .kind = TSIDE_DIMENSION_ANGLE, .value = -0.5};
    char words[80];
    tside_fault fault;
    ANSWERS(tside_dimension_text(&d, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "run 6 in per 12 in rise");
    ANSWERS(tside_dimension_text(&d, TSIDE_TAPE_METRIC, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "run 150 mm per 300 mm rise");
}
END_TEST

/* Longer than a length that can be written, on either side of nought: the bound is one that is taken. */
START_TEST(what_is_too_long_to_write_is_refused)
{
    static const tside_tells told[] = {TSIDE_TELLS_RUN,           TSIDE_TELLS_HIP_ABOVE_GROUND,
                                       TSIDE_TELLS_HOOK_HEIGHT,   TSIDE_TELLS_ANCHOR_HEIGHT,
                                       TSIDE_TELLS_OPEN_DIAMETER, TSIDE_TELLS_SHUT_ABOVE_GROUND};
    for (size_t i = 0; i < sizeof told / sizeof *told; i++)
        for (int way = 0; way < 4; way++) {
            tside_dimension d = {.tells = told[i], .kind = TSIDE_DIMENSION_PLACE, .value = way < 2 ? 1e7 : -1e7};
            char words[80];
            tside_fault fault;
            REFUSES(tside_dimension_text(&d, (tside_tape)(way % 2), words, sizeof words, NULL, &fault), words,
                    TSIDE_OUT_OF_BOUNDS, "dimension.value", way < 2 ? TSIDE_ABOVE : TSIDE_BELOW);
            ck_assert_double_eq(fault.value, d.value);
            ck_assert_str_eq(fault.unit, told[i] == TSIDE_TELLS_RUN ? "1" : "m");
            d.value = fault.bound;
            ANSWERS(tside_dimension_text(&d, (tside_tape)(way % 2), words, sizeof words, NULL, &fault));
        }
}
END_TEST

START_TEST(a_tape_is_one_of_two)
{
    const tside_dimension d = {.tells = TSIDE_TELLS_SEAL, .value = 1};
    char words[80];
    tside_fault fault;
    for (int tape = -1; tape < 4; tape += 3)
        REFUSES(tside_dimension_text(&d, (tside_tape)tape, words, sizeof words, NULL, &fault), words,
                TSIDE_OUT_OF_BOUNDS, "tape", TSIDE_NOT_ONE_OF);
}
END_TEST

Suite *words_suite(void)
{
    Suite *suite = suite_create("words");
    TCase *tests = tcase_create("words");
    tcase_add_test(tests, a_measure_is_its_words_about_its_length);
    tcase_add_test(tests, a_hole_is_told_as_drills_are_sold);
    tcase_add_test(tests, a_slope_is_told_by_its_run);
    tcase_add_test(tests, what_is_too_long_to_write_is_refused);
    tcase_add_test(tests, a_tape_is_one_of_two);
    suite_add_tcase(suite, tests);
    return suite;
}
