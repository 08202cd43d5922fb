/* SPDX-License-Identifier: MIT */
/*
 * Runs the rows of tests/data; rows.h says what a row is. To teach it a function: give its arguments and outputs a place below, write the call,
 * and add one row to the table of functions. With TSIDE_ROWS_ALONE defined this file is a program of its own, for places where Check is not.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/bolt.h>
#include <tunnelside/cable.h>
#include <tunnelside/crank.h>
#include <tunnelside/length.h>
#include <tunnelside/roll.h>
#include <tunnelside/tube.h>

#include "rows.h"

/* --- the functions --- */

typedef enum part_type { STRUCTURE, NUMBER, WHOLE, WORDS } part_type;

/* An argument or an output, and where it is kept. */
typedef struct part {
    const char *name;
    part_type type;
    tside_kind kind;  /* structure */
    const char *unit; /* number */
    void *at;
    size_t size;
} part;

#define STRUCTURE(name, kind, place) {name, STRUCTURE, kind, "", &place, sizeof place}
#define NUMBER(name, unit, place) {name, NUMBER, TSIDE_KIND_COUNT, unit, &place, sizeof place}
#define WHOLE(name, place) {name, WHOLE, TSIDE_KIND_COUNT, "", &place, sizeof place}
#define WORDS(name, place) {name, WORDS, TSIDE_KIND_COUNT, "", place, sizeof place}

enum { PARTS = 8 };

typedef struct function {
    const char *name;
    tside_status (*call)(tside_fault *fault);
    part asked[PARTS], answered[PARTS];
    unsigned statuses; /* the failures that its header documents, each of which must have a row */
} function;

#define FAILS(status) (1u << (status))

static tside_round round_tube;
static tside_square square_tube;
static tside_section section;
static tside_material material;
static tside_metal_values metal;
static tside_roll roll;
static tside_cable cable;
static tside_crank crank;
static tside_cranking cranking;
static double ohms, torque, drive_turns;
static tside_bolt bolt;
static tside_bolt_plan bolt_plan;
static tside_bolt_part bolt_part;
static tside_bearing bearing;
static double density, diameter, wall, value, core, wraps, wraps_before, turns, taken_up, length, thickness;
static char text[VALUE_SIZE], unit[VALUE_SIZE];

static tside_status round_section(tside_fault *fault)
{
    return tside_round_section(&round_tube, density, &section, fault);
}

static tside_status square_section(tside_fault *fault)
{
    return tside_square_section(&square_tube, density, &section, fault);
}

static tside_status material_values(tside_fault *fault)
{
    return tside_material_values(&material, &metal, fault);
}

static tside_status tube_size(tside_fault *fault)
{
    return tside_tube_size(text, &diameter, fault);
}

static tside_status tube_wall(tside_fault *fault)
{
    return tside_tube_wall(text, &wall, fault);
}

static tside_status quantity_read(tside_fault *fault)
{
    return tside_quantity_read(text, unit, &value, fault);
}

static tside_status bolt_choose(tside_fault *fault)
{
    return tside_bolt_choose(&bolt, &bolt_plan, fault);
}

static tside_status bolt_bearing(tside_fault *fault)
{
    return tside_bolt_bearing(&bolt, &bolt_part, &bearing, fault);
}

static tside_status cable_resistance(tside_fault *fault)
{
    return tside_cable_resistance(&cable, &ohms, fault);
}

static tside_status crank_effort(tside_fault *fault)
{
    return tside_crank_effort(&crank, torque, drive_turns, &cranking, fault);
}

static tside_status roll_taken_up(tside_fault *fault)
{
    return tside_roll_taken_up(&roll, wraps, &length, fault);
}

static tside_status roll_wraps(tside_fault *fault)
{
    return tside_roll_wraps(&roll, taken_up, &wraps, fault);
}

static tside_status roll_diameter(tside_fault *fault)
{
    return tside_roll_diameter(&roll, wraps, &diameter, fault);
}

static tside_status roll_thickness(tside_fault *fault)
{
    return tside_roll_thickness(core, wraps_before, turns, taken_up, &thickness, fault);
}

static const function functions[] = {
    {"tside_round_section", round_section,
     {STRUCTURE("tube", TSIDE_KIND_ROUND, round_tube), NUMBER("density", "kg/m3", density)},
     {STRUCTURE("section", TSIDE_KIND_SECTION, section)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_square_section", square_section,
     {STRUCTURE("tube", TSIDE_KIND_SQUARE, square_tube), NUMBER("density", "kg/m3", density)},
     {STRUCTURE("section", TSIDE_KIND_SECTION, section)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_material_values", material_values,
     {STRUCTURE("material", TSIDE_KIND_MATERIAL, material)},
     {NUMBER("values.modulus", "Pa", metal.modulus), NUMBER("values.shear_modulus", "Pa", metal.shear_modulus),
      NUMBER("values.density", "kg/m3", metal.density), WHOLE("values.yield_known", metal.yield_known), NUMBER("values.yield", "Pa", metal.yield),
      NUMBER("values.safety", "1", metal.safety)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_tube_size", tube_size,
     {WORDS("text", text)},
     {NUMBER("diameter", "m", diameter)},
     FAILS(TSIDE_NOT_FOUND) | FAILS(TSIDE_UNREADABLE) | FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_tube_wall", tube_wall,
     {WORDS("text", text)},
     {NUMBER("wall", "m", wall)},
     FAILS(TSIDE_NOT_FOUND)},
    {"tside_quantity_read", quantity_read,
     {WORDS("text", text), WORDS("unit", unit)},
     {NUMBER("value", unit, value)},
     FAILS(TSIDE_UNREADABLE) | FAILS(TSIDE_NOT_FOUND)},
    {"tside_roll_taken_up", roll_taken_up,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("wraps", "turn", wraps)},
     {NUMBER("length", "m", length)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_roll_wraps", roll_wraps,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("taken_up", "m", taken_up)},
     {NUMBER("wraps", "turn", wraps)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_roll_diameter", roll_diameter,
     {STRUCTURE("roll", TSIDE_KIND_ROLL, roll), NUMBER("wraps", "turn", wraps)},
     {NUMBER("diameter", "m", diameter)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_roll_thickness", roll_thickness,
     {NUMBER("core", "m", core), NUMBER("wraps_before", "turn", wraps_before), NUMBER("turns", "turn", turns), NUMBER("taken_up", "m", taken_up)},
     {NUMBER("thickness", "m", thickness)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
    {"tside_cable_resistance", cable_resistance,
     {STRUCTURE("cable", TSIDE_KIND_CABLE, cable)},
     {NUMBER("resistance", "ohm", ohms)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_crank_effort", crank_effort,
     {STRUCTURE("crank", TSIDE_KIND_CRANK, crank), NUMBER("torque", "N m", torque), NUMBER("drive_turns", "turn", drive_turns)},
     {STRUCTURE("cranking", TSIDE_KIND_CRANKING, cranking)},
     FAILS(TSIDE_OUT_OF_BOUNDS)},
    {"tside_bolt_choose", bolt_choose,
     {STRUCTURE("bolt", TSIDE_KIND_BOLT, bolt)},
     {STRUCTURE("plan", TSIDE_KIND_BOLT_PLAN, bolt_plan)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS) | FAILS(TSIDE_OUT_OF_REACH)},
    {"tside_bolt_bearing", bolt_bearing,
     {STRUCTURE("bolt", TSIDE_KIND_BOLT, bolt), STRUCTURE("part", TSIDE_KIND_BOLT_PART, bolt_part)},
     {STRUCTURE("bearing", TSIDE_KIND_BEARING, bearing)},
     FAILS(TSIDE_OUT_OF_BOUNDS) | FAILS(TSIDE_CONTRADICTS)},
};
enum { FUNCTIONS = sizeof functions / sizeof *functions };

static const function *find_function(const char *name)
{
    for (int i = 0; i < FUNCTIONS; i++)
        if (!strcmp(functions[i].name, name))
            return functions + i;
    return NULL;
}

/* --- why a row fails: each of these returns 0 --- */

typedef struct why {
    char text[1024];
} why;

static int wrong(why *w, const char *what, const char *name)
{
    snprintf(w->text, sizeof w->text, "%s: %s", what, name);
    return 0;
}

static int wrong_number(why *w, const char *name, double got, double want, double tolerance, const char *si)
{
    snprintf(w->text, sizeof w->text, "%s: got %.9g, want %.9g within %.3g %s", name, got, want, tolerance, si);
    return 0;
}

static int wrong_text(why *w, const char *name, const char *got, const char *want)
{
    snprintf(w->text, sizeof w->text, "%s: got \"%s\", want \"%s\"", name, got, want);
    return 0;
}

/* --- arguments --- */

#define INSIDE(structure, offset, type) ((type *)(void *)((char *)(structure) + (offset)))

/* The part that a path belongs to: the whole path names it, or it is a structure that the path leads into. */
static const part *find_part(const part *parts, const char *path)
{
    for (int i = 0; i < PARTS && parts[i].name; i++) {
        size_t named = strlen(parts[i].name);
        if (!strcmp(parts[i].name, path) || (parts[i].type == STRUCTURE && !strncmp(parts[i].name, path, named) && path[named] == '.'))
            return parts + i;
    }
    return NULL;
}

static int put_whole(const char *written, int *place)
{
    char *end;
    long whole = strtol(written, &end, 10);
    if (!*written || *end || whole < -1000000 || whole > 1000000)
        return 0;
    *place = (int)whole;
    return 1;
}

static int put_choice(const tside_field *field, const char *written, int *place)
{
    for (int i = 0; i < field->choice_count; i++)
        if (!strcmp(field->choices[i], written)) {
            *place = i;
            return 1;
        }
    return 0;
}

static int put_field(const tside_place *place, void *structure, const char *written)
{
    const tside_field *field = place->field;
    char *holder = (char *)structure + (place->offset - field->offset);
    switch (field->type) {
    case TSIDE_NUMBER:
        if (field->optional)
            *INSIDE(holder, field->given_offset, int) = 1;
        return argument_number(written, field->unit, INSIDE(holder, field->offset, double));
    case TSIDE_COUNT:
        return put_whole(written, INSIDE(holder, field->offset, int));
    case TSIDE_CHOICE:
        return put_choice(field, written, INSIDE(holder, field->offset, int));
    case TSIDE_LIST:
        return put_whole(written, INSIDE(holder, field->count_offset, int));
    case TSIDE_GROUP:
        break;
    }
    return 0;
}

static int put_part(const part *one, const char *written)
{
    switch (one->type) {
    case NUMBER:
        return argument_number(written, one->unit, one->at);
    case WHOLE:
        return put_whole(written, one->at);
    case WORDS:
        strcpy(one->at, written); /* every place for words holds VALUE_SIZE characters, as every value does */
        return 1;
    case STRUCTURE:
        break;
    }
    return 0;
}

/* Choices first, then what depends on them; within a pass, in the order written. */
static int put_argument(const part *one, const char *path, const char *written, int choices, why *w)
{
    tside_place place;
    if (one->type != STRUCTURE)
        return choices || put_part(one, written) ? 1 : wrong(w, "not a value for this argument", path);
    if (!path[strlen(one->name)] || tside_field_find(one->kind, path + strlen(one->name) + 1, &place, NULL) != TSIDE_OK)
        return wrong(w, "no such field", path);
    if ((place.field->type == TSIDE_CHOICE) != choices)
        return 1;
    return put_field(&place, one->at, written) ? 1 : wrong(w, "not a value for this field", path);
}

static int put_arguments(const function *f, const char *arguments, int choices, why *w)
{
    char name[NAME_SIZE], written[VALUE_SIZE];
    int more;
    while ((more = next_argument(&arguments, name, written)) > 0) {
        const part *one = find_part(f->asked, name);
        if (!one)
            return wrong(w, "no such argument", name);
        if (!put_argument(one, name, written, choices, w))
            return 0;
    }
    return more == 0 ? 1 : wrong(w, "not a list of name=value", arguments);
}

static int times_named(const char *arguments, const char *path)
{
    char name[NAME_SIZE], written[VALUE_SIZE];
    int times = 0;
    while (next_argument(&arguments, name, written) > 0)
        times += !strcmp(name, path);
    return times;
}

static int all_named_once(const function *f, const char *arguments, why *w)
{
    char name[NAME_SIZE], written[VALUE_SIZE];
    for (int i = 0; i < PARTS && f->asked[i].name; i++)
        if (f->asked[i].type != STRUCTURE && !times_named(arguments, f->asked[i].name))
            return wrong(w, "argument not named", f->asked[i].name);
    for (const char *at = arguments; next_argument(&at, name, written) > 0;)
        if (times_named(arguments, name) > 1)
            return wrong(w, "argument named twice", name);
    return 1;
}

static int set_arguments(const function *f, const char *arguments, why *w)
{
    for (int i = 0; i < PARTS && f->asked[i].name; i++) {
        memset(f->asked[i].at, 0, f->asked[i].size);
        if (f->asked[i].type == STRUCTURE)
            tside_usual(f->asked[i].kind, f->asked[i].at);
    }
    if (!put_arguments(f, arguments, 1, w))
        return 0;
    for (int i = 0; i < PARTS && f->asked[i].name; i++)
        if (f->asked[i].type == STRUCTURE)
            tside_usual_by_choice(f->asked[i].kind, f->asked[i].at);
    return put_arguments(f, arguments, 0, w) && all_named_once(f, arguments, w);
}

/* --- the call --- */

enum { UNTOUCHED = 0xa5 };

/* An argument may share its place with no output of the same call, or wiping the one would wipe the other. */
static void wipe_outputs(const function *f)
{
    for (int i = 0; i < PARTS && f->answered[i].name; i++)
        memset(f->answered[i].at, UNTOUCHED, f->answered[i].size);
}

static int outputs_untouched(const function *f)
{
    for (int i = 0; i < PARTS && f->answered[i].name; i++)
        for (size_t k = 0; k < f->answered[i].size; k++)
            if (((const unsigned char *)f->answered[i].at)[k] != UNTOUCHED)
                return 0;
    return 1;
}

/* Calls without a fault, then with one: both must end alike, and a failure must leave the outputs as they were. */
static int call(const function *f, tside_status *status, tside_fault *fault, why *w)
{
    tside_status without;
    wipe_outputs(f);
    without = f->call(NULL);
    wipe_outputs(f);
    memset(fault, 0, sizeof *fault);
    *status = f->call(fault);
    if (*status != without)
        return wrong(w, "ends otherwise without a fault to fill", tside_status_text((int)without));
    if (*status != TSIDE_OK && fault->status != *status)
        return wrong(w, "the fault speaks of another status", tside_status_text((int)fault->status));
    if (*status != TSIDE_OK && *status != TSIDE_TOO_SMALL && !outputs_untouched(f))
        return wrong(w, "failed, and touched its outputs", tside_status_text((int)*status));
    return 1;
}

/* --- the outcome --- */

static int same_text(const char *got, const row *r, why *w)
{
    return !strcmp(got, r->value) ? 1 : wrong_text(w, r->result, got, r->value);
}

static int same_whole(int got, const row *r, why *w)
{
    int want;
    if (!put_whole(r->value, &want))
        return wrong(w, "the value is not a whole number", r->value);
    return got == want ? 1 : wrong_number(w, r->result, got, want, 0, "");
}

static int same_number(double got, const row *r, const char *si, why *w)
{
    double want, tolerance;
    if (!row_number(r->value, r->unit, si, &want))
        return wrong(w, "the value or its unit cannot be read", r->value);
    if (!row_tolerance(r->tolerance, r->unit, si, want, &tolerance))
        return wrong(w, "the tolerance cannot be read", r->tolerance);
    return differs(got, want, tolerance) ? wrong_number(w, r->result, got, want, tolerance, si) : 1;
}

static int same_field(const tside_place *place, const void *structure, const row *r, why *w)
{
    const tside_field *field = place->field;
    const char *holder = (const char *)structure + (place->offset - field->offset);
    switch (field->type) {
    case TSIDE_NUMBER:
        if (field->optional) {
            int given = *INSIDE(holder, field->given_offset, const int), none = !strcmp(r->value, "none");
            if (given == none)
                return wrong_text(w, r->result, given ? "a value" : "none", r->value);
            if (none)
                return 1;
        }
        return same_number(*INSIDE(holder, field->offset, const double), r, field->unit, w);
    case TSIDE_COUNT:
        return same_whole(*INSIDE(holder, field->offset, const int), r, w);
    case TSIDE_CHOICE: {
        int choice = *INSIDE(holder, field->offset, const int);
        return same_text(choice >= 0 && choice < field->choice_count ? field->choices[choice] : "no choice", r, w);
    }
    case TSIDE_LIST:
        return same_whole(*INSIDE(holder, field->count_offset, const int), r, w);
    case TSIDE_GROUP:
        break;
    }
    return wrong(w, "a result in itself is no value", r->result);
}

static int same_output(const function *f, const row *r, why *w)
{
    const part *one = find_part(f->answered, r->result);
    tside_place place;
    if (!one)
        return wrong(w, "no such result", r->result);
    switch (one->type) {
    case NUMBER:
        return same_number(*(const double *)one->at, r, one->unit, w);
    case WHOLE:
        return same_whole(*(const int *)one->at, r, w);
    case WORDS:
        return same_text(one->at, r, w);
    case STRUCTURE:
        break;
    }
    if (!r->result[strlen(one->name)] || tside_field_find(one->kind, r->result + strlen(one->name) + 1, &place, NULL) != TSIDE_OK)
        return wrong(w, "no such result", r->result);
    return same_field(&place, one->at, r, w);
}

static void outcome_text(tside_status status, const tside_fault *fault, char *outcome, size_t size)
{
    int fielded = status != TSIDE_OK && *fault->field;
    snprintf(outcome, size, "%s%s%s", tside_status_text((int)status), fielded ? ": " : "", fielded ? fault->field : "");
}

static int same_fault(const tside_fault *fault, const row *r, why *w)
{
    const char *member = r->result + strlen("fault.");
    if (!strcmp(member, "other"))
        return same_text(fault->other, r, w);
    if (!strcmp(member, "index"))
        return same_whole(fault->index, r, w);
    if (!strcmp(member, "value"))
        return same_number(fault->value, r, fault->unit, w);
    if (!strcmp(member, "bound"))
        return same_number(fault->bound, r, fault->unit, w);
    if (!strcmp(member, "gap"))
        return same_number(fault->gap, r, fault->unit, w);
    return wrong(w, "no such result", r->result);
}

static int same_outcome(const function *f, tside_status status, const tside_fault *fault, const row *r, why *w)
{
    char outcome[TSIDE_PATH_SIZE + 64];
    outcome_text(status, fault, outcome, sizeof outcome);
    if (!strcmp(r->result, "status"))
        return same_text(outcome, r, w);
    if (!strncmp(r->result, "fault.", strlen("fault.")))
        return status != TSIDE_OK ? same_fault(fault, r, w) : wrong(w, "did not fail", r->arguments);
    return status == TSIDE_OK ? same_output(f, r, w) : wrong(w, "failed", outcome);
}

/* Returns 1, or 0 with why the row fails. */
static int run_row(const row *r, tside_status *status, why *w)
{
    const function *f = find_function(r->function);
    tside_fault fault;
    if (!f)
        return wrong(w, "no such function", r->function);
    return set_arguments(f, r->arguments, w) && call(f, status, &fault, w) && same_outcome(f, *status, &fault, r, w);
}

/* --- the rows --- */

static rows all;

static void read_all(void)
{
    const char *folder = getenv("TSIDE_TEST_DATA");
#ifdef TSIDE_TEST_DATA
    if (!folder)
        folder = TSIDE_TEST_DATA;
#endif
    all = rows_read(folder ? folder : ".");
}

#ifdef TSIDE_ROWS_ALONE

int main(void)
{
    int failed = 0;
    read_all();
    if (*all.wrong) {
        fprintf(stderr, "%s\n", all.wrong);
        return EXIT_FAILURE;
    }
    for (int i = 0; i < all.count; i++) {
        tside_status status;
        why w;
        if (!run_row(all.row + i, &status, &w)) {
            fprintf(stderr, "%s: %s: %s\n", all.row[i].place, all.row[i].function, w.text);
            failed++;
        }
    }
    printf("%d rows, %d failed\n", all.count, failed);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

#else

#include <check.h>

Suite *data_suite(void);

START_TEST(every_row)
{
    tside_status status;
    why w;
    if (!run_row(all.row + _i, &status, &w))
        ck_abort_msg("%s: %s: %s", all.row[_i].place, all.row[_i].function, w.text);
}
END_TEST

START_TEST(files_are_in_order)
{
    ck_assert_msg(!*all.wrong, "%s", all.wrong);
    ck_assert_int_gt(all.count, 0);
}
END_TEST

/* Each function answers in some row, and fails in each way that its header documents in another. */
START_TEST(every_function_and_failure_has_a_row)
{
    const function *f = functions + _i;
    unsigned seen = 0;
    for (int i = 0; i < all.count; i++) {
        tside_status status;
        why w;
        if (!strcmp(all.row[i].function, f->name) && run_row(all.row + i, &status, &w))
            seen |= FAILS(status);
    }
    ck_assert_msg(seen & FAILS(TSIDE_OK), "%s has no row in which it answers", f->name);
    for (int status = TSIDE_OK + 1; status <= TSIDE_NOT_FOUND; status++)
        ck_assert_msg(!(seen & FAILS(status)) == !(f->statuses & FAILS(status)), "%s: %s: %s", f->name, tside_status_text(status),
                      f->statuses & FAILS(status) ? "no row provokes it" : "a row provokes it, but it is not documented");
}
END_TEST

/* --- the runner itself: what must fail does --- */

START_TEST(only_the_near_is_near)
{
    ck_assert(!differs(1, 1, 0));
    ck_assert(!differs(1, 1.25, 0.25));
    ck_assert(!differs(1.25, 1, 0.25));
    ck_assert(differs(1, 1.25, 0.2499));
    ck_assert(differs(1.25, 1, 0.2499));
    ck_assert(differs(NAN, 1, 1e300));
    ck_assert(differs(1, NAN, 1e300));
    ck_assert(differs(NAN, NAN, 1e300));
    ck_assert(differs(1, 1, NAN));
    ck_assert(differs(HUGE_VAL, 1, 1e300));
    ck_assert(differs(1, 1, -1));
}
END_TEST

#define BAR "tube.diameter=1.315 in;tube.wall=0.133 in;density=7850"

static const struct {
    const char *line, *complaint; /* no complaint: the row is good */
} samples[] = {
    {"tside_round_section," BAR ",section.area,0.4939,in2,0.00005,pi w (D - w) by hand", NULL},
    {"tside_round_section,\"" BAR "\",section.area,3.1862e-4,,rel 0.001,by hand", NULL},
    {"tside_round_section," BAR ",section.area,318.6,mm2,0.05,by hand", NULL},
    {"tside_tube_size,text=2 in,status,not found: text,,,\"quotes \"\" and, commas\"", NULL},
    {"tside_tube_size,text=nps 1,diameter,1-5/16,in,0.0026,near enough", NULL},
    {"tside_material_values,material.grade=S235,values.yield_known,1,,,by hand", NULL},

    {"tside_round_section," BAR ",section.area,0.4941,in2,0.00005,wrong by more than its tolerance", "section.area: got"},
    {"tside_round_section," BAR ",section.area,0.4937,in2,0.00005,wrong by more than its tolerance", "section.area: got"},
    {"tside_round_section," BAR ",section.area,nan,,1,nothing is near to it", "section.area: got"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,,no tolerance", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,-1,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,nan,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in2,inf,none either", "the tolerance cannot be read"},
    {"tside_round_section," BAR ",section.area,0.4939,in3,1,another quantity", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.mass,1.68,in,1,another quantity", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.area,about 1,in2,1,no number", "the value or its unit cannot be read"},
    {"tside_round_section," BAR ",section.volume,1,,1,no such result", "no such result"},
    {"tside_round_section," BAR ",area,1,,1,no such result", "no such result"},
    {"tside_round_section," BAR ",section,1,,1,not a value", "no such result"},
    {"tside_round_section," BAR ",status,contradicts: tube.wall,,,it does not", "status: got"},
    {"tside_round_section," BAR ",fault.other,,,,it does not fail", "did not fail"},
    {"tside_round_section," BAR ";density=1,section.area,1,,1,twice", "argument named twice"},
    {"tside_round_section," BAR ";length=1,section.area,1,,1,no such argument", "no such argument"},
    {"tside_round_section," BAR ";tube.length=1,section.area,1,,1,no such field", "no such field"},
    {"tside_round_section," BAR ";tube=1,section.area,1,,1,not a field", "no such field"},
    {"tside_round_section," BAR ";,section.area,1,,1,loose end", "not a list"},
    {"tside_round_section," BAR ";x,section.area,1,,1,no value", "not a list"},
    {"tside_round_section,tube.diameter=1.315 in;tube.wall=0.133 in,section.area,1,,1,no density", "argument not named"},
    {"tside_round_section,tube.diameter=1.315 kg;tube.wall=1;density=1,section.area,1,,1,no length", "not a value for this field"},
    {"tside_round_section,tube.diameter=1;tube.wall=1;density=heavy,section.area,1,,1,no density", "not a value for this argument"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,section.area,1,,1,fails", "failed"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,status,contradicts: tube.side,,,another field", "status: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,status,out of bounds: tube.wall,,,another status", "status: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.bound,0.04,m,0.001,another bound", "fault.bound: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.other,tube.side,,,another field", "fault.other: got"},
    {"tside_round_section,tube.diameter=0.1;tube.wall=0.05;density=1,fault.mood,,,,none", "no such result"},
    {"tside_material_values,material.metal=wood,values.density,1,,1,no such choice", "not a value for this field"},
    {"tside_material_values,material.grade=S235,values.yield_known,0,,,wrong", "values.yield_known: got"},
    {"tside_material_values,material.grade=S235,values.yield_known,yes,,,wrong", "not a whole number"},
    {"tside_tea_time,,status,ok,,,no such function", "no such function"},
    {"tside_tube_size,text=2 in,status,not found: text,,,", "no source"},
    {"tside_tube_size,text=2 in,status,not found: text,,,  ", "no source"},
    {"tside_tube_size,text=2 in,status,not found: text,,", "columns"},
    {"tside_tube_size,text=2 in,status,not found: text,,,a,b", "columns"},
    {"tside_tube_size,\"text=2 in,status,not found: text,,,a", "quotes"},
    {"tside_tube_size,\"text=2 in\"x,status,not found: text,,,a", "quotes"},
    {"tside_tube_size,text=2\",status,not found: text,,,a", "quotes"},
};

START_TEST(bad_rows_fail)
{
    char line[VALUE_SIZE];
    row r = {0};
    why w = {""};
    tside_status status;
    int good;
    strcpy(line, samples[_i].line);
    good = row_split(line, &r, w.text, sizeof w.text) && run_row(&r, &status, &w);
    if (samples[_i].complaint)
        ck_assert_msg(!good && strstr(w.text, samples[_i].complaint), "%s: %s", samples[_i].line, good ? "passed" : w.text);
    else
        ck_assert_msg(good, "%s: %s", samples[_i].line, w.text);
}
END_TEST

Suite *data_suite(void)
{
    Suite *suite = suite_create("data");
    TCase *runner = tcase_create("runner"), *data = tcase_create("rows");
    read_all();
    tcase_add_test(runner, only_the_near_is_near);
    tcase_add_loop_test(runner, bad_rows_fail, 0, (int)(sizeof samples / sizeof *samples));
    suite_add_tcase(suite, runner);
    tcase_add_test(data, files_are_in_order);
    tcase_add_loop_test(data, every_row, 0, all.count);
    tcase_add_loop_test(data, every_function_and_failure_has_a_row, 0, FUNCTIONS);
    suite_add_tcase(suite, data);
    return suite;
}

#endif
