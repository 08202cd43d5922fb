/* SPDX-License-Identifier: MIT */
/* What a file says of how far off its own measurements may be: {"curtain.hip": "1/2 in", ...}. */
#ifndef COMMON_TOLERANCES_H
#define COMMON_TOLERANCES_H

#include "read.h"

/* Reads them into the request, whose side has been read before. */
void read_tolerances(document *doc, const json_t *object, request *wanted, complaints *refusals);

/* How far off a number of the side may be: as the file says, else as its row does; 0 where it is not measured. */
double tolerance_of(const request *wanted, const tside_field *row, const void *member);

#endif
