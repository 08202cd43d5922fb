/* SPDX-License-Identifier: MIT */
/* The views beside the end wall: strokes where plan and travel have them, dimensions the plan's own numbers. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "drawings.h"
#include "expect.h"
#include "plans.h"

Suite *views_suite(void);

/* --- the extender --- */

/* A frame for the piece's mark, on the tube and off its holes, by the top end: before the bow's hole. */
static void check_mark(const tside_drawing *drawing, const tside_layout *l, const tside_extender *extender)
{
    int edges = 0;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *stroke = drawing->strokes + i;
        if (stroke->part != TSIDE_PART_FACE)
            continue;
        edges++;
        ck_assert(fmin(stroke->x, stroke->x_end) > l->eye_from_top + extender->eye_hole / 2);
        ck_assert(fmax(stroke->x, stroke->x_end) < l->bow_from_top - extender->bolt_hole / 2);
        ck_assert(fmax(fabs(stroke->y), fabs(stroke->y_end)) < extender->tube.side / 2);
    }
    ck_assert_int_eq(edges, 4);
}

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
        check_mark(&drawing, l, extender);
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
    for (int corner = 0; corner < 4; corner++)
        has_corner(&drawing, TSIDE_PART_EXTENDER, corner < 2 ? 0 : plan.drive_end.layout.cut_length,
                   corner % 2 ? inner : -inner, "inside of a wall");
    draw(&side, &plan, TSIDE_VIEW_EXTENDER, TSIDE_DRIVE_END, tube->wall / 1e-3, &drawing);
    ck_assert(nearest(&drawing, TSIDE_PART_EXTENDER, 0, inner) < 1e-12);
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

/* How long the roll's hidden edges are where its curtain ends so far outside the bow's plane. */
static double hidden_of_roll(tside_side side, double past, tside_plan *plan)
{
    static tside_drawing drawing;
    double hidden = 0;
    side.curtain.past = past;
    *plan = planned(&side);
    draw(&side, plan, TSIDE_VIEW_CORNER, TSIDE_DRIVE_END, 5, &drawing);
    for (int i = 0; i < drawing.stroke_count; i++) {
        const tside_stroke *stroke = drawing.strokes + i;
        if (stroke->part == TSIDE_PART_ROLL && stroke->line == TSIDE_LINE_DASHED)
            hidden += hypot(stroke->x_end - stroke->x, stroke->y_end - stroke->y);
    }
    return hidden;
}

/* What lies under the tube is hidden, and only there: flush with a face of it is not. */
START_TEST(the_extender_hides_what_is_below_it)
{
    static tside_drawing drawing;
    tside_side side = plain();
    const double inner = side.frame.tube.diameter / 2, outer = inner + side.drive_end.extender.tube.side,
                 past = side.curtain.past;
    tside_plan plan;
    const double hidden = hidden_of_roll(side, past, &plan);
    ck_assert(past > inner && past < outer);
    NEAR(hidden, 2 * (past - inner) + plan.open.diameter, 1e-12, "hidden edges of the roll", 0);
    NEAR(hidden_of_roll(side, inner, &plan), 0, 0, "edges flush with the inner face", 0);
    NEAR(hidden_of_roll(side, outer, &plan), 2 * (outer - inner), 1e-12, "edges flush with the outer face", 0);
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

/* Where the curtain ends in the plane of the tube's inner face nothing of it is under the tube; a hair on, its edge is.
 */
START_TEST(an_edge_flush_with_the_extender_is_seen)
{
    const tside_side side = plain();
    const double inner = side.frame.tube.diameter / 2 + side.drive_end.extender.spacer;
    for (int beyond = 0; beyond <= 1; beyond++) {
        tside_plan plan;
        const double hidden = hidden_of_roll(side, inner + 1e-6 * beyond, &plan);
        NEAR(hidden, beyond * (plan.open.diameter + 2e-6), 1e-12, "hidden edges of the roll", beyond);
    }
}
END_TEST

/* --- the roll --- */

/* A guide that stands in the ground, its top on the hip rail: measures from the hip and the face, the plan's own. */
START_TEST(a_guide_that_stands_is_told_from_the_hip)
{
    static tside_drawing drawing;
    tside_side side = plain();
    tside_plan plan;
    const tside_fixed *fixed = &plan.drive_end.fixed;
    on_hip(&side);
    side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_END_WALL, TSIDE_DRIVE_END, 20, &drawing);
    tells(&drawing, TSIDE_TELLS_TOP_HEIGHT, fixed->top_y - side.curtain.hip);
    ck_assert(told(&drawing, TSIDE_TELLS_TOP_LEVEL) && told(&drawing, TSIDE_TELLS_FOOT_LEVEL));
    NEAR(told(&drawing, TSIDE_TELLS_FOOT_LEVEL)->value - told(&drawing, TSIDE_TELLS_TOP_LEVEL)->value,
         fixed->foot_x - fixed->top_x, 1e-12, "foot outboard of top", 0);
}
END_TEST

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
    for (int each = 0; each < 6; each++) { /* the last stick but one is whole, or cut */
        const double scale = each % 2 ? 200 : 20;
        side.bar.stock = 6.4 - 0.3 * (each / 2);
        plan = planned(&side);
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

/* --- what cannot be drawn --- */

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
    tcase_add_test(tests, an_edge_flush_with_the_extender_is_seen);
    tcase_add_test(tests, a_guide_that_stands_is_told_from_the_hip);
    tcase_add_test(tests, a_roll_is_drawn_where_the_bar_is);
    tcase_add_test(tests, what_is_far_from_a_roll_is_told_in_words);
    tcase_add_test(tests, a_side_is_drawn_along_the_house);
    tcase_add_test(tests, joints_are_drawn_as_far_as_they_are_known);
    tcase_add_test(tests, views_that_cannot_be_drawn_are_refused);
    suite_add_tcase(suite, tests);
    return suite;
}
