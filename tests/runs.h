/* SPDX-License-Identifier: MIT */
/* A motor and its cables. */
#ifndef TUNNELSIDE_RUNS_H
#define TUNNELSIDE_RUNS_H

#include <tunnelside.h>

#include "sides.h"

/* Invented: it lifts every side here. */
static inline tside_drive strong_motor(void)
{
    tside_drive drive;
    tside_usual(TSIDE_KIND_DRIVE, &drive);
    drive.rated_torque_given = 1;
    drive.rated_torque = 400;
    drive.stall_torque_given = drive.rated_voltage_given = drive.supply_voltage_given = drive.no_load_speed_given =
        drive.no_load_current_given = drive.stall_current_given = 1;
    drive.stall_torque = 4000;
    drive.rated_voltage = 24;
    drive.supply_voltage = 22;
    drive.no_load_speed = 0.5;
    drive.no_load_current = 1.5;
    drive.stall_current = 240;
    return drive;
}

static inline tside_cable no_cable(void)
{
    tside_cable cable;
    tside_usual(TSIDE_KIND_CABLE, &cable);
    return cable;
}

static inline tside_cable copper(double area, double length)
{
    tside_cable cable = no_cable();
    cable.wire = TSIDE_AREA;
    cable.area = area;
    cable.length = length;
    return cable;
}

#endif
