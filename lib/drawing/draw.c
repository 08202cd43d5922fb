/* SPDX-License-Identifier: MIT */
/* A drawing as asked: its view's strokes, then places for its texts. */
#include <tunnelside/drawing.h>

#include "base/field.h"
#include "drawing/place.h"
#include "drawing/views.h"

tside_status tside_draw(const tside_side *side, const tside_plan *plan, const tside_picture *picture,
                        tside_drawing *drawing, tside_fault *fault)
{
    tside_i_sketch sketch;
    TRY(tside_i_check(&tside_i_picture_table, "picture", picture, fault));
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_within(fault, "plan", tside_i_finite(&tside_i_plan_table, plan, fault)));
    TRY(tside_i_sketch_view(side, plan, picture, drawing, &sketch, fault));
    tside_i_place_texts(&sketch);
    return TSIDE_OK;
}
