/* SPDX-License-Identifier: MIT */
/* How the benchmarks tell time; POSIX must have been asked for before anything is included. */
#ifndef TUNNELSIDE_BENCH_CLOCK_H
#define TUNNELSIDE_BENCH_CLOCK_H

#include <stdlib.h>
#include <time.h>

/* Seconds, from some moment on. */
static inline double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static inline int ascending(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Leaves the times in order. */
static inline double median_of(double *times, int count)
{
    qsort(times, (size_t)count, sizeof *times, ascending);
    return times[count / 2];
}

#endif
