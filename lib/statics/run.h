/* SPDX-License-Identifier: MIT */
/* Runs as the library's own files see them. */
#ifndef TUNNELSIDE_RUN_INTERNAL_H
#define TUNNELSIDE_RUN_INTERNAL_H

#include <tunnelside/run.h>

#include "statics/lift.h"

/* 1 if enough is known of a drive to say how it runs. */
int tside_i_drive_runs(const tside_drive *drive);
/*
 * tside_drive_run for structures that have been checked against their tables; worst: the worst torque along the travel.
 */
tside_status tside_i_drive_run(const tside_i_lifting *lifting, const tside_drive *drive, const tside_cable *cable,
                               const tside_torque *worst, tside_run *run, tside_fault *fault);

#endif
