/* SPDX-License-Identifier: MIT */
/* Marks, for the take-off that numbers what carries them. */
#ifndef TUNNELSIDE_I_MARK
#define TUNNELSIDE_I_MARK

#include <tunnelside/mark.h>

/* The letter of a kind of piece; 0 for what carries no mark, and for a code that does not exist. */
char tside_i_mark_kind(tside_item_code code);

#endif
