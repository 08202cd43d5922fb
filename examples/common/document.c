/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "document.h"
#include "locate.h"

enum { MOST_BYTES = 16 << 20 }; /* a job is a few kilobytes: more is no job */

/* One line to standard error, unless it has been said, and to the refusals. */
static void say(document *doc, text *refusals, const char *line)
{
    char *clean = printable(line);
    const char *before = text_of(&doc->said);
    const size_t length = strlen(clean);
    int again = 0;
    for (; *before; before = strchr(before, '\n') + 1)
        again |= !strncmp(before, clean, length) && before[length] == '\n';
    if (!again) {
        fprintf(stderr, "%s: %s\n", program_name, clean);
        text_add(&doc->said, "%s\n", clean);
    }
    text_add(refusals, "%s\n", clean);
    free(clean);
}

static void say_unreadable(document *doc, text *refusals, const char *why)
{
    text line = {NULL, 0, 0};
    text_add(&line, "%s: %s", doc->name, why);
    say(doc, refusals, text_of(&line));
    text_free(&line);
}

const char *read_whole(const char *name, text *content)
{
    const int standard = !strcmp(name, "-");
    FILE *file = standard ? stdin : fopen(name, "rb");
    const char *why = NULL;
    char part[8192];
    size_t count;
    if (!file)
        return strerror(errno);
    while (!why && (count = fread(part, 1, sizeof part, file)) > 0) {
        text_add_bytes(content, part, count);
        if (content->length > MOST_BYTES)
            why = "longer than 16 MiB: no file of sides or prices";
    }
    if (!why && ferror(file))
        why = strerror(errno);
    if (!standard)
        fclose(file);
    return why;
}

int document_open(document *doc, const char *name, text *refusals)
{
    const char *why;
    json_error_t error;
    *doc = (document){.name = name};
    why = read_whole(name, &doc->content);
    if (why) {
        say_unreadable(doc, refusals, why);
        return 0;
    }
    doc->root = json_loadb(text_of(&doc->content), doc->content.length, JSON_REJECT_DUPLICATES, &error);
    if (!doc->root) {
        text line = {NULL, 0, 0};
        text_add(&line, "%s:%d: column %d: %s", name, error.line > 0 ? error.line : 1, error.column > 0 ? error.column : 1, error.text);
        say(doc, refusals, text_of(&line));
        text_free(&line);
    }
    return doc->root != NULL;
}

void document_close(document *doc)
{
    json_decref(doc->root);
    text_free(&doc->content);
    text_free(&doc->said);
}

/* Puts "FILE:LINE: path: " before a complaint. */
static void add_place(text *line, const document *doc, const char *within, const char *path)
{
    const char *json = text_of(&doc->content);
    const size_t length = doc->content.length, outer = strlen(within);
    text full = {NULL, 0, 0};
    size_t own, shared = 0;
    int at, shared_at = 1;
    text_add(&full, "%s%s%s", within, *within && *path && *path != '[' ? "." : "", path);
    at = locate_line(json, length, text_of(&full), &own);
    if (!strncmp(within, "sides[", 6))
        shared_at = locate_line(json, length, path, &shared);
    if (shared + outer + 1 > own && shared > 0) {
        at = shared_at;
        text_cut(&full, 0);
        text_add(&full, "%s", path);
    }
    text_add(line, "%s:%d: %s%s", doc->name, at, text_of(&full), full.length ? ": " : "");
    text_free(&full);
}

void complain(document *doc, text *refusals, const char *within, const char *path, const char *format, ...)
{
    text line = {NULL, 0, 0};
    va_list arguments;
    add_place(&line, doc, within, path);
    va_start(arguments, format);
    text_add_list(&line, format, arguments);
    va_end(arguments);
    say(doc, refusals, text_of(&line));
    text_free(&line);
}
