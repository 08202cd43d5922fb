/* SPDX-License-Identifier: MIT */
/*
 * Wind as a pressure: what each rule must keep to at any speed, height and ground. Points with sources are the rows of
 * tests/data/pressure.csv.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"

Suite *pressure_suite(void);

enum { WINDS = 2000 };

static const tside_wind_rule with_speed[] = {TSIDE_PLAIN, TSIDE_ASCE_7_16, TSIDE_ASCE_7_22, TSIDE_EN_1991_1_4};

/* A wind by any rule that has a speed, with factors of its own half the time. */
static tside_wind any_wind(int number)
{
    dice d = {(uint64_t)number + 1};
    tside_wind w;
    tside_usual(TSIDE_KIND_WIND, &w);
    w.rule = with_speed[dice_below(&d, 4)];
    w.coefficient = dice_between(&d, 0.1, 3);
    w.speed = dice_between(&d, 1, 100);
    w.height_given = 1;
    w.height = dice_between(&d, 0.1, 200);
    w.exposure = (tside_exposure)dice_below(&d, 3);
    w.category = (tside_category)dice_below(&d, 5);
    if (dice_below(&d, 2)) {
        w.load_factor = dice_between(&d, 0.5, 1.6);
        w.directionality = dice_between(&d, 0.7, 1);
        w.topography = dice_between(&d, 1, 3);
        w.elevation = dice_between(&d, 0.7, 1);
        w.orography = dice_between(&d, 0.9, 1.5);
        w.turbulence = dice_between(&d, 0.5, 1.5);
        w.density = dice_between(&d, 0.9, 1.4);
    }
    return w;
}

static double net_of(const tside_wind *w)
{
    tside_pressure p;
    tside_fault fault;
    ANSWERS(tside_wind_pressure(w, &p, &fault));
    return p.net;
}

static double speed_of(const tside_wind *w, double net)
{
    double speed;
    tside_fault fault;
    ANSWERS(tside_wind_speed(w, net, &speed, &fault));
    return speed;
}

START_TEST(speed_is_the_inverse_of_pressure)
{
    for (int number = 0; number < WINDS; number++) {
        tside_wind w = any_wind(number);
        double speed = w.speed, net = net_of(&w);
        w.speed = 0; /* not read */
        NEAR(speed_of(&w, net), speed, 1e-12 * speed, "speed", number);
    }
}
END_TEST

START_TEST(pressure_is_as_the_square_of_speed_and_as_each_factor)
{
    for (int number = 0; number < WINDS; number++) {
        tside_wind w = any_wind(number), other = w;
        double net = net_of(&w);
        other.speed = w.speed / 2;
        NEAR(net_of(&other), net / 4, 1e-12 * net, "at half the speed", number);
        other = w;
        other.coefficient = 2 * w.coefficient;
        NEAR(net_of(&other), 2 * net, 1e-12 * net, "of twice the coefficient", number);
        other = w;
        other.load_factor = 2 * w.load_factor;
        NEAR(net_of(&other), 2 * net, 1e-12 * net, "of twice the load factor", number);
    }
}
END_TEST

START_TEST(it_grows_with_height_and_with_open_ground)
{
    for (int number = 0; number < WINDS; number++) {
        tside_wind w = any_wind(number), other = w;
        double net = net_of(&w);
        other.height = w.height / 2;
        ck_assert_msg(net_of(&other) <= net, "wind %d: half as high", number);
        if (w.height <= 8 && w.rule != TSIDE_PLAIN) { /* far up rough ground catches up by these profiles */
            other = w;
            if (w.exposure < TSIDE_EXPOSURE_D)
                other.exposure = (tside_exposure)(w.exposure + 1);
            if (w.category > TSIDE_CATEGORY_0)
                other.category = (tside_category)(w.category - 1);
            ck_assert_msg(net_of(&other) >= net, "wind %d: more open", number);
        }
    }
}
END_TEST

/* derivation: Kd stands once in each edition, and with all else alike only the profiles of heights differ. */
START_TEST(both_editions_agree_near_the_ground)
{
    tside_wind w;
    tside_usual(TSIDE_KIND_WIND, &w);
    w.coefficient = 1.28;
    w.speed = 50;
    w.height_given = 1;
    for (int exposure = 0; exposure < 3; exposure++)
        for (double height = 0.5; height < 4.6; height += 0.5) {
            double net;
            w.exposure = (tside_exposure)exposure;
            w.height = height;
            w.rule = TSIDE_ASCE_7_16;
            net = net_of(&w);
            w.rule = TSIDE_ASCE_7_22;
            NEAR(net_of(&w), net, 0.005 * net, "of the newer edition", exposure);
        }
}
END_TEST

START_TEST(a_category_given_as_its_table_has_it_is_that_category)
{
    tside_wind w = any_wind(0), given;
    w.rule = TSIDE_EN_1991_1_4;
    w.category = TSIDE_CATEGORY_III;
    given = w;
    given.category = TSIDE_CATEGORY_GIVEN;
    given.roughness = 0.3;
    given.height_least = 5;
    ck_assert_double_eq(net_of(&given), net_of(&w));
}
END_TEST

START_TEST(what_the_rule_does_not_read_may_be_anything)
{
    tside_wind w;
    tside_pressure p;
    tside_fault fault;
    tside_usual(TSIDE_KIND_WIND, &w);
    w.rule = TSIDE_PRESSURE_GIVEN;
    w.coefficient = 1;
    w.velocity_pressure = 500;
    w.speed = w.density = w.directionality = w.season = NAN;
    w.exposure = (tside_exposure)7;
    ANSWERS(tside_wind_pressure(&w, &p, &fault));
    ck_assert_double_eq(p.net, 500);
    ck_assert(!p.exposure_given && !p.mean_speed_given && !p.intensity_given);
    REFUSES(tside_wind_speed(&w, 100, &w.speed, &fault), w.speed, TSIDE_OUT_OF_BOUNDS, "wind.rule", TSIDE_NOT_ONE_OF);
    w.rule = TSIDE_PLAIN;
    REFUSES(tside_wind_speed(&w, 100, &w.speed, &fault), w.speed, TSIDE_OUT_OF_BOUNDS, "wind.density",
            TSIDE_NOT_FINITE);
}
END_TEST

Suite *pressure_suite(void)
{
    Suite *suite = suite_create("pressure");
    TCase *tcase = tcase_create("pressure");
    tcase_add_test(tcase, speed_is_the_inverse_of_pressure);
    tcase_add_test(tcase, pressure_is_as_the_square_of_speed_and_as_each_factor);
    tcase_add_test(tcase, it_grows_with_height_and_with_open_ground);
    tcase_add_test(tcase, both_editions_agree_near_the_ground);
    tcase_add_test(tcase, a_category_given_as_its_table_has_it_is_that_category);
    tcase_add_test(tcase, what_the_rule_does_not_read_may_be_anything);
    suite_add_tcase(suite, tcase);
    return suite;
}
