/* SPDX-License-Identifier: MIT */
/*
 * Ropes over the curtain: what they and their hooks bear in wind, and their way over the roll. Source: derivation,
 * equilibrium and plane geometry; what carries what is this library's choice.
 */
#include "statics/rope.h"

#include "base/field.h"
#include "shape/travel.h"
#include "statics/span.h"

static const char *const runs[] = {"straight", "zigzag"};

/* clang-format off */
static const tside_field give_rows[] = {
    {KNOWN_BY(tside_give, TSIDE_BY_SAG)},
    {NUMBER(tside_give, sag, "1", FROM(1e-4), TO(0.5), 0.05, OURS, "sag in mid span over the span"), BY_SAG(tside_give)},
    GIVE_ROWS(tside_give, 0.5),
};
/* clang-format on */
TABLE(tside_i_give_table, give_rows);

/* clang-format off */
static const tside_field rope_rows[] = {
    {CHOICE(tside_rope, run, runs, TSIDE_ROPES_STRAIGHT, "how the ropes run: straight from hook to hook below, or to and fro")},
    {REQUIRED(tside_rope, upper_x, "m", TO(50), "upper hooks, outboard of the tunnel's centreline")},
    {REQUIRED(tside_rope, upper_y, "m", TO(20), "upper hooks, above grade")},
    {REQUIRED(tside_rope, lower_x, "m", TO(50), "anchors, outboard of the tunnel's centreline")},
    {NUMBER(tside_rope, lower_y, "m", FROM(-5), TO(20), 0, OURS, "anchors, above grade")},
    {REQUIRED_FROM(tside_rope, pitch, "m", 0.05, 6, "from hook to hook of a row, at most")},
    {GROUP(tside_rope, line, give, "how the rope gives")},
    {GROUP(tside_rope, film, give, "how the film gives from rope to rope")},
    {NUMBER(tside_rope, ends, "m", FROM(0), TO(10), 0.5, PRACTICE, "rope for tying at each of its ends")},
    {OPTIONAL(tside_rope, rope_limit, "N", ABOVE(0), TO(1e6), "allowable tension of the rope, with its knots and its age")},
    {OPTIONAL(tside_rope, hook_limit, "N", ABOVE(0), TO(1e6), "allowable pull on an upper hook")},
    {OPTIONAL(tside_rope, anchor_limit, "N", ABOVE(0), TO(1e6), "allowable pull on an anchor")},
    {OPTIONAL(tside_rope, film_limit, "N/m", ABOVE(0), TO(1e6), "allowable tension of the film")},
};
/* clang-format on */
TABLE(tside_i_rope_table, rope_rows);

/* clang-format off */
static const tside_field roped_rows[] = {
    {RESULT_COUNT(tside_roped, ropes, "how many ropes there are")},
    {RESULT_COUNT(tside_roped, upper_hooks, "how many upper hooks there are")},
    {RESULT_COUNT(tside_roped, lower_hooks, "how many anchors there are")},
    {RESULT(tside_roped, pitch, "m", "from hook to hook of a row")},
    {RESULT(tside_roped, leg, "m", "from hook to hook along a rope")},
    {RESULT(tside_roped, slant, "rad", "slant of a leg from plumb, seen square to the side")},
    {RESULT(tside_roped, lean, "rad", "lean of the hooks' line from plumb, foot outboard positive")},
    {RESULT(tside_roped, load, "N/m", "load on a leg, square to it")},
    {RESULT(tside_roped, tension, "N", "tension of the rope")},
    {RESULT(tside_roped, sag, "m", "sag of the rope")},
    {RESULT(tside_roped, film_tension, "N/m", "tension of the film from rope to rope")},
    {RESULT(tside_roped, film_sag, "m", "sag of the film from rope to rope")},
    {RESULT(tside_roped, billow, "m", "how far the curtain billows: rope and film")},
    {RESULT(tside_roped, hook_out, "N", "pull on an upper hook, outboard")},
    {RESULT(tside_roped, hook_up, "N", "pull on an upper hook, up")},
    {RESULT(tside_roped, anchor_out, "N", "pull on an anchor, outboard")},
    {RESULT(tside_roped, anchor_up, "N", "pull on an anchor, up")},
    {RESULT(tside_roped, pull, "N", "pull on hook or anchor, whatever its direction")},
    {RESULT(tside_roped, end_along, "N", "pull along the house where a zigzag's row ends")},
    {RESULT(tside_roped, edge_pull, "N/m", "pull of the film on its fixed ends, by the metre of height")},
    {RESULT(tside_roped, slack, "1", "by how much of its span a leg is longer before it stretches; negative where it is pulled")},
    {RESULT(tside_roped, rope_length, "m", "length of all ropes, with what ties them")},
    {RESULT_OPTIONAL(tside_roped, rope_utilisation, "1", "tension of the rope over its limit")},
    {RESULT_OPTIONAL(tside_roped, hook_utilisation, "1", "pull on a hook over its limit")},
    {RESULT_OPTIONAL(tside_roped, anchor_utilisation, "1", "pull on an anchor over its limit")},
    {RESULT_OPTIONAL(tside_roped, film_utilisation, "1", "tension of the film over its limit")},
};
/* clang-format on */
TABLE(tside_i_roped_table, roped_rows);

/* clang-format off */
static const tside_field over_rows[] = {
    {RESULT(tside_rope_over, turns, "turn", "turns of the bar since shut")},
    {RESULT(tside_rope_over, path, "m", "path of the rope over the roll, in the cross-section")},
    {RESULT(tside_rope_over, wrap, "rad", "wrap of the rope about the roll")},
    {RESULT(tside_rope_over, slack, "1", "by how much of its span a leg must be longer to pass over the roll")},
    {RESULT_COUNT(tside_rope_over, stopped, "1 where a rope that does not stretch is too short, and stops the roll")},
    {RESULT(tside_rope_over, tension, "N", "tension of the rope; 0 where it is slack, or stopped")},
    {RESULT(tside_rope_over, pressure, "N/m", "force of the ropes on the roll, by the metre of bar")},
};
/* clang-format on */
TABLE(tside_i_rope_over_table, over_rows);

/* --- where ropes run --- */

double tside_i_give_slack(const tside_give *line)
{
    const double half_angle = 2 * atan(2 * line->sag);
    if (line->by == TSIDE_BY_SAG)
        return half_angle / sin(half_angle) - 1;
    if (line->pretension_given && line->stiffness_given)
        return 1 / (1 + line->pretension / line->stiffness) - 1;
    return line->slack_given ? line->slack : 0;
}

tside_status tside_i_rope_check(const tside_rope *rope, tside_fault *fault)
{
    if (!(rope->upper_y > rope->lower_y))
        REFUSE(fault, TSIDE_CONTRADICTS, "upper_y", "lower_y", "the upper hooks must be above the lower ones", "m",
               rope->upper_y, TSIDE_NOT_ABOVE, rope->lower_y, rope->upper_y - rope->lower_y);
    return TSIDE_OK;
}

void tside_i_rope_string(const tside_rope *rope, double length, tside_i_strung *l)
{
    const double down = rope->upper_y - rope->lower_y, out = rope->lower_x - rope->upper_x;
    const int stretches = rope->line.by == TSIDE_BY_STRETCH && rope->line.stiffness_given;
    l->zigzag = rope->run == TSIDE_ROPE_ZIGZAG;
    l->bays = (int)fmax(ceil(length / rope->pitch - FITS), 1);
    l->upper_x = rope->upper_x;
    l->upper_y = rope->upper_y;
    l->pitch = length / l->bays;
    l->h = hypot(out, down);
    l->lean = atan2(out, down);
    l->leg = l->zigzag ? hypot(l->h, l->pitch / 2) : l->h;
    l->slant = l->zigzag ? atan2(l->pitch / 2, l->h) : 0; /* its cosine has no digit left of a small one */
    l->unstretched = l->leg * (1 + tside_i_give_slack(&rope->line));
    l->stiffness = stretches ? rope->line.stiffness : 0;
}

#define MOST_LENGTH 1e6 /* m: its bays an int still counts */

static tside_status check(const tside_rope *rope, double length, tside_fault *fault)
{
    TRY(tside_i_check(&tside_i_rope_table, "rope", rope, fault));
    TRY(tside_i_argument(fault, "length", "m", length, 0, 1));
    if (length > MOST_LENGTH)
        return tside_i_bound(fault, "length", "m", length, TSIDE_ABOVE, MOST_LENGTH);
    return tside_i_within(fault, "rope", tside_i_rope_check(rope, fault));
}

/* --- what they bear --- */

tside_status tside_i_give_belly(const tside_give *line, const char *name, const char *other, double span, double load,
                                tside_belly *belly, tside_fault *fault)
{
    const tside_span s = {span,
                          load,
                          line->by,
                          line->sag * span,
                          line->slack_given,
                          line->slack,
                          line->stiffness_given,
                          line->stiffness,
                          line->pretension_given,
                          line->pretension};
    tside_status status = tside_i_span_belly(&s, belly, fault);
    if (status == TSIDE_OUT_OF_REACH) /* its load is no field */
        return tside_i_refuse(fault, status, name, other, "it would belly by more than half its span");
    return tside_i_within(fault, name, status);
}

/* What a hook bears of all its legs: n square to the hooks' plane, A along it. */
static void resolve(const tside_i_strung *l, double n, double A, tside_roped *roped)
{
    roped->hook_out = n * cos(l->lean) + A * sin(l->lean);
    roped->hook_up = n * sin(l->lean) - A * cos(l->lean);
    roped->anchor_out = n * cos(l->lean) - A * sin(l->lean);
    roped->anchor_up = n * sin(l->lean) + A * cos(l->lean);
    roped->pull = hypot(n, A);
}

/* A zigzag's upper row has a hook more than its lower one, so that the rope begins and ends above. */
static void count_pieces(const tside_rope *rope, const tside_i_strung *l, tside_roped *roped)
{
    const int legs = l->zigzag ? 2 * l->bays : l->bays + 1;
    roped->ropes = l->zigzag ? 1 : legs;
    roped->upper_hooks = l->bays + 1;
    roped->lower_hooks = l->zigzag ? l->bays : l->bays + 1;
    roped->rope_length = legs * l->unstretched + roped->ropes * 2 * rope->ends;
}

static void utilise(const tside_rope *rope, tside_roped *roped)
{
    roped->rope_utilisation_given = rope->rope_limit_given;
    roped->hook_utilisation_given = rope->hook_limit_given;
    roped->anchor_utilisation_given = rope->anchor_limit_given;
    roped->film_utilisation_given = rope->film_limit_given;
    if (rope->rope_limit_given)
        roped->rope_utilisation = roped->tension / rope->rope_limit;
    if (rope->hook_limit_given)
        roped->hook_utilisation = roped->pull / rope->hook_limit;
    if (rope->anchor_limit_given)
        roped->anchor_utilisation = roped->pull / rope->anchor_limit;
    if (rope->film_limit_given)
        roped->film_utilisation = roped->film_tension / rope->film_limit;
}

tside_status tside_i_rope_bears(const tside_rope *rope, const tside_i_strung *l, double pressure, tside_roped *roped,
                                tside_fault *fault)
{
    const int legs_at_hook = l->zigzag ? 2 : 1;
    tside_belly line, film;
    *roped = (tside_roped){
        .pitch = l->pitch,
        .leg = l->leg,
        .slant = l->slant,
        .lean = l->lean,
        .slack = l->unstretched / l->leg - 1,
    };
    count_pieces(rope, l, roped);
    if (pressure == 0)
        return TSIDE_OK;
    roped->load = l->zigzag ? pressure * l->pitch / 2 * cos(l->slant) : pressure * l->pitch;
    TRY(tside_i_give_belly(&rope->line, "line", "pitch", l->leg, roped->load, &line, fault));
    TRY(tside_i_give_belly(&rope->film, "film", "pitch", l->pitch, pressure, &film, fault));
    roped->tension = line.tension;
    roped->sag = line.sag;
    roped->film_tension = film.tension;
    roped->film_sag = film.sag;
    roped->billow = line.sag + film.sag;
    roped->end_along = line.along * sin(l->slant);
    roped->edge_pull = film.along;
    resolve(l, legs_at_hook * line.square, legs_at_hook * line.along * cos(l->slant), roped);
    utilise(rope, roped);
    return TSIDE_OK;
}

tside_status tside_rope_bears(const tside_rope *rope, double length, double pressure, tside_roped *roped,
                              tside_fault *fault)
{
    tside_i_strung strung;
    tside_roped made;
    TRY(check(rope, length, fault));
    TRY(tside_i_argument(fault, "pressure", "Pa", pressure, 0, 1));
    tside_i_rope_string(rope, length, &strung);
    TRY(tside_i_settle(&tside_i_rope_table, "rope",
                       tside_i_within(fault, "rope", tside_i_rope_bears(rope, &strung, pressure, &made, fault)),
                       fault));
    return ANSWER(&tside_i_roped_table, made, roped, fault);
}

/* --- the roll under them --- */

/* Where the axis is, seen along the hooks' line from the upper hook, and square to it. */
static double along(const tside_i_strung *l, const tside_i_spot *spot)
{
    return (spot->x - l->upper_x) * sin(l->lean) + (l->upper_y - spot->y) * cos(l->lean);
}

static double outboard(const tside_i_strung *l, const tside_i_spot *spot)
{
    return (spot->x - l->upper_x) * cos(l->lean) - (l->upper_y - spot->y) * sin(l->lean);
}

/* Two tangents and an arc between them, where the roll stands out beyond the chord. */
double tside_i_rope_path(double h, double along, double outboard, double r, double *wrap)
{
    const double upper = hypot(along, outboard), lower = hypot(h - along, outboard);
    const double outward = atan2(along, -outboard) + atan2(h - along, -outboard); /* from hook to hook, at the axis */
    *wrap = fmax(outward - acos(fmin(r / upper, 1)) - acos(fmin(r / lower, 1)), 0);
    if (*wrap == 0)
        return h;
    return sqrt(fmax(upper * upper - r * r, 0)) + sqrt(fmax(lower * lower - r * r, 0)) + r * *wrap;
}

static tside_rope_over over_at(const tside_i_strung *l, const tside_i_spot *spot)
{
    const double legs_per_metre = (l->zigzag ? 2 : 1) / l->pitch;
    tside_rope_over over = {0};
    double leg, stretch;
    over.path = tside_i_rope_path(l->h, along(l, spot), outboard(l, spot), spot->r, &over.wrap);
    leg = l->zigzag ? hypot(over.path, l->pitch / 2) : over.path;
    stretch = leg / l->unstretched - 1;
    over.slack = leg / l->leg - 1;
    over.stopped = stretch > SLACK && l->stiffness == 0;
    over.tension = l->stiffness * fmax(stretch, 0);
    over.pressure = legs_per_metre * 2 * over.tension * (over.path / leg) * sin(over.wrap / 2);
    return over;
}

double tside_i_rope_presses(const tside_i_strung *strung, const tside_i_spot *spot)
{
    return over_at(strung, spot).pressure;
}

enum { PATH, PRESSURE, OVER };
static void over_values(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_rope_over over = over_at(context, spot);
    value[PATH] = over.path;
    value[PRESSURE] = over.pressure;
}

/* How far a hook lies within the roll, and the axis beyond either hook; none may be above 0. */
enum { UPPER_IN, LOWER_IN, ABOVE_UPPER, BELOW_LOWER, PLACES };
static void place_values(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_i_strung *l = context;
    const double t = along(l, spot), s = outboard(l, spot);
    value[UPPER_IN] = spot->r - hypot(t, s);
    value[LOWER_IN] = spot->r - hypot(l->h - t, s);
    value[ABOVE_UPPER] = -t;
    value[BELOW_LOWER] = t - l->h;
}

static const tside_i_hook_names arguments = {"upper_x", "upper_y", "lower_x", "lower_y"};

static tside_status refuse_place(const double *value, const tside_i_hook_names *names, tside_fault *fault)
{
    if (!(value[ABOVE_UPPER] < 0))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names->upper_y, "", "the bar comes above the upper hook");
    if (!(value[BELOW_LOWER] < 0))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names->lower_y, "", "the bar comes below the lower hook");
    if (!(value[UPPER_IN] < 0))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names->upper_x, "", "the upper hook lies within the roll");
    if (!(value[LOWER_IN] < 0))
        return tside_i_refuse(fault, TSIDE_OUT_OF_REACH, names->lower_x, "", "the lower hook lies within the roll");
    return TSIDE_OK;
}

static tside_rope_over over_with_turns(const tside_i_strung *l, const tside_travel *travel, const tside_i_spot *spot)
{
    tside_rope_over over = over_at(l, spot);
    tside_position position;
    tside_i_travel_position(travel, spot, &position);
    over.turns = position.turns;
    return over;
}

tside_status tside_i_rope_over_worst(const tside_i_strung *strung, const tside_i_track *track,
                                     const tside_i_hook_names *names, tside_rope_over *longest,
                                     tside_rope_over *hardest, tside_fault *fault)
{
    tside_i_sought places[PLACES] = {{0}}, over[OVER] = {{0}};
    tside_i_spot room;
    double greatest[PLACES];
    tside_i_track_seek(track, place_values, strung, places, PLACES);
    for (int i = 0; i < PLACES; i++)
        greatest[i] = places[i].greatest.value;
    TRY(refuse_place(greatest, names, fault));
    tside_i_track_seek(track, over_values, strung, over, OVER);
    *longest = over_with_turns(strung, track->travel, tside_i_peak_spot(track, &over[PATH].greatest, &room));
    *hardest = over_with_turns(strung, track->travel, tside_i_peak_spot(track, &over[PRESSURE].greatest, &room));
    return TSIDE_OK;
}

tside_status tside_rope_over_at(const tside_rope *rope, double length, const tside_travel *travel, double turns,
                                tside_rope_over *over, tside_fault *fault)
{
    tside_i_strung strung;
    tside_i_spot spot;
    tside_rope_over made;
    double value[PLACES];
    TRY(check(rope, length, fault));
    tside_i_rope_string(rope, length, &strung);
    TRY(tside_i_travel_find(travel, turns, &spot, fault));
    place_values(&spot, &strung, value);
    TRY(tside_i_within(fault, "rope", refuse_place(value, &arguments, fault)));
    made = over_with_turns(&strung, travel, &spot);
    return ANSWER(&tside_i_rope_over_table, made, over, fault);
}

tside_status tside_rope_over_worst(const tside_rope *rope, double length, const tside_travel *travel,
                                   tside_rope_over *longest, tside_rope_over *hardest, tside_fault *fault)
{
    tside_i_strung strung;
    tside_i_track track;
    tside_rope_over long_one, hard_one;
    TRY(check(rope, length, fault));
    tside_i_rope_string(rope, length, &strung);
    tside_i_track_make(travel, &track);
    TRY(tside_i_within(fault, "rope",
                       tside_i_rope_over_worst(&strung, &track, &arguments, &long_one, &hard_one, fault)));
    TRY(tside_i_within(fault, "longest", tside_i_finite(&tside_i_rope_over_table, &long_one, fault)));
    TRY(ANSWER(&tside_i_rope_over_table, hard_one, hardest, fault)); /* both are well before one is handed over */
    return ANSWER(&tside_i_rope_over_table, long_one, longest, fault);
}
