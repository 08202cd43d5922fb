/* SPDX-License-Identifier: MIT */
/* The tables of fields against themselves, and the usual values that they hold. */
#include <check.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "fields.h"

/*
 * Bolts of 5/16 in in holes of 11/32 in (ASME B18.2.8-1999, Table 1a), M8 in 9 mm (ISO 273, from memory). Eye bolts of
 * 5/8 in in holes as large (common practice, no published source), root 0.5135 in (ASME B1.1, from memory); M16 in
 * 17.5 mm (ISO 273, from memory), root 16 - 1.22687 x 2 = 13.546 mm (from memory).
 */
static void end_has_hardware(const tside_end *end, int metric)
{
    NEAR(end->extender.bolt_hole, metric ? 9e-3 : 11 * 0.0254 / 32, 1e-12, "bolt's hole", metric);
    NEAR(end->extender.eye_hole, metric ? 17.5e-3 : 0.625 * 0.0254, 1e-12, "eye's hole", metric);
    NEAR(end->extender.eye_root, metric ? 13.546e-3 : 0.5135 * 0.0254, 1e-6 * metric, "eye bolt's root", metric);
}

START_TEST(hardware_brings_what_is_usual)
{
    tside_side side, before;
    tside_fittings fittings;
    tside_usual(TSIDE_KIND_SIDE, &before);
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    for (int metric = 2; metric-- > 0;) {
        side = before;
        side.length = 12;
        tside_usual_in(TSIDE_KIND_SIDE, (tside_hardware)metric, &side);
        tside_usual_in(TSIDE_KIND_FITTINGS, (tside_hardware)metric, &fittings);
        end_has_hardware(&side.drive_end, metric);
        end_has_hardware(&side.free_end, metric);
        ck_assert_int_eq((int)side.free_end.extender.hardware, metric);
        ck_assert_int_eq((int)fittings.bolt_size, metric ? TSIDE_BOLT_M8 : TSIDE_BOLT_5_16);
        NEAR(fittings.eye_size, metric ? 16e-3 : 0.625 * 0.0254, 1e-12, "eye bolt", metric);
        /* common practice, no published source */
        NEAR(fittings.guide_stock, metric ? 6 : 21 * 0.3048, 1e-12, "guide pipe", metric);
        NEAR(side.length, 12, 0, "kept", metric);
        NEAR(side.drive_end.rise, before.drive_end.rise, 0, "no hardware", metric);
    }
    side.length = 0; /* inch hardware is what is usual */
    ck_assert_mem_eq(&side, &before, sizeof side);
    tside_usual_in(TSIDE_KIND_COUNT, TSIDE_HARDWARE_METRIC, &side);
    ck_assert_mem_eq(&side, &before, sizeof side);
}
END_TEST

/* The usual bolt goes through the usual hole: the one that is drilled for it. */
START_TEST(usual_holes_are_the_usual_bolts)
{
    for (int metric = 0; metric < 2; metric++) {
        tside_extender extender;
        tside_fittings fittings;
        tside_bolt bolt;
        tside_bolt_plan chosen;
        tside_fault fault;
        tside_usual(TSIDE_KIND_EXTENDER, &extender);
        tside_usual(TSIDE_KIND_FITTINGS, &fittings);
        tside_usual_in(TSIDE_KIND_EXTENDER, (tside_hardware)metric, &extender);
        tside_usual_in(TSIDE_KIND_FITTINGS, (tside_hardware)metric, &fittings);
        tside_usual(TSIDE_KIND_BOLT, &bolt);
        bolt.size = fittings.bolt_size;
        bolt.grip = 0.1;
        ANSWERS(tside_bolt_choose(&bolt, &chosen, &fault));
        NEAR(extender.bolt_hole, chosen.hole, 1e-12, "hole", metric);
        ck_assert(extender.eye_hole >= fittings.eye_size && extender.eye_root < fittings.eye_size);
    }
}
END_TEST

Suite *fields_suite(void);

static int is_asked(tside_kind kind)
{
    return kind <= TSIDE_KIND_SIDE;
}

static int is_whole(const tside_field *row)
{
    return row->type == TSIDE_COUNT || row->type == TSIDE_CHOICE;
}

/* --- each row by itself --- */

static size_t size_of(const tside_field *row)
{
    switch (row->type) {
    case TSIDE_NUMBER: return sizeof(double);
    case TSIDE_COUNT:
    case TSIDE_CHOICE: return sizeof(int);
    case TSIDE_GROUP: return structures[row->kind].size;
    case TSIDE_LIST: return (size_t)row->capacity * row->stride;
    }
    return 0;
}

/* From the bow's face a level place may be any; from the centreline the plan refuses 0 (tests/side/test_level.c). */
static int is_level_place(const tside_field *row)
{
    return !strcmp(row->name, "member_outer") || !strcmp(row->name, "outer");
}

static void bounds_are_sound(const tside_field *row)
{
    ck_assert_msg(row->low < row->high, "%s: bounds", row->name);
    if (row->required)
        ck_assert_msg(!row->optional && (row->low > 0 || (row->low == 0 && row->low_open) || is_level_place(row)),
                      "%s: 0 is in bounds", row->name);
    else if (!row->optional) {
        ck_assert_msg(row->low_open ? row->usual > row->low : row->usual >= row->low, "%s: usual value too low",
                      row->name);
        ck_assert_msg(row->high_open ? row->usual < row->high : row->usual <= row->high, "%s: usual value too high",
                      row->name);
        ck_assert_msg(row->basis && *row->basis, "%s: a usual value without a basis", row->name);
        if (row->usual_low < row->usual_high)
            ck_assert_msg(row->usual >= row->usual_low && row->usual <= row->usual_high,
                          "%s: its usual value is unusual", row->name);
    }
    ck_assert_msg(row->usual_low <= row->usual_high && row->tolerance >= 0, "%s: usual range or tolerance", row->name);
    if (row->usual_low < row->usual_high)
        ck_assert_msg(row->usual_low >= row->low && row->usual_high <= row->high,
                      "%s: the usual range leaves the bounds", row->name);
}

static void row_is_sound(tside_kind kind, const tside_field *rows, const tside_field *row)
{
    const size_t size = structures[kind].size;
    ck_assert_msg(row->name && *row->name && row->meaning && *row->meaning && row->unit, "kind %d: a text is missing",
                  (int)kind);
    ck_assert_msg(size_of(row) > 0 && row->offset + size_of(row) <= size, "%s.%s lies outside its structure",
                  structures[kind].name, row->name);
    ck_assert_msg(row->required == 0 || row->required == 1, "%s: required %d", row->name, row->required);
    if (row->optional)
        ck_assert_msg(row->type == TSIDE_NUMBER && row->given_offset + sizeof(int) <= size &&
                          row->given_offset != row->offset,
                      "%s: given", row->name);
    if (row->type == TSIDE_NUMBER || row->type == TSIDE_COUNT) {
        ck_assert_msg(row->low <= row->high, "%s: bounds", row->name);
        if (is_asked(kind))
            bounds_are_sound(row);
    }
    if (row->type == TSIDE_CHOICE) {
        ck_assert_msg(row->choice_count > 1 && row->usual >= 0 && row->usual < row->choice_count, "%s: choices",
                      row->name);
        for (int a = 0; a < row->choice_count; a++) {
            ck_assert_msg(row->choices[a] && *row->choices[a], "%s: a choice without a name", row->name);
            for (int b = 0; b < a; b++)
                ck_assert_str_ne(row->choices[a], row->choices[b]);
        }
    }
    if (row->applies_to) {
        int found = 0;
        for (int k = 0; rows + k < row; k++)
            found |= !strcmp(rows[k].name, row->applies_to) && rows[k].offset == row->applies_offset &&
                     is_whole(rows + k) &&
                     (rows[k].type == TSIDE_COUNT || row->applies_mask >> rows[k].choice_count == 0);
        ck_assert_msg(found && row->applies_mask, "%s applies to no choice above it", row->name);
    }
    if (row->type == TSIDE_LIST)
        ck_assert_msg(row->capacity > 1 && row->capacity <= TSIDE_STROKES &&
                          row->stride == structures[row->kind].size && row->count_offset + sizeof(int) <= size,
                      "%s: its list", row->name);
}

/* Two rows share a member only if they have its name, and never apply together; else they do not overlap. */
static void rows_are_apart(const tside_field *a, const tside_field *b)
{
    if (!strcmp(a->name, b->name))
        ck_assert_msg(a->offset == b->offset && a->type == b->type && a->applies_to && b->applies_to &&
                          a->applies_offset == b->applies_offset && !(a->applies_mask & b->applies_mask),
                      "two rows are called %s", a->name);
    else
        ck_assert_msg(a->offset + size_of(a) <= b->offset || b->offset + size_of(b) <= a->offset, "%s and %s overlap",
                      a->name, b->name);
}

START_TEST(every_kind_has_a_sound_table)
{
    int count;
    ck_assert_int_eq(STRUCTURES, TSIDE_KIND_COUNT);
    for (int k = 0; k < TSIDE_KIND_COUNT; k++) {
        tside_kind kind = (tside_kind)k;
        const tside_field *rows = tside_fields(kind, &count);
        ck_assert_msg(rows && count > 0, "%s has no table", structures[k].name);
        for (int i = 0; i < count; i++) {
            if (rows[i].type == TSIDE_GROUP || rows[i].type == TSIDE_LIST)
                ck_assert_msg((int)rows[i].kind >= 0 && rows[i].kind < TSIDE_KIND_COUNT && rows[i].kind != kind &&
                                  is_asked(rows[i].kind) >= is_asked(kind),
                              "%s.%s: nested", structures[k].name, rows[i].name);
            row_is_sound(kind, rows, rows + i);
            for (int j = 0; j < i; j++)
                rows_are_apart(rows + j, rows + i);
        }
    }
    ck_assert(!tside_fields(TSIDE_KIND_COUNT, &count) && count == 0);
    ck_assert(!tside_fields((tside_kind)-1, &count) && count == 0);
}
END_TEST

/* --- usual values --- */

static void is_usual(tside_kind kind, char *structure)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        if (row[i].optional)
            ck_assert_msg(!*whole_in(structure, row[i].given_offset), "%s begins as given", row[i].name);
        else if (row[i].type == TSIDE_NUMBER && tside_field_applies(row + i, structure))
            ck_assert_msg(*number_in(structure, row[i].offset) == (row[i].required ? 0 : row[i].usual),
                          "%s begins otherwise", row[i].name);
        else if (is_whole(row + i) && tside_field_applies(row + i, structure))
            ck_assert_msg(*whole_in(structure, row[i].offset) == (int)row[i].usual, "%s begins otherwise", row[i].name);
        else if (row[i].type == TSIDE_GROUP)
            is_usual(row[i].kind, structure + row[i].offset);
        else if (row[i].type == TSIDE_LIST) {
            ck_assert_int_eq(*whole_in(structure, row[i].count_offset), 0);
            for (int k = 0; k < row[i].capacity; k++)
                is_usual(row[i].kind, structure + row[i].offset + (size_t)k * row[i].stride);
        }
    }
}

START_TEST(usual_values_fill_every_structure)
{
    static union {
        double aligned;
        char bytes[sizeof(tside_side)];
    } structure;
    for (int k = 0; k <= TSIDE_KIND_SIDE; k++) {
        ck_assert(structures[k].size <= sizeof structure);
        memset(&structure, 0xa5, sizeof structure);
        tside_usual((tside_kind)k, &structure);
        is_usual((tside_kind)k, structure.bytes);
        for (size_t i = structures[k].size; i < sizeof structure; i++)
            ck_assert((unsigned char)structure.bytes[i] == 0xa5);
    }
    memset(&structure, 0xa5, sizeof structure);
    tside_usual(TSIDE_KIND_COUNT, &structure);
    tside_usual_by_choice((tside_kind)-1, &structure);
    for (size_t i = 0; i < sizeof structure; i++)
        ck_assert((unsigned char)structure.bytes[i] == 0xa5);
}
END_TEST

START_TEST(usual_values_follow_choices)
{
    tside_side side;
    tside_usual(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 8, 0, "motor, kg", 0);          /* common practice, no published source */
    NEAR(side.drive.safety_factor, 1.5, 0, "motor", 0);   /* the same */
    NEAR(side.friction, 0.15, 0, "film alone", 0);        /* the same */
    NEAR(side.drive_end.rise, 12 * 0.0254, 0, "rise", 0); /* the same */
    side.drive.kind = TSIDE_HAND;
    side.ropes = TSIDE_ROPES;
    side.length = 12;
    tside_usual_by_choice(TSIDE_KIND_SIDE, &side);
    NEAR(side.drive.mass, 3, 0, "hand, kg", 0);
    NEAR(side.drive.safety_factor, 1.25, 0, "hand", 0);
    NEAR(side.drive.collar_offset, 3 * 0.0254, 0, "hand, m", 0);
    NEAR(side.friction, 0.25, 0, "with ropes", 0);
    NEAR(side.length, 12, 0, "kept", 0);
}
END_TEST

Suite *fields_suite(void)
{
    Suite *suite = suite_create("fields");
    TCase *tcase = tcase_create("fields");
    tcase_add_test(tcase, every_kind_has_a_sound_table);
    tcase_add_test(tcase, usual_values_fill_every_structure);
    tcase_add_test(tcase, usual_values_follow_choices);
    tcase_add_test(tcase, hardware_brings_what_is_usual);
    tcase_add_test(tcase, usual_holes_are_the_usual_bolts);
    suite_add_tcase(suite, tcase);
    return suite;
}
