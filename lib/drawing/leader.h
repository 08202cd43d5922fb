/* SPDX-License-Identifier: MIT */
/* Texts with a line that leads to them from what they tell of. */
#ifndef TUNNELSIDE_I_LEADER
#define TUNNELSIDE_I_LEADER

#include "drawing/room.h"

typedef struct tside_i_led {
    tside_i_line leader;
    double text_x, text_y; /* m, middle of the text's foot */
} tside_i_led;

/* Keeps the best place round a point; 0 where there is none. */
int tside_i_lead(tside_i_room *room, double x, double y, double width, tside_i_led *made);
/* The same of what must be told: where it finds no other place, below or above all. */
void tside_i_lead_anyhow(tside_i_room *room, double x, double y, double width, tside_i_led *made);

#endif
