/* SPDX-License-Identifier: MIT */
/* The bow as understood, and where things stand along the house. */
#include <math.h>

#include "command.h"
#include "sheet.h"

#define PLUMB 1.57079632679489662 /* rad */

/* --- the bow --- */

static const char *degrees(pen *p, double angle)
{
    return quantity(p, angle, "rad");
}

static double turn_into(const tside_path *centre, int i)
{
    const tside_piece *before = centre->piece + i - 1;
    return centre->piece[i].heading - before->heading - before->curvature * before->length;
}

/* One piece of its centreline, from the foot up, with the kink before it if there is one. */
static void put_piece(sheet *s, const tside_path *centre, int i)
{
    const tside_piece *piece = centre->piece + i;
    pen *p = &s->pen;
    if (i > 0 && fabs(turn_into(centre, i)) > 1e-6)
        put_point(&s->paper, "a kink of %s, %s above grade", degrees(p, turn_into(centre, i)), tape(p, piece->y));
    if (fabs(piece->curvature) > 1e-9)
        put_point(&s->paper, "from %s above grade a bend of radius %s, %s of it", tape(p, piece->y),
                  tape(p, 1 / fabs(piece->curvature)), tape(p, piece->length));
    else
        put_point(&s->paper, "from %s above grade straight for %s, %s from plumb", tape(p, piece->y),
                  tape(p, piece->length), degrees(p, piece->heading - PLUMB));
}

/* Its rise is over where it first bends; a straight bow has none. */
static void put_rise(sheet *s, const tside_bow *bow)
{
    const tside_path *centre = &bow->centre;
    tside_bow_point top;
    tside_fault fault;
    int i = 0;
    while (i + 1 < centre->count && fabs(centre->piece[i].curvature) <= 1e-9)
        i++;
    must(tside_bow_at(bow, centre->length, &top, &fault), &fault);
    put_words(&s->paper, "Its top is %s above grade, a rise of %s over %s.", tape(&s->pen, top.y),
              tape(&s->pen, top.y - centre->piece[i].y), i ? "where it first bends" : "its foot");
}

/* Where the rail meets it: on which piece, and how far from that piece's ends. */
static void put_rail(sheet *s, const tside_bow *bow)
{
    const tside_path *centre = &bow->centre;
    const double hip = s->side->wanted.side.curtain.hip;
    double arc, face;
    tside_fault fault;
    int i = 0;
    if (tside_bow_at_height(bow, hip, &arc, &fault) != TSIDE_OK || tside_bow_face(bow, hip, &face, &fault) != TSIDE_OK)
        return;
    while (i + 1 < centre->count && arc >= centre->piece[i + 1].from)
        i++;
    put_words(&s->paper,
              "The hip rail meets it %s along the bow from its foot, on the %s, %s before that ends; the "
              "face is there %s from the tunnel's centreline.",
              tape(&s->pen, arc), fabs(centre->piece[i].curvature) > 1e-9 ? "bend" : "straight piece",
              tape(&s->pen, centre->piece[i].from + centre->piece[i].length - arc), tape(&s->pen, face));
}

void put_bow(sheet *s)
{
    const tside_frame *frame = &s->side->wanted.side.frame;
    tside_bow bow;
    tside_fault fault;
    must(tside_bow_make(frame, &bow, &fault), &fault);
    put_part(&s->paper, "THE BOW, AS UNDERSTOOD");
    put_words(&s->paper, "Its centreline, from the foot up, of tube %s:",
              cross_section(&s->pen, frame->tube.diameter, frame->tube.wall));
    for (int i = 0; i < bow.centre.count; i++)
        put_piece(s, &bow.centre, i);
    put_rise(s, &bow);
    put_rail(s, &bow);
}

/* --- along the house --- */

/* A greatest length of an end, with NULL where it has none. */
static const char *given_tape(pen *p, int given, double value)
{
    return given ? tape_at_most(p, value) : NULL;
}

/* Outward along the house, from the plane of the end bow's centreline. */
void put_along(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_end_plan *drive = &plan->drive_end, *free = &plan->free_end;
    const double past = s->side->wanted.side.curtain.past;
    pen *p = &s->pen;
    put_part(&s->paper, "ALONG THE HOUSE");
    put_words(&s->paper, "Outward from the middle of the end bow's tube.");
    put_ends_titles(s);
    put_ends(s, "Curtain's edge", tape(p, past), tape(p, past));
    put_ends(s, "Drive's centre, collar's line", tape(p, past + drive->stand.run_on),
             tape(p, past + free->stand.run_on));
    put_ends(s, "Guide's line at its eye", tape(p, drive->stand.eye), tape(p, free->stand.eye));
    if (drive->stand.misfit != 0 || free->stand.misfit != 0) {
        put_ends(s, "Guide leans along the house, at most", degrees(p, drive->skew.lean_greatest),
                 degrees(p, free->skew.lean_greatest));
        put_ends(s, "  and its foot sweeps that way", tape(p, drive->skew.sweep), tape(p, free->skew.sweep));
    }
    put_ends(s, "Most curtain past the bow in line",
             given_tape(p, drive->stand.past_most_given, drive->stand.past_most),
             given_tape(p, free->stand.past_most_given, free->stand.past_most));
    put_ends(s, "Most stand-off that the eye bolt bears",
             given_tape(p, drive->stand_off_most_given, drive->stand_off_most),
             given_tape(p, free->stand_off_most_given, free->stand_off_most));
    put_ends(s, "  and curtain past the bow with that",
             given_tape(p, drive->stand_off_most_given, drive->past_bolt_most),
             given_tape(p, free->stand_off_most_given, free->past_bolt_most));
}

/* --- keep-outs --- */

/* "the guide clears it by 2 in" */
static void add_keep_off(text *words, pen *p, const char *what, double by)
{
    if (by < 0)
        text_add(words, "the %s is too near by %s", what, tape_at_least(p, -by));
    else
        text_add(words, "the %s clears it by %s", what, tape_at_most(p, by));
}

static void put_keep_outs_of(sheet *s, int end)
{
    const tside_end_plan *plan = end_answered(s->side, end);
    for (int i = 0; i < plan->keep_off_count; i++) {
        const tside_keep_off *off = plan->keep_offs + i;
        text words = {NULL, 0, 0};
        text_add(&words, "%s, ", end_name(end));
        add_keep_out(&words, s->side, end, i);
        text_add(&words, ": ");
        if (off->tube_given) {
            add_keep_off(&words, &s->pen, "extender", off->tube);
            text_add(&words, ", ");
        }
        add_keep_off(&words, &s->pen, "guide", off->guide);
        put_point(&s->paper, "%s.", text_of(&words));
        text_free(&words);
    }
}

void put_keep_outs(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    if (!plan->drive_end.keep_off_count && !plan->free_end.keep_off_count)
        return;
    put_part(&s->paper, "KEEP-OUTS");
    put_words(&s->paper, "%s",
              "From the surface of the tube or the pipe to the keep-out, wherever the guide swings while the bar "
              "travels, its eye or its foot misplaced by its placing error either way.");
    for (int end = 0; end < ENDS; end++)
        put_keep_outs_of(s, end);
}
