/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "memory.h"

void *resize_memory(void *memory, size_t size)
{
    void *resized = realloc(memory, size ? size : 1);
    if (!resized)
        end_without_memory();
    return resized;
}

void *take_memory(size_t size)
{
    return resize_memory(NULL, size);
}

char *copy_of(const char *words)
{
    size_t size = strlen(words) + 1;
    return memcpy(take_memory(size), words, size);
}

void *grown(void *list, size_t count, size_t *room, size_t each)
{
    if (count < *room)
        return list;
    *room = *room ? 2 * *room : 16;
    return resize_memory(list, *room * each);
}
