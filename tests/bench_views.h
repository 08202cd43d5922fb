/* SPDX-License-Identifier: MIT */
/* Every view of a side that a plan is there for, both ends where there are two, at scales that sheets have. */
#ifndef TUNNELSIDE_BENCH_VIEWS_H
#define TUNNELSIDE_BENCH_VIEWS_H

#include <tunnelside.h>

/* sum: something of every drawing is added, so that none is made for nothing. */
static inline tside_status bench_all_views(const tside_side *side, const tside_plan *plan, double *sum,
                                           tside_fault *fault)
{
    static const struct {
        tside_view view;
        double scale;
        int ends;
    } views[] = {{TSIDE_VIEW_END_WALL, 20, 2}, {TSIDE_VIEW_WHOLE_WALL, 100, 2}, {TSIDE_VIEW_CORNER, 5, 2},
                 {TSIDE_VIEW_EXTENDER, 10, 2}, {TSIDE_VIEW_ALONG, 200, 1},      {TSIDE_VIEW_ROLL_SHUT, 5, 1},
                 {TSIDE_VIEW_ROLL_OPEN, 5, 1}, {TSIDE_VIEW_TURNS, 1, 1}};
    static tside_drawing drawing;
    for (size_t i = 0; i < sizeof views / sizeof *views; i++)
        for (int end = 0; end < views[i].ends; end++) {
            const tside_picture picture = {.view = views[i].view, .end = (tside_which_end)end, .scale = views[i].scale};
            const tside_status status = tside_draw(side, plan, &picture, &drawing, fault);
            if (status != TSIDE_OK)
                return status;
            *sum += drawing.right;
        }
    return TSIDE_OK;
}

#endif
