/* SPDX-License-Identifier: MIT */
/* Paths: each is found, and what leads nowhere is refused. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

Suite *field_paths_suite(void);

typedef struct pathfinder {
    tside_kind kind; /* where paths start */
    char path[4 * TSIDE_PATH_SIZE];
    int found;
} pathfinder;

static void is_found(pathfinder *p, const tside_field *row, size_t offset)
{
    tside_place place;
    tside_fault fault;
    ck_assert_msg(strlen(p->path) < TSIDE_PATH_SIZE, "%s is too long for a fault", p->path);
    ANSWERS(tside_field_find(p->kind, p->path, &place, &fault));
    ck_assert_msg(place.offset == offset && !strcmp(place.field->name, row->name), "%s is found elsewhere", p->path);
    p->found++;
}

static void follow(pathfinder *p, tside_kind kind, size_t base)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    const size_t mark = strlen(p->path);
    for (int i = 0; i < count; i++) {
        const size_t offset = base + row[i].offset;
        snprintf(p->path + mark, sizeof p->path - mark, "%s%s", mark ? "." : "", row[i].name);
        is_found(p, row + i, offset);
        if (row[i].type == TSIDE_GROUP)
            follow(p, row[i].kind, offset);
        for (int k = 0; row[i].type == TSIDE_LIST && k < row[i].capacity; k++) {
            const size_t at = strlen(p->path);
            snprintf(p->path + at, sizeof p->path - at, "[%d]", k);
            is_found(p, row + i, offset + (size_t)k * row[i].stride);
            follow(p, row[i].kind, offset + (size_t)k * row[i].stride);
            p->path[at] = '\0';
        }
        p->path[mark] = '\0';
    }
}

START_TEST(every_path_is_found)
{
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        pathfinder p = {.kind = (tside_kind)k};
        int count;
        tside_fields(p.kind, &count);
        follow(&p, p.kind, 0);
        ck_assert_int_ge(p.found, count);
    }
}
END_TEST

START_TEST(paths_that_lead_nowhere_are_refused)
{
    static const char *const bad[] = {"",
                                      ".",
                                      "lenght",
                                      "length.",
                                      "length.x",
                                      "length.metal",
                                      "hand.yield",
                                      "frame..tube",
                                      "frame.tube.",
                                      "bars[16]",
                                      "bars[-1]",
                                      "bars[]",
                                      "bars[1",
                                      "bars[1]x",
                                      "bars[1][1]",
                                      "drive_end.keep_outs[8].inner",
                                      "[0]",
                                      "frame[0]",
                                      "bars[99999].play",
                                      "bars[99999999999999999999].play",
                                      " length",
                                      "LENGTH"};
    char endless[3 * TSIDE_PATH_SIZE];
    tside_place place;
    tside_fault fault;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        memset(&place, 0xa5, sizeof place);
        ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, bad[i], &place, &fault) == TSIDE_NOT_FOUND, "\"%s\"", bad[i]);
        ck_assert_str_eq(fault.field, bad[i]);
        for (size_t k = 0; k < sizeof place; k++)
            ck_assert(((unsigned char *)&place)[k] == 0xa5);
    }
    memset(endless, 'x', sizeof endless);
    endless[sizeof endless - 1] = '\0';
    ck_assert(tside_field_find(TSIDE_KIND_SIDE, endless, &place, &fault) == TSIDE_NOT_FOUND);
    ck_assert(strlen(fault.field) < TSIDE_PATH_SIZE);
    ck_assert(tside_field_find(TSIDE_KIND_COUNT, "length", &place, NULL) == TSIDE_NOT_FOUND);
}
END_TEST

Suite *field_paths_suite(void)
{
    Suite *suite = suite_create("field_paths");
    TCase *tcase = tcase_create("field_paths");
    tcase_add_test(tcase, every_path_is_found);
    tcase_add_test(tcase, paths_that_lead_nowhere_are_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
