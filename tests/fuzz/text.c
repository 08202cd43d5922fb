/* SPDX-License-Identifier: MIT */
/* Quantities: a byte for the unit, then what is typed; and a number, written as a length. */
#include <math.h>
#include <string.h>

#include "fuzz.h"

static const char *const units[] = {"m",        "m2",       "m3",  "m4",  "kg",  "kg/m", "kg/m2", "kg/m3",
                                    "N",        "Pa",       "N m", "rad", "s",   "m/s",  "m3/s",  "rad/s",
                                    "/s",       "V",        "A",   "J",   "W",   "K",    "degC",  "W/m2",
                                    "W/(m2 K)", "J/(kg K)", "ohm", "1",   "N/m", "turn", "mm/s"};

static void read_quantity(const char *words, const char *unit)
{
    double value = -7, again = -7;
    tside_fault fault, other;
    tside_status status = tside_quantity_read(words, unit, &value, &fault);
    HOLDS(tside_quantity_read(words, unit, &again, &other) == status && !memcmp(&value, &again, sizeof value),
          "read twice, and otherwise");
    if (status == TSIDE_OK) {
        HOLDS(isfinite(value), "%s: no number", words);
        return;
    }
    HOLDS(value == -7, "%s: refused, and written", words);
    HOLDS(status == TSIDE_UNREADABLE || status == TSIDE_NOT_FOUND, "%s: status %d", words, (int)status);
    fuzz_fault(&fault, status);
    HOLDS(fault.index >= -1 && fault.index <= (int)strlen(words), "%s: position %d", words, fault.index);
}

static void read_field(const char *words, tside_kind kind)
{
    int count;
    const tside_field *rows = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        double value = -7;
        tside_fault fault;
        tside_status status = tside_field_read(rows + i, words, &value, &fault);
        if (status != TSIDE_OK) {
            HOLDS(value == -7, "%s: refused, and written", words);
            fuzz_fault(&fault, status);
        } else if (rows[i].type == TSIDE_CHOICE)
            HOLDS(value >= 0 && value < rows[i].choice_count && value == floor(value), "%s: no choice", words);
        else
            HOLDS(isfinite(value), "%s: no number", words);
    }
}

/* What was written says the length to half of its part, and is read again. */
static void write_length(double metres, tside_style style, int part)
{
    char buffer[64], small[4];
    size_t needed = 0, asked = 0;
    tside_fault fault;
    double back, step = style == TSIDE_METRES        ? pow(10, -part)
                        : style == TSIDE_MILLIMETRES ? pow(10, -part - 3)
                                                     : 0.0254 / part;
    tside_status status = tside_length_write(metres, style, part, buffer, sizeof buffer, &needed, &fault);
    if (status != TSIDE_OK) {
        if (status != TSIDE_TOO_SMALL)
            fuzz_fault(&fault, status);
        return;
    }
    HOLDS(strlen(buffer) < sizeof buffer && needed == strlen(buffer), "%g: no end", metres);
    fuzz_printable(buffer, "a length");
    HOLDS(tside_quantity_read(buffer, "m", &back, &fault) == TSIDE_OK, "%s is not read again", buffer);
    HOLDS(fabs(back - metres) <= step * 0.5000001 + 1e-12 * fabs(metres), "%.17g m is told as %s", metres, buffer);
    memset(small, 1, sizeof small);
    if (strlen(buffer) >= sizeof small)
        HOLDS(tside_length_write(metres, style, part, small, sizeof small, &asked, &fault) == TSIDE_TOO_SMALL &&
                  asked == needed && small[3] == 1,
              "%s in little room", buffer);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    feed f = {data, data + size};
    unsigned which = feed_byte(&f);
    char words[400];
    size_t length = (size_t)(f.end - f.at) < sizeof words - 1 ? (size_t)(f.end - f.at) : sizeof words - 1;
    if (which >= 128) {
        static const int parts[] = {1, 2, 4, 8, 16, 32, 64, 3};
        double scale = pow(10, feed_byte(&f) / 20.0 - 6),
               metres = which & 64 ? feed_number(&f) : feed_share(&f) * scale;
        write_length(metres, (tside_style)(which & 3), parts[which >> 2 & 7]);
        return 0;
    }
    memcpy(words, f.at, length);
    words[length] = 0;
    if (which == 127)
        read_field(words, TSIDE_KIND_CURTAIN);
    else
        read_quantity(words, units[which % (sizeof units / sizeof *units)]);
    return 0;
}
