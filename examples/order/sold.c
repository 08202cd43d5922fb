/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>

#include "memory.h"
#include "sold.h"
#include "units.h"

#define FITS 1e-9 /* m: what is longer by no more still fits */

/* --- coils --- */

/* Rope is knotted and wire begun anew at any hook; a chain and a cord are of one piece. */
static int is_one_piece(const article *bought)
{
    return bought->what == things + TSIDE_ITEM_CHAIN || bought->what == things + TSIDE_ITEM_CORD;
}

/* So many coils that each piece comes from one; of unequal pieces as if all were the longest. */
static int sell_coils(const price_row *row, const article *bought, sold *made, text *why)
{
    pen p = {.us = 0};
    if (is_one_piece(bought)) {
        const double each = floor((row->length + FITS) / bought->longest);
        if (each < 1) {
            text_add(why, "%s: a piece of %s is longer than a coil of %s", bought->what->name,
                     tape(&p, bought->longest), tape(&p, row->length));
            return 0;
        }
        made->quantity = ceil(bought->pieces / each);
    } else {
        made->quantity = ceil((bought->metres - FITS) / row->length);
    }
    made->left = made->quantity * row->length - bought->metres;
    return 1;
}

/* --- rolls: sheets side by side in bands across the roll, band after band --- */

typedef struct sheet {
    double across, along; /* m */
} sheet;

typedef struct band {
    double length, room; /* m, along the roll; across it, not yet taken */
} band;

/* Along the roll by its length; turned where it is too wide. Returns 0 where it fits neither way. */
static int lay(const price_row *row, double width, double length, sheet *made)
{
    const double longest = row->unit == ROLL ? row->length : HUGE_VAL;
    if (width <= row->width + FITS && length <= longest + FITS)
        *made = (sheet){width, length};
    else if (length <= row->width + FITS && width <= longest + FITS)
        *made = (sheet){length, width};
    else
        return 0;
    return 1;
}

static int lay_all(const price_row *row, const article *const *articles, int count, sheet *sheets, text *why)
{
    pen p = {.us = 0};
    int laid = 0;
    for (int i = 0; i < count; i++)
        for (int k = 0; k < articles[i]->count; k++)
            if (!lay(row, articles[i]->measures[1], articles[i]->measures[2], sheets + laid++)) {
                text_add(why, "%s: a sheet of %s x %s is not cut from a ", articles[i]->what->name,
                         tape(&p, articles[i]->measures[1]), tape(&p, articles[i]->measures[2]));
                add_unit(why, row, 0);
                return 0;
            }
    return 1;
}

static int longest_first(const void *one, const void *other)
{
    const double a = ((const sheet *)one)->along, b = ((const sheet *)other)->along;
    return (a < b) - (a > b);
}

/* Each sheet, longest first, into the first band that has room across, else into a new one; returns how many. */
static int fill_bands(const sheet *sheets, int count, double width, band *bands)
{
    int made = 0;
    for (int i = 0; i < count; i++) {
        int k = 0;
        while (k < made && bands[k].room + FITS < sheets[i].across)
            k++;
        if (k == made)
            bands[made++] = (band){sheets[i].along, width};
        bands[k].room -= sheets[i].across;
    }
    return made;
}

/* Each band, longest first, from the first roll that has its length, else from a new one; returns how many. */
static int fill_rolls(const band *bands, int count, double length, double *rolls)
{
    int made = 0;
    for (int i = 0; i < count; i++) {
        int k = 0;
        while (k < made && rolls[k] + FITS < bands[i].length)
            k++;
        if (k == made)
            rolls[made++] = length;
        rolls[k] -= bands[i].length;
    }
    return made;
}

static void roll_off(const price_row *row, const sheet *sheets, int count, sold *made)
{
    band *bands = take_memory((size_t)count * sizeof *bands);
    double *rolls = take_memory((size_t)count * sizeof *rolls), running = 0;
    const int banded = fill_bands(sheets, count, row->width, bands);
    for (int i = 0; i < banded; i++)
        running += bands[i].length;
    if (row->unit == ROLL) {
        made->quantity = fill_rolls(bands, banded, row->length, rolls);
        made->left = made->quantity * row->length - running;
    } else {
        made->quantity = row->unit == FOOT_WIDE ? running / 0.3048 : running;
    }
    free(bands);
    free(rolls);
}

static int sell_sheets(const price_row *row, const article *const *articles, int count, sold *made, text *why)
{
    int pieces = 0, good;
    sheet *sheets;
    for (int i = 0; i < count; i++)
        pieces += articles[i]->count;
    sheets = take_memory((size_t)pieces * sizeof *sheets);
    good = lay_all(row, articles, count, sheets, why);
    if (good) {
        qsort(sheets, (size_t)pieces, sizeof *sheets, longest_first);
        roll_off(row, sheets, pieces, made);
    }
    free(sheets);
    return good;
}

/* --- all units --- */

/* Of a row's unit, were it sold in any part. */
static double needed(const price_row *row, const article *bought)
{
    switch (row->unit) {
    case METRE: return bought->metres;
    case FOOT: return bought->metres / 0.3048;
    case SQUARE_METRE: return bought->square_metres;
    case SQUARE_FOOT: return bought->square_metres / (0.3048 * 0.3048);
    case COIL: return bought->count ? 0 : bought->metres;
    case ROLL:
    case METRE_WIDE:
    case FOOT_WIDE: return bought->square_metres;
    default: return bought->count;
    }
}

int sell(const price_row *row, const article *const *articles, int count, sold *made, text *why)
{
    const article *bought = articles[0];
    *made = (sold){needed(row, bought), 0};
    if (!(made->quantity > 0)) {
        text_add(why, "%s is not bought by ", bought->what->name);
        add_unit(why, row, 0);
        text_add(why, " here: by %s", bought->count ? "each" : "m or ft");
        return 0;
    }
    if (is_off_a_roll(row->unit))
        return sell_sheets(row, articles, count, made, why);
    if (row->unit == COIL)
        return sell_coils(row, bought, made, why);
    if (row->unit == PACK) {
        made->quantity = ceil((double)bought->count / row->pack);
        made->left = made->quantity * row->pack - bought->count;
    }
    return 1;
}
