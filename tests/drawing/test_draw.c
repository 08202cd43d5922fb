/* SPDX-License-Identifier: MIT */
/* Drawings: what they are asked, in which order their texts are placed, and how they are handed over. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "drawing/place.h"

#include "expect.h"
#include "plans.h"
#include "rooms.h"

Suite *draw_suite(void);

static const tside_picture end_wall = {.view = TSIDE_VIEW_END_WALL, .tape = TSIDE_TAPE_INCH, .scale = 20};

static void drawn(const tside_side *side, const tside_plan *plan, const tside_picture *picture, tside_drawing *drawing)
{
    tside_fault fault;
    ANSWERS(tside_draw(side, plan, picture, drawing, &fault));
}

START_TEST(what_cannot_be_drawn_is_refused)
{
    static tside_drawing drawing;
    tside_side side = plain(), bad;
    tside_plan plan = planned(&side);
    tside_picture picture = end_wall;
    tside_fault fault;
    picture.scale = 0;
    ck_assert_int_eq(tside_draw(&side, &plan, &picture, &drawing, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "picture.scale");
    picture = end_wall;
    picture.turns_given = 1;
    picture.turns = plan.drive_turns * 1.001;
    ck_assert_int_eq(tside_draw(&side, &plan, &picture, &drawing, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "picture.turns");
    NEAR(fault.bound, plan.drive_turns, 1e-9, "most turns", 0);
    picture.turns = plan.drive_turns * (1 + 1e-12); /* as the bound comes back from whoever counts in degrees */
    drawn(&side, &plan, &picture, &drawing);
    bad = side;
    bad.length = NAN;
    ck_assert_int_eq(tside_draw(&bad, &plan, &end_wall, &drawing, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "length");
    bad = side;
    bad.stops.open_by = TSIDE_OPEN_HEIGHT;
    bad.stops.open_height = 0.01;
    ck_assert_int_eq(tside_draw(&bad, &plan, &end_wall, &drawing, &fault), TSIDE_CONTRADICTS);
    bad = side;
    bad.curtain.hip = 19;
    ck_assert_int_eq(tside_draw(&bad, &plan, &end_wall, &drawing, &fault), TSIDE_OUT_OF_REACH);
    bad = side;
    bad.drive.place = TSIDE_BOTH_ENDS;
    ck_assert_int_eq(tside_draw(&bad, &plan, &end_wall, &drawing, &fault), TSIDE_NOT_MODELLED);
    plan.drive_end.eye_x = NAN;
    ck_assert_int_eq(tside_draw(&side, &plan, &end_wall, &drawing, &fault), TSIDE_NOT_MODELLED);
}
END_TEST

START_TEST(texts_fit_or_are_refused)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    char words[80], one[1];
    size_t needed = 0;
    drawn(&side, &plan, &end_wall, &drawing);
    ck_assert_int_gt(drawing.dimension_count, 5);
    ck_assert_int_gt(drawing.note_count, 3);
    for (int i = 0; i < drawing.dimension_count; i++) {
        ANSWERS(tside_dimension_text(drawing.dimensions + i, TSIDE_TAPE_METRIC, words, sizeof words, &needed, &fault));
        ck_assert_uint_eq(strlen(words), needed);
        ANSWERS(tside_dimension_text(drawing.dimensions + i, TSIDE_TAPE_INCH, words, sizeof words, &needed, &fault));
        ck_assert_uint_eq(strlen(words), needed);
        NEAR(drawing.dimensions[i].text_width, (double)needed * TSIDE_LETTER_ADVANCE * 20, 1e-12, "text's width", i);
        ck_assert_int_eq(tside_dimension_text(drawing.dimensions + i, TSIDE_TAPE_INCH, words, needed, NULL, &fault),
                         TSIDE_TOO_SMALL);
    }
    ck_assert_int_eq(tside_dimension_text(drawing.dimensions, (tside_tape)7, words, sizeof words, NULL, &fault),
                     TSIDE_OUT_OF_BOUNDS);
    drawing.dimensions[0].value = 2e6;
    ck_assert_int_eq(tside_dimension_text(drawing.dimensions, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault),
                     TSIDE_OUT_OF_BOUNDS);
    for (int i = 0; i < drawing.note_count; i++) {
        ANSWERS(tside_note_text(drawing.notes + i, words, sizeof words, &needed, &fault));
        ck_assert_uint_eq(strlen(words), needed);
        ck_assert_int_eq(tside_note_text(drawing.notes + i, one, sizeof one, NULL, &fault), TSIDE_TOO_SMALL);
    }
    drawing.notes[0].part = TSIDE_PART_CODES;
    ck_assert_int_eq(tside_note_text(drawing.notes, words, sizeof words, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
}
END_TEST

/* A title of markup stays text. */
START_TEST(an_svg_fits_or_is_refused)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_fault fault;
    size_t needed = 0, again = 0;
    char *svg;
    drawn(&side, &plan, &end_wall, &drawing);
    ck_assert_int_eq(tside_drawing_svg(&drawing, "<b> & \"b\"", NULL, 0, &needed, &fault), TSIDE_TOO_SMALL);
    svg = malloc(needed + 1);
    ck_assert_ptr_nonnull(svg);
    ck_assert_int_eq(tside_drawing_svg(&drawing, "<b> & \"b\"", svg, needed, NULL, &fault), TSIDE_TOO_SMALL);
    ck_assert(fault.value == (double)needed && fault.bound == (double)needed && fault.gap == 0);
    ANSWERS(tside_drawing_svg(&drawing, "<b> & \"b\"", svg, needed + 1, &again, &fault));
    ck_assert_uint_eq(again, needed);
    ck_assert_uint_eq(strlen(svg), needed);
    ck_assert_ptr_nonnull(strstr(svg, "<title>&lt;b&gt; &amp; &quot;b&quot;</title>"));
    ck_assert_ptr_nonnull(
        strstr(svg, "<desc>An end wall from outside, cropped to what is set out; outboard is to the "));
    for (int i = 0; i < drawing.dimension_count; i++) { /* who does not see it is told each of them */
        char told[80] = ": ";
        ANSWERS(tside_dimension_text(drawing.dimensions + i, drawing.picture.tape, told + 2, sizeof told - 2, NULL,
                                     &fault));
        ck_assert_msg(strstr(strstr(svg, ". Dimensions: hip above ground: "), told), "%s", told);
    }
    ck_assert_ptr_nonnull(strstr(strstr(svg, ". Named: "), ".</desc>\n"));
    ck_assert_str_eq(svg + needed - 7, "</svg>\n");
    drawing.strokes[0].x = NAN;
    ck_assert_int_eq(tside_drawing_svg(&drawing, "", svg, needed + 1, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drawing.strokes[0].x");
    free(svg);
}
END_TEST

/* --- the order of measures --- */

static ruled r;
static const tside_i_line two_edges[] = {{0, 0, 0.1, 0}, {0, 0, 0, 0.1}};

static void put_measures_of_two_sizes(tside_i_sketch *sketch)
{
    rule(sketch, two_edges, 2);
    tside_i_dimension(sketch, TSIDE_TELLS_SEAL, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD, 0.1, 0.1, 0, 0.1, 0.1);
    tside_i_dimension(sketch, TSIDE_TELLS_SEAL, TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD, 0.04, 0.1, 0.09, 0.1, 0.05);
    tside_i_dimension(sketch, TSIDE_TELLS_SEAL, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.1, 0.1, 0, 0, 0);
    tside_i_dimension(sketch, TSIDE_TELLS_SEAL, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.04, 0.05, 0, 0.09, 0);
}

START_TEST(short_measures_stand_nearer_than_long_ones)
{
    sketch_view(&r, put_measures_of_two_sizes, 1);
    r.sketch.outboard = 1;
    tside_i_place_texts(&r.sketch);
    ck_assert_double_lt(r.drawing.dimensions[1].from_x, r.drawing.dimensions[0].from_x - 7e-3);
    ck_assert_double_gt(r.drawing.dimensions[3].from_y, r.drawing.dimensions[2].from_y + 7e-3);
}
END_TEST

/* --- one text alone --- */

static void put_one_name(tside_i_sketch *sketch)
{
    rule(sketch, two_edges, 2);
    tside_i_note(sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, 0, 0.05, 0);
}

static void put_one_measure(tside_i_sketch *sketch)
{
    rule(sketch, two_edges, 2);
    tside_i_dimension(sketch, TSIDE_TELLS_CUT_LENGTH, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.05, 0, 0, 0.05, 0);
}

START_TEST(a_text_that_is_alone_has_its_place)
{
    sketch_view(&r, put_one_name, 1);
    tside_i_place_texts(&r.sketch);
    ck_assert_int_eq(r.drawing.note_count, 1);
    ck_assert_double_gt(r.drawing.notes[0].text_width, 0);
    ck_assert_double_gt(hypot(r.drawing.notes[0].to_x - 0.05, r.drawing.notes[0].to_y), 5e-3);
    sketch_view(&r, put_one_measure, 1);
    tside_i_place_texts(&r.sketch);
    ck_assert_double_gt(r.drawing.dimensions[0].text_width, 0);
    ck_assert_double_lt(r.drawing.dimensions[0].from_y, -7e-3);
}
END_TEST

/* --- a measure that cannot be written --- */

static void put_measures(tside_i_sketch *sketch)
{
    rule(sketch, two_edges, 2);
    tside_i_dimension(sketch, TSIDE_TELLS_CUT_LENGTH, TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.05, 0, 0, 0.05, 0);
    tside_i_dimension(sketch, TSIDE_TELLS_RUN, TSIDE_DIMENSION_ANGLE, TSIDE_I_BELOW, 1e9, 0.05, 0, 0.05, 0);
}

/* Longer than lengths are written: the drawing is there, and who writes it is told which measure it is. */
START_TEST(a_measure_that_cannot_be_written_has_no_place_and_is_named)
{
    tside_fault fault;
    char svg[20000];
    sketch_view(&r, put_measures, 1);
    r.drawing.outboard = 1;
    tside_i_place_texts(&r.sketch);
    ck_assert_double_gt(r.drawing.dimensions[0].text_width, 0);
    ck_assert_double_eq(r.drawing.dimensions[1].text_width, 0);
    ck_assert_int_eq(tside_drawing_svg(&r.drawing, "t", svg, sizeof svg, NULL, &fault), TSIDE_OUT_OF_BOUNDS);
    ck_assert_str_eq(fault.field, "drawing.dimensions[1].value");
    ck_assert_double_gt(fault.value, fault.bound);
    heard_held();
}
END_TEST

Suite *draw_suite(void)
{
    Suite *suite = suite_create("draw");
    TCase *tests = tcase_create("draw");
    tcase_add_test(tests, what_cannot_be_drawn_is_refused);
    tcase_add_test(tests, texts_fit_or_are_refused);
    tcase_add_test(tests, an_svg_fits_or_is_refused);
    tcase_add_test(tests, short_measures_stand_nearer_than_long_ones);
    tcase_add_test(tests, a_text_that_is_alone_has_its_place);
    tcase_add_test(tests, a_measure_that_cannot_be_written_has_no_place_and_is_named);
    suite_add_tcase(suite, tests);
    return suite;
}
