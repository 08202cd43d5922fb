/* SPDX-License-Identifier: MIT */
/* The air of a planned side: as its opening gives it, how far to turn for what is asked, and how its bar grows. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "airs.h"
#include "expect.h"
#include "plans.h"

Suite *airing_suite(void);

START_TEST(a_plan_has_the_air_of_its_opening)
{
    tside_side side = plain();
    tside_plan before = planned(&side), plan;
    tside_airing made;
    tside_fault fault;
    ck_assert_int_eq(before.air_given, 0);
    ck_assert(before.airing.flow == 0 && before.bar_growth == 0);
    breathe(&side);
    plan = planned(&side);
    ck_assert_int_eq(plan.air_given, 1);
    ANSWERS(tside_air_through(&side.air, side.length, plan.opening, &made, &fault));
    ck_assert(!memcmp(&made, &plan.airing, sizeof made));
    ck_assert(plan.airing.flow > 0 && !plan.turns_for_changes_given && !plan.turns_for_rise_given);
    NEAR(plan.airing.area, plan.opening * side.length, 1e-12, "area", 0);
    /* and all else is as it was */
    ck_assert(plan.worst.drive == before.worst.drive && plan.drive_turns == before.drive_turns);
}
END_TEST

/* Where a turn of the drive has the side open so far, seen in the turn table and along the travel between its rows. */
static double opening_after(const tside_side *side, double turns)
{
    enum { ROWS = 64 };
    tside_turn rows[ROWS];
    tside_fault fault;
    int count, i = 1;
    ANSWERS(tside_plan_turns(side, rows, ROWS, &count, &fault));
    while (i < count - 1 && rows[i].turn < turns)
        i++;
    return rows[i - 1].opening +
           (rows[i].opening - rows[i - 1].opening) * (turns - rows[i - 1].turn) / (rows[i].turn - rows[i - 1].turn);
}

/* The plain side's roll grows so little within a turn that a straight line between rows is within a millimetre. */
START_TEST(turns_open_as_far_as_is_asked)
{
    for (int i = 1; i <= 8; i++) {
        tside_side side = plain();
        tside_plan plan;
        breathe(&side);
        side.air.changes_asked_given = side.air.rise_asked_given = 1;
        side.air.changes_asked = 5.0 * i / 3600;
        side.air.rise_asked = 48.0 - 4.5 * i; /* shut, the film keeps it to 60 K */
        plan = planned(&side);
        ck_assert(plan.turns_for_changes_given && plan.turns_for_rise_given);
        ck_assert(plan.airing.for_changes > 0.01 && plan.turns_for_changes < plan.drive_turns);
        NEAR(opening_after(&side, plan.turns_for_changes), plan.airing.for_changes, 1e-3, "for changes", i);
        NEAR(opening_after(&side, plan.turns_for_rise), plan.airing.for_rise, 1e-3, "for rise", i);
    }
}
END_TEST

START_TEST(all_and_nothing_take_all_turns_and_none)
{
    tside_side side = plain();
    tside_plan plan;
    breathe(&side);
    plan = planned(&side);
    side.air.changes_asked_given = side.air.rise_asked_given = 1;
    side.air.changes_asked = plan.airing.changes;
    side.air.rise_asked = 60; /* the film alone keeps it to that */
    plan = planned(&side);
    NEAR(plan.turns_for_changes, plan.drive_turns, 1e-6, "all of it", 0);
    ck_assert(plan.turns_for_rise_given && plan.airing.for_rise == 0 && plan.turns_for_rise == 0);
    ck_assert(!finds(&plan, TSIDE_FINDING_FEW_CHANGES) && !finds(&plan, TSIDE_FINDING_HOT));
    side.air.changes_asked = plan.airing.changes * (1 + 1e-6); /* more than all */
    side.air.rise_asked = plan.airing.rise * (1 - 1e-6);
    plan = planned(&side);
    ck_assert(!plan.turns_for_changes_given && !plan.turns_for_rise_given);
    ck_assert(finds(&plan, TSIDE_FINDING_FEW_CHANGES) && finds(&plan, TSIDE_FINDING_HOT));
}
END_TEST

/* A side that stands open when shut has so much air without a turn of its drive. */
START_TEST(what_a_side_has_when_shut_takes_no_turn)
{
    tside_side side = plain();
    tside_plan plan;
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.shut_height = side.curtain.sill + 0.2;
    breathe(&side);
    plan = planned(&side);
    side.air.changes_asked_given = 1;
    side.air.changes_asked = 0.05 * plan.airing.changes;
    plan = planned(&side);
    ck_assert(plan.turns_for_changes_given && plan.airing.for_changes > 0 && plan.airing.for_changes < 0.2);
    ck_assert(plan.turns_for_changes == 0);
    side.air.changes_asked = 0.5 * plan.airing.changes;
    plan = planned(&side);
    ck_assert(plan.airing.for_changes > 0.2 && plan.turns_for_changes > 0);
}
END_TEST

/* ASAE EP406, as quoted by a trade article: side vents of at least 15 % of the floor. */
START_TEST(an_opening_may_be_15_percent_of_the_floor)
{
    tside_side side = plain();
    tside_plan plan;
    breathe(&side);
    plan = planned(&side);
    side.air.floor_area = 2 * plan.airing.area / 0.1501;
    plan = planned(&side);
    ck_assert(!finds(&plan, TSIDE_FINDING_SMALL_OPENING));
    side.air.floor_area = 2 * plan.airing.area / 0.1499;
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_SMALL_OPENING));
    NEAR(finding_of(&plan, TSIDE_FINDING_SMALL_OPENING)->value, 0.1499, 1e-12, "share", 0);
}
END_TEST

/* Steel 12e-6 by EN 1993-1-1, aluminium 23e-6 by EN 1999-1-1, both from memory. */
START_TEST(a_bar_grows_by_its_metal)
{
    tside_side side = plain();
    tside_plan plan;
    breathe(&side);
    side.air.bar_warming = 50;
    plan = planned(&side);
    NEAR(plan.bar_growth, 12e-6 * 50 * plan.bar_length, 1e-12, "steel", 0);
    side.bar.material.metal = TSIDE_ALUMINIUM_6063;
    side.bar.material.grade = TSIDE_GRADE_UNKNOWN;
    plan = planned(&side);
    NEAR(plan.bar_growth, 23e-6 * 50 * plan.bar_length, 1e-12, "aluminium", 0);
}
END_TEST

Suite *airing_suite(void)
{
    Suite *suite = suite_create("airing");
    TCase *plan = tcase_create("plan");
    tcase_add_test(plan, a_plan_has_the_air_of_its_opening);
    tcase_add_test(plan, turns_open_as_far_as_is_asked);
    tcase_add_test(plan, all_and_nothing_take_all_turns_and_none);
    tcase_add_test(plan, what_a_side_has_when_shut_takes_no_turn);
    tcase_add_test(plan, an_opening_may_be_15_percent_of_the_floor);
    tcase_add_test(plan, a_bar_grows_by_its_metal);
    suite_add_tcase(suite, plan);
    return suite;
}
