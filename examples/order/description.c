/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "description.h"
#include "memory.h"
#include "names.h"
#include "value.h"

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
static int is_of_thread(const description *d, const char *cell)
{
    return *cell == 'M' && !is_tube(d->what);
}

/* One measure: a tube's may have trade names, "fence 1-3/8 in", "bwg 14", which the side of a square one has not. */
static int read_measure(description *d, const char *words, int of_thread, text *why)
{
    const char *number = words + (of_thread && !d->measure_count);
    const int i = d->measure_count;
    const char *name = d->what->measures[i];
    double *value = d->measures + i;
    int good;
    if (i && !strcmp(words, NO_MEASURE)) {
        d->measure_count++;
        return 1;
    }
    good = of_thread && is_count(number)                ? read_millimetres(number, value, why)
           : !strcmp(name, "wall")                      ? read_wall(words, value, why)
           : !i && !strcmp(d->what->name, "round tube") ? read_diameter(words, value, why)
                                                        : read_quantity(words, d->what->units[i], value, why);
    if (good && !(*value > 0))
        text_add(why, "%s \"%s\" is not above 0", name, words);
    d->measure_count++;
    return !why->length;
}

/*
 * "1.315 in x 0.083 in x 24 ft": the measures of a thing in their order, the last ones left out where they do not
 * matter.
 */
static int read_sizes(description *d, const char *cell, text *why)
{
    const int of_thread = is_of_thread(d, cell);
    text one = {NULL, 0, 0};
    int good = 1;
    while (good && *cell) {
        const char *next = strstr(cell, " x ");
        text_cut(&one, 0);
        text_add_bytes(&one, cell, next ? (size_t)(next - cell) : strlen(cell));
        if (d->measure_count == measures_of(d->what)) {
            text_add(why, "more measures than a %s has, %d", d->what->name, measures_of(d->what));
            good = 0;
        } else {
            good = read_measure(d, text_of(&one), of_thread, why);
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

static int read_grade(description *d, text *why)
{
    const tside_field *rows[] = {row_named(TSIDE_KIND_MATERIAL, "metal", NULL),
                                 row_named(TSIDE_KIND_MATERIAL, "grade", NULL)};
    const char *stress = strchr(d->grade, ' ');
    text ignored = {NULL, 0, 0};
    int good = !*d->grade;
    if (*d->grade && !is_tube(d->what)) {
        text_add(why, "a %s has no grade", d->what->name);
        return 0;
    }
    for (int i = 0; i < 2; i++)
        good |= choice_of(rows[i], d->grade) >= (i ? TSIDE_A53_B : 0);
    /* a metal of which no more is known, "steel -", or its yield: "steel 50 ksi" */
    if (!good && stress && !strcmp(stress + 1, NO_MEASURE)) {
        d->grade[stress - d->grade] = '\0';
        d->of_unknown_grade = good = choice_of(rows[0], d->grade) >= 0;
    }
    if (!good && stress && read_quantity(stress + 1, "Pa", &d->yield, &ignored) && d->yield > 0) {
        d->grade[stress - d->grade] = '\0';
        good = choice_of(rows[0], d->grade) >= 0;
    }
    text_free(&ignored);
    if (!good)
        text_add(why,
                 "grade \"%s\" is no metal, no grade, and no metal with its yield, such as steel, A500_B_shaped, or "
                 "steel 50 ksi",
                 d->grade);
    return good;
}

int description_read(description *made, const char *name, const char *size, const char *grade, text *why)
{
    *made = (description){.what = thing_named(name), .grade = copy_of(grade)};
    if (made->what)
        return read_sizes(made, size, why) && read_grade(made, why);
    text_add(why, "\"%s\" is nothing that is ordered; what is:", name);
    for (int i = 0; i < thing_count; i++)
        text_add(why, "%s%s", !*things[i].name ? "" : i ? ", " : " ", things[i].name);
    return 0;
}

int lengths_read(const char *words, double *lengths, int count, text *why)
{
    for (int i = 0; i < count; i++) {
        const char *next = strstr(words, " x ");
        text one = {NULL, 0, 0};
        int good;
        text_add_bytes(&one, words, next && i < count - 1 ? (size_t)(next - words) : strlen(words));
        good = read_quantity(text_of(&one), "m", lengths + i, why);
        if (good && !(lengths[i] > 0))
            text_add(why, "\"%s\" is not above 0", text_of(&one));
        text_free(&one);
        if (why->length)
            return 0;
        words = next ? next + 3 : "";
    }
    return 1;
}

void description_free(description *made)
{
    free(made->grade);
}

int description_same(const description *one, const description *other)
{
    int same = one->what == other->what && one->measure_count == other->measure_count &&
               fabs(one->yield - other->yield) <= 1e-6 * one->yield &&
               one->of_unknown_grade == other->of_unknown_grade && !strcmp(one->grade, other->grade);
    for (int i = 0; i < one->measure_count; i++)
        same &= fabs(one->measures[i] - other->measures[i]) < 1e-9;
    return same;
}

/* --- which articles it is --- */

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

static int grade_fits(const description *row, const article *bought)
{
    const tside_field *metal = row_named(TSIDE_KIND_MATERIAL, "metal", NULL),
                      *grade = row_named(TSIDE_KIND_MATERIAL, "grade", NULL);
    const tside_material *material = &bought->material;
    const int is_metal = !strcmp(row->grade, choice_text(metal, (int)material->metal));
    if (!*row->grade)
        return 1;
    if (row->of_unknown_grade)
        return is_metal && material->grade == TSIDE_GRADE_UNKNOWN;
    if (row->yield > 0)
        return is_metal && material->grade == TSIDE_GRADE_GIVEN && fabs(material->yield / row->yield - 1) < 5e-3;
    return is_metal || !strcmp(row->grade, choice_text(grade, (int)material->grade));
}

int description_fits(const description *row, const article *bought)
{
    if (row->what != bought->what)
        return 0;
    for (int i = 0; i < row->measure_count; i++)
        if (!measure_fits(row->what, i, bought->measures[i], row->measures[i]))
            return 0;
    return grade_fits(row, bought);
}
