/* SPDX-License-Identifier: MIT */
/* How far apart ropes may stand: where the first share of a limit reaches 1. Source: derivation, as ropes and bays. */
#include <tunnelside/pitch.h>

#include "base/field.h"
#include "base/root.h"
#include "statics/bay.h"
#include "statics/rope.h"

#define LEAST 0.05 /* m, of a rope's own pitch */
#define MOST 6.0   /* m */

enum { LIMITS = TSIDE_PITCH_BY_NOTHING };

typedef struct held {
    const tside_rope *rope;
    const tside_bay *bay;
} held;

#define TOO_FAR 1e6 /* the share of what would belly by more than half its span */

/* Of ropes and film at a pitch: of one bay, which is as long as it. */
static void share_of_ropes(const held *h, double pitch, double share[LIMITS])
{
    tside_rope rope = *h->rope;
    tside_roped roped = {0};
    rope.pitch = pitch;
    if (tside_i_rope_bears(&rope, pitch, h->bay->pressure, &roped, NULL) != TSIDE_OK) {
        rope.film = (tside_give){.by = TSIDE_BY_SAG, .sag = 0.5}; /* whose span any film bears: is it the rope then? */
        share[tside_i_rope_bears(&rope, pitch, h->bay->pressure, &roped, NULL) == TSIDE_OK ? TSIDE_PITCH_BY_FILM
                                                                                           : TSIDE_PITCH_BY_ROPE] =
            TOO_FAR;
        return;
    }
    share[TSIDE_PITCH_BY_ROPE] = roped.rope_utilisation; /* 0 where there is no limit */
    share[TSIDE_PITCH_BY_HOOK] = roped.hook_utilisation;
    share[TSIDE_PITCH_BY_ANCHOR] = roped.anchor_utilisation;
    share[TSIDE_PITCH_BY_FILM] = roped.film_utilisation;
}

/* The greatest share at a pitch; rule: receives whose it is. */
static double greatest_share(const held *h, double pitch, tside_pitch_rule *rule)
{
    double share[LIMITS] = {0};
    tside_bay bay = *h->bay;
    tside_bay_load load = {0};
    int greatest = 0;
    bay.pitch = pitch;
    share_of_ropes(h, pitch, share);
    if (tside_i_bay_bears(&bay, &load, NULL) == TSIDE_OK)
        share[TSIDE_PITCH_BY_BAR] = load.utilisation; /* 0 of an unknown grade */
    for (int i = 1; i < LIMITS; i++)
        if (share[i] > share[greatest])
            greatest = i;
    *rule = (tside_pitch_rule)greatest;
    return share[greatest];
}

/* Where between two pitches the greatest share is 1: its function searches in its turn, and is asked here. */
static double pitch_sought(const held *h, double least_share, double most_share)
{
    tside_i_bracket bracket = tside_i_bracket_of(LEAST, least_share - 1, MOST, most_share - 1);
    tside_pitch_rule ignored;
    while (bracket.open)
        tside_i_bracket_narrow(&bracket, greatest_share(h, bracket.place, &ignored) - 1);
    return bracket.place;
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
    TRY(tside_i_within(fault, "rope", tside_i_rope_bears(&own, LEAST, bay->pressure, &roped, fault)));
    return tside_i_settle(&tside_i_bay_table, "bay", tside_i_within(fault, "bay", tside_i_bay_bears(&at, &load, fault)),
                          fault);
}

tside_status tside_pitch_most(const tside_rope *rope, const tside_bay *bay, double *pitch, tside_pitch_rule *rule,
                              tside_fault *fault)
{
    const held h = {rope, bay};
    tside_pitch_rule rules;
    double found = MOST, least, most;
    TRY(check(rope, bay, fault));
    least = greatest_share(&h, LEAST, &rules);
    most = greatest_share(&h, MOST, &rules);
    if (least > 1)
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, "bay.pressure", "",
                              "a limit is passed however near to each other the ropes are");
    if (most > 1) {
        found = pitch_sought(&h, least, most);
        greatest_share(&h, found * (1 + SLACK), &rules); /* beyond where what bellies too far still holds */
    } else
        rules = TSIDE_PITCH_BY_NOTHING;
    TRY(ANSWER_NUMBER(found, pitch, fault));
    *rule = rules;
    return TSIDE_OK;
}
