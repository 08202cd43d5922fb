/* SPDX-License-Identifier: MIT */
/* The plan against the functions it is made of, and its laws. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *plan_suite(void);

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
    int count;
    side.drive_end.extender.slant = TSIDE_SLANT_BEST;
    plan = planned(&side);
    ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
    ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
    ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
    ANSWERS(tside_eye_best(&travel, side.curtain.hip + side.drive_end.rise, collar.offset, &eye_x, &fault));
    ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, eye_x, side.curtain.hip + side.drive_end.rise, 0,
                            &hang, &sweep, &fault));
    ANSWERS(tside_extender_layout(&side.drive_end.extender, &bow, side.curtain.hip, eye_x, hang.eye_y, &travel, &layout,
                                  &fault));
    ANSWERS(tside_material_values(&side.bar.material, &metal, &fault));
    ANSWERS(tside_round_section(&side.bar.tube, metal.density, &section, &fault));
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = side.length + 2 * side.curtain.past;
    load.bar_mass = section.mass;
    load.clip_mass = side.bar.clip_mass;
    load.areal_mass = side.curtain.areal_mass;
    load.wet = side.curtain.wet;
    load.end_mass = side.drive.mass + side.collar.mass + section.mass * overhangs(&side);
    load.friction = side.friction;
    ANSWERS(tside_lift_worst(&travel, &load, &hang, &worst, NULL, &fault));
    ANSWERS(tside_lift_work(&travel, &load, &hang, plan.bar_turns, &work, &fault));
    ANSWERS(tside_lift_longest(&travel, &load, &hang, side.drive.rated_torque / side.drive.safety_factor, &longest,
                               &fault));
    ANSWERS(tside_drive_stall(&side.drive, worst.drive, &stall, &fault));
    ANSWERS(tside_bar_twist(worst.per_metre, load.length, metal.shear_modulus, section.torsion, &twist, &fault));
    ANSWERS(tside_extender_strength(&side.drive_end.extender, &layout, plan.drive_end.side_force_stall,
                                    plan.drive_end.side_force_jam, hang.weight, 0, 0, TSIDE_DRIVE_END, lines,
                                    TSIDE_EXTENDER_LINES, &count, &fault));
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
    NEAR(plan.bar_length, load.length + overhangs(&side), 1e-12, "bar", 0);
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

/*
 * When open the far end is lower by what the bar twists there, by its splices' play, by what wound unevenly, and by
 * what is out of level. Twisted evenly along itself it turns by t L^2/(2 G J), of a round tube J = pi/32 (D^4 - d^4).
 */
static void check_far_end(const tside_side *side, const tside_plan *plan, const tside_travel *travel,
                          const tside_load *load, const tside_hang *hang, int number)
{
    const tside_round *tube = &side->bar.tube;
    const double inner = tube->diameter - 2 * tube->wall, round = PI / 32 * (pow(tube->diameter, 4) - pow(inner, 4));
    tside_metal_values metal;
    tside_torque open;
    tside_position at;
    tside_fault fault;
    double angle;
    ANSWERS(tside_material_values(&side->bar.material, &metal, &fault));
    ANSWERS(tside_lift_at(travel, load, hang, plan->bar_turns, &open, &fault));
    ANSWERS(tside_travel_at(travel, plan->bar_turns, &at, &fault));
    angle = open.per_metre * load->length * load->length / (2 * metal.shear_modulus * round) +
            plan->splices * side->bar.play;
    ck_assert(plan->splices > 0 && side->bar.play > 0);
    NEAR(plan->opening_far,
         plan->opening - at.diameter / 2 * cos(at.slope) * angle - at.taken_up * side->diameter_difference -
             side->out_of_level,
         1e-14, "opening at the far end", number);
}

/* Every number of a result, and of those within it. */
static void same_numbers(tside_kind kind, const void *got, const void *want, const char *what)
{
    int count;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const char *a = (const char *)got + row[i].offset, *b = (const char *)want + row[i].offset;
        if (row[i].type == TSIDE_NUMBER) {
            double number = *(const double *)(const void *)a, wanted = *(const double *)(const void *)b;
            ck_assert_msg(number == wanted, "%s.%s: %.17g, not %.17g", what, row[i].name, number, wanted);
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
        bench_any_side(&side, which);
        side.collar.mass = 2; /* the ends differ */
        plan = planned(&side);
        roll = (tside_roll){side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
        ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
        ANSWERS(tside_line_make(&bow, &side.curtain, &line, &fault));
        ANSWERS(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault));
        ANSWERS(tside_travel_at(&travel, 0, &shut, &fault));
        ANSWERS(tside_travel_at(&travel, plan.bar_turns, &open, &fault));
        ck_assert(tside_travel_at(&travel, plan.bar_turns + 1e-6, &open, &fault) ==
                  TSIDE_OUT_OF_BOUNDS); /* open is the travel's end */
        same_numbers(TSIDE_KIND_POSITION, &plan.shut, &shut, "shut");
        same_numbers(TSIDE_KIND_POSITION, &plan.open, &open, "open");
        NEAR(plan.fixing_x, line.x, 0, "fixing", which);
        NEAR(plan.highest, travel.highest, 0, "highest", which);
        NEAR(plan.opening, open.opening, 0, "opening", which);
        NEAR(plan.seal, side.curtain.sill - shut.underside, 0, "seal", which);
        tside_usual(TSIDE_KIND_LOAD, &load);
        load.length = plan.curtain_length;
        load.bar_mass = bar_mass(&side.bar);
        load.clip_mass = side.bar.clip_mass;
        load.areal_mass = side.curtain.areal_mass;
        load.wet = side.curtain.wet;
        load.end_mass = side.drive.mass + side.collar.mass + load.bar_mass * overhangs(&side);
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
            ANSWERS(tside_hang_make(&travel, &end->guide, &collar, eye_x, eye_y, 0, &hang, &sweep, &fault));
            ANSWERS(
                tside_extender_layout(&end->extender, &bow, side.curtain.hip, eye_x, eye_y, &travel, &layout, &fault));
            NEAR(made->eye_x, eye_x, 0, "eye", e);
            NEAR(made->eye_y, eye_y, 0, "eye", e);
            same_numbers(TSIDE_KIND_SWEEP, &made->sweep, &sweep, "sweep");
            ck_assert_int_eq(made->layout_given, 1);
            same_numbers(TSIDE_KIND_LAYOUT, &made->layout, &layout, "layout");
            ANSWERS(tside_side_force(&travel, e == TSIDE_DRIVE_END ? &load : NULL, &hang, made->side_force_turns,
                                     &force, &uplift, &fault));
            NEAR(made->side_force, force, 1e-13 * force, "side force, there", e);
            ck_assert(made->uplift >= uplift);
            if (e == TSIDE_DRIVE_END)
                drive = hang;
        }
        ANSWERS(tside_lift_worst(&travel, &load, &drive, &worst, &least, &fault));
        ANSWERS(tside_travel_at(&travel, worst.turns, &worst_at, &fault));
        ANSWERS(tside_guide_lean(&travel, &drive, plan.bar_turns, &lean, &turns, &fault));
        same_numbers(TSIDE_KIND_TORQUE, &plan.worst, &worst, "worst");
        same_numbers(TSIDE_KIND_TORQUE, &plan.least_down, &least, "least down");
        NEAR(plan.worst_underside, worst_at.underside, 0, "underside", which);
        NEAR(plan.design_torque, worst.drive * side.drive.safety_factor, 0, "design torque", which);
        NEAR(plan.drive_utilisation, plan.design_torque / side.drive.rated_torque, 0, "utilisation", which);
        NEAR(plan.drive_turns, turns, 0, "drive turns", which);
        NEAR(plan.drive_end.sweep.lean_open, lean, 0, "lean", which);
        NEAR(plan.lag_play, worst_at.diameter / 2 * side.bar.splices * side.bar.play * cos(worst_at.slope), 0, "play",
             which);
        check_far_end(&side, &plan, &travel, &load, &drive, which);
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
        tside_travel travel;
        tside_hang hang;
        tside_collar collar;
        double greatest = 0;
        bench_any_side(&side, which);
        plan = planned(&side);
        collar = tside_drive_collar(&side.drive);
        travel = travel_of(&side);
        ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, 0,
                                &hang, NULL, &fault));
        for (int i = 0; i <= LOOKS; i++) {
            tside_position at;
            double lean, ignored, d;
            ANSWERS(tside_travel_at(&travel, plan.bar_turns * i / LOOKS, &at, &fault));
            ANSWERS(tside_guide_lean(&travel, &hang, at.turns, &lean, &ignored, &fault));
            d = sqrt(pow(at.x - hang.eye_x, 2) + pow(at.y - hang.eye_y, 2) - collar.offset * collar.offset);
            greatest = fmax(greatest, (plan.stall_torque + hang.weight * (hang.chain + hang.length) / 2 * sin(lean) +
                                       GRAVITY * collar.mass * collar.mass_offset) /
                                          d);
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

/*
 * On a plumb wall the lift is (w L + Wd) r: it grows evenly with the length, and in proportion to it where nothing
 * hangs on the ends.
 */
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
    side.drive.half_length = side.drive.clearance = side.collar.half_length = side.collar.clearance = 0;
    side.drive_end.alignment = side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
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
    ck_assert(!there.drive_end.hip_kick_out_given &&
              !there.drive_end.hip_torque_given); /* the usual gap leaves a drive on the hip no room */
    on_hip(&side);
    there = planned(&side);
    side.bar.past_drive = there.bar_beyond_drive; /* the same bar */
    side.bar.past_free = there.free_end.stand.run_on;
    side.drive_end.alignment = side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_EXTENDER;
    here = planned(&side);
    ck_assert(here.drive_end.hip_kick_out_given && here.drive_end.hip_torque_given &&
              here.free_end.hip_kick_out_given && !here.free_end.hip_torque_given);
    NEAR(here.drive_end.hip_kick_out, there.drive_end.sweep.kick_out, 1e-12, "kick", 0);
    NEAR(here.free_end.hip_kick_out, there.free_end.sweep.kick_out, 1e-12, "kick", 1);
    NEAR(here.drive_end.hip_lean_greatest, fmax(there.drive_end.sweep.lean_greatest, -there.drive_end.sweep.lean_least),
         1e-12, "lean", 0);
    NEAR(here.free_end.hip_lean_greatest, fmax(there.free_end.sweep.lean_greatest, -there.free_end.sweep.lean_least),
         1e-12, "lean", 1);
    NEAR(here.drive_end.hip_torque, there.worst.drive, 1e-9, "torque", 0);
    NEAR(there.drive_end.eye_x, there.fixing_x, 0, "the fixing is the eye", 0);
    ck_assert(here.drive_end.sweep.kick_out < here.drive_end.hip_kick_out); /* what an extender is for */
}
END_TEST

/*
 * A couple F d on chain and pipe, with the pipe's weight: the chain lines up with their resultant, at eta from plumb,
 * and the foot follows.
 */
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
        F = (plan.worst.drive + weight * (chain + plan.drive_end.sweep.length) / 2 * sin(phi) +
             GRAVITY * side.drive.mass * side.drive.mass_offset) /
            d;
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
        ck_assert(plan.drive_end.chain_swing == 0 && !finds(&plan, TSIDE_FINDING_THROWN) &&
                  !finds(&plan, TSIDE_FINDING_CHAIN_SWING));
        ck_assert(plan.free_end.chain_swing == 0);
    }
}
END_TEST

/*
 * By hand 2.5 times the worst running torque, else 2.5 times the rated one: this library's choice, no published source.
 */
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
    NEAR(finding_of(&plan, TSIDE_FINDING_STALL_GUESSED)->bound, 0, 0, "no bound", 0);
    side = plain();
    side.drive.rated_voltage_given = side.drive.supply_voltage_given = 1;
    side.drive.rated_voltage = 12;
    side.drive.supply_voltage = 24;
    plan = planned(&side);
    NEAR(plan.stall_torque, 300, 1e-12, "on twice its voltage", 0);
    ck_assert(!finds(&plan, TSIDE_FINDING_STALL_GUESSED));
}
END_TEST

/*
 * An eye bolt of known yield: its stress, in proportion to how far out it lets the guide stand, comes to its limit
 * where it stands out most; and so far past the bows the curtain may then end, no farther than the guide lets it.
 */
START_TEST(an_eye_bolt_bears_so_far_out)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    int told = 0;
    ck_assert(!plan.drive_end.stand_off_most_given && !plan.free_end.stand_off_most_given);
    side.drive_end.extender.eye_material.grade = TSIDE_GRADE_GIVEN;
    side.drive_end.extender.eye_material.yield = 250e6;
    plan = planned(&side);
    ck_assert(plan.drive_end.stand_off_most_given && !plan.free_end.stand_off_most_given);
    for (int i = 0; i < plan.line_count; i++) {
        const tside_strength_line *line = plan.lines + i;
        if (line->code != TSIDE_EYE_BOLT_BENDING || line->end != TSIDE_DRIVE_END)
            continue;
        NEAR(plan.drive_end.stand_off_most, side.drive_end.extender.eye_stand_off * line->limit / line->demand,
             1e-9 * plan.drive_end.stand_off_most, "stand-off", 0);
        told++;
    }
    ck_assert_int_eq(told, 1);
    NEAR(plan.drive_end.past_bolt_most - plan.drive_end.stand.past_most,
         plan.drive_end.stand_off_most - side.drive_end.extender.eye_stand_off, 1e-12, "past the bows", 0);
}
END_TEST

/* --- the turn table --- */

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
    REFUSES(tside_plan_turns(&side, rows, 4, &count, &fault), rows, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass",
            TSIDE_NOT_FINITE);
    ck_assert_int_eq(count, -7);
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass",
            TSIDE_NOT_FINITE);
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bar.clip_mass", TSIDE_NOT_FINITE);
    side = plain();
    REFUSES(tside_eye_least(&side, (tside_which_end)2, &rise, &fault), rise, TSIDE_OUT_OF_BOUNDS, "end",
            TSIDE_NOT_ONE_OF);
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_OUT_OF_BOUNDS, "bars", TSIDE_NOT_ABOVE);
    side.drive.place = TSIDE_MID_BAR;
    REFUSES(tside_eye_least(&side, TSIDE_FREE_END, &rise, &fault), rise, TSIDE_NOT_MODELLED, "drive.place",
            TSIDE_NO_RELATION);
    REFUSES(tside_plan_turns(&side, rows, 4, &count, &fault), rows, TSIDE_NOT_MODELLED, "drive.place",
            TSIDE_NO_RELATION);
    side = plain();
    side.curtain.hip = 19;
    REFUSES(tside_plan_turns(&side, rows, 4, &count, &fault), rows, TSIDE_OUT_OF_REACH, "curtain.hip", TSIDE_ABOVE);
    side = plain();
    side.drive.place = TSIDE_MID_BAR;
    side.bar_count = 1;
    side.bars[0] = side.bar;
    REFUSES(tside_bar_smallest(&side, &index, &fault), index, TSIDE_NOT_MODELLED, "drive.place", TSIDE_NO_RELATION);
}
END_TEST

Suite *plan_suite(void)
{
    Suite *suite = suite_create("plan");
    TCase *tcase = tcase_create("plan");
    tcase_add_test(tcase, plan_is_its_parts);
    tcase_add_test(tcase, every_result_is_that_of_its_function);
    tcase_add_test(tcase, stall_pushes_hardest_somewhere);
    tcase_add_test(tcase, hands_are_mirrors_and_nil_travel_plans);
    tcase_add_test(tcase, torque_grows_evenly_with_length);
    tcase_add_test(tcase, hip_instead_is_the_same_side_hung_there);
    tcase_add_test(tcase, swing_and_throw_follow_from_the_force_at_open);
    tcase_add_test(tcase, stall_is_guessed_where_none_is_known);
    tcase_add_test(tcase, an_eye_bolt_bears_so_far_out);
    tcase_add_test(tcase, outputs_stay_untouched);
    suite_add_tcase(suite, tcase);
    return suite;
}
