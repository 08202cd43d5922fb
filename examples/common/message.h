/* SPDX-License-Identifier: MIT */
/* What a program says on standard error, and how words of others are shown there and on paper. */
#ifndef COMMON_MESSAGE_H
#define COMMON_MESSAGE_H

#include "text.h"

/* The program's, before each of its messages: each program defines its own. */
extern const char program_name[];

/* As printf: one line after the program's name, printable. */
void say(const char *format, ...) LIKE_PRINTF(1, 2);

/*
 * A copy that cannot break a page, or turn a terminal's colours or the order of its letters: a blank for a tab or a
 * line end; any other control character and what overrides the direction of writing as <U+202E>, a byte that is no
 * UTF-8 as <0x9B>.
 */
char *printable(const char *words);

#endif
