/* SPDX-License-Identifier: MIT */
/*
 * The side that the benchmark plans: invented, a plumb wall on extenders at both ends, with a given angle so that no
 * search is timed.
 */
#ifndef TUNNELSIDE_BENCH_SIDE_H
#define TUNNELSIDE_BENCH_SIDE_H

#include <tunnelside.h>

static inline void bench_end(tside_end *end)
{
    end->guide.tube = (tside_round){0.0334, 0.00165};
    end->guide.material.grade = TSIDE_A53_B;
    end->extender.tube = (tside_square){.side = 0.0508, .wall = 0.003};
    end->extender.material.grade = TSIDE_A500_B_SHAPED;
    end->extender.eye_material.grade = TSIDE_GRADE_UNKNOWN;
    end->extender.slant = TSIDE_SLANT_ANGLE;
    end->extender.angle = 0.7;
    end->extender.member_height = 1.0;
    end->extender.member_outer = 4.6;
    end->extender.stock_given = 1;
    end->extender.stock = 6.0;
}

static inline void bench_side(tside_side *side)
{
    tside_usual(TSIDE_KIND_SIDE, side);
    side->length = 29.26;
    side->frame.tube = (tside_round){0.0483, 0.0025};
    side->frame.width = 9.144;
    side->frame.leg_height = 1.75;
    side->frame.peak_height = 3.7;
    side->curtain.hip = 1.7;
    side->curtain.sill = 0.3;
    side->bar.tube = (tside_round){0.0334, 0.0025};
    side->bar.material.grade = TSIDE_A53_B;
    side->bar.splices = 4;
    side->drive.rated_torque_given = 1;
    side->drive.rated_torque = 60;
    side->drive.stall_torque_given = 1;
    side->drive.stall_torque = 150;
    bench_end(&side->drive_end);
    bench_end(&side->free_end);
}

/*
 * A half circle that leans out over the ground, with a board that stands out: free chord, arcs and a corner in one
 * travel.
 */
static inline void bench_leaning_side(tside_side *side)
{
    bench_side(side);
    side->frame.leg_height = 0;
    side->frame.peak_height = side->frame.width / 2;
    side->frame.board = TSIDE_BOARD_OUTSIDE;
    side->frame.board_top = 0.3;
    side->frame.board_stand = 0.04;
    side->curtain.hip = 1.6;
    side->drive_end.extender.member_outer = side->free_end.extender.member_outer = 4.4;
}

/* A flat arch that meets its leg in a kink below the hip. */
static inline void bench_kinked_side(tside_side *side)
{
    bench_side(side);
    side->frame.leg_height = 1.3;
    side->frame.peak_height = 3.2;
    side->drive_end.extender.member_height = side->free_end.extender.member_height = 0.9;
}

/* One of the three, by a number. */
static inline void bench_any_side(tside_side *side, int number)
{
    if (number % 3 == 0)
        bench_side(side);
    else if (number % 3 == 1)
        bench_leaning_side(side);
    else
        bench_kinked_side(side);
}

#endif
