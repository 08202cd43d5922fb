/* SPDX-License-Identifier: MIT */
/*
 * Every kind of bow: half circles, pointed and flat arches, shoulders, arcs through three points, hollow ones, leaning straight walls, baseboards. The hull and the
 * free chord are found again here from fine polylines, by code that shares nothing with the library.
 */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tunnelside.h>

#include "plan.h"
#include "expect.h"

enum { SIDES = 1000, POINTS = 4000 };

typedef enum kind { HALF_CIRCLE, POINTED, FLAT_KINK, FLAT_SHOULDER, ARC_OUT, ARC_HOLLOW, STRAIGHT, KINDS } kind;

typedef struct curved {
    int number, tipped;
    kind kind;
    tside_frame frame;
    tside_curtain curtain;
    tside_stops stops;
    tside_roll roll;
    tside_load load;
    tside_bow bow;
    tside_line line;
    tside_travel travel;
    tside_hang hang;
    int hung;
    char refused[TSIDE_PATH_SIZE]; /* "" where it was made */
} curved;

static int chance(dice *d, double often)
{
    return dice_between(d, 0, 1) < often;
}

static void throw_frame(curved *c, dice *d)
{
    tside_frame *f = &c->frame;
    double a = dice_between(d, 2, 5), h = dice_between(d, 0.4, 1.8);
    tside_usual(TSIDE_KIND_FRAME, f);
    f->measured = TSIDE_CENTRELINE;
    f->tube = (tside_round){dice_between(d, 0.03, 0.07), 0.002};
    f->width = 2 * a;
    f->leg_height = chance(d, 0.3) ? 0 : h;
    switch (c->kind) {
    case HALF_CIRCLE: f->peak_height = f->leg_height + a; break;
    case POINTED: f->peak_height = f->leg_height + a * dice_between(d, 1.01, 1.4); break;
    case FLAT_KINK: f->peak_height = f->leg_height + a * dice_between(d, 0.3, 0.95); break;
    case FLAT_SHOULDER:
        f->leg_height = h + 0.3;
        f->peak_height = f->leg_height + a * dice_between(d, 0.3, 0.9);
        f->shoulder_radius_given = 1;
        f->shoulder_radius = dice_between(d, 0.15, 0.6);
        break;
    case ARC_OUT:
    case ARC_HOLLOW:
    case STRAIGHT: {
        double bulge = dice_between(d, 0.02, 0.25), lean = dice_between(d, -0.2, 0.8);
        f->shape = TSIDE_THREE_POINTS;
        f->foot_x = a;
        f->peak_height = dice_between(d, 2.2, 3);
        f->between_height = f->peak_height / 2;
        f->peak_x = a - lean;
        f->between_x = a - lean / 2 + (c->kind == ARC_OUT ? bulge : c->kind == ARC_HOLLOW ? -bulge : 0);
        break;
    }
    case KINDS: break;
    }
    if (chance(d, 0.5)) {
        f->board = TSIDE_BOARD_OUTSIDE;
        f->board_top = dice_between(d, 0.1, 0.5);
        f->board_stand = dice_between(d, 0, chance(d, 0.3) ? 0.25 : 0.05);
    }
}

/* Makes what can be made; a refusal is noted. */
static void make(curved *c, dice *d)
{
    tside_fault fault = {.field = ""};
    tside_guide guide;
    tside_collar collar = {0.1, 0.1, 8, 0.08};
    if (tside_bow_make(&c->frame, &c->bow, &fault) == TSIDE_OK && tside_line_make(&c->bow, &c->curtain, &c->line, &fault) == TSIDE_OK)
        tside_travel_make(&c->line, &c->curtain, &c->roll, &c->stops, &c->travel, &fault);
    snprintf(c->refused, sizeof c->refused, "%s", fault.field);
    if (*c->refused)
        return;
    for (int i = 0; i < c->travel.stretches; i++)
        c->tipped |= c->travel.stretch[i].held == TSIDE_HELD_TIPPED;
    tside_usual(TSIDE_KIND_GUIDE, &guide);
    guide.tube = (tside_round){0.042, 0.003};
    c->hung = tside_hang_make(&c->travel, &guide, &collar, c->line.x + dice_between(d, 0.05, 0.3), c->line.y + dice_between(d, 0.3, 0.6), &c->hang, NULL) == TSIDE_OK;
}

static curved curved_side(int number)
{
    curved c;
    dice d = {(uint64_t)number * 7919 + 11};
    memset(&c, 0, sizeof c);
    c.number = number;
    c.kind = (kind)(number % KINDS);
    throw_frame(&c, &d);
    tside_usual(TSIDE_KIND_CURTAIN, &c.curtain);
    tside_usual(TSIDE_KIND_STOPS, &c.stops);
    tside_usual(TSIDE_KIND_LOAD, &c.load);
    c.curtain.hip = dice_between(&d, 1.2, 2.1);
    c.curtain.sill = dice_between(&d, 0.25, 0.5);
    c.curtain.standoff = chance(&d, 0.2) ? 0 : dice_between(&d, 0, 0.3);
    c.curtain.thickness = chance(&d, 0.5) ? 0.15e-3 : dice_between(&d, 0, 0.006);
    c.stops.wraps_shut = dice_between(&d, 0.5, 3);
    c.stops.gap = dice_between(&d, 0, 0.2);
    c.roll = (tside_roll){dice_between(&d, 0.03, 0.06), c.curtain.thickness, c.curtain.packing};
    c.load.length = 30;
    c.load.bar_mass = 2;
    c.load.end_mass = 9;
    c.load.friction = 0;
    make(&c, &d);
    return c;
}

/* --- the face, as a polyline of our own --- */

typedef struct polyline {
    int count;
    double x[POINTS], y[POINTS];
} polyline;

static void add_point(polyline *p, double x, double y)
{
    ck_assert_int_lt(p->count, POINTS);
    p->x[p->count] = x;
    p->y[p->count++] = y;
}

/* An arc about a centre from one angle of its radius to another. */
static void add_arc(polyline *p, double x, double y, double radius, double from, double to, int parts)
{
    for (int i = 0; i <= parts; i++) {
        double angle = from + (to - from) * i / parts;
        add_point(p, x + radius * cos(angle), y + radius * sin(angle));
    }
}

enum { DEEP = 1000000 }; /* m, how far below its foot the face is followed, straight on */

/* The outer face from far below the foot up, from the frame's measures alone. */
static void trace_face(const tside_frame *f, polyline *p)
{
    double half = f->tube.diameter / 2, a = f->width / 2, h = f->leg_height, rise = f->peak_height - h, R;
    p->count = 0;
    if (f->shape == TSIDE_THREE_POINTS) {
        /* the circle's centre, where two perpendicular bisectors meet */
        double ax = f->between_x - f->foot_x, ay = f->between_height - f->foot_height, bx = f->peak_x - f->foot_x, by = f->peak_height - f->foot_height;
        double cross = 2 * (ax * by - ay * bx), aa = ax * ax + ay * ay, bb = bx * bx + by * by;
        if (fabs(cross) < 1e-9) {
            double along = hypot(bx, by), nx = by / along, ny = -bx / along;
            add_point(p, f->foot_x + half * nx - DEEP * bx / along, f->foot_height + half * ny - DEEP * by / along);
            add_point(p, f->peak_x + half * nx, f->peak_height + half * ny);
        } else {
            double cx = f->foot_x + (by * aa - ay * bb) / cross, cy = f->foot_height + (ax * bb - bx * aa) / cross, out = cross > 0 ? 1 : -1;
            double radius = hypot(f->foot_x - cx, f->foot_height - cy), from = atan2(f->foot_height - cy, f->foot_x - cx), to = atan2(f->peak_height - cy, f->peak_x - cx);
            double tx = -sin(from) * out, ty = cos(from) * out, nx = ty, ny = -tx;
            if (out < 0 && from < 0)
                from += 2 * PI;
            if (out < 0 && to < 0)
                to += 2 * PI;
            add_point(p, f->foot_x + half * nx - DEEP * tx, f->foot_height + half * ny - DEEP * ty);
            add_arc(p, cx, cy, radius + out * half, from, to, 2500);
        }
        return;
    }
    if (rise >= a) {
        R = (rise * rise + a * a) / (2 * a);
        add_point(p, a + half, -DEEP);
        add_arc(p, a - R, h, R + half, 0, atan2(rise, R - a), 3000);
        return;
    }
    R = (a * a + rise * rise) / (2 * rise);
    if (f->shoulder_radius_given) {
        double q = f->shoulder_radius, begins = f->peak_height - R + sqrt((R - q) * (R - q) - (a - q) * (a - q)), turn = atan2(begins - (f->peak_height - R), a - q);
        add_point(p, a + half, -DEEP);
        add_arc(p, a - q, begins, q + half, 0, turn, 1200);
        add_arc(p, 0, f->peak_height - R, R + half, turn, PI / 2, 2500);
    } else {
        double kink = atan2(R - rise, a);
        if (h > 0) {
            add_point(p, a + half, -DEEP);
            add_arc(p, a, h, half, 0, kink, 400);
        } else
            add_point(p, a + half * cos(kink) + DEEP * sin(kink), half * sin(kink) - DEEP * cos(kink));
        add_arc(p, 0, f->peak_height - R, R + half, kink, PI / 2, 3000);
    }
}

static double face_x(const polyline *face, double y)
{
    for (int i = 1; i < face->count; i++)
        if (face->y[i] >= y)
            return face->x[i - 1] + (face->x[i] - face->x[i - 1]) * (y - face->y[i - 1]) / (face->y[i] - face->y[i - 1]);
    return NAN;
}

/* --- refusals, kinds --- */

START_TEST(random_sides_are_refused_only_as_the_headers_say)
{
    int made = 0, tipped = 0, hung = 0, kinds[KINDS] = {0};
    for (int n = 0; n < SIDES; n++) {
        curved c = curved_side(n);
        if (*c.refused) {
            int named = !strcmp(c.refused, "curtain.hip") || !strcmp(c.refused, "frame.shoulder_radius") || !strcmp(c.refused, "stops.seal");
            ck_assert_msg(named, "side %d is refused for %s", n, c.refused);
            continue;
        }
        made++;
        hung += c.hung;
        tipped += c.tipped;
        kinds[c.kind]++;
    }
    printf("test_curve: %d sides of %d made, %d tip over a baseboard, %d guides hang\n", made, SIDES, tipped, hung);
    ck_assert_int_gt(made, 900);
    ck_assert_int_gt(hung, 500);
    for (int k = 0; k < KINDS; k++)
        ck_assert_int_gt(kinds[k], 50);
}
END_TEST

/* --- the hull --- */

static double cross(double ax, double ay, double bx, double by)
{
    return ax * by - ay * bx;
}

/* The outboard chain of the convex hull, from the fixing down: a monotone scan that drops each point that lies inboard of its neighbours' chord. */
static void hull_down(const curved *c, const polyline *face, polyline *hull)
{
    static polyline down;
    double ax = face_x(face, c->curtain.hip) + c->curtain.standoff, ay = c->curtain.hip, board_x = 0;
    int boarded = c->frame.board == TSIDE_BOARD_OUTSIDE, done = 0, last = 0;
    if (boarded)
        board_x = face_x(face, c->frame.board_top) + c->frame.board_stand;
    down.count = hull->count = 0;
    add_point(&down, ax, ay);
    for (int i = face->count - 1; i >= 0; i--) {
        if (face->y[i] > ay)
            continue;
        if (boarded && !done && face->y[i] < c->frame.board_top) {
            add_point(&down, board_x, c->frame.board_top);
            done = 1;
        }
        add_point(&down, face->x[i], face->y[i]);
    }
    for (int i = 0; i < down.count; i++) {
        if (i && hypot(down.x[i] - down.x[i - 1], down.y[i] - down.y[i - 1]) < 1e-9)
            continue; /* two pieces meet in one point */
        while (hull->count > 1 && cross(hull->x[hull->count - 1] - hull->x[hull->count - 2], hull->y[hull->count - 1] - hull->y[hull->count - 2],
                                        down.x[i] - hull->x[hull->count - 2], down.y[i] - hull->y[hull->count - 2]) >= 0)
            hull->count--;
        add_point(hull, down.x[i], down.y[i]);
    }
    for (int i = 0; i < hull->count; i++) /* plumb from the outermost point on */
        if (hull->x[i] > hull->x[last] + 1e-12)
            last = i;
    hull->count = last + 1;
    add_point(hull, hull->x[last], -2.0 * DEEP);
}

static double worst_hull, worst_chord;
static int worst_hull_side, worst_chord_side;

static void hull_of_one(const curved *c)
{
    static polyline face, hull;
    double at = 0;
    trace_face(&c->frame, &face);
    hull_down(c, &face, &hull);
    for (int i = 0; i + 1 < hull.count && at < 2.5; i++) {
        double dx = hull.x[i + 1] - hull.x[i], dy = hull.y[i + 1] - hull.y[i], length = hypot(dx, dy), x, y, normal, off;
        tside_fault fault;
        if (i % 37 == 0 || length > 0.01) {
            double u = fmin(length / 2, 0.3);
            ANSWERS(tside_line_at(&c->line, at + u, &x, &y, &normal, &fault));
            off = hypot(x - hull.x[i] - dx * u / length, y - hull.y[i] - dy * u / length);
            if (off > worst_hull)
                worst_hull = off, worst_hull_side = c->number;
            NEAR(off, 0, 5e-6, "distance of line and hull", c->number); /* the polyline's sagitta: 1.5 mm steps on metres, 0.1 mm on tubes */
        }
        at += length;
    }
}

FOR_SIDES(line_is_the_hull, SIDES)
{
    curved c = curved_side(number);
    if (!*c.refused)
        hull_of_one(&c);
    if (number == SIDES - 1)
        printf("test_curve: line and hull of a polyline differ by at most %.2g m, side %d\n", worst_hull, worst_hull_side);
}

/* --- the free chord --- */

static double from_segment(double px, double py, double x1, double y1, double x2, double y2)
{
    double dx = x2 - x1, dy = y2 - y1, u = ((px - x1) * dx + (py - y1) * dy) / (dx * dx + dy * dy);
    u = u < 0 ? 0 : u > 1 ? 1 : u;
    return hypot(px - x1 - u * dx, py - y1 - u * dy);
}

/* Whether a roll hung by a chord of some slope keeps off face and board. */
static int clears(const curved *c, const polyline *face, double s, double r, double slope)
{
    double x = c->line.x + s * sin(slope) + r * cos(slope), y = c->line.y - s * cos(slope) + r * sin(slope);
    if (x < face_x(face, y)) /* inside the tunnel */
        return 0;
    if (c->frame.board == TSIDE_BOARD_OUTSIDE &&
        ((y < c->bow.board_y && x < c->bow.board_x) || from_segment(x, y, c->bow.board_x, -6, c->bow.board_x, c->bow.board_y) < r))
        return 0;
    for (int i = 0; i + 1 < face->count; i++)
        if (from_segment(x, y, face->x[i], face->y[i], face->x[i + 1], face->y[i + 1]) < r)
            return 0;
    return 1;
}

static void chord_of_one(const curved *c)
{
    static polyline face;
    double first = c->line.piece[0].slope, length = c->line.count > 1 ? c->line.piece[1].from : HUGE_VAL;
    trace_face(&c->frame, &face);
    for (int k = 0; k < 4; k++) {
        double turns = tside_i_travel_turns(&c->travel, c->travel.end) * (k + 0.5) / 4, low = 0, high = first, off, s, r;
        tside_position at;
        tside_fault fault;
        ANSWERS(tside_travel_at(&c->travel, turns, &at, &fault));
        s = at.hanging;
        r = at.diameter / 2;
        if (s > length)
            continue;
        if (clears(c, &face, s, r, 0))
            high = 0;
        for (int i = 0; i < 40 && high > 0; i++) {
            double middle = (low + high) / 2;
            if (clears(c, &face, s, r, middle))
                high = middle;
            else
                low = middle;
        }
        off = hypot(c->line.x + s * sin(high) + r * cos(high) - at.x, c->line.y - s * cos(high) + r * sin(high) - at.y);
        if (off > worst_chord)
            worst_chord = off, worst_chord_side = c->number;
        NEAR(off, 0, 2e-6, "axis", c->number); /* the polyline's sagitta, a little magnified where the chord is short */
    }
}

FOR_SIDES(chord_hangs_as_near_plumb_as_it_can, SIDES)
{
    curved c = curved_side(number);
    if (!*c.refused && !c.tipped && c.line.piece[0].slope > 0)
        chord_of_one(&c);
    if (number == SIDES - 1)
        printf("test_curve: axis on the free chord and by brute force differ by at most %.2g m, side %d\n", worst_chord, worst_chord_side);
}

/* --- energy, and extremes against dense sampling --- */

static double stretch_end(const tside_travel *travel, int i)
{
    return i + 1 < travel->stretches ? travel->stretch[i + 1].from : travel->end;
}

typedef struct sums {
    double lift, drive; /* J */
} sums;

/* Work over part of a stretch by Gauss and Legendre's rule of five points. */
static sums work_over(const curved *c, int stretch, double from, double to)
{
    static const double node[] = {0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640};
    static const double weight[] = {0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891};
    tside_i_lifting lifting = {&c->travel, &c->load, c->hung ? &c->hang : NULL, 0};
    sums sum = {0, 0};
    for (int k = 0; k < 5; k++) {
        tside_i_spot spot;
        tside_torque torque;
        double turn, rate = 0;
        tside_i_travel_spot(&c->travel, stretch, (from + to) / 2 + node[k] * (to - from) / 2, &spot);
        torque = tside_i_torque(&lifting, &spot);
        if (c->hung)
            rate = tside_i_lean_at(c->hang.eye_x, c->hang.eye_y, c->hang.offset, &spot).rate;
        turn = PI * (to - from) * weight[k] / (spot.share > 0 ? spot.share : 1); /* the bar's angle: at a corner progress is its turns */
        sum.lift += turn * torque.lift;
        sum.drive += turn * torque.drive * (1 - rate);
    }
    return sum;
}

static sums work_of(const curved *c, int stretch, double from, double to, int depth)
{
    double middle = (from + to) / 2;
    sums whole = work_over(c, stretch, from, to), a = work_over(c, stretch, from, middle), b = work_over(c, stretch, middle, to);
    if (depth == 0 || (depth < 28 && fabs(a.lift + b.lift - whole.lift) + fabs(a.drive + b.drive - whole.drive) < 1e-11 * (fabs(whole.lift) + 1)))
        return (sums){a.lift + b.lift, a.drive + b.drive};
    a = work_of(c, stretch, from, middle, depth - 1);
    b = work_of(c, stretch, middle, to, depth - 1);
    return (sums){a.lift + b.lift, a.drive + b.drive};
}

static double worst_energy;
static int worst_energy_side;

FOR_SIDES(work_is_the_gain_of_energy, SIDES)
{
    curved c = curved_side(number);
    sums sum = {0, 0};
    double bar, all, off, turns;
    tside_fault fault;
    if (!*c.refused && !c.tipped && c.travel.end > c.travel.wraps_shut) {
        turns = tside_i_travel_turns(&c.travel, c.travel.end);
        if (c.hung && tside_lift_work(&c.travel, &c.load, &c.hang, turns, &all, &fault) == TSIDE_OUT_OF_REACH)
            return; /* the guide would turn as fast as the bar */
        ANSWERS(tside_lift_work(&c.travel, &c.load, NULL, turns, &bar, &fault));
        for (int i = 0; i < c.travel.stretches; i++) {
            sums part = work_of(&c, i, c.travel.stretch[i].from, stretch_end(&c.travel, i), 30);
            sum.lift += part.lift;
            sum.drive += part.drive;
        }
        off = fabs(sum.lift / bar - 1);
        if (c.hung)
            off = fmax(off, fabs(sum.drive / all - 1));
        if (off > worst_energy)
            worst_energy = off, worst_energy_side = number;
        NEAR(off, 0, 1e-9, "work and energy", number);
    }
    if (number == SIDES - 1)
        printf("test_curve: work and energy differ by at most %.2g, relatively, side %d\n", worst_energy, worst_energy_side);
}

FOR_SIDES(extremes_are_not_below_dense_samples, SIDES)
{
    enum { SAMPLES = 500 };
    curved c = curved_side(number);
    tside_i_lifting lifting = {&c.travel, &c.load, &c.hang, 0};
    tside_torque worst;
    tside_fault fault;
    tside_i_spot where;
    double least, greatest, push, torque = -HUGE_VAL, low = HUGE_VAL, high = -HUGE_VAL, force = -HUGE_VAL;
    if (*c.refused || !c.hung || tside_lift_worst(&c.travel, &c.load, &c.hang, &worst, &fault) != TSIDE_OK)
        return;
    tside_i_lean_range(&c.travel, c.hang.eye_x, c.hang.eye_y, c.hang.offset, &least, &greatest);
    for (int i = 0; i < c.travel.stretches; i++)
        for (int k = 0; k <= SAMPLES; k++) {
            double from = c.travel.stretch[i].from, to = stretch_end(&c.travel, i);
            tside_i_spot spot;
            tside_i_lean lean;
            tside_i_travel_spot(&c.travel, i, k == SAMPLES ? to : from + (to - from) * k / SAMPLES, &spot);
            lean = tside_i_lean_at(c.hang.eye_x, c.hang.eye_y, c.hang.offset, &spot);
            torque = fmax(torque, tside_i_torque(&lifting, &spot).drive);
            low = fmin(low, tside_i_lean_angle(&lean));
            high = fmax(high, tside_i_lean_angle(&lean));
            force = fmax(force, tside_i_push(&c.hang, &lean, tside_i_torque(&lifting, &spot).drive));
        }
    ck_assert_msg(worst.drive >= torque * (1 - 1e-9), "side %d: worst torque %.12g, a sample has %.12g", number, worst.drive, torque);
    ck_assert_msg(worst.drive <= torque * 1.001, "side %d: worst torque %.12g, samples reach %.12g", number, worst.drive, torque);
    push = tside_i_greatest_push(&c.travel, &lifting, &c.hang, 0, &where);
    ck_assert_msg(push >= force * (1 - 1e-9) && push <= force * 1.001, "side %d: greatest force %.12g, samples reach %.12g", number, push, force);
    ck_assert_msg(least <= low + 1e-9 && greatest >= high - 1e-9, "side %d: leans %.12g to %.12g, samples %.12g to %.12g", number, least, greatest, low, high);
    ck_assert_msg(least >= low - 1e-3 && greatest <= high + 1e-3, "side %d: leans beyond every sample", number);
}

/* --- continuity --- */

FOR_SIDES(axis_never_jumps, SIDES)
{
    curved c = curved_side(number);
    if (*c.refused || c.tipped)
        return;
    for (int i = 0; i + 1 < c.travel.stretches; i++) {
        tside_i_spot before, after;
        tside_i_travel_spot(&c.travel, i, c.travel.stretch[i + 1].from, &before);
        tside_i_travel_spot(&c.travel, i + 1, c.travel.stretch[i + 1].from, &after);
        NEAR(hypot(before.x - after.x, before.y - after.y), 0, 1e-8, "jump", number);
    }
}

FOR_SIDES(turns_height_and_travel_invert, SIDES / 4)
{
    curved c = curved_side(number * 4 + 1);
    tside_position at, back;
    tside_fault fault;
    if (*c.refused || c.tipped)
        return;
    for (int k = 0; k <= 8; k++) {
        double turns = tside_i_travel_turns(&c.travel, c.travel.end) * k / 8;
        ANSWERS(tside_travel_at(&c.travel, turns, &at, &fault));
        NEAR(at.turns, turns, 1e-9, "turns", number);
        ANSWERS(tside_travel_to_height(&c.travel, at.underside, &back, &fault));
        NEAR(back.underside, at.underside, 1e-9, "height", number);
        NEAR(back.y, at.y, 1e-8, "axis", number);
    }
}

/* A plain side of a kind with one measure changed. */
static tside_plan planned(const tside_side *side)
{
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(side, &plan, &fault));
    return plan;
}

static tside_side side_of(double leg, double peak)
{
    tside_side side;
    tside_usual(TSIDE_KIND_SIDE, &side);
    side.length = 20;
    side.frame.measured = TSIDE_CENTRELINE;
    side.frame.tube = (tside_round){0.05, 0.002};
    side.frame.width = 8;
    side.frame.leg_height = leg;
    side.frame.peak_height = peak;
    side.curtain.hip = 1.8;
    side.curtain.sill = 0.4;
    side.bar.tube = (tside_round){0.034, 0.0025};
    side.drive.rated_torque = 60;
    side.drive_end.guide.tube = side.free_end.guide.tube = (tside_round){0.042, 0.003};
    side.drive_end.extender.tube = (tside_square){.side = 0.05, .wall = 0.003};
    side.drive_end.extender.member_height = 1;
    side.drive_end.extender.member_outer = 3.95;
    side.drive_end.extender.stock = 4;
    side.free_end = side.drive_end;
    return side;
}

static void alike(const tside_side *a, const tside_side *b, double tolerance, const char *what)
{
    tside_plan p = planned(a), q = planned(b);
    NEAR(p.drive_turns, q.drive_turns, tolerance, what, 0);
    NEAR(p.worst.drive, q.worst.drive, 20 * tolerance, what, 1);
    NEAR(p.drive_end.eye_x, q.drive_end.eye_x, tolerance, what, 2);
    NEAR(p.drive_end.sweep.cut_length, q.drive_end.sweep.cut_length, tolerance, what, 3);
    NEAR(p.drive_end.sweep.kick_out, q.drive_end.sweep.kick_out, tolerance, what, 4);
}

START_TEST(nothing_jumps_between_kinds)
{
    tside_side a = side_of(0.8, 4.8 - 1e-7), b = side_of(0.8, 4.8 + 1e-7);
    alike(&a, &b, 2e-5, "across the half circle"); /* the flat arch's kink there goes as the square root */
    a = side_of(1.2, 4.2);
    b = a;
    b.frame.shoulder_radius_given = 1;
    b.frame.shoulder_radius = 0.0501;
    alike(&a, &b, 2e-2, "kink and tight shoulder");
    a = side_of(2, 4.2);
    b = a;
    b.frame.board = TSIDE_BOARD_OUTSIDE;
    b.frame.board_top = 1e-6;
    b.frame.board_stand = 0;
    alike(&a, &b, 1e-9, "a board of no height");
    b.frame.board_top = 0.3;
    alike(&a, &b, 1e-9, "a board that does not stand out, behind a plumb curtain");
    a.curtain.thickness = 0;
    b = a;
    b.curtain.thickness = 1e-9;
    alike(&a, &b, 1e-4, "no thickness");
    a = side_of(2, 4.2);
    b = a;
    a.frame.shape = b.frame.shape = TSIDE_THREE_POINTS;
    a.frame.foot_x = a.frame.between_x = a.frame.peak_x = b.frame.between_x = b.frame.peak_x = 4;
    b.frame.foot_x = 4 + 1e-7;
    b.frame.between_x = 4 + 0.5e-7;
    a.frame.between_height = b.frame.between_height = 1.5;
    a.frame.peak_height = b.frame.peak_height = 3;
    alike(&a, &b, 1e-6, "nearly plumb");
}
END_TEST

START_TEST(lengths_scale)
{
    for (int n = 0; n < 200; n++) {
        curved c = curved_side(n), twice;
        tside_position at, far;
        tside_fault fault;
        if (*c.refused || c.tipped)
            continue;
        twice = c;
        twice.frame.tube.diameter *= 2, twice.frame.tube.wall *= 2, twice.frame.width *= 2, twice.frame.leg_height *= 2, twice.frame.peak_height *= 2;
        twice.frame.shoulder_radius *= 2, twice.frame.foot_x *= 2, twice.frame.between_x *= 2, twice.frame.between_height *= 2, twice.frame.peak_x *= 2;
        twice.frame.board_top *= 2, twice.frame.board_stand *= 2;
        twice.curtain.hip *= 2, twice.curtain.sill *= 2, twice.curtain.standoff *= 2, twice.curtain.thickness *= 2;
        twice.stops.seal *= 2, twice.stops.gap *= 2;
        twice.roll.core *= 2, twice.roll.thickness *= 2;
        ANSWERS(tside_bow_make(&twice.frame, &twice.bow, &fault));
        ANSWERS(tside_line_make(&twice.bow, &twice.curtain, &twice.line, &fault));
        ANSWERS(tside_travel_make(&twice.line, &twice.curtain, &twice.roll, &twice.stops, &twice.travel, &fault));
        NEAR(twice.travel.end, c.travel.end, 1e-7, "wraps when open", n);
        ANSWERS(tside_travel_at(&c.travel, 1, &at, &fault));
        ANSWERS(tside_travel_at(&twice.travel, 1, &far, &fault));
        NEAR(far.x, 2 * at.x, 1e-8, "axis", n);
        NEAR(far.y, 2 * at.y, 1e-8, "axis", n);
    }
}
END_TEST

/* --- corners and the tipping board --- */

START_TEST(corner_turns_without_take_up)
{
    tside_side side = side_of(2, 4.2);
    tside_plan plan;
    tside_turn rows[64];
    tside_fault fault;
    int count;
    side.frame.board = TSIDE_BOARD_OUTSIDE;
    side.frame.board_top = 0.45;
    side.frame.board_stand = 0.045; /* 13 mm outboard of the fixing: the curtain lies over its edge */
    side.stops.seal = 0.2;
    plan = planned(&side);
    NEAR(plan.bar_turns, plan.open.wraps - plan.shut.wraps + (plan.open.slope - plan.shut.slope) / (2 * PI), 1e-12, "turns and heading", 0);
    ANSWERS(tside_plan_turns(&side, rows, 64, &count, &fault));
    for (int i = 1; i < count; i++)
        ck_assert(rows[i].total > rows[i - 1].total);
}
END_TEST

START_TEST(board_tips_the_roll_from_its_radius_on)
{
    for (int tips = 0; tips <= 1; tips++) {
        tside_side side = side_of(2, 4.2);
        tside_plan plan;
        int found = 0;
        double r;
        side.frame.board = TSIDE_BOARD_OUTSIDE;
        side.frame.board_top = 0.8;
        side.frame.board_stand = 0.05;
        side.curtain.thickness = 0; /* so that the radius is one */
        r = (side.bar.tube.diameter + side.bar.core_over) / 2;
        side.frame.board_stand = side.curtain.standoff + r + (tips ? 1e-4 : -1e-4);
        plan = planned(&side);
        for (int i = 0; i < plan.finding_count; i++)
            found |= plan.findings[i].code == TSIDE_FINDING_TIPS;
        ck_assert_int_eq(found, tips);
    }
}
END_TEST

/* --- circular segments --- */

/* Machinery's Handbook, Segments of Circles for Radius = 1, from memory: angle in degrees, arc, rise, chord. */
static const double segments[][4] = {{30, 0.52360, 0.03407, 0.51764}, {45, 0.78540, 0.07612, 0.76537}, {60, 1.04720, 0.13397, 1.00000}, {90, 1.57080, 0.29289, 1.41421}, {150, 2.61799, 0.74118, 1.93185}};

START_TEST(flat_arches_are_circular_segments)
{
    const double scale = 10; /* m for a radius of 1 */
    for (size_t i = 0; i < sizeof segments / sizeof *segments; i++) {
        tside_frame frame;
        tside_bow bow;
        tside_fault fault;
        tside_bow_point peak;
        double arc;
        tside_usual(TSIDE_KIND_FRAME, &frame);
        frame.measured = TSIDE_CENTRELINE;
        frame.tube = (tside_round){0.05, 0.002};
        frame.width = scale * segments[i][3];
        frame.leg_height = 0;
        frame.peak_height = scale * segments[i][2];
        ANSWERS(tside_bow_make(&frame, &bow, &fault));
        /* half a unit of the last printed digit of rise and chord moves the arc by less than this */
        NEAR(2 * bow.centre.length, scale * segments[i][1], scale * 5e-5, "arc", (int)i);
        NEAR(1 / bow.centre.piece[0].curvature, scale, scale * 1e-3, "radius", (int)i);
        ANSWERS(tside_bow_at(&bow, bow.centre.length, &peak, &fault));
        NEAR(peak.x, 0, 1e-12, "peak", (int)i);
        NEAR(peak.y, frame.peak_height, 1e-12, "peak", (int)i);
        ANSWERS(tside_bow_at_height(&bow, frame.peak_height / 2, &arc, &fault));
        ANSWERS(tside_bow_at(&bow, arc, &peak, &fault));
        NEAR(peak.y, frame.peak_height / 2, 1e-12, "half way up", (int)i);
    }
}
END_TEST

FOR_SIDES(face_and_crossing_are_where_the_polyline_is, SIDES / 2)
{
    static polyline face;
    curved c = curved_side(number * 2);
    tside_fault fault;
    if (*c.refused)
        return;
    trace_face(&c.frame, &face);
    for (int k = 0; k < 5; k++) {
        double y = 0.1 + (c.curtain.hip - 0.1) * k / 4, x, away, arc, angle = PI + 0.1 * k;
        tside_bow_point point;
        ANSWERS(tside_bow_face(&c.bow, y, &x, &fault));
        NEAR(x, face_x(&face, y), 5e-6, "face", number);
        if (tside_bow_crossing(&c.bow, x + 0.5, y + 0.1, angle, &away, &arc, &fault) != TSIDE_OK)
            continue;
        ANSWERS(tside_bow_at(&c.bow, arc, &point, &fault));
        NEAR(hypot(point.x - (x + 0.5 + away * cos(angle)), point.y - (y + 0.1 + away * sin(angle))), 0, 1e-9, "crossing", number);
    }
}

START_TEST(frames_that_contradict_are_refused)
{
    tside_side side = side_of(1.2, 4.2);
    tside_fault fault;
    tside_bow bow;
    tside_line line;
#define BOW_REFUSES(field, relation) REFUSES(tside_bow_make(&side.frame, &bow, &fault), bow, TSIDE_CONTRADICTS, field, relation)
    side.frame.peak_height = 1.2;
    BOW_REFUSES("frame.peak_height", TSIDE_NOT_ABOVE);
    side = side_of(1.2, 4.2);
    side.frame.width = 0.1;
    BOW_REFUSES("frame.width", TSIDE_NOT_ABOVE);
    side = side_of(1.2, 6);
    side.frame.shoulder_radius_given = 1;
    side.frame.shoulder_radius = 0.3;
    BOW_REFUSES("frame.shoulder_radius", TSIDE_NO_RELATION);
    side = side_of(1.2, 3.2);
    side.frame.shoulder_radius_given = 1;
    side.frame.shoulder_radius = 5;
    BOW_REFUSES("frame.shoulder_radius", TSIDE_NOT_BELOW);
    side.frame.shoulder_radius = 3;
    side.frame.leg_height = 0.1;
    side.frame.peak_height = 2.1;
    BOW_REFUSES("frame.shoulder_radius", TSIDE_NO_RELATION);
    side = side_of(1.2, 3.2);
    side.frame.shoulder_radius_given = 1;
    side.frame.shoulder_radius = 0.03;
    BOW_REFUSES("frame.shoulder_radius", TSIDE_NO_RELATION);
    side = side_of(1.2, 3.2);
    side.frame.shape = TSIDE_THREE_POINTS;
    side.frame.foot_x = side.frame.between_x = 4;
    side.frame.between_height = 3.2;
    BOW_REFUSES("frame.peak_height", TSIDE_NOT_ABOVE);
    side.frame.foot_height = side.frame.between_height = 1;
    BOW_REFUSES("frame.between_height", TSIDE_NOT_ABOVE);
    side = side_of(1.2, 3.2);
    side.frame.board = TSIDE_BOARD_OUTSIDE;
    side.frame.board_top = 9;
    BOW_REFUSES("frame.board_top", TSIDE_ABOVE);
    side.frame.board_top = 1.9;
    ANSWERS(tside_bow_make(&side.frame, &bow, &fault));
    REFUSES(tside_line_make(&bow, &side.curtain, &line, &fault), line, TSIDE_CONTRADICTS, "frame.board_top", TSIDE_NOT_BELOW);
}
END_TEST

Suite *curve_suite(void);

Suite *curve_suite(void)
{
    Suite *suite = suite_create("curve");
    TCase *tcase = tcase_create("curve");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, random_sides_are_refused_only_as_the_headers_say);
    tcase_add_test(tcase, line_is_the_hull);
    tcase_add_test(tcase, chord_hangs_as_near_plumb_as_it_can);
    tcase_add_test(tcase, work_is_the_gain_of_energy);
    tcase_add_test(tcase, extremes_are_not_below_dense_samples);
    tcase_add_test(tcase, axis_never_jumps);
    tcase_add_test(tcase, turns_height_and_travel_invert);
    tcase_add_test(tcase, nothing_jumps_between_kinds);
    tcase_add_test(tcase, lengths_scale);
    tcase_add_test(tcase, corner_turns_without_take_up);
    tcase_add_test(tcase, board_tips_the_roll_from_its_radius_on);
    tcase_add_test(tcase, flat_arches_are_circular_segments);
    tcase_add_test(tcase, face_and_crossing_are_where_the_polyline_is);
    tcase_add_test(tcase, frames_that_contradict_are_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
