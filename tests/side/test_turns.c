/* SPDX-License-Identifier: MIT */
/* The turn table: its sum, and each of its places. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *turns_suite(void);

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
    rows[count].torque = 77;
    ANSWERS(tside_plan_turns(&side, rows, count, &count, &fault));
    ck_assert(rows[count].torque == 77); /* a row more than its room */
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

/* A side that opens as far as some whole number of turns takes it has no row more for its last digits. */
START_TEST(whole_turns_make_no_row_of_nothing)
{
    for (int i = 0; i < 40; i++) {
        tside_side side = plain();
        tside_turn rows[64];
        tside_fault fault;
        int count, again;
        side.curtain.hip += 0.001 * i;
        side.drive_end.placed = TSIDE_EYE_GIVEN; /* the best would stand elsewhere for less of an opening */
        side.drive_end.eye_outboard = 0.1;
        side.stops.shut_height = side.curtain.sill - side.stops.seal;
        side.stops.shut_by = TSIDE_SHUT_HEIGHT;
        ANSWERS(tside_plan_turns(&side, rows, 64, &count, &fault));
        side.stops.open_by = TSIDE_OPEN_HEIGHT;
        for (int k = 1; k < count - 1; k++) {
            tside_turn fewer[64];
            side.stops.open_height = rows[k].underside;
            ANSWERS(tside_plan_turns(&side, fewer, 64, &again, &fault));
            ck_assert_msg(again == k + 1, "side %d: %d turns in %d rows, the last at %.17g", i, k, again,
                          fewer[again - 1].turn);
            NEAR(fewer[k].taken_up, rows[k].taken_up, 1e-9, "taken up in the last", k);
        }
    }
}
END_TEST

/*
 * Each row of a plumb, a leaning and a kinked side again, from the height of its underside, by the functions that know
 * one place of a travel.
 */
START_TEST(turn_table_is_its_places)
{
    tside_side side;
    tside_plan plan;
    tside_turn rows[64];
    tside_fault fault;
    tside_travel travel;
    tside_collar collar;
    tside_hang hang;
    tside_load load;
    tside_torque shut;
    int count;
    bench_any_side(&side, _i);
    plan = planned(&side);
    travel = travel_of(&side);
    collar = tside_drive_collar(&side.drive);
    load = load_of(&side);
    ANSWERS(tside_plan_turns(&side, rows, 64, &count, &fault));
    ANSWERS(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, 0,
                            &hang, NULL, &fault));
    ANSWERS(tside_lift_at(&travel, &load, &hang, 0, &shut, &fault));
    for (int i = 0; i < count; i++) {
        tside_position at;
        tside_torque torque;
        double lean, turns;
        ANSWERS(tside_travel_to_height(&travel, rows[i].underside, &at, &fault));
        ANSWERS(tside_guide_lean(&travel, &hang, at.turns, &lean, &turns, &fault));
        ANSWERS(tside_lift_at(&travel, &load, &hang, at.turns, &torque, &fault));
        NEAR(turns, rows[i].turn, 1e-13 * plan.drive_turns, "turns", i);
        NEAR(lean, rows[i].lean, 1e-13, "lean", i);
        NEAR(at.x, rows[i].x, 1e-13, "x", i);
        NEAR(at.y, rows[i].y, 1e-13, "y", i);
        NEAR(at.diameter, rows[i].diameter, 1e-13, "diameter", i);
        NEAR(at.opening, rows[i].opening, 1e-13, "opening", i);
        NEAR(at.taken_up, rows[i].total, 1e-13, "taken up", i);
        NEAR(torque.drive, rows[i].torque, 1e-13 * torque.drive, "torque", i);
        ck_assert(_i > 0 || rows[i].torque >= shut.drive * (1 - 1e-9)); /* on a plumb wall the roll only grows */
    }
}
END_TEST

Suite *turns_suite(void)
{
    Suite *suite = suite_create("turns");
    TCase *tcase = tcase_create("turns");
    tcase_add_test(tcase, turn_table_sums_to_the_travel);
    tcase_add_loop_test(tcase, turn_table_is_its_places, 0, 3);
    tcase_add_test(tcase, whole_turns_make_no_row_of_nothing);
    suite_add_tcase(suite, tcase);
    return suite;
}
