/* SPDX-License-Identifier: MIT */
/* One-dimensional roots and greatest values: the two searches that everything above uses. */
#include <float.h>

#include "geometry.h"

/* Chandrupatla's method (Advances in Engineering Software 28, 1997): inverse quadratic steps where they are safe, else halving. */
double tside_i_rising_root(tside_i_function *function, const void *context, double low, double high)
{
    double x1 = low, x2 = high, x3, f1 = function(low, context), f2 = function(high, context), f3, t = 0.5;
    if (f1 >= 0)
        return low;
    if (f2 <= 0)
        return high;
    for (int i = 0; i < 200; i++) {
        double x = x1 + t * (x2 - x1), f = function(x, context), best, least, xi, phi;
        if ((f < 0) == (f1 < 0)) {
            x3 = x1;
            f3 = f1;
        } else {
            x3 = x2;
            f3 = f2;
            x2 = x1;
            f2 = f1;
        }
        x1 = x;
        f1 = f;
        best = fabs(f1) < fabs(f2) ? x1 : x2;
        least = (2 * DBL_EPSILON * fabs(best) + DBL_MIN) / fabs(x2 - x1);
        if (f1 == 0 || least > 0.5)
            return best;
        xi = (x1 - x2) / (x3 - x2);
        phi = (f1 - f2) / (f3 - f2);
        t = 0.5;
        if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)
            t = f1 / (f2 - f1) * f3 / (f2 - f3) + (x3 - x1) / (x2 - x1) * f1 / (f3 - f1) * f2 / (f3 - f2);
        t = t < least ? least : t > 1 - least ? 1 - least : t;
    }
    return x1;
}

typedef struct probe {
    const tside_travel *travel;
    tside_i_quantity *quantity;
    const void *context;
    int stretch;
} probe;

static double measure(const probe *p, double progress)
{
    tside_i_spot spot;
    tside_i_travel_spot(p->travel, p->stretch, progress, &spot);
    return p->quantity(&spot, p->context);
}

/*
 * Climbs to the greatest value within [a, b] from an inner point x above both ends: a parabola through the three, and the golden section of the
 * longer part where the parabola's step is not inside. The place is good to the square root of the precision, and the value to all of it.
 */
static double climb(const probe *p, double a, double b, double x, double value, double fa, double fb, double *where)
{
    const double golden = 0.38196601125010515, least = 1e-8 * (fabs(b) + 1);
    double fx = value;
    for (int i = 0; i < 60 && b - a > least; i++) {
        double left = (x - a) * (fx - fb), right = (x - b) * (fx - fa), below = 2 * (left - right);
        double u = below != 0 ? x - ((x - a) * left - (x - b) * right) / below : x, fu;
        if (!(u > a + least / 4 && u < b - least / 4) || i % 4 == 3)
            u = x - a > b - x ? x - golden * (x - a) : x + golden * (b - x);
        if (fabs(u - x) < least / 4)
            u = x - a > b - x ? x - least / 4 : x + least / 4;
        fu = measure(p, u);
        if (fu > fx) {
            if (u > x)
                a = x, fa = fx;
            else
                b = x, fb = fx;
            x = u;
            fx = fu;
        } else if (u > x)
            b = u, fb = fu;
        else
            a = u, fa = fu;
    }
    *where = x;
    return fx;
}

/* The greatest value in one smooth stretch: the best of evenly spaced points, then a climb between its neighbours. */
static double greatest_in_stretch(const probe *p, double from, double to, double *where)
{
    enum { STEPS = 8 };
    double value[STEPS + 1], step = (to - from) / STEPS, inward;
    int best = 0;
    for (int i = 0; i <= STEPS; i++) {
        value[i] = measure(p, i == STEPS ? to : from + i * step);
        if (value[i] > value[best])
            best = i;
    }
    *where = best == STEPS ? to : from + best * step;
    if (step <= 0)
        return value[best];
    if (best > 0 && best < STEPS)
        return climb(p, *where - step, *where + step, *where, value[best], value[best - 1], value[best + 1], where);
    /* at an end: a peak hides beyond it only if the value rises inward */
    inward = *where + (best ? -1e-4 : 1e-4) * step;
    if (measure(p, inward) <= value[best])
        return value[best];
    if (best)
        return climb(p, to - step, to, inward, measure(p, inward), value[STEPS - 1], value[STEPS], where);
    return climb(p, from, from + step, inward, measure(p, inward), value[0], value[1], where);
}

double tside_i_travel_greatest(const tside_travel *travel, tside_i_quantity *quantity, const void *context, tside_i_spot *where)
{
    double greatest = -HUGE_VAL, place = 0;
    int in = 0;
    for (int i = 0; i < travel->stretches; i++) {
        probe p = {travel, quantity, context, i};
        double at, value = greatest_in_stretch(&p, travel->stretch[i].from, i + 1 < travel->stretches ? travel->stretch[i + 1].from : travel->end, &at);
        if (value > greatest) {
            greatest = value;
            place = at;
            in = i;
        }
    }
    tside_i_travel_spot(travel, in, place, where);
    return greatest;
}
