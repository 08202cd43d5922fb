/* SPDX-License-Identifier: MIT */
/* The plan against the functions it is made of; findings, refusals, searches, the turn table and the batch. */
#include <check.h>
#include <limits.h>
#include <math.h>
#include <stdio.h>
#include <stddef.h>
#include <stdlib.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "expect.h"
#include "side/keepout.h"

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

/* kg/m */
static double bar_mass(const tside_bar *bar)
{
    tside_metal_values metal;
    tside_section section;
    tside_fault fault;
    ANSWERS(tside_material_values(&bar->material, &metal, &fault));
    ANSWERS(tside_round_section(&bar->tube, metal.density, &section, &fault));
    return section.mass;
}

static void on_hip(tside_side *side)
{
    side->drive_end.hung = side->free_end.hung = TSIDE_ON_HIP;
    side->stops.gap = 0.15;
}

static const tside_finding *finding_of(const tside_plan *plan, tside_finding_code code)
{
    for (int i = 0; i < plan->finding_count; i++)
        if (plan->findings[i].code == code)
            return plan->findings + i;
    return NULL;
}

static int finds(const tside_plan *plan, tside_finding_code code)
{
    return finding_of(plan, code) != NULL;
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
    ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, eye_x, side.curtain.hip + side.drive_end.rise, &hang, &sweep, &fault));
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
    ANSWERS(tside_lift_worst(&travel, &load, &hang, &worst, NULL, &fault));
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

/* Every number of a result, and of those within it. */
static void same_numbers(tside_kind kind, const void *got, const void *want, const char *what)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const char *a = (const char *)got + row[i].offset, *b = (const char *)want + row[i].offset;
        if (row[i].type == TSIDE_NUMBER) {
            double number = *(const double *)(const void *)a, wanted = *(const double *)(const void *)b;
            ck_assert_msg(fabs(number - wanted) <= 1e-12 * fmax(1, fabs(wanted)), "%s.%s: %.17g, not %.17g", what, row[i].name, number, wanted);
        } else if (row[i].type == TSIDE_CHOICE || row[i].type == TSIDE_COUNT)
            ck_assert_msg(*(const int *)(const void *)a == *(const int *)(const void *)b, "%s.%s", what, row[i].name);
        else
            ck_abort_msg("%s.%s is not compared", what, row[i].name);
    }
}

/* Both ends of a plumb, a leaning and a kinked side: whole results, by the functions that know no plan. */
START_TEST(every_result_is_that_of_its_function)
{
    for (int which = 0; which < 3; which++) {
        tside_side side;
        tside_plan plan;
        tside_fault fault;
        tside_bow bow;
        tside_line line;
        tside_travel travel;
        tside_roll roll;
        tside_position shut, open, worst_at;
        tside_load load;
        tside_torque worst, least;
        tside_hang drive;
        double lean, turns;
        (which == 0 ? bench_side : which == 1 ? bench_leaning_side : bench_kinked_side)(&side);
        side.collar.mass = 2; /* the ends differ */
        plan = planned(&side);
        roll = (tside_roll){side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
        ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
        ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
        ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
        ANSWERS(tside_travel_at(&travel, 0, &shut, &fault));
        ANSWERS(tside_travel_at(&travel, plan.bar_turns, &open, &fault));
        ck_assert(tside_travel_at(&travel, plan.bar_turns + 1e-6, &open, &fault) == TSIDE_OUT_OF_BOUNDS); /* open is the travel's end */
        same_numbers(TSIDE_KIND_POSITION, &plan.shut, &shut, "shut");
        same_numbers(TSIDE_KIND_POSITION, &plan.open, &open, "open");
        NEAR(plan.fixing_x, line.x, 1e-12, "fixing", which);
        NEAR(plan.highest, travel.highest, 1e-12, "highest", which);
        NEAR(plan.opening, open.opening, 1e-12, "opening", which);
        NEAR(plan.seal, side.curtain.sill - shut.underside, 1e-12, "seal", which);
        tside_usual(TSIDE_KIND_LOAD, &load);
        load.length = plan.curtain_length;
        load.bar_mass = bar_mass(&side.bar);
        load.clip_mass = side.bar.clip_mass;
        load.areal_mass = side.curtain.areal_mass;
        load.wet = side.curtain.wet;
        load.end_mass = side.drive.mass + side.collar.mass + load.bar_mass * (side.bar.past_drive + side.bar.past_free);
        load.friction = side.friction;
        for (int e = TSIDE_DRIVE_END; e <= TSIDE_FREE_END; e++) {
            const tside_end *end = e == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
            const tside_end_plan *made = e == TSIDE_DRIVE_END ? &plan.drive_end : &plan.free_end;
            const tside_collar collar = e == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
            const double eye_y = side.curtain.hip + end->rise;
            tside_hang hang;
            tside_sweep sweep;
            tside_layout layout;
            double eye_x, force, uplift;
            ANSWERS(tside_eye_best(&travel, eye_y, collar.offset, &eye_x, &fault));
            ANSWERS(tside_hang_make(&travel, &end->guide, &collar, eye_x, eye_y, &hang, &sweep, &fault));
            ANSWERS(tside_extender_layout(&end->extender, &bow, side.curtain.hip, eye_x, eye_y, &travel, &layout, &fault));
            NEAR(made->eye_x, eye_x, 1e-12, "eye", e);
            NEAR(made->eye_y, eye_y, 1e-12, "eye", e);
            same_numbers(TSIDE_KIND_SWEEP, &made->sweep, &sweep, "sweep");
            ck_assert_int_eq(made->layout_given, 1);
            same_numbers(TSIDE_KIND_LAYOUT, &made->layout, &layout, "layout");
            ANSWERS(tside_side_force(&travel, e == TSIDE_DRIVE_END ? &load : NULL, &hang, made->side_force_turns, &force, &uplift, &fault));
            NEAR(made->side_force, force, 1e-9 * force, "side force, there", e);
            ck_assert(made->uplift >= uplift);
            if (e == TSIDE_DRIVE_END)
                drive = hang;
        }
        ANSWERS(tside_lift_worst(&travel, &load, &drive, &worst, &least, &fault));
        ANSWERS(tside_travel_at(&travel, worst.turns, &worst_at, &fault));
        ANSWERS(tside_guide_lean(&travel, &drive, plan.bar_turns, &lean, &turns, &fault));
        same_numbers(TSIDE_KIND_TORQUE, &plan.worst, &worst, "worst");
        same_numbers(TSIDE_KIND_TORQUE, &plan.least_down, &least, "least down");
        NEAR(plan.worst_underside, worst_at.underside, 1e-12, "underside", which);
        NEAR(plan.design_torque, worst.drive * side.drive.safety_factor, 1e-12 * plan.design_torque, "design torque", which);
        NEAR(plan.drive_utilisation, plan.design_torque / side.drive.rated_torque, 1e-12, "utilisation", which);
        NEAR(plan.drive_turns, turns, 1e-12, "drive turns", which);
        NEAR(plan.drive_end.sweep.lean_open, lean, 1e-12, "lean", which);
        NEAR(plan.lag_play, worst_at.diameter / 2 * side.bar.splices * side.bar.play * cos(worst_at.slope), 1e-12, "play", which);
    }
}
END_TEST

/* At stall F = (Ts + Wg x_cg + Wd e)/d at every place, with d from eye to collar: the greatest over the travel. */
START_TEST(stall_pushes_hardest_somewhere)
{
    enum { LOOKS = 2000 };
    for (int which = 0; which < 3; which++) {
        tside_side side;
        tside_plan plan;
        tside_fault fault;
        tside_bow bow;
        tside_line line;
        tside_travel travel;
        tside_roll roll;
        tside_hang hang;
        tside_collar collar;
        double greatest = 0;
        (which == 0 ? bench_side : which == 1 ? bench_leaning_side : bench_kinked_side)(&side);
        plan = planned(&side);
        collar = tside_drive_collar(&side.drive);
        roll = (tside_roll){side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
        ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
        ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
        ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
        ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, &hang, NULL, &fault));
        for (int i = 0; i <= LOOKS; i++) {
            tside_position at;
            double lean, ignored, d;
            ANSWERS(tside_travel_at(&travel, plan.bar_turns * i / LOOKS, &at, &fault));
            ANSWERS(tside_guide_lean(&travel, &hang, at.turns, &lean, &ignored, &fault));
            d = sqrt(pow(at.x - hang.eye_x, 2) + pow(at.y - hang.eye_y, 2) - collar.offset * collar.offset);
            greatest = fmax(greatest, (plan.stall_torque + hang.weight * (hang.chain + hang.length) / 2 * sin(lean) + GRAVITY * collar.mass * collar.mass_offset) / d);
        }
        NEAR(plan.drive_end.side_force_stall, greatest, 1e-5 * greatest, "at stall", which);
        ck_assert(plan.drive_end.side_force_stall >= greatest * (1 - 1e-12));
        NEAR(plan.free_end.side_force_stall, plan.free_end.side_force, 0, "no drive there", which);
    }
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

START_TEST(open_range_widens_with_every_spread)
{
    static const char *const spreads[] = {"stops.core_spread", "stops.packing_spread", "stops.thickness_spread"};
    tside_fault fault;
    for (int k = 0; k < 3; k++) {
        tside_place place;
        double least = HUGE_VAL, most = -HUGE_VAL;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, spreads[k], &place, &fault));
        for (int i = 0; i <= 10; i++) {
            tside_side side = plain();
            tside_plan plan;
            side.stops.core_spread = side.stops.packing_spread = side.stops.thickness_spread = 0;
            *(double *)(void *)((char *)&side + place.offset) = 0.02 * i;
            plan = planned(&side);
            ck_assert_msg(plan.drive_turns_least < least && plan.drive_turns_most > most, "%s of %g narrows the range", spreads[k], 0.02 * i);
            ck_assert(plan.drive_turns_least <= plan.drive_turns + 1e-12 && plan.drive_turns <= plan.drive_turns_most + 1e-12);
            least = plan.drive_turns_least;
            most = plan.drive_turns_most;
        }
    }
}
END_TEST

/* A gap that leaves all but no travel leaves a thicker roll none, and not the way to the rail. */
START_TEST(range_holds_the_turns_of_the_shortest_travel)
{
    for (int hip = 0; hip <= 1; hip++) {
        tside_side side = plain();
        tside_plan plan;
        tside_fault fault;
        double room;
        if (hip)
            on_hip(&side);
        side.stops.gap = 10;
        ck_assert_int_eq(tside_plan_side(&side, &plan, &fault), TSIDE_CONTRADICTS);
        ck_assert_str_eq(fault.field, "stops.gap");
        room = fault.bound;
        for (int i = 0; i <= 20; i++) {
            side.stops.gap = room - 1e-4 * i;
            plan = planned(&side);
            ck_assert_msg(plan.drive_turns_least <= plan.drive_turns + 1e-12 && plan.drive_turns <= plan.drive_turns_most + 1e-12, "%d mm/10 from shut to open: %g to %g, not %g", i,
                          plan.drive_turns_least, plan.drive_turns_most, plan.drive_turns);
            ck_assert(plan.drive_turns_least >= 0 && plan.drive_turns_most < 0.1);
        }
    }
}
END_TEST

/* Turns of the drive on the plan's own guide, with core, packing and thickness all spread one way; up to the rail where that roll is too thick for its stop. */
static double turns_spread(const tside_side *side, const tside_plan *plan, double way)
{
    tside_roll roll = {side->bar.tube.diameter + side->bar.core_over, side->curtain.thickness, side->curtain.packing};
    const tside_collar collar = tside_drive_collar(&side->drive);
    tside_stops to_rail = side->stops;
    tside_bow bow;
    tside_line line;
    tside_travel travel, spread;
    tside_position at;
    tside_hang hang;
    tside_fault fault;
    double lean, turns;
    ANSWERS(tside_bow_make(&side->frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side->curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side->curtain, &roll, &side->stops, &travel, &fault));
    ANSWERS(tside_hang_make(&travel, &side->drive_end.guide, &collar, plan->drive_end.eye_x, plan->drive_end.eye_y, &hang, NULL, &fault));
    roll.core *= 1 + way * side->stops.core_spread;
    roll.thickness *= 1 + way * side->stops.thickness_spread;
    roll.packing += way * side->stops.packing_spread;
    if (tside_travel_make(&line, &side->curtain, &roll, &side->stops, &spread, &fault) == TSIDE_OK)
        ANSWERS(tside_travel_to_height(&spread, side->stops.open_height, &at, &fault));
    else {
        to_rail.open_by = TSIDE_OPEN_GAP;
        to_rail.gap = 0;
        ANSWERS(tside_travel_make(&line, &side->curtain, &roll, &to_rail, &spread, &fault));
        ANSWERS(tside_travel_to_height(&spread, spread.highest, &at, &fault));
        ck_assert(spread.highest < side->stops.open_height);
    }
    ANSWERS(tside_guide_lean(&spread, &hang, at.turns, &lean, &turns, &fault));
    return turns;
}

START_TEST(open_range_is_two_other_rolls)
{
    tside_side side = plain();
    tside_plan plan;
    side.drive.height = 0;
    side.drive_end.extender.bar_clearance = 0;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    for (int thick = 0; thick <= 1; thick++) {
        side.stops.open_height = 1.5;
        if (thick)
            side.stops.open_height = planned(&side).highest - 1e-4;
        plan = planned(&side);
        NEAR(plan.drive_turns_least, turns_spread(&side, &plan, 1), 1e-9, "thick rolls", thick);
        NEAR(plan.drive_turns_most, turns_spread(&side, &plan, -1), 1e-9, "thin rolls", thick);
    }
}
END_TEST

/* On a plumb wall the lift is (w L + Wd) r: it grows evenly with the length, and in proportion to it where nothing hangs on the ends. */
START_TEST(torque_grows_evenly_with_length)
{
    tside_side side = plain();
    tside_plan plan[3];
    double past = 2 * side.curtain.past;
    for (int i = 0; i < 3; i++) {
        side.length = 10 * (i + 1);
        plan[i] = planned(&side);
    }
    NEAR(plan[2].worst.lift - plan[1].worst.lift, plan[1].worst.lift - plan[0].worst.lift, 1e-11, "lift", 0);
    NEAR(plan[2].work - plan[1].work, plan[1].work - plan[0].work, 1e-9, "work", 0);
    NEAR(plan[2].worst.per_metre, plan[0].worst.per_metre, 1e-12, "per metre", 0);
    NEAR(plan[2].twist / plan[0].twist, pow((30 + past) / (10 + past), 2), 1e-12, "twist grows with the square", 0);
    side.drive.mass = side.collar.mass = side.bar.past_drive = side.bar.past_free = 0;
    for (int i = 0; i < 2; i++) {
        side.length = 10 * (i + 1);
        plan[i] = planned(&side);
        NEAR(plan[i].worst.up, plan[i].worst.per_metre * plan[i].curtain_length, 1e-11, "nothing on the ends", i);
    }
    NEAR(plan[1].worst.up / plan[0].worst.up, (20 + past) / (10 + past), 1e-12, "in proportion", 0);
}
END_TEST

/* What hung on the hip would be, against the same side hung there. */
START_TEST(hip_instead_is_the_same_side_hung_there)
{
    tside_side side = plain();
    tside_plan here, there = planned(&side);
    ck_assert(!there.drive_end.hip_kick_out_given && !there.drive_end.hip_torque_given); /* the usual gap leaves a drive on the hip no room */
    on_hip(&side);
    there = planned(&side);
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_EXTENDER;
    here = planned(&side);
    ck_assert(here.drive_end.hip_kick_out_given && here.drive_end.hip_torque_given && here.free_end.hip_kick_out_given && !here.free_end.hip_torque_given);
    NEAR(here.drive_end.hip_kick_out, there.drive_end.sweep.kick_out, 1e-12, "kick", 0);
    NEAR(here.free_end.hip_kick_out, there.free_end.sweep.kick_out, 1e-12, "kick", 1);
    NEAR(here.drive_end.hip_lean_greatest, fmax(there.drive_end.sweep.lean_greatest, -there.drive_end.sweep.lean_least), 1e-12, "lean", 0);
    NEAR(here.free_end.hip_lean_greatest, fmax(there.free_end.sweep.lean_greatest, -there.free_end.sweep.lean_least), 1e-12, "lean", 1);
    NEAR(here.drive_end.hip_torque, there.worst.drive, 1e-9, "torque", 0);
    NEAR(there.drive_end.eye_x, there.fixing_x, 0, "the fixing is the eye", 0);
    ck_assert(here.drive_end.sweep.kick_out < here.drive_end.hip_kick_out); /* what an extender is for */
}
END_TEST

/* A couple F d on chain and pipe, with the pipe's weight: the chain lines up with their resultant, at eta from plumb, and the foot follows. */
START_TEST(swing_and_throw_follow_from_the_force_at_open)
{
    for (int way = 0; way < 2; way++) {
        tside_side side = plain();
        tside_plan plan;
        tside_fault fault;
        const tside_finding *thrown;
        tside_metal_values metal;
        tside_section pipe;
        double F, d, phi, weight, swing, chain = side.drive_end.guide.chain;
        if (way)
            on_hip(&side);
        plan = planned(&side);
        ANSWERS(tside_material_values(&side.drive_end.guide.material, &metal, &fault));
        ANSWERS(tside_round_section(&side.drive_end.guide.tube, metal.density, &pipe, &fault));
        weight = GRAVITY * pipe.mass * plan.drive_end.sweep.cut_length;
        d = hypot(plan.open.x - plan.drive_end.eye_x, plan.open.y - plan.drive_end.eye_y);
        d = sqrt(d * d - side.drive.collar_offset * side.drive.collar_offset);
        phi = plan.drive_end.sweep.lean_open;
        NEAR(plan.worst.turns, plan.bar_turns, 1e-9, "worst when open", way);
        F = (plan.worst.drive + weight * (chain + plan.drive_end.sweep.length) / 2 * sin(phi) + GRAVITY * side.drive.mass * side.drive.mass_offset) / d;
        swing = chain * sin(atan2(F * cos(phi), weight - F * sin(phi)) - phi) * (plan.drive_end.sweep.length - d) / d;
        NEAR(plan.drive_end.chain_swing, swing, 1e-9, "swing", way);
        NEAR(finding_of(&plan, TSIDE_FINDING_CHAIN_SWING)->value, swing, 1e-9, "swing", way);
        thrown = finding_of(&plan, TSIDE_FINDING_THROWN);
        ck_assert(!thrown == (F * sin(phi) <= weight));
        if (thrown) {
            NEAR(thrown->value, F * sin(phi), 1e-6, "lifts with", way);
            NEAR(thrown->bound, weight, 1e-9, "weighs", way);
        }
        ck_assert(thrown || !way);
        if (plan.drive_end.uplift > 0)
            NEAR(finding_of(&plan, TSIDE_FINDING_UPLIFT)->value, plan.drive_end.uplift, 0, "uplift", way);
        side.drive_end.guide.chain = 0;
        plan = planned(&side);
        ck_assert(plan.drive_end.chain_swing == 0 && !finds(&plan, TSIDE_FINDING_THROWN) && !finds(&plan, TSIDE_FINDING_CHAIN_SWING));
        ck_assert(plan.free_end.chain_swing == 0);
    }
}
END_TEST

/* By hand 2.5 times the worst running torque, else 2.5 times the rated one: this library's choice, no published source. */
START_TEST(stall_is_guessed_where_none_is_known)
{
    tside_side side = plain();
    tside_plan plan;
    side.drive.stall_torque_given = 0;
    plan = planned(&side);
    NEAR(plan.stall_torque, 150, 1e-12, "rated 60", 0);
    side.drive.kind = TSIDE_HAND;
    plan = planned(&side);
    NEAR(plan.stall_torque, 2.5 * plan.worst.drive, 1e-12, "by hand", 0);
    NEAR(finding_of(&plan, TSIDE_FINDING_STALL_GUESSED)->value, plan.stall_torque, 0, "told", 0);
    side = plain();
    side.drive.rated_voltage_given = side.drive.supply_voltage_given = 1;
    side.drive.rated_voltage = 12;
    side.drive.supply_voltage = 24;
    plan = planned(&side);
    NEAR(plan.stall_torque, 300, 1e-12, "on twice its voltage", 0);
    ck_assert(!finds(&plan, TSIDE_FINDING_STALL_GUESSED));
}
END_TEST

/* --- strength, line by line --- */

static const tside_strength_line *line_of(const tside_plan *plan, tside_strength_code code, tside_which_end end)
{
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].code == code && plan->lines[i].end == end)
            return plan->lines + i;
    ck_abort_msg("no line for %s at end %d", tside_strength_text((int)code), (int)end);
    return NULL;
}

static void same_line(const tside_strength_line *got, const tside_strength_line *want)
{
    ck_assert(got->measure == want->measure && got->verdict == want->verdict && got->limit_given == want->limit_given && got->utilisation_given == want->utilisation_given &&
              got->yield_needed_given == want->yield_needed_given);
    NEAR(got->demand, want->demand, 1e-9 * want->demand, "demand", (int)want->code);
    NEAR(got->limit, want->limit, 0, "limit", (int)want->code);
    NEAR(got->yield_needed, want->yield_needed, 1e-9 * want->yield_needed, "yield needed", (int)want->code);
}

/* A stress against a share of yield over its safety factor. */
static void stress_is(const tside_plan *plan, tside_strength_code code, double stress, const tside_metal_values *metal, double share)
{
    const tside_strength_line *line = line_of(plan, code, TSIDE_DRIVE_END);
    ck_assert(line->measure == TSIDE_STRESS && line->limit_given);
    NEAR(line->demand, stress, 1e-9 * stress, "stress", (int)code);
    NEAR(line->limit, share * metal->yield / metal->safety, 1e-6, "limit", (int)code);
}

static void force_is(const tside_plan *plan, tside_strength_code code, double torque, const tside_bar *bar)
{
    const tside_strength_line *line = line_of(plan, code, TSIDE_DRIVE_END);
    double force = torque / (bar->screws * bar->tube.diameter / 2); /* statics: n screws at a radius D/2, each with F, hold n F D/2 */
    ck_assert(line->measure == TSIDE_FORCE && line->limit_given == bar->screw_limit_given);
    NEAR(line->demand, force, 1e-9 * force, "force", (int)code);
    if (line->limit_given)
        ck_assert(line->limit == bar->screw_limit && line->utilisation == line->demand / line->limit);
}

START_TEST(bar_lines_are_their_parts)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    tside_metal_values metal;
    tside_section section;
    side.bar.splice_near = 7;
    side.bar.screw_limit_given = 1;
    side.bar.screw_limit = 2500;
    plan = planned(&side);
    ANSWERS(tside_material_values(&side.bar.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.bar.tube, metal.density, &section, &fault));
    stress_is(&plan, TSIDE_BAR_SHEAR, plan.worst.drive / section.torsion_modulus, &metal, 0.6);
    stress_is(&plan, TSIDE_BAR_SHEAR_STALL, plan.stall_torque / section.torsion_modulus, &metal, 0.6);
    stress_is(&plan, TSIDE_BAR_BENDING, GRAVITY * side.drive.mass * side.bar.past_drive / section.section_modulus, &metal, 1);
    force_is(&plan, TSIDE_COUPLING_SCREW, plan.stall_torque, &side.bar);
    force_is(&plan, TSIDE_SPLICE_SCREW, plan.worst.per_metre * (plan.curtain_length - 7), &side.bar);
    force_is(&plan, TSIDE_SPLICE_SCREW_STALL, plan.stall_torque, &side.bar);
    side.bar.splices = 0;
    plan = planned(&side);
    for (int i = 0; i < plan.line_count; i++)
        ck_assert(plan.lines[i].code != TSIDE_SPLICE_SCREW && plan.lines[i].code != TSIDE_SPLICE_SCREW_STALL);
}
END_TEST

START_TEST(end_lines_are_their_parts)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        const tside_end *end = which == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
        const tside_end_plan *made = which == TSIDE_DRIVE_END ? &plan.drive_end : &plan.free_end;
        const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
        const tside_strength_line *line;
        tside_strength_line lines[TSIDE_EXTENDER_LINES];
        tside_metal_values metal;
        tside_section pipe, bow;
        double weight, moment, hole = end->extender.bolt_hole;
        ANSWERS(tside_material_values(&end->guide.material, &metal, &fault));
        ANSWERS(tside_round_section(&end->guide.tube, metal.density, &pipe, &fault));
        weight = GRAVITY * pipe.mass * made->sweep.cut_length;
        ANSWERS(tside_extender_strength(&end->extender, &made->layout, made->side_force_stall, weight, (tside_which_end)which, lines, &fault));
        for (int i = 0; i < TSIDE_EXTENDER_LINES; i++)
            same_line(line_of(&plan, lines[i].code, (tside_which_end)which), lines + i);
        /* F d = T + Wg x_cg + Wd e at the collar, where the guide leans most */
        moment = weight * (end->guide.chain + made->sweep.length) / 2 * sin(made->sweep.lean_greatest) + GRAVITY * collar.mass * collar.mass_offset;
        line = line_of(&plan, TSIDE_GUIDE_BENDING, (tside_which_end)which);
        moment += which == TSIDE_DRIVE_END ? plan.stall_torque : 0;
        NEAR(line->demand, moment / pipe.section_modulus, 1e-9 * line->demand, "guide", which);
        NEAR(line->limit, metal.yield / 1.67, 1e-6, "AISC 360 chapter F", which);
        ANSWERS(tside_round_section(&side.frame.tube, 1, &bow, &fault));
        line = line_of(&plan, TSIDE_BOW_NET_SECTION, (tside_which_end)which);
        NEAR(line->demand, 1 - side.frame.tube.wall * pow(hole, 3) / 6 / bow.inertia, 1e-12, "bow", which);
        ck_assert(line->measure == TSIDE_SHARE && line->verdict == TSIDE_VERDICT_LOOK && !line->limit_given);
    }
    on_hip(&side);
    plan = planned(&side);
    NEAR(line_of(&plan, TSIDE_RAIL_PULL, TSIDE_DRIVE_END)->demand, plan.drive_end.side_force_stall, 0, "pull", 0);
    NEAR(line_of(&plan, TSIDE_RAIL_PULL, TSIDE_FREE_END)->demand, plan.free_end.side_force_stall, 0, "pull", 1);
}
END_TEST

/* Of a guide that leans inboard throughout: at stall it is bent one way, and by its own weight at rest the other, and neither is below 0. */
START_TEST(guide_bending_is_the_greatest_of_both_leans)
{
    tside_side side = plain();
    tside_metal_values metal;
    tside_section pipe;
    tside_fault fault;
    ANSWERS(tside_material_values(&side.drive_end.guide.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.drive_end.guide.tube, metal.density, &pipe, &fault));
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        tside_end *end = which == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
        const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
        end->hung = TSIDE_ON_EXTENDER;
        end->placed = TSIDE_EYE_GIVEN;
        end->extender.slant = TSIDE_SLANT_BEST;
        end->extender.bar_clearance = 0;
        for (int i = 0; i <= 10; i++) {
            const tside_strength_line *line;
            const tside_sweep *sweep;
            tside_plan plan;
            double weight, arm, carried = GRAVITY * collar.mass * collar.mass_offset, torque[2] = {0, 0}, greatest = 0;
            end->eye_outboard = 0.1 + 0.04 * i;
            plan = planned(&side);
            sweep = which == TSIDE_DRIVE_END ? &plan.drive_end.sweep : &plan.free_end.sweep;
            torque[1] = which == TSIDE_DRIVE_END ? plan.stall_torque : 0;
            weight = GRAVITY * pipe.mass * sweep->cut_length;
            arm = (end->guide.chain + sweep->length) / 2;
            for (int k = 0; k < 2; k++) {
                greatest = fmax(greatest, fabs(torque[k] + weight * arm * sin(sweep->lean_least) + carried));
                greatest = fmax(greatest, fabs(torque[k] + weight * arm * sin(sweep->lean_greatest) + carried));
            }
            line = line_of(&plan, TSIDE_GUIDE_BENDING, (tside_which_end)which);
            NEAR(line->demand, greatest / pipe.section_modulus, 1e-9 * line->demand, "guide", i);
        }
        end->placed = TSIDE_EYE_BEST;
    }
}
END_TEST

/* --- findings --- */

/* Gives the plain side a motor's figures, a cable and a fuse that suit it. */
static void electrify(tside_side *side)
{
    tside_drive *drive = &side->drive;
    drive->rated_voltage_given = drive->supply_voltage_given = drive->no_load_speed_given = drive->no_load_current_given = drive->stall_current_given = 1;
    drive->rated_voltage = drive->supply_voltage = 24;
    drive->no_load_speed = 0.4;
    drive->no_load_current = 0.5;
    drive->stall_current = 12;
    drive->rated_run_given = 1;
    drive->rated_run = 600;
    side->cable.wire = TSIDE_AWG;
    side->cable.gauge = 12;
    side->cable.length = 30;
    side->cable.drop_limit_given = side->cable.ampacity_given = side->cable.fuse_given = 1;
    side->cable.drop_limit = 0.2;
    side->cable.ampacity = 20;
    side->cable.fuse = 15;
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
    case TSIDE_FINDING_STALLS: electrify(side), side->drive.stall_torque = 12; break;
    case TSIDE_FINDING_LONG_RUN: electrify(side), side->drive.rated_run = 60; break;
    case TSIDE_FINDING_OVERLOAD: electrify(side), side->drive.rated_torque = 5; break;
    case TSIDE_FINDING_DROP: electrify(side), side->cable.drop_limit = 0.001; break;
    case TSIDE_FINDING_DROP_START: electrify(side), side->cable.drop_limit = 0.05; break;
    case TSIDE_FINDING_AMPACITY: electrify(side), side->cable.ampacity = 1; break;
    case TSIDE_FINDING_FUSE: electrify(side), side->cable.fuse = 1; break;
    case TSIDE_FINDING_FUSE_START: electrify(side), side->cable.fuse = 8; break;
    case TSIDE_FINDING_FUSE_LARGE: electrify(side), side->cable.ampacity = 14; break;
    case TSIDE_FINDING_TURNS_BACK: side->drive.holds = TSIDE_HOLDS_NOT; break;
    case TSIDE_FINDING_EFFORT: side->crank.fitted = TSIDE_CRANK, side->crank.ratio = 1; break;
    case TSIDE_FINDING_CODES: break;
    }
}

/* What a finding says must be so: on the wrong side of its bound, and its index a line, a keep-out, or none. */
static void is_true(const tside_finding *f, const tside_plan *plan)
{
    switch (f->code) {
    case TSIDE_FINDING_STRENGTH:
        ck_assert(f->index >= 0 && f->index < plan->line_count && plan->lines[f->index].verdict == TSIDE_VERDICT_NO && plan->lines[f->index].utilisation == f->value &&
                  plan->lines[f->index].end == f->end && f->bound == 1);
        break;
    case TSIDE_FINDING_KEEP_OUT_TUBE:
    case TSIDE_FINDING_KEEP_OUT_GUIDE: ck_assert_int_eq(f->index, 0); break;
    default: ck_assert_int_eq(f->index, -1);
    }
    switch (f->code) {
    case TSIDE_FINDING_KEEP_OUT_TUBE:
    case TSIDE_FINDING_KEEP_OUT_GUIDE:
    case TSIDE_FINDING_SEAL:
    case TSIDE_FINDING_WRAPS:
    case TSIDE_FINDING_STAYS_UP: ck_assert_msg(f->value < f->bound, "finding %d: %g against %g", (int)f->code, f->value, f->bound); break;
    default: ck_assert_msg(f->value > f->bound, "finding %d: %g against %g", (int)f->code, f->value, f->bound);
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
        for (int i = 0; i < plan.finding_count; i++)
            is_true(plan.findings + i, &plan);
        if (code != TSIDE_FINDING_UNUSUAL) /* a chain of nothing is itself unusual */
            ck_assert_msg(!finds(&before, (tside_finding_code)code), "finding %d is found where there is none", code);
    }
    base = plain();
    before = planned(&base);
    ck_assert(!finds(&before, TSIDE_FINDING_UNUSUAL));
}
END_TEST

/* A field of a side by its path; an optional one is given. */
static double *field_of(tside_side *side, const char *path)
{
    tside_place place;
    tside_fault fault;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, path, &place, &fault));
    ck_assert(place.field->type == TSIDE_NUMBER);
    if (place.field->optional)
        *(int *)(void *)((char *)side + place.offset - place.field->offset + place.field->given_offset) = 1;
    return (double *)(void *)((char *)side + place.offset);
}

static double result_of(const tside_plan *plan, const char *path)
{
    tside_place place;
    tside_fault fault;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, path, &place, &fault));
    return *(const double *)(const void *)((const char *)plan + place.offset);
}

/* A limit that is just reached is kept to; a hair less is not. */
START_TEST(limits_may_be_reached)
{
    static const struct {
        tside_finding_code code;
        const char *limit, *result;
    } limits[] = {
        {TSIDE_FINDING_DRIVE_WEAK, "drive.rated_torque", "design_torque"},
        {TSIDE_FINDING_LIMIT_TURNS, "drive.limit_turns", "drive_turns"},
        {TSIDE_FINDING_KICK, "limits.kick_out", "drive_end.sweep.kick_out_error"},
        {TSIDE_FINDING_SIDE_FORCE, "limits.side_force", "drive_end.side_force"},
        {TSIDE_FINDING_TWIST, "limits.twist", "twist"},
        {TSIDE_FINDING_LAG, "limits.lag", "lag_elastic"},
    };
    for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
        tside_side side = plain();
        tside_plan plan = planned(&side);
        double reached = result_of(&plan, limits[i].result), *limit = field_of(&side, limits[i].limit);
        const tside_finding *found;
        *limit = reached;
        plan = planned(&side);
        found = finding_of(&plan, limits[i].code);
        ck_assert_msg(!found || found->end == TSIDE_FREE_END, "%s is not allowed to be reached", limits[i].limit);
        *limit = nextafter(reached, 0);
        plan = planned(&side);
        found = finding_of(&plan, limits[i].code);
        ck_assert_msg(found && found->end == TSIDE_DRIVE_END, "%s may be exceeded", limits[i].limit);
        ck_assert(found->value == reached && found->bound == *limit);
    }
}
END_TEST

/* Both thresholds: common practice, no published source. */
START_TEST(seal_and_wraps_have_a_least)
{
    tside_side side = plain();
    tside_plan plan;
    side.stops.wraps_shut = 0.75;
    side.stops.seal = 0.05 + 1e-9;
    plan = planned(&side);
    ck_assert(!finds(&plan, TSIDE_FINDING_SEAL) && !finds(&plan, TSIDE_FINDING_WRAPS));
    side.stops.wraps_shut = nextafter(0.75, 0);
    side.stops.seal = 0.05 - 1e-8;
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_SEAL) && finds(&plan, TSIDE_FINDING_WRAPS));
    side.stops.seal = 0.05; /* asked as the least that will do: not a finding for a last digit's sake */
    ck_assert_msg(!finds((plan = planned(&side), &plan), TSIDE_FINDING_SEAL), "a seal of exactly 50 mm, found %.17g", plan.seal);
}
END_TEST

/* --- keep-outs, against distances found apart --- */

static double to_rectangle(const tside_keep_out *out, double x, double y)
{
    return hypot(fmax(fmax(out->left - x, x - out->right), 0), fmax(fmax(out->bottom - y, y - out->top), 0));
}

/* The distance from a convex figure has one valley along a straight line: thirds are cut off until nothing is left. */
static double nearest_on_segment(const tside_keep_out *out, double x1, double y1, double x2, double y2)
{
    double low = 0, high = 1;
    for (int i = 0; i < 120; i++) {
        double a = low + (high - low) / 3, b = high - (high - low) / 3;
        if (to_rectangle(out, x1 + a * (x2 - x1), y1 + a * (y2 - y1)) < to_rectangle(out, x1 + b * (x2 - x1), y1 + b * (y2 - y1)))
            high = b;
        else
            low = a;
    }
    return to_rectangle(out, x1 + low * (x2 - x1), y1 + low * (y2 - y1));
}

static tside_keep_out any_rectangle(dice *d, double x, double y, double reach)
{
    double left = x + dice_between(d, -reach, reach), bottom = y + dice_between(d, -reach, reach);
    return (tside_keep_out){left, left + dice_between(d, 0.01, 0.5), bottom, bottom + dice_between(d, 0.01, 0.5)};
}

FOR_SIDES(rectangle_to_segment, 500)
{
    dice d = {300u + (unsigned)number};
    tside_keep_out out = any_rectangle(&d, 0, 0, 1);
    double x1 = dice_between(&d, -1, 1), y1 = dice_between(&d, -1, 1), x2 = dice_between(&d, -1, 1), y2 = dice_between(&d, -1, 1);
    if (number % 5 == 0)
        x2 = x1;
    if (number % 7 == 0)
        y2 = y1;
    NEAR(tside_i_rectangle_to_segment(&out, x1, y1, x2, y2), nearest_on_segment(&out, x1, y1, x2, y2), 1e-7, "rectangle to segment", number);
}

FOR_SIDES(rectangle_to_sweep, 100)
{
    enum { LOOKS = 2000 };
    dice d = {400u + (unsigned)number};
    tside_keep_out out = any_rectangle(&d, 0, -0.5, 1);
    double length = dice_between(&d, 0.2, 1.5), least = dice_between(&d, -1, 0.6), greatest = least + dice_between(&d, 0, 0.8), nearest = HUGE_VAL, got;
    for (int i = 0; i <= LOOKS; i++) {
        double lean = least + (greatest - least) * i / LOOKS;
        nearest = fmin(nearest, nearest_on_segment(&out, 0, 0, length * sin(lean), -length * cos(lean)));
    }
    got = tside_i_rectangle_to_sweep(&out, 0, 0, length, least, greatest);
    NEAR(got, nearest, length * (greatest - least) / LOOKS, "rectangle to sweep", number);
    ck_assert(got <= nearest + 1e-9);
}

/* From the tube's top end, a length of cut tube down its slope. */
static double nearest_on_tube(const tside_keep_out *out, const tside_layout *tube)
{
    double dx = tube->member_x - tube->eye_x, dy = tube->bow_height - tube->eye_y, run = tube->bow_x - tube->eye_x, slope = hypot(run, dy), top_x, top_y;
    ck_assert(dx < 0 && slope > 0);
    top_x = tube->eye_x - run / slope * tube->eye_from_top;
    top_y = tube->eye_y - dy / slope * tube->eye_from_top;
    return nearest_on_segment(out, top_x, top_y, top_x + run / slope * tube->cut_length, top_y + dy / slope * tube->cut_length);
}

FOR_SIDES(keep_out_of_the_tube, 300)
{
    dice d = {500u + (unsigned)number};
    tside_side side = plain();
    tside_plan plan = planned(&side);
    const tside_layout *tube = &plan.drive_end.layout;
    double along = dice_between(&d, -0.1, 1.1), nearest, needed = side.drive_end.extender.tube.side / 2;
    tside_keep_out out = any_rectangle(&d, tube->eye_x + along * (tube->member_x - tube->eye_x), tube->eye_y + along * (tube->bow_height - tube->eye_y), 0.3);
    const tside_finding *found;
    side.drive_end.keep_out_count = 2;
    side.drive_end.keep_outs[0] = (tside_keep_out){0.1, 0.2, 0, 1};
    side.drive_end.keep_outs[1] = out;
    plan = planned(&side);
    nearest = nearest_on_tube(&out, tube);
    found = finding_of(&plan, TSIDE_FINDING_KEEP_OUT_TUBE);
    if (fabs(nearest - needed) > 1e-7)
        ck_assert_msg(!found == (nearest > needed), "side %d: %g m off, %g needed", number, nearest, needed);
    if (found) {
        NEAR(found->value, nearest, 1e-7, "off the tube", number);
        ck_assert(found->bound == needed && found->index == 1 && found->end == TSIDE_DRIVE_END);
    }
}

/* The guide, wherever within its placing error its eye is, at every lean that it takes there. */
static double nearest_on_guide(const tside_side *side, const tside_plan *plan, const tside_keep_out *out)
{
    const tside_roll roll = {side->bar.tube.diameter + side->bar.core_over, side->curtain.thickness, side->curtain.packing};
    const double error = side->free_end.guide.placing_error;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_fault fault;
    double nearest = HUGE_VAL;
    ANSWERS(tside_bow_make(&side->frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side->curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side->curtain, &roll, &side->stops, &travel, &fault));
    for (int way = -20; way <= 20; way++) {
        double x = plan->free_end.eye_x + error * way / 20, y = plan->free_end.eye_y;
        for (int i = 0; i <= 40; i++) {
            tside_position at;
            double R, lean, length = plan->free_end.sweep.length;
            ANSWERS(tside_travel_at(&travel, plan->bar_turns * i / 40, &at, &fault));
            R = hypot(at.x - x, y - at.y);
            lean = atan2(at.x - x, y - at.y) + asin(side->collar.offset / R);
            nearest = fmin(nearest, nearest_on_segment(out, x, y, x + length * sin(lean), y - length * cos(lean)));
        }
    }
    return nearest;
}

FOR_SIDES(keep_out_of_the_guide, 60)
{
    dice d = {600u + (unsigned)number};
    tside_side side = plain();
    tside_plan plan;
    tside_keep_out out;
    const tside_finding *found;
    double nearest, needed = side.free_end.guide.tube.diameter / 2;
    side.free_end.guide.placing_error = number % 2 ? 0.02 : 0.1;
    plan = planned(&side);
    out = any_rectangle(&d, plan.free_end.eye_x, plan.free_end.eye_y - plan.free_end.sweep.length / 2, 0.5);
    if (number % 3 == 0)
        out.right = out.left + 0.001; /* so thin that it fits between two places of the guide */
    side.free_end.keep_out_count = 1;
    side.free_end.keep_outs[0] = out;
    plan = planned(&side);
    nearest = nearest_on_guide(&side, &plan, &out);
    found = finding_of(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE);
    if (fabs(nearest - needed) > 1e-3)
        ck_assert_msg(!found == (nearest > needed), "side %d: %g m off, %g needed", number, nearest, needed);
    if (found) {
        ck_assert(found->bound == needed && found->index == 0 && found->end == TSIDE_FREE_END && found->value >= 0);
        ck_assert_msg(fabs(found->value - nearest) < needed / 2, "side %d: %g, not %g m off", number, found->value, nearest);
    }
}

/* A rod between eye and misplaced eye, close below their height, where the guide hardly swings. */
START_TEST(nothing_slips_between_placings)
{
    for (int i = 1; i < 20; i++) {
        tside_side side = plain();
        tside_plan plan;
        double x;
        side.drive_end.guide.placing_error = 0.2;
        plan = planned(&side);
        x = plan.drive_end.eye_x + 0.01 * i;
        side.drive_end.keep_out_count = 1;
        side.drive_end.keep_outs[0] = (tside_keep_out){x, x + 0.001, plan.drive_end.eye_y - 0.03, plan.drive_end.eye_y - 0.02};
        plan = planned(&side);
        ck_assert_msg(finds(&plan, TSIDE_FINDING_KEEP_OUT_GUIDE), "a rod %d cm from the eye", i);
    }
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

/* More than there is room for: the list is full, and what stops the work comes first. */
START_TEST(a_crowd_of_findings_fits)
{
    tside_side side = plain();
    tside_plan plan;
    side.drive_end.keep_out_count = side.free_end.keep_out_count = TSIDE_KEEP_OUTS;
    for (int i = 0; i < TSIDE_KEEP_OUTS; i++)
        side.drive_end.keep_outs[i] = side.free_end.keep_outs[i] = (tside_keep_out){3, 6, 1, 1.6 + 0.01 * i};
    side.drive.rated_torque = 10;
    side.drive.stall_torque = 2000;
    plan = planned(&side);
    ck_assert_int_eq(plan.finding_count, TSIDE_FINDINGS);
    ck_assert(plan.findings[0].code == TSIDE_FINDING_DRIVE_WEAK);
    for (int i = 0; i < TSIDE_FINDINGS; i++)
        ck_assert(tside_finding_stops((int)plan.findings[i].code));
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
        /* its value stands there with its unit, as "1.5 N m", a turn as "turns", a plain number without one */
        if (length > 0) {
            char shown[32];
            snprintf(shown, sizeof shown, strcmp(tside_finding_unit(code), "1") ? "1.5 %s" : "1.5 ", strcmp(tside_finding_unit(code), "turn") ? tside_finding_unit(code) : "turns");
            ck_assert_msg(strstr(whole, shown), "%s: %s", whole, shown);
        } else
            ck_assert_str_eq(tside_finding_unit(code), "1");
        ck_assert(!*tside_strength_text(code) == (code < 0 || code >= TSIDE_STRENGTH_CODES));
        ck_assert(tside_finding_stops(code) == 0 || (code >= 0 && code < TSIDE_FINDING_CODES));
    }
    ck_assert(!*tside_strength_text(INT_MIN) && !*tside_strength_text(INT_MAX));
    ck_assert(!tside_finding_stops(INT_MIN) && !tside_finding_stops(INT_MAX));
}
END_TEST

/* Whether a finding stops the work: what breaks, hits, or stops short; the rest is to be known. */
START_TEST(what_breaks_or_hits_stops_the_work)
{
    static const tside_finding_code known[] = {TSIDE_FINDING_SEAL, TSIDE_FINDING_WRAPS, TSIDE_FINDING_STAYS_UP, TSIDE_FINDING_CHAIN_SWING, TSIDE_FINDING_UPLIFT,
                                               TSIDE_FINDING_STALL_GUESSED, TSIDE_FINDING_UNUSUAL, TSIDE_FINDING_DROP, TSIDE_FINDING_DROP_START,
                                               TSIDE_FINDING_FUSE_START, TSIDE_FINDING_EFFORT};
    for (int code = 0; code < TSIDE_FINDING_CODES; code++) {
        int only_known = 0;
        for (size_t i = 0; i < sizeof known / sizeof *known; i++)
            only_known |= code == (int)known[i];
        ck_assert_int_eq(tside_finding_stops(code), !only_known);
    }
}
END_TEST

static int found(const tside_plan *plan, tside_finding_code code)
{
    int count = 0;
    for (int i = 0; i < plan->finding_count; i++)
        count += plan->findings[i].code == code;
    return count;
}

/* What just keeps to a limit is no finding, what is a hair above it is one, and a limit that is not given is none. */
START_TEST(limits_of_a_run_may_be_reached)
{
    tside_side side = plain(), none;
    tside_plan plan;
    static const tside_finding_code codes[] = {TSIDE_FINDING_LONG_RUN, TSIDE_FINDING_OVERLOAD, TSIDE_FINDING_DROP, TSIDE_FINDING_DROP_START, TSIDE_FINDING_AMPACITY, TSIDE_FINDING_FUSE,
                                               TSIDE_FINDING_FUSE_START};
    electrify(&side);
    plan = planned(&side);
    for (int below = 0; below <= 1; below++)
        for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
            tside_side changed = side;
            tside_plan made;
            double *limit[] = {&changed.drive.rated_run, &changed.drive.rated_torque, &changed.cable.drop_limit, &changed.cable.drop_limit, &changed.cable.ampacity, &changed.cable.fuse,
                               &changed.cable.fuse};
            double value[] = {plan.run.time_up, plan.run.torque_rms, plan.run.drop_peak / 24, plan.run.drop_start / 24, plan.run.current_peak, plan.run.current_peak, plan.run.current_start};
            int drop = codes[i] == TSIDE_FINDING_DROP || codes[i] == TSIDE_FINDING_DROP_START; /* a share, and so rounded */
            *limit[i] = value[i] * (below ? 1 - 1e-12 : drop ? 1 + 1e-12 : 1);
            made = planned(&changed);
            ck_assert_msg(found(&made, codes[i]) == below, "finding %d, %d below its limit", (int)codes[i], below);
        }
    none = side;
    none.drive.rated_run_given = none.cable.drop_limit_given = none.cable.ampacity_given = none.cable.fuse_given = 0;
    none.drive.rated_run = none.cable.drop_limit = none.cable.ampacity = none.cable.fuse = 1e-6;
    plan = planned(&none);
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++)
        ck_assert_int_eq(found(&plan, codes[i]), 0);
    none = side;
    none.cable.wire = TSIDE_NO_CABLE;
    none.cable.drop_limit = -1;
    none.cable.ampacity = 1e-6;
    plan = planned(&none);
    ck_assert(!found(&plan, TSIDE_FINDING_DROP) && !found(&plan, TSIDE_FINDING_DROP_START) && !found(&plan, TSIDE_FINDING_AMPACITY) && !found(&plan, TSIDE_FINDING_FUSE_LARGE));
}
END_TEST

/* A fuse too large for its cable is one whatever the motor, and though nothing is known of how it runs. */
START_TEST(a_fuse_protects_its_cable_or_not)
{
    tside_side side = plain();
    tside_plan plan;
    electrify(&side);
    side.drive.no_load_speed_given = 0;
    for (int fuse = 19; fuse <= 21; fuse++) {
        side.cable.fuse = fuse;
        plan = planned(&side);
        ck_assert(!plan.run_given);
        ck_assert_int_eq(found(&plan, TSIDE_FINDING_FUSE_LARGE), fuse > 20);
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

/* The eye of the drive's end at a rise: where it just clears the drive, the roll passes near the tube. */
static const tside_side *plain_at_rise(tside_side *side, double rise)
{
    *side = plain();
    side->drive_end.rise = rise;
    return side;
}

#define PLAN_REFUSES(status, path, relation) \
    do { \
        tside_plan plan; \
        REFUSES(tside_plan_side(&side, &plan, &fault), plan, status, path, relation); \
    } while (0)

START_TEST(every_part_of_a_plan_may_refuse_it)
{
    tside_side side = plain();
    tside_fault fault;
    side.length = 0;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_ABOVE);
    side = plain();
    side.bar_count = TSIDE_BARS + 1;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "bars", TSIDE_ABOVE);
    side = plain();
    side.hand = (tside_hand)2;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "hand", TSIDE_NOT_ONE_OF);
    side = plain();
    side.frame.peak_height = 1;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "frame.peak_height", TSIDE_NOT_ABOVE);
    side = plain();
    side.curtain.sill = side.curtain.hip;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "curtain.sill", TSIDE_NOT_BELOW);
    side = plain();
    side.curtain.hip = 5;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "curtain.hip", TSIDE_ABOVE);
    side = plain();
    side.stops.seal = 0.31;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "stops.seal", TSIDE_ABOVE);
    side = plain();
    side.bar.tube.wall = side.bar.tube.diameter / 2;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.tube.wall", TSIDE_NOT_BELOW);
    side = plain();
    side.free_end.guide.material.grade = TSIDE_6063_T5;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.guide.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive_end.extender.spacing = 2;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.extender.spacing", TSIDE_ABOVE);
    side = plain();
    side.drive_end.extender.stock = 0.5;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.extender.stock", TSIDE_BELOW);
    side.drive_end.extender.stock = fault.bound;
    NEAR(planned(&side).drive_end.layout.cut_length, fault.bound, 1e-12, "the least stock that serves", 0);
    side = plain();
    side.free_end.extender.eye_material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "free_end.extender.eye_material.grade", TSIDE_NO_RELATION);
    /* a hung eye, and one whose height is not its own to choose */
    side = plain();
    side.drive_end.hung = TSIDE_ON_HIP;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.hung", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.unit, "1");
    ck_assert_str_eq(fault.other, "drive_end.guide.eye_clearance");
    side.drive_end.hung = TSIDE_ON_EXTENDER;
    side.drive_end.placed = TSIDE_EYE_GIVEN;
    side.drive_end.eye_outboard = 0;
    PLAN_REFUSES(TSIDE_OUT_OF_BOUNDS, "drive_end.eye_outboard", TSIDE_NOT_ABOVE);
}
END_TEST

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
    ck_assert_msg(tside_plan_side(plain_at_rise(&side, fault.bound), &(tside_plan){0}, &fault) != TSIDE_OUT_OF_REACH || strcmp(fault.field, "drive_end.rise"),
                  "the least rise that the fault named is refused");
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
    side.drive_end.keep_outs[1].left = side.drive_end.keep_outs[1].right;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].left", TSIDE_NOT_BELOW);
    side.drive_end.keep_outs[1] = (tside_keep_out){5, 6, 2, 2};
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive_end.keep_outs[1].bottom", TSIDE_NOT_BELOW);
    side = plain();
    side.bar.material.grade = TSIDE_6061_T6;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "bar.material.grade", TSIDE_NO_RELATION);
    side = plain();
    side.drive.rated_voltage_given = 1;
    side.drive.rated_voltage = 24;
    PLAN_REFUSES(TSIDE_CONTRADICTS, "drive.rated_voltage", TSIDE_NO_RELATION);
}
END_TEST

/* An eye too low is refused with the least rise that serves: it plans, and a millimetre less does not. */
START_TEST(the_least_rise_that_is_named_plans)
{
    tside_side side = plain();
    tside_fault fault;
    side.drive.height += 0.05; /* its least eye then stands so high that the tube clears the roll */
    side.drive_end.extender.bar_clearance = 0;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    side.drive_end.rise = 0.01;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
    NEAR(fault.gap, 0.01 - fault.bound, 1e-12, "by how much it misses", 0);
    side.drive_end.rise = fault.bound;
    NEAR(planned(&side).drive_end.sweep.clear, 0, 1e-12, "it just clears", 0);
    side.drive_end.rise = fault.bound - 0.001;
    PLAN_REFUSES(TSIDE_OUT_OF_REACH, "drive_end.rise", TSIDE_BELOW);
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

/* Each row again, from the height of its underside, by the functions that know one place of a travel. */
START_TEST(turn_table_is_its_places)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_turn rows[64];
    tside_fault fault;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_roll roll = {side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
    tside_collar collar = tside_drive_collar(&side.drive);
    tside_hang hang;
    int count;
    ANSWERS(tside_plan_turns(&side, rows, 64, &count, &fault));
    ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
    ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, &hang, NULL, &fault));
    for (int i = 0; i < count; i++) {
        tside_position at;
        tside_torque torque, shut;
        tside_load load;
        double lean, turns;
        ANSWERS(tside_travel_to_height(&travel, rows[i].underside, &at, &fault));
        ANSWERS(tside_guide_lean(&travel, &hang, at.turns, &lean, &turns, &fault));
        NEAR(turns, rows[i].turn, 1e-9, "turns", i);
        NEAR(lean, rows[i].lean, 1e-9, "lean", i);
        NEAR(at.x, rows[i].x, 1e-9, "x", i);
        NEAR(at.y, rows[i].y, 1e-9, "y", i);
        NEAR(at.diameter, rows[i].diameter, 1e-9, "diameter", i);
        NEAR(at.opening, rows[i].opening, 1e-9, "opening", i);
        NEAR(at.taken_up, rows[i].total, 1e-9, "taken up", i);
        /* the load, from what the plan says of its worst place: the lift and drag per metre are w r (1 + f), and the ends' share is the rest */
        tside_usual(TSIDE_KIND_LOAD, &load);
        load.length = plan.curtain_length;
        load.clip_mass = side.bar.clip_mass;
        load.areal_mass = side.curtain.areal_mass;
        load.wet = side.curtain.wet;
        load.friction = side.friction;
        load.bar_mass = bar_mass(&side.bar);
        load.end_mass = side.drive.mass + side.collar.mass + load.bar_mass * (side.bar.past_drive + side.bar.past_free);
        ANSWERS(tside_lift_at(&travel, &load, &hang, at.turns, &torque, &fault));
        NEAR(torque.drive, rows[i].torque, 1e-8, "torque", i);
        ANSWERS(tside_lift_at(&travel, &load, &hang, 0, &shut, &fault));
        ck_assert(rows[i].torque >= shut.drive * (1 - 1e-9)); /* on a plumb wall the roll only grows */
    }
}
END_TEST

START_TEST(outputs_stay_untouched)
{
    tside_side side = plain();
    tside_turn rows[4];
    double rise;
    int index, count = -7;
    tside_fault fault;
    REFUSES(tside_plan_turns(&side, rows, 3, &count, &fault), rows, TSIDE_TOO_SMALL, "capacity", TSIDE_BELOW);
    ck_assert(count > 4 && fault.value == 3 && fault.bound == count);
    side.bar.clip_mass = NAN;
    count = -7;
    REFUSES(tside_plan_turns(&side, rows, 4, &count, &fault), rows, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass", TSIDE_NOT_FINITE);
    ck_assert_int_eq(count, -7);
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass", TSIDE_NOT_FINITE);
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass", TSIDE_NOT_FINITE);
    side = plain();
    REFUSES(tside_eye_least(&side, (tside_which_end)2, &rise, &fault), rise, TSIDE_OUT_OF_BOUNDS, "end", TSIDE_NOT_ONE_OF);
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bars", TSIDE_NOT_ABOVE);
    side.drive.place = TSIDE_MID_BAR;
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    REFUSES(tside_plan_turns(&side, rows, 4, &count, &fault), rows, TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
    side.bar_count = 1;
    side.bars[0] = side.bar;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
}
END_TEST

/* --- searches --- */

/* What a guide on an eye at some rise, placed best, does: by the functions that know no plan. */
typedef struct risen {
    int hangs;
    double kick, force;
} risen;

static risen at_rise(const tside_side *side, tside_which_end which, double rise)
{
    const tside_end *end = which == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
    const tside_collar collar = which == TSIDE_DRIVE_END ? tside_drive_collar(&side->drive) : side->collar;
    const tside_roll roll = {side->bar.tube.diameter + side->bar.core_over, side->curtain.thickness, side->curtain.packing};
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_position open;
    tside_hang hang;
    tside_sweep sweep;
    tside_load load;
    tside_fault fault;
    tside_status status;
    risen made = {0, 0, 0};
    double eye_x, turns = planned(side).bar_turns;
    ANSWERS(tside_bow_make(&side->frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side->curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side->curtain, &roll, &side->stops, &travel, &fault));
    ANSWERS(tside_travel_at(&travel, turns, &open, &fault));
    if (tside_eye_best(&travel, side->curtain.hip + rise, collar.offset, &eye_x, &fault) != TSIDE_OK)
        return made;
    status = tside_hang_make(&travel, &end->guide, &collar, eye_x, side->curtain.hip + rise, &hang, &sweep, &fault);
    if (status != TSIDE_OK)
        return made;
    made.hangs = 1;
    made.kick = sweep.kick_out_error;
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = side->length + 2 * side->curtain.past;
    load.bar_mass = bar_mass(&side->bar);
    load.clip_mass = side->bar.clip_mass;
    load.areal_mass = side->curtain.areal_mass;
    load.wet = side->curtain.wet;
    load.friction = side->friction;
    load.end_mass = side->drive.mass + side->collar.mass + load.bar_mass * (side->bar.past_drive + side->bar.past_free);
    for (int i = 0; i <= 64; i++) {
        double force, uplift;
        ANSWERS(tside_side_force(&travel, which == TSIDE_DRIVE_END ? &load : NULL, &hang, turns * i / 64, &force, &uplift, &fault));
        made.force = fmax(made.force, force);
    }
    return made;
}

enum { HAIR = 1 }; /* micrometre: the search is good to a tenth of it */

START_TEST(least_rise_clears_the_drive)
{
    tside_side side = plain();
    tside_fault fault;
    double rise, lower;
    side.collar.height = 0.15; /* so that the free end's eye must stand above the fixing too */
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        ANSWERS(tside_eye_least(&side, (tside_which_end)which, &rise, &fault));
        ck_assert(at_rise(&side, (tside_which_end)which, rise).hangs);
        ck_assert(!at_rise(&side, (tside_which_end)which, rise - 1e-6 * HAIR).hangs);
    }
    /* with the drive's own height it rises and falls */
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault));
    side.drive.height -= 0.01;
    ANSWERS(tside_eye_least(&side, TSIDE_DRIVE_END, &lower, &fault));
    NEAR(rise - lower, 0.01, 1e-9, "a lower drive", 0);
}
END_TEST

START_TEST(least_rise_keeps_to_limits)
{
    tside_side side = plain();
    tside_fault fault;
    double clears[2], rise, limit;
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++)
        ANSWERS(tside_eye_least(&side, (tside_which_end)which, clears + which, &fault));
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        tside_which_end end = (tside_which_end)which;
        side = plain();
        side.limits.kick_out = limit = at_rise(&side, end, clears[which] + 0.2).kick;
        side.limits.kick_out_given = 1;
        ANSWERS(tside_eye_least(&side, end, &rise, &fault));
        NEAR(rise, clears[which] + 0.2, 1e-6 * HAIR, "kick rules", which);
        ck_assert(at_rise(&side, end, rise).kick <= limit);
        ck_assert(at_rise(&side, end, rise - 1e-6 * HAIR).kick > limit);
        side.limits.side_force = limit = at_rise(&side, end, clears[which] + 0.3).force;
        side.limits.side_force_given = 1;
        ANSWERS(tside_eye_least(&side, end, &rise, &fault));
        NEAR(rise, clears[which] + 0.3, 1e-5, "force rules", which);
        ck_assert(at_rise(&side, end, rise).force <= limit * (1 + 1e-12));
        ck_assert(at_rise(&side, end, rise - 1e-5).force > limit);
    }
    side.limits.side_force = 1e-3;
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_OUT_OF_REACH, "free_end.rise", TSIDE_NO_RELATION);
}
END_TEST

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
    static const double walls[] = {0.003, 0.0012, 0.002, 0.004};
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

START_TEST(smallest_bar_keeps_to_lag_and_shear)
{
    tside_side side = plain(), with_thick = plain();
    tside_fault fault;
    tside_plan thin, thick;
    int index = -1;
    side.drive_end.guide.tube.wall = side.free_end.guide.tube.wall = 0.0005; /* overstressed: no bar's concern */
    side.bar_count = 2;
    side.bars[0] = side.bars[1] = side.bar;
    side.bars[1].tube.wall = 0.0012;
    with_thick.bar = side.bars[0];
    thick = planned(&with_thick);
    with_thick.bar = side.bars[1];
    thin = planned(&with_thick);
    ck_assert(thin.lag_elastic > thick.lag_elastic);
    /* without limits only shear counts, and the stall torque passes the thin bar's */
    side.drive.stall_torque = 60;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.limits.lag_given = 1;
    side.limits.lag = thin.lag_elastic;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.limits.lag = nextafter(thin.lag_elastic, 0);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 0);
    side.limits.lag_given = 0;
    side.drive.stall_torque = 60 / line_of(&thin, TSIDE_BAR_SHEAR_STALL, TSIDE_DRIVE_END)->utilisation * thin.stall_torque / 60 * (1 - 1e-9);
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 1);
    side.drive.stall_torque *= 1 + 2e-9;
    ANSWERS(tside_bar_smallest(&side, &index, &fault));
    ck_assert_int_eq(index, 0);
}
END_TEST

START_TEST(smallest_bar_names_the_bar_at_fault)
{
    tside_side side = plain();
    tside_fault fault;
    int index;
    side.bar_count = 3;
    side.bars[0] = side.bars[1] = side.bars[2] = side.bar;
    side.bars[2].play = -1;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bars[2].play", TSIDE_BELOW);
    side.bars[2] = side.bar;
    side.bars[1].material.grade = TSIDE_6061_T6;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_CONTRADICTS, "bars[1].material.grade", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "bars[1].material.metal");
    ck_assert_int_eq(fault.index, 1);
    side.bars[1] = side.bar;
    side.bars[2].tube.diameter = 0.9; /* so thick that the roll meets the extender */
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_REACH, "drive_end.extender.bar_clearance", TSIDE_NONE_FITS);
    ck_assert_int_eq(fault.index, 2);
    ck_assert(tside_bar_smallest(&side, &index, NULL) == TSIDE_OUT_OF_REACH);
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
    ck_assert_str_eq(fault.field, "inputs");
    out[2].place = in[1].place;
    ck_assert(tside_plan_sides(&base, 1, in, 1, out, 4, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS && fault.index == 2 && statuses[0] == -9);
    ck_assert_str_eq(fault.field, "outputs");
    ck_assert(tside_plan_sides(&base, -1, NULL, 0, NULL, 0, statuses, NULL, &fault) == TSIDE_OUT_OF_BOUNDS);
    ANSWERS(tside_plan_sides(&base, 0, NULL, 0, NULL, 0, NULL, NULL, &fault));
}
END_TEST

/* Columns backwards, and every row of one column's outputs into one place: the last row's stays. */
START_TEST(batch_walks_any_stride)
{
    tside_side base = plain(), one;
    tside_fault fault;
    tside_plan plan;
    double lengths[ROWS], turns[ROWS], last = -7;
    int statuses[ROWS];
    tside_input in;
    tside_output out[2];
    for (int i = 0; i < ROWS; i++)
        lengths[i] = 12 + 3 * i;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "length", &in.place, &fault));
    in.data = lengths + ROWS - 1, in.stride = -(ptrdiff_t)sizeof *lengths;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "worst.drive", &out[0].place, &fault));
    out[0].data = turns + ROWS - 1, out[0].stride = -(ptrdiff_t)sizeof *turns;
    out[1].place = out[0].place, out[1].data = &last, out[1].stride = 0;
    ANSWERS(tside_plan_sides(&base, ROWS, &in, 1, out, 2, statuses, NULL, &fault));
    for (int i = 0; i < ROWS; i++) {
        one = base;
        one.length = lengths[i];
        ck_assert(tside_plan_side(&one, &plan, &fault) == TSIDE_OK && turns[i] == plan.worst.drive && statuses[i] == TSIDE_OK);
    }
    ck_assert(last == turns[0]);
    ck_assert(!memcmp(&base, &one, offsetof(tside_side, length))); /* the base is only read */
}
END_TEST

/* What no column needs is not made: it refuses no row, and changes no number of those that are asked for. */
START_TEST(batch_makes_what_is_asked_for)
{
    static const struct {
        const char *path, *spoilt; /* an output, and what of the side refuses only those that need more */
        double value;
    } asked[] = {
        {"drive_turns", "drive_end.extender.spacing", 9},
        {"splices", "drive_end.extender.spacing", 9},
        {"seal", "free_end.guide.chain", 1.9},
        {"worst.drive", "free_end.guide.chain", 1.9},
        {"opening_far", "drive_end.extender.spacing", 9},
        {"stall_torque", "drive_end.extender.spacing", 9},
    };
    static const char *const needing[] = {"drive_end.sweep.kick_out", "free_end.side_force", "lines[0].demand", "findings[0].code", "drive_end.layout.angle"};
    for (size_t k = 0; k < sizeof asked / sizeof *asked; k++) {
        tside_side base = plain();
        tside_plan whole;
        tside_fault fault;
        tside_place spoilt;
        tside_output out = {.stride = 0};
        double got = -7, want;
        int status;
        unsigned long long findings;
        ANSWERS(tside_plan_side(&base, &whole, &fault));
        ANSWERS(tside_field_find(TSIDE_KIND_PLAN, asked[k].path, &out.place, &fault));
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, asked[k].spoilt, &spoilt, &fault));
        *(double *)(void *)((char *)&base + spoilt.offset) = asked[k].value;
        out.data = &got;
        want = out.place.field->type == TSIDE_NUMBER ? *(const double *)(const void *)((const char *)&whole + out.place.offset)
                                                     : *(const int *)(const void *)((const char *)&whole + out.place.offset);
        ck_assert(tside_plan_side(&base, &whole, NULL) != TSIDE_OK);
        ANSWERS(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, NULL, &fault));
        ck_assert(status == TSIDE_OK && got == want);
        ck_assert(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, &findings, NULL) != TSIDE_OK);
        ck_assert(tside_plan_sides(&base, 1, NULL, 0, NULL, 0, &status, NULL, NULL) != TSIDE_OK);
        for (size_t n = 0; n < sizeof needing / sizeof *needing; n++) {
            ANSWERS(tside_field_find(TSIDE_KIND_PLAN, needing[n], &out.place, &fault));
            ck_assert_msg(tside_plan_sides(&base, 1, NULL, 0, &out, 1, &status, NULL, NULL) != TSIDE_OK, "%s", needing[n]);
        }
    }
}
END_TEST

/* Every number of a plan, asked for alone, is what the whole plan has. */
static void ask_each(const tside_side *side, const tside_plan *whole, tside_kind kind, const char *above, int *asked)
{
    int count;
    const tside_field *rows = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        char path[TSIDE_PATH_SIZE];
        tside_output out = {.stride = 0};
        double got = NAN, want;
        int status;
        snprintf(path, sizeof path, "%s%s%s%s", above, *above ? "." : "", rows[i].name, rows[i].type == TSIDE_LIST ? "[1]" : "");
        if (rows[i].type == TSIDE_GROUP || rows[i].type == TSIDE_LIST) {
            ask_each(side, whole, rows[i].kind, path, asked);
            continue;
        }
        ck_assert_int_eq(tside_field_find(TSIDE_KIND_PLAN, path, &out.place, NULL), TSIDE_OK);
        out.data = &got;
        ck_assert_int_eq(tside_plan_sides(side, 1, NULL, 0, &out, 1, &status, NULL, NULL), TSIDE_OK);
        want = rows[i].type == TSIDE_NUMBER ? *(const double *)(const void *)((const char *)whole + out.place.offset) : *(const int *)(const void *)((const char *)whole + out.place.offset);
        ck_assert_msg(isnan(got) || got == want, "%s", path);
        ck_assert_msg(!isnan(got) || rows[i].optional, "%s", path);
        (*asked)++;
    }
}

START_TEST(each_number_alone_is_the_whole_plans)
{
    tside_side side = plain();
    tside_plan whole;
    tside_fault fault;
    int asked = 0;
    ANSWERS(tside_plan_side(&side, &whole, &fault));
    ask_each(&side, &whole, TSIDE_KIND_PLAN, "", &asked);
    ck_assert_int_gt(asked, 150);
}
END_TEST

/* A column of a choice that its row does not use may hold anything; one that is used, a whole number alone. */
START_TEST(unused_choices_of_columns_are_not_looked_at)
{
    enum { ROWS = 4 };
    static const char *const columns[] = {"crank.rule", "drive_end.placed", "free_end.extender.slant"};
    const double choices[ROWS] = {1, 77, NAN, 0.5};
    tside_side base = plain();
    tside_fault fault;
    int statuses[ROWS];
    base.crank.fitted = TSIDE_NO_CRANK;
    on_hip(&base);
    for (size_t k = 0; k < sizeof columns / sizeof *columns; k++) {
        tside_input in = {.data = choices, .stride = sizeof *choices};
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, columns[k], &in.place, &fault));
        ANSWERS(tside_plan_sides(&base, ROWS, &in, 1, NULL, 0, statuses, NULL, &fault));
    }
    for (size_t k = 0; k < sizeof columns / sizeof *columns; k++) {
        tside_input in = {.data = choices + 3, .stride = sizeof *choices};
        char sentence[512];
        base = plain();
        base.crank.fitted = TSIDE_CRANK;
        base.crank.ratio = 6;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, columns[k], &in.place, &fault));
        ck_assert_int_eq(tside_plan_sides(&base, 1, &in, 1, NULL, 0, statuses, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
        ck_assert_str_eq(fault.field, columns[k]);
        tside_fault_text(&fault, sentence, sizeof sentence);
        ck_assert_msg(strstr(sentence, "a count or a choice must be a whole number"), "%s", sentence);
    }
}
END_TEST

/* One row in the middle is bad: its status is the answer, and its number the fault's index. */
START_TEST(batch_answers_with_its_first_bad_row)
{
    const struct {
        const char *path;
        double value;
        tside_status status;
    } bad[] = {
        {"curtain.sill", 19, TSIDE_CONTRADICTS},
        {"curtain.hip", 19, TSIDE_OUT_OF_REACH},
        {"drive.place", TSIDE_MID_BAR, TSIDE_NOT_MODELLED},
    };
    tside_side base = plain();
    tside_fault fault;
    for (size_t k = 0; k < sizeof bad / sizeof *bad; k++) {
        double values[3];
        int statuses[3];
        tside_input in;
        ANSWERS(tside_field_find(TSIDE_KIND_SIDE, bad[k].path, &in.place, &fault));
        values[0] = values[2] = in.place.field->type == TSIDE_NUMBER ? *(const double *)(const void *)((const char *)&base + in.place.offset) : 0;
        values[1] = bad[k].value;
        in.data = values, in.stride = sizeof *values;
        ck_assert(tside_plan_sides(&base, 3, &in, 1, NULL, 0, statuses, NULL, &fault) == bad[k].status);
        ck_assert(fault.index == 1 && fault.status == bad[k].status && !strcmp(fault.field, bad[k].path));
        ck_assert(statuses[0] == TSIDE_OK && statuses[1] == (int)bad[k].status && statuses[2] == TSIDE_OK);
    }
}
END_TEST

/* --- never what is no number --- */

static void all_finite(tside_kind kind, const char *structure, int number)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const char *member = structure + row[i].offset;
        if (!tside_field_applies(row + i, structure) || (row[i].optional && !*(const int *)(const void *)(structure + row[i].given_offset)))
            continue;
        if (row[i].type == TSIDE_NUMBER)
            ck_assert_msg(isfinite(*(const double *)(const void *)member), "side %d: %s is no number", number, row[i].name);
        else if (row[i].type == TSIDE_GROUP)
            all_finite(row[i].kind, member, number);
        for (int k = 0; row[i].type == TSIDE_LIST && k < *(const int *)(const void *)(structure + row[i].count_offset); k++)
            all_finite(row[i].kind, member + (size_t)k * row[i].stride, number);
    }
}

/* One row of a structure, or of one within it, by chance. */
static const tside_field *any_row(dice *d, tside_kind kind, char **structure)
{
    for (;;) {
        int count;
        const tside_field *rows = tside_fields(kind, &count), *row = rows + dice_below(d, count);
        if (row->type == TSIDE_LIST)
            continue;
        if (row->type != TSIDE_GROUP)
            return row;
        *structure += row->offset;
        kind = row->kind;
    }
}

/* Changes one field: to a bound or a hair within it, to a choice, or by a factor. */
static void disturb(dice *d, tside_side *side)
{
    char *structure = (char *)side;
    const tside_field *row = any_row(d, TSIDE_KIND_SIDE, &structure);
    double *number = (double *)(void *)(structure + row->offset);
    if (row->type != TSIDE_NUMBER) {
        *(int *)(void *)number = row->type == TSIDE_CHOICE ? dice_below(d, row->choice_count) : (int)row->low + dice_below(d, (int)(row->high - row->low) + 1);
        return;
    }
    if (row->optional)
        *(int *)(void *)(structure + row->given_offset) = 1;
    switch (dice_below(d, 6)) {
    case 0: *number = row->low_open ? nextafter(row->low, HUGE_VAL) : row->low; break;
    case 1: *number = row->high_open ? nextafter(row->high, -HUGE_VAL) : row->high; break;
    case 2: *number = row->low + (row->high - row->low) * dice_between(d, 0, 1); break;
    default: *number *= dice_between(d, 0.8, 1.25); break;
    }
}

/* Sides of which a few fields are anything that their tables allow: planned to numbers, or refused by a field, in a sentence. */
FOR_SIDES(no_side_gives_what_is_no_number, 3000)
{
    dice d = {7u + (unsigned)number};
    tside_side side;
    tside_plan plan, before;
    tside_fault fault;
    tside_turn rows[8];
    tside_status status;
    int count = 0, changes = 1 + dice_below(&d, 5);
    double rise;
    if (number % 3 == 0)
        bench_side(&side);
    else if (number % 3 == 1)
        bench_leaning_side(&side);
    else
        bench_kinked_side(&side);
    for (int i = 0; i < changes; i++)
        disturb(&d, &side);
    memset(&plan, 0xa5, sizeof plan);
    before = plan;
    memset(&fault, 0xa5, sizeof fault);
    status = tside_plan_side(&side, &plan, &fault);
    if (status == TSIDE_OK)
        all_finite(TSIDE_KIND_PLAN, (const char *)&plan, number);
    else {
        char sentence[512];
        ck_assert_msg(fault.status == status && *fault.field && isfinite(fault.value) && isfinite(fault.bound) && isfinite(fault.gap), "side %d: its fault", number);
        ck_assert_msg(tside_fault_text(&fault, sentence, sizeof sentence) < sizeof sentence, "side %d: its sentence", number);
        ck_assert_msg(!memcmp(&plan, &before, sizeof plan), "side %d: refused, and touched its plan", number);
    }
    status = tside_plan_turns(&side, rows, 8, &count, &fault);
    for (int i = 0; status == TSIDE_OK && i < count; i++)
        all_finite(TSIDE_KIND_TURN, (const char *)(rows + i), number);
    if (number % 16 == 0 && tside_eye_least(&side, TSIDE_DRIVE_END, &rise, &fault) == TSIDE_OK)
        ck_assert(rise > 0 && rise <= 5);
}

Suite *plan_suite(void);

Suite *plan_suite(void)
{
    Suite *suite = suite_create("plan");
    TCase *tcase = tcase_create("plan");
    tcase_add_test(tcase, plan_is_its_parts);
    tcase_add_test(tcase, every_result_is_that_of_its_function);
    tcase_add_test(tcase, stall_pushes_hardest_somewhere);
    tcase_add_test(tcase, hands_are_mirrors_and_nil_travel_plans);
    tcase_add_test(tcase, spreads_ropes_and_lags);
    tcase_add_test(tcase, open_range_widens_with_every_spread);
    tcase_add_test(tcase, range_holds_the_turns_of_the_shortest_travel);
    tcase_add_test(tcase, open_range_is_two_other_rolls);
    tcase_add_test(tcase, torque_grows_evenly_with_length);
    tcase_add_test(tcase, hip_instead_is_the_same_side_hung_there);
    tcase_add_test(tcase, swing_and_throw_follow_from_the_force_at_open);
    tcase_add_test(tcase, stall_is_guessed_where_none_is_known);
    tcase_add_test(tcase, bar_lines_are_their_parts);
    tcase_add_test(tcase, end_lines_are_their_parts);
    tcase_add_test(tcase, guide_bending_is_the_greatest_of_both_leans);
    tcase_add_test(tcase, every_finding_is_provoked);
    tcase_add_test(tcase, limits_may_be_reached);
    tcase_add_test(tcase, seal_and_wraps_have_a_least);
    tcase_add_test(tcase, rectangle_to_segment);
    tcase_add_test(tcase, rectangle_to_sweep);
    tcase_add_test(tcase, keep_out_of_the_tube);
    tcase_add_test(tcase, keep_out_of_the_guide);
    tcase_add_test(tcase, nothing_slips_between_placings);
    tcase_add_test(tcase, keep_outs_are_measured);
    tcase_add_test(tcase, a_crowd_of_findings_fits);
    tcase_add_test(tcase, texts_are_total);
    tcase_add_test(tcase, what_breaks_or_hits_stops_the_work);
    tcase_add_test(tcase, limits_of_a_run_may_be_reached);
    tcase_add_test(tcase, a_fuse_protects_its_cable_or_not);
    tcase_add_test(tcase, every_strength_line_appears);
    tcase_add_test(tcase, every_part_of_a_plan_may_refuse_it);
    tcase_add_test(tcase, refusals_name_the_whole_path);
    tcase_add_test(tcase, the_least_rise_that_is_named_plans);
    tcase_add_test(tcase, turn_table_sums_to_the_travel);
    tcase_add_test(tcase, turn_table_is_its_places);
    tcase_add_test(tcase, outputs_stay_untouched);
    tcase_add_test(tcase, least_rise_clears_the_drive);
    tcase_add_test(tcase, least_rise_keeps_to_limits);
    tcase_add_test(tcase, least_rise_just_serves);
    tcase_add_test(tcase, smallest_bar_is_the_lightest_that_serves);
    tcase_add_test(tcase, smallest_bar_keeps_to_lag_and_shear);
    tcase_add_test(tcase, smallest_bar_names_the_bar_at_fault);
    tcase_add_test(tcase, batch_is_the_loop_bit_for_bit);
    tcase_add_test(tcase, batch_walks_any_stride);
    tcase_add_test(tcase, batch_makes_what_is_asked_for);
    tcase_add_test(tcase, each_number_alone_is_the_whole_plans);
    tcase_add_test(tcase, unused_choices_of_columns_are_not_looked_at);
    tcase_add_test(tcase, batch_answers_with_its_first_bad_row);
    tcase_add_test(tcase, no_side_gives_what_is_no_number);
    suite_add_tcase(suite, tcase);
    return suite;
}
