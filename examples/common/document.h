/* SPDX-License-Identifier: MIT */
/* A file of sides: its text, what the parser made of it, and complaints about it with file, line and path. */
#ifndef COMMON_DOCUMENT_H
#define COMMON_DOCUMENT_H

#include <jansson.h>

#include "locate.h"
#include "text.h"

/* Of each file no more are said, and of each side no more are kept: the others are counted. */
enum { MOST_COMPLAINTS = 100 };

/* What is wrong with a side. */
typedef struct complaints {
    text lines; /* of the first ones, one each */
    size_t count;
} complaints;

typedef struct document {
    const char *name; /* as on the command line; "-" is standard input */
    text content;
    const char *json;  /* the content after a byte order mark */
    json_t *root;      /* NULL where the text is no JSON */
    json_places where; /* of all values; none before the first complaint */
    text shared;       /* what was said of what a job's sides share, one a line: each of them has it to say */
    size_t count;      /* complaints so far, and the shared ones once */
} document;

/* Reads a whole file, or standard input for "-"; returns NULL, or why it cannot. */
const char *read_whole(const char *name, text *content);

/* A text from its first character on, after a byte order mark if it has one. */
const char *after_mark(const text *content);

/* Reads and parses; returns 0, having complained, where that fails. Close it in either case. */
int document_open(document *doc, const char *name, complaints *refusals);

/* Says how many complaints were left out. */
void document_close(document *doc);

/* Counts one more complaint where the side has so many that it would not be kept: nobody need work it out. */
int is_one_too_many(document *doc, complaints *refusals);

/* Ends the lines with how many were left out. */
void complaints_end(const document *doc, complaints *refusals);

/*
 * Says on standard error, once, "PROGRAM: FILE:LINE: path: what", and adds "FILE:LINE: path: what" as a line to
 * refusals. within: path of the side in the document, "" for the whole; path: within the side. What a job's side does
 * not have itself is looked for among what its sides share.
 */
void complain(document *doc, complaints *refusals, const char *within, const char *path, const char *format, ...)
    LIKE_PRINTF(5, 6);

#endif
