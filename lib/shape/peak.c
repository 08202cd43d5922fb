/* SPDX-License-Identifier: MIT */
/*
 * Greatest and least values along a travel, stretch by smooth stretch: places are looked at, and beside the best
 * Brent's method climbs (1973; see climb), or where the slope is known its root is the top.
 */
#include "shape/peak.h"

#include <float.h>

#include "base/root.h"

/* --- where a travel is looked at --- */

static const tside_i_spot *kept(const tside_i_track *track, int sample)
{
    return sample < TSIDE_I_KEPT ? track->spot + sample : NULL;
}

/* Where a sample is: closer together towards the upper end, where chord and guide grow short and all bends more. */
static double place(const tside_i_track *track, int index, int i)
{
    double left = 1 - (double)i / track->steps[index], to = tside_i_stretch_end(track->travel, index);
    return to - left * left * left * (to - track->travel->stretch[index].from);
}

/* Inward of a stretch's end: near enough to tell whether a value rises inward, far enough for rounding not to. */
static double beside(const tside_i_track *track, int index, int i)
{
    const double of_step = 1e-4, end = place(track, index, i);
    return end + of_step * (place(track, index, i ? i - 1 : 1) - end);
}

static void sample_stretch(const tside_travel *travel, int index, int first, tside_i_track *track)
{
    double share = (tside_i_stretch_end(travel, index) - travel->stretch[index].from) /
                   (travel->end - travel->wraps_shut);
    int steps = share > 0.3 || index + 1 == travel->stretches ? TSIDE_I_STEPS
                : share > 0.05                                ? 3
                                                              : 2; /* a short stretch bends little */
    track->first[index] = (unsigned char)first;
    track->steps[index] = (unsigned char)steps;
    for (int i = 0; i <= steps && kept(track, first + i); i++)
        tside_i_travel_spot(travel, index, place(track, index, i), track->spot + first + i);
}

void tside_i_track_make(const tside_travel *travel, tside_i_track *track)
{
    const int last = travel->stretches - 1;
    int used = 0;
    track->travel = travel;
    tside_i_travel_spot(travel, 0, travel->wraps_shut, &track->shut);
    for (int index = last; index >= 0; index--) {
        sample_stretch(travel, index, used, track);
        used += track->steps[index] + 1;
    }
    track->open = track->spot[TSIDE_I_STEPS];
    tside_i_travel_spot(travel, 0, beside(track, 0, 0), &track->beside_shut);
    tside_i_travel_spot(travel, last, beside(track, last, TSIDE_I_STEPS), &track->beside_open);
}

/* --- one quantity along one stretch --- */

/* Quantities along one stretch, with their values at its samples. */
typedef struct stretch {
    const tside_i_track *track;
    tside_i_quantities *quantities;
    const void *context;
    int index, steps;
    double value[TSIDE_I_STEPS + 1][TSIDE_I_VALUES];
} stretch;

/* One of them. */
typedef struct probe {
    const stretch *along;
    int which;
    double sign; /* 1: the greatest value is sought, -1: the least */
} probe;

static double value_at(const probe *p, int i)
{
    return p->sign * p->along->value[i][p->which];
}

static double slope_at(const probe *p, int i)
{
    return p->sign * p->along->value[i][p->which + 1];
}

static double place_at(const probe *p, int i)
{
    return place(p->along->track, p->along->index, i);
}

/* slope: optional. */
static double measure_spot(const probe *p, const tside_i_spot *spot, double *slope)
{
    double value[TSIDE_I_VALUES];
    p->along->quantities(spot, p->along->context, value);
    if (slope)
        *slope = p->sign * value[p->which + 1];
    return p->sign * value[p->which];
}

static double measure(const probe *p, double progress, double *slope)
{
    tside_i_spot spot;
    tside_i_travel_spot(p->along->track->travel, p->along->index, progress, &spot);
    return measure_spot(p, &spot, slope);
}

/* The value beside a stretch's end. */
static double measure_beside(const probe *p, int i)
{
    const tside_i_track *track = p->along->track;
    const int index = p->along->index;
    if (i == 0 && index == 0)
        return measure_spot(p, &track->beside_shut, NULL);
    if (i > 0 && index + 1 == track->travel->stretches)
        return measure_spot(p, &track->beside_open, NULL);
    return measure(p, beside(track, index, i), NULL);
}

/*
 * Climbs to the greatest value within [a, b] from an inner point x above both ends, as Brent does (Algorithms for
 * Minimization without Derivatives, 1973, chapter 5): to the top of the parabola through the three best places, and
 * where that does not serve, the golden section of the longer part. Done when those three are near and the parabola
 * promises no gain that rounding would show: the place is good to the square root of the precision, and the value to
 * all of it.
 */
static double climb(const probe *p, double a, double b, double x, double value, double fa, double fb, double *where)
{
    const double golden = 0.38196601125010515;
    /* without these a climb goes on for nothing, and a plan takes more instructions than bench_instructions.sh lets it
     */
    const double shown = 2 * DBL_EPSILON, near = 1e-4 * (b - a);
    double w = fa > fb ? a : b, v = fa > fb ? b : a, fw = fmax(fa, fb), fv = fmin(fa, fb), fx = value, last = b - a,
           before = last;
    for (int i = 0; i < 60; i++) {
        double rise = (fx - fw) / (x - w), bend = (rise - (fx - fv) / (x - v)) / (w - v),
               step = -(rise + (x - w) * bend) / (2 * bend), fu;
        int serves = bend < 0 && x + step > a && x + step < b && fabs(step) < before / 2;
        if (serves && -bend * step * step <= shown * fabs(fx) && fabs(x - w) < near && fabs(x - v) < near)
            break;
        if (!serves)
            step = golden * (x - a > b - x ? a - x : b - x);
        fu = measure(p, x + step, NULL);
        before = last;
        last = fabs(step);
        if (fu > fx) {
            a = step > 0 ? x : a;
            b = step > 0 ? b : x;
            v = w, fv = fw;
            w = x, fw = fx;
            x += step, fx = fu;
        } else {
            a = step > 0 ? a : x + step;
            b = step > 0 ? x + step : b;
            if (fu >= fw) {
                v = w, fv = fw;
                w = x + step, fw = fu;
            } else if (fu >= fv)
                v = x + step, fv = fu;
        }
    }
    *where = x;
    return fx;
}

/*
 * The greatest value about a sample that neither neighbour passes, by a climb between them; at an end only if the value
 * rises inward. where: comes as the sample's place.
 */
static double climb_beside(const probe *p, int i, double *where)
{
    const int low = i > 0 ? i - 1 : 0, high = i < p->along->steps ? i + 1 : i;
    double x = *where, value = value_at(p, i);
    if (low == i || high == i) {
        double more = measure_beside(p, i);
        if (more <= value)
            return value;
        x = beside(p->along->track, p->along->index, i);
        value = more;
    } else if (value <= value_at(p, low))
        return value;
    return climb(p, place_at(p, low), place_at(p, high), x, value, value_at(p, low), value_at(p, high), where);
}

/*
 * The same by the root of the slope. Returns 0 where that does not tell: the value must rise to the sample from one
 * side and fall to the other, unless it is an end, and the top must be above it.
 */
static int climb_by_slope(const probe *p, int i, double *best, double *where)
{
    const double near = 1e-8; /* of a step: what the value gains from there is as its square, and no double shows it;
                                 without it a plan takes more instructions than bench_instructions.sh lets it */
    const int low = i > 0 ? i - 1 : 0, high = i < p->along->steps ? i + 1 : i;
    double from, to, slope;
    tside_i_bracket top;
    *best = value_at(p, i);
    if (low == i ? slope_at(p, i) < 0 : high == i && slope_at(p, i) > 0)
        return 1;
    if (!(slope_at(p, low) > 0 && slope_at(p, high) < 0))
        return 0;
    from = place_at(p, low), to = place_at(p, high);
    top = tside_i_bracket_of(from, -slope_at(p, low), to, -slope_at(p, high));
    if (low < i && i < high) {
        top.place = *where;
        tside_i_bracket_narrow(&top, -slope_at(p, i));
    }
    do {
        *where = top.place;
        *best = measure(p, *where, &slope);
        tside_i_bracket_narrow(&top, -slope);
    } while (top.open && fabs(top.place - *where) > near * (to - from));
    return *best >= value_at(p, i);
}

static double lower(double a, double b)
{
    return a < b ? a : b;
}

/*
 * By how much a value that neither neighbour overtops could be passed beside it: a parabola through three places so
 * spaced passes it by no more than 1.54 times the fall to the lowest of them (at an end, 7 : 1 from the next), and
 * twice and a half as much is allowed for what is no parabola.
 */
static double passed_by(const probe *p, int i)
{
    const int first = i == 0 ? 0 : i == p->along->steps ? i - 2 : i - 1;
    return 4 * (value_at(p, i) - lower(lower(value_at(p, first), value_at(p, first + 1)), value_at(p, first + 2)));
}

/* Keeps the greatest about a sample that neither neighbour passes, if that is the greatest so far. */
static void keep_top(const probe *p, int i, int sloped, tside_i_peak *so_far)
{
    const tside_i_track *track = p->along->track;
    const int index = p->along->index;
    double at, where, best;
    if (value_at(p, i) + passed_by(p, i) < so_far->value)
        return;
    where = at = place_at(p, i);
    if (!sloped || !climb_by_slope(p, i, &best, &where)) {
        where = at;
        best = climb_beside(p, i, &where);
    }
    if (best > so_far->value)
        *so_far = (tside_i_peak){best, where, index, where == at ? kept(track, track->first[index] + i) : NULL};
}

static void keep_tops(const stretch *s, int which, int sloped, double sign, tside_i_peak *so_far)
{
    const probe p = {s, which, sign};
    double here = value_at(&p, 0);
    int risen = 1;
    for (int i = 0; i < s->steps; i++) {
        const double next = value_at(&p, i + 1);
        if (risen && here >= next)
            keep_top(&p, i, sloped, so_far);
        risen = next >= here;
        here = next;
    }
    if (risen)
        keep_top(&p, s->steps, sloped, so_far);
}

/* --- the whole travel --- */

/*
 * That when shut to begin with, to pass by what is lower. A travel of one stretch comes to it anyway, and there nothing
 * is passed by for it.
 */
static void begin(const stretch *s, tside_i_sought *sought, int count)
{
    const tside_i_track *track = s->track;
    const tside_i_peak none = {-HUGE_VAL, track->travel->wraps_shut, 0, &track->shut};
    double value[TSIDE_I_VALUES];
    for (int k = 0; k < count; k++) {
        sought[k].greatest = sought[k].least = none;
        if (sought[k].over_nought)
            sought[k].greatest.value = 0;
    }
    if (track->travel->stretches == 1)
        return;
    s->quantities(&track->shut, s->context, value);
    for (int k = 0; k < count; k++) {
        if (value[k] > sought[k].greatest.value)
            sought[k].greatest.value = value[k];
        sought[k].least.value = fmax(sought[k].least.value, -value[k]); /* what is no number is none */
    }
}

static void sample(stretch *s)
{
    const int first = s->track->first[s->index];
    for (int i = 0; i <= s->steps; i++) {
        const tside_i_spot *spot = kept(s->track, first + i);
        tside_i_spot made;
        if (!spot) {
            tside_i_travel_spot(s->track->travel, s->index, place(s->track, s->index, i), &made);
            spot = &made;
        }
        s->quantities(spot, s->context, s->value[i]);
    }
}

/* From the upper end down, where values are greatest most often. */
void tside_i_track_seek(const tside_i_track *track, tside_i_quantities *quantities, const void *context,
                        tside_i_sought *sought, int count)
{
    stretch s; /* its values are written before they are read */
    s.track = track;
    s.quantities = quantities;
    s.context = context;
    begin(&s, sought, count);
    for (s.index = track->travel->stretches - 1; s.index >= 0; s.index--) {
        s.steps = track->steps[s.index];
        sample(&s);
        for (int k = 0; k < count; k++) {
            keep_tops(&s, k, sought[k].sloped, 1, &sought[k].greatest);
            if (sought[k].least_too)
                keep_tops(&s, k, sought[k].sloped, -1, &sought[k].least);
        }
    }
}

const tside_i_spot *tside_i_peak_spot(const tside_i_track *track, const tside_i_peak *peak, tside_i_spot *room)
{
    if (peak->sample)
        return peak->sample;
    tside_i_travel_spot(track->travel, peak->stretch, peak->place, room);
    return room;
}

double tside_i_track_greatest(const tside_i_track *track, tside_i_quantities *quantities, const void *context,
                              tside_i_spot *where)
{
    tside_i_sought sought = {0};
    tside_i_track_seek(track, quantities, context, &sought, 1);
    *where = *tside_i_peak_spot(track, &sought.greatest, where);
    return sought.greatest.value;
}
