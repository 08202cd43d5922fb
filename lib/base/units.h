/* SPDX-License-Identifier: MIT */
/* Constants, and units that people measure in, in SI. */
#ifndef TUNNELSIDE_I_UNITS
#define TUNNELSIDE_I_UNITS

#define TSIDE_PI 3.14159265358979323846
#define TSIDE_GRAVITY 9.80665 /* m/s2, standard: ISO 80000-3 */

#define IN 0.0254           /* m */
#define MM 0.001            /* m */
#define FT 0.3048           /* m */
#define LBF 4.4482216152605 /* N, by the pound of 1959 and standard gravity */
#define DEG (TSIDE_PI / 180)
#define KSI \
    (4448.2216152605 / \
     (0.0254 * 0.0254)) /* Pa: a kip is 4448.2216152605 N, by the pound of 1959 and standard gravity */
#define MPA 1e6         /* Pa */

/*
 * A length or a number of turns that a caller got from the library and hands back is not refused for its last digits.
 */
#define SLACK 1e-9

/* m: what is longer by no more still fits. A sum of decimal lengths differs by its last digits from the one it stands
 * for. */
#define FITS 1e-9

#endif
