/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "document.h"
#include "memory.h"
#include "message.h"

/* Whether this was said before of what sides share. */
static int is_said(document *doc, const char *line)
{
    const size_t length = strlen(line);
    for (const char *before = text_of(&doc->shared); *before; before = strchr(before, '\n') + 1)
        if (!strncmp(before, line, length) && before[length] == '\n')
            return 1;
    text_add(&doc->shared, "%s\n", line);
    return 0;
}

/* One line to standard error and to the refusals. */
static void add_complaint(document *doc, complaints *refusals, const text *line, int is_shared)
{
    char *clean = printable(text_of(line));
    if ((!is_shared || !is_said(doc, clean)) && doc->count++ < MOST_COMPLAINTS)
        say("%s", clean);
    if (refusals->count++ < MOST_COMPLAINTS)
        text_add(&refusals->lines, "%s\n", clean);
    free(clean);
}

static void add_left_out(text *line, const document *doc, size_t count)
{
    text_add(line, "%s: and %zu more", doc->name, count - MOST_COMPLAINTS);
}

int is_one_too_many(document *doc, complaints *refusals)
{
    const int is_full = refusals->count >= MOST_COMPLAINTS;
    doc->count += (size_t)is_full;
    refusals->count += (size_t)is_full;
    return is_full;
}

void complaints_end(const document *doc, complaints *refusals)
{
    text line = {NULL, 0, 0};
    char *clean;
    if (refusals->count <= MOST_COMPLAINTS)
        return;
    add_left_out(&line, doc, refusals->count);
    clean = printable(text_of(&line));
    text_add(&refusals->lines, "%s\n", clean);
    free(clean);
    text_free(&line);
}

static void say_unreadable(document *doc, complaints *refusals, const char *why)
{
    text line = {NULL, 0, 0};
    text_add(&line, "%s: %s", doc->name, why);
    add_complaint(doc, refusals, &line, 0);
    text_free(&line);
}

const char *after_mark(const text *content)
{
    return text_of(content) + (strncmp(text_of(content), "\xef\xbb\xbf", 3) ? 0 : 3);
}

int document_open(document *doc, const char *name, complaints *refusals)
{
    const char *why;
    json_error_t error;
    *doc = (document){.name = name};
    why = read_whole(name, &doc->content);
    if (why) {
        say_unreadable(doc, refusals, why);
        return 0;
    }
    doc->json = after_mark(&doc->content);
    doc->root = json_loadb(doc->json, doc->content.length - (size_t)(doc->json - text_of(&doc->content)),
                           JSON_REJECT_DUPLICATES, &error);
    if (!doc->root) {
        text line = {NULL, 0, 0};
        text_add(&line, "%s:%d: column %d: %s", name, error.line > 0 ? error.line : 1,
                 error.column > 0 ? error.column : 1, error.text);
        add_complaint(doc, refusals, &line, 0);
        text_free(&line);
    }
    return doc->root != NULL;
}

void document_close(document *doc)
{
    if (doc->count > MOST_COMPLAINTS) {
        text line = {NULL, 0, 0};
        add_left_out(&line, doc, doc->count);
        say("%s", text_of(&line));
        text_free(&line);
    }
    json_decref(doc->root);
    places_free(&doc->where);
    text_free(&doc->content);
    text_free(&doc->shared);
}

/* Puts "FILE:LINE: path: " before a complaint; returns 1 where it is about what sides share. */
static int add_place(text *line, document *doc, const char *within, const char *path)
{
    const size_t outer = strlen(within);
    text full = {NULL, 0, 0};
    size_t own, shared = 0;
    int at, shared_at = 1, is_shared;
    if (!doc->where.count)
        places_find(&doc->where, doc->json, doc->root);
    text_add(&full, "%s%s%s", within, *within && *path && *path != '[' ? "." : "", path);
    at = locate_line(&doc->where, doc->root, text_of(&full), &own);
    if (!strncmp(within, "sides[", 6))
        shared_at = locate_line(&doc->where, doc->root, path, &shared);
    is_shared = shared + outer + 1 > own && shared > 0;
    if (is_shared) {
        at = shared_at;
        text_cut(&full, 0);
        text_add(&full, "%s", path);
    }
    text_add(line, "%s:%d: %s%s", doc->name, at, text_of(&full), full.length ? ": " : "");
    text_free(&full);
    return is_shared;
}

void complain(document *doc, complaints *refusals, const char *within, const char *path, const char *format, ...)
{
    text line = {NULL, 0, 0};
    va_list arguments;
    int is_shared;
    if (is_one_too_many(doc, refusals))
        return;
    is_shared = add_place(&line, doc, within, path) || !*within;
    va_start(arguments, format);
    text_add_list(&line, format, arguments);
    va_end(arguments);
    add_complaint(doc, refusals, &line, is_shared);
    text_free(&line);
}
