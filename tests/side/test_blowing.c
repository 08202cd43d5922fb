/* SPDX-License-Identifier: MIT */
/* Wind on a planned side: as the functions it is made of give it, with the side's own lengths and weights. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "winds.h"

Suite *blowing_suite(void);

/* A plain side's curtain, shut, made apart from its plan: of a straight wall. */
static tside_loose loose_of(const tside_side *side)
{
    tside_travel travel = travel_of(side);
    tside_load load = load_of(side);
    tside_position shut;
    tside_fault fault;
    double wound, out, drop;
    tside_loose c;
    tside_usual(TSIDE_KIND_LOOSE, &c);
    ANSWERS(tside_travel_at(&travel, 0, &shut, &fault));
    ANSWERS(tside_roll_taken_up(&travel.roll, side->stops.wraps_shut, &wound, &fault));
    out = shut.x - shut.diameter / 2 * cos(shut.slope) - travel.line.x;
    drop = travel.line.y - shut.y + shut.diameter / 2 * sin(shut.slope);
    c.roll = shut.diameter;
    c.hanging = hypot(out, drop); /* a straight wall's curtain hangs by a straight chord */
    c.lean = atan2(out, drop);
    c.weight = GRAVITY * (load.bar_mass + load.clip_mass + load.areal_mass * (wound + c.hanging / 2));
    c.seal = travel.sill - shut.underside;
    return c;
}

START_TEST(a_plan_has_the_wind_of_its_curtain_shut)
{
    tside_side side = plain();
    tside_plan before = planned(&side), plan;
    tside_loose c = loose_of(&side);
    tside_loosening l;
    tside_pressure p;
    tside_blown b;
    tside_fault fault;
    double speed;
    ck_assert_int_eq(before.wind_given, 0);
    ck_assert(before.blowing.pressure.net == 0 && before.blowing.gives_way.flies == 0);
    blow(&side, 3);
    plan = planned(&side);
    ck_assert_int_eq(plan.wind_given, 1);
    NEAR(plan.blowing.hanging, c.hanging, 1e-9, "hanging", 0);
    NEAR(plan.blowing.lean, c.lean, 1e-9, "lean", 0);
    NEAR(plan.blowing.weight, c.weight, 1e-9 * c.weight, "weight", 0);
    ANSWERS(tside_loose_limits(&c, &l, &fault));
    NEAR(plan.blowing.gives_way.leaves, l.leaves, 1e-6 * l.flies, "leaves", 0);
    NEAR(plan.blowing.gives_way.unseals, l.unseals, 1e-6 * l.flies, "unseals", 0);
    NEAR(plan.blowing.gives_way.flies, l.flies, 1e-6 * l.flies, "flies", 0);
    ANSWERS(tside_wind_pressure(&side.wind, &p, &fault));
    ck_assert(!memcmp(&p, &plan.blowing.pressure, sizeof p));
    ANSWERS(tside_wind_speed(&side.wind, plan.blowing.gives_way.flies, &speed, &fault));
    ck_assert(plan.blowing.leaves_speed_given);
    NEAR(plan.blowing.flies_speed, speed, 1e-12 * speed, "speed at which it flies", 0);
    ck_assert(plan.blowing.leaves_speed <= plan.blowing.unseals_speed &&
              plan.blowing.unseals_speed <= plan.blowing.flies_speed);
    ck_assert(plan.blowing.stands_given);
    ANSWERS(tside_loose_blown(&c, p.net, &b, &fault));
    NEAR(plan.blowing.stands.stand_out, b.stand_out, 1e-6, "stand-out", 0);
    NEAR(plan.blowing.stands.raise, b.raise, 1e-6, "raise", 0);
    /* and all else is as it was */
    ck_assert(plan.worst.drive == before.worst.drive && plan.drive_turns == before.drive_turns &&
              plan.line_count == before.line_count);
}
END_TEST

/* A wall that leans in by 1 in 5, of three points in one line. */
START_TEST(a_leaning_walls_curtain_leans_with_it)
{
    tside_side side = plain();
    tside_plan plan;
    tside_loose c;
    on_hip(&side);
    blow(&side, 3);
    side.frame.shape = TSIDE_THREE_POINTS;
    side.frame.foot_x = 4.8, side.frame.between_x = 4.4, side.frame.peak_x = 4;
    side.frame.foot_height = 0, side.frame.between_height = 2, side.frame.peak_height = 4;
    plan = planned(&side);
    c = loose_of(&side);
    ck_assert_msg(c.lean > 0.15 && c.lean < 0.25, "lean %g", c.lean);
    NEAR(plan.blowing.lean, c.lean, 1e-9, "lean", 0);
    NEAR(plan.blowing.hanging, c.hanging, 1e-9, "hanging", 0);
    NEAR(plan.blowing.weight, c.weight, 1e-9 * c.weight, "weight", 0);
}
END_TEST

/* Guide, drive and tube in a wind along the house, and the lines that an extender then has; the rest stays. */
START_TEST(wind_along_the_house_loads_the_extenders)
{
    tside_side side = plain();
    const tside_plan before = planned(&side);
    tside_plan plan;
    tside_fault fault;
    double q;
    ck_assert(before.drive_end.wind_eye == 0 && before.drive_end.wind_tube == 0);
    blow(&side, 30);
    side.wind.load_factor = 1.5;
    side.wind.drive_face = 0.05;
    plan = planned(&side);
    q = 1.5 * 1.25 * 30 * 30 / 2;
    NEAR(plan.blowing.pressure.counted, q, 1e-9, "pressure counted", 0);
    for (int which = TSIDE_DRIVE_END; which <= TSIDE_FREE_END; which++) {
        const tside_end *end = which == TSIDE_DRIVE_END ? &side.drive_end : &side.free_end;
        const tside_end_plan *made = which == TSIDE_DRIVE_END ? &plan.drive_end : &plan.free_end;
        const tside_end_plan *calm = which == TSIDE_DRIVE_END ? &before.drive_end : &before.free_end;
        tside_strength_line lines[TSIDE_EXTENDER_LINES];
        tside_metal_values metal;
        tside_section pipe;
        int count, worse = 0;
        /* EN 1991-1-4, figures 7.28 and 7.23, unreduced, from memory: 1.2 round, 2.1 square */
        NEAR(made->wind_eye,
             1.2 * q * end->guide.tube.diameter * made->sweep.length + (which == TSIDE_DRIVE_END ? 2.1 * q * 0.05 : 0),
             1e-9, "at the eye", which);
        NEAR(made->wind_tube, 2.1 * q * end->extender.tube.side, 1e-9, "along the tube", which);
        ck_assert(made->side_force_stall == calm->side_force_stall && made->stand_off_most == calm->stand_off_most);
        ANSWERS(tside_material_values(&end->guide.material, &metal, &fault));
        ANSWERS(tside_round_section(&end->guide.tube, metal.density, &pipe, &fault));
        ANSWERS(tside_extender_strength(&end->extender, &made->layout, fmax(made->side_force_stall, 0),
                                        made->side_force_jam, GRAVITY * pipe.mass * made->sweep.cut_length,
                                        made->wind_eye, made->wind_tube, (tside_which_end)which, lines,
                                        TSIDE_EXTENDER_LINES, &count, &fault));
        for (int i = 0; i < count; i++) {
            const tside_strength_line *line = strength_of(&plan, lines[i].code, (tside_which_end)which);
            const tside_strength_line *quiet = strength_of(&before, lines[i].code, (tside_which_end)which);
            NEAR(line->demand, lines[i].demand, 1e-9 * lines[i].demand, "line", (int)lines[i].code);
            worse += line->demand > quiet->demand;
            ck_assert(line->demand >= quiet->demand);
        }
        ck_assert_int_ge(worse, 3); /* bending, and both bolts' pull */
    }
    side.wind.rule = TSIDE_ASCE_7_22; /* Kd counts once, in what a coefficient multiplies */
    side.wind.coefficient = 0.7;
    plan = planned(&side);
    NEAR(plan.blowing.pressure.counted, plan.blowing.pressure.velocity * 1.5 * 0.85, 1e-9, "with Kd", 0);
    NEAR(plan.blowing.pressure.net, plan.blowing.pressure.counted * 0.7, 1e-9, "net", 0);
    on_hip(&side);
    plan = planned(&side);
    ck_assert(plan.drive_end.wind_eye > 0 && plan.drive_end.wind_tube == 0);
    ck_assert(plan.drive_end.wind_eye > plan.free_end.wind_eye);
}
END_TEST

START_TEST(ropes_are_needed_where_the_wind_opens_it)
{
    tside_side side = plain();
    tside_plan plan;
    double unseals, flies;
    blow(&side, 1);
    plan = planned(&side);
    unseals = plan.blowing.unseals_speed;
    flies = plan.blowing.flies_speed;
    side.wind.speed = unseals * (1 - 1e-6);
    plan = planned(&side);
    ck_assert(!plan.blowing.needs_ropes && !finds(&plan, TSIDE_FINDING_UNSEALS));
    side.wind.speed = unseals * (1 + 1e-6);
    plan = planned(&side);
    ck_assert(plan.blowing.needs_ropes && finds(&plan, TSIDE_FINDING_UNSEALS) && !finds(&plan, TSIDE_FINDING_FLIES));
    side.wind.speed = flies * (1 - 1e-6);
    plan = planned(&side);
    ck_assert(plan.blowing.stands_given && !finds(&plan, TSIDE_FINDING_FLIES));
    side.wind.speed = flies * (1 + 1e-6);
    plan = planned(&side);
    ck_assert(plan.blowing.needs_ropes && !plan.blowing.stands_given && finds(&plan, TSIDE_FINDING_FLIES));
    ck_assert(!finds(&plan, TSIDE_FINDING_UNSEALS)); /* the graver says it */
    side.ropes = TSIDE_ROPES; /* they hold it: what it would do without is told, and no finding */
    plan = planned(&side);
    ck_assert(plan.blowing.needs_ropes && !finds(&plan, TSIDE_FINDING_FLIES));
}
END_TEST

/* By a code the house's top counts, unless a height is given. */
START_TEST(the_houses_top_is_the_usual_height)
{
    tside_side side = plain();
    tside_plan plan, given;
    blow(&side, 40);
    side.wind.rule = TSIDE_EN_1991_1_4;
    plan = planned(&side);
    NEAR(plan.blowing.height, side.frame.peak_height, 1e-9, "height", 0);
    side.wind.height_given = 1;
    side.wind.height = side.frame.peak_height;
    given = planned(&side);
    NEAR(given.blowing.pressure.net, plan.blowing.pressure.net, 1e-9 * plan.blowing.pressure.net, "pressure", 0);
    ck_assert(plan.blowing.pressure.mean_speed_given && !plan.blowing.pressure.exposure_given);
    side.wind.height = 12;
    ck_assert_double_gt(planned(&side).blowing.pressure.net, given.blowing.pressure.net);
    side.wind.rule = TSIDE_PRESSURE_GIVEN;
    side.wind.velocity_pressure = 10;
    plan = planned(&side);
    ck_assert(!plan.blowing.leaves_speed_given && plan.blowing.flies_speed == 0);
    NEAR(plan.blowing.pressure.net, 12.8, 1e-12, "pressure", 0);
}
END_TEST

START_TEST(a_heavier_bar_bears_more_wind_and_water_is_not_counted)
{
    tside_side side = plain();
    tside_plan plan, other;
    blow(&side, 3);
    plan = planned(&side);
    side.bar.tube.wall *= 1.5;
    other = planned(&side);
    ck_assert(other.blowing.flies_speed > plan.blowing.flies_speed &&
              other.blowing.unseals_speed > plan.blowing.unseals_speed);
    side = plain();
    blow(&side, 3);
    side.curtain.wet = 0.5;
    other = planned(&side);
    ck_assert_double_eq(other.blowing.flies_speed, plan.blowing.flies_speed);
}
END_TEST

START_TEST(what_is_amiss_is_named)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    blow(&side, 0);
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_OUT_OF_BOUNDS, "wind.speed", TSIDE_BELOW);
    blow(&side, 20);
    side.wind.rule = TSIDE_EN_1991_1_4;
    side.wind.category = TSIDE_CATEGORY_GIVEN;
    side.wind.roughness = 5;
    side.wind.height_least = 1;
    REFUSES(tside_plan_side(&side, &plan, &fault), plan, TSIDE_CONTRADICTS, "wind.roughness", TSIDE_NOT_BELOW);
    ck_assert_str_eq(fault.other, "wind.height_least");
}
END_TEST

/* A fixing high on a flat arch: its curtain leans far. */
START_TEST(a_curtain_that_leans_too_far_is_not_modelled)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    double most = 0;
    blow(&side, 20);
    on_hip(&side);
    for (double hip = side.curtain.hip; hip < side.frame.peak_height; hip += 0.05) {
        tside_status status;
        side.curtain.hip = hip;
        side.curtain.sill = hip - 0.5;
        status = tside_plan_side(&side, &plan, &fault);
        if (status == TSIDE_OK)
            most = fmax(most, plan.blowing.lean);
        else if (status == TSIDE_NOT_MODELLED) {
            ck_assert_str_eq(fault.field, "curtain.hip");
            ck_assert_str_eq(fault.other, "wind.rule");
            side.wind.rule = TSIDE_NO_WIND;
            ck_assert_int_eq(tside_plan_side(&side, &plan, &fault), TSIDE_OK);
            ck_assert_double_gt(most, 0.1);
            return;
        }
    }
    ck_abort_msg("no hip leans too far: %g at most, last %s: %s", most, fault.field, fault.reason);
}
END_TEST

/* What one column asks is what the whole plan says. */
START_TEST(a_column_asks_for_wind_alone)
{
    tside_side side = plain();
    tside_input input;
    tside_output output;
    tside_fault fault;
    double speed[2] = {2, 20}, flies[2] = {0}, ropes[2] = {0};
    int statuses[2];
    tside_output outputs[2];
    blow(&side, 1);
    memset(&input, 0, sizeof input);
    memset(&output, 0, sizeof output);
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, "wind.speed", &input.place, &fault));
    input.data = speed;
    input.stride = sizeof *speed;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "blowing.flies_speed", &output.place, &fault));
    output.data = flies;
    output.stride = sizeof *flies;
    outputs[0] = output;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, "blowing.needs_ropes", &output.place, &fault));
    output.data = ropes;
    outputs[1] = output;
    ANSWERS(tside_plan_sides(&side, 2, &input, 1, outputs, 2, statuses, NULL, &fault));
    ck_assert(flies[0] == planned(&side).blowing.flies_speed && flies[1] == flies[0]);
    ck_assert(ropes[0] == 0 && ropes[1] == 1);
}
END_TEST

Suite *blowing_suite(void)
{
    Suite *suite = suite_create("blowing");
    TCase *tcase = tcase_create("blowing");
    tcase_add_test(tcase, a_plan_has_the_wind_of_its_curtain_shut);
    tcase_add_test(tcase, a_leaning_walls_curtain_leans_with_it);
    tcase_add_test(tcase, wind_along_the_house_loads_the_extenders);
    tcase_add_test(tcase, ropes_are_needed_where_the_wind_opens_it);
    tcase_add_test(tcase, the_houses_top_is_the_usual_height);
    tcase_add_test(tcase, a_heavier_bar_bears_more_wind_and_water_is_not_counted);
    tcase_add_test(tcase, what_is_amiss_is_named);
    tcase_add_test(tcase, a_curtain_that_leans_too_far_is_not_modelled);
    tcase_add_test(tcase, a_column_asks_for_wind_alone);
    suite_add_tcase(suite, tcase);
    return suite;
}
