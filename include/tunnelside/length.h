/* SPDX-License-Identifier: MIT */
/*
 * Lengths and other quantities as text: in through a strict parser, out through a rounding
 * formatter. Locale never matters.
 */
#ifndef TUNNELSIDE_LENGTH_H
#define TUNNELSIDE_LENGTH_H

#include <tunnelside/field.h>

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
 * in", "5' 3\"", "5'-3\"", "5' - 3\""), the feet whole and the inches below 12, other units not.
 * Capitals matter. Units, by the SI unit wanted:
 *   m: mm cm m km in " ft ' yd um; m2: mm2 cm2 m2 in2 ft2 yd2; m3: mm3 cm3 m3 in3 ft3; m4: mm4 cm4
 *   m4 in4; kg: g kg oz lb; kg/m: g/m kg/m lb/ft; kg/m2: g/m2 kg/m2 oz/yd2 oz/ft2 lb/ft2;
 *   kg/m3: kg/m3 g/cm3 lb/ft3; N: N kN lbf; N m: N m, Nm, kN m, lbf ft, ft lbf, lbf in, in lbf;
 *   N/m: N/m kN/m lbf/ft; Pa: Pa kPa MPa GPa N/mm2 psf psi ksi; rad: rad deg; rad/s: rad/s rpm;
 *   s: s min h; m/s: m/s km/h mph ft/min; m3/s: m3/s m3/h ft3/min; /s: /s /min /h; V: V; A: A mA;
 *   W: W kW; J: J kJ Wh; W/m2: W/m2; W/(m2 K): W/(m2 K); J/(kg K): J/(kg K); K: K; degC: degC;
 *   ohm: ohm; turn: turn, turns or a bare number; 1: a bare number, or %.
 *
 * Read for these words, alone and within a unit's name: inch and inches for in, foot and feet for
 * ft, lbs for lb, lb and lbs for lbf (a pound is a force where a force is wanted, "30 ft-lb"), in
 * UTF-8 the micro signs U+00B5 and U+03BC for the u of um, the prime U+2032 and the quotes U+2018,
 * U+2019 and U+201B for ', U+2033, U+201C and U+201D for ". For a blank within a name a hyphen may
 * stand. A mil, which may also mean mm, is read by tside_field_read of film's thickness alone.
 * text: at most 255 bytes, the whole of it the quantity, blanks around it allowed.
 * unit: the SI unit wanted, one of those that the field tables use.
 * value: receives in the unit wanted, the number.
 * TSIDE_UNREADABLE: not a quantity, a bare number where the unit is not "1" or "turn", a unit of
 * another quantity, or a number above the greatest double; fault.index is the position, from 0 and
 * in characters of UTF-8, of the first that does not fit (of the whole number, where it is too
 * great), and fault.other lists the units that would do where the unit is at fault.
 * TSIDE_NOT_FOUND: the library knows no such wanted unit.
 * Accuracy: correctly rounded (halves to even) from the exact value of the text. For deg and rpm pi
 * enters with 33 digits: only a text whose exact value lies that near the middle of two doubles may
 * get the other one.
 * Source: international yard and pound agreement of 1959 (1 in = 0.0254 m, 1 lb = 0.45359237 kg);
 * BIPM SI brochure, 9th edition (g = 9.80665 m/s2).
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_quantity_read(const char *text, const char *unit,
                                                           double *value, tside_fault *fault);

/*
 * Reads what is typed for a field: a number as tside_quantity_read does in the field's unit, film's
 * thickness in mil or mils (1/1000 in) too; a choice by its name, in capitals or not.
 * field: not checked, a row of a table.
 * text: at most 255 bytes for a number, the whole of it the quantity or the name.
 * value: receives in the unit wanted, the field's, the number, its bounds not checked; or which
 * choice, from 0.
 * TSIDE_UNREADABLE: as of tside_quantity_read, the field named.
 * TSIDE_NOT_FOUND: no such choice, fault.other then listing those that exist; or the field is a
 * count, a group or a list.
 * Accuracy: as tside_quantity_read.
 * Source: as tside_quantity_read; a mil of film is 1/1000 in by common practice, no published
 * source.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_field_read(const tside_field *field, const char *text,
                                                        double *value, tside_fault *fault);

typedef enum tside_style {
    TSIDE_FEET_AND_INCHES, /* 5 ft 3 1/2 in */
    TSIDE_INCHES,          /* 63 1/2 in */
    TSIDE_MILLIMETRES,     /* 1613 mm */
    TSIDE_METRES           /* 1.613 m */
} tside_style;

/*
 * Writes a length for a tape measure: "5 ft 3 1/2 in", "3 ft 0 1/4 in", "1 ft 0 in", "-11 15/16 in",
 * "3/4 in", "0 in", "63 1/2 in", "1613.0 mm".
 *
 * Below one foot no feet are written, and from there on whole inches always; fractions stand in
 * lowest terms; there is never a "-0". The result always reads back through tside_quantity_read to
 * within half the finest part, and the rounding of the double that is read.
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
TSIDE_API TSIDE_NODISCARD tside_status tside_length_write(double metres, tside_style style,
                                                          int part, char *buffer, size_t size,
                                                          size_t *needed, tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
