/* SPDX-License-Identifier: MIT */
/* One stick in hand: cut the fullest way, by hand and against all ways, and every refusal. */
#include <check.h>
#include <math.h>
#include <time.h>

#include <tunnelside.h>

#include "cuts.h"

Suite *stick_suite(void);

/* How many pieces of each cut the fullest way takes, as a number of digits. */
static int filled(double kerf, double trim, double length, const double *lengths, const int *counts, tside_stick *stick)
{
    const cut_order order = cut_order_of(kerf, trim, LIST(6), lengths, counts);
    tside_cut given[8];
    int digits = 0;
    tside_fault fault;
    ANSWERS(tside_stock_fill(&order.stock, length, order.cuts, order.cut_count, given, stick, &fault));
    for (int i = 0; i < order.cut_count; i++) {
        ck_assert(given[i].length == order.cuts[i].length);
        digits = 10 * digits + given[i].count;
    }
    return digits;
}

START_TEST(a_stick_in_hand_by_hand)
{
    tside_stick stick;
    /* 4 first would leave 1; 3 + 2 leaves nothing */
    ck_assert_int_eq(filled(0, 0, 5, LIST(4, 3, 2), COUNTS(1, 1, 1), &stick), 11);
    ck_assert(stick.pieces == 2 && stick.count == 1 && stick.offcut == 0);
    NEAR(stick.used, 5, 1e-12, "used", 0);
    /* no more than are asked for; of as full ways the one with the longest piece */
    ck_assert_int_eq(filled(0, 0, 4, LIST(1, 2, 3), COUNTS(9, 9, 1), &stick), 101);
    ck_assert_int_eq(filled(0, 0, 4, LIST(1.5, 1.5), COUNTS(1, 5), &stick), 11);
    NEAR(stick.offcut, 1, 1e-12, "left", 0);
    /* 2 x 2 m, a kerf of 3 mm between them and once more behind, 10 mm of trim */
    ck_assert_int_eq(filled(0.003, 0.01, 4.5, LIST(2), COUNTS(5), &stick), 2);
    NEAR(stick.used, 4.003, 1e-12, "used", 0);
    NEAR(stick.offcut, 4.5 - 0.01 - 4.003 - 0.003, 1e-12, "left", 0);
    ck_assert_int_eq(filled(0.003, 0.01, 4.013, LIST(2), COUNTS(5), &stick), 2);
    ck_assert_int_eq(filled(0.003, 0.01, 4.0129, LIST(2), COUNTS(5), &stick), 1);
    /* nothing fits, nothing is asked for, nothing but trim */
    ck_assert_int_eq(filled(0, 0, 1.9, LIST(2, 3), COUNTS(1, 1), &stick), 0);
    ck_assert(stick.pieces == 0 && stick.used == 0 && stick.offcut == 1.9);
    ck_assert_int_eq(filled(0, 0, 5, LIST(2), COUNTS(0), &stick), 0);
    ck_assert_int_eq(filled(0, 1, 0.5, LIST(0.2), COUNTS(1), &stick), 0);
}
END_TEST

/* The fullest of all ways, by trying each. */
static double least_left(const tside_cut *cuts, int count, double room)
{
    double least = room;
    if (!count)
        return room;
    for (int k = 0; k <= cuts->count && k * cuts->length <= room + 1e-9; k++)
        least = fmin(least, least_left(cuts + 1, count - 1, room - k * cuts->length));
    return least;
}

/* Two pieces that together are as long as the stick: in doubles 0.1 + 0.2 > 0.3, and 0.3 - 0.2 < 0.1. */
START_TEST(a_stick_in_hand_is_just_filled)
{
    for (int i = 1; i < 30; i++)
        for (int j = i + 1; j < 40; j++) {
            tside_stick stick;
            ck_assert_int_eq(filled(0, 0, (i + j) / 10.0, LIST(i / 10.0, j / 10.0), COUNTS(1, 1), &stick), 11);
            ck_assert(stick.pieces == 2 && stick.offcut == 0);
        }
}
END_TEST

START_TEST(a_stick_in_hand_is_cut_the_fullest_way)
{
    dice d = {17};
    for (int n = 0; n < 300; n++) {
        cut_order order = cut_order_invented(&d, 1, 4);
        const double length = dice_between(&d, 1, 6);
        double used = 0;
        tside_cut given[16];
        int pieces = 0;
        tside_stick stick;
        tside_fault fault;
        order.stock.kerf = order.stock.trim = 0;
        order.cut_count = order.cut_count < 6 ? order.cut_count : 6;
        ANSWERS(tside_stock_fill(&order.stock, length, order.cuts, order.cut_count, given, &stick, &fault));
        for (int i = 0; i < order.cut_count; i++) {
            ck_assert(given[i].count >= 0 && given[i].count <= order.cuts[i].count);
            used += given[i].count * given[i].length;
            pieces += given[i].count;
        }
        ck_assert_int_eq(pieces, stick.pieces);
        NEAR(used, stick.used, 1e-9, "used", n);
        NEAR(length - used, least_left(order.cuts, order.cut_count, length), 2e-9, "left", n);
    }
}
END_TEST

/* Many lengths, none of which fill the stick: it ends, with a way that fits. */
START_TEST(a_stick_in_hand_takes_no_forever)
{
    static tside_cut cuts[TSIDE_STOCK_CUTS];
    static tside_cut given[TSIDE_STOCK_CUTS];
    tside_stock stock;
    tside_stick stick;
    tside_fault fault;
    tside_usual(TSIDE_KIND_STOCK, &stock);
    for (int i = 0; i < TSIDE_STOCK_CUTS; i++)
        cuts[i] = (tside_cut){0.0101 + 0.00007 * i, 3};
    ANSWERS(tside_stock_fill(&stock, 299.9999, cuts, TSIDE_STOCK_CUTS, given, &stick, &fault));
    ck_assert(stick.used <= 299.9999 + 1e-9 && stick.used > 60);
    for (int i = 0; i < 30; i++)
        cuts[i] = (tside_cut){2 + 0.02 * i, 9};
    ANSWERS(tside_stock_fill(&stock, 99.991, cuts, 30, given, &stick, &fault));
    ck_assert(stick.used <= 99.991 + 1e-9 && stick.used > 97);
}
END_TEST

/* Of two ways that leave as much but for their last digits, the one with the longest piece: both leave 50 mm. */
START_TEST(as_full_ways_differ_by_no_digits)
{
    for (int a = 12; a < 30; a++)
        for (int b = 10; b < a; b++)
            for (int c = 9; c < b; c++) {
                const int d = b + c - a;
                tside_stick stick;
                if (d > 0 && d < c)
                    ck_assert_int_eq(filled(0, 0, (b + c) / 10.0 + 0.05, LIST(a / 10.0, b / 10.0, c / 10.0, d / 10.0),
                                            COUNTS(1, 1, 1, 1), &stick),
                                     1001);
            }
}
END_TEST

/*
 * Nothing is looked for once a stick is full, though the last digits of 29 pieces leave something: to look at all ways
 * takes ten milliseconds or so for each of these sticks.
 */
START_TEST(a_full_stick_is_done_with)
{
    const clock_t start = clock();
    for (int n = 0; n < 500; n++) {
        const tside_stock stock = {.length_count = 1, .lengths = {{6}}};
        tside_cut cuts[30], given[30];
        tside_stick stick;
        tside_fault fault;
        double length = 0;
        for (int i = 0; i < 30; i++) {
            cuts[i] = (tside_cut){(100 - i) / 100.0 + n / 1000.0, 1};
            length += i < 29 ? cuts[i].length : 0;
        }
        ANSWERS(tside_stock_fill(&stock, length + 2e-10, cuts, 30, given, &stick, &fault));
        ck_assert(stick.pieces == 29 && stick.offcut == 0);
    }
    ck_assert_msg(clock() - start < CLOCKS_PER_SEC, "%g s", (double)(clock() - start) / CLOCKS_PER_SEC);
}
END_TEST

/*
 * What is left counts from a nanometre on, as a sum over by no more still fits. Derivation: a kerf that is a nanometre
 * short of what the piece leaves; of numbers so near to each other a double has the difference exactly.
 */
START_TEST(what_is_left_counts_from_a_nanometre_on)
{
    for (int i = 0; i < 200; i++) {
        const double beside = ldexp(9007200 + 40000 * i, -53), kerf = beside - 1e-9; /* up to 2e-9 m */
        tside_stick stick;
        ck_assert(beside - kerf == 1e-9);
        ck_assert_int_eq(filled(kerf, 0, 0.5 + beside, LIST(0.5), COUNTS(1), &stick), 1);
        ck_assert_msg(stick.offcut == 1e-9, "stick %d: %g m are left", i, stick.offcut);
        ck_assert_int_eq(filled(kerf + 1e-22, 0, 0.5 + beside, LIST(0.5), COUNTS(1), &stick), 1);
        ck_assert_msg(stick.offcut == 0, "stick %d: %g m are left", i, stick.offcut);
    }
}
END_TEST

START_TEST(a_stick_in_hand_is_refused)
{
    cut_order order = cut_order_of(0, 0, LIST(6), LIST(2, 3), COUNTS(1, 1));
    tside_cut given[2] = {{7, 7}, {7, 7}};
    tside_stick stick = {.count = 7};
    tside_fault fault;
#define FILL(length, count) tside_stock_fill(&order.stock, length, order.cuts, count, given, &stick, &fault)
    REFUSES(FILL(0.009, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_BELOW);
    REFUSES(FILL(301, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_ABOVE);
    REFUSES(FILL(NAN, 2), stick, TSIDE_OUT_OF_BOUNDS, "length", TSIDE_NOT_FINITE);
    REFUSES(FILL(5, -1), stick, TSIDE_OUT_OF_BOUNDS, "cut_count", TSIDE_BELOW);
    REFUSES(FILL(5, TSIDE_STOCK_CUTS + 1), stick, TSIDE_OUT_OF_BOUNDS, "cut_count", TSIDE_ABOVE);
    order.cuts[1].length = 0;
    REFUSES(FILL(5, 2), stick, TSIDE_OUT_OF_BOUNDS, "cuts[1].length", TSIDE_BELOW);
    ck_assert_int_eq(fault.index, 1);
    order.stock.kerf = -1;
    REFUSES(FILL(5, 2), stick, TSIDE_OUT_OF_BOUNDS, "stock.kerf", TSIDE_BELOW);
    ck_assert(given[0].count == 7 && given[1].count == 7);
#undef FILL
}
END_TEST

Suite *stick_suite(void)
{
    Suite *suite = suite_create("stick");
    TCase *tcase = tcase_create("stick");
    tcase_add_test(tcase, a_stick_in_hand_by_hand);
    tcase_add_test(tcase, a_stick_in_hand_is_just_filled);
    tcase_add_test(tcase, a_stick_in_hand_is_cut_the_fullest_way);
    tcase_add_test(tcase, a_stick_in_hand_takes_no_forever);
    tcase_add_test(tcase, as_full_ways_differ_by_no_digits);
    tcase_add_test(tcase, a_full_stick_is_done_with);
    tcase_add_test(tcase, what_is_left_counts_from_a_nanometre_on);
    tcase_add_test(tcase, a_stick_in_hand_is_refused);
    suite_add_tcase(suite, tcase);
    return suite;
}
