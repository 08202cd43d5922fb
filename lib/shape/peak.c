/* SPDX-License-Identifier: MIT */
/*
 * Greatest and least values along a travel, stretch by smooth stretch: places are looked at, and beside the best
 * Brent's method climbs (1973; see climb).
 */
#include "shape/peak.h"

#include <float.h>

/* One of the quantities sought, along one stretch. */
typedef struct probe {
    const tside_travel *travel;
    const tside_i_sought *sought;
    double sign; /* 1: the greatest value is sought, -1: the least */
    int stretch;
} probe;

static double measure(const probe *p, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(p->travel, p->stretch, progress, &spot);
    return p->sign * p->sought->quantity(&spot, p->sought->context);
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
    const double golden = 0.38196601125010515, least = 1e-8 * (fabs(b) + 1), near = 1e-4 * (b - a);
    double w = fa > fb ? a : b, v = fa > fb ? b : a, fw = fmax(fa, fb), fv = fmin(fa, fb), fx = value, last = b - a,
           before = last;
    for (int i = 0; i < 60 && b - a > least; i++) {
        double rise = (fx - fw) / (x - w), bend = (rise - (fx - fv) / (x - v)) / (w - v),
               step = -(rise + (x - w) * bend) / (2 * bend), fu;
        int serves = bend < 0 && x + step > a && x + step < b && fabs(step) < before / 2;
        if (serves && -bend * step * step <= 2 * DBL_EPSILON * fabs(fx) && fabs(x - w) < near && fabs(x - v) < near)
            break;
        if (!serves)
            step = golden * (x - a > b - x ? a - x : b - x);
        if (fabs(step) < least / 4)
            step = x - a > b - x ? -least / 4 : least / 4;
        fu = measure(p, x + step);
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

static const tside_i_spot *kept(const tside_i_track *track, int sample)
{
    return sample < TSIDE_I_KEPT ? track->spot + sample : NULL;
}

/* One stretch's samples, and the values there of one quantity. */
typedef struct stretch {
    int first, steps;
    double from, to;
    double value[TSIDE_I_STEPS + 1];
} stretch;

static stretch stretch_of(const tside_i_track *track, int index)
{
    return (stretch){.first = track->first[index],
                     .steps = track->steps[index],
                     .from = track->travel->stretch[index].from,
                     .to = tside_i_stretch_end(track->travel, index)};
}

/* Where a sample is: closer together towards the upper end, where chord and guide grow short and all bends more. */
static double place(const stretch *s, int i)
{
    double left = 1 - (double)i / s->steps;
    return s->to - left * left * left * (s->to - s->from);
}

static void sample_stretch(const tside_travel *travel, int index, int first, tside_i_track *track)
{
    double share = (tside_i_stretch_end(travel, index) - travel->stretch[index].from) /
                   (travel->end - travel->wraps_shut);
    stretch s;
    int steps = share > 0.3 || index + 1 == travel->stretches ? TSIDE_I_STEPS
                : share > 0.05                                ? 3
                                                              : 2; /* a short stretch bends little */
    track->first[index] = first;
    track->steps[index] = steps;
    s = stretch_of(track, index);
    for (int i = 0; i <= steps && kept(track, first + i); i++)
        tside_i_travel_spot(travel, index, place(&s, i), track->spot + first + i);
}

void tside_i_track_make(const tside_travel *travel, tside_i_track *track)
{
    int used = 0;
    track->travel = travel;
    tside_i_travel_spot(travel, 0, travel->wraps_shut, &track->shut);
    for (int index = travel->stretches - 1; index >= 0; index--) {
        sample_stretch(travel, index, used, track);
        used += track->steps[index] + 1;
    }
    track->open = track->spot[TSIDE_I_STEPS];
}

/*
 * At one of those that none beside it passes, a climb between its neighbours; at an end only if the value rises inward.
 * p->sign turns the values over.
 */
static double climb_beside(const probe *p, const stretch *s, int i, double before, double value, double after,
                           double *where)
{
    const double at = place(s, i), beside = 1e-4; /* of a step: near enough to tell whether the value rises inward, far
                                                     enough for rounding not to */
    double inward, more;
    *where = at;
    if (i > 0 && i < s->steps)
        return value > before ? climb(p, place(s, i - 1), place(s, i + 1), at, value, before, after, where) : value;
    inward = at + beside * (place(s, i ? i - 1 : 1) - at);
    more = measure(p, inward);
    if (more <= value)
        return value;
    return i ? climb(p, place(s, i - 1), at, inward, more, before, value, where)
             : climb(p, at, place(s, 1), inward, more, value, after, where);
}

/*
 * By how much a value that neither neighbour overtops could be passed beside it: a parabola through three places so
 * spaced passes it by no more than 1.54 times the fall to the lowest of them (at an end, 7 : 1 from the next), and
 * twice and a half as much is allowed for what is no parabola.
 */
static double passed_by(const probe *p, const stretch *s, int i)
{
    const double *v = s->value + (i == 0 ? 0 : i == s->steps ? i - 2 : i - 1);
    return 4 * (p->sign * s->value[i] - fmin(fmin(p->sign * v[0], p->sign * v[1]), p->sign * v[2]));
}

/* Keeps the greatest of the stretches so far. */
static void keep(tside_i_peak *so_far, const tside_i_track *track, const probe *p, const stretch *s)
{
    double before = -HUGE_VAL, value = p->sign * s->value[0];
    for (int i = 0; i <= s->steps; i++) {
        double after = i < s->steps ? p->sign * s->value[i + 1] : -HUGE_VAL;
        if (value >= before && value >= after && !(value + passed_by(p, s, i) < so_far->value)) {
            double where, best = climb_beside(p, s, i, before, value, after, &where);
            if (best > so_far->value)
                *so_far = (tside_i_peak){best, where, p->stretch,
                                         where == place(s, i) ? kept(track, s->first + i) : NULL};
        }
        before = value;
        value = after;
    }
}

/* From the upper end down, where values are greatest most often. */
static void seek(const tside_i_track *track, tside_i_sought *sought)
{
    const tside_travel *travel = track->travel;
    sought->greatest = sought->least = (tside_i_peak){-HUGE_VAL, travel->wraps_shut, 0, &track->shut};
    if (sought->over_nought)
        sought->greatest.value = 0;
    for (int index = travel->stretches - 1; index >= 0; index--) {
        probe p = {travel, sought, 1, index};
        stretch s = stretch_of(track, index);
        for (int i = 0; i <= s.steps; i++) {
            const tside_i_spot *spot = kept(track, s.first + i);
            s.value[i] = spot ? sought->quantity(spot, sought->context) : measure(&p, place(&s, i));
        }
        keep(&sought->greatest, track, &p, &s);
        p.sign = -1;
        if (sought->least_too)
            keep(&sought->least, track, &p, &s);
    }
}

void tside_i_track_seek(const tside_i_track *track, tside_i_sought *sought, int count)
{
    for (int k = 0; k < count; k++)
        seek(track, sought + k);
}

tside_i_spot tside_i_peak_spot(const tside_i_track *track, const tside_i_peak *peak)
{
    tside_i_spot spot;
    if (peak->sample)
        return *peak->sample;
    tside_i_travel_spot(track->travel, peak->stretch, peak->place, &spot);
    return spot;
}

double tside_i_track_greatest(const tside_i_track *track, tside_i_quantity *quantity, const void *context,
                              tside_i_spot *where)
{
    tside_i_sought sought = {.quantity = quantity, .context = context};
    seek(track, &sought);
    *where = tside_i_peak_spot(track, &sought.greatest);
    return sought.greatest.value;
}
