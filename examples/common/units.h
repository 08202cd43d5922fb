/* SPDX-License-Identifier: MIT */
/* Quantities as the sheet prints them, in SI or in feet, inches and pounds. */
#ifndef COMMON_UNITS_H
#define COMMON_UNITS_H

enum { SLOTS = 64, SLOT_SIZE = 48 };

/* Writes quantities; each text it returns stands until SLOTS more have been asked for. */
typedef struct pen {
    int us; /* 1: feet, inches and pounds */
    int next;
    char slot[SLOTS][SLOT_SIZE];
} pen;

/* m, the least that a tape shows: 1/16 in, or 1 mm. */
double tape_division(int us);
/* A length for a tape measure: to 1/16 in, or to 1 mm; from 20 m on in metres to 1 mm. */
const char *tape(pen *p, double metres);
/* The same of a bound, rounded to the side on which it is kept. */
const char *tape_at_least(pen *p, double metres);
const char *tape_at_most(pen *p, double metres);
/* A small size, such as a wall: to 0.001 in or 0.01 mm. */
const char *fine(pen *p, double metres);
/* Size and wall of a tube: "1.315 x 0.083 in". */
const char *cross_section(pen *p, double size, double wall);
/* A length for a column headed in or mm: to 1/16 in, or to 1 mm, without its unit. */
const char *tape_number(pen *p, double metres);
/* A small length: to 1/32 in, or to 0.1 mm. */
const char *closely(pen *p, double metres);
/*
 * What the trade calls a hole, a drill or a stock length, whatever the sheet's units: "11/32 in", "17.5 mm"; what is no
 * such size goes to fine().
 */
const char *trade_size(pen *p, double metres);
/*
 * What the trade calls a bolt, or what belongs on one, whatever the sheet's units: "5/16 in carriage bolt, 4 1/2 in",
 * "M8 x 120 carriage bolt"; without a kind ("") or a length (0) the rest of it.
 */
const char *bolt_name(pen *p, double diameter, const char *kind, double length);
/* Its length alone: "4 1/2 in", "120". */
const char *bolt_length(pen *p, double diameter, double length);
/* A distance for reading: feet and inches to 1 in, or metres to 0.01 m. */
const char *roughly(pen *p, double metres);
/* Any quantity, with its SI unit as the library's tables name it, to about three digits. A length goes to tape(). */
const char *quantity(pen *p, double value, const char *unit);
/* The same with more digits. */
const char *finer(pen *p, double value, const char *unit, int more);
/* The same of a bound, rounded to the side on which it is kept; a small length goes to fine(). */
const char *at_least(pen *p, double value, const char *unit);
const char *at_most(pen *p, double value, const char *unit);
/* Whether feet, inches and pounds have a unit of their own for an SI unit. */
int has_us_unit(const char *unit);
/* What the sheet calls an SI unit: "lbf ft" of N m. */
const char *unit_shown(const pen *p, const char *unit);
/* A number with so many decimals, and no "-0". */
const char *plain(pen *p, double value, int decimals);

const char *measure_unit(int measure);

#endif
