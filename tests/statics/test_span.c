/* SPDX-License-Identifier: MIT */
/*
 * A line under pressure against a chain of links solved apart, its own law, and its limits. Points with sources are the
 * rows of tests/data/span.csv.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "linear.h"

Suite *span_suite(void);

enum { SPANS = 3000, CHAINS = 30 };

static tside_span usual_span(double chord, double load)
{
    tside_span s;
    tside_usual(TSIDE_KIND_SPAN, &s);
    s.chord = chord;
    s.load = load;
    return s;
}

static tside_belly belly_of(const tside_span *s)
{
    tside_belly belly;
    tside_fault fault;
    ANSWERS(tside_span_belly(s, &belly, &fault));
    return belly;
}

/* One that stretches: taut, slack or pulled. */
static tside_span any_span(int number)
{
    dice d = {(uint64_t)number + 1};
    tside_span s = usual_span(dice_between(&d, 0.2, 5), pow(10, dice_between(&d, 0, 4)));
    s.stiffness_given = 1;
    s.stiffness = s.load * s.chord * pow(10, dice_between(&d, 0.5, 5));
    switch (dice_below(&d, 3)) {
    case 0: break;
    case 1:
        s.slack_given = 1;
        s.slack = dice_between(&d, 0, 0.15);
        break;
    default:
        s.pretension_given = 1;
        s.pretension = s.load * s.chord * dice_between(&d, 0, 3);
        break;
    }
    return s;
}

/* --- a chain of links, each straight, pressure square to it and half of it at either end --- */

enum { LINKS = 32, UNKNOWN = 2 * (LINKS - 1) };

typedef struct chain {
    int links;
    double chord, load, unstretched, stiffness;
    double at[LINKS + 1][2];
} chain;

/* A link's pull and its stiffness along and across; an even start may have links that push. */
static void link_of(const chain *c, int i, double u[2], double *pull, double *length)
{
    double dx = c->at[i + 1][0] - c->at[i][0], dy = c->at[i + 1][1] - c->at[i][1];
    double link = c->unstretched / c->links;
    *length = hypot(dx, dy);
    u[0] = dx / *length;
    u[1] = dy / *length;
    *pull = c->stiffness * (*length / link - 1);
}

/* Adds what link i does to node n, pulled towards its other end, to the equations; sign: +1 towards its end, -1. */
static void add_link(const chain *c, double *a, int i, int n, double sign)
{
    const int width = 2 * (c->links - 1) + 1;
    double u[2], pull, length, along, across;
    link_of(c, i, u, &pull, &length);
    along = c->stiffness * c->links / c->unstretched;
    across = pull / length;
    for (int j = 0; j < 2; j++) {
        double *row = a + (2 * (n - 1) + j) * width;
        row[width - 1] -= sign * pull * u[j];
        for (int k = 0; k < 2; k++) {
            double spring = along * u[j] * u[k] + across * ((j == k) - u[j] * u[k]);
            int other = sign > 0 ? i + 1 : i;
            row[2 * (n - 1) + k] -= spring;
            if (other > 0 && other < c->links)
                row[2 * (other - 1) + k] += spring;
        }
    }
}

/* Newton's method on all nodes; returns the greatest force left over what one link bears. */
static double settle_once(chain *c)
{
    static double a[UNKNOWN * (UNKNOWN + 1)];
    const int n = 2 * (c->links - 1), width = n + 1;
    double left = 0, step = 0;
    memset(a, 0, sizeof a);
    for (int i = 1; i < c->links; i++) {
        add_link(c, a, i, i, 1);
        add_link(c, a, i - 1, i, -1);
        for (int j = 0; j < 2; j++) { /* pressure: load/2 times the way from node to node beyond, turned square */
            double *row = a + (2 * (i - 1) + j) * width, sign = j ? 1 : -1;
            row[n] -= sign * c->load / 2 * (c->at[i + 1][!j] - c->at[i - 1][!j]);
            if (i + 1 < c->links)
                row[2 * i + !j] += sign * c->load / 2;
            if (i > 1)
                row[2 * (i - 2) + !j] -= sign * c->load / 2;
            left = fmax(left, fabs(row[n]));
        }
    }
    solve(a, n);
    for (int i = 0; i < n; i++)
        step = fmax(step, fabs(a[i * width + n]));
    step = fmin(1, 0.05 * c->chord / step);
    for (int i = 0; i < n; i++)
        c->at[i / 2 + 1][i % 2] += step * a[i * width + n];
    return left / (c->load * c->chord / c->links);
}

/* The pull of a middle link and how far the middle stands out, of a chain of so many links. */
static void chain_of(const tside_span *s, int links, double *pull, double *sag)
{
    chain c = {.links = links, .chord = s->chord, .load = s->load, .unstretched = s->chord, .stiffness = s->stiffness};
    double u[2], length, left = 1;
    if (s->slack_given)
        c.unstretched *= 1 + s->slack;
    if (s->pretension_given)
        c.unstretched /= 1 + s->pretension / s->stiffness;
    for (int i = 0; i <= links; i++) {
        double x = (double)i / links;
        c.at[i][0] = x * s->chord;
        c.at[i][1] = 4 * x * (1 - x) * 0.25 * s->chord;
    }
    for (int i = 0; i < 400 && left > 1e-8; i++)
        left = settle_once(&c);
    ck_assert_msg(left <= 1e-8, "the chain does not settle: %g is left", left);
    link_of(&c, links / 2, u, pull, &length);
    *sag = c.at[links / 2][1];
}

/* Chains of 16 and 32 links err as the square of a link: together, extrapolated, as its fourth power. */
START_TEST(a_chain_of_links_comes_to_the_same)
{
    for (int number = 0; number < CHAINS; number++) {
        tside_span s = any_span(number);
        tside_belly belly;
        double coarse, fine, coarse_sag, fine_sag;
        s.stiffness = fmin(s.stiffness, 3000 * s.load * s.chord);
        belly = belly_of(&s);
        chain_of(&s, LINKS / 2, &coarse, &coarse_sag);
        chain_of(&s, LINKS, &fine, &fine_sag);
        NEAR((4 * fine - coarse) / 3, belly.tension, 2e-5 * belly.tension, "tension", number);
        NEAR((4 * fine_sag - coarse_sag) / 3, belly.sag, 2e-5 * belly.sag, "sag", number);
    }
}
END_TEST

/* --- its own law --- */

START_TEST(it_is_as_long_as_its_stretch_says)
{
    for (int number = 0; number < SPANS; number++) {
        tside_span s = any_span(number);
        tside_belly belly = belly_of(&s);
        double unstretched = s.chord;
        if (s.slack_given)
            unstretched *= 1 + s.slack;
        if (s.pretension_given)
            unstretched /= 1 + s.pretension / s.stiffness;
        NEAR(belly.length, unstretched * (1 + belly.tension / s.stiffness), 1e-12 * belly.length, "length", number);
        ck_assert(belly.half_angle > 0 && belly.half_angle <= PI / 2);
        NEAR(belly.tension, s.load * belly.radius, 1e-14 * belly.tension, "tension over radius", number);
        NEAR(hypot(belly.square, belly.along), belly.tension, 1e-13 * belly.tension, "what a hold bears", number);
        NEAR(2 * belly.square, s.load * s.chord, 1e-14 * s.load * s.chord, "the load on both holds", number);
        if (s.pretension_given)
            ck_assert(belly.tension >= s.pretension * (1 - 1e-12));
    }
}
END_TEST

START_TEST(its_sag_given_comes_to_the_same)
{
    for (int number = 0; number < SPANS; number++) {
        tside_span s = any_span(number), by_sag = usual_span(s.chord, s.load);
        tside_belly belly = belly_of(&s), same;
        by_sag.by = TSIDE_BY_SAG;
        by_sag.sag = belly.sag;
        same = belly_of(&by_sag);
        NEAR(same.tension, belly.tension, 1e-12 * belly.tension, "tension", number);
        NEAR(belly.tension, s.load * (s.chord * s.chord / (8 * belly.sag) + belly.sag / 2), 1e-12 * belly.tension,
             "tension by its sag", number);
    }
}
END_TEST

START_TEST(twice_the_size_pulls_twice_as_much_and_twice_the_load_and_stiffness_too)
{
    for (int number = 0; number < SPANS; number++) {
        tside_span s = any_span(number), large = s, loaded = s;
        tside_belly belly = belly_of(&s), other;
        large.chord *= 2;
        large.stiffness *= 2;
        large.pretension *= 2;
        other = belly_of(&large);
        NEAR(other.tension, 2 * belly.tension, 1e-12 * other.tension, "of twice the size", number);
        NEAR(other.sag, 2 * belly.sag, 1e-12 * other.sag, "sag of twice the size", number);
        loaded.load *= 2;
        loaded.stiffness *= 2;
        loaded.pretension *= 2;
        other = belly_of(&loaded);
        NEAR(other.tension, 2 * belly.tension, 1e-12 * other.tension, "of twice the load", number);
        NEAR(other.half_angle, belly.half_angle, 1e-12, "angle of twice the load", number);
    }
}
END_TEST

START_TEST(more_slack_pulls_less_and_more_stiffness_more)
{
    for (int number = 0; number < SPANS; number++) {
        tside_span s = any_span(number), other = s;
        tside_belly belly = belly_of(&s);
        other.stiffness *= 1.5;
        ck_assert_msg(belly_of(&other).tension > belly.tension, "span %d: stiffer", number);
        other = s;
        if (!s.pretension_given) {
            other.slack_given = 1;
            other.slack = (s.slack_given ? s.slack : 0) + 0.01;
            ck_assert_msg(belly_of(&other).tension < belly.tension, "span %d: slacker", number);
        }
    }
}
END_TEST

/* --- limits --- */

START_TEST(taut_it_is_the_long_membrane)
{
    tside_span s = usual_span(2, 300);
    s.stiffness_given = 1;
    for (s.stiffness = 1e7; s.stiffness < 2e12; s.stiffness *= 100) {
        double membrane = cbrt(s.load * s.load * s.chord * s.chord * s.stiffness / 24);
        tside_belly belly = belly_of(&s);
        NEAR(belly.tension, membrane, 0.2 * belly.half_angle * belly.half_angle * membrane, "tension", 0);
    }
}
END_TEST

START_TEST(without_stretch_its_length_is_its_slack)
{
    tside_span s = usual_span(1.5, 200);
    s.slack_given = 1;
    for (s.slack = 1e-11; s.slack < 0.57; s.slack *= 3) {
        tside_belly belly = belly_of(&s);
        NEAR(belly.length / s.chord - 1, s.slack, 1e-15, "slack", 0);
        if (s.slack < 1e-4) /* b^2/6 = e */
            NEAR(belly.half_angle, sqrt(6 * s.slack), s.slack * belly.half_angle, "angle", 0);
    }
    s.slack = PI / 2 - 1; /* half a circle */
    NEAR(belly_of(&s).tension, 150, 1e-9, "tension of half a circle", 0);
}
END_TEST

/* derivation: the arc of a small angle b = q c/(2 P) is longer than its chord by b^2/6, which stretches it on. */
START_TEST(pulled_hard_it_keeps_its_tension)
{
    tside_span s = usual_span(2, 1e-5);
    s.stiffness_given = s.pretension_given = 1;
    s.stiffness = 1e6;
    for (s.pretension = 1; s.pretension < 1e9; s.pretension *= 1000)
        NEAR(belly_of(&s).tension, s.pretension + s.stiffness * pow(s.load * s.chord / (2 * s.pretension), 2) / 6,
             1e-9 * s.pretension, "tension", 0);
    s.pretension = 0; /* is none */
    s.load = 100;
    ck_assert_double_eq(
        belly_of(&s).tension,
        belly_of(&(tside_span){.chord = 2, .load = 100, .by = TSIDE_BY_STRETCH, .stiffness_given = 1, .stiffness = 1e6})
            .tension);
}
END_TEST

/* A handbook's rope bears a load of fixed direction: its ends pull 1 % more at a sag of c/20, 4 % at c/10. */
START_TEST(a_handbooks_rope_pulls_somewhat_more)
{
    static const double sag[] = {1 / 20.0, 1 / 10.0}, more[] = {0.01, 0.04};
    for (int i = 0; i < 2; i++) {
        tside_span s = usual_span(1, 1);
        double H = 1 / (8 * sag[i]);
        s.by = TSIDE_BY_SAG;
        s.sag = sag[i];
        NEAR(hypot(H, 0.5) / belly_of(&s).tension - 1, more[i], 0.005, "more", i);
    }
}
END_TEST

START_TEST(what_was_refused_by_its_bound_answers_at_it)
{
    tside_span s = usual_span(2, 100);
    tside_belly belly;
    tside_fault fault;
    s.slack_given = s.stiffness_given = 1;
    s.slack = 0.5;
    s.stiffness = 1000;
    REFUSES(tside_span_belly(&s, &belly, &fault), belly, TSIDE_OUT_OF_REACH, "span.slack", TSIDE_ABOVE);
    s.slack = fault.bound;
    NEAR(belly_of(&s).half_angle, PI / 2, 1e-6, "half a circle", 0);
    s.slack = 0;
    s.load = 1000;
    REFUSES(tside_span_belly(&s, &belly, &fault), belly, TSIDE_OUT_OF_REACH, "span.load", TSIDE_ABOVE);
    s.load = fault.bound;
    NEAR(belly_of(&s).half_angle, PI / 2, 1e-6, "half a circle", 1);
    s.slack = 0.8; /* no load is small enough */
    s.load = 1000;
    REFUSES(tside_span_belly(&s, &belly, &fault), belly, TSIDE_OUT_OF_REACH, "span.load", TSIDE_NONE_FITS);
}
END_TEST

/* Whatever the bound's last digits come to. */
START_TEST(any_bound_of_slack_answers_at_it)
{
    dice d = {5};
    for (int i = 0; i < 1000; i++) {
        tside_span s = usual_span(dice_between(&d, 0.1, 10), dice_between(&d, 1, 500));
        tside_belly belly;
        tside_fault fault;
        s.slack_given = s.stiffness_given = 1;
        s.slack = 0.58;
        s.stiffness = s.load * s.chord * dice_between(&d, 1, 1000);
        REFUSES(tside_span_belly(&s, &belly, &fault), belly, TSIDE_OUT_OF_REACH, "span.slack", TSIDE_ABOVE);
        s.slack = fault.bound;
        ANSWERS(tside_span_belly(&s, &belly, &fault));
    }
}
END_TEST

Suite *span_suite(void)
{
    Suite *suite = suite_create("span");
    TCase *tcase = tcase_create("span");
    tcase_add_test(tcase, a_chain_of_links_comes_to_the_same);
    tcase_add_test(tcase, it_is_as_long_as_its_stretch_says);
    tcase_add_test(tcase, its_sag_given_comes_to_the_same);
    tcase_add_test(tcase, twice_the_size_pulls_twice_as_much_and_twice_the_load_and_stiffness_too);
    tcase_add_test(tcase, more_slack_pulls_less_and_more_stiffness_more);
    tcase_add_test(tcase, taut_it_is_the_long_membrane);
    tcase_add_test(tcase, without_stretch_its_length_is_its_slack);
    tcase_add_test(tcase, pulled_hard_it_keeps_its_tension);
    tcase_add_test(tcase, a_handbooks_rope_pulls_somewhat_more);
    tcase_add_test(tcase, what_was_refused_by_its_bound_answers_at_it);
    tcase_add_test(tcase, any_bound_of_slack_answers_at_it);
    suite_add_tcase(suite, tcase);
    return suite;
}
