/* SPDX-License-Identifier: MIT */
/* One value of a side: a number, a count or a choice, from JSON. */
#ifndef COMMON_VALUE_H
#define COMMON_VALUE_H

#include <jansson.h>
#include <tunnelside.h>

#include "text.h"

/*
 * Each reads one value for a row and returns 1; or returns 0, with what is wrong with it added to why.
 * A JSON number is in the row's unit, and is refused where it stands among feet and has one; a text has its own unit;
 * of a tube's diameter or wall it may be a trade name.
 */
int read_number(tside_kind kind, const tside_field *row, const json_t *value, int among_feet, double *number,
                text *why);
int read_diameter(const char *words, double *number, text *why);
int read_wall(const char *words, double *number, text *why);
int read_quantity(const char *words, const char *unit, double *number, text *why);
int read_count(const json_t *value, int *count, text *why);
int read_choice(const tside_field *row, const json_t *value, int *choice, text *why);

#endif
