/* SPDX-License-Identifier: MIT */
/* What wind asks of the side shut: by which rule, at which speeds the curtain gives way, and whether ropes are needed.
 */
#include <math.h>

#include "sheet.h"

static const char *rule_text(int rule)
{
    switch (rule) {
    case TSIDE_ASCE_7_16: return "ASCE/SEI 7-16, a gust of 3 s";
    case TSIDE_ASCE_7_22: return "ASCE/SEI 7-22, a gust of 3 s";
    case TSIDE_EN_1991_1_4: return "EN 1991-1-4:2005, a mean over 10 min";
    case TSIDE_PLAIN: return "a gust at the side, half its density times its square";
    default: return "its velocity pressure, as the file gives it";
    }
}

/* The edition's own factors, each as it stands in the file or is usual. */
static void put_factors(sheet *s)
{
    const tside_wind *wind = &s->side->wanted.side.wind;
    const tside_pressure *pressure = &s->side->plan.blowing.pressure;
    pen *p = &s->pen;
    static const char *const exposures[] = {"B", "C", "D"}, *const categories[] = {"0",   "I",  "II",
                                                                                   "III", "IV", "given"};
    if (pressure->exposure_given)
        put_words(&s->paper, "Exposure %s, %s above grade: Kz %s, Kzt %s, Kd %s, Ke %s.", exposures[wind->exposure],
                  roughly(p, s->side->plan.blowing.height), plain(p, pressure->exposure, 2),
                  plain(p, wind->topography, 2), plain(p, wind->directionality, 2), plain(p, wind->elevation, 2));
    if (pressure->mean_speed_given)
        put_words(&s->paper, "Category %s, %s above grade: mean speed %s, intensity of turbulence %s.",
                  categories[wind->category], roughly(p, s->side->plan.blowing.height),
                  quantity(p, pressure->mean_speed, "m/s"), plain(p, pressure->intensity, 2));
}

static void put_pressure(sheet *s)
{
    const tside_wind *wind = &s->side->wanted.side.wind;
    const tside_blowing *blowing = &s->side->plan.blowing;
    pen *p = &s->pen;
    put_words(&s->paper, "By %s%s%s. Net coefficient, inside less outside, %s; load factor %s.",
              rule_text((int)wind->rule), blowing->leaves_speed_given ? ": " : "",
              blowing->leaves_speed_given ? quantity(p, wind->speed, "m/s") : "", plain(p, wind->coefficient, 2),
              plain(p, wind->load_factor, 2));
    put_factors(s);
    put_quantity(s, "Velocity pressure", blowing->pressure.velocity, "Pa");
    put_quantity(s, "Net pressure on the curtain, outward", blowing->pressure.net, "Pa");
}

/* One of the three ways in which the curtain gives way. */
static void put_gives_way(sheet *s, const char *label, double net, double speed)
{
    pen *p = &s->pen;
    const char *const cells[] = {label, net > 0 ? at_most(p, net, "Pa") : "any wind",
                                 s->side->plan.blowing.leaves_speed_given && net > 0 ? at_most(p, speed, "m/s") : ""};
    put_cells(&s->paper, 3, cells);
}

static void put_loose(sheet *s)
{
    const tside_blowing *blowing = &s->side->plan.blowing;
    const char *const titles[] = {"Shut, no rope holding it", "pressure", blowing->leaves_speed_given ? "speed" : ""};
    put_columns(&s->paper, NULL, 2 | 4, 0, 3, titles);
    put_gives_way(s, "The bar leaves the wall", blowing->gives_way.leaves, blowing->leaves_speed);
    put_gives_way(s, "The roll rises above the sill", blowing->gives_way.unseals, blowing->unseals_speed);
    put_gives_way(s, "The curtain flies", blowing->gives_way.flies, blowing->flies_speed);
}

/* What wind along the house pushes at both ends' eyes. */
static void put_pushed(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    pen *p = &s->pen;
    put_words(&s->paper,
              "Wind along the house pushes the eye with %s at the drive's end, by guide and drive, and with %s at the "
              "free end; with what it pushes along the extender's tube that is in the lines of strength.",
              quantity(p, plan->drive_end.wind_eye, "N"), quantity(p, plan->free_end.wind_eye, "N"));
}

static void put_verdict(sheet *s)
{
    const tside_blowing *blowing = &s->side->plan.blowing;
    const char *ropes = s->side->wanted.side.ropes == TSIDE_NO_ROPES ? "it needs ropes" : "the ropes must hold it";
    pen *p = &s->pen;
    if (!blowing->stands_given)
        put_words(&s->paper, "In the wind asked the curtain flies by itself: %s.", ropes);
    else if (blowing->needs_ropes)
        put_words(&s->paper, "In the wind asked the side opens by itself, the roll %s outboard and %s up: %s.",
                  tape_at_least(p, blowing->stands.stand_out), tape_at_least(p, blowing->stands.raise), ropes);
    else if (blowing->stands.off)
        put_words(&s->paper, "In the wind asked it stays shut without ropes, the roll %s outboard and %s up.",
                  tape_at_least(p, blowing->stands.stand_out), tape_at_least(p, blowing->stands.raise));
    else
        put_words(&s->paper, "In the wind asked it stays shut without ropes, its bar on the wall.");
}

/* A pull out and along plumb, each with its word. */
static void put_pull(sheet *s, const char *label, double out, double up)
{
    pen *p = &s->pen;
    text words = {NULL, 0, 0};
    text_add(&words, "%s %s, %s %s", at_least(p, fabs(out), "N"), out < 0 ? "inboard" : "outboard",
             at_least(p, fabs(up), "N"), up < 0 ? "down" : "up");
    put_row(&s->paper, label, text_of(&words));
    text_free(&words);
}

static void put_greatest_pitch(sheet *s)
{
    static const char *const rulers[] = {[TSIDE_PITCH_BY_ROPE] = "the rope",
                                         [TSIDE_PITCH_BY_HOOK] = "the hooks",
                                         [TSIDE_PITCH_BY_ANCHOR] = "the anchors",
                                         [TSIDE_PITCH_BY_FILM] = "the film",
                                         [TSIDE_PITCH_BY_BAR] = "the bar"};
    const tside_rope_plan *ropes = &s->side->plan.rope;
    pen *p = &s->pen;
    if (!ropes->pitch_keeps)
        put_words(&s->paper, "A limit given is passed however near to each other the ropes are.");
    else if (ropes->rule == TSIDE_PITCH_BY_NOTHING)
        put_words(&s->paper, "Up to %s apart the ropes pass no limit that is given.", roughly(p, ropes->pitch_most));
    else
        put_words(&s->paper, "By the limits given the ropes may stand %s apart, for %s.",
                  tape_at_most(p, ropes->pitch_most), rulers[ropes->rule]);
}

static void put_ropes(sheet *s)
{
    const tside_rope_plan *ropes = &s->side->plan.rope;
    const tside_roped *bears = &ropes->bears;
    pen *p = &s->pen;
    if (!s->side->plan.rope_given)
        return;
    put_words(
        &s->paper,
        "Ropes hold against wind that presses outward alone. Rope, film, bar and rail are each reckoned as though "
        "the others gave nothing. Knots and age weaken rope; makers' ratings of hooks and anchors come first.");
    put_row(&s->paper, "Ropes apart", tape_at_most(p, bears->pitch));
    put_quantity(s, "Pull of the rope", bears->tension, "N");
    put_pull(s, "Pull on each hook", bears->hook_out, bears->hook_up);
    put_pull(s, "Pull on each anchor", bears->anchor_out, bears->anchor_up);
    put_quantity(s, "Pull of the film from rope to rope", bears->film_tension, "N/m");
    if (ropes->film_inward_given)
        put_quantity(s, "The same from bow to bow, if it pressed inward", ropes->film_inward, "N/m");
    put_row(&s->paper, "The curtain billows by", tape_at_least(p, bears->billow));
    put_greatest_pitch(s);
    if (ropes->hardest.pressure > 0)
        put_quantity(s, "Ropes press on the roll, running, with", ropes->hardest.pressure, "N/m");
    if (ropes->stays_put_speed_given)
        put_words(&s->paper, "Above %s the drive may not move the bar under its ropes: open or shut it before.",
                  at_most(p, ropes->stays_put_speed, "m/s"));
}

void put_wind(sheet *s)
{
    if (!s->side->plan.wind_given)
        return;
    put_part(&s->paper, "WIND");
    put_words(&s->paper,
              "For choosing parts, not a design: the code's own procedure, combinations and corner zones, local codes, "
              "makers' ratings and licensed practice come first. A wind that does not change: a curtain that flaps "
              "gives way sooner, and pulls more.");
    put_pressure(s);
    put_loose(s);
    put_verdict(s);
    put_ropes(s);
    put_pushed(s);
}
