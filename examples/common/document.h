/* SPDX-License-Identifier: MIT */
/* A file of sides: its text, what the parser made of it, and complaints about it with file, line and path. */
#ifndef COMMON_DOCUMENT_H
#define COMMON_DOCUMENT_H

#include <jansson.h>

#include "text.h"

typedef struct document {
    const char *name; /* as on the command line; "-" is standard input */
    text content;
    json_t *root;     /* NULL where the text is no JSON */
    text said;        /* every complaint so far, one a line */
} document;

/* Reads a whole file, or standard input for "-"; returns NULL, or why it cannot. */
const char *read_whole(const char *name, text *content);

/* Reads and parses; returns 0, having complained, where that fails. Close it in either case. */
int document_open(document *doc, const char *name, text *refusals);
void document_close(document *doc);

/*
 * Says on standard error, once, "PROGRAM: FILE:LINE: path: what", and adds "FILE:LINE: path: what" as a line to refusals.
 * within: path of the side in the document, "" for the whole; path: within the side. What a job's side does not have itself is
 * looked for among what its sides share.
 */
void complain(document *doc, text *refusals, const char *within, const char *path, const char *format, ...) LIKE_PRINTF(5, 6);

#endif
