/* SPDX-License-Identifier: MIT */
/* What a side's file may hold: each field explained, and a file to fill in, short or whole; from the library's tables.
 */
#ifndef PLAN_FIELDS_H
#define PLAN_FIELDS_H

#include "text.h"

void print_fields(text *out, int us);
void print_blank(text *out);
void print_whole_blank(text *out);

#endif
