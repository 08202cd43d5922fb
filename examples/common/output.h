/* SPDX-License-Identifier: MIT */
/* Output, complete or absent. */
#ifndef COMMON_OUTPUT_H
#define COMMON_OUTPUT_H

#include "text.h"

/*
 * Writes everything to standard output (name NULL), or to a file: aside first, then renamed. Returns 1, or 0 having
 * said why not.
 */
int write_output(const text *everything, const char *name);

/* Whether what is to be written is an input, by whatever name; "-" is standard input. */
int is_same_file(const char *output, const char *input);

#endif
