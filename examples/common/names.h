/* SPDX-License-Identifier: MIT */
/* Names of fields: which row a name means, and which name was meant. */
#ifndef COMMON_NAMES_H
#define COMMON_NAMES_H

#include <tunnelside.h>

#include "text.h"

/* Texts that a structure's object may have beside the library's fields, such as a side's name. Ends with NULL. */
const char *const *texts_beside(tside_kind kind);

/* Of a side's the letters that begin the marks of its pieces. */
#define MARK "mark"

/* And the object of tolerances that a side may have. */
#define TOLERANCES "tolerances"

/* And the object of what the take-off must know beside the side: tside_fittings. */
#define FITTINGS "fittings"

/*
 * The row of this name that applies as the structure's choices stand; else, or without a structure, the first of this
 * name; NULL where there is none.
 */
const tside_field *row_named(tside_kind kind, const char *name, const void *structure);

/*
 * Adds what an unknown name may have meant: "no such field; did you mean \"width\"?", or, where nothing is like it,
 * which there are. beside: 1 where what may stand
 * beside the fields is a name too.
 */
void add_meant(text *t, tside_kind kind, const char *name, int beside);

/* A number or a count that stands in a structure. */
double number_of(const tside_field *row, const void *member);

/* The text of a choice that stands in a structure. */
const char *choice_text(const tside_field *row, int value);

/* Adds "used only while hung is on_extender or on_hip", for a row with a choice it applies to. */
void add_condition(text *t, tside_kind kind, const tside_field *row);

/* Which group of the side an end is: "drive_end", as paths begin. */
const char *end_group(int end);

/* Whether a field is a hole's diameter, which people know by its drill's name. */
int is_hole(const tside_field *row);

#endif
