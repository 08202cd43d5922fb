/* SPDX-License-Identifier: MIT */
/* A structure and its table: usual values, checking, finding by path. */
#include "base/field.h"

#include <string.h>

#include "base/number.h"

#define MEMBER(structure, offset, type) ((type *)((char *)(structure) + (offset)))
#define CONST_MEMBER(structure, offset, type) ((const type *)((const char *)(structure) + (offset)))

const char *const tside_i_hardware[TSIDE_I_HARDWARE] = {"inch", "metric"};

static void put_usual(const tside_field *row, void *structure)
{
    switch (row->type) {
    case TSIDE_NUMBER:
        *MEMBER(structure, row->offset, double) = row->usual;
        if (row->optional)
            *MEMBER(structure, row->given_offset, int) = 0;
        break;
    case TSIDE_COUNT:
    case TSIDE_CHOICE: *MEMBER(structure, row->offset, int) = (int)row->usual; break;
    case TSIDE_GROUP: tside_i_usual(row->nested, MEMBER(structure, row->offset, void)); break;
    case TSIDE_LIST:
        *MEMBER(structure, row->count_offset, int) = 0;
        for (int i = 0; i < row->capacity; i++)
            tside_i_usual(row->nested, MEMBER(structure, row->offset + (size_t)i * row->stride, void));
        break;
    }
}

static const tside_field *named(const tside_table *table, const char *name, size_t length)
{
    for (int i = 0; i < table->count; i++)
        if (strlen(table->rows[i].name) == length && !memcmp(table->rows[i].name, name, length))
            return table->rows + i;
    return NULL;
}

/* A usual value may depend on a choice: two rows then share one member, and each applies to its own choices. */
void tside_i_usual(const tside_table *table, void *structure)
{
    for (int i = 0; i < table->count; i++)
        put_usual(table->rows + i, structure);
    tside_i_usual_by_choice(table, structure);
}

static int shares_member(const tside_field *row, const tside_table *table)
{
    for (int i = 0; i < table->count; i++)
        if (table->rows + i != row && table->rows[i].offset == row->offset)
            return 1;
    return 0;
}

void tside_i_usual_by_choice(const tside_table *table, void *structure)
{
    for (int i = 0; i < table->count; i++) {
        const tside_field *row = table->rows + i;
        if (row->type == TSIDE_GROUP)
            tside_i_usual_by_choice(row->nested, MEMBER(structure, row->offset, void));
        else if (row->applies_to && tside_field_applies(row, structure) && shares_member(row, table))
            put_usual(row, structure);
    }
}

static void choose_hardware(const tside_table *table, tside_hardware hardware, void *structure)
{
    for (int i = 0; i < table->count; i++) {
        const tside_field *row = table->rows + i;
        int nested = row->type == TSIDE_GROUP ? 1 : row->type == TSIDE_LIST ? row->capacity : 0;
        for (int k = 0; k < nested; k++)
            choose_hardware(row->nested, hardware, MEMBER(structure, row->offset + (size_t)k * row->stride, void));
        if (row->choices == tside_i_hardware)
            *MEMBER(structure, row->offset, int) = (int)hardware;
    }
}

void tside_i_usual_in(const tside_table *table, tside_hardware hardware, void *structure)
{
    choose_hardware(table, hardware, structure);
    tside_i_usual_by_choice(table, structure);
}

/* The choice on which a row hangs stands above it in the table. */
static const tside_field *choice_of(const tside_field *row)
{
    const tside_field *choice = row - 1;
    while (choice->offset != row->applies_offset)
        choice--;
    return choice;
}

int tside_field_applies(const tside_field *field, const void *structure)
{
    int value;
    if (!field->applies_to)
        return 1;
    value = *CONST_MEMBER(structure, field->applies_offset, int);
    return value >= 0 && value < 32 && (field->applies_mask >> value & 1u) &&
           tside_field_applies(choice_of(field), structure);
}

/* --- paths of faults --- */

#define OUTERMOST '/'

static void prefix(char *path, const char *group)
{
    char whole[TSIDE_PATH_SIZE];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    if (!*path)
        return;
    tside_i_put(&text, group);
    tside_i_put(&text, *path == '[' ? "" : ".");
    tside_i_put(&text, path);
    tside_i_path(path, whole);
}

tside_status tside_i_within(tside_fault *fault, const char *group, tside_status status)
{
    if (status != TSIDE_OK && fault) {
        prefix(fault->field, group);
        if (*fault->other != OUTERMOST)
            prefix(fault->other, group);
    }
    return status;
}

tside_status tside_i_within_element(tside_fault *fault, int i, tside_status status)
{
    char index[] = "[2147483647]", *from = index + sizeof index - 2; /* written from its end: "[7]", "[12]", "[4999]" */
    int rest = i;
    do
        *--from = (char)('0' + rest % 10);
    while (rest /= 10);
    *--from = '[';
    if (status != TSIDE_OK && fault)
        fault->index = i;
    return tside_i_within(fault, from, status);
}

/* --- checking --- */

static tside_status check_number(const tside_field *row, double value, tside_fault *fault)
{
    if (!isfinite(value))
        return tside_i_bound(fault, row->name, row->unit, 0, TSIDE_NOT_FINITE, 0);
    if (row->low_open ? value <= row->low : value < row->low) {
        tside_i_bound(fault, row->name, row->unit, value, row->low_open ? TSIDE_NOT_ABOVE : TSIDE_BELOW, row->low);
        if (fault && row->required && value == 0)
            fault->reason = TSIDE_I_MISSING;
        return TSIDE_OUT_OF_BOUNDS;
    }
    if (row->high_open ? value >= row->high : value > row->high)
        return tside_i_bound(fault, row->name, row->unit, value, row->high_open ? TSIDE_NOT_BELOW : TSIDE_ABOVE,
                             row->high);
    return TSIDE_OK;
}

/* Whether all elements are well inside, row by row of their table, as those of most lists are. */
static int all_well_inside(const tside_field *list, const char *first, int count)
{
    const tside_field *row = list->nested->rows, *end = row + list->nested->count;
    for (; row < end; row++)
        for (int i = 0; i < count; i++)
            if (!tside_i_well_inside(row, first + (size_t)i * list->stride))
                return 0;
    return 1;
}

static tside_status check_list(const tside_field *row, const void *structure, tside_fault *fault)
{
    int count = *CONST_MEMBER(structure, row->count_offset, int);
    if (count < 0)
        return tside_i_bound(fault, row->name, "1", count, TSIDE_BELOW, 0);
    if (count > row->capacity)
        return tside_i_bound(fault, row->name, "1", count, TSIDE_ABOVE, row->capacity);
    if (all_well_inside(row, CONST_MEMBER(structure, row->offset, char), count))
        return TSIDE_OK;
    for (int i = 0; i < count; i++) {
        tside_status status = tside_i_check_table(
            row->nested, CONST_MEMBER(structure, row->offset + (size_t)i * row->stride, void), fault);
        if (status != TSIDE_OK)
            return tside_i_within(fault, row->name, tside_i_within_element(fault, i, status));
    }
    return TSIDE_OK;
}

/* Of what is not well inside. */
static tside_status check_row(const tside_field *row, const void *structure, tside_fault *fault)
{
    switch (row->type) {
    case TSIDE_NUMBER:
        if (row->optional && !*CONST_MEMBER(structure, row->given_offset, int))
            return TSIDE_OK;
        return check_number(row, *CONST_MEMBER(structure, row->offset, double), fault);
    case TSIDE_COUNT: return check_number(row, *CONST_MEMBER(structure, row->offset, int), fault);
    case TSIDE_CHOICE:
        return tside_i_bound(fault, row->name, "1", *CONST_MEMBER(structure, row->offset, int), TSIDE_NOT_ONE_OF,
                             row->choice_count - 1);
    case TSIDE_GROUP:
        return tside_i_within(fault, row->name,
                              tside_i_check_table(row->nested, CONST_MEMBER(structure, row->offset, void), fault));
    case TSIDE_LIST: break;
    }
    return check_list(row, structure, fault);
}

tside_status tside_i_check_table(const tside_table *table, const void *structure, tside_fault *fault)
{
    const tside_field *end = tside_i_rows_end(table, structure);
    for (const tside_field *row = table->rows; row < end; row++)
        if (!tside_i_well_inside(row, structure) && tside_i_applies(row, structure))
            TRY(check_row(row, structure, fault));
    return TSIDE_OK;
}

tside_status tside_i_check(const tside_table *table, const char *name, const void *structure, tside_fault *fault)
{
    return tside_i_within(fault, name, tside_i_check_table(table, structure, fault));
}

/* --- answering --- */

static tside_status not_finite(tside_fault *fault)
{
    if (fault) {
        fault->status = TSIDE_NOT_MODELLED;
        fault->reason = "the answer is not a finite number";
    }
    return TSIDE_NOT_MODELLED;
}

tside_status tside_i_finite(const tside_table *table, const void *result, tside_fault *fault)
{
    return tside_i_check_table(table, result, fault) == TSIDE_OK ? TSIDE_OK : not_finite(fault);
}

static void copy_list(const tside_field *list, const void *from, void *to)
{
    int count = *CONST_MEMBER(from, list->count_offset, int);
    *MEMBER(to, list->count_offset, int) = count;
    if (list->nested->whole)
        memcpy(MEMBER(to, list->offset, void), CONST_MEMBER(from, list->offset, void), (size_t)count * list->stride);
    else
        for (int i = 0; i < count; i++)
            tside_i_copy(list->nested, CONST_MEMBER(from, list->offset + (size_t)i * list->stride, void),
                         MEMBER(to, list->offset + (size_t)i * list->stride, void));
}

/* What does not apply or is not given is not copied. */
void tside_i_copy(const tside_table *table, const void *from, void *to)
{
    const tside_field *end = table->rows + table->count;
    if (table->whole) {
        memcpy(to, from, table->whole);
        return;
    }
    for (const tside_field *row = table->rows; row < end; row++) {
        if (!tside_i_applies(row, from))
            continue;
        if (row->type == TSIDE_NUMBER) {
            if (row->optional) {
                *MEMBER(to, row->given_offset, int) = *CONST_MEMBER(from, row->given_offset, int);
                if (!*CONST_MEMBER(from, row->given_offset, int))
                    continue;
            }
            *MEMBER(to, row->offset, double) = *CONST_MEMBER(from, row->offset, double);
        } else if (row->type == TSIDE_GROUP)
            tside_i_copy(row->nested, CONST_MEMBER(from, row->offset, void), MEMBER(to, row->offset, void));
        else if (row->type == TSIDE_LIST)
            copy_list(row, from, to);
        else
            *MEMBER(to, row->offset, int) = *CONST_MEMBER(from, row->offset, int);
    }
}

tside_status tside_i_answer(const tside_table *table, const char *name, const void *made, void *result, size_t size,
                            tside_fault *fault)
{
    TRY(tside_i_within(fault, name, tside_i_finite(table, made, fault)));
    tside_i_hand_over(table, made, result, size);
    return TSIDE_OK;
}

tside_status tside_i_answer_list(const tside_table *table, const char *name, const void *made, void *list, int count,
                                 size_t size, tside_fault *fault)
{
    const char *from = made;
    for (int i = 0; i < count; i++)
        TRY(tside_i_within(fault, name,
                           tside_i_within_element(fault, i, tside_i_finite(table, from + (size_t)i * size, fault))));
    for (int i = 0; i < count; i++)
        tside_i_hand_over(table, from + (size_t)i * size, (char *)list + (size_t)i * size, size);
    return TSIDE_OK;
}

tside_status tside_i_answer_number(const char *name, double made, double *number, tside_fault *fault)
{
    if (!isfinite(made)) {
        tside_i_bound(fault, name, "1", 0, TSIDE_NOT_FINITE, 0);
        return not_finite(fault);
    }
    *number = made;
    return TSIDE_OK;
}

tside_status tside_i_answer_text(const char *made, char *buffer, size_t size, size_t *needed, tside_fault *fault)
{
    const size_t length = strlen(made);
    if (needed)
        *needed = length;
    if (size <= length)
        REFUSE(fault, TSIDE_TOO_SMALL, "size", "", "", "1", (double)size, TSIDE_NOT_ABOVE, (double)length, 0);
    memcpy(buffer, made, length + 1);
    return TSIDE_OK;
}

/* --- paths --- */

/* Whether none of what a row's bounds allow is on the right side of a fault's bound. */
static int none_fits(const tside_field *row, const tside_fault *fault)
{
    switch (fault->relation) {
    case TSIDE_BELOW: return row->high_open ? fault->bound >= row->high : fault->bound > row->high;
    case TSIDE_NOT_ABOVE: return fault->bound >= row->high;
    case TSIDE_ABOVE: return row->low_open ? fault->bound <= row->low : fault->bound < row->low;
    case TSIDE_NOT_BELOW: return fault->bound <= row->low;
    default: return 0;
    }
}

tside_status tside_i_settle(const tside_table *table, const char *name, tside_status status, tside_fault *fault)
{
    size_t length = name ? strlen(name) : 0;
    tside_place place;
    if (status != TSIDE_OK && fault && *fault->other == OUTERMOST)
        memmove(fault->other, fault->other + 1, strlen(fault->other));
    if (status == TSIDE_OK || status == TSIDE_OUT_OF_BOUNDS || !fault ||
        (name && (strncmp(fault->field, name, length) || fault->field[length++] != '.')))
        return status;
    if (tside_i_find_field(table, fault->field + length, &place, NULL) == TSIDE_OK && none_fits(place.field, fault)) {
        fault->relation = TSIDE_NONE_FITS;
        fault->bound = 0;
    }
    return status;
}

/* Reads "12]" behind the bracket at *path; returns the index, or -1 where none can be read, or it is not below the
 * capacity. */
static int read_index(const char **path, int capacity)
{
    const char *at = *path + 1;
    int index = 0, digits = 0;
    for (; *at >= '0' && *at <= '9' && digits < 4; at++, digits++)
        index = 10 * index + (*at - '0');
    if (!digits || *at++ != ']' || index >= capacity)
        return -1;
    *path = at;
    return index;
}

tside_status tside_i_find_field(const tside_table *table, const char *path, tside_place *place, tside_fault *fault)
{
    const char *at = path;
    size_t offset = 0;
    for (;;) {
        size_t length = strcspn(at, ".[");
        const tside_field *row = named(table, at, length);
        if (!row)
            return tside_i_refuse(fault, TSIDE_NOT_FOUND, path, "", "no such field");
        at += length;
        offset += row->offset;
        if (row->type == TSIDE_LIST && *at == '[') {
            int index = read_index(&at, row->capacity);
            if (index < 0)
                return tside_i_refuse_value(fault, TSIDE_NOT_FOUND, path, "", "no such element", "1", 0,
                                            TSIDE_NOT_BELOW, row->capacity, 0);
            offset += (size_t)index * row->stride;
        }
        if (!*at) {
            place->field = row;
            place->offset = offset;
            return TSIDE_OK;
        }
        if (*at != '.' || (row->type != TSIDE_GROUP && row->type != TSIDE_LIST))
            return tside_i_refuse(fault, TSIDE_NOT_FOUND, path, "", "no such field");
        at++;
        table = row->nested;
    }
}
