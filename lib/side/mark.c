/* SPDX-License-Identifier: MIT */
/*
 * Marks. A letter that reads as a digit is none of them; the second letter of a side is none that tells an end, and no
 * kind is both an end's and a side's, so that a mark reads one way only.
 */
#include "side/mark.h"

#include "base/field.h"
#include "base/number.h"

static const char first_letters[] = "ABCDEFGHJKLMNPRSTUVWXYZ", second_letters[] = "ABCEGHJKLMNPRSTUVWXYZ";
enum { FIRST = sizeof first_letters - 1, SECOND = sizeof second_letters - 1, SIGNS = TSIDE_MARK_SIZE - 1 };

char tside_i_mark_kind(tside_item_code code)
{
    switch (code) {
    case TSIDE_ITEM_CURTAIN: return 'C';
    case TSIDE_ITEM_FLAP: return 'L';
    case TSIDE_ITEM_BAR: return 'B';
    case TSIDE_ITEM_GUIDE: return 'G';
    case TSIDE_ITEM_CHAIN: return 'N';
    case TSIDE_ITEM_EYE: return 'E';
    case TSIDE_ITEM_EXTENDER: return 'X';
    case TSIDE_ITEM_CHANNEL: return 'H';
    case TSIDE_ITEM_ROPE: return 'R';
    case TSIDE_ITEM_CORD: return 'K';
    default: return 0;
    }
}

/* --- a side's letters --- */

static tside_status check_place(int place, tside_fault *fault)
{
    return tside_i_whole(fault, "place", place, 1, TSIDE_MARK_PLACES);
}

static void put_letters(tside_i_text *text, int place)
{
    const int pair = place - 1 - FIRST;
    if (pair < 0) {
        tside_i_put_character(text, first_letters[place - 1]);
        return;
    }
    tside_i_put_character(text, first_letters[pair / SECOND]);
    tside_i_put_character(text, second_letters[pair % SECOND]);
}

tside_status tside_mark_letters(int place, char *buffer, size_t size, size_t *needed, tside_fault *fault)
{
    char whole[TSIDE_MARK_SIZE];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    TRY(check_place(place, fault));
    put_letters(&text, place);
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}

/* Which of these letters it is, from 0, in capitals or not; -1 where it is none. */
static int index_of(const char *letters, char letter)
{
    const char capital = letter >= 'a' && letter <= 'z' ? (char)(letter - 'a' + 'A') : letter;
    for (int i = 0; letters[i]; i++)
        if (letters[i] == capital)
            return i;
    return -1;
}

static tside_status unreadable(tside_fault *fault, int index, const char *reason)
{
    (void)tside_i_refuse(fault, TSIDE_UNREADABLE, "letters", "", reason);
    if (fault)
        fault->index = index;
    return TSIDE_UNREADABLE;
}

tside_status tside_mark_place(const char *letters, int *place, tside_fault *fault)
{
    const int first = index_of(first_letters, letters[0]);
    int second;
    if (first < 0)
        return unreadable(fault, 0, "a side's mark begins with a letter from A to Z, not I, O or Q");
    if (!letters[1]) {
        *place = first + 1;
        return TSIDE_OK;
    }
    second = index_of(second_letters, letters[1]);
    if (second < 0)
        return unreadable(fault, 1, "the second letter of a side's mark is one from A to Z, not D, F, I, O or Q");
    if (letters[2])
        return unreadable(fault, 2, "a side's mark has at most two letters");
    *place = 1 + FIRST + first * SECOND + second;
    return TSIDE_OK;
}

/* --- a piece's mark --- */

static tside_status check_piece(tside_item_code code, tside_item_at at, tside_fault *fault)
{
    int of_end;
    if ((int)code < 0 || code >= TSIDE_ITEM_CODES)
        return tside_i_bound(fault, "code", "1", (int)code, TSIDE_NOT_ONE_OF, TSIDE_ITEM_CODES - 1);
    if ((int)at < TSIDE_AT_SIDE || at > TSIDE_AT_FREE_END)
        return tside_i_bound(fault, "at", "1", (int)at, TSIDE_NOT_ONE_OF, TSIDE_AT_FREE_END);
    if (!tside_i_mark_kind(code))
        return tside_i_refuse(fault, TSIDE_NOT_FOUND, "code", "", "such pieces are counted, and carry no mark");
    of_end = code == TSIDE_ITEM_GUIDE || code == TSIDE_ITEM_CHAIN || code == TSIDE_ITEM_EYE ||
             code == TSIDE_ITEM_EXTENDER || code == TSIDE_ITEM_CORD;
    if (of_end == (at == TSIDE_AT_SIDE))
        return tside_i_refuse(fault, TSIDE_CONTRADICTS, "at", "code",
                              of_end ? "such a piece belongs to an end of the side"
                                     : "such a piece belongs to no end of the side");
    return TSIDE_OK;
}

/* The greatest number of so many digits. */
static int greatest(size_t digits)
{
    int number = 1;
    while (digits--)
        number *= 10;
    return number - 1;
}

tside_status tside_mark_piece(int place, tside_item_code code, tside_item_at at, int number, char *buffer, size_t size,
                              size_t *needed, tside_fault *fault)
{
    char whole[TSIDE_MARK_SIZE];
    tside_i_text text = tside_i_empty(whole, sizeof whole);
    TRY(check_place(place, fault));
    TRY(check_piece(code, at, fault));
    put_letters(&text, place);
    if (at != TSIDE_AT_SIDE)
        tside_i_put_character(&text, at == TSIDE_AT_DRIVE_END ? 'D' : 'F');
    tside_i_put_character(&text, tside_i_mark_kind(code));
    TRY(tside_i_whole(fault, "number", number, 1, greatest(SIGNS - text.length)));
    tside_i_put_whole(&text, (uint64_t)number);
    return tside_i_answer_text(whole, buffer, size, needed, fault);
}
