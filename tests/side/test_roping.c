/* SPDX-License-Identifier: MIT */
/*
 * Ropes of a planned side: as the functions they are made of give them with the side's own places; their drag against
 * torque without them, worked here at places along the travel.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "winds.h"

Suite *roping_suite(void);

static const tside_ropes runs[] = {TSIDE_STRAIGHT_ROPES, TSIDE_ZIGZAG_ROPE};

/* The plain side under ropes, in a gust of 20 m/s; invented. */
static tside_side roped_side(int run)
{
    tside_side side = plain();
    string_ropes(&side, runs[run]);
    side.friction = 0.25;
    blow(&side, 20);
    return side;
}

/* Rope that stretches, of a length given. K: N. */
static void give_line(tside_side *side, double slack, double K)
{
    side->rope.slack = TSIDE_SLACK_GIVEN;
    side->rope.line = (tside_give){
        .by = TSIDE_BY_STRETCH, .slack_given = 1, .stiffness_given = K > 0, .slack = slack, .stiffness = K};
}

/* The rope of a side with hooks at the fixing and anchors as told, made apart from its plan. */
static tside_rope rope_of(const tside_side *side, const tside_travel *travel)
{
    tside_rope rope;
    tside_position shut;
    tside_fault fault;
    ANSWERS(tside_travel_at(travel, 0, &shut, &fault));
    tside_usual(TSIDE_KIND_ROPE, &rope);
    rope.run = side->ropes == TSIDE_ZIGZAG_ROPE ? TSIDE_ROPE_ZIGZAG : TSIDE_ROPES_STRAIGHT;
    rope.upper_x = travel->line.x + side->rope.hook_out;
    rope.upper_y = side->curtain.hip + side->rope.hook_above;
    rope.lower_x = side->rope.anchor_out_given ? travel->line.x + side->rope.anchor_out
                                               : shut.x - shut.diameter / 2 * cos(shut.slope);
    rope.lower_y = side->rope.anchor_height_given ? side->rope.anchor_height : shut.underside - 0.05;
    rope.pitch = side->rope.pitch;
    rope.line = side->rope.line;
    rope.film = side->rope.film;
    rope.ends = side->rope.ends;
    return rope;
}

START_TEST(a_plan_has_the_ropes_of_its_curtain)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run);
        const tside_travel travel = travel_of(&side);
        tside_rope rope;
        tside_roped bears;
        tside_rope_over longest, hardest;
        tside_plan plan;
        tside_fault fault;
        side.rope.anchor_out_given = side.rope.anchor_height_given = 1;
        side.rope.anchor_out = -0.05;
        side.rope.anchor_height = 0.1;
        side.rope.hook_out = 0.01;
        side.rope.hook_above = 0.02;
        give_line(&side, 0.002, 4e4);
        rope = rope_of(&side, &travel);
        plan = planned(&side);
        ck_assert(plan.rope_given && plan.rope.bay_given);
        ck_assert(plan.rope.hook_x == rope.upper_x && plan.rope.hook_y == rope.upper_y);
        ck_assert(plan.rope.anchor_x == rope.lower_x && plan.rope.anchor_y == rope.lower_y);
        ANSWERS(tside_rope_bears(&rope, side.length, plan.blowing.pressure.net, &bears, &fault));
        ck_assert(!memcmp(&plan.rope.bears, &bears, sizeof bears));
        ANSWERS(tside_rope_over_worst(&rope, side.length, &travel, &longest, &hardest, &fault));
        NEAR(plan.rope.longest.slack, longest.slack, 1e-12, "slack", run);
        NEAR(plan.rope.hardest.pressure, hardest.pressure, 1e-9 * hardest.pressure, "pressure", run);
        ck_assert(hardest.pressure > 0);
        NEAR(plan.rope.edge, side.curtain.past + (run ? bears.pitch / 4 : 0), 1e-12, "edge", run);
    }
}
END_TEST

/* Where nobody says, anchors are below the shut roll, and a rope is as long as its way over the roll, or sags by 1/20.
 */
START_TEST(a_rope_is_long_enough)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run);
        const tside_travel travel = travel_of(&side);
        const double b = 2 * atan(0.1);
        tside_plan plan = planned(&side);
        tside_rope rope = rope_of(&side, &travel);
        NEAR(plan.rope.anchor_x, rope.lower_x, 1e-9, "anchor", run);
        NEAR(plan.rope.anchor_y, plan.shut.underside - 0.05, 1e-12, "anchor", run);
        NEAR(plan.rope.bears.slack, b / sin(b) - 1, 1e-12, "little is asked", run);
        ck_assert(plan.rope.longest.slack < plan.rope.bears.slack && !plan.rope.longest.stopped);
        side.rope.anchor_out_given = 1;
        side.rope.anchor_out = -0.2; /* far in: a long way round the roll */
        plan = planned(&side);
        NEAR(plan.rope.bears.slack, plan.rope.longest.slack, 1e-12, "much is asked", run);
        ck_assert(plan.rope.bears.slack > 0.01 && !plan.rope.longest.stopped && plan.rope.hardest.pressure == 0);
        ck_assert(!finds(&plan, TSIDE_FINDING_ROPE_SHORT));
        give_line(&side, plan.rope.longest.slack * 1.001, 0);
        plan = planned(&side);
        ck_assert(!finds(&plan, TSIDE_FINDING_ROPE_SHORT));
        give_line(&side, plan.rope.longest.slack * 0.999, 0);
        plan = planned(&side);
        ck_assert(plan.rope.longest.stopped && finds(&plan, TSIDE_FINDING_ROPE_SHORT));
        give_line(&side, plan.rope.longest.slack * 0.999, 1e4); /* it stretches */
        plan = planned(&side);
        ck_assert(!finds(&plan, TSIDE_FINDING_ROPE_SHORT) && plan.rope.hardest.pressure > 0);
    }
}
END_TEST

/* Between ropes bar and rail bear as the bay does, a zigzag's bar half a pitch beyond its last anchor. */
START_TEST(bar_and_rail_bear_between_ropes)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run);
        const tside_travel travel = travel_of(&side);
        tside_plan plan = planned(&side);
        tside_load load = load_of(&side);
        tside_bay bay;
        tside_bay_load bears;
        tside_pitch_rule rule;
        tside_fault fault;
        double wound, pitch;
        tside_rope rope = rope_of(&side, &travel);
        const tside_strength_line *line;
        tside_usual(TSIDE_KIND_BAY, &bay);
        ANSWERS(tside_roll_taken_up(&travel.roll, side.stops.wraps_shut, &wound, &fault));
        bay.pressure = plan.blowing.pressure.net;
        bay.pitch = plan.rope.bears.pitch;
        bay.overhang = side.curtain.past + (run ? bay.pitch / 2 : 0);
        bay.hanging = plan.blowing.hanging;
        bay.roll = plan.shut.diameter;
        bay.tube = side.bar.tube;
        bay.material = side.bar.material;
        bay.weight = GRAVITY * (load.bar_mass + load.clip_mass + load.areal_mass * (wound + bay.hanging));
        bay.screw_spacing = side.curtain.screw_spacing;
        ANSWERS(tside_bay_bears(&bay, &bears, &fault));
        NEAR(plan.rope.bay.moment, bears.moment, 1e-9 * bears.moment, "moment", run);
        NEAR(plan.rope.bay.screw, bears.screw, 1e-9 * bears.screw, "screw", run);
        NEAR(plan.rope.bay.rail_along, bears.rail_along, 1e-9 * bears.screw, "along the rail", run);
        line = strength_of(&plan, TSIDE_BAR_WIND, TSIDE_DRIVE_END);
        NEAR(line->utilisation, bears.utilisation, 1e-9, "bar", run);
        line = strength_of(&plan, TSIDE_RAIL_SCREW, TSIDE_DRIVE_END);
        ck_assert(line->demand == plan.rope.bay.screw && !line->limit_given && line->verdict == TSIDE_VERDICT_LOOK);
        bay.overhang = side.curtain.past;
        rope.line = (tside_give){.by = TSIDE_BY_STRETCH, .slack_given = 1, .slack = plan.rope.bears.slack};
        ANSWERS(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault));
        ck_assert(plan.rope.pitch_keeps);
        NEAR(plan.rope.pitch_most, pitch, 1e-6, "greatest pitch", run);
        ck_assert(plan.rope.rule == rule && rule == TSIDE_PITCH_BY_BAR);
        side.rope.screw_limit_given = 1;
        side.rope.screw_limit = bears.screw * 0.99;
        side.rope.film_limit_given = 1;
        side.rope.film_limit = 0.1; /* less than the film bears on the shortest span */
        plan = planned(&side);
        ck_assert(!plan.rope.pitch_keeps && plan.rope.pitch_most == 0);
        ck_assert_int_eq(strength_of(&plan, TSIDE_RAIL_SCREW, TSIDE_DRIVE_END)->verdict, TSIDE_VERDICT_NO);
        ck_assert(finds(&plan, TSIDE_FINDING_FILM_WEAK) && finds(&plan, TSIDE_FINDING_STRENGTH));
    }
}
END_TEST

/* --- drag --- */

/* A guide that stands turns nothing with the bar: drive and bar turn alike, and torque is the bar's. */
static void stand_guides(tside_side *side)
{
    side->drive_end.guide.foot = side->free_end.guide.foot = TSIDE_FOOT_FIXED;
}

enum { ROWS = 100 };

static int turns_of(const tside_side *side, tside_turn *rows)
{
    tside_fault fault;
    int count;
    ANSWERS(tside_plan_turns(side, rows, ROWS, &count, &fault));
    return count;
}

/* 2 mu N' r L, with N' of the ropes at each row by their own function, and what the caller adds. */
START_TEST(ropes_that_stretch_drag)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run), slack;
        tside_turn rows[ROWS], without[ROWS];
        tside_travel travel;
        tside_rope rope;
        tside_plan plan;
        tside_fault fault;
        double greatest = 0, most = 0;
        int count;
        stand_guides(&side);
        give_line(&side, 0.001, 4e4);
        side.rope_pressure = 3;
        slack = side;
        give_line(&slack, 0.4, 4e4);
        travel = travel_of(&side);
        rope = rope_of(&side, &travel);
        count = turns_of(&side, rows);
        ck_assert_int_eq(turns_of(&slack, without), count);
        for (int i = 0; i < count; i++) {
            tside_rope_over over;
            double drag;
            ANSWERS(tside_rope_over_at(&rope, side.length, &travel, rows[i].turn, &over, &fault));
            drag = 2 * side.rope_friction * over.pressure * rows[i].diameter / 2 *
                   (side.length + 2 * side.curtain.past);
            NEAR(rows[i].torque - without[i].torque, drag, 1e-9 * rows[i].torque, "drag", i);
            greatest = fmax(greatest, drag);
            most = fmax(most, rows[i].torque);
        }
        ck_assert(greatest > 0.1);
        plan = planned(&side);
        ck_assert(plan.worst.drive >= most * (1 - 1e-12) && plan.worst.drive < most * 1.1);
        ck_assert(planned(&slack).worst.drive < plan.worst.drive);
    }
}
END_TEST

/* Slack ropes drag by what the caller gives, to the last bit as though nobody knew how they run. */
START_TEST(slack_ropes_do_not_drag)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run), pressing;
        tside_plan plan, other;
        side.rope_pressure = 12;
        pressing = side;
        pressing.ropes = TSIDE_ROPES;
        plan = planned(&side);
        other = planned(&pressing);
        ck_assert(!memcmp(&plan.worst, &other.worst, sizeof plan.worst) && plan.work == other.work);
        ck_assert(!other.rope_given && other.rope.bears.ropes == 0 && other.rope.stays_put == 0);
        give_line(&side, 0.3, 5e4);
        plan = planned(&side);
        ck_assert(!memcmp(&plan.worst, &other.worst, sizeof plan.worst));
        give_line(&side, 0, 5e4);
        ck_assert(planned(&side).worst.drive > other.worst.drive);
    }
}
END_TEST

/* In just that wind the ropes press so hard on the roll that somewhere the torque is what the drive is rated for. */
START_TEST(there_is_a_wind_in_which_the_drive_stays_put)
{
    for (int run = 0; run < 2; run++)
        for (int stretches = 0; stretches < 2; stretches++) {
            tside_side side = roped_side(run);
            tside_travel travel;
            tside_plan plan;
            tside_pressure pressure;
            tside_fault fault;
            double most = 0;
            stand_guides(&side);
            if (stretches)
                give_line(&side, 0.002, 4e4);
            travel = travel_of(&side);
            plan = planned(&side);
            ck_assert(plan.rope.stays_put_given && plan.rope.stays_put_speed_given && plan.rope.stays_put > 0);
            for (int i = 0; i <= 2000; i++) {
                const double turns = plan.bar_turns * i / 2000;
                tside_position at;
                tside_torque torque;
                tside_rope_over over;
                tside_load load = load_of(&side);
                tside_rope rope = rope_of(&side, &travel);
                ANSWERS(tside_travel_at(&travel, turns, &at, &fault));
                ANSWERS(tside_rope_over_at(&rope, side.length, &travel, turns, &over, &fault));
                load.end_mass = side.drive.mass + side.collar.mass +
                                load.bar_mass * (plan.bar_beyond_drive + plan.bar_beyond_free);
                load.rope_friction = side.rope_friction;
                load.rope_pressure = plan.rope.stays_put * (at.hanging / 2 + at.diameter) +
                                     (stretches ? over.pressure : 0);
                ANSWERS(tside_lift_at(&travel, &load, NULL, turns, &torque, &fault));
                most = fmax(most, torque.up);
            }
            NEAR(most, side.drive.rated_torque, 1e-4 * side.drive.rated_torque, "torque", run);
            side.wind.speed = plan.rope.stays_put_speed;
            ANSWERS(tside_wind_pressure(&side.wind, &pressure, &fault));
            NEAR(pressure.net, plan.rope.stays_put, 1e-9 * pressure.net, "pressure", run);
        }
}
END_TEST

START_TEST(a_weak_drive_stays_put_in_any_wind)
{
    tside_side side = roped_side(0);
    tside_plan plan;
    side.drive.rated_torque = 1;
    plan = planned(&side);
    ck_assert(plan.rope.stays_put_given && plan.rope.stays_put == 0 && plan.rope.stays_put_speed == 0);
    side.drive.rated_torque_given = 0;
    plan = planned(&side);
    ck_assert(!plan.rope.stays_put_given && !plan.rope.stays_put_speed_given);
    side = roped_side(0);
    side.rope_friction = 0;
    ck_assert(!planned(&side).rope.stays_put_given);
}
END_TEST

/* --- without wind, and inward --- */

START_TEST(without_wind_ropes_are_counted_and_pull_nothing)
{
    for (int run = 0; run < 2; run++) {
        tside_side side = roped_side(run);
        tside_plan windy = planned(&side), plan;
        side.wind.rule = TSIDE_NO_WIND;
        plan = planned(&side);
        ck_assert(plan.rope_given && !plan.rope.bay_given && !plan.rope.pitch_keeps);
        ck_assert(plan.rope.bears.ropes == windy.rope.bears.ropes &&
                  plan.rope.bears.lower_hooks == windy.rope.bears.lower_hooks &&
                  plan.rope.bears.rope_length == windy.rope.bears.rope_length);
        ck_assert(plan.rope.bears.tension == 0 && plan.rope.bears.pull == 0 && plan.rope.bears.film_tension == 0);
        ck_assert(plan.rope.stays_put == windy.rope.stays_put && !plan.rope.stays_put_speed_given);
        ck_assert_int_eq(plan.line_count, windy.line_count - 2);
    }
}
END_TEST

START_TEST(wind_inward_presses_the_film_on_the_bows)
{
    tside_side side = roped_side(0);
    tside_plan plan = planned(&side);
    const double half = 2 * atan(2 * 0.05);
    ck_assert(!plan.rope.film_inward_given && plan.rope.film_inward == 0);
    side.rope.bow_spacing_given = 1;
    side.rope.bow_spacing = 1.8;
    plan = planned(&side);
    NEAR(plan.rope.film_inward, plan.blowing.pressure.net * 1.8 / (2 * sin(half)), 1e-9 * plan.rope.film_inward,
         "p c/(2 sin b)", 0);
    side.rope.film_limit_given = 1;
    side.rope.film_limit = (plan.rope.film_inward + plan.rope.bears.film_tension) / 2;
    ck_assert(plan.rope.film_inward > plan.rope.bears.film_tension);
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_FILM_WEAK));
    NEAR(finding_of(&plan, TSIDE_FINDING_FILM_WEAK)->value, plan.rope.film_inward, 0, "the greater", 0);
}
END_TEST

START_TEST(what_is_amiss_is_named)
{
    tside_side side = roped_side(0);
    tside_plan plan;
    tside_fault fault;
    side.rope.anchor_height_given = 1;
    side.rope.anchor_height = 2;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "rope.anchor_height", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "rope.hook_above");
    NEAR(fault.bound, side.curtain.hip, 1e-12, "bound", 0);
    side.rope.anchor_height = 0.35; /* above the roll */
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "rope.anchor_height", TSIDE_NO_RELATION);
    side.rope.anchor_height = side.curtain.sill - side.stops.seal + 0.005; /* in it, below its axis */
    side.rope.anchor_out_given = 1;
    side.rope.anchor_out = 0.018;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "rope.anchor_out", TSIDE_NO_RELATION);
    side = roped_side(0);
    side.rope.hook_above = -0.5;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "rope.hook_above", TSIDE_NO_RELATION);
    side.curtain.sill = 1.1;
    side.rope.hook_above = -1;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "rope.hook_above", TSIDE_NOT_ABOVE);
    side = roped_side(1);
    side.rope.film.by = TSIDE_BY_STRETCH;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "rope.film.slack", TSIDE_NO_RELATION);
    side.rope.film.stiffness_given = 1;
    side.rope.film.stiffness = 10;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "rope.film", TSIDE_NO_RELATION);
    side.rope.film.stiffness = 900;
    side.rope.bow_spacing_given = 1;
    side.rope.bow_spacing = 10;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_REACH, "rope.film", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "rope.bow_spacing");
}
END_TEST

/* What one column asks is what the whole plan says. */
START_TEST(a_column_asks_for_ropes_alone)
{
    tside_side side = roped_side(1);
    tside_input input;
    tside_output output;
    tside_fault fault;
    double pitch[] = {0.8, 1.2, 1.6}, tension[3];
    int statuses[3];
    memset(&input, 0, sizeof input);
    memset(&output, 0, sizeof output);
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "rope.pitch", &input.place, &fault));
    input.data = pitch;
    input.stride = sizeof *pitch;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "rope.bears.tension", &output.place, &fault));
    output.data = tension;
    output.stride = sizeof *tension;
    ANSWERS(tside_plan_sides(&side, 3, &input, 1, &output, 1, statuses, NULL, &fault));
    for (int i = 0; i < 3; i++) {
        side.rope.pitch = pitch[i];
        ck_assert(tension[i] > 0 && tension[i] == planned(&side).rope.bears.tension);
    }
}
END_TEST

Suite *roping_suite(void)
{
    Suite *suite = suite_create("roping");
    TCase *tcase = tcase_create("roping");
    tcase_add_test(tcase, a_plan_has_the_ropes_of_its_curtain);
    tcase_add_test(tcase, a_rope_is_long_enough);
    tcase_add_test(tcase, bar_and_rail_bear_between_ropes);
    tcase_add_test(tcase, ropes_that_stretch_drag);
    tcase_add_test(tcase, slack_ropes_do_not_drag);
    tcase_add_test(tcase, there_is_a_wind_in_which_the_drive_stays_put);
    tcase_add_test(tcase, a_weak_drive_stays_put_in_any_wind);
    tcase_add_test(tcase, without_wind_ropes_are_counted_and_pull_nothing);
    tcase_add_test(tcase, wind_inward_presses_the_film_on_the_bows);
    tcase_add_test(tcase, what_is_amiss_is_named);
    tcase_add_test(tcase, a_column_asks_for_ropes_alone);
    suite_add_tcase(suite, tcase);
    return suite;
}
