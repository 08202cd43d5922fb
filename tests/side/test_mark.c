/* SPDX-License-Identifier: MIT */
/* Marks: their letters, that no two pieces of a job have the same, and that each reads one way only. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <tunnelside.h>

#include "expect.h"
#include "takeoffs.h"

Suite *mark_suite(void);

static const char *letters_of(int place)
{
    static char letters[TSIDE_MARK_SIZE];
    tside_fault fault;
    ANSWERS(tside_mark_letters(place, letters, sizeof letters, NULL, &fault));
    return letters;
}

static const char *mark_of(int place, tside_item_code code, tside_item_at at, int number)
{
    static char mark[TSIDE_MARK_SIZE];
    tside_fault fault;
    ANSWERS(tside_mark_piece(place, code, at, number, mark, sizeof mark, NULL, &fault));
    return mark;
}

/* --- a side's letters --- */

START_TEST(letters_by_hand)
{
    const struct {
        int place;
        const char *letters;
    } want[] = {{1, "A"},   {2, "B"},   {8, "H"},   {9, "J"},   {13, "N"},  {14, "P"},  {15, "R"},  {23, "Z"},
                {24, "AA"}, {25, "AB"}, {26, "AC"}, {27, "AE"}, {28, "AG"}, {44, "AZ"}, {45, "BA"}, {506, "ZZ"}};
    for (size_t i = 0; i < sizeof want / sizeof *want; i++)
        ck_assert_str_eq(letters_of(want[i].place), want[i].letters);
}
END_TEST

/* Each place has letters of its own, which lead back to it, in small letters too. */
START_TEST(letters_lead_back)
{
    for (int place = 1; place <= TSIDE_MARK_PLACES; place++) {
        char letters[TSIDE_MARK_SIZE];
        tside_fault fault;
        int back = 0;
        strcpy(letters, letters_of(place));
        ck_assert_uint_eq(strcspn(letters, "IOQ"), strlen(letters));
        ANSWERS(tside_mark_place(letters, &back, &fault));
        ck_assert_int_eq(back, place);
        for (char *c = letters; *c; c++)
            *c = (char)(*c - 'A' + 'a');
        ANSWERS(tside_mark_place(letters, &back, NULL));
        ck_assert_int_eq(back, place);
    }
}
END_TEST

START_TEST(letters_refused)
{
    const struct {
        const char *letters;
        int index;
    } bad[] = {{"", 0},   {"I", 0},  {"o", 0},  {"Q1", 0}, {"1", 0},  {" A", 0},       {"\xc3\x84", 0},
               {"AD", 1}, {"Af", 1}, {"AI", 1}, {"A1", 1}, {"A ", 1}, {"ABC", 2},      {"AB ", 2},
               {"-", 0},  {"@", 0},  {"[", 0},  {"`", 0},  {"A{", 1}, {"ZZZZZZZZ", 2}, {"A\xff", 1}};
    char letters[TSIDE_MARK_SIZE] = "?";
    size_t needed = 9;
    int place = 0;
    tside_fault fault;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        REFUSES(tside_mark_place(bad[i].letters, &place, &fault), place, TSIDE_UNREADABLE, "letters",
                TSIDE_NO_RELATION);
        ck_assert_int_eq(fault.index, bad[i].index);
        ck_assert_int_eq(tside_mark_place(bad[i].letters, &place, NULL), TSIDE_UNREADABLE);
    }
    REFUSES(tside_mark_letters(0, letters, sizeof letters, &needed, &fault), letters, TSIDE_OUT_OF_BOUNDS, "place",
            TSIDE_BELOW);
    REFUSES(tside_mark_letters(TSIDE_MARK_PLACES + 1, letters, sizeof letters, &needed, &fault), letters,
            TSIDE_OUT_OF_BOUNDS, "place", TSIDE_ABOVE);
    ck_assert_uint_eq(needed, 9);
    REFUSES(tside_mark_letters(24, letters, 2, &needed, &fault), letters, TSIDE_TOO_SMALL, "size", TSIDE_NOT_ABOVE);
    ck_assert_uint_eq(needed, 2);
    ANSWERS(tside_mark_letters(24, letters, 3, &needed, &fault));
    ck_assert_str_eq(letters, "AA");
}
END_TEST

/* --- a piece's mark --- */

START_TEST(marks_by_hand)
{
    ck_assert_str_eq(mark_of(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 3), "AB3");
    ck_assert_str_eq(mark_of(1, TSIDE_ITEM_EXTENDER, TSIDE_AT_DRIVE_END, 1), "ADX1");
    ck_assert_str_eq(mark_of(2, TSIDE_ITEM_EXTENDER, TSIDE_AT_FREE_END, 1), "BFX1");
    ck_assert_str_eq(mark_of(4, TSIDE_ITEM_GUIDE, TSIDE_AT_DRIVE_END, 1), "DDG1");
    ck_assert_str_eq(mark_of(3, TSIDE_ITEM_CURTAIN, TSIDE_AT_SIDE, 1), "CC1");
    ck_assert_str_eq(mark_of(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 999), "AB999");
    ck_assert_str_eq(mark_of(24, TSIDE_ITEM_FLAP, TSIDE_AT_SIDE, 99), "AAL99");
    ck_assert_str_eq(mark_of(506, TSIDE_ITEM_CHAIN, TSIDE_AT_FREE_END, 9), "ZZFN9");
}
END_TEST

/* Whether a code is marked at a place, be it whichever. */
static int is_marked(int code, int at)
{
    char mark[TSIDE_MARK_SIZE];
    return tside_mark_piece(1, (tside_item_code)code, (tside_item_at)at, 1, mark, sizeof mark, NULL, NULL) == TSIDE_OK;
}

/* What a code's pieces are is marked either at the side or at both ends. */
START_TEST(each_kind_belongs_somewhere)
{
    int marked = 0;
    for (int code = 0; code < TSIDE_ITEM_CODES; code++) {
        const int side = is_marked(code, TSIDE_AT_SIDE), drive = is_marked(code, TSIDE_AT_DRIVE_END);
        ck_assert_int_eq(drive, is_marked(code, TSIDE_AT_FREE_END));
        ck_assert(!(side && drive));
        marked += side || drive;
    }
    ck_assert_int_eq(marked, 10);
    ck_assert(!is_marked(TSIDE_ITEM_CLIP, TSIDE_AT_SIDE) && !is_marked(TSIDE_ITEM_BOW_BOLT, TSIDE_AT_DRIVE_END));
}
END_TEST

static int by_text(const void *one, const void *other)
{
    return strcmp(*(const char *const *)one, *(const char *const *)other);
}

/* Every mark of every place, to number 9: at most five signs, of which none is misread, and none twice. */
START_TEST(no_mark_twice)
{
    enum { NUMBERS = 9, MOST = TSIDE_MARK_PLACES * 16 * NUMBERS };
    char(*marks)[TSIDE_MARK_SIZE] = malloc(MOST * sizeof *marks);
    const char **sorted = malloc(MOST * sizeof *sorted);
    int count = 0;
    ck_assert(marks && sorted);
    for (int place = 1; place <= TSIDE_MARK_PLACES; place++)
        for (int code = 0; code < TSIDE_ITEM_CODES; code++)
            for (int at = TSIDE_AT_SIDE; at <= TSIDE_AT_FREE_END; at++)
                for (int number = 1; is_marked(code, at) && number <= NUMBERS; number++) {
                    ck_assert_int_lt(count, MOST);
                    strcpy(marks[count], mark_of(place, (tside_item_code)code, (tside_item_at)at, number));
                    ck_assert_uint_le(strlen(marks[count]), 5);
                    ck_assert_uint_eq(strcspn(marks[count], "IOQ"), strlen(marks[count]));
                    ck_assert_uint_eq(strspn(marks[count], "ABCDEFGHJKLMNPRSTUVWXYZ123456789"), strlen(marks[count]));
                    sorted[count] = marks[count];
                    count++;
                }
    ck_assert_int_eq(count, TSIDE_MARK_PLACES * (5 + 2 * 5) * NUMBERS);
    qsort(sorted, (size_t)count, sizeof *sorted, by_text);
    for (int i = 1; i < count; i++)
        ck_assert_str_ne(sorted[i - 1], sorted[i]);
    free(sorted);
    free(marks);
}
END_TEST

START_TEST(marks_refused)
{
    char mark[TSIDE_MARK_SIZE] = "?";
    size_t needed = 9;
    tside_fault fault;
#define PIECE(place, code, at, number, size) tside_mark_piece(place, code, at, number, mark, size, &needed, &fault)
    REFUSES(PIECE(0, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "place", TSIDE_BELOW);
    REFUSES(PIECE(507, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "place", TSIDE_ABOVE);
    REFUSES(PIECE(1, (tside_item_code)-1, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "code", TSIDE_NOT_ONE_OF);
    REFUSES(PIECE(1, TSIDE_ITEM_CODES, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "code", TSIDE_NOT_ONE_OF);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, (tside_item_at)-1, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "at", TSIDE_NOT_ONE_OF);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, (tside_item_at)3, 1, 6), mark, TSIDE_OUT_OF_BOUNDS, "at", TSIDE_NOT_ONE_OF);
    REFUSES(PIECE(1, TSIDE_ITEM_CLIP, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_NOT_FOUND, "code", TSIDE_NO_RELATION);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, TSIDE_AT_FREE_END, 1, 6), mark, TSIDE_CONTRADICTS, "at", TSIDE_NO_RELATION);
    REFUSES(PIECE(1, TSIDE_ITEM_GUIDE, TSIDE_AT_SIDE, 1, 6), mark, TSIDE_CONTRADICTS, "at", TSIDE_NO_RELATION);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 0, 6), mark, TSIDE_OUT_OF_BOUNDS, "number", TSIDE_BELOW);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 1000, 6), mark, TSIDE_OUT_OF_BOUNDS, "number", TSIDE_ABOVE);
    ck_assert_double_eq(fault.bound, 999);
    REFUSES(PIECE(24, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 100, 6), mark, TSIDE_OUT_OF_BOUNDS, "number", TSIDE_ABOVE);
    ck_assert_double_eq(fault.bound, 99);
    REFUSES(PIECE(1, TSIDE_ITEM_GUIDE, TSIDE_AT_FREE_END, 100, 6), mark, TSIDE_OUT_OF_BOUNDS, "number", TSIDE_ABOVE);
    ck_assert_double_eq(fault.bound, 99);
    REFUSES(PIECE(24, TSIDE_ITEM_GUIDE, TSIDE_AT_FREE_END, 10, 6), mark, TSIDE_OUT_OF_BOUNDS, "number", TSIDE_ABOVE);
    ck_assert_double_eq(fault.bound, 9);
    ck_assert_uint_eq(needed, 9);
    REFUSES(PIECE(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 12, 4), mark, TSIDE_TOO_SMALL, "size", TSIDE_NOT_ABOVE);
    ck_assert_uint_eq(needed, 4);
    ANSWERS(PIECE(1, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 12, 5));
    ck_assert_str_eq(mark, "AB12");
#undef PIECE
}
END_TEST

/* --- the take-off's numbers --- */

/*
 * The stocked side: four whole sticks and the last; channel in fourteen whole lengths, which are not cut, one rest and
 * one up each flap.
 */
START_TEST(a_side_by_hand)
{
    const struct {
        tside_item_code code;
        int at, count, number;
    } want[] = {
        {TSIDE_ITEM_CURTAIN, TSIDE_AT_SIDE, 1, 1},    {TSIDE_ITEM_FLAP, TSIDE_AT_SIDE, 2, 1},
        {TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 4, 1},        {TSIDE_ITEM_BAR, TSIDE_AT_SIDE, 1, 5},
        {TSIDE_ITEM_GUIDE, TSIDE_AT_DRIVE_END, 1, 1}, {TSIDE_ITEM_CHAIN, TSIDE_AT_DRIVE_END, 1, 1},
        {TSIDE_ITEM_EYE, TSIDE_AT_DRIVE_END, 1, 1},   {TSIDE_ITEM_EXTENDER, TSIDE_AT_DRIVE_END, 1, 1},
        {TSIDE_ITEM_GUIDE, TSIDE_AT_FREE_END, 1, 1},  {TSIDE_ITEM_CHAIN, TSIDE_AT_FREE_END, 1, 1},
        {TSIDE_ITEM_EYE, TSIDE_AT_FREE_END, 1, 1},    {TSIDE_ITEM_EXTENDER, TSIDE_AT_FREE_END, 1, 1},
        {TSIDE_ITEM_CHANNEL, TSIDE_AT_SIDE, 1, 1},    {TSIDE_ITEM_CHANNEL, TSIDE_AT_SIDE, 2, 2},
        {TSIDE_ITEM_ROPE, TSIDE_AT_SIDE, 1, 1},       {TSIDE_ITEM_CORD, TSIDE_AT_DRIVE_END, 1, 1},
    };
    const int count = (int)(sizeof want / sizeof *want);
    tside_side side = stocked();
    tside_fittings fittings = usual();
    taken t;
    int next = 0;
    side.ropes = TSIDE_ROPES;
    fittings.cord_given = 1;
    fittings.cord = 12;
    t = take(&side, &fittings);
    for (int i = 0; i < t.count; i++) {
        const tside_item *got = t.item + i;
        if (!got->first_number)
            continue;
        ck_assert_int_lt(next, count);
        if (got->code != want[next].code || (int)got->at != want[next].at || got->count != want[next].count ||
            got->first_number != want[next].number)
            ck_abort_msg("line %d: %s, at %d: %d from %d on", i, tside_item_text((int)got->code), (int)got->at,
                         got->count, got->first_number);
        next++;
    }
    ck_assert_int_eq(next, count);
    ck_assert(line_of(&t, TSIDE_ITEM_CHANNEL)->count == 14 && !line_of(&t, TSIDE_ITEM_CHANNEL)->first_number);
}
END_TEST

/* A flap as long as channel is sold takes it whole, though its length has other last digits: it is not cut. */
START_TEST(a_whole_length_is_not_cut)
{
    for (int sign = -1; sign <= 1; sign++) {
        tside_side side = stocked();
        tside_fittings fittings = usual();
        taken t = take(&side, &fittings);
        int whole = 0;
        fittings.channel_stock = line_of(&t, TSIDE_ITEM_FLAP)->length + sign * 1e-12;
        t = take(&side, &fittings);
        for (int i = 0; i < t.count; i++) {
            const tside_item *got = t.item + i;
            if (got->code == TSIDE_ITEM_CHANNEL && fabs(got->length - fittings.channel_stock) < 1e-11) {
                ck_assert_int_eq(got->first_number, 0);
                whole += got->count;
            }
        }
        ck_assert_int_eq(whole, (int)(side.length / fittings.channel_stock) + fittings.end_flaps);
    }
}
END_TEST

/* A line is numbered where its pieces have marks, and only there; a bar's numbers are its sticks in order. */
START_TEST(numbers_are_of_what_is_marked)
{
    dice d = {11};
    for (int n = 0; n < 60; n++) {
        tside_side side = stocked();
        tside_fittings fittings = usual();
        taken t;
        int next = 1;
        side.length = dice_between(&d, 5, 60);
        side.bar.stock = dice_between(&d, 2, 8);
        fittings.channel_stock = dice_between(&d, 0.5, 4);
        fittings.end_flaps = dice_below(&d, 3);
        t = take(&side, &fittings);
        for (int i = 0; i < t.count; i++) {
            const tside_item *got = t.item + i;
            const int uncut = got->code == TSIDE_ITEM_CHANNEL && got->length > fittings.channel_stock - 1e-9;
            ck_assert_int_eq(got->first_number > 0, !uncut && is_marked((int)got->code, (int)got->at));
            if (got->code == TSIDE_ITEM_BAR) {
                ck_assert_int_eq(got->first_number, next);
                next += got->count;
            }
        }
        ck_assert_int_eq(next, planned(&side).splices + 2);
    }
}
END_TEST

Suite *mark_suite(void)
{
    Suite *suite = suite_create("mark");
    TCase *tcase = tcase_create("mark");
    tcase_add_test(tcase, letters_by_hand);
    tcase_add_test(tcase, letters_lead_back);
    tcase_add_test(tcase, letters_refused);
    tcase_add_test(tcase, marks_by_hand);
    tcase_add_test(tcase, each_kind_belongs_somewhere);
    tcase_add_test(tcase, no_mark_twice);
    tcase_add_test(tcase, marks_refused);
    tcase_add_test(tcase, a_side_by_hand);
    tcase_add_test(tcase, a_whole_length_is_not_cut);
    tcase_add_test(tcase, numbers_are_of_what_is_marked);
    suite_add_tcase(suite, tcase);
    return suite;
}
