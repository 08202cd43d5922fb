/* SPDX-License-Identifier: MIT */
/* The cable as the library's own files see it: unchecked. */
#ifndef TUNNELSIDE_CABLE_INTERNAL_H
#define TUNNELSIDE_CABLE_INTERNAL_H

#include <tunnelside/cable.h>

/* The diameter of a wire gauge, in metres. */
double tside_i_gauge_diameter(int gauge);
/* Ohms, there and back, of a cable of some length one way. */
double tside_i_cable_resistance(const tside_cable *cable, double length);
/* Volts lost in a resistance; current: A, running, or starting without the cable. */
double tside_i_cable_drop(double resistance, double voltage, double current, tside_loading loading);
/* Gives a cable the i-th trade size of its series, smallest first; 0 where there is none. */
int tside_i_cable_size(tside_cable *cable, int i);

#endif
