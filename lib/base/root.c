/* SPDX-License-Identifier: MIT */
/* Roots of a function of one number. */
#include "base/root.h"

#include <float.h>
#include <math.h>

tside_i_bracket tside_i_bracket_of(double low, double at_low, double high, double at_high)
{
    if (at_low >= 0)
        return (tside_i_bracket){.place = low};
    if (at_high <= 0)
        return (tside_i_bracket){.place = high};
    return (tside_i_bracket){1, low + 0.5 * (high - low), low, at_low, high, at_high, 0};
}

/*
 * Chandrupatla's method (Advances in Engineering Software 28, 1997): inverse quadratic steps where they are safe, else
 * halving.
 */
void tside_i_bracket_narrow(tside_i_bracket *b, double f)
{
    enum { MOST = 200 }; /* a value that is not a number never narrows anything */
    int beyond = (f < 0) == (b->f1 < 0);
    double x3 = beyond ? b->x1 : b->x2, f3 = beyond ? b->f1 : b->f2, x2 = beyond ? b->x2 : b->x1,
           f2 = beyond ? b->f2 : b->f1, x1 = b->place, t = 0.5;
    double best = fabs(f) < fabs(f2) ? x1 : x2, least = (2 * DBL_EPSILON * fabs(best) + DBL_MIN) / fabs(x2 - x1),
           xi = (x1 - x2) / (x3 - x2), phi = (f - f2) / (f3 - f2);
    b->open = f != 0 && least <= 0.5 && ++b->asked < MOST;
    if (!b->open) {
        b->place = b->asked < MOST ? best : x1;
        return;
    }
    if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)
        t = f / (f2 - f) * f3 / (f2 - f3) + (x3 - x1) / (x2 - x1) * f / (f3 - f) * f2 / (f3 - f2);
    t = t < least ? least : t > 1 - least ? 1 - least : t;
    *b = (tside_i_bracket){1, x1 + t * (x2 - x1), x1, f, x2, f2, b->asked};
}

double tside_i_rising_root(tside_i_function *function, const void *context, double low, double high)
{
    tside_i_bracket bracket = tside_i_bracket_of(low, function(low, context), high, function(high, context));
    while (bracket.open)
        tside_i_bracket_narrow(&bracket, function(bracket.place, context));
    return bracket.place;
}
