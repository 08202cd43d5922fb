/* SPDX-License-Identifier: MIT */
/* Motors on their cables: closed forms, limits, and identities that tie time, energy and torque to the work. */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "runs.h"

Suite *run_suite(void);

enum { SIDES = 300 };

static tside_run run_of(const side *s, const tside_hang *hang, const tside_drive *drive, const tside_cable *cable)
{
    tside_run run;
    tside_fault fault;
    ANSWERS(tside_drive_run(&s->travel, &s->load, hang, drive, cable, &run, &fault));
    return run;
}

static double drive_angle(const side *s, double turns)
{
    double lean, drive;
    tside_fault fault;
    ANSWERS(tside_guide_lean(&s->travel, &s->hang, turns, &lean, &drive, &fault));
    return 2 * PI * drive;
}

/* --- identities --- */

/*
 * derivation: on a supply and cable that stay as they are, speed is a - b T. Over the run the integral of the speed
 * over time is the drive's whole angle, and that of speed times torque is the work, without friction the gain in
 * energy: so time alone gives the integrals of T and T^2 over time, and with them energy and root mean square.
 */
FOR_SIDES(time_angle_and_work_give_the_rest, SIDES)
{
    side s = side_random(number);
    tside_drive drive = strong_motor();
    tside_cable cable = copper(6e-6, 40);
    tside_run run;
    tside_fault fault;
    double turns = side_place(&s, s.open).turns, angle, work, a, b, k, R, torque_time, square_time;
    tside_torque worst;
    s.load.friction = s.load.rope_pressure = 0;
    ANSWERS(tside_lift_worst(&s.travel, &s.load, &s.hang, &worst, NULL, &fault));
    drive.stall_torque = 12 * worst.drive;
    run = run_of(&s, &s.hang, &drive, &cable);
    if (turns < 0.01)
        return;
    ANSWERS(tside_lift_work(&s.travel, &s.load, &s.hang, turns, &work, &fault));
    angle = drive_angle(&s, turns);
    R = run.resistance;
    k = (drive.stall_current - drive.no_load_current) / drive.stall_torque;
    a = drive.no_load_speed * (drive.supply_voltage - R * drive.no_load_current) / drive.rated_voltage;
    b = drive.no_load_speed / drive.stall_torque + drive.no_load_speed * R * k / drive.rated_voltage;
    if (run.stalls || !run.time_up_given || !(run.time_up > angle / a))
        ck_abort_msg("side %d: stalls %d, time up %g, without load %g", number, run.stalls, run.time_up, angle / a);
    torque_time = (a * run.time_up - angle) / b;
    square_time = (a * torque_time - work) / b;
    NEAR(run.time_down, angle / a, 1e-12 * run.time_down, "time down", number);
    NEAR(run.energy, drive.supply_voltage * (drive.no_load_current * run.time_up + k * torque_time), 1e-8 * run.energy,
         "energy", number);
    NEAR(run.torque_rms * run.torque_rms * run.time_up, square_time, 1e-7 * square_time, "square of the torque",
         number);
    ck_assert(run.energy > work);
}

/*
 * derivation: a curtain without weight or thickness lifts one weight on one radius, so that torque, speed and current
 * are the same all along.
 */
START_TEST(a_constant_torque_takes_its_angle_over_its_speed)
{
    side s = side_plain();
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_run run;
    tside_torque worst;
    tside_fault fault;
    double angle, speed, current;
    s.roll.thickness = 0;
    s.load.areal_mass = s.load.wet = 0;
    drive.supply_voltage = drive.rated_voltage;
    drive.stall_torque = 300;
    side_make(&s);
    run = run_of(&s, NULL, &drive, &none);
    ANSWERS(tside_lift_worst(&s.travel, &s.load, NULL, &worst, NULL, &fault));
    angle = 2 * PI * side_place(&s, s.open).turns;
    speed = drive.no_load_speed * (1 - worst.drive / drive.stall_torque);
    current = drive.no_load_current + (drive.stall_current - drive.no_load_current) * worst.drive / drive.stall_torque;
    NEAR(run.time_up, angle / speed, 1e-12 * run.time_up, "time", 0);
    NEAR(run.torque_rms, worst.drive, 1e-12 * worst.drive, "root mean square", 0);
    NEAR(run.current_peak, current, 1e-12 * current, "current", 0);
    NEAR(run.energy, drive.rated_voltage * current * run.time_up, 1e-12 * run.energy, "energy", 0);
    NEAR(run.stall_torque, drive.stall_torque, 1e-12, "stall", 0);
    NEAR(run.current_start, drive.stall_current, 1e-12, "start", 0);
    NEAR(run.drop_peak + run.drop_start + run.resistance + run.cable_length, 0, 0, "no cable", 0);
}
END_TEST

/* --- cables --- */

START_TEST(a_longer_cable_slows_and_a_short_one_hardly)
{
    side s = side_plain();
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_run without = run_of(&s, &s.hang, &drive, &none), before = without, run;
    for (int i = 0; i < 8; i++) {
        tside_cable cable = copper(16e-6, 0.01 * pow(4, i));
        cable.follow = 0;
        run = run_of(&s, &s.hang, &drive, &cable);
        ck_assert(run.time_up > before.time_up && run.time_down > before.time_down &&
                  run.stall_torque < before.stall_torque && run.current_start < before.current_start);
        NEAR(run.current_peak, without.current_peak, 1e-12 * run.current_peak, "the current that a torque asks", i);
        NEAR(run.drop_peak, run.resistance * run.current_peak, 1e-12, "drop", i);
        if (i == 0)
            NEAR(run.time_up, without.time_up, 1e-4 * run.time_up, "time on hardly any cable", i);
        before = run;
    }
}
END_TEST

/* derivation: at stall the motor, with its no-load current apart, draws what its terminals let it. */
START_TEST(at_stall_the_speed_is_nothing)
{
    side s = side_plain();
    tside_drive drive = strong_motor();
    tside_cable cable = copper(4e-6, 60);
    tside_run run = run_of(&s, &s.hang, &drive, &cable);
    double I = drive.no_load_current +
               (drive.stall_current - drive.no_load_current) * run.stall_torque / drive.stall_torque;
    double V = drive.supply_voltage - run.resistance * I;
    NEAR(drive.no_load_speed * (V / drive.rated_voltage - run.stall_torque / drive.stall_torque), 0, 1e-15,
         "speed at stall", 0);
    NEAR(run.current_start * (run.resistance + drive.rated_voltage / drive.stall_current), drive.supply_voltage, 1e-12,
         "Kirchhoff's law at the first moment", 0);
    NEAR(run.drop_start, run.resistance * run.current_start, 1e-12, "drop at the first moment", 0);
    NEAR(run.cable_length, 60 + 1.5 * (side_place(&s, s.open).y - side_place(&s, s.open).radius - s.curtain.sill), 1e-9,
         "cable that follows", 0);
}
END_TEST

/*
 * A motor stalls where, and only where, its side asks more than it has; and the place is where the torque first gets
 * there.
 */
FOR_SIDES(it_stalls_where_the_torque_passes, 60)
{
    side s = side_random(number);
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_torque worst, at;
    tside_run run;
    tside_fault fault;
    double turns = side_place(&s, s.open).turns, share = drive.supply_voltage / drive.rated_voltage;
    ANSWERS(tside_lift_worst(&s.travel, &s.load, &s.hang, &worst, NULL, &fault));
    drive.stall_torque = worst.drive * (1 + 0.9e-6) / share;
    run = run_of(&s, &s.hang, &drive, &none);
    ck_assert(run.stalls && run.stall_turns == worst.turns);
    drive.stall_torque = worst.drive * (1 + 1.1e-6) / share;
    run = run_of(&s, &s.hang, &drive, &none);
    ck_assert(!run.stalls && run.time_up_given && run.torque_rms_given && run.energy_given && !run.stall_turns_given &&
              isfinite(run.time_up));
    for (int i = 0; i < 4; i++) {
        drive.stall_torque = worst.drive * (1 - 0.1 * i) * (1 - 1e-7) / share;
        run = run_of(&s, &s.hang, &drive, &none);
        ck_assert(run.stalls && !run.time_up_given && !run.torque_rms_given && !run.energy_given &&
                  run.stall_turns_given && run.time_down_given);
        ck_assert(run.stall_turns >= 0 && run.stall_turns <= worst.turns + 1e-12);
        ANSWERS(tside_lift_at(&s.travel, &s.load, &s.hang, fmin(run.stall_turns, turns), &at, &fault));
        if (at.drive < run.stall_torque * (1 - 1e-6))
            ck_abort_msg("side %d: said to stall at %g turns, where only %g of %g N m is asked", number,
                         run.stall_turns, at.drive, run.stall_torque);
        for (int k = 0; k < 50 && run.stall_turns > 1e-9; k++) {
            ANSWERS(tside_lift_at(&s.travel, &s.load, &s.hang, run.stall_turns * k / 50 * (1 - 1e-9), &at, &fault));
            if (at.drive > run.stall_torque * (1 + 1e-6))
                ck_abort_msg("side %d: it had stalled before %g turns", number, run.stall_turns);
        }
        NEAR(run.current_peak, run_of(&s, &s.hang, &drive, &none).current_peak, 0, "current", number);
    }
}

/*
 * Even a motor that cannot begin stalls nowhere below shut: on these sides the angle at shut is not 0 to the last
 * digit.
 */
FOR_SIDES(it_stalls_not_before_shut, SIDES)
{
    side s = side_random(number);
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_run run;
    drive.stall_torque = 0.01;
    run = run_of(&s, &s.hang, &drive, &none);
    if (run.stalls && run.stall_turns < 0)
        ck_abort_msg("side %d: stalls at %g turns", number, run.stall_turns);
}

/* A travel of nothing takes no time. */
START_TEST(shut_is_open)
{
    side s = side_plain();
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_run run;
    tside_fault fault;
    s.stops.open_by = TSIDE_OPEN_HEIGHT;
    s.stops.shut_by = TSIDE_SHUT_HEIGHT;
    s.stops.open_height = s.stops.shut_height = 0.5;
    ANSWERS(side_travel(&s, &fault));
    run = run_of(&s, NULL, &drive, &none);
    ck_assert(!run.stalls && run.time_up == 0 && run.time_down == 0 && run.energy == 0);
    ck_assert(run.torque_rms > 0 && run.current_peak > drive.no_load_current);
}
END_TEST

/* --- refusals --- */

#define REFUSED(change, wanted_status, field, relation) \
    do { \
        tside_drive drive = strong_motor(); \
        tside_cable cable = copper(6e-6, 40); \
        change; \
        REFUSES(tside_drive_run(&s.travel, &s.load, &s.hang, &drive, &cable, &run, &fault), run, wanted_status, field, \
                relation); \
    } while (0)

START_TEST(what_makes_no_run_is_refused)
{
    side s = side_plain();
    tside_run run;
    tside_fault fault;
    REFUSED(drive.kind = TSIDE_HAND, TSIDE_CONTRADICTS, "drive.kind", TSIDE_NO_RELATION);
    REFUSED(drive.stall_torque_given = 0, TSIDE_CONTRADICTS, "drive.stall_torque", TSIDE_NO_RELATION);
    REFUSED(drive.no_load_speed_given = 0, TSIDE_CONTRADICTS, "drive.no_load_speed", TSIDE_NO_RELATION);
    REFUSED(drive.rated_voltage_given = 0, TSIDE_CONTRADICTS, "drive.supply_voltage", TSIDE_NO_RELATION);
    REFUSED(drive.supply_voltage_given = 0, TSIDE_CONTRADICTS, "drive.rated_voltage", TSIDE_NO_RELATION);
    REFUSED(drive.stall_current_given = 0, TSIDE_CONTRADICTS, "drive.no_load_current", TSIDE_NO_RELATION);
    REFUSED(drive.no_load_current_given = 0, TSIDE_CONTRADICTS, "drive.stall_current", TSIDE_NO_RELATION);
    REFUSED(drive.stall_current = 1.5, TSIDE_CONTRADICTS, "drive.stall_current", TSIDE_NOT_ABOVE);
    REFUSED(drive.stall_current_given = drive.no_load_current_given = 0, TSIDE_CONTRADICTS, "cable.wire",
            TSIDE_NO_RELATION);
    REFUSED(drive.rated_voltage_given = drive.supply_voltage_given = 0, TSIDE_CONTRADICTS, "cable.wire",
            TSIDE_NO_RELATION);
    REFUSED(drive.no_load_speed = 20, TSIDE_CONTRADICTS, "drive.no_load_speed", TSIDE_ABOVE);
    REFUSED((cable.length = 1000, cable.area = 1e-7), TSIDE_CONTRADICTS, "drive.supply_voltage", TSIDE_NOT_ABOVE);
    REFUSED((cable.length = 10000, cable.area = 1e-7), TSIDE_CONTRADICTS, "drive.supply_voltage", TSIDE_NONE_FITS);
    REFUSED(drive.no_load_speed = 0, TSIDE_OUT_OF_BOUNDS, "drive.no_load_speed", TSIDE_BELOW);
    REFUSED(cable.length = NAN, TSIDE_OUT_OF_BOUNDS, "cable.length", TSIDE_NOT_FINITE);
    REFUSED(s.load.length = -1, TSIDE_OUT_OF_BOUNDS, "load.length", TSIDE_NOT_ABOVE);
}
END_TEST

/*
 * derivation: the greatest no-load speed is that at which, somewhere between no load and stall, all the power taken is
 * given; a hair faster gives more than it takes.
 */
START_TEST(a_motor_gives_at_most_what_it_takes)
{
    side s = side_plain();
    tside_drive drive = strong_motor();
    tside_cable none = no_cable();
    tside_run run;
    tside_fault fault;
    double least = HUGE_VAL;
    drive.no_load_speed = 100;
    REFUSES(tside_drive_run(&s.travel, &s.load, &s.hang, &drive, &none, &run, &fault), run, TSIDE_CONTRADICTS,
            "drive.no_load_speed", TSIDE_ABOVE);
    drive.no_load_speed = fault.bound;
    ANSWERS(tside_drive_run(&s.travel, &s.load, &s.hang, &drive, &none, &run, &fault));
    for (int i = 0; i <= 10000; i++) {
        double x = i / 10000.0, taken = drive.rated_voltage *
                                        (drive.no_load_current + (drive.stall_current - drive.no_load_current) * x);
        least = fmin(least, 1 - drive.no_load_speed * drive.stall_torque * x * (1 - x) / taken);
    }
    NEAR(least, 0, 1e-6, "share lost at best", 0);
}
END_TEST

/* Without voltages its currents count all the same, as at the voltage to which they refer. */
START_TEST(without_voltages_there_are_currents)
{
    side s = side_plain();
    tside_drive drive = strong_motor(), bare = drive;
    tside_cable none = no_cable();
    tside_run all, run;
    bare.rated_voltage_given = bare.supply_voltage_given = 0;
    drive.supply_voltage = drive.rated_voltage;
    all = run_of(&s, &s.hang, &drive, &none);
    run = run_of(&s, &s.hang, &bare, &none);
    ck_assert(run.current_peak_given && !run.energy_given);
    NEAR(run.current_peak, all.current_peak, 1e-12 * all.current_peak, "peak", 0);
    NEAR(run.current_start, drive.stall_current, 1e-12 * all.current_start, "start", 0);
}
END_TEST

/* Speed and stall torque alone tell the time, and no more. */
START_TEST(without_currents_there_is_a_time)
{
    side s = side_plain();
    tside_drive drive = strong_motor(), bare = drive;
    tside_cable none = no_cable();
    tside_run all, run;
    bare.no_load_current_given = bare.stall_current_given = bare.rated_voltage_given = bare.supply_voltage_given = 0;
    drive.supply_voltage = drive.rated_voltage;
    all = run_of(&s, &s.hang, &drive, &none);
    run = run_of(&s, &s.hang, &bare, &none);
    NEAR(run.time_up, all.time_up, 1e-13 * all.time_up, "time", 0);
    ck_assert(!run.current_peak_given && !run.energy_given && all.current_peak_given && all.energy_given);
}
END_TEST

Suite *run_suite(void)
{
    Suite *suite = suite_create("run");
    TCase *tcase = tcase_create("run");
    tcase_add_test(tcase, time_angle_and_work_give_the_rest);
    tcase_add_test(tcase, a_constant_torque_takes_its_angle_over_its_speed);
    tcase_add_test(tcase, a_longer_cable_slows_and_a_short_one_hardly);
    tcase_add_test(tcase, at_stall_the_speed_is_nothing);
    tcase_add_test(tcase, it_stalls_where_the_torque_passes);
    tcase_add_test(tcase, it_stalls_not_before_shut);
    tcase_add_test(tcase, shut_is_open);
    tcase_add_test(tcase, what_makes_no_run_is_refused);
    tcase_add_test(tcase, a_motor_gives_at_most_what_it_takes);
    tcase_add_test(tcase, without_voltages_there_are_currents);
    tcase_add_test(tcase, without_currents_there_is_a_time);
    suite_add_tcase(suite, tcase);
    return suite;
}
