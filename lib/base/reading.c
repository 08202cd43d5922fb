/* SPDX-License-Identifier: MIT */
/*
 * Quantities as a carpenter writes them, read into metres and other units, each time the nearest double; and what is
 * typed for a field. Source: derivation; the units have theirs.
 */
#include <string.h>
#include <tunnelside/length.h>

#include "base/field.h"
#include "base/number.h"
#include "base/unit.h"

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

static int is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static const char *unwanted(const tside_i_measure *unit)
{
    return unit->joins == TSIDE_I_OF_FILM ? "mil is read of film's thickness alone, since elsewhere it may mean mm"
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
    const tside_i_measure *other = tside_i_unit_any(in->at);
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
    const tside_i_measure *other = tside_i_unit_any(in->unit);
    if (other) {
        in->unit_is_wrong = 1;
        return unwanted(other);
    }
    if (reason)
        return reason;
    return is_digit(*in->at) ? "only feet and inches may be joined" : "nothing may follow here";
}

static const char *read_unit(reader *in, const tside_i_measure **found)
{
    const char *end;
    in->at = in->unit = tside_i_skip_blanks(in->at);
    *found = tside_i_unit_wanted(in->at, in->si, in->film, &end);
    if (!*found)
        return no_unit(in);
    in->at = end;
    return NULL;
}

/* "3/", but for the stroke of a unit that begins with one: "3/h". */
static int begins_fraction(const reader *in, const char *at)
{
    const char *end = at;
    while (is_digit(*end))
        end++;
    return end > at && *end == '/' && !(*in->si == '/' && tside_i_is_letter(end[1]));
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
    if (begins_fraction(in, in->at))
        return read_fraction(in, number);
    reason = tside_i_read_decimal(&in->at, number, whole);
    if (reason || !*whole)
        return reason;
    start = *in->at == '-' ? in->at + 1 : tside_i_skip_blanks(in->at);
    if (start == in->at || !begins_fraction(in, start))
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
    const char *start = tside_i_skip_blanks(in->at);
    const int blank = start > in->at;
    return *start == '-' && !tside_i_is_letter(*in->unit) && tside_i_is_blank(start[1]) == blank
               ? tside_i_skip_blanks(start + 1)
               : start;
}

/* The inches that follow a number of feet, if any do. */
static const char *read_inches(reader *in, tside_i_exact *feet, int whole)
{
    tside_i_exact inches;
    const tside_i_measure *found;
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
    if (found->joins != TSIDE_I_INCHES) {
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
    const tside_i_measure *found;
    int whole;
    const char *reason = read_number(in, size, &whole);
    if (!reason)
        reason = read_unit(in, &found);
    if (reason)
        return reason;
    tside_i_exact_scale(size, found->over, found->under);
    if (found->joins == TSIDE_I_FEET)
        reason = read_inches(in, size, whole);
    if (reason)
        return reason;
    in->at = tside_i_skip_blanks(in->at);
    return *in->at ? more_than_unit(in) : NULL;
}

static const char *read_quantity(reader *in, double *value)
{
    tside_i_exact size;
    double found;
    int minus;
    const char *start, *reason;
    start = in->at = tside_i_skip_blanks(in->at);
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
    reader in = {text, tside_i_unit_si(unit), film, text, 0};
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
            tside_i_unit_list(in.si, in.film, fault->other);
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
