/* SPDX-License-Identifier: MIT */
/* Every test includes statuses.h, by a flag of the compiler, whose macros send what a call returns through here. */
#include "heard.h"

#include <stdio.h>

#ifndef TSIDE_HEARD
#define TSIDE_HEARD "tests/heard.txt"
#endif

enum { STATUSES = TSIDE_NOT_FOUND + 1 };

/* Tests run in processes of their own: what they hear for the first time they write to a file. */
tside_status heard(int function, tside_status status)
{
    static char seen[HEARD_FUNCTIONS][STATUSES];
    FILE *file;
    if (seen[function][status])
        return status;
    seen[function][status] = 1;
    file = fopen(TSIDE_HEARD, "a");
    if (file) {
        fprintf(file, "%d %d\n", function, (int)status);
        fclose(file);
    }
    return status;
}

void heard_nothing(void)
{
    remove(TSIDE_HEARD);
}

static void recall(char was_heard[HEARD_FUNCTIONS][STATUSES])
{
    FILE *file = fopen(TSIDE_HEARD, "r");
    int function, status;
    while (file && fscanf(file, "%d %d", &function, &status) == 2)
        was_heard[function][status] = 1;
    if (file)
        fclose(file);
}

int heard_wrong(void)
{
#define FUNCTION(name) #name,
    static const char *const names[] = {FUNCTION_NAMES};
#define STATUS(function, status) documented[HEARD_##function][status] = 1;
    static char documented[HEARD_FUNCTIONS][STATUSES], was_heard[HEARD_FUNCTIONS][STATUSES];
    int wrong = 0;
    DOCUMENTED_STATUSES
    recall(was_heard);
    for (int f = 0; f < HEARD_FUNCTIONS; f++)
        for (int s = TSIDE_OK + 1; s < STATUSES; s++)
            /* that an answer is no finite number any function may say: see tside_status */
            if (documented[f][s] != was_heard[f][s] && !(s == TSIDE_NOT_MODELLED && was_heard[f][s])) {
                printf("%s: \"%s\" is %s\n", names[f], tside_status_text(s),
                       documented[f][s] ? "documented, and no test provokes it" : "returned, and not documented");
                wrong++;
            }
    return wrong;
}
