/* SPDX-License-Identifier: MIT */
/* Sides with an extender, and the bow that it stands under, apart from the library. */
#ifndef TUNNELSIDE_EXTENDERS_H
#define TUNNELSIDE_EXTENDERS_H

#include <check.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "sides.h"

enum { SIDES = 120, ANGLES = 20000, SAMPLES = 2000 };

#define DEGREES (PI / 180)

/* --- the bow, apart from the library --- */

/* How far outboard the centreline stands at a height, and how fast that changes with height. */
static inline double bow_x(const side *s, double y, double *rate)
{
    const tside_frame *f = &s->frame;
    double d = f->tube.diameter, out = f->measured == TSIDE_OUTSIDE ? d / 2 : 0;
    if (f->shape == TSIDE_THREE_POINTS) { /* straight in all of these tests */
        double run = f->peak_x - f->foot_x, rise = f->peak_height - f->foot_height;
        *rate = run / rise;
        return f->foot_x + (y - f->foot_height) * *rate - out * hypot(run, rise) / rise;
    } else {
        double a = f->width / 2 - out, h = f->leg_height, rise = f->peak_height - out - h, R, cx, cy, root;
        *rate = 0;
        if (y <= h)
            return a;
        R = rise >= a ? (rise * rise + a * a) / (2 * a) : (rise * rise + a * a) / (2 * rise);
        cx = rise >= a ? a - R : 0;
        cy = rise >= a ? h : h + rise - R;
        root = sqrt(R * R - (y - cy) * (y - cy));
        *rate = -(y - cy) / root;
        return cx + root;
    }
}

/* A straight one ends at its third point. */
static inline int beyond_top(const side *s, double y)
{
    return s->frame.shape == TSIDE_THREE_POINTS && s->frame.measured == TSIDE_CENTRELINE &&
           y > s->frame.peak_height + 1e-9;
}

/*
 * How far the tube runs from the eye to the bow; infinite if it misses. A bow bulges outboard, so that how far the tube
 * is outboard of it is a function that bends upward along the tube, on which Newton's steps from the eye stop short of
 * the first crossing until they have it.
 */
static inline double reach_bow(const side *s, double angle)
{
    double t = 0;
    for (int i = 0; i < 60; i++) {
        double rate, off = s->eye_x - t * sin(angle) - bow_x(s, s->eye_y - t * cos(angle), &rate),
                     closing = sin(angle) - rate * cos(angle);
        if (fabs(off) < 1e-14)
            return beyond_top(s, s->eye_y - t * cos(angle)) ? HUGE_VAL : t;
        if (off < 0)
            return i ? t : HUGE_VAL;
        if (closing <= 0)
            return HUGE_VAL;
        t += off / closing;
        if (t > 1000)
            return HUGE_VAL;
    }
    return beyond_top(s, s->eye_y - t * cos(angle)) ? HUGE_VAL : t;
}

/*
 * How far along the centreline a height on it is from where it bends otherwise: the leg's top, the peak of a pointed
 * bow, the end of a straight one.
 */
static inline double from_bend(const side *s, double y)
{
    const tside_frame *f = &s->frame;
    double d = f->tube.diameter, out = f->measured == TSIDE_OUTSIDE ? d / 2 : 0;
    if (f->shape == TSIDE_THREE_POINTS) { /* straight in all of these tests */
        double run = f->peak_x - f->foot_x, rise = f->peak_height - f->foot_height, length = hypot(run, rise);
        return fabs(f->peak_height + out * run / length - y) * length / rise;
    } else {
        double a = f->width / 2 - out, h = f->leg_height, rise = f->peak_height - out - h, R, cx, cy, along, nearest;
        R = rise >= a ? (rise * rise + a * a) / (2 * a) : (rise * rise + a * a) / (2 * rise);
        cx = rise >= a ? a - R : 0;
        cy = rise >= a ? h : h + rise - R;
        along = y <= h ? y - h : R * (asin((y - cy) / R) - atan2(h - cy, a - cx));
        nearest = h > 0 ? fabs(along) : HUGE_VAL;
        return rise > a ? fmin(nearest, R * (atan2(rise, R - a) - atan2(h - cy, a - cx)) - along) : nearest;
    }
}

/* As far as the hole in the bow keeps off that, where it can: this library's choice, two of the tube's diameters. */
static inline double hole_keeps_off(const side *s)
{
    return 2 * s->frame.tube.diameter;
}

/* --- sides with an extender --- */

typedef struct fitted {
    side s;
    tside_extender e;
} fitted;

/* Bounds so wide that none binds. */
static inline tside_extender roomy(const side *s)
{
    tside_extender e;
    memset(&e, 0, sizeof e);
    tside_usual(TSIDE_KIND_EXTENDER, &e);
    e.tube = (tside_square){0.0508, 0.003, TSIDE_CORNER_STANDARD, 0, 0};
    e.member_height = s->curtain.hip - 0.7;
    e.member_inner = -20;
    e.member_outer = 30;
    e.spacing = 0.2;
    e.stock_given = 1;
    e.stock = 20;
    e.bar_clearance = 0;
    return e;
}

static inline fitted random_fitted(int number)
{
    fitted f;
    dice d = {(uint64_t)number};
    f.s = side_random(number);
    f.s.eye = BEST_EYE;
    f.s.eye_y = f.s.curtain.hip + dice_between(&d, 0.35, 0.5);
    side_make(&f.s);
    f.e = roomy(&f.s);
    f.e.member_height = f.s.curtain.hip - dice_between(&d, 0.2, 1);
    f.e.end_distance = dice_between(&d, 0.02, 0.05);
    f.e.tail = dice_between(&d, 0, 0.08);
    return f;
}

static inline tside_status lay_out(const fitted *f, tside_layout *layout, tside_fault *fault)
{
    return tside_extender_layout(&f->e, &f->s.bow, f->s.curtain.hip, f->s.eye_x, f->s.eye_y, &f->s.travel, layout,
                                 fault);
}

static inline tside_layout layout_of(const fitted *f)
{
    tside_layout layout;
    tside_fault fault;
    ANSWERS(lay_out(f, &layout, &fault));
    return layout;
}

/* --- plane geometry --- */

/*
 * Length of the bow between two heights, as a string of short chords, none of which cuts the corner at the leg's top.
 */
static inline double along_bow(const side *s, double from, double to)
{
    enum { CHORDS = 2000 };
    double sum = 0, rate, top = s->frame.leg_height;
    if (to > top && top > from)
        return along_bow(s, from, top) + along_bow(s, top, to);
    for (int i = 0; i < CHORDS; i++) {
        double low = from + (to - from) * i / CHORDS, high = from + (to - from) * (i + 1) / CHORDS;
        sum += hypot(high - low, bow_x(s, high, &rate) - bow_x(s, low, &rate));
    }
    return to < from ? -sum : sum;
}

/* Distance from a point to the bow's centreline, near a height. */
static inline double to_bow(const side *s, double x, double y)
{
    double least = HUGE_VAL, rate;
    for (int i = -2000; i <= 2001; i++) {
        double at = i == 2001 ? s->frame.leg_height : y + i * 5e-5; /* the corner at the leg's top is one of them */
        least = fmin(least, hypot(x - bow_x(s, at, &rate), y - at));
    }
    return least;
}

/*
 * How high on the bow the place on its outer face lies that the tube meets: farther up than the hole, the more so the
 * nearer the tube runs beside the bow.
 */
static inline double foot_of_face(const side *s, double angle, double hole)
{
    double rate, up, cosine;
    bow_x(s, hole, &rate);
    up = 1 / hypot(rate, 1);
    cosine = (rate * sin(angle) + cos(angle)) * up;
    return hole + s->frame.tube.diameter / 2 * cosine / sqrt(1 - cosine * cosine) * up;
}

static inline void check_geometry(const fitted *f, const tside_layout *l, int number)
{
    const side *s = &f->s;
    double d = s->frame.tube.diameter, sine = sin(l->angle), cosine = cos(l->angle), rate,
           face = s->fixing_x - s->curtain.standoff;
    /* both holes lie on the tube's centreline from the eye, one on the bow's centreline, one at the member's height */
    NEAR(l->bow_x, bow_x(s, l->bow_height, &rate), 1e-11, "bow's hole on the bow", number);
    NEAR((s->eye_x - l->bow_x) * cosine - (s->eye_y - l->bow_height) * sine, 0, 1e-12, "bow's hole on the tube",
         number);
    NEAR((s->eye_x - l->member_x) * cosine - (s->eye_y - f->e.member_height) * sine, 0, 1e-12,
         "member's hole on the tube", number);
    NEAR(l->bow_distance, hypot(s->eye_x - l->bow_x, s->eye_y - l->bow_height), 1e-12, "eye to bow", number);
    NEAR(l->bow_distance, reach_bow(s, l->angle), 1e-11, "first crossing", number);
    NEAR(l->member_distance, hypot(s->eye_x - l->member_x, s->eye_y - f->e.member_height), 1e-12, "check diagonal",
         number);
    NEAR(l->run, (s->eye_x - l->member_x) / (s->eye_y - f->e.member_height), 1e-12, "run", number);
    /* the cut tube and its holes, from the top end */
    NEAR(l->cut_length, f->e.end_distance + l->member_distance + f->e.tail, 1e-13, "cut length", number);
    NEAR(l->eye_from_top, f->e.end_distance, 0, "eye from the top", number);
    NEAR(l->bow_from_top, f->e.end_distance + l->bow_distance, 1e-13, "bow's hole from the top", number);
    NEAR(l->member_from_top, f->e.end_distance + l->member_distance, 1e-13, "member's hole from the top", number);
    /* the set-out leads back to eye and holes */
    NEAR(l->eye_x, s->eye_x, 0, "eye", number);
    NEAR(l->eye_y, s->eye_y, 0, "eye", number);
    NEAR(s->curtain.hip + l->eye_above_hip, s->eye_y, 1e-13, "eye above the hip", number);
    NEAR(face + l->eye_outboard, s->eye_x, 1e-11, "eye outboard of the face", number);
    NEAR(f->e.member_outer - l->member_from_outer, l->member_x, 1e-12, "member's hole from its outer end", number);
    NEAR(l->bow_along, along_bow(s, s->curtain.hip, l->bow_height), 1e-6, "along the bow", number);
    /*
     * where the tube meets the outer face is half the bow's diameter off its centreline; an eye may hang inside that
     * beside a bow that overhangs, and a tube pass over its top end
     */
    if (to_bow(s, s->eye_x, s->eye_y) > d / 2 && !beyond_top(s, foot_of_face(s, l->angle, l->bow_height))) {
        NEAR(to_bow(s, s->eye_x - l->overhang * sine, s->eye_y - l->overhang * cosine), d / 2, 1e-7, "face", number);
        ck_assert(l->overhang < l->bow_distance);
    }
}

/* --- the best angle --- */

/* Which of the bounds an angle keeps to, in the order in which a refusal names them. */
enum { KEEPS_BOW, KEEPS_MEMBER, KEEPS_SPACING, KEEPS_STOCK, KEEPS_OUTER, KEEPS_INNER, KEEPS };

static const char *const names[KEEPS] = {"extender.angle", "extender.member_height", "extender.spacing",
                                         "extender.stock", "extender.member_outer",  "extender.member_inner"};

static inline void set_bound(tside_extender *e, int which, double bound)
{
    double *const field[KEEPS] = {NULL, &e->member_height, &e->spacing, &e->stock, &e->member_outer, &e->member_inner};
    *field[which] = bound;
}

#endif
