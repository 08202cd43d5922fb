/* SPDX-License-Identifier: MIT */
/* Texts with leaders in rooms that are built for it: crossings are told by points
 * along a leader. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "drawing/leader.h"

#include "expect.h"
#include "rooms.h"

Suite *leader_suite(void);

#define NEAREST 7e-3 /* m on paper, the shortest leader */
#define STEP 6e-3    /* from one that is tried to the next */
#define CELL 1e-3
#define FOOT 1.5e-3 /* from a text's foot to the middle of its height */

static ruled r;

static double wide(double width)
{
    return width / 2 + TSIDE_I_BESIDE;
}

#define HIGH ((TSIDE_I_ASCENT + TSIDE_I_DESCENT) / 2)

/* A leader begins at its point and ends in the middle of an edge of its text. */
static void check_ends(const tside_i_led *made, double x, double y, double width, const char *what, int number)
{
    const double dx = fabs(made->leader.x_end - made->text_x), dy = fabs(made->leader.y_end - made->text_y - FOOT);
    ck_assert_double_eq(made->leader.x, x);
    ck_assert_double_eq(made->leader.y, y);
    NEAR(fmin(hypot(dx - wide(width), dy), hypot(dx, dy - HIGH)), 0, 1e-12, what, number);
}

static double length_of(const tside_i_line *l)
{
    return hypot(l->x_end - l->x, l->y_end - l->y);
}

START_TEST(where_nothing_is_in_the_way_a_leader_is_as_short_as_may_be)
{
    tside_i_led made;
    static const tside_i_line lines[] = {{0, 0, 0.1, 0}, {0.1, 0, 0.1, 0.1}, {0.1, 0.1, 0, 0.1}, {0, 0.1, 0, 0}};
    for (int i = 0; i < 20; i++) {
        const double x = 0.03 + 0.002 * i, y = 0.05, width = 5e-3 + 1e-4 * i;
        OPEN_ROOM(&r, lines, 1);
        ck_assert(tside_i_lead(&r.room, x, y, width, &made));
        check_ends(&made, x, y, width, "in the open", i);
        ck_assert_double_gt(length_of(&made.leader), NEAREST - 2 * CELL);
        ck_assert_double_lt(length_of(&made.leader), NEAREST + 2 * CELL);
        ck_assert(r.drawing.left == 0 && r.drawing.bottom == 0);
        NEAR(r.drawing.right, 0.1, 1e-12, "does not grow", i);
        NEAR(r.drawing.top, 0.1, 1e-12, "does not grow", i);
        ck_assert_int_eq(r.room.text_count, 1);
        ck_assert_int_eq(r.room.leader_count, 1);
    }
}
END_TEST

/* Where a cell is larger than the shortest leader, a text is some cells beyond its point all the same. */
START_TEST(in_a_large_drawing_a_leader_goes_on_for_some_cells)
{
    static const tside_i_line lines[] = {{0, 0, 300, 0}, {300, 0, 300, 200}, {300, 200, 0, 200}, {0, 200, 0, 0}};
    double least = HUGE_VAL, most = 0;
    for (int i = 0; i < 200; i++) {
        const double x = 100 + 0.37 * i, y = 100 + 0.1 * i, width = 1;
        const tside_i_paper *p = &r.room.paper;
        tside_i_led made;
        double cells;
        OPEN_ROOM(&r, lines, 1);
        ck_assert_double_lt(p->across, 2);
        ck_assert(tside_i_lead(&r.room, x, y, width, &made));
        cells = hypot((made.leader.x_end - x) * p->across, (made.leader.y_end - y) * p->up);
        least = fmin(least, cells);
        most = fmax(most, cells);
    }
    ck_assert_double_gt(least, 3 - 1.5);
    ck_assert_double_lt(most, 3 + 1.5);
}
END_TEST

/* What is told at a place is in the way of other texts before it has its own. */
START_TEST(places_that_are_still_to_be_told_are_kept_free)
{
    static const tside_i_line lines[] = {{0, 0, 0.1, 0}, {0, 0.1, 0.1, 0.1}};
    static const tside_dimension_kind kinds[] = {TSIDE_DIMENSION_ANGLE,    TSIDE_DIMENSION_RADIUS,
                                                 TSIDE_DIMENSION_DIAMETER, TSIDE_DIMENSION_LEVEL,
                                                 TSIDE_DIMENSION_ARC,      TSIDE_DIMENSION_PLACE};
    ruled_lines = lines;
    ruled_count = 2;
    sketch_view(&r, rule_again, 1);
    for (int i = 0; i < 6; i++)
        r.drawing.dimensions[i] = (tside_dimension){.kind = kinds[i], .x = 0.01 + 0.015 * i, .y = 0.05};
    r.drawing.dimension_count = 6;
    r.drawing.notes[0] = (tside_note){.x = 0.05, .y = 0.08};
    r.drawing.notes[1] = (tside_note){.x = 0.06, .y = 0.08};
    r.drawing.note_count = 2;
    tside_i_room_begin(&r.room, &r.sketch);
    for (int i = 0; i < 6; i++)
        ck_assert_int_eq(is_taken(&r.room.paper, 0.01 + 0.015 * i, 0.05), i < 3 || i == 5);
    for (int i = 0; i < 6; i++)
        ck_assert_int_eq(r.room.pending[i], i == 3);
    ck_assert(is_taken(&r.room.paper, 0.05, 0.08) && is_taken(&r.room.paper, 0.06, 0.08));
}
END_TEST

/* A long drawing grows where it is short: a text is above its end, or below, and not beyond it. */
START_TEST(a_long_drawing_does_not_grow_longer)
{
    tside_i_led made;
    static const tside_i_line lines[] = {
        {0, 0, 0.19, 0}, {0, 0.004, 0.19, 0.004}, {0, 0, 0, 0.004}, {0.19, 0, 0.19, 0.004}};
    for (int i = 0; i < 10; i++) {
        OPEN_ROOM(&r, lines, 1);
        ck_assert(tside_i_lead(&r.room, 1e-3 * i, 0.002, 0.02, &made));
        check_ends(&made, 1e-3 * i, 0.002, 0.02, "at the end", i);
        ck_assert_double_gt(r.drawing.left, -1e-3);
        NEAR(r.drawing.right, 0.19, 1e-12, "does not grow longer", i);
    }
}
END_TEST

static int do_cross(const tside_i_line *a, const tside_i_line *b)
{
    const double ax = a->x_end - a->x, ay = a->y_end - a->y, bx = b->x_end - b->x, by = b->y_end - b->y,
                 across = ax * by - ay * bx, along = ((b->x - a->x) * by - (b->y - a->y) * bx) / across,
                 other = ((b->x - a->x) * ay - (b->y - a->y) * ax) / across;
    return across != 0 && along > 0 && along < 1 && other > 0 && other < 1;
}

/* Two leaders that begin at one point do not cross, and so the second still keeps off another across its way. */
START_TEST(leaders_from_one_point_cross_no_other)
{
    static const tside_i_line lines[] = {{0, 0, 0.1, 0}, {0.1, 0, 0.1, 0.1}, {0.1, 0.1, 0, 0.1}, {0, 0.1, 0, 0}};
    tside_i_line across = {0};
    for (int barred = 0; barred < 2; barred++) {
        tside_i_led made;
        const tside_i_line *l = &made.leader;
        OPEN_ROOM(&r, lines, 1);
        if (barred)
            tside_i_room_keep_leader(&r.room, &across);
        for (int i = 0; i < 2; i++)
            ck_assert(tside_i_lead(&r.room, 0.05, 0.05, 0.01, &made));
        if (barred)
            ck_assert(!do_cross(l, &across));
        else /* square to the second, through its middle */
            across = (tside_i_line){
                (l->x + l->x_end) / 2 + (l->y_end - l->y) / 9, (l->y + l->y_end) / 2 - (l->x_end - l->x) / 9,
                (l->x + l->x_end) / 2 - (l->y_end - l->y) / 9, (l->y + l->y_end) / 2 + (l->x_end - l->x) / 9};
    }
}
END_TEST

/* A line crosses a text where it goes through its box, which may lie at any angle, and not where it passes it. */
START_TEST(what_crosses_a_text_goes_through_it)
{
    static const tside_i_line lines[] = {{0, 0, 0.1, 0}, {0, 0.1, 0.1, 0.1}};
    dice d = {22};
    int through = 0, past = 0;
    for (int number = 0; number < 400; number++) {
        const int quarter = dice_below(&d, 4);
        const double angle = dice_between(&d, -PI, PI),
                     cosine = quarter == 0   ? 0
                              : quarter == 1 ? 1
                                             : cos(angle),
                     sine = quarter == 0   ? 1
                            : quarter == 1 ? 0
                                           : sin(angle);
        const tside_i_box box = tside_i_box_of(0.05, 0.05, cosine, sine, dice_between(&d, 5e-3, 20e-3), HIGH),
                          more = tside_i_box_of(0.05, 0.05, cosine, sine, box.half_width + 1e-4, HIGH + 1e-4);
        tside_i_line l = {dice_between(&d, 0, 0.1), dice_between(&d, 0, 0.1), dice_between(&d, 0, 0.1),
                          dice_between(&d, 0, 0.1)};
        const int kind = dice_below(&d, 4);
        if (kind == 0)
            l.x_end = l.x;
        if (kind == 1)
            l.y_end = l.y;
        OPEN_ROOM(&r, lines, 1);
        tside_i_room_keep_text(&r.room, &box);
        if (goes_through(&l, &box)) {
            ck_assert_msg(tside_i_crosses_text(&r.room, &l), "line %d goes through, and is not told", number);
            through++;
        } else if (!goes_through(&l, &more)) {
            ck_assert_msg(!tside_i_crosses_text(&r.room, &l), "line %d passes, and is told", number);
            past++;
        }
    }
    ck_assert_int_gt(through, 50);
    ck_assert_int_gt(past, 50);
}
END_TEST

/* Among lines thrown, texts find places off each other, off lines, and off leaders, which cross no text. */
START_TEST(leaders_keep_off_texts_and_each_other)
{
    enum { TEXTS = 10, LINES = 6 };
    tside_i_line lines[LINES];
    dice d = {21};
    int crossed = 0, placed = 0;
    for (int number = 0; number < 150; number++) {
        tside_i_led made[TEXTS];
        tside_i_box boxes[TEXTS];
        int count = 0;
        for (int i = 0; i < LINES; i++) {
            lines[i].x = dice_between(&d, 0, 0.12);
            lines[i].y = dice_between(&d, 0, 0.08);
            lines[i].x_end = dice_between(&d, 0, 0.12);
            lines[i].y_end = dice_between(&d, 0, 0.08);
        }
        OPEN_ROOM(&r, lines, 1);
        for (int i = 0; i < TEXTS; i++) {
            const int on = dice_below(&d, LINES);
            const double part = dice_between(&d, 0, 1), width = dice_between(&d, 5e-3, 30e-3),
                         x = lines[on].x + part * (lines[on].x_end - lines[on].x),
                         y = lines[on].y + part * (lines[on].y_end - lines[on].y);
            tside_i_led *m = made + count;
            if (!tside_i_lead(&r.room, x, y, width, m))
                continue;
            check_ends(m, x, y, width, "thrown", number);
            boxes[count] = tside_i_box_of(m->text_x, m->text_y + FOOT, 1, 0, wide(width), HIGH);
            for (int k = 0; k < count; k++) {
                ck_assert_msg(fabs(boxes[k].x - boxes[count].x) >= boxes[k].wide + boxes[count].wide ||
                                  fabs(boxes[k].y - boxes[count].y) >= boxes[k].high + boxes[count].high,
                              "%d: texts %d and %d meet", number, k, count);
                ck_assert_msg(!goes_through(&m->leader, boxes + k), "%d: leader %d crosses text %d", number, count, k);
                ck_assert_msg(!goes_through(&made[k].leader, boxes + count), "%d: text %d is on leader %d", number,
                              count, k);
                crossed += do_cross(&m->leader, &made[k].leader);
            }
            for (int k = 0; k < LINES; k++)
                ck_assert_msg(!goes_through(lines + k, boxes + count), "%d: text %d is on line %d", number, count, k);
            ck_assert(r.drawing.left <= boxes[count].x - boxes[count].wide + 1e-12 &&
                      r.drawing.right >= boxes[count].x + boxes[count].wide - 1e-12 &&
                      r.drawing.bottom <= boxes[count].y - boxes[count].high + 1e-12 &&
                      r.drawing.top >= boxes[count].y + boxes[count].high - 1e-12);
            count++;
        }
        placed += count;
    }
    ck_assert_int_gt(placed, 1400);
    ck_assert_int_lt(30 * crossed, placed); /* seldom: where the text has no other place */
}
END_TEST

/* --- which place is best --- */

#define DEARER 4 /* by how much a drawing that grows on its longer side counts more than a leader that does */
#define DEAR 25  /* steps that the best of every fourth way may cost before all are tried */
enum { DISTANCES = 20 };

static void take_all(tside_i_room *room)
{
    const tside_i_paper *p = &room->paper;
    const double half_x = TSIDE_I_PAPER_COLUMNS / p->across / 2, half_y = TSIDE_I_PAPER_ROWS / p->up / 2;
    const tside_i_box all = tside_i_box_of(p->left + half_x, p->bottom + half_y, 1, 0, half_x * 0.999, half_y * 0.999);
    tside_i_paper_take_box(&room->paper, &all);
}

/* All ways, as they are where none leads to a place. */
static void find_ways(double scale, tside_i_way ways[TSIDE_I_WAYS])
{
    const tside_i_line lines[] = {{0, 0, 0.1 * scale, 0}, {0, 0, 0, 0.1 * scale}};
    tside_i_led made;
    OPEN_ROOM(&r, lines, scale);
    take_all(&r.room);
    ck_assert(!tside_i_lead(&r.room, 0.05 * scale, 0.05 * scale, 0.01 * scale, &made));
    memcpy(ways, r.room.ways, sizeof r.room.ways);
}

/* What a place costs, in steps: those that its leader goes on, and by how much the drawing grows. */
static double cost_of(const tside_drawing *d, int steps, double x, double y, double half_width)
{
    const double wide = d->right - d->left, high = d->top - d->bottom, longer = fmax(wide, high), s = d->picture.scale,
                 left = fmax(0, d->left - x + half_width), right = fmax(0, x + half_width - d->right),
                 below = fmax(0, d->bottom - y + HIGH * s), above = fmax(0, y + HIGH * s - d->top);
    return steps + DEARER * ((left + right) * wide + (below + above) * high) / longer / (STEP * s);
}

/* The least cost of all places that are free on every so many-th way of a turn of 64. */
static double least_cost(const tside_i_way *ways, int each, double x, double y, double half_width)
{
    const tside_i_paper *p = &r.room.paper;
    double least = HUGE_VAL;
    for (int i = 0; i < TSIDE_I_WAYS * DISTANCES; i++) {
        const tside_i_way *w = ways + i / DISTANCES;
        const int steps = i % DISTANCES, heading = ((int)lround(atan2(w->near_y, w->near_x) * 32 / PI) + 64) % 64;
        tside_i_mover m = {.wide = tside_i_paper_cells(2 * half_width * p->across),
                           .high = tside_i_paper_cells(2 * HIGH * r.drawing.picture.scale * p->up)};
        double at_x, at_y;
        m.left = tside_i_paper_parts((x - p->left) * p->across) + w->near_x + steps * w->step_x -
                 w->halves_left * m.wide * TSIDE_I_PAPER_PARTS / 2;
        m.bottom = tside_i_paper_parts((y - p->bottom) * p->up) + w->near_y + steps * w->step_y -
                   w->halves_below * m.high * TSIDE_I_PAPER_PARTS / 2;
        if (heading % each || tside_i_paper_steps_to_room(p, &m, 1) > 0)
            continue;
        tside_i_paper_middle(p, &m, &at_x, &at_y);
        least = fmin(least, cost_of(&r.drawing, steps, at_x, at_y, half_width));
    }
    return least;
}

/* In a hatched drawing all texts stand outside: at the place that costs least on few ways, or where that is dear on
 * all. */
START_TEST(a_text_stands_where_it_costs_least)
{
    tside_i_way ways[TSIDE_I_WAYS];
    tside_i_line lines[30];
    dice d = {23};
    int just = 0, dear = 0, cheap = 0;
    for (int number = 0; number < 600; number++) {
        const double scale = number < 300 ? 1 : 20, high = dice_between(&d, 20, 80) * 1e-3 * scale,
                     width = dice_between(&d, 20, 80) * 1e-3 * scale, half_width = width / 2 + TSIDE_I_BESIDE * scale,
                     y = dice_between(&d, 0, high);
        const int count = 8 + dice_below(&d, 22);
        const double x = dice_below(&d, count) * 3e-3 * scale;
        tside_drawing before;
        tside_i_led made;
        double few, all, cost;
        if (number % 300 == 0)
            find_ways(scale, ways);
        for (int i = 0; i < count; i++)
            lines[i] = (tside_i_line){3e-3 * i * scale, 0, 3e-3 * i * scale, high};
        open_room(&r, lines, count, scale);
        before = r.drawing;
        few = least_cost(ways, 4, x, y, half_width);
        all = least_cost(ways, 1, x, y, half_width);
        ck_assert(tside_i_lead(&r.room, x, y, width, &made));
        cost = cost_of(&before, (int)lround((length_of(&made.leader) / scale - NEAREST) / STEP), made.text_x,
                       made.text_y + FOOT * scale, half_width);
        NEAR(cost, few > DEAR ? all : few, 1e-5, "steps that it costs", number);
        dear += few > DEAR && all < few;
        just += few > DEAR && few < DEAR + 1 && all < few - 1e-3;
        cheap += few <= DEAR && all < few - 1e-3;
    }
    ck_assert_int_gt(dear, 10);
    ck_assert_int_gt(just, 2);
    ck_assert_int_gt(cheap, 10);
}
END_TEST

/* Out of a hatching the next place beside it, within the drawing, is too far: the text is above or below all. */
START_TEST(a_leader_is_no_longer_than_so_many_steps)
{
    tside_i_line lines[26];
    tside_i_led made;
    for (int i = 0; i < 25; i++)
        lines[i] = (tside_i_line){5e-3 * i, 0, 5e-3 * i, 0.2};
    lines[25] = (tside_i_line){0.19, 0, 0.19, 0.2};
    for (int hand = -1; hand <= 1; hand += 2) {
        OPEN_ROOM(&r, lines, 1);
        r.sketch.outboard = hand;
        ck_assert(tside_i_lead(&r.room, 5e-3, 0.1, 0.045, &made));
        ck_assert_double_lt(length_of(&made.leader), NEAREST + (DISTANCES - 1) * STEP + CELL);
        ck_assert(made.text_y > 0.2 || made.text_y < -TSIDE_I_ASCENT);
    }
}
END_TEST

/* --- where there is no room --- */

/* The least way aside of a leader that crosses none of the texts, below all or above all, as a check of each tells. */
static int least_aside(const tside_i_room *room, double x, double y, double below, double above, double step)
{
    for (int aside = 0;; aside++)
        for (int way = 0; way < 4; way++) {
            const tside_i_line l = {x, y, x + (way / 2 ? -aside : aside) * step, way % 2 ? above : below};
            int crossed = 0;
            for (int i = 0; i < room->text_count; i++)
                crossed = crossed || goes_through(&l, room->texts + i);
            if (!crossed)
                return aside;
        }
}

/*
 * Where no place is found all ways were tried: of 64 headings all but those within one of level, each once, from so
 * many cells on and so many at a time.
 */
static void check_ways(double outboard, double size, double near_cells, double step_cells)
{
    const tside_i_line lines[] = {{0, 0, size, 0}, {0, 0, 0, size}};
    const double parts = TSIDE_I_PAPER_PARTS * near_cells, step = TSIDE_I_PAPER_PARTS * step_cells;
    int tried[64] = {0};
    tside_i_led made;
    OPEN_ROOM(&r, lines, 1);
    r.sketch.outboard = outboard;
    take_all(&r.room);
    ck_assert(!tside_i_lead(&r.room, 0.05, 0.05, 0.01, &made));
    ck_assert_int_eq(r.room.way_count, TSIDE_I_WAYS);
    for (int i = 0; i < TSIDE_I_WAYS; i++) {
        const tside_i_way *w = r.room.ways + i;
        const double angle = atan2(w->near_y, w->near_x);
        const int heading = ((int)lround(angle * 32 / PI) + 64) % 64, from_level = abs((heading + 16) % 32 - 16);
        NEAR(w->near_x, parts * cos(heading * PI / 32), 1, "near across", i);
        NEAR(w->near_y, parts * sin(heading * PI / 32), 1, "near up", i);
        NEAR(w->step_x, step * cos(heading * PI / 32), 1, "step across", i);
        NEAR(w->step_y, step * sin(heading * PI / 32), 1, "step up", i);
        ck_assert_int_gt(from_level, 1);
        ck_assert_int_eq(w->halves_left, from_level > 12 ? 1 : w->near_x < 0 ? 2 : 0);
        ck_assert_int_eq(w->halves_below, from_level <= 12 ? 1 : w->near_y < 0 ? 2 : 0);
        if (i == 0)
            ck_assert_int_eq(heading, outboard > 0 ? 4 : 28); /* outboard, and a little upwards */
        ck_assert_int_eq(tried[heading]++, 0);
    }
}

START_TEST(a_text_is_sought_all_round)
{
    check_ways(1, 0.1, NEAREST / CELL, STEP / CELL);
    check_ways(-1, 0.1, NEAREST / CELL, STEP / CELL);
    check_ways(1, 300, 3, 2);
}
END_TEST

static void check_outside_all(double scale)
{
    const tside_i_line lines[] = {{0, 0, 0.1 * scale, 0},
                                  {0.1 * scale, 0, 0.1 * scale, 0.1 * scale},
                                  {0.1 * scale, 0.1 * scale, 0, 0.1 * scale},
                                  {0, 0.1 * scale, 0, 0}};
    int most = 0;
    OPEN_ROOM(&r, lines, scale);
    take_all(&r.room);
    for (int i = 0; i < 12; i++) {
        const double x = (0.05 + 1e-3 * (i % 3)) * scale, y = 0.05 * scale, width = 0.03 * scale;
        const tside_drawing before = r.drawing;
        const double below = before.bottom - TSIDE_I_BESIDE * scale, above = before.top + TSIDE_I_BESIDE * scale,
                     step = STEP * scale;
        tside_i_led made;
        double edge;
        int aside;
        ck_assert(!tside_i_lead(&r.room, x, y, width, &made));
        ck_assert_mem_eq(&before, &r.drawing, sizeof before);
        aside = least_aside(&r.room, x, y, below, above, step);
        tside_i_lead_anyhow(&r.room, x, y, width, &made);
        NEAR(fabs(made.text_x - x), aside * step, 1e-9, "aside", i);
        NEAR(made.leader.x_end, made.text_x, 1e-12, "in the middle of its text", i);
        edge = made.text_y > y ? made.text_y - TSIDE_I_DESCENT * scale : made.text_y + TSIDE_I_ASCENT * scale;
        NEAR(made.leader.y_end, edge, 1e-12, "at its text's edge", i);
        NEAR(edge, made.text_y > y ? above : below, 1e-12, "just outside", i);
        for (int k = 0; k < r.room.text_count - 1; k++)
            ck_assert_msg(!goes_through(&made.leader, r.room.texts + k), "leader %d crosses text %d", i, k);
        ck_assert(r.drawing.bottom < before.bottom || r.drawing.top > before.top);
        most = aside > most ? aside : most;
    }
    ck_assert_int_gt(most, 2);
}

START_TEST(where_no_place_is_free_a_text_that_must_stand_is_outside_all)
{
    check_outside_all(1);
    check_outside_all(20);
}
END_TEST

Suite *leader_suite(void)
{
    Suite *suite = suite_create("leader");
    TCase *tests = tcase_create("leader");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, where_nothing_is_in_the_way_a_leader_is_as_short_as_may_be);
    tcase_add_test(tests, in_a_large_drawing_a_leader_goes_on_for_some_cells);
    tcase_add_test(tests, places_that_are_still_to_be_told_are_kept_free);
    tcase_add_test(tests, a_long_drawing_does_not_grow_longer);
    tcase_add_test(tests, leaders_from_one_point_cross_no_other);
    tcase_add_test(tests, what_crosses_a_text_goes_through_it);
    tcase_add_test(tests, leaders_keep_off_texts_and_each_other);
    tcase_add_test(tests, a_text_stands_where_it_costs_least);
    tcase_add_test(tests, a_leader_is_no_longer_than_so_many_steps);
    tcase_add_test(tests, a_text_is_sought_all_round);
    tcase_add_test(tests, where_no_place_is_free_a_text_that_must_stand_is_outside_all);
    suite_add_tcase(suite, tests);
    return suite;
}
