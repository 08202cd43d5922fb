/* SPDX-License-Identifier: MIT */
/*
 * Units by name, their other spellings, and what they are of their SI unit. Source: the yard and pound agreement of
 * 1959 for the customary units; derivation.
 */
#include <string.h>

#include <tunnelside/fault.h>

#include "base/number.h"
#include "base/unit.h"

/* --- units: 1 name = over/under si, exactly --- */

#define E3 UINT64_C(1000)
#define E5 UINT64_C(100000)
#define E6 UINT64_C(1000000)
#define E8 (E4 * E4)
#define E9 (E5 * E4)
#define E12 (E6 * E6)
#define E13 (E8 * E5)
#define E16 (E8 * E8)
#define E17 (E12 * E5)
#define FOOT UINT64_C(3048)      /* E-4 m */
#define YARD UINT64_C(9144)      /* E-4 m */
#define POUND UINT64_C(45359237) /* E-8 kg */
#define FORCE (POUND * 980665)   /* E-13 N: the weight of a pound */
/* pi, a convergent of its continued fraction: 1.1e-34 of it too small or too great */
#define PI_OVER UINT64_C(66627445592888887)
#define PI_UNDER UINT64_C(21208174623389167)

static const tside_i_measure units[] = {
    {"", "1", 1, 1, TSIDE_I_ALONE},
    {"%", "1", 1, 100, TSIDE_I_ALONE},
    {"", "turn", 1, 1, TSIDE_I_ALONE},
    {"turn", "turn", 1, 1, TSIDE_I_ALONE},
    {"turns", "turn", 1, 1, TSIDE_I_ALONE},
    {"mm", "m", 1, E3, TSIDE_I_ALONE},
    {"cm", "m", 1, 100, TSIDE_I_ALONE},
    {"m", "m", 1, 1, TSIDE_I_ALONE},
    {"km", "m", E3, 1, TSIDE_I_ALONE},
    {"in", "m", INCH, E4, TSIDE_I_INCHES},
    {"\"", "m", INCH, E4, TSIDE_I_INCHES},
    {"ft", "m", FOOT, E4, TSIDE_I_FEET},
    {"'", "m", FOOT, E4, TSIDE_I_FEET},
    {"yd", "m", YARD, E4, TSIDE_I_ALONE},
    {"um", "m", 1, E6, TSIDE_I_ALONE},
    {"mil", "m", INCH, E4 *E3, TSIDE_I_OF_FILM},
    {"mm2", "m2", 1, E6, TSIDE_I_ALONE},
    {"cm2", "m2", 1, E4, TSIDE_I_ALONE},
    {"m2", "m2", 1, 1, TSIDE_I_ALONE},
    {"in2", "m2", INCH *INCH, E8, TSIDE_I_ALONE},
    {"ft2", "m2", FOOT *FOOT, E8, TSIDE_I_ALONE},
    {"yd2", "m2", YARD *YARD, E8, TSIDE_I_ALONE},
    {"mm3", "m3", 1, E9, TSIDE_I_ALONE},
    {"cm3", "m3", 1, E6, TSIDE_I_ALONE},
    {"m3", "m3", 1, 1, TSIDE_I_ALONE},
    {"in3", "m3", INCH *INCH *INCH, E12, TSIDE_I_ALONE},
    {"ft3", "m3", FOOT *FOOT *FOOT, E12, TSIDE_I_ALONE},
    {"mm4", "m4", 1, E12, TSIDE_I_ALONE},
    {"cm4", "m4", 1, E8, TSIDE_I_ALONE},
    {"m4", "m4", 1, 1, TSIDE_I_ALONE},
    {"in4", "m4", INCH *INCH *INCH *INCH, E16, TSIDE_I_ALONE},
    {"g", "kg", 1, E3, TSIDE_I_ALONE},
    {"kg", "kg", 1, 1, TSIDE_I_ALONE},
    {"oz", "kg", POUND, 16 * E8, TSIDE_I_ALONE},
    {"lb", "kg", POUND, E8, TSIDE_I_ALONE},
    {"g/m", "kg/m", 1, E3, TSIDE_I_ALONE},
    {"kg/m", "kg/m", 1, 1, TSIDE_I_ALONE},
    {"lb/ft", "kg/m", POUND, E4 *FOOT, TSIDE_I_ALONE},
    {"g/m2", "kg/m2", 1, E3, TSIDE_I_ALONE},
    {"kg/m2", "kg/m2", 1, 1, TSIDE_I_ALONE},
    {"oz/yd2", "kg/m2", POUND, 16 * YARD *YARD, TSIDE_I_ALONE},
    {"oz/ft2", "kg/m2", POUND, 16 * FOOT *FOOT, TSIDE_I_ALONE},
    {"lb/ft2", "kg/m2", POUND, FOOT *FOOT, TSIDE_I_ALONE},
    {"kg/m3", "kg/m3", 1, 1, TSIDE_I_ALONE},
    {"g/cm3", "kg/m3", E3, 1, TSIDE_I_ALONE},
    {"lb/ft3", "kg/m3", POUND *E4, FOOT *FOOT *FOOT, TSIDE_I_ALONE},
    {"N", "N", 1, 1, TSIDE_I_ALONE},
    {"kN", "N", E3, 1, TSIDE_I_ALONE},
    {"lbf", "N", FORCE, E13, TSIDE_I_ALONE},
    {"N m", "N m", 1, 1, TSIDE_I_ALONE},
    {"Nm", "N m", 1, 1, TSIDE_I_ALONE},
    {"kN m", "N m", E3, 1, TSIDE_I_ALONE},
    {"lbf ft", "N m", FORCE *FOOT, E17, TSIDE_I_ALONE},
    {"ft lbf", "N m", FORCE *FOOT, E17, TSIDE_I_ALONE},
    {"lbf in", "N m", FORCE *INCH, E17, TSIDE_I_ALONE},
    {"in lbf", "N m", FORCE *INCH, E17, TSIDE_I_ALONE},
    {"N/m", "N/m", 1, 1, TSIDE_I_ALONE},
    {"kN/m", "N/m", E3, 1, TSIDE_I_ALONE},
    {"lbf/ft", "N/m", FORCE, E9 *FOOT, TSIDE_I_ALONE},
    {"Pa", "Pa", 1, 1, TSIDE_I_ALONE},
    {"kPa", "Pa", E3, 1, TSIDE_I_ALONE},
    {"MPa", "Pa", E6, 1, TSIDE_I_ALONE},
    {"GPa", "Pa", E9, 1, TSIDE_I_ALONE},
    {"N/mm2", "Pa", E6, 1, TSIDE_I_ALONE},
    {"psf", "Pa", FORCE, E5 *FOOT *FOOT, TSIDE_I_ALONE},
    {"psi", "Pa", FORCE, E5 *INCH *INCH, TSIDE_I_ALONE},
    {"ksi", "Pa", FORCE *E3, E5 *INCH *INCH, TSIDE_I_ALONE},
    {"rad", "rad", 1, 1, TSIDE_I_ALONE},
    {"deg", "rad", PI_OVER, PI_UNDER * 180, TSIDE_I_ALONE},
    {"rad/s", "rad/s", 1, 1, TSIDE_I_ALONE},
    {"rpm", "rad/s", PI_OVER, PI_UNDER * 30, TSIDE_I_ALONE},
    {"s", "s", 1, 1, TSIDE_I_ALONE},
    {"min", "s", 60, 1, TSIDE_I_ALONE},
    {"h", "s", 3600, 1, TSIDE_I_ALONE},
    {"m/s", "m/s", 1, 1, TSIDE_I_ALONE},
    {"km/h", "m/s", 10, 36, TSIDE_I_ALONE},
    {"mph", "m/s", 1760 * YARD, 3600 * E4, TSIDE_I_ALONE},
    {"ft/min", "m/s", FOOT, 60 * E4, TSIDE_I_ALONE},
    {"m3/s", "m3/s", 1, 1, TSIDE_I_ALONE},
    {"m3/h", "m3/s", 1, 3600, TSIDE_I_ALONE},
    {"ft3/min", "m3/s", FOOT *FOOT *FOOT, 60 * E12, TSIDE_I_ALONE},
    {"/s", "/s", 1, 1, TSIDE_I_ALONE},
    {"/min", "/s", 1, 60, TSIDE_I_ALONE},
    {"/h", "/s", 1, 3600, TSIDE_I_ALONE},
    {"W/m2", "W/m2", 1, 1, TSIDE_I_ALONE},
    {"W/(m2 K)", "W/(m2 K)", 1, 1, TSIDE_I_ALONE},
    {"J/(kg K)", "J/(kg K)", 1, 1, TSIDE_I_ALONE},
    {"V", "V", 1, 1, TSIDE_I_ALONE},
    {"A", "A", 1, 1, TSIDE_I_ALONE},
    {"mA", "A", 1, E3, TSIDE_I_ALONE},
    {"W", "W", 1, 1, TSIDE_I_ALONE},
    {"kW", "W", E3, 1, TSIDE_I_ALONE},
    {"J", "J", 1, 1, TSIDE_I_ALONE},
    {"kJ", "J", E3, 1, TSIDE_I_ALONE},
    {"Wh", "J", 3600, 1, TSIDE_I_ALONE},
    {"degC", "degC", 1, 1, TSIDE_I_ALONE},
    {"K", "K", 1, 1, TSIDE_I_ALONE}, /* a difference: no offset is ever added */
    {"ohm", "ohm", 1, 1, TSIDE_I_ALONE},
};
enum { UNIT_COUNT = sizeof units / sizeof *units };

/*
 * Other spellings of a word in a unit's name, of which the longest that stands there counts; the marks are those of
 * U+2018 to U+201D, less the low quotes, of which one looks like a decimal comma, and U+2032, U+2033, U+00B5 and
 * U+03BC. A pound is a force where a force is wanted.
 */
static const struct spelling {
    const char *word, *as;
} spellings[] = {
    {"in", "inches"},       {"in", "inch"},        {"ft", "feet"},         {"ft", "foot"},
    {"lb", "lbs"},          {"lbf", "lbs"},        {"lbf", "lb"},          {"mil", "mils"},
    {"um", "\xc2\xb5m"},    {"um", "\xce\xbcm"},   {"'", "\xe2\x80\xb2"},  {"'", "\xe2\x80\x98"},
    {"'", "\xe2\x80\x99"},  {"'", "\xe2\x80\x9b"}, {"\"", "\xe2\x80\xb3"}, {"\"", "\xe2\x80\x9c"},
    {"\"", "\xe2\x80\x9d"},
};
enum { SPELLING_COUNT = sizeof spellings / sizeof *spellings };

/* --- names --- */

static size_t word_length(const char *name)
{
    size_t length = 0;
    while (tside_i_is_letter(name[length]))
        length++;
    return length ? length : 1;
}

static const char *after_spelling(const char *at, const char *as, size_t length)
{
    return strncmp(at, as, length) == 0 ? at + length : NULL;
}

/*
 * Where a word of a unit's name ends that stands at the start of a text, however it is spelled; NULL if it does not
 * stand there.
 */
static const char *after_word(const char *at, const char *word, size_t length)
{
    const char *end = after_spelling(at, word, length);
    int i;
    for (i = 0; i < SPELLING_COUNT; i++)
        if (strncmp(spellings[i].word, word, length) == 0 && !spellings[i].word[length]) {
            const char *after = after_spelling(at, spellings[i].as, strlen(spellings[i].as));
            if (after && (!end || after > end))
                end = after;
        }
    return end;
}

/* Where what a blank in a unit's name stands for ends; NULL if it does not stand here. */
static const char *after_gap(const char *at)
{
    return *at == '-' ? at + 1 : tside_i_is_blank(*at) ? tside_i_skip_blanks(at) : NULL;
}

/* Where the name of a unit ends that stands at the start of a text; NULL if it does not stand there. */
static const char *after_name(const char *at, const char *name)
{
    while (*name && at) {
        const size_t length = word_length(name);
        at = *name == ' ' ? after_gap(at) : after_word(at, name, length);
        name += length;
    }
    return at;
}

static int is_wanted(const tside_i_measure *unit, const char *si, int film)
{
    return strcmp(unit->si, si) == 0 && (film || unit->joins != TSIDE_I_OF_FILM);
}

const tside_i_measure *tside_i_unit_wanted(const char *at, const char *si, int film, const char **end)
{
    const tside_i_measure *found = NULL;
    int i;
    *end = at;
    for (i = 0; i < UNIT_COUNT; i++) {
        const char *after = is_wanted(&units[i], si, film) ? after_name(at, units[i].name) : NULL;
        if (after && (!found || after > *end)) {
            found = &units[i];
            *end = after;
        }
    }
    return found;
}

const tside_i_measure *tside_i_unit_any(const char *at)
{
    int i;
    for (i = 0; i < UNIT_COUNT; i++) {
        const char *after = *units[i].name ? after_name(at, units[i].name) : NULL;
        if (after && !*tside_i_skip_blanks(after))
            return &units[i];
    }
    return NULL;
}

const char *tside_i_unit_si(const char *si)
{
    int i;
    for (i = 0; i < UNIT_COUNT; i++)
        if (strcmp(units[i].si, si) == 0)
            return units[i].si;
    return NULL;
}

void tside_i_unit_list(const char *si, int film, char *names)
{
    tside_i_text text = tside_i_empty(names, TSIDE_PATH_SIZE);
    int i;
    for (i = 0; i < UNIT_COUNT; i++) {
        if (is_wanted(&units[i], si, film) && *units[i].name) {
            tside_i_put(&text, text.length ? ", " : "");
            tside_i_put(&text, units[i].name);
        }
    }
}
