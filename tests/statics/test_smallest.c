/* SPDX-License-Identifier: MIT */
/* The smallest cable and the smallest drive of a list, against trying each; and a run within a plan. */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include <tunnelside.h>

#include "bench_side.h"
#include "parts/cable.h"
#include "runs.h"

Suite *smallest_suite(void);

/* --- the smallest cable --- */

/* ASTM B258, to its four decimals of an inch. */
START_TEST(gauges_are_as_printed)
{
    const struct {
        int gauge;
        double inches;
    } printed[] = {{-3, 0.4600}, {6, 0.1620},  {8, 0.1285},  {10, 0.1019}, {12, 0.0808},
                   {14, 0.0641}, {16, 0.0508}, {18, 0.0403}, {36, 0.0050}};
    for (size_t i = 0; i < sizeof printed / sizeof *printed; i++)
        NEAR(tside_i_gauge_diameter(printed[i].gauge) / 0.0254, printed[i].inches, 0.00005, "diameter",
             printed[i].gauge);
}
END_TEST

START_TEST(the_smallest_cable_keeps_the_drop_and_the_next_smaller_does_not)
{
    for (int wire = TSIDE_AWG; wire <= TSIDE_AREA; wire++)
        for (int loading = TSIDE_RUNNING; loading <= TSIDE_STARTING; loading++) {
            double area = 0;
            for (int i = 1; i <= 40; i++) {
                tside_cable cable = copper(1e-6, 5.0 * i), found;
                tside_fault fault;
                double ohms, drop, d;
                cable.wire = (tside_wire)wire;
                ANSWERS(tside_cable_smallest(&cable, 24, 12, (tside_loading)loading, 2.4, &found, &fault));
                ANSWERS(tside_cable_resistance(&found, &ohms, &fault));
                drop = loading == TSIDE_RUNNING ? 12 * ohms : 24 * ohms / (24 / 12.0 + ohms);
                ck_assert(drop <= 2.4);
                d = tside_i_gauge_diameter(found.gauge);
                d = wire == TSIDE_AWG ? PI / 4 * d * d : found.area;
                ck_assert(d >= area);
                area = d;
                /* no trade size is more than 1.7 times the next smaller one */
                if (ohms * 1.7 < (loading == TSIDE_RUNNING ? 0.2 : 2.4 * 2 / 21.6))
                    ck_assert(area <= 0.52e-6);
            }
        }
}
END_TEST

/*
 * A drop that a trade size just keeps finds it. Gauges: NEC chapter 9, table 8, and 20 AWG; areas: IEC 60228; both from
 * memory.
 */
START_TEST(every_trade_size_is_found)
{
    static const int gauges[] = {20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
    static const double areas[] = {0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120};
    tside_fault fault;
    for (int wire = TSIDE_AWG; wire <= TSIDE_AREA; wire++)
        for (int i = 0; i < (wire == TSIDE_AWG ? 16 : 15); i++) {
            tside_cable cable = copper(1e-6, 50), found;
            double ohms;
            cable.wire = (tside_wire)wire;
            if (wire == TSIDE_AWG)
                cable.gauge = gauges[i];
            else
                cable.area = areas[i] * 1e-6;
            ANSWERS(tside_cable_resistance(&cable, &ohms, &fault));
            ANSWERS(tside_cable_smallest(&cable, 24, 5, TSIDE_RUNNING, 5 * ohms * (1 + 1e-9), &found, &fault));
            if (wire == TSIDE_AWG)
                ck_assert_int_eq(found.gauge, gauges[i]);
            else
                NEAR(found.area, areas[i] * 1e-6, 1e-15, "area", i);
        }
}
END_TEST

/* The greatest length that a refusal names is accepted, with whatever last digits it comes back. */
START_TEST(the_greatest_length_is_accepted)
{
    dice d = {4};
    int refused = 0;
    for (int n = 0; n < 400; n++) {
        tside_cable cable = copper(1e-6, 5000), found;
        const tside_loading loading = n % 3 ? TSIDE_RUNNING : TSIDE_STARTING;
        const double voltage = dice_between(&d, 12, 48), current = dice_between(&d, 1, 20),
                     drop = dice_between(&d, 0.2, 3);
        tside_fault fault;
        cable.wire = n % 2 ? TSIDE_AWG : TSIDE_AREA;
        if (tside_cable_smallest(&cable, voltage, current, loading, drop, &found, &fault) == TSIDE_OK)
            continue;
        ck_assert(!strcmp(fault.field, "cable.length") && fault.relation == TSIDE_ABOVE);
        cable.length = fault.bound;
        ANSWERS(tside_cable_smallest(&cable, voltage, current, loading, drop, &found, &fault));
        cable.length *= 1 + 1e-6;
        REFUSES(tside_cable_smallest(&cable, voltage, current, loading, drop, &found, &fault), found,
                TSIDE_OUT_OF_REACH, "cable.length", TSIDE_ABOVE);
        refused++;
    }
    ck_assert_int_gt(refused, 300);
}
END_TEST

/* Bounds are those of the header. */
START_TEST(arguments_of_a_cable_are_bounded)
{
    const tside_cable cable = copper(1e-6, 50);
    tside_cable found;
    tside_fault fault;
    REFUSES(tside_cable_smallest(&cable, 0, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "voltage", TSIDE_NOT_ABOVE);
    ck_assert(fault.bound == 0);
    REFUSES(tside_cable_smallest(&cable, 24, -1e-9, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "current", TSIDE_BELOW);
    ck_assert(fault.bound == 0);
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 0, &found, &fault), found, TSIDE_OUT_OF_BOUNDS, "drop",
            TSIDE_NOT_ABOVE);
    ck_assert(fault.bound == 0);
    ANSWERS(tside_cable_smallest(&cable, 0.5, 0, TSIDE_RUNNING, 0.01, &found, &fault));
}
END_TEST

START_TEST(what_no_cable_keeps_is_refused)
{
    tside_cable cable = copper(1e-6, 5000), found;
    tside_fault fault;
    double ohms;
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_REACH,
            "cable.length", TSIDE_ABOVE);
    ck_assert(fault.bound < 5000 && !strcmp(fault.unit, "m"));
    cable.length = fault.bound;
    ANSWERS(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault));
    cable.length *= 1 + 1e-6;
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_REACH,
            "cable.length", TSIDE_ABOVE);
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1e-6, &found, &fault), found, TSIDE_OUT_OF_REACH,
            "cable.length", TSIDE_NONE_FITS);
    cable.length = 5000;
    for (int wire = TSIDE_AWG; wire <= TSIDE_AREA; wire++) {
        tside_cable largest = copper(120e-6, 5000);
        largest.wire = cable.wire = (tside_wire)wire;
        largest.gauge = -3;
        ANSWERS(tside_cable_resistance(&largest, &ohms, &fault));
        REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_REACH,
                "cable.length", TSIDE_ABOVE);
        NEAR(fault.bound, 5000 / (12 * ohms), 1e-9, "length with which the largest loses 1 V", wire);
    }
    REFUSES(tside_cable_smallest(&cable, 0, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "voltage", TSIDE_NOT_ABOVE);
    REFUSES(tside_cable_smallest(&cable, 24, -1, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "current", TSIDE_BELOW);
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 0, &found, &fault), found, TSIDE_OUT_OF_BOUNDS, "drop",
            TSIDE_NOT_ABOVE);
    REFUSES(tside_cable_smallest(&cable, 24, 12, (tside_loading)2, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "loading", TSIDE_NOT_ONE_OF);
    cable.length = 0;
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "cable.length", TSIDE_BELOW);
    REFUSES(tside_cable_resistance(&cable, &ohms, &fault), ohms, TSIDE_OUT_OF_BOUNDS, "cable.length", TSIDE_BELOW);
    cable.wire = TSIDE_NO_CABLE;
    REFUSES(tside_cable_smallest(&cable, 24, 12, TSIDE_RUNNING, 1, &found, &fault), found, TSIDE_OUT_OF_BOUNDS,
            "cable.wire", TSIDE_NOT_ONE_OF);
    ANSWERS(tside_cable_resistance(&cable, &ohms, &fault));
    ck_assert(ohms == 0);
}
END_TEST

/* --- in a plan --- */

static tside_side electric(void)
{
    tside_side s;
    bench_side(&s);
    s.drive = strong_motor();
    s.drive.mass = 8;
    s.cable = copper(6e-6, 40);
    return s;
}

START_TEST(a_plan_tells_what_its_parts_tell)
{
    tside_side s = electric();
    tside_plan plan, old;
    tside_cranking cranking;
    tside_fault fault;
    s.crank.fitted = TSIDE_CRANK;
    s.crank.ratio = 5;
    ANSWERS(tside_plan_side(&s, &plan, &fault));
    ck_assert(plan.run_given && plan.cranking_given && plan.run.time_up_given);
    NEAR(plan.run.time_down,
         2 * PI * plan.drive_turns / (s.drive.no_load_speed * (22 - plan.run.resistance * 1.5) / 24), 1e-9, "time down",
         0);
    NEAR(plan.run.current_peak, 1.5 + (240 - 1.5) * plan.worst.drive / 4000, 1e-9, "peak", 0);
    ANSWERS(tside_crank_effort(&s.crank, plan.worst.drive, plan.drive_turns, &cranking, &fault));
    ck_assert(!memcmp(&cranking, &plan.cranking, sizeof cranking));
    s.drive.no_load_speed_given = 0;
    s.cable.wire = TSIDE_NO_CABLE;
    s.crank.fitted = TSIDE_NO_CRANK;
    ANSWERS(tside_plan_side(&s, &old, &fault));
    ck_assert(!old.run_given && !old.cranking_given && old.run.time_up == 0 && old.cranking.effort == 0);
    ck_assert(old.worst.drive == plan.worst.drive && old.drive_turns == plan.drive_turns);
}
END_TEST

/* --- the smallest drive --- */

/* 1 where it serves; else 0, and against what it fails; -1 where no plan can be made. */
static int serves(const tside_side *base, const tside_drive *drive, tside_finding *fails)
{
    static const tside_finding_code against[] = {TSIDE_FINDING_DRIVE_WEAK,  TSIDE_FINDING_STALLS,
                                                 TSIDE_FINDING_LIMIT_TURNS, TSIDE_FINDING_LONG_RUN,
                                                 TSIDE_FINDING_OVERLOAD,    TSIDE_FINDING_TURNS_BACK};
    tside_side tried = *base;
    tside_plan plan;
    tried.drive = *drive;
    if (tside_plan_side(&tried, &plan, NULL) != TSIDE_OK)
        return -1;
    for (size_t k = 0; k < sizeof against / sizeof *against; k++)
        for (int i = 0; i < plan.finding_count; i++)
            if (plan.findings[i].code == against[k]) {
                *fails = plan.findings[i];
                return 0;
            }
    return 1;
}

/* Each drive of a random list is planned by itself, and the smallest of those that serve picked by hand. */
FOR_SIDES(the_smallest_drive_is_what_trying_each_gives, 60)
{
    enum { DRIVES = 12 };
    dice d = {(uint64_t)number * 77 + 5};
    tside_side s = electric();
    tside_drive drives[DRIVES];
    tside_drive_choice choices[DRIVES];
    tside_fault fault;
    tside_finding against;
    int want = -1, got = -1;
    tside_status status;
    for (int i = 0; i < DRIVES; i++) {
        drives[i] = strong_motor();
        drives[i].rated_torque_given = 1;
        drives[i].rated_torque = floor(dice_between(&d, 2, 40)) * 2;
        drives[i].stall_torque = drives[i].rated_torque * dice_between(&d, 0.3, 4);
        drives[i].stall_current = 30;
        drives[i].mass = floor(dice_between(&d, 3, 15));
        drives[i].rated_run_given = dice_below(&d, 2);
        drives[i].rated_run = dice_between(&d, 60, 400);
        drives[i].limit_turns_given = dice_below(&d, 3) == 0;
        drives[i].limit_turns = dice_between(&d, 5, 30);
        drives[i].holds = dice_below(&d, 6) ? TSIDE_HOLDS_BY_ITSELF : TSIDE_HOLDS_NOT;
        if (dice_below(&d, 8) == 0)
            drives[i].stall_current = 1;
    }
    for (int i = 0; i < DRIVES; i++)
        if (serves(&s, drives + i, &against) == 1 &&
            (want < 0 || drives[i].rated_torque < drives[want].rated_torque ||
             (drives[i].rated_torque == drives[want].rated_torque && drives[i].mass < drives[want].mass)))
            want = i;
    s.drive.rated_torque = NAN; /* the side's own is not looked at */
    status = tside_drive_smallest(&s, drives, DRIVES, &got, choices, &fault);
    s.drive = drives[0];
    ck_assert_int_eq((int)status, (int)(want < 0 ? TSIDE_OUT_OF_REACH : TSIDE_OK));
    ck_assert_int_eq(got, want);
    for (int i = 0; i < DRIVES; i++) {
        int fit = serves(&s, drives + i, &against);
        tside_drive_fit expected = fit < 0     ? TSIDE_DRIVE_REFUSED
                                   : !fit      ? TSIDE_DRIVE_FAILS
                                   : i == want ? TSIDE_DRIVE_CHOSEN
                                               : TSIDE_DRIVE_LARGER;
        ck_assert_int_eq((int)choices[i].fit, (int)expected);
        ck_assert((choices[i].fit == TSIDE_DRIVE_REFUSED) == (choices[i].status != TSIDE_OK));
        if (choices[i].fit == TSIDE_DRIVE_LARGER)
            ck_assert(choices[i].value == drives[i].rated_torque && choices[i].bound == drives[want].rated_torque &&
                      choices[i].value >= choices[i].bound);
        if (choices[i].fit == TSIDE_DRIVE_FAILS) /* the plan's own numbers, to the last bit */
            ck_assert(choices[i].finding == against.code && choices[i].value == against.value &&
                      choices[i].bound == against.bound && against.value > against.bound);
    }
}

/* It may be unset: not a byte of it is asked. */
START_TEST(a_sides_own_drive_is_not_asked)
{
    tside_side s = electric();
    tside_drive drives[2] = {strong_motor(), strong_motor()};
    tside_drive_choice own[2], without[2];
    tside_fault fault;
    int index, again;
    drives[1].rated_torque = 0.1;
    ANSWERS(tside_drive_smallest(&s, drives, 2, &index, own, &fault));
    memset(&s.drive, 0xff, sizeof s.drive);
    ANSWERS(tside_drive_smallest(&s, drives, 2, &again, without, &fault));
    ck_assert(index == 0 && again == 0);
    ck_assert_mem_eq(own, without, sizeof own);
}
END_TEST

START_TEST(a_list_of_no_drives_is_refused)
{
    tside_side s = electric();
    tside_drive drive = strong_motor();
    tside_drive_choice choice;
    tside_fault fault;
    int index;
    REFUSES(tside_drive_smallest(&s, &drive, 0, &index, &choice, &fault), index, TSIDE_OUT_OF_BOUNDS, "count",
            TSIDE_BELOW);
    REFUSES(tside_drive_smallest(&s, &drive, 1001, &index, &choice, &fault), index, TSIDE_OUT_OF_BOUNDS, "count",
            TSIDE_ABOVE);
    drive.rated_torque = 0.1;
    REFUSES(tside_drive_smallest(&s, &drive, 1, &index, &choice, &fault), index, TSIDE_OUT_OF_REACH, "drives",
            TSIDE_NO_RELATION);
    ck_assert(choice.fit == TSIDE_DRIVE_FAILS && choice.finding == TSIDE_FINDING_DRIVE_WEAK && choice.bound == 0.1);
    drive = strong_motor();
    drive.rated_torque_given = 0; /* strong as it may be, nobody knows */
    REFUSES(tside_drive_smallest(&s, &drive, 1, &index, &choice, &fault), index, TSIDE_OUT_OF_REACH, "drives",
            TSIDE_NO_RELATION);
    ck_assert(choice.fit == TSIDE_DRIVE_REFUSED && choice.status == TSIDE_OUT_OF_BOUNDS);
    s.length = -1;
    REFUSES(tside_drive_smallest(&s, &drive, 1, &index, &choice, &fault), index, TSIDE_OUT_OF_BOUNDS, "length",
            TSIDE_NOT_ABOVE);
}
END_TEST

Suite *smallest_suite(void)
{
    Suite *suite = suite_create("smallest");
    TCase *tcase = tcase_create("smallest");
    tcase_add_test(tcase, gauges_are_as_printed);
    tcase_add_test(tcase, the_smallest_cable_keeps_the_drop_and_the_next_smaller_does_not);
    tcase_add_test(tcase, every_trade_size_is_found);
    tcase_add_test(tcase, the_greatest_length_is_accepted);
    tcase_add_test(tcase, arguments_of_a_cable_are_bounded);
    tcase_add_test(tcase, what_no_cable_keeps_is_refused);
    tcase_add_test(tcase, a_plan_tells_what_its_parts_tell);
    tcase_add_test(tcase, the_smallest_drive_is_what_trying_each_gives);
    tcase_add_test(tcase, a_sides_own_drive_is_not_asked);
    tcase_add_test(tcase, a_list_of_no_drives_is_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
