/* SPDX-License-Identifier: MIT */
/* The drive as the library's own files see it. */
#ifndef TUNNELSIDE_DRIVE_INTERNAL_H
#define TUNNELSIDE_DRIVE_INTERNAL_H

#include <tunnelside/drive.h>

/* tside_drive_stall of a drive that passed its check; running: N m, from 0. */
tside_status tside_i_drive_stall(const tside_drive *drive, double running, double *torque, tside_fault *fault);
/* Refuses a supply voltage without a rated one, and the reverse. */
tside_status tside_i_drive_voltages(const tside_drive *drive, tside_fault *fault);

#endif
