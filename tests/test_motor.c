/* SPDX-License-Identifier: MIT */
/* A motor's run in time, step by step, by the GNU Scientific Library's solver of ordinary differential equations, against the library's quadrature over the angle. */
#include <check.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <math.h>

#include <tunnelside/run.h>

#include "sides.h"

Suite *motor_suite(void);

/* What the solver needs: torque over the bar's angle, in a table of cubic pieces made from the library's torques, so that it can ask often. */
enum { POINTS = 400 };

typedef struct motor {
    double supply, rated, ohms, speed, torque, idle, stall, angle;
    double value[POINTS + 1], slope[POINTS + 1];
} motor;

static double torque_at(const motor *m, double angle)
{
    double step = m->angle / POINTS, u = angle / step;
    int i = (int)fmin(fmax(floor(u), 0), POINTS - 1);
    double t = u - i, h0 = (1 + 2 * t) * (1 - t) * (1 - t), h1 = t * (1 - t) * (1 - t), h2 = t * t * (3 - 2 * t), h3 = t * t * (t - 1);
    return h0 * m->value[i] + h1 * step * m->slope[i] + h2 * m->value[i + 1] + h3 * step * m->slope[i + 1];
}

/* y: angle, energy from the supply, integral of the torque's square; Kirchhoff's law around supply, cable and motor. */
static int move(double time, const double y[], double rate[], void *context)
{
    const motor *m = context;
    double T = torque_at(m, y[0]), I = m->idle + (m->stall - m->idle) * T / m->torque, V = m->supply - m->ohms * I;
    (void)time;
    rate[0] = m->speed * V / m->rated - m->speed / m->torque * T;
    rate[1] = m->supply * I;
    rate[2] = T * T;
    return GSL_SUCCESS;
}

static double bar_torque(const side *s, double turns)
{
    tside_torque t;
    tside_fault fault;
    ANSWERS(tside_lift_at(&s->travel, &s->load, NULL, turns, &t, &fault));
    return t.drive;
}

static void table(const side *s, double turns, motor *m)
{
    double h = 1e-5 * turns;
    for (int i = 0; i <= POINTS; i++) {
        double at = turns * i / POINTS, low = fmax(at - h, 0), high = fmin(at + h, turns);
        m->value[i] = bar_torque(s, at);
        m->slope[i] = (bar_torque(s, high) - bar_torque(s, low)) / ((high - low) * 2 * PI);
    }
}

/* A plumb side: its torque is smooth from shut to open. */
START_TEST(time_stepping_comes_to_the_same)
{
    side s = side_plain();
    tside_drive drive;
    tside_cable cable;
    tside_run run;
    tside_fault fault;
    static motor m;
    gsl_odeiv2_system system = {move, NULL, 3, &m};
    gsl_odeiv2_driver *driver;
    double turns = side_place(&s, s.open).turns, time = 0, y[3] = {0, 0, 0}, rate[3];
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    tside_usual(TSIDE_KIND_CABLE, &cable);
    drive.rated_torque = 60;
    drive.stall_torque_given = drive.rated_voltage_given = drive.supply_voltage_given = drive.no_load_speed_given = drive.no_load_current_given = drive.stall_current_given = 1;
    drive.stall_torque = 120;
    drive.rated_voltage = 24;
    drive.supply_voltage = 25;
    drive.no_load_speed = 0.45;
    drive.no_load_current = 0.8;
    drive.stall_current = 14;
    cable.wire = TSIDE_AWG;
    cable.gauge = 14;
    cable.length = 35;
    ANSWERS(tside_drive_run(&s.travel, &s.load, NULL, &drive, &cable, &run, &fault));
    m = (motor){.supply = 25, .rated = 24, .ohms = run.resistance, .speed = 0.45, .torque = 120, .idle = 0.8, .stall = 14, .angle = 2 * PI * turns};
    table(&s, turns, &m);
    driver = gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 0.1, 1e-11, 1e-11);
    ck_assert_int_eq(gsl_odeiv2_driver_apply(driver, &time, 0.999 * run.time_up, y), GSL_SUCCESS);
    /* to the very end of the travel by Newton's steps in time: the speed is the slope of the angle */
    for (int i = 0; i < 4; i++) {
        double left;
        move(time, y, rate, &m);
        left = (m.angle - y[0]) / rate[0];
        if (left <= 0)
            break;
        ck_assert_int_eq(gsl_odeiv2_driver_apply(driver, &time, time + left, y), GSL_SUCCESS);
    }
    gsl_odeiv2_driver_free(driver);
    NEAR(y[0], m.angle, 1e-7 * m.angle, "angle", 0);
    NEAR(run.time_up, time, 1e-7 * time, "time", 0);
    NEAR(run.energy, y[1], 1e-7 * y[1], "energy", 0);
    NEAR(run.torque_rms, sqrt(y[2] / time), 1e-7 * run.torque_rms, "root mean square", 0);
}
END_TEST

Suite *motor_suite(void)
{
    Suite *suite = suite_create("motor");
    TCase *tcase = tcase_create("motor");
    tcase_add_test(tcase, time_stepping_comes_to_the_same);
    suite_add_tcase(suite, tcase);
    return suite;
}
