/* SPDX-License-Identifier: MIT */
/* Exact numbers and plain text: what reading, rounding and writing rest on. No locale, no allocation. */
#ifndef TUNNELSIDE_NUMBER_H
#define TUNNELSIDE_NUMBER_H

#include <stddef.h>
#include <stdint.h>

/*
 * A whole number below 2^2048. The largest that arises has fewer than 1750 bits: 40 digits of feet times 12 over
 * 10^440 of inches times a 64-bit unit factor are 1664, and rounding to a double lines them up and adds 54.
 */
enum { TSIDE_I_LIMBS = 64 };
typedef struct tside_i_big {
    uint32_t limb[TSIDE_I_LIMBS]; /* lowest first; those from count on hold nothing */
    int count;                    /* limbs in use; the highest of them is not 0 */
} tside_i_big;

/* over/under, exactly; under is above 0. There is no sign. */
typedef struct tside_i_exact {
    tside_i_big over, under;
} tside_i_exact;

/*
 * --- reading: NULL, with *at moved past what was read, or why not, with *at at the first character that does not fit
 * ---
 */

enum { TSIDE_I_DIGITS = 40, TSIDE_I_EXPONENT = 400 }; /* most digits of one number, and its greatest exponent */

/* Digits alone: "63". */
const char *tside_i_read_whole(const char **at, tside_i_exact *number);
/*
 * Digits, with a point and an exponent if there are any: "1.613", ".5", "2.5e-3"; whole: receives 1 where it is digits
 * alone.
 */
const char *tside_i_read_decimal(const char **at, tside_i_exact *number, int *whole);

/* --- reckoning --- */

void tside_i_exact_from(tside_i_exact *number, double value); /* value: finite, not below 0 */
void tside_i_exact_scale(tside_i_exact *number, uint64_t over, uint64_t under);
void tside_i_exact_power(tside_i_exact *number, int power); /* times 10^power */
void tside_i_exact_add(tside_i_exact *number, const tside_i_exact *more);
int tside_i_exact_below(const tside_i_exact *number, uint32_t limit);
/* The nearest whole number, halves up; number: below 2^63. */
uint64_t tside_i_exact_nearest(const tside_i_exact *number);
/* The nearest double, halves to even. Returns 0, and writes nothing, where that is above the greatest double. */
int tside_i_exact_double(const tside_i_exact *number, double *value);

/* --- writing, as snprintf does: what does not fit is counted and not written --- */

typedef struct tside_i_text {
    char *to;
    size_t size;   /* with room for the closing zero, which is always there unless size is 0 */
    size_t length; /* of the whole text, whether it fits or not */
} tside_i_text;

tside_i_text tside_i_empty(char *to, size_t size);
void tside_i_put(tside_i_text *text, const char *more);
void tside_i_put_character(tside_i_text *text, char more);
void tside_i_put_whole(tside_i_text *text, uint64_t number);
/* digits / 10^decimals, all decimals written; decimals: 0 to 18. */
void tside_i_put_decimal(tside_i_text *text, uint64_t digits, int decimals);
/* Up to six significant digits, halves away from zero: "-0.02", "1.5e+07", "12", "nan", "-inf"; never "-0". */
void tside_i_put_number(tside_i_text *text, double value);

#endif
