/* SPDX-License-Identifier: MIT */
/*
 * The drive as it is bought, and what it gives at stall on its supply. Source: derivation; usual values are common
 * practice, no published source.
 */
#include "parts/drive.h"

#include "base/field.h"

static const char *const kinds[] = {"motor", "hand"};
static const char *const holds[] = {"unknown", "by_itself", "not"};
static const char *const places[] = {"one_end", "both_ends", "mid_bar"};

#define MOTOR ONLY(TSIDE_MOTOR)
#define HAND ONLY(TSIDE_HAND)

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_drive, kind, kinds, TSIDE_MOTOR, "a gearmotor, or a hand crank's gearbox")},
    {CHOICE(tside_drive, place, places, TSIDE_ONE_END, "where on the bar it sits")},
    {NUMBER(tside_drive, mass, "kg", FROM(0), TO(200), 8, PRACTICE, "mass of the drive"), MEASURED(0.5), APPLIES(tside_drive, kind, MOTOR), UNUSUAL_OUTSIDE(4, 12)},
    {NUMBER(tside_drive, mass, "kg", FROM(0), TO(200), 3, PRACTICE, "mass of the drive"), MEASURED(0.5), APPLIES(tside_drive, kind, HAND), UNUSUAL_OUTSIDE(1.5, 5)},
    {NUMBER(tside_drive, mass_offset, "m", FROM(0), TO(1), 3 * IN, PRACTICE, "its centre of mass outboard of the bar's axis"), MEASURED(0.5 * IN), UNUSUAL_OUTSIDE(2 * IN, 4 * IN)},
    {NUMBER(tside_drive, collar_offset, "m", FROM(0), TO(1), 4 * IN, PRACTICE, "guide's line outboard of the bar's axis"), MEASURED(0.125 * IN), APPLIES(tside_drive, kind, MOTOR), UNUSUAL_OUTSIDE(2 * IN, 5 * IN)},
    {NUMBER(tside_drive, collar_offset, "m", FROM(0), TO(1), 3 * IN, PRACTICE, "guide's line outboard of the bar's axis"), MEASURED(0.125 * IN), APPLIES(tside_drive, kind, HAND), UNUSUAL_OUTSIDE(2 * IN, 5 * IN)},
    {NUMBER(tside_drive, height, "m", FROM(0), TO(2), 4 * IN, PRACTICE, "the drive's top above the bar's axis"), MEASURED(0.25 * IN), UNUSUAL_OUTSIDE(3 * IN, 8 * IN)},
    {NUMBER(tside_drive, half_length, "m", FROM(0), TO(1), 3 * IN, OURS, "half its length along the bar"), MEASURED(0.25 * IN)},
    {NUMBER(tside_drive, along, "m", FROM(-1), TO(1), 0, OURS, "guide's line beyond the drive's centre, along the house")},
    {NUMBER(tside_drive, clearance, "m", FROM(0), TO(1), 0.5 * IN, OURS, "least distance between drive and the curtain's edge")},
    {OPTIONAL(tside_drive, rated_torque, "N m", FROM(0.01), TO(1e5), "torque that it may give")},
    {NUMBER(tside_drive, safety_factor, "1", FROM(1), TO(10), 1.5, PRACTICE, "safety factor on the worst torque"), APPLIES(tside_drive, kind, MOTOR), UNUSUAL_OUTSIDE(1.25, 2)},
    {NUMBER(tside_drive, safety_factor, "1", FROM(1), TO(10), 1.25, PRACTICE, "safety factor on the worst torque"), APPLIES(tside_drive, kind, HAND), UNUSUAL_OUTSIDE(1.25, 2)},
    {OPTIONAL(tside_drive, stall_torque, "N m", FROM(0.01), TO(1e6), "torque at which it stalls, at its rated voltage"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, rated_voltage, "V", FROM(0.1), TO(1000), "voltage to which its ratings refer"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, supply_voltage, "V", FROM(0.1), TO(1000), "voltage of the supply"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, no_load_speed, "rad/s", FROM(1e-6), TO(1000), "speed without load, at its rated voltage"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, no_load_current, "A", FROM(0), TO(1000), "current without load, at its rated voltage"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, stall_current, "A", FROM(0.001), TO(10000), "current at stall, at its rated voltage"), APPLIES(tside_drive, kind, MOTOR)},
    {OPTIONAL(tside_drive, rated_run, "s", ABOVE(0), TO(1e6), "how long it may run at a time"), APPLIES(tside_drive, kind, MOTOR)},
    {CHOICE(tside_drive, holds, holds, TSIDE_HOLDS_UNKNOWN, "whether it holds the bar where it stops")},
    {OPTIONAL(tside_drive, limit_turns, "turn", ABOVE(0), TO(1000), "the most turns that its limit switch or stop allows")},
};
/* clang-format on */
TABLE(tside_i_drive_table, rows);

/* clang-format off */
static const tside_field collar_rows[] = {
    {NUMBER(tside_collar, offset, "m", FROM(0), TO(1), 3 * IN, PRACTICE, "guide's line outboard of the bar's axis"), MEASURED(0.125 * IN), UNUSUAL_OUTSIDE(2 * IN, 5 * IN)},
    {NUMBER(tside_collar, height, "m", FROM(0), TO(2), 1 * IN, OURS, "the collar's top above the bar's axis")},
    {NUMBER(tside_collar, mass, "kg", FROM(0), TO(200), 0.5, OURS, "mass of the collar"), MEASURED(0.2)},
    {NUMBER(tside_collar, mass_offset, "m", FROM(0), TO(1), 1.5 * IN, OURS, "its centre of mass outboard of the bar's axis"), MEASURED(0.5 * IN)},
    {NUMBER(tside_collar, half_length, "m", FROM(0), TO(1), 1 * IN, OURS, "half its length along the bar"), MEASURED(0.25 * IN)},
    {NUMBER(tside_collar, along, "m", FROM(-1), TO(1), 0, OURS, "guide's line beyond the collar's centre, along the house")},
    {NUMBER(tside_collar, clearance, "m", FROM(0), TO(1), 0.5 * IN, OURS, "least distance between collar and the curtain's edge")},
};
/* clang-format on */
TABLE(tside_i_collar_table, collar_rows);

/*
 * Stall over rated torque where only the rated one is known, and jerk over steady effort by hand: this library's
 * choice, no published source.
 */
#define STALL_FACTOR 2.5

tside_collar tside_drive_collar(const tside_drive *drive)
{
    return (tside_collar){drive->collar_offset, drive->height, drive->mass,     drive->mass_offset,
                          drive->half_length,   drive->along,  drive->clearance};
}

tside_status tside_i_drive_voltages(const tside_drive *drive, tside_fault *fault)
{
    if (drive->kind != TSIDE_HAND && !drive->rated_voltage_given != !drive->supply_voltage_given)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS,
                              drive->rated_voltage_given ? "drive.rated_voltage" : "drive.supply_voltage",
                              drive->rated_voltage_given ? "drive.supply_voltage" : "drive.rated_voltage",
                              "give both voltages or neither");
    return TSIDE_OK;
}

double tside_i_drive_stall(const tside_drive *drive, double running)
{
    double stall, share = 1;
    if (drive->kind == TSIDE_HAND)
        return STALL_FACTOR * running;
    if (drive->rated_voltage_given)
        share = drive->supply_voltage / drive->rated_voltage;
    stall = drive->stall_torque_given
                ? drive->stall_torque
                : STALL_FACTOR * (drive->rated_torque_given ? drive->rated_torque : running * drive->safety_factor);
    return stall * share;
}

tside_status tside_drive_stall(const tside_drive *drive, double running, double *torque, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_drive_table, "drive", drive, fault));
    TRY(tside_i_argument(fault, "running", "N m", running, 0, 0));
    TRY(tside_i_drive_voltages(drive, fault));
    return ANSWER_NUMBER(tside_i_drive_stall(drive, running), torque, fault);
}
