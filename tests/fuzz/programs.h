/* SPDX-License-Identifier: MIT */
/* What a program's readers ask of it, with memory in place of a file and of standard error. */
#ifndef TUNNELSIDE_FUZZ_PROGRAMS_H
#define TUNNELSIDE_FUZZ_PROGRAMS_H

#include <stddef.h>
#include <stdint.h>

/* What read_whole() gives from now on. */
void fuzz_content(const uint8_t *data, size_t size);
/* How much was said since, all of it printable, a line each. */
size_t fuzz_said(void);

#endif
