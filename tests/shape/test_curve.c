/* SPDX-License-Identifier: MIT */
/*
 * Travel along every kind of bow: hull, free chord and energy against what a fine polyline gives; extremes against dense samples; corners, tipping boards; continuity and laws.
 */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "curves.h"
#include "side/plan.h"
#include "statics/push.h"

Suite *curve_suite(void);

static double stretch_end(const tside_travel *travel, int i)
{
    return i + 1 < travel->stretches ? travel->stretch[i + 1].from : travel->end;
}

/* --- refusals --- */

/* The refusals that the headers name and that a side thrown here may meet, each with its header's words. */
static struct {
    const char *field, *words;
    int count;
} refusals[] = {
    {"curtain.hip", "hip above the bow's top", 0},
    {"frame.shoulder_radius", "a shoulder beginning below the foot", 0},
    {"stops.shut_height", "shut so high that the roll's top would pass the rail", 0},
    {"stops.gap", "open below shut", 0},
};
enum { REFUSALS = sizeof refusals / sizeof *refusals };

static void count_refusal(int number, const tside_fault *fault)
{
    for (int i = 0; i < REFUSALS; i++)
        if (!strcmp(fault->field, refusals[i].field)) {
            refusals[i].count++;
            return;
        }
    ck_abort_msg("side %d is refused for %s: %s", number, fault->field, fault->reason);
}

START_TEST(random_sides_are_refused_only_as_the_headers_say)
{
    int made[KINDS] = {0}, all = 0, tips = 0, hung = 0, boards = 0, on_chord = 0;
    for (int n = 0; n < SIDES; n++) {
        curved c;
        tside_fault fault;
        if (curved_side(n, &c, &fault) != TSIDE_OK) {
            count_refusal(n, &fault);
            continue;
        }
        made[c.kind]++;
        all++;
        tips += c.tips;
        hung += c.hung;
        boards += c.bow.board_given;
        on_chord += c.line.piece->slope > 0 && c.travel.hanging < (c.line.count > 1 ? c.line.piece[1].from : HUGE_VAL);
    }
    printf("%d sides of %d made, %d with a baseboard, %d tip over it, %d hang by a chord from the first, %d guides hang\n", all, SIDES, boards, tips, on_chord, hung);
    for (int i = 0; i < REFUSALS; i++)
        printf("refused for %s, %s: %d\n", refusals[i].field, refusals[i].words, refusals[i].count);
    for (int k = 0; k < KINDS; k++)
        ck_assert_int_gt(made[k], SIDES / KINDS * 9 / 10);
    ck_assert_int_gt(hung, SIDES / 2);
    ck_assert_int_gt(tips, SIDES / 50);
    ck_assert_int_gt(on_chord, SIDES / 10);
}
END_TEST

/* --- the hull --- */

/* The line again: the outboard chain of the convex hull, from the fixing down, with the distance down to each corner. */
typedef struct hull {
    polyline corner;
    double down[POINTS];
} hull;

/* Where a point stands to the way from one to another, which goes down: above 0 outboard of it. */
static double outboard_of(const polyline *p, int from, int to, double x, double y)
{
    return (p->y[from] - p->y[to]) * (x - p->x[from]) + (p->x[to] - p->x[from]) * (y - p->y[from]);
}

/* Andrew's monotone chain (Information Processing Letters 9, 1979), from memory: a corner goes when the next point shows that it lies inboard. */
static void wrap(hull *h, double x, double y)
{
    polyline *p = &h->corner;
    while (p->count > 1 && outboard_of(p, p->count - 2, p->count - 1, x, y) >= 0)
        p->count--;
    add_point(p, x, y);
}

static const hull *hull_of(const outside *o)
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

static double hull_slope(const hull *h, int i)
{
    return atan2(h->corner.x[i + 1] - h->corner.x[i], h->corner.y[i] - h->corner.y[i + 1]);
}

/* The place at a distance down; returns which part of the chain holds it. */
static int hull_at(const hull *h, double distance, double *x, double *y)
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

/* Whether a slope lies between those of the chain a little above and below a distance; a step of the polyline turns by less than 1e-3. */
static int faces(const hull *h, double distance, double slope)
{
    double x, y, little = 1e-5, above = hull_slope(h, hull_at(h, fmax(0, distance - little), &x, &y)), below = hull_slope(h, hull_at(h, distance + little, &x, &y));
    return slope <= above + 4e-3 && slope >= below - 4e-3;
}

FOR_CURVED(line_is_the_hull)
{
    const outside *o = outside_of(c);
    const hull *h = hull_of(o);
    for (double down = 0; down < 2.6; down += 0.0093) {
        double x, y, normal, hx, hy, off;
        tside_fault fault;
        ANSWERS(tside_line_at(&c->line, down, &x, &y, &normal, &fault));
        hull_at(h, down, &hx, &hy);
        off = hypot(x - hx, y - hy);
        NEAR(off, 0, o->grain, "distance of line and hull", c->number);
        if (!faces(h, down, normal))
            ck_abort_msg("side %d: the line faces %g at %g", c->number, normal, down);
        note(c, off);
    }
}

/* --- where the bar is --- */

/* How far a roll of radius r about (x, y) keeps off face and baseboard; below 0 where it reaches in. */
static double clearance(const outside *o, double x, double y, double r)
{
    const polyline *f = &o->face;
    double nearest = HUGE_VAL;
    int start = part_at(f, y);
    if (o->board) {
        double dx = x - o->board_x, dy = fmax(0, y - o->board_y); /* its outer face goes on down */
        nearest = hypot(dx, dy);
    }
    for (int way = -1; way <= 1; way += 2)
        for (int i = way < 0 ? start : start + 1; i >= 0 && i + 1 < f->count; i += way) {
            double dx = f->x[i + 1] - f->x[i], dy = f->y[i + 1] - f->y[i], u = ((x - f->x[i]) * dx + (y - f->y[i]) * dy) / (dx * dx + dy * dy);
            u = fmin(fmax(u, 0), 1);
            nearest = fmin(nearest, hypot(x - f->x[i] - u * dx, y - f->y[i] - u * dy));
            if ((way < 0 ? y - f->y[i] : f->y[i + 1] - y) > nearest)
                break;
        }
    return nearest - r;
}

static double chord_clearance(const outside *o, double s, double r, double slope)
{
    return clearance(o, o->fixing_x + s * sin(slope) + r * cos(slope), o->fixing_y - s * cos(slope) + r * sin(slope), r);
}

/*
 * The slope to which a roll on a free chord falls back: from the line's first slope, where nothing holds it, towards plumb until it touches, or to plumb. The axis moves on
 * a circle about the fixing, never by more than the roll's clearance, so that nothing is passed over.
 */
static double falls_back(const outside *o, double first, double s, double r)
{
    double slope = first, far = hypot(s, r), clear;
    for (int i = 0; i < 100000 && slope > 0 && (clear = chord_clearance(o, s, r, slope)) > 1e-10; i++)
        slope -= clear / far;
    return fmax(slope, 0);
}

/* How squarely the roll meets what stops it: the clearance it loses for each metre its axis moves. */
static double squareness(const outside *o, double s, double r, double slope)
{
    const double little = 1e-5;
    return (chord_clearance(o, s, r, slope + little) - chord_clearance(o, s, r, slope)) / (little * hypot(s, r));
}

/* Whether the roll has not tipped yet, lies slack on the baseboard, or hangs again. */
enum { BEFORE_TIPPING, LIES_SLACK, HANGS_AGAIN };

static int tipped_at(const curved *c, double wraps)
{
    for (int i = 0; i < c->travel.stretches; i++)
        if (c->travel.stretch[i].held == TSIDE_HELD_TIPPED) {
            double lead = c->travel.stretch[i].lead;
            return wraps < c->travel.stretch[i].from - lead ? BEFORE_TIPPING : wraps <= stretch_end(&c->travel, i) - lead ? LIES_SLACK : HANGS_AGAIN;
        }
    return BEFORE_TIPPING;
}

/* What is wound on is missing from what hangs; and bar angle is wraps and the curtain's change of heading. */
static void check_winding(const curved *c, const tside_position *shut, const tside_position *p)
{
    double te = c->roll.packing * c->roll.thickness;
    double wound = PI * p->wraps * (c->roll.core + te * p->wraps) - PI * shut->wraps * (c->roll.core + te * shut->wraps);
    NEAR(p->taken_up, wound, 1e-12, "taken up", c->number);
    NEAR(p->hanging, shut->hanging - wound, 1e-12, "hanging", c->number);
    NEAR(p->diameter, c->roll.core + 2 * te * p->wraps, 1e-15, "diameter", c->number);
    NEAR(p->underside, p->y - p->diameter / 2, 1e-12, "underside", c->number);
    NEAR(p->opening, fmax(0, p->underside - c->curtain.sill), 1e-12, "opening", c->number);
    NEAR(p->turns, p->wraps - shut->wraps + (p->slope - shut->slope) / (2 * PI), 1e-11, "turns", c->number);
}

/* On the line below the free chord: outboard of the hull by the radius, square to it. */
static void check_on_line(const curved *c, const outside *o, const hull *h, const tside_position *p)
{
    double x, y, r = p->diameter / 2;
    hull_at(h, p->hanging, &x, &y);
    NEAR(hypot(p->x - x - r * cos(p->slope), p->y - y - r * sin(p->slope)), 0, o->grain, "axis off the line", c->number);
    if (!faces(h, p->hanging, p->slope))
        ck_abort_msg("side %d: curtain's slope %g", c->number, p->slope);
}

/* Tipped over the baseboard, it hangs inboard of its edge: by what holds it there, or plumb. */
static void check_tipped(const curved *c, const outside *o, const tside_position *p)
{
    double clear = clearance(o, p->x, p->y, p->diameter / 2);
    NEAR(hypot(p->x - o->fixing_x, p->y - o->fixing_y), hypot(p->hanging, p->diameter / 2), o->grain, "axis from the fixing", c->number);
    if (!(clear > -o->grain && (p->slope == 0 || clear < o->grain)))
        ck_abort_msg("side %d: %g off face and board, at a slope of %g", c->number, clear, p->slope);
}

static void check_on_chord(const curved *c, const outside *o, const hull *h, const tside_position *p)
{
    double s = p->hanging, r = p->diameter / 2, first = hull_slope(h, 0), slope = falls_back(o, first, s, r), square = slope > 0 ? squareness(o, s, r, slope) : 1;
    double off = hypot(p->x - o->fixing_x - s * sin(slope) - r * cos(slope), p->y - o->fixing_y + s * cos(slope) - r * sin(slope));
    NEAR(off, 0, o->grain / fmin(1, fmax(square, 1e-4)), "axis on the free chord", c->number);
    NEAR(p->slope, slope, o->grain / fmax(square, 1e-4) / hypot(s, r), "chord's slope", c->number);
    if (square > 0.1)
        note(c, off);
}

FOR_CURVED(bar_is_where_a_roll_comes_to_rest)
{
    enum { PLACES = 400 };
    const outside *o = outside_of(c);
    const hull *h = hull_of(o);
    double chord = c->line.count > 1 ? c->line.piece[1].from : HUGE_VAL;
    tside_position shut, p;
    tside_fault fault;
    ANSWERS(tside_travel_at(&c->travel, 0, &shut, &fault));
    NEAR(shut.underside, c->stops.shut_by == TSIDE_SHUT_HEIGHT ? c->stops.shut_height : c->curtain.sill - c->stops.seal, 1e-10, "shut", c->number);
    NEAR(shut.wraps, c->stops.wraps_shut, 1e-12, "wraps", c->number);
    for (int k = 0; k <= PLACES; k++) {
        ANSWERS(tside_travel_at(&c->travel, c->open * k / PLACES, &p, &fault));
        check_winding(c, &shut, &p);
        if (p.hanging > chord - 1e-9) /* also at a corner where the chord ends */
            check_on_line(c, o, h, &p);
        else if (tipped_at(c, p.wraps) == BEFORE_TIPPING)
            check_on_chord(c, o, h, &p);
        else if (tipped_at(c, p.wraps) == HANGS_AGAIN)
            check_tipped(c, o, &p);
    }
    if (c->stops.open_by == TSIDE_OPEN_HEIGHT)
        NEAR(p.underside, c->stops.open_height, 1e-10, "open", c->number);
    else
        NEAR(p.y + p.diameter / 2, c->curtain.hip - c->curtain.rail_depth - c->stops.gap, 1e-10, "open", c->number);
}

/* --- work and energy --- */

/* Potential energy of curtain, bar and what is fixed to it, and of the guide if it hangs, apart from the library: over the polyline, or a straight chord. */
static double energy(const curved *c, const hull *h, const tside_position *p, int guide)
{
    const tside_load *w = &c->load;
    double sheet = w->areal_mass + w->wet, te = c->roll.packing * c->roll.thickness, wound = PI * p->wraps * (c->roll.core + te * p->wraps), hanging = 0, e;
    if (p->hanging <= h->down[1]) /* straight from the fixing to where it meets the roll */
        hanging = p->hanging * (h->corner.y[0] + p->y - p->diameter / 2 * sin(p->slope)) / 2;
    else
        for (int i = 0; i + 1 < h->corner.count && h->down[i] < p->hanging; i++) {
            double to = fmin(h->down[i + 1], p->hanging), x, y;
            hull_at(h, (h->down[i] + to) / 2, &x, &y);
            hanging += (to - h->down[i]) * y;
        }
    e = GRAVITY * w->length * ((w->bar_mass + w->clip_mass + sheet * wound) * p->y + sheet * hanging) + GRAVITY * w->end_mass * p->y;
    if (guide) {
        const tside_hang *g = &c->hang;
        double lean = atan2(p->x - g->eye_x, g->eye_y - p->y) + asin(g->offset / hypot(p->x - g->eye_x, p->y - g->eye_y));
        e += -g->weight * (g->chain + g->length) / 2 * cos(lean) + g->carried * g->carried_offset * lean;
    }
    return e;
}

/* N, of all that is lifted. */
static double weight(const curved *c, const tside_position *p, int guide)
{
    const tside_load *w = &c->load;
    double te = c->roll.packing * c->roll.thickness, curtain = p->hanging + PI * p->wraps * (c->roll.core + te * p->wraps);
    return GRAVITY * (w->length * (w->bar_mass + w->clip_mass + (w->areal_mass + w->wet) * curtain) + w->end_mass) + (guide ? c->hang.weight + c->hang.carried : 0);
}

/* Whether the guide would turn as fast as the bar, so that no torque drives it. */
static int guide_runs_away(const curved *c)
{
    double work;
    return c->hung && tside_lift_work(&c->travel, &c->load, &c->hang, 0, &work, NULL) == TSIDE_OUT_OF_REACH;
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

/* Over part of a stretch, by the rule of Gauss and Legendre with five nodes (Abramowitz and Stegun, table 25.4); the drive's over its own angle, which the guide's turning takes away from. */
static work work_over(const curved *c, const tside_hang *hang, int stretch, double from, double to)
{
    static const double node[] = {0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640};
    static const double weight[] = {0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891};
    tside_i_lifting lifting = {NULL, &c->load, hang, 0}; /* a torque asks for no track */
    work sum = {0, 0};
    for (int k = 0; k < 5; k++) {
        tside_i_spot spot;
        tside_torque torque;
        double angle;
        tside_i_travel_spot(&c->travel, stretch, (from + to) / 2 + node[k] * (to - from) / 2, &spot);
        torque = tside_i_torque(&lifting, &spot);
        angle = PI * (to - from) * weight[k] / (spot.share > 0 ? spot.share : 1); /* at a corner, where nothing is wound on, progress is the bar's turns */
        sum.lift += angle * torque.lift;
        if (hang)
            sum.drive += angle * torque.drive * (1 - tside_i_lean_at(hang->eye_x, hang->eye_y, hang->offset, &spot).rate);
    }
    return sum;
}

/* Halves where the halves' sum differs from the whole, as it does close to tipping, where the chord turns ever faster. */
static work refined(const curved *c, const tside_hang *hang, int stretch, double from, double to, work whole, int depth)
{
    double middle = (from + to) / 2;
    work a = work_over(c, hang, stretch, from, middle), b = work_over(c, hang, stretch, middle, to), both = plus(a, b);
    if (depth == 0 || fabs(both.lift - whole.lift) + fabs(both.drive - whole.drive) < 1e-12 * (fabs(whole.lift) + 1))
        return both;
    return plus(refined(c, hang, stretch, from, middle, a, depth - 1), refined(c, hang, stretch, middle, to, b, depth - 1));
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

/* --- extremes, against dense sampling --- */

/* Greatest and least of what the library searches for, over both ends of every stretch and evenly spaced places between. */
typedef struct extremes {
    double torque, push, hold, lean_least, lean_greatest, length;
} extremes;

static const double available = 200; /* N m */

static void sample(const curved *c, const tside_i_spot *spot, extremes *e)
{
    tside_i_lifting lifting = {NULL, &c->load, &c->hang, 0}; /* a torque asks for no track */
    tside_i_lean at = tside_i_lean_at(c->hang.eye_x, c->hang.eye_y, c->hang.offset, spot);
    tside_torque t = tside_i_torque(&lifting, spot);
    double lean = atan2(spot->x - c->hang.eye_x, c->hang.eye_y - spot->y) + asin(c->hang.offset / hypot(spot->x - c->hang.eye_x, spot->y - c->hang.eye_y));
    double moment = c->hang.weight * (c->hang.chain + c->hang.length) / 2 * sin(lean) + c->hang.carried * c->hang.carried_offset;
    double own = t.up - t.per_metre * c->load.length; /* of what is fixed to the bar's end */
    e->torque = fmax(e->torque, t.drive);
    e->push = fmax(e->push, (t.drive + moment) / at.reach);
    e->hold = fmin(e->hold, t.down);
    e->lean_least = fmin(e->lean_least, lean);
    e->lean_greatest = fmax(e->lean_greatest, lean);
    e->length = fmin(e->length, (available * (1 - at.rate) - moment * at.rate - own) / t.per_metre);
}

static extremes sampled(const curved *c)
{
    enum { SAMPLES = 2000 };
    extremes e = {-HUGE_VAL, -HUGE_VAL, HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL};
    double all = c->travel.end - c->travel.wraps_shut;
    for (int i = 0; i < c->travel.stretches; i++) {
        double from = c->travel.stretch[i].from, to = stretch_end(&c->travel, i);
        int count = 10 + (int)(SAMPLES * (to - from) / all);
        for (int k = 0; k <= count; k++) {
            tside_i_spot spot;
            tside_i_travel_spot(&c->travel, i, k == count ? to : from + (to - from) * k / count, &spot);
            sample(c, &spot, &e);
        }
    }
    return e;
}

/* found: what the library found to be greatest; it may pass the best sample by what a curve rises between two. */
static void greatest_of(const curved *c, double found, double best, double scale, const char *what)
{
    ck_assert_msg(found >= best - 1e-9 * scale, "side %d: %s: %.12g, a sample has %.12g", c->number, what, found, best);
    ck_assert_msg(found <= best + 1e-4 * scale, "side %d: %s: %.12g, samples reach but %.12g", c->number, what, found, best);
    note(c, fmax(0, best - found) / scale);
}

/* That it is a value the travel has, on one side of the place or the other. */
static void reached(const curved *c, const tside_hang *hang, const tside_torque *found, double value)
{
    double nearest = HUGE_VAL;
    for (int k = -1; k <= 1; k++) {
        tside_torque t;
        if (tside_lift_at(&c->travel, &c->load, hang, fmin(fmax(found->turns + k * 1e-9, 0), c->open), &t, NULL) == TSIDE_OK)
            nearest = fmin(nearest, fabs((hang ? t.drive : t.down) - value));
    }
    NEAR(nearest, 0, 1e-5 * (fabs(value) + 1), "value at its place", c->number);
}

/* Over more sides: two peaks in one stretch are rare. */
FOR_MORE_CURVED(extremes_are_the_greatest_of_dense_samples, 12 * SIDES)
{
    extremes e;
    tside_i_track track;
    tside_i_lifting lifting = {&track, &c->load, &c->hang, 0};
    tside_i_spot where;
    tside_torque most, least;
    tside_fault fault;
    double low, high, longest;
    if (!c->hung || guide_runs_away(c))
        return;
    tside_i_track_make(&c->travel, &track);
    e = sampled(c);
    ANSWERS(tside_lift_worst(&c->travel, &c->load, &c->hang, &most, &least, &fault));
    greatest_of(c, most.drive, e.torque, fabs(e.torque), "worst torque");
    if (!c->tips)
        reached(c, &c->hang, &most, most.drive);
    greatest_of(c, -least.down, -e.hold, fabs(e.torque), "least hold on the way down");
    if (!c->tips)
        reached(c, NULL, &least, least.down);
    greatest_of(c, tside_i_greatest_push(&track, &lifting, &c->hang, 0, &where), e.push, fabs(e.push), "side force");
    tside_i_lean_range(&track, c->hang.eye_x, c->hang.eye_y, c->hang.offset, &low, &high);
    greatest_of(c, high, e.lean_greatest, 1, "greatest lean");
    greatest_of(c, -low, -e.lean_least, 1, "least lean");
    if (e.length > 0) {
        ANSWERS(tside_lift_longest(&c->travel, &c->load, &c->hang, available, &longest, &fault));
        greatest_of(c, -longest, -e.length, e.length, "longest side");
    } else
        ck_assert(tside_lift_longest(&c->travel, &c->load, &c->hang, available, &longest, NULL) == TSIDE_OUT_OF_REACH);
}

/* --- one after the other, and back --- */

FOR_CURVED(axis_never_jumps)
{
    for (int i = 0; i + 1 < c->travel.stretches; i++) {
        tside_i_spot before, after;
        tside_i_travel_spot(&c->travel, i, c->travel.stretch[i + 1].from, &before);
        tside_i_travel_spot(&c->travel, i + 1, c->travel.stretch[i + 1].from, &after);
        NEAR(hypot(before.x - after.x, before.y - after.y), 0, 1e-8, "jump of the axis", c->number);
        NEAR(before.s, after.s, 1e-10, "jump of what hangs", c->number);
        note(c, hypot(before.x - after.x, before.y - after.y));
    }
}

/* Over a baseboard the roll drops as it tips, so that its height tells no place. */
FOR_CURVED(turns_and_heights_invert)
{
    for (int k = 0; k <= 7; k++) {
        double turns = c->open * k / 7;
        tside_position at, back;
        tside_fault fault;
        ANSWERS(tside_travel_at(&c->travel, turns, &at, &fault));
        NEAR(at.turns, turns, 1e-10, "turns of the place", c->number);
        if (c->tips)
            continue;
        ANSWERS(tside_travel_to_height(&c->travel, at.underside, &back, &fault));
        NEAR(back.underside, at.underside, 1e-10, "height", c->number);
        NEAR(back.turns, turns, 1e-8, "turns of the height", c->number);
        note(c, fabs(back.turns - turns));
    }
}

/* --- corners, and the tipping board --- */

static void must_make(curved *c)
{
    tside_fault fault;
    ANSWERS(curved_make(c, &fault));
}

/* The curtain comes down over the edge at a slope and goes on plumb: the bar turns about the edge by that slope, and takes up nothing. */
START_TEST(corner_turns_the_bar_without_take_up)
{
    enum { STEPS = 4000 };
    curved c = curved_boarded(0.02);
    double slope = atan2(0.02, 1.4), chord = hypot(0.02, 1.4), begins = -1, ends = -1, last = -1;
    tside_fault fault;
    must_make(&c);
    for (int k = 0; k <= STEPS; k++) {
        double turns = c.open * k / STEPS;
        tside_position p, back;
        ANSWERS(tside_travel_at(&c.travel, turns, &p, &fault));
        ck_assert(p.taken_up >= last);
        if (fabs(p.hanging - chord) < 1e-12) {
            begins = begins < 0 ? turns : begins;
            ends = turns;
            NEAR(hypot(p.x - c.bow.board_x, p.y - c.bow.board_y), 0.025, 1e-12, "axis turns about the edge", k);
            NEAR(p.turns, turns, 1e-12, "turns", k);
            ANSWERS(tside_travel_to_height(&c.travel, p.underside, &back, &fault));
            NEAR(back.turns, turns, 1e-9, "turns of the height", k);
            NEAR(back.taken_up, p.taken_up, 1e-12, "taken up at the height", k);
        } else
            ck_assert(p.taken_up > last);
        last = p.taken_up;
    }
    ck_assert(begins > 0);
    NEAR(ends - begins, slope / (2 * PI), 2 * c.open / STEPS, "turns about the edge", 0);
}
END_TEST

/* Shut with the curtain partly turned about the edge: the height tells by how much. */
START_TEST(shut_may_lie_at_a_corner)
{
    double slope = atan2(0.02, 1.4), chord = hypot(0.02, 1.4), r = 0.025;
    for (int k = 0; k <= 10; k++) {
        double at = slope * k / 10;
        curved c = curved_boarded(0.02);
        tside_position shut;
        tside_fault fault;
        c.stops.shut_by = TSIDE_SHUT_HEIGHT;
        c.stops.shut_height = 0.6 + r * sin(at) - r;
        must_make(&c);
        ANSWERS(tside_travel_at(&c.travel, 0, &shut, &fault));
        NEAR(shut.slope, at, 1e-10, "slope", k);
        NEAR(shut.hanging, chord, 1e-10, "hanging", k);
        NEAR(shut.underside, c.stops.shut_height, 1e-12, "underside", k);
        NEAR(hypot(shut.x - c.bow.board_x, shut.y - 0.6), r, 1e-12, "axis from the edge", k);
    }
}
END_TEST

/* How many of the thousand have corners, and that at each the bar turns by what the line does. */
FOR_CURVED(corners_turn_by_what_the_line_turns)
{
    for (int i = 1; i < c->travel.stretches; i++) { /* from the second on, so that it is met whole */
        const tside_stretch *s = c->travel.stretch + i;
        double turned;
        if (s->held != TSIDE_HELD_LINE || c->line.piece[s->index].length > 0 || i + 1 == c->travel.stretches)
            continue;
        turned = (stretch_end(&c->travel, i) - s->from) * 2 * PI;
        NEAR(turned, c->line.piece[s->index].turn, 1e-12, "turn at a corner", c->number);
        NEAR(stretch_end(&c->travel, i) - s->lead, c->travel.stretch[i + 1].from - c->travel.stretch[i + 1].lead + turned / (2 * PI), 1e-12, "lead", c->number);
        note(c, fabs(turned - c->line.piece[s->index].turn));
    }
}

/* A whole side round it, its guides hung on the hip. */
static tside_side whole_side(const curved *c)
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
    side.drive.rated_torque = 60;
    side.drive_end.guide = side.free_end.guide = c->guide;
    side.drive_end.hung = side.free_end.hung = TSIDE_ON_HIP;
    return side;
}

/* So the drive turns on, and no turn of the table is without its row. */
START_TEST(turn_table_goes_on_over_a_corner)
{
    enum { ROWS = 64 };
    curved c = curved_boarded(0.02);
    tside_side side = whole_side(&c);
    tside_turn rows[ROWS];
    tside_fault fault;
    int count;
    ANSWERS(tside_plan_turns(&side, rows, ROWS, &count, &fault));
    ck_assert_int_gt(count, 5);
    for (int i = 1; i < count; i++) {
        NEAR(rows[i].turn, i, i + 1 < count ? 0 : 1, "turn", i);
        ck_assert(rows[i].total > rows[i - 1].total && rows[i].underside > rows[i - 1].underside);
    }
}
END_TEST

static int found_to_tip(const curved *c)
{
    tside_side side = whole_side(c);
    tside_plan plan;
    tside_fault fault;
    ANSWERS(tside_plan_side(&side, &plan, &fault));
    for (int i = 0; i < plan.finding_count; i++)
        if (plan.findings[i].code == TSIDE_FINDING_TIPS)
            return 1;
    return 0;
}

/* The edge stands r or more outboard of the fixing. */
START_TEST(board_tips_the_roll_from_its_radius_on)
{
    static const double about[] = {-0.01, -1e-4, -1e-6, 1e-6, 1e-4, 0.01, 0.2};
    for (size_t i = 0; i < sizeof about / sizeof *about; i++) {
        curved c = curved_boarded(0.025 + about[i]);
        must_make(&c);
        ck_assert_msg(c.tips == (about[i] > 0) && found_to_tip(&c) == c.tips, "%g m beyond the radius", about[i]);
    }
}
END_TEST

/* It tips with its axis over the edge, while its curtain still leans, and nowhere else; the bar never turns back as it falls. */
FOR_CURVED(roll_tips_only_over_the_edge)
{
    const tside_travel *t = &c->travel;
    for (int i = 0; i < t->stretches; i++) {
        tside_i_spot spot;
        double from = t->stretch[i].from, to = stretch_end(t, i), r, last;
        if (t->stretch[i].held != TSIDE_HELD_TIPPED)
            continue;
        tside_i_travel_spot(t, i - 1, from, &spot); /* as it bears on the edge to the last */
        r = spot.r;
        NEAR(spot.x, c->bow.board_x, 1e-5 * r, "axis over the edge", c->number);
        NEAR(spot.y, c->bow.board_y + r, 1e-5 * r, "axis over the edge", c->number);
        ck_assert(spot.x > c->line.x + r && spot.ny > 0);
        note(c, hypot(spot.x - c->bow.board_x, spot.y - c->bow.board_y - r));
        last = tside_i_travel_angle(t, &spot);
        for (int k = 0; k <= 20; k++) {
            tside_i_travel_spot(t, i, from + (to - from) * k / 20, &spot);
            NEAR(fmin(tside_i_travel_angle(t, &spot) - last, 0), 0, 1e-11, "turning back", c->number);
            last = tside_i_travel_angle(t, &spot);
        }
    }
}

/* With a thick curtain it is the radius over the edge: there the axis is r above it and what hangs, s, reaches plumb down to the axis' level. */
START_TEST(tipping_radius_is_that_over_the_edge)
{
    for (int n = 0; n < 20; n++) {
        dice d = {(uint64_t)n};
        double te = dice_between(&d, 0, 0.006), top = dice_between(&d, 0.5, 1), low = 0, high = 0.2, r = 0.025, wanted;
        curved c;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            c = curved_boarded(middle);
            c.frame.board_top = top;
            c.curtain.thickness = c.roll.thickness = te;
            must_make(&c);
            if (c.tips)
                high = middle;
            else
                low = middle;
        }
        for (int i = 0; i < 100; i++) { /* wound: the curtain of shut, less what still hangs; radius by its area */
            double hangs = c.travel.hanging + PI * 1 * (0.05 + te) - (2 - top - r);
            r = sqrt(0.025 * 0.025 + te * hangs / PI);
        }
        wanted = r;
        NEAR(high, wanted, 1e-7, "the edge's least stand to tip", n);
    }
}
END_TEST

/* --- continuity --- */

/* What comes out of a side, as numbers to compare: travel, eye, guide, torque. */
enum { OUTCOMES = 9 };

static void outcomes(curved *c, double out[OUTCOMES])
{
    tside_position open;
    tside_sweep sweep;
    tside_torque torque;
    tside_fault fault;
    double eye_x;
    must_make(c);
    ANSWERS(tside_travel_at(&c->travel, c->open, &open, &fault));
    ANSWERS(tside_eye_best(&c->travel, c->line.y + 0.4, c->collar.offset, &eye_x, &fault));
    ANSWERS(tside_hang_make(&c->travel, &c->guide, &c->collar, eye_x, c->line.y + 0.4, &c->hang, &sweep, &fault));
    ANSWERS(tside_lift_worst(&c->travel, &c->load, &c->hang, &torque, NULL, &fault));
    memcpy(out, (double[OUTCOMES]){c->open, open.x, open.y, open.taken_up, eye_x, sweep.cut_length, sweep.walkway, sweep.lean_greatest, torque.drive / 100}, OUTCOMES * sizeof *out);
}

static double difference(curved a, curved b)
{
    double one[OUTCOMES], other[OUTCOMES], most = 0;
    outcomes(&a, one);
    outcomes(&b, other);
    for (int i = 0; i < OUTCOMES; i++)
        most = fmax(most, fabs(one[i] - other[i]));
    return most;
}

/* That a side, changed by ever less, comes as near as the change: at a tenth of it about ten times nearer. */
static void comes_near(const curved *limit, curved (*changed)(double by), double by, double rate, const char *what)
{
    double far = difference(*limit, changed(by)), near = difference(*limit, changed(by / 10));
    ck_assert_msg(far <= rate * by, "%s: %g moves a side by %g", what, by, far);
    ck_assert_msg(near <= far / 8 + 1e-11, "%s: a change of %g moves a side by %g, a tenth of it by %g", what, by, far, near);
}

static curved plain_side(tside_frame frame)
{
    curved c = curved_boarded(0);
    c.frame = frame;
    return c;
}

static curved flatter(double by)
{
    return plain_side(plain_frame(8, 0.8, 4.8 - by));
}

static curved more_pointed(double by)
{
    return plain_side(plain_frame(8, 0.8, 4.8 + by));
}

START_TEST(nothing_jumps_across_the_half_circle)
{
    curved half = flatter(0);
    comes_near(&half, flatter, 1e-3, 10, "flatter than a half circle");
    comes_near(&half, more_pointed, 1e-3, 10, "more pointed than a half circle");
}
END_TEST

/* No shoulder is tighter than its tube: so the tube is made thin with it. */
START_TEST(a_tight_shoulder_is_a_kink)
{
    double last = 0;
    for (double radius = 0.04; radius > 2e-3; radius /= 4) {
        curved kinked = plain_side(plain_frame(8, 1.2, 3.2)), bent = kinked;
        double off;
        kinked.frame.tube = bent.frame.tube = (tside_round){radius / 2, radius / 20};
        bent.frame.shoulder_radius_given = 1;
        bent.frame.shoulder_radius = radius;
        off = difference(kinked, bent);
        ck_assert(off > 0 && off < 10 * radius && (last == 0 || off < last / 3));
        last = off;
    }
}
END_TEST

static curved low_board(double height)
{
    curved c = plain_side(plain_frame(8, 0.8, 4));
    c.frame.board = TSIDE_BOARD_OUTSIDE;
    c.frame.board_top = height;
    c.frame.board_stand = 0;
    return c;
}

static curved close_board(double stand)
{
    curved c = curved_boarded(0);
    c.frame.board_stand = 0.03 + stand;
    return c;
}

static curved standing_board(double stand)
{
    curved c = plain_side(plain_frame(8, 0.5, 4));
    c.curtain.standoff = 0;
    c.frame.board = TSIDE_BOARD_OUTSIDE;
    c.frame.board_top = 0.4;
    c.frame.board_stand = stand;
    return c;
}

START_TEST(a_vanishing_board_is_none)
{
    curved none = plain_side(plain_frame(8, 0.8, 4)), flush = standing_board(0), bare = flush;
    bare.frame.board = TSIDE_NO_BOARD;
    ck_assert(difference(none, low_board(1e-6)) < 1e-12);
    ck_assert(difference(none, low_board(0.5)) < 1e-12); /* it does not stand out of a plumb leg */
    ck_assert(difference(flush, bare) < 1e-12);
    comes_near(&bare, standing_board, 1e-3, 10, "a board's stand");
    none = curved_boarded(0);
    none.frame.board = TSIDE_NO_BOARD;
    comes_near(&none, close_board, 1e-3, 10, "a board's stand beyond the fixing");
}
END_TEST

static curved leaning(double by)
{
    return plain_side(points_frame(4 + by, 4 + by / 2, 1.5, 4, 3));
}

static curved leaning_in(double by)
{
    return leaning(-by);
}

static curved bulging(double by)
{
    return plain_side(points_frame(4, 4 + by, 1.5, 4, 3));
}

static curved hollowed(double by)
{
    return bulging(-by);
}

START_TEST(a_nearly_plumb_wall_is_plumb)
{
    curved plumb = leaning(0), leg = plain_side(plain_frame(8, 3, 5));
    ck_assert(difference(plumb, leg) < 1e-12);
    comes_near(&plumb, leaning, 1e-4, 10, "a lean");
    comes_near(&plumb, leaning_in, 1e-4, 10, "a lean inward");
    comes_near(&plumb, bulging, 1e-4, 10, "a bulge");
    comes_near(&plumb, hollowed, 1e-4, 10, "a hollow");
}
END_TEST

static curved thick(double thickness)
{
    curved c = standing_board(0.06);
    c.curtain.thickness = c.roll.thickness = thickness;
    return c;
}

static curved thick_on_arc(double thickness)
{
    curved c = flatter(0.5);
    c.curtain.standoff = 0.1;
    c.curtain.thickness = c.roll.thickness = thickness;
    return c;
}

START_TEST(a_vanishing_thickness_is_none)
{
    curved board = thick(0), arc = thick_on_arc(0);
    comes_near(&board, thick, 1e-5, 1e4, "thickness");
    comes_near(&arc, thick_on_arc, 1e-5, 1e4, "thickness");
}
END_TEST

/* --- laws --- */

static void scale_lengths(curved *c, double k)
{
    tside_frame *f = &c->frame;
    double *lengths[] = {&f->tube.diameter, &f->tube.wall, &f->width, &f->leg_height, &f->peak_height, &f->shoulder_radius, &f->foot_x, &f->foot_height, &f->between_x,
                         &f->between_height, &f->peak_x, &f->board_top, &f->board_stand, &c->curtain.hip, &c->curtain.sill, &c->curtain.standoff, &c->curtain.rail_depth,
                         &c->curtain.thickness, &c->stops.seal, &c->stops.shut_height, &c->stops.gap, &c->stops.open_height, &c->roll.core, &c->roll.thickness, &c->hang.eye_x, &c->hang.eye_y,
                         &c->hang.offset, &c->hang.length, &c->hang.chain, &c->hang.carried_offset};
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
        *lengths[i] *= k;
}

/* Twice the cross-section: the same turns. A curtain of the same mass per area then weighs twice per metre; with bar, drive and guide twice as heavy, torque and work are fourfold. */
FOR_CURVED(lengths_scale)
{
    curved twice = *c;
    tside_fault fault;
    scale_lengths(&twice, 2);
    twice.load.bar_mass *= 2, twice.load.clip_mass *= 2, twice.load.end_mass *= 2, twice.load.rope_pressure *= 2;
    twice.hang.weight *= 2, twice.hang.carried *= 2;
    ANSWERS(tside_bow_make(&twice.frame, &twice.bow, &fault));
    ANSWERS(tside_line_make(&twice.bow, &twice.curtain, &twice.line, &fault));
    ANSWERS(tside_travel_make(&twice.line, &twice.curtain, &twice.roll, &twice.stops, &twice.travel, &fault));
    NEAR(tside_i_travel_turns(&twice.travel, twice.travel.end), c->open, 1e-8, "turns", c->number);
    for (int k = 0; k <= 3; k++) {
        double turns = (c->open - 1e-7) * k / 3, one, other;
        tside_position p, q;
        tside_torque t, u;
        ANSWERS(tside_travel_at(&c->travel, turns, &p, &fault));
        ANSWERS(tside_travel_at(&twice.travel, turns, &q, &fault));
        if (tipped_at(c, p.wraps) == LIES_SLACK)
            continue;
        NEAR(q.x, 2 * p.x, 1e-8, "axis", c->number);
        NEAR(q.y, 2 * p.y, 1e-8, "axis", c->number);
        NEAR(q.wraps, p.wraps, 1e-8, "wraps", c->number);
        if (!c->hung || guide_runs_away(c))
            continue;
        ANSWERS(tside_lift_at(&c->travel, &c->load, &c->hang, turns, &t, &fault));
        ANSWERS(tside_lift_at(&twice.travel, &twice.load, &twice.hang, turns, &u, &fault));
        NEAR(u.drive, 4 * t.drive, 1e-6 * fabs(u.drive), "torque", c->number);
        ANSWERS(tside_lift_work(&c->travel, &c->load, &c->hang, turns, &one, &fault));
        ANSWERS(tside_lift_work(&twice.travel, &twice.load, &twice.hang, turns, &other, &fault));
        NEAR(other, 4 * one, 1e-7 * fabs(other) + 1e-6, "work", c->number);
    }
}

/* A left-hand side is the right-hand one's mirror: no number changes. */
START_TEST(hands_are_mirrors)
{
    int planned = 0;
    for (int n = 0; n < SIDES; n += 41) {
        curved c;
        tside_side side;
        tside_plan right, left;
        tside_fault fault;
        if (curved_side(n, &c, NULL) != TSIDE_OK)
            continue;
        side = whole_side(&c);
        if (tside_plan_side(&side, &right, &fault) != TSIDE_OK)
            continue;
        side.hand = TSIDE_LEFT;
        ANSWERS(tside_plan_side(&side, &left, &fault));
        NEAR(left.drive_turns, right.drive_turns, 0, "turns", n);
        NEAR(left.open.x, right.open.x, 0, "axis", n);
        NEAR(left.worst.drive, right.worst.drive, 0, "torque", n);
        NEAR(left.drive_end.sweep.kick_out, right.drive_end.sweep.kick_out, 0, "kick", n);
        NEAR(left.drive_end.side_force, right.drive_end.side_force, 0, "side force", n);
        planned++;
    }
    ck_assert_int_gt(planned, 5);
}
END_TEST

/* --- anything at all --- */

static int all_finite(const double *v, int count)
{
    for (int i = 0; i < count; i++)
        if (!isfinite(v[i]))
            return 0;
    return 1;
}

/* Each is refused, or everything that comes of it is a number. */
START_TEST(wild_sides_give_numbers_or_refusals)
{
    int made = 0;
    for (int n = 0; n < 20 * SIDES; n++) {
        curved c;
        tside_position p;
        tside_torque t;
        tside_fault fault;
        if (curved_wild(n, &c, NULL) != TSIDE_OK)
            continue;
        made++;
        for (int k = 0; k <= 5; k++) {
            ANSWERS(tside_travel_at(&c.travel, c.open * k / 5, &p, &fault));
            ANSWERS(tside_lift_at(&c.travel, &c.load, NULL, c.open * k / 5, &t, &fault));
            if (!all_finite((const double *)(const void *)&p, sizeof p / sizeof(double)) || !all_finite((const double *)(const void *)&t, sizeof t / sizeof(double)))
                ck_abort_msg("wild side %d", n);
            NEAR(p.turns, c.open * k / 5, 1e-9, "turns", n);
        }
    }
    printf("%d wild sides of %d made\n", made, 20 * SIDES);
    ck_assert_int_gt(made, SIDES);
}
END_TEST

Suite *curve_suite(void)
{
    Suite *suite = suite_create("curve");
    TCase *tcase = tcase_create("curve");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, random_sides_are_refused_only_as_the_headers_say);
    tcase_add_test(tcase, line_is_the_hull);
    tcase_add_test(tcase, bar_is_where_a_roll_comes_to_rest);
    tcase_add_test(tcase, energy_is_that_of_all_pieces);
    tcase_add_test(tcase, work_is_the_gain_of_energy);
    tcase_add_test(tcase, extremes_are_the_greatest_of_dense_samples);
    tcase_add_test(tcase, axis_never_jumps);
    tcase_add_test(tcase, turns_and_heights_invert);
    tcase_add_test(tcase, corner_turns_the_bar_without_take_up);
    tcase_add_test(tcase, shut_may_lie_at_a_corner);
    tcase_add_test(tcase, corners_turn_by_what_the_line_turns);
    tcase_add_test(tcase, turn_table_goes_on_over_a_corner);
    tcase_add_test(tcase, board_tips_the_roll_from_its_radius_on);
    tcase_add_test(tcase, roll_tips_only_over_the_edge);
    tcase_add_test(tcase, tipping_radius_is_that_over_the_edge);
    tcase_add_test(tcase, nothing_jumps_across_the_half_circle);
    tcase_add_test(tcase, a_tight_shoulder_is_a_kink);
    tcase_add_test(tcase, a_vanishing_board_is_none);
    tcase_add_test(tcase, a_nearly_plumb_wall_is_plumb);
    tcase_add_test(tcase, a_vanishing_thickness_is_none);
    tcase_add_test(tcase, lengths_scale);
    tcase_add_test(tcase, hands_are_mirrors);
    tcase_add_test(tcase, wild_sides_give_numbers_or_refusals);
    suite_add_tcase(suite, tcase);
    return suite;
}
