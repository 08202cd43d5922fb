/* SPDX-License-Identifier: MIT */
/* Strokes of an end wall: where bow, line, travel and layout have what they show. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"
#include "scenes.h"

Suite *wall_suite(void);

/* --- strokes --- */

/* A place on a stroke, from 0 at its beginning to 1 at its end; as seen. */
static void place_on(const tside_stroke *stroke, double at, double *x, double *y)
{
    const double angle = stroke->from + at * stroke->sweep;
    *x = stroke->arc ? stroke->x + stroke->radius * cos(angle) : stroke->x + at * (stroke->x_end - stroke->x);
    *y = stroke->arc ? stroke->y + stroke->radius * sin(angle) : stroke->y + at * (stroke->y_end - stroke->y);
}

static double length_of(const tside_stroke *stroke)
{
    return stroke->arc ? stroke->radius * stroke->sweep : hypot(stroke->x_end - stroke->x, stroke->y_end - stroke->y);
}

static double distance_to(const tside_stroke *stroke, double x, double y)
{
    double ends[2];
    for (int i = 0; i < 2; i++) {
        double at_x, at_y;
        place_on(stroke, i, &at_x, &at_y);
        ends[i] = hypot(x - at_x, y - at_y);
    }
    if (stroke->arc) {
        double after = fmod(atan2(y - stroke->y, x - stroke->x) - stroke->from, 2 * PI);
        if (after < 0)
            after += 2 * PI;
        if (after <= stroke->sweep)
            return fabs(hypot(x - stroke->x, y - stroke->y) - stroke->radius);
    } else {
        const double ux = (stroke->x_end - stroke->x) / length_of(stroke),
                     uy = (stroke->y_end - stroke->y) / length_of(stroke),
                     along = (x - stroke->x) * ux + (y - stroke->y) * uy;
        if (along >= 0 && along <= length_of(stroke))
            return fabs((x - stroke->x) * uy - (y - stroke->y) * ux);
    }
    return fmin(ends[0], ends[1]);
}

static int is_one(const tside_stroke *stroke, tside_part part, tside_line_type line, tside_shown shown)
{
    return stroke->part == part && stroke->line == line && stroke->shown == shown;
}

/* How far the nearest of such strokes is from a place outboard and up. */
static double nearest(const scene *s, tside_part part, tside_line_type line, tside_shown shown, double x, double y)
{
    double least = HUGE_VAL;
    for (int i = 0; i < s->drawing.stroke_count; i++)
        if (is_one(s->drawing.strokes + i, part, line, shown))
            least = fmin(least, distance_to(s->drawing.strokes + i, s->outboard * x, y));
    return least;
}

/* The one circle of a part in a state, centre outboard and up. */
static void is_circle(const scene *s, tside_part part, tside_shown shown, double x, double y, double radius,
                      const char *what, int number)
{
    int found = 0;
    for (int i = 0; i < s->drawing.stroke_count; i++) {
        const tside_stroke *stroke = s->drawing.strokes + i;
        if (stroke->part != part || stroke->shown != shown || !stroke->arc ||
            hypot(stroke->x - s->outboard * x, stroke->y - y) > 1e-6)
            continue;
        found++;
        NEAR(stroke->x, s->outboard * x, 1e-12, what, number);
        NEAR(stroke->y, y, 1e-12, what, number);
        NEAR(stroke->radius, radius, 1e-12, what, number);
        NEAR(stroke->sweep, 2 * PI, 1e-12, what, number);
    }
    ck_assert_msg(found == 1, "%d circles of the %s in wall %d", found, what, number);
}

/* --- what stands --- */

/* Lowest and highest place of a part's strokes of a line type. */
static void height_of(const scene *s, tside_part part, tside_line_type line, double *low, double *high)
{
    *low = HUGE_VAL;
    *high = -HUGE_VAL;
    for (int i = 0; i < s->drawing.stroke_count; i++)
        for (int k = 0; k <= 64 && is_one(s->drawing.strokes + i, part, line, TSIDE_SHOWN_ALWAYS); k++) {
            double x, y;
            place_on(s->drawing.strokes + i, k / 64.0, &x, &y);
            *low = fmin(*low, y);
            *high = fmax(*high, y);
        }
}

/* Centre line, outer face and inner one, everywhere between the lowest and the highest place at which they are drawn.
 */
FOR_WALLS(the_bow_is_drawn_where_it_is)
{
    tside_fault fault;
    double low, high, from, to, drawn = 0;
    height_of(s, TSIDE_PART_BOW, TSIDE_LINE_CHAIN, &low, &high);
    ck_assert(low < s->end_plan->ground && high > s->side.curtain.hip);
    ANSWERS(tside_bow_at_height(&s->bow, low, &from, &fault));
    ANSWERS(tside_bow_at_height(&s->bow, high, &to, &fault));
    for (int i = 0; i < s->drawing.stroke_count; i++)
        if (is_one(s->drawing.strokes + i, TSIDE_PART_BOW, TSIDE_LINE_CHAIN, TSIDE_SHOWN_ALWAYS))
            drawn += length_of(s->drawing.strokes + i);
    NEAR(drawn, to - from, 1e-9, "bow's centre line", number);
    for (int k = 0; k <= 200; k++) {
        const double half = s->bow.diameter / 2;
        tside_bow_point at;
        ANSWERS(tside_bow_at(&s->bow, from + (to - from) * k / 200, &at, &fault));
        NEAR(nearest(s, TSIDE_PART_BOW, TSIDE_LINE_CHAIN, TSIDE_SHOWN_ALWAYS, at.x, at.y), 0, 1e-12, "centre line",
             number);
        if (k < 10 || k > 190)
            continue; /* a face may be cut where the centre line is not */
        for (int side = -1; side <= 1; side += 2)
            NEAR(nearest(s, TSIDE_PART_BOW, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, at.x + side * half * sin(at.heading),
                         at.y - side * half * cos(at.heading)),
                 0, 1e-12, "bow's face", number);
    }
}

FOR_WALLS(what_is_fixed_is_drawn_where_it_is)
{
    const double hip = s->side.curtain.hip, ground = s->end_plan->ground;
    NEAR(nearest(s, TSIDE_PART_RAIL, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, s->plan.fixing_x, hip), 0, 1e-12, "rail",
         number);
    NEAR(nearest(s, TSIDE_PART_RAIL, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, s->plan.fixing_x,
                 hip - s->side.curtain.rail_depth),
         0, 1e-12, "rail's lower edge", number);
    NEAR(nearest(s, TSIDE_PART_GROUND, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, s->face, ground), 0, 1e-12, "ground",
         number);
    if (s->bow.board_given)
        NEAR(nearest(s, TSIDE_PART_BOARD, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, s->bow.board_x, s->bow.board_y), 0,
             1e-12, "board", number);
    for (int i = 0; i < s->end->keep_out_count; i++) {
        const tside_keep_out *out = s->end->keep_outs + i;
        double drawn = 0;
        for (int k = 0; k < s->drawing.stroke_count; k++)
            if (s->drawing.strokes[k].part == TSIDE_PART_KEEP_OUT && s->drawing.strokes[k].index == i)
                drawn += length_of(s->drawing.strokes + k);
        ck_assert_msg(drawn > 0, "keep-out %d of wall %d is not drawn", i, number);
        ck_assert(drawn <= 2 * (out->outer - out->inner + out->top - out->bottom) + 1e-9);
        NEAR(nearest(s, TSIDE_PART_KEEP_OUT, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, i ? out->inner : out->outer,
                     out->bottom + ground),
             0, 1e-12, "keep-out's corner", number);
    }
}

/* Its two long edges end square to its axis, half its side away. */
FOR_WALLS(the_extender_is_drawn_as_it_is_laid_out)
{
    const tside_layout *l = &s->end_plan->layout;
    const tside_extender *extender = &s->end->extender;
    const double sine = sin(l->angle), cosine = cos(l->angle), half = extender->tube.side / 2;
    if (s->end->hung != TSIDE_ON_EXTENDER) {
        ck_assert(nearest(s, TSIDE_PART_EXTENDER, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, 0, 0) >= HUGE_VAL);
        return;
    }
    is_circle(s, TSIDE_PART_HOLE, TSIDE_SHOWN_ALWAYS, l->bow_x, l->bow_height, extender->bolt_hole / 2, "bow hole",
              number);
    is_circle(s, TSIDE_PART_HOLE, TSIDE_SHOWN_ALWAYS, l->member_x, extender->member_height + s->end_plan->ground,
              extender->bolt_hole / 2, "member hole", number);
    is_circle(s, TSIDE_PART_EYE, TSIDE_SHOWN_ALWAYS, l->eye_x, l->eye_y, extender->eye_hole / 2, "eye's hole", number);
    for (int corner = 0; corner < 4; corner++) {
        const double along = corner < 2 ? l->eye_from_top : l->eye_from_top - l->cut_length,
                     across = corner % 2 ? half : -half;
        NEAR(nearest(s, TSIDE_PART_EXTENDER, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS,
                     l->eye_x + along * sine + across * cosine, l->eye_y + along * cosine - across * sine),
             0, 1e-12, "extender's corner", number);
    }
    NEAR(nearest(s, TSIDE_PART_MEMBER, TSIDE_LINE_WIDE, TSIDE_SHOWN_ALWAYS, l->member_x,
                 extender->member_height + s->end_plan->ground),
         0, 1e-12, "member", number);
}

/* --- what moves --- */

static int is_drawn(const scene *s, tside_part part, tside_shown shown)
{
    for (int i = 0; i < s->drawing.stroke_count; i++)
        if (s->drawing.strokes[i].part == part && s->drawing.strokes[i].shown == shown)
            return 1;
    return 0;
}

/* Joined strokes from the fixing to where they touch the roll, as long as the curtain hangs. */
static void check_curtain(const scene *s, tside_shown shown, const tside_position *where, int number)
{
    double x = s->outboard * s->plan.fixing_x, y = s->side.curtain.hip, length = 0;
    for (int i = 0; i < s->drawing.stroke_count; i++) {
        const tside_stroke *stroke = s->drawing.strokes + i;
        double near_x, near_y, far_x, far_y;
        int turned;
        if (stroke->part != TSIDE_PART_CURTAIN || stroke->shown != shown)
            continue;
        place_on(stroke, 0, &near_x, &near_y);
        place_on(stroke, 1, &far_x, &far_y);
        turned = hypot(far_x - x, far_y - y) < hypot(near_x - x, near_y - y); /* arcs run counter-clockwise */
        NEAR(turned ? hypot(far_x - x, far_y - y) : hypot(near_x - x, near_y - y), 0, 1e-9, "joined curtain", number);
        x = turned ? near_x : far_x;
        y = turned ? near_y : far_y;
        length += length_of(stroke);
    }
    NEAR(length, where->hanging, 1e-9, "curtain's length", number);
    NEAR(hypot(x - s->outboard * where->x, y - where->y), where->diameter / 2, 1e-9, "where it meets the roll", number);
    /* square to the radius there: the roll is outboard of it */
    NEAR((s->outboard * x - where->x) * sin(where->slope) - (y - where->y) * cos(where->slope), 0, 1e-9, "tangent",
         number);
    ck_assert(s->outboard * x < where->x);
}

static void check_state(const scene *s, tside_shown shown, const tside_position *where, int number)
{
    is_circle(s, TSIDE_PART_ROLL, shown, where->x, where->y, where->diameter / 2, "roll", number);
    is_circle(s, TSIDE_PART_BAR, shown, where->x, where->y, s->side.bar.tube.diameter / 2, "bar", number);
    check_curtain(s, shown, where, number);
}

FOR_WALLS(roll_and_curtain_are_drawn_shut_and_open)
{
    check_state(s, TSIDE_SHOWN_SHUT, &s->plan.shut, number);
    check_state(s, TSIDE_SHOWN_OPEN, &s->plan.open, number);
    ck_assert(!is_drawn(s, TSIDE_PART_ROLL, TSIDE_SHOWN_AT_TURNS));
}

/* All of the curtain's line down to the roll, where it holds the curtain. */
FOR_WALLS(a_held_curtain_follows_its_line)
{
    tside_fault fault;
    if (s->travel.stretch[0].held != TSIDE_HELD_LINE)
        return;
    for (int k = 0; k <= 100; k++) {
        double x, y, slope;
        ANSWERS(tside_line_at(&s->travel.line, s->travel.hanging * k / 100, &x, &y, &slope, &fault));
        NEAR(nearest(s, TSIDE_PART_CURTAIN, TSIDE_LINE_WIDE, TSIDE_SHOWN_SHUT, x, y), 0, 1e-12, "curtain's line",
             number);
    }
}

/* A pipe's lower end, across its axis. */
static void check_guide(const scene *s, tside_shown shown, tside_line_type line, double lean, double length, int number)
{
    const double half = s->end->guide.tube.diameter / 2;
    for (int across = -1; across <= 1; across += 2)
        NEAR(nearest(s, TSIDE_PART_GUIDE, line, shown,
                     s->end_plan->eye_x + length * sin(lean) + across * half * cos(lean),
                     s->end_plan->eye_y - length * cos(lean) + across * half * sin(lean)),
             0, 1e-12, "guide's foot", number);
}

FOR_WALLS(the_guide_is_drawn_from_its_eye_to_its_foot)
{
    const tside_sweep *sweep = &s->end_plan->sweep;
    if (s->end->guide.foot == TSIDE_FOOT_FIXED) {
        check_guide(s, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_WIDE, s->end_plan->fixed.lean,
                    sweep->length + s->end->footing.depth / cos(s->end_plan->fixed.lean), number);
        ck_assert(!is_drawn(s, TSIDE_PART_REACH, TSIDE_SHOWN_ALWAYS));
        return;
    }
    if (is_drawn(s, TSIDE_PART_GUIDE, TSIDE_SHOWN_SHUT_AND_OPEN)) {
        ck_assert(sweep->length * fabs(sweep->lean_open - sweep->lean_shut) < 1e-3 * s->drawing.picture.scale);
        check_guide(s, TSIDE_SHOWN_SHUT_AND_OPEN, TSIDE_LINE_WIDE, sweep->lean_shut, sweep->length, number);
    } else {
        check_guide(s, TSIDE_SHOWN_SHUT, TSIDE_LINE_WIDE, sweep->lean_shut, sweep->length, number);
        check_guide(s, TSIDE_SHOWN_OPEN, TSIDE_LINE_NARROW, sweep->lean_open, sweep->length, number);
    }
    NEAR(nearest(s, TSIDE_PART_REACH, TSIDE_LINE_CHAIN, TSIDE_SHOWN_ALWAYS, sweep->walkway_error, s->end_plan->ground),
         0, 1e-12, "reach", number);
}

/* At a row of the turn table. */
FOR_WALLS(a_place_between_is_drawn_where_the_turn_table_has_it)
{
    static scene again;
    tside_turn rows[64];
    tside_fault fault;
    int count;
    again = *s;
    ANSWERS(tside_plan_turns(&s->side, rows, 64, &count, &fault));
    for (int i = 0; i < count; i += 3) {
        tside_picture picture = picture_of(s, 20);
        picture.turns_given = 1;
        picture.turns = rows[i].turn;
        draw_as(&again, &picture);
        is_circle(&again, TSIDE_PART_ROLL, TSIDE_SHOWN_AT_TURNS, rows[i].x, rows[i].y, rows[i].diameter / 2, "roll",
                  number);
        if (s->which == TSIDE_DRIVE_END && s->end->guide.foot != TSIDE_FOOT_FIXED)
            check_guide(&again, TSIDE_SHOWN_AT_TURNS, TSIDE_LINE_NARROW, rows[i].lean, s->end_plan->sweep.length,
                        number);
    }
}

/* --- either hand --- */

/* An end as the drive's own of the other hand: every place mirrored to its last bit, every number the same. */
FOR_WALLS(the_other_hand_is_the_mirror)
{
    static scene other;
    tside_side side = s->side;
    side.hand = side.hand == TSIDE_RIGHT ? TSIDE_LEFT : TSIDE_RIGHT;
    make_scene(&other, &side, s->which);
    ck_assert_int_eq(other.drawing.outboard, -s->drawing.outboard);
    ck_assert_int_eq(s->drawing.outboard, (int)s->outboard);
    ck_assert_int_eq(other.drawing.dimension_count, s->drawing.dimension_count);
    for (int i = 0; i < s->drawing.dimension_count; i++) {
        const tside_dimension *a = s->drawing.dimensions + i, *b = other.drawing.dimensions + i;
        ck_assert(a->tells == b->tells && a->kind == b->kind);
        ck_assert(a->value == b->value);
        ck_assert(a->x == -b->x && a->y == b->y && a->x_end == -b->x_end && a->y_end == b->y_end);
    }
    for (int i = 0; i < s->drawing.stroke_count; i++)
        for (int k = 0; k <= 4 && s->drawing.strokes[i].line != TSIDE_LINE_NARROW; k++) {
            double x, y, least = HUGE_VAL;
            place_on(s->drawing.strokes + i, k / 4.0, &x, &y);
            for (int other_one = 0; other_one < other.drawing.stroke_count; other_one++)
                if (other.drawing.strokes[other_one].part == s->drawing.strokes[i].part &&
                    other.drawing.strokes[other_one].shown == s->drawing.strokes[i].shown)
                    least = fmin(least, distance_to(other.drawing.strokes + other_one, -x, y));
            NEAR(least, 0, 1e-12, "mirrored stroke", number);
        }
}

/* --- at any scale --- */

/* The same strokes of what stands and moves, however large: none is crowded out. */
FOR_WALLS(all_is_drawn_at_every_scale)
{
    static const double scales[] = {0.1, 0.5, 1, 2, 5, 10, 50, 1000};
    static scene again;
    again = *s;
    for (size_t i = 0; i < sizeof scales / sizeof *scales; i++) {
        const tside_picture picture = picture_of(s, scales[i]);
        draw_as(&again, &picture);
        ck_assert_int_lt(again.drawing.stroke_count, TSIDE_STROKES);
        for (int k = 0; k < s->drawing.stroke_count; k++) {
            const tside_part part = s->drawing.strokes[k].part;
            int found = 0;
            for (int other = 0; other < again.drawing.stroke_count; other++)
                found |= again.drawing.strokes[other].part == part;
            ck_assert_msg(found, "wall %d at 1:%g lacks part %d", number, scales[i], (int)part);
        }
        ck_assert_int_eq(again.drawing.dimension_count, s->drawing.dimension_count);
    }
}

/* Both sides of the bow, level ground from edge to edge, and nothing told. */
FOR_WALLS(the_whole_wall_is_the_same_on_both_sides)
{
    static scene whole;
    tside_picture picture = picture_of(s, 50);
    tside_bow_point at;
    tside_fault fault;
    whole = *s;
    picture.view = TSIDE_VIEW_WHOLE_WALL;
    draw_as(&whole, &picture);
    ck_assert_int_eq(whole.drawing.dimension_count, 0);
    for (int k = 0; k < whole.drawing.stroke_count; k++) {
        const tside_stroke *stroke = whole.drawing.strokes + k;
        if (stroke->part == TSIDE_PART_GROUND) {
            NEAR(fmin(stroke->x, stroke->x_end), whole.drawing.left, 1e-12, "ground's left end", number);
            NEAR(fmax(stroke->x, stroke->x_end), whole.drawing.right, 1e-12, "ground's right end", number);
        }
    }
    for (int k = 0; k <= 100; k++) {
        ANSWERS(tside_bow_at(&s->bow, s->bow.centre.length * k / 100, &at, &fault));
        for (int side = -1; side <= 1 && at.y >= s->end_plan->ground; side += 2)
            NEAR(nearest(&whole, TSIDE_PART_BOW, TSIDE_LINE_CHAIN, TSIDE_SHOWN_ALWAYS, side * at.x, at.y), 0, 1e-12,
                 "bow", number);
    }
}

Suite *wall_suite(void)
{
    Suite *suite = suite_create("wall");
    TCase *tests = tcase_create("wall");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, the_bow_is_drawn_where_it_is);
    tcase_add_test(tests, what_is_fixed_is_drawn_where_it_is);
    tcase_add_test(tests, the_extender_is_drawn_as_it_is_laid_out);
    tcase_add_test(tests, roll_and_curtain_are_drawn_shut_and_open);
    tcase_add_test(tests, a_held_curtain_follows_its_line);
    tcase_add_test(tests, the_guide_is_drawn_from_its_eye_to_its_foot);
    tcase_add_test(tests, a_place_between_is_drawn_where_the_turn_table_has_it);
    tcase_add_test(tests, the_other_hand_is_the_mirror);
    tcase_add_test(tests, all_is_drawn_at_every_scale);
    tcase_add_test(tests, the_whole_wall_is_the_same_on_both_sides);
    suite_add_tcase(suite, tests);
    return suite;
}
