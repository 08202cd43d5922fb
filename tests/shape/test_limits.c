/* SPDX-License-Identifier: MIT */
/* Bows, lines and travels at the limits of what there may be: just round, level, overflowing, of no length. */
#include <check.h>
#include <float.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "bows.h"
#include "shape/chord.h"

Suite *limits_suite(void);

static tside_curtain curtain_at(double hip, double sill)
{
    tside_curtain curtain;
    tside_usual(TSIDE_KIND_CURTAIN, &curtain);
    curtain.hip = hip;
    curtain.sill = sill;
    curtain.standoff = curtain.rail_depth = 0;
    return curtain;
}

static tside_line line_of(const tside_bow *bow, const tside_curtain *curtain)
{
    tside_line line;
    tside_fault fault;
    ANSWERS(tside_line_make(bow, curtain, &line, &fault));
    return line;
}

static double arc_at(const tside_bow *bow, double height)
{
    double arc;
    tside_fault fault;
    ANSWERS(tside_bow_at_height(bow, height, &arc, &fault));
    return arc;
}

/* --- bows --- */

/*
 * An arch that rises as much as half its width, but for a last digit: its radius, (a^2 + f^2)/2f, is a to the last
 * digit or one below, and with a shoulder it is still the half circle on its leg.
 */
START_TEST(an_arch_all_but_round_has_a_shoulder)
{
    for (int i = 0; i < 200; i++) {
        const double a = 3 + 0.0137 * i;
        tside_frame frame = plain_frame(2 * a, 1, nextafter(1 + a, 0));
        tside_bow bow;
        frame.shoulder_radius_given = 1;
        frame.shoulder_radius = a / 3;
        bow = bow_of(&frame);
        NEAR(bow.centre.length, 1 + PI * a / 2, 1e-6, "length", i); /* to the square root of a last digit */
        NEAR(bow_at(&bow, bow.centre.length).y, 1 + a, 1e-6, "peak", i);
        NEAR(bow_at(&bow, bow.centre.length).x, 0, 1e-6, "amid", i);
    }
}
END_TEST

/*
 * A half circle on its legs but for a hair: its arch leans where it meets the leg, and the face above is still the
 * circle's, of R + half the tube about a centre R below the peak; R = (a^2 + f^2)/2f.
 */
START_TEST(an_arch_nearly_round_is_its_circle)
{
    static const double short_of[] = {1e-11, 1e-10, 5e-10, 2e-9, 1e-6};
    const double a = 4, leg = 1, y = 4;
    for (int i = 0; i < 5; i++) {
        const double f = a * (1 - short_of[i]), R = (a * a + f * f) / (2 * f);
        const tside_frame frame = plain_frame(2 * a, leg, leg + f);
        const tside_bow bow = bow_of(&frame);
        double x;
        tside_fault fault;
        ANSWERS(tside_bow_face(&bow, y, &x, &fault));
        NEAR(x, sqrt(pow(R + frame.tube.diameter / 2, 2) - pow(y - (leg + f - R), 2)), 1e-13, "face", i);
    }
}
END_TEST

/* So flat that its radius is beyond all numbers. */
START_TEST(an_arch_of_no_finite_radius_is_refused)
{
    tside_frame frame = plain_frame(8, 0, 1e-320);
    tside_bow bow;
    tside_fault fault;
    REFUSES(tside_bow_make(&frame, &bow, &fault), bow, TSIDE_NOT_MODELLED, "frame", TSIDE_NO_RELATION);
    frame.board = TSIDE_BOARD_OUTSIDE; /* before it is asked whether a board ends on it */
    frame.board_top = 0.3;
    REFUSES(tside_bow_make(&frame, &bow, &fault), bow, TSIDE_NOT_MODELLED, "frame", TSIDE_NO_RELATION);
    ck_assert(isfinite(fault.bound) && isfinite(fault.value));
}
END_TEST

/* The foot, asked for by its height, is at an arc length of 0, whatever the last digits of its heading. */
START_TEST(the_foot_is_where_the_bow_begins)
{
    for (int i = 1; i < 400; i++) {
        const tside_frame frame = plain_frame(8, 0, 0.01 * i); /* flat arches lean in from their foot */
        const tside_bow bow = bow_of(&frame);
        NEAR(arc_at(&bow, 0), 0, 1e-14, "foot", i);
    }
}
END_TEST

/*
 * A hollow bow, of all but half a circle about (c, r), that ends just beyond its highest place: that is asked for by
 * its height, and by a last digit more.
 */
START_TEST(a_hollow_bow_has_its_top_before_its_end)
{
    const double r = 1.5, c = 4;
    for (int i = 1; i <= 20; i++) {
        const double beyond = 1e-4 * i,
                     from = 0.3; /* rad, beyond the top; from the circle's lowest place to the foot */
        const tside_frame frame = points_frame(c + 0.001, c - r, r, c + r * sin(beyond), r + r * cos(beyond));
        tside_frame hollow = frame;
        tside_bow bow;
        hollow.foot_x = c - r * sin(from);
        hollow.foot_height = r - r * cos(from);
        bow = bow_of(&hollow);
        NEAR(bow.centre.piece[0].curvature, -1 / r, 1e-9, "hollow", i);
        NEAR(arc_at(&bow, 2 * r - 1e-9), r * (PI - from), 1e-4, "a little below", i);
        NEAR(arc_at(&bow, 2 * r), r * (PI - from), 3e-5, "the top", i);
        NEAR(arc_at(&bow, 2 * r + 0.9e-9), r * (PI - from), 3e-5, "a little above", i);
    }
}
END_TEST

/* A line from so far away that the crossing, below the foot, is at an arc length beyond all numbers. */
START_TEST(a_crossing_beyond_all_numbers_is_refused)
{
    const tside_frame frame = plain_frame(8, 1, 4);
    const tside_bow bow = bow_of(&frame);
    double away, arc = -7;
    tside_fault fault;
    ANSWERS(tside_bow_crossing(&bow, 1e300, -1e300, 1.25 * PI, &away, &arc, &fault));
    NEAR(arc / -2e300, 1, 1e-12, "far below", 0);
    arc = -7;
    REFUSES(tside_bow_crossing(&bow, 1e308, -1.7e308, 1.25 * PI, &away, &arc, &fault), away, TSIDE_NOT_MODELLED, "arc",
            TSIDE_NOT_FINITE);
    ck_assert(arc == -7);
}
END_TEST

/* --- lines --- */

/* A board that ends at the face's foot, flush, changes nothing of a hollow wall's line, and one just below neither. */
START_TEST(a_board_at_the_foot_of_a_hollow_wall_is_that_foot)
{
    const tside_curtain curtain = curtain_at(2, 0.2);
    tside_frame frame = points_frame(4, 3.6, 1.2, 3.5, 3);
    tside_bow bow;
    tside_line bare, with_board;
    frame.foot_height = 0.1;
    bow = bow_of(&frame);
    ck_assert(bow.face.piece[0].curvature < 0);
    bare = line_of(&bow, &curtain);
    frame.board = TSIDE_BOARD_OUTSIDE;
    frame.board_stand = 0;
    frame.board_top = bow.face.piece[0].y;
    bow = bow_of(&frame);
    ck_assert(bow.board_x == bow.face.piece[0].x && bow.board_y == bow.face.piece[0].y);
    with_board = line_of(&bow, &curtain);
    ck_assert_int_eq(with_board.count, bare.count);
    for (int i = 0; i <= 20; i++) {
        double x[2], y[2], normal[2];
        tside_fault fault;
        ANSWERS(tside_line_at(&bare, 0.1 * i, x, y, normal, &fault));
        ANSWERS(tside_line_at(&with_board, 0.1 * i, x + 1, y + 1, normal + 1, &fault));
        NEAR(hypot(x[1] - x[0], y[1] - y[0]), 0, 1e-12, "place", i);
        NEAR(normal[1], normal[0], 1e-12, "normal", i);
    }
}
END_TEST

/* --- travels --- */

static tside_travel travel_on(const tside_line *line, const tside_curtain *curtain, const tside_roll *roll,
                              const tside_stops *stops)
{
    tside_travel travel;
    tside_fault fault;
    ANSWERS(tside_travel_make(line, curtain, roll, stops, &travel, &fault));
    return travel;
}

static tside_stops usual_stops(void)
{
    tside_stops stops;
    tside_usual(TSIDE_KIND_STOPS, &stops);
    return stops;
}

/* Shut with its top at the rail, of no depth, a bar has nowhere to go. */
START_TEST(a_bar_shut_under_its_rail_stays)
{
    for (int wraps = 0; wraps <= 2; wraps++) {
        const tside_frame frame = plain_frame(9, 2, 4);
        const tside_bow bow = bow_of(&frame);
        const tside_curtain curtain = curtain_at(1.75, 0.25); /* like the bar, to the last digit */
        const tside_line line = line_of(&bow, &curtain);
        const tside_roll roll = {0.0625, 0, 1};
        tside_stops stops = usual_stops();
        tside_travel travel;
        tside_position shut, open;
        tside_fault fault;
        stops.wraps_shut = wraps;
        stops.shut_by = TSIDE_SHUT_HEIGHT;
        stops.shut_height = curtain.hip - roll.core;
        stops.gap = 0;
        travel = travel_on(&line, &curtain, &roll, &stops);
        ANSWERS(tside_travel_at(&travel, 0, &shut, &fault));
        NEAR(shut.y, curtain.hip - roll.core / 2, 0, "axis", wraps);
        NEAR(shut.x, 4.5 + 0.025 + roll.core / 2, 1e-12, "beside the face", wraps);
        NEAR(travel.highest, stops.shut_height, 1e-12, "highest", wraps);
        ANSWERS(tside_travel_to_height(&travel, stops.shut_height, &open, &fault));
        NEAR(open.turns, 0, 1e-12, "turns", wraps);
        REFUSES(tside_travel_at(&travel, 0.01, &open, &fault), open, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_ABOVE);
    }
}
END_TEST

/*
 * A quilt so thick that a wrap adds more to the roll than its bare core is around: the underside first comes down as
 * the bar turns. By l(n) = pi n (D0 + t n) and r = D0/2 + t n, plumb, it is y - r where the axis hangs l(N) - l(n)
 * below.
 */
START_TEST(a_quilt_thicker_than_its_core_opens_where_it_is_asked_to)
{
    const tside_frame frame = plain_frame(9, 2, 4);
    const tside_bow bow = bow_of(&frame);
    const tside_curtain curtain = curtain_at(1.9, 0.3);
    const tside_line line = line_of(&bow, &curtain);
    const tside_roll roll = {0.05, 0.2, 1};
    for (int i = 1; i <= 8; i++) {
        tside_stops stops = usual_stops();
        tside_travel travel;
        tside_position open;
        tside_fault fault;
        double n, s;
        stops.wraps_shut = 0.1;
        stops.shut_by = TSIDE_SHUT_HEIGHT;
        stops.shut_height = 0.2;
        stops.open_by = TSIDE_OPEN_HEIGHT;
        stops.open_height = 0.2 + 0.1 * i;
        travel = travel_on(&line, &curtain, &roll, &stops);
        ANSWERS(tside_travel_to_height(&travel, stops.open_height, &open, &fault));
        n = stops.wraps_shut + open.turns;
        s = curtain.hip - stops.shut_height - (roll.core / 2 + roll.thickness * stops.wraps_shut) -
            (PI * n * (roll.core + roll.thickness * n) -
             PI * stops.wraps_shut * (roll.core + roll.thickness * stops.wraps_shut));
        NEAR(curtain.hip - s - (roll.core / 2 + roll.thickness * n), stops.open_height, 1e-9, "underside", i);
        ck_assert(open.turns > 0);
    }
}
END_TEST

/*
 * A bar of no thickness to speak of, wound up a wall, round or leaning, to its fixing on the face, is where that is: to
 * the last digits the wall is a little nearer or farther than that.
 */
START_TEST(a_bar_of_no_thickness_comes_to_its_fixing)
{
    static const double cores[] = {1e-12, 1e-18, 1e-30, 1e-200};
    for (int i = 0; i < 400; i++) {
        const tside_frame frame = i % 2 ? plain_frame(9, 0, 4.5) : points_frame(4.7, 4.6, 1.2, 4.5, 2.4);
        const tside_bow bow = bow_of(&frame);
        const tside_curtain curtain = curtain_at(1.2 + 0.0017 * i, 0.3);
        const tside_line line = line_of(&bow, &curtain);
        const tside_roll roll = {cores[i / 2 % 4], 0, 1};
        tside_stops stops = usual_stops();
        tside_travel travel;
        tside_position open;
        tside_fault fault;
        stops.wraps_shut = stops.gap = 0;
        travel = travel_on(&line, &curtain, &roll, &stops);
        ANSWERS(tside_travel_to_height(&travel, travel.highest, &open, &fault));
        ck_assert(isfinite(open.turns) && open.turns > 0);
        NEAR(open.y, curtain.hip, 1e-9, "height", i);
        NEAR(open.x, line.x, 1e-9, "place", i);
    }
}
END_TEST

/*
 * A fixing a hair inboard of a plumb leg, on the arch above it: the curtain touches the arch before it comes to the
 * leg, and lies on the leg's face from there on, never within.
 */
START_TEST(a_curtain_from_just_inboard_lies_on_the_leg)
{
    static const double inboard[] = {2e-10, 8e-10, 1.2e-9, 3e-9, 1e-6};
    const tside_frame frame = plain_frame(8, 1, 5);
    const tside_bow bow = bow_of(&frame);
    const double leg = 4 + frame.tube.diameter / 2;
    for (int i = 0; i < 5; i++) {
        tside_curtain curtain = curtain_at(2.5, 0.3);
        double face, x, y, normal;
        tside_line line;
        tside_fault fault;
        ANSWERS(tside_bow_face(&bow, curtain.hip, &face, &fault));
        curtain.standoff = leg - inboard[i] - face;
        line = line_of(&bow, &curtain);
        NEAR(line.x, leg - inboard[i], 1e-12, "fixing", i);
        ANSWERS(tside_line_at(&line, 1.7, &x, &y, &normal, &fault));
        ck_assert(y < frame.leg_height);
        NEAR(x, leg, 1e-12, "on the leg", i);
    }
}
END_TEST

/*
 * About a bulge, and within a hollow: the axis is as far from the fixing as curtain and radius reach together, also
 * where that is just a metre, and the radius off the arc.
 */
START_TEST(a_chord_of_a_metre_is_one_like_others)
{
    static const double reach[][2] = {{0.1, 0.9}, {0, 1}, {0.6, 0.8}, {0.28, 0.96}, {0.1, 1.1}};
    const tside_line line = {.x = 1, .y = 2};
    int just = 0;
    for (int hollow = 0; hollow <= 1; hollow++)
        for (int i = 0; i < 5; i++) {
            tside_i_spot spot = {.r = reach[i][0], .s = reach[i][1]};
            const tside_obstacle arc = {.x = hollow ? 2 : 0.5, .y = 0.8, .radius = hollow ? -1.5 : 0.7};
            just += spot.s * spot.s + spot.r * spot.r == 1;
            ck_assert_msg(tside_i_chord_on(&line, &arc, &spot), "chord %d is out of reach", i);
            NEAR(hypot(spot.x - line.x, spot.y - line.y), hypot(spot.r, spot.s), 1e-12, "off the fixing", i);
            NEAR(hypot(spot.x - arc.x, spot.y - arc.y), fabs(arc.radius + spot.r), 1e-12, "off the centre", i);
        }
    ck_assert_int_ge(just, 2);
}
END_TEST

Suite *limits_suite(void)
{
    Suite *suite = suite_create("limits");
    TCase *bows = tcase_create("bows"), *lines = tcase_create("lines"), *travels = tcase_create("travels");
    tcase_add_test(bows, an_arch_all_but_round_has_a_shoulder);
    tcase_add_test(bows, an_arch_nearly_round_is_its_circle);
    tcase_add_test(bows, an_arch_of_no_finite_radius_is_refused);
    tcase_add_test(bows, the_foot_is_where_the_bow_begins);
    tcase_add_test(bows, a_hollow_bow_has_its_top_before_its_end);
    tcase_add_test(bows, a_crossing_beyond_all_numbers_is_refused);
    suite_add_tcase(suite, bows);
    tcase_add_test(lines, a_board_at_the_foot_of_a_hollow_wall_is_that_foot);
    tcase_add_test(lines, a_curtain_from_just_inboard_lies_on_the_leg);
    tcase_add_test(lines, a_chord_of_a_metre_is_one_like_others);
    suite_add_tcase(suite, lines);
    tcase_add_test(travels, a_bar_shut_under_its_rail_stays);
    tcase_add_test(travels, a_quilt_thicker_than_its_core_opens_where_it_is_asked_to);
    tcase_add_test(travels, a_bar_of_no_thickness_comes_to_its_fixing);
    suite_add_tcase(suite, travels);
    return suite;
}
