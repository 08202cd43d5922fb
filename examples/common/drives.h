/* SPDX-License-Identifier: MIT */
/* A list of drives to choose of: {"drives": [...]}, each with the keys of a side's drive, and a name. */
#ifndef COMMON_DRIVES_H
#define COMMON_DRIVES_H

#include <tunnelside.h>

typedef struct drive_list {
    tside_drive *drive;
    char **name; /* of each, printable; "number 3" where the file gives none */
    int count;
} drive_list;

/* Reads a file of them; returns 1, or 0 having complained. Free the list in either case. */
int drives_read(drive_list *list, const char *file);
void drives_free(drive_list *list);

#endif
