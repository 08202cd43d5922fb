/* SPDX-License-Identifier: MIT */
/* Where things sit at an end, from points that a tape reaches, in the order of the work. */
#include <math.h>
#include <stdio.h>

#include "mark.h"
#include "sheet.h"

static const tside_layout *layout_at(const sheet *s, int end)
{
    return &end_answered(s->side, end)->layout;
}

/* Two measures beside each other, or one where the second has no label. */
static void put_measures(sheet *s, const char *label, double metres, const char *label_2, double metres_2)
{
    const char *const cells[] = {label, tape(&s->pen, metres), label_2, *label_2 ? tape(&s->pen, metres_2) : ""};
    put_cells(&s->paper, 4, cells);
}

static void put_measure(sheet *s, const char *label, double metres)
{
    put_measures(s, label, metres, "", 0);
}

/* Heights from the hip first, then from the ground of that end. */
static void put_height(sheet *s, int end, double above_hip)
{
    put_measures(s, above_hip < 0 ? "below the hip" : "above the hip", fabs(above_hip), "above the ground",
                 hip_above_ground(s->side, end) + above_hip);
}

static void mark_holes(sheet *s, int end)
{
    const tside_layout *layout = layout_at(s, end);
    const tside_side *side = &s->side->wanted.side;
    const double member = end_asked(s->side, end)->extender.member_height - hip_above_ground(s->side, end);
    put_step(&s->paper, "Mark the bow's hole, on the middle of its tube:");
    put_height(s, end, layout->bow_height - side->curtain.hip);
    put_measure(s, layout->bow_along < 0 ? "down bow from hip" : "up bow from hip", fabs(layout->bow_along));
    put_found_here(s, TSIDE_FINDING_BOW_HOLE, end);
    put_step(&s->paper, "Mark the member's hole, on the middle of its height:");
    put_height(s, end, member);
    put_measure(s, "from its outer end", layout->member_from_outer);
}

static void check_and_drill(sheet *s, int end)
{
    const tside_layout *layout = layout_at(s, end);
    put_step(&s->paper,
             "CHECK before drilling; if it is off by more than %s, a mark is wrong:", s->pen.us ? "1/8 in" : "3 mm");
    put_measure(s, "from hole to hole", layout->member_distance - layout->bow_distance);
    put_step(&s->paper, "Drill both %s, square to the end wall.",
             trade_size(&s->pen, end_asked(s->side, end)->extender.bolt_hole));
    put_caution_of(s, CAUTION_DRILLING);
}

/* The bolts as bought, where the take-off could choose them: "5/16 in carriage bolts, 4 in at the bow, ...". */
static void write_bolts(sheet *s, int end, char *words, size_t size)
{
    pen *p = &s->pen;
    const tside_item *at_bow = item_of(s->side, TSIDE_ITEM_BOW_BOLT, place_of_end(end)),
                     *at_member = item_of(s->side, TSIDE_ITEM_MEMBER_BOLT, place_of_end(end));
    if (at_bow && at_member)
        snprintf(words, size, "%s, %s at the bow, %s at the member", bolt_name(p, at_bow->size, "carriage bolts", 0),
                 trade_size(p, at_bow->length), trade_size(p, at_member->length));
    else
        snprintf(words, size, "carriage bolts");
}

static void put_up(sheet *s, int end)
{
    const double spacer = end_asked(s->side, end)->extender.spacer;
    char bolts[3 * SLOT_SIZE + 40], mark[TSIDE_MARK_SIZE];
    write_bolts(s, end, bolts, sizeof bolts);
    put_step(&s->paper,
             "Bolt extender %s on, marked end up and face out, tape under it%s%s: %s, heads outside; "
             "always at two "
             "points or more. Snug, no more: hollow tube crushes.",
             piece_mark(s->side, TSIDE_ITEM_EXTENDER, place_of_end(end), 1, mark),
             spacer > 0 ? ", at the bow a solid spacer of " : "", spacer > 0 ? tape(&s->pen, spacer) : "", bolts);
    put_caution_of(s, CAUTION_LADDER);
}

/* The extender's angle for a level and a tape: its run over a foot, or 300 mm, of rise. */
static void put_angle(sheet *s, const tside_layout *layout)
{
    pen *p = &s->pen;
    char label[32];
    snprintf(label, sizeof label, "run per %s rise", p->us ? "12 in" : "300 mm");
    put_measure(s, label, layout->run * (p->us ? 0.3048 : 0.3));
}

static void check_eye(sheet *s, int end)
{
    const tside_layout *layout = layout_at(s, end);
    const tside_side *side = &s->side->wanted.side;
    put_step(&s->paper, "CHECK the eye's hole by level and plumb line, the bow's face at the hip:");
    put_height(s, end, layout->eye_y - side->curtain.hip);
    put_measures(s, "out from bow's face", layout->eye_x - face_at_hip(s->side), "to member's hole",
                 layout->member_distance);
    put_angle(s, layout);
}

static void put_eye_bolt(sheet *s, int end)
{
    if (stands(s->side, end))
        put_step(&s->paper, "Put the bracket of the guide's top into the eye's hole; its line is");
    else
        put_step(&s->paper, "Put the eye bolt in, nuts tight on both walls; the guide's line is");
    put_measures(s, "off the tube's face", end_asked(s->side, end)->extender.eye_stand_off, "off bow's middle",
                 end_answered(s->side, end)->stand.eye);
}

static void put_eye_on_hip(sheet *s, int end)
{
    put_step(&s->paper,
             stands(s->side, end)
                 ? "There is no extender. The guide's top is held at the hip rail, run on past the end bow:"
                 : "There is no extender. Put the eye into the hip rail, run on past the end bow, at the curtain's "
                   "fixing line:");
    put_measure(s, "out from bow's middle", end_answered(s->side, end)->stand.eye);
    put_caution_of(s, CAUTION_LADDER);
}

static void stand_guide(sheet *s, int end)
{
    const tside_fixed *fixed = &end_answered(s->side, end)->fixed;
    if (!on_extender(s->side, end)) { /* there its eye's hole holds it */
        put_step(&s->paper, "Hold the guide's top:");
        put_height(s, end, fixed->top_y - s->side->wanted.side.curtain.hip);
        put_measure(s, "out from bow's face", fixed->top_x - face_at_hip(s->side));
    }
    put_step(&s->paper, "Set its foot:");
    put_measures(s, "out from bow's face", fixed->foot_x - face_at_hip(s->side), "into the ground",
                 end_asked(s->side, end)->footing.depth);
    put_caution_of(s, CAUTION_BURIED);
}

/* How far out people and things must keep: with the eye's placing error in it. */
static void keep_off(sheet *s, int end)
{
    put_step(&s->paper, "Keep people and things farther out than the guide's foot comes:");
    put_measure(s, "out from bow's face", end_answered(s->side, end)->sweep.walkway_error - face_at_hip(s->side));
    put_found_here(s, TSIDE_FINDING_CHAIN_SWING, end);
    if (!stands(s->side, end)) /* of a foot it is said where that is set */
        put_caution_of(s, CAUTION_BURIED);
}

void put_set_out(sheet *s, int end)
{
    put_part(&s->paper, "SET OUT, IN THIS ORDER");
    put_words(&s->paper, "The hip is the curtain's fixing line, %s above the ground here.",
              tape(&s->pen, hip_above_ground(s->side, end)));
    if (on_extender(s->side, end)) {
        mark_holes(s, end);
        check_and_drill(s, end);
        put_up(s, end);
        check_eye(s, end);
        put_eye_bolt(s, end);
    } else
        put_eye_on_hip(s, end);
    if (stands(s->side, end))
        stand_guide(s, end);
    keep_off(s, end);
}
