/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "letter.h"
#include "message.h"

/* --- dates, by the Gregorian calendar --- */

typedef struct day {
    int year, month, day;
} day;

static int days_in(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const int leaps = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leaps);
}

static int read_date(const char *words, day *made)
{
    static const char form[] = "0000-00-00";
    for (size_t i = 0; i < sizeof form; i++)
        if (form[i] == '0' ? words[i] < '0' || words[i] > '9' : words[i] != form[i])
            return 0;
    *made = (day){atoi(words), atoi(words + 5), atoi(words + 8)};
    return made->year > 0 && made->month >= 1 && made->month <= 12 && made->day >= 1 &&
           made->day <= days_in(made->year, made->month);
}

int is_date(const char *words)
{
    day made;
    return read_date(words, &made);
}

static void add_days(day *d, int days)
{
    for (d->day += days; d->day > days_in(d->year, d->month);) {
        d->day -= days_in(d->year, d->month);
        d->year += d->month == 12;
        d->month = d->month % 12 + 1;
    }
}

/* --- the letter --- */

enum { LONGEST_VALID = 3650 }; /* days */

/* "30 days" */
static int read_days(const char *words, int *days)
{
    const char *unit = after_whole(words, LONGEST_VALID, days);
    return unit && (!strcmp(unit, " days") || !strcmp(unit, " day"));
}

static const price_row *row_of(const prices *list, price_kind kind, int nth)
{
    for (int i = 0; i < list->count; i++)
        if (list->rows[i].kind == kind && !nth--)
            return list->rows + i;
    return NULL;
}

const char *letter_row(const letter *l, price_kind kind, int nth)
{
    const price_row *row = row_of(l->list, kind, nth);
    return row ? row->name : NULL;
}

int letter_write(letter *made, const char *number, const char *date, prices *list)
{
    static const price_kind needed[] = {WHOSE, VALIDITY, TERMS};
    const price_row *validity = row_of(list, VALIDITY, 0);
    day until = {0, 0, 0};
    int days = 0;
    *made = (letter){.number = number, .date = date, .list = list};
    for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
        if (!row_of(list, needed[i], 0)) {
            say("%s: a customer's copy needs a row of the kind \"%s\"", list->list.file, kind_names[needed[i]]);
            list->list.bad++;
        }
    if (validity && !read_days(validity->name, &days))
        cells_complain(&list->list, validity->line, "\"%s\" is no validity: wanted days from 1 to %d, such as 30 days",
                       validity->name, LONGEST_VALID);
    if (list->list.bad || !read_date(date, &until))
        return 0;
    add_days(&until, days);
    snprintf(made->valid_until, sizeof made->valid_until, "%04d-%02d-%02d", until.year % 10000, until.month, until.day);
    return 1;
}
