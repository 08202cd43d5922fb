/* SPDX-License-Identifier: MIT */
/* Where things sit, from points that a tape reaches. */
#include "sheet.h"

static const tside_layout *layout_at(const planned *side, int end)
{
    static const tside_layout none;
    return on_extender(side, end) ? &end_answered(side, end)->layout : &none;
}

/* A value of the layout for each end, with NULL for an end without an extender. */
static void print_layout(sheet *s, const char *label, const char *(*write)(pen *, double), double drive, double free)
{
    print_row_of_ends(s, label, on_extender(s->side, TSIDE_DRIVE_END) ? write(&s->pen, drive) : NULL,
                      on_extender(s->side, TSIDE_FREE_END) ? write(&s->pen, free) : NULL);
}

static const char *degrees(pen *p, double angle)
{
    return quantity(p, angle, "rad");
}

/* The extender's angle for a level and a tape: its run over a foot, or 300 mm, of rise. */
static const char *run_of_rise(pen *p, double run)
{
    return tape(p, run * (p->us ? 0.3048 : 0.3));
}

static const char *ruled_by(const planned *side, int end)
{
    static const char *const by[] = {"stiffest of all", "bow's reach",   "member's height", "bolts' spacing",
                                     "stock's length",  "member's ends", "75 deg"};
    if (!on_extender(side, end))
        return NULL;
    return end_asked(side, end)->extender.slant == TSIDE_SLANT_BEST ? by[end_answered(side, end)->layout.binding]
                                                                    : "as given";
}

static void print_extenders(sheet *s)
{
    const tside_layout *drive = layout_at(s->side, TSIDE_DRIVE_END), *free = layout_at(s->side, TSIDE_FREE_END);
    const tside_side *asked = &s->side->wanted.side;
    const tside_plan *plan = &s->side->plan;
    print_layout(s, "Bow hole above grade", tape, drive->bow_height - plan->drive_end.ground,
                 free->bow_height - plan->free_end.ground);
    print_layout(s, "  or up its centreline from hip height", tape, drive->bow_along, free->bow_along);
    print_layout(s, "Member hole above grade", tape, asked->drive_end.extender.member_height,
                 asked->free_end.extender.member_height);
    print_layout(s, "  and from the member's outer end", tape, drive->member_from_outer, free->member_from_outer);
    print_layout(s, "CHECK DIAGONAL, eye to member hole", tape, drive->member_distance, free->member_distance);
    print_layout(s, "Extender's angle from plumb", degrees, drive->angle, free->angle);
    print_layout(s, s->pen.us ? "  as run in 12 in of rise" : "  as run in 300 mm of rise", run_of_rise, drive->run,
                 free->run);
    print_row_of_ends(s, "  which is ruled by", ruled_by(s->side, TSIDE_DRIVE_END), ruled_by(s->side, TSIDE_FREE_END));
    print_layout(s, "Eye to bow's outer face, along the tube", tape, drive->overhang, free->overhang);
}

/* A length of each end, with NULL where it has none. */
static const char *given_tape(pen *p, int given, double value)
{
    return given ? tape(p, value) : NULL;
}

/* Outward along the house, from the plane of the end bow's centreline. */
void print_along(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_end_plan *drive = &plan->drive_end, *free = &plan->free_end;
    const double past = s->side->wanted.side.curtain.past;
    pen *p = &s->pen;
    print_title(s, "ALONG THE HOUSE");
    text_wrap(s->out, "  ", "Outward from the middle of the end bow's tube.");
    print_row_of_ends(s, "", end_name(TSIDE_DRIVE_END), end_name(TSIDE_FREE_END));
    print_row_of_ends(s, "Curtain's edge", tape(p, past), tape(p, past));
    print_row_of_ends(s, "Drive's centre, collar's line", tape(p, past + drive->stand.run_on),
                      tape(p, past + free->stand.run_on));
    print_row_of_ends(s, "Guide's line at its eye", tape(p, drive->stand.eye), tape(p, free->stand.eye));
    if (drive->stand.misfit != 0 || free->stand.misfit != 0) {
        print_row_of_ends(s, "Guide leans along the house, at most", degrees(p, drive->skew.lean_greatest),
                          degrees(p, free->skew.lean_greatest));
        print_row_of_ends(s, "  and its foot sweeps that way", tape(p, drive->skew.sweep), tape(p, free->skew.sweep));
    }
    print_row_of_ends(s, "Most curtain past the bow in line",
                      given_tape(p, drive->stand.past_most_given, drive->stand.past_most),
                      given_tape(p, free->stand.past_most_given, free->stand.past_most));
    print_row_of_ends(s, "Most stand-off that the eye bolt bears",
                      given_tape(p, drive->stand_off_most_given, drive->stand_off_most),
                      given_tape(p, free->stand_off_most_given, free->stand_off_most));
    print_row_of_ends(s, "  and curtain past the bow with that",
                      given_tape(p, drive->stand_off_most_given, drive->past_bolt_most),
                      given_tape(p, free->stand_off_most_given, free->past_bolt_most));
}

void print_set_out(sheet *s)
{
    const tside_plan *plan = &s->side->plan;
    const tside_curtain *curtain = &s->side->wanted.side.curtain;
    const double face = face_at_hip(s->side);
    pen *p = &s->pen;
    print_title(s, "SET OUT");
    text_say(s->out, "  ", "Above grade: hip %s, sill %s; roll's underside shut %s, open %s.", tape(p, curtain->hip),
             tape(p, curtain->sill), tape(p, plan->shut.underside), tape(p, plan->open.underside));
    print_row_of_ends(s, "", end_name(TSIDE_DRIVE_END), end_name(TSIDE_FREE_END));
    print_row_of_ends(s, "Eye above the curtain's fixing at the hip", tape(p, plan->drive_end.eye_y - curtain->hip),
                      tape(p, plan->free_end.eye_y - curtain->hip));
    print_row_of_ends(s, "  which is above grade", tape(p, plan->drive_end.eye_y - plan->drive_end.ground),
                      tape(p, plan->free_end.eye_y - plan->free_end.ground));
    print_row_of_ends(s, "Eye outboard of the bow's face [1], level", tape(p, plan->drive_end.eye_x - face),
                      tape(p, plan->free_end.eye_x - face));
    if (on_extender(s->side, TSIDE_DRIVE_END) || on_extender(s->side, TSIDE_FREE_END))
        print_extenders(s);
    else
        text_wrap(s->out, "  ", "Both guides hang on the hip rail at the curtain's fixing; there is no extender.");
    print_row_of_ends(s, "Foot's reach out from the bow's face [1]",
                      tape(p, plan->drive_end.sweep.walkway_error - face),
                      tape(p, plan->free_end.sweep.walkway_error - face));
    text_say(s->out, "  [1] ",
             "outer face of that end's bow, at hip height; grade is the ground at that end. The foot's reach"
             " includes the eye's placing error: keep people and things outside it.");
}
