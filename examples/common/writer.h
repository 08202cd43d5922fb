/* SPDX-License-Identifier: MIT */
/* The machine's forms: a side's part of JSON, and the cells of CSV. */
#ifndef COMMON_WRITER_H
#define COMMON_WRITER_H

#include "job.h"
#include "members.h"

/* What applies of a structure, by its table, into the object that is open. */
void put_structure(writer *w, tside_kind kind, const void *structure);

/* The same of a side's plan, with what the file calls the keep-outs. */
void put_plan(writer *w, const planned *side);

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
