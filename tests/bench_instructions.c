/* SPDX-License-Identifier: MIT */
/*
 * What bench_instructions.sh counts: plans one of the benchmark's sides so many times.
 *
 *     bench_instructions SIDE TIMES
 */
#include <stdio.h>
#include <stdlib.h>

#include "bench_side.h"

int main(int argc, char **argv)
{
    tside_side side;
    tside_plan plan;
    if (argc != 3) {
        fputs("usage: bench_instructions SIDE TIMES\n", stderr);
        return 2;
    }
    bench_any_side(&side, atoi(argv[1]));
    for (int i = atoi(argv[2]); i > 0; i--)
        if (tside_plan_side(&side, &plan, NULL) != TSIDE_OK)
            return 1;
    return 0;
}
