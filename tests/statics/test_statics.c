/* SPDX-License-Identifier: MIT */
/*
 * Statics done over again in the tests: guide and drive cut free and solved in plane components, the bar by virtual
 * work.
 */
#include <check.h>
#include <math.h>
#include <stdlib.h>

#include <tunnelside/strength.h>

#include "linear.h"
#include "sides.h"

Suite *statics_suite(void);

enum { SIDES = 300, STEPS = 5 };

/*
 * Forces on the guide: the eye's, the collar's normal to it, and the couple with which the drive holds on to it. Force
 * on the drive: the bar's.
 */
typedef struct cut {
    double eye_x, eye_y, normal, couple, bar_x, bar_y;
} cut;

/*
 * Each body's forces across and up, and its moments about the frame's origin, must vanish. The pipe's weight is taken
 * piece by piece; the drive's acts its offset outboard of the axis; the bar turns back on the drive with the torque
 * that the drive gives.
 */
static cut cut_free(const side *s, const place *p, double torque)
{
    enum { PIECES = 50 };
    double phi = side_lean(s, p, 0), nx = cos(phi), ny = sin(phi), reach, cx, cy, pull = 0, moment = 0,
           Wd = GRAVITY * s->collar.mass;
    reach = (p->x - s->eye_x) * sin(phi) - (p->y - s->eye_y) * cos(phi);
    cx = s->eye_x + reach * sin(phi);
    cy = s->eye_y - reach * cos(phi);
    for (int i = 0; i < PIECES; i++) {
        double down = s->guide.chain + (s->hang.length - s->guide.chain) * (i + 0.5) / PIECES;
        pull += s->hang.weight / PIECES;
        moment += s->hang.weight / PIECES * (s->eye_x + down * sin(phi));
    }
    {
        double a[6][7] = {
            /* eye x, eye y, normal, couple, bar x, bar y = */
            {1, 0, nx, 0, 0, 0, 0},
            {0, 1, ny, 0, 0, 0, pull},
            {-s->eye_y, s->eye_x, cx * ny - cy * nx, 1, 0, 0, moment},
            {0, 0, -nx, 0, 1, 0, 0},
            {0, 0, -ny, 0, 0, 1, Wd},
            {0, 0, -(cx * ny - cy * nx), -1, -p->y, p->x, torque + Wd * (p->x + s->collar.mass_offset)},
        };
        solve(a[0], 6);
        return (cut){a[0][6], a[1][6], a[2][6], a[3][6], a[4][6], a[5][6]};
    }
}

FOR_SIDES(side_force_and_uplift_hold_the_guide, SIDES)
{
    side s = side_random(number);
    double open = side_place(&s, s.open).turns;
    for (int i = 0; i <= STEPS; i++) {
        double turns = open * i / STEPS, force, uplift;
        place p = side_place(&s, side_wraps(&s, turns));
        tside_torque t;
        tside_fault fault;
        cut c;
        ANSWERS(tside_lift_at(&s.travel, &s.load, &s.hang, turns, &t, &fault));
        ANSWERS(tside_side_force(&s.travel, &s.load, &s.hang, turns, &force, &uplift, &fault));
        c = cut_free(&s, &p, t.drive);
        NEAR(force, c.normal, 1e-9 * (1 + fabs(c.normal)), "side force", number);
        NEAR(uplift, fmax(0, -c.eye_y), 1e-9 * (1 + fabs(c.normal)), "uplift", number);
        NEAR(fabs(force), hypot(c.eye_x, c.eye_y - s.hang.weight), 1e-9 * (1 + fabs(c.normal)),
             "pull on the eye less the guide's weight", number);
        ck_assert(c.eye_x * force <= 0 &&
                  c.bar_x * force >=
                      0); /* it pulls the eye outboard, and presses the bar inboard, which must be held outboard */
        /* the free end hands on no torque */
        ANSWERS(tside_side_force(&s.travel, NULL, &s.hang, turns, &force, &uplift, &fault));
        c = cut_free(&s, &p, 0);
        NEAR(force, c.normal, 1e-9 * (1 + fabs(c.normal)), "side force without torque", number);
        NEAR(uplift, fmax(0, -c.eye_y), 1e-9 * (1 + fabs(c.normal)), "uplift without torque", number);
    }
}

/*
 * What the drive gives, less what the bar's end must do against the guide's push and the drive's weight as it moves,
 * lifts bar and curtain. The axis's way for each radian comes from differences of its place.
 */
FOR_SIDES(drive_and_guide_together_lift_the_bar, SIDES)
{
    side s = side_random(number);
    s.load.friction = 0;
    s.load.rope_pressure = 0;
    for (int k = 0; k < side_parts(&s); k++) {
        double from, to;
        int how = side_part(&s, k, &from, &to);
        for (int i = 1; i < STEPS; i++) {
            const double step = 1e-3;
            double n = from + (to - from) * i / STEPS, angle, vx, vy, given;
            place p = side_place_as(&s, how, n), a = side_place_as(&s, how, n - step),
                  b = side_place_as(&s, how, n + step);
            place aa = side_place_as(&s, how, n - 2 * step), bb = side_place_as(&s, how, n + 2 * step);
            side bare = s;
            tside_torque t;
            tside_fault fault;
            cut c;
            angle = 2 * PI * (8 * (b.turns - a.turns) - (bb.turns - aa.turns));
            vx = (8 * (b.x - a.x) - (bb.x - aa.x)) / angle;
            vy = (8 * (b.y - a.y) - (bb.y - aa.y)) / angle;
            ANSWERS(tside_lift_at(&s.travel, &s.load, &s.hang, p.turns, &t, &fault));
            c = cut_free(&s, &p, t.drive);
            given = t.drive - (c.bar_x * vx + c.bar_y * vy);
            bare.load.end_mass -= s.collar.mass;
            NEAR(given, side_lift(&bare, how, n), 1e-7 * t.drive, "torque and push on the bar", number);
        }
    }
}

Suite *statics_suite(void)
{
    Suite *suite = suite_create("statics");
    TCase *tcase = tcase_create("statics");
    tcase_add_test(tcase, side_force_and_uplift_hold_the_guide);
    tcase_add_test(tcase, drive_and_guide_together_lift_the_bar);
    suite_add_tcase(suite, tcase);
    return suite;
}
