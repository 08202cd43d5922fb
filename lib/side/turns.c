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

double tside_i_drive_turns_with(const tside_i_setup *setup, const tside_hang *hang, double factor)
{
    tside_travel travel;
    tside_stops to_rail = setup->side->stops;
    to_rail.open_by = TSIDE_OPEN_GAP;
    to_rail.gap = 0;
    if (tside_i_make_travel(setup, factor, &setup->side->stops, &travel, NULL) != TSIDE_OK && tside_i_make_travel(setup, factor, &to_rail, &travel, NULL) != TSIDE_OK)
        return 0; /* a roll so thick that it never leaves the rail */
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

tside_status tside_plan_turns(const tside_side *side, tside_turn *rows, int capacity, int *count, tside_fault *fault)
{
    tside_i_setup setup;
    tside_i_hung drive;
    tside_i_lifting lifting = {&setup.travel, &setup.load, &drive.hang, 0};
    double shut, open, total, before = 0;
    int needed;
    TRY(tside_i_check_table(&tside_i_side_table, side, fault));
    TRY(tside_i_set_up(side, &side->bar, &setup, fault));
    TRY(tside_i_hang_end(&setup, TSIDE_DRIVE_END, TSIDE_I_OWN_EYE, 0, &drive, fault));
    shut = setup.travel.wraps_shut;
    open = setup.travel.end;
    total = tside_i_drive_turns(&setup.travel, &drive.hang, open);
    needed = 1 + (total > 1e-9 ? (int)ceil(total - 1e-9) : 0);
    *count = needed;
    if (needed > capacity)
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the turn table has more rows", "1", capacity, TSIDE_BELOW, needed, 0);
    for (int i = 0; i < needed; i++) {
        driven aim = {&setup.travel, &drive.hang, i};
        int last = i == needed - 1;
        double progress = last ? open : tside_i_rising_root(drive_turns_above, &aim, shut, open);
        tside_i_spot spot;
        tside_position position;
        tside_i_lean lean;
        tside_i_travel_at(&setup.travel, progress, &spot);
        tside_i_travel_position(&setup.travel, &spot, &position);
        lean = tside_i_lean_at(drive.hang.eye_x, drive.hang.eye_y, drive.hang.offset, &spot);
        rows[i] = (tside_turn){last ? total : i, position.taken_up - before, position.taken_up, position.diameter, position.x, position.y, position.underside, position.opening,
                               tside_i_torque(&lifting, &spot).drive, tside_i_lean_angle(&lean)};
        before = position.taken_up;
    }
    return TSIDE_OK;
}
