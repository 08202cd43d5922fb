/* SPDX-License-Identifier: MIT */
/* Sides with their end walls as they are drawn. */
#ifndef TUNNELSIDE_SCENES_H
#define TUNNELSIDE_SCENES_H

#include <check.h>
#include <math.h>

#include <tunnelside.h>

#include "expect.h"
#include "plans.h"

/* What is drawn, with what it is compared to, made apart from the drawing. */
typedef struct scene {
    tside_side side;
    tside_plan plan;
    tside_bow bow;
    tside_travel travel;
    tside_which_end which;
    const tside_end *end;
    const tside_end_plan *end_plan;
    double face;     /* m, the bow's outer face at hip height */
    double outboard; /* 1, or -1 where outboard is to the left as seen */
    tside_drawing drawing;
} scene;

static inline void stand_guide(tside_end *end)
{
    end->guide.foot = TSIDE_FOOT_FIXED;
    end->rise = 0.45;
}

/* Of every shape of bow, either hand, with what an end may have: its number decides. */
static inline tside_side side_of(int number)
{
    tside_side side;
    bench_any_side(&side, number);
    side.hand = number / 3 % 2 ? TSIDE_LEFT : TSIDE_RIGHT;
    side.curtain.rail_depth = number % 2 ? 0.02 : 0;
    switch (number / 6 % 4) {
    case 0:
        side.drive_end.extender.spacer = 0.01;
        side.free_end.alignment = TSIDE_RUN_ON_GIVEN; /* its guide leans along the house */
        side.bar.past_free = 0.15;
        break;
    case 1:
        on_hip(&side);
        side.stops.gap = 0.3;
        break;
    case 2:
        side.free_end.hip_height_given = 1;
        side.free_end.hip_height = side.curtain.hip - 0.05;
        side.free_end.extender.member_height -= 0.05;
        side.free_end.keep_out_count = 2;
        side.free_end.keep_outs[0] = (tside_keep_out){4.3, 4.5, 0, 0.4};
        side.free_end.keep_outs[1] = (tside_keep_out){4.7, 4.75, 0, 0.4};
        break;
    default:
        stand_guide(&side.drive_end);
        stand_guide(&side.free_end);
        break;
    }
    return side;
}
enum { SIDES = 24 };

static inline void draw_as(scene *s, const tside_picture *picture)
{
    tside_fault fault;
    ANSWERS(tside_draw(&s->side, &s->plan, picture, &s->drawing, &fault));
}

static inline tside_picture picture_of(const scene *s, double scale)
{
    return (tside_picture){.view = TSIDE_VIEW_END_WALL, .end = s->which, .tape = TSIDE_TAPE_INCH, .scale = scale};
}

static inline void make_scene(scene *s, const tside_side *side, tside_which_end which)
{
    tside_fault fault;
    tside_picture picture;
    s->side = *side;
    s->plan = planned(side);
    s->travel = travel_of(side);
    ANSWERS(tside_bow_make(&side->frame, &s->bow, &fault));
    ANSWERS(tside_bow_face(&s->bow, side->curtain.hip, &s->face, &fault));
    s->which = which;
    s->end = which == TSIDE_DRIVE_END ? &s->side.drive_end : &s->side.free_end;
    s->end_plan = which == TSIDE_DRIVE_END ? &s->plan.drive_end : &s->plan.free_end;
    s->outboard = (side->hand == TSIDE_RIGHT) == (which == TSIDE_DRIVE_END) ? 1 : -1;
    picture = picture_of(s, 20);
    draw_as(s, &picture);
}

/* Both ends of every side in turn. */
#define FOR_WALLS(name) \
    static void name##_on(const scene *s, int number); \
    START_TEST(name) \
    { \
        static scene s; \
        for (int each = 0; each < 2 * SIDES; each++) { \
            const tside_side side = side_of(each / 2); \
            make_scene(&s, &side, each % 2 ? TSIDE_FREE_END : TSIDE_DRIVE_END); \
            name##_on(&s, each); \
        } \
    } \
    END_TEST \
    static void name##_on(const scene *s, int number)

#endif
