/* SPDX-License-Identifier: MIT */
/* Quantities written as text, against the C library's own printing and exact whole-number arithmetic. */
#include <check.h>
#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/length.h>

#include "lengths.h"

Suite *writing_suite(void);

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
        {0.9207500, TSIDE_FEET_AND_INCHES, 16, "3 ft 0 1/4 in"},
        {-0.9207500, TSIDE_FEET_AND_INCHES, 16, "-3 ft 0 1/4 in"},
        {-0.9207500, TSIDE_INCHES, 16, "-36 1/4 in"},
        {0.3048, TSIDE_FEET_AND_INCHES, 16, "1 ft 0 in"},
        {0.30477460, TSIDE_FEET_AND_INCHES, 16, "1 ft 0 in"}, /* 11.999 in */
        {0.30477460, TSIDE_INCHES, 16, "12 in"},
        {0.60957460, TSIDE_FEET_AND_INCHES, 64, "2 ft 0 in"},
        {0.3032125, TSIDE_FEET_AND_INCHES, 16, "11 15/16 in"},
        {0.3032125, TSIDE_FEET_AND_INCHES, 8,
         "11 7/8 in"}, /* 11 15/16 in is 0.3032125 m; its double lies below, at 0.30321249999999999813 */
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
        {1e6, TSIDE_FEET_AND_INCHES, 64,
         "3280839 ft 10 47/64 in"}, /* 39370078.74016 in, less 12 3280839: 10.74016 in, 47.37/64 */
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
        const double metres = (parts < 0 ? -1 : 1) *
                              decimal((uint64_t)labs(parts) * 15875, -7); /* 1/16 in = 15875 10^-7 m */
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
        const wide whole = (wide)254 << (53 -
                                         power); /* metres = units 2^(power - 53); parts = units 10000 part / whole */
        const long parts = (long)((2 * (wide)units * 10000 * part + whole) / (2 * whole));
        ck_assert_str_eq(written(metres, TSIDE_INCHES, (int)part), carpenter(parts, part, 0));
        ck_assert_str_eq(written(-metres, TSIDE_FEET_AND_INCHES, (int)part), carpenter(-parts, part, 1));
        ck_assert(fabs(read_as(written(metres, TSIDE_FEET_AND_INCHES, (int)part), "m") - metres) <=
                  0.0127 / (double)part * (1 + 1e-12));
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
        const double metres = (below(&state, 2) ? 1 : -1) *
                                  ldexp((double)(next_random(&state) >> 11), -53 + below(&state, 20)) +
                              0.5;
        for (part = i % 2; part <= 6; part += 2) {
            char text[64];
            snprintf(text, sizeof text, "%.*f m", part,
                     metres); /* the exact value of the double is printed: glibc, musl */
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

static void write_refused(double metres, int style, int part, tside_status status, const char *field,
                          tside_relation relation, double value, double bound)
{
    char buffer[64] = "untouched";
    size_t needed = 99;
    tside_fault fault;
    ck_assert_int_eq((int)tside_length_write(metres, (tside_style)style, part, buffer, sizeof buffer, &needed, &fault),
                     (int)status);
    ck_assert_int_eq((int)tside_length_write(metres, (tside_style)style, part, buffer, sizeof buffer, &needed, NULL),
                     (int)status);
    heard_held();
    ck_assert_str_eq(buffer, "untouched");
    ck_assert_uint_eq(needed, 99);
    ck_assert_int_eq((int)fault.status, (int)status);
    ck_assert_str_eq(fault.field, field);
    ck_assert_int_eq((int)fault.relation, (int)relation);
    ck_assert(fault.value == value);
    ck_assert(fault.bound == bound);
    ck_assert(fault.gap == 0);
    ck_assert_int_eq(fault.index, -1);
}

START_TEST(refuses_to_write)
{
    static const int no_parts[] = {-16, -1, 0, 3, 5, 6, 12, 48, 63, 65, 128};
    const double beyond = nextafter(1e6, DBL_MAX);
    int i;
    write_refused(NAN, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, 0, 0);
    write_refused(HUGE_VAL, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, 0, 0);
    write_refused(-HUGE_VAL, TSIDE_INCHES, 16, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, 0, 0);
    write_refused(beyond, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_ABOVE, beyond, 1e6);
    write_refused(-beyond, TSIDE_METRES, 3, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_BELOW, -beyond, -1e6);
    write_refused(1, -1, 3, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, -1, 3);
    write_refused(1, 4, 3, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, 4, 3);
    write_refused(1, TSIDE_MILLIMETRES, -1, TSIDE_OUT_OF_BOUNDS, "part", TSIDE_BELOW, -1, 0);
    write_refused(1, TSIDE_METRES, 7, TSIDE_OUT_OF_BOUNDS, "part", TSIDE_ABOVE, 7, 6);
    write_refused(NAN, 4, -1, TSIDE_OUT_OF_BOUNDS, "metres", TSIDE_NOT_FINITE, 0, 0); /* the first in order */
    write_refused(1, 4, -1, TSIDE_OUT_OF_BOUNDS, "style", TSIDE_NOT_ONE_OF, 4, 3);
    for (i = 0; i < COUNT(no_parts); i++) {
        write_refused(1, TSIDE_INCHES, no_parts[i], TSIDE_OUT_OF_BOUNDS, "part", TSIDE_NO_RELATION, no_parts[i], 0);
        write_refused(1, TSIDE_FEET_AND_INCHES, no_parts[i], TSIDE_OUT_OF_BOUNDS, "part", TSIDE_NO_RELATION,
                      no_parts[i], 0);
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
        ck_assert_int_eq(
            (int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, size ? buffer : NULL, size, &needed, &fault),
            TSIDE_TOO_SMALL);
        ck_assert_uint_eq(needed, 13);
        ck_assert(buffer[0] == '#' && memcmp(buffer, buffer + 1, sizeof buffer - 1) == 0);
        ck_assert_int_eq((int)fault.status, TSIDE_TOO_SMALL);
        ck_assert_int_eq((int)fault.relation, TSIDE_NOT_ABOVE);
        ck_assert_str_eq(fault.field, "size");
        ck_assert(fault.value == (double)size && fault.bound == 13);
        ck_assert_int_eq((int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, buffer, size, NULL, NULL),
                         TSIDE_TOO_SMALL);
    }
    ck_assert_int_eq((int)tside_length_write(1.6129, TSIDE_FEET_AND_INCHES, 16, buffer, 14, NULL, NULL), TSIDE_OK);
    ck_assert_str_eq(buffer, "5 ft 3 1/2 in");
    ck_assert(buffer[14] == '#' && buffer[15] == '#');
}
END_TEST

Suite *writing_suite(void)
{
    Suite *suite = suite_create("writing");
    TCase *tcase = tcase_create("writing");
    tcase_add_test(tcase, writes_what_the_header_says);
    tcase_add_test(tcase, every_sixteenth_goes_out_and_back);
    tcase_add_test(tcase, inches_are_the_nearest);
    tcase_add_test(tcase, decimals_are_written_as_the_c_library_writes_them);
    tcase_add_test(tcase, refuses_to_write);
    tcase_add_test(tcase, a_buffer_too_small_is_left_alone);
    suite_add_tcase(suite, tcase);
    return suite;
}
