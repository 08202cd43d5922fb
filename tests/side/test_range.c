/* SPDX-License-Identifier: MIT */
/* How far from its plan a side may be: spreads, the range of turns when open, ropes and lag. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *range_suite(void);

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
    NEAR(b.worst.up - a.worst.up, 2 * side.rope_friction * 10 * a.open.diameter / 2 * a.curtain_length, 1e-9, "ropes",
         0);
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
            ck_assert_msg(plan.drive_turns_least < least && plan.drive_turns_most > most, "%s of %g narrows the range",
                          spreads[k], 0.02 * i);
            ck_assert(plan.drive_turns_least <= plan.drive_turns + 1e-12 &&
                      plan.drive_turns <= plan.drive_turns_most + 1e-12);
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
            ck_assert_msg(plan.drive_turns_least <= plan.drive_turns + 1e-12 &&
                              plan.drive_turns <= plan.drive_turns_most + 1e-12,
                          "%d mm/10 from shut to open: %g to %g, not %g", i, plan.drive_turns_least,
                          plan.drive_turns_most, plan.drive_turns);
            ck_assert(plan.drive_turns_least >= 0 && plan.drive_turns_most < 0.1);
        }
    }
}
END_TEST

/* A bar that hangs by its height just under the rail is, a little thicker, shut with its top beyond it, and stays. */
START_TEST(a_roll_too_thick_for_any_travel_stays)
{
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = side.stops.open_height = 3;
    ck_assert_int_eq(tside_plan_side(&side, &plan, &fault), TSIDE_CONTRADICTS);
    ck_assert_str_eq(fault.field, "stops.shut_height");
    side.stops.shut_height = fault.bound - 4e-4; /* spreads make the roll some millimetres thicker or thinner */
    side.stops.open_height = fault.bound - 1e-4;
    plan = planned(&side);
    ck_assert(plan.drive_turns > 0 && plan.drive_turns_least == 0);
    ck_assert(plan.drive_turns_most >= plan.drive_turns);
}
END_TEST

/*
 * Turns of the drive on the plan's own guide, with core, packing and thickness all spread one way; up to the rail where
 * that roll is too thick for its stop.
 */
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
    ANSWERS(tside_hang_make(&travel, &side->drive_end.guide, &collar, plan->drive_end.eye_x, plan->drive_end.eye_y, 0,
                            &hang, NULL, &fault));
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

/*
 * A packing factor spread below nothing is nothing: no roll is thinner than its core, which takes up pi D0 a turn. The
 * wall is plumb, so that what is taken up is the travel of the underside, and the drive turns as the bar does but for
 * its guide's lean.
 */
START_TEST(packing_spread_beyond_itself_leaves_the_core)
{
    tside_side side = plain();
    tside_plan plan, thin;
    side.stops.core_spread = side.stops.thickness_spread = 0;
    side.curtain.packing = 0.3;
    side.stops.packing_spread = 0.3;
    plan = planned(&side);
    side.stops.packing_spread = 0.9;
    thin = planned(&side);
    ck_assert(thin.drive_turns_most == plan.drive_turns_most && thin.drive_turns_least < plan.drive_turns_least);
    NEAR(plan.drive_turns_most,
         (plan.open.underside - plan.shut.underside) / (PI * (side.bar.tube.diameter + side.bar.core_over)), 0.02,
         "turns of a bare core", 0);
    ck_assert(plan.drive_turns_most > plan.drive_turns + 0.05);
}
END_TEST

Suite *range_suite(void)
{
    Suite *suite = suite_create("range");
    TCase *tcase = tcase_create("range");
    tcase_add_test(tcase, spreads_ropes_and_lags);
    tcase_add_test(tcase, open_range_widens_with_every_spread);
    tcase_add_test(tcase, range_holds_the_turns_of_the_shortest_travel);
    tcase_add_test(tcase, a_roll_too_thick_for_any_travel_stays);
    tcase_add_test(tcase, open_range_is_two_other_rolls);
    tcase_add_test(tcase, packing_spread_beyond_itself_leaves_the_core);
    suite_add_tcase(suite, tcase);
    return suite;
}
