/* SPDX-License-Identifier: MIT */
/* What the guide does to bar and eye: it hands on the drive's couple. Source: derivation. */
#include "statics/push.h"

#include "base/field.h"

double tside_i_push(const tside_hang *hang, const tside_i_lean *lean, double torque)
{
    return (torque + tside_i_hang_moment(hang, lean)) / lean->reach;
}

double tside_i_uplift(const tside_hang *hang, const tside_i_lean *lean, double push)
{
    double up = tside_i_raise(lean, push) - hang->weight;
    return up > 0 ? up : 0;
}

/* F where the guide leans so. */
static inline double push_leaning(const tside_i_pushing *p, const tside_i_spot *spot, const tside_i_lean *lean)
{
    return tside_i_push(p->hang, lean, p->lifting ? tside_i_torque_leaning(p->lifting, spot, lean).drive : p->torque);
}

double tside_i_push_at(const tside_i_spot *spot, const tside_i_pushing *p)
{
    tside_i_lean lean = tside_i_hang_lean(p->hang, spot);
    return push_leaning(p, spot, &lean);
}

double tside_i_guide_bending_at(const tside_i_spot *spot, const tside_i_pushing *p)
{
    tside_i_lean lean = tside_i_hang_lean(p->hang, spot);
    return push_leaning(p, spot, &lean) * tside_i_reach(p->hang, &lean);
}

/* The same outboard by a torque one way, and inboard by it the other. */
enum { UP, DOWN, WAYS };
static void bending_each_way(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_i_pushing *lifts = context;
    const tside_i_pushing jams = {NULL, lifts->hang, -lifts->torque};
    value[UP] = tside_i_guide_bending_at(spot, lifts);
    value[DOWN] = -tside_i_guide_bending_at(spot, &jams);
}

/* In line F D is torque and moment, and that rises with the lean. */
static double moment_leaning(const tside_hang *hang, double angle)
{
    const tside_i_lean lean = {.reach = 1, .sine = sin(angle)};
    return tside_i_hang_moment(hang, &lean);
}

void tside_i_guide_bending(const tside_i_track *track, const tside_hang *hang, const tside_sweep *sweep, double torque,
                           double *up, double *down)
{
    tside_i_pushing lifts = {NULL, hang, torque};
    tside_i_sought sought[WAYS] = {[UP] = {.over_nought = 1}, [DOWN] = {.over_nought = 1}};
    if (hang->misfit == 0) {
        *up = fmax(torque + moment_leaning(hang, sweep->lean_greatest), 0);
        *down = fmax(torque - moment_leaning(hang, sweep->lean_least), 0);
        return;
    }
    tside_i_track_seek(track, bending_each_way, &lifts, sought, WAYS);
    *up = sought[UP].greatest.value;
    *down = sought[DOWN].greatest.value;
}

void tside_i_end_forces_at(const tside_i_spot *spot, const void *context, double *value)
{
    const tside_i_bar_end *end = context;
    const tside_hang *hang = end->pushing.hang;
    tside_i_lean lean = tside_i_hang_lean(hang, spot);
    double F = push_leaning(&end->pushing, spot, &lean), raise = tside_i_raise(&lean, F),
           level = F * lean.cosine * end->arm, plumb = end->weight * end->run_on + raise * end->arm;
    value[TSIDE_I_PUSH] = F;
    value[TSIDE_I_BAR_END] = sqrt(level * level + plumb * plumb);
    value[TSIDE_I_UPLIFT] = raise - hang->weight;
}

static void push_alone(const tside_i_spot *spot, const void *context, double *value)
{
    value[0] = tside_i_push_at(spot, context);
}

double tside_i_greatest_push(const tside_i_track *track, const tside_i_lifting *lifting, const tside_hang *hang,
                             double torque, tside_i_spot *where)
{
    tside_i_pushing p = {lifting, hang, torque};
    return tside_i_track_greatest(track, push_alone, &p, where);
}

/* A running drive's couple swings pipe and chain apart; the foot moves inboard by about c sin(eta - phi)(G - d)/d. */
double tside_i_chain_swing(const tside_i_lifting *lifting, const tside_hang *hang)
{
    const tside_i_spot *open = &lifting->track->open;
    tside_i_lean lean = tside_i_hang_lean(hang, open);
    double F = tside_i_push(hang, &lean, tside_i_torque(lifting, open).drive), eta, phi;
    phi = tside_i_lean_angle(&lean);
    eta = atan2(F * lean.cosine, hang->weight - F * lean.sine);
    return hang->chain * sin(eta - phi) * (hang->length - lean.reach) / lean.reach;
}

tside_status tside_side_force(const tside_travel *travel, const tside_load *load, const tside_hang *hang, double turns,
                              double *force, double *uplift, tside_fault *fault)
{
    tside_i_track track;
    tside_i_lifting lifting = {&track, load, NULL, hang, 0};
    tside_i_spot spot;
    tside_i_lean lean;
    double push;
    tside_i_track_make(travel, &track);
    if (load)
        TRY(tside_i_lift_check(&track, load, hang, fault));
    TRY(tside_i_travel_find(travel, turns, &spot, fault));
    lean = tside_i_hang_lean(hang, &spot);
    push = tside_i_push(hang, &lean, load ? tside_i_torque(&lifting, &spot).drive : 0);
    TRY(ANSWER_NUMBER(push, force, fault));
    *uplift = tside_i_uplift(hang, &lean, push); /* finite, as the push is */
    return TSIDE_OK;
}
