/* SPDX-License-Identifier: MIT */
/* Which line of a JSON text a path stands on: the parser tells the line of a syntax error only. */
#ifndef COMMON_LOCATE_H
#define COMMON_LOCATE_H

#include <stddef.h>

/*
 * The line, from 1, of a path such as "sides[1].drive_end.guide.margin" in a well-formed JSON text: of its key, or of its element's first character;
 * where the whole path is not there, of the deepest part that is. matched: receives how many characters of the path were found.
 */
int locate_line(const char *json, size_t length, const char *path, size_t *matched);

#endif
