/* SPDX-License-Identifier: MIT */
/* Going through a structure by its table. */
#ifndef COMMON_WALK_H
#define COMMON_WALK_H

#include <tunnelside.h>

/* What is done with each number, count and choice that applies: its path from the structure, its row, and itself. */
typedef void walk_leaf(void *context, const char *path, const tside_field *row, const void *member);

/*
 * Visits the fields that apply, in the tables' order, of nested structures too, and of those elements that a list has.
 */
void walk(tside_kind kind, const void *structure, walk_leaf *leaf, void *context);

#endif
