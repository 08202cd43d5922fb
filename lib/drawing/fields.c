/* SPDX-License-Identifier: MIT */
/* The directory of field tables, and what is asked of a structure by its kind. */
#include "base/field.h"

static const tside_table *const directory[TSIDE_KIND_COUNT] = {
#define KIND(upper, lower) [TSIDE_KIND_##upper] = &tside_i_##lower##_table,
    TSIDE_I_KINDS(KIND)
#undef KIND
};

static const tside_table *table_of(tside_kind kind)
{
    return (int)kind >= 0 && kind < TSIDE_KIND_COUNT ? directory[kind] : NULL;
}

static tside_status no_kind(tside_fault *fault)
{
    return tside_i_refuse(fault, TSIDE_NOT_FOUND, "kind", "", "no structure has this kind");
}

const tside_field *tside_fields(tside_kind kind, int *count)
{
    const tside_table *table = table_of(kind);
    *count = table ? table->count : 0;
    return table ? table->rows : NULL;
}

void tside_usual(tside_kind kind, void *structure)
{
    const tside_table *table = table_of(kind);
    if (table)
        tside_i_usual(table, structure);
}

void tside_usual_by_choice(tside_kind kind, void *structure)
{
    const tside_table *table = table_of(kind);
    if (table)
        tside_i_usual_by_choice(table, structure);
}

void tside_usual_in(tside_kind kind, tside_hardware hardware, void *structure)
{
    const tside_table *table = table_of(kind);
    if (table)
        tside_i_usual_in(table, hardware, structure);
}

tside_status tside_check(tside_kind kind, const void *structure, tside_fault *fault)
{
    const tside_table *table = table_of(kind);
    return table ? tside_i_check_table(table, structure, fault) : no_kind(fault);
}

tside_status tside_field_find(tside_kind kind, const char *path, tside_place *place, tside_fault *fault)
{
    const tside_table *table = table_of(kind);
    return table ? tside_i_find_field(table, path, place, fault) : no_kind(fault);
}
