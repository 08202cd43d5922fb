/* SPDX-License-Identifier: MIT */
/* What the programs' command lines have in common. */
#ifndef COMMON_COMMAND_H
#define COMMON_COMMAND_H

enum { EXIT_DONE, EXIT_REFUSED, EXIT_USAGE };

typedef enum units { AS_THE_FILE, SI, US } units;
typedef enum format { TEXT, JSON, CSV } format;

/* Says that the command line is wrong, and where to read how; returns EXIT_USAGE. */
int misuse(const char *what, const char *which);

/* Each sets what its option asks for and returns EXIT_DONE, or misuse(). */
int set_units(units *chosen, const char *value);
int set_format(format *chosen, const char *value);

#endif
