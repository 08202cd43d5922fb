/* SPDX-License-Identifier: MIT */
/* In place of files and standard error. */
#include "programs.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

#include "command.h"
#include "document.h"
#include "fuzz.h"
#include "memory.h"
#include "message.h"

const char program_name[] = "fuzz";

static const uint8_t *content_at;
static size_t content_size, said;

void fuzz_content(const uint8_t *data, size_t size)
{
    content_at = data;
    content_size = size;
    said = 0;
}

size_t fuzz_said(void)
{
    return said;
}

const char *read_whole(const char *name, text *content)
{
    (void)name;
    text_add_bytes(content, (const char *)content_at, content_size);
    return NULL;
}

void say(const char *words, ...)
{
    char *shown;
    text made = {NULL, 0, 0};
    va_list arguments;
    va_start(arguments, words);
    text_add_list(&made, words, arguments);
    va_end(arguments);
    shown = printable(text_of(&made));
    fuzz_printable(shown, "what is said");
    free(shown);
    text_free(&made);
    said++;
}

void must(tside_status status, const tside_fault *fault)
{
    HOLDS(status == TSIDE_OK, "%s: refused, and was accepted before", fault->field);
}

void end_without_memory(void)
{
    fuzz_failed(__FILE__, __LINE__, "no memory");
}
