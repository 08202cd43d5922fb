/* SPDX-License-Identifier: MIT */
/* What comes near to another shape comes near to its numbers. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "curves.h"
#include "hull.h"

Suite *continuity_suite(void);

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
    ANSWERS(tside_hang_make(&c->travel, &c->guide, &c->collar, eye_x, c->line.y + 0.4, 0, &c->hang, &sweep, &fault));
    ANSWERS(tside_lift_worst(&c->travel, &c->load, &c->hang, &torque, NULL, &fault));
    memcpy(out,
           (double[OUTCOMES]){c->open, open.x, open.y, open.taken_up, eye_x, sweep.cut_length, sweep.walkway,
                              sweep.lean_greatest, torque.drive / 100},
           OUTCOMES * sizeof *out);
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
    ck_assert_msg(near <= far / 8 + 1e-11, "%s: a change of %g moves a side by %g, a tenth of it by %g", what, by, far,
                  near);
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

Suite *continuity_suite(void)
{
    Suite *suite = suite_create("continuity");
    TCase *tcase = tcase_create("continuity");
    tcase_add_test(tcase, nothing_jumps_across_the_half_circle);
    tcase_add_test(tcase, a_tight_shoulder_is_a_kink);
    tcase_add_test(tcase, a_vanishing_board_is_none);
    tcase_add_test(tcase, a_nearly_plumb_wall_is_plumb);
    tcase_add_test(tcase, a_vanishing_thickness_is_none);
    suite_add_tcase(suite, tcase);
    return suite;
}
