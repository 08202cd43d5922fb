/* SPDX-License-Identifier: MIT */
/*
 * What bench_instructions.sh counts: plans one of the benchmark's sides so many times, or draws all its views.
 *
 *     bench_instructions plan|draw SIDE TIMES
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench_side.h"
#include "bench_views.h"

int main(int argc, char **argv)
{
    tside_side side;
    tside_plan plan;
    double sum = 0;
    if (argc != 4 || (strcmp(argv[1], "plan") && strcmp(argv[1], "draw"))) {
        fputs("usage: bench_instructions plan|draw SIDE TIMES\n", stderr);
        return 2;
    }
    bench_any_side(&side, atoi(argv[2]));
    if (tside_plan_side(&side, &plan, NULL) != TSIDE_OK)
        return 1;
    for (int i = atoi(argv[3]); i > 0; i--)
        if (strcmp(argv[1], "draw") ? tside_plan_side(&side, &plan, NULL) != TSIDE_OK
                                    : bench_all_views(&side, &plan, &sum, NULL) != TSIDE_OK)
            return 1;
    return 0;
}
