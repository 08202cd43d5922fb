/* SPDX-License-Identifier: MIT */
/* JSON: members of objects and lists, one a line. */
#ifndef COMMON_MEMBERS_H
#define COMMON_MEMBERS_H

#include "text.h"

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
void put_flag(writer *w, const char *key, int flag);
void put_whole(writer *w, const char *key, int value);

/*
 * Begins and ends a document: an object of program, version and complete, which is false where something that was asked
 * for is refused; then what was asked for.
 */
writer open_document(text *out, int complete);
void shut_document(writer *w);

#endif
