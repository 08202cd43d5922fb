/* SPDX-License-Identifier: MIT */
/* What is cut and drilled. */
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "mark.h"
#include "memory.h"
#include "sentence.h"
#include "sheet.h"

enum {
    MOST_PIECES = TSIDE_ITEMS + 8, /* of a side; a bar is of three lengths at most */
    MOST_JOINTS = 8                /* more are told in short */
};

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

static void name_piece(piece *made, tside_item_code code)
{
    snprintf(made->name, sizeof made->name, "%s", tside_item_text((int)code));
    made->name[0] = (char)toupper((unsigned char)made->name[0]);
}

static void put_round(pen *p, piece *made, tside_item_code code, const tside_round *tube, double length)
{
    *made = (piece){.count = 1};
    name_piece(made, code);
    snprintf(made->tube, sizeof made->tube, "%s round", cross_section(p, tube->diameter, tube->wall));
    snprintf(made->length, sizeof made->length, "%s", tape(p, length));
}

/* Of eye, bow and member; running measures along one piece: the unit stands once. */
static void write_holes(pen *p, const tside_extender *asked, const tside_layout *layout, char *words, size_t size)
{
    snprintf(words, size, "holes from top end, %s: %s, %s, %s; drill %s, then %s", p->us ? "in" : "mm",
             tape_number(p, layout->eye_from_top), tape_number(p, layout->bow_from_top),
             tape_number(p, layout->member_from_top), trade_size(p, asked->eye_hole), trade_size(p, asked->bolt_hole));
}

static void put_extender(pen *p, piece *made, const planned *side, int end)
{
    const tside_extender *asked = &end_asked(side, end)->extender;
    const tside_layout *layout = &end_answered(side, end)->layout;
    *made = (piece){.count = 1};
    name_piece(made, TSIDE_ITEM_EXTENDER);
    snprintf(made->name + strlen(made->name), sizeof made->name - strlen(made->name), ", %s",
             hand_name(hand_at(side, end)));
    snprintf(made->tube, sizeof made->tube, "%s square", cross_section(p, asked->tube.side, asked->tube.wall));
    snprintf(made->length, sizeof made->length, "%s", tape(p, layout->cut_length));
    write_holes(p, asked, layout, made->holes, sizeof made->holes);
    add_mark(side, made, TSIDE_ITEM_EXTENDER, place_of_end(end), 1);
}

/* --- the bar, from stock or not --- */

/* Where the joints begin, from the drive's centre. */
static void write_joints(pen *p, const tside_bar_stick *stick, int count, char *words, size_t size)
{
    size_t at = (size_t)snprintf(words, size, "%s at ", count > 2 ? "joints begin" : "a joint begins");
    if (count - 1 > MOST_JOINTS)
        at += (size_t)snprintf(words + at, size - at, "%s, every %s from there, and %s", tape(p, stick[1].from),
                               tape(p, stick[1].from), tape(p, stick[count - 1].from));
    else
        for (int i = 1; i < count; i++)
            at += (size_t)snprintf(words + at, size - at, "%s%s", i > 1 ? ", " : "", tape(p, stick[i].from));
    snprintf(words + at, size - at, " from the drive's centre");
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
        put_round(p, made, TSIDE_ITEM_BAR, &bar->tube, stick[i].length);
        if (kinds && !strcmp(made->length, list[kinds - 1].length))
            list[kinds - 1].count++;
        else
            kinds++;
    }
    for (int i = 0, first = 1; i < kinds; first += list[i++].count)
        mark_sticks(side, list + i, first);
    if (count > 1)
        write_joints(p, stick, count, list[kinds - 1].holes, sizeof list[0].holes);
    free(stick);
    return kinds;
}

static int put_bar(pen *p, const planned *side, piece *list)
{
    const tside_bar *bar = &side->wanted.side.bar;
    if (bar->joints == TSIDE_JOINTS_FROM_STOCK)
        return put_sticks(p, side, list);
    put_round(p, list, TSIDE_ITEM_BAR, &bar->tube, side->plan.bar_length);
    mark_sticks(side, list, 1);
    if (bar->splices)
        snprintf(list->holes, sizeof list->holes, "%d joint%s, none nearer than %s to the curtain's edge at the drive",
                 bar->splices, bar->splices > 1 ? "s" : "", tape(p, bar->splice_near));
    return 1;
}

/* --- what else is marked, as the take-off has it --- */

static void put_item(pen *p, const planned *side, const tside_item *item, piece *made)
{
    *made = (piece){.count = item->count};
    name_piece(made, item->code);
    if (item->by == TSIDE_BY_SHEET)
        snprintf(made->tube, sizeof made->tube, "%s wide", tape(p, item->width));
    else if (item->size > 0)
        snprintf(made->tube, sizeof made->tube, "%s", bolt_name(p, item->size, "", 0));
    snprintf(made->length, sizeof made->length, "%s", item->length > 0 ? tape(p, item->length) : "-");
    for (int i = 0; i < item->count; i++)
        add_mark(side, made, item->code, item->at, item->first_number + i);
}

/* Those at a place that are not listed from the plan itself; returns how many. */
static int list_items(pen *p, const planned *side, tside_item_at at, piece *list)
{
    int count = 0;
    for (int i = 0; i < side->item_count; i++) {
        const tside_item *item = side->items + i;
        if (item->at == at && item->first_number && item->code != TSIDE_ITEM_BAR && item->code != TSIDE_ITEM_GUIDE &&
            item->code != TSIDE_ITEM_EXTENDER)
            put_item(p, side, item, list + count++);
    }
    return count;
}

/* --- lists of them --- */

/* Each returns how many there are. */
static int list_of_end(pen *p, const planned *side, int end, piece *list)
{
    int count = 0;
    put_round(p, list + count, TSIDE_ITEM_GUIDE, &end_asked(side, end)->guide.tube,
              end_answered(side, end)->sweep.cut_length);
    add_mark(side, list + count++, TSIDE_ITEM_GUIDE, place_of_end(end), 1);
    if (on_extender(side, end))
        put_extender(p, list + count++, side, end);
    return count + list_items(p, side, place_of_end(end), list + count);
}

static int list_of_side(pen *p, const planned *side, piece *list)
{
    const int count = put_bar(p, side, list);
    return count + list_items(p, side, TSIDE_AT_SIDE, list + count);
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
    put_columns(out, NULL, together ? 1u << 2 : 1u << 3, 0, 5 - together, titles + together);
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
    put_words(out, "Cut +0 -%s, holes +-%s (common practice).%s", p->us ? "1/8 in" : "3 mm",
              p->us ? "1/16 in" : "1.5 mm",
              extenders ? " A right extender rises to the right, seen from outside its wall. Eye's, bow's, member's "
                          "hole: each from the "
                          "top end, never hole to hole, on the middle of the outer face, square through both walls; "
                          "mark that face at that end."
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

static void put_no_take_off(sheet *s)
{
    text words = {NULL, 0, 0};
    add_refusal(&words, &s->pen, &s->side->no_take_off);
    put_words(&s->paper, "Curtain and flaps are not told: %s.", text_of(&words));
    text_free(&words);
}

void put_side_pieces(sheet *s)
{
    piece list[MOST_PIECES];
    const int count = list_of_side(&s->pen, s->side, list);
    put_part(&s->paper, "CUT (what is used whole is in the annex)");
    put_list(&s->paper, list, count, 0);
    if (s->side->item_count == 0)
        put_no_take_off(s);
}

paper job_pieces_of(planned *const *sides, size_t count, int us)
{
    piece list[MOST_PIECES], merged[2 * MOST_PIECES];
    paper pieces = {.lines = NULL};
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
    put_page(&pieces, "PIECES OF THE JOB", *sides[0]->wanted.job ? sides[0]->wanted.job : "without a name");
    put_list(&pieces, merged, kinds, 1);
    put_tolerance(&pieces, &p, extenders);
    return pieces;
}
