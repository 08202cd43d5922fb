/* SPDX-License-Identifier: MIT */
/* What a curtain hangs from and a roll bears on, found from a fine polyline. */
#ifndef TUNNELSIDE_HULL_H
#define TUNNELSIDE_HULL_H

#include <check.h>
#include <math.h>

#include "curves.h"

static inline double stretch_end(const tside_travel *travel, int i)
{
    return i + 1 < travel->stretches ? travel->stretch[i + 1].from : travel->end;
}

/* --- the hull --- */

/*
 * The line again: the outboard chain of the convex hull, from the fixing down, with the distance down to each corner.
 */
typedef struct hull {
    polyline corner;
    double down[POINTS];
} hull;

/* Where a point stands to the way from one to another, which goes down: above 0 outboard of it. */
static inline double outboard_of(const polyline *p, int from, int to, double x, double y)
{
    return (p->y[from] - p->y[to]) * (x - p->x[from]) + (p->x[to] - p->x[from]) * (y - p->y[from]);
}

/*
 * Andrew's monotone chain (Information Processing Letters 9, 1979), from memory: a corner goes when the next point
 * shows that it lies inboard.
 */
static inline void wrap(hull *h, double x, double y)
{
    polyline *p = &h->corner;
    while (p->count > 1 && outboard_of(p, p->count - 2, p->count - 1, x, y) >= 0)
        p->count--;
    add_point(p, x, y);
}

static inline const hull *hull_of(const outside *o)
{
    static hull h;
    polyline *p = &h.corner;
    int board = o->board, outermost = 0;
    p->count = 0;
    add_point(p, o->fixing_x, o->fixing_y);
    for (int i = o->face.count - 1; i >= 0; i--) {
        if (board && o->face.y[i] < o->board_y) {
            wrap(&h, o->board_x, o->board_y);
            board = 0;
        }
        if (o->face.y[i] < o->fixing_y - 1e-12)
            wrap(&h, o->face.x[i], o->face.y[i]);
    }
    for (int i = 1; i < p->count; i++)
        if (p->x[i] > p->x[outermost] + 1e-12)
            outermost = i;
    p->count = outermost + 1;
    add_point(p, p->x[outermost], p->y[outermost] - deep); /* plumb from there on */
    h.down[0] = 0;
    for (int i = 1; i < p->count; i++)
        h.down[i] = h.down[i - 1] + hypot(p->x[i] - p->x[i - 1], p->y[i] - p->y[i - 1]);
    return &h;
}

/* The place at a distance down; returns which part of the chain holds it. */
static inline int hull_at(const hull *h, double distance, double *x, double *y)
{
    int low = 0, high = h->corner.count - 1;
    double share;
    while (low + 1 < high) {
        int middle = (low + high) / 2;
        if (h->down[middle] <= distance)
            low = middle;
        else
            high = middle;
    }
    share = (distance - h->down[low]) / (h->down[high] - h->down[low]);
    *x = h->corner.x[low] + share * (h->corner.x[high] - h->corner.x[low]);
    *y = h->corner.y[low] + share * (h->corner.y[high] - h->corner.y[low]);
    return low;
}

/* --- where the bar is --- */

/* Whether the roll has not tipped yet, lies slack on the baseboard, or hangs again. */
enum { BEFORE_TIPPING, LIES_SLACK, HANGS_AGAIN };

static inline int tipped_at(const curved *c, double wraps)
{
    for (int i = 0; i < c->travel.stretches; i++)
        if (c->travel.stretch[i].held == TSIDE_HELD_TIPPED) {
            double lead = c->travel.stretch[i].lead;
            return wraps < c->travel.stretch[i].from - lead     ? BEFORE_TIPPING
                   : wraps <= stretch_end(&c->travel, i) - lead ? LIES_SLACK
                                                                : HANGS_AGAIN;
        }
    return BEFORE_TIPPING;
}

/* --- work and energy --- */

/* Whether the guide would turn as fast as the bar, so that no torque drives it. */
static inline int guide_runs_away(const curved *c)
{
    double work;
    return c->hung && tside_lift_work(&c->travel, &c->load, &c->hang, 0, &work, NULL) == TSIDE_OUT_OF_REACH;
}

/* --- corners, and the tipping board --- */

static inline void must_make(curved *c)
{
    tside_fault fault;
    ANSWERS(curved_make(c, &fault));
}

/* A whole side round it, its guides hung on the hip. */
static inline tside_side whole_side(const curved *c)
{
    tside_side side;
    tside_usual(TSIDE_KIND_SIDE, &side);
    side.length = 30;
    side.frame = c->frame;
    side.curtain = c->curtain;
    side.stops = c->stops;
    side.stops.gap = 0.3;
    side.bar.core_over = 0.002;
    side.bar.tube = (tside_round){c->roll.core - side.bar.core_over, 0.002};
    side.drive.rated_torque_given = 1;
    side.drive.rated_torque = 60;
    side.drive_end.guide = side.free_end.guide = c->guide;
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_HIP;
    return side;
}

#endif
