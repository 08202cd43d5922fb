/* SPDX-License-Identifier: MIT */
/*
 * Flow through opened sides against networks of orifices whose pressure within is sought here, warmth against the
 * balance of heat, and the least opening against the flow that it gives.
 */
#include <check.h>
#include <math.h>
#include <string.h>

#include <tunnelside/air.h>

#include "expect.h"

Suite *air_suite(void);

#define CD 0.61

/* Of a house 30 m long with both sides open alike: air as it is without wind and sun. */
static tside_air plain_air(void)
{
    tside_air air;
    tside_usual(TSIDE_KIND_AIR, &air);
    air.sides = TSIDE_AIR_ALIKE;
    air.floor_area = 240;
    air.volume = 700;
    return air;
}

/* The same in the sun. */
static tside_air sunny_air(void)
{
    tside_air air = plain_air();
    air.warmth = TSIDE_AIR_IN_THE_SUN;
    air.sun = 900;
    air.transmission = 0.8;
    air.evaporation = 0.5;
    air.cover_area = 500;
    air.cover_loss = 6;
    return air;
}

static tside_airing through(const tside_air *air, double length, double opening)
{
    tside_airing made;
    tside_fault fault;
    ANSWERS(tside_air_through(air, length, opening, &made, &fault));
    return made;
}

/* Any house at all, in any weather. */
static tside_air random_air(dice *d)
{
    tside_air air = dice_below(d, 2) ? plain_air() : sunny_air();
    air.sides = (tside_air_sides)(TSIDE_AIR_ONE + dice_below(d, 3));
    air.other_length = dice_between(d, 1, 60);
    air.other_opening = dice_between(d, 0.01, 3);
    air.wind = dice_below(d, 3) ? dice_between(d, 0, 8) : 0;
    air.effectiveness = dice_between(d, 0.2, 0.6);
    air.warmer = dice_between(d, 0, 12);
    air.outside = dice_between(d, -20, 40);
    air.roof_vent = (tside_roof_vent)dice_below(d, 2);
    air.vent_area = dice_between(d, 0.1, 60);
    air.vent_rise = dice_between(d, 0.1, 5);
    return air;
}

/* --- networks: what flows in through openings whose pressure falls with height as warmth has it --- */

enum { STRIPS = 2000 };

typedef struct opening {
    double width, height, pressure; /* m, m, m2/s2: of the wind there, over the density */
} opening;

/* m3/s into the house through a strip, by the pressure across it over the density. */
static double inward(double area, double pressure)
{
    return CD * area * copysign(sqrt(2 * fabs(pressure)), pressure);
}

/* m3/s, all that goes into a house through two openings, less what goes out; in: receives what goes in. */
static double net_inward(const opening openings[2], double within, double buoyancy, double *in)
{
    double net = 0;
    *in = 0;
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < STRIPS; k++) {
            double strip = openings[i].height / STRIPS, z = (k + 0.5) * strip;
            double flow = inward(strip * openings[i].width, openings[i].pressure - within - buoyancy * z);
            net += flow;
            *in += fmax(flow, 0);
        }
    return net;
}

/* As much goes in as out: the pressure within is where that is so. */
static double network_flow(const opening openings[2], double buoyancy)
{
    double low = -100, high = 100, in;
    for (int k = 0; k < 60; k++) {
        double middle = (low + high) / 2;
        if (net_inward(openings, middle, buoyancy, &in) > 0)
            low = middle;
        else
            high = middle;
    }
    net_inward(openings, low, buoyancy, &in);
    return in;
}

/* The pressure across the house that has the wind blow through alike openings with this effectiveness. */
static double pressure_across(const tside_air *air)
{
    return pow(air->effectiveness / CD * air->wind, 2);
}

static double network(const tside_air *air, const opening *here, double other_width, double other_height)
{
    const double buoyancy = GRAVITY * air->warmer / (air->outside + 273.15 + air->warmer / 2);
    const opening openings[2] = {{here->width, here->height, pressure_across(air)}, {other_width, other_height, 0}};
    return network_flow(openings, buoyancy);
}

START_TEST(alike_sides_flow_as_a_network_of_strips)
{
    tside_air air = plain_air();
    double least = HUGE_VAL, greatest = 0;
    for (int i = 0; i < 60; i++) {
        const opening here = {30, 1, 0};
        double ratio;
        air.warmer = i % 3 == 0 ? 1 : i % 3 == 1 ? 5 : 10;
        air.effectiveness = i % 2 ? 0.5 : 0.3;
        air.wind = 0.05 * exp(i * log(8 / 0.05) / 59);
        ratio = through(&air, here.width, here.height).flow / network(&air, &here, here.width, here.height);
        least = fmin(least, ratio);
        greatest = fmax(greatest, ratio);
    }
    ck_assert_msg(least > 0.92 && greatest < 1.08, "from %g to %g of the network", least, greatest);
    ck_assert_msg(least < 0.95 && greatest > 1.05, "winds that matter were not tried: from %g to %g", least, greatest);
}
END_TEST

START_TEST(unlike_sides_flow_at_most_as_a_network_of_strips)
{
    for (int i = 0; i < 60; i++) {
        tside_air air = plain_air();
        const opening here = {30, 1, 0};
        double ratio;
        air.sides = TSIDE_AIR_OTHER;
        air.other_length = i % 3 == 0 ? 10 : 20; /* at a tenth of the larger the wind blows through both yet */
        air.other_opening = i % 2 ? 1 : 0.3;
        air.warmer = i % 5 * 2;
        air.wind = 0.05 * exp(i * log(8 / 0.05) / 59);
        ratio = through(&air, here.width, here.height).flow / network(&air, &here, air.other_length, air.other_opening);
        ck_assert_msg(ratio > 0.66 && ratio < 1.08, "row %d: %g of the network", i, ratio);
    }
}
END_TEST

/* The wind alone, through openings of any two areas: no height matters, and the series law is exact. */
START_TEST(wind_alone_flows_as_two_orifices_in_series)
{
    dice d = {3};
    for (int i = 0; i < 40; i++) {
        tside_air air = plain_air();
        const opening here = {dice_between(&d, 15, 60), dice_between(&d, 0.7, 2), 0};
        air.sides = TSIDE_AIR_OTHER;
        air.other_length = dice_between(&d, 15, 60);
        air.other_opening = dice_between(&d, 0.7, 2);
        air.wind = dice_between(&d, 0.5, 6);
        air.effectiveness = dice_between(&d, 0.25, 0.6);
        NEAR(through(&air, here.width, here.height).flow, network(&air, &here, air.other_length, air.other_opening),
             1e-6, "flow", i);
    }
}
END_TEST

/* Warmth alone, one opening: in at its lower half, out at its upper, whatever else the wind would do. */
START_TEST(warmth_alone_flows_as_strips_of_one_opening)
{
    tside_air air = plain_air();
    for (int i = 1; i <= 20; i++) {
        const opening here = {30, 0.1 * i, 0};
        double want;
        air.sides = TSIDE_AIR_ONE;
        air.warmer = 0.7 * i;
        want = network(&air, &here, 0, 0);
        NEAR(through(&air, here.width, here.height).flow, want, 1e-4 * want, "flow", i);
    }
}
END_TEST

/* Sides below and a vent above: the pressure within is sought, at which as much goes out above as comes in below. */
START_TEST(roof_vent_flows_as_two_orifices_in_series)
{
    dice d = {4};
    for (int i = 0; i < 40; i++) {
        tside_air air = plain_air();
        double opening = dice_between(&d, 0.05, 2), low = 0, high = 0, stack;
        tside_airing made;
        air.roof_vent = TSIDE_ROOF_VENT;
        air.vent_area = dice_between(&d, 1, 60);
        air.vent_rise = dice_between(&d, 0.5, 4);
        air.warmer = dice_between(&d, 0.5, 10);
        made = through(&air, 30, opening);
        high = stack = GRAVITY * air.vent_rise * air.warmer / (air.outside + 273.15 + air.warmer);
        for (int k = 0; k < 80; k++) {
            double across = (low + high) / 2; /* of the sides; the rest is across the vent */
            if (inward(2 * 30 * opening, across) < inward(air.vent_area, stack - across))
                low = across;
            else
                high = across;
        }
        NEAR(made.flow_vent, inward(air.vent_area, stack - low), 1e-9, "flow", i);
    }
}
END_TEST

/* --- limits --- */

START_TEST(calm_shut_and_alone)
{
    tside_air air = plain_air(), vented;
    ck_assert(through(&air, 30, 1).flow == 0); /* neither wind nor warmth */
    air.wind = 3;
    air.warmer = 5;
    ck_assert(through(&air, 30, 0).flow == 0);
    ck_assert(through(&air, 0, 1).flow == 0);
    vented = air;
    vented.roof_vent = TSIDE_ROOF_VENT;
    vented.vent_area = 20;
    vented.vent_rise = 3;
    ck_assert(through(&vented, 30, 0).flow == 0); /* a vent alone */
    vented.vent_area = 1e5;                       /* nothing holds it back above: the sides alone count */
    NEAR(through(&vented, 30, 0.01).flow_vent, CD * 2 * 0.3 * sqrt(2 * GRAVITY * 3 * 5 / (air.outside + 273.15 + 5)),
         1e-9, "a vent without end", 0);
}
END_TEST

/* The other side all but shut is the other side shut. */
START_TEST(one_side_is_what_two_come_to)
{
    tside_air one = plain_air(), other;
    one.sides = TSIDE_AIR_ONE;
    one.wind = 2;
    other = one;
    other.sides = TSIDE_AIR_OTHER;
    other.other_length = 1e-6;
    other.other_opening = 1e-6;
    NEAR(through(&other, 30, 1).flow, through(&one, 30, 1).flow, 1e-9, "wind", 0);
    one.warmer = other.warmer = 8;
    NEAR(through(&other, 30, 1).flow, through(&one, 30, 1).flow, 1e-9, "warmth", 0);
    other.other_length = 30; /* and the other as long and as high is both alike */
    other.other_opening = 1;
    one.sides = TSIDE_AIR_ALIKE;
    NEAR(through(&other, 30, 1).flow, through(&one, 30, 1).flow, 1e-12, "alike", 0);
    ck_assert(through(&other, 30, 1).other_area == through(&one, 30, 1).area);
}
END_TEST

/* --- properties --- */

START_TEST(the_greatest_flow_counts)
{
    dice d = {5};
    int by[2] = {0};
    for (int i = 0; i < 2000; i++) {
        const tside_air air = random_air(&d);
        const tside_airing made = through(&air, dice_between(&d, 5, 60), dice_between(&d, 0, 2.5));
        ck_assert(made.flow == fmax(made.flow_wind, fmax(made.flow_warmth, made.flow_vent)));
        ck_assert_int_eq(made.by, made.flow_wind < made.flow ? TSIDE_BY_WARMTH : TSIDE_BY_WIND);
        NEAR(made.changes * air.volume, made.flow, 1e-12 * made.flow, "changes", i);
        NEAR(made.floor_share * air.floor_area, made.area + made.other_area, 1e-12 * made.area + 1e-12, "share", i);
        by[made.by]++;
    }
    ck_assert(by[TSIDE_BY_WIND] > 200 && by[TSIDE_BY_WARMTH] > 200);
}
END_TEST

/* W in is W out. */
START_TEST(heat_is_balanced_at_the_flow_of_its_own_rise)
{
    dice d = {6};
    for (int i = 0; i < 2000; i++) {
        tside_air air = random_air(&d), held;
        double length = dice_between(&d, 5, 60), opening = dice_between(&d, 0, 2.5), gained;
        tside_airing made;
        if (air.warmth != TSIDE_AIR_IN_THE_SUN)
            continue;
        made = through(&air, length, opening);
        gained = air.sun * air.transmission * (1 - air.evaporation) * air.floor_area;
        NEAR((air.density * air.heat * made.flow + air.cover_loss * air.cover_area) * made.rise, gained, 1e-9 * gained,
             "balance", i);
        held = air;
        held.warmth = TSIDE_AIR_WARMER;
        held.warmer = made.rise;
        if (made.rise < 60)
            NEAR(through(&held, length, opening).flow, made.flow, 1e-9 * made.flow + 1e-12, "at that rise", i);
    }
}
END_TEST

START_TEST(wider_is_airier_and_cooler)
{
    dice d = {7};
    for (int i = 0; i < 500; i++) {
        const tside_air air = random_air(&d);
        double length = dice_between(&d, 5, 60);
        tside_airing before = through(&air, length, 0);
        for (int k = 1; k <= 20; k++) {
            const tside_airing now = through(&air, length, 0.1 * k);
            ck_assert(now.flow >= before.flow * (1 - 1e-12) && now.rise <= before.rise * (1 + 1e-12));
            before = now;
        }
    }
}
END_TEST

/* --- how much of it would do --- */

START_TEST(the_least_opening_gives_what_is_asked)
{
    dice d = {8};
    int given = 0, not = 0;
    for (int i = 0; i < 1000; i++) {
        tside_air air = random_air(&d);
        const double length = dice_between(&d, 5, 60), most = dice_between(&d, 0.5, 2.5);
        tside_airing all, part;
        air.changes_asked_given = 1;
        air.changes_asked = exp(dice_between(&d, log(1e-4), log(0.2)));
        all = through(&air, length, most);
        ck_assert_int_eq(all.for_changes_given, all.changes >= air.changes_asked);
        if (!all.for_changes_given) {
            not ++;
            continue;
        }
        given++;
        part = through(&air, length, all.for_changes);
        if (all.for_changes > 0) /* else the other side does it alone, if it is open at all */
            NEAR(part.changes, air.changes_asked, 1e-9 * air.changes_asked, "changes", i);
        else
            ck_assert(part.changes >= air.changes_asked * (1 - 1e-12));
        NEAR(through(&air, length, most + 0.3).for_changes, all.for_changes, 1e-9, "most does not matter", i);
    }
    ck_assert(given > 200 && not > 200);
}
END_TEST

START_TEST(the_least_opening_keeps_the_rise_asked)
{
    dice d = {9};
    int given = 0, not = 0;
    for (int i = 0; i < 2000; i++) {
        tside_air air = random_air(&d);
        const double length = dice_between(&d, 5, 60), most = dice_between(&d, 0.5, 2.5);
        tside_airing all, part;
        if (air.warmth != TSIDE_AIR_IN_THE_SUN)
            continue;
        air.rise_asked_given = 1;
        air.rise_asked = dice_between(&d, 0.5, 30);
        all = through(&air, length, most);
        ck_assert_int_eq(all.for_rise_given, all.rise <= air.rise_asked);
        if (!all.for_rise_given) {
            not ++;
            continue;
        }
        given++;
        part = through(&air, length, all.for_rise);
        if (all.for_rise > 0)
            NEAR(part.rise, air.rise_asked, 1e-8 * air.rise_asked, "rise", i);
        else
            ck_assert(part.rise <= air.rise_asked * (1 + 1e-12));
    }
    ck_assert(given > 200 && not > 100);
}
END_TEST

/* What an opening gives, asked for, is found at that opening. */
START_TEST(an_answer_handed_back_is_kept_to)
{
    tside_air air = sunny_air();
    tside_airing made;
    air.wind = 1;
    made = through(&air, 30, 1.2);
    air.changes_asked_given = air.rise_asked_given = 1;
    air.changes_asked = made.changes;
    air.rise_asked = made.rise;
    made = through(&air, 30, 1.2);
    ck_assert(made.for_changes_given && made.for_rise_given);
    NEAR(made.for_changes, 1.2, 1e-9, "for changes", 0);
    NEAR(made.for_rise, 1.2, 1e-9, "for rise", 0);
    air.warmth = TSIDE_AIR_WARMER; /* where the rise is given, none is asked */
    ck_assert_int_eq(through(&air, 30, 1.2).for_rise_given, 0);
}
END_TEST

/* Whatever its last digits come to. */
START_TEST(any_flow_handed_back_is_kept_to)
{
    dice d = {11};
    for (int i = 0; i < 3000; i++) {
        tside_air air = random_air(&d);
        const double length = dice_between(&d, 5, 60), most = dice_between(&d, 0.5, 2.5);
        air.changes_asked = through(&air, length, most).changes;
        air.changes_asked_given = air.changes_asked > 0;
        if (air.changes_asked_given)
            ck_assert_msg(through(&air, length, most).for_changes_given, "case %d", i);
    }
}
END_TEST

Suite *air_suite(void)
{
    Suite *suite = suite_create("air");
    TCase *networks = tcase_create("networks"), *limits = tcase_create("limits"),
          *properties = tcase_create("properties"), *least = tcase_create("least opening");
    tcase_add_test(networks, alike_sides_flow_as_a_network_of_strips);
    tcase_add_test(networks, unlike_sides_flow_at_most_as_a_network_of_strips);
    tcase_add_test(networks, wind_alone_flows_as_two_orifices_in_series);
    tcase_add_test(networks, warmth_alone_flows_as_strips_of_one_opening);
    tcase_add_test(networks, roof_vent_flows_as_two_orifices_in_series);
    tcase_add_test(limits, calm_shut_and_alone);
    tcase_add_test(limits, one_side_is_what_two_come_to);
    tcase_add_test(properties, the_greatest_flow_counts);
    tcase_add_test(properties, heat_is_balanced_at_the_flow_of_its_own_rise);
    tcase_add_test(properties, wider_is_airier_and_cooler);
    tcase_add_test(least, the_least_opening_gives_what_is_asked);
    tcase_add_test(least, the_least_opening_keeps_the_rise_asked);
    tcase_add_test(least, an_answer_handed_back_is_kept_to);
    tcase_add_test(least, any_flow_handed_back_is_kept_to);
    suite_add_tcase(suite, networks);
    suite_add_tcase(suite, limits);
    suite_add_tcase(suite, properties);
    suite_add_tcase(suite, least);
    return suite;
}
