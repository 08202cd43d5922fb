/* SPDX-License-Identifier: MIT */
/*
 * Test rows: inputs, an expected value, how near it must come, and where it comes from. Programs in any language can
 * run them.
 *
 * A file tests/data/NAME.csv has the columns
 *     function,arguments,result,value,unit,tolerance,source
 * and a first line that says so. Comma-separated as RFC 4180 has it: a column that holds a comma or a quote stands in
 * quotes, and a quote within is doubled. A row is one line, ends in a line feed, and names one call and one thing to
 * look at in its outcome.
 *
 * function   Its name in the library: tside_round_section.
 * arguments  name=value;name=value ... with no blank that does not belong to a value. A name is an argument of the
 * function (density), or the path of a field in one (tube.wall, frame.tube.diameter, side.keep_outs[0].inner). Fields
 * not named have their usual values (tside_usual, and tside_usual_by_choice after all choices have been set); other
 * arguments must all be named, and nothing twice. A value is of a number    a plain number in the SI unit of the
 * argument or field (0.0254, 2.5e-3, nan, inf, -inf), or else what tside_quantity_read makes of it in that unit (1 in);
 *              of a count     a whole number; a list is set by its count (side.keep_outs=1), its elements by their
 * paths; of a choice    its name in the field table; of a text      all characters up to the next ";", which no text
 * contains. result     What to look at: the path of an output (section.inertia, wraps), or status         how the call
 * ended: "ok", or its status as tside_status_text has it, and after a colon and a blank the field at fault, if any:
 * "contradicts: tube.wall"; fault.other    of a call that failed: a text; also fault.index, a whole number, and
 * fault.value, fault.bound and fault.gap, numbers in the unit of the fault. Where the result is an output, the call
 * must succeed. Where a call fails, its outputs must be left as they were. value      What it must be. Of a number: a
 * plain number, or with a unit a fraction, as tside_quantity_read reads it (1-3/8). Of a number that may be absent and
 * must be: none. Of a choice: its name. Of a list: its count. unit       The unit of the value, of numbers only: one
 * that tside_quantity_read knows; blank: SI. tolerance  Of a number, in the same unit: half a unit of the last printed
 * digit, "rel 0.005" for a fraction of the value, or 0. Else blank. source     Whence the value. Never blank.
 */
#ifndef TUNNELSIDE_ROWS_H
#define TUNNELSIDE_ROWS_H

#include <stddef.h>

typedef struct row {
    char place[64]; /* file:line */
    char *line;     /* holds the columns */
    const char *function, *arguments, *result, *value, *unit, *tolerance, *source;
} row;

typedef struct rows {
    row *row;
    int count;
    char wrong[256]; /* the first thing amiss in the files, or "" */
} rows;

enum { NAME_SIZE = 128, VALUE_SIZE = 512 };

/* Splits a line into the columns of a row; line: is changed, and must outlive it. Returns 1, or 0 with why not. */
int row_split(char *line, row *one, char *why, size_t size);

/* Reads every .csv file of a folder, in the order of their names. What it returns lives to the program's end. */
rows rows_read(const char *folder);

/* Takes the next name=value off arguments. Returns 1; 0 at their end; -1 if there is something else. */
int next_argument(const char **arguments, char name[NAME_SIZE], char value[VALUE_SIZE]);

/* A number among the arguments, in an SI unit. Returns 1, or 0 if it is none. */
int argument_number(const char *text, const char *si, double *number);

/* The expected number, in an SI unit. unit: the row's, or "". Returns 1, or 0 if it is none. */
int row_number(const char *text, const char *unit, const char *si, double *number);

/* Its tolerance, in an SI unit; value: the expected one, in that unit. Returns 1, or 0 if it is none. */
int row_tolerance(const char *text, const char *unit, const char *si, double value, double *tolerance);

/* 1 unless got is as near to want as it must be; nothing is near to a value that is not a number. */
int differs(double got, double want, double tolerance);

#endif
