/* SPDX-License-Identifier: MIT */
/* Roots of a function of one number. */
#include "base/root.h"

#include <float.h>
#include <math.h>

/*
 * Chandrupatla's method (Advances in Engineering Software 28, 1997): inverse quadratic steps where they are safe, else
 * halving.
 */
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
