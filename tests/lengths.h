/* SPDX-License-Identifier: MIT */
/* Chance, reading and writing for the tests of lengths. */
#ifndef TUNNELSIDE_LENGTHS_H
#define TUNNELSIDE_LENGTHS_H

#include <check.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside/length.h>

#ifdef __SIZEOF_INT128__
__extension__ typedef __int128 wide;
#endif

#define COUNT(array) ((int)(sizeof(array) / sizeof *(array)))

/* --- helpers --- */

/*
 * A generator of our own, so that every machine sees the same texts: Steele, Lea and Flood's SplitMix64, from memory.
 */
static inline uint64_t next_random(uint64_t *state)
{
    uint64_t z = (*state += UINT64_C(0x9e3779b97f4a7c15));
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

static inline int below(uint64_t *state, int limit)
{
    return (int)(next_random(state) % (uint64_t)limit);
}

/* The same number and the same sign, so that NaN and -0 for 0 are seen. */
static inline void same(double got, double want, const char *text)
{
    if (!(got == want) || !signbit(got) != !signbit(want))
        ck_abort_msg("%s: %.17g, not %.17g", text, got, want);
}

static inline double read_as(const char *text, const char *unit)
{
    double value = NAN;
    tside_fault fault;
    char sentence[400];
    if (tside_quantity_read(text, unit, &value, &fault) != TSIDE_OK) {
        tside_fault_text(&fault, sentence, sizeof sentence);
        ck_abort_msg("\"%s\" in %s: %s", text, unit, sentence);
    }
    return value;
}

static inline const char *written(double metres, tside_style style, int part)
{
    static char text[64];
    size_t needed = 0;
    memset(text, '#', sizeof text);
    ck_assert_int_eq((int)tside_length_write(metres, style, part, text, sizeof text, &needed, NULL), TSIDE_OK);
    ck_assert_uint_eq(needed, strlen(text));
    return text;
}

/* Parts of an inch as a carpenter writes them, made with the C library's printing. */
static inline const char *carpenter(long parts, long part, int with_feet)
{
    static char text[64];
    const long size = labs(parts), feet = with_feet ? size / (12 * part) : 0;
    long inches = (size - feet * 12 * part) / part, over = size % part, under = part;
    int at = snprintf(text, sizeof text, parts < 0 ? "-" : "");
    while (over && over % 2 == 0 && under % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    if (feet)
        at += snprintf(text + at, sizeof text - (size_t)at, "%ld ft ", feet);
    if (!over)
        snprintf(text + at, sizeof text - (size_t)at, "%ld in", inches);
    else if (!inches && !feet)
        snprintf(text + at, sizeof text - (size_t)at, "%ld/%ld in", over, under);
    else
        snprintf(text + at, sizeof text - (size_t)at, "%ld %ld/%ld in", inches, over, under);
    return text;
}

/* digits 10^power, as the C library reads it: correctly rounded in glibc and musl. */
static inline double decimal(uint64_t digits, int power)
{
    char text[64];
    snprintf(text, sizeof text, "%llue%d", (unsigned long long)digits, power);
    return strtod(text, NULL);
}

/* --- correct rounding --- */

static inline void random_decimal(uint64_t *state, char *text)
{
    const int count = 1 + below(state, 40), point = below(state, count + 1);
    int i, at = 0;
    if (below(state, 2))
        text[at++] = '-';
    for (i = 0; i < count; i++) {
        if (i == point)
            text[at++] = '.';
        text[at++] = (char)('0' + below(state, 10));
    }
    if (below(state, 4) == 0)
        snprintf(text + at, 16, "e%d", below(state, 660) - 340);
    else
        snprintf(text + at, 16, "e%d", below(state, 12) - 6);
}

#endif
