/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "questions.h"

/*
 * Those that a side cannot do without, and those that its builder is likely to know. How closely a length is measured
 * follows from what matters: so that, off by that much, it moves no guide or extender by more than 1/4 in, no bar by
 * more than 1 in, no kick by more than 1/2 in, the turns by no more than 1/4, and the worst torque by no more than a
 * tenth, of any demo; in halves from 1 in down to 1/16 in, which is all that a tape shows. These are this library's
 * choice.
 */
/* clang-format off */
static const question questions[] = {
    {"hand", 0, 1},
    {"frame.shape", 0, 1},
    {"frame.width", 16, 1},
    {"frame.leg_height", 1, 1},
    {"frame.peak_height", 8, 1},
    {"frame.shoulder_radius", 4, 0},
    {"frame.foot_x", 16, 0},
    {"frame.foot_height", 16, 0},
    {"frame.between_x", 4, 0},
    {"frame.between_height", 16, 0},
    {"frame.peak_x", 4, 0},
    {"frame.tube.diameter", 0, 1},
    {"frame.tube.wall", 0, 1},
    {"frame.board", 0, 1},
    {"frame.board_top", 16, 0},
    {"frame.board_stand", 8, 0},
    {"curtain.hip", 1, 1},
    {"curtain.sill", 4, 1},
    {"curtain.standoff", 1, 1},
    {"curtain.rail_depth", 1, 1},
    {"stops.seal", 4, 1},
    {"stops.shut_height", 4, 0},
    {"stops.gap", 1, 1},
    {"stops.open_height", 1, 0},
    {"drive.kind", 0, 1},
    {"drive.mass", 0, 1},
    {"drive.collar_offset", 1, 1},
    {"drive.height", 0, 1},
    {"drive.rated_torque", 0, 1},
    {"drive.stall_torque", 0, 1},
    {"drive.rated_voltage", 0, 1},
    {"drive.supply_voltage", 0, 1},
    {"drive.no_load_speed", 0, 1},
    {"drive.no_load_current", 0, 1},
    {"drive.stall_current", 0, 1},
    {"drive.rated_run", 0, 1},
    {"drive.holds", 0, 1},
    {"drive.limit_turns", 0, 1},
    {"crank.fitted", 0, 1},
    {"crank.ratio", 0, 0},
    {"crank.arm", 0, 0},
    {"drive_end.hung", 0, 1},
    {"drive_end.rise", 1, 1},
    {"drive_end.placed", 0, 0},
    {"drive_end.eye_outboard", 1, 0},
    {"drive_end.guide.tube.diameter", 0, 1},
    {"drive_end.guide.tube.wall", 0, 1},
    {"drive_end.guide.material.grade", 0, 1},
    {"drive_end.guide.material.yield", 0, 1},
    {"drive_end.extender.tube.side", 0, 1},
    {"drive_end.extender.tube.wall", 0, 1},
    {"drive_end.extender.material.grade", 0, 1},
    {"drive_end.extender.member_height", 2, 1},
    {"drive_end.extender.member_inner", 0, 1},
    {"drive_end.extender.member_outer", 16, 1},
    {"drive_end.extender.stock", 0, 1},
    {"drive_end.extender.bolt_limit", 0, 1},
    {"drive_end.extender.eye_material.grade", 0, 1},
    {"drive_end.extender.eye_material.yield", 0, 1},
    {"drive_end.keep_outs", 0, 1},
    {"length", 16, 1},
    {"curtain.thickness", 0, 1},
    {"curtain.areal_mass", 0, 1},
    {"bar.tube.diameter", 0, 1},
    {"bar.tube.wall", 0, 1},
    {"bar.material.grade", 0, 1},
    {"bar.material.yield", 0, 1},
    {"bar.splices", 0, 1},
    {"bar.splice_near", 0, 1},
    {"bar.screws", 0, 1},
    {"bar.screw_limit", 0, 1},
    {"ropes", 0, 1},
    {"rope_pressure", 0, 0},
    {"cable.wire", 0, 1},
    {"cable.gauge", 0, 1},
    {"cable.length", 0, 1},
    {"cable.drop_limit", 0, 1},
    {"cable.ampacity", 0, 1},
    {"cable.fuse", 0, 1},
    {"free_end.hip_height", 0, 1},
    {"free_end.hung", 0, 1},
    {"free_end.rise", 2, 1},
    {"free_end.placed", 0, 0},
    {"free_end.eye_outboard", 1, 0},
    {"free_end.guide.tube.diameter", 0, 1},
    {"free_end.guide.tube.wall", 0, 1},
    {"free_end.guide.material.grade", 0, 1},
    {"free_end.guide.material.yield", 0, 1},
    {"free_end.extender.tube.side", 0, 1},
    {"free_end.extender.tube.wall", 0, 1},
    {"free_end.extender.material.grade", 0, 1},
    {"free_end.extender.member_height", 2, 1},
    {"free_end.extender.member_inner", 0, 1},
    {"free_end.extender.member_outer", 16, 1},
    {"free_end.extender.stock", 0, 1},
    {"free_end.extender.bolt_limit", 0, 1},
    {"free_end.extender.eye_material.grade", 0, 1},
    {"free_end.extender.eye_material.yield", 0, 1},
    {"free_end.keep_outs", 0, 1},
    {"collar.offset", 1, 1},
    {"limits.kick_out", 0, 1},
    {"limits.lag", 0, 1},
    {"limits.twist", 0, 1},
};
/* clang-format on */

enum { COUNT = sizeof questions / sizeof *questions };

const question *question_at(int i)
{
    return i < COUNT ? questions + i : NULL;
}

const question *question_of(const char *path)
{
    for (int i = 0; i < COUNT; i++)
        if (!strcmp(questions[i].path, path))
            return questions + i;
    return NULL;
}

/* As columns of a sheet are lettered, but that I, O and Q look like figures. */
const char *question_letter(const question *one, char letter[4])
{
    static const char letters[] = "ABCDEFGHJKLMNPRSTUVWXYZ";
    const int place = (int)(one - questions), base = (int)sizeof letters - 1;
    char *end = letter;
    if (place >= base)
        *end++ = letters[place / base - 1];
    *end++ = letters[place % base];
    *end = '\0';
    return letter;
}
