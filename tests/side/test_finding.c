/* SPDX-License-Identifier: MIT */
/* Findings: each is provoked, says what is so, and stands on the right side of its bound. */
#include <check.h>
#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "airs.h"
#include "winds.h"
#include "expect.h"
#include "plans.h"

Suite *finding_suite(void);

/* --- findings --- */

/* Gives the plain side a motor's figures, a cable and a fuse that suit it. */
static void electrify(tside_side *side)
{
    tside_drive *drive = &side->drive;
    give_motor(drive);
    drive->rated_run_given = 1;
    drive->rated_run = 600;
    side->cable.wire = TSIDE_AWG;
    side->cable.gauge = 12;
    side->cable.length = 30;
    side->cable.drop_limit_given = side->cable.ampacity_given = side->cable.fuse_given = 1;
    side->cable.drop_limit = 0.2;
    side->cable.ampacity = 20;
    side->cable.fuse = 15;
}

/* Zigzags a rope of given length over it in a wind; invented. */
static void rope_it(tside_side *side)
{
    string_ropes(side, TSIDE_ZIGZAG_ROPE);
    blow(side, 20);
    side->rope.slack = TSIDE_SLACK_GIVEN;
}

/*
 * A side changed so that one code is found; the plain side must be free of it, but for those that a running drive on a
 * chain always has.
 */
static void provoke(tside_side *side, tside_finding_code code)
{
    tside_keep_out jamb = {4.6, 4.8, 1.2, 1.4};
    switch (code) {
    case TSIDE_FINDING_DRIVE_WEAK: side->drive.rated_torque = 10; break;
    case TSIDE_FINDING_STRENGTH: side->drive.stall_torque = 2000; break;
    case TSIDE_FINDING_LIMIT_TURNS: side->drive.limit_turns_given = 1, side->drive.limit_turns = 5; break;
    case TSIDE_FINDING_KEEP_OUT_TUBE:
        side->drive_end.keep_out_count = 1, side->drive_end.keep_outs[0] = (tside_keep_out){4.0, 4.2, 1.0, 1.6};
        break;
    case TSIDE_FINDING_KEEP_OUT_GUIDE: side->free_end.keep_out_count = 1, side->free_end.keep_outs[0] = jamb; break;
    case TSIDE_FINDING_KICK: side->limits.kick_out_given = 1, side->limits.kick_out = 0.01; break;
    case TSIDE_FINDING_SIDE_FORCE: side->limits.side_force_given = 1, side->limits.side_force = 1; break;
    case TSIDE_FINDING_TWIST: side->limits.twist_given = 1, side->limits.twist = 0.001; break;
    case TSIDE_FINDING_LAG: side->limits.lag_given = 1, side->limits.lag = 1e-5; break;
    case TSIDE_FINDING_SEAL: side->stops.seal = 0.04; break;
    case TSIDE_FINDING_WRAPS: side->stops.wraps_shut = 0.5; break;
    case TSIDE_FINDING_STAYS_UP: side->friction = 1.2; break;
    case TSIDE_FINDING_CHAIN_SWING: break;
    case TSIDE_FINDING_THROWN:
    case TSIDE_FINDING_UPLIFT: on_hip(side); break;
    case TSIDE_FINDING_TIPS:
        side->frame.board = TSIDE_BOARD_OUTSIDE, side->frame.board_top = 0.35, side->frame.board_stand = 0.12;
        break;
    case TSIDE_FINDING_STALL_GUESSED: side->drive.stall_torque_given = 0; break;
    case TSIDE_FINDING_UNUSUAL: side->bar.screws = 9; break;
    case TSIDE_FINDING_STALLS: electrify(side), side->drive.stall_torque = 12; break;
    case TSIDE_FINDING_LONG_RUN: electrify(side), side->drive.rated_run = 60; break;
    case TSIDE_FINDING_OVERLOAD: electrify(side), side->drive.rated_torque = 5; break;
    case TSIDE_FINDING_DROP: electrify(side), side->cable.drop_limit = 0.001; break;
    case TSIDE_FINDING_DROP_START: electrify(side), side->cable.drop_limit = 0.05; break;
    case TSIDE_FINDING_AMPACITY: electrify(side), side->cable.ampacity = 1; break;
    case TSIDE_FINDING_FUSE: electrify(side), side->cable.fuse = 1; break;
    case TSIDE_FINDING_FUSE_START: electrify(side), side->cable.fuse = 8; break;
    case TSIDE_FINDING_FUSE_LARGE: electrify(side), side->cable.ampacity = 14; break;
    case TSIDE_FINDING_TURNS_BACK: side->drive.holds = TSIDE_HOLDS_NOT; break;
    case TSIDE_FINDING_EFFORT: side->crank.fitted = TSIDE_CRANK, side->crank.ratio = 1; break;
    case TSIDE_FINDING_LEAN_ALONG: side->free_end.alignment = TSIDE_RUN_ON_GIVEN, side->bar.past_free = 0.15; break;
    case TSIDE_FINDING_BINDS: side->drive_end.alignment = TSIDE_RUN_ON_GIVEN, side->bar.past_drive = 0.5; break;
    case TSIDE_FINDING_UNCOVERED: side->curtain.past = 0.02; break;
    case TSIDE_FINDING_BOW_HOLE:
        side->drive_end.extender.slant = TSIDE_SLANT_CROSSING,
        side->drive_end.extender.crossing = side->frame.leg_height + 0.05;
        break;
    case TSIDE_FINDING_MISFIT:
        side->drive_end.guide.foot = TSIDE_FOOT_FIXED, side->drive_end.footing.misfit_limit = 1e-6;
        break;
    case TSIDE_FINDING_LONG_STICK: side->bar.splices = 0; break;
    case TSIDE_FINDING_FEW_CHANGES:
        breathe(side), side->air.changes_asked_given = 1, side->air.changes_asked = 1;
        break;
    case TSIDE_FINDING_HOT: breathe(side), side->air.rise_asked_given = 1, side->air.rise_asked = 0.1; break;
    case TSIDE_FINDING_FLIES: blow(side, 20); break;
    case TSIDE_FINDING_UNSEALS: blow(side, 4); break;
    case TSIDE_FINDING_SMALL_OPENING: breathe(side), side->air.blocked = 0.6; break;
    case TSIDE_FINDING_ROPE_SHORT: rope_it(side), side->rope.line.sag = 0.001; break;
    case TSIDE_FINDING_ROPE_WEAK: rope_it(side), side->rope.rope_limit_given = 1, side->rope.rope_limit = 10; break;
    case TSIDE_FINDING_HOOK_WEAK: rope_it(side), side->rope.hook_limit_given = 1, side->rope.hook_limit = 10; break;
    case TSIDE_FINDING_ANCHOR_WEAK:
        rope_it(side), side->rope.anchor_limit_given = 1, side->rope.anchor_limit = 10;
        break;
    case TSIDE_FINDING_FILM_WEAK: rope_it(side), side->rope.film_limit_given = 1, side->rope.film_limit = 10; break;
    case TSIDE_FINDING_ROPE_EDGE: rope_it(side), side->rope.pitch = 0.1; break;
    case TSIDE_FINDING_CODES: break;
    }
}

/* What a finding says must be so: on the wrong side of its bound, and its index a line, a keep-out, or none. */
static void is_true(const tside_finding *f, const tside_plan *plan)
{
    switch (f->code) {
    case TSIDE_FINDING_STRENGTH:
        ck_assert(f->index >= 0 && f->index < plan->line_count && plan->lines[f->index].verdict == TSIDE_VERDICT_NO &&
                  plan->lines[f->index].utilisation == f->value && plan->lines[f->index].end == f->end &&
                  f->bound == 1);
        break;
    case TSIDE_FINDING_KEEP_OUT_TUBE:
    case TSIDE_FINDING_KEEP_OUT_GUIDE: ck_assert_int_eq(f->index, 0); break;
    default: ck_assert_int_eq(f->index, -1);
    }
    switch (f->code) {
    case TSIDE_FINDING_KEEP_OUT_TUBE:
    case TSIDE_FINDING_KEEP_OUT_GUIDE:
    case TSIDE_FINDING_SEAL:
    case TSIDE_FINDING_FEW_CHANGES:
    case TSIDE_FINDING_SMALL_OPENING:
    case TSIDE_FINDING_UNCOVERED:
    case TSIDE_FINDING_BOW_HOLE:
    case TSIDE_FINDING_WRAPS:
    case TSIDE_FINDING_STAYS_UP:
    case TSIDE_FINDING_ROPE_SHORT:
        ck_assert_msg(f->value < f->bound, "finding %d: %g against %g", (int)f->code, f->value, f->bound);
        break;
    default: ck_assert_msg(f->value > f->bound, "finding %d: %g against %g", (int)f->code, f->value, f->bound);
    }
}

START_TEST(every_finding_is_provoked)
{
    tside_side base = plain();
    tside_plan before;
    base.drive_end.guide.chain = 0;
    base.free_end.guide.chain = 0.0635;
    base.drive_end.extender.angle = base.free_end.extender.angle = 0.95; /* its holes well above the leg's end */
    before = planned(&base);
    for (int code = 0; code < TSIDE_FINDING_CODES; code++) {
        tside_side side = plain();
        tside_plan plan;
        provoke(&side, (tside_finding_code)code);
        plan = planned(&side);
        ck_assert_msg(finds(&plan, (tside_finding_code)code), "finding %d is not found", code);
        for (int i = 0; i < plan.finding_count; i++)
            is_true(plan.findings + i, &plan);
        if (code != TSIDE_FINDING_UNUSUAL) /* a chain of nothing is itself unusual */
            ck_assert_msg(!finds(&before, (tside_finding_code)code), "finding %d is found where there is none", code);
    }
    base = plain();
    before = planned(&base);
    ck_assert(!finds(&before, TSIDE_FINDING_UNUSUAL));
}
END_TEST

/* A field of a side by its path; an optional one is given. */
static double *field_of(tside_side *side, const char *path)
{
    tside_place place;
    tside_fault fault;
    ANSWERS(tside_field_find(TSIDE_KIND_SIDE, path, &place, &fault));
    ck_assert(place.field->type == TSIDE_NUMBER);
    if (place.field->optional)
        *(int *)(void *)((char *)side + place.offset - place.field->offset + place.field->given_offset) = 1;
    return (double *)(void *)((char *)side + place.offset);
}

static double result_of(const tside_plan *plan, const char *path)
{
    tside_place place;
    tside_fault fault;
    ANSWERS(tside_field_find(TSIDE_KIND_PLAN, path, &place, &fault));
    return *(const double *)(const void *)((const char *)plan + place.offset);
}

/* A limit that is just reached is kept to; a hair less is not. */
START_TEST(limits_may_be_reached)
{
    static const struct {
        tside_finding_code code;
        const char *limit, *result;
    } limits[] = {
        {TSIDE_FINDING_DRIVE_WEAK, "drive.rated_torque", "design_torque"},
        {TSIDE_FINDING_LIMIT_TURNS, "drive.limit_turns", "drive_turns"},
        {TSIDE_FINDING_KICK, "limits.kick_out", "drive_end.sweep.kick_out_error"},
        {TSIDE_FINDING_SIDE_FORCE, "limits.side_force", "drive_end.side_force"},
        {TSIDE_FINDING_TWIST, "limits.twist", "twist"},
        {TSIDE_FINDING_LAG, "limits.lag", "lag_elastic"},
        {TSIDE_FINDING_MISFIT, "drive_end.footing.misfit_limit", "drive_end.fixed.misfit"},
    };
    for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
        tside_side side = plain();
        tside_plan plan;
        double reached, *limit;
        const tside_finding *found;
        if (limits[i].code == TSIDE_FINDING_MISFIT)
            side.drive_end.guide.foot = TSIDE_FOOT_FIXED;
        plan = planned(&side);
        reached = result_of(&plan, limits[i].result);
        limit = field_of(&side, limits[i].limit);
        *limit = reached;
        plan = planned(&side);
        found = finding_of(&plan, limits[i].code);
        ck_assert_msg(!found || found->end == TSIDE_FREE_END, "%s is not allowed to be reached", limits[i].limit);
        *limit = nextafter(reached, 0);
        plan = planned(&side);
        found = finding_of(&plan, limits[i].code);
        ck_assert_msg(found && found->end == TSIDE_DRIVE_END, "%s may be exceeded", limits[i].limit);
        ck_assert(found->value == reached && found->bound == *limit);
    }
}
END_TEST

/* Both thresholds: common practice, no published source. */
START_TEST(seal_and_wraps_have_a_least)
{
    tside_side side = plain();
    tside_plan plan;
    side.stops.wraps_shut = 0.75;
    side.stops.seal = 0.05 + 1e-9;
    plan = planned(&side);
    ck_assert(!finds(&plan, TSIDE_FINDING_SEAL) && !finds(&plan, TSIDE_FINDING_WRAPS));
    side.stops.wraps_shut = nextafter(0.75, 0);
    side.stops.seal = 0.05 - 1e-8;
    plan = planned(&side);
    ck_assert(finds(&plan, TSIDE_FINDING_SEAL) && finds(&plan, TSIDE_FINDING_WRAPS));
    side.stops.seal = 0.05; /* asked as the least that will do: not a finding for a last digit's sake */
    ck_assert_msg(!finds((plan = planned(&side), &plan), TSIDE_FINDING_SEAL), "a seal of exactly 50 mm, found %.17g",
                  plan.seal);
}
END_TEST

/* A hole told to be just in the kink is 0 from it, and one that the best extender keeps off it by just enough is none.
 */
START_TEST(a_hole_in_the_kink_is_in_it_and_one_kept_off_is_off)
{
    int kept = 0;
    for (int i = 0; i < 100; i++) {
        tside_side side = plain();
        tside_plan plan;
        side.frame.leg_height += 0.001 * i;
        side.frame.peak_height += 0.001 * i;
        side.free_end.extender.slant = TSIDE_SLANT_BEST;
        side.drive_end.extender.slant = TSIDE_SLANT_CROSSING;
        side.drive_end.extender.crossing = side.frame.leg_height;
        plan = planned(&side);
        kept += plan.free_end.layout.binding == TSIDE_BINDS_KINK;
        for (int k = 0; k < plan.finding_count; k++) {
            const tside_finding *f = plan.findings + k;
            if (f->code == TSIDE_FINDING_BOW_HOLE)
                ck_assert_msg(f->end == TSIDE_DRIVE_END && f->value == 0, "side %d: end %d, %.17g m", i, (int)f->end,
                              f->value);
        }
        ck_assert(finds(&plan, TSIDE_FINDING_BOW_HOLE));
    }
    ck_assert_int_gt(kept, 50);
}
END_TEST

/* --- keep-outs, against distances found apart --- */

/* More than there is room for: the list is full, and what stops the work comes first. */
START_TEST(a_crowd_of_findings_fits)
{
    tside_side side = plain();
    tside_plan plan;
    side.drive_end.keep_out_count = side.free_end.keep_out_count = TSIDE_KEEP_OUTS;
    for (int i = 0; i < TSIDE_KEEP_OUTS; i++)
        side.drive_end.keep_outs[i] = side.free_end.keep_outs[i] = (tside_keep_out){3, 6, 1, 1.6 + 0.01 * i};
    side.drive.rated_torque = 10;
    side.drive.stall_torque = 2000;
    plan = planned(&side);
    ck_assert_int_eq(plan.finding_count, TSIDE_FINDINGS);
    ck_assert(plan.findings[0].code == TSIDE_FINDING_DRIVE_WEAK);
    for (int i = 0; i < TSIDE_FINDINGS; i++)
        ck_assert(tside_finding_stops((int)plan.findings[i].code));
}
END_TEST

START_TEST(texts_are_total)
{
    char whole[512], cut[8];
    for (int code = -3; code < 100; code++) {
        tside_finding finding = {(tside_finding_code)code, TSIDE_DRIVE_END, -1, 1.5, 2.5};
        size_t length = tside_finding_text(&finding, whole, sizeof whole);
        memset(cut, 'x', sizeof cut);
        ck_assert(tside_finding_text(&finding, cut, 4) == length && cut[4] == 'x');
        ck_assert(tside_finding_text(&finding, NULL, 0) == length);
        ck_assert((length > 0) == (code >= 0 && code < TSIDE_FINDING_CODES));
        /* its value stands there with its unit, as "1.5 N m", a turn as "turns", a plain number without one */
        if (length > 0) {
            char shown[32];
            snprintf(shown, sizeof shown, strcmp(tside_finding_unit(code), "1") ? "1.5 %s" : "1.5 ",
                     strcmp(tside_finding_unit(code), "turn") ? tside_finding_unit(code) : "turns");
            ck_assert_msg(strstr(whole, shown), "%s: %s", whole, shown);
        } else
            ck_assert_str_eq(tside_finding_unit(code), "1");
        ck_assert(!*tside_strength_text(code) == (code < 0 || code >= TSIDE_STRENGTH_CODES));
        ck_assert(tside_finding_stops(code) == 0 || (code >= 0 && code < TSIDE_FINDING_CODES));
    }
    ck_assert(!*tside_strength_text(INT_MIN) && !*tside_strength_text(INT_MAX));
    ck_assert(!tside_finding_stops(INT_MIN) && !tside_finding_stops(INT_MAX));
}
END_TEST

/* Of a choice, what follows its path, if anything does, is one of its names. */
static void is_choice_named(const tside_field *field, const char *after)
{
    const size_t length = *after == ' ' ? strspn(after + 1, "abcdefghijklmnopqrstuvwxyz_") : 0;
    int named = length == 0 || !strncmp(after, " or ", 4);
    if (field->type != TSIDE_CHOICE)
        return;
    for (int i = 0; i < field->choice_count && !named; i++)
        named = strlen(field->choices[i]) == length && !strncmp(field->choices[i], after + 1, length);
    ck_assert_msg(named, "%s is never%s", field->name, after);
}

/* Every dotted word of what mends is a field of a side, once its end is filled in; returns how many there are. */
static int fields_named(const char *words)
{
    int count = 0;
    while (*words) {
        char path[TSIDE_PATH_SIZE] = "drive_end";
        const int of_end = !strncmp(words, "{end}", 5);
        const char *from = of_end ? words + 5 : words;
        const size_t length = strspn(from, "abcdefghijklmnopqrstuvwxyz_.");
        ck_assert(length + sizeof "drive_end" < sizeof path);
        snprintf(path, sizeof path, "%s%.*s", of_end ? "drive_end" : "", (int)length, from);
        if (strchr(path, '.')) {
            tside_place place;
            ck_assert_msg(tside_field_find(TSIDE_KIND_SIDE, path, &place, NULL) == TSIDE_OK, "no field %s", path);
            is_choice_named(place.field, from + length);
            count++;
        }
        words = from + length + (length == 0 && !of_end);
    }
    return count;
}

START_TEST(what_mends_names_fields)
{
    int named = 0;
    for (int code = -3; code < 100; code++) {
        const int is_code = code >= 0 && code < TSIDE_FINDING_CODES;
        named += fields_named(tside_finding_mends(code)) + fields_named(tside_strength_mends(code));
        ck_assert((strstr(tside_finding_sentence(code), "{value}") != NULL) == is_code);
        ck_assert(is_code || !*tside_finding_mends(code));
        ck_assert(!*tside_strength_mends(code) || *tside_strength_text(code));
    }
    ck_assert_int_ge(named, 50);
    for (int code = 0; code < TSIDE_FINDING_CODES; code++)
        ck_assert((code == TSIDE_FINDING_STRENGTH || code == TSIDE_FINDING_UNUSUAL) == !*tside_finding_mends(code));
    for (int code = 0; code < TSIDE_STRENGTH_CODES; code++) /* what has no limit is never overstressed */
        ck_assert((code == TSIDE_EXTENDER_TIP || code == TSIDE_BOW_NET_SECTION || code == TSIDE_RAIL_PULL) ==
                  !*tside_strength_mends(code));
}
END_TEST

/* What breaks, binds, burns or hits stops the work; what only wants to be known does not. */
START_TEST(what_breaks_or_hits_stops_the_work)
{
    static const tside_finding_code known[] = {
        TSIDE_FINDING_SEAL,       TSIDE_FINDING_WRAPS,         TSIDE_FINDING_STAYS_UP,   TSIDE_FINDING_CHAIN_SWING,
        TSIDE_FINDING_UPLIFT,     TSIDE_FINDING_STALL_GUESSED, TSIDE_FINDING_UNUSUAL,    TSIDE_FINDING_DROP,
        TSIDE_FINDING_DROP_START, TSIDE_FINDING_FUSE_START,    TSIDE_FINDING_EFFORT,     TSIDE_FINDING_LEAN_ALONG,
        TSIDE_FINDING_UNCOVERED,  TSIDE_FINDING_BOW_HOLE,      TSIDE_FINDING_LONG_STICK, TSIDE_FINDING_FEW_CHANGES,
        TSIDE_FINDING_HOT,        TSIDE_FINDING_SMALL_OPENING, TSIDE_FINDING_UNSEALS,    TSIDE_FINDING_ROPE_EDGE};
    for (int code = 0; code < TSIDE_FINDING_CODES; code++) {
        int only_known = 0;
        for (size_t i = 0; i < sizeof known / sizeof *known; i++)
            only_known |= code == (int)known[i];
        ck_assert_int_eq(tside_finding_stops(code), !only_known);
    }
}
END_TEST

static int found(const tside_plan *plan, tside_finding_code code)
{
    int count = 0;
    for (int i = 0; i < plan->finding_count; i++)
        count += plan->findings[i].code == code;
    return count;
}

/* What just keeps to a limit is no finding, what is a hair above it is one, and a limit that is not given is none. */
START_TEST(limits_of_a_run_may_be_reached)
{
    tside_side side = plain(), none;
    tside_plan plan;
    static const tside_finding_code codes[] = {TSIDE_FINDING_LONG_RUN,   TSIDE_FINDING_OVERLOAD, TSIDE_FINDING_DROP,
                                               TSIDE_FINDING_DROP_START, TSIDE_FINDING_AMPACITY, TSIDE_FINDING_FUSE,
                                               TSIDE_FINDING_FUSE_START};
    electrify(&side);
    plan = planned(&side);
    for (int below = 0; below <= 1; below++)
        for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
            tside_side changed = side;
            tside_plan made;
            double *limit[] = {&changed.drive.rated_run,  &changed.drive.rated_torque, &changed.cable.drop_limit,
                               &changed.cable.drop_limit, &changed.cable.ampacity,     &changed.cable.fuse,
                               &changed.cable.fuse};
            double value[] = {plan.run.time_up,         plan.run.torque_rms,   plan.run.drop_peak / 24,
                              plan.run.drop_start / 24, plan.run.current_peak, plan.run.current_peak,
                              plan.run.current_start};
            int drop = codes[i] == TSIDE_FINDING_DROP ||
                       codes[i] == TSIDE_FINDING_DROP_START; /* a share, and so rounded */
            *limit[i] = value[i] * (below ? 1 - 1e-12 : drop ? 1 + 1e-12 : 1);
            made = planned(&changed);
            ck_assert_msg(found(&made, codes[i]) == below, "finding %d, %d below its limit", (int)codes[i], below);
        }
    none = side;
    none.drive.rated_run_given = none.cable.drop_limit_given = none.cable.ampacity_given = none.cable.fuse_given = 0;
    none.drive.rated_run = none.cable.drop_limit = none.cable.ampacity = none.cable.fuse = 1e-6;
    plan = planned(&none);
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++)
        ck_assert_int_eq(found(&plan, codes[i]), 0);
    none.drive.rated_torque_given = 0;
    plan = planned(&none);
    ck_assert(plan.run.torque_rms_given && !found(&plan, TSIDE_FINDING_OVERLOAD));
    none = side;
    none.cable.wire = TSIDE_NO_CABLE;
    none.cable.drop_limit = -1;
    none.cable.ampacity = 1e-6;
    plan = planned(&none);
    ck_assert(!found(&plan, TSIDE_FINDING_DROP) && !found(&plan, TSIDE_FINDING_DROP_START) &&
              !found(&plan, TSIDE_FINDING_AMPACITY) && !found(&plan, TSIDE_FINDING_FUSE_LARGE));
}
END_TEST

/* A guide on a chain that ends at its collar, of a bar that stays where it is, has nothing to swing by. */
START_TEST(what_ends_at_its_collar_does_not_swing)
{
    tside_side side = plain();
    tside_plan plan = planned(&side);
    ck_assert(found(&plan, TSIDE_FINDING_CHAIN_SWING));
    side.stops.open_by = TSIDE_OPEN_HEIGHT;
    side.stops.open_height = plan.shut.underside;
    side.drive_end.guide.margin = 0;
    plan = planned(&side);
    NEAR(plan.drive_end.chain_swing, 0, 1e-9, "swing", 0);
    ck_assert(plan.drive_end.chain_swing > 0 || !found(&plan, TSIDE_FINDING_CHAIN_SWING));
}
END_TEST

/* A fuse too large for its cable is one whatever the motor, and though nothing is known of how it runs. */
START_TEST(a_fuse_protects_its_cable_or_not)
{
    tside_side side = plain();
    tside_plan plan;
    electrify(&side);
    side.drive.no_load_speed_given = 0;
    for (int fuse = 19; fuse <= 21; fuse++) {
        side.cable.fuse = fuse;
        plan = planned(&side);
        ck_assert(!plan.run_given);
        ck_assert_int_eq(found(&plan, TSIDE_FINDING_FUSE_LARGE), fuse > 20);
    }
    side.cable.fuse_given = 0;
    plan = planned(&side);
    ck_assert(!found(&plan, TSIDE_FINDING_FUSE_LARGE));
}
END_TEST

Suite *finding_suite(void)
{
    Suite *suite = suite_create("finding");
    TCase *tcase = tcase_create("finding");
    tcase_add_test(tcase, every_finding_is_provoked);
    tcase_add_test(tcase, limits_may_be_reached);
    tcase_add_test(tcase, seal_and_wraps_have_a_least);
    tcase_add_test(tcase, a_crowd_of_findings_fits);
    tcase_add_test(tcase, texts_are_total);
    tcase_add_test(tcase, a_hole_in_the_kink_is_in_it_and_one_kept_off_is_off);
    tcase_add_test(tcase, what_mends_names_fields);
    tcase_add_test(tcase, what_breaks_or_hits_stops_the_work);
    tcase_add_test(tcase, limits_of_a_run_may_be_reached);
    tcase_add_test(tcase, what_ends_at_its_collar_does_not_swing);
    tcase_add_test(tcase, a_fuse_protects_its_cable_or_not);
    suite_add_tcase(suite, tcase);
    return suite;
}
