/* SPDX-License-Identifier: MIT */
/*
 * What leaves the library: numbers that are finite, whatever is asked, and structures of which every byte is defined.
 */
#include <check.h>
#include <float.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "airs.h"
#include "base/field.h"
#include "plans.h"
#include "statics/strength.h"

Suite *answers_suite(void);

/* --- the last check --- */

/* A side whose plan has a run, a cranking, air and both ends' extenders. */
static tside_side full(void)
{
    tside_side side;
    bench_side(&side);
    give_motor(&side.drive);
    side.crank.fitted = TSIDE_CRANK;
    side.crank.ratio = 6;
    breathe(&side);
    return side;
}

/* Spoils each number of a plan in turn, and expects it to be named. Returns how many there are. */
static int spoil(tside_plan *plan, tside_kind kind, char *structure, const char *path)
{
    int count, spoiled = 0;
    const tside_field *row = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        char *member = structure + row[i].offset, at[128];
        snprintf(at, sizeof at, "%s%s%s", path, *path ? "." : "", row[i].name);
        if (!tside_field_applies(row + i, structure) ||
            (row[i].optional && !*(int *)(void *)(structure + row[i].given_offset)))
            continue;
        if (row[i].type == TSIDE_GROUP)
            spoiled += spoil(plan, row[i].kind, member, at);
        if (row[i].type == TSIDE_LIST)
            for (int k = 0; k < *(int *)(void *)(structure + row[i].count_offset); k++) {
                char element[160];
                snprintf(element, sizeof element, "%s[%d]", at, k);
                spoiled += spoil(plan, row[i].kind, member + (size_t)k * row[i].stride, element);
            }
        if (row[i].type == TSIDE_NUMBER) {
            static const double bad[] = {NAN, HUGE_VAL, -HUGE_VAL};
            double kept = *(double *)(void *)member;
            *(double *)(void *)member = bad[spoiled % 3];
            {
                tside_fault fault;
                tside_plan untouched;
                memset(&untouched, 0xa5, sizeof untouched);
                ck_assert_int_eq(
                    tside_i_answer(&tside_i_plan_table, "plan", plan, &untouched, sizeof untouched, &fault),
                    TSIDE_NOT_MODELLED);
                ck_assert_int_eq((int)fault.relation, TSIDE_NOT_FINITE);
                ck_assert_msg(!strncmp(fault.field, "plan.", 5) && !strcmp(fault.field + 5, at), "%s named, not %s",
                              fault.field, at);
                for (size_t b = 0; b < sizeof untouched; b++)
                    ck_assert(((unsigned char *)&untouched)[b] == 0xa5);
            }
            *(double *)(void *)member = kept;
            spoiled++;
        }
    }
    return spoiled;
}

START_TEST(no_number_of_a_plan_may_be_none)
{
    tside_side side = full();
    tside_plan plan = planned(&side);
    ck_assert_int_gt(spoil(&plan, TSIDE_KIND_PLAN, (char *)&plan, ""), 180);
}
END_TEST

/* Of a force, in N, that may be 100 N. */
static tside_verdict verdict_on(double force)
{
    tside_strength_line line;
    tside_i_force_line(&line, TSIDE_BOW_BOLT, TSIDE_DRIVE_END, force, 1, 100);
    return line.verdict;
}

START_TEST(what_is_no_number_is_never_ok)
{
    tside_strength_line line;
    tside_metal_values metal;
    tside_material material;
    tside_fault fault;
    tside_usual(TSIDE_KIND_MATERIAL, &material);
    material.grade = TSIDE_GRADE_GIVEN;
    material.yield = 235e6;
    ANSWERS(tside_material_values(&material, &metal, &fault));
    tside_i_stress_line(&line, TSIDE_BAR_SHEAR, TSIDE_DRIVE_END, NAN, &metal, 1);
    ck_assert_int_eq(line.verdict, TSIDE_VERDICT_NO);
    ck_assert_int_eq(verdict_on(NAN), TSIDE_VERDICT_NO);
    ck_assert_int_eq(verdict_on(80), TSIDE_VERDICT_OK);
    ck_assert_int_eq(verdict_on(100), TSIDE_VERDICT_LOOK);
    ck_assert_int_eq(verdict_on(nextafter(100, 200)), TSIDE_VERDICT_NO);
}
END_TEST

/* --- arguments at the edge of what a double holds --- */

static const double edges[] = {0, 5e-324, 1e-310, DBL_MIN, 1e-200, 1e-100, 1e-20, 0.01, 0.3, 1, 20, 1e9, 1e15};
enum { EDGES = sizeof edges / sizeof *edges };

static int answered, refused;

/* An answer is finite; a refusal is said in a sentence of finite numbers. */
static void answers_or_refuses(tside_status status, const tside_fault *fault, const double *answers, int count,
                               const char *what)
{
    if (status == TSIDE_OK) {
        for (int i = 0; i < count; i++)
            ck_assert_msg(isfinite(answers[i]), "%s: %g", what, answers[i]);
        answered++;
    } else {
        char sentence[512];
        ck_assert_msg(isfinite(fault->value) && isfinite(fault->bound) && isfinite(fault->gap),
                      "%s: the fault's numbers", what);
        ck_assert(*fault->field && tside_fault_text(fault, sentence, sizeof sentence) < sizeof sentence);
        refused++;
    }
}

START_TEST(denormal_arguments_are_answered_or_refused)
{
    for (int i = 0; i < EDGES * EDGES * EDGES * EDGES; i++) {
        const double a = edges[i % EDGES], b = edges[i / EDGES % EDGES], c = edges[i / EDGES / EDGES % EDGES],
                     d = edges[i / EDGES / EDGES / EDGES];
        tside_roll roll = {a, b, c};
        tside_fault fault;
        double answer = NAN;
        answers_or_refuses(tside_bar_twist(a, b, c, d, &answer, &fault), &fault, &answer, 1, "twist");
        answers_or_refuses(tside_roll_taken_up(&roll, d, &answer, &fault), &fault, &answer, 1, "taken up");
        answers_or_refuses(tside_roll_wraps(&roll, d, &answer, &fault), &fault, &answer, 1, "wraps");
        answers_or_refuses(tside_roll_diameter(&roll, d, &answer, &fault), &fault, &answer, 1, "diameter");
        answers_or_refuses(tside_roll_thickness(a, b, c, d, &answer, &fault), &fault, &answer, 1, "thickness");
    }
    ck_assert_int_gt(answered, 10000);
    ck_assert_int_gt(refused, 10000);
}
END_TEST

enum { NUMBERS = sizeof(tside_section) / sizeof(double) };

START_TEST(denormal_tubes_are_answered_or_refused)
{
    for (int i = 0; i < EDGES * EDGES * EDGES * EDGES; i++) {
        const double a = edges[i % EDGES], b = edges[i / EDGES % EDGES], c = edges[i / EDGES / EDGES % EDGES],
                     d = edges[i / EDGES / EDGES / EDGES];
        tside_round round = {a, b};
        tside_square square = {.side = a,
                               .wall = b,
                               .corner = i % 2 ? TSIDE_CORNER_GIVEN : TSIDE_CORNER_STANDARD,
                               .outer_radius = c,
                               .inner_radius = d};
        tside_section section;
        tside_fault fault;
        answers_or_refuses(tside_round_section(&round, c, &section, &fault), &fault, &section.area, NUMBERS, "round");
        answers_or_refuses(tside_square_section(&square, 7850, &section, &fault), &fault, &section.area, NUMBERS,
                           "square");
    }
}
END_TEST

/* Bows, lines, travels and all that is asked of them, with lengths at the edge. */
START_TEST(denormal_bows_are_answered_or_refused)
{
    dice d = {11};
    for (int i = 0; i < 40000; i++) {
        tside_side side;
        tside_plan plan;
        tside_bow bow;
        tside_fault fault;
        double *const number[] = {&side.frame.width,
                                  &side.frame.leg_height,
                                  &side.frame.peak_height,
                                  &side.frame.tube.diameter,
                                  &side.frame.tube.wall,
                                  &side.frame.foot_x,
                                  &side.frame.between_x,
                                  &side.frame.between_height,
                                  &side.frame.peak_x,
                                  &side.frame.shoulder_radius,
                                  &side.curtain.hip,
                                  &side.curtain.sill,
                                  &side.curtain.thickness,
                                  &side.curtain.packing,
                                  &side.bar.tube.diameter,
                                  &side.bar.tube.wall,
                                  &side.bar.core_over,
                                  &side.length,
                                  &side.drive_end.rise,
                                  &side.drive.collar_offset,
                                  &side.drive.height,
                                  &side.drive_end.guide.eye_clearance,
                                  &side.stops.wraps_shut,
                                  &side.stops.gap,
                                  &side.drive_end.extender.spacing,
                                  &side.drive_end.extender.end_distance,
                                  &side.drive_end.extender.member_height,
                                  &side.drive_end.extender.bolt_hole,
                                  &side.drive_end.extender.tube.side,
                                  &side.drive_end.extender.tube.wall};
        tside_turn turns[40];
        double answer, distances[2];
        int count;
        if (i % 2)
            bench_side(&side);
        else
            bench_kinked_side(&side);
        if (i % 3 == 0) {
            side.frame.shape = TSIDE_THREE_POINTS;
            side.frame.foot_x = 4.7;
            side.frame.between_x = 4.6;
            side.frame.between_height = 1.2;
            side.frame.peak_x = 4.5;
            side.frame.peak_height = 2.4;
        }
        side.frame.shoulder_radius_given = dice_below(&d, 2);
        side.frame.shoulder_radius = 0.5;
        for (int k = 1 + dice_below(&d, 3); k > 0; k--)
            *number[dice_below(&d, (int)(sizeof number / sizeof *number))] = edges[dice_below(&d, EDGES)];
        if (tside_bow_make(&side.frame, &bow, &fault) == TSIDE_OK) {
            answers_or_refuses(tside_bow_at_height(&bow, 1, &answer, &fault), &fault, &answer, 1, "at a height");
            answers_or_refuses(tside_bow_face(&bow, 1, &answer, &fault), &fault, &answer, 1, "face");
            answers_or_refuses(tside_bow_at_height(&bow, -DBL_MAX, &answer, &fault), &fault, &answer, 1, "far below");
            answers_or_refuses(tside_bow_face(&bow, -DBL_MAX, &answer, &fault), &fault, &answer, 1, "face far below");
            answers_or_refuses(tside_bow_crossing(&bow, 5, 1, PI * edges[i % EDGES], distances, distances + 1, &fault),
                               &fault, distances, 2, "crossing");
        } else
            answers_or_refuses(TSIDE_NOT_MODELLED, &fault, NULL, 0, "bow");
        answers_or_refuses(tside_plan_side(&side, &plan, &fault), &fault, NULL, 0, "plan");
        count = 0;
        answers_or_refuses(tside_plan_turns(&side, turns, 40, &count, &fault), &fault, &turns[0].turn,
                           count * (int)(sizeof *turns / sizeof(double)), "turns");
    }
}
END_TEST

/* --- equal answers have equal bytes --- */

/* Fails unless the call writes the same whatever its output holds. */
#define DEFINES(call, output) \
    do { \
        unsigned char first[sizeof(output)]; \
        memset(&(output), 0xa5, sizeof(output)); \
        ANSWERS(call); \
        memcpy(first, &(output), sizeof(output)); \
        memset(&(output), 0x5a, sizeof(output)); \
        muddle(); \
        ANSWERS(call); \
        for (size_t b = 0; b < sizeof(output); b++) \
            ck_assert_msg(first[b] == ((unsigned char *)&(output))[b], "%s: byte %d of %d", #output, (int)b, \
                          (int)sizeof(output)); \
    } while (0)

/* Leaves other bytes than before where the next call's locals will be. */
static void muddle(void)
{
    static unsigned char turn;
    volatile unsigned char stack[60000];
    turn = (unsigned char)(turn + 37);
    for (size_t i = 0; i < sizeof stack; i++)
        stack[i] = turn;
}

START_TEST(every_byte_of_an_answer_is_defined)
{
    tside_side side = full();
    tside_fault fault;
    tside_plan plan;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_position position;
    tside_hang hang;
    tside_sweep sweep;
    tside_layout layout;
    tside_load load;
    tside_torque torque, least;
    tside_run run;
    tside_cranking cranking;
    tside_wind wind;
    tside_pressure pressure;
    tside_span span;
    tside_belly belly;
    tside_loose loose;
    tside_bay bay;
    tside_bay_load bay_load;
    tside_loosening loosening;
    tside_blown blown;
    tside_section section;
    tside_metal_values metal;
    tside_bolt bolt;
    tside_bolt_plan bolt_plan;
    tside_bolt_part part;
    tside_bearing bearing;
    tside_fittings fittings;
    tside_item items[TSIDE_ITEMS];
    tside_strength_line lines[TSIDE_EXTENDER_LINES];
    tside_turn turns[64];
    tside_bar_stick sticks[16];
    tside_drive_choice choices[2];
    tside_drive drives[2];
    tside_roll roll = {side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
    tside_collar collar = tside_drive_collar(&side.drive);
    int count, index;
    DEFINES(tside_plan_side(&side, &plan, &fault), plan);
    DEFINES(tside_bow_make(&side.frame, &bow, &fault), bow);
    DEFINES(tside_line_make(&bow, &side.curtain, &line, &fault), line);
    DEFINES(tside_travel_make(&line, &side.curtain, &roll, &side.stops, &travel, &fault), travel);
    DEFINES(tside_travel_at(&travel, 1, &position, &fault), position);
    DEFINES(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, 0,
                            &hang, NULL, &fault),
            hang);
    DEFINES(tside_hang_make(&travel, &side.drive_end.guide, &collar, plan.drive_end.eye_x, plan.drive_end.eye_y, 0,
                            &hang, &sweep, &fault),
            sweep);
    DEFINES(tside_extender_layout(&side.drive_end.extender, &bow, side.curtain.hip, plan.drive_end.eye_x,
                                  plan.drive_end.eye_y, &travel, &layout, &fault),
            layout);
    side.drive_end.extender.bolt_limit_given = side.drive_end.extender.pull_limit_given = 1;
    side.drive_end.extender.bolt_limit = side.drive_end.extender.pull_limit = 5000;
    DEFINES(tside_extender_strength(&side.drive_end.extender, &layout, 100, 50, 20, 0, 0, TSIDE_DRIVE_END, lines,
                                    TSIDE_EXTENDER_LINES, &count, &fault),
            lines);
    tside_usual(TSIDE_KIND_LOAD, &load);
    load.length = 30;
    load.bar_mass = 2;
    DEFINES(tside_lift_worst(&travel, &load, &hang, &torque, &least, &fault), torque);
    DEFINES(tside_lift_worst(&travel, &load, &hang, &torque, &least, &fault), least);
    DEFINES(tside_drive_run(&travel, &load, &hang, &side.drive, &side.cable, &run, &fault), run);
    DEFINES(tside_crank_effort(&side.crank, 20, 5, &cranking, &fault), cranking);
    DEFINES(tside_round_section(&side.bar.tube, 7850, &section, &fault), section);
    DEFINES(tside_material_values(&side.bar.material, &metal, &fault), metal);
    tside_usual(TSIDE_KIND_BOLT, &bolt);
    bolt.grip = 0.1;
    bolt.washers = 4;
    DEFINES(tside_bolt_choose(&bolt, &bolt_plan, &fault), bolt_plan);
    tside_usual(TSIDE_KIND_BOLT_PART, &part);
    part.wall = 0.003;
    DEFINES(tside_bolt_bearing(&bolt, &part, &bearing, &fault), bearing);
    tside_usual(TSIDE_KIND_WIND, &wind);
    wind.rule = TSIDE_EN_1991_1_4;
    wind.coefficient = wind.height_given = 1;
    wind.speed = wind.height = 20;
    DEFINES(tside_wind_pressure(&wind, &pressure, &fault), pressure);
    tside_usual(TSIDE_KIND_SPAN, &span);
    span.chord = span.load = span.stiffness_given = 1;
    span.stiffness = 100;
    DEFINES(tside_span_belly(&span, &belly, &fault), belly);
    tside_usual(TSIDE_KIND_LOOSE, &loose);
    loose.hanging = loose.weight = 1;
    loose.roll = 0.1;
    DEFINES(tside_loose_limits(&loose, &loosening, &fault), loosening);
    DEFINES(tside_loose_blown(&loose, 0.5, &blown, &fault), blown);
    tside_usual(TSIDE_KIND_BAY, &bay);
    bay.pressure = bay.pitch = bay.hanging = bay.weight = 1;
    bay.screw_spacing = bay.roll = 0.1;
    bay.tube = side.bar.tube;
    DEFINES(tside_bay_bears(&bay, &bay_load, &fault), bay_load);
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    memset(items, 0, sizeof items);
    ANSWERS(tside_takeoff(&side, &plan, &fittings, items, TSIDE_ITEMS, &count, &fault));
    for (int i = 0; i < count; i++) {
        tside_item mine[TSIDE_ITEMS];
        memset(mine, 0xa5, sizeof mine);
        muddle();
        ANSWERS(tside_takeoff(&side, &plan, &fittings, mine, TSIDE_ITEMS, &count, &fault));
        ck_assert_msg(!memcmp(items + i, mine + i, sizeof *mine), "item %d", i);
    }
    memset(turns, 0, sizeof turns);
    ANSWERS(tside_plan_turns(&side, turns, 64, &count, &fault));
    ck_assert_int_gt(count, 3);
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.stock = 6.4;
    memset(sticks, 0, sizeof sticks);
    ANSWERS(tside_bar_sticks(&side.bar, 30, 0.2, 0.2, sticks, 16, &count, &fault));
    drives[0] = drives[1] = side.drive;
    drives[1].rated_torque = -1;
    DEFINES(tside_drive_smallest(&side, drives, 2, &index, choices, &fault), choices);
}
END_TEST

START_TEST(every_byte_of_a_cut_plan_is_defined)
{
    const tside_cut cuts[] = {{2, 5}}; /* two to a stick of 5 m, and one alone */
    static double work[1 << 16];
    tside_stock stock;
    tside_stick sticks[2];
    tside_cut_plan plan;
    tside_fault fault;
    int taken[2], count;
    tside_usual(TSIDE_KIND_STOCK, &stock);
    stock.length_count = 1;
    stock.lengths[0].length = 5;
    ck_assert_uint_le(tside_stock_work(1), sizeof work);
    DEFINES(tside_stock_plan(&stock, cuts, 1, 0, work, sizeof work, sticks, taken, 2, &count, &plan, &fault), plan);
    DEFINES(tside_stock_plan(&stock, cuts, 1, 0, work, sizeof work, sticks, taken, 2, &count, &plan, &fault), sticks);
    ck_assert_int_eq(count, 2);
    ck_assert(sticks[0].count == 2 && sticks[0].pieces == 2 && sticks[1].count == 1 && sticks[1].pieces == 1);
}
END_TEST

Suite *answers_suite(void)
{
    Suite *suite = suite_create("answers");
    TCase *tcase = tcase_create("answers");
    tcase_add_test(tcase, no_number_of_a_plan_may_be_none);
    tcase_add_test(tcase, what_is_no_number_is_never_ok);
    tcase_add_test(tcase, denormal_arguments_are_answered_or_refused);
    tcase_add_test(tcase, denormal_tubes_are_answered_or_refused);
    tcase_add_test(tcase, denormal_bows_are_answered_or_refused);
    tcase_add_test(tcase, every_byte_of_an_answer_is_defined);
    tcase_add_test(tcase, every_byte_of_a_cut_plan_is_defined);
    suite_add_tcase(suite, tcase);
    return suite;
}
