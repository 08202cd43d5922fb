/* SPDX-License-Identifier: MIT */
/* What was assumed, not measured: in rounds, one for each basis, as they turn up; then the choices. */
#include <string.h>

#include "names.h"
#include "sheet.h"
#include "walk.h"

typedef struct assumed {
    sheet *s;
    const char *basis; /* of this round */
    text bases;        /* those of earlier rounds, each in quotes */
} assumed;

/* Where an end's field is, the same field at the other end; else NULL. */
static const void *twin_of(const planned *side, const char *path, const void *member)
{
    const ptrdiff_t apart = (const char *)&side->wanted.side.free_end - (const char *)&side->wanted.side.drive_end;
    if (!strncmp(path, "drive_end.", 10))
        return (const char *)member + apart;
    return strncmp(path, "free_end.", 9) ? NULL : (const char *)member - apart;
}

/* 1 where both ends are hung alike and neither gives this field, which is then said once of both. */
static int is_of_both(const planned *side, const char *path, const tside_field *row, const void *member)
{
    const void *twin = twin_of(side, path, member);
    const size_t size = row->type == TSIDE_NUMBER ? sizeof(double) : sizeof(int);
    return twin && on_extender(side, TSIDE_DRIVE_END) == on_extender(side, TSIDE_FREE_END) &&
           !file_gives(&side->wanted, member) && !file_gives(&side->wanted, twin) && !memcmp(member, twin, size);
}

/* The path as it is printed: "both ends: guide.chain" where it is of both, NULL where that has been said. */
static const char *place_of(const planned *side, const char *path, const tside_field *row, const void *member,
                            const char **both)
{
    *both = "";
    if (!is_of_both(side, path, row, member))
        return path;
    *both = "both ends: ";
    return strncmp(path, "free_end.", 9) ? path + strlen("drive_end.") : NULL;
}

/* A usual value in use: not given, and not one that may be absent. */
static int is_usual(const assumed *a, const tside_field *row, const void *member)
{
    return row->type != TSIDE_CHOICE && !row->optional && !row->required && !file_gives(&a->s->side->wanted, member);
}

/* Holes have their drills' names, other small lengths decimals. */
static const char *usual_text(pen *p, const tside_field *row, double value)
{
    if (strcmp(row->unit, "m") || value >= 0.1)
        return quantity(p, value, row->unit);
    return is_hole(row) ? trade_size(p, value) : fine(p, value);
}

static void put_usual(void *context, const char *path, const tside_field *row, const void *member)
{
    assumed *a = context;
    pen *p = &a->s->pen;
    const char *both, *place = place_of(a->s->side, path, row, member, &both);
    text meaning = {NULL, 0, 0};
    double value;
    if (!place || !is_usual(a, row, member) || strcmp(row->basis, a->basis))
        return;
    value = number_of(row, member);
    text_add(&meaning, "%s (%s%s)", row->meaning, both, place);
    put_value(&a->s->paper, usual_text(p, row, value), text_of(&meaning));
    text_free(&meaning);
}

static int has_been(const assumed *a, const char *basis)
{
    text quoted = {NULL, 0, 0};
    int has;
    text_add(&quoted, "\"%s\"", basis);
    has = strstr(text_of(&a->bases), text_of(&quoted)) != NULL;
    text_free(&quoted);
    return has;
}

static void next_basis(void *context, const char *path, const tside_field *row, const void *member)
{
    assumed *a = context;
    (void)path;
    if (!a->basis && is_usual(a, row, member) && !has_been(a, row->basis))
        a->basis = row->basis;
}

static void add_choice(void *context, const char *path, const tside_field *row, const void *member)
{
    assumed *a = context;
    const char *both, *place = place_of(a->s->side, path, row, member, &both);
    if (place && row->type == TSIDE_CHOICE && !file_gives(&a->s->side->wanted, member))
        text_add(&a->bases, "%s%s%s %s", a->bases.length ? "; " : "", both, place,
                 choice_text(row, *(const int *)member));
}

void put_assumed(sheet *s)
{
    const tside_side *side = &s->side->wanted.side;
    assumed a = {s, NULL, {NULL, 0, 0}};
    put_part(&s->paper, "ASSUMED, NOT MEASURED");
    put_words(&s->paper, "The file does not give these; they are usual values. Measure what you can, and give it.");
    for (;;) {
        a.basis = NULL;
        walk(TSIDE_KIND_SIDE, side, next_basis, &a);
        if (!a.basis)
            break;
        put_words(&s->paper, "Basis: %s.", a.basis);
        walk(TSIDE_KIND_SIDE, side, put_usual, &a);
        text_add(&a.bases, "\"%s\"", a.basis);
    }
    text_cut(&a.bases, 0);
    walk(TSIDE_KIND_SIDE, side, add_choice, &a);
    if (a.bases.length)
        put_words(&s->paper, "Choices that the file does not make: %s.", text_of(&a.bases));
    text_free(&a.bases);
}
