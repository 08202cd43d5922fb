/* SPDX-License-Identifier: MIT */
/* A side, from JSON into the library's structure, by the library's own tables. */
#ifndef COMMON_READ_H
#define COMMON_READ_H

#include <tunnelside.h>

#include "document.h"

/* A tolerance that the file states. */
typedef struct stated {
    size_t offset; /* of the number in the side */
    double tolerance;
} stated;

/* One side as it was asked for. */
typedef struct request {
    char *job;      /* the job's name; "" where there is none */
    char *job_note; /* and its note */
    char *name, *note, *drive_at;
    char *keep_outs[2][TSIDE_KEEP_OUTS]; /* names, by tside_which_end; NULL or "" where the file gives none */
    int place;                           /* that the file gives it by its mark's letters; 0 where it gives none */
    char within[24]; /* its path in the document, such as "sides[1]"; "" where the document is the side */
    int number, of;  /* which side of how many in its job; 0 of 0 outside a job */
    char *shares;    /* what the sides of its job share, such as "frame, curtain" */
    int in_feet;     /* 1 where the file gives the hip in feet or inches */
    int among_feet;  /* 1 where it gives any length so */
    tside_side side;
    tside_fittings fittings;                 /* for the take-off */
    unsigned char given[sizeof(tside_side)]; /* not 0 at the offset of each field of the side that the file gives */
    stated *stated;                          /* tolerances of its own, where the file has any */
    size_t stated_count, stated_room;
} request;

/* A member of a structure that a row describes. */
#define MEMBER(structure, offset, type) ((type *)(void *)((char *)(structure) + (offset)))
#define CONST_MEMBER(structure, offset, type) ((const type *)(const void *)((const char *)(structure) + (offset)))

/*
 * Reads one side from an object; its path in the document is set in the request.
 * Complaints about it go to refusals, which stay empty where the side is good.
 */
void read_side(document *doc, const json_t *object, request *wanted, complaints *refusals);

/* Reads a text of the document itself, such as a job's name; returns a printable copy, "" where it is not given. */
char *read_text(document *doc, const json_t *object, const char *key, complaints *refusals);

/*
 * Reads one drive of a list, which has the keys of a side's; returns a printable copy of its name, "" where it has
 * none. within: its path in the document.
 */
char *read_drive(document *doc, const json_t *object, const char *within, tside_drive *drive, complaints *refusals);

/* Whether any text in what was parsed is a length in feet or inches. */
int speaks_feet(const json_t *value);
/* Whether any is a mass, a force or a torque in pounds: a list of drives may give no length. */
int speaks_pounds(const json_t *value);

/*
 * Complains of what the library refuses, at the fault's field, and adds what else is to be said. us: 1 where the file
 * speaks feet, to tell its numbers so too.
 */
void refuse_by_library(document *doc, complaints *refusals, const char *within, tside_fault *fault, int us,
                       const char *more);

/* Whether the file gives this field of the side. */
int file_gives(const request *wanted, const void *member);

/* 1 for nothing, an empty text, and an object or a list of nothing else: a file to fill in before it is filled in. */
int is_blank(const json_t *value);

void request_free(request *wanted);

#endif
