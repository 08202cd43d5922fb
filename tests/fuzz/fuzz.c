/* SPDX-License-Identifier: MIT */
/* What the makers of calls share. */
#include "fuzz.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void fuzz_failed(const char *file, int line, const char *format, ...)
{
    va_list arguments;
    fprintf(stderr, "%s:%d: ", file, line);
    va_start(arguments, format);
    vfprintf(stderr, format, arguments);
    va_end(arguments);
    fputc('\n', stderr);
    abort();
}

unsigned feed_byte(feed *f)
{
    return f->at < f->end ? *f->at++ : 0;
}

double feed_share(feed *f)
{
    unsigned high = feed_byte(f);
    return (high * 256 + feed_byte(f)) / 65535.0;
}

double feed_number(feed *f)
{
    uint64_t bits = 0;
    double number;
    for (int i = 0; i < 8; i++)
        bits = bits << 8 | feed_byte(f);
    memcpy(&number, &bits, sizeof number);
    return number;
}

void fuzz_printable(const char *words, const char *what)
{
    for (const char *at = words; *at; at++)
        HOLDS((unsigned char)*at >= ' ' && *at != 0x7f, "%s has the character %d", what, *at);
}

void fuzz_fault(const tside_fault *fault, tside_status status)
{
    char sentence[1024], again[8];
    size_t length = tside_fault_text(fault, sentence, sizeof sentence);
    HOLDS(fault->status == status, "status %d, and the fault's %d", (int)status, (int)fault->status);
    HOLDS(isfinite(fault->value) && isfinite(fault->bound) && isfinite(fault->gap), "%s: not finite", fault->field);
    HOLDS(length < sizeof sentence && strlen(sentence) == length, "%s: a sentence without end", fault->field);
    fuzz_printable(sentence, fault->field);
    HOLDS(tside_fault_text(fault, again, sizeof again) == length && strlen(again) < sizeof again,
          "%s: a sentence in little room", fault->field);
}
