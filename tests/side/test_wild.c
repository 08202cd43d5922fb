/* SPDX-License-Identifier: MIT */
/* Never what is no number: random sides, and what is planned of them. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "expect.h"
#include "finite.h"

Suite *wild_suite(void);

static void all_finite(tside_kind kind, const void *structure, int number)
{
    const char *name = not_finite(kind, structure);
    ck_assert_msg(!name, "side %d: %s is no number", number, name);
}

/* One row of a structure, or of one within it, by chance. */
static const tside_field *any_row(dice *d, tside_kind kind, char **structure)
{
    for (;;) {
        int count;
        const tside_field *rows = tside_fields(kind, &count), *row = rows + dice_below(d, count);
        if (row->type == TSIDE_LIST)
            continue;
        if (row->type != TSIDE_GROUP)
            return row;
        *structure += row->offset;
        kind = row->kind;
    }
}

/* Changes one field: to a bound or a hair within it, to a choice, or by a factor. */
static void disturb(dice *d, tside_side *side)
{
    char *structure = (char *)side;
    const tside_field *row = any_row(d, TSIDE_KIND_SIDE, &structure);
    double *number = (double *)(void *)(structure + row->offset);
    if (row->type != TSIDE_NUMBER) {
        *(int *)(void *)number = row->type == TSIDE_CHOICE
                                     ? dice_below(d, row->choice_count)
                                     : (int)row->low + dice_below(d, (int)(row->high - row->low) + 1);
        return;
    }
    if (row->optional)
        *(int *)(void *)(structure + row->given_offset) = 1;
    switch (dice_below(d, 6)) {
    case 0: *number = row->low_open ? nextafter(row->low, HUGE_VAL) : row->low; break;
    case 1: *number = row->high_open ? nextafter(row->high, -HUGE_VAL) : row->high; break;
    case 2: *number = row->low + (row->high - row->low) * dice_between(d, 0, 1); break;
    default: *number *= dice_between(d, 0.8, 1.25); break;
    }
}

/*
 * Sides of which a few fields are anything that their tables allow: planned to numbers, or refused by a field, in a
 * sentence.
 */
FOR_SIDES(no_side_gives_what_is_no_number, 3000)
{
    dice d = {7u + (unsigned)number};
    tside_side side;
    tside_plan plan, before;
    tside_fault fault;
    tside_turn rows[8];
    tside_status status;
    int count = 0, changes = 1 + dice_below(&d, 5);
    double rise;
    bench_any_side(&side, number);
    for (int i = 0; i < changes; i++)
        disturb(&d, &side);
    memset(&plan, 0xa5, sizeof plan);
    before = plan;
    memset(&fault, 0xa5, sizeof fault);
    status = tside_plan_side(&side, &plan, &fault);
    if (status == TSIDE_OK)
        all_finite(TSIDE_KIND_PLAN, &plan, number);
    else {
        char sentence[512];
        ck_assert_msg(fault.status == status && *fault.field && isfinite(fault.value) && isfinite(fault.bound) &&
                          isfinite(fault.gap),
                      "side %d: its fault", number);
        ck_assert_msg(tside_fault_text(&fault, sentence, sizeof sentence) < sizeof sentence, "side %d: its sentence",
                      number);
        ck_assert_msg(!memcmp(&plan, &before, sizeof plan), "side %d: refused, and touched its plan", number);
    }
    status = tside_plan_turns(&side, rows, 8, &count, &fault);
    for (int i = 0; status == TSIDE_OK && i < count; i++)
        all_finite(TSIDE_KIND_TURN, rows + i, number);
    if (number % 16 == 0 && tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault) == TSIDE_OK)
        ck_assert(rise > 0 && rise <= 5);
}

Suite *wild_suite(void)
{
    Suite *suite = suite_create("wild");
    TCase *tcase = tcase_create("wild");
    tcase_add_test(tcase, no_side_gives_what_is_no_number);
    suite_add_tcase(suite, tcase);
    return suite;
}
