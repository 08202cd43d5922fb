/* SPDX-License-Identifier: MIT */
/* How far apart ropes may stand: where the first share of a limit reaches 1. Source: derivation, as ropes and bays. */
#include "statics/pitch.h"

#include "base/field.h"
#include "base/root.h"
#include "statics/bay.h"
#include "statics/rope.h"

#define LEAST 0.05 /* m, of a rope's own pitch */
#define MOST 6.0   /* m */

enum { LIMITS = TSIDE_PITCH_BY_NOTHING };

/* A rope and a bay that are tried at one pitch after the other. */
typedef struct held {
    tside_rope rope;
    tside_bay bay;
    double overhang; /* m, of the bay beyond the end of the upper hooks */
    int rule;        /* at the last pitch tried */
} held;

#define TOO_FAR 1e6 /* the share of what would belly by more than half its span */

/* What ropes and film bear at their pitch: of one bay, which is as long as it. */
static tside_status bear(const tside_rope *rope, double pressure, tside_roped *roped, tside_fault *fault)
{
    tside_i_strung strung;
    tside_i_rope_string(rope, rope->pitch, &strung);
    return tside_i_rope_bears(rope, &strung, pressure, roped, fault);
}

static void share_of_ropes(held *h, double share[LIMITS])
{
    const tside_give film = h->rope.film;
    tside_roped roped = {0};
    if (bear(&h->rope, h->bay.pressure, &roped, NULL) != TSIDE_OK) {
        h->rope.film = (tside_give){.by = TSIDE_BY_SAG, .sag = 0.5}; /* which any film bears: is it the rope then? */
        share[bear(&h->rope, h->bay.pressure, &roped, NULL) == TSIDE_OK ? TSIDE_PITCH_BY_FILM : TSIDE_PITCH_BY_ROPE] =
            TOO_FAR;
        h->rope.film = film;
        return;
    }
    share[TSIDE_PITCH_BY_ROPE] = roped.rope_utilisation; /* 0 where there is no limit */
    share[TSIDE_PITCH_BY_HOOK] = roped.hook_utilisation;
    share[TSIDE_PITCH_BY_ANCHOR] = roped.anchor_utilisation;
    share[TSIDE_PITCH_BY_FILM] = roped.film_utilisation;
}

/* The greatest share at a pitch; whose it is becomes the rule. A zigzag's last anchor stands half a pitch in. */
static double greatest_share(held *h, double pitch)
{
    double share[LIMITS] = {0};
    tside_bay_load load = {0};
    h->rope.pitch = h->bay.pitch = pitch;
    h->bay.overhang = h->overhang + (h->rope.run == TSIDE_ROPE_ZIGZAG ? pitch / 2 : 0);
    share_of_ropes(h, share);
    tside_i_bay_bears(&h->bay, &load, NULL);      /* which it refuses at no pitch, or at every one */
    share[TSIDE_PITCH_BY_BAR] = load.utilisation; /* 0 of an unknown grade */
    h->rule = 0;
    for (int i = 1; i < LIMITS; i++)
        if (share[i] > share[h->rule])
            h->rule = i;
    return share[h->rule];
}

/* Where between two pitches the greatest share is 1: its function searches in its turn, and is asked here. */
static double pitch_sought(held *h, double least_share, double most_share)
{
    tside_i_bracket bracket = tside_i_bracket_of(LEAST, least_share - 1, MOST, most_share - 1);
    while (bracket.open)
        tside_i_bracket_narrow(&bracket, greatest_share(h, bracket.place) - 1);
    return bracket.place;
}

int tside_i_pitch_most(const tside_rope *rope, const tside_bay *bay, double *pitch, tside_pitch_rule *rule)
{
    held h = {*rope, *bay, bay->overhang, 0};
    double least = greatest_share(&h, LEAST), most = greatest_share(&h, MOST);
    if (least > 1)
        return 0;
    *pitch = MOST;
    *rule = TSIDE_PITCH_BY_NOTHING;
    if (most > 1) {
        *pitch = pitch_sought(&h, least, most);
        greatest_share(&h, *pitch * (1 + SLACK)); /* beyond where what bellies too far still holds */
        *rule = (tside_pitch_rule)h.rule;
    }
    return 1;
}

/* What is refused at any pitch is refused here, but for what bellies too far. */
static tside_status check(const tside_rope *rope, const tside_bay *bay, tside_fault *fault)
{
    tside_roped roped;
    tside_bay_load load;
    tside_rope own = *rope;
    tside_bay at = *bay;
    own.pitch = at.pitch = LEAST;
    TRY(tside_i_check(&tside_i_rope_table, "rope", &own, fault));
    TRY(tside_i_check(&tside_i_bay_table, "bay", &at, fault));
    TRY(tside_i_within(fault, "rope", tside_i_rope_check(&own, fault)));
    TRY(tside_i_within(fault, "rope", bear(&own, bay->pressure, &roped, fault)));
    return tside_i_settle(&tside_i_bay_table, "bay", tside_i_within(fault, "bay", tside_i_bay_bears(&at, &load, fault)),
                          fault);
}

tside_status tside_pitch_most(const tside_rope *rope, const tside_bay *bay, double *pitch, tside_pitch_rule *rule,
                              tside_fault *fault)
{
    TRY(check(rope, bay, fault));
    if (!tside_i_pitch_most(rope, bay, pitch, rule))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "bay.pressure", "",
                              "a limit is passed however near to each other the ropes are");
    return TSIDE_OK;
}
