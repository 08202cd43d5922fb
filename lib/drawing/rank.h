/* SPDX-License-Identifier: MIT */
/* Dimensions with their lines. */
#ifndef TUNNELSIDE_I_RANK
#define TUNNELSIDE_I_RANK

#include "drawing/room.h"

/* Keeps a place for a dimension whose text's width is known; beside: on which side of what it measures at best. */
void tside_i_place_dimension(tside_i_room *room, tside_dimension *dimension, tside_i_beside beside);

#endif
