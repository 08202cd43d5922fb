/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "prices.h"
#include "units.h"
#include "value.h"

enum { KIND, WHAT, SIZE, GRADE, UNIT, PRICE, MASS };

const char *const kind_names[PRICE_KINDS] = {"material", "labour", "markup",   "tax",
                                             "currency", "whose",  "validity", "terms"};

/* Of the units that are of something, which follows after "of", the sizes that they are of. */
typedef enum of_what { OF_NOTHING, OF_COUNT, OF_LENGTH, OF_WIDTH, OF_BOTH } of_what;
static const struct unit_form {
    const char *name;
    of_what of;
} units_known[PRICE_UNITS] = {
    [EACH] = {"each", OF_NOTHING},
    [HUNDRED_OF] = {"hundred", OF_NOTHING},
    [PACK] = {"pack", OF_COUNT},
    [METRE] = {"m", OF_NOTHING},
    [FOOT] = {"ft", OF_NOTHING},
    [COIL] = {"coil", OF_LENGTH},
    [METRE_WIDE] = {"m", OF_WIDTH},
    [FOOT_WIDE] = {"ft", OF_WIDTH},
    [ROLL] = {"roll", OF_BOTH},
    [SQUARE_METRE] = {"m2", OF_NOTHING},
    [SQUARE_FOOT] = {"ft2", OF_NOTHING},
    [ORDER_ONCE] = {"order", OF_NOTHING},
    [SIDE] = {"side", OF_NOTHING},
    [CUT] = {"cut", OF_NOTHING},
    [OF_MATERIALS] = {"materials", OF_NOTHING},
    [OF_LABOUR] = {"labour", OF_NOTHING},
    [OF_ALL] = {"all", OF_NOTHING},
};

/* Which units each kind of row may have. */
#define BIT(unit) (1u << (unit))
static const unsigned units_of[PRICE_KINDS] = {
    [MATERIAL] = BIT(EACH) | BIT(HUNDRED_OF) | BIT(PACK) | BIT(METRE) | BIT(FOOT) | BIT(COIL) | BIT(METRE_WIDE) |
                 BIT(FOOT_WIDE) | BIT(ROLL) | BIT(SQUARE_METRE) | BIT(SQUARE_FOOT),
    [LABOUR] = BIT(ORDER_ONCE) | BIT(SIDE) | BIT(METRE) | BIT(FOOT) | BIT(CUT),
    [MARKUP] = BIT(OF_MATERIALS) | BIT(OF_LABOUR),
    [TAX] = BIT(OF_MATERIALS) | BIT(OF_LABOUR) | BIT(OF_ALL),
};

static int has_price(price_kind kind)
{
    return kind < CURRENCY;
}

const char *unit_name(price_unit unit)
{
    return units_known[unit].name;
}

int is_sold_whole(price_unit unit)
{
    return unit == PACK || unit == COIL || unit == ROLL;
}

int is_of_size(price_unit unit)
{
    return units_known[unit].of != OF_NOTHING;
}

int is_off_a_roll(price_unit unit)
{
    return units_known[unit].of == OF_WIDTH || units_known[unit].of == OF_BOTH;
}

void add_unit(text *t, const price_row *row, int us)
{
    pen p = {.us = us};
    text_add(t, "%s", units_known[row->unit].name);
    switch (units_known[row->unit].of) {
    case OF_NOTHING: break;
    case OF_COUNT: text_add(t, " of %d", row->pack); break;
    case OF_LENGTH: text_add(t, " of %s", tape(&p, row->length)); break;
    case OF_WIDTH: text_add(t, " off a roll of %s", tape(&p, row->width)); break;
    case OF_BOTH: text_add(t, " of %s x %s", tape(&p, row->width), tape(&p, row->length)); break;
    }
}

/* --- what a row means --- */

static int index_of(const char *const *names, int count, const char *name)
{
    for (int i = 0; i < count; i++)
        if (!strcmp(names[i], name))
            return i;
    return -1;
}

/* Adds the units that a kind may have. */
static void add_units(text *why, unsigned mask)
{
    const char *before = "";
    for (int i = 0; i < PRICE_UNITS; i++)
        if (mask >> i & 1u) {
            text_add(why, "%s%s%s", before, units_known[i].name, units_known[i].of ? " of ..." : "");
            before = ", ";
        }
}

/* The unit that words begin with, and where what it is of begins; -1 where there is none. */
static int unit_of(const char *words, unsigned mask, const char **of)
{
    for (int i = 0; i < PRICE_UNITS; i++) {
        const size_t length = strlen(units_known[i].name);
        const char *rest = words + length;
        if (!(mask >> i & 1u) || strncmp(words, units_known[i].name, length) ||
            (units_known[i].of ? strncmp(rest, " of ", 4) : *rest))
            continue;
        /* "roll of 6 ft" has a width alone, and is none */
        *of = units_known[i].of ? rest + 4 : rest;
        return i;
    }
    return -1;
}

enum { GREATEST_PACK = 1000000 };

static int read_unit(price_row *p, const char *words, text *why)
{
    const char *of = "";
    double sizes[2] = {0, 0};
    const int unit = unit_of(words, units_of[p->kind], &of);
    if (!has_price(p->kind) && !*words)
        return 1;
    if (unit < 0) {
        text_add(why, "unit \"%s\" is not one of: ", words);
        add_units(why, units_of[p->kind]);
        return 0;
    }
    p->unit = (price_unit)unit;
    switch (units_known[unit].of) {
    case OF_NOTHING: return 1;
    case OF_COUNT: return read_whole_number("a pack of", of, GREATEST_PACK, &p->pack, why);
    case OF_LENGTH: return lengths_read(of, &p->length, 1, why);
    case OF_WIDTH: return lengths_read(of, &p->width, 1, why);
    case OF_BOTH: break;
    }
    if (!lengths_read(of, sizes, 2, why))
        return 0;
    p->width = sizes[0];
    p->length = sizes[1];
    return 1;
}

static int read_what(price_row *p, const cell_row *r, text *why)
{
    if (!*p->name) {
        text_add(why, "the cell \"what\" is empty");
        return 0;
    }
    if (p->kind == MATERIAL)
        return description_read(&p->what, p->name, r->cells[SIZE], r->cells[GRADE], why);
    if (*r->cells[SIZE] || *r->cells[GRADE])
        text_add(why, "size and grade are for materials: leave them empty");
    return !why->length;
}

static int read_price(price_row *p, const cell_row *r, text *why)
{
    const char *words = r->cells[PRICE];
    if (!has_price(p->kind)) {
        if (*words)
            text_add(why, "a row of the kind \"%s\" has no price: what it says stands under what", kind_names[p->kind]);
        return !*words;
    }
    return p->kind == MARKUP || p->kind == TAX ? read_share(words, &p->share, why) : read_money(words, &p->amount, why);
}

static int read_mass(price_row *p, const cell_row *r, text *why)
{
    const char *words = r->cells[MASS];
    if (!*words)
        return 1;
    if (p->kind != MATERIAL)
        text_add(why, "a mass is of a material: leave it empty");
    else if (read_quantity(words, "kg", &p->mass, why) && !(p->mass > 0))
        text_add(why, "mass \"%s\" is not above 0", words);
    return !why->length;
}

static int same_price(const price_row *one, const price_row *other)
{
    if (one->kind != other->kind)
        return 0;
    return one->kind == CURRENCY || one->kind == VALIDITY ||
           (one->kind == MATERIAL ? description_same(&one->what, &other->what) && !prices_agree(one, other)
                                  : !strcmp(one->name, other->name));
}

static int row_read(price_row *p, const cell_row *r, text *why)
{
    p->name = copy_of(r->cells[WHAT]);
    return read_what(p, r, why) && read_unit(p, r->cells[UNIT], why) && read_price(p, r, why) && read_mass(p, r, why);
}

static void add_price(void *context, const cell_row *r)
{
    prices *made = context;
    const int kind = index_of(kind_names, PRICE_KINDS, r->cells[KIND]);
    price_row p = {.line = r->line, .kind = (price_kind)kind};
    text why = {NULL, 0, 0};
    if (kind < 0) {
        text_add(&why, "kind \"%s\" is not one of: ", r->cells[KIND]);
        for (int i = 0; i < PRICE_KINDS; i++)
            text_add(&why, "%s%s", i ? ", " : "", kind_names[i]);
        cells_complain(&made->list, r->line, "%s", text_of(&why));
        text_free(&why);
        return;
    }
    if (!row_read(&p, r, &why))
        cells_complain(&made->list, r->line, "%s", text_of(&why));
    for (int i = 0; !why.length && i < made->count; i++)
        if (same_price(made->rows + i, &p)) {
            cells_complain(&made->list, r->line, "%s is ambiguous: line %d has it too",
                           p.kind == CURRENCY   ? "the currency"
                           : p.kind == VALIDITY ? "the validity"
                                                : p.name,
                           made->rows[i].line);
            break;
        }
    made->rows = grown(made->rows, (size_t)made->count, &made->room, sizeof *made->rows);
    made->rows[made->count++] = p;
    text_free(&why);
}

int prices_read(prices *made, const char *file)
{
    static const cell_form form = {"price list", "kind,what,size,grade,unit,price,mass", PRICE + 1, add_price};
    *made = (prices){.count = 0};
    return cells_read(&made->list, file, &form, made);
}

void prices_free(prices *made)
{
    for (int i = 0; i < made->count; i++) {
        free(made->rows[i].name);
        description_free(&made->rows[i].what);
    }
    free(made->rows);
}

/* --- which row prices an article --- */

int price_fits(const price_row *row, const article *bought)
{
    return row->kind == MATERIAL && description_fits(&row->what, bought);
}

/* A price of a metre or a square metre, from that of a foot: to the nearest cent, halves up. */
static int is_converted(const price_row *metric, const price_row *foot, double feet)
{
    return metric->amount == (cents)((double)foot->amount * feet + 0.5) ||
           foot->amount == (cents)((double)metric->amount / feet + 0.5);
}

int prices_agree(const price_row *one, const price_row *other)
{
    const double feet = 1 / 0.3048;
    const price_row *metric = one->unit == METRE || one->unit == SQUARE_METRE ? one : other,
                    *foot = metric == one ? other : one;
    if (metric->unit == METRE && foot->unit == FOOT)
        return is_converted(metric, foot, feet);
    return metric->unit == SQUARE_METRE && foot->unit == SQUARE_FOOT && is_converted(metric, foot, feet * feet);
}
