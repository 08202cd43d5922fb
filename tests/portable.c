/* SPDX-License-Identifier: MIT */
/*
 * What another machine may see otherwise: runs the data rows, and prints every number of many sides' plans, their
 * findings' and refusals' words, and the plans of many cuts, a line each, for portable.sh to compare. Needs nothing but
 * the library and a C library, so that any target's compiler makes it. portable ROWS [SIDES]
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "calls.h"

/* Seeded, and of whole numbers alone, so that it is the same everywhere. */
static uint32_t seed;

static uint32_t chance(uint32_t of)
{
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 16) % of;
}

/* --- printing by the tables --- */

static void print_all(const char *what, const char *path, tside_kind kind, const char *structure)
{
    int count;
    const tside_field *at = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        const char *member = structure + at[i].offset;
        char name[256];
        if (!tside_field_applies(at + i, structure) ||
            (at[i].optional && !*(const int *)(const void *)(structure + at[i].given_offset)))
            continue;
        snprintf(name, sizeof name, "%s.%s", path, at[i].name);
        switch (at[i].type) {
        case TSIDE_NUMBER:
            printf("double\t%s%s\t%s\t%.17g\n", what, name, *at[i].unit ? at[i].unit : "1",
                   *(const double *)(const void *)member);
            break;
        case TSIDE_COUNT:
        case TSIDE_CHOICE: printf("whole\t%s%s\t%d\n", what, name, *(const int *)(const void *)member); break;
        case TSIDE_GROUP: print_all(what, name, at[i].kind, member); break;
        case TSIDE_LIST:
            for (int k = 0; k < *(const int *)(const void *)(structure + at[i].count_offset); k++) {
                snprintf(name, sizeof name, "%s.%s[%d]", path, at[i].name, k);
                print_all(what, name, at[i].kind, member + (size_t)k * at[i].stride);
            }
            break;
        }
    }
}

/* --- sides --- */

/* Here and there a number a tenth more or less, or another choice. */
static void vary(tside_kind kind, char *structure)
{
    int count;
    const tside_field *at = tside_fields(kind, &count);
    for (int i = 0; i < count; i++) {
        char *member = structure + at[i].offset;
        if (at[i].type == TSIDE_GROUP)
            vary(at[i].kind, member);
        else if (at[i].type == TSIDE_NUMBER && chance(8) == 0)
            *(double *)(void *)member *= 0.9 + chance(1024) / 5120.0;
        else if (at[i].type == TSIDE_CHOICE && chance(24) == 0)
            *(int *)(void *)member = (int)chance((uint32_t)at[i].choice_count);
    }
}

static int side_planned(int number)
{
    tside_side side;
    tside_plan plan;
    tside_fault fault;
    char what[32], words[512];
    tside_status status;
    seed = (uint32_t)number;
    bench_any_side(&side, number);
    if (number >= 3)
        vary(TSIDE_KIND_SIDE, (char *)&side);
    snprintf(what, sizeof what, "side %d", number);
    status = tside_plan_side(&side, &plan, &fault);
    if (status != TSIDE_OK) {
        tside_fault_text(&fault, words, sizeof words);
        printf("text\t%s\t%s\n", what, words);
        return 0;
    }
    print_all(what, "", TSIDE_KIND_PLAN, (const char *)&plan);
    for (int i = 0; i < plan.finding_count; i++) {
        tside_finding_text(plan.findings + i, words, sizeof words);
        printf("text\t%s\t%s\n", what, words);
    }
    return 1;
}

/* --- cuts --- */

static void cuts_planned(int number)
{
    enum { KINDS = 12, STICKS = 100 };
    static tside_stick sticks[STICKS];
    static int taken[STICKS * KINDS];
    tside_stock stock;
    tside_cut cuts[KINDS];
    tside_cut_plan plan;
    tside_fault fault;
    char what[32];
    int count;
    const size_t size = tside_stock_work(KINDS);
    void *work = malloc(size);
    seed = 77u + (uint32_t)number;
    tside_usual(TSIDE_KIND_STOCK, &stock);
    stock.length_count = 1;
    stock.lengths[0].length = 6;
    for (int i = 0; i < KINDS; i++)
        cuts[i] = (tside_cut){0.3 + 0.001 * chance(2700), 1 + (int)chance(6)};
    snprintf(what, sizeof what, "cuts %d", number);
    if (!work ||
        tside_stock_plan(&stock, cuts, KINDS, 0, work, size, sticks, taken, STICKS, &count, &plan, &fault) != TSIDE_OK)
        exit(1);
    print_all(what, "", TSIDE_KIND_CUT_PLAN, (const char *)&plan);
    for (int i = 0; i < count; i++) {
        printf("whole\t%s.sticks[%d]\t%d of", what, i, sticks[i].count);
        for (int k = 0; k < KINDS; k++)
            printf(" %d", taken[i * KINDS + k]);
        putchar('\n');
    }
    free(work);
}

int main(int count, char **arguments)
{
    const int sides = count > 2 ? atoi(arguments[2]) : 1000;
    int planned = 0, wrong = 0;
    rows all = rows_read(arguments[1]);
    if (*all.wrong) {
        fprintf(stderr, "%s\n", all.wrong);
        return 1;
    }
    for (int i = 0; i < all.count; i++) {
        tside_status status;
        why w;
        if (!run_row(all.row + i, &status, &w)) {
            fprintf(stderr, "%s: %s: %s\n", all.row[i].place, all.row[i].function, w.text);
            wrong++;
        }
    }
    for (int i = 0; i < sides; i++)
        planned += side_planned(i);
    for (int i = 0; i < 20; i++)
        cuts_planned(i);
    fprintf(stderr, "%d of %d rows, %d of %d sides planned\n", all.count - wrong, all.count, planned, sides);
    return wrong != 0;
}
