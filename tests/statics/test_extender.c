/* SPDX-License-Identifier: MIT */
/* The extender against plane geometry done over again in the tests, its best angle against a scan of all angles, its clearance against dense sampling. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "sides.h"

Suite *extender_suite(void);

enum { SIDES = 120, ANGLES = 20000, SAMPLES = 2000 };

#define DEGREES (PI / 180)

/* --- the bow, apart from the library --- */

/* How far outboard the centreline stands at a height, and how fast that changes with height. */
static double bow_x(const side *s, double y, double *rate)
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
static int beyond_top(const side *s, double y)
{
    return s->frame.shape == TSIDE_THREE_POINTS && s->frame.measured == TSIDE_CENTRELINE && y > s->frame.peak_height + 1e-9;
}

/*
 * How far the tube runs from the eye to the bow; infinite if it misses. A bow bulges outboard, so that how far the tube is outboard of it is a function that bends
 * upward along the tube, on which Newton's steps from the eye stop short of the first crossing until they have it.
 */
static double reach_bow(const side *s, double angle)
{
    double t = 0;
    for (int i = 0; i < 60; i++) {
        double rate, off = s->eye_x - t * sin(angle) - bow_x(s, s->eye_y - t * cos(angle), &rate), closing = sin(angle) - rate * cos(angle);
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

/* --- sides with an extender --- */

typedef struct fitted {
    side s;
    tside_extender e;
} fitted;

/* Bounds so wide that none binds. */
static tside_extender roomy(const side *s)
{
    tside_extender e;
    memset(&e, 0, sizeof e);
    tside_usual(TSIDE_KIND_EXTENDER, &e);
    e.tube = (tside_square){0.0508, 0.003, TSIDE_CORNER_STANDARD, 0, 0};
    e.member_height = s->curtain.hip - 0.7;
    e.member_inner = -20;
    e.member_outer = 30;
    e.spacing = 0.2;
    e.stock = 20;
    e.bar_clearance = 0;
    return e;
}

static fitted random_fitted(int number)
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

static tside_status lay_out(const fitted *f, tside_layout *layout, tside_fault *fault)
{
    return tside_extender_layout(&f->e, &f->s.bow, f->s.curtain.hip, f->s.eye_x, f->s.eye_y, &f->s.travel, layout, fault);
}

static tside_layout layout_of(const fitted *f)
{
    tside_layout layout;
    tside_fault fault;
    ANSWERS(lay_out(f, &layout, &fault));
    return layout;
}

/* --- plane geometry --- */

/* Length of the bow between two heights, as a string of short chords, none of which cuts the corner at the leg's top. */
static double along_bow(const side *s, double from, double to)
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
static double to_bow(const side *s, double x, double y)
{
    double least = HUGE_VAL, rate;
    for (int i = -2000; i <= 2001; i++) {
        double at = i == 2001 ? s->frame.leg_height : y + i * 5e-5; /* the corner at the leg's top is one of them */
        least = fmin(least, hypot(x - bow_x(s, at, &rate), y - at));
    }
    return least;
}

static void check_geometry(const fitted *f, const tside_layout *l, int number)
{
    const side *s = &f->s;
    double d = s->frame.tube.diameter, sine = sin(l->angle), cosine = cos(l->angle), rate, face = s->fixing_x - s->curtain.standoff;
    /* both holes lie on the tube's centreline from the eye, one on the bow's centreline, one at the member's height */
    NEAR(l->bow_x, bow_x(s, l->bow_height, &rate), 1e-11, "bow's hole on the bow", number);
    NEAR((s->eye_x - l->bow_x) * cosine - (s->eye_y - l->bow_height) * sine, 0, 1e-12, "bow's hole on the tube", number);
    NEAR((s->eye_x - l->member_x) * cosine - (s->eye_y - f->e.member_height) * sine, 0, 1e-12, "member's hole on the tube", number);
    NEAR(l->bow_distance, hypot(s->eye_x - l->bow_x, s->eye_y - l->bow_height), 1e-12, "eye to bow", number);
    NEAR(l->bow_distance, reach_bow(s, l->angle), 1e-11, "first crossing", number);
    NEAR(l->member_distance, hypot(s->eye_x - l->member_x, s->eye_y - f->e.member_height), 1e-12, "check diagonal", number);
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
    /* where the tube meets the outer face is half the bow's diameter off its centreline; an eye may hang inside that beside a bow that overhangs, and a tube pass over its top end */
    if (to_bow(s, s->eye_x, s->eye_y) > d / 2 && !beyond_top(s, l->bow_height + d)) {
        NEAR(to_bow(s, s->eye_x - l->overhang * sine, s->eye_y - l->overhang * cosine), d / 2, 1e-7, "face", number);
        ck_assert(l->overhang < l->bow_distance);
    }
}

FOR_SIDES(a_given_angle_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout;
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = (42 + number % 40) * DEGREES; /* beyond 75 degrees too, which binds the search alone */
    layout = layout_of(&f);
    NEAR(layout.angle, f.e.angle, 0, "angle", number);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    check_geometry(&f, &layout, number);
}

FOR_SIDES(a_given_crossing_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout;
    double rate;
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = f.s.curtain.hip + 0.2 - 0.002 * (number % 50);
    f.e.member_height = f.e.crossing - 0.4;
    layout = layout_of(&f);
    NEAR(layout.bow_height, f.e.crossing, 1e-12, "crossing", number);
    NEAR(layout.bow_x, bow_x(&f.s, f.e.crossing, &rate), 1e-12, "crossing", number);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    check_geometry(&f, &layout, number);
}

FOR_SIDES(the_best_angle_is_laid_out, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout = layout_of(&f);
    check_geometry(&f, &layout, number);
}

/* --- the best angle --- */

/*
 * derivation: from an eye at a level distance c from a plumb leg, sB = c/sin a and sG = drop/cos a, so that sB^2 sG is least where sin^2 a cos a is greatest:
 * 2 sin a cos^2 a = sin^3 a, tan a = sqrt(2), where sin^2 a cos a = 2/(3 sqrt(3)).
 */
START_TEST(on_a_plumb_leg_it_is_the_arctangent_of_root_two)
{
    fitted f;
    tside_layout layout;
    double c, drop;
    f.s = side_plain();
    f.e = roomy(&f.s);
    layout = layout_of(&f);
    c = f.s.eye_x - (4.5 - f.s.frame.tube.diameter / 2);
    drop = f.s.eye_y - f.e.member_height;
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_NOTHING);
    ck_assert(layout.bow_height < f.s.frame.leg_height);
    NEAR(layout.angle, atan(sqrt(2)), 1e-7, "angle", 0); /* the valley is flat to the square root of the precision */
    NEAR(layout.bow_distance * layout.bow_distance * layout.member_distance, c * c * drop * 1.5 * sqrt(3), 1e-13, "flexibility", 0);
}
END_TEST

/* Which of the bounds an angle keeps to, in the order in which a refusal names them. */
enum { KEEPS_BOW, KEEPS_MEMBER, KEEPS_SPACING, KEEPS_STOCK, KEEPS_OUTER, KEEPS_INNER, KEEPS };

static int first_broken(const fitted *f, double angle, double slack, double *flexibility)
{
    double sB = reach_bow(&f->s, angle), drop = f->s.eye_y - f->e.member_height, sG = drop / cos(angle), x = f->s.eye_x - drop * tan(angle);
    *flexibility = sB * sB * sG;
    return sB > 1000 ? KEEPS_BOW
         : sG - sB <= 0 ? KEEPS_MEMBER
         : sG - sB < f->e.spacing - slack ? KEEPS_SPACING
         : f->e.end_distance + sG + f->e.tail > f->e.stock + slack ? KEEPS_STOCK
         : x > f->e.member_outer + slack ? KEEPS_OUTER
         : x < f->e.member_inner - slack ? KEEPS_INNER
         : KEEPS;
}

typedef struct scan {
    double flexibility; /* the least of any angle that keeps to all bounds */
    int fit;            /* how many angles do */
    int named;          /* the first bound that no angle keeps to together with those before it; KEEPS if there is none */
} scan;

static scan scan_angles(const fitted *f)
{
    int broken[KEEPS + 1] = {0}, keep;
    scan found = {HUGE_VAL, 0, 0};
    for (int i = 0; i <= ANGLES; i++) {
        double flexibility;
        int first = first_broken(f, (0.1 + 74.9 * i / ANGLES) * DEGREES, 0, &flexibility);
        broken[first]++;
        if (first == KEEPS && flexibility < found.flexibility)
            found.flexibility = flexibility;
    }
    keep = ANGLES + 1;
    while (found.named < KEEPS && (keep -= broken[found.named]) > 0)
        found.named++;
    found.fit = broken[KEEPS];
    return found;
}

static const char *const names[KEEPS] = {"extender.angle", "extender.member_height", "extender.spacing", "extender.stock", "extender.member_outer", "extender.member_inner"};

/* The best of a side with random bounds is as good as the scan's, keeps to the bounds, and stands against the one that it says binds. */
static void check_best(const fitted *f, const tside_layout *l, const scan *found, int number)
{
    double sG = l->member_distance, apart = sG - l->bow_distance, value, other;
    ck_assert_msg(first_broken(f, l->angle, 1e-9, &value) == KEEPS, "side %d breaks %s", number, names[first_broken(f, l->angle, 1e-9, &other)]);
    ck_assert_msg(value <= found->flexibility * (1 + 1e-9), "side %d: the scan found %.12g, which is stiffer than %.12g", number, found->flexibility, value);
    switch (l->binding) {
    case TSIDE_BINDS_NOTHING:
        ck_assert(first_broken(f, l->angle - 1e-3, 0, &other) == KEEPS && other > value);
        ck_assert(first_broken(f, l->angle + 1e-3, 0, &other) == KEEPS && other > value);
        break;
    case TSIDE_BINDS_SPACING:
        NEAR(apart, f->e.spacing, 1e-9, "bolts apart", number);
        break;
    case TSIDE_BINDS_STOCK:
        NEAR(l->cut_length, f->e.stock, 1e-9, "cut length", number);
        break;
    case TSIDE_BINDS_ENDS:
        NEAR(fmin(fabs(l->member_x - f->e.member_outer), fabs(l->member_x - f->e.member_inner)), 0, 1e-9, "crossing at the member's end", number);
        break;
    case TSIDE_BINDS_ANGLE:
        NEAR(l->angle, 75 * DEGREES, 1e-9, "angle", number);
        break;
    case TSIDE_BINDS_BOW:
        NEAR(l->bow_height, f->s.frame.peak_height, 1e-9, "crossing at the bow's top", number);
        break;
    case TSIDE_BINDS_MEMBER:
        ck_abort_msg("side %d: it cannot bind, as the spacing does before", number);
    }
}

/* A straight wall, most often leaning out, that ends so little above the hip that the eye looks over its top: a flat tube misses the bow. */
FOR_SIDES(best_angle_never_looks_over_the_bow, 900)
{
    static int laid_out, refused, bow_binds;
    fitted f;
    tside_layout layout;
    tside_fault fault;
    dice d = {(uint64_t)number + 2000};
    tside_frame *frame = &f.s.frame;
    scan found;
    double share;
    f.s = side_random(number);
    if (frame->shape != TSIDE_THREE_POINTS)
        return;
    f.s.eye = BEST_EYE;
    f.s.eye_y = f.s.curtain.hip + dice_between(&d, 0.35, 0.5);
    frame->measured = TSIDE_CENTRELINE;
    share = (f.s.curtain.hip + dice_between(&d, 0.06, 0.3) - frame->foot_height) / (frame->peak_height - frame->foot_height);
    frame->peak_x = frame->foot_x + share * (frame->peak_x - frame->foot_x);
    frame->peak_height = frame->foot_height + share * (frame->peak_height - frame->foot_height);
    frame->between_x = (frame->foot_x + frame->peak_x) / 2;
    frame->between_height = (frame->foot_height + frame->peak_height) / 2;
    side_make(&f.s);
    f.e = roomy(&f.s);
    f.e.spacing = dice_between(&d, 0.05, 0.5);
    f.e.member_height = f.s.eye_y - dice_between(&d, 0.3, 1.2);
    f.e.member_outer = f.s.eye_x - dice_between(&d, -0.2, 1.2);
    found = scan_angles(&f);
    if (lay_out(&f, &layout, &fault) == TSIDE_OK) {
        check_geometry(&f, &layout, number);
        check_best(&f, &layout, &found, number);
        laid_out++;
        bow_binds += layout.binding == TSIDE_BINDS_BOW;
    } else if (strcmp(fault.field, "extender.bar_clearance")) {
        ck_assert_msg(found.fit == 0, "side %d: refused for %s, and %d angles fit", number, fault.field, found.fit);
        refused++;
    }
    if (number >= 895) {
        ck_assert_int_gt(laid_out, 50);
        ck_assert_int_gt(refused, 50);
        ck_assert_int_gt(bow_binds, 10);
    }
}

static void set_bound(tside_extender *e, int which, double bound)
{
    double *const field[KEEPS] = {NULL, &e->member_height, &e->spacing, &e->stock, &e->member_outer, &e->member_inner};
    *field[which] = bound;
}

static int was_named(const tside_fault *fault)
{
    for (int k = 0; k < KEEPS; k++)
        if (!strcmp(fault->field, names[k]))
            return k;
    return -1;
}

FOR_SIDES(best_angle_is_what_a_scan_of_all_finds, 400)
{
    static int binding[8], refused[KEEPS];
    fitted f = random_fitted(number);
    tside_layout layout;
    tside_fault fault;
    dice d = {(uint64_t)number + 1000};
    scan found;
    double bound;
    f.e.spacing = dice_between(&d, 0.1, 0.9);
    f.e.stock = dice_between(&d, 0.6, 2.5);
    f.e.member_outer = f.s.eye_x - dice_between(&d, -0.5, 2);
    f.e.member_inner = f.e.member_outer - dice_between(&d, 0.1, 2);
    f.e.member_height = f.s.eye_y - dice_between(&d, 0.05, 1.5);
    found = scan_angles(&f);
    memset(&layout, 0xa5, sizeof layout);
    if (lay_out(&f, &layout, &fault) == TSIDE_OK) {
        check_best(&f, &layout, &found, number);
        binding[layout.binding]++;
    } else if (!strcmp(fault.field, "extender.bar_clearance")) {
        ck_assert_int_gt(found.fit, 0);
    } else {
        int k = was_named(&fault);
        ck_assert_int_eq((int)fault.status, TSIDE_OUT_OF_REACH);
        ck_assert_msg(found.fit == 0, "side %d: refused for %s, and %d angles fit", number, fault.field, found.fit);
        ck_assert_msg(k == found.named, "side %d: %s named, not %s", number, fault.field, names[found.named]);
        ck_assert(k >= KEEPS_MEMBER);
        refused[k]++;
        /* a little short of its bound it is refused again; with the bound in place a later one may be broken, but not this one */
        bound = fault.bound;
        set_bound(&f.e, k, bound + (k == KEEPS_STOCK || k == KEEPS_OUTER ? -1e-6 : 1e-6));
        ck_assert(lay_out(&f, &layout, &fault) == TSIDE_OUT_OF_REACH && was_named(&fault) == k);
        set_bound(&f.e, k, bound + (k == KEEPS_MEMBER ? -1e-9 : 0));
        if (lay_out(&f, &layout, &fault) != TSIDE_OK)
            ck_assert_msg(was_named(&fault) > k || was_named(&fault) < 0, "side %d: %s refused again at its own bound", number, fault.field);
    }
    if (number == 399) {
        for (int k = KEEPS_MEMBER; k < KEEPS; k++)
            ck_assert_msg(refused[k] > 0, "nothing was refused for %s", names[k]);
        ck_assert_int_gt(binding[TSIDE_BINDS_NOTHING], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_SPACING], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_STOCK], 10);
        ck_assert_int_gt(binding[TSIDE_BINDS_ENDS], 10);
    }
}

/* Only beside a bow that overhangs by half a right angle or so is a tube flatter than 75 degrees stiffest. */
START_TEST(no_search_goes_beyond_75_degrees)
{
    fitted f;
    tside_layout layout;
    scan found;
    f.s = side_plain();
    f.s.frame.shape = TSIDE_THREE_POINTS;
    f.s.frame.peak_height = 3;
    f.s.frame.peak_x = 5;
    f.s.frame.foot_x = 1;
    f.s.frame.between_x = 3;
    f.s.frame.between_height = 1.5;
    f.s.eye = OFFSET_EYE;
    f.s.eye_x = 4.3;
    side_make(&f.s);
    f.e = roomy(&f.s);
    found = scan_angles(&f);
    layout = layout_of(&f);
    ck_assert_int_eq((int)layout.binding, TSIDE_BINDS_ANGLE);
    check_best(&f, &layout, &found, 0);
    check_geometry(&f, &layout, 0);
}
END_TEST

/* Bounds put a little inside the best angle of all bind, each by its own name. */
START_TEST(each_bound_binds_by_its_name)
{
    fitted f;
    tside_layout free, bound;
    f.s = side_plain();
    f.e = roomy(&f.s);
    free = layout_of(&f);
    f.e.spacing = free.member_distance - free.bow_distance + 0.02;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_SPACING);
    NEAR(bound.member_distance - bound.bow_distance, f.e.spacing, 1e-12, "bolts apart", 0);
    ck_assert(bound.angle > free.angle);
    f.e = roomy(&f.s);
    f.e.stock = free.cut_length - 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_STOCK);
    NEAR(bound.cut_length, f.e.stock, 1e-12, "cut length", 0);
    f.e = roomy(&f.s);
    f.e.member_outer = free.member_x - 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_ENDS);
    NEAR(bound.member_x, f.e.member_outer, 1e-12, "member's hole", 0);
    f.e = roomy(&f.s);
    f.e.member_inner = free.member_x + 0.05;
    bound = layout_of(&f);
    ck_assert_int_eq((int)bound.binding, TSIDE_BINDS_ENDS);
    NEAR(bound.member_x, f.e.member_inner, 1e-12, "member's hole", 0);
}
END_TEST

/* --- clearance --- */

/* Least distance from the axis to the tube, by samples, less what must lie between. rough: what may hide between samples. */
static double sampled_clear(const fitted *f, const tside_layout *l, double *rough)
{
    double least = HUGE_VAL, dx = l->bow_x - l->eye_x, dy = l->bow_height - l->eye_y, length = hypot(dx, dy);
    *rough = 0;
    for (int k = 0; k < side_parts(&f->s); k++) {
        double from, to, last = 0, before = 0;
        int how = side_part(&f->s, k, &from, &to);
        for (int i = 0; i <= SAMPLES; i++) {
            place p = side_place_as(&f->s, how, from + (to - from) * i / SAMPLES);
            double along = ((p.x - l->eye_x) * dx + (p.y - l->eye_y) * dy) / length, off = fabs((p.x - l->eye_x) * dy - (p.y - l->eye_y) * dx) / length, clear;
            if (along < 0 || along > length)
                off = fmin(hypot(p.x - l->eye_x, p.y - l->eye_y), hypot(p.x - l->bow_x, p.y - l->bow_height));
            clear = off - p.radius - f->e.tube.side / 2 - f->e.bar_clearance;
            least = fmin(least, clear);
            if (i > 1)
                *rough = fmax(*rough, fabs(clear - 2 * last + before));
            before = last;
            last = clear;
        }
    }
    return least;
}

FOR_SIDES(roll_keeps_off_the_tube, SIDES)
{
    fitted f = random_fitted(number);
    tside_layout layout = layout_of(&f), again;
    tside_fault fault;
    double rough, sampled = sampled_clear(&f, &layout, &rough), first = layout.clear;
    ck_assert_msg(first <= sampled + 1e-11 && first >= sampled - rough - 1e-11, "side %d: clear %.12g, sampled %.12g", number, first, sampled);
    f.e.bar_clearance = first + 0.01;
    REFUSES(lay_out(&f, &again, &fault), again, TSIDE_OUT_OF_REACH, "extender.bar_clearance", TSIDE_ABOVE);
    ck_assert_str_eq(fault.other, "travel");
    NEAR(fault.bound, first, 1e-12, "clearance that fits", number);
    NEAR(fault.gap, -0.01, 1e-12, "missing", number);
    f.e.bar_clearance = fault.bound;
    NEAR(layout_of(&f).clear, 0, 1e-12, "clear at the bound", number);
}

/* --- laws --- */

FOR_SIDES(lengths_scale_and_angles_do_not, 60)
{
    fitted f = random_fitted(number), g;
    tside_layout p = layout_of(&f), q;
    g.s = side_scaled(&f.s, 2);
    g.s.eye = OFFSET_EYE;
    side_make(&g.s);
    g.e = f.e;
    g.e.tube.side *= 2;
    g.e.tube.wall *= 2;
    g.e.member_height *= 2;
    g.e.end_distance *= 2;
    g.e.tail *= 2;
    g.e.spacing *= 2;
    q = layout_of(&g);
    ck_assert_int_eq((int)q.binding, (int)p.binding);
    NEAR(q.angle, p.angle, 1e-6, "angle", number); /* twice the square root of the precision */
    NEAR(q.bow_distance * q.bow_distance * q.member_distance, 8 * p.bow_distance * p.bow_distance * p.member_distance, 1e-10, "flexibility", number);
    NEAR(q.cut_length, 2 * p.cut_length, 1e-5, "cut length", number);
    NEAR(q.eye_outboard, 2 * p.eye_outboard, 1e-10, "eye outboard", number);
    NEAR(q.clear, 2 * p.clear, 1e-5, "clear", number);
}

/* --- refusals --- */

/* A given angle breaks the bounds in their order; mended in turn by each fault's own bound, it ends laid out. */
static void mend_in_turn(fitted f, const char *field)
{
    static const int order[] = {KEEPS_MEMBER, KEEPS_SPACING, KEEPS_STOCK, KEEPS_OUTER, KEEPS_INNER};
    static const tside_relation relations[] = {TSIDE_NOT_BELOW, TSIDE_ABOVE, TSIDE_BELOW, TSIDE_BELOW, TSIDE_ABOVE};
    tside_layout layout;
    tside_fault fault;
    for (int i = 0; i < 5; i++) {
        double drop = f.s.eye_y - f.e.member_height, sB, sG, want;
        REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, names[order[i]], relations[i]);
        ck_assert_str_eq(fault.other, field);
        sB = reach_bow(&f.s, 50 * DEGREES);
        sG = drop / cos(50 * DEGREES);
        want = i == 0 ? f.s.eye_y - sB * cos(50 * DEGREES)
             : i == 1 ? sG - sB
             : i == 2 ? f.e.end_distance + sG + f.e.tail
             : f.s.eye_x - drop * tan(50 * DEGREES);
        NEAR(fault.bound, want, 1e-11, "bound", i);
        set_bound(&f.e, order[i], fault.bound - (i == 0 ? 0.1 : 0)); /* the bolts must part somewhat */
        if (order[i] == KEEPS_OUTER)
            f.e.member_inner = f.e.member_outer - 1e-3, f.e.member_outer += 1, f.e.member_inner += 0.5; /* now too far outboard */
    }
    ANSWERS(lay_out(&f, &layout, &fault));
    NEAR(layout.member_x, f.e.member_inner, 1e-12, "at the member's inner end", 0);
}

START_TEST(a_given_slant_is_held_to_the_bounds_in_order)
{
    fitted f;
    tside_layout layout;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = 50 * DEGREES;
    layout = layout_of(&f);
    f.e.member_height = layout.bow_height + 0.01;
    f.e.spacing = 5;
    f.e.stock = 0.1;
    f.e.member_outer = 2;
    f.e.member_inner = 1;
    mend_in_turn(f, "extender.angle");
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = layout.bow_height;
    mend_in_turn(f, "extender.crossing");
}
END_TEST

START_TEST(out_of_reach_of_the_bow_is_refused)
{
    fitted f;
    tside_layout layout;
    tside_fault fault;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.s.eye_x = 4; /* inboard of the leg */
    f.e.member_outer = 4.4;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.slant", TSIDE_NO_RELATION);
    ck_assert_str_eq(fault.other, "bow");
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = 0.5;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.angle", TSIDE_NO_RELATION);
    f.e.slant = TSIDE_SLANT_CROSSING;
    f.e.crossing = 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "eye_x", TSIDE_NOT_ABOVE);
    ck_assert_str_eq(fault.other, "extender.crossing");
    NEAR(fault.bound, 4.5 - f.s.frame.tube.diameter / 2, 1e-12, "leg", 0);
    f.s = side_plain();
    f.e.crossing = f.s.eye_y;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.crossing", TSIDE_NOT_BELOW);
    NEAR(fault.bound, f.s.eye_y, 0, "eye", 0);
    f.e.crossing = 4.6;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "extender.crossing", TSIDE_ABOVE);
    NEAR(fault.bound, f.s.frame.peak_height - f.s.frame.tube.diameter / 2, 1e-12, "top of the centreline", 0);
    f.e = roomy(&f.s);
    REFUSES(tside_extender_layout(&f.e, &f.s.bow, 7, f.s.eye_x, f.s.eye_y, &f.s.travel, &layout, &fault), layout, TSIDE_OUT_OF_REACH, "hip", TSIDE_ABOVE);
}
END_TEST

/* The eye over the arc above the leg: the crossing lies on the arc. */
START_TEST(a_crossing_above_the_leg_is_found)
{
    static const double peaks[] = {3.2, 6.2, 8}; /* flat, half circle or so, pointed */
    for (int i = 0; i < 3; i++) {
        fitted f;
        tside_layout layout;
        f.s = side_plain();
        f.s.frame.leg_height = 2.05;
        f.s.frame.peak_height = peaks[i];
        f.s.eye_y = 2.5;
        side_make(&f.s);
        f.e = roomy(&f.s);
        f.e.slant = TSIDE_SLANT_ANGLE;
        f.e.angle = 65 * DEGREES;
        layout = layout_of(&f);
        ck_assert(layout.bow_height > 2.1);
        check_geometry(&f, &layout, i);
    }
}
END_TEST

START_TEST(contradictions_and_bounds_are_named)
{
    fitted f;
    tside_layout layout;
    tside_fault fault;
    f.s = side_plain();
    f.e = roomy(&f.s);
    f.e.stock = 0;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "extender.stock", TSIDE_NOT_ABOVE);
    f.e = roomy(&f.s);
    f.e.slant = TSIDE_SLANT_ANGLE;
    f.e.angle = PI / 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "extender.angle", TSIDE_NOT_BELOW);
    f.e = roomy(&f.s);
    f.e.member_height = f.s.eye_y;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.member_height", TSIDE_NOT_BELOW);
    NEAR(fault.bound, f.s.eye_y, 0, "eye", 0);
    f.e = roomy(&f.s);
    f.e.member_inner = f.e.member_outer = 3;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.member_inner", TSIDE_NOT_BELOW);
    NEAR(fault.bound, 3, 0, "outer end", 0);
    f.e = roomy(&f.s);
    f.e.end_distance = f.e.eye_hole / 2;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.end_distance", TSIDE_NOT_ABOVE);
    f.e.end_distance = fault.bound + 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.e.bolt_hole = f.e.tube.side - 2 * f.e.tube.wall;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.bolt_hole", TSIDE_NOT_BELOW);
    f.e.bolt_hole = fault.bound - 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.e.end_distance = 0.1;
    f.e.eye_hole = f.e.tube.side;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_CONTRADICTS, "extender.eye_hole", TSIDE_NOT_BELOW);
    f.e.eye_hole = fault.bound - 1e-9;
    ANSWERS(lay_out(&f, &layout, &fault));
    f.e = roomy(&f.s);
    f.s.eye_x = NAN;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "eye_x", TSIDE_NOT_FINITE);
    f.s = side_plain();
    f.s.eye_y = HUGE_VAL;
    REFUSES(lay_out(&f, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "eye_y", TSIDE_NOT_FINITE);
    f.s = side_plain();
    REFUSES(tside_extender_layout(&f.e, &f.s.bow, NAN, f.s.eye_x, f.s.eye_y, &f.s.travel, &layout, &fault), layout, TSIDE_OUT_OF_BOUNDS, "hip", TSIDE_NOT_FINITE);
}
END_TEST

Suite *extender_suite(void)
{
    Suite *suite = suite_create("extender");
    TCase *tcase = tcase_create("extender");
    tcase_set_timeout(tcase, 30);
    tcase_add_test(tcase, a_given_angle_is_laid_out);
    tcase_add_test(tcase, a_given_crossing_is_laid_out);
    tcase_add_test(tcase, the_best_angle_is_laid_out);
    tcase_add_test(tcase, on_a_plumb_leg_it_is_the_arctangent_of_root_two);
    tcase_add_test(tcase, best_angle_is_what_a_scan_of_all_finds);
    tcase_add_test(tcase, best_angle_never_looks_over_the_bow);
    tcase_add_test(tcase, no_search_goes_beyond_75_degrees);
    tcase_add_test(tcase, each_bound_binds_by_its_name);
    tcase_add_test(tcase, roll_keeps_off_the_tube);
    tcase_add_test(tcase, lengths_scale_and_angles_do_not);
    tcase_add_test(tcase, a_given_slant_is_held_to_the_bounds_in_order);
    tcase_add_test(tcase, out_of_reach_of_the_bow_is_refused);
    tcase_add_test(tcase, a_crossing_above_the_leg_is_found);
    tcase_add_test(tcase, contradictions_and_bounds_are_named);
    suite_add_tcase(suite, tcase);
    return suite;
}
