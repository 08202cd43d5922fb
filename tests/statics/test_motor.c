/* SPDX-License-Identifier: MIT */
/*
 * A motor's run against the GNU Scientific Library: step by step in time by its solver of ordinary differential
 * equations, and by its adaptive quadrature over the turns, also close to stall, where the time lies in a short part of
 * the travel.
 */
#include <check.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_odeiv2.h>
#include <math.h>

#include <tunnelside/guide.h>
#include <tunnelside/run.h>

#include "sides.h"

Suite *motor_suite(void);

/*
 * What the solver needs: torque over the bar's angle, in a table of cubic pieces made from the library's torques, so
 * that it can ask often.
 */
enum { POINTS = 400 };

typedef struct motor {
    double supply, rated, ohms, speed, torque, idle, stall, angle;
    double value[POINTS + 1], slope[POINTS + 1];
} motor;

static double torque_at(const motor *m, double angle)
{
    double step = m->angle / POINTS, u = angle / step;
    int i = (int)fmin(fmax(floor(u), 0), POINTS - 1);
    double t = u - i, h0 = (1 + 2 * t) * (1 - t) * (1 - t), h1 = t * (1 - t) * (1 - t), h2 = t * t * (3 - 2 * t),
           h3 = t * t * (t - 1);
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
    drive.rated_torque_given = 1;
    drive.rated_torque = 60;
    drive.stall_torque_given = drive.rated_voltage_given = drive.supply_voltage_given = drive.no_load_speed_given =
        drive.no_load_current_given = drive.stall_current_given = 1;
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
    m = (motor){.supply = 25,
                .rated = 24,
                .ohms = run.resistance,
                .speed = 0.45,
                .torque = 120,
                .idle = 0.8,
                .stall = 14,
                .angle = 2 * PI * turns};
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

/* --- with a guide --- */

typedef struct hung {
    const side *s;
    double turns;      /* of the bar, from shut to open */
    double idle, most; /* rad/s without load, and N m at stall */
    int power;         /* of the torque */
} hung;

static double drive_turns(const side *s, double turns)
{
    double lean, drive;
    tside_fault fault;
    ANSWERS(tside_guide_lean(&s->travel, &s->hang, turns, &lean, &drive, &fault));
    return drive;
}

/*
 * Seconds for each turn of the bar, times a power of the torque. derivation: speed falls in a straight line from
 * without load to stall.
 */
static double pace(double turns, void *context)
{
    const hung *h = context;
    double d = 1e-5 * h->turns, low = fmax(turns - d, 0), high = fmin(turns + d, h->turns),
           rate = (drive_turns(h->s, high) - drive_turns(h->s, low)) / (high - low);
    tside_torque t;
    tside_fault fault;
    ANSWERS(tside_lift_at(&h->s->travel, &h->s->load, &h->s->hang, turns, &t, &fault));
    return 2 * PI * rate / (h->idle * (1 - t.drive / h->most)) * pow(t.drive, h->power);
}

static double over_travel(const side *s, hung *h, int power, double worst, gsl_integration_workspace *space)
{
    gsl_function f = {pace, h};
    double breaks[] = {0, side_place(s, s->corner).turns, worst, h->turns}, sum = 0, part, error;
    if (breaks[1] > worst) {
        breaks[2] = breaks[1];
        breaks[1] = worst;
    }
    h->power = power;
    for (int i = 0; i < 3; i++)
        if (breaks[i + 1] > breaks[i] + 1e-9) {
            ck_assert_int_eq(gsl_integration_qag(&f, breaks[i], breaks[i + 1], 1e-9, 1e-6, 200, GSL_INTEG_GAUSS15,
                                                 space, &part, &error),
                             GSL_SUCCESS);
            sum += part;
        }
    return sum;
}

FOR_SIDES(quadrature_over_the_turns_comes_to_the_same, 60)
{
    side s = side_random(number);
    tside_drive drive;
    tside_cable none;
    tside_run run;
    tside_torque worst;
    tside_fault fault;
    double margin = number % 2 ? 1 + 1e-4 : 1.5, time, square;
    hung h = {&s, side_place(&s, s.open).turns, 0.4, 0, 0};
    gsl_integration_workspace *space = gsl_integration_workspace_alloc(200);
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    tside_usual(TSIDE_KIND_CABLE, &none);
    ANSWERS(tside_lift_worst(&s.travel, &s.load, &s.hang, &worst, NULL, &fault));
    drive.rated_torque_given = 1;
    drive.rated_torque = 60;
    drive.stall_torque_given = drive.no_load_speed_given = 1;
    drive.stall_torque = h.most = margin * worst.drive;
    drive.no_load_speed = h.idle;
    ANSWERS(tside_drive_run(&s.travel, &s.load, &s.hang, &drive, &none, &run, &fault));
    time = over_travel(&s, &h, 0, worst.turns, space);
    square = over_travel(&s, &h, 2, worst.turns, space);
    gsl_integration_workspace_free(space);
    NEAR(run.time_up, time, 1e-5 * time, "time", number);
    NEAR(run.torque_rms, sqrt(square / time), 1e-5 * run.torque_rms, "root mean square", number);
}

Suite *motor_suite(void)
{
    Suite *suite = suite_create("motor");
    TCase *tcase = tcase_create("motor");
    tcase_add_test(tcase, time_stepping_comes_to_the_same);
    tcase_add_test(tcase, quadrature_over_the_turns_comes_to_the_same);
    suite_add_tcase(suite, tcase);
    return suite;
}
