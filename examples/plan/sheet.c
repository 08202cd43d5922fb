/* SPDX-License-Identifier: MIT */
#include "sheet.h"

void put_quantity(sheet *s, const char *label, double value, const char *unit)
{
    put_row(&s->paper, label, quantity(&s->pen, value, unit));
}

void put_ends_titles(sheet *s)
{
    const char *const titles[] = {"", end_name(TSIDE_DRIVE_END), end_name(TSIDE_FREE_END)};
    put_columns(&s->paper, NULL, 2 | 4, 0, 3, titles);
}

void put_ends(sheet *s, const char *label, const char *drive, const char *free)
{
    const char *const cells[] = {label, drive, free};
    put_cells(&s->paper, 3, cells);
}

void put_caution_of(sheet *s, caution which)
{
    put_caution(&s->paper, caution_text(which));
}

/* --- the card --- */

static void put_job(sheet *s)
{
    const request *wanted = &s->side->wanted;
    if (!wanted->of)
        return;
    put_fact(&s->paper, "JOB", "%s, side %d of %d", *wanted->job ? wanted->job : "without a name", wanted->number,
             wanted->of);
}

static void put_side(sheet *s)
{
    const request *wanted = &s->side->wanted;
    put_job(s);
    put_fact(&s->paper, "SIDE", "%s", side_name(s->side));
    if (wanted->of && *wanted->job_note)
        put_fact(&s->paper, "", "%s", wanted->job_note);
    if (*wanted->note)
        put_fact(&s->paper, "", "%s", wanted->note);
    put_fact(&s->paper, "DRIVE", "%s", *wanted->drive_at ? wanted->drive_at : "end not named");
    put_caution_of(s, CAUTION_CERTIFICATE);
}

static void put_hand(sheet *s, int end)
{
    text words = {NULL, 0, 0};
    add_hand(&words, s->side, end);
    put_fact(&s->paper, "HAND", "%s", text_of(&words));
    text_free(&words);
}

static void put_end_page(sheet *s, int end)
{
    put_page(&s->paper, end == TSIDE_FREE_END ? "CARD, free end" : "CARD, drive's end", side_name(s->side));
    if (end == TSIDE_DRIVE_END)
        put_side(s);
    put_hand(s, end);
    if (end == TSIDE_DRIVE_END)
        put_stops(s);
    else
        put_whether_it_stops(s);
    put_end_pieces(s, end);
    put_tools(s, end);
    put_set_out(s, end);
    if (s->drawn)
        put_end_drawings(s, end);
}

static void put_side_page(sheet *s)
{
    put_page(&s->paper, "CARD, the side", side_name(s->side));
    put_whether_it_stops(s);
    put_side_pieces(s);
    put_hanging(s);
    if (s->drawn)
        put_side_drawings(s);
}

static void put_annex(sheet *s)
{
    const request *wanted = &s->side->wanted;
    put_page(&s->paper, "ANNEX", side_name(s->side));
    if (wanted->of > 1 && *wanted->shares)
        put_words(&s->paper, "Shared by both sides, but for what a side gives itself: %s.", wanted->shares);
    put_words(&s->paper, "Grade is where the file's heights begin.");
    put_hanging_tools(s);
    put_known(s);
    put_bow(s);
    put_along(s);
    put_keep_outs(s);
    put_travel(s);
    put_torque(s);
    put_electric(s);
    put_air(s);
    put_wind(s);
    put_strength(s);
    put_searches(s);
    put_drives(s);
    put_assumed(s);
    put_turns(s);
    if (s->drawn)
        put_figures(s);
}

static paper sheet_of(const planned *side, int us, int drawn)
{
    sheet s = {.side = side, .pen = {.us = us}, .drawn = drawn};
    for (int end = 0; end < ENDS; end++)
        put_end_page(&s, end);
    put_side_page(&s);
    put_annex(&s);
    return s.paper;
}

int in_us(units wanted, const planned *side)
{
    return wanted == AS_THE_FILE ? side->wanted.in_feet : wanted == US;
}

papers sheets_of_all(const work *all, units wanted, int drawn)
{
    papers sheets = {NULL, 0, 0};
    for (size_t i = 0; i < all->count; i++) {
        const planned *side = all->sides[i];
        const int us = in_us(wanted, side);
        if (!is_planned(side))
            continue;
        papers_add(&sheets, sheet_of(side, us, drawn));
        if (side->wanted.of == 2 && side->wanted.number == 2 && is_planned(all->sides[i - 1]))
            papers_add(&sheets, job_pieces_of(all->sides + i - 1, 2, us));
    }
    return sheets;
}
