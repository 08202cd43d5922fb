/* SPDX-License-Identifier: MIT */
/* The drive as the library's own files see it. */
#ifndef TUNNELSIDE_DRIVE_INTERNAL_H
#define TUNNELSIDE_DRIVE_INTERNAL_H

#include <tunnelside/drive.h>

/* Refuses a motor's supply voltage without a rated one, and the reverse. */
tside_status tside_i_drive_voltages(const tside_drive *drive, tside_fault *fault);
/* tside_drive_stall of a drive that passed its check and that; running: N m, from 0. */
double tside_i_drive_stall(const tside_drive *drive, double running);

#endif
