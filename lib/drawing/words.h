/* SPDX-License-Identifier: MIT */
/* What is written on a drawing, of dimensions and notes that have passed their check. */
#ifndef TUNNELSIDE_I_WORDS_ON_DRAWINGS
#define TUNNELSIDE_I_WORDS_ON_DRAWINGS

#include <tunnelside/drawing.h>

#include "base/number.h"

enum { TSIDE_I_WORDS = 80 }; /* the longest text, with its closing zero */

/* Fails where a value is beyond what tside_length_write writes. */
tside_status tside_i_dimension_words(const tside_dimension *dimension, tside_tape tape, tside_i_text *text,
                                     tside_fault *fault);
void tside_i_note_words(const tside_note *note, tside_i_text *text);

#endif
