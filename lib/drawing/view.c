/* SPDX-License-Identifier: MIT */
/* A view's strokes, and what is to be told of them, from a side made ready. */
#include "drawing/views.h"

#include "base/field.h"
#include "side/turns.h"

/*
 * What lies along the house, as its joints do, may be more than a drawing holds. All else has so few parts that no view
 * of it comes to that: an end wall with eight keep-outs, a bow of six pieces and three states of a line of sixteen,
 * each arc cut into five by the frame, has less than five hundred strokes, and figures on full axes have 417, and 30
 * notes.
 */
static int may_be_many(tside_view view)
{
    return view == TSIDE_VIEW_ALONG;
}

static tside_i_view *const views[] = {
    [TSIDE_VIEW_END_WALL] = tside_i_draw_wall,  [TSIDE_VIEW_WHOLE_WALL] = tside_i_draw_whole_wall,
    [TSIDE_VIEW_CORNER] = tside_i_draw_corner,  [TSIDE_VIEW_EXTENDER] = tside_i_draw_extender,
    [TSIDE_VIEW_ALONG] = tside_i_draw_along,    [TSIDE_VIEW_ROLL_SHUT] = tside_i_draw_roll,
    [TSIDE_VIEW_ROLL_OPEN] = tside_i_draw_roll, [TSIDE_VIEW_TURNS] = tside_i_draw_turns,
    [TSIDE_VIEW_OPENING] = tside_i_draw_turns,
};

/* What turns of the drive are reckoned by: the figures ask for it, and a place at some turns. */
static int asks_for_drive(const tside_picture *picture)
{
    return tside_i_is_of_figures(picture->view) || picture->turns_given;
}

/* Where the bar is at the turns asked. */
static tside_status find_turns(const tside_i_setup *setup, const tside_i_hung *drive, double turns, tside_i_spot *spot,
                               tside_fault *fault)
{
    const tside_hang *hang = tside_i_hang_of(drive);
    const double most = tside_i_drive_turns(&setup->travel, hang, setup->travel.end);
    if (turns > most * (1 + SLACK))
        return tside_i_bound(fault, "picture.turns", "turn", turns, TSIDE_ABOVE, most);
    tside_i_travel_at(&setup->travel,
                      turns < most ? tside_i_drive_progress(&setup->travel, hang, turns) : setup->travel.end, spot);
    return TSIDE_OK;
}

static tside_status check_view(const tside_side *side, const tside_plan *plan, const tside_picture *picture,
                               tside_fault *fault)
{
    const int drawn = side->bar.joints == TSIDE_JOINTS_FROM_STOCK ? plan->splices : 1;
    if (picture->view == TSIDE_VIEW_ALONG && drawn > TSIDE_JOINTS_DRAWN)
        REFUSE(fault, TSIDE_NOT_MODELLED, "plan.splices", "", "more joints than a drawing holds", "1", drawn,
               TSIDE_ABOVE, TSIDE_JOINTS_DRAWN, 0);
    if (picture->view == TSIDE_VIEW_EXTENDER && tside_i_end(side, picture->end)->hung != TSIDE_ON_EXTENDER)
        return tside_i_refuse(fault, TSIDE_NOT_MODELLED, "picture.view", "", "this end has no extender");
    return TSIDE_OK;
}

tside_status tside_i_sketch_view(const tside_side *side, const tside_plan *plan, const tside_picture *picture,
                                 tside_drawing *drawing, tside_i_sketch *sketch, tside_fault *fault)
{
    tside_i_setup setup;
    tside_sweep sweep;
    tside_fixed fixed;
    tside_i_hung drive = {.sweep = &sweep, .fixed = &fixed};
    tside_i_spot asked;
    TRY(check_view(side, plan, picture, fault));
    TRY(tside_i_settle(&tside_i_side_table, NULL, tside_i_set_up(side, &side->bar, &side->drive, &setup, fault),
                       fault));
    if (asks_for_drive(picture))
        TRY(tside_i_settle(&tside_i_side_table, NULL,
                           tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &drive, fault), fault));
    if (picture->turns_given)
        TRY(find_turns(&setup, &drive, picture->turns, &asked, fault));
    tside_i_sketch_begin(&setup, plan, picture, asks_for_drive(picture) ? &drive : NULL,
                         picture->turns_given ? &asked : NULL, drawing, sketch);
    return tside_i_sketch_draw(sketch, views[picture->view], may_be_many(picture->view), fault);
}
