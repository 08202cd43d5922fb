/* SPDX-License-Identifier: MIT */
/* Whole files. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "document.h"
#include "memory.h"

enum { MOST_BYTES = 16 << 20 }; /* a job is a few kilobytes: more is no job */

/* Why a file cannot be read: for want of memory is no fault of the file's. */
static const char *why_unread(void)
{
    if (errno == ENOMEM)
        end_without_memory();
    return strerror(errno);
}

const char *read_whole(const char *name, text *content)
{
    const int standard = !strcmp(name, "-");
    FILE *file = standard ? stdin : fopen(name, "rb");
    const char *why = NULL;
    char part[8192];
    size_t count;
    if (!file)
        return why_unread();
    while (!why && (count = fread(part, 1, sizeof part, file)) > 0) {
        text_add_bytes(content, part, count);
        if (content->length > MOST_BYTES)
            why = "longer than 16 MiB: no file of sides or prices";
    }
    if (!why && ferror(file))
        why = why_unread();
    if (!standard)
        fclose(file);
    return why;
}
