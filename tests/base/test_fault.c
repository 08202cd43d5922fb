/* SPDX-License-Identifier: MIT */
/* The sentence of a fault: each form word for word, and numbers against the C library's printing. */
#include <check.h>
#include <float.h>
#include <limits.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tunnelside/fault.h>
#include <tunnelside/version.h>

#define COUNT(array) ((int)(sizeof(array) / sizeof *(array)))

static tside_fault fault_of(tside_status status, tside_relation relation, const char *field, const char *other,
                            const char *unit, const char *reason, int index, double value, double bound, double gap)
{
    tside_fault fault;
    memset(&fault, '[', sizeof fault); /* so that what stands after a path's end would be seen */
    fault.status = status;
    fault.relation = relation;
    strcpy(fault.field, field);
    strcpy(fault.other, other);
    fault.unit = unit;
    fault.reason = reason;
    fault.index = index;
    fault.value = value;
    fault.bound = bound;
    fault.gap = gap;
    fault.remedy_given = 0;
    return fault;
}

static void says(const tside_fault *fault, const char *want)
{
    char text[600];
    const size_t length = tside_fault_text(fault, text, sizeof text);
    ck_assert_str_eq(text, want);
    ck_assert_uint_eq(length, strlen(want));
}

START_TEST(every_form_of_sentence)
{
    static const struct {
        tside_status status;
        tside_relation relation;
        const char *field, *other, *unit, *reason;
        int index;
        double value, bound, gap;
        const char *sentence;
    } rows[] = {
        /* bounds */
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "roll.core", "", "m", "", -1, -0.02, 0, 0,
         "roll.core: -0.02 m is not above 0 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_BELOW, "roll.core", "", "m", "", -1, 0.5, 1, 0, "roll.core: 0.5 m is below 1 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "roll.core", "", "m", "", -1, 2, 1, 0, "roll.core: 2 m is above 1 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_BELOW, "roll.core", "", "m", "", -1, 2, 1, 0,
         "roll.core: 2 m must be below 1 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "roll.core", "", "m", "why", -1, 2, 1, 5,
         "roll.core: 2 m is above 1 m: why"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "count", "", "1", "", -1, 17, 16, 0, "count: 17 is above 16"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "count", "", "", "", -1, 17, 16, 0, "count: 17 is above 16"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "count", "", NULL, NULL, -1, 17, 16, 0, "count: 17 is above 16"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "", "", "N m", "", -1, 17, 16, 0, "17 N m is above 16 N m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NO_RELATION, "part", "1, 2, 4", "1", "no such fraction", -1, 3, 0, 0,
         "part: no such fraction (1, 2, 4)"},
        {TSIDE_TOO_SMALL, TSIDE_NOT_ABOVE, "size", "", "1", "", -1, 3, 17, 0, "size: 3 is not above 17"},
        {TSIDE_NOT_FOUND, TSIDE_ABOVE, "gauge", "", "1", "", -1, 99, 30, 0, "gauge: 99 is above 30"},
        /* kinds without a bound */
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_FINITE, "roll.core", "", "m", "", -1, 0, 0, 0,
         "roll.core: not a finite number"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ONE_OF, "side.hand", "", "m", "", -1, 7, 1, 0,
         "side.hand: 7 is not one of the choices 0 to 1"},
        /* which element */
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "width", "", "m", "", 0, 0, 0, 0,
         "width (number 1): 0 m is not above 0 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "width", "", "m", "", INT_MAX, 0, 0, 0,
         "width (number 2147483648): 0 m is not above 0 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "keep_outs[2].width", "", "m", "", 2, 0, 0, 0,
         "keep_outs[2].width: 0 m is not above 0 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "width", "", "m", "", -7, 0, 0, 0, "width: 0 m is not above 0 m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_FINITE, "", "", "m", "", 3, 0, 0, 0, "not a finite number"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_FINITE, "width", "", "m", "", 3, 0, 0, 0,
         "width (number 4): not a finite number"},
        /* contradictions */
        {TSIDE_CONTRADICTS, TSIDE_ABOVE, "wall", "diameter", "m", "the bore is gone", -1, 3, 2, 0,
         "wall: 3 m contradicts diameter: the bore is gone; the greatest that fits is 2 m"},
        {TSIDE_CONTRADICTS, TSIDE_NOT_BELOW, "wall", "diameter", "m", "the bore is gone", -1, 2, 2, 0,
         "wall: 2 m contradicts diameter: the bore is gone; the greatest that fits is 2 m"},
        {TSIDE_CONTRADICTS, TSIDE_BELOW, "top", "bottom", "m", "upside down", -1, 1, 2, 0,
         "top: 1 m contradicts bottom: upside down; the least that fits is 2 m"},
        {TSIDE_CONTRADICTS, TSIDE_NOT_ABOVE, "top", "bottom", "m", "upside down", -1, 2, 2, -0.25,
         "top: 2 m contradicts bottom: upside down; the least that fits is 2 m, 0.25 m is missing"},
        {TSIDE_CONTRADICTS, TSIDE_ABOVE, "margin", "ground", "m", "the foot hits it", -1, 2, 1, 0.5,
         "margin: 2 m contradicts ground: the foot hits it; the greatest that fits is 1 m, 0.5 m is left"},
        {TSIDE_CONTRADICTS, TSIDE_ABOVE, "wraps", "limit", "1", NULL, -1, 3, 2, -1,
         "wraps: 3 contradicts limit; the greatest that fits is 2, 1 is missing"},
        {TSIDE_CONTRADICTS, TSIDE_ABOVE, "wall", "", "m", "why", -1, 3, 2, 0,
         "wall: 3 m contradicts: why; the greatest that fits is 2 m"},
        {TSIDE_CONTRADICTS, TSIDE_NO_RELATION, "grade", "metal", "1", "a grade of another metal", -1, 3, 2, 1,
         "grade: contradicts metal: a grade of another metal"},
        {TSIDE_CONTRADICTS, TSIDE_NO_RELATION, "grade", "metal", "1", "", 1, 3, 2, 1,
         "grade (number 2): contradicts metal"},
        {TSIDE_CONTRADICTS, TSIDE_NO_RELATION, "", "metal", "1", "why", -1, 0, 0, 0, "contradicts metal: why"},
        {TSIDE_CONTRADICTS, TSIDE_NOT_FINITE, "grade", "metal", "1", "why", -1, 0, 0, 0, "grade: not a finite number"},
        /* out of reach, not modelled */
        {TSIDE_OUT_OF_REACH, TSIDE_NO_RELATION, "height", "", "m", "above the peak", -1, 3, 2, 1,
         "height: above the peak"},
        {TSIDE_OUT_OF_REACH, TSIDE_ABOVE, "height", "", "m", "above the peak", -1, 3, 2, 0,
         "height: 3 m is out of reach: above the peak; the greatest that fits is 2 m"},
        {TSIDE_OUT_OF_REACH, TSIDE_BELOW, "height", "bow.peak", "m", "below it", -1, 3, 4, 0,
         "height: 3 m is out of reach (bow.peak): below it; the least that fits is 4 m"},
        {TSIDE_NOT_MODELLED, TSIDE_NO_RELATION, "roll", "", "1", "a roll inboard of its curtain", -1, 0, 0, 0,
         "roll: a roll inboard of its curtain"},
        {TSIDE_NOT_MODELLED, TSIDE_ABOVE, "drives", "", "1", "one per bar", -1, 2, 1, 0,
         "drives: 2 is not modelled: one per bar; the greatest that fits is 1"},
        /* a bound that the field may not have */
        {TSIDE_OUT_OF_REACH, TSIDE_NONE_FITS, "extender.bar_clearance", "stops", "m", "the roll hits it", -1, 0.02, 0,
         -0.5,
         "extender.bar_clearance: 0.02 m is out of reach (stops): the roll hits it; no value of it fits, 0.5 m is "
         "missing"},
        {TSIDE_CONTRADICTS, TSIDE_NONE_FITS, "seal", "sill", "m", "too high", -1, 3, 0, 0,
         "seal: 3 m contradicts sill: too high; no value of it fits"},
        /* unreadable, not found */
        {TSIDE_UNREADABLE, TSIDE_NO_RELATION, "", "", "m", "a bare number has no unit", 4, 0, 0, 0,
         "at character 5: a bare number has no unit"},
        {TSIDE_UNREADABLE, TSIDE_NO_RELATION, "", "mm, m", "m", "no such unit", 0, 0, 0, 0,
         "at character 1: no such unit (mm, m)"},
        {TSIDE_UNREADABLE, TSIDE_NO_RELATION, "roll.core", "", "m", "a digit is wanted here", 2, 0, 0, 0,
         "roll.core: at character 3: a digit is wanted here"},
        {TSIDE_UNREADABLE, TSIDE_NO_RELATION, "x", "", "m", "", -1, 0, 0, 0, "x: unreadable"},
        {TSIDE_UNREADABLE, TSIDE_ABOVE, "x", "", "m", "why", 0, 5, 4, 1, "x: at character 1: why"},
        {TSIDE_NOT_FOUND, TSIDE_NO_RELATION, "2 in", "nps, fence, tube", "1", "a size without a family", -1, 0, 0, 0,
         "2 in: a size without a family (nps, fence, tube)"},
        {TSIDE_NOT_FOUND, TSIDE_NO_RELATION, "furlong", "", "1", NULL, -1, 0, 0, 0, "furlong: not found"},
        {TSIDE_NOT_FOUND, TSIDE_NO_RELATION, "", "", NULL, NULL, -1, 0, 0, 0, "not found"},
        {TSIDE_OK, TSIDE_NO_RELATION, "", "", "1", "", -1, 0, 0, 0, "ok"},
        /* numbers that are none */
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "x", "", "m", "", -1, HUGE_VAL, -HUGE_VAL, 0, "x: inf m is above -inf m"},
        {TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "x", "", "m", "", -1, -0.0, 0, 0, "x: 0 m is above 0 m"},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++) {
        const tside_fault fault = fault_of(rows[i].status, rows[i].relation, rows[i].field, rows[i].other, rows[i].unit,
                                           rows[i].reason, rows[i].index, rows[i].value, rows[i].bound, rows[i].gap);
        says(&fault, rows[i].sentence);
    }
}
END_TEST

START_TEST(a_remedy_is_told_with_the_bound)
{
    tside_fault fault = fault_of(TSIDE_OUT_OF_REACH, TSIDE_ABOVE, "along.past", "along.stand_off", "m", "why", -1, 0.5,
                                 0.25, -0.25);
    fault.remedy_given = 1;
    fault.remedy = 0.375;
    says(&fault, "along.past: 0.5 m is out of reach (along.stand_off): why; the greatest that fits is 0.25 m, 0.25 m "
                 "is missing; or along.stand_off of at least 0.375 m");
}
END_TEST

START_TEST(nothing_gives_an_empty_sentence)
{
    char text[4] = "###";
    ck_assert_uint_eq(tside_fault_text(NULL, text, sizeof text), 0);
    ck_assert_str_eq(text, "");
    ck_assert_uint_eq(tside_fault_text(NULL, NULL, 0), 0);
}
END_TEST

START_TEST(a_sentence_is_cut_as_snprintf_cuts)
{
    const tside_fault fault = fault_of(TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ABOVE, "roll.core", "", "m", "", -1, -0.02, 0, 0);
    const char *whole = "roll.core: -0.02 m is not above 0 m";
    char got[64], want[64];
    size_t size;
    for (size = 0; size < sizeof got; size++) {
        memset(got, '#', sizeof got);
        memset(want, '#', sizeof want);
        ck_assert_uint_eq(tside_fault_text(&fault, size ? got : NULL, size), strlen(whole));
        if (size) {
            const size_t kept = strlen(whole) < size ? strlen(whole) : size - 1;
            memcpy(want, whole, kept);
            want[kept] = '\0';
        }
        ck_assert(memcmp(got, want, sizeof got) == 0);
    }
}
END_TEST

START_TEST(nonsense_does_no_harm)
{
    static const int odd[] = {INT_MIN, -1, 3, 6, 7, 8, 99, INT_MAX};
    tside_fault fault;
    char text[1000];
    int i, k;
    for (i = 0; i < COUNT(odd); i++) {
        for (k = 0; k < COUNT(odd); k++) {
            size_t length;
            memset(&fault, 'f', sizeof fault); /* paths without a closing zero */
            memcpy(&fault.status, &odd[i], sizeof fault.status);
            memcpy(&fault.relation, &odd[k], sizeof fault.relation);
            fault.unit = fault.reason = NULL;
            fault.index = odd[k];
            fault.value = NAN;
            length = tside_fault_text(&fault, text, sizeof text);
            ck_assert_uint_eq(length, strlen(text));
            ck_assert(length >= TSIDE_PATH_SIZE);
            ck_assert(memcmp(text, fault.field, TSIDE_PATH_SIZE) == 0);
            ck_assert(text[TSIDE_PATH_SIZE] == ':' || text[TSIDE_PATH_SIZE] == ' ');
        }
    }
    fault = fault_of((tside_status)99, TSIDE_NO_RELATION, "x", "", NULL, NULL, -1, 0, 0, 0);
    says(&fault, "x: unknown status");
    fault = fault_of(TSIDE_OUT_OF_BOUNDS, (tside_relation)99, "x", "", NULL, "why", -1, 0, 0, 0);
    says(&fault, "x: why");
    fault = fault_of(TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "x", "", "m", "", -1, NAN, 1, 0);
    says(&fault, "x: nan m is above 1 m");
}
END_TEST

START_TEST(every_status_has_its_name)
{
    static const char *const names[] = {"ok",           "out of bounds", "contradicts", "out of reach",
                                        "not modelled", "unreadable",    "too small",   "not found"};
    int i;
    for (i = 0; i < COUNT(names); i++)
        ck_assert_str_eq(tside_status_text(i), names[i]);
    ck_assert_int_eq(TSIDE_NOT_FOUND, COUNT(names) - 1);
    ck_assert_str_eq(tside_status_text(COUNT(names)), "unknown status");
    ck_assert_str_eq(tside_status_text(-1), "unknown status");
    ck_assert_str_eq(tside_status_text(INT_MIN), "unknown status");
    ck_assert_str_eq(tside_status_text(INT_MAX), "unknown status");
}
END_TEST

/* The value as a sentence shows it. */
static void shows(double value, const char *want)
{
    tside_fault fault = fault_of(TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, "", "", "1", "", -1, value, 0, 0);
    char sentence[80], expected[80];
    tside_fault_text(&fault, sentence, sizeof sentence);
    snprintf(expected, sizeof expected, "%s is above 0", want);
    ck_assert_str_eq(sentence, expected);
}

START_TEST(library_and_headers_are_of_one_version)
{
    char parts[40];
    snprintf(parts, sizeof parts, "%d.%d.%d", TSIDE_VERSION_MAJOR, TSIDE_VERSION_MINOR, TSIDE_VERSION_PATCH);
    ck_assert_str_eq(tside_version(), TSIDE_VERSION);
    ck_assert_str_eq(tside_version(), parts);
}
END_TEST

START_TEST(numbers_have_six_digits)
{
    static const struct {
        double value;
        const char *text;
    } rows[] = {
        {12, "12"},
        {-0.02, "-0.02"},
        {1.5e7, "1.5e+07"},
        {100000, "100000"},
        {999999, "999999"},
        {1000000, "1e+06"},
        {123456, "123456"},
        {1234567, "1.23457e+06"},
        {0.0001, "0.0001"},
        {0.000123456, "0.000123456"},
        {0.00001, "1e-05"},
        {0.1 + 0.2, "0.3"},
        {1.6129, "1.6129"},
        {1e100, "1e+100"},
        {-2.5e-300, "-2.5e-300"},
        {DBL_MAX, "1.79769e+308"},
        {DBL_MIN, "2.22507e-308"},
        {4.94065645841246544e-324, "4.94066e-324"},
        /* carries */
        {999999.4, "999999"},
        {999999.6, "1e+06"},
        {0.99999951, "1"},
        {9.9999951e-5, "0.0001"},
        {0.000099999949, "9.99999e-05"},
        /* exact halves, away from zero, where the C library would go to even */
        {1000000.5, "1e+06"},
        {1000005, "1.00001e+06"},
        {1000015, "1.00002e+06"},
        {-1000025, "-1.00003e+06"},
        {12345.25, "12345.3"},
        {999999.5, "1e+06"},
        {100000.5, "100001"},
        /* just above a half, which a quotient of doubles falls short of: 379680.5 10^25 and 432765.5 10^25 by 1.4e14 */
        {3.796805e+30, "3.79681e+30"},
        {4.327655e+30, "4.32766e+30"},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++)
        shows(rows[i].value, rows[i].text);
}
END_TEST

START_TEST(numbers_are_those_of_the_c_library)
{
    /*
     * Random bits, and whole quotients near powers of ten; none of them is an exact half in the sixth digit, where the
     * two differ.
     */
    uint64_t state = 11;
    int i, power;
    char want[40];
    for (i = 0; i < 4000; i++) {
        double value;
        state = state * UINT64_C(6364136223846793005) +
                UINT64_C(1442695040888963407); /* Knuth's MMIX generator, from memory */
        memcpy(&value, &state, sizeof value);
        if (!isfinite(value))
            continue;
        snprintf(want, sizeof want, "%g", value);
        shows(value, want);
    }
    for (power = -323; power <= 308; power++) {
        char text[16];
        double value;
        snprintf(text, sizeof text, "1e%d", power);
        value = strtod(text, NULL);
        snprintf(want, sizeof want, "%g", value);
        shows(value, want);
        value = nextafter(value, 0);
        snprintf(want, sizeof want, value == 0 ? "0" : "%g", value);
        shows(value, want);
        value *= 0.9999994;
        snprintf(want, sizeof want, "%g", value);
        shows(value, want);
    }
}
END_TEST

Suite *fault_suite(void);

Suite *fault_suite(void)
{
    Suite *suite = suite_create("fault");
    TCase *sentences = tcase_create("sentences"), *numbers = tcase_create("numbers");
    tcase_add_test(sentences, every_form_of_sentence);
    tcase_add_test(sentences, a_remedy_is_told_with_the_bound);
    tcase_add_test(sentences, nothing_gives_an_empty_sentence);
    tcase_add_test(sentences, a_sentence_is_cut_as_snprintf_cuts);
    tcase_add_test(sentences, nonsense_does_no_harm);
    tcase_add_test(sentences, every_status_has_its_name);
    tcase_add_test(sentences, library_and_headers_are_of_one_version);
    tcase_add_test(numbers, numbers_have_six_digits);
    tcase_add_test(numbers, numbers_are_those_of_the_c_library);
    suite_add_tcase(suite, sentences);
    suite_add_tcase(suite, numbers);
    return suite;
}
