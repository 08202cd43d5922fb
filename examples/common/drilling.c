/* SPDX-License-Identifier: MIT */
#include "drilling.h"

void extender_holes(const planned *side, int end, hole holes[EXTENDER_HOLES])
{
    const tside_extender *asked = &end_asked(side, end)->extender;
    const tside_layout *layout = &end_answered(side, end)->layout;
    holes[0] = (hole){"eye", layout->eye_from_top, asked->eye_hole};
    holes[1] = (hole){"bow", layout->bow_from_top, asked->bolt_hole};
    holes[2] = (hole){"member", layout->member_from_top, asked->bolt_hole};
}

void add_drilling(text *t, pen *p, const planned *side, int end)
{
    hole holes[EXTENDER_HOLES];
    extender_holes(side, end, holes);
    for (int i = 0; i < EXTENDER_HOLES; i++)
        text_add(t, "%s%s", i ? ", " : "drill at ", tape_number(p, holes[i].from_top));
    text_add(t, " %s from the top end: ", p->us ? "in" : "mm");
    for (int i = 0; i < EXTENDER_HOLES; i++)
        text_add(t, "%s%s %s", i ? ", " : "", holes[i].name, trade_size(p, holes[i].diameter));
}
