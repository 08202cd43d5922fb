/* SPDX-License-Identifier: MIT */
/*
 * How a motor runs the side on its supply and cable. Source: derivation; a motor's straight line from no load to stall.
 */
#include "statics/run.h"

#include "base/field.h"
#include "base/root.h"

#include "parts/cable.h"
#include "parts/drive.h"

#define OF_CURRENT .optional = 1, .given_offset = offsetof(tside_run, current_peak_given)

/* clang-format off */
static const tside_field rows[] = {
    {RESULT_COUNT(tside_run, stalls, "1 where it stalls before open")},
    {RESULT_OPTIONAL(tside_run, stall_turns, "turn", "turns of the bar since shut where it stalls")},
    {RESULT(tside_run, stall_torque, "N m", "torque that it gives before it stalls, on its supply and cable")},
    {RESULT_OPTIONAL(tside_run, time_up, "s", "from shut to open")},
    {RESULT_OPTIONAL(tside_run, time_down, "s", "from open to shut, at no-load speed")},
    {RESULT_OPTIONAL(tside_run, torque_rms, "N m", "root of the mean square of the torque, over the time up")},
    {RESULT(tside_run, current_peak, "A", "greatest running current, or that where it stalls"), OF_CURRENT},
    {RESULT(tside_run, current_start, "A", "current at the first moment"), OF_CURRENT},
    {RESULT_OPTIONAL(tside_run, energy, "J", "from the supply, up")},
    {RESULT(tside_run, drop_peak, "V", "lost in the cable at the greatest running current"), OF_CURRENT},
    {RESULT(tside_run, drop_start, "V", "lost in the cable at the first moment"), OF_CURRENT},
    {RESULT(tside_run, resistance, "ohm", "of the cable there and back, with what follows the drive")},
    {RESULT(tside_run, cable_length, "m", "one way, with what follows the drive")},
};
/* clang-format on */
TABLE(tside_i_run_table, rows);

int tside_i_drive_runs(const tside_drive *drive)
{
    return drive->kind == TSIDE_MOTOR && drive->stall_torque_given && drive->no_load_speed_given;
}

/* --- a motor on its supply and cable --- */

/* So near its stall torque it is said to stall: the time would hang on the last digits of the torque. */
#define NEAR_STALL 1e-6

typedef struct motor {
    double supply, rated; /* V */
    double resistance;    /* ohm, of the cable */
    double speed, torque; /* rad/s without load and N m at stall, at the rated voltage */
    double idle, stall;   /* A, at the rated voltage; 0 where not known */
    double free, most;    /* rad/s without load and N m at stall, on its supply and cable */
} motor;

static double current_at(const motor *m, double torque)
{
    return m->idle + (m->stall - m->idle) * torque / m->torque;
}

/*
 * w0 V/Vr - (w0/Ts) T falls in a straight line from without load to stall: written so, it is above 0 below stall,
 * whatever is rounded.
 */
static double speed_at(const motor *m, double torque)
{
    return m->free * ((m->most - torque) / m->most);
}

static tside_status contradicts(tside_fault *fault, const char *field, const char *other, const char *reason)
{
    return tside_i_refuse(fault, TSIDE_CONTRADICTS, field, other, reason);
}

/*
 * At the rated voltage no torque may ask more power than the current brings: with x of the stall torque, w0 Ts x (1 -
 * x) <= Vr (I0 + (Is - I0) x). It is nearest at x = sqrt(I0)/(sqrt(I0) + sqrt(Is)), where w0 Ts = Vr (sqrt(I0) +
 * sqrt(Is))^2.
 */
static tside_status check_power(const motor *m, tside_fault *fault)
{
    double root = sqrt(m->idle) + sqrt(m->stall), most = m->rated * root * root / m->torque;
    if (m->speed > most)
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "drive.no_load_speed", "drive.stall_current",
                                    "the motor would give more power than it takes", "rad/s", m->speed, TSIDE_ABOVE,
                                    most, 0);
    return TSIDE_OK;
}

static tside_status make_motor(const tside_drive *drive, const tside_cable *cable, double length, motor *m,
                               tside_fault *fault)
{
    if (drive->kind != TSIDE_MOTOR)
        return contradicts(fault, "drive.kind", "", "a hand drive does not run by itself");
    if (!drive->stall_torque_given)
        return contradicts(fault, "drive.stall_torque", "", "a motor's run needs its stall torque");
    if (!drive->no_load_speed_given)
        return contradicts(fault, "drive.no_load_speed", "", "a motor's run needs its no-load speed");
    TRY(tside_i_drive_voltages(drive, fault));
    if (!drive->no_load_current_given != !drive->stall_current_given)
        return contradicts(fault, drive->stall_current_given ? "drive.stall_current" : "drive.no_load_current",
                           drive->stall_current_given ? "drive.no_load_current" : "drive.stall_current",
                           "give both currents or neither");
    if (drive->stall_current_given && drive->stall_current <= drive->no_load_current)
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "drive.stall_current", "drive.no_load_current",
                                    "it must be above the current without load", "A", drive->stall_current,
                                    TSIDE_NOT_ABOVE, drive->no_load_current, 0);
    if (cable->wire != TSIDE_NO_CABLE && !(drive->stall_current_given && drive->rated_voltage_given))
        return contradicts(fault, "cable.wire", "drive.stall_current",
                           "what a cable loses needs the drive's voltages and currents");
    *m = (motor){1, 1, tside_i_cable_resistance(cable, length), drive->no_load_speed, drive->stall_torque, 0, 0, 0, 0};
    if (drive->rated_voltage_given) {
        m->supply = drive->supply_voltage;
        m->rated = drive->rated_voltage;
    }
    if (drive->stall_current_given) {
        m->idle = drive->no_load_current;
        m->stall = drive->stall_current;
    }
    if (drive->stall_current_given && drive->rated_voltage_given)
        TRY(check_power(m, fault));
    if (m->supply - m->resistance * m->idle <= 0)
        return tside_i_refuse_value(fault, TSIDE_CONTRADICTS, "drive.supply_voltage", "cable",
                                    "the cable leaves the motor no voltage, even without load", "V", m->supply,
                                    TSIDE_NOT_ABOVE, m->resistance * m->idle, 0);
    m->free = m->speed * (m->supply - m->resistance * m->idle) / m->rated;
    /* where the speed is 0 */
    m->most = m->torque * (m->supply - m->resistance * m->idle) / (m->rated + m->resistance * (m->stall - m->idle));
    return TSIDE_OK;
}

/* --- the run up --- */

typedef struct sums {
    double time, square,
        energy; /* integrals over the drive's own angle: 1/speed, torque^2/speed, supply x current/speed */
} sums;

/* Nodes and weights of Gauss and Legendre on [0, 1], five of them: Abramowitz and Stegun, table 25.4, from memory. */
static const double nodes[] = {0.046910077030668004, 0.23076534494715845, 0.5, 0.76923465505284155, 0.953089922969332};
static const double weights[] = {0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324,
                                 0.11846344252809454};
enum { NODES = 5 };

/*
 * How fast the drive's angle grows with progress, but for a factor that is the same all along a stretch; a corner and a
 * roll that tips turn evenly.
 */
static double angle_rate(const tside_i_lifting *lifting, const tside_i_spot *spot)
{
    double rate = spot->share > 0 ? 1 / spot->share : 1;
    if (lifting->hang)
        rate *= 1 - tside_i_hang_lean(lifting->hang, spot).rate;
    return rate;
}

static double drive_angle(const tside_i_lifting *lifting, int stretch, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(lifting->track->travel, stretch, progress, &spot);
    return tside_i_drive_angle(lifting->track->travel, lifting->hang, &spot);
}

/*
 * Over a part of a stretch: the mean of each integrand, weighed by how fast the angle grows, times the angle, which is
 * exact.
 */
static sums panel(const tside_i_lifting *lifting, const motor *m, int stretch, double from, double to)
{
    sums sum = {0, 0, 0};
    double weight = 0, angle = drive_angle(lifting, stretch, to) - drive_angle(lifting, stretch, from);
    for (int i = 0; i < NODES; i++) {
        tside_i_spot spot;
        double torque, seconds, w;
        tside_i_travel_spot(lifting->track->travel, stretch, from + (to - from) * nodes[i], &spot);
        torque = fmax(tside_i_torque(lifting, &spot).drive, 0);
        w = weights[i] * angle_rate(lifting, &spot);
        seconds = w / speed_at(m, torque);
        weight += w;
        sum.time += seconds;
        sum.square += seconds * torque * torque;
        sum.energy += seconds * m->supply * current_at(m, torque);
    }
    return (sums){sum.time * angle / weight, sum.square * angle / weight, sum.energy * angle / weight};
}

static sums plus(sums a, sums b)
{
    return (sums){a.time + b.time, a.square + b.square, a.energy + b.energy};
}

/*
 * In steps that halve where two halves differ from the whole, as they do close under the fixing, where a guide leans
 * ever faster, and where the motor all but stalls; and grow again after. After so many, one takes what is left.
 */
static sums stretch_up(const tside_i_lifting *lifting, const motor *m, int stretch, double from, double to)
{
    enum { STEPS = 10000 };
    const double alike = 1e-9; /* relative: a looser one leaves the time short of the digits that its header promises */
    sums all = {0, 0, 0};
    double step = to - from, at = from;
    for (int tried = 0; at < to; tried++) {
        double next = to - at > step && tried < STEPS ? at + step : to, middle = at + (next - at) / 2;
        sums whole = panel(lifting, m, stretch, at, next),
             halves = plus(panel(lifting, m, stretch, at, middle), panel(lifting, m, stretch, middle, next));
        if (fabs(halves.time - whole.time) <= alike * halves.time || tried >= STEPS) {
            all = plus(all, halves);
            at = next;
            step *= 2;
        } else
            step = (next - at) / 2;
    }
    return all;
}

static sums run_up(const tside_i_lifting *lifting, const motor *m)
{
    const tside_travel *travel = lifting->track->travel;
    sums all = {0, 0, 0};
    for (int i = 0; i < travel->stretches; i++)
        all = plus(all, stretch_up(lifting, m, i, travel->stretch[i].from, tside_i_stretch_end(travel, i)));
    return all;
}

/* --- where it stalls --- */

typedef struct short_of {
    const tside_i_lifting *lifting;
    double torque;
    int stretch;
} short_of;

static double beyond(double progress, const void *context)
{
    const short_of *s = context;
    tside_i_spot spot;
    tside_i_travel_spot(s->lifting->track->travel, s->stretch, progress, &spot);
    return tside_i_torque(s->lifting, &spot).drive - s->torque;
}

static double turns_at(const tside_travel *travel, int stretch, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(travel, stretch, progress, &spot);
    return tside_i_travel_angle(travel, &spot) / (2 * TSIDE_PI);
}

/*
 * The first place, up to the worst, where the drive must give as much as it can; the worst itself where it comes as
 * near as makes a stall, and no nearer.
 */
static double stall_turns(const tside_i_lifting *lifting, double torque, const tside_torque *worst)
{
    const tside_travel *travel = lifting->track->travel;
    double place = tside_i_travel_progress(travel, worst->turns);
    int last = tside_i_travel_stretch(travel, place);
    for (int i = 0; i <= last; i++) {
        short_of s = {lifting, torque, i};
        double from = travel->stretch[i].from, to = i < last ? travel->stretch[i + 1].from : place, at = from;
        for (int k = 0; k <= 64; k++) {
            double next = from + (to - from) * k / 64;
            if (beyond(next, &s) >= 0)
                return fmin(turns_at(travel, i, tside_i_rising_root(beyond, &s, at, next)), worst->turns);
            at = next;
        }
    }
    return worst->turns;
}

/* --- answers --- */

tside_status tside_i_drive_run(const tside_i_lifting *lifting, const tside_drive *drive, const tside_cable *cable,
                               const tside_torque *worst, tside_run *run, tside_fault *fault)
{
    const tside_travel *travel = lifting->track->travel;
    tside_position open;
    motor m;
    double length, most, peak = fmax(worst->drive, 0), angle;
    tside_i_travel_position(travel, &lifting->track->open, &open);
    length = cable->wire == TSIDE_NO_CABLE ? 0 : cable->length + cable->follow * open.opening;
    TRY(make_motor(drive, cable, length, &m, fault));
    most = m.most;
    *run = (tside_run){.stalls = peak > most * (1 - NEAR_STALL),
                       .stall_torque = most,
                       .current_peak_given = drive->stall_current_given,
                       .resistance = m.resistance,
                       .cable_length = length};
    if (run->current_peak_given) {
        run->current_peak = current_at(&m, fmin(peak, most));
        run->current_start = m.supply * m.stall / (m.rated + m.resistance * m.stall);
        run->drop_peak = m.resistance * run->current_peak;
        run->drop_start = m.resistance * run->current_start;
    }
    run->time_down_given = 1;
    angle = drive_angle(lifting, travel->stretches - 1, travel->end) - drive_angle(lifting, 0, travel->wraps_shut);
    run->time_down = fmax(angle, 0) / m.free;
    if (run->stalls) {
        run->stall_turns_given = 1;
        run->stall_turns = fmax(stall_turns(lifting, most, worst), 0); /* shut is 0 but for rounding */
    } else {
        sums up = run_up(lifting, &m);
        run->time_up_given = run->torque_rms_given = 1;
        run->time_up = up.time;
        run->torque_rms = up.time > 0 ? sqrt(up.square / up.time) : peak;
        run->energy_given = drive->stall_current_given && drive->rated_voltage_given;
        run->energy = run->energy_given ? up.energy : 0;
    }
    return TSIDE_OK;
}

tside_status tside_drive_run(const tside_travel *travel, const tside_load *load, const tside_hang *hang,
                             const tside_drive *drive, const tside_cable *cable, tside_run *run, tside_fault *fault)
{
    tside_i_track track;
    tside_i_lifting lifting = {&track, load, NULL, hang, 0};
    tside_torque worst;
    tside_run made;
    TRY(tside_i_check(&tside_i_drive_table, "drive", drive, fault));
    TRY(tside_i_check(&tside_i_cable_table, "cable", cable, fault));
    tside_i_track_make(travel, &track);
    TRY(tside_lift_worst(travel, load, hang, &worst, NULL, fault));
    TRY(tside_i_settle(&tside_i_drive_table, "drive", tside_i_drive_run(&lifting, drive, cable, &worst, &made, fault),
                       fault));
    return ANSWER(&tside_i_run_table, made, run, fault);
}
