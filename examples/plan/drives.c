/* SPDX-License-Identifier: MIT */
/* Which drive of a list would do, and why the others are passed over. */
#include <math.h>
#include <stdio.h>

#include "sentence.h"
#include "sheet.h"

static tside_finding finding_of(const tside_drive_choice *choice)
{
    return (tside_finding){choice->finding, TSIDE_DRIVE_END, -1, choice->value, choice->bound};
}

static void put_choice(sheet *s, int i)
{
    const judged *one = s->side->choices + i;
    const tside_finding finding = finding_of(&one->choice);
    text words = {NULL, 0, 0};
    text_add(&words, "%s: ", s->side->drives->name[i]);
    switch (one->choice.fit) {
    case TSIDE_DRIVE_CHOSEN: text_add(&words, "this one"); break;
    case TSIDE_DRIVE_LARGER:
        text_add(&words, "it would serve, and is no smaller; it is rated for %s",
                 quantity(&s->pen, one->choice.value, "N m"));
        break;
    case TSIDE_DRIVE_FAILS: add_sentence(&words, &s->pen, &finding); break;
    case TSIDE_DRIVE_REFUSED:
        text_add(&words, "no side can be planned with it: ");
        add_refusal(&words, &s->pen, &one->why);
        break;
    }
    put_point(&s->paper, "%s", text_of(&words));
    text_free(&words);
}

/* By what factor a drive that fails misses its bound. */
static double excess(const tside_drive_choice *choice)
{
    return choice->bound > 0 ? choice->value / choice->bound : HUGE_VAL;
}

/* The one that comes nearest to serving; -1 where each is refused. */
static int nearest(const planned *side)
{
    int best = -1;
    for (int i = 0; i < side->drives->count; i++) {
        const tside_drive_choice *choice = &side->choices[i].choice;
        if (choice->fit == TSIDE_DRIVE_FAILS && (best < 0 || excess(choice) < excess(&side->choices[best].choice)))
            best = i;
    }
    return best;
}

/* What a drive like this one would have to have. */
static const char *missing(pen *p, const tside_drive_choice *choice, char *words, size_t size)
{
    const char *value = quantity(p, choice->value, tside_finding_unit((int)choice->finding));
    switch (choice->finding) {
    case TSIDE_FINDING_STALLS: snprintf(words, size, "a stall torque, on its supply and cable, above %s", value); break;
    case TSIDE_FINDING_LIMIT_TURNS: snprintf(words, size, "a limit at %s or beyond", value); break;
    case TSIDE_FINDING_LONG_RUN: snprintf(words, size, "leave to run for %s at a time", value); break;
    case TSIDE_FINDING_TURNS_BACK: snprintf(words, size, "a self-locking gear, or a brake"); break;
    default: snprintf(words, size, "a rated torque of at least %s", value); break;
    }
    return words;
}

void put_drives(sheet *s)
{
    const planned *side = s->side;
    const int near = side->choices ? nearest(side) : -1;
    char words[128];
    if (!side->choices)
        return;
    put_part(&s->paper, "SMALLEST DRIVE OF THE LIST");
    if (side->smallest_drive.status == TSIDE_OK)
        put_words(&s->paper, "%s, rated for %s. The sheet is for the drive that the file gives.",
                  side->drives->name[(int)side->smallest_drive.value],
                  quantity(&s->pen, side->drives->drive[(int)side->smallest_drive.value].rated_torque, "N m"));
    else if (near >= 0)
        put_words(&s->paper, "None serves. Nearest comes %s, which would need %s.", side->drives->name[near],
                  missing(&s->pen, &side->choices[near].choice, words, sizeof words));
    else
        put_words(&s->paper, "None serves: no side can be planned with any of them.");
    for (int i = 0; i < side->drives->count; i++)
        put_choice(s, i);
}
