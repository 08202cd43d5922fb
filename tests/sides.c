/* SPDX-License-Identifier: MIT */
#include "sides.h"

#include <check.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "rows.h"

/* --- chance --- */

/* Steele, Lea and Flood's SplitMix64, from memory. */
static uint64_t throw(dice * d)
{
    uint64_t z = (d->state += UINT64_C(0x9e3779b97f4a7c15));
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

double dice_between(dice *d, double low, double high)
{
    return low + (high - low) * (double)(throw(d) >> 11) / 9007199254740992.0;
}

int dice_below(dice *d, int limit)
{
    return (int)(throw(d) % (uint64_t)limit);
}

/* --- checking --- */

void check_near(const char *file, int line, double got, double want, double tolerance, const char *what, int number)
{
    if (differs(got, want, tolerance))
        ck_abort_msg("%s:%d: %s, number %d: got %.17g, want %.17g within %.3g, off by %.3g", file, line, what, number,
                     got, want, tolerance, got - want);
}

void check_answered(const char *file, int line, const tside_fault *fault)
{
    char sentence[512];
    tside_fault_text(fault, sentence, sizeof sentence);
    ck_abort_msg("%s:%d: refused: %s", file, line, sentence);
}

/* Whether the value that a fault names stands to its bound as it says; 0 stands for what is not finite, and for its
 * bound. */
static int stands_so(const tside_fault *fault)
{
    switch (fault->relation) {
    case TSIDE_BELOW: return fault->value < fault->bound;
    case TSIDE_NOT_ABOVE: return fault->value <= fault->bound;
    case TSIDE_ABOVE: return fault->value > fault->bound;
    case TSIDE_NOT_BELOW: return fault->value >= fault->bound;
    case TSIDE_NOT_FINITE: return fault->value == 0 && fault->bound == 0;
    case TSIDE_NONE_FITS:
    case TSIDE_NOT_ONE_OF:
    case TSIDE_NO_RELATION: return isfinite(fault->value);
    }
    return 0;
}

int gap_stands(const tside_fault *fault)
{
    static const char *const of_its_own[] = {
        "the shoulder would begin below the foot",
        "the guide's foot would come too near the ground",
        "the drive or collar would stand over the curtain's edge",
        "the roll would come too near the tube",
    };
    const double over = fault->value - fault->bound;
    const int from_below = fault->relation == TSIDE_BELOW || fault->relation == TSIDE_NOT_ABOVE;
    if (!(fault->gap < 0 || fault->gap > 0))
        return fault->gap == 0;
    for (int i = 0; i < (int)(sizeof of_its_own / sizeof *of_its_own); i++)
        if (!strcmp(fault->reason, of_its_own[i]))
            return isfinite(fault->gap);
    return !differs(fault->gap, from_below ? over : -over, 1e-9 * (1 + fabs(fault->value)));
}

void check_refused(const char *file, int line, tside_status got, const tside_fault *fault, tside_status status,
                   const char *field, tside_relation relation, const void *output, size_t size)
{
    const unsigned char *byte = output;
    if (got != status)
        ck_abort_msg("%s:%d: %s, not %s", file, line, tside_status_text((int)got), tside_status_text((int)status));
    if (fault->status != status || strcmp(fault->field, field) || fault->relation != relation)
        ck_abort_msg("%s:%d: the fault says %s, field %s, relation %d; not %s, %s, %d", file, line,
                     tside_status_text((int)fault->status), fault->field, (int)fault->relation,
                     tside_status_text((int)status), field, (int)relation);
    if (!stands_so(fault))
        ck_abort_msg("%s:%d: %s: %.17g does not stand to %.17g as relation %d says", file, line, fault->field,
                     fault->value, fault->bound, (int)fault->relation);
    if (!gap_stands(fault))
        ck_abort_msg("%s:%d: %s: %.17g lacks nothing like %.17g to %.17g", file, line, fault->field, fault->value,
                     fault->gap, fault->bound);
    if (!heard_range(fault))
        ck_abort_msg("%s:%d: %s is bounded by %.17g, relation %d, and its function's comment says otherwise", file,
                     line, fault->field, fault->bound, (int)fault->relation);
    for (size_t i = 0; i < size; i++)
        if (byte[i] != 0xa5)
            ck_abort_msg("%s:%d: refused, and touched its output", file, line);
}

/* --- the model apart --- */

static double effective(const side *s)
{
    return s->roll.packing * s->roll.thickness;
}

static double wound(const side *s, double wraps)
{
    return PI * wraps * (s->roll.core + effective(s) * wraps);
}

/*
 * The fixing stands a gap h off the wall. A chord s at an angle c to the wall puts the axis of a roll r at h - s sin c
 * + r cos c off it, which is r where the roll bears: s sin c - r cos c = h - r, hence c = atan2(r, s) + asin((h -
 * r)/hypot(r, s)). Where that takes the chord past plumb, or nothing bears, it hangs plumb.
 */
static double bearing_slope(const side *s, double chord, double radius)
{
    double reach = (s->gap - radius) / hypot(radius, chord);
    return s->slope - atan2(radius, chord) - asin(fmax(-1, fmin(1, reach)));
}

static place put(const side *s, double wraps, double radius, double chord, double slope)
{
    place p = {wraps,
               radius,
               chord,
               slope,
               s->fixing_x + chord * sin(slope) + radius * cos(slope),
               s->fixing_y - chord * cos(slope) + radius * sin(slope),
               wraps - s->shut + (slope - s->slope_shut) / (2 * PI)};
    return p;
}

place side_place_as(const side *s, int how, double wraps)
{
    double radius = s->roll.core / 2 + effective(s) * wraps, chord = s->hanging - (wound(s, wraps) - wound(s, s->shut));
    return put(s, wraps, radius, chord, how == BEARS ? bearing_slope(s, chord, radius) : 0);
}

place side_place(const side *s, double wraps)
{
    place p = side_place_as(s, BEARS, wraps);
    return s->slope > 0 && p.slope > 0 ? p : side_place_as(s, HANGS, wraps);
}

int side_parts(const side *s)
{
    return s->corner > s->shut && s->corner < s->open ? 2 : 1;
}

int side_part(const side *s, int k, double *from, double *to)
{
    int parts = side_parts(s);
    *from = k == 0 ? s->shut : s->corner;
    *to = k == parts - 1 ? s->open : s->corner;
    return s->slope > 0 && s->corner > s->shut && k == 0 ? BEARS : HANGS;
}

/* Where a rising function of the wraps passes 0, by halving; the end nearer to it where it does not. */
static double halve(double (*function)(const side *s, double wraps), const side *s, double low, double high)
{
    if (function(s, low) >= 0)
        return low;
    for (int i = 0; i < 200 && low < high; i++) {
        double middle = (low + high) / 2;
        if (middle == low || middle == high)
            break;
        if (function(s, middle) < 0)
            low = middle;
        else
            high = middle;
    }
    return high;
}

static double above_top(const side *s, double wraps)
{
    place p = side_place(s, wraps);
    if (s->stops.open_by == TSIDE_OPEN_GAP)
        return p.y + p.radius - (s->fixing_y - s->curtain.rail_depth - s->stops.gap);
    return p.y - p.radius - s->stops.open_height;
}

static double off_the_wall(const side *s, double wraps)
{
    return -side_place_as(s, BEARS, wraps).slope;
}

double side_wraps(const side *s, double turns)
{
    double low = s->shut, high = s->open;
    for (int i = 0; i < 100; i++) {
        double middle = (low + high) / 2;
        if (side_place(s, middle).turns < turns)
            low = middle;
        else
            high = middle;
    }
    return (low + high) / 2;
}

/* Shut, open and corner, from the heights asked, by halving. */
static void find_travel(side *s)
{
    double shut = s->stops.shut_by == TSIDE_SHUT_SEAL ? s->curtain.sill - s->stops.seal : s->stops.shut_height;
    double radius = s->roll.core / 2 + effective(s) * s->stops.wraps_shut, low = 0, high = 100, all, most;
    s->shut = s->stops.wraps_shut;
    s->slope_shut = 0;
    for (int i = 0; i < 200; i++) {
        double chord = (low + high) / 2, slope = s->slope > 0 ? fmax(0, bearing_slope(s, chord, radius)) : 0;
        if (s->fixing_y - chord * cos(slope) + radius * sin(slope) - radius > shut)
            low = chord;
        else
            high = chord;
    }
    s->hanging = (low + high) / 2;
    s->slope_shut = side_place(s, s->shut).slope;
    all = s->hanging + wound(s, s->shut);
    most = effective(s) > 0
               ? (sqrt(s->roll.core * s->roll.core + 4 * effective(s) * all / PI) - s->roll.core) / (2 * effective(s))
               : all / (PI * s->roll.core);
    s->open = halve(above_top, s, s->shut, most);
    s->corner = s->slope > 0 ? halve(off_the_wall, s, s->shut, s->open) : s->shut;
}

double side_lean(const side *s, const place *p, double moved)
{
    double out = p->x - s->eye_x - moved, down = s->eye_y - p->y;
    return atan2(out, down) + asin(s->collar.offset / hypot(out, down));
}

enum { PIECES = 24 };

/* Metre-kilograms above grade of a straight strip of even mass, piece by piece. */
static double strip(double mass, double top, double bottom)
{
    double sum = 0;
    for (int i = 0; i < PIECES; i++)
        sum += mass / PIECES * (top + (bottom - top) * (i + 0.5) / PIECES);
    return sum;
}

double side_energy(const side *s, const place *p, int guide)
{
    const tside_load *load = &s->load;
    double sheet = (load->areal_mass + load->wet) * load->length, lean = guide ? side_lean(s, p, 0) : 0, steel;
    double rolled = sheet * wound(s, p->wraps) + (load->bar_mass + load->clip_mass) * load->length + load->end_mass;
    double sum = strip(sheet * p->chord, s->fixing_y, s->fixing_y - p->chord * cos(p->slope)) + rolled * p->y;
    if (guide) {
        /* steel, 7850 kg/m3: EN 10219-2 */
        steel = 7850 * PI * s->guide.tube.wall * (s->guide.tube.diameter - s->guide.tube.wall) *
                (s->hang.length - s->hang.chain);
        sum += strip(steel, s->eye_y - s->hang.chain * cos(lean), s->eye_y - s->hang.length * cos(lean)) +
               s->collar.mass * s->collar.mass_offset * lean;
    }
    return GRAVITY * sum;
}

/* Differences over five points: their error goes with the fourth power of the step. */
#define STEP 2e-3
#define SLOPE(value) ((8 * (value[3] - value[1]) - (value[4] - value[0])) / (12 * STEP))

double side_lift(const side *s, int how, double wraps)
{
    double energy[5], angle[5];
    for (int i = 0; i < 5; i++) {
        place p = side_place_as(s, how, wraps + (i - 2) * STEP);
        energy[i] = side_energy(s, &p, 0);
        angle[i] = 2 * PI * p.turns;
    }
    return SLOPE(energy) / SLOPE(angle);
}

double side_lean_rate(const side *s, int how, double wraps)
{
    double lean[5], angle[5];
    for (int i = 0; i < 5; i++) {
        place p = side_place_as(s, how, wraps + (i - 2) * STEP);
        lean[i] = side_lean(s, &p, 0);
        angle[i] = 2 * PI * p.turns;
    }
    return SLOPE(lean) / SLOPE(angle);
}

/*
 * Virtual work while the drive turns by d(angle) - d(lean): it lifts, and it raises guide and drive's own mass about
 * the bar.
 */
double side_drive(const side *s, int how, double wraps)
{
    const tside_load *load = &s->load;
    place p = side_place_as(s, how, wraps);
    double lift = side_lift(s, how, wraps), rate = side_lean_rate(s, how, wraps), lean = side_lean(s, &p, 0);
    double weight = s->hang.weight * (s->hang.chain + s->hang.length) / 2 * sin(lean) +
                    GRAVITY * s->collar.mass * s->collar.mass_offset;
    double up = lift + load->friction * fabs(lift) +
                2 * load->rope_friction * load->rope_pressure * p.radius * load->length;
    return (up + weight * rate) / (1 - rate);
}

/* --- sides --- */

/* The fixing and the wall, from what was measured. */
static void find_wall(side *s)
{
    const tside_frame *f = &s->frame;
    double half = f->measured == TSIDE_CENTRELINE ? f->tube.diameter / 2 : 0, slope = 0, face = f->width / 2 + half;
    if (f->shape == TSIDE_THREE_POINTS) {
        double run = f->foot_x - f->peak_x, rise = f->peak_height - f->foot_height;
        slope = atan2(run, rise);
        face = f->foot_x - (s->curtain.hip - f->foot_height) * run / rise + half / cos(slope);
    }
    s->slope = fmax(0, slope);
    s->fixing_x = face + s->curtain.standoff;
    s->fixing_y = s->curtain.hip;
    s->gap = s->slope > 0 ? s->curtain.standoff * cos(slope) : 0;
}

tside_status side_travel(side *s, tside_fault *fault)
{
    tside_status status = tside_bow_make(&s->frame, &s->bow, fault);
    if (status == TSIDE_OK)
        status = tside_line_make(&s->bow, &s->curtain, &s->line, fault);
    if (status == TSIDE_OK)
        status = tside_travel_make(&s->line, &s->curtain, &s->roll, &s->stops, &s->travel, fault);
    return status;
}

void side_make(side *s)
{
    tside_fault fault;
    ANSWERS(side_travel(s, &fault));
    find_wall(s);
    find_travel(s);
    if (s->eye == HIP_EYE) {
        s->eye_x = s->fixing_x;
        s->eye_y = s->fixing_y;
    } else if (s->eye == BEST_EYE)
        ANSWERS(tside_eye_best(&s->travel, s->eye_y, s->collar.offset, &s->eye_x, &fault));
    ANSWERS(tside_hang_make(&s->travel, &s->guide, &s->collar, s->eye_x, s->eye_y, 0, &s->hang, NULL, &fault));
}

static side usual(void)
{
    side s;
    memset(&s, 0, sizeof s);
    tside_usual(TSIDE_KIND_FRAME, &s.frame);
    tside_usual(TSIDE_KIND_CURTAIN, &s.curtain);
    tside_usual(TSIDE_KIND_ROLL, &s.roll);
    tside_usual(TSIDE_KIND_STOPS, &s.stops);
    tside_usual(TSIDE_KIND_GUIDE, &s.guide);
    tside_usual(TSIDE_KIND_COLLAR, &s.collar);
    tside_usual(TSIDE_KIND_LOAD, &s.load);
    s.frame.tube = (tside_round){0.0603, 0.0021};
    s.guide.tube = (tside_round){0.0334, 0.0017};
    s.roll.core = 0.044;
    s.load.length = 30;
    s.load.bar_mass = 2;
    s.load.end_mass = 10;
    return s;
}

side side_plain(void)
{
    side s = usual();
    s.wall = PLUMB_WALL;
    s.eye = BEST_EYE;
    s.frame.width = 9;
    s.frame.leg_height = 2.2;
    s.frame.peak_height = 4.4;
    s.curtain.hip = 2;
    s.curtain.sill = 0.4;
    s.curtain.standoff = 0.03;
    s.collar = (tside_collar){.offset = 0.1, .height = 0.1, .mass = 8, .mass_offset = 0.075};
    s.eye_y = s.curtain.hip + 0.3;
    side_make(&s);
    return s;
}

/*
 * A straight bow that leans outboard going down by an angle from plumb, through a face about half a width out at the
 * hip.
 */
static void lean_bow(tside_frame *f, double slope, double half_width, double hip, double share)
{
    f->shape = TSIDE_THREE_POINTS;
    f->peak_height = hip + 0.6;
    f->peak_x = half_width - 0.6 * tan(slope);
    f->foot_x = half_width + hip * tan(slope);
    f->foot_height = 0;
    f->between_height = share * f->peak_height;
    f->between_x = f->foot_x + share * (f->peak_x - f->foot_x);
}

static void random_wall(side *s, dice *d)
{
    double hip = s->curtain.hip, half = dice_between(d, 2, 6), slope;
    s->frame.measured = dice_below(d, 2) ? TSIDE_OUTSIDE : TSIDE_CENTRELINE;
    s->frame.tube = (tside_round){dice_between(d, 0.03, 0.06), 0.002};
    s->curtain.standoff = s->wall == TIGHT_WALL ? 0 : dice_between(d, 0.02, 0.06);
    if (s->wall == PLUMB_WALL) {
        s->frame.width = 2 * half;
        s->frame.leg_height = hip + dice_between(d, 0.05, 0.8);
        s->frame.peak_height = s->frame.leg_height + half * dice_between(d, 0.3, 1.5);
        return;
    }
    slope = dice_between(d, 0.02, 0.35);
    if (s->wall == INWARD_WALL)
        slope = -slope / 2;
    if (s->wall == CORNER_WALL) /* the roll leaves the wall about where a chord s has s sin(slope) = gap */
        slope = asin(s->curtain.standoff / dice_between(d, 0.35, 0.65) / hip);
    lean_bow(&s->frame, slope, half, hip, dice_between(d, 0.2, 0.8));
}

static void random_roll(side *s, dice *d)
{
    int quilt = dice_below(d, 3) == 0;
    s->roll.core = dice_between(d, 0.03, 0.08);
    s->roll.thickness = quilt ? dice_between(d, 3e-3, 15e-3) : dice_between(d, 0, 0.3e-3);
    s->roll.packing = quilt ? dice_between(d, 0.6, 0.9) : dice_between(d, 1, 1.3);
    s->load.areal_mass = quilt ? dice_between(d, 0.3, 2) : dice_between(d, 0.1, 0.25);
    s->load.wet = dice_between(d, 0, 0.1);
    s->load.length = dice_between(d, 5, 60);
    s->load.bar_mass = dice_between(d, 1, 4);
    s->load.clip_mass = dice_between(d, 0, 0.2);
    s->load.friction = dice_between(d, 0, 0.4);
    s->load.rope_pressure = dice_below(d, 2) ? dice_between(d, 0, 10) : 0;
    s->load.rope_friction = dice_between(d, 0.1, 0.4);
}

static void random_hang(side *s, dice *d)
{
    s->collar.mass = dice_between(d, 0.5, 12);
    s->collar.mass_offset = dice_between(d, 0, 0.1);
    s->collar.offset = dice_below(d, 4) ? dice_between(d, 0, 0.12) : 0;
    s->collar.height = dice_between(d, 0, 0.08);
    s->load.end_mass = s->collar.mass + dice_between(d, 0, 3);
    s->guide.chain = dice_below(d, 3) ? dice_between(d, 0, 0.08) : 0;
    s->guide.margin = dice_between(d, 0, 0.08);
    s->guide.ground_clearance = dice_between(d, 0, 0.02);
    s->guide.eye_clearance = dice_between(d, 0, 0.03);
    s->guide.placing_error = dice_between(d, 0, 0.04);
    s->guide.tube = (tside_round){dice_between(d, 0.025, 0.045), dice_between(d, 0.001, 0.003)};
    s->eye_y = s->curtain.hip + dice_between(d, 0.15, 0.5);
    s->stops.gap = s->eye == HIP_EYE ? dice_between(d, 0.14, 0.3) : dice_between(d, 0, 0.15);
    s->curtain.rail_depth = dice_between(d, 0, 0.04);
}

/* Numbers far apart give throws that have nothing to do with each other. */
side side_random(int number)
{
    side s = usual();
    dice d = {(uint64_t)number * UINT64_C(0xd1342543de82ef95)};
    s.number = number;
    s.wall = (wall)(number % WALLS);
    s.eye = (eye)(number / WALLS % EYES);
    s.curtain.hip = dice_between(&d, 1.2, 3.2);
    s.curtain.sill = dice_between(&d, 0.45, 0.6);
    s.stops.seal = dice_between(&d, 0.05, 0.12);
    s.stops.wraps_shut = dice_between(&d, 0, 2);
    random_wall(&s, &d);
    random_roll(&s, &d);
    random_hang(&s, &d);
    if (dice_below(&d, 2)) {
        s.stops.shut_by = TSIDE_SHUT_HEIGHT;
        s.stops.shut_height = s.curtain.sill - s.stops.seal;
    }
    if (dice_below(&d, 2)) {
        double most = s.roll.core + 2 * effective(&s) * (s.stops.wraps_shut + s.curtain.hip / (PI * s.roll.core));
        s.stops.open_by = TSIDE_OPEN_HEIGHT;
        s.stops.open_height = s.curtain.hip - s.curtain.rail_depth - s.stops.gap - most;
        if (s.stops.open_height < s.curtain.sill)
            s.stops.open_height = s.curtain.sill;
    }
    find_wall(&s);
    s.eye_x = s.fixing_x + dice_between(&d, -0.1, 0.4);
    side_make(&s);
    return s;
}

static void scale(double factor, double **lengths, int count)
{
    for (int i = 0; i < count; i++)
        *lengths[i] *= factor;
}

side side_scaled(const side *s, double factor)
{
    side t = *s;
    double *lengths[] = {&t.frame.tube.diameter,
                         &t.frame.tube.wall,
                         &t.frame.width,
                         &t.frame.leg_height,
                         &t.frame.peak_height,
                         &t.frame.foot_x,
                         &t.frame.foot_height,
                         &t.frame.between_x,
                         &t.frame.between_height,
                         &t.frame.peak_x,
                         &t.curtain.hip,
                         &t.curtain.sill,
                         &t.curtain.standoff,
                         &t.curtain.rail_depth,
                         &t.roll.core,
                         &t.roll.thickness,
                         &t.stops.seal,
                         &t.stops.shut_height,
                         &t.stops.gap,
                         &t.stops.open_height,
                         &t.guide.tube.diameter,
                         &t.guide.tube.wall,
                         &t.guide.chain,
                         &t.guide.margin,
                         &t.guide.ground_clearance,
                         &t.guide.eye_clearance,
                         &t.guide.placing_error,
                         &t.collar.offset,
                         &t.collar.height,
                         &t.collar.mass_offset,
                         &t.eye_x,
                         &t.eye_y};
    scale(factor, lengths, sizeof lengths / sizeof *lengths);
    return t;
}

side side_moved(const side *s, double outboard, double up)
{
    side t = *s;
    t.frame.width += 2 * outboard;
    t.frame.leg_height += up;
    t.frame.peak_height += up;
    t.frame.foot_x += outboard;
    t.frame.foot_height += up;
    t.frame.between_x += outboard;
    t.frame.between_height += up;
    t.frame.peak_x += outboard;
    t.curtain.hip += up;
    t.curtain.sill += up;
    t.stops.shut_height += up;
    t.stops.open_height += up;
    t.eye_x += outboard;
    t.eye_y += up;
    return t;
}
