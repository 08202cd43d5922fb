/* SPDX-License-Identifier: MIT */
/*
 * Quantities read from text are the nearest that there are: against the C library's own reading and exact whole-number
 * arithmetic.
 */
#include <check.h>
#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/length.h>

#include "lengths.h"

Suite *rounding_suite(void);

START_TEST(decimals_are_rounded_as_the_c_library_rounds_them)
{
    uint64_t state = 1;
    int i, read = 0;
    for (i = 0; i < 6000; i++) {
        char text[64], with_unit[72];
        double want, got = 0;
        random_decimal(&state, text);
        want = strtod(text, NULL);
        snprintf(with_unit, sizeof with_unit, "%s m", text);
        if (fabs(want) > DBL_MAX) {
            ck_assert_int_eq((int)tside_quantity_read(with_unit, "m", &got, NULL), TSIDE_UNREADABLE);
            continue;
        }
        got = read_as(with_unit, "m");
        same(got, want == 0 ? 0 : want, with_unit);
        read++;
    }
    ck_assert_int_gt(read, 5500);
}
END_TEST

/* Texts at, just above and just below the middle between two neighbouring doubles. */
static void around_the_middle(const char *middle)
{
    char text[72], with_unit[80];
    char *last;
    int change;
    for (change = -1; change <= 1; change++) {
        snprintf(text, sizeof text, "%s", middle);
        last = text + strcspn(text, "e") - 1;
        if (*last + change < '0' || *last + change > '9')
            continue;
        *last = (char)(*last + change);
        snprintf(with_unit, sizeof with_unit, "%s m", text);
        same(read_as(with_unit, "m"), strtod(text, NULL), with_unit);
    }
}

START_TEST(halves_are_rounded_to_even)
{
    uint64_t state = 2;
    int i;
    same(read_as("9007199254740993 m", "m"), 9007199254740992.0, "2^53 + 1");
    same(read_as("9007199254740995 m", "m"), 9007199254740996.0, "2^53 + 3");
    same(read_as("9007199254740993.000000000000000000000001 m", "m"), 9007199254740994.0, "just above 2^53 + 1");
    same(read_as("2.4703282292062327208e-324 m", "m"), 0, "just below half the least double");
    same(read_as("2.4703282292062327209e-324 m", "m"), strtod("5e-324", NULL), "just above half the least double");
    same(read_as("1.79769313486231580793728971405303415079e308 m", "m"), DBL_MAX,
         "just below the middle between the greatest and 2^1024");
    for (i = 0; i < 1500; i++) {
        /* halves of odd whole numbers of 54 bits: k decimals print them in full */
        const int k = below(&state, 24);
        const uint64_t odd = (UINT64_C(1) << 53 | next_random(&state) >> 11) | 1;
        uint64_t whole = odd >> k, rest = odd & ((UINT64_C(1) << k) - 1);
        char text[64];
        int at = snprintf(text, sizeof text, "%llu.", (unsigned long long)whole), n;
        for (n = 0; n < k; n++) {
            rest *= 10;
            text[at++] = (char)('0' + (rest >> k));
            rest &= (UINT64_C(1) << k) - 1;
        }
        if (k == 0)
            at--;
        text[at] = '\0';
        around_the_middle(text);
    }
}
END_TEST

START_TEST(the_hardest_texts_of_forty_digits)
{
#if LDBL_MANT_DIG >= 64
    uint64_t state = 3;
    int i, tried = 0;
    for (i = 0; i < 2500; i++) {
        const uint64_t bits = next_random(&state) >> (i % 8 ? 1 : 12); /* every eighth is below DBL_MIN */
        double low, high;
        char text[64];
        memcpy(&low, &bits, sizeof low);
        if (!(low < DBL_MAX / 2) || low == 0)
            continue;
        high = nextafter(low, DBL_MAX);
        snprintf(text, sizeof text, "%.39Le", ((long double)low + high) / 2);
        around_the_middle(text);
        tried++;
    }
    ck_assert_int_gt(tried, 2000);
#else
    fprintf(stderr, "test_length: skipped: the hardest texts, since long double has no 64 bits here\n");
#endif
}
END_TEST

START_TEST(decimal_factors_are_exact)
{
    /* factor 10^power, exactly; the product with a whole number is a decimal that the C library can round */
    static const struct {
        const char *unit, *si;
        uint64_t factor;
        int power;
    } rows[] = {
        {"mm", "m", 1, -3},
        {"cm", "m", 1, -2},
        {"km", "m", 1, 3},
        {"in", "m", 254, -4},
        {"\"", "m", 254, -4},
        {"ft", "m", 3048, -4},
        {"'", "m", 3048, -4},
        {"yd", "m", 9144, -4},
        {"mm2", "m2", 1, -6},
        {"cm2", "m2", 1, -4},
        {"in2", "m2", 64516, -8},
        {"ft2", "m2", 9290304, -8},
        {"yd2", "m2", 83612736, -8},
        {"mm3", "m3", 1, -9},
        {"cm3", "m3", 1, -6},
        {"in3", "m3", 16387064, -12},
        {"ft3", "m3", UINT64_C(28316846592), -12},
        {"mm4", "m4", 1, -12},
        {"cm4", "m4", 1, -8},
        {"in4", "m4", UINT64_C(4162314256), -16},
        {"g", "kg", 1, -3},
        {"oz", "kg", UINT64_C(28349523125), -12},
        {"lb", "kg", 45359237, -8},
        {"lbf", "N", UINT64_C(44482216152605), -13},
        {"lbf ft", "N m", UINT64_C(13558179483314004), -16},
        {"in lbf", "N m", UINT64_C(1129848290276167), -16},
        {"MPa", "Pa", 1, 6},
        {"GPa", "Pa", 1, 9},
        {"mph", "m/s", 44704, -5},
        {"ft/min", "m/s", 508, -5},
        {"%", "1", 1, -2},
    };
    uint64_t state = 4;
    int i, k;
    for (i = 0; i < COUNT(rows); i++) {
        for (k = 0; k < 100; k++) {
            const uint64_t most = UINT64_MAX / rows[i].factor,
                           digits = next_random(&state) % (most < 1000000000 ? most : 1000000000);
            const int decimals = below(&state, 8);
            char text[64];
            snprintf(text, sizeof text, "%llue-%d %s", (unsigned long long)digits, decimals, rows[i].unit);
            same(read_as(text, rows[i].si), decimal(digits * rows[i].factor, rows[i].power - decimals), text);
        }
    }
}
END_TEST

START_TEST(sixty_fourths_are_exact)
{
    /* 1/64 in = 254 15625 10^-10 m */
    long parts;
    for (parts = 0; parts <= 64 * 150; parts += 7) {
        const double want = decimal((uint64_t)parts * 254 * 15625, -10);
        char text[80], *feet;
        same(read_as(carpenter(parts, 64, 1), "m"), want, carpenter(parts, 64, 1));
        same(read_as(carpenter(parts, 64, 0), "m"), want, carpenter(parts, 64, 0));
        snprintf(text, sizeof text, "-%ld/64\"", parts);
        same(read_as(text, "m"), parts ? -want : 0, text);
        /* 3 ft 5 7/64 in as 3' 5 7/64" */
        snprintf(text, sizeof text, "%s", carpenter(parts, 64, 1));
        feet = strstr(text, " ft");
        if (feet) {
            *feet = '\'';
            memmove(feet + 1, feet + 3, strlen(feet + 3) + 1);
        }
        strcpy(strstr(text, " in"), "\"");
        same(read_as(text, "m"), want, text);
    }
}
END_TEST

#ifdef __SIZEOF_INT128__
/* value is the double nearest to over/under, halves to even; it is from 2^-20 to 2^52. */
static void nearest_to(double value, uint64_t over, uint64_t under, const char *text)
{
    int power;
    const uint64_t units = (uint64_t)ldexp(frexp(value, &power), 53);
    const int k = 53 - power; /* value = units 2^-k */
    wide error, limit = under;
    ck_assert_msg(k >= 0 && k <= 73 && units >> 52 == 1, "%s: %.17g cannot be checked", text, value);
    ck_assert_msg((wide)over <= ((wide)1 << 126 >> k), "%s: cannot be checked", text);
    error = ((wide)over << k) - (wide)units * under;
    error = 2 * (error < 0 ? -error : error);
    if (error > limit || (error == limit && units % 2))
        ck_abort_msg("%s: %.17g is not the nearest", text, value);
}
#endif

START_TEST(other_factors_are_exact)
{
#ifdef __SIZEOF_INT128__
    /* over/under: of 1 lb = 45359237 10^-8 kg, 1 ft = 3048 10^-4 m, 1 in = 254 10^-4 m, g = 980665 10^-5 m/s2 */
    const uint64_t lb = 45359237, lbf = lb * 980665, ft = 3048, yd = 9144, in = 254;
    const struct {
        const char *unit, *si;
        uint64_t over, under;
        int limit; /* that the check does not overflow */
    } rows[] = {
        {"lb/ft", "kg/m", lb, ft * 10000, 100000},
        {"oz/yd2", "kg/m2", lb, 16 * yd * yd, 100000},
        {"oz/ft2", "kg/m2", lb, 16 * ft * ft, 100000},
        {"lb/ft2", "kg/m2", lb, ft * ft, 100000},
        {"lb/ft3", "kg/m3", lb * 10000, ft * ft * ft, 100000},
        {"lbf/ft", "N/m", lbf, ft * 1000000000, 10000},
        {"psf", "Pa", lbf, ft * ft * 100000, 10000},
        {"psi", "Pa", lbf, in * in * 100000, 10000},
        {"ksi", "Pa", lbf, in * in * 100, 10000},
        {"km/h", "m/s", 10, 36, 100000},
        {"ft3/min", "m3/s", ft * ft * ft, UINT64_C(60000000000000), 10000},
        {"/h", "/s", 1, 3600, 100000},
        {"min", "s", 60, 1, 100000},
        {"h", "s", 3600, 1, 100000},
    };
    uint64_t state = 5;
    int i, k;
    for (i = 0; i < COUNT(rows); i++) {
        for (k = 0; k < 100; k++) {
            const int number = 1 + below(&state, rows[i].limit - 1);
            char text[64];
            snprintf(text, sizeof text, "%d %s", number, rows[i].unit);
            nearest_to(read_as(text, rows[i].si), (uint64_t)number * rows[i].over, rows[i].under, text);
        }
    }
#else
    fprintf(stderr,
            "test_length: skipped: factors that are no decimals, since there are no whole numbers of 128 bits here\n");
#endif
}
END_TEST

START_TEST(any_fraction_is_exact)
{
#ifdef __SIZEOF_INT128__
    uint64_t state = 6;
    int i;
    for (i = 0; i < 3000; i++) {
        const uint64_t feet = (uint64_t)below(&state, 100), inches = (uint64_t)below(&state, 12),
                       under = 2 + (uint64_t)below(&state, 9998), over = 1 + next_random(&state) % (under - 1);
        char text[80];
        snprintf(text, sizeof text, "%d ft %d %d/%d in", (int)feet, (int)inches, (int)over, (int)under);
        nearest_to(read_as(text, "m"), ((12 * feet + inches) * under + over) * 254, under * 10000, text);
        snprintf(text, sizeof text, "%d-%d/%d", (int)feet, (int)over, (int)under);
        nearest_to(read_as(text, "turn"), feet * under + over, under, text);
    }
#else
    fprintf(stderr, "test_length: skipped: fractions, since there are no whole numbers of 128 bits here\n");
#endif
}
END_TEST

START_TEST(angles_are_exact)
{
    /* pi to 35 digits in long double; what its own rounding may do is added to the half unit that is allowed */
    const long double pi = 3.14159265358979323846264338327950288L;
    const double slack = LDBL_MANT_DIG >= 64 ? 0.502 : 1.5;
    uint64_t state = 7;
    int i;
    for (i = 0; i < 2000; i++) {
        const int millis = 1 + below(&state, 10000000);
        char text[64];
        double got;
        long double want;
        snprintf(text, sizeof text, "%de-3 %s", millis, i % 2 ? "deg" : "rpm");
        got = read_as(text, i % 2 ? "rad" : "rad/s");
        want = millis * pi / (i % 2 ? 180000 : 30000);
        if (!(fabsl(got - want) <= slack * (nextafter(got, DBL_MAX) - got)))
            ck_abort_msg("%s: %.17g, not %.20Lg", text, got, want);
    }
}
END_TEST

START_TEST(the_largest_whole_numbers_fit)
{
    /* 40 digits of feet on 400 places of inches; ksi and oz/yd2 have the greatest factors and divisors. */
    same(read_as("9999999999999999999999999999999999999999 ft 11.99999999999999999999999999999999999999e0 in", "m"),
         3.048e39, "feet and inches");
    same(read_as("9999999999999999999999999999999999999999 ft 0.999999999999999999999999999999999999999e-400 in", "m"),
         3.048e39, "feet and little");
    same(read_as("9999999999999999999999999999999999999999 "
                 "9999999999999999999999999999999999999998/9999999999999999999999999999999999999999 m",
                 "m"),
         1e40, "three of forty digits");
    same(read_as("0.000000000000000000000000000000000000001e-400 oz/yd2", "kg/m2"), 0, "the least");
    ck_assert_int_eq(
        (int)tside_quantity_read("9999999999999999999999999999999999999999e400 ksi", "Pa", &(double){0}, NULL),
        TSIDE_UNREADABLE);
    same(read_as("0.999999999999999999999999999999999999999e-323 deg", "rad"), 0, "an angle below the least double");
}
END_TEST

Suite *rounding_suite(void)
{
    Suite *suite = suite_create("rounding");
    TCase *tcase = tcase_create("rounding");
    tcase_add_test(tcase, decimals_are_rounded_as_the_c_library_rounds_them);
    tcase_add_test(tcase, halves_are_rounded_to_even);
    tcase_add_test(tcase, the_hardest_texts_of_forty_digits);
    tcase_add_test(tcase, decimal_factors_are_exact);
    tcase_add_test(tcase, sixty_fourths_are_exact);
    tcase_add_test(tcase, other_factors_are_exact);
    tcase_add_test(tcase, any_fraction_is_exact);
    tcase_add_test(tcase, angles_are_exact);
    tcase_add_test(tcase, the_largest_whole_numbers_fit);
    suite_add_tcase(suite, tcase);
    return suite;
}
