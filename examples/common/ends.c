/* SPDX-License-Identifier: MIT */
#include "ends.h"

const char *end_name(int end)
{
    return end == TSIDE_FREE_END ? "free end" : "drive's end";
}

int on_extender(const planned *side, int end)
{
    return end_asked(side, end)->hung == TSIDE_ON_EXTENDER;
}

int stands(const planned *side, int end)
{
    return end_answered(side, end)->fixed_given;
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

void add_hand(text *words, const planned *side, int end)
{
    const tside_hand hand = hand_at(side, end);
    text_add(words, "%s, seen from outside this wall; the bar then opens %s", hand_name(hand),
             hand == TSIDE_RIGHT ? "anticlockwise" : "clockwise");
}

const char *side_name(const planned *side)
{
    return *side->wanted.name ? side->wanted.name : "without a name";
}

double face_at_hip(const planned *side)
{
    return side->plan.fixing_x - side->wanted.side.curtain.standoff;
}

double hip_above_ground(const planned *side, int end)
{
    return side->wanted.side.curtain.hip - end_answered(side, end)->ground;
}

tside_item_at place_of_end(int end)
{
    return end == TSIDE_FREE_END ? TSIDE_AT_FREE_END : TSIDE_AT_DRIVE_END;
}

int end_of_place(tside_item_at at)
{
    return at == TSIDE_AT_FREE_END ? TSIDE_FREE_END : TSIDE_DRIVE_END;
}

const tside_item *item_of(const planned *side, tside_item_code code, tside_item_at at)
{
    for (int i = 0; i < side->item_count; i++)
        if (side->items[i].code == code && side->items[i].at == at)
            return side->items + i;
    return NULL;
}
