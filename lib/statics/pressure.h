/* SPDX-License-Identifier: MIT */
/* Wind as a pressure, as the library's own files see it. */
#ifndef TUNNELSIDE_I_PRESSURE
#define TUNNELSIDE_I_PRESSURE

#include <tunnelside/pressure.h>

/* What tside_wind_pressure refuses beyond the table's bounds; its faults' fields begin in the wind. */
tside_status tside_i_wind_check(const tside_wind *wind, tside_fault *fault);
/* tside_wind_pressure of a wind that passed both. */
tside_pressure tside_i_wind_pressure(const tside_wind *wind);
/* Whether a rule has a speed. */
int tside_i_wind_has_speed(tside_wind_rule rule);

#endif
