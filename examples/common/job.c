/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "job.h"
#include "memory.h"
#include "message.h"
#include "names.h"

enum {
    MOST_SIDES = 2,     /* a tunnel has no more */
    MOST_LISTED = 10000 /* each takes some 20 KB of memory */
};

int is_planned(const planned *side)
{
    return !side->refusals.count;
}

const tside_end *end_asked(const planned *side, int end)
{
    return end == TSIDE_FREE_END ? &side->wanted.side.free_end : &side->wanted.side.drive_end;
}

const tside_end_plan *end_answered(const planned *side, int end)
{
    return end == TSIDE_FREE_END ? &side->plan.free_end : &side->plan.drive_end;
}

void add_keep_out(text *words, const planned *side, int end, int index)
{
    const char *name = side->wanted.keep_outs[end][index];
    if (name && *name)
        text_add(words, "%s", name);
    else
        text_add(words, "keep-out %d", index + 1);
}

int is_of_keep_out(tside_finding_code code)
{
    return code == TSIDE_FINDING_KEEP_OUT_TUBE || code == TSIDE_FINDING_KEEP_OUT_GUIDE;
}

int is_mended_by_eye(tside_finding_code code)
{
    return code == TSIDE_FINDING_KICK || code == TSIDE_FINDING_SIDE_FORCE;
}

void add_mend(text *words, pen *p, const planned *side, int end)
{
    const found *search = &side->least_rise[end];
    const tside_end *asked = end_asked(side, end);
    const tside_limits *limits = &side->wanted.side.limits;
    const char *group = end_group(end);
    if (!search->asked || search->status != TSIDE_OK)
        return;
    text_add(words, "; an eye %s above the hip %s: ", tape_at_least(p, search->value),
             limits->kick_out_given || limits->side_force_given ? "clears, and keeps to the limits" : "clears");
    if (asked->hung == TSIDE_ON_HIP)
        text_add(words, "%s.hung extender, ", group);
    if (asked->hung == TSIDE_ON_EXTENDER && asked->placed == TSIDE_EYE_GIVEN)
        text_add(words, "%s.placed best, ", group);
    text_add(words, "%s.rise at least %s", group, tape_at_least(p, search->value));
}

static planned *new_side(work *all, const char *file)
{
    planned *side = take_memory(sizeof *side);
    memset(side, 0, sizeof *side);
    side->file = printable(file);
    all->sides = grown(all->sides, all->count, &all->room, sizeof *all->sides);
    all->sides[all->count++] = side;
    return side;
}

static void keep(found *search, tside_status status, double value, const tside_fault *fault)
{
    search->asked = 1;
    search->status = status;
    search->value = value;
    if (status != TSIDE_OK)
        search->why = *fault;
}

static void search_rise(planned *side, int end)
{
    double rise = 0;
    tside_fault fault;
    const tside_status status = tside_eye_least(&side->wanted.side, (tside_which_end)end, &rise, &fault);
    keep(&side->least_rise[end], status, rise, &fault);
}

/* Whether something is found that stops the work, and that a higher eye would mend. */
static int is_eye_too_low(const planned *side, int end)
{
    for (int i = 0; i < side->plan.finding_count; i++)
        if ((int)side->plan.findings[i].end == end && is_mended_by_eye(side->plan.findings[i].code))
            return 1;
    return 0;
}

static void run_searches(planned *side)
{
    const tside_side *asked = &side->wanted.side;
    tside_fault fault;
    tside_status status;
    for (int end = 0; end < ENDS; end++)
        if (end_asked(side, end)->hung == TSIDE_ON_EXTENDER || is_eye_too_low(side, end))
            search_rise(side, end);
    if (asked->bar_count) {
        int index = 0;
        status = tside_bar_smallest(asked, &index, &fault);
        keep(&side->smallest_bar, status, index, &fault);
    }
}

/* Why a drive of the list is refused: the search says only that it is. */
static void say_why_refused(planned *side, const drive_list *drives, int i)
{
    tside_side *with = take_memory(sizeof *with);
    tside_plan *ignored = take_memory(sizeof *ignored);
    tside_fault fault;
    *with = side->wanted.side;
    with->drive = drives->drive[i];
    if (tside_plan_side(with, ignored, &fault) != TSIDE_OK)
        side->choices[i].why = fault;
    free(with);
    free(ignored);
}

static void choose_drive(planned *side, const drive_list *drives)
{
    tside_drive_choice *choices = take_memory((size_t)drives->count * sizeof *choices);
    tside_fault fault;
    int index = 0;
    tside_status status = tside_drive_smallest(&side->wanted.side, drives->drive, drives->count, &index, choices,
                                               &fault);
    keep(&side->smallest_drive, status, index, &fault);
    if (status == TSIDE_OK || status == TSIDE_OUT_OF_REACH) {
        side->drives = drives;
        side->choices = take_memory((size_t)drives->count * sizeof *side->choices);
    }
    for (int i = 0; side->choices && i < drives->count; i++) {
        side->choices[i] = (judged){.choice = choices[i]};
        if (choices[i].fit == TSIDE_DRIVE_REFUSED)
            say_why_refused(side, drives, i);
    }
    free(choices);
}

/* The end whose eye a refusal is about, or -1. */
static int end_of_eye(const tside_fault *fault)
{
    static const char *const about[] = {"hung", "rise", "placed", "eye_outboard", "extender.bar_clearance"};
    for (int end = 0; end < ENDS; end++)
        for (size_t i = 0; i < sizeof about / sizeof *about; i++) {
            char path[TSIDE_PATH_SIZE];
            snprintf(path, sizeof path, "%s.%s", end_group(end), about[i]);
            if (!strcmp(fault->field, path))
                return end;
        }
    return -1;
}

/*
 * An eye that clears what rides on the guide may have its tube too near the roll: upward from there, to the first of a
 * tape's divisions at which nothing is refused of this end.
 */
static void raise_until_planned(planned *side, int end)
{
    enum { MOST_STEPS = 1000 };
    const double step = tape_division(side->wanted.in_feet);
    found *search = &side->least_rise[end];
    tside_side *tried = take_memory(sizeof *tried);
    tside_plan *ignored = take_memory(sizeof *ignored);
    tside_end *at = end == TSIDE_FREE_END ? &tried->free_end : &tried->drive_end;
    const size_t group = strlen(end_group(end));
    tside_status status = search->status;
    *tried = side->wanted.side;
    at->placed = TSIDE_EYE_BEST;
    at->rise = search->value;
    for (int i = 0; search->status == TSIDE_OK && i < MOST_STEPS; i++, at->rise += step) {
        tside_fault fault;
        status = tside_plan_side(tried, ignored, &fault);
        if (status != TSIDE_OK && (strncmp(fault.field, end_group(end), group) || fault.field[group] != '.'))
            status = TSIDE_OK;
        if (status == TSIDE_OK)
            break;
    }
    search->status = status;
    search->value = at->rise;
    free(tried);
    free(ignored);
}

/* Where a higher eye would mend it, how high, in the file's units. */
static void refuse_planned(document *doc, planned *side, tside_fault *fault)
{
    const int us = side->wanted.in_feet, end = end_of_eye(fault);
    text mend = {NULL, 0, 0};
    pen p = {.us = us};
    if (end >= 0) {
        search_rise(side, end);
        if (end_asked(side, end)->hung == TSIDE_ON_EXTENDER)
            raise_until_planned(side, end);
        add_mend(&mend, &p, side, end);
    }
    refuse_by_library(doc, &side->refusals, side->wanted.within, fault, us, text_of(&mend));
    text_free(&mend);
}

/* The same as the library does for a side's own groups: the field's path begins at the side. */
static tside_status check_fittings(const tside_fittings *fittings, tside_fault *fault)
{
    char path[TSIDE_PATH_SIZE];
    const tside_status status = tside_check(TSIDE_KIND_FITTINGS, fittings, fault);
    if (status != TSIDE_OK) {
        snprintf(path, sizeof path, "%s.%.*s", FITTINGS, (int)(sizeof path - sizeof FITTINGS - 1), fault->field);
        memcpy(fault->field, path, sizeof path);
    }
    return status;
}

static tside_status take_off(planned *side, int must_take, tside_fault *fault)
{
    const tside_status status = tside_takeoff(&side->wanted.side, &side->plan, &side->wanted.fittings, side->items,
                                              TSIDE_ITEMS, &side->item_count, fault);
    if (status == TSIDE_OK || must_take)
        return status;
    side->no_take_off = *fault;
    return TSIDE_OK;
}

static void plan(document *doc, planned *side, const work *all)
{
    const tside_side *asked = &side->wanted.side;
    tside_fault fault;
    tside_status status = check_fittings(&side->wanted.fittings, &fault);
    if (status == TSIDE_OK)
        status = tside_plan_side(asked, &side->plan, &fault);
    if (status == TSIDE_OK && all->take_off)
        status = take_off(side, all->must_take, &fault);
    if (status == TSIDE_OK && tside_plan_turns(asked, NULL, 0, &side->turn_count, &fault) == TSIDE_TOO_SMALL) {
        side->turns = take_memory((size_t)side->turn_count * sizeof *side->turns);
        status = tside_plan_turns(asked, side->turns, side->turn_count, &side->turn_count, &fault);
    }
    if (status != TSIDE_OK) {
        refuse_planned(doc, side, &fault);
        return;
    }
    run_searches(side);
    if (all->drives)
        choose_drive(side, all->drives);
}

/* Two pieces of one mark would be taken for each other. */
static void compare_marks(const work *all, document *doc, planned *side)
{
    for (size_t i = 0; side->wanted.place && all->sides[i] != side; i++)
        if (all->sides[i]->wanted.place == side->wanted.place) {
            complain(doc, &side->refusals, side->wanted.within, MARK, "another side, of %s, has it too",
                     all->sides[i]->file);
            return;
        }
}

static planned *add_side(work *all, document *doc, const json_t *json, const char *within)
{
    planned *side = new_side(all, doc->name);
    snprintf(side->wanted.within, sizeof side->wanted.within, "%s", within);
    read_side(doc, json, &side->wanted, &side->refusals);
    compare_marks(all, doc, side);
    side->is_read = is_planned(side);
    if (side->is_read)
        plan(doc, side, all);
    return side;
}

static int is_own_key(const char *key)
{
    return !strcmp(key, "job") || !strcmp(key, "sides") || !strcmp(key, "note");
}

/* What stands beside a job's sides is shared by them: a side as if it stood in each, less what each says otherwise. */
static json_t *with_shared(const json_t *job, json_t *own)
{
    json_t *whole = json_object(), *value;
    const char *key;
    int failed = 0;
    json_object_foreach((json_t *)job, key, value) if (!is_own_key(key))
        failed |= json_object_set_new(whole, key, json_deep_copy(value));
    failed |= json_object_update_recursive(whole, own);
    if (failed) /* nothing else can: what was parsed has no loops */
        end_without_memory();
    return whole;
}

static char *names_shared(const json_t *job)
{
    text names = {NULL, 0, 0};
    json_t *value;
    const char *key;
    char *clean;
    json_object_foreach((json_t *)job, key, value) if (!is_own_key(key))
        text_add(&names, "%s%s", names.length ? ", " : "", key);
    clean = printable(text_of(&names));
    text_free(&names);
    return clean;
}

static void read_job_side(work *all, document *doc, const json_t *job, json_t *own, size_t number, size_t of)
{
    char within[24];
    json_t *whole = json_is_object(own) ? with_shared(job, own) : json_incref(own);
    planned *side;
    snprintf(within, sizeof within, "sides[%zu]", number);
    side = add_side(all, doc, whole, within);
    side->wanted.job = read_text(doc, job, "job", &side->refusals);
    side->wanted.job_note = read_text(doc, job, "note", &side->refusals);
    side->wanted.number = (int)number + 1;
    side->wanted.of = (int)of;
    side->wanted.shares = names_shared(job);
    json_decref(whole);
}

/* Seen from one end wall, a tunnel has one right side and one left side. */
static void compare_sides(document *doc, planned *first, planned *second)
{
    const request *one = &first->wanted, *other = &second->wanted;
    if (is_planned(first) && is_planned(second) && one->side.hand == other->side.hand &&
        !strcmp(one->drive_at, other->drive_at))
        complain(doc, &second->refusals, second->wanted.within, "hand",
                 "the same hand as the other side's, with the drive at the same end: it would be the same side; give "
                 "hand, or drive_at, as it is");
}

static void read_job(work *all, document *doc)
{
    json_t *sides = json_object_get(doc->root, "sides");
    const size_t of = json_array_size(sides), before = all->count;
    if (of < 1 || of > MOST_SIDES) {
        complain(doc, &new_side(all, doc->name)->refusals, "", "sides", "wanted a list of one or two sides");
        return;
    }
    for (size_t i = 0; i < of; i++)
        read_job_side(all, doc, doc->root, json_array_get(sides, i), i, of);
    if (of == MOST_SIDES)
        compare_sides(doc, all->sides[before], all->sides[before + 1]);
}

static void read_list(work *all, document *doc)
{
    char within[24];
    if (json_array_size(doc->root) > MOST_LISTED) {
        complain(doc, &new_side(all, doc->name)->refusals, "", "", "a list of %zu sides: the most is %d",
                 json_array_size(doc->root), MOST_LISTED);
        return;
    }
    if (!json_array_size(doc->root))
        complain(doc, &new_side(all, doc->name)->refusals, "", "", "an empty list: wanted at least one side");
    for (size_t i = 0; i < json_array_size(doc->root); i++) {
        snprintf(within, sizeof within, "[%zu]", i);
        add_side(all, doc, json_array_get(doc->root, i), within);
    }
}

static void add_file(work *all, const char *name)
{
    const size_t before = all->count;
    complaints refusals = {{NULL, 0, 0}, 0};
    document doc;
    if (!document_open(&doc, name, &refusals))
        new_side(all, name)->refusals = refusals;
    else if (json_is_array(doc.root))
        read_list(all, &doc);
    else if (json_object_get(doc.root, "sides") || json_object_get(doc.root, "job"))
        read_job(all, &doc);
    else
        add_side(all, &doc, doc.root, "");
    for (size_t i = before; i < all->count; i++) {
        complaints_end(&doc, &all->sides[i]->refusals);
        all->bad |= !is_planned(all->sides[i]);
    }
    document_close(&doc);
}

static int is_given(const work *all, int place)
{
    for (size_t i = 0; i < all->count; i++)
        if (all->sides[i]->wanted.place == place)
            return 1;
    return 0;
}

/* A side that is refused has its place too: the others keep their marks when it is mended. */
static void give_places(work *all)
{
    int next = 0;
    for (size_t i = 0; i < all->count; i++) {
        planned *side = all->sides[i];
        side->place = side->wanted.place;
        while (!side->place && next < TSIDE_MARK_PLACES)
            if (!is_given(all, ++next))
                side->place = next;
    }
}

void work_add_files(work *all, int count, char *const *names)
{
    for (int i = 0; i < count; i++)
        add_file(all, names[i]);
    give_places(all);
}

void work_free(work *all)
{
    for (size_t i = 0; i < all->count; i++) {
        request_free(&all->sides[i]->wanted);
        text_free(&all->sides[i]->refusals.lines);
        free(all->sides[i]->file);
        free(all->sides[i]->turns);
        free(all->sides[i]->choices);
        free(all->sides[i]);
    }
    free(all->sides);
}
