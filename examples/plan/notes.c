/* SPDX-License-Identifier: MIT */
/* What was assumed, and the cautions. */
#include <stdio.h>
#include <string.h>

#include "names.h"
#include "sheet.h"
#include "walk.h"

/* --- assumed, not measured: in rounds, one for each basis, as they turn up; then the choices --- */

typedef struct assumed {
    sheet *s;
    const char *basis; /* of this round */
    text bases;        /* those of earlier rounds, each in quotes */
} assumed;

static int is_given(const planned *side, const void *member)
{
    return side->wanted.given[(const char *)member - (const char *)&side->wanted.side];
}

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
    return twin && on_extender(side, TSIDE_DRIVE_END) == on_extender(side, TSIDE_FREE_END) && !is_given(side, member) &&
           !is_given(side, twin) && !memcmp(member, twin, size);
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
    return row->type != TSIDE_CHOICE && !row->optional && !row->required && !is_given(a->s->side, member);
}

static void print_usual(void *context, const char *path, const tside_field *row, const void *member)
{
    assumed *a = context;
    pen *p = &a->s->pen;
    const char *both, *place = place_of(a->s->side, path, row, member, &both);
    char label[32];
    double value;
    if (!place || !is_usual(a, row, member) || strcmp(row->basis, a->basis))
        return;
    value = row->type == TSIDE_COUNT ? *(const int *)member : *(const double *)member;
    snprintf(label, sizeof label, "  %-12s  ",
             !strcmp(row->unit, "m") && value < 0.1 ? fine(p, value) : quantity(p, value, row->unit));
    text_say(a->s->out, label, "%s (%s%s)", row->meaning, both, place);
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
    if (place && row->type == TSIDE_CHOICE && !is_given(a->s->side, member))
        text_add(&a->bases, "%s%s%s %s", a->bases.length ? "; " : "", both, place,
                 choice_text(row, *(const int *)member));
}

void print_assumed(sheet *s)
{
    const tside_side *side = &s->side->wanted.side;
    assumed a = {s, NULL, {NULL, 0, 0}};
    print_title(s, "ASSUMED, NOT MEASURED");
    text_wrap(s->out, "  ", "The file does not give these; they are usual values. Measure what you can, and give it.");
    for (;;) {
        a.basis = NULL;
        walk(TSIDE_KIND_SIDE, side, next_basis, &a);
        if (!a.basis)
            break;
        text_say(s->out, "  ", "Basis: %s.", a.basis);
        walk(TSIDE_KIND_SIDE, side, print_usual, &a);
        text_add(&a.bases, "\"%s\"", a.basis);
    }
    text_cut(&a.bases, 0);
    walk(TSIDE_KIND_SIDE, side, add_choice, &a);
    if (a.bases.length)
        text_say(s->out, "  ", "Choices that the file does not make: %s.", text_of(&a.bases));
    text_free(&a.bases);
}

/* --- cautions --- */

void print_cautions(sheet *s)
{
    static const char *const cautions[] = {
        "Keep hands, hair and sleeves clear of roll and rail while the bar turns: they draw in.",
        "Power off and locked out, or the crank tied, before any work on bar, drive or guide.",
        "A wound bar turns back and drops when its drive is taken off: lower it to shut first, or prop and tie it.",
        "Do not run it in wind, nor when curtain, bar or guide is frozen.",
        "Work at the hip and the eyes from a ladder that is footed and tied, or from a platform.",
        "Ask for buried services before anything is driven or dug.",
        "Limits are set and watched by two people, one at each end; nobody stands where a foot swings.",
        "Drilling a bow may void its maker's rating: ask first.",
        "This sheet is for choosing parts and setting out, not a certificate.",
        "Local codes, makers' ratings and instructions, and licensed practice (structural, electrical) come first.",
    };
    static const char *const electric[] = {
        "Supply off and locked out before any wire is touched; wiring, fuse and cable by local code and licensed "
        "practice.",
        "A cord that follows the drive is flexible cord, tied off so that nothing can catch, crush or wind it up.",
    };
    print_title(s, "CAUTIONS");
    for (size_t i = 0; i < sizeof cautions / sizeof *cautions; i++)
        text_wrap(s->out, "  ! ", cautions[i]);
    for (size_t i = 0; s->side->wanted.side.drive.kind == TSIDE_MOTOR && s->side->plan.run_given &&
                       i < sizeof electric / sizeof *electric;
         i++)
        text_wrap(s->out, "  ! ", electric[i]);
}
