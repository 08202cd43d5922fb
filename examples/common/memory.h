/* SPDX-License-Identifier: MIT */
/* Memory, or the end of the program: who asks for some need not ask whether he got it. */
#ifndef COMMON_MEMORY_H
#define COMMON_MEMORY_H

#include <stddef.h>

/* Says that there is no memory, and ends the program as refused. */
void end_without_memory(void);

void *take_memory(size_t size);
void *resize_memory(void *memory, size_t size);
char *copy_of(const char *words);

/* A list with room for one more of its elements, each of this size; room: for how many it has, 0 of a NULL list. */
void *grown(void *list, size_t count, size_t *room, size_t each);

#endif
