/* SPDX-License-Identifier: MIT */
/* A side whose bar is made from stock, and what is taken off it. */
#ifndef TUNNELSIDE_TAKEOFFS_H
#define TUNNELSIDE_TAKEOFFS_H

#include <check.h>

#include <tunnelside.h>

#include "plans.h"

#define INCH 0.0254 /* m, exact: yard and pound agreement of 1959 */

/*
 * Its bar is made from stock, 6.4 m with 4 in lost in each joint; it runs on 9 in to the drive and 4 in at the free
 * end, and so does the curtain past each bow.
 */
static inline tside_side stocked(void)
{
    tside_side side;
    bench_side(&side);
    side.curtain.past = 9 * INCH;
    side.drive_end.alignment = side.free_end.alignment = TSIDE_RUN_ON_GIVEN;
    side.bar.past_drive = 9 * INCH;
    side.bar.past_free = 4 * INCH;
    side.collar.half_length = side.collar.clearance = 0;
    side.bar.joints = TSIDE_JOINTS_FROM_STOCK;
    side.bar.stock = 6.4;
    return side;
}

static inline tside_fittings usual(void)
{
    tside_fittings fittings;
    tside_usual(TSIDE_KIND_FITTINGS, &fittings);
    return fittings;
}

typedef struct taken {
    int count;
    tside_item item[TSIDE_ITEMS];
} taken;

static inline taken take(const tside_side *side, const tside_fittings *fittings)
{
    taken t;
    tside_plan plan = planned(side);
    tside_fault fault;
    ANSWERS(tside_takeoff(side, &plan, fittings, t.item, TSIDE_ITEMS, &t.count, &fault));
    return t;
}

/* The first line of a code, at either end; NULL where there is none. */
static inline const tside_item *line_of(const taken *t, tside_item_code code)
{
    for (int i = 0; i < t->count; i++)
        if (t->item[i].code == code)
            return t->item + i;
    return NULL;
}

static inline int count_of(const taken *t, tside_item_code code)
{
    int count = 0;
    for (int i = 0; i < t->count; i++)
        count += t->item[i].code == code ? t->item[i].count : 0;
    return count;
}

/* m, of all pieces of a code together */
static inline double length_of(const taken *t, tside_item_code code)
{
    double length = 0;
    for (int i = 0; i < t->count; i++)
        length += t->item[i].code == code ? t->item[i].count * t->item[i].length : 0;
    return length;
}

#endif
