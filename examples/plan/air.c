/* SPDX-License-Identifier: MIT */
/* What air the side lets through, how warm the house gets, and how far to turn for what is asked. */
#include "sheet.h"

/* Whose openings air goes by, and what drives it. */
static void put_weather(sheet *s)
{
    const tside_air *air = &s->side->wanted.side.air;
    pen *p = &s->pen;
    const char *opened = air->sides == TSIDE_AIR_ONE     ? "the other shut"
                         : air->sides == TSIDE_AIR_ALIKE ? "the other opened alike"
                                                         : "the other as its file says";
    put_words(&s->paper,
              "This side open as far as it goes, %s; %s %% of the openings blocked; mean wind %s%s; %s degC without.",
              opened, plain(p, 100 * air->blocked, 0), quantity(p, air->wind, "m/s"),
              air->sides == TSIDE_AIR_ONE ? " 10 m up" : " at the openings", plain(p, air->outside, 0));
    if (air->warmth == TSIDE_AIR_IN_THE_SUN)
        put_words(
            &s->paper,
            "Sun of %s on level ground, of which %s %% comes through the film and %s %% of that evaporates water.",
            quantity(p, air->sun, "W/m2"), plain(p, 100 * air->transmission, 0), plain(p, 100 * air->evaporation, 0));
}

static void put_flows(sheet *s)
{
    const tside_airing *airing = &s->side->plan.airing;
    pen *p = &s->pen;
    put_quantity(s, "Clear opening of this side", airing->area, "m2");
    put_words(&s->paper,
              "The sides' openings are %s %% of the floor%s%s%s; a rule of the trade has 15 to 20 %% for the "
              "sides, and as much for the roof (ASAE EP406, as quoted by a trade article).",
              plain(p, 100 * airing->floor_share, 0), airing->vent_share > 0 ? ", the roof vent's " : "",
              airing->vent_share > 0 ? plain(p, 100 * airing->vent_share, 0) : "", airing->vent_share > 0 ? " %" : "");
    put_quantity(s, "Flow by wind", airing->flow_wind, "m3/s");
    put_quantity(s, "Flow by warmth, through the sides", airing->flow_warmth, "m3/s");
    if (airing->vent_share > 0)
        put_quantity(s, "Flow by warmth, to the roof vent", airing->flow_vent, "m3/s");
    put_quantity(s, "Changes of the whole air, by the greatest", airing->changes, "/s");
    put_quantity(s, "Warmer within than without", airing->rise, "K");
}

/* How far open, and after how many turns, what is asked is had. */
static void put_asked(sheet *s, const char *label, double asked, const char *unit, int had, double opening,
                      double turns)
{
    pen *p = &s->pen;
    if (!had)
        put_words(&s->paper, "For %s %s: open as far as it goes is not enough.", label, quantity(p, asked, unit));
    else if (turns > 0)
        put_words(&s->paper, "For %s %s: open %s, %s turns of the drive from shut.", label, quantity(p, asked, unit),
                  tape_at_least(p, opening), plain(p, turns, 1));
    else
        put_words(&s->paper, "For %s %s: this side may stay shut.", label, quantity(p, asked, unit));
}

void put_air(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_air *air = &s->side->wanted.side.air;
    if (!plan->air_given)
        return;
    put_part(&s->paper, "AIR");
    put_words(
        &s->paper,
        "For comparing openings, and no promise of a temperature: a crop, screens, neighbouring houses and a wind "
        "along the house let less through. Of wind and warmth the greater counts; they do not add up. One change "
        "a minute in summer is common practice, no published source.");
    put_weather(s);
    put_flows(s);
    if (air->changes_asked_given)
        put_asked(s, "changes of", air->changes_asked, "/s", plan->turns_for_changes_given, plan->airing.for_changes,
                  plan->turns_for_changes);
    if (air->warmth == TSIDE_AIR_IN_THE_SUN && air->rise_asked_given)
        put_asked(s, "a rise of", air->rise_asked, "K", plan->turns_for_rise_given, plan->airing.for_rise,
                  plan->turns_for_rise);
    put_words(&s->paper, "Warmed by %s, the bar grows by %s, at the free end: its collar must let it.",
              quantity(&s->pen, air->bar_warming, "K"), fine(&s->pen, plan->bar_growth));
}
