/* SPDX-License-Identifier: MIT */
/*
 * Every field's bounds, usual value, unusual range and tolerance are those of tests/data/fields.tsv, so that none
 * changes but on purpose: make fields writes that file anew.
 */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "fields.h"

Suite *kept_suite(void);

enum { LINE = 1000, LINES = 4000 };

typedef struct lines {
    char line[LINES][LINE];
    int count;
} lines;

static const char heading[] =
    "field\twhat\tunit\tfrom\tto\tusual\tunusual below\tunusual above\tmeasured to\tapplies while";

/* --- a row as a line --- */

typedef struct words {
    char *to;
    size_t length;
} words;

static void put(words *line, const char *more)
{
    const size_t length = strlen(more);
    ck_assert_uint_lt(line->length + length, LINE);
    memcpy(line->to + line->length, more, length + 1);
    line->length += length;
}

/* As short as reads back the same. */
static void put_number(words *line, double value)
{
    char text[32];
    for (int digits = 15; digits <= 17; digits++) {
        snprintf(text, sizeof text, "%.*g", digits, value);
        if (!(strtod(text, NULL) < value || strtod(text, NULL) > value))
            break;
    }
    put(line, text);
}

/* Of a choice those of a mask, or all. */
static void put_names(words *line, const tside_field *choice, const unsigned *mask)
{
    int names = 0;
    for (int i = 0; i < choice->choice_count; i++)
        if (!mask || *mask >> i & 1u) {
            put(line, names++ ? "|" : "");
            put(line, choice->choices[i]);
        }
}

static void put_what(words *line, const tside_field *row)
{
    static const char *const types[] = {
        [TSIDE_NUMBER] = "number", [TSIDE_COUNT] = "count", [TSIDE_CHOICE] = "one of ",
        [TSIDE_GROUP] = "group ",  [TSIDE_LIST] = "up to ",
    };
    put(line, types[row->type]);
    if (row->type == TSIDE_CHOICE)
        put_names(line, row, NULL);
    if (row->type == TSIDE_LIST)
        put_number(line, row->capacity);
    if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
        put(line, row->type == TSIDE_LIST ? " " : "");
        put(line, structures[row->kind].name);
    }
    if (row->film)
        put(line, " of film, in mil too");
}

static void put_usual(words *line, const tside_field *row, int asked)
{
    if (row->required || row->optional)
        put(line, row->required ? "required" : "optional");
    else if (row->type == TSIDE_CHOICE)
        put(line, asked ? row->choices[(int)row->usual] : "");
    else if (asked)
        put_number(line, row->usual);
}

static void put_bounds(words *line, const tside_field *row)
{
    put(line, row->low_open ? "above " : "");
    put_number(line, row->low);
    put(line, "\t");
    put(line, row->high_open ? "below " : "");
    put_number(line, row->high);
}

static void put_unusual(words *line, const tside_field *row)
{
    if (row->usual_low < row->usual_high) {
        put_number(line, row->usual_low);
        put(line, "\t");
        put_number(line, row->usual_high);
    } else
        put(line, "\t");
    put(line, "\t");
    if (row->tolerance > 0)
        put_number(line, row->tolerance);
}

static void put_applies(words *line, const tside_field *row)
{
    const tside_field *choice = row;
    if (!row->applies_to)
        return;
    while (strcmp(choice->name, row->applies_to))
        choice--;
    put(line, choice->name);
    put(line, "=");
    put_names(line, choice, &row->applies_mask);
}

static void put_row(words *line, tside_kind kind, const tside_field *row)
{
    const int number = row->type == TSIDE_NUMBER || row->type == TSIDE_COUNT;
    put(line, structures[kind].name);
    put(line, ".");
    put(line, row->name);
    put(line, "\t");
    put_what(line, row);
    put(line, "\t");
    put(line, row->type == TSIDE_NUMBER ? row->unit : "");
    put(line, "\t");
    if (number)
        put_bounds(line, row);
    else
        put(line, "\t");
    put(line, "\t");
    if (number || row->type == TSIDE_CHOICE)
        put_usual(line, row, kind < TSIDE_KIND_SECTION);
    put(line, "\t");
    put_unusual(line, row);
    put(line, "\t");
    put_applies(line, row);
}

static void all_rows(lines *now)
{
    now->count = 0;
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        int count;
        const tside_field *rows = tside_fields((tside_kind)k, &count);
        for (int i = 0; i < count; i++) {
            ck_assert_int_lt(now->count, LINES);
            put_row(&(words){now->line[now->count++], 0}, (tside_kind)k, rows + i);
        }
    }
}

/* --- the file --- */

static FILE *open_kept(const char *how)
{
    const char *folder = getenv("TSIDE_TEST_DATA");
    char path[4096];
    FILE *file;
#ifdef TSIDE_TEST_DATA
    if (!folder)
        folder = TSIDE_TEST_DATA;
#endif
    snprintf(path, sizeof path, "%s/fields.tsv", folder ? folder : ".");
    file = fopen(path, how);
    ck_assert_msg(file != NULL, "%s: not opened", path);
    return file;
}

static void write_kept(const lines *now)
{
    FILE *file = open_kept("w");
    fprintf(file, "%s\n", heading);
    for (int i = 0; i < now->count; i++)
        fprintf(file, "%s\n", now->line[i]);
    ck_assert_int_eq(fclose(file), 0);
}

static void read_kept(lines *kept)
{
    FILE *file = open_kept("r");
    char *line = kept->line[0];
    kept->count = 0;
    ck_assert_ptr_nonnull(fgets(line, LINE, file));
    line[strcspn(line, "\r\n")] = 0;
    ck_assert_str_eq(line, heading);
    while (kept->count < LINES && fgets(line = kept->line[kept->count], LINE, file)) {
        line[strcspn(line, "\r\n")] = 0;
        kept->count++;
    }
    fclose(file);
}

static int same_field(const char *a, const char *b)
{
    const size_t length = strcspn(a, "\t") + 1;
    return !strncmp(a, b, length);
}

/* The line of the same field as the i-th of others, or NULL. What is usual for either hardware has a row of each. */
static const char *of_field(const lines *among, const lines *others, int i)
{
    int earlier = 0;
    for (int k = 0; k < i; k++)
        earlier += same_field(others->line[k], others->line[i]);
    for (int k = 0; k < among->count; k++)
        if (same_field(among->line[k], others->line[i]) && earlier-- == 0)
            return among->line[k];
    return NULL;
}

/* How many lines differ; said: whether each is said. */
static int differences(const lines *kept, const lines *now, int said)
{
    int differ = 0;
    for (int i = 0; i < now->count; i++) {
        const char *before = of_field(kept, now, i);
        if (before && !strcmp(before, now->line[i]))
            continue;
        differ++;
        if (said)
            printf("the field changed:\n    kept: %s\n    now:  %s\n", before ? before : "nothing", now->line[i]);
    }
    for (int i = 0; i < kept->count; i++)
        if (!of_field(now, kept, i)) {
            differ++;
            if (said)
                printf("the field is gone:\n    kept: %s\n", kept->line[i]);
        }
    fflush(stdout); /* a test that fails leaves at once */
    return differ;
}

static lines kept, now;

START_TEST(every_field_is_as_it_is_kept)
{
    all_rows(&now);
    if (getenv("TSIDE_KEEP_FIELDS"))
        write_kept(&now);
    read_kept(&kept);
    ck_assert_msg(!differences(&kept, &now, 1) && kept.count == now.count,
                  "tests/data/fields.tsv differs, as said above; if that is on purpose: make fields");
}
END_TEST

/* What is answered is not asked: nothing is usual of it. */
START_TEST(nothing_is_usual_of_an_answer)
{
    for (int k = TSIDE_KIND_SECTION; k < TSIDE_KIND_COUNT; k++) {
        int count;
        const tside_field *rows = tside_fields((tside_kind)k, &count);
        for (int i = 0; i < count; i++)
            ck_assert_msg(!(fabs(rows[i].usual) > 0), "%s.%s", structures[k].name, rows[i].name);
    }
}
END_TEST

/* A line that differs, one that is gone and one more are each seen. */
START_TEST(a_change_is_seen)
{
    all_rows(&now);
    kept = now;
    ck_assert_int_eq(differences(&kept, &now, 0), 0);
    strcat(kept.line[3], "x");
    ck_assert_int_eq(differences(&kept, &now, 0), 1);
    kept = now;
    kept.count--;
    ck_assert_int_eq(differences(&kept, &now, 0), 1);
    ck_assert_int_eq(differences(&now, &kept, 0), 1);
}
END_TEST

Suite *kept_suite(void)
{
    Suite *suite = suite_create("kept");
    TCase *tcase = tcase_create("kept");
    tcase_add_test(tcase, every_field_is_as_it_is_kept);
    tcase_add_test(tcase, nothing_is_usual_of_an_answer);
    tcase_add_test(tcase, a_change_is_seen);
    suite_add_tcase(suite, tcase);
    return suite;
}
