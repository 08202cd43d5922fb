/* SPDX-License-Identifier: MIT */
/*
 * A line under pressure: an arc, of one tension. Source: derivation, equilibrium of a piece of it, square to it and
 * along it.
 */
#include "statics/span.h"

#include "base/arc.h"
#include "base/field.h"
#include "base/root.h"

const char *const tside_i_known_by[] = {"sag", "stretch"};

/* clang-format off */
static const tside_field span_rows[] = {
    {REQUIRED_FROM(tside_span, chord, "m", 0.001, 1000, "from hold to hold")},
    {REQUIRED_FROM(tside_span, load, "N/m", 1e-6, 1e6, "load square to the line: of film its pressure, by the metre of its width")},
    {KNOWN_BY(tside_span, TSIDE_BY_STRETCH)},
    {REQUIRED_FROM(tside_span, sag, "m", 1e-6, 500, "sag in mid span"), BY_SAG(tside_span)},
    GIVE_ROWS(tside_span, 1),
};
/* clang-format on */
TABLE(tside_i_span_table, span_rows);

/* clang-format off */
static const tside_field belly_rows[] = {
    {RESULT(tside_belly, half_angle, "rad", "from the chord to the line at either hold")},
    {RESULT(tside_belly, radius, "m", "radius of the arc")},
    {RESULT(tside_belly, tension, "N", "tension, one along the line")},
    {RESULT(tside_belly, sag, "m", "sag in mid span")},
    {RESULT(tside_belly, length, "m", "along the line, stretched")},
    {RESULT(tside_belly, square, "N", "what either hold bears square to the chord")},
    {RESULT(tside_belly, along, "N", "what either hold bears along the chord")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_belly_table, belly_rows, tside_belly);

#define LEAST_SLACK 1e-12 /* of what does not stretch: of less there is no digit left to tell its tension by */

/* What stretch asks: longer by e before it stretches (a pretension: shorter), 1 + e, and k = q c/(2 K). */
typedef struct stretch {
    double e, whole, k;
} stretch;

/* b/sin b = (1 + e)(1 + k/sin b), times sin b. */
static double too_flat(double b, const void *context)
{
    const stretch *s = context;
    return tside_i_arc_less_chord(b) - s->e * sin(b) - s->whole * s->k;
}

static tside_status stretch_of(const tside_span *span, stretch *s, tside_fault *fault)
{
    double pull = span->pretension_given ? span->pretension : 0, slack = span->slack_given ? span->slack : 0;
    if (!span->stiffness_given && pull > 0)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "pretension", "stiffness",
                              "a line that was pulled has stretched: give its stiffness");
    if (slack > 0 && pull > 0)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "pretension", "slack", "a line that hangs slack is not pulled");
    if (!span->stiffness_given && slack < LEAST_SLACK)
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "slack", "stiffness",
                              "a line with neither slack nor stretch has no tension that would hold it");
    s->k = span->stiffness_given ? span->load * span->chord / (2 * span->stiffness) : 0;
    s->e = slack;
    s->whole = 1 + slack;
    if (pull > 0) { /* 1 + e = 1/(1 + P/K) */
        s->e = -pull / (span->stiffness + pull);
        s->whole = span->stiffness / (span->stiffness + pull);
    }
    return TSIDE_OK;
}

/* Refused by the slack, or where none would do by the load. */
static tside_status too_slack(const tside_span *span, const stretch *s, tside_fault *fault)
{
    double slack = TSIDE_PI / 2 / (1 + s->k) - 1; /* with which it bellies by half its chord */
    if (s->e > 0 && slack >= 0)
        REFUSE(fault, TSIDE_OUT_OF_REACH, "slack", "load", "it would belly by more than half its chord", "1",
               span->slack, TSIDE_ABOVE, slack, 0);
    REFUSE(fault, TSIDE_OUT_OF_REACH, "load", "stiffness", "it would belly by more than half its chord", "N/m",
           span->load, TSIDE_ABOVE, 2 * span->stiffness / span->chord * (TSIDE_PI / 2 / s->whole - 1), 0);
}

static tside_status by_stretch(const tside_span *span, double *b, tside_fault *fault)
{
    stretch s;
    double flattest;
    TRY(stretch_of(span, &s, fault));
    if (too_flat(TSIDE_PI / 2, &s) < -SLACK)
        return too_slack(span, &s, fault);
    /* From its least value on the function rises; before, where it falls from 0 if nothing stretches, is no root. */
    flattest = s.e > 0 ? atan(sqrt(s.e * (2 + s.e))) : 0; /* there cos b = 1/(1 + e) */
    *b = tside_i_rising_root(too_flat, &s, flattest, TSIDE_PI / 2);
    return TSIDE_OK;
}

static tside_status by_sag(const tside_span *span, double *b, tside_fault *fault)
{
    if (span->sag > span->chord / 2)
        REFUSE(fault, TSIDE_CONTRADICTS, "sag", "chord", "it would belly by more than half its chord", "m", span->sag,
               TSIDE_ABOVE, span->chord / 2, 0);
    *b = 2 * atan(2 * span->sag / span->chord);
    return TSIDE_OK;
}

tside_status tside_i_span_belly(const tside_span *span, tside_belly *belly, tside_fault *fault)
{
    double b = 0, c = span->chord, q = span->load;
    TRY(span->by == TSIDE_BY_SAG ? by_sag(span, &b, fault) : by_stretch(span, &b, fault));
    belly->half_angle = b;
    belly->radius = c / (2 * sin(b));
    belly->tension = q * belly->radius;
    belly->sag = c / 2 * tan(b / 2);
    belly->length = 2 * belly->radius * b;
    belly->square = q * c / 2;
    belly->along = belly->tension * cos(b);
    return TSIDE_OK;
}

tside_status tside_span_belly(const tside_span *span, tside_belly *belly, tside_fault *fault)
{
    tside_belly made;
    tside_status status;
    TRY(tside_i_check(&tside_i_span_table, "span", span, fault));
    status = tside_i_within(fault, "span", tside_i_span_belly(span, &made, fault));
    TRY(tside_i_settle(&tside_i_span_table, "span", status, fault));
    return ANSWER(&tside_i_belly_table, made, belly, fault);
}
