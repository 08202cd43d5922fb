/* SPDX-License-Identifier: MIT */
/* The drive: what turns the bar, and what rides on the guide at either end. */
#ifndef TUNNELSIDE_DRIVE_H
#define TUNNELSIDE_DRIVE_H

#include <tunnelside/field.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum tside_drive_kind { TSIDE_MOTOR, TSIDE_HAND } tside_drive_kind;

typedef enum tside_drive_place {
    TSIDE_ONE_END,   /* one drive, on one end of the bar */
    TSIDE_BOTH_ENDS, /* refused: not modelled */
    TSIDE_MID_BAR    /* refused: not modelled */
} tside_drive_place;

/* What keeps the bar where it stops. */
typedef enum tside_holds {
    TSIDE_HOLDS_UNKNOWN,
    TSIDE_HOLDS_BY_ITSELF, /* a self-locking gear, or a brake */
    TSIDE_HOLDS_NOT        /* it turns back under load */
} tside_holds;

typedef struct tside_drive {
    tside_drive_kind kind;
    tside_drive_place place;
    double mass;          /* kg */
    double mass_offset;   /* m, centre of mass outboard of the bar's axis */
    double collar_offset; /* m, guide's line outboard of the bar's axis */
    double height;        /* m, the drive's top above the bar's axis */
    double half_length;   /* m, half its length along the bar */
    double along;         /* m, guide's line beyond its centre, along the house */
    double clearance;     /* m, least distance between it and the curtain's edge */
    int rated_torque_given;
    double rated_torque;  /* N m */
    double safety_factor; /* 1, on the worst torque */
    int stall_torque_given;
    double stall_torque; /* N m, at the rated voltage */
    int rated_voltage_given;
    double rated_voltage; /* V */
    int supply_voltage_given;
    double supply_voltage; /* V */
    int no_load_speed_given;
    double no_load_speed; /* rad/s, at the rated voltage */
    int no_load_current_given;
    double no_load_current; /* A, at the rated voltage */
    int stall_current_given;
    double stall_current; /* A, at the rated voltage */
    int rated_run_given;
    double rated_run; /* s, that it may run at a time */
    tside_holds holds;
    int limit_turns_given;
    double limit_turns; /* turn, the most that its limit switch or stop lets it run */
} tside_drive;

/* What rides on a guide: the drive, or the collar of the free end. */
typedef struct tside_collar {
    double offset;      /* m, guide's line outboard of the bar's axis */
    double height;      /* m, its top above the bar's axis */
    double mass;        /* kg */
    double mass_offset; /* m, centre of mass outboard of the bar's axis */
    double half_length; /* m, half its length along the bar */
    double along;       /* m, guide's line beyond its centre, along the house */
    double clearance;   /* m, least distance between it and the curtain's edge */
} tside_collar;

/*
 * The drive as what rides on its guide.
 * drive: not checked.
 * Returns its offset, height, masses and places along the bar as a collar's.
 * Accuracy: exact, the same numbers.
 * Source: derivation, the same values by other names.
 */
TSIDE_API tside_collar tside_drive_collar(const tside_drive *drive);

/*
 * The greatest torque the drive can put into bar and guide: a motor's stall torque at its supply
 * voltage, Ts Vs/Vr; where no stall torque is given, 2.5 times the rated one, and where that is not
 * given either, of a motor rated for just what it needs, the worst running torque times the safety
 * factor; by hand 2.5 times the worst running torque.
 * drive: every field checked.
 * running: N m, from 0, the worst running torque, used by hand and of a motor without ratings.
 * torque: receives N m.
 * TSIDE_OUT_OF_BOUNDS: a field, or running.
 * TSIDE_CONTRADICTS: a supply voltage without a rated one, or the reverse.
 * Accuracy: to 5e-16, relative.
 * Source: derivation, a motor's torque is as its current; both factors are this library's choice,
 * no published source.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_drive_stall(const tside_drive *drive, double running,
                                                         double *torque, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
