/* SPDX-License-Identifier: MIT */
/* Along every kind of bow, the work of the torque is the gain of energy, and that is the energy of all pieces. */
#include <check.h>
#include <math.h>

#include "curves.h"
#include "hull.h"
#include "shape/spot.h"
#include "statics/lift.h"

Suite *work_suite(void);

/*
 * Potential energy of curtain, bar and what is fixed to it, and of the guide if it hangs, apart from the library: over
 * the polyline, or a straight chord.
 */
static double energy(const curved *c, const hull *h, const tside_position *p, int guide)
{
    const tside_load *w = &c->load;
    double sheet = w->areal_mass + w->wet, te = c->roll.packing * c->roll.thickness,
           wound = PI * p->wraps * (c->roll.core + te * p->wraps), hanging = 0, e;
    if (p->hanging <= h->down[1]) /* straight from the fixing to where it meets the roll */
        hanging = p->hanging * (h->corner.y[0] + p->y - p->diameter / 2 * sin(p->slope)) / 2;
    else
        for (int i = 0; i + 1 < h->corner.count && h->down[i] < p->hanging; i++) {
            double to = fmin(h->down[i + 1], p->hanging), x, y;
            hull_at(h, (h->down[i] + to) / 2, &x, &y);
            hanging += (to - h->down[i]) * y;
        }
    e = GRAVITY * w->length * ((w->bar_mass + w->clip_mass + sheet * wound) * p->y + sheet * hanging) +
        GRAVITY * w->end_mass * p->y;
    if (guide) {
        const tside_hang *g = &c->hang;
        double lean = atan2(p->x - g->eye_x, g->eye_y - p->y) +
                      asin(g->offset / hypot(p->x - g->eye_x, p->y - g->eye_y));
        e += -g->weight * (g->chain + g->length) / 2 * cos(lean) + g->carried * g->carried_offset * lean;
    }
    return e;
}

/* N, of all that is lifted. */
static double weight(const curved *c, const tside_position *p, int guide)
{
    const tside_load *w = &c->load;
    double te = c->roll.packing * c->roll.thickness,
           curtain = p->hanging + PI * p->wraps * (c->roll.core + te * p->wraps);
    return GRAVITY * (w->length * (w->bar_mass + w->clip_mass + (w->areal_mass + w->wet) * curtain) + w->end_mass) +
           (guide ? c->hang.weight + c->hang.carried : 0);
}

FOR_CURVED(energy_is_that_of_all_pieces)
{
    enum { PLACES = 6 };
    const outside *o = outside_of(c);
    const hull *h = hull_of(o);
    int guide = c->hung && !guide_runs_away(c);
    tside_position shut, p;
    tside_fault fault;
    ANSWERS(tside_travel_at(&c->travel, 0, &shut, &fault));
    for (int k = 1; k <= PLACES; k++) {
        double turns = c->open * k / PLACES, work, gain;
        ANSWERS(tside_travel_at(&c->travel, turns, &p, &fault));
        if (tipped_at(c, p.wraps) == LIES_SLACK)
            continue;
        ANSWERS(tside_lift_work(&c->travel, &c->load, guide ? &c->hang : NULL, turns, &work, &fault));
        gain = energy(c, h, &p, guide) - energy(c, h, &shut, guide);
        NEAR(work, gain, 2 * o->grain * weight(c, &p, guide), "gain", c->number);
        note(c, fabs(work / gain - 1));
    }
}

typedef struct work {
    double lift, drive; /* J */
} work;

static work plus(work a, work b)
{
    return (work){a.lift + b.lift, a.drive + b.drive};
}

/*
 * Over part of a stretch, by the rule of Gauss and Legendre with five nodes (Abramowitz and Stegun, table 25.4); the
 * drive's over its own angle, which the guide's turning takes away from.
 */
static work work_over(const curved *c, const tside_hang *hang, int stretch, double from, double to)
{
    static const double node[] = {0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640};
    static const double weight[] = {0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891,
                                    0.2369268850561891};
    tside_i_lifting lifting = {NULL, &c->load, NULL, hang, 0}; /* a torque asks for no track */
    work sum = {0, 0};
    for (int k = 0; k < 5; k++) {
        tside_i_spot spot;
        tside_torque torque;
        double angle;
        tside_i_travel_spot(&c->travel, stretch, (from + to) / 2 + node[k] * (to - from) / 2, &spot);
        torque = tside_i_torque(&lifting, &spot);
        angle = PI * (to - from) * weight[k] /
                (spot.share > 0 ? spot.share
                                : 1); /* at a corner, where nothing is wound on, progress is the bar's turns */
        sum.lift += angle * torque.lift;
        if (hang)
            sum.drive += angle * torque.drive * (1 - tside_i_hang_lean(hang, &spot).rate);
    }
    return sum;
}

/*
 * Halves where the halves' sum differs from the whole, as it does close to tipping, where the chord turns ever faster.
 */
static work refined(const curved *c, const tside_hang *hang, int stretch, double from, double to, work whole, int depth)
{
    double middle = (from + to) / 2;
    work a = work_over(c, hang, stretch, from, middle), b = work_over(c, hang, stretch, middle, to), both = plus(a, b);
    if (depth == 0 || fabs(both.lift - whole.lift) + fabs(both.drive - whole.drive) < 1e-12 * (fabs(whole.lift) + 1))
        return both;
    return plus(refined(c, hang, stretch, from, middle, a, depth - 1),
                refined(c, hang, stretch, middle, to, b, depth - 1));
}

/* Each stretch by itself; those in which the roll has tipped, and nothing lifts it, are left out. */
FOR_CURVED(work_is_the_gain_of_energy)
{
    const tside_hang *hang = c->hung && !guide_runs_away(c) ? &c->hang : NULL;
    tside_i_spot shut, open;
    double all, all_driven;
    c->load.friction = c->load.rope_pressure = 0;
    tside_i_travel_spot(&c->travel, 0, c->travel.wraps_shut, &shut);
    tside_i_travel_at(&c->travel, c->travel.end, &open);
    all = tside_i_energy(&c->travel, &c->load, NULL, &open) - tside_i_energy(&c->travel, &c->load, NULL, &shut);
    all_driven = tside_i_energy(&c->travel, &c->load, hang, &open) - tside_i_energy(&c->travel, &c->load, hang, &shut);
    for (int i = 0; i < c->travel.stretches; i++) {
        double from = c->travel.stretch[i].from, to = stretch_end(&c->travel, i), gain, driven, off;
        tside_i_spot low, high;
        work done;
        if (c->travel.stretch[i].held == TSIDE_HELD_TIPPED)
            continue;
        done = refined(c, hang, i, from, to, work_over(c, hang, i, from, to), 40);
        tside_i_travel_spot(&c->travel, i, from, &low);
        tside_i_travel_spot(&c->travel, i, to, &high);
        gain = tside_i_energy(&c->travel, &c->load, NULL, &high) - tside_i_energy(&c->travel, &c->load, NULL, &low);
        driven = tside_i_energy(&c->travel, &c->load, hang, &high) - tside_i_energy(&c->travel, &c->load, hang, &low);
        off = fmax(fabs(done.lift - gain) / all, hang ? fabs(done.drive - driven) / all_driven : 0);
        NEAR(off, 0, 1e-9, "work and gain", c->number);
        note(c, off);
    }
}

Suite *work_suite(void)
{
    Suite *suite = suite_create("work");
    TCase *tcase = tcase_create("work");
    tcase_add_test(tcase, energy_is_that_of_all_pieces);
    tcase_add_test(tcase, work_is_the_gain_of_energy);
    suite_add_tcase(suite, tcase);
    return suite;
}
