/* SPDX-License-Identifier: MIT */
/* Figures over the drive's turns: curves as the turn table has them, axes that say what they count. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "drawings.h"
#include "expect.h"
#include "plans.h"
#include "portraits.h"

Suite *figures_suite(void);

/* How a panel's axis counts, by the least and the greatest of its numbers. */
typedef struct scale {
    double from, to;       /* numbers */
    double at_from, at_to; /* m on paper */
    int numbers;
} scale;

static scale scale_of(const tside_drawing *drawing, tside_part part, int upright)
{
    scale s = {HUGE_VAL, -HUGE_VAL, 0, 0, 0};
    for (int i = 0; i < drawing->note_count; i++) {
        const tside_note *note = drawing->notes + i;
        const double at = upright ? note->y : note->x;
        if (note->part != part || !note->numbered)
            continue;
        ck_assert_int_eq(note->numbered, 1);
        s.numbers++;
        if (note->value < s.from) {
            s.from = note->value;
            s.at_from = at;
        }
        if (note->value > s.to) {
            s.to = note->value;
            s.at_to = at;
        }
    }
    ck_assert_int_ge(s.numbers, 2);
    return s;
}

static double number_at(const scale *s, double at)
{
    return s->from + (at - s->at_from) / (s->at_to - s->at_from) * (s->to - s->from);
}

/* The turn and the value at the ends of a curve's strokes, in SI, against the functions that know one place. */
static void check_curve(const tside_side *side, const tside_plan *plan, const tside_drawing *drawing, tside_part part,
                        double one)
{
    const tside_collar collar = tside_drive_collar(&side->drive);
    const scale turns = scale_of(drawing, TSIDE_PART_AXIS, 0), values = scale_of(drawing, part, 1);
    tside_travel travel = travel_of(side);
    tside_hang hang;
    tside_fault fault;
    const tside_stroke *last = NULL;
    int points = 0;
    ANSWERS(tside_hang_make(&travel, &side->drive_end.guide, &collar, plan->drive_end.eye_x, plan->drive_end.eye_y,
                            plan->drive_end.stand.misfit, &hang, NULL, &fault));
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part != part)
            continue;
        if (last) {
            NEAR(stroke->x, last->x_end, 1e-9, "joined", i); /* between them may be one of no length */
            NEAR(stroke->y, last->y_end, 1e-9, "joined", i);
        }
        ck_assert_int_eq(stroke->index, 0);
        last = stroke;
        points++;
    }
    ck_assert_int_gt(points, 50);
    NEAR(number_at(&turns, last->x_end), plan->drive_turns, 1e-9, "turns when open", 0);
    for (int k = 1; k < 40; k++) { /* between them as straight strokes go */
        double lean, drive;
        tside_position at;
        const double bar = plan->bar_turns * k / 40;
        ANSWERS(tside_guide_lean(&travel, &hang, bar, &lean, &drive, &fault));
        ANSWERS(tside_travel_at(&travel, bar, &at, &fault));
        for (int i = 0; i < drawing->stroke_count; i++) {
            const tside_stroke *s = drawing->strokes + i;
            const double from = number_at(&turns, s->x), to = number_at(&turns, s->x_end);
            if (s->part != part || !(drive >= from && drive <= to && to > from))
                continue;
            NEAR(one * number_at(&values, s->y + (s->y_end - s->y) * (drive - from) / (to - from)),
                 part == TSIDE_PART_LEAN ? lean : at.opening, 2e-3 * one * (values.to - values.from), "value", k);
            points = 0;
        }
        ck_assert_int_eq(points, 0);
    }
}

START_TEST(curves_are_what_the_turn_table_has)
{
    static tside_drawing drawing;
    for (int each = 0; each < SIDES; each++) {
        const tside_side side = side_of(each);
        const tside_plan plan = planned(&side);
        const tside_stroke *first[TSIDE_PART_CODES] = {NULL}, *last[TSIDE_PART_CODES] = {NULL};
        tside_turn rows[64];
        tside_fault fault;
        int count;
        draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 20, &drawing);
        NEAR(drawing.picture.scale, 1, 0, "scale", 0);
        check_curve(&side, &plan, &drawing, TSIDE_PART_OPENING, 0.0254);
        check_curve(&side, &plan, &drawing, TSIDE_PART_LEAN, PI / 180);
        for (int i = 0; i < drawing.stroke_count; i++) {
            const tside_stroke *stroke = drawing.strokes + i;
            if (!first[stroke->part])
                first[stroke->part] = stroke;
            last[stroke->part] = stroke;
        }
        ANSWERS(tside_plan_turns(&side, rows, 64, &count, &fault));
        for (int end = 0; end < 2; end++) {
            const tside_turn *row = end ? rows + count - 1 : rows;
            const scale torque = scale_of(&drawing, TSIDE_PART_TORQUE, 1),
                        opening = scale_of(&drawing, TSIDE_PART_OPENING, 1),
                        lean = scale_of(&drawing, TSIDE_PART_LEAN, 1);
#define AT(part) (end ? last[part]->y_end : first[part]->y)
            NEAR(number_at(&torque, AT(TSIDE_PART_TORQUE)) * 4.4482216152605 * 0.3048, row->torque, 1e-9, "torque",
                 end);
            NEAR(number_at(&opening, AT(TSIDE_PART_OPENING)) * 0.0254, row->opening, 1e-9, "opening", end);
            NEAR(number_at(&lean, AT(TSIDE_PART_LEAN)) * PI / 180, row->lean, 1e-9, "lean", end);
        }
    }
}
END_TEST

/* Each of its panels and its turns have their names. */
static void names_stand(const tside_drawing *drawing, const char *const *names)
{
    tside_fault fault;
    for (int i = 0; i < 4; i++) {
        int found = 0;
        for (int k = 0; k < drawing->note_count; k++) {
            char words[80];
            ANSWERS(tside_note_text(drawing->notes + k, words, sizeof words, NULL, &fault));
            found += !strcmp(words, names[i]);
        }
        ck_assert_msg(found == 1, "%s stands %d times", names[i], found);
    }
}

START_TEST(figures_speak_the_tape_and_mark_the_turns_asked)
{
    static tside_drawing drawing;
    const tside_side side = plain();
    const tside_plan plan = planned(&side);
    tside_picture picture = {.view = TSIDE_VIEW_TURNS, .tape = TSIDE_TAPE_METRIC, .scale = 1, .turns_given = 1};
    const char *const metric[] = {"opening, mm", "torque, N m", "lean, degrees", "turns of the drive"};
    const char *const inch[] = {"opening, in", "torque, lbf ft", "lean, degrees", "turns of the drive"};
    tside_fault fault;
    scale turns;
    int marked = 0;
    picture.turns = plan.drive_turns * 0.3;
    ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
    turns = scale_of(&drawing, TSIDE_PART_AXIS, 0);
    for (int i = 0; i < drawing.stroke_count; i++)
        if (drawing.strokes[i].shown == TSIDE_SHOWN_AT_TURNS) {
            NEAR(number_at(&turns, drawing.strokes[i].x), picture.turns, 1e-9, "turns asked", i);
            marked++;
        }
    ck_assert_int_eq(marked, 3);
    names_stand(&drawing, metric);
    picture.tape = TSIDE_TAPE_INCH;
    ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
    names_stand(&drawing, inch);
}
END_TEST

/* A stroke of the opening's curve, but for one that is of no length but by rounding. */
static int is_of_opening(const tside_stroke *stroke)
{
    return stroke->part == TSIDE_PART_OPENING && hypot(stroke->x_end - stroke->x, stroke->y_end - stroke->y) > 1e-12;
}

/* The same curve on the same axis, and nothing of the others. */
START_TEST(the_opening_stands_alone)
{
    static tside_drawing all, alone;
    for (int each = 0; each < SIDES; each++) {
        const tside_side side = side_of(each);
        const tside_plan plan = planned(&side);
        const tside_stroke *curve = all.strokes;
        double down = 0;
        int points = 0;
        draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 20, &all);
        draw(&side, &plan, TSIDE_VIEW_OPENING, TSIDE_DRIVE_END, 20, &alone);
        NEAR(alone.picture.scale, 1, 0, "scale", each);
        for (int i = 0; i < alone.stroke_count; i++) {
            const tside_stroke *stroke = alone.strokes + i;
            ck_assert(stroke->part == TSIDE_PART_AXIS || stroke->part == TSIDE_PART_OPENING);
            if (!is_of_opening(stroke))
                continue;
            while (!is_of_opening(curve))
                curve++;
            down = points++ ? down : curve->y - stroke->y;
            NEAR(stroke->x_end, curve->x_end, 1e-12, "turns", i);
            NEAR(stroke->y_end, curve->y_end - down, 1e-12, "opening", i);
            curve++;
        }
        ck_assert_int_gt(points, 50);
        ck_assert_int_eq(scale_of(&alone, TSIDE_PART_OPENING, 1).numbers,
                         scale_of(&all, TSIDE_PART_OPENING, 1).numbers);
        ck_assert_int_eq(scale_of(&alone, TSIDE_PART_AXIS, 0).numbers, scale_of(&all, TSIDE_PART_AXIS, 0).numbers);
        for (int i = 0; i < alone.note_count; i++)
            ck_assert(alone.notes[i].part == TSIDE_PART_AXIS || alone.notes[i].part == TSIDE_PART_OPENING);
    }
}
END_TEST

/* m on paper: panels as wide and high as so, so far apart, and ticks so long. */
static const double wide = 140e-3, high = 40e-3, apart = 16e-3, tick = 1.5e-3;

static void has_axis_line(portrait *p, double x, double y, double x_end, double y_end)
{
    has_line(p, TSIDE_PART_AXIS, TSIDE_SHOWN_ALWAYS, TSIDE_LINE_NARROW, x, y, x_end, y_end);
}

/* A tick at each number of the axis, beside the axis itself; at nought a line across, and one at the foot. */
static void has_upright_axis(portrait *p, tside_part part, double foot)
{
    const scale values = scale_of(p->drawing, part, 1);
    NEAR(values.at_from, foot, 1e-12, "foot of an axis", (int)part);
    NEAR(values.at_to, foot + high, 1e-12, "top of an axis", (int)part);
    ck_assert(values.from <= 0);
    has_axis_line(p, 0, foot, 0, foot + high);
    has_axis_line(p, 0, foot - high * values.from / (values.to - values.from), wide,
                  foot - high * values.from / (values.to - values.from));
    if (values.from < 0)
        has_axis_line(p, 0, foot, wide, foot);
    for (int i = 0; i < p->drawing->note_count; i++) {
        const tside_note *note = p->drawing->notes + i;
        if (note->part != part || !note->numbered)
            continue;
        NEAR(number_at(&values, note->y), note->value, 1e-9, "number", i);
        NEAR(note->x, 0, 0, "number", i);
        has_axis_line(p, -tick, note->y, 0, note->y);
    }
}

/* Numbers of turns stand below the lowest panel, but for one that meets another; each panel has all their ticks. */
static void has_level_ticks(portrait *p, int panels)
{
    const scale turns = scale_of(p->drawing, TSIDE_PART_AXIS, 0);
    double step = HUGE_VAL;
    for (int i = 0; i < p->drawing->note_count; i++) {
        const tside_note *note = p->drawing->notes + i;
        if (note->part != TSIDE_PART_AXIS || !note->numbered)
            continue;
        NEAR(number_at(&turns, note->x), note->value, 1e-9, "turns", i);
        NEAR(note->y, 0, 0, "turns", i);
        if (note->x > turns.at_from)
            step = fmin(step, note->x - turns.at_from);
    }
    NEAR(number_at(&turns, 0), 0, 1e-9, "shut", 0);
    for (double x = 0; x <= wide + 1e-12; x += step)
        for (int panel = 0; panel < panels; panel++)
            has_axis_line(p, x, panel * (high + apart), x, panel * (high + apart) - tick);
}

START_TEST(axes_have_a_tick_at_each_number)
{
    static tside_drawing drawing;
    static portrait p;
    static const tside_part parts[] = {TSIDE_PART_LEAN, TSIDE_PART_TORQUE, TSIDE_PART_OPENING};
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_side side = side_of(each / 2);
        const tside_plan plan = planned(&side);
        const int panels = each % 2 ? 1 : 3;
        draw(&side, &plan, panels == 1 ? TSIDE_VIEW_OPENING : TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
        portrait_begin(&p, &drawing, "figures", each, 1);
        for (int panel = 0; panel < panels; panel++)
            has_upright_axis(&p, parts[panels == 1 ? 2 : panel], panel * (high + apart));
        has_level_ticks(&p, panels);
        for (int i = 0; i < drawing.stroke_count; i++)
            ck_assert_msg(p.stroke[i] || drawing.strokes[i].part != TSIDE_PART_AXIS, "stroke %d of side %d", i, each);
    }
}
END_TEST

/* A guide that stands, and a travel of nothing. */
START_TEST(figures_of_what_does_not_vary_are_drawn)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan;
    scale lean;
    side.drive_end.guide.foot = side.free_end.guide.foot = TSIDE_FOOT_FIXED;
    side.drive_end.rise = side.free_end.rise = 0.45;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
    lean = scale_of(&drawing, TSIDE_PART_LEAN, 1); /* a degree at least, and little more */
    ck_assert(lean.to - lean.from >= 1 && lean.to - lean.from < 2);
    side = plain();
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = side.stops.open_height = 0.8;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
    scale_of(&drawing, TSIDE_PART_TORQUE, 1);
    NEAR(scale_of(&drawing, TSIDE_PART_AXIS, 0).to, 1, 1e-12, "a turn at least", 0);
}
END_TEST

/* A window that opens by less than a turn of the roll has as many points. */
START_TEST(a_short_travel_has_smooth_curves)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan;
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = 0.8;
    side.stops.open_height = 0.87;
    plan = planned(&side);
    ck_assert_double_lt(plan.bar_turns, 0.9);
    draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
    check_curve(&side, &plan, &drawing, TSIDE_PART_OPENING, 0.0254);
    check_curve(&side, &plan, &drawing, TSIDE_PART_LEAN, PI / 180);
}
END_TEST

/* Each curve is between the numbers of its axis, though what it begins with may alone be beyond one of them. */
START_TEST(axes_hold_their_curves)
{
    static const tside_part parts[] = {TSIDE_PART_OPENING, TSIDE_PART_TORQUE, TSIDE_PART_LEAN};
    static tside_drawing drawing;
    tside_side side = side_of(1); /* its guide leans most when shut, here by about 5 degrees */
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    for (int each = 0; each < 100; each++) {
        tside_plan plan;
        side.stops.shut_height = 1.1 + 0.001 * each;
        plan = planned(&side);
        draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
        for (int k = 0; k < 3; k++) {
            const scale values = scale_of(&drawing, parts[k], 1);
            for (int i = 0; i < drawing.stroke_count; i++) {
                const tside_stroke *s = drawing.strokes + i;
                if (s->part == parts[k])
                    ck_assert_msg(fmin(s->y, s->y_end) > values.at_from - 1e-9 &&
                                      fmax(s->y, s->y_end) < values.at_to + 1e-9,
                                  "%d: part %d is beyond its axis", each, (int)parts[k]);
            }
        }
    }
}
END_TEST

/* What is a round number but for rounding ends its axis, and does not begin another step. */
START_TEST(a_round_opening_ends_its_axis)
{
    static tside_drawing drawing;
    static const double rounds[][2] = {{200, 50}, {400, 100}, {800, 200}, {4, 1}, {8, 2}, {20, 5}, {40, 10}};
    tside_side side = plain();
    const tside_plan usual = planned(&side);
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    for (size_t i = 0; i < sizeof rounds / sizeof *rounds; i++) {
        const tside_picture picture = {
            .view = TSIDE_VIEW_TURNS, .tape = rounds[i][0] < 100 ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC, .scale = 1};
        tside_plan plan;
        tside_fault fault;
        scale opening;
        side.stops.open_height = usual.open.underside - usual.opening +
                                 rounds[i][0] * (rounds[i][0] < 100 ? 0.0254 : 1e-3);
        plan = planned(&side);
        ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
        opening = scale_of(&drawing, TSIDE_PART_OPENING, 1);
        NEAR(opening.to, rounds[i][0], 1e-9, "end of the axis", (int)i);
        ck_assert_int_eq(opening.numbers, (int)lround(rounds[i][0] / rounds[i][1]) + 1);
    }
}
END_TEST

Suite *figures_suite(void)
{
    Suite *suite = suite_create("figures");
    TCase *tests = tcase_create("figures");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, curves_are_what_the_turn_table_has);
    tcase_add_test(tests, figures_speak_the_tape_and_mark_the_turns_asked);
    tcase_add_test(tests, the_opening_stands_alone);
    tcase_add_test(tests, axes_have_a_tick_at_each_number);
    tcase_add_test(tests, figures_of_what_does_not_vary_are_drawn);
    tcase_add_test(tests, a_short_travel_has_smooth_curves);
    tcase_add_test(tests, axes_hold_their_curves);
    tcase_add_test(tests, a_round_opening_ends_its_axis);
    suite_add_tcase(suite, tests);
    return suite;
}
