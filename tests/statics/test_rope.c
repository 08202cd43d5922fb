/* SPDX-License-Identifier: MIT */
/*
 * Ropes against arcs built point by point, whose pressure and end pulls are summed here, and their way over the roll
 * against the convex hull of hooks and roll.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside/rope.h>

#include "shape/peak.h"
#include "statics/rope.h"
#include "travels.h"

Suite *rope_suite(void);

/* Plumb hooks 1.6 m apart. */
static tside_rope plain_rope(void)
{
    tside_rope rope;
    tside_usual(TSIDE_KIND_ROPE, &rope);
    rope.upper_x = rope.lower_x = 4;
    rope.upper_y = 1.8;
    rope.lower_y = 0.2;
    rope.pitch = 1.5;
    return rope;
}

static tside_rope random_rope(dice *d)
{
    tside_rope rope = plain_rope();
    rope.run = (tside_rope_run)dice_below(d, 2);
    rope.lower_x = 4 + dice_between(d, -0.5, 0.8);
    rope.lower_y = dice_between(d, -0.2, 0.5);
    rope.pitch = dice_between(d, 0.5, 3);
    rope.line.sag = dice_between(d, 0.01, 0.3);
    rope.film.sag = dice_between(d, 0.01, 0.3);
    if (dice_below(d, 2)) {
        rope.line.by = TSIDE_BY_STRETCH;
        rope.line.stiffness_given = rope.line.slack_given = 1;
        rope.line.stiffness = dice_between(d, 5e3, 1e5);
        rope.line.slack = dice_between(d, 0, 0.05);
    }
    return rope;
}

static tside_roped roped_by(const tside_rope *rope, double length, double pressure)
{
    tside_roped roped;
    tside_fault fault;
    ANSWERS(tside_rope_bears(rope, length, pressure, &roped, &fault));
    return roped;
}

/* --- arcs, point by point --- */

typedef struct vector {
    double out, up, along;
} vector;

static vector plus(vector a, vector b, double times)
{
    return (vector){a.out + times * b.out, a.up + times * b.up, a.along + times * b.along};
}

static double dot(vector a, vector b)
{
    return a.out * b.out + a.up * b.up + a.along * b.along;
}

static vector unit(vector a)
{
    return plus((vector){0}, a, 1 / sqrt(dot(a, a)));
}

enum { LINKS = 20000 };

/* A place on the arc through both ends of a leg that bellies outboard, along n, by a sag. */
static vector on_arc(vector leg, vector n, double sag, int link)
{
    const double c = sqrt(dot(leg, leg)), radius = (c * c / 4 + sag * sag) / (2 * sag);
    const double half = asin(fmin(c / 2 / radius, 1)), angle = half * (2.0 * link / LINKS - 1);
    return plus(plus((vector){0}, leg, 0.5 + radius * sin(angle) / c), n, radius * cos(angle) - radius * cos(half));
}

/*
 * What the end of a leg is pulled with: the tension along the line's first link; and the pressure on all links, which
 * must be what both ends bear.
 */
static vector end_pull(vector leg, vector n, const tside_roped *roped, vector *pressed)
{
    *pressed = (vector){0};
    for (int i = 0; i < LINKS; i++) {
        const vector link = plus(on_arc(leg, n, roped->sag, i + 1), on_arc(leg, n, roped->sag, i), -1);
        const double t = dot(link, unit(leg));
        /* square to the link, in the leg's plane: n and the leg's own direction, turned */
        *pressed = plus(plus(*pressed, n, roped->load * t), unit(leg), -roped->load * dot(link, n));
    }
    return plus((vector){0}, unit(plus(on_arc(leg, n, roped->sag, 1), on_arc(leg, n, roped->sag, 0), -1)),
                roped->tension);
}

START_TEST(hooks_bear_what_their_legs_pull)
{
    dice d = {11};
    for (int i = 0; i < 60; i++) {
        const tside_rope rope = random_rope(&d);
        const double pressure = dice_between(&d, 50, 600);
        const tside_roped roped = roped_by(&rope, 30, pressure);
        const int zigzag = rope.run == TSIDE_ROPE_ZIGZAG;
        const vector leg = {rope.lower_x - rope.upper_x, rope.lower_y - rope.upper_y, zigzag ? roped.pitch / 2 : 0},
                     back = plus((vector){0}, leg, -1);
        const vector n = unit((vector){rope.upper_y - rope.lower_y, rope.lower_x - rope.upper_x, 0});
        const double tolerance = 3e-4 * roped.tension, legs = zigzag ? 2 : 1;
        vector pressed, above, below;
        NEAR(sqrt(dot(leg, leg)), roped.leg, 1e-12, "leg", i);
        NEAR(roped.slant, asin(leg.along / sqrt(dot(leg, leg))), 1e-12, "slant", i);
        NEAR(roped.lean, asin(leg.out / hypot(leg.out, leg.up)), 1e-12, "lean", i);
        NEAR(roped.end_along,
             roped.tension * cos(2 * atan(2 * roped.sag / roped.leg)) * leg.along / sqrt(dot(leg, leg)),
             1e-9 * roped.tension, "pull along the house where a row ends", i);
        above = end_pull(leg, n, &roped, &pressed);
        below = end_pull(back, n, &roped, &pressed);
        NEAR(dot(pressed, n), roped.load * roped.leg, 1e-6 * roped.tension, "pressure on a leg", i);
        NEAR(dot(plus(above, below, 1), n), roped.load * roped.leg, tolerance, "what both its ends bear", i);
        NEAR(roped.hook_out, legs * above.out, legs * tolerance, "hook out", i);
        NEAR(roped.hook_up, legs * above.up, legs * tolerance, "hook up", i);
        NEAR(roped.anchor_out, legs * below.out, legs * tolerance, "anchor out", i);
        NEAR(roped.anchor_up, legs * below.up, legs * tolerance, "anchor up", i);
        NEAR(roped.pull, hypot(roped.hook_out, roped.hook_up), 1e-9 * roped.pull, "pull", i);
        NEAR(roped.pull, hypot(roped.anchor_out, roped.anchor_up), 1e-9 * roped.pull, "pull", i);
        NEAR(roped.end_along, above.along, tolerance, "along the house", i);
    }
}
END_TEST

/* A zigzag's legs bear all that presses on the side, straight ropes that and half a bay at either end. */
START_TEST(ropes_bear_the_whole_side)
{
    dice d = {12};
    for (int i = 0; i < 100; i++) {
        const tside_rope rope = random_rope(&d);
        const double length = dice_between(&d, 3, 60);
        const tside_roped roped = roped_by(&rope, length, 250);
        const double h = hypot(rope.lower_x - rope.upper_x, rope.upper_y - rope.lower_y);
        const int zigzag = rope.run == TSIDE_ROPE_ZIGZAG, legs = zigzag ? 2 * roped.lower_hooks : roped.ropes;
        NEAR(legs * roped.load * roped.leg, 250 * h * (length + (zigzag ? 0 : roped.pitch)), 1e-6 * length, "all legs",
             i);
        ck_assert(roped.pitch <= rope.pitch * (1 + 1e-9));
        NEAR((roped.upper_hooks - 1) * roped.pitch, length, 1e-9 * length, "bays", i);
        NEAR(roped.edge_pull, roped.film_tension * cos(2 * atan(2 * rope.film.sag)), 1e-9 * roped.film_tension,
             "fixed edge", i);
        NEAR(roped.billow, roped.sag + rope.film.sag * roped.pitch, 1e-12, "billow", i);
    }
}
END_TEST

START_TEST(pieces_are_counted)
{
    tside_rope rope = plain_rope();
    tside_roped roped = roped_by(&rope, 30, 100);
    const double leg = 1.6 * 2 * atan(0.1) / sin(2 * atan(0.1)); /* an arc whose sag is a twentieth of its chord */
    ck_assert(roped.ropes == 21 && roped.upper_hooks == 21 && roped.lower_hooks == 21);
    NEAR(roped.rope_length, 21 * (leg + 2 * rope.ends), 1e-9, "straight", 0);
    rope.pitch = 1.5 * (1 - 1e-12); /* the last digits of a pitch make no bay */
    ck_assert_int_eq(roped_by(&rope, 30, 100).ropes, 21);
    rope.pitch = 1.49;
    ck_assert_int_eq(roped_by(&rope, 30, 100).ropes, 22);
    rope.pitch = 1.5;
    rope.run = TSIDE_ROPE_ZIGZAG;
    roped = roped_by(&rope, 30, 100);
    ck_assert(roped.ropes == 1 && roped.upper_hooks == 21 && roped.lower_hooks == 20);
    NEAR(roped.rope_length, 40 * leg / 1.6 * hypot(1.6, 0.75) + 2 * rope.ends, 1e-9, "zigzag", 0);
    rope.pitch = 6;
    ck_assert_int_eq(roped_by(&rope, 1, 100).upper_hooks, 2);
}
END_TEST

START_TEST(limits_are_shares)
{
    tside_rope rope = plain_rope();
    tside_roped roped = roped_by(&rope, 30, 300);
    ck_assert(!roped.rope_utilisation_given && !roped.hook_utilisation_given && !roped.anchor_utilisation_given &&
              !roped.film_utilisation_given);
    rope.rope_limit_given = rope.hook_limit_given = rope.anchor_limit_given = rope.film_limit_given = 1;
    rope.rope_limit = roped.tension / 0.5;
    rope.hook_limit = roped.pull / 0.6;
    rope.anchor_limit = roped.pull / 0.7;
    rope.film_limit = roped.film_tension / 0.8;
    roped = roped_by(&rope, 30, 300);
    NEAR(roped.rope_utilisation, 0.5, 1e-12, "rope", 0);
    NEAR(roped.hook_utilisation, 0.6, 1e-12, "hook", 0);
    NEAR(roped.anchor_utilisation, 0.7, 1e-12, "anchor", 0);
    NEAR(roped.film_utilisation, 0.8, 1e-12, "film", 0);
}
END_TEST

START_TEST(what_cannot_be_is_refused)
{
    tside_rope rope = plain_rope();
    tside_roped roped;
    tside_fault fault;
    REFUSES(tside_rope_bears(&rope, 30, 0, &roped, &fault), roped, TSIDE_OUT_OF_BOUNDS, "pressure", TSIDE_NOT_ABOVE);
    rope.lower_y = rope.upper_y;
    REFUSES(tside_rope_bears(&rope, 30, 9, &roped, &fault), roped, TSIDE_CONTRADICTS, "rope.upper_y", TSIDE_NOT_ABOVE);
    rope.upper_y = 0.3;
    rope.lower_y = 0.5;
    REFUSES(tside_rope_bears(&rope, 30, 9, &roped, &fault), roped, TSIDE_CONTRADICTS, "rope.upper_y", TSIDE_NOT_ABOVE);
    NEAR(fault.gap, -0.2, 1e-15, "so far below", 0);
    rope = plain_rope();
    rope.pitch = 0;
    REFUSES(tside_rope_bears(&rope, 30, 9, &roped, &fault), roped, TSIDE_OUT_OF_BOUNDS, "rope.pitch", TSIDE_BELOW);
    rope = plain_rope();
    rope.line.by = TSIDE_BY_STRETCH;
    REFUSES(tside_rope_bears(&rope, 30, 9, &roped, &fault), roped, TSIDE_CONTRADICTS, "rope.line.slack",
            TSIDE_NO_RELATION);
    rope.line.stiffness_given = 1;
    rope.line.stiffness = 10;
    REFUSES(tside_rope_bears(&rope, 30, 900, &roped, &fault), roped, TSIDE_OUT_OF_REACH, "rope.line",
            TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "rope.pitch");
    rope.line.stiffness = 1e5;
    rope.film.by = TSIDE_BY_STRETCH;
    rope.film.pretension_given = 1;
    rope.film.pretension = 5;
    REFUSES(tside_rope_bears(&rope, 30, 9, &roped, &fault), roped, TSIDE_CONTRADICTS, "rope.film.pretension",
            TSIDE_NO_RELATION);
}
END_TEST

/* --- over the roll --- */

typedef struct point {
    double x, y;
} point;

/* The outboard chain of the convex hull of two hooks and a roll of many corners; ends: its first and its last link. */
static double hull_path(point upper, point lower, point axis, double r, point ends[2])
{
    enum { CORNERS = 40000 };
    static point chain[CORNERS + 2];
    int count = 0;
    double length = 0;
    for (int i = -1; i <= CORNERS; i++) {
        const double angle = PI - PI * 2 * i / CORNERS; /* from inboard over the top outboard, and below it back */
        point p = {axis.x + r * cos(angle), axis.y + r * sin(angle)};
        if (i == -1)
            p = upper;
        else if (i == CORNERS)
            p = lower;
        else if ((p.x - upper.x) * (upper.y - lower.y) + (p.y - upper.y) * (lower.x - upper.x) <= 0)
            continue; /* inboard of the hooks' line */
        while (count > 1 && (chain[count - 1].x - chain[count - 2].x) * (p.y - chain[count - 2].y) -
                                    (chain[count - 1].y - chain[count - 2].y) * (p.x - chain[count - 2].x) >=
                                0)
            count--; /* it bends the wrong way */
        chain[count++] = p;
    }
    for (int i = 1; i < count; i++)
        length += hypot(chain[i].x - chain[i - 1].x, chain[i].y - chain[i - 1].y);
    ends[0] = (point){chain[1].x - chain[0].x, chain[1].y - chain[0].y};
    ends[1] = (point){chain[count - 1].x - chain[count - 2].x, chain[count - 1].y - chain[count - 2].y};
    return length;
}

START_TEST(paths_are_those_of_a_hull)
{
    dice d = {13};
    int wrapped = 0, straight = 0;
    for (int i = 0; i < 300; i++) {
        const double h = dice_between(&d, 0.5, 3), r = dice_between(&d, 0.01, 0.15);
        const double along = dice_between(&d, 1.2 * r, h - 1.2 * r), outboard = dice_between(&d, -0.3, 0.5);
        point ends[2];
        double wrap, path = tside_i_rope_path(h, along, outboard, r, &wrap);
        NEAR(path, hull_path((point){0, 0}, (point){0, -h}, (point){outboard, -along}, r, ends), 1e-6, "path", i);
        NEAR(wrap, atan2(ends[0].x, -ends[0].y) + atan2(-ends[1].x, -ends[1].y), 1e-3, "wrap", i);
        wrapped += wrap > 0;
        straight += wrap == 0;
    }
    ck_assert(wrapped > 100 && straight > 30);
}
END_TEST

/* Ropes in front of a plumb side's roll, from above the rail to the ground. */
static tside_rope rope_before(const side *s)
{
    tside_rope rope = plain_rope();
    rope.upper_x = rope.lower_x = s->fixing_x + 0.02;
    rope.upper_y = s->fixing_y + 0.1;
    rope.lower_y = 0;
    return rope;
}

/* A zigzag's or straight ropes' press on a metre of the roll, by the pulls that leave it along both tangents. */
static double pressing(const tside_rope *rope, const tside_rope_over *over, const tside_position *bar, double pitch)
{
    point ends[2], pull;
    const double path = hull_path((point){rope->upper_x, rope->upper_y}, (point){rope->lower_x, rope->lower_y},
                                  (point){bar->x, bar->y}, bar->diameter / 2, ends);
    const int zigzag = rope->run == TSIDE_ROPE_ZIGZAG;
    const double in_section = over->tension * (zigzag ? path / hypot(path, pitch / 2) : 1);
    for (int i = 0; i < 2; i++) {
        const double length = hypot(ends[i].x, ends[i].y);
        ends[i] = (point){ends[i].x / length, ends[i].y / length};
    }
    pull = (point){in_section * (ends[1].x - ends[0].x), in_section * (ends[1].y - ends[0].y)};
    return hypot(pull.x, pull.y) * (zigzag ? 2 : 1) / pitch;
}

START_TEST(ropes_press_on_the_roll_with_both_tangents)
{
    const side s = side_plain();
    const double turns = turns_at_open(&s);
    for (int run = 0; run < 2; run++)
        for (int i = 0; i <= 10; i++) {
            tside_rope rope = rope_before(&s);
            const tside_position bar = at(&s, turns * i / 10);
            tside_rope_over over;
            tside_fault fault;
            rope.run = (tside_rope_run)run;
            rope.line.by = TSIDE_BY_STRETCH;
            rope.line.stiffness_given = 1;
            rope.line.stiffness = 2e4;
            ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / 10, &over, &fault));
            ck_assert(over.wrap > 0 && over.tension > 0 && !over.stopped);
            NEAR(over.turns, turns * i / 10, 1e-9, "turns", i);
            NEAR(over.pressure, pressing(&rope, &over, &bar, 1.5), 1e-3 * over.pressure, "pressure", i);
            rope.line.slack_given = 1; /* just slack enough */
            rope.line.slack = over.slack;
            ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / 10, &over, &fault));
            NEAR(over.tension, 0, 1e-6, "slack enough", i);
            rope.line.stiffness_given = 0; /* and then it need not stretch */
            ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / 10, &over, &fault));
            ck_assert_int_eq(over.stopped, 0);
            rope.line.slack = over.slack * 0.99;
            ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / 10, &over, &fault));
            ck_assert(over.stopped && over.tension == 0 && over.pressure == 0);
        }
}
END_TEST

/* Cut to just the length that the roll asks, a rope that does not stretch lets it pass, whatever its last digits. */
START_TEST(just_slack_enough_is_enough_anywhere)
{
    enum { PLACES = 500 };
    const side s = side_plain();
    const double turns = turns_at_open(&s);
    for (int i = 0; i <= PLACES; i++) {
        tside_rope rope = rope_before(&s);
        tside_rope_over over;
        tside_fault fault;
        rope.run = (tside_rope_run)(i % 2);
        rope.line.by = TSIDE_BY_STRETCH;
        rope.line.slack_given = 1;
        rope.line.slack = 0.5;
        ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / PLACES, &over, &fault));
        rope.line.slack = over.slack;
        ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / PLACES, &over, &fault));
        ck_assert_msg(!over.stopped, "place %d", i);
    }
}
END_TEST

/* Pulled by so much before, it has that tension where the roll does not touch it. */
START_TEST(a_pulled_rope_keeps_its_tension_where_nothing_touches_it)
{
    const side s = side_plain();
    tside_rope rope = rope_before(&s);
    tside_rope_over over;
    tside_fault fault;
    rope.upper_x = rope.lower_x = s.fixing_x + 0.5;
    rope.line.by = TSIDE_BY_STRETCH;
    rope.line.stiffness_given = rope.line.pretension_given = 1;
    rope.line.stiffness = 2e4;
    rope.line.pretension = 150;
    ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, 1, &over, &fault));
    NEAR(over.path, rope.upper_y - rope.lower_y, 1e-12, "path", 0);
    ck_assert(over.wrap == 0 && over.pressure == 0);
    NEAR(over.slack, 0, 1e-12, "slack", 0);
    NEAR(over.tension, 150, 1e-6, "tension", 0);
    rope.line.stiffness_given = 0; /* how much shorter it then was is not known: it is as long as its span */
    ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, 1, &over, &fault));
    ck_assert(over.tension == 0 && over.stopped == 0);
    NEAR(over.slack, 0, 1e-12, "slack", 1);
}
END_TEST

FOR_SIDES(the_worst_is_the_worst_of_many, 60)
{
    const side s = side_random(number);
    const double turns = turns_at_open(&s);
    tside_rope rope = plain_rope();
    tside_rope_over longest, hardest, over;
    tside_fault fault;
    double path = 0, pressure = 0;
    rope.upper_x = s.fixing_x + 0.02;
    rope.upper_y = s.fixing_y + 0.6;
    rope.lower_x = at(&s, 0).x;
    rope.lower_y = -0.5;
    rope.run = (tside_rope_run)(number % 2);
    rope.line.by = TSIDE_BY_STRETCH;
    rope.line.stiffness_given = 1;
    rope.line.stiffness = 3e4;
    ANSWERS(tside_rope_over_worst(&rope, 30, &s.travel, &longest, &hardest, &fault));
    for (int i = 0; i <= 400; i++) {
        ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, turns * i / 400, &over, &fault));
        path = fmax(path, over.path);
        pressure = fmax(pressure, over.pressure);
    }
    ck_assert_msg(longest.path >= path - 1e-9 && longest.path < path + 1e-4, "side %d: %.9g, a sample has %.9g", number,
                  longest.path, path);
    ck_assert_msg(hardest.pressure >= pressure * (1 - 1e-9) && hardest.pressure < pressure * 1.01 + 1e-9,
                  "side %d: %.9g, a sample has %.9g", number, hardest.pressure, pressure);
    ANSWERS(tside_rope_over_at(&rope, 30, &s.travel, longest.turns, &over, &fault));
    NEAR(over.path, longest.path, 1e-13, "path at its place", number);
    NEAR(over.wrap, longest.wrap, 1e-12, "wrap there", number);
    NEAR(over.tension, longest.tension, 1e-12 * rope.line.stiffness, "tension there", number);
}

START_TEST(hooks_in_the_roll_and_bars_beyond_hooks_are_refused)
{
    const side s = side_plain();
    const tside_position shut = at(&s, 0), open = at(&s, turns_at_open(&s));
    const struct {
        const char *field;
        double upper_x, upper_y, lower_x, lower_y;
    } cases[] = {
        {"rope.upper_x", open.x, open.y + 0.01, shut.x, 0},
        {"rope.lower_x", open.x, open.y + 0.5, shut.x, shut.y - 0.01},
        {"rope.upper_y", open.x + 1, open.y - 0.1, shut.x + 1, 0},
        {"rope.lower_y", open.x + 1, open.y + 0.5, shut.x + 1, shut.y + 0.1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        tside_rope rope = plain_rope();
        tside_rope_over over, longest, hardest;
        tside_fault fault;
        rope.upper_x = cases[i].upper_x;
        rope.upper_y = cases[i].upper_y;
        rope.lower_x = cases[i].lower_x;
        rope.lower_y = cases[i].lower_y;
        REFUSES(tside_rope_over_worst(&rope, 30, &s.travel, &longest, &hardest, &fault), hardest, TSIDE_OUT_OF_REACH,
                cases[i].field, TSIDE_NO_RELATION);
        REFUSES(tside_rope_over_at(&rope, 30, &s.travel, i % 2 ? 0 : turns_at_open(&s), &over, &fault), over,
                TSIDE_OUT_OF_REACH, cases[i].field, TSIDE_NO_RELATION);
    }
}
END_TEST

START_TEST(ropes_over_the_roll_are_checked)
{
    const side s = side_plain();
    tside_rope rope = rope_before(&s);
    tside_rope_over over, longest, hardest;
    tside_fault fault;
    REFUSES(tside_rope_over_at(&rope, 30, &s.travel, turns_at_open(&s) + 0.01, &over, &fault), over,
            TSIDE_OUT_OF_BOUNDS, "turns", TSIDE_ABOVE);
    rope.lower_y = rope.upper_y = 1;
    REFUSES(tside_rope_over_at(&rope, 30, &s.travel, 0, &over, &fault), over, TSIDE_CONTRADICTS, "rope.upper_y",
            TSIDE_NOT_ABOVE);
    REFUSES(tside_rope_over_worst(&rope, 30, &s.travel, &longest, &hardest, &fault), hardest, TSIDE_CONTRADICTS,
            "rope.upper_y", TSIDE_NOT_ABOVE);
    REFUSES(tside_rope_over_at(&rope, 0, &s.travel, 0, &over, &fault), over, TSIDE_OUT_OF_BOUNDS, "length",
            TSIDE_NOT_ABOVE);
    REFUSES(tside_rope_over_worst(&rope, 1.1e6, &s.travel, &longest, &hardest, &fault), hardest, TSIDE_OUT_OF_BOUNDS,
            "length", TSIDE_ABOVE);
    rope.pitch = 0;
    REFUSES(tside_rope_over_worst(&rope, 30, &s.travel, &longest, &hardest, &fault), hardest, TSIDE_OUT_OF_BOUNDS,
            "rope.pitch", TSIDE_BELOW);
}
END_TEST

Suite *rope_suite(void)
{
    Suite *suite = suite_create("rope");
    TCase *bears = tcase_create("bears"), *over = tcase_create("over the roll");
    tcase_add_test(bears, hooks_bear_what_their_legs_pull);
    tcase_add_test(bears, ropes_bear_the_whole_side);
    tcase_add_test(bears, pieces_are_counted);
    tcase_add_test(bears, limits_are_shares);
    tcase_add_test(bears, what_cannot_be_is_refused);
    tcase_add_test(over, paths_are_those_of_a_hull);
    tcase_add_test(over, ropes_press_on_the_roll_with_both_tangents);
    tcase_add_test(over, just_slack_enough_is_enough_anywhere);
    tcase_add_test(over, a_pulled_rope_keeps_its_tension_where_nothing_touches_it);
    tcase_add_test(over, the_worst_is_the_worst_of_many);
    tcase_add_test(over, hooks_in_the_roll_and_bars_beyond_hooks_are_refused);
    tcase_add_test(over, ropes_over_the_roll_are_checked);
    suite_add_tcase(suite, bears);
    suite_add_tcase(suite, over);
    return suite;
}
