/* SPDX-License-Identifier: MIT */
/* What travel and line refuse, and the bounds that they name. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "sides.h"
#include "travels.h"

Suite *travel_refused_suite(void);

/* --- refusals --- */

FOR_SIDES(beyond_the_travel_is_refused, 60)
{
    side s = side_random(number);
    double open = turns_at_open(&s);
    tside_position p, q, end = at(&s, open);
    tside_fault fault;
    REFUSES(tside_travel_at(&s.travel, -1e-6, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_BELOW);
    ANSWERS(tside_travel_at(&s.travel, fault.bound, &p, &fault));
    REFUSES(tside_travel_at(&s.travel, open + 1e-6, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_ABOVE);
    NEAR(fault.bound, open, 1e-10, "turns at open", number);
    ANSWERS(tside_travel_at(&s.travel, fault.bound, &q, &fault));
    NEAR(q.underside, end.underside, 1e-11, "underside at open", number);
    REFUSES(tside_travel_at(&s.travel, NAN, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_NOT_FINITE);
    REFUSES(tside_travel_at(&s.travel, HUGE_VAL, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_NOT_FINITE);
    REFUSES(tside_travel_to_height(&s.travel, at(&s, 0).underside - 1e-6, &p, &fault), p, TSIDE_OUT_OF_BOUNDS,
            "underside", TSIDE_BELOW);
    ANSWERS(tside_travel_to_height(&s.travel, fault.bound, &p, &fault));
    NEAR(p.turns, 0, 1e-10, "turns at shut", number);
    REFUSES(tside_travel_to_height(&s.travel, end.underside + 1e-6, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "underside",
            TSIDE_ABOVE);
    ANSWERS(tside_travel_to_height(&s.travel, fault.bound, &p, &fault));
    NEAR(p.turns, open, 1e-10, "turns at open", number);
    REFUSES(tside_travel_to_height(&s.travel, NAN, &p, &fault), p, TSIDE_OUT_OF_BOUNDS, "underside", TSIDE_NOT_FINITE);
}

static tside_status remake(const side *s, tside_travel *travel, tside_fault *fault)
{
    return tside_travel_make(&s->line, &s->curtain, &s->roll, &s->stops, travel, fault);
}

START_TEST(a_field_out_of_bounds_is_named)
{
    side s = side_plain();
    tside_travel travel;
    tside_fault fault;
    s.roll.core = 0;
    REFUSES(remake(&s, &travel, &fault), travel, TSIDE_OUT_OF_BOUNDS, "roll.core", TSIDE_NOT_ABOVE);
    s = side_plain();
    s.stops.seal = -0.01;
    REFUSES(remake(&s, &travel, &fault), travel, TSIDE_OUT_OF_BOUNDS, "stops.seal", TSIDE_BELOW);
    s = side_plain();
    s.curtain.sill = NAN;
    REFUSES(remake(&s, &travel, &fault), travel, TSIDE_OUT_OF_BOUNDS, "curtain.sill", TSIDE_NOT_FINITE);
    s = side_plain();
    s.stops.open_by = (tside_open_by)2;
    REFUSES(remake(&s, &travel, &fault), travel, TSIDE_OUT_OF_BOUNDS, "stops.open_by", TSIDE_NOT_ONE_OF);
}
END_TEST

/* Of a bar thinner than any, which turns more often than there are numbers. */
START_TEST(more_turns_than_numbers_are_no_travel)
{
    side s = side_plain();
    tside_travel travel;
    tside_fault fault;
    s.roll.core = 1e-320;
    s.roll.thickness = 0;
    REFUSES(remake(&s, &travel, &fault), travel, TSIDE_NOT_MODELLED, "stops", TSIDE_NO_RELATION);
}
END_TEST

/*
 * A hollow wall whose foot is all but level: below it the curtain goes on as level as that, and is as long as what is
 * left to the ground over the sine. 10 km are more than any side has, and counts along it stay whole numbers.
 */
START_TEST(a_curtain_of_more_than_ten_kilometres_is_not_modelled)
{
    int made = 0, refused = 0;
    for (double level = 0.1; level > 1e-17; level /= 1.7) {
        const double R = 2, x = 4.6, y = 3;
        side s = side_plain();
        tside_bow bow;
        tside_position shut;
        tside_fault fault;
        s.frame.shape = TSIDE_THREE_POINTS;
        s.frame.measured = TSIDE_CENTRELINE;
        s.frame.foot_x = x - R * sin(level), s.frame.foot_height = y - R * cos(level);
        s.frame.between_x = x - R * sin(0.5), s.frame.between_height = y - R * cos(0.5);
        s.frame.peak_x = x - R * sin(1.2), s.frame.peak_height = y - R * cos(1.2);
        s.curtain.standoff = 0.03, s.curtain.hip = y - R * cos(0.9), s.curtain.sill = 0.9;
        s.stops.wraps_shut = 0, s.stops.seal = s.stops.gap = 0.1;
        s.roll.thickness = s.curtain.thickness = 0;
        ANSWERS(tside_bow_make(&s.frame, &bow, &fault));
        ANSWERS(tside_line_make(&bow, &s.curtain, &s.line, &fault));
        if (remake(&s, &s.travel, &fault) == TSIDE_OK) {
            ANSWERS(tside_travel_at(&s.travel, 0, &shut, &fault));
            ck_assert_msg(shut.hanging <= 1e4, "%g m of curtain", shut.hanging);
            made++;
        } else {
            REFUSES(remake(&s, &s.travel, &fault), s.travel, TSIDE_NOT_MODELLED, "stops", TSIDE_NO_RELATION);
            ck_assert_double_lt(level, 1e-4);
            refused++;
        }
    }
    ck_assert(made > 10 && refused > 10);
}
END_TEST

/* Each refusal's bound, put in the field's place, is accepted; and the value refused was beyond it. */
#define MENDS(s, field_member, wanted, tolerance) \
    do { \
        NEAR(fault.bound, wanted, tolerance, "bound", number); \
        (s).field_member = fault.bound; \
        ANSWERS(remake(&s, &travel, &fault)); \
    } while (0)

FOR_SIDES(contradictions_name_the_bound_that_works, SIDES)
{
    side s = side_random(number), t = s;
    tside_travel travel;
    tside_fault fault;
    tside_position shut = at(&s, 0), highest;
    double top = s.curtain.hip - s.curtain.rail_depth;

    /* the roll in the ground */
    t.stops.shut_by = TSIDE_SHUT_SEAL;
    t.stops.seal = t.curtain.sill + 0.01;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.seal", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "curtain.sill");
    MENDS(t, stops.seal, s.curtain.sill, 0);

    /* shut with its top beyond the rail */
    t = s;
    t.stops.shut_by = TSIDE_SHUT_HEIGHT;
    t.stops.shut_height = top - shut.diameter + 1e-3;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.shut_height", TSIDE_ABOVE);
    t.stops.open_by = TSIDE_OPEN_GAP;
    t.stops.gap = 0;
    MENDS(t, stops.shut_height, top - shut.diameter, 1e-13);
    t = s;
    t.curtain.sill = top - shut.diameter / 2;
    t.stops.shut_by = TSIDE_SHUT_SEAL;
    t.stops.seal = 0;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.seal", TSIDE_BELOW);
    t.stops.open_by = TSIDE_OPEN_GAP;
    t.stops.gap = 0;
    MENDS(t, stops.seal, shut.diameter / 2, 1e-13);

    /* open below shut */
    t = s;
    t.stops.open_by = TSIDE_OPEN_GAP;
    t.stops.gap = top - shut.underside - shut.diameter + 1e-3;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.gap", TSIDE_ABOVE);
    MENDS(t, stops.gap, top - shut.underside - shut.diameter, 1e-12);
    t = s;
    t.stops.open_by = TSIDE_OPEN_HEIGHT;
    t.stops.open_height = shut.underside - 1e-3;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.open_height", TSIDE_BELOW);
    MENDS(t, stops.open_height, shut.underside, 1e-12);

    /* open with its top beyond the rail: the bound is where a gap of nothing leads */
    t = s;
    t.stops.open_by = TSIDE_OPEN_GAP;
    t.stops.gap = 0;
    ANSWERS(remake(&t, &travel, &fault));
    t.travel = travel;
    ANSWERS(tside_travel_to_height(&travel, travel.highest, &highest, &fault));
    NEAR(highest.underside + highest.diameter, top, 1e-11, "top when highest", number);
    t.stops.open_by = TSIDE_OPEN_HEIGHT;
    t.stops.open_height = highest.underside + 1e-3;
    REFUSES(remake(&t, &travel, &fault), travel, TSIDE_CONTRADICTS, "stops.open_height", TSIDE_ABOVE);
    MENDS(t, stops.open_height, highest.underside, 1e-11);
}

/* --- the curtain's line --- */

FOR_SIDES(line_starts_at_the_fixing, SIDES)
{
    side s = side_random(number);
    double x, y, normal;
    tside_fault fault;
    NEAR(s.line.x, s.fixing_x, 1e-13, "x", number);
    NEAR(s.line.y, s.fixing_y, 0, "y", number);
    NEAR(s.line.piece[0].slope, s.slope, 1e-13, "slope", number);
    ANSWERS(tside_line_at(&s.line, 0.75, &x, &y, &normal, &fault));
    NEAR(x, s.fixing_x + 0.75 * sin(s.slope), 1e-13, "x below", number);
    NEAR(y, s.fixing_y - 0.75 * cos(s.slope), 1e-13, "y below", number);
    NEAR(normal, s.slope, 1e-13, "normal", number);
}

START_TEST(line_refuses_what_it_cannot_follow)
{
    side s = side_plain();
    tside_line line;
    tside_fault fault;
    double x, y, normal;
    s.curtain.roll_lies = TSIDE_INBOARD;
    REFUSES(tside_line_make(&s.bow, &s.curtain, &line, &fault), line, TSIDE_NOT_MODELLED, "curtain.roll_lies",
            TSIDE_NO_RELATION);
    s = side_plain();
    s.curtain.sill = s.curtain.hip;
    REFUSES(tside_line_make(&s.bow, &s.curtain, &line, &fault), line, TSIDE_CONTRADICTS, "curtain.sill",
            TSIDE_NOT_BELOW);
    NEAR(fault.bound, s.curtain.hip, 0, "hip", 0);
    s.curtain.sill = fault.bound - 1e-9;
    ANSWERS(tside_line_make(&s.bow, &s.curtain, &line, &fault));
    s = side_plain();
    s.curtain.hip = 6;
    REFUSES(tside_line_make(&s.bow, &s.curtain, &line, &fault), line, TSIDE_OUT_OF_REACH, "curtain.hip", TSIDE_ABOVE);
    NEAR(fault.bound, s.frame.peak_height, 1e-12, "the bow's top", 0);
    s.curtain.hip = 2.3; /* above the leg, on the arc: where the line stands then is test_curve's */
    ANSWERS(tside_line_make(&s.bow, &s.curtain, &line, &fault));
    s.curtain.hip = 2;
    s.curtain.standoff = -0.001;
    REFUSES(tside_line_make(&s.bow, &s.curtain, &line, &fault), line, TSIDE_OUT_OF_BOUNDS, "curtain.standoff",
            TSIDE_BELOW);
    s = side_plain();
    REFUSES(tside_line_at(&s.line, -1e-12, &x, &y, &normal, &fault), x, TSIDE_OUT_OF_BOUNDS, "distance", TSIDE_BELOW);
    REFUSES(tside_line_at(&s.line, NAN, &x, &y, &normal, &fault), y, TSIDE_OUT_OF_BOUNDS, "distance", TSIDE_NOT_FINITE);
}
END_TEST

Suite *travel_refused_suite(void)
{
    Suite *suite = suite_create("travel_refused");
    TCase *tcase = tcase_create("travel_refused");
    tcase_add_test(tcase, beyond_the_travel_is_refused);
    tcase_add_test(tcase, a_field_out_of_bounds_is_named);
    tcase_add_test(tcase, more_turns_than_numbers_are_no_travel);
    tcase_add_test(tcase, a_curtain_of_more_than_ten_kilometres_is_not_modelled);
    tcase_add_test(tcase, contradictions_name_the_bound_that_works);
    tcase_add_test(tcase, line_starts_at_the_fixing);
    tcase_add_test(tcase, line_refuses_what_it_cannot_follow);
    suite_add_tcase(suite, tcase);
    return suite;
}
