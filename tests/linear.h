/* SPDX-License-Identifier: MIT */
/* Linear equations. */
#ifndef TUNNELSIDE_LINEAR_H
#define TUNNELSIDE_LINEAR_H

#include <check.h>
#include <math.h>

#include "expect.h"

/*
 * Gauss's elimination with the greatest pivot; rows of a hold n coefficients and the right-hand side, which becomes the
 * answer.
 */
static inline void solve(double *a, int n)
{
    const int width = n + 1;
    for (int k = 0; k < n; k++) {
        int pivot = k;
        for (int i = k + 1; i < n; i++)
            if (fabs(a[i * width + k]) > fabs(a[pivot * width + k]))
                pivot = i;
        ck_assert(fabs(a[pivot * width + k]) > 0);
        for (int j = k; j < width && pivot != k; j++) {
            double held = a[k * width + j];
            a[k * width + j] = a[pivot * width + j];
            a[pivot * width + j] = held;
        }
        for (int i = 0; i < n; i++) {
            double factor = a[i * width + k] / a[k * width + k];
            for (int j = k; i != k && factor != 0 && j < width; j++)
                a[i * width + j] -= factor * a[k * width + j];
        }
    }
    for (int k = 0; k < n; k++)
        a[k * width + n] /= a[k * width + k];
}

#endif
