/* SPDX-License-Identifier: MIT */
#include "curves.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "shape/travel.h"

/* --- sides --- */

static int chance(dice *d, double often)
{
    return dice_between(d, 0, 1) < often;
}

static void throw_points(curved *c, dice *d, double half_width)
{
    tside_frame *f = &c->frame;
    double bulge = c->kind == STRAIGHT ? 0 : dice_between(d, 0.02, 0.25), lean = dice_between(d, -0.3, 0.8),
           at = c->kind == STRAIGHT ? dice_between(d, 0.2, 0.8) : 0.5;
    f->shape = TSIDE_THREE_POINTS;
    f->foot_x = half_width;
    f->foot_height = chance(d, 0.5) ? 0 : dice_between(d, -0.3, 0.3);
    f->peak_height = dice_between(d, 2.3, 3);
    f->between_height = f->foot_height + at * (f->peak_height - f->foot_height);
    f->peak_x = half_width - lean;
    f->between_x = half_width - at * lean + (c->kind == ARC_HOLLOW ? -bulge : bulge);
}

static void throw_frame(curved *c, dice *d)
{
    tside_frame *f = &c->frame;
    double a = dice_between(d, 2, 5);
    tside_usual(TSIDE_KIND_FRAME, f);
    f->measured = chance(d, 0.5) ? TSIDE_OUTSIDE : TSIDE_CENTRELINE;
    f->tube = (tside_round){dice_between(d, 0.03, 0.07), 0.002};
    f->width = 2 * a;
    f->leg_height = chance(d, 0.3) ? 0 : dice_between(d, 0.4, 1.8);
    switch (c->kind) {
    case HALF_CIRCLE: f->peak_height = f->leg_height + a; break;
    case POINTED: f->peak_height = f->leg_height + a * dice_between(d, 1.01, 1.4); break;
    case FLAT_KINK: f->peak_height = f->leg_height + a * dice_between(d, 0.4, 0.95) + 0.1; break;
    case FLAT_SHOULDER:
        f->leg_height = dice_between(d, 0.7, 2);
        f->peak_height = f->leg_height + a * dice_between(d, 0.3, 0.9);
        f->shoulder_radius_given = 1;
        f->shoulder_radius = dice_between(d, 0.15, 0.6);
        break;
    case ARC_OUT:
    case ARC_HOLLOW:
    case STRAIGHT: throw_points(c, d, a); break;
    case KINDS: break;
    }
    if (chance(d, 0.5)) {
        f->board = TSIDE_BOARD_OUTSIDE;
        f->board_top = dice_between(d, 0.1, 0.6);
        f->board_stand = chance(d, 0.1) ? 0 : dice_between(d, 0, chance(d, 0.4) ? 0.3 : 0.06);
    }
}

static void throw_curtain(curved *c, dice *d)
{
    tside_usual(TSIDE_KIND_CURTAIN, &c->curtain);
    tside_usual(TSIDE_KIND_STOPS, &c->stops);
    c->curtain.hip = dice_between(d, 1.2, 2.1);
    c->curtain.sill = dice_between(d, 0.25, 0.5);
    c->curtain.standoff = chance(d, 0.2) ? 0 : dice_between(d, 0, 0.3);
    c->curtain.rail_depth = chance(d, 0.5) ? 0 : dice_between(d, 0, 0.05);
    c->curtain.thickness = chance(d, 0.5) ? 0.15e-3 : dice_between(d, 0, 0.006);
    c->stops.wraps_shut = dice_between(d, 0, 3);
    c->stops.gap = dice_between(d, 0, 0.2);
    if (chance(d, 0.3)) {
        c->stops.shut_by = TSIDE_SHUT_HEIGHT;
        c->stops.shut_height = dice_between(d, 0.02, 0.7);
    }
    if (chance(d, 0.2)) {
        c->stops.open_by = TSIDE_OPEN_HEIGHT;
        c->stops.open_height = fmax(0.75, c->curtain.hip - dice_between(d, 0.4, 0.6));
    }
    c->roll = (tside_roll){dice_between(d, 0.03, 0.06), c->curtain.thickness, c->curtain.packing};
}

static void throw_load(curved *c, dice *d)
{
    tside_usual(TSIDE_KIND_LOAD, &c->load);
    tside_usual(TSIDE_KIND_GUIDE, &c->guide);
    c->collar = (tside_collar){.offset = dice_between(d, 0, 0.12),
                               .height = dice_between(d, 0, 0.1),
                               .mass = dice_between(d, 2, 12),
                               .mass_offset = dice_between(d, 0, 0.1)};
    c->load.length = dice_between(d, 10, 60);
    c->load.bar_mass = dice_between(d, 1, 3);
    c->load.areal_mass = dice_between(d, 0.1, 1);
    c->load.end_mass = c->collar.mass + 1;
    c->load.friction = dice_between(d, 0, 0.3);
    c->load.rope_pressure = dice_between(d, 0, 5);
    c->load.rope_friction = 0.3;
    c->guide.tube = (tside_round){0.042, 0.003};
    c->guide.margin = 0.02;
    c->guide.ground_clearance = 0;
    c->eye_out = dice_between(d, 0, 0.4);
    c->eye_rise = dice_between(d, 0.3, 0.7);
}

tside_status curved_make(curved *c, tside_fault *fault)
{
    tside_status status = tside_bow_make(&c->frame, &c->bow, fault);
    if (status == TSIDE_OK)
        status = tside_line_make(&c->bow, &c->curtain, &c->line, fault);
    if (status == TSIDE_OK)
        status = tside_travel_make(&c->line, &c->curtain, &c->roll, &c->stops, &c->travel, fault);
    if (status != TSIDE_OK)
        return status;
    c->open = tside_i_travel_turns(&c->travel, c->travel.end);
    c->tips = 0;
    for (int i = 0; i < c->travel.stretches; i++)
        c->tips |= c->travel.stretch[i].held == TSIDE_HELD_TIPPED;
    c->hung = tside_hang_make(&c->travel, &c->guide, &c->collar, c->line.x + c->eye_out, c->line.y + c->eye_rise, 0,
                              &c->hang, NULL, NULL) == TSIDE_OK;
    return TSIDE_OK;
}

tside_status curved_side(int number, curved *c, tside_fault *fault)
{
    dice d = {(uint64_t)number * UINT64_C(0xd1342543de82ef95) + 3};
    memset(c, 0, sizeof *c);
    c->number = number;
    c->kind = (kind)(number % KINDS);
    throw_frame(c, &d);
    throw_curtain(c, &d);
    throw_load(c, &d);
    return curved_make(c, fault);
}

tside_status curved_wild(int number, curved *c, tside_fault *fault)
{
    dice d = {(uint64_t)number * 77 + 5};
    tside_frame *f = &c->frame;
    memset(c, 0, sizeof *c);
    c->number = number;
    c->kind = (kind)(number % KINDS);
    throw_frame(c, &d);
    throw_curtain(c, &d);
    throw_load(c, &d);
    f->width = dice_between(&d, 0.2, 12);
    f->peak_height = dice_between(&d, 0.05, 6);
    f->leg_height = chance(&d, 0.3) ? 0 : dice_between(&d, 0, 3);
    f->shoulder_radius = dice_between(&d, 0.05, 5);
    f->foot_x = dice_between(&d, 0.1, 6);
    f->between_x = chance(&d, 0.3) ? f->foot_x : dice_between(&d, 0.1, 6);
    f->peak_x = chance(&d, 0.3) ? f->foot_x : dice_between(&d, 0, 6);
    f->between_height = dice_between(&d, 0.05, f->peak_height);
    f->board_stand *= chance(&d, 0.3) ? 5 : 1;
    f->board_top *= chance(&d, 0.3) ? 3 : 1;
    c->curtain.hip = dice_between(&d, 0.3, 4);
    c->curtain.standoff = dice_between(&d, 0, 1);
    c->curtain.thickness = c->roll.thickness = chance(&d, 0.1) ? 0.05 : c->roll.thickness;
    c->roll.core = chance(&d, 0.1) ? 0.3 : c->roll.core;
    return curved_make(c, fault);
}

tside_frame plain_frame(double width, double leg, double peak)
{
    tside_frame frame;
    tside_usual(TSIDE_KIND_FRAME, &frame);
    frame.measured = TSIDE_CENTRELINE;
    frame.tube = (tside_round){0.05, 0.002};
    frame.width = width;
    frame.leg_height = leg;
    frame.peak_height = peak;
    return frame;
}

tside_frame points_frame(double foot_x, double between_x, double between_height, double peak_x, double peak_height)
{
    tside_frame frame = plain_frame(8, 0, peak_height);
    frame.shape = TSIDE_THREE_POINTS;
    frame.foot_x = foot_x;
    frame.between_x = between_x;
    frame.between_height = between_height;
    frame.peak_x = peak_x;
    return frame;
}

curved curved_boarded(double outboard_of_fixing)
{
    curved c;
    dice d = {1};
    memset(&c, 0, sizeof c);
    c.frame = plain_frame(8, 2.5, 4);
    throw_curtain(&c, &d);
    throw_load(&c, &d);
    tside_usual(TSIDE_KIND_CURTAIN, &c.curtain);
    tside_usual(TSIDE_KIND_STOPS, &c.stops);
    c.curtain.hip = 2;
    c.curtain.sill = 0.4;
    c.curtain.standoff = 0.03;
    c.curtain.thickness = 0;
    c.frame.board = TSIDE_BOARD_OUTSIDE;
    c.frame.board_top = 0.6;
    c.frame.board_stand = 0.03 + outboard_of_fixing;
    c.roll = (tside_roll){0.05, 0, 1};
    return c;
}

/* --- noting --- */

static struct {
    double off;
    int number, count;
} worst;

void begin_noting(void)
{
    memset(&worst, 0, sizeof worst);
}

void note(const curved *c, double off)
{
    if (worst.count++ == 0 || off > worst.off) {
        worst.off = off;
        worst.number = c->number;
    }
}

int tell_worst(const char *test)
{
    if (worst.count)
        printf("%s: %d compared, off by at most %.2g, side %d\n", test, worst.count, worst.off, worst.number);
    return worst.count;
}

/* --- polylines --- */

const double sagitta = 1e-7;
const double deep = 1e7;

void add_point(polyline *p, double x, double y)
{
    if (p->count == POINTS) /* ck_assert would tell the test's runner of each point */
        ck_abort_msg("more than %d points", POINTS);
    p->x[p->count] = x;
    p->y[p->count++] = y;
}

/*
 * An arc by its outboard normal's angles at its lower and upper end; a hollow one's radius is below 0, a point's 0.
 * Straight pieces lie between the arcs.
 */
typedef struct bend {
    double x, y, radius, low, high;
} bend;

enum { BENDS = 2 };

/* Through three points: the centre lies where two perpendicular bisectors meet. */
static int bend_through(const tside_frame *f, double outboard, bend *b)
{
    double ax = f->between_x - f->foot_x, ay = f->between_height - f->foot_height, bx = f->peak_x - f->foot_x,
           by = f->peak_height - f->foot_height;
    double cross = 2 * (ax * by - ay * bx), aa = ax * ax + ay * ay, bb = bx * bx + by * by, out = cross > 0 ? 1 : -1;
    if (fabs(cross) < 1e-9) {
        double along = hypot(bx, by), nx = by / along, ny = -bx / along, angle = atan2(ny, nx);
        b[0] = (bend){f->foot_x + outboard * nx, f->foot_height + outboard * ny, 0, angle, angle};
        b[1] = (bend){f->peak_x + outboard * nx, f->peak_height + outboard * ny, 0, angle, angle};
        return 2;
    }
    b->x = f->foot_x + (by * aa - ay * bb) / cross;
    b->y = f->foot_height + (ax * bb - bx * aa) / cross;
    b->radius = out * hypot(f->foot_x - b->x, f->foot_height - b->y) + outboard;
    b->low = atan2(out * (f->foot_height - b->y), out * (f->foot_x - b->x));
    b->high = atan2(out * (f->peak_height - b->y), out * (f->peak_x - b->x));
    return 1;
}

/* A frame's bends, moved outboard of the centreline. */
static int bends_of(const tside_frame *f, double outboard, bend *b)
{
    double d = f->measured == TSIDE_OUTSIDE ? f->tube.diameter : 0, a = (f->width - d) / 2, h = f->leg_height,
           peak = f->peak_height - d / 2, rise = peak - h, R, y, turn;
    if (f->shape == TSIDE_THREE_POINTS)
        return bend_through(f, outboard - d / 2, b);
    if (rise >= a) { /* from (a, h) to (0, peak), its centre at the leg's height */
        R = (rise * rise + a * a) / (2 * a);
        b[0] = (bend){a - R, h, R + outboard, 0, atan2(rise, R - a)};
        return 1;
    }
    R = (a * a + rise * rise) / (2 * rise); /* from (a, h) to (0, peak), its centre below the peak */
    turn = atan2(R - rise, a);
    b[0] = (bend){a, h, outboard, 0, turn};
    if (f->shoulder_radius_given) { /* touches the leg, and the arch from inside: its centre is R - q from the arch's */
        double q = f->shoulder_radius;
        y = sqrt((R - q) * (R - q) - (a - q) * (a - q));
        turn = atan2(y, a - q);
        b[0] = (bend){a - q, peak - R + y, q + outboard, 0, turn};
    }
    b[1] = (bend){0, peak - R, R + outboard, turn, PI / 2};
    if (h > 0)
        return 2;
    b[0] = b[1];
    return 1;
}

void trace(const tside_frame *f, double outboard, double top, polyline *p)
{
    bend bends[BENDS];
    int count = bends_of(f, outboard, bends);
    p->count = 0;
    for (int i = 0; i < count; i++) {
        const bend *b = bends + i;
        int parts = 1 + (int)(fabs(b->high - b->low) * sqrt(fabs(b->radius) / (8 * sagitta)));
        for (int k = 0; k <= parts; k++) {
            double angle = b->low + (b->high - b->low) * k / parts, x = b->x + b->radius * cos(angle),
                   y = b->y + b->radius * sin(angle);
            if (p->count == 0)
                add_point(p, x + deep * sin(angle), y - deep * cos(angle));
            if (hypot(x - p->x[p->count - 1], y - p->y[p->count - 1]) > 1e-12) /* two bends meet in one point */
                add_point(p, x, y);
            if (y > top)
                return;
        }
    }
}

int part_at(const polyline *p, double y)
{
    int low = 0, high = p->count - 1;
    while (low + 1 < high) {
        int middle = (low + high) / 2;
        if (p->y[middle] < y)
            low = middle;
        else
            high = middle;
    }
    return low;
}

/* Its sagitta, level. */
double grain(const polyline *p, double y)
{
    int i = part_at(p, y);
    return 2 * sagitta * hypot(p->x[i + 1] - p->x[i], p->y[i + 1] - p->y[i]) / (p->y[i + 1] - p->y[i]);
}

double polyline_x(const polyline *p, double y)
{
    int i = part_at(p, y);
    return p->x[i] + (p->x[i + 1] - p->x[i]) * (y - p->y[i]) / (p->y[i + 1] - p->y[i]);
}

const outside *outside_of(const curved *c)
{
    static outside o;
    trace(&c->frame, c->frame.tube.diameter / 2, c->curtain.hip + 0.3, &o.face);
    o.fixing_x = polyline_x(&o.face, c->curtain.hip) + c->curtain.standoff;
    o.fixing_y = c->curtain.hip;
    o.board = c->frame.board == TSIDE_BOARD_OUTSIDE;
    o.board_x = o.board ? polyline_x(&o.face, c->frame.board_top) + c->frame.board_stand : 0;
    o.board_y = c->frame.board_top;
    o.grain = 2 * sagitta + grain(&o.face, c->curtain.hip) + (o.board ? grain(&o.face, c->frame.board_top) : 0);
    return &o;
}
