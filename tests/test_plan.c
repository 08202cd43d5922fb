/* SPDX-License-Identifier: MIT */
/* The plan against the functions it is made of; findings, refusals, searches, the turn table and the batch. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "expect.h"

static tside_plan planned(const tside_side *side)
{
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(side, &plan, &fault));
    return plan;
}

static tside_side plain(void)
{
    tside_side side;
    bench_side(&side);
    return side;
}

static void on_hip(tside_side *side)
{
    side->drive_end.hung = side->free_end.hung = TSIDE_ON_HIP;
    side->stops.gap = 0.15;
}

/* --- made of its parts --- */

START_TEST(plan_is_its_parts)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_roll roll = {side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
    tside_collar collar = tside_drive_collar(&side.drive);
    tside_hang hang;
    tside_sweep sweep;
    tside_layout layout;
    tside_metal_values metal;
    tside_section section;
    tside_torque worst;
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    tside_load load;
    double eye_x, work, longest, stall, twist, greatest = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    plan = planned(&side);
    ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
    ANSWERS(tside_eye_best(&travel, side.curtain.hip + side.drive_end.rise, collar.offset, &eye_x, &fault));
    ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, eye_x, side.curtain.hip + side.drive_end.rise, &hang, &fault));
    ANSWERS(tside_guide_sweep(&travel, &side.drive_end.guide, &collar, eye_x, hang.eye_y, &sweep, &fault));
    ANSWERS(tside_extender_layout(&side.drive_end.extender, &bow, side.curtain.hip, eye_x, hang.eye_y, &travel, &layout, &fault));
    ANSWERS(tside_material_values(&side.bar.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.bar.tube, metal.density, &section, &fault));
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = side.length + 2 * side.curtain.past;
    load.bar_mass = section.mass;
    load.clip_mass = side.bar.clip_mass;
    load.areal_mass = side.curtain.areal_mass;
    load.wet = side.curtain.wet;
    load.end_mass = side.drive.mass + side.collar.mass + section.mass * (side.bar.past_drive + side.bar.past_free);
    load.friction = side.friction;
    ANSWERS(tside_lift_worst(&travel, &load, &hang, &worst, &fault));
    ANSWERS(tside_lift_work(&travel, &load, &hang, plan.bar_turns, &work, &fault));
    ANSWERS(tside_lift_longest(&travel, &load, &hang, side.drive.rated_torque / side.drive.safety_factor, &longest, &fault));
    ANSWERS(tside_drive_stall(&side.drive, worst.drive, &stall, &fault));
    ANSWERS(tside_bar_twist(worst.per_metre, load.length, metal.shear_modulus, section.torsion, &twist, &fault));
    ANSWERS(tside_extender_strength(&side.drive_end.extender, &layout, plan.drive_end.side_force_stall, hang.weight, TSIDE_DRIVE_END, lines, &fault));
    NEAR(plan.drive_end.eye_x, eye_x, 1e-12, "eye", 0);
    NEAR(plan.drive_end.sweep.cut_length, sweep.cut_length, 1e-12, "guide", 0);
    NEAR(plan.drive_end.sweep.kick_out_error, sweep.kick_out_error, 1e-12, "kick", 0);
    NEAR(plan.drive_end.layout.angle, layout.angle, 1e-9, "angle", 0);
    NEAR(plan.drive_end.layout.cut_length, layout.cut_length, 1e-9, "extender", 0);
    NEAR(plan.worst.drive, worst.drive, 1e-9, "worst", 0);
    NEAR(plan.work, work, 1e-9 * work, "work", 0);
    NEAR(plan.longest_side, longest - 2 * side.curtain.past, 1e-9 * longest, "longest", 0);
    NEAR(plan.stall_torque, stall, 0, "stall", 0);
    NEAR(plan.twist, twist, 1e-12, "twist", 0);
    NEAR(plan.lag_elastic, twist * plan.open.diameter / 2, 1e-12, "elastic lag, worst when open", 0);
    NEAR(plan.bar_length, load.length + side.bar.past_drive + side.bar.past_free, 1e-12, "bar", 0);
    for (int i = 0; i < plan.line_count; i++)
        if (plan.lines[i].code == TSIDE_EXTENDER_BENDING && plan.lines[i].end == TSIDE_DRIVE_END)
            NEAR(plan.lines[i].demand, lines[0].demand, 1e-6 * lines[0].demand, "extender bending", 0);
    for (int i = 0; i <= 1000; i++) {
        double force, uplift;
        ANSWERS(tside_side_force(&travel, &load, &hang, plan.bar_turns * i / 1000, &force, &uplift, &fault));
        greatest = fmax(greatest, force);
    }
    NEAR(plan.drive_end.side_force, greatest, 1e-6 * greatest, "side force", 0);
    ck_assert(plan.drive_end.side_force >= greatest * (1 - 1e-12));
}
END_TEST

START_TEST(hands_are_mirrors_and_nil_travel_plans)
{
    tside_side side = plain();
    tside_plan right = planned(&side), left, nil;
    side.hand = TSIDE_LEFT;
    left = planned(&side);
    ck_assert(!memcmp(&right, &left, sizeof right)); /* numbers are the hand's own: mirrored, not changed */
    side = plain();
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = side.stops.open_height = 0.8;
    side.stops.core_spread = side.stops.packing_spread = side.stops.thickness_spread = 0;
    nil = planned(&side);
    NEAR(nil.drive_turns, 0, 1e-12, "turns", 0);
    NEAR(nil.work, 0, 1e-9, "work", 0);
    NEAR(nil.drive_end.sweep.kick_out, 0, 1e-12, "kick", 0);
}
END_TEST

START_TEST(spreads_ropes_and_lags)
{
    tside_side side = plain();
    tside_plan a = planned(&side), b;
    ck_assert(a.drive_turns_least < a.drive_turns && a.drive_turns < a.drive_turns_most);
    side.stops.core_spread = side.stops.packing_spread = side.stops.thickness_spread = 0;
    b = planned(&side);
    NEAR(b.drive_turns_least, b.drive_turns, 1e-9, "no spread", 0);
    NEAR(b.drive_turns_most, b.drive_turns, 1e-9, "no spread", 0);
    side.out_of_level = 0.02;
    side.diameter_difference = 0.01;
    b = planned(&side);
    NEAR(a.opening_far - b.opening_far, 0.02 + 0.01 * b.open.taken_up, 1e-12, "lags", 0);
    NEAR(b.lag_play, side.bar.splices * side.bar.play * a.open.diameter / 2, 1e-12, "play", 0);
    side.ropes = TSIDE_ROPES;
    side.rope_pressure = 10;
    b = planned(&side);
    NEAR(b.worst.up - a.worst.up, 2 * side.rope_friction * 10 * a.open.diameter / 2 * a.curtain_length, 1e-9, "ropes", 0);
    side = plain();
    side.length = a.longest_side;
    b = planned(&side);
    NEAR(b.drive_utilisation, 1, 1e-9, "at the longest side", 0);
}
END_TEST

/* --- findings --- */

static int finds(const tside_plan *plan, tside_finding_code code)
{
    for (int i = 0; i < plan->finding_count; i++)
        if (plan->findings[i].code == code)
            return 1;
    return 0;
}

/* A side changed so that one code is found; the plain side must be free of it, but for those that a running drive on a chain always has. */
static void provoke(tside_side *side, tside_finding_code code)
{
    tside_keep_out jamb = {4.6, 4.8, 1.2, 1.4};
    switch (code) {
    case TSIDE_FINDING_DRIVE_WEAK: side->drive.rated_torque = 10; break;
    case TSIDE_FINDING_STRENGTH: side->drive.stall_torque = 2000; break;
    case TSIDE_FINDING_LIMIT_TURNS: side->drive.limit_turns_given = 1, side->drive.limit_turns = 5; break;
    case TSIDE_FINDING_KEEP_OUT_TUBE: side->drive_end.keep_out_count = 1, side->drive_end.keep_outs[0] = (tside_keep_out){4.0, 4.2, 1.0, 1.6}; break;
    case TSIDE_FINDING_KEEP_OUT_GUIDE: side->free_end.keep_out_count = 1, side->free_end.keep_outs[0] = jamb; break;
    case TSIDE_FINDING_KICK: side->limits.kick_out_given = 1, side->limits.kick_out = 0.01; break;
    case TSIDE_FINDING_SIDE_FORCE: side->limits.side_force_given = 1, side->limits.side_force = 1; break;
    case TSIDE_FINDING_TWIST: side->limits.twist_given = 1, side->limits.twist = 0.001; break;
    case TSIDE_FINDING_LAG: side->limits.lag_given = 1, side->limits.lag = 1e-5; break;
    case TSIDE_FINDING_SEAL: side->stops.seal = 0.04; break;
    case TSIDE_FINDING_WRAPS: side->stops.wraps_shut = 0.5; break;
    case TSIDE_FINDING_STAYS_UP: side->friction = 1.2; break;
    case TSIDE_FINDING_CHAIN_SWING: break;
    case TSIDE_FINDING_THROWN:
    case TSIDE_FINDING_UPLIFT: on_hip(side); break;
    case TSIDE_FINDING_TIPS: side->frame.board = TSIDE_BOARD_OUTSIDE, side->frame.board_top = 0.35, side->frame.board_stand = 0.12; break;
    case TSIDE_FINDING_STALL_GUESSED: side->drive.stall_torque_given = 0; break;
    case TSIDE_FINDING_UNUSUAL: side->bar.screws = 9; break;
    case TSIDE_FINDING_CODES: break;
    }
}

START_TEST(every_finding_is_provoked)
{
    tside_side base = plain();
    tside_plan before;
    base.drive_end.guide.chain = 0;
    base.free_end.guide.chain = 0.0635;
    before = planned(&base);
    for (int code = 0; code < TSIDE_FINDING_CODES; code++) {
        tside_side side = plain();
        tside_plan plan;
        provoke(&side, (tside_finding_code)code);
        plan = planned(&side);
        ck_assert_msg(finds(&plan, (tside_finding_code)code), "finding %d is not found", code);
        if (code != TSIDE_FINDING_UNUSUAL) /* a chain of nothing is itself unusual */
            ck_assert_msg(!finds(&before, (tside_finding_code)code), "finding %d is found where there is none", code);
    }
    base = plain();
    before = planned(&base);
    ck_assert(!finds(&before, TSIDE_FINDING_UNUSUAL));
}
END_TEST

START_TEST(keep_outs_are_measured)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    double x = plan.drive_end.eye_x, needed = side.drive_end.guide.tube.diameter / 2, foot = plan.drive_end.sweep.length;
    /* a path below the hanging foot: nearer than half the pipe, and just not */
    for (int hits = 0; hits <= 1; hits++) {
        side.drive_end.keep_out_count = 1;
        side.drive_end.keep_outs[0] = (tside_keep_out){x - 1, x + 1, 0, plan.drive_end.eye_y - foot - needed + (hits ? 1e-6 : -1e-6)};
        plan = planned(&side);
        ck_assert_int_eq(finds(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE), hits);
    }
}
END_TEST

START_TEST(texts_are_total)
{
    char whole[512], cut[8];
    for (int code = -3; code < 100; code++) {
        tside_finding finding = {(tside_finding_code)code, TSIDE_DRIVE_END, -1, 1.5, 2.5};
        size_t length = tside_finding_text(&finding, whole, sizeof whole);
        memset(cut, 'x', sizeof cut);
        ck_assert(tside_finding_text(&finding, cut, 4) == length && cut[4] == 'x');
        ck_assert(tside_finding_text(&finding, NULL, 0) == length);
        ck_assert((length > 0) == (code >= 0 && code < TSIDE_FINDING_CODES));
        ck_assert(!*tside_strength_text(code) == (code < 0 || code >= TSIDE_STRENGTH_CODES));
        ck_assert(tside_finding_stops(code) == 0 || (code >= 0 && code < TSIDE_FINDING_CODES));
    }
}
END_TEST

START_TEST(every_strength_line_appears)
{
    tside_side side = plain();
    tside_plan extender = planned(&side), hip;
    on_hip(&side);
    hip = planned(&side);
    for (int code = 0; code < TSIDE_STRENGTH_CODES; code++) {
        int seen = 0;
        for (int i = 0; i < extender.line_count; i++)
            seen |= (int)extender.lines[i].code == code;
        for (int i = 0; i < hip.line_count; i++)
            seen |= (int)hip.lines[i].code == code;
        ck_assert_msg(seen, "no line for %s", tside_strength_text(code));
    }
    for (int i = 0; i < extender.line_count; i++) {
        const tside_strength_line *line = extender.lines + i;
        if (line->utilisation_given)
            NEAR(line->utilisation, line->demand / line->limit, 1e-15, "utilisation", i);
        if (line->yield_needed_given)
            ck_assert(!line->limit_given && line->verdict == TSIDE_VERDICT_LOOK);
    }
}
END_TEST

/* --- refusals, by their full path --- */

#define PLAN_REFUSES(status, path, relation) \
    do { \
        tside_plan plan; \
        REFUSES(tside_plan_side(&side, &plan, &fault), plan, status, path, relation); \
    } while (0)

START_TEST(refusals_name_the_whole_path)
{
    tside_side side = plain();
    tside_fault fault;
    double margin;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.open_height = 0.1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "stops.open_height", TSIDE_BELOW);
    side = plain();
    side.drive_end.rise = 0.01;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    ck_assert_str_eq(fault.other, "drive_end.guide.eye_clearance");
    ck_assert(fault.gap < 0);
    side.drive_end.rise = fault.bound;
    side.drive_end.extender.bar_clearance = 0;
    if (tside_plan_side(&side, &(tside_plan){0}, &fault) != TSIDE_OK) /* the eye clears; the tube then may not */
        ck_assert_str_eq(fault.field, "drive_end.extender.bar_clearance");
    side = plain();
    side.free_end.extender.member_height = 2.5;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.extender.member_height", TSIDE_NOT_BELOW);
    side = plain();
    side.drive_end.guide.margin = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.guide.margin", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "drive_end.guide.ground_clearance");
    margin = fault.bound;
    NEAR(fault.gap, side.drive_end.guide.ground_clearance - (1 - margin), 1e-4, "the foot, nearly plumb, comes so near to grade", 0);
    side.drive_end.guide.margin = margin;
    NEAR(planned(&side).drive_end.sweep.foot_lowest, side.drive_end.guide.ground_clearance, 1e-9, "the greatest margin that fits", 0);
    side = plain();
    side.free_end.guide.chain = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.guide.chain", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "stops");
    side = plain();
    side.drive_end.extender.tube.wall = NAN;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "drive_end.extender.tube.wall", TSIDE_NOT_FINITE);
    side = plain();
    side.curtain.areal_mass = -1;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "curtain.areal_mass", TSIDE_BELOW);
    side = plain();
    side.curtain.roll_lies = TSIDE_INBOARD;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "curtain.roll_lies", TSIDE_NO_RELATION);
    side = plain();
    side.free_end.guide.foot = TSIDE_FOOT_FIXED;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "free_end.guide.foot", TSIDE_NO_RELATION);
    side = plain();
    side.drive.place = TSIDE_BOTH_ENDS;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    side.drive.place = TSIDE_MID_BAR;
    PLAN_REFUSES(TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    side = plain();
    side.drive_end.keep_out_count = 2;
    side.drive_end.keep_outs[0] = (tside_keep_out){5, 6, 1, 2};
    side.drive_end.keep_outs[1] = (tside_keep_out){6, 5, 1, 2};
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].left", TSIDE_NOT_BELOW);
    ck_assert_int_eq(fault.index, 1);
    side = plain();
    side.bar.material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive.rated_voltage_given = 1;
    side.drive.rated_voltage = 24;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive.rated_voltage", TSIDE_NO_RELATION);
}
END_TEST

/* --- the turn table --- */

START_TEST(turn_table_sums_to_the_travel)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_turn rows[64];
    tside_fault fault;
    int count = -1;
    double sum = 0;
    ck_assert(tside_plan_turns(&side, rows, 3, &count, &fault) == TSIDE_TOO_SMALL);
    ck_assert_int_eq(count, (int)ceil(plan.drive_turns) + 1);
    ANSWERS(tside_plan_turns(&side, rows, count, &count, &fault));
    for (int i = 0; i < count; i++) {
        sum += rows[i].taken_up;
        NEAR(rows[i].total, sum, 1e-12, "total", i);
        if (i < count - 1)
            NEAR(rows[i].turn, i, 0, "turn", i);
    }
    NEAR(rows[count - 1].turn, plan.drive_turns, 1e-12, "open", 0);
    NEAR(rows[count - 1].total, plan.open.taken_up, 1e-12, "open", 0);
    NEAR(rows[count - 1].opening, plan.opening, 1e-12, "open", 0);
    NEAR(rows[count - 1].torque, plan.worst.drive, 1e-9, "worst when open", 0);
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = side.stops.open_height = 0.8;
    ANSWERS(tside_plan_turns(&side, rows, 1, &count, &fault));
    ck_assert_int_eq(count, 1);
}
END_TEST

/* --- searches --- */

START_TEST(least_rise_just_serves)
{
    tside_side side = plain();
    tside_fault fault;
    tside_plan plan;
    double rise, free;
    side.limits.kick_out_given = 1;
    side.limits.kick_out = 0.1;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    ANSWERS(tside_eye_least(&side, TSIDE_FREE_END, &free, &fault));
    side.drive_end.rise = rise;
    side.drive_end.extender.bar_clearance = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    plan = planned(&side);
    ck_assert(plan.drive_end.sweep.kick_out_error <= 0.1 + 1e-9);
    side.drive_end.rise = rise - 0.001;
    plan = planned(&side);
    ck_assert(plan.drive_end.sweep.kick_out_error > 0.1);
    side.limits.kick_out = 0;
    ck_assert(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault) == TSIDE_OUT_OF_REACH);
    ck_assert_str_eq(fault.field, "drive_end.rise");
    ck_assert(tside_eye_least(&side, (tside_which_end)2, &rise, &fault) == TSIDE_OUT_OF_BOUNDS);
}
END_TEST

START_TEST(smallest_bar_is_the_lightest_that_serves)
{
    static const double walls[] = {0.004, 0.0012, 0.002, 0.003};
    tside_side side = plain();
    tside_fault fault;
    double least = 0;
    int index, nearest = -1;
    ck_assert(tside_bar_smallest(&side, &index, &fault) == TSIDE_OUT_OF_BOUNDS);
    side.bar_count = 4;
    for (int i = 0; i < 4; i++) {
        side.bars[i] = side.bar;
        side.bars[i].tube.wall = walls[i];
    }
    side.limits.twist_given = 1;
    side.limits.twist = 100;
    side.drive.stall_torque = 60;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    /* a twist that the third bar just keeps to: the second, thinner, does not */
    side.bar = side.bars[2];
    side.limits.twist = planned(&side).twist * (1 + 1e-9);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 2);
    side.limits.twist = 1e-4;
    ck_assert(tside_bar_smallest(&side, &index, &fault) == TSIDE_OUT_OF_REACH);
    for (int i = 0; i < 4; i++) {
        double twist;
        side.bar = side.bars[i];
        twist = planned(&side).twist;
        if (!i || twist < least) {
            least = twist;
            nearest = i;
        }
    }
    ck_assert_int_eq(fault.index, nearest);
}
END_TEST

/* --- many sides --- */

enum { ROWS = 7 };

START_TEST(batch_is_the_loop_bit_for_bit)
{
    tside_side base = plain(), one;
    tside_fault fault;
    struct { double length, other; } rows[ROWS];
    double hips[ROWS], hand = TSIDE_LEFT, turns[ROWS], cut[ROWS], swing[ROWS], codes[ROWS];
    int statuses[ROWS];
    unsigned long long findings[ROWS];
    tside_input in[4];
    tside_output out[4];
    for (int i = 0; i < ROWS; i++) {
        rows[i].length = 20 + 5 * i;
        hips[i] = i == 3 ? NAN : 1.6 + 0.02 * i;
        turns[i] = cut[i] = swing[i] = codes[i] = -7;
    }
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "length", &in[0].place, &fault));
    in[0].data = &rows[0].length, in[0].stride = sizeof rows[0];
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "curtain.hip", &in[1].place, &fault));
    in[1].data = hips, in[1].stride = sizeof *hips;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "hand", &in[2].place, &fault));
    in[2].data = &hand, in[2].stride = 0;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "drive.limit_turns", &in[3].place, &fault));
    in[3].data = &rows[0].length, in[3].stride = 0; /* an optional number: laying it over gives it */
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_turns", &out[0].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_end.layout.cut_length", &out[1].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "drive_end.hip_kick_out", &out[2].place, &fault));
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "findings[0].code", &out[3].place, &fault));
    for (int k = 0; k < 4; k++)
        out[k].data = k == 0 ? turns : k == 1 ? cut : k == 2 ? swing : codes, out[k].stride = sizeof(double);
    ck_assert(tside_plan_sides(&base, ROWS, in, 4, out, 4, statuses, findings, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_int_eq(fault.index, 3);
    ck_assert_str_eq(fault.field, "curtain.hip");
    for (int i = 0; i < ROWS; i++) {
        tside_plan plan;
        unsigned long long bits = 0;
        one = base;
        one.length = rows[i].length;
        one.curtain.hip = hips[i];
        one.hand = TSIDE_LEFT;
        one.drive.limit_turns_given = 1;
        one.drive.limit_turns = rows[0].length;
        ck_assert_int_eq(statuses[i], (int)tside_plan_side(&one, &plan, NULL));
        if (i == 3) {
            ck_assert(turns[i] == -7 && cut[i] == -7 && findings[i] == 0);
            continue;
        }
        for (int k = 0; k < plan.finding_count; k++)
            bits |= 1ull << plan.findings[k].code;
        ck_assert(turns[i] == plan.drive_turns && cut[i] == plan.drive_end.layout.cut_length && findings[i] == bits && codes[i] == (double)plan.findings[0].code);
        ck_assert(swing[i] == (plan.drive_end.hip_kick_out_given ? plan.drive_end.hip_kick_out : -7));
    }
    hand = 0.5;
    ck_assert(tside_plan_sides(&base, 1, in + 2, 1, out, 1, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "hand");
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "frame", &in[1].place, &fault));
    statuses[0] = -9;
    ck_assert(tside_plan_sides(&base, 1, in, 2, out, 1, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS && fault.index == 1 && statuses[0] == -9);
    ck_assert(tside_plan_sides(&base, -1, NULL, 0, NULL, 0, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS);
    ANSWERS(tside_plan_sides(&base, 0, NULL, 0, NULL, 0, NULL, NULL, &fault));
}
END_TEST

Suite *plan_suite(void);

Suite *plan_suite(void)
{
    Suite *suite = suite_create("plan");
    TCase *tcase = tcase_create("plan");
    tcase_add_test(tcase, plan_is_its_parts);
    tcase_add_test(tcase, hands_are_mirrors_and_nil_travel_plans);
    tcase_add_test(tcase, spreads_ropes_and_lags);
    tcase_add_test(tcase, every_finding_is_provoked);
    tcase_add_test(tcase, keep_outs_are_measured);
    tcase_add_test(tcase, texts_are_total);
    tcase_add_test(tcase, every_strength_line_appears);
    tcase_add_test(tcase, refusals_name_the_whole_path);
    tcase_add_test(tcase, turn_table_sums_to_the_travel);
    tcase_add_test(tcase, least_rise_just_serves);
    tcase_add_test(tcase, smallest_bar_is_the_lightest_that_serves);
    tcase_add_test(tcase, batch_is_the_loop_bit_for_bit);
    suite_add_tcase(suite, tcase);
    return suite;
}
