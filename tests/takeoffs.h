/* SPDX-License-Identifier: MIT */
/* A side whose bar is made from stock, and what is taken off it. */
#ifndef TUNNELSIDE_TAKEOFFS_H
#define TUNNELSIDE_TAKEOFFS_H

#include <check.h>

#include <tunnelside.h>

#include "plans.h"

#define INCH 0.0254 /* m, exact: yard and pound agreement of 1959 */

/* Its bar is made from stock, 6.4 m with 4 in lost in each joint. */
static inline tside_side stocked(void)
{
    tside_side side;
    bench_side(&side);
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
