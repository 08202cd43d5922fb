/* SPDX-License-Identifier: MIT */
/*
 * Quantities as text: what a carpenter writes, read into metres and other units, and written again, each time the
 * nearest double or the nearest text. Source: the yard and pound agreement of 1959 for the customary units; derivation.
 */
#include <string.h>
#include <tunnelside/length.h>

#include "base/field.h"
#include "base/number.h"

/* --- units: 1 name = over/under si, exactly --- */

#define E3 UINT64_C(1000)
#define E4 UINT64_C(10000)
#define E5 UINT64_C(100000)
#define E6 UINT64_C(1000000)
#define E8 (E4 * E4)
#define E9 (E5 * E4)
#define E12 (E6 * E6)
#define E13 (E8 * E5)
#define E16 (E8 * E8)
#define E17 (E12 * E5)
#define INCH UINT64_C(254)       /* E-4 m */
#define FOOT UINT64_C(3048)      /* E-4 m */
#define YARD UINT64_C(9144)      /* E-4 m */
#define POUND UINT64_C(45359237) /* E-8 kg */
#define FORCE (POUND * 980665)   /* E-13 N: the weight of a pound */
/* pi, a convergent of its continued fraction: 1.1e-34 of it too small or too great */
#define PI_OVER UINT64_C(66627445592888887)
#define PI_UNDER UINT64_C(21208174623389167)

enum { ALONE, FEET, INCHES, OF_FILM }; /* feet may be followed by inches; OF_FILM is read of film's thickness alone */

typedef struct measure {
    const char *name; /* its words have other spellings; a blank in it stands for one or more, or a hyphen; "" for a
                         bare number */
    const char *si;
    uint64_t over, under;
    int joins;
} measure;

static const measure units[] = {
    {"", "1", 1, 1, ALONE},
    {"%", "1", 1, 100, ALONE},
    {"", "turn", 1, 1, ALONE},
    {"turn", "turn", 1, 1, ALONE},
    {"turns", "turn", 1, 1, ALONE},
    {"mm", "m", 1, E3, ALONE},
    {"cm", "m", 1, 100, ALONE},
    {"m", "m", 1, 1, ALONE},
    {"km", "m", E3, 1, ALONE},
    {"in", "m", INCH, E4, INCHES},
    {"\"", "m", INCH, E4, INCHES},
    {"ft", "m", FOOT, E4, FEET},
    {"'", "m", FOOT, E4, FEET},
    {"yd", "m", YARD, E4, ALONE},
    {"um", "m", 1, E6, ALONE},
    {"mil", "m", INCH, E4 *E3, OF_FILM},
    {"mm2", "m2", 1, E6, ALONE},
    {"cm2", "m2", 1, E4, ALONE},
    {"m2", "m2", 1, 1, ALONE},
    {"in2", "m2", INCH *INCH, E8, ALONE},
    {"ft2", "m2", FOOT *FOOT, E8, ALONE},
    {"yd2", "m2", YARD *YARD, E8, ALONE},
    {"mm3", "m3", 1, E9, ALONE},
    {"cm3", "m3", 1, E6, ALONE},
    {"m3", "m3", 1, 1, ALONE},
    {"in3", "m3", INCH *INCH *INCH, E12, ALONE},
    {"ft3", "m3", FOOT *FOOT *FOOT, E12, ALONE},
    {"mm4", "m4", 1, E12, ALONE},
    {"cm4", "m4", 1, E8, ALONE},
    {"m4", "m4", 1, 1, ALONE},
    {"in4", "m4", INCH *INCH *INCH *INCH, E16, ALONE},
    {"g", "kg", 1, E3, ALONE},
    {"kg", "kg", 1, 1, ALONE},
    {"oz", "kg", POUND, 16 * E8, ALONE},
    {"lb", "kg", POUND, E8, ALONE},
    {"g/m", "kg/m", 1, E3, ALONE},
    {"kg/m", "kg/m", 1, 1, ALONE},
    {"lb/ft", "kg/m", POUND, E4 *FOOT, ALONE},
    {"g/m2", "kg/m2", 1, E3, ALONE},
    {"kg/m2", "kg/m2", 1, 1, ALONE},
    {"oz/yd2", "kg/m2", POUND, 16 * YARD *YARD, ALONE},
    {"oz/ft2", "kg/m2", POUND, 16 * FOOT *FOOT, ALONE},
    {"lb/ft2", "kg/m2", POUND, FOOT *FOOT, ALONE},
    {"kg/m3", "kg/m3", 1, 1, ALONE},
    {"g/cm3", "kg/m3", E3, 1, ALONE},
    {"lb/ft3", "kg/m3", POUND *E4, FOOT *FOOT *FOOT, ALONE},
    {"N", "N", 1, 1, ALONE},
    {"kN", "N", E3, 1, ALONE},
    {"lbf", "N", FORCE, E13, ALONE},
    {"N m", "N m", 1, 1, ALONE},
    {"Nm", "N m", 1, 1, ALONE},
    {"kN m", "N m", E3, 1, ALONE},
    {"lbf ft", "N m", FORCE *FOOT, E17, ALONE},
    {"ft lbf", "N m", FORCE *FOOT, E17, ALONE},
    {"lbf in", "N m", FORCE *INCH, E17, ALONE},
    {"in lbf", "N m", FORCE *INCH, E17, ALONE},
    {"N/m", "N/m", 1, 1, ALONE},
    {"kN/m", "N/m", E3, 1, ALONE},
    {"lbf/ft", "N/m", FORCE, E9 *FOOT, ALONE},
    {"Pa", "Pa", 1, 1, ALONE},
    {"kPa", "Pa", E3, 1, ALONE},
    {"MPa", "Pa", E6, 1, ALONE},
    {"GPa", "Pa", E9, 1, ALONE},
    {"N/mm2", "Pa", E6, 1, ALONE},
    {"psf", "Pa", FORCE, E5 *FOOT *FOOT, ALONE},
    {"psi", "Pa", FORCE, E5 *INCH *INCH, ALONE},
    {"ksi", "Pa", FORCE *E3, E5 *INCH *INCH, ALONE},
    {"rad", "rad", 1, 1, ALONE},
    {"deg", "rad", PI_OVER, PI_UNDER * 180, ALONE},
    {"rad/s", "rad/s", 1, 1, ALONE},
    {"rpm", "rad/s", PI_OVER, PI_UNDER * 30, ALONE},
    {"s", "s", 1, 1, ALONE},
    {"min", "s", 60, 1, ALONE},
    {"h", "s", 3600, 1, ALONE},
    {"m/s", "m/s", 1, 1, ALONE},
    {"km/h", "m/s", 10, 36, ALONE},
    {"mph", "m/s", 1760 * YARD, 3600 * E4, ALONE},
    {"ft/min", "m/s", FOOT, 60 * E4, ALONE},
    {"V", "V", 1, 1, ALONE},
    {"A", "A", 1, 1, ALONE},
    {"mA", "A", 1, E3, ALONE},
    {"W", "W", 1, 1, ALONE},
    {"kW", "W", E3, 1, ALONE},
    {"J", "J", 1, 1, ALONE},
    {"kJ", "J", E3, 1, ALONE},
    {"Wh", "J", 3600, 1, ALONE},
    {"degC", "degC", 1, 1, ALONE},
    {"K", "K", 1, 1, ALONE}, /* a difference: no offset is ever added */
    {"ohm", "ohm", 1, 1, ALONE},
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

/* --- reading --- */

enum { LONGEST = 255 }; /* characters of a quantity */

/*
 * Where reading stands. The functions below return NULL, or why not, with at then at the first character that does not
 * fit.
 */
typedef struct reader {
    const char *at;
    const char *si;    /* the unit wanted */
    int film;          /* 1: of film's thickness */
    const char *unit;  /* where the last unit began */
    int unit_is_wrong; /* 1: the units that would do are worth telling */
} reader;

static int is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static int is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static const char *skip_blanks(const char *at)
{
    while (is_blank(*at))
        at++;
    return at;
}

static int is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static size_t word_length(const char *name)
{
    size_t length = 0;
    while (is_letter(name[length]))
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
    return *at == '-' ? at + 1 : is_blank(*at) ? skip_blanks(at) : NULL;
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

static int is_wanted(const measure *unit, const char *si, int film)
{
    return strcmp(unit->si, si) == 0 && (film || unit->joins != OF_FILM);
}

/* The wanted unit of the longest name that stands here, or NULL; *end: where its name ends. */
static const measure *find_unit(const reader *in, const char **end)
{
    const measure *found = NULL;
    int i;
    *end = in->at;
    for (i = 0; i < UNIT_COUNT; i++) {
        const char *after = is_wanted(&units[i], in->si, in->film) ? after_name(in->at, units[i].name) : NULL;
        if (after && (!found || after > *end)) {
            found = &units[i];
            *end = after;
        }
    }
    return found;
}

/* The unit of any quantity whose name is the rest of the text, or NULL. */
static const measure *any_unit(const char *at)
{
    int i;
    for (i = 0; i < UNIT_COUNT; i++) {
        const char *after = *units[i].name ? after_name(at, units[i].name) : NULL;
        if (after && !*skip_blanks(after))
            return &units[i];
    }
    return NULL;
}

static const char *unwanted(const measure *unit)
{
    return unit->joins == OF_FILM ? "mil is read of film's thickness alone, since elsewhere it may mean mm"
                                  : "a unit of another quantity";
}

/*
 * Why something else than a unit, or the end, does not fit here; NULL if nothing better than the caller's reason is
 * known.
 */
static const char *why_not(char c)
{
    switch (c) {
    case '-': return "a minus sign stands before the whole";
    case ',': return "a comma is no decimal point";
    case '.': return "a point does not fit here";
    case '/': return "a fraction is one whole number over another";
    default: return NULL;
    }
}

static const char *no_unit(reader *in)
{
    const char *reason = why_not(*in->at);
    const measure *other = any_unit(in->at);
    in->unit_is_wrong = !reason;
    if (reason)
        return reason;
    if (!*in->at)
        return "a bare number has no unit";
    if (is_digit(*in->at))
        return "a unit is missing before this number";
    return other ? unwanted(other) : "no such unit";
}

static const char *more_than_unit(reader *in)
{
    const char *reason = why_not(*in->at);
    const measure *other = any_unit(in->unit);
    if (other) {
        in->unit_is_wrong = 1;
        return unwanted(other);
    }
    if (reason)
        return reason;
    return is_digit(*in->at) ? "only feet and inches may be joined" : "nothing may follow here";
}

static const char *read_unit(reader *in, const measure **found)
{
    const char *end;
    in->at = in->unit = skip_blanks(in->at);
    *found = find_unit(in, &end);
    if (!*found)
        return no_unit(in);
    in->at = end;
    return NULL;
}

static int begins_fraction(const char *at)
{
    const char *end = at;
    while (is_digit(*end))
        end++;
    return end > at && *end == '/';
}

/* "3/4" */
static const char *read_fraction(reader *in, tside_i_exact *number)
{
    tside_i_exact divisor;
    const char *start, *reason = tside_i_read_whole(&in->at, number);
    if (reason)
        return reason;
    start = ++in->at;
    reason = tside_i_read_whole(&in->at, &divisor);
    if (reason)
        return reason;
    if (!divisor.over.count) {
        in->at = start;
        return "a denominator must be above 0";
    }
    number->under = divisor.over;
    return NULL;
}

/* "3.5", "3/4", "3 1/2" or "3-1/2"; whole: receives 1 where it is digits alone. */
static const char *read_number(reader *in, tside_i_exact *number, int *whole)
{
    tside_i_exact part;
    const char *start, *reason;
    *whole = 0;
    if (begins_fraction(in->at))
        return read_fraction(in, number);
    reason = tside_i_read_decimal(&in->at, number, whole);
    if (reason || !*whole)
        return reason;
    start = *in->at == '-' ? in->at + 1 : skip_blanks(in->at);
    if (start == in->at || !begins_fraction(start))
        return NULL;
    *whole = 0;
    in->at = start;
    reason = read_fraction(in, &part);
    if (!reason && !tside_i_exact_below(&part, 1)) {
        in->at = start;
        return "a fraction after a whole number must be below 1";
    }
    if (!reason)
        tside_i_exact_add(number, &part);
    return reason;
}

/* Where what stands between feet and inches ends: blanks, or a hyphen after a mark of feet, 5'-3" or 5' - 3". */
static const char *after_joint(const reader *in)
{
    const char *start = skip_blanks(in->at);
    const int blank = start > in->at;
    return *start == '-' && !is_letter(*in->unit) && is_blank(start[1]) == blank ? skip_blanks(start + 1) : start;
}

/* The inches that follow a number of feet, if any do. */
static const char *read_inches(reader *in, tside_i_exact *feet, int whole)
{
    tside_i_exact inches;
    const measure *found;
    const char *start = after_joint(in), *reason;
    if (!is_digit(*start) && *start != '.')
        return NULL;
    in->at = start;
    if (!whole)
        return "feet before inches must be whole";
    reason = read_number(in, &inches, &whole);
    if (reason)
        return reason;
    if (!tside_i_exact_below(&inches, 12)) {
        in->at = start;
        return "inches after feet must be below 12";
    }
    reason = read_unit(in, &found);
    if (reason)
        return reason;
    if (found->joins != INCHES) {
        in->at = in->unit;
        return "only inches may follow feet";
    }
    tside_i_exact_scale(&inches, found->over, found->under);
    tside_i_exact_add(feet, &inches);
    return NULL;
}

/* Everything but the sign and the blanks around it. */
static const char *read_size(reader *in, tside_i_exact *size)
{
    const measure *found;
    int whole;
    const char *reason = read_number(in, size, &whole);
    if (!reason)
        reason = read_unit(in, &found);
    if (reason)
        return reason;
    tside_i_exact_scale(size, found->over, found->under);
    if (found->joins == FEET)
        reason = read_inches(in, size, whole);
    if (reason)
        return reason;
    in->at = skip_blanks(in->at);
    return *in->at ? more_than_unit(in) : NULL;
}

static const char *read_quantity(reader *in, double *value)
{
    tside_i_exact size;
    double found;
    int minus;
    const char *start, *reason;
    start = in->at = skip_blanks(in->at);
    minus = *in->at == '-';
    in->at += minus;
    reason = read_size(in, &size);
    if (reason)
        return reason;
    if (!tside_i_exact_double(&size, &found)) {
        in->at = start;
        return "the number is too great";
    }
    *value = minus && found > 0 ? -found : found;
    return NULL;
}

/* "mm, cm, m" */
static void list_units(const reader *in, char *names)
{
    tside_i_text text = tside_i_empty(names, TSIDE_PATH_SIZE);
    int i;
    for (i = 0; i < UNIT_COUNT; i++) {
        if (is_wanted(&units[i], in->si, in->film) && *units[i].name) {
            tside_i_put(&text, text.length ? ", " : "");
            tside_i_put(&text, units[i].name);
        }
    }
}

/* The table's own copy of the name of an SI unit, or NULL. */
static const char *find_si(const char *si)
{
    int i;
    for (i = 0; i < UNIT_COUNT; i++)
        if (strcmp(units[i].si, si) == 0)
            return units[i].si;
    return NULL;
}

/* How many characters of UTF-8 stand before a place. */
static int characters(const char *text, const char *at)
{
    int count = 0;
    for (; text < at; text++)
        count += ((unsigned char)*text & 0xc0) != 0x80;
    return count;
}

static tside_status read_as(const char *text, const char *unit, int film, double *value, tside_fault *fault)
{
    reader in = {text, find_si(unit), film, text, 0};
    const char *reason;
    if (!in.si)
        return tside_i_refuse(fault, TSIDE_NOT_FOUND, unit, "", "no such SI unit");
    if (memchr(text, '\0', LONGEST + 1)) {
        reason = read_quantity(&in, value);
    } else {
        in.at = text + LONGEST;
        reason = "a quantity has at most 255 bytes";
    }
    if (!reason)
        return TSIDE_OK;
    (void)tside_i_refuse(fault, TSIDE_UNREADABLE, "", "", reason);
    if (fault) {
        fault->index = characters(text, in.at);
        fault->unit = in.si;
        if (in.unit_is_wrong)
            list_units(&in, fault->other);
    }
    return TSIDE_UNREADABLE;
}

tside_status tside_quantity_read(const char *text, const char *unit, double *value, tside_fault *fault)
{
    return read_as(text, unit, 0, value, fault);
}

/* --- a field's text --- */

static char small(char c)
{
    return (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

static int is_same_name(const char *one, const char *other)
{
    for (; *one && small(*one) == small(*other); one++)
        other++;
    return !*one && !*other;
}

static tside_status read_choice(const tside_field *field, const char *text, double *value, tside_fault *fault)
{
    char names[TSIDE_PATH_SIZE];
    tside_i_text list = tside_i_empty(names, sizeof names);
    for (int i = 0; i < field->choice_count; i++) {
        if (is_same_name(field->choices[i], text)) {
            *value = i;
            return TSIDE_OK;
        }
        tside_i_put(&list, i ? ", " : "");
        tside_i_put(&list, field->choices[i]);
    }
    return tside_i_refuse(fault, TSIDE_NOT_FOUND, field->name, names, "no such choice");
}

tside_status tside_field_read(const tside_field *field, const char *text, double *value, tside_fault *fault)
{
    switch (field->type) {
    case TSIDE_NUMBER: {
        const tside_status status = read_as(text, field->unit, field->film, value, fault);
        if (status != TSIDE_OK && fault)
            tside_i_path(fault->field, field->name);
        return status;
    }
    case TSIDE_CHOICE: return read_choice(field, text, value, fault);
    case TSIDE_COUNT:
    case TSIDE_GROUP:
    case TSIDE_LIST: break;
    }
    return tside_i_refuse(fault, TSIDE_NOT_FOUND, field->name, "", "no number with a unit and no choice");
}

/* --- writing --- */

enum { LENGTH_SIZE = 48, DECIMALS = 6, FINEST = 64 };
#define FARTHEST 1e6 /* m */

/*
 * "0", "11", "11 15/16" or "15/16": so many parts, of which part make an inch. After feet the whole inches stand too
 * where there is none: "0 15/16", so that a fraction is not read as one of a foot.
 */
static void put_inches(tside_i_text *text, uint64_t parts, unsigned part, int after_feet)
{
    uint64_t over = parts % part, under = part;
    const int whole = parts >= part || !over || after_feet;
    if (whole)
        tside_i_put_whole(text, parts / part);
    if (!over)
        return;
    if (whole)
        tside_i_put_character(text, ' ');
    for (; over % 2 == 0; over /= 2)
        under /= 2;
    tside_i_put_whole(text, over);
    tside_i_put_character(text, '/');
    tside_i_put_whole(text, under);
}

static void put_length(tside_i_text *text, double metres, tside_style style, int part)
{
    const int inches = style == TSIDE_INCHES || style == TSIDE_FEET_AND_INCHES;
    const unsigned fineness = inches ? (unsigned)part : 1;
    tside_i_exact size;
    uint64_t parts; /* of the finest part, in the end */
    int feet;
    tside_i_exact_from(&size, fabs(metres));
    if (inches)
        tside_i_exact_scale(&size, E4 * fineness, INCH);
    else
        tside_i_exact_power(&size, style == TSIDE_MILLIMETRES ? part + 3 : part);
    parts = tside_i_exact_nearest(&size);
    if (parts && metres < 0)
        tside_i_put_character(text, '-');
    if (!inches) {
        tside_i_put_decimal(text, parts, part);
        tside_i_put(text, style == TSIDE_MILLIMETRES ? " mm" : " m");
        return;
    }
    feet = style == TSIDE_FEET_AND_INCHES && parts >= 12 * fineness;
    if (feet) {
        tside_i_put_whole(text, parts / (12 * fineness));
        tside_i_put(text, " ft ");
        parts %= 12 * fineness;
    }
    put_inches(text, parts, fineness, feet);
    tside_i_put(text, " in");
}

static tside_status check_part(tside_style style, int part, tside_fault *fault)
{
    if (style == TSIDE_INCHES || style == TSIDE_FEET_AND_INCHES) {
        if (part < 1 || part > FINEST || FINEST % part)
            REFUSE(fault, TSIDE_OUT_OF_BOUNDS, "part", "1, 2, 4, 8, 16, 32, 64", "no such fraction of an inch", "1",
                   part, TSIDE_NO_RELATION, 0, 0);
        return TSIDE_OK;
    }
    if (part < 0)
        return tside_i_bound(fault, "part", "1", part, TSIDE_BELOW, 0);
    if (part > DECIMALS)
        return tside_i_bound(fault, "part", "1", part, TSIDE_ABOVE, DECIMALS);
    return TSIDE_OK;
}

tside_status tside_length_write(double metres, tside_style style, int part, char *buffer, size_t size, size_t *needed,
                                tside_fault *fault)
{
    char whole[LENGTH_SIZE];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    if (!isfinite(metres))
        return tside_i_bound(fault, "metres", "m", metres, TSIDE_NOT_FINITE, 0);
    if (metres > FARTHEST)
        return tside_i_bound(fault, "metres", "m", metres, TSIDE_ABOVE, FARTHEST);
    if (metres < -FARTHEST)
        return tside_i_bound(fault, "metres", "m", metres, TSIDE_BELOW, -FARTHEST);
    if ((int)style < TSIDE_FEET_AND_INCHES || (int)style > TSIDE_METRES)
        return tside_i_bound(fault, "style", "1", (int)style, TSIDE_NOT_ONE_OF, TSIDE_METRES);
    TRY(check_part(style, part, fault));
    put_length(&text, metres, style, part);
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}
