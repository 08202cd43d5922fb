/* SPDX-License-Identifier: MIT */
/* A sketch: what a drawing holds is handed over whole, and of what it does not hold, nothing. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "drawing/sketch.h"

#include "expect.h"

Suite *sketch_suite(void);

static const tside_picture picture = {.view = TSIDE_VIEW_END_WALL, .scale = 1};

/* How much the view puts down that is drawn here. */
static int lines, arcs, measures, names, figures;

static void put_so_much(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_sketch_crop(sketch, -1, -1, 1, 1);
    for (int i = 0; i < lines; i++)
        tside_i_segment(sketch, pen, 0, 0, 1, 1e-3 * i);
    for (int i = 0; i < arcs; i++) /* each is cut into four */
        tside_i_circle(sketch, pen, 0, 0, 1.2);
    for (int i = 0; i < measures; i++)
        tside_i_dimension(sketch, TSIDE_TELLS_RUN, TSIDE_DIMENSION_LEVEL, TSIDE_I_ABOVE, i, 0, 0, 1, 1);
    for (int i = 0; i < names; i++)
        tside_i_note(sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, i, 0, 0);
    for (int i = 0; i < figures; i++)
        tside_i_figure(sketch, TSIDE_I_BELOW, (tside_note){.numbered = 1, .value = i});
}

static tside_status sketched(int may_be_many, tside_drawing *drawing, tside_fault *fault)
{
    tside_i_sketch sketch;
    tside_i_sketch_begin(NULL, NULL, &picture, NULL, NULL, drawing, &sketch);
    return tside_i_sketch_draw(&sketch, put_so_much, may_be_many, fault);
}

static void is_kept_whole(int may_be_many)
{
    static tside_drawing drawing;
    tside_fault fault;
    lines = TSIDE_STROKES - 8, arcs = 2, measures = TSIDE_DIMENSIONS, names = TSIDE_NOTES - 5, figures = 5;
    ANSWERS(sketched(may_be_many, &drawing, &fault));
    ck_assert_int_eq(drawing.stroke_count, TSIDE_STROKES);
    ck_assert_int_eq(drawing.dimension_count, TSIDE_DIMENSIONS);
    ck_assert_int_eq(drawing.note_count, TSIDE_NOTES);
    for (int i = 0; i < lines; i++)
        ck_assert_double_eq(drawing.strokes[i].y_end, 1e-3 * i);
    for (int i = lines; i < TSIDE_STROKES; i++)
        ck_assert_double_eq(drawing.strokes[i].radius, 1.2);
    for (int i = 0; i < measures; i++)
        ck_assert_double_eq(drawing.dimensions[i].value, i);
    for (int i = 0; i < names; i++)
        ck_assert_int_eq(drawing.notes[i].index, i);
    for (int i = 0; i < figures; i++)
        ck_assert_double_eq(drawing.notes[names + i].value, i);
}

START_TEST(a_full_drawing_is_kept_whole)
{
    is_kept_whole(1);
    is_kept_whole(0);
}
END_TEST

/* One more than it holds of something: refused, and not a byte of the drawing is another. */
static void is_refused(const char *field, int count)
{
    static tside_drawing drawing, before;
    tside_fault fault;
    memset(&drawing, 0x5a, sizeof drawing);
    memset(&before, 0x5a, sizeof before);
    ck_assert_int_eq(sketched(1, &drawing, &fault), TSIDE_NOT_MODELLED);
    ck_assert_str_eq(fault.field, field);
    ck_assert_double_eq(fault.value, count);
    ck_assert_double_eq(fault.bound, count - 1);
    ck_assert_mem_eq(&drawing, &before, sizeof drawing);
}

START_TEST(what_is_too_much_leaves_the_drawing_as_it_was)
{
    lines = TSIDE_STROKES + 1, arcs = 0, measures = 2, names = 2, figures = 2;
    is_refused("drawing.strokes", TSIDE_STROKES + 1);
    lines = TSIDE_STROKES - 3, arcs = 1;
    is_refused("drawing.strokes", TSIDE_STROKES + 1);
    lines = 2, measures = TSIDE_DIMENSIONS + 1;
    is_refused("drawing.dimensions", TSIDE_DIMENSIONS + 1);
    measures = 2, names = TSIDE_NOTES + 1, figures = 0;
    is_refused("drawing.notes", TSIDE_NOTES + 1);
    names = 1, figures = TSIDE_NOTES;
    is_refused("drawing.notes", TSIDE_NOTES + 1);
}
END_TEST

/* A view that was thought to have less writes no more than there is. */
START_TEST(what_is_too_much_all_the_same_stays_within_the_drawing)
{
    static struct {
        tside_drawing drawing;
        char behind[sizeof(tside_note)];
    } room;
    tside_fault fault;
    memset(&room, 0x5a, sizeof room);
    lines = TSIDE_STROKES - 3, arcs = 1, measures = TSIDE_DIMENSIONS + 1, names = TSIDE_NOTES, figures = 1;
    ck_assert_int_eq(sketched(0, &room.drawing, &fault), TSIDE_NOT_MODELLED);
    ck_assert_str_eq(fault.field, "drawing.strokes");
    ck_assert_int_eq(room.drawing.stroke_count, 0x5a5a5a5a);
    ck_assert_int_eq(room.drawing.dimension_count, 0x5a5a5a5a);
    ck_assert_int_eq(room.drawing.note_count, 0x5a5a5a5a);
    for (size_t i = 0; i < sizeof room.behind; i++)
        ck_assert_int_eq(room.behind[i], 0x5a);
}
END_TEST

Suite *sketch_suite(void)
{
    Suite *suite = suite_create("sketch");
    TCase *tests = tcase_create("sketch");
    tcase_add_test(tests, a_full_drawing_is_kept_whole);
    tcase_add_test(tests, what_is_too_much_leaves_the_drawing_as_it_was);
    tcase_add_test(tests, what_is_too_much_all_the_same_stays_within_the_drawing);
    suite_add_tcase(suite, tests);
    return suite;
}
