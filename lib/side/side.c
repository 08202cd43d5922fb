/* SPDX-License-Identifier: MIT */
/* The tables of a side and of its plan. */
#include <tunnelside/plan.h>

#include "base/field.h"

static const char *const joints[] = {"given", "stock"};

/* clang-format off */
static const tside_field bar_rows[] = {
    {GROUP(tside_bar, tube, round, "the roll bar's tube")},
    {GROUP(tside_bar, material, material, "its metal")},
    {NUMBER(tside_bar, core_over, "m", FROM(0), TO(0.2), 2e-3, PRACTICE, "core diameter over the bare tube, clips averaged"), MEASURED(1e-3), UNUSUAL_OUTSIDE(0, 5e-3)},
    {NUMBER(tside_bar, clip_mass, "kg/m", FROM(0), TO(100), 0.1, PRACTICE, "mass of the clips per metre of bar"), MEASURED(0.05), UNUSUAL_OUTSIDE(0.05, 0.2)},
    {NUMBER(tside_bar, past_drive, "m", FROM(0), TO(3), 9 * IN, PRACTICE, "bar from the curtain's edge to the drive's centre, where given"), MEASURED(0.5 * IN), UNUSUAL_OUTSIDE(6 * IN, 14 * IN)},
    {NUMBER(tside_bar, past_free, "m", FROM(0), TO(3), 4 * IN, PRACTICE, "bar from the curtain's edge to the collar's line at the free end, where given"), MEASURED(0.5 * IN), UNUSUAL_OUTSIDE(2 * IN, 6 * IN)},
    {CHOICE(tside_bar, joints, joints, TSIDE_JOINTS_GIVEN, "where its joints are: as given, or where whole lengths of stock put them")},
    {COUNT(tside_bar, splices, 0, 100, 0, OURS, "joints along the bar"), APPLIES(tside_bar, joints, ONLY(TSIDE_JOINTS_GIVEN))},
    {NUMBER(tside_bar, splice_near, "m", FROM(0), TO(1000), 0.6, PRACTICE, "from the curtain's edge at the drive to the nearest joint; from stock: at least")},
    {REQUIRED_FROM(tside_bar, stock, "m", 1, 100, "one length of the bar's tube"), APPLIES(tside_bar, joints, ONLY(TSIDE_JOINTS_FROM_STOCK))},
    {NUMBER(tside_bar, swage, "m", FROM(0), TO(0.5), 4 * IN, PRACTICE, "tube lost in each joint"), UNUSUAL_OUTSIDE(3 * IN, 5 * IN)},
    {COUNT(tside_bar, screws, 1, 20, 2, PRACTICE, "screws on each side of a joint, and at the drive's coupling"), UNUSUAL_OUTSIDE(2, 4)},
    {NUMBER(tside_bar, play, "rad", FROM(0), TO(1), 2 * DEG, PRACTICE, "play of one splice"), UNUSUAL_OUTSIDE(1 * DEG, 3 * DEG)},
    {OPTIONAL(tside_bar, screw_limit, "N", FROM(1), TO(1e7), "allowable shear on one screw")},
};
/* clang-format on */
TABLE(tside_i_bar_table, bar_rows);

static const char *const hung[] = {"extender", "hip"};
static const char *const placed[] = {"best", "given"};
static const char *const alignments[] = {"in_line", "given"};
static const char *const levels[] = {"centreline", "bow_face"};

/* clang-format off */
static const tside_field end_rows[] = {
    {CHOICE(tside_end, hung, hung, TSIDE_ON_EXTENDER, "what carries the guide's eye")},
    {NUMBER(tside_end, rise, "m", ABOVE(0), TO(5), 12 * IN, PRACTICE, "eye above the curtain's fixing"), MEASURED(0.25 * IN), APPLIES(tside_end, hung, ONLY(TSIDE_ON_EXTENDER)),
     UNUSUAL_OUTSIDE(8 * IN, 18 * IN)},
    {CHOICE(tside_end, placed, placed, TSIDE_EYE_BEST, "where the eye stands: so that the guide leans least, or as given"), APPLIES(tside_end, hung, ONLY(TSIDE_ON_EXTENDER))},
    {REQUIRED(tside_end, eye_outboard, "m", TO(5), "eye outboard of the bow's outer face at hip height, level"), MEASURED(0.25 * IN), APPLIES(tside_end, placed, ONLY(TSIDE_EYE_GIVEN))},
    {OPTIONAL(tside_end, eye_past, "m", FROM(0), TO(3), "the eye on the hip rail, past the plane of the end bow's centreline"), MEASURED(0.25 * IN),
     APPLIES(tside_end, hung, ONLY(TSIDE_ON_HIP))},
    {CHOICE(tside_end, alignment, alignments, TSIDE_IN_LINE, "how far the bar runs on here: so that the drive is in line with the eye, or as the bar's own field gives")},
    {OPTIONAL(tside_end, hip_height, "m", ABOVE(0), TO(20), "the hip above the ground at this end, as taped")},
    {CHOICE(tside_end, level_from, levels, TSIDE_FROM_CENTRELINE, "what the level places of member and keep-outs are measured from: outboard from the tunnel's centreline, or inboard from the bow's outer face at hip height, outboard of it negative")},
    {GROUP(tside_end, guide, guide, "the guide")},
    {GROUP(tside_end, footing, footing, "how the foot of a guide stands that is fixed there")},
    {GROUP(tside_end, extender, extender, "the extender"), APPLIES(tside_end, hung, ONLY(TSIDE_ON_EXTENDER))},
    {LIST(tside_end, keep_outs, keep_out_count, keep_out, tside_keep_out, TSIDE_KEEP_OUTS, "rectangles in the end wall's plane that tube and guide must miss")},
};
/* clang-format on */
TABLE(tside_i_end_table, end_rows);

/* clang-format off */
static const tside_field limits_rows[] = {
    {OPTIONAL(tside_limits, twist, "rad", ABOVE(0), TO(100), "greatest twist of the bar, end to end")},
    {OPTIONAL(tside_limits, lag, "m", ABOVE(0), TO(10), "greatest elastic lag of the far end")},
    {OPTIONAL(tside_limits, kick_out, "m", FROM(0), TO(10), "greatest kick out of the guide's foot under the eye's placing error")},
    {OPTIONAL(tside_limits, side_force, "N", ABOVE(0), TO(1e6), "greatest running side force on the eye")},
};
/* clang-format on */
TABLE(tside_i_limits_table, limits_rows);

static const char *const hands[] = {"right", "left"};
static const char *const ropes[] = {"none", "pressing", "straight", "zigzag"};
#define STRUNG (ONLY(TSIDE_STRAIGHT_ROPES) | ONLY(TSIDE_ZIGZAG_ROPE))
#define PRESSING APPLIES(tside_side, ropes, ONLY(TSIDE_ROPES) | STRUNG)

static const char *const slacks[] = {"enough", "given"};

/* clang-format off */
static const tside_field roping_rows[] = {
    {NUMBER(tside_roping, hook_out, "m", FROM(-1), TO(2), 0, OURS, "upper hooks outboard of the curtain's fixing, level"), MEASURED(0.25 * IN)},
    {NUMBER(tside_roping, hook_above, "m", FROM(-1), TO(5), 0, OURS, "upper hooks above the curtain's fixing"), MEASURED(0.25 * IN)},
    {OPTIONAL(tside_roping, anchor_height, "m", FROM(-5), TO(20), "anchors above grade, else a hand's breadth below the shut roll")},
    {OPTIONAL(tside_roping, anchor_out, "m", FROM(-2), TO(5), "anchors outboard of a plumb line from the curtain's fixing, else below where the curtain touches the shut roll")},
    {NUMBER(tside_roping, pitch, "m", FROM(0.05), TO(6), 4 * FT, PRACTICE, "from hook to hook of a row, at most: a hook at every bow")},
    {CHOICE(tside_roping, slack, slacks, TSIDE_SLACK_ENOUGH, "how long a rope is: enough to pass over the roll, or as its line gives")},
    {OPTIONAL(tside_roping, bow_spacing, "m", FROM(0.3), TO(10), "between bows, on which wind that blows inward presses the film")},
    {GROUP(tside_roping, line, give, "how the rope gives"), APPLIES(tside_roping, slack, ONLY(TSIDE_SLACK_GIVEN))},
    {GROUP(tside_roping, film, give, "how the film gives from rope to rope, and from bow to bow")},
    {NUMBER(tside_roping, ends, "m", FROM(0), TO(10), 0.5, PRACTICE, "rope for tying at each of its ends")},
    {OPTIONAL(tside_roping, rope_limit, "N", ABOVE(0), TO(1e6), "allowable tension of the rope, with its knots and its age")},
    {OPTIONAL(tside_roping, hook_limit, "N", ABOVE(0), TO(1e6), "allowable pull on an upper hook")},
    {OPTIONAL(tside_roping, anchor_limit, "N", ABOVE(0), TO(1e6), "allowable pull on an anchor")},
    {OPTIONAL(tside_roping, film_limit, "N/m", ABOVE(0), TO(1e6), "allowable tension of the film")},
    {OPTIONAL(tside_roping, screw_limit, "N", ABOVE(0), TO(1e6), "allowable pull on a screw of the rail")},
};
/* clang-format on */
TABLE(tside_i_roping_table, roping_rows);

/* clang-format off */
static const tside_field side_rows[] = {
    {CHOICE(tside_side, hand, hands, TSIDE_RIGHT, "hand of the side, seen from outside the drive's end wall looking in")},
    {REQUIRED(tside_side, length, "m", TO(500), "length along the side, from end bow to end bow"), MEASURED(2 * IN)},
    {NUMBER(tside_side, out_of_level, "m", FROM(-1), TO(1), 0, OURS, "hip less sill at the drive's end, less the same at the far end")},
    {NUMBER(tside_side, diameter_difference, "1", FROM(-0.5), TO(0.5), 0, OURS, "relative difference of the roll's diameter, drive's end less far end")},
    {GROUP(tside_side, frame, frame, "the bow")},
    {GROUP(tside_side, curtain, curtain, "the curtain")},
    {GROUP(tside_side, bar, bar, "the roll bar")},
    {GROUP(tside_side, stops, stops, "shut and open")},
    {GROUP(tside_side, drive, drive, "the drive")},
    {GROUP(tside_side, cable, cable, "the cable from supply to drive")},
    {GROUP(tside_side, crank, crank, "the hand crank")},
    {GROUP(tside_side, drive_end, end, "the end wall with the drive")},
    {GROUP(tside_side, free_end, end, "the other end wall")},
    {GROUP(tside_side, collar, collar, "the collar at the free end")},
    {CHOICE(tside_side, ropes, ropes, TSIDE_NO_ROPES, "whether ropes press on the roll, and how they run")},
    {NUMBER(tside_side, friction, "1", FROM(0), TO(5), 0.15, PRACTICE, "friction as a fraction of the lift"), MEASURED(0.05), APPLIES(tside_side, ropes, ONLY(TSIDE_NO_ROPES)), UNUSUAL_OUTSIDE(0.1, 0.4)},
    {NUMBER(tside_side, friction, "1", FROM(0), TO(5), 0.25, PRACTICE, "friction as a fraction of the lift"), MEASURED(0.05), PRESSING, UNUSUAL_OUTSIDE(0.1, 0.4)},
    {NUMBER(tside_side, rope_pressure, "N/m", FROM(0), TO(1e4), 0, OURS, "force of the ropes on the roll, per metre of bar"), MEASURED(2), PRESSING},
    {NUMBER(tside_side, rope_friction, "1", FROM(0), TO(2), 0.3, OURS, "coefficient of friction of the ropes on the curtain"), PRESSING},
    {GROUP(tside_side, rope, roping, "the ropes, their hooks and anchors"), APPLIES(tside_side, ropes, STRUNG)},
    {GROUP(tside_side, limits, limits, "what must not be exceeded")},
    {GROUP(tside_side, air, air, "house and weather, where air is asked")},
    {GROUP(tside_side, wind, wind, "the wind asked about")},
    {LIST(tside_side, bars, bar_count, bar, tside_bar, TSIDE_BARS, "bars to choose the lightest of")},
};
/* clang-format on */
TABLE(tside_i_side_table, side_rows);

/* clang-format off */
static const tside_field keep_off_rows[] = {
    {RESULT(tside_keep_off, guide, "m", "how far the guide's pipe keeps off the keep-out")},
    {RESULT_OPTIONAL(tside_keep_off, tube, "m", "how far the extender's tube does")},
};
/* clang-format on */
TABLE(tside_i_keep_off_table, keep_off_rows);

/* clang-format off */
static const tside_field end_plan_rows[] = {
    {RESULT(tside_end_plan, eye_x, "m", "eye, or top of a fixed guide, outboard of the tunnel's centreline")},
    {RESULT(tside_end_plan, eye_y, "m", "eye, or top of a fixed guide, height")},
    {RESULT(tside_end_plan, ground, "m", "height of the ground there")},
    {GROUP(tside_end_plan, stand, stand, "places along the house")},
    {GROUP(tside_end_plan, sweep, sweep, "what the guide does over the travel")},
    {RESULT_COUNT(tside_end_plan, skew_given, "1 where the guide hangs")},
    {GROUP(tside_end_plan, skew, skew, "how the guide leans along the house"), APPLIES(tside_end_plan, skew_given, ONLY(1))},
    {RESULT_COUNT(tside_end_plan, fixed_given, "1 where the guide is fixed at its foot")},
    {GROUP(tside_end_plan, fixed, fixed, "the fixed guide"), APPLIES(tside_end_plan, fixed_given, ONLY(1))},
    {GROUP(tside_end_plan, fixed_running, fixed_load, "what it carries, running"), APPLIES(tside_end_plan, fixed_given, ONLY(1))},
    {GROUP(tside_end_plan, fixed_stalled, fixed_load, "what it carries at stall"), APPLIES(tside_end_plan, fixed_given, ONLY(1))},
    {RESULT_OPTIONAL(tside_end_plan, hung_force, "N", "greatest running side force if the fixed guide hung")},
    {RESULT(tside_end_plan, hung_force_stall, "N", "greatest side force at stall if the fixed guide hung"), .optional = 1,
     .given_offset = offsetof(tside_end_plan, hung_force_given)},
    {RESULT_COUNT(tside_end_plan, layout_given, "1 on an extender")},
    {GROUP(tside_end_plan, layout, layout, "the extender"), APPLIES(tside_end_plan, layout_given, ONLY(1))},
    {RESULT(tside_end_plan, side_force, "N", "greatest running side force on the eye")},
    {RESULT(tside_end_plan, side_force_turns, "turn", "turns of the bar since shut where it is greatest")},
    {RESULT(tside_end_plan, side_force_stall, "N", "greatest side force outboard, stalled going up; at the free end as running")},
    {RESULT(tside_end_plan, side_force_jam, "N", "greatest side force inboard, jammed coming down")},
    {RESULT_OPTIONAL(tside_end_plan, stand_off_most, "m", "greatest stand-off that the eye bolt bears")},
    {RESULT(tside_end_plan, past_bolt_most, "m", "greatest curtain past the end bow that this allows in line"), .optional = 1,
     .given_offset = offsetof(tside_end_plan, stand_off_most_given)},
    {RESULT(tside_end_plan, wind_eye, "N", "what wind along the house pushes the eye with, by guide and drive; 0 without wind")},
    {RESULT(tside_end_plan, wind_tube, "N/m", "what it pushes along the extender's tube with; 0 without wind")},
    {RESULT(tside_end_plan, uplift, "N", "greatest lift of the eye beyond the guide's weight, running")},
    {RESULT(tside_end_plan, chain_swing, "m", "how far the drive's torque may swing the foot inboard at open, about the chain")},
    {RESULT_OPTIONAL(tside_end_plan, hip_kick_out, "m", "kick out if the guide hung on the hip")},
    {RESULT(tside_end_plan, hip_lean_greatest, "rad", "greatest lean either way if the guide hung on the hip"), .optional = 1,
     .given_offset = offsetof(tside_end_plan, hip_kick_out_given)},
    {RESULT_OPTIONAL(tside_end_plan, hip_torque, "N m", "worst torque at the drive if the guide hung on the hip")},
    {LIST(tside_end_plan, keep_offs, keep_off_count, keep_off, tside_keep_off, TSIDE_KEEP_OUTS, "how far guide and tube keep off each keep-out of the end, in their order")},
};
/* clang-format on */
TABLE(tside_i_end_plan_table, end_plan_rows);

static const char *const finding_codes[] = {
#define FINDING(code, name, unit, stops, mends, sentence) #name,
    TSIDE_FINDING_LIST(FINDING)
#undef FINDING
};
static const char *const finding_ends[] = {"drive_end", "free_end"};

/* clang-format off */
static const tside_field finding_rows[] = {
    {CHOICE(tside_finding, code, finding_codes, 0, "what was found")},
    {CHOICE(tside_finding, end, finding_ends, 0, "at which end of the side")},
    {RESULT_COUNT(tside_finding, index, "which keep-out or strength line, or -1")},
    {RESULT(tside_finding, value, "", "what was found, in the unit of its sentence")},
    {RESULT(tside_finding, bound, "", "what it should have kept to")},
};
/* clang-format on */
TABLE(tside_i_finding_table, finding_rows);

static const char *const fits[] = {"chosen", "larger", "fails", "refused"};
#define COMPARED (ONLY(TSIDE_DRIVE_LARGER) | ONLY(TSIDE_DRIVE_FAILS))

/* clang-format off */
static const tside_field choice_rows[] = {
    {CHOICE(tside_drive_choice, fit, fits, 0, "what became of the drive")},
    {CHOICE(tside_drive_choice, finding, finding_codes, 0, "why it fails"), APPLIES(tside_drive_choice, fit, ONLY(TSIDE_DRIVE_FAILS))},
    {RESULT(tside_drive_choice, value, "", "what was found; of a larger drive its rated torque"), APPLIES(tside_drive_choice, fit, COMPARED)},
    {RESULT(tside_drive_choice, bound, "", "what it should have kept to; of a larger drive the chosen one's rated torque"), APPLIES(tside_drive_choice, fit, COMPARED)},
    {RESULT_COUNT(tside_drive_choice, status, "how its plan ended, if it was refused"), APPLIES(tside_drive_choice, fit, ONLY(TSIDE_DRIVE_REFUSED))},
};
/* clang-format on */
TABLE(tside_i_drive_choice_table, choice_rows);

/* clang-format off */
static const tside_field blowing_rows[] = {
    {GROUP(tside_blowing, pressure, pressure, "what the wind asked presses with")},
    {RESULT(tside_blowing, height, "m", "height above grade that counts by a code")},
    {RESULT(tside_blowing, hanging, "m", "curtain from its fixing to the roll")},
    {RESULT(tside_blowing, weight, "N/m", "weight of bar, clips and wraps, and half the hanging film's, by the metre")},
    {RESULT(tside_blowing, lean, "rad", "lean of the straight line from fixing to roll")},
    {GROUP(tside_blowing, gives_way, loosening, "net pressures at which the curtain gives way")},
    {RESULT(tside_blowing, leaves_speed, "m/s", "speed at which the bar leaves the wall"), .optional = 1, .given_offset = offsetof(tside_blowing, leaves_speed_given)},
    {RESULT(tside_blowing, unseals_speed, "m/s", "speed at which the roll rises above the sill"), .optional = 1, .given_offset = offsetof(tside_blowing, leaves_speed_given)},
    {RESULT(tside_blowing, flies_speed, "m/s", "speed at which the curtain flies"), .optional = 1, .given_offset = offsetof(tside_blowing, leaves_speed_given)},
    {RESULT_COUNT(tside_blowing, needs_ropes, "1 where the wind asked opens the side, unless ropes hold it")},
    {RESULT_COUNT(tside_blowing, stands_given, "1 where the curtain does not fly in the wind asked")},
    {GROUP(tside_blowing, stands, blown, "how it stands in the wind asked"), APPLIES(tside_blowing, stands_given, ONLY(1))},
};
/* clang-format on */
TABLE(tside_i_blowing_table, blowing_rows);

static const char *const pitch_rules[] = {"rope", "hook", "anchor", "film", "bar", "nothing"};

/* clang-format off */
static const tside_field rope_plan_rows[] = {
    {RESULT(tside_rope_plan, hook_x, "m", "upper hooks, outboard of the tunnel's centreline")},
    {RESULT(tside_rope_plan, hook_y, "m", "upper hooks, above grade")},
    {RESULT(tside_rope_plan, anchor_x, "m", "anchors, outboard of the tunnel's centreline")},
    {RESULT(tside_rope_plan, anchor_y, "m", "anchors, above grade")},
    {GROUP(tside_rope_plan, bears, roped, "where ropes are and what they bear in the wind asked; no force without")},
    {GROUP(tside_rope_plan, longest, rope_over, "the rope over the roll where it needs most slack")},
    {GROUP(tside_rope_plan, hardest, rope_over, "the rope over the roll where the ropes press hardest on it")},
    {RESULT(tside_rope_plan, edge, "m", "along the house, from the film's edge to the last rope, at mid height")},
    {RESULT_COUNT(tside_rope_plan, bay_given, "1 where wind is asked")},
    {GROUP(tside_rope_plan, bay, bay_load, "bar, rail and screws between two ropes"), APPLIES(tside_rope_plan, bay_given, ONLY(1))},
    {RESULT_COUNT(tside_rope_plan, pitch_keeps, "1 where there is a pitch at which all keep to their limits")},
    {RESULT(tside_rope_plan, pitch_most, "m", "greatest pitch at which all keep to their limits, up to 6 m"), APPLIES(tside_rope_plan, pitch_keeps, ONLY(1))},
    {CHOICE(tside_rope_plan, rule, pitch_rules, 0, "what keeps the pitch from being greater"), APPLIES(tside_rope_plan, pitch_keeps, ONLY(1))},
    {RESULT_OPTIONAL(tside_rope_plan, film_inward, "N/m", "tension of the film from bow to bow, if the wind asked pressed inward")},
    {RESULT_OPTIONAL(tside_rope_plan, stays_put, "Pa", "net pressure, outward, above which the drive may not move the bar")},
    {RESULT_OPTIONAL(tside_rope_plan, stays_put_speed, "m/s", "speed above which the drive may not move the bar")},
};
/* clang-format on */
TABLE(tside_i_rope_plan_table, rope_plan_rows);

/* clang-format off */
static const tside_field plan_rows[] = {
    {RESULT(tside_plan, curtain_length, "m", "length of the curtain on the bar")},
    {RESULT(tside_plan, bar_length, "m", "length of the bar")},
    {RESULT(tside_plan, fixing_x, "m", "the curtain's fixing, outboard of the tunnel's centreline")},
    {GROUP(tside_plan, shut, position, "the bar when shut")},
    {GROUP(tside_plan, open, position, "the bar when open")},
    {RESULT(tside_plan, bar_turns, "turn", "turns of the bar from shut to open")},
    {RESULT(tside_plan, drive_turns, "turn", "turns of the drive against its own housing from shut to open")},
    {RESULT(tside_plan, drive_turns_least, "turn", "the same with core, packing and thickness at their greatest")},
    {RESULT(tside_plan, drive_turns_most, "turn", "the same with core, packing and thickness at their smallest")},
    {RESULT(tside_plan, highest, "m", "highest possible underside of the roll, above grade")},
    {RESULT(tside_plan, opening, "m", "clear opening at the drive's end")},
    {RESULT(tside_plan, opening_far, "m", "clear opening at the far end, less the lags when open")},
    {RESULT(tside_plan, seal, "m", "overlap of the roll below the sill when shut")},
    {GROUP(tside_plan, worst, torque, "torque where the drive must give most")},
    {RESULT(tside_plan, worst_underside, "m", "height of the roll's underside there, above grade")},
    {RESULT(tside_plan, design_torque, "N m", "worst torque times the safety factor: what the drive must be rated for")},
    {RESULT_OPTIONAL(tside_plan, drive_utilisation, "1", "design torque over rated torque")},
    {GROUP(tside_plan, least_down, torque, "torque where least brings the bar down")},
    {RESULT(tside_plan, work, "J", "gain in potential energy from shut to open, of curtain, bar, drive and guide")},
    {RESULT(tside_plan, longest_side, "m", "longest side that the drive lifts with its safety factor, from end bow to end bow"), .optional = 1,
     .given_offset = offsetof(tside_plan, drive_utilisation_given)},
    {RESULT(tside_plan, twist, "rad", "twist of the bar end to end, where the drive must give most")},
    {RESULT(tside_plan, lag_elastic, "m", "far end lower by the bar's twist")},
    {RESULT(tside_plan, lag_play, "m", "far end lower by the splices' play")},
    {RESULT(tside_plan, lag_unequal, "m", "far end lower by a roll of unequal diameter, when open")},
    {RESULT(tside_plan, lag_level, "m", "far end's opening less by hip and sill out of level")},
    {RESULT(tside_plan, stall_torque, "N m", "the most that the drive can put into bar and guide")},
    {RESULT_COUNT(tside_plan, run_given, "1 for a motor with stall torque and no-load speed")},
    {GROUP(tside_plan, run, run, "how the motor runs it"), APPLIES(tside_plan, run_given, ONLY(1))},
    {RESULT_COUNT(tside_plan, cranking_given, "1 where a crank is fitted")},
    {GROUP(tside_plan, cranking, cranking, "what its crank asks"), APPLIES(tside_plan, cranking_given, ONLY(1))},
    {RESULT_COUNT(tside_plan, splices, "joints along the bar")},
    {RESULT_COUNT(tside_plan, air_given, "1 where air is asked")},
    {GROUP(tside_plan, airing, airing, "air with the side open"), APPLIES(tside_plan, air_given, ONLY(1))},
    {RESULT_OPTIONAL(tside_plan, turns_for_changes, "turn", "turns of the drive from shut for the changes of air asked")},
    {RESULT_OPTIONAL(tside_plan, turns_for_rise, "turn", "turns of the drive from shut for the rise asked")},
    {RESULT(tside_plan, bar_growth, "m", "how much the bar grows by its warming, at the free end"), .optional = 1,
     .given_offset = offsetof(tside_plan, air_given)},
    {RESULT_COUNT(tside_plan, wind_given, "1 where wind is asked")},
    {GROUP(tside_plan, blowing, blowing, "wind on the side shut, while no rope holds it"), APPLIES(tside_plan, wind_given, ONLY(1))},
    {RESULT_COUNT(tside_plan, rope_given, "1 where it is known how the ropes run")},
    {GROUP(tside_plan, rope, rope_plan, "ropes over the side"), APPLIES(tside_plan, rope_given, ONLY(1))},
    {RESULT(tside_plan, splice_near, "m", "from the curtain's edge at the drive to where the nearest joint begins; 0 without joints")},
    {RESULT(tside_plan, bar_beyond_drive, "m", "bar from the curtain's edge to the drive's centre")},
    {RESULT(tside_plan, bar_beyond_free, "m", "bar beyond the curtain's edge at the free end")},
    {GROUP(tside_plan, drive_end, end_plan, "the end wall with the drive")},
    {GROUP(tside_plan, free_end, end_plan, "the other end wall")},
    {LIST(tside_plan, lines, line_count, strength_line, tside_strength_line, TSIDE_STRENGTH_LINES, "strength, line by line")},
    {LIST(tside_plan, findings, finding_count, finding, tside_finding, TSIDE_FINDINGS, "what is legal but unwise")},
};
/* clang-format on */
TABLE(tside_i_plan_table, plan_rows);

/* clang-format off */
static const tside_field stick_rows[] = {
    {RESULT(tside_bar_stick, length, "m", "its length as cut")},
    {RESULT(tside_bar_stick, from, "m", "from the drive's centre along the bar to where it begins")},
    {RESULT(tside_bar_stick, to, "m", "and to where it ends")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_bar_stick_table, stick_rows, tside_bar_stick);

/* clang-format off */
static const tside_field turn_rows[] = {
    {RESULT(tside_turn, turn, "turn", "turns of the drive since shut; the last row is open")},
    {RESULT(tside_turn, taken_up, "m", "curtain taken up in this turn")},
    {RESULT(tside_turn, total, "m", "curtain taken up since shut")},
    {RESULT(tside_turn, diameter, "m", "diameter of the roll")},
    {RESULT(tside_turn, x, "m", "the bar's axis, outboard of the tunnel's centreline")},
    {RESULT(tside_turn, y, "m", "the bar's axis, above grade")},
    {RESULT(tside_turn, underside, "m", "underside of the roll, above grade")},
    {RESULT(tside_turn, opening, "m", "clear opening above the sill")},
    {RESULT(tside_turn, torque, "N m", "torque at the drive, going up")},
    {RESULT(tside_turn, lean, "rad", "lean of the drive's guide, foot outboard positive")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_turn_table, turn_rows, tside_turn);
