/* SPDX-License-Identifier: MIT */
/* The macros of statuses.h send what a call returns through here. */
#include "heard.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#ifndef TSIDE_HEARD
#define TSIDE_HEARD "tests/heard.txt"
#endif

enum { STATUSES = TSIDE_NOT_FOUND + 1 };

enum { HEARD = 1, HELD = 2 };

/* In this process. */
static struct {
    int calls, function;
    tside_status status;
} last;

/* Tests run in processes of their own: what they hear or hold for the first time they write to a file. */
static void note(int what)
{
    static char noted[HEARD_FUNCTIONS][STATUSES];
    FILE *file;
    if (noted[last.function][last.status] & what)
        return;
    noted[last.function][last.status] |= (char)what;
    file = fopen(TSIDE_HEARD, "a");
    if (file) {
        fprintf(file, "%d %d %d\n", last.function, (int)last.status, what);
        fclose(file);
    }
}

tside_status heard(int function, tside_status status)
{
    last.calls++;
    last.function = function;
    last.status = status;
    if (status != TSIDE_OK)
        note(HEARD);
    return status;
}

int heard_calls(void)
{
    return last.calls;
}

void heard_held(void)
{
    if (last.status != TSIDE_OK)
        note(HELD);
}

void heard_named(int calls, const char *words)
{
#define NAME(status) [(status)] = #status,
    static const char *const names[STATUSES] = {STATUS_NAMES};
    if (last.calls > calls && strstr(words, names[last.status]))
        heard_held();
}

static const char *name_of(int function)
{
#define FUNCTION(name) #name,
    static const char *const names[] = {FUNCTION_NAMES};
#undef FUNCTION
    return names[function];
}

/* The range of a number that is an argument: the ninth column of its record. 0 where there is no such record. */
static int find_range(const char *function, const char *argument, char *range, size_t size)
{
    FILE *records = fopen(TSIDE_RECORDS, "r");
    char line[4000], begins[200];
    int found = 0;
    snprintf(begins, sizeof begins, "argument\t%s\t%s\tdouble\t", function, argument);
    while (records && !found && fgets(line, sizeof line, records)) {
        const char *column = line;
        if (strncmp(line, begins, strlen(begins)))
            continue;
        for (int i = 1; i < 9 && column; i++)
            column = strchr(column, '\t') ? strchr(column, '\t') + 1 : NULL;
        if (!column)
            break;
        snprintf(range, size, "%.*s", (int)strcspn(column, "\t\n"), column);
        found = 1;
    }
    if (records)
        fclose(records);
    return found;
}

/* Whether a bound is the number behind a word of a range; where the range has no such word, or no number there, 1. */
static int is_behind(const char *word, const char *range, double bound)
{
    const char *at = strstr(range, word);
    char *end = NULL;
    const double number = at ? strtod(at + strlen(word), &end) : 0;
    return !at || end == at + strlen(word) || !(number < bound || number > bound);
}

int heard_range(const tside_fault *fault)
{
    char range[200];
    if (fault->status != TSIDE_OUT_OF_BOUNDS || !find_range(name_of(last.function), fault->field, range, sizeof range))
        return 1;
    switch (fault->relation) {
    case TSIDE_BELOW: return is_behind("from ", range, fault->bound) && !strstr(range, "above ");
    case TSIDE_NOT_ABOVE: return is_behind("above ", range, fault->bound) && !strstr(range, "from ");
    case TSIDE_ABOVE: return is_behind("to ", range, fault->bound);
    default: return 1;
    }
}

void heard_nothing(void)
{
    remove(TSIDE_HEARD);
}

static void recall(char was[HEARD_FUNCTIONS][STATUSES])
{
    FILE *file = fopen(TSIDE_HEARD, "r");
    int function, status, what;
    while (file && fscanf(file, "%d %d %d", &function, &status, &what) == 3)
        was[function][status] |= (char)what;
    if (file)
        fclose(file);
}

/* Why a pair is wrong, or NULL. */
static const char *wrong(int documented, int was)
{
    if (documented)
        return was & HELD ? NULL
               : was      ? "documented, and no assertion holds a call to it"
                          : "documented, and no test provokes it";
    return was ? "returned, and not documented" : NULL;
}

int heard_wrong(void)
{
#define STATUS(function, status) documented[HEARD_##function][status] = 1;
    static char documented[HEARD_FUNCTIONS][STATUSES], was[HEARD_FUNCTIONS][STATUSES];
    int count = 0;
    DOCUMENTED_STATUSES
    recall(was);
    for (int f = 0; f < HEARD_FUNCTIONS; f++)
        for (int s = TSIDE_OK + 1; s < STATUSES; s++) {
            const char *why = wrong(documented[f][s], was[f][s]);
            if (why) {
                printf("%s: \"%s\" is %s\n", name_of(f), tside_status_text(s), why);
                count++;
            }
        }
    return count;
}
