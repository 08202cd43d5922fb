/* SPDX-License-Identifier: MIT */
/*
 * Torque against closed forms of a plumb side and against differences of energy on random sides; its worst against
 * dense sampling; twist against a handbook.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include "sides.h"

Suite *lift_suite(void);

enum { SIDES = 300, SAMPLES = 500, STEPS = 10 };

static tside_torque torque_at(const side *s, const tside_hang *hang, double turns)
{
    tside_torque t;
    tside_fault fault;
    ANSWERS(tside_lift_at(&s->travel, &s->load, hang, turns, &t, &fault));
    return t;
}

static tside_torque worst_of(const side *s, const tside_hang *hang)
{
    tside_torque t;
    tside_fault fault;
    ANSWERS(tside_lift_worst(&s->travel, &s->load, hang, &t, NULL, &fault));
    return t;
}

/* --- a plumb side in closed form --- */

static double line_weight(const side *s, double wraps)
{
    const tside_load *l = &s->load;
    double te = s->roll.packing * s->roll.thickness;
    return GRAVITY * (l->bar_mass + l->clip_mass + (l->areal_mass + l->wet) * PI * wraps * (s->roll.core + te * wraps));
}

/* derivation: on a plumb line all that hangs on the bar, weight (w L + Wd), pulls at the roll's radius. */
FOR_SIDES(plumb_side_lifts_its_weight_at_its_radius, SIDES)
{
    side s = side_random(number);
    double turns = side_place(&s, s.open).turns;
    if (s.slope > 0)
        return;
    for (int i = 0; i <= STEPS; i++) {
        place p = side_place(&s, side_wraps(&s, turns * i / STEPS));
        tside_torque t = torque_at(&s, NULL, turns * i / STEPS);
        double T = (line_weight(&s, p.wraps) * s.load.length + GRAVITY * s.load.end_mass) * p.radius,
               f = s.load.friction;
        double ropes = 2 * s.load.rope_friction * s.load.rope_pressure * p.radius;
        NEAR(t.turns, turns * i / STEPS, 1e-12, "turns", number);
        NEAR(t.lift, T, 1e-11 * T, "lift", number);
        NEAR(t.drag, f * T + ropes * s.load.length, 1e-11 * T, "drag", number);
        NEAR(t.up, T * (1 + f) + ropes * s.load.length, 1e-11 * T, "up", number);
        NEAR(t.down, T * (1 - f) - ropes * s.load.length, 1e-11 * T, "down", number);
        NEAR(t.drive, t.up, 0, "drive without a guide", number);
        NEAR(t.per_metre, line_weight(&s, p.wraps) * p.radius * (1 + f) + ropes, 1e-11 * T, "per metre", number);
    }
}

/*
 * derivation: on a plumb line the axis moves by te/(2 pi) outboard and r up for each radian, so that phi' = ((te/2 pi)
 * cos phi + r sin phi)/d, and T_drive = (T + (Wg x_cg + Wd e) phi')/(1 - phi').
 */
FOR_SIDES(plumb_drive_gives_what_the_guide_pushes_too, SIDES)
{
    side s = side_random(number);
    double turns = side_place(&s, s.open).turns, te = s.roll.packing * s.roll.thickness, D = s.guide.tube.diameter,
           d = D - 2 * s.guide.tube.wall;
    if (s.slope > 0)
        return;
    for (int i = 0; i <= STEPS; i++) {
        place p = side_place(&s, side_wraps(&s, turns * i / STEPS));
        tside_torque t = torque_at(&s, &s.hang, turns * i / STEPS);
        double phi = side_lean(&s, &p, 0), R = hypot(p.x - s.eye_x, p.y - s.eye_y),
               reach = sqrt(R * R - s.collar.offset * s.collar.offset);
        double rate = (te / (2 * PI) * cos(phi) + p.radius * sin(phi)) / reach;
        double G = s.hang.length, Wg = 7850 * PI / 4 * (D * D - d * d) * (G - s.guide.chain) * GRAVITY;
        double moment = Wg * (s.guide.chain + G) / 2 * sin(phi) + s.collar.mass * GRAVITY * s.collar.mass_offset;
        NEAR(t.drive, (t.up + moment * rate) / (1 - rate), 1e-9 * t.up, "drive", number);
    }
}

/* --- any side --- */

/* Differences over 2e-3 of a turn leave about 1e-8 of a torque. */
FOR_SIDES(torque_is_the_gain_of_energy, SIDES)
{
    side s = side_random(number);
    for (int k = 0; k < side_parts(&s); k++) {
        double from, to;
        int how = side_part(&s, k, &from, &to);
        for (int i = 1; i < STEPS; i++) {
            double n = from + (to - from) * i / STEPS, turns = side_place_as(&s, how, n).turns, L = s.load.length;
            tside_torque t = torque_at(&s, &s.hang, turns);
            side alone = s;
            NEAR(t.lift, side_lift(&s, how, n), 1e-7 * t.lift, "lift", number);
            NEAR(t.drive, side_drive(&s, how, n), 1e-7 * t.lift, "drive", number);
            alone.load.end_mass = 0;
            NEAR(t.per_metre,
                 side_lift(&alone, how, n) / L * (1 + s.load.friction) +
                     2 * s.load.rope_friction * s.load.rope_pressure * side_place_as(&s, how, n).radius,
                 1e-7 * t.lift / L, "per metre", number);
        }
    }
}

/* Each part is sampled with its ends, so that both values count where the drive's torque jumps between them. */
FOR_SIDES(worst_is_what_dense_sampling_finds, SIDES)
{
    side s = side_random(number);
    tside_torque worst = worst_of(&s, &s.hang), alone = worst_of(&s, NULL), least, there;
    tside_fault fault;
    double most = -HUGE_VAL, most_alone = -HUGE_VAL, least_down = HUGE_VAL, rough = 0, rough_alone = 0;
    for (int k = 0; k < side_parts(&s); k++) {
        double from, to, last = 0, before = 0, last_alone = 0, before_alone = 0;
        int how = side_part(&s, k, &from, &to);
        for (int i = 0; i <= SAMPLES; i++) {
            double n = from + (to - from) * i / SAMPLES, drive = side_drive(&s, how, n), lift = side_lift(&s, how, n),
                   drag, up;
            drag = s.load.friction * fabs(lift) +
                   2 * s.load.rope_friction * s.load.rope_pressure * side_place_as(&s, how, n).radius * s.load.length;
            up = lift + drag;
            most = fmax(most, drive);
            most_alone = fmax(most_alone, up);
            least_down = fmin(least_down, lift - drag);
            if (i > 1) {
                rough = fmax(rough, fabs(drive - 2 * last + before));
                rough_alone = fmax(rough_alone, fabs(up - 2 * last_alone + before_alone));
            }
            before = last;
            last = drive;
            before_alone = last_alone;
            last_alone = up;
        }
    }
    ck_assert_msg(worst.drive >= most * (1 - 1e-7) && worst.drive <= most * (1 + 1e-7) + rough,
                  "side %d: worst %.12g, sampled %.12g", number, worst.drive, most);
    ck_assert_msg(alone.drive >= most_alone * (1 - 1e-7) && alone.drive <= most_alone * (1 + 1e-7) + rough_alone,
                  "side %d: worst %.12g, sampled %.12g", number, alone.drive, most_alone);
    ANSWERS(tside_lift_worst(&s.travel, &s.load, &s.hang, &worst, &least, &fault));
    ck_assert_msg(least.down <= least_down + 1e-7 * most && least.down >= least_down - 1e-7 * most - rough_alone,
                  "side %d: least %.12g, sampled %.12g", number, least.down, least_down);
    NEAR(least.drive, least.up, 0, "down goes without the guide", number);
    if (side_parts(&s) == 1) { /* at a corner the turns name two torques */
        there = torque_at(&s, &s.hang, worst.turns);
        NEAR(there.drive, worst.drive, 1e-13 * worst.drive, "torque where the worst is", number);
        NEAR(there.lift, worst.lift, 1e-13 * worst.drive, "lift where the worst is", number);
        NEAR(there.down, worst.down, 1e-13 * worst.drive, "hold where the worst is", number);
        NEAR(there.per_metre, worst.per_metre, 1e-13 * worst.per_metre, "a metre's where the worst is", number);
        there = torque_at(&s, NULL, least.turns);
        NEAR(there.down, least.down, 1e-13 * most, "torque where the least is", number);
    }
}

/*
 * Where the curtain begins to hang plumb the axis turns off outboard: lift goes on evenly, but the guide's rate jumps,
 * and with it what the drive must give.
 */
FOR_SIDES(both_sides_of_a_corner_count, 40)
{
    side s = side_random(CORNER_WALL + WALLS * number);
    double bearing = side_drive(&s, BEARS, s.corner), hanging = side_drive(&s, HANGS, s.corner),
           lift = side_lift(&s, HANGS, s.corner);
    ck_assert(fabs(bearing - hanging) > 1e-4 * bearing);
    NEAR(side_lift(&s, BEARS, s.corner), lift, 1e-7 * lift, "lift on either side", number);
    ck_assert(worst_of(&s, &s.hang).drive > fmax(bearing, hanging) * (1 - 1e-7));
}

/* --- laws --- */

FOR_SIDES(loads_scale, 100)
{
    side s = side_random(number), t = s;
    double turns = side_place(&s, s.open).turns * 0.37, from, to;
    tside_torque p = torque_at(&s, NULL, turns), q;
    int bears = side_part(&s, 0, &from, &to) == BEARS;
    t.load.bar_mass *= 2;
    t.load.clip_mass *= 2;
    t.load.areal_mass *= 2;
    t.load.wet *= 2;
    t.load.end_mass *= 2;
    t.load.rope_pressure *= 2;
    q = torque_at(&t, NULL, turns);
    NEAR(q.lift, 2 * p.lift, 1e-13 * q.lift, "lift of twice the masses", number);
    NEAR(q.drag, 2 * p.drag, 1e-13 * q.lift, "drag of twice the masses", number);
    NEAR(q.per_metre, 2 * p.per_metre, 1e-13 * q.lift, "per metre of twice the masses", number);
    t = s;
    t.load.length *= 2;
    t.load.end_mass *= 2;
    q = torque_at(&t, NULL, turns);
    NEAR(q.up, 2 * p.up, 1e-13 * q.lift, "torque of twice the length", number);
    NEAR(q.per_metre, p.per_metre, 1e-13 * q.lift, "per metre of twice the length", number);
    /* water weighs as curtain does */
    t = s;
    t.load.areal_mass += t.load.wet;
    t.load.wet = 0;
    q = torque_at(&t, NULL, turns);
    NEAR(q.lift, p.lift, 1e-13 * q.lift, "water as curtain", number);
    /* lengths scale torque where the curtain weighs nothing */
    t = s;
    t.load.areal_mass = t.load.wet = 0;
    p = torque_at(&t, NULL, turns);
    t = side_scaled(&t, 2);
    side_make(&t);
    q = torque_at(&t, NULL, turns);
    NEAR(q.lift, 2 * p.lift, 1e-9 * q.lift, "lift at twice the size", number);
    ck_assert(bears || s.slope == 0 || s.wall == LEANING_WALL);
}

START_TEST(a_lighter_wet_film_needs_less)
{
    side s = side_plain();
    tside_torque wet = worst_of(&s, &s.hang), dry;
    s.load.wet = 0;
    dry = worst_of(&s, &s.hang);
    ck_assert(dry.drive < wet.drive && dry.per_metre < wet.per_metre);
}
END_TEST

/* --- the longest side --- */

FOR_SIDES(at_the_longest_side_the_worst_is_what_is_available, SIDES)
{
    side s = side_random(number);
    for (int hung = 0; hung < 2; hung++) {
        const tside_hang *hang = hung ? &s.hang : NULL;
        double available = worst_of(&s, hang).drive, length;
        tside_fault fault;
        side t = s;
        ANSWERS(tside_lift_longest(&s.travel, &s.load, hang, available, &length, &fault));
        NEAR(length, s.load.length, 1e-9 * length, "length whose worst torque is available", number);
        ANSWERS(tside_lift_longest(&s.travel, &s.load, hang, 1.7 * available, &length, &fault));
        ck_assert(length > s.load.length);
        t.load.length = length;
        NEAR(worst_of(&t, hang).drive, 1.7 * available, 1.7e-9 * available, "worst torque at the longest side", number);
    }
}

START_TEST(what_does_not_lift_the_drive_lifts_no_side)
{
    side s = side_plain();
    tside_fault fault;
    double length, own;
    s.load.friction = 0.2;
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, 0.1, &length, &fault), length, TSIDE_OUT_OF_REACH, "available",
            TSIDE_NOT_ABOVE);
    own = GRAVITY * s.load.end_mass * side_place(&s, s.open).radius * 1.2; /* with its friction, on the thickest roll */
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, own * (1 - 1e-9), &length, &fault), length, TSIDE_OUT_OF_REACH,
            "available", TSIDE_NOT_ABOVE);
    NEAR(fault.bound, own, 1e-9 * own, "torque that the drive alone needs", 0);
    ANSWERS(tside_lift_longest(&s.travel, &s.load, NULL, own * (1 + 1e-6), &length, &fault));
    ck_assert(length > 0 && length < 1e-3);
    s.load.bar_mass = s.load.clip_mass = s.load.areal_mass = s.load.rope_pressure = 0;
    ANSWERS(tside_lift_longest(&s.travel, &s.load, NULL, 100 * own, &length, &fault)); /* of what is wet alone */
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, 0, &length, &fault), length, TSIDE_OUT_OF_BOUNDS, "available",
            TSIDE_NOT_ABOVE);
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, NAN, &length, &fault), length, TSIDE_OUT_OF_BOUNDS,
            "available", TSIDE_NOT_FINITE);
    s.load.length = 0;
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, 50, &length, &fault), length, TSIDE_OUT_OF_BOUNDS,
            "load.length", TSIDE_NOT_ABOVE);
    s.load.length = 30;
    s.load.bar_mass = s.load.clip_mass = s.load.areal_mass = s.load.wet = 0;
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, 50, &length, &fault), length, TSIDE_OUT_OF_BOUNDS,
            "load.bar_mass", TSIDE_NOT_ABOVE);
    ck_assert(fault.value == 0 && fault.bound == 0);
}
END_TEST

/* --- refusals --- */

/*
 * A guide whose eye the bar passes closely turns with it: d is the vertical distance less little, r sin phi/d nears 1.
 */
static side spun(void)
{
    side s = side_plain();
    s.roll.core = 0.3;
    s.curtain.hip = 2;
    s.collar = (tside_collar){.offset = 0.14, .mass = 8};
    s.guide.eye_clearance = 0;
    s.guide.chain = 0;
    s.guide.margin = 0;
    s.guide.ground_clearance = 0;
    s.stops.gap = 0;
    s.stops.shut_by = TSIDE_SHUT_HEIGHT;
    s.stops.shut_height = 1;
    s.eye = OFFSET_EYE;
    s.eye_x = 4.6;
    s.eye_y = 2;
    side_make(&s);
    return s;
}

START_TEST(every_failure_is_named)
{
    side s = side_plain(), t = spun();
    tside_torque torque, other_torque;
    tside_fault fault;
    double number, other;
    tside_drive drive;
    tside_cable cable;
    tside_run run;
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    tside_usual(TSIDE_KIND_CABLE, &cable);
    drive.rated_torque_given = 1;
    drive.rated_torque = 50;
    REFUSES(tside_lift_at(&s.travel, &s.load, NULL, -1, &torque, &fault), torque, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_BELOW);
    REFUSES(tside_lift_at(&s.travel, &s.load, &s.hang, 1000, &torque, &fault), torque, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_ABOVE);
    REFUSES(tside_lift_work(&s.travel, &s.load, &s.hang, 1000, &number, &fault), number, TSIDE_OUT_OF_BOUNDS, "turns",
            TSIDE_ABOVE);
    REFUSES(tside_side_force(&s.travel, &s.load, &s.hang, NAN, &number, &other, &fault), number, TSIDE_OUT_OF_BOUNDS,
            "turns", TSIDE_NOT_FINITE);
    s.load.friction = -0.1;
    REFUSES(tside_lift_at(&s.travel, &s.load, NULL, 0, &torque, &fault), torque, TSIDE_OUT_OF_BOUNDS, "load.friction",
            TSIDE_BELOW);
    REFUSES(tside_lift_worst(&s.travel, &s.load, NULL, &torque, NULL, &fault), torque, TSIDE_OUT_OF_BOUNDS,
            "load.friction", TSIDE_BELOW);
    REFUSES(tside_lift_worst(&s.travel, &s.load, NULL, &other_torque, &torque, &fault), torque, TSIDE_OUT_OF_BOUNDS,
            "load.friction", TSIDE_BELOW);
    REFUSES(tside_lift_work(&s.travel, &s.load, NULL, 0, &number, &fault), number, TSIDE_OUT_OF_BOUNDS, "load.friction",
            TSIDE_BELOW);
    REFUSES(tside_lift_longest(&s.travel, &s.load, NULL, 50, &number, &fault), number, TSIDE_OUT_OF_BOUNDS,
            "load.friction", TSIDE_BELOW);
    REFUSES(tside_side_force(&s.travel, &s.load, &s.hang, 0, &number, &other, &fault), other, TSIDE_OUT_OF_BOUNDS,
            "load.friction", TSIDE_BELOW);
    ck_assert(side_lean_rate(&t, HANGS, t.open) > 1);
    REFUSES(tside_lift_at(&t.travel, &t.load, &t.hang, 0, &torque, &fault), torque, TSIDE_OUT_OF_REACH, "hang",
            TSIDE_NOT_BELOW);
    REFUSES(tside_lift_worst(&t.travel, &t.load, &t.hang, &torque, NULL, &fault), torque, TSIDE_OUT_OF_REACH, "hang",
            TSIDE_NOT_BELOW);
    REFUSES(tside_lift_work(&t.travel, &t.load, &t.hang, 0, &number, &fault), number, TSIDE_OUT_OF_REACH, "hang",
            TSIDE_NOT_BELOW);
    REFUSES(tside_lift_longest(&t.travel, &t.load, &t.hang, 50, &number, &fault), number, TSIDE_OUT_OF_REACH, "hang",
            TSIDE_NOT_BELOW);
    REFUSES(tside_side_force(&t.travel, &t.load, &t.hang, 0, &number, &other, &fault), number, TSIDE_OUT_OF_REACH,
            "hang", TSIDE_NOT_BELOW);
    REFUSES(tside_drive_run(&t.travel, &t.load, &t.hang, &drive, &cable, &run, &fault), run, TSIDE_OUT_OF_REACH, "hang",
            TSIDE_NOT_BELOW);
    ANSWERS(tside_lift_worst(&t.travel, &t.load, NULL, &torque, NULL, &fault));
}
END_TEST

/* --- twist and splices --- */

/*
 * Beer and Johnston, Mechanics of Materials, from memory: a hollow shaft of 40 and 60 mm, 1.5 m long, of G = 77 GPa,
 * twists by 2 degrees, which the book takes as 34.9 mrad, under 1.829 kN m at its end. derivation: a torque that grows
 * evenly to as much twists it by half of that.
 */
START_TEST(twist_is_the_handbooks)
{
    tside_round tube = {0.060, 0.010};
    tside_section section;
    tside_fault fault;
    double twist;
    ANSWERS(tside_round_section(&tube, 7850, &section, &fault));
    ANSWERS(tside_bar_twist(1829 / 1.5, 1.5, 77e9, section.torsion, &twist, &fault));
    NEAR(2 * twist, 34.9e-3, 0.05e-3, "twice the twist of an even torque", 0);
}
END_TEST

/* Slice by slice: T(z) = m (L - z), each slice twisting by T dz/(G J). */
START_TEST(twist_is_the_sum_of_its_slices)
{
    enum { SLICES = 1000 };
    double m = 3.2, L = 27.5, G = 77.2e9, J = 1.1e-7, sum = 0, twist;
    tside_fault fault;
    for (int i = 0; i < SLICES; i++)
        sum += m * (L - L * (i + 0.5) / SLICES) * L / SLICES / (G * J);
    ANSWERS(tside_bar_twist(m, L, G, J, &twist, &fault));
    NEAR(twist, sum, 1e-12 * sum, "twist", 0);
    ANSWERS(tside_bar_twist(0, L, G, J, &twist, &fault));
    NEAR(twist, 0, 0, "twist of no torque", 0);
    REFUSES(tside_bar_twist(-1, L, G, J, &twist, &fault), twist, TSIDE_OUT_OF_BOUNDS, "per_metre", TSIDE_BELOW);
    REFUSES(tside_bar_twist(m, NAN, G, J, &twist, &fault), twist, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_FINITE);
    REFUSES(tside_bar_twist(m, -1, G, J, &twist, &fault), twist, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_BELOW);
    REFUSES(tside_bar_twist(m, L, 0, J, &twist, &fault), twist, TSIDE_OUT_OF_BOUNDS, "shear_modulus", TSIDE_NOT_ABOVE);
    REFUSES(tside_bar_twist(m, L, G, 0, &twist, &fault), twist, TSIDE_OUT_OF_BOUNDS, "torsion", TSIDE_NOT_ABOVE);
    REFUSES(tside_bar_twist(1, 1e15, 1e-150, 1e-150, &twist, &fault), twist, TSIDE_NOT_MODELLED, "twist",
            TSIDE_NOT_FINITE);
}
END_TEST

Suite *lift_suite(void)
{
    Suite *suite = suite_create("lift");
    TCase *tcase = tcase_create("lift");
    tcase_add_test(tcase, plumb_side_lifts_its_weight_at_its_radius);
    tcase_add_test(tcase, plumb_drive_gives_what_the_guide_pushes_too);
    tcase_add_test(tcase, torque_is_the_gain_of_energy);
    tcase_add_test(tcase, worst_is_what_dense_sampling_finds);
    tcase_add_test(tcase, both_sides_of_a_corner_count);
    tcase_add_test(tcase, loads_scale);
    tcase_add_test(tcase, a_lighter_wet_film_needs_less);
    tcase_add_test(tcase, at_the_longest_side_the_worst_is_what_is_available);
    tcase_add_test(tcase, what_does_not_lift_the_drive_lifts_no_side);
    tcase_add_test(tcase, every_failure_is_named);
    tcase_add_test(tcase, twist_is_the_handbooks);
    tcase_add_test(tcase, twist_is_the_sum_of_its_slices);
    suite_add_tcase(suite, tcase);
    return suite;
}
