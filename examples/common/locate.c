/* SPDX-License-Identifier: MIT */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "locate.h"

/* The text has been parsed before, so it is well-formed; the end is watched all the same. */
typedef struct scan {
    const char *at, *end;
    int line;
} scan;

static void skip_blanks(scan *s)
{
    for (; s->at < s->end && strchr(" \t\r\n", *s->at); s->at++)
        s->line += *s->at == '\n';
}

/* Steps over the character if it is the next one after blanks. */
static int take(scan *s, char wanted)
{
    skip_blanks(s);
    if (s->at >= s->end || *s->at != wanted)
        return 0;
    s->at++;
    return 1;
}

/* Steps over a string, from quote to quote. */
static void skip_string(scan *s)
{
    for (s->at++; s->at < s->end && *s->at != '"'; s->at++)
        s->at += *s->at == '\\';
    s->at += s->at < s->end;
}

/* Steps over a value: nested ones by counting brackets. */
static void skip_value(scan *s)
{
    int depth = 0;
    skip_blanks(s);
    while (s->at < s->end) {
        if (!depth && strchr(",]}", *s->at))
            return;
        if (*s->at == '"') {
            skip_string(s);
            continue;
        }
        depth += *s->at == '{' || *s->at == '[';
        depth -= *s->at == '}' || *s->at == ']';
        s->line += *s->at == '\n';
        s->at++;
    }
}

/* How many characters of the path a key takes, or 0 where the path does not go on with it. The key still has its quotes and escapes. */
static size_t key_in_path(const char *quoted, size_t length, const char *path)
{
    json_t *key = json_loadb(quoted, length, JSON_DECODE_ANY, NULL);
    size_t dot = *path == '.', taken = 0;
    if (json_is_string(key)) {
        size_t size = json_string_length(key);
        if (!strncmp(path + dot, json_string_value(key), size) && strchr(".[", path[dot + size]))
            taken = dot + size;
    }
    json_decref(key);
    return taken;
}

/* The number in "[12]" and how many characters it takes; 0 characters where there is no index. */
static size_t index_in_path(const char *path, long *index)
{
    char *after;
    if (*path != '[')
        return 0;
    *index = strtol(path + 1, &after, 10);
    return *after == ']' ? (size_t)(after + 1 - path) : 0;
}

/* Goes one step down the path; returns the characters it took, with the scan at the value found, or 0. line: where key or element stands. */
static size_t step(scan *s, const char *path, int *line)
{
    long index = 0;
    size_t taken = index_in_path(path, &index);
    if (taken && take(s, '[')) {
        for (; index > 0; index--) {
            skip_value(s);
            if (!take(s, ','))
                return 0;
        }
        skip_blanks(s);
        *line = s->line;
        return s->at < s->end && *s->at != ']' ? taken : 0;
    }
    if (!take(s, '{'))
        return 0;
    do {
        const char *key;
        skip_blanks(s);
        key = s->at;
        if (s->at >= s->end || *s->at != '"')
            return 0;
        *line = s->line;
        skip_string(s);
        taken = key_in_path(key, (size_t)(s->at - key), path);
        take(s, ':');
        if (taken)
            return taken;
        skip_value(s);
    } while (take(s, ','));
    return 0;
}

int locate_line(const char *json, size_t length, const char *path, size_t *matched)
{
    scan s = {json, json + length, 1};
    int line, best;
    size_t taken;
    skip_blanks(&s);
    best = s.line;
    *matched = 0;
    while (path[*matched] && (taken = step(&s, path + *matched, &line)) > 0) {
        *matched += taken;
        best = line;
    }
    return best;
}
