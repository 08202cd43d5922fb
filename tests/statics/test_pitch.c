/* SPDX-License-Identifier: MIT */
/* The greatest pitch against each limit's share there and beside it, asked of ropes and of the bay apart. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

Suite *pitch_suite(void);

static tside_rope plain_rope(void)
{
    tside_rope rope;
    tside_usual(TSIDE_KIND_ROPE, &rope);
    rope.upper_x = rope.lower_x = 4;
    rope.upper_y = 1.8;
    rope.lower_y = 0.2;
    return rope;
}

static tside_bay plain_bay(void)
{
    tside_bay bay;
    tside_usual(TSIDE_KIND_BAY, &bay);
    bay.pressure = 300;
    bay.hanging = 1.5;
    bay.roll = 0.05;
    bay.weight = 30;
    bay.screw_spacing = 0.3;
    bay.tube = (tside_round){.diameter = 0.0337, .wall = 0.0026};
    return bay;
}

static double most(const tside_rope *rope, const tside_bay *bay, tside_pitch_rule *rule)
{
    double pitch;
    tside_fault fault;
    ANSWERS(tside_pitch_most(rope, bay, &pitch, rule, &fault));
    return pitch;
}

/* At a pitch, the share of one limit, asked apart. */
static double share_at(const tside_rope *rope, const tside_bay *bay, double pitch, tside_pitch_rule rule)
{
    tside_rope own = *rope;
    tside_bay at = *bay;
    tside_roped roped;
    tside_bay_load load;
    tside_fault fault;
    own.pitch = at.pitch = pitch;
    ANSWERS(tside_rope_bears(&own, 10 * pitch, bay->pressure, &roped, &fault));
    ANSWERS(tside_bay_bears(&at, &load, &fault));
    switch (rule) {
    case TSIDE_PITCH_BY_ROPE: return roped.tension / own.rope_limit;
    case TSIDE_PITCH_BY_HOOK: return roped.pull / own.hook_limit;
    case TSIDE_PITCH_BY_ANCHOR: return roped.pull / own.anchor_limit;
    case TSIDE_PITCH_BY_FILM: return roped.film_tension / own.film_limit;
    case TSIDE_PITCH_BY_BAR: return load.stress / load.limit;
    case TSIDE_PITCH_BY_NOTHING: break;
    }
    return 0;
}

/* One limit at a time, and then all, of which the first that is reached rules. */
START_TEST(each_limit_rules_where_it_is_reached)
{
    for (int run = 0; run < 2; run++) {
        double first = HUGE_VAL;
        tside_pitch_rule rule, ruling = TSIDE_PITCH_BY_NOTHING;
        tside_rope all = plain_rope();
        tside_bay all_bay = plain_bay();
        all.run = (tside_rope_run)run;
        for (int limit = 0; limit < TSIDE_PITCH_BY_NOTHING; limit++) {
            tside_rope rope = plain_rope();
            tside_bay bay = plain_bay();
            double pitch;
            rope.run = (tside_rope_run)run;
            rope.rope_limit_given = limit == TSIDE_PITCH_BY_ROPE;
            rope.hook_limit_given = limit == TSIDE_PITCH_BY_HOOK;
            rope.anchor_limit_given = limit == TSIDE_PITCH_BY_ANCHOR;
            rope.film_limit_given = limit == TSIDE_PITCH_BY_FILM;
            all.rope_limit = rope.rope_limit = 2400;
            all.hook_limit = rope.hook_limit = 2100;
            all.anchor_limit = rope.anchor_limit = 2000;
            all.film_limit = rope.film_limit = 1500;
            if (limit == TSIDE_PITCH_BY_BAR) {
                bay.material.grade = TSIDE_GRADE_GIVEN;
                bay.material.yield = 250e6;
                all_bay.material = bay.material;
            }
            pitch = most(&rope, &bay, &rule);
            ck_assert_int_eq((int)rule, limit);
            ck_assert(pitch > 0.05 && pitch < 6);
            NEAR(share_at(&rope, &bay, pitch, rule), 1, 1e-8, "share", limit);
            ck_assert(share_at(&rope, &bay, pitch * 1.001, rule) > 1);
            ck_assert(share_at(&rope, &bay, pitch * 0.999, rule) < 1);
            if (pitch < first) {
                first = pitch;
                ruling = rule;
            }
        }
        all.rope_limit_given = all.hook_limit_given = all.anchor_limit_given = all.film_limit_given = 1;
        NEAR(most(&all, &all_bay, &rule), first, 1e-9, "all of them", run);
        ck_assert_int_eq((int)rule, (int)ruling);
    }
}
END_TEST

START_TEST(without_limits_nothing_rules)
{
    const tside_rope rope = plain_rope();
    const tside_bay bay = plain_bay();
    tside_pitch_rule rule;
    ck_assert(most(&rope, &bay, &rule) == 6 && rule == TSIDE_PITCH_BY_NOTHING);
}
END_TEST

/* Film so soft that it would belly by more than half its span, or a rope, rules without any limit. */
START_TEST(what_bellies_too_far_rules)
{
    tside_rope rope = plain_rope();
    const tside_bay bay = plain_bay();
    tside_pitch_rule rule;
    double pitch;
    rope.film.by = TSIDE_BY_STRETCH;
    rope.film.stiffness_given = 1;
    rope.film.stiffness = 500;
    pitch = most(&rope, &bay, &rule);
    ck_assert_int_eq((int)rule, TSIDE_PITCH_BY_FILM);
    NEAR(pitch, 2 * 500 / 300.0 * (PI / 2 - 1), 1e-6, "pi/2 = 1 + p a/2 K", 0);
    rope.line = rope.film;
    rope.film = plain_rope().film;
    pitch = most(&rope, &bay, &rule);
    ck_assert_int_eq((int)rule, TSIDE_PITCH_BY_ROPE);
    NEAR(pitch, 2 * 500 / (300.0 * 1.6) * (PI / 2 - 1), 1e-6, "pi/2 = 1 + p a h/2 K", 0);
}
END_TEST

START_TEST(what_no_pitch_bears_is_refused)
{
    tside_rope rope = plain_rope();
    tside_bay bay = plain_bay();
    tside_pitch_rule rule = TSIDE_PITCH_BY_BAR;
    double pitch;
    tside_fault fault;
    rope.rope_limit_given = 1;
    rope.rope_limit = 1;
    REFUSES(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault), pitch, TSIDE_OUT_OF_REACH, "bay.pressure",
            TSIDE_NO_RELATION);
    ck_assert_int_eq((int)rule, TSIDE_PITCH_BY_BAR);
    rope.lower_y = 2;
    REFUSES(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault), pitch, TSIDE_CONTRADICTS, "rope.upper_y",
            TSIDE_NOT_ABOVE);
    rope = plain_rope();
    rope.line.by = TSIDE_BY_STRETCH; /* of neither slack nor stretch */
    REFUSES(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault), pitch, TSIDE_CONTRADICTS, "rope.line.slack",
            TSIDE_NO_RELATION);
    rope = plain_rope();
    rope.ends = -1;
    REFUSES(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault), pitch, TSIDE_OUT_OF_BOUNDS, "rope.ends", TSIDE_BELOW);
    rope = plain_rope();
    bay.roll = -1;
    REFUSES(tside_pitch_most(&rope, &bay, &pitch, &rule, &fault), pitch, TSIDE_OUT_OF_BOUNDS, "bay.roll",
            TSIDE_NOT_ABOVE);
}
END_TEST

Suite *pitch_suite(void)
{
    Suite *suite = suite_create("pitch");
    TCase *pitch = tcase_create("pitch");
    tcase_add_test(pitch, each_limit_rules_where_it_is_reached);
    tcase_add_test(pitch, without_limits_nothing_rules);
    tcase_add_test(pitch, what_bellies_too_far_rules);
    tcase_add_test(pitch, what_no_pitch_bears_is_refused);
    suite_add_tcase(suite, pitch);
    return suite;
}
