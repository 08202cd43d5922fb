/* SPDX-License-Identifier: MIT */
/* How a gearmotor runs a side on its cable: how long, on what current, and whether it stalls. */
#ifndef TUNNELSIDE_RUN_H
#define TUNNELSIDE_RUN_H

#include <tunnelside/cable.h>
#include <tunnelside/drive.h>
#include <tunnelside/lift.h>

#ifdef __cplusplus
extern "C" {
#endif

/* A motor's run from shut to open, and down again. */
typedef struct tside_run {
    int stalls; /* 1: it does not reach open; times, energy and torques over the run
                            * are then not given */
    int stall_turns_given;
    double stall_turns;  /* turn, of the bar since shut, where it stalls */
    double stall_torque; /* N m, that it gives before it stalls, on its supply and cable */
    int time_up_given, time_down_given, torque_rms_given;
    double time_up;         /* s */
    double time_down;       /* s, at no-load speed */
    double torque_rms;      /* N m, root of the mean square over the time up */
    int current_peak_given; /* 1: both currents of the drive are known, and so are the other
                             * current and the drops */
    int energy_given;
    double current_peak;  /* A, greatest running, or where it stalls */
    double current_start; /* A, at the first moment; given with current_peak */
    double energy;        /* J, from the supply, up */
    double drop_peak;     /* V, lost in the cable at the peak; given with current_peak */
    double drop_start;    /* V, lost in the cable at the first moment; given with current_peak */
    double resistance;    /* ohm, of the cable there and back, with what follows the drive */
    double cable_length;  /* m, one way, with what follows the drive */
} tside_run;

/*
 * How a motor runs a side, its own lines with cable and supply solved together: speed w0 V/Vr -
 * (w0/Ts) T, current I0 + (Is - I0) T/Ts, V = Vs - R I at its terminals.
 *
 * Time up is the integral of the drive's own angle over its speed; where the bar pulls at the drive
 * instead of being lifted, it runs as without load; down it runs at no-load speed. Starting, it is
 * a resistance Vr/Is. Without both currents nothing is known of them, and no cable may be counted.
 * travel: made by tside_travel_make.
 * load: every field checked.
 * hang: optional, made by tside_hang_make, the drive's guide; NULL as in tside_lift_at.
 * drive: every field checked, with stall torque and no-load speed.
 * cable: every field checked.
 * run: receives the answer.
 * TSIDE_OUT_OF_BOUNDS: a field.
 * TSIDE_CONTRADICTS: a hand drive, no stall torque or no-load speed (drive.kind,
 * drive.stall_torque, drive.no_load_speed); a supply voltage without a rated one, or the reverse;
 * one current without the other, a stall current not above the no-load one; a cable without
 * currents; more power given than taken; a cable that leaves the motor no voltage at no load.
 * TSIDE_OUT_OF_REACH: as tside_lift_worst.
 * Limits: it is said to stall where the worst torque is within a millionth of what it gives,
 * or above: nearer, the time hangs on the last digits of the torque.
 * Accuracy: time_up, torque_rms and energy to 1e-8 of themselves; time_down to what turns may be off
 * by tside_guide_lean, currents and drops at the peak to what the worst torque may by
 * tside_lift_worst; cable_length, where it follows, to what the opening may by tside_travel_at; and
 * all to 1e-14, relative, besides; stall_turns to where the torque comes so near to stall_torque.
 * Source: linear lines of a permanent-magnet motor, any handbook; derivation.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_drive_run(
    const tside_travel *travel, const tside_load *load, const tside_hang *hang,
    const tside_drive *drive, const tside_cable *cable, tside_run *run, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
