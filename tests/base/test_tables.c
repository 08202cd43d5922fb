/* SPDX-License-Identifier: MIT */
/* What tables say of themselves, beside their rows: which may ask nothing, and which answers are copied as they are. */
#include <check.h>
#include <string.h>

#include <tunnelside.h>

#include "base/field.h"
#include "fields.h"

Suite *tables_suite(void);

static const tside_table *const tables[] = {
#define KIND(upper, lower) [TSIDE_KIND_##upper] = &tside_i_##lower##_table,
    TSIDE_I_KINDS(KIND)
#undef KIND
};

/* Whether a row, by itself or by the choice that it hangs on, may apply while the table's first choice is its first. */
static int may_apply(const tside_table *table, const tside_field *row)
{
    const tside_field *choice = row;
    if (!row->applies_to)
        return 1;
    while (strcmp(choice->name, row->applies_to))
        choice--;
    return choice == table->rows ? (int)(row->applies_mask & 1u) : may_apply(table, choice);
}

static int asks_nothing_by_its_first(const tside_table *table)
{
    if (table->rows->type != TSIDE_CHOICE || table->count < 2)
        return 0;
    for (int i = 1; i < table->count; i++)
        if (may_apply(table, table->rows + i))
            return 0;
    return 1;
}

START_TEST(what_is_not_asked_is_passed_by)
{
    for (int k = 0; k < TSIDE_KIND_SECTION; k++) /* the kinds that are asked */
        ck_assert_msg(tables[k]->asked == asks_nothing_by_its_first(tables[k]),
                      "%s: write its table by %s: %s row applies while the first choice is its first",
                      structures[k].name, tables[k]->asked ? "TABLE" : "TABLE_ASKED",
                      tables[k]->asked ? "some other" : "no other");
}
END_TEST

/* Bytes of a structure that its rows name, or that say that one is given; 0 where one may not apply. */
static size_t named(const tside_table *table)
{
    size_t bytes = 0;
    for (int i = 0; i < table->count; i++) {
        const tside_field *row = table->rows + i;
        if (row->applies_to || row->type == TSIDE_GROUP || row->type == TSIDE_LIST)
            return 0;
        bytes += (row->type == TSIDE_NUMBER ? sizeof(double) : sizeof(int)) + (row->optional ? sizeof(int) : 0);
    }
    return bytes;
}

START_TEST(what_has_no_gap_is_copied_as_it_is)
{
    for (int k = TSIDE_KIND_SECTION; k < TSIDE_KIND_COUNT; k++) {
        const size_t whole = named(tables[k]) == structures[k].size ? structures[k].size : 0;
        ck_assert_msg(tables[k]->whole == whole, "%s: write its table by %s", structures[k].name,
                      whole ? "TABLE_WHOLE with it" : "TABLE");
    }
    for (int k = 0; k < TSIDE_KIND_SECTION; k++) /* what is asked is the caller's, and what he does not give anything */
        ck_assert_msg(!tables[k]->whole, "%s: write its table by TABLE", structures[k].name);
}
END_TEST

Suite *tables_suite(void)
{
    Suite *suite = suite_create("tables");
    TCase *tcase = tcase_create("tables");
    tcase_add_test(tcase, what_is_not_asked_is_passed_by);
    tcase_add_test(tcase, what_has_no_gap_is_copied_as_it_is);
    suite_add_tcase(suite, tcase);
    return suite;
}
