/* SPDX-License-Identifier: MIT */
/*
 * Work against energy: what the torques do over the whole travel is what curtain, bar, drive and guide gain in height.
 * Quadrature is broken where the travel bends; energy is taken once from the library and once from many small pieces.
 */
#include <check.h>
#include <math.h>

#include "sides.h"

Suite *energy_suite(void);

enum { SIDES = 300, NODES = 12 };

/* --- quadrature --- */

/*
 * Nodes and weights of Gauss and Legendre on [-1, 1]: roots of P_n by Newton's method from a cosine that lies near
 * each.
 */
static void gauss_legendre(double node[NODES], double weight[NODES])
{
    for (int i = 0; i < NODES; i++) {
        double x = cos(PI * (i + 0.75) / (NODES + 0.5)), slope = 1;
        for (int step = 0; step < 20; step++) {
            double before = 1, p = x;
            for (int n = 2; n <= NODES; n++) {
                double next = ((2 * n - 1) * x * p - (n - 1) * before) / n;
                before = p;
                p = next;
            }
            slope = NODES * (x * p - before) / (x * x - 1);
            x -= p / slope;
        }
        node[i] = x;
        weight[i] = 2 / ((1 - x * x) * slope * slope);
    }
}

typedef double integrand(const side *s, double x);

static double panel(integrand *f, const side *s, double from, double to)
{
    static double node[NODES], weight[NODES];
    double sum = 0, half = (to - from) / 2;
    if (weight[0] == 0)
        gauss_legendre(node, weight);
    for (int i = 0; i < NODES; i++)
        sum += weight[i] * half * f(s, from + half + half * node[i]);
    return sum;
}

/*
 * Halves where the halves' sum differs from the whole, as it does close under the fixing, where a bearing chord turns
 * ever faster.
 */
static double halved(integrand *f, const side *s, double from, double to, double whole, int depth)
{
    double middle = (from + to) / 2, left = panel(f, s, from, middle), right = panel(f, s, middle, to);
    if (depth == 0 || fabs(left + right - whole) <= 1e-12 * fabs(whole))
        return left + right;
    return halved(f, s, from, middle, left, depth - 1) + halved(f, s, middle, to, right, depth - 1);
}

static double integral(integrand *f, const side *s, double from, double to)
{
    return halved(f, s, from, to, panel(f, s, from, to), 12);
}

static double polynomial(const side *s, double x)
{
    (void)s;
    return 24 * pow(x, 23) - 11 * pow(x, 10) + 1;
}

/* Exact up to the degree 2 n - 1, here 23. */
START_TEST(quadrature_itself_is_right)
{
    NEAR(integral(polynomial, NULL, 0.5, 1.5),
         (pow(1.5, 24) - pow(1.5, 11) + 1.5) - (pow(0.5, 24) - pow(0.5, 11) + 0.5), 1e-9, "integral of a polynomial",
         0);
}
END_TEST

/* --- torques over their angles --- */

static double lift_at(const side *s, double turns)
{
    tside_torque t;
    tside_fault fault;
    ANSWERS(tside_lift_at(&s->travel, &s->load, NULL, turns, &t, &fault));
    NEAR(t.up, t.lift, 0, "no drag", s->number);
    return t.lift;
}

static double drive_turns(const side *s, double turns)
{
    double lean, drive;
    tside_fault fault;
    ANSWERS(tside_guide_lean(&s->travel, &s->hang, turns, &lean, &drive, &fault));
    return drive;
}

/*
 * Torque at the drive after some turns against its own housing: the bar's turns are found by regula falsi, Illinois
 * fashion.
 */
static double drive_at(const side *s, double driven)
{
    double low = 0, high = side_place(s, s->open).turns, below = -driven, above = drive_turns(s, high) - driven,
           turns = low;
    tside_torque t;
    tside_fault fault;
    for (int i = 0; i < 60 && fabs(high - low) > 1e-14; i++) {
        double off;
        turns = above > below ? low - below * (high - low) / (above - below) : low;
        off = drive_turns(s, turns) - driven;
        if (fabs(off) < 1e-13)
            break;
        if (off < 0) {
            low = turns;
            below = off;
            above /= 2;
        } else {
            high = turns;
            above = off;
            below /= 2;
        }
    }
    ANSWERS(tside_lift_at(&s->travel, &s->load, &s->hang, turns, &t, &fault));
    return t.drive;
}

static double work_of(const side *s, const tside_hang *hang, double turns)
{
    double work;
    tside_fault fault;
    ANSWERS(tside_lift_work(&s->travel, &s->load, hang, turns, &work, &fault));
    return work;
}

static side without_drag(int number)
{
    side s = side_random(number);
    s.load.friction = 0;
    s.load.rope_pressure = 0;
    return s;
}

FOR_SIDES(lift_over_the_bars_angle_is_the_gain, SIDES)
{
    side s = without_drag(number);
    double corner = side_place(&s, s.corner).turns, open = side_place(&s, s.open).turns, work = work_of(&s, NULL, open);
    double sum = integral(lift_at, &s, corner, open);
    if (corner > 0) {
        sum += integral(lift_at, &s, 0, corner);
        NEAR(2 * PI * integral(lift_at, &s, 0, corner), work_of(&s, NULL, corner), 1e-9 * work, "work to the corner",
             number);
    }
    NEAR(2 * PI * sum, work, 1e-9 * work, "work of the bar", number);
}

FOR_SIDES(drive_over_its_own_angle_is_the_gain_with_the_guide, SIDES)
{
    side s = without_drag(number);
    double turns = side_place(&s, s.open).turns, corner = drive_turns(&s, side_place(&s, s.corner).turns),
           open = drive_turns(&s, turns), work = work_of(&s, &s.hang, turns);
    double sum = integral(drive_at, &s, corner, open);
    if (corner > 0)
        sum += integral(drive_at, &s, 0, corner);
    NEAR(2 * PI * sum, work, 1e-9 * work, "work of the drive", number);
}

/* --- the library's energy against pieces --- */

FOR_SIDES(gain_is_that_of_all_pieces, SIDES)
{
    side s = side_random(number);
    place shut = side_place(&s, s.shut);
    double open = side_place(&s, s.open).turns, all = work_of(&s, NULL, open);
    for (int i = 0; i <= 6; i++) {
        double turns = open * i / 6;
        place p = side_place(&s, side_wraps(&s, turns));
        NEAR(work_of(&s, NULL, turns), side_energy(&s, &p, 0) - side_energy(&s, &shut, 0), 1e-9 * all,
             "gain of the bar", number);
        NEAR(work_of(&s, &s.hang, turns), side_energy(&s, &p, 1) - side_energy(&s, &shut, 1), 1e-9 * all,
             "gain with the guide", number);
    }
    ck_assert(work_of(&s, NULL, 0) == 0 && work_of(&s, &s.hang, 0) == 0);
}

/*
 * What all that is lifted weighs, by the height it is lifted, for a curtain that weighs nothing: the least that any of
 * it must come to.
 */
START_TEST(a_bar_alone_gains_its_weight_by_its_rise)
{
    side s = side_plain();
    place shut = side_place(&s, s.shut), open = side_place(&s, s.open);
    s.load.areal_mass = s.load.wet = 0;
    NEAR(work_of(&s, NULL, open.turns), GRAVITY * ((2 + 0.1) * 30 + 10) * (open.y - shut.y), 1e-10, "gain", 0);
}
END_TEST

Suite *energy_suite(void)
{
    Suite *suite = suite_create("energy");
    TCase *tcase = tcase_create("energy");
    tcase_add_test(tcase, quadrature_itself_is_right);
    tcase_add_test(tcase, lift_over_the_bars_angle_is_the_gain);
    tcase_add_test(tcase, drive_over_its_own_angle_is_the_gain_with_the_guide);
    tcase_add_test(tcase, gain_is_that_of_all_pieces);
    tcase_add_test(tcase, a_bar_alone_gains_its_weight_by_its_rise);
    suite_add_tcase(suite, tcase);
    return suite;
}
