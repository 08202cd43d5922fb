/* SPDX-License-Identifier: MIT */
/* What the programs' command lines have in common. */
#ifndef COMMON_COMMAND_H
#define COMMON_COMMAND_H

#include <tunnelside/fault.h>

enum { EXIT_DONE, EXIT_REFUSED, EXIT_USAGE };

typedef enum units { AS_THE_FILE, SI, US } units;
typedef enum format { TEXT, JSON, CSV, HTML } format;

/*
 * What every program does first: a write that cannot go on, because its reader has gone or the file would be too big,
 * is a failed one and said to be, no signal; and getopt_long leaves it to misused_option() to say what is wrong.
 */
void begin_program(void);

/* Says that the command line is wrong, and where to read how; returns EXIT_USAGE. */
int misuse(const char *what, const char *which);
int misused_option(char **words);

/* Each sets what its option asks for and returns EXIT_DONE, or misuse(). */
int set_units(units *chosen, const char *value);
int set_format(format *chosen, format last, const char *value); /* of those up to the last */

/*
 * Of a call that nothing can refuse any more, since what it is asked of was accepted before: else says why, and ends
 * the program as refused.
 */
void must(tside_status status, const tside_fault *fault);

#endif
