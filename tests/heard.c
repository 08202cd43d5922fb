/* SPDX-License-Identifier: MIT */
/* The macros of statuses.h send what a call returns through here. */
#include "heard.h"

#include <stdio.h>
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
#define FUNCTION(name) #name,
    static const char *const names[] = {FUNCTION_NAMES};
#define STATUS(function, status) documented[HEARD_##function][status] = 1;
    static char documented[HEARD_FUNCTIONS][STATUSES], was[HEARD_FUNCTIONS][STATUSES];
    int count = 0;
    DOCUMENTED_STATUSES
    recall(was);
    for (int f = 0; f < HEARD_FUNCTIONS; f++)
        for (int s = TSIDE_OK + 1; s < STATUSES; s++) {
            const char *why = wrong(documented[f][s], was[f][s]);
            if (why) {
                printf("%s: \"%s\" is %s\n", names[f], tside_status_text(s), why);
                count++;
            }
        }
    return count;
}
