/* SPDX-License-Identifier: MIT */
/*
 * Quantities and choices as people type them. Each text is read as its plain form is, whose value
 * tests/base/test_length.c holds to a source; the marks are those of the Unicode standard, whose numbers and their
 * UTF-8 stand beside them (from memory).
 */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <tunnelside.h>

#define COUNT(array) (int)(sizeof(array) / sizeof *(array))

static const tside_field *row_of(tside_kind kind, const char *path)
{
    tside_place place;
    ck_assert_int_eq((int)tside_field_find(kind, path, &place, NULL), TSIDE_OK);
    return place.field;
}

static void reads_alike(const char *typed, const char *plain, const char *unit)
{
    double value = NAN, want = NAN;
    tside_fault fault;
    if (tside_quantity_read(typed, unit, &value, &fault) != TSIDE_OK)
        ck_abort_msg("\"%s\": %s", typed, fault.reason);
    ck_assert_int_eq((int)tside_quantity_read(plain, unit, &want, NULL), TSIDE_OK);
    if (memcmp(&value, &want, sizeof value) != 0)
        ck_abort_msg("\"%s\": %.17g, \"%s\": %.17g", typed, value, plain, want);
}

START_TEST(reads_what_people_type)
{
    static const struct {
        const char *typed, *plain, *unit;
    } rows[] = {
        {"62 inches", "62 in", "m"},
        {"62inches", "62 in", "m"},
        {"1 inch", "1 in", "m"},
        {"72 feet", "72 ft", "m"},
        {"1 foot", "1 ft", "m"},
        {"5 feet 3 1/2 inches", "5 ft 3 1/2 in", "m"},
        {"5 foot 3\"", "5 ft 3 in", "m"},
        {"-3 inches", "-3 in", "m"},
        {"5' - 2\"", "5 ft 2 in", "m"},
        {"5'  -  2 1/2\"", "5 ft 2 1/2 in", "m"},
        {"5' - 2-1/2\"", "5 ft 2 1/2 in", "m"},
        {"5'\t-\t2\"", "5 ft 2 in", "m"},
        {"-5' - 2\"", "-5 ft 2 in", "m"},
        {"5\xe2\x80\xb2 3\xe2\x80\xb3", "5 ft 3 in", "m"}, /* U+2032, U+2033 */
        {"5\xe2\x80\xb2-3 1/2\xe2\x80\xb3", "5 ft 3 1/2 in", "m"},
        {"5\xe2\x80\xb2 - 3\xe2\x80\xb3", "5 ft 3 in", "m"},
        {"5\xe2\x80\x98 3\xe2\x80\x9c", "5 ft 3 in", "m"}, /* U+2018, U+201C */
        {"5\xe2\x80\x99-3\xe2\x80\x9d", "5 ft 3 in", "m"}, /* U+2019, U+201D */
        {"5\xe2\x80\x9b", "5 ft", "m"},                    /* U+201B */
        {"63-1/2\xe2\x80\x9d", "63-1/2 in", "m"},
        {"200 um", "0.2 mm", "m"},
        {"200 \xc2\xb5m", "0.2 mm", "m"}, /* U+00B5 */
        {"200\xce\xbcm", "0.2 mm", "m"},  /* U+03BC */
        {"15 lbs", "15 lb", "kg"},
        {"15 lbs", "15 lbf", "N"},
        {"15 lb", "15 lbf", "N"},
        {"2 1/2 lbs/ft", "2 1/2 lb/ft", "kg/m"},
        {"2 lbs/ft2", "2 lb/ft2", "kg/m2"},
        {"3 lb/ft", "3 lbf/ft", "N/m"},
        {"30 ft-lb", "30 lbf ft", "N m"},
        {"30 lb-ft", "30 lbf ft", "N m"},
        {"30 ft lb", "30 lbf ft", "N m"},
        {"30 lb ft", "30 lbf ft", "N m"},
        {"30 ft-lbs", "30 lbf ft", "N m"},
        {"30 lbs-feet", "30 lbf ft", "N m"},
        {"30 foot-lbs", "30 lbf ft", "N m"},
        {"30 ft-lbf", "30 lbf ft", "N m"},
        {"30 lbf-ft", "30 lbf ft", "N m"},
        {"90 in-lbs", "90 lbf in", "N m"},
        {"90 lb-inches", "90 lbf in", "N m"},
        {"40 N-m", "40 N m", "N m"},
        {"50 feet/min", "50 ft/min", "m/s"},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++)
        reads_alike(rows[i].typed, rows[i].plain, rows[i].unit);
}
END_TEST

START_TEST(refuses_the_rest_with_the_units)
{
    static const char metres[] = "mm, cm, m, km, in, \", ft, ', yd, um",
                      of_film[] = "mil is read of film's thickness alone, since elsewhere it may mean mm";
    static const struct {
        const char *text, *unit;
        int index;
        const char *reason, *names;
    } rows[] = {
        {"6 mil", "m", 3, of_film, metres}, /* the m fits */
        {"6 mils ", "m", 3, of_film, metres},
        {"6 mil", "kg", 2, of_film, "g, kg, oz, lb"},
        {"15 lbs", "m", 3, "a unit of another quantity", metres},
        {"15 lbf", "kg", 5, "a unit of another quantity", "g, kg, oz, lb"},
        {"30 ft-lb", "kg", 3, "a unit of another quantity", "g, kg, oz, lb"},
        {"30 ft-lb", "m", 5, "a unit of another quantity", metres},
        {"30 ft--lb", "N m", 3, "no such unit", "N m, Nm, kN m, lbf ft, ft lbf, lbf in, in lbf"},
        {"30 pounds", "kg", 3, "no such unit", "g, kg, oz, lb"},
        {"62 inchs", "m", 7, "nothing may follow here", ""},
        {"5 ft - 2 in", "m", 5, "a minus sign stands before the whole", ""},
        {"5' -2\"", "m", 3, "a minus sign stands before the whole", ""},
        {"5'- 2\"", "m", 2, "a minus sign stands before the whole", ""},
        {"5' - -2\"", "m", 3, "a minus sign stands before the whole", ""},
        {"5\xe2\x80\xb2 3\xe2\x80\xb3 x", "m", 6, "nothing may follow here", ""}, /* characters, not bytes */
        {"5\xe2\x80\xb2 3\xe2\x80\xb2", "m", 4, "only inches may follow feet", ""},
        {"5\xe2\x80\x9a 3 in", "m", 1, "no such unit", metres}, /* U+201A, which looks like a comma */
        {"1\xe2\x80\x9a"
         "5\xe2\x80\xb3",
         "m", 1, "no such unit", metres},
        {"5 \xe2\x80", "m", 2, "no such unit", metres}, /* cut short */
        {"5 \xc2", "m", 2, "no such unit", metres},
        {"5 \xb5m", "m", 2, "no such unit", metres}, /* not UTF-8 */
        {"5 UM", "m", 2, "no such unit", metres},
        {"5 Feet", "m", 2, "no such unit", metres},
    };
    int i;
    for (i = 0; i < COUNT(rows); i++) {
        tside_fault fault;
        double value = 7.25;
        ck_assert_int_eq((int)tside_quantity_read(rows[i].text, rows[i].unit, &value, &fault), TSIDE_UNREADABLE);
        if (strcmp(fault.reason, rows[i].reason) != 0 || fault.index != rows[i].index ||
            strcmp(fault.other, rows[i].names) != 0)
            ck_abort_msg("\"%s\": %d, %s (%s)", rows[i].text, fault.index, fault.reason, fault.other);
        ck_assert(value == 7.25);
    }
}
END_TEST

START_TEST(reads_film_in_mil)
{
    static const char *const texts[] = {"6 mil", "6mil", "6 mils", "0.006 in", "6e-3 inches"};
    const tside_field *const films[] = {row_of(TSIDE_KIND_SIDE, "curtain.thickness"),
                                        row_of(TSIDE_KIND_ROLL, "thickness")};
    tside_fault fault;
    double value = 7.25;
    int i, k;
    for (k = 0; k < COUNT(films); k++) {
        for (i = 0; i < COUNT(texts); i++) {
            ck_assert_int_eq((int)tside_field_read(films[k], texts[i], &value, &fault), TSIDE_OK);
            ck_assert(value == 0.0001524); /* 6/1000 of 0.0254 m */
        }
        ck_assert_int_eq((int)tside_field_read(films[k], "6 mill", &value, &fault), TSIDE_UNREADABLE);
        ck_assert_str_eq(fault.field, "thickness");
        ck_assert_int_eq((int)tside_field_read(films[k], "6", &value, &fault), TSIDE_UNREADABLE);
        ck_assert_str_eq(fault.other, "mm, cm, m, km, in, \", ft, ', yd, um, mil");
    }
    ck_assert_int_eq((int)tside_field_read(row_of(TSIDE_KIND_SIDE, "curtain.hip"), "6 mil", &value, &fault),
                     TSIDE_UNREADABLE);
    ck_assert_str_eq(fault.field, "hip");
    ck_assert(value == 0.0001524);
}
END_TEST

/* No other field is film's thickness, and every number is read in its own unit. */
START_TEST(every_number_is_read_in_its_unit)
{
    int kind, i, count, films = 0;
    for (kind = 0; kind < TSIDE_KIND_COUNT; kind++) {
        const tside_field *row = tside_fields((tside_kind)kind, &count);
        for (i = 0; i < count; i++) {
            char text[40];
            double value = NAN;
            films += row[i].film;
            snprintf(text, sizeof text, "2 %s",
                     strcmp(row[i].unit, "1") && strcmp(row[i].unit, "turn") ? row[i].unit : "");
            if (row[i].type != TSIDE_NUMBER || !*row[i].unit) /* whose unit hangs on what is measured */
                continue;
            if (tside_field_read(row + i, text, &value, NULL) != TSIDE_OK || value != 2)
                ck_abort_msg("%s: \"%s\" is not read as 2", row[i].name, text);
            ck_assert_int_eq((int)tside_field_read(row + i, "2 mil", &value, NULL),
                             row[i].film ? TSIDE_OK : TSIDE_UNREADABLE);
        }
    }
    ck_assert_int_eq(films, 2);
}
END_TEST

static void capitals(const char *name, char *text)
{
    for (; *name; name++)
        *text++ = (char)(*name >= 'a' && *name <= 'z' ? *name - 'a' + 'A' : *name);
    *text = '\0';
}

START_TEST(choices_are_read_in_capitals_or_not)
{
    const tside_field *hand = row_of(TSIDE_KIND_SIDE, "hand");
    tside_field odd = *hand;
    tside_fault fault;
    double value = 7.25;
    int kind, i, k, count, seen = 0;
    for (kind = 0; kind < TSIDE_KIND_COUNT; kind++) {
        const tside_field *row = tside_fields((tside_kind)kind, &count);
        for (i = 0; i < count; i++)
            for (k = 0; k < row[i].choice_count; k++, seen++) {
                char text[80];
                ck_assert_int_eq((int)tside_field_read(row + i, row[i].choices[k], &value, NULL), TSIDE_OK);
                ck_assert(value == k);
                capitals(row[i].choices[k], text); /* fails where two choices differ in capitals alone */
                ck_assert_int_eq((int)tside_field_read(row + i, text, &value, NULL), TSIDE_OK);
                ck_assert(value == k);
            }
    }
    ck_assert_int_gt(seen, 50);
    value = 7.25;
    ck_assert_int_eq((int)tside_field_read(hand, "Left", &value, NULL), TSIDE_OK);
    ck_assert(value == TSIDE_LEFT);
    value = 7.25;
    for (i = 0; i < 5; i++) {
        static const char *const none[] = {"", "lef", "leftt", "left ", "right, left"};
        ck_assert_int_eq((int)tside_field_read(hand, none[i], &value, &fault), TSIDE_NOT_FOUND);
        ck_assert_str_eq(fault.field, "hand");
        ck_assert_str_eq(fault.other, "right, left");
    }
    ck_assert_int_eq((int)tside_field_read(row_of(TSIDE_KIND_SIDE, "curtain"), "1", &value, &fault), TSIDE_NOT_FOUND);
    ck_assert_int_eq((int)tside_field_read(row_of(TSIDE_KIND_SIDE, "drive_end.keep_outs"), "1", &value, &fault),
                     TSIDE_NOT_FOUND);
    ck_assert_int_eq((int)tside_field_read(row_of(TSIDE_KIND_SIDE, "bar.splices"), "1", &value, &fault),
                     TSIDE_NOT_FOUND);
    ck_assert_str_eq(fault.field, "splices");
    odd.type = TSIDE_LIST + 1; /* of a caller's own, or of a newer header */
    ck_assert_int_eq((int)tside_field_read(&odd, "Left", &value, &fault), TSIDE_NOT_FOUND);
    ck_assert_str_eq(fault.field, "hand");
    ck_assert(value == 7.25);
}
END_TEST

/*
 * Texts thrown together of what texts are made of, and of any byte: each is read as a finite number, or refused at a
 * place within it.
 */
START_TEST(no_text_does_harm)
{
    static const char *const parts[] = {"5",
                                        "3 1/2",
                                        "12",
                                        "0",
                                        ".",
                                        "-",
                                        " - ",
                                        "/",
                                        " ",
                                        "e",
                                        "e9",
                                        "'",
                                        "\"",
                                        "\xe2\x80\xb2",
                                        "\xe2\x80\xb3",
                                        "\xe2\x80\x99",
                                        "\xe2\x80",
                                        "\xe2",
                                        "\xc2\xb5",
                                        "\xce\xbcm",
                                        "ft",
                                        "feet",
                                        "foot",
                                        "in",
                                        "inches",
                                        "inch",
                                        "lb",
                                        "lbs",
                                        "lbf",
                                        "mil",
                                        "um",
                                        "N",
                                        "m",
                                        "mm",
                                        "2",
                                        "%",
                                        "turns",
                                        "deg",
                                        ",",
                                        "\t",
                                        "x",
                                        "\x80",
                                        "\xff"};
    static const char *const units[] = {"m", "N m", "N", "kg", "1", "turn", "Pa", "rad", "kg/m2"};
    const tside_field *film = row_of(TSIDE_KIND_ROLL, "thickness");
    uint64_t state = 20;
    long i, good = 0;
    for (i = 0; i < 300000; i++) {
        char text[64] = "";
        double value = NAN;
        tside_fault fault;
        tside_status status;
        int k, count;
        state = state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
        count = (int)(state >> 33) % 7;
        for (k = 0; k < count; k++) {
            state = state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
            if ((state >> 60) == 0)
                text[strlen(text)] = (char)(1 + (state >> 40) % 255); /* the rest of the text is zero */
            else
                strcat(text, parts[(state >> 33) % (uint64_t)COUNT(parts)]);
        }
        status = i % 10 ? tside_quantity_read(text, units[i % COUNT(units)], &value, &fault)
                        : tside_field_read(film, text, &value, &fault);
        if (status == TSIDE_OK ? !isfinite(value)
                               : status != TSIDE_UNREADABLE || !isnan(value) || fault.index < 0 ||
                                     fault.index > (int)strlen(text) || !*fault.reason)
            ck_abort_msg("\"%s\": status %d, %g", text, (int)status, value);
        good += status == TSIDE_OK;
    }
    ck_assert(good > 1000);
}
END_TEST

Suite *typed_suite(void);

Suite *typed_suite(void)
{
    Suite *suite = suite_create("typed");
    TCase *all = tcase_create("typed");
    tcase_add_test(all, reads_what_people_type);
    tcase_add_test(all, refuses_the_rest_with_the_units);
    tcase_add_test(all, reads_film_in_mil);
    tcase_add_test(all, every_number_is_read_in_its_unit);
    tcase_add_test(all, choices_are_read_in_capitals_or_not);
    tcase_add_test(all, no_text_does_harm);
    suite_add_tcase(suite, all);
    return suite;
}
