/* SPDX-License-Identifier: MIT */
/*
 * What a refusal says is of use to whoever reads it: its fields exist, on the structure or the argument that the caller gave; a bound is one that the field may have, and is
 * accepted when it is handed back; a choice, a group or a list has no metres. Seeded random sides and structures, changed until they are refused.
 */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tunnelside.h>

#include "bench_side.h"
#include "sides.h"

enum { SIDES = 4000, TOPICS = 3000, NO_KIND = -1 };

/* --- what a call was given --- */

/* An argument: a structure that has a table, a number, or (no value) something else that a fault may name. A side's fields are named without the side. */
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

static const argument *named(const given *given, const char *path, const char **rest)
{
    for (int i = 0; i < given->count; i++) {
        const argument *at = given->arguments + i;
        size_t length = strlen(at->name);
        tside_place ignored;
        *rest = path + length + (length && path[length] == '.');
        if (!strcmp(path, at->name))
            return at;
        if (at->kind != NO_KIND && !strncmp(path, at->name, length) && (!length || path[length] == '.') && tside_field_find((tside_kind)at->kind, *rest, &ignored, NULL) == TSIDE_OK)
            return at;
    }
    return NULL;
}

/* Whether a path's fields apply as the choices beside them stand. */
static int applies(tside_kind structure_kind, const void *structure, const char *path)
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
            any |= strlen(rows[i].name) == length && !memcmp(rows[i].name, at, length) && tside_field_applies(rows + i, (const char *)structure + base);
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

static void *member_of(const argument *at, const tside_place *place)
{
    return (char *)at->value + place->offset;
}

/* --- what a fault must hold --- */

static void complain(const char *call, int number, const tside_fault *fault, const char *why)
{
    char sentence[600];
    tside_fault_text(fault, sentence, sizeof sentence);
    ck_abort_msg("%s, number %d: \"%s\": %s (value %.17g, bound %.17g, unit %s, other %s)", call, number, sentence, why, fault->value, fault->bound, fault->unit, fault->other);
}

static int has_bound(const tside_fault *fault)
{
    return fault->relation == TSIDE_BELOW || fault->relation == TSIDE_NOT_ABOVE || fault->relation == TSIDE_ABOVE || fault->relation == TSIDE_NOT_BELOW;
}

static const char *wrong_number(const tside_field *row, const tside_fault *fault)
{
    if (fault->relation == TSIDE_NO_RELATION || fault->relation == TSIDE_NOT_FINITE)
        return NULL;
    if (strcmp(fault->unit, row->unit))
        return "not in the field's unit";
    if (has_bound(fault) && (fault->bound < row->low || fault->bound > row->high))
        return "its bound is out of the field's own bounds";
    return NULL;
}

static const char *wrong_other(const tside_fault *fault)
{
    if (strcmp(fault->unit, "1") || fault->gap < 0 || fault->gap > 0)
        return "no number has metres";
    if (fault->status == TSIDE_OUT_OF_BOUNDS)
        return NULL; /* a choice that does not exist, a list's count */
    return fault->relation != TSIDE_NO_RELATION ? "what is no number stands to no bound" : NULL;
}

static const char *wrong(const given *given, const tside_fault *fault)
{
    const char *rest, *of_other;
    const argument *at = named(given, fault->field, &rest), *other;
    tside_place place;
    if (!at)
        return "no such field";
    other = named(given, fault->other, &of_other);
    if (*fault->other && !other)
        return "no such other field";
    if (*fault->other && other->kind != NO_KIND && strcmp(fault->other, other->name) && !applies((tside_kind)other->kind, other->value, of_other))
        return "its other field does not apply";
    if (!isfinite(fault->value) || !isfinite(fault->bound) || !isfinite(fault->gap))
        return "not finite";
    if (at->kind == NO_KIND || !strcmp(fault->field, at->name))
        return NULL;
    if (tside_field_find((tside_kind)at->kind, rest, &place, NULL) != TSIDE_OK)
        return "no such field";
    if (!applies((tside_kind)at->kind, at->value, rest))
        return "its field does not apply";
    return place.field->type == TSIDE_NUMBER || place.field->type == TSIDE_COUNT ? wrong_number(place.field, fault) : wrong_other(fault);
}

/* Hands the bound back; returns 0 where there is none that would be accepted. */
static int take_bound(const given *given, const tside_fault *fault)
{
    const char *rest;
    const argument *at = named(given, fault->field, &rest);
    tside_place place;
    if (fault->relation != TSIDE_BELOW && fault->relation != TSIDE_ABOVE)
        return 0;
    if (at->kind == NO_KIND || !strcmp(fault->field, at->name)) {
        if (!at->value)
            return 0;
        *(double *)at->value = fault->bound;
    } else if (tside_field_find((tside_kind)at->kind, rest, &place, NULL) == TSIDE_OK && place.field->type == TSIDE_NUMBER)
        *(double *)member_of(at, &place) = fault->bound;
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
            if (taken && before.index == fault.index && !strcmp(before.field, fault.field) && !strcmp(before.other, fault.other) && !strcmp(before.reason, fault.reason) && before.relation == fault.relation) \
                complain(#call, number, &fault, "its bound was handed back"); \
            before = fault; \
            taken = take_bound(&given_now, &fault); \
            if (!taken) \
                break; \
        } \
    } while (0)

/* --- changes --- */

static double in_bounds(const tside_field *row, double value, dice *d)
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

static double changed(const tside_field *row, double value, dice *d)
{
    static const double odd[] = {NAN, HUGE_VAL, -HUGE_VAL, -1e300, 1e300};
    return dice_below(d, 60) ? in_bounds(row, value, d) : odd[dice_below(d, 5)];
}

/* Changes one member of a structure, or of one within it. */
static void change(tside_kind kind, void *structure, dice *d)
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
    case TSIDE_CHOICE: *(int *)(void *)member = dice_below(d, 60) ? dice_below(d, row->choice_count) : row->choice_count; break;
    case TSIDE_GROUP: change(row->kind, member, d); break;
    case TSIDE_LIST: {
        int *used = (int *)(void *)((char *)structure + row->count_offset), capacity = row->capacity < 3 ? row->capacity : 3;
        *used = dice_below(d, 60) ? dice_below(d, capacity + 1) : row->capacity + 1;
        for (int i = 0; i < *used && i < capacity; i++)
            change(row->kind, member + (size_t)i * row->stride, d);
        break;
    }
    }
}

static void change_some(tside_kind kind, void *structure, dice *d)
{
    for (int more = 1 + dice_below(d, 4); more > 0; more--)
        change(kind, structure, d);
}

/* --- whole sides --- */

static tside_side random_side(int number, dice *d)
{
    tside_side side;
    *d = (dice){(uint64_t)number * UINT64_C(0xd1342543de82ef95)};
    if (number % 3 == 0)
        bench_side(&side);
    else if (number % 3 == 1)
        bench_leaning_side(&side);
    else
        bench_kinked_side(&side);
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

static tside_status turns_of(const tside_side *side, tside_fault *fault)
{
    tside_turn row;
    int count;
    tside_status status = tside_plan_turns(side, &row, 1, &count, fault);
    return status == TSIDE_TOO_SMALL ? TSIDE_OK : status;
}

FOR_SIDES(a_side_is_refused_by_its_fields, SIDES)
{
    dice d;
    tside_side side = random_side(number, &d), again = side;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}};
    tside_plan plan;
    int refused = 0;
    TRIES(tside_plan_side(&side, &plan, &fault), list, number, refused);
    side = again;
    if (number % 4 == 0)
        TRIES(turns_of(&side, &fault), list, number, refused);
}

FOR_SIDES(a_search_is_refused_by_the_sides_fields, SIDES / 4)
{
    dice d;
    tside_side side = random_side(number, &d), again;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}};
    double rise;
    int index, refused = 0;
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_EXTENDER; /* a rise is asked for */
    again = side;
    TRIES(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault), list, number, refused);
    side = again;
    TRIES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), list, number, refused);
    side = again;
    TRIES(tside_bar_smallest(&side, &index, &fault), list, number, refused);
}

static tside_status take_off(const tside_side *side, const tside_fittings *fittings, tside_fault *fault)
{
    tside_plan plan;
    tside_item items[TSIDE_ITEMS];
    int count;
    tside_status status = tside_plan_side(side, &plan, fault);
    return status == TSIDE_OK ? tside_takeoff(side, &plan, fittings, items, TSIDE_ITEMS, &count, fault) : status;
}

FOR_SIDES(a_take_off_is_refused_by_fields_of_side_and_fittings, SIDES / 2)
{
    dice d;
    tside_side side = random_side(number, &d);
    tside_fittings fittings;
    tside_plan plan;
    const argument list[] = {{"", TSIDE_KIND_SIDE, &side}, {"fittings", TSIDE_KIND_FITTINGS, &fittings}};
    int refused = 0;
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    change_some(TSIDE_KIND_FITTINGS, &fittings, &d);
    if (tside_plan_side(&side, &plan, NULL) == TSIDE_OK)
        TRIES(take_off(&side, &fittings, &fault), list, number, refused);
}

/* --- columns --- */

/* Returns whether it is refused; what does not apply to the base side is not looked at. */
static int try_column(const tside_side *base, const char *path)
{
    double half = 0.5;
    tside_input input = {.data = &half, .stride = sizeof half};
    tside_fault fault;
    int status;
    ck_assert_int_eq(tside_field_find(TSIDE_KIND_SIDE, path, &input.place, NULL), TSIDE_OK);
    if (tside_plan_sides(base, 1, &input, 1, NULL, 0, &status, NULL, &fault) == TSIDE_OK)
        return 0;
    ck_assert_int_eq(status, TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, path);
    half = NAN;
    ck_assert_int_eq(tside_plan_sides(base, 1, &input, 1, NULL, 0, &status, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, path);
    ck_assert_int_eq(fault.relation, TSIDE_NOT_FINITE);
    return 1;
}

/* Every count and choice below a path, and of lists the last element. */
static int try_columns(const tside_side *base, tside_kind kind, const char *above)
{
    int count, refused = 0;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++, row++) {
        char path[2 * TSIDE_PATH_SIZE];
        int length = snprintf(path, sizeof path, "%s%s", above, row->name);
        if (row->type == TSIDE_LIST)
            length += snprintf(path + length, sizeof path - (size_t)length, "[%d]", row->capacity - 1);
        if (row->type == TSIDE_COUNT || row->type == TSIDE_CHOICE)
            refused += try_column(base, path);
        if (row->type == TSIDE_GROUP || row->type == TSIDE_LIST) {
            snprintf(path + length, sizeof path - (size_t)length, ".");
            refused += try_columns(base, row->kind, path);
        }
    }
    return refused;
}

START_TEST(a_column_that_is_not_whole_is_named_whole)
{
    tside_side base;
    bench_side(&base);
    /* every list full: what its elements hold applies */
    base.bar_count = TSIDE_BARS;
    for (int i = 0; i < TSIDE_BARS; i++)
        base.bars[i] = base.bar;
    ck_assert_int_ge(try_columns(&base, TSIDE_KIND_SIDE, ""), 40);
}
END_TEST

/* --- single ones --- */

/* What a side says of the eye's height and place is what tells them. */
START_TEST(the_eye_is_refused_as_it_was_told)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.drive_end.rise = 0.02;
    side.stops.gap = 0;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    NEAR(fault.value, 0.02, 1e-12, "rise", 0);
    side.drive_end.rise = 0.5;
    side.drive_end.guide.eye_clearance = 0;
    side.drive.height = 0;
    side.drive.collar_offset = 1;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "drive.collar_offset");
    side.drive_end.hung = TSIDE_ON_HIP;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "drive_end.hung", TSIDE_NO_RELATION);
    bench_side(&side);
    side.free_end.rise = 5;
    side.free_end.extender.member_height = 8;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "free_end.extender.member_height", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "free_end.rise");
    bench_side(&side);
    side.free_end.placed = TSIDE_EYE_GIVEN;
    side.free_end.eye_outboard = 1e-3;
    side.free_end.extender.slant = TSIDE_SLANT_CROSSING;
    side.free_end.extender.crossing = 1.2;
    side.frame.leg_height = 1;
    side.frame.peak_height = 2.5;
    side.curtain.hip = 1.6;
    side.drive_end.hung = TSIDE_ON_HIP;
    side.stops.gap = 0.15;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "free_end.eye_outboard", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "free_end.extender.crossing");
    NEAR(fault.value, 1e-3, 1e-9, "eye outboard", 0);
}
END_TEST

START_TEST(tubes_are_named_whole)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.frame.tube.wall = 0.03;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "frame.tube.wall", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "frame.tube.diameter");
    bench_side(&side);
    side.bar.tube = (tside_round){1, 0.05}; /* more than a load's bar may weigh, which is the load's own affair */
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_HIP;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
}
END_TEST

START_TEST(open_below_shut_names_what_sets_shut)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    bench_side(&side);
    side.stops.gap = 5;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "stops.gap", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "stops.seal");
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.shut_height = 0.2;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "stops.gap", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "stops.shut_height");
}
END_TEST

START_TEST(a_thickness_takes_its_own_bound)
{
    tside_fault fault;
    double thickness, up, down;
    REFUSES(tside_roll_thickness(0.0334, 1, 7.3, 0.5, &thickness, &fault), thickness, TSIDE_CONTRADICTS, "taken_up", TSIDE_BELOW);
    up = fault.bound * (1 + 1e-12);
    down = fault.bound * (1 - 1e-12); /* as it comes back from other units */
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, fault.bound, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, down, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
    ANSWERS(tside_roll_thickness(0.0334, 1, 7.3, up, &thickness, &fault));
    ck_assert(thickness >= 0 && thickness < 1e-9);
}
END_TEST

/* The greatest margin with which a guide's foot clears the ground, from its refusal. */
static double greatest_margin(tside_side side, double rise)
{
    tside_fault fault;
    side.drive_end.rise = rise;
    side.drive_end.guide.margin = 5;
    ck_assert_int_eq(turns_of(&side, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "drive_end.guide.margin");
    return fault.bound;
}

/* The least rise keeps the foot off the ground too: a guide that leans reaches lower, and a higher eye lets it lean less. */
START_TEST(the_least_rise_keeps_the_foot_off_the_ground)
{
    tside_side side;
    tside_fault fault;
    double rise, least, low, high;
    bench_leaning_side(&side);
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &least, &fault));
    low = greatest_margin(side, least);
    high = greatest_margin(side, 5);
    ck_assert(low < high);
    side.drive_end.guide.margin = (low + high) / 2;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    ck_assert(rise > least);
    side.drive_end.rise = rise;
    ANSWERS(turns_of(&side, &fault));
    side.drive_end.rise = rise - 1e-5;
    ck_assert_int_eq(turns_of(&side, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "drive_end.guide.margin");
    side.drive_end.guide.margin = high + 1e-3;
    REFUSES(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault), rise, TSIDE_CONTRADICTS, "drive_end.guide.margin", TSIDE_ABOVE);
}
END_TEST

/* --- topics --- */

/* What the functions of the topics take, of one side, and what they made of it so far. */
typedef struct parts {
    tside_side side;
    tside_roll roll;
    tside_collar collar;
    tside_load load;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_hang hang;
    double eye_x, eye_y;
} parts;

/* Returns 0 where there is no travel. */
static int try_shape(parts *p, int number, int *refused)
{
    tside_side *s = &p->side;
    const argument frame[] = {{"frame", TSIDE_KIND_FRAME, &s->frame}};
    const argument line[] = {{"bow", NO_KIND, NULL}, {"curtain", TSIDE_KIND_CURTAIN, &s->curtain}};
    const argument travel[] = {{"line", NO_KIND, NULL}, {"curtain", TSIDE_KIND_CURTAIN, &s->curtain}, {"roll", TSIDE_KIND_ROLL, &p->roll}, {"stops", TSIDE_KIND_STOPS, &s->stops}};
    TRIES(tside_bow_make(&s->frame, &p->bow, &fault), frame, number, *refused);
    if (!p->bow.centre.count)
        return 0;
    TRIES(tside_line_make(&p->bow, &s->curtain, &p->line, &fault), line, number, *refused);
    if (!p->line.count)
        return 0;
    TRIES(tside_travel_make(&p->line, &s->curtain, &p->roll, &s->stops, &p->travel, &fault), travel, number, *refused);
    return p->travel.stretches;
}

static void try_hanging(parts *p, int number, dice *d, int *refused)
{
    tside_side *s = &p->side;
    double hip = s->curtain.hip, available = dice_between(d, 0, 100), ignored, offset = p->collar.offset;
    tside_sweep sweep;
    tside_layout layout;
    tside_torque torque;
    tside_run ran;
    const argument eye[] = {{"travel", NO_KIND, NULL}, {"eye_y", NO_KIND, &p->eye_y}, {"collar_offset", NO_KIND, &offset}};
    const argument hang[] = {{"travel", NO_KIND, NULL}, {"guide", TSIDE_KIND_GUIDE, &s->drive_end.guide}, {"collar", TSIDE_KIND_COLLAR, &p->collar}, {"eye_x", NO_KIND, &p->eye_x},
                             {"eye_y", NO_KIND, &p->eye_y}};
    const argument extender[] = {{"extender", TSIDE_KIND_EXTENDER, &s->drive_end.extender}, {"bow", NO_KIND, NULL}, {"hip", NO_KIND, &hip}, {"eye_x", NO_KIND, &p->eye_x},
                                 {"eye_y", NO_KIND, &p->eye_y}, {"travel", NO_KIND, NULL}};
    const argument lift[] = {{"travel", NO_KIND, NULL}, {"load", TSIDE_KIND_LOAD, &p->load}, {"hang", NO_KIND, NULL}, {"available", NO_KIND, &available}};
    const argument run[] = {{"travel", NO_KIND, NULL}, {"load", TSIDE_KIND_LOAD, &p->load}, {"hang", NO_KIND, NULL}, {"drive", TSIDE_KIND_DRIVE, &s->drive},
                            {"cable", TSIDE_KIND_CABLE, &s->cable}};
    TRIES(tside_eye_best(&p->travel, p->eye_y, offset, &p->eye_x, &fault), eye, number, *refused);
    TRIES(tside_extender_layout(&s->drive_end.extender, &p->bow, hip, p->eye_x, p->eye_y, &p->travel, &layout, &fault), extender, number, *refused);
    TRIES(tside_hang_make(&p->travel, &s->drive_end.guide, &p->collar, p->eye_x, p->eye_y, &p->hang, &sweep, &fault), hang, number, *refused);
    if (tside_hang_make(&p->travel, &s->drive_end.guide, &p->collar, p->eye_x, p->eye_y, &p->hang, NULL, NULL) != TSIDE_OK)
        return;
    TRIES(tside_lift_worst(&p->travel, &p->load, &p->hang, &torque, NULL, &fault), lift, number, *refused);
    TRIES(tside_lift_longest(&p->travel, &p->load, &p->hang, available, &ignored, &fault), lift, number, *refused);
    TRIES(tside_drive_run(&p->travel, &p->load, &p->hang, &s->drive, &s->cable, &ran, &fault), run, number, *refused);
}

FOR_SIDES(a_topic_is_refused_by_its_arguments, TOPICS)
{
    dice d;
    parts p;
    int refused = 0;
    memset(&p, 0, sizeof p);
    p.side = random_side(number, &d);
    change_some(TSIDE_KIND_DRIVE, &p.side.drive, &d);
    change_some(TSIDE_KIND_CABLE, &p.side.cable, &d);
    tside_usual(TSIDE_KIND_ROLL, &p.roll);
    tside_usual(TSIDE_KIND_COLLAR, &p.collar);
    tside_usual(TSIDE_KIND_LOAD, &p.load);
    p.roll.core = 0.035;
    p.load.length = 30;
    if (dice_below(&d, 2))
        change(TSIDE_KIND_ROLL, &p.roll, &d);
    if (dice_below(&d, 2))
        change(TSIDE_KIND_LOAD, &p.load, &d);
    p.eye_y = p.side.curtain.hip + dice_between(&d, 0, 0.6);
    if (try_shape(&p, number, &refused))
        try_hanging(&p, number, &d, &refused);
}

FOR_SIDES(a_part_is_refused_by_its_members, TOPICS)
{
    dice d = {(uint64_t)number * UINT64_C(0x9e6c63d0876a9a47)};
    tside_round round = {0.06, 0.003};
    tside_square square;
    tside_material material;
    tside_bolt bolt;
    tside_bolt_part part;
    tside_cable cable, smallest;
    tside_bar bar;
    tside_section section;
    tside_metal_values values;
    tside_bolt_plan plan;
    tside_bearing bearing;
    tside_bar_stick sticks[1];
    double density = 7850, curtain = dice_between(&d, 0, 60), voltage = dice_between(&d, 0.1, 200), current = dice_between(&d, 0, 40), drop = dice_between(&d, 0.01, 10);
    double core = dice_between(&d, 0.01, 1), wound = dice_between(&d, 0, 5), turns = dice_between(&d, 0, 20), taken_up = dice_between(&d, 0, 5), thickness;
    int count, refused = 0;
    const argument of_round[] = {{"tube", TSIDE_KIND_ROUND, &round}, {"density", NO_KIND, &density}};
    const argument of_square[] = {{"tube", TSIDE_KIND_SQUARE, &square}, {"density", NO_KIND, &density}};
    const argument of_material[] = {{"material", TSIDE_KIND_MATERIAL, &material}};
    const argument of_bolt[] = {{"bolt", TSIDE_KIND_BOLT, &bolt}, {"part", TSIDE_KIND_BOLT_PART, &part}};
    const argument of_cable[] = {{"cable", TSIDE_KIND_CABLE, &cable}, {"voltage", NO_KIND, &voltage}, {"current", NO_KIND, &current}, {"loading", NO_KIND, NULL}, {"drop", NO_KIND, &drop}};
    const argument of_bar[] = {{"bar", TSIDE_KIND_BAR, &bar}, {"curtain", NO_KIND, &curtain}, {"capacity", NO_KIND, NULL}};
    const argument of_roll[] = {{"core", NO_KIND, &core}, {"wraps_before", NO_KIND, &wound}, {"turns", NO_KIND, &turns}, {"taken_up", NO_KIND, &taken_up}};
    tside_usual(TSIDE_KIND_SQUARE, &square);
    tside_usual(TSIDE_KIND_MATERIAL, &material);
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    tside_usual(TSIDE_KIND_BOLT_PART, &part);
    tside_usual(TSIDE_KIND_CABLE, &cable);
    tside_usual(TSIDE_KIND_BAR, &bar);
    square.side = 0.05, square.wall = 0.003;
    bolt.grip = 0.06, part.wall = 0.003;
    cable.wire = TSIDE_AWG, cable.length = 30;
    bar.tube = round, bar.stock = 6;
    change_some(TSIDE_KIND_ROUND, &round, &d);
    change_some(TSIDE_KIND_SQUARE, &square, &d);
    change_some(TSIDE_KIND_MATERIAL, &material, &d);
    change_some(TSIDE_KIND_BOLT, &bolt, &d);
    change_some(TSIDE_KIND_BOLT_PART, &part, &d);
    change_some(TSIDE_KIND_CABLE, &cable, &d);
    change_some(TSIDE_KIND_BAR, &bar, &d);
    TRIES(tside_round_section(&round, density, &section, &fault), of_round, number, refused);
    TRIES(tside_square_section(&square, density, &section, &fault), of_square, number, refused);
    TRIES(tside_material_values(&material, &values, &fault), of_material, number, refused);
    TRIES(tside_bolt_choose(&bolt, &plan, &fault), of_bolt, number, refused);
    TRIES(tside_bolt_bearing(&bolt, &part, &bearing, &fault), of_bolt, number, refused);
    TRIES(tside_cable_smallest(&cable, voltage, current, TSIDE_RUNNING, drop, &smallest, &fault), of_cable, number, refused);
    TRIES(tside_bar_sticks(&bar, curtain, sticks, 1, &count, &fault), of_bar, number, refused);
    TRIES(tside_roll_thickness(core, wound, turns, taken_up, &thickness, &fault), of_roll, number, refused);
}

Suite *refusals_suite(void)
{
    Suite *suite = suite_create("refusals");
    TCase *tcase = tcase_create("refusals");
    suite_add_tcase(suite, tcase);
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, a_side_is_refused_by_its_fields);
    tcase_add_test(tcase, a_search_is_refused_by_the_sides_fields);
    tcase_add_test(tcase, a_column_that_is_not_whole_is_named_whole);
    tcase_add_test(tcase, the_eye_is_refused_as_it_was_told);
    tcase_add_test(tcase, tubes_are_named_whole);
    tcase_add_test(tcase, open_below_shut_names_what_sets_shut);
    tcase_add_test(tcase, a_thickness_takes_its_own_bound);
    tcase_add_test(tcase, the_least_rise_keeps_the_foot_off_the_ground);
    tcase_add_test(tcase, a_topic_is_refused_by_its_arguments);
    tcase_add_test(tcase, a_part_is_refused_by_its_members);
    tcase_add_test(tcase, a_take_off_is_refused_by_fields_of_side_and_fittings);
    return suite;
}
