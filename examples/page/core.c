/* SPDX-License-Identifier: MIT */
/*
 * The programs' sheet in a page: what tunnelside-plan reads, plans and writes, with memory in place of files.
 * JavaScript makes the values of a file (values.c), asks for the sheet, and takes the texts.
 */
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "core.h"
#include "document.h"
#include "html.h"
#include "job.h"
#include "memory.h"
#include "message.h"
#include "questions.h"
#include "sheet.h"
#include "writer.h"

SHOWN void *room(size_t size);
SHOWN void give_back(void *memory);
SHOWN json_t *new_object(void);
SHOWN json_t *new_list(void);
SHOWN json_t *new_text(const char *words);
SHOWN json_t *new_number(double number);
SHOWN json_t *new_other(int is_null);
SHOWN void put_member(json_t *object, const char *key, json_t *value);
SHOWN void put_element(json_t *list, json_t *value);
SHOWN const char *plan_sides(json_t *root, const char *source);
SHOWN const char *sheets(int units);
SHOWN const char *what_was_said(void);

const char program_name[] = "page";

/* What a call leaves, until the next one. */
static text state, paged, complaints_said;
static work all;               /* the sides planned last */
static json_t *given;          /* what JavaScript has parsed */
static const char *given_from; /* of that text, in which a refusal's line is found */

/* --- what programs do otherwise --- */

void say(const char *words, ...)
{
    va_list arguments;
    va_start(arguments, words);
    text_add_list(&complaints_said, words, arguments);
    va_end(arguments);
    text_add(&complaints_said, "\n");
}

void end_without_memory(void)
{
    abort();
}

void must(tside_status status, const tside_fault *fault)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(fault, sentence, sizeof sentence);
    say("%s", sentence);
    abort();
}

const char *read_whole(const char *name, text *content)
{
    (void)name;
    text_add(content, "%s", given_from);
    return NULL;
}

json_t *json_loadb(const char *buffer, size_t size, size_t flags, json_error_t *error)
{
    (void)buffer;
    (void)size;
    (void)flags;
    memset(error, 0, sizeof *error);
    return json_incref(given);
}

/* --- values, one by one --- */

void *room(size_t size)
{
    return take_memory(size);
}

void give_back(void *memory)
{
    free(memory);
}

json_t *new_object(void)
{
    return json_object();
}

json_t *new_list(void)
{
    return json_array();
}

json_t *new_text(const char *words)
{
    return json_string(words);
}

json_t *new_number(double number)
{
    return json_real(number);
}

json_t *new_other(int is_null)
{
    return is_null ? json_null() : json_true();
}

void put_member(json_t *object, const char *key, json_t *value)
{
    json_object_set_new(object, key, value);
}

void put_element(json_t *list, json_t *value)
{
    json_array_append_new(list, value);
}

/* --- which questions are in use --- */

/* Whether a path's field applies, with all groups that hold it. */
static int is_in_use(const tside_side *side, const char *path)
{
    text part = {NULL, 0, 0};
    size_t holder = 0;
    int in_use = 1;
    for (size_t end = strcspn(path, ".");; end += 1 + strcspn(path + end + 1, ".")) {
        tside_place place;
        text_cut(&part, 0);
        text_add_bytes(&part, path, end);
        if (tside_field_find(TSIDE_KIND_SIDE, text_of(&part), &place, NULL) != TSIDE_OK)
            break;
        in_use = in_use && tside_field_applies(place.field, (const char *)side + holder);
        holder = place.offset;
        if (!path[end])
            break;
    }
    text_free(&part);
    return in_use;
}

static void put_in_use(writer *w, const tside_side *side)
{
    const question *one;
    open_bracket(w, "in_use", '[');
    for (int i = 0; (one = question_at(i)) != NULL; i++)
        if (is_in_use(side, one->path))
            put_string(w, NULL, one->path);
    shut_bracket(w, ']');
}

/* What is told of a plan at every stroke. */
static void put_told(writer *w, const planned *side)
{
    int stops = 0;
    if (!is_planned(side))
        return;
    for (int i = 0; i < side->plan.finding_count; i++)
        stops += tside_finding_stops((int)side->plan.findings[i].code);
    put_number(w, "turns", side->plan.drive_turns, "turn");
    put_whole(w, "stops", stops);
}

static void write_state(text *out)
{
    writer w = open_document(out, !all.bad);
    open_bracket(&w, "sides", '[');
    for (size_t i = 0; i < all.count; i++) {
        const planned *side = all.sides[i];
        open_bracket(&w, NULL, '{');
        put_string(&w, "within", side->wanted.within);
        put_flag(&w, "planned", is_planned(side));
        put_refused(&w, &side->refusals.lines);
        put_in_use(&w, &side->wanted.side);
        put_told(&w, side);
        shut_bracket(&w, '}');
    }
    shut_bracket(&w, ']');
    shut_document(&w);
}

/* --- sides --- */

/*
 * Reads and plans what stands in a file, whose values it takes over; source: the text they were parsed from. Of each
 * side what was refused and which questions are in use, as JSON.
 */
const char *plan_sides(json_t *root, const char *source)
{
    char name[] = "", *names[] = {name};
    work_free(&all);
    all = (work){.take_off = 1};
    text_free(&state);
    text_free(&complaints_said);
    given = root;
    given_from = source;
    work_add_files(&all, 1, names);
    json_decref(given);
    given = NULL;
    write_state(&state);
    return text_of(&state);
}

/* Their sheets, as HTML. */
const char *sheets(int units_wanted)
{
    papers made = sheets_of_all(&all, (units)units_wanted, 1);
    text_free(&paged);
    print_html(&paged, SHEET_CALLED, &made);
    papers_free(&made);
    return text_of(&paged);
}

const planned *side_planned(int place)
{
    return place >= 0 && (size_t)place < all.count && is_planned(all.sides[place]) ? all.sides[place] : NULL;
}

const work *work_planned(void)
{
    return &all;
}

text *said(void)
{
    return &complaints_said;
}

const char *what_was_said(void)
{
    return text_of(&complaints_said);
}
