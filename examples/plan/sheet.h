/* SPDX-License-Identifier: MIT */
/* The job sheet, for people: its parts in the order in which they are printed. */
#ifndef PLAN_SHEET_H
#define PLAN_SHEET_H

#include "job.h"
#include "units.h"

typedef struct sheet {
    text *out;
    const planned *side;
    pen pen;
} sheet;

/* The whole sheet of one side. */
void print_sheet(text *out, const planned *side, int us);
/* The pieces of all sides of a job together. */
void print_job_pieces(text *out, planned *const *sides, size_t count, int us);

/* The parts. */
void print_findings(sheet *s);
void print_pieces(sheet *s);
void print_set_out(sheet *s);
void print_along(sheet *s);
void print_hanging(sheet *s);
void print_travel(sheet *s);
void print_torque(sheet *s);
void print_electric(sheet *s);
void print_strength(sheet *s);
void print_searches(sheet *s);
void print_drives(sheet *s); /* of a list, where one is asked for */
void print_assumed(sheet *s);
void print_cautions(sheet *s);
void print_turns(sheet *s);

/* A part's title after an empty line. */
void print_title(sheet *s, const char *title);
/* A label and what belongs to it, the latter from a common column on. */
void print_row(sheet *s, const char *label, const char *value);
/* A label and a value for each end; NULL where an end has none. */
void print_row_of_ends(sheet *s, const char *label, const char *drive, const char *free);

/* The sentence of a finding, in the sheet's units. */
void add_sentence(text *words, pen *p, const tside_finding *finding);

const char *end_name(int end); /* "drive's end", "free end" */
int on_extender(const planned *side, int end);
tside_hand hand_at(const planned *side, int end); /* as seen from outside that end's own wall */
const char *hand_name(tside_hand hand);
/*
 * The face of the end bow at hip height, outboard of the tunnel's centreline: the datum for what is measured outboard.
 */
double face_at_hip(const planned *side);

#endif
