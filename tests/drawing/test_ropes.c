/* SPDX-License-Identifier: MIT */
/* Ropes as they are drawn: along the house, over the roll, and where too many are near. */
#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "drawings.h"
#include "expect.h"
#include "plans.h"

Suite *ropes_suite(void);

/* A side with ropes that run so. */
static tside_side roped(int number, tside_ropes ropes)
{
    tside_side side = side_of(number);
    side.ropes = ropes;
    side.rope.pitch = 1.3;
    side.rope.hook_above = number % 2 ? 0.03 : 0;
    side.rope.hook_out = number % 2 ? 0.02 : 0;
    return side;
}

static int is_rope(const tside_stroke *stroke, tside_line_type line)
{
    return stroke->part == TSIDE_PART_ROPE && stroke->line == line;
}

static int ropes_drawn(const tside_drawing *drawing, tside_line_type line)
{
    int count = 0;
    for (int i = 0; i < drawing->stroke_count; i++)
        count += is_rope(drawing->strokes + i, line);
    return count;
}

/* Each leg from its hook to its anchor, by their numbers from the drive's end. */
START_TEST(ropes_are_drawn_from_hook_to_anchor)
{
    static tside_drawing drawing;
    for (int each = 0; each < 2 * SIDES; each++) {
        const int zigzag = each % 2;
        const tside_side side = roped(each / 2, zigzag ? TSIDE_ZIGZAG_ROPE : TSIDE_STRAIGHT_ROPES);
        const tside_plan plan = planned(&side);
        const tside_roped *r = &plan.rope.bears;
        const double way = side.hand == TSIDE_RIGHT ? 1 : -1;
        int leg = 0;
        draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 200, &drawing);
        for (int i = 0; i < drawing.stroke_count; i++) {
            const tside_stroke *stroke = drawing.strokes + i;
            const double hook = zigzag ? (leg + 1) / 2 : leg, anchor = zigzag ? leg / 2 + 0.5 : leg;
            if (stroke->part != TSIDE_PART_ROPE)
                continue;
            NEAR(stroke->x, way * hook * r->pitch, 1e-12, "hook along the house", leg);
            NEAR(stroke->y, plan.rope.hook_y, 0, "hook", leg);
            NEAR(stroke->x_end, way * anchor * r->pitch, 1e-12, "anchor along the house", leg);
            NEAR(stroke->y_end, plan.rope.anchor_y, 0, "anchor", leg);
            leg++;
        }
        ck_assert_int_eq(leg, zigzag ? 2 * r->lower_hooks : r->ropes);
        NEAR((r->upper_hooks - 1) * r->pitch, side.length, 1e-12 * side.length, "bays", each);
        tells(&drawing, TSIDE_TELLS_ROPE_PITCH, r->pitch);
        ck_assert_int_eq(told(&drawing, TSIDE_TELLS_ROPE_PITCH)->times, r->upper_hooks - 1);
    }
}
END_TEST

/* Where legs would run together, eight at each end; where there are more than lines are left, as many as those. */
START_TEST(ropes_that_are_too_many_are_drawn_at_both_ends)
{
    static tside_drawing drawing;
    tside_side side = roped(0, TSIDE_ZIGZAG_ROPE);
    tside_plan plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 600, &drawing);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 2 * plan.rope.bears.lower_hooks);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_CHAIN), 0);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 700, &drawing);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 16);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_CHAIN), 2);
    has_corner(&drawing, TSIDE_PART_ROPE, 4 * plan.rope.bears.pitch, plan.rope.hook_y, "hook where the gap begins");
    has_corner(&drawing, TSIDE_PART_ROPE, side.length - 3.5 * plan.rope.bears.pitch, plan.rope.anchor_y,
               "anchor where it ends");
    has_corner(&drawing, TSIDE_PART_ROPE, side.length, plan.rope.hook_y, "last hook");
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_ROPE_PITCH)->times, plan.rope.bears.upper_hooks - 1);
    side.ropes = TSIDE_STRAIGHT_ROPES; /* a whole bay apart */
    side.rope.pitch = 0.9;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 0.99e3 * plan.rope.bears.pitch, &drawing);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), plan.rope.bears.ropes);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 1.01e3 * plan.rope.bears.pitch, &drawing);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 16);
    side.ropes = TSIDE_ZIGZAG_ROPE;
    side.length = 500;
    side.rope.pitch = 1;
    plan = planned(&side);
    draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 20, &drawing);
    ck_assert_int_ge(drawing.stroke_count, TSIDE_STROKES - 1);
    ck_assert_int_gt(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 300);
    ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_CHAIN), 2);
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.splice_near = 0.6;
    side.bar.stock = 2.6;
    plan = planned(&side);
    ck_assert_int_eq(plan.splices, TSIDE_JOINTS_DRAWN);
    for (int large = 0; large < 2; large++) { /* so large that the grounds have as many strokes as may be, too */
        draw(&side, &plan, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, large ? 0.1 : 5, &drawing);
        ck_assert_int_ge(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 4);
        ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_CHAIN), 2);
    }
}
END_TEST

/* As long as the way from hook to anchor over the roll, and outboard of it. */
static void check_over(const tside_drawing *drawing, const tside_rope_plan *rope, const tside_position *at, double path)
{
    double length = 0, way = drawing->outboard;
    for (int i = 0; i < drawing->stroke_count; i++) {
        const tside_stroke *s = drawing->strokes + i;
        if (s->part != TSIDE_PART_ROPE)
            continue;
        length += s->arc ? s->radius * s->sweep : hypot(s->x_end - s->x, s->y_end - s->y);
        if (s->arc)
            ck_assert(way * cos(s->from + s->sweep / 2) > 0 && s->sweep > 0);
    }
    NEAR(length, path, 1e-12, "path of the rope", 0);
    has_corner(drawing, TSIDE_PART_ROPE, way * rope->hook_x, rope->hook_y, "hook");
    has_corner(drawing, TSIDE_PART_ROPE, way * rope->anchor_x, rope->anchor_y, "anchor");
    if (length > hypot(rope->hook_x - rope->anchor_x, rope->hook_y - rope->anchor_y) + 1e-9)
        has_circle(drawing, TSIDE_PART_ROPE, way * at->x, at->y, at->diameter / 2, "rope on the roll");
}

/* Its name points at the rope: half its way along the roll. */
static int is_named_on_roll(const tside_drawing *drawing)
{
    const tside_stroke *over = NULL;
    int named = 0;
    for (int i = 0; i < drawing->stroke_count; i++)
        if (drawing->strokes[i].part == TSIDE_PART_ROPE && drawing->strokes[i].arc)
            over = drawing->strokes + i;
    for (int i = 0; i < drawing->note_count && over; i++)
        if (drawing->notes[i].part == TSIDE_PART_ROPE) {
            const double middle = over->from + over->sweep / 2;
            NEAR(drawing->notes[i].x, over->x + over->radius * cos(middle), 1e-12, "name across", 0);
            NEAR(drawing->notes[i].y, over->y + over->radius * sin(middle), 1e-12, "name up", 0);
            ck_assert_int_eq(drawing->notes[i].index, 0);
            named++;
        }
    return named;
}

/* At an end wall it is named at its anchor. */
static int is_named_at_anchor(const tside_drawing *drawing, const tside_rope_plan *rope)
{
    int named = 0;
    for (int i = 0; i < drawing->note_count; i++)
        if (drawing->notes[i].part == TSIDE_PART_ROPE) {
            NEAR(drawing->notes[i].x, drawing->outboard * rope->anchor_x, 1e-12, "name across", 0);
            NEAR(drawing->notes[i].y, rope->anchor_y, 1e-12, "name up", 0);
            ck_assert_int_eq(drawing->notes[i].index, 0);
            named++;
        }
    return named;
}

/* The library's own way over the roll, which is reckoned without any picture. */
static double path_over(const tside_side *side, const tside_plan *plan, double turns)
{
    const tside_rope rope = {.upper_x = plan->rope.hook_x,
                             .upper_y = plan->rope.hook_y,
                             .lower_x = plan->rope.anchor_x,
                             .lower_y = plan->rope.anchor_y,
                             .pitch = side->rope.pitch,
                             .line = side->rope.line,
                             .film = side->rope.film};
    const tside_travel travel = travel_of(side);
    tside_rope_over over;
    tside_fault fault;
    ANSWERS(tside_rope_over_at(&rope, side->length, &travel, turns, &over, &fault));
    return over.path;
}

START_TEST(a_rope_lies_over_the_roll_at_an_end)
{
    static tside_drawing drawing;
    int named = 0, at_anchor = 0;
    for (int each = 0; each < SIDES; each++) {
        const tside_side side = roped(each, TSIDE_STRAIGHT_ROPES);
        const tside_plan plan = planned(&side);
        const double shut = path_over(&side, &plan, 0), open = path_over(&side, &plan, plan.open.turns);
        for (int end = 0; end < 2; end++) {
            draw(&side, &plan, TSIDE_VIEW_END_WALL, (tside_which_end)end, 20, &drawing);
            check_over(&drawing, &plan.rope, &plan.shut, shut);
            at_anchor += is_named_at_anchor(&drawing, &plan.rope);
        }
        draw(&side, &plan, TSIDE_VIEW_ROLL_SHUT, TSIDE_DRIVE_END, 100, &drawing);
        check_over(&drawing, &plan.rope, &plan.shut, shut);
        named += is_named_on_roll(&drawing);
        tells(&drawing, TSIDE_TELLS_ANCHOR_HEIGHT, plan.rope.anchor_y - plan.drive_end.ground);
        draw(&side, &plan, TSIDE_VIEW_ROLL_OPEN, TSIDE_DRIVE_END, 100, &drawing);
        check_over(&drawing, &plan.rope, &plan.open, open);
        named += is_named_on_roll(&drawing);
        tells(&drawing, TSIDE_TELLS_HOOK_HEIGHT, plan.rope.hook_y - side.curtain.hip);
    }
    ck_assert_int_ge(named, SIDES);
    ck_assert_int_ge(at_anchor, SIDES);
}
END_TEST

/* From hooks far outboard ropes hang beside the roll: straight, and named on their line where that is beside it. */
START_TEST(a_rope_that_passes_the_roll_is_straight)
{
    static tside_drawing drawing;
    for (int each = 0; each < SIDES; each++) {
        tside_side side = roped(each, TSIDE_STRAIGHT_ROPES);
        tside_plan plan;
        double dx, dy, length, named = HUGE_VAL;
        side.rope.hook_out = 1.3;
        plan = planned(&side);
        dx = plan.rope.anchor_x - plan.rope.hook_x;
        dy = plan.rope.anchor_y - plan.rope.hook_y;
        length = hypot(dx, dy);
        NEAR(path_over(&side, &plan, 0), length, 1e-12, "straight", each);
        draw(&side, &plan, TSIDE_VIEW_ROLL_SHUT, TSIDE_DRIVE_END, 300, &drawing);
        ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 1);
        check_over(&drawing, &plan.rope, &plan.shut, length);
        for (int i = 0; i < drawing.note_count; i++)
            if (drawing.notes[i].part == TSIDE_PART_ROPE) {
                const double x = drawing.outboard * drawing.notes[i].x - plan.rope.hook_x,
                             y = drawing.notes[i].y - plan.rope.hook_y;
                NEAR(x * dy - y * dx, 0, 1e-12, "on the rope", each);
                named = fabs((x - plan.shut.x + plan.rope.hook_x) * dx + (y - plan.shut.y + plan.rope.hook_y) * dy);
            }
        NEAR(named, 0, 1e-12, "beside the roll", each);
    }
}
END_TEST

/* An end that is level with what it is told by has no line; hooks out of the view are not told in it. */
START_TEST(the_ends_of_a_rope_are_told_where_they_are_seen)
{
    static tside_drawing drawing;
    char words[80];
    tside_fault fault;
    const tside_side level = roped(0, TSIDE_STRAIGHT_ROPES), above = roped(1, TSIDE_STRAIGHT_ROPES);
    const tside_plan on_hip = planned(&level), higher = planned(&above);
    draw(&level, &on_hip, TSIDE_VIEW_ROLL_OPEN, TSIDE_DRIVE_END, 5, &drawing);
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_HOOK_HEIGHT)->kind, TSIDE_DIMENSION_PLACE);
    ANSWERS(tside_dimension_text(told(&drawing, TSIDE_TELLS_HOOK_HEIGHT), TSIDE_TAPE_METRIC, words, sizeof words, NULL,
                                 &fault));
    ck_assert_str_eq(words, "hook at the hip");
    draw(&above, &higher, TSIDE_VIEW_ROLL_OPEN, TSIDE_DRIVE_END, 5, &drawing);
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_HOOK_HEIGHT)->kind, TSIDE_DIMENSION_PLUMB);
    ANSWERS(tside_dimension_text(told(&drawing, TSIDE_TELLS_HOOK_HEIGHT), TSIDE_TAPE_METRIC, words, sizeof words, NULL,
                                 &fault));
    ck_assert_str_eq(words, "hook 30 mm");
    draw(&above, &higher, TSIDE_VIEW_ROLL_SHUT, TSIDE_DRIVE_END, 1, &drawing);
    ck_assert_int_eq(told(&drawing, TSIDE_TELLS_ANCHOR_HEIGHT)->kind, TSIDE_DIMENSION_PLACE);
    draw(&above, &higher, TSIDE_VIEW_ROLL_OPEN, TSIDE_DRIVE_END, 0.5, &drawing);
    ck_assert_ptr_null(told(&drawing, TSIDE_TELLS_HOOK_HEIGHT));
    draw(&above, &higher, TSIDE_VIEW_ALONG, TSIDE_DRIVE_END, 200, &drawing);
    ANSWERS(tside_dimension_text(told(&drawing, TSIDE_TELLS_ROPE_PITCH), TSIDE_TAPE_METRIC, words, sizeof words, NULL,
                                 &fault));
    ck_assert_str_eq(words, "rope bays 23 x 1272 mm");
}
END_TEST

/* Ropes of which it is only known that they press are nowhere to be drawn. */
START_TEST(ropes_whose_way_is_not_known_are_not_drawn)
{
    static tside_drawing drawing;
    const tside_side side = roped(0, TSIDE_ROPES);
    const tside_plan plan = planned(&side);
    static const tside_view views[] = {TSIDE_VIEW_END_WALL, TSIDE_VIEW_ALONG, TSIDE_VIEW_ROLL_SHUT,
                                       TSIDE_VIEW_ROLL_OPEN};
    for (size_t i = 0; i < sizeof views / sizeof *views; i++) {
        draw(&side, &plan, views[i], TSIDE_DRIVE_END, 20, &drawing);
        ck_assert_int_eq(ropes_drawn(&drawing, TSIDE_LINE_NARROW), 0);
        ck_assert_ptr_null(told(&drawing, TSIDE_TELLS_ROPE_PITCH));
    }
}
END_TEST

Suite *ropes_suite(void)
{
    Suite *suite = suite_create("ropes");
    TCase *tests = tcase_create("ropes");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, ropes_are_drawn_from_hook_to_anchor);
    tcase_add_test(tests, ropes_that_are_too_many_are_drawn_at_both_ends);
    tcase_add_test(tests, a_rope_lies_over_the_roll_at_an_end);
    tcase_add_test(tests, a_rope_that_passes_the_roll_is_straight);
    tcase_add_test(tests, the_ends_of_a_rope_are_told_where_they_are_seen);
    tcase_add_test(tests, ropes_whose_way_is_not_known_are_not_drawn);
    suite_add_tcase(suite, tests);
    return suite;
}
