/* SPDX-License-Identifier: MIT */
/*
 * The travel against closed forms of a plumb side, and against brute force on random sides: a string of given length
 * with a roll on it, let down onto a wall.
 */
#include <check.h>
#include <float.h>
#include <math.h>
#include <string.h>

#include "sides.h"
#include "travels.h"

Suite *travel_suite(void);

/* --- a plumb side in closed form --- */

START_TEST(plumb_side_follows_its_formulas)
{
    side s = side_plain();
    double D0 = 0.044, te = 1.15 * 0.15e-3, r0 = D0 / 2 + te, s0 = 2 - (0.4 - 4 * 0.0254) - r0;
    for (int i = 0; i <= STEPS; i++) {
        double turns = turns_at_open(&s) * i / STEPS, n = 1 + turns, r = D0 / 2 + te * n,
               taken = PI * turns * (D0 + te * (turns + 2));
        tside_position p = at(&s, turns);
        NEAR(p.wraps, n, 1e-13, "wraps", i);
        NEAR(p.turns, turns, 1e-13, "turns", i);
        NEAR(p.taken_up, taken, 1e-13, "taken up", i);
        NEAR(p.diameter, 2 * r, 1e-15, "diameter", i);
        NEAR(p.hanging, s0 - taken, 1e-13, "hanging", i);
        NEAR(p.x, 4.5 + 0.03 + r, 1e-14, "x", i);
        NEAR(p.y, 2 - (s0 - taken), 1e-13, "y", i);
        NEAR(p.underside, 2 - (s0 - taken) - r, 1e-13, "underside", i);
        NEAR(p.opening, fmax(0, 2 - (s0 - taken) - r - 0.4), 1e-13, "opening", i);
        ck_assert(p.slope == 0);
    }
    NEAR(at(&s, 0).underside, 0.4 - 4 * 0.0254, 1e-15, "seal below the sill", 0);
    NEAR(at(&s, turns_at_open(&s)).underside + at(&s, turns_at_open(&s)).diameter, 2 - 3 * 0.0254, 1e-13,
         "gap below the rail", 0);
}
END_TEST

/* --- brute force --- */

/*
 * A roll hangs on a string that leaves it on its inboard side. Let the string swing from along the wall, where the roll
 * is held off it by the gap, inboard until the roll bears on the wall or the string is plumb, where nothing pulls it
 * further. By halving; nothing is known of tangents or angles but where the roll's rim is.
 */
static place let_down(const side *s, double chord, double radius)
{
    double low = 0, high = s->slope, wx = s->fixing_x - s->curtain.standoff, wy = s->fixing_y;
    place p;
    memset(&p, 0, sizeof p);
    for (int i = 0; i < 200 && low < high; i++) {
        double slope = (low + high) / 2, x, y, off;
        if (i == 0)
            slope = 0;
        x = s->fixing_x + chord * sin(slope) + radius * cos(slope);
        y = s->fixing_y - chord * cos(slope) + radius * sin(slope);
        off = (x - wx) * cos(s->slope) + (y - wy) * sin(s->slope) - radius;
        if (off >= 0)
            high = slope;
        else
            low = slope;
    }
    p.slope = high;
    p.chord = chord;
    p.radius = radius;
    p.x = s->fixing_x + chord * sin(high) + radius * cos(high);
    p.y = s->fixing_y - chord * cos(high) + radius * sin(high);
    return p;
}

FOR_SIDES(random_sides_are_where_brute_force_puts_them, SIDES)
{
    side s = side_random(number);
    double te = s.roll.packing * s.roll.thickness, l0 = PI * s.shut * (s.roll.core + te * s.shut),
           open = turns_at_open(&s);
    for (int i = 0; i <= STEPS; i++) {
        tside_position p = at(&s, open * i / STEPS);
        double r = s.roll.core / 2 + te * p.wraps, l = PI * p.wraps * (s.roll.core + te * p.wraps);
        place b = let_down(&s, s.hanging - (l - l0), r), m = side_place(&s, p.wraps);
        NEAR(p.hanging, b.chord, 1e-11, "hanging", number);
        NEAR(p.slope, b.slope, 1e-11, "slope", number);
        NEAR(p.x, b.x, 1e-11, "x", number);
        NEAR(p.y, b.y, 1e-11, "y", number);
        NEAR(p.diameter, 2 * r, 1e-15, "diameter", number);
        NEAR(p.taken_up, l - l0, 1e-12, "taken up", number);
        NEAR(p.underside, b.y - r, 1e-11, "underside", number);
        NEAR(p.opening, fmax(0, b.y - r - s.curtain.sill), 1e-11, "opening", number);
        NEAR(p.turns, open * i / STEPS, 1e-11, "turns", number);
        NEAR(p.turns, p.wraps - s.shut + (b.slope - s.slope_shut) / (2 * PI), 1e-11, "turns of wraps and heading",
             number);
        NEAR(m.x, b.x, 1e-11, "the other model's x", number);
        NEAR(m.y, b.y, 1e-11, "the other model's y", number);
    }
}

FOR_SIDES(ends_are_where_they_were_asked, SIDES)
{
    side s = side_random(number);
    tside_position shut = at(&s, 0), open = at(&s, turns_at_open(&s));
    double top = s.curtain.hip - s.curtain.rail_depth;
    NEAR(shut.wraps, s.stops.wraps_shut, 0, "wraps when shut", number);
    NEAR(shut.underside, s.stops.shut_by == TSIDE_SHUT_SEAL ? s.curtain.sill - s.stops.seal : s.stops.shut_height,
         1e-12, "underside when shut", number);
    if (s.stops.open_by == TSIDE_OPEN_GAP)
        NEAR(top - (open.underside + open.diameter), s.stops.gap, 1e-12, "gap when open", number);
    else
        NEAR(open.underside, s.stops.open_height, 1e-12, "underside when open", number);
    NEAR(s.travel.end, s.open, 1e-10, "wraps when open", number);
    ck_assert_int_eq(s.travel.stretches, side_parts(&s));
    NEAR(s.travel.stretch[0].from, s.shut, 0, "first wraps", number);
    if (s.travel.stretches == 2)
        NEAR(s.travel.stretch[1].from, s.corner, 1e-9, "corner", number);
}

/* --- both ways --- */

FOR_SIDES(heights_and_turns_invert_each_other_and_rise, SIDES)
{
    side s = side_random(number);
    double open = turns_at_open(&s), last_turns = -1, last_height = -1;
    for (int i = 0; i <= STEPS; i++) {
        tside_position p = at(&s, open * i / STEPS), q;
        tside_fault fault;
        ANSWERS(tside_travel_to_height(&s.travel, p.underside, &q, &fault));
        NEAR(q.turns, p.turns, 1e-11, "turns of the height of turns", number);
        NEAR(q.underside, p.underside, 1e-12, "height of the turns of a height", number);
        ck_assert(p.wraps > last_turns && p.underside > last_height);
        last_turns = p.wraps;
        last_height = p.underside;
    }
}

FOR_SIDES(two_ways_to_ask_give_one_travel, SIDES)
{
    side s = side_random(number), t = s;
    tside_position shut = at(&s, 0), open = at(&s, turns_at_open(&s)), other;
    tside_fault fault;
    t.stops.shut_by = s.stops.shut_by == TSIDE_SHUT_SEAL ? TSIDE_SHUT_HEIGHT : TSIDE_SHUT_SEAL;
    t.stops.shut_height = shut.underside;
    t.stops.seal = s.curtain.sill - shut.underside;
    t.stops.open_by = s.stops.open_by == TSIDE_OPEN_GAP ? TSIDE_OPEN_HEIGHT : TSIDE_OPEN_GAP;
    t.stops.open_height = open.underside;
    t.stops.gap = fmax(0, s.curtain.hip - s.curtain.rail_depth - open.underside - open.diameter);
    ANSWERS(side_travel(&t, &fault));
    ANSWERS(tside_travel_to_height(&t.travel, open.underside, &other, &fault));
    NEAR(other.turns, open.turns, 1e-10, "turns to open", number);
    NEAR(t.travel.end, s.travel.end, 1e-10, "wraps when open", number);
    NEAR(t.travel.hanging, s.travel.hanging, 1e-12, "hanging when shut", number);
}

/* Heights and turns of its ends, handed back in feet or as sums, have other last digits, here on the side beyond. */
FOR_SIDES(its_ends_come_back_with_other_last_digits, SIDES)
{
    const double off = 8 * DBL_EPSILON;
    side s = side_random(number);
    tside_position shut = at(&s, 0), open = at(&s, turns_at_open(&s)), p;
    tside_fault fault;
    ANSWERS(tside_travel_to_height(&s.travel, shut.underside * (1 - off), &p, &fault));
    NEAR(p.underside, shut.underside, 1e-9, "shut", number);
    ANSWERS(tside_travel_to_height(&s.travel, open.underside * (1 + off), &p, &fault));
    NEAR(p.underside, open.underside, 1e-9, "open", number);
    ANSWERS(tside_travel_at(&s.travel, open.turns * (1 + off), &p, &fault));
    NEAR(p.underside, open.underside, 1e-9, "open, by its turns", number);
    s.stops.open_by = TSIDE_OPEN_HEIGHT;
    s.stops.open_height = s.travel.highest * (1 + off);
    ANSWERS(side_travel(&s, &fault));
}

START_TEST(open_may_equal_shut)
{
    side s = side_plain();
    tside_position p, q;
    tside_fault fault;
    double top;
    s.stops.open_by = TSIDE_OPEN_HEIGHT;
    s.stops.open_height = s.curtain.sill - s.stops.seal;
    ANSWERS(side_travel(&s, &fault));
    p = at(&s, 0);
    ANSWERS(tside_travel_to_height(&s.travel, s.stops.open_height, &q, &fault));
    NEAR(q.turns, 0, 0, "turns", 0);
    NEAR(s.travel.end, 1, 0, "wraps when open", 0);
    REFUSES(tside_travel_at(&s.travel, 1e-6, &q, &fault), q, TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_ABOVE);
    s.stops.open_by = TSIDE_OPEN_GAP;
    top = p.underside + p.diameter;
    s.stops.gap = s.curtain.hip - top;
    ANSWERS(side_travel(&s, &fault));
    NEAR(s.travel.end, 1, 1e-13, "wraps when open", 0);
}
END_TEST

/* --- corners and limits --- */

/* Where the roll leaves the wall the bar neither jumps nor does its curtain's slope; it only bends. */
FOR_SIDES(nothing_jumps_at_the_corner, 40)
{
    side s = side_random(CORNER_WALL + WALLS * number);
    double turns;
    tside_position before, after;
    ck_assert_int_eq(s.travel.stretches, 2);
    turns = side_place(&s, s.corner).turns;
    before = at(&s, turns - 1e-9);
    after = at(&s, turns + 1e-9);
    NEAR(after.x, before.x, 1e-8, "x", number);
    NEAR(after.y, before.y, 1e-8, "y", number);
    NEAR(after.slope, before.slope, 1e-8, "slope", number);
    NEAR(after.wraps, before.wraps, 1e-8, "wraps", number);
    ck_assert(before.slope > 0 && after.slope == 0);
    ck_assert(at(&s, turns - 0.1).slope > 1e-5);
}

static double farthest(const side *s, const side *t)
{
    double worst = 0;
    for (int i = 0; i <= STEPS; i++) {
        tside_position p = at(s, fmin(turns_at_open(s), turns_at_open(t)) * i / STEPS), q = at(t, p.turns);
        worst = fmax(worst, fmax(hypot(p.x - q.x, p.y - q.y), fabs(p.slope - q.slope)));
    }
    return worst;
}

static side leaning(double slope, double standoff)
{
    side s = side_plain();
    s.frame.shape = TSIDE_THREE_POINTS;
    s.frame.measured = TSIDE_OUTSIDE;
    s.frame.peak_height = 3;
    s.frame.peak_x = 4.5 - tan(slope);
    s.frame.foot_x = 4.5 + 2 * tan(slope);
    s.frame.foot_height = 0;
    s.frame.between_height = 1.5;
    s.frame.between_x = 4.5 + 0.5 * tan(slope);
    s.curtain.standoff = standoff;
    side_make(&s);
    return s;
}

/*
 * A wall that leans by 1e-7 is within a few times 1e-7 of one that stands plumb or leans the other way, at every
 * standoff.
 */
START_TEST(leaning_goes_over_into_plumb)
{
    static const double standoffs[] = {0, 1e-8, 1e-7, 0.03};
    for (int i = 0; i < 4; i++) {
        side out = leaning(1e-7, standoffs[i]), in = leaning(-1e-7, standoffs[i]), plumb = side_plain();
        plumb.curtain.standoff = standoffs[i];
        side_make(&plumb);
        ck_assert(farthest(&out, &plumb) < 5e-7);
        ck_assert(farthest(&in, &plumb) < 5e-7);
    }
}
END_TEST

START_TEST(a_standoff_goes_over_into_none)
{
    static const double slopes[] = {0.01, 0.1, 0.35};
    for (int i = 0; i < 3; i++) {
        side off = leaning(slopes[i], 1e-8), tight = leaning(slopes[i], 0), thick = leaning(slopes[i], 1e-4);
        /* the chord leaves the wall's slope by at most gap/s, and s is 0.1 m at least */
        ck_assert(farthest(&off, &tight) < 1e-7);
        ck_assert(farthest(&off, &tight) > 1e-9);
        ck_assert(farthest(&thick, &tight) < 1e-3);
        NEAR(at(&tight, 1).slope, slopes[i], 1e-14, "slope without a standoff", i);
        ck_assert(at(&thick, 1).slope < slopes[i]);
    }
}
END_TEST

/* --- laws --- */

FOR_SIDES(lengths_scale, SIDES)
{
    side s = side_random(number), t = side_scaled(&s, 2);
    side_make(&t);
    for (int i = 0; i <= STEPS; i++) {
        tside_position p = at(&s, turns_at_open(&s) * i / STEPS), q = at(&t, p.turns);
        NEAR(q.x, 2 * p.x, 1e-11, "x", number);
        NEAR(q.y, 2 * p.y, 1e-11, "y", number);
        NEAR(q.wraps, p.wraps, 1e-10, "wraps", number);
        NEAR(q.slope, p.slope, 1e-11, "slope", number);
        NEAR(q.opening, 2 * p.opening, 1e-11, "opening", number);
    }
}

FOR_SIDES(a_moved_side_moves_alike, SIDES)
{
    side s = side_random(number), t = side_moved(&s, 1.25, 0.5);
    side_make(&t);
    for (int i = 0; i <= STEPS; i++) {
        tside_position p = at(&s, turns_at_open(&s) * i / STEPS), q = at(&t, p.turns);
        NEAR(q.x, p.x + 1.25, 1e-10, "x", number);
        NEAR(q.y, p.y + 0.5, 1e-10, "y", number);
        NEAR(q.underside, p.underside + 0.5, 1e-10, "underside", number);
        NEAR(q.opening, p.opening, 1e-10, "opening", number);
    }
}

/* --- searches --- */

/* Half of the random sides lie outside what any one test means to try: this is what all of them together are. */
START_TEST(random_sides_are_of_every_kind)
{
    int corners = 0, bearing = 0, quilts = 0;
    for (int i = 0; i < SIDES; i++) {
        side s = side_random(i);
        double from, to;
        corners += side_parts(&s) == 2;
        bearing += side_part(&s, 0, &from, &to) == BEARS;
        quilts += s.roll.thickness > 1e-3;
    }
    ck_assert_int_gt(corners, SIDES / 5);
    ck_assert_int_gt(bearing, SIDES / 2);
    ck_assert_int_gt(quilts, SIDES / 5);
}
END_TEST

Suite *travel_suite(void)
{
    Suite *suite = suite_create("travel");
    TCase *tcase = tcase_create("travel");
    tcase_add_test(tcase, plumb_side_follows_its_formulas);
    tcase_add_test(tcase, random_sides_are_where_brute_force_puts_them);
    tcase_add_test(tcase, ends_are_where_they_were_asked);
    tcase_add_test(tcase, heights_and_turns_invert_each_other_and_rise);
    tcase_add_test(tcase, two_ways_to_ask_give_one_travel);
    tcase_add_test(tcase, open_may_equal_shut);
    tcase_add_test(tcase, its_ends_come_back_with_other_last_digits);
    tcase_add_test(tcase, nothing_jumps_at_the_corner);
    tcase_add_test(tcase, leaning_goes_over_into_plumb);
    tcase_add_test(tcase, a_standoff_goes_over_into_none);
    tcase_add_test(tcase, lengths_scale);
    tcase_add_test(tcase, a_moved_side_moves_alike);
    tcase_add_test(tcase, random_sides_are_of_every_kind);
    suite_add_tcase(suite, tcase);
    return suite;
}
