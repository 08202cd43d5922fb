/* SPDX-License-Identifier: MIT */
/* One row: its arguments are set, its function is called twice, and its outcome held against what the row says. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "calls.h"

/* --- why a row fails: each of these returns 0 --- */

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
        if (!strcmp(parts[i].name, path) ||
            (parts[i].type == STRUCTURE && !strncmp(parts[i].name, path, named) && path[named] == '.'))
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
    case TSIDE_COUNT: return put_whole(written, INSIDE(holder, field->offset, int));
    case TSIDE_CHOICE: return put_choice(field, written, INSIDE(holder, field->offset, int));
    case TSIDE_LIST: return put_whole(written, INSIDE(holder, field->count_offset, int));
    case TSIDE_GROUP: break;
    }
    return 0;
}

static int put_part(const part *one, const char *written)
{
    switch (one->type) {
    case NUMBER: return argument_number(written, one->unit, one->at);
    case WHOLE: return put_whole(written, one->at);
    case WORDS:
        strcpy(one->at, written); /* every place for words holds VALUE_SIZE characters, as every value does */
        return 1;
    case STRUCTURE: break;
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
    w->off = fabs(got - want);
    w->allowed = tolerance;
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
    case TSIDE_COUNT: return same_whole(*INSIDE(holder, field->offset, const int), r, w);
    case TSIDE_CHOICE: {
        int choice = *INSIDE(holder, field->offset, const int);
        return same_text(choice >= 0 && choice < field->choice_count ? field->choices[choice] : "no choice", r, w);
    }
    case TSIDE_LIST: return same_whole(*INSIDE(holder, field->count_offset, const int), r, w);
    case TSIDE_GROUP: break;
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
    case NUMBER: return same_number(*(const double *)one->at, r, one->unit, w);
    case WHOLE: return same_whole(*(const int *)one->at, r, w);
    case WORDS: return same_text(one->at, r, w);
    case STRUCTURE: break;
    }
    if (!r->result[strlen(one->name)] ||
        tside_field_find(one->kind, r->result + strlen(one->name) + 1, &place, NULL) != TSIDE_OK)
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

int run_row(const row *r, tside_status *status, why *w)
{
    const function *f = find_function(r->function);
    tside_fault fault;
    w->off = w->allowed = 0;
    if (!f)
        return wrong(w, "no such function", r->function);
    if (!set_arguments(f, r->arguments, w) || !call(f, status, &fault, w) || !same_outcome(f, *status, &fault, r, w))
        return 0;
    if (!strcmp(r->result, "status"))
        heard_held();
    return 1;
}
