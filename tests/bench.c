/* SPDX-License-Identifier: MIT */
/*
 * Speed of one plan and of its parts, as medians of several runs; prints figures and fails only where an answer is
 * wrong.
 */
#define _POSIX_C_SOURCE 200809L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "bench_clock.h"
#include "bench_side.h"
#include "bench_views.h"

typedef void action(void);

static tside_side side, searching, leaning, kinked;
static tside_plan plan;
static tside_roll roll = {0.0354, 0.15e-3, 1.15};
static tside_fault fault;
static double sink;
static int failures;

/* Seconds for one call: the median of runs long enough to time. */
static double median(action *act, int calls)
{
    double run[9];
    act();
    for (int i = 0; i < 9; i++) {
        double start = now();
        for (int k = 0; k < calls; k++)
            act();
        run[i] = (now() - start) / calls;
    }
    return median_of(run, 9);
}

static void must(tside_status status)
{
    if (status != TSIDE_OK) {
        char text[256];
        tside_fault_text(&fault, text, sizeof text);
        fprintf(stderr, "bench: %s\n", text);
        failures++;
    }
}

static void plan_one(void)
{
    must(tside_plan_side(&side, &plan, &fault));
    sink += plan.worst.drive;
}

static void plan_leaning(void)
{
    must(tside_plan_side(&leaning, &plan, &fault));
    sink += plan.worst.drive;
}

static void plan_kinked(void)
{
    must(tside_plan_side(&kinked, &plan, &fault));
    sink += plan.worst.drive;
}

/* The parts of a plan, as a caller would ask for them. */
static tside_travel travel;
static tside_line line;
static tside_collar collar;
static double eye_x;

static void make_travel(void)
{
    tside_bow bow;
    tside_roll wound = {side.bar.tube.diameter + side.bar.core_over, side.curtain.thickness, side.curtain.packing};
    must(tside_bow_make(&side.frame, &bow, &fault));
    must(tside_line_make(&bow, &side.curtain, &line, &fault));
    must(tside_travel_make(&line, &side.curtain, &wound, &side.stops, &travel, &fault));
}

static void best_eye(void)
{
    must(tside_eye_best(&travel, side.curtain.hip + side.drive_end.rise, collar.offset, &eye_x, &fault));
}

static void sweep_guide(void)
{
    tside_hang hang;
    tside_sweep sweep;
    must(tside_hang_make(&travel, &side.drive_end.guide, &collar, eye_x, side.curtain.hip + side.drive_end.rise, 0,
                         &hang, &sweep, &fault));
    sink += sweep.kick_out;
}

static void plan_best_angle(void)
{
    must(tside_plan_side(&searching, &plan, &fault));
    sink += plan.worst.drive;
}

static void least_eye(void)
{
    double rise;
    must(tside_eye_least(&searching, TSIDE_DRIVE_END, &rise, &fault));
    sink += rise;
}

static void smallest_bar(void)
{
    int index;
    must(tside_bar_smallest(&searching, &index, &fault));
    sink += index;
}

static void draw_all(void)
{
    must(bench_all_views(&side, &plan, &sink, &fault));
}

static void roll_wraps(void)
{
    double wraps = 0;
    for (int i = 0; i < 100; i++) {
        must(tside_roll_wraps(&roll, 0.01 * i, &wraps, &fault));
        sink += wraps;
    }
}

static void check_side(void)
{
    must(tside_check(TSIDE_KIND_SIDE, &side, &fault));
}

/* --- a batch, by what its columns need: microseconds a row --- */

enum { ROWS = 64 };

static void batch(const char *path, int with_findings)
{
    double column[ROWS];
    int statuses[ROWS];
    unsigned long long findings[ROWS];
    tside_output out = {.data = column, .stride = sizeof *column};
    must(tside_field_find(TSIDE_KIND_PLAN, path, &out.place, &fault));
    must(tside_plan_sides(&side, ROWS, NULL, 0, &out, 1, statuses, with_findings ? findings : NULL, &fault));
    sink += column[ROWS - 1];
}

static void turns_alone(void)
{
    batch("drive_turns", 0);
}

static void torque_alone(void)
{
    batch("worst.drive", 0);
}

static void force_alone(void)
{
    batch("drive_end.side_force", 0);
}

static void everything(void)
{
    batch("drive_turns", 1);
}

/* The benchmark is worth nothing if its answers are wrong: the plumb closed forms, worked out here. */
static void check_answers(void)
{
    double te = 1.15 * 0.15e-3, core = 0.0354, n0 = 1, pi = 3.14159265358979323846;
    double shut = 0.3 - 0.1016, r0 = core / 2 + te, s0 = 1.7 - r0 - shut, open_n = plan.open.wraps,
           r1 = core / 2 + te * open_n;
    double taken = pi * (open_n * (core + te * open_n) - n0 * (core + te * n0));
    plan_one();
    open_n = plan.open.wraps;
    r1 = core / 2 + te * open_n;
    taken = pi * (open_n * (core + te * open_n) - n0 * (core + te * n0));
    if (!(fabs(plan.open.underside + 2 * r1 - (1.7 - 0.0762)) < 1e-9) ||
        !(fabs(plan.open.hanging - (s0 - taken)) < 1e-9) || !(fabs(plan.shut.underside - shut) < 1e-12)) {
        fprintf(stderr, "bench: the benchmark side's travel is wrong\n");
        failures++;
    }
}

int main(void)
{
    double whole;
    bench_side(&side);
    searching = side;
    searching.drive_end.extender.slant = searching.free_end.extender.slant = TSIDE_SLANT_BEST;
    searching.limits.kick_out_given = 1;
    searching.limits.kick_out = 0.1;
    searching.bar_count = 4;
    for (int i = 0; i < 4; i++) {
        searching.bars[i] = side.bar;
        searching.bars[i].tube.wall = 0.002 + 0.0005 * i;
    }
    bench_leaning_side(&leaning);
    bench_kinked_side(&kinked);
    collar = tside_drive_collar(&side.drive);
    check_answers();
    whole = median(plan_one, 2000);
    make_travel();
    best_eye();
    printf("one full plan, plumb    %8.2f us   (at most 20 asked)\n", 1e6 * whole);
    printf("  checking its fields   %8.2f us   %3.0f %%\n", 1e6 * median(check_side, 2000),
           100 * median(check_side, 2000) / whole);
    printf("  two best eyes         %8.2f us   %3.0f %%\n", 2e6 * median(best_eye, 2000),
           200 * median(best_eye, 2000) / whole);
    printf("  two guides swept      %8.2f us   %3.0f %%   eyes and sweeps dominate: least and greatest lean, sought "
           "along the travel\n",
           2e6 * median(sweep_guide, 2000), 200 * median(sweep_guide, 2000) / whole);
    printf("  bow, line and travel  %8.2f us   %3.0f %%\n", 1e6 * median(make_travel, 2000),
           100 * median(make_travel, 2000) / whole);
    printf("one full plan, leaning  %8.2f us   (at most 60 asked)\n", 1e6 * median(plan_leaning, 2000));
    printf("one full plan, kinked   %8.2f us   (at most 60 asked)\n", 1e6 * median(plan_kinked, 2000));
    printf("with two best angles    %8.2f us\n", 1e6 * median(plan_best_angle, 2000));
    printf("a row, turns alone      %8.2f us\n", 1e6 * median(turns_alone, 40) / ROWS);
    printf("a row, torque alone     %8.2f us\n", 1e6 * median(torque_alone, 40) / ROWS);
    printf("a row, side force alone %8.2f us\n", 1e6 * median(force_alone, 40) / ROWS);
    printf("a row with findings     %8.2f us\n", 1e6 * median(everything, 40) / ROWS);
    printf("least eye height        %8.2f us\n", 1e6 * median(least_eye, 50));
    printf("smallest of four bars   %8.2f us\n", 1e6 * median(smallest_bar, 200));
    plan_one();
    printf("all views of a side     %8.2f us   (at most 200 asked)\n", 1e6 * median(draw_all, 20));
    printf("tside_roll_wraps        %8.2f ns   (at most 15 asked)\n", 1e9 * median(roll_wraps, 20000) / 100);
    printf("longest side            is part of the full plan\n");
    if (!isfinite(sink))
        failures++;
    return failures > 0;
}
