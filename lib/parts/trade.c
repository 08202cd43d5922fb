/* SPDX-License-Identifier: MIT */
/* Trade names of tubes and walls: their true sizes, by family. */
#include <string.h>

#include <tunnelside/length.h>
#include <tunnelside/tube.h>

#include "base/field.h"
#include "base/number.h"

/* NPS: ASME B36.10M. Fence: chain-link practice, from memory; a nominal 2 in is also called 1-7/8 in, and so on. */
static const tside_trade sizes[] = {
    {"nps", "3/4", 1.050 * IN},        {"nps", "1", 1.315 * IN},          {"nps", "1-1/4", 1.660 * IN},
    {"nps", "1-1/2", 1.900 * IN},      {"nps", "2", 2.375 * IN},          {"nps", "2-1/2", 2.875 * IN},
    {"nps", "3", 3.500 * IN},          {"fence", "1-3/8 in", 1.315 * IN}, {"fence", "1-5/8 in", 1.660 * IN},
    {"fence", "1-7/8 in", 1.900 * IN}, {"fence", "2 in", 1.900 * IN},     {"fence", "2-3/8 in", 2.375 * IN},
    {"fence", "2-1/2 in", 2.375 * IN}, {"fence", "2-7/8 in", 2.875 * IN}, {"fence", "3 in", 2.875 * IN},
};

/*
 * Schedules: ASME B36.10M. bwg: Birmingham (Stubs) gauge, of tubing. sheet: Manufacturers' Standard Gauge, of uncoated
 * steel sheet, from memory. f1043 ic: fence tube of ASTM F1043, group IC, from memory. Fence tube by bare gauge number
 * has no published source known to us, and is left out.
 */
static const tside_trade walls[] = {
    {"sch 40 nps", "3/4", 0.113 * IN},
    {"sch 40 nps", "1", 0.133 * IN},
    {"sch 40 nps", "1-1/4", 0.140 * IN},
    {"sch 40 nps", "1-1/2", 0.145 * IN},
    {"sch 40 nps", "2", 0.154 * IN},
    {"sch 40 nps", "2-1/2", 0.203 * IN},
    {"sch 40 nps", "3", 0.216 * IN},
    {"sch 80 nps", "3/4", 0.154 * IN},
    {"sch 80 nps", "1", 0.179 * IN},
    {"sch 80 nps", "1-1/4", 0.191 * IN},
    {"sch 80 nps", "1-1/2", 0.200 * IN},
    {"sch 80 nps", "2", 0.218 * IN},
    {"sch 80 nps", "2-1/2", 0.276 * IN},
    {"sch 80 nps", "3", 0.300 * IN},
    {"f1043 ic fence", "1-5/8 in", 0.111 * IN},
    {"f1043 ic fence", "1-7/8 in", 0.120 * IN},
    {"f1043 ic fence", "2 in", 0.120 * IN},
    {"f1043 ic fence", "2-3/8 in", 0.130 * IN},
    {"f1043 ic fence", "2-1/2 in", 0.130 * IN},
    {"f1043 ic fence", "2-7/8 in", 0.160 * IN},
    {"f1043 ic fence", "3 in", 0.160 * IN},
    {"bwg", "10", 0.134 * IN},
    {"bwg", "11", 0.120 * IN},
    {"bwg", "12", 0.109 * IN},
    {"bwg", "13", 0.095 * IN},
    {"bwg", "14", 0.083 * IN},
    {"bwg", "15", 0.072 * IN},
    {"bwg", "16", 0.065 * IN},
    {"bwg", "17", 0.058 * IN},
    {"bwg", "18", 0.049 * IN},
    {"bwg", "19", 0.042 * IN},
    {"bwg", "20", 0.035 * IN},
    {"bwg", "21", 0.032 * IN},
    {"bwg", "22", 0.028 * IN},
    {"sheet", "10", 0.1345 * IN},
    {"sheet", "11", 0.1196 * IN},
    {"sheet", "12", 0.1046 * IN},
    {"sheet", "13", 0.0897 * IN},
    {"sheet", "14", 0.0747 * IN},
    {"sheet", "15", 0.0673 * IN},
    {"sheet", "16", 0.0598 * IN},
    {"sheet", "17", 0.0538 * IN},
    {"sheet", "18", 0.0478 * IN},
    {"sheet", "19", 0.0418 * IN},
    {"sheet", "20", 0.0359 * IN},
    {"sheet", "21", 0.0329 * IN},
    {"sheet", "22", 0.0299 * IN},
};

const tside_trade *tside_trades(int of_walls, int *count)
{
    *count = of_walls ? (int)(sizeof walls / sizeof *walls) : (int)(sizeof sizes / sizeof *sizes);
    return of_walls ? walls : sizes;
}

static int is_letter(char c)
{
    return c >= 'a' && c <= 'z';
}

static int is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Copies a name in small letters, without the blanks after it; positions stay. */
static tside_status small_letters(const char *text, char *name, tside_fault *fault)
{
    size_t length = strlen(text);
    while (length && text[length - 1] == ' ')
        length--;
    if (length >= TSIDE_PATH_SIZE)
        return tside_i_refuse(fault, TSIDE_NOT_FOUND, "text", "", "longer than any name");
    for (size_t i = 0; i < length; i++)
        name[i] = (char)(text[i] >= 'A' && text[i] <= 'Z' ? text[i] - 'A' + 'a' : text[i]);
    name[length] = '\0';
    return TSIDE_OK;
}

/*
 * Where the name begins after this family, any number of blanks standing for each; NULL if the text is of another
 * family. All end in a letter.
 */
static const char *after_family(const char *text, const char *family)
{
    for (text += strspn(text, " "); *family; family++) {
        if (*family == ' ')
            text += strspn(text, " ");
        else if (*text++ != *family)
            return NULL;
    }
    return is_letter(*text) ? NULL : text + strspn(text, " ");
}

/* Takes an ending such as "in", and the blanks before it, off a name that has it. */
static int drop_ending(char *name, const char *ending)
{
    size_t length = strlen(name), less = strlen(ending);
    if (length < less || strcmp(name + length - less, ending))
        return 0;
    length -= less;
    while (length && name[length - 1] == ' ')
        length--;
    name[length] = '\0';
    return 1;
}

/* Whether what follows a number is inches, however they are spelled, or nothing. */
static int is_inches(const char *unit)
{
    char one[TSIDE_PATH_SIZE] = "1";
    double metres = 0;
    memcpy(one + 1, unit, strlen(unit) + 1);
    return !unit[strspn(unit, " ")] || (tside_quantity_read(one, "m", &metres, NULL) == TSIDE_OK && metres == IN);
}

/*
 * A size is named in inches, with the unit or without; text receives it with its unit. Returns 0 if it is no such name.
 */
static int read_inches(const char *name, char *text, double *metres)
{
    size_t length = strlen(name), number = length;
    while (number && !is_digit(name[number - 1]))
        number--;
    if (length + sizeof " in" > TSIDE_PATH_SIZE || !is_inches(name + number))
        return 0;
    memcpy(text, name, number);
    memcpy(text + number, " in", sizeof " in");
    return tside_quantity_read(text, "m", metres, NULL) == TSIDE_OK;
}

static int is_gauge(const tside_trade *trade)
{
    return !strcmp(trade->family, "bwg") || !strcmp(trade->family, "sheet");
}

/* Gauges are compared as they are written, sizes as numbers: "1 3/8" is "1-3/8 in". */
static int has_name(const tside_trade *trade, const char *name)
{
    char text[TSIDE_PATH_SIZE];
    double asked, known = 0;
    if (!is_gauge(trade)) {
        if (!read_inches(name, text, &asked))
            return 0;
        read_inches(trade->name, text, &known); /* as all of them are */
        return asked == known;
    }
    tside_i_path(text, name);
    if (!drop_ending(text, "gauge"))
        drop_ending(text, "ga");
    return !strcmp(text, trade->name);
}

/* --- the names that would do: a list with commas, of those that fit whole --- */

static void append(tside_i_text *list, const char *entry)
{
    const char *comma = list->length ? ", " : "";
    if (list->length + strlen(comma) + strlen(entry) < list->size) {
        tside_i_put(list, comma);
        tside_i_put(list, entry);
    }
}

/* Such as "nps 1 (1.315 in)". */
static void append_size(tside_i_text *list, const char *family, const char *name, double value)
{
    char buffer[TSIDE_PATH_SIZE];
    tside_i_text entry = tside_i_empty(buffer, sizeof buffer);
    tside_i_put(&entry, family);
    tside_i_put(&entry, " ");
    tside_i_put(&entry, name);
    tside_i_put(&entry, " (");
    tside_i_put_number(&entry, value / IN);
    tside_i_put(&entry, " in)");
    if (entry.length < entry.size)
        append(list, buffer);
}

static int is_diameter(double metres)
{
    const tside_field *row = tside_i_round_table.rows;
    return metres >= row->low && metres <= row->high;
}

/* A name without a family: which families have it? */
static void append_homes(tside_i_text *list, int of_walls, const char *name)
{
    char inches[TSIDE_PATH_SIZE];
    double value;
    int count;
    const tside_trade *trade = tside_trades(of_walls, &count);
    for (int i = 0; i < count; i++)
        if (has_name(trade + i, name))
            append_size(list, trade[i].family, trade[i].name, trade[i].value);
    if (of_walls)
        return;
    if (read_inches(name, inches, &value))
        name = inches;
    else if (tside_quantity_read(name, "m", &value, NULL) != TSIDE_OK)
        return;
    if (is_diameter(value))
        append_size(list, "tube", name, value);
}

static void append_families(tside_i_text *list, int of_walls)
{
    int count;
    const tside_trade *trade = tside_trades(of_walls, &count);
    for (int i = 0; i < count; i++)
        if (i == 0 || strcmp(trade[i].family, trade[i - 1].family))
            append(list, trade[i].family);
    if (!of_walls)
        append(list, "tube");
}

static tside_status look_up(int of_walls, const char *name, double *value, tside_fault *fault)
{
    char would_do[TSIDE_PATH_SIZE];
    tside_i_text list = tside_i_empty(would_do, sizeof would_do);
    int count;
    const tside_trade *trade = tside_trades(of_walls, &count);
    for (int i = 0; i < count; i++) {
        const char *rest = after_family(name, trade[i].family);
        if (rest && has_name(trade + i, rest)) {
            *value = trade[i].value;
            return TSIDE_OK;
        }
        if (rest)
            append(&list, trade[i].name);
    }
    if (list.length)
        return tside_i_refuse(fault, TSIDE_NOT_FOUND, "text", would_do, "the family has no such name");
    append_homes(&list, of_walls, name + strspn(name, " "));
    if (list.length)
        return tside_i_refuse(fault, TSIDE_NOT_FOUND, "text", would_do, "the name needs its family");
    append_families(&list, of_walls);
    return tside_i_refuse(fault, TSIDE_NOT_FOUND, "text", would_do, "no such family");
}

/* True tube is named by its diameter. */
static tside_status true_size(const char *name, const char *diameter_text, double *diameter, tside_fault *fault)
{
    const tside_field *row = tside_i_round_table.rows;
    double value;
    tside_status status = tside_quantity_read(diameter_text, "m", &value, fault);
    if (status != TSIDE_OK) {
        if (fault) {
            tside_i_path(fault->field, "text");
            fault->index += (int)(diameter_text - name);
        }
        return status;
    }
    if (value < row->low)
        return tside_i_bound(fault, "text", "m", value, TSIDE_BELOW, row->low);
    if (value > row->high)
        return tside_i_bound(fault, "text", "m", value, TSIDE_ABOVE, row->high);
    *diameter = value;
    return TSIDE_OK;
}

tside_status tside_tube_size(const char *text, double *diameter, tside_fault *fault)
{
    char name[TSIDE_PATH_SIZE];
    const char *rest;
    TRY(small_letters(text, name, fault));
    rest = after_family(name, "tube");
    return rest ? true_size(name, rest, diameter, fault) : look_up(0, name, diameter, fault);
}

tside_status tside_tube_wall(const char *text, double *wall, tside_fault *fault)
{
    char name[TSIDE_PATH_SIZE];
    TRY(small_letters(text, name, fault));
    return look_up(1, name, wall, fault);
}
