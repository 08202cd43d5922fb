/* SPDX-License-Identifier: MIT */
/*
 * Lines of strength: demand beside limit, and the verdict; what the extender has to bear. Source: derivation, standard
 * beam tables; AISC 360, chapter F.
 */
#include "statics/strength.h"

static const char *const codes[] = {
    "bar_shear",     "bar_shear_stall",    "bar_bending",     "bar_bending_stall", "coupling_screw",
    "splice_screw",  "splice_screw_stall", "guide_bending",   "eye_bolt_bending",  "extender_bending",
    "extender_tip",  "bow_bolt",           "member_bolt",     "bow_bolt_pull",     "member_bolt_pull",
    "bow_bolt_both", "member_bolt_both",   "bow_net_section", "rail_pull",         "bar_wind",
    "rail_screw",
};
static const char *const ends[] = {"drive_end", "free_end"};
static const char *const measures[] = {"stress", "force", "deflection", "share"};
static const char *const verdicts[] = {"ok", "look", "no"};
static const char *const rules[] = {"none", "up", "down"};

/* clang-format off */
static const tside_field rows[] = {
    {CHOICE(tside_strength_line, code, codes, 0, "what is checked")},
    {CHOICE(tside_strength_line, end, ends, 0, "at which end of the side")},
    {CHOICE(tside_strength_line, measure, measures, 0, "what demand and limit are: Pa, N, m or a share")},
    {RESULT(tside_strength_line, demand, "", "demand, in Pa, N, m or 1 by the measure")},
    {RESULT_OPTIONAL(tside_strength_line, limit, "", "limit, in the same unit")},
    {RESULT_OPTIONAL(tside_strength_line, utilisation, "1", "demand over limit")},
    {RESULT_OPTIONAL(tside_strength_line, yield_needed, "Pa", "yield that is needed at least, where none is known")},
    {CHOICE(tside_strength_line, verdict, verdicts, 0, "ok, look, or no")},
    {CHOICE(tside_strength_line, rules, rules, 0, "at which force the demand is greatest: stalled going up, jammed coming down, or asked at one alone")},
};
/* clang-format on */
TABLE_WHOLE(tside_i_strength_line_table, rows, tside_strength_line);

const char *tside_strength_text(int code)
{
    switch (code) {
    case TSIDE_BAR_SHEAR: return "bar shear next to the drive, running";
    case TSIDE_BAR_SHEAR_STALL: return "bar shear next to the drive, stalled";
    case TSIDE_BAR_BENDING: return "bar bending under drive and guide, running, reversed each turn";
    case TSIDE_BAR_BENDING_STALL: return "bar bending under drive and guide, stalled";
    case TSIDE_COUPLING_SCREW: return "shear on each screw of the drive's coupling, stalled";
    case TSIDE_SPLICE_SCREW: return "shear on each screw of the nearest splice, running";
    case TSIDE_SPLICE_SCREW_STALL: return "shear on each screw of the nearest splice, stalled";
    case TSIDE_GUIDE_BENDING: return "guide pipe bending at the collar";
    case TSIDE_EYE_BOLT_BENDING: return "eye bolt bending at its root";
    case TSIDE_EXTENDER_BENDING: return "extender bending, twist and shear at the bow bolt, net section";
    case TSIDE_EXTENDER_TIP: return "extender's eye moves by";
    case TSIDE_BOW_BOLT: return "shear on the bow bolt";
    case TSIDE_MEMBER_BOLT: return "shear on the member bolt";
    case TSIDE_BOW_BOLT_PULL: return "pull on the bow bolt";
    case TSIDE_MEMBER_BOLT_PULL: return "pull on the member bolt";
    case TSIDE_BOW_BOLT_BOTH: return "bow bolt, shear and pull at once";
    case TSIDE_MEMBER_BOLT_BOTH: return "member bolt, shear and pull at once";
    case TSIDE_BOW_NET_SECTION: return "bow's section modulus left by its hole";
    case TSIDE_RAIL_PULL: return "pull on the hip rail";
    case TSIDE_BAR_WIND: return "bar bending between ropes, shut, in the wind asked";
    case TSIDE_RAIL_SCREW: return "pull on each screw of the hip rail in the wind asked";
    default: return "";
    }
}

const char *tside_strength_mends(int code)
{
    switch (code) {
    case TSIDE_BAR_SHEAR:
    case TSIDE_BAR_SHEAR_STALL: return "a thicker bar.tube, or a stronger bar.material";
    case TSIDE_BAR_BENDING:
    case TSIDE_BAR_BENDING_STALL: return "a thicker bar.tube, or a lesser {end}.extender.eye_stand_off";
    case TSIDE_COUPLING_SCREW: return "more bar.screws, or a greater bar.screw_limit";
    case TSIDE_SPLICE_SCREW:
    case TSIDE_SPLICE_SCREW_STALL: return "more bar.screws, or a greater bar.screw_limit or bar.splice_near";
    case TSIDE_GUIDE_BENDING: return "a thicker {end}.guide.tube, or a stronger {end}.guide.material";
    case TSIDE_EYE_BOLT_BENDING: return "a lesser {end}.extender.eye_stand_off, or a thicker {end}.extender.eye_root";
    case TSIDE_EXTENDER_BENDING: return "a thicker {end}.extender.tube, or a lesser {end}.extender.eye_stand_off";
    case TSIDE_BOW_BOLT:
    case TSIDE_MEMBER_BOLT: return "bolts of a greater {end}.extender.bolt_limit, or a lesser {end}.rise";
    case TSIDE_BOW_BOLT_PULL:
    case TSIDE_MEMBER_BOLT_PULL:
        return "bolts of a greater {end}.extender.pull_limit, or a lesser {end}.extender.eye_stand_off";
    case TSIDE_BOW_BOLT_BOTH:
    case TSIDE_MEMBER_BOLT_BOTH: return "bolts of a greater {end}.extender.bolt_limit and {end}.extender.pull_limit";
    case TSIDE_BAR_WIND: return "a lesser rope.pitch, or a thicker bar.tube";
    case TSIDE_RAIL_SCREW: return "a lesser curtain.screw_spacing, or a greater rope.screw_limit";
    default: return "";
    }
}

static tside_verdict judge(double utilisation)
{
    return utilisation <= 0.8 ? TSIDE_VERDICT_OK
           : utilisation <= 1 ? TSIDE_VERDICT_LOOK
                              : TSIDE_VERDICT_NO; /* so that NaN is never ok */
}

/* Held against its limit, if there is one; what has none is to be looked at. */
static void against(tside_strength_line *line, int limit_given, double limit)
{
    line->limit_given = line->utilisation_given = limit_given;
    line->verdict = TSIDE_VERDICT_LOOK;
    if (!limit_given)
        return;
    line->limit = limit;
    line->utilisation = line->demand / limit;
    line->verdict = judge(line->utilisation);
}

void tside_i_plain_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, tside_measure measure,
                        double demand)
{
    *line = (tside_strength_line){
        .code = code, .end = end, .measure = measure, .demand = demand, .verdict = TSIDE_VERDICT_LOOK};
}

void tside_i_stress_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, double stress,
                         const tside_metal_values *metal, double share_of_yield)
{
    tside_i_plain_line(line, code, end, TSIDE_STRESS, stress);
    against(line, metal->yield_known, share_of_yield * metal->yield / metal->safety);
    line->yield_needed_given = !metal->yield_known;
    if (!metal->yield_known)
        line->yield_needed = stress * metal->safety / share_of_yield;
}

void tside_i_force_line(tside_strength_line *line, tside_strength_code code, tside_which_end end, double force,
                        int limit_given, double limit)
{
    tside_i_plain_line(line, code, end, TSIDE_FORCE, force);
    against(line, limit_given, limit);
}

void tside_i_worse(tside_strength_line *up, const tside_strength_line *down)
{
    const int falls = down->demand > up->demand;
    if (falls)
        *up = *down;
    up->rules = falls ? TSIDE_RULES_DOWN : TSIDE_RULES_UP;
}

/* Shear and pull at once. */
static void both_line(tside_strength_line *line, tside_strength_code code, tside_which_end end,
                      const tside_extender *extender, double shear, double pull)
{
    tside_i_plain_line(line, code, end, TSIDE_SHARE, hypot(shear / extender->bolt_limit, pull / extender->pull_limit));
    against(line, 1, 1);
}

/* The lines of one force. */
static int one_way(const tside_extender *e, const tside_i_extender_loads *both, const tside_extender_load *load,
                   tside_which_end end, tside_strength_line *line)
{
    const tside_strength_line *first = line;
    tside_i_stress_line(line++, TSIDE_EXTENDER_BENDING, end, load->combined, &both->tube, 1);
    tside_i_plain_line(line++, TSIDE_EXTENDER_TIP, end, TSIDE_DEFLECTION, fabs(load->tip));
    tside_i_force_line(line++, TSIDE_BOW_BOLT, end, load->bow_shear, e->bolt_limit_given, e->bolt_limit);
    tside_i_force_line(line++, TSIDE_MEMBER_BOLT, end, load->member_shear, e->bolt_limit_given, e->bolt_limit);
    tside_i_force_line(line++, TSIDE_BOW_BOLT_PULL, end, load->bow_pull, e->pull_limit_given, e->pull_limit);
    tside_i_force_line(line++, TSIDE_MEMBER_BOLT_PULL, end, load->member_pull, e->pull_limit_given, e->pull_limit);
    if (e->bolt_limit_given && e->pull_limit_given) {
        both_line(line++, TSIDE_BOW_BOLT_BOTH, end, e, load->bow_shear, load->bow_pull);
        both_line(line++, TSIDE_MEMBER_BOLT_BOTH, end, e, load->member_shear, load->member_pull);
    }
    tside_i_stress_line(line++, TSIDE_EYE_BOLT_BENDING, end, load->eye_bolt, &both->eye, 1);
    return (int)(line - first);
}

int tside_i_extender_lines(const tside_extender *extender, const tside_i_extender_loads *loads, tside_which_end end,
                           tside_strength_line *lines)
{
    tside_strength_line jammed[TSIDE_EXTENDER_LINES];
    int count = one_way(extender, loads, &loads->up, end, lines);
    one_way(extender, loads, &loads->down, end, jammed);
    for (int i = 0; i < count; i++)
        tside_i_worse(lines + i, jammed + i);
    return count;
}

tside_status tside_extender_strength(const tside_extender *extender, const tside_layout *layout, double outboard,
                                     double inboard, double weight, double wind_eye, double wind_tube,
                                     tside_which_end end, tside_strength_line *lines, int capacity, int *count,
                                     tside_fault *fault)
{
    const tside_i_end_wind wind = {wind_eye, wind_tube};
    tside_strength_line made[TSIDE_EXTENDER_LINES];
    tside_i_extender_loads loads;
    int needed;
    TRY(tside_i_argument(fault, "outboard", "N", outboard, 0, 0));
    TRY(tside_i_argument(fault, "inboard", "N", inboard, 0, 0));
    TRY(tside_i_check(&tside_i_extender_table, "extender", extender, fault));
    TRY(tside_i_check_arms(layout, fault));
    TRY(tside_i_argument(fault, "weight", "N", weight, 0, 0));
    TRY(tside_i_check_end_wind(&wind, fault));
    TRY(tside_i_extender_bears(extender, layout, outboard, inboard, weight, &wind, &loads, fault));
    *count = needed = tside_i_extender_lines(extender, &loads, end, made);
    if (needed > capacity)
        REFUSE(fault, TSIDE_TOO_SMALL, "capacity", "", "the extender has more lines", "1", capacity, TSIDE_BELOW,
               needed, 0);
    return ANSWER_LIST(&tside_i_strength_line_table, made, lines, needed, fault);
}
