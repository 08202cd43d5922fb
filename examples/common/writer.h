/* SPDX-License-Identifier: MIT */
/* The machine's forms: JSON, members of objects and lists one a line; and the cells of CSV. */
#ifndef COMMON_WRITER_H
#define COMMON_WRITER_H

#include "job.h"

/* A text as a JSON string, with quotes; bytes that are no UTF-8 become "?". */
void add_json_string(text *out, const char *words);

/* The shortest number that reads back as the same double. */
void add_json_number(text *out, double value);

typedef struct writer {
    text *out;
    int depth, empty; /* empty: nothing in the innermost object or list yet */
} writer;

/* Begins a member; key is NULL in a list. */
void begin_member(writer *w, const char *key);
void open_bracket(writer *w, const char *key, char bracket);
void shut_bracket(writer *w, char bracket);

void put_string(writer *w, const char *key, const char *words);
void put_number(writer *w, const char *key, double value, const char *unit);
void put_whole(writer *w, const char *key, int value);

/* What applies of a structure, by its table, into the object that is open. */
void put_structure(writer *w, tside_kind kind, const void *structure);

/* The list "refused", of a line each. */
void put_refused(writer *w, const text *refusals);

/*
 * A cell of CSV: commas, quotes and line ends of a text are kept by quotes around it, and where a spreadsheet would
 * work it out as a formula, because it begins with = + - or @ and goes on, an apostrophe stands before it.
 */
void add_cell(text *out, const char *words, int first);

/* A cell of messages, with "; " between: a line each would break the row for simple readers. */
void add_refusals(text *out, const text *refusals);

/* Where a side comes from, and what it is called. */
void put_place(writer *w, const planned *side);

#endif
