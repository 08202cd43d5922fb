/* SPDX-License-Identifier: MIT */
/*
 * The mark that a piece carries on every paper and on itself: the letters of its side, D or F for
 * what belongs to the drive's or the free end, the letter of its kind, a number: "ADX1" is the
 * extender at the drive's end of side A, "AB3" its bar's third stick from the drive.
 *
 * A mark has at most five signs, none of them I, O or Q, and reads one way only. Mark an extender
 * at its top end, on the face away from the wall.
 */
#ifndef TUNNELSIDE_MARK_H
#define TUNNELSIDE_MARK_H

#include <tunnelside/takeoff.h>

#ifdef __cplusplus
extern "C" {
#endif

enum { TSIDE_MARK_SIZE = 6 };     /* of a buffer for any mark, its closing zero too */
enum { TSIDE_MARK_PLACES = 506 }; /* no job has letters for more sides */

/*
 * The letters of a side by its place in the job: A to Z without I, O and Q, then two, the second
 * neither D nor F: AA, AB, AC, AE ...
 * place: from 1 to TSIDE_MARK_PLACES.
 * buffer: receives the letters.
 * size: from 0, how much fits with the closing zero.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: place.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Source: this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_mark_letters(int place, char *buffer, size_t size,
                                                          size_t *needed, tside_fault *fault);

/*
 * The place of a side whose letters are given, as of one that names its own.
 * letters: one or two, as tside_mark_letters gives them, in capitals or not.
 * place: receives from 1 to TSIDE_MARK_PLACES.
 * TSIDE_UNREADABLE: not such letters; fault.index is the position, from 0, of the first that does
 * not fit.
 * Source: this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_mark_place(const char *letters, int *place,
                                                        tside_fault *fault);

/*
 * The mark of a piece. Kinds have these letters: curtain C, flap L, bar B, guide G, chain N, eye
 * bolt E, extender X, channel H, rope R, cord K. What else there is is counted, not marked.
 * place: from 1 to TSIDE_MARK_PLACES, of the side.
 * code: one of tside_item_code.
 * at: one of tside_item_at, where such pieces belong.
 * number: from 1, of the piece among those of its kind there, to what five signs have room for (999,
 * with a digit less for a side's second letter and another for an end).
 * buffer: receives the mark.
 * size: from 0, how much fits with the closing zero; TSIDE_MARK_SIZE always serves.
 * needed: optional, receives the length of the text without its closing zero, also when it does not
 * fit; may be NULL.
 * TSIDE_OUT_OF_BOUNDS: place, code, at or number.
 * TSIDE_CONTRADICTS: such pieces belong to the ends of a side, or to none of them.
 * TSIDE_NOT_FOUND: such pieces carry no mark.
 * TSIDE_TOO_SMALL: size not above needed; nothing is written.
 * Source: this library's choice.
 */
TSIDE_API TSIDE_NODISCARD tside_status tside_mark_piece(int place, tside_item_code code,
                                                        tside_item_at at, int number, char *buffer,
                                                        size_t size, size_t *needed,
                                                        tside_fault *fault);

#ifdef __cplusplus
}
#endif
#endif
