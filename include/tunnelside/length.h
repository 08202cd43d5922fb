/* SPDX-License-Identifier: MIT */
/* Lengths and other quantities as text: in through a strict parser, out through a rounding formatter. Locale never matters. */
#ifndef TUNNELSIDE_LENGTH_H
#define TUNNELSIDE_LENGTH_H

#include <tunnelside/fault.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Reads a quantity with its unit, such as "5 ft 3 1/2 in", "63-1/2\"", "5' 3-1/2\"", "1.6 m", "38
 * mm", "12 lb/ft", "40 N m", "90 deg".
 *
 * A number is digits, with a point and an exponent if there are any ("1.613", ".5", "2.5e-3"), or a
 * fraction ("3/4"), or whole digits and a fraction below 1 ("3 1/2", "3-1/2"). It has at most 40
 * digits, and an exponent at most 400. Fractions need a denominator above 0. A minus sign stands
 * before the whole, a plus sign nowhere but in an exponent. Feet and inches may be joined ("5 ft 3
 * in", "5' 3\"", "5'-3\""), the feet whole and the inches below 12, other units not. Capitals
 * matter. Units, by the SI unit wanted:
 *   m: mm cm m km in " ft ' yd; m2: mm2 cm2 m2 in2 ft2 yd2; m3: mm3 cm3 m3 in3 ft3; m4: mm4 cm4 m4 in4;
 *   kg: g kg oz lb; kg/m: g/m kg/m lb/ft; kg/m2: g/m2 kg/m2 oz/yd2 oz/ft2 lb/ft2;
 *   kg/m3: kg/m3 g/cm3 lb/ft3; N: N kN lbf; N m: N m, Nm, kN m, lbf ft, ft lbf, lbf in, in lbf;
 *   N/m: N/m kN/m lbf/ft; Pa: Pa kPa MPa GPa N/mm2 psf psi ksi; rad: rad deg; rad/s: rad/s rpm;
 *   s: s min h; m/s: m/s km/h mph ft/min; V: V; A: A mA; W: W kW; J: J kJ Wh; K: K; ohm: ohm;
 *   turn: turn, turns or a bare number; 1: a bare number, or %.
 * text: at most 255 characters, the whole of it the quantity, blanks around it allowed.
 * unit: the SI unit wanted, one of those that the field tables use.
 * value: receives in the unit wanted, the number.
 * TSIDE_UNREADABLE: not a quantity, a bare number where the unit is not "1" or "turn", a unit of
 * another quantity, or a number above the greatest double; fault.index is the position, from 0, of
 * the first character that does not fit (of the whole number, where it is too great), and
 * fault.other lists the units that would do where the unit is at fault.
 * TSIDE_NOT_FOUND: the library knows no such wanted unit.
 * Accuracy: correctly rounded (halves to even) from the exact value of the text. For deg and rpm pi
 * enters with 33 digits: only a text whose exact value lies that near the middle of two doubles may
 * get the other one.
 * Source: international yard and pound agreement of 1959 (1 in = 0.0254 m, 1 lb = 0.45359237 kg);
 * BIPM SI brochure, 9th edition (g = 9.80665 m/s2).
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_quantity_read(const char *text, const char *unit, double *value, tside_fault *fault);

typedef enum tside_style {
    TSIDE_FEET_AND_INCHES, /* 5 ft 3 1/2 in */
    TSIDE_INCHES,          /* 63 1/2 in */
    TSIDE_MILLIMETRES,     /* 1613 mm */
    TSIDE_METRES           /* 1.613 m */
} tside_style;

/*
 * Writes a length for a tape measure: "5 ft 3 1/2 in", "3 ft 1/4 in", "1 ft 0 in", "-11 15/16 in",
 * "3/4 in", "0 in", "63 1/2 in", "1613.0 mm".
 *
 * Below one foot no feet are written; fractions stand in lowest terms; there is never a "-0". The
 * result always reads back through tside_quantity_read to within half the finest part, and the
 * rounding of the double that is read.
 * metres: m, from -1e6 to 1e6.
 * style: one of tside_style.
 * part: from 0 to 64: the denominator of the finest fraction of an inch (1, 2, 4, 8, 16, 32 or 64),
 * or for millimetres and metres the decimals (0 to 6), all of which are written.
 * buffer: receives the text.
 * size: from 0, how much fits with the closing zero.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: metres, no such style, or a part not listed.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Accuracy: rounded to the nearest, halves away from zero, as the exact value of the double stands
 * (1/32 in is no double: the one nearest to it lies to one side of the half of a sixteenth, and
 * goes there).
 * Source: international yard and pound agreement of 1959; the forms are common practice, no
 * published source.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_length_write(double metres, tside_style style, int part, char *buffer, size_t size, size_t *needed, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
