/* SPDX-License-Identifier: MIT */
/* Quantities read from text: what is taken, what is refused, and where. */
#include <check.h>
#include <float.h>
#include <locale.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/length.h>

#include "lengths.h"

Suite *length_suite(void);

/* --- helpers --- */

static void refused(const char *text, const char *unit, int index, const char *reason, const char *other)
{
    double value = 7.25;
    tside_fault fault;
    memset(&fault, 'x', sizeof fault);
    if (tside_quantity_read(text, unit, &value, &fault) != TSIDE_UNREADABLE)
        ck_abort_msg("\"%s\" in %s was read as %.17g", text, unit, value);
    ck_assert_msg(fault.index == index, "\"%s\": character %d, not %d", text, fault.index, index);
    ck_assert_str_eq(fault.reason, reason);
    ck_assert_str_eq(fault.other, other);
    ck_assert_str_eq(fault.unit, unit);
    ck_assert_str_eq(fault.field, "");
    ck_assert_int_eq((int)fault.status, TSIDE_UNREADABLE);
    ck_assert_int_eq((int)fault.relation, TSIDE_NO_RELATION);
    ck_assert(fault.value == 0 && fault.bound == 0 && fault.gap == 0);
    ck_assert(value == 7.25);
    ck_assert_int_eq((int)tside_quantity_read(text, unit, &value, NULL), TSIDE_UNREADABLE);
    ck_assert(value == 7.25);
}

/* --- reading --- */

START_TEST(reads_what_the_header_says)
{
    /*
     * The values are literals: the compiler rounds them. Inches: 0.0254 m each, pounds 0.45359237 kg, g 9.80665 m/s2.
     */
    static const struct {
        const char *text, *unit;
        double value;
    } rows[] = {
        {"5 ft 3 1/2 in", "m", 1.6129},
        {"5 ft 3-1/2 in", "m", 1.6129},
        {"5' 3-1/2\"", "m", 1.6129},
        {"5'3 1/2\"", "m", 1.6129},
        {"5'-3 1/2\"", "m", 1.6129},
        {"5ft3.5in", "m", 1.6129},
        {"5 ft 3.5e0 in", "m", 1.6129},
        {"5' 3 in", "m", 1.6002},
        {"5 ft 3\"", "m", 1.6002},
        {"5 ft .5 in", "m", 1.5367},
        {"5 ft 11.999 in", "m", 1.8287746},
        {"0 ft 0 in", "m", 0},
        {"0 ft 3/4 in", "m", 0.01905},
        {"63-1/2\"", "m", 1.6129},
        {"63 1/2 in", "m", 1.6129},
        {"63 \t 1/2\t in", "m", 1.6129},
        {"127/2 in", "m", 1.6129},
        {"3/4 in", "m", 0.01905},
        {"0/4 in", "m", 0},
        {"-1/2 in", "m", -0.0127},
        {"-5 ft 3 1/2 in", "m", -1.6129},
        {"5ft", "m", 1.524},
        {"5 1/2 ft", "m", 1.6764},
        {"5.5'", "m", 1.6764},
        {"2 yd", "m", 1.8288},
        {"1.6 m", "m", 1.6},
        {"\t 1.6 m \t", "m", 1.6},
        {"38 mm", "m", 0.038},
        {"38mm", "m", 0.038},
        {"12.5 cm", "m", 0.125},
        {"1.5 km", "m", 1500},
        {"2.5e-3 m", "m", 0.0025},
        {"2.5E+3 m", "m", 2500},
        {"1e05 m", "m", 100000},
        {".25 m", "m", 0.25},
        {"007 m", "m", 7},
        {"-0 m", "m", 0},
        {"-0 ft 0 in", "m", 0},
        {"1/3 m", "m", 1.0 / 3},
        {"1e-400 m", "m", 0},
        {"-1e-400 m", "m", 0},
        {"1e-323 m", "m", 9.88131291682493088353137585736442744730e-324},
        {"1.7976931348623157e308 m", "m", DBL_MAX},
        {"0.000000000000000000000000000000000000001e300 m", "m", 1e261},
        {"9999999999999999999999999999999999999999 in", "m", 2.54e38},
        {"0.000000000000000000000000000000000000001 m", "m", 1e-39},
        {"6 mm2", "m2", 6e-6},
        {"6 cm2", "m2", 6e-4},
        {"6 m2", "m2", 6},
        {"1 in2", "m2", 0.00064516},
        {"1 ft2", "m2", 0.09290304},
        {"1 yd2", "m2", 0.83612736},
        {"7 mm3", "m3", 7e-9},
        {"7 cm3", "m3", 7e-6},
        {"7 m3", "m3", 7},
        {"1 in3", "m3", 1.6387064e-5},
        {"1 ft3", "m3", 0.028316846592},
        {"7 mm4", "m4", 7e-12},
        {"7 cm4", "m4", 7e-8},
        {"7 m4", "m4", 7},
        {"1 in4", "m4", 4.162314256e-7},
        {"250 g", "kg", 0.25},
        {"4.5 kg", "kg", 4.5},
        {"1 oz", "kg", 0.028349523125},
        {"1 lb", "kg", 0.45359237},
        {"2 1/2 lb", "kg", 1.133980925},
        {"900 g/m", "kg/m", 0.9},
        {"0.9 kg/m", "kg/m", 0.9},
        {"200 g/m2", "kg/m2", 0.2},
        {"0.2 kg/m2", "kg/m2", 0.2},
        {"7850 kg/m3", "kg/m3", 7850},
        {"7.85 g/cm3", "kg/m3", 7850},
        {"12 N", "N", 12},
        {"1.2 kN", "N", 1200},
        {"1 lbf", "N", 4.4482216152605},
        {"40 N m", "N m", 40},
        {"40 N  \tm", "N m", 40},
        {"40Nm", "N m", 40},
        {"0.04 kN m", "N m", 40},
        {"1 lbf ft", "N m", 1.3558179483314004},
        {"1 ft lbf", "N m", 1.3558179483314004},
        {"1 lbf in", "N m", 0.1129848290276167},
        {"1 in lbf", "N m", 0.1129848290276167},
        {"3 N/m", "N/m", 3},
        {"3 kN/m", "N/m", 3000},
        {"5 Pa", "Pa", 5},
        {"5 kPa", "Pa", 5e3},
        {"5 MPa", "Pa", 5e6},
        {"5 N/mm2", "Pa", 5e6},
        {"5 GPa", "Pa", 5e9},
        {"0 psi", "Pa", 0},
        {"1.5 rad", "rad", 1.5},
        {"180 deg", "rad", 3.14159265358979323846264338327950288},
        {"90 deg", "rad", 1.57079632679489661923132169163975144},
        {"-90 deg", "rad", -1.57079632679489661923132169163975144},
        {"2 rad/s", "rad/s", 2},
        {"60 rpm", "rad/s", 6.28318530717958647692528676655900577},
        {"8 s", "s", 8},
        {"1.5 min", "s", 90},
        {"1/4 h", "s", 900},
        {"4 m/s", "m/s", 4},
        {"36 km/h", "m/s", 10},
        {"100 mph", "m/s", 44.704},
        {"100 ft/min", "m/s", 0.508},
        {"2 m3/s", "m3/s", 2},
        {"7200 m3/h", "m3/s", 2},
        {"1000 ft3/min", "m3/s", 0.4719474432},
        {"0.5 /s", "/s", 0.5},
        {"1/min", "/s", 1.0 / 60},
        {"40 /h", "/s", 40.0 / 3600},
        {"40/h", "/s", 40.0 / 3600},
        {"40 1/2/h", "/s", 40.5 / 3600},
        {"800 W/m2", "W/m2", 800},
        {"6 W/(m2 K)", "W/(m2 K)", 6},
        {"1006 J/(kg K)", "J/(kg K)", 1006},
        {"24 V", "V", 24},
        {"1.5 A", "A", 1.5},
        {"150 mA", "A", 0.15},
        {"60 W", "W", 60},
        {"0.06 kW", "W", 60},
        {"6 J", "J", 6},
        {"6 kJ", "J", 6000},
        {"2 Wh", "J", 7200},
        {"20 K", "K", 20},
        {"0.5 ohm", "ohm", 0.5},
        {"3", "turn", 3},
        {"3 1/2", "turn", 3.5},
        {"1 turn", "turn", 1},
        {"3.5 turns", "turn", 3.5},
        {"0.02", "1", 0.02},
        {"-2", "1", -2},
        {"1/64", "1", 0.015625},
        {"2.5 %", "1", 0.025},
        {"100%", "1", 1},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++)
        same(read_as(rows[i].text, rows[i].unit), rows[i].value, rows[i].text);
}
END_TEST

#define METRES "mm, cm, m, km, in, \", ft, ', yd, um"

START_TEST(refuses_with_the_place)
{
    static const char digit[] = "a digit is wanted here", number[] = "a number is wanted here",
                      bare[] = "a bare number has no unit", missing[] = "a unit is missing before this number",
                      other[] = "a unit of another quantity", none[] = "no such unit",
                      minus[] = "a minus sign stands before the whole", joined[] = "only feet and inches may be joined",
                      more[] = "nothing may follow here", fraction[] = "a fraction is one whole number over another",
                      point[] = "a point does not fit here", comma[] = "a comma is no decimal point",
                      twelve[] = "inches after feet must be below 12", whole[] = "feet before inches must be whole",
                      zero[] = "a denominator must be above 0",
                      proper[] = "a fraction after a whole number must be below 1",
                      forty[] = "a number has at most 40 digits", exponent[] = "an exponent is at most 400",
                      great[] = "the number is too great";
    static const struct {
        const char *text, *unit;
        int index;
        const char *reason, *names;
    } rows[] = {
        {"", "m", 0, number, ""},
        {"  ", "m", 2, number, ""},
        {"in", "m", 0, number, ""},
        {" in", "m", 1, number, ""},
        {"-", "m", 1, number, ""},
        {"--5 m", "m", 1, number, ""},
        {"- 5 m", "m", 1, number, ""},
        {"+5 m", "m", 0, number, ""},
        {"nan m", "m", 0, number, ""},
        {"inf m", "m", 0, number, ""},
        {"-inf m", "m", 1, number, ""},
        {"e5 m", "m", 0, number, ""},
        {"\n5 m", "m", 0, number, ""},
        {"5 m\n", "m", 3, more, ""},
        {"63", "m", 2, bare, METRES},
        {"63 ", "m", 3, bare, METRES},
        {"63-1/2", "m", 6, bare, METRES},
        {"5 ft 3", "m", 6, bare, METRES},
        {"5", "kg", 1, bare, "g, kg, oz, lb"},
        {"5 3", "m", 2, missing, METRES},
        {"5 3 in", "m", 2, missing, METRES},
        {"3/{", "/s", 2, digit, ""},
        {"3/_", "/s", 2, digit, ""},
        {"5 kg", "m", 2, other, METRES},
        {"5 N m", "m", 2, other, METRES},
        {"5 m2", "m", 3, other, METRES},
        {"5 m", "kg", 2, other, "g, kg, oz, lb"},
        {"5 lb/ft", "kg", 4, other, "g, kg, oz, lb"},
        {"5 m", "1", 2, other, "%"},
        {"5 m ", "turn", 2, other, "turn, turns"},
        {"5 %", "m", 2, other, METRES},
        {"5 M", "m", 2, none, METRES},
        {"5 inch", "kg", 2, other, "g, kg, oz, lb"},
        {"5 inchs", "kg", 2, none, "g, kg, oz, lb"},
        {"5 N", "N m", 2, other, "N m, Nm, kN m, lbf ft, ft lbf, lbf in, in lbf"},
        {"5 N.m", "N m", 2, none, "N m, Nm, kN m, lbf ft, ft lbf, lbf in, in lbf"},
        {"0x10 m", "m", 1, none, METRES},
        {"5 _m", "m", 2, none, METRES},
        {"5 {m", "m", 2, none, METRES},
        {"5e m", "m", 1, none, METRES},
        {"5e+ m", "m", 1, none, METRES},
        {"5 mx", "m", 3, more, ""},
        {"5 mx", "1", 2, more, ""},
        {"5 inchs", "m", 6, more, ""},
        {"5 ft 3 in x", "m", 10, more, ""},
        {"5 m 3 cm", "m", 4, joined, ""},
        {"5 in 3 ft", "m", 5, joined, ""},
        {"5 ft 3 in 2", "m", 10, joined, ""},
        {"5 3", "1", 2, joined, ""},
        {"5 ft -3 in", "m", 5, minus, ""},
        {"5 ft-3 in", "m", 4, minus, ""},
        {"5' -3 in", "m", 3, minus, ""},
        {"5'--3 in", "m", 2, minus, ""},
        {"5'-", "m", 2, minus, ""},
        {"5 -3 in", "m", 2, minus, ""},
        {"63-2 in", "m", 2, minus, ""},
        {"63 - 1/2 in", "m", 3, minus, ""},
        {"63 -1/2 in", "m", 3, minus, ""},
        {"63.5-1/2 in", "m", 4, minus, ""},
        {"5 m-", "m", 3, minus, ""},
        {"1,5 m", "m", 1, comma, ""},
        {"1,613 mm", "m", 1, comma, ""},
        {"5 ft, 3 in", "m", 4, comma, ""},
        {"1//2 in", "m", 2, digit, ""},
        {"1/ 2 in", "m", 2, digit, ""},
        {"1/-2 in", "m", 2, digit, ""},
        {"3 1/x in", "m", 4, digit, ""},
        {"1 /2 in", "m", 2, fraction, ""},
        {"1/2/3 in", "m", 3, fraction, ""},
        {"1.5/2 in", "m", 3, fraction, ""},
        {"1e1/2 in", "m", 3, fraction, ""},
        {"1/0 in", "m", 2, zero, ""},
        {"1/00 in", "m", 2, zero, ""},
        {"3 1/0 in", "m", 4, zero, ""},
        {"5 ft 1/0 in", "m", 7, zero, ""},
        {"3 2/2 in", "m", 2, proper, ""},
        {"3-5/4 in", "m", 2, proper, ""},
        {"1.5 1/2 in", "m", 4, missing, METRES},
        {"1e1 1/2 in", "m", 4, missing, METRES},
        {"1/2 1/2 in", "m", 4, missing, METRES},
        {"5. m", "m", 2, digit, ""},
        {". m", "m", 1, digit, ""},
        {"5.e3 m", "m", 2, digit, ""},
        {"1.5.2 m", "m", 3, point, ""},
        {"1/2.5 in", "m", 3, point, ""},
        {"5 in.", "m", 4, point, ""},
        {"5 ft 12 in", "m", 5, twelve, ""},
        {"5 ft 14 in", "m", 5, twelve, ""},
        {"5 ft 25/2 in", "m", 5, twelve, ""},
        {"5'-12\"", "m", 3, twelve, ""},
        {"5.5 ft 3 in", "m", 7, whole, ""},
        {"5 1/2 ft 3 in", "m", 9, whole, ""},
        {"3/4 ft 3 in", "m", 7, whole, ""},
        {"5e0 ft 3 in", "m", 7, whole, ""},
        {"5 ft 3 mm", "m", 7, "only inches may follow feet", ""},
        {"5 ft 3 ft", "m", 7, "only inches may follow feet", ""},
        {"5' 3'", "m", 4, "only inches may follow feet", ""},
        {"12345678901234567890123456789012345678901 m", "m", 40, forty, ""},
        {"0.0000000000000000000000000000000000000001 m", "m", 41, forty, ""},
        {"12345678901234567890123456789012345678901/2 m", "m", 40, forty, ""},
        {"1/12345678901234567890123456789012345678901 m", "m", 42, forty, ""},
        {"1e401 m", "m", 4, exponent, ""},
        {"1e-401 m", "m", 5, exponent, ""},
        {"1e99999999999 m", "m", 4, exponent, ""},
        {"1e400 m", "m", 0, great, ""},
        {" -1e309 m", "m", 1, great, ""},
        {"1.79769313486231580793728971405303415080e308 m", "m", 0, great, ""},
        {"1.8e305 km", "m", 0, great, ""},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++)
        refused(rows[i].text, rows[i].unit, rows[i].index, rows[i].reason, rows[i].names);
}
END_TEST

START_TEST(refuses_a_unit_it_does_not_know)
{
    static const char *const names[] = {"furlong", "", "mm", "M", "N  m", "m "};
    char endless[300];
    tside_fault fault;
    double value = 7.25;
    int i;
    for (i = 0; i < COUNT(names); i++) {
        ck_assert_int_eq((int)tside_quantity_read("5 m", names[i], &value, &fault), TSIDE_NOT_FOUND);
        ck_assert_int_eq((int)fault.status, TSIDE_NOT_FOUND);
        ck_assert_str_eq(fault.field, names[i]);
        ck_assert_int_eq(fault.index, -1);
        ck_assert_int_eq((int)tside_quantity_read("5 m", names[i], &value, NULL), TSIDE_NOT_FOUND);
    }
    memset(endless, 'm', sizeof endless - 1);
    endless[sizeof endless - 1] = '\0';
    ck_assert_int_eq((int)tside_quantity_read("5 m", endless, &value, &fault), TSIDE_NOT_FOUND);
    ck_assert_uint_eq(strlen(fault.field), TSIDE_PATH_SIZE - 1);
    endless[TSIDE_PATH_SIZE] = '\0'; /* one character too long */
    ck_assert_int_eq((int)tside_quantity_read("5 m", endless, &value, &fault), TSIDE_NOT_FOUND);
    ck_assert_uint_eq(strlen(fault.field), TSIDE_PATH_SIZE - 1);
    ck_assert(value == 7.25);
}
END_TEST

START_TEST(refuses_a_text_without_end)
{
    char text[258];
    memset(text, ' ', sizeof text);
    text[0] = '5';
    text[254] = 'm';
    text[255] = '\0';
    same(read_as(text, "m"), 5, "255 characters");
    text[255] = ' ';
    text[256] = '\0';
    refused(text, "m", 255, "a quantity has at most 255 bytes", "");
    memset(text, '0', sizeof text); /* no closing zero within reach of what may be looked at */
    refused(text, "m", 255, "a quantity has at most 255 bytes", "");
}
END_TEST

START_TEST(knows_the_customary_units)
{
    /*
     * NIST Special Publication 811 (2008), appendix B.8, factors with seven digits, from memory. Those in bold there
     * are exact.
     */
    static const struct {
        const char *text, *unit;
        double factor, half_digit;
    } rows[] = {
        {"1 lb/ft", "kg/m", 1.488164, 0.5e-6},
        {"1 oz/yd2", "kg/m2", 3.390575e-2, 0.5e-8},
        {"1 oz/ft2", "kg/m2", 0.3051517, 0.5e-7},
        {"1 lb/ft2", "kg/m2", 4.882428, 0.5e-6},
        {"1 lb/ft3", "kg/m3", 16.01846, 0.5e-5},
        {"1 lbf", "N", 4.448222, 0.5e-6},
        {"1 lbf ft", "N m", 1.355818, 0.5e-6},
        {"1 lbf in", "N m", 0.1129848, 0.5e-7},
        {"1 lbf/ft", "N/m", 14.59390, 0.5e-5},
        {"1 psi", "Pa", 6894.757, 0.5e-3},
        {"1 ksi", "Pa", 6894757, 0.5},
        {"1 psf", "Pa", 47.88026, 0.5e-5},
        {"1 deg", "rad", 1.745329e-2, 0.5e-8},
        {"1 rpm", "rad/s", 0.1047198, 0.5e-7},
        {"1 mph", "m/s", 0.44704, 0},
        {"1 ft/min", "m/s", 0.00508, 0},
        {"1 yd", "m", 0.9144, 0},
        {"1 oz", "kg", 2.834952e-2, 0.5e-8},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++) {
        const double got = read_as(rows[i].text, rows[i].unit);
        if (!(fabs(got - rows[i].factor) <= rows[i].half_digit * 1.000001))
            ck_abort_msg("%s: %.17g, not %.17g", rows[i].text, got, rows[i].factor);
    }
}
END_TEST

/* --- correct rounding --- */

START_TEST(the_locale_does_not_matter)
{
    static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8", "de_DE", "fr_FR.UTF-8", "nl_NL.UTF-8"};
    uint64_t state = 8;
    int i, found = 0;
    for (i = 0; i < COUNT(names) && !found; i++)
        found = setlocale(LC_ALL, names[i]) && strcmp(localeconv()->decimal_point, ",") == 0;
    if (!found) {
        fprintf(stderr, "test_length: skipped 1: no locale with a decimal comma is installed\n");
        return;
    }
    ck_assert(strtod("1,5", NULL) == 1.5);
    same(read_as("1.5 m", "m"), 1.5, "1.5 m");
    refused("1,5 m", "m", 1, "a comma is no decimal point", "");
    ck_assert_str_eq(written(1.5, TSIDE_METRES, 3), "1.500 m");
    for (i = 0; i < 500; i++) {
        char text[64], with_unit[72], *point;
        random_decimal(&state, text);
        snprintf(with_unit, sizeof with_unit, "%s m", text);
        if ((point = strchr(text, '.')) != NULL)
            *point = ',';
        if (fabs(strtod(text, NULL)) <= DBL_MAX)
            ck_assert(read_as(with_unit, "m") == strtod(text, NULL));
    }
    setlocale(LC_ALL, "C");
}
END_TEST

Suite *length_suite(void)
{
    Suite *suite = suite_create("length");
    TCase *tcase = tcase_create("length");
    tcase_add_test(tcase, reads_what_the_header_says);
    tcase_add_test(tcase, refuses_with_the_place);
    tcase_add_test(tcase, refuses_a_unit_it_does_not_know);
    tcase_add_test(tcase, refuses_a_text_without_end);
    tcase_add_test(tcase, knows_the_customary_units);
    tcase_add_test(tcase, the_locale_does_not_matter);
    suite_add_tcase(suite, tcase);
    return suite;
}
