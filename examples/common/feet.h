/* SPDX-License-Identifier: MIT */
#ifndef COMMON_FEET_H
#define COMMON_FEET_H

/* Whether a text is a length in inches, feet or yards. */
int is_in_feet(const char *words);

/* Whether it is a mass, a force or a torque in pounds. */
int is_in_pounds(const char *words);

#endif
