/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "locate.h"
#include "memory.h"

/*
 * The text has been parsed before, so it is well-formed, and the parser keeps members in the order in which they stand:
 * text and values are gone through side by side, and the text is looked at for its line ends alone.
 */
typedef struct scan {
    const char *at;
    int line;
} scan;

static void skip_blanks(scan *s)
{
    for (; *s->at && strchr(" \t\r\n", *s->at); s->at++)
        s->line += *s->at == '\n';
}

static void skip_string(scan *s)
{
    for (s->at++; *s->at && *s->at != '"'; s->at++)
        s->at += *s->at == '\\' && s->at[1];
    s->at += *s->at == '"';
}

/* Steps over what stands between values: one of "{[:,]}". */
static void skip_mark(scan *s)
{
    skip_blanks(s);
    s->at += *s->at && strchr("{[:,]}", *s->at);
}

static size_t add_places(json_places *found, size_t count)
{
    const size_t first = found->count;
    for (; found->count < first + count; found->count++)
        found->all = grown(found->all, found->count, &found->room, sizeof *found->all);
    return first;
}

static void find_inside(json_places *found, scan *s, const json_t *value, size_t own);

/* The next member's place, with the scan before its key or, in a list, its value. */
static void find_member(json_places *found, scan *s, const json_t *value, size_t own, int has_key)
{
    skip_blanks(s);
    found->all[own].first = 0;
    found->all[own].line = s->line;
    if (has_key) {
        skip_string(s);
        skip_mark(s);
    }
    find_inside(found, s, value, own);
    skip_mark(s); /* the comma, or the closing bracket */
}

/* Steps over a value, and finds the places of its members. */
static void find_inside(json_places *found, scan *s, const json_t *value, size_t own)
{
    const size_t count = json_is_object(value) ? json_object_size(value) : json_array_size(value);
    size_t at = add_places(found, count);
    const char *key;
    json_t *member;
    skip_blanks(s);
    found->all[own].first = at;
    if (json_is_string(value)) {
        skip_string(s);
    } else if (!json_is_object(value) && !json_is_array(value)) {
        s->at += strcspn(s->at, ",]} \t\r\n");
    } else {
        skip_mark(s);
        json_object_foreach((json_t *)value, key, member) find_member(found, s, member, at++, 1);
        for (size_t i = 0; i < json_array_size(value); i++)
            find_member(found, s, json_array_get(value, i), at++, 0);
        if (!count)
            skip_mark(s);
    }
}

void places_find(json_places *found, const char *json, const json_t *root)
{
    scan s = {json, 1};
    find_member(found, &s, root, add_places(found, 1), 0);
}

void places_free(json_places *found)
{
    free(found->all);
    *found = (json_places){NULL, 0, 0};
}

/* The number in "[12]" and how many characters it takes; 0 characters where there is no index. */
static size_t index_in_path(const char *path, size_t *index)
{
    char *after;
    if (*path != '[')
        return 0;
    *index = strtoul(path + 1, &after, 10);
    return *after == ']' ? (size_t)(after + 1 - path) : 0;
}

/* How many characters of the path a key takes, or 0 where the path does not go on with it. */
static size_t key_in_path(const char *key, const char *path)
{
    const size_t dot = *path == '.', size = strlen(key);
    return !strncmp(path + dot, key, size) && strchr(".[", path[dot + size]) ? dot + size : 0;
}

/*
 * Goes one step down the path; returns the characters it took, or 0. value, nth: receive the member, and which of its
 * parent's it is.
 */
static size_t step(const json_t **value, const char *path, size_t *nth)
{
    const char *key;
    json_t *member;
    size_t taken = index_in_path(path, nth);
    if (taken) {
        *value = json_array_get(*value, *nth);
        return *value ? taken : 0;
    }
    *nth = 0;
    json_object_foreach((json_t *)*value, key, member)
    {
        taken = key_in_path(key, path);
        if (taken) {
            *value = member;
            return taken;
        }
        ++*nth;
    }
    return 0;
}

int locate_line(const json_places *found, const json_t *root, const char *path, size_t *matched)
{
    size_t taken, nth, own = 0;
    *matched = 0;
    while (path[*matched] && (taken = step(&root, path + *matched, &nth)) > 0) {
        *matched += taken;
        own = found->all[own].first + nth;
    }
    return found->all[own].line;
}
