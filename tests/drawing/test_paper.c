/* SPDX-License-Identifier: MIT */
/* Paper in cells, beside each cell looked at by itself: where a shape's and a cell's shadows on every edge's normal
 * overlap. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "drawing/paper.h"

#include "expect.h"
#include "rooms.h"

Suite *paper_suite(void);

enum { COLUMNS = TSIDE_I_PAPER_COLUMNS, ROWS = TSIDE_I_PAPER_ROWS, PARTS = TSIDE_I_PAPER_PARTS };

#define AROUND 60e-3 /* m on paper */
#define TEXT 5.4e-3  /* m on paper, high */

/* What is on a paper: the paper itself, and its cells as they are found here. */
typedef struct sheet {
    tside_i_sketch sketch;
    tside_i_paper paper;
    char met[ROWS][COLUMNS];
} sheet;

static double across(const sheet *s, double x)
{
    return (x - s->paper.left) * s->paper.across;
}

static double up(const sheet *s, double y)
{
    return (y - s->paper.bottom) * s->paper.up;
}

/* By how much, m, a cell and a box overlap; less than nought: how far they are apart along some normal. */
static double overlap(const sheet *s, const tside_i_box *b, int column, int row)
{
    const double half_x = 0.5 / s->paper.across, half_y = 0.5 / s->paper.up,
                 dx = s->paper.left + (column + 0.5) / s->paper.across - b->x,
                 dy = s->paper.bottom + (row + 0.5) / s->paper.up - b->y,
                 shadows[] = {b->wide + half_x - fabs(dx), b->high + half_y - fabs(dy),
                              b->half_width + half_x * fabs(b->cosine) + half_y * fabs(b->sine) -
                                  fabs(dx * b->cosine + dy * b->sine),
                              b->half_height + half_x * fabs(b->sine) + half_y * fabs(b->cosine) -
                                  fabs(dy * b->cosine - dx * b->sine)};
    return fmin(fmin(shadows[0], shadows[1]), fmin(shadows[2], shadows[3]));
}

/* A line is a box of no height. */
static tside_i_box box_of_line(const tside_i_line *l)
{
    const double dx = l->x_end - l->x, dy = l->y_end - l->y, length = hypot(dx, dy);
    return tside_i_box_of((l->x + l->x_end) / 2, (l->y + l->y_end) / 2, length > 0 ? dx / length : 1,
                          length > 0 ? dy / length : 0, length / 2, 0);
}

static void meet(sheet *s, const tside_i_box *b)
{
    for (int row = 0; row < ROWS; row++)
        for (int column = 0; column < COLUMNS; column++)
            s->met[row][column] |= overlap(s, b, column, row) > 0;
}

/* A drawing so wide and high, m, about nought. */
static void lay(sheet *s, double scale, double wide, double high)
{
    memset(s, 0, sizeof *s);
    s->sketch.picture.scale = scale;
    s->sketch.left = -wide / 2;
    s->sketch.right = wide / 2;
    s->sketch.bottom = -high / 2;
    s->sketch.top = high / 2;
    tside_i_paper_begin(&s->paper, &s->sketch, AROUND * scale);
}

/* Of small drawings, where a cell is a millimetre, and of large, at any scale. */
static void lay_any(sheet *s, dice *d)
{
    static const double scales[] = {1, 20, 200};
    const double scale = scales[dice_below(d, 3)], size = dice_below(d, 2) ? 0.1 : 0.4;
    lay(s, scale, dice_between(d, 0.2, 1) * size * scale, dice_between(d, 0.2, 1) * size * scale);
}

/* A cell is told as taken where it, or one of so many from it upwards, is met. */
static void check_cells(const sheet *s, const char *what, int number)
{
    int wrong = 0, column_wrong = 0, row_wrong = 0;
    for (int row = 0; row < ROWS; row++)
        for (int column = 0; column < COLUMNS; column++) {
            int met = 0;
            for (int above = row; above < ROWS && above < row + (int)s->paper.covered; above++)
                met = met || s->met[above][column];
            if (is_cell_taken(&s->paper, column, row) != met)
                wrong++, column_wrong = column, row_wrong = row;
        }
    ck_assert_msg(wrong == 0, "%s %d: %d cells, as %d of row %d", what, number, wrong, column_wrong, row_wrong);
}

static double within(dice *d, double half)
{
    return dice_between(d, -half, half);
}

static tside_i_box upright(const sheet *s, dice *d)
{
    const double scale = s->sketch.picture.scale;
    const int plumb = dice_below(d, 2);
    return tside_i_box_of(within(d, s->sketch.right), within(d, s->sketch.top), !plumb, plumb,
                          dice_between(d, 2, 20) * 1e-3 * scale, TEXT / 2 * scale);
}

/* From anywhere in the drawing to anywhere in it; some level, plumb, or of no length. */
static tside_i_line line(const sheet *s, dice *d)
{
    tside_i_line l = {within(d, s->sketch.right), within(d, s->sketch.top), within(d, s->sketch.right),
                      within(d, s->sketch.top)};
    const int kind = dice_below(d, 6);
    if (kind == 0 || kind == 2)
        l.x_end = l.x;
    if (kind == 1 || kind == 2)
        l.y_end = l.y;
    return l;
}

static void put_line(sheet *s, const tside_i_line *l)
{
    const tside_i_box b = box_of_line(l);
    tside_i_paper_take_line(&s->paper, l);
    meet(s, &b);
}

static void put_box(sheet *s, const tside_i_box *b)
{
    tside_i_paper_take_box(&s->paper, b);
    meet(s, b);
}

/* Those of the whole drawing. */
static void put_edges(sheet *s)
{
    const tside_i_sketch *k = &s->sketch;
    const tside_i_line edges[] = {{k->left, k->bottom, k->right, k->bottom},
                                  {k->right, k->bottom, k->right, k->top},
                                  {k->right, k->top, k->left, k->top},
                                  {k->left, k->top, k->left, k->bottom}};
    for (int i = 0; i < 4; i++)
        put_line(s, edges + i);
}

/* The cells of an arc, each of them or one beside it met by many small chords: they stray by less than a cell. */
static void check_arc(sheet *s, const tside_stroke *arc, int number)
{
    enum { CHORDS = 2000 };
    int missed = 0, taken = 0;
    tside_i_paper_take_stroke(&s->paper, arc);
    for (int i = 0; i < CHORDS; i++) {
        const double at = arc->from + arc->sweep * i / CHORDS;
        const int column = (int)across(s, arc->x + arc->radius * cos(at)),
                  row = (int)up(s, arc->y + arc->radius * sin(at));
        int near = 0;
        for (int c = column - 1; c <= column + 1; c++)
            for (int r = row - 1; r <= row + 1; r++)
                near = near || is_cell_taken(&s->paper, c, r);
        missed += !near;
        for (int c = column - 1; c <= column + 1; c++)
            for (int r = row - 1; r <= row + 1; r++)
                s->met[r][c] = 1;
    }
    for (int row = 0; row < ROWS; row++)
        for (int column = 0; column < COLUMNS; column++)
            taken += is_cell_taken(&s->paper, column, row) && !s->met[row][column];
    ck_assert_msg(missed == 0 && taken == 0, "arc %d misses %d places and takes %d cells", number, missed, taken);
}

START_TEST(lines_and_boxes_take_the_cells_that_they_meet)
{
    static sheet s;
    dice d = {11};
    for (int number = 0; number < 12; number++) {
        lay_any(&s, &d);
        for (int i = 0; i < 6; i++) {
            const tside_i_line l = line(&s, &d);
            put_line(&s, &l);
            check_cells(&s, "lines", number);
        }
        put_edges(&s);
        check_cells(&s, "edges", number);
        tside_i_paper_for_texts(&s.paper, &s.sketch, TEXT * s.sketch.picture.scale);
        ck_assert_uint_gt(s.paper.covered, 1);
        check_cells(&s, "lines, for texts", number);
        for (int i = 0; i < 3; i++) {
            const tside_i_line l = line(&s, &d);
            const tside_i_box b = upright(&s, &d);
            put_line(&s, &l);
            put_box(&s, &b);
            check_cells(&s, "lines and boxes", number);
        }
    }
}
END_TEST

START_TEST(arcs_are_taken_cell_by_cell)
{
    static sheet s;
    dice d = {12};
    for (int number = 0; number < 40; number++) {
        tside_stroke arc = {.arc = 1, .from = dice_between(&d, -3, 3), .sweep = dice_between(&d, 0.01, 2 * PI)};
        lay_any(&s, &d);
        arc.radius = fmin(s.sketch.right, s.sketch.top) * dice_between(&d, 0.01, 1);
        check_arc(&s, &arc, number);
    }
}
END_TEST

/* A box at an angle takes all that it meets, and nothing that is farther from it than half its height and a cell. */
START_TEST(slanted_boxes_take_what_they_meet_and_little_more)
{
    static sheet s;
    dice d = {13};
    for (int number = 0; number < 40; number++) {
        tside_i_box b, more;
        const double angle = within(&d, PI);
        double beyond;
        int missed = 0, far = 0;
        lay_any(&s, &d);
        b = tside_i_box_of(0, 0, cos(angle), sin(angle), dice_between(&d, 3, 20) * 1e-3 * s.sketch.picture.scale,
                           TEXT / 2 * s.sketch.picture.scale);
        beyond = b.half_height + fmax(1 / s.paper.across, 1 / s.paper.up);
        more = tside_i_box_of(0, 0, b.cosine, b.sine, b.half_width + beyond, b.half_height + beyond);
        tside_i_paper_take_box(&s.paper, &b);
        for (int row = 0; row < ROWS; row++)
            for (int column = 0; column < COLUMNS; column++) {
                const int taken = is_cell_taken(&s.paper, column, row);
                missed += !taken && overlap(&s, &b, column, row) >= 0;
                far += taken && overlap(&s, &more, column, row) <= 0;
            }
        ck_assert_msg(missed == 0 && far == 0, "box %d misses %d cells and takes %d far ones", number, missed, far);
        ck_assert(!tside_i_paper_has_room(&s.paper, &b));
    }
}
END_TEST

/* --- room --- */

/* Whether no cell that a box meets is met by what is there. */
static int is_clear(const sheet *s, const tside_i_box *b)
{
    for (int row = 0; row < ROWS; row++)
        for (int column = 0; column < COLUMNS; column++)
            if (s->met[row][column] && overlap(s, b, column, row) > 0)
                return 0;
    return 1;
}

static void put_some(sheet *s, dice *d)
{
    lay_any(s, d);
    for (int i = 0; i < 5; i++) {
        const tside_i_line l = line(s, d);
        put_line(s, &l);
    }
    tside_i_paper_for_texts(&s->paper, &s->sketch, TEXT * s->sketch.picture.scale);
}

START_TEST(a_box_has_room_where_it_meets_no_cell_that_is_met)
{
    static sheet s;
    dice d = {14};
    int free = 0;
    for (int number = 0; number < 200; number++) {
        tside_i_box b;
        int clear;
        if (number % 10 == 0)
            put_some(&s, &d);
        b = upright(&s, &d);
        b.x *= 1.3;
        b.y *= 1.3;
        clear = is_clear(&s, &b);
        ck_assert_msg(tside_i_paper_has_room(&s.paper, &b) == clear, "box %d: %d", number, clear);
        free += clear;
    }
    ck_assert_int_gt(free, 20);
    ck_assert_int_lt(free, 180);
}
END_TEST

/* Each of a text's places looked at by all of its cells. */
static int steps_one_by_one(const sheet *s, const tside_i_mover *m, int most)
{
    for (int steps = 0; steps < most; steps++) {
        const int left = m->left + steps * m->step_x, bottom = m->bottom + steps * m->step_y;
        int free = left >= 0 && bottom >= 0 && left / PARTS + m->wide <= COLUMNS && bottom / PARTS + m->high <= ROWS;
        for (int row = 0; row < (int)s->paper.covered && free; row++)
            for (int column = 0; column < m->wide && free; column++)
                free = !s->met[bottom / PARTS + row][left / PARTS + column];
        if (free)
            return steps;
    }
    return most;
}

START_TEST(a_text_goes_on_to_the_first_place_that_is_free)
{
    static sheet s;
    dice d = {15};
    int found = 0, none = 0, wrong = 0;
    for (int number = 0; number < 20000; number++) {
        tside_i_mover from, m;
        int most, want, got;
        double x, y;
        if (number % 500 == 0)
            put_some(&s, &d);
        m = (tside_i_mover){.wide = 1 + dice_below(&d, 140),
                            .high = (int)s.paper.covered,
                            .left = (dice_below(&d, COLUMNS + 80) - 40) * PARTS + dice_below(&d, PARTS),
                            .bottom = (dice_below(&d, ROWS + 60) - 30) * PARTS + dice_below(&d, PARTS),
                            .step_x = number % 7 ? dice_below(&d, 12 * PARTS) - 6 * PARTS : 0,
                            .step_y = number % 11 ? dice_below(&d, 12 * PARTS) - 6 * PARTS : 0};
        from = m;
        most = dice_below(&d, 41);
        want = steps_one_by_one(&s, &m, most);
        got = tside_i_paper_steps_to_room(&s.paper, &m, most);
        tside_i_paper_middle(&s.paper, &m, &x, &y);
        wrong += got != want || (got < most && (m.left != from.left + got * from.step_x ||
                                                m.bottom != from.bottom + got * from.step_y ||
                                                !(fabs(across(&s, x) - m.left / PARTS - m.wide / 2.) < 1e-9) ||
                                                !(fabs(up(&s, y) - m.bottom / PARTS - m.high / 2.) < 1e-9)));
        found += got < most;
        none += got == most;
    }
    ck_assert_int_eq(wrong, 0);
    ck_assert_int_gt(found, 2000);
    ck_assert_int_gt(none, 2000);
}
END_TEST

/* About its foot's middle, at any angle: so far above it and below it, and beside its ends. */
START_TEST(a_text_has_room_all_about_it)
{
    static ruled r;
    static const tside_i_line lines[] = {{0, 0, 1, 0}, {0, 1, 1, 1}};
    for (int i = 0; i < 24; i++) {
        const double scale = i % 2 ? 20 : 1, angle = i * PI / 12, width = 0.03 * scale, x = 0.3, y = 0.7;
        const tside_i_box *b;
        tside_i_box box;
        OPEN_ROOM(&r, lines, scale);
        box = tside_i_text_box(&r.room, x, y, cos(angle), sin(angle), width);
        b = &box;
        for (int corner = 0; corner < 4; corner++) {
            const double along = (corner % 2 ? 1 : -1) * (width / 2 + TSIDE_I_BESIDE * scale),
                         over = (corner / 2 ? TSIDE_I_ASCENT : -TSIDE_I_DESCENT) * scale,
                         half_along = corner % 2 ? b->half_width : -b->half_width,
                         half_over = corner / 2 ? b->half_height : -b->half_height;
            NEAR(b->x + half_along * b->cosine - half_over * b->sine, x + along * cos(angle) - over * sin(angle), 1e-12,
                 "corner across", i);
            NEAR(b->y + half_along * b->sine + half_over * b->cosine, y + along * sin(angle) + over * cos(angle), 1e-12,
                 "corner up", i);
        }
    }
}
END_TEST

/* --- off the paper --- */

START_TEST(what_is_not_wholly_on_the_paper_has_no_room_and_takes_nothing)
{
    static sheet s;
    static const struct {
        double x, y;
    } ways[] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}};
    lay(&s, 1, 0.1, 0.05);
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        const double wide = COLUMNS / s.paper.across, high = ROWS / s.paper.up, x = s.paper.left + wide / 2,
                     y = s.paper.bottom + high / 2;
        const tside_i_box within = tside_i_box_of(x + 0.4 * wide * ways[i].x, y + 0.4 * high * ways[i].y, 1, 0,
                                                  0.05 * wide, 0.05 * high),
                          edge = tside_i_box_of(x + 0.48 * wide * ways[i].x, y + 0.48 * high * ways[i].y, 1, 0,
                                                0.05 * wide, 0.05 * high);
        const tside_i_line out = {x, y, x + 0.6 * wide * ways[i].x, y + 0.6 * high * ways[i].y},
                           slanted = {x + 1e-3, y - 2e-3, out.x_end, out.y_end},
                           back = {out.x_end, out.y_end, x + 1e-3, y - 2e-3};
        ck_assert(tside_i_paper_has_room(&s.paper, &within));
        ck_assert(!tside_i_paper_has_room(&s.paper, &edge));
        tside_i_paper_take_box(&s.paper, &edge);
        tside_i_paper_take_line(&s.paper, &out);
        tside_i_paper_take_line(&s.paper, &slanted);
        tside_i_paper_take_line(&s.paper, &back);
        check_cells(&s, "off the paper", (int)i);
    }
}
END_TEST

START_TEST(what_is_larger_than_the_paper_has_no_room)
{
    static sheet s;
    tside_i_mover wide = {.wide = COLUMNS + 1, .high = 5, .step_x = PARTS}, high = {.wide = 5, .high = ROWS + 1},
                  whole = {.wide = COLUMNS, .high = ROWS};
    lay(&s, 1, 0.1, 0.05);
    ck_assert_int_eq(tside_i_paper_steps_to_room(&s.paper, &wide, 9), 9);
    ck_assert_int_eq(tside_i_paper_steps_to_room(&s.paper, &high, 9), 9);
    ck_assert_int_eq(tside_i_paper_steps_to_room(&s.paper, &whole, 9), 0);
    for (int i = 0; i < 4; i++) { /* along each edge, from off the paper onto it */
        tside_i_mover along = {.wide = 5,
                               .high = 5,
                               .left = i == 0   ? 0
                                       : i == 1 ? (COLUMNS - 5) * PARTS
                                       : i == 2 ? -3 * PARTS
                                                : COLUMNS * PARTS,
                               .bottom = i == 2   ? 0
                                         : i == 3 ? (ROWS - 5) * PARTS
                                         : i == 0 ? -3 * PARTS
                                                  : ROWS * PARTS,
                               .step_x = i == 2   ? PARTS
                                         : i == 3 ? -PARTS
                                                  : 0,
                               .step_y = i == 0   ? PARTS
                                         : i == 1 ? -PARTS
                                                  : 0};
        ck_assert_int_eq(tside_i_paper_steps_to_room(&s.paper, &along, 9), i % 2 ? 5 : 3);
    }
    ck_assert_int_eq(tside_i_paper_parts(1e300), tside_i_paper_parts(1 << 12));
    ck_assert_int_eq(tside_i_paper_parts(-1e300), -tside_i_paper_parts(1 << 12));
    ck_assert_int_eq(tside_i_paper_parts(-2.5), -5 * PARTS / 2);
    ck_assert_int_gt(tside_i_paper_cells(1e300), COLUMNS);
    ck_assert_int_eq(tside_i_paper_cells(2.001), 3);
}
END_TEST

Suite *paper_suite(void)
{
    Suite *suite = suite_create("paper");
    TCase *tests = tcase_create("paper");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, lines_and_boxes_take_the_cells_that_they_meet);
    tcase_add_test(tests, arcs_are_taken_cell_by_cell);
    tcase_add_test(tests, slanted_boxes_take_what_they_meet_and_little_more);
    tcase_add_test(tests, a_box_has_room_where_it_meets_no_cell_that_is_met);
    tcase_add_test(tests, a_text_goes_on_to_the_first_place_that_is_free);
    tcase_add_test(tests, a_text_has_room_all_about_it);
    tcase_add_test(tests, what_is_not_wholly_on_the_paper_has_no_room_and_takes_nothing);
    tcase_add_test(tests, what_is_larger_than_the_paper_has_no_room);
    suite_add_tcase(suite, tests);
    return suite;
}
