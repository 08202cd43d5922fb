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

static tside_i_sketch last_drawn;

static tside_status sketched(tside_i_view *view, int may_be_many, tside_drawing *drawing, tside_fault *fault)
{
    tside_i_sketch_begin(NULL, NULL, &picture, NULL, NULL, drawing, &last_drawn);
    return tside_i_sketch_draw(&last_drawn, view, may_be_many, fault);
}

static void is_kept_whole(int may_be_many)
{
    static tside_drawing drawing;
    tside_fault fault;
    lines = TSIDE_STROKES - 8, arcs = 2, measures = TSIDE_DIMENSIONS, names = TSIDE_NOTES - 5, figures = 5;
    ANSWERS(sketched(put_so_much, may_be_many, &drawing, &fault));
    ck_assert_int_eq(drawing.stroke_count, TSIDE_STROKES);
    ck_assert_int_eq(drawing.dimension_count, TSIDE_DIMENSIONS);
    ck_assert_int_eq(drawing.note_count, TSIDE_NOTES);
    for (int i = 0; i < lines; i++)
        ck_assert_double_eq(drawing.strokes[i].y_end, 1e-3 * i);
    for (int i = lines; i < TSIDE_STROKES; i++)
        ck_assert_double_eq(drawing.strokes[i].radius, 1.2);
    for (int i = 0; i < TSIDE_STROKES; i++)
        ck_assert_int_eq(drawing.strokes[i].arc, i >= lines);
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
    ck_assert_int_eq(sketched(put_so_much, 1, &drawing, &fault), TSIDE_NOT_MODELLED);
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
    ck_assert_int_eq(sketched(put_so_much, 0, &room.drawing, &fault), TSIDE_NOT_MODELLED);
    ck_assert_str_eq(fault.field, "drawing.strokes");
    ck_assert_int_eq(room.drawing.stroke_count, 0x5a5a5a5a);
    ck_assert_int_eq(room.drawing.dimension_count, 0x5a5a5a5a);
    ck_assert_int_eq(room.drawing.note_count, 0x5a5a5a5a);
    for (size_t i = 0; i < sizeof room.behind; i++)
        ck_assert_int_eq(room.behind[i], 0x5a);
}
END_TEST

/* --- arcs cut at edges --- */

/* An arc thrown, and edges about part of it. */
static struct {
    double x, y, radius, from, sweep, left, bottom, right, top;
} thrown;

static void put_arc(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_sketch_crop(sketch, thrown.left, thrown.bottom, thrown.right, thrown.top);
    tside_i_arc(sketch, pen, thrown.x, thrown.y, thrown.radius, thrown.from, thrown.sweep);
}

static int is_drawn_at(const tside_drawing *drawing, double angle)
{
    int drawn = 0;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *s = drawing->strokes + i;
        const double after = angle - s->from;
        drawn += after - 2 * PI * floor(after / (2 * PI)) < s->sweep;
    }
    return drawn;
}

/* Of places along an arc those within the edges are drawn, each once, and no other. */
START_TEST(arcs_end_at_the_edges)
{
    enum { PLACES = 500 };
    static tside_drawing drawing;
    dice d = {41};
    for (int number = 0; number < 400; number++) {
        tside_fault fault;
        thrown.x = dice_between(&d, -1, 1);
        thrown.y = dice_between(&d, -1, 1);
        thrown.radius = dice_between(&d, 0.2, 1.5);
        thrown.from = dice_between(&d, -7, 7);
        thrown.sweep = dice_between(&d, 0.1, 2 * PI);
        thrown.left = dice_between(&d, -1.5, 0);
        thrown.right = thrown.left + dice_between(&d, 0.2, 2);
        thrown.bottom = dice_between(&d, -1.5, 0);
        thrown.top = thrown.bottom + dice_between(&d, 0.2, 2);
        ANSWERS(sketched(put_arc, 0, &drawing, &fault));
        for (int k = 0; k < PLACES; k++) {
            const double angle = thrown.from + thrown.sweep * (k + 0.5) / PLACES,
                         x = thrown.x + thrown.radius * cos(angle), y = thrown.y + thrown.radius * sin(angle);
            const int within = x > thrown.left && x < thrown.right && y > thrown.bottom && y < thrown.top;
            if (is_drawn_at(&drawing, angle) != within)
                ck_abort_msg("arc %d: at %g rad drawn %d times, and within %d", number, angle,
                             is_drawn_at(&drawing, angle), within);
        }
    }
}
END_TEST

/* Names on edges about nought, and in their corners; and one beyond each. */
static void put_names(tside_i_sketch *sketch)
{
    int index = 0;
    tside_i_sketch_crop(sketch, -1, -2, 1, 2);
    for (int x = -1; x <= 1; x++)
        for (int y = -1; y <= 1; y++)
            tside_i_note(sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, index++, x, 2 * y);
    for (int way = -1; way <= 1; way += 2) {
        tside_i_note(sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, index, 1.001 * way, 0);
        tside_i_note(sketch, TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, index, 0, 2.001 * way);
    }
}

START_TEST(what_is_on_an_edge_is_named_and_what_is_beyond_is_not)
{
    static tside_drawing drawing;
    tside_fault fault;
    ANSWERS(sketched(put_names, 1, &drawing, &fault));
    ck_assert_int_eq(drawing.note_count, 9);
    for (int i = 0; i < 9; i++)
        ck_assert_int_eq(drawing.notes[i].index, i);
}
END_TEST

static void put_whole_arc(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_arc(sketch, pen, thrown.x, thrown.y, thrown.radius, thrown.from, thrown.sweep);
}

/* As far as places along it come; of every fourth, a whole circle, as far as its radius. */
START_TEST(a_drawing_is_as_large_as_its_arcs)
{
    enum { PLACES = 2000 };
    static tside_drawing drawing;
    dice d = {42};
    for (int number = 0; number < 100; number++) {
        double left = HUGE_VAL, bottom = HUGE_VAL, right = -HUGE_VAL, top = -HUGE_VAL;
        tside_fault fault;
        thrown.x = dice_between(&d, -1, 1);
        thrown.y = dice_between(&d, -1, 1);
        thrown.radius = dice_between(&d, 0.2, 1.5);
        thrown.from = dice_between(&d, -7, 7);
        thrown.sweep = number % 4 ? dice_between(&d, 0.1, 2 * PI) : 2 * PI;
        ANSWERS(sketched(put_whole_arc, 0, &drawing, &fault));
        for (int k = 0; k <= PLACES; k++) {
            const double angle = thrown.from + thrown.sweep * k / PLACES, x = thrown.x + thrown.radius * cos(angle),
                         y = thrown.y + thrown.radius * sin(angle);
            left = fmin(left, x);
            bottom = fmin(bottom, y);
            right = fmax(right, x);
            top = fmax(top, y);
        }
        NEAR(last_drawn.left, left, 1e-5, "left", number);
        NEAR(last_drawn.bottom, bottom, 1e-5, "bottom", number);
        NEAR(last_drawn.right, right, 1e-5, "right", number);
        NEAR(last_drawn.top, top, 1e-5, "top", number);
    }
}
END_TEST

/* --- along a path --- */

static tside_path path;
static double begins, ends, out_of_it;

static void put_path(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_path_strokes(sketch, pen, &path, begins, ends, out_of_it);
}

/* A piece straight, bent to either side: beginning, middle and end of its stroke are so far out of it. */
START_TEST(a_path_is_drawn_beside_itself)
{
    static tside_drawing drawing;
    for (int bend = -1; bend <= 1; bend++)
        for (int out = -1; out <= 1; out++) {
            tside_fault fault;
            const double heading = 1.2, curvature = 0.4 * bend;
            path = (tside_path){.count = 1, .length = 5};
            path.piece[0] = (tside_piece){.from = 3,
                                          .length = 2,
                                          .x = 3,
                                          .y = 1,
                                          .heading = heading,
                                          .curvature = curvature,
                                          .cosine = cos(heading),
                                          .sine = sin(heading)};
            begins = 3.5, ends = 4.5, out_of_it = 0.1 * out;
            ANSWERS(sketched(put_path, 0, &drawing, &fault));
            ck_assert_int_eq(drawing.stroke_count, 1);
            for (int k = 0; k <= 2; k++) {
                const tside_stroke *s = drawing.strokes;
                const double u = begins - 3 + (ends - begins) * k / 2, turned = heading + curvature * u,
                             share = s->arc && bend < 0 ? 1 - k / 2.0 : k / 2.0, angle = s->from + s->sweep * share;
                double x = 3 - out_of_it * -sin(turned), y = 1 - out_of_it * cos(turned);
                for (int i = 0; i < 4000; i++) { /* the path itself, step by step */
                    x += cos(heading + curvature * u * (i + 0.5) / 4000) * u / 4000;
                    y += sin(heading + curvature * u * (i + 0.5) / 4000) * u / 4000;
                }
                NEAR(s->arc ? s->x + s->radius * cos(angle) : s->x + share * (s->x_end - s->x), x, 1e-7, "x", k);
                NEAR(s->arc ? s->y + s->radius * sin(angle) : s->y + share * (s->y_end - s->y), y, 1e-7, "y", k);
            }
        }
}
END_TEST

/* --- what is of no length --- */

static void put_nothing(tside_i_sketch *sketch)
{
    const tside_i_pen pen = {TSIDE_PART_BOW, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, 0};
    tside_i_sketch_crop(sketch, -1, -1, 1, 1);
    tside_i_segment(sketch, pen, 0.5, 0.5, 0.5, 0.5);
    tside_i_tube(sketch, pen, 0.5, 0.5, 0.5, 0.5, 0.1);
    tside_i_arc(sketch, pen, 0, 0, 0.5, 1, 0);
}

START_TEST(what_is_of_no_length_leaves_no_stroke)
{
    static tside_drawing drawing;
    tside_fault fault;
    ANSWERS(sketched(put_nothing, 1, &drawing, &fault));
    ck_assert_int_eq(drawing.stroke_count, 0);
}
END_TEST

Suite *sketch_suite(void)
{
    Suite *suite = suite_create("sketch");
    TCase *tests = tcase_create("sketch");
    tcase_add_test(tests, a_full_drawing_is_kept_whole);
    tcase_add_test(tests, what_is_too_much_leaves_the_drawing_as_it_was);
    tcase_add_test(tests, what_is_too_much_all_the_same_stays_within_the_drawing);
    tcase_add_test(tests, arcs_end_at_the_edges);
    tcase_add_test(tests, what_is_on_an_edge_is_named_and_what_is_beyond_is_not);
    tcase_add_test(tests, a_drawing_is_as_large_as_its_arcs);
    tcase_add_test(tests, a_path_is_drawn_beside_itself);
    tcase_add_test(tests, what_is_of_no_length_leaves_no_stroke);
    suite_add_tcase(suite, tests);
    return suite;
}
