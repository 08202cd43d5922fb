/* SPDX-License-Identifier: MIT */
/*
 * What of jansson reads sides, for WebAssembly, where it is not packaged: values that JavaScript has parsed, and hands
 * over one by one. Names and meaning are jansson's; what cannot come from there, such as an integer, is not here.
 */
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "memory.h"

/* Of an object or a list; its key is its end, so that jansson's macro finds it by that. */
typedef struct member {
    json_t *value;
    size_t place; /* among the others, from 0 */
    char key[];
} member;

typedef struct holder {
    json_t json; /* first: a json_t is the start of one of these */
    char *text;
    double number;
    member **members;
    size_t count, room;
} holder;

static holder *of(const json_t *json)
{
    return (holder *)(void *)(size_t)json;
}

static json_t *made(json_type type)
{
    holder *one = take_memory(sizeof *one);
    *one = (holder){.json = {type, 1}};
    return &one->json;
}

json_t *json_object(void)
{
    return made(JSON_OBJECT);
}

json_t *json_array(void)
{
    return made(JSON_ARRAY);
}

json_t *json_string(const char *words)
{
    json_t *one = made(JSON_STRING);
    of(one)->text = copy_of(words);
    return one;
}

json_t *json_real(double number)
{
    json_t *one = made(JSON_REAL);
    of(one)->number = number;
    return one;
}

json_t *json_null(void)
{
    return made(JSON_NULL);
}

json_t *json_true(void)
{
    return made(JSON_TRUE);
}

void json_delete(json_t *json)
{
    holder *one = of(json);
    for (size_t i = 0; i < one->count; i++) {
        json_decref(one->members[i]->value);
        free(one->members[i]);
    }
    free(one->members);
    free(one->text);
    free(one);
}

static int add(json_t *json, const char *key, json_t *value)
{
    holder *one = of(json);
    const size_t size = strlen(key) + 1;
    member *more = take_memory(sizeof *more + size);
    more->value = value;
    more->place = one->count;
    memcpy(more->key, key, size);
    one->members = grown(one->members, one->count, &one->room, sizeof *one->members);
    one->members[one->count++] = more;
    return 0;
}

static member *found(const json_t *json, const char *key)
{
    for (size_t i = 0; json_is_object(json) && i < of(json)->count; i++)
        if (!strcmp(of(json)->members[i]->key, key))
            return of(json)->members[i];
    return NULL;
}

int json_object_set_new(json_t *json, const char *key, json_t *value)
{
    member *one = found(json, key);
    if (!one)
        return add(json, key, value);
    json_decref(one->value);
    one->value = value;
    return 0;
}

int json_array_append_new(json_t *json, json_t *value)
{
    return add(json, "", value);
}

json_t *json_object_get(const json_t *json, const char *key)
{
    const member *one = found(json, key);
    return one ? one->value : NULL;
}

size_t json_object_size(const json_t *json)
{
    return json_is_object(json) ? of(json)->count : 0;
}

size_t json_array_size(const json_t *json)
{
    return json_is_array(json) ? of(json)->count : 0;
}

json_t *json_array_get(const json_t *json, size_t i)
{
    return i < json_array_size(json) ? of(json)->members[i]->value : NULL;
}

const char *json_string_value(const json_t *json)
{
    return json_is_string(json) ? of(json)->text : NULL;
}

double json_number_value(const json_t *json)
{
    return json_is_number(json) ? of(json)->number : 0;
}

void *json_object_iter(json_t *json)
{
    return json_object_size(json) ? of(json)->members[0] : NULL;
}

void *json_object_iter_next(json_t *json, void *iter)
{
    const size_t next = ((member *)iter)->place + 1;
    return next < of(json)->count ? of(json)->members[next] : NULL;
}

const char *json_object_iter_key(void *iter)
{
    return iter ? ((member *)iter)->key : NULL;
}

json_t *json_object_iter_value(void *iter)
{
    return ((member *)iter)->value;
}

void *json_object_key_to_iter(const char *key)
{
    return (char *)(size_t)key - offsetof(member, key);
}

json_t *json_deep_copy(const json_t *json)
{
    const holder *from = of(json);
    json_t *copy;
    if (!json)
        return NULL;
    copy = made(json_typeof(json));
    of(copy)->number = from->number;
    of(copy)->text = from->text ? copy_of(from->text) : NULL;
    for (size_t i = 0; i < from->count; i++)
        add(copy, from->members[i]->key, json_deep_copy(from->members[i]->value));
    return copy;
}

int json_object_update_recursive(json_t *json, json_t *other)
{
    for (size_t i = 0; i < json_object_size(other); i++) {
        const member *more = of(other)->members[i];
        json_t *there = json_object_get(json, more->key);
        if (json_is_object(there) && json_is_object(more->value))
            json_object_update_recursive(there, more->value);
        else
            json_object_set_new(json, more->key, json_incref(more->value));
    }
    return 0;
}
