/* SPDX-License-Identifier: MIT */
/* Along every kind of bow, extremes against dense samples. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "curves.h"
#include "hull.h"
#include "statics/push.h"

Suite *greatest_suite(void);

/*
 * Greatest and least of what the library searches for, over both ends of every stretch and evenly spaced places
 * between.
 */
typedef struct extremes {
    double torque, push, hold, lean_least, lean_greatest, length;
} extremes;

static const double available = 200; /* N m */

static void sample(const curved *c, const tside_i_spot *spot, extremes *e)
{
    tside_i_lifting lifting = {NULL, &c->load, NULL, &c->hang, 0}; /* a torque asks for no track */
    tside_i_lean at = tside_i_hang_lean(&c->hang, spot);
    tside_torque t = tside_i_torque(&lifting, spot);
    double lean = atan2(spot->x - c->hang.eye_x, c->hang.eye_y - spot->y) +
                  asin(c->hang.offset / hypot(spot->x - c->hang.eye_x, spot->y - c->hang.eye_y));
    double moment = c->hang.weight * (c->hang.chain + c->hang.length) / 2 * sin(lean) +
                    c->hang.carried * c->hang.carried_offset;
    double own = t.up - t.per_metre * c->load.length; /* of what is fixed to the bar's end */
    e->torque = fmax(e->torque, t.drive);
    e->push = fmax(e->push, (t.drive + moment) / at.reach);
    e->hold = fmin(e->hold, t.down);
    e->lean_least = fmin(e->lean_least, lean);
    e->lean_greatest = fmax(e->lean_greatest, lean);
    e->length = fmin(e->length, (available * (1 - at.rate) - moment * at.rate - own) / t.per_metre);
}

static extremes sampled(const curved *c)
{
    enum { SAMPLES = 2000 };
    extremes e = {-HUGE_VAL, -HUGE_VAL, HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL};
    double all = c->travel.end - c->travel.wraps_shut;
    for (int i = 0; i < c->travel.stretches; i++) {
        double from = c->travel.stretch[i].from, to = stretch_end(&c->travel, i);
        int count = 10 + (int)(SAMPLES * (to - from) / all);
        for (int k = 0; k <= count; k++) {
            tside_i_spot spot;
            tside_i_travel_spot(&c->travel, i, k == count ? to : from + (to - from) * k / count, &spot);
            sample(c, &spot, &e);
        }
    }
    return e;
}

/* found: what the library found to be greatest; it may pass the best sample by what a curve rises between two. */
static void greatest_of(const curved *c, double found, double best, double scale, const char *what)
{
    ck_assert_msg(found >= best - 1e-9 * scale, "side %d: %s: %.12g, a sample has %.12g", c->number, what, found, best);
    ck_assert_msg(found <= best + 1e-4 * scale, "side %d: %s: %.12g, samples reach but %.12g", c->number, what, found,
                  best);
    note(c, fmax(0, best - found) / scale);
}

/* That it is a value the travel has, on one side of the place or the other. */
static void reached(const curved *c, const tside_hang *hang, const tside_torque *found, double value)
{
    double nearest = HUGE_VAL;
    for (int k = -1; k <= 1; k++) {
        tside_torque t;
        if (tside_lift_at(&c->travel, &c->load, hang, fmin(fmax(found->turns + k * 1e-9, 0), c->open), &t, NULL) ==
            TSIDE_OK)
            nearest = fmin(nearest, fabs((hang ? t.drive : t.down) - value));
    }
    NEAR(nearest, 0, 1e-5 * (fabs(value) + 1), "value at its place", c->number);
}

/* Over more sides: two peaks in one stretch are rare. */
FOR_MORE_CURVED(extremes_are_the_greatest_of_dense_samples, 12 * SIDES)
{
    extremes e;
    tside_i_track track;
    tside_i_lifting lifting = {&track, &c->load, NULL, &c->hang, 0};
    tside_i_spot where;
    tside_torque most, least;
    tside_fault fault;
    double low, high, longest;
    if (!c->hung || guide_runs_away(c))
        return;
    tside_i_track_make(&c->travel, &track);
    e = sampled(c);
    ANSWERS(tside_lift_worst(&c->travel, &c->load, &c->hang, &most, &least, &fault));
    greatest_of(c, most.drive, e.torque, fabs(e.torque), "worst torque");
    if (!c->tips)
        reached(c, &c->hang, &most, most.drive);
    greatest_of(c, -least.down, -e.hold, fabs(e.torque), "least hold on the way down");
    if (!c->tips)
        reached(c, NULL, &least, least.down);
    greatest_of(c, tside_i_greatest_push(&track, &lifting, &c->hang, 0, &where), e.push, fabs(e.push), "side force");
    tside_i_lean_range(&track, c->hang.eye_x, c->hang.eye_y, c->hang.offset, &low, &high);
    greatest_of(c, high, e.lean_greatest, 1, "greatest lean");
    greatest_of(c, -low, -e.lean_least, 1, "least lean");
    if (e.length > 0) {
        ANSWERS(tside_lift_longest(&c->travel, &c->load, &c->hang, available, &longest, &fault));
        greatest_of(c, -longest, -e.length, e.length, "longest side");
    } else
        ck_assert(tside_lift_longest(&c->travel, &c->load, &c->hang, available, &longest, NULL) == TSIDE_OUT_OF_REACH);
}

/* What a drive's torque bends the guide by, lifted and jammed, where the guide is in line with it and where it is not.
 */
FOR_MORE_CURVED(a_guide_is_bent_most_somewhere, 200)
{
    enum { SAMPLES = 400 };
    tside_i_track track;
    if (!c->hung || guide_runs_away(c))
        return;
    tside_i_track_make(&c->travel, &track);
    for (int k = 0; k < 3; k++) {
        tside_hang hang = c->hang;
        const tside_i_pushing lifts = {NULL, &hang, available}, jams = {NULL, &hang, -available};
        tside_sweep sweep = {0};
        double up = 0, down = 0, most_up = 0, most_down = 0;
        hang.misfit = 0.05 * k;
        tside_i_lean_range(&track, hang.eye_x, hang.eye_y, hang.offset, &sweep.lean_least, &sweep.lean_greatest);
        tside_i_guide_bending(&track, &hang, &sweep, available, &up, &down);
        for (int i = 0; i < c->travel.stretches; i++)
            for (int at = 0; at <= SAMPLES; at++) {
                const double from = c->travel.stretch[i].from, to = stretch_end(&c->travel, i);
                tside_i_spot spot;
                tside_i_travel_spot(&c->travel, i, at == SAMPLES ? to : from + (to - from) * at / SAMPLES, &spot);
                most_up = fmax(most_up, tside_i_guide_bending_at(&spot, &lifts));
                most_down = fmax(most_down, -tside_i_guide_bending_at(&spot, &jams));
            }
        greatest_of(c, up, most_up, available, "bending, lifted");
        greatest_of(c, down, most_down, available, "bending, jammed");
    }
}

/*
 * Sides, of fifteen thousand, along which the place of the greatest lean changes over to another just as the eye comes
 * to its best: steps that take it for smooth go to and fro between them.
 */
START_TEST(the_best_eye_is_found_where_leans_change_over)
{
    static const int numbers[] = {491, 6335, 7200, 9020};
    for (int i = 0; i < 4; i++)
        for (int k = 0; k < 60; k++) {
            const double height = pow(10, -2 - k / 20.0);
            extremes e;
            tside_i_track track;
            tside_fault fault;
            double low, high;
            curved c;
            ANSWERS(curved_side(numbers[i], &c, &fault));
            tside_i_track_make(&c.travel, &track);
            memset(&c.hang, 0, sizeof c.hang);
            c.hang.offset = c.collar.offset;
            c.hang.eye_y = track.open.y + c.hang.offset + height;
            ANSWERS(tside_eye_best(&c.travel, c.hang.eye_y, c.hang.offset, &c.hang.eye_x, &fault));
            tside_i_lean_range(&track, c.hang.eye_x, c.hang.eye_y, c.hang.offset, &low, &high);
            e = sampled(&c);
            greatest_of(&c, high, e.lean_greatest, 1, "greatest lean");
            greatest_of(&c, -low, -e.lean_least, 1, "least lean");
            NEAR(high + low, 0, 1e-12 / height, "greatest and least lean", 100 * i + k);
        }
}
END_TEST

static double lean_at(const curved *c, int stretch, double progress)
{
    extremes e = {.lean_greatest = -HUGE_VAL};
    tside_i_spot spot;
    tside_i_travel_spot(&c->travel, stretch, progress, &spot);
    sample(c, &spot, &e);
    return e.lean_greatest;
}

/* The greatest lean of a stretch, or, with way -1, the least: of many places, and again about the foremost of them. */
static double farthest_lean(const curved *c, int stretch, int way)
{
    enum { PLACES = 200 };
    double from = c->travel.stretch[stretch].from, to = stretch_end(&c->travel, stretch), most = -HUGE_VAL;
    for (int finer = 0; finer < 5; finer++) {
        const double step = (to - from) / PLACES;
        double foremost = from;
        for (int k = 0; k <= PLACES; k++) {
            const double at = k == PLACES ? to : from + k * step, lean = way * lean_at(c, stretch, at);
            if (lean > most) {
                most = lean;
                foremost = at;
            }
        }
        to = fmin(to, foremost + step);
        from = fmax(from, foremost - step);
    }
    return way * most;
}

/*
 * At the best eye the guide leans as far one way as the other: the equal-ripple condition. Sides, of six thousand, on
 * which a top of the lean that is not followed to its end tells.
 */
START_TEST(at_the_best_eye_extreme_leans_are_opposite)
{
    static const int numbers[] = {1348, 1870, 1907, 5160};
    for (int i = 0; i < 4; i++)
        for (int k = 1; k <= 2; k++) {
            double greatest = -HUGE_VAL, least = HUGE_VAL;
            tside_fault fault;
            curved c;
            ANSWERS(curved_side(numbers[i], &c, &fault));
            c.hang = (tside_hang){.offset = c.collar.offset, .eye_y = c.line.y + 0.1 + 0.2 * k};
            ANSWERS(tside_eye_best(&c.travel, c.hang.eye_y, c.hang.offset, &c.hang.eye_x, &fault));
            for (int stretch = 0; stretch < c.travel.stretches; stretch++) {
                greatest = fmax(greatest, farthest_lean(&c, stretch, 1));
                least = fmin(least, farthest_lean(&c, stretch, -1));
            }
            NEAR(greatest + least, 0, 1e-12, "greatest and least lean", 10 * numbers[i] + k);
        }
}
END_TEST

/* --- a greatest value that is known --- */

/* Nought where so much curtain hangs, and falls off to both sides; with its slope, or what that is no more. */
static void fall_off(const tside_i_spot *spot, const void *context, double value[TSIDE_I_VALUES])
{
    const double off = spot->s - *(const double *)context;
    value[0] = -off * off;
    value[1] = 2 * off;
}

/* Turned over, it is greatest at the end that is farther off. */
static void check_known(const tside_i_track *track, double hangs, int sloped, int number)
{
    const double shut = track->shut.s, open = track->open.s, far = fmax(shut - hangs, hangs - open), all = shut - open;
    tside_i_sought sought = {.least_too = 1, .sloped = sloped};
    tside_i_spot room;
    tside_i_track_seek(track, fall_off, &hangs, &sought, 1);
    NEAR(sought.greatest.value, 0, 1e-12 * all * all, "greatest", number);
    NEAR(tside_i_peak_spot(track, &sought.greatest, &room)->s, hangs, 1e-6 * all, "where it is greatest", number);
    NEAR(sought.least.value, far * far, 1e-12 * far * far, "least, turned over", number);
    NEAR(fabs(tside_i_peak_spot(track, &sought.least, &room)->s - hangs), far, 1e-9 * far, "where it is least", number);
}

/* Wherever the greatest value is, it is found: near every place that is looked at, and between them. */
FOR_MORE_CURVED(a_known_greatest_is_found, 60)
{
    tside_i_track track;
    const double lead = c->travel.stretch[c->travel.stretches - 1].lead;
    tside_i_track_make(&c->travel, &track);
    for (int k = 0; k <= 120 && !c->tips; k++) {
        const double hangs = track.shut.s + (track.open.s - track.shut.s) * k / 120;
        check_known(&track, hangs, 0, c->number);
        if (lead == 0) /* where a bar turns on the spot, what hangs tells no slope */
            check_known(&track, hangs, 1, c->number);
    }
}

Suite *greatest_suite(void)
{
    Suite *suite = suite_create("greatest");
    TCase *tcase = tcase_create("greatest");
    tcase_add_test(tcase, extremes_are_the_greatest_of_dense_samples);
    tcase_add_test(tcase, a_guide_is_bent_most_somewhere);
    tcase_add_test(tcase, a_known_greatest_is_found);
    tcase_add_test(tcase, the_best_eye_is_found_where_leans_change_over);
    tcase_add_test(tcase, at_the_best_eye_extreme_leans_are_opposite);
    suite_add_tcase(suite, tcase);
    return suite;
}
