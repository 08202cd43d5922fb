/* SPDX-License-Identifier: MIT */
/*
 * The C side of the bindings' benchmark: plans rows in a loop, as a C program would.
 *
 *     bench_rows INPUTS OUTPUTS RUNS
 *
 * INPUTS: a double each for the columns below, row by row; OUTPUTS: receives the figures, row by row. Prints, of RUNS
 * runs, the median seconds of the loop, and those of one call of tside_plan_side.
 */
#define _POSIX_C_SOURCE 200809L
#include <stdio.h>
#include <stdlib.h>

#include "bench_clock.h"
#include "bench_side.h"

enum { COLUMNS = 5, FIGURES = 12, CALLS = 500 };

static tside_status plan_row(const double *row, tside_side *side, double *figures)
{
    tside_plan plan;
    tside_status status;
    side->length = row[0];
    side->curtain.hip = row[1];
    side->bar.tube.wall = row[2];
    side->drive.rated_torque = row[3];
    side->drive_end.rise = row[4];
    status = tside_plan_side(side, &plan, NULL);
    if (status != TSIDE_OK)
        return status;
    figures[0] = plan.worst.drive;
    figures[1] = plan.design_torque;
    figures[2] = plan.drive_turns;
    figures[3] = plan.open.underside;
    figures[4] = plan.opening_far;
    figures[5] = plan.longest_side;
    figures[6] = plan.twist;
    figures[7] = plan.lag_elastic;
    figures[8] = plan.drive_end.sweep.kick_out_error;
    figures[9] = plan.drive_end.side_force;
    figures[10] = plan.drive_end.layout.cut_length;
    figures[11] = plan.free_end.sweep.cut_length;
    return TSIDE_OK;
}

static double *read_rows(const char *path, long *rows)
{
    FILE *file = fopen(path, "rb");
    double *data;
    long size;
    if (!file || fseek(file, 0, SEEK_END) != 0 || (size = ftell(file)) < 0 || fseek(file, 0, SEEK_SET) != 0)
        return NULL;
    *rows = size / (long)(COLUMNS * sizeof *data);
    data = malloc((size_t)size + 1);
    if (data && fread(data, COLUMNS * sizeof *data, (size_t)*rows, file) != (size_t)*rows)
        *rows = 0;
    fclose(file);
    return data;
}

int main(int argc, char **argv)
{
    long rows = 0;
    int runs = argc == 4 ? atoi(argv[3]) : 0, bad = 0;
    double *inputs = runs > 0 ? read_rows(argv[1], &rows) : NULL,
           *outputs = calloc((size_t)rows + 1, FIGURES * sizeof *outputs);
    double *loops = calloc((size_t)runs + 1, sizeof *loops), *calls = calloc((size_t)runs + 1, sizeof *calls);
    FILE *file;
    tside_side side;
    if (!inputs || !outputs || !loops || !calls || rows == 0) {
        fputs("usage: bench_rows INPUTS OUTPUTS RUNS\n", stderr);
        return 2;
    }
    bench_side(&side);
    for (int run = 0; run < runs; run++) {
        double start = now();
        for (long row = 0; row < rows; row++)
            bad += plan_row(inputs + row * COLUMNS, &side, outputs + row * FIGURES) != TSIDE_OK;
        loops[run] = now() - start;
        start = now();
        for (int call = 0; call < CALLS; call++) {
            tside_plan plan;
            bad += tside_plan_side(&side, &plan, NULL) != TSIDE_OK;
        }
        calls[run] = (now() - start) / CALLS;
    }
    file = fopen(argv[2], "wb");
    if (!file || fwrite(outputs, FIGURES * sizeof *outputs, (size_t)rows, file) != (size_t)rows || fclose(file) != 0 ||
        bad) {
        fputs("bench_rows: a row was refused, or the outputs could not be written\n", stderr);
        return 1;
    }
    printf("%.9g %.9g\n", median_of(loops, runs), median_of(calls, runs));
    free(inputs);
    free(outputs);
    free(loops);
    free(calls);
    return 0;
}
