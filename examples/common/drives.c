/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "drives.h"
#include "memory.h"
#include "read.h"

enum { MOST_DRIVES = 1000 }; /* as tside_drive_smallest says */

static void read_one(drive_list *list, document *doc, const json_t *json, complaints *refusals)
{
    char within[24], *name;
    tside_drive *drive = list->drive + list->count;
    tside_fault fault;
    snprintf(within, sizeof within, "drives[%d]", list->count);
    name = read_drive(doc, json, within, drive, refusals);
    if (!*name) {
        free(name);
        name = take_memory(sizeof within);
        snprintf(name, sizeof within, "number %d", list->count + 1);
    }
    list->name[list->count++] = name;
    if (!refusals->count && !drive->rated_torque_given)
        complain(doc, refusals, within, "rated_torque", "missing: it is what drives are compared by");
    if (!refusals->count && tside_check(TSIDE_KIND_DRIVE, drive, &fault) != TSIDE_OK)
        refuse_by_library(doc, refusals, within, &fault, speaks_feet(doc->root) || speaks_pounds(doc->root), "");
}

static void read_list(drive_list *list, document *doc, complaints *refusals)
{
    const json_t *all = json_object_get(doc->root, "drives");
    const size_t count = json_array_size(all);
    const char *key;
    json_t *value;
    if (!count || count > MOST_DRIVES) {
        complain(doc, refusals, "", "drives", "wanted a list of 1 to %d drives", MOST_DRIVES);
        return;
    }
    json_object_foreach(doc->root, key, value) if (strcmp(key, "drives") && strcmp(key, "note"))
        complain(doc, refusals, "", key, "no such field; beside drives there may be a note");
    list->drive = take_memory(count * sizeof *list->drive);
    list->name = take_memory(count * sizeof *list->name);
    for (size_t i = 0; i < count; i++)
        read_one(list, doc, json_array_get(all, i), refusals);
}

int drives_read(drive_list *list, const char *file)
{
    complaints refusals = {{NULL, 0, 0}, 0};
    document doc;
    *list = (drive_list){NULL, NULL, 0};
    if (document_open(&doc, file, &refusals))
        read_list(list, &doc, &refusals);
    document_close(&doc);
    text_free(&refusals.lines);
    return !refusals.count;
}

void drives_free(drive_list *list)
{
    for (int i = 0; i < list->count; i++)
        free(list->name[i]);
    free(list->name);
    free(list->drive);
}
