/* SPDX-License-Identifier: MIT */
/*
 * Any bytes at all, made into a call, and what must hold of it whatever they are. Each file beside this one is one such
 * maker; libFuzzer drives it (make fuzz), or replay.c over the corpus in tests/data/fuzz and changes of it.
 */
#ifndef TUNNELSIDE_FUZZ_H
#define TUNNELSIDE_FUZZ_H

#include <stddef.h>
#include <stdint.h>

#include <tunnelside.h>

/* One input, of any bytes; returns 0. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Ends the program where something does not hold, and says what. */
#define HOLDS(condition, ...) ((condition) ? (void)0 : fuzz_failed(__FILE__, __LINE__, __VA_ARGS__))
void fuzz_failed(const char *file, int line, const char *format, ...)
#if defined __GNUC__
    __attribute__((format(printf, 3, 4), noreturn))
#endif
    ;

/* The bytes, taken one after the other; noughts after the last. */
typedef struct feed {
    const uint8_t *at, *end;
} feed;

unsigned feed_byte(feed *f);
double feed_share(feed *f);  /* from 0 to 1, both ends too */
double feed_number(feed *f); /* any bits: not finite too */

/* A fault that can be shown: numbers, a sentence that ends, in one line, of printable characters. */
void fuzz_fault(const tside_fault *fault, tside_status status);
/* Text of printable characters, a line. */
void fuzz_printable(const char *words, const char *what);

#endif
