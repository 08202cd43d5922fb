/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "value.h"

/* What a JSON value is, for those that are not wanted. */
static const char *what_is(const json_t *value)
{
    switch (json_typeof(value)) {
    case JSON_OBJECT: return "an object";
    case JSON_ARRAY: return "a list";
    case JSON_STRING: return "a text";
    case JSON_INTEGER:
    case JSON_REAL: return "a number";
    case JSON_TRUE:
    case JSON_FALSE: return "a yes or no";
    case JSON_NULL: break;
    }
    return "null";
}

/* The fault's sentence after the text that it is about; the place where reading stopped is in it. */
static int refuse_text(const char *words, tside_fault *fault, text *why)
{
    char sentence[512];
    fault->field[0] = '\0';
    tside_fault_text(fault, sentence, sizeof sentence);
    text_add(why, "\"%s\": %s", words, sentence);
    return 0;
}

static int starts_with_letter(const char *words)
{
    words += strspn(words, " ");
    return (*words >= 'a' && *words <= 'z') || (*words >= 'A' && *words <= 'Z');
}

/*
 * "1-3/8 in" names tubes of different size: where more families than that of true tube have the name, it is refused
 * with all of them.
 */
int read_diameter(const char *words, double *number, text *why)
{
    tside_fault fault;
    tside_status status = tside_tube_size(words, number, &fault);
    if (status == TSIDE_OK)
        return 1;
    if (starts_with_letter(words) ||
        (status == TSIDE_NOT_FOUND && strchr(fault.other, ',') && strstr(fault.other, "tube ")))
        return refuse_text(words, &fault, why);
    return tside_quantity_read(words, "m", number, &fault) == TSIDE_OK || refuse_text(words, &fault, why);
}

/* A gauge without its series is refused with the series that have it. */
int read_wall(const char *words, double *number, text *why)
{
    tside_fault fault, trade;
    if (tside_tube_wall(words, number, &trade) == TSIDE_OK)
        return 1;
    if (!starts_with_letter(words) && tside_quantity_read(words, "m", number, &fault) == TSIDE_OK)
        return 1;
    if (starts_with_letter(words) || !words[strspn(words, " 0123456789")] || strstr(words, "ga"))
        return refuse_text(words, &trade, why);
    return refuse_text(words, &fault, why);
}

static int is_tube(tside_kind kind)
{
    return kind == TSIDE_KIND_ROUND || kind == TSIDE_KIND_SQUARE;
}

int read_quantity(const char *words, const char *unit, double *number, text *why)
{
    tside_fault fault;
    return tside_quantity_read(words, unit, number, &fault) == TSIDE_OK || refuse_text(words, &fault, why);
}

static int read_field(const tside_field *row, const char *words, double *number, text *why)
{
    tside_fault fault;
    return tside_field_read(row, words, number, &fault) == TSIDE_OK || refuse_text(words, &fault, why);
}

/*
 * Whether a number without a unit may be meant in another unit than the SI one that it is taken for: not a ratio, not
 * turns, and 0 in temperatures alone.
 */
static int may_mislead(const tside_field *row, double number)
{
    return strcmp(row->unit, "1") && strcmp(row->unit, "turn") && (number != 0 || !strcmp(row->unit, "degC"));
}

static int refuse_bare(const tside_field *row, double number, text *why)
{
    char words[32];
    double ignored;
    tside_fault fault;
    snprintf(words, sizeof words, "%.15g", number);
    text_add(why, "%s was taken for %s %s, while this file elsewhere speaks feet, inches or pounds", words, words,
             row->unit);
    if (tside_field_read(row, words, &ignored, &fault) == TSIDE_UNREADABLE) /* which a bare number is */
        text_add(why, ": give it as a text with its unit (%s)", fault.other);
    return 0;
}

int read_number(tside_kind kind, const tside_field *row, const json_t *value, int among_feet, double *number, text *why)
{
    const char *words = json_string_value(value);
    if (json_is_number(value)) {
        *number = json_number_value(value);
        return !among_feet || !may_mislead(row, *number) || refuse_bare(row, *number, why);
    }
    if (!words) {
        text_add(why, "%s; wanted a number%s%s, or a text with its unit", what_is(value),
                 strcmp(row->unit, "1") ? " in " : "", strcmp(row->unit, "1") ? row->unit : "");
        return 0;
    }
    if (is_tube(kind) && !strcmp(row->name, "diameter"))
        return read_diameter(words, number, why);
    if (is_tube(kind) && !strcmp(row->name, "wall"))
        return read_wall(words, number, why);
    return read_field(row, words, number, why);
}

int read_count(const json_t *value, int *count, text *why)
{
    const double number = json_number_value(value);
    if (!json_is_number(value)) {
        text_add(why, "%s; wanted a whole number", what_is(value));
        return 0;
    }
    if (floor(number) < number || fabs(number) > 1e9) {
        text_add(why, "%g is not a whole number%s", number, fabs(number) > 1e9 ? " of a size that makes sense" : "");
        return 0;
    }
    *count = (int)number;
    return 1;
}

int read_choice(const tside_field *row, const json_t *value, int *choice, text *why)
{
    const char *words = json_string_value(value);
    double number = 0;
    if (words && tside_field_read(row, words, &number, NULL) == TSIDE_OK) {
        *choice = (int)number;
        return 1;
    }
    if (words)
        text_add(why, "\"%s\" is not one of: ", words);
    else
        text_add(why, "%s; wanted one of: ", what_is(value));
    for (int k = 0; k < row->choice_count; k++)
        text_add(why, "%s%s", k ? ", " : "", row->choices[k]);
    return 0;
}
