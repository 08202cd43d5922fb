/* SPDX-License-Identifier: MIT */
/* What bow and line refuse. */
#include <check.h>
#include <float.h>
#include <math.h>
#include <string.h>

#include "bows.h"
#include "curves.h"

Suite *bow_refused_suite(void);

#define BOW_REFUSES(status, field, relation) REFUSES(tside_bow_make(&frame, &bow, &fault), bow, status, field, relation)
#define FITS(what) (frame.what = fault.bound, (void)bow_of(&frame))

START_TEST(frames_out_of_bounds_are_refused)
{
    tside_frame good = plain_frame(8, 1, 4), frame = good;
    tside_bow bow;
    tside_fault fault;
    frame.width = NAN;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.width", TSIDE_NOT_FINITE);
    frame.width = 0;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.width", TSIDE_NOT_ABOVE);
    frame = good;
    frame.leg_height = -0.1;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.leg_height", TSIDE_BELOW);
    frame = good;
    frame.peak_height = -1;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.peak_height", TSIDE_NOT_ABOVE);
    frame = good;
    frame.board = TSIDE_BOARD_OUTSIDE;
    frame.board_top = 0;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.board_top", TSIDE_NOT_ABOVE);
    frame.board_top = 0.3;
    frame.board_stand = -0.01;
    BOW_REFUSES(TSIDE_OUT_OF_BOUNDS, "frame.board_stand", TSIDE_BELOW);
}
END_TEST

START_TEST(legs_and_peaks_that_contradict_are_refused)
{
    tside_frame frame = plain_frame(8, 1, 1);
    tside_bow bow;
    tside_fault fault;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.peak_height", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 1, 0, "bound", 0);
    ck_assert_str_eq(fault.other, "frame.leg_height");
    frame.measured = TSIDE_OUTSIDE; /* the centreline's peak lies half a diameter lower */
    frame.peak_height = 1.02;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.peak_height", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 1.025, 1e-15, "bound", 1);
    frame.peak_height = 1.03;
    bow_of(&frame);
    frame = plain_frame(0.1, 1, 4);
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.width", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 0.1, 1e-15, "bound", 2);
    frame.measured = TSIDE_OUTSIDE;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.width", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 0.15, 1e-15, "bound", 3);
    frame = plain_frame(8, 1, 3);
    frame.board = TSIDE_BOARD_OUTSIDE;
    frame.board_top = 3.1;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.board_top", TSIDE_ABOVE);
    NEAR(fault.bound, 3.025, 1e-12, "top of the face", 4);
    FITS(board_top);
}
END_TEST

START_TEST(shoulders_that_contradict_are_refused)
{
    tside_frame good = plain_frame(8, 1.5, 4), frame = good;
    tside_bow bow;
    tside_fault fault;
    good.shoulder_radius_given = 1;
    good.shoulder_radius = 0.5;
    bow_of(&good);
    frame = good;
    frame.peak_height = 5.5; /* rises as much as half the width */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.shoulder_radius", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "frame.peak_height");
    frame = good;
    frame.shoulder_radius = 4.6; /* the arch has a radius of (16 + 6.25)/5 = 4.45 */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.shoulder_radius", TSIDE_NOT_BELOW);
    frame.leg_height = 0.2;
    frame.peak_height = 2.2;
    frame.shoulder_radius =
        1; /* an arch of 5 m whose centre lies at -2.8: the bend would begin at -2.8 + sqrt(16 - 9) */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.shoulder_radius", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "frame.leg_height");
    NEAR(fault.gap, -2.8 + sqrt(7), 1e-12, "gap", 0);
    frame = good;
    frame.shoulder_radius = 0.0499; /* a bend tighter than the tube */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.shoulder_radius", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "frame.tube.diameter");
    frame.shoulder_radius = frame.tube.diameter; /* as tight as the tube is wide, and no tighter */
    bow_of(&frame);
}
END_TEST

/* Where the bend is as wide as half the tunnel or wider, nothing of the arch is left above it. */
START_TEST(a_shoulder_leaves_some_arch)
{
    tside_frame frame = plain_frame(4, 2, 3.9);
    tside_bow bow;
    tside_fault fault;
    frame.shoulder_radius_given = 1;
    frame.shoulder_radius = 1.999;
    bow = bow_of(&frame);
    ck_assert(bow.centre.count == 3 && bow.centre.piece[2].length > 0);
    frame.shoulder_radius = 2.001; /* the arch's radius is 2.0026 */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.shoulder_radius", TSIDE_NOT_BELOW);
    NEAR(fault.bound, 2, 1e-12, "bound", 0);
}
END_TEST

START_TEST(points_that_contradict_are_refused)
{
    tside_frame good = points_frame(4, 3.9, 1.5, 3.5, 3), frame = good;
    tside_bow bow;
    tside_fault fault;
    frame.between_height = 3;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.peak_height", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 3, 0, "bound", 0);
    frame.foot_height = frame.between_height = 1;
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.between_height", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, 1, 0, "bound", 1);
    for (int measured = TSIDE_OUTSIDE; measured <= TSIDE_CENTRELINE;
         measured++) { /* a radius of 0.0325 m in a tube of 0.05 m */
        frame = points_frame(4, 4.02, 0.03, 4, 0.06);
        frame.measured = (tside_measured)measured;
        BOW_REFUSES(TSIDE_CONTRADICTS, "frame.between_x", TSIDE_NO_RELATION);
        ck_assert_str_eq(fault.other, "frame.tube.diameter");
        if (measured == TSIDE_OUTSIDE)
            NEAR(fault.value, 4.02, 0, "the value", 0);
    }
    frame = points_frame(4, 5, 0.1, 4, 3); /* the one circle through them dives below its foot first */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.between_x", TSIDE_NO_RELATION);
    frame = points_frame(4, 3, 0.1, 4, 3);
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.between_x", TSIDE_NO_RELATION);
    frame = points_frame(4, 3, 1, 4.5, 2.5); /* half a circle: seen from its middle the ends stand at a right angle */
    BOW_REFUSES(TSIDE_CONTRADICTS, "frame.between_x", TSIDE_NO_RELATION);
    frame.between_x = 3 + 1e-6; /* and a little less */
    ANSWERS(tside_bow_make(&frame, &bow, &fault));
}
END_TEST

START_TEST(places_off_the_bow_are_refused)
{
    tside_frame frame = plain_frame(8, 1, 4);
    tside_bow bow = bow_of(&frame);
    tside_bow_point point;
    tside_fault fault;
    double x, arc, away;
#define OUT_OF_BOUNDS(call, output, field, relation) REFUSES(call, output, TSIDE_OUT_OF_BOUNDS, field, relation)
    OUT_OF_BOUNDS(tside_bow_at(&bow, NAN, &point, &fault), point, "arc", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_bow_at(&bow, -INFINITY, &point, &fault), point, "arc", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_bow_at(&bow, 20, &point, &fault), point, "arc", TSIDE_ABOVE);
    NEAR(bow_at(&bow, fault.bound).y, 4, 1e-12, "the bound is the peak", 0);
    OUT_OF_BOUNDS(tside_bow_at_height(&bow, NAN, &arc, &fault), arc, "height", TSIDE_NOT_FINITE);
    REFUSES(tside_bow_at_height(&bow, 4.001, &arc, &fault), arc, TSIDE_OUT_OF_REACH, "height", TSIDE_ABOVE);
    NEAR(fault.bound, 4, 1e-12, "top", 1);
    OUT_OF_BOUNDS(tside_bow_face(&bow, INFINITY, &x, &fault), x, "height", TSIDE_NOT_FINITE);
    REFUSES(tside_bow_face(&bow, 4.03, &x, &fault), x, TSIDE_OUT_OF_REACH, "height", TSIDE_ABOVE);
    NEAR(fault.bound, 4.025, 1e-12, "top of the face", 2);
    OUT_OF_BOUNDS(tside_bow_crossing(&bow, NAN, 0, 0, &away, &arc, &fault), away, "x", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_bow_crossing(&bow, 0, INFINITY, 0, &away, &arc, &fault), away, "y", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_bow_crossing(&bow, 0, 0, NAN, &away, &arc, &fault), arc, "angle", TSIDE_NOT_FINITE);
    REFUSES(tside_bow_crossing(&bow, 5, 1, 0, &away, &arc, &fault), away, TSIDE_OUT_OF_REACH, "angle",
            TSIDE_NO_RELATION);
    frame.shape = TSIDE_THREE_POINTS; /* leaning on below its foot */
    frame.foot_x = 4.7;
    frame.between_x = 4.6;
    frame.between_height = 1.2;
    frame.peak_x = 4.5;
    frame.peak_height = 2.4;
    bow = bow_of(&frame);
    REFUSES(tside_bow_at_height(&bow, -DBL_MAX, &arc, &fault), arc, TSIDE_NOT_MODELLED, "arc", TSIDE_NOT_FINITE);
    REFUSES(tside_bow_face(&bow, -DBL_MAX, &x, &fault), x, TSIDE_NOT_MODELLED, "x", TSIDE_NOT_FINITE);
}
END_TEST

START_TEST(curtains_that_contradict_are_refused)
{
    tside_frame frame = plain_frame(8, 1, 4);
    tside_bow bow = bow_of(&frame);
    tside_curtain good, curtain;
    tside_line line;
    tside_fault fault;
    double x = 0, y = 0, normal = 0;
#define LINE_REFUSES(status, field, relation) \
    REFUSES(tside_line_make(&bow, &curtain, &line, &fault), line, status, field, relation)
    tside_usual(TSIDE_KIND_CURTAIN, &good);
    good.hip = 1.8;
    good.sill = 0.5;
    curtain = good;
    curtain.hip = NAN;
    LINE_REFUSES(TSIDE_OUT_OF_BOUNDS, "curtain.hip", TSIDE_NOT_FINITE);
    curtain.hip = 4.1;
    LINE_REFUSES(TSIDE_OUT_OF_REACH, "curtain.hip", TSIDE_ABOVE);
    NEAR(fault.bound, 4.025, 1e-12, "top of the face", 0);
    curtain = good;
    curtain.standoff = -0.01;
    LINE_REFUSES(TSIDE_OUT_OF_BOUNDS, "curtain.standoff", TSIDE_BELOW);
    curtain = good;
    curtain.roll_lies = TSIDE_INBOARD;
    LINE_REFUSES(TSIDE_NOT_MODELLED, "curtain.roll_lies", TSIDE_NO_RELATION);
    curtain = good;
    curtain.sill = 1.8;
    LINE_REFUSES(TSIDE_CONTRADICTS, "curtain.sill", TSIDE_NOT_BELOW);
    NEAR(fault.bound, 1.8, 0, "bound", 1);
    curtain = good;
    frame.board = TSIDE_BOARD_OUTSIDE;
    frame.board_top = 1.8;
    bow = bow_of(&frame);
    LINE_REFUSES(TSIDE_CONTRADICTS, "curtain.hip", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "bow");
    NEAR(fault.bound, 1.8, 0, "bound", 2);
    frame.board_top = 0.4;
    bow = bow_of(&frame);
    ANSWERS(tside_line_make(&bow, &curtain, &line, &fault));
    OUT_OF_BOUNDS(tside_line_at(&line, NAN, &x, &y, &normal, &fault), x, "distance", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_line_at(&line, INFINITY, &x, &y, &normal, &fault), y, "distance", TSIDE_NOT_FINITE);
    OUT_OF_BOUNDS(tside_line_at(&line, -1e-3, &x, &y, &normal, &fault), normal, "distance", TSIDE_BELOW);
}
END_TEST

Suite *bow_refused_suite(void)
{
    Suite *suite = suite_create("bow_refused");
    TCase *tcase = tcase_create("bow_refused");
    tcase_add_test(tcase, frames_out_of_bounds_are_refused);
    tcase_add_test(tcase, legs_and_peaks_that_contradict_are_refused);
    tcase_add_test(tcase, shoulders_that_contradict_are_refused);
    tcase_add_test(tcase, a_shoulder_leaves_some_arch);
    tcase_add_test(tcase, points_that_contradict_are_refused);
    tcase_add_test(tcase, places_off_the_bow_are_refused);
    tcase_add_test(tcase, curtains_that_contradict_are_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
