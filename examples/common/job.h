/* SPDX-License-Identifier: MIT */
/* All that one run has to do: the sides of all files, each read and planned, or refused. */
#ifndef COMMON_JOB_H
#define COMMON_JOB_H

#include "drives.h"
#include "read.h"
#include "units.h"

enum { ENDS = 2 }; /* the drive's, and the free one: tside_which_end */

/* A search that may find nothing. */
typedef struct found {
    int asked;
    tside_status status;
    tside_fault why; /* why nothing was found */
    double value;
} found;

/* What became of a drive of a list. */
typedef struct judged {
    tside_drive_choice choice;
    tside_fault why; /* of a refused one */
} judged;

/* One side, with what the library answers. */
typedef struct planned {
    char *file; /* printable */
    int place;  /* of which the marks of its pieces tell, from 1; 0 where no letters are left for it */
    request wanted;
    int is_read;         /* 1 where the file holds a good side, planned or not */
    complaints refusals; /* none where the side is planned */
    tside_plan plan;
    tside_turn *turns;
    int turn_count;
    found least_rise[ENDS];   /* of the eye, on an extender, or where a higher eye mends what is found */
    found smallest_bar;       /* place in its list, where there is one */
    found smallest_drive;     /* place in the list, where one was given */
    const drive_list *drives; /* that list, where it was searched, and what became of each of it */
    judged *choices;
    int item_count;
    tside_item items[TSIDE_ITEMS]; /* where the take-off is wanted */
    tside_fault no_take_off;       /* why a planned side has none */
} planned;

typedef struct work {
    planned **sides;
    size_t count, room;
    int take_off;             /* 1: take off every piece of each side too */
    int must_take;            /* 1: a side where that fails is refused */
    const drive_list *drives; /* of which the smallest is asked for each side, or NULL */
    int bad;                  /* 1 where anything was refused */
} work;

/*
 * Reads and plans the sides of all files, and gives each a place among the marks: that which its file gives, else the
 * next that no file gives.
 */
void work_add_files(work *all, int count, char *const *names);
void work_free(work *all);

/* Adds what the file calls a keep-out of an end, else "keep-out 2". */
void add_keep_out(text *words, const planned *side, int end, int index);

/* Whether what is found is about a keep-out, of which the finding has end and index. */
int is_of_keep_out(tside_finding_code code);

/* Whether a higher eye mends what is found. */
int is_mended_by_eye(tside_finding_code code);
/* Adds, where a search found it, which eye mends an end, and by which fields: "; an eye 1 ft 3 in above ...". */
void add_mend(text *words, pen *p, const planned *side, int end);

int is_planned(const planned *side);
const tside_end *end_asked(const planned *side, int end);
const tside_end_plan *end_answered(const planned *side, int end);

#endif
