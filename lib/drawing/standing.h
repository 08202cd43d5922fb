/* SPDX-License-Identifier: MIT */
/* What stands at an end of the side, as more than one view draws it. */
#ifndef TUNNELSIDE_I_STANDING
#define TUNNELSIDE_I_STANDING

#include "drawing/sketch.h"

/* What an end is drawn from. */
typedef struct tside_i_wall {
    tside_i_sketch *sketch;
    const tside_side *side;
    const tside_end *end;
    const tside_end_plan *plan;
    tside_collar collar;
    double face, ground; /* m, the bow's outer face at hip height; the ground here */
    tside_part rider;    /* drive or collar */
    double centre;       /* m, of that, from the plane of the end bow's centreline outward */
    double inner, outer; /* m, of the extender's faces, from there too; both 0 without one */
} tside_i_wall;

tside_i_wall tside_i_wall_of(tside_i_sketch *sketch, tside_which_end which);
/* With what is seen and always there is put down. */
tside_i_pen tside_i_pen_of(tside_part part, tside_line_type line);

/* How far what rides on the guide reaches to either side of the bar's axis, as far as is told: to roll and guide. */
static inline double tside_i_rider_half(const tside_i_wall *w, const tside_i_spot *spot)
{
    return fmax(spot->r, w->collar.offset);
}

/* A guide that stands on its foot. */
static inline int tside_i_stands(const tside_i_wall *w)
{
    return w->end->guide.foot == TSIDE_FOOT_FIXED;
}

/* Level ground between two places, as seen, with the strokes that mark it as such. */
void tside_i_draw_ground(tside_i_sketch *sketch, double left, double right, double ground);
void tside_i_draw_bow(const tside_i_wall *w);
/* Where there is one, with its name. */
void tside_i_draw_board(const tside_i_wall *w);
/* With the name of the hip. */
void tside_i_draw_rail(const tside_i_wall *w);

#endif
