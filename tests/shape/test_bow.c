/* SPDX-License-Identifier: MIT */
/* Bows of every kind against polylines, circles and known segments. */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "bows.h"
#include "curves.h"
#include "shape/bow.h"

Suite *bow_suite(void);

/* --- against polylines --- */

FOR_CURVED(centreline_and_face_are_the_polylines)
{
    static polyline centre, face;
    double half = c->frame.tube.diameter / 2;
    trace(&c->frame, 0, 2, &centre);
    trace(&c->frame, half, 2, &face);
    for (double y = -0.4; y < fmin(1.9, c->frame.peak_height - 0.1); y += 0.0471) {
        double x, arc;
        tside_bow_point p;
        tside_fault fault;
        ANSWERS(tside_bow_face(&c->bow, y, &x, &fault));
        NEAR(x, polyline_x(&face, y), grain(&face, y), "face", c->number);
        note(c, fabs(x - polyline_x(&face, y)));
        ANSWERS(tside_bow_at_height(&c->bow, y, &arc, &fault));
        ANSWERS(tside_bow_at(&c->bow, arc, &p, &fault));
        NEAR(p.y, y, 1e-12, "height", c->number);
        NEAR(p.x, polyline_x(&centre, y), grain(&centre, y), "centreline", c->number);
    }
}

/*
 * Every point of the face lies half a diameter from the nearest of the centreline, the round about a kink from its one
 * point.
 */
FOR_CURVED(face_is_half_a_diameter_off)
{
    static polyline centre;
    double half = c->frame.tube.diameter / 2;
    trace(&c->frame, 0, 2.2, &centre);
    for (double y = 0.05; y < fmin(1.9, c->frame.peak_height - 0.1); y += 0.237) {
        double x, nearest = HUGE_VAL;
        tside_fault fault;
        ANSWERS(tside_bow_face(&c->bow, y, &x, &fault));
        for (int i = 1; i < centre.count; i++) {
            double dx = centre.x[i] - centre.x[i - 1], dy = centre.y[i] - centre.y[i - 1],
                   u = ((x - centre.x[i - 1]) * dx + (y - centre.y[i - 1]) * dy) / (dx * dx + dy * dy);
            u = fmin(fmax(u, 0), 1);
            nearest = fmin(nearest, hypot(x - centre.x[i - 1] - u * dx, y - centre.y[i - 1] - u * dy));
        }
        NEAR(nearest, half, 2 * sagitta, "distance of face and centreline", c->number);
    }
}

/* Arc length, heading and curvature agree with one another: by differences along the bow. */
FOR_CURVED(arc_length_heading_and_curvature_belong_together)
{
    const double h = 1e-6;
    tside_fault fault;
    for (int k = -3; k < 20; k++) {
        double arc = c->bow.centre.length * (k + 0.37) / 20;
        tside_bow_point at, before, after;
        ANSWERS(tside_bow_at(&c->bow, arc - h, &before, &fault));
        ANSWERS(tside_bow_at(&c->bow, arc, &at, &fault));
        ANSWERS(tside_bow_at(&c->bow, arc + h, &after, &fault));
        NEAR(hypot(after.x - before.x, after.y - before.y), 2 * h, 1e-14, "step along the arc", c->number);
        NEAR(atan2(after.y - before.y, after.x - before.x), at.heading, 1e-8, "heading", c->number);
        NEAR(after.heading - before.heading, 2 * h * at.curvature, 1e-14, "curvature", c->number);
    }
}

/* The nearest place at which a half line crosses the polyline of the centreline. */
FOR_CURVED(crossings_are_the_polylines)
{
    static polyline centre;
    dice d = {(uint64_t)c->number};
    trace(&c->frame, 0, HUGE_VAL, &centre);
    for (int k = 0; k < 6; k++) {
        double x = c->frame.width / 2 + dice_between(&d, -0.5, 1), y = dice_between(&d, -0.5, 2.5),
               angle = dice_between(&d, -PI, PI), nearest = HUGE_VAL, square = 0, away, arc;
        tside_bow_point p;
        if (c->frame.shape == TSIDE_THREE_POINTS)
            x += c->frame.foot_x - c->frame.width / 2;
        for (int i = 1; i < centre.count; i++) {
            double dx = centre.x[i] - centre.x[i - 1], dy = centre.y[i] - centre.y[i - 1],
                   det = dx * sin(angle) - dy * cos(angle);
            double u = ((x - centre.x[i - 1]) * sin(angle) - (y - centre.y[i - 1]) * cos(angle)) / det,
                   t = ((x - centre.x[i - 1]) * dy - (y - centre.y[i - 1]) * dx) / det;
            if (u >= 0 && u <= 1 && t > 0 && t < nearest) {
                nearest = t;
                square = fabs(det) / hypot(dx, dy);
            }
        }
        if (nearest < 1e-3 || (nearest < HUGE_VAL && square < 1e-2)) /* begins on it, or grazes it */
            continue;
        if (tside_bow_crossing(&c->bow, x, y, angle, &away, &arc, NULL) != TSIDE_OK)
            away = HUGE_VAL;
        else if (nearest < 100) {
            tside_fault fault;
            ANSWERS(tside_bow_at(&c->bow, arc, &p, &fault));
            NEAR(hypot(p.x - x - away * cos(angle), p.y - y - away * sin(angle)), 0, 1e-9, "crossing on the centreline",
                 c->number);
        }
        if (nearest < 100 || away < 100) {
            NEAR(away, nearest, 2 * sagitta / square, "distance of the crossing", c->number);
            note(c, fabs(away - nearest));
        }
    }
}

/* --- circles, from outside --- */

/*
 * Machinery's Handbook, Segments of Circles for Radius = 1, from memory: central angle in degrees, arc, rise, chord,
 * area of the segment.
 */
static const double segments[][5] = {
    {30, 0.52360, 0.03407, 0.51764, 0.01180},  {45, 0.78540, 0.07612, 0.76537, 0.03915},
    {60, 1.04720, 0.13397, 1.00000, 0.09059},  {90, 1.57080, 0.29289, 1.41421, 0.28540},
    {150, 2.61799, 0.74118, 1.93185, 1.05900}, {180, 3.14159, 1.00000, 2.00000, 1.57080},
};

/* Between centreline and the level of its foot, from foot to peak, by the trapezoidal rule. */
static double area_under(const tside_bow *bow)
{
    enum { PARTS = 20000 };
    double area = 0;
    tside_bow_point last = bow_at(bow, 0);
    for (int i = 1; i <= PARTS; i++) {
        tside_bow_point p = bow_at(bow, bow->centre.length * ((double)i / PARTS));
        area += (last.x - p.x) * (last.y + p.y) / 2;
        last = p;
    }
    return area;
}

/*
 * Drawn 10 m large. The printed rise and chord are good to half a unit of their last place, by which they also move
 * what follows from them.
 */
START_TEST(flat_arches_are_circular_segments)
{
    const double scale = 10, place = 0.5e-5;
    for (size_t i = 0; i < sizeof segments / sizeof *segments; i++) {
        double arc = segments[i][1], rise = segments[i][2], chord = segments[i][3], area = segments[i][4];
        tside_frame frame = plain_frame(scale * chord, 0, scale * rise);
        tside_bow bow = bow_of(&frame);
        /*
         * near a flat arch's proportions: arc = chord + 8/3 rise^2/chord, radius = chord^2/(8 rise) + rise/2, area =
         * 2/3 chord rise
         */
        NEAR(2 * bow.centre.length / scale, arc, place * (1 + 1 + 16 * rise / chord / 3), "arc", (int)i);
        NEAR(1 / bow.centre.piece[0].curvature / scale, 1,
             place * (chord / (4 * rise) + chord * chord / (8 * rise * rise) + 0.5), "radius", (int)i);
        NEAR(2 * area_under(&bow) / scale / scale, area, place * (1 + rise + chord), "area of the segment", (int)i);
        NEAR(bow_at(&bow, bow.centre.length).x, 0, 1e-12, "peak", (int)i);
        NEAR(bow_at(&bow, bow.centre.length).y, frame.peak_height, 1e-12, "peak", (int)i);
        NEAR(bow_at(&bow, 0).x, frame.width / 2, 1e-12, "foot", (int)i);
    }
}
END_TEST

/* The same segments through three of their points; and hollow, where the curvature changes its sign. */
START_TEST(arcs_through_three_points_are_circular_segments)
{
    const double scale = 4, place = 0.5e-5;
    for (size_t i = 0; i + 1 < sizeof segments / sizeof *segments;
         i++) /* without the half circle, which would not rise from its foot */
        for (int hollow = 0; hollow <= 1; hollow++) {
            double rise = segments[i][2] * (hollow ? -1 : 1), chord = segments[i][3];
            tside_frame frame = points_frame(5, 5 + scale * rise, scale * chord / 2, 5, scale * chord);
            tside_bow bow = bow_of(&frame);
            tside_bow_point between;
            double arc;
            tside_fault fault;
            NEAR(bow.centre.length / scale, segments[i][1], place * (1 + 1 + 16 * fabs(rise) / chord / 3), "arc",
                 (int)i);
            NEAR(bow.centre.piece[0].curvature * scale, hollow ? -1 : 1,
                 place * (chord / (4 * fabs(rise)) + chord * chord / (8 * rise * rise) + 0.5), "curvature", (int)i);
            ANSWERS(tside_bow_at_height(&bow, frame.between_height, &arc, &fault));
            between = bow_at(&bow, arc);
            NEAR(between.x, frame.between_x, 1e-12, "the point between", (int)i);
            NEAR(arc, bow.centre.length / 2, 1e-12, "half way", (int)i);
            NEAR(between.heading, PI / 2, 1e-12, "heading half way", (int)i);
        }
}
END_TEST

START_TEST(points_of_a_known_circle_give_it_back)
{
    dice d = {5};
    for (int n = 0; n < 200; n++) {
        double R = dice_between(&d, 2, 8), cx = dice_between(&d, 1, 3), cy = dice_between(&d, -1, 2),
               low = dice_between(&d, -0.6, 0), high = dice_between(&d, 0.2, 0.7);
        double middle = low + (high - low) * dice_between(&d, 0.3, 0.7);
        tside_frame frame = points_frame(cx + R * cos(low), cx + R * cos(middle), cy + R * sin(middle),
                                         cx + R * cos(high), cy + R * sin(high));
        tside_bow bow;
        frame.foot_height = cy + R * sin(low);
        if (frame.foot_height < -5 || frame.between_height <= 0)
            continue;
        frame.measured = n % 2 ? TSIDE_OUTSIDE : TSIDE_CENTRELINE;
        bow = bow_of(&frame);
        if (frame.measured == TSIDE_OUTSIDE)
            R -= 0.025;
        for (int i = 0; i < 2; i++) { /* centreline, face */
            const tside_piece *piece = i ? bow.face.piece : bow.centre.piece;
            double radius = R + (i ? 0.025 : 0);
            NEAR(1 / piece->curvature, radius, 1e-9 * radius, "radius", n);
            NEAR(piece->length, radius * (high - low), 1e-10, "length", n);
            NEAR(piece->heading, low + PI / 2, 1e-10, "heading", n);
            NEAR(piece->x, cx + radius * cos(low), 1e-10, "foot", n);
            NEAR(piece->y, cy + radius * sin(low), 1e-10, "foot", n);
        }
    }
}
END_TEST

/*
 * A hollow bow that turns level and down again, away from the tunnel, before its last point: its top lies where it is
 * level.
 */
START_TEST(a_hollow_bow_has_its_top_where_it_is_level)
{
    const double R = 1.5, low = 0.2, middle = -1.2, high = -1.7, x = 3,
                 y = 0.5; /* on the inboard side of its centre, by the angles of its normals */
    tside_frame frame = points_frame(x - R * cos(low), x - R * cos(middle), y - R * sin(middle), x - R * cos(high),
                                     y - R * sin(high));
    tside_bow bow;
    double arc;
    tside_fault fault;
    frame.foot_height = y - R * sin(low);
    bow = bow_of(&frame);
    ANSWERS(tside_bow_at_height(&bow, 1.9999, &arc, &fault));
    NEAR(bow_at(&bow, arc).y, 1.9999, 1e-12, "height", 0);
    NEAR(arc, R * (low + acos(1.4999 / R * -1) - PI / 2), 1e-9, "the first of two such heights", 0);
    REFUSES(tside_bow_at_height(&bow, 2.0001, &arc, &fault), arc, TSIDE_OUT_OF_REACH, "height", TSIDE_ABOVE);
    NEAR(fault.bound, 2, 1e-12, "top", 0);
}
END_TEST

START_TEST(collinear_points_give_a_straight_bow)
{
    for (int n = 0; n < 20; n++) {
        double lean = -0.5 + 0.05 * n, at = 0.2 + 0.03 * n;
        tside_frame frame = points_frame(4, 4 - lean * at, 2.4 * at, 4 - lean, 2.4);
        tside_bow bow = bow_of(&frame);
        ck_assert(bow.centre.piece[0].curvature == 0 && bow.face.piece[0].curvature == 0 && bow.centre.count == 1);
        NEAR(bow.centre.length, hypot(lean, 2.4), 1e-12, "length", n);
        NEAR(bow_at(&bow, 0).heading, PI / 2 + atan(lean / 2.4), 1e-12, "heading", n);
    }
}
END_TEST

/* A tape over the outside finds the tube's diameter wider and half of it higher. */
START_TEST(outside_measures_are_the_centrelines_and_the_tube)
{
    for (int n = 0; n < SIDES; n++) {
        curved c;
        tside_frame frame;
        tside_bow one, other;
        if (curved_side(n, &c, NULL) != TSIDE_OK || c.frame.shape == TSIDE_THREE_POINTS)
            continue;
        frame = c.frame;
        frame.measured = TSIDE_CENTRELINE;
        one = bow_of(&frame);
        frame.measured = TSIDE_OUTSIDE;
        frame.width += frame.tube.diameter;
        frame.peak_height += frame.tube.diameter / 2;
        other = bow_of(&frame);
        for (int k = 0; k <= 10; k++) {
            tside_bow_point p = bow_at(&one, one.centre.length * (k / 10.0)),
                            q = bow_at(&other, other.centre.length * (k / 10.0));
            NEAR(p.x, q.x, 1e-12, "x", n);
            NEAR(p.y, q.y, 1e-12, "y", n);
        }
    }
}
END_TEST

/* --- where rounding decides --- */

/* A leg, a shoulder where there is room for one, and an arch, of sizes drawn by lot. */
static tside_frame drawn_frame(dice *d, int shoulder)
{
    tside_frame frame;
    tside_usual(TSIDE_KIND_FRAME, &frame);
    frame.tube = (tside_round){.diameter = 0.06, .wall = 0.003};
    frame.width = dice_between(d, 5, 10);
    frame.leg_height = dice_between(d, 0.8, 2);
    frame.peak_height = frame.leg_height + dice_between(d, 0.4, 0.9) * frame.width / 2;
    frame.shoulder_radius_given = shoulder;
    frame.shoulder_radius = shoulder ? dice_between(d, 0.3, 0.6) : 0;
    return frame;
}

/* A line through the joint of two pieces crosses the one or the other; from inboard it meets nothing beyond it first.
 */
START_TEST(a_line_through_a_joint_crosses_there)
{
    dice d = {1};
    int met = 0;
    for (int n = 0; n < 300; n++) {
        const tside_frame frame = drawn_frame(&d, n % 2);
        const tside_bow bow = bow_of(&frame);
        for (int k = 1; k < bow.centre.count; k++)
            for (int i = 0; i < 20; i++) {
                const tside_piece *piece = bow.centre.piece + k;
                double angle = dice_between(&d, -0.7, 0.7), reach = dice_between(&d, 0.2, frame.width / 2), away, arc;
                tside_fault fault;
                if (sin(piece->heading - angle) < 0.3) /* grazes it */
                    continue;
                ANSWERS(tside_bow_crossing(&bow, piece->x - reach * cos(angle), piece->y - reach * sin(angle), angle,
                                           &away, &arc, &fault));
                ck_assert_msg(away <= reach + 1e-9, "frame %d, joint %d: crosses %g beyond it", n, k, away - reach);
                met += fabs(away - reach) < 1e-9;
            }
    }
    ck_assert_int_gt(met, 5000);
}
END_TEST

/* A place within some digits of an arch's top, where it is level: a step to it by its slope would lead anywhere. */
START_TEST(heights_by_the_top_are_found)
{
    dice d = {2};
    int found = 0;
    for (int n = 0; n < 500; n++) {
        const tside_frame frame = drawn_frame(&d, 0);
        const tside_bow bow = bow_of(&frame);
        const double top = bow_at(&bow, bow.centre.length).y;
        for (int i = 0; i < 20; i++) {
            const double height = top * (1 - i * 1.2e-16);
            double arc;
            if (tside_bow_at_height(&bow, height, &arc, NULL) != TSIDE_OK) /* above the top, by rounding */
                continue;
            NEAR(bow_at(&bow, arc).y, height, 1e-14, "height by the top", n);
            found++;
        }
    }
    ck_assert_int_gt(found, 9000);
}
END_TEST

/* Where bulges touch, the line goes from one to the next, with no piece between them but one that has a length. */
/* A round top goes on bending as evenly beyond it, whatever its heading's last digits; a pointed one does not. */
START_TEST(a_round_top_is_no_bend)
{
    for (int width = 40; width <= 100; width++)
        for (int leg = 0; leg <= 20; leg += 4)
            for (int peak = leg + 6; peak <= leg + 70; peak += 4) { /* in decimetres */
                const tside_frame frame = plain_frame(width / 10.0, leg / 10.0, peak / 10.0);
                const tside_bow bow = bow_of(&frame);
                const double bend = tside_i_path_bend(&bow.centre, bow.centre.count);
                if (2 * (peak - leg) > width)
                    ck_assert_msg(bend == bow.centre.length, "%d by %d on %d: no bend", width, peak, leg);
                else
                    ck_assert_msg(bend > bow.centre.length, "%d by %d on %d: a bend at %g", width, peak, leg, bend);
            }
}
END_TEST

START_TEST(a_line_has_no_piece_of_no_length)
{
    dice d = {3};
    int bent = 0;
    for (int n = 0; n < 500; n++) {
        const tside_frame frame = drawn_frame(&d, n % 2);
        const tside_bow bow = bow_of(&frame);
        tside_curtain curtain;
        tside_line line;
        tside_fault fault;
        tside_usual(TSIDE_KIND_CURTAIN, &curtain);
        curtain.standoff = dice_between(&d, 0, 0.1);
        curtain.sill = 0.3;
        curtain.hip = dice_between(&d, 0.8, 0.7 * frame.peak_height);
        ANSWERS(tside_line_make(&bow, &curtain, &line, &fault));
        for (int i = 1; i < line.count; i++) {
            bent += line.piece[i].turn != 0;
            ck_assert_msg(line.piece[i].turn != 0 || line.piece[i].length > 1e-9, "frame %d: piece %d is %g m", n, i,
                          line.piece[i].length);
        }
    }
    ck_assert_int_gt(bent, 100);
}
END_TEST

Suite *bow_suite(void)
{
    Suite *suite = suite_create("bow");
    TCase *tcase = tcase_create("bow");
    tcase_add_test(tcase, centreline_and_face_are_the_polylines);
    tcase_add_test(tcase, face_is_half_a_diameter_off);
    tcase_add_test(tcase, arc_length_heading_and_curvature_belong_together);
    tcase_add_test(tcase, crossings_are_the_polylines);
    tcase_add_test(tcase, flat_arches_are_circular_segments);
    tcase_add_test(tcase, arcs_through_three_points_are_circular_segments);
    tcase_add_test(tcase, points_of_a_known_circle_give_it_back);
    tcase_add_test(tcase, a_hollow_bow_has_its_top_where_it_is_level);
    tcase_add_test(tcase, collinear_points_give_a_straight_bow);
    tcase_add_test(tcase, outside_measures_are_the_centrelines_and_the_tube);
    tcase_add_test(tcase, a_line_through_a_joint_crosses_there);
    tcase_add_test(tcase, heights_by_the_top_are_found);
    tcase_add_test(tcase, a_line_has_no_piece_of_no_length);
    tcase_add_test(tcase, a_round_top_is_no_bend);
    suite_add_tcase(suite, tcase);
    return suite;
}
