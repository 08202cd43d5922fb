/* SPDX-License-Identifier: MIT */
/* What is legal but unwise. */
#include "side/finding.h"

#include "base/field.h"
#include "shape/bow.h"
#include "side/remark.h"
#include "statics/extender.h"
#include "statics/push.h"

#define LEAST_SEAL 0.05        /* m, common practice, no published source */
#define LEAN_KNOWN (3 * DEG)   /* this library's choice: a bar that walks an inch makes it at 19 inches */
#define LEAN_BINDS (10 * DEG)  /* this library's choice */
#define LONGEST_SOLD (42 * FT) /* m, common practice, no published source: double random lengths end there */
#define LEAST_SHARE 0.15       /* of the floor, side vents: ASAE EP406, as quoted by a trade article */
#define LEAST_WRAPS 0.75       /* turn, common practice, no published source */

static void find_drive(const tside_drive *drive, tside_plan *plan)
{
    tside_i_hold(plan, TSIDE_FINDING_DRIVE_WEAK, plan->design_torque, drive->rated_torque_given, drive->rated_torque);
    for (int i = 0; i < plan->line_count; i++)
        if (plan->lines[i].verdict == TSIDE_VERDICT_NO)
            tside_i_remark(plan, TSIDE_FINDING_STRENGTH, plan->lines[i].end, i, plan->lines[i].utilisation, 1);
    tside_i_hold(plan, TSIDE_FINDING_LIMIT_TURNS, plan->drive_turns, drive->limit_turns_given, drive->limit_turns);
}

/* A motor on its supply and cable. */
static void find_run(const tside_drive *drive, const tside_cable *cable, tside_plan *plan)
{
    const tside_run *run = &plan->run;
    double allowed = cable->drop_limit * drive->supply_voltage;
    int wired = cable->wire != TSIDE_NO_CABLE;
    if (run->stalls)
        tside_i_remark_whole(plan, TSIDE_FINDING_STALLS, plan->worst.drive, run->stall_torque);
    tside_i_hold(plan, TSIDE_FINDING_LONG_RUN, run->time_up, run->time_up_given && drive->rated_run_given,
                 drive->rated_run);
    tside_i_hold(plan, TSIDE_FINDING_OVERLOAD, run->torque_rms, run->torque_rms_given && drive->rated_torque_given,
                 drive->rated_torque);
    if (!run->current_peak_given)
        return;
    tside_i_hold(plan, TSIDE_FINDING_DROP, run->drop_peak, wired && cable->drop_limit_given, allowed);
    tside_i_hold(plan, TSIDE_FINDING_DROP_START, run->drop_start, wired && cable->drop_limit_given, allowed);
    tside_i_hold(plan, TSIDE_FINDING_AMPACITY, run->current_peak, wired && cable->ampacity_given, cable->ampacity);
    tside_i_hold(plan, TSIDE_FINDING_FUSE, run->current_peak, cable->fuse_given, cable->fuse);
    if (run->current_peak <= cable->fuse)
        tside_i_hold(plan, TSIDE_FINDING_FUSE_START, run->current_start, cable->fuse_given, cable->fuse);
}

/* Whatever runs on the cable. */
static void find_protection(const tside_cable *cable, tside_plan *plan)
{
    tside_i_hold(plan, TSIDE_FINDING_FUSE_LARGE, cable->fuse,
                 cable->wire != TSIDE_NO_CABLE && cable->ampacity_given && cable->fuse_given, cable->ampacity);
}

static void find_holding(const tside_drive *drive, tside_plan *plan)
{
    if (drive->holds == TSIDE_HOLDS_NOT)
        tside_i_remark_whole(plan, TSIDE_FINDING_TURNS_BACK, fmax(plan->worst.lift, 0), 0);
    tside_i_hold(plan, TSIDE_FINDING_EFFORT, plan->cranking.effort, plan->cranking_given, plan->cranking.limit);
}

static void find_keep_outs(const tside_i_setup *setup, tside_which_end which, const tside_end_plan *end_plan,
                           tside_plan *plan)
{
    const tside_end *end = tside_i_end(setup->side, which);
    for (int i = 0; i < end_plan->keep_off_count; i++) {
        const tside_keep_off *clear = end_plan->keep_offs + i;
        double needed = end->guide.tube.diameter / 2;
        if (clear->guide < 0)
            tside_i_remark(plan, TSIDE_FINDING_KEEP_OUT_GUIDE, which, i, clear->guide + needed, needed);
        needed = end->extender.tube.side / 2;
        if (clear->tube_given && clear->tube < 0)
            tside_i_remark(plan, TSIDE_FINDING_KEEP_OUT_TUBE, which, i, clear->tube + needed, needed);
    }
}

static void find_hole(const tside_i_setup *setup, tside_which_end which, const tside_end_plan *end_plan,
                      tside_plan *plan)
{
    double bound = tside_i_bow_keep_off(&setup->bow), distance;
    if (!end_plan->layout_given)
        return;
    distance = tside_i_path_from_bend(&setup->bow.centre, setup->hip.arc + end_plan->layout.bow_along);
    if (distance < bound - SLACK) /* the best extender often keeps off by just the bound */
        tside_i_remark(plan, TSIDE_FINDING_BOW_HOLE, which, -1, distance > SLACK ? distance : 0,
                       bound); /* the stiffest often ends just in a kink */
}

/* The lean along the house, either way; 0 of a guide that stands on its foot. */
static double lean_along(const tside_end_plan *end_plan)
{
    return end_plan->skew_given ? end_plan->skew.lean_greatest : 0;
}

/* What is to be known of an end, but stops nothing. */
static void find_known(const tside_i_setup *setup, tside_which_end which, const tside_end_plan *end_plan,
                       tside_plan *plan)
{
    double lean = lean_along(end_plan);
    if (lean > LEAN_KNOWN && lean <= LEAN_BINDS)
        tside_i_remark(plan, TSIDE_FINDING_LEAN_ALONG, which, -1, lean, LEAN_KNOWN);
    find_hole(setup, which, end_plan, plan);
}

static void find_end(const tside_i_setup *setup, tside_which_end which, const tside_i_hung *hung,
                     const tside_end_plan *end_plan, tside_plan *plan)
{
    const tside_limits *limits = &setup->side->limits;
    const tside_footing *footing = &tside_i_end(setup->side, which)->footing;
    find_keep_outs(setup, which, end_plan, plan);
    if (lean_along(end_plan) > LEAN_BINDS)
        tside_i_remark(plan, TSIDE_FINDING_BINDS, which, -1, lean_along(end_plan), LEAN_BINDS);
    if (hung->stands && hung->fixed->misfit > footing->misfit_limit)
        tside_i_remark(plan, TSIDE_FINDING_MISFIT, which, -1, hung->fixed->misfit, footing->misfit_limit);
    if (limits->kick_out_given && end_plan->sweep.kick_out_error > limits->kick_out)
        tside_i_remark(plan, TSIDE_FINDING_KICK, which, -1, end_plan->sweep.kick_out_error, limits->kick_out);
    if (limits->side_force_given && end_plan->side_force > limits->side_force)
        tside_i_remark(plan, TSIDE_FINDING_SIDE_FORCE, which, -1, end_plan->side_force, limits->side_force);
}

/* What a running drive does to its guide when open. */
static void find_swing(const tside_i_setup *setup, const tside_i_hung *hung, tside_plan *plan)
{
    const tside_i_spot *open = &setup->track.open;
    tside_i_lifting lifting = tside_i_lifting_of(setup, &hung->hang);
    tside_i_lean lean = tside_i_hang_lean(&hung->hang, open);
    double up = tside_i_raise(&lean, tside_i_push(&hung->hang, &lean, tside_i_torque(&lifting, open).drive));
    if (hung->hang.chain > 0 && plan->drive_end.chain_swing > 0)
        tside_i_remark_whole(plan, TSIDE_FINDING_CHAIN_SWING, plan->drive_end.chain_swing, 0);
    if (hung->hang.chain > 0 && up > hung->hang.weight)
        tside_i_remark_whole(plan, TSIDE_FINDING_THROWN, up, hung->hang.weight);
    if (plan->drive_end.uplift > 0)
        tside_i_remark_whole(plan, TSIDE_FINDING_UPLIFT, plan->drive_end.uplift, 0);
}

/* A roll whose axis, hanging plumb, would stand inboard of the baseboard's edge. */
static void find_tipping(const tside_travel *travel, tside_plan *plan)
{
    for (int i = 0; i < travel->stretches; i++)
        if (travel->stretch[i].held == TSIDE_HELD_TIPPED) {
            tside_i_spot spot;
            tside_i_travel_spot(travel, i, travel->stretch[i].from, &spot);
            tside_i_remark(plan, TSIDE_FINDING_TIPS, TSIDE_DRIVE_END, -1,
                           travel->line.obstacle[travel->line.board].x - travel->line.x, spot.r);
            return;
        }
}

/* A bar whose joints are given, or forgotten: its sticks overlap by a swage at each. */
static void find_sticks(const tside_bar *bar, tside_plan *plan)
{
    const double stick = (plan->bar_length + bar->splices * bar->swage) / (bar->splices + 1);
    if (bar->joints == TSIDE_JOINTS_GIVEN && stick > LONGEST_SOLD)
        tside_i_remark_whole(plan, TSIDE_FINDING_LONG_STICK, stick, LONGEST_SOLD);
}

/* A group of the side's, or what is tried in its place. */
static const char *group_of(const tside_i_setup *setup, const tside_field *row, const char *structure)
{
    if (row->nested == &tside_i_drive_table)
        return (const char *)setup->drive;
    if (row->nested == &tside_i_bar_table)
        return (const char *)setup->bar;
    return structure + row->offset;
}

static int is_unusual(const tside_field *row, const char *structure)
{
    const void *member = structure + row->offset;
    double value = row->type == TSIDE_COUNT ? *(const int *)member : *(const double *)member;
    return value < row->usual_low || value > row->usual_high;
}

static int count_unusual(const tside_i_setup *setup, const tside_table *table, const char *structure)
{
    const tside_field *end = tside_i_rows_end(table, structure);
    int unusual = 0;
    for (const tside_field *row = table->rows; row < end; row++)
        if (row->type == TSIDE_GROUP) {
            if (tside_i_applies(row, structure))
                unusual += count_unusual(setup, row->nested, group_of(setup, row, structure));
        } else if (row->usual_low < row->usual_high && is_unusual(row, structure))
            unusual += tside_i_applies(row, structure);
    return unusual;
}

static void find_air(const tside_air *air, tside_plan *plan)
{
    const tside_airing *airing = &plan->airing;
    if (air->changes_asked_given && !airing->for_changes_given)
        tside_i_remark_whole(plan, TSIDE_FINDING_FEW_CHANGES, airing->changes, air->changes_asked);
    if (air->warmth == TSIDE_AIR_IN_THE_SUN && air->rise_asked_given && !airing->for_rise_given)
        tside_i_remark_whole(plan, TSIDE_FINDING_HOT, airing->rise, air->rise_asked);
    if (airing->floor_share < LEAST_SHARE)
        tside_i_remark_whole(plan, TSIDE_FINDING_SMALL_OPENING, airing->floor_share, LEAST_SHARE);
}

/* Of a side that no rope holds. */
static void find_wind(const tside_blowing *blowing, tside_plan *plan)
{
    double net = blowing->pressure.net;
    if (net > blowing->gives_way.flies)
        tside_i_remark_whole(plan, TSIDE_FINDING_FLIES, net, blowing->gives_way.flies);
    else if (net > blowing->gives_way.unseals)
        tside_i_remark_whole(plan, TSIDE_FINDING_UNSEALS, net, blowing->gives_way.unseals);
}

/* A leg as long as the rope is before it stretches, and as its way over the roll is. */
static void find_ropes(const tside_roping *asked, tside_plan *plan)
{
    const tside_rope_plan *ropes = &plan->rope;
    const tside_roped *bears = &ropes->bears;
    if (ropes->longest.stopped)
        tside_i_remark_whole(plan, TSIDE_FINDING_ROPE_SHORT, bears->leg * (1 + bears->slack),
                             bears->leg * (1 + ropes->longest.slack));
    tside_i_hold(plan, TSIDE_FINDING_ROPE_WEAK, bears->tension, asked->rope_limit_given, asked->rope_limit);
    tside_i_hold(plan, TSIDE_FINDING_HOOK_WEAK, bears->pull, asked->hook_limit_given, asked->hook_limit);
    tside_i_hold(plan, TSIDE_FINDING_ANCHOR_WEAK, bears->pull, asked->anchor_limit_given, asked->anchor_limit);
    tside_i_hold(plan, TSIDE_FINDING_FILM_WEAK, fmax(bears->film_tension, ropes->film_inward), asked->film_limit_given,
                 asked->film_limit);
    tside_i_hold(plan, TSIDE_FINDING_ROPE_EDGE, ropes->edge, 1, bears->pitch / 2);
}

void tside_i_find(const tside_i_setup *setup, const tside_i_hung *drive, const tside_i_hung *free, tside_plan *plan)
{
    const tside_side *side = setup->side;
    const tside_limits *limits = &side->limits;
    int unusual = count_unusual(setup, &tside_i_side_table, (const char *)side);
    plan->finding_count = 0;
    find_drive(setup->drive, plan);
    find_end(setup, TSIDE_DRIVE_END, drive, &plan->drive_end, plan);
    find_end(setup, TSIDE_FREE_END, free, &plan->free_end, plan);
    tside_i_hold(plan, TSIDE_FINDING_TWIST, plan->twist, limits->twist_given, limits->twist);
    tside_i_hold(plan, TSIDE_FINDING_LAG, plan->lag_elastic, limits->lag_given, limits->lag);
    if (plan->seal < LEAST_SEAL - SLACK) /* a seal asked as 50 mm comes back with other last digits */
        tside_i_remark_whole(plan, TSIDE_FINDING_SEAL, plan->seal, LEAST_SEAL);
    if (side->stops.wraps_shut < LEAST_WRAPS)
        tside_i_remark_whole(plan, TSIDE_FINDING_WRAPS, side->stops.wraps_shut, LEAST_WRAPS);
    if (plan->least_down.down < 0)
        tside_i_remark_whole(plan, TSIDE_FINDING_STAYS_UP, plan->least_down.down, 0);
    if (!drive->stands)
        find_swing(setup, drive, plan);
    find_tipping(&setup->travel, plan);
    if (plan->wind_given && side->ropes == TSIDE_NO_ROPES)
        find_wind(&plan->blowing, plan);
    if (plan->rope_given)
        find_ropes(&side->rope, plan);
    if (plan->run_given)
        find_run(setup->drive, &side->cable, plan);
    find_protection(&side->cable, plan);
    find_sticks(setup->bar, plan);
    find_holding(setup->drive, plan);
    if (!plan->drive_end.stand.covers) /* the curtain passes both bows alike */
        tside_i_remark_whole(plan, TSIDE_FINDING_UNCOVERED, side->curtain.past, setup->bow.diameter / 2);
    find_known(setup, TSIDE_DRIVE_END, &plan->drive_end, plan);
    find_known(setup, TSIDE_FREE_END, &plan->free_end, plan);
    if (plan->air_given)
        find_air(&side->air, plan);
    if (setup->drive->kind == TSIDE_HAND || !setup->drive->stall_torque_given)
        tside_i_remark_whole(plan, TSIDE_FINDING_STALL_GUESSED, plan->stall_torque, 0);
    if (unusual > 0)
        tside_i_remark_whole(plan, TSIDE_FINDING_UNUSUAL, unusual, 0);
}
