/* SPDX-License-Identifier: MIT */
/* Parts of the caller's work buffer. */
#ifndef TUNNELSIDE_ARENA_H
#define TUNNELSIDE_ARENA_H

#include <stddef.h>

/* Gives out parts of a buffer; without one it counts only. */
typedef struct tside_i_arena {
    char *base;
    size_t used;
} tside_i_arena;

static inline void *tside_i_part_of(tside_i_arena *from, size_t count, size_t size)
{
    void *part = from->base ? from->base + from->used : NULL;
    from->used += (count * size + 15) / 16 * 16;
    return part;
}

/* Lets a pointer point to so many of what it points to. */
#define PART(from, count, pointer) (*(pointer) = tside_i_part_of(from, (size_t)(count), sizeof **(pointer)))

#endif
