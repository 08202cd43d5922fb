/* SPDX-License-Identifier: MIT */
/* What a program says on standard error, and how it ends there: another host of the same sides says it elsewhere. */
#include <stdio.h>
#include <stdlib.h>

#include "command.h"
#include "memory.h"
#include "message.h"

void say(const char *words, ...)
{
    text line = {NULL, 0, 0};
    char *clean;
    va_list arguments;
    va_start(arguments, words);
    text_add_list(&line, words, arguments);
    va_end(arguments);
    clean = printable(text_of(&line));
    fprintf(stderr, "%s: %s\n", program_name, clean);
    free(clean);
    text_free(&line);
}

void end_without_memory(void)
{
    fprintf(stderr, "%s: out of memory\n", program_name); /* say() would need some */
    exit(EXIT_REFUSED);
}

void must(tside_status status, const tside_fault *fault)
{
    char sentence[512];
    if (status == TSIDE_OK)
        return;
    tside_fault_text(fault, sentence, sizeof sentence);
    say("%s", sentence);
    exit(EXIT_REFUSED);
}
