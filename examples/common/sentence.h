/* SPDX-License-Identifier: MIT */
/* Sentences of findings, and of refusals, in the units of a sheet. */
#ifndef COMMON_SENTENCE_H
#define COMMON_SENTENCE_H

#include <tunnelside.h>

#include "text.h"
#include "units.h"

/* Adds words with {value}, {bound} and {end} in them filled in. */
void add_filled(text *out, pen *p, const tside_finding *finding, const char *words);

/* Adds the sentence of a finding. */
void add_sentence(text *words, pen *p, const tside_finding *finding);

/*
 * Adds the library's sentence of a refusal, in SI, and in feet, inches and pounds what its numbers are there:
 * "0.05 m is above 0.02 m [2 in; at most 3/4 in]".
 */
void add_refusal(text *words, pen *p, const tside_fault *fault);

#endif
