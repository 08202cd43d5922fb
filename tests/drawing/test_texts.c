/* SPDX-License-Identifier: MIT */
/* Texts of the views beside the end wall keep off each other, off strokes and inside the drawing. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "drawings.h"
#include "expect.h"
#include "plans.h"

Suite *texts_suite(void);

/* A text as it stands on paper, by its corners. */
typedef struct quad {
    double x[4], y[4];
} quad;

/* Letters from a little below the foot to the height of capitals, as wide as the text is said to be. */
static quad quad_of(double x, double y, double angle, double width, double scale)
{
    quad q;
    for (int i = 0; i < 4; i++) {
        const double along = (i == 0 || i == 3 ? -0.5 : 0.5) * width, over = (i < 2 ? -0.5e-3 : 3.5e-3) * scale;
        q.x[i] = x + along * cos(angle) - over * sin(angle);
        q.y[i] = y + along * sin(angle) + over * cos(angle);
    }
    return q;
}

/* Whether an edge of one has all of the other on its far side. */
static int parts(const quad *a, const double *x, const double *y, int count)
{
    for (int i = 0; i < 4; i++) {
        const double ux = a->x[(i + 1) % 4] - a->x[i], uy = a->y[(i + 1) % 4] - a->y[i];
        int beyond = 1;
        for (int k = 0; k < count; k++)
            beyond = beyond && ux * (y[k] - a->y[i]) - uy * (x[k] - a->x[i]) < 0;
        if (beyond)
            return 1;
    }
    return 0;
}

/* Two places that lie on one side of a straight stroke's line, or off its ends, do not meet it. */
static int meets(const quad *q, double x, double y, double x_end, double y_end)
{
    const double ends_x[] = {x, x_end}, ends_y[] = {y, y_end};
    int left = 0;
    if (parts(q, ends_x, ends_y, 2))
        return 0;
    for (int i = 0; i < 4; i++)
        left += (x_end - x) * (q->y[i] - y) - (y_end - y) * (q->x[i] - x) > 0;
    return left != 0 && left != 4;
}

static int meets_stroke(const quad *q, const tside_stroke *s)
{
    if (!s->arc)
        return meets(q, s->x, s->y, s->x_end, s->y_end);
    for (int i = 0; i < 200; i++) {
        const double from = s->from + s->sweep * i / 200, to = s->from + s->sweep * (i + 1) / 200;
        if (meets(q, s->x + s->radius * cos(from), s->y + s->radius * sin(from), s->x + s->radius * cos(to),
                  s->y + s->radius * sin(to)))
            return 1;
    }
    return 0;
}

/* No text meets another, an outline or the drawing's edge. */
static void check_texts(const tside_drawing *d, const char *what, int number)
{
    quad texts[TSIDE_DIMENSIONS + TSIDE_NOTES];
    int count = 0;
    const double scale = d->picture.scale;
    for (int i = 0; i < d->dimension_count; i++) {
        const tside_dimension *m = d->dimensions + i;
        ck_assert_msg(m->text_width > 0, "%s %d: no width", what, number);
        texts[count++] = quad_of(m->text_x, m->text_y, m->text_angle, m->text_width, scale);
    }
    for (int i = 0; i < d->note_count; i++)
        texts[count++] = quad_of(d->notes[i].text_x, d->notes[i].text_y, 0, d->notes[i].text_width, scale);
    for (int i = 0; i < count; i++) {
        for (int k = 0; k < 4; k++)
            ck_assert_msg(texts[i].x[k] > d->left && texts[i].x[k] < d->right && texts[i].y[k] > d->bottom &&
                              texts[i].y[k] < d->top,
                          "%s %d: text %d leaves the drawing", what, number, i);
        for (int k = 0; k < i; k++)
            ck_assert_msg(parts(texts + i, texts[k].x, texts[k].y, 4) || parts(texts + k, texts[i].x, texts[i].y, 4),
                          "%s %d: texts %d and %d meet", what, number, k, i);
        for (int k = 0; k < d->stroke_count; k++)
            ck_assert_msg(!meets_stroke(texts + i, d->strokes + k), "%s %d: text %d meets stroke %d", what, number, i,
                          k);
    }
}

/* How near two dimensions' lines come that run beside each other; far where they do not. */
static double apart(const tside_dimension *a, const tside_dimension *b)
{
    const double length = hypot(a->to_x - a->from_x, a->to_y - a->from_y),
                 other = hypot(b->to_x - b->from_x, b->to_y - b->from_y), ux = (a->to_x - a->from_x) / length,
                 uy = (a->to_y - a->from_y) / length,
                 from = (b->from_x - a->from_x) * ux + (b->from_y - a->from_y) * uy,
                 to = (b->to_x - a->from_x) * ux + (b->to_y - a->from_y) * uy;
    if (!(length > 0) || !(other > 0) || fabs(fabs(to - from) - other) > 1e-12 * other || fmin(from, to) > length ||
        fmax(from, to) < 0)
        return HUGE_VAL;
    return fabs((b->from_y - a->from_y) * ux - (b->from_x - a->from_x) * uy);
}

/* Lines beside each other leave room for arrows, and texts are read from below or from the right. */
static void check_lines(const tside_drawing *d, const char *what, int number)
{
    for (int i = 0; i < d->dimension_count; i++) {
        const double angle = d->dimensions[i].text_angle;
        ck_assert_msg(angle > -PI / 2 + 0.01 && angle < PI / 2 + 0.01, "%s %d: text %d is upside down", what, number,
                      i);
        for (int k = 0; k < i; k++)
            ck_assert_msg(apart(d->dimensions + i, d->dimensions + k) > 3e-3 * d->picture.scale,
                          "%s %d: lines %d and %d touch", what, number, k, i);
    }
}

START_TEST(texts_keep_off_texts_and_outlines)
{
    static tside_drawing drawing;
    static const struct {
        const char *name;
        tside_view view;
        double scales[3];
    } views[] = {
        {"wall", TSIDE_VIEW_END_WALL, {10, 20, 50}},
        {"large wall", TSIDE_VIEW_END_WALL, {0.1, 1, 5}},
        {"tiny wall", TSIDE_VIEW_END_WALL, {100, 200, 1000}},
        {"corner", TSIDE_VIEW_CORNER, {2, 5, 10}},
        {"extender", TSIDE_VIEW_EXTENDER, {5, 10, 20}},
        {"along", TSIDE_VIEW_ALONG, {100, 200, 500}},
        {"roll shut", TSIDE_VIEW_ROLL_SHUT, {1, 2, 5}},
        {"roll open", TSIDE_VIEW_ROLL_OPEN, {1, 2, 5}},
        {"turns", TSIDE_VIEW_TURNS, {1, 1, 1}},
        {"opening", TSIDE_VIEW_OPENING, {1, 1, 1}},
    };
    for (int each = 0; each < 2 * SIDES; each++) {
        tside_side side = side_of(each / 2);
        tside_plan plan;
        side.ropes = each % 3 == 0 ? TSIDE_NO_ROPES : each % 3 == 1 ? TSIDE_STRAIGHT_ROPES : TSIDE_ZIGZAG_ROPE;
        plan = planned(&side);
        for (size_t v = 0; v < sizeof views / sizeof *views; v++)
            for (int k = 0; k < 6; k++) {
                const tside_picture picture = {.view = views[v].view,
                                               .end = (tside_which_end)(each % 2),
                                               .tape = k < 3 ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC,
                                               .scale = views[v].scales[k % 3]};
                tside_fault fault;
                ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
                check_texts(&drawing, views[v].name, 10 * each + k);
                check_lines(&drawing, views[v].name, 10 * each + k);
            }
    }
}
END_TEST

Suite *texts_suite(void)
{
    Suite *suite = suite_create("texts");
    TCase *tests = tcase_create("texts");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, texts_keep_off_texts_and_outlines);
    suite_add_tcase(suite, tests);
    return suite;
}
