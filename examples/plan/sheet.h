/* SPDX-License-Identifier: MIT */
/* The job sheet, for people: a card to work by, a page for each end and one for the side, and an annex. */
#ifndef PLAN_SHEET_H
#define PLAN_SHEET_H

#include "caution.h"
#include "command.h"
#include "ends.h"
#include "paper.h"
#include "units.h"

/* What such a sheet is called. */
#define SHEET_CALLED "Job sheet"

typedef struct sheet {
    paper paper;
    const planned *side;
    pen pen;
    int drawn; /* 1: with drawings */
} sheet;

/* Whether a side is told in feet, inches and pounds. */
int in_us(units wanted, const planned *side);

/* A sheet for each side that is planned; after the last side of a job its pieces together. drawn: 1 with drawings. */
papers sheets_of_all(const work *all, units wanted, int drawn);
/* The pieces of all sides of a job together. */
paper job_pieces_of(planned *const *sides, size_t count, int us);

/* The card's parts, of an end or of the side. */
void put_stops(sheet *s);
void put_whether_it_stops(sheet *s); /* on a page that does not say why */
/* A finding that a fitter must know at a step: as a caution of it, if it was found at this end. */
void put_found_here(sheet *s, tside_finding_code code, int end);
void put_end_pieces(sheet *s, int end);
void put_side_pieces(sheet *s);
void put_tools(sheet *s, int end);
void put_set_out(sheet *s, int end);
void put_end_drawings(sheet *s, int end);
void put_side_drawings(sheet *s);
void put_figures(sheet *s);
void put_hanging(sheet *s);

/* The annex's. */
void put_hanging_tools(sheet *s);
void put_known(sheet *s);
void put_bow(sheet *s);
void put_along(sheet *s);
void put_keep_outs(sheet *s); /* where there are any */
void put_travel(sheet *s);
void put_torque(sheet *s);
void put_electric(sheet *s);
void put_air(sheet *s);  /* where it is asked */
void put_wind(sheet *s); /* the same */
void put_strength(sheet *s);
void put_searches(sheet *s);
void put_drives(sheet *s); /* of a list, where one is asked for */
void put_assumed(sheet *s);
void put_turns(sheet *s);

/* A row with its quantity, which is in this SI unit. */
void put_quantity(sheet *s, const char *label, double value, const char *unit);
/* Rows with a value for each end, NULL where an end has none, stand under such titles. */
void put_ends_titles(sheet *s);
void put_ends(sheet *s, const char *label, const char *drive, const char *free);

/* A caution at its step. */
void put_caution_of(sheet *s, caution which);

#endif
