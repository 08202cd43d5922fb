/* SPDX-License-Identifier: MIT */
/* Dimensions with their lines, in rooms that are built for them. Sizes on paper: ISO 129-1 shows where text, line and
 * arrows stand; how far apart is this library's choice. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "drawing/rank.h"

#include "expect.h"
#include "rooms.h"

Suite *rank_suite(void);

/* m on paper */
#define FIRST 8e-3
#define RANK 8e-3
#define STEP 3e-3 /* the same beside what is measured */
#define GAP 1e-3
#define PAST 1.5e-3
#define OVER 1.8e-3 /* a text's foot over its line */
#define ARROWS 6e-3 /* arrows outside a line */

static const tside_i_line square[] = {{0, 0, 0.1, 0}, {0.1, 0, 0.1, 0.1}, {0.1, 0.1, 0, 0.1}, {0, 0.1, 0, 0}};
static ruled r;

/* Whether every place along a line is taken. */
static int is_line_taken(double x, double y, double x_end, double y_end)
{
    for (int i = 0; i <= 500; i++)
        if (!is_taken(&r.room.paper, x + (x_end - x) * i / 500, y + (y_end - y) * i / 500))
            return 0;
    return 1;
}

/* Outside a square a measure has its line one rank off, two lines that lead to it and go on past it, and its text on
 * it. */
static void check_outside(tside_dimension_kind kind, tside_i_beside beside, double from, double to, double width)
{
    const int plumb = kind == TSIDE_DIMENSION_PLUMB, in = plumb ? beside == TSIDE_I_INBOARD : beside == TSIDE_I_BELOW,
              shown_short = to - from < 8e-3;
    const double out = in ? -1 : 1, edge = in ? 0 : 0.1, at = edge + out * FIRST, start = edge + out * GAP,
                 end = at + out * PAST, tail = shown_short ? ARROWS : 0;
    tside_dimension d = {.kind = kind, .text_width = width};
    OPEN_ROOM(&r, square, 1);
    r.sketch.outboard = 1;
    *(plumb ? &d.y : &d.x) = to; /* either point may come first */
    *(plumb ? &d.y_end : &d.x_end) = from;
    *(plumb ? &d.x : &d.y) = *(plumb ? &d.x_end : &d.y_end) = edge;
    tside_i_place_dimension(&r.room, &d, beside);
    ck_assert_int_eq(d.leader, 0);
    ck_assert_int_eq(d.arrows_outside, shown_short);
    NEAR(plumb ? d.from_x : d.from_y, at, 1e-12, "the first rank", (int)beside);
    NEAR(plumb ? d.to_x : d.to_y, at, 1e-12, "the first rank", (int)beside);
    if (width < to - from) {
        NEAR(plumb ? d.from_y : d.from_x, from - tail, 1e-12, "from the lesser", (int)beside);
        NEAR(plumb ? d.to_y : d.to_x, to + tail, 1e-12, "to the greater", (int)beside);
        NEAR(plumb ? d.text_y : d.text_x, (from + to) / 2, 1e-12, "the text in the middle", (int)beside);
    }
    NEAR(plumb ? at - d.text_x : d.text_y - at, OVER, 1e-12, "the text over its line", (int)beside);
    NEAR(d.text_angle, plumb ? PI / 2 : 0, 1e-12, "read from below, or from the right", (int)beside);
    for (int i = 0; i < 2; i++) {
        const double along = i ? to : from;
        ck_assert(plumb ? is_line_taken(start, along, end, along) : is_line_taken(along, start, along, end));
    }
    ck_assert(is_line_taken(d.from_x, d.from_y, d.to_x, d.to_y));
}

START_TEST(what_is_outside_all_has_its_line_in_the_first_rank)
{
    for (int i = 0; i < 4; i++) {
        check_outside(TSIDE_DIMENSION_PLUMB, TSIDE_I_OUTBOARD, 0.01 * i, 0.06 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_PLUMB, TSIDE_I_INBOARD, 0.01 * i, 0.06 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_LEVEL, TSIDE_I_ABOVE, 0.01 * i, 0.06 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.01 * i, 0.06 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_RUNNING, TSIDE_I_BELOW, 0.01 * i, 0.06 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_LEVEL, TSIDE_I_BELOW, 0.03 + 0.01 * i, 0.036 + 0.01 * i, 0.02);
        check_outside(TSIDE_DIMENSION_PLUMB, TSIDE_I_INBOARD, 0.03 + 0.01 * i, 0.036 + 0.01 * i, 0.02);
    }
}
END_TEST

/* The line that leads from a point begins a little way from it. */
START_TEST(a_leading_line_keeps_off_its_point)
{
    tside_dimension d = {
        .kind = TSIDE_DIMENSION_PLUMB, .x = 0.05, .y = 0.0313, .x_end = 0.05, .y_end = 0.0713, .text_width = 0.01};
    OPEN_ROOM(&r, square, 1);
    r.sketch.outboard = 1;
    tside_i_place_dimension(&r.room, &d, TSIDE_I_OUTBOARD);
    for (int i = 0; i < 2; i++) {
        const double y = i ? d.y_end : d.y;
        ck_assert(!is_line_taken(0.05 - 4 * GAP, y, 0.05, y) && !is_taken(&r.room.paper, 0.05 - GAP, y));
        ck_assert(is_line_taken(0.05 + GAP, y, 0.1 + FIRST + PAST, y));
        ck_assert(!is_taken(&r.room.paper, 0.1 + FIRST + PAST + 2 * GAP, y));
    }
}
END_TEST

/* Measures over each other stand in ranks as far apart as there are; beside each other they share one. */
START_TEST(lines_over_each_other_stand_in_ranks)
{
    static const struct {
        double from, to;
        int rank;
    } wanted[] = {{0.01, 0.04, 0}, {0.06, 0.09, 0}, {0.01, 0.09, 1}, {0, 0.1, 2}};
    OPEN_ROOM(&r, square, 1);
    r.sketch.outboard = 1;
    for (int i = 0; i < 4; i++) {
        tside_dimension *d = r.drawing.dimensions + i;
        *d = (tside_dimension){
            .kind = TSIDE_DIMENSION_LEVEL, .x = wanted[i].from, .x_end = wanted[i].to, .text_width = 0.01};
        tside_i_place_dimension(&r.room, d, TSIDE_I_BELOW);
        r.drawing.dimension_count = i + 1;
        NEAR(d->from_y, -FIRST - wanted[i].rank * RANK, 1e-12, "rank", i);
    }
}
END_TEST

/* Whichever comes first. */
START_TEST(lines_beside_each_other_share_a_rank)
{
    for (int i = 0; i < 4; i++) {
        const int plumb = i / 2;
        OPEN_ROOM(&r, square, 1);
        r.sketch.outboard = 1;
        for (int k = 0; k < 2; k++) {
            const double from = k == i % 2 ? 0.01 : 0.06, to = from + 0.03;
            tside_dimension *d = r.drawing.dimensions + k;
            *d = plumb
                     ? (tside_dimension){.kind = TSIDE_DIMENSION_PLUMB, .x = 0.1, .y = from, .x_end = 0.1, .y_end = to}
                     : (tside_dimension){.kind = TSIDE_DIMENSION_LEVEL, .x = from, .x_end = to};
            d->text_width = 0.01;
            tside_i_place_dimension(&r.room, d, plumb ? TSIDE_I_OUTBOARD : TSIDE_I_BELOW);
            r.drawing.dimension_count = k + 1;
            NEAR(plumb ? d->from_x - 0.1 : -d->from_y, FIRST, 1e-12, "in the first rank", i);
        }
    }
}
END_TEST

/* A text that its line is too short for is beside it, on the side of the drawing's middle. */
START_TEST(a_text_beside_its_line_is_towards_the_middle)
{
    for (int i = 0; i < 4; i++) {
        const double from = i % 2 ? 0.07 : 0.02, to = from + 0.01;
        tside_dimension d = {.kind = TSIDE_DIMENSION_LEVEL, .x = from, .x_end = to, .text_width = 0.02};
        OPEN_ROOM(&r, square, 1);
        d.y = d.y_end = i / 2 ? 0.1 : 0;
        tside_i_place_dimension(&r.room, &d, i / 2 ? TSIDE_I_ABOVE : TSIDE_I_BELOW);
        ck_assert_int_eq(d.leader, 0);
        ck_assert(i % 2 ? d.text_x + 0.01 < from : d.text_x - 0.01 > to);
        ck_assert(d.from_x <= fmin(from, d.text_x - 0.01) && d.to_x >= fmax(to, d.text_x + 0.01));
    }
}
END_TEST

/* Where a line is still to lead out past a text's place, from below it, the text is a rank farther out. */
START_TEST(texts_keep_off_lines_that_are_still_to_come)
{
    for (int i = 0; i < 4; i++) {
        const int right = i % 2, passes = i / 2;
        const double text = right ? 0.105 : -0.011; /* within the place, from 40 mm to 60 mm up */
        tside_dimension d = {.kind = TSIDE_DIMENSION_PLUMB, .y = 0.03, .y_end = 0.07, .text_width = 0.02};
        OPEN_ROOM(&r, square, 1);
        r.sketch.outboard = 1;
        r.drawing.dimensions[0] = (tside_dimension){.kind = TSIDE_DIMENSION_LEVEL,
                                                    .x = text,
                                                    .y = passes ? 0.02 : 0.09,
                                                    .x_end = 0.05,
                                                    .y_end = passes ? 0.09 : 0.02};
        r.drawing.dimension_count = 1;
        r.sketch.beside[0] = TSIDE_I_ABOVE;
        r.room.pending[0] = 1;
        d.x = d.x_end = right ? 0.1 : 0;
        tside_i_place_dimension(&r.room, &d, right ? TSIDE_I_OUTBOARD : TSIDE_I_INBOARD);
        NEAR(fabs(d.from_x - d.x), FIRST + (passes ? RANK : 0), 1e-12, "rank", i);
        ck_assert_int_eq(d.leader, 0);
    }
}
END_TEST

/* Along what is measured, at any angle: parallel to it, as long, and the text on it upright. */
START_TEST(what_is_beside_what_it_measures_is_parallel_to_it)
{
    for (int i = 0; i < 36; i++) {
        const double angle = (10 * i + 3) * PI / 180, x = 0.05 + 0.02 * cos(angle), y = 0.05 + 0.02 * sin(angle);
        for (int beside = TSIDE_I_OUTBOARD; beside <= TSIDE_I_BELOW; beside++) {
            tside_dimension d = {
                .kind = TSIDE_DIMENSION_ALONG, .x = 0.05, .y = 0.05, .x_end = x, .y_end = y, .text_width = 0.008};
            double off_x, off_y, out;
            OPEN_ROOM(&r, square, 1);
            r.sketch.outboard = 1;
            tside_i_place_dimension(&r.room, &d, (tside_i_beside)beside);
            off_x = (d.from_x + d.to_x - 0.05 - x) / 2;
            off_y = (d.from_y + d.to_y - 0.05 - y) / 2;
            out = beside == TSIDE_I_OUTBOARD  ? off_x
                  : beside == TSIDE_I_INBOARD ? -off_x
                  : beside == TSIDE_I_ABOVE   ? off_y
                                              : -off_y;
            NEAR(hypot(d.to_x - d.from_x, d.to_y - d.from_y), 0.02, 1e-12, "as long", i);
            NEAR(off_x * cos(angle) + off_y * sin(angle), 0, 1e-12, "square to it", i);
            NEAR(hypot(off_x, off_y), FIRST, 1e-12, "as far as the first", i);
            ck_assert_msg(out > 0, "%d: on the side that is asked: %d", i, beside);
            NEAR(cos(d.text_angle) >= -1e-12, 1, 0, "upright", i);
            NEAR(fabs(sin(d.text_angle - angle)), 0, 1e-12, "parallel", i);
        }
    }
}
END_TEST

/* Where a text closes the side that is asked, the line is on the other, and as far off. */
START_TEST(what_has_no_place_on_its_side_stands_on_the_other)
{
    static const tside_i_line large[] = {{0, 0, 2, 0}, {2, 0, 2, 2}, {2, 2, 0, 2}, {0, 2, 0, 0}};
    const double scale = 20;
    for (int beside = TSIDE_I_ABOVE; beside <= TSIDE_I_BELOW; beside++) {
        const int way = beside == TSIDE_I_ABOVE ? 1 : -1;
        const tside_i_box over = tside_i_box_of(1, 1 + way * 0.1, 1, 0, 0.4, 0.06);
        tside_dimension d = {
            .kind = TSIDE_DIMENSION_ALONG, .x = 0.8, .y = 1, .x_end = 1.2, .y_end = 1, .text_width = 0.2};
        OPEN_ROOM(&r, large, scale);
        r.sketch.outboard = 1;
        tside_i_room_keep_text(&r.room, &over);
        tside_i_place_dimension(&r.room, &d, (tside_i_beside)beside);
        NEAR(d.from_y, 1 - way * FIRST * scale, 1e-12, "on the other side", beside);
        NEAR(d.from_y, d.to_y, 1e-12, "level", beside);
        ck_assert_int_eq(d.leader, 0);
    }
}
END_TEST

/* Where a stroke is in the way of its text in the first rank there too, it is in the next, at any scale. */
START_TEST(on_the_other_side_ranks_are_as_far_apart)
{
    for (int i = 0; i < 4; i++) {
        const double scale = i < 2 ? 1 : 20;
        const int way = i % 2 ? 1 : -1;
        const double m = scale / 20, in_the_way = way > 0 ? 0.94 * m : 1.19 * m; /* where the text would stand */
        const tside_i_line lines[] = {
            {0, 0, 2 * m, 0}, {0, 2 * m, 2 * m, 2 * m}, {0.8 * m, in_the_way, 1.2 * m, in_the_way}};
        const tside_i_box over = tside_i_box_of(m, m + way * 0.1 * m, 1, 0, 0.4 * m, 0.06 * m);
        tside_dimension d = {
            .kind = TSIDE_DIMENSION_ALONG, .x = 0.8 * m, .y = m, .x_end = 1.2 * m, .y_end = m, .text_width = 0.2 * m};
        OPEN_ROOM(&r, lines, scale);
        r.sketch.outboard = 1;
        tside_i_room_keep_text(&r.room, &over);
        tside_i_place_dimension(&r.room, &d, way > 0 ? TSIDE_I_ABOVE : TSIDE_I_BELOW);
        NEAR(d.from_y, m - way * (FIRST + STEP) * scale, 1e-12, "in the second rank", i);
        NEAR(d.from_y, d.to_y, 1e-12, "level", i);
        ck_assert_int_eq(d.leader, 0);
    }
}
END_TEST

/* Where strokes are all about a line, its text is beyond them, by a leader from the middle of the line. */
START_TEST(a_leader_to_a_text_begins_in_the_middle_of_its_line)
{
    for (int i = 0; i < 12; i++) {
        const double angle = (30 * i + 3) * PI / 180, x = 0.05 + 0.02 * cos(angle), y = 0.05 + 0.02 * sin(angle);
        tside_i_line lines[26];
        tside_dimension d = {
            .kind = TSIDE_DIMENSION_ALONG, .x = 0.05, .y = 0.05, .x_end = x, .y_end = y, .text_width = 0.01};
        const tside_i_line *leader = r.room.leaders;
        for (int k = 0; k < 26; k++)
            lines[k] = (tside_i_line){4e-3 * k, 0, 4e-3 * k, 0.1};
        OPEN_ROOM(&r, lines, 1);
        r.sketch.outboard = 1;
        tside_i_place_dimension(&r.room, &d, TSIDE_I_ABOVE);
        ck_assert_int_eq(d.leader, 1);
        ck_assert_int_eq(r.room.leader_count, 1);
        NEAR(hypot(d.to_x - d.from_x, d.to_y - d.from_y), 0.02, 1e-12, "it has a line", i);
        NEAR(leader->x, (d.from_x + d.to_x) / 2, 1e-12, "from its middle", i);
        NEAR(leader->y, (d.from_y + d.to_y) / 2, 1e-12, "from its middle", i);
        ck_assert(leader->x_end == d.leader_x && leader->y_end == d.leader_y);
        ck_assert(d.text_y > 0.1 || d.text_y < 0 || fabs(d.text_x - 0.05) > 0.05);
    }
}
END_TEST

/* Straight up and straight down are read from the right alike; of no length, a measure has arrows from outside. */
START_TEST(what_is_plumb_or_of_no_length_has_its_line)
{
    for (int i = 0; i < 2; i++) {
        tside_dimension d = {.kind = TSIDE_DIMENSION_ALONG,
                             .x = 0.05,
                             .y = i ? 0.07 : 0.03,
                             .x_end = 0.05,
                             .y_end = i ? 0.03 : 0.07,
                             .text_width = 0.01};
        tside_dimension none = {
            .kind = TSIDE_DIMENSION_ALONG, .x = 0.05, .y = 0.05, .x_end = 0.05, .y_end = 0.05, .text_width = 0.01};
        OPEN_ROOM(&r, square, 1);
        r.sketch.outboard = 1;
        tside_i_place_dimension(&r.room, &d, TSIDE_I_OUTBOARD);
        NEAR(d.from_x, 0.05 + FIRST, 1e-12, "outboard", i);
        NEAR(d.text_angle, PI / 2, 1e-12, "read from the right", i);
        NEAR(d.from_x - d.text_x, OVER, 1e-12, "over its line", i);
        OPEN_ROOM(&r, square, 1);
        r.sketch.outboard = 1;
        tside_i_place_dimension(&r.room, &none, i ? TSIDE_I_BELOW : TSIDE_I_ABOVE);
        ck_assert_int_eq(none.arrows_outside, 1);
        NEAR(none.from_y, 0.05 + (i ? -FIRST : FIRST), 1e-12, "level", i);
        NEAR(none.text_angle, 0, 1e-12, "level", i);
    }
}
END_TEST

/* Texts all over what is measured close every line: the measure is told at its point. */
START_TEST(a_dimension_that_finds_no_line_is_told_at_its_point)
{
    static const tside_dimension_kind kinds[] = {TSIDE_DIMENSION_LEVEL, TSIDE_DIMENSION_PLUMB, TSIDE_DIMENSION_ALONG};
    static const tside_i_line lines[] = {{0, 0, 0.1, 0.1}, {0.01, 0, 0.1, 0.09}};
    for (int i = 0; i < 3; i++) {
        const tside_i_box over = tside_i_box_of(0.05, 0.05, 1, 0, 0.045, 0.045);
        tside_dimension d = {.kind = kinds[i], .x = 0.02, .y = 0.03, .x_end = 0.08, .y_end = 0.07, .text_width = 0.01};
        OPEN_ROOM(&r, lines, 1);
        tside_i_room_keep_text(&r.room, &over);
        r.drawing.dimension_count = 1;
        tside_i_place_dimension(&r.room, &d, TSIDE_I_ABOVE);
        ck_assert(d.from_x == d.x && d.from_y == d.y && d.to_x == d.x && d.to_y == d.y);
        ck_assert_int_eq(d.leader, 1);
        ck_assert_int_eq(r.room.leader_count, 1);
    }
}
END_TEST

Suite *rank_suite(void)
{
    Suite *suite = suite_create("rank");
    TCase *tests = tcase_create("rank");
    tcase_add_test(tests, what_is_outside_all_has_its_line_in_the_first_rank);
    tcase_add_test(tests, a_leading_line_keeps_off_its_point);
    tcase_add_test(tests, lines_over_each_other_stand_in_ranks);
    tcase_add_test(tests, lines_beside_each_other_share_a_rank);
    tcase_add_test(tests, a_text_beside_its_line_is_towards_the_middle);
    tcase_add_test(tests, texts_keep_off_lines_that_are_still_to_come);
    tcase_add_test(tests, what_is_beside_what_it_measures_is_parallel_to_it);
    tcase_add_test(tests, what_has_no_place_on_its_side_stands_on_the_other);
    tcase_add_test(tests, on_the_other_side_ranks_are_as_far_apart);
    tcase_add_test(tests, a_leader_to_a_text_begins_in_the_middle_of_its_line);
    tcase_add_test(tests, what_is_plumb_or_of_no_length_has_its_line);
    tcase_add_test(tests, a_dimension_that_finds_no_line_is_told_at_its_point);
    suite_add_tcase(suite, tests);
    return suite;
}
