/* SPDX-License-Identifier: MIT */
/* Places of texts on a drawing. */
#ifndef TUNNELSIDE_I_PLACE
#define TUNNELSIDE_I_PLACE

#include "drawing/sketch.h"

/* Gives every dimension and note its place, and the drawing its size. */
void tside_i_place_texts(tside_i_sketch *sketch);

#endif
