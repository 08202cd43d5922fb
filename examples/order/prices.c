/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "document.h"
#include "memory.h"
#include "message.h"
#include "names.h"
#include "prices.h"
#include "value.h"

enum { KIND, WHAT, SIZE, GRADE, UNIT, PRICE, COLUMNS };
enum { MOST_ROWS = 10000 }; /* each is compared with all others */

static const char header[] = "kind,what,size,grade,unit,price";
const char *const kind_names[PRICE_KINDS] = {"material", "labour", "markup", "tax", "currency"};
static const char *const unit_names[PRICE_UNITS] = {"each",  "hundred", "m",   "ft",        "m2",     "ft2",
                                                    "order", "side",    "cut", "materials", "labour", "all"};

/* Which units each kind of row may have. */
#define BIT(unit) (1u << (unit))
static const unsigned units_of[PRICE_KINDS] = {
    [MATERIAL] = BIT(EACH) | BIT(HUNDRED_OF) | BIT(METRE) | BIT(FOOT) | BIT(SQUARE_METRE) | BIT(SQUARE_FOOT),
    [LABOUR] = BIT(ORDER_ONCE) | BIT(SIDE) | BIT(METRE) | BIT(FOOT) | BIT(CUT),
    [MARKUP] = BIT(OF_MATERIALS) | BIT(OF_LABOUR),
    [TAX] = BIT(OF_MATERIALS) | BIT(OF_LABOUR) | BIT(OF_ALL),
    [CURRENCY] = 0,
};

const char *unit_name(price_unit unit)
{
    return unit_names[unit];
}

void prices_complain(prices *list, int line, const char *format, ...)
{
    text words = {NULL, 0, 0};
    va_list arguments;
    if (list->bad++ >= MOST_COMPLAINTS)
        return;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    say("%s:%d: %s", list->file, line, text_of(&words));
    text_free(&words);
}

/* --- rows of cells, by RFC 4180: a cell in quotes may hold commas, line ends, and quotes twice --- */

typedef struct csv_row {
    char *cells[COLUMNS]; /* without blanks around them; "" where the row is shorter */
    int line, count;
} csv_row;

static char *trimmed(const text *words)
{
    char *copy = printable(text_of(words)), *from = copy + strspn(copy, " ");
    size_t length = strlen(from);
    while (length && from[length - 1] == ' ')
        length--;
    memmove(copy, from, length);
    copy[length] = '\0';
    return copy;
}

/*
 * Reads one cell, and steps over what ends it; returns the comma, or '\n' at a row's end. open: receives 1 where a
 * quote is not closed.
 */
static char read_cell(const char **at, int *line, text *cell, int *open)
{
    int quoted = 0;
    text_cut(cell, 0);
    for (; **at; ++*at) {
        const char c = **at;
        *line += c == '\n';
        if (c == '"' && quoted && (*at)[1] == '"')
            text_add_bytes(cell, ++*at, 1);
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == ',' || c == '\n')) {
            ++*at;
            return c;
        } else if (c != '\r' || quoted)
            text_add_bytes(cell, *at, 1);
    }
    *open = quoted;
    return '\n';
}

static int read_row(prices *list, const char **at, int *line, csv_row *made)
{
    text cell = {NULL, 0, 0};
    char end = ',';
    int open = 0, extra = 0;
    *made = (csv_row){.line = *line};
    for (int i = 0; end == ','; i++) {
        char *words;
        end = read_cell(at, line, &cell, &open);
        words = trimmed(&cell);
        if (i < COLUMNS) {
            made->cells[i] = words;
            made->count = i + 1;
            continue;
        }
        extra |= *words != '\0';
        free(words);
    }
    text_free(&cell);
    for (int i = made->count; i < COLUMNS; i++)
        made->cells[i] = copy_of("");
    if (open)
        prices_complain(list, made->line, "a quote is not closed");
    else if (extra && *made->cells[0] != '#')
        prices_complain(list, made->line, "more than %d cells: a cell with a comma in it needs quotes", COLUMNS);
    return !open && (!extra || *made->cells[0] == '#');
}

static int is_passed_over(const csv_row *r)
{
    int filled = 0;
    for (int i = 0; i < COLUMNS; i++)
        filled |= *r->cells[i] != '\0';
    return !filled || *r->cells[0] == '#';
}

static void free_row(csv_row *r)
{
    for (int i = 0; i < COLUMNS; i++)
        free(r->cells[i]);
}

/* --- what a row means --- */

static int index_of(const char *const *names, int count, const char *name)
{
    for (int i = 0; i < count; i++)
        if (!strcmp(names[i], name))
            return i;
    return -1;
}

static const thing *thing_named(const char *name)
{
    for (int i = 0; *name && i < thing_count; i++)
        if (!strcmp(things[i].name, name))
            return things + i;
    return NULL;
}

static int measures_of(const thing *what)
{
    int count = 0;
    while (count < MEASURES && what->measures[count])
        count++;
    return count;
}

/* So many whole millimetres. */
static int read_millimetres(const char *words, double *value, text *why)
{
    text in_mm = {NULL, 0, 0};
    int good;
    text_add(&in_mm, "%s mm", words);
    good = read_quantity(text_of(&in_mm), "m", value, why);
    text_free(&in_mm);
    return good;
}

static int is_count(const char *words)
{
    return *words && !words[strspn(words, "0123456789")];
}

/* "M8 x 120" or "M8 x 120 mm": of a metric thread, not of a tube. */
static int is_of_thread(const price_row *p, const char *cell)
{
    return *cell == 'M' && !(measures_of(p->what) > 1 && !strcmp(p->what->measures[1], "wall"));
}

/* One measure: a tube's may have trade names, "fence 1-3/8 in", "bwg 14", which the side of a square one has not. */
static int read_measure(price_row *p, const char *words, int of_thread, text *why)
{
    const char *number = words + (of_thread && !p->measure_count);
    const int i = p->measure_count;
    const char *name = p->what->measures[i];
    double *value = p->measures + i;
    int good;
    if (i && !strcmp(words, NO_MEASURE)) {
        p->measure_count++;
        return 1;
    }
    good = of_thread && is_count(number)                ? read_millimetres(number, value, why)
           : !strcmp(name, "wall")                      ? read_wall(words, value, why)
           : !i && !strcmp(p->what->name, "round tube") ? read_diameter(words, value, why)
                                                        : read_quantity(words, p->what->units[i], value, why);
    if (good && !(*value > 0))
        text_add(why, "%s \"%s\" is not above 0", name, words);
    p->measure_count++;
    return !why->length;
}

/*
 * "1.315 in x 0.083 in x 24 ft": the measures of a thing in their order, the last ones left out where they do not
 * matter.
 */
static int read_sizes(price_row *p, const char *cell, text *why)
{
    const int of_thread = is_of_thread(p, cell);
    text one = {NULL, 0, 0};
    int good = 1;
    while (good && *cell) {
        const char *next = strstr(cell, " x ");
        text_cut(&one, 0);
        text_add_bytes(&one, cell, next ? (size_t)(next - cell) : strlen(cell));
        if (p->measure_count == measures_of(p->what)) {
            text_add(why, "more measures than a %s has, %d", p->what->name, measures_of(p->what));
            good = 0;
        } else {
            good = read_measure(p, text_of(&one), of_thread, why);
        }
        cell = next ? next + 3 : "";
    }
    text_free(&one);
    return good;
}

/* Which choice a grade or a metal is, written then as the library writes it; -1 if none. */
static int choice_of(const tside_field *row, char *words)
{
    double choice = -1;
    if (tside_field_read(row, words, &choice, NULL) != TSIDE_OK)
        return -1;
    strcpy(words, row->choices[(int)choice]); /* the same but for capitals */
    return (int)choice;
}

static int read_grade(price_row *p, text *why)
{
    const tside_field *rows[] = {row_named(TSIDE_KIND_MATERIAL, "metal", NULL),
                                 row_named(TSIDE_KIND_MATERIAL, "grade", NULL)};
    const char *stress = strchr(p->grade, ' ');
    text ignored = {NULL, 0, 0};
    int good = !*p->grade;
    if (*p->grade && (measures_of(p->what) < MEASURES || strcmp(p->what->measures[1], "wall"))) {
        text_add(why, "a %s has no grade", p->what->name);
        return 0;
    }
    for (int i = 0; i < 2; i++)
        good |= choice_of(rows[i], p->grade) >= (i ? TSIDE_A53_B : 0);
    /* a metal of which no more is known, "steel -", or its yield: "steel 50 ksi" */
    if (!good && stress && !strcmp(stress + 1, NO_MEASURE)) {
        p->grade[stress - p->grade] = '\0';
        p->of_unknown_grade = good = choice_of(rows[0], p->grade) >= 0;
    }
    if (!good && stress && read_quantity(stress + 1, "Pa", &p->yield, &ignored) && p->yield > 0) {
        p->grade[stress - p->grade] = '\0';
        good = choice_of(rows[0], p->grade) >= 0;
    }
    text_free(&ignored);
    if (!good)
        text_add(why,
                 "grade \"%s\" is no metal, no grade, and no metal with its yield, such as steel, A500_B_shaped, or "
                 "steel 50 ksi",
                 p->grade);
    return good;
}

/* Adds the names that would do. */
static void add_names(text *why, const char *const *names, int count, unsigned mask)
{
    const char *before = "";
    for (int i = 0; i < count; i++)
        if (mask >> i & 1u) {
            text_add(why, "%s%s", before, names[i]);
            before = ", ";
        }
}

static int read_unit(price_row *p, const char *words, text *why)
{
    const int unit = index_of(unit_names, PRICE_UNITS, words);
    if (p->kind == CURRENCY)
        return 1;
    if (unit >= 0 && units_of[p->kind] >> unit & 1u) {
        p->unit = (price_unit)unit;
        return 1;
    }
    text_add(why, "unit \"%s\" is not one of: ", words);
    add_names(why, unit_names, PRICE_UNITS, units_of[p->kind]);
    return 0;
}

static int read_what(price_row *p, const csv_row *r, text *why)
{
    if (!*p->name) {
        text_add(why, "the cell \"what\" is empty");
        return 0;
    }
    if (p->kind != MATERIAL) {
        if (*r->cells[SIZE] || *p->grade)
            text_add(why, "size and grade are for materials: leave them empty");
        return !why->length;
    }
    p->what = thing_named(p->name);
    if (!p->what) {
        text_add(why, "\"%s\" is nothing that is ordered; what is:", p->name);
        for (int i = 0; i < thing_count; i++)
            text_add(why, "%s%s", !*things[i].name ? "" : i ? ", " : " ", things[i].name);
        return 0;
    }
    return read_sizes(p, r->cells[SIZE], why) && read_grade(p, why);
}

static int read_price(price_row *p, const csv_row *r, text *why)
{
    const char *words = r->cells[PRICE];
    if (p->kind == CURRENCY) {
        if (*words)
            text_add(why, "a currency has no price: its name stands under what");
        return !*words;
    }
    return p->kind == MARKUP || p->kind == TAX ? read_share(words, &p->share, why) : read_money(words, &p->amount, why);
}

static int same_price(const price_row *one, const price_row *other)
{
    int same = one->kind == other->kind && one->measure_count == other->measure_count &&
               fabs(one->yield - other->yield) <= 1e-6 * one->yield &&
               one->of_unknown_grade == other->of_unknown_grade && !strcmp(one->grade, other->grade) &&
               (one->kind == CURRENCY || !strcmp(one->name, other->name));
    for (int i = 0; i < one->measure_count; i++)
        same &= fabs(one->measures[i] - other->measures[i]) < 1e-9;
    return same;
}

static void add_price(prices *list, const csv_row *r)
{
    const int kind = index_of(kind_names, PRICE_KINDS, r->cells[KIND]);
    price_row p = {.line = r->line, .kind = (price_kind)kind};
    text why = {NULL, 0, 0};
    if (kind < 0) {
        text_add(&why, "kind \"%s\" is not one of: ", r->cells[KIND]);
        add_names(&why, kind_names, PRICE_KINDS, ~0u);
        prices_complain(list, r->line, "%s", text_of(&why));
        text_free(&why);
        return;
    }
    p.name = copy_of(r->cells[WHAT]);
    p.grade = copy_of(r->cells[GRADE]);
    if (!read_what(&p, r, &why) || !read_unit(&p, r->cells[UNIT], &why) || !read_price(&p, r, &why))
        prices_complain(list, r->line, "%s", text_of(&why));
    for (int i = 0; !why.length && i < list->count; i++)
        if (same_price(list->rows + i, &p)) {
            prices_complain(list, r->line, "%s is ambiguous: line %d has it too",
                            p.kind == CURRENCY ? "the currency" : p.name, list->rows[i].line);
            break;
        }
    list->rows = grown(list->rows, (size_t)list->count, &list->room, sizeof *list->rows);
    list->rows[list->count++] = p;
    text_free(&why);
}

static int is_header(const csv_row *r)
{
    text words = {NULL, 0, 0};
    int is;
    for (int i = 0; i < COLUMNS; i++)
        text_add(&words, "%s%s", i ? "," : "", r->cells[i]);
    is = !strcmp(text_of(&words), header);
    text_free(&words);
    return is;
}

int prices_read(prices *list, const char *file)
{
    text content = {NULL, 0, 0};
    const char *why, *at;
    int line = 1, headed = 0;
    *list = (prices){.file = file};
    why = read_whole(file, &content);
    if (!why && strlen(text_of(&content)) != content.length)
        why = "not a text";
    if (why) {
        say("%s: %s", file, why);
        list->bad++;
    }
    at = after_mark(&content);
    while (!why && *at && (headed || !list->bad)) {
        csv_row r;
        const int good = read_row(list, &at, &line, &r);
        if (good && !is_passed_over(&r)) {
            if (list->count == MOST_ROWS) {
                prices_complain(list, r.line, "more rows than a list may have, %d", MOST_ROWS);
                at = "";
            } else if (headed)
                add_price(list, &r);
            else if (!is_header(&r))
                prices_complain(list, r.line, "no price list: wanted the header %s", header);
            headed = 1;
        }
        free_row(&r);
    }
    if (!headed && !list->bad)
        prices_complain(list, 1, "no price list: wanted the header %s", header);
    if (list->bad > MOST_COMPLAINTS)
        say("%s: and %d more", file, list->bad - MOST_COMPLAINTS);
    text_free(&content);
    return !list->bad;
}

void prices_free(prices *list)
{
    for (int i = 0; i < list->count; i++) {
        free(list->rows[i].name);
        free(list->rows[i].grade);
    }
    free(list->rows);
}

/* --- which row prices an article --- */

/*
 * Sections to 0.05 mm, lengths to 1 mm, a torque to a hundredth of a percent, other measures to half a percent, or of
 * the last digit.
 */
static int measure_fits(const thing *what, int i, double asked, double given)
{
    const char *name = what->measures[i];
    const int section = !strcmp(name, "size") || !strcmp(name, "wall"), length = !strcmp(what->units[i], "m"),
              torque = !strcmp(what->units[i], "N m");
    return fabs(asked - given) <= (section ? 5e-5 : length ? 1e-3 : torque ? 1e-4 * asked : fmax(5e-3 * asked, 5e-4));
}

static int grade_fits(const price_row *row, const article *bought)
{
    const tside_field *metal = row_named(TSIDE_KIND_MATERIAL, "metal", NULL),
                      *grade = row_named(TSIDE_KIND_MATERIAL, "grade", NULL);
    if (!*row->grade)
        return 1;
    if (row->of_unknown_grade)
        return !strcmp(row->grade, choice_text(metal, (int)bought->material.metal)) &&
               bought->material.grade == TSIDE_GRADE_UNKNOWN;
    if (row->yield > 0)
        return !strcmp(row->grade, choice_text(metal, (int)bought->material.metal)) &&
               bought->material.grade == TSIDE_GRADE_GIVEN && fabs(bought->material.yield / row->yield - 1) < 5e-3;
    return !strcmp(row->grade, choice_text(metal, (int)bought->material.metal)) ||
           !strcmp(row->grade, choice_text(grade, (int)bought->material.grade));
}

int price_fits(const price_row *row, const article *bought)
{
    if (row->kind != MATERIAL || row->what != bought->what)
        return 0;
    for (int i = 0; i < row->measure_count; i++)
        if (!measure_fits(row->what, i, bought->measures[i], row->measures[i]))
            return 0;
    return grade_fits(row, bought);
}
