/* SPDX-License-Identifier: MIT */
/* Turns of the drive: the whole travel's, their range, and the table of them one by one. */
#include "side/turns.h"

#include <math.h>

#include "base/field.h"
#include "base/root.h"

static double angle_at(const tside_travel *travel, const tside_hang *hang, int stretch, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(travel, stretch, progress, &spot);
    return tside_i_drive_angle(travel, hang, &spot);
}

double tside_i_drive_turns(const tside_travel *travel, const tside_hang *hang, double progress)
{
    double now = angle_at(travel, hang, tside_i_travel_stretch(travel, progress), progress);
    return (now - angle_at(travel, hang, 0, travel->wraps_shut)) / (2 * TSIDE_PI);
}

/*
 * A roll too thick to open as high as asked goes to the rail; one that is too near the rail when shut, or nearer than
 * the gap, stays where it is.
 */
double tside_i_drive_turns_with(const tside_i_setup *setup, const tside_hang *hang, double factor)
{
    const tside_stops *stops = &setup->side->stops;
    tside_stops to_rail = *stops;
    tside_travel travel;
    to_rail.open_by = TSIDE_OPEN_GAP;
    to_rail.gap = 0;
    if (tside_i_make_travel(setup, factor, stops, &travel, NULL) != TSIDE_OK &&
        (stops->open_by == TSIDE_OPEN_GAP || tside_i_make_travel(setup, factor, &to_rail, &travel, NULL) != TSIDE_OK))
        return 0;
    return tside_i_drive_turns(&travel, hang, travel.end);
}

typedef struct driven {
    const tside_travel *travel;
    const tside_hang *hang;
    double turns;
} driven;

static double drive_turns_above(double progress, const void *context)
{
    const driven *aim = context;
    return tside_i_drive_turns(aim->travel, aim->hang, progress) - aim->turns;
}

double tside_i_drive_progress(const tside_travel *travel, const tside_hang *hang, double turns)
{
    driven aim = {travel, hang, turns};
    return tside_i_rising_root(drive_turns_above, &aim, travel->wraps_shut, travel->end);
}

tside_turn tside_i_turn_at(const tside_i_setup *setup, const tside_i_hung *hung, const tside_i_spot *spot, double turn)
{
    const tside_hang *hang = tside_i_hang_of(hung);
    const tside_i_lifting lifting = tside_i_lifting_of(setup, hang);
    tside_position at;
    double leans = hung->sweep->lean_shut; /* of a guide that stands */
    tside_i_travel_position(&setup->travel, spot, &at);
    if (hang) {
        tside_i_lean lean = tside_i_hang_lean(hang, spot);
        leans = tside_i_lean_angle(&lean);
    }
    return (tside_turn){
        turn, 0, at.taken_up, at.diameter, at.x, at.y, at.underside, at.opening, tside_i_torque(&lifting, spot).drive,
        leans};
}

/* Row i of a table, the last after so many turns; what is taken up in it is left to whoever knows the row before. */
static tside_turn turn_row(const tside_i_setup *setup, const tside_i_hung *hung, int i, int last, double total)
{
    const tside_travel *travel = &setup->travel;
    tside_i_spot spot;
    tside_i_travel_at(travel, last ? travel->end : tside_i_drive_progress(travel, tside_i_hang_of(hung), i), &spot);
    return tside_i_turn_at(setup, hung, &spot, last ? total : i);
}

tside_status tside_plan_turns(const tside_side *side, tside_turn *rows, int capacity, int *count, tside_fault *fault)
{
    tside_i_setup setup;
    tside_sweep sweep;
    tside_fixed fixed;
    tside_i_hung drive = {.sweep = &sweep, .fixed = &fixed};
    double total;
    int needed;
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_settle(&tside_i_side_table, NULL, tside_i_set_up(side, &side->bar, &side->drive, &setup, fault),
                       fault));
    TRY(tside_i_settle(&tside_i_side_table, NULL,
                       tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &drive, fault), fault));
    TRY(tside_i_answer_number("rows", tside_i_drive_turns(&setup.travel, tside_i_hang_of(&drive), setup.travel.end),
                              &total, fault));
    needed = 1 + (int)ceil(total - SLACK); /* 5 turns whose last digits are over make no sixth row of nothing */
    if (needed > capacity) {
        *count = needed;
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the turn table has more rows", "1", capacity, TSIDE_BELOW,
               needed, 0);
    }
    for (int i = 0; i < needed; i++) {
        tside_turn row = turn_row(&setup, &drive, i, i == needed - 1, total);
        TRY(tside_i_within(fault, "rows", tside_i_finite(&tside_i_turn_table, &row, fault)));
    }
    for (int i = 0; i < needed; i++) {
        rows[i] = turn_row(&setup, &drive, i, i == needed - 1, total);
        rows[i].taken_up = rows[i].total - (i > 0 ? rows[i - 1].total : 0);
    }
    *count = needed;
    return TSIDE_OK;
}
