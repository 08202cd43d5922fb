/* SPDX-License-Identifier: MIT */
/* What is cut and drilled. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "mark.h"
#include "memory.h"
#include "print.h"
#include "sheet.h"

enum { MOST_PIECES = 9, MOST_JOINTS = 8 }; /* a bar is of three lengths at most; more joints are told in short */

/* A piece as it is printed: two that print alike, but for their marks, are alike. */
typedef struct piece {
    char marks[160], name[40], tube[48], length[32];
    char holes[320]; /* where it is drilled, or joined; "" without any */
    int count;
} piece;

static void add_mark(const planned *side, piece *made, tside_item_code code, tside_item_at at, int number)
{
    char mark[TSIDE_MARK_SIZE];
    const size_t length = strlen(made->marks);
    snprintf(made->marks + length, sizeof made->marks - length, "%s%s", length ? ", " : "",
             piece_mark(side, code, at, number, mark));
}

static void put_round(pen *p, piece *made, const char *name, const tside_round *tube, double length)
{
    *made = (piece){.count = 1};
    snprintf(made->name, sizeof made->name, "%s", name);
    snprintf(made->tube, sizeof made->tube, "%s round", cross_section(p, tube->diameter, tube->wall));
    snprintf(made->length, sizeof made->length, "%s", tape(p, length));
}

/* Running measures along one piece: the unit stands once. */
static void write_holes(pen *p, const tside_extender *asked, const tside_layout *layout, char *words, size_t size)
{
    snprintf(words, size, "holes from the top end, %s: eye %s, bow %s, member %s; drilled %s, the bolts' %s",
             p->us ? "in" : "mm", tape_number(p, layout->eye_from_top), tape_number(p, layout->bow_from_top),
             tape_number(p, layout->member_from_top), bore_number(p, asked->eye_hole),
             bore_number(p, asked->bolt_hole));
}

static void put_extender(pen *p, piece *made, const planned *side, int end)
{
    const tside_extender *asked = &end_asked(side, end)->extender;
    const tside_layout *layout = &end_answered(side, end)->layout;
    *made = (piece){.count = 1};
    snprintf(made->name, sizeof made->name, "Extender, %s", hand_name(hand_at(side, end)));
    snprintf(made->tube, sizeof made->tube, "%s square", cross_section(p, asked->tube.side, asked->tube.wall));
    snprintf(made->length, sizeof made->length, "%s", tape(p, layout->cut_length));
    write_holes(p, asked, layout, made->holes, sizeof made->holes);
    add_mark(side, made, TSIDE_ITEM_EXTENDER, place_of_end(end), 1);
}

/* --- the bar, from stock or not --- */

/* Where the joints begin, from the drive's centre. */
static void write_joints(pen *p, const tside_bar *bar, const tside_bar_stick *stick, int count, char *words,
                         size_t size)
{
    size_t at = (size_t)snprintf(words, size, "%d joint%s of %s, beginning at ", count - 1, count > 2 ? "s" : "",
                                 tape(p, bar->swage));
    if (count - 1 > MOST_JOINTS)
        at += (size_t)snprintf(words + at, size - at, "%s, every %s from there, and %s", tape(p, stick[1].from),
                               tape(p, stick[1].from), tape(p, stick[count - 1].from));
    else
        for (int i = 1; i < count; i++)
            at += (size_t)snprintf(words + at, size - at, "%s%s", i > 1 ? ", " : "", tape(p, stick[i].from));
    snprintf(words + at, size - at,
             " from the drive's centre; %d screws each side; sticks in this order from the drive", bar->screws);
}

/* The sticks of a piece, numbered from the drive. */
static void mark_sticks(const planned *side, piece *made, int first)
{
    char one[TSIDE_MARK_SIZE], other[TSIDE_MARK_SIZE];
    snprintf(made->marks, sizeof made->marks, "%s%s%s", piece_mark(side, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, first, one),
             made->count > 1 ? " to " : "",
             made->count > 1 ? piece_mark(side, TSIDE_ITEM_BAR, TSIDE_AT_SIDE, first + made->count - 1, other) : "");
}

/* Sticks of one length together, in their order from the drive; returns how many lengths. */
static int put_sticks(pen *p, const planned *side, piece *list)
{
    const tside_bar *bar = &side->wanted.side.bar;
    const double curtain = side->plan.curtain_length, drive = side->plan.bar_beyond_drive,
                 free_end = side->plan.bar_beyond_free;
    tside_bar_stick *stick;
    tside_fault fault;
    int count = 0, kinds = 0;
    if (tside_bar_sticks(bar, curtain, drive, free_end, NULL, 0, &count, &fault) !=
        TSIDE_TOO_SMALL) /* it then told how many */
        count = 0;
    stick = take_memory((size_t)count * sizeof *stick);
    must(tside_bar_sticks(bar, curtain, drive, free_end, stick, count, &count, &fault), &fault);
    for (int i = 0; i < count; i++) {
        piece *made = list + kinds;
        put_round(p, made, "Roll bar", &bar->tube, stick[i].length);
        if (kinds && !strcmp(made->length, list[kinds - 1].length))
            list[kinds - 1].count++;
        else
            kinds++;
    }
    for (int i = 0, first = 1; i < kinds; first += list[i++].count)
        mark_sticks(side, list + i, first);
    if (count > 1)
        write_joints(p, bar, stick, count, list[kinds - 1].holes, sizeof list[0].holes);
    free(stick);
    return kinds;
}

static int put_bar(pen *p, const planned *side, piece *list)
{
    const tside_bar *bar = &side->wanted.side.bar;
    if (bar->joints == TSIDE_JOINTS_FROM_STOCK)
        return put_sticks(p, side, list);
    put_round(p, list, "Roll bar", &bar->tube, side->plan.bar_length);
    mark_sticks(side, list, 1);
    if (bar->splices)
        snprintf(list->holes, sizeof list->holes,
                 "%d joint%s, none nearer than %s to the curtain's edge at the drive; %d screws each side",
                 bar->splices, bar->splices > 1 ? "s" : "", tape(p, bar->splice_near), bar->screws);
    return 1;
}

/* --- curtain and flaps, as the take-off has them --- */

static int put_sheet_of(pen *p, const planned *side, tside_item_code code, const char *name, piece *made)
{
    const tside_item *item = item_of(side, code, TSIDE_AT_SIDE);
    if (!item || !item->count)
        return 0;
    *made = (piece){.count = item->count};
    snprintf(made->name, sizeof made->name, "%s", name);
    snprintf(made->tube, sizeof made->tube, "%s wide", tape(p, item->width));
    snprintf(made->length, sizeof made->length, "%s", tape(p, item->length));
    for (int i = 0; i < item->count; i++)
        add_mark(side, made, code, TSIDE_AT_SIDE, item->first_number + i);
    return 1;
}

/* --- lists of them --- */

/* Each returns how many there are. */
static int list_of_end(pen *p, const planned *side, int end, piece *list)
{
    put_round(p, list, "Guide pipe", &end_asked(side, end)->guide.tube, end_answered(side, end)->sweep.cut_length);
    add_mark(side, list, TSIDE_ITEM_GUIDE, place_of_end(end), 1);
    if (!on_extender(side, end))
        return 1;
    put_extender(p, list + 1, side, end);
    return 2;
}

static int list_of_side(pen *p, const planned *side, piece *list)
{
    int count = put_bar(p, side, list);
    count += put_sheet_of(p, side, TSIDE_ITEM_CURTAIN, "Curtain", list + count);
    return count + put_sheet_of(p, side, TSIDE_ITEM_FLAP, "End flap", list + count);
}

static int alike(const piece *one, const piece *other)
{
    return !strcmp(one->name, other->name) && !strcmp(one->tube, other->tube) && !strcmp(one->length, other->length) &&
           !strcmp(one->holes, other->holes);
}

/* Adds a piece to a list, after those of its name, or to the count of the one like it. */
static int gather(piece *list, int count, const piece *more)
{
    int place = count;
    for (int i = 0; i < count; i++) {
        if (alike(list + i, more)) {
            const size_t length = strlen(list[i].marks);
            snprintf(list[i].marks + length, sizeof list[i].marks - length, ", %s", more->marks);
            list[i].count += more->count;
            return count;
        }
        if (!strcmp(list[i].name, more->name))
            place = i + 1;
    }
    memmove(list + place + 1, list + place, (size_t)(count - place) * sizeof *list);
    list[place] = *more;
    return count + 1;
}

/* Where pieces are told one by one, their marks stand first; where alike ones are told together, below them. */
static void put_list(paper *out, const piece *list, int count, int together)
{
    static const char *const titles[] = {"Mark", "Piece", "Section", "No", "Cut length"};
    put_columns(out, together ? 1u << 2 : 1u << 3, 5 - together, titles + together);
    for (int i = 0; i < count; i++) {
        char number[12];
        const char *const cells[] = {list[i].marks, list[i].name, list[i].tube, number, list[i].length};
        snprintf(number, sizeof number, "%d", list[i].count);
        put_cells(out, 5 - together, cells + together);
        if (together)
            put_remark(out, "marked %s", list[i].marks);
        if (*list[i].holes)
            put_remark(out, "%s", list[i].holes);
    }
}

static void put_tolerance(paper *out, pen *p, int extenders)
{
    put_words(
        out, "Cut +0 -%s, holes +-%s (common practice).%s", p->us ? "1/8 in" : "3 mm", p->us ? "1/16 in" : "1.5 mm",
        extenders
            ? " A right-hand extender rises to the right, seen from outside its wall. Each hole from the top end, "
              "never from hole to hole, on the middle of the face away from the wall, square through both walls; "
              "mark that face at the top end."
            : "");
}

void put_end_pieces(sheet *s, int end)
{
    piece list[MOST_PIECES];
    const int count = list_of_end(&s->pen, s->side, end, list);
    put_part(&s->paper, "CUT AND DRILL");
    put_list(&s->paper, list, count, 0);
    put_tolerance(&s->paper, &s->pen, on_extender(s->side, end));
}

void put_side_pieces(sheet *s)
{
    piece list[MOST_PIECES];
    const int count = list_of_side(&s->pen, s->side, list);
    put_part(&s->paper, "CUT");
    put_list(&s->paper, list, count, 0);
    if (s->side->item_count == 0)
        put_words(&s->paper, "Curtain and flaps are not told: %s.", s->side->no_take_off);
}

void print_job_pieces(text *out, planned *const *sides, size_t count, int us)
{
    piece list[MOST_PIECES], merged[2 * 2 * MOST_PIECES];
    paper paper = {.lines = NULL};
    pen p = {.us = us};
    int kinds = 0, extenders = 0;
    for (size_t k = 0; k < count; k++) {
        int more = list_of_side(&p, sides[k], list);
        for (int end = 0; end < ENDS; end++) {
            more += list_of_end(&p, sides[k], end, list + more);
            extenders |= on_extender(sides[k], end);
        }
        for (int i = 0; i < more; i++)
            kinds = gather(merged, kinds, list + i);
    }
    put_page(&paper, "PIECES OF THE JOB", *sides[0]->wanted.job ? sides[0]->wanted.job : "without a name");
    put_list(&paper, merged, kinds, 1);
    put_tolerance(&paper, &p, extenders);
    print_paper(out, &paper);
    paper_free(&paper);
}
