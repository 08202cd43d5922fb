/* SPDX-License-Identifier: MIT */
/* Where a side's ropes are hooked, and how long they are. */
#include "side/hooks.h"

#include "base/field.h"

#define BELOW_ROLL 0.05 /* m, of an anchor below the shut roll where nobody says: this library's choice */

static const tside_i_hook_names names = {"hook_out", "hook_above", "anchor_out", "anchor_height"};

/* Hooks from the curtain's fixing, anchors from grade and from plumb below the fixing. */
static tside_rope hang(const tside_side *side, const tside_i_track *track)
{
    const tside_roping *r = &side->rope;
    const tside_line *line = &track->travel->line;
    const tside_i_spot *shut = &track->shut;
    return (tside_rope){
        .run = side->ropes == TSIDE_ZIGZAG_ROPE ? TSIDE_ROPE_ZIGZAG : TSIDE_ROPES_STRAIGHT,
        .upper_x = line->x + r->hook_out,
        .upper_y = line->y + r->hook_above,
        .lower_x = r->anchor_out_given ? line->x + r->anchor_out : shut->x - shut->r * shut->nx,
        .lower_y = r->anchor_height_given ? r->anchor_height : shut->y - shut->r - BELOW_ROLL,
        .pitch = r->pitch,
        .line = r->line,
        .film = r->film,
        .ends = r->ends,
        .rope_limit_given = r->rope_limit_given,
        .hook_limit_given = r->hook_limit_given,
        .anchor_limit_given = r->anchor_limit_given,
        .film_limit_given = r->film_limit_given,
        .rope_limit = r->rope_limit,
        .hook_limit = r->hook_limit,
        .anchor_limit = r->anchor_limit,
        .film_limit = r->film_limit,
    };
}

static tside_status check_order(const tside_side *side, const tside_rope *rope, tside_fault *fault)
{
    const tside_roping *r = &side->rope;
    if (rope->upper_y > rope->lower_y)
        return TSIDE_OK;
    if (r->anchor_height_given)
        REFUSE(fault, TSIDE_CONTRADICTS, "anchor_height", "hook_above", "the anchors must be below the hooks", "m",
               r->anchor_height, TSIDE_NOT_BELOW, rope->upper_y, rope->upper_y - r->anchor_height);
    REFUSE(fault, TSIDE_CONTRADICTS, "hook_above", "", "the hooks must be above the shut roll", "m", r->hook_above,
           TSIDE_NOT_ABOVE, rope->lower_y - side->curtain.hip, rope->upper_y - rope->lower_y);
}

/* A rope that is just long enough, and sags at least as is usual. */
static void cut_enough(double needed, tside_give *line)
{
    tside_give sags;
    tside_i_usual(&tside_i_give_table, &sags);
    *line = (tside_give){.by = TSIDE_BY_STRETCH, .slack_given = 1, .slack = fmax(needed, tside_i_give_slack(&sags))};
}

static tside_status hook(const tside_side *side, const tside_i_track *track, tside_rope *rope, tside_i_strung *strung,
                         tside_rope_over *longest, tside_rope_over *hardest, tside_fault *fault)
{
    *rope = hang(side, track);
    TRY(check_order(side, rope, fault));
    tside_i_rope_string(rope, side->length, strung);
    TRY(tside_i_rope_over_worst(strung, track, &names, longest, hardest, fault));
    if (side->rope.slack == TSIDE_SLACK_GIVEN)
        return TSIDE_OK;
    cut_enough(longest->slack, &rope->line);
    tside_i_rope_string(rope, side->length, strung);
    longest->stopped = hardest->stopped = 0;
    longest->tension = hardest->tension = longest->pressure = hardest->pressure = 0;
    return TSIDE_OK;
}

tside_status tside_i_hook(const tside_side *side, const tside_i_track *track, tside_rope *rope, tside_i_strung *strung,
                          tside_rope_over *longest, tside_rope_over *hardest, tside_fault *fault)
{
    return tside_i_within(fault, "rope", hook(side, track, rope, strung, longest, hardest, fault));
}
