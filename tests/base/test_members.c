/* SPDX-License-Identifier: MIT */
/* The headers: their members beside the tables' rows, by the records that their one reader makes. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "fields.h"

Suite *members_suite(void);

#ifndef TSIDE_RECORDS
#define TSIDE_RECORDS "include/interface.tsv"
#endif

typedef struct reader {
    tside_kind kind;
    const tside_field *rows;
    int count, met; /* distinct names met */
} reader;

static const tside_field *row_named(const reader *r, const char *name, size_t length)
{
    for (int i = 0; i < r->count; i++)
        if (strlen(r->rows[i].name) == length && !memcmp(r->rows[i].name, name, length))
            return r->rows + i;
    return NULL;
}

static int ends_in(const char *name, const char *end)
{
    return strlen(name) > strlen(end) && !strcmp(name + strlen(name) - strlen(end), end);
}

/* An int that only says of another member whether, or how many of it, there are. */
static int tells_of_another(const reader *r, const char *name)
{
    const tside_field *of = NULL;
    char plural[80];
    if (ends_in(name, "_given"))
        return (of = row_named(r, name, strlen(name) - strlen("_given"))) && of->optional;
    if (ends_in(name, "_count")) {
        snprintf(plural, sizeof plural, "%.*ss", (int)(strlen(name) - strlen("_count")), name);
        return (of = row_named(r, plural, strlen(plural))) && of->type == TSIDE_LIST;
    }
    return 0;
}

/* What a record of a member holds. */
enum { KIND, STRUCT, NAME, TYPE, DIMENSION, UNIT, GIVEN, TEXT, COLUMNS };

/* Parts a record where its tabs are; returns how many parts it has. */
static int part(char *line, char **column)
{
    int count = 0;
    while (line && count < COLUMNS) {
        column[count++] = line;
        line = strchr(line, '\t');
        if (line)
            *line++ = '\0';
    }
    return count;
}

static void member_has_row(reader *r, char *const *column)
{
    const char *structure = structures[r->kind].name, *name = column[NAME], *type = column[TYPE];
    const tside_field *row = row_named(r, name, strlen(name));
    if (!row) {
        ck_assert_msg(!strcmp(type, "int") && tells_of_another(r, name), "%s.%s has no row in the table", structure,
                      name);
        return;
    }
    r->met++;
    if (!strcmp(type, "double")) {
        ck_assert_msg(row->type == TSIDE_NUMBER, "%s.%s is a double and its row is not", structure, name);
        ck_assert_msg(!strcmp(row->unit, column[UNIT]), "%s.%s: its comment says \"%s\", and its row has the unit %s",
                      structure, name, column[TEXT], row->unit);
        ck_assert_msg(!row->optional == !*column[GIVEN],
                      "%s.%s: its row and its comment disagree on whether it may be absent", structure, name);
    } else if (!strcmp(type, "int"))
        ck_assert_msg(row->type == TSIDE_COUNT, "%s.%s is an int and its row is not", structure, name);
    else if (*column[DIMENSION])
        ck_assert_msg(row->type == TSIDE_LIST && !strcmp(structures[row->kind].name, type),
                      "%s.%s is an array of %s and its row is not", structure, name, type);
    else if (row->type == TSIDE_GROUP)
        ck_assert_msg(!strcmp(structures[row->kind].name, type), "%s.%s is a %s and its row is not", structure, name,
                      type);
    else
        ck_assert_msg(row->type == TSIDE_CHOICE, "%s.%s is a %s and its row is no choice", structure, name, type);
}

static int distinct_names(const reader *r)
{
    int distinct = 0;
    for (int i = 0; i < r->count; i++)
        distinct += row_named(r, r->rows[i].name, strlen(r->rows[i].name)) == r->rows + i;
    return distinct;
}

START_TEST(headers_say_what_the_tables_say)
{
    FILE *records = fopen(TSIDE_RECORDS, "r");
    ck_assert_msg(records != NULL, TSIDE_RECORDS " cannot be read: make makes it");
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        char line[2048], *column[COLUMNS];
        reader r = {.kind = (tside_kind)k};
        r.rows = tside_fields(r.kind, &r.count);
        rewind(records);
        while (fgets(line, sizeof line, records)) {
            line[strcspn(line, "\n")] = '\0';
            if (part(line, column) == COLUMNS && !strcmp(column[KIND], "member") &&
                !strcmp(column[STRUCT], structures[k].name))
                member_has_row(&r, column);
        }
        ck_assert_msg(r.met == distinct_names(&r), "%s: %d members have a row, and %d rows have names of their own",
                      structures[k].name, r.met, distinct_names(&r));
    }
    fclose(records);
}
END_TEST

Suite *members_suite(void)
{
    Suite *suite = suite_create("members");
    TCase *tcase = tcase_create("members");
    tcase_add_test(tcase, headers_say_what_the_tables_say);
    suite_add_tcase(suite, tcase);
    return suite;
}
