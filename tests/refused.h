/* SPDX-License-Identifier: MIT */
/*
 * What a refusal says is of use to whoever reads it: its fields exist, on the structure or the argument that the caller
 * gave; a bound is one that the field may have, and is accepted when it is handed back; a choice, a group or a list has
 * no metres.
 */
#ifndef TUNNELSIDE_REFUSED_H
#define TUNNELSIDE_REFUSED_H

#include <check.h>
#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

enum { SIDES = 4000, TOPICS = 3000, NO_KIND = -1 };

/* --- what a call was given --- */

/*
 * An argument: a structure that has a table, a number, or (no value) something else that a fault may name. A side's
 * fields are named without the side.
 */
typedef struct argument {
    const char *name;
    int kind; /* NO_KIND: a number or an opaque structure */
    void *value;
} argument;

typedef struct given {
    const argument *arguments;
    int count;
} given;
#define GIVEN(list) ((given){list, (int)(sizeof list / sizeof *list)})

static inline const argument *named(const given *given, const char *path, const char **rest)
{
    for (int i = 0; i < given->count; i++) {
        const argument *at = given->arguments + i;
        size_t length = strlen(at->name);
        tside_place ignored;
        *rest = path + length + (length && path[length] == '.');
        if (!strcmp(path, at->name))
            return at;
        if (at->kind != NO_KIND && !strncmp(path, at->name, length) && (!length || path[length] == '.') &&
            tside_field_find((tside_kind)at->kind, *rest, &ignored, NULL) == TSIDE_OK)
            return at;
    }
    return NULL;
}

/* Whether a path's fields apply as the choices beside them stand. */
static inline int applies(tside_kind structure_kind, const void *structure, const char *path)
{
    tside_kind kind = structure_kind;
    const char *at = path;
    size_t base = 0;
    while (*at) {
        size_t length = strcspn(at, ".["), whole = (size_t)(at - path) + strcspn(at, ".");
        char upto[TSIDE_PATH_SIZE];
        tside_place place;
        int count, any = 0;
        const tside_field *rows = tside_fields(kind, &count);
        for (int i = 0; i < count; i++)
            any |= strlen(rows[i].name) == length && !memcmp(rows[i].name, at, length) &&
                   tside_field_applies(rows + i, (const char *)structure + base);
        if (!any)
            return 0;
        snprintf(upto, sizeof upto, "%.*s", (int)whole, path);
        ck_assert_int_eq(tside_field_find(structure_kind, upto, &place, NULL), TSIDE_OK);
        base = place.offset;
        kind = place.field->kind;
        at = path + whole + (path[whole] == '.');
    }
    return 1;
}

static inline void *member_of(const argument *at, const tside_place *place)
{
    return (char *)at->value + place->offset;
}

/* --- what a fault must hold --- */

static inline void complain(const char *call, int number, const tside_fault *fault, const char *why)
{
    char sentence[600];
    tside_fault_text(fault, sentence, sizeof sentence);
    ck_abort_msg("%s, number %d: \"%s\": %s (value %.17g, bound %.17g, unit %s, other %s)", call, number, sentence, why,
                 fault->value, fault->bound, fault->unit, fault->other);
}

static inline int has_bound(const tside_fault *fault)
{
    return fault->relation == TSIDE_BELOW || fault->relation == TSIDE_NOT_ABOVE || fault->relation == TSIDE_ABOVE ||
           fault->relation == TSIDE_NOT_BELOW;
}

static inline const char *wrong_number(const tside_field *row, const tside_fault *fault)
{
    if (fault->relation == TSIDE_NO_RELATION || fault->relation == TSIDE_NOT_FINITE)
        return NULL;
    if (strcmp(fault->unit, row->unit))
        return "not in the field's unit";
    if (has_bound(fault) && (fault->bound < row->low || fault->bound > row->high))
        return "its bound is out of the field's own bounds";
    return NULL;
}

static inline const char *wrong_other(const tside_fault *fault)
{
    if (strcmp(fault->unit, "1") || fault->gap < 0 || fault->gap > 0)
        return "no number has metres";
    if (fault->status == TSIDE_OUT_OF_BOUNDS)
        return NULL; /* a choice that does not exist, a list's count */
    return fault->relation != TSIDE_NO_RELATION ? "what is no number stands to no bound" : NULL;
}

static inline const char *wrong(const given *given, const tside_fault *fault)
{
    const char *rest, *of_other;
    const argument *at = named(given, fault->field, &rest), *other;
    tside_place place;
    if (!gap_stands(fault))
        return "its gap is not what lacks";
    if (!at)
        return "no such field";
    other = named(given, fault->other, &of_other);
    if (*fault->other && !other)
        return "no such other field";
    if (*fault->other && other->kind != NO_KIND && strcmp(fault->other, other->name) &&
        !applies((tside_kind)other->kind, other->value, of_other))
        return "its other field does not apply";
    if (!isfinite(fault->value) || !isfinite(fault->bound) || !isfinite(fault->gap))
        return "not finite";
    if (at->kind == NO_KIND || !strcmp(fault->field, at->name))
        return NULL;
    if (tside_field_find((tside_kind)at->kind, rest, &place, NULL) != TSIDE_OK)
        return "no such field";
    if (!applies((tside_kind)at->kind, at->value, rest))
        return "its field does not apply";
    return place.field->type == TSIDE_NUMBER || place.field->type == TSIDE_COUNT ? wrong_number(place.field, fault)
                                                                                 : wrong_other(fault);
}

/*
 * A bound as it comes back from a caller: as it is, or, from one who counts in feet or degrees, with other last digits,
 * here on the side that was refused. A field's own bounds are held to the last digit.
 */
static inline double handed_back(const tside_fault *fault, double low, double high, int in_feet)
{
    const double off = 8 * DBL_EPSILON * fabs(fault->bound);
    if (!in_feet || fault->status == TSIDE_OUT_OF_BOUNDS)
        return fault->bound;
    return fmin(fmax(fault->relation == TSIDE_BELOW ? fault->bound - off : fault->bound + off, low), high);
}

/* Hands the bound back; returns 0 where there is none that would be accepted. */
static inline int take_bound(const given *given, const tside_fault *fault, int in_feet)
{
    const char *rest = "";
    const argument *at = named(given, fault->field, &rest);
    tside_place place;
    if (fault->relation != TSIDE_BELOW && fault->relation != TSIDE_ABOVE)
        return 0;
    if (at->kind == NO_KIND || !strcmp(fault->field, at->name)) {
        if (!at->value)
            return 0;
        *(double *)at->value = handed_back(fault, -HUGE_VAL, HUGE_VAL, in_feet);
    } else if (tside_field_find((tside_kind)at->kind, rest, &place, NULL) == TSIDE_OK &&
               place.field->type == TSIDE_NUMBER)
        *(double *)member_of(at, &place) = handed_back(fault, place.field->low, place.field->high, in_feet);
    else
        return 0;
    return 1;
}

/* Calls until it is accepted, or refuses what no bound mends; calls: receives how often it refused. */
#define TRIES(call, list, number, refused) \
    do { \
        given given_now = GIVEN(list); \
        tside_fault fault, before; \
        int taken = 0; \
        for (int tries = 0; tries < 8 && (call) != TSIDE_OK; tries++) { \
            const char *why = wrong(&given_now, &fault); \
            (refused)++; \
            if (why) \
                complain(#call, number, &fault, why); \
            if (taken && before.index == fault.index && !strcmp(before.field, fault.field) && \
                !strcmp(before.other, fault.other) && !strcmp(before.reason, fault.reason) && \
                before.relation == fault.relation) \
                complain(#call, number, &fault, "its bound was handed back"); \
            before = fault; \
            taken = take_bound(&given_now, &fault, (number) % 2); \
            if (!taken) \
                break; \
        } \
    } while (0)

/* --- changes --- */

static inline double in_bounds(const tside_field *row, double value, dice *d)
{
    double low = fmax(row->low, -1e4), high = fmin(row->high, 1e4);
    switch (dice_below(d, 8)) {
    case 0: return row->low_open ? low + 1e-3 * (high - low) : low;
    case 1: return row->high_open ? high - 1e-3 * (high - low) : high;
    case 2: return dice_between(d, low, high);
    default: value *= exp(dice_between(d, -1.5, 1.5)); break;
    }
    if (value == 0)
        value = dice_between(d, 0, 0.3);
    return value < low || value > high ? dice_between(d, low, high) : value;
}

static inline double changed(const tside_field *row, double value, dice *d)
{
    static const double odd[] = {NAN, HUGE_VAL, -HUGE_VAL, -1e300, 1e300};
    return dice_below(d, 60) ? in_bounds(row, value, d) : odd[dice_below(d, 5)];
}

/* Changes one member of a structure, or of one within it. */
static inline void change(tside_kind kind, void *structure, dice *d)
{
    int count;
    const tside_field *rows = tside_fields(kind, &count), *row = rows + dice_below(d, count);
    char *member = (char *)structure + row->offset;
    switch (row->type) {
    case TSIDE_NUMBER:
        *(double *)(void *)member = changed(row, *(double *)(void *)member, d);
        if (row->optional)
            *(int *)(void *)((char *)structure + row->given_offset) = dice_below(d, 4) > 0;
        break;
    case TSIDE_COUNT: *(int *)(void *)member = (int)in_bounds(row, *(int *)(void *)member, d); break;
    case TSIDE_CHOICE:
        *(int *)(void *)member = dice_below(d, 60) ? dice_below(d, row->choice_count) : row->choice_count;
        break;
    case TSIDE_GROUP: change(row->kind, member, d); break;
    case TSIDE_LIST: {
        int *used = (int *)(void *)((char *)structure + row->count_offset),
            capacity = row->capacity < 3 ? row->capacity : 3;
        *used = dice_below(d, 60) ? dice_below(d, capacity + 1) : row->capacity + 1;
        for (int i = 0; i < *used && i < capacity; i++)
            change(row->kind, member + (size_t)i * row->stride, d);
        break;
    }
    }
}

static inline void change_some(tside_kind kind, void *structure, dice *d)
{
    for (int more = 1 + dice_below(d, 4); more > 0; more--)
        change(kind, structure, d);
}

/* --- whole sides --- */

static inline tside_side random_side(int number, dice *d)
{
    tside_side side;
    *d = (dice){(uint64_t)number * UINT64_C(0xd1342543de82ef95)};
    bench_any_side(&side, number);
    for (int i = 0; i < TSIDE_BARS; i++)
        side.bars[i] = side.bar;
    for (int i = 0; i < TSIDE_KEEP_OUTS; i++)
        side.drive_end.keep_outs[i] = side.free_end.keep_outs[i] = (tside_keep_out){6, 7, 1, 2};
    if (dice_below(d, 2))
        side.drive_end.extender.slant = side.free_end.extender.slant = (tside_slant)dice_below(d, 3);
    if (dice_below(d, 4) == 0)
        side.drive_end.hung = side.free_end.hung = TSIDE_ON_HIP;
    if (dice_below(d, 3) == 0)
        change_some(TSIDE_KIND_END, dice_below(d, 2) ? &side.drive_end : &side.free_end, d);
    change_some(TSIDE_KIND_SIDE, &side, d);
    return side;
}

static inline tside_status turns_of(const tside_side *side, tside_fault *fault)
{
    tside_turn row;
    int count;
    tside_status status = tside_plan_turns(side, &row, 1, &count, fault);
    return status == TSIDE_TOO_SMALL ? TSIDE_OK : status;
}

#endif
