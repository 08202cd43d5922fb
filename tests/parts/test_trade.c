/* SPDX-License-Identifier: MIT */
/* The trade's names of sizes and walls, beside the printed tables of tests/data: as a whole, and what is none. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside/tube.h>

#include "rows.h"

#define IN 0.0254

Suite *trade_suite(void);

typedef tside_status reader(const char *text, double *value, tside_fault *fault);

static reader *reader_of(int of_walls)
{
    return of_walls ? tside_tube_wall : tside_tube_size;
}

static double value_of(int of_walls, const char *text)
{
    double value;
    ck_assert_msg(reader_of(of_walls)(text, &value, NULL) == TSIDE_OK, "%s", text);
    return value;
}

static void without_blanks(const char *text, char *to)
{
    for (; *text; text++)
        if (*text != ' ')
            *to++ = *text;
    *to = '\0';
}

START_TEST(every_trade_name_reads_back)
{
    int count;
    const tside_trade *trade = tside_trades(_i, &count);
    ck_assert_int_gt(count, 10);
    for (int i = 0; i < count; i++) {
        char text[64], variant[64];
        snprintf(text, sizeof text, "%s %s", trade[i].family, trade[i].name);
        ck_assert_msg(value_of(_i, text) == trade[i].value, "%s", text);
        without_blanks(text, variant);
        ck_assert_msg(value_of(_i, variant) == trade[i].value, "%s", variant);
        for (char *c = text; *c; c++)
            *c = (char)(*c >= 'a' && *c <= 'z' ? *c - 'a' + 'A' : *c);
        ck_assert_msg(value_of(_i, text) == trade[i].value, "%s", text);
    }
}
END_TEST

/* Along a family a size is never below the one before, and a gauge's wall is always below it. */
START_TEST(families_run_in_order)
{
    int count;
    const tside_trade *trade = tside_trades(_i, &count);
    for (int i = 1; i < count; i++) {
        int gauge = !strcmp(trade[i].family, "bwg") || !strcmp(trade[i].family, "sheet");
        if (strcmp(trade[i].family, trade[i - 1].family)) {
            for (int k = 0; k < i; k++)
                ck_assert_str_ne(trade[k].family, trade[i].family);
            continue;
        }
        ck_assert_str_ne(trade[i].name, trade[i - 1].name);
        if (gauge)
            ck_assert_double_lt(trade[i].value, trade[i - 1].value);
        else
            ck_assert_double_ge(trade[i].value, trade[i - 1].value);
    }
}
END_TEST

/* Each schedule's or group's wall goes into the tube of its own name, and a heavier schedule is heavier. */
START_TEST(walls_go_into_their_tubes)
{
    int count;
    const tside_trade *trade = tside_trades(1, &count);
    for (int i = 0; i < count; i++) {
        const char *tube = strstr(trade[i].family, "nps") ? "nps" : strstr(trade[i].family, "fence") ? "fence" : NULL;
        char text[64];
        if (!tube)
            continue;
        snprintf(text, sizeof text, "%s %s", tube, trade[i].name);
        ck_assert_double_lt(2 * trade[i].value, value_of(0, text));
        if (!strcmp(trade[i].family, "sch 80 nps")) {
            snprintf(text, sizeof text, "sch 40 nps %s", trade[i].name);
            ck_assert_double_gt(trade[i].value, value_of(1, text));
        }
    }
}
END_TEST

/* Chain-link practice, from memory: fence sizes are pipe by another name; the chain-link name of NPS 1 is 1-3/8 in. */
START_TEST(fence_sizes_are_pipe_sizes)
{
    const char *const pairs[][2] = {{"fence 1-3/8 in", "nps 1"}, {"fence 1-5/8 in", "nps 1-1/4"},
                                    {"fence 2 in", "nps 1-1/2"}, {"fence 1-7/8 in", "nps 1-1/2"},
                                    {"fence 2-1/2 in", "nps 2"}, {"fence 2-3/8 in", "nps 2"},
                                    {"fence 3 in", "nps 2-1/2"}, {"fence 2-7/8 in", "nps 2-1/2"}};
    ck_assert(value_of(0, pairs[_i][0]) == value_of(0, pairs[_i][1]));
    ck_assert(value_of(0, pairs[_i][0]) != value_of(0, strcmp(pairs[_i][0], "fence 3 in") ? "nps 3" : "tube 3 in"));
}
END_TEST

static int entries(const char *list)
{
    int count = *list != '\0';
    for (; *list; list++)
        count += *list == ',';
    return count;
}

/* One number, with its unit or without: "2" and "2 in". */
static int same_number(const char *a, const char *b)
{
    size_t length = strcspn(a, " ");
    return length == strcspn(b, " ") && !strncmp(a, b, length);
}

/*
 * Shorn of its family each name is refused, and every family that has the name is listed, whole, with its own true
 * size.
 */
START_TEST(bare_names_are_refused_with_all_that_have_them)
{
    int count;
    const tside_trade *trade = tside_trades(_i, &count);
    for (int i = 0; i < count; i++) {
        double value = -7;
        tside_fault fault;
        char entry[64];
        int homes = !_i; /* true tube has any size */
        ck_assert_int_eq(reader_of(_i)(trade[i].name, &value, &fault), TSIDE_NOT_FOUND);
        ck_assert(value == -7);
        snprintf(entry, sizeof entry, "%s %s (%.6g in)", trade[i].family, trade[i].name, trade[i].value / IN);
        ck_assert_msg(strstr(fault.other, entry) != NULL, "%s not in: %s", entry, fault.other);
        for (int k = 0; k < count; k++)
            homes += same_number(trade[k].name, trade[i].name);
        ck_assert_msg(entries(fault.other) == homes, "%s: %d in: %s", trade[i].name, homes, fault.other);
    }
}
END_TEST

/* Whatever the text, the answer is a size in bounds, or a refusal that leaves the value alone. */
START_TEST(any_text_is_read_or_refused)
{
    const char alphabet[] = "npsfencetubwg shct14082.3/-\" inmao,F";
    unsigned long seed = 12345;
    for (int round = 0; round < 20000; round++) {
        char text[128];
        size_t length = 0;
        double value = -7;
        tside_fault fault;
        tside_status status;
        if (round % 3)
            length = (size_t)snprintf(text, sizeof text, "%s ", round % 3 == 1 ? "nps" : "tube");
        for (size_t end = length + (size_t)(round % 110); length < end && length + 1 < sizeof text; length++) {
            seed = (seed * 1103515245 + 12345) & 0x7fffffff;
            text[length] = alphabet[(seed >> 16) % (sizeof alphabet - 1)];
        }
        text[length] = '\0';
        status = reader_of(_i)(text, &value, &fault);
        if (status == TSIDE_OK)
            ck_assert_msg(value > 0 && value <= 1, "%s: %g", text, value);
        else
            ck_assert_msg(value == -7 && fault.status == status && strlen(fault.other) < TSIDE_PATH_SIZE, "%s", text);
    }
}
END_TEST

/* Letters go on to the end of a word, capitals too: no family is called so, and all that there are are listed. */
START_TEST(a_family_with_a_letter_more_is_none)
{
    static const char *const families[][2] = {{"nps", "tube"}, {"bwg", "sheet"}};
    for (int of_walls = 0; of_walls <= 1; of_walls++)
        for (char letter = 'A'; letter <= 'Z'; letter++) {
            char text[16];
            double value = -7;
            tside_fault fault;
            sprintf(text, "%s%c 1", families[of_walls][0], letter);
            ck_assert_int_eq(reader_of(of_walls)(text, &value, &fault), TSIDE_NOT_FOUND);
            ck_assert(value == -7);
            ck_assert_msg(!strcmp(fault.reason, "no such family"), "%s: %s", text, fault.reason);
            ck_assert_ptr_nonnull(strstr(fault.other, families[of_walls][1]));
        }
}
END_TEST

/* What follows a family is no name, whatever it is; what the family has is listed. */
START_TEST(what_no_family_has_is_refused_with_what_it_has)
{
    static const char *const texts[][2] = {{"nps{1", "1-1/4"},
                                           {"nps~1", "1-1/4"},
                                           {"nps\xc2\xa0\x31", "1-1/4"},
                                           {"nps", "1-1/4"},
                                           {"fence gauge", "1-5/8"}};
    static const char *const gauges[][2] = {{"bwg gauge", "18"}, {"bwg  ga", "18"}, {"sheet ga ", "18"}, {"bwg", "18"}};
    const char *const *text = _i < 5 ? texts[_i] : gauges[_i - 5];
    double value = -7;
    tside_fault fault;
    ck_assert_int_eq(reader_of(_i >= 5)(text[0], &value, &fault), TSIDE_NOT_FOUND);
    ck_assert(value == -7);
    ck_assert_str_eq(fault.reason, "the family has no such name");
    ck_assert_msg(strstr(fault.other, text[1]) != NULL, "%s: %s", text[0], fault.other);
}
END_TEST

static void with_blanks(char *to, const char *before, int blanks, const char *after)
{
    sprintf(to, "%s%*s%s", before, blanks, "", after);
}

/* A name with as many blanks as one likes is listed whole or not at all: 95 letters is all that is told. */
START_TEST(names_that_would_do_are_listed_whole)
{
    int left_out = 0;
    for (int blanks = 1; blanks < 80; blanks++) {
        char text[TSIDE_PATH_SIZE], all[2 * TSIDE_PATH_SIZE];
        double value = -7;
        tside_fault fault;
        with_blanks(text, "1", blanks, "3/8");
        ck_assert_int_eq(tside_tube_size(text, &value, &fault), TSIDE_NOT_FOUND);
        sprintf(all, "fence 1-3/8 in (1.315 in), tube %s in (1.375 in)", text);
        if (strlen(all) >= TSIDE_PATH_SIZE) {
            left_out++;
            *strchr(all, ',') = '\0';
        }
        ck_assert_str_eq(fault.other, all);
        with_blanks(text, "33.4", blanks, "mm"); /* 1.31496 in: of no family but true tube */
        ck_assert_int_eq(tside_tube_size(text, &value, &fault), TSIDE_NOT_FOUND);
        sprintf(all, "tube %s (1.31496 in)", text);
        ck_assert_str_eq(fault.other, strlen(all) < TSIDE_PATH_SIZE ? all : "nps, fence, tube");
        left_out += strlen(all) >= TSIDE_PATH_SIZE;
        ck_assert(value == -7);
    }
    ck_assert_int_gt(left_out, 30);
}
END_TEST

Suite *trade_suite(void)
{
    Suite *suite = suite_create("trade");
    TCase *names = tcase_create("names"), *refused = tcase_create("refused");
    tcase_add_loop_test(names, every_trade_name_reads_back, 0, 2);
    tcase_add_loop_test(names, families_run_in_order, 0, 2);
    tcase_add_test(names, walls_go_into_their_tubes);
    tcase_add_loop_test(names, fence_sizes_are_pipe_sizes, 0, 8);
    suite_add_tcase(suite, names);
    tcase_add_loop_test(refused, bare_names_are_refused_with_all_that_have_them, 0, 2);
    tcase_add_loop_test(refused, any_text_is_read_or_refused, 0, 2);
    tcase_add_loop_test(refused, what_no_family_has_is_refused_with_what_it_has, 0, 9);
    tcase_add_test(refused, a_family_with_a_letter_more_is_none);
    tcase_add_test(refused, names_that_would_do_are_listed_whole);
    suite_add_tcase(suite, refused);
    return suite;
}
