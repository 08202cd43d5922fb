/* SPDX-License-Identifier: MIT */
/* The views beside the end wall: strokes where plan and travel have them, dimensions the plan's own numbers. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

Suite *views_suite(void);

/* --- what is drawn --- */

static void draw(const tside_side *side, const tside_plan *plan, tside_view view, tside_which_end end, double scale,
                 tside_drawing *drawing)
{
    const tside_picture picture = {.view = view, .end = end, .tape = TSIDE_TAPE_INCH, .scale = scale};
    tside_fault fault;
    ANSWERS(tside_draw(side, plan, &picture, drawing, &fault));
    ck_assert_int_lt(drawing->stroke_count, TSIDE_STROKES);
    ck_assert_int_gt(drawing->stroke_count, 5);
}

static double turned(const tside_side *side, tside_which_end end)
{
    return (side->hand == TSIDE_RIGHT) == (end == TSIDE_DRIVE_END) ? 1 : -1;
}

/* How far the nearest end of a part's straight strokes is from a place, as seen. */
static double nearest(const tside_drawing *drawing, tside_part part, double x, double y)
{
    double least = HUGE_VAL;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part == part && !stroke->arc)
            least = fmin(least, fmin(hypot(stroke->x - x, stroke->y - y), hypot(stroke->x_end - x, stroke->y_end - y)));
    }
    return least;
}

static void has_corner(const tside_drawing *drawing, tside_part part, double x, double y, const char *what)
{
    NEAR(nearest(drawing, part, x, y), 0, 1e-12, what, 0);
}

static void has_circle(const tside_drawing *drawing, tside_part part, double x, double y, double radius,
                       const char *what)
{
    double least = HUGE_VAL;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part == part && stroke->arc)
            least = fmin(least, fabs(stroke->x - x) + fabs(stroke->y - y) + fabs(stroke->radius - radius));
    }
    NEAR(least, 0, 1e-12, what, 0);
}

static const tside_dimension *told(const tside_drawing *drawing, tside_tells tells)
{
    for (int i = 0; i < drawing->dimension_count; i++)
        if (drawing->dimensions[i].tells == tells)
            return drawing->dimensions + i;
    return NULL;
}

/* A measure is the plan's own number, to the last bit, and where it has a line that is as long. */
static void tells(const tside_drawing *drawing, tside_tells what, double value)
{
    const tside_dimension *d = told(drawing, what);
    ck_assert_msg(d != NULL, "measure %d is not told", what);
    ck_assert_msg(memcmp(&d->value, &value, sizeof value) == 0, "measure %d: %.17g, and it is %.17g", what, d->value,
                  value);
    if (d->kind == TSIDE_DIMENSION_PLUMB || d->kind == TSIDE_DIMENSION_PLACE)
        NEAR(fabs(d->y_end - d->y), fabs(value), 1e-12, "up the page", (int)what);
    else if (d->kind == TSIDE_DIMENSION_DIAMETER)
        NEAR(hypot(d->x_end - d->x, d->y_end - d->y), value, 1e-12, "across a circle", (int)what);
    else
        NEAR(fabs(d->x_end - d->x), fabs(value), 1e-12, "across the page", (int)what);
}

/* Sides of every shape, either hand. */
enum { SIDES = 6 };

static tside_side side_of(int number)
{
    tside_side side;
    bench_any_side(&side, number);
    side.hand = number / 3 ? TSIDE_LEFT : TSIDE_RIGHT;
    side.drive.along = number / 3 ? -0.02 : 0;
    side.drive_end.extender.spacer = number / 3 ? 0.01 : 0;
    return side;
}

static const tside_end_plan *planned_end(const tside_plan *plan, int end)
{
    return end == TSIDE_DRIVE_END ? &plan->drive_end : &plan->free_end;
}

static const tside_end *asked_end(const tside_side *side, int end)
{
    return end == TSIDE_DRIVE_END ? &side->drive_end : &side->free_end;
}

/* --- the extender --- */

START_TEST(an_extender_is_drawn_as_it_is_cut)
{
    static tside_drawing drawing;
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_side side = side_of(each / 2);
        const tside_plan plan = planned(&side);
        const tside_layout *l = &planned_end(&plan, each % 2)->layout;
        const tside_extender *extender = &asked_end(&side, each % 2)->extender;
        const double half = extender->tube.side / 2;
        int named = 0;
        draw(&side, &plan, TSIDE_VIEW_EXTENDER, (tside_which_end)(each % 2), 10, &drawing);
        ck_assert_int_eq(drawing.outboard, 0);
        for (int corner = 0; corner < 4; corner++)
            has_corner(&drawing, TSIDE_PART_EXTENDER, corner < 2 ? 0 : l->cut_length, corner % 2 ? half : -half,
                       "tube");
        has_circle(&drawing, TSIDE_PART_HOLE, l->eye_from_top, 0, extender->eye_hole / 2, "eye bolt's hole");
        has_circle(&drawing, TSIDE_PART_HOLE, l->bow_from_top, 0, extender->bolt_hole / 2, "bow's hole");
        has_circle(&drawing, TSIDE_PART_HOLE, l->member_from_top, 0, extender->bolt_hole / 2, "member's hole");
        tells(&drawing, TSIDE_TELLS_CUT_LENGTH, l->cut_length);
        tells(&drawing, TSIDE_TELLS_EYE_FROM_TOP, l->eye_from_top);
        tells(&drawing, TSIDE_TELLS_BOW_FROM_TOP, l->bow_from_top);
        tells(&drawing, TSIDE_TELLS_MEMBER_FROM_TOP, l->member_from_top);
        tells(&drawing, TSIDE_TELLS_EYE_HOLE, extender->eye_hole);
        tells(&drawing, TSIDE_TELLS_BOW_HOLE, extender->bolt_hole);
        tells(&drawing, TSIDE_TELLS_MEMBER_HOLE, extender->bolt_hole);
        ck_assert_int_eq(drawing.dimension_count, 7);
        for (int i = 0; i < drawing.note_count; i++)
            named += drawing.notes[i].part ==
                     (turned(&side, (tside_which_end)(each % 2)) > 0 ? TSIDE_PART_TOP_RIGHT : TSIDE_PART_TOP_LEFT);
        ck_assert_int_eq(named, 1);
    }
}
END_TEST

/* Walls are drawn hidden where they are a millimetre on paper or more. */
START_TEST(a_tube_shows_its_walls_where_they_are_seen)
{
    static tside_drawing drawing;
    const tside_side side = plain();
    const tside_plan plan = planned(&side);
    const tside_square *tube = &side.drive_end.extender.tube;
    const double inner = tube->side / 2 - tube->wall;
    draw(&side, &plan, TSIDE_VIEW_EXTENDER, TSIDE_DRIVE_END, 2, &drawing);
    has_corner(&drawing, TSIDE_PART_EXTENDER, plan.drive_end.layout.cut_length, inner, "inside of a wall");
    draw(&side, &plan, TSIDE_VIEW_EXTENDER, TSIDE_DRIVE_END, 5, &drawing);
    ck_assert(nearest(&drawing, TSIDE_PART_EXTENDER, 0, inner) > 1e-3);
}
END_TEST

/* Holes as drills come, whatever is nearer by the tape; running measures in inches alone. */
START_TEST(a_piece_is_told_as_it_is_worked)
{
    const tside_dimension hole = {
        .tells = TSIDE_TELLS_BOW_HOLE, .kind = TSIDE_DIMENSION_DIAMETER, .value = 0.0254 * 11 / 32};
    const tside_dimension place = {
        .tells = TSIDE_TELLS_MEMBER_FROM_TOP, .kind = TSIDE_DIMENSION_RUNNING, .value = 0.0254 * 40.8125};
    tside_dimension height = {.tells = TSIDE_TELLS_SHUT_ABOVE_GROUND, .kind = TSIDE_DIMENSION_PLACE, .value = -0.0508};
    tside_dimension fine = hole;
    char words[80];
    tside_fault fault;
    ANSWERS(tside_dimension_text(&hole, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "bow, hole 11/32 in");
    fine.value = 0.0095;
    ANSWERS(tside_dimension_text(&fine, TSIDE_TAPE_METRIC, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "bow, hole 9.5 mm");
    fine.value = 0.009;
    ANSWERS(tside_dimension_text(&fine, TSIDE_TAPE_METRIC, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "bow, hole 9 mm");
    ANSWERS(tside_dimension_text(&place, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "40 13/16 in");
    ANSWERS(tside_dimension_text(&height, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "2 in below the ground");
    height.value = 0.0508;
    ANSWERS(tside_dimension_text(&height, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "2 in above the ground");
    height.kind = TSIDE_DIMENSION_PLUMB;
    ANSWERS(tside_dimension_text(&height, TSIDE_TAPE_INCH, words, sizeof words, NULL, &fault));
    ck_assert_str_eq(words, "2 in");
}
END_TEST

/* --- the corner --- */

START_TEST(a_corner_is_drawn_as_it_stands)
{
    static tside_drawing drawing;
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_which_end end = (tside_which_end)(each % 2);
        const tside_side side = side_of(each / 2);
        const tside_plan plan = planned(&side);
        const tside_end_plan *at = planned_end(&plan, (int)end);
        const tside_end *asked = asked_end(&side, (int)end);
        const tside_collar collar = end == TSIDE_DRIVE_END ? tside_drive_collar(&side.drive) : side.collar;
        const double way = turned(&side, end), x = plan.open.x, r = plan.open.diameter / 2, past = side.curtain.past,
                     beyond = end == TSIDE_DRIVE_END ? plan.bar_beyond_drive : plan.bar_beyond_free,
                     centre = at->stand.line - collar.along, half = fmax(r, collar.offset),
                     bar = side.bar.tube.diameter / 2, face = side.frame.tube.diameter / 2 + asked->extender.spacer;
        draw(&side, &plan, TSIDE_VIEW_CORNER, end, 5, &drawing);
        ck_assert_int_eq(drawing.outboard, (int)way);
        for (int hand = -1; hand <= 1; hand += 2) {
            has_corner(&drawing, TSIDE_PART_ROLL, way * (x + hand * r), -past, "curtain's edge");
            has_corner(&drawing, TSIDE_PART_BAR, way * (x + hand * bar), -past, "where the bar is bare");
            if (end == TSIDE_FREE_END)
                has_corner(&drawing, TSIDE_PART_BAR, way * (x + hand * bar), -past - beyond, "bar's end");
            for (int out = -1; out <= 1; out += 2)
                has_corner(&drawing, end == TSIDE_DRIVE_END ? TSIDE_PART_DRIVE : TSIDE_PART_COLLAR,
                           way * (x + hand * half), -centre - out * collar.half_length, "drive or collar");
        }
        has_circle(&drawing, TSIDE_PART_GUIDE, way * at->eye_x, -at->stand.eye, asked->guide.tube.diameter / 2,
                   "guide at its eye");
        has_corner(&drawing, TSIDE_PART_EYE_BOLT, way * (at->eye_x - asked->extender.eye_root / 2), -at->stand.eye,
                   "eye bolt");
        has_corner(&drawing, TSIDE_PART_EXTENDER,
                   way * (at->eye_x + at->layout.eye_from_top * sin(at->layout.angle) +
                          asked->extender.tube.side / 2 * cos(at->layout.angle)),
                   -face - asked->extender.tube.side, "extender's outer face");
        tells(&drawing, TSIDE_TELLS_CURTAIN_PAST, past);
        tells(&drawing, TSIDE_TELLS_EYE_OFF_BOW, at->stand.eye);
        tells(&drawing, TSIDE_TELLS_EYE_OFF_TUBE, asked->extender.eye_stand_off);
        tells(&drawing, TSIDE_TELLS_RUN_ON, at->stand.run_on);
        if (end == TSIDE_FREE_END)
            tells(&drawing, TSIDE_TELLS_BEYOND_FREE, plan.bar_beyond_free);
        else
            ck_assert_ptr_null(told(&drawing, TSIDE_TELLS_BEYOND_FREE));
    }
}
END_TEST

/* What lies under the tube is hidden, and only there. */
START_TEST(the_extender_hides_what_is_below_it)
{
    static tside_drawing drawing;
    tside_side side = plain();
    const tside_plan plan = planned(&side);
    const double inner = side.frame.tube.diameter / 2, past = side.curtain.past;
    double hidden = 0;
    ck_assert(past > inner && past < inner + side.drive_end.extender.tube.side);
    draw(&side, &plan, TSIDE_VIEW_CORNER, TSIDE_DRIVE_END, 5, &drawing);
    for (int i = 0; i < drawing.stroke_count; i++) {
        const tside_stroke *stroke = drawing.strokes + i;
        if (stroke->part != TSIDE_PART_ROLL || stroke->line != TSIDE_LINE_DASHED)
            continue;
        hidden += hypot(stroke->x_end - stroke->x, stroke->y_end - stroke->y);
    }
    NEAR(hidden, 2 * (past - inner) + plan.open.diameter, 1e-12, "hidden edges of the roll", 0);
    on_hip(&side);
    side.stops.gap = 0.3;
    {
        const tside_plan hung = planned(&side);
        draw(&side, &hung, TSIDE_VIEW_CORNER, TSIDE_DRIVE_END, 5, &drawing);
        ck_assert_ptr_null(told(&drawing, TSIDE_TELLS_EYE_OFF_TUBE));
        ck_assert(nearest(&drawing, TSIDE_PART_EXTENDER, 0, 0) >= HUGE_VAL);
        tells(&drawing, TSIDE_TELLS_EYE_OFF_BOW, hung.drive_end.stand.eye);
    }
}
END_TEST

/* --- the roll --- */

START_TEST(a_roll_is_drawn_where_the_bar_is)
{
    static tside_drawing drawing;
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_side side = side_of(each / 2);
        const tside_plan plan = planned(&side);
        const int open = each % 2;
        const tside_position *at = open ? &plan.open : &plan.shut;
        const double way = turned(&side, TSIDE_DRIVE_END);
        for (int scale = 1; scale <= 50; scale *= 5) {
            draw(&side, &plan, open ? TSIDE_VIEW_ROLL_OPEN : TSIDE_VIEW_ROLL_SHUT, TSIDE_FREE_END, scale, &drawing);
            ck_assert_int_eq(drawing.outboard, (int)way);
            has_circle(&drawing, TSIDE_PART_ROLL, way * at->x, at->y, at->diameter / 2, "roll");
            has_circle(&drawing, TSIDE_PART_BAR, way * at->x, at->y, side.bar.tube.diameter / 2, "bar");
            tells(&drawing, open ? TSIDE_TELLS_OPEN_BELOW_HIP : TSIDE_TELLS_SHUT_BELOW_HIP,
                  side.curtain.hip - at->underside);
            tells(&drawing, open ? TSIDE_TELLS_OPEN_ABOVE_GROUND : TSIDE_TELLS_SHUT_ABOVE_GROUND,
                  at->underside - plan.drive_end.ground);
            tells(&drawing, open ? TSIDE_TELLS_OPENING : TSIDE_TELLS_SEAL, open ? plan.opening : plan.seal);
            tells(&drawing, open ? TSIDE_TELLS_OPEN_DIAMETER : TSIDE_TELLS_SHUT_DIAMETER, at->diameter);
            ck_assert_int_eq(drawing.dimension_count, 4);
        }
    }
}
END_TEST

/* Ground is a line with its measure where it is near on paper, and words where it is not. */
START_TEST(what_is_far_from_a_roll_is_told_in_words)
{
    static tside_drawing drawing;
    const tside_side side = plain();
    const tside_plan plan = planned(&side);
    const double below = plan.shut.y - plan.drive_end.ground - plan.shut.diameter / 2;
    draw(&side, &plan, TSIDE_VIEW_ROLL_SHUT, TSIDE_DRIVE_END, below / 0.07, &drawing);
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_SHUT_ABOVE_GROUND)->kind, TSIDE_DIMENSION_PLUMB);
    ck_assert(nearest(&drawing, TSIDE_PART_GROUND, 0, 0) < HUGE_VAL);
    draw(&side, &plan, TSIDE_VIEW_ROLL_SHUT, TSIDE_DRIVE_END, below / 0.09, &drawing);
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_SHUT_ABOVE_GROUND)->kind, TSIDE_DIMENSION_PLACE);
    ck_assert(nearest(&drawing, TSIDE_PART_GROUND, 0, 0) >= HUGE_VAL);
}
END_TEST

/* --- along the house --- */

START_TEST(a_side_is_drawn_along_the_house)
{
    static tside_drawing drawing;
    for (int each = 0; each < SIDES; each++) {
        const tside_side side = side_of(each);
        const tside_plan plan = planned(&side);
        const tside_collar drive = tside_drive_collar(&side.drive);
        const double way = side.hand == TSIDE_RIGHT ? 1 : -1, past = side.curtain.past, y = plan.shut.y,
                     r = plan.shut.diameter / 2, bow = side.frame.tube.diameter / 2,
                     centre = -(plan.drive_end.stand.line - drive.along);
        draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_FREE_END, 200, &drawing);
        ck_assert_int_eq(drawing.outboard, 0);
        has_corner(&drawing, TSIDE_PART_BOW, way * bow, plan.drive_end.ground, "drive's end bow");
        has_corner(&drawing, TSIDE_PART_BOW, way * (side.length + bow), plan.free_end.ground, "free end's bow");
        has_corner(&drawing, TSIDE_PART_CURTAIN, -way * past, side.curtain.hip, "curtain");
        has_corner(&drawing, TSIDE_PART_CURTAIN, way * (side.length + past), y, "curtain");
        has_corner(&drawing, TSIDE_PART_ROLL, -way * past, y - r, "roll");
        has_corner(&drawing, TSIDE_PART_DRIVE, way * (centre - drive.half_length), y + drive.height, "drive");
        has_corner(&drawing, TSIDE_PART_BAR, way * (side.length + past + plan.bar_beyond_free),
                   y + side.bar.tube.diameter / 2, "bar's end");
        has_corner(&drawing, TSIDE_PART_EYE_BOLT, -way * plan.drive_end.stand.eye, plan.drive_end.eye_y, "eye");
        tells(&drawing, TSIDE_TELLS_SIDE_LENGTH, side.length);
        tells(&drawing, TSIDE_TELLS_CURTAIN_LENGTH, plan.curtain_length);
        tells(&drawing, TSIDE_TELLS_BAR_LENGTH, plan.bar_length);
        tells(&drawing, TSIDE_TELLS_BEYOND_DRIVE, plan.bar_beyond_drive);
        tells(&drawing, TSIDE_TELLS_BEYOND_FREE, plan.bar_beyond_free);
        tells(&drawing, TSIDE_TELLS_JOINT_PLACE, plan.splice_near);
    }
}
END_TEST

static int joints_drawn(const tside_drawing *drawing)
{
    int most = -1;
    for (int i = 0; i < drawing->stroke_count; i++)
        if (drawing->strokes[i].part == TSIDE_PART_JOINT && drawing->strokes[i].index > most)
            most = drawing->strokes[i].index;
    return most + 1;
}

/* Of joints as given only the nearest is known; of a bar from stock each, where its sticks meet. */
START_TEST(joints_are_drawn_as_far_as_they_are_known)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan = planned(&side);
    tside_bar_stick sticks[64];
    tside_fault fault;
    int count;
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 200, &drawing);
    ck_assert_int_eq(joints_drawn(&drawing), 1);
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.stock = 6.4;
    plan = planned(&side);
    for (double scale = 20; scale <= 200; scale *= 10) {
        draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, scale, &drawing);
        ANSWERS(tside_bar_sticks(&side.bar, plan.curtain_length, plan.bar_beyond_drive, plan.bar_beyond_free, sticks,
                                 64, &count, &fault));
        ck_assert_int_eq(joints_drawn(&drawing), count - 1);
        ck_assert_int_gt(count, 2);
        for (int i = 0; i < drawing.stroke_count; i++) {
            const tside_stroke *stroke = drawing.strokes + i;
            const double begins = -side.curtain.past - plan.bar_beyond_drive;
            if (stroke->part == TSIDE_PART_JOINT)
                NEAR(fmin(fabs(stroke->x - begins - sticks[stroke->index + 1].from),
                          fabs(stroke->x - begins - sticks[stroke->index].to)),
                     0, 1e-12, "joint", stroke->index);
        }
    }
    side.bar.joints = TSIDE_JOINTS_GIVEN;
    side.bar.splices = 0;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 200, &drawing);
    ck_assert_int_eq(joints_drawn(&drawing), 0);
    ck_assert_ptr_null(told(&drawing, TSIDE_TELLS_JOINT_PLACE));
}
END_TEST

/* --- figures --- */

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
            NEAR(stroke->x, last->x_end, 0, "joined", i);
            NEAR(stroke->y, last->y_end, 0, "joined", i);
        }
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
        const tside_stroke *first[TSIDE_PARTS] = {NULL}, *last[TSIDE_PARTS] = {NULL};
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

/* A guide that stands, and a travel of nothing. */
START_TEST(figures_of_what_does_not_vary_are_drawn)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan;
    side.drive_end.guide.foot = side.free_end.guide.foot = TSIDE_FOOT_FIXED;
    side.drive_end.rise = side.free_end.rise = 0.45;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
    side = plain();
    side.stops.shut_by = TSIDE_SHUT_HEIGHT;
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.shut_height = side.stops.open_height = 0.8;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_TURNS, TSIDE_DRIVE_END, 1, &drawing);
    scale_of(&drawing, TSIDE_PART_TORQUE, 1);
}
END_TEST

/* --- all of them --- */

START_TEST(views_that_cannot_be_drawn_are_refused)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan;
    tside_fault fault;
    tside_picture picture = {.view = TSIDE_VIEW_EXTENDER, .scale = 10};
    on_hip(&side);
    side.stops.gap = 0.3;
    plan = planned(&side);
    REFUSES(tside_draw(&side, &plan, &picture, &drawing, &fault), drawing, TSIDE_NOT_MODELLED, "picture.view",
            TSIDE_NO_RELATION);
    side = plain();
    side.length = 500;
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.splice_near = 0.6;
    side.bar.stock = 2.4;
    plan = planned(&side);
    picture.view = TSIDE_VIEW_ALONG;
    REFUSES(tside_draw(&side, &plan, &picture, &drawing, &fault), drawing, TSIDE_NOT_MODELLED, "plan.splices",
            TSIDE_ABOVE);
    NEAR(fault.bound, TSIDE_JOINTS_DRAWN, 0, "most joints", 0);
    side.bar.stock = 3;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 20, &drawing);
    ck_assert_int_eq(joints_drawn(&drawing), plan.splices);
}
END_TEST

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

START_TEST(texts_keep_off_texts_and_outlines)
{
    static tside_drawing drawing;
    static const struct {
        const char *name;
        tside_view view;
        double scales[3];
    } views[] = {
        {"corner", TSIDE_VIEW_CORNER, {2, 5, 10}},      {"extender", TSIDE_VIEW_EXTENDER, {5, 10, 20}},
        {"along", TSIDE_VIEW_ALONG, {100, 200, 500}},   {"roll shut", TSIDE_VIEW_ROLL_SHUT, {1, 2, 5}},
        {"roll open", TSIDE_VIEW_ROLL_OPEN, {1, 2, 5}}, {"turns", TSIDE_VIEW_TURNS, {1, 1, 1}},
    };
    for (int each = 0; each < 2 * SIDES; each++) {
        const tside_side side = side_of(each / 2);
        const tside_plan plan = planned(&side);
        for (size_t v = 0; v < sizeof views / sizeof *views; v++)
            for (int k = 0; k < 6; k++) {
                const tside_picture picture = {.view = views[v].view,
                                               .end = (tside_which_end)(each % 2),
                                               .tape = k < 3 ? TSIDE_TAPE_INCH : TSIDE_TAPE_METRIC,
                                               .scale = views[v].scales[k % 3]};
                tside_fault fault;
                ANSWERS(tside_draw(&side, &plan, &picture, &drawing, &fault));
                check_texts(&drawing, views[v].name, 10 * each + k);
            }
    }
}
END_TEST

Suite *views_suite(void)
{
    Suite *suite = suite_create("views");
    TCase *tests = tcase_create("views");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, an_extender_is_drawn_as_it_is_cut);
    tcase_add_test(tests, a_tube_shows_its_walls_where_they_are_seen);
    tcase_add_test(tests, a_piece_is_told_as_it_is_worked);
    tcase_add_test(tests, a_corner_is_drawn_as_it_stands);
    tcase_add_test(tests, the_extender_hides_what_is_below_it);
    tcase_add_test(tests, a_roll_is_drawn_where_the_bar_is);
    tcase_add_test(tests, what_is_far_from_a_roll_is_told_in_words);
    tcase_add_test(tests, a_side_is_drawn_along_the_house);
    tcase_add_test(tests, joints_are_drawn_as_far_as_they_are_known);
    tcase_add_test(tests, curves_are_what_the_turn_table_has);
    tcase_add_test(tests, figures_speak_the_tape_and_mark_the_turns_asked);
    tcase_add_test(tests, figures_of_what_does_not_vary_are_drawn);
    tcase_add_test(tests, views_that_cannot_be_drawn_are_refused);
    tcase_add_test(tests, texts_keep_off_texts_and_outlines);
    suite_add_tcase(suite, tests);
    return suite;
}
