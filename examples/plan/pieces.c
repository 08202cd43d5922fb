/* SPDX-License-Identifier: MIT */
/* What is cut and drilled. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "command.h"
#include "memory.h"
#include "sheet.h"

enum { MOST_PIECES = 9, MOST_JOINTS = 8 }; /* a bar is of three lengths at most; more joints are told in short */

/* A piece as it is printed: two that print alike are alike. */
typedef struct piece {
    char name[40], tube[48], hand[8], length[32];
    char holes[320]; /* or where they are drilled, or joined; "" without any */
    int count;
} piece;

static void put_round(pen *p, piece *made, const char *name, const tside_round *tube, double length)
{
    *made = (piece){.count = 1, .hand = "-"};
    snprintf(made->name, sizeof made->name, "%s", name);
    snprintf(made->tube, sizeof made->tube, "%s round", cross_section(p, tube->diameter, tube->wall));
    snprintf(made->length, sizeof made->length, "%s", tape(p, length));
}

static void put_extender(pen *p, piece *made, const planned *side, int end)
{
    const tside_extender *asked = &end_asked(side, end)->extender;
    const tside_layout *layout = &end_answered(side, end)->layout;
    *made = (piece){.count = 1};
    snprintf(made->name, sizeof made->name, "Extender");
    snprintf(made->tube, sizeof made->tube, "%s square", cross_section(p, asked->tube.side, asked->tube.wall));
    snprintf(made->hand, sizeof made->hand, "%s", hand_name(hand_at(side, end)));
    snprintf(made->length, sizeof made->length, "%s", tape(p, layout->cut_length));
    snprintf(made->holes, sizeof made->holes,
             "from the top end: eye %s (hole %s), bow %s (hole %s), member %s (hole %s)", tape(p, layout->eye_from_top),
             bore(p, asked->eye_hole), tape(p, layout->bow_from_top), bore(p, asked->bolt_hole),
             tape(p, layout->member_from_top), bore(p, asked->bolt_hole));
}

static void put_drilling(pen *p, piece *made, const planned *side, int end)
{
    const tside_extender *asked = &end_asked(side, end)->extender;
    *made = (piece){.count = 1, .hand = "-", .length = "-"};
    snprintf(made->name, sizeof made->name, "End bow, wall's member");
    snprintf(made->holes, sizeof made->holes, "one hole of %s in each, square to the end wall, where the set-out says",
             bore(p, asked->bolt_hole));
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
    if (bar->splices)
        snprintf(list->holes, sizeof list->holes,
                 "%d joint%s, none nearer than %s to the curtain's edge at the drive; %d screws each side",
                 bar->splices, bar->splices > 1 ? "s" : "", tape(p, bar->splice_near), bar->screws);
    return 1;
}

/* Lists a side's pieces with the ends' names in them where named is 1; returns how many. */
static int list_pieces(pen *p, const planned *side, int named, piece *list)
{
    int count = put_bar(p, side, list);
    for (int end = 0; end < ENDS; end++) {
        char name[40];
        snprintf(name, sizeof name, "Guide pipe%s%s", named ? ", " : "", named ? end_name(end) : "");
        put_round(p, list + count++, name, &end_asked(side, end)->guide.tube,
                  end_answered(side, end)->sweep.cut_length);
    }
    for (int end = 0; end < ENDS; end++)
        if (on_extender(side, end)) {
            put_extender(p, list + count, side, end);
            if (named)
                snprintf(list[count].name, sizeof list[count].name, "Extender, %s", end_name(end));
            count++;
        }
    for (int end = 0; end < ENDS; end++)
        if (on_extender(side, end))
            put_drilling(p, list + count++, side, end);
    return count;
}

static int alike(const piece *one, const piece *other)
{
    return !strcmp(one->name, other->name) && !strcmp(one->tube, other->tube) && !strcmp(one->hand, other->hand) &&
           !strcmp(one->length, other->length) && !strcmp(one->holes, other->holes);
}

/* Adds a piece to a list, after those of its name, or to the count of the one like it. */
static int gather(piece *list, int count, const piece *more)
{
    int place = count;
    for (int i = 0; i < count; i++) {
        if (alike(list + i, more)) {
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

static void print_list(text *out, const piece *list, int count)
{
    text_add(out, "  %-24s %-23s %-6s %2s  %s\n", "Piece", "Tube", "Hand", "No", "Cut length");
    for (int i = 0; i < count; i++) {
        text_add(out, "  %-24s %-23s %-6s %2d  %s\n", list[i].name, list[i].tube, list[i].hand, list[i].count,
                 list[i].length);
        if (*list[i].holes)
            text_wrap(out, "      ", list[i].holes);
    }
}

static void print_how(text *out, pen *p, int extenders)
{
    text_say(out, "  ", "Tolerance: cut +0 -%s, holes +-%s (common practice).%s", p->us ? "1/8 in" : "3 mm",
             p->us ? "1/16 in" : "1.5 mm",
             extenders ? " Hand: seen from outside the wall it is bolted to, a right-hand extender rises to the right. "
                         "Measure each hole's centre"
                         " from the top end, never from hole to hole; mark it on the middle of the face away from the "
                         "wall, and drill square"
                         " through both walls."
                       : "");
}

void print_pieces(sheet *s)
{
    piece list[MOST_PIECES], merged[MOST_PIECES];
    int count = list_pieces(&s->pen, s->side, 1, list), kinds = 0;
    for (int i = 0; i < count; i++)
        kinds = gather(merged, kinds, list + i);
    print_title(s, "CUT AND DRILL");
    print_list(s->out, merged, kinds);
    print_how(s->out, &s->pen, on_extender(s->side, TSIDE_DRIVE_END) || on_extender(s->side, TSIDE_FREE_END));
}

void print_job_pieces(text *out, planned *const *sides, size_t count, int us)
{
    piece list[MOST_PIECES], merged[2 * MOST_PIECES];
    pen p = {.us = us};
    int kinds = 0, extenders = 0;
    text_wrap(out, "\fPIECES OF THE JOB  ", sides[0]->wanted.job);
    for (size_t k = 0; k < count; k++) {
        const int more = list_pieces(&p, sides[k], 0, list);
        for (int i = 0; i < more; i++)
            kinds = gather(merged, kinds, list + i);
        extenders |= on_extender(sides[k], TSIDE_DRIVE_END) || on_extender(sides[k], TSIDE_FREE_END);
    }
    print_list(out, merged, kinds);
    print_how(out, &p, extenders);
}
