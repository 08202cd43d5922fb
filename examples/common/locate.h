/* SPDX-License-Identifier: MIT */
/* Which line of a JSON text a path stands on: the parser tells the line of a syntax error only. */
#ifndef COMMON_LOCATE_H
#define COMMON_LOCATE_H

#include <jansson.h>

/*
 * Where a value stands: the line, from 1, of its key, or of an element's first character; first: the place of its first
 * member, the others follow.
 */
typedef struct json_place {
    size_t first;
    int line;
} json_place;

/* The places of all values of a document, the whole first. */
typedef struct json_places {
    json_place *all;
    size_t count, room;
} json_places;

/* Finds all places in one pass. json: the text that root was parsed from, with a closing zero. */
void places_find(json_places *found, const char *json, const json_t *root);
void places_free(json_places *found);

/*
 * The line of a path such as "sides[1].drive_end.guide.margin"; where the whole path is not there, of the deepest part
 * that is. matched: receives how many characters of the path were found.
 */
int locate_line(const json_places *found, const json_t *root, const char *path, size_t *matched);

#endif
