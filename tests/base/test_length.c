/* SPDX-License-Identifier: MIT */
/* Quantities as text, in and out, against the C library's own reading and printing and against exact whole-number arithmetic. */
#include <check.h>
#include <float.h>
#include <locale.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tunnelside/length.h>

#ifdef __SIZEOF_INT128__
__extension__ typedef __int128 wide;
#endif

#define COUNT(array) ((int)(sizeof(array) / sizeof *(array)))

/* --- helpers --- */

/* A generator of our own, so that every machine sees the same texts: Steele, Lea and Flood's SplitMix64, from memory. */
static uint64_t next_random(uint64_t *state)
{
    uint64_t z = (*state += UINT64_C(0x9e3779b97f4a7c15));
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

static int below(uint64_t *state, int limit)
{
    return (int)(next_random(state) % (uint64_t)limit);
}

/* The same number and the same sign, so that NaN and -0 for 0 are seen. */
static void same(double got, double want, const char *text)
{
    if (!(got == want) || !signbit(got) != !signbit(want))
        ck_abort_msg("%s: %.17g, not %.17g", text, got, want);
}

static double read_as(const char *text, const char *unit)
{
    double value = NAN;
    tside_fault fault;
    char sentence[400];
    if (tside_quantity_read(text, unit, &value, &fault) != TSIDE_OK) {
        tside_fault_text(&fault, sentence, sizeof sentence);
        ck_abort_msg("\"%s\" in %s: %s", text, unit, sentence);
    }
    return value;
}

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

static const char *written(double metres, tside_style style, int part)
{
    static char text[64];
    size_t needed = 0;
    memset(text, '#', sizeof text);
    ck_assert_int_eq((int)tside_length_write(metres, style, part, text, sizeof text, &needed, NULL), TSIDE_OK);
    ck_assert_uint_eq(needed, strlen(text));
    return text;
}

/* Parts of an inch as a carpenter writes them, made with the C library's printing. */
static const char *carpenter(long parts, long part, int with_feet)
{
    static char text[64];
    const long size = labs(parts), feet = with_feet ? size / (12 * part) : 0;
    long inches = (size - feet * 12 * part) / part, over = size % part, under = part;
    int at = snprintf(text, sizeof text, parts < 0 ? "-" : "");
    while (over && over % 2 == 0 && under % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    if (feet)
        at += snprintf(text + at, sizeof text - (size_t)at, "%ld ft ", feet);
    if (!over)
        snprintf(text + at, sizeof text - (size_t)at, "%ld in", inches);
    else if (!inches)
        snprintf(text + at, sizeof text - (size_t)at, "%ld/%ld in", over, under);
    else
        snprintf(text + at, sizeof text - (size_t)at, "%ld %ld/%ld in", inches, over, under);
    return text;
}

/* digits 10^power, as the C library reads it: correctly rounded in glibc and musl. */
static double decimal(uint64_t digits, int power)
{
    char text[64];
    snprintf(text, sizeof text, "%llue%d", (unsigned long long)digits, power);
    return strtod(text, NULL);
}

/* --- reading --- */

START_TEST(reads_what_the_header_says)
{
    /* The values are literals: the compiler rounds them. Inches: 0.0254 m each, pounds 0.45359237 kg, g 9.80665 m/s2. */
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
    static const char digit[] = "a digit is wanted here", number[] = "a number is wanted here", bare[] = "a bare number has no unit",
                      missing[] = "a unit is missing before this number", other[] = "a unit of another quantity", none[] = "no such unit",
                      minus[] = "a minus sign stands before the whole", joined[] = "only feet and inches may be joined",
                      more[] = "nothing may follow here",
                      fraction[] = "a fraction is one whole number over another", point[] = "a point does not fit here",
                      comma[] = "a comma is no decimal point", twelve[] = "inches after feet must be below 12",
                      whole[] = "feet before inches must be whole", zero[] = "a denominator must be above 0",
                      proper[] = "a fraction after a whole number must be below 1", forty[] = "a number has at most 40 digits",
                      exponent[] = "an exponent is at most 400", great[] = "the number is too great";
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
        {"5e0 ft 3 in", "m", 7, whole, ""},
        {"5 ft 3 mm", "m", 7, "only inches may follow feet", ""},
        {"5 ft 3 ft", "m", 7, "only inches may follow feet", ""},
        {"5' 3'", "m", 4, "only inches may follow feet", ""},
        {"12345678901234567890123456789012345678901 m", "m", 40, forty, ""},
        {"0.0000000000000000000000000000000000000001 m", "m", 41, forty, ""},
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
    /* NIST Special Publication 811 (2008), appendix B.8, factors with seven digits, from memory. Those in bold there are exact. */
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

static void random_decimal(uint64_t *state, char *text)
{
    const int count = 1 + below(state, 40), point = below(state, count + 1);
    int i, at = 0;
    if (below(state, 2))
        text[at++] = '-';
    for (i = 0; i < count; i++) {
        if (i == point)
            text[at++] = '.';
        text[at++] = (char)('0' + below(state, 10));
    }
    if (below(state, 4) == 0)
        snprintf(text + at, 16, "e%d", below(state, 660) - 340);
    else
        snprintf(text + at, 16, "e%d", below(state, 12) - 6);
}

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
    same(read_as("1.79769313486231580793728971405303415079e308 m", "m"), DBL_MAX, "just below the middle between the greatest and 2^1024");
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
            const uint64_t most = UINT64_MAX / rows[i].factor, digits = next_random(&state) % (most < 1000000000 ? most : 1000000000);
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
    fprintf(stderr, "test_length: skipped: factors that are no decimals, since there are no whole numbers of 128 bits here\n");
#endif
}
END_TEST

START_TEST(any_fraction_is_exact)
{
#ifdef __SIZEOF_INT128__
    uint64_t state = 6;
    int i;
    for (i = 0; i < 3000; i++) {
        const uint64_t feet = (uint64_t)below(&state, 100), inches = (uint64_t)below(&state, 12), under = 2 + (uint64_t)below(&state, 9998),
                       over = 1 + next_random(&state) % (under - 1);
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
    same(read_as("9999999999999999999999999999999999999999 ft 11.99999999999999999999999999999999999999e0 in", "m"), 3.048e39, "feet and inches");
    same(read_as("9999999999999999999999999999999999999999 ft 0.999999999999999999999999999999999999999e-400 in", "m"), 3.048e39, "feet and little");
    same(read_as("9999999999999999999999999999999999999999 "
                 "9999999999999999999999999999999999999998/9999999999999999999999999999999999999999 m", "m"), 1e40, "three of forty digits");
    same(read_as("0.000000000000000000000000000000000000001e-400 oz/yd2", "kg/m2"), 0, "the least");
    ck_assert_int_eq((int)tside_quantity_read("9999999999999999999999999999999999999999e400 ksi", "Pa", &(double){0}, NULL), TSIDE_UNREADABLE);
    same(read_as("0.999999999999999999999999999999999999999e-323 deg", "rad"), 0, "an angle below the least double");
}
END_TEST

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

/* --- writing --- */

START_TEST(writes_what_the_header_says)
{
    static const struct {
        double metres;
        tside_style style;
        int part;
        const char *text;
    } rows[] = {
        {1.6129, TSIDE_FEET_AND_INCHES, 16, "5 ft 3 1/2 in"},
        {1.6129, TSIDE_INCHES, 16, "63 1/2 in"},
        {1.6129, TSIDE_MILLIMETRES, 0, "1613 mm"},
        {1.6129, TSIDE_MILLIMETRES, 1, "1612.9 mm"},
        {1.6129, TSIDE_MILLIMETRES, 6, "1612.900000 mm"},
        {1.6129, TSIDE_METRES, 3, "1.613 m"},
        {1.6129, TSIDE_METRES, 0, "2 m"},
        {0.9207500, TSIDE_FEET_AND_INCHES, 16, "3 ft 1/4 in"},
        {-0.9207500, TSIDE_FEET_AND_INCHES, 16, "-3 ft 1/4 in"},
        {-0.9207500, TSIDE_INCHES, 16, "-36 1/4 in"},
        {0.3048, TSIDE_FEET_AND_INCHES, 16, "1 ft 0 in"},
        {0.30477460, TSIDE_FEET_AND_INCHES, 16, "1 ft 0 in"}, /* 11.999 in */
        {0.30477460, TSIDE_INCHES, 16, "12 in"},
        {0.60957460, TSIDE_FEET_AND_INCHES, 64, "2 ft 0 in"},
        {0.3032125, TSIDE_FEET_AND_INCHES, 16, "11 15/16 in"},
        {0.3032125, TSIDE_FEET_AND_INCHES, 8, "11 7/8 in"}, /* 11 15/16 in is 0.3032125 m; its double lies below, at 0.30321249999999999813 */
        {0.01905, TSIDE_FEET_AND_INCHES, 64, "3/4 in"},
        {0.01905, TSIDE_INCHES, 2, "1 in"}, /* its double lies above 3/4 in, at 0.01905000000000000054 */
        {0.0254, TSIDE_INCHES, 1, "1 in"},
        {0.0254 / 64, TSIDE_INCHES, 64, "1/64 in"},
        {0.0254 / 64, TSIDE_INCHES, 16, "0 in"},
        {-0.0254 / 64, TSIDE_INCHES, 16, "0 in"},
        {-0.0254 / 64, TSIDE_FEET_AND_INCHES, 1, "0 in"},
        {0, TSIDE_FEET_AND_INCHES, 16, "0 in"},
        {-0.0, TSIDE_INCHES, 16, "0 in"},
        {-0.0, TSIDE_MILLIMETRES, 2, "0.00 mm"},
        {-0.0004, TSIDE_METRES, 3, "0.000 m"},
        {-0.0006, TSIDE_METRES, 3, "-0.001 m"},
        {0.0009996, TSIDE_MILLIMETRES, 3, "1.000 mm"},
        {9.9996, TSIDE_METRES, 3, "10.000 m"},
        {DBL_MIN, TSIDE_METRES, 6, "0.000000 m"},
        {4.94065645841246544e-324, TSIDE_INCHES, 64, "0 in"},
        {1e6, TSIDE_METRES, 6, "1000000.000000 m"},
        {-1e6, TSIDE_MILLIMETRES, 6, "-1000000000.000000 mm"},
        {1e6, TSIDE_FEET_AND_INCHES, 64, "3280839 ft 10 47/64 in"}, /* 39370078.74016 in, less 12 3280839: 10.74016 in, 47.37/64 */
        /* exact halves, away from zero */
        {0.5, TSIDE_METRES, 0, "1 m"},
        {-0.5, TSIDE_METRES, 0, "-1 m"},
        {2.5, TSIDE_METRES, 0, "3 m"},
        {0.125, TSIDE_METRES, 2, "0.13 m"},
        {0.0078125, TSIDE_METRES, 6, "0.007813 m"},
        {0.0625, TSIDE_MILLIMETRES, 0, "63 mm"},
        {-0.0625, TSIDE_MILLIMETRES, 0, "-63 mm"},
        {0.49999999999999994, TSIDE_METRES, 0, "0 m"},
        {127.0 / 256, TSIDE_INCHES, 16, "19 9/16 in"}, /* 19 17/32 in exactly, since 127/256 10000/254 = 625/32 */
        {-127.0 / 256, TSIDE_INCHES, 16, "-19 9/16 in"},
        {127.0 / 256, TSIDE_FEET_AND_INCHES, 32, "1 ft 7 17/32 in"},
        {127.0 / 16, TSIDE_INCHES, 1, "313 in"}, /* 312 1/2 in */
    };
    int i;
    for (i = 0; i < COUNT(rows); i++)
        ck_assert_str_eq(written(rows[i].metres, rows[i].style, rows[i].part), rows[i].text);
}
END_TEST

START_TEST(every_sixteenth_goes_out_and_back)
{
    long parts;
    for (parts = -1600; parts <= 19200; parts++) { /* -100 in to 100 ft */
        const double metres = (parts < 0 ? -1 : 1) * decimal((uint64_t)labs(parts) * 15875, -7); /* 1/16 in = 15875 10^-7 m */
        const char *text = written(metres, TSIDE_FEET_AND_INCHES, 16);
        ck_assert_str_eq(text, carpenter(parts, 16, 1));
        same(read_as(text, "m"), metres, text);
        if (parts % 4)
            continue;
        text = written(metres, TSIDE_INCHES, 4);
        ck_assert_str_eq(text, carpenter(parts, 16, 0));
        same(read_as(text, "m"), metres, text);
    }
}
END_TEST

START_TEST(inches_are_the_nearest)
{
#ifdef __SIZEOF_INT128__
    uint64_t state = 9;
    int i;
    for (i = 0; i < 4000; i++) {
        const long part = 1L << below(&state, 7);
        const double metres = ldexp((double)(next_random(&state) >> 11), -53) * (1 << below(&state, 7)) + 0.02;
        int power;
        const uint64_t units = (uint64_t)ldexp(frexp(metres, &power), 53);
        const wide whole = (wide)254 << (53 - power); /* metres = units 2^(power - 53); parts = units 10000 part / whole */
        const long parts = (long)((2 * (wide)units * 10000 * part + whole) / (2 * whole));
        ck_assert_str_eq(written(metres, TSIDE_INCHES, (int)part), carpenter(parts, part, 0));
        ck_assert_str_eq(written(-metres, TSIDE_FEET_AND_INCHES, (int)part), carpenter(-parts, part, 1));
        ck_assert(fabs(read_as(written(metres, TSIDE_FEET_AND_INCHES, (int)part), "m") - metres) <= 0.0127 / (double)part * (1 + 1e-12));
    }
#else
    fprintf(stderr, "test_length: skipped: nearest inches, since there are no whole numbers of 128 bits here\n");
#endif
}
END_TEST

START_TEST(decimals_are_written_as_the_c_library_writes_them)
{
    uint64_t state = 10;
    int i, part;
    for (i = 0; i < 3000; i++) {
        const double metres = (below(&state, 2) ? 1 : -1) * ldexp((double)(next_random(&state) >> 11), -53 + below(&state, 20)) + 0.5;
        for (part = i % 2; part <= 6; part += 2) {
            char text[64];
            snprintf(text, sizeof text, "%.*f m", part, metres); /* the exact value of the double is printed: glibc, musl */
            if (strtod(text, NULL) == 0)
                continue;
            ck_assert_str_eq(written(metres, TSIDE_METRES, part), text);
            if (part >= 3) { /* move the point */
                char *point = strchr(text, '.'), *digits = text + (*text == '-');
                memmove(point, point + 1, 3);
                point[3] = '.';
                if (part == 3)
                    memmove(point + 3, point + 4, strlen(point + 4) + 1);
                while (*digits == '0' && digits[1] >= '0' && digits[1] <= '9')
                    memmove(digits, digits + 1, strlen(digits));
                strcpy(strchr(text, 'm'), "mm");
                ck_assert_str_eq(written(metres, TSIDE_MILLIMETRES, part - 3), text);
            }
        }
    }
}
END_TEST

static void write_refused(double metres, int style, int part, tside_status status, const char *field, tside_relation relation, double value, double bound)
{
    char buffer[64] = "untouched";
    size_t needed = 99;
    tside_fault fault;
    ck_assert_int_eq((int)tside_length_write(metres, (tside_style)style, part, buffer, sizeof buffer, &needed, &fault), (int)status);
    ck_assert_int_eq((int)tside_length_write(metres, (tside_style)style, part, buffer, sizeof buffer, &needed, NULL), (int)status);
    ck_assert_str_eq(buffer, "untouched");
    ck_assert_uint_eq(needed, 99);
    ck_assert_int_eq((int)fault.status, (int)status);
    ck_assert_str_eq(fault.field, field);
    ck_assert_int_eq((int)fault.relation, (int)relation);
    ck_assert(fault.value == value || (isnan(fault.value) && isnan(value)));
    ck_assert(fault.bound == bound);
    ck_assert(fault.gap == 0);
    ck_assert_int_eq(fault.index, -1);
}

START_TEST(refuses_to_write)
{
    static const int no_parts[] = {-16, -1, 0, 3, 5, 6, 12, 48, 63, 65, 128};
    const double beyond = nextafter(1e6, DBL_MAX);
    int i;
    write_refused(NAN, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, NAN, 0);
    write_refused(HUGE_VAL, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, HUGE_VAL, 0);
    write_refused(-HUGE_VAL, TSIDE_INCHES, 16, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, -HUGE_VAL, 0);
    write_refused(beyond, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_ABOVE, beyond, 1e6);
    write_refused(-beyond, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_BELOW, -beyond, -1e6);
    write_refused(1, -1, 3, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, -1, 3);
    write_refused(1, 4, 3, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, 4, 3);
    write_refused(1, TSIDE_MILLIMETRES, -1, TSIDE_OUT_OF_BOUNDS, "part", TSIDE_BELOW, -1, 0);
    write_refused(1, TSIDE_METRES, 7, TSIDE_OUT_OF_BOUNDS, "part", TSIDE_ABOVE, 7, 6);
    write_refused(NAN, 4, -1, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, NAN, 0); /* the first in order */
    write_refused(1, 4, -1, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, 4, 3);
    for (i = 0; i < COUNT(no_parts); i++) {
        write_refused(1, TSIDE_INCHES, no_parts[i], TSIDE_OUT_OF_BOUNDS, "part", TSIDE_NO_RELATION, no_parts[i], 0);
        write_refused(1, TSIDE_FEET_AND_INCHES, no_parts[i], TSIDE_OUT_OF_BOUNDS, "part", TSIDE_NO_RELATION, no_parts[i], 0);
    }
}
END_TEST

START_TEST(a_buffer_too_small_is_left_alone)
{
    char buffer[16];
    size_t size, needed;
    tside_fault fault;
    for (size = 0; size <= 13; size++) { /* "5 ft 3 1/2 in" has 13 characters */
        memset(buffer, '#', sizeof buffer);
        needed = 99;
        ck_assert_int_eq((int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, size ? buffer : NULL, size, &needed, &fault), TSIDE_TOO_SMALL);
        ck_assert_uint_eq(needed, 13);
        ck_assert(buffer[0] == '#' && memcmp(buffer, buffer + 1, sizeof buffer - 1) == 0);
        ck_assert_int_eq((int)fault.status, TSIDE_TOO_SMALL);
        ck_assert_int_eq((int)fault.relation, TSIDE_NOT_ABOVE);
        ck_assert_str_eq(fault.field, "size");
        ck_assert(fault.value == (double)size && fault.bound == 13);
        ck_assert_int_eq((int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, buffer, size, NULL, NULL), TSIDE_TOO_SMALL);
    }
    ck_assert_int_eq((int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, buffer, 14, NULL, NULL), TSIDE_OK);
    ck_assert_str_eq(buffer, "5 ft 3 1/2 in");
    ck_assert(buffer[14] == '#' && buffer[15] == '#');
}
END_TEST

Suite *length_suite(void);

Suite *length_suite(void)
{
    Suite *suite = suite_create("length");
    TCase *reading = tcase_create("reading"), *rounding = tcase_create("rounding"), *writing = tcase_create("writing");
    tcase_add_test(reading, reads_what_the_header_says);
    tcase_add_test(reading, refuses_with_the_place);
    tcase_add_test(reading, refuses_a_unit_it_does_not_know);
    tcase_add_test(reading, refuses_a_text_without_end);
    tcase_add_test(reading, knows_the_customary_units);
    tcase_add_test(rounding, decimals_are_rounded_as_the_c_library_rounds_them);
    tcase_add_test(rounding, halves_are_rounded_to_even);
    tcase_add_test(rounding, the_hardest_texts_of_forty_digits);
    tcase_add_test(rounding, decimal_factors_are_exact);
    tcase_add_test(rounding, sixty_fourths_are_exact);
    tcase_add_test(rounding, other_factors_are_exact);
    tcase_add_test(rounding, any_fraction_is_exact);
    tcase_add_test(rounding, angles_are_exact);
    tcase_add_test(rounding, the_largest_whole_numbers_fit);
    tcase_add_test(rounding, the_locale_does_not_matter);
    tcase_add_test(writing, writes_what_the_header_says);
    tcase_add_test(writing, every_sixteenth_goes_out_and_back);
    tcase_add_test(writing, inches_are_the_nearest);
    tcase_add_test(writing, decimals_are_written_as_the_c_library_writes_them);
    tcase_add_test(writing, refuses_to_write);
    tcase_add_test(writing, a_buffer_too_small_is_left_alone);
    suite_add_tcase(suite, reading);
    suite_add_tcase(suite, rounding);
    suite_add_tcase(suite, writing);
    return suite;
}
