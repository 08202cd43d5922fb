/* SPDX-License-Identifier: MIT */
/* A finding's sentence in the units of a sheet. */
#ifndef COMMON_SENTENCE_H
#define COMMON_SENTENCE_H

#include <tunnelside.h>

#include "text.h"
#include "units.h"

/* Adds words with {value}, {bound} and {end} in them filled in. */
void add_filled(text *out, pen *p, const tside_finding *finding, const char *words);

/* Adds the sentence of a finding. */
void add_sentence(text *words, pen *p, const tside_finding *finding);

#endif
