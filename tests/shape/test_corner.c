/* SPDX-License-Identifier: MIT */
/* Corners, at which the bar turns with no take-up, and boards over which the roll tips. */
#include <check.h>
#include <math.h>
#include <stdint.h>

#include "curves.h"
#include "hull.h"
#include "shape/spot.h"

Suite *corner_suite(void);

/*
 * The curtain comes down over the edge at a slope and goes on plumb: the bar turns about the edge by that slope, and
 * takes up nothing.
 */
START_TEST(corner_turns_the_bar_without_take_up)
{
    enum { STEPS = 4000 };
    curved c = curved_boarded(0.02);
    double slope = atan2(0.02, 1.4), chord = hypot(0.02, 1.4), begins = -1, ends = -1, last = -1;
    tside_fault fault;
    must_make(&c);
    for (int k = 0; k <= STEPS; k++) {
        double turns = c.open * k / STEPS;
        tside_position p, back;
        ANSWERS(tside_travel_at(&c.travel, turns, &p, &fault));
        ck_assert(p.taken_up >= last);
        if (fabs(p.hanging - chord) < 1e-12) {
            begins = begins < 0 ? turns : begins;
            ends = turns;
            NEAR(hypot(p.x - c.bow.board_x, p.y - c.bow.board_y), 0.025, 1e-12, "axis turns about the edge", k);
            NEAR(p.turns, turns, 1e-12, "turns", k);
            ANSWERS(tside_travel_to_height(&c.travel, p.underside, &back, &fault));
            NEAR(back.turns, turns, 1e-9, "turns of the height", k);
            NEAR(back.taken_up, p.taken_up, 1e-12, "taken up at the height", k);
        } else
            ck_assert(p.taken_up > last);
        last = p.taken_up;
    }
    ck_assert(begins > 0);
    NEAR(ends - begins, slope / (2 * PI), 2 * c.open / STEPS, "turns about the edge", 0);
}
END_TEST

/* Shut with the curtain partly turned about the edge: the height tells by how much. */
START_TEST(shut_may_lie_at_a_corner)
{
    double slope = atan2(0.02, 1.4), chord = hypot(0.02, 1.4), r = 0.025;
    for (int k = 0; k <= 10; k++) {
        double at = slope * k / 10;
        curved c = curved_boarded(0.02);
        tside_position shut;
        tside_fault fault;
        c.stops.shut_by = TSIDE_SHUT_HEIGHT;
        c.stops.shut_height = 0.6 + r * sin(at) - r;
        must_make(&c);
        ANSWERS(tside_travel_at(&c.travel, 0, &shut, &fault));
        NEAR(shut.slope, at, 1e-10, "slope", k);
        NEAR(shut.hanging, chord, 1e-10, "hanging", k);
        NEAR(shut.underside, c.stops.shut_height, 1e-12, "underside", k);
        NEAR(hypot(shut.x - c.bow.board_x, shut.y - 0.6), r, 1e-12, "axis from the edge", k);
    }
}
END_TEST

/* How many of the thousand have corners, and that at each the bar turns by what the line does. */
FOR_CURVED(corners_turn_by_what_the_line_turns)
{
    for (int i = 1; i < c->travel.stretches; i++) { /* from the second on, so that it is met whole */
        const tside_stretch *s = c->travel.stretch + i;
        double turned;
        if (s->held != TSIDE_HELD_LINE || c->line.piece[s->index].length > 0 || i + 1 == c->travel.stretches)
            continue;
        turned = (stretch_end(&c->travel, i) - s->from) * 2 * PI;
        NEAR(turned, c->line.piece[s->index].turn, 1e-12, "turn at a corner", c->number);
        NEAR(stretch_end(&c->travel, i) - s->lead,
             c->travel.stretch[i + 1].from - c->travel.stretch[i + 1].lead + turned / (2 * PI), 1e-12, "lead",
             c->number);
        note(c, fabs(turned - c->line.piece[s->index].turn));
    }
}

/* So the drive turns on, and no turn of the table is without its row. */
START_TEST(turn_table_goes_on_over_a_corner)
{
    enum { ROWS = 64 };
    curved c = curved_boarded(0.02);
    tside_side side = whole_side(&c);
    tside_turn rows[ROWS];
    tside_fault fault;
    int count;
    ANSWERS(tside_plan_turns(&side, rows, ROWS, &count, &fault));
    ck_assert_int_gt(count, 5);
    for (int i = 1; i < count; i++) {
        NEAR(rows[i].turn, i, i + 1 < count ? 0 : 1, "turn", i);
        ck_assert(rows[i].total > rows[i - 1].total && rows[i].underside > rows[i - 1].underside);
    }
}
END_TEST

static int found_to_tip(const curved *c)
{
    tside_side side = whole_side(c);
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
    for (int i = 0; i < plan.finding_count; i++)
        if (plan.findings[i].code == TSIDE_FINDING_TIPS)
            return 1;
    return 0;
}

/* The edge stands r or more outboard of the fixing. */
START_TEST(board_tips_the_roll_from_its_radius_on)
{
    static const double about[] = {-0.01, -1e-4, -1e-6, 1e-6, 1e-4, 0.01, 0.2};
    for (size_t i = 0; i < sizeof about / sizeof *about; i++) {
        curved c = curved_boarded(0.025 + about[i]);
        must_make(&c);
        ck_assert_msg(c.tips == (about[i] > 0) && found_to_tip(&c) == c.tips, "%g m beyond the radius", about[i]);
    }
}
END_TEST

/*
 * It tips with its axis over the edge, while its curtain still leans, and nowhere else; the bar never turns back as it
 * falls.
 */
FOR_CURVED(roll_tips_only_over_the_edge)
{
    const tside_travel *t = &c->travel;
    for (int i = 0; i < t->stretches; i++) {
        tside_i_spot spot;
        double from = t->stretch[i].from, to = stretch_end(t, i), r, last;
        if (t->stretch[i].held != TSIDE_HELD_TIPPED)
            continue;
        tside_i_travel_spot(t, i - 1, from, &spot); /* as it bears on the edge to the last */
        r = spot.r;
        NEAR(spot.x, c->bow.board_x, 1e-5 * r, "axis over the edge", c->number);
        NEAR(spot.y, c->bow.board_y + r, 1e-5 * r, "axis over the edge", c->number);
        ck_assert(spot.x > c->line.x + r && spot.ny > 0);
        note(c, hypot(spot.x - c->bow.board_x, spot.y - c->bow.board_y - r));
        last = tside_i_travel_angle(t, &spot);
        for (int k = 0; k <= 20; k++) {
            tside_i_travel_spot(t, i, from + (to - from) * k / 20, &spot);
            NEAR(fmin(tside_i_travel_angle(t, &spot) - last, 0), 0, 1e-11, "turning back", c->number);
            ck_assert(spot.swing == 0 && spot.vx == 0 && spot.vy == 0); /* the bar moves nothing: it falls by itself */
            last = tside_i_travel_angle(t, &spot);
        }
    }
}

/* m, how far a roll keeps off the board's edge, or off the outer face below it, at a place of a stretch. */
static double off_the_edge(const curved *c, int stretch, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(&c->travel, stretch, progress, &spot);
    return hypot(spot.x - c->bow.board_x, fmax(0, spot.y - c->bow.board_y)) - spot.r;
}

/* The least of that along a stretch: of so many places, and again between the neighbours of the nearest. */
static double least_off_the_edge(const curved *c, int stretch)
{
    enum { PLACES = 40 };
    double from = c->travel.stretch[stretch].from, to = stretch_end(&c->travel, stretch), least = HUGE_VAL;
    for (int finer = 0; finer < 4; finer++) {
        const double step = (to - from) / PLACES;
        double nearest = from;
        for (int k = 0; k <= PLACES; k++) {
            const double off = off_the_edge(c, stretch, from + k * step);
            if (off < least) {
                least = off;
                nearest = from + k * step;
            }
        }
        to = fmin(to, nearest + step);
        from = fmax(from, nearest - step);
    }
    return least;
}

/*
 * Until it tips, and once it has, no roll reaches into the edge, though on one side of two thousand it only brushes
 * that, and one of two hundred would hang into it as soon as its curtain's heading fell back.
 */
FOR_MORE_CURVED(no_roll_reaches_into_the_edge, 10 * SIDES)
{
    if (c->bow.board_given)
        for (int i = 0; i < c->travel.stretches; i++)
            if (c->travel.stretch[i].held != TSIDE_HELD_TIPPED)
                NEAR(fmin(least_off_the_edge(c, i), 0), 0, 1e-9, "off the edge", c->number);
}

/*
 * With a thick curtain it is the radius over the edge: there the axis is r above it and what hangs, s, reaches plumb
 * down to the axis' level.
 */
START_TEST(tipping_radius_is_that_over_the_edge)
{
    for (int n = 0; n < 20; n++) {
        dice d = {(uint64_t)n};
        double te = dice_between(&d, 0, 0.006), top = dice_between(&d, 0.5, 1), low = 0, high = 0.2, r = 0.025, wanted;
        curved c;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            c = curved_boarded(middle);
            c.frame.board_top = top;
            c.curtain.thickness = c.roll.thickness = te;
            must_make(&c);
            if (c.tips)
                high = middle;
            else
                low = middle;
        }
        for (int i = 0; i < 100; i++) { /* wound: the curtain of shut, less what still hangs; radius by its area */
            double hangs = c.travel.hanging + PI * 1 * (0.05 + te) - (2 - top - r);
            r = sqrt(0.025 * 0.025 + te * hangs / PI);
        }
        wanted = r;
        NEAR(high, wanted, 1e-7, "the edge's least stand to tip", n);
    }
}
END_TEST

Suite *corner_suite(void)
{
    Suite *suite = suite_create("corner");
    TCase *tcase = tcase_create("corner");
    tcase_add_test(tcase, corner_turns_the_bar_without_take_up);
    tcase_add_test(tcase, shut_may_lie_at_a_corner);
    tcase_add_test(tcase, corners_turn_by_what_the_line_turns);
    tcase_add_test(tcase, turn_table_goes_on_over_a_corner);
    tcase_add_test(tcase, board_tips_the_roll_from_its_radius_on);
    tcase_add_test(tcase, roll_tips_only_over_the_edge);
    tcase_add_test(tcase, no_roll_reaches_into_the_edge);
    tcase_add_test(tcase, tipping_radius_is_that_over_the_edge);
    suite_add_tcase(suite, tcase);
    return suite;
}
