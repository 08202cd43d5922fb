/* SPDX-License-Identifier: MIT */
/* What a side's file may hold: each field explained, and a file to fill in. Both come from the library's tables. */
#ifndef PLAN_FIELDS_H
#define PLAN_FIELDS_H

#include "text.h"

void print_fields(text *out);
void print_blank(text *out);

#endif
