/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "names.h"
#include "sheet.h"
#include "walk.h"

enum { LABEL_WIDTH = 42, END_WIDTH = 18 };

void print_title(sheet *s, const char *title)
{
    text_add(s->out, "\n%s\n", title);
}

void print_row(sheet *s, const char *label, const char *value)
{
    text_add(s->out, "  %-*s  %s\n", LABEL_WIDTH, label, value);
}

void print_row_of_ends(sheet *s, const char *label, const char *drive, const char *free)
{
    text_add(s->out, "  %-*s%*s%*s\n", LABEL_WIDTH, label, END_WIDTH, drive ? drive : "-", END_WIDTH,
             free ? free : "-");
}

const char *end_name(int end)
{
    return end == TSIDE_FREE_END ? "free end" : "drive's end";
}

int on_extender(const planned *side, int end)
{
    return end_asked(side, end)->hung == TSIDE_ON_EXTENDER;
}

/* From outside the free end's wall the side is seen mirrored. */
tside_hand hand_at(const planned *side, int end)
{
    const tside_hand hand = side->wanted.side.hand;
    return end == TSIDE_DRIVE_END ? hand : hand == TSIDE_RIGHT ? TSIDE_LEFT : TSIDE_RIGHT;
}

const char *hand_name(tside_hand hand)
{
    return hand == TSIDE_LEFT ? "left" : "right";
}

double face_at_hip(const planned *side)
{
    return side->plan.fixing_x - side->wanted.side.curtain.standoff;
}

static void print_head(sheet *s)
{
    const request *wanted = &s->side->wanted;
    const int right = wanted->side.hand == TSIDE_RIGHT;
    if (wanted->of)
        text_say(s->out, "JOB    ", "%s, side %d of %d", *wanted->job ? wanted->job : "without a name", wanted->number,
                 wanted->of);
    if (wanted->of > 1 && *wanted->shares)
        text_say(s->out, "       ", "Shared by both sides, but for what a side gives itself: %s.", wanted->shares);
    text_wrap(s->out, "SIDE   ", *wanted->name ? wanted->name : "without a name");
    if (wanted->of && *wanted->job_note)
        text_wrap(s->out, "       ", wanted->job_note);
    if (*wanted->note)
        text_wrap(s->out, "       ", wanted->note);
    text_say(s->out, "HAND   ", "%s, seen from outside the drive's end wall, looking in", hand_name(wanted->side.hand));
    text_wrap(s->out, "DRIVE  ", *wanted->drive_at ? wanted->drive_at : "end not named");
    text_say(s->out, "TURNS  ", "to open, the bar turns %s, seen from outside that wall",
             right ? "anticlockwise" : "clockwise");
}

/* --- findings --- */

static void list_unusual(void *context, const char *path, const tside_field *row, const void *member)
{
    sheet *s = context;
    double value;
    if (row->type == TSIDE_CHOICE || !(row->usual_low < row->usual_high))
        return;
    value = row->type == TSIDE_COUNT ? *(const int *)member : *(const double *)member;
    if (value < row->usual_low || value > row->usual_high)
        text_say(s->out, "      ", "%s %s; usual are %s to %s", path, quantity(&s->pen, value, row->unit),
                 quantity(&s->pen, row->usual_low, row->unit), quantity(&s->pen, row->usual_high, row->unit));
}

/* Which of several is meant: "guide pipe bending at the collar, free end: ". */
static void add_subject(text *words, const planned *side, const tside_finding *finding)
{
    switch (finding->code) {
    case TSIDE_FINDING_STRENGTH:
        text_add(words, "%s, %s: ", tside_strength_text((int)side->plan.lines[finding->index].code),
                 end_name((int)finding->end));
        break;
    case TSIDE_FINDING_KEEP_OUT_TUBE:
    case TSIDE_FINDING_KEEP_OUT_GUIDE:
        text_add(words, "%s, keep-out %d: ", end_name((int)finding->end), finding->index + 1);
        break;
    case TSIDE_FINDING_KICK:
    case TSIDE_FINDING_SIDE_FORCE:
    case TSIDE_FINDING_LEAN_ALONG:
    case TSIDE_FINDING_BINDS:
    case TSIDE_FINDING_BOW_HOLE:
    case TSIDE_FINDING_MISFIT: text_add(words, "%s: ", end_name((int)finding->end)); break;
    default: break;
    }
}

/* The library's sentence is in SI: in feet and pounds its numbers follow it. */
void add_sentence(text *words, pen *p, const tside_finding *finding)
{
    const char *unit = tside_finding_unit((int)finding->code);
    char sentence[256];
    tside_finding_text(finding, sentence, sizeof sentence);
    text_add(words, "%s", sentence);
    if (p->us && strcmp(unit, "1") && strcmp(unit, "turn") && strcmp(unit, "s") && strcmp(unit, "V") &&
        strcmp(unit, "A")) {
        text_add(words, " [%s", quantity(p, finding->value, unit));
        if (finding->bound > 0)
            text_add(words, "; %s", quantity(p, finding->bound, unit));
        text_add(words, "]");
    }
}

static void print_finding(sheet *s, const tside_finding *finding)
{
    text words = {NULL, 0, 0};
    add_subject(&words, s->side, finding);
    add_sentence(&words, &s->pen, finding);
    if (is_mended_by_eye(finding->code))
        add_mend(&words, &s->pen, s->side, (int)finding->end);
    text_wrap(s->out, "  - ", text_of(&words));
    text_free(&words);
    if (finding->code == TSIDE_FINDING_UNUSUAL)
        walk(TSIDE_KIND_SIDE, &s->side->wanted.side, list_unusual, s);
}

static void print_findings_that(sheet *s, int stop)
{
    const tside_plan *plan = &s->side->plan;
    int count = 0;
    for (int i = 0; i < plan->finding_count; i++)
        if (tside_finding_stops((int)plan->findings[i].code) == stop) {
            print_finding(s, plan->findings + i);
            count++;
        }
    if (!count)
        text_add(s->out, "  none\n");
}

void print_findings(sheet *s)
{
    print_title(s, "STOPS THE WORK UNTIL IT IS MENDED");
    print_findings_that(s, 1);
    print_title(s, "TO KNOW");
    print_findings_that(s, 0);
}

void print_sheet(text *out, const planned *side, int us)
{
    sheet s = {.out = out, .side = side, .pen = {.us = us}};
    print_head(&s);
    print_findings(&s);
    print_pieces(&s);
    print_set_out(&s);
    print_hanging(&s);
    print_along(&s);
    print_travel(&s);
    print_torque(&s);
    print_electric(&s);
    print_strength(&s);
    print_searches(&s);
    print_drives(&s);
    print_assumed(&s);
    print_cautions(&s);
    print_turns(&s);
}
